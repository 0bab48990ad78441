"""Commands about shafts, splines and thrust bearings, and about two variants side by side."""

from __future__ import annotations

from pathlib import Path

import click

from .. import hold, record
from ..answers.compare import compare_sheet
from ..answers.hard_parts import Asked, hard_parts_sheet
from ..sheet import Sheet
from .common import NUMBER, RECORD, Plain, Step, answers_with_sheets, command, loaded, variant_option


@command(Step.HOLD)
@click.argument("file", metavar="FAMILY", type=RECORD)
@variant_option
@click.option("--turbine-speed", type=Plain("rpm"), help="Turbine speed, for speeds and hours; for each 1000 unless given.")
@click.option("--hours", type=NUMBER, help="Life wanted of the thrust race, hours at rating; needs --turbine-speed.")
@click.option("--stress-factor", type=NUMBER, default=1.0, show_default=True, help="Peak over nominal stress of the shafts; 1 counts no notch.")
@answers_with_sheets
def hard_parts(file: Path, variant: str | None, turbine_speed: float | None, hours: float | None, stress_factor: float) -> Sheet:
    """Shafts, splines, thrust bearings and washers at the rating that the record states."""
    family = loaded(file, record.Family)
    if hours and not turbine_speed:
        raise click.UsageError("--hours needs --turbine-speed: a bearing wears by its turns")
    variant = variant or family.variants[0]
    asked = Asked(stress_factor=stress_factor, turbine_rpm=turbine_speed, hours=hours)
    return hard_parts_sheet(family, variant, title=f"Hard parts of {variant} at their rating", asked=asked)


@command(Step.HOLD)
@click.argument("file", metavar="FAMILY", type=RECORD)
@click.argument("before")
@click.argument("after")
@answers_with_sheets
def compare(file: Path, before: str, after: str) -> Sheet:
    """What one variant buys over another, part by part, and what each change costs elsewhere."""
    comparison = hold.compare(loaded(file, record.Family), before, after)
    return compare_sheet(comparison, title=f"{after} instead of {before}, part by part")
