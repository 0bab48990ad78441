"""The fit chapter against numerical solutions, reference libraries, the demonstration family and wrong inputs."""

from __future__ import annotations

import math

import GTC as gtc
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_bvp
from scipy.stats import norm
from trainwright import Error, RangeWarning, fit, practice
from trainwright.judge import Limits, Reading, Rule

RULE = Rule.conformance(0.95)
ANY = Limits(lower=0)


def metal(young_mpa, poisson, expansion, u=0.0):
    elastic = fit.Elastic(young_mpa=young_mpa, poisson=poisson)
    return fit.Metal(elastic=elastic, expansion_per_k=Reading(value=expansion, u=u))


ALUMINUM = metal(practice.ALUMINUM_YOUNG_MPA, practice.ALUMINUM_POISSON, 23e-6, 0.6e-6)
STEEL = metal(practice.STEEL_YOUNG_MPA, practice.STEEL_POISSON, 11.5e-6, 0.3e-6)
SHAFT = fit.WarmPart(size_mm=Reading(value=39.970, u=0.0016), expansion_per_k=STEEL.expansion_per_k)


def bushing(**changes):
    """The case bushing of the invented Corrib family."""
    fields = {
        "housing_bore_mm": Reading.rectangular(43.0125, half_width=0.0125),
        "outside_mm": Reading.rectangular(43.0775, half_width=0.0125),
        "wall_mm": 1.5,
        "bore_mm": Reading(value=40.035, u=0.004),
        "housing_outside_mm": 74.0,
        "housing": ALUMINUM,
        "shell": STEEL,
    }
    return fit.PressedBushing(**fields | changes)


def running(at, temp_c, u_c=0.0, warmer=Reading(value=0.0, u=0.0)):
    warmth = fit.Warmth(temp_c=Reading(value=temp_c, u=u_c), shaft_warmer_k=warmer)
    return at.running_clearance(shaft=SHAFT, warmth=warmth, wanted_mm=Limits(lower=0, upper=0.14), rule=RULE)


# ---- press fits against the differential equation of a ring


def rings(inside, interface, outside, inner, outer, interference, rise_k=0.0):
    """Two rings in plane stress, u'' + u'/r − u/r² = 0, with their thermal strain: displacements and pressure by scipy."""
    a, b, c = inside / 2, interface / 2, outside / 2

    def stress(of, u, slope, r):
        e, nu = of.elastic.young_mpa, of.elastic.poisson
        thermal = of.expansion_per_k.value * rise_k
        return e / (1 - nu**2) * ((slope - thermal) + nu * (u / r - thermal))

    def equation(s, y):
        inner_r, outer_r = a + s * (b - a), b + s * (c - b)
        bend = [y[0] / inner_r**2 - y[1] / inner_r, y[2] / outer_r**2 - y[3] / outer_r]
        return np.array([y[1] * (b - a), bend[0] * (b - a), y[3] * (c - b), bend[1] * (c - b)])

    def ends(start, end):
        scale = 1e-6  # stresses to the order of the displacements
        return np.array(
            [
                scale * stress(inner, start[0], start[1], a),
                scale * stress(outer, end[2], end[3], c),
                scale * (stress(inner, end[0], end[1], b) - stress(outer, start[2], start[3], b)),
                start[2] - end[0] - interference / 2,
            ]
        )

    s = np.linspace(0, 1, 60)
    found = solve_bvp(equation, ends, s, np.zeros((4, s.size)), tol=1e-10, max_nodes=20000)
    assert found.success, found.message
    y = found.sol
    pressure = -stress(inner, y(1)[0], y(1)[1], b)
    return {"pressure_mpa": pressure, "bore_closure_mm": -2 * y(0)[0], "outside_growth_mm": 2 * y(1)[2]}


@pytest.mark.parametrize(
    ("inside", "interface", "outside", "interference"),
    [(40.0, 43.0, 74.0, 0.065), (10.0, 30.0, 34.0, 0.02), (25.0, 50.0, 100.0, 0.05), (58.0, 60.0, 63.0, 0.04)],
)
def test_a_press_fit_is_the_solution_of_the_ring_equation(inside, interface, outside, interference):
    joint = fit.PressJoint(
        inside_mm=inside, interface_mm=interface, outside_mm=outside, inner=STEEL.elastic, outer=ALUMINUM.elastic
    )
    pressed = joint.pressed(interference_mm=interference)
    for field, expected in rings(inside, interface, outside, STEEL, ALUMINUM, interference).items():
        assert getattr(pressed, field) == pytest.approx(expected, rel=1e-6), field


