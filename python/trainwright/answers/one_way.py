"""One-way clutches: what the train asks of them in every gear, and whether they hold it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from .. import Explanation, hazard
from ..edge import number, show
from ..error import refusal
from ..hold import OneWayDuty, OneWayHold, OneWayPart, Ratchet, Wedge, locks, one_way_duty, one_way_part, take_up
from ..judge import Judgment, Reading, Rule, settle
from ..record import Family
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..train import Train
from . import RULE, rule_in_words
from .turning import Turn, turning_table

INPUTS = ("allowed stress", "geometry and load sharing of the clutch", "turbine torque")
"""What the uncertainty of the torque to spare comes from, in the order of the budget."""

ASKED = {
    "holds": "holds",
    "overruns": "overruns",
    "could hold": "beside {beside}, could hold",
    "cannot hold": "cannot hold, {beside} must",
    "idle": "nothing",
}


@dataclass(frozen=True)
class Placed:
    """The one-way clutch of a variant: its name in the train, what each gear asks of it under drive, the part, its demand."""

    variant: str
    element: str
    duties: dict[str, OneWayDuty]
    part: OneWayPart
    kind: str
    turbine_nm: Reading
    capacity_u_rel: float | None

    @property
    def hardest(self) -> str:
        """The gear in which it must hold most."""
        holding = {gear: duty for gear, duty in self.duties.items() if duty.role == "holds"}
        if not holding:
            raise refusal("element", f"no gear asks {self.element} to hold; name another one-way clutch with --element")
        return max(holding, key=lambda gear: abs(holding[gear].share or 0.0))

    @property
    def need_nm(self) -> Reading:
        """The torque that it must hold in that gear."""
        share = abs(self.duties[self.hardest].share or 0.0)
        return Reading(value=share * self.turbine_nm.value, u=share * self.turbine_nm.u)

    def hold(self, rule: Rule) -> OneWayHold | None:
        """Whether it holds that; None where no one states the uncertainty of its capacity."""
        if self.capacity_u_rel is None and self.part.capacity_u_rel is None:
            return None
        return self.part.hold(self.need_nm, rule=rule, capacity_u_rel=self.capacity_u_rel)

    def gears(self, *roles: str) -> list[str]:
        """The gears that ask for one of these roles."""
        return [gear for gear, duty in self.duties.items() if duty.role in roles]


def one_ways(family: Family) -> list[str]:
    """Names of the one-way clutches of the train."""
    return [name for name, entry in family.as_dict()["train"]["element"].items() if entry["kind"] == "one_way"]


def one_way_of(family: Family, element: str | None) -> str:
    """The one-way clutch of the train that the record's [one_way] describes: the only one, or the one named."""
    known = one_ways(family)
    if element is None and len(known) == 1:
        return str(known[0])
    if element not in known:
        given = f"the train has no one-way clutch {element!r}" if element else "the train has several one-way clutches: name one"
        raise refusal("element", f"{given}; it has {', '.join(known) or 'none'}", "MISSING")
    return element


def duties(train: Train, element: str, others: Sequence[str], load: str = "drive") -> dict[str, OneWayDuty]:
    """What every gear asks of a one-way clutch; `others` are the names of all of them."""
    return {
        gear.id: one_way_duty(train, element, closed=[name for name in gear.closed if name not in others], load=load)
        for gear in train.gears()
    }


def placed(
    family: Family, variant: str, *, element: str | None = None, turbine_nm: Reading | None = None, capacity_u_rel: float | None = None
) -> Placed:
    """The one-way clutch of a variant at a turbine torque, at its rating unless one is given."""
    written = family.as_dict()
    if turbine_nm is None:
        ratings = written.get("variant") or {}
        if variant not in ratings:
            raise refusal("turbine", f"the record rates no torque for {variant!r}; give --turbine", "MISSING")
        turbine_nm = Reading.exact(ratings[variant]["rated_turbine_nm"])
    name = one_way_of(family, element)
    return Placed(
        variant, name, duties(family.train(variant), name, one_ways(family)), one_way_part(family, variant), written["one_way"][variant]["kind"], turbine_nm, capacity_u_rel
    )  # fmt: skip


