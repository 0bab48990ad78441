/* Runs the rows of the identify vectors in C. */
#include "vectors.h"

enum { VARIANTS = 3, MAX_PARTS = 8, MAX_NUMBERS = 32 };

/* Numbers of a cell, apart by spaces. */
static size_t numbers(const char *text, double *out) {
    size_t count = 0;
    char *end = NULL;
    for (double value = strtod(text, &end); end != text && count < MAX_NUMBERS; value = strtod(text, &end)) {
        out[count++] = value;
        text = end;
    }
    return count;
}

static size_t limits(const char *text, tw_limits *out) {
    double values[MAX_NUMBERS];
    const size_t count = numbers(text, values) / 2;
    for (size_t i = 0; i < count; i++) {
        out[i].lower = values[2 * i];
        out[i].upper = values[2 * i + 1];
    }
    return count;
}

/* What is known about a unit, with the memory that the interface asks the caller for. */
typedef struct unit {
    double prior[MAX_NUMBERS], exchanged[MAX_PARTS], ln_likelihood[MAX_PARTS * VARIANTS];
    tw_variant_finding variants[VARIANTS];
    tw_origin origins[VARIANTS];
    tw_weighed weighed;
    tw_evidence evidence;
} unit;

static double take(const char **text) {
    char *end = NULL;
    const double value = strtod(*text, &end);
    *text = end;
    return value;
}

/* The unit of a row: see the top of identify_weigh.csv. */
static tw_status unit_of(const vectors_row *row, unit *made) {
    const char *text = vectors_text(row, "unit");
    tw_status status = TW_STATUS_OK;
    size_t part = 0;
    memset(made, 0, sizeof *made);
    numbers(vectors_text(row, "prior"), made->prior);
    made->exchanged[0] = take(&text);
    while (status == TW_STATUS_OK && *text != '\0') {
        double *const ln_part = &made->ln_likelihood[part * VARIANTS];
        const char kind = *text++;
        if (kind == ' ') continue;
        if (kind == '/') {
            made->exchanged[++part] = take(&text);
        } else if (kind == '=') {
            tw_reading reading;
            tw_limits size_mm[VARIANTS];
            tw_nearest nearest;
            reading.value = take(&text);
            reading.u = take(&text);
            for (int i = 0; i < VARIANTS; i++) {
                size_mm[i].lower = take(&text);
                size_mm[i].upper = take(&text);
            }
            status = tw_identify_add_measured(size_mm, VARIANTS, &reading, ln_part, &nearest);
        } else {
            double chance[VARIANTS];
            for (int i = 0; i < VARIANTS; i++) chance[i] = take(&text);
            status = tw_identify_add_seen(chance, VARIANTS, kind == '+', ln_part);
        }
    }
    made->evidence.prior = made->prior;
    made->evidence.exchanged = made->exchanged;
    made->evidence.ln_likelihood = made->ln_likelihood;
    made->evidence.variants = VARIANTS;
    made->evidence.parts = part + 1;
    return status;
}

static tw_status weighed_unit(const vectors_row *row, unit *made) {
    const tw_status status = unit_of(row, made);
    return status < 0 ? status : tw_identify_weigh(&made->evidence, made->variants, &made->weighed);
}

static tw_status unit_with_part(const vectors_row *row, unit *made, tw_part_finding *finding) {
    const tw_status status = weighed_unit(row, made);
    const size_t part = (size_t)vectors_number(row, "part");
    return status < 0 ? status : tw_identify_part(&made->evidence, made->variants, part, made->origins, finding);
}

static tw_status prior_of_counts(const vectors_row *row, double *out) {
    double values[MAX_NUMBERS];
    uint32_t counts[MAX_NUMBERS];
    const size_t count = numbers(vectors_text(row, "counts"), values);
    for (size_t i = 0; i < count; i++) counts[i] = (uint32_t)values[i];
    return tw_identify_prior_of_counts(counts, count, out);
}

static tw_status ln_density(const vectors_row *row, double *out) {
    const tw_reading reading = {vectors_number(row, "x"), vectors_number(row, "u")};
    const tw_limits size_mm = {vectors_number(row, "lower"), vectors_number(row, "upper")};
    return tw_identify_ln_density(&reading, &size_mm, &out[0]);
}

static tw_status add_seen(const vectors_row *row, double *out) {
    double chance[MAX_NUMBERS], ln_part[VARIANTS] = {0.0, 0.0, 0.0};
    numbers(vectors_text(row, "chance"), chance);
    const tw_status status = tw_identify_add_seen(chance, VARIANTS, vectors_number(row, "seen") > 0.0, ln_part);
    if (status >= 0) memcpy(out, ln_part, sizeof ln_part);
    return status;
}

static tw_status add_measured(const vectors_row *row, double *out) {
    const tw_reading reading = {vectors_number(row, "x"), vectors_number(row, "u")};
    double ln_part[VARIANTS] = {0.0, 0.0, 0.0};
    tw_limits size_mm[MAX_NUMBERS];
    tw_nearest nearest;
    limits(vectors_text(row, "size_mm"), size_mm);
    const tw_status status = tw_identify_add_measured(size_mm, VARIANTS, &reading, ln_part, &nearest);
    if (status < 0) return status;
    memcpy(out, ln_part, sizeof ln_part);
    out[3] = nearest.variant;
    out[4] = nearest.outside_mm;
    out[5] = nearest.outside_u;
    return status;
}

