"""Which trucks of a fleet come first: damage of their recorded hours set by set, each place with its interval, a reason and what to do."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from .. import Explanation, hazard, practice
from ..duty import RankInterval, TruckDuty, mesh_duty, rank_intervals, truck_duty_cases
from ..edge import number, show
from ..error import Error, refusal
from ..record import Family, Fleet
from ..road import speedometer
from ..sheet import Fact, Row, Sheet, Table

SPEED_STEP_KM_H = 1.0
"""Step by which a truck slows down until a gear holds."""

MASS_STEP_KG = 100.0
"""Step at which an unknown trailer is tried over its range."""

NAN = float("nan")


@dataclass(frozen=True)
class Ranked:
    """A truck with its place."""

    truck: dict[str, Any]
    cases: list[TruckDuty]
    """Under each assumption about what is not known; none where its hours have no answer."""
    refusal: str
    by_slope: dict[float, tuple[float, float]]
    """Least and greatest damage at each slope."""
    place: RankInterval
    """Over all slopes."""
    reason: str
    action: str

    @property
    def name(self) -> str:
        """Name of the truck."""
        return str(self.truck["id"])

    @property
    def worst(self) -> TruckDuty | None:
        """The assumption with the greatest damage."""
        return max(self.cases, key=lambda case: case.damage, default=None)

    @property
    def over_rating(self) -> float:
        """Greatest torque over rating in the hours it drives."""
        return max((case.worst_hours.use_of_rating for case in self.cases if case.worst_hours), default=NAN)


def slope_of_record(family: Family) -> float:
    """The record's slope of the damage of gear teeth."""
    fatigue = family.as_dict().get("fatigue")
    if not fatigue:
        raise refusal("fatigue", "the family has no [fatigue] table; give slopes and reference there")
    return float(fatigue["slope"]["gear_bending"])


def common_slopes(family: Family) -> list[float]:
    """The record's slope between those that are commonly taken."""
    own = slope_of_record(family)
    return sorted({min(practice.GEAR_SLOPE_LOW, own), own, max(practice.GEAR_SLOPE_HIGH, own)})


def _steps(truck: dict[str, Any]) -> int:
    low, high = truck.get("trailer_range_kg") or (0.0, 0.0)
    return max(2, round((high - low) / MASS_STEP_KG) + 1)


def _cases(family: Family, fleet: Fleet, truck: dict[str, Any], slope: float) -> tuple[list[TruckDuty], str]:
    try:
        return truck_duty_cases(family, fleet, truck["id"], speed_step_km_h=SPEED_STEP_KM_H, steps=_steps(truck), slope=slope), ""
    except Error as error:
        return [], str(error)


def ranked(family: Family, fleet: Fleet, slopes: Sequence[float]) -> list[Ranked]:
    """Every truck by falling damage at the record's slope; a truck without an answer can take every place, and stands last."""
    own = slope_of_record(family)
    trucks = fleet.as_dict()["truck"]
    answers = {truck["id"]: {slope: _cases(family, fleet, truck, slope) for slope in dict.fromkeys([own, *slopes])} for truck in trucks}
    spans: dict[float, list[tuple[float, float]]] = {}
    places: list[list[RankInterval]] = []
    for slope in slopes:
        found = [[case.damage for case in answers[truck["id"]][slope][0]] for truck in trucks]
        spans[slope] = [(min(values, default=NAN), max(values, default=NAN)) for values in found]
        places.append(rank_intervals([low for low, _ in spans[slope]], [high for _, high in spans[slope]]))
    result = []
    for at, truck in enumerate(trucks):
        cases, refusal = answers[truck["id"]][own]
        first, last = min(ranks[at].first for ranks in places), max(ranks[at].last for ranks in places)
        reason, action = _reason(fleet, truck, cases, refusal)
        by_slope = {slope: spans[slope][at] for slope in slopes}
        result.append(Ranked(truck, cases, refusal, by_slope, RankInterval(first=first, last=last), reason, action))
    return sorted(result, key=lambda one: -(one.worst.damage if one.worst else -1.0))


def _reason(fleet: Fleet, truck: dict[str, Any], cases: list[TruckDuty], refusal: str) -> tuple[str, str]:
    """What puts a truck where it is, and what to do about it."""
    if not cases:
        return refusal, "its place is not known: mend that first"
    worst = max(cases, key=lambda case: case.damage)
    damage = worst.sets[worst.worst_set]
    hours = worst.hours[damage.governing]
    reasons = [f"{worst.worst_set}: {100 * damage.governing_share:.0f} % of it on {hours.grade_pct:g} % in {hours.gear}"]
    actions = []
    peak = max((case.worst_hours for case in cases if case.worst_hours), key=lambda hours: hours.use_of_rating, default=None)
    if peak and peak.use_of_rating > 1:
        reasons.insert(0, f"{number(peak.use_of_rating, 2)} of its rating in {peak.gear} on {peak.grade_pct:g} %")
        actions.append("take off load, or fit a unit rated for it; until then a lower gear there")
    if truck.get("tire_programmed") or truck.get("axle_programmed"):
        shown = speedometer(fleet.programmed(truck["id"]), fleet.fitted(truck["id"]), true_km_h=100.0).shown_km_h.value
        what = "tire" if truck.get("tire_programmed") else "axle"
        reasons.append(f"programmed for another {what}: shows {number(shown, 1)} at true 100 km/h")
        actions.append(f"program the {what} that is fitted")
    if truck.get("parts_from"):
        reasons.append(f"parts of another variant: {', '.join(truck['parts_from'])}")
        actions.append("look at those parts first")
    if len(cases) > 1:
        gaps = [word for word, key in (("tire", "tire_candidates"), ("mass of the trailer", "trailer_range_kg")) if truck.get(key)]
        reasons.append(f"not known: {' and '.join(gaps)}")
        actions.insert(0, "read the sidewall and weigh the trailer: that alone settles its place")
    return "; ".join(reasons), "; ".join(actions) or "nothing beyond the maker's schedule"


def damage_text(value: float) -> str:
    """A damage, for a table.

    >>> damage_text(0.35289), damage_text(0.0039), damage_text(1.3e-6), damage_text(0.0)
    ('0.35', '0.0039', '< 0.0001', '0')
    """
    if value != value:
        return "not known"
    if value == 0:
        return "0"
    return "< 0.0001" if value < 1e-4 else f"{value:.2g}"


def _span(low: float, high: float) -> str:
    first, last = damage_text(low), damage_text(high)
    return first if first == last else f"{first} to {last}"


def _place(place: RankInterval) -> str:
    return f"{place.first}" if place.first == place.last else f"{place.first} to {place.last}"


def fleet_sheet(family: Family, fleet: Fleet, *, slopes: Sequence[float], title: str, story: str = "") -> Sheet:
    """Every truck with its place, damage by set, reason and action."""
    trucks = ranked(family, fleet, slopes)
    own = slope_of_record(family)
    return Sheet(
        title=title,
        story=story,
        answer=_answer(trucks, slopes),
        tables=[_ranking(trucks, own), _reasons(trucks), _by_set(trucks), _by_slope(trucks, slopes), *_bearings(trucks)],
        facts=_facts(family, slopes),
        not_checked=[
            "Damage ranks; it does not promise a life: 1 is where the record's reference line is met, and no part keeps to it.",
            "Hours on steady grades with the converter locked: launches, shifts, coasting and an open converter are not in them.",
            "Shafts: the record gives their slope and no reference torque, so they are not ranked. Clutch linings wear by shifts, not by hours.",
            *(["A trailer of unknown mass is tried in steps of 100 kg; between two steps the damage may be some percent greater."] if any(len(one.cases) > 1 for one in trucks) else []),
        ],
        cautions=[hazard.caution("towing")],
        cards=["train.solve", "duty.mesh_duty", "duty.from_rating", "duty.damage", "duty.rank_intervals", "road.road_load"],
        how=_how(family, trucks),
        data=_data(trucks, slopes),
    )  # fmt: skip


def _answer(trucks: list[Ranked], slopes: Sequence[float]) -> str:
    known = [one for one in trucks if one.cases]
    if not known:
        return "No truck has an answer; see the reasons."
    first = known[0]
    assert first.worst
    sets = {one.worst.worst_set for one in known if one.worst}
    words = [f"{first.name} comes first: damage {damage_text(first.worst.damage)} of {first.worst.worst_set}; {first.reason}."]
    words.append(f"By falling damage: {', '.join(one.name for one in trucks)}.")
    if len(sets) == 1:
        words.append(f"{sets.pop()} is the worst set of every truck.")
    if over := [f"{one.name} ({number(one.over_rating, 2)})" for one in known if one.over_rating > 1]:
        words.append(f"Over their rating: {', '.join(over)}.")
    if open_ := [f"{one.name} {_place(one.place)}" for one in trucks if one.place.first < one.place.last]:
        spread = f" with slopes from {min(slopes):g} to {max(slopes):g}" if len(slopes) > 1 else ""
        words.append(f"Places that are not settled{spread}: {', '.join(open_)}.")
    return " ".join(words)


def _ranking(trucks: list[Ranked], own: float) -> Table:
    rows = []
    for one in trucks:
        low, high = min((case.damage for case in one.cases), default=NAN), max((case.damage for case in one.cases), default=NAN)
        use = number(one.over_rating, 2) if one.cases else "not known"
        cells = (_place(one.place), one.name, str(one.truck["variant"]), _span(low, high), use)
        rows.append(Row(cells, "governs" if one.over_rating > 1 else ""))
    columns = ("place", "truck", "unit of", ">damage", ">of rating")
    return Table("Trucks by falling damage", columns, rows, f"Damage at slope {own:g}; place over all slopes and everything that is not known. Bold: over its rating.")


def _reasons(trucks: list[Ranked]) -> Table:
    rows = [Row((one.name, one.reason, one.action), "governs" if one.over_rating > 1 else "") for one in trucks]
    return Table("Why, and what to do", ("truck", "why", "what to do"), rows)


def _by_set(trucks: list[Ranked]) -> Table:
    names = list(dict.fromkeys(name for one in trucks for case in one.cases for name in case.sets))
    rows = []
    for one in trucks:
        spans = [[case.sets[name].total for case in one.cases] for name in names] if one.cases else [[NAN]] * len(names)
        rows.append(Row((one.name, *(_span(min(values), max(values)) for values in spans))))
    note = "0 is a set that turns as a block, or carries nothing, in every gear that these hours take: no tooth meets another."
    return Table("Damage by planetary set", ("truck", *(f">{name}" for name in names)), rows, note)


def _by_slope(trucks: list[Ranked], slopes: Sequence[float]) -> Table:
    rows = []
    for slope in slopes:
        order = sorted((one for one in trucks if one.cases), key=lambda one: -one.by_slope[slope][1])
        rows.append(Row((f"{slope:g}", ", ".join(one.name for one in order), _span(*order[0].by_slope[slope]) if order else "")))
    return Table("Order at other slopes", (">slope", "by falling damage", ">of the first"), rows, "The slope is the same for every truck, so it moves the numbers far and the order little.")


def _bearings(trucks: list[Ranked]) -> list[Table]:
    rows = []
    for one in trucks:
        found = [case.bearing for case in one.cases if case.bearing]
        if found:
            worst = max(found, key=lambda bearing: bearing.used)
            rows.append(Row((one.name, damage_text(worst.used), show(worst.greatest_n, "n", 0), show(worst.dynamic_n, "n", 0))))
    if not rows:
        return []
    columns = ("truck", ">share of its life", ">greatest push", ">dynamic capacity")
    return [Table("Needle thrust bearing", columns, rows, "Of the life that nine of ten reach by ISO 281, from its sizes: no maker's rating.")]


def _facts(family: Family, slopes: Sequence[float]) -> list[Fact]:
    fatigue = family.as_dict()["fatigue"]
    return [
        Fact("slope", f"{slope_of_record(family):g}", f"the record's for gear teeth; ranked at {', '.join(f'{slope:g}' for slope in slopes)}"),
        Fact("reference", f"{fatigue['reference_over_rated']:g} × rating", f"torque on a sun that gives {fatigue['reference_contacts']:g} contacts, over its torque at rating in its worst forward gear"),
    ]  # fmt: skip


def _how(family: Family, trucks: list[Ranked]) -> list[Explanation]:
    first = next((one.worst for one in trucks if one.worst), None)
    if not first:
        return []
    damage, line = first.sets[first.worst_set], first.lines[first.worst_set]
    gear = first.hours[damage.governing].gear
    state = next(state for state in family.train(first.variant).gears() if state.id == gear)
    rating = family.as_dict()["variant"][first.variant]["rated_turbine_nm"]
    fatigue = family.as_dict()["fatigue"]
    return [
        mesh_duty(state, set=first.worst_set).explain(),
        line.explain(over_rated=fatigue["reference_over_rated"], rated_nm=rating),
        damage.explain(slope=line.slope, reference_nm=line.reference_nm, reference_contacts=line.reference_contacts),
    ]


def _data(trucks: list[Ranked], slopes: Sequence[float]) -> dict[str, object]:
    return {
        "ranking": [one.name for one in trucks],
        "ranking_by_slope": {
            f"{slope:g}": [one.name for one in sorted((one for one in trucks if one.cases), key=lambda one: -one.by_slope[slope][1])] for slope in slopes
        },
        "trucks": [_truck_data(one) for one in trucks],
    }  # fmt: skip


def _truck_data(one: Ranked) -> dict[str, object]:
    worst = one.worst
    peaks = [case.worst_hours for case in one.cases if case.worst_hours]
    peak = max(peaks, key=lambda hours: hours.use_of_rating, default=None)
    return {
        "truck": one.name,
        "variant": one.truck["variant"],
        "first_place": one.place.first,
        "last_place": one.place.last,
        "worst_set": worst.worst_set if worst else None,
        "damage": {name: found.total for name, found in worst.sets.items()} if worst else None,
        "damage_interval": [min(case.damage for case in one.cases), max(case.damage for case in one.cases)] if one.cases else None,
        "damage_by_slope": {f"{slope:g}": list(span) for slope, span in one.by_slope.items()} if one.cases else None,
        "bearing_used": worst.bearing.used if worst and worst.bearing else None,
        "worst_over_rated": peak.use_of_rating if peak else None,
        "worst_at": {"grade_pct": peak.grade_pct, "speed_km_h": peak.speed_km_h, "gear": peak.gear} if peak else None,
        "because": one.reason,
        "what_to_do": one.action,
    }
