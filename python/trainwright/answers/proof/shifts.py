"""The lines of a proof run that come from its shifts: time, flare and tie-up of each kind of shift, cold and hot apart, and their heat."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import hypot, isfinite
from typing import Any

import numpy as np

from ... import practice
from ...edge import number
from ...judge import Judgment, Limits, Reading, judge
from ..gears import ratio
from ..one_way import one_ways
from .asked import Asked
from .line import Line, not_proven
from .seen import Seen
from .sensors import sensor_fault

ENDS_S = 0.05
"""How well the time of a speed change is known that begins and ends smoothly, standard uncertainty: our own choice, printed with the answer."""
COLD, WARM, NOT_KNOWN = "cold", "warm", "at an unknown temperature"


def warmth(temp_c: float, asked: Asked) -> str:
    """Whether the fluid is cold or warm."""
    if not isfinite(temp_c):
        return NOT_KNOWN
    return COLD if temp_c < asked.limits.cold_c else WARM


def kinds_of(seen: Seen, asked: Asked) -> dict[tuple[str, str, str], list[dict[str, Any]]]:
    """The shifts by old gear, new gear and warmth."""
    kinds: dict[tuple[str, str, str], list[dict[str, Any]]] = {}
    for shift in seen.shifts:
        ends = [seen.gears[shift[which]] for which in ("from_gear", "to_gear") if shift[which] in seen.gears]
        if len(ends) == 2 and (ratio(ends[0]) > 0) == (ratio(ends[1]) > 0):  # from forward to reverse is no shift
            kinds.setdefault((shift["from_gear"], shift["to_gear"], warmth(shift["temp_c"], asked)), []).append(shift)
    return kinds


def steps(seen: Seen) -> list[tuple[str, str]]:
    """The shifts between neighbors, up and down."""
    forward = [name for name, gear in seen.gears.items() if ratio(gear) > 0]
    up = list(pairwise(sorted(forward, key=lambda name: ratio(seen.gears[name]), reverse=True)))
    return [*up, *((high, low) for low, high in reversed(up))]


def shift_lines(seen: Seen, asked: Asked) -> list[Line]:
    """Each kind of shift that was seen, and those that were not."""
    if sensor_fault(seen):
        return [not_proven("shift", "every shift", "the speeds themselves are wrong", "mend the sensors first", "mend")]
    if seen.log.sample_s > 1.01 * asked.shift_s.lower / 2:
        hz = 2 / asked.shift_s.lower
        why = f"a row every {number(seen.log.sample_s, 2)} s is too seldom for shifts of {number(asked.shift_s.lower, 1)} to {number(asked.shift_s.upper, 1)} s"
        return [not_proven("shift", "every shift", why, f"log {number(hz, 0)} rows a second, better {number(5 * hz, 0)}", "columns")]
    kinds = kinds_of(seen, asked)
    lines = [_shift_line(seen, asked, kind, shifts) for kind, shifts in kinds.items()]
    for warm in (COLD, WARM):
        for way, up in (("up", True), ("down", False)):
            missing = [f"{old}-{new}" for old, new in steps(seen) if (ratio(seen.gears[old]) > ratio(seen.gears[new])) == up and (old, new, warm) not in kinds]
            if missing:
                limit = f"below {number(asked.limits.cold_c, 0)}" if warm == COLD else f"from {number(asked.limits.cold_c, 0)}"
                lines.append(not_proven("shift", f"{way}-shifts {warm}", f"not seen: {', '.join(missing)}", f"drive them {warm} ({limit} °C)", warm, missing=missing))
    return lines


def _shift_line(seen: Seen, asked: Asked, kind: tuple[str, str, str], shifts: Sequence[dict[str, Any]]) -> Line:
    old, new, warm = kind
    each = [judgments(seen, asked, shift) for shift in shifts]
    worst = min(range(len(shifts)), key=lambda place: (("NO-GO", "NOT PROVEN", "GO").index(verdict_of(each[place])), min(one.chance for _, one, _ in each[place])))
    shift, found = shifts[worst], each[worst]
    verdict = verdict_of(found)
    wrong = [name for name, one, high in found if high.verdict == "NO-GO"]
    open_ = [name for name, one, high in found if name not in wrong and one.verdict != "GO"]
    said = {name: f"{name}: {_size(name, one, asked)}" for name, one, _ in found}
    names = wrong or open_ or [name for name, _, _ in found]
    first = next((one for name, one, _ in found if name == names[0]), found[0][1])
    many = f"worst of {len(shifts)}: " if len(shifts) > 1 else ""
    on, off = (" ".join(element for element in seen.gears[one].closed if element not in seen.gears[other].closed) for one, other in ((new, old), (old, new)))
    do = {"flare": f"look at fill and pressure of {on}, which closes", "tie-up": f"look at the release of {off}, which opens", "time": f"look at the pressure of {on}, which closes"}
    what = "; ".join(said[name] for name in names)
    todo = "" if verdict == "GO" else do[names[0]] if verdict == "NO-GO" else f"drive {old}-{new} {warm} some times more: the maker's own limit goes before common practice"
    data = {**shift, "from_gear": old, "to_gear": new, "warmth": warm, "count": len(shifts)}
    if wrong == ["time"] and _slips_after(seen, asked, shift):
        data["follows"] = f"slip in {new}"
    return Line("shift", f"shift {old}-{new} {warm}", verdict, f"{many}{what}", todo, first.reading, {"flare": "rpm", "tie-up": "%", "time": "s"}[names[0]],
                first.limits, min(one.chance for _, one, _ in found), frozenset({warm}) if verdict == "NOT PROVEN" else frozenset(), data)  # fmt: skip


def _slips_after(seen: Seen, asked: Asked, shift: dict[str, Any]) -> bool:
    """Whether the new gear slips from its start on, so that its ratio is never reached and the shift seems not to end."""
    until_s = shift["commanded_s"] + 2 * asked.limits.follow_s
    return any(event["gear"] == shift["to_gear"] and shift["commanded_s"] <= event["at_s"] <= until_s for event in seen.of_kind("slip"))


def judgments(seen: Seen, asked: Asked, shift: dict[str, Any]) -> list[tuple[str, Judgment, Judgment]]:
    """Time, flare and tie-up of a shift: (name, judged for GO, judged for NO-GO); they differ where practice gives a span of limits."""
    time_u = hypot(ENDS_S, seen.log.sample_s / 6**0.5)
    found = [("time", Reading(value=shift["inertia_s"], u=time_u), asked.shift_s, asked.shift_s)] if isfinite(shift["inertia_s"]) else []
    if isfinite(shift["flare_rpm"]):
        low, high = (Limits(upper=limit) for limit in (asked.flare_rpm.lower, asked.flare_rpm.upper))
        found.append(("flare", Reading(value=shift["flare_rpm"], u=shift["flare_u_rpm"]), low, high))
    if isfinite(shift["dip_rpm"]):
        output = output_at(seen, shift)
        most = Limits(upper=100 * asked.limits.dip_share)
        found.append(("tie-up", Reading(value=100 * shift["dip_rpm"] / output, u=100 * shift["dip_u_rpm"] / output), most, most))
    return [(name, judge(reading, low, asked.rule), judge(reading, high, asked.rule)) for name, reading, low, high in found]


def verdict_of(found: Sequence[tuple[str, Judgment, Judgment]]) -> str:
    """The worst of the three; a shift of which nothing is known is not proven."""
    if any(high.verdict == "NO-GO" for _, _, high in found):
        return "NO-GO"
    return "GO" if found and all(low.verdict == "GO" for _, low, _ in found) else "NOT PROVEN"


def output_at(seen: Seen, shift: dict[str, Any]) -> float:
    """Output speed in the middle of a shift."""
    known = np.isfinite(seen.column("output_rpm"))
    return max(float(np.interp(shift["half_s"], seen.log.time_s[known], seen.column("output_rpm")[known])), 1.0)


def _size(name: str, one: Judgment, asked: Asked) -> str:
    if name == "time":
        return f"{number(one.reading.value, 2)} s, {number(asked.shift_s.lower, 1)} to {number(asked.shift_s.upper, 1)} s asked"
    if name == "flare":
        span = f"{number(asked.flare_rpm.lower, 0)} to {number(asked.flare_rpm.upper, 0)}" if asked.flare_rpm.lower < asked.flare_rpm.upper else number(asked.flare_rpm.upper, 0)
        return f"{number(one.reading.value, 0)} rpm, at most {span} rpm asked"
    return f"dip of the output {number(one.reading.value, 1)} %, at most {number(100 * asked.limits.dip_share, 1)} % asked"


# ---- heat


def heat_lines(seen: Seen, asked: Asked) -> list[Line]:
    """Energy of the shifts on the lining of the oncoming element."""
    known = [shift for shift in seen.shifts if isfinite(shift["energy_j"]) and shift["element"]]
    if sensor_fault(seen):
        return []
    if not known:
        why = "no torque in the log" if not np.isfinite(seen.log.torque_nm).any() else "no shift with a known torque"
        return [not_proven("shift", "heat of the shifts", why, "log the torque at the input, or engine torque with the lock-up on", "torque")]
    if seen.log.sample_s > 1.01 * asked.shift_s.lower / 2:
        return []
    packs, free = seen.family.packs(seen.variant), one_ways(seen.family)
    lines = []
    for element in dict.fromkeys(str(shift["element"]) for shift in known if shift["element"] not in free):
        of = [shift for shift in known if shift["element"] == element]
        worst = max(of, key=lambda shift: float(shift["energy_j"]))
        about = f"heat of {element}"
        what = f"{worst['from_gear']}-{worst['to_gear']}: {number(worst['energy_j'] / 1000, 2)} kJ"
        if element not in packs:
            lines.append(not_proven("shift", about, f"{what}; the record has no lining of it", "measure the lining and add it to the record"))
            continue
        pack = packs[element].pack
        area_mm2 = pack.faces * pack.lining.area_mm2()
        load = Reading(value=worst["energy_j"] / area_mm2, u=worst["energy_j"] / area_mm2 * asked.torque_u_rel)
        found = judge(load, Limits(upper=practice.SHIFT_ENERGY_HIGH_J_MM2), asked.rule)
        why = f"{what}, {number(load.value, 2)} J per mm² of lining, {practice.SHIFT_ENERGY_HIGH_J_MM2:g} usual at most"
        do = "" if found.verdict == "GO" else "ask the maker of the lining; shift with less torque or faster until then"
        lines.append(Line("shift", about, found.verdict, why, do, load, "J/mm²", found.limits, found.chance, frozenset({"torque"}) if found.verdict == "NOT PROVEN" else frozenset(), {**worst}))
    return lines
