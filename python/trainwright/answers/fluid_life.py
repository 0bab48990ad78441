"""How much of its life fluid has used, from hours at temperature."""

from __future__ import annotations

from collections.abc import Mapping

from .. import hazard, practice
from ..duty import AgingRule, fluid_life
from ..edge import number, show
from ..sheet import Fact, Row, Sheet, Table

TRADE_RULE = AgingRule.halving(reference_c=practice.FLUID_AGING_REFERENCE_C, halving_k=practice.FLUID_AGING_HALVING_K, least_factor=1.0)
"""Life halves for each 20 °F above 175 °F, and is not longer below: common practice, no source."""


def fluid_life_sheet(hours_at_c: Mapping[float, float], *, unknown_h: float, life_h: float, rule: AgingRule = TRADE_RULE, title: str) -> Sheet:
    """Share used, hours left in the same use, and what the hottest hours do."""
    temps = sorted(hours_at_c)
    found = fluid_life(temp_c=temps, duration_h=[hours_at_c[temp] for temp in temps], unknown_h=unknown_h, life_h=life_h, rule=rule)
    factors = [float(rule.aging_factor(temp)) for temp in temps]
    rows = [
        Row((show(temp, "c"), number(hours_at_c[temp], 0), number(factor, 2), number(100 * hours_at_c[temp] * factor / life_h, 1)))
        for temp, factor in zip(temps, factors)
    ]
    span = f" With the {number(unknown_h, 0)} h of unknown temperature between {number(100 * found.used_lower, 0)} and {number(100 * found.used_upper, 0)} %." if unknown_h else ""
    return Sheet(
        title=title,
        answer=(
            f"{number(100 * found.used, 0)} % of its life is used in {number(found.known_h, 0)} h.{span} In the same use {number(found.left_h, 0)} h are left. "
            f"The hottest 5 % of the hours, from {show(found.worst_from_c, 'c')} up, did {number(100 * found.worst_share, 0)} % of it."
        ),
        tables=[Table("Hours at temperature", ("temperature", ">h", ">ages times", ">% of life"), rows)],
        facts=[
            Fact("life", f"{number(life_h, 0)} h", f"at {show(rule.reference_c, 'c')}, as given"),
            Fact("rule", f"halves per {show(rule.halving_k, 'k')}" if rule.kind == "halving" else "reaction rate", "common practice, no source" if rule == TRADE_RULE else "as given"),
        ],
        not_checked=["What the fluid looks and smells like, water, and wear in it: a sample tells more than any rule. The maker's interval comes first."],
        cautions=[hazard.caution("hot fluid")],
        cards=["duty.fluid_life", "duty.aging_factor"],
        how=[found.explain(life_h=life_h)],
        data={"life": found.as_dict(), "rule": rule.as_dict(), "life_h": life_h, "unknown_h": unknown_h},
    )  # fmt: skip
