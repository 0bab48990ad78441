"""The duty chapter from Python: the demonstration's fleet, reference libraries, real drives, arrays and refusals."""

from __future__ import annotations

import csv
import re
from collections import Counter
from pathlib import Path

import fatpack
import numpy as np
import pytest
import rainflow as reference
import trainwright
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays
from trainwright import Error, RangeWarning, Reading, duty, practice, record
from vectors import ROOT

DEMO = Path(trainwright.__file__).parent / "demo"
DRIVES = ROOT.parent / "shared" / "data" / "drives_1hz.csv"
DAMAGE = {
    # Computed independently for the demonstration: tolerance 0.001.
    "T11": (1.3459547043899756e-06, 0.00392407744320262, 8.687803022253906e-05, 0.0),
    "T12": (0.00018078626821967209, 0.07270706900681566, 0.0008675277486776974, 0.0017810885127799117),
    "T13": (0.001957548639391283, 0.3528895651683468, 0.0018043840069828763, 0.03575438613856757),
    "T14": (6.524347896877285e-05, 0.02412678293243583, 0.00027223148549854626, 0.0007059990592889235),
    "T15": (0.0006499529198909619, 0.057220623089929756, 0.00013031319905240418, 0.005855054810349653),
    "T16": (1.9851523722293882e-05, 0.030556510277259703, 0.0006344650228928535, 0.0),
    "T17": (0.00016657682937193562, 0.023309831167143295, 0.0001110837829215692, 0.002090176716741966),
    "T18": (2.441729646426853e-07, 0.0003818774636105331, 6.019254439120195e-07, 0.0),
}
RANKING = {
    5.0: ["T13", "T12", "T15", "T16", "T14", "T17", "T11", "T18"],
    6.5: ["T13", "T12", "T15", "T16", "T14", "T17", "T11", "T18"],
    8.0: ["T13", "T12", "T15", "T16", "T17", "T14", "T11", "T18"],
}


@pytest.fixture(scope="module")
def records() -> tuple[record.Family, record.Fleet]:
    return record.load(DEMO / "family.toml"), record.load(DEMO / "fleet.toml")


# ---- the demonstration


@pytest.mark.parametrize("truck", DAMAGE)
def test_damage_by_set_of_every_truck(records, truck: str) -> None:
    found = duty.truck_duty(*records, truck, speed_step_km_h=1.0)
    assert [set_.total for set_ in found.sets.values()] == pytest.approx(DAMAGE[truck], rel=1e-3, abs=0)
    assert (found.worst_set, found.damage) == ("P2", found.sets["P2"].total)
    assert found.hours[0].gear and found.worst_hours.duration_h > 0


@pytest.mark.parametrize("slope", RANKING)
def test_ranking_at_three_slopes(records, slope: float) -> None:
    found = {truck: duty.truck_duty(*records, truck, speed_step_km_h=1.0, slope=slope).damage for truck in DAMAGE}
    assert sorted(found, key=found.get, reverse=True) == RANKING[slope]


def test_a_truck_with_gaps_has_an_interval_of_damage_and_of_place(records) -> None:
    ends = [case.damage for case in duty.truck_duty_cases(*records, "T19", speed_step_km_h=1.0, steps=2)]
    assert len(ends) == 6
    assert (min(ends), max(ends)) == pytest.approx((0.008146348874367285, 0.04437063675964664), rel=1e-3)
    others = [duty.truck_duty(*records, truck, speed_step_km_h=1.0).damage for truck in DAMAGE]
    ranks = duty.rank_intervals([*others, min(ends)], [*others, max(ends)])
    assert (ranks[-1].first, ranks[-1].last) == (4, 7)
    # The published interval took the ends of the range. Between them the damage is greater by 1.2 %: just before the load asks
    # for a lower gear, at 6.03 t. The place stays the same.
    fine = [case.damage for case in duty.truck_duty_cases(*records, "T19", speed_step_km_h=1.0, steps=321)]
    assert min(fine) == min(ends)
    assert max(ends) < max(fine) < 1.02 * max(ends)
    assert duty.rank_intervals([*others, min(fine)], [*others, max(fine)])[-1] == ranks[-1]


