"""The command that explains a formula."""

from __future__ import annotations

import json
from difflib import get_close_matches

import click
from rich.console import Console
from rich.text import Text

from .. import Card, cards
from .. import explain as explained
from .common import Step, command


@command(Step.RECORDS)
@click.argument("formula", required=False)
@click.option("--json", "as_json", is_flag=True, help="Print as JSON.")
def explain(formula: str | None, as_json: bool) -> None:
    """A formula in words: purpose, equation, symbols, range and source; without a name, the list of all.

    FORMULA is the id of a card, as clutch.capacity, or a chapter, as clutch. To see one with the values of an answer, add
    --explain to the command that gives the answer.
    """
    known = {card.id: card for card in cards()}
    if formula in known:
        explanation = explained(formula)
        click.echo(explanation.as_json() if as_json else str(explanation))
        return
    chosen = [card for card in known.values() if formula in (None, _chapter(card))]
    if not chosen:
        near = get_close_matches(str(formula), known, 3, 0.5)
        hint = f"did you mean {' or '.join(near)}?" if near else f"chapters: {', '.join(dict.fromkeys(map(_chapter, known.values())))}"
        raise click.BadParameter(f"no formula and no chapter is called {formula!r}; {hint}", param_hint="FORMULA")
    if as_json:
        click.echo(json.dumps([{"id": card.id, "purpose": card.purpose, "equation": card.equation} for card in chosen], indent=2, ensure_ascii=False))
        return
    console = Console(highlight=False)
    width = max(len(card.id) for card in chosen)
    for place, card in enumerate(chosen):
        if place and _chapter(card) != _chapter(chosen[place - 1]):
            console.print()
        console.print(Text(card.id.ljust(width + 2), "cyan").append(card.purpose, "default"), soft_wrap=True)


def _chapter(card: Card) -> str:
    return card.id.split(".")[0]
