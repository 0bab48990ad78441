/* Measures the live monitor on the target over the drive of live_tool.c, with the unit that it configures: memory, stack and
 * instructions per sample.
 *
 * Instructions are counted by the emulator: under `-icount shift=0` its clock runs 1 ns for every instruction that the core
 * executes, and nothing else moves it. SysTick counts that clock at 25 MHz, so one tick is 40 instructions; every sample is
 * therefore pushed 40 times, each time into a copy of the monitor as it was before, and the ticks of these 40 are the
 * instructions of one, within one. What the loop itself takes (call, copy of the monitor) is measured the same way with an
 * empty function, and taken off. A loop of known length is counted first; a wrong count stops the measurement. */
#define main live_tool_main
#include "../examples/live_tool.c"
#undef main
#define main live_plan_main
#include "../examples/live_plan.c"
#undef main

static volatile uint32_t *const SYSTICK = (volatile uint32_t *)0xE000E010u; /* control, reload, value */
enum { INSTRUCTIONS_PER_TICK = 40, TICKS = 0x1000000 };
enum { PAINTED_BYTES = 16 * 1024, OWN_FRAME_BYTES = 128, PAINT = 0xA5 };

static uint32_t ticks_since(uint32_t then) { return (then - SYSTICK[2]) & (TICKS - 1); }

/* Two instructions a round. */
__attribute__((noinline)) static void spin(uint32_t rounds) {
    __asm volatile("1: subs %0, %0, #1\n bne 1b" : "+r"(rounds) : : "cc");
}

static void check_the_counter(void) {
    SYSTICK[1] = TICKS - 1;
    SYSTICK[2] = 0;
    SYSTICK[0] = 5; /* on, from the clock of the core, without interrupt */
    for (uint32_t rounds = 1000; rounds <= 1000000; rounds *= 10) {
        const uint32_t start = SYSTICK[2];
        spin(rounds);
        const uint32_t ticks = ticks_since(start), wanted = 2 * rounds / INSTRUCTIONS_PER_TICK;
        if (ticks < wanted || ticks > wanted + 1) {
            printf("the emulator does not count instructions: %u ticks for %u rounds\n", (unsigned)ticks, (unsigned)rounds);
            exit(1);
        }
    }
}

typedef tw_status push(tw_live_monitor *, const tw_live_plan *, const tw_live_sample *, tw_live_events *, tw_live_state *);

__attribute__((noinline)) static tw_status push_nothing(tw_live_monitor *into, const tw_live_plan *of,
                                                        const tw_live_sample *sample, tw_live_events *events,
                                                        tw_live_state *state) {
    (void)into, (void)of, (void)sample, (void)events, (void)state;
    __asm volatile("");
    return TW_STATUS_OK;
}

/* Ticks of as many pushes as a tick has instructions. */
__attribute__((noinline)) static uint32_t ticks_of(push *measured, const tw_live_sample *sample) {
    static tw_live_monitor copy;
    static tw_live_events events;
    static tw_live_state state;
    const uint32_t start = SYSTICK[2];
    for (int i = 0; i < INSTRUCTIONS_PER_TICK; i++) {
        memcpy(&copy, &monitor, sizeof copy);
        measured(&copy, unit_plan, sample, &events, &state);
    }
    return ticks_since(start);
}

static void count_instructions(void) {
    static tw_live_events events;
    static tw_live_state state;
    uint64_t sum = 0;
    uint32_t worst = 0;
    size_t worst_row = 0;
    for (size_t row = 0; row < unit_trace_rows; row++) {
        tw_live_sample sample;
        read_sample(row, &sample);
        const uint32_t loop = ticks_of(push_nothing, &sample), instructions = ticks_of(tw_live_push, &sample) - loop;
        sum += instructions;
        if (instructions > worst) {
            worst = instructions;
            worst_row = row;
        }
        require(tw_live_push(&monitor, unit_plan, &sample, &events, &state), "sample");
    }
    printf("live_instructions_per_sample: %u\n", (unsigned)((sum + unit_trace_rows / 2) / unit_trace_rows));
    printf("live_instructions_worst: %u\n", (unsigned)worst);
    fprintf(stderr, "the worst sample is that at %.2f s\n", seconds(unit_trace_us[worst_row]));
}

/* The plan as it is made on the target must be that of the PC, bit for bit. */
static tw_live_plan plan_made_here;
static void make_plan_here(void) { make_plan(&plan_made_here); }

static void push_the_drive(void) {
    static tw_live_sample sample;
    static tw_live_events events;
    static tw_live_state state;
    for (size_t row = 0; row < unit_trace_rows; row++) {
        read_sample(row, &sample);
        if (tw_live_push(&monitor, unit_plan, &sample, &events, &state) < 0) exit(1);
    }
}

static void ask_everything(void) {
    static float chances[TW_MAX_LIVE_GEARS + 1];
    static tw_live_suspects suspects;
    static tw_live_shift shift;
    static tw_live_counts counts;
    static tw_live_ratio ratio;
    require(tw_live_gear_chances(&monitor, unit_plan, chances), "chances");
    require(tw_live_suspects_of(&monitor, unit_plan, &suspects), "suspects");
    require(tw_live_last_shift(&monitor, unit_plan, &shift), "shift");
    require(tw_live_counts_of(&monitor, &counts), "counts");
    require(tw_live_ratio_of(&monitor, unit_plan, 3, &ratio), "ratio");
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
    check_the_counter();
    printf("live_configure_stack_bytes: %u\n", stack_bytes(make_plan_here));
    if (memcmp(&plan_made_here, unit_plan, sizeof plan_made_here) != 0) {
        printf("the plan made here is not that of the PC\n");
        return 1;
    }
    require(tw_live_start(unit_plan, &monitor), "monitor");
    printf("live_stack_bytes: %u\n", stack_bytes(push_the_drive));
    printf("live_ask_stack_bytes: %u\n", stack_bytes(ask_everything));
    printf("live_monitor_bytes: %u\n", (unsigned)sizeof monitor);
    printf("live_monitor_and_plan_bytes: %u\n", (unsigned)(sizeof monitor + sizeof plan_made_here));
    require(tw_live_start(unit_plan, &monitor), "monitor");
    count_instructions();
    return 0;
}
