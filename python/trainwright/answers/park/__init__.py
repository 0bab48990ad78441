"""The park lock on a grade: root stress of a tooth against yield, free roll, release, and what another park gear buys and costs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import product
from typing import Any

from ... import Explanation, hazard, practice
from ...edge import number, show
from ...hold import (
    FreeRoll,
    Parked,
    ParkGear,
    ParkHold,
    ParkLock,
    compare_park_gears,
    grip_nm,
    locks,
    park_lock,
    roll_limits_49_cfr_571_114,
)
from ...judge import Judgment, Reading, Rule, settle
from ...record import Family
from ...road import Driveline
from ...sheet import Decision, Fact, Row, Sheet, Table
from .. import rule_in_words
from ..turning import Turn, turning_table
from .case import INPUTS, Case, Chosen

STEPS_PCT = (5.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0)
"""Grades of the table, beside the one that is asked for."""

LIGHT_KG = 4536.0
"""Mass up to which 49 CFR 571.114 may cover a vehicle: 10 000 lb."""


def park_sheet(
    family: Family, case: Case, *, grade_pct: float, chosen: Chosen, compare_with: str | None = None, title: str, story: str = "",
    axle_load_kg: float | None = None, tire_friction: float | None = None,
) -> Sheet:  # fmt: skip
    """One vehicle on one grade, with its own park gear and with that of another variant."""
    lock = park_lock(family, case.gear_of)
    hold = chosen.hold(lock, case, grade_pct)
    other = park_lock(family, compare_with) if compare_with else None
    parked = case.parked(grade_pct, chosen.rocking_factor)
    roll = lock.gear.free_roll(parked)
    answer = (
        f"On {grade_pct:g} % the root of a tooth ({case.gear_of}, {lock.gear.teeth} teeth) bears {show(hold.stress.von_mises_mpa, 'mpa')} "
        f"against {show(lock.strength.yield_mpa, 'mpa')} yield{_rocking(chosen)}. {_limits(hold)} "
        f"Before the pawl drops in the vehicle may roll {show(roll.roll_mm, 'mm', 0)}."
    )
    decisions = [decision(case, lock, hold, grade_pct, chosen, case.gear_of)]
    turns, turns_data = turning_table(hold.judgment, hold.budget, _turns(case, lock, grade_pct, chosen))
    tables = [_by_grade(case, chosen, {name: park_lock(family, name) for name in [case.gear_of, *([compare_with] if compare_with else [])]}, grade_pct)]
    if other and compare_with:
        other_hold = chosen.hold(other, case, grade_pct)
        decisions.append(decision(case, other, other_hold, grade_pct, chosen, compare_with))
        gained = compare_park_gears(lock.gear, other.gear, stress_factor=chosen.strength(lock).stress_factor)
        answer += (
            f" With the gear and pawl of {compare_with} it is {show(other_hold.stress.von_mises_mpa, 'mpa')}; the price is a free roll of "
            f"{show(other.gear.free_roll(parked).roll_mm, 'mm', 0)}."
        )
        tables.append(_bargain(case.gear_of, compare_with, lock, other, hold, other_hold, parked, gained.as_dict()))
    return Sheet(
        title=title,
        story=story,
        answer=answer,
        decisions=decisions,
        tables=[*tables, turns],
        facts=[*_load_facts(case, hold, chosen, lock), *_pawl_facts(lock, case, hold, roll, chosen.rule), *_grip(case, hold, grade_pct, axle_load_kg, tire_friction)],
        not_checked=not_checked(lock, axle_load_kg is not None and tire_friction is not None),
        cautions=[hazard.caution("park lock"), hazard.caution("towing")],
        cards=_cards(lock, other is not None, axle_load_kg is not None and tire_friction is not None),
        how=_how(case, lock, hold, roll, parked, chosen),
        data={
            "inputs": turns_data,
            "grade_pct": grade_pct,
            "rocking_factor": chosen.rocking_factor,
            "mass_kg": case.mass_kg.value,
            "park_gear_of": case.gear_of,
            "own": _data(lock, case, hold, roll),
            "other": {"park_gear_of": compare_with, **_data(other, case, chosen.hold(other, case, grade_pct), other.gear.free_roll(parked))} if other else None,
        },
    )  # fmt: skip


def _turns(case: Case, lock: ParkLock, grade_pct: float, chosen: Chosen) -> list[Turn]:
    """The inputs of the stress in the order of its budget, with the judgment that another value of each would give."""

    def mass(value: float) -> Judgment:
        return chosen.hold(lock, replace(case, mass_kg=Reading(value=value, u=case.mass_kg.u)), grade_pct).judgment

    def tire(value: float) -> Judgment:
        around = Reading(value=value, u=case.driveline.circumference_mm.u)
        line = Driveline(axle_ratio=case.driveline.axle_ratio, transfer_ratio=case.driveline.transfer_ratio, circumference_mm=around)
        return chosen.hold(lock, replace(case, driveline=line), grade_pct).judgment

    mass_kg, around_mm = case.mass_kg, case.driveline.circumference_mm
    return [
        Turn(INPUTS[0], Reading.exact(1.0), relative=True),
        Turn(INPUTS[1], mass_kg, "kg", mass, 0.2 * mass_kg.value, 5 * mass_kg.value),
        Turn(INPUTS[2], around_mm, "mm", tire, 0.5 * around_mm.value, 2 * around_mm.value, 0),
    ]


def _how(case: Case, lock: ParkLock, hold: ParkHold, roll: FreeRoll, parked: Parked, chosen: Chosen) -> list[Explanation]:
    """The formulas worked out with the values of one vehicle and its own gear."""
    given: dict[str, Any] = {"mass_kg": case.mass_kg.value, "driveline": case.driveline}
    tooth_n, drop = hold.stress.tooth_n, lock.pawl.as_dict()
    worked = [
        hold.load.explain(grade_pct=parked.grade_pct, rocking_factor=chosen.rocking_factor, **given),
        hold.stress.explain(torque_nm=hold.load.torque_nm, stress_factor=chosen.strength(lock).stress_factor, **lock.gear.as_dict()),
        hold.explain(**chosen.strength(lock).as_dict(), mass_kg=case.mass_kg, driveline=case.driveline),
        roll.explain(teeth=lock.gear.teeth, grade_deg=hold.load.grade_deg, **given),
        lock.pawl.ejection(tooth_n=tooth_n).explain(tooth_n=tooth_n, flank_deg=lock.pawl.flank_deg),
    ]
    if lock.window_deg is not None:
        latch = lock.pawl.latch(case.driveline, window_deg=lock.window_deg)
        worked.append(latch.explain(window_deg=lock.window_deg, driveline=case.driveline, **drop))
    if lock.tip is not None:
        worked.append(lock.pawl.tip_pressure(lock.tip, tooth_n=tooth_n).explain(**lock.tip.as_dict()))
    return worked


def _rocking(chosen: Chosen) -> str:
    return f", rocking factor {chosen.rocking_factor:g} counted" if chosen.rocking_factor > 1 else ", standing still"


def _up_to(grade_pct: float) -> str:
    return "100 % or steeper" if grade_pct >= 100 else f"{number(grade_pct, 1)} %"


def _limits(hold: ParkHold) -> str:
    return f"Yield is reached at {_up_to(hold.largest_grade_pct)}; it is a GO up to {_up_to(hold.proven_grade_pct)}."


def decision(case: Case, lock: ParkLock, hold: ParkHold, grade_pct: float, chosen: Chosen, gear_of: str) -> Decision:
    """Whether the root stress of a tooth stays below yield on a grade, and what would settle it."""
    judged = hold.judgment
    basis = (
        f"{show(judged.reading.value, 'mpa')}, standard uncertainty {show(judged.reading.u, 'mpa')}, against {show(lock.strength.yield_mpa, 'mpa')} yield; "
        f"{rule_in_words(chosen.rule)}."
    )
    settled = ""
    if judged.verdict == "NOT PROVEN":
        wanted = settle(judged, hold.budget)
        alone = "" if wanted.enough else ", and it alone cannot decide"
        settled = f"To settle it, know the {INPUTS[wanted.input]} better{alone}. It is a GO up to {_up_to(hold.proven_grade_pct)}."
    about = f"{case.name}, park gear of {gear_of}: root stress below yield on {grade_pct:g} %"
    return Decision(about, judged.verdict, judged.chance, basis, settled)


def _by_grade(case: Case, chosen: Chosen, gears: Mapping[str, ParkLock], grade_pct: float) -> Table:
    static = replace(chosen, rocking_factor=1.0)
    passes = [static] + [chosen] * (chosen.rocking_factor > 1)
    columns: list[str] = [">grade %", ">output shaft N·m"]
    for name, which in product(gears, passes):
        columns += [f">{name}{f' × {which.rocking_factor:g}' if which.rocking_factor > 1 else ''} MPa", "verdict"]
    rows = []
    for step in sorted({*STEPS_PCT, grade_pct}):
        cells, worst = [f"{step:g}", ""], "GO"
        for lock, which in product(gears.values(), passes):
            hold = which.hold(lock, case, step)
            cells[1] = cells[1] or number(hold.load.static_nm, 0)
            cells += [number(hold.stress.von_mises_mpa, 0), hold.judgment.verdict]
            worst = max(worst, hold.judgment.verdict, key=["GO", "NOT PROVEN", "NO-GO"].index)
        rows.append(Row(tuple(cells), "" if worst == "GO" else worst))
    note = "Torque at the output shaft while the vehicle stands; MPa at the root of a tooth." + (
        f" × {chosen.rocking_factor:g}: while it rocks." if chosen.rocking_factor > 1 else ""
    )
    return Table("Root stress by grade", tuple(columns), rows, note)


def _bargain(
    own: str, name: str, lock: ParkLock, other: ParkLock, hold: ParkHold, other_hold: ParkHold, parked: Parked, gained: Mapping[str, float]
) -> Table:  # fmt: skip
    def sized(gear: ParkGear) -> str:
        return f"{gear.teeth} × {gear.face_mm:g} × {gear.tooth_root_mm:g}"

    rolls = [entry.gear.free_roll(parked) for entry in (lock, other)]
    rows = [
        ("teeth × width × root thickness, mm", sized(lock.gear), sized(other.gear), "the pawl belongs to its gear: order both"),
        ("bending: torque at one stress", "1", number(gained["bending_ratio"], 3), "width × root thickness² over the lever"),
        ("shear: torque at one stress", "1", number(gained["shear_ratio"], 3), "width × root thickness"),
        ("both: torque at one stress", "1", number(gained["torque_ratio"], 3), "what counts"),
        ("yield reached at", _up_to(hold.largest_grade_pct), _up_to(other_hold.largest_grade_pct), "this mass, axle and tire"),
        ("GO up to", _up_to(hold.proven_grade_pct), _up_to(other_hold.proven_grade_pct), ""),
        ("free roll", *(show(roll.roll_mm, "mm", 0) for roll in rolls), f"× {number(gained['free_roll_ratio'], 3)}: the price of fewer teeth"),
        ("energy of that roll", *(f"{number(roll.energy_j, 0)} J" for roll in rolls), "stopped by pawl, shafts and tires"),
    ]
    return Table(f"What the gear of {name} buys and costs", ("figure", f">{own}", f">{name}", "why"), [Row(cells) for cells in rows])


def _load_facts(case: Case, hold: ParkHold, chosen: Chosen, lock: ParkLock) -> list[Fact]:
    load, stress = hold.load, hold.stress
    u = f", standard uncertainty {show(case.mass_kg.u, 'kg')}" if case.mass_kg.u else ""
    usual = f"common practice for rocking {practice.ROCKING_FACTOR_LOW:g} to {practice.ROCKING_FACTOR_HIGH:g}, no source; the choice is yours"
    return [
        Fact("mass", show(case.mass_kg.value, "kg"), f"truck, load and trailer, its brakes not counted{u}"),
        Fact("rolls on", case.rolls_on, f"rolling radius {show(load.wheel_radius_mm, 'mm', 0)}; a standing tire's loaded radius is about 3 % less, so the torque is rather too much"),
        Fact("along the grade", show(load.grade_n, "n"), f"weight × sin {number(load.grade_deg, 2)}°; no help from rolling resistance or brakes"),
        Fact("at the output shaft", show(load.torque_nm, "nm"), f"{show(load.static_nm, 'nm')} standing × rocking factor {chosen.rocking_factor:g}; {usual}"),
        Fact("on the tooth", show(stress.tooth_n, "n"), f"at {number(lock.gear.contact_diameter_mm / 2, 1)} mm radius, {number(stress.arm_mm, 1)} mm above the root"),
        Fact("bending", show(stress.bending_mpa, "mpa"), f"beam of {lock.gear.face_mm:g} × {lock.gear.tooth_root_mm:g} mm, stress factor {chosen.strength(lock).stress_factor:g}"),
        Fact("mean shear", show(stress.shear_mpa, "mpa")),
        Fact("together", show(stress.von_mises_mpa, "mpa"), f"distortion energy; margin to yield {number(hold.margin, 2)}"),
    ]  # fmt: skip


def _pawl_facts(lock: ParkLock, case: Case, hold: ParkHold, roll: FreeRoll, rule: Rule) -> list[Fact]:
    pushed = lock.pawl.ejection(tooth_n=hold.stress.tooth_n)
    leaves = "it leaves under this load once the cone is drawn" if pushed.releases else "it STICKS: ease the load with the brakes first"
    facts = [
        Fact("free roll", show(roll.roll_mm, "mm", 0), f"one tooth at most, {number(roll.energy_j, 0)} J and {number(roll.speed_km_h, 2)} km/h by then; lash and tires come on top"),
        Fact("pushes the pawl out", show(pushed.least_n, "n"), f"to {show(pushed.most_n, 'n')} by friction; {leaves}"),
    ]  # fmt: skip
    if lock.cone_half_angle_deg is not None:
        friction = lock.pawl.friction
        cone = locks(half_angle_deg=lock.cone_half_angle_deg, friction=Reading.exact(friction.lower), rule=rule)
        words = "keeps the pawl in by friction alone" if cone.verdict == "GO" else "does NOT keep the pawl in by friction alone"
        facts.append(Fact("cone", f"{lock.cone_half_angle_deg:g}°", f"half angle; {words}: it needs {cone.limits.lower:.3f}, least friction {friction.lower:g}"))
    if lock.window_deg is not None:
        latch = lock.pawl.latch(case.driveline, window_deg=lock.window_deg)
        facts.append(Fact("skips above", show(latch.road_km_h, "km_h"), f"the pawl drops in {number(1000 * latch.drop_time_s, 1)} ms and has {number(lock.window_deg, 2)}° for it"))
    if lock.tip is not None:
        tip = lock.pawl.tip_pressure(lock.tip, tooth_n=hold.stress.tooth_n)
        facts.append(Fact("pawl on tooth", show(tip.peak_mpa, "mpa"), f"contact pressure, pawl radius {lock.tip.first.radius_mm:g} mm on a flat flank, steel by common practice"))
    facts.append(_movement(case, roll))
    return facts


def _movement(case: Case, roll: FreeRoll) -> Fact:
    limit_mm = roll_limits_49_cfr_571_114(grade_pct=10.0).upper
    covered = "may cover this mass without a trailer" if case.mass_kg.value <= LIGHT_KG else "does not cover this mass"
    return Fact("for comparison", show(limit_mm, "mm", 0), f"movement on 10 % in the test of 49 CFR 571.114, which {covered}; one tooth is {number(roll.roll_mm, 0)} mm")


def _grip(case: Case, hold: ParkHold, grade_pct: float, axle_load_kg: float | None, tire_friction: float | None) -> list[Fact]:
    if axle_load_kg is None or tire_friction is None:
        return []
    grip = grip_nm(case.driveline, axle_load_kg=axle_load_kg, grade_pct=grade_pct, tire_friction=tire_friction)
    slides = "the tires SLIDE before: the vehicle goes down with the park lock engaged" if grip < hold.load.static_nm else "the tires grip"
    return [Fact("tires slide at", show(grip, "nm"), f"{show(axle_load_kg, 'kg')} on the locked axle, friction {tire_friction:g}; {slides}")]


def not_checked(lock: ParkLock, grip: bool) -> list[str]:
    """What a park lock has besides the root of a tooth."""
    missing = [
        (lock.window_deg, "The speed at which the pawl skips: the record has no space_mm and pawl_tip_mm."),
        (lock.tip, "The contact pressure of the pawl: the record has no pawl_tip_radius_mm."),
        (lock.cone_half_angle_deg, "Whether the cone keeps the pawl in: the record has no cone_half_angle_deg."),
        (grip or None, "Tire grip: with less than the torque above the tires slide, however strong the gear (--axle-load, --tire-friction)."),
    ]
    return [
        *(line for known, line in missing if known is None),
        "Pawl, pivot, case, shafts, axle and joints: the weakest of them counts, and only the root of a gear tooth is computed.",
        "Wear, cracks and hardness of the parts that are fitted; repeated blows of rocking and of shifting into Park while rolling.",
        "A transfer case in neutral: it takes the park lock off the wheels altogether. One wheel on ice: through the differential nothing holds.",
        "The vehicle maker's own rating, which may be lower and comes first.",
    ]


def _cards(lock: ParkLock, compared: bool, grip: bool) -> list[str]:
    return [
        "hold.park_load", "hold.tooth_stress", "hold.park_hold", "hold.largest_grade_pct", "hold.free_roll", "hold.ejection",
        *(["hold.locks"] if lock.cone_half_angle_deg is not None else []), *(["hold.latch", "hold.window_deg"] if lock.window_deg is not None else []),
        *(["hold.tip_pressure", "hold.pressed"] if lock.tip is not None else []), *(["hold.compare_park_gears"] if compared else []),
        *(["hold.grip_nm"] if grip else []), "hold.roll_limits_49_cfr_571_114",
    ]  # fmt: skip


def _data(lock: ParkLock, case: Case, hold: ParkHold, roll: FreeRoll) -> dict[str, object]:
    latch = lock.pawl.latch(case.driveline, window_deg=lock.window_deg) if lock.window_deg is not None else None
    return {
        "hold": hold.as_dict(),
        "free_roll": roll.as_dict(),
        "ejection": lock.pawl.ejection(tooth_n=hold.stress.tooth_n).as_dict(),
        "latch": latch.as_dict() if latch else None,
        "contact": lock.pawl.tip_pressure(lock.tip, tooth_n=hold.stress.tooth_n).as_dict() if lock.tip else None,
    }
