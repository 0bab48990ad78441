"""Commands about end play, clutch clearance and tolerance chains."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from .. import record
from ..answers import SPREADS
from ..answers.chain import Part, chain_sheet, measured_part, toleranced_part, with_readings
from ..answers.choice import RULES, Choosing, Piston, Warm, fitted_part, on_list, ring_sheet, shim_sheet, stroke_of, warm, without
from ..edge import Typed
from ..judge import Limits, Reading
from ..sheet import Sheet
from ..stack import PieceList, mean_of_steps
from .common import RECORD, AsTyped, Command, Named, Quantity, Step, answers_with_sheets, command, loaded

LENGTH = AsTyped("mm")


def choice_options(command: Command) -> Command:
    """The options of every choice."""
    options = (
        click.option("--by", type=click.Choice([rule.replace(" ", "-") for rule in RULES]), default=RULES[0].replace(" ", "-"), show_default=True, help="Rule of the choice; the other one is shown beside it."),
        click.option("--missing", type=LENGTH, multiple=True, help="Thickness that is not in stock; may be repeated."),
        click.option("--micrometer", type=Quantity("mm"), help="Standard uncertainty that measuring a part would leave: what to measure first."),
    )
    for option in reversed(options):
        command = option(command)
    return command


def _choosing(
    pieces: PieceList, parts: list[Part], typed: Typed, fitted: Typed | None, by: str, missing: tuple[Typed, ...], micrometer: Reading | None, **more: Any
) -> Choosing:
    in_place = on_list(pieces, fitted) if fitted else None
    return Choosing(
        parts=parts, pieces=without(pieces, missing), by=by.replace("-", " "), like=typed, measured_u_mm=micrometer.value if micrometer else None,
        in_place_mm=in_place.thickness_mm.value if in_place else None, **more,
    )  # fmt: skip


@command(Step.FIT)
@click.argument("file", metavar="FAMILY", type=RECORD)
@click.option("--gap", type=LENGTH, help="Gap that the shim fills, without any shim.")
@click.option("--play", type=LENGTH, help="End play as read on the dial, with the shim of --fitted in place: instead of --gap.")
@click.option("--fitted", type=LENGTH, help="Shim in place while --play was read.")
@click.option("--gasket", type=LENGTH, help="Gasket that takes up room beside the shim; 0mm±0.028mm where its height is in the gap and only its squeeze is not known.")
@click.option("--plus", type=Named("mm"), multiple=True, help="Another part that opens the gap, as race=0.10mm; may be repeated.")
@click.option("--less", type=Named("mm"), multiple=True, help="Another part that fills the gap; may be repeated.")
@click.option("--warm", "warm_c", type=Quantity("c"), help="Temperature of the warm unit; the record's unless given.")
@click.option("--parts-hotter", type=Quantity("k"), help="How much hotter the parts are than the case: while warming up, or after a hard pull.")
@click.option("--warm-window", nargs=2, type=Quantity("mm"), help="End play wanted in the warm unit, least and most; the record's unless given.")
@click.option("--warm-counts", is_flag=True, help="Choose for cold and warm together.")
@choice_options
@answers_with_sheets
def shim(
    file: Path, gap: Typed | None, play: Typed | None, fitted: Typed | None, gasket: Typed | None, plus: tuple[tuple[str, Typed], ...],
    less: tuple[tuple[str, Typed], ...], warm_c: Reading | None, parts_hotter: Reading | None, warm_window: tuple[Reading, Reading] | None,
    warm_counts: bool, by: str, missing: tuple[Typed, ...], micrometer: Reading | None,
) -> Sheet:  # fmt: skip
    """Which shim sets the end play: nearest to the target and of least risk, cold and warm, and what to measure first.

    FILE is a family record; its shims, the end play wanted and the lengths that grow are in the table [selective].
    """
    family = loaded(file, record.Family)
    if (gap is None) == (play is None) or (play is None) != (fitted is None):
        raise click.UsageError("give --gap, measured without a shim; or --play with --fitted, the shim in place")
    typed = gap or play
    assert typed
    parts = [measured_part("gap" if gap else "end play as read", 1, typed.reading)]
    if fitted:
        parts.append(fitted_part("fitted shim", fitted, family.shims()))
    if gasket:
        parts.append(measured_part("gasket", -1, gasket.reading))
    parts += [measured_part(name, sign, size.reading) for sign, sizes in ((1, plus), (-1, less)) for name, size in sizes]
    choosing = _choosing(
        family.shims(), parts, typed, fitted, by, missing, micrometer, piece="shim", result="end play",
        warm=_warm(family, warm_c, parts_hotter, warm_window, warm_counts),
    )  # fmt: skip
    return shim_sheet(choosing, title=f"Shim for {'a gap' if gap else 'an end play'} of {choosing.length(typed.reading)}")


def _warm(
    family: record.Family, warm_c: Reading | None, parts_hotter: Reading | None, window: tuple[Reading, Reading] | None, counts: bool
) -> Warm | None:
    known = family.hot_play()
    if known is None:
        if warm_c or parts_hotter or window or counts:
            raise click.UsageError("the record does not say how case and parts grow: add the table [selective.hot]")
        return None
    window_mm = Limits(lower=window[0].value, upper=window[1].value) if window else None
    found = warm(known, temp_c=warm_c, parts_hotter_k=parts_hotter, window_mm=window_mm, counts=counts)
    if counts and not found.stated:
        raise click.UsageError("--warm-counts needs --warm-window, the end play wanted in the warm unit: the record states none")
    return found


@command(Step.FIT)
@click.argument("file", metavar="FAMILY", type=RECORD)
@click.option("--element", required=True, help="Clutch or brake, as B1.")
@click.option("--reading", "readings", type=LENGTH, multiple=True, help="Clearance read with the ring of --fitted in place; repeat it for every place.")
@click.option("--fitted", type=LENGTH, help="Ring in place while the clearance was read.")
@click.option("--step", type=Quantity("mm"), help="Step of the feelers, where several places were read; or give --instruments.")
@click.option("--instruments", type=RECORD, help="Instruments file: step and uncertainty of its feeler.")
@click.option("--depth", type=LENGTH, help="Instead of a reading: depth from the piston at rest to the outer wall of the ring groove.")
@click.option("--frictions", nargs=2, metavar="COUNT mm|in|thou", type=(click.IntRange(0), LENGTH), help="Number of frictions, and the thickness of one, soaked.")
@click.option("--steels", nargs=2, metavar="COUNT mm|in|thou", type=(click.IntRange(0), LENGTH), help="Number of steels, and the thickness of one.")
@click.option("--pressure-plate", type=LENGTH, help="Thickness of the pressure plate.")
@click.option("--wave-plate", type=LENGTH, help="Free height of the wave plate.")
@click.option("--bend", type=Quantity("mm"), help="What plates, ring and drum give way under pressure; the record's unless given.")
@click.option("--flow", type=Quantity("l_min"), help="Flow that fills the piston: adds the time that it takes.")
@click.option("--variant", help="Variant of the unit: says how many frictions its record has.")
@choice_options
@answers_with_sheets
def ring(
    file: Path, element: str, readings: tuple[Typed, ...], fitted: Typed | None, step: Reading | None, instruments: Path | None,
    depth: Typed | None, frictions: tuple[int, Typed] | None, steels: tuple[int, Typed] | None, pressure_plate: Typed | None,
    wave_plate: Typed | None, bend: Reading | None, flow: Reading | None, variant: str | None,
    by: str, missing: tuple[Typed, ...], micrometer: Reading | None,
) -> Sheet:  # fmt: skip
    """Which ring or plate sets the clearance of a clutch or brake, what its piston then travels, and what to measure first.

    FILE is a family record; the rings are in its table [selective], the clearance wanted in [clutch]. The clearance is read with
    feelers or with regulated air and a dial, or follows from heights.
    """
    family = loaded(file, record.Family)
    if element not in family.elements_with_rings:
        known = ", ".join(family.elements_with_rings) or "none"
        raise click.BadParameter(f"the record lists no rings of {element!r} under [selective]; it has rings of: {known}", param_hint="--element")
    if bool(readings) == (depth is not None) or bool(readings) != (fitted is not None):
        raise click.UsageError("give --reading with --fitted, the ring in place; or --depth with --frictions and --steels")
    as_read = _as_read(readings, step, instruments) if readings else None
    if as_read and fitted:
        typed = readings[0]
        parts = [measured_part("clearance as read", 1, as_read), fitted_part("fitted ring", fitted, family.rings(element))]
    else:
        assert depth
        typed = depth
        parts = _heights(depth, frictions, steels, pressure_plate, wave_plate)
    _check_plates(family, element, variant, frictions)
    stroke = stroke_of(family, element, bend)
    if flow and not stroke:
        raise click.UsageError(f"--flow needs the travel of the piston, and the record does not give seal_land_mm and bend_mm in [clutch.{element}]")
    piston = Piston(stroke, family.packs(family.variants[0])[element].pack.piston, flow)
    choosing = _choosing(family.rings(element), parts, typed, fitted, by, missing, micrometer, piece="ring", result="clearance")
    found = f"read as {choosing.length(as_read)}" if as_read else f"in a drum {choosing.length(typed.reading)} deep"
    return ring_sheet(choosing, title=f"Ring for {element}, {found}", as_read_mm=as_read, piston=piston)


def _as_read(readings: tuple[Typed, ...], step: Reading | None, instruments: Path | None) -> Reading:
    """The clearance of one reading as it was typed, or the mean of several."""
    values = [typed.reading.value for typed in readings]
    u_of_one = max(typed.reading.u for typed in readings)
    if instruments:
        tools = loaded(instruments, record.Instruments)
        u_of_one = max(u_of_one, tools.reading("feeler", values[0]).u)
        step = step or Reading.exact(tools.as_dict()["instrument"]["feeler"]["resolution_mm"])
    if len(values) == 1 and step is None:
        return readings[0].reading
    if step is None:
        raise click.UsageError("several readings need --step, the step of the feelers, or --instruments: alike readings are no better than the step")
    return mean_of_steps(values, quantum=step.value, u_of_one=u_of_one).reading


def _heights(
    depth: Typed, frictions: tuple[int, Typed] | None, steels: tuple[int, Typed] | None, pressure_plate: Typed | None, wave_plate: Typed | None
) -> list[Part]:
    if frictions is None or steels is None:
        raise click.UsageError("--depth needs --frictions and --steels: how many, and how thick one is, as --frictions 5 1.95mm")
    parts = [measured_part("drum depth", 1, depth.reading)]
    for (count, typed), name in ((frictions, "friction plate"), (steels, "steel plate")):
        if count:
            parts.append(measured_part(f"{name}s ({count})", -count, typed.reading, "one measured for all of its kind"))
    for plate, name in ((pressure_plate, "pressure plate"), (wave_plate, "wave plate")):
        if plate:
            parts.append(measured_part(name, -1, plate.reading))
    return parts


def _check_plates(family: record.Family, element: str, variant: str | None, frictions: tuple[int, Typed] | None) -> None:
    if variant is None:
        return
    plates = family.as_dict()["clutch"][element]["plates"]
    if variant not in plates:
        raise click.BadParameter(f"there is no variant {variant!r}; known: {', '.join(plates)}", param_hint="--variant")
    if frictions and frictions[0] != plates[variant]:
        raise click.UsageError(f"{frictions[0]} frictions given, and the record of {variant} has {plates[variant]} in {element}: count again, or leave --variant out")


@command(Step.FIT)
@click.option("--plus", type=Named("mm"), multiple=True, help="Part that opens the gap, as groove=44.450mm±0.076mm: ± is half its tolerance. May be repeated.")
@click.option("--less", type=Named("mm"), multiple=True, help="Part that fills the gap; may be repeated.")
@click.option("--measured", type=Named("mm"), multiple=True, help="Reading of one of these parts, with ± its standard uncertainty: takes the place of the tolerance. May be repeated.")
@click.option("--within", nargs=2, type=Quantity("mm"), help="Least and most that may be left.")
@click.option("--spread", type=click.Choice(list(SPREADS)), required=True, help="How parts are taken to lie in their tolerance: anywhere, or normal with the limits at three standard deviations.")
@click.option("--micrometer", type=Quantity("mm"), help="Standard uncertainty that measuring a part would leave: what to measure first.")
@answers_with_sheets
def chain(
    plus: tuple[tuple[str, Typed], ...], less: tuple[tuple[str, Typed], ...], measured: tuple[tuple[str, Typed], ...],
    within: tuple[Reading, Reading] | None, spread: str, micrometer: Reading | None,
) -> Sheet:  # fmt: skip
    """What a row of toleranced parts leaves: worst case and root sum of squares, and which part to measure first."""
    named = [(1, name, typed) for name, typed in plus] + [(-1, name, typed) for name, typed in less]
    if not named:
        raise click.UsageError("give the parts: --plus for what opens the gap, --less for what fills it")
    parts = [
        toleranced_part(name, sign, Limits(lower=typed.reading.value - typed.reading.u, upper=typed.reading.value + typed.reading.u), spread)
        for sign, name, typed in named
    ]
    parts = with_readings(parts, {name: typed.reading for name, typed in measured})
    limits = Limits(lower=within[0].value, upper=within[1].value) if within else None
    like = named[0][2]
    return chain_sheet(parts, within=limits, like=like, measured_u_mm=micrometer.value if micrometer else None)