static tw_status weigh(const vectors_row *row, double *out) {
    unit made;
    tw_status status = unit_of(row, &made);
    if (status < 0) return status;
    made.evidence.unexplained = (uint32_t)vectors_number(row, "unexplained");
    status = tw_identify_weigh(&made.evidence, made.variants, &made.weighed);
    if (status < 0) return status;
    for (int i = 0; i < VARIANTS; i++) {
        out[i] = made.variants[i].chance;
        out[VARIANTS + i] = made.variants[i].chance_unmixed;
    }
    out[6] = made.weighed.chance_mixed;
    out[7] = made.weighed.best;
    out[8] = made.weighed.single;
    out[9] = made.weighed.entropy_bits;
    out[10] = made.weighed.ln_evidence;
    out[11] = made.weighed.ln_single;
    out[12] = made.weighed.ln_by_part;
    out[13] = made.weighed.ln_gap;
    return status;
}

static tw_status part(const vectors_row *row, double *out) {
    unit made;
    tw_part_finding finding;
    const tw_status status = unit_with_part(row, &made, &finding);
    if (status < 0) return status;
    out[0] = finding.origin;
    out[1] = finding.chance;
    out[2] = finding.exchanged;
    out[3] = finding.exchanged_if_best;
    out[4] = finding.foreign;
    out[5] = finding.ln_conflict;
    for (int i = 0; i < VARIANTS; i++) {
        out[6 + i] = made.origins[i].chance;
        out[9 + i] = made.origins[i].kept;
        out[12 + i] = made.origins[i].if_exchanged;
    }
    return status;
}

static tw_status conclude(const vectors_row *row, double *out) {
    double foreign[MAX_NUMBERS];
    tw_part_finding parts[MAX_NUMBERS];
    tw_weighed weighed;
    tw_rule rule;
    tw_conclusion conclusion;
    const size_t count = numbers(vectors_text(row, "foreign"), foreign);
    memset(parts, 0, sizeof parts);
    memset(&weighed, 0, sizeof weighed);
    for (size_t i = 0; i < count; i++) parts[i].foreign = foreign[i];
    weighed.chance = vectors_number(row, "chance");
    weighed.unexplained = (uint32_t)vectors_number(row, "unexplained");
    tw_judge_conformance(0.95, &rule);
    rule.go = vectors_number(row, "go");
    rule.no_go = vectors_number(row, "no_go");
    const tw_status status = tw_identify_conclude(&weighed, parts, count, &rule, &conclusion);
    if (status < 0) return status;
    out[0] = conclusion.outcome;
    out[1] = conclusion.foreign_parts;
    out[2] = conclusion.open_parts;
    out[3] = conclusion.variant_settled ? 1.0 : 0.0;
    return status;
}

static tw_status standing_of(const vectors_row *row, unit *made, tw_standing *standing) {
    tw_part_finding finding;
    const tw_status status = unit_with_part(row, made, &finding);
    standing->variants = made->variants;
    standing->origins = made->origins;
    standing->count = VARIANTS;
    tw_judge_conformance(0.95, &standing->rule);
    standing->rule.go = vectors_number(row, "go");
    standing->rule.no_go = 0.05;
    return status;
}

static tw_status put_worth(tw_status status, const tw_worth *worth, double *out) {
    if (status < 0) return status;
    out[0] = worth->bits;
    out[1] = worth->bits_per_minute;
    out[2] = worth->settles;
    return status;
}

static tw_status mark_worth(const vectors_row *row, double *out) {
    unit made;
    tw_standing standing;
    tw_worth worth;
    double chance[MAX_NUMBERS];
    tw_status status = standing_of(row, &made, &standing);
    numbers(vectors_text(row, "chance"), chance);
    if (status >= 0) status = tw_identify_mark_worth(&standing, chance, vectors_number(row, "minutes"), &worth);
    return put_worth(status, &worth, out);
}

static tw_status size_worth(const vectors_row *row, double *out) {
    unit made;
    tw_standing standing;
    tw_worth worth;
    tw_limits size_mm[MAX_NUMBERS];
    tw_status status = standing_of(row, &made, &standing);
    const double u_mm = vectors_number(row, "u_mm"), minutes = vectors_number(row, "minutes");
    limits(vectors_text(row, "size_mm"), size_mm);
    if (status >= 0) status = tw_identify_size_worth(&standing, size_mm, u_mm, minutes, &worth);
    return put_worth(status, &worth, out);
}

static const vectors_test TESTS[] = {
    {"identify_prior_of_counts", prior_of_counts},
    {"identify_ln_density", ln_density},
    {"identify_add_seen", add_seen},
    {"identify_add_measured", add_measured},
    {"identify_weigh", weigh},
    {"identify_part", part},
    {"identify_conclude", conclude},
    {"identify_mark_worth", mark_worth},
    {"identify_size_worth", size_worth},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
