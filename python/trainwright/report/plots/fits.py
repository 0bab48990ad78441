"""Pictures of fits."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .frame import BLUE, GREEN, ORANGE, PURPLE, QUIET, drawing, legend_above


def clearance_against_temperature(
    title: str,
    temps_c: Sequence[float],
    clearance_mm: Sequence[float],
    u_mm: Sequence[float],
    naive_mm: Mapping[str, Sequence[float]],
    *,
    limit_mm: float,
    let_go_c: float,
) -> str:
    """Running clearance in a pressed bushing with its band of ± 2 u, beside lines that are often assumed; where the bushing lets go,
    and the limit in service, which is one for 20 °C."""
    with drawing(title, 7.6, 4.3) as (axes, picture):
        low, high = ([value + sign * 2 * u for value, u in zip(clearance_mm, u_mm)] for sign in (-1, 1))
        axes.fill_between(temps_c, low, high, color=GREEN, alpha=0.13, linewidth=0)
        axes.plot(temps_c, clearance_mm, color=GREEN, linewidth=2.4, label="in the pressed bushing")
        looks = ((ORANGE, (0, (6, 2))), (BLUE, (0, (2, 1.5))))
        for (label, values), (color, line) in zip(naive_mm.items(), looks):
            axes.plot(temps_c, values, color=color, linestyle=line, linewidth=1.8, label=label)
        axes.plot([20.0], [limit_mm], marker="_", markersize=16, markeredgewidth=2, color=PURPLE)
        axes.annotate("limit in service, at 20 °C", (20.0, limit_mm), (12, -4), textcoords="offset points", color=PURPLE, fontsize=9.5)
        if temps_c[0] < let_go_c < temps_c[-1]:
            axes.axvline(let_go_c, color=QUIET, linewidth=1, linestyle=(0, (5, 3)))
            axes.annotate("lets go", (let_go_c, 0.07), (-4, 0), xycoords=("data", "axes fraction"), textcoords="offset points",
                          ha="right", color=QUIET, fontsize=9.5)  # fmt: skip
        axes.axhline(0, color=QUIET, linewidth=1)
        axes.set_xlabel("temperature of case and shaft, °C")
        axes.set_ylabel("clearance, mm")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg
