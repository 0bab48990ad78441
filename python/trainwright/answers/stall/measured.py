"""What a measured stall speed says: verdict, suspects, and what each input does to it."""

from __future__ import annotations

from typing import Any

from ... import converter, practice
from ...converter import MeasuredStall, StallInputs, StallVerdict
from ...edge import number
from ...judge import Judgment, Limits, Reading, Rule, settle
from ...sheet import Decision, Row, Table
from .. import rule_in_words
from ..turning import Turn
from .case import BY_PRACTICE, Planned

INPUTS = ("reading", "engine torque", "accessories", "capacity factor")
"""What the uncertainty of the difference comes from, in the order of its budget."""


def _judged(planned: Planned, measured_rpm: Reading, allow_rpm: float, rule: Rule, inputs: StallInputs | None = None) -> StallVerdict:
    measured = MeasuredStall(
        speed_rpm=measured_rpm, allow_rpm=Limits(lower=-allow_rpm, upper=allow_rpm), stator_share=practice.STALL_STATOR_SHARE,
        stop_rpm=practice.STALL_STOP_RPM, rule=rule,
    )  # fmt: skip
    return converter.judge_stall(planned.case.engine, planned.case.converter, measured, inputs=inputs or planned.conditions.inputs)


def verdict_of(planned: Planned, measured_rpm: Reading, allow_rpm: float | None, rule: Rule) -> StallVerdict:
    """The judged difference; the allowance is the record's unless one is given."""
    return _judged(planned, measured_rpm, planned.case.allow_rpm if allow_rpm is None else allow_rpm, rule)


def said(verdict: StallVerdict) -> str:
    """The verdict in a sentence."""
    difference, allow = verdict.difference_rpm.value, verdict.judgment.limits.upper
    where = f"{number(abs(difference), 0)} rpm {'low' if difference < 0 else 'high'}"
    against = f"against the computed {number(verdict.stall.speed_rpm.value, 0)} rpm, {number(allow, 0)} allowed"
    says = {"GO": "no fault proven", "NO-GO": "a fault", "NOT PROVEN": "not proven either way"}[verdict.judgment.verdict]
    urgent = " Stop at once: something slips." if verdict.side == "far high" else ""
    return f"Measured {number(verdict.difference_rpm.value + verdict.stall.speed_rpm.value, 0)} rpm is {where} {against}: {says}.{urgent}"


def decision_of(verdict: StallVerdict, rule: Rule) -> Decision:
    """The verdict with its chance, and what would settle it."""
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


def turns_of(planned: Planned, verdict: StallVerdict, measured_rpm: Reading, rule: Rule) -> list[Turn]:
    """The inputs of the difference in the order of its budget, with the judgment that another value of each would give."""
    conditions, allow_rpm = planned.conditions, verdict.judgment.limits.upper

    def reading(value: float) -> Judgment:
        return _judged(planned, Reading(value=value, u=measured_rpm.u), allow_rpm, rule).judgment

    def changed(**one: Reading) -> Judgment:
        return _judged(planned, measured_rpm, allow_rpm, rule, StallInputs(**{**conditions.given, **one})).judgment

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


def suspects_table(planned: Planned, verdict: StallVerdict) -> Table:
    """What a speed off the band may mean."""
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


def measured_data(verdict: StallVerdict) -> dict[str, Any]:
    """For a program."""
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
