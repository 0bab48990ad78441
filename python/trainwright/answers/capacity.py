"""Capacity of every clutch and brake against the torque that each gear puts on it, at a gauge pressure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import isinf

from .. import explain, hazard
from ..clutch import ElementMargin, ElementPack, GearReview, Hold, governing, review
from ..edge import number, show, shown_apart
from ..error import refusal
from ..judge import Judgment, Reading, Rule, settle
from ..record import Family, Fleet
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..train import Train
from . import RULE, rule_in_words
from .gears import ratio
from .turning import Turn, turning_table

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
    turbine_from: str = "as given: what the converter gives, not the engine alone"


def working_point(
    family: Family, variant: str, pressure_kpa: Reading, turbine_nm: Reading, turbine_speed_rpm: float = 0.0, oil_density_kg_m3: float = 0.0,
    turbine_from: str = Working.turbine_from,
) -> Working:  # fmt: skip
    """The working point with friction, geometry and pressure limit of the family's record."""
    written = family.as_dict()
    return Working(
        pressure_kpa=pressure_kpa,
        turbine_nm=turbine_nm,
        friction=family.static_friction,
        geometry_u_rel=written["friction"]["geometry_u_rel"],
        turbine_speed_rpm=turbine_speed_rpm,
        oil_density_kg_m3=oil_density_kg_m3,
        control_max_kpa=written["variant"][variant]["line_control_max_kpa"],
        turbine_from=turbine_from,
    )


@dataclass(frozen=True)
class Load:
    """The turbine torque of a truck, and in words where it comes from."""

    variant: str
    turbine_nm: Reading
    source: str


def truck_load(family: Family, fleet: Fleet, truck: str, *, reverse: bool = False) -> Load:
    """Variant of a truck, and its turbine torque at a managed stall: the greatest of its engine, in reverse no more than the
    variant allows there."""
    written = fleet.as_dict()
    trucks = {entry["id"]: entry for entry in written["truck"]}
    if truck not in trucks:
        raise refusal("truck", f"the fleet has no truck {truck!r}; it has {', '.join(trucks)}")
    engine = written["engine"][trucks[truck]["engine"]]
    variant = trucks[truck]["variant"]
    engine_nm, engine_rpm = max(zip(engine["torque_nm"], engine["speed_rpm"]))
    source = (
        f"greatest torque of engine {trucks[truck]['engine']}, at {number(engine_rpm, 0)} rpm, taken as the turbine's: torque managed. "
        "Not managed, a converter at stall multiplies it"
    )
    if reverse and (most_nm := family.as_dict()["variant"][variant]["reverse_turbine_nm"]) < engine_nm:
        return Load(variant, Reading.exact(most_nm), f"the most that the record of {variant} allows in reverse; the engine gives more")
    return Load(variant, Reading.exact(engine_nm), source)


@dataclass(frozen=True)
class Place:
    """One clutch or brake in one gear."""

    gear: str
    element: str
    margin: ElementMargin


def review_gears(
    train: Train, packs: Mapping[str, ElementPack], working: Working, rule: Rule = RULE, *, reverse: bool = False
) -> dict[str, GearReview]:
    """The review of the forward gears, or of reverse: each has its own pressure and torque."""
    return {
        gear.id: review(
            gear,
            dict(packs),
            pressure_kpa=working.pressure_kpa,
            friction=working.friction,
            geometry_u_rel=working.geometry_u_rel,
            oil_density_kg_m3=working.oil_density_kg_m3,
            turbine_torque_nm=working.turbine_nm,
            turbine_speed_rpm=working.turbine_speed_rpm,
            rule=rule,
        )
        for gear in train.gears()
        if (ratio(gear) < 0) == reverse
    }


def weakest(reviews: Mapping[str, GearReview]) -> Place:
    """The element and gear with the least margin."""
    gears = list(reviews)
    gear = gears[governing([reviews[gear].weakest.margin for gear in gears])]
    return Place(gear, reviews[gear].governing, reviews[gear].weakest)


