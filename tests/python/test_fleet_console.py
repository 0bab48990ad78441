"""The command `trainwright screen`."""

from __future__ import annotations

import json
from pathlib import Path

import polars as pl
import pytest
from click.testing import CliRunner
from fleet_drives import DEMO, FAMILY, FLEET, made
from trainwright.cli import shop
from trainwright.fleet import invented

RECORDS = [f"--{name}={DEMO / f'{name}.toml'}" for name in ("family", "fleet", "fluids")]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("telematics")
    invented.write_parquet(path, made(), 4000, files=2)
    return path


def run(*arguments: str, expect: int = 0) -> str:
    result = CliRunner().invoke(shop, ["screen", *arguments])
    assert result.exit_code == expect, result.output
    return result.stdout


def test_text(folder: Path) -> None:
    text = " ".join(run(str(folder / "*.parquet"), *RECORDS).split())
    assert "T13 comes first" in text and "over its rating" in text and "Caution" in text and "ratings" in text


def test_json_and_a_file_of_every_truck(folder: Path, tmp_path: Path) -> None:
    out = tmp_path / "ranked.csv"
    told = json.loads(run(str(folder), *RECORDS, "--json", "--top=3", f"--out={out}", f"--state={tmp_path / 'state'}"))
    assert [truck["rank"] for truck in told["trucks"]] == list(range(1, 10)) and told["finished"] and told["cautions"]
    assert pl.read_csv(out)["truck"].to_list() == [truck["truck"] for truck in told["trucks"]]
    again = json.loads(run(str(folder), *RECORDS, "--json", f"--state={tmp_path / 'state'}"))
    assert again["trucks"] == told["trucks"]


def test_trucks_built_like_those_of_the_record(tmp_path: Path) -> None:
    many = invented.trucks(FAMILY, FLEET, 12)
    invented.write_parquet(tmp_path / "rows", many, 1000)
    like = tmp_path / "trucks.csv"
    like.write_text("truck,like\n" + "".join(f"{truck.name},{truck.like}\n" for truck in many))
    told = json.loads(run(str(tmp_path / "rows"), *RECORDS, f"--trucks={like}", "--by=over_rating", "--json"))
    assert len(told["trucks"]) == 12 and told["ranked_by"] == "over_rating"
    like.write_text("vehicle\nV00001\n")
    run(str(tmp_path / "rows"), *RECORDS, f"--trucks={like}", expect=2)


def test_a_column_that_is_named_wrongly_is_refused(folder: Path) -> None:
    run(str(folder), *RECORDS, "--column=temp_c", expect=2)
