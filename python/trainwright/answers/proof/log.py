"""The log of a proof run: a CSV, Parquet or Arrow file of a dyno or road logger, or a table, with the columns under our names."""

from __future__ import annotations

import csv
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from os import PathLike, fspath
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from ...error import refusal
from ...fleet.read import SHOP, arrow

Numbers = NDArray[np.float64]

SPELLINGS: dict[str, tuple[str, ...]] = {
    "time_s": ("t_s",),
    "input_rpm": ("n_input_rpm", "turbine_rpm"),
    "output_rpm": ("n_output_rpm",),
    "engine_rpm": ("n_engine_rpm",),
    "pressure_kpa": ("line_kpa", "line_pressure_kpa"),
    "temp_c": ("sump_c", "fluid_c", "oil_c"),
    "turbine_torque_nm": ("input_torque_nm",),
    "engine_torque_nm": (),
    "commanded_gear": ("gear_commanded", "gear"),
    "lockup": ("lockup_on",),
}
"""The columns of a log, and the names under which each is known without being told. The ending is the unit."""

MUST = ("time_s", "input_rpm", "output_rpm")
NO_VALUE = ("", "-", "na", "n/a", "nan", "null", "none")
"""Cells that hold no value."""

HEAD_LINES = 60
"""Lines above the names of the columns that a logger may write."""

NOT_KNOWN = -128
"""Number of a commanded gear that is not known."""

STILL_SHARE = 0.02
"""Values that differ from the step of their column, at most: our own choice; above it the column has no step."""


@dataclass(frozen=True)
class Log:
    """A log: every column that it has under our names, its own names, and what was done to read it."""

    name: str
    columns: dict[str, Numbers]
    """All but the commanded gear; what is missing is NaN."""
    theirs: dict[str, str]
    commanded: NDArray[np.int16] | None
    """Number of the commanded gear: forward from 1, reverse -1, 0 neutral or park, ``NOT_KNOWN``."""
    remarks: tuple[str, ...] = ()

    def __contains__(self, column: str) -> bool:
        return column in self.columns or (column == "commanded_gear" and self.commanded is not None)

    @property
    def time_s(self) -> Numbers:
        """Time of every row."""
        return self.columns["time_s"]

    @property
    def missing(self) -> list[str]:
        """The columns that it does not have."""
        return [column for column in SPELLINGS if column not in self]

    @property
    def sample_s(self) -> float:
        """The usual time between two rows."""
        return float(np.median(np.diff(self.time_s)))

    @property
    def torque_nm(self) -> Numbers:
        """Torque at the input of the gear train where it is known: measured there, or the engine's while the lock-up clutch is on."""
        if "turbine_torque_nm" in self.columns:
            return self.columns["turbine_torque_nm"]
        nowhere = np.full(len(self.time_s), np.nan)
        if "engine_torque_nm" not in self.columns or "lockup" not in self.columns:
            return nowhere
        return np.where(self.columns["lockup"] == 1.0, self.columns["engine_torque_nm"], nowhere)


def read_log(source: Any, *, columns: Mapping[str, str] | None = None, gears: Mapping[str, int]) -> Log:
    """The log in a file (.csv, .txt, .parquet, .arrow, .feather), in an Arrow table or frame, or in arrays by name.

    ``columns`` gives ours to theirs where names differ, ``gears`` the number of each gear by its name in the record.
    """
    given = dict(columns or {})
    for ours in given:
        if ours not in SPELLINGS:
            raise refusal("columns", f"{ours!r} is no column of a log; give {', '.join(SPELLINGS)}", "TEXT")
    name, table, remarks = _table(source, given)
    found = _found(list(table), given, name)
    values: dict[str, Numbers] = {}
    commanded = None
    for ours, theirs in found.items():
        if ours == "commanded_gear":
            commanded, words = _gear_numbers(table[theirs], gears)
            if words:
                remarks.append(f"{theirs} holds {', '.join(words)}, which names no single gear: taken as not known")
        elif ours == "lockup":
            values[ours] = _on_or_off(table[theirs], theirs)
        else:
            values[ours] = _numbers(table[theirs], ours, theirs)
    lengths = {found[ours]: len(column) for ours, column in values.items()}
    if len(set(lengths.values())) > 1:
        raise refusal("log", f"the columns of {name} differ in length: {', '.join(f'{column} {length}' for column, length in lengths.items())}", "COUNT")
    timed = np.isfinite(values["time_s"])
    if int(timed.sum()) < 2:
        raise refusal("log", f"{name} has {int(timed.sum())} rows with a time; a run needs some minutes of them", "COUNT")
    if not timed.all():
        remarks.append(f"{int((~timed).sum())} rows without a time are left out")
        values = {ours: column[timed] for ours, column in values.items()}
        commanded = None if commanded is None else commanded[timed]
    if not np.any(np.diff(values["time_s"]) > 0):
        raise refusal("time_s", f"{found['time_s']} of {name} never rises; name the column that is the time: --column time_s=...", "OUT_OF_RANGE")
    return Log(name, values, found, commanded, tuple(remarks))


