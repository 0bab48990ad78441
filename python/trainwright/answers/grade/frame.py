"""What the answers about a truck on grades share: the truck and its sump from the records, and how it takes a grade."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ...converter import Characteristic
from ...edge import number
from ...error import Error, refusal
from ...judge import Reading
from ...record import Family, Fleet
from ...tow import GearPull, HeatModel, LargestSpeed, Pull, Rig, UnitLoss, rig, unit_loss
from ...tow import Running as AtWork
from ..truck import tires_of, truck_of

CAUTIONS = ("towing", "hot fluid", "roll-away")
STEP_KM_H = 1.0
"""Step by which a speed is lowered where no gear holds."""
FASTEST_KM_H = 160.0
"""No faster than this is asked, where the largest speed is sought."""

DEFERS = "No rating is computed here: the vehicle maker's ratings and placards, the hitch's rating and local law stand."


@dataclass(frozen=True)
class Hot:
    """The sump, its start, and in words where its figures come from."""

    model: HeatModel
    start_c: float
    source: str


@dataclass(frozen=True)
class Truck:
    """A truck of the records on the road."""

    name: str
    variant: str
    rig: Rig
    family: Family
    characteristic: Characteristic | None = None
    pressure_kpa: Reading | None = None
    oil_density_kg_m3: float | None = None
    rolls_on: str = ""

    @property
    def ratings(self) -> str:
        """The ratings in words."""
        gearing = self.rig.gearing
        return f"{number(gearing.rated_input_nm, 0)} in, {number(gearing.rated_output_nm, 0)} N·m out"


def trucks_on_road(family: Family, fleet: Fleet, truck: str, *, tire: str | None = None, trailer_kg: float | None = None) -> list[Truck]:
    """A truck: one, or one for each tire and each end of the trailer's mass where the fleet has gaps."""
    record = truck_of(fleet, truck)
    gap = record.get("trailer_range_kg") if record.get("trailer_kg") is None else None
    masses: Sequence[float | None] = [trailer_kg] if trailer_kg is not None else (gap or [None])
    engine = fleet.as_dict()["engine"][record["engine"]]
    characteristic = fleet.characteristic(engine["converter"]) if engine.get("converter") else None
    pressure = (family.as_dict()["variant"].get(record["variant"]) or {}).get("line_control_max_kpa")
    found = []
    for name in [tire] if tire else tires_of(fleet, truck):
        for mass in masses:
            at = rig(family, fleet, truck, speed_step_km_h=STEP_KM_H, tire=name, trailer_kg=mass)
            rolls_on = f"axle {record['axle']:g}, tire {fleet.tire(name).text()}"
            found.append(Truck(truck, record["variant"], at, family, characteristic, Reading.exact(pressure) if pressure else None, None, rolls_on))
    return found


def asked_of(fleet: Fleet) -> list[tuple[float, float]]:
    """The grades of the fleet's road table, each with the speed that is asked for on it."""
    road = fleet.as_dict().get("road")
    if not road:
        raise refusal("road", "the fleet has no [road] table: it gives grades, speeds, air and the choice of gear", "MISSING")
    return list(zip(road["grade_pct"], road["speed_km_h"], strict=True))


def slowed(truck: Truck, grade_pct: float, speed_km_h: float) -> Pull | None:
    """A truck at the speed asked for, or as much slower as a gear needs to hold it; None where none ever does."""
    try:
        return truck.rig.pull_slowed(grade_pct=grade_pct, speed_km_h=speed_km_h)
    except Error as error:
        if error.kind != "NO_ANSWER":
            raise
        return None


def largest(truck: Truck, grade_pct: float, *, within_ratings: bool) -> LargestSpeed | None:
    """The largest speed of a truck on a grade; None where no locked gear holds it."""
    try:
        return truck.rig.largest_speed(grade_pct=grade_pct, at_most_km_h=FASTEST_KM_H, within_ratings=within_ratings)
    except Error as error:
        if error.kind != "NO_ANSWER":
            raise
        return None


def share(value: float) -> str:
    """A share in percent, whole."""
    return f"{number(100 * value, 0)} %"


def loss_of(truck: Truck, pull: Pull, hot: Hot | None) -> UnitLoss | None:
    """What the unit loses in the gear of a pull; None where no gear holds or nothing is known of the sump."""
    gear = pull.gear
    if hot is None or gear is None or pull.chosen is None:
        return None
    place = truck.rig.gearing.names.index(pull.chosen)
    return unit_loss(at_work_of(truck, gear, place, hot.model))


def at_work_of(truck: Truck, gear: GearPull, place: int, model: HeatModel) -> AtWork:
    """A gear of a pull at work, for its losses."""
    return AtWork(
        input_nm=gear.input_nm, input_rpm=gear.engine_rpm, efficiency=truck.rig.gearing.gears[place].efficiency, drag_nm=model.drag_nm,
        pump_kpa=model.pump_kpa, pump_l_min=model.pump_l_min, pump_efficiency=model.pump_efficiency, converter_kw=0.0,
    )  # fmt: skip


def minutes_left(loss: UnitLoss | None, hot: Hot | None) -> str:
    """Minutes until the sump reaches its limit, for a table."""
    if loss is None or hot is None:
        return "-"
    left = hot.model.node.time_to(start_c=hot.start_c, loss_kw=loss.total_kw, limit_c=hot.model.limit_c)
    return number(left.time_s / 60, 0) if left.reached else "no end"
