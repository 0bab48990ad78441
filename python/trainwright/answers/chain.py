"""Tolerance chains: what a row of parts leaves, and which part to measure first."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import inf
from typing import Any

from .. import Explanation
from ..edge import FIT, Typed, number, number_as, show_as, span_as
from ..error import refusal
from ..judge import Budget, Judgment, Limits, Reading, Rule, judge
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..stack import Chain, ChainLink, MeasureGain, chain, what_to_measure
from . import RULE, SPREADS, rule_in_words

WORST_K = 2.0
"""Standard uncertainties that a measured part counts with in the worst case."""


@dataclass(frozen=True)
class Part:
    """A part of a chain: its name, the change of the result per change of it, its link, and how it is known, in words."""

    name: str
    link: ChainLink
    known: str = "measured"


def measured_part(name: str, sensitivity: float, size_mm: Reading, known: str = "measured") -> Part:
    """A part that was measured."""
    return Part(name, ChainLink.measured(sensitivity, size_mm, k=WORST_K), known)


def toleranced_part(name: str, sensitivity: float, size_mm: Limits, spread: str) -> Part:
    """A part as its drawing has it; ``spread`` is one of :data:`trainwright.answers.SPREADS`."""
    return Part(name, ChainLink.toleranced(sensitivity, size_mm, spread=SPREADS[spread]), f"by its tolerance, {spread}")


def chained(parts: Sequence[Part]) -> Chain:
    """The chain of these parts."""
    return chain([part.link for part in parts])


def gains_of(judgment: Judgment, budget: Budget, measured_u_mm: float | None) -> list[MeasureGain]:
    """What measuring each part would bring; exactly where no uncertainty of the instrument is given."""
    return what_to_measure(judgment, budget, [measured_u_mm or 0.0] * len(budget.share))


def measure_table(parts: Sequence[Part], gains: Sequence[MeasureGain], judgment: Judgment, measured_u_mm: float | None, like: Typed | None) -> Table:
    """The parts by their share in the variance: the one to measure first stands first."""
    unit = like.unit.sign if like else "mm"
    still_open = judgment.verdict == "NOT PROVEN"
    rows = []
    for gain in gains:
        if gain.share <= 0.0:
            continue
        cells = (
            parts[gain.input].name, f"{number(100 * gain.share, 0)} %", number_as(gain.u_now, like, FIT + 1),
            number_as(gain.u_of_result, like, FIT + 1), *([_settles(gain)] if still_open else []),
        )  # fmt: skip
        rows.append(Row(cells))
    columns = ("part", ">share of variance", f">u now {unit}", f">u of result then {unit}", *(["chance that it settles the case"] if still_open else []))
    how = f"to a standard uncertainty of {show_as(measured_u_mm, like, FIT)}" if measured_u_mm else "exactly: measuring can bring no more than this"
    now = show_as(judgment.reading.u, like, FIT + 1)
    note = f"u: standard uncertainty, of the result {now} now. Each part alone measured {how}."
    return Table("What to measure first", columns, rows, note if still_open else f"{note} The case is decided without it.")


def _settles(gain: MeasureGain) -> str:
    if not gain.chance_go + gain.chance_no_go:
        return "none"
    return f"{_percent(gain.chance_go)} GO, {_percent(gain.chance_no_go)} NO-GO"


def _percent(chance: float) -> str:
    return Decision("", "", chance, "").percent


def gain_worked(parts: Sequence[Part], gain: MeasureGain, judgment: Judgment, budget: Budget) -> Explanation:
    """What measuring a part would bring, worked out."""
    known: dict[str, Any] = {"judgment.reading": judgment.reading, "budget.sensitivity": budget.sensitivity[gain.input]}
    return gain.explain(part=parts[gain.input].name, **known)


def settle_words(parts: Sequence[Part], gains: Sequence[MeasureGain], judgment: Judgment, like: Typed | None) -> str:
    """What would settle a case that is not proven."""
    if judgment.verdict != "NOT PROVEN" or not gains or gains[0].share <= 0.0:
        return ""
    first = gains[0]
    name = parts[first.input].name
    share = f"it makes {number(100 * first.share, 0)} % of the variance"
    if not first.enough:
        return f"Know the {name} better first: {share}, but it alone cannot settle the case if the value stays."
    return f"To settle it, measure the {name} to a standard uncertainty of {show_as(first.u_needed, like, FIT)}: {share}."


def judged_decision(about: str, judgment: Judgment, like: Typed | None, settle: str = "", rule: Rule = RULE) -> Decision:
    """The decision on a length between two limits."""
    limits = judgment.limits
    wanted = (
        f"at least {show_as(limits.lower, like, FIT)}" if limits.upper == inf
        else f"at most {show_as(limits.upper, like, FIT)}" if limits.lower == -inf
        else span_as(limits.lower, limits.upper, like, FIT)
    )  # fmt: skip
    basis = f"{show_as(judgment.reading, like, FIT)} against {wanted}; {rule_in_words(rule)}."
    return Decision(about, judgment.verdict, judgment.chance, basis, settle)


def spread_facts(found: Chain, like: Typed | None, what: str) -> list[Fact]:
    """Worst case, root sum of squares and uncertainty of a chain."""
    worst, rss = found.worst_mm, found.rss_mm
    return [
        Fact("worst case", span_as(worst.lower, worst.upper, like, FIT), f"{what} with every part at its worst: ± {show_as(found.worst_half_mm, like, FIT)}"),
        Fact("root sum of squares", span_as(rss.lower, rss.upper, like, FIT), f"± {show_as(found.rss_half_mm, like, FIT)}: parts independent and centered; {number(100 * found.rss_chance, 1)} % lie within it by the stated uncertainties"),
        Fact("standard uncertainty", show_as(found.reading_mm.u, like, FIT + 1), "of the result"),
    ]  # fmt: skip


def parts_table(parts: Sequence[Part], like: Typed | None) -> Table:
    """The parts of a chain as they were given."""
    unit = like.unit.sign if like else "mm"
    rows = [
        Row((part.name, _times(part.link.sensitivity), number_as(part.link.value_mm, like, FIT),
             number_as(part.link.half_width_mm, like, FIT), number_as(part.link.u_mm, like, FIT + 1), part.known))
        for part in parts
    ]  # fmt: skip
    return Table(
        "Parts", ("part", ">counts", f">size {unit}", f">± {unit}", f">u {unit}", "known"), rows,
        f"+: opens the gap, −: fills it. ±: half the tolerance, of a measured part {WORST_K:g} standard uncertainties u.",
    )  # fmt: skip


def _times(sensitivity: float) -> str:
    sign = "+" if sensitivity > 0 else "−"
    return sign if abs(sensitivity) == 1 else f"{sign}{abs(sensitivity):g}×"


def chain_sheet(
    parts: Sequence[Part], *, within: Limits | None = None, like: Typed | None = None, measured_u_mm: float | None = None,
    rule: Rule = RULE, title: str = "What the parts leave", story: str = "",
) -> Sheet:  # fmt: skip
    """What a chain of parts leaves: nominal, worst case, root sum of squares, judged if limits are given."""
    found = chained(parts)
    value = show_as(found.reading_mm.value, like, FIT)
    worst = span_as(found.worst_mm.lower, found.worst_mm.upper, like, FIT)
    answer = f"The parts leave {value}; with every part at its worst {worst}."
    data: dict[str, Any] = {"chain": found.as_dict(), "parts": [_part_data(part) for part in parts]}
    tables = [parts_table(parts, like)]
    decisions = []
    how = [found.explain()]
    if within:
        judgment = judge(found.reading_mm, within, rule)
        gains = gains_of(judgment, found.budget, measured_u_mm)
        how += [
            *(gain.explain(judgment={"reading": judgment.reading}, budget={"sensitivity": found.budget.sensitivity[gain.input]}) for gain in gains[:1]),
            judgment.explain(unit="mm", budget=found.budget, inputs=[part.name for part in parts]),
        ]
        decisions = [judged_decision("what the parts leave", judgment, like, settle_words(parts, gains, judgment, like), rule)]
        tables.append(measure_table(parts, gains, judgment, measured_u_mm, like))
        how.append(gain_worked(parts, gains[0], judgment, found.budget))
        data |= {"judgment": judgment.as_dict(), "measure": measure_data(parts, gains)}
        if judgment.verdict == "GO" and not (within.holds(found.worst_mm.lower) and within.holds(found.worst_mm.upper)):
            answer += " The worst case reaches beyond the limits: only the odds against every part at its worst make it a GO."
    return Sheet(
        title=title,
        story=story,
        answer=answer,
        decisions=decisions,
        tables=tables,
        facts=spread_facts(found, like, "the result"),
        not_checked=[
            "Sizes that depend on one another, as two parts from one worn tool: the root sum of squares and the chance take them as independent.",
            "Form and squareness of the faces, springs and bent parts in the row.",
            "Temperature: all sizes as at the same one.",
            *_not_normal(parts, found),
        ],
        cards=["stack.chain", "stack.what_to_measure", "judge.judge"] if within else ["stack.chain"],
        how=how,
        data=data,
    )


def _not_normal(parts: Sequence[Part], found: Chain) -> list[str]:
    """A word where one part that may lie anywhere in its tolerance governs: the sum is then not normal."""
    largest = found.budget.largest
    share = found.budget.share[largest]
    if share < 0.5 or not parts[largest].known.endswith("rectangular"):
        return []
    return [
        f"The shape of the spread: {parts[largest].name} makes {number(100 * share, 0)} % of the variance and may lie anywhere in its tolerance, so the sum is not "
        "normal, and a chance near the limits is only about right. The worst case bounds it; measuring that part mends it."
    ]


def _part_data(part: Part) -> dict[str, Any]:
    return {"name": part.name, **part.link.as_dict(), "known": part.known}


def measure_data(parts: Sequence[Part], gains: Sequence[MeasureGain]) -> list[dict[str, Any]]:
    """The gains for a program."""
    return [{"part": parts[gain.input].name, **gain.as_dict()} for gain in gains]


def with_readings(parts: Sequence[Part], readings_mm: Mapping[str, Reading]) -> list[Part]:
    """The parts, those that were measured by their reading instead of their tolerance."""
    names = [part.name for part in parts]
    for name in readings_mm:
        if name not in names:
            raise refusal("measured", f"no part is called {name!r}; there are {', '.join(names)}")
    return [
        measured_part(part.name, part.link.sensitivity, readings_mm[part.name]) if part.name in readings_mm else part for part in parts
    ]
