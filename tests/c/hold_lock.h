/* Vectors of line contact, teeth, one-way clutches and park locks. */
#ifndef HOLD_LOCK_H
#define HOLD_LOCK_H

#include "trains.h"
#include <math.h>

static double lock_number(const vectors_row *row, const char *column) { return vectors_number(row, column); }

static uint32_t lock_count(const vectors_row *row, const char *column) { return (uint32_t)lock_number(row, column); }

static double lock_part(const vectors_row *row, const char *which, const char *dimension) {
    char column[64];
    snprintf(column, sizeof column, "%s%s", which, dimension);
    return lock_number(row, column);
}

static tw_reading lock_reading(const vectors_row *row, const char *value, const char *u) {
    const tw_reading reading = {lock_number(row, value), lock_number(row, u)};
    return reading;
}

static tw_status lock_rule(const vectors_row *row, tw_rule *rule) {
    return tw_judge_stated_chances(lock_number(row, "go"), lock_number(row, "no_go"), rule);
}

/* Copies the answers out if the status is one. */
static tw_status lock_answer(tw_status status, double *out, const double *answers, size_t size) {
    if (status >= 0) memcpy(out, answers, size);
    return status;
}

static tw_contact_body lock_body(const vectors_row *row, const char *which) {
    const tw_contact_body body = {
        lock_part(row, which, "radius_mm"),
        lock_part(row, which, "young_mpa"),
        lock_part(row, which, "poisson"),
    };
    return body;
}

static tw_line_contact lock_contact(const vectors_row *row) {
    const tw_line_contact contact = {lock_body(row, "first_"), lock_body(row, "second_"), lock_number(row, "length_mm")};
    return contact;
}

