"""The command about a whole fleet's telematics."""

from __future__ import annotations

import csv
import sys
from pathlib import Path
from typing import Any

import click

from .. import record
from ..answers.screening import RANKED_BY, screening_sheet
from ..sheet import Sheet
from .common import NUMBER, RECORD, Step, answers_with_sheets, command, loaded

INTERRUPTED = 130
"""How a shell knows that Ctrl-C ended it."""


class Naming(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """A column of the pass and its name in the files."""

    name = "OURS=THEIRS"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[str, str]:
        ours, equals, theirs = str(value).partition("=")
        if not (ours and equals and theirs):
            self.fail(f"{value!r} names no column; write for example temp_c=sump_f", param, ctx)
        return ours, theirs


@command(Step.ROAD)
@click.argument("rows", metavar="PARQUET...", nargs=-1, required=True)
@click.option("--family", "family_file", type=RECORD, required=True, help="Family file of the units.")
@click.option("--fleet", "fleet_file", type=RECORD, required=True, help="Fleet file of the trucks.")
@click.option("--fluids", "fluids_file", type=RECORD, required=True, help="Fluids file.")
@click.option("--trucks", "trucks_file", type=RECORD, help="CSV with the columns truck and like: which truck of the record each truck of the files is built like.")
@click.option("--column", "columns", type=Naming(), multiple=True, help="A column whose name differs, as temp_c=sump_f; may be repeated. °F, psi, mph and lbf·ft by the ending of the name.")
@click.option("--by", type=click.Choice(list(RANKED_BY)), default="damage", show_default=True, help="What ranks the trucks.")
@click.option("--top", type=int, default=20, show_default=True, help="Trucks to print.")
@click.option("--fluid-life", type=(NUMBER, NUMBER, NUMBER), metavar="HOURS °C K", help="Fluid life at a temperature, and the kelvins that halve it.")
@click.option("--state", type=click.Path(dir_okay=False, path_type=Path), help="File that remembers what is done; the same command goes on from there.")
@click.option("--threads", type=int, help="Threads; all cores unless given.")
@click.option("--out", type=click.Path(dir_okay=False, path_type=Path), help="Write every truck to FILE.parquet, .csv or .json.")
@answers_with_sheets
def screen(
    rows: tuple[str, ...], family_file: Path, fleet_file: Path, fluids_file: Path, trucks_file: Path | None, columns: tuple[tuple[str, str], ...], by: str,
    top: int, fluid_life: tuple[float, float, float] | None, state: Path | None, threads: int | None, out: Path | None,
) -> Sheet:  # fmt: skip
    """Which trucks of a fleet come first, and why, from its telematics in Parquet files, folders or patterns."""
    from .. import fleet

    life_h, at_c, halving_k = fluid_life or (None, None, None)
    units = fleet.units(
        loaded(family_file, record.Family), loaded(fleet_file, record.Fleet), loaded(fluids_file, record.Fluids),
        trucks=_like(trucks_file) if trucks_file else None, fluid_life_h=life_h, fluid_reference_c=at_c, fluid_halving_k=halving_k,
    )  # fmt: skip
    found = fleet.screen(list(rows), units, columns=dict(columns), by=by, state=state, threads=threads)
    if out:
        found.save(out)
        click.echo(f"Every truck: {out}", err=True)
    if not found.finished:
        click.get_current_context().call_on_close(lambda: sys.exit(INTERRUPTED))
    return screening_sheet(found, top=top, title=f"Screening of {len(found):,} trucks")


def _like(path: Path) -> dict[str, str]:
    with open(path, newline="", encoding="utf-8") as file:
        reader = csv.DictReader(file)
        if not {"truck", "like"} <= set(reader.fieldnames or ()):
            raise click.BadParameter(f"{path} needs a head line with truck,like", param_hint="--trucks")
        return {row["truck"]: row["like"] for row in reader}
