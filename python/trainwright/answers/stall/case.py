"""A truck at stall: engine, converter, gear and ratings, the conditions of the day, and the stall that follows."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from ... import converter, practice
from ...converter import Characteristic, EngineCurve, FluidCharge, StallInputs, StallPlan, StallRatings, StallSpeed
from ...edge import number, show
from ...error import refusal
from ...judge import Reading
from ...record import Family, Fleet
from ...road import standard_air
from ...train import Gear
from ..gears import ratio
from ..truck import truck_of

CAUTIONS = ("stall heat", "roll-away", "hot fluid")
"""What can hurt someone at a stall test; on every sheet about converters."""

BY_PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class StallCase:
    """A truck at stall in a gear: engine, converter, train and ratings."""

    truck: str
    variant: str
    engine_name: str
    converter_name: str
    aspiration: str | None
    engine: EngineCurve
    converter: Characteristic
    gear: Gear
    ratings: StallRatings
    charge_l: float
    allow_rpm: float


@dataclass(frozen=True)
class Conditions:
    """The day of the test: air, accessories, fluid, and how well engine and converter are known."""

    torque_factor: Reading = Reading.exact(1.0)
    torque_from: str = "as on the curve of the record: full throttle, its air"
    accessory_nm: Reading = Reading.exact(0.0)
    k_factor: Reading = Reading.exact(1.0)
    start_c: float | None = None
    most_c: float | None = None
    cards: tuple[str, ...] = ()

    @property
    def given(self) -> dict[str, Reading]:
        """What the stall speed depends on besides the two tables."""
        return {"torque_factor": self.torque_factor, "accessory_nm": self.accessory_nm, "k_factor": self.k_factor}

    @property
    def inputs(self) -> StallInputs:
        """The same, as the chapter takes them."""
        return StallInputs(**self.given)

    def charge(self, volume_l: float) -> FluidCharge:
        """The fluid in the converter; what is not known of it is common practice, and the sheet says so."""
        return FluidCharge(
            volume_l=volume_l,
            density_kg_m3=practice.FLUID_DENSITY_KG_M3,
            specific_heat_j_kg_k=practice.FLUID_SPECIFIC_HEAT_J_KG_K,
            start_c=practice.STALL_FLUID_START_C if self.start_c is None else self.start_c,
            most_c=practice.STALL_FLUID_MOST_C if self.most_c is None else self.most_c,
        )


def stall_case(family: Family, fleet: Fleet, truck_id: str, *, gear: str | None = None) -> StallCase:
    """A truck of the fleet at stall: in the lowest forward gear unless one is named."""
    truck, written = truck_of(fleet, truck_id), fleet.as_dict()
    rules = written.get("converter_rules")
    if not rules:
        raise refusal("converter_rules", "the fleet has no [converter_rules]: give charge_l, stall_limit_s and stall_allow_rpm there")
    engine = written["engine"][truck["engine"]]
    variant = truck["variant"]
    ratings = family.as_dict()["variant"][variant]
    gears = {found.id: found for found in family.train(variant).gears()}
    if gear is not None and gear not in gears:
        raise refusal("gear", f"the train has no gear {gear!r}; it has {', '.join(gears)}")
    chosen = gears[gear] if gear else max((found for found in gears.values() if found.ratio), key=ratio)
    rated = ratings["rated_turbine_nm"]
    if ratio(chosen) < 0 and ratings.get("reverse_turbine_nm"):
        rated = ratings["reverse_turbine_nm"]
    return StallCase(
        truck=truck_id,
        variant=variant,
        engine_name=truck["engine"],
        converter_name=engine["converter"],
        aspiration=engine.get("aspiration"),
        engine=fleet.engine_curve(truck["engine"]),
        converter=fleet.characteristic(engine["converter"]),
        gear=chosen,
        ratings=StallRatings(turbine_nm=rated, output_nm=ratings["rated_output_nm"], longest_s=rules["stall_limit_s"]),
        charge_l=rules["charge_l"],
        allow_rpm=rules["stall_allow_rpm"],
    )


def at_altitude(case: StallCase, altitude_m: float, air_c: float | None, torque_u_rel: float = 0.0) -> tuple[Reading, str]:
    """The torque factor of a naturally aspirated engine at an altitude, and in words where it comes from; refused for another."""
    if case.aspiration != "natural":
        known = "turbocharged" if case.aspiration else "not known to be naturally aspirated"
        raise refusal(
            "torque_factor",
            f"engine {case.engine_name} is {known}: how much torque it keeps at an altitude is for its maker to say; give that share as the torque factor",
            "MISSING",
        )
    sea, here = standard_air(altitude_m=0), standard_air(altitude_m=altitude_m)
    temp_c = here.temp_c if air_c is None else air_c
    curve = converter.InletAir(pressure_kpa_abs=sea.pressure_kpa_abs, temp_c=sea.temp_c)
    today = converter.InletAir(pressure_kpa_abs=here.pressure_kpa_abs, temp_c=temp_c)
    factor = converter.air_torque_factor(curve=curve, today=today)
    beyond = "" if today.in_test_range_j1349() else ", beyond the air in which the standard tests"
    return Reading(value=factor, u=factor * torque_u_rel), (
        f"SAE J1349 for {number(here.pressure_kpa_abs, 1)} kPa and {show(temp_c, 'c')} at {show(altitude_m, 'm')}, dry{beyond}; the curve taken as standard air at sea level"
    )


@dataclass(frozen=True)
class Planned:
    """A stall, planned."""

    case: StallCase
    conditions: Conditions
    stall: StallSpeed = field(init=False)
    plan: StallPlan = field(init=False)

    def __post_init__(self) -> None:
        stall = converter.stall_speed(self.case.engine, self.case.converter, inputs=self.conditions.inputs)
        plan = converter.plan_stall(stall.point, self.case.gear, ratings=self.case.ratings, charge=self.conditions.charge(self.case.charge_l))
        object.__setattr__(self, "stall", stall)
        object.__setattr__(self, "plan", plan)

    @property
    def elements(self) -> dict[str, float | None]:
        """Torque on each closed element; None where statics cannot tell."""
        return converter.element_torques(self.case.gear, turbine_nm=self.stall.point.turbine_nm)

    @property
    def data(self) -> dict[str, Any]:
        """For a program."""
        point = self.stall.point
        return {
            "truck": self.case.truck,
            "gear": self.case.gear.id,
            "allowed": self.plan.allowed,
            "stall_rpm": self.stall.speed_rpm.value,
            "stall_u_rpm": self.stall.speed_rpm.u,
            "turbine_nm": point.turbine_nm,
            "output_nm": self.plan.output_nm,
            "heat_kw": point.heat_kw,
            "elements_nm": self.elements,
            "plan": self.plan.as_dict(),
        }

    @property
    def passed(self) -> str:
        """The ratings that would be passed, in words; empty where none would."""
        point, ratings = self.stall.point, self.case.ratings
        parts = []
        if self.plan.turbine_passed:
            parts.append(f"{show(point.turbine_nm, 'nm')} at the turbine against {show(ratings.turbine_nm, 'nm')} rated")
        if self.plan.output_passed:
            parts.append(f"{show(self.plan.output_nm, 'nm')} at the output against {show(ratings.output_nm, 'nm')} rated")
        return ", ".join(parts)
