"""Speed against what a user would otherwise write with NumPy, as ratios in one run. `make bench` runs it.

The gear-train, identification and interchange figures are the Rust benches (criterion, `cargo bench --bench train`) against NumPy
on the same train, the same looks and the same family; the capacity figures are the Python call against the same formula in plain
NumPy.
"""

from __future__ import annotations

import json
import subprocess
import time
from collections.abc import Callable
from itertools import permutations
from pathlib import Path

import numpy as np
from scipy.special import log_ndtr
from trainwright.clutch import Annulus, Head, Pack
from trainwright.interchange import Joint, Joints
from trainwright.judge import Limits

ROOT = Path(__file__).resolve().parents[1]
ROWS = 10_000_000
MEMBERS, INPUT, OUTPUT, CASE = 10, 0, 1, 2
SETS = [(45, 95, 3, 5, 4), (51, 89, 3, 6, 0), (73, 119, 6, 7, 8), (23, 85, 9, 4, 1)]
"""Sun teeth, ring teeth, and the members of sun, ring and carrier: the ten-speed of benches/train.rs."""
ELEMENTS = [(5, 2), (3, 2), (6, 7), (7, 9), (0, 9), (8, 4)]
DENSITY = 800.0
"""Hot oil, kg/m³."""
SIXTH = 0b11_1001
MESH_EFFICIENCY = 0.98


def seconds(work: Callable[[], object], least_s: float = 0.5) -> float:
    """Best time of one call: the fastest of several, the usual way to keep other programs out of the figure."""
    best, spent = float("inf"), 0.0
    while spent < least_s or best == float("inf"):
        start = time.perf_counter()
        work()
        took = time.perf_counter() - start
        best, spent = min(best, took), spent + took
    return best


def rust(bench: str) -> float:
    """Best time of a criterion bench, seconds, as `seconds` takes it."""
    sample = json.loads((ROOT / "target" / "criterion" / bench / "new" / "sample.json").read_text())
    return min(nanoseconds / count for nanoseconds, count in zip(sample["times"], sample["iters"])) * 1e-9


# ---- the gear train in NumPy


def assemble(closed: int) -> np.ndarray:
    """Rows of the sets, then one row for each closed element, then the case."""
    rows = np.zeros((len(SETS) + closed.bit_count() + 1, MEMBERS))
    for row, (sun_teeth, ring_teeth, sun, ring, carrier) in zip(rows, SETS):
        row[sun] += sun_teeth
        row[ring] += ring_teeth
        row[carrier] -= sun_teeth + ring_teeth
    closures = [element for bit, element in enumerate(ELEMENTS) if closed >> bit & 1]
    for row, (first, second) in zip(rows[len(SETS) :], closures):
        row[first], row[second] = 1.0, -1.0
    rows[-1, CASE] = 1.0
    return rows


def one_gear(closed: int) -> np.ndarray:
    """Member speeds: only what numpy.linalg.solve gives, no shares, no check that the state is a gear."""
    rows = assemble(closed)
    matrix = np.vstack([rows, np.eye(MEMBERS)[INPUT]])
    right = np.zeros(MEMBERS)
    right[-1] = 1.0
    return np.linalg.solve(matrix, right)


def state(closed: int) -> tuple[str, np.ndarray | None, np.ndarray | None, float | None]:
    """Kind, speeds, shares and efficiency of an engagement."""
    rows = assemble(closed)
    rank = np.linalg.matrix_rank(rows)
    drive = np.vstack([rows, np.eye(MEMBERS)[INPUT]])
    if np.linalg.matrix_rank(drive) == rank:
        held = np.linalg.matrix_rank(np.vstack([rows, np.eye(MEMBERS)[OUTPUT]])) == rank
        return ("tied up" if held else "input held"), None, None, None
    with_output = np.linalg.matrix_rank(np.vstack([drive, np.eye(MEMBERS)[OUTPUT]]))
    if with_output > rank + 1:
        return "neutral", None, None, None
    right = np.zeros(len(drive))
    right[-1] = 1.0
    speeds = np.linalg.lstsq(drive, right, rcond=None)[0]
    if abs(speeds[OUTPUT]) < 1e-12:
        return "output held", speeds, None, None

    outside = np.zeros(MEMBERS)
    outside[INPUT] = -1.0
    equilibrium = np.column_stack([rows.T, np.eye(MEMBERS)[OUTPUT]])
    multipliers = np.linalg.lstsq(equilibrium, outside, rcond=None)[0]
    ratio = 1 / speeds[OUTPUT]
    sense = np.ones(len(SETS))
    lossy = multipliers
    for _ in range(len(SETS) + 1):
        loaded = rows.copy()
        for number, (sun_teeth, ring_teeth, sun, ring, carrier) in enumerate(SETS):
            power = -lossy[number] * sun_teeth * (speeds[sun] - speeds[carrier])
            sense[number] = np.sign(power) if abs(power) > 1e-12 else 0.0
            ring_torque = ring_teeth * MESH_EFFICIENCY ** sense[number]
            loaded[number] = 0.0
            loaded[number, sun] += sun_teeth
            loaded[number, ring] += ring_torque
            loaded[number, carrier] -= sun_teeth + ring_torque
        before = sense.copy()
        lossy = np.linalg.lstsq(np.column_stack([loaded.T, np.eye(MEMBERS)[OUTPUT]]), outside, rcond=None)[0]
        if (before == sense).all():
            break
    return "gear", speeds, multipliers[len(SETS) : -1], -lossy[-1] / ratio


