"""A change of tire or axle: what the speedometer shows, where the shifts come, and the number to program."""

from __future__ import annotations

from collections.abc import Sequence

from .. import explain, hazard
from ..edge import number, show, shown_apart
from ..judge import Reading, Rule, judge
from ..road import Driveline, limits_un_r39, numbers_to_program, shift_at_output_speed, speedometer
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..tire import Rolling, Tire, rolling_by_factor
from . import RULE, rule_in_words

CIRCUMFERENCE_FACTOR = Reading(value=3.05, u=0.03)
"""Rolling circumference over regulation diameter of a radial tire (ETRTO, from memory). Its uncertainty is the 1 % by which
measured tires scatter about it."""


SHIFTS_KM_H = (20.0, 40.0, 60.0, 80.0, 100.0)
"""Road speeds at which shifts are shown where the schedule is not given."""


def rolling(tire: Tire, factor: Reading = CIRCUMFERENCE_FACTOR) -> Rolling:
    """How far a tire of this size rolls, from its regulation diameter."""
    return rolling_by_factor(diameter_mm=tire.regulation_diameter().diameter_mm, factor=factor)


def change_sheet(
    programmed: Driveline,
    fitted: Driveline,
    *,
    title: str,
    before: str,
    after: str,
    story: str = "",
    true_km_h: float = 100.0,
    shifts_km_h: Sequence[float] = SHIFTS_KM_H,
    pulses_per_rev: float = 30.0,
    rule: Rule = RULE,
) -> Sheet:
    """From the driveline that is programmed to the one that is fitted; `before` and `after` say in words what each is."""
    shown = speedometer(programmed, fitted, true_km_h=true_km_h)
    limits = limits_un_r39(true_km_h=true_km_h)
    judged = judge(shown.shown_km_h, limits, rule)
    program = numbers_to_program(programmed, fitted, pulses_per_rev=pulses_per_rev)
    points = [shift_at_output_speed(programmed, fitted, output_rpm=programmed.output_rpm(road_km_h=v)) for v in shifts_km_h]
    late = "higher" if shown.true_over_shown > 1 else "lower"
    percent = number(abs(100 * (shown.true_over_shown - 1)), 1)
    answer = (
        f"At true {show(true_km_h, 'km_h')} the speedometer shows {show(shown.shown_km_h.value, 'km_h')}. Every shift comes at a road speed "
        f"{percent} % {late}, until the unit is programmed for {after}: axle ratio {program.axle_ratio:.3f} with the "
        f"old tire size, or {number(program.rev_per_km, 1)} revolutions per km ({number(program.rev_per_mile, 1)} per mile) with "
        f"the fitted axle."
    )
    return Sheet(
        title=title,
        story=story,
        answer=answer,
        decisions=[
            Decision(
                "speedometer as it is",
                judged.verdict,
                judged.chance,
                f"Shown {show(judged.reading.value, 'km_h')}, standard uncertainty {number(judged.reading.u, 1)} km/h; UN R39 accepts "
                f"{number(limits.lower, 1)} to {show(limits.upper, 'km_h')} at this speed, never less than the truth; {rule_in_words(rule)}.",
                "" if judged.verdict != "NOT PROVEN" else "Count wheel turns over a measured distance to settle it.",
            )
        ],
        tables=[
            Table(
                "Shift points while the unit is not programmed: the output-shaft speed is kept, the road speed moves",
                (">output shaft rpm", ">programmed for km/h", ">comes at km/h", ">comes at mph"),
                [
                    Row((number(p.before_rpm, 0), number(p.before_km_h, 1), *shown_apart(p.after_km_h, "km_h")))
                    for p in points
                ],
            )
        ],
        facts=[
            Fact("programmed", before, f"circumference {show(programmed.circumference_mm.value, 'mm', 0)}"),
            Fact("fitted", after, f"circumference {show(fitted.circumference_mm.value, 'mm', 0)}, standard uncertainty {number(fitted.circumference_mm.u, 0)} mm"),
            Fact("true over shown", f"{shown.true_over_shown:.4f}", "above 1: the speedometer reads low, which UN R39 forbids"),
            Fact("program axle ratio", f"{program.axle_ratio:.3f}", "if the unit takes only an axle ratio"),
            Fact("program circumference", show(program.circumference_mm, "mm", 0), "if the unit takes only a tire size"),
            Fact("program revolutions", f"{number(program.rev_per_km, 1)} per km", f"{number(program.rev_per_mile, 1)} per mile"),
            Fact("pulses", f"{number(program.pulses_per_km, 0)} per km", f"{number(program.pulses_per_mile, 0)} per mile, at {number(pulses_per_rev, 0)} pulses per turn of the output shaft"),
            Fact("axle that would restore it", f"{program.axle_ratio_to_fit:.2f}", "ratio at which the old shift points and speedometer come back without programming"),
        ],
        not_checked=[
            "Tire load, speed rating, rim width and clearance; brakes, gearing for a trailer, and local rules on tire size.",
            "Wear, load and pressure of the tire: they move the circumference by about one percent.",
        ],
        cautions=[hazard.caution("roll-away")],
        cards=["road.speedometer", "road.shift_at_output_speed", "road.numbers_to_program", "road.limits_un_r39"],
        how=[
            shown.explain(programmed=programmed, fitted=fitted, true_km_h=true_km_h),
            *(point.explain(programmed=programmed, fitted=fitted) for point in points[-1:]),
            program.explain(programmed=programmed, fitted=fitted, pulses_per_rev=pulses_per_rev),
            explain("road.limits_un_r39", limits, true_km_h=true_km_h),
        ],
        data={
            "programmed": programmed.as_dict(),
            "fitted": fitted.as_dict(),
            "speedometer": shown.as_dict(),
            "limits_un_r39_km_h": limits.as_dict(),
            "numbers_to_program": program.as_dict(),
            "shift_points": [point.as_dict() for point in points],
        },
    )  # fmt: skip
