/* Measures, on the target, the stack that the gear table of the unit takes, from opening its flash image to the last gear:
 * paints the free stack, solves the table, looks how far the paint is gone. */
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
    return 0;
}
