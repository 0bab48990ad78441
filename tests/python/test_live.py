"""The monitors of running units: what a constructor refuses, one by one against whole arrays, many units in any mixture."""

from __future__ import annotations

import copy
import math
import pickle
from pathlib import Path
from typing import Any

import numpy as np
import pyarrow as pa
import pytest
import trainwright
from hypothesis import given, settings
from hypothesis import strategies as st
from trainwright import Error, live, record
from trainwright.duty import BusSignal
from trainwright.live import Element, Gear, Limits, Monitor, SpeedSensor, Suspect, Unit, Watch, watch

DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY, INSTRUMENTS = record.load(DEMO / "family.toml"), record.load(DEMO / "instruments.toml")
LIMITS = Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4)
NOISE = {"input": 0.9, "output": 0.7, "engine": 4.0}
SENSORS = live.sensors(INSTRUMENTS, "bus", noise_rpm=NOISE, age_limit_s=0.035, greatest_rpm=8000.0)
WREN = Unit.of_train(FAMILY.train("wren"), **SENSORS, limits=LIMITS, sample_s=0.01)
HERON = Unit.of_train(FAMILY.train("heron"), **SENSORS, limits=LIMITS, sample_s=0.01)
NAMES = {
    "time_s": "time_s", "input_rpm": "n_input_rpm", "output_rpm": "n_output_rpm", "engine_rpm": "n_engine_rpm",
    "pressure_kpa": "line_kpa", "temp_c": "sump_c", "gear": "commanded_gear", "lockup": "lockup",
}  # fmt: skip


def trace() -> dict[str, Any]:
    theirs = np.genfromtxt(DEMO / "trace" / "trace.csv", delimiter=",", names=True)
    return {ours: theirs[name] for ours, name in NAMES.items()}


TRACE = trace()


def pushed(unit: Unit, samples: dict[str, Any]) -> tuple[Monitor, list[live.State]]:
    """One sample after the other; those without a time are left out."""
    monitor, states = Monitor(unit), []
    for row in zip(*samples.values(), strict=True):
        sample = dict(zip(samples, row, strict=True))
        if 0.0 <= sample["time_s"] < 9e9:
            monitor.push(**sample)
        states.append(monitor.state)
    return monitor, states


def same(left: dict[str, Any], right: dict[str, Any]) -> None:
    assert left.keys() == right.keys()
    for name in left:
        assert left[name].dtype.kind == right[name].dtype.kind
        np.testing.assert_array_equal(left[name], right[name], err_msg=name)


def of_events(events: list[live.Event]) -> list[tuple[Any, ...]]:
    return [(event.kind, event.gear, event.other_gear, event.speed, " ".join(event.suspects), event.at_s, event.found_s, event.value, event.u) for event in events]


def listed(table: dict[str, Any]) -> list[tuple[Any, ...]]:
    return list(zip(*(values.tolist() for name, values in table.items() if name != "unit"), strict=True))


def alike(left: list[tuple[Any, ...]], right: list[tuple[Any, ...]]) -> None:
    """Equal, where NaN is NaN."""
    assert repr(left) == repr(right)


# ---- classes


SOME = [
    SENSORS["input"], SpeedSensor.counted(teeth=40, noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0),
    SpeedSensor.edges(teeth=40, tick_s=5e-7, noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0), LIMITS, WREN, WREN.gears[3], WREN.gears[3].suspects[0],
    Element(name="C1", heat_capacity_j_k=2000.0, cooling_s=20.0, limit_c=250.0), Monitor(WREN).counts, Monitor(WREN).suspects(),
    live.RankedSuspect(element="C1", ln_odds=1.5), SENSORS["input"].spread(), live.GearEvidence.SLIPS,
    live.SpeedPair(input=SENSORS["input"].spread(), output=SENSORS["output"].spread(), sample_s=0.01),
    live.ShiftsToLimit(rise_k=40.0, settled_c=340.5, shifts=4),
    live.Event(kind="slip", gear="6", other_gear="none", speed="", suspects=["C1", "C2"], at_us=1, found_us=2, value=1.25, u=0.5),
    live.State(gear="4", phase="in gear", alarm=False, used=True, ratio=1.75, ratio_u=0.5, slip_rpm=0.25, slip_u_rpm=1.0, converter_slip_rpm=2.0),
    live.Ratio(ratio=1.7, u=0.1, windows=3, slipping=0, slip_share=0.0),
    live.Shift(from_gear="3", to_gear="4", element=None, cold=False, commanded_us=1, half_us=2, fill_s=0.1, torque_s=0.1, inertia_s=0.1, duration_s=0.1,
               flare_rpm=0.0, flare_u_rpm=1.0, dip_rpm=0.0, dip_u_rpm=1.0, slip_rad=1.0, energy_j=1.0, plate_c=90.0, rise_k=5.0, shifts_to_overheat=8.0, temp_c=85.0),
]  # fmt: skip


