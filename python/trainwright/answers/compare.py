"""Two variants part by part: what each change buys, and what it costs elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import log

from .. import hazard
from ..edge import number
from ..hold import Comparison, FigureChange, PartComparison
from ..sheet import Row, Sheet, Table

STATED = ("rating", "ratios")
"""Parts that state what is asked, not what a part can do."""


@dataclass(frozen=True)
class Mark:
    """A figure worth a bar: how many times better (above 1) or worse (below 1)."""

    part: str
    figure: str
    better: float
    ratio: float
    effect: str


def better_by(figure: FigureChange) -> float:
    """How many times better a change makes a figure; below 1 where it costs.

    >>> from trainwright import hold
    >>> hold.change(27, 36, better="less").ratio > 1
    True
    """
    change = figure.change
    return 1 / change.ratio if change.better == "less" else change.ratio


def strongest(part: PartComparison) -> Iterator[Mark]:
    """What a part buys most, and what it costs most."""
    for effect in ("buys", "costs"):
        figures = [figure for figure in part.changes if figure.change.effect == effect]
        if figures:
            figure = max(figures, key=lambda figure: abs(log(better_by(figure))))
            yield Mark(in_words(part.part), figure.figure, better_by(figure), figure.change.ratio, effect)


def in_words(name: str) -> str:
    """A name of the record for a sentence."""
    return name.replace("_", " ")


def compare_sheet(comparison: Comparison, *, title: str, story: str = "") -> Sheet:
    """A table for each part that differs: before, after, their ratio, and whether it buys or costs."""
    before, after = comparison.before, comparison.after
    bargains = [
        f"{marks[0].part}: {marks[0].figure} × {_ratio(marks[0].ratio)}, but {marks[1].figure} × {_ratio(marks[1].ratio)}"
        for part in comparison.parts
        if part.part not in STATED and len(marks := list(strongest(part))) == 2
    ]
    effects = [figure.change.effect for part in comparison.parts if part.part not in STATED for figure in part.changes]
    if not comparison.parts:
        answer = f"{after} and {before} are alike in everything that the record states."
    else:
        answer = (
            f"{after} instead of {before}: {effects.count('buys')} figures are better, {effects.count('costs')} are worse, "
            f"{effects.count('differs')} only differ. "
        )
        answer += f"Hardly a change comes alone. {_sentence(bargains)}" if bargains else "No part both gains and loses."
    cards = [figure.card for part in comparison.parts for figure in part.changes if figure.card]
    return Sheet(
        title=title,
        story=story,
        answer=answer.strip(),
        tables=[_table(part, before, after) for part in comparison.parts],
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


def _sentence(bargains: list[str]) -> str:
    return "; ".join(bargains) + "."


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

    >>> _ratio(1.6875), _ratio(1.00183), _ratio(1.0)
    ('1.69', '1.0018', '1')
    """
    if value == 1.0:
        return "1"
    return number(value, 4 if abs(value - 1) < 0.005 else 2)
