/* Vectors of pumps, gaps, orifices, regulators, suspects of a pressure table and cooler flow. */
#include "trains.h"
#include <stdbool.h>

#define NUMBER(column) vectors_number(row, column)

static tw_reading reading(const vectors_row *row, const char *value, const char *u) {
    const tw_reading of = {vectors_number(row, value), vectors_number(row, u)};
    return of;
}

static tw_status rule_of(const vectors_row *row, tw_rule *rule) {
    return tw_judge_stated_chances(NUMBER("go"), NUMBER("no_go"), rule);
}

static tw_fluid fluid(const vectors_row *row) {
    const tw_fluid of = {NUMBER("density_15c_kg_m3"), NUMBER("expansion_per_k"), NUMBER("viscosity_40c_mm2_s"), NUMBER("viscosity_100c_mm2_s")};
    return of;
}

/* Copies the answers out if the status is one. */
static tw_status answer(tw_status status, double *out, const double *answers, size_t size) {
    if (status >= 0) memcpy(out, answers, size);
    return status;
}

static tw_status external_gear_cm3_rev(const vectors_row *row, double *out) {
    return tw_hydraulic_external_gear_cm3_rev(NUMBER("tip_diameter_mm"), NUMBER("root_diameter_mm"), NUMBER("face_mm"), out);
}

static tw_status external_gear_by_centers_cm3_rev(const vectors_row *row, double *out) {
    return tw_hydraulic_external_gear_by_centers_cm3_rev(NUMBER("tip_diameter_mm"), NUMBER("center_distance_mm"), NUMBER("face_mm"), out);
}

static tw_status chamber_displacement(const vectors_row *row, double *out) {
    const tw_internal_gear_pump pump = {
        (uint32_t)NUMBER("inner_teeth"), (uint32_t)NUMBER("outer_teeth"), NUMBER("chamber_max_mm2"), NUMBER("chamber_min_mm2"), NUMBER("face_mm"),
    };
    tw_chamber_displacement of = {0};
    const tw_status status = tw_hydraulic_chamber_displacement(&pump, &of);
    const double answers[] = {of.inner_cm3_rev, of.outer_cm3_rev};
    return answer(status, out, answers, sizeof answers);
}

static tw_status vane_cm3_rev(const vectors_row *row, double *out) {
    return tw_hydraulic_vane_cm3_rev(NUMBER("cam_diameter_mm"), NUMBER("rotor_diameter_mm"), NUMBER("eccentricity_mm"), NUMBER("face_mm"), out);
}

static tw_status field_rule_cm3_rev(const vectors_row *row, double *out) {
    return tw_hydraulic_field_rule_cm3_rev(NUMBER("bore_diameter_mm"), NUMBER("across_bores_mm"), NUMBER("face_mm"), out);
}

static tw_status volumetric_efficiency(const vectors_row *row, double *out) {
    return tw_hydraulic_volumetric_efficiency(NUMBER("delivered_l_min"), NUMBER("displacement_cm3_rev"), NUMBER("speed_rpm"), out);
}

static tw_status oil_at(const vectors_row *row, double *out) {
    const tw_fluid of = fluid(row);
    const tw_reading temp = reading(row, "temp_c", "temp_u_c");
    tw_oil_at oil = {0};
    const tw_status status = tw_hydraulic_oil_at(&of, &temp, &oil);
    const double answers[] = {oil.density_kg_m3, oil.viscosity_mm2_s, oil.viscosity_mpa_s.value, oil.viscosity_mpa_s.u};
    return answer(status, out, answers, sizeof answers);
}

static tw_pump pump(const vectors_row *row) {
    const tw_pump of = {{NUMBER("displacement_cm3_rev"), 0.0}, {NUMBER("leak_l_min_mpa"), 0.0}, NUMBER("leak_viscosity_mpa_s")};
    return of;
}

static tw_status pump_flow(const vectors_row *row, double *out) {
    const tw_pump of = pump(row);
    tw_pump_flow flow = {0};
    const tw_status status = tw_hydraulic_pump_flow(&of, NUMBER("speed_rpm"), NUMBER("pressure_kpa"), NUMBER("viscosity_mpa_s"), &flow);
    const double answers[] = {
        flow.theoretical_l_min, flow.leak_l_min, flow.delivered_l_min, flow.volumetric_efficiency, flow.torque_nm, flow.power_kw,
    };
    return answer(status, out, answers, sizeof answers);
}

