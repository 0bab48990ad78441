/* The judge chapter's vectors in C. */
#include "vectors.h"

static tw_reading reading(const vectors_row *row) {
    return (tw_reading){vectors_number(row, "value"), vectors_number(row, "u")};
}

static tw_limits limits(const vectors_row *row) {
    return (tw_limits){vectors_number(row, "lower"), vectors_number(row, "upper")};
}

/* c1,u1,nu1 to c4,u4,nu4; an empty c ends the list. */
static size_t inputs(const vectors_row *row, tw_input *list) {
    static const char *const NAMES[4][3] = {
        {"c1", "u1", "nu1"}, {"c2", "u2", "nu2"}, {"c3", "u3", "nu3"}, {"c4", "u4", "nu4"}};
    size_t count = 0;
    for (; count < 4 && vectors_text(row, NAMES[count][0])[0] != '\0'; count++) {
        list[count].sensitivity = vectors_number(row, NAMES[count][0]);
        list[count].u = vectors_number(row, NAMES[count][1]);
        list[count].freedom = vectors_number(row, NAMES[count][2]);
    }
    return count;
}

static tw_status rectangular(const vectors_row *row, double *out) {
    tw_reading result;
    const tw_status status =
        tw_judge_rectangular(vectors_number(row, "value"), vectors_number(row, "half_width"), &result);
    if (status == TW_STATUS_OK) out[0] = result.u;
    return status;
}

static tw_status chance_inside(const vectors_row *row, double *out) {
    const tw_reading value = reading(row);
    const tw_limits within = limits(row);
    return tw_judge_chance_inside(&value, &within, &out[0]);
}

static tw_status judge(const vectors_row *row, double *out) {
    const tw_reading value = reading(row);
    const tw_limits within = limits(row);
    const tw_rule rule = {vectors_number(row, "go"), vectors_number(row, "no_go"), vectors_number(row, "k"),
                          (tw_rule_kind)vectors_number(row, "kind")};
    tw_judgment result;
    const tw_status status = tw_judge_judge(&value, &within, &rule, &result);
    if (status != TW_STATUS_OK) return status;
    out[0] = (double)result.verdict;
    out[1] = result.chance;
    out[2] = result.acceptance.lower;
    out[3] = result.acceptance.upper;
    out[4] = result.rejection.lower;
    out[5] = result.rejection.upper;
    out[6] = result.u_to_decide;
    out[7] = result.value_to_go;
    return status;
}

static tw_status combine(const vectors_row *row, double *out) {
    tw_input list[4];
    tw_budget result;
    const tw_status status = tw_judge_combine(list, inputs(row, list), &result);
    if (status != TW_STATUS_OK) return status;
    out[0] = result.u;
    out[1] = result.freedom;
    out[2] = (double)result.largest;
    return status;
}

static tw_status combine_correlated(const vectors_row *row, double *out) {
    const char *rest = vectors_text(row, "correlation");
    double correlation[16];
    size_t given = 0;
    for (char *end = NULL; given < 16; given++, rest = end) {
        correlation[given] = strtod(rest, &end);
        if (end == rest) break;
    }
    tw_input list[4];
    tw_budget result;
    const size_t count = inputs(row, list);
    if (given != count * count) return TW_STATUS_COUNT; /* C takes as many coefficients as the inputs need */
    const tw_status status = tw_judge_combine_correlated(list, count, correlation, &result);
    if (status != TW_STATUS_OK) return status;
    out[0] = result.u;
    out[1] = result.freedom;
    out[2] = (double)result.largest;
    return status;
}

/* The judgment of the row, and the budget that it came with. */
static tw_status judged(const vectors_row *row, tw_judgment *judgment, tw_budget *budget) {
    tw_input list[4];
    tw_rule rule;
    const tw_limits within = limits(row);
    tw_status status = tw_judge_combine(list, inputs(row, list), budget);
    if (status == TW_STATUS_OK) {
        status = tw_judge_stated_chances(vectors_number(row, "go"), vectors_number(row, "no_go"), &rule);
    }
    if (status == TW_STATUS_OK) {
        const tw_reading value = {vectors_number(row, "value"), budget->u};
        status = tw_judge_judge(&value, &within, &rule, judgment);
    }
    return status;
}

static void settlement(const tw_settlement *result, double *out) {
    out[0] = (double)result->input;
    out[1] = (double)result->enough;
    out[2] = result->u_now;
    out[3] = result->u_needed;
}

static tw_status settle(const vectors_row *row, double *out) {
    tw_budget budget;
    tw_judgment judgment;
    tw_settlement result;
    tw_status status = judged(row, &judgment, &budget);
    if (status == TW_STATUS_OK) status = tw_judge_settle(&judgment, &budget, &result);
    if (status == TW_STATUS_OK) settlement(&result, out);
    return status;
}

static tw_status settle_by(const vectors_row *row, double *out) {
    tw_budget budget;
    tw_judgment judgment;
    tw_settlement result;
    tw_status status = judged(row, &judgment, &budget);
    if (status == TW_STATUS_OK) {
        status = tw_judge_settle_by(&judgment, &budget, (uint32_t)vectors_number(row, "input"), &result);
    }
    if (status == TW_STATUS_OK) settlement(&result, out);
    return status;
}

static tw_status effective_freedom(const vectors_row *row, double *out) {
    tw_input list[4];
    return tw_judge_effective_freedom(list, inputs(row, list), &out[0]);
}

static tw_status expand(const vectors_row *row, double *out) {
    const tw_reading value = reading(row);
    tw_expanded result;
    const tw_status status =
        tw_judge_expand(&value, vectors_number(row, "freedom"), vectors_number(row, "coverage"), &result);
    if (status != TW_STATUS_OK) return status;
    out[0] = result.k;
    out[1] = result.expanded_u;
    out[2] = result.lower;
    out[3] = result.upper;
    return status;
}

static tw_status normal_cdf(const vectors_row *row, double *out) {
    return tw_judge_normal_cdf(vectors_number(row, "z"), &out[0]);
}

static tw_status normal_quantile(const vectors_row *row, double *out) {
    return tw_judge_normal_quantile(vectors_number(row, "probability"), &out[0]);
}

static tw_status student_cdf(const vectors_row *row, double *out) {
    return tw_judge_student_cdf(vectors_number(row, "t"), vectors_number(row, "freedom"), &out[0]);
}

static tw_status student_quantile(const vectors_row *row, double *out) {
    return tw_judge_student_quantile(vectors_number(row, "probability"), vectors_number(row, "freedom"), &out[0]);
}

static tw_status coverage_factor(const vectors_row *row, double *out) {
    return tw_judge_coverage_factor(vectors_number(row, "coverage"), vectors_number(row, "freedom"), &out[0]);
}

static const vectors_test TESTS[] = {
    {"judge_rectangular", rectangular},
    {"judge_chance_inside", chance_inside},
    {"judge_judge", judge},
    {"judge_combine", combine},
    {"judge_combine_correlated", combine_correlated},
    {"judge_settle", settle},
    {"judge_settle_by", settle_by},
    {"judge_effective_freedom", effective_freedom},
    {"judge_expand", expand},
    {"judge_normal_cdf", normal_cdf},
    {"judge_normal_quantile", normal_quantile},
    {"judge_student_cdf", student_cdf},
    {"judge_student_quantile", student_quantile},
    {"judge_coverage_factor", coverage_factor},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
