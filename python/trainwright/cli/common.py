"""What the commands share: the group with its help by the steps of the job, types of typed values, and how answers are shown."""

from __future__ import annotations

import functools
import json
from collections.abc import Callable
from enum import Enum
from pathlib import Path
from types import ModuleType
from typing import Any, TypeVar

import click
from rich.console import Console

from .. import edge, record, version
from ..error import Error
from ..judge import Reading
from ..parts import Part
from ..train import Train

FIRST_SENTENCE = 500
"""Letters of a command's help that the list of commands may take: its whole first sentence, wrapped."""

Command = TypeVar("Command", bound=Callable[..., Any])


class Step(Enum):
    """The steps of the job, in their order; the help lists the commands under them."""

    IDENTIFY = "Which unit is this"
    INTERCHANGE = "What may be exchanged"
    FIT = "Fits, end play and clearances"
    TRAIN = "Gears, states and faults"
    HOLD = "Does it hold"
    FLUID = "Fluid"
    ROAD = "On the road"
    RECORDS = "Records and reports"


class Shop(click.Group):
    """A group whose help follows the steps of the job instead of the alphabet."""

    def __init__(self, *arguments: Any, **options: Any) -> None:
        super().__init__(*arguments, **options)
        self.steps: dict[Step, list[str]] = {step: [] for step in Step}

    def list_commands(self, ctx: click.Context) -> list[str]:
        return [name for names in self.steps.values() for name in names]

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        widest = max(map(len, self.commands))
        for step, names in self.steps.items():
            if names:
                with formatter.section(step.value):
                    formatter.write_dl([(name.ljust(widest), self.commands[name].get_short_help_str(FIRST_SENTENCE)) for name in names])


@click.group(cls=Shop, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 110})
@click.version_option(version(), message="trainwright %(version)s")
def shop() -> None:
    """Calculations for automatic-transmission rebuild shops.

    Quantities carry their unit, metric or shop: 1470kPa or 213psi, 24C or 75F, 660Nm or 487lbft, 43.988mm or 1.7318in or
    1731.8thou. Add what you know of the uncertainty (one standard uncertainty) as 24±1C, 24+-1C or 1.7318in±0.1thou.
    For records to change: trainwright demo --files-to shop.
    """


def command(step: Step) -> Callable[[Callable[..., Any]], click.Command]:
    """Makes a function a command of the console, under a step of the job."""

    def add(function: Callable[..., Any]) -> click.Command:
        added = shop.command()(function)
        assert added.name
        shop.steps[step].append(added.name)
        return added

    return add


class Quantity(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """A number with its unit, metric or shop: ``213psi``, ``1470kPa``, ``24±1C``."""

    def __init__(self, suffix: str) -> None:
        self.suffix = suffix
        self.name = "|".join(unit.sign for unit in edge.UNITS[suffix])

    def get_metavar(self, param: click.Parameter, ctx: click.Context | None = None) -> str:
        return self.name

    def typed(self, text: str, name: str, param: click.Parameter | None, ctx: click.Context | None) -> edge.Typed:
        """The quantity as typed; a refusal names the option."""
        try:
            return edge.read_typed(text, self.suffix, name)
        except Error as error:
            self.fail(str(error), param, ctx)

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        return value if isinstance(value, Reading) else self.typed(value, _name_of(param, self.suffix), param, ctx).reading


class Plain(Quantity):
    """The same where its uncertainty is not asked for: the value alone."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        return value if isinstance(value, float) else super().convert(value, param, ctx).value


class AsTyped(Quantity):
    """The same, kept with the unit it was typed in, for answers in that unit: an :class:`trainwright.edge.Typed`."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        return value if isinstance(value, edge.Typed) else self.typed(value, _name_of(param, self.suffix), param, ctx)


class Named(Quantity):
    """A name and its quantity, as ``sump_depth=62.1mm``: a pair of the name and an :class:`trainwright.edge.Typed`."""

    def __init__(self, suffix: str) -> None:
        super().__init__(suffix)
        self.name = f"NAME={self.name}"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        if not isinstance(value, str):
            return value
        name, equals, quantity = (part.strip() for part in value.partition("="))
        if not (name and equals):
            self.fail(f"{value!r} is no name and quantity; write them as name=20{edge.UNITS[self.suffix][0].sign}", param, ctx)
        return name, self.typed(quantity, name, param, ctx)


def _name_of(param: click.Parameter | None, suffix: str) -> str:
    return param.opts[0].lstrip("-") if param else suffix


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


def report_writer() -> ModuleType:
    """The report's module; says how to get its libraries where they are not installed."""
    try:
        from .. import report
    except ImportError as error:
        raise click.ClickException(f"a page needs {error.name}, which is not installed: pip install 'trainwright[report]'") from None
    return report


def answers_with_sheets(command: Command) -> Command:
    """Prints what the command returns (sheets, or parts with pictures), as text or as JSON; writes it as a page for the printer where
    that is asked, pictures included."""

    @click.option("--explain", "how", is_flag=True, help="Also print how it is worked out: every formula with its values.")
    @click.option("--page", type=click.Path(dir_okay=False, path_type=Path), help="Also write the answer as an HTML page to print.")
    @click.option("--json", "as_json", is_flag=True, help="Print the answer as JSON.")
    @functools.wraps(command)
    def run(*arguments: Any, as_json: bool, page: Path | None, how: bool, **options: Any) -> None:
        answers = command(*arguments, **options)
        parts = [one if isinstance(one, Part) else Part(one) for one in (answers if isinstance(answers, list) else [answers])]
        sheets = [part.sheet for part in parts]
        if page:
            click.echo(f"Page to print: {report_writer().write_page(parts, page)}", err=True)
        if as_json:
            data = [sheet.as_dict(how=how) for sheet in sheets]
            click.echo(json.dumps(data[0] if len(data) == 1 else data, indent=2, ensure_ascii=False))
        else:
            console = Console(highlight=False)
            for sheet in sheets:
                sheet.print(console, how=how)

    return run  # type: ignore[return-value]


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
