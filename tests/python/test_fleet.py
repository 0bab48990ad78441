"""Screening of a fleet: against the plain-NumPy pass, from every kind of source; and the list that it gives."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import duckdb
import numpy as np
import polars as pl
import pyarrow as pa
import pyarrow.parquet as pq
import pytest
from fleet_drives import (
    FAMILY, FLEET, FLUIDS, RULES, TRUCKS, arrow, close_to_oracle, drives, nonsense, oracle_units, plain, same_bits, units, written,
)  # fmt: skip
from trainwright import Error, fleet, hazard
from trainwright.duty import bus_signal, rank_intervals
from trainwright.fleet import invented
from trainwright.fleet.screening import _places


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return written(tmp_path_factory.mktemp("telematics"), days=5, rows_of_group=5000)


@pytest.fixture(scope="module")
def whole() -> fleet.Screening:
    return fleet.screen(drives(), units())


# ---- the sums


def test_invented_drives_as_the_oracle_counts_them(whole: fleet.Screening) -> None:
    expected = plain.screen(oracle_units(), RULES, drives())
    close_to_oracle(whole.totals, expected)
    met = {flag for flag in plain.FLAGS if sum(one[f"rows.{flag}"] for one in expected.values())}
    assert set(plain.FLAGS) - met <= {"bad_time_s", "bad_gear", "mismatch", "over_output", "hot", "beyond_scale"}, "the rest is for the nonsense below"


def test_nonsense_as_the_oracle_counts_it() -> None:
    rows = nonsense(20_000)
    expected = plain.screen(oracle_units(), RULES, rows)
    close_to_oracle(fleet.screen(rows, units()).totals, expected)
    for flag in plain.FLAGS:
        assert sum(one[f"rows.{flag}"] for one in expected.values()), flag


def test_each_row_as_the_oracle_has_it() -> None:
    """Flags, gear, margin and the rest of single rows, truck by truck."""
    rows = nonsense(4000, seed=8)
    for truck in TRUCKS[:3]:
        mine = rows["truck"] == truck
        block = {name: np.ascontiguousarray(values[mine], dtype=np.float64) for name, values in rows.items() if name != "truck"}
        expected = plain.rows(plain.Plan(oracle_units()[truck], RULES), block, None)
        wanted = ("flags", "gear", "duration_s", "input_torque_nm", "output_torque_nm", "greatest_share", "least_margin", "weakest", "converter_loss_kw", "gear_loss_kw", "gps_over_speed")
        screen = fleet.Screen(units(), outputs=wanted)
        found = screen.add({"truck": np.full(int(mine.sum()), truck, dtype=object), **block})
        flags = sum(expected[f"flag.{name}"].astype(np.uint32) << bit for bit, name in enumerate(plain.FLAGS))
        np.testing.assert_array_equal(found["flags"], flags)
        np.testing.assert_array_equal(found["gear"], expected["gear"])
        elements = np.array([*units()[truck].elements, None], dtype=object)[found["weakest"]]
        theirs = np.array([*oracle_units()[truck].elements, None], dtype=object)[expected["weakest"]]
        np.testing.assert_array_equal(elements, theirs)
        for name in ("duration_s", "input_torque_nm", "output_torque_nm", "greatest_share", "least_margin", "converter_loss_kw", "gear_loss_kw", "gps_over_speed"):
            np.testing.assert_allclose(found[name], expected[name], rtol=1e-12, atol=1e-9, err_msg=name)


def test_float32_columns_give_the_bits_of_their_promotion() -> None:
    narrow = {name: values if name in ("truck", "time_s") else values.astype(np.float32) for name, values in drives().items()}
    wide = {name: values if name == "truck" else values.astype(np.float64) for name, values in narrow.items()}
    same_bits(fleet.screen(narrow, units()).totals, fleet.screen(wide, units()).totals)


def test_columns_that_are_missing_are_said_and_form_nothing() -> None:
    few = {name: drives()[name] for name in ("truck", "time_s", "output_rpm", "temp_c")}
    found = fleet.screen(few, units())
    assert found.missing_columns == ("engine_rpm", "engine_torque_nm", "gps_km_h", "input_rpm", "pressure_kpa", "speed_km_h")
    assert any("engine_torque_nm" in remark for remark in found.remarks) and any("No damage" in remark for remark in found.remarks)
    assert found.totals["rows.low_margin"].sum() == 0 and found.totals["rows.no_torque"].sum() > 0
    close_to_oracle({**found.totals}, plain.screen(oracle_units(), RULES, few))


def test_raw_bus_values_are_decoded_and_their_kinds_counted() -> None:
    raw = np.array([8000, 8001, 0xFFFF, 0xFE12, 0xFC00, 8002, 8003, 8004], dtype=np.uint16)
    rows = {"truck": np.full(8, "T12", dtype=object), "time_s": np.arange(8.0), "engine_rpm": raw, "temp_c": np.full(8, 80.0)}
    found = fleet.screen(rows, units(), bus={"engine_rpm": bus_signal(network="J1939", number=190)})
    assert found.totals["rows.bad_engine_rpm"].tolist() == [3]
    kinds = {(bad["column"], bad["kind"]): bad["rows"] for bad in found.truck("T12")["bad_values"]}
    assert kinds == {("engine_rpm", "not_available"): 1, ("engine_rpm", "error"): 1, ("engine_rpm", "reserved"): 1}


# ---- where rows come from


def test_any_division_into_files_gives_the_same_bits(folder: Path, whole: fleet.Screening) -> None:
    paths = sorted(folder.glob("*.parquet"))
    without = ("_row",)  # a row has another number in another order of the files
    for rows in (str(folder / "*.parquet"), folder, paths, paths[::-1], [str(path) for path in paths]):
        same_bits(fleet.screen(rows, units()).totals, whole.totals, without=without)
    same_bits(fleet.screen(paths, units()).totals, fleet.screen(paths[::-1], units()).totals)


def test_frames_and_relations_of_other_libraries(folder: Path, whole: fleet.Screening) -> None:
    table = arrow(drives())
    frame = pl.DataFrame(table)
    sources = {
        "pyarrow table": table,
        "pyarrow reader": table.to_reader(max_chunksize=777),
        "Polars frame": frame,
        "Polars, streamed": frame.lazy(),
        "pandas": table.to_pandas(),
        "DuckDB": duckdb.sql("SELECT * FROM frame"),
        "dictionary column": table.set_column(0, "truck", table["truck"].dictionary_encode()),
        "Polars categories": frame.with_columns(pl.col("truck").cast(pl.Categorical)),
    }
    for name, source in sources.items():
        found = fleet.screen(source, units())
        try:
            same_bits(found.totals, whole.totals)
        except AssertionError as error:
            raise AssertionError(name) from error


def test_recipe_polars(folder: Path) -> None:
    """Streaming in, the answer back as a frame, joined with what else is known of the trucks."""
    rows = pl.scan_parquet(folder / "*.parquet").filter(pl.col("truck") != "T18")
    ranked = pl.DataFrame(fleet.screen(rows, units()))
    assert ranked["truck"].to_list()[0] == "T13" and "T18" not in ranked["truck"]
    depots = pl.DataFrame({"truck": TRUCKS, "depot": ["north", "south", "west"] * 3})
    assert ranked.join(depots, on="truck")["depot"].null_count() == 0


def test_recipe_duckdb(folder: Path) -> None:
    """The same from SQL, and SQL over the answer."""
    rows = duckdb.sql(f"SELECT * FROM '{folder}/*.parquet' WHERE truck <> 'T18'")
    ranked = fleet.screen(rows, units()).to_arrow()
    assert duckdb.sql("SELECT truck FROM ranked WHERE rank = 1").fetchall() == [("T13",)]
    assert duckdb.sql("SELECT count(*) FROM ranked WHERE truck = 'T18'").fetchall() == [(0,)]


def test_names_and_units_of_their_own(whole: fleet.Screening) -> None:
    rows = drives()
    theirs = {
        {"truck": "vehicle", "temp_c": "sump_f", "gps_km_h": "gps_mph", "time_s": "time_ms"}.get(name, name): values for name, values in rows.items()
    }
    theirs["sump_f"] = theirs["sump_f"] * 9 / 5 + 32
    theirs["gps_mph"] = theirs["gps_mph"] / 1.609344
    theirs["time_ms"] = theirs["time_ms"] * 1e3
    found = fleet.screen(theirs, units(), columns={"truck": "vehicle", "temp_c": "sump_f"})
    for name in ("rows", "known_s", "rows.low_margin", "rows.gap"):
        assert found.totals[name].tolist() == whole.totals[name].tolist(), name
    np.testing.assert_allclose(found.totals["hottest_c"], whole.totals["hottest_c"])
    np.testing.assert_allclose(found.totals["gps_km"], whole.totals["gps_km"])
    stamps = pa.array((rows["time_s"] * 1e9).astype(np.int64)).cast(pa.timestamp("ns"))
    table = arrow(rows)
    stamped = table.set_column(table.schema.get_field_index("time_s"), "time_s", stamps)
    assert fleet.screen(stamped, units()).totals["known_s"].tolist() == pytest.approx(whole.totals["known_s"].tolist())


@pytest.mark.parametrize(
    ("rows", "options", "parameter", "words"),
    [
        ("nowhere/*.parquet", {}, "rows", "no file matches"),
        (Path(__file__), {}, "rows", "cannot be read as Parquet"),
        ({"time_s": [1.0]}, {}, "columns", "no column truck"),
        ({"truck": ["T11"], "time_s": [1.0, 2.0]}, {}, "rows", "differ in length"),
        (42, {}, "rows", "no table"),
        ({"truck": ["T11"], "time_s": [1.0]}, {"columns": {"oil": "x"}}, "columns", "no column of the pass"),
        ({"truck": ["T11"], "time_s": [1.0]}, {"columns": {"temp_c": "x"}}, "columns", "no column 'x'"),
        ({"truck": ["T11"], "time_s": [1.0]}, {"by": "color"}, "by", "ranks nothing"),
        ({"truck": ["T11"], "time_s": [1.0]}, {"state": "s"}, "state", "cannot be resumed"),
    ],
)
def test_a_refusal_says_what_to_give(rows: Any, options: dict[str, Any], parameter: str, words: str) -> None:
    with pytest.raises(Error, match=words) as refused:
        fleet.screen(rows, units(), **options)
    assert refused.value.parameter == parameter


def test_a_truck_without_a_unit_is_named() -> None:
    rows = {"truck": ["T11", "X99"], "time_s": [1.0, 2.0]}
    with pytest.raises(Error, match="X99"):
        fleet.screen(rows, units())


def test_no_rows_are_no_trucks() -> None:
    empty = {name: values[:0] for name, values in drives().items()}
    found = fleet.screen(arrow(empty).cast(arrow(drives()).schema), units())
    assert len(found) == 0 and found.rows == 0 and found.as_dict()["trucks"] == []
    assert "<table" in found._repr_html_()


# ---- the list


def test_the_list_says_why_and_what_to_do(whole: fleet.Screening) -> None:
    table = whole.columns()
    assert table["truck"][0] == "T13" and table["worst_set"][0] == "P2"
    by_truck = dict(zip(table["truck"], table["reason"]))
    assert "over its rating" in by_truck["T13"]
    assert "90.2 km/h at 100" in by_truck["T16"] and "120.6 km/h at 100" in by_truck["T17"]
    assert by_truck["T18"] == "nothing stands out"
    assert (table["rank"] == np.arange(1, 10)).all()
    assert (table["rank_best"] <= table["rank"]).all() and (table["rank"] <= table["rank_worst"]).all()
    assert (table["worst_damage"] <= table["worst_damage_most"]).all()
    html = whole._repr_html_()
    assert html.count("<tr>") == 10 and "T13" in html and hazard.caution("towing").split(":")[0] in html.replace("&#x27;", "'")
    detail = whole.truck("T13")
    assert detail["rank"] == 1 and detail["totals"]["rows"] == 3000 and any(bad["kind"] == "missing" for bad in detail["bad_values"])
    with pytest.raises(Error, match="no truck"):
        whole.truck("T99")


def test_pictures_show_the_first_trucks(whole: fleet.Screening) -> None:
    pictures = whole.pictures(top=4)
    assert len(pictures) == 2
    for svg in pictures.values():
        assert svg.lstrip().startswith(("<svg", "<?xml")) and "T13" in svg and "T18" not in svg
    with pytest.raises(Error, match="nothing to draw"):
        fleet.screen({name: drives()[name] for name in ("truck", "time_s")}, units()).pictures()


def test_another_order_by_another_question(whole: fleet.Screening) -> None:
    for by, column in (("over_rating", "over_rating_h"), ("low_margin", "low_margin_h"), ("fluid_life", "life_used")):
        table = fleet.screen(drives(), units(), by=by).columns()
        assert (np.diff(table[column]) <= 0).all(), by


def test_unknown_hours_widen_the_interval_of_places() -> None:
    rows = drives(3000, 0.0)
    gaps = dict(rows)
    gaps["time_s"] = rows["time_s"] + np.where(rows["truck"] == "T14", np.arange(len(rows["time_s"])) // 100 * 500.0, 0.0)
    sure, unsure = (fleet.screen(one, units()).truck("T14") for one in (rows, gaps))
    assert unsure["unknown_h"] > sure["unknown_h"] == 0.0
    assert unsure["rank_best"] < sure["rank_best"] == sure["rank"] == sure["rank_worst"]


def test_places_are_those_of_the_chapter() -> None:
    random = np.random.default_rng(2)
    least = random.uniform(0.0, 1.0, 200).round(2)
    most = least + random.choice([0.0, 0.01, 0.3], 200)
    least[:7], most[5:9] = np.nan, np.nan
    best, last = _places(least, most)
    assert list(zip(best, last)) == [(place.first, place.last) for place in rank_intervals(least, most)]


def test_outputs_hold_the_same_list_and_the_cautions(whole: fleet.Screening, tmp_path: Path) -> None:
    for ending in ("parquet", "csv", "json"):
        whole.save(tmp_path / f"ranked.{ending}")
    expected = whole.columns()["truck"].tolist()
    assert pl.read_parquet(tmp_path / "ranked.parquet")["truck"].to_list() == expected
    assert pl.read_csv(tmp_path / "ranked.csv")["truck"].to_list() == expected
    told = json.loads((tmp_path / "ranked.json").read_text(encoding="utf-8"))
    assert [truck["truck"] for truck in told["trucks"]] == expected
    for ending in ("parquet", "csv", "json"):
        data = (tmp_path / f"ranked.{ending}").read_bytes()
        assert b"ratings" in data and b"promises no life" in data, ending
    assert b"cautions" in pq.read_schema(tmp_path / "ranked.parquet").metadata
    with pytest.raises(Error, match="ends in none"):
        whole.save(tmp_path / "ranked.txt")


def test_units_from_records() -> None:
    assert list(units()) == TRUCKS
    assert units()["T13"].gears == ["1", "2", "3", "4", "5", "6", "7", "8", "R"]
    like = fleet.units(FAMILY, FLEET, FLUIDS, trucks={"V1": "T13", 7: "T11"})
    assert set(like) == {"V1", 7}
    with pytest.raises(Error, match="no truck 'T99'"):
        fleet.units(FAMILY, FLEET, FLUIDS, trucks={"V1": "T99"})


def test_a_large_fleet_is_one_call(tmp_path: Path) -> None:
    """Two thousand trucks of all kinds; those with larger tires than programmed are found, and no other."""
    many = invented.trucks(FAMILY, FLEET, 2000)
    invented.write_parquet(tmp_path, many, 600, files=3, troubles=0.3)
    found = fleet.screen(tmp_path, fleet.units(FAMILY, FLEET, FLUIDS, trucks={truck.name: truck.like for truck in many}))
    assert len(found) == 2000 and found.rows == 1_200_000
    table = found.columns()
    wrong = {truck.name for truck in many if abs(truck.shown_rpm_per_km_h / truck.output_rpm_per_km_h - 1.0) > 0.03}
    told = {truck for truck, reason, rows in zip(table["truck"], table["reason"], table["gps_rows"]) if "by GPS" in reason}
    enough = {truck for truck, rows in zip(table["truck"], table["gps_rows"]) if rows >= 300}
    assert told == wrong & enough and len(told) > 500


def test_progress_is_quiet_where_nobody_watches(capfd: pytest.CaptureFixture[str]) -> None:
    fleet.screen(drives(), units(), progress=True)
    out, err = capfd.readouterr()
    assert out == err == ""
