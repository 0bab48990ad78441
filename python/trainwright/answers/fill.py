"""Fluid level and the milliliters to add or drain, at the temperature the fluid has now."""

from __future__ import annotations

from collections.abc import Collection

from .. import explain, hazard
from ..edge import number, show
from ..error import Error
from ..fluid import Adjustment, Fill, Fluid, LevelCheck
from ..judge import Judgment, Reading, Rule, settle
from ..sheet import Decision, Fact, Sheet
from . import RULE, rule_in_words
from .turning import Turn, turning_table


def fill_sheet(
    fill: Fill,
    fluid: Fluid,
    *,
    temp_c: Reading,
    level_mm: Reading,
    area_scale: Reading | None = None,
    rule: Rule = RULE,
    name: str = "fluid",
    variant: str = "",
    approved_for: Collection[str] = (),
    title: str = "",
    story: str = "",
) -> Sheet:
    """What to add or drain now, where the level will stand at the reference temperature, and what margins are left.

    For a variant, the fill is called right only if the record approves the fluid for the variant's linings.
    """
    exact_area = Reading(value=1.0, u=0.0)
    check = LevelCheck(temp_c=temp_c, level_mm=level_mm, area_scale=area_scale or exact_area)
    now = fill.adjust_fill(fluid, check, rule)
    turns, turns_data = turning_table(now.excess_ml, now.budget, _turns(fill, fluid, check, rule))
    excess_ml = now.excess_ml.reading.value
    later = fill.level_at(fluid, temp_c=fill.check_reference_c, excess_ml=excess_ml)
    off_mm = fill.engine_off_level_mm(running_level_mm=0.0)
    dips_c = _gear_dips_at_c(fill, fluid)
    spare_ml = fill.loss_to_pickup_ml(level_mm=0.0)
    pour = fill.pour_volumes(fluid, can_c=20.0)
    verb, amount_ml = ("Add", now.add_now_ml.value) if now.add_now_ml.value > 0 else ("Drain", -now.add_now_ml.value)
    left = "too much" if excess_ml > 0 else "too little"
    answer = (
        f"{verb} {number(amount_ml, 0)} mL now, at {show(temp_c.value, 'c')}. If nothing is done, the level stands "
        f"{show(abs(later.level_mm), 'mm')} {'above' if later.level_mm > 0 else 'below'} the edge at {show(fill.check_reference_c, 'c')}, "
        f"where the fill is {number(abs(excess_ml), 0)} mL {left}."
    )
    linings, may_be_right = _linings(name, variant, approved_for)
    if not may_be_right:
        answer = f"{linings.label}: {linings.value} by the record. {linings.why} The amounts count only once the fluid is settled. {answer}"
    window = f"{show(fill.check_low_c, 'c')} to {show(fill.check_high_c, 'c')}"
    return Sheet(
        title=title or f"Fluid level: {name} at {show(temp_c.value, 'c')}",
        story=story,
        answer=answer,
        decisions=[_decision(now, rule)] if may_be_right else [],
        tables=[turns] if may_be_right else [],
        facts=[
            *([linings] if variant else []),
            Fact(f"{verb} now", f"{number(amount_ml, 0)} mL", f"at the temperature it has; standard uncertainty {number(now.add_now_ml.u, 0)} mL"),
            Fact("in the unit now", f"{number(now.present_ml / 1000, 2)} L", f"right would be {number(now.right_ml / 1000, 2)} L at this temperature"),
            Fact("level later", show(later.level_mm, "mm"), f"at {show(fill.check_reference_c, 'c')} if nothing is done; a sump of constant area would say {number(later.constant_area_level_mm, 2)} mm"),
            Fact("engine off", show(off_mm, "mm"), "level of a right fill when the drain-back has come down: do not judge it by this"),
            Fact("rotating part dips", "not up to 150 °C" if dips_c is None else show(dips_c, "c"), "fluid temperature with a right fill; foam and heat above it"),
            Fact("may be lost", f"{number(spare_ml, 0)} mL", "from a right fill, level ground, until the pickup draws air"),
            Fact("dry fill", f"{number(pour.dry_ml / 1000, 2)} L", "to pour at 20 °C"),
            Fact("service fill", f"{number(pour.service_ml / 1000, 2)} L", f"to pour at 20 °C; {number(100 * pour.old_share, 0)} % old fluid stays"),
        ],
        not_checked=[
            *(["The readings: taken as exact. Give their uncertainty, as 24±1C, for an honest chance."] if not temp_c.u and not level_mm.u else []),
            "The condition of the fluid." if variant else "Whether the fluid is the right one for the linings, and its condition.",
            "Growth of case and pan with temperature (3 to 10 % of the fluid's), foam, and a vehicle that is not level.",
            f"The level check itself belongs into {window}, engine idling, all circuits full.",
        ],
        cautions=[hazard.caution("hot fluid"), hazard.caution("roll-away")],
        cards=["fluid.adjust_fill", "fluid.level_at", "fluid.pour_volumes", "fluid.volume_factor"],
        how=[
            now.explain(**check.as_dict()),
            later.explain(temp_c=fill.check_reference_c, excess_ml=excess_ml, dry_l=fill.dry_l, check_reference_c=fill.check_reference_c),
            pour.explain(can_c=20.0, **{name: getattr(fill, name) for name in ("dry_l", "service_l", "cooler_and_lines_l", "check_reference_c")}),
            explain("fluid.volume_factor", fluid, temp_c=temp_c.value, result=float(fluid.volume_factor(temp_c=temp_c.value))),
        ],
        data={
            "linings": {"variant": variant, "fluid": name, "approval": linings.value} if variant else None,
            "check": check.as_dict(),
            "adjustment": now.as_dict(),
            "inputs": turns_data,
            "level_at_reference": later.as_dict(),
            "engine_off_level_mm": off_mm,
            "gear_dips_at_c": dips_c,
            "loss_to_pickup_ml": spare_ml,
            "pour_at_20c": pour.as_dict(),
        },
    )


