"""The lines of a proof run that come from ratio and slip: every gear of the record, the variant that the ratios fit, the sensors."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from ..edge import number
from ..judge import Judgment, Limits, Reading, judge
from ..record import Family
from ..train import Train, fit_ratio
from .gears import main_gears, ratio
from .proof_seen import Seen, rows_of

COVERAGE = 0.99
"""Chance that the true variant is kept when ratios are fitted."""
LEADING = 0.05
"""Chance from which a suspect of a slip is still counted: our own choice."""

@dataclass(frozen=True)
class Line:
    """One line of the proof: GO, NO-GO or NOT PROVEN, why, and the one thing to do."""

    group: str
    about: str
    verdict: str
    why: str
    do: str = ""
    reading: Reading | None = None
    unit: str = ""
    limits: Limits | None = None
    chance: float | None = None
    needs: frozenset[str] = frozenset()
    """What a further drive must hold to settle it; see :mod:`.proof_next`."""
    data: dict[str, Any] = field(default_factory=dict)
    """Further numbers of the line, each key ending in its unit."""

    def as_dict(self) -> dict[str, Any]:
        """For JSON."""
        return {
            "group": self.group, "about": self.about, "verdict": self.verdict, "why": self.why, "do": self.do, "chance": self.chance,
            "value": self.reading.value if self.reading else None, "u": self.reading.u if self.reading else None, "unit": self.unit,
            "lower": self.limits.lower if self.limits else None, "upper": self.limits.upper if self.limits else None, **self.data,
        }  # fmt: skip


def not_proven(group: str, about: str, why: str, do: str, *needs: str, **data: Any) -> Line:
    """A line that the log says nothing about."""
    return Line(group, about, "NOT PROVEN", why, do, needs=frozenset(needs), data=data)


def judged(group: str, about: str, judgment: Judgment, unit: str, why: str, do: str, *needs: str, **data: Any) -> Line:
    """A line from a judgment."""
    open_ = judgment.verdict == "NOT PROVEN"
    return Line(
        group, about, judgment.verdict, why, "" if judgment.verdict == "GO" else do, judgment.reading, unit, judgment.limits, judgment.chance,
        frozenset(needs) if open_ else frozenset(), data,
    )  # fmt: skip


# ---- sensors


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
    good = [name for name in seen.driven() if not _slips(seen, name)]
    if len(good) >= 2:
        return [Line("log", "speed sensors", "GO", f"gears {', '.join(good)} fit the record with one pair of tooth counts")]
    if not seen.driven():
        return [not_proven("log", "speed sensors", "no gear was held long enough to compare the speeds", "hold two gears for 20 s each", "warm")]
    return [not_proven("log", "speed sensors", "one gear alone cannot tell a tooth count from another ratio", "hold a second gear for 20 s", "warm")]


# ---- ratio


def ratio_lines(seen: Seen, within: float, rule: Any, lost: Mapping[str, str]) -> list[Line]:
    """Every gear of the record: measured against exact ratio; ``lost`` says what the gears show that do not come."""
    return [_ratio_line(seen, name, within, rule, lost) for name in seen.gears]


def _ratio_line(seen: Seen, name: str, within: float, rule: Any, lost: Mapping[str, str]) -> Line:
    about, measured, exact = f"ratio in {name}", seen.ratio(name), ratio(seen.gears[name])
    rows = seen.in_gear(name)
    seconds = seen.seconds(rows)
    if name in lost:
        return Line("ratio", about, "NO-GO", f"commanded, shows {lost[name]}", "see the gears that do not come", data={"gear": name, "in_gear_s": seconds, "follows": "lost"})
    if sensor_fault(seen):
        return not_proven("ratio", about, "the speeds themselves are wrong", "mend the sensors first", "mend", gear=name, in_gear_s=seconds)
    if measured is None:
        if _slips(seen, name):
            return not_proven("ratio", about, "it slips whenever it is driven", f"see the slip in {name}", gear=name, in_gear_s=seconds)
        if seconds > 0:
            return not_proven("ratio", about, f"{number(seconds, 1)} s are too short", "drive it under load for 20 s", "warm", gear=name, in_gear_s=seconds)
        return not_proven("ratio", about, "not driven", "drive it under load for 20 s", "warm", gear=name, in_gear_s=0.0)
    off = Reading(value=100 * (measured.value / exact - 1), u=abs(100 * measured.u / exact))
    data = {"gear": name, "in_gear_s": seconds, "ratio": measured.value, "ratio_u": measured.u, "exact": str(seen.gears[name].ratio_exact), "exact_ratio": exact}
    found = judge(off, Limits(lower=-100 * within, upper=100 * within), rule)
    why = f"{number(off.value, 2)} % off, at most {number(100 * within, 2)} % asked"
    if found.verdict == "NO-GO" and _slips(seen, name):
        return judged("ratio", about, found, "%", f"{why}: it slips", f"see the slip in {name}", follows=f"slip in {name}", **data)
    if found.verdict == "NO-GO":
        return judged("ratio", about, found, "%", why, "look for parts of another variant, then for slip", **data)
    more = seconds * ((off.u / found.u_to_decide) ** 2 - 1) if 0 < found.u_to_decide < off.u else 20.0
    return judged("ratio", about, found, "%", why, f"hold gear {name} for {number(max(more, 5.0), 0)} s more", "warm", **data, **({"more_s": max(more, 5.0)} if found.verdict == "NOT PROVEN" else {}))


# ---- variant


def by_ratios(family: Family) -> dict[str, Train]:
    """The trains of a family that differ in a ratio, each under the variants that share it."""
    names: dict[Any, list[str]] = {}
    for variant in family.variants:
        names.setdefault(tuple(gear.ratio_exact for gear in main_gears(family.train(variant))), []).append(variant)
    return {" and ".join(variants): family.train(variants[0]) for variants in names.values()}


def variant_lines(seen: Seen, rule: Any) -> list[Line]:
    """Which variants the measured ratios fit; none where the family's ratios are all the same."""
    trains = by_ratios(seen.family)
    if len(trains) < 2:
        return []
    about = f"gear sets of {seen.variant}"
    exact = {variants: {gear.id: gear for gear in main_gears(train)} for variants, train in trains.items()}
    own = next(variants for variants in exact if seen.variant in variants.split(" and "))
    telling = [name for name in seen.gears if len({table[name].ratio_exact for table in exact.values() if name in table}) > 1]
    usable = [name for name in telling if seen.ratio(name) is not None and not _slips(seen, name)]
    drive = [name for name in telling if name not in usable and ratio(seen.gears[name]) > 0][:2] or telling[:1]
    data: dict[str, Any] = {"gears_that_tell": telling}
    if sensor_fault(seen):
        return [not_proven("ratio", about, "the speeds themselves are wrong", "mend the sensors first", "mend", **data)]
    if not usable:
        return [not_proven("ratio", about, f"only {' '.join(telling)} differ between the variants, none of them was driven", f"hold gear {drive[0]} for 30 s", "warm", **data)]
    away = {variants: {name: fit_ratio(measured, table[name].ratio_exact, coverage=COVERAGE) for name in usable if (measured := seen.ratio(name))} for variants, table in exact.items()}
    weight = {variants: -0.5 * sum(fit.z**2 for fit in fits.values()) for variants, fits in away.items()}
    top = max(weight.values())
    share = {variants: float(np.exp(value - top)) for variants, value in weight.items()}
    chance = share[own] / sum(share.values())
    left = [variants for variants, fits in away.items() if not any(fit.excluded for fit in fits.values())]
    data |= {"fits": left, "away_in_u": {variants: {name: fit.z for name, fit in fits.items()} for variants, fits in away.items()}}
    verdict = "NOT PROVEN" if not left else "NO-GO" if own not in left else "GO" if chance >= rule.go else "NOT PROVEN"
    told = f"gear {', '.join(usable)}"
    if verdict == "GO":
        why = f"{told}: fits {own}; {' and '.join(name for name in exact if name != own)} {'excluded' if left == [own] else 'far less likely'}"
        return [Line("ratio", about, verdict, why, chance=chance, data=data)]
    if verdict == "NO-GO":
        why = f"{told}: the ratios fit {' or '.join(left)}, not {own}"
        return [Line("ratio", about, verdict, why, "open it only after the tooth counts of the sensors are checked; then count the teeth of the gear sets", chance=chance, data=data)]
    if not left:
        why, do = f"{told}: the ratios fit no variant of the family", "look for slip and for a wrong tooth count first, and whether the speeds are worse than the log shows"
        return [Line("ratio", about, verdict, why, do, chance=chance, data=data)]
    why = f"{told} cannot yet tell {' from '.join(exact)}"
    return [Line("ratio", about, verdict, why, f"hold gear {drive[0]} for 60 s at a steady speed", chance=chance, needs=frozenset({"warm"}), data=data)]


# ---- slip


def _slips(seen: Seen, name: str) -> bool:
    return any(event["gear"] == name for event in seen.of_kind("slip"))


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
    why = f"slips from {number(first['at_s'], 1)} s (alarm at {number(first['found_s'], 1)} s), up to {number(most, 0)} ± {number(2 * u, 1)} rpm at the input, {number(share, 1)} %"
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
