"""Proof runs: logs of every spelling are read, each fault is told as what it is, and what to run next follows."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import numpy as np
import polars as pl
import proof_logs as logs
import pyarrow as pa
import pyarrow.parquet as pq
import pytest
from click.testing import CliRunner
from trainwright import Error, hazard, proof, record
from trainwright.answers.proof_log import noise_of, read_log, step_of
from trainwright.cli import shop
from trainwright.parts import Records, parts_of

DEMO = logs.DEMO
TRACE = DEMO / "trace" / "trace.csv"
GEARS = {**{str(number): number for number in range(1, 9)}, "1B": 1, "2B": 2, "R": -1}
ASKED = proof.asked_of(fluids=record.load(DEMO / "fluids.toml"), fleet=record.load(DEMO / "fleet.toml"))


def prove(log: Any, variant: str = logs.VARIANT) -> proof.Proof:
    return proof.prove(log, logs.FAMILY, variant, asked=ASKED)


def failed(found: proof.Proof) -> list[str]:
    return [line.about for line in found.lines if line.verdict == "NO-GO" and not line.data.get("follows")]


def opened(found: proof.Proof) -> list[str]:
    return [line.about for line in found.lines if line.verdict == "NOT PROVEN"]


# ---- reading


def short() -> logs.Columns:
    return logs.driven(("3", "4"), gear_s=3.0)


def test_a_csv_comes_back_as_it_was(tmp_path: Path) -> None:
    log = short()
    read = read_log(logs.write_csv(tmp_path / "run.csv", log), gears=GEARS)
    assert not read.missing[1:] and read.missing == ["engine_torque_nm"]
    for name in ("time_s", "input_rpm", "output_rpm", "pressure_kpa", "temp_c"):
        np.testing.assert_allclose(read.columns[name], log[name], rtol=1e-5)
    assert read.commanded is not None and set(read.commanded.tolist()) == {3, 4}
    assert read.sample_s == pytest.approx(1 / logs.HZ)


def test_lines_above_the_names_semicolons_and_decimal_commas(tmp_path: Path) -> None:
    log = short()
    path = logs.write_csv(tmp_path / "run.csv", log, head="Dyno 3; cell B\noperator; x\n\n", mark=";", decimal=",")
    read = read_log(path, gears=GEARS)
    np.testing.assert_allclose(read.columns["input_rpm"], log["input_rpm"])
    assert any("3 lines above" in remark for remark in read.remarks)


def test_shop_units_by_the_ending_of_a_name_and_names_that_differ(tmp_path: Path) -> None:
    log = short()
    theirs = {
        "t_ms": log["time_s"] * 1000, "turbine": log["input_rpm"], "n_output_rpm": log["output_rpm"], "line_psi": log["pressure_kpa"] / 6.894757293168,
        "sump_f": log["temp_c"] * 1.8 + 32, "gear": log["commanded_gear"],
    }  # fmt: skip
    read = read_log(logs.write_csv(tmp_path / "run.csv", theirs), columns={"input_rpm": "turbine"}, gears=GEARS)
    np.testing.assert_allclose(read.columns["time_s"], log["time_s"], atol=1e-4)
    np.testing.assert_allclose(read.columns["pressure_kpa"], log["pressure_kpa"], rtol=1e-4)
    np.testing.assert_allclose(read.columns["temp_c"], log["temp_c"], rtol=1e-4)


def test_parquet_arrow_frames_and_arrays_are_the_same_log(tmp_path: Path) -> None:
    log = short()
    table = pa.table(log)
    pq.write_table(table, tmp_path / "run.parquet")
    for source in (tmp_path / "run.parquet", table, pl.DataFrame(log), log):
        read = read_log(source, gears=GEARS)
        np.testing.assert_array_equal(read.columns["input_rpm"], log["input_rpm"])
        assert read.commanded is not None and read.commanded[0] == 3


def test_words_for_gears_and_lockup_and_empty_cells(tmp_path: Path) -> None:
    path = tmp_path / "run.csv"
    path.write_text("time_s,input_rpm,output_rpm,commanded_gear,lockup\n0,1000,500,R,off\n0.1,,500,1B,on\n0.2,1000,500,N,\n0.3,1000,500,D,1\n,1,1,1,1\n")
    read = read_log(path, gears=GEARS)
    assert read.commanded is not None and read.commanded.tolist() == [-1, 1, 0, -128]
    assert np.isnan(read.columns["input_rpm"][1]) and np.isnan(read.columns["lockup"][2])
    assert any("'D'" in remark or " D," in remark for remark in read.remarks) and any("1 rows without a time" in remark for remark in read.remarks)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("time_s,output_rpm\n0,1\n1,1\n", "no column input_rpm.*--column input_rpm=NAME.*output_rpm"),
        ("seconds,input_rpm\n0,1\n", "names a time.*time_s"),
        ("time_s,input_rpm,output_rpm\n0,1,1\n1,oops,1\n", "'oops' is no number"),
        ("time_s,input_rpm,output_rpm\n0,1,1\n0,1,1\n", "never rises"),
        ("time_s,input_rpm,output_rpm\n0,1,1\n", "1 rows with a time"),
        ("time_s,input_rpm,output_rpm,lockup\n0,1,1,half\n1,1,1,on\n", "'half' is neither on nor off"),
    ],
)
def test_a_log_that_cannot_be_read_says_how_to_mend_it(tmp_path: Path, text: str, says: str) -> None:
    path = tmp_path / "run.csv"
    path.write_text(text)
    with pytest.raises(Error, match=says):
        read_log(path, gears=GEARS)


def test_step_and_noise_are_found_in_the_log() -> None:
    """The trace was made with these: steps of 0.5 and 1 rpm, noise of 0.9, 0.7 and 4 rpm (truth.toml beside it)."""
    read = read_log(TRACE, gears=GEARS)
    for column, step, noise in (("input_rpm", 0.5, 0.9), ("output_rpm", 0.5, 0.7), ("engine_rpm", 1.0, 4.0), ("pressure_kpa", 8.0, 9.0)):
        assert step_of(read.columns[column]) == step
        assert noise_of(read.columns[column], step) == pytest.approx(noise, rel=0.05)
    assert step_of(np.random.default_rng(1).normal(size=500)) == 0.0
