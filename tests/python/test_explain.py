"""Worked explanations: complete over all cards and result classes, and the same text in every language."""

from __future__ import annotations

import ctypes
import json
import re
import sys
from pathlib import Path

import numpy as np
import pytest
import trainwright
from hypothesis import given
from hypothesis import strategies as st
from trainwright import Error, Limits, Reading, explain, judge
from vectors import ROOT

LIBRARY = ROOT / "target" / "debug" / f"libtrainwright_c.{'dylib' if sys.platform == 'darwin' else 'so'}"
DEMO = Path(trainwright.__file__).parent / "demo"
RULE = judge.Rule.stated_chances(go=0.95, no_go=0.05)


@pytest.fixture(scope="module")
def hold() -> trainwright.clutch.Hold:
    pack = trainwright.record.load(DEMO / "family.toml").packs("teal")["C1"].pack
    return pack.hold(
        Reading(value=783.574, u=5), pressure_kpa=Reading.of_class(1470.0, full_scale=2500.0, class_pct=1.6), friction=Reading(value=0.112, u=0.009),
        geometry_u_rel=0.02, drum_speed_rpm=0.0, oil_density_kg_m3=790.0, rule=RULE,
    )  # fmt: skip


# ---- complete

PLAIN = {"Reading", "Repeated", "Limits", "Budget", "Judgment", "Fluid"}
"""What a formula of any chapter may return: its explanation is had with the id of the card."""
IN_PYTHON = {"OperatingPoints": "OperatingPoint", "Diagnosis": "Suspect", "MeasurePlan": "MeasureGain", "LiveShift": "Shift", "LiveRatio": "Ratio"}
"""Results that Python has as lists, by what they are lists of, or under a shorter name."""
OTHERWISE = {
    "train.resolve": "its State is explained as that of train.solve",
    "train.planet_speeds": "Python has a dictionary",
    "train.seen_ratio": "Python has an observation, a tuple",
    "converter.element_torques": "Python has a dictionary",
    "hold.tip_pressure": "its LinePressure is explained as that of hold.pressed",
}


def sources(chapter: str) -> str:
    files = [ROOT / "core" / f"{chapter}.rs", *sorted((ROOT / "core" / chapter).rglob("*.rs"))]
    return "\n".join(file.read_text(encoding="utf-8") for file in files if file.exists())


def result_class(id: str) -> str | None:
    """The struct that the function of this card returns in the core; nothing for a number."""
    chapter, function = id.split(".")
    found = re.findall(rf"pub fn {function}\b[^{{;]*->\s*(?:Result<)?(\w+)", sources(chapter))
    assert found or f"fn {function}" in sources(chapter), id
    kinds = {kind for kind in found if kind[0].isupper()} - {"Self", "Result", "Option"}
    assert len(kinds) <= 1, (id, kinds)
    return next(iter(kinds), None)


@pytest.mark.parametrize("id", [card.id for card in trainwright.cards()])
def test_every_result_of_a_formula_knows_its_card(id: str) -> None:
    chapter, name = id.split(".")[0], result_class(id)
    if name is None or id in OTHERWISE or name in PLAIN:
        explain(id)
        return
    kind = getattr(getattr(trainwright, chapter), IN_PYTHON.get(name, name))
    assert id in kind.CARDS, f'{name}: add explained by ["{id}"] to its class!'
    assert callable(kind.explain)


def test_the_cards_of_a_class_exist() -> None:
    for chapter in (getattr(trainwright, name) for name in trainwright.__all__):
        for kind in vars(chapter).values() if hasattr(chapter, "__all__") else ():
            for id in getattr(kind, "CARDS", ()):
                assert trainwright.card(id).id == id


# ---- what it says


def test_a_result_explains_itself(hold: trainwright.clutch.Hold) -> None:
    text = str(hold.explain(pressure_kpa=Reading(value=1470, u=23.094), friction=Reading(value=0.112, u=0.009), geometry_u_rel=0.02))
    for line in (
        "clutch.hold: Whether a pack holds a torque",
        "  T             capacity torque: 821.232 N·m",
        "  u_need        uncertainty of need torque: 5 N·m",
        "  u_p           uncertainty of pressure: 23.094 kPa",
        "  margin: 1.04806",
        "  pressure needed strong spring: 1408.41 kPa",
        "The chance that the true value lies there is 70.6 %: NOT PROVEN.",
        "  friction: sensitivity 7332.43, its standard uncertainty 0.009 brings 65.9919 N·m",
        "  demand: sensitivity −1, its standard uncertainty 5 brings 5 N·m, 0.5 % of the variance; it alone cannot decide",
        "Source: JCGM 100:2008",
    ):
        assert line in text, text


