"""Pictures of end play and clutch clearance."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ...judge import Reading
from .frame import BLUE, INK, PURPLE, QUIET, VERDICT, drawing, legend_above


@dataclass(frozen=True)
class PieceRow:
    """A piece of the list: its size, what it leaves with the verdict, what it leaves warm, and what speaks for it."""

    size: str
    cold_mm: Reading
    verdict: str
    hot_mm: Reading | None = None
    remark: str = ""


def pieces_against_window(
    title: str, rows: Sequence[PieceRow], window_mm: tuple[float, float], target_mm: float, piece: str, result: str
) -> str:
    """What each piece leaves, cold and warm, with ± two standard uncertainties, against the window."""
    near = window_mm[1] - window_mm[0]
    low, high = window_mm[0] - 0.9 * near, window_mm[1] + 0.9 * near
    with drawing(title, 7.6, 1.1 + 0.36 * len(rows)) as (axes, picture):
        axes.axvspan(*window_mm, color="#e8eef4", zorder=0, label="wanted")
        axes.axvline(target_mm, color=PURPLE, linewidth=1, linestyle=(0, (5, 3)), label="aimed at")
        seen: set[str] = set()
        for place, row in enumerate(reversed(rows)):
            label = None if row.verdict in seen else row.verdict
            seen.add(row.verdict)
            if low <= row.cold_mm.value <= high:
                axes.errorbar(
                    row.cold_mm.value, place, xerr=2 * row.cold_mm.u, label=label, capsize=2.5, markersize=6, elinewidth=1.4,
                    fmt={"GO": "o", "NOT PROVEN": "D", "NO-GO": "X"}[row.verdict], color=VERDICT[row.verdict],
                )  # fmt: skip
            else:
                side, arrow = ("left", "‹") if row.cold_mm.value < low else ("right", "›")
                at = 0.01 if side == "left" else 0.99
                axes.text(at, place, f"{arrow} {row.cold_mm.value:.2f}".replace("-", "−"), transform=axes.get_yaxis_transform(), ha=side, va="center", color=QUIET)
            if row.hot_mm and low <= row.hot_mm.value <= high:
                axes.errorbar(
                    row.hot_mm.value, place - 0.22, xerr=2 * row.hot_mm.u, label="warm" if "warm" not in seen else None, capsize=2,
                    markersize=5, elinewidth=1, fmt="o", color=BLUE, markerfacecolor="white",
                )  # fmt: skip
                seen.add("warm")
            if row.remark:
                axes.annotate(row.remark, (row.cold_mm.value, place), (0, 8), textcoords="offset points", ha="center", color=INK, fontsize=9)
        axes.set_yticks(range(len(rows)), [row.size for row in reversed(rows)])
        axes.set_xlim(low, high)
        axes.set_ylim(-0.7, len(rows) - 0.3)
        axes.set_xlabel(f"{result}; bars across a point: ± 2 standard uncertainties")
        axes.set_ylabel(f"{piece}, mm")
        axes.grid(axis="x")
        axes.set_axisbelow(True)
        legend_above(axes)
    return picture.svg


def shares_of_variance(title: str, shares: Sequence[tuple[str, float, float]], u_mm: float) -> str:
    """Share of each part in the variance, and the uncertainty that would be left without it: (part, share, u then)."""
    with drawing(title, 7.6, 0.8 + 0.42 * len(shares)) as (axes, picture):
        for place, (_, share, then) in enumerate(reversed(shares)):
            axes.barh(place, 100 * share, height=0.6, color="#c6d3e0")
            axes.text(100 * share + 1, place, f"u {u_mm:.4f} to {then:.4f} mm if measured exactly", va="center", color=QUIET, fontsize=9.5)
        axes.set_yticks(range(len(shares)), [name for name, _, _ in reversed(shares)])
        axes.set_xlim(0, 140)
        axes.set_xticks(range(0, 101, 20))
        axes.set_xlabel("share of the variance, %")
        axes.grid(axis="x")
        axes.set_axisbelow(True)
    return picture.svg
