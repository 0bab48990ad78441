/* The hold chapter's vectors in C. */
#include "hold_load.h"
#include "hold_lock.h"

static const vectors_test TESTS[] = {
    HOLD_LOAD_TESTS,
    HOLD_LOCK_TESTS,
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
