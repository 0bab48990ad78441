"""Parts about torque converters: stall tests made and asked for."""

from __future__ import annotations

from collections.abc import Iterator

from ..answers.converter import converter_sheet
from ..answers.stall import stall_fleet_sheet, stall_sheet
from ..answers.stall.case import Conditions, Planned, stall_case
from ..converter import Characteristic, EngineCurve, impeller_torque_nm
from ..judge import Reading
from .frame import Draw, Part, Records

STEP = 0.01
"""Of the speed ratio, in the picture of a characteristic."""


def stall_parts(records: Records) -> Iterator[Part]:
    """The stall test that was made, the one that was asked for, and every truck, where a job is about one."""
    family, fleet = records.family, records.fleet
    if not (family and fleet and fleet.as_dict().get("converter_rules")):
        return
    jobs = [job for key in ("measured", "asked") for job in records.asked(key)]
    for job in {job["id"]: job for job in jobs}.values():
        for test, what in ((job.get("measured"), "measured"), (job.get("asked"), "asked for")):
            if not test:
                continue
            planned = Planned(stall_case(family, fleet, test["truck"]), Conditions(start_c=test.get("fluid_c")))
            speed = test.get("n_stall_rpm")
            measured = Reading.exact(speed) if speed else None
            sheet = stall_sheet(planned, title=f"{job['id']}: {job['title']}: {test['truck']}, {what}", story=job["story"], measured_rpm=measured)
            caption = f"{test['truck']}: the engine's torque and what the impeller takes while the turbine stands; they cross at the stall speed."
            yield Part(sheet, {caption: _crossing(planned, speed)})
        yield Part(stall_fleet_sheet(family, fleet, Conditions(), title=f"{job['id']}: the same stall on every truck"))


def converter_parts(records: Records) -> Iterator[Part]:
    """The characteristic of every converter, behind each of its engines, where a job is about a stall."""
    fleet = records.fleet
    if not fleet or not (records.asked("measured") or records.asked("asked")):
        return
    for name, engine in fleet.as_dict()["engine"].items():
        sheet = converter_sheet(fleet, name, title=f"Converter {engine['converter']} behind engine {name}")
        caption = f"Converter {engine['converter']}: torque ratio, efficiency and capacity factor over the speed ratio."
        yield Part(sheet, {caption: _characteristic(engine["converter"], fleet.characteristic(engine["converter"]))})


def _speeds(curve: EngineCurve, most_rpm: float) -> list[float]:
    first, last = curve.speed_rpm[0], min(curve.speed_rpm[-1], most_rpm)
    return [first + (last - first) * place / 100 for place in range(101)]


def _crossing(planned: Planned, measured_rpm: float | None) -> Draw:
    case, plan, point = planned.case, planned.plan, planned.stall.point
    speeds = _speeds(case.engine, 1.5 * point.engine_rpm)
    factor, accessory = planned.conditions.torque_factor.value, planned.conditions.accessory_nm.value
    engine = [factor * torque - accessory for torque in case.engine.torque_at_nm(speed_rpm=speeds).tolist()]
    impeller = impeller_torque_nm(impeller_rpm=speeds, k_rpm_per_sqrt_nm=point.k_rpm_per_sqrt_nm).tolist()
    stall, limit = (point.engine_rpm, point.impeller_nm), (plan.limit_rpm, plan.limit_engine_nm)
    allow = case.allow_rpm if measured_rpm else None
    title = f"Stall of {case.truck}"
    return lambda plots: plots.engine_against_converter(title, speeds, engine, impeller, stall, measured_rpm, allow, None if plan.allowed else limit)


def _characteristic(name: str, characteristic: Characteristic) -> Draw:
    first, last = characteristic.speed_ratio[0], characteristic.speed_ratio[-1]
    ratios = [min(first + STEP * place, last) for place in range(int((last - first) / STEP) + 2)]
    torque = characteristic.torque_ratio_at(speed_ratio=ratios).tolist()
    capacity = characteristic.capacity_factor_at(speed_ratio=ratios).tolist()
    efficiency = [ratio * times for ratio, times in zip(ratios, torque)]
    coupling = characteristic.coupling_point() if min(torque) <= 1 else None
    return lambda plots: plots.converter_characteristic(f"Converter {name}", ratios, torque, efficiency, capacity, coupling)