@pytest.mark.parametrize("temp_c", [-30.0, 60.0, 90.0, 130.0])
def test_the_warm_bore_is_that_of_the_thermal_ring_equation(temp_c):
    at = bushing()
    interference = at.outside_mm.value - at.housing_bore_mm.value
    sizes = (at.housing_bore_mm.value - 2 * at.wall_mm, at.housing_bore_mm.value, at.housing_outside_mm)
    cold = rings(*sizes, STEEL, ALUMINUM, interference)
    warm = rings(*sizes, STEEL, ALUMINUM, interference, rise_k=temp_c - 20)
    opened = cold["bore_closure_mm"] - warm["bore_closure_mm"]
    hot_shaft = SHAFT.size_mm.value * (1 + 11.5e-6 * (temp_c - 20))
    # The equation expands both rings from the interface, the library each from its own diameter before pressing: they differ
    # by interference × expansion × rise, below 0.1 µm.
    expected = at.bore_mm.value + opened - hot_shaft
    assert running(at, temp_c).clearance.at_temperature.clearance_mm.value == pytest.approx(expected, abs=1e-4)
    assert at.bushing_at(temp_c=temp_c).pressure_mpa == pytest.approx(
        warm["pressure_mpa"], abs=11.5e-6 * abs(temp_c - 20) * cold["pressure_mpa"] * 1.01
    )


def test_the_bushing_follows_neither_the_case_nor_steel():
    temps = np.linspace(30.0, 150.0, 25)
    for temp_c in temps:
        hot = running(bushing(), temp_c)
        assert hot.as_shell_mm < hot.clearance.at_temperature.clearance_mm.value < hot.as_housing_mm
    at_200 = running(bushing(), 200.0)
    assert at_200.pressed.pressure_mpa == 0 and at_200.pressed.interference_mm < 0


def test_the_opening_ends_where_the_bushing_lets_go():
    """A tighter bushing does not open faster, it goes on opening longer."""
    exact = Reading.exact
    loose = bushing(housing_bore_mm=exact(43.025), outside_mm=exact(43.065))
    tight = bushing(housing_bore_mm=exact(43.0), outside_mm=exact(43.09))
    let_go = loose.let_go_c().value
    assert 100 < let_go < 102 and tight.let_go_c().value > 190

    def opened(at, temp_c):
        return running(at, temp_c).clearance.change_mm

    assert opened(loose, 90) == pytest.approx(opened(tight, 90), rel=2e-3)
    assert opened(loose, 130) < opened(tight, 130) - 0.009
    free_growth = 11.5e-6 * (130 - let_go) * (40.035 - 39.970 + 0.027)
    assert opened(loose, 130) == pytest.approx(opened(loose, let_go) + free_growth, abs=1e-6)


# ---- uncertainty against GTC and against random draws


def test_the_uncertainty_of_a_warm_clearance_is_that_of_gtc():
    warmer = Reading(value=5.0, u=2.0)
    shaft, bore = Reading(value=43.988, u=0.0016), Reading(value=44.070, u=0.0042)
    parts = [fit.WarmPart(size_mm=size, expansion_per_k=of.expansion_per_k) for size, of in [(shaft, STEEL), (bore, ALUMINUM)]]
    warmth = fit.Warmth(temp_c=Reading(value=90.0, u=2.0), shaft_warmer_k=warmer)
    found = fit.warm_clearance(shaft=parts[0], bore=parts[1], warmth=warmth, wanted_mm=ANY, rule=RULE).at_temperature
    d, big, a_d, a_big, t, w = (
        gtc.ureal(x.value, x.u)
        for x in [shaft, bore, STEEL.expansion_per_k, ALUMINUM.expansion_per_k, warmth.temp_c, warmer]
    )
    c = big * (1 + a_big * (t - 20)) - d * (1 + a_d * (t + w - 20))
    assert found.clearance_mm.value == pytest.approx(c.x, rel=1e-12)
    assert found.clearance_mm.u == pytest.approx(c.u, rel=1e-7)
    shares = [gtc.component(c, x) ** 2 / c.u**2 for x in (d, big, a_d, a_big, t, w)]
    assert found.budget.share == pytest.approx(shares, abs=1e-7)


