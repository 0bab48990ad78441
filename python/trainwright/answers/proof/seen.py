"""What the live monitor saw in the log of a proof run: sensors from the log itself, the unit from its record, and time in each gear."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from math import hypot
from typing import Any

import numpy as np
from numpy.typing import NDArray

from ... import live
from ...judge import Reading
from ...record import Family
from ...train import Gear, Train
from ..gears import main_gears, ratio
from .asked import Asked
from .log import NOT_KNOWN, Log, Numbers, noise_of, read_log, step_of, usual_repeat

REPEATS = 5
"""A speed that shows the same value this many times as long as usual is stale: our own choice, printed with the answer."""

GREATEST_RPM = 12_000.0
"""A speed above this is impossible: our own choice, printed with the answer."""

BLOCK_S = 0.5
"""Time over which pressure, torque and slip are averaged before the least or greatest is looked for."""

WINDOW_S = 5.0
"""Time within which a window of the ratio should close with the sensors of the log: our own choice."""
HELD_S = 2.0
"""A gear that holds for this long before it slips has a fault that came up in this log: our own choice."""

LEAST_NOISE_RPM = 0.01
"""Noise of a speed that shows neither step nor noise, as one computed: our own choice."""

IN_GEAR = "in gear"
PASSED = ("time_s", "input_rpm", "output_rpm", "engine_rpm", "pressure_kpa", "temp_c", "lockup")
"""Columns that the monitor takes as they are."""
ANY = live.SpeedSensor.bus(step_rpm=1.0, noise_rpm=0.0, age_limit_s=1.0, greatest_rpm=GREATEST_RPM)
"""For a unit that is only asked for the numbers of its gears."""

Mask = NDArray[np.bool_]


@dataclass(frozen=True)
class Sensor:
    """What the log shows of a column: its step, and the noise of one value besides."""

    step: float
    noise: float

    def u_of_mean(self, count: int) -> float:
        """Standard uncertainty of the mean of so many values, for what the monitor has no sensor model of: noise averages out, the step
        is left as it is."""
        return float(np.hypot(self.noise / max(count, 1) ** 0.5, self.step / 12**0.5))


@dataclass(frozen=True)
class Seen:
    """A log with what the monitor made of it."""

    log: Log
    family: Family
    variant: str
    train: Train
    unit: live.Unit
    sensors: Mapping[str, Sensor]
    given: dict[str, Numbers]
    """The columns as the monitor took them."""
    watched: live.Watched

    @cached_property
    def gears(self) -> dict[str, Gear]:
        """The gears that a ratio can tell apart, by name."""
        return {gear.id: gear for gear in main_gears(self.train)}

    @cached_property
    def numbers(self) -> dict[str, int]:
        """The number by which each gear is commanded."""
        return {gear.name: gear.number for gear in self.unit.gears}

    @cached_property
    def steady(self) -> Mask:
        """The rows out of a shift."""
        return np.asarray(self.watched.samples["phase"] == live.PHASES.index(IN_GEAR))

    @cached_property
    def span_s(self) -> Numbers:
        """Time that every row stands for; a gap counts as one usual row."""
        apart = np.diff(self.log.time_s, append=self.log.time_s[-1] + self.log.sample_s)
        return np.clip(apart, 0.0, 3 * self.log.sample_s)

    def shows(self, name: str) -> Mask:
        """The rows whose speeds fit a gear."""
        return np.asarray(self.watched.samples["gear"] == self.unit.gear_names.index(name))

    def speed_u(self, shaft: str, rpm: float, count: int) -> float:
        """Standard uncertainty of a mean of so many values of a speed, by its sensor."""
        sensor = getattr(self.unit, shaft)
        return float(sensor.u_rpm(rpm=max(rpm, 1.0), window_s=count * self.log.sample_s, values=max(count, 1)))

    def in_gear(self, name: str) -> Mask:
        """The rows in a gear, out of a shift."""
        return self.shows(name) & self.steady

    def commanded(self, name: str) -> Mask:
        """The rows in which a gear has been commanded for long enough to be there, while the output turns."""
        if self.log.commanded is None:
            return np.zeros(len(self.log.time_s), dtype=np.bool_)
        return np.asarray((self.log.commanded == self.numbers[name]) & self.steady_command & self.moving)

    def seconds(self, rows: Mask) -> float:
        """Time of these rows."""
        return float(self.span_s[rows].sum())

    @cached_property
    def moving(self) -> Mask:
        """The rows in which the output turns fast enough for a ratio."""
        return np.asarray(np.abs(self.column("output_rpm")) >= self.unit.limits.standing_rpm)

    @cached_property
    def steady_command(self) -> Mask:
        """The rows whose commanded gear has stood long enough for its shift to be over."""
        commanded = self.log.commanded
        if commanded is None:
            return np.zeros(len(self.log.time_s), dtype=np.bool_)
        changed = np.flatnonzero(np.diff(commanded, prepend=commanded[0] - 1))
        began = np.repeat(self.log.time_s[changed], np.diff(changed, append=len(commanded)))
        return np.asarray(self.log.time_s - began >= self.unit.limits.follow_s + self.unit.limits.settle_s)

    def time_since(self, on: Mask) -> Numbers:
        """Time since these rows last began; 0 outside of them."""
        began = np.flatnonzero(on & ~np.concatenate(([False], on[:-1])))
        last = np.searchsorted(began, np.arange(len(on)), side="right") - 1
        start = np.where(last >= 0, self.log.time_s[began[np.maximum(last, 0)]] if len(began) else 0.0, 0.0)
        return np.where(on, self.log.time_s - start, 0.0)

    def driven(self) -> list[str]:
        """The gears that were in effect."""
        return [name for name in self.gears if self.ratio(name) is not None]

    def ratio(self, name: str) -> Reading | None:
        """Measured ratio of a gear, from the windows without slip that the monitor closed in it."""
        found = self._ratios.get(name)
        if found is None or not found["windows"]:
            return None
        way = 1.0 if ratio(self.gears[name]) > 0 else -1.0
        return Reading(value=way * abs(found["ratio"]), u=found["u"])

    @cached_property
    def _ratios(self) -> dict[str, dict[str, float]]:
        return {str(row["gear"]): row for row in rows_of(self.watched.ratios)}

    @cached_property
    def events(self) -> list[dict[str, Any]]:
        """What the monitor reported, in its order."""
        return rows_of(self.watched.events)

    @cached_property
    def shifts(self) -> list[dict[str, Any]]:
        """Every shift."""
        return rows_of(self.watched.shifts)

    @cached_property
    def counts(self) -> dict[str, Any]:
        """What was used, and what could not be."""
        return rows_of(self.watched.counts)[0]

    @cached_property
    def suspects(self) -> list[dict[str, Any]]:
        """Elements by the evidence of all gears, most likely first. Where a gear first held and then slipped, the fault came up in
        this log: what other gears did before that says nothing about it and is left out."""
        slips = self.of_kind("slip")
        if not slips:
            return []
        first = min(slips, key=lambda event: float(event["at_s"]))
        before = self.log.time_s < first["at_s"]
        if self.seconds(self.in_gear(first["gear"]) & before) < HELD_S:
            return rows_of(self.watched.suspects)
        return rows_of(live.watch(self.unit, {name: column[~before] for name, column in self.given.items()}).suspects)

    def of_kind(self, kind: str) -> list[dict[str, Any]]:
        """The events of a kind."""
        return [event for event in self.events if event["kind"] == kind]

    def slips(self, name: str) -> bool:
        """Whether an alarm of slip came in this gear."""
        return any(event["gear"] == name for event in self.of_kind("slip"))

    def column(self, name: str) -> Numbers:
        """A column of the log; NaN where it has no value, or a speed that cannot be."""
        values = self.log.columns.get(name, np.full(len(self.log.time_s), np.nan))
        return possible_speeds(values) if name.endswith("_rpm") else values

    @property
    def block_s(self) -> float:
        """Length of the blocks of which means are formed."""
        return max(BLOCK_S, self.log.sample_s)

    def blocks(self, rows: Mask, *columns: Numbers) -> list[tuple[Numbers, Numbers]]:
        """Means of columns over blocks of these rows, and how many values each mean has; blocks that are cut short are left out."""
        block = np.floor((self.log.time_s - self.log.time_s[0]) / self.block_s).astype(np.int64)
        known = rows & np.all([np.isfinite(column) for column in columns], axis=0)
        names, places = np.unique(block[known], return_inverse=True)
        count = np.bincount(places, minlength=len(names)).astype(np.float64)
        whole = count >= count.max(initial=0.0) / 2
        return [(np.bincount(places, weights=column[known], minlength=len(names))[whole] / count[whole], count[whole]) for column in columns]


def possible_speeds(values: Numbers) -> Numbers:
    """The same with NaN for speeds that cannot be."""
    with np.errstate(invalid="ignore"):
        return np.where((values >= 0) & (values <= GREATEST_RPM), values, np.nan)


def rows_of(table: Mapping[str, Any]) -> list[dict[str, Any]]:
    """The rows of a table of columns, without the name of the unit: a log has one."""
    names = [name for name in table if name != "unit"]
    return [dict(zip(names, row)) for row in zip(*(np.asarray(table[name]).tolist() for name in names))]


def watch_log(source: Any, family: Family, variant: str, asked: Asked, *, columns: Mapping[str, str] | None = None) -> Seen:
    """Reads a log and lets the monitor of the unit run over it."""
    train = family.train(variant)
    log = read_log(source, columns=columns, gears=_numbers(train, _unit(train, asked.limits, dict.fromkeys(("input", "output"), ANY), 0.1)))
    found = {name: _sensor(possible_speeds(values) if name.endswith("_rpm") else values) for name, values in log.columns.items() if name not in ("time_s", "lockup")}
    speeds = {name: _speed(log, f"{name}_rpm", found[f"{name}_rpm"]) for name in ("input", "output", "engine") if f"{name}_rpm" in found}
    limits = live.Limits(**{**asked.limits.as_dict(), "skew_s": log.sample_s, "ratio_u_rel": max(asked.limits.ratio_u_rel, _reached_u_rel(log, speeds))})
    unit = _unit(train, limits, speeds, log.sample_s)
    wanted = {name: log.columns[name] for name in PASSED if name in log.columns}
    if np.isfinite(log.torque_nm).any():
        wanted["engine_torque_nm"] = log.torque_nm
    if log.commanded is not None:
        wanted["gear"] = np.where(log.commanded == NOT_KNOWN, np.nan, log.commanded.astype(np.float64))
    return Seen(log, family, variant, train, unit, found, wanted, live.watch(unit, wanted, outputs=live.OUTPUTS))


def _unit(train: Train, limits: live.Limits, speeds: Mapping[str, live.SpeedSensor], sample_s: float) -> live.Unit:
    return live.Unit.of_train(train, input=speeds["input"], output=speeds["output"], engine=speeds.get("engine"), limits=limits, sample_s=sample_s)


def _numbers(train: Train, unit: live.Unit) -> dict[str, int]:
    """The number of every gear of the record; gears of one ratio share theirs."""
    named = {gear.name: gear.number for gear in unit.gears}
    by_ratio = {gear.ratio_exact: named[gear.id] for gear in train.gears() if gear.id in named}
    return {gear.id: by_ratio[gear.ratio_exact] for gear in train.gears()}


def _reached_u_rel(log: Log, speeds: Mapping[str, live.SpeedSensor]) -> float:
    """Relative standard uncertainty that a ratio reaches within the time asked for, at the slowest usual speed of each shaft."""
    values = max(int(WINDOW_S / log.sample_s), 1)
    shares = []
    for name in ("input", "output"):
        speeds_rpm = possible_speeds(log.columns[f"{name}_rpm"])
        turning = speeds_rpm[speeds_rpm > 0]
        slow = float(np.quantile(turning, 0.1)) if len(turning) else 1.0
        shares.append(float(speeds[name].u_rpm(rpm=slow, window_s=values * log.sample_s, values=values)) / slow)
    return hypot(*shares)


def _sensor(values: Numbers) -> Sensor:
    step = step_of(values)
    return Sensor(step, noise_of(values, step))


def _speed(log: Log, column: str, sensor: Sensor) -> live.SpeedSensor:
    repeat = usual_repeat(log.columns[column])
    return live.SpeedSensor.bus(
        step_rpm=sensor.step, noise_rpm=max(sensor.noise, LEAST_NOISE_RPM if not sensor.step else 0.0), age_limit_s=(REPEATS * repeat + 0.5) * log.sample_s, greatest_rpm=GREATEST_RPM
    )
