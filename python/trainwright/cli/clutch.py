"""Commands about clutches and brakes."""

from __future__ import annotations

from pathlib import Path

import click

from .. import edge, record
from ..answers.capacity import Working, capacity_sheet, truck_load, working_point
from ..judge import Reading
from ..sheet import Sheet
from .common import NUMBER, RECORD, Plain, Quantity, Step, answers_with_sheets, command, loaded, variant_option


@command(Step.HOLD)
@click.argument("file", metavar="FAMILY", type=RECORD)
@variant_option
@click.option("--gauge", required=True, type=Quantity("kpa"), help="Gauge pressure read in that range.")
@click.option("--gauge-full-scale", type=Quantity("kpa"), help="Full scale of the gauge, for its class.")
@click.option("--gauge-class", type=NUMBER, default=1.6, show_default=True, help="Class of the gauge, percent of full scale.")
@click.option("--turbine", type=Quantity("nm"), help="Turbine torque; or name a truck.")
@click.option("--truck", help="Truck of the fleet: gives the variant, and the greatest torque of its engine as the turbine's.")
@click.option("--fleet", type=RECORD, help="Fleet file of the truck.")
@click.option("--reverse", is_flag=True, help="Reverse instead of the forward gears, at the pressure read in reverse.")
@click.option("--turbine-speed", type=Plain("rpm"), default=0.0, show_default=True, help="Turbine speed; 0 at stall.")
@click.option("--oil-density", type=NUMBER, default=0.0, help="Density of the hot oil, kg/m3; needed when drums turn.")
@answers_with_sheets
def capacity(
    file: Path, variant: str | None, gauge: Reading, gauge_full_scale: Reading | None, gauge_class: float,
    turbine: Reading | None, truck: str | None, fleet: Path | None, reverse: bool,
    turbine_speed: float, oil_density: float,
) -> Sheet:  # fmt: skip
    """What every clutch and brake can hold at a gauge pressure, against what each gear asks of it."""
    family = loaded(file, record.Family)
    turbine_from = Working.turbine_from
    if truck:
        if fleet is None:
            raise click.UsageError("--truck needs --fleet, the file that holds the truck")
        load = truck_load(family, loaded(fleet, record.Fleet), truck, reverse=reverse)
        variant, turbine, turbine_from = load.variant, load.turbine_nm, load.source
    if turbine is None:
        raise click.UsageError("give --turbine, or --truck with --fleet")
    if turbine_speed and not oil_density:
        raise click.UsageError("--turbine-speed needs --oil-density: turning oil presses on the piston")
    if gauge_full_scale:
        gauge = Reading.of_class(gauge.value, full_scale=gauge_full_scale.value, class_pct=gauge_class)
    variant = variant or family.variants[0]
    working = working_point(family, variant, gauge, turbine, turbine_speed, oil_density, turbine_from)
    title = f"Capacity of {variant} at {edge.show(gauge.value, 'kpa')}" + (f", truck {truck}" if truck else "")
    return capacity_sheet(family.train(variant), family.packs(variant), working, title=title, reverse=reverse)
