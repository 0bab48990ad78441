"""Where rows come from: Parquet files by path, folder or pattern, anything that gives Arrow, or NumPy arrays by name.

Each source becomes pieces (a file, or the whole of a table), each piece batches with the columns under the names of the pass.
"""

from __future__ import annotations

import queue
import threading
from collections.abc import Callable, Generator, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from glob import glob
from os import PathLike, fspath
from pathlib import Path
from typing import Any

import numpy as np

from .. import units
from ..error import refusal

COLUMNS = (
    "truck", "time_s", "engine_rpm", "input_rpm", "output_rpm", "engine_torque_nm", "pressure_kpa", "temp_c", "speed_km_h", "gps_km_h", "gear",
)  # fmt: skip
"""The columns of the pass. Only the first two must be there."""

MUST = ("truck", "time_s")
BATCH_ROWS = 131_072
AHEAD = 3
"""Batches that are read while one is computed."""

SHOP: dict[str, dict[str, Callable[[Any], Any]]] = {
    "_c": {"_f": units.f_to_c},
    "_kpa": {"_psi": units.psi_to_kpa},
    "_km_h": {"_mph": units.mph_to_km_h},
    "_nm": {"_lbf_ft": units.lbf_ft_to_nm, "_lbft": units.lbf_ft_to_nm},
    "_s": {"_ms": lambda value: value * 1e-3},
}
"""Endings of names in other units, by the ending of ours, and the way to ours."""

Batch = Any
"""What the pass takes: a dictionary of arrays, or an object with an Arrow capsule."""


@dataclass(frozen=True)
class Piece:
    """A part of the input that is done or not done."""

    name: str
    open: Callable[[], Iterator[Batch]]
    rows: int | None = None
    mark: tuple[int, int] | None = None
    """Size and time of change of a file."""
    missing: tuple[str, ...] = ()
    """Columns that it does not have."""


