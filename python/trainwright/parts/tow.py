"""The part about trailers: loads against ratings, launch, park and the published criteria of the trucks of a fleet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from .. import hazard, practice
from ..answers.criteria import criteria_sheet
from ..answers.launch import Start, launch_sheet, start_of
from ..answers.tow import WORDS, Towed, tow_sheet, towed
from ..edge import number
from ..sheet import Row, Sheet, Table
from .frame import Draw, Part, Records

GRADE_PCT = 12.0
"""Grade of the launch: that of the published criteria."""

GRADES_PCT = tuple(float(grade) for grade in range(36))
"""Grades of the picture."""


def tow_parts(records: Records) -> Iterator[Part]:
    """Every truck with ratings, then of those with a known trailer the fullest one, its launch and the published criteria."""
    family, fleet = records.family, records.fleet
    if not (family and fleet):
        return
    trucks = [truck for truck in fleet.as_dict()["truck"] if truck.get("tow") and truck["variant"] in family.variants]
    cases = [case for truck in trucks for case in towed(fleet, truck["id"])]
    if not cases:
        return
    yield Part(_fleet_sheet(cases), {"Every load over its rating: 100 % is the rating, ± 2 standard uncertainties.": _bars(cases)})
    known = [case for case in cases if case.name in fleet.trucks] or cases
    worst = max(known, key=lambda case: case.review.fullest_row.used_share)
    yield Part(tow_sheet(worst, title=f"Trailer on {worst.name}"), {"Axle loads without and with the trailer, against the ratings.": _axles(worst)})
    truck_id = worst.name.split()[0]
    start = start_of(family, fleet, truck_id, worst, tire_friction=practice.TIRE_FRICTION_DRY, friction_from="dry pavement: common practice, no source")
    yield Part(launch_sheet(start, grade_pct=GRADE_PCT, title=f"{worst.name} starts on {GRADE_PCT:g} %"), {"Force at the ratings of the unit and grip, against what the grade takes.": _launch(start)})
    yield Part(criteria_sheet(start, {}, title=f"{worst.name} and the published criteria"))


def _fleet_sheet(cases: Sequence[Towed]) -> Sheet:
    rows = []
    for case in cases:
        review = case.review
        governing, fullest = review.governing_row, review.fullest_row
        cells = (
            case.name, number(case.coupled.trailer.mass_kg.value, 0), number(review.loads.front_kg.value, 0), number(review.loads.rear_kg.value, 0),
            number(review.payload_left_kg, 0), WORDS[governing.kind][0], number(review.trailer_limit_kg, 0), number(review.proven_trailer_kg, 0),
            f"{WORDS[fullest.kind][0]} {number(100 * fullest.used_share, 0)} %", review.verdict,
        )  # fmt: skip
        rows.append(Row(cells, "" if review.verdict == "GO" else review.verdict))
    columns = ("truck", ">trailer kg", ">front kg", ">rear kg", ">payload left kg", "governs", ">trailer at the limit", ">proven trailer", "fullest", "verdict")
    verdicts = {verdict: [case.name for case in cases if case.review.verdict == verdict] for verdict in ("NO-GO", "NOT PROVEN", "GO")}
    answer = " ".join(f"{verdict}: {', '.join(names)}." for verdict, names in verdicts.items() if names)
    return Sheet(
        title="Trailers of every truck against the ratings",
        answer=f"{answer} The vehicle maker's ratings, the placards and local law decide; this only compares loads with them.",
        tables=[Table("Loads and the rating that governs", columns, rows, "NOT PROVEN also where a rating is missing.")],
        not_checked=["Ratings are the record's, invented like everything in the demonstration; brakes, cooling, sway and local law are not looked at."],
        cautions=[hazard.caution("towing")],
        cards=["tow.axle_loads", "tow.rating_check", "tow.review_ratings"],
        data={"trucks": {case.name: case.review.as_dict() for case in cases}},
    )


def _bars(cases: Sequence[Towed]) -> Draw:
    points = []
    for case in cases:
        row = case.review.fullest_row
        points.append((case.name, WORDS[row.kind][0], row.used_share, row.load_kg.u / row.rating_kg, row.verdict))
    return lambda plots: plots.fullest_ratings("Fullest rating of every truck", points)


def _axles(case: Towed) -> Draw:
    review, weighed = case.review, case.coupled.weighed
    loads, ratings = review.loads, case.ratings
    bars = [
        ("front axle", weighed.front_kg.value, loads.front_kg.value, loads.front_kg.u, ratings.gawr_front_kg),
        ("rear axle", weighed.rear_kg.value, loads.rear_kg.value, loads.rear_kg.u, ratings.gawr_rear_kg),
        ("truck", weighed.front_kg.value + weighed.rear_kg.value, loads.truck_kg.value, loads.truck_kg.u, ratings.gvwr_kg),
        ("truck and trailer", 0.0, loads.combination_kg.value, loads.combination_kg.u, ratings.gcwr_kg),
    ]
    return lambda plots: plots.loads_and_ratings(f"Loads of {case.name}", bars)


def _launch(start: Start) -> Draw:
    takes = [start.force(grade, False).needed_n for grade in GRADES_PCT]
    friction = start.tire_friction or practice.TIRE_FRICTION_DRY
    lines = {}
    for way, reverse in (("forward", False), ("reverse", True)):
        force_n = start.force(0.0, reverse).tractive_n
        lines[way] = (force_n, [start.grip(grade, reverse, friction).grip_n for grade in GRADES_PCT])
    return lambda plots: plots.launch_by_grade(f"Launch of {start.towed.name}", GRADES_PCT, takes, lines)


