"""Commands about tire and axle."""

from __future__ import annotations

import click

from ..answers.tire import SHIFTS_KM_H, change_sheet, rolling
from ..error import Error
from ..judge import Reading
from ..road import Driveline
from ..sheet import Sheet
from ..tire import Tire, parse
from .common import NUMBER, Quantity, Step, answers_with_sheets, command


def sized(text: str) -> Tire:
    """The tire of a typed size."""
    try:
        return parse(text)
    except Error as error:
        raise click.BadParameter(f"{text!r} is no tire size: {error}. Write it as on the sidewall, as 265/65R18 or 35x12.50R17LT") from None


@command(Step.ROAD)
@click.argument("old")
@click.argument("new")
@click.option("--axle", type=NUMBER, required=True, help="Axle ratio that the unit is programmed for.")
@click.option("--new-axle", type=NUMBER, help="Axle ratio fitted, where it differs.")
@click.option("--transfer", type=NUMBER, default=1.0, show_default=True, help="Ratio of the transfer case.")
@click.option("--at", "at", type=Quantity("km_h"), default="100km/h", show_default=True, help="True road speed.")
@click.option("--shifts", type=Quantity("km_h"), multiple=True, help="Road speed of a programmed shift; may be repeated.")
@click.option("--pulses", type=NUMBER, default=30.0, show_default=True, help="Sensor pulses per turn of the output shaft.")
@answers_with_sheets
def tire(
    old: str, new: str, axle: float, new_axle: float | None, transfer: float, at: Reading, shifts: tuple[Reading, ...], pulses: float
) -> Sheet:
    """Change of tire or axle: speedometer, shift points, and the number to program.

    OLD and NEW are sizes as on the sidewall: 265/65R18, LT275/70R18, 35x12.50R17LT. The same size twice for an axle alone.
    """
    fitted_axle = axle if new_axle is None else new_axle
    lines = [
        Driveline(axle_ratio=ratio, transfer_ratio=transfer, circumference_mm=rolling(sized(size)).circumference_mm)
        for size, ratio in ((old, axle), (new, fitted_axle))
    ]
    return change_sheet(
        *lines, title=f"From {old} to {new}" + (f", axle {axle:g} to {new_axle:g}" if new_axle else ""),
        before=f"axle {axle:g}, tire {old}", after=f"axle {fitted_axle:g}, tire {new}", true_km_h=at.value,
        shifts_km_h=[shift.value for shift in shifts] or SHIFTS_KM_H, pulses_per_rev=pulses,
    )  # fmt: skip
