"""The console command."""

from __future__ import annotations

import json
import math
import subprocess
import sys
from pathlib import Path
from typing import Any

import click
import pytest
import trainwright
from click.testing import CliRunner
from trainwright.cli import shop


# ---- commands on the demonstration


DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY, FLUIDS, FLEET = (str(DEMO / f"{name}.toml") for name in ("family", "fluids", "fleet"))


def call(*arguments: str) -> str:
    result = CliRunner().invoke(shop, list(arguments), catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.output


def answer(*arguments: str) -> Any:
    return json.loads(call(*arguments, "--json"))


def test_gears_as_expected_of_the_scenario() -> None:
    found = {gear["id"]: gear for gear in answer("gears", FAMILY, "--variant", "teal")["gears"]}
    assert found["1"]["ratio_exact"] == "854760/201019"
    assert found["R"]["ratio_exact"] == "-270/91"
    assert found["3"]["shares"]["C1"] == pytest.approx(1.187234, abs=1e-6)
    assert found["5"]["step_to_next"] == pytest.approx(1.3829787, abs=1e-6)
    heron = {gear["id"]: gear["ratio_exact"] for gear in answer("gears", FAMILY, "--variant", "heron")["gears"]}
    assert heron["4"] == "1339/763"


def test_published_ratios_stand_beside_the_computed_ones() -> None:
    path = str(DEMO / "trains" / "crossed_two_set_four_speed_a.toml")
    found = {gear["id"]: gear for gear in answer("gears", path)["gears"]}
    assert found["1"]["published_agrees"] is True
    assert found["4"]["published_agrees"] is False, "the misprint must show"
    assert "misprint" in call("gears", path)


def test_losses_come_only_from_a_stated_mesh_efficiency() -> None:
    """Efficiencies printed for 0.98 from sun to ring, two meshes: encyclopedia table of the four-set eight-speed."""
    path = str(DEMO / "trains" / "four_set_eight_speed.toml")
    assert "losses" not in answer("gears", path)
    found = answer("gears", path, "--mesh-efficiency", str(math.sqrt(0.98)))["losses"]
    for gear, efficiency, torque_ratio in [("1", 0.9843, 4.6217), ("4", 0.9867, 1.6446), ("R", 0.9460, -3.1186)]:
        assert found[gear]["drive"]["efficiency"] == pytest.approx(efficiency, abs=5.1e-5)
        assert found[gear]["drive"]["torque_ratio"] == pytest.approx(torque_ratio, abs=5.1e-5)
    assert found["R"]["largest_power"] == pytest.approx(1.5275, abs=5e-5)
    assert found["R"]["remark"] == "power circulates, up to 1.53 of the input's"
    corrib = answer("gears", FAMILY, "--mesh-efficiency", "0.99")["losses"]
    assert corrib["1"]["coast"] is None and corrib["1"]["remark"] == "no coast: a one-way clutch overruns"
    assert 0.9 < corrib["1B"]["coast"]["efficiency"] < 1


def test_a_self_locking_gear_says_so(tmp_path: Path) -> None:
    """A stepped set whose suns turn almost alike: basic ratio 51 * 49 / 50^2 (independent script, tests/train_losses.rs)."""
    record = tmp_path / "locking.toml"
    record.write_text(
        """
[train]
members = ["in", "out", "case", "held"]
input = "in"
output = "out"
fixed = "case"
[[train.set]]
id = "P1"
kind = "stepped"
teeth = { sun = 50, planet_1 = 51, planet_2 = 50, sun_2 = 49 }
joins = { sun = "in", sun_2 = "held", carrier = "out" }
[train.element]
B1 = { kind = "brake", joins = ["held", "case"] }
[[train.gear]]
id = "1"
closed = ["B1"]
"""
    )
    found = answer("gears", str(record), "--mesh-efficiency", str(math.sqrt(0.98)))["losses"]["1"]
    assert found["drive"]["self_locking"] and found["drive"]["efficiency"] == 0
    assert not found["coast"]["self_locking"] and found["coast"]["efficiency"] == pytest.approx(0.01962, abs=5e-6)
    assert found["remark"] == "self-locking: cannot drive"
    assert found["rolling_power"] == pytest.approx(2499, abs=0.5)
    assert "self-locking: cannot drive" in " ".join(call("gears", str(record), "--mesh-efficiency", "0.99").split())


def test_the_forbidden_state_is_found() -> None:
    states = answer("states", FAMILY)["states"]
    assert [state["closed"] for state in states if state["forbidden"]] == [["B2", "C1", "C2"]]
    assert "FORBIDDEN: output at 6.24 times the" in call("states", FAMILY)


@pytest.mark.parametrize(
    ("truck", "verdict", "chance", "needs_kpa", "friction"),
    [("T12", "NOT PROVEN", 0.7061541554683566, 1408.4078763394746, 0.1068642324206154),
     ("T13", "NO-GO", 0.005628182635219192, 1757.9348988641736, 0.13600902308078322)],
)  # fmt: skip
def test_j3_capacity_at_the_gauge(truck: str, verdict: str, chance: float, needs_kpa: float, friction: float) -> None:
    found = answer("capacity", FAMILY, "--gauge", "1470kPa", "--gauge-full-scale", "2500kPa", "--truck", truck, "--fleet", FLEET)
    governing = found["governing"]
    assert (governing["gear"], governing["element"]) == ("3", "C1")
    assert found["decisions"][0]["verdict"] == verdict
    assert found["decisions"][0]["chance"] == pytest.approx(chance, rel=1e-5)
    assert governing["pressure_needed"]["strong_spring_kpa"] == pytest.approx(needs_kpa, rel=1e-5)
    assert governing["friction_needed"] == pytest.approx(friction, rel=1e-5)


@pytest.mark.parametrize(("at", "excess_ml", "level_mm"), [("24C", 203.0903, 4.95505), ("82C", -295.7634, -7.82341), ("75.2F", 203.0903, 4.95505)])
def test_j5_fluid_level(at: str, excess_ml: float, level_mm: float) -> None:
    found = answer("fill", FLUIDS, "--fluid", "alder", "--at", at, "--level", "0mm")
    assert found["adjustment"]["excess_ml"]["reading"]["value"] == pytest.approx(excess_ml, abs=0.5)
    assert found["level_at_reference"]["level_mm"] == pytest.approx(level_mm, abs=0.05)
    assert found["loss_to_pickup_ml"] == pytest.approx(995.0833, abs=0.5)
    assert found["gear_dips_at_c"] == pytest.approx(134.537, abs=0.2)


@pytest.mark.parametrize(
    ("listed", "variant", "approval", "says"),
    [
        ('["wren", "heron"]', "heron", "approved", ""),
        ('["wren", "heron"]', "teal", "NOT approved", "alder for the linings of teal: NOT approved by the record. The record approves alder for wren, heron."),
        ("[]", "teal", "not stated", "alder for the linings of teal: not stated by the record."),
        (None, "teal", "not stated", "alder for the linings of teal: not stated by the record."),
    ],
)
def test_a_fill_is_right_only_with_an_approved_fluid(tmp_path: Path, listed: str | None, variant: str, approval: str, says: str) -> None:
    given = 'friction_approved = ["wren", "heron"]\n'
    written = Path(FLUIDS).read_text()
    assert given in written
    record = tmp_path / "fluids.toml"
    record.write_text(written.replace(given, f"friction_approved = {listed}\n" if listed else ""))
    found = answer("fill", str(record), "--fluid", "alder", "--at", "47C", "--level", "0mm", "--variant", variant)
    assert found["linings"] == {"variant": variant, "fluid": "alder", "approval": approval}
    assert found["answer"].startswith(says)
    assert [decision["verdict"] for decision in found["decisions"]] == (["GO"] if approval == "approved" else [])
    unasked = answer("fill", str(record), "--fluid", "alder", "--at", "47C", "--level", "0mm")
    assert unasked["linings"] is None
    assert "Whether the fluid is the right one for the linings, and its condition." in unasked["not_checked"]


def test_j7_which_set_is_fitted() -> None:
    counts = ("--gear", "4", "13360", "5710", "--gear", "5", "13360", "7245")
    found = answer("which", FAMILY, "--variant", "teal", "--variant", "heron", *counts, "--input-teeth", "40", "--output-teeth", "30")
    fourth, fifth = found["counts"]
    assert fourth["ratio"]["u"] == pytest.approx(0.0001364429365, rel=1e-6)
    assert fourth["away_in_u"]["teal"] == pytest.approx(14.223123, abs=1e-3)
    assert fourth["away_in_u"]["heron"] == pytest.approx(0.723364, abs=1e-3)
    assert not fifth["can_tell"]
    assert list(found["excluded"]) == ["teal"]


def test_tire_change_in_both_systems() -> None:
    metric = answer("tire", "265/65R18", "LT275/70R18", "--axle", "3.54", "--at", "100km/h")
    shop_units = answer("tire", "265/65R18", "LT275/70R18", "--axle", "3.54", "--at", "62.13711922mph")
    shown = metric["speedometer"]["shown_km_h"]["value"]
    assert shown == pytest.approx(100 * 801 / 843, rel=2e-3)
    assert shop_units["speedometer"]["shown_km_h"]["value"] == pytest.approx(shown, rel=1e-8)


def test_the_demonstration_agrees_with_the_scenario() -> None:
    sheets = {sheet["title"].split(":")[0] + sheet["title"][-11:]: sheet for sheet in answer("demo")}
    shown = {title: sheet["speedometer"]["shown_km_h"]["value"] for title, sheet in sheets.items() if "speedometer" in sheet}
    assert sorted(round(value, 1) for value in shown.values()) == [90.2, 120.6]
    trains = next(sheet for sheet in sheets.values() if "trains" in sheet)
    assert (trains["agreeing"], trains["of"], len(trains["trains"])) == (116, 117, 18)


def test_every_answer_says_what_was_not_checked() -> None:
    for sheet in answer("demo"):
        assert sheet["not_checked"], sheet["title"]
        assert sheet["formulas"], sheet["title"]


def test_a_changed_tooth_count_changes_the_ratio(tmp_path: Path) -> None:
    call("demo", "--files-to", str(tmp_path / "shop"))
    path = tmp_path / "shop" / "family.toml"
    path.write_text(path.read_text().replace("sun = 36, planet = 29, ring = 94", "sun = 38, planet = 28, ring = 94"))
    before, after = (answer("gears", file)["gears"][0]["ratio_exact"] for file in (FAMILY, str(path)))
    assert before != after


# ---- refusals and exit codes


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, "-m", "trainwright", *arguments], capture_output=True, text=True)


