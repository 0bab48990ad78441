"""What was found on a unit, and the unit as identified from it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from ... import fit
from ...edge import Typed
from ...fit import MeasuredClearance
from ...identify import Identification, Part
from ...interchange import Joints, Order
from ...judge import Limits, Reading, Rule
from ...record import Family, Instruments
from .. import RULE
from ..sizes import FitSide, fit_sides, names_a_fit


@dataclass(frozen=True)
class Found:
    """What was found on a unit: marks that are there or not, sizes as typed, and sizes of fits that are no evidence."""

    seen: Mapping[str, bool] = field(default_factory=dict)
    measured: Mapping[str, Typed | Reading | float] = field(default_factory=dict)
    unused: Sequence[str] = ()
    """Sizes that were measured too, and that the record does not know."""


@dataclass(frozen=True)
class Measured:
    """A fit of which both sides were measured."""

    shaft: FitSide
    bore: FitSide
    clearance: MeasuredClearance


@dataclass(frozen=True)
class Bench:
    """The unit as identified, its measured fits, and the order that puts it right, where it is settled."""

    family: Family
    unit: Identification
    typed: Mapping[str, Typed]
    fits: Sequence[Measured]
    order: Order | None
    unused: Sequence[str] = ()

    @property
    def like(self) -> Typed | None:
        """The unit that lengths were typed in first."""
        return next(iter(self.typed.values()), None)

    @property
    def foreign(self) -> list[Part]:
        """Parts that are proven to be of another variant."""
        go = self.unit.conclusion.rule.go
        return [part for part in self.unit.conflicts if part.finding.foreign >= go]


def identified(
    family: Family, found: Found, *, instruments: Instruments | None = None, prior: Mapping[str, float] | None = None, rule: Rule = RULE
) -> Bench:  # fmt: skip
    """The unit with these findings. Sizes may be typed in any unit of length, or be millimeters as an instrument of the record shows them."""
    shares = dict(prior) if prior else None
    evidence = {look.id for look in family.looks(instruments=instruments, prior=shares)}
    typed = {name: size for name, size in found.measured.items() if isinstance(size, Typed)}
    sizes = {name: _reading(size) for name, size in found.measured.items()}
    of_fits_alone = {name: size for name, size in sizes.items() if name not in evidence and names_a_fit(family, name)}
    unit = family.identify(
        seen=dict(found.seen), measured_mm={name: size for name, size in sizes.items() if name not in of_fits_alone},
        instruments=instruments, prior=shares, rule=rule,
    )  # fmt: skip
    read = {made.look.id: made.found for made in unit.made if isinstance(made.found, Reading)}
    of_fits = of_fits_alone | {name: reading for name, reading in read.items() if names_a_fit(family, name)}
    sides = [side for name, size in of_fits.items() for side in fit_sides(family, instruments, name, size)]
    return Bench(family, unit, typed, _measured_fits(family, sides, rule), _order(family, unit, sides, rule), found.unused)


def _reading(size: Typed | Reading | float) -> Reading | float:
    """What was typed without an uncertainty is a number: the instrument of the record has one."""
    reading = size.reading if isinstance(size, Typed) else size
    return reading.value if isinstance(reading, Reading) and not reading.u else reading


def _measured_fits(family: Family, sides: Sequence[FitSide], rule: Rule) -> list[Measured]:
    fits = []
    for entry in family.as_dict()["fit"]:
        found = {side.side: side for side in sides if side.fit == entry["id"]}
        if len(found) == 2:
            wanted = Limits(upper=0.0) if entry["kind"] == "press" else Limits(lower=0.0, upper=entry["limit_mm"])
            clearance = fit.measured(shaft_mm=found["shaft"].reading, bore_mm=found["bore"].reading, wanted_mm=wanted, rule=rule)
            fits.append(Measured(found["shaft"], found["bore"], clearance))
    return fits


def _order(family: Family, unit: Identification, sides: Sequence[FitSide], rule: Rule) -> Order | None:
    """What to order for the unit as found; None while the unit is not settled, or where nothing is known of how its foreign parts fit."""
    joints = family.joints()
    foreign = {part.name: part.origin for part in unit.conflicts if part.finding.foreign >= rule.go and has_joints(joints, part.name, unit.best)}
    if unit.outcome != "mixed" or not foreign:
        return None
    known = {joint.name for joint in joints.joints}
    measured = [(side.fit, side.part, side.reading) for side in sides if side.fit in known and side.part in foreign]
    return joints.order(unit=unit.best, aim="fewest", wanted={}, found=foreign, measured=measured, rule=rule, spread="rectangular")


def has_joints(joints: Joints, part: str, unit: str) -> bool:
    """Whether the record knows how a part of another variant would fit."""
    other = next((variant for variant in joints.variants if variant != unit), unit)
    return part in joints.parts and part not in joints.fixed and joints.answer(part, variant=other, into=unit).joints > 0
