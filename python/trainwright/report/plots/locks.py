"""Pictures of the park lock."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .frame import BLUE, LINE, ORANGE, PURPLE, QUIET, VERDICT, drawing, legend_above


def stress_by_grade(
    title: str, grades_pct: Sequence[float], curves: Mapping[str, Sequence[Sequence[float]]], yield_mpa: float, u_rel: float
) -> str:
    """Root stress against grade, for each gear standing and rocking; yield as a line, in a band of ± 2 standard uncertainties of the stress there."""
    with drawing(title, 7.6, 4.3) as (axes, picture):
        axes.axhspan(yield_mpa / (1 + 2 * u_rel), yield_mpa / (1 - 2 * u_rel), color="#f3e6ef", zorder=0)
        axes.axhline(yield_mpa, color=PURPLE, linewidth=1.2)
        axes.annotate("yield", (0.005, yield_mpa), (0, 3), xycoords=("axes fraction", "data"), textcoords="offset points", color=PURPLE, fontsize=9.5)
        for (name, passes), color in zip(curves.items(), (BLUE, ORANGE)):
            for stress_mpa, line in zip(passes, ("-", (0, (5, 2)))):
                axes.plot(grades_pct, stress_mpa, color=color, linestyle=line, linewidth=2.2, label=name if line == "-" else None)
        axes.set_xlim(0, max(grades_pct))
        axes.set_ylim(0, 2 * yield_mpa)
        axes.set_xlabel("grade, %")
        axes.set_ylabel("stress at the root of a tooth, MPa")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg


def stress_by_truck(title: str, points: Sequence[tuple[str, str, float, float, str]], yield_mpa: float) -> str:
    """Root stress of every truck with its own gear and with the other: (truck, which gear, stress, standard uncertainty, verdict)."""
    trucks = list(dict.fromkeys(point[0] for point in points))
    which = list(dict.fromkeys(point[1] for point in points))
    with drawing(title, 7.6, 0.9 + 0.42 * len(trucks)) as (axes, picture):
        axes.axvline(yield_mpa, color=PURPLE, linewidth=1.2)
        axes.annotate("yield", (yield_mpa, 1.0), (4, -11), xycoords=("data", "axes fraction"), textcoords="offset points", color=PURPLE, fontsize=9.5)
        labeled: set[str] = set()
        for truck, gear, stress_mpa, u_mpa, verdict in points:
            place = len(trucks) - trucks.index(truck) + (0.13 if gear == which[0] else -0.13)
            label = None if verdict in labeled else verdict
            labeled.add(verdict)
            marker = {"GO": "o", "NOT PROVEN": "D", "NO-GO": "X"}[verdict]
            axes.errorbar(
                stress_mpa, place, xerr=2 * u_mpa, fmt=marker, color=VERDICT[verdict], markersize=7, elinewidth=1.4, capsize=2.5, label=label,
                markerfacecolor=VERDICT[verdict] if gear == which[0] else "none",
            )  # fmt: skip
        for place in range(1, len(trucks)):
            axes.axhline(place + 0.5, color=LINE, linewidth=0.8)
        axes.set_yticks(range(1, len(trucks) + 1), list(reversed(trucks)))
        axes.set_ylim(0.4, len(trucks) + 0.6)
        axes.set_xlim(left=0)
        axes.set_xlabel("stress at the root of a tooth, MPa")
        axes.tick_params(axis="y", labelcolor=QUIET)
        axes.grid(axis="x")
        axes.set_axisbelow(True)
        legend_above(axes)
    return picture.svg