@pytest.mark.parametrize(
    ("arguments", "code", "mend"),
    [
        (("gears", FAMILY, "--variant", "blue"), 2, "known: teal, wren, heron"),
        (("gears", FLEET), 2, "give a family or a train file"),
        (("gears", FAMILY, "--mesh-efficiency", "1.1"), 2, "mesh.external = 1.1: outside 0 to 1"),
        (("gears", "nowhere.toml"), 2, "does not exist"),
        (("capacity", FAMILY, "--gauge", "213bar", "--turbine", "660nm"), 2, "give a number and kPa or psi"),
        (("capacity", FAMILY, "--gauge", "213psi"), 2, "give --turbine, or --truck with --fleet"),
        (("capacity", FAMILY, "--gauge", "213psi", "--truck", "T77", "--fleet", FLEET), 2, "it has T11"),
        (("capacity", FLUIDS, "--gauge", "213psi", "--turbine", "660nm"), 2, "give a family record"),
        (("fill", FLUIDS, "--fluid", "water", "--at", "24C", "--level", "0mm"), 2, "alder"),
        (("fill", FLUIDS, "--fluid", "alder", "--at", "24C"), 2, "--level"),
        (("fill", FLUIDS, "--fluid", "alder", "--at", "24kPa", "--level", "0mm"), 2, "give a number and °C or °F"),
        (("capacity", FAMILY, "--gauge", "213", "--turbine", "660nm"), 2, "213 has no unit"),
        (("report", FLUIDS), 2, "give a family or a train"),
        (("which", FAMILY, "--gear", "9", "1000", "400"), 2, "they share 1, 1B, 2"),
        (("tire", "265/65R18", "junk", "--axle", "3.54"), 2, "'junk' is no tire size"),
        (("tire", "265/65R18", "265/65R18", "--axle", "3,54"), 2, "for example 3.54"),
        (("tire", "265/65R18", "265/65R18", "--axle", "3.54", "--new-axle", "0"), 2, "above 0"),
        (("tire", "265/65R18", "265/65R18", "--axle", "0"), 2, "above 0"),
    ],
)
def test_a_refusal_names_the_mend_and_ends_with_its_code(arguments: tuple[str, ...], code: int, mend: str) -> None:
    done = run(*arguments)
    assert done.returncode == code
    assert mend in " ".join(done.stderr.split())
    assert "Traceback" not in done.stderr
    assert not done.stdout