def test_what_was_not_given_is_said(hold: trainwright.clutch.Hold) -> None:
    assert "  u_p           uncertainty of pressure: not given" in str(hold.explain())


def test_every_value_of_the_result_is_in_the_text(hold: trainwright.clutch.Hold) -> None:
    explanation = hold.explain()
    assert explanation.values["capacity.torque_nm"] == hold.capacity.torque_nm
    text = str(explanation)
    for value in explanation.values.values():
        assert isinstance(value, float | int)
        assert f"{value:.6g}".replace("-", "−") in text or f"{value:.0f}" in text or value == float("inf")


def test_as_dict_and_json_keep_every_digit(hold: trainwright.clutch.Hold) -> None:
    found = hold.explain().as_dict()
    assert found == json.loads(hold.explain().as_json())
    assert found["symbols"][0] == {"symbol": "T", "meaning": "capacity torque", "unit": "N·m", "values": {"capacity.torque_nm": hold.capacity.torque_nm}}
    (judged,) = found["judged"]
    assert (judged["chance"], judged["value_to_go"], judged["upper"]) == (hold.judgment.chance, hold.judgment.value_to_go, None)
    assert [entry["name"] for entry in judged["inputs"]] == ["pressure", "friction", "geometry", "demand"]
    assert sum(entry["share"] for entry in judged["inputs"]) == pytest.approx(1)
    wanted = judge.settle_by(hold.judgment, hold.budget, 1)
    assert judged["inputs"][1]["u_needed"] == wanted.u_needed > 0


def test_a_judgment_is_explained_with_its_budget(hold: trainwright.clutch.Hold) -> None:
    text = str(explain(hold.judgment, unit="N·m", budget=hold.budget, inputs=["p", "mu", "g", "T"]))
    assert "\n  mu: sensitivity 7332.43" in text
    assert text.count("Judged: ") == 1


def test_a_judgment_in_a_field_of_another_name_has_the_unit_of_its_name() -> None:
    fluids = trainwright.record.load(DEMO / "fluids.toml")
    check = trainwright.fluid.LevelCheck(temp_c=Reading(value=60, u=1), level_mm=Reading(value=2, u=0.5), area_scale=Reading.exact(1.0))
    text = str(fluids.fill().adjust_fill(fluids.fluid("alder"), check, RULE).explain())
    assert re.search(r"Judged: [−0-9.]+ mL, standard uncertainty [0-9.]+ mL, against", text), text
    assert "\n  temperature: sensitivity" in text


def test_a_gear_is_explained() -> None:
    gear = trainwright.record.load(DEMO / "family.toml").train("teal").gears()[0]
    text = str(gear.explain())
    assert "  ratio exact: 854760/201019" in text
    assert "train.solve" in text


def test_a_result_of_several_formulas_asks_for_one() -> None:
    rolling = trainwright.tire.rolling_by_factor(diameter_mm=800.0, factor=Reading(value=3.05, u=0.03))
    with pytest.raises(Error, match='give card="tire.rolling_by_factor" or card="tire.rolling_by_share"'):
        rolling.explain()
    assert "tire.rolling_by_factor" in str(rolling.explain(card="tire.rolling_by_factor"))


def test_a_number_is_explained_with_the_id_of_its_card() -> None:
    lining = trainwright.clutch.Annulus(inner_radius_mm=56.0, outer_radius_mm=78.0)
    text = str(explain("clutch.mean_radius_worn_mm", lining, result=lining.mean_radius_worn_mm()))
    assert "Result: r_m = 67 mm" in text


@pytest.mark.parametrize(
    ("what", "known", "kind"), [(3.0, None, "TEXT"), (Reading(value=1, u=0), None, "TEXT"), ("clutch.nothing", None, "MISSING"), ("clutch.hold", 3.0, "TEXT")]
)
def test_what_cannot_be_explained_is_refused(what: object, known: object, kind: str) -> None:
    with pytest.raises(Error) as caught:
        explain(what, known)
    assert caught.value.kind == kind


def test_notebooks_show_it(hold: trainwright.clutch.Hold) -> None:
    html = hold.explain()._repr_html_()
    assert html == hold.explain().as_html()
    assert html.startswith('<article class="explanation"><h4>') and html.endswith("</article>")
    assert "r<sub>m</sub>" in html


def test_words_of_a_caller_cannot_become_markup() -> None:
    html = explain("clutch.capacity", {"<script>": "<b>"}).as_html()
    assert "<script>" not in html and "<b>" not in html


