"""The native pass over rows: one row and many, every kind of input, any pieces, threads and order: the same bits."""

from __future__ import annotations

import numpy as np
import pytest
import trainwright
from screen_rows import rows, unit
from hypothesis import given, settings
from hypothesis import strategies as st
from trainwright import duty
from trainwright._native import fleet

UNIT = unit()
ALL = [*fleet.OUTPUTS, "margin.E1", "demand_nm.E2", "damage.P3"]


def same(one, other):
    assert one.keys() == other.keys()
    for name in one:
        np.testing.assert_array_equal(one[name], other[name], err_msg=name)


def piece(data, start, end):
    return {name: column[start:end] for name, column in data.items()}


def test_every_row_is_the_scalar_call():
    data = rows(3000, seed=3, bad=0.2, trucks=3)
    answers = fleet.Screen(UNIT, outputs=ALL).add(data)
    before, last = None, None
    for at in range(len(data["truck"])):
        row = {name: data[name][at] for name in fleet.COLUMNS}
        if data["truck"][at] != last:
            before, last = None, data["truck"][at]
        expected = UNIT.row(row, before)
        for name in ALL:
            np.testing.assert_array_equal(answers[name][at], expected[name], err_msg=f"row {at}: {name}")
        before = row


def test_a_partial_does_not_depend_on_what_else_is_asked():
    data = rows(5000, seed=4, bad=0.1, trucks=4)
    whole = fleet.Screen(UNIT)
    whole.add(data)
    asked = fleet.Screen(UNIT, outputs=ALL)
    asked.add(data)
    same(whole.totals(), asked.totals())
    few = fleet.Screen(UNIT, aggregates=["damage"])
    few.add(data)
    totals = whole.totals()
    for name, column in few.totals().items():
        if not name.startswith(("rows.", "seconds.")):
            np.testing.assert_array_equal(column, totals[name], err_msg=name)


@settings(max_examples=25, deadline=None)
@given(
    seed=st.integers(0, 1000),
    cuts=st.lists(st.integers(1, 3999), max_size=6),
    threads=st.integers(1, 3),
    order=st.randoms(use_true_random=False),
)
def test_pieces_threads_and_order_change_no_bit(seed, cuts, threads, order):
    data = rows(4000, seed=seed, bad=0.1, trucks=5)
    whole = fleet.Screen(UNIT)
    whole.add(data)
    borders = sorted({0, *cuts, 4000})
    stream = fleet.Screen(UNIT, threads=threads)
    partials = []
    for start, end in zip(borders, borders[1:]):
        stream.add(piece(data, start, end))
        partial = fleet.Screen(UNIT)
        partial.add(piece(data, start, end), first_row=start)
        partials.append(fleet.Screen.from_bytes(UNIT, partial.to_bytes()))
    order.shuffle(partials)
    first, *others = partials
    for other in others:
        first.merge(other)
    assert first.rows == stream.rows == whole.rows == 4000
    same(whole.totals(), stream.totals())
    same(whole.totals(), first.totals())
    same(whole.bad_values(), first.bad_values())


def test_answers_of_rows_do_not_keep_partials_apart():
    data = rows(4000, seed=3, bad=0.1, trucks=5)
    whole, first, second = fleet.Screen(UNIT), fleet.Screen(UNIT), fleet.Screen(UNIT, outputs=["flags", "weakest", "aged_s"])
    whole.add(data)
    first.add(piece(data, 0, 1900))
    second.add(piece(data, 1900, 4000), first_row=1900)
    first.merge(second)
    same(whole.totals(), first.totals())


def test_interleaved_trucks_are_those_one_after_the_other():
    data = rows(6000, seed=8, bad=0.05, trucks=50)
    sorted_ = fleet.Screen(UNIT, outputs=["flags", "damage.P1"])
    answers = sorted_.add(data)
    # Rows of a truck keep their order when trucks are mixed row by row.
    keys = np.random.default_rng(2).permutation(6000)
    shuffle = np.argsort(keys, kind="stable")
    rows_of = {truck: iter(np.flatnonzero(data["truck"] == truck)) for truck in np.unique(data["truck"])}
    interleaved = np.array([next(rows_of[truck]) for truck in data["truck"][shuffle]])
    mixed = {name: column[interleaved] for name, column in data.items()}
    screen = fleet.Screen(UNIT, outputs=["flags", "damage.P1"])
    mixed_answers = screen.add(mixed)
    for name in ("flags", "damage.P1"):
        np.testing.assert_array_equal(mixed_answers[name], answers[name][interleaved])
    totals, mixed_totals = sorted_.totals(), screen.totals()
    for name in totals:
        if not name.endswith(("_row", "_time_s", "_gear", "_element")):
            np.testing.assert_array_equal(totals[name], mixed_totals[name], err_msg=name)


