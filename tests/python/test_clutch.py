"""The clutch chapter against scipy, the demonstration family, its properties and wrong inputs."""

from __future__ import annotations

import math
import pickle
import warnings
from pathlib import Path

import numpy as np
import pytest
import trainwright
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp
from trainwright import clutch, judge, practice, record
from trainwright.judge import Limits, Reading, Rule

DEMO = Path(trainwright.__file__).parent / "demo"
RULE = Rule.stated_chances(go=0.95, no_go=0.05)
RAD_S = math.pi / 30


def pack(**changes):
    fields = {
        "lining": clutch.Annulus(inner_radius_mm=56, outer_radius_mm=78),
        "piston": clutch.Annulus(inner_radius_mm=46, outer_radius_mm=73),
        "faces": clutch.plate_faces(4),
        "return_spring_n": Limits(lower=1050, upper=1280),
    }
    return clutch.Pack(**fields | changes)


def head(inner=56.0, outer=78.0, surface=52.0):
    wetted = clutch.Annulus(inner_radius_mm=inner, outer_radius_mm=outer)
    return clutch.Head(wetted=wetted, free_surface_radius_mm=surface)


@pytest.fixture(scope="module")
def family():
    return record.load(DEMO / "family.toml")


# ---- against numerical integration


@given(st.floats(0, 150), st.floats(5, 60), st.floats(0, 220), st.floats(0, 9000))
def test_head_is_the_integral_of_the_pressure(inner, width, surface, rpm):
    outer, omega = inner + width, rpm * RAD_S
    force = head(inner, outer, surface).head_force_n(oil_density_kg_m3=845, drum_speed_rpm=rpm)

    def ring_force(r):
        return 845 * omega**2 * (r * r - surface**2) / 2 * 1e-6 * 2 * math.pi * r * 1e-6

    start = max(inner, surface)
    expected = quad(ring_force, start, outer)[0] if start < outer else 0.0
    assert force == pytest.approx(expected, rel=1e-9, abs=1e-9)


@given(st.floats(1, 150), st.floats(1.01, 3))
def test_mean_radius_is_the_moment_over_the_area(inner, over):
    ring = clutch.Annulus(inner_radius_mm=inner, outer_radius_mm=inner * over)
    moment = quad(lambda r: r * r, inner, inner * over)[0] / quad(lambda r: r, inner, inner * over)[0]
    assert ring.mean_radius_new_mm() == pytest.approx(moment, rel=1e-10)
    wear = quad(lambda r: 1 * r, inner, inner * over)[0] / (inner * over - inner)
    assert ring.mean_radius_worn_mm() == pytest.approx(wear, rel=1e-10)


@given(st.floats(0.02, 0.3), st.floats(-0.0002, 0.002), st.floats(0.1, 3))
def test_friction_by_radius_is_the_integral(at_axis, slope, pressure):
    assume(at_axis + slope * 78 < 1)
    lining = clutch.Annulus(inner_radius_mm=56, outer_radius_mm=78)
    face = clutch.LiningByRadius(
        lining=lining, faces=8, pressure_mpa=pressure, friction_at_axis=at_axis, friction_per_mm=slope
    )
    expected = quad(lambda r: 8 * (at_axis + slope * r) * pressure * 2 * math.pi * r * r, 56, 78)[0] / 1000
    assert face.torque_by_radius_nm() == pytest.approx(expected, rel=1e-9)


@given(st.floats(10, 1080), st.floats(0.02, 0.4))
def test_band_tension_solves_its_equation(wrap, friction):
    band = clutch.Band(drum_radius_mm=80, width_mm=40, wrap_deg=wrap)
    grown = solve_ivp(lambda _, t: friction * t, [0, math.radians(wrap)], [1000.0], rtol=1e-10, atol=1e-8).y[0, -1]
    with_drum = band.energized(servo_force_n=1000, friction=friction)
    assert with_drum.tight_n == pytest.approx(grown, rel=1e-6)
    assert with_drum.torque_nm == pytest.approx((grown - 1000) * 0.08, rel=1e-6)
    against = band.deenergized(servo_force_n=1000, friction=friction)
    assert with_drum.torque_nm / against.torque_nm == pytest.approx(with_drum.tension_ratio)


SPEED = st.floats(-5000, 5000)
TORQUE = st.floats(-400, 400)
INERTIA = st.floats(0.05, 2)


