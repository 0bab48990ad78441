"""Runners of the vectors of load per gear on a grade, heat, coolers and roads."""

from trainwright import tow as core
from trainwright.converter import Characteristic, EngineCurve
from trainwright.judge import Reading
from trainwright.road import Combination, Driveline

TIGHT = Characteristic(
    speed_ratio=[0.0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97],
    torque_ratio=[1.92, 1.72, 1.51, 1.28, 1.17, 1.06, 1.0, 1.0, 1.0],
    k_rpm_per_sqrt_nm=[71.0, 71.3, 72.2, 74.7, 77.8, 84.1, 95.0, 128.0, 196.0],
)
"""The tight converter of the demonstration."""
STANDINGS = ["holds", "little reserve", "too weak", "below lock-up", "over speed", "reverse"]
LIMITS = ["engine", "rated input", "rated output"]
SPEED_LIMITS = ["as asked", "engine torque", "engine speed", "rated input", "rated output"]


def _numbers(row, *columns):
    return {column: row.number(column) for column in columns}


def _groups(row, column):
    return [[float(part) for part in group.split(":")] for group in row[column].split(" ")]


def _list(row, column):
    return [group[0] for group in _groups(row, column)]


def _fields(answer, *names):
    return [float(getattr(answer, name)) for name in names]


def _gearing(row):
    gears = [core.OfferedGear(ratio=ratio, efficiency=efficiency) for ratio, efficiency in _groups(row, "gears")]
    ratings = _numbers(row, "rated_input_nm", "rated_reverse_nm", "rated_output_nm")
    return core.Gearing(names=[str(place) for place in range(len(gears))], gears=gears, **ratings)


def _rig(row):
    haul = core.Haul(
        combination=Combination(**_numbers(row, "mass_kg", "rolling_coefficient", "drag_area_m2")),
        driveline=Driveline(axle_ratio=row.number("axle_ratio"), circumference_mm=Reading.exact(row.number("circumference_mm"))),
        **_numbers(row, "axle_efficiency", "air_density_kg_m3"),
    )
    gearing = _gearing(row)
    speed_rpm, torque_nm = zip(*_groups(row, "engine"), strict=True)
    engine = EngineCurve(speed_rpm=list(speed_rpm), torque_nm=list(torque_nm), max_rpm=row.number("max_rpm"))
    rule = core.GearRule(**_numbers(row, "torque_reserve", "lowest_locked_rpm", "speed_step_km_h"))
    return core.Rig(haul=haul, gearing=gearing, engine=engine, rule=rule)


def _place(name):
    return -1.0 if name is None else float(name)


def new(row):
    gearing = _gearing(row)
    return [float(len(gearing.gears)), gearing.gears[0].ratio, gearing.gears[-1].efficiency]


def pull(row):
    found = _rig(row).pull(**_numbers(row, "grade_pct", "speed_km_h"))
    look = found.gears[row["look"]]
    return [
        found.load.total_n, *_fields(found, "output_rpm", "output_nm", "use_of_output"), _place(found.chosen), _place(found.advised),
        float(LIMITS.index(found.limit)), found.use_of_limit,
        *_fields(look, "engine_rpm", "input_nm", "full_nm", "reserve", "use_of_input"), float(STANDINGS.index(look.standing)),
    ]  # fmt: skip


def pull_slowed(row):
    found = _rig(row).pull_slowed(**_numbers(row, "grade_pct", "speed_km_h"))
    return [found.speed_km_h, _place(found.chosen), found.gear.input_nm]


def largest_speed(row):
    within = row.number("within_ratings") == 1
    found = _rig(row).largest_speed(**_numbers(row, "grade_pct", "at_most_km_h"), within_ratings=within)
    return [found.speed_km_h, float(found.gear), found.use_of_input, float(SPEED_LIMITS.index(found.limit))]


def unlocked_pull(row):
    rig = _rig(row)
    found = rig.unlocked_pull(TIGHT, row["gear"], **_numbers(row, "grade_pct", "speed_km_h"))
    names = ["turbine_rpm", "turbine_nm", "speed_ratio", "torque_ratio", "engine_rpm", "engine_nm", "reserve", "holds", "use_of_input", "converter_kw"]
    return _fields(found, *names)


