"""The same pass on the executors of a Spark cluster: every partition sends back its tally, the driver merges them.

The wheel must be installed on the executors. Sums do not depend on how the rows are divided: tallies are exact, and the runs of a truck
are put in the order of their times. A data frame that reads files keeps the rows of a file in their order; where a data frame has been
shuffled, sort it first: ``frame.repartition("truck").sortWithinPartitions("truck", "time_s")``.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np

from .._native.fleet import Screen, Unit
from .read import COLUMNS, Naming, renamed

PIECE = "trainwright_piece"
"""A column that tells from which part of which file a row comes."""


def screen_frame(frame: Any, units: Mapping[Any, Unit] | Unit, naming: Naming, options: Mapping[str, Any]) -> tuple[Screen, list[str]]:
    """The tally of a Spark data frame, and the columns that it does not have."""
    from pyspark.sql import functions as f

    found = naming.find(frame.columns, "the Spark data frame")
    piece = f.xxhash64(f.input_file_name(), f.input_file_block_start()).alias(PIECE)
    rows = frame.select(*(f.col(f"`{name}`") for name in dict.fromkeys(found.values())), piece)
    tallies = rows.mapInArrow(tallying(units, found, options), "tally binary")
    whole = Screen(units, order="time", **options)
    for row in tallies.toLocalIterator():
        whole.merge(Screen.from_bytes(units, bytes(row.tally), order="time", **options))
    return whole, [name for name in COLUMNS if name not in found and name != "gear"]


def tallying(units: Mapping[Any, Unit] | Unit, found: Mapping[str, str], options: Mapping[str, Any]) -> Any:
    """The function for ``mapInArrow``: batches of rows in, one row with the serialized tally of the partition out."""

    def tally(batches: Iterator[Any]) -> Iterator[Any]:
        import pyarrow as pa  # type: ignore[import-untyped,unused-ignore]

        whole: Screen | None = None
        part: Screen | None = None
        at = None
        for batch in batches:
            if not batch.num_rows:
                continue
            pieces = batch.column(PIECE).to_numpy(zero_copy_only=False)
            edges = [0, *(np.flatnonzero(pieces[1:] != pieces[:-1]) + 1).tolist(), len(pieces)]
            rows = renamed(batch, found)
            for first, last in zip(edges, edges[1:]):
                if part is None or pieces[first] != at:
                    whole, part, at = _merged(whole, part), Screen(units, order="time", threads=1, **options), pieces[first]
                part.add(rows.slice(first, last - first))
        if (done := _merged(whole, part)) is not None:
            yield pa.RecordBatch.from_arrays([pa.array([done.to_bytes()], pa.binary())], names=["tally"])

    return tally


def _merged(whole: Screen | None, part: Screen | None) -> Screen | None:
    if whole is None or part is None:
        return whole or part
    whole.merge(part)
    return whole