@pytest.mark.parametrize("value", SOME, ids=lambda value: type(value).__name__)
def test_a_class_survives_repr_pickle_and_copy(value: Any) -> None:
    assert eval(repr(value), vars(live)) == value
    for twin in (pickle.loads(pickle.dumps(value)), copy.deepcopy(value)):
        assert twin == value
        assert hash(twin) == hash(value)
    assert repr(next(iter(value.as_dict().values()))) in repr(value) or value.as_dict()
    assert f"<caption>{type(value).__name__}</caption>" in value._repr_html_()
    with pytest.raises(AttributeError):
        value.ratio = 3


def test_words_are_those_of_the_core() -> None:
    assert {word for kind in live.EVENT_KINDS for word in [live.Event(kind=kind, gear="", other_gear="", speed="", suspects=[], at_us=0, found_us=0, value=0, u=0).kind]} == set(live.EVENT_KINDS)
    for phase in live.PHASES:
        assert live.State(gear="", phase=phase, alarm=False, used=False, ratio=0, ratio_u=0, slip_rpm=0, slip_u_rpm=0, converter_slip_rpm=0).phase == phase
    with pytest.raises(Error, match="give one of no gear, in gear"):
        live.State(gear="", phase="parked", alarm=False, used=False, ratio=0, ratio_u=0, slip_rpm=0, slip_u_rpm=0, converter_slip_rpm=0)


def test_the_sensors_come_from_the_record() -> None:
    assert SENSORS["engine"] == SpeedSensor(source="bus", step_rpm=0.5, noise_rpm=4.0, age_limit_s=0.035, greatest_rpm=8000.0)
    edges = live.sensors(INSTRUMENTS, "edges", noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0)
    assert (edges["input"].teeth, edges["output"].teeth, edges["engine"].teeth) == (40, 30, 58)
    assert edges["input"].tick_s == pytest.approx(0.5e-6)
    with pytest.raises(Error, match="no counter of shaft speeds 'feeler'"):
        live.sensors(INSTRUMENTS, "bus", noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0, counter="feeler")
    with pytest.raises(Error, match="none of bus, counted, edges"):
        live.sensors(INSTRUMENTS, "radar", noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0)


def test_a_unit_has_the_gears_of_its_train_and_the_heat_that_is_known() -> None:
    assert WREN.gear_names == ["1", "2", "3", "4", "5", "6", "7", "8", "R"]
    exact = {gear.id: gear.ratio for gear in FAMILY.train("wren").gears()}
    assert {gear.name: gear.ratio for gear in WREN.gears} == {name: float(np.float32(exact[name])) for name in WREN.gear_names}
    plates = Element(name="C1", heat_capacity_j_k=2000.0, cooling_s=20.0, limit_c=250.0)
    unit = Unit.of_train(FAMILY.train("wren"), **SENSORS, limits=LIMITS, sample_s=0.01, heat=[plates])
    assert plates in unit.elements
    assert unit != WREN
    with pytest.raises(Error, match='no element "C9"'):
        Unit.of_train(FAMILY.train("wren"), **SENSORS, limits=LIMITS, sample_s=0.01, heat=[Element(name="C9")])


