"""Runners of the vectors of axle loads and ratings."""

from runners.judge import VERDICTS

from trainwright import tow as core
from trainwright.judge import Limits, Reading, Rule

RATINGS = ["gcwr_kg", "gvwr_kg", "gawr_front_kg", "gawr_rear_kg", "tires_front_kg", "tires_rear_kg", "maker_trailer_kg", "hitch_trailer_kg", "hitch_load_kg", "trailer_gross_kg"]  # fmt: skip
WEIGH = ["nothing", "front axle", "rear axle", "hitch load", "trailer"]


def _numbers(row, *columns):
    return {column: row.number(column) for column in columns}


def _reading(row, value, u):
    return Reading(value=row.number(value), u=row.number(u))


def _rule(row):
    return Rule.stated_chances(**_numbers(row, "go", "no_go"))


def _levers(row):
    return core.Levers(**_numbers(row, "wheelbase_mm", "overhang_mm"))


def _coupled(row):
    return core.Coupled(
        weighed=core.AxleWeights(front_kg=_reading(row, "front_kg", "front_u_kg"), rear_kg=_reading(row, "rear_kg", "rear_u_kg")),
        trailer=core.Trailer(mass_kg=_reading(row, "mass_kg", "mass_u_kg"), hitch_kg=_reading(row, "hitch_kg", "hitch_u_kg")),
        levers=_levers(row),
        distribution=core.Distribution(**_numbers(row, "moment_nm", "ball_to_axle_mm")),
    )


def axle_loads(row):
    coupled = _coupled(row)
    loads = core.axle_loads(coupled.weighed, coupled.trailer, coupled.levers, coupled.distribution)
    both = [loads.hitch_kg, loads.front_kg, loads.rear_kg, loads.truck_kg]
    found = [part for reading in both for part in (reading.value, reading.u)]
    return [*found, loads.trailer_axles_kg.value, loads.combination_kg.value, loads.combination_kg.u]


def by_share(row):
    mass, share = _reading(row, "mass_kg", "mass_u_kg"), _reading(row, "hitch_share", "hitch_share_u")
    hitch = core.Trailer.by_share(mass_kg=mass, hitch_share=share).hitch_kg
    return [hitch.value, hitch.u]


def share_band_kg(row):
    band = core.share_band_kg(mass_kg=row.number("mass_kg"), share=Limits(lower=row.number("low_share"), upper=row.number("high_share")))
    return [band.lower, band.upper]


def restoring_moment_nm(row):
    return [core.restoring_moment_nm(_levers(row), **_numbers(row, "hitch_kg", "ball_to_axle_mm", "restored_share"))]


def gvwr_class(row):
    return [float(core.gvwr_class(gvwr_kg=row.number("gvwr_kg")))]


def gvwr_least_kg(row):
    return [core.gvwr_least_kg(**_numbers(row, "unloaded_kg", "cargo_kg"), seats=int(row["seats"]))]


def axle_tires_kg(row):
    return [core.axle_tires_kg(tire_kg=row.number("tire_kg"), tires=int(row["tires"]), passenger=row["passenger"] == "1")]


def rating_check(row):
    check = _coupled(row).rating_check(row["kind"].replace("_", " "), rating_kg=row.number("rating_kg"), rule=_rule(row))
    numbers = [check.load_kg.value, check.load_kg.u, check.left_kg, check.used_share, check.trailer_limit_kg, check.proven_trailer_kg]
    return [*numbers, check.judgment.chance, VERDICTS[check.judgment.verdict], float(WEIGH.index(check.weigh_next))]


def review_ratings(row):
    review = _coupled(row).review_ratings(core.TowRatings(**_numbers(row, *RATINGS)), _rule(row))
    kinds = [line.kind for line in review.rows]
    places = [float(kinds.index(kind)) for kind in (review.governing, review.fullest_row.kind)]
    return [float(review.given), *places, review.trailer_limit_kg, review.proven_trailer_kg, review.payload_left_kg, VERDICTS[review.verdict]]
