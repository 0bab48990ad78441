"""The hydraulic chapter against reference libraries, over arrays, and with wrong inputs."""

from __future__ import annotations

import math
import pickle
from pathlib import Path

import fluids
import numpy as np
import pint
import pytest
import trainwright
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from trainwright import Error, RangeWarning, fit, hydraulic, record
from trainwright.clutch import review
from trainwright.fluid import Fluid
from trainwright.hydraulic import Orifice, Pump, Slot
from trainwright.judge import Limits, Reading, Rule

DEMO = Path(trainwright.__file__).parent / "demo"
RULE = Rule.stated_chances(go=0.95, no_go=0.05)
ALDER = Fluid(density_15c_kg_m3=843, expansion_per_k=7.8e-4, viscosity_40c_mm2_s=27.4, viscosity_100c_mm2_s=5.6)
PUMP = Pump(displacement_cm3_rev=Reading(value=19.8, u=0.2), leak_l_min_mpa=Reading(value=3.9, u=0.31), leak_viscosity_mpa_s=5.44)


def test_orifice_against_a_reference_library() -> None:
    """The discharge equation of the library `fluids` with a small hole in a wide pipe, its expansibility 1 for a liquid."""
    for diameter_mm, drop_kpa, rho in ((1.0, 400.0, 800.0), (2.5, 90.0, 850.0)):
        ours = Orifice(diameter_mm=diameter_mm, discharge=0.611).orifice_flow(pressure_drop_kpa=drop_kpa, density_kg_m3=rho, viscosity_mpa_s=5)
        theirs = fluids.flow_meter.flow_meter_discharge(
            D=1.0, Do=diameter_mm / 1000, P1=1e6 + drop_kpa * 1e3, P2=1e6, rho=rho, C=0.611, expansibility=1.0
        )
        assert ours.flow_l_min == pytest.approx(theirs / rho * 6e4, rel=1e-9)


def test_velocity_head_of_a_reference_library() -> None:
    """Loss of the library for one velocity head, the pressure that an orifice of discharge 1 takes."""
    hole = Orifice(diameter_mm=2.0, discharge=1.0)
    flow_l_min = 3.0
    speed_m_s = flow_l_min / 6e4 / (math.pi / 4 * 0.002**2)
    assert hole.orifice_drop_kpa(flow_l_min=flow_l_min, density_kg_m3=830.0) == pytest.approx(fluids.dP_from_K(K=1.0, rho=830.0, V=speed_m_s) / 1e3)


def test_reynolds_numbers_of_a_reference_library() -> None:
    flow = Orifice(diameter_mm=1.0, discharge=0.6).orifice_flow(pressure_drop_kpa=400, density_kg_m3=800, viscosity_mpa_s=8)
    assert flow.reynolds == pytest.approx(fluids.Reynolds(V=flow.jet_m_s, D=1e-3, rho=800, mu=8e-3), rel=1e-12)
    slot = Slot(width_mm=20, clearance_mm=0.05, length_mm=5).slot_flow(pressure_drop_kpa=1000, viscosity_mpa_s=5, density_kg_m3=800)
    assert slot.reynolds == pytest.approx(fluids.Reynolds(V=slot.speed_m_s, D=2 * 0.05e-3, rho=800, mu=5e-3), rel=1e-12)


