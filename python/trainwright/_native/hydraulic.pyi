"""
Pump, orifices, valves, line pressure needed and available, cooler flow. Hot fluid burns.
"""

from . import Explanation
from .clutch import GearReview, PressureNeeded
from .fit import Gap, GapLeak, LeakRatio
from .fluid import Fluid
from .judge import Budget, Judgment, Limits, Reading, Rule
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["SHARP_EDGE_DISCHARGE", "SHARP_EDGE_JET_DEG", "TURBULENT_REYNOLDS", "ChamberDisplacement", "CoolerCheck", "CoolerLimits", "CoolerReading", "FlowMargin", "GearPressure", "InternalGearPump", "Land", "LeastFlow", "Metering", "NextReading", "OilAt", "Orifice", "OrificeFlow", "PatternRule", "PressurePoint", "PressureReading", "PressureSuspect", "PressureSuspects", "Pump", "PumpClearance", "PumpDuty", "PumpFlow", "Regulated", "Regulator", "SlidingGap", "Slot", "SlotFlow", "TimedFlow", "external_gear_by_centers_cm3_rev", "external_gear_cm3_rev", "field_rule_cm3_rev", "flow_at_reference", "gear_pressure", "in_parallel_mm2", "in_series_mm2", "next_reading", "oil_at", "orifice_diameter_mm", "passage_flow_l_min", "pump_clearance", "sliding_gap", "suspect_circuits", "timed_flow", "vane_cm3_rev", "volumetric_efficiency"]

SHARP_EDGE_DISCHARGE: Final[float]
SHARP_EDGE_JET_DEG: Final[float]
TURBULENT_REYNOLDS: Final[float]

@final
class ChamberDisplacement:
    """
    Displacement of an internal gear pump.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, inner_cm3_rev: float, outer_cm3_rev: float) -> ChamberDisplacement: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def inner_cm3_rev(self, /) -> float:
        """
        Per turn of the inner gear, cm³: it is the driven one as a rule.
        """
    @property
    def outer_cm3_rev(self, /) -> float:
        """
        Per turn of the outer gear, cm³.
        """

@final
class CoolerCheck:
    """
    Whether the cooler passes enough, and what that rests on.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, flow_l_min: Reading, least: LeastFlow, judgment: Judgment, budget: Budget) -> CoolerCheck: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Its uncertainty: volume, time, temperature, in this order.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def flow_l_min(self, /) -> Reading:
        """
        The flow, L/min.
        """
    @property
    def judgment(self, /) -> Judgment:
        """
        Flow less what is asked, L/min, against 0.
        """
    @property
    def least(self, /) -> LeastFlow:
        """
        What is asked at this temperature.
        """

@final
class CoolerLimits:
    """
    Least return flow of a cooler by fluid temperature, linear between rows.

    >>> limits = CoolerLimits(temperature_c=[30, 50, 70, 90], least_flow_l_min=[2.4, 3.8, 5.2, 6.0])
    >>> round(limits.least_flow_at(temp_c=60).least_l_min, 2)
    4.5
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict]: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, *, temperature_c: Sequence[float], least_flow_l_min: Sequence[float]) -> CoolerLimits: ...
    def __repr__(self, /) -> str: ...
    def as_dict(self, /) -> dict:
        """
        The table by name.
        """
    def cooler_check(self, /, reading: CoolerReading, rule: Rule) -> CoolerCheck:
        """
        Whether the cooler passes enough at the temperature that the fluid has. Source: JCGM 100:2008, equation 10.
        """
    def least_flow_at(self, /, *, temp_c: ArrayLike) -> Any:
        """
        Least flow at a temperature: a `LeastFlow`, or a dictionary of arrays.
        Source: follows from the definitions (linear between rows).
        """
    @property
    def least_flow_l_min(self, /) -> list[float]:
        """
        Least flow at each, L/min.
        """
    @property
    def temperature_c(self, /) -> list[float]:
        """
        Temperatures, °C.
        """

@final
class CoolerReading:
    """
    What was read at the return line.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, volume_l: Reading, time_s: Reading, temp_c: Reading) -> CoolerReading: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def temp_c(self, /) -> Reading:
        """
        Temperature of the fluid, °C.
        """
    @property
    def time_s(self, /) -> Reading:
        """
        Time it took, s.
        """
    @property
    def volume_l(self, /) -> Reading:
        """
        Volume caught, L.
        """

