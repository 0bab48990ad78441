/* The interchange chapter's vectors in C. */
#include "vectors.h"
#include <math.h>

enum { MOST = 64 };

/* Reads the next number of a text and moves behind it; a text without one leaves the value alone and says so. */
static bool next(const char **text, double *value) {
    char *end = NULL;
    const double read = strtod(*text, &end);
    if (end == *text) return false;
    *text = end;
    *value = read;
    return true;
}

static double number(const char **text) {
    double value = 0.0;
    (void)next(text, &value);
    return value;
}

static size_t list(const vectors_row *row, const char *column, double *values) {
    const char *text = vectors_text(row, column);
    size_t count = 0;
    while (count < MOST && next(&text, &values[count])) count++;
    return count;
}

static tw_limits limits(const char **text) {
    const double lower = number(text);
    return (tw_limits){lower, number(text)};
}

static tw_sides sides(const char **text) {
    const tw_limits first = limits(text);
    return (tw_sides){first, limits(text)};
}

static tw_joint_kind kind(const char *word) {
    static const char *const WORDS[] = {"running", "locating", "press", "cover", "match"};
    for (uint8_t i = 0; i < 5; i++) {
        if (strncmp(word, WORDS[i], strlen(WORDS[i])) == 0) return (tw_joint_kind)i;
    }
    return (tw_joint_kind)99;
}

typedef struct written {
    tw_joint joints[MOST];
    tw_sides sizes[MOST];
    tw_machining machining[MOST];
    tw_crossing crossings[MOST];
    tw_part_family family;
} written;

static tw_part_set set(const vectors_row *row, const char *column) {
    tw_part_set parts = {{0, 0, 0, 0}};
    double values[MOST];
    const size_t count = list(row, column, values);
    for (size_t i = 0; i < count; i++) parts.words[(size_t)values[i] / 64] |= UINT64_C(1) << ((size_t)values[i] % 64);
    return parts;
}

/* A family as the rows write it: joints as `kind first second limit sizes...`, a match with one number for each variant;
 * machining as `joint part from to_fit lower upper run-out`. */
static tw_status family(const vectors_row *row, written *to) {
    const uint8_t variants = (uint8_t)vectors_number(row, "variants");
    size_t joints = 0, sizes = 0, machining = 0;
    for (const char *text = vectors_text(row, "joints"); text != NULL; joints++) {
        while (*text == ' ' || *text == ';') text++;
        tw_joint *joint = &to->joints[joints];
        joint->kind = kind(text);
        text += strcspn(text, " ");
        joint->first = (uint16_t)number(&text);
        joint->second = (uint16_t)number(&text);
        joint->limit = number(&text);
        for (uint8_t variant = 0; variant < variants; variant++) {
            if (joint->kind == TW_JOINT_KIND_MATCH) {
                const double value = number(&text);
                to->sizes[sizes++] = (tw_sides){{value, value}, {value, value}};
            } else {
                to->sizes[sizes++] = sides(&text);
            }
        }
        text = strchr(text, ';');
    }
    for (const char *text = vectors_text(row, "machining"); text != NULL && *text != '\0'; machining++) {
        while (*text == ' ' || *text == ';') text++;
        tw_machining *rule = &to->machining[machining];
        rule->joint = (uint16_t)number(&text);
        rule->part = (uint16_t)number(&text);
        rule->from = (uint32_t)number(&text);
        rule->to_fit = (uint32_t)number(&text);
        rule->finish_mm = limits(&text);
        rule->runout_limit_mm = number(&text);
        text = strchr(text, ';');
    }
    to->family = (tw_part_family){
        .parts = (uint16_t)vectors_number(row, "parts"),
        .variants = variants,
        .joints = to->joints,
        .joint_count = joints,
        .sizes = to->sizes,
        .machining = to->machining,
        .machining_count = machining,
        .fixed = set(row, "fixed"),
        .alias = set(row, "alias"),
    };
    return tw_interchange_check(&to->family);
}

static tw_status crossed(const vectors_row *row, written *to) {
    const tw_status status = family(row, to);
    if (status != TW_STATUS_OK) return status;
    return tw_interchange_crossings(&to->family, (uint8_t)vectors_number(row, "from"),
                                    (uint8_t)vectors_number(row, "into"), to->family.joint_count, to->crossings);
}

