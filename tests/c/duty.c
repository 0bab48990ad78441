/* The duty chapter's vectors in C. */
#include <math.h>

#include "trains.h"

#include "duty_screen.h"

static double open_as_infinite(tw_fraction fraction) {
    return fraction.den == 0 ? INFINITY : (double)fraction.num / (double)fraction.den;
}

static tw_status mesh_duty(const vectors_row *row, double *out) {
    tw_train train;
    tw_state state;
    tw_mesh_duty duty;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_solve(&train, (uint32_t)vectors_number(row, "closed"), &state);
    if (status == TW_STATUS_OK) {
        status = tw_duty_mesh_duty(&train, &state, (uint8_t)vectors_number(row, "set"), &duty);
    }
    if (status != TW_STATUS_OK) return status;
    const tw_fraction answers[] = {duty.sun.contacts,   duty.sun.torque,  duty.sun_2.contacts,  duty.sun_2.torque,
                                   duty.ring.contacts,  duty.ring.torque, duty.planet_contacts, duty.planet_2_contacts};
    for (size_t i = 0; i < 8; i++) out[i] = open_as_infinite(answers[i]);
    return status;
}

static tw_status bus_signal_of(const vectors_row *row, tw_bus_signal *signal) {
    const uint32_t number = (uint32_t)vectors_number(row, "number");
    if (number != 0) return tw_duty_bus_signal((uint8_t)vectors_number(row, "network"), number, signal);
    memset(signal, 0, sizeof *signal);
    signal->rules = (tw_bus_rules)vectors_number(row, "rules");
    signal->bits = (uint8_t)vectors_number(row, "bits");
    signal->resolution = vectors_number(row, "resolution");
    signal->offset = vectors_number(row, "offset");
    signal->lower = vectors_number(row, "lower");
    signal->upper = vectors_number(row, "upper");
    return TW_STATUS_OK;
}

static tw_status decode(const vectors_row *row, double *out) {
    tw_bus_signal signal;
    tw_bus_value value;
    tw_status status = bus_signal_of(row, &signal);
    if (status == TW_STATUS_OK) status = tw_duty_decode(&signal, (uint32_t)vectors_number(row, "raw"), &value);
    if (status != TW_STATUS_OK) return status;
    out[0] = (double)value.meaning;
    out[1] = value.value;
    return status;
}

static tw_status classify(const vectors_row *row, double *out) {
    tw_bus_signal signal;
    tw_bus_value value;
    tw_status status = bus_signal_of(row, &signal);
    if (status == TW_STATUS_OK) status = tw_duty_classify(&signal, vectors_number(row, "value"), &value);
    if (status != TW_STATUS_OK) return status;
    out[0] = (double)value.meaning;
    out[1] = value.value;
    return status;
}

static tw_status step_error(const vectors_row *row, double *out) {
    tw_bus_signal signal;
    const tw_status status = bus_signal_of(row, &signal);
    return status == TW_STATUS_OK ? tw_duty_step_error(&signal, vectors_number(row, "value"), out) : status;
}

enum { MOST = 128 };

/* The numbers of a cell, one after the other; returns how many. */
static size_t numbers(const vectors_row *row, const char *column, double *out) {
    char text[VECTORS_LINE];
    size_t found = 0;
    strcpy(text, vectors_text(row, column));
    for (char *cell = strtok(text, " :"); cell != NULL && found < MOST; cell = strtok(NULL, " :")) {
        out[found++] = strtod(cell, NULL);
    }
    return found;
}

static tw_status rainflow(const vectors_row *row, double *out) {
    double values[MOST], stack[MOST];
    tw_cycle cycles[MOST];
    tw_cycle_count count;
    const size_t given = numbers(row, "values", values);
    const tw_status status =
        tw_duty_rainflow(values, given, (uint8_t)vectors_number(row, "residue"), stack,
                         (size_t)vectors_number(row, "stack"), cycles, (size_t)vectors_number(row, "size"), &count);
    if (status != TW_STATUS_OK) return status;
    out[0] = count.cycles;
    out[1] = count.reversals;
    out[2] = count.pieces;
    out[3] = count.missing;
    out[4] = count.largest_range;
    out[5] = out[6] = out[7] = 0.0;
    for (uint32_t i = 0; i < count.entries; i++) {
        const double range = cycles[i].range, cubed = range * range * range;
        out[5] += range * cycles[i].cycles;
        out[6] += cubed * cycles[i].cycles;
        out[7] += cycles[i].mean * cycles[i].cycles;
    }
    return status;
}

static tw_status residence(const vectors_row *row, double *out) {
    double time_s[MOST], values[MOST], edges[MOST], seconds[MOST];
    tw_residence rest;
    const size_t given = numbers(row, "time_s", time_s), edge_count = numbers(row, "edges", edges);
    if (numbers(row, "values", values) != given) return TW_STATUS_COUNT; /* C gives one count for both */
    const tw_status status = tw_duty_residence(time_s, values, given, edges, edge_count,
                                               vectors_number(row, "gap_limit_s"), seconds, &rest);
    if (status != TW_STATUS_OK) return status;
    const double answers[] = {seconds[0],   seconds[1],     seconds[2], rest.inside_s,   rest.below_s,
                              rest.above_s, rest.missing_s, rest.gap_s, rest.duplicates, rest.reversed};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status from_rating(const vectors_row *row, double *out) {
    tw_damage_line line;
    const tw_status status =
        tw_duty_from_rating(vectors_number(row, "slope"), vectors_number(row, "reference_contacts"),
                            vectors_number(row, "over_rated"), vectors_number(row, "worst_share"),
                            vectors_number(row, "rated_nm"), &line);
    if (status != TW_STATUS_OK) return status;
    out[0] = line.slope;
    out[1] = line.reference_nm;
    out[2] = line.reference_contacts;
    return status;
}

static size_t stages_of(const vectors_row *row, tw_duty_stage *stages) {
    double contacts[MOST], torque_nm[MOST];
    const size_t count = numbers(row, "contacts", contacts);
    numbers(row, "torque_nm", torque_nm);
    for (size_t i = 0; i < count; i++) {
        stages[i].contacts = contacts[i];
        stages[i].torque_nm = torque_nm[i];
    }
    return count;
}

static tw_status damage(const vectors_row *row, double *out) {
    const tw_damage_line line = {vectors_number(row, "slope"), vectors_number(row, "reference_nm"),
                                 vectors_number(row, "reference_contacts")};
    tw_duty_stage stages[MOST];
    tw_damage found;
    const tw_status status = tw_duty_damage(&line, stages, stages_of(row, stages), &found);
    if (status != TW_STATUS_OK) return status;
    const double answers[] = {found.total, found.greatest, found.governing, found.governing_share, found.contacts};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status damage_interval(const vectors_row *row, double *out) {
    const tw_damage_range known = {vectors_number(row, "slope_low"), vectors_number(row, "slope_high"),
                                   vectors_number(row, "reference_low_nm"), vectors_number(row, "reference_high_nm"),
                                   vectors_number(row, "reference_contacts")};
    tw_duty_stage stages[MOST];
    tw_damage_interval found;
    const tw_status status = tw_duty_damage_interval(stages, stages_of(row, stages), &known, &found);
    if (status != TW_STATUS_OK) return status;
    const double answers[] = {found.lower, found.upper, found.slope_at_lower, found.slope_at_upper};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_aging_rule aging_of(const vectors_row *row, uint8_t kind, double activation_k) {
    tw_aging_rule rule;
    memset(&rule, 0, sizeof rule);
    rule.kind = kind;
    rule.reference_c = vectors_number(row, "reference_c");
    rule.halving_k = vectors_number(row, "halving_k");
    rule.activation_k = activation_k;
    rule.least_factor = vectors_number(row, "least_factor");
    return rule;
}

static tw_status aging_factor(const vectors_row *row, double *out) {
    const tw_aging_rule rule =
        aging_of(row, (uint8_t)vectors_number(row, "kind"), vectors_number(row, "activation_k"));
    const tw_status status = tw_duty_aging_factor(&rule, vectors_number(row, "temp_c"), &out[0]);
    if (status == TW_STATUS_OK) out[1] = 1e5 / out[0];
    return status;
}

static tw_status halving(const vectors_row *row, double *out) {
    tw_aging_rule rule;
    const tw_status status = tw_duty_halving(vectors_number(row, "reference_c"), vectors_number(row, "halving_k"),
                                             vectors_number(row, "least_factor"), &rule);
    if (status != TW_STATUS_OK) return status;
    out[0] = rule.reference_c;
    out[1] = rule.halving_k;
    out[2] = rule.least_factor;
    return status;
}

static tw_status arrhenius(const vectors_row *row, double *out) {
    tw_aging_rule rule;
    const tw_status status =
        tw_duty_arrhenius(vectors_number(row, "reference_c"), vectors_number(row, "activation_k"), &rule);
    if (status != TW_STATUS_OK) return status;
    out[0] = rule.reference_c;
    out[1] = rule.activation_k;
    return status;
}

static tw_status fluid_life(const vectors_row *row, double *out) {
    const tw_aging_rule rule = aging_of(row, TW_AGING_KIND_HALVING, 0.0);
    double temps[MOST], hours[MOST];
    tw_fluid_bin bins[MOST];
    tw_fluid_life life;
    const size_t count = numbers(row, "temp_c", temps);
    numbers(row, "duration_h", hours);
    for (size_t i = 0; i < count; i++) {
        bins[i].temp_c = temps[i];
        bins[i].duration_h = hours[i];
    }
    const tw_status status = tw_duty_fluid_life(bins, count, vectors_number(row, "unknown_h"),
                                                vectors_number(row, "life_h"), &rule, &life);
    if (status != TW_STATUS_OK) return status;
    const double answers[] = {life.used,   life.used_lower,  life.used_upper,  life.known_h,
                              life.left_h, life.worst_share, life.worst_from_c};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status ranked(const vectors_row *row, double *out) {
    double lower[MOST], upper[MOST];
    tw_rank_interval ranks[MOST];
    const size_t count = numbers(row, "lower", lower);
    if (numbers(row, "upper", upper) != count) return TW_STATUS_COUNT; /* C gives one count for both */
    const tw_status status = tw_duty_rank_intervals(lower, upper, count, ranks);
    if (status != TW_STATUS_OK) return status;
    for (size_t i = 0; i < 3; i++) {
        out[2 * i] = ranks[i].first;
        out[2 * i + 1] = ranks[i].last;
    }
    return status;
}

static tw_status resampled_total(const vectors_row *row, double *out) {
    double periods[MOST];
    const size_t count = numbers(row, "periods", periods);
    return tw_duty_resampled_total(periods, count, strtoull(vectors_text(row, "seed"), NULL, 10),
                                   strtoull(vectors_text(row, "draw"), NULL, 10), out);
}

static tw_status ratio_of(const vectors_row *row, double *out) {
    const tw_ratio_rule rule = {vectors_number(row, "least"), vectors_number(row, "quantum"),
                                vectors_number(row, "u_rel"), (uint32_t)vectors_number(row, "block_rows")};
    double true_values[MOST], shown_values[MOST];
    tw_speeds_ratio r;
    const size_t count = numbers(row, "true_values", true_values);
    if (numbers(row, "shown_values", shown_values) != count) return TW_STATUS_COUNT; /* C gives one count for both */
    const tw_status status = tw_duty_ratio_of(true_values, shown_values, count, &rule, &r);
    if (status != TW_STATUS_OK) return status;
    const double answers[] = {r.ratio.value, r.ratio.u, r.scatter_u, r.step_u,  r.true_u,
                              r.mean_shown,  r.used,    r.slow,      r.missing, r.blocks};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status cause_out(tw_status status, const tw_ratio_cause *cause, double *out) {
    if (status != TW_STATUS_OK) return status;
    out[0] = cause->road.value;
    out[1] = cause->road.u;
    out[2] = cause->gear;
    out[3] = cause->weight;
    return status;
}

static tw_status other_driveline(const vectors_row *row, double *out) {
    const tw_driveline programmed = {
        vectors_number(row, "axle_programmed"), 1.0, {vectors_number(row, "circumference_programmed_mm"), 0.0}};
    const tw_driveline fitted = {
        vectors_number(row, "axle_fitted"),
        1.0,
        {vectors_number(row, "circumference_fitted_mm"), vectors_number(row, "circumference_fitted_u_mm")}};
    tw_ratio_cause cause;
    return cause_out(tw_duty_other_driveline(&programmed, &fitted, vectors_number(row, "weight"), &cause), &cause, out);
}

static tw_status other_teeth(const vectors_row *row, double *out) {
    tw_ratio_cause cause;
    const tw_status status =
        tw_duty_other_teeth((uint32_t)vectors_number(row, "programmed"), (uint32_t)vectors_number(row, "fitted"),
                            vectors_number(row, "weight"), &cause);
    if (status != TW_STATUS_OK) return status;
    out[0] = cause.road.value;
    out[1] = cause.gear;
    return status;
}

static tw_status weigh_causes(const vectors_row *row, double *out) {
    tw_ratios_seen seen;
    tw_ratio_cause causes[MOST / 4];
    tw_cause_fit fits[MOST / 4];
    tw_cause_found found;
    double cells[MOST];
    memset(&seen, 0, sizeof seen);
    seen.road.value = vectors_number(row, "road");
    seen.road.u = vectors_number(row, "road_u");
    seen.gear_known = *vectors_text(row, "gear") != '\0';
    if (seen.gear_known) {
        seen.gear.value = vectors_number(row, "gear");
        seen.gear.u = vectors_number(row, "gear_u");
    }
    const size_t count = numbers(row, "causes", cells) / 4;
    for (size_t i = 0; i < count; i++) {
        causes[i].road.value = cells[4 * i];
        causes[i].road.u = cells[4 * i + 1];
        causes[i].gear = cells[4 * i + 2];
        causes[i].weight = cells[4 * i + 3];
    }
    const tw_status status = tw_duty_weigh_causes(&seen, causes, count, vectors_number(row, "enough"),
                                                  vectors_number(row, "most_z"), fits, &found);
    if (status != TW_STATUS_OK) return status;
    const double answers[] = {(double)found.kind, found.best,       found.fit.chance, found.fit.road_z,
                              found.fit.gear_z,   fits[0].chance, fits[1].chance};
    memcpy(out, answers, sizeof answers);
    return status;
}

static const vectors_test TESTS[] = {
    {"duty_mesh_duty", mesh_duty},
    {"duty_decode", decode},
    {"duty_classify", classify},
    {"duty_step_error", step_error},
    {"duty_rainflow", rainflow},
    {"duty_residence", residence},
    {"duty_from_rating", from_rating},
    {"duty_damage", damage},
    {"duty_damage_interval", damage_interval},
    {"duty_aging_factor", aging_factor},
    {"duty_halving", halving},
    {"duty_arrhenius", arrhenius},
    {"duty_fluid_life", fluid_life},
    {"duty_rank_intervals", ranked},
    {"duty_resampled_total", resampled_total},
    {"duty_ratio_of", ratio_of},
    {"duty_other_driveline", other_driveline},
    {"duty_other_teeth", other_teeth},
    {"duty_weigh_causes", weigh_causes},
    {"duty_row", screen_row},
    {"duty_screen_power", screen_power},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