@final
class FlowMargin:
    """
    Whether a pump covers the demand, and what that rests on.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, flow: PumpFlow, least_speed_rpm: float, judgment: Judgment, budget: Budget) -> FlowMargin: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Its uncertainty: displacement, speed, leak, viscosity, pressure, demand, in this order.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def flow(self, /) -> PumpFlow:
        """
        What it delivers.
        """
    @property
    def judgment(self, /) -> Judgment:
        """
        The flow to spare against 0, L/min.
        """
    @property
    def least_speed_rpm(self, /) -> float:
        """
        Speed below which it can no longer hold the pressure, 1/min.
        """

@final
class GearPressure:
    """
    Line pressure of a gear.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, element: int, needed: PressureNeeded, reading_kpa: Reading, spare_kpa: float, reserve: float, control_spare_kpa: float, unknown: int, chance: float, verdict: str) -> GearPressure: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def chance(self, /) -> float:
        """
        Chance that the gear holds at the reading: the least of its elements'.
        """
    @property
    def control_spare_kpa(self, /) -> float:
        """
        The most that the control can give, less the need, kPa; infinite where it is not known.
        """
    @property
    def element(self, /) -> int:
        """
        Place in the train of the element that needs most pressure.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def needed(self, /) -> PressureNeeded:
        """
        Pressure that it needs.
        """
    @property
    def reading_kpa(self, /) -> Reading:
        """
        What the gauge reads, kPa.
        """
    @property
    def reserve(self, /) -> float:
        """
        Reading over need.
        """
    @property
    def spare_kpa(self, /) -> float:
        """
        Reading less need, kPa; negative where it is short.
        """
    @property
    def unknown(self, /) -> int:
        """
        Elements of the gear whose share the train does not determine.
        """
    @property
    def verdict(self, /) -> str:
        """
        The worst verdict of its elements; no GO while the share of one is not known.
        """

@final
class InternalGearPump:
    """
    An internal gear pump: a gerotor, or pinion and ring with a crescent.

    >>> gerotor = InternalGearPump(inner_teeth=9, outer_teeth=10, chamber_max_mm2=118, chamber_min_mm2=14, face_mm=12)
    >>> round(gerotor.chamber_displacement().inner_cm3_rev, 3)
    11.232
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, inner_teeth: int, outer_teeth: int, chamber_max_mm2: float, chamber_min_mm2: float, face_mm: float) -> InternalGearPump: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def chamber_displacement(self, /) -> ChamberDisplacement:
        """
        Displacement from the areas of the largest and smallest chamber.
        Source: follows from the definitions (chambers swept in a turn).
        """
    @property
    def chamber_max_mm2(self, /) -> float:
        """
        Area of the largest chamber, mm².
        """
    @property
    def chamber_min_mm2(self, /) -> float:
        """
        Area of the smallest chamber, at full mesh, mm².
        """
    @property
    def face_mm(self, /) -> float:
        """
        Width of the gears, mm.
        """
    @property
    def inner_teeth(self, /) -> int:
        """
        Teeth of the inner gear.
        """
    @property
    def outer_teeth(self, /) -> int:
        """
        Teeth of the outer gear; one more in a gerotor.
        """

@final
class Land:
    """
    A face of a valve on which pressure acts.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, outer_diameter_mm: float, inner_diameter_mm: float = ...) -> Land: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def inner_diameter_mm(self, /) -> float:
        """
        Diameter of the step or stem that takes area away, mm.
        """
    @property
    def outer_diameter_mm(self, /) -> float:
        """
        Outer diameter, mm; 0 for no land.
        """

@final
class LeastFlow:
    """
    Least flow at a temperature.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, least_l_min: float, least_l_min_per_k: float) -> LeastFlow: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def least_l_min(self, /) -> float:
        """
        Least flow, L/min.
        """
    @property
    def least_l_min_per_k(self, /) -> float:
        """
        How it changes with the temperature, L/min per kelvin; at a row the steeper side.
        """