def one_way_sheet(
    clutches: Sequence[Placed], *, title: str, story: str = "", input_rpm: float | None = None, turbine_from: str = "the record's rating",
    rule: Rule = RULE,
) -> Sheet:  # fmt: skip
    """Whether the one-way clutch of one variant or of several holds, and what each gear asks of it."""
    first = clutches[0]
    holds = [clutch.hold(rule) for clutch in clutches]
    backwards = _backwards(first)
    answer = " ".join(_sentence(clutch, hold) for clutch, hold in zip(clutches, holds)) + f" {backwards}"
    decisions = [_held(clutch, hold, rule) for clutch, hold in zip(clutches, holds) if hold]
    decisions += [_locks(clutch, rule) for clutch in clutches if isinstance(clutch.part.clutch, Wedge) and clutch.part.friction]
    tables = [_parts(clutches, holds)] if len(clutches) > 1 else []
    turns = [_turning(first, hold, rule) for hold in holds if hold and len(clutches) == 1]
    return Sheet(
        title=title,
        story=story,
        answer=answer,
        decisions=decisions,
        tables=[*tables, _duty_table(first, input_rpm), *(table for table, _ in turns)],
        facts=[
            Fact("turbine torque", show(clutch.turbine_nm.value, "nm"), f"{clutch.variant}: {turbine_from}") for clutch in clutches
        ] + (_facts(first) if len(clutches) == 1 else []),
        not_checked=[
            *(f"{clutch.variant}: no verdict, since nobody states the uncertainty of the capacity (u_rel_capacity in the record, or --capacity-u)."
              for clutch, hold in zip(clutches, holds) if hold is None),
            *(f"{clutch.variant}: whether it locks, since the record states no friction; it needs {_needed(clutch):.3f}."
              for clutch in clutches if isinstance(clutch.part.clutch, Wedge) and clutch.part.friction is None),
            *(["Growth of the outer race, which lets the angle grow up to rolling over."] if any(isinstance(clutch.part.clutch, Wedge) for clutch in clutches) else []),
            *(["Buckling of a strut, and the bearing of notch and pocket."] if any(isinstance(clutch.part.clutch, Ratchet) for clutch in clutches) else []),
            "Fatigue, wear, springs and cage; the maker's rating, which a computed capacity is not.",
            "The speed that it may overrun at and its drag: compare with the maker's limits.",
            "Shock: a shift or a wheel that grips again can load it above the steady torque.",
        ],
        cautions=[hazard.caution("overspeed")],
        cards=_cards(clutches),
        how=[explanation for clutch, hold in zip(clutches, holds) for explanation in _how(clutch, hold)],
        data={
            "clutches": {clutch.variant: _data(clutch, hold) for clutch, hold in zip(clutches, holds)},
            "inputs": [entry for _, data in turns for entry in data],
        },
    )  # fmt: skip


def _turning(clutch: Placed, hold: OneWayHold, rule: Rule) -> tuple[Table, list[dict[str, Any]]]:
    """What each input of the torque to spare does to the verdict, in the order of the budget."""

    def need(value: float) -> Judgment:
        given = Reading(value=value, u=clutch.need_nm.u)
        return clutch.part.hold(given, rule=rule, capacity_u_rel=clutch.capacity_u_rel).judgment

    need_nm, capacity_nm = clutch.need_nm, clutch.part.capacity_nm()
    turns = [
        Turn(INPUTS[0], Reading.exact(1.0)),
        Turn(INPUTS[1], Reading.exact(1.0), relative=True),
        Turn(f"torque to hold ({INPUTS[2]})", need_nm, "nm", need, 0.1 * need_nm.value, 3 * max(need_nm.value, capacity_nm)),
    ]
    return turning_table(hold.judgment, hold.budget, turns)


def _how(clutch: Placed, hold: OneWayHold | None) -> list[Explanation]:
    """The formulas of a clutch worked out with its own values."""
    part, torque_nm = clutch.part.clutch, clutch.need_nm.value
    if isinstance(part, Wedge):
        load = part.wedged(torque_nm=torque_nm)
        worked = [load.explain(torque_nm=torque_nm, **part.as_dict()), load.pressure.explain(force_n=load.normal_n, length_mm=part.length_mm, first=part.race, second=part.body)]
        card = "hold.wedge_hold"
    else:
        worked = [part.ratchet_index().explain(struts=part.struts, notches=part.notches), part.strut_load(torque_nm=torque_nm).explain(torque_nm=torque_nm, **part.as_dict())]
        card = "hold.strut_hold"
    if hold:
        u_rel = clutch.capacity_u_rel if clutch.capacity_u_rel is not None else clutch.part.capacity_u_rel
        worked.append(hold.explain(card=card, allow_mpa=clutch.part.allow_mpa, geometry_u_rel=u_rel))
    return worked


