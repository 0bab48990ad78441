/* The converter chapter's vectors in C. */
#include "vectors.h"

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
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
