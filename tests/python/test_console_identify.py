"""The console command that identifies a unit, and its part of the report."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import trainwright
from click.testing import CliRunner
from trainwright import record
from trainwright.answers.identify import identify_sheet
from trainwright.answers.identify.bench import Found, identified
from trainwright.cli import shop
from trainwright.parts import Records
from trainwright.parts.fits import fit_parts
from trainwright.parts.identify import identify_parts
from trainwright.report import plots

DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY, INSTRUMENTS = (str(DEMO / f"{name}.toml") for name in ("family", "instruments"))
COMMAND = ("identify", FAMILY, "--instruments", INSTRUMENTS)
MARKS = ("--seen", "cooler_port_m18", "--not-seen", "extension_bolts_8", "--seen", "output_sensor_left")
SUMP = ("--measured", "sump_depth=62.1mm")
JOURNAL = ("--measured", "output_rear_journal=43.988mm")
BORES = (
    "--measured", "output_rear_bore=44.407mm", "--measured", "output_pilot=31.989mm", "--measured", "output_pilot_bore=32.281mm",
)  # fmt: skip


def call(*arguments: str) -> str:
    result = CliRunner(env={"COLUMNS": "200"}).invoke(shop, list(arguments), catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return " ".join(result.output.split())


def answer(*arguments: str) -> Any:
    result = CliRunner().invoke(shop, [*arguments, "--json"], catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return json.loads(result.output, parse_constant=lambda word: pytest.fail(f"{word} is no JSON"))


def refused(*arguments: str) -> str:
    result = CliRunner().invoke(shop, list(arguments))
    assert result.exit_code != 0
    return " ".join(f"{result.output} {result.exception}".split())


# ---- a counter person with three looks, then one reading, then the rest (the demonstration's answers, computed independently for it)


def test_three_looks_settle_nothing_and_say_where_to_look_next() -> None:
    found = answer(*COMMAND, *MARKS)
    assert found["outcome"] == "not settled" and found["chance"]["wren"] == pytest.approx(0.934029, abs=1e-5)
    rates = {look["id"]: look["bits_per_minute"] for look in found["next_looks"]}
    assert next(iter(rates)) == "sump_depth" and rates["sump_depth"] == pytest.approx(0.049, abs=5e-4)
    assert rates["output_rear_journal"] == pytest.approx(0.004, abs=5e-4)
    text = call(*COMMAND, *MARKS)
    assert "Not settled: wren 93.4 %, heron 3.7 %, teal 2.9 %. Look next at sump_depth" in text
    assert "NOT PROVEN the unit is wren" in text and "sump_depth settles it with a chance of 94.5 %" in text


def test_the_sump_settles_it() -> None:
    text = call(*COMMAND, *MARKS, *SUMP)
    assert "Wren, chance 96.7 %; every part that was looked at belongs to it." in text


def test_the_journal_alone_makes_a_toss_up() -> None:
    found = answer(*COMMAND, *MARKS, *SUMP, *JOURNAL)
    assert found["chance"]["wren"] == pytest.approx(0.444332, abs=1e-5) and found["outcome"] == "not settled"
    text = call(*COMMAND, *MARKS, *SUMP, *JOURNAL)
    assert "Something in it is foreign, chance 99.7 %: case or output shaft." in text


def test_all_sizes_find_the_foreign_shaft_its_fits_and_the_order() -> None:
    found = answer(*COMMAND, *MARKS, *SUMP, *JOURNAL, *BORES)
    assert found["outcome"] == "mixed" and found["conflicts"] == ["output_shaft"]
    assert found["chance"]["wren"] == pytest.approx(0.995929, abs=1e-5)
    assert found["parts"]["output_shaft"]["exchanged"] == pytest.approx(0.9990955, abs=1e-6)
    journal, pilot = found["fits"]["output_journal_in_support"], found["fits"]["output_pilot_in_carrier"]
    assert (journal["clearance_mm"], journal["limit_mm"], journal["verdict"]) == (pytest.approx(0.419, abs=1e-6), 0.14, "NO-GO")
    assert (pilot["clearance_mm"], pilot["limit_mm"], pilot["verdict"]) == (pytest.approx(0.292, abs=1e-6), 0.12, "NO-GO")
    assert journal["u_mm"] == pytest.approx(0.0044944, abs=1e-6) and pilot["u_mm"] == pytest.approx(0.0044944, abs=1e-6)
    assert found["order"] == {"output_shaft": "wren"}
    text = call(*COMMAND, *MARKS, *SUMP, *JOURNAL, *BORES)
    assert "mixed: the output shaft is a teal part" in text and "it goes together and runs loose" in text
    assert "Order one wren output shaft: 210 tokens." in text


def test_lengths_come_back_as_they_were_typed() -> None:
    typed = ("--measured", "output_rear_journal=1731.8thou", "--measured", "output_rear_bore=1.7483in")
    text = call(*COMMAND, *MARKS, *typed)
    assert "1731.8 thou (43.988 mm)" in text and "1.7483 in (44.407 mm)" in text
    assert "clearance 16.5 thou (0.419 mm)" in text or "16.5 ± 0.18 thou (0.419 ± 0.0045 mm)" in text


def test_a_reading_may_bring_its_own_uncertainty() -> None:
    coarse = answer("identify", FAMILY, *MARKS, "--measured", "sump_depth=62.1mm±9mm")
    fine = answer("identify", FAMILY, *MARKS, "--measured", "sump_depth=62.1mm±0.4mm")
    assert coarse["chance"]["wren"] < fine["chance"]["wren"] == pytest.approx(0.966920, abs=1e-5)
    assert "The record of the instruments" not in call("identify", FAMILY, *MARKS)
    assert "?: the record of the instruments would tell" in call("identify", FAMILY, *MARKS)


def test_a_reading_that_fits_nothing_says_so_and_what_to_do() -> None:
    text = call(*COMMAND, *MARKS, "--measured", "output_rear_journal=44.295mm")
    assert "fits no variant. The nearest is wren, 44.325 mm" in text and "to 44.350 mm" in text
    assert "0.030 mm (0.0012 in) below, 19 standard uncertainties" in text
    assert "measure where the part has not worn" in text and "Order" not in text


def test_a_shops_own_prior_and_counts() -> None:
    by_prior = answer(*COMMAND, *MARKS, "--prior", "teal=0.1,wren=0.1,heron=0.8")
    assert by_prior["chance"]["heron"] > 4 * 0.0370, "the record's prior gives 0.0370"
    by_counts = answer(*COMMAND, *MARKS, "--counts", "wren=30,heron=8")
    assert 0 < by_counts["chance"]["teal"] < 0.01
    assert "not both" in refused(*COMMAND, *MARKS, "--prior", "teal=1", "--counts", "teal=1")
    assert "the chances sum to 0.9, not 1" in refused(*COMMAND, *MARKS, "--prior", "teal=0.1,wren=0.1,heron=0.7")
    assert "there is no variant 'tael'" in refused(*COMMAND, *MARKS, "--counts", "tael=3")
    assert "give a whole number" in refused(*COMMAND, *MARKS, "--counts", "teal=1.5")
    assert "teal=0.5,wren=0.5" in refused(*COMMAND, *MARKS, "--prior", "teal")


def test_the_chance_that_counts_as_proven_can_be_chosen() -> None:
    assert answer(*COMMAND, *MARKS, "--proven", "90%")["outcome"] == "one variant"
    assert answer(*COMMAND, *MARKS, *SUMP, "--proven", "99%")["outcome"] == "not settled"
    assert "outside 0.5 to 1" in refused(*COMMAND, *MARKS, "--proven", "30%")


def test_the_list_shows_what_there_is() -> None:
    text = call("identify", FAMILY, "--list")
    assert "6 marks and 4 sizes on 9 parts" in text and "eight extension bolts (else six)" in text
    assert "steel rule, u 0.4 mm" in call(*COMMAND, "--list")


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        (("--seen", "cooler_port_m19"), "did you mean cooler_port_m18?"),
        (("--seen", "sump_depth"), "this is a size, not a mark"),
        (("--measured", "sump_dept=62mm"), "did you mean sump_depth?"),
        (("--measured", "sump_depth=62"), "62 has no unit"),
        (("--measured", "sump_depth"), "write them as name=20mm"),
        (("--measured", "output_rear_journal=4.3988mm"), "outside_micrometer reaches from 25 to 75 mm"),
        (("--seen", "cooler_port_m18", "--not-seen", "cooler_port_m18"), "cooler_port_m18 is given twice"),
        ((), "nothing was found yet"),
    ],
)
def test_a_slip_is_named_with_its_mend(typed: tuple[str, ...], message: str) -> None:
    assert message in refused(*COMMAND, *typed)


def test_a_size_without_an_uncertainty_is_refused() -> None:
    assert "steel_rule is not known" in refused("identify", FAMILY, "--measured", "sump_depth=62.1mm")
    assert "give the record of the instruments" in refused("identify", FAMILY, "--measured", "output_pilot=31.989mm")
    pilot_bore = ("--measured", "support_register_in_case.case=118.0mm")
    assert "the record names no instrument for it (bore_instrument of the fit support_register_in_case)" in refused(*COMMAND, *pilot_bore)


# ---- other records


def test_a_size_of_a_fit_is_found_without_its_name() -> None:
    text = (DEMO / "family.toml").read_text()
    plain = "\n".join(line for line in text.splitlines() if not line.startswith(("shaft_size", "bore_size", "shaft_instrument")))
    family = record.Family.from_toml(plain)
    sizes = {"output_rear_journal": 43.988, "output_rear_bore": 44.407, "output_pilot_in_carrier.output_shaft": trainwright.Reading(value=31.989, u=0.002)}
    bench = identified(family, Found({}, {**sizes, "output_pilot_bore": 32.281}), instruments=record.load(DEMO / "instruments.toml"))
    assert [measured.shaft.fit for measured in bench.fits] == ["output_journal_in_support", "output_pilot_in_carrier"]


def test_records_that_do_not_quite_go_together_say_what_was_left_out() -> None:
    """As the records of a shop may be: a bore gauge too large for one bore, fits without names for their sizes, a size that nobody knows."""
    records = Records.read([DEMO / "family.toml", DEMO / "instruments.toml", DEMO / "jobs.toml"])
    family = (DEMO / "family.toml").read_text()
    without = ("shaft_size", "bore_size", "shaft_instrument")
    records.family = record.Family.from_toml("\n".join(line for line in family.splitlines() if not line.startswith(without)))
    narrow = (DEMO / "instruments.toml").read_text().replace("range_mm = [18, 130]", "range_mm = [35, 130]")
    records.instruments = record.Instruments.from_toml(narrow)
    [part] = identify_parts(records)
    assert part.sheet.data["outcome"] == "mixed" and list(part.sheet.data["fits"]) == ["output_journal_in_support"]
    assert any(line.startswith("output_pilot was measured too") for line in part.sheet.not_checked)
    assert any("output_pilot_bore lies outside the range of the bore gauge" in line for line in part.sheet.not_checked)
    assert list(fit_parts(records)), "fits of the same job"


def test_a_foreign_part_without_joints_is_not_called_fitting() -> None:
    seen = ("--seen", "extension_bolts_8", "--seen", "park_teeth_18", "--seen", "one_way_ratchet", "--seen", "output_sensor_left")
    prior = ("--prior", "teal=0,wren=0.5,heron=0.5")
    text = call(*COMMAND, *seen, *prior, "--measured", "sump_depth=62.0mm")
    assert "mixed: the sump is a wren part" in text
    assert "Whether the sump fits is not known: the record has no joint of it." in text and "Order one" not in text


def test_a_foreign_part_that_fits_needs_no_order() -> None:
    """A heron output shaft in a wren unit: the same sizes, told apart here by a mark of its own."""
    text = (DEMO / "family.toml").read_text()
    mark = """[[evidence]]
