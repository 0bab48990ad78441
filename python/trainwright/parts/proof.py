"""The part about the proof run: the log on the ladder of the gears, shifts from close by, slip by element."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np

from ..answers.gears import ratio
from ..answers.proof import Proof, prove, slipping
from ..answers.proof.asked import asked_of
from ..answers.proof.line import Line
from ..answers.proof.seen import Seen
from ..edge import number
from .frame import Draw, Part, Records

AROUND_S = 0.6
"""Time shown before and after a shift."""
CLOSE_UPS = 3
"""Shifts that are shown from close by: the worst first."""
SLIP_BLOCKS = 300
"""Means of the slip that are drawn."""


def proof_parts(records: Records) -> Iterator[Part]:
    """The proof run of every job with a log."""
    if not records.family:
        return
    for job in records.asked("log", "variant"):
        path = records.folder / job["log"]
        if path.exists():
            yield _proof_part(records, path, job)


def _proof_part(records: Records, path: Path, job: dict[str, Any]) -> Part:
    assert records.family
    proved = prove(path, records.family, job["variant"], asked=asked_of(fluids=records.fluids, fleet=records.fleet))
    return Part(proved.sheet(title=f"{job['id']}: {job['title']}, proof run", story=job["story"]), pictures(proved))


def pictures(proof: Proof) -> dict[str, Draw]:
    """The log on the ladder, the worst shifts, and every gear that slips."""
    seen = proof.seen
    drawn = {"Measured ratio over the exact ratios of the record. Dashed: not proven; the color of a gear is its verdict.": _ladder(proof)}
    shifts = sorted((line for line in proof.lines if line.group == "shift" and "count" in line.data), key=lambda line: (line.verdict == "GO", line.chance or 0.0))
    for line in shifts[:CLOSE_UPS]:
        drawn[f"{line.about.capitalize()} at {number(line.data['half_s'], 1)} s: {line.why}."] = _shift(seen, line)
    for line, factors in slipping(proof):
        drawn[f"Slip in gear {line.data['gear']}, and what it would be at each element that may explain it. Shaded: less than is looked for."] = _slip(proof, line, factors)
    return drawn


def _ladder(proof: Proof) -> Draw:
    seen = proof.seen
    rungs = [(name, ratio(gear), proof.of_gear(name)) for name, gear in seen.gears.items() if ratio(gear) > 0]
    output = seen.column("output_rpm")
    measured = np.where(seen.moving, seen.column("input_rpm") / np.where(output == 0, np.nan, output), np.nan)
    marks = []
    for line in proof.lines:
        if line.group == "shift" and "count" in line.data and line.verdict != "GO":
            at_s = line.data["half_s"]
            marks.append((at_s, _height(seen, measured, at_s), line.about, line.verdict))
        if "began_s" in line.data:
            at_s = line.data["found_s"]
            marks.append((at_s, _height(seen, measured, at_s), f"slip in {line.data['gear']}", line.verdict))
    time_s = seen.log.time_s
    return lambda plots: plots.ratio_trace("Measured ratio", time_s, measured, rungs, sorted(marks))


def _height(seen: Seen, measured: Any, at_s: float) -> float:
    place = int(np.searchsorted(seen.log.time_s, at_s).clip(0, len(measured) - 1))
    near = measured[max(place - 5, 0) : place + 6]
    return float(np.nanmedian(near)) if np.isfinite(near).any() else 1.0


def _shift(seen: Seen, line: Line) -> Draw:
    shift = line.data
    begin = shift["commanded_s"] if np.isfinite(shift["commanded_s"]) else shift["half_s"] - shift["inertia_s"]
    end = begin + sum(shift[phase] for phase in ("fill_s", "torque_s", "inertia_s") if np.isfinite(shift[phase]))
    rows = (seen.log.time_s >= begin - AROUND_S) & (seen.log.time_s <= end + AROUND_S)
    time_s, output, drawn = seen.log.time_s[rows], seen.column("output_rpm")[rows], seen.column("input_rpm")[rows]
    phases, at_s = [], begin
    for name in ("fill", "torque", "inertia"):
        lasted = shift[f"{name}_s"]
        if np.isfinite(lasted) and lasted > 0:
            phases.append((name, at_s, at_s + lasted))
            at_s += lasted
    old, new = (ratio(seen.gears[shift[which]]) for which in ("from_gear", "to_gear"))
    sizes = ((shift["inertia_s"], 2, "{} s"), (shift["flare_rpm"], 0, "flare {} rpm"), (shift["dip_rpm"], 0, "dip {} rpm"))
    remark = ", ".join(text.format(number(value, decimals)) for value, decimals, text in sizes if np.isfinite(value))
    return lambda plots: plots.shift_close_up(line.about, time_s, drawn, old * output, new * output, phases, f"{line.verdict}: {remark}", line.verdict)


def _slip(proof: Proof, line: Line, factors: dict[str, float]) -> Draw:
    seen = proof.seen
    rows = seen.in_gear(line.data["gear"])
    slip = np.asarray(seen.watched.samples["slip_rpm"], dtype=np.float64)[rows]
    time_s = seen.log.time_s[rows]
    size = max(len(slip) // SLIP_BLOCKS, 1)
    whole = len(slip) // size * size
    with np.errstate(invalid="ignore"):
        means = np.nanmean(slip[:whole].reshape(-1, size), axis=1)
    times = time_s[:whole].reshape(-1, size).mean(axis=1)
    return lambda plots: plots.slip_by_element(
        f"Slip in gear {line.data['gear']}", times, means, factors, line.data["began_s"], line.data["found_s"], proof.asked.slip_rpm
    )
