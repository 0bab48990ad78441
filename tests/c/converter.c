/* The converter chapter's vectors in C. */
#include "trains.h"

#define NUMBER(name) vectors_number(row, name)

static tw_status speed_ratio(const vectors_row *row, double *out) {
    return tw_converter_speed_ratio(NUMBER("impeller_rpm"), NUMBER("turbine_rpm"), out);
}

static tw_status efficiency(const vectors_row *row, double *out) {
    return tw_converter_efficiency(NUMBER("speed_ratio"), NUMBER("torque_ratio"), out);
}

static tw_status capacity_factor(const vectors_row *row, double *out) {
    return tw_converter_capacity_factor(NUMBER("impeller_rpm"), NUMBER("impeller_nm"), out);
}

static tw_status impeller_torque_nm(const vectors_row *row, double *out) {
    return tw_converter_impeller_torque_nm(NUMBER("impeller_rpm"), NUMBER("k_rpm_per_sqrt_nm"), out);
}

static tw_status from_output_side(const vectors_row *row, double *out) {
    return tw_converter_from_output_side(NUMBER("k_output_rpm_per_sqrt_nm"), NUMBER("speed_ratio"), NUMBER("torque_ratio"), out);
}

static tw_status from_torque_coefficient(const vectors_row *row, double *out) {
    return tw_converter_from_torque_coefficient(NUMBER("torque_coefficient"), NUMBER("density_kg_m3"), NUMBER("diameter_mm"), out);
}

/* A converter on a public page of worked mathematics, up to 0.3. */
static tw_status published(tw_characteristic *out) {
    const double ratio[4] = {0, 0.1, 0.2, 0.3}, torque[4] = {2.23, 2.07, 1.97, 1.84};
    double k[4] = {137.46, 137.06, 135.86, 135.66};
    for (int i = 0; i < 4; i++) k[i] = tw_units_per_sqrt_lbf_ft_to_per_sqrt_nm(k[i]);
    return tw_converter_characteristic(ratio, torque, k, 4, out);
}

static tw_status torque_at_nm(const vectors_row *row, double *out) {
    const double speed_rpm[3] = {1000, 1500, 2000}, nm[3] = {330, 365, 395};
    tw_engine_curve engine;
    tw_status status = tw_converter_engine_curve(speed_rpm, nm, 3, 5700, &engine);
    if (status >= 0) status = tw_converter_check_engine_curve(&engine);
    return status < 0 ? status : tw_converter_torque_at_nm(&engine, NUMBER("speed_rpm"), out);
}

static tw_status torque_ratio_at(const vectors_row *row, double *out) {
    tw_characteristic converter;
    const tw_status status = published(&converter);
    return status < 0 ? status : tw_converter_torque_ratio_at(&converter, NUMBER("speed_ratio"), out);
}

static tw_status capacity_factor_at(const vectors_row *row, double *out) {
    tw_characteristic converter;
    tw_status status = published(&converter);
    if (status >= 0) status = tw_converter_check_characteristic(&converter);
    return status < 0 ? status : tw_converter_capacity_factor_at(&converter, NUMBER("speed_ratio"), out);
}

static tw_status coupling_point(const vectors_row *row, double *out) {
    const double ratio[3] = {0, 0.8, 0.9}, k[3] = {70, 84, 100};
    const double torque[3] = {NUMBER("at_stall"), NUMBER("at_08"), NUMBER("at_09")};
    tw_characteristic converter;
    const tw_status status = tw_converter_characteristic(ratio, torque, k, 3, &converter);
    return status < 0 ? status : tw_converter_coupling_point(&converter, out);
}

