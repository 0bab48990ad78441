"""Commands about the fluid."""

from __future__ import annotations

from pathlib import Path

import click

from .. import record
from ..answers.fill import fill_sheet
from ..judge import Reading
from ..sheet import Sheet
from .common import RECORD, Quantity, Step, answers_with_sheets, command, loaded


@command(Step.FLUID)
@click.argument("file", metavar="FLUIDS", type=RECORD)
@click.option("--fluid", required=True, help="Fluid of the record.")
@click.option("--at", "at", required=True, type=Quantity("c"), help="Fluid temperature now.")
@click.option("--level", type=Quantity("mm"), required=True, help="Level now above the overflow edge (0mm: at the edge), engine idling.")
@click.option("--variant", help="Variant whose linings run in the fluid: says whether the record approves it for them.")
@answers_with_sheets
def fill(file: Path, fluid: str, at: Reading, level: Reading, variant: str | None) -> Sheet:
    """What to add or drain now, at the temperature the fluid has, and where the level will stand."""
    fluids = loaded(file, record.Fluids)
    known = fluids.fluid(fluid)
    approved_for = fluids.as_dict()["fluid"][fluid]["friction_approved"]
    return fill_sheet(
        fluids.fill(), known, temp_c=at, level_mm=level, name=fluid, variant=variant or "", approved_for=approved_for
    )  # fmt: skip
