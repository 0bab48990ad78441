/* The live chapter: sensors, windows, thresholds, plates, and drives sample by sample. */
#ifndef TESTS_LIVE_H
#define TESTS_LIVE_H

#include <math.h>

#include "vectors.h"

static float live_number(const vectors_row *row, const char *column) { return (float)vectors_number(row, column); }

/* The sensor in the columns with this prefix. */
static tw_speed_sensor live_sensor(const vectors_row *row, const char *prefix) {
    static const char *const SOURCES[] = {"bus", "counted", "edges"};
    static const char *const COLUMNS[] = {"reading", "teeth", "step_rpm", "noise_rpm", "tick_s"};
    char name[5][64];
    tw_speed_sensor sensor;
    memset(&sensor, 0, sizeof sensor);
    for (int i = 0; i < 5; i++) snprintf(name[i], sizeof name[i], "%s%s", prefix, COLUMNS[i]);
    for (uint8_t i = 0; i < 3; i++) {
        if (strcmp(vectors_text(row, name[0]), SOURCES[i]) == 0) sensor.source = i;
    }
    sensor.teeth = (uint32_t)vectors_number(row, name[1]);
    sensor.step_rpm = live_number(row, name[2]);
    sensor.noise_rpm = live_number(row, name[3]);
    sensor.tick_s = live_number(row, name[4]);
    sensor.age_limit_s = 0.1f;
    sensor.greatest_rpm = 8000.0f;
    return sensor;
}

static tw_status live_single(tw_status status, float answer, double *out) {
    if (status >= 0) out[0] = (double)answer;
    return status;
}

static tw_status live_step_bias(const vectors_row *row, double *out) {
    float bias = 0.0f;
    const tw_status status = tw_live_step_bias_rpm(live_number(row, "step_rpm"), live_number(row, "noise_rpm"), &bias);
    return live_single(status, bias, out);
}

static tw_status live_u(const vectors_row *row, double *out) {
    const tw_speed_sensor sensor = live_sensor(row, "");
    float u = 0.0f;
    const tw_status status = tw_live_u_rpm(&sensor, live_number(row, "rpm"), live_number(row, "window_s"),
                                           (uint32_t)vectors_number(row, "values"), &u);
    return live_single(status, u, out);
}

static tw_status live_ratio_window(const vectors_row *row, double *out) {
    const tw_speed_sensor input = live_sensor(row, "input_"), output = live_sensor(row, "output_");
    tw_speed_pair pair;
    float window = 0.0f;
    tw_status status = tw_live_spread(&input, &pair.input);
    if (status >= 0) status = tw_live_spread(&output, &pair.output);
    if (status < 0) return status;
    pair.sample_s = live_number(row, "sample_s");
    status = tw_live_ratio_window_s(&pair, live_number(row, "input_rpm"), live_number(row, "ratio"),
                                    live_number(row, "u_rel"), &window);
    return live_single(status, window, out);
}

static tw_status live_run_length(const vectors_row *row, double *out) {
    float length = 0.0f;
    const tw_status status = tw_live_run_length(live_number(row, "threshold"), live_number(row, "reference"),
                                                live_number(row, "shift"), &length);
    return live_single(status, length, out);
}

static tw_status live_threshold(const vectors_row *row, double *out) {
    float threshold = 0.0f;
    const tw_status status =
        tw_live_threshold_for(live_number(row, "run_length"), live_number(row, "reference"), &threshold);
    return live_single(status, threshold, out);
}

static tw_live_element live_element(const vectors_row *row) {
    tw_live_element element;
    element.heat_capacity_j_k = live_number(row, "heat_capacity_j_k");
    element.cooling_s = live_number(row, "cooling_s");
    element.limit_c = live_number(row, "limit_c");
    return element;
}

static tw_status live_plate_after(const vectors_row *row, double *out) {
    const tw_live_element element = live_element(row);
    float plate = 0.0f;
    const tw_status status =
        tw_live_plate_after_c(&element, live_number(row, "plate_c"), live_number(row, "fluid_c"),
                              live_number(row, "energy_j"), live_number(row, "span_s"), &plate);
    return live_single(status, plate, out);
}

static tw_status live_shifts_to_limit(const vectors_row *row, double *out) {
    const tw_live_element element = live_element(row);
    tw_shifts_to_limit found;
    const tw_status status =
        tw_live_shifts_to_limit(&element, live_number(row, "plate_c"), live_number(row, "fluid_c"),
                                live_number(row, "energy_j"), live_number(row, "pace_s"), &found);
    if (status < 0) return status;
    out[0] = (double)found.rise_k;
    out[1] = (double)found.settled_c;
    out[2] = (double)found.shifts;
    return status;
}

static tw_status live_add_slip(const vectors_row *row, double *out) {
    tw_gear_evidence evidence;
    evidence.forward = live_number(row, "forward");
    evidence.backward = live_number(row, "backward");
    const tw_status status = tw_live_add_slip(&evidence, live_number(row, "slip"), live_number(row, "wanted"));
    if (status < 0) return status;
    out[0] = (double)evidence.forward;
    out[1] = (double)evidence.backward;
    return status;
}

