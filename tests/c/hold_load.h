/* Vectors of thrust bearings, shafts, splines and comparisons. */
#ifndef HOLD_LOAD_H
#define HOLD_LOAD_H

#include "trains.h"

static double load_number(const vectors_row *row, const char *column) { return vectors_number(row, column); }

static uint32_t load_count(const vectors_row *row, const char *column) { return (uint32_t)load_number(row, column); }

static double load_part(const vectors_row *row, const char *side, const char *dimension) {
    char column[64];
    snprintf(column, sizeof column, "%s%s", side, dimension);
    return load_number(row, column);
}

/* The numbers of a cell, one after the other; returns how many. */
static size_t load_numbers(const vectors_row *row, const char *column, const char *separators, double *out, size_t most) {
    char text[VECTORS_LINE];
    size_t found = 0;
    strcpy(text, vectors_text(row, column));
    for (char *cell = strtok(text, separators); cell != NULL && found < most; cell = strtok(NULL, separators)) {
        out[found++] = strtod(cell, NULL);
    }
    return found;
}

static tw_reading load_reading(const vectors_row *row, const char *value, const char *u) {
    const tw_reading reading = {load_number(row, value), load_number(row, u)};
    return reading;
}

static tw_needle_thrust load_needles(const vectors_row *row) {
    const tw_needle_thrust bearing = {load_count(row, "needles"), load_number(row, "needle_diameter_mm"),
                                      load_number(row, "needle_length_mm"), load_number(row, "pitch_diameter_mm")};
    return bearing;
}

