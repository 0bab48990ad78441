/* The fit chapter's vectors in C. */
#include "vectors.h"

static double number(const vectors_row *row, const char *column) { return vectors_number(row, column); }

static double part(const vectors_row *row, const char *name, const char *dimension) {
    char column[64];
    snprintf(column, sizeof column, "%s_%s", name, dimension);
    return number(row, column);
}

static tw_limits limits(const vectors_row *row, const char *name) {
    const tw_limits limits = {part(row, name, "lower_mm"), part(row, name, "upper_mm")};
    return limits;
}

static tw_reading of_unit(const vectors_row *row, const char *name, const char *unit) {
    char spread[16];
    snprintf(spread, sizeof spread, "u_%s", unit);
    const tw_reading reading = {part(row, name, unit), part(row, name, spread)};
    return reading;
}

static tw_reading reading(const vectors_row *row, const char *name) { return of_unit(row, name, "mm"); }

static tw_reading expansion(const vectors_row *row, const char *name) {
    char column[32];
    snprintf(column, sizeof column, "%s_expansion", name);
    return of_unit(row, column, "per_k");
}

static tw_warm_part warm_part(const vectors_row *row, const char *name) {
    const tw_warm_part of = {reading(row, name), expansion(row, name)};
    return of;
}

static tw_warmth warmth(const vectors_row *row) {
    const tw_warmth warmth = {of_unit(row, "temp", "c"), of_unit(row, "shaft_warmer", "k")};
    return warmth;
}

static tw_elastic elastic(const vectors_row *row, const char *name) {
    const tw_elastic elastic = {part(row, name, "young_mpa"), part(row, name, "poisson")};
    return elastic;
}

static tw_press_joint joint(const vectors_row *row) {
    const tw_press_joint joint = {
        number(row, "inside_mm"), number(row, "interface_mm"), number(row, "outside_mm"),
        elastic(row, "inner"),    elastic(row, "outer"),
    };
    return joint;
}

static tw_pressed_bushing bushing(const vectors_row *row) {
    const tw_pressed_bushing bushing = {
        reading(row, "housing_bore"),
        reading(row, "outside"),
        number(row, "wall_mm"),
        reading(row, "bore"),
        number(row, "housing_outside_mm"),
        {elastic(row, "housing"), expansion(row, "housing")},
        {elastic(row, "shell"), expansion(row, "shell")},
    };
    return bushing;
}

static tw_worn_gap worn(const vectors_row *row) {
    const tw_worn_gap worn = {
        reading(row, "new"),
        reading(row, "worn"),
        number(row, "new_eccentricity"),
        number(row, "worn_eccentricity"),
    };
    return worn;
}

