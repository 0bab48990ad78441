#!/usr/bin/env bash
# Compiles the C examples under C99, C11 and C++17 with all warnings as errors, against the static and the
# shared library, and runs them.
set -euo pipefail
cd "$(dirname "$0")/../.."

out=target/c
strict="-Wall -Wextra -Wpedantic -Wconversion -Werror -Iffi/include"
shopt -s nullglob
mkdir -p $out
cargo build --quiet -p trainwright-ffi

# compile PROGRAM SOURCE COMPILER... with the libraries last
compile() {
    "${@:3}" $strict "$2" -x none -o "$out/$1.static" target/debug/libtrainwright_c.a -lpthread -ldl -lm
    "${@:3}" $strict "$2" -x none -o "$out/$1.shared" -Ltarget/debug -ltrainwright_c -Wl,-rpath,"$PWD/target/debug"
}

for source in ffi/examples/*.c tests/c/version.c; do
    name=$(basename "$source" .c)
    compile "$name.cpp" "$source" c++ -std=c++17 -x c++
    compile "$name.c11" "$source" cc -std=c11
    compile "$name.c99" "$source" cc -std=c99
done
for kind in static shared; do "$out/version.c99.$kind"; done
