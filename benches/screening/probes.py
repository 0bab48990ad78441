"""Memory bandwidth of this machine in this run, by the ways a user would try: copy, sum and triad, NumPy and numba parallel."""

from __future__ import annotations

from collections.abc import Callable

import numba
import numpy as np

LENGTH = 40_000_000
"""Numbers in an array: 320 MB, far beyond any cache."""


@numba.njit(parallel=True, fastmath=True)
def _sum(values: np.ndarray) -> float:
    total = 0.0
    for i in numba.prange(values.size):
        total += values[i]
    return total


@numba.njit(parallel=True, fastmath=True)
def _copy(to: np.ndarray, values: np.ndarray) -> None:
    for i in numba.prange(values.size):
        to[i] = values[i]


@numba.njit(parallel=True, fastmath=True)
def _triad(to: np.ndarray, one: np.ndarray, two: np.ndarray) -> None:
    for i in numba.prange(one.size):
        to[i] = one[i] + 3.0 * two[i]


def _triad_numpy(to: np.ndarray, one: np.ndarray, two: np.ndarray) -> None:
    np.multiply(two, 3.0, out=to)
    np.add(to, one, out=to)


def bandwidths(seconds: Callable[[Callable[[], object]], float]) -> dict[str, float]:
    """GB/s that the program reads and writes, by probe."""
    one, two, to = np.ones(LENGTH), np.ones(LENGTH), np.zeros(LENGTH)
    gigabytes = LENGTH * 8e-9
    probes: dict[str, tuple[float, Callable[[], object]]] = {
        "sum, NumPy": (1, lambda: one.sum()),
        "sum, numba": (1, lambda: _sum(one)),
        "copy, NumPy": (2, lambda: np.copyto(to, one)),
        "copy, numba": (2, lambda: _copy(to, one)),
        "triad, NumPy": (5, lambda: _triad_numpy(to, one, two)),
        "triad, numba": (3, lambda: _triad(to, one, two)),
    }
    for _, probe in probes.values():
        probe()
    return {name: passes * gigabytes / seconds(probe) for name, (passes, probe) in probes.items()}