static tw_status lock_pressed(const vectors_row *row, double *out) {
    const tw_line_contact contact = lock_contact(row);
    tw_line_pressure p = {0};
    const tw_status status = tw_hold_pressed(&contact, lock_number(row, "force_n"), &p);
    const double answers[] = {p.effective_radius_mm, p.contact_modulus_mpa, p.half_width_mm, p.peak_mpa, p.shear_mpa, p.shear_depth_mm};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_force_at_peak_n(const vectors_row *row, double *out) {
    const tw_line_contact contact = lock_contact(row);
    return tw_hold_force_at_peak_n(&contact, lock_number(row, "peak_mpa"), &out[0]);
}

static tw_status lock_form_factor(const vectors_row *row, double *out) {
    return tw_hold_form_factor(lock_count(row, "teeth"), &out[0]);
}

static tw_status lock_velocity_factor(const vectors_row *row, double *out) {
    static const char *const FINISHES[] = {"cast", "cut", "hobbed", "ground", NULL};
    const uint8_t finish = choice(vectors_text(row, "finish"), FINISHES);
    return tw_hold_velocity_factor(lock_number(row, "pitch_diameter_mm"), lock_number(row, "speed_rpm"), finish, &out[0]);
}

static tw_spur_tooth lock_tooth(const vectors_row *row) {
    const tw_spur_tooth tooth = {lock_count(row, "teeth"), lock_number(row, "module_mm"), lock_number(row, "face_mm")};
    return tooth;
}

static tw_status lock_tooth_bending(const vectors_row *row, double *out) {
    const tw_spur_tooth tooth = lock_tooth(row);
    tw_tooth_bending b = {0};
    const tw_status status = tw_hold_tooth_bending(&tooth, lock_number(row, "force_n"), lock_number(row, "velocity_factor"), &b);
    const double answers[] = {b.form_factor, b.thickness_mm, b.bending_mpa, b.shear_mpa};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_force_at_bending_n(const vectors_row *row, double *out) {
    const tw_spur_tooth tooth = lock_tooth(row);
    return tw_hold_force_at_bending_n(&tooth, lock_number(row, "bending_mpa"), lock_number(row, "velocity_factor"), &out[0]);
}

static tw_wedge lock_wedge(const vectors_row *row) {
    const double young_mpa = lock_number(row, "young_mpa"), poisson = lock_number(row, "poisson");
    const tw_wedge wedge = {
        lock_count(row, "count"),
        {lock_number(row, "race_radius_mm"), young_mpa, poisson},
        {lock_number(row, "body_radius_mm"), young_mpa, poisson},
        lock_number(row, "length_mm"),
        lock_number(row, "half_angle_deg"),
    };
    return wedge;
}

static tw_status lock_wedged(const vectors_row *row, double *out) {
    const tw_wedge wedge = lock_wedge(row);
    tw_wedge_load l = {0};
    const tw_status status = tw_hold_wedged(&wedge, lock_number(row, "torque_nm"), &l);
    const double answers[] = {l.tangential_n, l.normal_n, l.friction_needed, l.pressure.effective_radius_mm, l.pressure.half_width_mm, l.pressure.peak_mpa};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_wedge_capacity_nm(const vectors_row *row, double *out) {
    const tw_wedge wedge = lock_wedge(row);
    return tw_hold_wedge_capacity_nm(&wedge, lock_number(row, "allow_mpa"), &out[0]);
}

static tw_status lock_held(tw_status status, const tw_one_way_hold *hold, double *out) {
    const double answers[] = {hold->capacity_nm, hold->margin, hold->budget.u, hold->judgment.chance, (double)hold->judgment.verdict};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_wedge_hold(const vectors_row *row, double *out) {
    const tw_wedge wedge = lock_wedge(row);
    const tw_reading need = lock_reading(row, "need_nm", "need_u_nm"), allow = lock_reading(row, "allow_mpa", "allow_u_mpa");
    tw_rule rule;
    const tw_status ruled = lock_rule(row, &rule);
    if (ruled < 0) return ruled;
    static tw_one_way_hold hold;
    const tw_status status = tw_hold_wedge_hold(&wedge, &need, &allow, lock_number(row, "geometry_u_rel"), &rule, &hold);
    return lock_held(status, &hold, out);
}

static tw_status lock_locks(const vectors_row *row, double *out) {
    const tw_reading friction = lock_reading(row, "friction", "friction_u");
    tw_rule rule;
    const tw_status ruled = lock_rule(row, &rule);
    if (ruled < 0) return ruled;
    static tw_judgment judgment;
    const tw_status status = tw_hold_locks(lock_number(row, "half_angle_deg"), &friction, &rule, &judgment);
    const double answers[] = {judgment.limits.lower, judgment.chance, (double)judgment.verdict};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_ratchet lock_ratchet(const vectors_row *row) {
    const tw_ratchet ratchet = {
        lock_count(row, "struts"),
        lock_count(row, "notches"),
        lock_count(row, "carrying"),
        lock_number(row, "strut_width_mm"),
        lock_number(row, "strut_thickness_mm"),
        lock_number(row, "pitch_radius_mm"),
        lock_number(row, "strut_deg"),
    };
    return ratchet;
}

static tw_status lock_ratchet_index(const vectors_row *row, double *out) {
    const tw_ratchet ratchet = lock_ratchet(row);
    tw_ratchet_index index = {0};
    const tw_status status = tw_hold_ratchet_index(&ratchet, &index);
    const double answers[] = {index.backlash_deg, (double)index.positions, (double)index.together};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_strut_load(const vectors_row *row, double *out) {
    const tw_ratchet ratchet = lock_ratchet(row);
    tw_strut_load l = {0};
    const tw_status status = tw_hold_strut_load(&ratchet, lock_number(row, "torque_nm"), &l);
    const double answers[] = {l.tangential_n, l.strut_n, l.separating_n, l.stress_mpa};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_strut_capacity_nm(const vectors_row *row, double *out) {
    const tw_ratchet ratchet = lock_ratchet(row);
    return tw_hold_strut_capacity_nm(&ratchet, lock_number(row, "allow_mpa"), &out[0]);
}

static tw_status lock_strut_hold(const vectors_row *row, double *out) {
    const tw_ratchet ratchet = lock_ratchet(row);
    const tw_reading need = lock_reading(row, "need_nm", "need_u_nm"), allow = lock_reading(row, "allow_mpa", "allow_u_mpa");
    tw_rule rule;
    const tw_status ruled = lock_rule(row, &rule);
    if (ruled < 0) return ruled;
    static tw_one_way_hold hold;
    const tw_status status = tw_hold_strut_hold(&ratchet, &need, &allow, lock_number(row, "geometry_u_rel"), &rule, &hold);
    return lock_held(status, &hold, out);
}

static tw_status lock_take_up(const vectors_row *row, double *out) {
    tw_take_up t = {0};
    const tw_status status =
        tw_hold_take_up(lock_number(row, "backlash_deg"), lock_number(row, "torque_nm"), lock_number(row, "inertia_kg_m2"), &t);
    const double answers[] = {t.time_s, t.speed_rpm, t.energy_j};
    return lock_answer(status, out, answers, sizeof answers);
}

static double lock_fraction(tw_fraction fraction) {
    return fraction.den == 0 ? HUGE_VAL : (double)fraction.num / (double)fraction.den;
}

static tw_status lock_one_way_duty(const vectors_row *row, double *out) {
    static const char *const LOADS[] = {"none", "drive", "coast", NULL};
    static tw_train train;
    double last;
    tw_status status = build(row, &train, &last);
    if (status < 0) return status;
    tw_one_way_duty duty = {0};
    status = tw_hold_one_way_duty(
        &train, (uint8_t)lock_count(row, "element"), lock_count(row, "closed"), choice(vectors_text(row, "load"), LOADS), &duty);
    const double answers[] = {(double)duty.role, (double)duty.beside, (double)duty.backwards, lock_fraction(duty.share), lock_fraction(duty.slip)};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_driveline lock_driveline(const vectors_row *row, double u) {
    const tw_driveline line = {
        lock_number(row, "axle_ratio"),
        lock_number(row, "transfer_ratio"),
        {lock_number(row, "circumference_mm"), u},
    };
    return line;
}

static tw_park_gear lock_gear(const vectors_row *row, const char *which) {
    const tw_park_gear gear = {
        (uint32_t)lock_part(row, which, "teeth"),
        lock_part(row, which, "face_mm"),
        lock_part(row, which, "tooth_root_mm"),
        lock_part(row, which, "contact_diameter_mm"),
        lock_part(row, which, "root_diameter_mm"),
        lock_part(row, which, "tip_diameter_mm"),
    };
    return gear;
}

static tw_parked lock_parked(const vectors_row *row) {
    const tw_parked parked = {
        lock_reading(row, "mass_kg", "mass_u_kg"),
        lock_number(row, "grade_pct"),
        lock_number(row, "rocking_factor"),
        lock_driveline(row, lock_number(row, "circumference_u_mm")),
    };
    return parked;
}

static tw_status lock_park_load(const vectors_row *row, double *out) {
    const tw_driveline line = lock_driveline(row, 0.0);
    tw_park_load l = {0};
    const tw_status status =
        tw_hold_park_load(&line, lock_number(row, "mass_kg"), lock_number(row, "grade_pct"), lock_number(row, "rocking_factor"), &l);
    const double answers[] = {l.grade_deg, l.grade_n, l.wheel_radius_mm, l.static_nm, l.torque_nm};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_stressed(tw_status status, const tw_park_stress *s, double *out) {
    const double answers[] = {s->tooth_n, s->arm_mm, s->bending_mpa, s->shear_mpa, s->von_mises_mpa};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_tooth_stress(const vectors_row *row, double *out) {
    const tw_park_gear gear = lock_gear(row, "");
    tw_park_stress stress = {0};
    const tw_status status = tw_hold_tooth_stress(&gear, lock_number(row, "torque_nm"), lock_number(row, "stress_factor"), &stress);
    return lock_stressed(status, &stress, out);
}

static tw_status lock_stress_on_grade(const vectors_row *row, double *out) {
    const tw_park_gear gear = lock_gear(row, "");
    const tw_parked parked = lock_parked(row);
    tw_park_stress stress = {0};
    const tw_status status = tw_hold_stress_on_grade(&gear, &parked, lock_number(row, "stress_factor"), &stress);
    return lock_stressed(status, &stress, out);
}

static tw_status lock_largest_grade_pct(const vectors_row *row, double *out) {
    const tw_park_gear gear = lock_gear(row, "");
    const tw_parked parked = lock_parked(row);
    return tw_hold_largest_grade_pct(&gear, &parked, lock_number(row, "allow_mpa"), lock_number(row, "stress_factor"), &out[0]);
}

static tw_status lock_park_hold(const vectors_row *row, double *out) {
    const tw_park_gear gear = lock_gear(row, "");
    const tw_parked parked = lock_parked(row);
    const tw_tooth_strength strength = {
        lock_number(row, "yield_mpa"),
        lock_number(row, "stress_factor"),
        lock_number(row, "stress_u_rel"),
    };
    tw_rule rule;
    const tw_status ruled = lock_rule(row, &rule);
    if (ruled < 0) return ruled;
    static tw_park_hold h;
    const tw_status status = tw_hold_park_hold(&gear, &parked, &strength, &rule, &h);
    const double answers[] = {h.stress.von_mises_mpa, h.margin, h.budget.u, h.judgment.chance, (double)h.judgment.verdict, h.largest_grade_pct, h.proven_grade_pct};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_free_roll(const vectors_row *row, double *out) {
    const tw_park_gear gear = lock_gear(row, "");
    const tw_parked parked = lock_parked(row);
    tw_free_roll roll = {0};
    const tw_status status = tw_hold_free_roll(&gear, &parked, &roll);
    const double answers[] = {roll.roll_mm, roll.energy_j, roll.speed_km_h};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_window_deg(const vectors_row *row, double *out) {
    const tw_park_gear gear = lock_gear(row, "");
    return tw_hold_window_deg(&gear, lock_number(row, "space_mm"), lock_number(row, "pawl_tip_mm"), &out[0]);
}

static tw_status lock_compare_park_gears(const vectors_row *row, double *out) {
    const tw_park_gear first = lock_gear(row, "first_"), second = lock_gear(row, "second_");
    tw_park_comparison c = {0};
    const tw_status status = tw_hold_compare_park_gears(&first, &second, lock_number(row, "stress_factor"), &c);
    const double answers[] = {c.bending_ratio, c.shear_ratio, c.torque_ratio, c.free_roll_ratio};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_pawl lock_pawl(const vectors_row *row) {
    const tw_pawl pawl = {
        lock_number(row, "flank_deg"),
        {lock_number(row, "least_friction"), lock_number(row, "greatest_friction")},
        lock_number(row, "inertia_kg_m2"),
        lock_number(row, "spring_nm"),
        lock_number(row, "drop_deg"),
    };
    return pawl;
}

static tw_status lock_ejection(const vectors_row *row, double *out) {
    const tw_pawl pawl = lock_pawl(row);
    tw_ejection e = {0};
    const tw_status status = tw_hold_ejection(&pawl, lock_number(row, "tooth_n"), &e);
    const double answers[] = {e.least_n, e.most_n, e.least_share, e.most_share, e.friction_to_stick, (double)e.releases};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_tip_pressure(const vectors_row *row, double *out) {
    const tw_pawl pawl = lock_pawl(row);
    const tw_contact_body tip = lock_body(row, "");
    const tw_contact_body flank = {HUGE_VAL, tip.young_mpa, tip.poisson};
    const tw_line_contact contact = {tip, flank, lock_number(row, "length_mm")};
    tw_line_pressure p = {0};
    const tw_status status = tw_hold_tip_pressure(&pawl, &contact, lock_number(row, "tooth_n"), &p);
    const double answers[] = {p.half_width_mm, p.peak_mpa};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_latch(const vectors_row *row, double *out) {
    const tw_pawl pawl = lock_pawl(row);
    const tw_driveline line = lock_driveline(row, 0.0);
    tw_latch latch = {0};
    const tw_status status = tw_hold_latch(&pawl, &line, lock_number(row, "window_deg"), &latch);
    const double answers[] = {latch.drop_time_s, latch.output_rpm, latch.road_km_h};
    return lock_answer(status, out, answers, sizeof answers);
}

static tw_status lock_grip_nm(const vectors_row *row, double *out) {
    const tw_driveline line = lock_driveline(row, 0.0);
    return tw_hold_grip_nm(&line, lock_number(row, "axle_load_kg"), lock_number(row, "grade_pct"), lock_number(row, "tire_friction"), &out[0]);
}

static tw_status lock_roll_limits(const vectors_row *row, double *out) {
    tw_limits limits = {0};
    const tw_status status = tw_hold_roll_limits_49_cfr_571_114(lock_number(row, "grade_pct"), &limits);
    const double answers[] = {limits.lower, limits.upper};
    return lock_answer(status, out, answers, sizeof answers);
}

#define HOLD_LOCK_TESTS \
    {"hold_pressed", lock_pressed}, {"hold_force_at_peak_n", lock_force_at_peak_n}, \
    {"hold_form_factor", lock_form_factor}, {"hold_velocity_factor", lock_velocity_factor}, \
    {"hold_tooth_bending", lock_tooth_bending}, {"hold_force_at_bending_n", lock_force_at_bending_n}, \
    {"hold_wedged", lock_wedged}, {"hold_wedge_capacity_nm", lock_wedge_capacity_nm}, \
    {"hold_wedge_hold", lock_wedge_hold}, {"hold_locks", lock_locks}, \
    {"hold_ratchet_index", lock_ratchet_index}, {"hold_strut_load", lock_strut_load}, \
    {"hold_strut_capacity_nm", lock_strut_capacity_nm}, {"hold_strut_hold", lock_strut_hold}, \
    {"hold_take_up", lock_take_up}, {"hold_one_way_duty", lock_one_way_duty}, \
    {"hold_park_load", lock_park_load}, {"hold_tooth_stress", lock_tooth_stress}, \
    {"hold_stress_on_grade", lock_stress_on_grade}, {"hold_largest_grade_pct", lock_largest_grade_pct}, \
    {"hold_park_hold", lock_park_hold}, {"hold_free_roll", lock_free_roll}, {"hold_window_deg", lock_window_deg}, \
    {"hold_compare_park_gears", lock_compare_park_gears}, {"hold_ejection", lock_ejection}, \
    {"hold_tip_pressure", lock_tip_pressure}, {"hold_latch", lock_latch}, {"hold_grip_nm", lock_grip_nm}, \
    {"hold_roll_limits_49_cfr_571_114", lock_roll_limits}

#endif
