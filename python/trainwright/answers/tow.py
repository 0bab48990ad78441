"""A trailer on a truck: axle loads, every rating against its load, the rating that governs, and what to weigh next."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import inf, isfinite
from typing import Any

from .. import Explanation, hazard, practice
from ..edge import number, show
from ..judge import Judgment, Limits, Reading, settle_by
from ..record import Fleet
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..tow import Coupled, Distribution, RatingCheck, RatingReview, RatingRow, TowRatings, axle_loads, gawr_left_kg, gvwr_class, share_band_kg
from . import RULE, rule_in_words
from .truck import truck_of
from .turning import Turn, turning_table

WORDS = {
    "combination": ("GCWR", "truck and trailer"),
    "vehicle": ("GVWR", "truck with the hitch load"),
    "front axle": ("GAWR front", "front axle"),
    "rear axle": ("GAWR rear", "rear axle"),
    "front tires": ("tires front", "front axle"),
    "rear tires": ("tires rear", "rear axle"),
    "maker trailer": ("maker's trailer rating", "trailer"),
    "hitch trailer": ("hitch's trailer rating", "trailer"),
    "hitch load": ("hitch's load rating", "hitch load"),
    "trailer gross": ("trailer's own rating", "trailer"),
}
"""What a rating is called, and the load that it belongs to."""

FIELDS = ("gcwr_kg", "gvwr_kg", "gawr_front_kg", "gawr_rear_kg", "tires_front_kg", "tires_rear_kg", "maker_trailer_kg", "hitch_trailer_kg", "hitch_load_kg", "trailer_gross_kg")  # fmt: skip
"""The ratings by the name of their field, in the order of the rows."""

INPUTS = ("front axle on the scale", "rear axle on the scale", "hitch load", "mass of the trailer")
"""What the uncertainty of a load comes from, in the order of the budget."""

BANDS = {
    "ball": ("tongue", Limits(lower=practice.TONGUE_SHARE_LOW, upper=practice.TONGUE_SHARE_HIGH)),
    "king_pin": ("pin", Limits(lower=practice.PIN_SHARE_LOW, upper=practice.PIN_SHARE_HIGH)),
}
"""Trade guidance for the share that rests on the hitch; common practice, no source."""

NOT_CHECKED = [
    "Brakes of truck and trailer, cooling, frame, receiver and coupler condition, tire pressure and age, and what local law asks.",
    "Side to side: a scale under each wheel shows it. Sway: too little hitch load, speed and wind.",
    "On the level and at rest: a grade, braking and a dip in the road shift load on top.",
]


@dataclass(frozen=True)
class Towed:
    """A truck with a trailer on its hitch."""

    name: str
    coupled: Coupled
    ratings: TowRatings
    hitch: str = "ball"
    weighed: str = "as given"

    @property
    def review(self) -> RatingReview:
        """Every rating of it."""
        return self.coupled.review_ratings(self.ratings, RULE)

    def check(self, kind: str) -> RatingCheck:
        """One rating again, with its judgment and budget."""
        rating_kg = getattr(self.ratings, FIELDS[list(WORDS).index(kind)])
        return self.coupled.rating_check(kind, rating_kg=rating_kg, rule=RULE)


def towed(fleet: Fleet, truck_id: str, *, trailer_kg: float | None = None, distribution: Distribution | None = None) -> list[Towed]:
    """A truck of a fleet with its trailer: one case, or the lightest and the heaviest where the record knows only a range."""
    truck = truck_of(fleet, truck_id)
    trailers = [trailer_kg] if trailer_kg else truck.get("trailer_range_kg") or [truck.get("trailer_kg") or 0.0]
    cases = []
    for mass_kg in trailers:
        coupled = fleet.coupled(truck_id, trailer_kg=mass_kg)
        if distribution:
            coupled = Coupled(weighed=coupled.weighed, trailer=coupled.trailer, levers=coupled.levers, distribution=distribution)
        name = truck_id if len(trailers) == 1 else f"{truck_id} with {number(mass_kg, 0)} kg"
        hitch = truck["tow"].get("hitch") or "ball"
        cases.append(Towed(name, coupled, fleet.tow_ratings(truck_id), hitch, "scale weights and ratings of the record"))
    return cases


def tow_sheet(case: Towed, *, title: str, story: str = "") -> Sheet:
    """Axle loads, every rating and the one that governs."""
    review = case.review
    loads, governing = review.loads, review.governing_row
    given = [row for row in review.rows if row.given]
    missing = [WORDS[row.kind][0] for row in review.rows if not row.given]
    judged = [case.check(row.kind) for row in given]
    turned = case.check(_most_doubtful(given).kind)
    turns, turns_data = turning_table(turned.judgment, turned.budget, _turns(case, turned.kind))
    return Sheet(
        title=title,
        story=story,
        answer=_answer(case, review, governing, missing),
        decisions=[_decision(case, check) for check in judged if check.judgment.verdict != "GO"] or [_decision(case, case.check(governing.kind))],
        tables=[_loads_table(case, review), _ratings_table(review), replace(turns, title=f"{WORDS[turned.kind][0]}: {turns.title[0].lower()}{turns.title[1:]}")],
        facts=_facts(case, review),
        not_checked=[
            *([f"{', '.join(missing)}: no rating given. The whole is not a GO while one is missing; read it off its placard."] if missing else []),
            *NOT_CHECKED,
        ],
        cautions=[hazard.caution("towing"), hazard.caution("roll-away")],
        cards=["tow.axle_loads", "tow.rating_check", "tow.review_ratings", "tow.by_share", "tow.share_band_kg"],
        how=_how(case, turned),
        data={"review": review.as_dict(), "inputs": turns_data, "hitch": case.hitch, "missing": missing},
    )  # fmt: skip


def _answer(case: Towed, review: RatingReview, governing: RatingRow, missing: list[str]) -> str:
    loads, mass_kg = review.loads, case.coupled.trailer.mass_kg.value
    over = [WORDS[row.kind][0] for row in review.rows if row.verdict == "NO-GO"]
    open_ = [WORDS[row.kind][0] for row in review.rows if row.given and row.verdict == "NOT PROVEN"]
    words = [
        f"With {show(mass_kg, 'kg')} of trailer the front axle carries {show(loads.front_kg.value, 'kg')}, the rear axle {show(loads.rear_kg.value, 'kg')}, "
        f"the truck {show(loads.truck_kg.value, 'kg')}, both {show(loads.combination_kg.value, 'kg')}."
    ]
    if over:
        words.append(f"Over its rating: {', '.join(over)}.")
    if open_:
        words.append(f"NOT PROVEN: {', '.join(open_)}.")
    if not over and not open_:
        words.append("Every rating is kept." if not missing else f"Every rating that was given is kept; the whole is NOT PROVEN while {len(missing)} {'is' if len(missing) == 1 else 'are'} missing.")
    if isfinite(governing.trailer_limit_kg):
        words.append(
            f"{WORDS[governing.kind][0]} governs: it is met by a trailer of {show(governing.trailer_limit_kg, 'kg')}; proven up to "
            f"{show(review.proven_trailer_kg, 'kg')}."
        )
    if isfinite(review.payload_left_kg):
        left = review.payload_left_kg
        words.append(f"Payload left: {show(left, 'kg')}." if left >= 0 else f"Payload is exceeded by {show(-left, 'kg')}.")
    words.append("The vehicle maker's ratings, the placards and local law decide; this only compares loads with them.")
    return " ".join(words)


def _most_doubtful(given: list[RatingRow]) -> RatingRow:
    """The rating whose verdict is closest to turning: the one to know better."""
    return min(given, key=lambda row: abs(row.left_kg) / (row.load_kg.u or 1e-9) if row.load_kg.u else inf)


def _decision(case: Towed, check: RatingCheck) -> Decision:
    judged, (name, load) = check.judgment, WORDS[check.kind]
    basis = f"{show(judged.reading.value, 'kg')}, standard uncertainty {show(judged.reading.u, 'kg')}, against {show(check.rating_kg, 'kg')}; {rule_in_words(RULE)}."
    settled = ""
    if judged.verdict == "NOT PROVEN" and check.weigh_next != "nothing":
        place = ("front axle", "rear axle", "hitch load", "trailer").index(check.weigh_next)
        wanted = settle_by(judged, check.budget, place)
        alone = f"to {show(wanted.u_needed, 'kg')}" if wanted.enough else "first; it alone cannot decide"
        settled = f"To settle it, weigh the {check.weigh_next} better, {alone}."
    return Decision(f"{case.name}: {load} within {name}", judged.verdict, judged.chance, basis, settled)


def _loads_table(case: Towed, review: RatingReview) -> Table:
    loads, weighed, coupled = review.loads, case.coupled.weighed, case.coupled
    plain = axle_loads(coupled.weighed, coupled.trailer, coupled.levers)
    bars = coupled.distribution.moment_nm > 0
    rows = [
        ("front axle", weighed.front_kg, plain.front_kg, loads.front_kg),
        ("rear axle", weighed.rear_kg, plain.rear_kg, loads.rear_kg),
        ("truck", Reading.exact(weighed.front_kg.value + weighed.rear_kg.value), plain.truck_kg, loads.truck_kg),
        ("axles of the trailer", None, plain.trailer_axles_kg, loads.trailer_axles_kg),
        ("on the hitch", None, plain.hitch_kg, loads.hitch_kg),
        ("truck and trailer", None, plain.combination_kg, loads.combination_kg),
    ]
    columns = ["load", ">without trailer", ">with trailer", *([">with the bars"] if bars else []), ">standard uncertainty"]
    cells = [
        (name, show(alone.value, "kg") if alone else "", show(without.value, "kg"), *([show(found.value, "kg")] if bars else []), show(found.u, "kg"))
        for name, alone, without, found in rows
    ]
    note = f"Weight-distributing hitch: {number(coupled.distribution.moment_nm, 0)} N·m." if bars else "Without a weight-distributing hitch."
    return Table("Loads on the scale and with the trailer", tuple(columns), [Row(cell) for cell in cells], note)


def _ratings_table(review: RatingReview) -> Table:
    columns = ("rating", "load", ">load kg", ">rating kg", ">left kg", ">used", ">trailer at the limit", ">proven trailer", "verdict")
    rows = []
    for row in sorted(review.rows, key=lambda row: (not row.given, row.trailer_limit_kg)):
        name, load = WORDS[row.kind]
        governs = row.given and row.kind == review.governing
        if row.given:
            used = f"{number(100 * row.used_share, 0)} %"
            cells = (number(row.rating_kg, 0), number(row.left_kg, 0), used, _trailer(row.trailer_limit_kg), _trailer(row.proven_trailer_kg), row.verdict)
        else:
            cells = ("not given", "", "", "", "", "")
        mark = row.verdict if row.given and row.verdict != "GO" else "governs" if governs else "" if row.given else "quiet"
        rows.append(Row((f"{name}{' (governs)' if governs else ''}", load, number(row.load_kg.value, 0), *cells), mark))
    return Table("Every rating, the lightest trailer first", columns, rows, "Trailer at the limit: the same share on the hitch. Proven: GO with the uncertainties of the scales.")


def _trailer(mass_kg: float) -> str:
    return number(mass_kg, 0) if isfinite(mass_kg) else "not limited"


def _facts(case: Towed, review: RatingReview) -> list[Fact]:
    coupled, ratings = case.coupled, case.ratings
    share = coupled.trailer.hitch_kg.value / coupled.trailer.mass_kg.value
    name, band = BANDS[case.hitch]
    allowed = share_band_kg(mass_kg=coupled.trailer.mass_kg.value, share=band)
    within = "within" if allowed.lower * (1 - 1e-9) <= coupled.trailer.hitch_kg.value <= allowed.upper * (1 + 1e-9) else "OUTSIDE"
    facts = [
        Fact("loads from", case.weighed),
        Fact("levers", f"wheelbase {number(coupled.levers.wheelbase_mm, 0)} mm, hitch {number(coupled.levers.overhang_mm, 0)} mm behind the rear axle", "negative is ahead of it"),
        Fact(
            f"{name} share", f"{number(100 * share, 1)} %",
            f"{within} {100 * band.lower:g} to {100 * band.upper:g} %, {show(allowed.lower, 'kg')} to {show(allowed.upper, 'kg')}: common practice, no source; the trailer maker's goes first",
        ),
    ]  # fmt: skip
    if isfinite(ratings.gvwr_kg):
        facts.append(Fact("class by GVWR", str(gvwr_class(gvwr_kg=ratings.gvwr_kg)), "49 CFR 565.15"))
        if isfinite(ratings.gawr_front_kg) and isfinite(ratings.gawr_rear_kg):
            left = gawr_left_kg(gvwr_kg=ratings.gvwr_kg, gawr_front_kg=ratings.gawr_front_kg, gawr_rear_kg=ratings.gawr_rear_kg)
            said = "consistent" if left >= 0 else "CONTRADICTION: read the placard again"
            facts.append(Fact("sum of GAWR over GVWR", show(left, "kg"), said))
    return facts


def _turns(case: Towed, kind: str) -> list[Turn]:
    """The four weighed inputs in the order of the budget, with the judgment that another value of each would give."""
    weighed, trailer = case.coupled.weighed, case.coupled.trailer

    def again(**changed: Reading) -> Judgment:
        one = {"front_kg": weighed.front_kg, "rear_kg": weighed.rear_kg, "mass_kg": trailer.mass_kg, "hitch_kg": trailer.hitch_kg, **changed}
        coupled = Coupled(
            weighed=type(weighed)(front_kg=one["front_kg"], rear_kg=one["rear_kg"]), trailer=type(trailer)(mass_kg=one["mass_kg"], hitch_kg=one["hitch_kg"]),
            levers=case.coupled.levers, distribution=case.coupled.distribution,
        )  # fmt: skip
        return replace(case, coupled=coupled).check(kind).judgment

    readings = {"front_kg": weighed.front_kg, "rear_kg": weighed.rear_kg, "hitch_kg": trailer.hitch_kg, "mass_kg": trailer.mass_kg}
    return [
        Turn(label, reading, "kg", _only(again, field, reading), *_span(field, reading, trailer.mass_kg.value, trailer.hitch_kg.value))
        for label, (field, reading) in zip(INPUTS, readings.items())
    ]


def _only(again: Any, field: str, reading: Reading) -> Any:
    return lambda value: again(**{field: Reading(value=value, u=reading.u)})


def _span(field: str, reading: Reading, mass_kg: float, hitch_kg: float) -> tuple[float, float]:
    """Values of an input between which the verdict is looked for: an axle stays on the road, a hitch load within its trailer."""
    if field == "hitch_kg":
        return 0.3 * reading.value, min(1.7 * reading.value, mass_kg)
    return max(0.4 * reading.value, hitch_kg if field == "mass_kg" else 0.0), 2.5 * reading.value


def _how(case: Towed, check: RatingCheck) -> list[Explanation]:
    coupled = case.coupled
    given: Mapping[str, Any] = {"weighed": coupled.weighed, "trailer": coupled.trailer}
    loads = case.review.loads
    return [
        loads.explain(levers=coupled.levers, distribution=coupled.distribution, **given),
        check.explain(**given),
        case.review.explain(),
    ]
