"""Pictures of an identification."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .frame import BLUE, GREEN, INK, ORANGE, PURPLE, QUIET, drawing, legend_above

COLORS, MARKERS = (BLUE, ORANGE, GREEN, PURPLE, INK, QUIET), "odsv^x"


def chances_by_look(title: str, steps: Sequence[tuple[str, Mapping[str, float]]]) -> str:
    """Chance of each variant after every look: (look, chances). Of many variants only those that ever lead."""
    leading = {max(chances, key=chances.__getitem__) for _, chances in steps}
    variants = [name for name in steps[0][1] if len(steps[0][1]) <= len(COLORS) or name in leading][: len(COLORS)]
    with drawing(title, 7.6, 3.9) as (axes, picture):
        places = range(len(steps))
        for variant, color, marker in zip(variants, COLORS, MARKERS):
            axes.plot(places, [chances[variant] for _, chances in steps], color=color, marker=marker, markersize=7, linewidth=2.0, label=variant)
        axes.set_xticks(places, [look.replace("_", "\n") for look, _ in steps], fontsize=8.5)
        axes.set_ylim(-0.03, 1.03)
        axes.set_ylabel("chance of the variant")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg


def worth_of_looks(title: str, looks: Sequence[tuple[str, float, float]]) -> str:
    """Information per minute of each look that was not made: (look, minutes, bit per minute)."""
    with drawing(title, 7.6, 0.9 + 0.36 * len(looks)) as (axes, picture):
        for place, (_, minutes, rate) in enumerate(reversed(looks)):
            axes.barh(place, rate, height=0.6, color=BLUE if place == len(looks) - 1 else "#c6d3e0")
            axes.annotate(f"{rate:.4f}   ({minutes:g} min)", (rate, place), (6, 0), textcoords="offset points", va="center", color=QUIET, fontsize=9)
        axes.set_yticks(range(len(looks)), [look.replace("_", " ") for look, _, _ in reversed(looks)])
        axes.set_ylim(-0.6, len(looks) - 0.4)
        axes.set_xlim(left=0)
        axes.margins(x=0.28)
        axes.set_xlabel("information about the variant, bit per minute of labor")
        axes.grid(axis="x")
        axes.set_axisbelow(True)
    return picture.svg