def test_the_elements_of_two_gears_tell_which_one_slips() -> None:
    """Step 14 of the job: slip in 3 but not 5 means C1, in 5 but not 3 C3, in both B1."""
    slips, holds = live.GearEvidence.SLIPS, live.GearEvidence.HOLDS
    for third, fifth, element in ((slips, holds, "C1"), (holds, slips, "C3"), (slips, slips, "B1")):
        found = WREN.weigh_suspects({"3": third, "4": slips, "5": fifth})
        assert found.suspects[0].element == element
        assert found.suspects[0].ln_odds > found.sensors_ln_odds
    assert WREN.weigh_suspects({"4": holds}).suspects == []
    in_fourth = WREN.weigh_suspects({"4": slips})
    assert {suspect.element for suspect in in_fourth.suspects} >= {"B1", "C1", "C3"}
    assert in_fourth.next_gear in WREN.gear_names
    assert "Odds of each element" in str(in_fourth.explain())
    with pytest.raises(Error, match='gear = "9": the unit has no such gear'):
        WREN.weigh_suspects({"9": slips})


# ---- refusals

BUS = SENSORS["input"]
FIRST = Gear(name="1", number=1, ratio=4.0)


def unit_with(**changed: Any) -> Unit:
    return Unit(**{"gears": [FIRST], "input": BUS, "output": BUS, "limits": LIMITS, "sample_s": 0.01} | changed)


@pytest.mark.parametrize(
    ("made", "parameter"),
    [
        (lambda: SpeedSensor.bus(step_rpm=-0.5, noise_rpm=0.9, age_limit_s=0.05, greatest_rpm=8000.0), "step_rpm"),
        (lambda: SpeedSensor.bus(step_rpm=0.5, noise_rpm=math.nan, age_limit_s=0.05, greatest_rpm=8000.0), "noise_rpm"),
        (lambda: SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.9, age_limit_s=0.0, greatest_rpm=8000.0), "age_limit_s"),
        (lambda: SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.9, age_limit_s=0.05, greatest_rpm=math.inf), "greatest_rpm"),
        (lambda: SpeedSensor.counted(teeth=0, noise_rpm=0.0, age_limit_s=0.05, greatest_rpm=8000.0), "teeth"),
        (lambda: SpeedSensor.edges(teeth=40, tick_s=0.0, noise_rpm=0.0, age_limit_s=0.05, greatest_rpm=8000.0), "tick_s"),
        (lambda: SpeedSensor(source="edges", teeth=40, noise_rpm=0.0, age_limit_s=0.05, greatest_rpm=8000.0), "tick_s"),
        (lambda: SpeedSensor(source="radar", noise_rpm=0.0, age_limit_s=0.05, greatest_rpm=8000.0), "source"),
        (lambda: unit_with(gears=[]), "gears"),
        (lambda: unit_with(gears=[FIRST] * 2), "gears"),
        (lambda: unit_with(gears=[Gear(name=str(number), number=number, ratio=1.1**number) for number in range(1, 14)]), "gears"),
        (lambda: unit_with(gears=[Gear(name="none", number=1, ratio=4.0)]), "gears"),
        (lambda: unit_with(gears=[Gear(name="1", number=0, ratio=4.0)]), "gear.number"),
        (lambda: unit_with(gears=[Gear(name="1", number=1, ratio=math.nan)]), "ratio"),
        (lambda: unit_with(gears=[Gear(name="1", number=1, ratio=4.0, suspects=[Suspect(element="C1", slip_per_input_slip=1.0)])]), "gears"),
        (lambda: unit_with(elements=[Element(name=f"C{number}") for number in range(9)]), "elements"),
        (lambda: unit_with(elements=[Element(name="C1")] * 2), "elements"),
        (lambda: unit_with(sample_s=0.0), "sample_s"),
        (lambda: unit_with(limits=Limits(**LIMITS.as_dict() | {"run_length_s": 0.0})), "run_length_s"),
        (lambda: unit_with(limits=Limits(**LIMITS.as_dict() | {"cold_c": 200.0})), "cold_c, hot_c"),
    ],
)  # fmt: skip
def test_a_refusal_names_the_parameter(made: Any, parameter: str) -> None:
    with pytest.raises(Error) as caught:
        made()
    assert caught.value.parameter == parameter
    assert caught.value.kind