def test_the_uncertainty_in_a_pressed_bushing_is_that_of_gtc():
    at = bushing()
    found = running(at, 90.0, u_c=2.0).clearance.at_temperature
    inputs = [
        SHAFT.size_mm,
        at.bore_mm,
        at.housing_bore_mm,
        at.outside_mm,
        SHAFT.expansion_per_k,
        ALUMINUM.expansion_per_k,
        STEEL.expansion_per_k,
        Reading(value=90.0, u=2.0),
    ]
    d, bore, housing, outside, a_d, a_h, a_b, t = (gtc.ureal(x.value, x.u) for x in inputs)

    def closure(temp):
        inside = housing - 2 * at.wall_mm
        delta = outside * (1 + a_b * (temp - 20)) - housing * (1 + a_h * (temp - 20))
        hoop = (housing**2 + inside**2) / (housing**2 - inside**2)
        of_housing = (74.0**2 + housing**2) / (74.0**2 - housing**2)
        pressure = delta / (housing * ((hoop - 0.29) / 206e3 + (of_housing + 0.33) / 71e3))
        return 2 * pressure * inside * housing**2 / (206e3 * (housing**2 - inside**2))

    c = (bore + closure(20.0)) * (1 + a_b * (t - 20)) - closure(t) - d * (1 + a_d * (t - 20))
    assert found.clearance_mm.value == pytest.approx(c.x, rel=1e-12)
    assert found.clearance_mm.u == pytest.approx(c.u, rel=1e-5)


def test_the_interval_of_the_leak_ratio_is_that_of_random_draws_and_first_order_is_not():
    """The cube bends. With the new clearance known only by its tolerance (u 16 %), first order gives 8.0 ± 5.1 at 95 %, random
    draws 4.2 to 18.3, and the interval of the library agrees with the draws. Measured well (u 2 %), the two differ little."""
    draws = np.random.default_rng(20)
    for u_new, u_worn, first_order_does in [(0.0014, 0.0028, True), (0.0112, 0.0045, False)]:
        gap = fit.WornGap(
            new_mm=Reading(value=0.070, u=u_new),
            worn_mm=Reading(value=0.140, u=u_worn),
            new_eccentricity=1.0,
            worn_eccentricity=1.0,
        )
        leak = gap.leak_ratio(coverage=0.95)
        sample = (draws.normal(0.140, u_worn, 1_000_000) / draws.normal(0.070, u_new, 1_000_000)) ** 3
        low, high = np.quantile(sample, [0.025, 0.975])
        assert (leak.lower, leak.upper) == pytest.approx((low, high), rel=0.01)
        of_gtc = (gtc.ureal(0.140, u_worn) / gtc.ureal(0.070, u_new)) ** 3
        assert (leak.ratio, leak.first_order_u) == pytest.approx((of_gtc.x, of_gtc.u), rel=1e-9)
        straight = leak.ratio + 1.96 * leak.first_order_u
        assert (abs(straight / high - 1) < 0.05) == first_order_does
        for times in (6.0, 8.0, 10.0):
            assert gap.chance_leaks_more(times=times) == pytest.approx((sample > times).mean(), abs=0.002)


@given(st.floats(0.0005, 0.01), st.floats(-0.03, 0.03))
def test_a_part_taken_from_its_tolerance_is_judged_with_caution(u, offset):
    """A measured shaft in a bore known by its tolerance of 35 µm, rectangular. The library treats the tolerance as a normal
    distribution of the same standard uncertainty. Against the exact sum of both: the chance is never off by more than 0.06,
    and where the library says GO (0.95) the exact chance is at least 0.948."""
    bore_mm = fit.toleranced(size_mm=Limits(lower=44.040, upper=44.075), spread="rectangular")
    shaft_mm = Reading(value=44.0575 - 0.100 + offset, u=u)
    found = fit.measured(shaft_mm=shaft_mm, bore_mm=bore_mm, wanted_mm=Limits(upper=0.12), rule=RULE)

    # Mean of Φ((T − c)/u) over the tolerance, by its antiderivative z Φ(z) + φ(z).
    def antiderivative(z):
        return z * norm.cdf(z) + norm.pdf(z)

    middle, half = 0.12 - found.clearance_mm.value, 0.0175
    exact = u * (antiderivative((middle + half) / u) - antiderivative((middle - half) / u)) / (2 * half)
    assert found.judgment.chance == pytest.approx(exact, abs=0.06)
    if found.judgment.verdict == "GO":
        assert exact >= 0.948


