"""The pass over rows in plain NumPy, written as a careful NumPy user would: blocks that fit the cache, no Python per row.

The rival of the bench, and the oracle of the tests: the rules are those of `trainwright.fleet`, the code is its own.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi, sqrt
from typing import Any

import numpy as np

from .unit import Unit

BLOCK = 8_192
"""Rows of a block. A column of it is 64 KB: the results between stay in the cache, and are too small for the allocator to map and unmap each."""

BUS = ("engine_rpm", "input_rpm", "output_rpm", "engine_torque_nm", "pressure_kpa", "temp_c", "speed_km_h")
RANGES = {
    "time_s": (-4e9, 4e9), "engine_rpm": (0.0, 10e3), "input_rpm": (0.0, 10e3), "output_rpm": (0.0, 10e3), "engine_torque_nm": (-10e3, 10e3),
    "pressure_kpa": (0.0, 10e3), "temp_c": (-60.0, 250.0), "speed_km_h": (0.0, 400.0), "gps_km_h": (0.0, 400.0), "gear": (-16.0, 16.0),
}  # fmt: skip
STANDING, UNKNOWN, NO_GEAR, NOT_USED = -2, -3, -1, -3
FLAGS = (
    *(f"bad_{name}" for name in RANGES), "first", "duplicate", "reversed", "gap", "stale", "standing", "unknown", "no_gear", "mismatch",
    "unlocked", "no_torque", "little_torque", "over_input", "over_output", "low_margin", "hot", "beyond_scale",
)  # fmt: skip
W = pi / 30.0


@dataclass(frozen=True)
class Rules:
    """Limits and fluid life."""

    ratio_tolerance: float = 0.03
    locked_slip_rpm: float = 50.0
    gap_s: float = 10.0
    standing_rpm: float = 30.0
    torque_floor_nm: float = 20.0
    hot_c: float = 120.0
    least_margin: float = 1.2
    gps_floor_km_h: float = 30.0
    life_h: float = 2000.0
    reference_c: float = 79.4
    halving_k: float = 11.1


class Plan:
    """Constants of a unit laid out for gathering by gear."""

    def __init__(self, unit: Unit, rules: Rules) -> None:
        self.unit, self.rules = unit, rules
        self.forward = unit.ratio > 0
        self.number = np.where(self.forward, np.cumsum(self.forward), -np.cumsum(~self.forward))
        self.low, self.high = np.empty(len(unit.ratio)), np.empty(len(unit.ratio))
        for sense in (self.forward, ~self.forward):
            places = np.flatnonzero(sense)
            places = places[np.argsort(np.abs(unit.ratio[places]))]
            size = np.abs(unit.ratio[places])
            low, high = size / (1 + rules.ratio_tolerance), size * (1 + rules.ratio_tolerance)
            for below, above in zip(range(len(size) - 1), range(1, len(size))):
                if high[below] > low[above]:
                    high[below] = low[above] = sqrt(size[below] * size[above])
            self.low[places], self.high[places] = low, high
        # The closed elements of a gear in as few columns as possible: capacity over share, zero share for an empty column.
        closed = [np.flatnonzero(share > 0) for share in unit.share]
        width = max(map(len, closed))
        self.a, self.b, self.c = (np.zeros((width, len(closed) + 3)) for _ in range(3))
        self.a[:] = np.inf
        self.element = np.full((width, len(closed) + 3), -1)
        for gear, places in enumerate(closed):
            for column, place in enumerate(places):
                per = unit.arm_m[place] / unit.share[gear, place]
                self.a[column, gear] = per * unit.area_mm2[place] * 1e-3
                self.b[column, gear] = per * unit.head_n_per_rpm2[place] * unit.drum[gear, place] ** 2
                self.c[column, gear] = per * unit.held_back_n[place]
                self.element[column, gear] = place
        self.ratio = np.concatenate([unit.ratio, np.full(3, np.nan)])
        self.efficiency = np.concatenate([unit.efficiency, np.full(3, np.nan)])
        self.damage = unit.contacts / unit.reference_contacts * (unit.sun * unit.rated_input_nm / unit.reference_nm) ** unit.slope
        self.scale = 2.0 ** (16.0 / unit.slope)


def _previous(values: np.ndarray, first: float) -> np.ndarray:
    out = np.empty_like(values)
    out[0] = first
    out[1:] = values[:-1]
    return out


def rows(plan: Plan, block: dict[str, np.ndarray], before: dict[str, np.ndarray] | None) -> dict[str, np.ndarray]:
    """Every output of the pass for consecutive rows of one truck; ``before`` is the row before them."""
    with np.errstate(all="ignore"):  # what is not a number, or too large, is told by its flags
        return _rows(plan, block, before)


def _rows(plan: Plan, block: dict[str, np.ndarray], before: dict[str, np.ndarray] | None) -> dict[str, np.ndarray]:
    unit, rules = plan.unit, plan.rules
    count = len(block["time_s"])
    false = np.zeros(count, dtype=bool)
    nothing = np.full(count, np.nan)
    flag: dict[str, np.ndarray] = {}
    ok: dict[str, np.ndarray] = {}
    for name, (low, high) in RANGES.items():
        if name in block:
            values = block[name]
            ok[name] = (values >= low) & (values <= high)
            if name == "gear":
                ok[name] &= values == np.floor(values)
            flag[f"bad_{name}"] = ~ok[name]
        else:
            ok[name] = false
            flag[f"bad_{name}"] = false
    column = {name: block.get(name, nothing) for name in RANGES}

    # Time.
    time = block["time_s"]
    previous_ok = _previous(ok["time_s"], False if before is None else bool(_valid("time_s", before["time_s"])))
    timed = ok["time_s"] & previous_ok
    step = time - _previous(time, np.nan if before is None else before["time_s"])
    first = ok["time_s"] & ~previous_ok
    duplicate, backward, gap = timed & (step == 0.0), timed & (step < 0.0), timed & (step > rules.gap_s)
    regular = timed & ~(duplicate | backward | gap)
    duration = np.where(regular, step, 0.0)
    given = [name for name in BUS if name in block]
    stale = false
    if len(given) >= 3:
        stale = regular & ok["output_rpm"] & (column["output_rpm"] >= rules.standing_rpm)
        for name in given:
            if not stale.any():
                break
            bits = block[name].view(f"i{block[name].itemsize}")
            there = np.flatnonzero(stale)
            earlier = bits[there - 1]
            if there[0] == 0:
                earlier[0] = -1 if before is None else before[name].view(bits.dtype)
            stale[there] = bits[there] == earlier
    used = ok["time_s"] & ~(duplicate | backward | stale)

    # The gear in effect.
    output_ok, input_ok, engine_ok = ok["output_rpm"], ok["input_rpm"], ok["engine_rpm"]
    out_rpm, in_rpm, engine_rpm, engine_nm = column["output_rpm"], column["input_rpm"], column["engine_rpm"], column["engine_torque_nm"]
    gear = np.full(count, NO_GEAR, dtype=np.int64)
    commanded = np.where(ok["gear"], column["gear"], 0.0) if "gear" in block else None
    order = [*np.flatnonzero(~plan.forward), *np.flatnonzero(plan.forward)]  # forward gears win
    for place in order:
        hit = (plan.low[place] * out_rpm <= in_rpm) & (in_rpm <= plan.high[place] * out_rpm)
        if commanded is not None:
            hit &= (commanded >= 0.0) if plan.forward[place] else (commanded <= 0.0)
        gear[hit] = place
    standing = used & output_ok & (out_rpm < rules.standing_rpm)
    unknown = used & ~standing & ~(output_ok & input_ok)
    gear[standing] = STANDING
    gear[unknown | ~used] = UNKNOWN
    in_gear = gear >= 0
    no_gear = gear == NO_GEAR
    mismatch = in_gear & ok["gear"] & (column["gear"] != plan.number[gear]) if "gear" in block else false

    # Torque.
    speeds_ok = used & engine_ok & input_ok
    locked = np.abs(engine_rpm - in_rpm) <= rules.locked_slip_rpm
    unlocked = speeds_ok & ~locked
    formed = speeds_ok & ok["engine_torque_nm"]
    sliding = np.flatnonzero(formed & ~locked)
    input_nm = np.where(formed, engine_nm, np.nan)
    speed, torque = in_rpm[sliding] / engine_rpm[sliding], engine_nm[sliding]
    multiplied = np.where((torque <= 0.0) | (speed > 1.0), 1.0, np.interp(speed, unit.speed_ratio, unit.torque_ratio))
    input_nm[sliding] = torque * multiplied
    no_torque = used & ~formed
    size_nm = np.abs(input_nm)
    little = formed & (size_nm < rules.torque_floor_nm)
    ratio, efficiency = plan.ratio[gear], plan.efficiency[gear]
    drives = input_nm >= 0.0
    output_nm = input_nm * ratio * np.where(drives, efficiency, 1.0 / efficiency)
    input_share = size_nm / unit.rated_input_nm
    output_share = np.abs(output_nm) / unit.rated_output_nm
    use = np.fmax(input_share, output_share)

    # Margins.
    weighed = in_gear & ok["pressure_kpa"] & formed & ~little
    least, weakest = np.full(count, np.inf), np.full(count, -1)
    square = in_rpm * in_rpm
    for a, b, c, element in zip(plan.a, plan.b, plan.c, plan.element):
        margin = np.maximum(a[gear] * column["pressure_kpa"] + b[gear] * square - c[gear], 0.0) / size_nm
        less = margin < least
        least, weakest = np.where(less, margin, least), np.where(less, element[gear], weakest)
    least, weakest = np.where(weighed, least, np.nan), np.where(weighed, weakest, -1)

    # Damage, heat, life.
    damaging = in_gear & formed
    plausible = input_share <= plan.scale
    turns = np.where(damaging & plausible, duration / 60.0 * in_rpm * input_share**unit.slope, 0.0)
    beyond = formed & ~plausible
    input_kw = input_nm * in_rpm * (W * 1e-3)
    converter_kw = np.maximum(engine_nm * engine_rpm * (W * 1e-3) - input_kw, 0.0)
    converter_kw = np.where(formed, converter_kw, np.nan)
    gear_kw = np.where(drives, input_kw * (1.0 - efficiency), -input_kw * (1.0 / efficiency - 1.0))
    warm = used & ok["temp_c"]
    aged = np.where(warm, duration * np.exp2((column["temp_c"] - rules.reference_c) / rules.halving_k), 0.0)
    speed_ok = used & ok["gps_km_h"]
    by_speed = speed_ok & ok["speed_km_h"] & (column["speed_km_h"] >= rules.gps_floor_km_h)
    shown = out_rpm / unit.output_rpm_per_km_h
    by_output = speed_ok & output_ok & (shown >= rules.gps_floor_km_h)
    gps_over_speed = np.where(by_speed, column["gps_km_h"] / column["speed_km_h"], np.nan)
    gps_over_output = np.where(by_output, column["gps_km_h"] / shown, np.nan)

    flag |= {
        "first": first, "duplicate": duplicate, "reversed": backward, "gap": gap, "stale": stale, "standing": standing, "unknown": unknown,
        "no_gear": no_gear, "mismatch": mismatch, "unlocked": unlocked, "no_torque": no_torque, "little_torque": little,
        "over_input": input_share > 1.0, "over_output": output_share > 1.0, "low_margin": least < rules.least_margin,
        "hot": warm & (column["temp_c"] > rules.hot_c), "beyond_scale": beyond,
    }  # fmt: skip
    return {
        **{f"flag.{name}": flag[name] for name in FLAGS},
        "used": used, "gap_step": np.where(gap, step, 0.0), "gear": gear, "duration_s": duration, "input_torque_nm": input_nm,
        "output_torque_nm": output_nm, "input_share": input_share, "output_share": output_share, "greatest_share": use, "least_margin": least,
        "weakest": weakest, "turns_at_rated": turns, "input_kw": input_kw, "converter_loss_kw": converter_kw, "gear_loss_kw": gear_kw,
        "aged_s": aged, "gps_over_speed": gps_over_speed, "gps_over_output": gps_over_output,
        "speed_km_h": np.where(used & ok["speed_km_h"], column["speed_km_h"], 0.0), "gps_km_h": np.where(speed_ok, column["gps_km_h"], 0.0),
        "temp_c": np.where(warm, column["temp_c"], np.nan),
    }  # fmt: skip


def _valid(name: str, value: Any) -> bool:
    low, high = RANGES[name]
    return bool(low <= value <= high)


class Totals:
    """Sums over the rows of one truck."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self.sums: dict[str, float] = {"rows": 0}
        self.by_gear = np.zeros((2, len(plan.unit.gears) + 3))
        self.ratios = {name: [0, 0.0, 0.0] for name in ("gps_over_speed", "gps_over_output")}
        self.extremes = {"greatest_share": (-np.inf, -1), "least_margin": (np.inf, -1), "hottest_c": (-np.inf, -1)}

    def _add(self, name: str, value: float) -> None:
        self.sums[name] = self.sums.get(name, 0) + value

    def take(self, answer: dict[str, np.ndarray], place: np.ndarray | int) -> None:
        """Adds a block whose first row is ``place``, or whose rows are at these places."""
        duration, gear = answer["duration_s"], answer["gear"]
        self._add("rows", len(duration))
        self._add("known_s", duration.sum())
        self._add("gap_s", answer["gap_step"].sum())
        for name in FLAGS:
            rows = np.count_nonzero(mask := answer[f"flag.{name}"])
            self._add(f"rows.{name}", rows)
            self._add(f"seconds.{name}", duration[mask].sum() if rows else 0.0)
        used = answer["used"]
        self.by_gear[0] += np.bincount(gear + 3, weights=np.where(used, duration, 0.0), minlength=self.by_gear.shape[1])
        self.by_gear[1] += np.bincount(gear + 3, weights=answer["turns_at_rated"], minlength=self.by_gear.shape[1])
        for name, power in (("converter_loss_kj", "converter_loss_kw"), ("gear_loss_kj", "gear_loss_kw")):
            self._add(name, np.nansum(answer[power] * duration))
        self._add("input_energy_kj", np.nansum(np.maximum(answer["input_kw"], 0.0) * duration))
        self._add("aged_s", answer["aged_s"].sum())
        self._add("speed_km", np.dot(answer["speed_km_h"], duration) / 3600.0)
        self._add("gps_km", np.dot(answer["gps_km_h"], duration) / 3600.0)
        for name, sums in self.ratios.items():
            values = answer[name][~np.isnan(answer[name])]
            sums[0] += len(values)
            sums[1] += values.sum()
            sums[2] += np.dot(values, values)
        for name, source, sign in (("greatest_share", "greatest_share", 1.0), ("least_margin", "least_margin", -1.0), ("hottest_c", "temp_c", 1.0)):
            values = sign * answer[source]
            if name == "greatest_share":  # what is implausible is no extreme
                values = np.where(answer["flag.beyond_scale"], np.nan, values)
            if not np.isnan(best := np.fmax.reduce(values)) and best > sign * self.extremes[name][0]:
                at = int(np.nanargmax(values))
                self.extremes[name] = (sign * best, place + at if isinstance(place, int) else int(place[at]))

    def result(self) -> dict[str, float]:
        """By the names of the library's totals."""
        unit, found = self.plan.unit, dict(self.sums)
        for place, gear in enumerate(unit.gears):
            found[f"gear_s.{gear}"], found[f"turns_at_rated.{gear}"] = self.by_gear[:, place + 3]
        for place, name in enumerate(unit.sets):
            found[f"damage.{name}"] = float(self.by_gear[1, 3:] @ self.plan.damage[:, place])
        found["life_used"] = found["aged_s"] / 3600.0 / self.plan.rules.life_h
        for name, (count, total, squares) in self.ratios.items():
            found[f"{name}.rows"] = count
            found[f"{name}.mean"] = total / count if count else np.nan
            found[f"{name}.deviation"] = sqrt(max(squares - total**2 / count, 0.0) / (count - 1)) if count > 1 else np.nan
        for name, (value, row) in self.extremes.items():
            found[name] = value if np.isfinite(value) else np.nan
            found[f"{name.removesuffix('_c')}_row"] = row
        return found


def screen(units: dict[Any, Unit], rules: Rules, columns: dict[str, np.ndarray], block_rows: int = BLOCK) -> dict[Any, dict[str, float]]:
    """Totals by truck; rows of a truck in the order of the stream."""
    truck = columns["truck"]
    data = {name: np.asarray(columns[name], dtype=np.float64) for name in RANGES if name in columns}
    edges = np.flatnonzero(truck[1:] != truck[:-1]) + 1
    starts = np.concatenate([[0], edges])
    places = None
    if len(np.unique(truck[starts])) < len(starts):  # a truck comes back later: bring its rows together
        places = np.argsort(truck, kind="stable")
        data = {name: values[places] for name, values in data.items()}
        truck = truck[places]
        starts = np.concatenate([[0], np.flatnonzero(truck[1:] != truck[:-1]) + 1])
    found = {}
    for start, end in zip(starts, [*starts[1:], len(truck)]):
        plan = Plan(units[truck[start]], rules)
        totals, before = Totals(plan), None
        for at in range(start, end, block_rows):
            last = min(at + block_rows, end)
            block = {name: values[at:last] for name, values in data.items()}
            totals.take(rows(plan, block, before), places[at:last] if places is not None else at)
            before = {name: values[last - 1] for name, values in data.items()}
        found[truck[start]] = totals.result()
    return found
