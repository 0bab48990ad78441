/* Trains of the vector files. */
#ifndef TRAINS_H
#define TRAINS_H

#include "vectors.h"

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
        char *kind = word(&rest);
        char *planets = strchr(kind, ':');
        if (planets != NULL) *planets++ = '\0';
        if (choice(kind, SETS) < 4) {
            tw_planetary_set set;
            memset(&set, 0, sizeof set);
            set.kind = choice(kind, SETS);
            set.planets = planets == NULL ? 0 : (uint8_t)atoi(planets);
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

#endif
