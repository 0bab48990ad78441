"""Parts about the gear train: gears, states, published ratios, which set is fitted."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ..answers.gears import gear_sheet, main_gears, published_sheet, ratio, state_sheet
from ..answers.which import Count, which_sheet
from ..record import Family, Instruments
from ..train import Train
from .frame import Part, Records


def train_parts(records: Records) -> Iterator[Part]:
    """Gears and states of the trains that stand alone; published ratios beside the computed ones."""
    printed = {title: train for title, train in records.trains.items() if any(gear.published for gear in train.gears())}
    for title, train in records.trains.items():
        if not records.family or title not in printed:
            yield from _train_parts(title, train)
    if printed and (records.family or len(printed) > 1):
        yield Part(published_sheet(printed))


def _train_parts(title: str, train: Train) -> Iterator[Part]:
    ladder = {title: [(gear.id, ratio(gear)) for gear in main_gears(train)]}
    caption = "Gear ladder on a logarithmic scale, where equal steps look equal."
    yield Part(gear_sheet(train, title=f"Gears: {title}"), {caption: lambda plots: plots.gear_ladder("Gear ladder", ladder)})
    yield Part(state_sheet(train, title=f"States: {title}"))


def family_parts(records: Records) -> Iterator[Part]:
    """Gears of the trains of the family that differ, and the states of the first."""
    if not records.family:
        return
    by_ratios = _by_ratios(records.family)
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


def which_parts(records: Records) -> Iterator[Part]:
    """Which gear set is fitted, for every job with counted pulses."""
    for job in records.asked("count"):
        if records.family and records.instruments:
            yield _which_part(records.family, records.instruments, job)


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