static tw_status least_speed_rpm(const vectors_row *row, double *out) {
    const tw_pump of = pump(row);
    return tw_hydraulic_least_speed_rpm(&of, NUMBER("pressure_kpa"), NUMBER("viscosity_mpa_s"), NUMBER("demand_l_min"), out);
}

static tw_status flow_margin(const vectors_row *row, double *out) {
    const tw_pump of = {
        reading(row, "displacement_cm3_rev", "displacement_u_cm3_rev"),
        reading(row, "leak_l_min_mpa", "leak_u_l_min_mpa"),
        NUMBER("leak_viscosity_mpa_s"),
    };
    const tw_pump_duty duty = {
        reading(row, "speed_rpm", "speed_u_rpm"),
        reading(row, "pressure_kpa", "pressure_u_kpa"),
        reading(row, "viscosity_mpa_s", "viscosity_u_mpa_s"),
        reading(row, "demand_l_min", "demand_u_l_min"),
    };
    tw_rule rule;
    static tw_flow_margin margin;
    tw_status status = rule_of(row, &rule);
    if (status >= 0) status = tw_hydraulic_flow_margin(&of, &duty, &rule, &margin);
    const double answers[] = {
        margin.least_speed_rpm, margin.judgment.reading.value, margin.judgment.reading.u, margin.budget.share[2], margin.judgment.chance, (double)margin.judgment.verdict,
    };
    return answer(status, out, answers, sizeof answers);
}

static tw_status hottest_c(const vectors_row *row, double *out) {
    const tw_pump of = pump(row);
    const tw_fluid oil = fluid(row);
    return tw_hydraulic_hottest_c(&of, &oil, NUMBER("speed_rpm"), NUMBER("pressure_kpa"), NUMBER("demand_l_min"), out);
}

static tw_status slot_flow(const vectors_row *row, double *out) {
    const tw_slot slot = {NUMBER("width_mm"), NUMBER("clearance_mm"), NUMBER("length_mm")};
    tw_slot_flow flow = {0};
    const tw_status status = tw_hydraulic_slot_flow(
        &slot, NUMBER("pressure_drop_kpa"), NUMBER("viscosity_mpa_s"), NUMBER("density_kg_m3"), NUMBER("wall_speed_m_s"), &flow);
    const double answers[] = {flow.pressure_l_min, flow.wall_l_min, flow.flow_l_min, flow.speed_m_s, flow.reynolds};
    return answer(status, out, answers, sizeof answers);
}

static tw_status sliding_gap(const vectors_row *row, double *out) {
    const tw_gap gap = {NUMBER("diameter_mm"), NUMBER("clearance_mm"), NUMBER("length_mm"), NUMBER("eccentricity")};
    tw_sliding_gap flow;
    memset(&flow, 0, sizeof flow);
    const tw_status status = tw_hydraulic_sliding_gap(
        &gap, NUMBER("pressure_drop_kpa"), NUMBER("viscosity_mpa_s"), NUMBER("density_kg_m3"), NUMBER("wall_speed_m_s"), &flow);
    const double answers[] = {flow.leak.flow_l_min, flow.wall_l_min, flow.flow_l_min};
    return answer(status, out, answers, sizeof answers);
}

static tw_status pump_clearance(const vectors_row *row, double *out) {
    const tw_reading clearance = reading(row, "clearance_mm", "clearance_u_mm"), fresh = reading(row, "new_mm", "new_u_mm");
    tw_rule rule;
    static tw_pump_clearance of;
    tw_status status = rule_of(row, &rule);
    if (status >= 0) status = tw_hydraulic_pump_clearance(&clearance, &fresh, NUMBER("limit_mm"), &rule, &of);
    const double answers[] = {of.judgment.chance, (double)of.judgment.verdict, of.leak.ratio, of.leak.lower, of.leak.upper};
    return answer(status, out, answers, sizeof answers);
}

static tw_orifice hole(const vectors_row *row) {
    const tw_orifice of = {NUMBER("diameter_mm"), NUMBER("discharge")};
    return of;
}

static tw_status orifice_flow(const vectors_row *row, double *out) {
    const tw_orifice of = hole(row);
    tw_orifice_flow flow;
    memset(&flow, 0, sizeof flow);
    const tw_status status = tw_hydraulic_orifice_flow(&of, NUMBER("pressure_drop_kpa"), NUMBER("density_kg_m3"), NUMBER("viscosity_mpa_s"), &flow);
    const double answers[] = {flow.area_mm2, flow.jet_m_s, flow.flow_l_min, flow.reynolds, flow.turbulent ? 1.0 : 0.0};
    return answer(status, out, answers, sizeof answers);
}

