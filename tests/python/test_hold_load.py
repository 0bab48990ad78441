"""Thrust bearings, shafts, splines and two variants side by side, against scipy, pint, sampling and the demonstration."""

from __future__ import annotations

import json
import math
import pickle
from pathlib import Path

import numpy as np
import pytest
import trainwright
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st
from rich.console import Console
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.stats import norm
from trainwright import card, hold, judge, practice, record
from trainwright.answers.compare import compare_sheet
from trainwright.answers.hard_parts import Asked, hard_parts_sheet
from trainwright.cli import shop
from trainwright.judge import Reading, Rule
from trainwright.parts import Records, parts_of

DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY = str(DEMO / "family.toml")
RULE = Rule.stated_chances(go=0.95, no_go=0.05)
NARROW = hold.NeedleThrust(needles=32, needle_diameter_mm=2.5, needle_length_mm=6, pitch_diameter_mm=56)


@pytest.fixture(scope="module")
def family():
    return record.load(DEMO / "family.toml")


# ---- against independent calculations


@given(st.floats(5, 120), st.floats(0, 0.95), st.floats(1, 5000))
def test_the_stress_over_the_section_makes_up_the_torque(outside, bore, torque):
    shaft = hold.Shaft(outside_mm=outside, inside_mm=bore * outside)
    found = shaft.torsion(torque_nm=torque)
    moment = quad(lambda r: found.stress_mpa * r / (outside / 2) * 2 * math.pi * r * r, bore * outside / 2, outside / 2)[0]
    assert moment / 1000 == pytest.approx(torque, rel=1e-9)


@given(st.floats(1e3, 1e5), st.floats(0.02, 0.5), st.floats(10, 5000))
def test_the_load_for_a_life_is_the_root_of_the_life(hours, share, speed):
    capacity = NARROW.needle_capacity().dynamic_n

    def spare(load):
        return (capacity / load) ** (10 / 3) * 1e6 / (60 * speed) - hours

    expected = brentq(spare, 1e-3, 1e9)
    lasts = NARROW.needle_lasts(Reading.exact(share * capacity), speed_rpm=speed, least_life_h=hours, rule=RULE)
    assert lasts.load_for_life_n == pytest.approx(expected, rel=1e-9)
    assert (lasts.life.life_h >= hours) == (lasts.judgment.verdict == "GO") or lasts.life.life_h == pytest.approx(hours)


def test_units_by_pint():
    pint = pytest.importorskip("pint")
    unit = pint.UnitRegistry()
    washer = hold.ThrustWasher(outside_mm=62, inside_mm=42, face_share=1)
    load = washer.washer_load(load_n=unit.Quantity(3.5, "kN"), speed_rpm=unit.Quantity(25, "revolution/second"))
    assert load.pv_mpa_m_s == pytest.approx(8.75)
    torque = unit.Quantity(5, "kilonewton*meter")
    assert hold.Shaft(outside_mm=114, inside_mm=102).torsion(torque_nm=torque).stress_mpa == pytest.approx(47.86, abs=0.005)
    twist = hold.Shaft(outside_mm=30, inside_mm=0).twist_deg(
        torque_nm=760, length_mm=unit.Quantity(25, "cm"), shear_modulus_mpa=unit.Quantity(80, "GPa")
    )
    polar = math.pi * 30**4 / 32
    assert twist == pytest.approx(math.degrees(760e3 * 250 / (80e3 * polar)))
    with pytest.raises(pint.DimensionalityError):
        washer.washer_load(load_n=unit.Quantity(1, "mm"), speed_rpm=0)


# ---- sampling against what is judged


def test_a_life_is_judged_in_the_load_because_the_life_is_not_straight():
    """The push is uncertain by 10 %. Sampling the load gives the chance that is judged. Carrying the uncertainty into the life by
    first order and calling that normal gives another one: the life is skewed, its mean lies 6 % above its middle."""
    rng = np.random.default_rng(7)
    load = Reading(value=3655.0, u=365.5)
    lasts = NARROW.needle_lasts(load, speed_rpm=674, least_life_h=6000, rule=RULE)
    sample = rng.normal(load.value, load.u, 400_000)
    hours = hold.rating_life(
        capacity_n=lasts.capacity.dynamic_n, load_n=sample, exponent=hold.ROLLER_EXPONENT, speed_rpm=674
    )["life_h"]
    sampled = float(np.mean(hours >= 6000))
    assert lasts.judgment.chance == pytest.approx(sampled, abs=4 * math.sqrt(sampled * (1 - sampled) / len(sample)))
    first_order = norm.sf(6000, loc=lasts.life.life_h, scale=10 / 3 * load.u / load.value * lasts.life.life_h)
    assert abs(first_order - sampled) > 0.04
    assert float(np.mean(hours)) > 1.05 * float(np.median(hours))


