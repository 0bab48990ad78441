"""Invented telematics: drives of invented trucks, for trying out, for tests and for benches.

A drive obeys the road model of the fleet record: force on the grade, gear by what the engine has in hand, converter open in the low
gears, line pressure by torque, oil by heat. Its troubles are those of real loggers: gaps, repeated and reversed rows, frozen values,
values that a bus marks as not available, missed satellites, wrong tires and axles.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import pi
from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

if TYPE_CHECKING:
    from ..record import Family, Fleet

Columns = dict[str, Any]
"""NumPy arrays of one length by name."""

IDLE_RPM = 650.0
FIRST_LOCKED = 3
"""The converter is locked from this gear."""

HOLD_ROWS = 6
"""A gear is kept for this many rows."""

CHUNK = 200_000
OPEN = 0.98
"""Greatest speed ratio of the open converter."""


@dataclass(frozen=True)
class Truck:
    """What a drive needs to know of a truck, in the units of the names."""

    name: str
    like: str
    """Truck of the fleet record that it is built like."""
    mass_kg: float
    drag_area_m2: float
    rolling_coefficient: float
    output_rpm_per_km_h: float
    """By the axle and tire that are fitted."""
    shown_rpm_per_km_h: float
    """By those that the unit is programmed for."""
    hours: tuple[float, ...]
    """Hours on each grade of the record."""
    grade_pct: tuple[float, ...]
    speed_km_h: tuple[float, ...]
    air_density_kg_m3: float
    axle_efficiency: float
    lowest_locked_rpm: float
    torque_reserve: float
    ratios: tuple[float, ...]
    """Of the forward gears, from first."""
    efficiencies: tuple[float, ...]
    engine_rpm: tuple[float, ...]
    engine_nm: tuple[float, ...]
    engine_max_rpm: float
    speed_ratio: tuple[float, ...]
    torque_ratio: tuple[float, ...]
    k_rpm_per_sqrt_nm: tuple[float, ...]
    rated_input_nm: float
    idle_kpa: float
    control_max_kpa: float


def truck(family: Family, fleet: Fleet, like: str, *, name: str | None = None) -> Truck:
    """A truck as the records build it; the middle of what they leave open."""
    records, gears = fleet.as_dict(), family.as_dict()
    built = next(entry for entry in records["truck"] if entry["id"] == like)
    road, engine = records["road"], records["engine"][built["engine"]]
    converter = records["converter"][engine["converter"]]
    variant = gears["variant"][built["variant"]]
    ratios = {gear.id: gear.ratio for gear in family.train(built["variant"]).gears() if gear.ratio is not None}
    forward = sorted((gear for gear in ratios if gear.isdigit()), key=int)
    efficiency = gears["train"]["efficiency"]
    trailer_kg = built["trailer_kg"] if built["trailer_kg"] is not None else sum(built["trailer_range_kg"]) / 2
    mass_kg = built["truck_kg"] + trailer_kg

    def rpm_per_km_h(tire: str, axle: float) -> float:
        return axle * 1e6 / 60 / fleet.rolling(tire).circumference_mm.value

    tire = built["tire"] if built["tire"] in records["tire"] else built["tire_candidates"][0]
    return Truck(
        name=name or like, like=like, mass_kg=mass_kg, drag_area_m2=built["drag_area_m2"],
        rolling_coefficient=(built["truck_kg"] * road["roll_truck"] + trailer_kg * road["roll_trailer"]) / mass_kg,
        output_rpm_per_km_h=rpm_per_km_h(tire, built["axle"]),
        shown_rpm_per_km_h=rpm_per_km_h(built["tire_programmed"] or tire, built["axle_programmed"] or built["axle"]),
        hours=tuple(built["hours"]), grade_pct=tuple(road["grade_pct"]), speed_km_h=tuple(road["speed_km_h"]),
        air_density_kg_m3=road["air_density_kg_m3"], axle_efficiency=road["axle_efficiency"],
        lowest_locked_rpm=road["lowest_locked_rpm"], torque_reserve=road["torque_reserve"],
        ratios=tuple(ratios[gear] for gear in forward), efficiencies=tuple(efficiency[gear] for gear in forward),
        engine_rpm=tuple(engine["speed_rpm"]), engine_nm=tuple(engine["torque_nm"]), engine_max_rpm=engine["max_rpm"],
        speed_ratio=tuple(converter["speed_ratio"]), torque_ratio=tuple(converter["torque_ratio"]),
        k_rpm_per_sqrt_nm=tuple(converter["k_rpm_per_sqrt_nm"]),
        rated_input_nm=variant["rated_turbine_nm"], idle_kpa=variant["line_idle_kpa"][1], control_max_kpa=variant["line_control_max_kpa"],
    )  # fmt: skip


def trucks(family: Family, fleet: Fleet, count: int, *, seed: int = 1) -> list[Truck]:
    """A fleet of any size, each truck like one of the record: more or less load, rarely a tire of another size."""
    random = np.random.default_rng(seed)
    patterns = [truck(family, fleet, like) for like in fleet.trucks]
    made = []
    for number in range(count):
        pattern = patterns[number % len(patterns)]
        larger = random.choice([1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.07])
        made.append(
            replace(
                pattern,
                name=f"V{number + 1:05d}",
                mass_kg=pattern.mass_kg * random.uniform(0.7, 1.15),
                output_rpm_per_km_h=pattern.output_rpm_per_km_h / larger,
            )
        )
    return made


def drive(truck: Truck, rows: int, *, seed: int = 1, troubles: float = 1.0, start_s: float = 0.0) -> Columns:
    """One sample a second of one truck. ``troubles`` 0 gives a logger without faults, 1 a usual one."""
    random = np.random.default_rng([seed, *truck.name.encode()])
    parts = []
    for first in range(0, rows, CHUNK):
        parts.append(_drive(truck, min(CHUNK, rows - first), random, start_s + first))
    columns = parts[0] if len(parts) == 1 else {name: np.concatenate([part[name] for part in parts]) for name in parts[0]}
    return _troubled(columns, random, troubles) if troubles > 0 else columns


def _smooth(values: Any, width: int) -> Any:
    """Moving average, the ends held."""
    padded = np.concatenate([np.full(width // 2, values[0]), values, np.full(width - width // 2, values[-1])])
    sums = np.concatenate([[0.0], np.cumsum(padded)])
    return (sums[width:] - sums[:-width])[: len(values)] / width


def _drive(truck: Truck, rows: int, random: np.random.Generator, start_s: float) -> Columns:
    # The road: stretches of some minutes on the grades of the record, up as often as down, with stops between.
    stretches = rows // 90 + 2
    weights = np.asarray(truck.hours) / sum(truck.hours)
    kind = random.choice(len(weights), size=stretches, p=weights)
    last = np.repeat(np.arange(stretches), random.integers(60, 300, size=stretches))[:rows]
    sign = random.choice([1.0, -1.0], size=stretches, p=[0.7, 0.3])
    town = random.random(stretches) < 0.25
    stop = random.random(stretches) < 0.08
    asked = np.where(stop, 0.0, np.where(town, random.uniform(15.0, 55.0, stretches), np.asarray(truck.speed_km_h)[kind]))
    grade_pct = _smooth((np.asarray(truck.grade_pct)[kind] * sign)[last], 41)
    speed_km_h = _smooth(asked[last], 61) + _smooth(random.normal(0.0, 6.0, rows), 31)
    speed_km_h = np.where(speed_km_h < 1.0, 0.0, speed_km_h)

    # The force on it, and what the transmission output must give.
    speed_m_s = speed_km_h / 3.6
    gravity = 9.80665
    slope = np.arctan(grade_pct / 100.0)
    force_n = truck.mass_kg * gravity * (np.sin(slope) + truck.rolling_coefficient * np.cos(slope))
    force_n += 0.5 * truck.air_density_kg_m3 * truck.drag_area_m2 * speed_m_s**2 + 1.04 * truck.mass_kg * np.gradient(speed_m_s)
    force_n = np.where(speed_km_h > 0.0, force_n, 0.0)
    output_rpm = speed_km_h * truck.output_rpm_per_km_h
    per_force_nm = 1000.0 / 60.0 / (2.0 * pi) / truck.output_rpm_per_km_h  # output torque over force on the road
    output_nm = force_n * per_force_nm * np.where(force_n > 0.0, 1.0 / truck.axle_efficiency, truck.axle_efficiency)

    # The highest gear that keeps the reserve of torque in hand; first where none does.
    ratio, efficiency = np.asarray(truck.ratios)[:, None], np.asarray(truck.efficiencies)[:, None]
    input_rpm = output_rpm * ratio
    input_nm = output_nm / ratio * np.where(output_nm > 0.0, 1.0 / efficiency, efficiency)
    full_nm = np.interp(input_rpm, truck.engine_rpm, truck.engine_nm)
    fits = (input_rpm >= truck.lowest_locked_rpm) & (input_rpm <= truck.engine_max_rpm)
    can = fits & (input_nm <= (1.0 - truck.torque_reserve) * full_nm)
    highest = len(truck.ratios) - 1 - np.argmax(can[::-1], axis=0)
    strongest = np.argmax(fits, axis=0)
    gear = np.where(can.any(axis=0), highest, strongest)
    gear = gear[np.arange(rows) // HOLD_ROWS * HOLD_ROWS]
    row = np.arange(rows)
    input_rpm, input_nm, full_nm = input_rpm[gear, row], input_nm[gear, row], full_nm[gear, row]
    input_nm = np.clip(input_nm, -0.15 * full_nm, full_nm)

    # Locked, the engine is the input. Open, T_input/n_input² fixes the speed ratio of the converter.
    locked = (gear >= FIRST_LOCKED - 1) & (input_rpm >= 0.9 * truck.lowest_locked_rpm) & (output_rpm > 0.0)
    ratios = np.linspace(0.02, OPEN, 97)
    k = np.interp(ratios, truck.speed_ratio, truck.k_rpm_per_sqrt_nm)
    multiplied = np.interp(ratios, truck.speed_ratio, truck.torque_ratio)
    need = np.log(multiplied / (ratios * k) ** 2)
    with np.errstate(divide="ignore", invalid="ignore"):
        asked_of_it = np.log(np.maximum(input_nm, 5.0) / np.maximum(input_rpm, 20.0) ** 2)
    sliding = np.interp(-asked_of_it, -need, ratios)
    engine_rpm = np.where(locked, input_rpm, np.maximum(input_rpm / sliding, IDLE_RPM))
    engine_nm = np.where(locked, input_nm, input_nm / np.interp(sliding, ratios, multiplied))
    input_rpm = np.where(output_rpm > 0.0, input_rpm, 0.0)
    engine_rpm = np.where(output_rpm > 0.0, np.minimum(engine_rpm, truck.engine_max_rpm), IDLE_RPM)
    engine_nm = np.where(output_rpm > 0.0, engine_nm, 12.0)

    # The first row in a new gear is still on its way from the old one.
    shifting = np.concatenate([[False], gear[1:] != gear[:-1]]) & (random.random(rows) < 0.5)
    before = output_rpm * np.asarray(truck.ratios)[np.roll(gear, 1)]
    input_rpm = np.where(shifting, 0.5 * (before + input_rpm), input_rpm)
    engine_rpm = np.where(shifting & locked, input_rpm, engine_rpm)

    load = np.minimum(np.abs(input_nm) / truck.rated_input_nm, 1.0)
    pressure_kpa = truck.idle_kpa + (truck.control_max_kpa - truck.idle_kpa) * load + random.normal(0.0, 9.0, rows)
    heat_kw = np.abs(input_nm * input_rpm) * (pi / 30e3) * (1.0 - np.asarray(truck.efficiencies)[gear])
    heat_kw += np.where(locked, 0.0, np.abs(engine_nm) * (pi / 30e3) * np.maximum(engine_rpm - input_rpm, 0.0))
    warm = 1.0 - np.exp(-(np.arange(rows) + start_s) / 900.0)
    temp_c = 18.0 + 58.0 * warm + 5.0 * _smooth(heat_kw, 301)
    return {
        "time_s": start_s + np.arange(rows, dtype=np.float64),
        "engine_rpm": np.round(engine_rpm + random.normal(0.0, 2.0, rows), 3),
        "input_rpm": np.round(np.maximum(input_rpm + np.where(input_rpm > 0.0, random.normal(0.0, 0.5, rows), 0.0), 0.0), 3),
        "output_rpm": np.round(np.maximum(output_rpm + np.where(output_rpm > 0.0, random.normal(0.0, 0.3, rows), 0.0), 0.0), 3),
        "engine_torque_nm": np.round(engine_nm + random.normal(0.0, 1.0, rows), 2),
        "pressure_kpa": np.round(pressure_kpa / 8.0) * 8.0,
        "temp_c": np.round(temp_c * 4.0) / 4.0,
        "speed_km_h": np.round(output_rpm / truck.shown_rpm_per_km_h, 3),
        "gps_km_h": np.round(np.maximum(speed_km_h + random.normal(0.0, 0.2, rows), 0.0), 3),
    }


def _troubled(columns: Columns, random: np.random.Generator, amount: float) -> Columns:
    """The same drive as a usual logger gives it."""
    rows = len(columns["time_s"])

    def some(share: float) -> Any:
        return np.flatnonzero(random.random(rows) < min(share * amount, 1.0))

    columns = {name: values.copy() for name, values in columns.items()}
    names = [name for name in columns if name != "time_s"]
    for name in names:
        columns[name][some(0.0005)] = np.nan
    columns["gps_km_h"][some(0.005)] = np.nan
    for at in some(0.0001):  # frozen for some rows
        for name in names:
            columns[name][at : at + 8] = columns[name][at]
    columns["speed_km_h"][some(0.0001)] *= -1.0
    columns["engine_rpm"][some(0.0001)] = 65_279.0 * 0.125  # a raw "error" that nobody decoded
    columns["pressure_kpa"][some(0.0001)] = -40.0
    for at in some(0.00005):  # parked, or the logger off
        columns["time_s"][at:] += float(random.integers(60, 40_000))
    order = np.arange(rows)
    for at in some(0.0001):
        if at + 1 < rows:
            order[[at, at + 1]] = order[[at + 1, at]]
    twice = np.sort(np.concatenate([np.arange(rows), some(0.0001)]))[:rows]
    return {name: values[order[twice]] for name, values in columns.items()}


def table(made: Truck, columns: Columns) -> Any:
    """The drive as an Arrow table with a dictionary column ``truck``. Needs pyarrow."""
    import pyarrow as pa  # type: ignore[import-untyped,unused-ignore]

    rows = len(columns["time_s"])
    name = pa.DictionaryArray.from_arrays(pa.array(np.zeros(rows, dtype=np.int32)), pa.array([made.name]))
    return pa.table({"truck": name, **columns})


def write_parquet(
    folder: str | PathLike[str], made: list[Truck], rows: int, *, files: int = 1, seed: int = 1, troubles: float = 1.0
) -> list[Path]:
    """Drives of these trucks, ``rows`` each, in Parquet files that hold whole trucks. Needs pyarrow."""
    import pyarrow as pa  # type: ignore[import-untyped,unused-ignore]
    import pyarrow.parquet as pq  # type: ignore[import-untyped,unused-ignore]

    folder = Path(folder)
    folder.mkdir(parents=True, exist_ok=True)
    written = []
    for number, share in enumerate(_shares(made, files)):
        path = folder / f"telematics_{number:03d}.parquet"
        writer = None
        for group in _shares(share, max(1, len(share) * rows // 500_000)):
            tables = [table(one, drive(one, rows, seed=seed, troubles=troubles)) for one in group]
            whole = pa.concat_tables(tables).unify_dictionaries()
            writer = writer or pq.ParquetWriter(path, whole.schema, compression="zstd", compression_level=1)
            writer.write_table(whole)
        if writer:
            writer.close()
            written.append(path)
    return written


def _shares(made: list[Truck], count: int) -> Iterator[list[Truck]]:
    """Equal shares in order, none empty."""
    edges = np.linspace(0, len(made), min(count, len(made)) + 1).round().astype(int)
    return (made[first:last] for first, last in zip(edges, edges[1:]))
