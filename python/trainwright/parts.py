"""The job from bench to road: one part for each question that the given records can answer."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import ModuleType
from typing import Any

import numpy as np

from .answers import RULE
from .answers.capacity import Working, capacity_sheet, review_gears, truck_load, working_point
from .answers.fill import fill_sheet
from .answers.gears import gear_sheet, main_gears, published_sheet, ratio, state_sheet
from .answers.tire import change_sheet
from .answers.which import Count, which_sheet
from .edge import show
from .fluid import Fill, Fluid, LevelCheck
from .judge import Reading
from .record import Family, Fleet, Fluids, Instruments, Jobs, load
from .sheet import Sheet
from .train import Train

LEAD = (
    "Every number below comes from the records of the shop and a formula with a source. Where a number is compared with a limit it "
    "is judged with its uncertainty: GO, NO-GO or NOT PROVEN. NOT PROVEN is an answer too: what would settle it then stands beside it."
)
"""What the reader of several answers must know first."""

Draw = Callable[[ModuleType], str]
"""Draws a picture with :mod:`trainwright.report.plots`, which is imported only where a report is written."""


@dataclass(frozen=True)
class Part:
    """An answer, and pictures by their caption."""

    sheet: Sheet
    pictures: dict[str, Draw] = field(default_factory=dict)


@dataclass
class Records:
    """The records of a shop, by kind."""

    family: Family | None = None
    fluids: Fluids | None = None
    instruments: Instruments | None = None
    fleet: Fleet | None = None
    jobs: Jobs | None = None
    trains: dict[str, Train] = field(default_factory=dict)

    @classmethod
    def read(cls, paths: Iterable[Path]) -> Records:
        """The records in these files; of each kind but trains the last one counts."""
        records = cls()
        places = {Family: "family", Fluids: "fluids", Instruments: "instruments", Fleet: "fleet", Jobs: "jobs"}
        for path in paths:
            found = load(path)
            if isinstance(found, Train):
                records.trains[found.title or path.stem] = found
            else:
                setattr(records, places[type(found)], found)
        return records

    @property
    def title(self) -> str:
        """Title of the family, or of the only train."""
        if self.family:
            return str(self.family.as_dict()["meta"]["title"] or "Family")
        return next(iter(self.trains)) if len(self.trains) == 1 else "Records"

    def parts(self) -> Iterator[Part]:
        """Every part, from the bench to the road."""
        jobs = {job["id"]: job for job in self.jobs.as_dict()["job"]} if self.jobs else {}
        if self.family:
            yield from _family_parts(self.family)
            for job in jobs.values():
                if job.get("count") and self.instruments:
                    yield _which_part(self.family, self.instruments, job)
            asked = [job for job in jobs.values() if job.get("gauge_kpa") and self.fleet and self.instruments]
            for job in asked:
                for truck in job.get("trucks") or []:
                    assert self.fleet and self.instruments
                    yield _capacity_part(self.family, self.fleet, self.instruments, job, truck)
            if not asked:
                yield from (_rated_part(self.family, variant) for variant in self.family.variants)
        if self.fluids:
            yield from _fluid_parts(self.fluids, self.instruments, jobs)
        if self.fleet:
            yield from _truck_parts(self.fleet)
        printed = {title: train for title, train in self.trains.items() if any(gear.published for gear in train.gears())}
        for title, train in self.trains.items():
            if not self.family or title not in printed:
                yield from _train_parts(title, train)
        if printed and (self.family or len(printed) > 1):
            yield Part(published_sheet(printed))


def _train_parts(title: str, train: Train) -> Iterator[Part]:
    ladder = {title: [(gear.id, ratio(gear)) for gear in main_gears(train)]}
    caption = "Gear ladder on a logarithmic scale, where equal steps look equal."
    yield Part(gear_sheet(train, title=f"Gears: {title}"), {caption: lambda plots: plots.gear_ladder("Gear ladder", ladder)})
    yield Part(state_sheet(train, title=f"States: {title}"))


def _family_parts(family: Family) -> Iterator[Part]:
    by_ratios = _by_ratios(family)
    ladders = {name: [(gear.id, ratio(gear)) for gear in main_gears(train)] for name, train in by_ratios.items()}
    caption = "Gear ladder on a logarithmic scale, where equal steps look equal." + (
        " Open diamonds: the other tooth counts." if len(ladders) > 1 else ""
    )
    for place, (name, train) in enumerate(by_ratios.items()):
        sheet = gear_sheet(train, title=f"Gears: {name}", elements=place == 0)
        yield Part(sheet, {caption: lambda plots: plots.gear_ladder("Gear ladder", ladders)} if place == 0 else {})
    first, train = next(iter(by_ratios.items()))
    yield Part(state_sheet(train, title=f"States: {first}"))


def _by_ratios(family: Family) -> dict[str, Train]:
    """The trains that differ, each under the variants that share it."""
    names: dict[Any, list[str]] = {}
    for variant in family.variants:
        names.setdefault(tuple(gear.ratio_exact for gear in family.train(variant).gears()), []).append(variant)
    return {" and ".join(variants): family.train(variants[0]) for variants in names.values()}


def _which_part(family: Family, instruments: Instruments, job: dict[str, Any]) -> Part:
    counter = next(entry for entry in instruments.as_dict()["instrument"].values() if "input_teeth" in entry)
    teeth = {"input_teeth": counter["input_teeth"], "output_teeth": counter["output_teeth"]}
    counts = [Count(entry["gear"], entry["input_pulses"], entry["output_pulses"]) for entry in job["count"]]
    candidates = _by_ratios(family)
    sheet = which_sheet(candidates, counts, **teeth, title=f"{job['id']}: {job['title']}", story=job["story"])
    readings = []
    for count in counts:
        counted = count.ratio(**teeth)
        near = {name: next(ratio(gear) for gear in train.gears() if gear.id == count.gear) for name, train in candidates.items()}
        readings.append((count.gear, counted.value, counted.u, near))
    caption = "How far each candidate lies from each counted ratio."
    return Part(sheet, {caption: lambda plots: plots.ratio_readings("Counted ratios", readings)})


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


def _fluid_parts(
    fluids: Fluids, instruments: Instruments | None, jobs: Mapping[str, dict[str, Any]]
) -> Iterator[Part]:
    fill = fluids.fill()
    asked = [job for job in jobs.values() if job.get("set_at_c") and job.get("fluid")]
    for job in asked:
        fluid = fluids.fluid(job["fluid"])
        for place, at_c in enumerate(job["set_at_c"]):
            temp_c = instruments.reading("thermometer", at_c) if instruments else Reading.exact(at_c)
            level = Reading.exact(0.0)
            title = f"{job['id']}: {job['title']}, set at {show(at_c, 'c')}"
            sheet = fill_sheet(fill, fluid, temp_c=temp_c, level_mm=level, name=job["fluid"], title=title, story=job["story"])
            yield Part(sheet, _level_picture(fill, fluid, job["set_at_c"]) if place == 0 else {})


def _level_picture(fill: Fill, fluid: Fluid, set_at_c: Iterable[float]) -> dict[str, Draw]:
    temp_c = np.linspace(-20.0, 140.0, 161)
    curves = {"right fill": (temp_c, fill.level_at(fluid, temp_c=temp_c)["level_mm"])}
    for at_c in set_at_c:
        exact = LevelCheck(temp_c=Reading.exact(at_c), level_mm=Reading.exact(0.0), area_scale=Reading.exact(1.0))
        excess_ml = fill.adjust_fill(fluid, exact, RULE).excess_ml.reading.value
        curves[f"set to the edge at {at_c:g} °C"] = (temp_c, fill.level_at(fluid, temp_c=temp_c, excess_ml=excess_ml)["level_mm"])
    window = (fill.check_low_c, fill.check_high_c)
    marks = {"rotating part dips": fill.gear_dips_mm, "pickup draws air": fill.pickup_uncovers_mm}
    caption = "Level against fluid temperature. All the growth of the fluid goes into the sump, whose area changes with height."
    return {caption: lambda plots: plots.level_against_temperature("Level against temperature", curves, window, marks)}


def _truck_parts(fleet: Fleet) -> Iterator[Part]:
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
