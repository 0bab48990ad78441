"""Capacity of every clutch and brake against the torque that each gear puts on it, at a gauge pressure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from .. import hazard
from ..clutch import Hold, Pack, governing
from ..edge import number, show
from ..judge import Reading, Rule, settle
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..train import Gear, Train
from . import RULE, rule_in_words

INPUTS = ("gauge pressure", "friction coefficient", "geometry of pack and piston", "turbine torque")
"""What the uncertainty of a margin comes from, in the order of the budget."""


@dataclass(frozen=True)
class Working:
    """The working point: what the gauge, the lining and the engine are taken to be."""

    pressure_kpa: Reading
    turbine_nm: Reading
    friction: Reading
    geometry_u_rel: float
    turbine_speed_rpm: float = 0.0
    oil_density_kg_m3: float = 0.0
    control_max_kpa: float | None = None


@dataclass(frozen=True)
class Held:
    """One clutch or brake in one gear."""

    gear: str
    element: str
    share: float
    hold: Hold

    @property
    def capacity_nm(self) -> float:
        return self.hold.capacity.torque_nm


def holds(train: Train, packs: Mapping[str, tuple[Pack, str]], working: Working, rule: Rule = RULE) -> list[Held]:
    """Every closed element that has a pack, gear by gear. `packs` gives each pack and the member its drum turns with."""
    found = []
    for gear in train.gears():
        for element in gear.closed:
            share = gear.shares[element]
            if element not in packs or not share:
                continue
            pack, drum = packs[element]
            need_nm = Reading(value=abs(share) * working.turbine_nm.value, u=abs(share) * working.turbine_nm.u)
            hold = pack.hold(
                need_nm,
                pressure_kpa=working.pressure_kpa,
                friction=working.friction,
                geometry_u_rel=working.geometry_u_rel,
                drum_speed_rpm=(gear.speeds[drum] or 0.0) * working.turbine_speed_rpm,
                oil_density_kg_m3=working.oil_density_kg_m3,
                rule=rule,
            )
            found.append(Held(gear.id, element, abs(share), hold))
    return found


def weakest(found: list[Held]) -> Held:
    """The element and gear with the least margin."""
    return found[governing([held.hold.margin for held in found])]


def capacity_sheet(
    train: Train, packs: Mapping[str, tuple[Pack, str]], working: Working, *, title: str, rule: Rule = RULE
) -> Sheet:
    """The review of a unit: which gear and element governs, whether it holds, and what would settle it."""
    found = holds(train, packs, working, rule)
    worst = weakest(found)
    hold = worst.hold
    needed = hold.pressure_needed
    limit = working.control_max_kpa
    answer = (
        f"Gear {worst.gear} governs, at {worst.element}: it must hold {show(hold.need_nm.value, 'nm')} and can hold "
        f"{show(worst.capacity_nm, 'nm')} at {show(working.pressure_kpa.value, 'kpa')}, margin {hold.margin:.3f}. "
        f"It needs {show(needed.strong_spring_kpa, 'kpa')}"
    )
    if limit is None:
        answer += "."
    elif needed.strong_spring_kpa > limit:
        answer += f", more than the {show(limit, 'kpa')} that the control can give."
    else:
        answer += f", within the {show(limit, 'kpa')} that the control can give."
    speed = working.turbine_speed_rpm
    drums = "At stall: the drums stand, so no oil head helps or harms." if not speed else (
        f"Turbine at {number(speed, 0)} rpm: the oil head of turning drums is counted."
    )  # fmt: skip
    return Sheet(
        title=title,
        answer=answer,
        decisions=[_decision(worst, rule)],
        tables=[_governing_table(train, found), _margin_table(train, found)],
        facts=[
            Fact("gauge", show(working.pressure_kpa.value, "kpa"), f"standard uncertainty {show(working.pressure_kpa.u, 'kpa', 1)}"),
            Fact("turbine torque", show(working.turbine_nm.value, "nm"), "what the converter gives, not the engine alone"),
            Fact("must hold", show(hold.need_nm.value, "nm"), f"{worst.element} in gear {worst.gear}: {worst.share:.4f} of the turbine torque"),
            Fact("can hold", show(worst.capacity_nm, "nm"), f"{hold.capacity.faces} faces × friction {working.friction.value:g} × radius {number(hold.capacity.mean_radius_mm, 1)} mm × clamp {show(hold.capacity.net_force_n, 'n')}; not a rating"),
            Fact("margin", number(hold.margin, 3), "can hold over must hold; 1 is the edge"),
            Fact("needs", show(needed.strong_spring_kpa, "kpa"), f"with the strongest return spring; {show(needed.weak_spring_kpa, 'kpa')} with the weakest"),
            Fact("holds from friction", number(hold.friction_needed, 3), f"static friction is taken as {working.friction.value:g}, standard uncertainty {working.friction.u:g}"),
        ],
        not_checked=[
            drums,
            "Condition of the linings and of the fluid: friction is taken from the record.",
            "Inertia torque of a shift, losses in the train, strength of drums, shafts and retaining rings.",
            "One-way clutches: they have no pack, and are not in the tables.",
        ],
        cautions=[hazard.caution("stall heat"), hazard.caution("roll-away")],
        cards=["clutch.hold", "clutch.capacity", "clutch.mean_radius_new_mm", "train.solve"],
        data={
            "governing": {"gear": worst.gear, "element": worst.element, **hold.as_dict()},
            "control_max_kpa": limit,
            "elements": [{"gear": held.gear, "element": held.element, "share": held.share, **_brief(held.hold)} for held in found],
        },
    )  # fmt: skip


def _decision(worst: Held, rule: Rule) -> Decision:
    hold = worst.hold
    judged = hold.judgment
    spare = f"{show(abs(judged.reading.value), 'nm')} {'to spare' if judged.reading.value >= 0 else 'short'}"
    basis = f"{spare}, standard uncertainty {show(judged.reading.u, 'nm')}; {rule_in_words(rule)}."
    settled = ""
    if judged.verdict == "NOT PROVEN":
        wanted = settle(judged, hold.budget)
        better = f"to {wanted.u_needed:.2g} (now {wanted.u_now:.2g})" if wanted.enough else f"(now {wanted.u_now:.2g}), though it alone cannot decide"
        settled = (
            f"To settle it, know the {INPUTS[wanted.input]} better, {better}; or see it hold: it does if static friction "
            f"is at least {hold.friction_needed:.3f}."
        )
    return Decision(f"{worst.element} in gear {worst.gear} holds", judged.verdict, judged.chance, basis, settled)


def _governing_table(train: Train, found: list[Held]) -> Table:
    rows = []
    for gear in train.gears():
        mine = [held for held in found if held.gear == gear.id]
        if mine:
            worst = weakest(mine)
            hold = worst.hold
            rows.append(
                Row(
                    (gear.id, worst.element, number(hold.need_nm.value, 0), number(worst.capacity_nm, 0), number(hold.margin, 3),
                     show(hold.pressure_needed.strong_spring_kpa, "kpa"), Decision("", "GO", hold.judgment.chance, "").percent,
                     hold.judgment.verdict),
                    "" if hold.judgment.verdict == "GO" else hold.judgment.verdict,
                )
            )  # fmt: skip
    columns = ("gear", "governs", ">must hold N·m", ">can hold N·m", ">margin", ">needs", ">chance", "verdict")
    return Table("The element that governs each gear", columns, rows)


def _margin_table(train: Train, found: list[Held]) -> Table:
    elements = [element for element in train.elements if any(held.element == element for held in found)]
    margins = {(held.gear, held.element): number(held.hold.margin, 2) for held in found}
    rows = [
        Row((gear.id, *(margins.get((gear.id, element), _why_not(gear, element)) for element in elements)))
        for gear in train.gears()
    ]
    note = "·: open. ?: closed elements repeat one another, so statics cannot tell what each carries."
    return Table("Margin of every element: can hold over must hold", ("gear", *(f">{element}" for element in elements)), rows, note)


def _why_not(gear: Gear, element: str) -> str:
    return "·" if element not in gear.closed else "?" if gear.shares[element] is None else "unloaded"


def _brief(hold: Hold) -> dict[str, Any]:
    return {
        "need_nm": hold.need_nm.value,
        "capacity_nm": hold.capacity.torque_nm,
        "margin": hold.margin,
        "pressure_needed": hold.pressure_needed.as_dict(),
        "friction_needed": hold.friction_needed,
        "chance": hold.judgment.chance,
        "verdict": hold.judgment.verdict,
    }