def test_arrow_numpy_and_single_precision_agree():
    pyarrow = pytest.importorskip("pyarrow")
    polars = pytest.importorskip("polars")
    data = rows(3000, seed=5, bad=0.1, trucks=3)
    names = np.array(["T11", "T12", "T13"])[data["truck"]]
    expected = fleet.Screen(UNIT)
    expected.add({**data, "truck": names})
    table = pyarrow.table({**data, "truck": names})
    chunked = pyarrow.concat_tables([table.slice(0, 700), table.slice(700, 1), table.slice(701)])
    for source in (
        chunked,
        chunked.to_reader(),
        table.combine_chunks().to_batches()[0],
        chunked.set_column(table.schema.get_field_index("truck"), "truck", chunked["truck"].dictionary_encode()),
        chunked.cast(pyarrow.schema([f if f.name != "truck" else pyarrow.field("truck", pyarrow.large_string()) for f in table.schema])),
        polars.from_arrow(chunked),
        {**data, "truck": names.astype(object)},
    ):
        screen = fleet.Screen(UNIT)
        screen.add(source)
        same(expected.totals(), screen.totals())
    single = {name: column.astype(np.float32) if name not in ("truck", "time_s") else column for name, column in data.items()}
    promoted = {name: column.astype(np.float64) if name != "truck" else column for name, column in single.items()}
    one, other = fleet.Screen(UNIT, outputs=ALL), fleet.Screen(UNIT, outputs=ALL)
    same(one.add(single), other.add(promoted))
    same(one.totals(), other.totals())
    strided = {name: np.repeat(column, 2)[::2] for name, column in data.items()}
    screen = fleet.Screen(UNIT)
    screen.add(strided)
    whole = fleet.Screen(UNIT)
    whole.add(data)
    same(screen.totals(), whole.totals())


def test_missing_columns_nulls_and_bus_values_are_said():
    pyarrow = pytest.importorskip("pyarrow")
    data = rows(500, seed=6)
    screen = fleet.Screen(UNIT)
    screen.add({name: data[name] for name in ("truck", "time_s", "input_rpm", "output_rpm")})
    assert "pressure_kpa" in screen.missing_columns and "input_rpm" not in screen.missing_columns
    assert len(screen.bad_values()["rows"]) == 0
    holes = pyarrow.table(data).set_column(6, "temp_c", pyarrow.array([None, *data["temp_c"][1:]]))
    screen = fleet.Screen(UNIT)
    screen.add(holes)
    bad = screen.bad_values()
    assert [(str(c), str(k), int(n)) for c, k, n in zip(bad["column"], bad["kind"], bad["rows"])] == [("temp_c", "missing", 1)]
    signal = duty.bus_signal(network="J1939", number=191)
    raw = (data["output_rpm"] * 8).astype(np.uint16)
    raw[:4] = [0xFFFF, 0xFE00, 0xFC00, 0xFB10]
    screen = fleet.Screen(UNIT, bus={"output_rpm": signal})
    screen.add({**data, "output_rpm": raw})
    bad = screen.bad_values()
    kinds = dict(zip(map(str, bad["kind"]), map(int, bad["rows"])))
    assert kinds == {"not_available": 1, "error": 1, "reserved": 2}
    assert screen.totals()["rows.bad_output_rpm"][0] == 4


def test_bad_input_is_refused_by_name():
    data = rows(100)
    for change, expected in [
        ({"truck": data["truck"][:5]}, "COUNT"),
        ({"time_s": None}, "MISSING"),
        ({"temp_c": np.array(["hot"] * 100)}, "TEXT"),
    ]:
        changed = {name: column for name, column in {**data, **change}.items() if column is not None}
        with pytest.raises(trainwright.Error) as error:
            fleet.Screen(UNIT).add(changed)
        assert error.value.kind == expected, change
    with pytest.raises(trainwright.Error) as error:
        fleet.Screen({"T1": UNIT}).add(data)
    assert error.value.kind == "MISSING"
    with pytest.raises(trainwright.Error) as error:
        fleet.Screen(UNIT, outputs=["marign.E1"])
    assert error.value.kind == "TEXT"
    one, other = fleet.Screen(UNIT), fleet.Screen(unit(rated_input_nm=600.0))
    with pytest.raises(trainwright.Error) as error:
        one.merge(other)
    assert error.value.kind == "INCONSISTENT"
    for broken in (b"", one.to_bytes()[:-1], other.to_bytes()):
        with pytest.raises(trainwright.Error):
            fleet.Screen.from_bytes(UNIT, broken)


def test_progress_and_its_exception_stop_the_pass():
    data = rows(3_000_000 // 2)
    seen = []

    def progress(done):
        seen.append(done)
        if len(seen) == 1:
            raise KeyboardInterrupt

    screen = fleet.Screen(UNIT, aggregates=["time"], threads=1)
    with pytest.raises(KeyboardInterrupt):
        screen.add(data, progress=progress)
    assert 0 < screen.rows == seen[0] < len(data["truck"])
    screen.add(piece(data, screen.rows, None), progress=None)
    whole = fleet.Screen(UNIT, aggregates=["time"])
    whole.add(data)
    same(screen.totals(), whole.totals())
