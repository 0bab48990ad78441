/* The judge chapter's vectors in C. */
#include "vectors.h"

static tw_status chance_inside(const vectors_row *row, double *out) {
    const tw_reading reading = {vectors_number(row, "value"), vectors_number(row, "u")};
    const tw_limits limits = {vectors_number(row, "lower"), vectors_number(row, "upper")};
    return tw_judge_chance_inside(&reading, &limits, &out[0]);
}

static const vectors_test TESTS[] = {
    {"judge_chance_inside", chance_inside},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