static tw_status clearance(const vectors_row *row, double *out) {
    const tw_limits shaft = limits(row, "shaft"), bore = limits(row, "bore");
    tw_clearance fit;
    const tw_status status = tw_fit_clearance(&shaft, &bore, number(row, "limit_mm"), &fit);
    if (status < 0) return status;
    const double answers[] = {fit.clearance_mm.lower, fit.clearance_mm.upper, (double)fit.fit_class};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status toleranced(const vectors_row *row, double *out) {
    const tw_limits size = limits(row, "size");
    tw_reading reading;
    const tw_status status = tw_fit_toleranced(&size, (tw_spread)number(row, "spread"), &reading);
    if (status < 0) return status;
    out[0] = reading.value;
    out[1] = reading.u;
    return status;
}

static tw_status measured(const vectors_row *row, double *out) {
    tw_rule rule;
    tw_status status = tw_judge_conformance(number(row, "go"), &rule);
    if (status < 0) return status;
    const tw_reading shaft = reading(row, "shaft"), bore = reading(row, "bore");
    const tw_limits wanted = limits(row, "wanted");
    tw_measured_clearance fit;
    status = tw_fit_measured(&shaft, &bore, &wanted, &rule, &fit);
    if (status < 0) return status;
    const double answers[] = {
        fit.clearance_mm.value, fit.clearance_mm.u, fit.chance_tight, fit.chance_loose, fit.judgment.chance,
        (double)fit.judgment.verdict,
    };
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status warm_clearance(const vectors_row *row, double *out) {
    tw_rule rule;
    tw_status status = tw_judge_conformance(number(row, "go"), &rule);
    if (status < 0) return status;
    const tw_warm_part shaft = warm_part(row, "shaft"), bore = warm_part(row, "bore");
    const tw_warmth warm = warmth(row);
    const tw_limits wanted = limits(row, "wanted");
    tw_warm_clearance fit;
    status = tw_fit_warm_clearance(&shaft, &bore, &warm, &wanted, &rule, &fit);
    if (status < 0) return status;
    const tw_measured_clearance *hot = &fit.at_temperature;
    const double answers[] = {
        fit.clearance_20c_mm, fit.change_mm, hot->clearance_mm.value, hot->clearance_mm.u, hot->judgment.chance,
        (double)hot->judgment.verdict,
    };
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status size_20c(const vectors_row *row, double *out) {
    const tw_warm_reading warm = {
        reading(row, "shown"),        expansion(row, "part"),
        of_unit(row, "part_temp", "c"), expansion(row, "instrument"),
        of_unit(row, "instrument_temp", "c"),
    };
    tw_size20 size;
    const tw_status status = tw_fit_size_20c(&warm, &size);
    if (status < 0) return status;
    const double answers[] = {size.size_mm.value, size.size_mm.u, size.correction_mm, (double)size.budget.largest};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status pressed(const vectors_row *row, double *out) {
    const tw_press_joint parts = joint(row);
    tw_pressed p;
    const tw_status status = tw_fit_pressed(&parts, number(row, "interference_mm"), &p);
    if (status < 0) return status;
    const double answers[] = {p.pressure_mpa, p.bore_closure_mm, p.outside_growth_mm, p.inner_hoop_mpa, p.outer_hoop_mpa};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status retention(const vectors_row *row, double *out) {
    const tw_press_joint parts = joint(row);
    tw_retention held;
    const tw_status status = tw_fit_retention(&parts, number(row, "pressure_mpa"), number(row, "length_mm"),
                                              number(row, "friction"), &held);
    if (status < 0) return status;
    out[0] = held.force_n;
    out[1] = held.torque_nm;
    return status;
}

static tw_status bushing_at(const vectors_row *row, double *out) {
    const tw_pressed_bushing in_case = bushing(row);
    tw_pressed p;
    const tw_status status = tw_fit_bushing_at(&in_case, number(row, "temp_c"), &p);
    if (status < 0) return status;
    const double answers[] = {p.interference_mm, p.pressure_mpa, p.bore_closure_mm, p.outer_hoop_mpa};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status let_go_c(const vectors_row *row, double *out) {
    const tw_pressed_bushing in_case = bushing(row);
    tw_reading let_go;
    const tw_status status = tw_fit_let_go_c(&in_case, &let_go);
    if (status < 0) return status;
    out[0] = let_go.value;
    out[1] = let_go.u;
    return status;
}

static tw_status bushing_held(const vectors_row *row, double *out) {
    const tw_pressed_bushing in_case = bushing(row);
    const tw_reading friction = {number(row, "friction"), number(row, "friction_u")};
    tw_held_bushing held;
    const tw_status status =
        tw_fit_bushing_held(&in_case, number(row, "temp_c"), number(row, "length_mm"), &friction, &held);
    if (status < 0) return status;
    const double answers[] = {held.force_n.value, held.torque_nm.value, held.torque_nm.u};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status running_clearance(const vectors_row *row, double *out) {
    tw_rule rule;
    tw_status status = tw_judge_conformance(number(row, "go"), &rule);
    if (status < 0) return status;
    const tw_pressed_bushing in_case = bushing(row);
    const tw_warm_part shaft = warm_part(row, "shaft");
    const tw_warmth warm = warmth(row);
    const tw_limits wanted = limits(row, "wanted");
    tw_running_clearance fit;
    status = tw_fit_running_clearance(&in_case, &shaft, &warm, &wanted, &rule, &fit);
    if (status < 0) return status;
    const tw_measured_clearance *hot = &fit.clearance.at_temperature;
    const double answers[] = {
        hot->clearance_mm.value, hot->clearance_mm.u, fit.as_housing_mm, fit.as_shell_mm, (double)hot->judgment.verdict,
    };
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status iso_limits(const vectors_row *row, double *out) {
    const char *zone = vectors_text(row, "zone");
    tw_iso_limits size;
    const tw_status status = tw_fit_iso_limits(number(row, "nominal_mm"), zone, strlen(zone), &size);
    if (status < 0) return status;
    out[0] = size.lower_deviation_mm;
    out[1] = size.upper_deviation_mm;
    return status;
}

static tw_status iso_size(const vectors_row *row, double *out) {
    const char *text = vectors_text(row, "text");
    tw_iso_limits size;
    const tw_status status = tw_fit_iso_size(text, strlen(text), &size);
    if (status < 0) return status;
    out[0] = size.size_mm.lower;
    out[1] = size.size_mm.upper;
    out[2] = size.hole;
    return status;
}

static tw_status iso_fit(const vectors_row *row, double *out) {
    const char *text = vectors_text(row, "text");
    tw_iso_fit fit;
    const tw_status status = tw_fit_iso_fit(text, strlen(text), &fit);
    if (status < 0) return status;
    out[0] = fit.clearance.clearance_mm.lower;
    out[1] = fit.clearance.clearance_mm.upper;
    out[2] = (double)fit.clearance.fit_class;
    return status;
}

static tw_status bushing_load(const vectors_row *row, double *out) {
    tw_bushing_load load;
    const tw_status status = tw_fit_bushing_load(number(row, "force_n"), number(row, "diameter_mm"),
                                                 number(row, "length_mm"), number(row, "speed_rpm"), &load);
    if (status < 0) return status;
    out[0] = load.unit_load_mpa;
    out[1] = load.sliding_m_s;
    out[2] = load.pv_mpa_m_s;
    return status;
}

static tw_status eccentricity_factor(const vectors_row *row, double *out) {
    return tw_fit_eccentricity_factor(number(row, "eccentricity"), &out[0]);
}

static tw_status gap_leak(const vectors_row *row, double *out) {
    const tw_gap gap = {
        number(row, "diameter_mm"),
        number(row, "clearance_mm"),
        number(row, "length_mm"),
        number(row, "eccentricity"),
    };
    tw_gap_leak leak;
    const tw_status status = tw_fit_gap_leak(&gap, number(row, "pressure_drop_kpa"), number(row, "viscosity_mpa_s"),
                                             number(row, "density_kg_m3"), &leak);
    if (status < 0) return status;
    out[0] = leak.flow_l_min;
    out[1] = leak.speed_m_s;
    out[2] = leak.reynolds;
    return status;
}

static tw_status leak_ratio(const vectors_row *row, double *out) {
    const tw_worn_gap gap = worn(row);
    tw_leak_ratio leak;
    const tw_status status = tw_fit_leak_ratio(&gap, number(row, "coverage"), &leak);
    if (status < 0) return status;
    const double answers[] = {leak.ratio, leak.first_order_u, leak.lower, leak.upper};
    memcpy(out, answers, sizeof answers);
    return status;
}

static tw_status chance_leaks_more(const vectors_row *row, double *out) {
    const tw_worn_gap gap = worn(row);
    return tw_fit_chance_leaks_more(&gap, number(row, "times"), &out[0]);
}

static const vectors_test TESTS[] = {
    {"fit_clearance", clearance},
    {"fit_toleranced", toleranced},
    {"fit_measured", measured},
    {"fit_warm_clearance", warm_clearance},
    {"fit_size_20c", size_20c},
    {"fit_pressed", pressed},
    {"fit_retention", retention},
    {"fit_bushing_at", bushing_at},
    {"fit_let_go_c", let_go_c},
    {"fit_bushing_held", bushing_held},
    {"fit_running_clearance", running_clearance},
    {"fit_iso_limits", iso_limits},
    {"fit_iso_size", iso_size},
    {"fit_iso_fit", iso_fit},
    {"fit_bushing_load", bushing_load},
    {"fit_eccentricity_factor", eccentricity_factor},
    {"fit_gap_leak", gap_leak},
    {"fit_leak_ratio", leak_ratio},
    {"fit_chance_leaks_more", chance_leaks_more},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