/* The engine of a row and the converter behind it: see the top of converter_operating_points.csv. */
static tw_status drive(const vectors_row *row, tw_engine_curve *engine, tw_characteristic *converter) {
    static const struct { const char *name; size_t points; double max_rpm, rpm[10], nm[10]; int converter; } ENGINES[] = {
        {"gasoline", 10, 5700, {1000, 1500, 2000, 2500, 3000, 3500, 4000, 4500, 5000, 5500},
         {330, 365, 395, 415, 428, 436, 440, 430, 410, 375}, 0},
        {"diesel_mid", 8, 3600, {800, 1100, 1400, 1800, 2200, 2600, 3000, 3400}, {340, 520, 640, 660, 650, 615, 560, 480}, 1},
        {"diesel_high", 8, 3600, {800, 1100, 1400, 1800, 2200, 2600, 3000, 3400}, {390, 640, 800, 840, 825, 770, 690, 590}, 1},
        {"dip", 4, 5000, {800, 1200, 1600, 2000}, {300, 200, 600, 700}, 2},
        {"straight", 2, 5000, {1000, 2000}, {200, 800}, 2},
        {"weak", 2, 5000, {800, 2000}, {50, 60}, 2},
        {"strong", 2, 5000, {800, 2000}, {900, 900}, 2},
        {"humped", 2, 5000, {800, 3000}, {500, 450}, 3},
    };
    static const struct { size_t points; double ratio[9], torque[9], k[9]; } CONVERTERS[] = {
        {9, {0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97}, {1.88, 1.70, 1.50, 1.27, 1.17, 1.06, 1, 1, 1},
         {96.0, 96.4, 97.6, 101.0, 105.2, 113.7, 128.5, 173.0, 265.0}},
        {9, {0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97}, {1.92, 1.72, 1.51, 1.28, 1.17, 1.06, 1, 1, 1},
         {71.0, 71.3, 72.2, 74.7, 77.8, 84.1, 95.0, 128.0, 196.0}},
        {2, {0, 0.9}, {2, 1}, {70, 70}},
        {6, {0, 0.2, 0.4, 0.6, 0.8, 0.9}, {2, 1.75, 1.5, 1.28, 1.06, 1}, {80, 76, 70, 74, 90, 130}},
    };
    for (size_t i = 0; i < sizeof ENGINES / sizeof ENGINES[0]; i++) {
        if (strcmp(ENGINES[i].name, vectors_text(row, "engine")) != 0) continue;
        const int behind = ENGINES[i].converter;
        const tw_status status =
            tw_converter_engine_curve(ENGINES[i].rpm, ENGINES[i].nm, ENGINES[i].points, ENGINES[i].max_rpm, engine);
        if (status < 0) return status;
        return tw_converter_characteristic(
            CONVERTERS[behind].ratio, CONVERTERS[behind].torque, CONVERTERS[behind].k, CONVERTERS[behind].points, converter);
    }
    vectors_fail(row, "no engine", vectors_text(row, "engine"));
    return TW_STATUS_MISSING;
}

static tw_status operating_points(const vectors_row *row, double *out) {
    const tw_engine_today today = {NUMBER("torque_factor"), NUMBER("accessory_nm")};
    tw_engine_curve engine;
    tw_characteristic converter;
    tw_operating_points found;
    tw_status status = drive(row, &engine, &converter);
    if (status >= 0) status = tw_converter_operating_points(&engine, &today, &converter, NUMBER("turbine_rpm"), &found);
    if (status < 0) return status;
    out[0] = found.count;
    out[1] = out[2] = out[3] = 0;
    for (uint32_t i = 0; i < found.count; i++) out[1] += found.points[i].stable ? 1 : 0;
    if (found.count > 0) {
        out[2] = found.points[0].engine_rpm;
        out[3] = found.points[found.count - 1].engine_rpm;
    }
    return status;
}

static tw_status operating_point(const vectors_row *row, double *out) {
    const tw_engine_today today = {NUMBER("torque_factor"), NUMBER("accessory_nm")};
    tw_engine_curve engine;
    tw_characteristic converter;
    tw_operating_point point;
    tw_status status = drive(row, &engine, &converter);
    if (status >= 0) status = tw_converter_operating_point(&engine, &today, &converter, NUMBER("turbine_rpm"), &point);
    if (status < 0) return status;
    out[0] = point.engine_rpm;
    out[1] = point.speed_ratio;
    out[2] = point.torque_ratio;
    out[3] = point.k_rpm_per_sqrt_nm;
    out[4] = point.impeller_nm;
    out[5] = point.turbine_nm;
    out[6] = point.impeller_kw;
    out[7] = point.turbine_kw;
    out[8] = point.heat_kw;
    out[9] = point.efficiency;
    return status;
}

