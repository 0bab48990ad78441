"""Pictures of clutches and brakes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from .frame import LINE, VERDICT, drawing, legend_above


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
        legend_above(axes)
    return picture.svg