static tw_status close_of(const vectors_row *row, written *to, tw_matched_set *found) {
    const tw_status status = crossed(row, to);
    if (status != TW_STATUS_OK) return status;
    return tw_interchange_close_set(&to->family, to->crossings, to->family.joint_count,
                                    (uint16_t)vectors_number(row, "part"), found);
}

static double place(uint16_t found, uint16_t none) { return found == none ? -1.0 : (double)found; }

static tw_status cover_share(const vectors_row *row, double *out) {
    const tw_limits land = {vectors_number(row, "land_from_mm"), vectors_number(row, "land_to_mm")};
    const tw_limits surface = {vectors_number(row, "surface_from_mm"), vectors_number(row, "surface_to_mm")};
    return tw_interchange_cover_share(&land, &surface, &out[0]);
}

static tw_status meet(const vectors_row *row, double *out) {
    const tw_joint joint = {kind(vectors_text(row, "kind")), 0, 1, vectors_number(row, "limit")};
    const char *first = vectors_text(row, "first_from"), *second = vectors_text(row, "second_from");
    const tw_sides first_from = sides(&first), second_from = sides(&second);
    tw_meeting meeting;
    const tw_status status = tw_interchange_meet(&joint, &first_from, &second_from, &meeting);
    if (status != TW_STATUS_OK) return status;
    out[0] = (double)meeting.outcome;
    out[1] = meeting.clearance_mm.lower;
    out[2] = meeting.clearance_mm.upper;
    out[3] = meeting.wanted_mm.lower;
    out[4] = meeting.wanted_mm.upper;
    out[5] = meeting.share;
    return status;
}

/* The set, and once more what stands at its edge, joint by joint. */
static tw_status close_set(const vectors_row *row, double *out) {
    written w;
    tw_matched_set found;
    tw_status status = close_of(row, &w, &found);
    if (status != TW_STATUS_OK) return status;
    unsigned machined = 0, unmended = 0;
    for (uint16_t joint = 0; joint < w.family.joint_count; joint++) {
        tw_passage passage;
        status = tw_interchange_edge(&found, &w.family, w.crossings, w.family.joint_count, joint, &passage);
        if (status != TW_STATUS_OK) return status;
        if (passage.outcome == TW_JOINT_OUTCOME_HOLDS) continue;
        if (passage.machining == TW_NO_MACHINING) unmended++;
        else machined++;
    }
    if (machined != found.machined || unmended != found.unmended) return TW_STATUS_OTHER;
    out[0] = (double)found.size;
    out[1] = (double)found.machined;
    out[2] = (double)found.unmended;
    out[3] = (double)found.parts.words[0];
    return status;
}

/* The answer, and the same from the matrix of the whole family. */
static tw_status answer(const vectors_row *row, double *out) {
    written w;
    tw_answer one, all[MOST];
    tw_status status = crossed(row, &w);
    if (status != TW_STATUS_OK) return status;
    const uint16_t part = (uint16_t)vectors_number(row, "part");
    const uint8_t from = (uint8_t)vectors_number(row, "from"), into = (uint8_t)vectors_number(row, "into");
    status = tw_interchange_answer(&w.family, w.crossings, w.family.joint_count, part, from, into, &one);
    if (status != TW_STATUS_OK) return status;
    const size_t count = (size_t)w.family.parts * w.family.variants * (w.family.variants - 1u);
    status = tw_interchange_matrix(&w.family, w.crossings, w.family.joint_count, count, all);
    if (status != TW_STATUS_OK) return status;
    for (size_t i = 0; i < count; i++) {
        if (all[i].part != part || all[i].from != from || all[i].into != into) continue;
        if (all[i].relation != one.relation || all[i].alone != one.alone || all[i].size != one.size) return TW_STATUS_OTHER;
    }
    out[0] = (double)one.relation;
    out[1] = (double)one.alone;
    out[2] = (double)one.joints;
    out[3] = (double)one.broken;
    out[4] = (double)one.size;
    return status;
}

