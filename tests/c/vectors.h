/* Runs the rows of tests/vectors/<name>.csv in C and prints the bits of every output: see "Vectors" in DEVELOPERS.md.
 *
 *     static tw_status chance_inside(const vectors_row *row, double *out) {
 *         const tw_reading reading = {vectors_number(row, "value"), vectors_number(row, "u")};
 *         ...
 *         return tw_judge_chance_inside(&reading, &limits, &out[0]);
 *     }
 *     static const vectors_test TESTS[] = {{"judge_chance_inside", chance_inside}};
 *     int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
 */
#ifndef VECTORS_H
#define VECTORS_H

#include "trainwright.h"
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { VECTORS_COLUMNS = 64, VECTORS_LINE = 4096 };

typedef struct vectors_row {
    const char *path;
    int line;
    int columns;
    char header_text[VECTORS_LINE], row_text[VECTORS_LINE];
    char *header[VECTORS_COLUMNS], *cell[VECTORS_COLUMNS];
} vectors_row;

typedef struct vectors_test {
    const char *name;
    /* Fills the outputs in the order of the output columns; on failure it leaves them alone. */
    tw_status (*run)(const vectors_row *row, double *out);
} vectors_test;

static void vectors_fail(const vectors_row *row, const char *what, const char *column) {
    fprintf(stderr, "%s line %d: %s %s\n", row->path, row->line, what, column);
    exit(1);
}

static const char *vectors_text(const vectors_row *row, const char *column) {
    for (int i = 0; i < row->columns; i++) {
        if (strcmp(row->header[i], column) == 0) return row->cell[i];
    }
    vectors_fail(row, "no column", column);
    return "";
}

static double vectors_number(const vectors_row *row, const char *column) {
    const char *text = vectors_text(row, column);
    char *end = NULL;
    const double value = strtod(text, &end);
    if (end == text || *end != '\0') vectors_fail(row, "not a number:", column);
    return value;
}

/* Cuts a line at its commas, at most `limit` cells; the last cell keeps its commas. */
static int vectors_split(char *text, char **cell, int limit) {
    int count = 0;
    text[strcspn(text, "\r\n")] = '\0';
    cell[count++] = text;
    for (char *comma = strchr(text, ','); comma != NULL && count < limit; comma = strchr(comma + 1, ',')) {
        *comma = '\0';
        cell[count++] = comma + 1;
    }
    return count;
}

static const char *vectors_status_name(tw_status status) {
    static const struct { tw_status status; const char *name; } NAMES[] = {
        {TW_STATUS_NULL, "NULL"},
        {TW_STATUS_NOT_FINITE, "NOT_FINITE"},
        {TW_STATUS_NOT_POSITIVE, "NOT_POSITIVE"},
        {TW_STATUS_OUT_OF_RANGE, "OUT_OF_RANGE"},
        {TW_STATUS_REVERSED, "REVERSED"},
        {TW_STATUS_COUNT, "COUNT"},
        {TW_STATUS_INCONSISTENT, "INCONSISTENT"},
        {TW_STATUS_MISSING, "MISSING"},
        {TW_STATUS_OVERFLOW, "OVERFLOW"},
        {TW_STATUS_TEXT, "TEXT"},
        {TW_STATUS_NO_ANSWER, "NO_ANSWER"},
    };
    for (size_t i = 0; i < sizeof NAMES / sizeof NAMES[0]; i++) {
        if (NAMES[i].status == status) return NAMES[i].name;
    }
    return "OTHER";
}

static uint64_t vectors_bits(double value) {
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    return bits;
}

static void vectors_run(const vectors_test *test, const char *folder, const char *out_folder) {
    static vectors_row row;
    char path[VECTORS_LINE], out_path[VECTORS_LINE];
    snprintf(path, sizeof path, "%s/%s.csv", folder, test->name);
    snprintf(out_path, sizeof out_path, "%s/%s.bits", out_folder, test->name);
    memset(&row, 0, sizeof row);
    row.path = path;
    FILE *file = fopen(path, "r");
    FILE *bits = fopen(out_path, "w");
    if (file == NULL || bits == NULL) vectors_fail(&row, "cannot open", file == NULL ? path : out_path);
    for (int number = 0; fgets(row.row_text, sizeof row.row_text, file) != NULL;) {
        const char first = row.row_text[0];
        row.line++;
        if (first == '#' || first == '\n' || first == '\r') continue;
        if (row.columns == 0) {
            memcpy(row.header_text, row.row_text, sizeof row.header_text);
            row.columns = vectors_split(row.header_text, row.header, VECTORS_COLUMNS);
            continue;
        }
        if (vectors_split(row.row_text, row.cell, row.columns) != row.columns) vectors_fail(&row, "too few cells", "");
        const double untouched = -7.25e77;
        double out[VECTORS_COLUMNS];
        for (int i = 0; i < VECTORS_COLUMNS; i++) out[i] = untouched;
        const tw_status status = test->run(&row, out);
        int output = 0;
        for (int i = 0; i < row.columns; i++) {
            if (row.header[i][0] != '=') continue;
            if (status >= 0) {
                fprintf(bits, "%d %s %016llx\n", number, row.header[i] + 1, (unsigned long long)vectors_bits(out[output]));
            } else if (vectors_bits(out[output]) != vectors_bits(untouched)) {
                vectors_fail(&row, "failed, and yet wrote", row.header[i]);
            }
            output++;
        }
        if (status < 0) fprintf(bits, "%d error %s\n", number, vectors_status_name(status));
        number++;
    }
    fclose(file);
    fclose(bits);
}

/* program <folder of the vector files> <folder for the bits> */
static int vectors_main(int argc, char **argv, const vectors_test *tests, size_t count) {
    if (argc != 3) {
        fprintf(stderr, "usage: %s VECTOR_FOLDER BITS_FOLDER\n", argv[0]);
        return 2;
    }
    for (size_t i = 0; i < count; i++) vectors_run(&tests[i], argv[1], argv[2]);
    return 0;
}

#endif
