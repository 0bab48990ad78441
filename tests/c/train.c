/* The train chapter's vectors in C. */
#include "vectors.h"
#include <math.h>

/* The next word of a train cell, cut off; "" at its end. */
static char *word(char **text) {
    char *start = *text + strspn(*text, " ");
    char *end = start + strcspn(start, " ");
    *text = *end == '\0' ? end : end + 1;
    *end = '\0';
    return start;
}

static uint8_t member(const char *cell) { return strcmp(cell, "-") == 0 ? TW_NO_MEMBER : (uint8_t)atoi(cell); }

static uint16_t teeth(const char *cell) { return strcmp(cell, "-") == 0 ? 0 : (uint16_t)atoi(cell); }

static uint8_t choice(const char *cell, const char *const *names) {
    uint8_t number = 0;
    while (names[number] != NULL && strcmp(names[number], cell) != 0) number++;
    return number;
}

/* Builds the train of a row part by part: see the top of train_solve.csv. `last` is the number of what came last. */
static tw_status build(const vectors_row *row, tw_train *train, double *last) {
    static const char *const SETS[] = {"simple", "double_pinion", "two_sun", "stepped", NULL};
    static const char *const ELEMENTS[] = {"clutch", "brake", "one_way", "dog", NULL};
    static const char *const BLOCKS[] = {"", "reverse", "forward", NULL};
    static char text[VECTORS_LINE];
    strcpy(text, vectors_text(row, "train"));
    char *rest = text;
    const uint8_t members = member(word(&rest)), input = member(word(&rest)), output = member(word(&rest));
    tw_train built;
    tw_status status = tw_train_new(members, input, output, member(word(&rest)), &built);
    int sets = 0, elements = 0;
    *last = members;
    while (status == TW_STATUS_OK && strcmp(word(&rest), "/") == 0) {
        const char *kind = word(&rest);
        if (choice(kind, SETS) < 4) {
            tw_planetary_set set;
            memset(&set, 0, sizeof set);
            set.kind = choice(kind, SETS);
            set.teeth.sun = teeth(word(&rest));
            set.teeth.sun_2 = teeth(word(&rest));
            set.teeth.planet = teeth(word(&rest));
            set.teeth.planet_2 = teeth(word(&rest));
            set.teeth.ring = teeth(word(&rest));
            word(&rest); /* @ */
            set.joins.sun = member(word(&rest));
            set.joins.sun_2 = member(word(&rest));
            set.joins.ring = member(word(&rest));
            set.joins.carrier = member(word(&rest));
            status = tw_train_add_set(&set, &built);
            *last = sets++;
        } else {
            tw_element element;
            memset(&element, 0, sizeof element);
            element.kind = choice(kind, ELEMENTS);
            element.first = member(word(&rest));
            element.second = member(word(&rest));
            if (*rest != '/' && *rest != '\0') element.blocks = choice(word(&rest), BLOCKS);
            status = tw_train_add_element(&element, &built);
            *last = elements++;
        }
    }
    if (status == TW_STATUS_OK) *train = built;
    return status;
}

static tw_status building(const vectors_row *row, double *out) {
    tw_train train;
    double last;
    const tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) out[0] = last;
    return status;
}

static double number(tw_fraction fraction) {
    return fraction.den == 0 ? (double)INFINITY : (double)fraction.num / (double)fraction.den;
}

static void outputs(const tw_state *state, double *out) {
    *out++ = state->kind;
    *out++ = state->mobility;
    *out++ = state->redundant;
    *out++ = (double)state->ratio.num;
    *out++ = (double)state->ratio.den;
    *out++ = number(state->output_torque);
    *out++ = number(state->case_torque);
    for (int i = 0; i < 8; i++) *out++ = number(state->shares[i]);
    for (int i = 0; i < 8; i++) *out++ = number(state->slips[i]);
    for (int i = 0; i < 14; i++) *out++ = number(state->speeds[i]);
}

static uint32_t mask(const vectors_row *row) { return (uint32_t)vectors_number(row, "closed"); }

static tw_status solve(const vectors_row *row, double *out) {
    tw_train train;
    tw_state state;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_solve(&train, mask(row), &state);
    if (status == TW_STATUS_OK) outputs(&state, out);
    return status;
}

static tw_status resolve(const vectors_row *row, double *out) {
    static const char *const LOADS[] = {"none", "drive", "coast", NULL};
    tw_train train;
    tw_state state;
    double last;
    tw_status status = build(row, &train, &last);
    const tw_load load = choice(vectors_text(row, "load"), LOADS);
    if (status == TW_STATUS_OK) status = tw_train_resolve(&train, mask(row), load, &state);
    if (status == TW_STATUS_OK) {
        out[0] = state.closed;
        outputs(&state, out + 1);
    }
    return status;
}

static tw_status planet_speeds(const vectors_row *row, double *out) {
    tw_train train;
    tw_state state;
    tw_planet_speeds speeds;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_solve(&train, mask(row), &state);
    if (status == TW_STATUS_OK) {
        status = tw_train_planet_speeds(&train, &state, (uint8_t)vectors_number(row, "set"), &speeds);
    }
    if (status == TW_STATUS_OK) {
        out[0] = number(speeds.planet_on_pin);
        out[1] = number(speeds.planet);
        out[2] = number(speeds.planet_2_on_pin);
        out[3] = number(speeds.planet_2);
    }
    return status;
}

static const vectors_test TESTS[] = {
    {"train_new", building},   {"train_add_set", building}, {"train_add_element", building},
    {"train_solve", solve},    {"train_resolve", resolve},  {"train_planet_speeds", planet_speeds},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
