"""The same pass as a loop compiled by numba, parallel over pieces of rows."""

from __future__ import annotations

from typing import Any

import numba
import numpy as np

from .plain import BUS, FLAGS, RANGES, Plan, Rules
from .unit import Unit

PIECE = 65_536
F = {name: place for place, name in enumerate(FLAGS)}
NAMES = tuple(RANGES)[:-1]
"""The columns, without the commanded gear: the bench does not give it."""
LOW, HIGH = np.array([RANGES[name][0] for name in NAMES]), np.array([RANGES[name][1] for name in NAMES])
SUMS = (
    "known_s", "gap_s", "converter_loss_kj", "gear_loss_kj", "input_energy_kj", "aged_s", "speed_km", "gps_km",
    "gps_over_speed.rows", "gps_over_speed.sum", "gps_over_speed.squares", "gps_over_output.rows", "gps_over_output.sum", "gps_over_output.squares",
    "greatest_share", "greatest_share_row", "least_margin", "least_margin_row", "hottest_c", "hottest_row",
)  # fmt: skip
FIRST, DUPLICATE, REVERSED, GAP, STALE, STANDING, UNKNOWN, NO_GEAR = (F[name] for name in FLAGS[10:18])
UNLOCKED, NO_TORQUE, LITTLE, OVER_INPUT, OVER_OUTPUT, LOW_MARGIN, HOT, BEYOND = (F[name] for name in FLAGS[19:27])
KW = np.pi / 30e3


