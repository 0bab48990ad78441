/* The live chapter's vectors in C. */
#include "live.h"

static const vectors_test TESTS[] = {
    LIVE_TESTS,
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
