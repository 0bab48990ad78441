"""The same pass in SQL for DuckDB: one query for a truck, its constants as literals."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import duckdb

from .plain import BUS, FLAGS, RANGES, W, Plan, Rules
from .unit import Unit

NAMES = tuple(RANGES)[:-1]


def _of_gear(values: Any, count: int) -> str:
    cases = " ".join(f"WHEN {gear} THEN {float(values[gear])!r}" for gear in range(count))
    return f"(CASE gear {cases} END)"


def query(unit: Unit, rules: Rules, table: str) -> str:
    """Totals of one truck as one row."""
    plan, count = Plan(unit, rules), len(unit.ratio)

    per_km_h = repr(unit.output_rpm_per_km_h) if unit.output_rpm_per_km_h > 0.0 else "'infinity'::DOUBLE"  # an unknown tire: never compared

    def of_gear(values: Any) -> str:
        return _of_gear(values, count)

    ok = ", ".join(f"({name} BETWEEN {low!r} AND {high!r}) AS ok_{name}" for name, (low, high) in RANGES.items() if name in NAMES)
    before = ", ".join(f"lag({name}) OVER () AS p_{name}" for name in ("time_s", "ok_time_s", *BUS))
    same = " AND ".join(f"{name} = p_{name}" for name in BUS)
    gears = [*(g for g in range(count) if plan.forward[g]), *(g for g in range(count) if not plan.forward[g])]
    bands = " ".join(f"WHEN {float(plan.low[g])!r}*output_rpm <= input_rpm AND input_rpm <= {float(plan.high[g])!r}*output_rpm THEN {g}" for g in gears)
    points = list(zip(unit.speed_ratio.tolist(), unit.torque_ratio.tolist()))
    curve = " ".join(
        f"WHEN input_rpm <= {x1!r}*engine_rpm THEN {y0!r} + (input_rpm/engine_rpm - {x0!r})*{(y1 - y0) / (x1 - x0)!r}"
        for (x0, y0), (x1, y1) in zip(points, points[1:])
    )
    holds = ", ".join(
        f"{of_gear(a)}*pressure_kpa + {of_gear(b)}*input_rpm*input_rpm - {of_gear(c)}"
        for a, b, c in zip(plan.a, plan.b, plan.c)
    ).replace("inf", "'infinity'::DOUBLE")  # fmt: skip
    flag = {
        **{f"bad_{name}": f"NOT ok_{name}" for name in NAMES},
        "first": "first", "duplicate": "duplicate", "reversed": "backward", "gap": "gap", "stale": "stale", "standing": "gear = -2",
        "unknown": "used AND gear = -3", "no_gear": "gear = -1", "unlocked": "unlocked", "no_torque": "used AND NOT formed",
        "little_torque": f"formed AND size < {rules.torque_floor_nm!r}", "over_input": "input_share > 1.0", "over_output": "output_share > 1.0",
        "low_margin": f"least < {rules.least_margin!r}", "hot": f"warm > {rules.hot_c!r}", "beyond_scale": f"input_share > {float(plan.scale)!r}",
    }  # fmt: skip
    sums = ["count(*) AS rows", "sum(duration) AS known_s", "coalesce(sum(step) FILTER (gap), 0) AS gap_s"]
    for name in FLAGS:
        if name in flag:
            sums += [f'count(*) FILTER ({flag[name]}) AS "rows.{name}"', f'coalesce(sum(duration) FILTER ({flag[name]}), 0) AS "seconds.{name}"']
    for place, name in enumerate(unit.gears):
        sums += [
            f'coalesce(sum(duration) FILTER (gear = {place}), 0) AS "gear_s.{name}"',
            f'coalesce(sum(turns) FILTER (gear = {place}), 0) AS "turns_at_rated.{name}"',
        ]
    sums += [
        "sum(converter_kw*duration) AS converter_loss_kj", "sum(gear_kw*duration) AS gear_loss_kj", "sum(greatest(input_kw, 0)*duration) AS input_energy_kj",
        f"sum(duration*pow(2.0, (warm - {rules.reference_c!r})/{rules.halving_k!r})) AS aged_s",
        "sum(speed_km_h*duration) FILTER (used AND ok_speed_km_h)/3600 AS speed_km", "sum(gps_km_h*duration) FILTER (used AND ok_gps_km_h)/3600 AS gps_km",
        "max(use) AS greatest_share", "arg_max(row, use) AS greatest_share_row", "min(least) AS least_margin", "arg_min(row, least) AS least_margin_row",
        "max(warm) AS hottest_c", "arg_max(row, warm) AS hottest_row",
        *(f'count({n}) AS "{n}.rows", avg({n}) AS "{n}.mean", stddev_samp({n}) AS "{n}.deviation"' for n in ("gps_over_speed", "gps_over_output")),
    ]  # fmt: skip
    return f"""
    WITH checked AS (SELECT *, row_number() OVER () - 1 AS row, {ok} FROM {table}),
    lagged AS (SELECT *, {before} FROM checked),
    stepped AS (SELECT *, ok_time_s AND NOT coalesce(p_ok_time_s, false) AS first,
        CASE WHEN ok_time_s AND p_ok_time_s THEN time_s - p_time_s END AS step FROM lagged),
    timed AS (SELECT *, coalesce(step = 0, false) AS duplicate, coalesce(step < 0, false) AS backward, coalesce(step > {rules.gap_s!r}, false) AS gap,
        CASE WHEN step > 0 AND step <= {rules.gap_s!r} THEN step ELSE 0.0 END AS duration FROM stepped),
    staled AS (SELECT *, coalesce(duration > 0 AND ok_output_rpm AND output_rpm >= {rules.standing_rpm!r} AND {same}, false) AS stale FROM timed),
    used AS (SELECT *, ok_time_s AND NOT (duplicate OR backward OR stale) AS used FROM staled),
    geared AS (SELECT *, CASE WHEN NOT used THEN -3 WHEN ok_output_rpm AND output_rpm < {rules.standing_rpm!r} THEN -2
        WHEN NOT (ok_output_rpm AND ok_input_rpm) THEN -3 {bands} ELSE -1 END AS gear,
        used AND ok_engine_rpm AND ok_input_rpm AND abs(engine_rpm - input_rpm) > {rules.locked_slip_rpm!r} AS unlocked,
        used AND ok_engine_rpm AND ok_input_rpm AND ok_engine_torque_nm AS formed FROM used),
    turned AS (SELECT *, CASE WHEN formed THEN engine_torque_nm * CASE WHEN unlocked AND engine_torque_nm > 0 AND input_rpm <= engine_rpm
        THEN CASE {curve} ELSE {points[-1][1]!r} END ELSE 1.0 END END AS input_nm FROM geared),
    loaded AS (SELECT *, abs(input_nm) AS size, input_nm*input_rpm*{W * 1e-3!r} AS input_kw, {of_gear(plan.efficiency)} AS efficiency FROM turned),
    shared AS (SELECT *, size/{unit.rated_input_nm!r} AS input_share,
        abs(input_nm*{of_gear(plan.ratio)}*CASE WHEN input_nm >= 0 THEN efficiency ELSE 1/efficiency END)/{unit.rated_output_nm!r} AS output_share,
        CASE WHEN gear >= 0 AND ok_pressure_kpa AND formed AND size >= {rules.torque_floor_nm!r} THEN greatest(least({holds}), 0)/size END AS least,
        CASE WHEN input_nm >= 0 THEN input_kw*(1 - efficiency) ELSE -input_kw*(1/efficiency - 1) END AS gear_kw,
        CASE WHEN formed THEN greatest(engine_torque_nm*engine_rpm*{W * 1e-3!r} - input_kw, 0) END AS converter_kw,
        CASE WHEN used AND ok_temp_c THEN temp_c END AS warm,
        CASE WHEN used AND ok_gps_km_h AND ok_speed_km_h AND speed_km_h >= {rules.gps_floor_km_h!r} THEN gps_km_h/speed_km_h END AS gps_over_speed,
        CASE WHEN used AND ok_gps_km_h AND ok_output_rpm AND output_rpm/{per_km_h} >= {rules.gps_floor_km_h!r}
            THEN gps_km_h/(output_rpm/{per_km_h}) END AS gps_over_output FROM loaded),
    summed AS (SELECT *, CASE WHEN input_share <= {float(plan.scale)!r} THEN greatest(input_share, output_share) END AS use,
        CASE WHEN gear >= 0 AND formed AND input_share <= {float(plan.scale)!r} THEN duration/60*input_rpm*pow(input_share, {unit.slope!r}) END AS turns FROM shared)
    SELECT {", ".join(sums)} FROM summed"""


def prepare(units: dict[Any, Unit], rules: Rules, tables: dict[Any, Any]) -> Callable[[], dict[Any, dict[str, float]]]:
    """A call that gives totals by truck, from an Arrow table for each truck; row numbers count within the truck."""
    connection = duckdb.connect()
    connection.execute("SET preserve_insertion_order = true")
    for number, table in enumerate(tables.values()):
        connection.register(f"rows_{number}", table)
    queries = {name: query(units[name], rules, f"rows_{number}") for number, name in enumerate(tables)}

    def run() -> dict[Any, dict[str, float]]:
        found = {}
        for name, text in queries.items():
            cursor = connection.execute(text)
            labels = [column[0] for column in cursor.description]
            found[name] = dict(zip(labels, cursor.fetchone()))
        return found

    return run