@pytest.mark.parametrize("eccentricity", [0.0, 0.3, 0.75, 1.0])
def test_eccentric_gap_against_quadrature(eccentricity: float) -> None:
    """The plane slot of every small piece of the circumference, summed by scipy."""
    radius_m, clear_m, length_m, drop_pa, eta = 6e-3, 20e-6, 10e-3, 1e6, 5e-3

    def piece(angle: float) -> float:
        return radius_m * (clear_m * (1 + eccentricity * math.cos(angle))) ** 3 * drop_pa / (12 * eta * length_m)

    expected, _ = quad(piece, 0, 2 * math.pi)
    gap = fit.Gap(diameter_mm=12, clearance_mm=0.04, length_mm=10, eccentricity=eccentricity)
    found = hydraulic.sliding_gap(gap, pressure_drop_kpa=1000, viscosity_mpa_s=5, density_kg_m3=800, wall_speed_m_s=0)
    assert found.flow_l_min == pytest.approx(expected * 6e4, rel=1e-9)
    assert hydraulic.sliding_gap(gap, pressure_drop_kpa=1000, viscosity_mpa_s=5, density_kg_m3=800, wall_speed_m_s=2).wall_l_min == pytest.approx(
        math.pi * 12e-3 * 20e-6 * 2 / 2 * 6e4, rel=1e-9
    )


def test_the_slot_is_the_gap_unrolled() -> None:
    gap = fit.Gap(diameter_mm=12, clearance_mm=0.04, length_mm=10, eccentricity=0)
    around = gap.gap_leak(pressure_drop_kpa=1000, viscosity_mpa_s=5, density_kg_m3=800).flow_l_min
    slot = Slot(width_mm=math.pi * 12, clearance_mm=0.02, length_mm=10)
    assert slot.slot_flow(pressure_drop_kpa=1000, viscosity_mpa_s=5, density_kg_m3=800).flow_l_min == pytest.approx(around, rel=1e-12)


def test_published_clearances_of_a_pump_are_examples_and_no_defaults() -> None:
    """A workshop manual: gear to body 0.10 to 0.17, tip 0.07 to 0.15, side 0.02 to 0.05 mm new; limits 0.2, 0.3, 0.1."""
    for new, limit in (((0.10, 0.17), 0.2), ((0.07, 0.15), 0.3), ((0.02, 0.05), 0.1)):
        fresh = Reading.rectangular(sum(new) / 2, half_width=(new[1] - new[0]) / 2)
        at_limit = hydraulic.pump_clearance(Reading(value=limit, u=0.005), new_mm=fresh, limit_mm=limit, rule=RULE)
        assert at_limit.judgment.verdict == "NOT PROVEN" and at_limit.judgment.chance == 0.5
        assert at_limit.leak.lower < (limit / fresh.value) ** 3 < at_limit.leak.upper
    with pytest.raises(TypeError):
        hydraulic.pump_clearance(Reading(value=0.1, u=0.005), rule=RULE)  # type: ignore[call-arg]


def test_columns_of_speeds_pressures_and_temperatures() -> None:
    speeds = np.array([300.0, 600.0, np.nan, 900.0])
    flow = PUMP.pump_flow(speed_rpm=speeds, pressure_kpa=1700.0, viscosity_mpa_s=5.44)
    assert flow["delivered_l_min"][1] == PUMP.pump_flow(speed_rpm=600, pressure_kpa=1700, viscosity_mpa_s=5.44).delivered_l_min
    assert np.isnan(flow["delivered_l_min"][2])
    limits = hydraulic.CoolerLimits(temperature_c=[30, 50, 70, 90], least_flow_l_min=[2.4, 3.8, 5.2, 6.0])
    with pytest.warns(RangeWarning, match="1 of 3 rows"):
        least = limits.least_flow_at(temp_c=[40.0, 80.0, 120.0])["least_l_min"]
    assert least[:2] == pytest.approx(np.interp([40.0, 80.0], limits.temperature_c, limits.least_flow_l_min))


def test_quantities_are_converted_by_their_suffix() -> None:
    unit = pint.UnitRegistry()
    metric = PUMP.least_speed_rpm(pressure_kpa=1700, viscosity_mpa_s=5.44, demand_l_min=4)
    typed = PUMP.least_speed_rpm(pressure_kpa=unit.Quantity(17, "bar"), viscosity_mpa_s=5.44, demand_l_min=unit.Quantity(4, "liter/minute"))
    assert typed == pytest.approx(metric)