@given(INERTIA, INERTIA, SPEED, SPEED, st.floats(10, 800), TORQUE, TORQUE)
def test_slip_is_the_solution_of_the_equations_of_motion(i_1, i_2, n_1, n_2, clutch_nm, drive, load):
    slip = clutch.Slip(
        input_inertia_kg_m2=i_1,
        output_inertia_kg_m2=i_2,
        input_speed_rpm=n_1,
        output_speed_rpm=n_2,
        clutch_torque_nm=clutch_nm,
        drive_torque_nm=drive,
        load_torque_nm=load,
    )
    end = slip.slip_end()
    assume(abs(n_1 - n_2) > 1 and abs(end.slip_shrinks_rpm_s) > 50)
    sign = math.copysign(1, n_1 - n_2)

    def motion(_, y):
        w_1, w_2, *_ = y
        return [
            (drive - sign * clutch_nm) / i_1,
            (sign * clutch_nm - load) / i_2,
            clutch_nm * sign * (w_1 - w_2),  # without the kink of abs() at the end, over which a step of the solver may reach
            drive * w_1,
            load * w_2,
        ]

    def locked(_, y):
        return sign * (y[0] - y[1])

    locked.terminal = True
    span = 1.5 * end.time_s if end.locks else 60.0
    start = [n_1 * RAD_S, n_2 * RAD_S, 0, 0, 0]
    path = solve_ivp(motion, [0, span], start, events=locked, rtol=1e-10, atol=1e-9)
    assert end.locks == (len(path.t_events[0]) == 1)
    if not end.locks:
        assert end.time_s == math.inf
        return
    w_1, _, heat, drive_work, load_work = path.y_events[0][0]
    assert end.time_s == pytest.approx(path.t_events[0][0], rel=1e-7)
    assert end.final_speed_rpm == pytest.approx(w_1 / RAD_S, rel=1e-6, abs=1e-5)
    assert end.energy_j == pytest.approx(heat, rel=1e-6, abs=1e-6)
    assert end.drive_work_j == pytest.approx(drive_work, rel=1e-6, abs=1e-4)
    assert end.load_work_j == pytest.approx(load_work, rel=1e-6, abs=1e-4)
    if end.locks and abs(end.locked_torque_nm) <= clutch_nm:
        assert end.stays_locked


@given(st.floats(0.01, 5), st.floats(0.001, 2))
def test_surface_rise_is_duhamels_integral(flux, time):
    k, rho, c = practice.STEEL_CONDUCTIVITY_W_M_K, practice.STEEL_DENSITY_KG_M3, practice.STEEL_SPECIFIC_HEAT_J_KG_K
    steel = clutch.Steel(conductivity_w_m_k=k, density_kg_m3=rho, specific_heat_j_kg_k=c, thickness_mm=2.0)

    def rise(flux_at, at):
        # s = at − u² takes the singularity out of ∫ q(s)/√(π k ρ c (at − s)) ds.
        return quad(lambda u: 2 * flux_at(at - u * u), 0, math.sqrt(at))[0] * 1e6 / math.sqrt(math.pi * k * rho * c)

    constant = steel.surface_rise_constant(flux_w_mm2=flux, time_s=time)
    assert constant.rise_k == pytest.approx(rise(lambda _: flux, time), rel=1e-7)
    falling = steel.surface_rise_falling(start_flux_w_mm2=flux, slip_time_s=time)
    history = [rise(lambda s: flux * (1 - s / time), time * share) for share in np.linspace(0.02, 1, 50)]
    assert falling.rise_k == pytest.approx(max(history), rel=1e-7)
    assert falling.at_s == pytest.approx(time / 2)
    assert falling.rise_k == pytest.approx(0.943 * flux * 1e6 * math.sqrt(time / (math.pi * k * rho * c)), rel=3e-4)


def test_a_plate_that_is_not_thick_is_hotter_than_the_half_space():
    """A plate heated on both faces, solved as a series; the half space is within 6 % while `thick` says so."""
    k, rho, c, half = 50.0, 7850.0, 480.0, 1e-3
    steel = clutch.Steel(conductivity_w_m_k=k, density_kg_m3=rho, specific_heat_j_kg_k=c, thickness_mm=2e3 * half)

    def plate(time):
        fourier = k / (rho * c) * time / half**2
        terms = sum(math.exp(-((n * math.pi) ** 2) * fourier) / n**2 for n in range(1, 2000))
        return 1e6 * half / k * (fourier + 1 / 3 - 2 / math.pi**2 * terms)

    limit = steel.surface_rise_constant(flux_w_mm2=1, time_s=0.0).thick_until_s
    for time in np.array([0.05, 0.3, 1.0]) * limit:
        rise = steel.surface_rise_constant(flux_w_mm2=1, time_s=time)
        assert rise.thick
        assert rise.rise_k == pytest.approx(plate(time), rel=0.06)
    late = steel.surface_rise_constant(flux_w_mm2=1, time_s=20 * limit)
    assert not late.thick
    assert late.rise_k < 0.6 * plate(20 * limit)


# ---- arrays


def numpy_capacity(pressure, friction, speed, density=790.0):
    """What an analyst writes for one pack."""
    area = math.pi * (73.0**2 - 46.0**2)
    r_o, r_i, r_0 = 0.078, 0.056, 0.052
    omega = speed * (math.pi / 30)
    oil = math.pi * density * omega**2 / 4 * ((r_o**4 - r_i**4) - 2 * r_0**2 * (r_o**2 - r_i**2))
    net = np.maximum(pressure * 1e-3 * area + oil - 1280.0, 0.0)
    mean_radius = 2 / 3 * (78.0**3 - 56.0**3) / (78.0**2 - 56.0**2)
    return friction * 8 * net * mean_radius * 1e-3


def test_columns_equal_numpy_and_the_scalar():
    rng = np.random.default_rng(3)
    pressure, friction = rng.uniform(0, 1800, 5000), rng.uniform(0.08, 0.15, 5000)
    speed = rng.uniform(-6000, 6000, 5000)
    unit = pack(head=head())
    columns = {"pressure_kpa": pressure, "friction": friction, "drum_speed_rpm": speed}
    torque = unit.capacity_nm(**columns, oil_density_kg_m3=790)
    np.testing.assert_allclose(torque, numpy_capacity(pressure, friction, speed), rtol=1e-12, atol=1e-9)
    for row in range(0, 5000, 500):
        at = {name: float(column[row]) for name, column in columns.items()}
        assert unit.capacity(**at, oil_density_kg_m3=790).torque_nm == torque[row]
    out = np.empty(5000)
    assert unit.capacity_nm(**columns, oil_density_kg_m3=790, out=out) is out
    np.testing.assert_array_equal(out, torque)


def test_a_bad_row_is_nan_with_one_warning():
    columns = {"pressure_kpa": [1000.0, -1.0, math.nan], "friction": [0.1, 0.1, 0.1], "drum_speed_rpm": 0.0}
    with pytest.warns(trainwright.RangeWarning, match="1 of 3 rows refused; the first is row 1: pressure_kpa"):
        torque = pack().capacity_nm(**columns, oil_density_kg_m3=790)
    assert torque[0] > 0 and np.isnan(torque[1:]).all()


# ---- the demonstration family


def duty(gear, family, variant):
    limits = family.as_dict()["variant"][variant]
    torque = limits["reverse_turbine_nm" if gear == "R" else "rated_turbine_nm"]
    return {
        "pressure_kpa": Reading.exact(limits["line_control_max_kpa"]),
        "friction": family.static_friction,
        "geometry_u_rel": family.as_dict()["friction"]["geometry_u_rel"],
        "oil_density_kg_m3": 790.0,
        "turbine_torque_nm": Reading.exact(torque),
        "turbine_speed_rpm": 0.0,
        "rule": RULE,
    }


@pytest.mark.parametrize("variant", ["teal", "wren", "heron"])
def test_every_gear_of_the_family_has_a_governing_element(family, variant):
    packs = family.packs(variant)
    governing = {}
    for gear in family.train(variant).gears():
        review = clutch.review(gear, packs, **duty(gear.id, family, variant))
        governing[gear.id] = review.governing
        assert set(review.elements) == set(gear.closed) - {"F1"}
        for name, row in review.elements.items():
            assert row.need_nm == pytest.approx(
                abs(gear.shares[name]) * duty(gear.id, family, variant)["turbine_torque_nm"].value
            )
    odd = {"heron": {}, "teal": {}, "wren": {"5": "C2", "R": "B2"}}[variant]
    usual = {
        "1": "B1",
        "1B": "B1",
        "2": "B1",
        "2B": "B1",
        "3": "C1",
        "4": "C1",
        "5": "C3",
        "6": "C2",
        "7": "C3",
        "8": "C3",
        "R": "C3",
    }
    assert governing == usual | odd