SAMPLES = {"time_s": [0.0, 0.01], "input_rpm": [1000.0, 1000.0], "output_rpm": [250.0, 250.0]}


@pytest.mark.parametrize(
    ("arguments", "samples", "words"),
    [
        ({}, {"input_rpm": [1.0], "output_rpm": [1.0]}, "time_s is missing: give the time"),
        ({}, {"time_s": [1.0], "input_rpm": [1.0]}, "output_rpm is missing: the sensors of the unit need it"),
        ({}, {**SAMPLES, "output_rpm": [1.0]}, "column output_rpm has another length"),
        ({}, {**SAMPLES, "input_rpm": ["a", "b"]}, "column input_rpm: give an array of numbers"),
        ({"name": "A"}, {**SAMPLES, "unit": ["A", "B"]}, "unit: the data has a column of this name"),
        ({}, {**SAMPLES, "unit": [1.5, 2.5]}, "unit: give text or a whole number"),
        ({"outputs": ["torque"]}, SAMPLES, "outputs: there is no \"torque\"; there are gear, phase"),
        ({"threads": 0}, SAMPLES, "threads = 0: give 1 or more"),
        ({"columns": {"speed": "n"}}, SAMPLES, "there is no column 'speed'"),
        ({"columns": {"input_rpm": "n"}}, SAMPLES, "the samples have no column n; they have input_rpm"),
        ({"bus": {"time_s": BusSignal(rules="plain", bits=16, resolution=0.125, offset=0.0, lower=0.0, upper=8000.0)}}, SAMPLES, "there is no bus column \"time_s\""),
    ],
)  # fmt: skip
def test_samples_that_cannot_be_taken_are_refused(arguments: dict[str, Any], samples: dict[str, Any], words: str) -> None:
    with pytest.raises(Error) as caught:
        watch(WREN, samples, **arguments)
    assert words in str(caught.value)


def test_a_unit_must_be_given_for_every_name() -> None:
    with pytest.raises(Error, match="there is no Unit for B; add it"):
        watch({"A": WREN}, SAMPLES | {"unit": ["A", "B"]})
    with pytest.raises(Error, match="the dictionary is empty"):
        watch({}, SAMPLES)
    with pytest.raises(Error, match="give a Unit for all, or a dictionary"):
        watch("wren", SAMPLES)  # type: ignore[arg-type]
    with pytest.raises(Error, match="unit: row 1 has none"):
        watch(WREN, pa.table(SAMPLES | {"unit": ["A", None]}))


def test_a_push_needs_a_time_and_a_gear_that_is_there() -> None:
    monitor = Monitor(WREN)
    for time in ({}, {"time_s": math.nan}, {"time_s": -1.0}, {"time_us": math.inf}):
        with pytest.raises(Error, match="give the time of the sample"):
            monitor.push(**time, input_rpm=1000.0, output_rpm=250.0)
    with pytest.raises(Error, match="gear = \"9\": give one of 1, 2, 3"):
        monitor.push(time_s=0.0, gear="9")
    assert monitor.push(time_us=5, gear="R") == []
    assert monitor.counts.samples == 1


# ---- one by one, and all at once


def test_whole_arrays_give_what_single_samples_give() -> None:
    watched = watch(WREN, TRACE, outputs=live.OUTPUTS)
    monitor, states = pushed(WREN, TRACE)
    alike(listed(watched.events), of_events(monitor.events))
    assert len(monitor.events) > 3
    for name in ("ratio", "ratio_u", "slip_rpm", "slip_u_rpm", "converter_slip_rpm", "alarm", "used"):
        want = np.array([getattr(state, name) for state in states], dtype=watched.samples[name].dtype)
        np.testing.assert_array_equal(watched.samples[name], want)
    gears = [*WREN.gear_names, "unknown", "standing", "none"]
    assert [gears[place] for place in watched.samples["gear"]] == [state.gear for state in states]
    assert [live.PHASES[place] for place in watched.samples["phase"]] == [state.phase for state in states]
    assert watched.monitor().counts == monitor.counts
    assert repr(watched.monitor().shifts) == repr(monitor.shifts)
    assert {name: values.tolist() for name, values in watched.counts.items() if name not in ("unit", "no_time")} == {
        name: [value] for name, value in monitor.counts.as_dict().items()
    }
    assert watched.missing_columns == ["engine_torque_nm"]
    assert "6,001 samples of 1 units" in repr(watched)
    assert repr(watched.monitor()).startswith("<Monitor after 6001 samples")


def test_renamed_columns_frames_and_pieces_give_the_same() -> None:
    want = watch(WREN, TRACE, outputs=live.OUTPUTS)
    theirs = {NAMES[ours]: values for ours, values in TRACE.items()}
    frames: list[Any] = [theirs, pa.table(theirs)]
    frames += [pytest.importorskip(module).DataFrame(theirs) for module in ("pandas", "polars")]
    for frame in frames:
        got = watch(WREN, frame, columns=NAMES, outputs=live.OUTPUTS)
        same(got.events, want.events)
        same(got.samples, want.samples)
    table = pa.table(TRACE)
    pieces = pa.Table.from_batches(table.to_batches(max_chunksize=700))
    got = watch(WREN, pieces, outputs=live.OUTPUTS)
    same(got.events, want.events)
    same(got.samples, want.samples)
    streamed = Watch(WREN)
    for start in range(0, 6001, 999):
        streamed.add({name: values[start : start + 999] for name, values in TRACE.items()})
    same(streamed.events(), want.events)
    same(streamed.counts(), want.counts)
    assert streamed.rows == 6001


def test_the_tables_are_those_of_any_data_frame_and_a_notebook_shows_them() -> None:
    watched = watch(WREN, TRACE, name="bench 2")
    for table in (watched.events, watched.shifts, watched.ratios, watched.suspects, watched.counts):
        rows = len(table["unit"])
        assert pytest.importorskip("pandas").DataFrame(table).shape == (rows, len(table))
        assert pytest.importorskip("polars").DataFrame(table).shape == (rows, len(table))
        assert pa.table(table).num_rows == rows
    page = watched._repr_html_()
    assert "bench 2" in page and "gear reached" in page and "engine_torque_nm" in page
    assert trainwright.hazard.caution("hot parts").split(":")[0] in page.replace("&#x27;", "'")


def test_types_of_columns_do_not_matter() -> None:
    want = watch(WREN, TRACE)
    whole = {name: TRACE[name].astype(np.int8) for name in ("gear", "lockup")}
    narrow = {name: TRACE[name].astype(np.float32) for name in ("input_rpm", "output_rpm", "engine_rpm", "pressure_kpa", "temp_c")}
    micro = {"time_us": np.rint(TRACE["time_s"] * 1e6).astype(np.uint64)}
    same(watch(WREN, micro | narrow | whole).events, want.events)
    same(watch(WREN, micro | narrow | whole | {"lockup": TRACE["lockup"] == 1}).events, want.events)
    backward = {name: values[::-1].copy()[::-1] for name, values in TRACE.items()}
    same(watch(WREN, backward).events, want.events)


def test_a_command_by_name_is_one_by_number() -> None:
    by_name, by_number = Monitor(WREN), Monitor(WREN)
    for row in range(2000):
        sample = {name: values[row] for name, values in TRACE.items()}
        number = int(sample.pop("gear"))
        alike(of_events(by_name.push(**sample, gear=str(number))), of_events(by_number.push(**sample, gear=number)))
    assert by_name.gear_chances() == by_number.gear_chances()
    assert list(by_name.gear_chances()) == [*WREN.gear_names, "none"]
    assert sum(by_name.gear_chances().values()) == pytest.approx(1.0, abs=1e-5)


