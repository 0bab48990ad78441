#!/bin/sh
# header.sh CBINDGEN OUTPUT: writes the C header.
# cbindgen keeps the Rust spelling of names. A first pass lists them, a second gives each its C spelling (tw_shift_point,
# TW_MAX_SETS), and what it cannot rename or say in C is put right at the end.
set -eu
cbindgen=$1 output=$2
folder=$(dirname "$0")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
generate() { "$cbindgen" --quiet --config "$1" --crate trainwright-ffi --output "$2" "$folder"; }

generate "$folder/cbindgen.toml" "$work/rust_names.h"
grep -oE '\btw_[A-Z][a-z][A-Za-z0-9]*' "$work/rust_names.h" | sort -u | sed 's/^tw_//' >"$work/types"
sed -E 's/^(.*)$/\1 tw_\1/; :next; s/( .*[a-z0-9])([A-Z])/\1_\l\2/; t next; s/ tw_([A-Z])/ tw_\l\1/' "$work/types" >"$work/names"
grep -oE '\btw_[A-Z][A-Z0-9_]+\b' "$work/rust_names.h" | sort -u | sed 's/^tw_//' | while read -r constant; do
    if grep -q "^pub const $constant:" "$folder/../core/practice.rs"; then
        echo "$constant TW_PRACTICE_$constant"
    else
        echo "$constant TW_$constant"
    fi
done >>"$work/names"
{
    cat "$folder/cbindgen.toml"
    echo '[export.rename]'
    sed -E 's/^(.*) (.*)$/"\1" = "\2"/' "$work/names"
} >"$work/cbindgen.toml"
generate "$work/cbindgen.toml" "$work/trainwright.h"

# Constants that are structs or lists have no C++ spelling: left out. Constants of a type: TW_RULE_KIND_CONFORMANCE.
# Links of the Rust documentation become C names.
{
    sed -E 's/^(.*) (.*)$/s~\\[`\1`\\](\\([^)]*\\))?~`\2`~g/' "$work/names"
    sed -E 's/^(.*) (.*)$/s~\\[`\1::([a-z_0-9]+)`\\](\\([^)]*\\))?~`\2_\\1`~g/' "$work/names"
    cat <<'END'
s/\[`([A-Z][A-Za-z]*)::([A-Z][A-Za-z]*)`\]/`TW_<\1_\2>`/g
:word
s/(TW_<[^>]*[a-z0-9])([A-Z])/\1_\2/
t word
s/TW_<([^>]*)>/TW_\U\1\E/g
s/\[`([a-z_0-9]+)`\]/`\1`/g
END
    printf '%s\n' 's/\btw_([a-z][a-z0-9_]*)_([A-Z][A-Z0-9_]*)\b/TW_\U\1\E_\2/g'
} >"$work/spelling.sed"
awk '
    /^\/\/\//                              { documentation = documentation $0 "\n"; next }
    /^#define tw_[a-z0-9_]+_[A-Z_]+ [({]/  { documentation = ""; next }
                                           { printf "%s%s\n", documentation, $0; documentation = "" }
' "$work/trainwright.h" | sed -E -f "$work/spelling.sed" | cat -s >"$output"
