"""Which unit is on the bench: chances of the variants, foreign parts and what they do to their fits, what to order, what to look at next."""

from __future__ import annotations

from math import isfinite, log

from ... import Explanation, hazard
from ...edge import FIT, number, show_as
from ...identify import Identification, LookMade, NextLook, Part
from ...judge import Reading, Rule
from ...sheet import Decision, Fact, Sheet
from .. import rule_in_words
from ..interchange import listed, plain, price_of
from .bench import Bench, Measured, has_joints
from .looks import in_percent
from .tables import data_of, fit_table, next_table, part_table, variant_table

NOT_CHECKED = [
    "Parts that nobody looked at: what was not looked at is neither there nor absent.",
    "Whether a part was exchanged for one of the same variant: its looks cannot tell.",
    "Wear: a size tells variants apart by the limits of new parts. Measure where the part has not run.",
]


def identify_sheet(bench: Bench, *, title: str, story: str = "") -> Sheet:
    """The answer for a counter person: which unit it is, what in it is foreign and what that does, what to order, where to look next."""
    unit, rule = bench.unit, bench.unit.conclusion.rule
    best = max(unit.chance, key=unit.chance.__getitem__)
    settled = unit.conclusion.variant_settled and unit.outcome != "unexplained"
    tables = [variant_table(bench), part_table(unit), fit_table(bench), next_table(unit)]
    gap = unit.weighed.ln_gap / log(10.0)
    next_one = next((look for look in unit.next_looks if look.worth and look.worth.bits > 0), None)
    return Sheet(
        title=title,
        story=story,
        answer=_in_words(bench, next_one),
        decisions=[
            Decision(f"the unit is {best}", "GO" if settled else "NOT PROVEN", unit.chance[best], f"{rule_in_words(rule)}.",
                     "" if settled else _settle(unit, next_one)),
            *(_part_decision(part, best, rule) for part in unit.conflicts if unit.conclusion.variant_settled),
            *(_fit_decision(measured, bench) for measured in bench.fits),
        ],
        tables=[table for table in tables if table.rows],
        facts=[
            Fact("verdict", unit.outcome, "one variant, mixed, not settled or unexplained"),
            Fact("mixed", in_percent(unit.weighed.chance_mixed), "chance that any part which was looked at is of another variant than the unit"),
            Fact("not known yet", f"{number(unit.weighed.entropy_bits, 3)} bit", "1 bit: which of two equally likely variants it is"),
            Fact("contradiction", f"10^{number(gap, 1)}" if isfinite(gap) else "complete",
                 "how much likelier the looks are part by part than in any one variant; 10^0: they agree"),
        ],
        not_checked=[*NOT_CHECKED, *_flags(bench)],
        cautions=[hazard.caution("roll-away")] if any("park" in part.name for part in unit.conflicts) else [],
        cards=["identify.weigh", "identify.part", "identify.conclude", "identify.mark_worth", "identify.size_worth", *(["fit.measured"] if bench.fits else [])],
        how=[
            unit.weighed.explain(),
            *(part.finding.explain() for part in bench.foreign),
            unit.conclusion.explain(),
            *_worth_explained(next_one),
            *(measured.clearance.explain() for measured in bench.fits),
        ],
        data=data_of(bench),
    )  # fmt: skip


def _worth_explained(look: NextLook | None) -> list[Explanation]:
    if look is None or look.worth is None:
        return []
    card = "identify.size_worth" if look.look.instrument else "identify.mark_worth"
    return [look.worth.explain(card=card, minutes=look.look.minutes)]


def _in_words(bench: Bench, next_one: NextLook | None) -> str:
    unit = bench.unit
    best = max(unit.chance, key=unit.chance.__getitem__)
    wrong = [made for made in unit.made if made.unexplained]
    if wrong:
        return " ".join(_unexplained(made, bench) for made in wrong)
    said = f"{best.capitalize()}, chance {in_percent(unit.chance[best])}"
    if unit.outcome == "not settled" and not unit.conclusion.variant_settled:
        others = ", ".join(f"{name} {in_percent(chance)}" for name, chance in sorted(unit.chance.items(), key=lambda item: -item[1]) if name != best)
        said = f"Not settled: {best} {in_percent(unit.chance[best])}, {others}."
        if unit.weighed.chance_mixed >= unit.conclusion.rule.go:
            either = " or ".join(plain(part.name) for part in unit.conflicts)
            said += f" Something in it is foreign, chance {in_percent(unit.weighed.chance_mixed)}: {either}."
        return f"{said} {_next_words(next_one)}".strip()
    if unit.outcome == "one variant":
        parts = "every part that was looked at belongs to it" if unit.parts else "by the prior alone: nothing was looked at"
        return f"{said}; {parts}. {_next_words(next_one) if unit.parts else ''}".strip()
    if not bench.foreign:
        return f"{said}. Whether the {listed(part.name for part in unit.conflicts)} belongs to it is not proven: look at something else on it."
    foreign = [f"the {plain(part.name)} is {_a(part.origin)} part (chance {in_percent(part.finding.foreign)})" for part in bench.foreign]
    said += f", and mixed: {' and '.join(foreign)}."
    for measured in bench.fits:
        if measured.clearance.judgment.verdict == "NO-GO" and {measured.shaft.part, measured.bore.part} & {part.name for part in bench.foreign}:
            loose = measured.clearance.chance_loose > measured.clearance.chance_tight
            said += (
                f" {plain(measured.shaft.part).capitalize()} in {plain(measured.bore.part)}: clearance {show_as(measured.clearance.clearance_mm.value, bench.like, FIT)}, "
                f"limit {show_as(measured.clearance.judgment.limits.upper, bench.like, FIT)}: {'it goes together and runs loose' if loose else 'too tight'}."
            )
    return said + _order_words(bench)