@numba.njit(parallel=True)
def _pass(data, starts, ends, has_previous, of, gears, forward, holds, converter, scalars, rows, seconds, by_gear, sums):
    for task in numba.prange(starts.size):
        one = of[task]
        gear_count = gears.shape[2]
        rated_in, rated_out, slope, per_km_h, scale = scalars[one, 0], scalars[one, 1], scalars[one, 2], scalars[one, 3], scalars[one, 4]
        tolerance_slip, gap_s, standing, floor, hot, least_allowed, gps_floor, reference, halving = scalars[one, 5:14]
        for row in range(starts[task], ends[task]):
            ok = 0
            flags = 0
            for column in range(9):
                value = data[column][row]
                if LOW[column] <= value <= HIGH[column]:
                    ok |= 1 << column
                else:
                    flags |= 1 << column
            time, engine, inlet, outlet, torque = data[0][row], data[1][row], data[2][row], data[3][row], data[4][row]
            pressure, temp, speed, gps = data[5][row], data[6][row], data[7][row], data[8][row]
            duration = 0.0
            used = bool(ok & 1)
            if used:
                if row > starts[task] or has_previous[task]:
                    before = data[0][row - 1]
                    if LOW[0] <= before <= HIGH[0]:
                        step = time - before
                        if step == 0.0:
                            flags |= 1 << DUPLICATE
                            used = False
                        elif step < 0.0:
                            flags |= 1 << REVERSED
                            used = False
                        elif step > gap_s:
                            flags |= 1 << GAP
                            sums[task, 1] += step
                        else:
                            duration = step
                            same = bool(ok & 8) and outlet >= standing
                            for column in range(1, 8):
                                now, before = data[column][row], data[column][row - 1]
                                same = same and (now == before or (np.isnan(now) and np.isnan(before)))
                            if same:
                                flags |= 1 << STALE
                                used = False
                    else:
                        flags |= 1 << FIRST
                else:
                    flags |= 1 << FIRST
            sums[task, 0] += duration
            gear = -3
            if used:
                output_ok, input_ok, engine_ok = bool(ok & 8), bool(ok & 4), bool(ok & 2)
                if output_ok and outlet < standing:
                    gear = -2
                    flags |= 1 << STANDING
                elif not (output_ok and input_ok):
                    flags |= 1 << UNKNOWN
                else:
                    gear = -1
                    for place in range(gear_count):
                        if gears[one, 0, place] * outlet <= inlet <= gears[one, 1, place] * outlet:
                            gear = place
                            if forward[one, place]:
                                break
                    if gear == -1:
                        flags |= 1 << NO_GEAR
                formed = engine_ok and input_ok and bool(ok & 16)
                turned = np.nan
                if engine_ok and input_ok and abs(engine - inlet) > tolerance_slip:
                    flags |= 1 << UNLOCKED
                if formed:
                    turned = torque
                    if abs(engine - inlet) > tolerance_slip and torque > 0.0 and inlet <= engine:
                        at = inlet / engine
                        points = converter.shape[2]
                        if at >= converter[one, 0, points - 1]:
                            turned = torque * converter[one, 1, points - 1]
                        else:
                            upper = 1
                            while converter[one, 0, upper] < at:
                                upper += 1
                            x0, x1 = converter[one, 0, upper - 1], converter[one, 0, upper]
                            y0, y1 = converter[one, 1, upper - 1], converter[one, 1, upper]
                            turned = torque * (y0 + (at - x0) * ((y1 - y0) / (x1 - x0)))
                    size = abs(turned)
                    if size < floor:
                        flags |= 1 << LITTLE
                    share = size / rated_in
                    use = share
                    power = turned * inlet * KW
                    loss = max(torque * engine * KW - power, 0.0)
                    sums[task, 2] += loss * duration
                    sums[task, 4] += max(power, 0.0) * duration
                    if share > 1.0:
                        flags |= 1 << OVER_INPUT
                    if gear >= 0:
                        efficiency = gears[one, 3, gear]
                        if turned >= 0.0:
                            out_nm, loss = turned * gears[one, 2, gear] * efficiency, power * (1.0 - efficiency)
                        else:
                            out_nm, loss = turned * gears[one, 2, gear] / efficiency, -power * (1.0 / efficiency - 1.0)
                        sums[task, 3] += loss * duration
                        out_share = abs(out_nm) / rated_out
                        use = max(use, out_share)
                        if out_share > 1.0:
                            flags |= 1 << OVER_OUTPUT
                        if size >= floor and ok & 32:
                            least = np.inf
                            for column in range(holds.shape[2]):
                                margin = holds[one, 0, column, gear] * pressure + holds[one, 1, column, gear] * inlet * inlet - holds[one, 2, column, gear]
                                least = min(least, max(margin, 0.0))
                            least /= size
                            if least < least_allowed:
                                flags |= 1 << LOW_MARGIN
                            if least < sums[task, 16]:
                                sums[task, 16], sums[task, 17] = least, row
                        if share <= scale and duration > 0.0:
                            by_gear[task, 1, gear + 3] += duration / 60.0 * inlet * share**slope
                    if share > scale:
                        flags |= 1 << BEYOND
                    elif use > sums[task, 14]:
                        sums[task, 14], sums[task, 15] = use, row
                else:
                    flags |= 1 << NO_TORQUE
                if ok & 64:
                    if duration > 0.0:
                        sums[task, 5] += duration * 2.0 ** ((temp - reference) / halving)
                    if temp > hot:
                        flags |= 1 << HOT
                    if temp > sums[task, 18]:
                        sums[task, 18], sums[task, 19] = temp, row
                if ok & 128:
                    sums[task, 6] += speed * duration / 3600.0
                if ok & 256:
                    sums[task, 7] += gps * duration / 3600.0
                    if ok & 128 and speed >= gps_floor:
                        ratio = gps / speed
                        sums[task, 8] += 1.0
                        sums[task, 9] += ratio
                        sums[task, 10] += ratio * ratio
                    if output_ok and outlet / per_km_h >= gps_floor:
                        ratio = gps / (outlet / per_km_h)
                        sums[task, 11] += 1.0
                        sums[task, 12] += ratio
                        sums[task, 13] += ratio * ratio
                by_gear[task, 0, gear + 3] += duration
            flag = 0
            while flags:
                if flags & 1:
                    rows[task, flag] += 1
                    seconds[task, flag] += duration
                flags >>= 1
                flag += 1


