"""The console commands about end play, clutch clearance and tolerance chains, and their part of the report."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import trainwright
from click.testing import CliRunner
from trainwright.cli import shop
from trainwright.parts import Records
from trainwright.parts.stack import choice_parts
from trainwright.report import plots

DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY, INSTRUMENTS = (str(DEMO / f"{name}.toml") for name in ("family", "instruments"))
GAP = ("shim", FAMILY, "--gap", "2.153mm±0.010mm", "--gasket", "0mm±0.028mm")
B1 = ("ring", FAMILY, "--element", "B1")


def call(*arguments: str) -> str:
    result = CliRunner().invoke(shop, list(arguments), catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return " ".join(result.output.split())


def answer(*arguments: str) -> Any:
    result = CliRunner().invoke(shop, [*arguments, "--json"], catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return json.loads(result.output)


def refused(*arguments: str) -> str:
    result = CliRunner().invoke(shop, list(arguments))
    assert result.exit_code != 0
    return " ".join(f"{result.output} {result.exception}".split())


def size_of(found: Any, place: str) -> float:
    return float(found["pieces"][found["choice"][place]]["piece"]["thickness_mm"]["value"])


# ---- shim


def test_the_two_rules_are_named_and_explained() -> None:
    found = answer(*GAP)
    assert (size_of(found, "nearest_target"), size_of(found, "least_risk"), size_of(found, "position")) == (1.85, 1.70, 1.85)
    by_size = {round(row["piece"]["thickness_mm"]["value"], 2): row["cold"] for row in found["pieces"]}
    # The demonstration's answers, computed independently for it.
    for size, play, chance in [(1.55, 0.603, 0.4627264), (1.70, 0.453, 0.9999977), (1.85, 0.303, 0.9993420), (2.00, 0.153, 0.0713392)]:
        assert by_size[size]["reading"]["value"] == pytest.approx(play)
        assert by_size[size]["chance"] == pytest.approx(chance, abs=1e-6)
        assert by_size[size]["reading"]["u"] == pytest.approx(0.0320624, abs=1e-6)
    text = call(*GAP)
    assert "Rule of the choice: nearest target. Least risk would choose 1.700 mm" in text
    assert "nearer the middle of the window" in text
    assert "1.850 mm leaves 0.553 mm and 1.700 mm leaves 0.703 mm: that speaks for 1.850 mm" in text
    other = call(*GAP, "--by", "least-risk")
    assert "Fit shim 1.700 mm" in other and "Nearest target would choose 1.850 mm" in other


def test_lengths_come_back_as_they_were_typed() -> None:
    text = call("shim", FAMILY, "--gap", "84.76thou±0.4thou", "--gasket", "0mm±0.028mm")
    assert "Fit shim 72.8 thou: it leaves 11.9 thou of end play (7.9 to 23.6 thou wanted" in text
    inches = call("shim", FAMILY, "--gap", "0.0848in")
    assert "Fit shim 0.0728 in: it leaves 0.0120 in" in inches
    assert "They are taken as exact" in inches and "gap" in inches


def test_missing_stock_is_said_and_may_be_typed_in_another_unit() -> None:
    for missing in ("1.85mm", "72.8thou", "0.0728in"):
        text = call(*GAP, "--missing", missing)
        assert "Fit shim 1.700 mm" in text
        assert "1.850 mm would be chosen before it, but is not in stock." in text
    assert "1.8 mm (0.071 in) is not on the list, which has 1.100, 1.250" in refused(*GAP, "--missing", "1.8mm")
    none = call("shim", FAMILY, "--gap", "1.00mm±0.01mm")
    assert "No shim in stock leaves 0.200 to 0.600 mm. A thickness of 0.400 to 0.800 mm would; 0.640 mm hits the 0.360 mm aimed at." in none
    assert "GO end play" not in none
    gone = call("shim", FAMILY, "--gap", "1.55mm±0.01mm", "--missing", "1.10mm", "--missing", "1.25mm")
    assert "would do, but is not in stock" in gone


def test_the_warm_unit_may_count() -> None:
    text = call(*GAP, "--by", "least-risk", "--warm-window", "0.30mm", "0.75mm", "--warm-counts")
    assert "Fit shim 1.850 mm" in text and "least risk, cold and warm together" in text
    assert answer(*GAP, "--warm", "20C")["warm"]["growth_mm"]["value"] == pytest.approx(0, abs=1e-12)
    assert answer(*GAP, "--parts-hotter", "40K")["warm"]["growth_mm"]["value"] < answer(*GAP)["warm"]["growth_mm"]["value"]
    assert "needs --warm-window" in refused(*GAP, "--warm-counts")


def test_a_reading_with_a_shim_in_place_gives_the_same_choice() -> None:
    found = answer("shim", FAMILY, "--play", "0.603mm±0.010mm", "--fitted", "1.55mm", "--gasket", "0mm±0.028mm")
    assert size_of(found, "nearest_target") == 1.85
    # The fitted shim is known by the list: its uncertainty counts, too.
    assert found["room"]["reading_mm"]["u"] == pytest.approx((0.010**2 + 0.028**2 + 0.012**2) ** 0.5)


def test_what_to_measure_first_and_the_chance_that_it_settles() -> None:
    open_case = ("shim", FAMILY, "--gap", "2.103mm±0.010mm", "--gasket", "0mm±0.028mm", "--missing", "1.70mm", "--missing", "1.85mm")
    found = answer(*open_case, "--micrometer", "0.004mm")
    assert found["decisions"][0]["verdict"] == "NOT PROVEN"
    first = found["measure"][0]
    assert (first["part"], round(first["share"], 2)) == ("gasket", 0.76)
    assert first["u_measured"] == 0.004 and 0.3 < first["chance_go"] < 0.9
    assert "measure the gasket to a standard uncertainty of" in found["decisions"][0]["settle"]


# ---- ring


def test_rings_of_the_demonstration() -> None:
    found = answer(*B1, "--reading", "2.27mm±0.011mm", "--fitted", "2.90mm")
    assert (size_of(found, "nearest_target"), size_of(found, "least_risk")) == (3.40, 3.40)
    by_size = {round(row["piece"]["thickness_mm"]["value"], 2): row["cold"] for row in found["pieces"]}
    assert by_size[3.15]["chance"] == pytest.approx(0.2013036, abs=1e-6)
    assert by_size[3.65]["reading"]["value"] == pytest.approx(1.52)
    assert found["as_read"]["verdict"] == "NO-GO"
    assert found["travel"]["travel_mm"]["value"] == pytest.approx(1.77 + 0.35 + 0.10)
    assert any("Shop air" in caution for caution in found["cautions"])
    assert any("measured dry" in line for line in found["not_checked"])


def test_feeler_readings_at_several_places() -> None:
    places = [item for reading in ("2.25mm", "2.30mm", "2.25mm", "2.28mm") for item in ("--reading", reading)]
    found = answer(*B1, *places, "--fitted", "2.90mm", "--instruments", INSTRUMENTS)
    assert found["as_read"]["reading"]["value"] == pytest.approx(2.27)
    assert found["as_read"]["reading"]["u"] == pytest.approx(0.0122474, abs=1e-6)  # the scatter, 0.0245, exceeds the feeler's 0.022
    alike = answer(*B1, *["--reading", "2.25mm"] * 4, "--fitted", "2.90mm", "--step", "0.05mm")
    assert alike["as_read"]["reading"]["u"] == pytest.approx(0.05 / 12**0.5)
    assert "several readings need --step" in refused(*B1, "--reading", "2.2mm", "--reading", "2.3mm", "--fitted", "2.90mm")


def test_heights_give_the_room_and_plates_are_counted() -> None:
    heights = ("--depth", "29.40mm±0.01mm", "--frictions", "5", "1.95mm±0.007mm", "--steels", "5", "1.80mm±0.007mm", "--pressure-plate", "5.48mm")
    found = answer(*B1, *heights, "--variant", "wren")
    assert found["room"]["reading_mm"]["value"] == pytest.approx(5.17)
    assert size_of(found, "position") == 3.40 and "as_read" not in found
    assert "5 frictions given, and the record of teal has 4 in B1: count again" in refused(*B1, *heights, "--variant", "teal")


def test_the_fill_of_the_piston() -> None:
    found = answer(*B1, "--reading", "2.27mm±0.011mm", "--fitted", "2.90mm", "--flow", "8L/min±0.5L/min")
    area = 3.14159265 * (104**2 - 76**2)
    assert found["fill"]["volume_ml"]["value"] == pytest.approx(area * 2.22 / 1000)
    assert found["fill"]["time_s"]["value"] == pytest.approx(area * 2.22 / 1e6 / 8 * 60)
    assert "does not give seal_land_mm and bend_mm in [clutch.C1]" in refused(
        "ring", FAMILY, "--element", "C1", "--reading", "1mm", "--fitted", "2.30mm", "--flow", "8L/min"
    )


@pytest.mark.parametrize(
    "arguments, said",
    [
        (("shim", FAMILY), "give --gap, measured without a shim"),
        (("shim", FAMILY, "--gap", "2.153"), "2.153 has no unit"),
        (("shim", FAMILY, "--play", "0.6mm"), "--play with --fitted"),
        ((*B1,), "give --reading with --fitted"),
        ((*B1, "--reading", "2.2mm"), "give --reading with --fitted"),
        ((*B1, "--depth", "29mm"), "--depth needs --frictions and --steels"),
        (("ring", FAMILY, "--element", "B9", "--reading", "2mm", "--fitted", "2mm"), "no rings of 'B9' under [selective]; it has rings of: B1, C1"),
        (("chain", "--plus", "a=1mm±0.1mm"), "Missing option '--spread'"),
        (("chain", "--spread", "normal"), "give the parts"),
        (("chain", "--plus", "a=1mm", "--measured", "b=2mm", "--spread", "normal"), "no part is called 'b'; there are a"),
    ],
)
def test_what_lacks_is_refused_with_its_mend(arguments: tuple[str, ...], said: str) -> None:
    assert said in refused(*arguments)


# ---- chain

# Shigley's Mechanical Engineering Design, 9th to 11th editions, example 1-7 (from memory).
GROOVE = (
    "chain", "--plus", "groove=1.750in±0.003in", "--less", "a=0.750in±0.001in", "--less", "b=0.120in±0.005in", "--less", "c=0.875in±0.001in",
)  # fmt: skip


def test_the_groove_of_the_textbook() -> None:
    text = call(*GROOVE, "--spread", "normal")
    assert "The parts leave 0.0050 in (0.127 mm); with every part at its worst −0.0050 to 0.0150 in" in text
    found = answer(*GROOVE, "--spread", "rectangular")["chain"]
    assert found["rss_half_mm"] == pytest.approx(0.006 * 25.4)
    assert found["rss_chance"] == pytest.approx(0.9167, abs=1e-4)
    assert "b makes 69 % of the variance and may lie anywhere in its tolerance" in call(*GROOVE, "--spread", "rectangular")
    assert "may lie anywhere" not in text


def test_a_measured_part_takes_the_place_of_its_tolerance() -> None:
    limits = ("--within", "0in", "0.010in")
    drawn = answer(*GROOVE, "--spread", "rectangular", *limits)
    assert drawn["measure"][0]["part"] == "b"
    known = answer(*GROOVE, "--spread", "rectangular", *limits, "--measured", "b=0.1190in±0.0002in")
    assert known["chain"]["reading_mm"]["value"] == pytest.approx(0.006 * 25.4)
    assert known["chain"]["reading_mm"]["u"] < drawn["chain"]["reading_mm"]["u"]
    assert known["measure"][0]["part"] == "groove"


# ---- report


def test_the_demonstration_answers_its_job_with_pictures() -> None:
    records = Records.read(sorted(DEMO.glob("*.toml")))
    shim, ring = choice_parts(records)
    assert "Fit shim 1.850 mm" in shim.sheet.answer and "Fit ring 3.400 mm" in ring.sheet.answer
    assert ring.sheet.data["as_read"]["reading"] == {"value": 2.27, "u": pytest.approx(0.011)}
    for part in (shim, ring):
        drawn = [draw(plots) for draw in part.pictures.values()]
        assert len(drawn) == 2 and all("<svg" in svg for svg in drawn)
    assert all(word in next(iter(shim.pictures.values()))(plots) for word in ("nearest target", "least risk", "warm"))
    assert list(choice_parts(Records())) == []


def test_the_answers_are_worked_out() -> None:
    text = call(*GAP, "--explain")
    for said in ("cold reading: 0.303 mm", "s_t wanted: 1.793 mm", "growth: 0.24955", "u' u of result: 0.0156205", "part: gasket"):
        assert said in text, said
    ring = call(*B1, "--reading", "2.27mm±0.011mm", "--fitted", "2.90mm", "--flow", "8L/min", "--explain")
    assert "land, travel at which the seal leaves its land: 3.6" in ring and "flow: 8" in ring
    assert "Result: e = 0.127 mm" in call(*GROOVE, "--spread", "normal", "--within", "0in", "0.01in", "--explain")


def test_a_page_of_the_choice_can_be_printed(tmp_path: Path) -> None:
    page = tmp_path / "shim.html"
    call(*GAP, "--page", str(page))
    assert "Fit shim 1.850 mm" in page.read_text()
