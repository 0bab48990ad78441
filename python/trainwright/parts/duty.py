"""Parts about what a duty does to a unit."""

from __future__ import annotations

from collections.abc import Iterator

from ..answers.ranking import fleet_sheet, ranked
from .frame import Part, Records


def ranking_parts(records: Records) -> Iterator[Part]:
    """The trucks of a fleet by damage, for every job that asks for slopes."""
    family, fleet = records.family, records.fleet
    if not (family and fleet and family.as_dict().get("fatigue")):
        return
    for job in records.asked("slopes"):
        slopes = job["slopes"]
        trucks = ranked(family, fleet, slopes)
        bars = [
            (one.name, [min(low for low, _ in one.by_slope.values()), max(high for _, high in one.by_slope.values())],
             [min(case.damage for case in one.cases), max(case.damage for case in one.cases)], one.over_rating > 1)
            for one in trucks
            if one.cases
        ]  # fmt: skip
        sets = {one.name: {name: found.total for name, found in one.worst.sets.items()} for one in trucks if one.worst}
        span = f"slopes {min(slopes):g} to {max(slopes):g}"
        yield Part(
            fleet_sheet(family, fleet, slopes=slopes, title=f"{job['id']}: {job['title']}", story=job["story"]),
            {
                f"Damage of the worst set of every truck: what is not known of it (thick), and {span} on top (thin; the slope is the same for all and moves them together). Diamond: over its rating.": (
                    lambda plots: plots.damage_by_truck("Trucks by damage", bars)
                ),
                "Damage by planetary set; a set without a mark collects nothing in these hours.": lambda plots: plots.damage_by_set("Damage by set", sets),
            },
        )
