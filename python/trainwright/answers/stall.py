"""A stall test: whether a rating would be passed, the seconds that heat leaves, and what a measured stall speed says."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from .. import converter, hazard, practice
from ..converter import Characteristic, EngineCurve, FluidCharge, MeasuredStall, StallInputs, StallPlan, StallRatings, StallSpeed, StallVerdict
from ..edge import number, show, shown_apart
from ..error import refusal
from ..judge import Judgment, Limits, Reading, Rule, settle
from ..record import Family, Fleet
from ..road import standard_air
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..train import Gear
from . import RULE, rule_in_words
from .gears import ratio
from .park import truck_of
from .turning import Turn, turning_table

CAUTIONS = ("stall heat", "roll-away", "hot fluid")
"""What can hurt someone at a stall test; on every sheet about converters."""

INPUTS = ("reading", "engine torque", "accessories", "capacity factor")
"""What the uncertainty of the difference comes from, in the order of its budget."""

BY_PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class StallCase:
    """A truck at stall in a gear: engine, converter, train and ratings."""

    truck: str
    variant: str
    engine_name: str
    converter_name: str
    aspiration: str | None
    engine: EngineCurve
    converter: Characteristic
    gear: Gear
    ratings: StallRatings
    charge_l: float
    allow_rpm: float | None


@dataclass(frozen=True)
class Conditions:
    """The day of the test: air, accessories, fluid, and how well engine and converter are known."""

    torque_factor: Reading = Reading.exact(1.0)  # noqa: RUF009
    torque_from: str = "as on the curve of the record: full throttle, its air"
    accessory_nm: Reading = Reading.exact(0.0)  # noqa: RUF009
    k_factor: Reading = Reading.exact(1.0)  # noqa: RUF009
    start_c: float | None = None
    most_c: float | None = None
    cards: tuple[str, ...] = ()

    @property
    def inputs(self) -> StallInputs:
        """As the chapter takes them."""
        return StallInputs(torque_factor=self.torque_factor, accessory_nm=self.accessory_nm, k_factor=self.k_factor)

    def charge(self, volume_l: float) -> FluidCharge:
        """The fluid in the converter; what is not known of it is common practice, and the sheet says so."""
        return FluidCharge(
            volume_l=volume_l,
            density_kg_m3=practice.FLUID_DENSITY_KG_M3,
            specific_heat_j_kg_k=practice.FLUID_SPECIFIC_HEAT_J_KG_K,
            start_c=practice.STALL_FLUID_START_C if self.start_c is None else self.start_c,
            most_c=practice.STALL_FLUID_MOST_C if self.most_c is None else self.most_c,
        )


def stall_case(family: Family, fleet: Fleet, truck_id: str, *, gear: str | None = None) -> StallCase:
    """A truck of the fleet at stall: in the lowest forward gear unless one is named."""
    truck, written = truck_of(fleet, truck_id), fleet.as_dict()
    rules = written.get("converter_rules")
    if not rules:
        raise refusal("converter_rules", "the fleet has no [converter_rules]: give charge_l, stall_limit_s and stall_allow_rpm there")
    engine = written["engine"][truck["engine"]]
    variant = truck["variant"]
    ratings = family.as_dict()["variant"][variant]
    gears = {found.id: found for found in family.train(variant).gears()}
    if gear is not None and gear not in gears:
        raise refusal("gear", f"the train has no gear {gear!r}; it has {', '.join(gears)}")
    chosen = gears[gear] if gear else max((found for found in gears.values() if found.ratio), key=ratio)
    rated = ratings["rated_turbine_nm"]
    if ratio(chosen) < 0 and ratings.get("reverse_turbine_nm"):
        rated = ratings["reverse_turbine_nm"]
    return StallCase(
        truck=truck_id,
        variant=variant,
        engine_name=truck["engine"],
        converter_name=engine["converter"],
        aspiration=engine.get("aspiration"),
        engine=fleet.engine_curve(truck["engine"]),
        converter=fleet.characteristic(engine["converter"]),
        gear=chosen,
        ratings=StallRatings(turbine_nm=rated, output_nm=ratings["rated_output_nm"], longest_s=rules["stall_limit_s"]),
        charge_l=rules["charge_l"],
        allow_rpm=rules["stall_allow_rpm"],
    )


def at_altitude(case: StallCase, altitude_m: float, air_c: float | None, torque_u_rel: float = 0.0) -> tuple[Reading, str]:
    """The torque factor of a naturally aspirated engine at an altitude, and in words where it comes from; refused for another."""
    if case.aspiration != "natural":
        known = "turbocharged" if case.aspiration else "not known to be naturally aspirated"
        raise refusal(
            "torque_factor",
            f"engine {case.engine_name} is {known}: how much torque it keeps at an altitude is for its maker to say; give that share as the torque factor",
            "MISSING",
        )
    sea, here = standard_air(altitude_m=0), standard_air(altitude_m=altitude_m)
    temp_c = here.temp_c if air_c is None else air_c
    curve = converter.InletAir(pressure_kpa_abs=sea.pressure_kpa_abs, temp_c=sea.temp_c)
    today = converter.InletAir(pressure_kpa_abs=here.pressure_kpa_abs, temp_c=temp_c)
    factor = converter.air_torque_factor(curve=curve, today=today)
    beyond = "" if today.in_test_range_j1349() else ", beyond the air in which the standard tests"
    return Reading(value=factor, u=factor * torque_u_rel), (
        f"SAE J1349 for {number(here.pressure_kpa_abs, 1)} kPa and {show(temp_c, 'c')} at {show(altitude_m, 'm')}, dry{beyond}; the curve taken as standard air at sea level"
    )


@dataclass(frozen=True)
class Planned:
    """A stall, planned."""

    case: StallCase
    conditions: Conditions
    stall: StallSpeed = field(init=False)
    plan: StallPlan = field(init=False)

    def __post_init__(self) -> None:
        stall = converter.stall_speed(self.case.engine, self.case.converter, inputs=self.conditions.inputs)
        plan = converter.plan_stall(stall.point, self.case.gear, ratings=self.case.ratings, charge=self.conditions.charge(self.case.charge_l))
        object.__setattr__(self, "stall", stall)
        object.__setattr__(self, "plan", plan)

    @property
    def elements(self) -> dict[str, float | None]:
        """Torque on each closed element; None where statics cannot tell."""
        return converter.element_torques(self.case.gear, turbine_nm=self.stall.point.turbine_nm)

    @property
    def data(self) -> dict[str, Any]:
        """For a program."""
        point = self.stall.point
        return {
            "truck": self.case.truck,
            "gear": self.case.gear.id,
            "allowed": self.plan.allowed,
            "stall_rpm": self.stall.speed_rpm.value,
            "stall_u_rpm": self.stall.speed_rpm.u,
            "turbine_nm": point.turbine_nm,
            "output_nm": self.plan.output_nm,
            "heat_kw": point.heat_kw,
            "elements_nm": self.elements,
            "plan": self.plan.as_dict(),
        }

    @property
    def passed(self) -> str:
        """The ratings that would be passed, in words; empty where none would."""
        point, ratings = self.stall.point, self.case.ratings
        parts = []
        if self.plan.turbine_passed:
            parts.append(f"{show(point.turbine_nm, 'nm')} at the turbine against {show(ratings.turbine_nm, 'nm')} rated")
        if self.plan.output_passed:
            parts.append(f"{show(self.plan.output_nm, 'nm')} at the output against {show(ratings.output_nm, 'nm')} rated")
        return ", ".join(parts)


def stall_sheet(
    planned: Planned, *, title: str, story: str = "", measured_rpm: Reading | None = None, allow_rpm: float | None = None, rule: Rule = RULE
) -> Sheet:
    """The plan of a stall test, or its refusal; with a measured speed also what it says."""
    case, conditions, plan, stall = planned.case, planned.conditions, planned.plan, planned.stall
    verdict = _verdict(planned, measured_rpm, allow_rpm, rule) if measured_rpm else None
    tables = [_ratings_table(planned), _elements_table(planned)]
    decisions, data, how = [], planned.data, [stall.explain(**_inputs(conditions)), plan.explain()]
    answer = _planned(planned)
    if verdict:
        turns, turns_data = turning_table(verdict.judgment, verdict.budget, _turns(planned, verdict, measured_rpm, rule))
        answer = f"{_said(verdict)} {answer}"
        decisions = [_decision(verdict, rule)]
        tables = [_suspects(planned, verdict), *tables, turns] if verdict.side != "inside" else [*tables, turns]
        data = {**data, "measured": _measured_data(verdict), "inputs": turns_data}
        how = [verdict.explain(), *how]
    cards = ["converter.stall_speed", "converter.operating_points", "converter.plan_stall", "converter.rise_k", "converter.element_torques", *conditions.cards]
    return Sheet(
        title=title,
        story=story,
        answer=answer,
        decisions=decisions,
        tables=tables,
        facts=_facts(planned),
        not_checked=[
            "Whether the vehicle maker allows a stall test at all, and in which gear: look there first.",
            "Brakes, tires, axles, joints and mounts, which the output torque loads; cooling of the engine.",
            "Torque management: with it the engine gives less than its curve, and the stall speed is not this one.",
            "The stator at speed: one that is stuck shows a normal stall speed and overheats on the road.",
            *([] if conditions.torque_factor.u or conditions.k_factor.u else ["How well engine torque and capacity factor are known: none was given, so the allowance stands for it."]),
        ],
        cautions=[hazard.caution(name) for name in CAUTIONS],
        cards=[*(["converter.judge_stall"] if verdict else []), *cards],
        how=how,
        data=data,
    )  # fmt: skip


def _planned(planned: Planned) -> str:
    case, plan, point = planned.case, planned.plan, planned.stall.point
    begins = (
        f"{case.truck} in gear {case.gear.id} stalls at {number(point.engine_rpm, 0)} rpm: {show(point.turbine_nm, 'nm')} at the turbine, "
        f"{show(plan.output_nm, 'nm')} at the output, {show(point.heat_kw, 'kw')} of heat."
    )
    limit = (
        f"With the engine limited to {show(plan.limit_engine_nm, 'nm')}, so the turbine to {show(plan.limit_turbine_nm, 'nm')}, no rating would be "
        f"passed: {number(plan.limit_rpm, 0)} rpm, {show(plan.limit_heat_kw, 'kw')}, at most {number(plan.limit_s, 1)} s."
    )
    longest = f"{number(case.ratings.longest_s, 0)} s would heat the fluid in the converter by {show(plan.rise_k, 'k')}"
    if planned.passed:
        return f"Do not test: {planned.passed}. {begins} {limit}"
    if plan.too_hot:
        return f"Do not test now: the fluid is too hot to begin. {begins} Idle in Neutral until it has cooled."
    return (
        f"The record does not forbid the test. {begins} Hold it {number(plan.permitted_s, 1)} s at most: {longest}, adiabatic bound. "
        f"Then idle in Neutral for {number(practice.STALL_COOL_S, 0)} s or more to cool ({BY_PRACTICE})."
    )


def _inputs(conditions: Conditions) -> dict[str, Reading]:
    return {"torque_factor": conditions.torque_factor, "accessory_nm": conditions.accessory_nm, "k_factor": conditions.k_factor}


def _facts(planned: Planned) -> list[Fact]:
    case, conditions, plan, point = planned.case, planned.conditions, planned.plan, planned.stall.point
    charge, factor, k = conditions.charge(case.charge_l), conditions.torque_factor, conditions.k_factor
    return [
        Fact("engine", case.engine_name, f"{show(point.impeller_nm, 'nm')} at stall"),
        Fact("torque factor", number(factor.value, 3), conditions.torque_from + (f"; standard uncertainty {100 * factor.u / factor.value:.2g} %" if factor.u else "")),
        Fact("accessories", show(conditions.accessory_nm.value, "nm"), "besides those that the curve counts"),
        Fact("converter", case.converter_name, f"K {number(point.k_rpm_per_sqrt_nm, 1)} rpm/√(N·m) at stall, impeller side; torque ratio {number(point.torque_ratio, 3)}" + (f"; K known to {100 * k.u / k.value:.2g} %" if k.u else "")),
        Fact("fluid", show(charge.start_c, "c"), ("as given" if conditions.start_c is not None else BY_PRACTICE) + f"; not above {show(charge.most_c, 'c')}, {'as given' if conditions.most_c is not None else BY_PRACTICE}"),
        Fact("fluid in the converter", show(charge.volume_l, "l"), f"from the record; {charge.density_kg_m3:g} kg/m³ and {charge.specific_heat_j_kg_k:g} J/(kg·K): {BY_PRACTICE}"),
        Fact("until it is too hot", f"{number(plan.heat_s, 1)} s", "adiabatic bound: nothing into metal or cooler, mean of the charge"),
        Fact("longest stall of the record", f"{number(case.ratings.longest_s, 1)} s", f"would heat the charge by {show(plan.rise_k, 'k')}"),
        Fact("permitted", f"{number(plan.permitted_s, 1)} s", "the shorter of the two; none where a rating would be passed"),
    ]  # fmt: skip


def _ratings_table(planned: Planned) -> Table:
    plan, point, ratings = planned.plan, planned.stall.point, planned.case.ratings
    lines = [("turbine", point.turbine_nm, ratings.turbine_nm, plan.turbine_share, plan.turbine_passed), ("output", plan.output_nm, ratings.output_nm, plan.output_share, plan.output_passed)]
    rows = [
        Row((what, *shown_apart(torque, "nm"), *shown_apart(rated, "nm"), number(share, 3), "passed" if passed else "kept"), "NO-GO" if passed else "")
        for what, torque, rated, share, passed in lines
    ]
    note = "Steady torque without losses; a throttle opened fast adds a blow. A rating that is kept is no leave to test."
    return Table("Torques of the stall against the ratings of the record", ("at", ">N·m", ">lbf·ft", ">rated N·m", ">lbf·ft", ">share", "rating"), rows, note)


def _elements_table(planned: Planned) -> Table:
    rows = [
        Row((element, *(("?", "?", "?") if torque is None else (number(torque / planned.stall.point.turbine_nm, 4), *shown_apart(torque, "nm")))))
        for element, torque in planned.elements.items()
    ]
    note = "Share: of the turbine torque. ?: closed elements repeat one another, so statics cannot tell what each carries."
    return Table(f"What holds gear {planned.case.gear.id} carries", ("element", ">share", ">N·m", ">lbf·ft"), rows, note)


# ---- a measured stall speed


def _allowed(planned: Planned, allow_rpm: float | None) -> tuple[float, str]:
    if allow_rpm is not None:
        return allow_rpm, "as given"
    if planned.case.allow_rpm is not None:
        return planned.case.allow_rpm, "the record's"
    return practice.STALL_ALLOW_RPM, BY_PRACTICE


def _judged(planned: Planned, measured_rpm: Reading, allow_rpm: float, rule: Rule, inputs: StallInputs | None = None) -> StallVerdict:
    measured = MeasuredStall(
        speed_rpm=measured_rpm, allow_rpm=Limits(lower=-allow_rpm, upper=allow_rpm), stator_share=practice.STALL_STATOR_SHARE,
        stop_rpm=practice.STALL_STOP_RPM, rule=rule,
    )  # fmt: skip
    return converter.judge_stall(planned.case.engine, planned.case.converter, measured, inputs=inputs or planned.conditions.inputs)


def _verdict(planned: Planned, measured_rpm: Reading, allow_rpm: float | None, rule: Rule) -> StallVerdict:
    return _judged(planned, measured_rpm, _allowed(planned, allow_rpm)[0], rule)


def _said(verdict: StallVerdict) -> str:
    difference, allow = verdict.difference_rpm.value, verdict.judgment.limits.upper
    where = f"{number(abs(difference), 0)} rpm {'low' if difference < 0 else 'high'}"
    against = f"against the computed {number(verdict.stall.speed_rpm.value, 0)} rpm, {number(allow, 0)} allowed"
    says = {"GO": "no fault proven", "NO-GO": "a fault", "NOT PROVEN": "not proven either way"}[verdict.judgment.verdict]
    urgent = " Stop at once: something slips." if verdict.side == "far high" else ""
    return f"Measured {number(verdict.difference_rpm.value + verdict.stall.speed_rpm.value, 0)} rpm is {where} {against}: {says}.{urgent}"


def _decision(verdict: StallVerdict, rule: Rule) -> Decision:
    judged = verdict.judgment
    known = f"standard uncertainty {number(judged.reading.u, 0)} rpm" if judged.reading.u else "no uncertainty given"
    basis = (
        f"{number(judged.reading.value, 0)} rpm off, {known}, ± {number(judged.limits.upper, 0)} allowed; "
        f"{rule_in_words(rule)}. GO is no fault proven, not no fault."
    )
    settled = ""
    if judged.verdict == "NOT PROVEN":
        wanted = settle(judged, verdict.budget)
        needed = f"to {wanted.u_needed:.2g}; now {wanted.u_now:.2g}" if wanted.enough else f"now {wanted.u_now:.2g}, and it alone cannot decide"
        settled = f"To settle it, know the {INPUTS[wanted.input]} better (standard uncertainty {needed})."
    return Decision("stall speed", judged.verdict, judged.chance, basis, settled)


def _turns(planned: Planned, verdict: StallVerdict, measured_rpm: Reading, rule: Rule) -> list[Turn]:
    """The inputs of the difference in the order of its budget, with the judgment that another value of each would give."""
    conditions, allow_rpm = planned.conditions, verdict.judgment.limits.upper

    def reading(value: float) -> Judgment:
        return _judged(planned, Reading(value=value, u=measured_rpm.u), allow_rpm, rule).judgment

    def changed(**one: Reading) -> Judgment:
        return _judged(planned, measured_rpm, allow_rpm, rule, StallInputs(**{**_inputs(conditions), **one})).judgment

    def torque(value: float) -> Judgment:
        return changed(torque_factor=Reading(value=value, u=conditions.torque_factor.u))

    def accessory(value: float) -> Judgment:
        return changed(accessory_nm=Reading(value=value, u=conditions.accessory_nm.u))

    def k(value: float) -> Judgment:
        return changed(k_factor=Reading(value=value, u=conditions.k_factor.u))

    speed = planned.stall.speed_rpm.value
    factor, torque_nm = conditions.torque_factor.value, planned.stall.point.impeller_nm
    return [
        Turn(INPUTS[0], measured_rpm, "rpm", reading, min(0.7 * speed, 0.9 * measured_rpm.value), max(1.3 * speed, 1.1 * measured_rpm.value)),
        Turn(f"{INPUTS[1]}, over its curve", conditions.torque_factor, "", torque, 0.8 * factor, 1.15 * factor),
        Turn(INPUTS[2], conditions.accessory_nm, "nm", accessory, -0.1 * torque_nm, 0.25 * torque_nm),
        Turn(f"{INPUTS[3]}, over its characteristic", conditions.k_factor, "", k, 0.85, 1.15),
    ]


def _suspects(planned: Planned, verdict: StallVerdict) -> Table:
    held = ", ".join(planned.elements)
    share = f"{100 * verdict.torque_share:.0f} % of its torque alone would explain it" if verdict.explained else "the curve does not cover this speed"
    capacity = f"K {100 * verdict.k_share:.0f} % of the record's alone would explain it" if verdict.explained else "the curve does not cover this speed"
    engine = ("engine, its air or its accessories", f"{share}; test the engine alone")
    stator = ("stator one-way clutch that no longer holds", "weak from rest, normal at road speed")
    if verdict.judgment.reading.value < 0:
        first = [stator, engine] if verdict.side == "far low" else [engine, stator]
        suspects = [*first, ("another converter than the record's", capacity)]
    else:
        suspects = [
            (f"what holds the gear slips: {held}", "try another gear held by others; read the line pressure"),
            ("little or foaming fluid, converter not filled", "check the level first"),
            ("line pressure too low", "gauge at stall against what the gear needs"),
            ("another converter than the record's", capacity),
        ]
    rows = [Row((suspect, sign), "NOT PROVEN") for suspect, sign in suspects]
    note = f"Suspects in the order of a usual look, not proof: {BY_PRACTICE}. One number cannot tell them apart."
    return Table("What it may mean", ("suspect", "what speaks for it"), rows, note)


def _measured_data(verdict: StallVerdict) -> dict[str, Any]:
    says = {"GO": "no fault proven", "NO-GO": "fault proven", "NOT PROVEN": "not proven"}[verdict.judgment.verdict]
    return {
        "difference_rpm": verdict.difference_rpm.value,
        "difference_u_rpm": verdict.difference_rpm.u,
        "allow_rpm": verdict.judgment.limits.upper,
        "verdict": says,
        "side": verdict.side,
        "torque_share": verdict.torque_share if verdict.explained else None,
        "k_share": verdict.k_share if verdict.explained else None,
    }


# ---- every truck


def stall_fleet_sheet(family: Family, fleet: Fleet, conditions: Conditions, *, gear: str | None = None, title: str, story: str = "") -> Sheet:
    """Every truck of the fleet at full-throttle stall: which may be tested as it is, and what the engine must be limited to."""
    planned = [Planned(stall_case(family, fleet, truck, gear=gear), conditions) for truck in fleet.trucks]
    refused = [one.case.truck for one in planned if not one.plan.allowed]
    answer = (
        f"A full-throttle stall passes a rating on {', '.join(refused)}: do not test {'it' if len(refused) == 1 else 'them'} without limiting the engine."
        if refused
        else "A full-throttle stall passes no rating of the record on any truck."
    )
    return Sheet(
        title=title,
        story=story,
        answer=answer,
        tables=[_fleet_table(planned)],
        not_checked=[
            "Whether the vehicle maker allows a stall test at all: look there first.",
            "Brakes, tires, axles, joints and mounts, which the output torque loads; torque management.",
        ],
        cautions=[hazard.caution(name) for name in CAUTIONS],
        cards=["converter.stall_speed", "converter.plan_stall", "converter.rise_k"],
        data={"trucks": {one.case.truck: one.data for one in planned}},
    )


def _fleet_table(planned: Sequence[Planned]) -> Table:
    rows = []
    for one in planned:
        plan, point = one.plan, one.stall.point
        cells = (
            one.case.truck, number(point.engine_rpm, 0), number(point.turbine_nm, 0), number(plan.turbine_share, 2), number(plan.output_nm, 0),
            number(plan.output_share, 2), number(point.heat_kw, 0), number(plan.rise_k, 0), number(plan.permitted_s, 1) if plan.allowed else "none",
            number(plan.limit_engine_nm, 0),
        )  # fmt: skip
        rows.append(Row(cells, "" if plan.allowed else "NO-GO"))
    columns = ("truck", ">stall rpm", ">turbine N·m", ">share", ">output N·m", ">share", ">heat kW", ">rise K", ">allowed s", ">engine N·m")
    note = (
        "Share: of the rating. Rise: of the fluid in the converter in the longest stall of the record, adiabatic. Engine: the torque that it must be "
        "limited to so that no rating is passed."
    )
    return Table("Full-throttle stall of every truck in its lowest gear", columns, rows, note)
