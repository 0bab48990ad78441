"""Pictures of a truck on grades."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .frame import BLUE, GREEN, LINE, ORANGE, PURPLE, QUIET, drawing, legend_above


def torque_by_grade(
    title: str, gears: Mapping[str, Sequence[tuple[float, float]]], chosen: Sequence[tuple[float, float]], rated_nm: float, speed_in_words: str
) -> str:
    """Input torque against grade of every gear that can turn at the speed asked for, the gear chosen, and the rating as a line."""
    most = 1.6 * rated_nm
    with drawing(title, 7.6, 4.4) as (axes, picture):
        axes.axhspan(rated_nm, most, color="#f3e6ef", zorder=0)
        axes.axhline(rated_nm, color=PURPLE, linewidth=1.2)
        axes.annotate("rated", (0.005, rated_nm), (0, 3), xycoords=("axes fraction", "data"), textcoords="offset points", color=PURPLE, fontsize=9.5)
        for number, (name, points) in enumerate(gears.items()):
            inside = [(grade, torque) for grade, torque in points if torque <= most]
            if not inside:
                continue
            axes.plot(*zip(*inside), color=LINE if number % 2 else "#b9c2cb", linewidth=1.6)
            axes.annotate(name, inside[-1], (3, 0), textcoords="offset points", color=QUIET, fontsize=9.5, va="center")
        if chosen:
            axes.plot(*zip(*chosen), color=BLUE, linewidth=0, marker="o", markersize=4.5, label=f"gear chosen, {speed_in_words}")
        axes.set_xlim(left=min((point[0] for points in gears.values() for point in points), default=0.0))
        axes.set_ylim(0, most)
        axes.set_xlabel("grade, %")
        axes.set_ylabel("torque at the input, N·m")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg


def temperature_along(
    title: str, distance_km: Sequence[float], temp_c: Sequence[float], elevation_m: Sequence[float], limit_c: float, speed_km_h: Sequence[float]
) -> str:
    """Sump temperature along a road over its elevation, with the limit; the speed where it falls is marked below."""
    with drawing(title, 7.6, 4.4) as (axes, picture):
        low, high = min(elevation_m), max(elevation_m)
        floor, top = 40.0, max(150.0, 1.08 * max(temp_c), 1.08 * limit_c)
        scaled = [floor + 0.35 * (top - floor) * (height - low) / max(high - low, 1.0) for height in elevation_m]
        axes.fill_between(distance_km, floor, scaled, color="#e8ecef", linewidth=0, label=f"road, {low:.0f} to {high:.0f} m", zorder=0)
        axes.axhline(limit_c, color=PURPLE, linewidth=1.2)
        axes.annotate("limit", (0.005, limit_c), (0, 3), xycoords=("axes fraction", "data"), textcoords="offset points", color=PURPLE, fontsize=9.5)
        axes.plot(distance_km, temp_c, color=ORANGE, linewidth=2.2, label="sump")
        twin = axes.twinx()
        twin.plot(distance_km, speed_km_h, color=GREEN, linewidth=1.0, linestyle=(0, (4, 2)), label="speed")
        twin.set_ylim(0, 2.2 * max(speed_km_h))
        twin.set_ylabel("speed, km/h", color=GREEN)
        twin.tick_params(axis="y", labelcolor=GREEN, length=0)
        twin.spines["top"].set_visible(False)
        axes.set_xlim(0, max(distance_km))
        axes.set_ylim(floor, top)
        axes.set_xlabel("distance, km")
        axes.set_ylabel("temperature of the sump, °C")
        axes.grid(axis="y")
        legend_above(axes)
    return picture.svg