@pytest.mark.parametrize(
    ("engine_nm", "margin", "chance", "verdict"),
    [
        (660, 1.0480588075453565, 0.7061541554683566, "NOT PROVEN"),
        (840, 0.823474777357066, 0.005628182635219192, "NO-GO"),
    ],
)
def test_gauge_pressure_against_the_governing_gear(family, engine_nm, margin, chance, verdict):
    """Job J3 of the demonstration: 1470 kPa on a gauge of 2500 kPa, class 1.6."""
    at = duty("3", family, "teal") | {
        "pressure_kpa": Reading.of_class(1470, full_scale=2500, class_pct=1.6),
        "turbine_torque_nm": Reading.exact(engine_nm),
    }
    third = next(gear for gear in family.train("teal").gears() if gear.id == "3")
    review = clutch.review(third, family.packs("teal"), **at)
    assert review.governing == "C1"
    assert review.weakest.margin == pytest.approx(margin, rel=1e-5)
    assert review.weakest.chance == pytest.approx(chance, rel=1e-5)
    assert review.weakest.verdict == verdict


def test_the_head_of_c3_needs_a_turning_drum(family):
    c3 = family.packs("teal")["C3"]
    assert c3.turns_with == "input"
    assert c3.pack.head.head_force_n(oil_density_kg_m3=790, drum_speed_rpm=3000) == pytest.approx(
        688.1721440562852, rel=1e-6
    )
    assert c3.pack.drag_speed_rpm(oil_density_kg_m3=790) == pytest.approx(3580.022432628247, rel=1e-6)


def test_a_review_names_what_it_does_not_know(family):
    gears = family.train("teal").gears()
    packs, at = family.packs("teal"), duty("3", family, "teal")
    with pytest.raises(trainwright.Error, match='no "C9"'):
        clutch.review(gears[0], {"C9": packs["C1"]}, **at)
    lost = clutch.ElementPack(pack=packs["C1"].pack, turns_with="nowhere")
    with pytest.raises(trainwright.Error, match='no "nowhere"'):
        clutch.review(gears[0], {"C1": lost}, **at)
    neutral = family.train("teal").solve(["C1"])
    with pytest.raises(trainwright.Error, match="only a gear"):
        clutch.review(neutral, packs, **at)


def test_the_measurement_that_would_settle_it(family):
    held = family.packs("teal")["C1"].pack.hold(
        Reading.exact(783.5744680851095),
        pressure_kpa=Reading.of_class(1470, full_scale=2500, class_pct=1.6),
        friction=family.static_friction,
        geometry_u_rel=0.02,
        drum_speed_rpm=0,
        oil_density_kg_m3=790,
        rule=RULE,
    )
    assert held.friction_needed == pytest.approx(0.107, abs=0.0005)
    assert judge.settle(held.judgment, held.budget).input == 1


# ---- classes and wrong inputs


def test_classes_survive_pickling_and_repr():
    unit = pack(head=head())
    values = [
        unit,
        unit.capacity(pressure_kpa=1500, friction=0.11, drum_speed_rpm=900, oil_density_kg_m3=800),
        clutch.ElementPack(pack=unit, turns_with="input"),
        clutch.Slip(
            input_inertia_kg_m2=1, output_inertia_kg_m2=1, input_speed_rpm=9, output_speed_rpm=0, clutch_torque_nm=5
        ),
    ]
    names = {**vars(clutch), "Limits": Limits}
    for value in values:
        assert pickle.loads(pickle.dumps(value)) == value
        assert eval(repr(value), names) == value


@pytest.mark.parametrize(
    ("change", "kind"),
    [
        ({"faces": 0}, "COUNT"),
        ({"lining": clutch.Annulus(inner_radius_mm=78, outer_radius_mm=56)}, "REVERSED"),
        ({"piston": clutch.Annulus(inner_radius_mm=math.nan, outer_radius_mm=56)}, "NOT_FINITE"),
        ({"seal_drag_n": -1}, "OUT_OF_RANGE"),
        ({"lining": clutch.Annulus(inner_radius_mm=0, outer_radius_mm=56)}, "NOT_POSITIVE"),
    ],
)
def test_an_impossible_pack_is_refused_when_it_is_made(change, kind):
    with pytest.raises(trainwright.Error) as refused:
        pack(**change)
    assert refused.value.kind == kind


@given(st.floats(), st.floats(), st.floats(), st.floats())
def test_any_numbers_give_a_capacity_or_an_error(pressure, friction, speed, density):
    at = {"pressure_kpa": pressure, "friction": friction, "drum_speed_rpm": speed, "oil_density_kg_m3": density}
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        try:
            assert 0 <= pack(head=head()).capacity(**at).torque_nm < math.inf
        except trainwright.Error as error:
            assert error.parameter in at