static tw_status price(const vectors_row *row, double *out) {
    written w;
    tw_matched_set found;
    tw_status status = close_of(row, &w, &found);
    if (status != TW_STATUS_OK) return status;
    double parts[MOST], machining[MOST];
    const size_t part_count = list(row, "part_prices", parts);
    const size_t machining_count = list(row, "machining_prices", machining);
    tw_price result;
    status = tw_interchange_price(&found, &w.family, w.crossings, w.family.joint_count, parts, part_count, machining,
                                  machining_count, &result);
    if (status != TW_STATUS_OK) return status;
    out[0] = result.total;
    out[1] = (double)result.unpriced;
    return status;
}

static size_t variants(const vectors_row *row, const char *column, uint8_t *to) {
    size_t count = 0;
    for (const char *text = vectors_text(row, column); *text != '\0' && count < MOST; text++) {
        if (*text == ' ') continue;
        to[count++] = *text == '-' ? TW_AS_FOUND : (uint8_t)(*text - '0');
    }
    return count;
}

static tw_status put_in(const vectors_row *row, double *out) {
    written w;
    tw_status status = family(row, &w);
    if (status != TW_STATUS_OK) return status;
    uint8_t of[MOST];
    const size_t count = variants(row, "variants_of", of);
    tw_passage passage;
    status = tw_interchange_put_in(&w.family, of, count, (uint16_t)vectors_number(row, "part"),
                                   (uint8_t)vectors_number(row, "variant"), &passage);
    if (status != TW_STATUS_OK) return status;
    out[0] = (double)passage.outcome;
    out[1] = place(passage.machining, TW_NO_MACHINING);
    return status;
}

static tw_status order(const vectors_row *row, double *out) {
    written w;
    tw_status status = family(row, &w);
    if (status != TW_STATUS_OK) return status;
    uint8_t found[MOST], wanted[MOST], parts[MOST];
    double part_prices[MOST], machining_prices[MOST];
    tw_measured_side measured[MOST];
    tw_joint_state states[MOST];
    tw_order_job job = {
        .unit = (uint8_t)vectors_number(row, "unit"),
        .found = found,
        .wanted = wanted,
        .measured = measured,
        .spread = TW_SPREAD_RECTANGULAR,
        .aim = (tw_aim)vectors_number(row, "aim"),
    };
    const size_t count = variants(row, "found", found);
    (void)variants(row, "wanted", wanted);
    for (const char *text = vectors_text(row, "measured"); text != NULL && *text != '\0'; job.measured_count++) {
        while (*text == ' ' || *text == ';') text++;
        tw_measured_side *side = &measured[job.measured_count];
        side->joint = (uint16_t)number(&text);
        side->part = (uint16_t)number(&text);
        side->size_mm.value = number(&text);
        side->size_mm.u = number(&text);
        text = strchr(text, ';');
    }
    if (list(row, "part_prices", part_prices) > 0) job.part_prices = part_prices;
    if (list(row, "machining_prices", machining_prices) > 0) job.machining_prices = machining_prices;
    status = tw_judge_conformance(0.95, &job.rule);
    if (status != TW_STATUS_OK) return status;
    tw_order result;
    status = tw_interchange_order(&w.family, &job, parts, count, states, w.family.joint_count, &result);
    if (status != TW_STATUS_OK) return status;
    double ordered = 0.0;
    for (size_t part = 0; part < count; part++) {
        if (parts[part] != TW_AS_FOUND) ordered += (double)(parts[part] + 1) * pow(4.0, (double)part);
    }
    out[0] = result.possible ? 1.0 : 0.0;
    out[1] = (double)result.parts;
    out[2] = (double)result.machined;
    out[3] = (double)result.not_proven;
    out[4] = place(result.stopped_at, TW_NO_JOINT);
    out[5] = result.price.total;
    out[6] = (double)result.price.unpriced;
    out[7] = result.cheapest ? 1.0 : 0.0;
    out[8] = ordered;
    out[9] = states[0].chance;
    out[10] = states[0].clearance_mm.u;
    return status;
}

static const vectors_test TESTS[] = {
    {"interchange_cover_share", cover_share},
    {"interchange_meet", meet},
    {"interchange_close_set", close_set},
    {"interchange_answer", answer},
    {"interchange_price", price},
    {"interchange_put_in", put_in},
    {"interchange_order", order},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
