"""Parts about the trucks: tire and axle."""

from __future__ import annotations

from collections.abc import Iterator

from ..answers.tire import change_sheet
from .frame import Draw, Part, Records


def truck_parts(records: Records) -> Iterator[Part]:
    """Tire and axle of every truck whose programmed ones differ from the fitted."""
    if not records.fleet:
        return
    fleet = records.fleet
    written = fleet.as_dict()
    for truck in written["truck"]:
        if not (truck.get("tire_programmed") or truck.get("axle_programmed")):
            continue
        programmed, fitted = fleet.programmed(truck["id"]), fleet.fitted(truck["id"])
        tires = {name: fleet.tire(name).text() for name in (truck["tire"], truck.get("tire_programmed") or truck["tire"])}
        before = f"axle {programmed.axle_ratio:g}, tire {tires[truck['tire_programmed'] or truck['tire']]}"
        after = f"axle {fitted.axle_ratio:g}, tire {tires[truck['tire']]}"
        sheet = change_sheet(programmed, fitted, title=f"{truck['id']}: tire and axle", before=before, after=after, story=truck.get("story") or "")
        yield Part(sheet, {"A shift programmed for a road speed, and where it comes.": _shift_picture(sheet.data["shift_points"])})


def _shift_picture(points: list[dict[str, float]]) -> Draw:
    shifts = [(f"{point['before_km_h']:.0f} km/h", point["before_km_h"], point["after_km_h"]) for point in points]
    return lambda plots: plots.shift_points("Shift points", "programmed", "comes at", shifts)
