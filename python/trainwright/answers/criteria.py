"""The published criteria for tow ratings, from what was measured and, where nothing was, from what is computed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .. import hazard, practice
from ..edge import number, show
from ..error import Error
from ..judge import Limits, Reading
from ..sheet import Fact, Row, Sheet, Table
from ..tow import CriterionCheck, OfferedGear, RatedFor, RunUp, RunUpGear, RunUpTime, check_criterion, rig
from ..units import mph_to_km_h
from . import RULE
from .launch import Start

CRITERIA: Mapping[str, tuple[str, str]] = {
    "0 to 30 mph": ("s", "on the level"),
    "0 to 60 mph": ("s", "on the level"),
    "40 to 60 mph": ("s", "on the level"),
    "long grade": ("km_h", "3500 ft up in 11 miles from 100 °F, air conditioning on: the least speed"),
    "starts forward": ("", "12 %: starts of 16 ft within 5 minutes"),
    "starts reverse": ("", "12 %: starts of 16 ft within 5 minutes"),
    "grade forward": ("pct", "largest grade launched: the force behind the starts"),
    "grade reverse": ("pct", "largest grade launched: the force behind the starts"),
    "brake uphill": ("pct", "grade on which the parking brake holds the combination nose up"),
    "brake downhill": ("pct", "grade on which the parking brake holds it nose down"),
    "stop": ("m", "from 20 mph without the trailer's brakes"),
    "hitch bend": ("deg", "permanent bend at the hitch after the test"),
}
"""The published criteria: unit of the value (empty for a count), and how it is tested."""

LONG_GRADE_STEEPEST_PCT = 7.0
"""Steepest part of the long grade, which is 3 to 7 % and 6.0 % in the mean: read in a secondary summary."""

SPEEDS_MPH = {"0 to 30 mph": (0, 30), "0 to 60 mph": (0, 60), "40 to 60 mph": (40, 60)}
SIGNS = {"s": "s", "km_h": "km/h", "": "", "pct": "%", "m": "m", "deg": "°"}


def run_up_of(start: Start, *, shift_s: float) -> tuple[RunUp, list[RunUpGear]]:
    """A run-up on the level at full throttle, no more than the tires grip; the record has no inertias of the train."""
    written = start.fleet.as_dict()
    road, engine = written["road"], written["engine"][start.truck["engine"]]
    grip_n = start.grip(0.0, False, start.tire_friction).grip_n if start.tire_friction else float("inf")
    run = RunUp(
        combination=start.combination, driveline=start.driveline(start.tire), axle_efficiency=road["axle_efficiency"], air_density_kg_m3=road["air_density_kg_m3"],
        wheel_inertia_kg_m2=start.truck["tow"].get("wheel_inertia_kg_m2") or 0.0, engine_inertia_kg_m2=engine["inertia_kg_m2"], lowest_locked_rpm=road["lowest_locked_rpm"],
        grip_n=grip_n, shift_s=shift_s,
    )  # fmt: skip
    names: dict[str, OfferedGear] = {}
    for name, gear in zip(start.unit.names, start.unit.gears):
        if gear.ratio > 0 and not any(abs(gear.ratio - other.ratio) < 1e-9 for other in names.values()):
            names[name] = gear
    return run, [RunUpGear(ratio=gear.ratio, efficiency=gear.efficiency, output_inertia_kg_m2=0.0, lockable=gear.ratio < max(g.ratio for g in names.values())) for gear in names.values()]


def run_ups(start: Start, *, shift_s: float) -> dict[str, RunUpTime]:
    """The accelerations of the criteria, computed."""
    run, gears = run_up_of(start, shift_s=shift_s)
    engine = start.fleet.engine_curve(start.truck["engine"])
    converter = start.fleet.characteristic(start.fleet.as_dict()["engine"][start.truck["engine"]]["converter"])
    return {
        name: run.run_up(engine, converter, gears, from_km_h=mph_to_km_h(low), to_km_h=mph_to_km_h(high)) for name, (low, high) in SPEEDS_MPH.items()
    }


def criteria_sheet(start: Start, measured: Mapping[str, Reading], *, title: str, shift_s: float = practice.SHIFT_TIME_HIGH_S, trailer_brakes: bool = True) -> Sheet:
    """The published criteria for tow ratings, from what was measured and, where nothing was, from what is computed."""
    ratings = start.towed.ratings
    trailer_kg = min(ratings.maker_trailer_kg, ratings.hitch_trailer_kg)
    dual = (start.truck["tow"].get("rear_tires") or 2) >= 4
    rated = RatedFor(dual_rear=dual, gvwr_kg=ratings.gvwr_kg, trailer_kg=trailer_kg, trailer_brakes=trailer_brakes)
    runs = run_ups(start, shift_s=shift_s)
    checks, known = [], {}
    for name in CRITERIA:
        value, how = measured.get(name), "measured"
        never = False
        if value is None and name in runs:
            run, how = runs[name], "computed"
            value, never = (Reading.exact(run.time_s), False) if run.reaches else (None, True)
        elif value is None and name in ("grade forward", "grade reverse"):
            force, how = start.force(12.0, name == "grade reverse"), "computed at the ratings of the unit"
            value = Reading.exact(force.proven_grade_pct)
        elif value is None and name == "long grade":
            value, how = _long_grade_km_h(start), f"computed, locked, within the ratings, on {LONG_GRADE_STEEPEST_PCT:g} %"
        checks.append(check_criterion(name, value, rated, RULE, never=never))
        known[name] = how if value is not None or never else ""
    return Sheet(
        title=title,
        answer=_criteria_answer(checks),
        tables=[_criteria_table(checks, known)],
        facts=[
            Fact("class", "dual rear wheels" if dual else "single rear wheels", f"GVWR {show(ratings.gvwr_kg, 'kg')}, trailer rating {show(trailer_kg, 'kg')}"),
            Fact("run-up", "full throttle, quickest choice of gears", f"{shift_s:g} s a shift (common practice, no source); wheels and engine counted, the record has no inertias of the train"),
            Fact("criteria", "SAE J2807", "read in secondary summaries; the standard itself was not seen"),
        ],
        not_checked=[
            "The procedure: test weights, two occupants of 150 lb each, drag area of the trailer by class (no source for a table of it: the drag area is the record's), air conditioning, ambient temperature.",
            "The long grade: thin and hot air, which takes torque, and the temperature of the fluid; see the command grade.",
            "Understeer, trailer sway and the lane kept while braking. A computed time or grade is not the test.",
            "Uncertainty of computed times: they are taken as exact.",
            *([] if start.tire_friction else ["Grip of the driven tires in the run-up: the times are too short where they would slip."]),
        ],
        cautions=[hazard.caution("towing"), hazard.caution("roll-away"), hazard.caution("stall heat")],
        cards=["tow.check_criterion", "tow.criterion_limits", "tow.run_up", "tow.equivalent_mass"],
        how=[runs["0 to 30 mph"].explain(), next(check for check in checks if check.criterion == "0 to 30 mph").explain()],
        data={
            "criteria": {
                check.criterion: {
                    "outcome": check.outcome, "chance": check.chance, "lower": check.limits.lower, "upper": check.limits.upper,
                    "value": check.value.value if check.value else None, "how": known[check.criterion],
                }
                for check in checks
            },
            "run_up": {name: run.as_dict() for name, run in runs.items()},
        },
    )  # fmt: skip


def _long_grade_km_h(start: Start) -> Reading | None:
    """Speed up to 110 km/h that a locked gear holds on the steepest part of the long grade within the ratings of the unit; None where
    none does: with the converter open it may."""
    trailer_kg = start.towed.coupled.trailer.mass_kg.value
    hauling = rig(start.family, start.fleet, start.truck["id"], speed_step_km_h=1.0, tire=start.tire, trailer_kg=trailer_kg)
    try:
        return Reading.exact(hauling.largest_speed(grade_pct=LONG_GRADE_STEEPEST_PCT, at_most_km_h=110.0, within_ratings=True).speed_km_h)
    except Error as error:
        if error.kind != "NO_ANSWER":
            raise
        return None


def _criteria_answer(checks: Sequence[CriterionCheck]) -> str:
    groups: dict[str, list[str]] = {}
    for check in checks:
        groups.setdefault(check.outcome, []).append(check.criterion)
    order = ("not met", "not proven", "met", "not given", "no figure")
    words = [f"{outcome.capitalize()}: {', '.join(groups[outcome])}." for outcome in order if outcome in groups]
    return " ".join([*words, "Meeting a criterion here is no rating: the vehicle maker rates the vehicle."])


def _asks(limits: Limits, suffix: str) -> str:
    low, high = limits.lower, limits.upper
    if low == float("-inf") and high == float("inf"):
        return "no figure known"
    bound = f"at most {number(high, 1)}" if high < float("inf") else f"at least {number(low, 1)}"
    return f"{bound} {SIGNS[suffix]}".rstrip()


def _criteria_table(checks: Sequence[CriterionCheck], known: Mapping[str, str]) -> Table:
    marks = {"met": "", "not met": "NO-GO", "not proven": "NOT PROVEN", "not given": "quiet", "no figure": "quiet"}
    rows = []
    for check in checks:
        suffix, test = CRITERIA[check.criterion]
        value = f"{number(check.value.value, 1)} {SIGNS[suffix]}".rstrip() if check.value else "never" if known[check.criterion] else ""
        rows.append(Row((check.criterion, test, _asks(check.limits, suffix), value, known[check.criterion], check.outcome), marks[check.outcome]))
    return Table("Published criteria", ("criterion", "test", "asks", ">value", "how", "outcome"), rows)
