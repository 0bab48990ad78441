"""Axle loads and ratings against free bodies and sampling, launch and run-up against the equations of motion, and the command."""

from __future__ import annotations

import json
import math
import pickle
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import trainwright
from click.testing import CliRunner
from scipy.integrate import solve_ivp
from trainwright import practice, record, tow
from trainwright.cli import shop
from trainwright.converter import Characteristic, EngineCurve
from trainwright.judge import Limits, Reading, Rule
from trainwright.road import Combination, Driveline
from trainwright.tow import AxleWeights, Coupled, Distribution, Launch, Levers, RatedFor, RunUp, RunUpGear, Stance, TowRatings, Trailer
from trainwright.units import lb_to_kg, mph_to_km_h

DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY, FLEET = str(DEMO / "family.toml"), str(DEMO / "fleet.toml")
RULE = Rule.stated_chances(go=0.95, no_go=0.05)
G = 9.80665
COUPLED = Coupled(
    weighed=AxleWeights(front_kg=Reading(value=1900, u=12), rear_kg=Reading(value=1860, u=12)),
    trailer=Trailer(mass_kg=Reading(value=7400, u=40), hitch_kg=Reading(value=890, u=60)),
    levers=Levers(wheelbase_mm=3750, overhang_mm=1250),
)


# ---- statics


@pytest.mark.parametrize("moment_nm", [0.0, 2500.0])
@pytest.mark.parametrize("overhang_mm", [1250.0, -60.0])
def test_axle_loads_are_those_of_the_free_bodies(moment_nm: float, overhang_mm: float) -> None:
    """Truck and trailer cut at the ball: four forces from four equations, in newtons and meters."""
    front, rear, mass, hitch, wheelbase, to_axle = 1900.0, 1860.0, 7400.0, 890.0, 3.75, 6.2
    overhang = overhang_mm / 1000
    # Unknown: front axle, rear axle, hitch (down on the truck), trailer axles.
    balance = np.array([[1, 1, -1, 0], [0, wheelbase, -(wheelbase + overhang), 0], [0, 0, 1, 1], [0, 0, 0, to_axle]], float)
    center = to_axle * (1 - hitch / mass)  # of the trailer, behind the ball
    known = np.array([front + rear, rear * wheelbase - moment_nm / G, mass, mass * center + moment_nm / G])
    by_hand = np.linalg.solve(balance, known)
    bars = Distribution(moment_nm=moment_nm, ball_to_axle_mm=6200)
    loads = tow.axle_loads(COUPLED.weighed, COUPLED.trailer, Levers(wheelbase_mm=3750, overhang_mm=overhang_mm), bars)
    found = [loads.front_kg.value, loads.rear_kg.value, loads.hitch_kg.value, loads.trailer_axles_kg.value]
    np.testing.assert_allclose(found, by_hand, rtol=1e-12)


def test_sampling_the_scales_agrees_with_the_budget() -> None:
    draw = np.random.default_rng(7).standard_normal((4, 400_000))
    front, rear, hitch, mass = 1900 + 12 * draw[0], 1860 + 12 * draw[1], 890 + 60 * draw[2], 7400 + 40 * draw[3]
    lever = 1250 / 3750
    sampled = {"rear axle": rear + hitch * (1 + lever), "front axle": front - hitch * lever, "vehicle": front + rear + hitch, "combination": front + rear + mass}
    for kind, values in sampled.items():
        rating = float(np.quantile(values, 0.8))
        check = COUPLED.rating_check(kind, rating_kg=rating, rule=RULE)
        assert values.std() == pytest.approx(check.load_kg.u, rel=0.01)
        assert np.mean(values <= rating) == pytest.approx(check.judgment.chance, abs=0.003)
        assert check.judgment.verdict == "NOT PROVEN"
    assert COUPLED.rating_check("rear axle", rating_kg=3050, rule=RULE).weigh_next == "hitch load"


