"""Proof run: the log of a dyno or a road test against the record of the unit, line by line, and what to run next."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import isfinite
from typing import Any

from ...record import Family
from ...sheet import Sheet
from .asked import Asked, asked_of
from .line import ORDER, Line
from .lost import lost, lost_lines
from .next_runs import Next, next_runs
from .ratios import ratio_lines, variant_lines
from .seen import Seen, watch_log
from .sensors import sensor_fault, sensor_lines
from .sheet import proof_sheet
from .shifts import heat_lines, shift_lines
from .slip import factors_of, slip_lines
from .state import lockup_lines, log_lines, pressure_lines, temperature_lines


@dataclass(frozen=True)
class Proof:
    """A judged log: every line, what to run next, and the answer as a sheet."""

    seen: Seen
    asked: Asked
    lines: list[Line]
    next: list[Next]

    def verdicts(self) -> dict[str, int]:
        """How many lines have each verdict."""
        return {verdict: sum(line.verdict == verdict for line in self.lines) for verdict in ("GO", "NO-GO", "NOT PROVEN")}

    @property
    def verdict(self) -> str:
        """The worst verdict of a line."""
        return min((line.verdict for line in self.lines), key=ORDER.index)

    def line(self, about: str) -> Line:
        """The line about something."""
        return next(line for line in self.lines if line.about == about)

    def of_gear(self, name: str) -> str:
        """The worst verdict of a gear: its ratio and its slip."""
        return min((line.verdict for line in self.lines if line.about in (f"ratio in {name}", f"slip in {name}")), key=ORDER.index)

    def sheet(self, *, title: str = "", story: str = "") -> Sheet:
        """As an answer."""
        return proof_sheet(self, title=title or f"Proof run of {self.seen.log.name}, {self.seen.variant}", story=story)

    def as_dict(self) -> dict[str, Any]:
        """For JSON."""
        found: dict[str, Any] = _told({
            "verdict": self.verdict, "counts": self.verdicts(), "lines": [line.as_dict() for line in self.lines], "next": [one.as_dict() for one in self.next],
            "shifts": self.seen.shifts, "events": self.seen.events,
        })  # fmt: skip
        return found

    def _repr_html_(self) -> str | None:
        return self.sheet()._repr_html_()


def _told(value: Any) -> Any:
    """The same with None for numbers that are not known, which JSON cannot write."""
    if isinstance(value, dict):
        return {key: _told(one) for key, one in value.items()}
    if isinstance(value, list):
        return [_told(one) for one in value]
    return None if isinstance(value, float) and not isfinite(value) else value


def prove(log: Any, family: Family, variant: str, *, asked: Asked | None = None, columns: Mapping[str, str] | None = None) -> Proof:
    """Judges a log (a file, an Arrow table or frame, arrays by name) of one unit against its record."""
    wanted = asked or asked_of()
    seen = watch_log(log, family, variant, wanted, columns=columns)
    gone = lost(seen)
    lines = [
        *sensor_lines(seen),
        *log_lines(seen),
        *lost_lines(seen),
        *ratio_lines(seen, wanted.ratio_within, wanted.rule, gone),
        *variant_lines(seen, wanted.rule),
        *slip_lines(seen, wanted.slip_rpm, wanted.rule, gone),
        *shift_lines(seen, wanted),
        *heat_lines(seen, wanted),
        *pressure_lines(seen, wanted),
        *temperature_lines(seen, wanted),
        *lockup_lines(seen, wanted),
    ]
    return Proof(seen, wanted, lines, next_runs(seen, wanted, lines))


def slipping(proof: Proof) -> Sequence[tuple[Line, dict[str, float]]]:
    """The gears that slip, with the slip of every suspect per slip at the input."""
    if sensor_fault(proof.seen):
        return []
    return [
        (line, {element: abs(factor) for element, factor in factors_of(proof.seen, line.data["gear"]).items() if element in line.data["suspects"]})
        for line in proof.lines
        if line.group == "slip" and line.verdict == "NO-GO" and "began_s" in line.data
    ]
