"""The console command ``trainwright``: one subcommand per question of the shop.

Ends with 0 when it has answered (whatever the verdict), 2 when an input was refused, 3 when a record has errors.
"""

from __future__ import annotations

import functools
import json
import shutil
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from . import edge, record, version
from .answers.capacity import Working, capacity_sheet, truck_load, working_point
from .answers.faults import SEEN, diagnose_sheet, fault_sheet
from .answers.fill import fill_sheet
from .answers.gears import gear_sheet, state_sheet
from .answers.tire import SHIFTS_KM_H, change_sheet, rolling
from .answers.which import Count, which_sheet
from .error import Error
from .judge import Reading
from .parts import LEAD, Part, Records
from .road import Driveline
from .sheet import Sheet, sources_of
from .tire import Tire, parse
from .train import Train

REFUSED, FAULTY_RECORD = 2, 3
DEMO = Path(__file__).parent / "demo"
Command = TypeVar("Command", bound=Callable[..., Any])


class Quantity(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """A number with its unit, metric or shop: ``213psi``, ``1470kPa``, ``24±1C``."""

    def __init__(self, suffix: str) -> None:
        self.suffix = suffix
        self.name = edge.UNITS[suffix].sign

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Reading:
        if isinstance(value, Reading):
            return value
        try:
            return edge.read(value, self.suffix, param.opts[0].lstrip("-") if param else self.suffix)
        except Error as error:
            self.fail(str(error), param, ctx)


class Number(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """A number without a unit."""

    name = "number"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> float:
        try:
            return float(value)
        except ValueError:
            self.fail(f"{value!r} is not a number; write it with a decimal point, for example 3.54", param, ctx)


NUMBER = Number()
RECORD = click.Path(exists=True, dir_okay=False, path_type=Path)


def answers_with_sheets(command: Command) -> Command:
    """Prints what the command returns, as sheets or as JSON."""

    @click.option("--json", "as_json", is_flag=True, help="Print the answer as JSON.")
    @functools.wraps(command)
    def run(*arguments: Any, as_json: bool, **options: Any) -> None:
        sheets = command(*arguments, **options)
        sheets = [sheets] if isinstance(sheets, Sheet) else sheets
        if as_json:
            data = [sheet.as_dict() for sheet in sheets]
            click.echo(json.dumps(data[0] if len(data) == 1 else data, indent=2, ensure_ascii=False))
        else:
            console = Console(highlight=False)
            for sheet in sheets:
                sheet.print(console)

    return run  # type: ignore[return-value]


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 110})
@click.version_option(version(), message="trainwright %(version)s")
def shop() -> None:
    """Calculations for automatic-transmission rebuild shops.

    Quantities carry their unit, metric or shop: 1470kPa or 213psi, 24C or 75F, 660Nm or 487lbft. Add what you know of the
    uncertainty as 24±1C or 24+-1C. For records to change: trainwright demo --files-to shop.
    """


def family_or_train(path: Path, variant: str | None) -> tuple[str, Train]:
    """The train in a family or train file, and a title for it."""
    loaded = record.load(path)
    if isinstance(loaded, Train):
        return loaded.title or path.stem, loaded
    if not isinstance(loaded, record.Family):
        raise click.BadParameter(f"{path} holds no gear train; give a family or a train file", param_hint="FILE")
    chosen = variant or loaded.variants[0]
    return f"{loaded.as_dict()['meta']['title'] or path.stem}, {chosen}", loaded.train(chosen)


Kind = TypeVar("Kind")


def loaded(path: Path, kind: type[Kind]) -> Kind:
    """The record in a file, of the kind that the command needs."""
    found = record.load(path)
    if not isinstance(found, kind):
        raise click.BadParameter(f"{path} is a {type(found).__name__.lower()} record; give a {kind.__name__.lower()} record")
    return found


def variant_option(command: Command) -> Command:
    """Adds ``--variant``."""
    return click.option("--variant", help="Variant of the family; the first one unless given.")(command)


@shop.command()
@click.argument("file", type=RECORD)
@variant_option
@click.option("--mesh-efficiency", type=NUMBER, help="Efficiency of one tooth mesh, as 0.99: adds the losses of every gear. None is assumed.")
@answers_with_sheets
def gears(file: Path, variant: str | None, mesh_efficiency: float | None) -> Sheet:
    """Gear table: ratio, exact fraction, step, torque shares, slip speeds; published ratios beside computed ones."""
    title, train = family_or_train(file, variant)
    return gear_sheet(train, title=f"Gears of {title}", mesh_efficiency=mesh_efficiency)