/* Columns unit and seen: see the file. */
static tw_status live_weigh_suspects(const vectors_row *row, double *out) {
    tw_live_unit unit;
    tw_live_plan plan;
    tw_live_suspects found;
    tw_gear_evidence evidence[TW_MAX_LIVE_GEARS];
    memset(&unit, 0, sizeof unit);
    memset(evidence, 0, sizeof evidence);
    tw_status status = tw_live_bus(0.5f, 0.9f, 0.1f, 8000.0f, &unit.input);
    if (status < 0) return status;
    unit.output = unit.engine = unit.input;
    unit.sample_s = 0.01f;
    unit.limits.standing_rpm = 30.0f;
    unit.limits.slip_rpm = 1.0f;
    unit.limits.run_length_s = 360000.0f;
    unit.limits.ratio_u_rel = 1e-4f;
    unit.limits.settle_s = 0.2f;
    unit.limits.follow_s = 2.0f;
    unit.limits.flare_rpm = 50.0f;
    unit.limits.dip_share = 0.02f;
    unit.limits.lockup_slip_rpm = 50.0f;
    unit.limits.cold_c = 40.0f;
    unit.limits.hot_c = 120.0f;
    unit.limits.warm_up_s = 600.0f;
    for (char *rest = (char *)vectors_text(row, "unit"); *rest != '\0'; unit.gear_count++) {
        tw_live_gear *const gear = &unit.gears[unit.gear_count];
        gear->number = (int8_t)strtol(rest, &rest, 10);
        gear->ratio = strtof(rest + 1, &rest);
        while (*rest == ':' || *rest == '+') {
            tw_live_suspect *const suspect = &gear->suspects[gear->suspect_count++];
            suspect->element = (uint8_t)strtoul(rest + 1, &rest, 10);
            suspect->slip_per_input_slip = strtof(rest + 1, &rest);
            if (suspect->element >= unit.element_count) unit.element_count = (uint8_t)(suspect->element + 1);
        }
        if (*rest == ' ') rest++;
    }
    for (char *rest = (char *)vectors_text(row, "seen"); *rest != '\0';) {
        tw_gear_evidence *const gear = &evidence[strtoul(rest, &rest, 10)];
        gear->forward = strtof(rest + 1, &rest);
        gear->backward = strtof(rest + 1, &rest);
    }
    status = tw_live_unit_plan(&unit, &plan);
    if (status >= 0) status = tw_live_weigh_suspects(&plan, evidence, &found);
    if (status < 0) return status;
    const double answers[] = {
        found.suspects[0].element, (double)found.suspects[0].ln_odds, found.suspects[1].element,
        (double)found.suspects[1].ln_odds, found.count, (double)found.sensors_ln_odds,
        found.next_gear, (double)found.next_bit};
    memcpy(out, answers, sizeof answers);
    return status;
}

/* The unit of tests/live_push.rs. */
static tw_status live_unit_plan(const char *sensor, tw_live_plan *plan) {
    static const float RATIOS[] = {2.0f, 1.4f, 1.0f, -2.5f};
    static const int8_t NUMBERS[] = {1, 2, 3, -1};
    static const struct {
        uint8_t gear, element;
        float factor;
    } SUSPECTS[] = {{0, 0, -1.5f}, {0, 1, 2.0f},   {1, 0, -2.0f}, {1, 2, 3.0f},
                    {2, 1, 2.5f},  {2, 2, -1.25f}, {3, 0, 1.0f}};
    static const uint32_t TEETH[] = {40, 30};
    tw_live_unit unit;
    tw_status status = TW_STATUS_OK;
    memset(&unit, 0, sizeof unit);
    for (size_t i = 0; i < 4; i++) {
        unit.gears[i].number = NUMBERS[i];
        unit.gears[i].ratio = RATIOS[i];
    }
    for (size_t i = 0; i < sizeof SUSPECTS / sizeof SUSPECTS[0]; i++) {
        tw_live_gear *const gear = &unit.gears[SUSPECTS[i].gear];
        gear->suspects[gear->suspect_count].element = SUSPECTS[i].element;
        gear->suspects[gear->suspect_count++].slip_per_input_slip = SUSPECTS[i].factor;
    }
    for (size_t i = 0; i < 3; i++) {
        unit.elements[i].heat_capacity_j_k = 400.0f;
        unit.elements[i].cooling_s = 20.0f;
        unit.elements[i].limit_c = 250.0f;
    }
    unit.gear_count = 4;
    unit.element_count = 3;
    unit.limits.standing_rpm = 30.0f;
    unit.limits.slip_rpm = 4.0f;
    unit.limits.run_length_s = 360000.0f;
    unit.limits.ratio_u_rel = 1e-3f;
    unit.limits.settle_s = 0.2f;
    unit.limits.follow_s = 2.0f;
    unit.limits.flare_rpm = 40.0f;
    unit.limits.dip_share = 0.02f;
    unit.limits.lockup_slip_rpm = 50.0f;
    unit.limits.cold_c = 40.0f;
    unit.limits.hot_c = 120.0f;
    unit.limits.warm_up_s = 600.0f;
    unit.sample_s = 0.02f;
    for (size_t i = 0; i < 2 && status >= 0; i++) {
        tw_speed_sensor *const to = i == 0 ? &unit.input : &unit.output;
        status = strcmp(sensor, "bus") == 0       ? tw_live_bus(0.5f, 0.0f, 0.05f, 8000.0f, to)
                 : strcmp(sensor, "counted") == 0 ? tw_live_counted(TEETH[i], 0.0f, 0.05f, 8000.0f, to)
                                                  : tw_live_edges(TEETH[i], 1e-6f, 0.0f, 0.05f, 8000.0f, to);
    }
    if (status >= 0) status = tw_live_bus(1.0f, 4.0f, 0.1f, 8000.0f, &unit.engine);
    return status < 0 ? status : tw_live_unit_plan(&unit, plan);
}

