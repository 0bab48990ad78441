"""The same pass in Polars expressions: one lazy query for a truck, its constants as literals, all of them collected together."""

from __future__ import annotations

from typing import Any

import polars as pl

from .plain import BUS, FLAGS, RANGES, W, Plan, Rules
from .unit import Unit

NAMES = tuple(RANGES)[:-1]


def _of_gear(values: Any) -> pl.Expr:
    """A constant of the gear in effect; the places -3 to -1 stand at the end, as NumPy counts them."""
    return pl.lit(pl.Series([*values[-3:], *values[:-3]], dtype=pl.Float64)).gather(pl.col("gear") + 3)


def query(rows: pl.LazyFrame, unit: Unit, rules: Rules) -> pl.LazyFrame:
    """Totals of one truck as one row."""
    plan, c = Plan(unit, rules), pl.col
    ok = {name: c(f"ok_{name}") for name in NAMES}
    rows = rows.with_columns(c(name).is_between(low, high).alias(f"ok_{name}") for name, (low, high) in RANGES.items() if name in NAMES)
    before = c("ok_time_s").shift(1, fill_value=False)
    step = c("time_s") - c("time_s").shift(1)
    rows = rows.with_columns(
        (ok["time_s"] & ~before).alias("first"),
        pl.when(ok["time_s"] & before).then(step).alias("step"),
    )
    rows = rows.with_columns(
        (c("step") == 0.0).fill_null(False).alias("duplicate"),
        (c("step") < 0.0).fill_null(False).alias("reversed"),
        (c("step") > rules.gap_s).fill_null(False).alias("gap"),
        pl.when((c("step") > 0.0) & (c("step") <= rules.gap_s)).then(c("step")).otherwise(0.0).alias("duration"),
    )
    same = (c("duration") > 0.0) & ok["output_rpm"] & (c("output_rpm") >= rules.standing_rpm)
    for name in BUS:
        same &= c(name) == c(name).shift(1)
    rows = rows.with_columns(same.fill_null(False).alias("stale"))
    rows = rows.with_columns((ok["time_s"] & ~(c("duplicate") | c("reversed") | c("stale"))).alias("used"))

    gear = pl.lit(-1)
    for place in [*(g for g in range(len(unit.ratio)) if not plan.forward[g]), *(g for g in range(len(unit.ratio)) if plan.forward[g])]:
        hit = (c("output_rpm") * plan.low[place] <= c("input_rpm")) & (c("input_rpm") <= c("output_rpm") * plan.high[place])
        gear = pl.when(hit).then(place).otherwise(gear)
    gear = (
        pl.when(~c("used")).then(-3)
        .when(ok["output_rpm"] & (c("output_rpm") < rules.standing_rpm)).then(-2)
        .when(~(ok["output_rpm"] & ok["input_rpm"])).then(-3).otherwise(gear)
    )  # fmt: skip
    at = c("input_rpm") / c("engine_rpm")
    multiplied = pl.lit(float(unit.torque_ratio[-1]))
    points = list(zip(unit.speed_ratio, unit.torque_ratio))
    for (x0, y0), (x1, y1) in reversed(list(zip(points, points[1:]))):
        multiplied = pl.when(at <= x1).then(y0 + (at - x0) * ((y1 - y0) / (x1 - x0))).otherwise(multiplied)
    open_converter = (c("engine_rpm") - c("input_rpm")).abs() > rules.locked_slip_rpm
    speeds_ok = c("used") & ok["engine_rpm"] & ok["input_rpm"]
    rows = rows.with_columns(
        gear.cast(pl.Int32).alias("gear"),
        (speeds_ok & open_converter).alias("unlocked"),
        (speeds_ok & ok["engine_torque_nm"]).alias("formed"),
        pl.when(speeds_ok & ok["engine_torque_nm"])
        .then(c("engine_torque_nm") * pl.when(open_converter & (c("engine_torque_nm") > 0) & (at <= 1.0)).then(multiplied).otherwise(1.0))
        .alias("input_nm"),
    )
    rows = rows.with_columns(
        c("input_nm").abs().alias("size"), (c("input_nm") * c("input_rpm") * (W * 1e-3)).alias("input_kw"),
        _of_gear(plan.efficiency).alias("efficiency"), (c("gear") >= 0).alias("in_gear"),
    )  # fmt: skip
    drives = c("input_nm") >= 0.0
    output_nm = c("input_nm") * _of_gear(plan.ratio) * pl.when(drives).then(c("efficiency")).otherwise(1.0 / c("efficiency"))
    holds = pl.min_horizontal(
        (_of_gear(a) * c("pressure_kpa") + _of_gear(b) * c("input_rpm").pow(2) - _of_gear(held)).clip(lower_bound=0.0)
        for a, b, held in zip(plan.a, plan.b, plan.c)
    )
    weighed = c("in_gear") & ok["pressure_kpa"] & c("formed") & (c("size") >= rules.torque_floor_nm)
    warm = c("used") & ok["temp_c"]
    placed = c("used") & ok["gps_km_h"]
    shown = c("output_rpm") / (unit.output_rpm_per_km_h if unit.output_rpm_per_km_h > 0.0 else float("inf"))  # an unknown tire: never compared
    rows = rows.with_columns(
        (c("size") / unit.rated_input_nm).alias("input_share"),
        pl.when(c("in_gear")).then(output_nm.abs() / unit.rated_output_nm).alias("output_share"),
        pl.when(weighed).then(holds / c("size")).alias("least"),
        pl.when(~c("in_gear")).then(0.0).when(drives).then(c("input_kw") * (1.0 - c("efficiency"))).otherwise(-c("input_kw") * (1.0 / c("efficiency") - 1.0)).alias("gear_kw"),
        (c("engine_torque_nm") * c("engine_rpm") * (W * 1e-3) - c("input_kw")).clip(lower_bound=0.0).alias("converter_kw"),
        pl.when(warm).then(c("temp_c")).alias("warm"),
        pl.when(placed & ok["speed_km_h"] & (c("speed_km_h") >= rules.gps_floor_km_h)).then(c("gps_km_h") / c("speed_km_h")).alias("gps_over_speed"),
        pl.when(placed & ok["output_rpm"] & (shown >= rules.gps_floor_km_h)).then(c("gps_km_h") / shown).alias("gps_over_output"),
    )
    rows = rows.with_columns(
        pl.when(c("input_share") <= plan.scale).then(pl.max_horizontal("input_share", "output_share")).alias("use"),
        pl.when(c("in_gear") & c("formed") & (c("input_share") <= plan.scale))
        .then(c("duration") / 60.0 * c("input_rpm") * c("input_share").pow(unit.slope)).alias("turns"),
    )  # fmt: skip
    false = pl.lit(False)
    flag = {
        **{f"bad_{name}": ~ok[name] for name in NAMES}, "bad_gear": false, "mismatch": false,
        "first": c("first"), "duplicate": c("duplicate"), "reversed": c("reversed"), "gap": c("gap"), "stale": c("stale"),
        "standing": c("gear") == -2, "unknown": c("used") & (c("gear") == -3), "no_gear": c("gear") == -1, "unlocked": c("unlocked"),
        "no_torque": c("used") & ~c("formed"), "little_torque": c("formed") & (c("size") < rules.torque_floor_nm),
        "over_input": c("input_share") > 1.0, "over_output": c("output_share") > 1.0, "low_margin": c("least") < rules.least_margin,
        "hot": c("warm") > rules.hot_c, "beyond_scale": c("input_share") > plan.scale,
    }  # fmt: skip
    sums = [pl.len().alias("rows"), c("duration").sum().alias("known_s"), c("step").filter(c("gap")).sum().alias("gap_s")]
    for name in FLAGS:
        if name not in ("bad_gear", "mismatch"):
            sums += [flag[name].sum().alias(f"rows.{name}"), c("duration").filter(flag[name]).sum().alias(f"seconds.{name}")]
    for place, name in enumerate(unit.gears):
        sums += [
            c("duration").filter(c("gear") == place).sum().alias(f"gear_s.{name}"),
            c("turns").filter(c("gear") == place).sum().alias(f"turns_at_rated.{name}"),
        ]
    aged = c("duration") * (((c("warm") - rules.reference_c) / rules.halving_k) * pl.lit(2.0).log()).exp()
    sums += [
        (c("converter_kw") * c("duration")).sum().alias("converter_loss_kj"), (c("gear_kw") * c("duration")).sum().alias("gear_loss_kj"),
        (c("input_kw").clip(lower_bound=0.0) * c("duration")).sum().alias("input_energy_kj"), aged.sum().alias("aged_s"),
        (c("speed_km_h") * c("duration") / 3600.0).filter(c("used") & ok["speed_km_h"]).sum().alias("speed_km"),
        (c("gps_km_h") * c("duration") / 3600.0).filter(placed).sum().alias("gps_km"),
        c("use").max().alias("greatest_share"), c("use").arg_max().alias("greatest_share_row"), c("least").min().alias("least_margin"), c("least").arg_min().alias("least_margin_row"),
        c("warm").max().alias("hottest_c"), c("warm").arg_max().alias("hottest_row"),
    ]  # fmt: skip
    for name in ("gps_over_speed", "gps_over_output"):
        sums += [c(name).count().alias(f"{name}.rows"), c(name).mean().alias(f"{name}.mean"), c(name).std().alias(f"{name}.deviation")]
    return rows.select(sums)


def screen(units: dict[Any, Unit], rules: Rules, frames: dict[Any, pl.DataFrame]) -> dict[Any, dict[str, float]]:
    """Totals by truck, from a frame for each truck; row numbers count within the truck."""
    answers = pl.collect_all([query(frame.lazy(), units[name], rules) for name, frame in frames.items()])
    return {name: answer.row(0, named=True) for name, answer in zip(frames, answers)}
