/* The clutch chapter's vectors in C. */
#include "trains.h"

static double number(const vectors_row *row, const char *column) { return vectors_number(row, column); }

static uint32_t count(const vectors_row *row, const char *column) { return (uint32_t)number(row, column); }

static double part(const vectors_row *row, const char *name, const char *dimension) {
    char column[64];
    snprintf(column, sizeof column, "%s_%s", name, dimension);
    return number(row, column);
}

static tw_annulus ring(const vectors_row *row, const char *name) {
    const tw_annulus part_ring = {part(row, name, "inner_radius_mm"), part(row, name, "outer_radius_mm")};
    return part_ring;
}

static tw_annulus annulus(const vectors_row *row) {
    const tw_annulus ring = {number(row, "inner_radius_mm"), number(row, "outer_radius_mm")};
    return ring;
}

static tw_head head(const vectors_row *row, const char *name) {
    const tw_head head = {ring(row, name), part(row, name, "free_surface_radius_mm")};
    return head;
}

static tw_head wet(const vectors_row *row) {
    const tw_head head = {annulus(row), number(row, "free_surface_radius_mm")};
    return head;
}

static tw_pack pack(const vectors_row *row) {
    const tw_pack pack = {
        ring(row, "lining"),
        ring(row, "piston"),
        count(row, "faces"),
        number(row, "worn") > 0.0,
        {number(row, "weak_spring_n"), number(row, "strong_spring_n")},
        number(row, "seal_drag_n"),
        head(row, "head"),
        head(row, "dam"),
    };
    return pack;
}

static tw_status area_mm2(const vectors_row *row, double *out) {
    const tw_annulus ring = annulus(row);
    return tw_clutch_area_mm2(&ring, &out[0]);
}

static tw_status mean_radius_new_mm(const vectors_row *row, double *out) {
    const tw_annulus ring = annulus(row);
    return tw_clutch_mean_radius_new_mm(&ring, &out[0]);
}

static tw_status mean_radius_worn_mm(const vectors_row *row, double *out) {
    const tw_annulus ring = annulus(row);
    return tw_clutch_mean_radius_worn_mm(&ring, &out[0]);
}

static tw_status best_inner_radius_mm(const vectors_row *row, double *out) {
    const tw_annulus ring = annulus(row);
    return tw_clutch_best_inner_radius_mm(&ring, &out[0]);
}

static tw_status clamp_at_peak_n(const vectors_row *row, double *out) {
    const tw_annulus ring = annulus(row);
    return tw_clutch_clamp_at_peak_n(&ring, number(row, "peak_mpa"), &out[0]);
}

static tw_status peak_at_clamp_mpa(const vectors_row *row, double *out) {
    const tw_annulus ring = annulus(row);
    return tw_clutch_peak_at_clamp_mpa(&ring, number(row, "clamp_n"), &out[0]);
}

static tw_status head_force_n(const vectors_row *row, double *out) {
    const tw_head oil = wet(row);
    return tw_clutch_head_force_n(&oil, number(row, "oil_density_kg_m3"), number(row, "drum_speed_rpm"), &out[0]);
}

static tw_status head_pressure_kpa(const vectors_row *row, double *out) {
    const tw_head oil = wet(row);
    return tw_clutch_head_pressure_kpa(&oil, number(row, "radius_mm"), number(row, "oil_density_kg_m3"),
                                       number(row, "drum_speed_rpm"), &out[0]);
}

static tw_status surface_drop_mm(const vectors_row *row, double *out) {
    return tw_clutch_surface_drop_mm(number(row, "radius_mm"), number(row, "speed_rpm"), &out[0]);
}

static tw_status spring_force_n(const vectors_row *row, double *out) {
    const tw_return_springs springs = {count(row, "count"), number(row, "rate_n_mm"), number(row, "free_length_mm")};
    return tw_clutch_spring_force_n(&springs, number(row, "fitted_length_mm"), &out[0]);
}

static tw_status plate_faces(const vectors_row *row, double *out) {
    uint32_t faces = 0;
    const tw_status status = tw_clutch_plate_faces(count(row, "friction_plates"), &faces);
    if (status >= 0) out[0] = faces;
    return status;
}

static tw_status disc_faces(const vectors_row *row, double *out) {
    uint32_t faces = 0;
    const tw_status status = tw_clutch_disc_faces(count(row, "driving_discs"), count(row, "driven_discs"), &faces);
    if (status >= 0) out[0] = faces;
    return status;
}

static tw_status torque_by_radius_nm(const vectors_row *row, double *out) {
    const tw_lining_by_radius lining = {
        annulus(row),
        count(row, "faces"),
        number(row, "pressure_mpa"),
        number(row, "friction_at_axis"),
        number(row, "friction_per_mm"),
    };
    return tw_clutch_torque_by_radius_nm(&lining, &out[0]);
}

static tw_status mean_radius_mm(const vectors_row *row, double *out) {
    const tw_pack clutch = pack(row);
    return tw_clutch_mean_radius_mm(&clutch, &out[0]);
}

static tw_status capacity(const vectors_row *row, double *out) {
    const tw_pack clutch = pack(row);
    const tw_applied applied = {
        number(row, "pressure_kpa"),
        number(row, "friction"),
        number(row, "drum_speed_rpm"),
        number(row, "oil_density_kg_m3"),
    };
    tw_capacity c;
    const tw_status status = tw_clutch_capacity(&clutch, &applied, &c);
    if (status < 0) return status;
    const double answers[] = {c.piston_area_mm2, c.apply_force_n,  c.head_force_n,    c.dam_force_n, c.net_force_n,
                              c.mean_radius_mm,  c.lining_mean_mpa, c.lining_peak_mpa, c.torque_nm};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status capacity_line(const vectors_row *row, double *out) {
    const tw_pack clutch = pack(row);
    tw_capacity_line line;
    const tw_status status = tw_clutch_capacity_line(&clutch, number(row, "oil_density_kg_m3"), &line);
    if (status < 0) return status;
    const double answers[] = {line.piston_area_mm2, line.head_n_per_rpm2, line.held_back_n, line.arm_mm};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status capacity_nm(const vectors_row *row, double *out) {
    const tw_pack clutch = pack(row);
    tw_capacity_line line;
    const tw_status status = tw_clutch_capacity_line(&clutch, number(row, "oil_density_kg_m3"), &line);
    if (status < 0) return status;
    return tw_clutch_capacity_nm(&line, number(row, "pressure_kpa"), number(row, "drum_speed_rpm"),
                                 number(row, "friction"), &out[0]);
}

static tw_status pressure_needed(const vectors_row *row, double *out) {
    const tw_pack clutch = pack(row);
    const tw_applied applied = {
        0.0,
        number(row, "friction"),
        number(row, "drum_speed_rpm"),
        number(row, "oil_density_kg_m3"),
    };
    tw_pressure_needed needed;
    const tw_status status = tw_clutch_pressure_needed(&clutch, number(row, "torque_nm"), &applied, &needed);
    if (status < 0) return status;
    out[0] = needed.strong_spring_kpa;
    out[1] = needed.weak_spring_kpa;
    return status;
}

static tw_status friction_needed(const vectors_row *row, double *out) {
    const tw_pack clutch = pack(row);
    const tw_applied applied = {
        number(row, "pressure_kpa"),
        1.0,
        number(row, "drum_speed_rpm"),
        number(row, "oil_density_kg_m3"),
    };
    return tw_clutch_friction_needed(&clutch, number(row, "torque_nm"), &applied, &out[0]);
}

static tw_status drag_speed_rpm(const vectors_row *row, double *out) {
    const tw_pack clutch = pack(row);
    return tw_clutch_drag_speed_rpm(&clutch, number(row, "oil_density_kg_m3"), &out[0]);
}

static tw_status hold(const vectors_row *row, double *out) {
    const tw_pack clutch = pack(row);
    const tw_reading need_nm = {number(row, "need_nm"), number(row, "need_u_nm")};
    const tw_working working = {
        {number(row, "pressure_kpa"), number(row, "pressure_u_kpa")},
        {number(row, "friction"), number(row, "friction_u")},
        number(row, "geometry_u_rel"),
        number(row, "drum_speed_rpm"),
        number(row, "oil_density_kg_m3"),
    };
    tw_rule rule;
    tw_status status = tw_judge_stated_chances(number(row, "go"), number(row, "no_go"), &rule);
    if (status < 0) return status;
    tw_hold held;
    status = tw_clutch_hold(&clutch, &need_nm, &working, &rule, &held);
    if (status < 0) return status;
    const double answers[] = {held.margin,          held.pressure_needed.strong_spring_kpa, held.pressure_needed.weak_spring_kpa,
                              held.friction_needed, held.judgment.chance,                   (double)held.judgment.verdict};
    memcpy(out, answers, sizeof answers);
    return status;
}

/* The same pack for every element of the cell: element:member that its drum turns with. */
static size_t packs(const vectors_row *row, tw_element_pack *list) {
    size_t given = 0;
    const char *rest = vectors_text(row, "packs");
    for (char *end = NULL; *rest != '\0'; given++, rest = *end == ' ' ? end + 1 : end) {
        list[given].pack = pack(row);
        list[given].element = (uint8_t)strtoul(rest, &end, 10);
        list[given].turns_with = (uint8_t)strtoul(end + 1, &end, 10);
    }
    return given;
}

static tw_status review(const vectors_row *row, double *out) {
    tw_train train;
    tw_state state;
    tw_element_pack list[16];
    tw_gear_review found;
    double last;
    tw_duty duty = {
        {number(row, "pressure_kpa"), number(row, "pressure_u_kpa")},
        {number(row, "friction"), number(row, "friction_u")},
        number(row, "geometry_u_rel"),
        number(row, "oil_density_kg_m3"),
        {number(row, "turbine_torque_nm"), number(row, "turbine_torque_u_nm")},
        number(row, "turbine_speed_rpm"),
        {0.0, 0.0, 0.0, 0},
    };
    tw_status status = tw_judge_stated_chances(number(row, "go"), number(row, "no_go"), &duty.rule);
    if (status == TW_STATUS_OK) status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_solve(&train, count(row, "closed"), &state);
    if (status == TW_STATUS_OK) status = tw_clutch_review(&state, list, packs(row, list), &duty, &found);
    if (status != TW_STATUS_OK) return status;
    const tw_element_margin weakest = found.margins[found.governing];
    const double answers[] = {found.count,    weakest.element,  weakest.share,           weakest.drum_speed_rpm,
                              weakest.need_nm, weakest.capacity_nm, weakest.margin,      weakest.friction_needed,
                              weakest.chance, (double)weakest.verdict};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status governing(const vectors_row *row, double *out) {
    const double margins[] = {number(row, "margin_0"), number(row, "margin_1"), number(row, "margin_2")};
    uint32_t position = 0;
    const tw_status status = tw_clutch_governing(margins, 3, &position);
    if (status >= 0) out[0] = position;
    return status;
}

static tw_band band(const vectors_row *row) {
    const tw_band band = {number(row, "drum_radius_mm"), number(row, "width_mm"), number(row, "wrap_deg")};
    return band;
}

static void band_outputs(const tw_band_torque *t, double *out) {
    const double answers[] = {t->tension_ratio,   t->tight_n,   t->slack_n,
                              t->lining_peak_mpa, t->torque_nm, t->nm_per_friction};
    memcpy(out, answers, sizeof answers);
}

static tw_status energized(const vectors_row *row, double *out) {
    const tw_band drum = band(row);
    tw_band_torque torque;
    const tw_status status = tw_clutch_energized(&drum, number(row, "servo_force_n"), number(row, "friction"), &torque);
    if (status >= 0) band_outputs(&torque, out);
    return status;
}

static tw_status deenergized(const vectors_row *row, double *out) {
    const tw_band drum = band(row);
    tw_band_torque torque;
    const tw_status status = tw_clutch_deenergized(&drum, number(row, "servo_force_n"), number(row, "friction"), &torque);
    if (status >= 0) band_outputs(&torque, out);
    return status;
}

static tw_status servo_force_n(const vectors_row *row, double *out) {
    const tw_servo servo = {annulus(row), number(row, "return_spring_n"), number(row, "lever_ratio")};
    return tw_clutch_servo_force_n(&servo, number(row, "pressure_kpa"), &out[0]);
}

static void end_outputs(const tw_slip_end *end, double *out) {
    const double answers[] = {(double)end->locks, (double)end->stays_locked, end->slip_shrinks_rpm_s, end->time_s,      end->final_speed_rpm,
                              end->energy_j,      end->start_heat_kw, end->drive_work_j,      end->load_work_j, end->locked_torque_nm};
    memcpy(out, answers, sizeof answers);
}

static tw_status slip_end(const vectors_row *row, double *out) {
    const tw_slip slip = {
        number(row, "input_inertia_kg_m2"),
        number(row, "output_inertia_kg_m2"),
        number(row, "input_speed_rpm"),
        number(row, "output_speed_rpm"),
        number(row, "clutch_torque_nm"),
        number(row, "drive_torque_nm"),
        number(row, "load_torque_nm"),
    };
    tw_slip_end end;
    const tw_status status = tw_clutch_slip_end(&slip, &end);
    if (status >= 0) end_outputs(&end, out);
    return status;
}

static tw_held_input held_input(const vectors_row *row) {
    const tw_held_input slip = {
        number(row, "output_inertia_kg_m2"),
        number(row, "input_speed_rpm"),
        number(row, "output_speed_rpm"),
        number(row, "clutch_torque_nm"),
        number(row, "load_torque_nm"),
    };
    return slip;
}

static tw_status held_input_end(const vectors_row *row, double *out) {
    const tw_held_input slip = held_input(row);
    tw_slip_end end;
    const tw_status status = tw_clutch_held_input_end(&slip, &end);
    if (status >= 0) end_outputs(&end, out);
    return status;
}

static tw_status referred_inertia_kg_m2(const vectors_row *row, double *out) {
    return tw_clutch_referred_inertia_kg_m2(number(row, "inertia_kg_m2"), number(row, "speed_ratio"), &out[0]);
}

static tw_status bulk_rise_k(const vectors_row *row, double *out) {
    return tw_clutch_bulk_rise_k(number(row, "energy_j"), number(row, "steel_mass_kg"),
                                 number(row, "specific_heat_j_kg_k"), &out[0]);
}

static tw_steel steel(const vectors_row *row) {
    const tw_steel steel = {
        number(row, "conductivity_w_m_k"),
        number(row, "density_kg_m3"),
        number(row, "specific_heat_j_kg_k"),
        number(row, "thickness_mm"),
    };
    return steel;
}

static void rise_outputs(const tw_surface_rise *rise, double *out) {
    const double answers[] = {rise->rise_k, rise->at_s, rise->thick_until_s, (double)rise->thick};
    memcpy(out, answers, sizeof answers);
}

static tw_status surface_rise_constant(const vectors_row *row, double *out) {
    const tw_steel plate = steel(row);
    tw_surface_rise rise;
    const tw_status status = tw_clutch_surface_rise_constant(&plate, number(row, "flux_w_mm2"), number(row, "time_s"), &rise);
    if (status >= 0) rise_outputs(&rise, out);
    return status;
}

static tw_status surface_rise_falling(const vectors_row *row, double *out) {
    const tw_steel plate = steel(row);
    tw_surface_rise rise;
    const tw_status status =
        tw_clutch_surface_rise_falling(&plate, number(row, "start_flux_w_mm2"), number(row, "slip_time_s"), &rise);
    if (status >= 0) rise_outputs(&rise, out);
    return status;
}

static tw_status plate_heat(const vectors_row *row, double *out) {
    const tw_held_input slip = held_input(row);
    tw_slip_end end;
    tw_status status = tw_clutch_held_input_end(&slip, &end);
    if (status < 0) return status;
    const tw_steel_plates plates = {
        steel(row),
        number(row, "steel_mass_kg"),
        annulus(row),
        count(row, "faces"),
    };
    tw_plate_heat heat;
    status = tw_clutch_plate_heat(&plates, &end, &heat);
    if (status < 0) return status;
    const double answers[] = {heat.energy_j_mm2, heat.start_flux_w_mm2, heat.bulk_rise_k, heat.surface.rise_k, (double)heat.surface.thick};
    memcpy(out, answers, sizeof answers);
    return status;
}

static const vectors_test TESTS[] = {
    {"clutch_area_mm2", area_mm2},
    {"clutch_mean_radius_new_mm", mean_radius_new_mm},
    {"clutch_mean_radius_worn_mm", mean_radius_worn_mm},
    {"clutch_best_inner_radius_mm", best_inner_radius_mm},
    {"clutch_clamp_at_peak_n", clamp_at_peak_n},
    {"clutch_peak_at_clamp_mpa", peak_at_clamp_mpa},
    {"clutch_head_force_n", head_force_n},
    {"clutch_head_pressure_kpa", head_pressure_kpa},
    {"clutch_surface_drop_mm", surface_drop_mm},
    {"clutch_spring_force_n", spring_force_n},
    {"clutch_plate_faces", plate_faces},
    {"clutch_disc_faces", disc_faces},
    {"clutch_torque_by_radius_nm", torque_by_radius_nm},
    {"clutch_mean_radius_mm", mean_radius_mm},
    {"clutch_capacity", capacity},
    {"clutch_capacity_line", capacity_line},
    {"clutch_capacity_nm", capacity_nm},
    {"clutch_pressure_needed", pressure_needed},
    {"clutch_friction_needed", friction_needed},
    {"clutch_drag_speed_rpm", drag_speed_rpm},
    {"clutch_hold", hold},
    {"clutch_review", review},
    {"clutch_governing", governing},
    {"clutch_energized", energized},
    {"clutch_deenergized", deenergized},
    {"clutch_servo_force_n", servo_force_n},
    {"clutch_slip_end", slip_end},
    {"clutch_held_input_end", held_input_end},
    {"clutch_referred_inertia_kg_m2", referred_inertia_kg_m2},
    {"clutch_bulk_rise_k", bulk_rise_k},
    {"clutch_surface_rise_constant", surface_rise_constant},
    {"clutch_surface_rise_falling", surface_rise_falling},
    {"clutch_plate_heat", plate_heat},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
