"""The pictures of the report, as SVG text. They take plain numbers and know nothing of records."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import count, pairwise
from typing import Any

import matplotlib
from matplotlib.axes import Axes
from matplotlib.figure import Figure

INK, QUIET, LINE = "#1d2733", "#5b6875", "#d5dbe1"
BLUE, ORANGE, GREEN, PURPLE = "#1f5f99", "#b35c00", "#00735c", "#8b3a78"
VERDICT = {"GO": GREEN, "NOT PROVEN": ORANGE, "NO-GO": PURPLE}
STYLE: dict[str, Any] = {
    "font.family": ["sans-serif"],
    "font.size": 10.5,
    "text.color": INK,
    "axes.edgecolor": LINE,
    "axes.labelcolor": QUIET,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "xtick.color": QUIET,
    "ytick.color": QUIET,
    "axes.grid": False,
    "grid.color": LINE,
    "grid.linewidth": 0.8,
    "legend.frameon": False,
    "svg.fonttype": "none",
}
_serial = count()


class Picture:
    """SVG text, there once the ``with`` block that drew it has ended."""

    svg = ""


@contextmanager
def drawing(title: str, width: float, height: float) -> Iterator[tuple[Axes, Picture]]:
    """An empty plot; its SVG carries the title for screen readers."""
    picture = Picture()
    prefix = f"picture-{next(_serial)}-"
    style: Any = {**STYLE, "svg.hashsalt": title}
    with matplotlib.rc_context(style):
        figure = Figure(figsize=(width, height), layout="constrained")
        axes = figure.add_subplot()
        axes.tick_params(length=0)
        yield axes, picture
        text = io.StringIO()
        figure.savefig(text, format="svg", transparent=True, metadata={"Date": None, "Creator": None})
    svg = text.getvalue()[text.getvalue().index("<svg") :]
    svg = re.sub(r"<metadata>.*?</metadata>", "", svg, flags=re.DOTALL)
    svg = re.sub(r"font: ?([^;\"]*?)'[^;\"]*", r"font: \1system-ui, sans-serif", svg)
    svg = re.sub(r'\bid="|href="#|url\(#', lambda found: found[0] + prefix, svg)
    opening = re.sub(r' (?:width|height)="[^"]*"', "", svg[: svg.index(">")]) + f' role="img" aria-label="{title}">'
    picture.svg = opening + svg[svg.index(">") + 1 :]


def _legend_above(axes: Axes) -> None:
    axes.legend(loc="lower left", bbox_to_anchor=(-0.01, 1.0), ncols=4, borderpad=0, handletextpad=0.5, columnspacing=1.6)


def gear_ladder(title: str, variants: Mapping[str, Sequence[tuple[str, float]]]) -> str:
    """Input speed over output speed of each gear on a logarithmic scale, so that equal steps look equal."""
    ladders = list(variants.items())
    with drawing(title, 7.6, 0.55 + 0.42 * len(ladders[0][1])) as (axes, picture):
        for place, ((name, gears), color) in enumerate(zip(ladders, (BLUE, ORANGE))):
            for rung, (gear, ratio) in enumerate(gears):
                height = len(gears) - rung
                if place == 0:
                    axes.plot([0.5, abs(ratio)], [height, height], color=LINE, linewidth=7, solid_capstyle="butt", zorder=1)
                    text = f"{abs(ratio):.4f}" if ratio > 0 else f"−{abs(ratio):.4f} (reverse)"
                    axes.annotate(text, (abs(ratio), height), (9, 0), textcoords="offset points", va="center")
                label = name if rung == 0 else None
                marker = {0: "o", 1: "d"}[place]
                fill = color if place == 0 else "none"
                axes.plot([abs(ratio)], [height], marker, color=color, markerfacecolor=fill, markersize=8 + 3 * place, label=label)
        gears = ladders[0][1]
        forward = [(rung, ratio) for rung, (_, ratio) in enumerate(gears) if ratio > 0]
        for (rung, ratio), (_, following) in pairwise(forward):
            step = f"step {ratio / following:.3f}"
            axes.text(0.512, len(gears) - rung - 0.5, step, va="center", color=QUIET, fontsize=8.5)
        axes.set_xscale("log")
        axes.set_xlim(0.5, 7.2)
        axes.set_xticks([0.5, 0.7, 1, 1.5, 2, 3, 4, 5], [f"{x:g}" for x in (0.5, 0.7, 1, 1.5, 2, 3, 4, 5)])
        axes.minorticks_off()
        axes.set_yticks([len(gears) - rung for rung in range(len(gears))], [gear for gear, _ in gears])
        axes.set_ylabel("gear")
        axes.set_xlabel("ratio, input over output speed (logarithmic)")
        axes.spines["left"].set_visible(False)
        axes.grid(axis="x")
        axes.set_axisbelow(True)
        if len(ladders) > 1:
            _legend_above(axes)
    return picture.svg


@dataclass(frozen=True)
class Bar:
    """An element in a gear: what it must hold, what it can hold with its standard uncertainty, and the verdict."""

    gear: str
    element: str
    need_nm: float
    capacity_nm: float
    capacity_u_nm: float
    verdict: str


def capacity_against_demand(title: str, bars: Sequence[Bar]) -> str:
    """Demand as a bar, capacity as a point with ± two standard uncertainties, for each element of each gear."""
    with drawing(title, 7.6, 0.9 + 0.27 * len(bars)) as (axes, picture):
        seen: set[str] = set()
        for place, bar in enumerate(reversed(bars)):
            axes.barh(place, bar.need_nm, height=0.62, color="#c6d3e0", label=None if place else "must hold")
            label = None if bar.verdict in seen else f"can hold: {bar.verdict}"
            seen.add(bar.verdict)
            axes.errorbar(
                bar.capacity_nm, place, xerr=2 * bar.capacity_u_nm, label=label, capsize=2.5, markersize=6, elinewidth=1.4,
                fmt={"GO": "o", "NOT PROVEN": "D", "NO-GO": "X"}[bar.verdict], color=VERDICT[bar.verdict],
            )  # fmt: skip
        names = [f"{bar.gear}   {bar.element}" for bar in reversed(bars)]
        axes.set_yticks(range(len(bars)), names)
        for place, (below, above) in enumerate(pairwise(reversed(bars))):
            if below.gear != above.gear:
                axes.axhline(place + 0.5, color=LINE, linewidth=0.8)
        axes.set_ylim(-0.6, len(bars) - 0.4)
        axes.set_xlim(left=0)
        axes.set_xlabel("torque at the element, N·m; bars across a point: ± 2 standard uncertainties")
        axes.set_ylabel("gear and element")
        axes.grid(axis="x")
        axes.set_axisbelow(True)
        _legend_above(axes)
    return picture.svg


def level_against_temperature(
    title: str,
    curves: Mapping[str, tuple[Sequence[float], Sequence[float]]],
    window_c: tuple[float, float],
    marks: Mapping[str, float],
) -> str:
    """Level over the overflow edge against fluid temperature, for several fills; the check window is shaded."""
    with drawing(title, 7.6, 4.3) as (axes, picture):
        axes.axvspan(*window_c, color="#e8eef4", zorder=0)
        axes.text(sum(window_c) / 2, 0.985, "check here", transform=axes.get_xaxis_transform(), ha="center", va="top", color=QUIET)
        for label, height in marks.items():
            axes.axhline(height, color=PURPLE, linewidth=1, linestyle=(0, (5, 3)))
            axes.annotate(label, (0.005, height), (0, 3), xycoords=("axes fraction", "data"), textcoords="offset points",
                          color=PURPLE, fontsize=9.5)  # fmt: skip
        axes.axhline(0, color=QUIET, linewidth=1)
        looks = ((GREEN, "-"), (ORANGE, (0, (6, 2))), (BLUE, (0, (2, 1.5))))
        for (label, (temperature, level)), (color, line) in zip(curves.items(), looks):
            axes.plot(temperature, level, color=color, linestyle=line, linewidth=2.2, label=label)
        axes.set_xlabel("fluid temperature, °C")
        axes.set_ylabel("level above the overflow edge, mm")
        axes.grid(axis="y")
        _legend_above(axes)
    return picture.svg


def ratio_readings(title: str, readings: Sequence[tuple[str, float, float, Mapping[str, float]]]) -> str:
    """How far each candidate lies from each measured ratio, in standard uncertainties: (gear, ratio, u, candidates)."""
    with drawing(title, 7.6, 0.9 + 0.75 * len(readings)) as (axes, picture):
        axes.axvspan(-2, 2, color="#e8eef4", zorder=0)
        names = list(readings[0][3])
        for place, (gear, ratio, u, candidates) in enumerate(reversed(readings)):
            for nth, name in enumerate(names):
                away = (candidates[name] - ratio) / u
                label = name if place == 0 else None
                height = place + 0.14 * (1 - 2 * nth)
                axes.plot([away], [height], "od"[nth % 2], color=(BLUE, ORANGE)[nth % 2], markersize=9, label=label)
                axes.annotate(f"{away:+.1f} u".replace("-", "−"), (away, height), (8, 0), textcoords="offset points", va="center")
        axes.axvline(0, color=QUIET, linewidth=1)
        axes.set_yticks(range(len(readings)), [f"gear {gear}: {ratio:.6f}" for gear, ratio, _, _ in reversed(readings)])
        axes.set_ylim(-0.6, len(readings) - 0.4)
        axes.margins(x=0.14)
        axes.set_xlabel("candidate less reading, in standard uncertainties u; shaded: within ± 2 u")
        axes.grid(axis="x")
        _legend_above(axes)
    return picture.svg


def shift_points(title: str, before_label: str, after_label: str, shifts: Sequence[tuple[str, float, float]]) -> str:
    """Road speed of each upshift before and after a change: (shift, before, after), km/h."""
    with drawing(title, 7.6, 0.9 + 0.36 * len(shifts)) as (axes, picture):
        for place, (_, before, after) in enumerate(reversed(shifts)):
            axes.plot([before, after], [place, place], color=LINE, linewidth=4, solid_capstyle="round", zorder=1)
            axes.plot([before], [place], "o", color=BLUE, markersize=8, label=None if place else before_label)
            axes.plot([after], [place], "d", color=ORANGE, markersize=9, label=None if place else after_label)
        axes.set_yticks(range(len(shifts)), [name for name, _, _ in reversed(shifts)])
        axes.set_ylim(-0.6, len(shifts) - 0.4)
        axes.set_xlim(left=0)
        axes.set_xlabel("road speed, km/h")
        axes.grid(axis="x")
        axes.set_axisbelow(True)
        _legend_above(axes)
    return picture.svg
