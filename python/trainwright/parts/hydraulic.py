"""Parts about the hydraulics: pump, line pressure, cooler flow."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from ..answers.capacity import truck_load, working_point
from ..answers.cooler import cooler_sheet
from ..answers.line_pressure import Taken, gear_pressures, line_sheet, pattern_sheet, stated_kpa
from ..answers.pump import pump_sheet, ranges_of
from ..fluid import Fluid
from ..hydraulic import Pump, oil_at
from ..judge import Reading
from ..record import Family
from .frame import Draw, Part, Records

HOT_C = (90.0, 120.0)
"""Temperatures at which the pump is looked at: where its leak is stated, and a hot day with a trailer."""


def pump_parts(records: Records) -> Iterator[Part]:
    """The pump of every variant at a hot idle, where the record states its idle speed and what the transmission takes, each in the
    first fluid that is approved for its linings."""
    family, fluids = records.family, records.fluids
    written = (family.as_dict().get("pump") if family else None) or {}
    if not (family and fluids and written.get("idle_rpm") and written.get("demand_l_min") is not None):
        return
    speed, demand = Reading.exact(written["idle_rpm"]), Reading.exact(written["demand_l_min"])
    approved = {name: entry["friction_approved"] for name, entry in fluids.as_dict()["fluid"].items()}
    for variant in family.variants:
        name = next((name for name, variants in approved.items() if variant in variants), None)
        if name is None:
            continue
        fluid, ranges = fluids.fluid(name), ranges_of(family, variant)
        pump = family.pump(fluid)
        sheet = pump_sheet(
            pump, fluid, temps_c=[Reading.exact(temp) for temp in HOT_C], speed_rpm=speed, ranges=ranges, demand_l_min=demand,
            demand_from="demand_l_min in the record", name=name, title=f"Pump of {variant} at a hot idle in {name}",
        )  # fmt: skip
        yield Part(sheet, _pump_picture(pump, fluid, max(ranges.values(), key=lambda one: one.value).value, speed.value, demand.value))


def _pump_picture(pump: Pump, fluid: Fluid, pressure_kpa: float, idle_rpm: float, demand_l_min: float) -> dict[str, Draw]:
    speeds = np.linspace(0.0, 2.5 * idle_rpm, 101)
    curves = {}
    for temp_c in HOT_C:
        viscosity = oil_at(fluid, temp_c=Reading.exact(temp_c)).viscosity_mpa_s.value
        flow = pump.pump_flow(speed_rpm=speeds, pressure_kpa=pressure_kpa, viscosity_mpa_s=viscosity)["delivered_l_min"]
        curves[f"delivered at {temp_c:g} °C"] = flow.tolist()
    displaced = (speeds * pump.displacement_cm3_rev.value / 1000).tolist()
    caption = f"Flow against speed at {pressure_kpa:g} kPa, the greatest that the record states. Where a line meets the demand, the pressure falls."
    return {caption: lambda plots: plots.flow_by_speed("Flow of the pump against speed", speeds.tolist(), displaced, curves, demand_l_min, idle_rpm)}


def line_parts(records: Records) -> Iterator[Part]:
    """Pressure that every gear needs against the gauge, for every job with a gauge pressure and trucks."""
    family, fleet, instruments = records.family, records.fleet, records.instruments
    if not (family and fleet and instruments):
        return
    for job in records.asked("gauge_kpa", "trucks"):
        for truck in job["trucks"]:
            load = truck_load(family, fleet, truck)
            gauge = instruments.reading("pressure_gauge", job["gauge_kpa"])
            working = working_point(family, load.variant, gauge, load.turbine_nm, turbine_from=load.source)
            train, packs = family.train(load.variant), family.packs(load.variant)
            stated = stated_kpa(family, load.variant, stall=True, reverse=False)
            title = f"{job['id']}: which gears hold at this line pressure, truck {truck} ({load.variant})"
            sheet = line_sheet(train, packs, working, title=title, story=job["story"], stated=stated)
            points = [(one.gear, one.element, one.pressure.needed.strong_spring_kpa, one.pressure.verdict) for one in gear_pressures(train, packs, working)]
            yield Part(sheet, _line_picture(family, load.variant, points, gauge))


def _line_picture(family: Family, variant: str, points: list[tuple[str, str, float, str]], gauge: Reading) -> dict[str, Draw]:
    most_kpa = family.as_dict()["variant"][variant]["line_control_max_kpa"]
    caption = "Pressure that each gear needs (point) against the gauge (line, ± 2 standard uncertainties) and the most that the control can give (dashes)."
    return {caption: lambda plots: plots.pressure_by_gear("Pressure needed by gear", points, gauge.value, gauge.u, most_kpa)}


def pattern_parts(records: Records) -> Iterator[Part]:
    """What the line pressures of a job point to."""
    family, instruments = records.family, records.instruments
    if not (family and instruments):
        return
    for job in records.asked("pressure", "variant"):
        taken = [
            Taken(one["gear"], one["stall"], one["temperature_c"], instruments.reading("pressure_gauge", one["gauge_kpa"])) for one in job["pressure"]
        ]
        yield Part(pattern_sheet(family, job["variant"], taken, title=f"{job['id']}: {job['title']}", story=job["story"]))


def cooler_parts(records: Records) -> Iterator[Part]:
    """Return flow of the cooler of every job that caught it."""
    fluids = records.fluids
    if not fluids or not fluids.as_dict().get("cooler"):
        return
    limits = fluids.cooler_limits()
    for job in records.asked("cooler_test"):
        test, name = job["cooler_test"], job.get("fluid")
        at_c = test["temperature_c"]
        temp_c = records.instruments.reading("thermometer", at_c) if records.instruments else Reading.exact(at_c)
        volume_l = Reading.relative(test["volume_l"], u_rel=test["u_rel_volume"])
        time_s = Reading(value=test["time_s"], u=test["time_u_s"])
        fluid = fluids.fluid(name) if name else None
        sheet = cooler_sheet(
            limits, volume_l=volume_l, time_s=time_s, temp_c=temp_c, fluid=fluid, name=name or "", title=f"{job['id']}: {job['title']}", story=job["story"]
        )
        flow = sheet.data["flow_l_min"]
        table = list(zip(limits.temperature_c, limits.least_flow_l_min))
        verdict = sheet.decisions[0].verdict if sheet.decisions else "NOT PROVEN"
        caption = "Least flow against fluid temperature, and the flow that was caught (± 2 standard uncertainties)."
        point = (temp_c.value, temp_c.u, flow["value"], flow["u"], verdict)
        yield Part(sheet, {caption: _cooler_draw(table, point)})


def _cooler_draw(table: list[tuple[float, float]], point: tuple[float, float, float, float, str]) -> Draw:
    return lambda plots: plots.cooler_flow("Cooler flow against temperature", table, point)