def hold_of(
    place: Place, packs: Mapping[str, ElementPack], working: Working, rule: Rule = RULE, *,
    need_nm: Reading | None = None, pressure_kpa: Reading | None = None, friction: Reading | None = None,
) -> Hold:  # fmt: skip
    """The governing element again, with its judgment and budget; at another demand, pressure or friction where one is given."""
    share = place.margin.share
    return packs[place.element].pack.hold(
        need_nm or Reading(value=place.margin.need_nm, u=share * working.turbine_nm.u),
        pressure_kpa=pressure_kpa or working.pressure_kpa,
        friction=friction or working.friction,
        geometry_u_rel=working.geometry_u_rel,
        drum_speed_rpm=place.margin.drum_speed_rpm,
        oil_density_kg_m3=working.oil_density_kg_m3,
        rule=rule,
    )


def capacity_sheet(
    train: Train, packs: Mapping[str, ElementPack], working: Working, *, title: str, story: str = "",
    rule: Rule = RULE, reverse: bool = False,
) -> Sheet:  # fmt: skip
    """The review of a unit: which gear and element governs, whether it holds, and what would settle it."""
    reviews = review_gears(train, packs, working, rule, reverse=reverse)
    worst = weakest(reviews)
    hold = hold_of(worst, packs, working, rule)
    turns, turns_data = turning_table(hold.judgment, hold.budget, _turns(worst, packs, working, rule, hold))
    radius = "clutch.mean_radius_worn_mm" if packs[worst.element].pack.worn else "clutch.mean_radius_new_mm"
    needed = hold.pressure_needed
    limit = working.control_max_kpa
    answer = (
        f"Gear {worst.gear} governs, at {worst.element}: it must hold {show(hold.need_nm.value, 'nm')} and can hold "
        f"{show(worst.margin.capacity_nm, 'nm')} at {show(working.pressure_kpa.value, 'kpa')}, margin {hold.margin:.3f}. "
        f"It needs {show(needed.strong_spring_kpa, 'kpa')}"
    )
    if limit is None:
        answer += "."
    elif needed.strong_spring_kpa > limit:
        answer += f", more than the {show(limit, 'kpa')} that the control can give."
    else:
        answer += f", within the {show(limit, 'kpa')} that the control can give."
    speed = working.turbine_speed_rpm
    head = ("none", "at stall the drums stand") if not speed else ("counted", f"turbine at {number(speed, 0)} rpm turns the drums")
    return Sheet(
        title=title,
        story=story,
        answer=answer,
        decisions=[_decision(worst, hold, rule)],
        tables=[_governing_table(reviews), _margin_table(train, reviews), turns],
        facts=[
            Fact("gauge", show(working.pressure_kpa.value, "kpa"), f"standard uncertainty {show(working.pressure_kpa.u, 'kpa', 1)}"),
            Fact("turbine torque", show(working.turbine_nm.value, "nm"), working.turbine_from),
            Fact("oil head in the drums", *head),
            Fact("must hold", show(hold.need_nm.value, "nm"), f"{worst.element} in gear {worst.gear}: {worst.margin.share:.4f} of the turbine torque"),
            Fact("can hold", show(worst.margin.capacity_nm, "nm"), f"{hold.capacity.faces} faces × friction {working.friction.value:g} × radius {number(hold.capacity.mean_radius_mm, 1)} mm × clamp {show(hold.capacity.net_force_n, 'n')}; not a rating"),
            Fact("margin", number(hold.margin, 3), "can hold over must hold; 1 is the edge"),
            Fact("needs", show(needed.strong_spring_kpa, "kpa"), f"with the strongest return spring; {show(needed.weak_spring_kpa, 'kpa')} with the weakest"),
            Fact("holds from friction", number(hold.friction_needed, 3), f"static friction is taken as {working.friction.value:g}, standard uncertainty {working.friction.u:g}"),
        ],
        not_checked=[
            "The forward gears." if reverse else "Reverse: it has its own pressure and torque.",
            "Condition of the linings and of the fluid: friction is taken from the record.",
            "Inertia torque of a shift, losses in the train, strength of drums, shafts and retaining rings.",
            "One-way clutches: they have no pack, and are not in the tables.",
        ],
        cautions=[hazard.caution("stall heat"), hazard.caution("roll-away")],
        cards=["clutch.hold", "clutch.capacity", radius, "train.solve"],
        how=[
            hold.explain(pressure_kpa=working.pressure_kpa, friction=working.friction, geometry_u_rel=working.geometry_u_rel),
            hold.capacity.explain(pressure_kpa=working.pressure_kpa.value),
            explain(radius, packs[worst.element].pack.lining, result=hold.capacity.mean_radius_mm),
            next(gear for gear in train.gears() if gear.id == worst.gear).explain(),
        ],
        data={
            "governing": {"gear": worst.gear, "element": worst.element, **hold.as_dict()},
            "inputs": turns_data,
            "control_max_kpa": limit,
            "gears": {
                gear: {element: margin.as_dict() for element, margin in reviewed.elements.items()}
                for gear, reviewed in reviews.items()
            },
        },
    )  # fmt: skip


