"""Parts about trucks on grades."""

from __future__ import annotations

from collections.abc import Iterator

from .. import practice
from ..answers.climb import Road, climb_sheet
from ..answers.grade import grade_sheet
from ..answers.grade.fleet import Worst, fleet_grades_sheet, worst_cases
from ..answers.grade.frame import Hot, Truck, asked_of
from ..edge import show
from ..tow import HeatModel, HeatNode, RoadPiece
from .frame import Draw, Part, Records

STEPS_PCT = tuple(0.25 * step for step in range(53))
"""Grades of the curves: 0 to 13 %."""

AIR_C = 35.0
"""A hot day, for the mountain of the demonstration."""

MOUNTAIN = ((4000.0, 1.0), (5000.0, 3.5), (9000.0, 6.0), (3000.0, 7.0), (2500.0, 2.0), (9000.0, -4.0), (4000.0, 0.0))
"""A mountain of the demonstration, invented: length and grade of its pieces."""


def grade_parts(records: Records) -> Iterator[Part]:
    """Every truck over the road table, the one that is asked most of, and that one over a mountain."""
    family, fleet = records.family, records.fleet
    if not (family and fleet) or not fleet.as_dict().get("road") or not family.as_dict().get("variant") or not fleet.trucks:
        return
    cases = [case for found in worst_cases(family, fleet) for case in found]
    if not cases:
        return
    yield Part(fleet_grades_sheet(family, fleet, title="Every truck over the road table"))
    worst = max(cases, key=lambda case: case.gear.use_of_input)
    asked = asked_of(fleet)
    hot = usual_heat(AIR_C)
    sheet = grade_sheet(
        worst.truck, grade_pct=worst.grade_pct, speed_km_h=worst.asked_km_h, grades=asked, hot=hot,
        title=f"{worst.truck.name} on {worst.grade_pct:g} % at {show(worst.asked_km_h, 'km_h', 0)}, gear by gear",
        story="The truck that uses most of its rated input torque.",
    )  # fmt: skip
    yield Part(sheet, {f"{worst.truck.name}: torque of every gear against the grade at {show(worst.asked_km_h, 'km_h', 0)}, and the gear that holds it.": _torques(worst)})
    yield _mountain(worst.truck, hot)


def usual_heat(air_c: float) -> Hot:
    """The sump by common practice, for records that say nothing of it."""
    node = HeatNode(
        heat_capacity_j_k=practice.UNIT_HEAT_CAPACITY_J_K, case_w_k=practice.CASE_COOLING_LOW_W_K, air_c=air_c, cooler_w_k=practice.TOW_COOLER_LOW_W_K, cooler_air_c=air_c
    )  # fmt: skip
    model = HeatModel(drag_nm=0.0, pump_kpa=0.0, pump_l_min=0.0, pump_efficiency=1.0, node=node, limit_c=practice.SUMP_ALARM_LOW_C)
    source = "common practice, no source: heat capacity, case, cooler, start and limit; drag and pump are taken to be in the efficiencies of the record"
    return Hot(model, practice.SUMP_NORMAL_HIGH_C, source)


def _torques(worst: Worst) -> Draw:
    rig, names = worst.truck.rig, worst.truck.rig.gearing.names
    gears: dict[str, list[tuple[float, float]]] = {}
    chosen = []
    for step in STEPS_PCT:
        pull = rig.pull(grade_pct=step, speed_km_h=worst.asked_km_h)
        for name, gear in pull.gears.items():
            if gear.standing in ("holds", "little reserve", "too weak"):
                gears.setdefault(name, []).append((step, gear.input_nm))
        if pull.gear:
            chosen.append((step, pull.gear.input_nm))
    shown = {name: gears[name] for name in names if name in gears}
    rated, speed = rig.gearing.rated_input_nm, show(worst.asked_km_h, "km_h", 0)
    return lambda plots: plots.torque_by_grade(f"Torque of {worst.truck.name} against the grade", shown, chosen, rated, speed)


def _mountain(truck: Truck, hot: Hot) -> Part:
    road = Road([RoadPiece(length_m=length, grade_pct=grade, speed_km_h=80.0) for length, grade in MOUNTAIN], "a mountain of the demonstration, invented")
    title = f"{truck.name} over a mountain on a day of {show(AIR_C, 'c', 0)}"
    sheet = climb_sheet(truck, road, hot, title=title, story="At 80 km/h where a gear holds it, slower where none does.")
    short = [RoadPiece(length_m=piece.length_m / 20, grade_pct=piece.grade_pct, speed_km_h=piece.speed_km_h) for piece in road.pieces for _ in range(20)]
    _, driven = truck.rig.climb(hot.model, short, start_c=hot.start_c)
    distance, height = [0.0], [0.0]
    for piece in short:
        distance.append(distance[-1] + piece.length_m / 1000)
        height.append(height[-1] + piece.length_m * piece.grade_pct / 100)
    temp_c = [hot.start_c, *(piece.end_c for piece in driven)]
    speed = [driven[0].speed_km_h, *(piece.speed_km_h for piece in driven)]
    limit_c = hot.model.limit_c
    return Part(sheet, {
        f"{truck.name} over the mountain: sump against the distance.": lambda plots: plots.temperature_along(title, distance, temp_c, height, limit_c, speed),
    })  # fmt: skip