static tw_status needle_capacity(const vectors_row *row, double *out) {
    const tw_needle_thrust bearing = load_needles(row);
    tw_needle_capacity c;
    const tw_status status = tw_hold_needle_capacity(&bearing, &c);
    if (status < 0) return status;
    const double answers[] = {c.inside_mm,      c.outside_mm, c.gap_mm,   c.size_ratio,
                              c.dynamic_factor, c.static_n,   c.dynamic_n};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status rating_life(const vectors_row *row, double *out) {
    tw_rating_life life;
    const tw_status status = tw_hold_rating_life(load_number(row, "capacity_n"), load_number(row, "load_n"),
                                                 load_number(row, "exponent"), load_number(row, "speed_rpm"), &life);
    if (status < 0) return status;
    const double answers[] = {life.load_share, life.life_mrev, life.life_h};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status mean_load(const vectors_row *row, double *out) {
    double numbers[30];
    tw_load_stage stages[10];
    const size_t stage_count = load_numbers(row, "stages", ": ", numbers, 30) / 3;
    for (size_t i = 0; i < stage_count; i++) {
        stages[i].load_n = numbers[3 * i];
        stages[i].speed_rpm = numbers[3 * i + 1];
        stages[i].share = numbers[3 * i + 2];
    }
    tw_mean_load mean;
    const tw_status status = tw_hold_mean_load(stages, stage_count, load_number(row, "exponent"), &mean);
    if (status < 0) return status;
    const double answers[] = {mean.load_n, mean.speed_rpm, mean.greatest_n, mean.governing, mean.governing_share};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status needle_hold(const vectors_row *row, double *out) {
    const tw_needle_thrust bearing = load_needles(row);
    const tw_reading load = load_reading(row, "load_n", "load_u_n");
    tw_rule rule;
    tw_needle_hold hold;
    tw_status status = tw_judge_stated_chances(load_number(row, "go"), load_number(row, "no_go"), &rule);
    if (status < 0) return status;
    status = tw_hold_needle_hold(&bearing, &load, load_number(row, "least_static_factor"), &rule, &hold);
    if (status < 0) return status;
    const double answers[] = {hold.static_factor, hold.judgment.limits.upper, hold.judgment.chance,
                              (double)hold.judgment.verdict};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status needle_lasts(const vectors_row *row, double *out) {
    const tw_needle_thrust bearing = load_needles(row);
    const tw_reading load = load_reading(row, "load_n", "load_u_n");
    tw_rule rule;
    tw_needle_lasts lasts;
    tw_status status = tw_judge_stated_chances(load_number(row, "go"), load_number(row, "no_go"), &rule);
    if (status < 0) return status;
    status = tw_hold_needle_lasts(&bearing, &load, load_number(row, "speed_rpm"), load_number(row, "least_life_h"), &rule,
                                  &lasts);
    if (status < 0) return status;
    const double answers[] = {lasts.life.life_mrev, lasts.life.life_h, lasts.load_for_life_n, lasts.judgment.chance,
                              (double)lasts.judgment.verdict};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status washer_load(const vectors_row *row, double *out) {
    const tw_thrust_washer washer = {load_number(row, "outside_mm"), load_number(row, "inside_mm"),
                                     load_number(row, "face_share")};
    tw_washer_load load;
    const tw_status status =
        tw_hold_washer_load(&washer, load_number(row, "load_n"), load_number(row, "speed_rpm"), &load);
    if (status < 0) return status;
    const double answers[] = {load.area_mm2, load.unit_load_mpa, load.mean_diameter_mm, load.sliding_m_s,
                              load.pv_mpa_m_s};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_helical load_helical(const vectors_row *row) {
    const tw_helical helical = {load_number(row, "module_mm"), load_number(row, "helix_deg")};
    return helical;
}

static tw_status axial_thrust(const vectors_row *row, double *out) {
    const tw_helical helical = load_helical(row);
    tw_axial_thrust thrust;
    const tw_status status =
        tw_hold_axial_thrust(load_number(row, "torque_nm"), (uint16_t)load_count(row, "teeth"), &helical, &thrust);
    if (status < 0) return status;
    const double answers[] = {thrust.pitch_radius_mm, thrust.tangential_n, thrust.axial_n};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status wheel_thrust(const vectors_row *row, double *out) {
    tw_train train;
    tw_state state;
    tw_wheel_thrust pushed;
    double last;
    tw_set_wheel at;
    memset(&at, 0, sizeof at);
    at.set = (uint8_t)load_count(row, "set");
    at.wheel = (tw_wheel)load_count(row, "wheel");
    at.helical = load_helical(row);
    tw_status status = build(row, &train, &last);
    if (status >= 0) status = tw_train_solve(&train, load_count(row, "closed"), &state);
    if (status >= 0) {
        status = tw_hold_wheel_thrust(&train, &state, &at, load_number(row, "input_torque_nm"),
                                      load_number(row, "input_speed_rpm"), &pushed);
    }
    if (status < 0) return status;
    const double answers[] = {pushed.torque_nm, pushed.thrust.pitch_radius_mm, pushed.thrust.tangential_n,
                              pushed.thrust.axial_n, pushed.carrier_slip_rpm};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_shaft load_shaft(const vectors_row *row, const char *side) {
    const tw_shaft shaft = {load_part(row, side, "outside_mm"), load_part(row, side, "inside_mm")};
    return shaft;
}

static tw_status torsion(const vectors_row *row, double *out) {
    const tw_shaft shaft = load_shaft(row, "");
    tw_torsion t;
    const tw_status status = tw_hold_torsion(&shaft, load_number(row, "torque_nm"), &t);
    if (status < 0) return status;
    const double answers[] = {t.polar_moment_mm4, t.section_modulus_mm3, t.stress_mpa, t.bore_stress_mpa};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status twist_deg(const vectors_row *row, double *out) {
    const tw_shaft shaft = load_shaft(row, "");
    return tw_hold_twist_deg(&shaft, load_number(row, "torque_nm"), load_number(row, "length_mm"),
                             load_number(row, "shear_modulus_mpa"), &out[0]);
}

static tw_status hollow_over_solid(const vectors_row *row, double *out) {
    const tw_shaft shaft = load_shaft(row, "");
    tw_hollow_over_solid kept;
    const tw_status status = tw_hold_hollow_over_solid(&shaft, &kept);
    if (status < 0) return status;
    out[0] = kept.strength;
    out[1] = kept.mass;
    return status;
}

static tw_status shaft_hold(const vectors_row *row, double *out) {
    const tw_shaft shaft = load_shaft(row, "");
    const tw_shaft_load load = {load_reading(row, "torque_nm", "torque_u_nm"),
                                load_reading(row, "shear_yield_mpa", "shear_yield_u_mpa"),
                                load_number(row, "stress_factor"), load_number(row, "stress_u_rel")};
    tw_rule rule;
    tw_shaft_hold hold;
    tw_status status = tw_judge_stated_chances(load_number(row, "go"), load_number(row, "no_go"), &rule);
    if (status >= 0) status = tw_hold_shaft_hold(&shaft, &load, &rule, &hold);
    if (status < 0) return status;
    const double answers[] = {hold.torsion.stress_mpa, hold.yield_share,      hold.torque_at_yield_nm,
                              hold.factor_at_yield,    hold.judgment.chance, (double)hold.judgment.verdict};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status spline_load(const vectors_row *row, double *out) {
    const tw_spline spline = {load_count(row, "teeth"), load_number(row, "major_mm"), load_number(row, "minor_mm"),
                              load_number(row, "pitch_diameter_mm"), load_number(row, "length_mm")};
    tw_spline_load load;
    const tw_status status =
        tw_hold_spline_load(&spline, load_number(row, "torque_nm"), load_number(row, "carrying_share"), &load);
    if (status < 0) return status;
    const double answers[] = {load.height_mm, load.mean_radius_mm, load.thickness_mm,
                              load.tooth_n,   load.bearing_mpa,    load.shear_mpa};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status change(const vectors_row *row, double *out) {
    tw_change changed;
    const tw_status status =
        tw_hold_change(load_number(row, "before"), load_number(row, "after"), (uint8_t)load_count(row, "better"),
                       load_number(row, "same_within"), &changed);
    if (status < 0) return status;
    out[0] = changed.ratio;
    out[1] = (double)changed.effect;
    return status;
}

static tw_needle_thrust load_race(const vectors_row *row, const char *side) {
    double n[4] = {0.0, 0.0, 0.0, 0.0};
    load_numbers(row, side, " ", n, 4);
    const tw_needle_thrust race = {(uint32_t)n[0], n[1], n[2], n[3]};
    return race;
}

static tw_status compare_needles(const vectors_row *row, double *out) {
    const tw_needle_thrust before = load_race(row, "before"), after = load_race(row, "after");
    tw_needle_change c;
    const tw_status status = tw_hold_compare_needles(&before, &after, &c);
    if (status < 0) return status;
    const double answers[] = {c.static_n.ratio,     c.dynamic_n.ratio,  c.life.ratio,
                              c.life_by_size.ratio, c.outside_mm.ratio, c.face_mm.ratio};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status compare_shafts(const vectors_row *row, double *out) {
    const tw_shaft before = load_shaft(row, "before_"), after = load_shaft(row, "after_");
    tw_shaft_change c;
    const tw_status status = tw_hold_compare_shafts(&before, &after, load_number(row, "torque_before_nm"),
                                                    load_number(row, "torque_after_nm"), &c);
    if (status < 0) return status;
    const double answers[] = {c.stress_own_mpa.ratio, c.stress_same_mpa.ratio, c.torque_nm.ratio,
                              c.polar_moment_mm4.ratio, c.section_mm2.ratio};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_set_pack load_pack(const vectors_row *row, const char *side) {
    tw_set_pack set;
    memset(&set, 0, sizeof set);
    set.pack.lining.inner_radius_mm = load_number(row, "lining_inner_radius_mm");
    set.pack.lining.outer_radius_mm = load_number(row, "lining_outer_radius_mm");
    set.pack.piston.inner_radius_mm = load_number(row, "piston_inner_radius_mm");
    set.pack.piston.outer_radius_mm = load_number(row, "piston_outer_radius_mm");
    set.pack.faces = (uint32_t)load_part(row, side, "_faces");
    set.pack.return_spring_n.lower = set.pack.return_spring_n.upper = load_number(row, "spring_n");
    set.clearance_mm = load_part(row, side, "_clearance_mm");
    return set;
}

static tw_status compare_packs(const vectors_row *row, double *out) {
    const tw_set_pack before = load_pack(row, "before"), after = load_pack(row, "after");
    const tw_applied applied = {load_number(row, "pressure_kpa"), load_number(row, "friction"), 0.0, 0.0};
    tw_pack_change c;
    const tw_status status = tw_hold_compare_packs(&before, &after, &applied, &c);
    if (status < 0) return status;
    const double answers[] = {c.capacity_nm.ratio, c.pressure_kpa.ratio,          c.friction_area_mm2.ratio,
                              c.faces.ratio,       c.clearance_per_face_mm.ratio, c.fill_ml.ratio};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_helical_sun load_sun(const vectors_row *row, const char *side) {
    double n[5] = {0.0, 0.0, 0.0, 0.0, 0.0};
    load_numbers(row, side, " ", n, 5);
    const tw_helical_sun sun = {(uint16_t)n[0], (uint8_t)n[1], {n[2], n[3]}, n[4]};
    return sun;
}

static tw_status compare_suns(const vectors_row *row, double *out) {
    const tw_helical_sun before = load_sun(row, "before"), after = load_sun(row, "after");
    tw_sun_change c;
    const tw_status status = tw_hold_compare_suns(&before, &after, load_number(row, "torque_nm"), &c);
    if (status < 0) return status;
    const double answers[] = {c.unit_load_mpa.ratio, c.axial_n.ratio, c.module_mm.ratio, c.planets.ratio};
    memcpy(out, answers, sizeof answers);
    return status;
}

/* Rows of the table of tests. */
#define HOLD_LOAD_TESTS                                                                                    \
    {"hold_needle_capacity", needle_capacity}, {"hold_rating_life", rating_life},                          \
    {"hold_mean_load", mean_load}, {"hold_needle_hold", needle_hold}, {"hold_needle_lasts", needle_lasts}, \
    {"hold_washer_load", washer_load}, {"hold_axial_thrust", axial_thrust},                                \
    {"hold_wheel_thrust", wheel_thrust}, {"hold_torsion", torsion}, {"hold_twist_deg", twist_deg},         \
    {"hold_hollow_over_solid", hollow_over_solid}, {"hold_shaft_hold", shaft_hold},                        \
    {"hold_spline_load", spline_load}, {"hold_change", change},                                            \
    {"hold_compare_needles", compare_needles}, {"hold_compare_shafts", compare_shafts},                    \
    {"hold_compare_packs", compare_packs}, {"hold_compare_suns", compare_suns}

#endif
