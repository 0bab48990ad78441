#!/bin/sh -eu
# Writes python/trainwright/_native/*.pyi anew from the compiled signatures and docstrings.
cd "$(dirname "$0")/.."
root=$(pwd)
VIRTUAL_ENV=$root/.venv "$root/.venv/bin/maturin" generate-stubs --quiet -m python/Cargo.toml --features stubs \
    --target-dir "$root/target/stubs" --out "$root/target/stubs/out"
rm -rf python/trainwright/_native
cp -r target/stubs/out/trainwright/_native python/trainwright/