static tw_status orifice_drop_kpa(const vectors_row *row, double *out) {
    const tw_orifice of = hole(row);
    return tw_hydraulic_orifice_drop_kpa(&of, NUMBER("flow_l_min"), NUMBER("density_kg_m3"), out);
}

static tw_status orifice_diameter_mm(const vectors_row *row, double *out) {
    return tw_hydraulic_orifice_diameter_mm(NUMBER("flow_l_min"), NUMBER("pressure_drop_kpa"), NUMBER("density_kg_m3"), NUMBER("discharge"), out);
}

/* The numbers of a cell with blanks between, at most 16. */
static size_t numbers(const vectors_row *row, const char *column, double *of) {
    const char *text = vectors_text(row, column);
    size_t count = 0;
    for (char *end = NULL; count < 16; text = end) {
        const double value = strtod(text, &end);
        if (end == text) break;
        of[count++] = value;
    }
    return count;
}

static size_t holes(const vectors_row *row, tw_orifice *of) {
    double diameters[16];
    const size_t count = numbers(row, "diameters_mm", diameters);
    for (size_t i = 0; i < count; i++) {
        of[i].diameter_mm = diameters[i];
        of[i].discharge = NUMBER("discharge");
    }
    return count;
}

static tw_status in_parallel_mm2(const vectors_row *row, double *out) {
    tw_orifice of[16];
    const size_t count = holes(row, of);
    return tw_hydraulic_in_parallel_mm2(of, count, out);
}

static tw_status in_series_mm2(const vectors_row *row, double *out) {
    tw_orifice of[16];
    const size_t count = holes(row, of);
    return tw_hydraulic_in_series_mm2(of, count, out);
}

static tw_status passage_flow_l_min(const vectors_row *row, double *out) {
    return tw_hydraulic_passage_flow_l_min(NUMBER("effective_area_mm2"), NUMBER("pressure_drop_kpa"), NUMBER("density_kg_m3"), out);
}

static tw_metering metering(const vectors_row *row) {
    const tw_metering of = {NUMBER("discharge"), NUMBER("width_mm"), NUMBER("opening_mm"), NUMBER("jet_deg")};
    return of;
}

static tw_regulator regulator(const vectors_row *row) {
    const tw_regulator of = {
        NUMBER("preload_n"), NUMBER("rate_n_mm"), NUMBER("stroke_mm"),
        {NUMBER("balance_outer_mm"), NUMBER("balance_inner_mm")}, {NUMBER("boost_outer_mm"), NUMBER("boost_inner_mm")}, metering(row),
    };
    return of;
}

static tw_status flow_force_n(const vectors_row *row, double *out) {
    const tw_metering of = metering(row);
    return tw_hydraulic_flow_force_n(&of, NUMBER("pressure_drop_kpa"), out);
}

static tw_status regulated(const vectors_row *row, double *out) {
    const tw_regulator of = regulator(row);
    tw_regulated held = {0};
    const tw_status status = tw_hydraulic_regulated(&of, NUMBER("boost_pressure_kpa"), &held);
    const double answers[] = {held.spring_n, held.boost_n, held.flow_n, held.balance_area_mm2, held.boost_area_mm2, held.pressure_kpa};
    return answer(status, out, answers, sizeof answers);
}

static tw_status spring_for_n(const vectors_row *row, double *out) {
    const tw_regulator of = regulator(row);
    return tw_hydraulic_spring_for_n(&of, NUMBER("pressure_kpa"), NUMBER("boost_pressure_kpa"), out);
}

