"""The road chapter from Python: columns, the standard atmosphere, driving cycles and real drives."""

from __future__ import annotations

from math import atan, cos, radians, sin, tan
from pathlib import Path

import numpy as np
import pytest
from fluids.atmosphere import ATMOSPHERE_1976
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq
from trainwright import Error, Reading, judge, road, tire

DATA = Path(__file__).resolve().parents[2].parent / "shared" / "data"
GRAVITY_M_S2 = 9.80665


def driveline(axle_ratio: float, size: str) -> road.Driveline:
    diameter_mm = tire.parse(size).geometric_diameter_mm()
    rolling = tire.rolling_by_share(diameter_mm=diameter_mm, share=Reading(value=0.968, u=0.006))
    return road.Driveline(axle_ratio=axle_ratio, circumference_mm=rolling.circumference_mm)


def shared(name: str) -> np.ndarray:
    path = DATA / name
    if not path.exists():
        pytest.skip(f"no {name} in the folder of shared data beside the project")
    return np.genfromtxt(path, delimiter=",", names=True, dtype=None, encoding="utf-8")


@given(st.floats(-2000, 11_000))
def test_the_standard_atmosphere_is_that_of_fluids(altitude_m: float) -> None:
    ours, theirs = road.standard_air(altitude_m=altitude_m), ATMOSPHERE_1976(altitude_m)
    assert ours.temp_c + 273.15 == pytest.approx(theirs.T, rel=1e-6)
    assert 1000 * ours.pressure_kpa_abs == pytest.approx(theirs.P, rel=1e-5)
    assert ours.density_kg_m3 == pytest.approx(theirs.rho, rel=1e-5)


@given(
    mass_kg=st.floats(1000, 40_000),
    rolling=st.floats(0, 0.03),
    area=st.floats(0, 10),
    speed_km_h=st.floats(0, 120),
    grade_pct=st.floats(-20, 40),
)
def test_the_grade_held_is_the_root_of_the_road_load(
    mass_kg: float, rolling: float, area: float, speed_km_h: float, grade_pct: float
) -> None:
    truck = road.Combination(mass_kg=mass_kg, rolling_coefficient=rolling, drag_area_m2=area)
    day = {"air_density_kg_m3": 1.18, "speed_km_h": speed_km_h}
    force_n = road.road_load(truck, **day, grade_pct=grade_pct).total_n
    left = (force_n - 0.5 * 1.18 * area * (speed_km_h / 3.6) ** 2) / (mass_kg * GRAVITY_M_S2)
    slope = brentq(lambda angle: sin(angle) + rolling * cos(angle) - left, -1.0, 1.0, xtol=1e-14)
    held = road.grade_held(truck, **day, force_n=force_n)
    assert held.grade_pct == pytest.approx(100 * tan(slope), abs=1e-6)
    assert held.grade_pct == pytest.approx(grade_pct, abs=1e-6)


def test_highway_text_takes_small_angles() -> None:
    """Mannering and Washburn (from memory): 2000 lbf, 255 lbf at 70 mph hold "0.0674"; exact sine and cosine make it 0.0676."""
    lbf, foot, slug = 4.4482216152605, 0.3048, 14.593903
    truck = road.Combination(
        mass_kg=2000 * lbf / GRAVITY_M_S2,
        rolling_coefficient=road.rolling_coefficient_at(speed_km_h=70 * 1.609344),
        drag_area_m2=0.40 * 20 * foot**2,
    )
    held = road.grade_held(
        truck, air_density_kg_m3=0.002045 * slug / foot**3, speed_km_h=70 * 1.609344, force_n=255 * lbf
    )
    assert held.aero_n / lbf == pytest.approx(86.22, abs=0.01)
    assert held.left_over_weight - truck.rolling_coefficient == pytest.approx(0.0674, abs=5e-5)
    assert held.grade_pct == pytest.approx(6.76, abs=0.005)


def test_gradeability_in_the_handbook_form() -> None:
    """117 N·m through 12:1 at 0.4 m move 4500 kg up 6.5 % (factor 10200, small angles, 1.5 % rolling)."""
    line = road.Driveline(axle_ratio=12, circumference_mm=Reading(value=2 * np.pi * 400, u=0.0))
    force_n = line.tractive_force_n(output_torque_nm=117.0, efficiency=1.0)
    truck = road.Combination(mass_kg=4500, rolling_coefficient=0.015, drag_area_m2=0)
    held = road.grade_held(truck, air_density_kg_m3=1.2, speed_km_h=0, force_n=force_n)
    assert held.grade_pct == pytest.approx(6.5, abs=0.06)


def test_a_column_gives_what_its_rows_give() -> None:
    line = driveline(3.92, "265/65R18")
    gear = road.Engaged(gear_ratio=0.7517, slip_rpm=20)
    engine_rpm = np.linspace(900, 3000, 50)
    columns = line.speeds_at_engine(gear, engine_rpm=engine_rpm)
    rows = [line.speeds_at_engine(gear, engine_rpm=value) for value in engine_rpm.tolist()]
    for name, column in columns.items():
        assert column.tolist() == [getattr(row, name) for row in rows]
    assert line.output_rpm(road_km_h=line.road_km_h(output_rpm=engine_rpm)) == pytest.approx(engine_rpm, rel=1e-14)


