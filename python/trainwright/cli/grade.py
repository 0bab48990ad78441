"""The command about a truck on a grade or along a road."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import click

from .. import practice, record
from ..answers.climb import climb_sheet, road_of
from ..answers.grade import grade_sheet
from ..answers.grade.fleet import fleet_grades_sheet
from ..answers.grade.frame import Hot, Truck, asked_of, trucks_on_road
from ..answers.truck import tires_of
from ..edge import show
from ..judge import Reading
from ..sheet import Sheet
from ..tow import ElevationNoise, HeatModel, HeatNode
from .common import NUMBER, RECORD, Plain, Quantity, Step, answers_with_sheets, command, loaded


@command(Step.ROAD)
@click.argument("file", metavar="FAMILY", type=RECORD)
@click.option("--fleet", required=True, type=RECORD, help="Fleet file with trucks, engines and the road table.")
@click.option("--truck", help="Truck of the fleet; every truck over the road table unless given.")
@click.option("--grade", "on_grade", type=Quantity("pct"), help="Grade; unless given, the one of the road table on which the truck uses most of its rating.")
@click.option("--speed", type=Plain("km_h"), help="Speed asked for; that of the road table on this grade unless given.")
@click.option("--profile", type=RECORD, help="Road to drive, CSV: length_m,grade_pct,speed_km_h or distance_m,elevation_m (also _km, _mi, _ft, speed_mph).")
@click.option("--tire", help="Tire of the fleet, where it knows candidates only.")
@click.option("--trailer", type=Quantity("kg"), help="Mass of the trailer; the record's unless given.")
@click.option("--pressure", type=Quantity("kpa"), help="Line pressure for the clutch margins; the record's greatest unless given.")
@click.option("--oil-density", type=NUMBER, help="Density of the hot oil, kg/m3, so that the head of turning oil counts.")
@click.option("--start", type=Plain("c"), help="Sump at the start.")
@click.option("--alarm", type=Plain("c"), help="Temperature that the sump must not pass.")
@click.option("--air", type=Plain("c"), help="Air around case and cooler.")
@click.option("--cooler", type=NUMBER, help="What the cooler takes for each kelvin between sump and air, W/K.")
@click.option("--case", "case_w_k", type=NUMBER, help="What the case gives to the air for each kelvin, W/K.")
@click.option("--heat-capacity", type=NUMBER, help="Heat that warms unit and fluid by 1 K, kJ/K.")
@click.option("--drag", type=Plain("nm"), default="0Nm", show_default=True, help="Drag at the input that the efficiencies do not hold.")
@click.option("--window", type=NUMBER, help="Window in which a grade is taken from elevations, m.")
@click.option("--piece", type=NUMBER, default=200.0, show_default=True, help="Length of the pieces that elevations are cut into, m.")
@click.option("--elevation-u", type=NUMBER, help="Standard uncertainty of an elevation, m.")
@click.option("--correlation", type=NUMBER, help="Distance over which its error stays alike, m.")
@click.option("--practice", "usual", is_flag=True, help="Take what is not given of sump and elevations from common practice, and say so.")
@answers_with_sheets
def grade(
    file: Path, fleet: Path, truck: str | None, on_grade: Reading | None, speed: float | None, profile: Path | None, tire: str | None, trailer: Reading | None,
    pressure: Reading | None, oil_density: float | None, start: float | None, alarm: float | None, air: float | None, cooler: float | None, case_w_k: float | None,
    heat_capacity: float | None, drag: float, window: float | None, piece: float, elevation_u: float | None, correlation: float | None, usual: bool,
) -> Sheet | list[Sheet]:  # fmt: skip
    """Gear, torque, share of rating and minutes left of a truck on a grade or along a road."""
    family, trucks = loaded(file, record.Family), loaded(fleet, record.Fleet)
    if truck is None:
        return fleet_grades_sheet(family, trucks, title="Every truck over the road table")
    found = trucks_on_road(family, trucks, truck, tire=tire, trailer_kg=trailer.value if trailer else None)
    if len(found) > 1:
        raise click.UsageError(
            f"the fleet does not know the tire or the trailer of {truck}: give --tire ({', '.join(tires_of(trucks, truck))}) and --trailer, or ask for every truck, "
            "which shows the range"
        )
    one = replace(found[0], pressure_kpa=pressure or found[0].pressure_kpa, oil_density_kg_m3=oil_density)
    hot = _hot({"start": start, "alarm": alarm, "air": air, "cooler": cooler, "case": case_w_k, "heat-capacity": heat_capacity}, drag, usual)
    if profile:
        if hot is None:
            raise click.UsageError("a road needs the sump: give --start, --alarm, --air, --cooler, --case and --heat-capacity, or --practice for usual figures")
        noise = _noise(elevation_u, correlation, usual)
        road = road_of(profile, speed_km_h=speed, window_m=window or (practice.GRADE_WINDOW_M if usual else None), noise=noise, piece_m=piece)
        return climb_sheet(one, road, hot, title=f"{truck} along {profile.name}")
    asked = asked_of(trucks)
    grade_pct = on_grade.value if on_grade else None
    if grade_pct is not None and speed is None:
        speed = dict(asked).get(grade_pct)
        if speed is None:
            raise click.UsageError(f"the road table has no speed for {grade_pct:g} %: give --speed")
    if grade_pct is None or speed is None:
        grade_pct, speed = max(asked, key=lambda step: _use(one, *step))
    return grade_sheet(one, grade_pct=grade_pct, speed_km_h=speed, grades=asked, hot=hot, title=f"{truck} on {grade_pct:g} % at {show(speed, 'km_h', 0)}")


def _use(truck: Truck, grade_pct: float, speed_km_h: float) -> float:
    """Share of the rated input torque; the grade with most of it is shown unless another is asked for."""
    gear = truck.rig.pull(grade_pct=grade_pct, speed_km_h=speed_km_h).gear
    return gear.use_of_input if gear else 0.0


def _hot(given: dict[str, float | None], drag_nm: float, usual: bool) -> Hot | None:
    """The sump as given, the rest by common practice where that is asked for; None where it is not all known."""
    common = {
        "start": practice.SUMP_NORMAL_HIGH_C, "alarm": practice.SUMP_ALARM_LOW_C, "cooler": practice.TOW_COOLER_LOW_W_K, "case": practice.CASE_COOLING_LOW_W_K,
        "heat-capacity": practice.UNIT_HEAT_CAPACITY_J_K / 1000,
    }  # fmt: skip
    taken = [name for name in common if given[name] is None and usual]
    known = {name: common[name] if name in taken else value for name, value in given.items()}
    missing = [name for name, value in known.items() if value is None]
    if missing:
        if usual or any(value is not None for value in given.values()):
            raise click.UsageError(f"for the sump also give {', '.join(f'--{name}' for name in missing)}" + ("" if usual else ", or --practice for usual figures"))
        return None
    whole = {name: value for name, value in known.items() if value is not None}
    node = HeatNode(
        heat_capacity_j_k=1000 * whole["heat-capacity"], case_w_k=whole["case"], air_c=whole["air"], cooler_w_k=whole["cooler"], cooler_air_c=whole["air"]
    )  # fmt: skip
    model = HeatModel(drag_nm=drag_nm, pump_kpa=0.0, pump_l_min=0.0, pump_efficiency=1.0, node=node, limit_c=whole["alarm"])
    source = f"common practice, no source: {', '.join(taken)}; the rest as given" if taken else "as given"
    return Hot(model, whole["start"], f"{source}. Drag and pump are taken to be in the efficiencies of the record" + (f", but for {drag_nm:g} N·m" if drag_nm else ""))


def _noise(u_m: float | None, correlation_m: float | None, usual: bool) -> ElevationNoise | None:
    if usual:
        u_m = practice.SATELLITE_ELEVATION_U_M if u_m is None else u_m
        correlation_m = practice.SATELLITE_ELEVATION_CORRELATION_M if correlation_m is None else correlation_m
    return ElevationNoise(u_m=u_m, correlation_m=correlation_m) if u_m is not None and correlation_m is not None else None
