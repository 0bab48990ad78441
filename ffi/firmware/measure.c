/* Measures the stack of library calls on the target: paints the free stack, makes the call, looks how far the paint is gone. */
#include "trainwright.h"
#include <stdint.h>
#include <stdio.h>

enum { PAINTED_BYTES = 64 * 1024, PAINT = 0xA5 };

static void call(void) {
    const tw_reading reading = {-5.47, 0.05};
    const tw_limits limits = {-6.0, -5.40};
    double chance = 0.0;
    if (tw_judge_chance_inside(&reading, &limits, &chance) != TW_STATUS_OK) printf("failed\n");
}

__attribute__((noinline)) static size_t stack_bytes(void (*measured)(void)) {
    uint8_t *const here = __builtin_frame_address(0);
    volatile uint8_t *const bottom = here - PAINTED_BYTES;
    const size_t margin = 128; /* the frame of this function itself */
    for (size_t i = 0; i < PAINTED_BYTES - margin; i++) bottom[i] = PAINT;
    measured();
    size_t untouched = 0;
    while (untouched < PAINTED_BYTES - margin && bottom[untouched] == PAINT) untouched++;
    return PAINTED_BYTES - margin - untouched;
}

int main(void) {
    printf("stack_bytes: %u\n", (unsigned)stack_bytes(call));
    return 0;
}
