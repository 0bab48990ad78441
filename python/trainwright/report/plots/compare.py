"""The picture of two variants side by side."""

from __future__ import annotations

from collections.abc import Sequence

from .frame import GREEN, ORANGE, QUIET, drawing, legend_above


def bargain(title: str, bars: Sequence[tuple[str, float, float]]) -> str:
    """How many times better each change makes a figure, on a logarithmic scale: (figure, better by, after over before)."""
    with drawing(title, 7.6, 0.9 + 0.32 * len(bars)) as (axes, picture):
        placed = [(place, better, ratio) for place, (_, better, ratio) in enumerate(reversed(bars))]
        for label, color, hatch, buys in (("buys", GREEN, None, True), ("costs", ORANGE, "///", False)):
            rows = [(place, better - 1) for place, better, _ in placed if (better > 1) == buys]
            places, widths = [place for place, _ in rows], [width for _, width in rows]
            axes.barh(places, widths, left=1, height=0.6, color=color, hatch=hatch, label=label, edgecolor="white", linewidth=0)
        for place, better, ratio in placed:
            buys = better > 1
            digits = 4 if abs(ratio - 1) < 0.005 else 2
            axes.annotate(
                f"× {ratio:.{digits}f}", (better, place), (4 if buys else -4, 0), textcoords="offset points",
                va="center", ha="left" if buys else "right", fontsize=9, color=QUIET,
            )  # fmt: skip
        axes.axvline(1, color=QUIET, linewidth=1)
        axes.set_xscale("log")
        reach = max(max(better, 1 / better) for _, better, _ in bars) * 1.6
        axes.set_xlim(1 / reach, reach)
        ticks = [tick for tick in (0.25, 0.5, 1, 2, 4, 8) if 1 / reach <= tick <= reach]
        axes.set_xticks(ticks, [f"{tick:g}" for tick in ticks])
        axes.minorticks_off()
        axes.set_yticks(range(len(bars)), [name for name, _, _ in reversed(bars)])
        axes.set_ylim(-0.6, len(bars) - 0.4)
        axes.set_xlabel("times better (right) or worse (left), logarithmic")
        axes.spines["left"].set_visible(False)
        axes.grid(axis="x")
        axes.set_axisbelow(True)
        legend_above(axes)
    return picture.svg
