"""Line contact, teeth, one-way clutches and park locks against elasticity, motion and sampling; their answers at the console."""

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
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp
from scipy.optimize import minimize_scalar
from trainwright import hold, record
from trainwright.cli import shop
from trainwright.hold import ContactBody, LineContact, Parked, ParkGear, Pawl, Ratchet, ToothStrength, Wedge
from trainwright.judge import Limits, Reading, Rule
from trainwright.road import Driveline

DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY, FLEET = str(DEMO / "family.toml"), str(DEMO / "fleet.toml")
RULE = Rule.stated_chances(go=0.95, no_go=0.05)
G = 9.80665


def steel(radius_mm: float) -> ContactBody:
    return ContactBody(radius_mm=radius_mm, young_mpa=206000, poisson=0.3)


CONTACTS = {
    "roller on a flat": (LineContact(first=steel(6), second=steel(math.inf), length_mm=10), 2000.0),
    "sprag on an inner race": (LineContact(first=steel(5), second=steel(49), length_mm=8), 7458.0),
    "sprag in an outer race": (LineContact(first=steel(5), second=steel(-62), length_mm=8), 7458.0),
}
TEAL = ParkGear(teeth=24, face_mm=15, tooth_root_mm=9.6, contact_diameter_mm=132, root_diameter_mm=118, tip_diameter_mm=140)
LINE = Driveline(axle_ratio=3.92, circumference_mm=Reading(value=2561.182154, u=15.9))
PAWL = Pawl(flank_deg=13, friction=Limits(lower=0.08, upper=0.15), inertia_kg_m2=1.9e-4, spring_nm=1.4, drop_deg=9)


# ---- elasticity


@pytest.mark.parametrize("name", CONTACTS)
def test_the_pressure_sums_to_the_force_and_flattens_the_bodies(name: str) -> None:
    contact, force_n = CONTACTS[name]
    found = contact.pressed(force_n=force_n)
    b, peak = found.half_width_mm, found.peak_mpa

    def pressure(x: float) -> float:
        return peak * math.sqrt(max(0.0, 1 - (x / b) ** 2))

    assert quad(pressure, -b, b)[0] * contact.length_mm == pytest.approx(force_n, rel=1e-9)
    for x in (0.2 * b, 0.5 * b, 0.8 * b):
        # Slope of both surfaces together under the pressure (line loads on half planes): 2/(π E*) ∫ p(s)/(x − s) ds = x/R.
        principal_value = -quad(pressure, -b, b, weight="cauchy", wvar=x)[0]
        slope = 2 / (math.pi * found.contact_modulus_mpa) * principal_value
        assert slope == pytest.approx(x / found.effective_radius_mm, rel=1e-6)


@pytest.mark.parametrize("name", CONTACTS)
def test_the_greatest_shear_stress_lies_where_the_half_plane_has_it(name: str) -> None:
    contact, force_n = CONTACTS[name]
    found = contact.pressed(force_n=force_n)
    b, peak = found.half_width_mm, found.peak_mpa

    def shear(z: float) -> float:
        """Half of the difference of the principal stresses under the middle: each line load gives a radial stress."""

        def radial(x: float) -> float:
            distance_2 = x * x + z * z
            stress = 2 * peak * math.sqrt(max(0.0, 1 - (x / b) ** 2)) * z / (math.pi * distance_2)
            return stress * (z * z - x * x) / distance_2

        return quad(radial, -b, b, limit=200)[0] / 2

    deepest = minimize_scalar(lambda z: -shear(z), bounds=(0.3 * b, 2 * b), method="bounded", options={"xatol": 1e-9})
    assert found.shear_depth_mm == pytest.approx(deepest.x, rel=1e-5)
    assert found.shear_mpa == pytest.approx(-deepest.fun, rel=1e-8)


