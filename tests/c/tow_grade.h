/* Vectors of load per gear on a grade, heat, coolers and roads. */
#ifndef TOW_GRADE_H
#define TOW_GRADE_H

#include "vectors.h"

enum { GRADE_LIST = 32 };

static double grade_number(const vectors_row *row, const char *column) { return vectors_number(row, column); }

/* Groups by spaces, parts of a group by colons, one list for each part; gives the number of groups. */
static size_t grade_groups(const vectors_row *row, const char *column, double lists[3][GRADE_LIST]) {
    const char *text = vectors_text(row, column);
    size_t count = 0;
    for (; *text != '\0' && count < GRADE_LIST; count++) {
        for (int part = 0; part < 3; part++) {
            char *end = NULL;
            lists[part][count] = strtod(text, &end);
            if (end == text) vectors_fail(row, "not numbers:", column);
            text = end;
            if (*text != ':') break;
            text++;
        }
        while (*text == ' ') text++;
    }
    return count;
}

static tw_status grade_gearing(const vectors_row *row, tw_gearing *gearing) {
    double lists[3][GRADE_LIST];
    tw_offered_gear gears[GRADE_LIST];
    const size_t count = grade_groups(row, "gears", lists);
    for (size_t i = 0; i < count; i++) {
        const tw_offered_gear gear = {lists[0][i], lists[1][i], 0, 0};
        gears[i] = gear;
    }
    return tw_tow_gearing(gears, count, grade_number(row, "rated_input_nm"), grade_number(row, "rated_reverse_nm"),
                          grade_number(row, "rated_output_nm"), gearing);
}

static tw_status grade_rig(const vectors_row *row, tw_rig *rig) {
    double lists[3][GRADE_LIST];
    const tw_haul haul = {
        {grade_number(row, "mass_kg"), grade_number(row, "rolling_coefficient"), grade_number(row, "drag_area_m2")},
        {grade_number(row, "axle_ratio"), 1.0, {grade_number(row, "circumference_mm"), 0.0}},
        grade_number(row, "axle_efficiency"),
        grade_number(row, "air_density_kg_m3"),
    };
    const tw_gear_rule rule = {
        grade_number(row, "torque_reserve"), grade_number(row, "lowest_locked_rpm"), grade_number(row, "speed_step_km_h")};
    memset(rig, 0, sizeof *rig);
    rig->haul = haul;
    rig->rule = rule;
    const tw_status status = grade_gearing(row, &rig->gearing);
    if (status < 0) return status;
    const size_t points = grade_groups(row, "engine", lists);
    return tw_converter_engine_curve(lists[0], lists[1], points, grade_number(row, "max_rpm"), &rig->engine);
}

static double grade_place(uint32_t gear) { return gear == TW_NO_GEAR ? -1.0 : (double)gear; }

static tw_status grade_new(const vectors_row *row, double *out) {
    tw_gearing gearing;
    const tw_status status = grade_gearing(row, &gearing);
    if (status < 0) return status;
    out[0] = gearing.count;
    out[1] = gearing.gears[0].ratio;
    out[2] = gearing.gears[gearing.count - 1].efficiency;
    return status;
}

static tw_status grade_pull(const vectors_row *row, double *out) {
    tw_rig rig;
    tw_pull pull;
    tw_status status = grade_rig(row, &rig);
    if (status >= 0) status = tw_tow_pull(&rig, grade_number(row, "grade_pct"), grade_number(row, "speed_km_h"), &pull);
    if (status < 0) return status;
    const tw_gear_pull look = pull.gears[(size_t)grade_number(row, "look")];
    const double answers[] = {pull.load.total_n, pull.output_rpm, pull.output_nm, pull.use_of_output, grade_place(pull.chosen),
                              grade_place(pull.advised), (double)pull.limit, pull.use_of_limit, look.engine_rpm, look.input_nm,
                              look.full_nm, look.reserve, look.use_of_input, (double)look.standing};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status grade_pull_slowed(const vectors_row *row, double *out) {
    tw_rig rig;
    tw_pull pull;
    tw_status status = grade_rig(row, &rig);
    if (status >= 0) status = tw_tow_pull_slowed(&rig, grade_number(row, "grade_pct"), grade_number(row, "speed_km_h"), &pull);
    if (status < 0) return status;
    out[0] = pull.speed_km_h;
    out[1] = grade_place(pull.chosen);
    out[2] = pull.gears[pull.chosen].input_nm;
    return status;
}

static tw_status grade_largest_speed(const vectors_row *row, double *out) {
    tw_rig rig;
    tw_largest_speed found;
    tw_status status = grade_rig(row, &rig);
    if (status >= 0) {
        const bool within = grade_number(row, "within_ratings") > 0.5;
        status = tw_tow_largest_speed(&rig, grade_number(row, "grade_pct"), grade_number(row, "at_most_km_h"), within, &found);
    }
    if (status < 0) return status;
    out[0] = found.speed_km_h;
    out[1] = grade_place(found.gear);
    out[2] = found.use_of_input;
    out[3] = (double)found.limit;
    return status;
}

static tw_status grade_unlocked_pull(const vectors_row *row, double *out) {
    /* The tight converter of the demonstration. */
    static const double RATIO[] = {0.0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97};
    static const double TORQUE[] = {1.92, 1.72, 1.51, 1.28, 1.17, 1.06, 1.0, 1.0, 1.0};
    static const double K[] = {71.0, 71.3, 72.2, 74.7, 77.8, 84.1, 95.0, 128.0, 196.0};
    tw_rig rig;
    tw_characteristic converter;
    tw_unlocked_pull p;
    tw_status status = grade_rig(row, &rig);
    if (status >= 0) status = tw_converter_characteristic(RATIO, TORQUE, K, 9, &converter);
    if (status >= 0) {
        status = tw_tow_unlocked_pull(&rig, &converter, (uint32_t)grade_number(row, "gear"), grade_number(row, "grade_pct"),
                                      grade_number(row, "speed_km_h"), &p);
    }
    if (status < 0) return status;
    const double answers[] = {p.turbine_rpm, p.turbine_nm, p.speed_ratio,   p.torque_ratio, p.engine_rpm,
                              p.engine_nm,   p.reserve,    p.holds ? 1 : 0, p.use_of_input, p.converter_kw};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status grade_unit_loss(const vectors_row *row, double *out) {
    const tw_running running = {
        grade_number(row, "input_nm"), grade_number(row, "input_rpm"),  grade_number(row, "efficiency"),      grade_number(row, "drag_nm"),
        grade_number(row, "pump_kpa"), grade_number(row, "pump_l_min"), grade_number(row, "pump_efficiency"), grade_number(row, "converter_kw"),
    };
    tw_unit_loss loss;
    const tw_status status = tw_tow_unit_loss(&running, &loss);
    if (status < 0) return status;
    const double answers[] = {loss.mesh_kw, loss.drag_kw, loss.pump_kw, loss.converter_kw, loss.total_kw};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status grade_converter_loss_kw(const vectors_row *row, double *out) {
    return tw_tow_converter_loss_kw(grade_number(row, "engine_nm"), grade_number(row, "engine_rpm"), grade_number(row, "speed_ratio"),
                                    grade_number(row, "torque_ratio"), &out[0]);
}

static tw_status grade_through_flow_rise(const vectors_row *row, double *out) {
    tw_through_flow flow;
    const tw_status status =
        tw_tow_through_flow_rise(grade_number(row, "power_kw"), grade_number(row, "efficiency"), grade_number(row, "flow_l_min"),
                                 grade_number(row, "density_kg_m3"), grade_number(row, "specific_heat_j_kg_k"), &flow);
    if (status < 0) return status;
    out[0] = flow.loss_kw;
    out[1] = flow.rise_k;
    return status;
}

static tw_status grade_flow_heat_w_k(const vectors_row *row, double *out) {
    return tw_tow_flow_heat_w_k(grade_number(row, "flow_l_min"), grade_number(row, "density_kg_m3"),
                                grade_number(row, "specific_heat_j_kg_k"), &out[0]);
}

static tw_heat_node grade_node(const vectors_row *row) {
    const tw_heat_node node = {
        grade_number(row, "heat_capacity_j_k"), grade_number(row, "case_w_k"),     grade_number(row, "air_c"),
        grade_number(row, "cooler_w_k"),        grade_number(row, "cooler_air_c"),
    };
    return node;
}

static tw_status grade_warmed(const vectors_row *row, double *out) {
    const tw_heat_node node = grade_node(row);
    tw_warmed warmed;
    const tw_status status =
        tw_tow_warmed(&node, grade_number(row, "start_c"), grade_number(row, "loss_kw"), grade_number(row, "time_s"), &warmed);
    if (status < 0) return status;
    out[0] = warmed.temp_c;
    out[1] = warmed.steady_c;
    out[2] = warmed.time_constant_s;
    return status;
}

static tw_status grade_time_to(const vectors_row *row, double *out) {
    const tw_heat_node node = grade_node(row);
    tw_time_to time;
    const tw_status status =
        tw_tow_time_to(&node, grade_number(row, "start_c"), grade_number(row, "loss_kw"), grade_number(row, "limit_c"), &time);
    if (status < 0) return status;
    out[0] = time.time_s;
    out[1] = time.steady_c;
    out[2] = time.reached ? 1 : 0;
    return status;
}

static tw_status grade_cooler_needed_w_k(const vectors_row *row, double *out) {
    const tw_heat_node node = grade_node(row);
    return tw_tow_cooler_needed_w_k(&node, grade_number(row, "loss_kw"), grade_number(row, "limit_c"), &out[0]);
}

static tw_arrangement grade_arrangement(const vectors_row *row) {
    static const char *const NAMES[] = {"counterflow", "crossflow", "parallel"};
    const char *text = vectors_text(row, "arrangement");
    for (uint8_t i = 0; i < 3; i++) {
        if (strcmp(NAMES[i], text) == 0) return i;
    }
    vectors_fail(row, "no arrangement", text);
    return 0;
}

static tw_status grade_effectiveness(const vectors_row *row, double *out) {
    return tw_tow_effectiveness(grade_arrangement(row), grade_number(row, "transfer_units"), grade_number(row, "capacity_ratio"), &out[0]);
}

static tw_status grade_transfer_units(const vectors_row *row, double *out) {
    return tw_tow_transfer_units(grade_arrangement(row), grade_number(row, "effectiveness"), grade_number(row, "capacity_ratio"), &out[0]);
}

static tw_status grade_cooler_heat(const vectors_row *row, double *out) {
    const tw_cooler cooler = {
        grade_number(row, "ua_w_k"), grade_number(row, "oil_w_k"), grade_number(row, "air_w_k"), grade_arrangement(row)};
    tw_cooler_heat heat;
    const tw_status status = tw_tow_cooler_heat(&cooler, grade_number(row, "oil_c"), grade_number(row, "air_c"), &heat);
    if (status < 0) return status;
    const double answers[] = {heat.effectiveness, heat.conductance_w_k, heat.power_kw, heat.oil_out_c, heat.air_out_c};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status grade_cooler_size(const vectors_row *row, double *out) {
    const tw_cooler_task task = {grade_number(row, "oil_in_c"), grade_number(row, "oil_out_c"), grade_number(row, "air_in_c")};
    tw_cooler_size size;
    const tw_status status =
        tw_tow_cooler_size(grade_arrangement(row), grade_number(row, "oil_w_k"), grade_number(row, "air_w_k"), &task, &size);
    if (status < 0) return status;
    const double answers[] = {size.power_kw, size.air_out_c, size.effectiveness, size.ua_w_k, size.log_mean_k};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_heat_model grade_heat(const vectors_row *row) {
    const tw_heat_model heat = {
        grade_number(row, "drag_nm"),         grade_number(row, "pump_kpa"), grade_number(row, "pump_l_min"),
        grade_number(row, "pump_efficiency"), grade_node(row),               grade_number(row, "limit_c"),
    };
    return heat;
}

static tw_status grade_climb(const vectors_row *row, double *out) {
    double lists[3][GRADE_LIST];
    tw_road_piece pieces[GRADE_LIST];
    tw_driven_piece driven[GRADE_LIST];
    const size_t count = grade_groups(row, "pieces", lists);
    for (size_t i = 0; i < count; i++) {
        const tw_road_piece piece = {lists[0][i], lists[1][i], lists[2][i]};
        pieces[i] = piece;
    }
    const tw_heat_model heat = grade_heat(row);
    tw_rig rig;
    tw_climb c;
    tw_status status = grade_rig(row, &rig);
    if (status >= 0) status = tw_tow_climb(&rig, &heat, grade_number(row, "start_c"), pieces, count, driven, &c);
    if (status < 0) return status;
    const tw_driven_piece last = driven[count - 1];
    const double answers[] = {c.distance_m,    c.up_m,          c.down_m,       c.time_s,       c.peak_c,
                              c.peak_piece,    c.end_c,         c.limit_after_s, c.limit_after_m, c.over_limit_s,
                              c.heat_j,        c.wheel_work_j,  c.lift_work_j,  c.use_of_rating, last.speed_km_h,
                              grade_place(last.gear), last.loss_kw, last.end_c};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status grade_cool_speed(const vectors_row *row, double *out) {
    const tw_heat_model heat = grade_heat(row);
    tw_rig rig;
    tw_cool_pull cool;
    tw_status status = grade_rig(row, &rig);
    if (status >= 0) status = tw_tow_cool_speed(&rig, &heat, grade_number(row, "grade_pct"), grade_number(row, "speed_km_h"), &cool);
    if (status < 0) return status;
    const double answers[] = {cool.pull.speed_km_h, grade_place(cool.pull.chosen), cool.loss_kw, cool.steady_c, cool.steps};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status grade_smooth(const vectors_row *row, double *out) {
    double distance[3][GRADE_LIST], elevation[3][GRADE_LIST];
    tw_slope_point points[GRADE_LIST];
    const size_t count = grade_groups(row, "distance_m", distance);
    /* A list of another length is refused by the slices of Rust and Python; C has one count for both. */
    if (grade_groups(row, "elevation_m", elevation) != count) return TW_STATUS_COUNT;
    const tw_elevation_noise noise = {grade_number(row, "u_m"), grade_number(row, "correlation_m")};
    const tw_status status = tw_tow_smooth(distance[0], elevation[0], count, grade_number(row, "window_m"), &noise, points);
    if (status < 0) return status;
    const tw_slope_point point = points[(size_t)grade_number(row, "look")];
    out[0] = point.elevation_m;
    out[1] = point.grade_pct;
    out[2] = point.u_grade_pct;
    out[3] = point.points;
    return status;
}

static tw_status grade_total_climb(const vectors_row *row, double *out) {
    double elevation[3][GRADE_LIST];
    const size_t count = grade_groups(row, "elevation_m", elevation);
    tw_total_climb climb;
    const tw_status status = tw_tow_total_climb(elevation[0], count, grade_number(row, "dead_band_m"), &climb);
    if (status < 0) return status;
    out[0] = climb.up_m;
    out[1] = climb.down_m;
    out[2] = climb.net_m;
    out[3] = climb.turns;
    return status;
}

static tw_status grade_pieces(const vectors_row *row, double *out) {
    double distance[3][GRADE_LIST], elevation[3][GRADE_LIST];
    tw_road_piece pieces[GRADE_LIST];
    uint32_t count = 0, again = 0;
    const size_t points = grade_groups(row, "distance_m", distance);
    if (grade_groups(row, "elevation_m", elevation) != points) return TW_STATUS_COUNT;
    const double piece_m = grade_number(row, "piece_m"), speed_km_h = grade_number(row, "speed_km_h");
    tw_status status = tw_tow_pieces(distance[0], elevation[0], points, piece_m, speed_km_h, NULL, 0, &count);
    if (status >= 0 && count <= GRADE_LIST) {
        status = tw_tow_pieces(distance[0], elevation[0], points, piece_m, speed_km_h, pieces, count, &again);
    }
    if (status < 0) return status;
    const tw_road_piece piece = pieces[(size_t)grade_number(row, "look")];
    out[0] = again;
    out[1] = piece.length_m;
    out[2] = piece.grade_pct;
    return status;
}

#define TOW_GRADE_TESTS                                                                                                 \
    {"tow_new", grade_new}, {"tow_pull", grade_pull}, {"tow_pull_slowed", grade_pull_slowed},                           \
        {"tow_largest_speed", grade_largest_speed}, {"tow_unlocked_pull", grade_unlocked_pull},                         \
        {"tow_unit_loss", grade_unit_loss}, {"tow_converter_loss_kw", grade_converter_loss_kw},                         \
        {"tow_through_flow_rise", grade_through_flow_rise}, {"tow_flow_heat_w_k", grade_flow_heat_w_k},                 \
        {"tow_warmed", grade_warmed}, {"tow_time_to", grade_time_to}, {"tow_cooler_needed_w_k", grade_cooler_needed_w_k}, \
        {"tow_effectiveness", grade_effectiveness}, {"tow_transfer_units", grade_transfer_units},                       \
        {"tow_cooler_heat", grade_cooler_heat}, {"tow_cooler_size", grade_cooler_size}, {"tow_climb", grade_climb},     \
        {"tow_cool_speed", grade_cool_speed}, {"tow_smooth", grade_smooth}, {"tow_total_climb", grade_total_climb},     \
        {"tow_pieces", grade_pieces}

#endif
