"""A stall test: whether a rating would be passed, the seconds that heat leaves, and what a measured stall speed says."""

from __future__ import annotations

from collections.abc import Sequence

from ... import hazard, practice
from ...edge import number, show, shown_apart
from ...judge import Reading, Rule
from ...record import Family, Fleet
from ...sheet import Fact, Row, Sheet, Table
from .. import RULE
from ..turning import turning_table
from .case import BY_PRACTICE, CAUTIONS, Conditions, Planned, stall_case
from .measured import decision_of, measured_data, said, suspects_table, turns_of, verdict_of


def stall_sheet(
    planned: Planned, *, title: str, story: str = "", measured_rpm: Reading | None = None, allow_rpm: float | None = None, rule: Rule = RULE
) -> Sheet:
    """The plan of a stall test, or its refusal; with a measured speed also what it says."""
    conditions, plan, stall = planned.conditions, planned.plan, planned.stall
    verdict = verdict_of(planned, measured_rpm, allow_rpm, rule) if measured_rpm else None
    tables = [_ratings_table(planned), _elements_table(planned)]
    inputs = conditions.inputs
    worked = stall.explain(torque_factor=inputs.torque_factor, accessory_nm=inputs.accessory_nm, k_factor=inputs.k_factor)
    decisions, data, how = [], planned.data, [worked, plan.explain()]
    answer = _planned(planned)
    if verdict and measured_rpm:
        turns, turns_data = turning_table(verdict.judgment, verdict.budget, turns_of(planned, verdict, measured_rpm, rule))
        answer = f"{said(verdict)} {answer}"
        decisions = [decision_of(verdict, rule)]
        tables = [suspects_table(planned, verdict), *tables, turns] if verdict.side != "inside" else [*tables, turns]
        data = {**data, "measured": measured_data(verdict), "inputs": turns_data}
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
            "Line pressure at idle: where it is low, do not test, the elements would slip.",
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
            "Line pressure at idle: where it is low, do not test, the elements would slip.",
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