@final
class Metering:
    """
    A metering edge.

    >>> edge = Metering(discharge=0.61, width_mm=37.7, opening_mm=0.5)
    >>> round(edge.flow_force_n(pressure_drop_kpa=1000), 2)
    8.24
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, discharge: float, width_mm: float, opening_mm: float, jet_deg: float = ...) -> Metering: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def discharge(self, /) -> float:
        """
        Discharge coefficient of the edge, 0 to 1.
        """
    def flow_force_n(self, /, *, pressure_drop_kpa: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Force, N, with which the flow through the edge closes its valve. Source: Merritt, Hydraulic Control Systems, from memory.
        """
    @property
    def jet_deg(self, /) -> float:
        """
        Angle of the jet to the axis, degrees; `SHARP_EDGE_JET_DEG` unless given.
        """
    @property
    def opening_mm(self, /) -> float:
        """
        Opening, mm; 0 for no flow force.
        """
    @property
    def width_mm(self, /) -> float:
        """
        Length of the edge, mm: the circumference of the land where the port goes all round.
        """

@final
class NextReading:
    """
    What a reading worth taking would tell.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, candidate: int, bits: float) -> NextReading: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bits(self, /) -> float:
        """
        What it is expected to tell, bits; 0 where no candidate tells anything.
        """
    @property
    def candidate(self, /) -> int:
        """
        Its place among the candidates.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """

@final
class OilAt:
    """
    Oil at its temperature.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, temp_c: Reading, density_kg_m3: float, viscosity_mm2_s: float, viscosity_mpa_s: Reading) -> OilAt: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def density_kg_m3(self, /) -> float:
        """
        Density, kg/m³.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def temp_c(self, /) -> Reading:
        """
        Its temperature, °C.
        """
    @property
    def viscosity_mm2_s(self, /) -> float:
        """
        Kinematic viscosity, mm²/s.
        """
    @property
    def viscosity_mpa_s(self, /) -> Reading:
        """
        Dynamic viscosity, mPa·s, with what the temperature leaves uncertain.
        """

@final
class Orifice:
    """
    A round orifice.

    >>> hole = Orifice(diameter_mm=1.0, discharge=SHARP_EDGE_DISCHARGE)
    >>> flow = hole.orifice_flow(pressure_drop_kpa=400, density_kg_m3=800, viscosity_mpa_s=8)
    >>> round(flow.flow_l_min, 3), flow.turbulent
    (0.911, True)
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, diameter_mm: float, discharge: float) -> Orifice: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def diameter_mm(self, /) -> float:
        """
        Diameter, mm.
        """
    @property
    def discharge(self, /) -> float:
        """
        Discharge coefficient, above 0 to 1; `SHARP_EDGE_DISCHARGE` for a sharp edge and turbulent flow.
        """
    def orifice_drop_kpa(self, /, *, flow_l_min: ArrayLike, density_kg_m3: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Pressure, kPa, that the orifice takes at a flow.
        Source: follows from the definitions (`orifice_flow` solved for the pressure).
        """
    def orifice_flow(self, /, *, pressure_drop_kpa: float, density_kg_m3: float, viscosity_mpa_s: float) -> OrificeFlow:
        """
        Flow through the orifice. Source: Fluid Power Engineering, orifice equation.
        """

@final
class OrificeFlow:
    """
    Flow through an orifice.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, area_mm2: float, jet_m_s: float, flow_l_min: float, reynolds: float, turbulent: bool) -> OrificeFlow: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def area_mm2(self, /) -> float:
        """
        Area of the hole, mm².
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def flow_l_min(self, /) -> float:
        """
        Flow, L/min.
        """
    @property
    def jet_m_s(self, /) -> float:
        """
        Speed of the jet without losses, m/s.
        """
    @property
    def reynolds(self, /) -> float:
        """
        Reynolds number of diameter and jet speed.
        """
    @property
    def turbulent(self, /) -> bool:
        """
        The flow is turbulent. If not, the discharge is smaller than a sharp edge's and the flow less than this.
        """

@final
class PatternRule:
    """
    How readings are weighed.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, kept: float, hot_from_c: float) -> PatternRule: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def hot_from_c(self, /) -> float:
        """
        Temperature from which the oil counts as hot, °C.
        """
    @property
    def kept(self, /) -> float:
        """
        How often a suspect shows what it predicts, above 1/3 and below 1. No default: whoever weighs chooses it.
        """