@given(temp_c=st.floats(70, 140), speed=st.floats(400, 3000), kpa=st.floats(200, 2200), demand=st.floats(0, 8))
def test_the_hottest_temperature_is_where_nothing_is_left(temp_c: float, speed: float, kpa: float, demand: float) -> None:
    def spare(at_c: float) -> float:
        viscosity = hydraulic.oil_at(ALDER, temp_c=Reading.exact(at_c)).viscosity_mpa_s.value
        return PUMP.pump_flow(speed_rpm=speed, pressure_kpa=kpa, viscosity_mpa_s=viscosity).delivered_l_min - demand

    try:
        hottest = PUMP.hottest_c(ALDER, speed_rpm=speed, pressure_kpa=kpa, demand_l_min=demand)
    except Error as error:
        assert error.kind == "NO_ANSWER"
        assert spare(-49) < 0 or spare(149) >= 0
        return
    assert abs(spare(hottest)) < 1e-3
    assert (spare(temp_c) >= 0) == (temp_c <= hottest) or abs(temp_c - hottest) < 0.01


def test_first_order_against_a_cloud_of_pumps() -> None:
    """A million pumps drawn by NumPy: mean, spread and chance of the flow to spare."""
    rng = np.random.default_rng(41)
    duty = hydraulic.PumpDuty(
        speed_rpm=Reading(value=600, u=8), pressure_kpa=Reading(value=1700, u=23), viscosity_mpa_s=Reading(value=5.44, u=0.12), demand_l_min=Reading(value=4.2, u=0.3)
    )
    drawn = {name: rng.normal(one.value, one.u, 1_000_000) for name, one in (("n", duty.speed_rpm), ("p", duty.pressure_kpa), ("e", duty.viscosity_mpa_s), ("q", duty.demand_l_min), ("v", PUMP.displacement_cm3_rev), ("k", PUMP.leak_l_min_mpa))}  # fmt: skip
    spare = drawn["v"] * drawn["n"] / 1e3 - drawn["k"] * drawn["p"] / 1e3 * 5.44 / drawn["e"] - drawn["q"]
    judged = PUMP.flow_margin(duty, RULE).judgment
    assert judged.reading.value == pytest.approx(spare.mean(), abs=0.01)
    assert judged.reading.u == pytest.approx(spare.std(), rel=0.01)
    assert judged.chance == pytest.approx((spare >= 0).mean(), abs=0.003)


def test_records_give_pump_and_limits() -> None:
    family, fluids_record = record.load(DEMO / "family.toml"), record.load(DEMO / "fluids.toml")
    pump = family.pump(fluids_record.fluid("alder"))
    assert pump.displacement_cm3_rev == Reading.relative(19.8, u_rel=0.01)
    # By the same law the leak at 120 °C is the leak at 90 °C times the viscosities' ratio.
    at = {t: hydraulic.oil_at(fluids_record.fluid("alder"), temp_c=Reading.exact(t)).viscosity_mpa_s.value for t in (90.0, 120.0)}
    leak = {t: pump.pump_flow(speed_rpm=600, pressure_kpa=1000, viscosity_mpa_s=viscosity).leak_l_min for t, viscosity in at.items()}
    assert leak[90.0] == pytest.approx(3.9) and leak[120.0] == pytest.approx(3.9 * at[90.0] / at[120.0])
    assert fluids_record.cooler_limits().least_flow_l_min == [2.4, 3.8, 5.2, 6.0]
    with pytest.raises(Error, match="describes no pump"):
        record.Family.from_toml(_without(DEMO / "family.toml", "[pump]")).pump(ALDER)
    with pytest.raises(Error, match=r"give it in \[cooler\]"):
        record.Fluids.from_toml(_without(DEMO / "fluids.toml", "[cooler]")).cooler_limits()


def _without(path: Path, table: str) -> str:
    before, _, after = path.read_text().partition(table)
    _, bracket, rest = after.partition("\n[")
    return before + (bracket[1:] + rest if bracket else "")