# ---- names


def _endings(ours: str) -> list[tuple[str, Callable[[Any], Any] | None]]:
    """Ours and its shop units: the name, and the way to our unit."""
    for ending, shop in SHOP.items():
        if ours.endswith(ending):
            return [(ours, None), *((ours[: -len(ending)] + other, convert) for other, convert in shop.items())]
    return [(ours, None)]


def _known(ours: str) -> dict[str, Callable[[Any], Any] | None]:
    """Every name under which a column is known, with the way to our unit."""
    return {spelled: convert for name in (ours, *SPELLINGS[ours]) for spelled, convert in _endings(name)}


def _conversion(ours: str, theirs: str) -> Callable[[Any], Any] | None:
    """The way from the unit in the ending of their name, which may be any name, to ours."""
    for ending, shop in SHOP.items():
        if ours.endswith(ending) and not theirs.endswith(ending):
            return next((convert for other, convert in shop.items() if theirs.endswith(other)), None)
    return None


def _found(names: Sequence[str], given: Mapping[str, str], where: str) -> dict[str, str]:
    found = {}
    for ours in SPELLINGS:
        if (theirs := given.get(ours)) is not None:
            if theirs not in names:
                raise refusal("columns", f"{where} has no column {theirs!r}, given for {ours}; it has {', '.join(names)}", "TEXT")
            found[ours] = theirs
        elif (same := next((name for name in _known(ours) if name in names), None)) is not None:
            found[ours] = same
    for ours in MUST:
        if ours not in found:
            raise refusal("columns", f"{where} has no column {ours}; name the one that it is: --column {ours}=NAME. It has {', '.join(names)}")
    return found


# ---- values


def _numbers(values: Any, ours: str, theirs: str) -> Numbers:
    array = np.asarray(values)
    if array.dtype.kind not in "fiubM":
        array = _of_text(["" if cell is None or cell != cell else str(cell) for cell in array.tolist()], theirs)
    if array.dtype.kind == "M":
        known = array[~np.isnat(array)]
        since = (array - (known.min() if len(known) else array[:1].min())).astype("timedelta64[ns]")
        array = np.where(np.isnat(since), np.nan, since.astype(np.float64) * 1e-9)
    convert = _conversion(ours, theirs)
    array = array.astype(np.float64)
    return np.asarray(convert(array), dtype=np.float64) if convert else array


def _of_text(cells: Sequence[str], column: str) -> Any:
    """Numbers, or dates with a time; an empty cell is no value."""
    words = ["nan" if cell.lower() in NO_VALUE else cell for cell in cells]
    for kind, nothing in ((np.float64, "nan"), ("datetime64[ns]", "NaT")):
        try:
            return np.array([nothing if word == "nan" else word for word in words], dtype=kind)
        except ValueError:
            continue
    wrong = next(word for word in words if not _is_number(word))
    raise refusal(column, f"{wrong!r} is no number; leave a cell empty where there is no value", "TEXT")


def _is_number(word: str) -> bool:
    try:
        float(word)
    except ValueError:
        return False
    return True


def _on_or_off(values: Any, theirs: str) -> Numbers:
    words = {"on": 1.0, "true": 1.0, "1": 1.0, "1.0": 1.0, "off": 0.0, "false": 0.0, "0": 0.0, "0.0": 0.0, **dict.fromkeys(NO_VALUE, np.nan)}

    def one(cell: Any) -> float:
        word = str(cell).strip().lower()
        if word not in words:
            raise refusal(theirs, f"{cell!r} is neither on nor off; write 1 or 0, and leave the cell empty where it is not known", "TEXT")
        return words[word]

    return np.array([one(cell) for cell in np.asarray(values).tolist()], dtype=np.float64)


def _gear_numbers(values: Any, gears: Mapping[str, int]) -> tuple[NDArray[np.int16], list[str]]:
    """The number of every commanded gear, and the words that name none."""
    words = {**{str(number): number for number in gears.values()}, **gears, "N": 0, "P": 0, "0": 0, "R": -1}
    known: dict[Any, int] = {}
    unknown: list[str] = []

    def one(cell: Any) -> int:
        word = "" if cell is None or cell != cell else f"{cell:g}" if isinstance(cell, float) else str(cell).strip().removesuffix(".0")
        word = "" if word.lower() in NO_VALUE else word
        if word and word.upper() not in words and word not in words:
            unknown.append(word)
        return words.get(word, words.get(word.upper(), NOT_KNOWN))

    cells = np.asarray(values).tolist()
    for cell in dict.fromkeys(None if cell != cell else cell for cell in cells):
        known[cell] = one(cell)
    return np.array([known[None if cell != cell else cell] for cell in cells], dtype=np.int16), unknown


# ---- files

TEXT_ENDINGS, PARQUET_ENDINGS, ARROW_ENDINGS = (".csv", ".txt", ".tsv", ".log"), (".parquet",), (".arrow", ".feather", ".ipc")