@final
class PressurePoint:
    """
    The state of the unit at a reading.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, closed: int, at_stall: bool, temp_c: float) -> PressurePoint: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def at_stall(self, /) -> bool:
        """
        At stall or full throttle; else at idle.
        """
    @property
    def closed(self, /) -> int:
        """
        Elements applied: bit i is element i of `Train.elements`.
        """
    @property
    def temp_c(self, /) -> float:
        """
        Fluid temperature, °C.
        """

@final
class PressureReading:
    """
    A pressure reading and what it should be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, at: PressurePoint, reading_kpa: Reading, limits_kpa: Limits) -> PressureReading: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def at(self, /) -> PressurePoint:
        """
        The state of the unit.
        """
    @property
    def limits_kpa(self, /) -> Limits:
        """
        What it should read in that state, kPa.
        """
    @property
    def reading_kpa(self, /) -> Reading:
        """
        What the gauge reads, kPa, with its uncertainty.
        """

@final
class PressureSuspect:
    """
    A suspect and its weight.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, kind: str, element: int, share: float, fits: int, against: int, group: int) -> PressureSuspect: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def against(self, /) -> int:
        """
        Readings that show something else.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def element(self, /) -> int:
        """
        Place in the train of the element of the circuit; 0 for a kind without one.
        """
    @property
    def fits(self, /) -> int:
        """
        Readings that show what it predicts.
        """
    @property
    def group(self, /) -> int:
        """
        Suspects with the same number predict the same in every reading.
        """
    @property
    def kind(self, /) -> str:
        """
        What may be wrong.
        """
    @property
    def share(self, /) -> float:
        """
        Weight among all suspects; they sum to 1.
        """

@final
class PressureSuspects:
    """
    Suspects in the order of their weight.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def ranked(self, /) -> list[PressureSuspect]:
        """
        The suspects, the likeliest first.
        """
    @property
    def untested(self, /) -> int:
        """
        Elements asked about that no reading applies, one bit each: nothing is said about their circuits.
        """

@final
class Pump:
    """
    A pump: its displacement, and a leak that was measured in oil of known viscosity.

    >>> from trainwright.judge import Reading
    >>> pump = Pump(displacement_cm3_rev=Reading(value=19.8, u=0.2), leak_l_min_mpa=Reading(value=3.9, u=0.3), leak_viscosity_mpa_s=5.45)
    >>> round(pump.pump_flow(speed_rpm=600, pressure_kpa=1700, viscosity_mpa_s=5.45).delivered_l_min, 2)
    5.25
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, displacement_cm3_rev: Reading, leak_l_min_mpa: Reading, leak_viscosity_mpa_s: float) -> Pump: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def displacement_cm3_rev(self, /) -> Reading:
        """
        Displacement, cm³ per turn of its shaft.
        """
    def flow_margin(self, /, duty: PumpDuty, rule: Rule) -> FlowMargin:
        """
        Whether the pump covers the demand, with its uncertainty. The worst case is a hot idle at the highest pressure.
        Source: JCGM 100:2008, equation 10.
        """
    def hottest_c(self, /, fluid: Fluid, *, speed_rpm: float, pressure_kpa: float, demand_l_min: float) -> float:
        """
        Fluid temperature, °C, above which the pump can no longer hold the pressure at a speed.
        Source: follows from the definitions (`pump_flow` solved for the viscosity).
        """
    @property
    def leak_l_min_mpa(self, /) -> Reading:
        """
        Leak, L/min per MPa, at the viscosity below.
        """
    @property
    def leak_viscosity_mpa_s(self, /) -> float:
        """
        Dynamic viscosity of the oil in which that was measured, mPa·s.
        """
    def least_speed_rpm(self, /, *, pressure_kpa: ArrayLike, viscosity_mpa_s: ArrayLike, demand_l_min: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Speed, 1/min, below which the pump can no longer hold the pressure.
        Source: follows from the definitions (`pump_flow` solved for the speed).
        """
    def pump_flow(self, /, *, speed_rpm: ArrayLike, pressure_kpa: ArrayLike, viscosity_mpa_s: ArrayLike) -> Any:
        """
        What the pump delivers against a pressure: a `PumpFlow`, or a dictionary of arrays.
        Source: Esposito, Fluid Power with Applications, from memory; laminar leak.
        """

@final
class PumpClearance:
    """
    A clearance of a pump against its limit.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, judgment: Judgment, leak: LeakRatio) -> PumpClearance: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def judgment(self, /) -> Judgment:
        """
        The clearance against its limit.
        """
    @property
    def leak(self, /) -> LeakRatio:
        """
        How many times more it leaks than when new, with the interval of 95 %.
        """

