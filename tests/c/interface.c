/* What holds for the whole C interface: header and library are of one version, every status has words, and null pointers
 * and numbers that name nothing are refused with the results untouched. */
#include "trainwright.h"
#include <stdio.h>
#include <string.h>

static int faults = 0;

static void expect(bool holds, const char *what) {
    if (!holds) {
        printf("does not hold: %s\n", what);
        faults++;
    }
}

static void versions_and_words(void) {
    expect(tw_version() == TW_VERSION_MAJOR * 1000000u + TW_VERSION_MINOR * 1000u + TW_VERSION_PATCH, "one version");
    for (int32_t status = -200; status <= 200; status++) {
        const char *text = tw_status_text(status);
        expect(text != NULL && strlen(text) >= 5, "every status has words");
    }
    expect(strcmp(tw_status_text(TW_STATUS_NO_ANSWER), "the question has no answer") == 0, "words of a status");
}

static void null_pointers(void) {
    const tw_reading reading = {0.43, 0.03};
    const tw_limits limits = {0.20, 0.60};
    double chance = -1.0;
    expect(tw_judge_chance_inside(NULL, &limits, &chance) == TW_STATUS_NULL, "null input");
    expect(tw_judge_chance_inside(&reading, NULL, &chance) == TW_STATUS_NULL, "null input");
    expect(tw_judge_chance_inside(&reading, &limits, NULL) == TW_STATUS_NULL, "null result");
    expect(chance < 0.0, "untouched");
    expect(tw_judge_combine(NULL, 1, NULL) == TW_STATUS_NULL, "null list");
}

static void numbers_that_name_nothing(void) {
    const uint8_t junk = 77;
    tw_train train;
    tw_state state;
    tw_tire tire;
    tw_element element;
    tw_planetary_set set;
    uint32_t closed = 0;

    expect(tw_train_new(4, 1, 2, 0, &train) == TW_STATUS_OK, "a train");
    memset(&set, 0, sizeof set);
    memcpy(&set.kind, &junk, 1);
    expect(tw_train_add_set(&set, &train) == TW_STATUS_OUT_OF_RANGE, "kind of set");
    memset(&element, 0, sizeof element);
    memcpy(&element.kind, &junk, 1);
    expect(tw_train_add_element(&element, &train) == TW_STATUS_OUT_OF_RANGE, "kind of element");
    memset(&state, 0x5A, sizeof state);
    expect(tw_train_resolve(&train, 0, junk, &state) == TW_STATUS_OUT_OF_RANGE, "load");
    memcpy(&closed, &state.closed, sizeof closed);
    expect(closed == 0x5A5A5A5Au, "untouched");
    expect(tw_tire_metric(junk, 265.0, 65.0, 18.0, &tire) == TW_STATUS_OUT_OF_RANGE, "service of a tire");

    bool carries = false;
    tw_power_flow flow;
    expect(tw_train_carries_torque(&state, &carries) == TW_STATUS_OUT_OF_RANGE, "kind of state");
    expect(tw_train_power_flow(&train, &state, &flow) == TW_STATUS_OUT_OF_RANGE, "kind of state");
    tw_judgment judgment;
    tw_budget budget;
    tw_settlement settlement;
    memset(&judgment, 0, sizeof judgment);
    memset(&budget, 0, sizeof budget);
    memcpy(&judgment.verdict, "\2\2\2\2", 4);
    expect(tw_judge_settle(&judgment, &budget, &settlement) == TW_STATUS_OUT_OF_RANGE, "verdict");
    tw_steel_plates plates;
    tw_slip_end slip;
    tw_plate_heat heat;
    memset(&plates, 0, sizeof plates);
    memset(&slip, 0, sizeof slip);
    memcpy(&slip.locks, &junk, 1);
    expect(tw_clutch_plate_heat(&plates, &slip, &heat) == TW_STATUS_OUT_OF_RANGE, "flag of a slip");
}

/* A train that nobody made with tw_train_new: every kind is a byte that the caller could have written. */
static void forged_trains(void) {
    const uint8_t junk = 77;
    tw_train train;
    tw_state state;
    uint32_t mask = 0;
    tw_element element;
    tw_planetary_set set;
    memset(&element, 0, sizeof element);
    memset(&set, 0, sizeof set);
    for (int which = 0; which < 3; which++) {
        expect(tw_train_new(4, 1, 2, 0, &train) == TW_STATUS_OK, "a train");
        memset(&state, 0x5A, sizeof state);
        memcpy(which == 0   ? (void *)&train.sets[TW_MAX_SETS - 1].kind
               : which == 1 ? (void *)&train.elements[0].kind
                            : (void *)&train.elements[TW_MAX_ELEMENTS - 1].blocks,
               &junk, 1);
        expect(tw_train_solve(&train, 0, &state) == TW_STATUS_INCONSISTENT, "forged train");
        expect(tw_train_resolve(&train, 0, TW_LOAD_DRIVE, &state) == TW_STATUS_INCONSISTENT, "forged train");
        expect(tw_train_one_way_mask(&train, &mask) == TW_STATUS_INCONSISTENT, "forged train");
        expect(tw_train_add_set(&set, &train) == TW_STATUS_INCONSISTENT, "forged train");
        expect(tw_train_add_element(&element, &train) == TW_STATUS_INCONSISTENT, "forged train");
        expect(state.closed == 0x5A5A5A5Au && mask == 0, "untouched");
    }
}

static void damaged_images(void) {
    const unsigned char junk[64] = {'T', 'W', 'F', 'I', 2, 0, 64, 0, 0, 0};
    tw_flash_image image = {NULL, 7};
    expect(tw_flash_open(NULL, 64, &image) == TW_STATUS_NULL, "null image");
    for (size_t length = 0; length <= sizeof junk; length++) {
        expect(tw_flash_open(junk, length, &image) < 0, "damaged image");
    }
    expect(image.bytes == NULL && image.length == 7, "untouched");
}

int main(void) {
    versions_and_words();
    null_pointers();
    numbers_that_name_nothing();
    forged_trains();
    damaged_images();
    return faults == 0 ? 0 : 1;
}
