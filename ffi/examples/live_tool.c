/* A live monitor for one unit. It reads the speeds sample by sample as they come over the bus, and prints every event and every
 * finished shift; at the end what was counted, the ratios as measured, the suspected elements, and what to run next.
 *
 * The same file compiles for a PC and for a microcontroller: C99, C11 or C++17. Nothing is allocated, and RAM is taken for the
 * monitor alone. To use it in a unit of your own, replace `read_sample` by your bus, and `print_*` by your screen. What the
 * linker puts into flash, each made by a program beside this file: `unit_plan`, the unit as the monitor needs it (live_plan.c);
 * `unit_image`, for the names of the elements (flash_image.rs); `unit_trace`, a recorded drive (live_trace.rs). */
#include "trainwright.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

extern const unsigned char unit_image[];
extern const size_t unit_image_bytes;
enum { INPUT, OUTPUT, ENGINE, LINE, SUMP, COMMANDED, LOCKUP, COLUMNS };
extern const uint32_t unit_trace_us[];
extern const uint16_t unit_trace[][COLUMNS];
extern const size_t unit_trace_rows;

extern const tw_live_plan *const unit_plan;

/* Steps of the raw values on this bus. */
static const float INPUT_STEP_RPM = 0.5f, OUTPUT_STEP_RPM = 0.5f, ENGINE_STEP_RPM = 1.0f, LINE_STEP_KPA = 8.0f;

/* Every function returns a status; only a status of 0 or more comes with an answer. */
static void require(tw_status status, const char *what) {
    if (status < 0) {
        printf("%s: %s\n", what, tw_status_text(status));
        exit(1);
    }
}

/* One row of the drive. A value that does not come, or that marks an error, needs no care: `tw_live_marked` says so, and the
 * monitor counts it. */
static void read_sample(size_t row, tw_live_sample *sample) {
    const uint16_t *const raw = unit_trace[row];
    sample->time_us = unit_trace_us[row];
    require(tw_live_marked(raw[INPUT], INPUT_STEP_RPM, &sample->input), "input speed");
    require(tw_live_marked(raw[OUTPUT], OUTPUT_STEP_RPM, &sample->output), "output speed");
    require(tw_live_marked(raw[ENGINE], ENGINE_STEP_RPM, &sample->engine), "engine speed");
    sample->pressure_kpa = (float)raw[LINE] * LINE_STEP_KPA;
    sample->temp_c = (float)raw[SUMP];
    sample->engine_torque_nm = NAN; /* this bus has none: no energy, no plate temperature */
    sample->commanded = (int8_t)raw[COMMANDED];
    sample->lockup = (int8_t)raw[LOCKUP];
}

static double seconds(uint64_t us) { return (double)us * 1e-6; }

/* A gear by its place among those of the unit. */
static const char *gear_name(int8_t gear) {
    static const char *const NAMES[TW_MAX_LIVE_GEARS] = {"1", "2", "3", "4", "5", "6", "7", "8", "R"};
    if (gear == TW_GEAR_STANDS) return "standing";
    if (gear == TW_GEAR_IN_NONE) return "none";
    return gear < 0 || gear >= TW_MAX_LIVE_GEARS ? "-" : NAMES[gear];
}

static void print_elements(uint16_t mask) {
    tw_flash_image image;
    require(tw_flash_open(unit_image, unit_image_bytes, &image), "flash image");
    for (uint8_t element = 0; element < TW_MAX_LIVE_ELEMENTS; element++) {
        tw_text name;
        if ((mask >> element & 1) == 0) continue;
        require(tw_flash_element_name(&image, element, &name), "element name");
        printf(" %.*s", (int)name.length, name.start);
    }
}

