"""Commands about torque converters: stall test, operating points, lock-up slip."""

from __future__ import annotations

from pathlib import Path

import click

from .. import record
from ..answers import RULE
from ..answers.converter import converter_sheet, lockup_sheet, slip_limits
from ..answers.stall import stall_fleet_sheet, stall_sheet
from ..answers.stall.case import Conditions, Planned, at_altitude, stall_case
from ..answers.truck import truck_of
from ..converter import EngineToday
from ..judge import Reading
from ..sheet import Sheet
from .common import NUMBER, RECORD, Plain, Quantity, Step, answers_with_sheets, command, loaded


@command(Step.ROAD)
@click.argument("file", metavar="FAMILY", type=RECORD)
@click.option("--fleet", required=True, type=RECORD, help="Fleet file with trucks, engines and converters.")
@click.option("--truck", help="Truck of the fleet; every truck unless given.")
@click.option("--reached", "measured", type=Quantity("rpm"), help="Stall speed that was measured on it, for example 1815rpm or 1815±5rpm.")
@click.option("--in-gear", "gear", help="Gear of the test; the lowest forward gear unless given.")
@click.option("--altitude", type=Plain("m"), help="Altitude, for a naturally aspirated engine; sea level unless given.")
@click.option("--air", type=Plain("c"), help="Temperature of the air there; that of the standard atmosphere unless given.")
@click.option("--torque-factor", type=NUMBER, help="Torque of the engine today over its curve, instead of the altitude: what a turbocharged engine keeps.")
@click.option("--torque-u", type=Plain("pct"), default="0%", help="Standard uncertainty of the engine torque, percent.")
@click.option("--k-u", type=Plain("pct"), default="0%", help="Standard uncertainty of the capacity factor, percent.")
@click.option("--accessory", type=Quantity("nm"), help="Torque of accessories besides those that the curve counts.")
@click.option("--allow", type=Plain("rpm"), help="Difference from the computed speed that proves no fault; the record's unless given.")
@click.option("--fluid-temp", type=Plain("c"), help="Fluid temperature at which the stall begins; 70 °C (common practice) unless given.")
@click.option("--fluid-most", type=Plain("c"), help="Fluid temperature that it must not pass; 150 °C (common practice) unless given.")
@answers_with_sheets
def stall(
    file: Path, fleet: Path, truck: str | None, measured: Reading | None, gear: str | None, altitude: float | None, air: float | None, torque_factor: float | None,
    torque_u: float, k_u: float, accessory: Reading | None, allow: float | None, fluid_temp: float | None, fluid_most: float | None,
) -> Sheet:  # fmt: skip
    """Whether a stall test passes a rating, the seconds that heat leaves, and what a measured stall speed says."""
    family, trucks = loaded(file, record.Family), loaded(fleet, record.Fleet)
    if altitude is not None and torque_factor is not None:
        raise click.UsageError("give --altitude for a naturally aspirated engine, or --torque-factor, not both")
    if air is not None and altitude is None:
        raise click.UsageError("--air needs --altitude")
    if truck is None and (measured or altitude is not None):
        raise click.UsageError("--reached and --altitude belong to one truck: give --truck")
    factor, factor_from = (1.0 if torque_factor is None else torque_factor), "as given"
    torque, source = Reading(value=factor, u=factor * torque_u / 100), factor_from if torque_factor is not None else Conditions.torque_from
    cards: tuple[str, ...] = ()
    if truck and altitude is not None:
        torque, source = at_altitude(stall_case(family, trucks, truck, gear=gear), altitude, air, torque_u / 100)
        cards = ("converter.air_torque_factor", "converter.air_correction_j1349", "road.standard_air")
    conditions = Conditions(
        torque_factor=torque, torque_from=source, accessory_nm=accessory or Reading.exact(0.0), k_factor=Reading(value=1.0, u=k_u / 100),
        start_c=fluid_temp, most_c=fluid_most, cards=cards,
    )  # fmt: skip
    if truck is None:
        return stall_fleet_sheet(family, trucks, conditions, gear=gear, title="Stall test of every truck")
    planned = Planned(stall_case(family, trucks, truck, gear=gear), conditions)
    return stall_sheet(planned, title=f"Stall test of {truck}", measured_rpm=measured, allow_rpm=allow)


@command(Step.ROAD)
@click.argument("fleet", metavar="FLEET", type=RECORD)
@click.option("--engine", help="Engine of the fleet.")
@click.option("--truck", help="Truck of the fleet, for its engine.")
@click.option("--converter", "name", help="Converter of the fleet, instead of the one behind the engine.")
@click.option("--turbine-speed", "turbines", type=Plain("rpm"), multiple=True, help="Turbine speed; may be repeated.")
@click.option("--torque-factor", type=NUMBER, default=1.0, show_default=True, help="Torque of the engine today over its curve.")
@click.option("--accessory", type=Quantity("nm"), help="Torque of accessories besides those that the curve counts.")
@answers_with_sheets
def converter(
    fleet: Path, engine: str | None, truck: str | None, name: str | None, turbines: tuple[float, ...], torque_factor: float, accessory: Reading | None
) -> Sheet:
    """Characteristic of a torque converter, and where an engine meets it at each turbine speed."""
    trucks = loaded(fleet, record.Fleet)
    if (engine is None) == (truck is None):
        raise click.UsageError(f"give --engine ({', '.join(trucks.as_dict()['engine'])}) or --truck")
    chosen = engine or str(truck_of(trucks, truck or "")["engine"])
    today = EngineToday(torque_factor=torque_factor, accessory_nm=accessory.value if accessory else 0.0)
    trucks.engine_curve(chosen)
    behind = name or str(trucks.as_dict()["engine"][chosen]["converter"])
    return converter_sheet(trucks, chosen, converter_name=name, today=today, turbine_rpm=turbines, title=f"Converter {behind} behind engine {chosen}")


@command(Step.ROAD)
@click.argument("fleet", metavar="FLEET", type=RECORD, required=False)
@click.option("--engine-reads", type=Quantity("rpm"), required=True, help="Engine speed, for example 2160rpm.")
@click.option("--turbine-reads", type=Quantity("rpm"), required=True, help="Turbine (input) speed of the same moment.")
@click.option("--quantum", "step", type=Plain("rpm"), help="Smallest change that the bus or the tool shows; where no ± is given.")
@click.option("--target", type=Plain("rpm"), help="Slip that the control aims at; the record's, else common practice.")
@click.option("--alarm", type=Plain("rpm"), help="Slip that is a fault; the record's, else common practice.")
@answers_with_sheets
def lockup(fleet: Path | None, engine_reads: Reading, turbine_reads: Reading, step: float | None, target: float | None, alarm: float | None) -> Sheet:
    """Slip of a lock-up clutch against its target and its alarm, with what the step of the display leaves open."""
    trucks = loaded(fleet, record.Fleet) if fleet else None
    engine_rpm, turbine_rpm = (
        Reading.quantized(reading.value, quantum=step) if step is not None and not reading.u else reading for reading in (engine_reads, turbine_reads)
    )
    limits, limits_from = slip_limits(trucks, target, alarm, RULE)
    return lockup_sheet(engine_rpm, turbine_rpm, limits=limits, limits_from=limits_from, title="Slip of the lock-up clutch")