@final
class PumpDuty:
    """
    What is asked of a pump.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, speed_rpm: Reading, pressure_kpa: Reading, viscosity_mpa_s: Reading, demand_l_min: Reading) -> PumpDuty: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def demand_l_min(self, /) -> Reading:
        """
        What the transmission takes at this pressure, L/min: lubrication, cooler, valves, seal rings.
        """
    @property
    def pressure_kpa(self, /) -> Reading:
        """
        Line pressure, kPa.
        """
    @property
    def speed_rpm(self, /) -> Reading:
        """
        Speed of its shaft, 1/min: the engine's, where the converter drives it.
        """
    @property
    def viscosity_mpa_s(self, /) -> Reading:
        """
        Dynamic viscosity of the oil, mPa·s; from `oil_at`.
        """

@final
class PumpFlow:
    """
    What a pump delivers, with everything that made it.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, theoretical_l_min: float, leak_l_min: float, delivered_l_min: float, volumetric_efficiency: float, torque_nm: float, power_kw: float) -> PumpFlow: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def delivered_l_min(self, /) -> float:
        """
        What is left for the transmission, L/min; negative where the pump cannot hold this pressure at all.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def leak_l_min(self, /) -> float:
        """
        Leak back through the clearances, L/min.
        """
    @property
    def power_kw(self, /) -> float:
        """
        Power for the pressure, without friction, kW.
        """
    @property
    def theoretical_l_min(self, /) -> float:
        """
        Displacement times speed, L/min.
        """
    @property
    def torque_nm(self, /) -> float:
        """
        Torque at its shaft for the pressure, without friction, N·m.
        """
    @property
    def volumetric_efficiency(self, /) -> float:
        """
        Delivered over displaced; 0 where nothing is left.
        """

@final
class Regulated:
    """
    Balance of a regulator.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, spring_n: float, boost_n: float, flow_n: float, balance_area_mm2: float, boost_area_mm2: float, pressure_kpa: float) -> Regulated: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def balance_area_mm2(self, /) -> float:
        """
        Area of the balance face, mm².
        """
    @property
    def boost_area_mm2(self, /) -> float:
        """
        Area of the boost face, mm².
        """
    @property
    def boost_n(self, /) -> float:
        """
        Boost on its land, N.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def flow_n(self, /) -> float:
        """
        Force of the flow, N; it helps the spring.
        """
    @property
    def pressure_kpa(self, /) -> float:
        """
        Pressure that it holds, kPa.
        """
    @property
    def spring_n(self, /) -> float:
        """
        Spring at the stroke, N.
        """

@final
class Regulator:
    """
    A pressure regulator valve. `boost` and `metering` are left out by a land and an edge of nothing.

    >>> spring_only = Regulator(preload_n=60, rate_n_mm=8, stroke_mm=1.5, balance=Land(outer_diameter_mm=12),
    ...                         boost=Land(outer_diameter_mm=0), metering=Metering(discharge=0, width_mm=0, opening_mm=0))
    >>> round(spring_only.regulated(boost_pressure_kpa=0).pressure_kpa, 1)
    636.6
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, preload_n: float, rate_n_mm: float, stroke_mm: float, balance: Land, boost: Land, metering: Metering) -> Regulator: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def balance(self, /) -> Land:
        """
        Face on which line pressure acts against the spring.
        """
    @property
    def boost(self, /) -> Land:
        """
        Face on which the boost pressure helps the spring.
        """
    @property
    def metering(self, /) -> Metering:
        """
        Edge over which it dumps.
        """
    @property
    def preload_n(self, /) -> float:
        """
        Spring force with the valve at its stop, N.
        """
    @property
    def rate_n_mm(self, /) -> float:
        """
        Spring rate, N/mm.
        """
    def regulated(self, /, *, boost_pressure_kpa: ArrayLike) -> Any:
        """
        Pressure that the regulator holds: a `Regulated`, or a dictionary of arrays.
        Source: follows from the definitions (equilibrium of the valve).
        """
    def spring_for_n(self, /, *, pressure_kpa: ArrayLike, boost_pressure_kpa: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Spring force, N, that gives the regulator its pressure, at the stroke where it regulates.
        Source: follows from the definitions (`regulated` solved for the spring).
        """
    @property
    def stroke_mm(self, /) -> float:
        """
        Stroke from the stop to where it regulates, mm.
        """

@final
class SlidingGap:
    """
    Flow along a gap whose shaft slides.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, leak: GapLeak, wall_l_min: float, flow_l_min: float) -> SlidingGap: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def flow_l_min(self, /) -> float:
        """
        Both, L/min.
        """
    @property
    def leak(self, /) -> GapLeak:
        """
        What the pressure drives.
        """
    @property
    def wall_l_min(self, /) -> float:
        """
        What the shaft takes along, L/min; negative against the pressure.
        """

