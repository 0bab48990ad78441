"""The console's failure signatures and diagnosis on the demonstration family."""

import json
from pathlib import Path

import trainwright
from click.testing import CliRunner
from trainwright.cli import shop

FAMILY = str(Path(trainwright.__file__).parent / "demo" / "family.toml")


def answer(*arguments):
    result = CliRunner().invoke(shop, [*arguments, "--json"], catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return json.loads(result.output)


def test_signatures_are_the_demonstrations():
    lost = answer("faults", FAMILY, "--variant", "wren")["lost"]
    assert lost["B2 dead"] == ["1B", "2B", "7", "8", "R"]
    assert lost["F1 dead"] == ["1", "2"]


def test_a_complaint_names_the_element():
    found = answer("diagnose", FAMILY, "--seen", "2", "no drive", "--seen", "4", "no drive", "--seen", "5", "as commanded")
    assert found["answer"] == "C1 dead explains all that was seen, and nothing else does as well."
    assert (found["suspects"][0]["element"], found["suspects"][0]["matched"]) == ("C1", 2)


def test_equal_suspects_lead_to_the_gear_to_try():
    found = answer("diagnose", FAMILY, "--seen", "5", "no drive")
    assert found["answer"].startswith("B1 dead, C2 dead explain it equally well.")
    assert found["answer"].endswith("Run next: gear 2: B1 dead gives no drive, C2 dead gives as commanded (3.2045).")
    assert found["run_next"]["gear"] == "2" and found["run_next"]["tie_ups"] == 0


def test_a_measured_ratio_is_an_observation():
    found = answer("diagnose", FAMILY, "--seen-ratio", "3", "4.252", "0.001", "--seen-ratio", "5", "1.383", "0.001")
    assert found["answer"] == "C1 dead explains all that was seen, and nothing else does as well."
    stuck = answer("diagnose", FAMILY, "--seen", "1", "other ratio")
    assert stuck["answer"].startswith("C1 stuck, C3 stuck explain it equally well. Run next: gear 2")
    assert answer("diagnose", FAMILY, "--seen-ratio", "1", "1.3832", "0.0002")["run_next"] is None


def test_nothing_seen_is_refused():
    result = CliRunner().invoke(shop, ["diagnose", FAMILY])
    assert result.exit_code != 0 and "--seen-ratio GEAR RATIO U" in result.output


def test_what_no_single_element_explains_is_said():
    found = answer("diagnose", FAMILY, *(cell for gear in ("1", "5", "8") for cell in ("--seen", gear, "other ratio")))
    assert found["answer"].startswith("Nothing explains all of it")


def test_a_gear_that_the_record_does_not_have_is_refused():
    result = CliRunner().invoke(shop, ["diagnose", FAMILY, "--seen", "9", "no drive"])
    assert result.exit_code != 0