@dataclass(frozen=True)
class Naming:
    """Which column of the input is which of ours; a shop unit at the end of its name is converted."""

    given: Mapping[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for ours in self.given:
            if ours not in COLUMNS:
                raise refusal("columns", f"{ours!r} is no column of the pass; give {', '.join(COLUMNS)}", "TEXT")

    def find(self, names: Iterable[str], where: str) -> dict[str, str]:
        """Ours to theirs, for the columns that are there."""
        there = list(names)
        found = {}
        for ours in COLUMNS:
            if (theirs := self.given.get(ours)) is not None:
                if theirs not in there:
                    raise refusal("columns", f"{where} has no column {theirs!r}, given for {ours}; it has {', '.join(there)}", "TEXT")
                found[ours] = theirs
            elif (same := next((name for name in _spellings(ours) if name in there), None)) is not None:
                found[ours] = same
        for ours in MUST:
            if ours not in found:
                raise refusal(
                    "columns", f"{where} has no column {ours}; name the one that it is: columns={{{ours!r}: ...}}. It has {', '.join(there)}"
                )
        return found


def _spellings(ours: str) -> list[str]:
    """The names under which a column is known without being told: ours, and ours with a shop unit."""
    for ending, shop in SHOP.items():
        if ours.endswith(ending):
            return [ours, *(ours[: -len(ending)] + other for other in shop)]
    return [ours]


def _conversion(ours: str, theirs: str) -> Callable[[Any], Any] | None:
    for ending, shop in SHOP.items():
        if ours.endswith(ending) and not theirs.endswith(ending):
            return next((convert for other, convert in shop.items() if theirs.endswith(other)), None)
    return None


def pieces(rows: Any, naming: Naming) -> list[Piece]:
    """The parts of an input, files in the order of their names."""
    if isinstance(rows, (str, PathLike)):
        return [_file(path, naming) for path in _paths(rows)]
    if isinstance(rows, (list, tuple)) and rows and all(isinstance(one, (str, PathLike)) for one in rows):
        paths = sorted({path for one in rows for path in _paths(one)}, key=str)
        return [_file(path, naming) for path in paths]
    if isinstance(rows, Mapping):
        return [_arrays(rows, naming)]
    if hasattr(rows, "collect_batches"):  # a lazy frame: its batches as they are made
        return [_frames(rows, naming)]
    if hasattr(rows, "__arrow_c_stream__") or hasattr(rows, "__arrow_c_array__"):
        return [_arrow(rows, naming)]
    raise refusal(
        "rows",
        f"{type(rows).__name__} is no table that can be read; give a path or a pattern of Parquet files, an Arrow table or frame, "
        "NumPy arrays by name, or a Spark data frame",
        "TEXT",
    )


def _paths(given: str | PathLike[str]) -> list[Path]:
    text = fspath(given)
    path = Path(text)
    if path.is_dir():
        found = sorted(path.rglob("*.parquet"), key=str)
    elif path.exists():
        found = [path]
    else:
        found = sorted((Path(one) for one in glob(text, recursive=True)), key=str)
    if not found:
        raise refusal("rows", f"no file matches {text!r}; give a Parquet file, a folder of them, or a pattern as 'telematics/*.parquet'")
    return found


def arrow() -> Any:
    """pyarrow, or how to get it."""
    try:
        import pyarrow  # type: ignore[import-untyped,unused-ignore]
    except ImportError:
        raise refusal("rows", "Parquet files and Arrow streams need pyarrow, which is not installed: pip install 'trainwright[fleet]'") from None
    return pyarrow


def _file(path: Path, naming: Naming) -> Piece:
    pa = arrow()
    import pyarrow.parquet as pq  # type: ignore[import-untyped,unused-ignore]

    try:
        with pq.ParquetFile(path) as file:
            schema, rows = file.schema_arrow, file.metadata.num_rows
    except (OSError, pa.ArrowInvalid) as error:
        raise refusal("rows", f"{path} cannot be read as Parquet: {error}", "TEXT") from None
    found = naming.find(schema.names, path.name)
    text = [found["truck"]] if pa.types.is_string(schema.field(found["truck"]).type) else []

    def read() -> Iterator[Batch]:
        # Columns are decoded one after the other into buffers that are used again: memory does not grow with the file.
        with pq.ParquetFile(path, read_dictionary=text, pre_buffer=False, buffer_size=1 << 20) as file:
            for batch in file.iter_batches(BATCH_ROWS, columns=list(found.values())):
                yield renamed(batch, found)

    status = path.stat()
    return Piece(str(path), read, rows, (status.st_size, status.st_mtime_ns), _missing(found))


def _missing(found: Mapping[str, str]) -> tuple[str, ...]:
    return tuple(name for name in COLUMNS if name not in found and name != "gear")


def _arrow(rows: Any, naming: Naming) -> Piece:
    pa = arrow()
    if hasattr(rows, "__arrow_c_stream__"):
        reader = pa.RecordBatchReader.from_stream(rows)
    else:
        batch = pa.record_batch(rows)
        reader = pa.RecordBatchReader.from_batches(batch.schema, [batch])
    found = naming.find(reader.schema.names, "the table")
    return Piece("the table", lambda: (renamed(batch, found) for batch in reader), getattr(rows, "num_rows", None), None, _missing(found))


def _frames(rows: Any, naming: Naming) -> Piece:
    found = naming.find(rows.collect_schema().names(), "the frame")
    wanted = rows.select(list(dict.fromkeys(found.values())))

    def read() -> Iterator[Batch]:
        pa = arrow()
        for frame in wanted.collect_batches(chunk_size=BATCH_ROWS, maintain_order=True):
            for batch in pa.RecordBatchReader.from_stream(frame):
                yield renamed(batch, found)

    return Piece("the frame", read, None, None, _missing(found))


def _arrays(rows: Mapping[str, Any], naming: Naming) -> Piece:
    found = naming.find(rows, "the dictionary")
    columns = {ours: _numbers(ours, theirs, rows[theirs]) for ours, theirs in found.items()}
    lengths = {name: len(values) for name, values in columns.items()}
    if len(set(lengths.values())) > 1:
        raise refusal("rows", f"the columns differ in length: {', '.join(f'{name} {length}' for name, length in lengths.items())}", "COUNT")
    return Piece("the arrays", lambda: iter([columns]), lengths["truck"], None, _missing(found))


def _numbers(ours: str, theirs: str, values: Any) -> Any:
    array = np.asarray(values)
    if array.dtype == object:  # names as Python objects: text, or whole numbers
        array = np.array(array.tolist())
    if array.dtype.kind == "M":
        return array.astype("datetime64[ns]").astype(np.int64) * 1e-9
    convert = _conversion(ours, theirs)
    return convert(np.asarray(array, dtype=np.float64)) if convert else array


def renamed(batch: Any, found: Mapping[str, str]) -> Any:
    """A record batch with our columns under our names, in our units."""
    pa = arrow()
    columns = []
    for ours, theirs in found.items():
        column = batch.column(theirs)
        if pa.types.is_timestamp(column.type):
            column = pa.array(column.cast(pa.timestamp("ns")).cast(pa.int64()).to_numpy(zero_copy_only=False) * 1e-9)
        elif convert := _conversion(ours, theirs):
            column = pa.array(convert(column.cast(pa.float64()).to_numpy(zero_copy_only=False)))
        columns.append(column)
    return pa.RecordBatch.from_arrays(columns, names=list(found))


def ahead(batches: Iterator[Batch]) -> Generator[Batch, None, None]:
    """The same batches, read by a thread of their own while the ones before are computed."""
    waiting: queue.Queue[tuple[bool, Any]] = queue.Queue(AHEAD)
    stop = threading.Event()

    def put(item: tuple[bool, Any]) -> None:
        while not stop.is_set():
            try:
                return waiting.put(item, timeout=0.1)
            except queue.Full:
                continue

    def read() -> None:
        try:
            for batch in batches:
                put((True, batch))
                if stop.is_set():
                    return
            put((False, None))
        except BaseException as error:  # raised again where the batches are used
            put((False, error))

    reader = threading.Thread(target=read, name="trainwright reader", daemon=True)
    reader.start()
    try:
        while True:
            more, item = waiting.get()
            if not more:
                if item is not None:
                    raise item
                return
            yield item
    finally:
        stop.set()
        reader.join()
