"""The command that ranks a fleet, and its part of the report."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
import trainwright
from click.testing import CliRunner
from trainwright import hazard, record
from trainwright.answers.ranking import fleet_sheet
from trainwright.cli import shop
from trainwright.parts.duty import ranking_parts
from trainwright.parts.frame import Records

DEMO = Path(trainwright.__file__).parent / "demo"
FLEET = str(DEMO / "fleet.toml")
FILES = [FLEET, "--family", str(DEMO / "family.toml")]


def run(*arguments: str) -> str:
    result = CliRunner().invoke(shop, list(arguments), catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return " ".join(result.stdout.split())


def test_the_fleet_in_order_with_reason_and_action() -> None:
    text = run("fleet", *FILES)
    assert "By falling damage: T13, T12, T15, T19, T16, T14, T17, T11, T18." in text
    assert "P2 is the worst set of every truck. Over their rating: T13 (1.19)." in text
    assert "T19 4 to 7" in text and "shows 90.2 at" in text and "120.6" in text
    assert "it does not promise a life" in text
    assert hazard.caution("towing") in text


def test_the_same_for_a_program() -> None:
    found = json.loads(run("fleet", *FILES, "--slope", "5", "--slope", "8", "--json"))
    assert found["ranking_by_slope"]["8"] == ["T13", "T12", "T15", "T19", "T16", "T17", "T14", "T11", "T18"]
    first, by_name = found["trucks"][0], {truck["truck"]: truck for truck in found["trucks"]}
    assert first["worst_over_rated"] == pytest.approx(1.1915461349886074, rel=1e-4)
    assert first["worst_at"] == {"grade_pct": 3.0, "speed_km_h": 88.0, "gear": "6"}
    assert by_name["T19"]["damage_interval"] == pytest.approx([0.008146348874367285, 0.04437063675964664], rel=1e-3)
    assert (by_name["T19"]["first_place"], by_name["T19"]["last_place"]) == (4, 7)
    assert by_name["T11"]["damage"]["P4"] == 0
    assert found["cautions"] and found["not_checked"]


def test_how_it_is_worked_out_has_the_numbers_of_the_first_truck() -> None:
    text = run("fleet", *FILES, "--explain")
    assert "duty.damage: Damage that a duty collects" in text and "total: 0.35289" in text


def test_a_truck_without_an_answer_can_take_every_place() -> None:
    text = (DEMO / "fleet.toml").read_text().replace("trailer_kg = 1600", "trailer_kg = 90000")
    fleet = record.Fleet.from_toml(text)
    sheet = fleet_sheet(record.load(DEMO / "family.toml"), fleet, slopes=[6.5], title="")
    heavy = next(truck for truck in sheet.data["trucks"] if truck["truck"] == "T18")
    assert heavy["damage"] is None and (heavy["first_place"], heavy["last_place"]) == (1, 9)
    assert "no gear holds" in heavy["because"]
    assert sheet.data["ranking"][-1] == "T18"


def test_the_part_of_the_report_has_its_pictures() -> None:
    from trainwright.report import plots

    (part,) = ranking_parts(Records.read(DEMO / f"{name}.toml" for name in ("family", "fleet", "jobs")))
    assert part.sheet.title.startswith("J10")
    pictures = [draw(plots) for draw in part.pictures.values()]
    assert len(pictures) == 2 and all(picture.startswith("<svg") for picture in pictures)
    assert "T13" in pictures[0] and "P2" in pictures[1]
    assert not list(ranking_parts(Records.read([DEMO / "family.toml"])))


# ---- wheels against GPS, life of the fluid


def test_one_reading_of_a_truck_with_other_tires() -> None:
    text = run("wheels", FLEET, "--truck", "T16", "--true", "100±0.3km/h", "--shown", "90.2±0.3km/h")
    assert "Tire f35 explains it" in text
    assert "T16 against GPS" in text and hazard.caution("wrong tire") in text
    found = json.loads(run("wheels", FLEET, "--truck", "T17", "--true", "62.1mph", "--shown", "74.9±0.2mph", "--json"))
    assert (found["kind"], found["best"]) == ("explained", "axle 4.27")
    assert found["causes"]["axle 4.27"]["expected"] == pytest.approx(0.8290398126463702)


def test_a_sensor_needs_the_gears_to_be_told_from_an_axle() -> None:
    arguments = ["wheels", FLEET, "--truck", "T16", "--true", "100±0.5km/h", "--shown", "120.6±0.5km/h", "--sensor", "34:41"]
    assert "cannot be told apart" in run(*arguments)
    with_gears = [*arguments, "--input-read", "2000±2rpm", "--output-read", "1929±2rpm", "--ratio", "1.25"]
    assert "Sensor wheel of 41 teeth for 34 explains it" in run(*with_gears)


def test_a_drive_with_gaps(tmp_path: Path) -> None:
    rows = ["gps_km_h,speed_km_h"]
    for second in range(1200):
        gps = 70 + 30 * (second % 200) / 200
        rows.append(f"{gps:.2f},{round(gps / 1.1089) if second % 10 else ''}")
    path = tmp_path / "drive.csv"
    path.write_text("\n".join(rows))
    text = run("wheels", FLEET, "--truck", "T16", "--drive", str(path))
    assert "Tire f35 explains it" in text and "120 missing" in text


@pytest.mark.parametrize(
    ("arguments", "mend"),
    [
        (["--true", "100km/h"], "give --true and --shown, or --drive"),
        (["--true", "100km/h", "--shown", "90±1km/h", "--ratio", "1"], "together"),
        (["--true", "100km/h", "--shown", "90±1km/h", "--sensor", "40"], "as 40:50"),
    ],
)
def test_what_is_missing_is_said(arguments: list[str], mend: str) -> None:
    result = CliRunner().invoke(shop, ["wheels", FLEET, "--truck", "T16", *arguments])
    assert result.exit_code == 2 and mend in " ".join(result.output.replace("│", " ").split())


def test_life_of_the_fluid() -> None:
    text = run("fluid-life", "--bin", "175F=120", "--bin", "195F=300", "--bin", "215F=100", "--life", "2500", "--unknown", "40")
    # 120 + 2 × 300 + 4 × 100 of 2500 h
    assert "45 % of its life is used in 520 h." in text
    assert "between 46 and 51 %" in text
    assert "common practice, no source" in text and hazard.caution("hot fluid") in text