def _sentence(clutch: Placed, hold: OneWayHold | None) -> str:
    capacity_nm = clutch.part.capacity_nm()
    need_nm = clutch.need_nm.value
    return (
        f"{clutch.element} of {clutch.variant} ({_form(clutch)}) must hold {show(need_nm, 'nm')} in gear {clutch.hardest} and reaches its "
        f"allowed stress at {show(capacity_nm, 'nm')}: margin {number(hold.margin if hold else capacity_nm / need_nm, 2)}."
    )


def _form(clutch: Placed) -> str:
    part = clutch.part.clutch
    if isinstance(part, Ratchet):
        return f"ratchet, {part.struts} struts, {part.notches} notches"
    return f"{part.count} {clutch.kind}s"


def _backwards(clutch: Placed) -> str:
    lost = [gear for gear, duty in clutch.duties.items() if duty.backwards == "neutral" and duty.role == "holds"]
    tied = [gear for gear, duty in clutch.duties.items() if duty.backwards == "tied up"]
    found = [f"no drive in {', '.join(lost)}"] * bool(lost) + [f"tie-up in {', '.join(tied)}"] * bool(tied)
    return f"Fitted the wrong way round: {' and '.join(found)}." if found else "Fitted the wrong way round it changes no gear."


def _held(clutch: Placed, hold: OneWayHold, rule: Rule) -> Decision:
    judged = hold.judgment
    spare = f"{show(abs(judged.reading.value), 'nm')} {'to spare' if judged.reading.value >= 0 else 'short'}"
    basis = f"{spare}, standard uncertainty {show(judged.reading.u, 'nm')}; {rule_in_words(rule)}."
    settled = ""
    if judged.verdict == "NOT PROVEN":
        wanted = settle(judged, hold.budget)
        alone = "" if wanted.enough else ", and it alone cannot decide"
        settled = f"To settle it, know the {INPUTS[wanted.input]} better{alone}."
    return Decision(f"{clutch.element} of {clutch.variant} holds in gear {clutch.hardest}", judged.verdict, judged.chance, basis, settled)


def _judged_friction(clutch: Placed, rule: Rule) -> Judgment:
    wedge = clutch.part.clutch
    assert isinstance(wedge, Wedge) and clutch.part.friction
    return locks(half_angle_deg=wedge.half_angle_deg, friction=clutch.part.friction, rule=rule)


def _locks(clutch: Placed, rule: Rule) -> Decision:
    judged = _judged_friction(clutch, rule)
    basis = f"Friction {judged.reading.value:g}, standard uncertainty {judged.reading.u:g}, against {judged.limits.lower:.3f} that the angle asks for; {rule_in_words(rule)}."
    settled = "To settle it, know the friction in this oil better; a smaller angle needs less." if judged.verdict == "NOT PROVEN" else ""
    return Decision(f"{clutch.element} of {clutch.variant} locks instead of slipping", judged.verdict, judged.chance, basis, settled)


def _needed(clutch: Placed) -> float:
    wedge = clutch.part.clutch
    assert isinstance(wedge, Wedge)
    return wedge.wedged(torque_nm=0.0).friction_needed


def _parts(clutches: Sequence[Placed], holds: Sequence[OneWayHold | None]) -> Table:
    rows = []
    for clutch, hold in zip(clutches, holds):
        part = clutch.part.clutch
        index = part.ratchet_index() if isinstance(part, Ratchet) else None
        verdict = hold.judgment.verdict if hold else "not judged"
        cells = (
            clutch.variant, _form(clutch), number(clutch.need_nm.value, 0), number(clutch.part.capacity_nm(), 0),
            number(clutch.part.capacity_nm() / clutch.need_nm.value, 2), number(index.backlash_deg, 2) if index else "·",
            f"{part.carrying} of {index.together}" if index and isinstance(part, Ratchet) else "all", verdict,
        )  # fmt: skip
        rows.append(Row(cells, verdict if verdict in ("NO-GO", "NOT PROVEN") else ""))
    columns = ("variant", "form", ">must hold N·m", ">can hold N·m", ">margin", ">backlash °", ">carry together", "verdict")
    return Table("The variants", columns, rows, "The races, the clutch between them and its cover belong together: never mix variants.")