static tw_speed_reading live_reading(const vectors_row *row, const char *shaft) {
    char ticks[32], state[32];
    tw_speed_reading reading;
    memset(&reading, 0, sizeof reading);
    snprintf(ticks, sizeof ticks, "%s_ticks", shaft);
    snprintf(state, sizeof state, "%s_state", shaft);
    reading.state = (tw_reading_state)vectors_number(row, state);
    if (reading.state != TW_READING_STATE_VALUE) return reading;
    if (strcmp(vectors_text(row, "sensor"), "bus") == 0) {
        reading.rpm = live_number(row, shaft);
    } else {
        reading.pulses = (uint32_t)vectors_number(row, shaft);
        reading.ticks = (uint32_t)vectors_number(row, ticks);
    }
    return reading;
}

static double live_formed(float value) { return value != value ? -1.0 : (double)value; }

/* A new drive starts a new monitor. */
static tw_status live_push(const vectors_row *row, double *out) {
    static char drive[32];
    static tw_live_plan plan;
    static tw_live_monitor monitor;
    tw_live_sample sample;
    tw_live_events events;
    tw_live_state state;
    tw_status status = TW_STATUS_OK;
    if (strcmp(drive, vectors_text(row, "drive")) != 0) {
        snprintf(drive, sizeof drive, "%s", vectors_text(row, "drive"));
        status = live_unit_plan(vectors_text(row, "sensor"), &plan);
        if (status >= 0) status = tw_live_start(&plan, &monitor);
        if (status < 0) return status;
    }
    sample.time_us = (uint64_t)vectors_number(row, "time_us");
    sample.input = live_reading(row, "input");
    sample.output = live_reading(row, "output");
    memset(&sample.engine, 0, sizeof sample.engine);
    sample.engine.rpm = live_number(row, "engine_rpm");
    sample.pressure_kpa = (float)NAN;
    sample.temp_c = live_number(row, "temp_c");
    sample.engine_torque_nm = live_number(row, "torque_nm");
    sample.commanded = (int8_t)vectors_number(row, "commanded");
    sample.lockup = (int8_t)vectors_number(row, "lockup");
    memset(&events, 0x5A, sizeof events); /* whatever lies there */
    status = tw_live_push(&monitor, &plan, &sample, &events, &state);
    if (status < 0) return status;
    tw_live_event none;
    memset(&none, 0, sizeof none);
    none.gear = none.other_gear = TW_GEAR_NOT_KNOWN;
    none.value = none.u = (float)NAN;
    const tw_live_event *const first = events.count > 0 ? &events.events[0] : &none;
    const double values[] = {(double)state.gear,
                             (double)state.phase,
                             (double)state.alarm,
                             (double)state.used,
                             live_formed(state.ratio),
                             live_formed(state.ratio_u),
                             live_formed(state.slip_rpm),
                             live_formed(state.slip_u_rpm),
                             live_formed(state.converter_slip_rpm),
                             (double)events.count,
                             (double)first->kind,
                             (double)first->gear,
                             (double)first->other_gear,
                             (double)first->suspects,
                             (double)first->at_us,
                             (double)first->found_us,
                             live_formed(first->value),
                             live_formed(first->u)};
    memcpy(out, values, sizeof values);
    return status;
}

#define LIVE_TESTS \
    {"live_push", live_push}, \
    {"live_step_bias_rpm", live_step_bias}, \
    {"live_u_rpm", live_u}, \
    {"live_ratio_window_s", live_ratio_window}, \
    {"live_run_length", live_run_length}, \
    {"live_threshold_for", live_threshold}, \
    {"live_add_slip", live_add_slip}, \
    {"live_weigh_suspects", live_weigh_suspects}, \
    {"live_plate_after_c", live_plate_after}, \
    {"live_shifts_to_limit", live_shifts_to_limit}

#endif
