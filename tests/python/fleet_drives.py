"""What the tests of the fleet share: records, drives, and the plain-NumPy pass as an oracle."""

from __future__ import annotations

import sys
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pyarrow as pa
import pyarrow.compute
import pyarrow.parquet as pq
from trainwright import fleet, record
from trainwright.fleet import invented

ROOT = Path(__file__).resolve().parents[2]
DEMO = Path(fleet.__file__).parents[1] / "demo"
sys.path.insert(0, str(ROOT / "benches"))

from screening import plain, unit  # noqa: E402

FAMILY, FLEET, FLUIDS = (record.load(DEMO / f"{name}.toml") for name in ("family", "fleet", "fluids"))
OIL_C = 90.0
LIFE = {"fluid_life_h": 2000.0, "fluid_reference_c": 79.4, "fluid_halving_k": 11.1}
RULES = plain.Rules()
LIMITS = fleet.Limits(
    ratio_tolerance=RULES.ratio_tolerance, locked_slip_rpm=RULES.locked_slip_rpm, gap_s=RULES.gap_s, standing_rpm=RULES.standing_rpm,
    torque_floor_nm=RULES.torque_floor_nm, hot_c=RULES.hot_c, least_margin=RULES.least_margin, gps_floor_km_h=RULES.gps_floor_km_h,
)  # fmt: skip
TRUCKS: list[str] = FLEET.trucks


@cache
def units() -> dict[Any, fleet.Unit]:
    return fleet.units(FAMILY, FLEET, FLUIDS, limits=LIMITS, oil_c=OIL_C, **LIFE)


@cache
def oracle_units() -> dict[str, unit.Unit]:
    lightest = min(FLUIDS.fluid(name).density(temp_c=OIL_C) for name in FLUIDS.as_dict()["fluid"])
    return {truck: unit.unit(FAMILY, FLEET, truck, oil_density_kg_m3=lightest) for truck in TRUCKS}


@cache
def made() -> list[invented.Truck]:
    return [invented.truck(FAMILY, FLEET, truck) for truck in TRUCKS]


@cache
def drives(rows: int = 3000, troubles: float = 10.0) -> dict[str, Any]:
    """Every truck of the record, one after the other, with many troubles."""
    parts = [invented.drive(truck, rows, troubles=troubles, seed=3) for truck in made()]
    columns = {name: np.concatenate([part[name] for part in parts]) for name in parts[0]}
    return {"truck": np.repeat(np.array(TRUCKS, dtype=object), [len(part["time_s"]) for part in parts]), **columns}


def nonsense(rows: int, seed: int = 5) -> dict[str, Any]:
    """Values of every kind that a logger should not give, trucks and times in any order."""
    random = np.random.default_rng(seed)
    columns: dict[str, Any] = {"truck": random.choice(np.array(TRUCKS, dtype=object), rows)}
    columns["time_s"] = np.cumsum(random.choice([1.0, 1.0, 1.0, 0.0, -3.0, 7.25, 40.0], rows))
    columns["output_rpm"] = random.uniform(-200.0, 3000.0, rows)
    columns["input_rpm"] = columns["output_rpm"] * random.choice([4.25, 3.2, 2.3, 1.76, 1.38, 1.0, 0.86, 0.75, 2.97, 1.5], rows)
    columns["engine_rpm"] = columns["input_rpm"] + random.choice([0.0, 10.0, -60.0, 700.0], rows)
    columns["engine_torque_nm"] = random.normal(200.0, 300.0, rows) * random.choice([1.0, 1.0, 1.0, 1.0, 20.0], rows)
    columns["pressure_kpa"] = random.uniform(-100.0, 2000.0, rows)
    columns["temp_c"] = random.uniform(-80.0, 260.0, rows)
    columns["speed_km_h"] = random.uniform(-20.0, 420.0, rows)
    columns["gps_km_h"] = random.uniform(-20.0, 420.0, rows)
    columns["gear"] = random.choice([-1.0, 0.0, 1.0, 3.0, 5.0, 6.0, 8.0, 2.5, 99.0], rows)
    for name in columns:
        if name != "truck":
            bad = random.random(rows) < 0.02
            columns[name][bad] = random.choice([np.nan, np.inf, -np.inf, 1e300, -5.0], int(bad.sum()))
    for name in plain.BUS:  # frozen for a while, all of them together
        columns[name][rows // 2 : rows // 2 + 40] = columns[name][rows // 2]
    columns["truck"][rows // 2 : rows // 2 + 40] = TRUCKS[0]
    return columns


def arrow(columns: dict[str, Any]) -> pa.Table:
    return pa.table({name: pa.array(values.tolist()) if name == "truck" else values for name, values in columns.items()})


def written(folder: Path, days: int, rows_of_group: int) -> Path:
    """The drives as files; each truck's rows divided over all of them, in the order of time."""
    table = arrow(drives())
    mine = [table.filter(pa.compute.equal(table["truck"], truck)) for truck in TRUCKS]
    for day in range(days):
        shares = []
        for rows in mine:
            first, last = (share * len(rows) // days for share in (day, day + 1))
            shares.append(rows.slice(first, last - first))
        pq.write_table(pa.concat_tables(shares), folder / f"day_{day + 8}.parquet", row_group_size=rows_of_group)  # day_10 sorts before day_8
    return folder


def same_bits(one: dict[str, Any], two: dict[str, Any], *, without: tuple[str, ...] = ()) -> None:
    """Every total is the same in every bit."""
    assert list(one) == list(two)
    for name in one:
        if not name.endswith(without or ("\0",)):
            np.testing.assert_array_equal(np.asarray(one[name]), np.asarray(two[name]), err_msg=name)


STEPS = {"_kj": 2.0**-26, "aged_s": 2.0**-18, "life_used": 2.0**-18 / 3600.0 / LIFE["fluid_life_h"]}
"""Every row is rounded once to a fixed step, so that sums are exact: the coarse ones."""


def close_to_oracle(totals: dict[str, Any], expected: dict[Any, dict[str, float]]) -> None:
    """Counts and rows exactly; sums to the rounding of the rows, and the error of the oracle's floating-point sums."""
    assert list(totals["truck"]) == sorted(expected)
    for place, truck in enumerate(totals["truck"]):
        for name, value in expected[truck].items():
            found = totals[name][place]
            if name == "rows" or name.startswith("rows.") or name.endswith(("_row", ".rows")):
                assert found == value, (truck, name, found, value)
            else:
                tolerance = 1e-6 if name.endswith("deviation") else 1e-9
                rounded = sum(step for ending, step in STEPS.items() if name.endswith(ending)) * expected[truck]["rows"] / 2.0
                assert np.isclose(found, value, rtol=tolerance, atol=1e-9 + rounded, equal_nan=True), (truck, name, found, value)
