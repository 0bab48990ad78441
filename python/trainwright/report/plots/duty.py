"""Pictures of damage: trucks with their intervals, and set by set."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .frame import BLUE, GREEN, LINE, ORANGE, PURPLE, QUIET, drawing, legend_above


def damage_by_truck(title: str, rows: Sequence[tuple[str, Sequence[float], Sequence[float], bool]]) -> str:
    """Damage of every truck on a logarithmic axis: (truck, interval with the slopes, interval at one slope, over its rating)."""
    with drawing(title, 7.6, 0.9 + 0.42 * len(rows)) as (axes, picture):
        for number, (_, widest, known, over) in enumerate(rows):
            place, color = len(rows) - number, PURPLE if over else BLUE
            axes.plot(widest, [place, place], color=color, linewidth=1.2, solid_capstyle="butt")
            axes.plot(known, [place, place], color=color, linewidth=5, solid_capstyle="round", alpha=0.45)
            middle = (known[0] * known[-1]) ** 0.5
            axes.plot([middle], [place], marker="D" if over else "o", color=color, markersize=7, linestyle="none")
        for place in range(1, len(rows)):
            axes.axhline(place + 0.5, color=LINE, linewidth=0.8)
        axes.set_xscale("log")
        axes.set_yticks(range(1, len(rows) + 1), [row[0] for row in reversed(rows)])
        axes.set_ylim(0.4, len(rows) + 0.6)
        axes.set_xlabel("damage of the worst set (1 is where the reference line is met; it ranks, it promises no life)")
        axes.tick_params(axis="y", labelcolor=QUIET)
        axes.grid(axis="x")
        axes.set_axisbelow(True)
    return picture.svg


def damage_by_set(title: str, damage: Mapping[str, Mapping[str, float]]) -> str:
    """Damage of each planetary set of every truck on a logarithmic axis."""
    trucks = list(damage)
    sets = list(dict.fromkeys(name for of in damage.values() for name in of))
    looks = [("o", ORANGE), ("D", BLUE), ("s", GREEN), ("^", PURPLE), ("v", QUIET), ("P", ORANGE), ("X", BLUE), ("*", GREEN)]
    with drawing(title, 7.6, 0.9 + 0.42 * len(trucks)) as (axes, picture):
        for name, (marker, color) in zip(sets, looks):
            points = [(of[name], len(trucks) - at) for at, of in enumerate(damage.values()) if of.get(name)]
            if points:
                values, places = zip(*points)
                axes.plot(values, places, marker=marker, color=color, markersize=7, linestyle="none", label=name)
        for place in range(1, len(trucks)):
            axes.axhline(place + 0.5, color=LINE, linewidth=0.8)
        axes.set_xscale("log")
        axes.set_yticks(range(1, len(trucks) + 1), list(reversed(trucks)))
        axes.set_ylim(0.4, len(trucks) + 0.6)
        axes.set_xlabel("damage")
        axes.tick_params(axis="y", labelcolor=QUIET)
        axes.grid(axis="x")
        axes.set_axisbelow(True)
        legend_above(axes)
    return picture.svg
