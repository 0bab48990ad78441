"""Runners of the road chapter's vectors."""

from trainwright import Reading, road


def driveline(row):
    circumference_mm = Reading(value=row.number("circumference_mm"), u=float(row.get("u_circumference_mm", 0.0)))
    axle_ratio, transfer_ratio = row.number("axle_ratio"), row.number("transfer_ratio")
    return road.Driveline(axle_ratio=axle_ratio, transfer_ratio=transfer_ratio, circumference_mm=circumference_mm)


def prefixed(row, prefix):
    u = float(row.get(f"u_{prefix}_circumference_mm", 0.0))
    circumference_mm = Reading(value=row.number(f"{prefix}_circumference_mm"), u=u)
    return road.Driveline(axle_ratio=row.number(f"{prefix}_axle_ratio"), circumference_mm=circumference_mm)


def engaged(row):
    return road.Engaged(gear_ratio=row.number("gear_ratio"), slip_rpm=row.number("slip_rpm"))


def combination(row):
    names = ("mass_kg", "rolling_coefficient", "drag_area_m2")
    return road.Combination(**{name: row.number(name) for name in names})


def values(answer):
    return list(answer.as_dict().values())


def road_km_h(row):
    return [driveline(row).road_km_h(output_rpm=row.number("output_rpm"))]


def output_rpm(row):
    return [driveline(row).output_rpm(road_km_h=row.number("road_km_h"))]


def speeds_at_road(row):
    return values(driveline(row).speeds_at_road(engaged(row), road_km_h=row.number("road_km_h")))


def speeds_at_output(row):
    return values(driveline(row).speeds_at_output(engaged(row), output_rpm=row.number("output_rpm")))


def speeds_at_engine(row):
    return values(driveline(row).speeds_at_engine(engaged(row), engine_rpm=row.number("engine_rpm")))


def shift_at_output_speed(row):
    before, after = prefixed(row, "before"), prefixed(row, "after")
    return values(road.shift_at_output_speed(before, after, output_rpm=row.number("output_rpm")))


def shift_at_road_speed(row):
    before, after = prefixed(row, "before"), prefixed(row, "after")
    return values(road.shift_at_road_speed(before, after, road_km_h=row.number("road_km_h")))


def speedometer(row):
    programmed, fitted = prefixed(row, "programmed"), prefixed(row, "fitted")
    meter = road.speedometer(programmed, fitted, true_km_h=row.number("true_km_h"))
    return [meter.true_over_shown, meter.shown_km_h.value, meter.shown_km_h.u]


def numbers_to_program(row):
    programmed, fitted = prefixed(row, "programmed"), prefixed(row, "fitted")
    return values(road.numbers_to_program(programmed, fitted, pulses_per_rev=row.number("pulses_per_rev")))


def road_load(row):
    names = ("air_density_kg_m3", "speed_km_h", "grade_pct")
    return values(road.road_load(combination(row), **{name: row.number(name) for name in names}))


def grade_held(row):
    names = ("air_density_kg_m3", "speed_km_h", "force_n")
    return values(road.grade_held(combination(row), **{name: row.number(name) for name in names}))


def tractive_force_n(row):
    torque, efficiency = row.number("output_torque_nm"), row.number("efficiency")
    return [driveline(row).tractive_force_n(output_torque_nm=torque, efficiency=efficiency)]


def output_torque_nm(row):
    return [driveline(row).output_torque_nm(force_n=row.number("force_n"), efficiency=row.number("efficiency"))]


def coast_down_load(row):
    names = ("a_n", "b_n_per_km_h", "c_n_per_km_h2")
    coefficients = road.CoastDown(**{name: row.number(name) for name in names})
    return values(coefficients.coast_down_load(speed_km_h=row.number("speed_km_h")))


def from_lbf_mph(row):
    return values(road.CoastDown.from_lbf_mph(**row.numbers()))
