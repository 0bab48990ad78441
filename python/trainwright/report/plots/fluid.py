"""Pictures of the fluid."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .frame import BLUE, GREEN, ORANGE, PURPLE, QUIET, drawing, legend_above


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
        legend_above(axes)
    return picture.svg
