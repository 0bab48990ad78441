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

static tw_reading reading(const vectors_row *row, const char *name) {
    const tw_reading reading = {part(row, name, "mm"), part(row, name, "u_mm")};
    return reading;
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

static const vectors_test TESTS[] = {
    {"fit_clearance", clearance},
    {"fit_toleranced", toleranced},
    {"fit_measured", measured},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