def test_what_is_not_known_is_refused_and_not_guessed(records) -> None:
    with pytest.raises(Error, match="duty_cases"):
        duty.truck_duty(*records, "T19", speed_step_km_h=1.0)
    with pytest.raises(Error, match="range only"):
        duty.truck_duty(*records, "T19", speed_step_km_h=1.0, tire="m255")
    with pytest.raises(Error, match="T11, T12"):
        duty.truck_duty(*records, "T99", speed_step_km_h=1.0)
    assert duty.truck_duty(*records, "T19", speed_step_km_h=1.0, tire="m255", trailer_kg=4000).tire == "m255"
    with pytest.raises(Error, match="tire"):
        duty.wheel_causes(records[1], "T19")
    bare = record.Family.from_toml(re.sub(r"(?m)^\[fatigue\]\n(.+\n)+", "", (DEMO / "family.toml").read_text()))
    with pytest.raises(Error, match="fatigue"):
        duty.truck_duty(bare, records[1], "T11", speed_step_km_h=1.0)


def test_the_block_of_the_fourth_set_collects_nothing(records) -> None:
    train = records[0].train("teal")
    for gear in train.gears():
        sun = duty.mesh_duty(gear, set="P4").sun
        assert (sun.contacts == 0) == (gear.id in ("4", "5", "6", "7", "8", "R"))
        assert sun.contacts_exact.denominator >= 1


def test_the_slopes_as_an_interval(records) -> None:
    found = duty.truck_duty(*records, "T13", speed_step_km_h=1.0)
    interval = found.interval(slope_low=5.0, slope_high=8.0, reference_share=0.0)
    assert interval.upper / interval.lower == pytest.approx(18, rel=0.05)  # published: eighteenfold
    wider = found.interval(slope_low=5.0, slope_high=8.0, reference_share=0.1)
    assert wider.lower < interval.lower < found.damage < interval.upper < wider.upper


def test_the_thrust_bearing_of_the_record(records) -> None:
    found = duty.truck_duty(*records, "T13", speed_step_km_h=1.0)
    state = {gear.id: gear for gear in records[0].train("teal").gears()}
    race = records[0].as_dict()["thrust_race"]["teal"]
    bearing = trainwright.hold.NeedleThrust(needles=race["needles"], needle_diameter_mm=2.5, needle_length_mm=6.0, pitch_diameter_mm=race["pitch_diameter_mm"])
    helical = trainwright.hold.Helical(module_mm=1.48, helix_deg=19.0)
    used = 0.0
    for hours in found.hours:
        push = trainwright.hold.wheel_thrust(
            state[hours.gear], set="P3", wheel="sun", helical=helical, input_torque_nm=hours.input_nm, input_speed_rpm=hours.input_rpm
        )
        if hours.duration_h and push.thrust.axial_n and push.carrier_slip_rpm:
            life = trainwright.hold.rating_life(
                capacity_n=bearing.needle_capacity().dynamic_n, load_n=push.thrust.axial_n, exponent=3.333, speed_rpm=push.carrier_slip_rpm
            )
            used += hours.duration_h / life.life_h
    assert found.bearing.used == pytest.approx(used, rel=1e-12)


