/* The live chapter: sensors, windows, thresholds, plates. */
#ifndef TESTS_LIVE_H
#define TESTS_LIVE_H

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

#define LIVE_TESTS                                                                                                     \
    {"live_step_bias_rpm", live_step_bias}, {"live_u_rpm", live_u}, {"live_ratio_window_s", live_ratio_window},        \
        {"live_run_length", live_run_length}, {"live_threshold_for", live_threshold},                                  \
        {"live_plate_after_c", live_plate_after}, {                                                                    \
        "live_shifts_to_limit", live_shifts_to_limit                                                                   \
    }

#endif