@pytest.mark.parametrize(("torque_u", "yield_u", "stress_u_rel"), [(60.0, 0.0, 0.03), (0.0, 40.0, 0.06), (40.0, 30.0, 0.05)])
def test_the_chance_of_a_shaft_is_that_of_sampling(torque_u, yield_u, stress_u_rel):
    shaft = hold.Shaft(outside_mm=41, inside_mm=0)
    load = hold.ShaftLoad(
        torque_nm=Reading(value=2800, u=torque_u), shear_yield_mpa=Reading(value=640, u=yield_u), stress_factor=2.9, stress_u_rel=stress_u_rel
    )
    held = shaft.shaft_hold(load, rule=RULE)
    rng = np.random.default_rng(11)
    n = 400_000
    stress = shaft.torsion(torque_nm=rng.normal(2800, torque_u, n))["stress_mpa"] * 2.9 * rng.normal(1, stress_u_rel, n)
    sampled = float(np.mean(rng.normal(640, yield_u, n) >= stress))
    # Torque and form multiply; their product of second order is far below the sampling error here.
    assert held.judgment.chance == pytest.approx(sampled, abs=5e-3)
    wanted = judge.settle(held.judgment, held.budget)
    assert wanted.input in (0, 1, 2)


# ---- arrays


def test_arrays_broadcast_and_count_what_they_refuse():
    capacity = NARROW.needle_capacity().dynamic_n
    load = np.array([[1000.0], [4000.0], [0.6 * capacity], [np.nan]])
    speed = np.array([500.0, 1500.0])
    with pytest.warns(trainwright.RangeWarning, match="2 of 8 rows refused; the first is row 4: load_n"):
        life = hold.rating_life(capacity_n=capacity, load_n=load, exponent=hold.ROLLER_EXPONENT, speed_rpm=speed)
    assert life["life_h"].shape == (4, 2)
    expected = (capacity / load[:2]) ** (10 / 3) * 1e6 / (60 * speed)
    assert life["life_h"][:2] == pytest.approx(expected, rel=1e-12)
    assert np.isnan(life["life_mrev"][2:]).all()

    torque = np.linspace(-500, 500, 5)
    spline = hold.Spline(teeth=24, major_mm=31.25, minor_mm=28.75, pitch_diameter_mm=30, length_mm=22)
    half = spline.spline_load(torque_nm=torque, carrying_share=0.5)
    assert half["bearing_mpa"] == pytest.approx(np.abs(torque) * 1e3 / (12 * 1.25 * 22 * 15))
    pushed = hold.axial_thrust(torque_nm=torque, teeth=59, helical=hold.Helical(module_mm=1.48, helix_deg=19))
    assert pushed["axial_n"] == pytest.approx(pushed["tangential_n"] * math.tan(math.radians(19)))
    out = np.empty(5)
    shaft = hold.Shaft(outside_mm=30, inside_mm=8)
    assert shaft.twist_deg(torque_nm=torque, length_mm=100, shear_modulus_mpa=practice.STEEL_SHEAR_MODULUS_MPA, out=out) is out


def test_stages_of_one_duty_come_as_lists_or_arrays():
    stages = {"load_n": np.array([6000.0, 3000.0]), "speed_rpm": [1500, 2500], "share": (1, 3)}
    mean = hold.mean_load(**stages, exponent=hold.ROLLER_EXPONENT)
    p = 10 / 3
    turns = np.array([1500.0, 7500.0])
    expected = float((np.array([6000.0, 3000.0]) ** p @ turns / turns.sum()) ** (1 / p))
    assert mean.load_n == pytest.approx(expected, rel=1e-12)
    with pytest.raises(trainwright.Error, match="2 loads, 2 speeds and 1 shares"):
        hold.mean_load(load_n=[1, 2], speed_rpm=[1, 2], share=[1], exponent=3)
    with pytest.raises(trainwright.Error, match="stages"):
        hold.mean_load(load_n=[], speed_rpm=[], share=[], exponent=3)


# ---- wrong inputs say what to mend


