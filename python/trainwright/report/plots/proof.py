"""Pictures of a proof run: the log on the ladder of the gears, shifts from close by, slip at every element that may explain it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from .frame import BLUE, GREEN, INK, LINE, ORANGE, PURPLE, QUIET, VERDICT, drawing, legend_above

Numbers = NDArray[np.float64]

POINTS = 900
"""Points of a drawn line at most; of each stretch its least and greatest value are kept."""
STANDING, QUICK = "-", (0, (4, 2))
WASHES = {"fill": "#e8eef4", "torque": "#f3ece2", "inertia": "#e6f0ec"}
LOOKS = ((BLUE, STANDING), (ORANGE, STANDING), (GREEN, QUICK), (PURPLE, QUICK))


def thinned(time_s: Numbers, values: Numbers) -> tuple[Numbers, Numbers]:
    """The line with fewer points, its peaks kept; a stretch without values stays a gap."""
    size = -(-len(time_s) // (POINTS // 2))
    if size <= 2:
        return time_s, values
    kept: list[int] = []
    for start in range(0, len(time_s), size):
        piece = values[start : start + size]
        known = np.flatnonzero(np.isfinite(piece))
        if len(known):
            kept += sorted({start + int(known[piece[known].argmin()]), start + int(known[piece[known].argmax()])})
            if len(known) < len(piece):
                kept.append(start + int(np.flatnonzero(~np.isfinite(piece))[-1]))
        else:
            kept.append(start)
    places = np.unique(kept)
    return time_s[places], values[places]


def ratio_trace(
    title: str, time_s: Numbers, ratio: Numbers, rungs: Sequence[tuple[str, float, str]], marks: Sequence[tuple[float, float, str, str]]
) -> str:
    """Measured ratio over the exact ratios of the gears: rungs (gear, ratio, verdict), marks (time, ratio, text, verdict)."""
    seen = np.where(ratio > 0, ratio, np.nan)
    with drawing(title, 7.6, 4.4) as (axes, picture):
        end = float(time_s[-1])
        for gear, exact, verdict in rungs:
            axes.axhline(exact, color=VERDICT.get(verdict, LINE), linewidth=1.0, linestyle=STANDING if verdict != "NOT PROVEN" else QUICK, zorder=1)
            axes.annotate(f"{gear}", (1.0, exact), (5, 0), xycoords=("axes fraction", "data"), textcoords="offset points", va="center", color=VERDICT.get(verdict, QUIET), fontsize=9.5)
        axes.plot(*thinned(time_s, seen), color=BLUE, linewidth=1.3, zorder=2)
        for place, (at_s, height, text, verdict) in enumerate(marks):
            color = VERDICT.get(verdict, INK)
            axes.plot([at_s], [height], "v" if place % 2 else "^", color=color, markersize=6, zorder=3)
            right = at_s > 0.7 * end
            axes.annotate(text, (at_s, height), (-6 if right else 6, 11 if place % 2 == 0 else -11), textcoords="offset points",
                          color=color, fontsize=8.5, ha="right" if right else "left", va="center")  # fmt: skip
        low, high = min(exact for _, exact, _ in rungs), max(exact for _, exact, _ in rungs)
        axes.set_yscale("log")
        axes.set_ylim(0.88 * low, 1.16 * high)
        ticks = [tick for tick in (0.5, 0.6, 0.7, 0.8, 1, 1.5, 2, 3, 4, 5, 6) if 0.88 * low <= tick <= 1.16 * high]
        axes.set_yticks(ticks, [f"{tick:g}" for tick in ticks])
        axes.minorticks_off()
        axes.set_xlim(float(time_s[0]), end)
        axes.set_xlabel("time, s")
        axes.set_ylabel("input over output speed (logarithmic)")
    return picture.svg


def shift_close_up(
    title: str, time_s: Numbers, input_rpm: Numbers, old_rpm: Numbers, new_rpm: Numbers, phases: Sequence[tuple[str, float, float]], remark: str, verdict: str
) -> str:
    """Input speed of one shift between what the old and the new gear ask for at the output's speed; phases (name, from, to) are shaded."""
    with drawing(title, 7.6, 3.4) as (axes, picture):
        low = float(np.nanmin([np.nanmin(input_rpm), np.nanmin(new_rpm), np.nanmin(old_rpm)]))
        high = float(np.nanmax([np.nanmax(input_rpm), np.nanmax(new_rpm), np.nanmax(old_rpm)]))
        room = 0.08 * (high - low)
        for name, begin, end in phases:
            axes.axvspan(begin, end, color=WASHES[name], zorder=0)
            axes.annotate(name, ((begin + end) / 2, low - room), (0, 3), textcoords="offset points", ha="center", color=QUIET, fontsize=8.5)
        axes.plot(time_s, old_rpm, color=QUIET, linewidth=1.2, linestyle=QUICK, label="old gear × output")
        axes.plot(time_s, new_rpm, color=GREEN, linewidth=1.2, linestyle=QUICK, label="new gear × output")
        axes.plot(time_s, input_rpm, color=BLUE, linewidth=1.8, label="input")
        axes.annotate(remark, (0.99, 0.95), xycoords="axes fraction", ha="right", va="top", color=VERDICT.get(verdict, INK), fontsize=9.5)
        axes.set_ylim(low - 2 * room, high + 2 * room)
        axes.set_xlim(float(time_s[0]), float(time_s[-1]))
        axes.set_xlabel("time, s")
        axes.set_ylabel("speed, rpm")
        axes.grid(axis="y")
        axes.set_axisbelow(True)
        legend_above(axes)
    return picture.svg


def slip_by_element(
    title: str, time_s: Numbers, slip_rpm: Numbers, elements: Mapping[str, float], began_s: float, found_s: float, smallest_rpm: float
) -> str:
    """Slip in one gear: at the input, and what it would be at each element that may explain it; elements by slip per slip at the input."""
    with drawing(title, 7.6, 3.8) as (axes, picture):
        axes.axhspan(-smallest_rpm, smallest_rpm, color="#e8ecef", linewidth=0, zorder=0)
        for (name, factor), (color, line) in zip(elements.items(), LOOKS):
            axes.plot(*thinned(time_s, factor * slip_rpm), color=color, linewidth=1.3, linestyle=line, label=f"if {name} slips")
        axes.plot(*thinned(time_s, slip_rpm), color=INK, linewidth=1.6, label="at the input")
        for at_s, text in ((began_s, "begins"), (found_s, "alarm")):
            axes.axvline(at_s, color=PURPLE, linewidth=1.0, linestyle=STANDING if text == "alarm" else QUICK)
            axes.annotate(f"{text} {at_s:.1f} s", (at_s, 1.0), (-3 if text == "begins" else 3, -10), xycoords=("data", "axes fraction"),
                          textcoords="offset points", color=PURPLE, fontsize=8.5, ha="right" if text == "begins" else "left")  # fmt: skip
        axes.set_xlim(float(time_s[0]), float(time_s[-1]))
        axes.set_xlabel("time, s")
        axes.set_ylabel("slip, rpm")
        axes.grid(axis="y")
        axes.set_axisbelow(True)
        legend_above(axes)
    return picture.svg