# ---- measured warm


def test_a_hand_warm_shaft_reads_large():
    steel = STEEL.expansion_per_k
    warm = fit.WarmReading(
        shown_mm=Reading(value=44.0, u=0.002),
        part_expansion_per_k=steel,
        part_temp_c=Reading(value=30.0, u=2.0),
        instrument_expansion_per_k=steel,
        instrument_temp_c=Reading(value=20.0, u=0.5),
    )
    size = warm.size_20c()
    assert size.correction_mm == pytest.approx(-0.005, abs=1e-4)
    l, a, t, ai, ti = (gtc.ureal(x.value, x.u) for x in [warm.shown_mm, steel, warm.part_temp_c, steel, warm.instrument_temp_c])
    expected = l * (1 + ai * (ti - 20)) / (1 + a * (t - 20))
    assert size.size_mm.u == pytest.approx(expected.u, rel=1e-6)


# ---- arrays, words and refusals


def test_columns_of_temperatures_and_loads():
    seat = bushing().bushing_at(temp_c=np.array([20.0, 90.0, 200.0]))
    assert set(seat) == {
        "interference_mm",
        "pressure_mpa",
        "bore_closure_mm",
        "outside_growth_mm",
        "inner_hoop_mpa",
        "outer_hoop_mpa",
    }
    assert seat["pressure_mpa"][2] == 0 and (np.diff(seat["interference_mm"]) < 0).all()
    with pytest.warns(RangeWarning, match="temp_c"):
        assert np.isnan(bushing().bushing_at(temp_c=[20.0, 900.0])["pressure_mpa"]).tolist() == [False, True]
    loads = fit.bushing_load(force_n=np.array([0.0, 720.0]), diameter_mm=40, length_mm=18, speed_rpm=[[1000.0], [3000.0]])
    assert loads["unit_load_mpa"].shape == (2, 2) and loads["unit_load_mpa"][0, 1] == 1.0
    assert loads["sliding_m_s"][1, 0] == pytest.approx(math.pi * 2)
    factors = fit.eccentricity_factor(eccentricity=np.linspace(0, 1, 5))
    assert factors == pytest.approx(1 + 1.5 * np.linspace(0, 1, 5) ** 2)


@pytest.mark.parametrize(
    ("call", "kind", "says"),
    [
        (lambda: fit.toleranced(size_mm=Limits(lower=1, upper=2), spread="uniform"), "TEXT", "rectangular, normal 3 sigma"),
        (lambda: fit.clearance(shaft_mm=Limits(upper=2), bore_mm=Limits(lower=1, upper=2), limit_mm=1), "NOT_FINITE", "shaft_mm"),
        (lambda: bushing(wall_mm=-1).bushing_at(temp_c=20), "NOT_POSITIVE", "wall_mm"),
        (lambda: bushing(housing=metal(71e3, 0.33, 23)).bushing_at(temp_c=20), "OUT_OF_RANGE", "expansion_per_k = 23"),
        (lambda: bushing(outside_mm=Reading.exact(43.0)).let_go_c(), "NO_ANSWER", "no interference at 20 °C"),
        (lambda: fit.iso_limits("H14", nominal_mm=25), "OUT_OF_RANGE", "grade = 14: outside 5 to 11"),
        (lambda: fit.iso_size("25"), "TEXT", "one of c d e f g h js"),
        (lambda: fit.iso_fit("44 f7/H7"), "TEXT", "the hole first"),
    ],
)
def test_a_refusal_names_the_parameter_and_the_mend(call, kind, says):
    with pytest.raises(Error, match=says) as refusal:
        call()
    assert refusal.value.kind == kind


def test_an_iso_fit_is_the_clearance_of_its_sizes():
    found = fit.iso_fit("44 H8/f7")
    assert (found.hole.size_mm.lower, found.hole.size_mm.upper) == (44.0, 44.039)
    assert (found.shaft.size_mm.lower, found.shaft.size_mm.upper) == (43.95, 43.975)
    by_sizes = fit.clearance(shaft_mm=found.shaft.size_mm, bore_mm=found.hole.size_mm, limit_mm=math.inf)
    assert found.clearance == by_sizes and found.clearance.fit_class == "inside"
