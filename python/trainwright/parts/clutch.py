"""Parts about clutches and brakes: capacity against demand."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ..answers import RULE
from ..answers.capacity import Working, capacity_sheet, review_gears, truck_load, working_point
from ..answers.gears import main_gears
from ..judge import Reading
from ..record import Family, Fleet, Instruments
from .frame import Draw, Part, Records


def capacity_parts(records: Records) -> Iterator[Part]:
    """Capacity for every job with a gauge pressure and its trucks; without one, every variant as its record rates it."""
    family, fleet, instruments = records.family, records.fleet, records.instruments
    if not family:
        return
    asked = records.asked("gauge_kpa") if fleet and instruments else []
    for job in asked:
        for truck in job.get("trucks") or []:
            assert fleet and instruments
            yield _capacity_part(family, fleet, instruments, job, truck)
    if not asked:
        yield from (_rated_part(family, variant) for variant in family.variants)


def _capacity_part(
    family: Family, fleet: Fleet, instruments: Instruments, job: dict[str, Any], truck: str
) -> Part:
    load = truck_load(family, fleet, truck)
    variant = load.variant
    gauge = instruments.reading("pressure_gauge", job["gauge_kpa"])
    working = working_point(family, variant, gauge, load.turbine_nm, turbine_from=load.source)
    sheet = capacity_sheet(
        family.train(variant), family.packs(variant), working, title=f"{job['id']}: {job['title']}, truck {truck} ({variant})", story=job["story"]
    )
    return Part(sheet, _capacity_picture(family, variant, working))


def _rated_part(family: Family, variant: str) -> Part:
    written = family.as_dict()["variant"][variant]
    pressure_kpa, turbine_nm = (Reading.exact(written[key]) for key in ("line_control_max_kpa", "rated_turbine_nm"))
    working = working_point(family, variant, pressure_kpa, turbine_nm, turbine_from=f"rated_turbine_nm in the record of {variant}")
    title = f"Capacity of {variant} at the control's greatest pressure and the record's turbine torque"
    sheet = capacity_sheet(family.train(variant), family.packs(variant), working, title=title)
    return Part(sheet, _capacity_picture(family, variant, working))


def _capacity_picture(family: Family, variant: str, working: Working) -> dict[str, Draw]:
    packs = family.packs(variant)
    train = family.train(variant)
    main = {gear.id for gear in main_gears(train)}
    bars: list[tuple[str, str, float, float, float, str]] = []
    for gear, review in review_gears(train, packs, working).items():
        for element, margin in review.elements.items():
            repeated = gear not in main and any(bar[1:3] == (element, margin.need_nm) for bar in bars)
            if repeated or not margin.share_known:
                continue
            spread = packs[element].pack.hold(
                Reading.exact(margin.need_nm), pressure_kpa=working.pressure_kpa, friction=working.friction,
                geometry_u_rel=working.geometry_u_rel, drum_speed_rpm=margin.drum_speed_rpm,
                oil_density_kg_m3=working.oil_density_kg_m3, rule=RULE,
            ).judgment.reading.u  # fmt: skip
            bars.append((gear, element, margin.need_nm, margin.capacity_nm, spread, margin.verdict))
    caption = "What each element must hold (bar) and can hold (point, ± 2 standard uncertainties). Engine braking shows only what it adds."
    return {caption: lambda plots: plots.capacity_against_demand("Capacity against demand", [plots.Bar(*bar) for bar in bars])}
