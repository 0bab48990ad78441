"""A truck along a road of grades: gear, torque and temperature piece by piece, and when the sump reaches its limit."""

from __future__ import annotations

import csv
from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite
from pathlib import Path

from .. import hazard, units
from ..edge import number, show
from ..error import refusal
from ..sheet import Fact, Row, Sheet, Table
from ..tow import Climb, DrivenPiece, ElevationNoise, RoadPiece, pieces, smooth, total_climb
from .grade.frame import CAUTIONS, DEFERS, Hot, Truck

ROWS = 24
"""Most rows of the table of pieces; a longer road shows the pieces where something changes."""

COLUMNS = {
    "distance_m": ("distance_m", 1.0), "distance_km": ("distance_m", 1000.0), "distance_mi": ("distance_m", 1000.0 * units.mile_to_km(1.0)),
    "elevation_m": ("elevation_m", 1.0), "elevation_ft": ("elevation_m", units.in_to_mm(12.0) / 1000.0),
    "length_m": ("length_m", 1.0), "length_km": ("length_m", 1000.0), "length_mi": ("length_m", 1000.0 * units.mile_to_km(1.0)),
    "grade_pct": ("grade_pct", 1.0), "speed_km_h": ("speed_km_h", 1.0), "speed_mph": ("speed_km_h", units.mph_to_km_h(1.0)),
}  # fmt: skip
"""Columns of a road in a file: what they are inside, and the factor."""


@dataclass(frozen=True)
class Road:
    """Pieces of road, and in words where they come from; with the uncertainty of the grade where it was smoothed."""

    pieces: Sequence[RoadPiece]
    source: str
    facts: tuple[Fact, ...] = ()


def columns_of(file: Path) -> dict[str, list[float]]:
    """The columns of a road in a CSV file, in meters, percent and km/h."""
    with file.open(newline="", encoding="utf-8-sig") as opened:
        reader = csv.DictReader(line for line in opened if not line.startswith("#"))
        known = {name: COLUMNS[name.strip()] for name in reader.fieldnames or () if name.strip() in COLUMNS}
        found: dict[str, list[float]] = {inside: [] for inside, _ in known.values()}
        for place, row in enumerate(reader, start=2):
            for name, (inside, factor) in known.items():
                try:
                    found[inside].append(float(row[name]) * factor)
                except (TypeError, ValueError):
                    raise refusal("profile", f"{file}, row {place}: {name} = {row[name]!r} is not a number", "TEXT") from None
    return found


def road_of(file: Path, *, speed_km_h: float | None, window_m: float | None, noise: ElevationNoise | None, piece_m: float | None) -> Road:
    """The road in a CSV file: pieces as they are, or elevations smoothed into pieces."""
    columns = columns_of(file)
    if {"length_m", "grade_pct", "speed_km_h"} <= columns.keys():
        triples = zip(columns["length_m"], columns["grade_pct"], columns["speed_km_h"], strict=True)
        found = [RoadPiece(length_m=length, grade_pct=grade, speed_km_h=speed) for length, grade, speed in triples]
        return Road(found, f"{file.name}: {len(found)} pieces as given")
    if not {"distance_m", "elevation_m"} <= columns.keys():
        wanted = "length_m,grade_pct,speed_km_h or distance_m,elevation_m (also _km, _mi, _ft, speed_mph)"
        raise refusal("profile", f"{file} has none of the columns {wanted}", "MISSING")
    if speed_km_h is None or window_m is None or noise is None or piece_m is None:
        raise refusal("profile", "elevations need --speed, --window, --piece, --elevation-u and --correlation, or --practice", "MISSING")
    return road_from(columns["distance_m"], columns["elevation_m"], speed_km_h=speed_km_h, window_m=window_m, noise=noise, piece_m=piece_m, name=file.name)


def road_from(
    distance_m: Sequence[float], elevation_m: Sequence[float], *, speed_km_h: float, window_m: float, noise: ElevationNoise, piece_m: float, name: str
) -> Road:  # fmt: skip
    """Pieces of road from distances and noisy elevations."""
    smoothed = smooth(list(distance_m), list(elevation_m), window_m=window_m, noise=noise)
    found = pieces(list(distance_m), smoothed["elevation_m"].tolist(), piece_m=piece_m, speed_km_h=speed_km_h)
    raw, calm = (total_climb(list(heights), dead_band_m=band) for heights, band in ((elevation_m, 0.0), (smoothed["elevation_m"], noise.u_m)))
    facts = (
        Fact("grade from elevations", f"window {number(window_m, 0)} m", "straight line of least squares in the window, grade from its slope"),
        Fact("standard uncertainty of the grade", f"{number(float(smoothed['u_grade_pct'].max()), 2)} %", f"at most; elevations {noise.u_m:g} m, alike over {noise.correlation_m:g} m"),
        Fact("climb", f"{number(calm.up_m, 0)} m up, {number(calm.down_m, 0)} m down", f"smoothed, dead band {noise.u_m:g} m; every reading counted it would be {number(raw.up_m, 0)} m up"),
    )  # fmt: skip
    return Road(found, f"{name}: {len(distance_m)} elevations in {len(found)} pieces of {number(piece_m, 0)} m", facts)


def climb_sheet(truck: Truck, road: Road, hot: Hot, *, title: str, story: str = "") -> Sheet:
    """One truck along a road."""
    climb, driven = truck.rig.climb(hot.model, list(road.pieces), start_c=hot.start_c)
    limit = show(hot.model.limit_c, "c", 0)
    if isfinite(climb.limit_after_s):
        heat = (
            f"The sump reaches {limit} after {number(climb.limit_after_s / 60, 0)} minutes, at {number(climb.limit_after_m / 1000, 1)} km, and is above it for "
            f"{number(climb.over_limit_s / 60, 0)} minutes; it peaks at {show(climb.peak_c, 'c', 0)}."
        )
    elif climb.peak_c <= hot.start_c:
        heat = f"The sump stays below the {show(hot.start_c, 'c', 0)} it starts with and ends at {show(climb.end_c, 'c', 0)}."
    else:
        heat = f"The sump peaks at {show(climb.peak_c, 'c', 0)}, {number(hot.model.limit_c - climb.peak_c, 0)} K below {limit}."
    use = f"The greatest torque is {_share(climb.use_of_rating)} of a rating, on {driven[climb.use_piece].grade_pct:.1f} % in gear {_gear(truck, driven[climb.use_piece])}."
    slow = [(piece, asked) for piece, asked in zip(driven, road.pieces) if piece.speed_km_h < asked.speed_km_h]
    slowest = min(slow, key=lambda pair: pair[0].speed_km_h, default=None)
    lost = f" It falls to {show(slowest[0].speed_km_h, 'km_h', 0)} on {slowest[0].grade_pct:.1f} %." if slowest else ""
    return Sheet(
        title=title,
        story=story,
        answer=f"{truck.name} takes {number(climb.distance_m / 1000, 1)} km in {number(climb.time_s / 60, 0)} minutes. {heat} {use}{lost} {DEFERS}",
        tables=[_table(truck, road, driven)],
        facts=[Fact("road", f"{number(climb.up_m, 0)} m up, {number(climb.down_m, 0)} m down", road.source), *road.facts, *_facts(truck, climb, hot)],
        not_checked=["what the vehicle is rated for, brakes downhill, grip of the tires", "shifts, stops and lock-up clutch open; cooling at other speeds", "the engine's own cooling"],
        cautions=[hazard.caution(word) for word in CAUTIONS],
        cards=["tow.climb", "tow.pull_slowed", "tow.unit_loss", "tow.warmed", *(["tow.smooth", "tow.pieces", "tow.total_climb"] if road.facts else [])],
        how=[climb.explain(**driven[climb.peak_piece].as_dict())],
        data={
            "truck": truck.name,
            "variant": truck.variant,
            "start_c": hot.start_c,
            "limit_c": hot.model.limit_c,
            **{name: value if isfinite(value) else None for name, value in climb.as_dict().items()},
            "pieces": [{**piece.as_dict(), "gear": _gear(truck, piece)} for piece in driven],
        },
    )


def _share(value: float) -> str:
    return f"{number(100 * value, 0)} %"


def _gear(truck: Truck, piece: DrivenPiece) -> str:
    return truck.rig.gearing.names[piece.gear]


def _table(truck: Truck, road: Road, driven: Sequence[DrivenPiece]) -> Table:
    ends = [sum(piece.length_m for piece in road.pieces[: place + 1]) for place in range(len(driven))]
    shown = list(range(len(driven)))
    if len(shown) > ROWS:
        step = len(shown) / ROWS
        shown = sorted({int(place * step) for place in range(ROWS)} | {len(driven) - 1, max(shown, key=lambda place: driven[place].end_c)})
    hottest = max(shown, key=lambda place: driven[place].end_c)
    rows = []
    for place in shown:
        piece = driven[place]
        rows.append(Row((
            number(ends[place] / 1000, 2), number(piece.grade_pct, 1), number(piece.speed_km_h, 0), _gear(truck, piece), number(piece.engine_rpm, 0), number(piece.input_nm, 0),
            _share(piece.use_of_rating), number(piece.loss_kw, 1), number(piece.end_c, 0),
        ), "NO-GO" if piece.use_of_rating > 1 else ("governs" if place == hottest else "")))  # fmt: skip
    note = f"Every {len(driven) / ROWS:.0f}th piece and the hottest." if len(driven) > ROWS else ""
    return Table("Piece by piece", (">to km", ">grade %", ">km/h", "gear", ">engine rpm", ">input N·m", ">of rating", ">heat kW", ">sump °C"), rows, note)


def _facts(truck: Truck, climb: Climb, hot: Hot) -> list[Fact]:
    node = hot.model.node
    return [
        Fact("combination", show(truck.rig.haul.combination.mass_kg, "kg"), truck.rolls_on),
        Fact("work at the wheels", f"{number(climb.wheel_work_j / 3.6e6, 1)} kWh", f"of which lifting {number(climb.lift_work_j / 3.6e6, 1)} kWh"),
        Fact("heat of the unit", f"{number(climb.heat_j / 3.6e6, 1)} kWh", f"cooler {number(node.cooler_w_k, 0)} W/K, case {number(node.case_w_k, 0)} W/K, {number(node.heat_capacity_j_k / 1000, 0)} kJ/K"),
        Fact("limit of the sump", show(hot.model.limit_c, "c", 0), f"start {show(hot.start_c, 'c', 0)}, air {show(node.air_c, 'c', 0)}; {hot.source}"),
    ]  # fmt: skip
