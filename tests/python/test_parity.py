"""Rust, C and Python give the same bits on every row of every vector file."""

from __future__ import annotations

import os
import subprocess
from functools import cache
from pathlib import Path

import pytest
import trainwright
from vectors import FOLDER, ROOT, Surface, bits, surface

OUT = ROOT / "target" / "vectors"
STRICT = "-std=c99 -Wall -Wextra -Wpedantic -Wconversion -Werror -O1".split()
HOST_LIBRARY = ROOT / "target" / "debug" / "libtrainwright_c.a"
SURFACE = {entry.vector: entry for entry in surface()}


def entry(name: str) -> Surface:
    assert name in SURFACE, f"tests/vectors/{name}.csv: no function of this name in tests/surface.csv"
    return SURFACE[name]


def rust_bits(name: str) -> str:
    path = OUT / "rust" / f"{name}.bits"
    assert path.exists(), f"no Rust test runs vectors(\"{name}\"), or `cargo test` was not run before"
    assert path.stat().st_mtime >= (FOLDER / f"{name}.csv").stat().st_mtime, f"{name}.csv is newer: run `cargo test`"
    return path.read_text()


@cache
def run_c(chapter: str) -> None:
    source = ROOT / "tests" / "c" / f"{chapter}.c"
    program = OUT / "c" / chapter
    program.parent.mkdir(parents=True, exist_ok=True)
    for old in program.parent.glob(f"{chapter}_*.bits"):
        old.unlink()
    include = ROOT / "ffi" / "include"
    compiler = os.environ.get("CC", "cc")
    command = [compiler, *STRICT, "-I", include, "-o", program, source, HOST_LIBRARY, "-lm", "-lpthread", "-ldl"]
    subprocess.run(command, check=True)
    subprocess.run([program, FOLDER, program.parent], check=True)


def differing(name: str, language: str, expected: str, got: str) -> str:
    for rust, other in zip(expected.splitlines(), got.splitlines()):
        if rust != other:
            return f"{name}: Rust gives `{rust}`, {language} gives `{other}`"
    return f"{name}: {language} gives {got.count(chr(10))} lines, Rust {expected.count(chr(10))}"


NAMES = sorted(path.stem for path in Path(FOLDER).glob("*.csv"))


def reason_without(name: str, language: str) -> str:
    row = entry(name)
    assert row.reason, f"surface.csv: {name} has no {language} and no reason"
    return f"no {language}: {row.reason}"


@pytest.mark.parametrize("name", NAMES)
def test_c_gives_the_bits_of_rust(name: str) -> None:
    if entry(name).c == "-":
        pytest.skip(reason_without(name, "C"))
    run_c(entry(name).chapter)
    path = OUT / "c" / f"{name}.bits"
    assert path.exists(), f"tests/c/{entry(name).chapter}.c does not run {name}"
    expected, got = rust_bits(name), path.read_text()
    assert got == expected, differing(name, "C", expected, got)


@pytest.mark.parametrize("name", NAMES)
def test_python_gives_the_bits_of_rust(name: str) -> None:
    if entry(name).python == "-":
        pytest.skip(reason_without(name, "Python"))
    expected, got = rust_bits(name), bits(entry(name))
    assert got == expected, differing(name, "Python", expected, got)


def test_every_python_name_of_the_surface_exists() -> None:
    missing = []
    for row in surface():
        value: object = trainwright
        for name in row.python.split(".") if row.python != "-" else []:
            value = getattr(value, name, None)
        if value is None:
            missing.append(f"{row.chapter},{row.core}: trainwright.{row.python}")
    assert not missing, "tests/surface.csv names what Python does not have:\n" + "\n".join(missing)
