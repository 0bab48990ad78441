"""The gauge against the pressure that every gear needs, and what a pattern of low or high readings points to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import isinf

from .. import explain, hazard
from ..clutch import ElementPack
from ..edge import number, show, shown_apart
from ..error import refusal
from ..hydraulic import (
    GearPressure,
    NextReading,
    PatternRule,
    PressurePoint,
    PressureReading,
    PressureSuspect,
    PressureSuspects,
    gear_pressure,
    next_reading,
    suspect_circuits,
)
from ..judge import Judgment, Limits, Reading, Rule, judge
from ..record import Family
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..train import Train
from . import RULE, rule_in_words
from .capacity import Working, review_gears
from .gears import main_gears, ratio
from .one_way import one_ways

KEPT = 0.9
"""How often a suspect is taken to show what it predicts: our own choice, printed with the answer."""
HOT_FROM_C = 70.0
"""From where on the oil counts as hot: our own choice, printed with the answer."""


def stated_kpa(family: Family, variant: str, *, stall: bool, reverse: bool) -> Limits:
    """What the record states for a reading in a range at idle or stall."""
    key = "line_idle_kpa" if not stall else "line_stall_r_kpa" if reverse else "line_stall_d_kpa"
    window = family.as_dict()["variant"][variant].get(key)
    if not window:
        raise refusal(key, f"the record of {variant} states none; without it a reading is neither low nor high", "MISSING")
    return Limits(lower=window[0], upper=window[1])


@dataclass(frozen=True)
class Found:
    """A gear with the pressure that it needs."""

    gear: str
    element: str
    pressure: GearPressure


def gear_pressures(train: Train, packs: Mapping[str, ElementPack], working: Working, rule: Rule = RULE, *, reverse: bool = False) -> list[Found]:
    """The pressure that every forward gear, or reverse, needs at the torque."""
    limit = working.control_max_kpa if working.control_max_kpa is not None else float("inf")
    found = []
    for gear, review in review_gears(train, packs, working, rule, reverse=reverse).items():
        pressure = gear_pressure(review, reading_kpa=working.pressure_kpa, control_max_kpa=limit)
        found.append(Found(gear, train.elements[pressure.element], pressure))
    return found


def line_sheet(
    train: Train, packs: Mapping[str, ElementPack], working: Working, *, title: str, story: str = "", stated: Limits | None = None,
    reverse: Working | None = None, stated_reverse: Limits | None = None, rule: Rule = RULE,
) -> Sheet:  # fmt: skip
    """Every gear with the pressure that it needs against the gauge: which gears hold at this reading. Reverse has its own reading."""
    found = gear_pressures(train, packs, working, rule)
    backward = gear_pressures(train, packs, reverse, rule, reverse=True) if reverse else []
    every = [*found, *backward]
    worst = min(every, key=lambda one: (one.pressure.chance, one.pressure.spare_kpa))
    by_verdict = {verdict: [one.gear for one in every if one.pressure.verdict == verdict] for verdict in ("GO", "NOT PROVEN", "NO-GO")}
    holds = f"Holds in {', '.join(by_verdict['GO'])}" if by_verdict["GO"] else "No gear is proven to hold"
    rest = [f"{verdict} in {', '.join(gears)}" for verdict, gears in by_verdict.items() if verdict != "GO" and gears]
    pressure = worst.pressure
    spare = f"{show(abs(pressure.spare_kpa), 'kpa')} {'less than' if pressure.spare_kpa >= 0 else 'more than'} the gauge reads"
    answer = (
        f"{'; '.join([holds, *rest])}. Gear {worst.gear} asks most: {worst.element} needs {show(pressure.needed.strong_spring_kpa, 'kpa')}, {spare}."
    )
    beyond = [one.gear for one in every if one.pressure.control_spare_kpa < 0]
    if beyond:
        answer += f" In {', '.join(beyond)} the control cannot give what is needed: more pressure is no mend, less torque is."
    windows = [(working, stated, "forward")] + ([(reverse, stated_reverse, "reverse")] if reverse else [])
    judged = [(judge(which.pressure_kpa, limits, rule), name) for which, limits, name in windows if limits]
    return Sheet(
        title=title,
        story=story,
        answer=answer,
        decisions=[_gear_decision(worst, rule), *(_window_decision(one, name, rule) for one, name in judged)],
        tables=[_gear_table(every)],
        facts=[
            Fact("gauge", show(working.pressure_kpa.value, "kpa"), f"standard uncertainty {show(working.pressure_kpa.u, 'kpa', 1)}"),
            *([Fact("gauge in reverse", show(reverse.pressure_kpa.value, "kpa"), f"standard uncertainty {show(reverse.pressure_kpa.u, 'kpa', 1)}")] if reverse else []),
            Fact("turbine torque", show(working.turbine_nm.value, "nm"), working.turbine_from),
            *([Fact("control gives at most", show(working.control_max_kpa, "kpa"), "by the record")] if working.control_max_kpa is not None else []),
            *(Fact(f"record states, {name}", f"{show(one.limits.lower, 'kpa')} to {show(one.limits.upper, 'kpa')}", "at stall") for one, name in judged),
        ],
        not_checked=[
            *([] if reverse else ["Reverse: it has its own pressure and torque; give --gauge-reverse."]),
            *([] if working.pressure_kpa.u else ["The gauge: taken as exact. Give its full scale and class for an honest chance."]),
            "Condition of the linings and of the fluid: friction is taken from the record.",
            "Pressure at the pistons: a circuit that leaks has less than the gauge at the line shows.",
        ],
        cautions=[hazard.caution("stall heat"), hazard.caution("roll-away"), hazard.caution("hot fluid"), hazard.caution("raised pressure")],
        cards=["hydraulic.gear_pressure", "clutch.review", "clutch.pressure_needed", "judge.judge"],
        how=[worst.pressure.explain(control_max_kpa=working.control_max_kpa or float("inf")), *(one.explain() for one, _ in judged)],
        data={
            "gears": {one.gear: {"governs": one.element, **one.pressure.as_dict()} for one in every},
            "stated": {name: one.as_dict() for one, name in judged},
            "holds": by_verdict["GO"],
        },
    )  # fmt: skip


def _gear_decision(worst: Found, rule: Rule) -> Decision:
    pressure = worst.pressure
    basis = f"{worst.element} needs {show(pressure.needed.strong_spring_kpa, 'kpa')}, {show(pressure.needed.weak_spring_kpa, 'kpa')} with the weakest spring; {rule_in_words(rule)}."
    settled = "The capacity of the unit says what would settle it: trainwright capacity." if pressure.verdict == "NOT PROVEN" else ""
    return Decision(f"gear {worst.gear} holds at {show(pressure.reading_kpa.value, 'kpa')}", pressure.verdict, pressure.chance, basis, settled)


def _window_decision(judged: Judgment, name: str, rule: Rule) -> Decision:
    limits = judged.limits
    basis = f"The record states {show(limits.lower, 'kpa')} to {show(limits.upper, 'kpa')}; {rule_in_words(rule)}."
    settled = "" if judged.verdict != "NOT PROVEN" else "To settle it, read a gauge of a better class or smaller range."
    return Decision(f"line pressure {name} as the record states", judged.verdict, judged.chance, basis, settled)


def _gear_table(found: Sequence[Found]) -> Table:
    rows = []
    for one in found:
        pressure = one.pressure
        cells = (
            one.gear, one.element, *shown_apart(pressure.needed.strong_spring_kpa, "kpa"), number(pressure.reading_kpa.value, 0),
            number(pressure.spare_kpa, 0), "·" if isinf(pressure.reserve) else number(pressure.reserve, 2),
            "·" if isinf(pressure.control_spare_kpa) else "yes" if pressure.control_spare_kpa >= 0 else "NO",
            Decision("", pressure.verdict, pressure.chance, "").percent, pressure.verdict,
        )  # fmt: skip
        rows.append(Row(cells, "" if pressure.verdict == "GO" else pressure.verdict))
    columns = ("gear", "needs most", ">needs kPa", ">psi", ">gauge kPa", ">spare kPa", ">reserve", "control can", ">chance", "verdict")
    note = "Needs: with the strongest return spring. Chance: that the gear holds at this reading, gauge, friction, sizes and torque uncertain."
    return Table("Pressure that every gear needs", columns, rows, note)


# ---- from a pattern of readings to suspects


@dataclass(frozen=True)
class Taken:
    """A reading of the line pressure in a gear."""

    gear: str
    stall: bool
    temp_c: float
    kpa: Reading


def circuits(family: Family, train: Train) -> dict[str, int]:
    """The bit of every element with a circuit: the clutches and brakes, not the one-way clutches, which hold by themselves."""
    free = one_ways(family)
    return {element: 1 << place for place, element in enumerate(train.elements) if element not in free}


def point(train: Train, bits: Mapping[str, int], gear: str, *, stall: bool, temp_c: float) -> PressurePoint:
    """The state of the unit at a reading."""
    gears = {one.id: one for one in train.gears()}
    if gear not in gears:
        raise refusal("gear", f"the train has no gear {gear!r}; it has {', '.join(gears)}", "MISSING")
    closed = sum(bits.get(element, 0) for element in gears[gear].closed)
    return PressurePoint(closed=closed, at_stall=stall, temp_c=temp_c)


def pattern_sheet(
    family: Family, variant: str, taken: Sequence[Taken], *, title: str, story: str = "", kept: float = KEPT, hot_from_c: float = HOT_FROM_C, rule: Rule = RULE
) -> Sheet:
    """What a pattern of readings points to, ranked, and the reading that would separate the first suspects."""
    train = family.train(variant)
    bits = circuits(family, train)
    reverse = {gear.id: ratio(gear) < 0 for gear in train.gears()}
    pattern = PatternRule(kept=kept, hot_from_c=hot_from_c)
    readings = []
    for one in taken:
        at = point(train, bits, one.gear, stall=one.stall, temp_c=one.temp_c)
        limits = stated_kpa(family, variant, stall=one.stall, reverse=reverse[one.gear])
        readings.append(PressureReading(at=at, reading_kpa=one.kpa, limits_kpa=limits))
    found = suspect_circuits(readings, elements=sum(bits.values()), rule=pattern)
    first = found.ranked[0]
    together = [row for row in found.ranked if row.group == first.group]
    share = sum(row.share for row in together)
    words = " or ".join(_suspect(train, row) for row in together)
    answer = (
        f"{words[0].upper()}{words[1:]}: {number(100 * share, 0)} % of the weight, {first.fits} of {len(readings)} readings fit. "
        "A suspect, no proof: look there first."
    )
    wanted, where = _next(train, bits, found, taken, pattern)
    after = f"Read {where} next: it separates the suspects best." if wanted.bits > 0.01 else "No further reading of this kind would separate the suspects."
    untested = [element for place, element in enumerate(train.elements) if found.untested >> place & 1]
    return Sheet(
        title=title,
        story=story,
        answer=f"{answer} {after}",
        tables=[_taken_table(taken, readings, rule), _suspect_table(train, found)],
        facts=[
            Fact("next reading", where if wanted.bits > 0.01 else "none", f"expected to tell {number(wanted.bits, 2)} bit"),
            Fact("a suspect shows what it predicts", f"{number(100 * kept, 0)} %", "of the time: taken so, no source"),
            Fact("hot", f"from {show(hot_from_c, 'c')}", "taken so, no source"),
        ],
        not_checked=[
            "Level, filter and fluid: look there before anything is opened.",
            "The gauge itself: one that reads low everywhere looks like a weak pump. Compare it with another.",
            "Two faults at once, and what the control asked for: read the commanded pressure too.",
            *([f"The circuits of {', '.join(untested)}: no reading applies them."] if untested else []),
        ],
        cautions=[hazard.caution("hot fluid"), hazard.caution("roll-away"), hazard.caution("compressed air")] + ([hazard.caution("stall heat")] if any(one.stall for one in taken) else []),
        cards=["hydraulic.suspect_circuits", "hydraulic.next_reading", "judge.chance_inside"],
        how=[explain("hydraulic.suspect_circuits", pattern, share=first.share), wanted.explain()],
        data={
            "suspects": [{**row.as_dict(), "element": train.elements[row.element] if row.kind.startswith("circuit") else None, "in_words": _suspect(train, row)} for row in found.ranked],
            "untested": untested,
            "next": {"reading": where, "bits": wanted.bits},
        },
    )  # fmt: skip


_WORDS = {
    "nothing": "nothing wrong with the line pressure",
    "supply": "the supply as a whole (filter, suction, pump, or the regulator set or stuck low)",
    "supply when hot": "wear that thin oil finds, in pump or valve body",
    "supply at idle": "a worn pump or air in the suction (enough at speed, too little at idle)",
    "supply at hot idle": "a worn pump (too little at a hot idle)",
    "boost": "the boost of the regulator or its control, or a filter that chokes at flow",
    "stuck high": "the regulator stuck, or boosted all the time",
    "high at idle": "the control held at its greatest pressure",
    "circuit": "a leak in the circuit of {}",
    "circuit when hot": "worn seals or rings in the circuit of {}",
}
_PREDICTS = {
    "nothing": "right everywhere",
    "supply": "low everywhere",
    "supply when hot": "low when hot",
    "supply at idle": "low at idle",
    "supply at hot idle": "low at hot idle",
    "boost": "low at stall only",
    "stuck high": "high everywhere",
    "high at idle": "high at idle",
    "circuit": "low wherever {} is applied",
    "circuit when hot": "low wherever {} is applied, when hot",
}


def _suspect(train: Train, row: PressureSuspect) -> str:
    return _WORDS[row.kind].format(train.elements[row.element])


def _next(train: Train, bits: Mapping[str, int], found: PressureSuspects, taken: Sequence[Taken], rule: PatternRule) -> tuple[NextReading, str]:
    """The reading worth taking: at stall only where one was taken at stall already."""
    cold_c, hot_c = 25.0, max([rule.hot_from_c + 10.0, *(one.temp_c for one in taken)])
    stalls = (False, True) if any(one.stall for one in taken) else (False,)
    choices = [(gear.id, stall, temp_c) for stall in stalls for temp_c in (hot_c, cold_c) for gear in main_gears(train)]
    points = [point(train, bits, gear, stall=stall, temp_c=temp_c) for gear, stall, temp_c in choices]
    wanted = next_reading(found, points, rule=rule)
    gear, stall, temp_c = choices[wanted.candidate]
    return wanted, f"gear {gear} at {'stall' if stall else 'idle'}, {'hot' if temp_c == hot_c else 'cold'}"


def _taken_table(taken: Sequence[Taken], readings: Sequence[PressureReading], rule: Rule) -> Table:
    rows = []
    for one, reading in zip(taken, readings):
        limits = reading.limits_kpa
        judged = judge(one.kpa, limits, rule)
        says = "right" if limits.holds(one.kpa.value) else "low" if one.kpa.value < limits.lower else "high"
        cells = (
            one.gear, "stall" if one.stall else "idle", number(one.temp_c, 0), *shown_apart(one.kpa.value, "kpa"),
            f"{number(limits.lower, 0)} to {number(limits.upper, 0)}", says, Decision("", judged.verdict, judged.chance, "").percent,
        )  # fmt: skip
        rows.append(Row(cells, "" if says == "right" else "NO-GO" if judged.verdict == "NO-GO" else "NOT PROVEN"))
    return Table("Readings", ("gear", "at", ">°C", ">kPa", ">psi", ">stated kPa", "reads", ">chance right"), rows)


def _suspect_table(train: Train, found: PressureSuspects) -> Table:
    rows: list[Row] = []
    leading = found.ranked[0].group
    for row in found.ranked:
        if row.share < 0.005 and len(rows) >= 3:
            break
        alike = sum(other.group == row.group for other in found.ranked)
        cells = (
            _suspect(train, row), _PREDICTS[row.kind].format(train.elements[row.element]), f"{number(100 * row.share, 1)} %", str(row.fits), str(row.against),
            f"{alike} alike" if alike > 1 else "",
        )  # fmt: skip
        rows.append(Row(cells, "governs" if row.group == leading else ""))
    note = "Weight: among all suspects, every one as likely as any other beforehand. Alike: these readings cannot tell them apart."
    return Table("Suspects", ("suspect", "would read", ">weight", ">fit", ">against", "apart"), rows, note)


def with_pressure(working: Working, pressure_kpa: Reading, turbine_nm: Reading | None = None, turbine_from: str = "") -> Working:
    """The working point at another pressure, and torque where one is given."""
    changed = replace(working, pressure_kpa=pressure_kpa)
    return changed if turbine_nm is None else replace(changed, turbine_nm=turbine_nm, turbine_from=turbine_from)
