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
    const unsigned char junk[64] = {'T', 'W', 'F', 'I', 3, 0, 64, 0, 0, 0};
    tw_flash_image image = {NULL, 7};
    expect(tw_flash_open(NULL, 64, &image) == TW_STATUS_NULL, "null image");
    for (size_t length = 0; length <= sizeof junk; length++) {
        expect(tw_flash_open(junk, length, &image) < 0, "damaged image");
    }
    expect(image.bytes == NULL && image.length == 7, "untouched");
}

/* A family, its crossings and a job in which one number names nothing. */
static void junk_in_families(void) {
    const uint8_t junk = 77;
    tw_joint joint = {TW_JOINT_KIND_RUNNING, 0, 1, 0.12};
    const tw_sides sizes[2] = {{{9.95, 9.97}, {10.00, 10.02}}, {{10.95, 10.97}, {11.00, 11.02}}};
    tw_part_family family;
    memset(&family, 0, sizeof family);
    family.parts = 2;
    family.variants = 2;
    family.joints = &joint;
    family.joint_count = 1;
    family.sizes = sizes;
    tw_crossing crossing;
    tw_matched_set set;
    tw_meeting meeting;
    expect(tw_interchange_check(&family) == TW_STATUS_OK, "a family");
    expect(tw_interchange_crossings(&family, 0, 1, 1, &crossing) == TW_STATUS_OK, "its crossings");
    expect(crossing.first.outcome == TW_JOINT_OUTCOME_LOOSE, "an early shaft in a late bore");
    expect(tw_interchange_close_set(&family, &crossing, 1, 0, &set) == TW_STATUS_OK && set.size == 2, "its set");
    const uint8_t found[2] = {0, 0}, wanted[2] = {TW_AS_FOUND, TW_AS_FOUND};
    tw_order_job job;
    memset(&job, 0, sizeof job);
    job.found = found;
    job.wanted = wanted;
    job.aim = 9;
    tw_order order;
    tw_joint_state state;
    uint8_t parts[2];
    expect(tw_interchange_order(&family, &job, parts, 2, &state, 1, &order) == TW_STATUS_OUT_OF_RANGE, "aim");
    memcpy(&crossing.second.outcome, &junk, 1);
    expect(tw_interchange_close_set(&family, &crossing, 1, 0, &set) == TW_STATUS_OUT_OF_RANGE, "outcome of a crossing");
    memcpy(&joint.kind, &junk, 1);
    expect(tw_interchange_check(&family) == TW_STATUS_OUT_OF_RANGE, "kind of joint");
    expect(tw_interchange_meet(&joint, &sizes[0], &sizes[1], &meeting) == TW_STATUS_OUT_OF_RANGE, "kind of joint");
    joint.kind = TW_JOINT_KIND_RUNNING;
    family.parts = 1000;
    family.variants = 200;
    expect(tw_interchange_close_set(&family, &crossing, 0, 0, &set) < 0, "more parts than fit");
}

/* A sample, a sensor and an event in which a number names nothing. */
static void junk_in_samples(void) {
    const uint8_t junk = 77;
    tw_live_unit unit;
    tw_live_plan plan;
    tw_live_monitor monitor;
    tw_live_sample sample;
    tw_live_events events;
    tw_live_state state;
    tw_speed_spread spread;
    tw_text name;
    memset(&unit, 0, sizeof unit);
    memset(&plan, 0, sizeof plan);
    memset(&monitor, 0, sizeof monitor);
    memset(&sample, 0, sizeof sample);
    memset(&events, 0x5A, sizeof events);
    memcpy(&unit.output.source, &junk, 1);
    expect(tw_live_unit_plan(&unit, &plan) == TW_STATUS_OUT_OF_RANGE, "source of a sensor");
    expect(tw_live_spread(&unit.output, &spread) == TW_STATUS_OUT_OF_RANGE, "source of a sensor");
    memcpy(&sample.engine.state, &junk, 1);
    expect(tw_live_push(&monitor, &plan, &sample, &events, &state) == TW_STATUS_OUT_OF_RANGE, "state of a reading");
    expect(events.count == 0x5A5A5A5Au, "untouched");
    expect(tw_live_event_name(junk, &name) == TW_STATUS_OUT_OF_RANGE, "kind of event");
}

int main(void) {
    junk_in_samples();
    versions_and_words();
    null_pointers();
    numbers_that_name_nothing();
    junk_in_families();
    forged_trains();
    damaged_images();
    return faults == 0 ? 0 : 1;
}