def test_the_hitch_governs_as_in_the_published_example_of_three_ratings() -> None:
    pounds = Coupled(
        weighed=AxleWeights(front_kg=Reading.exact(lb_to_kg(4100)), rear_kg=Reading.exact(lb_to_kg(3300))),
        trailer=Trailer.by_share(mass_kg=Reading.exact(lb_to_kg(10000)), hitch_share=Reading.exact(0.1)),
        levers=Levers(wheelbase_mm=160 * 25.4, overhang_mm=50 * 25.4),
    )
    ratings = TowRatings(gcwr_kg=lb_to_kg(21500), gvwr_kg=lb_to_kg(10800), gawr_rear_kg=lb_to_kg(7000), hitch_trailer_kg=lb_to_kg(14000))
    review = pounds.review_ratings(ratings, RULE)
    limits = {row.kind: row.trailer_limit_kg / lb_to_kg(1) for row in review.rows if row.given}
    assert limits == pytest.approx({"combination": 14100, "vehicle": 34000, "rear axle": 28190.5, "hitch trailer": 14000}, abs=0.1)
    assert review.governing == "hitch trailer" and review.verdict == "NOT PROVEN", "six ratings are missing"


def test_guidance_for_the_hitch_load_is_taken_by_name() -> None:
    tongue = tow.share_band_kg(mass_kg=5000, share=Limits(lower=practice.TONGUE_SHARE_LOW, upper=practice.TONGUE_SHARE_HIGH))
    pin = tow.share_band_kg(mass_kg=12000, share=Limits(lower=practice.PIN_SHARE_LOW, upper=practice.PIN_SHARE_HIGH))
    assert (tongue.lower, tongue.upper) == (500, 750) and (pin.lower, pin.upper) == (1800, 3000)


# ---- launch and motion


def launch(**changed: Any) -> Launch:
    line = Driveline(axle_ratio=4.10, circumference_mm=Reading(value=2 * math.pi * 406, u=15))
    given = {"turbine_nm": Reading(value=640, u=32), "gear_ratio": 4.7, "gear_efficiency": 0.95, "axle_efficiency": 0.965, "driveline": line}
    return Launch(**{**given, "mass_kg": Reading(value=11160, u=50), "rolling_coefficient": 0.011, **changed})


def test_sampling_a_launch_agrees_with_its_judgment() -> None:
    draw = np.random.default_rng(8).standard_normal((3, 400_000))
    grade = launch().launch(grade_pct=12, rule=RULE).largest_grade_pct * 0.97
    found = launch().launch(grade_pct=grade, rule=RULE)
    slope = math.atan(grade / 100)
    force = (640 + 32 * draw[0]) * 4.7 * 0.95 * 4.10 * 0.965 * 2 * math.pi * 1000 / (2 * math.pi * 406 + 15 * draw[1])
    left = force - (11160 + 50 * draw[2]) * G * (math.sin(slope) + 0.011 * math.cos(slope))
    assert left.std() == pytest.approx(found.budget.u, rel=0.01)
    assert np.mean(left >= 0) == pytest.approx(found.judgment.chance, abs=0.003)


def test_a_run_up_is_what_the_equation_of_motion_says() -> None:
    """One gear, locked, an engine of constant torque: m_e dv/dt = F − rolling − drag."""
    engine = EngineCurve(speed_rpm=[500, 6000], torque_nm=[600, 600], max_rpm=6000)
    converter = Characteristic(speed_ratio=[0, 0.9], torque_ratio=[2, 1], k_rpm_per_sqrt_nm=[1e-3, 2e-3])  # takes more than any engine gives: never open
    line = Driveline(axle_ratio=3.5, circumference_mm=Reading.exact(2400))
    run = RunUp(
        combination=Combination(mass_kg=8000, rolling_coefficient=0.01, drag_area_m2=6), driveline=line, axle_efficiency=0.97, air_density_kg_m3=1.2,
        wheel_inertia_kg_m2=14, engine_inertia_kg_m2=0.4, lowest_locked_rpm=500, shift_s=0.5,
    )  # fmt: skip
    gear = RunUpGear(ratio=2.0, efficiency=0.96, output_inertia_kg_m2=0.3, lockable=True)
    found = run.run_up(engine, converter, [gear], from_km_h=20, to_km_h=80)
    radius = 2.4 / (2 * math.pi)
    mass = 8000 + 14 / radius**2 + (0.3 + 0.4 * 4) * (3.5 / radius) ** 2
    force = 600 * 2.0 * 0.96 * 3.5 * 0.97 / radius
    there = lambda t, y: y[1] - 80 / 3.6  # noqa: E731
    there.terminal = True  # type: ignore[attr-defined]
    motion = solve_ivp(lambda t, y: [y[1], (force - 8000 * G * 0.01 - 0.5 * 1.2 * 6 * y[1] ** 2) / mass], (0, 100), [0, 20 / 3.6], events=there, rtol=1e-10)
    assert found.time_s == pytest.approx(motion.t_events[0][0], rel=1e-5)
    assert found.distance_m == pytest.approx(motion.y_events[0][0][0], rel=1e-5)
    assert found.shifts == 0 and found.reaches


