"""Commands about the gear train: which set is fitted, gears, states, faults."""

from __future__ import annotations

from pathlib import Path

import click

from ..answers.faults import SEEN, diagnose_sheet, fault_sheet
from ..answers.gears import gear_sheet, state_sheet
from ..answers.which import Count, which_sheet
from ..judge import Reading
from ..sheet import Sheet
from ..train import Train
from .common import NUMBER, RECORD, Step, answers_with_sheets, command, family_or_train, variant_option


@command(Step.IDENTIFY)
@click.argument("candidates", type=RECORD, nargs=-1, required=True)
@click.option("--variant", "variants", multiple=True, help="Variant of a family file to tell apart from the others; may be repeated. The first one unless given.")
@click.option("--gear", "counts", nargs=3, type=(str, int, int), multiple=True, required=True,
              metavar="GEAR INPUT OUTPUT", help="Gear, input pulses, output pulses counted over the same time; may be repeated.")
@click.option("--input-teeth", type=click.IntRange(1), default=1, show_default=True, help="Teeth of the input's speed wheel.")
@click.option("--output-teeth", type=click.IntRange(1), default=1, show_default=True, help="Teeth of the output's speed wheel.")
@answers_with_sheets
def which(
    candidates: tuple[Path, ...], variants: tuple[str, ...], counts: tuple[tuple[str, int, int], ...], input_teeth: int, output_teeth: int
) -> Sheet:
    """Which gear set is fitted: counted pulses against the trains that may be inside."""
    named: list[str | None] = [*variants] or [None]
    trains: dict[str, Train] = {}
    for path in candidates:
        for variant in named:
            name = variant or path.stem
            trains[f"{name} ({path})" if name in trains else name] = family_or_train(path, variant)[1]
    counted = [Count(*count) for count in counts]
    return which_sheet(trains, counted, input_teeth=input_teeth, output_teeth=output_teeth, title="Which gear set is fitted")


@command(Step.TRAIN)
@click.argument("file", type=RECORD)
@variant_option
@click.option("--mesh-efficiency", type=NUMBER, help="Efficiency of one tooth mesh, as 0.99: adds the losses of every gear. None is assumed.")
@answers_with_sheets
def gears(file: Path, variant: str | None, mesh_efficiency: float | None) -> Sheet:
    """Gear table: ratio, exact fraction, step, torque shares, slip speeds; published ratios beside computed ones."""
    title, train = family_or_train(file, variant)
    return gear_sheet(train, title=f"Gears of {title}", mesh_efficiency=mesh_efficiency)


@command(Step.TRAIN)
@click.argument("file", type=RECORD)
@variant_option
@click.option("--fastest", type=click.FloatRange(0, min_open=True), help="Output speed per input speed that no state may exceed.")
@answers_with_sheets
def states(file: Path, variant: str | None, fastest: float | None) -> Sheet:
    """Every engagement: gear, neutral, held or tied up, and the states that must never be entered."""
    title, train = family_or_train(file, variant)
    return state_sheet(train, title=f"States of {title}", fastest=fastest)


@command(Step.TRAIN)
@click.argument("file", type=RECORD)
@variant_option
@answers_with_sheets
def faults(file: Path, variant: str | None) -> Sheet:
    """What a dead or stuck element shows in each gear: lost gears, other ratios, tie-ups."""
    title, train = family_or_train(file, variant)
    return fault_sheet(train, title=f"Failure signatures of {title}")


@command(Step.TRAIN)
@click.argument("file", type=RECORD)
@variant_option
@click.option("--seen", "seen", nargs=2, type=(str, click.Choice(SEEN)), multiple=True,
              metavar="GEAR WHAT", help=f"A gear and what it does: {', '.join(SEEN)}. May be repeated; name right gears, too.")
@click.option("--seen-ratio", "ratios", nargs=3, type=(str, float, float), multiple=True, metavar="GEAR RATIO U",
              help="A gear, the ratio measured in it under drive, and its standard uncertainty. May be repeated.")
@answers_with_sheets
def diagnose(file: Path, variant: str | None, seen: tuple[tuple[str, str], ...], ratios: tuple[tuple[str, float, float], ...]) -> Sheet:
    """Which element a complaint points to, and the gear to run next."""
    if not (seen or ratios):
        raise click.UsageError("Say what a gear does: --seen GEAR WHAT, or --seen-ratio GEAR RATIO U.")
    title, train = family_or_train(file, variant)
    measured = [(gear, Reading(value=value, u=u)) for gear, value, u in ratios]
    return diagnose_sheet(train, seen, ratios=measured, title=f"Suspects in {title}")