static tw_status air_correction_j1349(const vectors_row *row, double *out) {
    const tw_inlet_air air = {NUMBER("pressure_kpa_abs"), NUMBER("vapor_kpa_abs"), NUMBER("temp_c")};
    return tw_converter_air_correction_j1349(&air, out);
}

static tw_status in_test_range_j1349(const vectors_row *row, double *out) {
    const tw_inlet_air air = {NUMBER("pressure_kpa_abs"), NUMBER("vapor_kpa_abs"), NUMBER("temp_c")};
    bool inside;
    const tw_status status = tw_converter_in_test_range_j1349(&air, &inside);
    if (status >= 0) out[0] = inside ? 1 : 0;
    return status;
}

static tw_status air_torque_factor(const vectors_row *row, double *out) {
    const tw_inlet_air curve = {NUMBER("curve_kpa_abs"), 0, NUMBER("curve_c")};
    const tw_inlet_air day = {NUMBER("pressure_kpa_abs"), 0, NUMBER("temp_c")};
    return tw_converter_air_torque_factor(&curve, &day, out);
}

static tw_status stall_speed(const vectors_row *row, double *out) {
    const tw_stall_inputs inputs = {
        {NUMBER("torque_factor"), NUMBER("torque_factor_u")},
        {NUMBER("accessory_nm"), NUMBER("accessory_u_nm")},
        {NUMBER("k_factor"), NUMBER("k_factor_u")},
    };
    tw_engine_curve engine;
    tw_characteristic converter;
    tw_stall_speed stall;
    tw_status status = drive(row, &engine, &converter);
    if (status >= 0) status = tw_converter_stall_speed(&engine, &converter, &inputs, &stall);
    if (status < 0) return status;
    out[0] = stall.speed_rpm.value;
    out[1] = stall.speed_rpm.u;
    out[2] = stall.turbine_nm.value;
    out[3] = stall.turbine_nm.u;
    for (int i = 0; i < 3; i++) out[4 + i] = stall.budget.share[i];
    return status;
}

static tw_status judge_stall(const vectors_row *row, double *out) {
    const tw_stall_inputs inputs = {{1, NUMBER("torque_factor_u")}, {0, 0}, {1, NUMBER("k_factor_u")}};
    const double allow = NUMBER("allow_rpm");
    tw_measured_stall measured = {
        .speed_rpm = {NUMBER("measured_rpm"), NUMBER("measured_u_rpm")},
        .allow_rpm = {-allow, allow},
        .stator_share = 0.33,
        .stop_rpm = 200,
    };
    tw_engine_curve engine;
    tw_characteristic converter;
    tw_stall_verdict said;
    tw_status status = drive(row, &engine, &converter);
    if (status >= 0) status = tw_judge_conformance(0.95, &measured.rule);
    if (status >= 0) status = tw_converter_judge_stall(&engine, &converter, &inputs, &measured, &said);
    if (status < 0) return status;
    out[0] = said.difference_rpm.value;
    out[1] = said.difference_rpm.u;
    out[2] = said.judgment.chance;
    out[3] = said.judgment.verdict;
    out[4] = said.side;
    out[5] = said.torque_share;
    out[6] = said.k_share;
    return status;
}

static tw_status gear(const vectors_row *row, tw_state *state) {
    static tw_train train;
    double last;
    const tw_status status = build(row, &train, &last);
    return status < 0 ? status : tw_train_solve(&train, (uint32_t)NUMBER("closed"), state);
}

static tw_status plan_stall(const vectors_row *row, double *out) {
    static tw_state state;
    const tw_engine_today today = {1, 0};
    const tw_stall_ratings ratings = {NUMBER("rated_turbine_nm"), NUMBER("rated_output_nm"), 5};
    const tw_fluid_charge charge = {2.3, 860, 2000, NUMBER("start_c"), 150};
    tw_engine_curve engine;
    tw_characteristic converter;
    tw_operating_point stall;
    tw_stall_plan plan;
    tw_status status = drive(row, &engine, &converter);
    if (status >= 0) status = tw_converter_operating_point(&engine, &today, &converter, 0, &stall);
    if (status >= 0) status = gear(row, &state);
    if (status >= 0) status = tw_converter_plan_stall(&stall, &state, &ratings, &charge, &plan);
    if (status < 0) return status;
    out[0] = plan.output_nm;
    out[1] = plan.turbine_passed ? 1 : 0;
    out[2] = plan.output_passed ? 1 : 0;
    out[3] = plan.too_hot ? 1 : 0;
    out[4] = plan.allowed ? 1 : 0;
    out[5] = plan.rise_k;
    out[6] = plan.permitted_s;
    out[7] = plan.limit_turbine_nm;
    out[8] = plan.limit_engine_nm;
    out[9] = plan.limit_rpm;
    out[10] = plan.limit_heat_kw;
    out[11] = plan.limit_s;
    return status;
}

static tw_status element_torques(const vectors_row *row, double *out) {
    static tw_state state;
    tw_element_torques torques;
    tw_status status = gear(row, &state);
    if (status >= 0) status = tw_converter_element_torques(&state, NUMBER("turbine_nm"), &torques);
    if (status < 0) return status;
    out[0] = torques.torque_nm[0];
    out[1] = torques.torque_nm[3];
    out[2] = torques.torque_nm[5];
    out[3] = torques.known;
    out[4] = torques.unknown;
    return status;
}

static tw_status rise_k(const vectors_row *row, double *out) {
    const tw_fluid_charge charge = {NUMBER("volume_l"), NUMBER("density_kg_m3"), NUMBER("specific_heat_j_kg_k"), 70, 150};
    return tw_converter_rise_k(&charge, NUMBER("heat_kw"), NUMBER("time_s"), out);
}

static tw_status heat_s(const vectors_row *row, double *out) {
    const tw_fluid_charge charge = {
        NUMBER("volume_l"), NUMBER("density_kg_m3"), NUMBER("specific_heat_j_kg_k"), NUMBER("start_c"), NUMBER("most_c")};
    return tw_converter_heat_s(&charge, NUMBER("heat_kw"), out);
}

static tw_status lockup_slip(const vectors_row *row, double *out) {
    tw_slip_limits limits = {.target_rpm = NUMBER("target_rpm"), .alarm_rpm = NUMBER("alarm_rpm")};
    tw_reading engine, turbine;
    tw_lockup_slip slip;
    tw_status status = tw_judge_conformance(0.95, &limits.rule);
    if (status >= 0) status = tw_judge_quantized(NUMBER("engine_rpm"), NUMBER("quantum_rpm"), &engine);
    if (status >= 0) status = tw_judge_quantized(NUMBER("turbine_rpm"), NUMBER("quantum_rpm"), &turbine);
    if (status >= 0) status = tw_converter_lockup_slip(&engine, &turbine, &limits, &slip);
    if (status < 0) return status;
    out[0] = slip.slip_rpm.value;
    out[1] = slip.slip_rpm.u;
    out[2] = slip.on_target.verdict;
    out[3] = slip.within_alarm.verdict;
    out[4] = slip.within_alarm.chance;
    return status;
}

static const vectors_test TESTS[] = {
    {"converter_speed_ratio", speed_ratio},
    {"converter_efficiency", efficiency},
    {"converter_capacity_factor", capacity_factor},
    {"converter_impeller_torque_nm", impeller_torque_nm},
    {"converter_from_output_side", from_output_side},
    {"converter_from_torque_coefficient", from_torque_coefficient},
    {"converter_torque_at_nm", torque_at_nm},
    {"converter_torque_ratio_at", torque_ratio_at},
    {"converter_capacity_factor_at", capacity_factor_at},
    {"converter_coupling_point", coupling_point},
    {"converter_operating_points", operating_points},
    {"converter_operating_point", operating_point},
    {"converter_air_correction_j1349", air_correction_j1349},
    {"converter_in_test_range_j1349", in_test_range_j1349},
    {"converter_air_torque_factor", air_torque_factor},
    {"converter_stall_speed", stall_speed},
    {"converter_judge_stall", judge_stall},
    {"converter_plan_stall", plan_stall},
    {"converter_element_torques", element_torques},
    {"converter_rise_k", rise_k},
    {"converter_heat_s", heat_s},
    {"converter_lockup_slip", lockup_slip},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