def state_table() -> list[tuple[str, np.ndarray | None, np.ndarray | None, float | None]]:
    return [state(closed) for closed in range(1 << len(ELEMENTS))]


# ---- capacity over columns


def capacity_columns() -> tuple[float, float, float]:
    """Seconds of NumPy, of our call with a fresh result, and of our call with `out`."""
    random = np.random.default_rng(1)
    pressure_kpa = random.uniform(300.0, 1800.0, ROWS)
    speed_rpm = random.uniform(0.0, 5000.0, ROWS)
    friction = random.uniform(0.09, 0.14, ROWS)
    piston = Annulus(inner_radius_mm=56.0, outer_radius_mm=78.0)
    pack = Pack(
        lining=Annulus(inner_radius_mm=68.0, outer_radius_mm=86.0),
        piston=piston,
        faces=6,
        return_spring_n=Limits(lower=980.0, upper=1200.0),
        head=Head(wetted=piston, free_surface_radius_mm=52.0),
    )
    line = pack.capacity_line(oil_density_kg_m3=DENSITY)

    def plain() -> np.ndarray:
        net_n = pressure_kpa * 1e-3 * line.piston_area_mm2 + line.head_n_per_rpm2 * speed_rpm**2 - line.held_back_n
        return friction * line.arm_mm * 1e-3 * np.maximum(net_n, 0.0)

    def ours(out: np.ndarray | None = None) -> np.ndarray:
        at = {"pressure_kpa": pressure_kpa, "drum_speed_rpm": speed_rpm, "friction": friction}
        return pack.capacity_nm(**at, oil_density_kg_m3=800.0, out=out)

    out = np.empty(ROWS)
    assert np.allclose(plain(), ours(), rtol=1e-12)
    return seconds(plain), seconds(ours), seconds(lambda: ours(out))


# ---- a unit weighed by many looks


def weighing() -> Callable[[], np.ndarray]:
    """A thousand variants by 25 marks and 25 sizes, one of each on every part, as benches/identify.rs weighs them."""
    variants, parts = 1000, 25
    place = np.arange(variants)[None, :] + variants * np.arange(parts)[:, None]
    chance = 0.01 + 0.98 * (place * 0.618033988749895 % 1.0)
    lower = 40.0 + np.floor(10.0 * ((np.arange(parts)[:, None] + 7 * np.arange(variants)[None, :]) * 0.618033988749895 % 1.0))
    upper = lower + 0.025
    seen = (np.arange(parts) % 3 > 0)[:, None]
    prior, exchanged, x, u = np.full(variants, 1.0 / variants), np.full((parts, 1), 0.05), 44.012, 0.0016

    def plain() -> np.ndarray:
        near, far = np.maximum(lower - x, x - upper) / u, np.maximum(x - lower, upper - x) / u
        tail, rest = log_ndtr(-near), log_ndtr(-far)
        ln_part = np.log(np.where(seen, chance, 1.0 - chance)) + tail + np.log1p(-np.exp(rest - tail)) - np.log(upper - lower)
        scaled = np.exp(ln_part - ln_part.max(axis=1, keepdims=True))
        ln_weight = np.log(prior) + np.log((1.0 - exchanged) * scaled + exchanged * (scaled @ prior)[:, None]).sum(axis=0)
        weight = np.exp(ln_weight - ln_weight.max())
        return weight / weight.sum()

    return plain


# ---- matched sets


PARTS, FITS, VARIANTS, LIMIT_MM = 200, 400, 8, 0.14