static void print_event(const tw_live_event *event) {
    tw_text name;
    require(tw_live_event_name((uint8_t)event->kind, &name), "event");
    printf("%7.2f  %-13.*s gear %s", seconds(event->found_us), (int)name.length, name.start, gear_name(event->gear));
    if (event->other_gear >= 0) printf(" (%s)", gear_name(event->other_gear));
    if (!isnan(event->value)) printf("  %.4g", (double)event->value);
    if (!isnan(event->u)) printf(" +/- %.2g", 2.0 * (double)event->u);
    if (event->at_us != event->found_us) printf("  since %.2f", seconds(event->at_us));
    if (event->suspects != 0) printf("  suspects:");
    print_elements(event->suspects);
    printf("\n");
}

static void print_time(const char *what, float time_s) {
    if (!isnan(time_s)) printf(", %s %.2f s", what, (double)time_s);
}

static void print_shift(const tw_live_shift *shift) {
    printf("         shift %s to %s", gear_name(shift->from), gear_name(shift->to));
    print_time("fill", shift->fill_s);
    print_time("torque", shift->torque_s);
    print_time("inertia", shift->inertia_s);
    print_time("in all", shift->duration_s);
    if (shift->half_us != 0) printf(", half way at %.2f", seconds(shift->half_us));
    printf(", flare %.0f 1/min, dip %.0f 1/min\n", (double)shift->flare_rpm, (double)shift->dip_rpm);
}

static void print_end(const tw_live_plan *plan, const tw_live_monitor *monitor) {
    tw_live_counts counts;
    tw_live_suspects suspects;
    require(tw_live_counts_of(monitor, &counts), "counts");
    printf("\n%u samples, %u used; stale %u, missing %u, not available %u, error %u, reserved %u, impossible %u\n",
           (unsigned)counts.samples, (unsigned)counts.used, (unsigned)counts.stale, (unsigned)counts.missing,
           (unsigned)counts.not_available, (unsigned)counts.sensor_error, (unsigned)counts.reserved,
           (unsigned)counts.impossible);
    printf("%u shifts, %u cold; %u slip alarms\n", (unsigned)(counts.shifts_cold + counts.shifts_warm),
           (unsigned)counts.shifts_cold, (unsigned)counts.alarms);
    for (uint8_t gear = 0; gear < TW_MAX_LIVE_GEARS; gear++) {
        tw_live_ratio ratio;
        require(tw_live_ratio_of(monitor, plan, gear, &ratio), "ratio");
        if (ratio.windows + ratio.slipping == 0) continue;
        printf("gear %s: ratio %.5f +/- %.2g in %u windows, slipping in %u\n", gear_name((int8_t)gear),
               (double)ratio.ratio, 2.0 * (double)ratio.u, (unsigned)ratio.windows, (unsigned)ratio.slipping);
    }
    require(tw_live_suspects_of(monitor, plan, &suspects), "suspects");
    for (uint8_t i = 0; i < suspects.count; i++) {
        printf("suspect:");
        print_elements((uint16_t)(1u << suspects.suspects[i].element));
        printf(", ln odds %.2f\n", (double)suspects.suspects[i].ln_odds);
    }
    if (suspects.next_gear >= 0) printf("to tell them apart, run gear %s\n", gear_name(suspects.next_gear));
}

static tw_live_monitor monitor;

int main(void) {
    tw_live_events events;
    tw_live_state state;
    require(tw_live_start(unit_plan, &monitor), "monitor");
    for (size_t row = 0; row < unit_trace_rows; row++) {
        tw_live_sample sample;
        read_sample(row, &sample);
        require(tw_live_push(&monitor, unit_plan, &sample, &events, &state), "sample");
        for (uint32_t i = 0; i < events.count; i++) {
            print_event(&events.events[i]);
            if (events.events[i].kind == TW_LIVE_EVENT_KIND_SHIFT_DONE) {
                tw_live_shift shift;
                require(tw_live_last_shift(&monitor, unit_plan, &shift), "shift");
                print_shift(&shift);
            }
        }
    }
    print_end(unit_plan, &monitor);
    return 0;
}
