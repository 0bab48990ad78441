/* The tow chapter's vectors in C. */
#include "tow_grade.h"
#include "tow_load.h"
#include "tow_launch.h"

static const vectors_test TESTS[] = {
    TOW_GRADE_TESTS,
    TOW_LOAD_TESTS,
    TOW_LAUNCH_TESTS,
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