def test_the_equivalent_stress_is_that_of_the_stress_tensor() -> None:
    stress = TEAL.tooth_stress(torque_nm=2231.89, stress_factor=1.3)
    tensor = np.array([[stress.bending_mpa, stress.shear_mpa, 0], [stress.shear_mpa, 0, 0], [0, 0, 0]])
    one, two, three = np.linalg.eigvalsh(tensor)
    assert stress.von_mises_mpa == pytest.approx(math.sqrt(((one - two) ** 2 + (two - three) ** 2 + (three - one) ** 2) / 2))


# ---- motion


def test_a_backlash_closes_as_the_equation_of_motion_says() -> None:
    ratchet = Ratchet(struts=9, notches=42, carrying=2, strut_width_mm=12.5, strut_thickness_mm=4.2, pitch_radius_mm=57)
    backlash = math.radians(ratchet.ratchet_index().backlash_deg)
    closes = lambda t, y: y[0] - backlash  # noqa: E731
    closes.terminal = True  # type: ignore[attr-defined]
    motion = solve_ivp(lambda t, y: [y[1], 250 / 0.03], (0, 1), [0, 0], events=closes, rtol=1e-10, atol=1e-12)
    found = hold.take_up(backlash_deg=math.degrees(backlash), torque_nm=250, inertia_kg_m2=0.03)
    assert found.time_s == pytest.approx(motion.t_events[0][0], rel=1e-7)
    assert found.speed_rpm == pytest.approx(motion.y_events[0][0][1] * 30 / math.pi, rel=1e-7)
    assert found.energy_j == pytest.approx(0.03 * motion.y_events[0][0][1] ** 2 / 2, rel=1e-7)


def test_a_pawl_drops_and_a_truck_rolls_as_the_equations_of_motion_say() -> None:
    dropped = lambda t, y: y[0] - math.radians(9)  # noqa: E731
    dropped.terminal = True  # type: ignore[attr-defined]
    drop = solve_ivp(lambda t, y: [y[1], 1.4 / 1.9e-4], (0, 1), [0, 0], events=dropped, rtol=1e-10, atol=1e-12)
    latch = PAWL.latch(LINE, window_deg=1.3)
    assert latch.drop_time_s == pytest.approx(drop.t_events[0][0], rel=1e-7)
    turns_per_s = math.radians(1.3) / latch.drop_time_s / (2 * math.pi) / 3.92
    assert latch.road_km_h == pytest.approx(turns_per_s * 2.561182154 * 3.6)

    parked = Parked(mass_kg=Reading.exact(11160), grade_pct=20, rocking_factor=1, driveline=LINE)
    roll = TEAL.free_roll(parked)
    rolled = lambda t, y: y[0] - roll.roll_mm / 1000  # noqa: E731
    rolled.terminal = True  # type: ignore[attr-defined]
    motion = solve_ivp(lambda t, y: [y[1], G * math.sin(math.atan(0.2))], (0, 5), [0, 0], events=rolled, rtol=1e-10, atol=1e-12)
    speed_m_s = motion.y_events[0][0][1]
    assert roll.speed_km_h == pytest.approx(3.6 * speed_m_s, rel=1e-7)
    assert roll.energy_j == pytest.approx(11160 * speed_m_s**2 / 2, rel=1e-7)


# ---- sampling against first order


def test_sampling_a_sprag_clutch_agrees_with_first_order_until_the_pressure_is_very_uncertain() -> None:
    """The torque grows with the square of the pressure. At 4 % of pressure first order is right to 0.3 % of the mean; at 15 %
    the mean of the samples lies 2 % above it, and the lower tail is thinner than first order thinks: it errs to the careful side."""
    wedge = Wedge(count=14, race=steel(49), body=steel(5), length_mm=8, half_angle_deg=5.5)
    draw = np.random.default_rng(20).standard_normal((2, 400_000))
    for u_rel, mean_rel in ((0.04, 0.0016), (0.15, 0.0225)):
        allow = 4200 * (1 + u_rel * draw[0])
        sampled = wedge.wedge_capacity_nm(allow_mpa=allow) * (1 + 0.05 * draw[1])
        need = Reading.exact(700)
        found = wedge.wedge_hold(need, allow_mpa=Reading(value=4200, u=4200 * u_rel), geometry_u_rel=0.05, rule=RULE)
        assert sampled.mean() / found.capacity_nm - 1 == pytest.approx(mean_rel, abs=0.001)
        assert sampled.std() == pytest.approx(found.budget.u, rel=0.02)
        assert np.mean(sampled >= 700) >= found.judgment.chance - 0.001


