#!/usr/bin/env bash
# Builds the bare-metal library, proves that no function of the header can panic, and runs the C programs on an emulated
# Cortex-M4F. Ends with the measured figures.
set -euo pipefail
cd "$(dirname "$0")/.."

target=thumbv7em-none-eabihf
out=target/firmware
cpu="-mcpu=cortex-m4 -mthumb -mfloat-abi=hard -mfpu=fpv4-sp-d16"
cflags="-std=c99 -Os -ffunction-sections -Wall -Wextra -Wpedantic -Wconversion -Werror -Iffi/include"
examples="scan_tool bench_tool live_tool"
mkdir -p $out

install_tools() {
    .ci/need gcc-arm-none-eabi libnewlib-arm-none-eabi qemu-system-arm
}

# Prints the path of the library. rustup's target where it can be had, else Debian's compiler and its sources of core.
build_library() {
    local build=(rustc --quiet -p trainwright-ffi --lib --crate-type staticlib --profile firmware --target $target)
    if rustup target list --installed 2>/dev/null | grep -q $target || timeout 300 rustup target add $target >&2; then
        cargo "${build[@]}" >&2
        echo target/$target/firmware/libtrainwright_c.a
    else
        echo "rustup cannot fetch $target: building core from Debian's sources" >&2
        .ci/need rustc-web cargo-web rust-web-src >&2
        RUSTC_BOOTSTRAP=1 RUSTC=/usr/bin/rustc CARGO_TARGET_DIR=target/debian \
            /usr/bin/cargo "${build[@]}" -Zbuild-std=core >&2
        echo target/debian/$target/firmware/libtrainwright_c.a
    fi
}

# Links the whole interface and nothing else: an undefined symbol here is a reachable panic.
link_interface() {
    arm-none-eabi-gcc $cpu -nostdlib -nostartfiles -Wl,--gc-sections -Wl,--entry=0 "${@:3}" -Wl,--start-group "$2" -lgcc \
        -Wl,--end-group -o "$1"
}

functions() { grep -oE '\btw_[a-z0-9_]+\(' ffi/include/trainwright.h | tr -d '(' | sort -u; }

link_program() {
    local name=$1
    shift
    arm-none-eabi-gcc $cpu $cflags --specs=rdimon.specs -Wl,--gc-sections -Wl,-z,noexecstack -Wl,--no-warn-rwx-segments -T ffi/firmware/cortex_m4f.ld \
        ffi/firmware/startup.c "$@" "$library" -lm -o $out/$name.elf
}

# emulate PROGRAM [OPTION OF THE EMULATOR...]
emulate() {
    timeout 300 qemu-system-arm -cpu cortex-m4 -machine mps2-an386 -nographic -monitor none -serial none "${@:2}" \
        -semihosting-config enable=on,target=native -kernel $out/"$1".elf
}

# Bytes of flash of an image.
flash_of() { arm-none-eabi-size "$1" | awk 'END { print $1 }'; }

# Functions in an image that compute in double precision, which this core does in software.
soft_double_of() {
    arm-none-eabi-nm "$1" | awk '$2 ~ /[TtWw]/ && $3 ~ /^(__aeabi_(d|cdcmp|cdrcmp|f2d|u?i2d|u?l2d).*|__[a-z]+df[a-z0-9]*)$/ { print $3 }'
}

count_lines() { grep -c . || true; }

install_tools
library=$(build_library)

panic_paths=0
if ! link_interface $out/interface.elf "$library" $(functions | sed 's/^/-Wl,--undefined=/') 2>$out/link.txt; then
    for function in $(functions); do
        if ! link_interface $out/one.elf "$library" -Wl,--undefined="$function" 2>$out/one.txt; then
            echo "can panic: $function: $(tail -n 2 $out/one.txt | head -n 1)"
            panic_paths=$((panic_paths + 1))
        fi
    done
    if [ $panic_paths -eq 0 ]; then cat $out/link.txt; fi
    echo "panic_paths: $panic_paths"
    exit 1
fi
read -r text data bss _ < <(arm-none-eabi-size $out/interface.elf | tail -n 1)
soft_double=$(soft_double_of $out/interface.elf | count_lines)

# link_live IMAGE FUNCTION...: these functions alone. With the linker of the compiler, where it is at hand: it drops unused
# constants one by one, while GNU ld keeps some 2 KiB of those of other chapters, which lie in one section.
rust_lld=$(find "$(rustc --print sysroot)" -name rust-lld 2>/dev/null | head -n 1)
link_live() {
    local roots=() function
    for function in "${@:2}"; do roots+=("--undefined=$function"); done
    if [ -n "$rust_lld" ]; then
        "$rust_lld" -flavor gnu --gc-sections --entry=0 "${roots[@]}" --start-group "$library" \
            "$(arm-none-eabi-gcc $cpu -print-libgcc-file-name)" --end-group -o "$1"
    else
        link_interface "$1" "$library" "${roots[@]/#/-Wl,}"
    fi
}

# What a sample can reach; what a monitor needs whose plan was made on the host, as in live_tool.c; and the making of the plan.
per_sample="tw_live_start tw_live_push"
asked="tw_live_marked tw_live_event_name tw_live_last_shift tw_live_counts_of tw_live_ratio_of tw_live_suspects_of tw_live_gear_chances"
configured="tw_live_bus tw_live_counted tw_live_edges tw_live_unit_plan"
link_live $out/live_push.elf tw_live_push
link_live $out/live_sample.elf $per_sample
link_live $out/live_monitor.elf $per_sample $asked
link_live $out/live_configured.elf $per_sample $asked $configured
live_soft_double=$(soft_double_of $out/live_push.elf | count_lines)

# The flash images that the host's programs find, and what these print: see there.
tests/c/check.sh
for example in $examples; do link_program $example ffi/examples/$example.c target/c/unit_*.c; done
for program in measure measure_live; do link_program $program ffi/firmware/$program.c target/c/unit_*.c; done
for example in $examples; do
    echo "$example.c on the emulated Cortex-M4F:"
    emulate $example | tee $out/$example.txt
    target/c/$example.c99.static | diff - $out/$example.txt
    echo "the same output on this machine, to the last digit shown"
done
measured=$(emulate measure)
live=$(emulate measure_live -icount shift=0,sleep=off)

echo "flash_bytes: $text"
echo "ram_bytes: $((data + bss))"
echo "$measured"
echo "soft_double_symbols: $soft_double"
echo "panic_paths: $panic_paths"
echo "Live monitor, plan in flash; instructions as the emulator's clock counts them (ffi/firmware/measure_live.c):"
live="live_flash_bytes: $(flash_of $out/live_sample.elf)
live_with_answers_flash_bytes: $(flash_of $out/live_monitor.elf)
live_with_configuration_flash_bytes: $(flash_of $out/live_configured.elf)
$live
live_soft_double_symbols_per_sample: $live_soft_double"
echo "$live"
echo "instructions_per_sample: $(awk '/^live_instructions_per_sample/ { print $2 }' <<<"$live")"

if [ $((data + bss)) -ne 0 ]; then echo "the library keeps something in RAM"; exit 1; fi
broken=0
while read -r name bound; do
    value=$(awk -v name="$name:" '$1 == name { print $2 }' <<<"$measured"$'\n'"$live")
    if ! [ "$value" -le "$bound" ]; then
        echo "$name is ${value:-not measured}, more than $bound"
        broken=1
    fi
done <<'END'
stack_bytes 8192
identify_stack_bytes 8192
live_flash_bytes 12288
live_monitor_bytes 1024
live_monitor_and_plan_bytes 1024
live_stack_bytes 1024
live_configure_stack_bytes 4096
live_instructions_per_sample 1500
live_instructions_worst 6000
live_soft_double_symbols_per_sample 0
END
if [ $broken -ne 0 ]; then
    soft_double_of $out/live_push.elf
    exit 1
fi
