"""The command about which unit is on the bench."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from .. import record
from ..answers.identify import identify_sheet
from ..answers.identify.bench import Found, identified
from ..answers.identify.looks import look_sheet
from ..edge import Typed
from ..identify import prior_of_counts
from ..judge import Reading, Rule
from ..sheet import Sheet
from .common import RECORD, Named, Quantity, Step, answers_with_sheets, command, loaded


class Shares(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """Numbers by name: ``teal=0.5,wren=0.5``."""

    name = "NAME=NUMBER,..."

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        if not isinstance(value, str):
            return value
        shares: dict[str, float] = {}
        for pair in value.split(","):
            name, equals, number = (part.strip() for part in pair.partition("="))
            try:
                shares[name] = float(number)
            except ValueError:
                equals = ""
            if not (name and equals):
                self.fail(f"{pair!r} is no name and number; write them as teal=0.5,wren=0.5", param, ctx)
        return shares


@command(Step.IDENTIFY)
@click.argument("file", metavar="FAMILY", type=RECORD)
@click.option("--seen", multiple=True, metavar="MARK", help="A mark that is there; may be repeated. --list shows the names.")
@click.option("--not-seen", multiple=True, metavar="MARK", help="A mark that somebody looked for and that is not there; may be repeated.")
@click.option("--measured", type=Named("mm"), multiple=True,
              help="A size as measured, as sump_depth=62.1mm; of a fit also as FIT.PART=VALUE. May be repeated.")
@click.option("--instruments", type=RECORD, help="The shop's instruments: the uncertainty of sizes that are typed without one, and what further sizes would tell.")
@click.option("--prior", type=Shares(), help="Chance of each variant in this shop, as teal=0.5,wren=0.5; the record's unless given.")
@click.option("--counts", type=Shares(), help="The same from how many of each came in, as teal=12,wren=30.")
@click.option("--proven", type=Quantity("pct"), default="95%", show_default=True, help="Chance from which a variant or a foreign part counts as proven.")
@click.option("--list", "listed", is_flag=True, help="Only show what can be looked at.")
@answers_with_sheets
def identify(
    file: Path, seen: tuple[str, ...], not_seen: tuple[str, ...], measured: tuple[tuple[str, Typed], ...], instruments: Path | None,
    prior: dict[str, float] | None, counts: dict[str, float] | None, proven: Reading, listed: bool,
) -> Sheet:  # fmt: skip
    """Which unit is this, is any part of it foreign, what to order, and what to look at next."""
    family = loaded(file, record.Family)
    tools = loaded(instruments, record.Instruments) if instruments else None
    name = family.as_dict()["meta"]["title"] or file.stem
    if listed:
        return look_sheet(family, tools, title=f"What can be looked at: {name}")
    if prior and counts:
        raise click.UsageError("give --prior or --counts, not both")
    marks = [*((mark, True) for mark in seen), *((mark, False) for mark in not_seen)]
    names = [name for name, _ in (*marks, *measured)]
    if twice := next((name for name in names if names.count(name) > 1), None):
        raise click.UsageError(f"{twice} is given twice; give each look once")
    if not marks and not measured:
        raise click.UsageError("nothing was found yet: give --seen, --not-seen or --measured, or --list to see what there is to look at")
    rule = Rule.conformance(proven.value / 100)
    found = Found(dict(marks), dict(measured))
    bench = identified(family, found, instruments=tools, prior=_of_counts(family, counts) if counts else prior, rule=rule)
    return identify_sheet(bench, title=f"Identification: {name}")


def _of_counts(family: record.Family, counts: dict[str, float]) -> dict[str, float]:
    """The prior of the shop's own counts; a variant that is not named never came in."""
    unknown = [name for name in counts if name not in family.variants]
    whole = [name for name, count in counts.items() if count < 0 or count != int(count)]
    if unknown or whole:
        wrong = f"there is no variant {unknown[0]!r}; known: {', '.join(family.variants)}" if unknown else f"{whole[0]} is counted {counts[whole[0]]:g} times; give a whole number"
        raise click.BadParameter(wrong, param_hint="--counts")
    return dict(zip(family.variants, prior_of_counts([int(counts.get(variant, 0)) for variant in family.variants])))
