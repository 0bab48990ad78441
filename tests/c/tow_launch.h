/* Vectors of criteria, launch, grip, rotating inertia and run-up. */
#ifndef TOW_LAUNCH_H
#define TOW_LAUNCH_H

#include "tow_load.h"
#include "trains.h"

static tw_rated_for launch_rated(const vectors_row *row) {
    const tw_rated_for rated = {
        load_number(row, "dual_rear") > 0.5,
        load_number(row, "gvwr_kg"),
        load_number(row, "trailer_kg"),
        load_number(row, "trailer_brakes") > 0.5,
    };
    return rated;
}

static tw_status launch_criterion_limits(const vectors_row *row, double *out) {
    const tw_rated_for rated = launch_rated(row);
    tw_limits limits = {0};
    const tw_status status = tw_tow_criterion_limits((int32_t)load_number(row, "criterion"), &rated, &limits);
    const double answers[] = {limits.lower, limits.upper};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_status launch_check_criterion(const vectors_row *row, double *out) {
    const tw_rated_for rated = launch_rated(row);
    const tw_reading value = load_reading(row, "value", "u");
    tw_rule rule;
    const tw_status ruled = load_rule(row, &rule);
    if (ruled < 0) return ruled;
    tw_criterion_check c;
    memset(&c, 0, sizeof c);
    const tw_status status = tw_tow_check_criterion((int32_t)load_number(row, "criterion"), &value, &rated, &rule, &c);
    const double answers[] = {c.limits.lower, c.limits.upper, c.chance, (double)c.outcome};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_driveline launch_driveline(const vectors_row *row, double u) {
    const tw_driveline line = {
        load_number(row, "axle_ratio"),
        load_number(row, "transfer_ratio"),
        {load_number(row, "circumference_mm"), u},
    };
    return line;
}

static tw_status launch_launch(const vectors_row *row, double *out) {
    const tw_launch launch = {
        load_reading(row, "turbine_nm", "turbine_u_nm"),
        load_number(row, "gear_ratio"),
        load_number(row, "gear_efficiency"),
        launch_driveline(row, load_number(row, "circumference_u_mm")),
        load_number(row, "axle_efficiency"),
        load_reading(row, "mass_kg", "mass_u_kg"),
        load_number(row, "rolling_coefficient"),
        load_number(row, "break_away_coefficient"),
    };
    tw_rule rule;
    const tw_status ruled = load_rule(row, &rule);
    if (ruled < 0) return ruled;
    static tw_launch_force f;
    const tw_status status = tw_tow_launch(&launch, load_number(row, "grade_pct"), &rule, &f);
    const double answers[] = {f.output_nm, f.tractive_n, f.grade_n, f.rolling_n, f.left_n, f.budget.u, f.judgment.chance,
        (double)f.judgment.verdict, f.largest_grade_pct, f.proven_grade_pct};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_status launch_grip_on_grade(const vectors_row *row, double *out) {
    const tw_stance stance = {
        load_number(row, "driven_axle_kg"), load_number(row, "truck_kg"),     load_number(row, "trailer_kg"),
        load_number(row, "wheelbase_mm"),   load_number(row, "cg_height_mm"), load_number(row, "hitch_height_mm"),
        load_number(row, "tail_up") > 0.5,
    };
    tw_launch_grip g = {0};
    const tw_status status = tw_tow_grip_on_grade(
        &stance, load_number(row, "grade_pct"), load_number(row, "tire_friction"), load_number(row, "rolling_coefficient"), &g);
    const double answers[] = {g.normal_n, g.grip_n, g.needed_n, g.largest_grade_pct};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_status launch_output_inertia_kg_m2(const vectors_row *row, double *out) {
    static tw_train train;
    static tw_state state;
    double last;
    tw_status status = build(row, &train, &last);
    if (status >= 0) status = tw_train_solve(&train, (uint32_t)load_number(row, "closed"), &state);
    if (status < 0) return status;
    const double inertia[3] = {load_number(row, "inertia_0"), load_number(row, "inertia_1"), load_number(row, "inertia_2")};
    return tw_tow_output_inertia_kg_m2(&state, inertia, 3, &out[0]);
}

static tw_status launch_equivalent_mass(const vectors_row *row, double *out) {
    const tw_driveline line = launch_driveline(row, 0.0);
    tw_equivalent_mass m = {0};
    const tw_status status = tw_tow_equivalent_mass(
        load_number(row, "mass_kg"), &line, load_number(row, "wheel_inertia_kg_m2"), load_number(row, "output_inertia_kg_m2"), &m);
    const double answers[] = {m.wheels_kg, m.train_kg, m.total_kg, m.factor};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_status launch_run_up(const vectors_row *row, double *out) {
    const double speed_rpm[8] = {800, 1100, 1400, 1800, 2200, 2600, 3000, 3400}, nm[8] = {340, 520, 640, 660, 650, 615, 560, 480};
    const double ratio[9] = {0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97};
    const double torque[9] = {1.92, 1.72, 1.51, 1.28, 1.17, 1.06, 1, 1, 1}, k[9] = {71, 71.3, 72.2, 74.7, 77.8, 84.1, 95, 128, 196};
    const tw_run_up_gear gears[4] = {
        {4.7, 0.96, 0.9, false}, {2.6, 0.965, 0.35, true}, {1.5, 0.97, 0.15, true}, {1.0, 0.98, 0.1, true}};
    tw_engine_curve engine;
    tw_characteristic converter;
    tw_status status = tw_converter_engine_curve(speed_rpm, nm, 8, 3600, &engine);
    if (status >= 0) status = tw_converter_characteristic(ratio, torque, k, 9, &converter);
    if (status < 0) return status;
    const tw_run_up run = {
        {load_number(row, "mass_kg"), load_number(row, "rolling_coefficient"), load_number(row, "drag_area_m2")},
        {load_number(row, "axle_ratio"), 1.0, {load_number(row, "circumference_mm"), 0.0}},
        load_number(row, "axle_efficiency"),
        load_number(row, "air_density_kg_m3"),
        load_number(row, "grade_pct"),
        load_number(row, "wheel_inertia_kg_m2"),
        load_number(row, "engine_inertia_kg_m2"),
        {load_number(row, "torque_factor"), load_number(row, "accessory_nm")},
        load_number(row, "lowest_locked_rpm"),
        load_number(row, "grip_n"),
        load_number(row, "shift_s"),
    };
    tw_run_up_time t = {0};
    status = tw_tow_run_up(&run, &engine, &converter, gears, 4, load_number(row, "from_km_h"), load_number(row, "to_km_h"), &t);
    const double answers[] = {
        (double)t.reaches, t.reached_km_h, t.time_s, t.distance_m, (double)t.shifts, (double)t.last_gear, t.start_n, t.start_m_s2};
    return load_answer(status, out, answers, sizeof answers);
}

#define TOW_LAUNCH_TESTS \
    {"tow_criterion_limits", launch_criterion_limits}, {"tow_check_criterion", launch_check_criterion}, \
    {"tow_launch", launch_launch}, {"tow_grip_on_grade", launch_grip_on_grade}, \
    {"tow_output_inertia_kg_m2", launch_output_inertia_kg_m2}, {"tow_equivalent_mass", launch_equivalent_mass}, \
    {"tow_run_up", launch_run_up}

#endif
