"""Commands about what a duty does to a unit."""

from __future__ import annotations

import csv
from pathlib import Path

import click

from .. import edge, record
from ..answers.fluid_life import fluid_life_sheet
from ..answers.ranking import common_slopes, fleet_sheet
from ..answers.wheels import causes_of, wheels_sheet
from ..duty import RatioRule, SpeedsRatio, ratio_of
from ..judge import Reading, propagate
from ..sheet import Sheet
from .common import NUMBER, RECORD, Quantity, Step, answers_with_sheets, command, loaded


@command(Step.ROAD)
@click.argument("fleet_file", metavar="FLEET", type=RECORD)
@click.option("--family", "family_file", required=True, type=RECORD, help="Family file of the units.")
@click.option("--slope", "slopes", type=NUMBER, multiple=True, help="Slope of damage; may be repeated. The record's between 5 and 8 unless given.")
@answers_with_sheets
def fleet(fleet_file: Path, family_file: Path, slopes: tuple[float, ...]) -> Sheet:
    """Which trucks of a fleet come first: damage of their hours by planetary set, each place with its interval, reason and action."""
    family, trucks = loaded(family_file, record.Family), loaded(fleet_file, record.Fleet)
    return fleet_sheet(family, trucks, slopes=sorted(slopes) or common_slopes(family), title="Trucks by damage")


@command(Step.ROAD)
@click.argument("file", metavar="FLEET", type=RECORD)
@click.option("--truck", required=True, help="Truck of the fleet; its tires and axles are the candidates.")
@click.option("--true", "true_", type=Quantity("km_h"), help="True road speed, as 100±0.3km/h.")
@click.option("--shown", type=Quantity("km_h"), help="Speed that the unit shows at the same moment.")
@click.option("--drive", type=RECORD, help="Instead of one reading: a CSV file with columns gps_km_h and speed_km_h.")
@click.option("--least", type=Quantity("km_h"), default="30km/h", show_default=True, help="Least speed of a drive that counts.")
@click.option("--step", type=Quantity("km_h"), default="1km/h", show_default=True, help="Step of the shown speed of a drive.")
@click.option("--block", type=int, default=60, show_default=True, help="Rows of a drive that lean on one another.")
@click.option("--input-read", "input_speed", type=Quantity("rpm"), help="Input speed in a known gear, lock-up clutch or not; with --output-read and --ratio.")
@click.option("--output-read", "output_speed", type=Quantity("rpm"), help="Output speed that the unit reads at the same moment.")
@click.option("--ratio", type=NUMBER, help="Ratio of that gear.")
@click.option("--sensor", "sensors", multiple=True, metavar="PROGRAMMED:FITTED", help="Tooth counts of the sensor's wheel to be asked about; may be repeated.")
@answers_with_sheets
def wheels(
    file: Path, truck: str, true_: Reading | None, shown: Reading | None, drive: Path | None, least: Reading, step: Reading, block: int,
    input_speed: Reading | None, output_speed: Reading | None, ratio: float | None, sensors: tuple[str, ...],
) -> Sheet:  # fmt: skip
    """Which tire, axle or sensor tooth count explains a speed against GPS, with its chance, or that it cannot be told."""
    causes = causes_of(loaded(file, record.Fleet), truck, [_teeth(text) for text in sensors])
    measured: SpeedsRatio | None = None
    if drive:
        measured = _of_drive(drive, RatioRule(least=least.value, quantum=step.value, u_rel=0.0, block_rows=block))
        road = measured.ratio
    elif true_ and shown:
        road = _quotient(true_, shown)
    else:
        raise click.UsageError("give --true and --shown, or --drive")
    gear = None
    if input_speed and output_speed and ratio:
        gear = _quotient(input_speed, output_speed)
        gear = Reading(value=gear.value / ratio, u=gear.u / ratio)
    elif input_speed or output_speed or ratio:
        raise click.UsageError("give --input-read, --output-read and --ratio together")
    return wheels_sheet(causes, road, gear=gear, measured=measured, title=f"Wheels of {truck} against GPS")


def _quotient(upper: Reading, lower: Reading) -> Reading:
    return propagate([upper, lower], lambda top, bottom: top / bottom)[0]


def _teeth(text: str) -> tuple[int, int]:
    try:
        programmed, fitted = (int(part) for part in text.split(":"))
    except ValueError:
        raise click.BadParameter(f"{text!r}: write the two tooth counts as 40:50") from None
    return programmed, fitted


def _of_drive(path: Path, rule: RatioRule) -> SpeedsRatio:
    with path.open(newline="") as file:
        rows = list(csv.DictReader(file))
    columns = []
    for name in ("gps_km_h", "speed_km_h"):
        if not rows or name not in rows[0]:
            raise click.BadParameter(f"{path} has no column {name}; it needs gps_km_h and speed_km_h")
        try:
            columns.append([float(row[name] or "nan") for row in rows])
        except ValueError as error:
            raise click.BadParameter(f"{path}, column {name}: {error}") from None
    return ratio_of(*columns, rule=rule)


class _HoursAt(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """Hours at a temperature, as ``95C=410``."""

    name = "TEMP=HOURS"

    def convert(self, value: object, param: click.Parameter | None, ctx: click.Context | None) -> tuple[float, float]:
        if isinstance(value, tuple):
            return value
        temp, _, hours = str(value).partition("=")
        try:
            return edge.read(temp, "c", "temperature").value, float(hours)
        except ValueError as error:
            self.fail(f"{value!r} is no temperature with hours: {error}; write it as 95C=410", param, ctx)


@command(Step.FLUID)
@click.option("--bin", "bins", type=_HoursAt(), multiple=True, required=True, help="Hours at a temperature, as 95C=410; repeat it for each.")
@click.option("--unknown", "unknown_h", type=NUMBER, default=0.0, show_default=True, help="Hours of unknown temperature.")
@click.option("--life", "life_h", type=NUMBER, required=True, help="Life at 175 °F (79.4 °C) in hours. The trade says 100 000 miles there: divide by the mean speed.")
@answers_with_sheets
def fluid_life(bins: tuple[tuple[float, float], ...], unknown_h: float, life_h: float) -> Sheet:
    """How much of its life the fluid has used, from hours at temperature, and what is left in the same use."""
    hours: dict[float, float] = {}
    for temp_c, duration_h in bins:
        hours[temp_c] = hours.get(temp_c, 0.0) + duration_h
    return fluid_life_sheet(hours, unknown_h=unknown_h, life_h=life_h, title="Life of the fluid")
