"""Speed of the live monitors from Python, as ratios in one run. `make bench` runs it.

Ours does all of it: every reading weighed by its sensor, gear by likelihood, slip test, shifts, counts. What it is compared with
computes only ratio, nearest gear and slip: in NumPy over whole columns, and in a loop over the samples as a log reader would.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
import trainwright
from trainwright import live, record

DEMO = Path(trainwright.__file__).parent / "demo"
REPEATS = 500
UNITS = 500
LOOPED = 200_000
NAMES = {"time_s": "time_s", "input_rpm": "n_input_rpm", "output_rpm": "n_output_rpm", "engine_rpm": "n_engine_rpm", "temp_c": "sump_c", "gear": "commanded_gear"}


def seconds(work: Callable[[], object], least_s: float = 2.0, clock: Callable[[], float] = time.process_time) -> float:
    """Best time of one call: of this process alone, so that other programs stay out of what one core does."""
    best, spent = float("inf"), 0.0
    while spent < least_s or best == float("inf"):
        start = clock()
        work()
        took = clock() - start
        best, spent = min(best, took), spent + took
    return best


def unit() -> live.Unit:
    noise = {"input": 0.9, "output": 0.7, "engine": 4.0}
    sensors = live.sensors(record.load(DEMO / "instruments.toml"), "bus", noise_rpm=noise, age_limit_s=0.035, greatest_rpm=8000.0)
    limits = live.Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4)
    return live.Unit.of_train(record.load(DEMO / "family.toml").train("wren"), **sensors, limits=limits, sample_s=0.01)


def samples() -> dict[str, np.ndarray]:
    """The trace of the demonstration, again and again."""
    trace = np.genfromtxt(DEMO / "trace" / "trace.csv", delimiter=",", names=True)
    tiled = {ours: np.tile(trace[theirs].astype(np.float32), REPEATS) for ours, theirs in NAMES.items() if ours != "time_s"}
    return {"time_s": np.arange(len(trace) * REPEATS) * 0.01, **tiled}


def plain(ratios: np.ndarray, input_rpm: np.ndarray, output_rpm: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    with np.errstate(divide="ignore", invalid="ignore"):
        ratio = input_rpm / output_rpm
    borders = np.sqrt(ratios[1:] * ratios[:-1])
    gear = np.searchsorted(borders, ratio)
    return ratio, gear, input_rpm - ratios[gear] * output_rpm


def looped(ratios: list[float], input_rpm: list[float], output_rpm: list[float]) -> list[tuple[float, int, float]]:
    found = []
    for turbine, output in zip(input_rpm, output_rpm):
        ratio = turbine / output if output > 0.0 else float("nan")
        gear = min(range(len(ratios)), key=lambda place: abs(ratios[place] - ratio))
        found.append((ratio, gear, turbine - ratios[gear] * output))
    return found


def main() -> None:
    watched = unit()
    columns = samples()
    count = len(columns["time_s"])
    ratios = np.array(sorted(gear.ratio for gear in watched.gears if gear.ratio > 0.0), dtype=np.float32)

    events_only = seconds(lambda: live.watch(watched, columns, threads=1))
    with_samples = seconds(lambda: live.watch(watched, columns, threads=1, outputs=["ratio", "gear", "slip_rpm"]))
    in_numpy = seconds(lambda: plain(ratios, columns["input_rpm"], columns["output_rpm"]))
    few = {name: columns[name][:LOOPED].tolist() for name in ("input_rpm", "output_rpm")}
    in_a_loop = seconds(lambda: looped(ratios.tolist(), **few)) / LOOPED * count

    mixed = {name: np.ascontiguousarray(values.reshape(UNITS, -1).T).ravel() for name, values in columns.items()}
    mixed["unit"] = np.tile(np.arange(UNITS, dtype=np.int32), count // UNITS)
    one_core = seconds(lambda: live.watch(watched, mixed, threads=1))
    all_cores = seconds(lambda: live.watch(watched, mixed), clock=time.perf_counter)

    print(f"{count:,} samples of one unit")
    print(f"watch, events only, one core    {count / events_only / 1e6:8.2f} million samples per second")
    print(f"watch, ratio gear slip as well  {count / with_samples / 1e6:8.2f}")
    print(f"NumPy, ratio gear slip only     {count / in_numpy / 1e6:8.2f}")
    print(f"Python loop, the same           {count / in_a_loop / 1e6:8.2f}")
    print(f"{UNITS} units sample by sample mixed: one core {count / one_core / 1e6:.2f}, all cores {count / all_cores / 1e6:.2f}")
    print(f"live_samples_per_second: {count / events_only:.0f}")
    print(f"live_mixed_samples_per_second: {count / one_core:.0f}")
    print(f"live_over_python_loop: {in_a_loop / with_samples:.1f}")
    print(f"live_over_numpy: {in_numpy / with_samples:.3f}")


if __name__ == "__main__":
    main()
