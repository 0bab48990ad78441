"""A vehicle on its park lock, and what whoever judges chooses."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import product
from typing import Any

from ...error import refusal
from ...hold import Parked, ParkHold, ParkLock, ToothStrength, park_lock
from ...judge import Reading, Rule
from ...record import Family, Fleet
from ...road import Driveline
from .. import RULE
from ..truck import tires_of, truck_of

INPUTS = ("tooth (form, hardness, model)", "mass", "rolling circumference of the tires")
"""What the uncertainty of the stress comes from, in the order of the budget."""

GEAR, PAWL = "park_gear", "park_pawl"
"""Names of the two parts in ``parts_from`` of a truck and in the matches of a family."""


@dataclass(frozen=True)
class Case:
    """A vehicle on the park lock: what it weighs, what it rolls on, and whose park gear and pawl are fitted."""

    name: str
    mass_kg: Reading
    driveline: Driveline
    gear_of: str
    pawl_of: str
    rolls_on: str

    def parked(self, grade_pct: float, rocking_factor: float) -> Parked:
        """The same on a grade."""
        return Parked(mass_kg=self.mass_kg, grade_pct=grade_pct, rocking_factor=rocking_factor, driveline=self.driveline)


@dataclass(frozen=True)
class Chosen:
    """What whoever judges chooses: the rocking factor, the stress factor instead of the record's, the rule."""

    rocking_factor: float = 1.0
    stress_factor: float | None = None
    rule: Rule = RULE

    def strength(self, lock: ParkLock) -> ToothStrength:
        """What a tooth bears."""
        given = lock.strength
        if self.stress_factor is None:
            return given
        return ToothStrength(yield_mpa=given.yield_mpa, stress_factor=self.stress_factor, stress_u_rel=given.stress_u_rel)

    def hold(self, lock: ParkLock, case: Case, grade_pct: float) -> ParkHold:
        """Whether a park gear holds a vehicle on a grade."""
        return lock.gear.park_hold(case.parked(grade_pct, self.rocking_factor), self.strength(lock), self.rule)


def fitted(family: Family, truck: Mapping[str, Any]) -> tuple[str, str]:
    """The variants that the park gear and the pawl of a truck come from; a gear with a foreign pawl is refused."""
    parts = truck.get("parts_from") or {}
    own = str(truck["variant"])
    gear_of, pawl_of = (str(parts.get(part, own)) for part in (GEAR, PAWL))
    for match in family.as_dict()["match"]:
        if set(match["parts"]) == {GEAR, PAWL} and match["value"][gear_of] != match["value"][pawl_of]:
            raise refusal(
                "parts_from",
                f"{truck['id']} has the park gear of {gear_of} ({match['value'][gear_of]}) and the pawl of {pawl_of} "
                f"({match['value'][pawl_of]}): they do not go together, fit a matching pair",
                "INCONSISTENT",
            )
    return gear_of, pawl_of


def cases(family: Family, fleet: Fleet, truck_id: str, *, mass_kg: Reading | None = None, tire: str | None = None) -> list[Case]:
    """A truck on its park lock: one case, or one for each tire and each end of the mass where the fleet has gaps."""
    truck = truck_of(fleet, truck_id)
    gear_of, pawl_of = fitted(family, truck)
    trailers = truck.get("trailer_range_kg") or [truck.get("trailer_kg") or 0.0]
    masses = [mass_kg] if mass_kg else [Reading.exact(truck["truck_kg"] + trailer) for trailer in trailers]
    tires = [tire] if tire else tires_of(fleet, truck_id)
    return [
        Case(
            truck_id, mass, Driveline(axle_ratio=truck["axle"], circumference_mm=fleet.rolling(name).circumference_mm), gear_of, pawl_of,
            f"axle {truck['axle']:g}, tire {fleet.tire(name).text()}",
        )
        for name, mass in product(tires, masses)
    ]  # fmt: skip


def other_gear(family: Family, gear_of: str) -> str | None:
    """The first variant whose park gear is another one: where there are several, the last built goes first."""
    own = park_lock(family, gear_of).gear
    others = (variant for variant in reversed(family.variants) if park_lock(family, variant).gear != own)
    return next(others, None)