def many(count: int) -> dict[str, Any]:
    """Recordings of several units, each from another place of the trace on."""
    random = np.random.default_rng(5)
    units: list[dict[str, Any]] = []
    for place in range(count):
        start = int(random.integers(0, 4000))
        part = {name: values[start : start + 1500].copy() for name, values in TRACE.items()}
        part["input_rpm"][random.integers(0, 1500, 40)] = np.nan
        units.append(part | {"unit": np.full(1500, place)})
    return {name: np.concatenate([unit[name] for unit in units]) for name in units[0]}


@pytest.mark.parametrize("named", ["numbers", "text", "objects", "arrow", "dictionary"])
def test_mixed_units_give_what_each_gives_alone(named: str) -> None:
    count = 7
    one_after_the_other = many(count)
    if named != "numbers":
        one_after_the_other["unit"] = np.array([f"T{place:02}" for place in one_after_the_other["unit"]])
    units = {name: HERON if place % 3 == 0 else WREN for place, name in enumerate(np.unique(one_after_the_other["unit"]).tolist())}
    random = np.random.default_rng(6)
    # Any mixture that keeps the order of each unit: a stable sort by a random key that rises within each.
    key = np.concatenate([np.sort(random.random(1500)) for _ in range(count)])
    order = np.argsort(key, kind="stable")
    mixed: Any = {name: values[order] for name, values in one_after_the_other.items()}
    if named == "objects":
        mixed["unit"] = mixed["unit"].astype(object)
    elif named == "arrow":
        mixed = pa.table(mixed)
    elif named == "dictionary":
        mixed = pa.table(mixed | {"unit": pa.array(mixed["unit"]).dictionary_encode()})
    whole = watch(units, mixed, outputs=live.OUTPUTS)
    runs = watch(units, one_after_the_other, outputs=live.OUTPUTS)
    one = watch(units, mixed, outputs=live.OUTPUTS, threads=1)
    assert whole.units == list(units)
    for table in ("events", "shifts", "ratios", "suspects", "counts"):
        same(getattr(whole, table), getattr(runs, table))
        same(getattr(whole, table), getattr(one, table))
    same(whole.samples, one.samples)
    same({name: values[order] for name, values in runs.samples.items()}, whole.samples)
    for name, unit in units.items():
        mine = one_after_the_other["unit"] == name
        alone = watch(unit, {column: values[mine] for column, values in one_after_the_other.items() if column != "unit"}, name=name, outputs=live.OUTPUTS)
        at = whole.events["unit"] == name
        same(alone.events, {column: values[at] for column, values in whole.events.items()})
        same(alone.samples, {column: values[mine] for column, values in runs.samples.items()})
    assert runs.monitor(whole.units[0]).counts.missing > 0


def test_a_sensor_reads_the_columns_that_it_needs() -> None:
    counted = live.sensors(INSTRUMENTS, "counted", noise_rpm=0.0, age_limit_s=0.2, greatest_rpm=8000.0)
    edges = live.sensors(INSTRUMENTS, "edges", noise_rpm=0.0, age_limit_s=0.2, greatest_rpm=8000.0)
    time_s = np.arange(200) * 0.05
    turns = {"input": 25.0 * time_s + 0.3 * time_s**2}
    turns["output"] = turns["input"] / WREN.gears[2].ratio
    pulses = {f"{shaft}_pulses": np.diff(np.floor(turns[shaft] * counted[shaft].teeth), prepend=0.0) for shaft in turns}
    unit = Unit.of_train(FAMILY.train("wren"), input=counted["input"], output=counted["output"], limits=LIMITS, sample_s=0.05)
    found = watch(unit, {"time_s": time_s, **pulses}, outputs=["gear"])
    assert unit.gear_names[found.samples["gear"][-1]] == "3"
    assert "engine_pulses" not in found.missing_columns
    turn_s = {shaft: np.gradient(time_s, turns[shaft]) for shaft in turns}
    ticks = {f"{shaft}_ticks": np.rint(pulses[f"{shaft}_pulses"] * turn_s[shaft] / edges[shaft].teeth / edges[shaft].tick_s) for shaft in turns}
    unit = Unit.of_train(FAMILY.train("wren"), input=edges["input"], output=edges["output"], limits=LIMITS, sample_s=0.05)
    with pytest.raises(Error, match="input_ticks is missing"):
        watch(unit, {"time_s": time_s, **pulses})
    found = watch(unit, {"time_s": time_s, **pulses, **ticks}, outputs=["gear"])
    assert unit.gear_names[found.samples["gear"][-1]] == "3"
    broken = pulses | {"input_pulses": np.full(200, 12.5), "output_pulses": np.full(200, -1.0)}
    assert watch(unit, {"time_s": time_s, **broken, **ticks}).counts["sensor_error"][0] >= 2 * 199