# ---- what turns a verdict


def test_turning_value_over_a_callable(hold: trainwright.clutch.Hold) -> None:
    pack = trainwright.record.load(DEMO / "family.toml").packs("teal")["C1"].pack

    def at(friction: float) -> trainwright.clutch.Hold:
        return pack.hold(
            Reading(value=783.574, u=5), pressure_kpa=Reading.of_class(1470.0, full_scale=2500.0, class_pct=1.6), friction=Reading(value=friction, u=0.009),
            geometry_u_rel=0.02, drum_speed_rpm=0.0, oil_density_kg_m3=790.0, rule=RULE,
        )  # fmt: skip

    turning = judge.turning_value(at, now=0.112, lower=0.05, upper=0.2)
    assert not turning.go_now and turning.judgment.verdict == "GO"
    assert turning.judgment.chance == pytest.approx(0.95, abs=1e-9)
    assert at(turning.value - 1e-9).judgment.verdict == "NOT PROVEN"
    assert turning.change == pytest.approx(turning.value - 0.112)
    with pytest.raises(Error, match="no value of this input alone"):
        judge.turning_value(at, now=0.112, lower=0.1, upper=0.115)


def test_turning_value_agrees_with_a_root_finder() -> None:
    """scipy's Brent root of the same condition."""
    optimize = pytest.importorskip("scipy.optimize")

    def at(x: float) -> judge.Judgment:
        return judge.judge(Reading(value=x**3, u=0.2 + 0.01 * x * x), Limits(lower=5.0), judge.Rule.conformance(0.95))

    root = optimize.brentq(lambda x: at(x).reading.value - at(x).acceptance.lower, 0.5, 4.0, xtol=1e-15)
    assert judge.turning_value(at, now=1.0, lower=0.0, upper=4.0).value == pytest.approx(root, rel=1e-12)


def test_an_exception_of_the_callable_is_passed_on() -> None:
    def broken(value: float) -> judge.Judgment:
        raise KeyError("no such part")

    with pytest.raises(KeyError, match="no such part"):
        judge.turning_value(broken, now=1.0, lower=0.0, upper=2.0)
    with pytest.raises((TypeError, Error)):
        judge.turning_value(lambda value: value, now=1.0, lower=0.0, upper=2.0)


def test_a_refusal_on_the_way_is_not_go() -> None:
    def at(value: float) -> judge.Judgment:
        return judge.judge(Reading(value=value, u=0.1 if value < 3 else -1.0), Limits(lower=1.0), judge.Rule.conformance(0.95))

    assert judge.turning_value(at, now=0.5, lower=0.0, upper=8.0).value == pytest.approx(1.1644854, abs=1e-6)


# ---- the same in C


class NamedValue(ctypes.Structure):
    _fields_ = [("name", ctypes.c_char_p), ("value", ctypes.c_double)]


def explained_in_c(id: str, values: dict[str, float]) -> str:
    library = ctypes.CDLL(str(LIBRARY))
    named = (NamedValue * max(len(values), 1))(*[NamedValue(name.encode(), value) for name, value in values.items()])
    text, length = ctypes.create_string_buffer(1 << 14), ctypes.c_size_t()
    size = ctypes.c_size_t(len(text))
    status = library.tw_card_explain(id.encode(), named, ctypes.c_size_t(len(values)), text, size, ctypes.byref(length))
    assert status == 0
    assert length.value == len(text.value)
    return text.value.decode()


@pytest.mark.parametrize("id", [card.id for card in trainwright.cards()])
def test_c_and_python_say_the_same(id: str) -> None:
    symbols = trainwright.card(id).symbols
    names = dict.fromkeys(word for symbol in symbols for word in re.findall(r"\b[a-z]+(?:[_.][a-z0-9]+)+\b", symbol.meaning))
    values = {name: 1.5 + 10.0**place for place, name in enumerate(names)} | {"other_mm": -0.25}
    assert explained_in_c(id, values) == str(explain(id, values))


@given(st.floats(allow_nan=True, allow_infinity=True))
def test_c_and_python_write_numbers_alike(value: float) -> None:
    assert explained_in_c("judge.judge", {"x_mm": value}) == str(explain("judge.judge", {"x_mm": value}))


def test_numpy_numbers_are_numbers() -> None:
    assert "x: 2.5 mm" in str(explain("judge.judge", {"x_mm": np.float64(2.5)}))


def test_judgments_and_repeated_readings_explain_themselves() -> None:
    assert (judge.Judgment.CARDS, judge.Repeated.CARDS) == (("judge.judge",), ("judge.mean_of",))
