"""How a number is worked out, on the console and in the report; and what each input does to a verdict."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import trainwright
from click.testing import CliRunner
from trainwright import Limits, Reading, judge
from trainwright.answers.turning import Turn, turning_table
from trainwright.cli import shop

DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY, FLUIDS = (str(DEMO / f"{name}.toml") for name in ("family", "fluids"))
CAPACITY = ("capacity", FAMILY, "--gauge", "1470kPa", "--gauge-full-scale", "2500kPa", "--turbine", "660Nm")
FILL = ("fill", FLUIDS, "--fluid", "alder", "--at", "50±1C", "--level", "1±0.5mm")
TIRE = ("tire", "265/65R18", "LT275/70R18", "--axle", "3.54")


def call(*arguments: str, code: int = 0) -> str:
    result = CliRunner().invoke(shop, list(arguments), catch_exceptions=False)
    assert result.exit_code == code, result.output
    return " ".join(result.output.split())


def answer(*arguments: str) -> Any:
    return json.loads(CliRunner().invoke(shop, [*arguments, "--json"], catch_exceptions=False).output)


# ---- a formula


def test_every_formula_is_listed_and_explained() -> None:
    listed = call("explain")
    for card in trainwright.cards():
        assert card.id in listed and " ".join(card.purpose.split()) in listed
        assert f"{card.id}: " in call("explain", card.id)


def test_a_chapter_is_listed_alone() -> None:
    listed = call("explain", "clutch")
    assert "clutch.capacity" in listed and "fluid." not in listed


def test_an_unknown_formula_is_refused_with_near_ones() -> None:
    assert "did you mean clutch.capacity" in call("explain", "clutch.capacty", code=2)
    assert "chapters: judge, train" in call("explain", "zzz", code=2)


def test_a_formula_as_json() -> None:
    assert answer("explain", "clutch.capacity")["equation"].startswith("T = μ z F r_m")
    assert len(answer("explain")) == len(trainwright.cards())


# ---- the formulas of an answer


@pytest.mark.parametrize("command", [CAPACITY, FILL, TIRE, ("gears", FAMILY), ("states", FAMILY), ("faults", FAMILY)])
def test_an_answer_is_worked_out(command: tuple[str, ...]) -> None:
    plain, explained = call(*command), call(*command, "--explain")
    assert "How it is worked out" not in plain and "How it is worked out" in explained
    data = answer(*command, "--explain")
    assert {entry["card"] for entry in data["explanations"]} >= set(data["formulas"])
    assert "explanations" not in answer(*command)


def test_the_worked_values_are_those_of_the_answer() -> None:
    data = answer(*CAPACITY, "--explain")
    by_card = {entry["card"]: entry for entry in data["explanations"]}
    torque = next(symbol for symbol in by_card["clutch.capacity"]["symbols"] if symbol["symbol"] == "T")
    assert torque["values"]["torque_nm"] == data["governing"]["capacity"]["torque_nm"]
    assert by_card["clutch.hold"]["judged"][0]["chance"] == data["decisions"][0]["chance"]
    missing = [symbol for symbol in by_card["clutch.capacity"]["symbols"] if not symbol["values"]]
    assert not missing, "every symbol of the capacity has its value"


@pytest.mark.parametrize("command", [CAPACITY, FILL, TIRE])
def test_no_symbol_that_stands_for_a_field_is_left_without_its_value(command: tuple[str, ...]) -> None:
    text = call(*command, "--explain").split("train.solve:")[0]  # its teeth stand in the record
    assert "not given" not in text


# ---- what turns the verdict


def test_what_each_input_does_to_the_capacity() -> None:
    """J3 of the demonstration: it holds from a friction of 0.107; to be GO at 95 % takes more."""
    data = answer(*CAPACITY)
    pressure, friction, geometry, torque = data["inputs"]
    assert sum(entry["share"] for entry in data["inputs"]) == pytest.approx(1)
    assert pressure["turns_at"] is None, "the control cannot give enough"
    assert 0.107 < friction["turns_at"] < 0.13 and friction["enough_alone"]
    assert geometry["turns_at"] is None and not geometry["enough_alone"]
    assert torque["turns_at"] < torque["value"] and torque["u"] == 0
    assert data["decisions"][0]["verdict"] == "NOT PROVEN"


def test_the_value_named_turns_the_verdict(tmp_path: Path) -> None:
    """The friction that the table names, written into the record, is GO; a hair less is not."""
    named = answer(*CAPACITY)["inputs"][1]["turns_at"]
    written = Path(FAMILY).read_text()
    assert "best = 0.112" in written
    for friction, verdict in ((named + 1e-9, "GO"), (named - 1e-6, "NOT PROVEN")):
        record = tmp_path / "family.toml"
        record.write_text(written.replace("best = 0.112", f"best = {friction!r}", 1))
        assert answer("capacity", str(record), *CAPACITY[2:])["decisions"][0]["verdict"] == verdict


def test_what_each_input_does_to_a_fill() -> None:
    temperature, level, area = answer(*FILL)["inputs"]
    assert temperature["turns_at"] > 50 and level["turns_at"] < 1 and area["turns_at"] is None
    assert "What each input does to the verdict" in call(*FILL)
    for off, verdict in ((1e-4, "GO"), (-1e-4, "NOT PROVEN")):
        at = f"{temperature['turns_at'] + off:.6f}±1C"
        assert answer("fill", FLUIDS, "--fluid", "alder", "--at", at, "--level", "1±0.5mm")["decisions"][0]["verdict"] == verdict


def test_words_of_a_turn() -> None:
    def judged(value: float) -> judge.Judgment:
        return judge.judge(Reading(value=value, u=0.1), Limits(lower=1.0, upper=3.0), judge.Rule.conformance(0.95))

    def said(now: float, lower: float = 0.0, upper: float = 9.0) -> str:
        budget = judge.combine([judge.Input(sensitivity=1.0, u=0.1)])
        table, _ = turning_table(judged(now), budget, [Turn("x", Reading(value=now, u=0.1), "mm", judged, lower, upper)])
        return table.rows[0].cells[4]

    assert said(1.0) == "from 1.16 mm or more"
    assert said(3.1) == "from 2.84 mm or less"
    assert said(1.5) == "while 1.16 mm or more"
    assert said(2.5) == "while 2.84 mm or less"
    assert said(1.0, 0.9, 1.1) == "none from 0.90 to 1.10 mm"


# ---- in the report


def test_the_report_folds_the_explanation_below_each_sheet(tmp_path: Path) -> None:
    path = tmp_path / "capacity.html"
    call(*CAPACITY, "--page", str(path))
    html = path.read_text()
    folded = html[html.index("<details>") : html.index("</details>")]
    assert folded.startswith("<details><summary>How it is worked out")
    assert "T<sub>need</sub>" in folded and "torque: 821.232 N·m" in folded and "NOT PROVEN" in folded


def test_a_relative_uncertainty_is_shown_in_percent() -> None:
    judgment = judge.judge(Reading(value=1.0, u=0.1), Limits(lower=1.0), judge.Rule.conformance(0.95))
    budget = judge.combine([judge.Input(sensitivity=2.0, u=0.05)])
    table, _ = turning_table(judgment, budget, [Turn("sizes", Reading.exact(1.0), relative=True)])
    assert table.rows[0].cells[:4] == ("sizes", "·", "5 %", "100 %")


@pytest.mark.parametrize(
    "command",
    [
        ("park", FAMILY, "--fleet", str(DEMO / "fleet.toml"), "--truck", "T16", "--grade", "20%"),
        ("one-way", FAMILY, "--variant", "teal"),
        ("one-way", FAMILY, "--variant", "wren"),
    ],
)
def test_what_turns_a_lock_turns_it(command: tuple[str, ...]) -> None:
    """The input that moves the verdict is named with the value, and the worked formulas have their values."""
    data = answer(*command, "--explain")
    turning = [entry for entry in data["inputs"] if entry["turns_at"] is not None]
    assert turning and sum(entry["share"] for entry in data["inputs"]) == pytest.approx(1)
    assert {entry["card"] for entry in data["explanations"]} >= set(data["formulas"])
    worked = [entry for entry in data["explanations"] if any(symbol["values"] for symbol in entry["symbols"])]
    assert len(worked) >= 3