def test_what_a_bus_says_instead_of_a_value_is_counted() -> None:
    raw = np.full(400, 8000, dtype=np.uint16)
    raw[100:110], raw[120:125], raw[130:133] = 0xFFFF, 0xFE00, 0xFC00
    signal = BusSignal(rules="marked", bits=16, resolution=0.125, offset=0.0, lower=0.0, upper=8031.875)
    samples = {"time_s": np.arange(400) * 0.01, "input_rpm": raw, "output_rpm": 1000.0 / WREN.gears[3].ratio + np.arange(400) % 2}
    found = watch(WREN, samples, bus={"input_rpm": signal}).monitor().counts
    assert (found.not_available, found.sensor_error, found.reserved) == (10, 5, 3)


# ---- whatever comes


odd = st.sampled_from([math.nan, math.inf, -math.inf, -1.0, 0.0, 1e-300, 1e300, 3.5e38, 65535.0])
number = st.one_of(odd, st.floats(0.0, 9000.0), st.floats(allow_nan=True, allow_infinity=True))
sample = st.fixed_dictionaries(
    {
        "time_s": st.one_of(st.integers(0, 50).map(lambda place: place / 100), odd, st.floats(0.0, 1e6)),
        "input_rpm": number, "output_rpm": number, "engine_rpm": number, "pressure_kpa": number, "temp_c": number, "engine_torque_nm": number,
        "gear": st.one_of(odd, st.integers(-128, 300).map(float)), "lockup": odd,
    }
)  # fmt: skip


@settings(max_examples=60, deadline=None)
@given(st.lists(sample, min_size=1, max_size=60), st.booleans())
def test_any_stream_is_taken_and_gives_the_same_one_by_one(rows: list[dict[str, float]], after_the_trace: bool) -> None:
    samples = {name: np.array([row[name] for row in rows]) for name in rows[0]}
    if after_the_trace:
        start = {name: values[:1000] for name, values in TRACE.items()} | {"engine_torque_nm": np.full(1000, 200.0)}
        samples = {name: np.concatenate([start[name], values]) for name, values in samples.items()}
    watched = watch(WREN, samples, outputs=live.OUTPUTS)
    monitor, states = pushed(WREN, samples)
    alike(listed(watched.events), of_events(monitor.events))
    assert watched.monitor().counts == monitor.counts
    got = np.array([state.slip_rpm for state in states], dtype=np.float32)
    np.testing.assert_array_equal(watched.samples["slip_rpm"], got)
    assert all(event.kind in live.EVENT_KINDS for event in monitor.events)
    timed = (samples["time_s"] >= 0.0) & (samples["time_s"] < 9e9)
    assert monitor.counts.samples == timed.sum()
    assert watched.counts["no_time"].tolist() == [(~timed).sum()]
    assert np.isfinite(list(monitor.gear_chances().values())).all()


def test_no_samples_give_empty_tables() -> None:
    nothing = {name: np.empty(0) for name in TRACE}
    watched = watch(WREN, nothing, outputs=live.OUTPUTS)
    assert (watched.rows, watched.units) == (0, [])
    for table in (watched.events, watched.shifts, watched.ratios, watched.suspects, watched.counts, watched.samples):
        assert all(len(values) == 0 for values in table.values())
    with pytest.raises(Error, match="no samples of unit"):
        watched.monitor()
