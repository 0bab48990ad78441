/* Reset of the emulated Cortex-M4F: switches the floating-point unit on, then newlib's start-up runs main. */
#include <stdint.h>

extern uint32_t __stack;
extern void _start(void);

void reset(void) {
    *(volatile uint32_t *)0xE000ED88u |= 0xFu << 20; /* CPACR: full access to CP10 and CP11 */
    __asm volatile("dsb\n isb");
    _start();
}

static void fault(void) {
    __asm volatile("bkpt 0");
    for (;;) {
    }
}

static const struct {
    uint32_t *stack;
    void (*handlers[15])(void);
} VECTORS __attribute__((section(".vectors"), used)) = {&__stack, {reset, fault, fault, fault, fault, fault}};