def stacked(units: list[Unit], rules: Rules) -> tuple[np.ndarray, ...]:
    """The constants of every truck, in arrays over the trucks."""
    plans = [Plan(unit, rules) for unit in units]
    count = len(units[0].gears)
    gears = np.array([[p.low, p.high, p.ratio[:count], p.efficiency[:count]] for p in plans])
    forward = np.array([p.forward for p in plans])
    holds = np.array([[p.a, p.b, p.c] for p in plans])
    converter = np.array([[u.speed_ratio, u.torque_ratio] for u in units])
    limits = [
        rules.locked_slip_rpm, rules.gap_s, rules.standing_rpm, rules.torque_floor_nm, rules.hot_c,
        rules.least_margin, rules.gps_floor_km_h, rules.reference_c, rules.halving_k,
    ]  # fmt: skip
    scalars = np.array(
        [[u.rated_input_nm, u.rated_output_nm, u.slope, u.output_rpm_per_km_h, p.scale, *limits] for u, p in zip(units, plans)]
    )
    return gears, forward, holds, converter, scalars


def screen(units: dict[Any, Unit], rules: Rules, columns: dict[str, np.ndarray]) -> dict[Any, dict[str, float]]:
    """Totals by truck, for rows that stand together by truck and have every column but the commanded gear."""
    truck = columns["truck"]
    edges = np.concatenate([[0], np.flatnonzero(truck[1:] != truck[:-1]) + 1, [len(truck)]])
    names = [truck[edge] for edge in edges[:-1]]
    assert len(set(names)) == len(names)
    constants = stacked([units[name] for name in names], rules)
    starts = np.concatenate([np.arange(first, last, PIECE) for first, last in zip(edges, edges[1:])])
    of = np.searchsorted(edges, starts, side="right") - 1
    ends = np.minimum(starts + PIECE, edges[of + 1])
    rows = np.zeros((len(starts), len(FLAGS)), dtype=np.int64)
    seconds = np.zeros((len(starts), len(FLAGS)))
    by_gear = np.zeros((len(starts), 2, constants[0].shape[2] + 3))
    sums = np.zeros((len(starts), len(SUMS)))
    sums[:, 14], sums[:, 16], sums[:, 18] = -np.inf, np.inf, -np.inf
    data = tuple(columns[name] for name in NAMES)
    _pass(data, starts, ends, starts > edges[of], of, *constants, rows, seconds, by_gear, sums)
    found = {}
    for place, name in enumerate(names):
        mine = of == place
        plan = Plan(units[name], rules)
        one = {f"rows.{flag}": int(rows[mine, f].sum()) for flag, f in F.items()}
        one |= {f"seconds.{flag}": float(seconds[mine, f].sum()) for flag, f in F.items()}
        one |= dict(zip(SUMS[:14], sums[mine, :14].sum(axis=0).tolist()))
        one["rows"] = int(edges[place + 1] - edges[place])
        gears = by_gear[mine].sum(axis=0)
        for at, gear in enumerate(units[name].gears):
            one[f"gear_s.{gear}"], one[f"turns_at_rated.{gear}"] = gears[:, at + 3]
        for at, gear_set in enumerate(units[name].sets):
            one[f"damage.{gear_set}"] = float(gears[1, 3:] @ plan.damage[:, at])
        best = np.flatnonzero(mine)
        for what, at, sign in (("greatest_share", 14, 1), ("least_margin", 16, -1), ("hottest", 18, 1)):
            task = best[np.argmax(sign * sums[best, at])]
            one["hottest_c" if what == "hottest" else what], one[f"{what}_row"] = sums[task, at], int(sums[task, at + 1])
        found[name] = one
    return found


assert NAMES[1:8] == BUS