static tw_status gear_pressure(const vectors_row *row, double *out) {
    const tw_head none = {{0.0, 0.0}, 0.0};
    const tw_pack pack = {
        .lining = {56.0, 78.0}, .piston = {46.0, 73.0}, .faces = (uint32_t)NUMBER("faces"), .worn = false,
        .return_spring_n = {NUMBER("weak_spring_n"), NUMBER("strong_spring_n")}, .seal_drag_n = 0.0, .head = none, .dam = none,
    };
    tw_element_pack list[16];
    size_t given = 0;
    const char *rest = vectors_text(row, "packs");
    for (char *end = NULL; *rest != '\0'; given++, rest = *end == ' ' ? end + 1 : end) {
        list[given].pack = pack;
        list[given].element = (uint8_t)strtoul(rest, &end, 10);
        list[given].turns_with = (uint8_t)strtoul(end + 1, &end, 10);
    }
    tw_duty duty = {
        .pressure_kpa = reading(row, "pressure_kpa", "pressure_u_kpa"), .friction = {0.112, 0.009}, .geometry_u_rel = 0.02, .oil_density_kg_m3 = 790.0,
        .turbine_torque_nm = {NUMBER("turbine_torque_nm"), 0.0}, .turbine_speed_rpm = 0.0,
    };
    tw_train train;
    tw_state state;
    tw_gear_pressure of;
    double last;
    tw_status status = tw_judge_stated_chances(0.95, 0.05, &duty.rule);
    if (status >= 0) status = build(row, &train, &last);
    if (status >= 0) status = tw_train_solve(&train, (uint32_t)NUMBER("closed"), &state);
    if (status >= 0) status = tw_hydraulic_gear_pressure(&state, list, given, &duty, NUMBER("control_max_kpa"), &of);
    if (status < 0) return status;
    const double answers[] = {
        (double)of.element, of.needed.strong_spring_kpa, of.needed.weak_spring_kpa, of.spare_kpa, of.reserve, of.control_spare_kpa, (double)of.unknown, of.chance, (double)of.verdict,
    };
    return answer(status, out, answers, sizeof answers);
}

/* The next number of a text with colons and blanks between; false at its end. */
static bool next_number(const char **text, double *value) {
    char *end = NULL;
    while (**text == ':' || **text == ' ') (*text)++;
    *value = strtod(*text, &end);
    const bool found = end != *text;
    *text = end;
    return found;
}

static size_t readings(const vectors_row *row, tw_pressure_reading *of) {
    const char *text = vectors_text(row, "readings");
    size_t count = 0;
    for (double n[7]; count < 16 && next_number(&text, &n[0]); count++) {
        for (int i = 1; i < 7; i++) next_number(&text, &n[i]);
        const tw_pressure_reading found = {{(uint32_t)n[0], n[1] > 0.5, n[2]}, {n[3], n[4]}, {n[5], n[6]}};
        of[count] = found;
    }
    return count;
}

static size_t candidates(const vectors_row *row, tw_pressure_point *of) {
    const char *text = vectors_text(row, "candidates");
    size_t count = 0;
    for (double n[3]; count < 16 && next_number(&text, &n[0]); count++) {
        for (int i = 1; i < 3; i++) next_number(&text, &n[i]);
        const tw_pressure_point found = {(uint32_t)n[0], n[1] > 0.5, n[2]};
        of[count] = found;
    }
    return count;
}

static tw_status suspect_circuits(const vectors_row *row, double *out) {
    tw_pressure_reading of[16];
    static tw_pressure_suspects found;
    const size_t count = readings(row, of);
    const tw_pattern_rule rule = {NUMBER("kept"), NUMBER("hot_from_c")};
    const tw_status status = tw_hydraulic_suspect_circuits(of, count, (uint32_t)NUMBER("elements"), &rule, &found);
    if (status < 0) return status;
    const double answers[] = {
        (double)found.count, (double)found.ranked[0].kind, (double)found.ranked[0].element, found.ranked[0].share, found.ranked[1].share,
        found.ranked[found.count - 1].share, (double)found.untested,
    };
    return answer(status, out, answers, sizeof answers);
}

static tw_status next_reading(const vectors_row *row, double *out) {
    tw_pressure_reading of[16];
    tw_pressure_point points[16];
    tw_next_reading next = {0};
    const size_t count = readings(row, of), point_count = candidates(row, points);
    const tw_pattern_rule rule = {NUMBER("kept"), NUMBER("hot_from_c")};
    const tw_status status = tw_hydraulic_next_reading(of, count, (uint32_t)NUMBER("elements"), &rule, points, point_count, &next);
    const double answers[] = {(double)next.candidate, next.bits};
    return answer(status, out, answers, sizeof answers);
}

static tw_status timed_flow(const vectors_row *row, double *out) {
    const tw_reading volume = reading(row, "volume_l", "volume_u_l"), time = reading(row, "time_s", "time_u_s");
    static tw_timed_flow flow;
    const tw_status status = tw_hydraulic_timed_flow(&volume, &time, &flow);
    const double answers[] = {flow.flow_l_min.value, flow.flow_l_min.u};
    return answer(status, out, answers, sizeof answers);
}