def _duty_table(clutch: Placed, input_rpm: float | None) -> Table:
    rows = []
    for gear, duty in clutch.duties.items():
        asked = ASKED[duty.role].format(beside=duty.beside)
        torque = number(duty.share * clutch.turbine_nm.value, 0) if duty.role == "holds" and duty.share else "·"
        slip = duty.slip if duty.role == "overruns" else None
        cells = [gear, asked, torque, f"{number(slip, 2)} ×" if slip else "·"]
        if input_rpm:
            cells.append(number(abs(slip) * input_rpm, 0) if slip else "·")
        cells.append({"gear": "the same", "neutral": "no drive", "tied up": "tied up"}.get(duty.backwards, duty.backwards))
        rows.append(Row(tuple(cells), "forbidden" if duty.role == "cannot hold" else ""))
    at_speed = (f">rpm at {number(input_rpm, 0)} rpm input",) if input_rpm else ()
    columns = ("gear", f"{clutch.element} under drive", ">carries N·m", ">overruns at input", *at_speed, "fitted the wrong way round")
    return Table(f"What each gear asks of {clutch.element} in {clutch.variant}", columns, rows, "·: none. Where it cannot hold, the reaction has the other sense. Coasting, what holds under drive overruns.")


def _facts(clutch: Placed) -> list[Fact]:
    part, need_nm = clutch.part.clutch, clutch.need_nm.value
    allowed = Fact("allowed stress", show(clutch.part.allow_mpa, "mpa"), "the record's, of contact" if isinstance(part, Wedge) else "the record's, of a strut")
    if isinstance(part, Wedge):
        load = part.wedged(torque_nm=need_nm)
        return [
            Fact("force on each", show(load.normal_n, "n"), f"tangential {show(load.tangential_n, 'n')} over tan {part.half_angle_deg:g}°"),
            Fact("contact pressure", show(load.pressure.peak_mpa, "mpa"), f"line contact, effective radius {number(load.pressure.effective_radius_mm, 2)} mm, half width {number(load.pressure.half_width_mm, 3)} mm"),
            allowed,
            Fact("friction needed", number(load.friction_needed, 3), "below it the clutch slips, at any torque"),
        ]  # fmt: skip
    strut, index = part.strut_load(torque_nm=need_nm), part.ratchet_index()
    blow = take_up(backlash_deg=index.backlash_deg, torque_nm=need_nm, inertia_kg_m2=1.0)
    return [
        Fact("force on a strut", show(strut.strut_n, "n"), f"{part.carrying} of the {index.together} that drop in together carry; pushes the races apart with {show(strut.separating_n, 'n')}"),
        Fact("stress in a strut", show(strut.stress_mpa, "mpa"), f"{part.strut_width_mm:g} × {part.strut_thickness_mm:g} mm"),
        allowed,
        Fact("backlash", f"{number(index.backlash_deg, 3)}°", f"{index.positions} positions on a turn"),
        Fact("blow", f"{number(blow.energy_j, 1)} J", "at most: the whole torque turns the free part back through the backlash before it drops in"),
    ]  # fmt: skip


def _cards(clutches: Sequence[Placed]) -> list[str]:
    wedges = any(isinstance(clutch.part.clutch, Wedge) for clutch in clutches)
    ratchets = any(isinstance(clutch.part.clutch, Ratchet) for clutch in clutches)
    wedge_cards = ["hold.wedged", "hold.wedge_capacity_nm", "hold.wedge_hold", "hold.locks", "hold.pressed"] * wedges
    ratchet_cards = ["hold.ratchet_index", "hold.strut_load", "hold.strut_capacity_nm", "hold.strut_hold", "hold.take_up"] * ratchets
    return ["hold.one_way_duty", *wedge_cards, *ratchet_cards]


def _data(clutch: Placed, hold: OneWayHold | None) -> dict[str, object]:
    part = clutch.part.clutch
    return {
        "element": clutch.element,
        "gear": clutch.hardest,
        "need_nm": clutch.need_nm.value,
        "capacity_nm": clutch.part.capacity_nm(),
        "hold": hold.as_dict() if hold else None,
        "load": (part.wedged if isinstance(part, Wedge) else part.strut_load)(torque_nm=clutch.need_nm.value).as_dict(),
        "index": part.ratchet_index().as_dict() if isinstance(part, Ratchet) else None,
        "gears": {
            gear: {"role": duty.role, "beside": duty.beside, "share": duty.share, "slip": duty.slip, "backwards": duty.backwards}
            for gear, duty in clutch.duties.items()
        },
    }