def _order_words(bench: Bench) -> str:
    joints, order = bench.family.joints(), bench.order
    said = ""
    if order and not order.possible:
        said = f" No order puts it right: nothing mends {plain(order.stopped_at or '')}."
    elif order and not order.parts:
        said = " Nothing to order for it: every fit, cover and match of the record holds."
    elif order:
        parts = [f"one {variant} {plain(part)}" for part, variant in order.parts.items()]
        machined = f"; {listed(order.machining.values())}" if order.machining else ""
        said = f" Order {' and '.join(parts)}{machined}: {price_of(joints, order)}."
    unknown = [part.name for part in bench.foreign if not has_joints(joints, part.name, bench.unit.best)]
    if unknown:
        said += f" Whether the {listed(unknown)} fits is not known: the record has no joint of it. Compare the parts before you order."
    return said


def _a(name: str) -> str:
    return f"{'an' if name[0] in 'aeiou' else 'a'} {name}"


def _next_words(next_one: NextLook | None) -> str:
    if next_one is None or next_one.worth is None:
        return ""
    tool = f", {plain(next_one.look.instrument)}" if next_one.look.instrument else ""
    return (
        f"Look next at {next_one.look.id}: {next_one.look.text} ({number(next_one.look.minutes, 0)} min{tool}), "
        f"{number(next_one.worth.bits_per_minute, 3)} bit per minute."
    )


def _settle(unit: Identification, next_one: NextLook | None) -> str:
    if unit.outcome == "unexplained":
        return "Measure again: a reading fits no variant."
    best = max((look for look in unit.next_looks if look.worth), key=lambda look: look.worth.settles if look.worth else 0.0, default=None)
    if next_one is None or next_one.worth is None or best is None or best.worth is None:
        return "No further look of the record tells anything: add evidence, or measure ratios."
    said = f"{next_one.look.id} settles it with a chance of {in_percent(next_one.worth.settles)}"
    if best.look.id != next_one.look.id and best.worth.settles > next_one.worth.settles + 0.005:
        said += f"; {best.look.id}, {number(best.look.minutes, 0)} min, of {in_percent(best.worth.settles)}"
    return f"To settle it: {said}."


def _unexplained(made: LookMade, bench: Bench) -> str:
    like = bench.typed.get(made.look.id)
    assert isinstance(made.found, Reading) and made.look.size_mm and made.nearest
    limits = made.look.size_mm[made.nearest]
    side = "below" if made.outside_mm < 0 else "above"
    return (
        f"Not settled: {made.look.id}, {show_as(made.found.value, like, FIT)}, fits no variant. The nearest is {made.nearest}, "
        f"{show_as(limits.lower, like, FIT)} to {show_as(limits.upper, like, FIT)}; the reading lies {show_as(abs(made.outside_mm), like, FIT)} {side}, "
        f"{number(abs(made.outside_u), 0)} standard uncertainties. Check instrument, unit and part, and measure where the part has not worn. "
        f"If it stays so, the part is worn past telling or not of this family: leave this size out."
    )


def _part_decision(part: Part, best: str, rule: Rule) -> Decision:
    finding = part.finding
    verdict = "NO-GO" if finding.foreign >= rule.go else "NOT PROVEN"
    basis = f"It came from {part.origin} with a chance of {in_percent(finding.chance)}; {rule_in_words(rule)}."
    settled = "" if verdict == "NO-GO" else "Look at something else on the same part."
    return Decision(f"the {plain(part.name)} is {_a(best)} part", verdict, 1.0 - finding.foreign, basis, settled)


def _fit_decision(measured: Measured, bench: Bench) -> Decision:
    judged = measured.clearance.judgment
    basis = (
        f"{show_as(measured.clearance.clearance_mm, bench.like, FIT)}, wanted at most {show_as(judged.limits.upper, bench.like, FIT)}; "
        f"{rule_in_words(judged.rule)}."
    )
    return Decision(f"{plain(measured.shaft.fit)}, as found", judged.verdict, judged.chance, basis)


def _flags(bench: Bench) -> list[str]:
    unused = [f"{name} was measured too: neither the evidence nor a fit of the record has a size of this name." for name in bench.unused]
    return unused + [
        f"{made.look.id} lies outside the range of the {plain(made.look.instrument or '')}, as the record asks for: its uncertainty there is taken as inside."
        for made in bench.unit.made
        if made.out_of_range
    ]
