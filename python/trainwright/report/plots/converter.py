"""Pictures of torque converters."""

from __future__ import annotations

from collections.abc import Sequence

from .frame import BLUE, GREEN, LINE, ORANGE, PURPLE, drawing, legend_above


def engine_against_converter(
    title: str, speed_rpm: Sequence[float], engine_nm: Sequence[float], impeller_nm: Sequence[float], stall: tuple[float, float],
    measured_rpm: float | None = None, allow_rpm: float | None = None, limit: tuple[float, float] | None = None,
) -> str:  # fmt: skip
    """Engine torque and the torque that the impeller takes with the turbine standing, against speed: they cross at the stall speed. The band is
    what is allowed about it; the open point is the stall at which no rating is passed."""
    with drawing(title, 7.6, 4.3) as (axes, picture):
        axes.plot(speed_rpm, engine_nm, color=BLUE, linewidth=2.2, label="engine")
        axes.plot(speed_rpm, impeller_nm, color=ORANGE, linewidth=2.2, label="impeller at stall")
        if allow_rpm is not None:
            axes.axvspan(stall[0] - allow_rpm, stall[0] + allow_rpm, color="#e9f1ee", zorder=0, label="no fault proven")
        axes.plot(*stall, "o", color=GREEN, markersize=8, label="stall")
        axes.annotate(f"{stall[0]:.0f} rpm, {stall[1]:.0f} N·m", stall, (10, -24), textcoords="offset points", color=GREEN, fontsize=9.5)
        if limit is not None:
            axes.plot(*limit, "o", markerfacecolor="none", color=PURPLE, markersize=8, label="no rating passed")
        if measured_rpm is not None:
            axes.axvline(measured_rpm, color=PURPLE, linewidth=1.4, linestyle=(0, (5, 2)))
            axes.annotate(f"measured {measured_rpm:.0f}", (measured_rpm, 0.03), (-4, 0), xycoords=("data", "axes fraction"), textcoords="offset points", color=PURPLE, fontsize=9.5, ha="right")  # fmt: skip
        axes.set_xlim(min(speed_rpm), max(speed_rpm))
        axes.set_ylim(0, 1.6 * max(engine_nm))
        axes.set_xlabel("engine speed, rpm")
        axes.set_ylabel("torque, N·m")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg


def converter_characteristic(
    title: str, speed_ratio: Sequence[float], torque_ratio: Sequence[float], efficiency: Sequence[float], capacity: Sequence[float], coupling: float | None = None
) -> str:
    """Torque ratio, efficiency and capacity factor (over that of the first point) against speed ratio."""
    with drawing(title, 7.6, 4.3) as (axes, picture):
        axes.plot(speed_ratio, torque_ratio, color=BLUE, linewidth=2.2, label="torque ratio")
        axes.plot(speed_ratio, efficiency, color=GREEN, linewidth=2.2, label="efficiency")
        axes.plot(speed_ratio, [value / capacity[0] for value in capacity], color=ORANGE, linewidth=2.2, linestyle=(0, (5, 2)), label="K over K at stall")
        if coupling is not None:
            axes.axvline(coupling, color=LINE, linewidth=1.2)
            axes.annotate("coupling point", (coupling, 0.03), (-4, 0), xycoords=("data", "axes fraction"), textcoords="offset points", fontsize=9.5, ha="right")
        axes.set_xlim(0, 1)
        axes.set_ylim(0, max(2.5, 1.1 * max(torque_ratio)))
        axes.set_xlabel("speed ratio: turbine speed over engine speed")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg
