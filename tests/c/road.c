/* The road chapter's vectors in C. */
#include "vectors.h"

static double number(const vectors_row *row, const char *column) { return vectors_number(row, column); }

static tw_driveline driveline(const vectors_row *row) {
    const tw_driveline line = {
        number(row, "axle_ratio"), number(row, "transfer_ratio"), {number(row, "circumference_mm"), 0.0}};
    return line;
}

static tw_driveline with_u(const vectors_row *row) {
    tw_driveline line = driveline(row);
    line.circumference_mm.u = number(row, "u_circumference_mm");
    return line;
}

/* A driveline without a transfer case from the columns with this prefix. */
static tw_driveline prefixed(const vectors_row *row, const char *prefix) {
    char axle_ratio[64], circumference_mm[64];
    snprintf(axle_ratio, sizeof axle_ratio, "%s_axle_ratio", prefix);
    snprintf(circumference_mm, sizeof circumference_mm, "%s_circumference_mm", prefix);
    const tw_driveline line = {number(row, axle_ratio), 1.0, {number(row, circumference_mm), 0.0}};
    return line;
}

static tw_driveline fitted(const vectors_row *row) {
    tw_driveline line = prefixed(row, "fitted");
    line.circumference_mm.u = number(row, "u_fitted_circumference_mm");
    return line;
}

static tw_engaged engaged(const vectors_row *row) {
    const tw_engaged gear = {number(row, "gear_ratio"), number(row, "slip_rpm")};
    return gear;
}

static tw_combination combination(const vectors_row *row) {
    const tw_combination truck = {
        number(row, "mass_kg"), number(row, "rolling_coefficient"), number(row, "drag_area_m2")};
    return truck;
}

static tw_status road_km_h(const vectors_row *row, double *out) {
    const tw_driveline line = driveline(row);
    return tw_road_road_km_h(&line, number(row, "output_rpm"), &out[0]);
}

static tw_status output_rpm(const vectors_row *row, double *out) {
    const tw_driveline line = driveline(row);
    return tw_road_output_rpm(&line, number(row, "road_km_h"), &out[0]);
}

static tw_status speeds(tw_status status, const tw_shaft_speeds *all, double *out) {
    if (status < 0) return status;
    out[0] = all->road_km_h;
    out[1] = all->wheel_rpm;
    out[2] = all->output_rpm;
    out[3] = all->input_rpm;
    out[4] = all->engine_rpm;
    out[5] = all->u_rel;
    return status;
}

static tw_status speeds_at_road(const vectors_row *row, double *out) {
    const tw_driveline line = with_u(row);
    const tw_engaged gear = engaged(row);
    tw_shaft_speeds all;
    return speeds(tw_road_speeds_at_road(&line, &gear, number(row, "road_km_h"), &all), &all, out);
}

static tw_status speeds_at_output(const vectors_row *row, double *out) {
    const tw_driveline line = with_u(row);
    const tw_engaged gear = engaged(row);
    tw_shaft_speeds all;
    return speeds(tw_road_speeds_at_output(&line, &gear, number(row, "output_rpm"), &all), &all, out);
}

static tw_status speeds_at_engine(const vectors_row *row, double *out) {
    const tw_driveline line = with_u(row);
    const tw_engaged gear = engaged(row);
    tw_shaft_speeds all;
    return speeds(tw_road_speeds_at_engine(&line, &gear, number(row, "engine_rpm"), &all), &all, out);
}

static tw_status shift(tw_status status, const tw_shift_point *point, double *out) {
    if (status < 0) return status;
    out[0] = point->before_km_h;
    out[1] = point->before_rpm;
    out[2] = point->after_km_h;
    out[3] = point->after_rpm;
    return status;
}

static tw_status shift_at_output_speed(const vectors_row *row, double *out) {
    const tw_driveline before = prefixed(row, "before"), after = prefixed(row, "after");
    tw_shift_point point;
    return shift(tw_road_shift_at_output_speed(&before, &after, number(row, "output_rpm"), &point), &point, out);
}

static tw_status shift_at_road_speed(const vectors_row *row, double *out) {
    const tw_driveline before = prefixed(row, "before"), after = prefixed(row, "after");
    tw_shift_point point;
    return shift(tw_road_shift_at_road_speed(&before, &after, number(row, "road_km_h"), &point), &point, out);
}

static tw_status speedometer(const vectors_row *row, double *out) {
    const tw_driveline programmed = prefixed(row, "programmed"), on_truck = fitted(row);
    tw_speedometer meter;
    const tw_status status = tw_road_speedometer(&programmed, &on_truck, number(row, "true_km_h"), &meter);
    if (status < 0) return status;
    out[0] = meter.true_over_shown;
    out[1] = meter.shown_km_h.value;
    out[2] = meter.shown_km_h.u;
    return status;
}

static tw_status bounds(tw_status status, const tw_limits *limits, double *out) {
    if (status < 0) return status;
    out[0] = limits->lower;
    out[1] = limits->upper;
    return status;
}

static tw_status limits_un_r39(const vectors_row *row, double *out) {
    tw_limits limits;
    return bounds(tw_road_limits_un_r39(number(row, "true_km_h"), &limits), &limits, out);
}

static tw_status limits_49_cfr_393_82(const vectors_row *row, double *out) {
    tw_limits limits;
    return bounds(tw_road_limits_49_cfr_393_82(number(row, "true_km_h"), &limits), &limits, out);
}

static tw_status numbers_to_program(const vectors_row *row, double *out) {
    const tw_driveline programmed = prefixed(row, "programmed"), on_truck = fitted(row);
    tw_numbers_to_program numbers;
    const tw_status status =
        tw_road_numbers_to_program(&programmed, &on_truck, number(row, "pulses_per_rev"), &numbers);
    if (status < 0) return status;
    out[0] = numbers.axle_ratio;
    out[1] = numbers.circumference_mm;
    out[2] = numbers.rev_per_km;
    out[3] = numbers.rev_per_mile;
    out[4] = numbers.pulses_per_km;
    out[5] = numbers.pulses_per_mile;
    out[6] = numbers.axle_ratio_to_fit;
    out[7] = numbers.u_rel;
    return status;
}

static tw_status road_load(const vectors_row *row, double *out) {
    const tw_combination truck = combination(row);
    tw_road_load load;
    const tw_status status = tw_road_road_load(
        &truck, number(row, "air_density_kg_m3"), number(row, "speed_km_h"), number(row, "grade_pct"), &load);
    if (status < 0) return status;
    out[0] = load.grade_deg;
    out[1] = load.rolling_n;
    out[2] = load.aero_n;
    out[3] = load.grade_n;
    out[4] = load.total_n;
    out[5] = load.power_kw;
    return status;
}

static tw_status grade_held(const vectors_row *row, double *out) {
    const tw_combination truck = combination(row);
    tw_grade_held held;
    const tw_status status = tw_road_grade_held(
        &truck, number(row, "air_density_kg_m3"), number(row, "speed_km_h"), number(row, "force_n"), &held);
    if (status < 0) return status;
    out[0] = held.aero_n;
    out[1] = held.left_n;
    out[2] = held.left_over_weight;
    out[3] = held.grade_deg;
    out[4] = held.grade_pct;
    return status;
}

static tw_status tractive_force_n(const vectors_row *row, double *out) {
    const tw_driveline line = driveline(row);
    return tw_road_tractive_force_n(&line, number(row, "output_torque_nm"), number(row, "efficiency"), &out[0]);
}

static tw_status output_torque_nm(const vectors_row *row, double *out) {
    const tw_driveline line = driveline(row);
    return tw_road_output_torque_nm(&line, number(row, "force_n"), number(row, "efficiency"), &out[0]);
}

static tw_status coast_down_load(const vectors_row *row, double *out) {
    const tw_coast_down coefficients = {
        number(row, "a_n"), number(row, "b_n_per_km_h"), number(row, "c_n_per_km_h2")};
    tw_coast_down_load load;
    const tw_status status = tw_road_coast_down_load(&coefficients, number(row, "speed_km_h"), &load);
    if (status < 0) return status;
    out[0] = load.constant_n;
    out[1] = load.linear_n;
    out[2] = load.square_n;
    out[3] = load.total_n;
    out[4] = load.power_kw;
    return status;
}

static tw_status from_lbf_mph(const vectors_row *row, double *out) {
    tw_coast_down coefficients;
    const tw_status status = tw_road_from_lbf_mph(
        number(row, "a_lbf"), number(row, "b_lbf_per_mph"), number(row, "c_lbf_per_mph2"), &coefficients);
    if (status < 0) return status;
    out[0] = coefficients.a_n;
    out[1] = coefficients.b_n_per_km_h;
    out[2] = coefficients.c_n_per_km_h2;
    return status;
}

static tw_status rolling_coefficient_at(const vectors_row *row, double *out) {
    return tw_road_rolling_coefficient_at(number(row, "speed_km_h"), &out[0]);
}

static tw_status grade_pct(const vectors_row *row, double *out) {
    return tw_road_grade_pct(number(row, "grade_deg"), &out[0]);
}

static tw_status grade_deg(const vectors_row *row, double *out) {
    return tw_road_grade_deg(number(row, "grade_pct"), &out[0]);
}

static tw_status mean_grade_pct(const vectors_row *row, double *out) {
    return tw_road_mean_grade_pct(number(row, "rise_m"), number(row, "distance_m"), &out[0]);
}

static tw_status standard_air(const vectors_row *row, double *out) {
    tw_air air;
    const tw_status status = tw_road_standard_air(number(row, "altitude_m"), &air);
    if (status < 0) return status;
    out[0] = air.geopotential_m;
    out[1] = air.temp_c;
    out[2] = air.pressure_kpa_abs;
    out[3] = air.density_kg_m3;
    return status;
}

static tw_status density_of_air(const vectors_row *row, double *out) {
    return tw_road_density_of_air(number(row, "pressure_kpa_abs"), number(row, "temp_c"), &out[0]);
}

static const vectors_test TESTS[] = {
    {"road_road_km_h", road_km_h},
    {"road_output_rpm", output_rpm},
    {"road_speeds_at_road", speeds_at_road},
    {"road_speeds_at_output", speeds_at_output},
    {"road_speeds_at_engine", speeds_at_engine},
    {"road_shift_at_output_speed", shift_at_output_speed},
    {"road_shift_at_road_speed", shift_at_road_speed},
    {"road_speedometer", speedometer},
    {"road_limits_un_r39", limits_un_r39},
    {"road_limits_49_cfr_393_82", limits_49_cfr_393_82},
    {"road_numbers_to_program", numbers_to_program},
    {"road_road_load", road_load},
    {"road_grade_held", grade_held},
    {"road_tractive_force_n", tractive_force_n},
    {"road_output_torque_nm", output_torque_nm},
    {"road_coast_down_load", coast_down_load},
    {"road_from_lbf_mph", from_lbf_mph},
    {"road_rolling_coefficient_at", rolling_coefficient_at},
    {"road_grade_pct", grade_pct},
    {"road_grade_deg", grade_deg},
    {"road_mean_grade_pct", mean_grade_pct},
    {"road_standard_air", standard_air},
    {"road_density_of_air", density_of_air},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