static tw_status flow_at_reference(const vectors_row *row, double *out) {
    const tw_reading flow = reading(row, "flow_l_min", "flow_u_l_min"), temp = reading(row, "temp_c", "temp_u_c");
    const tw_fluid oil = fluid(row);
    tw_reading there = {0};
    const tw_status status = tw_hydraulic_flow_at_reference(&flow, &oil, &temp, NUMBER("reference_c"), &there);
    const double answers[] = {there.value, there.u};
    return answer(status, out, answers, sizeof answers);
}

static tw_status table(const vectors_row *row, tw_cooler_limits *limits) {
    double temperatures[16], flows[16];
    const size_t rows = numbers(row, "temperatures_c", temperatures);
    if (numbers(row, "flows_l_min", flows) != rows) vectors_fail(row, "not as many flows as", "temperatures_c");
    return tw_hydraulic_from_flows(temperatures, flows, rows, limits);
}

static tw_status least_flow_at(const vectors_row *row, double *out) {
    tw_cooler_limits limits;
    tw_least_flow least = {0};
    tw_status status = table(row, &limits);
    if (status >= 0) status = tw_hydraulic_least_flow_at(&limits, NUMBER("temp_c"), &least);
    const double answers[] = {least.least_l_min, least.least_l_min_per_k};
    return answer(status, out, answers, sizeof answers);
}

static tw_status cooler_check(const vectors_row *row, double *out) {
    tw_cooler_limits limits;
    tw_rule rule;
    const tw_cooler_reading caught = {
        reading(row, "volume_l", "volume_u_l"), reading(row, "time_s", "time_u_s"), reading(row, "temp_c", "temp_u_c"),
    };
    static tw_cooler_check check;
    tw_status status = table(row, &limits);
    if (status >= 0) status = rule_of(row, &rule);
    if (status >= 0) status = tw_hydraulic_cooler_check(&limits, &caught, &rule, &check);
    const double answers[] = {
        check.flow_l_min.value, check.least.least_l_min, check.judgment.reading.value, check.judgment.reading.u, check.judgment.chance, (double)check.judgment.verdict,
    };
    return answer(status, out, answers, sizeof answers);
}

static const vectors_test TESTS[] = {
    {"hydraulic_external_gear_cm3_rev", external_gear_cm3_rev},
    {"hydraulic_external_gear_by_centers_cm3_rev", external_gear_by_centers_cm3_rev},
    {"hydraulic_chamber_displacement", chamber_displacement},
    {"hydraulic_vane_cm3_rev", vane_cm3_rev},
    {"hydraulic_field_rule_cm3_rev", field_rule_cm3_rev},
    {"hydraulic_volumetric_efficiency", volumetric_efficiency},
    {"hydraulic_oil_at", oil_at},
    {"hydraulic_pump_flow", pump_flow},
    {"hydraulic_least_speed_rpm", least_speed_rpm},
    {"hydraulic_flow_margin", flow_margin},
    {"hydraulic_hottest_c", hottest_c},
    {"hydraulic_slot_flow", slot_flow},
    {"hydraulic_sliding_gap", sliding_gap},
    {"hydraulic_pump_clearance", pump_clearance},
    {"hydraulic_orifice_flow", orifice_flow},
    {"hydraulic_orifice_drop_kpa", orifice_drop_kpa},
    {"hydraulic_orifice_diameter_mm", orifice_diameter_mm},
    {"hydraulic_in_parallel_mm2", in_parallel_mm2},
    {"hydraulic_in_series_mm2", in_series_mm2},
    {"hydraulic_passage_flow_l_min", passage_flow_l_min},
    {"hydraulic_flow_force_n", flow_force_n},
    {"hydraulic_regulated", regulated},
    {"hydraulic_spring_for_n", spring_for_n},
    {"hydraulic_gear_pressure", gear_pressure},
    {"hydraulic_suspect_circuits", suspect_circuits},
    {"hydraulic_next_reading", next_reading},
    {"hydraulic_timed_flow", timed_flow},
    {"hydraulic_flow_at_reference", flow_at_reference},
    {"hydraulic_least_flow_at", least_flow_at},
    {"hydraulic_cooler_check", cooler_check},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
