"""Commands about what a duty does to a unit."""

from __future__ import annotations

from pathlib import Path

import click

from .. import record
from ..answers.ranking import common_slopes, fleet_sheet
from ..sheet import Sheet
from .common import NUMBER, RECORD, Step, answers_with_sheets, command, loaded


@command(Step.ROAD)
@click.argument("family_file", metavar="FAMILY", type=RECORD)
@click.argument("fleet_file", metavar="FLEET", type=RECORD)
@click.option("--slope", "slopes", type=NUMBER, multiple=True, help="Slope of damage; may be repeated. The record's between 5 and 8 unless given.")
@answers_with_sheets
def fleet(family_file: Path, fleet_file: Path, slopes: tuple[float, ...]) -> Sheet:
    """Which trucks of a fleet come first: damage of their hours by planetary set, each place with its interval, reason and action."""
    family, trucks = loaded(family_file, record.Family), loaded(fleet_file, record.Fleet)
    return fleet_sheet(family, trucks, slopes=sorted(slopes) or common_slopes(family), title="Trucks by damage")
