#!/usr/bin/env bash
# Compiles the C examples under C99, C11 and C++17 with all warnings as errors, against the static and the
# shared library, and runs them.
set -euo pipefail
cd "$(dirname "$0")/../.."

out=target/c
strict="-Wall -Wextra -Wpedantic -Wconversion -Werror -Iffi/include"
{ command -v cc && command -v c++; } >/dev/null || .ci/need gcc g++
mkdir -p $out
cargo build --quiet -p trainwright-ffi

# What an example finds in flash: the image of a unit, a drive, and the unit's plan, which live_plan makes from the image.
cargo run --quiet --example flash_image -- python/trainwright/demo T16 alder $out/unit_image.c
cargo run --quiet --example live_trace -- python/trainwright/demo/trace/trace.csv $out/unit_trace.c

# compile PROGRAM SOURCE COMPILER...
compile() {
    "${@:3}" $strict "$2" $flash -x none -o "$out/$1.static" target/debug/libtrainwright_c.a -lpthread -ldl -lm
    "${@:3}" $strict "$2" $flash -x none -o "$out/$1.shared" -Ltarget/debug -ltrainwright_c -Wl,-rpath,"$PWD/target/debug"
}

# compile_all SOURCE: in every language.
compile_all() {
    local name
    name=$(basename "$1" .c)
    compile "$name.cpp" "$1" c++ -std=c++17 -x c++
    compile "$name.c11" "$1" cc -std=c11
    compile "$name.c99" "$1" cc -std=c99
}

# same_output EXAMPLE: from every language and library.
same_output() {
    for program in "$out/$1".*.{static,shared}; do
        "$program" | diff - <("$out/$1.c99.static")
    done
}

flash=$out/unit_image.c
for source in ffi/examples/{scan_tool,bench_tool,live_plan}.c tests/c/interface.c tests/c/texts.c; do compile_all "$source"; done
for program in "$out"/{interface,texts}.*.{static,shared}; do "$program"; done
for example in scan_tool bench_tool live_plan; do same_output $example; done
$out/live_plan.c99.static >$out/unit_plan.c

flash="$out/unit_image.c $out/unit_plan.c $out/unit_trace.c"
compile_all ffi/examples/live_tool.c
same_output live_tool
