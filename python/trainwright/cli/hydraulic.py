"""Commands about the hydraulics: pump, line pressure, cooler flow."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from .. import edge, record
from ..answers.capacity import Working, truck_load, working_point
from ..answers.cooler import cooler_form, cooler_sheet
from ..answers.line_pressure import HOT_FROM_C, KEPT, Taken, line_sheet, pattern_sheet, stated_kpa, with_pressure
from ..answers.pump import Clearance, pump_sheet, ranges_of
from ..error import Error
from ..judge import Reading
from ..sheet import Sheet
from .common import NUMBER, RECORD, Named, Plain, Quantity, Step, answers_with_sheets, command, loaded, variant_option


@command(Step.FLUID)
@click.argument("file", metavar="FAMILY", type=RECORD)
@variant_option
@click.option("--fluids", required=True, type=RECORD, help="Fluids file.")
@click.option("--fluid", required=True, help="Fluid of the record.")
@click.option("--at", "temps", required=True, multiple=True, type=Quantity("c"), help="Fluid temperature; may be repeated.")
@click.option("--pump-speed", "speed", type=Quantity("rpm"), help="Speed of the pump at idle; the record's unless given.")
@click.option("--pressure", type=Quantity("kpa"), help="Line pressure; every range of the record unless given.")
@click.option("--demand", type=Quantity("l_min"), help="What lubrication, cooler, valves and seal rings take; the record's unless given.")
@click.option("--clearance", "measured", multiple=True, type=Named("mm"), help="Clearance measured, as side=0.06±0.005mm; may be repeated.")
@click.option("--new", multiple=True, type=Named("mm"), help="The same clearance when new, by the maker of the pump.")
@click.option("--limit", multiple=True, type=Named("mm"), help="Its limit, by the maker of the pump.")
@answers_with_sheets
def pump(
    file: Path, variant: str | None, fluids: Path, fluid: str, temps: tuple[Reading, ...], speed: Reading | None, pressure: Reading | None,
    demand: Reading | None, measured: tuple[Any, ...], new: tuple[Any, ...], limit: tuple[Any, ...],
) -> Sheet:  # fmt: skip
    """Whether the pump covers what the transmission takes at a hot idle, in every range, and from which speed on."""
    family, oil = loaded(file, record.Family), loaded(fluids, record.Fluids).fluid(fluid)
    variant = variant or family.variants[0]
    written = family.as_dict().get("pump") or {}
    demand_from = "as given"
    if speed is None:
        if not written.get("idle_rpm"):
            raise click.UsageError("give --pump-speed: the record states no idle speed of the pump")
        speed = Reading.exact(written["idle_rpm"])
    if demand is None:
        if written.get("demand_l_min") is None:
            raise click.UsageError("give --demand: the record does not state what the transmission takes")
        demand, demand_from = Reading.exact(written["demand_l_min"]), "demand_l_min in the record"
    ranges = {"as given": pressure} if pressure else ranges_of(family, variant)
    return pump_sheet(
        family.pump(oil), oil, temps_c=temps, speed_rpm=speed, ranges=ranges, demand_l_min=demand, demand_from=demand_from, name=fluid,
        clearances=_clearances(measured, new, limit), title=f"Pump of {variant} at idle in {fluid}",
    )  # fmt: skip


def _clearances(measured: tuple[Any, ...], new: tuple[Any, ...], limit: tuple[Any, ...]) -> list[Clearance]:
    stated_new, stated_limit = dict(new), dict(limit)
    for place in {*stated_new, *stated_limit} - {name for name, _ in measured}:
        raise click.UsageError(f"--new or --limit names {place}, which was not measured: give --clearance {place}=...")
    found = []
    for place, typed in measured:
        if place not in stated_new or place not in stated_limit:
            raise click.UsageError(f"give --new {place}=... and --limit {place}=... of the maker of this pump: there is no general limit")
        found.append(Clearance(place, typed.reading, stated_new[place].reading, stated_limit[place].reading.value))
    return found


class PressureTaken(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """A reading of the line pressure: ``"2 idle 85C 300kPa"``."""

    name = '"GEAR idle|stall TEMPERATURE PRESSURE"'

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        if not isinstance(value, str):
            return value
        parts = value.split()
        if len(parts) != 4 or parts[1] not in ("idle", "stall"):
            self.fail(f'{value!r} is no reading; write gear, idle or stall, temperature and pressure as "2 idle 85C 300kPa"', param, ctx)
        try:
            temp, kpa = edge.read(parts[2], "c", "temperature"), edge.read(parts[3], "kpa", "pressure")
        except Error as error:
            self.fail(str(error), param, ctx)
        return Taken(parts[0], parts[1] == "stall", temp.value, kpa)


@command(Step.HOLD)
@click.argument("file", metavar="FAMILY", type=RECORD)
@variant_option
@click.option("--gauge", type=Quantity("kpa"), help="Gauge pressure read at stall in a forward range.")
@click.option("--gauge-reverse", type=Quantity("kpa"), help="Gauge pressure read at stall in reverse.")
@click.option("--gauge-full-scale", type=Quantity("kpa"), help="Full scale of the gauge, for its class.")
@click.option("--gauge-class", type=NUMBER, default=1.6, show_default=True, help="Class of the gauge, percent of full scale.")
@click.option("--turbine", type=Quantity("nm"), help="Turbine torque; or name a truck.")
@click.option("--truck", help="Truck of the fleet: gives the variant, and the greatest torque of its engine as the turbine's.")
@click.option("--fleet", type=RECORD, help="Fleet file of the truck.")
@click.option("--read", "taken", multiple=True, type=PressureTaken(), help='A reading for the pattern, as "2 idle 85C 300kPa"; may be repeated.')
@click.option("--kept", type=NUMBER, default=KEPT, show_default=True, help="How often a suspect shows what it predicts.")
@click.option("--hot-from", type=Plain("c"), default=HOT_FROM_C, show_default=True, help="Fluid temperature from which a reading counts as hot.")
@answers_with_sheets
def pressure(
    file: Path, variant: str | None, gauge: Reading | None, gauge_reverse: Reading | None, gauge_full_scale: Reading | None, gauge_class: float,
    turbine: Reading | None, truck: str | None, fleet: Path | None, taken: tuple[Taken, ...], kept: float, hot_from: float,
) -> Sheet | list[Sheet]:  # fmt: skip
    """Which gears hold at a gauge pressure, and which circuit a pattern of low or high readings points to."""
    family = loaded(file, record.Family)
    if not (gauge or taken):
        raise click.UsageError('give --gauge with --turbine or --truck, or readings for the pattern with --read "2 idle 85C 300kPa"')

    def of_class(reading: Reading) -> Reading:
        return Reading.of_class(reading.value, full_scale=gauge_full_scale.value, class_pct=gauge_class) if gauge_full_scale else reading

    sheets = []
    turbine_from, load, backward = Working.turbine_from, None, None
    if truck:
        if fleet is None:
            raise click.UsageError("--truck needs --fleet, the file that holds the truck")
        trucks = loaded(fleet, record.Fleet)
        load, backward = truck_load(family, trucks, truck), truck_load(family, trucks, truck, reverse=True)
        variant = load.variant
    variant = variant or family.variants[0]
    if gauge:
        if load:
            turbine, turbine_from = load.turbine_nm, load.source
        if turbine is None:
            raise click.UsageError("give --turbine, or --truck with --fleet")
        working = working_point(family, variant, of_class(gauge), turbine, turbine_from=turbine_from)
        reverse = None
        if gauge_reverse:
            own = (backward.turbine_nm, backward.source) if backward else (None, "")
            reverse = with_pressure(working, of_class(gauge_reverse), *own)
        stated = [stated_kpa(family, variant, stall=True, reverse=which) for which in (False, True)]
        title = f"Line pressure of {variant} at {edge.show(gauge.value, 'kpa')}" + (f", truck {truck}" if truck else "")
        sheets.append(
            line_sheet(
                family.train(variant), family.packs(variant), working, title=title, stated=stated[0], reverse=reverse, stated_reverse=stated[1]
            )
        )  # fmt: skip
    if taken:
        readings = [Taken(one.gear, one.stall, one.temp_c, of_class(one.kpa)) for one in taken]
        title = f"What the line pressures of {variant} point to"
        sheets.append(pattern_sheet(family, variant, readings, title=title, kept=kept, hot_from_c=hot_from))
    return sheets[0] if len(sheets) == 1 else sheets


@command(Step.FLUID)
@click.argument("file", metavar="FLUIDS", type=RECORD)
@click.option("--caught", type=Quantity("l"), help="Volume caught from the return line; without it, a sheet for the bench.")
@click.option("--seconds", type=Quantity("s"), help="Time that it took.")
@click.option("--at", "at", type=Quantity("c"), help="Fluid temperature; without it nothing is judged.")
@click.option("--fluid", help="Fluid of the record, for the flow at another temperature.")
@click.option("--reference", type=Plain("c"), help="Temperature to which the flow is converted; the last of the record's table unless given.")
@answers_with_sheets
def cooler(
    file: Path, caught: Reading | None, seconds: Reading | None, at: Reading | None, fluid: str | None, reference: float | None
) -> Sheet:
    """Whether the cooler passes enough at the temperature that the fluid has: flush, replace or release."""
    fluids = loaded(file, record.Fluids)
    limits = fluids.cooler_limits()
    if caught is None and seconds is None:
        return cooler_form(limits, title="Cooler flow")
    if caught is None or seconds is None:
        raise click.UsageError("give --caught and --seconds together, for example --caught 1±0.02L --seconds 20±0.3s")
    if reference is not None and fluid is None:
        raise click.UsageError("--reference needs --fluid: the flow is converted by its viscosity")
    return cooler_sheet(
        limits, volume_l=caught, time_s=seconds, temp_c=at, fluid=fluids.fluid(fluid) if fluid else None, name=fluid or "",
        reference_c=reference, title="Cooler flow" + (f" at {edge.show(at.value, 'c')}" if at else ""),
    )  # fmt: skip