def test_shift_schedule_before_and_after_a_larger_tire() -> None:
    before, after = driveline(3.54, "265/65R18"), driveline(3.54, "35x12.50R17")
    schedule_rpm = np.array([700.0, 1150.0, 1620.0, 2100.0])
    kept = road.shift_at_output_speed(before, after, output_rpm=schedule_rpm)
    assert kept["after_km_h"] / kept["before_km_h"] == pytest.approx(1.1088936010976673, rel=1e-12)
    mended = road.shift_at_road_speed(before, after, road_km_h=kept["before_km_h"])
    assert mended["after_rpm"] / mended["before_rpm"] == pytest.approx(1 / 1.1088936010976673, rel=1e-12)


@pytest.mark.parametrize(
    ("programmed", "fitted", "shown"),
    [
        (driveline(3.54, "265/65R18"), driveline(3.54, "35x12.50R17"), 90.17997750281216),
        (driveline(3.54, "33x10.50R17"), driveline(4.27, "33x10.50R17"), 120.62146892655365),
    ],
    ids=["T16", "T17"],
)
def test_speedometers_of_the_demonstration_fleet(
    programmed: road.Driveline, fitted: road.Driveline, shown: float
) -> None:
    meter = road.speedometer(programmed, fitted, true_km_h=100.0)
    assert meter.shown_km_h.value == pytest.approx(shown, rel=1e-6)
    limits = road.limits_un_r39(true_km_h=100.0)
    assert judge.judge(meter.shown_km_h, limits, judge.Rule.stated_chances(go=0.95, no_go=0.05)).verdict == "NO-GO"
    numbers = road.numbers_to_program(programmed, fitted, pulses_per_rev=30)
    mended = road.Driveline(axle_ratio=numbers.axle_ratio, circumference_mm=programmed.circumference_mm)
    assert road.speedometer(mended, fitted, true_km_h=100.0).shown_km_h.value == pytest.approx(100.0)


@pytest.mark.parametrize(
    ("name", "duration_s", "miles", "fastest_mph"),
    [("udds", 1369, 7.45, 56.7), ("us06", 600, 8.01, 80.3)],
)
def test_driving_cycles_roll_their_distance(name: str, duration_s: int, miles: float, fastest_mph: float) -> None:
    """Wheel turns counted over the cycles of 40 CFR 86 appendix I give the distance that the regulation states."""
    cycle = shared(f"{name}.csv")
    line = driveline(3.92, "265/65R18")
    output_rpm = line.output_rpm(road_km_h=cycle["speed_mph"] * 1.609344)
    wheel_turns = output_rpm.sum() / 60 / line.axle_ratio
    assert cycle["time_s"][-1] == duration_s
    assert cycle["speed_mph"].max() == pytest.approx(fastest_mph, abs=0.02)
    assert wheel_turns * line.circumference_mm.value / 1e6 / 1.609344 == pytest.approx(miles, abs=0.02)


def test_a_real_drive_has_one_overall_ratio_in_its_locked_top_gear() -> None:
    """Where the engine turns in step with the wheels the implied gear times axle is one number, within a few percent."""
    drives = shared("drives_1hz.csv")
    fast = (drives["speed_mph"] > 55) & (drives["engine_rpm"] > 1200) & (abs(drives["accel_x"]) < 0.02)
    line = driveline(1.0, "265/65R18")
    overall = drives["engine_rpm"][fast] / line.output_rpm(road_km_h=drives["speed_mph"][fast] * 1.609344)
    assert fast.sum() > 100
    middle = np.median(overall)
    assert np.percentile(abs(overall / middle - 1), 75) < 0.03


def test_grade_in_percent_and_degrees() -> None:
    assert road.grade_deg(grade_pct=[0, 12, 30]) == pytest.approx([0, np.degrees(atan(0.12)), np.degrees(atan(0.3))])
    assert road.grade_pct(grade_deg=45) == pytest.approx(100 * tan(radians(45)))


def test_refusals_name_the_parameter() -> None:
    line = driveline(3.92, "265/65R18")
    truck = road.Combination(mass_kg=3000, rolling_coefficient=0.01, drag_area_m2=3)
    refused = [
        (lambda: road.Driveline(axle_ratio=0, circumference_mm=line.circumference_mm), "axle_ratio"),
        (lambda: line.road_km_h(output_rpm=float("inf")), "output_rpm"),
        (lambda: line.speeds_at_road(road.Engaged(gear_ratio=0), road_km_h=50), "gear_ratio"),
        (lambda: road.road_load(truck, air_density_kg_m3=1.2, speed_km_h=-1, grade_pct=0), "speed_km_h"),
        (lambda: road.grade_held(truck, air_density_kg_m3=1.2, speed_km_h=50, force_n=1e6), "grade"),
        (lambda: road.limits_49_cfr_393_82(true_km_h=50), "true_km_h"),
        (lambda: road.standard_air(altitude_m=20_000), "altitude_m"),
    ]
    for call, parameter in refused:
        with pytest.raises(Error) as caught:
            call()
        assert caught.value.parameter == parameter