@pytest.mark.parametrize(
    ("call", "kind", "says"),
    [
        (lambda: hold.NeedleThrust(needles=63, needle_diameter_mm=2.5, needle_length_mm=6, pitch_diameter_mm=56).needle_capacity(), "INCONSISTENT", "count them again"),
        (lambda: hold.NeedleThrust(needles=8, needle_diameter_mm=2.5, needle_length_mm=60, pitch_diameter_mm=56).needle_capacity(), "INCONSISTENT", "reach past the axis"),
        (lambda: hold.Shaft(outside_mm=8, inside_mm=33).torsion(torque_nm=1), "REVERSED", "exchange them"),
        (lambda: hold.Spline(teeth=24, major_mm=28, minor_mm=31, pitch_diameter_mm=30, length_mm=22).spline_load(torque_nm=1, carrying_share=1), "REVERSED", "exchange them"),
        (lambda: hold.change(-1, 1, better="more"), "NO_ANSWER", "opposite signs"),
        (lambda: hold.change(1, 2, better="bigger"), "TEXT", "give one of neither, more, less"),
        (lambda: hold.rating_life(capacity_n=1000, load_n=501, exponent=3, speed_rpm=1), "OUT_OF_RANGE", "outside 0 to 500"),
    ],
)  # fmt: skip
def test_refusals(call, kind, says):
    with pytest.raises(trainwright.Error, match=says) as caught:
        call()
    assert caught.value.kind == kind


def test_a_record_refuses_what_it_does_not_have(family):
    with pytest.raises(trainwright.Error, match="grey"):
        hold.compare(family, "teal", "grey")
    with pytest.raises(trainwright.Error, match="no set of this name"):
        hold.gear_thrusts(family, "teal", set="P9", wheel="sun", input_speed_rpm=0)
    with pytest.raises(trainwright.Error, match="no such wheel"):
        hold.gear_thrusts(family, "teal", set="P1", wheel="sun_2", input_speed_rpm=0)
    with pytest.raises(trainwright.Error, match='no set "P9"; it has P1'):
        gear = family.train("teal").gears()[0]
        hold.wheel_thrust(gear, set="P9", wheel="sun", helical=hold.Helical(module_mm=1, helix_deg=0), input_torque_nm=1, input_speed_rpm=1)
    with pytest.raises(trainwright.Error, match="ratings"):
        hold.shafts(family, "grey")


# ---- the demonstration


def test_the_demonstration_as_computed_independently(family):
    stress = {
        "teal": (127.65542203727586, 206.9076609601402),
        "wren": (130.50558196246755, 236.85525598802792),
        "heron": (135.09973042522319, 248.11908859179783),
    }
    for variant, expected in stress.items():
        shafts = hold.shafts(family, variant)
        found = [shafts[name].shaft.torsion(torque_nm=shafts[name].torque_nm).stress_mpa for name in ("input", "output")]
        assert found == pytest.approx(expected, rel=1e-12)
    changed = hold.compare_needles(hold.thrust_race(family, "teal"), hold.thrust_race(family, "heron"))
    assert changed.static_n.ratio == pytest.approx(1.6875, rel=1e-12)
    assert changed.life_by_size.ratio == pytest.approx(3.840733734259661, rel=1e-12)
    # With f_c of the standard, which falls as the pitch diameter grows from 56 to 60 mm: (56/60)^(20/27) of it.
    assert changed.life.ratio == pytest.approx(3.840733734259661 * (56 / 60) ** (20 / 27), rel=1e-12)


def figures(comparison):
    return {part.part: {figure.figure: figure.change for figure in part.changes} for part in comparison.parts}


def test_fewer_wider_teeth_are_another_bargain(family):
    park = figures(hold.compare(family, "teal", "heron"))["park_gear"]
    assert park["torque at yield in bending"].ratio == pytest.approx(2.0672, abs=5e-5)
    assert park["turn of the output before the pawl drops in"].ratio == pytest.approx(4 / 3)
    assert park["turn of the output before the pawl drops in"].effect == "costs"
    assert park["energy that the pawl then meets"].effect == "costs"
    one_way = figures(hold.compare(family, "teal", "wren"))["F1"]
    assert (one_way["capacity"].effect, one_way["turn back before it holds"].effect) == ("buys", "costs")
    assert one_way["turn back before it holds"].after == pytest.approx(360 / 126)
    assert "park_gear" in hold.compare(family, "teal", "wren").alike


def test_every_figure_names_its_formula_and_what_it_means(family):
    for part in hold.compare(family, "teal", "heron").parts:
        for figure in part.changes:
            assert figure.card == "" or card(figure.card).purpose
            assert figure.why or part.at, (part.part, figure.figure)
        assert repr(part).startswith(f"<{part.part}")
    with pytest.raises(TypeError):
        pickle.dumps(part)