def _table(source: Any, given: Mapping[str, str]) -> tuple[str, dict[str, Any], list[str]]:
    """Name, columns by their names as NumPy arrays, and remarks."""
    if isinstance(source, Mapping):
        return "the arrays", {str(name): np.asarray(values) for name, values in source.items()}, []
    if isinstance(source, (str, PathLike)):
        path = Path(fspath(source))
        if not path.exists():
            raise refusal("log", f"there is no file {path}; give the file of the logger")
        if path.suffix.lower() in TEXT_ENDINGS:
            return path.name, *_csv(path, given)
        return path.name, _columns(_file(path)), []
    if hasattr(source, "__arrow_c_stream__") or hasattr(source, "__arrow_c_array__"):
        return "the table", _columns(arrow().table(source)), []
    raise refusal("log", f"{type(source).__name__} is no log that can be read; give a CSV, Parquet or Arrow file, a table or frame, or arrays by name", "TEXT")


def _file(path: Path) -> Any:
    ending = path.suffix.lower()
    if ending not in PARQUET_ENDINGS + ARROW_ENDINGS:
        known = ", ".join(TEXT_ENDINGS + PARQUET_ENDINGS + ARROW_ENDINGS)
        raise refusal("log", f"{path.name} does not end as a log does; give a file that ends in {known}", "TEXT")
    pa = arrow()
    import pyarrow.feather as feather  # type: ignore[import-untyped,unused-ignore]
    import pyarrow.parquet as pq  # type: ignore[import-untyped,unused-ignore]

    try:
        return pq.read_table(path) if ending in PARQUET_ENDINGS else feather.read_table(path)
    except (OSError, pa.ArrowInvalid) as error:
        raise refusal("log", f"{path.name} cannot be read as {'Parquet' if ending in PARQUET_ENDINGS else 'Arrow'}: {error}", "TEXT") from None


def _columns(table: Any) -> dict[str, Any]:
    return {name: table.column(name).to_numpy() for name in table.column_names}


def _csv(path: Path, given: Mapping[str, str]) -> tuple[dict[str, Any], list[str]]:
    """A CSV with commas, semicolons (then with decimal commas, too) or tabs; lines above the names of the columns are left out."""
    lines = path.read_text(encoding="utf-8-sig", errors="replace").splitlines()
    times = {given["time_s"]} if "time_s" in given else set(_known("time_s"))
    for place, line in enumerate(lines[:HEAD_LINES]):
        mark = max(",;\t", key=line.count)
        names = [cell.strip() for cell in next(csv.reader([line], delimiter=mark), [])]
        if times & set(names):
            break
    else:
        begins = lines[0][:80] if lines else "empty"
        raise refusal("columns", f"no line at the head of {path.name} names a time: call the column time_s or time_ms, or name it with --column time_s=NAME. It begins: {begins}")
    rows = [row for row in csv.reader(lines[place + 1 :], delimiter=mark) if row]
    for at, row in enumerate(rows, 1):
        if len(row) < len(names) or any(cell.strip() for cell in row[len(names) :]):
            raise refusal("log", f"row {at} of {path.name} has {len(row)} cells for {len(names)} columns; a cell may be empty, not missing", "COUNT")
    cells = {name: [row[at].strip() for row in rows] for at, name in enumerate(names)}
    if mark == ";":
        cells = {name: [cell.replace(",", ".") for cell in column] for name, column in cells.items()}
    return cells, [f"{place} lines above the names of the columns are left out"] if place else []


# ---- what a speed shows of its sensor


def step_of(values: Numbers) -> float:
    """The step in which a column moves; 0 where it has none.

    >>> step_of(np.array([963.5, 965.0, 966.5, 967.0]))
    0.5
    """
    apart = np.diff(np.unique(values[np.isfinite(values)]))
    if not len(apart):
        return 0.0
    step = float(apart.min())
    multiples = apart / step
    return step if float(np.mean(np.abs(multiples - np.round(multiples)) > 0.01)) <= STILL_SHARE and step > 1e-9 else 0.0


def noise_of(values: Numbers, step: float) -> float:
    """Standard deviation of one value besides its step, from the second differences; far ones (shifts, glitches) are left out."""
    bend = values[:-2] - 2 * values[1:-1] + values[2:]
    bend = bend[np.isfinite(bend)]
    if not len(bend):
        return 0.0
    rough = 1.4826 * float(np.median(np.abs(bend)))
    near = bend[np.abs(bend) <= max(4 * rough, 2 * step)]
    return float(np.sqrt(max(float(np.mean(near**2)) / 6 - step**2 / 12, 0.0)))


def usual_repeat(values: Numbers) -> int:
    """How many rows in a row usually show the same value: the period of the sender in rows."""
    moved = np.flatnonzero(np.diff(values) != 0)
    return int(np.median(np.diff(moved))) if len(moved) > 2 else 1
