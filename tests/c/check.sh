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
cargo run --quiet --example flash_image -- python/trainwright/demo T16 alder $out/unit_image.c
cargo run --quiet --example live_trace -- python/trainwright/demo/trace/trace.csv $out/unit_trace.c
flash="$out/unit_image.c $out/unit_trace.c"

# compile PROGRAM SOURCE COMPILER...
compile() {
    "${@:3}" $strict "$2" $flash -x none -o "$out/$1.static" target/debug/libtrainwright_c.a -lpthread -ldl -lm
    "${@:3}" $strict "$2" $flash -x none -o "$out/$1.shared" -Ltarget/debug -ltrainwright_c -Wl,-rpath,"$PWD/target/debug"
}

for source in ffi/examples/*.c tests/c/interface.c tests/c/texts.c; do
    name=$(basename "$source" .c)
    compile "$name.cpp" "$source" c++ -std=c++17 -x c++
    compile "$name.c11" "$source" cc -std=c11
    compile "$name.c99" "$source" cc -std=c99
done
for program in "$out"/{interface,texts}.*.{static,shared}; do "$program"; done
for example in scan_tool bench_tool live_tool; do
    for program in "$out/$example".*.{static,shared}; do
        "$program" | diff - <("$out/$example.c99.static")
    done
done
