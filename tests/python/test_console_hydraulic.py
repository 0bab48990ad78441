"""Commands and parts about pump, line pressure and cooler."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
import trainwright
from click.testing import CliRunner, Result
from trainwright.cli import shop
from trainwright.parts import Records
from trainwright.parts.hydraulic import cooler_parts, line_parts, pattern_parts, pump_parts

DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY, FLUIDS, FLEET = (str(DEMO / f"{name}.toml") for name in ("family", "fluids", "fleet"))
J13 = [part for reading in ("1 idle 85C 405kPa", "2 idle 85C 300kPa", "3 idle 85C 295kPa", "5 idle 85C 400kPa", "R idle 85C 395kPa") for part in ("--read", reading)]


def run(*arguments: str) -> Result:
    return CliRunner().invoke(shop, list(arguments))


def answer(*arguments: str) -> dict[str, Any]:
    result = run(*arguments, "--json")
    assert result.exit_code == 0, result.output
    found: dict[str, Any] = json.loads(result.output)
    return found


@pytest.mark.parametrize(
    ("truck", "holds_third", "needs_kpa", "chance"),
    [("T12", "NOT PROVEN", 1408.4078763394746, 0.7061541554683566), ("T13", "NO-GO", 1757.9348988641736, 0.005628182635219192)],
)
def test_j3_in_every_gear(truck: str, holds_third: str, needs_kpa: float, chance: float) -> None:
    found = answer("pressure", FAMILY, "--fleet", FLEET, "--truck", truck, "--gauge", "1470kPa", "--gauge-full-scale", "2500kPa")
    third = found["gears"]["3"]
    assert third["governs"] == "C1"
    assert third["needed"]["strong_spring_kpa"] == pytest.approx(needs_kpa, rel=1e-5)
    assert third["chance"] == pytest.approx(chance, rel=1e-5)
    assert third["verdict"] == holds_third
    assert ("3" in found["holds"]) is False
    assert found["gears"]["8"]["verdict"] == "GO"
    assert (third["control_spare_kpa"] < 0) == (truck == "T13")


def test_gauges_in_psi_and_reverse_with_its_own_reading() -> None:
    metric = answer("pressure", FAMILY, "--variant", "heron", "--gauge", "1820kPa", "--gauge-reverse", "1975kPa", "--turbine", "900Nm")
    shop_units = answer("pressure", FAMILY, "--variant", "heron", "--gauge", "263.97psi", "--gauge-reverse", "286.45psi", "--turbine", "663.8lbft")
    assert metric["gears"]["R"]["reading_kpa"]["value"] == 1975.0
    for gear, found in metric["gears"].items():
        assert shop_units["gears"][gear]["spare_kpa"] == pytest.approx(found["spare_kpa"], abs=1.0)
    assert set(metric["stated"]) == {"forward", "reverse"}


def test_a_low_gauge_is_judged_with_the_class_of_the_gauge() -> None:
    low = answer("pressure", FAMILY, "--variant", "teal", "--gauge", "1390kPa", "--gauge-full-scale", "2500kPa", "--turbine", "500Nm")
    assert low["stated"]["forward"]["verdict"] == "NOT PROVEN"
    sure = answer("pressure", FAMILY, "--variant", "teal", "--gauge", "1300kPa", "--gauge-full-scale", "2500kPa", "--turbine", "500Nm")
    assert sure["stated"]["forward"]["verdict"] == "NO-GO"


def test_j13_the_circuit_and_the_reading_that_separates() -> None:
    found = answer("pressure", FAMILY, "--variant", "teal", "--gauge-full-scale", "2500kPa", *J13)
    first, second, third = found["suspects"][:3]
    assert {first["kind"], second["kind"]} == {"circuit", "circuit when hot"}
    assert first["element"] == second["element"] == "C1" and first["share"] == second["share"] > 0.45
    assert third["share"] < 0.01 and (first["fits"], first["against"]) == (5, 0)
    assert found["next"]["reading"].endswith("cold") and found["next"]["bits"] > 0.5
    assert found["untested"] == []
    assert "no proof" in found["answer"]


@pytest.mark.parametrize(
    ("readings", "kind"),
    [
        (["1 idle 85C 300kPa", "3 idle 25C 295kPa", "7 idle 85C 300kPa", "1 stall 60C 1250kPa"], "supply"),
        (["1 idle 85C 300kPa", "3 idle 85C 295kPa", "7 idle 85C 300kPa", "1 idle 20C 400kPa", "3 idle 20C 405kPa", "3 stall 85C 1500kPa"], "supply at hot idle"),
        (["1 idle 85C 400kPa", "1 stall 85C 1200kPa", "3 idle 85C 405kPa", "3 stall 85C 1180kPa"], "boost"),
        (["1 idle 85C 600kPa", "1 stall 85C 1900kPa", "R idle 85C 640kPa"], "stuck high"),
        (["1 idle 85C 600kPa", "1 stall 85C 1500kPa", "R idle 85C 640kPa"], "high at idle"),
        (["1 idle 85C 400kPa", "1 stall 85C 1500kPa", "R idle 85C 405kPa"], "nothing"),
    ],
)  # fmt: skip
def test_patterns_point_where_the_trade_looks(readings: list[str], kind: str) -> None:
    """Low everywhere: pump, filter, regulator; low in one range only: its leak (a workshop manual, read); the rest common practice."""
    found = answer("pressure", FAMILY, "--variant", "teal", "--gauge-full-scale", "2500kPa", *(part for one in readings for part in ("--read", one)))
    assert found["suspects"][0]["kind"] == kind


def test_a_pump_at_a_hot_idle() -> None:
    found = answer("pump", FAMILY, "--variant", "teal", "--fluids", FLUIDS, "--fluid", "hazel", "--at", "90±1C", "--pressure", "1700kPa")
    worst = found["worst"]
    assert worst["flow"]["theoretical_l_min"] == pytest.approx(11.88) and worst["flow"]["leak_l_min"] == pytest.approx(6.63)
    assert worst["judgment"]["reading"]["value"] == pytest.approx(11.88 - 6.63 - 4.0)
    assert worst["least_speed_rpm"] == pytest.approx((4.0 + 6.63) * 1000 / 19.8)
    printed = run("pump", FAMILY, "--variant", "teal", "--fluids", FLUIDS, "--fluid", "hazel", "--at", "90C", "--pressure", "1700kPa").output
    # 1.25 L/min through a sharp edge at 1700 kPa and 812 kg/m3: A = Q/(0.611 sqrt(2 dp/rho)), by hand 0.819 mm.
    assert "0.82 mm (0.032 in)" in printed
    hot = answer("pump", FAMILY, "--variant", "teal", "--fluids", FLUIDS, "--fluid", "hazel", "--at", "90C", "--at", "248F", "--demand", "1gal/min")
    assert hot["worst"]["range"] == "R, full pressure" and hot["worst"]["temp_c"] == pytest.approx(120)
    assert hot["cases"][0]["duty"]["demand_l_min"]["value"] == pytest.approx(3.785411784)
    assert len(hot["cases"]) == 6


def test_clearances_of_a_pump_need_their_own_limits() -> None:
    common = ("pump", FAMILY, "--fluids", FLUIDS, "--fluid", "alder", "--at", "90C")
    found = answer(*common, "--clearance", "side=2.4±0.2thou", "--new", "side=0.035±0.005mm", "--limit", "side=0.1mm")
    side = found["clearances"][0]
    assert side["judgment"]["verdict"] == "GO" and side["leak"]["ratio"] == pytest.approx((2.4 * 0.0254 / 0.035) ** 3)
    for wrong, says in (
        (("--clearance", "side=0.06mm"), "there is no general limit"),
        (("--limit", "tip=0.3mm"), "which was not measured"),
        (("--clearance", "side=0.06"), "no unit"),
    ):
        result = run(*common, *wrong)
        assert result.exit_code == 2 and says in result.output


def test_j12_cooler_by_temperature_and_not_without() -> None:
    caught = ("cooler", FLUIDS, "--caught", "1.00±0.02L", "--seconds", "20.0±0.3s")
    found = answer(*caught, "--at", "68±1C", "--fluid", "alder")
    assert found["check"]["flow_l_min"]["value"] == pytest.approx(3.0)
    assert found["check"]["least"]["least_l_min"] == pytest.approx(5.06)
    assert found["check"]["judgment"]["verdict"] == "NO-GO"
    assert found["quart_may_take_s"] == pytest.approx(60 * 0.946352946 / 5.06)
    assert found["at_reference"]["flow_l_min"]["value"] > 3.0
    for at in ((), ("--at", "20C"), ("--at", "230F")):
        not_judged = answer(*caught, *at)
        assert not_judged["judgment"] is None and not not_judged["decisions"]
        assert "Not judged" in not_judged["answer"]
    assert answer(*caught, "--at", "33C")["check"]["judgment"]["verdict"] == "GO"


def test_the_sheet_for_the_bench_has_room_for_the_reading() -> None:
    result = run("cooler", FLUIDS)
    assert result.exit_code == 0 and "quart at" in result.output and "____" in result.output


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("pressure", FAMILY, "--variant", "teal"), "--read"),
        (("pressure", FAMILY, "--variant", "teal", "--gauge", "1470kPa"), "give --turbine"),
        (("pressure", FAMILY, "--read", "2 hot 85C 300kPa"), "write gear, idle or stall"),
        (("pressure", FAMILY, "--read", "2 idle 85 300kPa"), "has no unit"),
        (("pressure", FAMILY, "--read", "22 idle 85C 300kPa"), "the train has no gear"),
        (("pressure", FAMILY, "--kept", "0.2", "--read", "2 idle 85C 300kPa"), "kept"),
        (("cooler", FLUIDS, "--caught", "1L"), "together"),
        (("cooler", FLUIDS, "--caught", "1L", "--seconds", "20", "--reference", "90C"), "--reference needs --fluid"),
        (("pump", FAMILY, "--fluids", FLUIDS, "--fluid", "beech", "--at", "90C"), "beech"),
        (("pump", FAMILY, "--fluids", FLUIDS, "--fluid", "alder", "--at", "90"), "no unit"),
    ],
)
def test_a_refusal_names_the_mend(arguments: tuple[str, ...], says: str) -> None:
    result = run(*arguments)
    assert result.exit_code != 0
    assert says in result.output or says in str(result.exception)


@pytest.mark.parametrize(
    "arguments",
    [
        ("pump", FAMILY, "--fluids", FLUIDS, "--fluid", "alder", "--at", "90±1C", "--clearance", "side=0.06±0.004mm", "--new", "side=0.035±0.005mm", "--limit", "side=0.1mm"),
        ("pressure", FAMILY, "--variant", "teal", "--gauge", "1470±23kPa", "--turbine", "660Nm", *J13),
        ("cooler", FLUIDS, "--caught", "1qt", "--seconds", "20s", "--at", "150F", "--fluid", "hazel"),
    ],
)  # fmt: skip
def test_answers_are_explained_and_printed(arguments: tuple[str, ...], tmp_path: Path) -> None:
    page = tmp_path / "page.html"
    result = run(*arguments, "--explain", "--page", str(page))
    assert result.exit_code == 0, result.output
    assert "How it is worked out" in result.output and "not given" not in result.output
    text = page.read_text()
    assert "Hot fluid burns" in text and "<svg" not in text
    assert "rating" not in re.sub(r"not a rating|brake ratings|axle and brake|ratings", "", result.output)


def test_parts_of_the_report_draw_their_pictures() -> None:
    plots = pytest.importorskip("trainwright.report.plots")
    records = Records.read(sorted(DEMO.glob("*.toml")))
    parts = [*pump_parts(records), *line_parts(records), *pattern_parts(records), *cooler_parts(records)]
    assert [part.sheet.title.split(":")[0] for part in parts[3:]] == ["J3", "J3", "J13", "J12"]
    pictures = [draw(plots) for part in parts for draw in part.pictures.values()]
    assert len(pictures) == 3 + 2 + 1 and all(picture.startswith("<svg") for picture in pictures)
    assert parts[-1].sheet.decisions[0].verdict == "NO-GO"
    assert not list(cooler_parts(Records.read([DEMO / "jobs.toml"])))
    assert not list(pump_parts(Records.read([DEMO / "family.toml"])))
