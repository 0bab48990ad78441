"""Parts about shafts and thrust bearings, and about two variants side by side."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from .. import hold
from ..answers.compare import STATED, compare_sheet, strongest
from ..answers.hard_parts import hard_parts_sheet
from .frame import Part, Records


def hard_part_parts(records: Records) -> Iterator[Part]:
    """Shafts, splines, thrust bearings and washers of the newest variant that the record rates."""
    family = records.family
    if not family:
        return
    written = family.as_dict()
    if written["variant"] and (written["shaft"] or written["thrust_race"]):
        variant = family.variants[-1]
        yield Part(hard_parts_sheet(family, variant, title=f"Hard parts of {variant} at their rating"))


def compare_parts(records: Records) -> Iterator[Part]:
    """The last variant against the first."""
    family = records.family
    if not family or len(family.variants) < 2:
        return
    before, after = family.variants[0], family.variants[-1]
    comparison = hold.compare(family, before, after)
    sheet = compare_sheet(comparison, title=f"{after} instead of {before}, part by part")
    marks = [mark for part in comparison.parts if part.part not in STATED for mark in strongest(part)]
    bars = [(f"{mark.part}: {mark.figure}", mark.better, mark.ratio) for mark in marks if 0 < mark.better < inf]
    if not bars:
        yield Part(sheet)
        return
    caption = "What each part gains most (to the right) and pays most (to the left); the number is after over before."
    yield Part(sheet, {caption: lambda plots: plots.bargain(f"What {after} buys over {before}, and what it costs", bars)})
