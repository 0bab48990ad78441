"""The line of a proof run about its speed sensors."""

from __future__ import annotations

from ...edge import number
from .line import Line, not_proven
from .seen import Seen, rows_of


SENSOR_FAULTS = {
    "wrong teeth": (
        "the ratio is off by the same share in every gear, which no slip does",
        "count the teeth of both speed wheels, set them in the logger, and run again",
    ),
    "swapped": ("the speeds fit the gears only when they change places", "swap the two sensors, or their columns, and run again"),
}
"""Events that say a sensor is wrong: what was seen, and the mend."""


def sensor_fault(seen: Seen) -> str:
    """The kind of the event that says the speeds themselves are wrong; empty where there is none. A tooth count is wrong in every gear:
    gears that are right for longer speak against it."""
    good, bad = (sum(int(row[name]) for row in rows_of(seen.watched.ratios)) for name in ("windows", "slipping"))
    return next((kind for kind in SENSOR_FAULTS if seen.of_kind(kind) and not (kind == "wrong teeth" and good > bad)), "")


def sensor_lines(seen: Seen) -> list[Line]:
    """Whether the two speeds are those of the record's gears."""
    kind = sensor_fault(seen)
    if kind:
        why, do = SENSOR_FAULTS[kind]
        found = seen.of_kind(kind)[0]
        size = f": times {number(found['value'], 3)}" if kind == "wrong teeth" else ""
        return [Line("log", "speed sensors", "NO-GO", f"{why}{size}", do, data={"fault": kind, "found_s": found["found_s"], "value": found["value"]})]
    good = [name for name in seen.driven() if not seen.slips(name)]
    if len(good) >= 2:
        return [Line("log", "speed sensors", "GO", f"gears {', '.join(good)} fit the record with one pair of tooth counts")]
    if not seen.driven():
        return [not_proven("log", "speed sensors", "no gear was held long enough to compare the speeds", "hold two gears for 20 s each", "warm")]
    return [not_proven("log", "speed sensors", "one gear alone cannot tell a tooth count from another ratio", "hold a second gear for 20 s", "warm")]
