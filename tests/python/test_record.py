"""Records in Python: the demo against an independent TOML parser and JSON Schema, faults, and what the chapters take."""

from __future__ import annotations

import json
import pickle
import zlib
from fractions import Fraction
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import trainwright
from hypothesis import given
from hypothesis import strategies as st
from trainwright import Error, record, road

tomllib = pytest.importorskip("tomllib", reason="the independent TOML parser came with Python 3.11")

DEMO = Path(str(files("trainwright") / "demo"))
SCHEMA = Path(str(files("trainwright") / "schema"))
KINDS = ["family", "fluids", "instruments", "fleet", "jobs"]
TRAINS = sorted((DEMO / "trains").glob("*.toml"))


def without_none(value: Any) -> Any:
    """The value without what is left out: None, and lists and tables that are empty."""
    if isinstance(value, dict):
        return {key: without_none(item) for key, item in value.items() if item is not None and item != [] and item != {}}
    return [without_none(item) for item in value] if isinstance(value, list) else value


@pytest.mark.parametrize("kind", KINDS)
def test_a_record_holds_what_an_independent_parser_reads(kind: str) -> None:
    path = DEMO / f"{kind}.toml"
    ours = without_none(record.load(path).as_dict())
    theirs = tomllib.loads(path.read_text(encoding="utf-8"))
    for planetary in ours.get("train", {}).get("set", []):
        assert planetary.pop("kind") == "simple"  # the default, not written in the demo
    assert ours == theirs


@pytest.mark.parametrize("path", [DEMO / f"{kind}.toml" for kind in KINDS] + TRAINS, ids=lambda path: path.stem)
def test_the_demo_fits_its_json_schema(path: Path) -> None:
    kind = path.stem if path.parent == DEMO else "train"
    assert (SCHEMA / f"{kind}.json").read_text(encoding="utf-8") == record.schema(kind)
    schema = json.loads(record.schema(kind))
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(tomllib.loads(path.read_text(encoding="utf-8")), schema)
    assert f"schema/{kind}.json" in path.read_text(encoding="utf-8").splitlines()[0]


@pytest.mark.parametrize(
    ("good", "bad"),
    [
        ("sun = 36", "sun = 0"),
        ("planets = 5", "planets = 5.5"),
        ("id = \"P2\"", "idd = \"P2\""),
        ("kind = \"brake\"", "kind = \"break\""),
        ("line_idle_kpa = [360, 440]", "line_idle_kpa = [360]"),
        ("exchanged = 0.04", "exchanged = 4"),
        ("balanced = true", "balanced = \"yes\""),
    ],
)
def test_json_schema_and_check_refuse_the_same(good: str, bad: str) -> None:
    text = (DEMO / "family.toml").read_text(encoding="utf-8")
    assert good in text
    text = text.replace(good, bad, 1)
    assert any(problem.is_error for problem in record.check_text(text))
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(tomllib.loads(text), json.loads(record.schema("family")))


def test_all_faults_come_in_one_error() -> None:
    text = (DEMO / "fluids.toml").read_text(encoding="utf-8")
    text = text.replace("dry_l = 11.4", "dry_qt = 12.05").replace("[-60, -45,", "[-45, -60,")
    with pytest.raises(Error) as caught:
        record.Fluids.from_toml(text, "fluids.toml")
    quarts, heights = caught.value.problems
    assert (quarts.key, quarts.message, quarts.mend) == (
        "fill.dry_qt",
        "this key takes liters, not quarts",
        "write dry_l = 11.4036",
    )
    assert (heights.key, heights.value) == ("fill.sump.height_mm[1]", "-60")
    assert str(quarts) in str(caught.value) and str(heights) in str(caught.value)
    assert quarts.line < heights.line and quarts.is_error and quarts.file == "fluids.toml"


def test_a_file_that_cannot_be_read_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Error, match="missing.toml"):
        record.load(tmp_path / "missing.toml")
    (tmp_path / "latin.toml").write_bytes("title = 'größe'".encode("latin-1"))
    with pytest.raises(Error, match="UTF-8"):
        record.check(tmp_path / "latin.toml")
    (tmp_path / "other.toml").write_text("[tool]\n")
    with pytest.raises(Error, match="no record of any kind"):
        record.load(tmp_path / "other.toml")
    with pytest.raises(Error, match="give one of train, family"):
        record.schema("gearbox")


