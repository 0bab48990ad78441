"""Pictures of the hydraulics."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .frame import BLUE, GREEN, ORANGE, PURPLE, QUIET, VERDICT, drawing, legend_above


def flow_by_speed(
    title: str, speeds_rpm: Sequence[float], displaced_l_min: Sequence[float], curves: Mapping[str, Sequence[float]], demand_l_min: float, idle_rpm: float
) -> str:
    """Flow of a pump against its speed, displaced and delivered, with the demand and the idle speed."""
    with drawing(title, 7.6, 4.3) as (axes, picture):
        axes.plot(speeds_rpm, displaced_l_min, color=QUIET, linewidth=1.4, linestyle=(0, (1, 2)), label="displaced")
        for (name, flow), color in zip(curves.items(), (BLUE, ORANGE, GREEN)):
            axes.plot(speeds_rpm, flow, color=color, linewidth=2.2, label=name)
        axes.axhline(demand_l_min, color=PURPLE, linewidth=1.2, linestyle=(0, (5, 3)))
        axes.annotate("taken by the transmission", (0.995, demand_l_min), (0, 3), xycoords=("axes fraction", "data"), textcoords="offset points",
                      color=PURPLE, fontsize=9.5, ha="right")  # fmt: skip
        axes.axvline(idle_rpm, color=QUIET, linewidth=1)
        axes.annotate("idle", (idle_rpm, 0.985), (4, 0), xycoords=("data", "axes fraction"), textcoords="offset points", color=QUIET, fontsize=9.5, va="top")
        axes.set_xlim(0, max(speeds_rpm))
        axes.set_ylim(bottom=0.0)
        axes.set_xlabel("speed of the pump, rpm")
        axes.set_ylabel("flow, L/min")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg


def pressure_by_gear(title: str, points: Sequence[tuple[str, str, float, str]], gauge_kpa: float, gauge_u_kpa: float, control_max_kpa: float) -> str:
    """Pressure that each gear needs, by (gear, element, pressure, verdict), against the gauge and the most that the control can give."""
    with drawing(title, 7.6, 4.3) as (axes, picture):
        axes.axhspan(gauge_kpa - 2 * gauge_u_kpa, gauge_kpa + 2 * gauge_u_kpa, color="#e8eef4", zorder=0)
        axes.axhline(gauge_kpa, color=BLUE, linewidth=1.4)
        axes.annotate("gauge", (0.005, gauge_kpa), (0, -11), xycoords=("axes fraction", "data"), textcoords="offset points", color=BLUE, fontsize=9.5)
        axes.axhline(control_max_kpa, color=QUIET, linewidth=1.2, linestyle=(0, (5, 3)))
        axes.annotate("control gives at most", (0.995, control_max_kpa), (0, 3), xycoords=("axes fraction", "data"), textcoords="offset points",
                      color=QUIET, fontsize=9.5, ha="right")  # fmt: skip
        labeled: set[str] = set()
        for place, (_, element, kpa, verdict) in enumerate(points):
            marker = {"GO": "o", "NOT PROVEN": "D", "NO-GO": "X"}[verdict]
            label = None if verdict in labeled else verdict
            labeled.add(verdict)
            axes.plot([place], [kpa], marker=marker, linestyle="", color=VERDICT[verdict], markersize=8, label=label)
            axes.annotate(element, (place, kpa), (7, 0), textcoords="offset points", color=QUIET, fontsize=9, va="center")
        axes.set_xticks(range(len(points)), [point[0] for point in points])
        axes.set_xlim(-0.5, len(points) - 0.2)
        axes.set_ylim(0, 1.15 * max(control_max_kpa, gauge_kpa, *(point[2] for point in points)))
        axes.set_xlabel("gear")
        axes.set_ylabel("line pressure, kPa")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg


def cooler_flow(title: str, table: Sequence[tuple[float, float]], point: tuple[float, float, float, float, str]) -> str:
    """Least flow of a cooler by temperature, and a reading: (temperature, its u, flow, its u, verdict)."""
    temp_c, u_c, flow_l_min, u_l_min, verdict = point
    with drawing(title, 7.6, 4.0) as (axes, picture):
        temperatures, flows = [row[0] for row in table], [row[1] for row in table]
        axes.plot(temperatures, flows, color=PURPLE, linewidth=2.2, marker=".", label="least flow")
        axes.fill_between(temperatures, flows, 0, color="#f3e6ef", zorder=0)
        axes.errorbar(
            [temp_c], [flow_l_min], xerr=2 * u_c, yerr=2 * u_l_min, fmt={"GO": "o", "NOT PROVEN": "D", "NO-GO": "X"}[verdict], color=VERDICT[verdict],
            markersize=8, capsize=2.5, label=f"caught: {verdict}",
        )  # fmt: skip
        axes.set_ylim(0, 1.2 * max(*flows, flow_l_min))
        axes.set_xlabel("fluid temperature, °C")
        axes.set_ylabel("flow, L/min")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg
