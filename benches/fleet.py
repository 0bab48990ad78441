"""Screening a fleet, as ratios in one run. `make bench` runs it after compare.py.

The same rows and the same sums by our pass, by NumPy written well, by Polars expressions, DuckDB SQL and numba parallel; what share of
the memory bandwidth is left when few outputs are asked; how the cost grows with rows and elements; and ten million rows from Parquet,
once and again and again.

    python benches/fleet.py [--times 100]      how often the file of ten million rows is streamed: 100 makes a billion rows
"""

from __future__ import annotations

import argparse
import os
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import polars as pl
import pyarrow as pa
from screening import compiled, frames, plain, probes, sql
from screening.unit import Unit, unit
from trainwright import fleet, record
from trainwright.fleet import invented
from trainwright.fleet.units import gears_of

DEMO = Path(fleet.__file__).parents[1] / "demo"
ROWS = 10_000_000
TRUCKS = 45
OIL_KG_M3 = 800.0
LIFE = {"fluid_life_h": 2000.0, "fluid_reference_c": 79.4, "fluid_halving_k": 11.1}
FEW = ("time_s", "temp_c")
"""Columns of the bandwidth figure: two of eight bytes, and the truck."""


def best(work: Callable[[], Any], least_s: float = 1.0, most: int = 7) -> float:
    """Seconds of the fastest of several calls, each with fresh results."""
    times: list[float] = []
    while sum(times) < least_s or len(times) < 2:
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
        if len(times) == most:
            break
    return min(times)


