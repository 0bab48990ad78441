"""Proof runs: logs of every spelling are read, each fault is told as what it is, and what to run next follows."""

from __future__ import annotations

import json
import re
import sys
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
from trainwright.answers.proof.log import noise_of, read_log, step_of
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


def test_times_of_day_and_a_log_without_pyarrow(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """`make run` reads the trace of the demonstration, and installs no pyarrow."""
    monkeypatch.setitem(sys.modules, "pyarrow", None)
    path = tmp_path / "run.csv"
    path.write_text("time_s,input_rpm,output_rpm\n2026-11-26T10:00:00.5,1000,500\n2026-11-26T10:00:00.75,1001,500\n")
    assert read_log(path, gears=GEARS).columns["time_s"].tolist() == [0.0, 0.25]
    with pytest.raises(Error, match="need pyarrow"):
        read_log(tmp_path.joinpath("run.parquet").write_bytes(b"PAR1") and tmp_path / "run.parquet", gears=GEARS)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("time_s,output_rpm\n0,1\n1,1\n", "no column input_rpm.*--column input_rpm=NAME.*output_rpm"),
        ("seconds,input_rpm\n0,1\n", "names a time.*time_s"),
        ("time_s,input_rpm,output_rpm\n0,1,1\n1,oops,1\n", "'oops' is no number"),
        ("time_s,input_rpm,output_rpm\n0,1,1\n1,1\n", "row 2 of run.csv has 2 cells for 3 columns"),
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


def test_a_file_of_another_kind_is_told_how_a_log_ends(tmp_path: Path) -> None:
    path = tmp_path / "family.toml"
    path.write_text("schema = 1")
    with pytest.raises(Error, match=r"family.toml does not end as a log does.*\.csv"):
        read_log(path, gears=GEARS)


def test_step_and_noise_are_found_in_the_log() -> None:
    """The trace was made with these: steps of 0.5 and 1 rpm, noise of 0.9, 0.7 and 4 rpm (truth.toml beside it)."""
    read = read_log(TRACE, gears=GEARS)
    for column, step, noise in (("input_rpm", 0.5, 0.9), ("output_rpm", 0.5, 0.7), ("engine_rpm", 1.0, 4.0), ("pressure_kpa", 8.0, 9.0)):
        assert step_of(read.columns[column]) == step
        assert noise_of(read.columns[column], step) == pytest.approx(noise, rel=0.05)
    assert step_of(np.random.default_rng(1).normal(size=500)) == 0.0


# ---- the trace of the demonstration, against what was put into it (truth.toml beside it)


@pytest.fixture(scope="module")
def trace() -> proof.Proof:
    return prove(TRACE)


def test_the_trace_fails_in_flare_tie_up_and_slip_alone(trace: proof.Proof) -> None:
    assert failed(trace) == ["slip in 6", "shift 4-5 warm", "shift 5-6 warm"]
    for about in ("ratio in 3", "ratio in 4", "ratio in 5", "slip in 3", "slip in 4", "slip in 5", "shift 3-4 warm", "speed sensors", "lock-up"):
        assert trace.line(about).verdict == "GO", about


def test_the_slip_of_the_trace(trace: proof.Proof) -> None:
    """Onset 46.0 s; 72 rpm ((t - 46) / 14)² at the input; C1 turns 2.006 times that; a plain CUSUM alarms at 47.8 s at a finer setting."""
    slip = trace.line("slip in 6")
    assert slip.data["began_s"] == pytest.approx(46.0, abs=2.0) and slip.data["found_s"] < 50.0
    assert slip.reading is not None and slip.reading.value == pytest.approx(72 * (13.75 / 14) ** 2, abs=3.0)
    assert set(slip.data["suspects"]) == {"C1", "C2", "C3"}
    assert slip.data["element_rpm"]["C1"] == pytest.approx(2.00617 * slip.reading.value, rel=1e-3)
    # Sixth held for ten seconds before: that third to fifth held earlier clears nobody of a fault that came up later.
    assert slip.do == "hold gear 2 under load: slip there means C1, no slip C2 or C3" and trace.next[0].lines == ("slip in 6",)


def test_the_shifts_of_the_trace(trace: proof.Proof) -> None:
    flare, tie_up = trace.line("shift 4-5 warm"), trace.line("shift 5-6 warm")
    assert flare.data["flare_rpm"] == pytest.approx(135.0, abs=6.0) and "C2, which closes" in flare.do
    assert tie_up.data["dip_rpm"] == pytest.approx(58.4, abs=4.0) and "B1, which opens" in tie_up.do
    for about, inertia_s in (("shift 3-4 warm", 0.48), ("shift 4-5 warm", 0.48), ("shift 5-6 warm", 0.42)):
        assert trace.line(about).data["inertia_s"] == pytest.approx(inertia_s, abs=0.1)


def test_what_the_trace_leaves_open_and_what_settles_it(trace: proof.Proof) -> None:
    open_ = opened(trace)
    for name in ("1", "2", "7", "8", "R"):
        assert f"ratio in {name}" in open_ and f"slip in {name}" in open_
    assert {"line pressure against need", "heat of the shifts", "driven cold", "in the window of the level check", "up-shifts cold"} <= set(open_)
    assert trace.line("gear sets of wren").verdict == "GO" and "heron excluded" in trace.line("gear sets of wren").why  # fourth tells
    settled = {about for one in trace.next for about in one.lines}
    assert set(open_) <= settled
    assert "20 s steady in gear 1, 2, 7, 8; R at walking pace; torque at the input" in trace.next[1].what


# ---- logs by formula: what is told of each


@pytest.fixture(scope="module")
def clean() -> proof.Proof:
    return prove(logs.clean())


def test_a_sound_unit_through_every_gear_leaves_nothing_open(clean: proof.Proof) -> None:
    assert not failed(clean)
    assert not opened(clean) and not clean.next
    assert clean.verdict == "GO"
    for name, ratio in logs.ratios().items():
        if name in clean.seen.gears:
            line = clean.line(f"ratio in {name}")
            assert abs(line.data["ratio"] - ratio) < 4 * line.data["ratio_u"], name
    assert clean.line("gear sets of wren").data["fits"] == ["teal and wren"]
    assert clean.line("pressure in 3").limits is not None


def test_a_dead_clutch_is_named(clean: proof.Proof) -> None:
    """C3 dead: fourth falls back to second, fifth to first, sixth to eighth do not drive (train.symptom)."""
    found = prove(logs.driven(logs.UP, shown={"4": "2", "5": "1"}, lost=("6", "7", "8")))
    line = found.line("gears 4 5 6 7 8")
    assert line.verdict == "NO-GO" and "4 shows the ratio of 2; 5 shows the ratio of 1; 6 7 8 show no fixed ratio" in line.why
    assert line.do == "C3 dead explains all of it, and nothing else does as well: look there"
    assert failed(found) == ["gears 4 5 6 7 8"]
    assert found.line("ratio in 4").verdict == "NO-GO" and found.line("ratio in 3").verdict == "GO"


def test_a_dead_one_way_clutch_is_told_by_the_gear_that_does_without_it() -> None:
    assert prove(logs.driven(("2", "3"), lost=("2",))).line("gear 2").do == "F1 dead explains all of it, and nothing else does as well: look there"


def test_coasting_over_a_one_way_clutch_is_no_lost_gear() -> None:
    """First and second coast freely by design: the input falls to idle while the wheels roll on."""
    log = logs.driven(("2", "3"), gear_s=20.0)
    idle = (log["time_s"] > 4.0) & (log["time_s"] < 19.0)
    log["input_rpm"][idle] = 850.0 + np.round(np.random.default_rng(5).normal(0.0, 2.0, int(idle.sum())) * 2) / 2
    log["lockup"][idle] = 0
    assert not failed(prove(log))


def test_speeds_without_commands_give_the_same_gears(trace: proof.Proof) -> None:
    read = read_log(TRACE, gears=GEARS)
    found = prove({name: read.columns[name] for name in ("time_s", "input_rpm", "output_rpm", "engine_rpm", "temp_c")})
    assert failed(found) == ["slip in 6", "shift 4-5 warm"]  # a tie-up before the ratio moves shows only against a command
    assert found.line("ratio in 4").reading == trace.line("ratio in 4").reading


def test_suspects_that_one_gear_cannot_tell_get_the_gear_to_run_next() -> None:
    """C1, C2 and C3 hold sixth; third shows 4.252 without C1, 3.204 without C2 and its own ratio without C3 (train.symptom)."""
    found = prove(logs.driven(("6",), lost=("6",)))
    told = "Run gear 3 in drive: C1 dead gives a ratio of 4.252, C2 dead gives a ratio of 3.204, C3 dead gives its own ratio."
    assert found.next[0].what == told and found.next[0].lines == ("gear 6",)


@pytest.mark.parametrize(("change", "says", "does"), [("teeth", "same share in every gear", "count the teeth"), ("swapped", "change places", "swap the two sensors")])
def test_a_wrong_sensor_is_told_and_leaves_everything_else_open(change: str, says: str, does: str) -> None:
    log = logs.driven(logs.UP)
    if change == "teeth":
        log["input_rpm"] = np.round(log["input_rpm"] * 40 / 38 * 2) / 2
    else:
        log["input_rpm"], log["output_rpm"] = log["output_rpm"], log["input_rpm"]
    found = prove(log)
    assert failed(found) == ["speed sensors"]
    line = found.line("speed sensors")
    assert says in line.why and does in line.do
    assert not any(line.verdict == "GO" for line in found.lines if line.group in ("ratio", "slip", "shift"))
    assert does in found.next[0].what.lower()


def test_a_slipping_gear_and_who_it_may_be() -> None:
    found = prove(logs.driven(logs.UP, slip_rpm={"4": 60.0}))
    assert failed(found) == ["slip in 4"]
    line = found.line("slip in 4")
    assert line.reading is not None and line.reading.value == pytest.approx(60.0, abs=4.0)
    assert set(line.data["suspects"]) == {"B1", "C1", "C3"}
    table = next(table for table in found.sheet().tables if table.title == "Who slips in 4")
    assert {row.cells[0]: row.cells[3] for row in table.rows} == {"B1": "1 2 3 5 R", "C1": "2 3 6 8", "C3": "5 6 7 8 R"}


def test_one_clutch_that_slips_in_all_its_gears_is_found_by_the_gears_that_do_not() -> None:
    """The scenario's J6: slip in the gears of C1 (2, 3, 4, 6, 8) and in no other."""
    found = prove(logs.driven(slip_rpm=dict.fromkeys(("2", "3", "4", "6", "8"), 40.0)))
    assert [about for about in failed(found) if not about.startswith("shift")] == [f"slip in {gear}" for gear in ("2", "3", "4", "6", "8")]
    assert found.line("slip in 4").do == "look at C1 first: the gears that were driven leave nothing else likely"
    assert found.line("speed sensors").verdict == "GO"


def test_gear_sets_of_another_variant_are_told_apart_from_slip() -> None:
    """The scenario's J7: first, second, fourth, seventh and reverse tell; third, fifth, sixth and eighth cannot."""
    found = prove(logs.driven(variant="heron"))
    line = found.line("gear sets of wren")
    assert line.verdict == "NO-GO" and line.data["fits"] == ["heron"] and line.data["gears_that_tell"] == ["1", "2", "4", "7", "R"]
    assert prove(logs.driven(variant="heron"), "heron").line("gear sets of heron").verdict == "GO"


def test_weak_pressure_and_a_hot_fluid() -> None:
    found = prove(logs.driven(logs.UP, torque_nm=700.0, pressure_kpa=900.0, temp_c=(100.0, 131.0)))
    assert found.line("pressure in 3").verdict == "NO-GO" and "C1 needs" in found.line("pressure in 3").why
    assert found.line("pressure in 8").verdict == "GO"
    assert found.line("fluid below its limit").verdict == "NO-GO"


def test_a_temperature_sensor_that_stands_still() -> None:
    log = logs.driven(gear_s=60.0, hz=10)
    log["temp_c"] = np.full_like(log["time_s"], 18.0)
    cold = prove(log).line("temperature sensor")
    assert cold.verdict == "NO-GO" and "still 18 °C" in cold.why and "wiring" in cold.do
    log["temp_c"] = np.full_like(log["time_s"], 85.0)
    warm = prove(log).line("temperature sensor")
    assert warm.verdict == "NOT PROVEN" and "one value for 900 s" in warm.why


def test_engine_torque_counts_only_with_the_lockup_on() -> None:
    log = logs.driven(("3", "4"))
    log["engine_torque_nm"] = log.pop("turbine_torque_nm")
    assert prove(log).line("pressure in 3").verdict == "GO"
    log["lockup"] = np.zeros_like(log["lockup"])
    found = prove(log).line("line pressure against need")
    assert found.verdict == "NOT PROVEN" and "converter multiplies it" in found.why


def test_speeds_alone_say_what_they_can() -> None:
    log = {name: values for name, values in logs.driven(logs.UP).items() if name in ("time_s", "input_rpm", "output_rpm")}
    found = prove(log)
    assert not failed(found) and found.line("ratio in 5").verdict == "GO"
    missing = found.line("columns").data["missing"]
    assert missing == ["engine_rpm", "pressure_kpa", "temp_c", "engine_torque_nm", "commanded_gear", "lockup"]


def test_values_that_are_not_there_prove_nothing() -> None:
    log = logs.driven(("3", "4", "5"))
    log["output_rpm"][np.random.default_rng(3).random(len(log["time_s"])) < 0.1] = np.nan
    line = prove(log).line("values")
    assert line.verdict == "NOT PROVEN" and "missing" in line.why and line.data["used_share"] == pytest.approx(0.9, abs=0.02)


@pytest.mark.parametrize(("hz", "gear_s"), [(100, 12.0), (10, 20.0), (1, 60.0)])
def test_the_rate_of_a_log_changes_what_is_proven_and_fails_nothing(hz: int, gear_s: float) -> None:
    found = prove(logs.driven(gear_s=gear_s, hz=hz))
    assert not failed(found)
    assert all(found.line(f"ratio in {name}").verdict == found.line(f"slip in {name}").verdict == "GO" for name in logs.UP)
    shifts = [line.about for line in found.lines if "count" in line.data]
    if hz == 1:
        assert not shifts and "too seldom" in found.line("every shift").why and "Log 10 rows a second, better 50" in str(found.next)
    else:
        assert len(shifts) == 14


@pytest.mark.parametrize(("noise_rpm", "step_rpm"), [(0.0, 1e-9), (0.0, 8.0), (5.0, 0.5)])
def test_smooth_coarse_and_noisy_speeds_fail_nothing(noise_rpm: float, step_rpm: float) -> None:
    found = prove(logs.driven(logs.UP, noise_rpm=noise_rpm, step_rpm=step_rpm))
    assert not failed(found)
    assert found.line("ratio in 4").verdict == "GO"


def test_values_that_cannot_be_are_counted_and_no_log_breaks_it() -> None:
    log = logs.driven(("3", "4"))
    log["input_rpm"][::50], log["output_rpm"][7::50], log["temp_c"][3] = 1e30, -5.0, np.inf
    found = prove(log)
    assert not failed(found) and "impossible" in found.line("values").why and found.line("ratio in 4").verdict == "GO"
    nothing = prove({"time_s": [0.0, 1.0, 2.0], "input_rpm": [np.nan, np.inf, -1.0], "output_rpm": [0.0, np.nan, 1e38]})
    assert not failed(nothing) and nothing.verdict == "NOT PROVEN" and nothing.sheet().answer


# ---- console, page, report


def run(*arguments: str) -> Any:
    return CliRunner().invoke(shop, ["proof", *arguments])


FILES = ["--family", str(DEMO / "family.toml"), "--variant", "wren", "--fluids", str(DEMO / "fluids.toml"), "--fleet", str(DEMO / "fleet.toml")]


def test_one_command_on_a_csv(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    result = run(str(TRACE), *FILES)
    assert result.exit_code == 0, result.output
    text = " ".join(result.output.split())
    assert "NO-GO: slip in 6, shift 4-5 warm, shift 5-6 warm. Run next: Hold gear 2 under load" in text
    assert "Run next" in text and "NOT PROVEN, not driven: 1, 2, 7, 8, R" in text and "common practice, no source" in text
    for caution in ("turning shafts", "road test", "hot fluid"):
        assert " ".join(hazard.caution(caution).split()[:6]) in text
    assert max(map(len, result.output.splitlines())) <= 80


def test_json_has_every_line_and_no_word_that_json_cannot_hold(tmp_path: Path) -> None:
    path = logs.write_csv(tmp_path / "run.csv", logs.driven(("3", "4")))
    result = run(str(path), *FILES, "--json")
    assert result.exit_code == 0, result.output
    assert not re.search(r"\b(NaN|Infinity)\b", result.output)
    told = json.loads(result.output)
    assert sum(told["counts"].values()) == len(told["lines"]) and {"verdict", "lines", "next", "shifts", "events"} <= set(told)
    assert all(line["verdict"] in ("GO", "NO-GO", "NOT PROVEN") and line["why"] for line in told["lines"])


def test_the_page_has_its_pictures_and_fetches_nothing(tmp_path: Path) -> None:
    page = tmp_path / "proof.html"
    assert run(str(TRACE), *FILES, "--page", str(page)).exit_code == 0
    html = page.read_text()
    assert html.count("<svg") == 5 and 'aria-label="Measured ratio"' in html and 'aria-label="Slip in gear 6"' in html
    assert "http" not in re.sub(r"http://www.w3.org/[^\"' ]*", "", html) and len(html) < 500_000


def test_columns_and_limits_are_given_on_the_command_line(tmp_path: Path) -> None:
    log = logs.driven(("3", "4"), slip_rpm={"4": 12.0})
    log["turbine"] = log.pop("input_rpm")
    path = str(logs.write_csv(tmp_path / "run.csv", log))
    assert "no column input_rpm" in str(run(path, *FILES).exception)
    strict = json.loads(run(path, *FILES, "--column", "input_rpm=turbine", "--json").output)
    loose = json.loads(run(path, *FILES, "--column", "input_rpm=turbine", "--slip", "30rpm", "--ratio-within", "2%", "--json").output)
    verdicts = [next(line["verdict"] for line in told["lines"] if line["about"] == "slip in 4") for told in (strict, loose)]
    assert verdicts[0] == "NO-GO" and verdicts[1] != "NO-GO"


def test_the_demonstration_shows_the_proof_run() -> None:
    records = Records.read(sorted(DEMO.glob("*.toml")))
    sheets = [part.sheet for part in parts_of(records) if "proof run" in part.sheet.title]
    assert len(sheets) == 1 and sheets[0].title.startswith("J11") and "slip in 6" in sheets[0].answer
