/* Measures, on the target, the stack that two jobs take, each from opening the flash image of the unit to its answer: the gear
 * table, and the identification of a unit with the fit of two measured parts. Paints the free stack, does the job, looks how
 * far the paint is gone. */
#include "trainwright.h"
#include <stdio.h>
#include <stdlib.h>

extern const unsigned char unit_image[];
extern const size_t unit_image_bytes;

enum { PAINTED_BYTES = 64 * 1024, OWN_FRAME_BYTES = 128, PAINT = 0xA5 };

static void solve_gear_table(void) {
    tw_flash_image image;
    tw_train train;
    tw_state state;
    uint8_t gears = 0;
    tw_status status = tw_flash_open(unit_image, unit_image_bytes, &image);
    if (status >= 0) status = tw_flash_train(&image, &train);
    if (status >= 0) status = tw_flash_gear_count(&image, &gears);
    for (uint8_t i = 0; i < gears && status >= 0; i++) {
        tw_gear gear;
        status = tw_flash_gear(&image, i, &gear);
        if (status >= 0) status = tw_train_resolve(&train, gear.closed, TW_LOAD_DRIVE, &state);
    }
    if (status < 0 || gears == 0) {
        printf("gear table: %s\n", tw_status_text(status));
        exit(1);
    }
}

/* One mark, one size and one fit: what is looked at changes nothing about the stack. */
static tw_status identify(void) {
    enum { VARIANTS = 4, PARTS = 24 };
    static const tw_reading size = {43.988, 0.0016}, bore = {44.407, 0.0042};
    double prior[VARIANTS], exchanged[PARTS], ln_likelihood[PARTS * VARIANTS] = {0.0}, chance[VARIANTS];
    tw_limits limits[VARIANTS];
    tw_variant_finding variants[VARIANTS];
    tw_origin origins[VARIANTS];
    tw_flash_image image;
    tw_family_counts family;
    tw_part_mark mark;
    tw_part_size measured;
    tw_part_fit fit;
    tw_nearest nearest;
    tw_weighed weighed;
    tw_part_finding finding;
    tw_conclusion conclusion;
    tw_worth worth;
    tw_measured_clearance clearance;
    tw_evidence evidence = {prior, exchanged, ln_likelihood, 0, 0, 0};
    tw_standing standing = {variants, origins, 0, {0.95, 0.05, 0.0, 3}};
    tw_status status = tw_flash_open(unit_image, unit_image_bytes, &image);
    if (status >= 0) status = tw_flash_family(&image, &family);
    if (status < 0 || family.variants > VARIANTS || family.parts > PARTS) return TW_STATUS_COUNT;
    evidence.variants = standing.count = family.variants;
    evidence.parts = family.parts;
    for (uint8_t i = 0; i < family.variants && status >= 0; i++) status = tw_flash_prior(&image, i, &prior[i]);
    for (uint8_t i = 0; i < family.parts && status >= 0; i++) status = tw_flash_exchanged(&image, i, &exchanged[i]);
    for (uint8_t i = 0; i < family.variants && status >= 0; i++) status = tw_flash_mark_chance(&image, 0, i, &chance[i]);
    for (uint8_t i = 0; i < family.variants && status >= 0; i++) status = tw_flash_size_limits(&image, 1, i, &limits[i]);
    if (status >= 0) status = tw_flash_mark(&image, 0, &mark);
    if (status >= 0) status = tw_flash_size(&image, 1, &measured);
    if (status >= 0) {
        double *const row = &ln_likelihood[measured.part * family.variants];
        status = tw_identify_add_seen(chance, family.variants, true, &ln_likelihood[mark.part * family.variants]);
        if (status >= 0) status = tw_identify_add_measured(limits, family.variants, &size, row, &nearest);
    }
    if (status >= 0) status = tw_identify_weigh(&evidence, variants, &weighed);
    if (status >= 0) status = tw_identify_part(&evidence, variants, measured.part, origins, &finding);
    if (status >= 0) status = tw_identify_conclude(&weighed, &finding, 1, &standing.rule, &conclusion);
    if (status >= 0) status = tw_identify_mark_worth(&standing, chance, mark.minutes, &worth);
    if (status >= 0) status = tw_identify_size_worth(&standing, limits, measured.u_mm, measured.minutes, &worth);
    if (status >= 0) status = tw_flash_fit(&image, 0, &fit);
    if (status >= 0) status = tw_fit_measured(&size, &bore, &fit.wanted_mm, &standing.rule, &clearance);
    return status;
}

static void identify_a_unit(void) {
    const tw_status status = identify();
    if (status < 0) {
        printf("identification: %s\n", tw_status_text(status));
        exit(1);
    }
}

__attribute__((noinline)) static unsigned stack_bytes(void (*measured)(void)) {
    uint8_t *const here = __builtin_frame_address(0);
    volatile uint8_t *const bottom = here - PAINTED_BYTES;
    unsigned untouched = 0;
    for (unsigned i = 0; i < PAINTED_BYTES - OWN_FRAME_BYTES; i++) bottom[i] = PAINT;
    measured();
    while (untouched < PAINTED_BYTES - OWN_FRAME_BYTES && bottom[untouched] == PAINT) untouched++;
    return PAINTED_BYTES - OWN_FRAME_BYTES - untouched;
}

int main(void) {
    printf("stack_bytes: %u\n", stack_bytes(solve_gear_table));
    printf("identify_stack_bytes: %u\n", stack_bytes(identify_a_unit));
    return 0;
}