def test_check_ends_with_3_for_a_record_with_errors(tmp_path: Path) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text(Path(FAMILY).read_text().replace("ring = 90", "rign = 90"))
    done = run("check", str(bad))
    assert done.returncode == 3
    assert "train.set[0].teeth.rign" in done.stdout
    assert "did you mean ring?" in done.stdout
    assert run("check", FAMILY, FLUIDS, FLEET).returncode == 0
    assert json.loads(run("check", str(bad), "--json").stdout)[0]["line"] == 20


def test_every_command_explains_itself() -> None:
    for name, command in shop.commands.items():
        text = call(name, "--help")
        assert command.help and command.help.split(".")[0].split("\n")[0][:30] in " ".join(text.split())


def test_a_speed_may_carry_its_unit() -> None:
    plain, typed = (answer("capacity", FAMILY, "--gauge", "1470kPa", "--turbine", "660Nm", "--turbine-speed", speed, "--oil-density", "800") for speed in ("2000", "2000rpm"))
    assert plain == typed


OPTIONS = {
    "variant": "Variant",
    "instruments": "nstruments",
    "fleet": "Fleet file",
    "explain": "how it is worked out",
    "page": "page to print",
    "json": "JSON",
}
"""Options that mean the same in every command, by a piece of their help."""


def test_options_of_one_name_mean_the_same_in_every_command() -> None:
    kinds: dict[str, set[str]] = {}
    for command in shop.commands.values():
        for option in command.params:
            if isinstance(option, click.Option):
                name = option.opts[-1].lstrip("-")
                assert option.help or name in ("help", "output"), f"{command.name} --{name} has no help"
                assert OPTIONS.get(name, "") in (option.help or ""), f"{command.name} --{name}: {option.help}"
                kinds.setdefault(name, set()).add(type(option.type).__name__)
    mixed = {name: kind for name, kind in kinds.items() if len(kind) > 1 and name not in ("tire", "element", "seen")}
    assert not mixed, "one name, several kinds of value"


def test_answers_of_every_command_can_be_explained_and_printed() -> None:
    without = {"explain", "check", "report", "demo"}
    for name, command in shop.commands.items():
        options = {option.opts[-1] for option in command.params}
        assert name in without or options >= {"--explain", "--page", "--json"}, name