def test_inertia_is_that_of_the_kinetic_energy_of_every_member() -> None:
    train = record.load(DEMO / "family.toml").train("teal")
    inertia = {name: 0.01 * (place + 1) for place, name in enumerate(train.members)}
    for gear in train.gears():
        ratio = float(gear.ratio)
        energy = sum(j * float(gear.speeds[name]) ** 2 for name, j in inertia.items()) / 2  # at one turn of the input
        assert tow.output_inertia_kg_m2(gear, inertia) == pytest.approx(2 * energy * ratio**2, rel=1e-12)
    with pytest.raises(trainwright.Error, match='has no member "wheel"'):
        tow.output_inertia_kg_m2(train.gears()[0], {"wheel": 1.0})


# ---- classes, refusals


@pytest.mark.parametrize(
    "value",
    [COUPLED, TowRatings(gvwr_kg=4500), launch(), Stance(driven_axle_kg=2500, truck_kg=4200, trailer_kg=0, wheelbase_mm=3800), RatedFor(dual_rear=True, gvwr_kg=1, trailer_kg=1, trailer_brakes=False)],
    ids=lambda value: type(value).__name__,
)  # fmt: skip
def test_objects_survive_pickle_and_repr(value: Any) -> None:
    assert pickle.loads(pickle.dumps(value)) == value
    assert eval(repr(value), {**vars(tow), "Reading": Reading, "Driveline": Driveline}) == value


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: COUPLED.review_ratings(TowRatings(), RULE), "no rating is known; read at least one from the placard"),
        (lambda: COUPLED.rating_check("roof", rating_kg=100, rule=RULE), "give one of combination, vehicle, front axle"),
        (lambda: tow.restoring_moment_nm(Levers(wheelbase_mm=3900, overhang_mm=-60), hitch_kg=450, ball_to_axle_mm=5000, restored_share=0.5), "there is nothing to give back"),
        (lambda: tow.check_criterion("slalom", None, RatedFor(dual_rear=False, gvwr_kg=1, trailer_kg=1, trailer_brakes=True), RULE), "give one of 0 to 30 mph"),
        (lambda: launch(gear_efficiency=1.2).launch(grade_pct=12, rule=RULE), "gear_efficiency = 1.2: outside 0 to 1"),
    ],
    ids=["ratings", "kind", "bars", "criterion", "efficiency"],
)  # fmt: skip
def test_a_refusal_says_what_would_do(call: Any, says: str) -> None:
    with pytest.raises(trainwright.Error, match=says):
        call()


# ---- the demonstration and the console


