/* The train chapter's vectors in C. */
#include "trains.h"
#include <math.h>

static tw_status building(const vectors_row *row, double *out) {
    tw_train train;
    double last;
    const tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) out[0] = last;
    return status;
}

static double number(tw_fraction fraction) {
    return fraction.den == 0 ? (double)INFINITY : (double)fraction.num / (double)fraction.den;
}

static void outputs(const tw_state *state, double *out) {
    *out++ = state->kind;
    *out++ = state->mobility;
    *out++ = state->redundant;
    *out++ = (double)state->ratio.num;
    *out++ = (double)state->ratio.den;
    *out++ = number(state->output_torque);
    *out++ = number(state->case_torque);
    for (int i = 0; i < 8; i++) *out++ = number(state->shares[i]);
    for (int i = 0; i < 8; i++) *out++ = number(state->slips[i]);
    for (int i = 0; i < 14; i++) *out++ = number(state->speeds[i]);
}

static uint32_t mask(const vectors_row *row) { return (uint32_t)vectors_number(row, "closed"); }

static tw_status solve(const vectors_row *row, double *out) {
    tw_train train;
    tw_state state;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_solve(&train, mask(row), &state);
    if (status == TW_STATUS_OK) outputs(&state, out);
    return status;
}

static tw_status resolve(const vectors_row *row, double *out) {
    static const char *const LOADS[] = {"none", "drive", "coast", NULL};
    tw_train train;
    tw_state state;
    double last;
    tw_status status = build(row, &train, &last);
    const tw_load load = choice(vectors_text(row, "load"), LOADS);
    if (status == TW_STATUS_OK) status = tw_train_resolve(&train, mask(row), load, &state);
    if (status == TW_STATUS_OK) {
        out[0] = state.closed;
        outputs(&state, out + 1);
    }
    return status;
}

static tw_status planet_speeds(const vectors_row *row, double *out) {
    tw_train train;
    tw_state state;
    tw_planet_speeds speeds;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_solve(&train, mask(row), &state);
    if (status == TW_STATUS_OK) {
        status = tw_train_planet_speeds(&train, &state, (uint8_t)vectors_number(row, "set"), &speeds);
    }
    if (status == TW_STATUS_OK) {
        out[0] = number(speeds.planet_on_pin);
        out[1] = number(speeds.planet);
        out[2] = number(speeds.planet_2_on_pin);
        out[3] = number(speeds.planet_2);
    }
    return status;
}

static tw_status losses(const vectors_row *row, double *out) {
    static const char *const LOADS[] = {"none", "drive", "coast", NULL};
    const tw_mesh_efficiency mesh = {vectors_number(row, "external"), vectors_number(row, "internal")};
    tw_train train;
    tw_state state;
    tw_losses result;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_solve(&train, mask(row), &state);
    if (status == TW_STATUS_OK) {
        status = tw_train_losses(&train, &state, &mesh, choice(vectors_text(row, "load"), LOADS), &result);
    }
    if (status == TW_STATUS_OK) {
        out[0] = result.efficiency;
        out[1] = result.torque_ratio;
        out[2] = result.self_locking;
        out[3] = result.converged;
    }
    return status;
}

static tw_status assembly(const vectors_row *row, double *out) {
    static const char *const SETS[] = {"simple", "double_pinion", "two_sun", "stepped", NULL};
    tw_planetary_set set;
    tw_assembly result;
    memset(&set, 0, sizeof set);
    set.kind = choice(vectors_text(row, "kind"), SETS);
    set.planets = (uint8_t)vectors_number(row, "planets");
    set.teeth.sun = (uint16_t)vectors_number(row, "sun");
    set.teeth.sun_2 = (uint16_t)vectors_number(row, "sun_2");
    set.teeth.planet = (uint16_t)vectors_number(row, "planet");
    set.teeth.planet_2 = (uint16_t)vectors_number(row, "planet_2");
    set.teeth.ring = (uint16_t)vectors_number(row, "ring");
    const tw_status status = tw_train_assembly(&set, &result);
    if (status == TW_STATUS_OK) {
        out[0] = result.places;
        out[1] = result.places_left;
        out[2] = result.equal_planets & 0x78;
        out[3] = result.coaxial_excess;
        out[4] = result.neighbor_gap_modules;
        out[5] = result.coaxial;
        out[6] = result.equal_spacing;
        out[7] = result.neighbors;
    }
    return status;
}