def fleet_of(rows: int) -> tuple[dict[str, Any], dict[str, Unit], dict[str, fleet.Unit]]:
    """Rows of many trucks, each truck's together; and their units for the rivals and for us."""
    family, trucks, fluids = (record.load(DEMO / f"{name}.toml") for name in ("family", "fleet", "fluids"))
    made = invented.trucks(family, trucks, TRUCKS)
    drives = [invented.drive(truck, rows // TRUCKS + (place < rows % TRUCKS), troubles=1.0) for place, truck in enumerate(made)]
    columns: dict[str, Any] = {name: np.concatenate([drive[name] for drive in drives]) for name in drives[0]}
    columns["truck"] = np.repeat(np.arange(TRUCKS, dtype=np.int64), [len(drive["time_s"]) for drive in drives])
    plain_units = {like: unit(family, trucks, like, oil_density_kg_m3=OIL_KG_M3) for like in trucks.trucks}
    ours = fleet.units(family, trucks, fluids, trucks={place: truck.like for place, truck in enumerate(made)}, **LIFE)
    return columns, {place: plain_units[truck.like] for place, truck in enumerate(made)}, ours


def tally(columns: dict[str, Any], units: Any, **options: Any) -> fleet.Screen:
    """Our pass over the rows."""
    screen = fleet.Screen(units, **options)
    screen.add(columns)
    return screen


def same(ours: dict[str, Any], theirs: dict[Any, dict[str, float]], who: str) -> None:
    """The rival has computed the same: counts exactly, sums closely. Row numbers may count within the truck."""
    names = ours["truck"].tolist()
    for key in next(iter(theirs.values())):
        if key in ours and not key.endswith("_row"):
            values = np.array([theirs[name][key] if theirs[name][key] is not None else np.nan for name in names], dtype=np.float64)
            tolerance = 0.0 if key.startswith("rows") else 1e-6
            assert np.allclose(np.asarray(ours[key], dtype=np.float64), values, rtol=tolerance, atol=tolerance, equal_nan=True), (who, key, ours[key], values)


def rivals(columns: dict[str, Any], units: dict[Any, Unit], ours: Any) -> dict[str, float]:
    """Seconds of the full pass: ours and every rival's."""
    rules = plain.Rules()
    edges = np.flatnonzero(np.diff(columns["truck"], prepend=-1, append=-1))
    parts = {place: slice(first, last) for place, (first, last) in enumerate(zip(edges, edges[1:]))}
    by_truck = {place: pl.DataFrame({name: columns[name][part] for name in frames.NAMES}) for place, part in parts.items()}
    duck = sql.prepare(units, rules, {place: frame.to_arrow() for place, frame in by_truck.items()})
    totals = tally(columns, ours).totals()
    ways = {
        "NumPy": lambda: plain.screen(units, rules, columns),
        "NumPy, a truck at once": lambda: plain.screen(units, rules, columns, block_rows=len(columns["truck"])),
        "Polars": lambda: frames.screen(units, rules, by_truck),
        "DuckDB": duck,
        "numba": lambda: compiled.screen(units, rules, columns),
    }
    for name, way in ways.items():
        same(totals, way(), name)
    found = {name: best(way, least_s=0.0 if "NumPy" in name or name == "DuckDB" else 2.0) for name, way in ways.items()}
    found["ours"] = best(lambda: tally(columns, ours), least_s=2.0)
    return found


def with_elements(columns: dict[str, Any], count: int) -> float:
    """Seconds with this many closed packs in every gear."""
    family = record.load(DEMO / "family.toml")
    gears = []
    for gear in gears_of(family, "wren", OIL_KG_M3):
        packs = (gear.holding * count)[:count]
        gears.append(fleet.Gear(name=gear.name, number=gear.number, ratio=gear.ratio, efficiency=gear.efficiency, holding=packs))
    one = fleet.Unit(gears=gears, rated_input_nm=760.0, rated_output_nm=3300.0, limits=fleet.Limits.common_practice())
    return best(lambda: tally(columns, one), least_s=1.0)


def resident_mb() -> float:
    """Memory of this process now."""
    for line in Path("/proc/self/status").read_text().splitlines():
        if line.startswith("VmRSS"):
            return float(line.split()[1]) / 1024
    raise OSError("/proc/self/status has no VmRSS")


def streaming(columns: dict[str, Any], ours: Any, times: int) -> dict[str, float]:
    """Rows per second from Parquet, once and many times, and how memory grew on the way."""
    import pyarrow.parquet as pq

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "fleet.parquet"
        pq.write_table(pa.table(columns), path, compression="zstd", compression_level=1, row_group_size=1_000_000)
        print(f"one file of {len(columns['time_s']):,} rows, {path.stat().st_size / 1e6:.0f} MB")
        once = best(lambda: fleet.screen(path, ours, progress=False), least_s=2.0)
        more = Path(folder) / "many"
        more.mkdir()
        for number in range(times):
            os.link(path, more / f"part_{number:03d}.parquet")
        first = resident_mb()
        peak = [first]

        start = time.perf_counter()
        for ten in range(0, times, 10):  # memory is looked at after every tenth file
            paths = [more / f"part_{number:03d}.parquet" for number in range(ten, min(ten + 10, times))]
            fleet.screen(paths, ours, progress=False)
            peak.append(resident_mb())
        many = time.perf_counter() - start
    rows = len(columns["time_s"])
    print("resident memory at first and after every ten files, MB:", " ".join(f"{mb:.0f}" for mb in peak))
    return {"once": rows / once, "many": times * rows / many, "growth_mb": peak[-1] - peak[1], "peak_mb": max(peak)}


def main() -> None:
    given = argparse.ArgumentParser(description=__doc__)
    given.add_argument("--rows", type=int, default=ROWS)
    given.add_argument("--times", type=int, default=int(os.environ.get("FLEET_BENCH_TIMES", "20")))
    options = given.parse_args()

    columns, units, ours = fleet_of(options.rows)
    took = rivals(columns, units, ours)
    for name, seconds in took.items():
        print(f"full pass by {name}: {seconds * 1e3:.0f} ms, {options.rows / seconds / 1e6:.1f} million rows a second")

    bandwidth = probes.bandwidths(lambda probe: best(probe, least_s=0.5))
    probe, fastest = max(bandwidth.items(), key=lambda item: item[1])
    few = {name: columns[name] for name in (*FEW, "truck")}
    few_s = best(lambda: tally(few, ours, aggregates=("time",)), least_s=1.0)
    few_gb = sum(values.nbytes for values in few.values()) * 1e-9
    print("bandwidth probes, GB/s: " + ", ".join(f"{name} {value:.1f}" for name, value in bandwidth.items()))
    print(f"few outputs: {few_s * 1e3:.0f} ms, {few_gb / few_s:.1f} GB/s; the best probe is {probe}")

    half = {name: values[: options.rows // 2] for name, values in columns.items()}
    linear = took["ours"] / (2.0 * best(lambda: tally(half, ours), least_s=1.0))
    elements = {count: with_elements(columns, count) for count in (0, 1, 2, 3, 4, 5, 6)}
    print("seconds by closed packs in a gear: " + ", ".join(f"{count}: {took:.3f}" for count, took in elements.items()))
    stream = streaming(columns, ours, options.times)
    print(f"from Parquet: once {stream['once'] / 1e6:.2f}, {options.times} times {stream['many'] / 1e6:.2f} million rows a second")
    print()
    for name in ("NumPy", "Polars", "DuckDB", "numba"):
        print(f"screening_over_{name.lower()}: {took[name] / took['ours']:.2f}")
    print(f"screening_over_numpy_a_truck_at_once: {took['NumPy, a truck at once'] / took['ours']:.2f}")
    print(f"screening_rows_per_s: {options.rows / took['ours']:.3g}")
    print(f"screening_bandwidth_share: {few_gb / few_s / fastest:.2f}")
    print(f"screening_cost_of_twice_the_rows: {2 * linear:.2f}")
    print(f"screening_cost_of_six_packs_over_one: {elements[6] / elements[1]:.2f}")
    print(f"streaming_rate_of_{options.times}_files_over_one: {stream['many'] / stream['once']:.2f}")
    print(f"streaming_memory_growth_mb: {stream['growth_mb']:.0f}")


if __name__ == "__main__":
    main()