id = "shaft_groove"
look = "groove on the output shaft"
carrier = "output_shaft"
chance = { teal = 0.0, wren = 0.0, heron = 1.0 }
exchanged = 0.06
minutes = 30
[[evidence_measured]]
id = "sump_depth\""""
    family = record.Family.from_toml(text.replace('[[evidence_measured]]\nid = "sump_depth"', mark))
    seen = {"cooler_port_m18": True, "extension_bolts_8": False, "output_sensor_left": True, "park_teeth_18": False, "shaft_groove": True}
    tools = record.load(DEMO / "instruments.toml")
    bench = identified(family, Found(seen, {"sump_depth": 62.1, "output_rear_bore": 44.407}), instruments=tools)
    answer = identify_sheet(bench, title="").answer
    assert "the output shaft is a heron part" in answer and "Nothing to order for it" in answer


def test_the_report_shows_the_job_with_its_pictures() -> None:
    records = Records.read([DEMO / "family.toml", DEMO / "instruments.toml", DEMO / "jobs.toml"])
    [part] = identify_parts(records)
    assert part.sheet.title.startswith("J1") and "Order one wren output shaft" in part.sheet.answer
    svgs = [draw(plots) for draw in part.pictures.values()]
    assert all(svg.startswith("<svg") for svg in svgs) and "teal" in svgs[0] and "bit per minute" in svgs[1]
    without_jobs = Records.read([DEMO / "family.toml"])
    assert "6 marks and 4 sizes" in next(identify_parts(without_jobs)).sheet.answer
