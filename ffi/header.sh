#!/bin/sh
# header.sh CBINDGEN OUTPUT: writes the C header.
# cbindgen keeps the Rust spelling of type names (tw_ShiftPoint); a first pass lists them, a second writes tw_shift_point.
set -eu
cbindgen=$1 output=$2
folder=$(dirname "$0")
config=$(mktemp)
trap 'rm -f "$config" "$config.h"' EXIT
generate() { "$cbindgen" --quiet --config "$1" --crate trainwright-ffi --output "$2" "$folder"; }

generate "$folder/cbindgen.toml" "$config.h"
{
    cat "$folder/cbindgen.toml"
    echo '[export.rename]'
    grep -oE '\btw_[A-Z][a-z][A-Za-z0-9]*' "$config.h" | sort -u |
        sed -E 's/^tw_(.*)$/"\1" = "tw_\1"/; :again; s/( = "tw_.*[a-z0-9])([A-Z])/\1_\l\2/; t again; s/( = "tw_)([A-Z])/\1\l\2/'
    grep -oE '\btw_[A-Z][A-Z0-9_]+\b' "$config.h" | sort -u | sed -E 's/^tw_(.*)$/"\1" = "TW_\1"/'
} >"$config"
generate "$config" "$output"
