"""Parts about what holds by shape: one-way clutches and the park lock."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from ..answers.one_way import one_way_sheet, one_ways, placed
from ..answers.park.case import Case, Chosen, other_gear
from ..answers.park.fleet import Line, lines, park_fleet_sheet
from ..hold import park_lock
from ..record import Family
from .frame import Draw, Part, Records

CURVE_PCT = tuple(float(grade) for grade in range(36))
"""Grades of the curve."""


def one_way_parts(records: Records) -> Iterator[Part]:
    """The one-way clutch of every variant, where the family describes it and its train has one."""
    family = records.family
    if not family or not family.as_dict().get("one_way") or len(one_ways(family)) != 1:
        return
    if not family.as_dict().get("variant"):
        return
    clutches = [placed(family, variant) for variant in family.variants]
    yield Part(one_way_sheet(clutches, title=f"One-way clutch {clutches[0].element} of every variant"))


def park_parts(records: Records) -> Iterator[Part]:
    """The park lock of every truck, for every job that asks for grades."""
    family, fleet = records.family, records.fleet
    if not (family and fleet):
        return
    for job in records.asked("grades_pct"):
        grades, chosen = job["grades_pct"], Chosen(job.get("rocking_factor") or 1.0)
        sheet = park_fleet_sheet(family, fleet, grades_pct=grades, chosen=chosen, title=f"{job['id']}: {job['title']}", story=job["story"])
        static = replace(chosen, rocking_factor=1.0)
        known = [line for line in lines(family, fleet, grades, static, own=True) if len(line.cases) == 1]
        middle = next((grade for grade in grades if any(line.verdict(grade) != "GO" for line in known)), grades[-1])
        own, other = (lines(family, fleet, [middle], static, own=which) for which in (True, False))
        worst = max(known, key=lambda line: line.holds(middle)[-1].stress.von_mises_mpa)
        yield Part(sheet, {
            f"{worst.truck}: root stress against the grade, with both gears, standing (line) and rocking (dashes).": _curves(family, worst.cases[0], chosen),
            f"Every truck on {middle:g} %, standing still: own gear (filled) and the other (open), ± 2 standard uncertainties.": _trucks(own, other, middle),
        })  # fmt: skip


def _curves(family: Family, case: Case, chosen: Chosen) -> Draw:
    locks = {name: park_lock(family, name) for name in (case.gear_of, other_gear(family, case.gear_of)) if name}
    strength = next(iter(locks.values())).strength
    passes = [replace(chosen, rocking_factor=1.0)] + [chosen] * (chosen.rocking_factor > 1)
    curves = {
        f"{name}, {lock.gear.teeth} teeth": [
            lock.gear.stress_on_grade(
                case.driveline, mass_kg=case.mass_kg.value, grade_pct=CURVE_PCT, rocking_factor=which.rocking_factor,
                stress_factor=which.strength(lock).stress_factor,
            )["von_mises_mpa"].tolist()
            for which in passes
        ]
        for name, lock in locks.items()
    }  # fmt: skip
    return lambda plots: plots.stress_by_grade(f"Park lock of {case.name}", CURVE_PCT, curves, strength.yield_mpa, strength.stress_u_rel)


def _trucks(own: list[Line], other: list[Line], grade_pct: float) -> Draw:
    points = [
        (line.truck, which, hold.stress.von_mises_mpa, hold.judgment.reading.u, line.verdict(grade_pct))
        for which, found in (("own gear", own), ("other gear", other))
        for line in found
        for hold in line.holds(grade_pct)[-1:]
    ]
    limit_mpa = own[0].lock.strength.yield_mpa
    return lambda plots: plots.stress_by_truck(f"Park lock on {grade_pct:g} %", points, limit_mpa)