@final
class Slot:
    """
    A narrow slot between two plane walls.

    >>> side = Slot(width_mm=20, clearance_mm=0.05, length_mm=5)
    >>> round(side.slot_flow(pressure_drop_kpa=1000, viscosity_mpa_s=5, density_kg_m3=800).flow_l_min, 3)
    0.5
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, width_mm: float, clearance_mm: float, length_mm: float) -> Slot: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def clearance_mm(self, /) -> float:
        """
        Height, mm.
        """
    @property
    def length_mm(self, /) -> float:
        """
        Along the flow, mm.
        """
    def slot_flow(self, /, *, pressure_drop_kpa: ArrayLike, viscosity_mpa_s: ArrayLike, density_kg_m3: ArrayLike, wall_speed_m_s: ArrayLike = ...) -> Any:
        """
        Flow of oil through the slot: a `SlotFlow`, or a dictionary of arrays. The wall moves with the flow above 0, against it
        below. Source: Bansal, laminar flow between plates.
        """
    @property
    def width_mm(self, /) -> float:
        """
        Across the flow, mm.
        """

@final
class SlotFlow:
    """
    Flow through a slot.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, pressure_l_min: float, wall_l_min: float, flow_l_min: float, speed_m_s: float, reynolds: float) -> SlotFlow: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def flow_l_min(self, /) -> float:
        """
        Both, L/min.
        """
    @property
    def pressure_l_min(self, /) -> float:
        """
        What the pressure drives, L/min.
        """
    @property
    def reynolds(self, /) -> float:
        """
        Reynolds number.
        """
    @property
    def speed_m_s(self, /) -> float:
        """
        Mean speed, m/s.
        """
    @property
    def wall_l_min(self, /) -> float:
        """
        What the moving wall takes along, L/min; negative against the pressure.
        """

@final
class TimedFlow:
    """
    Flow from a measure and a stopwatch.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, flow_l_min: Reading, budget: Budget) -> TimedFlow: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Its uncertainty: volume, time, in this order.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def flow_l_min(self, /) -> Reading:
        """
        The flow, L/min.
        """

def external_gear_by_centers_cm3_rev(*, tip_diameter_mm: ArrayLike, center_distance_mm: ArrayLike, face_mm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Displacement, cm³ per turn, of an external gear pump from tip diameter and center distance.
    Source: follows from the definitions (moment of the pressure on the teeth).

    >>> round(external_gear_by_centers_cm3_rev(tip_diameter_mm=50.39, center_distance_mm=42.06, face_mm=16.14), 2)
    19.52
    """