def large_family() -> tuple[Joints, np.ndarray, np.ndarray, np.ndarray]:
    """The family of benches/interchange.rs without its machining: as our class, and its parts and sizes as arrays."""
    seed = 1

    def shuffled(below: int) -> int:
        nonlocal seed
        seed = (seed * 1_664_525 + 1_013_904_223) % 2**32
        return (seed >> 8) % below

    ends, shafts_mm, joints = [], [], []
    for name in range(FITS):
        first = shuffled(PARTS)
        second = (first + 1 + shuffled(PARTS - 1)) % PARTS
        size_mm = 20.0 + shuffled(80)
        sizes = []
        for _ in range(VARIANTS):
            size_mm += 0.35 if shuffled(10) == 0 else 0.0
            sizes.append(size_mm)
        by_variant = {str(v): (Limits(lower=d - 0.025, upper=d), Limits(lower=d + 0.040, upper=d + 0.075)) for v, d in enumerate(sizes)}
        joints.append(Joint(name=str(name), kind="running", first=str(first), second=str(second), limit=LIMIT_MM, sizes=by_variant))
        ends.append((first, second))
        shafts_mm.append(sizes)
    variants, parts = [str(variant) for variant in range(VARIANTS)], [str(part) for part in range(PARTS)]
    ours = Joints(variants=variants, parts=parts, joints=joints, fixed=["0"])
    return ours, np.array(ends)[:, 0], np.array(ends)[:, 1], np.array(shafts_mm)


def closures(first: np.ndarray, second: np.ndarray, shafts_mm: np.ndarray) -> dict[tuple[int, int], np.ndarray]:
    """For each ordered pair of variants, which part (row) brings which (column) along."""
    found = {}
    for of, into in permutations(range(VARIANTS), 2):
        forced = np.eye(PARTS, dtype=np.float32)
        for shaft, bore, start, end in ((of, into, first, second), (into, of, second, first)):
            least_mm = shafts_mm[:, bore] + 0.040 - shafts_mm[:, shaft]
            broken = (least_mm < -1e-9) | (least_mm + 0.060 > LIMIT_MM + 1e-9)
            forced[start[broken], end[broken]] = 1
        forced[0, 1:] = 0  # nothing comes along behind what is never exchanged
        while True:
            further = np.minimum(forced @ forced, 1)
            if np.array_equal(further, forced):
                break
            forced = further
        found[of, into] = forced
    return found


def interchange() -> float:
    """Seconds of NumPy for all closures, after a check that they are ours."""
    ours, first, second, shafts_mm = large_family()
    reached = closures(first, second, shafts_mm)
    for answer in ours.matrix():
        if answer.size:
            row = reached[int(answer.variant), int(answer.into)][int(answer.part)]
            assert answer.size == row[1:].sum(), answer
            assert (answer.relation == "never") == bool(row[0]), answer
    return seconds(lambda: closures(first, second, shafts_mm))


def main() -> None:
    for bench in ("train", "identify", "interchange"):
        subprocess.run(["cargo", "bench", "--quiet", "--bench", bench, "--", "--quiet"], cwd=ROOT, check=True)
    gear_s, table_s = (rust(bench) for bench in ("gear of a four-set train", "state table of a ten-speed"))
    print(f"one gear: Rust {gear_s * 1e9:.0f} ns, NumPy {(gear := seconds(lambda: one_gear(SIXTH))) * 1e6:.1f} us")
    print(f"64 states: Rust {table_s * 1e6:.1f} us, NumPy {(table := seconds(state_table)) * 1e3:.1f} ms")
    weigh_s = rust("a thousand variants by fifty looks")
    print(f"1,000 variants by 50 looks: Rust {weigh_s * 1e3:.2f} ms, NumPy {(weigh := seconds(weighing())) * 1e3:.2f} ms")
    plain, fresh, reused = capacity_columns()
    print(f"capacity of {ROWS:,} rows: NumPy {plain * 1e3:.0f} ms, ours {fresh * 1e3:.0f} ms, into `out` {reused * 1e3:.0f} ms")
    matrix_s = rust("interchange of 200 parts")
    print(f"interchange of {PARTS} parts, {VARIANTS} variants: Rust {matrix_s * 1e3:.1f} ms, NumPy {(matrix := interchange()) * 1e3:.0f} ms")
    print()
    print(f"gear_solve_over_numpy: {gear / gear_s:.1f}")
    print(f"state_table_over_numpy: {table / table_s:.0f}")
    print(f"identify_weigh_ms: {weigh_s * 1e3:.2f}")
    print(f"identify_weigh_over_numpy: {weigh / weigh_s:.2f}")
    print(f"capacity_rows_over_numpy: {plain / fresh:.2f}")
    print(f"capacity_rows_into_out_over_numpy: {plain / reused:.2f}")
    print(f"interchange_matrix_over_numpy: {matrix / matrix_s:.1f}")
    print(f"interchange_matrix_ms: {matrix_s * 1e3:.1f}")


if __name__ == "__main__":
    main()
