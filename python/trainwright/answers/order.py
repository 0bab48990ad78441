"""What to order for a unit on the bench, what to machine, and what not to put in."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from .. import fit, hazard
from ..edge import FIT, Typed, show_as, span_as
from ..fit import MeasuredClearance
from ..interchange import Joint, Joints, Order
from ..judge import Reading, Rule, settle
from ..sheet import Decision, Fact, Row, Sheet, Table
from . import RULE, rule_in_words
from .interchange import ALONE, DANGEROUS, NOT_CHECKED, check_table, listed, plain, price_of


@dataclass(frozen=True)
class Bench:
    """A unit on the bench: its variant, parts found to be of another, sizes measured (by joint and part), parts wanted."""

    unit: str
    found: Mapping[str, str] = field(default_factory=dict)
    wanted: Mapping[str, str] = field(default_factory=dict)
    measured: Sequence[tuple[str, str, Reading]] = ()
    typed: Typed | None = None
    """The unit in which the sizes were typed."""


def order_sheet(
    joints: Joints, bench: Bench, *, aim: str = "fewest", rule: Rule = RULE, spread: str = "rectangular", title: str = "", story: str = ""
) -> Sheet:  # fmt: skip
    """What to order for a unit on the bench, what to machine, what not to do, and the joints as they would be."""
    order = joints.order(
        unit=bench.unit, aim=aim, wanted=dict(bench.wanted), found=dict(bench.found), measured=list(bench.measured), rule=rule, spread=spread
    )  # fmt: skip
    wrong = [other for other in order.others if other.outcome != "holds"]
    right = [other for other in order.others if other.outcome == "holds"]
    tables = []
    if order.parts and order.possible:
        alike: dict[str, list[str]] = {}
        for other in right:
            alike.setdefault(other.part, []).append(other.variant + (f" with {plain(other.machining)}" if other.machining else ""))
        rows = [Row((f"1 {variant}", plain(part), ", ".join(alike.get(part, []))), "governs") for part, variant in order.parts.items()]
        tables.append(Table("Order", ("order", "part", "or as well"), rows, "Or as well: other variants of that part, alone, in the same place."))
    if order.machining and order.possible:
        tables.append(check_table(joints, order))
    if wrong and order.possible:
        rows = [Row((plain(other.part), other.variant, ALONE[other.outcome]), "NO-GO" if other.outcome in DANGEROUS else "") for other in wrong]
        tables.append(Table("Do not put in", ("part", "of", "what comes of it"), rows, "Beside the rest of the unit as it would be."))
    found = _measured_fits(joints, bench, rule)
    decisions = [*(_as_found(joint, clearance, bench, rule) for joint, clearance in found), *_as_built(order, rule)]
    return Sheet(
        title=title or f"Order for a {bench.unit} unit",
        story=story,
        answer=_order_in_words(joints, bench, order, aim),
        decisions=decisions,
        tables=tables,
        facts=[
            Fact("unit", bench.unit, "what is exchanged becomes this, unless another is wanted"),
            *(Fact(f"found: {plain(part)}", variant, "of another variant") for part, variant in bench.found.items()),
            *(Fact(f"wanted: {plain(part)}", variant) for part, variant in bench.wanted.items()),
            *(Fact(f"measured: {plain(part)}", show_as(size_mm, bench.typed, FIT), plain(joint)) for joint, part, size_mm in bench.measured),
            *([Fact("parts not measured", spread, "how their size is taken to lie in its tolerance")] if bench.measured else []),
            *([Fact("price", price_of(joints, order), _why_price(order, aim))] if order.possible and (order.parts or order.machining) else []),
        ],
        not_checked=[*NOT_CHECKED, "Covers and matches as measured: only diameters are."],
        cautions=[hazard.caution("roll-away")] if any("park" in part for part in order.parts) else [],
        cards=["interchange.order", "interchange.meet", *(["fit.measured", "fit.toleranced"] if bench.measured else [])],
        how=[order.explain(), *(clearance.explain() for _, clearance in found)],
        data={
            "unit": bench.unit, "possible": order.possible, "order": order.parts, "machining": order.machining,
            "stopped_at": order.stopped_at, "not_proven": order.not_proven, "price": order.price.total, "unpriced": order.price.unpriced,
            "cheapest_proven": order.cheapest,
            "do_not": [{"part": other.part, "variant": other.variant, "outcome": other.outcome} for other in wrong],
            "or_as_well": [{"part": other.part, "variant": other.variant, "machining": other.machining} for other in right],
            "joints": [
                {"joint": state.joint, "verdict": state.verdict, "chance": state.chance, "measured": state.measured,
                 "clearance_mm": state.clearance_mm.value, "u_mm": state.clearance_mm.u}
                for state in order.joints
            ],
        },
    )  # fmt: skip


def _order_in_words(joints: Joints, bench: Bench, order: Order, aim: str) -> str:
    if not order.possible:
        return f"There is no order that puts it right: nothing mends {plain(order.stopped_at or '')}, whatever else is exchanged."
    if not order.parts and not order.machining:
        said = "Nothing to order: no joint is known to be wrong."
    else:
        parts = [f"one {variant} {plain(part)}" for part, variant in order.parts.items()]
        what = "Order " + (", ".join(parts[:-1]) + " and " + parts[-1] if len(parts) > 1 else parts[0]) if parts else "Order nothing"
        machined = f"; {listed(order.machining.values())}" if order.machining else ""
        said = f"{what}{machined}: {price_of(joints, order)}."
    loose = [other for other in order.others if other.outcome in DANGEROUS and bench.found.get(other.part) == other.variant]
    for other in loose:
        said += f" The {other.variant} {plain(other.part)} that was found {ALONE[other.outcome]}."
    if order.not_proven:
        said += f" Not proven either way: {listed(order.not_proven)}. Measure again before you order."
    return said


def _why_price(order: Order, aim: str) -> str:
    if order.price.unpriced:
        return "another order may be cheaper: not every price is known" if aim == "cheapest" else "the fewest parts; not every price is known"
    return "no other order is cheaper" if order.cheapest else "the fewest parts; --cheapest looks for the lowest price"


def _measured_fits(joints: Joints, bench: Bench, rule: Rule) -> list[tuple[Joint, MeasuredClearance]]:
    """Fits of which both parts were measured, as they lie there."""
    by_joint: dict[str, dict[str, Reading]] = {}
    for name, part, size_mm in bench.measured:
        by_joint.setdefault(name, {})[part] = size_mm
    found = []
    for joint in joints.joints:
        sizes = by_joint.get(joint.name, {})
        if len(sizes) == 2:
            first_of, second_of = (bench.found.get(part, bench.unit) for part in (joint.first, joint.second))
            wanted_mm = joints.meeting(joint.name, first_of=first_of, second_of=second_of).wanted_mm
            found.append((joint, fit.measured(shaft_mm=sizes[joint.first], bore_mm=sizes[joint.second], wanted_mm=wanted_mm, rule=rule)))
    return found


def _as_found(joint: Joint, found: MeasuredClearance, bench: Bench, rule: Rule) -> Decision:
    judged, settled = found.judgment, ""
    if judged.verdict == "NOT PROVEN":
        wanted = settle(judged, found.budget)
        part = plain((joint.first, joint.second)[wanted.input])
        if wanted.enough:
            settled = f"To settle it, measure the {part} to a standard uncertainty of {show_as(wanted.u_needed, bench.typed, FIT + 1)}."
        else:
            settled = f"Measuring the {part} better is not enough: measure both better."
    wanted_mm = span_as(judged.limits.lower, judged.limits.upper, bench.typed, FIT)
    basis = f"{show_as(found.clearance_mm, bench.typed, FIT)}, wanted {wanted_mm}; {rule_in_words(rule)}."
    return Decision(f"{plain(joint.name)}, as found", judged.verdict, judged.chance, basis, settled)


def _as_built(order: Order, rule: Rule) -> list[Decision]:
    """Joints that rest on a measured size once the ordered parts are in."""
    if not order.possible:
        return []
    measured = [state for state in order.joints if state.measured]
    return [
        Decision(f"{plain(state.joint)}, as it would be", state.verdict, state.chance,
                 f"{show_as(state.clearance_mm, None, FIT)}, with parts not measured by their tolerance; {rule_in_words(rule)}.",
                 "Measure the new part too." if state.verdict == "NOT PROVEN" else "")
        for state in measured
    ]  # fmt: skip
