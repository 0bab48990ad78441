"""The lines of a proof run that come from its ratios: every gear of the record, and the variant that the ratios fit."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np

from ...edge import number
from ...judge import Limits, Reading, judge
from ...record import Family
from ...train import Train, fit_ratio
from ..gears import main_gears, ratio
from .line import Line, judged, not_proven
from .seen import Seen
from .sensors import sensor_fault

COVERAGE = 0.99
"""Chance that the true variant is kept when ratios are fitted."""


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
        if seen.slips(name):
            return not_proven("ratio", about, "it slips whenever it is driven", f"see the slip in {name}", gear=name, in_gear_s=seconds)
        if seconds > 0:
            return not_proven("ratio", about, f"{number(seconds, 1)} s are too short", "drive it under load for 20 s", "warm", gear=name, in_gear_s=seconds)
        return not_proven("ratio", about, "not driven", "drive it under load for 20 s", "warm", gear=name, in_gear_s=0.0)
    off = Reading(value=100 * (measured.value / exact - 1), u=abs(100 * measured.u / exact))
    data = {"gear": name, "in_gear_s": seconds, "ratio": measured.value, "ratio_u": measured.u, "exact": str(seen.gears[name].ratio_exact), "exact_ratio": exact}
    found = judge(off, Limits(lower=-100 * within, upper=100 * within), rule)
    why = f"{number(off.value, 2)} % off, at most {number(100 * within, 2)} % asked"
    if found.verdict == "NO-GO" and seen.slips(name):
        return judged("ratio", about, found, "%", f"{why}: it slips", f"see the slip in {name}", follows=f"slip in {name}", **data)
    if found.verdict == "NO-GO":
        return judged("ratio", about, found, "%", why, "look for parts of another variant, then for slip", **data)
    more = seconds * ((off.u / found.u_to_decide) ** 2 - 1) if 0 < found.u_to_decide < off.u else 20.0
    return judged("ratio", about, found, "%", why, f"hold gear {name} for {number(max(more, 5.0), 0)} s more", "warm", **data, **({"more_s": max(more, 5.0)} if found.verdict == "NOT PROVEN" else {}))


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
    usable = [name for name in telling if seen.ratio(name) is not None and not seen.slips(name)]
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
