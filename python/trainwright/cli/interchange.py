"""Commands about exchanging parts: what goes in singly or as a set, and what to order."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import permutations
from pathlib import Path
from typing import Any

import click

from .. import record
from ..answers import SPREADS
from ..answers.interchange import matrix_sheet, part_sheet
from ..answers.order import Bench, order_sheet
from ..answers.sizes import fit_sides
from ..edge import Typed
from ..sheet import Sheet
from .common import RECORD, Named, Step, answers_with_sheets, command, loaded


class OfVariant(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """A part and a variant: ``output_shaft=wren``."""

    name = "PART=VARIANT"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        if not isinstance(value, str):
            return value
        part, equals, variant = (word.strip() for word in value.partition("="))
        if not (part and equals and variant):
            self.fail(f"{value!r} is no part and variant; write them as output_shaft=wren", param, ctx)
        return part, variant


@command(Step.INTERCHANGE)
@click.argument("family_file", metavar="FAMILY", type=RECORD)
@click.option("--part", help="Only this part, with the reason at every joint.")
@click.option("--from", "variant", help="Variant of the part; every one unless given.")
@click.option("--into", help="Variant of the unit; every one unless given.")
@answers_with_sheets
def interchange(family_file: Path, part: str | None, variant: str | None, into: str | None) -> list[Sheet]:
    """What goes in singly, one way only, only as a set, after machining, or never, and what goes together and runs loose."""
    family = loaded(family_file, record.Family)
    joints = family.joints()
    if part is None:
        if variant or into:
            raise click.UsageError("--from and --into are of a part; add --part, or leave them out for the whole family")
        return [matrix_sheet(joints, family, title=f"Interchange: {family.as_dict()['meta']['title'] or family_file.stem}")]
    for name in (variant, into):
        if name and name not in joints.variants:
            raise click.BadParameter(f"there is no variant {name!r}; known: {', '.join(joints.variants)}")
    pairs = [(of, unit) for of, unit in permutations(joints.variants, 2) if variant in (None, of) and into in (None, unit)]
    if not pairs:
        raise click.BadParameter(f"a {variant} part into a {into} unit is no exchange; name two variants")
    return [part_sheet(joints, family, part, variant=of, into=unit) for of, unit in pairs]


@command(Step.INTERCHANGE)
@click.argument("family_file", metavar="FAMILY", type=RECORD)
@click.option("--variant", "unit", required=True, help="Variant of the unit on the bench.")
@click.option("--want", "wanted", type=OfVariant(), multiple=True, help="A part wanted of a variant; may be repeated.")
@click.option("--found", type=OfVariant(), multiple=True, help="A part found to be of another variant; may be repeated.")
@click.option("--measured", type=Named("mm"), multiple=True,
              help="A diameter as found, by its name in the record's fits or as FIT.PART; may be repeated.")
@click.option("--instruments", type=RECORD, help="The shop's instruments: the uncertainty of sizes that are typed without one.")
@click.option("--cheapest", is_flag=True, help="Look for the lowest price instead of the fewest parts.")
@click.option("--spread", type=click.Choice(list(SPREADS)), default="rectangular", show_default=True,
              help="How the size of a part that is not measured is taken to lie in its tolerance.")
@answers_with_sheets
def order(
    family_file: Path, unit: str, wanted: tuple[tuple[str, str], ...], found: tuple[tuple[str, str], ...],
    measured: tuple[tuple[str, Typed], ...], instruments: Path | None, cheapest: bool, spread: str,
) -> Sheet:  # fmt: skip
    """What to order for a unit on the bench: parts wanted, foreign parts found, sizes measured; and what not to put in."""
    family = loaded(family_file, record.Family)
    tools = loaded(instruments, record.Instruments) if instruments else None
    sides = [side for name, typed in measured for side in fit_sides(family, tools, name, typed.reading if typed.reading.u else typed.reading.value)]
    sizes = [(side.fit, side.part, side.reading) for side in sides]
    bench = Bench(
        unit=unit, found=_once(found, "--found"), wanted=_once(wanted, "--want"), measured=sizes,
        typed=measured[0][1] if measured else None,
    )  # fmt: skip
    return order_sheet(family.joints(), bench, aim="cheapest" if cheapest else "fewest", spread=SPREADS[spread])


def _once(pairs: Iterable[tuple[str, str]], option: str) -> Mapping[str, str]:
    named: dict[str, str] = {}
    for part, variant in pairs:
        if part in named:
            raise click.BadParameter(f"{part} is given twice; name each part once", param_hint=option)
        named[part] = variant
    return named