def test_sampling_a_park_gear_agrees_with_first_order() -> None:
    draw = np.random.default_rng(21).standard_normal((3, 400_000))
    mass, tire = 9020 * (1 + 0.03 * draw[0]), 2463 * (1 + 0.006 * draw[1])
    nominal = Driveline(axle_ratio=3.92, circumference_mm=Reading(value=2463.0, u=2463 * 0.006))
    stress = TEAL.stress_on_grade(nominal, mass_kg=mass, grade_pct=20, rocking_factor=1.15, stress_factor=1)["von_mises_mpa"]
    sampled = stress * tire / 2463 * (1 + 0.06 * draw[2])
    parked = Parked(mass_kg=Reading(value=9020, u=9020 * 0.03), grade_pct=20, rocking_factor=1.15, driveline=nominal)
    found = TEAL.park_hold(parked, ToothStrength(yield_mpa=980, stress_factor=1, stress_u_rel=0.06), RULE)
    assert found.judgment.verdict == "NOT PROVEN"
    assert sampled.std() == pytest.approx(found.budget.u, rel=0.01)
    assert np.mean(sampled <= 980) == pytest.approx(found.judgment.chance, abs=0.005)


# ---- arrays, classes


def test_masses_and_grades_broadcast() -> None:
    grades = np.array([5.0, 20.0, 35.0])
    masses = np.array([[3000.0], [9000.0]])
    found = TEAL.stress_on_grade(LINE, mass_kg=masses, grade_pct=grades, rocking_factor=1, stress_factor=1)
    assert found["von_mises_mpa"].shape == (2, 3)
    alone = TEAL.stress_on_grade(LINE, mass_kg=9000, grade_pct=20, rocking_factor=1, stress_factor=1)
    assert found["von_mises_mpa"][1, 1] == alone.von_mises_mpa
    np.testing.assert_allclose(found["von_mises_mpa"][1] / found["von_mises_mpa"][0], 3)
    with pytest.warns(trainwright.RangeWarning, match="1 of 2 rows refused.*grade_pct = -1"):
        refused = hold.park_load(LINE, mass_kg=3000, grade_pct=[-1, 5], rocking_factor=1)
    assert np.isnan(refused["torque_nm"]).tolist() == [True, False]