@pytest.mark.parametrize(("truck", "cause", "k"), [("T16", "tire f35", 1.1088936010976673), ("T17", "axle 4.27", 0.8290398126463702)])
def test_a_wrong_tire_and_a_wrong_axle_are_found_against_gps(records, truck: str, cause: str, k: float) -> None:
    causes = duty.wheel_causes(records[1], truck)
    assert causes[cause].road.value == pytest.approx(k, rel=1e-6)
    rng = np.random.default_rng(16)
    gps = 65 + 40 * np.sin(np.arange(3000) / 90) + rng.normal(0, 1, 3000)
    shown = np.round(gps / k + rng.normal(0, 0.4, gps.size))
    gps[100:140] = np.nan
    rule = duty.RatioRule(least=30.0, quantum=1.0, u_rel=0.002, block_rows=60)
    measured = duty.ratio_of(gps, shown, rule=rule)
    assert measured.missing == np.isnan(gps).sum()
    assert abs(measured.ratio.value - k) < 3 * measured.ratio.u
    found = duty.weigh_causes(road=measured.ratio, gear=None, causes=causes, enough=0.95, most_z=3.0)
    assert (found.kind, found.best) == ("explained", cause)


def test_slow_rows_alone_cannot_tell() -> None:
    rule = duty.RatioRule(least=25.0, quantum=1.0, u_rel=0.0, block_rows=5)
    with pytest.raises(Error, match="fast enough"):
        duty.ratio_of([10.0] * 100, [9.0] * 100, rule=rule)


def test_teeth_of_a_sensor_and_an_axle_are_told_apart_by_the_gears() -> None:
    causes = {
        "as programmed": duty.RatioCause(road=Reading(value=1.0, u=0.006)),
        "axle": duty.RatioCause(road=Reading(value=0.8, u=0.005)),
        "sensor": duty.other_teeth(programmed=40, fitted=50, weight=1),
    }
    road = Reading(value=0.801, u=0.004)
    asked = {"road": road, "causes": causes, "enough": 0.95, "most_z": 3.0}
    assert duty.weigh_causes(gear=None, **asked).kind == "cannot tell"
    assert duty.weigh_causes(gear=Reading(value=0.8, u=0.002), **asked).best == "sensor"
    assert duty.weigh_causes(gear=Reading(value=1.0, u=0.002), **asked).best == "axle"


# ---- cycle counting against reference libraries


def by_range(cycles: dict[str, np.ndarray]) -> Counter[float]:
    found: Counter[float] = Counter()
    for size, number in zip(cycles["range"].tolist(), cycles["cycles"].tolist(), strict=True):
        found[size] += number
    return found


@given(arrays(np.float64, st.integers(3, 300), elements=st.integers(-200, 200).map(float)))
def test_rainflow_is_that_of_the_reference(values: np.ndarray) -> None:
    _, cycles = duty.rainflow(values, residue="half cycles")
    expected: Counter[float] = Counter()
    for size, _, number, _, _ in reference.extract_cycles(values):
        expected[size] += number
    expected.pop(0.0, None)
    assert by_range(cycles) == expected


@given(arrays(np.float64, st.integers(4, 200), elements=st.integers(-100, 100).map(float)))
def test_a_repeated_history_is_that_of_fatpack(values: np.ndarray) -> None:
    turned = np.roll(values, -int(np.argmax(values)))
    turned = np.append(turned, turned[0])  # from its highest peak to its highest peak all cycles close
    if np.ptp(turned) == 0:
        return
    # Classes much narrower than a step between whole numbers; it gives their middles.
    reversals, _ = fatpack.find_reversals(turned, k=2**14)
    cycles, residue = fatpack.find_rainflow_cycles(reversals)
    both = [*cycles, *fatpack.find_rainflow_cycles(fatpack.concatenate_reversals(residue, residue))[0]]
    expected = Counter(np.abs(np.diff(np.reshape(both, (-1, 2)), axis=1)).round().ravel().tolist())
    _, found = duty.rainflow(values, residue="repeated")
    assert by_range(found) == expected


# ---- real drives


@pytest.fixture(scope="module")
def drives() -> dict[str, dict[str, np.ndarray]]:
    if not DRIVES.exists():
        reason = f"{DRIVES.name}: the real drives are not in this project; put them into ../shared/data"
        print(reason)
        pytest.skip(reason)
    with DRIVES.open(newline="") as file:
        rows = list(csv.DictReader(file))
    number = lambda cell: float(cell) if cell else float("nan")  # noqa: E731
    return {
        drive: {name: np.array([number(row[name]) for row in rows if row["drive"] == drive]) for name in ("t_s", "speed_mph", "engine_rpm")}
        for drive in dict.fromkeys(row["drive"] for row in rows)
    }


def test_the_locked_top_gear_of_a_real_drive(drives) -> None:
    """Seen independently in the same data above 55 mph: 32.2 rpm per mph, 5 to 95 % of the seconds 31.3 to 32.9."""
    drive = drives["30"]
    rule = duty.RatioRule(least=55.0, quantum=0.0, u_rel=0.0, block_rows=30)
    found = duty.ratio_of(drive["engine_rpm"], drive["speed_mph"], rule=rule)
    assert abs(found.ratio.value - 32.2) < 2 * found.ratio.u
    assert 0 < found.ratio.u < 0.15
    assert found.used > 400 and found.missing > 7000  # no engine speed for most of it: unknown, not zero
    fast = drive["speed_mph"] >= 55
    each = (drive["engine_rpm"] / drive["speed_mph"])[fast & ~np.isnan(drive["engine_rpm"])]
    assert np.percentile(each, [5, 95]) == pytest.approx([31.3, 32.9], abs=0.05)
    assert 31.3 < found.ratio.value < 32.9


def test_a_changed_tire_would_show_in_a_real_drive(drives) -> None:
    drive = drives["30"]
    rule = duty.RatioRule(least=55.0, quantum=0.0, u_rel=0.002, block_rows=30)
    found = duty.ratio_of(drive["engine_rpm"], 32.2 * 1.05 * drive["speed_mph"], rule=duty.RatioRule(**{**rule.as_dict(), "least": 55.0}))
    causes = {"as before": duty.RatioCause(road=Reading(value=1.0, u=0.006)), "5 % larger": duty.RatioCause(road=Reading(value=1 / 1.05, u=0.006))}
    judged = duty.weigh_causes(road=found.ratio, gear=None, causes=causes, enough=0.95, most_z=3.0)
    assert (judged.kind, judged.best) == ("explained", "5 % larger")


def test_time_at_level_of_real_drives_loses_no_second(drives) -> None:
    for drive in drives.values():
        edges = np.arange(0.0, 100.0, 5.0)
        rest, seconds = duty.residence(time_s=drive["t_s"], values=drive["speed_mph"], edges=edges, gap_limit_s=2.0)
        span = drive["t_s"][-1] - drive["t_s"][0]
        assert seconds.sum() + rest.below_s + rest.above_s + rest.missing_s + rest.gap_s == pytest.approx(span, rel=1e-12)
        steps = np.diff(drive["t_s"])
        assert rest.gap_s == steps[steps > 2].sum()
        known = drive["speed_mph"][1:][steps <= 2]
        assert seconds == pytest.approx(np.histogram(known, np.append(edges[:-1], edges[-1]), weights=steps[steps <= 2])[0])


def test_rainflow_of_real_drives_is_that_of_the_reference(drives) -> None:
    for drive in drives.values():
        count, cycles = duty.rainflow(drive["speed_mph"], residue="half cycles")
        expected: Counter[float] = Counter()
        for size, _, number, _, _ in reference.extract_cycles(drive["speed_mph"]):
            expected[size] += number
        expected.pop(0.0, None)
        assert by_range(cycles) == expected
        assert count.pieces == 1
    count, _ = duty.rainflow(drives["30"]["engine_rpm"], residue="half cycles")
    assert count.pieces >= 1 and count.missing == np.isnan(drives["30"]["engine_rpm"]).sum()


# ---- life, places, bus values


