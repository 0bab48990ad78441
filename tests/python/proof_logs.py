"""Logs of proof runs made by formula: a unit driven through its gears, sound or with one fault."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import numpy as np
import trainwright
from trainwright import record

DEMO = Path(trainwright.__file__).parent / "demo"
FAMILY = record.load(DEMO / "family.toml")
VARIANT = "wren"
HZ = 50
SHIFT_S, FILL_S = 0.4, 0.2
UP = ("1", "2", "3", "4", "5", "6", "7", "8")
UP_AND_DOWN = (*UP, *reversed(UP[:-1]))
Columns = dict[str, Any]


def ratios(variant: str = VARIANT) -> dict[str, float]:
    """The ratio of every gear."""
    return {gear.id: float(gear.ratio) for gear in FAMILY.train(variant).gears() if gear.ratio is not None}


def driven(
    gears: Iterable[str] = UP_AND_DOWN, *, gear_s: float = 12.0, temp_c: tuple[float, float] = (85.0, 95.0), variant: str = VARIANT, hz: int = HZ,
    torque_nm: float = 250.0, pressure_kpa: float = 1500.0, slip_rpm: Mapping[str, float] | None = None, lost: Iterable[str] = (),
    shown: Mapping[str, str] | None = None, noise_rpm: float = 0.8, step_rpm: float = 0.5, seed: int = 7,
) -> Columns:  # fmt: skip
    """One gear after the other at input speeds around 1800 rpm, each shift with fill and a smooth speed change.

    ``slip_rpm``: at the input, by gear. ``lost``: gears in which the input runs free. ``shown``: gears that show the ratio of another.
    """
    ratio, order = ratios(variant), list(gears)
    count = int(gear_s * hz)
    time_s = np.arange(count * len(order)) / hz
    place = np.repeat(np.arange(len(order)), count)
    in_gear = (np.arange(len(time_s)) % count) / hz
    effect = [(shown or {}).get(gear, gear) for gear in order]
    shown_ratio = [abs(ratio[gear]) for gear in effect]
    now = np.array(shown_ratio)[place]
    before = np.array([shown_ratio[max(at - 1, 0)] for at in range(len(order))])[place]
    # The output stands still through a shift, so that only the input changes its speed in it; in between it moves smoothly to where
    # the next gear is taken: at the geometric mean of the speeds at which the input would turn with 1800 rpm.
    steady = 1800.0 / np.array(shown_ratio)
    taken = np.sqrt(np.concatenate((steady[:1], steady)) * np.concatenate((steady, steady[-1:])))
    moved = 0.5 - 0.5 * np.cos(np.pi * np.clip((in_gear / gear_s - 0.25) / 0.6, 0.0, 1.0))
    output = taken[place] + (taken[place + 1] - taken[place]) * moved
    done = np.clip((in_gear - FILL_S) / SHIFT_S, 0.0, 1.0)
    shift = np.where(place > 0, 0.5 - 0.5 * np.cos(np.pi * done), 1.0)
    input_rpm = (before + (now - before) * shift) * output
    slips, free = np.zeros(len(time_s)), np.zeros(len(time_s))
    for at, gear in enumerate(order):
        rows = (place == at) & (in_gear > FILL_S + SHIFT_S)
        slips[rows] = (slip_rpm or {}).get(gear, 0.0)
        if gear in set(lost):
            free[rows] = 900.0 + 300.0 * np.sin(2 * np.pi * 0.3 * in_gear[rows])
    random = np.random.default_rng(seed)

    def sensed(values: Any, noise: float, step: float) -> Any:
        return np.round((values + random.normal(0.0, noise, len(values))) / step) * step

    numbers = {gear: int(gear) if gear.isdigit() else -1 for gear in ratio if gear.isdigit() or gear == "R"}
    return {
        "time_s": time_s,
        "input_rpm": sensed(input_rpm + slips + free, noise_rpm, step_rpm),
        "output_rpm": sensed(output, noise_rpm, step_rpm),
        "engine_rpm": sensed(input_rpm + slips + free + 15.0, 3.0, 1.0),
        "pressure_kpa": sensed(np.full(len(time_s), pressure_kpa), 8.0, 8.0),
        "temp_c": sensed(np.linspace(*temp_c, len(time_s)), 0.2, 1.0),
        "turbine_torque_nm": np.where((in_gear > FILL_S + SHIFT_S) | (place == 0), torque_nm, 0.8 * torque_nm),
        "commanded_gear": np.array([numbers[gear] for gear in order])[place],
        "lockup": np.ones(len(time_s), dtype=np.int64),
    }


def joined(*logs: Columns) -> Columns:
    """One log after the other."""
    found: Columns = {}
    end = 0.0
    for log in logs:
        moved = {**log, "time_s": log["time_s"] + end}
        end = moved["time_s"][-1] + moved["time_s"][1] - moved["time_s"][0]
        found = {name: np.concatenate((found[name], values)) if found else values for name, values in moved.items()}
    return found


def clean() -> Columns:
    """Up and down through every gear cold, warming through the level check, the same at working temperature, and reverse."""
    return joined(
        driven(temp_c=(15.0, 38.0)), driven(("1",), gear_s=6.0, temp_c=(41.0, 53.0), seed=8), driven(temp_c=(82.0, 95.0), seed=9),
        driven(("R",), temp_c=(95.0, 95.0), seed=10),
    )  # fmt: skip


def write_csv(path: Path, log: Mapping[str, Any], *, head: str = "", mark: str = ",", decimal: str = ".") -> Path:
    """The log as a logger would write it."""
    rows = [mark.join(log)]
    rows += [mark.join("" if value != value else f"{value:g}".replace(".", decimal) for value in row) for row in zip(*(np.asarray(column).tolist() for column in log.values()))]
    path.write_text(head + "\n".join(rows) + "\n", encoding="utf-8")
    return path