@shop.command()
@click.argument("file", type=RECORD)
@variant_option
@click.option("--fastest", type=click.FloatRange(0, min_open=True), help="Output speed per input speed that no state may exceed.")
@answers_with_sheets
def states(file: Path, variant: str | None, fastest: float | None) -> Sheet:
    """Every engagement: gear, neutral, held or tied up, and the states that must never be entered."""
    title, train = family_or_train(file, variant)
    return state_sheet(train, title=f"States of {title}", fastest=fastest)


@shop.command()
@click.argument("file", type=RECORD)
@variant_option
@click.option("--gauge", required=True, type=Quantity("kpa"), help="Gauge pressure read in that range.")
@click.option("--gauge-full-scale", type=Quantity("kpa"), help="Full scale of the gauge, for its class.")
@click.option("--gauge-class", type=NUMBER, default=1.6, show_default=True, help="Class of the gauge, percent of full scale.")
@click.option("--turbine", type=Quantity("nm"), help="Turbine torque; or name a truck.")
@click.option("--truck", help="Truck of the fleet: gives the variant, and the greatest torque of its engine as the turbine's.")
@click.option("--fleet", type=RECORD, help="Fleet file of the truck.")
@click.option("--reverse", is_flag=True, help="Reverse instead of the forward gears, at the pressure read in reverse.")
@click.option("--turbine-speed", type=NUMBER, default=0.0, show_default=True, help="Turbine speed, 1/min; 0 at stall.")
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


@shop.command()
@click.argument("file", type=RECORD)
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


def sized(text: str) -> Tire:
    """The tire of a typed size."""
    try:
        return parse(text)
    except Error as error:
        raise click.BadParameter(f"{text!r} is no tire size: {error}. Write it as on the sidewall, as 265/65R18 or 35x12.50R17LT") from None


@shop.command()
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


@shop.command()
@click.argument("file", type=RECORD)
@variant_option
@answers_with_sheets
def faults(file: Path, variant: str | None) -> Sheet:
    """What a dead or stuck element shows in each gear: lost gears, other ratios, tie-ups."""
    title, train = family_or_train(file, variant)
    return fault_sheet(train, title=f"Failure signatures of {title}")


@shop.command()
@click.argument("file", type=RECORD)
@variant_option
@click.option("--seen", "seen", nargs=2, type=(str, click.Choice(SEEN)), multiple=True, required=True,
              metavar="GEAR WHAT", help=f"A gear and what it does: {', '.join(SEEN)}. May be repeated; name right gears, too.")
@answers_with_sheets
def diagnose(file: Path, variant: str | None, seen: tuple[tuple[str, str], ...]) -> Sheet:
    """Which element a complaint points to, and the gear to try next."""
    title, train = family_or_train(file, variant)
    return diagnose_sheet(train, seen, title=f"Suspects in {title}")


@shop.command()
@click.argument("candidates", type=RECORD, nargs=-1, required=True)
@click.option("--variants", help="Variants of a family file to tell apart, with commas: teal,heron.")
@click.option("--gear", "counts", nargs=3, type=(str, int, int), multiple=True, required=True,
              metavar="GEAR INPUT OUTPUT", help="Gear, input pulses, output pulses counted over the same time; may be repeated.")
@click.option("--input-teeth", type=click.IntRange(1), default=1, show_default=True, help="Teeth of the input's speed wheel.")
@click.option("--output-teeth", type=click.IntRange(1), default=1, show_default=True, help="Teeth of the output's speed wheel.")
@answers_with_sheets
def which(
    candidates: tuple[Path, ...], variants: str | None, counts: tuple[tuple[str, int, int], ...], input_teeth: int, output_teeth: int
) -> Sheet:
    """Which gear set is fitted: counted pulses against the trains that may be inside."""
    named = [variant.strip() for variant in variants.split(",")] if variants else [None]
    trains: dict[str, Train] = {}
    for path in candidates:
        for variant in named:
            name = variant or path.stem
            trains[f"{name} ({path})" if name in trains else name] = family_or_train(path, variant)[1]
    counted = [Count(*count) for count in counts]
    return which_sheet(trains, counted, input_teeth=input_teeth, output_teeth=output_teeth, title="Which gear set is fitted")


@shop.command()
@click.argument("files", type=RECORD, nargs=-1, required=True)
@click.option("--json", "as_json", is_flag=True, help="Print the problems as JSON.")
def check(files: tuple[Path, ...], as_json: bool) -> None:
    """Every problem of records: line, key, value, what is accepted and the mend. Ends with 3 if a record cannot be used."""
    problems = record.check(*files)
    errors = [problem for problem in problems if problem.is_error]
    if as_json:
        keys = ("file", "line", "column", "key", "value", "message", "mend", "is_error")
        click.echo(json.dumps([{key: getattr(problem, key) for key in keys} for problem in problems], indent=2, ensure_ascii=False))
    else:
        console = Console(highlight=False)
        for problem in problems:
            place, _, rest = str(problem).partition("  ")
            console.print(Text(place, "cyan").append(f"  {rest}", "default"), soft_wrap=True)
        found = f"{_counted(len(errors), 'error')}, {_counted(len(problems) - len(errors), 'note')}"
        console.print(Text(f"{_counted(len(files), 'file')} checked: {found}.", "bold magenta" if errors else "bold green"))
    if errors:
        sys.exit(FAULTY_RECORD)


def _counted(number: int, thing: str) -> str:
    return f"{number or 'no'} {thing}{'' if number == 1 else 's'}"


@shop.command()
@click.argument("files", type=RECORD, nargs=-1, required=True)
@click.option("-o", "--output", type=click.Path(dir_okay=False, path_type=Path), default="report.html", show_default=True)
def report(files: tuple[Path, ...], output: Path) -> None:
    """One HTML page with every answer that the given records hold: family, fluids, instruments, fleet, jobs, trains."""
    records = Records.read(files)
    parts = list(records.parts())
    if not parts:
        raise click.UsageError("these records ask nothing yet; give a family or a train, or fluids, instruments or a fleet with their jobs file")
    Console(highlight=False).print(f"Report: {write_report(records, parts, output)}")


def write_report(records: Records, parts: list[Part], output: Path) -> Path:
    """Writes the report; asks for its libraries where they are not installed."""
    from .report import write

    return write(parts, output, title=records.title)


def tell(title: str, parts: list[Part], console: Console) -> None:
    """The answers one after the other, as a story, and at the end the works they come from."""
    console.print(Text(title, "bold").append(f"\nInvented units and trucks; published gear trains at the end. {LEAD}\n", "not bold default"))
    for number, part in enumerate(parts, 1):
        console.print(Text(f"{number} of {len(parts)}", "dim"))
        part.sheet.print(console, sources=False)
    console.print(Text("Sources", "bold"))
    for work in sources_of(part.sheet for part in parts):
        console.print(Padding(Text(f"• {work}", "dim"), (0, 0, 0, 1)))
    console.print()


@shop.command()
@click.option("--report", "folder", type=click.Path(file_okay=False, path_type=Path), help="Also write the report into this folder.")
@click.option("--files-to", type=click.Path(file_okay=False, path_type=Path), help="Copy the demonstration's records into this folder, to change them.")
@click.option("--json", "as_json", is_flag=True, help="Print the answers as JSON.")
def demo(folder: Path | None, files_to: Path | None, as_json: bool) -> None:
    """The whole job on invented units and trucks, from the bench to the road, and on published gear trains."""
    if files_to:
        shutil.copytree(DEMO, files_to, dirs_exist_ok=True)
        click.echo(f"Records: {files_to}")
        return
    records = Records.read([*sorted(DEMO.glob("*.toml")), *sorted(DEMO.glob("trains/*.toml"))])
    parts = list(records.parts())
    if as_json:
        click.echo(json.dumps([part.sheet.as_dict() for part in parts], indent=2, ensure_ascii=False))
    else:
        tell(records.title, parts, Console(highlight=False, width=None if sys.stdout.isatty() else 110))
    if folder:
        written = write_report(records, parts, folder / "index.html")
        click.echo(f"Report with pictures: {written}", err=as_json)


def main() -> None:
    """Runs the command; a refusal is printed with its mend, never as a traceback."""
    try:
        shop.main(standalone_mode=False)
    except click.ClickException as error:
        error.show()
        sys.exit(REFUSED)
    except click.Abort:
        sys.exit(1)
    except Error as error:
        console = Console(stderr=True, highlight=False)
        console.print(Text("No answer. ", "bold magenta").append(str(error), "not bold default"))
        sys.exit(REFUSED)