def test_the_trade_rule_of_fluid_life_is_taken_by_name() -> None:
    rule = duty.AgingRule.halving(reference_c=practice.FLUID_AGING_REFERENCE_C, halving_k=practice.FLUID_AGING_HALVING_K, least_factor=1.0)
    assert practice.FLUID_AGING_REFERENCE_C == pytest.approx((175 - 32) / 1.8)
    miles = practice.FLUID_AGING_LIFE_KM / 1.609344 / np.array([rule.aging_factor((f - 32) / 1.8) for f in (175, 195, 235, 255, 275, 295, 315)])
    assert miles == pytest.approx([100000, 50000, 12000, 6250, 3000, 1500, 750], rel=0.055)  # circulating table, rounded


def test_unknown_hours_are_neither_cool_nor_hot() -> None:
    rule = duty.AgingRule.halving(reference_c=80, halving_k=10, least_factor=1)
    known = {"temp_c": [80, 120], "duration_h": [400, 40], "life_h": 4000, "rule": rule}
    whole, gaps = duty.fluid_life(unknown_h=0, **known), duty.fluid_life(unknown_h=100, **known)
    assert whole.used == whole.used_lower == whole.used_upper == gaps.used
    assert gaps.used_lower == pytest.approx(gaps.used + 100 / 4000)
    assert gaps.used_upper == pytest.approx(gaps.used + 1600 / 4000)
    # The mean temperature hides the hours that count.
    mean_c = (80 * 400 + 120 * 40) / 440
    assert 440 * rule.aging_factor(mean_c) / 4000 < 0.6 * whole.used


def test_places_by_bootstrap_follow_the_spread() -> None:
    rng = np.random.default_rng(5)
    steady = [rng.normal(mean, 0.2, 200).clip(0) for mean in (9, 6, 3)]
    assert [(r.first, r.last) for r in duty.bootstrap_ranks(steady, seed=3, draws=300, coverage=0.95)] == [(1, 1), (2, 2), (3, 3)]
    alike = [rng.normal(5, 3, 30).clip(0) for _ in range(3)]
    assert any(r.first < r.last for r in duty.bootstrap_ranks(alike, seed=3, draws=300, coverage=0.95))
    again = duty.bootstrap_ranks(alike, seed=3, draws=300, coverage=0.95)
    assert again == duty.bootstrap_ranks(alike, seed=3, draws=300, coverage=0.95)
    few = [np.append(row[:4], np.full(26, np.nan)) for row in alike]
    spread = lambda ranks: sum(r.last - r.first for r in ranks)  # noqa: E731
    assert spread(duty.bootstrap_ranks(few, seed=3, draws=300, coverage=0.95)) >= spread(again)


@settings(max_examples=30)
@given(st.integers(0, 2**32))
def test_the_mean_of_resampled_totals_is_the_total(seed: int) -> None:
    periods = np.array([0.1, 0.4, 0.2, 0.9, 0.3, 0.3, 0.0, 0.6])
    draws = [duty.resampled_total(periods, seed=seed, draw=draw) for draw in range(400)]
    u = periods.std() * np.sqrt(periods.size / 400)
    assert abs(np.mean(draws) - periods.sum()) < 5 * u


def test_a_column_of_raw_bus_values() -> None:
    output = duty.bus_signal(network="J1939", number=191)
    found = output.decode(np.array([12000, 0xFFFF, 0xFE12, 0xFC00, 0], dtype=np.uint16))
    assert found["meaning"].tolist() == [0, 5, 4, 3, 0]
    assert np.isnan(found["value"][1:4]).all() and found["value"][0] == 1500
    with pytest.warns(RangeWarning, match="1 of 2"):
        output.decode([1, 70000])
    scaled = output.classify([1500.0, 8191.875, np.nan])
    assert scaled["meaning"].tolist() == [0, 5, 5]


def test_every_output_defers() -> None:
    assert "ratings" in trainwright.hazard.caution("towing")
    assert "promise" in duty.__doc__
