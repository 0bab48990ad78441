"""Runs the rows of tests/vectors/<name>.csv in Python: see "Vectors" in DEVELOPERS.md."""

from __future__ import annotations

import csv
import importlib
import struct
from dataclasses import dataclass
from pathlib import Path

import trainwright

ROOT = Path(__file__).resolve().parents[2]
FOLDER = ROOT / "tests" / "vectors"


@dataclass(frozen=True)
class Surface:
    """One row of tests/surface.csv: what a function is called in each language, `-` where a language has none."""

    chapter: str
    core: str
    c: str
    python: str
    reason: str

    @property
    def vector(self) -> str:
        return f"{self.chapter}_{self.core.split('::')[-1]}"


def surface() -> list[Surface]:
    with (ROOT / "tests" / "surface.csv").open(newline="") as file:
        return [Surface(**row) for row in csv.DictReader(file)]


class Row(dict[str, str]):
    """The input cells of a row by column name."""

    def number(self, column: str) -> float:
        return float(self[column])

    def numbers(self) -> dict[str, float]:
        return {column: float(cell) for column, cell in self.items()}


def read(name: str) -> tuple[list[str], list[Row]]:
    """The output columns of a vector file, and its rows."""
    lines = [line for line in (FOLDER / f"{name}.csv").read_text().splitlines() if line and line[0] != "#"]
    columns = lines[0].split(",")
    inputs = [column for column in columns if column[0] != "=" and column not in ("error", "rel_tol", "source")]
    rows = []
    for line in lines[1:]:
        cells = dict(zip(columns, line.split(",", len(columns) - 1), strict=True))
        rows.append(Row({column: cells[column] for column in inputs}))
    return [column[1:] for column in columns if column[0] == "="], rows


def by_name(python: str, outputs: list[str]):
    """A runner for a function that takes the input columns as they are and returns a float or an object with the outputs."""
    *path, function = python.split(".")
    call = getattr(importlib.import_module(".".join(["trainwright", *path])), function)

    def run(row: Row):
        answer = call(**row.numbers())
        return [answer] if isinstance(answer, float) else [getattr(answer, output) for output in outputs]

    return run


def runner(entry: Surface, outputs: list[str]):
    """tests/python/runners/<chapter>.py holds a function of the vector's name where the columns are not the arguments."""
    if (ROOT / "tests" / "python" / "runners" / f"{entry.chapter}.py").exists():
        own = getattr(importlib.import_module(f"runners.{entry.chapter}"), entry.core.split("::")[-1], None)
        if own is not None:
            return own
    return by_name(entry.python, outputs)


def bits(entry: Surface) -> str:
    """The outputs of every row, as Rust and C write them to target/vectors/<language>/<name>.bits."""
    outputs, rows = read(entry.vector)
    run = runner(entry, outputs)
    text = ""
    for index, row in enumerate(rows):
        try:
            answers = run(row)
        except trainwright.Error as error:
            text += f"{index} error {error.kind}\n"
            continue
        for output, answer in zip(outputs, answers, strict=True):
            text += f"{index} {output} {struct.pack('>d', answer).hex()}\n"
    return text
