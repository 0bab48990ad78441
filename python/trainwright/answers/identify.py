"""Which unit is on the bench: chances of the variants, foreign parts and what they do to their fits, what to order, what to look at next."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from math import isfinite, log
from typing import Any

from .. import Explanation, fit, hazard
from ..edge import FIT, Typed, number, number_as, show_as
from ..fit import MeasuredClearance
from ..identify import Identification, Look, LookMade, NextLook, Part
from ..interchange import Joints, Order
from ..judge import Limits, Reading, Rule
from ..record import Family, Instruments
from ..sheet import Decision, Fact, Row, Sheet, Table
from . import RULE, rule_in_words
from .interchange import listed, plain, price_of
from .sizes import FitSide, fit_sides, names_a_fit

NOT_CHECKED = [
    "Parts that nobody looked at: what was not looked at is neither there nor absent.",
    "Whether a part was exchanged for one of the same variant: its looks cannot tell.",
    "Wear: a size tells variants apart by the limits of new parts. Measure where the part has not run.",
]


@dataclass(frozen=True)
class Found:
    """What was found on a unit: marks that are there or not, sizes as typed, and sizes of fits that are no evidence."""

    seen: Mapping[str, bool] = field(default_factory=dict)
    measured: Mapping[str, Typed | Reading | float] = field(default_factory=dict)
    unused: Sequence[str] = ()
    """Sizes that were measured too, and that the record does not know."""


def in_percent(chance: float) -> str:
    """A chance, never rounded up to certainty."""
    return Decision("", "", chance, "").percent


def look_sheet(family: Family, instruments: Instruments | None, *, title: str) -> Sheet:
    """Everything that can be looked at, with what each variant shows."""
    looks = family.looks(instruments=instruments)
    marks = [look for look in looks if look.chance is not None]
    sizes = [look for look in looks if look.size_mm is not None]
    variants = family.variants
    mark_rows = [
        Row((look.id, f"{look.text}; on the {plain(look.part)}", number(look.minutes, 0), *(in_percent(look.chance[of]) for of in variants)))
        for look in marks
        if look.chance
    ]
    size_rows = [Row((look.id, f"{look.text}; of the {plain(look.part)}", number(look.minutes, 0), _tool(look))) for look in sizes]
    limit_rows = [
        Row((look.id, *(f"{look.size_mm[of].lower:.3f} to {look.size_mm[of].upper:.3f}" for of in variants))) for look in sizes if look.size_mm
    ]
    tables = [
        Table("Marks: --seen NAME or --not-seen NAME", ("name", "what to look for", ">min", *(f">{of}" for of in variants)), mark_rows,
              "Under the variants: chance that an untouched unit shows it."),
        Table("Sizes: --measured NAME=VALUE", ("name", "what to measure", ">min", "with"), size_rows),
        Table("Limits of these sizes, mm", ("name", *(f">{of}" for of in variants)), limit_rows),
    ]  # fmt: skip
    return Sheet(
        title=title,
        answer=f"{len(marks)} marks and {len(sizes)} sizes on {len({look.part for look in looks})} parts.",
        tables=[table for table in tables if table.rows],
        data={"looks": [{"id": look.id, "part": look.part, "minutes": look.minutes, "instrument": look.instrument} for look in looks]},
    )


def _tool(look: Look) -> str:
    return "" if look.instrument is None else plain(look.instrument) + (f", u {look.u_mm:g} mm" if look.u_mm else "")


# ---- a unit


@dataclass(frozen=True)
class Measured:
    """A fit of which both sides were measured."""

    shaft: FitSide
    bore: FitSide
    clearance: MeasuredClearance


@dataclass(frozen=True)
class Bench:
    """The unit as identified, its measured fits, and the order that puts it right, where it is settled."""

    family: Family
    unit: Identification
    typed: Mapping[str, Typed]
    fits: Sequence[Measured]
    order: Order | None
    unused: Sequence[str] = ()

    @property
    def like(self) -> Typed | None:
        """The unit that lengths were typed in first."""
        return next(iter(self.typed.values()), None)

    @property
    def foreign(self) -> list[Part]:
        """Parts that are proven to be of another variant."""
        go = self.unit.conclusion.rule.go
        return [part for part in self.unit.conflicts if part.finding.foreign >= go]


def identified(
    family: Family, found: Found, *, instruments: Instruments | None = None, prior: Mapping[str, float] | None = None, rule: Rule = RULE
) -> Bench:  # fmt: skip
    """The unit with these findings. Sizes may be typed in any unit of length, or be millimeters as an instrument of the record shows them."""
    shares = dict(prior) if prior else None
    evidence = {look.id for look in family.looks(instruments=instruments, prior=shares)}
    typed = {name: size for name, size in found.measured.items() if isinstance(size, Typed)}
    sizes = {name: _reading(size) for name, size in found.measured.items()}
    of_fits_alone = {name: size for name, size in sizes.items() if name not in evidence and names_a_fit(family, name)}
    unit = family.identify(
        seen=dict(found.seen), measured_mm={name: size for name, size in sizes.items() if name not in of_fits_alone},
        instruments=instruments, prior=shares, rule=rule,
    )  # fmt: skip
    read = {made.look.id: made.found for made in unit.made if isinstance(made.found, Reading)}
    of_fits = of_fits_alone | {name: reading for name, reading in read.items() if names_a_fit(family, name)}
    sides = [side for name, size in of_fits.items() for side in fit_sides(family, instruments, name, size)]
    return Bench(family, unit, typed, _measured_fits(family, sides, rule), _order(family, unit, sides, rule), found.unused)


def _reading(size: Typed | Reading | float) -> Reading | float:
    """What was typed without an uncertainty is a number: the instrument of the record has one."""
    reading = size.reading if isinstance(size, Typed) else size
    return reading.value if isinstance(reading, Reading) and not reading.u else reading


def _measured_fits(family: Family, sides: Sequence[FitSide], rule: Rule) -> list[Measured]:
    fits = []
    for entry in family.as_dict()["fit"]:
        found = {side.side: side for side in sides if side.fit == entry["id"]}
        if len(found) == 2:
            wanted = Limits(upper=0.0) if entry["kind"] == "press" else Limits(lower=0.0, upper=entry["limit_mm"])
            clearance = fit.measured(shaft_mm=found["shaft"].reading, bore_mm=found["bore"].reading, wanted_mm=wanted, rule=rule)
            fits.append(Measured(found["shaft"], found["bore"], clearance))
    return fits


def _order(family: Family, unit: Identification, sides: Sequence[FitSide], rule: Rule) -> Order | None:
    """What to order for the unit as found; None while the unit is not settled, or where nothing is known of how its foreign parts fit."""
    joints = family.joints()
    foreign = {part.name: part.origin for part in unit.conflicts if part.finding.foreign >= rule.go and _has_joints(joints, part.name, unit.best)}
    if unit.outcome != "mixed" or not foreign:
        return None
    known = {joint.name for joint in joints.joints}
    measured = [(side.fit, side.part, side.reading) for side in sides if side.fit in known and side.part in foreign]
    return joints.order(unit=unit.best, aim="fewest", wanted={}, found=foreign, measured=measured, rule=rule, spread="rectangular")


def _has_joints(joints: Joints, part: str, unit: str) -> bool:
    other = next((variant for variant in joints.variants if variant != unit), unit)
    return part in joints.parts and part not in joints.fixed and joints.answer(part, variant=other, into=unit).joints > 0


def identify_sheet(bench: Bench, *, title: str, story: str = "") -> Sheet:
    """The answer for a counter person: which unit it is, what in it is foreign and what that does, what to order, where to look next."""
    unit, rule = bench.unit, bench.unit.conclusion.rule
    best = max(unit.chance, key=unit.chance.__getitem__)
    settled = unit.conclusion.variant_settled and unit.outcome != "unexplained"
    tables = [_variant_table(bench), _part_table(unit), _fit_table(bench), _next_table(unit)]
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
        data=_data(bench),
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
    unknown = [part.name for part in bench.foreign if not _has_joints(joints, part.name, bench.unit.best)]
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


def _variant_table(bench: Bench) -> Table:
    """Every look with the chances after it."""
    unit = bench.unit
    variants = list(unit.chance)
    rows = [Row(("", "", "before any look", *(in_percent(unit.prior[of]) for of in variants)), "quiet")]
    for made in unit.made:
        found = _shown(made, bench) if isinstance(made.found, Reading) else "there" if made.found else "not there"
        mark = "governs" if made.unexplained else ""
        rows.append(Row((made.look.id, plain(made.look.part), found, *(in_percent(made.chance[of]) for of in variants)), mark))
    note = "Looks on one part count once: an exchanged part brings all its marks along. Their order does not matter to the last row."
    return Table("Chance of each variant, look by look", ("look", "on the", "found", *(f">{of}" for of in variants)), rows, note)


def _shown(made: LookMade, bench: Bench) -> str:
    """A size as it was typed."""
    assert isinstance(made.found, Reading)
    typed = bench.typed.get(made.look.id)
    return show_as(typed.reading, typed) if typed else f"{made.found.value:g} mm"


def _part_table(unit: Identification) -> Table:
    rule = unit.conclusion.rule
    rows = []
    for part in unit.parts.values():
        foreign = part.finding.foreign
        words = "foreign" if foreign >= rule.go else "belongs" if foreign <= rule.no_go else "open"
        mark = {"foreign": "NO-GO", "open": "NOT PROVEN"}.get(words, "")
        rows.append(Row((plain(part.name), part.origin, in_percent(part.finding.chance), in_percent(part.finding.exchanged), in_percent(foreign), words), mark))
    note = "Exchanged: from another unit, of whatever variant. Foreign: of another variant than this unit, which is what an order must heed."
    return Table("Where the parts came from", ("part", "from", ">chance", ">exchanged", ">foreign", "verdict"), rows, note)


def _fit_table(bench: Bench) -> Table:
    """In the unit that was typed first."""
    sign = bench.like.unit.sign if bench.like else "mm"
    rows = []
    for measured in bench.fits:
        shaft, bore, clearance = measured.shaft, measured.bore, measured.clearance
        sizes = (shaft.reading.value, bore.reading.value, clearance.clearance_mm.value, clearance.judgment.limits.upper)
        cells = (*(number_as(size, bench.like, FIT) for size in sizes), number_as(clearance.clearance_mm.u, bench.like, FIT + 1))
        rows.append(Row((plain(shaft.fit), *cells, clearance.judgment.verdict), clearance.judgment.verdict))
    columns = ("fit", f">shaft {sign}", f">bore {sign}", f">clearance {sign}", f">at most {sign}", f">u of clearance {sign}", "verdict")
    return Table("Fits of which both parts were measured", columns, rows)


def _next_table(unit: Identification) -> Table:
    rows: list[Row] = []
    for look in unit.next_looks:
        what, worth = look.look, look.worth
        tool = plain(what.instrument) if what.instrument else "eye"
        if worth is None:
            cells = ("?", "?")
        else:
            cells = (number(worth.bits_per_minute, 4), in_percent(worth.settles))
        rows.append(Row((what.id, plain(what.part), tool, number(what.minutes, 0), *cells), "governs" if not rows and worth and worth.bits else ""))
    note = "Bit/min: information about the variant to be expected, for each minute of labor. Settles: chance that one variant is proven afterward."
    if any(look.worth is None for look in unit.next_looks):
        note += " ?: the record of the instruments would tell how well it can be measured."
    return Table("What to look at next", ("look", "on the", "with", ">min", ">bit/min", ">settles"), rows, note)


def _flags(bench: Bench) -> list[str]:
    unused = [f"{name} was measured too: neither the evidence nor a fit of the record has a size of this name." for name in bench.unused]
    return unused + [
        f"{made.look.id} lies outside the range of the {plain(made.look.instrument or '')}, as the record asks for: its uncertainty there is taken as inside."
        for made in bench.unit.made
        if made.out_of_range
    ]


def _data(bench: Bench) -> dict[str, Any]:
    unit = bench.unit
    return {
        "outcome": unit.outcome,
        "best": unit.best,
        "chance": unit.chance,
        "chance_mixed": unit.weighed.chance_mixed,
        "entropy_bits": unit.weighed.entropy_bits,
        "looks": [
            {"id": made.look.id, "found": made.found.as_dict() if isinstance(made.found, Reading) else made.found, "chance": made.chance,
             "unexplained": made.unexplained}
            for made in unit.made
        ],
        "parts": {name: _part_data(part) for name, part in unit.parts.items()},
        "conflicts": [part.name for part in unit.conflicts],
        "fits": {
            measured.shaft.fit: {
                "clearance_mm": measured.clearance.clearance_mm.value, "u_mm": measured.clearance.clearance_mm.u,
                "limit_mm": measured.clearance.judgment.limits.upper, "verdict": measured.clearance.judgment.verdict,
            }
            for measured in bench.fits
        },
        "order": dict(bench.order.parts) if bench.order and bench.order.possible else {},
        "next_looks": [{"id": look.look.id, "minutes": look.look.minutes, **(look.worth.as_dict() if look.worth else {})} for look in unit.next_looks],
    }  # fmt: skip


def _part_data(part: Part) -> dict[str, Any]:
    finding = part.finding
    return {
        "origin": part.origin, "origins": part.origins, "chance": finding.chance, "exchanged": finding.exchanged,
        "exchanged_if_best": finding.exchanged_if_best, "foreign": finding.foreign,
        "ln_conflict": finding.ln_conflict if isfinite(finding.ln_conflict) else None,
    }  # fmt: skip