static tw_status symptom(const vectors_row *row, double *out) {
    const tw_commanded commanded = {mask(row), 0};
    const tw_element_fault fault = {(uint8_t)vectors_number(row, "element"), (tw_failure)vectors_number(row, "failure")};
    tw_train train;
    tw_symptom result;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_symptom(&train, &commanded, &fault, &result);
    if (status == TW_STATUS_OK) {
        out[0] = result.drive;
        out[1] = result.coast;
        out[2] = result.kind;
        out[3] = (double)result.ratio.num;
        out[4] = (double)result.ratio.den;
    }
    return status;
}

static tw_status power_flow(const vectors_row *row, double *out) {
    tw_train train;
    tw_state state;
    tw_power_flow flow;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_solve(&train, mask(row), &state);
    if (status == TW_STATUS_OK) status = tw_train_power_flow(&train, &state, &flow);
    if (status == TW_STATUS_OK) {
        for (int i = 0; i < 4; i++) *out++ = flow.rolling_power[i];
        *out = flow.largest;
    }
    return status;
}

/* Masks of the applied elements + of the one-way clutches that hold. */
static size_t commanded(const vectors_row *row, tw_commanded *gears) {
    static char text[VECTORS_LINE];
    strcpy(text, vectors_text(row, "gears"));
    size_t count = 0;
    for (char *rest = text; *rest != '\0'; count++) {
        char *one_way = NULL;
        gears[count].closed = (uint32_t)strtoul(word(&rest), &one_way, 10);
        gears[count].one_way = (uint32_t)strtoul(one_way + 1, NULL, 10);
    }
    return count;
}

static tw_status signature(const vectors_row *row, double *out) {
    const tw_element_fault fault = {(uint8_t)vectors_number(row, "element"), (tw_failure)vectors_number(row, "failure")};
    tw_commanded gears[VECTORS_COLUMNS];
    tw_train train;
    tw_signature found;
    double last;
    tw_status status = build(row, &train, &last);
    const size_t count = commanded(row, gears);
    if (status == TW_STATUS_OK) status = tw_train_signature(&train, gears, count, &fault, &found);
    if (status == TW_STATUS_OK) {
        const uint32_t lost = found.no_drive | found.no_braking | found.other_ratio | found.tied_up;
        const uint32_t masks[] = {found.no_drive, found.no_braking, found.other_ratio, found.creeps,
                                  found.brakes,   found.tied_up,    lost};
        for (int i = 0; i < 7; i++) out[i] = masks[i];
    }
    return status;
}

/* The column seen; *drive gets the mask of the places in the list of gears. */
static size_t observed(const vectors_row *row, const tw_commanded *gears, tw_observation *observations, uint32_t *drive) {
    static char text[VECTORS_LINE];
    strcpy(text, vectors_text(row, "seen"));
    size_t count = 0;
    *drive = 0;
    for (char *rest = text; *rest != '\0'; count++) {
        char *cell = word(&rest);
        tw_observation *seen = &observations[count];
        const unsigned long place = strtoul(cell, &cell, 10);
        *drive |= (uint32_t)1 << place;
        seen->commanded = gears[place];
        seen->load = TW_LOAD_DRIVE;
        seen->seen = (tw_response)strtoul(cell + 1, &cell, 10);
        seen->ratio.value = strtod(cell + 1, &cell);
        seen->ratio.u = strtod(cell + 1, &cell);
    }
    return count;
}

static tw_status diagnose(const vectors_row *row, double *out) {
    tw_commanded gears[VECTORS_COLUMNS];
    tw_observation observations[VECTORS_COLUMNS];
    tw_train train;
    tw_diagnosis found;
    double last;
    uint32_t drive;
    tw_status status = build(row, &train, &last);
    commanded(row, gears);
    const size_t count = observed(row, gears, observations, &drive);
    if (status == TW_STATUS_OK) status = tw_train_diagnose(&train, observations, count, &found);
    if (status == TW_STATUS_OK) {
        const tw_suspect first = found.suspects[0];
        const double answers[] = {first.fault.element, first.fault.failure, first.rank,   first.matched,
                                  first.missed,        first.contradicted,  first.agreed, found.count};
        memcpy(out, answers, sizeof answers);
    }
    return status;
}

static tw_status next_gear(const vectors_row *row, double *out) {
    tw_commanded gears[VECTORS_COLUMNS];
    tw_observation observations[VECTORS_COLUMNS];
    tw_element_fault suspects[TW_MAX_SUSPECTS];
    tw_tried_gears tried = {0, 0};
    tw_train train;
    tw_diagnosis found;
    tw_next_gear next;
    double last;
    size_t suspect_count = 0;
    tw_status status = build(row, &train, &last);
    const size_t gear_count = commanded(row, gears);
    const size_t count = observed(row, gears, observations, &tried.drive);
    if (status == TW_STATUS_OK) status = tw_train_diagnose(&train, observations, count, &found);
    if (status == TW_STATUS_OK) {
        while (suspect_count < found.count && found.suspects[suspect_count].rank == 1) {
            suspects[suspect_count] = found.suspects[suspect_count].fault;
            suspect_count++;
        }
        status = tw_train_next_gear(&train, gears, gear_count, &tried, suspects, suspect_count, &next);
    }
    if (status == TW_STATUS_OK) {
        out[0] = next.gear;
        out[1] = next.load;
        out[2] = next.outcomes;
        out[3] = next.tie_ups;
        out[4] = next.information_bit;
    }
    return status;
}

static tw_status seen_ratio(const vectors_row *row, double *out) {
    const tw_commanded gear = {(uint32_t)vectors_number(row, "closed"), 0};
    const tw_reading measured = {vectors_number(row, "value"), vectors_number(row, "u")};
    tw_train train;
    tw_observation found;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_seen_ratio(&train, &gear, &measured, &found);
    if (status == TW_STATUS_OK) *out = found.seen;
    return status;
}

static tw_status ratio(tw_status status, const tw_reading *result, double *out) {
    if (status == TW_STATUS_OK) {
        out[0] = result->value;
        out[1] = result->u;
    }
    return status;
}

static tw_status counted_ratio(const vectors_row *row, double *out) {
    const tw_pulse_count count = {
        (uint32_t)vectors_number(row, "input_pulses"), (uint32_t)vectors_number(row, "output_pulses"),
        (uint16_t)vectors_number(row, "input_teeth"), (uint16_t)vectors_number(row, "output_teeth")};
    tw_reading result;
    return ratio(tw_train_counted_ratio(&count, &result), &result, out);
}

static tw_status timed_ratio(const vectors_row *row, double *out) {
    const tw_timed_edges edges = {
        vectors_number(row, "input_s"), vectors_number(row, "output_s"), vectors_number(row, "tick_us"),
        (uint32_t)vectors_number(row, "input_intervals"), (uint32_t)vectors_number(row, "output_intervals"),
        (uint16_t)vectors_number(row, "input_teeth"), (uint16_t)vectors_number(row, "output_teeth")};
    tw_reading result;
    return ratio(tw_train_timed_ratio(&edges, &result), &result, out);
}

static tw_status fit_ratio(const vectors_row *row, double *out) {
    const tw_reading measured = {vectors_number(row, "value"), vectors_number(row, "u")};
    const tw_fraction candidate = {(int64_t)vectors_number(row, "num"), (int64_t)vectors_number(row, "den")};
    tw_ratio_fit result;
    const tw_status status = tw_train_fit_ratio(&measured, &candidate, vectors_number(row, "coverage"), &result);
    if (status == TW_STATUS_OK) {
        out[0] = result.z;
        out[1] = result.chance;
        out[2] = result.excluded;
    }
    return status;
}

static const vectors_test TESTS[] = {
    {"train_new", building},   {"train_add_set", building}, {"train_add_element", building},
    {"train_solve", solve},    {"train_resolve", resolve},  {"train_planet_speeds", planet_speeds},
    {"train_power_flow", power_flow}, {"train_signature", signature}, {"train_diagnose", diagnose},
    {"train_next_gear", next_gear}, {"train_seen_ratio", seen_ratio},
    {"train_losses", losses},  {"train_assembly", assembly}, {"train_symptom", symptom},
    {"train_counted_ratio", counted_ratio}, {"train_timed_ratio", timed_ratio}, {"train_fit_ratio", fit_ratio},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
