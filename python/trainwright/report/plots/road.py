"""Pictures of tire and axle."""

from __future__ import annotations

from collections.abc import Sequence

from .frame import BLUE, LINE, ORANGE, drawing, legend_above


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
        legend_above(axes)
    return picture.svg