@given(st.integers(1, 60), st.integers(1, 300))
def test_backlash_and_coincidence_by_counting(struts: int, notches: int) -> None:
    ratchet = Ratchet(struts=struts, notches=notches, carrying=1, strut_width_mm=12, strut_thickness_mm=4, pitch_radius_mm=57)
    # Where in its notch pitch each strut stands, in fine steps: the struts of one place drop in together.
    step = math.lcm(struts, notches)
    places = [(strut * (step // struts)) % (step // notches) for strut in range(struts)]
    index = ratchet.ratchet_index()
    assert index.together == places.count(0)
    gaps = np.diff(sorted({*places, step // notches}))
    assert index.backlash_deg == pytest.approx(max(gaps) * 360 / step)


@pytest.mark.parametrize(
    "value",
    [TEAL, PAWL, CONTACTS["roller on a flat"][0], Parked(mass_kg=Reading.exact(1), grade_pct=1, rocking_factor=1, driveline=LINE)],
    ids=lambda value: type(value).__name__,
)
def test_objects_survive_pickle_and_repr(value: Any) -> None:
    assert pickle.loads(pickle.dumps(value)) == value
    names = {**vars(hold), "Reading": Reading, "Limits": Limits, "Driveline": Driveline}
    assert eval(repr(value), names) == value


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: hold.form_factor(11), "teeth: 11 given, 12 to"),
        (lambda: hold.velocity_factor(pitch_diameter_mm=50, speed_rpm=100, finish="filed"), "give one of cast, cut, hobbed, ground"),
        (lambda: ParkGear(**{**TEAL.as_dict(), "contact_diameter_mm": 145}), "outside the tip of the teeth"),
        (lambda: TEAL.window_deg(space_mm=7, pawl_tip_mm=8), "never drops in"),
        (lambda: hold.park_load(LINE, mass_kg=1000, grade_pct=20, rocking_factor=0.5), "rocking_factor = 0.5: outside 1 to 5"),
        (lambda: LineContact(first=steel(5), second=steel(-4), length_mm=8).pressed(force_n=1), "a hollow must be wider"),
    ],
    ids=["teeth", "finish", "tip", "pawl", "rocking", "hollow"],
)
def test_a_refusal_says_what_would_do(call: Any, says: str) -> None:
    with pytest.raises(trainwright.Error, match=says):
        call()


# ---- the demonstration (its answers were computed independently) and the console


@pytest.fixture(scope="module")
def family() -> record.Family:
    return record.load(DEMO / "family.toml")


def call(*arguments: str) -> str:
    result = CliRunner().invoke(shop, list(arguments), catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.output


def answer(*arguments: str) -> Any:
    return json.loads(call(*arguments, "--json"))


@pytest.mark.parametrize(
    ("engaged", "reaction", "holds"),
    [
        (["B1", "C1"], 0.357664698361838, True),
        (["B1", "C2"], 0.7697451484685525, True),
        (["B1", "C3"], -1.1670329670329715, False),
        (["C1", "C2"], -0.8397166437003429, False),
        (["C1", "C3"], -0.24830488660275918, False),
        (["C2", "C3"], -0.14041840512428772, False),
    ],
)
def test_what_f1_can_hold(family: record.Family, engaged: list[str], reaction: float, holds: bool) -> None:
    train = family.train("teal")
    duty = hold.one_way_duty(train, "F1", closed=engaged)
    if holds:
        assert duty.role == "holds" and duty.share == pytest.approx(reaction, rel=1e-12)
    else:
        assert duty.role != "holds"
        with_brake = hold.one_way_duty(train, "F1", closed=[*engaged, "B2"])
        assert (with_brake.role, with_brake.beside) == ("cannot hold", "B2")
        assert with_brake.share == pytest.approx(reaction, rel=1e-12)
    assert train.solve([*engaged, "F1"]).shares["F1"] == pytest.approx(reaction, rel=1e-12)


def test_f1_of_every_variant_at_its_rating() -> None:
    found = answer("one-way", FAMILY, "--input-speed", "3000")
    clutches = found["clutches"]
    for variant, need, capacity in [("teal", 492.6368950198736, 1173.8590218633665), ("wren", 585.0063128360998, 5386.5), ("heron", 734.1087990024041, 7079.4)]:
        assert clutches[variant]["need_nm"] == pytest.approx(need, rel=1e-6)
        assert clutches[variant]["capacity_nm"] == pytest.approx(capacity, rel=1e-6)
        assert clutches[variant]["hold"]["judgment"]["verdict"] == "GO"
    assert clutches["teal"]["load"]["pressure"]["peak_mpa"] == pytest.approx(2720.8511691941007, rel=1e-6)
    assert clutches["wren"]["index"] == {"backlash_deg": pytest.approx(360 / 126), "positions": 126, "together": 3}
    roles = {gear: duty["role"] for gear, duty in clutches["teal"]["gears"].items()}
    assert [gear for gear, role in roles.items() if role == "cannot hold"] == ["7", "8", "R"]
    text = call("one-way", FAMILY, "--variant", "teal", "--input-speed", "3000")
    assert "no drive in 1, 2 and tie-up in 3, 4, 5, 6" in " ".join(text.split())
    assert "8086" in text, "third sun at 2.70 times the input in fifth"


def test_a_one_way_clutch_without_uncertainty_gets_no_verdict(tmp_path: Path) -> None:
    bare = tmp_path / "family.toml"
    bare.write_text("\n".join(line for line in Path(FAMILY).read_text().splitlines() if not line.startswith(("u_rel_capacity", "friction = {"))))
    found = answer("one-way", str(bare), "--variant", "teal")
    assert found["decisions"] == [] and found["clutches"]["teal"]["hold"] is None
    assert any("no verdict" in line for line in found["not_checked"]) and any("it needs 0.096" in line for line in found["not_checked"])
    judged = answer("one-way", str(bare), "--variant", "teal", "--capacity-u", "40%", "--turbine", "1100Nm")
    assert judged["decisions"][0]["verdict"] == "NOT PROVEN" and "know the geometry" in judged["decisions"][0]["settle"]


def test_j9_every_truck_own_and_other_gear_standing_and_rocking() -> None:
    found = answer("park", FAMILY, "--fleet", FLEET, "--rocking", "1.15")["trucks"]
    own = {line["truck"]: line for line in found["own"]}
    for truck, gear_of, stresses, verdicts, largest, roll in [
        ("T13", "teal", (560.644, 671.312, 1104.997, 1619.034), "GO GO NO-GO NO-GO", 17.662, 27.2234),
        ("T15", "heron", (303.666, 363.607, 598.507, 876.928), "GO GO GO GO", 33.908, 33.3227),
        ("T18", "teal", (246.779, 295.491, 486.387, 712.650), "GO GO GO GO", 43.015, 31.1724),
    ]:
        line = own[truck]
        assert line["park_gear_of"] == gear_of
        by_grade = [line["by_grade_pct"][grade] for grade in ("10", "12", "20", "30")]
        assert [entry["von_mises_mpa"] for entry in by_grade] == pytest.approx(stresses, abs=6e-4)
        assert " ".join(entry["verdict"] for entry in by_grade) == verdicts
        assert line["largest_grade_pct"] == pytest.approx(largest, abs=6e-4)
        assert line["free_roll_mm"] == pytest.approx(roll, abs=6e-5)
    rocking = {line["truck"]: line["by_grade_pct"] for line in found["own_rocking"]}
    for grade, trucks in (("20", ["T12", "T14", "T16", "T19"]), ("30", ["T15", "T17", "T19"])):
        assert [truck for truck in rocking if rocking[truck][grade]["verdict"] == "NOT PROVEN"] == trucks
    other = {line["truck"]: line for line in found["other"]}
    assert other["T13"]["park_gear_of"] == "heron" and other["T15"]["by_grade_pct"]["20"]["verdict"] == "NO-GO"
    assert other["T11"]["largest_grade_pct"] == 100.0


def test_a_park_answer_warns_and_says_what_it_is_not() -> None:
    one = answer("park", FAMILY, "--fleet", FLEET, "--truck", "T13", "--grade", "20%", "--rocking", "1.15", "--gear-of", "heron")
    fleet = answer("park", FAMILY, "--fleet", FLEET)
    for found in (one, fleet):
        caution = found["cautions"][0]
        for word in ("parking brake first", "Never stand downhill", "never the only means", "trailer", "vehicle maker"):
            assert word in caution
        assert any("transfer case in neutral" in line for line in found["not_checked"])
        assert " safe" not in json.dumps(found)
    assert one["own"]["hold"]["judgment"]["verdict"] == "NO-GO"
    assert one["other"]["hold"]["stress"]["von_mises_mpa"] == pytest.approx(1.15 * 560.101, abs=1e-3)
    assert "2.067" in call("park", FAMILY, "--fleet", FLEET, "--truck", "T13")


def test_tires_may_slide_before_the_park_gear_is_loaded() -> None:
    text = call("park", FAMILY, "--fleet", FLEET, "--truck", "T13", "--axle-load", "3000kg", "--tire-friction", "0.7")
    assert "SLIDE" in text
    assert "SLIDE" not in call("park", FAMILY, "--fleet", FLEET, "--truck", "T11", "--axle-load", "1700kg", "--tire-friction", "0.8")


def test_a_mass_with_its_uncertainty_is_counted() -> None:
    asked = ("park", FAMILY, "--fleet", FLEET, "--truck", "T12", "--grade", "20%", "--rocking", "1.15")
    exact, rough = answer(*asked), answer(*asked, "--mass", "8080±600kg")
    assert rough["own"]["hold"]["budget"]["u"] > exact["own"]["hold"]["budget"]["u"]
    assert [entry["u"] for entry in rough["inputs"]] == pytest.approx([0.06, 600, 2456.7 * 0.006 / 0.968], rel=1e-3)
    assert rough["inputs"][1]["turns_at"] < 8080
    assert "mass" in rough["decisions"][0]["settle"] and "tooth" in exact["decisions"][0]["settle"]


def test_gaps_of_the_fleet_are_a_range() -> None:
    text = call("park", FAMILY, "--fleet", FLEET)
    assert "T19: tire or trailer is not known" in " ".join(text.split())


@pytest.mark.parametrize(
    ("arguments", "mend"),
    [
        (("park", FAMILY, "--fleet", FLEET, "--truck", "T99"), "it has T11, T12"),
        (("park", FAMILY, "--fleet", FLEET, "--truck", "T19"), "give --tire (m255, lt235, lt275 may be fitted) and --mass"),
        (("park", FAMILY), "give --fleet with --truck, or --variant, --mass, --axle and --tire"),
        (("park", FAMILY, "--fleet", FLEET, "--truck", "T13", "--grade", "0%"), "give a grade above 0"),
        (("park", FAMILY, "--fleet", FLEET, "--truck", "T13", "--grade=-20%"), "outside 0 to 100"),
        (("park", FAMILY, "--fleet", FLEET, "--truck", "T13", "--mass", "11160"), "give a number and kg or lb"),
        (("park", FAMILY, "--fleet", FLEET, "--truck", "T13", "--gear-of", "swift"), "gives none for this variant"),
        (("park", FLEET, "--fleet", FLEET, "--truck", "T13"), "give a family record"),
        (("one-way", FAMILY, "--element", "F2"), "it has F1"),
        (("one-way", FAMILY, "--variant", "swift"), "give --turbine"),
    ],
    ids=["truck", "gaps", "nothing", "level", "downhill", "unit", "gear", "fleet", "element", "variant"],
)
def test_a_refusal_at_the_console_names_the_mend(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], mend: str) -> None:
    from trainwright import cli

    monkeypatch.setattr("sys.argv", ["trainwright", *arguments])
    with pytest.raises(SystemExit) as ended:
        cli.main()
    assert ended.value.code == 2
    assert mend in " ".join(capsys.readouterr().err.split())


def test_a_new_gear_with_the_old_pawl_is_refused(tmp_path: Path) -> None:
    fleet = tmp_path / "fleet.toml"
    fleet.write_text(Path(FLEET).read_text().replace('park_gear = "teal", park_pawl = "teal"', 'park_gear = "heron", park_pawl = "teal"'))
    result = CliRunner().invoke(shop, ["park", FAMILY, "--fleet", str(fleet), "--truck", "T18"])
    assert isinstance(result.exception, trainwright.Error) and "fit a matching pair" in str(result.exception)