def test_sheets_print_and_are_json(family):
    sheets = [
        hard_parts_sheet(family, "teal", title="x", asked=Asked(stress_factor=3.0, turbine_rpm=2000.0, hours=6000.0)),
        compare_sheet(hold.compare(family, "teal", "heron"), title="y"),
        compare_sheet(hold.compare(family, "wren", "wren"), title="z"),
    ]
    console = Console(width=140, record=True)
    for sheet in sheets:
        sheet.print(console)
        assert json.dumps(sheet.as_dict())
    text = console.export_text()
    assert "NOT PROVEN" in text and "To settle it, know" in text
    assert "alike in everything that the record states" in text
    verdicts = {decision.about: decision.verdict for decision in sheets[0].decisions}
    assert verdicts["3 times the nominal stress of the output shaft stays below yield in shear at its rated torque"] == "NOT PROVEN"
    turns = {entry["input"]: entry for entry in sheets[0].data["inputs"]}
    assert turns["torque"]["turns_at"] == pytest.approx(2628, abs=1)
    # There the most loaded shaft is just GO: 1.645 standard uncertainties below yield.
    peak = 3 * hold.Shaft(outside_mm=41, inside_mm=0).torsion(torque_nm=turns["torque"]["turns_at"]).stress_mpa
    assert (640 - peak) / (0.06 * peak) == pytest.approx(norm.ppf(0.95), rel=1e-6)
    worked = {explanation.card.id for explanation in sheets[0].how}
    assert {"hold.torsion", "hold.shaft_hold", "hold.needle_capacity", "hold.wheel_thrust", "hold.rating_life", "hold.spline_load"} <= worked
    assert any("last 6000 h" in about and verdict == "NOT PROVEN" for about, verdict in verdicts.items())


def test_what_the_record_leaves_out_is_said_and_not_judged(family):
    text = (DEMO / "family.toml").read_text()
    bare = text.replace("u_rel_stress = 0.06                    # form and hardness together\n", "").replace(", u_rel_push = 0.10", "")
    sheet = hard_parts_sheet(record.Family.from_toml(bare), "teal", title="x")
    assert [decision.about for decision in sheet.decisions] == ["nominal stress of the output shaft stays below yield in shear at its rated torque"]
    assert "Whether input holds: its record states no u_rel_stress." in sheet.not_checked
    nothing = record.Family.from_toml(text[: text.index("# =============================================================== other hard parts")])
    assert "states no shaft and no thrust bearing" in hard_parts_sheet(nothing, "teal", title="x").answer
    assert "F1" not in figures(hold.compare(nothing, "teal", "heron"))


# ---- console and report


def call(*arguments, code=0):
    result = CliRunner().invoke(shop, list(arguments))
    assert result.exit_code == code, result.output
    return result.output


def test_the_console_compares_and_shows_hard_parts():
    found = json.loads(call("compare", FAMILY, "teal", "heron", "--json"))
    changes = {change["figure"]: change for change in found["parts"]["thrust_race"]["changes"]}
    assert changes["static capacity"]["ratio"] == pytest.approx(1.6875)
    assert found["parts"]["thrust_race"]["goes_with"] == ["output_carrier", "third_sun"]
    found = json.loads(call("hard-parts", FAMILY, "--variant", "heron", "--turbine-speed", "2000", "--json"))
    assert found["shafts"]["output"]["stress_mpa"] == pytest.approx(248.119, abs=1e-3)
    assert found["thrust_race"]["gears"]["1"]["thrust"]["axial_n"] == pytest.approx(5474, abs=1)
    assert found["thrust_race"]["gears"]["3"]["thrust"]["axial_n"] == 0
    assert "--hours needs --turbine-speed" in call("hard-parts", FAMILY, "--hours", "100", code=2)
    assert "is a fluids record" in call("compare", str(DEMO / "fluids.toml"), "teal", "heron", code=2)


def test_the_report_has_the_bargain_as_a_picture(family):
    plots = pytest.importorskip("trainwright.report.plots")
    parts = [part for part in parts_of(Records(family=family)) if "instead of" in part.sheet.title]
    assert len(parts) == 1 and parts[0].sheet.title == "heron instead of teal, part by part"
    (draw,) = parts[0].pictures.values()
    svg = draw(plots)
    assert svg.startswith("<svg") and "park gear: torque at yield in bending" in svg and "× 2.07" in svg