def unit_loss(row):
    return _fields(core.unit_loss(core.Running(**row.numbers())), "mesh_kw", "drag_kw", "pump_kw", "converter_kw", "total_kw")


def _node(row):
    return core.HeatNode(**_numbers(row, "heat_capacity_j_k", "case_w_k", "air_c", "cooler_w_k", "cooler_air_c"))


def warmed(row):
    return _fields(_node(row).warmed(**_numbers(row, "start_c", "loss_kw", "time_s")), "temp_c", "steady_c", "time_constant_s")


def time_to(row):
    return _fields(_node(row).time_to(**_numbers(row, "start_c", "loss_kw", "limit_c")), "time_s", "steady_c", "reached")


def cooler_needed_w_k(row):
    return [_node(row).cooler_needed_w_k(**_numbers(row, "loss_kw", "limit_c"))]


def effectiveness(row):
    return [core.effectiveness(row["arrangement"], **_numbers(row, "transfer_units", "capacity_ratio"))]


def transfer_units(row):
    return [core.transfer_units(row["arrangement"], **_numbers(row, "effectiveness", "capacity_ratio"))]


def cooler_heat(row):
    cooler = core.Cooler(**_numbers(row, "ua_w_k", "oil_w_k", "air_w_k"), arrangement=row["arrangement"])
    found = cooler.cooler_heat(**_numbers(row, "oil_c", "air_c"))
    return _fields(found, "effectiveness", "conductance_w_k", "power_kw", "oil_out_c", "air_out_c")


def cooler_size(row):
    task = core.CoolerTask(**_numbers(row, "oil_in_c", "oil_out_c", "air_in_c"))
    found = core.cooler_size(row["arrangement"], task, **_numbers(row, "oil_w_k", "air_w_k"))
    return _fields(found, "power_kw", "air_out_c", "effectiveness", "ua_w_k", "log_mean_k")


def _heat(row):
    return core.HeatModel(**_numbers(row, "drag_nm", "pump_kpa", "pump_l_min", "pump_efficiency", "limit_c"), node=_node(row))


def climb(row):
    pieces = [core.RoadPiece(length_m=length, grade_pct=grade, speed_km_h=speed) for length, grade, speed in _groups(row, "pieces")]
    found, driven = _rig(row).climb(_heat(row), pieces, start_c=row.number("start_c"))
    whole = [
        "distance_m", "up_m", "down_m", "time_s", "peak_c", "peak_piece", "end_c", "limit_after_s", "limit_after_m", "over_limit_s", "heat_j",
        "wheel_work_j", "lift_work_j", "use_of_rating",
    ]  # fmt: skip
    return [*_fields(found, *whole), *_fields(driven[-1], "speed_km_h", "gear", "loss_kw", "end_c")]


def cool_speed(row):
    found = _rig(row).cool_speed(_heat(row), **_numbers(row, "grade_pct", "speed_km_h"))
    return [found.pull.speed_km_h, _place(found.pull.chosen), found.loss_kw, found.steady_c, float(found.steps)]


def smooth(row):
    noise = core.ElevationNoise(**_numbers(row, "u_m", "correlation_m"))
    found = core.smooth(_list(row, "distance_m"), _list(row, "elevation_m"), window_m=row.number("window_m"), noise=noise)
    look = int(row["look"])
    return [float(found[column][look]) for column in ("elevation_m", "grade_pct", "u_grade_pct", "points")]


def total_climb(row):
    found = core.total_climb(_list(row, "elevation_m"), dead_band_m=row.number("dead_band_m"))
    return _fields(found, "up_m", "down_m", "net_m", "turns")


def pieces(row):
    found = core.pieces(_list(row, "distance_m"), _list(row, "elevation_m"), **_numbers(row, "piece_m", "speed_km_h"))
    piece = found[int(row["look"])]
    return [float(len(found)), piece.length_m, piece.grade_pct]
