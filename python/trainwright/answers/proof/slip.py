"""The lines of a proof run that come from slip: how much, since when, and which elements may slip."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np

from ...edge import number
from ...judge import Limits, Reading, judge
from ..gears import ratio
from .line import Line, judged, not_proven
from .seen import Seen
from .sensors import sensor_fault

LEADING = 0.05
"""Chance from which a suspect of a slip is still counted: our own choice."""


def slip_lines(seen: Seen, slip_rpm: float, rule: Any, lost: Mapping[str, str]) -> list[Line]:
    """Slip at the input in every gear that comes: the alarm of the monitor, else the mean with what the log could have shown."""
    return [_slip_line(seen, name, slip_rpm, rule) for name in seen.gears if name not in lost]


def _slip_line(seen: Seen, name: str, slip_rpm: float, rule: Any) -> Line:
    about, measured = f"slip in {name}", seen.ratio(name)
    alarms = [event for event in seen.of_kind("slip") if event["gear"] == name]
    if sensor_fault(seen):
        return not_proven("slip", about, "the speeds themselves are wrong", "mend the sensors first", "mend", gear=name)
    if alarms:
        return _slipping(seen, name, alarms, slip_rpm, rule)
    if measured is None:
        return not_proven("slip", about, "not driven long enough", "drive it under load for 20 s", "warm", gear=name)
    slip = mean_slip(seen, name, measured)
    found = judge(slip, Limits(lower=-slip_rpm, upper=slip_rpm), rule)
    less = abs(slip.value) + 1.645 * slip.u
    why = f"no alarm; mean {number(slip.value, 1)} rpm, less than {number(less, 1)} rpm" if found.verdict == "GO" else f"mean {number(slip.value, 1)} rpm, at most {number(slip_rpm, 0)} rpm asked"
    if found.verdict == "NO-GO" and slip.value < 0:
        return judged("slip", about, found, "rpm", f"{why}; under drive an element cannot slip this way", "check the speed sensors", gear=name, less_than_rpm=less)
    return judged("slip", about, found, "rpm", why, f"hold gear {name} for 30 s more under load", "warm", gear=name, less_than_rpm=less, **({"more_s": 30.0} if found.verdict == "NOT PROVEN" else {}))


def mean_slip(seen: Seen, name: str, measured: Reading) -> Reading:
    """Mean slip at the input from the measured ratio."""
    output = float(np.nanmean(seen.column("output_rpm")[seen.in_gear(name)]))
    return Reading(value=(measured.value - ratio(seen.gears[name])) * output, u=abs(measured.u * output))


def _slipping(seen: Seen, name: str, alarms: list[dict[str, Any]], slip_rpm: float, rule: Any) -> Line:
    first = alarms[0]
    rows = seen.in_gear(name) & (seen.log.time_s >= first["at_s"])
    (slip, count), = seen.blocks(rows, np.asarray(seen.watched.samples["slip_rpm"], dtype=np.float64))
    most = float(slip.max()) if len(slip) else float(first["value"])
    u = slip_u(seen, name, int(count[int(slip.argmax())])) if len(slip) else float(first["u"])
    suspects = str(first["suspects"]).split()
    reading = Reading(value=most, u=max(u, 1e-3))
    found = judge(reading, Limits(lower=-slip_rpm, upper=slip_rpm), rule)
    share = 100 * most / max(float(np.nanmax(seen.column("input_rpm")[rows])), 1.0) if rows.any() else 0.0
    why = f"slips from {number(first['at_s'], 1)} s (alarm at {number(first['found_s'], 1)} s), up to {number(most, 0)} ± {number(2 * u, 1)} rpm at the input in the mean of {number(seen.block_s, 1)} s, {number(share, 1)} %"
    factors = factors_of(seen, name)
    data = {
        "gear": name, "began_s": first["at_s"], "found_s": first["found_s"], "greatest_rpm": most, "greatest_u_rpm": u, "suspects": suspects,
        "element_rpm": {element: abs(factors[element]) * most for element in suspects if element in factors},
    }  # fmt: skip
    if found.verdict == "NO-GO":
        return judged("slip", f"slip in {name}", found, "rpm", why, tell_apart(seen, suspects), **data)
    small = f"{why}: not proven to be more than {number(slip_rpm, 0)} rpm"
    return Line("slip", f"slip in {name}", "NOT PROVEN", small, f"hold gear {name} for a minute under load", reading, "rpm", found.limits, found.chance, frozenset({"warm"}), data)


def slip_u(seen: Seen, name: str, count: int) -> float:
    """Standard uncertainty of the mean slip of so many samples: both speeds, the output's times the ratio."""
    rows = seen.in_gear(name)
    input_u, output_u = (seen.speed_u(shaft, float(np.nanmean(seen.column(f"{shaft}_rpm")[rows])), count) for shaft in ("input", "output"))
    return float(np.hypot(input_u, ratio(seen.gears[name]) * output_u))


def factors_of(seen: Seen, name: str) -> dict[str, float]:
    """Slip of each element that may explain slip in a gear, per slip at the input."""
    gear = next(gear for gear in seen.unit.gears if gear.name == name)
    return {suspect.element: suspect.slip_per_input_slip for suspect in gear.suspects}


def chances_of(seen: Seen, suspects: list[str]) -> dict[str, float]:
    """Chance of each suspect against the others, from the evidence over all gears; most likely first."""
    odds = {row["element"]: float(np.exp(row["ln_odds"])) for row in seen.suspects}
    weight = {element: odds.get(element, 0.0) / (1.0 + odds.get(element, 0.0)) for element in suspects}
    total = sum(weight.values()) or 1.0
    return dict(sorted(((element, value / total) for element, value in weight.items()), key=lambda one: -one[1]))


def tell_apart(seen: Seen, suspects: list[str]) -> str:
    """The gear in which the leading suspects part, by the evidence over all gears, and what each would then show."""
    leading = [element for element, chance in chances_of(seen, suspects).items() if chance >= LEADING]
    after = next((str(row["next_gear"]) for row in seen.suspects), "")
    if not suspects:
        return "look at the elements of this gear"
    slips = [element for element in leading if after in seen.gears and element in factors_of(seen, after)]
    rest = [element for element in leading if element not in slips]
    if slips and rest:
        where = "" if ratio(seen.gears[after]) > 0 else " (at walking pace, or on the dyno)"
        return f"hold gear {after} under load{where}: slip there means {' or '.join(slips)}, no slip {' or '.join(rest)}"
    return f"look at {' and '.join(leading or suspects)} first: the gears that were driven leave nothing else likely"
