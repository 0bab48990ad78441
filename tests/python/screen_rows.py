"""A truck and rows for the tests of the pass over rows."""

from __future__ import annotations

import numpy as np
from trainwright import clutch
from trainwright._native import fleet

RATIOS = {"1": 4.252, "2": 3.204, "3": 2.295, "4": 1.757, "5": 1.383, "6": 1.0, "7": 0.860, "8": 0.752, "R": -2.967}


def unit(**changes):
    def holding(place: int) -> list[fleet.Holding]:
        return [
            fleet.Holding(
                element=f"E{(place + 2 * k) % 5}",
                share=0.4 + 0.3 * k + 0.05 * place,
                turns=0.5 * k,
                line=clutch.CapacityLine(
                    piston_area_mm2=9000.0 + 500.0 * k,
                    head_n_per_rpm2=0.0 if k == 0 else 2e-5,
                    held_back_n=1200.0,
                    arm_mm=900.0,
                ),
                friction=0.11,
            )
            for k in range(3)
        ]

    gears = [
        fleet.Gear(
            name=name,
            number=place + 1 if ratio > 0 else -1,
            ratio=ratio,
            efficiency=0.95 + 0.005 * place,
            holding=holding(place),
            contacts={f"P{k}": 2.0 + 0.5 * k for k in range(4)},
            sun_torque={f"P{k}": 0.3 * k + 0.1 for k in range(4)},
        )
        for place, (name, ratio) in enumerate(RATIOS.items())
    ]
    given = {
        "gears": gears,
        "rated_input_nm": 560.0,
        "rated_output_nm": 2350.0,
        "limits": fleet.Limits.common_practice(),
        "slope": 6.5,
        "reference_contacts": 1e6,
        "reference_torque_nm": {"P0": 1000.0, "P1": 1200.0, "P2": 1400.0, "P3": 1600.0},
        "speed_ratio": [0.0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97],
        "torque_ratio": [1.92, 1.72, 1.51, 1.28, 1.17, 1.06, 1.0, 1.0, 1.0],
        "output_rpm_per_km_h": 25.0,
        "fluid_life_h": 2000.0,
        "fluid_reference_c": 79.4,
        "fluid_halving_k": 11.1,
    }
    return fleet.Unit(**(given | changes))


def rows(count: int, seed: int = 1, bad: float = 0.0, trucks: int = 1) -> dict[str, np.ndarray]:
    """`trucks` trucks one after the other, `count` rows in all; a share `bad` of the rows has a fault."""
    random = np.random.default_rng(seed)
    hold = random.integers(1, 30, count)
    place = np.repeat(random.integers(0, 11, count), hold)[:count]
    ratio = np.append(np.abs(list(RATIOS.values())), [1.9, 1.0])[place]
    output = np.where(place == 10, 0.0, 25.0 * random.uniform(10, 100, count))
    input_rpm = np.where(place == 10, random.uniform(0, 700, count), output * ratio * random.uniform(0.995, 1.005, count))
    slips = random.random(count) < 0.2
    engine = np.where(slips, input_rpm * random.uniform(1, 2, count) + 60, input_rpm + random.uniform(0, 20, count))
    data = {
        "time_s": 1.7e9 + np.arange(count, dtype=float),
        "engine_rpm": np.minimum(engine, 9000.0),
        "input_rpm": np.minimum(input_rpm, 9000.0),
        "output_rpm": output,
        "engine_torque_nm": random.uniform(-150, 750, count),
        "pressure_kpa": random.uniform(300, 1500, count),
        "temp_c": random.uniform(60, 130, count),
        "speed_km_h": output / 25.0,
        "gps_km_h": output / 25.0 * random.uniform(1, 1.01, count),
        "gear": np.select([place < 8, place == 8], [place + 1.0, -1.0], 0.0),
    }
    faulty = np.flatnonzero(random.random(count) < bad)
    names = list(data)
    for row in faulty:
        column = names[random.integers(len(names))]
        kind = random.integers(6)
        if kind < 4:
            data[column][row] = [np.nan, np.inf, -7.5, 1e30][kind]
        elif kind == 4:
            data["time_s"][row:] += random.uniform(0, 100)
        elif row:
            for name in names[1:]:
                data[name][row] = data[name][row - 1]
    data["truck"] = np.sort(random.integers(0, trucks, count))
    return data