def test_the_pressure_of_every_gear_and_element_of_the_scenario() -> None:
    """J3 at 660 N·m: the element that needs most in a gear is the greatest of its elements' needs."""
    family = record.load(DEMO / "family.toml")
    train, packs = family.train("teal"), family.packs("teal")
    gauge = Reading.of_class(1470, full_scale=2500, class_pct=1.6)
    for gear in train.gears():
        found = review(
            gear, dict(packs), pressure_kpa=gauge, friction=family.static_friction, geometry_u_rel=0.02, oil_density_kg_m3=790,
            turbine_torque_nm=Reading.exact(660), turbine_speed_rpm=0, rule=RULE,
        )  # fmt: skip
        pressure = hydraulic.gear_pressure(found, reading_kpa=gauge, control_max_kpa=1500)
        needs = {name: row.pressure_needed.strong_spring_kpa for name, row in found.elements.items()}
        assert train.elements[pressure.element] == max(needs, key=needs.__getitem__)
        assert pressure.needed.strong_spring_kpa == max(needs.values())
        assert pressure.chance == min(row.chance for row in found.elements.values())
    with pytest.raises(Error, match="control_max_kpa = -1"):
        hydraulic.gear_pressure(found, reading_kpa=gauge, control_max_kpa=-1)


def test_objects_survive_pickling_and_print_as_source() -> None:
    limits = hydraulic.CoolerLimits(temperature_c=[30, 90], least_flow_l_min=[2.4, 6.0])
    for thing in (PUMP, limits, Orifice(diameter_mm=1, discharge=0.6), hydraulic.Land(outer_diameter_mm=12)):
        assert pickle.loads(pickle.dumps(thing)) == thing
        assert eval(repr(thing), {**vars(hydraulic), "Reading": Reading}) == thing
        assert hash(thing) == hash(pickle.loads(pickle.dumps(thing)))


@pytest.mark.parametrize(
    ("call", "kind", "says"),
    [
        (lambda: hydraulic.external_gear_cm3_rev(tip_diameter_mm=30, root_diameter_mm=40, face_mm=20), "INCONSISTENT", "exchange the two"),
        (lambda: PUMP.pump_flow(speed_rpm=600, pressure_kpa=-1, viscosity_mpa_s=5), "OUT_OF_RANGE", "pressure_kpa = -1"),
        (lambda: hydraulic.CoolerLimits(temperature_c=[30, 50], least_flow_l_min=[2]), "INCONSISTENT", "one flow for each"),
        (lambda: hydraulic.PatternRule(kept=0.9, hot_from_c=70) and hydraulic.suspect_circuits([], elements=1, rule=hydraulic.PatternRule(kept=0.9, hot_from_c=70)), "COUNT", "readings"),
        (lambda: hydraulic.oil_at(ALDER, temp_c=Reading.exact(160)), "OUT_OF_RANGE", "temp_c = 160"),
        (lambda: Slot(width_mm=20, clearance_mm=0.45, length_mm=5).slot_flow(pressure_drop_kpa=1700, viscosity_mpa_s=4, density_kg_m3=790), "OUT_OF_RANGE", "reynolds"),
    ],
)  # fmt: skip
def test_a_refusal_names_the_parameter(call: object, kind: str, says: str) -> None:
    with pytest.raises(Error, match=says) as caught:
        call()  # type: ignore[operator]
    assert caught.value.kind == kind


def test_a_reading_on_its_limit_counts_as_right() -> None:
    at = hydraulic.PressurePoint(closed=1, at_stall=False, temp_c=80)
    on = hydraulic.PressureReading(at=at, reading_kpa=Reading.exact(360), limits_kpa=Limits(lower=360, upper=440))
    first = hydraulic.suspect_circuits([on], elements=1, rule=hydraulic.PatternRule(kept=0.9, hot_from_c=70)).ranked[0]
    assert (first.kind, first.fits) == ("nothing", 1)