def _linings(name: str, variant: str, approved_for: Collection[str]) -> tuple[Fact, bool]:
    """What the record says of the fluid and the linings of the variant, and whether a fill may be called right."""
    about = f"{name} for the linings of {variant}"
    if not variant:
        return Fact(about, ""), True
    if not approved_for:
        return Fact(about, "not stated", f"The record names no linings for {name}: ask the maker of the unit."), False
    listed = f"The record approves {name} for {', '.join(approved_for)}."
    if variant in approved_for:
        return Fact(about, "approved", listed), True
    return Fact(about, "NOT approved", listed), False


def _turns(fill: Fill, fluid: Fluid, check: LevelCheck, rule: Rule) -> list[Turn]:
    """The inputs of the excess in the order of its budget, with the judgment that another value of each would give."""

    def judged(**changed: Reading) -> Judgment:
        given = {"temp_c": check.temp_c, "level_mm": check.level_mm, "area_scale": check.area_scale} | changed
        return fill.adjust_fill(fluid, LevelCheck(**given), rule).excess_ml

    def temperature(value: float) -> Judgment:
        return judged(temp_c=Reading(value=value, u=check.temp_c.u))

    def level(value: float) -> Judgment:
        return judged(level_mm=Reading(value=value, u=check.level_mm.u))

    lowest, highest = min(fill.pickup_uncovers_mm, check.level_mm.value), max(fill.gear_dips_mm, check.level_mm.value)
    return [
        Turn("fluid temperature", check.temp_c, "c", temperature, min(-20.0, check.temp_c.value), max(150.0, check.temp_c.value)),
        Turn("level", check.level_mm, "mm", level, lowest, highest),
        Turn("free area of the sump", Reading.exact(1.0)),
    ]


def _gear_dips_at_c(fill: Fill, fluid: Fluid) -> float | None:
    """Nothing where a right fill reaches the rotating part at no temperature that the fluid's density covers."""
    try:
        return float(fill.gear_dips_at_c(fluid))
    except Error as refusal:
        if refusal.kind == "OUT_OF_RANGE" and refusal.parameter == "temp_c":
            return None
        raise


def _decision(now: Adjustment, rule: Rule) -> Decision:
    judged = now.excess_ml
    accepted = f"{number(judged.limits.lower, 0)} to {number(judged.limits.upper, 0)} mL"
    basis = (
        f"{number(judged.reading.value, 0)} mL (standard uncertainty {number(judged.reading.u, 0)}) against the {accepted} "
        f"that a check inside the window would leave; {rule_in_words(rule)}."
    )
    settled = ""
    if judged.verdict == "NOT PROVEN":
        wanted = settle(judged, now.budget)
        named = ("fluid temperature", "level", "free area of the sump")[wanted.input]
        settled = f"Measure the {named} better to settle it."
    return Decision("fill as it is now", judged.verdict, judged.chance, basis, settled)