def _turns(worst: Place, packs: Mapping[str, ElementPack], working: Working, rule: Rule, hold: Hold) -> list[Turn]:
    """The inputs of the margin in the order of its budget, with the judgment that another value of each would give."""

    def pressure(value: float) -> Judgment:
        return hold_of(worst, packs, working, rule, pressure_kpa=Reading(value=value, u=working.pressure_kpa.u)).judgment

    def friction(value: float) -> Judgment:
        return hold_of(worst, packs, working, rule, friction=Reading(value=value, u=working.friction.u)).judgment

    def need(value: float) -> Judgment:
        return hold_of(worst, packs, working, rule, need_nm=Reading(value=value, u=hold.need_nm.u)).judgment

    pressure_kpa, most_kpa = working.pressure_kpa, working.control_max_kpa or 2 * working.pressure_kpa.value
    return [
        Turn(INPUTS[0], pressure_kpa, "kpa", pressure, 0.0, max(most_kpa, pressure_kpa.value)),
        Turn(INPUTS[1], working.friction, "", friction, 0.01, max(0.3, working.friction.value)),
        Turn(INPUTS[2], Reading.exact(1.0), relative=True),
        Turn(f"torque to hold ({INPUTS[3]})", hold.need_nm, "nm", need, 0.1 * hold.need_nm.value, 3 * hold.need_nm.value),
    ]


def _decision(worst: Place, hold: Hold, rule: Rule) -> Decision:
    judged = hold.judgment
    spare = f"{show(abs(judged.reading.value), 'nm')} {'to spare' if judged.reading.value >= 0 else 'short'}"
    basis = f"{spare}, standard uncertainty {show(judged.reading.u, 'nm')}; {rule_in_words(rule)}."
    settled = ""
    if judged.verdict == "NOT PROVEN":
        wanted = settle(judged, hold.budget)
        needed = f"to {wanted.u_needed:.2g}; now {wanted.u_now:.2g}" if wanted.enough else f"now {wanted.u_now:.2g}, and it alone cannot decide"
        settled = (
            f"To settle it, know the {INPUTS[wanted.input]} better (standard uncertainty {needed}). It holds if static "
            f"friction is at least {hold.friction_needed:.3f}."
        )
    return Decision(f"{worst.element} in gear {worst.gear} holds", judged.verdict, judged.chance, basis, settled)


def _governing_table(reviews: Mapping[str, GearReview]) -> Table:
    rows = []
    for gear, reviewed in reviews.items():
        margin = reviewed.weakest
        percent = Decision("", margin.verdict, margin.chance, "").percent
        cells = (
            gear, reviewed.governing, number(margin.need_nm, 0), number(margin.capacity_nm, 0), number(margin.margin, 3),
            *shown_apart(margin.pressure_needed.strong_spring_kpa, "kpa"), percent, margin.verdict,
        )  # fmt: skip
        rows.append(Row(cells, "" if margin.verdict == "GO" else margin.verdict))
    columns = ("gear", "governs", ">must hold N·m", ">can hold N·m", ">margin", ">needs kPa", ">psi", ">chance", "verdict")
    return Table("The element that governs each gear", columns, rows)


def _margin_table(train: Train, reviews: Mapping[str, GearReview]) -> Table:
    reviewed = {gear: review.elements for gear, review in reviews.items()}
    elements = [element for element in train.elements if any(element in margins for margins in reviewed.values())]
    rows = [
        Row((gear, *(_margin(margins[element]) if element in margins else "·" for element in elements)))
        for gear, margins in reviewed.items()
    ]
    note = "·: open. ?: closed elements repeat one another, so statics cannot tell what each carries."
    return Table("Margin of every element: can hold over must hold", ("gear", *(f">{element}" for element in elements)), rows, note)


def _margin(margin: ElementMargin) -> str:
    if not margin.share_known:
        return "?"
    return "unloaded" if isinf(margin.margin) else number(margin.margin, 2)
