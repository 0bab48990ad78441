"""Pictures of the gear train."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from .frame import BLUE, LINE, ORANGE, QUIET, drawing, legend_above


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
            legend_above(axes)
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
        legend_above(axes)
    return picture.svg
