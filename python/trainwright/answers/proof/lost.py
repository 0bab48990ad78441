"""Gears that were commanded and did not come: what they showed instead, which element explains it, and which gear to try next."""

from __future__ import annotations

from typing import Any

import numpy as np

from ...edge import number
from ...error import Error
from ...judge import Reading
from ...sheet import Row, Table
from ...train import NextGear, Suspect, Symptom
from ..gears import ratio
from .line import Line
from .seen import Mask, Seen
from .sensors import sensor_fault

LEAST_S = 2.0
"""A gear that is commanded for less than this out of a shift is not judged as missing: our own choice."""
STEADY_SHARE = 0.01
"""A ratio that spreads less than this is one, whether or not the record has it: our own choice."""
RATIO_U = 0.002
"""Standard uncertainty at least of a ratio that was shown instead of the commanded one, as a share of it."""


def lost(seen: Seen) -> dict[str, str]:
    """What each gear showed that was commanded for long enough and did not come."""
    if seen.log.commanded is None or sensor_fault(seen):
        return {}
    found = {}
    for name in seen.gears:
        rows = seen.commanded(name) & ~_coasts(seen, name)
        seconds = seen.seconds(rows)
        if seconds >= LEAST_S and seen.seconds(rows & seen.in_gear(name)) < 0.5 * seconds:
            found[name] = _shown(seen, rows & ~seen.in_gear(name))
    return found


def _coasts(seen: Seen, name: str) -> Mask:
    """The rows at no gear's ratio with the input slower than this one asks for: the wheels overrun it, which is no fault of it."""
    output = seen.column("output_rpm")
    measured = seen.column("input_rpm") / np.where(output > 0, output, np.nan)
    with np.errstate(invalid="ignore"):
        at_one = np.any([np.abs(measured / abs(ratio(gear)) - 1) < STEADY_SHARE for gear in seen.gears.values()], axis=0)
        return np.asarray(~at_one & (measured < abs(ratio(seen.gears[name]))))


def _shown(seen: Seen, rows: Mask) -> str:
    """In words what these rows show."""
    measured = _ratio(seen, rows)
    if measured is None:
        return "no fixed ratio"
    near = min(seen.gears, key=lambda name: abs(measured.value / abs(ratio(seen.gears[name])) - 1))
    if abs(measured.value / abs(ratio(seen.gears[near])) - 1) < STEADY_SHARE:
        return f"the ratio of {near}"
    return f"a ratio of {number(measured.value, 3)}, which is none of the record"


def _ratio(seen: Seen, rows: Mask) -> Reading | None:
    """The ratio of these rows, where it stands still."""
    output = seen.column("output_rpm")[rows]
    values = seen.column("input_rpm")[rows] / np.where(output == 0, np.nan, output)
    values = values[np.isfinite(values)]
    if not len(values):
        return None
    middle = float(np.median(values))
    spread = 1.4826 * float(np.median(np.abs(values - middle)))
    return Reading(value=middle, u=RATIO_U * middle) if spread < STEADY_SHARE * middle else None


def lost_lines(seen: Seen) -> list[Line]:
    """One line for all gears that did not come, with the elements that explain them."""
    gone = lost(seen)
    if not gone:
        return []
    suspects = seen_suspects(seen, gone)
    first = [f"{suspect.element} {suspect.failure}" for suspect in suspects if suspect.rank == 1]
    shows = "; ".join(f"{' '.join(name for name in gone if gone[name] == what)} {'show' if list(gone.values()).count(what) > 1 else 'shows'} {what}" for what in dict.fromkeys(gone.values()))
    following = next_gear(seen, suspects)
    whole = [suspect for suspect in suspects if suspect.rank == 1 and not suspect.missed and not suspect.contradicted]
    if not first:
        do = "no single dead or stuck element explains it: look at the controller, its command and the pressures"
    elif not whole:
        do = f"nearest is {' or '.join(first)}, which does not explain all of it: look for a second fault, and at the controller"
    elif len(first) == 1:
        do = f"{first[0]} explains all of it, and nothing else does as well: look there"
    else:
        do = f"{' or '.join(first)} explains it; {_run_next(suspects, following) if following else 'no other gear tells them apart'}"
    named = "gear" if len(gone) == 1 else "gears"
    return [Line("ratio", f"{named} {' '.join(gone)}", "NO-GO", f"commanded, does not come: {shows}" if len(gone) == 1 else f"commanded, do not come: {shows}", do, data={"lost": gone, "suspects": first, "run": _run_next(suspects, following) if following and whole else ""})]


def seen_suspects(seen: Seen, gone: dict[str, str]) -> list[Suspect]:
    """Every dead or stuck element by how well it explains the gears that came and those that did not."""
    observations: list[Any] = []
    for name in seen.gears:
        if name not in gone:
            if seen.seconds(seen.commanded(name) & seen.in_gear(name)) >= LEAST_S:
                observations.append((name, "as commanded", "drive"))
            continue
        rows = seen.commanded(name) & ~_coasts(seen, name) & ~seen.in_gear(name)
        measured = _ratio(seen, rows)
        observations.append((name, "other ratio", "drive", measured) if measured else (name, "no drive", "drive"))
    return seen.train.diagnose(observations)


def next_gear(seen: Seen, suspects: list[Suspect]) -> NextGear | None:
    """The gear to drive next that tells most about the first suspects, if one of those not driven yet does."""
    first = [(suspect.element, suspect.failure) for suspect in suspects if suspect.rank == 1]
    tried = [name for name in seen.gears if seen.seconds(seen.commanded(name)) >= LEAST_S]
    if len(first) < 2:
        return None
    try:
        return seen.train.next_gear(first, tried)
    except Error as error:
        if error.kind == "NO_ANSWER":
            return None
        raise


def _run_next(suspects: list[Suspect], following: NextGear) -> str:
    first = [suspect for suspect in suspects if suspect.rank == 1]
    gives = ", ".join(f"{one.element} {one.failure} gives {_gives(symptom, following.load)}" for one, symptom in zip(first, following.shown, strict=True))
    tied = " (try it at idle with the wheels free: it may tie up)" if following.tie_ups else ""
    return f"run gear {following.gear} in {following.load}{tied}: {gives}"


def _gives(symptom: Symptom, load: str) -> str:
    if load == "coast":
        return {"no drive": "free coasting", "drives": "braking"}.get(symptom.coast, symptom.coast)
    if symptom.drive == "as commanded":
        return "its own ratio"
    return symptom.drive if symptom.ratio is None else f"a ratio of {number(symptom.ratio, 3)}"


def suspect_table(seen: Seen) -> list[Table]:
    """The first suspects of gears that did not come."""
    gone = lost(seen)
    if not gone:
        return []
    rows = [
        Row((str(one.rank), f"{one.element} {one.failure}", str(one.matched), str(one.missed), str(one.contradicted), str(one.agreed)), "governs" if one.rank == 1 else "")
        for one in seen_suspects(seen, gone)[:5]
    ]
    note = "matched: faults seen that it shows. missed: faults it leaves alone. contradicted: gears in which it would show something else. agreed: right gears that it leaves right."
    return [Table("Who is dead or stuck", (">rank", "element", ">matched", ">missed", ">contradicted", ">agreed"), rows, note)] if rows else []