def test_names_are_followed_from_file_to_file(tmp_path: Path) -> None:
    paths = [DEMO / f"{kind}.toml" for kind in KINDS]
    assert record.check(*paths) == []
    fleet = tmp_path / "fleet.toml"
    fleet.write_text(paths[3].read_text(encoding="utf-8").replace('variant = "heron"', 'variant = "hern"', 1))
    assert record.check(fleet) == []
    (problem,) = record.check(paths[0], fleet)
    assert (problem.message, problem.mend) == ('there is no variant "hern"', "did you mean heron?")


def test_a_family_gives_its_parts() -> None:
    family = record.load(DEMO / "family.toml")
    assert family.variants == ["teal", "wren", "heron"]
    assert family.train("heron").gears()[0].ratio_exact == Fraction(16269580, 3819361)
    assert family.static_friction == trainwright.Reading(value=0.112, u=0.009)
    assert family.dynamic_friction == trainwright.Reading(value=0.124, u=0.007)
    with pytest.raises(Error, match="known: teal, wren, heron"):
        family.train("plover")
    assert set(family.packs("wren")) == {"B1", "B2", "C1", "C2", "C3"}
    fluids = record.load(DEMO / "fluids.toml")
    dips = fluids.fill().level_at(fluids.fluid("alder"), temp_c=134.53713990103483)
    assert dips.gear_margin_mm == pytest.approx(0, abs=0.03)
    with pytest.raises(Error, match="known: alder, hazel"):
        fluids.fluid("birch")
    instruments = record.load(DEMO / "instruments.toml")
    assert instruments.reading("bore_gauge", 44.407) == trainwright.Reading(value=44.407, u=0.0042)
    with pytest.raises(Error, match="known: outside_micrometer"):
        instruments.reading("caliper", 1.0)
    with pytest.raises(Error):
        instruments.reading("bore_gauge", float("nan"))


def test_a_fleet_gives_tires_and_axles() -> None:
    fleet = record.load(DEMO / "fleet.toml")
    assert fleet.trucks[0] == "T11" and len(fleet.trucks) == 9
    # Answers of the demonstration, computed apart from this library.
    assert fleet.tire("f35").geometric_diameter_mm() == pytest.approx(889.0, abs=1e-6)
    assert fleet.rolling("m265").rev_per_km.value == pytest.approx(410.1690495813528, rel=1e-6)
    for truck, shown in (("T16", 90.17997750281216), ("T17", 120.62146892655365)):
        result = road.speedometer(fleet.programmed(truck), fleet.fitted(truck), true_km_h=100.0)
        assert result.shown_km_h.value == pytest.approx(shown, rel=1e-6)
    with pytest.raises(Error, match="known: T11"):
        fleet.fitted("T99")
    with pytest.raises(Error):
        fleet.rolling("bicycle")


def test_a_flash_image_is_made_from_a_family() -> None:
    family, fluids = record.load(DEMO / "family.toml"), record.load(DEMO / "fluids.toml")
    fleet = record.load(DEMO / "fleet.toml")
    bare = family.flash_image("wren")
    whole = family.flash_image("wren", driveline=fleet.fitted("T14"), fluid=fluids.fluid("alder"), fill=fluids.fill())
    assert bare[:4] == whole[:4] == b"TWFI" and bare != whole
    assert zlib.crc32(whole[:-4]) == int.from_bytes(whole[-4:], "little")
    with pytest.raises(Error, match="known: teal"):
        family.flash_image("plover")


@pytest.mark.parametrize("kind", KINDS)
def test_a_record_survives_pickle_and_toml(kind: str) -> None:
    original = record.load(DEMO / f"{kind}.toml")
    assert pickle.loads(pickle.dumps(original)) == original
    assert type(original).from_toml(original.to_toml()) == original
    assert repr(original).startswith(f"<{kind}: ")


@given(st.text())
def test_any_text_gives_problems_or_none(text: str) -> None:
    record.check_text(text)


@given(st.integers(0, 400), st.text(alphabet='[]{}="\n ab1.,#', max_size=8))
def test_a_damaged_line_gives_problems_or_none(line: int, junk: str) -> None:
    lines = (DEMO / "family.toml").read_text(encoding="utf-8").splitlines()
    lines[line : line + 1] = [junk]
    for problem in record.check_text("\n".join(lines)):
        assert 1 <= problem.line <= len(lines) + junk.count("\n") + 1
        assert problem.message
