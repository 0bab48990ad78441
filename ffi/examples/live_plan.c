/* Makes the plan of a unit for the live monitor and writes it to the standard output as a C array. It runs on a PC when the
 * firmware is built; the plan then lies in flash, and is shared by every monitor of such a unit.
 *
 * A control that learns sensors or limits only in the vehicle calls the same functions on the microcontroller, and keeps the
 * plan in RAM. `unit_image` is the image of the unit, written from the exact gear train (see flash_image.rs beside this
 * file), so that no train is solved here. */
#include "trainwright.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

extern const unsigned char unit_image[];
extern const size_t unit_image_bytes;

/* The sensors of this unit: steps as the bus has them, noise as it was measured at steady speed. */
static const float INPUT_BUS_RPM = 0.5f, INPUT_NOISE_RPM = 0.9f;
static const float OUTPUT_BUS_RPM = 0.5f, OUTPUT_NOISE_RPM = 0.7f;
static const float ENGINE_BUS_RPM = 1.0f, ENGINE_NOISE_RPM = 4.0f;
static const float AGE_LIMIT_S = 0.035f; /* more than three samples alike are an old value */
static const float GREATEST_RPM = 8000.0f;
static const float SAMPLE_S = 0.01f;

static void need(tw_status status, const char *what) {
    if (status < 0) {
        fprintf(stderr, "%s: %s\n", what, tw_status_text(status));
        exit(1);
    }
}

/* What counts as slip, flare, standing. There are no defaults: these are decisions. */
static void choose_limits(tw_live_limits *limits) {
    limits->standing_rpm = (float)TW_PRACTICE_STANDING_OUTPUT_RPM;
    limits->slip_rpm = 1.0f;
    limits->run_length_s = (float)(TW_PRACTICE_FALSE_ALARM_RUN_H * 3600.0); /* average time in gear to a false alarm */
    limits->skew_s = 0.0f;                                                  /* both speeds in one message */
    limits->ratio_u_rel = 0.0001f;
    limits->settle_s = (float)TW_PRACTICE_SHIFT_SETTLE_S;
    limits->follow_s = (float)TW_PRACTICE_SHIFT_FOLLOW_S;
    limits->flare_rpm = (float)TW_PRACTICE_FLARE_LOW_RPM;
    limits->dip_share = (float)TW_PRACTICE_TIE_UP_DIP_SHARE;
    limits->lockup_slip_rpm = (float)TW_PRACTICE_LOCKUP_SLIP_NORMAL_RPM;
    limits->cold_c = (float)TW_PRACTICE_SHIFT_COLD_C;
    limits->hot_c = (float)TW_PRACTICE_SUMP_ALARM_LOW_C;
    limits->warm_up_s = (float)TW_PRACTICE_WARM_UP_S;
}

static void make_plan(tw_live_plan *plan) {
    tw_flash_image image;
    tw_live_unit unit;
    memset(&unit, 0, sizeof unit);
    need(tw_flash_open(unit_image, unit_image_bytes, &image), "flash image");
    need(tw_flash_live_gears(&image, unit.gears, &unit.gear_count), "gears");
    need(tw_flash_live_elements(&image, unit.elements, &unit.element_count), "elements");
    need(tw_live_bus(INPUT_BUS_RPM, INPUT_NOISE_RPM, AGE_LIMIT_S, GREATEST_RPM, &unit.input), "input sensor");
    need(tw_live_bus(OUTPUT_BUS_RPM, OUTPUT_NOISE_RPM, AGE_LIMIT_S, GREATEST_RPM, &unit.output), "output sensor");
    need(tw_live_bus(ENGINE_BUS_RPM, ENGINE_NOISE_RPM, AGE_LIMIT_S, GREATEST_RPM, &unit.engine), "engine sensor");
    choose_limits(&unit.limits);
    unit.sample_s = SAMPLE_S;
    memset(plan, 0, sizeof *plan);
    need(tw_live_unit_plan(&unit, plan), "unit");
}

int main(void) {
    enum { WORDS = sizeof(tw_live_plan) / sizeof(uint32_t) };
    static tw_live_plan plan;
    uint32_t words[WORDS];
    make_plan(&plan);
    memcpy(words, &plan, sizeof words);
    printf("#include \"trainwright.h\"\n");
    printf("/* %u words, in the byte order of the microcontroller, which must be that of this PC. */\n", (unsigned)WORDS);
    printf("typedef char the_plan_has_its_size[sizeof(tw_live_plan) == %u ? 1 : -1];\n", (unsigned)sizeof plan);
    printf("static const uint32_t words[] = {");
    for (int i = 0; i < (int)WORDS; i++) printf("%s0x%08lx,", i % 8 == 0 ? "\n    " : " ", (unsigned long)words[i]);
    printf("\n};\nextern const tw_live_plan *const unit_plan;\n");
    printf("const tw_live_plan *const unit_plan = (const tw_live_plan *)words;\n");
    return 0;
}