def external_gear_cm3_rev(*, tip_diameter_mm: ArrayLike, root_diameter_mm: ArrayLike, face_mm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Displacement, cm³ per turn, of an external gear pump from tip and root diameter.
    Source: Esposito, Fluid Power with Applications, from memory.

    >>> round(external_gear_cm3_rev(tip_diameter_mm=76.2, root_diameter_mm=50.8, face_mm=25.4), 2)
    64.35
    """

def field_rule_cm3_rev(*, bore_diameter_mm: ArrayLike, across_bores_mm: ArrayLike, face_mm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Displacement, cm³ per turn, of a gear pump by the rule of the trade. Source: common practice, no source.

    >>> round(field_rule_cm3_rev(bore_diameter_mm=50.8, across_bores_mm=88.9, face_mm=25.4), 2)
    36.87
    """

def flow_at_reference(flow_l_min: Reading, fluid: Fluid, *, temp_c: Reading, reference_c: float) -> Reading:
    """
    Flow that the same cooler would pass at another temperature of the fluid, L/min, with its uncertainty.
    Source: Bansal, laminar flow through a pipe, from memory.

    >>> from trainwright.fluid import Fluid
    >>> from trainwright.judge import Reading
    >>> alder = Fluid(density_15c_kg_m3=843, expansion_per_k=7.8e-4, viscosity_40c_mm2_s=27.4, viscosity_100c_mm2_s=5.6)
    >>> hot = flow_at_reference(Reading(value=2.84, u=0.07), alder, temp_c=Reading(value=50, u=1), reference_c=90)
    >>> round(hot.value, 1)
    8.3
    """

def gear_pressure(review: GearReview, *, reading_kpa: Reading, control_max_kpa: float = ...) -> GearPressure:
    """
    Line pressure that a gear needs, against the gauge reading of its review and the most that the control can give.
    `review` is of `trainwright.clutch.review` at the same reading. Source: follows from the definitions (the element that needs
    most pressure rules the gear).
    """

def in_parallel_mm2(orifices: Sequence[Orifice]) -> float:
    """
    Effective area, mm², of orifices side by side. Source: follows from the definitions (flows add).

    >>> round(in_parallel_mm2([Orifice(diameter_mm=1.0, discharge=0.6)] * 2), 3)
    0.942
    """

def in_series_mm2(orifices: Sequence[Orifice]) -> float:
    """
    Effective area, mm², of orifices one after another. Source: follows from the definitions (pressure drops add).

    >>> round(in_series_mm2([Orifice(diameter_mm=1.0, discharge=0.6)] * 2), 3)
    0.333
    """

def next_reading(suspects: PressureSuspects, candidates: Sequence[PressurePoint], *, rule: PatternRule) -> NextReading:
    """
    The reading that is expected to separate the suspects best. Source: Cover and Thomas, mutual information, from memory.
    """

def oil_at(fluid: Fluid, *, temp_c: Reading) -> OilAt:
    """
    Density and viscosity of a fluid at its temperature, with what an uncertain temperature does to them.
    Source: follows from the definitions (kinematic viscosity); ASTM D341.

    >>> from trainwright.fluid import Fluid
    >>> from trainwright.judge import Reading
    >>> alder = Fluid(density_15c_kg_m3=843, expansion_per_k=7.8e-4, viscosity_40c_mm2_s=27.4, viscosity_100c_mm2_s=5.6)
    >>> oil = oil_at(alder, temp_c=Reading(value=90, u=1))
    >>> round(oil.viscosity_mpa_s.value, 2), round(oil.viscosity_mpa_s.u, 2)
    (5.44, 0.12)
    """

def orifice_diameter_mm(*, flow_l_min: ArrayLike, pressure_drop_kpa: ArrayLike, density_kg_m3: ArrayLike, discharge: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Hole, mm, that lets a flow through at a pressure: to size a restriction, or to picture a leak.
    Source: follows from the definitions (`Orifice.orifice_flow` solved for the diameter).

    >>> round(orifice_diameter_mm(flow_l_min=0.911, pressure_drop_kpa=400, density_kg_m3=800, discharge=0.611), 2)
    1.0
    """

def passage_flow_l_min(*, effective_area_mm2: ArrayLike, pressure_drop_kpa: ArrayLike, density_kg_m3: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Flow, L/min, through an effective area. Source: follows from the definitions (`Orifice.orifice_flow`).

    >>> round(passage_flow_l_min(effective_area_mm2=0.333, pressure_drop_kpa=400, density_kg_m3=800), 3)
    0.632
    """

def pump_clearance(clearance_mm: Reading, *, new_mm: Reading, limit_mm: float, rule: Rule) -> PumpClearance:
    """
    Whether a clearance of a pump is within its limit, and how many times more it leaks than when new. Limit and new clearance
    are those of this very pump. Source: `Slot.slot_flow` (cube of the clearance); ISO 14253-1 for the verdict.

    >>> from trainwright.judge import Reading, Rule
    >>> rule = Rule.stated_chances(go=0.95, no_go=0.05)
    >>> side = pump_clearance(Reading(value=0.08, u=0.004), new_mm=Reading(value=0.04, u=0.002), limit_mm=0.10, rule=rule)
    >>> side.judgment.verdict, round(side.leak.ratio, 1)
    ('GO', 8.0)
    """

def sliding_gap(gap: Gap, *, pressure_drop_kpa: float, viscosity_mpa_s: float, density_kg_m3: float, wall_speed_m_s: float) -> SlidingGap:
    """
    Flow along the gap between a bore and a shaft or valve that slides in it. Source: Bansal, laminar flow between plates.

    >>> from trainwright.fit import Gap
    >>> gap = Gap(diameter_mm=12, clearance_mm=0.04, length_mm=10, eccentricity=0)
    >>> round(sliding_gap(gap, pressure_drop_kpa=1000, viscosity_mpa_s=5, density_kg_m3=800, wall_speed_m_s=0.5).flow_l_min, 4)
    0.0415
    """

def suspect_circuits(readings: Sequence[PressureReading], *, elements: int, rule: PatternRule) -> PressureSuspects:
    """
    How far each circuit would explain a pattern of pressure readings. Suspects, not proof.
    `elements` are the clutches and brakes with a circuit, one bit each. Source: Bayes' rule, every suspect as likely as any other
    beforehand.

    >>> from trainwright.judge import Limits, Reading
    >>> def idle(closed, kpa):
    ...     at = PressurePoint(closed=closed, at_stall=False, temp_c=85)
    ...     return PressureReading(at=at, reading_kpa=Reading(value=kpa, u=10), limits_kpa=Limits(lower=360, upper=440))
    >>> found = suspect_circuits([idle(0b101, 300), idle(0b011, 400), idle(0b110, 295)], elements=0b111,
    ...                          rule=PatternRule(kept=0.9, hot_from_c=70))
    >>> found.ranked[0].kind, found.ranked[0].element
    ('circuit', 2)
    """

def timed_flow(*, volume_l: Reading, time_s: Reading) -> TimedFlow:
    """
    Flow from a volume and the time in which it ran. Source: JCGM 100:2008, equation 10.

    >>> from trainwright.judge import Reading
    >>> flow = timed_flow(volume_l=Reading(value=1.0, u=0.02), time_s=Reading(value=20, u=0.3)).flow_l_min
    >>> round(flow.value, 3), round(flow.u, 3)
    (3.0, 0.075)
    """

def vane_cm3_rev(*, cam_diameter_mm: ArrayLike, rotor_diameter_mm: ArrayLike, eccentricity_mm: ArrayLike, face_mm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Displacement, cm³ per turn, of a vane pump at an eccentricity.
    Source: Esposito, Fluid Power with Applications, from memory.

    >>> round(vane_cm3_rev(cam_diameter_mm=76.2, rotor_diameter_mm=50.8, eccentricity_mm=8.0772, face_mm=50.8), 1)
    81.9
    """

def volumetric_efficiency(*, delivered_l_min: ArrayLike, displacement_cm3_rev: ArrayLike, speed_rpm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Share of its displacement that a pump delivers. Source: Esposito, Fluid Power with Applications, from memory.

    >>> volumetric_efficiency(delivered_l_min=8.91, displacement_cm3_rev=19.8, speed_rpm=600)
    0.75
    """
