"""Two variants part by part: what each change buys, and what it costs elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf, isinf, log

from .. import hazard
from ..edge import number
from ..hold import Comparison, FigureChange, PartComparison
from ..sheet import Row, Sheet, Table

STATED = ("rating", "ratios")
"""Parts that state what is asked, not what a part can do."""
ASIDE = ("life by size alone",)
"""Figures that tell another one again, by a simpler formula."""


@dataclass(frozen=True)
class Mark:
    """A figure worth a bar: how many times better (above 1) or worse (below 1)."""

    part: str
    figure: str
    better: float
    ratio: float
    effect: str


def better_by(figure: FigureChange) -> float:
    """How many times better a change makes a figure; below 1 where it costs."""
    change = figure.change
    return 1 / change.ratio if change.better == "less" else change.ratio


def strongest(part: PartComparison) -> Iterator[Mark]:
    """What a part buys most, and what it costs most."""
    for effect in ("buys", "costs"):
        figures = [figure for figure in part.changes if figure.change.effect == effect and figure.figure not in ASIDE]
        if figures:
            figure = max(figures, key=lambda figure: _weight(better_by(figure)))
            yield Mark(in_words(part.part), figure.figure, better_by(figure), figure.change.ratio, effect)


def _weight(better: float) -> float:
    """How much a change weighs. One from nothing has no ratio, and stands behind all that have one."""
    return abs(log(better)) if 0 < better < inf else 0.0


def in_words(name: str) -> str:
    """A name of the record for a sentence."""
    return name.replace("_", " ")


def compare_sheet(comparison: Comparison, *, title: str, story: str = "") -> Sheet:
    """What each part gains most and pays most, then a table for each part: before, after, their ratio, buys or costs."""
    before, after = comparison.before, comparison.after
    own = [part for part in comparison.parts if part.part not in STATED]
    effects = [figure.change.effect for part in own for figure in part.changes]
    bargains = [marks for part in own if (marks := list(strongest(part)))]
    if not comparison.parts:
        answer = f"{after} and {before} are alike in everything that the record states."
    else:
        answer = (
            f"{after} instead of {before}: {effects.count('buys')} figures of its parts are better, {effects.count('costs')} are worse, "
            f"{effects.count('differs')} only differ. {_dearest(bargains)}"
        )
    cards = [figure.card for part in comparison.parts for figure in part.changes if figure.card]
    return Sheet(
        title=title,
        story=story,
        answer=answer.strip(),
        tables=[*([_bargains(bargains)] if bargains else []), *(_table(part, before, after) for part in comparison.parts)],
        not_checked=[
            "Whether the parts fit: what changes together stands under each table, and interchange gives the clearances.",
            "Material, heat treatment and condition: equal names are taken as equal stuff.",
            "Drag, noise and the feel of a shift; the control, which was made for one of the two.",
            *([f"Alike in the record: {', '.join(in_words(part) for part in comparison.alike)}."] if comparison.alike else []),
        ],
        cautions=[hazard.caution("raised pressure"), hazard.caution("roll-away"), hazard.caution("overspeed")],
        cards=list(dict.fromkeys(cards)),
        data={
            "before": before,
            "after": after,
            "parts": {
                part.part: {
                    "at": part.at,
                    "goes_with": part.goes_with,
                    "changes": [
                        {"figure": figure.figure, "unit": figure.unit, **figure.change.as_dict(), "why": figure.why} for figure in part.changes
                    ],
                }
                for part in comparison.parts
            },
            "alike": comparison.alike,
        },
    )


def _dearest(bargains: list[list[Mark]]) -> str:
    """The part whose gain and price are both large, as an example."""
    pairs = [marks for marks in bargains if len(marks) == 2]
    if not pairs:
        return "No part both gains and loses."
    gain, price = max(pairs, key=lambda marks: min(_weight(mark.better) for mark in marks))
    return f"Few changes come alone, see the first table: {gain.part} has {gain.figure} × {_ratio(gain.ratio)} at the price of {price.figure} × {_ratio(price.ratio)}."


def _bargains(bargains: list[list[Mark]]) -> Table:
    rows = []
    for marks in bargains:
        by = {mark.effect: mark for mark in marks}
        cells = [marks[0].part]
        for effect in ("buys", "costs"):
            cells += [by[effect].figure, _ratio(by[effect].ratio)] if effect in by else ["–", ""]
        rows.append(Row(tuple(cells)))
    columns = ("part", "buys most", ">×", "costs most", ">×")
    return Table("The bargain, part by part", columns, rows, "After over before; every figure stands in the tables below.")


def _table(part: PartComparison, before: str, after: str) -> Table:
    rows = []
    for figure in part.changes:
        change = figure.change
        name = f"{figure.figure}, {figure.unit}" if figure.unit else figure.figure
        cells = (name, _figure(change.before), _figure(change.after), _ratio(change.ratio), change.effect, figure.why)
        rows.append(Row(cells, {"costs": "governs", "same": "quiet"}.get(change.effect, "")))
    notes = [f"{part.at[0].upper()}{part.at[1:]}."] if part.at else []
    if part.goes_with:
        notes.append(f"Changes together with: {', '.join(in_words(mate) for mate in part.goes_with)}.")
    columns = ("figure", f">{before}", f">{after}", ">×", "effect", "meaning")
    return Table(in_words(part.part), columns, rows, " ".join(notes))


def _figure(value: float) -> str:
    """A figure with four digits, whole numbers as they are.

    >>> _figure(105600.0), _figure(0.15), _figure(-2.9671), _figure(1.0)
    ('105600', '0.1500', '−2.967', '1')
    """
    if float(value).is_integer():
        return number(value, 0)
    digits = max(0, min(4, 3 - int(f"{abs(value):e}".partition("e")[2])))
    return number(value, digits)


def _ratio(value: float) -> str:
    """A ratio with three digits, more where it is close to 1.

    >>> _ratio(1.6875), _ratio(1.00183), _ratio(1.0), _ratio(float("inf"))
    ('1.69', '1.0018', '1', 'new')
    """
    if value == 1.0 or isinf(value):
        return "new" if isinf(value) else "1"
    return number(value, 4 if abs(value - 1) < 0.005 else 2)
