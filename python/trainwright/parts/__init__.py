"""The job from bench to road: one part for each question that the given records can answer, one module per chapter."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from . import clutch, converter, duty, fits, fluid, grade, hard_parts, hydraulic, identify, interchange, locks, proof, road, stack, tow, train
from .frame import LEAD, Draw, Part, Records

__all__ = ["LEAD", "ORDER", "Draw", "Part", "Records", "parts_of"]

ORDER: tuple[Callable[[Records], Iterator[Part]], ...] = (
    identify.identify_parts,
    interchange.set_parts,
    interchange.matrix_parts,
    fits.fit_parts,
    stack.choice_parts,
    train.family_parts,
    train.which_parts,
    clutch.capacity_parts,
    hydraulic.line_parts,
    locks.one_way_parts,
    locks.park_parts,
    hard_parts.hard_part_parts,
    hard_parts.compare_parts,
    fluid.fill_parts,
    converter.stall_parts,
    converter.converter_parts,
    hydraulic.pump_parts,
    hydraulic.pattern_parts,
    hydraulic.cooler_parts,
    road.truck_parts,
    tow.tow_parts,
    grade.grade_parts,
    duty.ranking_parts,
    proof.proof_parts,
    train.train_parts,
)
"""What can be answered, in the order of the job."""


def parts_of(records: Records) -> Iterator[Part]:
    """Every part that these records can answer, from the bench to the road."""
    for parts in ORDER:
        yield from parts(records)
