"""A sheet: the answer to one question of the shop, with everything that stands beside it. Printed, as JSON, or in a report."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any

from rich.console import Console
from rich.padding import Padding
from rich.table import Table as RichTable
from rich.text import Text

from . import Explanation, card, explain
from .edge import number

STYLES = {
    "GO": "bold green",
    "NOT PROVEN": "bold yellow",
    "NO-GO": "bold magenta",
    "forbidden": "bold magenta",
    "governs": "bold",
    "quiet": "dim",
    "": "",
}
"""Look of a marked row. The mark is always spelled out in the row too."""

BLANK = "_" * 10
"""A cell to be filled in by hand: a line on the console, a ruled box on paper."""

FORM = ("job", "unit", "date", "name")
"""The blanks at the head of a sheet that goes to the bench."""


@dataclass(frozen=True)
class Fact:
    """A number with its unit, and what it is or where it comes from."""

    label: str
    value: str
    why: str = ""


@dataclass(frozen=True)
class Row:
    """A row of a table; the mark gives its look. A cell may be ``BLANK``."""

    cells: tuple[str, ...]
    mark: str = ""


@dataclass(frozen=True)
class Table:
    """A table; columns that begin with ``>`` hold numbers."""

    title: str
    columns: tuple[str, ...]
    rows: list[Row]
    note: str = ""


@dataclass(frozen=True)
class Decision:
    """GO, NO-GO or NOT PROVEN, the chance behind it, and what would settle it."""

    about: str
    verdict: str
    chance: float | None
    """Chance that it is so; None where what was seen decides, not a number against a limit."""
    basis: str
    settle: str = ""

    @property
    def percent(self) -> str:
        """The chance in percent, never rounded up to certainty.

        >>> Decision("", "GO", 0.99996, "").percent, Decision("", "NO-GO", 0.0056, "").percent
        ('> 99.9 %', '0.6 %')
        """
        if self.chance is None:
            return "·"
        if self.chance > 0.999:
            return "> 99.9 %"
        return "< 0.1 %" if self.chance < 0.001 else f"{number(100 * self.chance, 1)} %"


@dataclass(frozen=True)
class Sheet:
    """The answer to one question."""

    title: str
    answer: str
    """What to do, or what is so, in a sentence or two."""
    story: str = ""
    """What was found or asked, before the answer."""
    decisions: list[Decision] = field(default_factory=list)
    facts: list[Fact] = field(default_factory=list)
    tables: list[Table] = field(default_factory=list)
    not_checked: list[str] = field(default_factory=list)
    cautions: list[str] = field(default_factory=list)
    cards: list[str] = field(default_factory=list)
    """Ids of the formulas used."""
    how: list[Explanation] = field(default_factory=list)
    """Formulas worked out with the values of this answer."""
    form: tuple[str, ...] = ()
    """Labels of blanks at the head, as ``FORM``, where the sheet is to be filled in."""
    data: dict[str, Any] = field(default_factory=dict)
    """The same numbers for a program, each key ending in its unit."""

    def explained(self) -> list[Explanation]:
        """Every formula used, worked out where the values are at hand."""
        worked = {explanation.card.id for explanation in self.how}
        return [*self.how, *(explain(id) for id in self.cards if id not in worked)]

    @property
    def brief(self) -> str:
        """The first sentence of the answer."""
        return self.answer.split(". ")[0].rstrip(".") + "."

    def as_dict(self, *, how: bool = False) -> dict[str, Any]:
        """For JSON; with the worked explanations where they are asked for."""
        return {
            "title": self.title,
            "answer": self.answer,
            "decisions": [
                {"about": d.about, "verdict": d.verdict, "chance": d.chance, "settle": d.settle} for d in self.decisions
            ],
            **self.data,
            "not_checked": self.not_checked,
            "cautions": self.cautions,
            "formulas": self.cards,
            **({"explanations": [explanation.as_dict() for explanation in self.explained()]} if how else {}),
        }

    def _repr_html_(self) -> str | None:
        """As a notebook shows it; as text where the extra `report` is not installed."""
        try:
            from .page import cell
        except ImportError:
            return None
        return cell(self)

    def print_answer(self, console: Console) -> None:
        """What was asked, the answer and its decisions: the head of what `print` prints."""
        console.rule(Text(self.title, "bold"), align="left", style="cyan")
        if self.form:
            console.print(Text("   ".join(f"{label} {BLANK}" for label in self.form) + "\n"))
        if self.story:
            console.print(Text(f"{self.story}\n", "italic"))
        console.print(Text(self.answer))
        for decision in self.decisions:
            line = Text("\n").append(f" {decision.verdict} ", f"reverse {STYLES[decision.verdict]}")
            chance = "" if decision.chance is None else f"chance {decision.percent}. "
            line.append(f"  {decision.about}", "bold").append(f": {chance}{decision.basis}")
            if decision.settle:
                line.append(f" {decision.settle}", "italic")
            console.print(line)

    def print(self, console: Console, *, sources: bool = True, how: bool = False) -> None:
        """To the terminal; with the worked explanations where they are asked for."""
        self.print_answer(console)
        for table in self.tables:
            console.print(Text(f"\n{table.title}", "bold"))
            console.print(_rich(table))
            if table.note:
                console.print(Text(table.note, "dim"))
        if self.facts:
            console.print()
            console.print(_facts(self.facts))
        for heading, lines in (("Not checked here", self.not_checked), ("Caution", self.cautions)):
            if lines:
                console.print(Text(f"\n{heading}", "bold"))
                for item in lines:
                    console.print(Padding(Text(f"• {item}"), (0, 0, 0, 1)))
        if sources and self.cards:
            console.print(Text("\nSources: " + "; ".join(sources_of([self])), "dim"))
        if how:
            console.print(Text("\nHow it is worked out", "bold"))
            for explanation in self.explained():
                console.print(Padding(Text(f"\n{explanation}"), (0, 0, 0, 1)))
        console.print()


def sources_of(sheets: Iterable[Sheet]) -> list[str]:
    """Each work that the formulas of these answers come from, once."""
    return list(dict.fromkeys(card(id).source.work for sheet in sheets for id in sheet.cards))


def _rich(table: Table) -> RichTable:
    rich = RichTable(box=None, padding=(0, 2, 0, 0), pad_edge=False)
    for column in table.columns:
        number = column[0] == ">"
        rich.add_column(column.lstrip(">"), justify="right" if number else "left", header_style="cyan", overflow="fold", no_wrap=number)
    for row in table.rows:
        rich.add_row(*(Text(cell) for cell in row.cells), style=STYLES[row.mark])
    return rich


def _facts(facts: list[Fact]) -> RichTable:
    rich = RichTable(show_header=False, box=None, padding=(0, 2, 0, 0), pad_edge=False)
    rich.add_column(style="cyan", overflow="fold")
    rich.add_column(justify="right", style="bold", no_wrap=True)
    rich.add_column(style="dim", overflow="fold")
    for fact in facts:
        rich.add_row(Text(fact.label), Text(fact.value), Text(fact.why))
    return rich
