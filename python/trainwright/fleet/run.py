"""One call from rows to a ranked list of trucks."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from .._native.fleet import Screen, Unit
from ..duty import BusSignal
from ..error import refusal
from .progress import Interrupt, Progress, Stopped
from .read import Naming, Piece, ahead, pieces
from .screening import Screening
from .state import State

ORDER = "time"
"""Runs of a truck are put in the order of their times: files and partitions may come in any order."""


def screen(
    rows: Any,
    units: Mapping[Any, Unit] | Unit,
    *,
    columns: Mapping[str, str] | None = None,
    bus: Mapping[str, BusSignal] | None = None,
    aggregates: Iterable[str] | None = None,
    by: str = "damage",
    state: str | os.PathLike[str] | None = None,
    progress: bool | None = None,
    threads: int | None = None,
) -> Screening:
    """Which trucks come first, and why: one pass over telematics rows, in constant memory, on this machine or on Spark.

    * ``rows``: a Parquet file, a folder, a pattern as ``"telematics/*.parquet"`` or a list of them; anything that gives Arrow
      (pyarrow, Polars, pandas, DuckDB); NumPy arrays by name; or a Spark data frame, whose executors then do the work
    * ``units``: the unit of each truck, as :func:`trainwright.fleet.units` makes them from records, or one for all
    * ``columns``: our name to theirs, where they differ: ``{"temp_c": "sump_f"}``. Names that end in ``_f``, ``_psi``, ``_mph``,
      ``_lbf_ft`` or ``_ms`` are converted. All but ``truck`` and ``time_s`` may be missing; the result says which were
    * ``bus``: columns that hold bus values, by our name to their :class:`trainwright.duty.BusSignal`: raw where they are whole numbers
    * ``aggregates``: what is summed, all of it unless given; fewer columns are read and computed for fewer
    * ``by``: what ranks: ``"damage"``, ``"over_rating"``, ``"low_margin"``, ``"hot"`` or ``"fluid_life"``
    * ``state``: a file that remembers which Parquet files are done; a later call goes on where this one stopped
    * ``progress``: True or False; None shows it on long work in a terminal or a notebook
    * ``threads``: how many; all cores unless given

    Ctrl-C stops between two batches: the result then holds what is done so far, and says so.
    """
    naming = Naming(dict(columns or {}))
    options: dict[str, Any] = {"bus": dict(bus) if bus else None, "aggregates": tuple(aggregates) if aggregates is not None else None}
    if _is_spark(rows):
        from .spark import screen_frame

        if state is not None:
            raise refusal("state", "Spark keeps its own; leave it out for a Spark data frame", "INCONSISTENT")
        tally, absent = screen_frame(rows, units, naming, options)
        return Screening(tally, units, missing=absent, by=by)

    def fresh() -> Screen:
        return Screen(units, order=ORDER, threads=threads, **options)

    work = pieces(rows, naming)
    kept = State(state, {"columns": naming.given, **options})
    tally = fresh() if kept.done.tally is None else Screen.from_bytes(units, kept.done.tally, order=ORDER, threads=threads, **options)
    left = kept.left(work)
    starts = _starts(work)
    counts = [piece.rows for piece in left if piece.rows is not None]
    total = sum(counts) if len(counts) == len(left) else None
    stopped: list[str] = []
    missing = set(kept.done.missing)
    with Interrupt() as interrupt, Progress(total, progress) as shown:
        for number, piece in enumerate(left):
            part = fresh()
            try:
                interrupt.check()
                _count(part, piece, starts[piece.name], interrupt, shown)
            except Stopped:
                stopped = [later.name for later in left[number:]]
            except BaseException:  # a file that cannot be read must not cost what is done
                kept.write(tally.to_bytes())
                raise
            if part.rows:
                missing.update(piece.missing)
            if stopped:
                kept.write(tally.to_bytes())  # whole files only: the rest is read again
                tally.merge(part)
                break
            tally.merge(part)
            kept.add(piece)
            if kept.due() and number + 1 < len(left):
                kept.write(tally.to_bytes())
        else:
            if left:
                kept.write(tally.to_bytes())
    return Screening(tally, units, missing=sorted(missing), by=by, files=len(work), stopped=stopped)


def _is_spark(rows: Any) -> bool:
    """Whether this is a Spark data frame; Spark is not imported to find out."""
    return type(rows).__module__.startswith("pyspark.") and hasattr(rows, "mapInArrow")


def _starts(work: list[Piece]) -> dict[str, int]:
    """Number of the first row of each piece in the whole stream."""
    starts, at = {}, 0
    for piece in work:
        starts[piece.name] = at
        at += piece.rows or 0
    return starts


def _count(part: Screen, piece: Piece, first_row: int, interrupt: Interrupt, shown: Progress) -> None:
    """All rows of a piece; raises :class:`Stopped` between two parts of it."""
    label = os.path.basename(piece.name)

    def told() -> Callable[[int], None]:
        before = 0

        def tell(done: int) -> None:
            nonlocal before
            shown.add(done - before, label)
            before = done
            interrupt.check()

        return tell

    batches = ahead(piece.open())
    try:
        for batch in batches:
            tell = told()
            before = part.rows
            part.add(batch, first_row=first_row + before, progress=tell)
            tell(part.rows - before)
    finally:
        batches.close()
