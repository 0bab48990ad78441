"""Pictures of loads against ratings, and of a launch."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import isfinite

from .frame import BLUE, INK, LINE, ORANGE, PURPLE, QUIET, VERDICT, drawing, legend_above


def loads_and_ratings(title: str, bars: Sequence[tuple[str, float, float, float, float]]) -> str:
    """Bars of (load, alone, with the trailer, standard uncertainty, rating): the rating as a mark, where one is known."""
    with drawing(title, 7.6, 0.9 + 0.62 * len(bars)) as (axes, picture):
        for place, (_, alone_kg, with_kg, u_kg, rating_kg) in enumerate(reversed(bars)):
            axes.barh(place, with_kg, height=0.5, color=BLUE, alpha=0.85, xerr=2 * u_kg, ecolor=INK, capsize=2.5, label="with the trailer" if place == 0 else None)
            if alone_kg:
                axes.plot([alone_kg, alone_kg], [place - 0.25, place + 0.25], color=INK, linewidth=1.8)
            if isfinite(rating_kg):
                over = with_kg > rating_kg
                axes.plot([rating_kg, rating_kg], [place - 0.38, place + 0.38], color=PURPLE if over else ORANGE, linewidth=2.6, label="rating" if place == 0 else None)
        axes.set_yticks(range(len(bars)), [bar[0] for bar in reversed(bars)])
        axes.set_xlim(left=0)
        axes.set_xlabel("kg; dark mark: without the trailer")
        axes.tick_params(axis="y", labelcolor=QUIET)
        axes.grid(axis="x")
        axes.set_axisbelow(True)
        legend_above(axes)
    return picture.svg


def fullest_ratings(title: str, points: Sequence[tuple[str, str, float, float, str]]) -> str:
    """The fullest rating of each truck: (truck, rating, share used, its standard uncertainty, verdict)."""
    with drawing(title, 7.6, 0.9 + 0.36 * len(points)) as (axes, picture):
        labeled: set[str] = set()
        axes.axvline(100, color=PURPLE, linewidth=1.2)
        for place, (_, rating, share, u_share, verdict) in enumerate(reversed(points)):
            axes.errorbar(
                100 * share, place, xerr=200 * u_share, fmt={"GO": "o", "NOT PROVEN": "D", "NO-GO": "X"}[verdict], color=VERDICT[verdict], markersize=7,
                elinewidth=1.4, capsize=2.5, label=None if verdict in labeled else verdict,
            )  # fmt: skip
            axes.annotate(rating, (100 * share, place), (0, 7), textcoords="offset points", color=QUIET, fontsize=8.5, ha="center")
            labeled.add(verdict)
        axes.set_yticks(range(len(points)), [point[0] for point in reversed(points)])
        axes.set_ylim(-0.6, len(points) - 0.2)
        axes.set_xlabel("load over rating, %")
        axes.tick_params(axis="y", labelcolor=QUIET)
        for place in range(len(points) - 1):
            axes.axhline(place + 0.5, color=LINE, linewidth=0.8)
        legend_above(axes)
    return picture.svg


def launch_by_grade(title: str, grades_pct: Sequence[float], takes_n: Sequence[float], lines: Mapping[str, tuple[float, Sequence[float]]]) -> str:
    """What a grade takes, against force and grip of each direction: way to (force, grip at each grade)."""
    with drawing(title, 7.6, 4.3) as (axes, picture):
        axes.plot(grades_pct, [force / 1000 for force in takes_n], color=INK, linewidth=2.4, label="what the grade takes")
        for (way, (force_n, grip_n)), color in zip(lines.items(), (BLUE, ORANGE)):
            axes.axhline(force_n / 1000, color=color, linewidth=2, label=f"force, {way}")
            axes.plot(grades_pct, [grip / 1000 for grip in grip_n], color=color, linewidth=1.6, linestyle=(0, (5, 2)), label=f"grip, {way}")
        axes.axvline(12, color=LINE, linewidth=1.2)
        axes.set_xlim(0, max(grades_pct))
        axes.set_ylim(bottom=0)
        axes.set_xlabel("grade, %")
        axes.set_ylabel("force at the driven wheels, kN")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg
