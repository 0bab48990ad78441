/* The unit conversions in C. */
#include "vectors.h"

static tw_status in_to_mm(const vectors_row *row, double *out) {
    out[0] = tw_units_in_to_mm(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status mm_to_in(const vectors_row *row, double *out) {
    out[0] = tw_units_mm_to_in(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status thou_to_mm(const vectors_row *row, double *out) {
    out[0] = tw_units_thou_to_mm(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status mm_to_thou(const vectors_row *row, double *out) {
    out[0] = tw_units_mm_to_thou(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status mile_to_km(const vectors_row *row, double *out) {
    out[0] = tw_units_mile_to_km(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status km_to_mile(const vectors_row *row, double *out) {
    out[0] = tw_units_km_to_mile(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status mph_to_km_h(const vectors_row *row, double *out) {
    out[0] = tw_units_mph_to_km_h(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status km_h_to_mph(const vectors_row *row, double *out) {
    out[0] = tw_units_km_h_to_mph(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status lb_to_kg(const vectors_row *row, double *out) {
    out[0] = tw_units_lb_to_kg(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status kg_to_lb(const vectors_row *row, double *out) {
    out[0] = tw_units_kg_to_lb(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status lbf_to_n(const vectors_row *row, double *out) {
    out[0] = tw_units_lbf_to_n(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status n_to_lbf(const vectors_row *row, double *out) {
    out[0] = tw_units_n_to_lbf(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status lbf_ft_to_nm(const vectors_row *row, double *out) {
    out[0] = tw_units_lbf_ft_to_nm(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status nm_to_lbf_ft(const vectors_row *row, double *out) {
    out[0] = tw_units_nm_to_lbf_ft(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status psi_to_kpa(const vectors_row *row, double *out) {
    out[0] = tw_units_psi_to_kpa(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status kpa_to_psi(const vectors_row *row, double *out) {
    out[0] = tw_units_kpa_to_psi(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status quart_to_l(const vectors_row *row, double *out) {
    out[0] = tw_units_quart_to_l(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status l_to_quart(const vectors_row *row, double *out) {
    out[0] = tw_units_l_to_quart(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status gallon_to_l(const vectors_row *row, double *out) {
    out[0] = tw_units_gallon_to_l(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status l_to_gallon(const vectors_row *row, double *out) {
    out[0] = tw_units_l_to_gallon(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status in3_to_cm3(const vectors_row *row, double *out) {
    out[0] = tw_units_in3_to_cm3(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status cm3_to_in3(const vectors_row *row, double *out) {
    out[0] = tw_units_cm3_to_in3(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status hp_to_kw(const vectors_row *row, double *out) {
    out[0] = tw_units_hp_to_kw(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status kw_to_hp(const vectors_row *row, double *out) {
    out[0] = tw_units_kw_to_hp(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status per_sqrt_lbf_ft_to_per_sqrt_nm(const vectors_row *row, double *out) {
    out[0] = tw_units_per_sqrt_lbf_ft_to_per_sqrt_nm(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status per_sqrt_nm_to_per_sqrt_lbf_ft(const vectors_row *row, double *out) {
    out[0] = tw_units_per_sqrt_nm_to_per_sqrt_lbf_ft(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status f_to_k_difference(const vectors_row *row, double *out) {
    out[0] = tw_units_f_to_k_difference(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status k_to_f_difference(const vectors_row *row, double *out) {
    out[0] = tw_units_k_to_f_difference(vectors_number(row, "value"));
    return TW_STATUS_OK;
}

static tw_status f_to_c(const vectors_row *row, double *out) {
    out[0] = tw_units_f_to_c(vectors_number(row, "temp_f"));
    return TW_STATUS_OK;
}

static tw_status c_to_f(const vectors_row *row, double *out) {
    out[0] = tw_units_c_to_f(vectors_number(row, "temp_c"));
    return TW_STATUS_OK;
}

static const vectors_test TESTS[] = {
    {"units_in_to_mm", in_to_mm},
    {"units_mm_to_in", mm_to_in},
    {"units_thou_to_mm", thou_to_mm},
    {"units_mm_to_thou", mm_to_thou},
    {"units_mile_to_km", mile_to_km},
    {"units_km_to_mile", km_to_mile},
    {"units_mph_to_km_h", mph_to_km_h},
    {"units_km_h_to_mph", km_h_to_mph},
    {"units_lb_to_kg", lb_to_kg},
    {"units_kg_to_lb", kg_to_lb},
    {"units_lbf_to_n", lbf_to_n},
    {"units_n_to_lbf", n_to_lbf},
    {"units_lbf_ft_to_nm", lbf_ft_to_nm},
    {"units_nm_to_lbf_ft", nm_to_lbf_ft},
    {"units_psi_to_kpa", psi_to_kpa},
    {"units_kpa_to_psi", kpa_to_psi},
    {"units_quart_to_l", quart_to_l},
    {"units_l_to_quart", l_to_quart},
    {"units_gallon_to_l", gallon_to_l},
    {"units_l_to_gallon", l_to_gallon},
    {"units_in3_to_cm3", in3_to_cm3},
    {"units_cm3_to_in3", cm3_to_in3},
    {"units_hp_to_kw", hp_to_kw},
    {"units_kw_to_hp", kw_to_hp},
    {"units_per_sqrt_lbf_ft_to_per_sqrt_nm", per_sqrt_lbf_ft_to_per_sqrt_nm},
    {"units_per_sqrt_nm_to_per_sqrt_lbf_ft", per_sqrt_nm_to_per_sqrt_lbf_ft},
    {"units_f_to_k_difference", f_to_k_difference},
    {"units_k_to_f_difference", k_to_f_difference},
    {"units_f_to_c", f_to_c},
    {"units_c_to_f", c_to_f},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