def call(*arguments: str) -> str:
    result = CliRunner().invoke(shop, list(arguments), catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.output


def answer(*arguments: str) -> Any:
    return json.loads(call(*arguments, "--json"))


def test_every_truck_of_the_demonstration_by_hand() -> None:
    fleet = record.load(DEMO / "fleet.toml")
    for truck in fleet.as_dict()["truck"]:
        written = truck["tow"]
        trailer = truck.get("trailer_kg") or truck["trailer_range_kg"][1]
        review = fleet.coupled(truck["id"], trailer_kg=trailer).review_ratings(fleet.tow_ratings(truck["id"]), RULE)
        hitch, lever = written["hitch_share"] * trailer, written["overhang_mm"] / written["wheelbase_mm"]
        assert review.loads.front_kg.value == pytest.approx(written["front_kg"] - hitch * lever)
        assert review.loads.rear_kg.value == pytest.approx(truck["truck_kg"] - written["front_kg"] + hitch * (1 + lever))
        assert review.payload_left_kg == pytest.approx(written["gvwr_kg"] - truck["truck_kg"] - hitch)
        least = min((row for row in review.rows if row.given), key=lambda row: row.trailer_limit_kg)
        assert review.governing == least.kind


def test_the_wrong_unit_is_over_its_ratings_too() -> None:
    sheets = answer("tow", FLEET, "--truck", "T13", "--family", FAMILY, "--tire-friction", "0.7", "--torque-u", "5%")
    loads, launched, parked, criteria = sheets
    assert loads["review"]["verdict"] == "NO-GO"
    assert {row["kind"] for row in loads["review"]["rows"] if row["verdict"] == "NO-GO"} >= {"combination", "maker trailer"}
    assert launched["launch"]["forward"]["tractive_n"] > launched["launch"]["forward"]["needed_n"]
    assert parked["park_gear_of"] == "teal" and parked["mass_kg"] == pytest.approx(11160)
    assert criteria["criteria"]["stop"]["outcome"] == "not given"
    for sheet in sheets:
        assert any("vehicle maker" in caution for caution in sheet["cautions"]), sheet["title"]
    # T13 is managed to the 640 N·m of its unit: 640 × ratio × efficiency × 3.92 × 0.965 over the rolling radius.
    unit = tow.gearing(record.load(DEMO / "family.toml"), "teal")
    first = unit.gears[0]
    around_m = record.load(DEMO / "fleet.toml").rolling("lt275").circumference_mm.value / 1000
    by_hand = 640 * first.ratio * first.efficiency * 3.92 * 0.965 * 2 * math.pi / around_m
    assert launched["launch"]["forward"]["tractive_n"] == pytest.approx(by_hand, rel=1e-12)


def test_a_range_of_trailers_gives_both_ends() -> None:
    sheets = answer("tow", FLEET, "--truck", "T19")
    assert [sheet["review"]["verdict"] for sheet in sheets] == ["NOT PROVEN", "NO-GO"]
    assert all("trailer's own rating" in sheet["missing"] for sheet in sheets)


def test_weights_typed_in_pounds_and_inches() -> None:
    arguments = ["--front", "4100lb", "--rear", "3300lb", "--trailer", "10000lb", "--hitch-load", "1000±50lb", "--wheelbase", "160in", "--overhang", "50in"]
    ratings = ["--gcwr", "21500lb", "--gvwr", "10800lb", "--gawr-rear", "7000lb", "--hitch-trailer", "14000lb"]
    found = answer("tow", *arguments, *ratings)
    review = found["review"] if isinstance(found, dict) else found[0]["review"]
    assert review["governing"] == "hitch trailer"
    assert review["trailer_limit_kg"] == pytest.approx(lb_to_kg(14000))
    text = " ".join(call("tow", *arguments, *ratings, "--explain").split())
    assert "14000 lb" in text and "placards and local law" in text


def test_measured_criteria_are_judged() -> None:
    measured = ["--result", "stop=60ft", "--result", "0-to-30-mph=13±0.2s", "--result", "starts-forward=5", "--result", "brake-uphill=13%"]
    criteria = answer("tow", FLEET, "--truck", "T14", "--family", FAMILY, *measured)[-1]["criteria"]
    assert criteria["stop"]["outcome"] == "met" and criteria["stop"]["value"] == pytest.approx(60 * 0.3048)
    assert criteria["0 to 30 mph"]["outcome"] == "not met" and criteria["starts forward"]["outcome"] == "met"
    assert criteria["starts reverse"]["outcome"] == "not given" and criteria["grade forward"]["how"].startswith("computed")
    rig = tow.rig(record.load(DEMO / "family.toml"), record.load(DEMO / "fleet.toml"), "T14", speed_step_km_h=1)
    speed = rig.largest_speed(grade_pct=7, at_most_km_h=110, within_ratings=True).speed_km_h
    assert criteria["long grade"]["value"] == pytest.approx(speed, rel=1e-12)
    assert criteria["long grade"]["lower"] == pytest.approx(mph_to_km_h(40))


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--front", "1900kg"], "give a fleet with --truck, or --front, --rear"),
        ([FLEET], "give --truck; the fleet has T11"),
        ([FLEET, "--truck", "T14", "--bars", "1200Nm"], "--bars and --ball-to-axle belong together"),
        ([FLEET, "--truck", "T14", "--result", "stop=60ft"], "--result needs --family"),
        ([FLEET, "--truck", "T14", "--family", FAMILY, "--result", "hop=3"], "give NAME=VALUE, the name one of 0-to-30-mph"),
    ],
)
def test_the_command_says_what_it_needs(arguments: list[str], says: str) -> None:
    result = CliRunner().invoke(shop, ["tow", *arguments])
    assert result.exit_code == 2 and says in " ".join(result.output.replace("│", " ").split())
