"""Runners of the tire chapter's vectors."""

from trainwright import Reading, tire

KINDS = ["metric", "no aspect", "flotation", "inch"]
SERVICES = ["", "P", "LT", "ST", "T", "C"]
PLIES = ["radial", "diagonal", "belted"]
LOAD_RANGES = ["", *"BCDEFGHJLMN"]
BASES = ["rule", "table", "pattern"]


def speed(symbol):
    return tire.symbol_km_h(symbol) if symbol else 0.0


def parse(row):
    got = tire.parse(row["text"])
    marks = [got.extra_load, got.run_flat, got.mud_snow, got.above_symbol]
    return [
        float(KINDS.index(got.kind)),
        float(SERVICES.index(got.service)),
        float(PLIES.index(got.plies)),
        got.width_mm,
        got.aspect_pct,
        got.diameter_in,
        got.width_in,
        got.rim_in,
        float(LOAD_RANGES.index(got.load_range)),
        float(got.load_index),
        float(got.load_index_dual),
        speed(got.speed_symbol),
        float(sum(mark * weight for mark, weight in zip(marks, (1, 2, 4, 8)))),
    ]


def parse_lenient(row):
    got = tire.parse_lenient(row["text"])
    return [got.width_mm, got.aspect_pct, got.rim_in, float(got.plies_assumed)]


def regulation_diameter(row):
    got = tire.parse(row["text"]).regulation_diameter()
    return [got.diameter_mm, got.rim_mm, got.section_height_mm, float(BASES.index(got.basis))]


def geometric_diameter_mm(row):
    return [tire.parse(row["text"]).geometric_diameter_mm()]


def symbol_km_h(row):
    return [tire.symbol_km_h(row["letters"])]


def reading(row, name):
    return Reading(value=row.number(name), u=row.number(f"u_{name}"))


def outputs(rolling):
    circumference, per_km = rolling.circumference_mm, rolling.rev_per_km
    return [
        circumference.value,
        circumference.u,
        rolling.radius_mm.value,
        per_km.value,
        per_km.u,
        rolling.rev_per_mile.value,
    ]


def rolling_by_factor(row):
    return outputs(tire.rolling_by_factor(diameter_mm=row.number("diameter_mm"), factor=reading(row, "factor")))


def rolling_by_share(row):
    return outputs(tire.rolling_by_share(diameter_mm=row.number("diameter_mm"), share=reading(row, "share")))


def rolling_by_count(row):
    distance_m, revolutions = reading(row, "distance_m"), reading(row, "revolutions")
    return outputs(tire.rolling_by_count(distance_m=distance_m, revolutions=revolutions))


def radii(row):
    diameter_mm = row.number("diameter_mm")
    rolling = tire.rolling_by_share(diameter_mm=diameter_mm, share=Reading(value=row.number("share"), u=0.0))
    static_over_diameter = row.number("static_over_diameter")
    got = tire.radii(diameter_mm=diameter_mm, static_over_diameter=static_over_diameter, rolling=rolling)
    return [got.free_mm, got.static_loaded_mm, got.effective_mm]
