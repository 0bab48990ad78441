"""
Torque converters: characteristic, match with an engine, stall, lock-up slip. A stall test overheats within seconds.
"""

from . import Explanation
from .judge import Budget, Judgment, Limits, Reading, Rule
from .train import State
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["Characteristic", "EngineCurve", "EngineToday", "FluidCharge", "InletAir", "LockupSlip", "MeasuredStall", "OperatingPoint", "SlipLimits", "StallInputs", "StallPlan", "StallRatings", "StallSpeed", "StallVerdict", "air_correction_j1349", "air_torque_factor", "capacity_factor", "efficiency", "element_torques", "from_output_side", "from_torque_coefficient", "impeller_torque_nm", "judge_stall", "lockup_slip", "operating_point", "operating_points", "plan_stall", "speed_ratio", "stall_speed"]

@final
class Characteristic:
    """
    Characteristic of a torque converter, straight between the points: torque ratio and capacity factor K of the impeller
    side (1/min per √(N·m)) against speed ratio. 2 to 32 points, speed ratios rising; an efficiency above 1 is refused.

    >>> loose = Characteristic(speed_ratio=[0, 0.8, 0.9], torque_ratio=[2, 1.1, 1], k_rpm_per_sqrt_nm=[70, 84, 100])
    >>> loose.torque_ratio_at(speed_ratio=[0, 0.4])
    array([2.  , 1.55])
    >>> loose.coupling_point()
    0.9
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, speed_ratio: Sequence[float], torque_ratio: Sequence[float], k_rpm_per_sqrt_nm: Sequence[float]) -> Characteristic: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def capacity_factor_at(self, /, *, speed_ratio: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Capacity factor of the impeller side at a speed ratio, 1/min per √(N·m); refused beyond the ends.
        Source: SAE J643, definitions.
        """
    def coupling_point(self, /) -> float:
        """
        Speed ratio from which the converter no longer multiplies torque. Source: SAE J643, definitions.
        """
    @property
    def k_rpm_per_sqrt_nm(self, /) -> list[float]:
        """
        Capacity factor of the impeller side at each, 1/min per √(N·m).
        """
    @property
    def speed_ratio(self, /) -> list[float]:
        """
        Turbine speed over impeller speed.
        """
    @property
    def torque_ratio(self, /) -> list[float]:
        """
        Turbine torque over impeller torque at each.
        """
    def torque_ratio_at(self, /, *, speed_ratio: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Torque ratio at a speed ratio; refused beyond the ends of the characteristic. Source: SAE J643, definitions.
        """

@final
class EngineCurve:
    """
    Engine torque against engine speed, straight between the points: net, full throttle. 2 to 32 points, speeds rising.

    >>> engine = EngineCurve(speed_rpm=[1000, 2000], torque_nm=[300, 400], max_rpm=5000)
    >>> engine.torque_at_nm(speed_rpm=1250)
    325.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, speed_rpm: Sequence[float], torque_nm: Sequence[float], max_rpm: float) -> EngineCurve: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def max_rpm(self, /) -> float:
        """
        Greatest speed, 1/min.
        """
    @property
    def speed_rpm(self, /) -> list[float]:
        """
        Speeds, 1/min.
        """
    def torque_at_nm(self, /, *, speed_rpm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Torque at a speed, N·m; refused beyond the ends of the curve, which says nothing there.
        Source: follows from the definitions (straight line between two points).
        """
    @property
    def torque_nm(self, /) -> list[float]:
        """
        Torque at each speed, N·m.
        """

@final
class EngineToday:
    """
    What the engine gives today of its curve.

    >>> EngineToday(torque_factor=0.95)
    EngineToday(torque_factor=0.95, accessory_nm=0.0)
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, torque_factor: float = ..., accessory_nm: float = ...) -> EngineToday: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def accessory_nm(self, /) -> float:
        """
        Torque that accessories take besides those that the curve counts, N·m; negative where one that it counts is idle.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def torque_factor(self, /) -> float:
        """
        Torque over that of the curve, above 0 to 2: air, throttle, fuel.
        """

@final
class FluidCharge:
    """
    The fluid in the converter.

    >>> charge = FluidCharge(volume_l=1.25, density_kg_m3=800, specific_heat_j_kg_k=2000, start_c=70, most_c=150)
    >>> charge.rise_k(heat_kw=10, time_s=5)
    25.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, volume_l: float, density_kg_m3: float, specific_heat_j_kg_k: float, start_c: float, most_c: float) -> FluidCharge: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def density_kg_m3(self, /) -> float:
        """
        Its density, kg/m³.
        """
    def heat_s(self, /, *, heat_kw: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Seconds until the fluid reaches `most_c`; 0 where it is as hot already.
        Source: follows from the definitions (`rise_k` solved for the time).
        """
    @property
    def most_c(self, /) -> float:
        """
        Temperature that it must not pass, °C.
        """
    def rise_k(self, /, *, heat_kw: ArrayLike, time_s: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Temperature rise in a time, K: adiabatic bound, no heat into metal or cooler.
        Source: follows from the definitions (conservation of energy).
        """
    @property
    def specific_heat_j_kg_k(self, /) -> float:
        """
        Its specific heat, J/(kg·K).
        """
    @property
    def start_c(self, /) -> float:
        """
        Temperature at which the stall begins, °C.
        """
    @property
    def volume_l(self, /) -> float:
        """
        Its volume, L.
        """

@final
class InletAir:
    """
    Air that an engine breathes.
    """
    REFERENCE_J1349: Final[InletAir]
    """
    The reference air of SAE J1349: 99 kPa dry, 25 °C.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, pressure_kpa_abs: float, vapor_kpa_abs: float = ..., temp_c: float) -> InletAir: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def in_test_range_j1349(self, /) -> bool:
        """
        Whether SAE J1349 tests in such air: 90 to 105 kPa dry, 15 to 35 °C.
        """
    @property
    def pressure_kpa_abs(self, /) -> float:
        """
        Absolute (station) pressure, kPa, 50 to 110; not the reading reduced to sea level.
        """
    @property
    def temp_c(self, /) -> float:
        """
        Temperature, °C, −40 to 60.
        """
    @property
    def vapor_kpa_abs(self, /) -> float:
        """
        Pressure of the water vapor in it, kPa.
        """

@final
class LockupSlip:
    """
    Slip of a lock-up clutch, judged. What torque the clutch still has in hand it does not say.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, slip_rpm: Reading, on_target: Judgment, within_alarm: Judgment, budget: Budget) -> LockupSlip: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Uncertainty: engine speed, turbine speed, in this order.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def on_target(self, /) -> Judgment:
        """
        The slip against what the control aims at.
        """
    @property
    def slip_rpm(self, /) -> Reading:
        """
        Engine speed less turbine speed, 1/min; negative while the wheels drive the engine.
        """
    @property
    def within_alarm(self, /) -> Judgment:
        """
        The slip against what is a fault: NO-GO is a proven one.
        """

@final
class MeasuredStall:
    """
    A stall speed that was measured, and how it is judged.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, speed_rpm: Reading, allow_rpm: Limits, stator_share: float, stop_rpm: float, rule: Rule) -> MeasuredStall: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def allow_rpm(self, /) -> Limits:
        """
        Differences from the computed speed that prove no fault, 1/min: the lower one negative.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def rule(self, /) -> Rule:
        """
        Decision rule.
        """
    @property
    def speed_rpm(self, /) -> Reading:
        """
        Engine speed reached, 1/min.
        """
    @property
    def stator_share(self, /) -> float:
        """
        Share of the computed speed that is missing from which the stator comes first in suspicion, above 0 to 1.
        """
    @property
    def stop_rpm(self, /) -> float:
        """
        Difference upward at which the test stops at once, 1/min.
        """

@final
class OperatingPoint:
    """
    A speed at which engine and converter are in balance.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, engine_rpm: float, turbine_rpm: float, speed_ratio: float, torque_ratio: float, k_rpm_per_sqrt_nm: float, impeller_nm: float, turbine_nm: float, impeller_kw: float, turbine_kw: float, heat_kw: float, efficiency: float, stable: bool = ...) -> OperatingPoint: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def efficiency(self, /) -> float:
        """
        Power out over power in.
        """
    @property
    def engine_rpm(self, /) -> float:
        """
        Speed of engine and impeller, 1/min.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def heat_kw(self, /) -> float:
        """
        What the converter turns into heat, kW.
        """
    @property
    def impeller_kw(self, /) -> float:
        """
        Power into the impeller, kW.
        """
    @property
    def impeller_nm(self, /) -> float:
        """
        Torque that the engine gives and the impeller takes, N·m.
        """
    @property
    def k_rpm_per_sqrt_nm(self, /) -> float:
        """
        Capacity factor of the impeller side, 1/min per √(N·m).
        """
    @property
    def speed_ratio(self, /) -> float:
        """
        Turbine speed over impeller speed.
        """
    @property
    def stable(self, /) -> bool:
        """
        The engine comes back to this speed by itself.
        """
    @property
    def torque_ratio(self, /) -> float:
        """
        Turbine torque over impeller torque.
        """
    @property
    def turbine_kw(self, /) -> float:
        """
        Power out of the turbine, kW.
        """
    @property
    def turbine_nm(self, /) -> float:
        """
        Torque at the turbine, N·m.
        """
    @property
    def turbine_rpm(self, /) -> float:
        """
        Speed of the turbine, 1/min.
        """

@final
class SlipLimits:
    """
    Slip that the control of a lock-up clutch aims at, and slip that is a fault.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, target_rpm: float, alarm_rpm: float, rule: Rule) -> SlipLimits: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def alarm_rpm(self, /) -> float:
        """
        Slip that is a fault, 1/min.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def rule(self, /) -> Rule:
        """
        Decision rule.
        """
    @property
    def target_rpm(self, /) -> float:
        """
        Greatest slip that the control aims at, 1/min.
        """

@final
class StallInputs:
    """
    What a stall speed depends on besides the two tables. Nothing given: as the tables say, and exact.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, torque_factor: Reading = ..., accessory_nm: Reading = ..., k_factor: Reading = ...) -> StallInputs: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def accessory_nm(self, /) -> Reading:
        """
        Torque that accessories take besides those that the curve counts, N·m.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def k_factor(self, /) -> Reading:
        """
        Capacity factor of this converter over that of the characteristic.
        """
    @property
    def torque_factor(self, /) -> Reading:
        """
        Torque over that of the curve: air, fuel, wear of the engine.
        """

@final
class StallPlan:
    """
    A stall test before it is made. `allowed` says that the record does not forbid it; whether it may be made is up to the
    vehicle maker.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, point: OperatingPoint, ratings: StallRatings, gear_ratio: float, output_nm: float, turbine_share: float, output_share: float, turbine_passed: bool, output_passed: bool, too_hot: bool, allowed: bool, rise_k: float, heat_s: float, permitted_s: float, limit_turbine_nm: float, limit_engine_nm: float, limit_rpm: float, limit_heat_kw: float, limit_s: float) -> StallPlan: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def allowed(self, /) -> bool:
        """
        Nothing of the above.
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
    def gear_ratio(self, /) -> float:
        """
        Ratio of the gear; negative in reverse.
        """
    @property
    def heat_s(self, /) -> float:
        """
        Seconds until the fluid is as hot as it may be.
        """
    @property
    def limit_engine_nm(self, /) -> float:
        """
        Engine torque that gives it at stall, N·m.
        """
    @property
    def limit_heat_kw(self, /) -> float:
        """
        Heat of that stall, kW.
        """
    @property
    def limit_rpm(self, /) -> float:
        """
        Engine speed at that stall, 1/min.
        """
    @property
    def limit_s(self, /) -> float:
        """
        Seconds that heat and record leave at that stall.
        """
    @property
    def limit_turbine_nm(self, /) -> float:
        """
        Greatest turbine torque that passes no rating, N·m.
        """
    @property
    def output_nm(self, /) -> float:
        """
        Torque at the output while it is held, N·m, without sign.
        """
    @property
    def output_passed(self, /) -> bool:
        """
        The rated output torque would be passed.
        """
    @property
    def output_share(self, /) -> float:
        """
        Output torque over its rating.
        """
    @property
    def permitted_s(self, /) -> float:
        """
        Seconds that both heat and record leave; 0 where the test is refused.
        """
    @property
    def point(self, /) -> OperatingPoint:
        """
        The stall.
        """
    @property
    def ratings(self, /) -> StallRatings:
        """
        What it must not pass.
        """
    @property
    def rise_k(self, /) -> float:
        """
        Rise of the fluid in the longest stall of the record, K: adiabatic bound.
        """
    @property
    def too_hot(self, /) -> bool:
        """
        The fluid is too hot to begin.
        """
    @property
    def turbine_passed(self, /) -> bool:
        """
        The rated turbine torque would be passed.
        """
    @property
    def turbine_share(self, /) -> float:
        """
        Turbine torque over its rating.
        """

@final
class StallRatings:
    """
    What a stall test must not pass.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, turbine_nm: float, output_nm: float, longest_s: float) -> StallRatings: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def longest_s(self, /) -> float:
        """
        Longest stall, s.
        """
    @property
    def output_nm(self, /) -> float:
        """
        Rated torque at the output, N·m.
        """
    @property
    def turbine_nm(self, /) -> float:
        """
        Rated torque at the turbine, N·m.
        """

@final
class StallSpeed:
    """
    A computed stall.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, point: OperatingPoint, speed_rpm: Reading, turbine_nm: Reading, budget: Budget) -> StallSpeed: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Uncertainty of the speed: engine torque, accessories, capacity factor, in this order.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def point(self, /) -> OperatingPoint:
        """
        The stall, from the best estimates.
        """
    @property
    def speed_rpm(self, /) -> Reading:
        """
        Engine speed, 1/min.
        """
    @property
    def turbine_nm(self, /) -> Reading:
        """
        Torque at the turbine, N·m.
        """

@final
class StallVerdict:
    """
    What a measured stall speed says. A side is a suspicion, not proof.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, stall: StallSpeed, difference_rpm: Reading, judgment: Judgment, budget: Budget, side: str, explained: bool, torque_share: float, k_share: float) -> StallVerdict: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Uncertainty of the difference: reading, engine torque, accessories, capacity factor, in this order.
        """
    @property
    def difference_rpm(self, /) -> Reading:
        """
        Measured less computed speed, 1/min.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def explained(self, /) -> bool:
        """
        The engine curve covers the measured speed. If not, the two shares below are 0.
        """
    @property
    def judgment(self, /) -> Judgment:
        """
        The difference against what is allowed: GO is "no fault proven", not "no fault".
        """
    @property
    def k_share(self, /) -> float:
        """
        Capacity factor over the expected one that alone would explain the speed.
        """
    @property
    def side(self, /) -> str:
        """
        `"far low"`, `"low"`, `"inside"`, `"high"` or `"far high"`; inside only where the verdict is GO.
        """
    @property
    def stall(self, /) -> StallSpeed:
        """
        The computed stall.
        """
    @property
    def torque_share(self, /) -> float:
        """
        Engine torque over the expected one that alone would explain the speed.
        """

def air_correction_j1349(air: InletAir) -> float:
    """
    Full-throttle torque of a naturally aspirated spark-ignition engine in reference air over that in this air. Not for a
    turbocharged engine: how much torque it keeps is for its maker to say. Source: SAE J1349.

    >>> round(air_correction_j1349(InletAir(pressure_kpa_abs=90, temp_c=35)), 4)
    1.1396
    """

def air_torque_factor(*, curve: InletAir, today: InletAir) -> float:
    """
    Torque in the air of the day over that in the air of the engine's curve: the `torque_factor` of a naturally aspirated
    spark-ignition engine. Source: SAE J1349.
    """

def capacity_factor(*, impeller_rpm: ArrayLike, impeller_nm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Capacity factor of the impeller side, K = n/√T, 1/min per √(N·m). Source: SAE J643, definitions.

    >>> capacity_factor(impeller_rpm=1420, impeller_nm=400)
    71.0
    """

def efficiency(*, speed_ratio: ArrayLike, torque_ratio: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Efficiency: speed ratio times torque ratio; refused above 1. Source: SAE J643, definitions.

    >>> round(efficiency(speed_ratio=0.1, torque_ratio=2.07), 3)
    0.207
    """

def element_torques(state: State, *, turbine_nm: float) -> dict:
    """
    Torque, N·m, on each closed element of a gear at a turbine torque, by its name; `None` where statics cannot tell.
    Source: follows from the definitions (equilibrium of the gear train).
    """

def from_output_side(*, k_output_rpm_per_sqrt_nm: ArrayLike, speed_ratio: ArrayLike, torque_ratio: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Capacity factor of the impeller side from one of the output side (turbine speed over the root of turbine torque), both
    1/min per √(N·m). Not at stall, where that of the output side is 0 for every converter.
    Source: follows from the definitions.

    >>> round(from_output_side(k_output_rpm_per_sqrt_nm=58.55, speed_ratio=0.6, torque_ratio=1.4), 1)
    115.5
    """

def from_torque_coefficient(*, torque_coefficient: ArrayLike, density_kg_m3: ArrayLike, diameter_mm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Capacity factor of the impeller side, 1/min per √(N·m), from the torque coefficient λ of T = λ·ρ·D⁵·ω².
    Source: follows from the definitions (similarity of hydrodynamic machines).

    >>> round(from_torque_coefficient(torque_coefficient=0.001, density_kg_m3=850, diameter_mm=300), 1)
    210.1
    """

def impeller_torque_nm(*, impeller_rpm: ArrayLike, k_rpm_per_sqrt_nm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Torque, N·m, that the impeller takes at a speed: T = (n/K)². Source: SAE J643, definitions.

    >>> impeller_torque_nm(impeller_rpm=1420, k_rpm_per_sqrt_nm=71)
    400.0
    """

def judge_stall(engine: EngineCurve, converter: Characteristic, measured: MeasuredStall, *, inputs: StallInputs | None = None) -> StallVerdict:
    """
    What a measured stall speed says. Source: ISO 14253-1, clause 5.

    >>> from trainwright import Limits, Reading
    >>> from trainwright.judge import Rule
    >>> engine = EngineCurve(speed_rpm=[1000, 1500, 2000], torque_nm=[330, 365, 395], max_rpm=5700)
    >>> converter = Characteristic(speed_ratio=[0, 0.9], torque_ratio=[1.88, 1], k_rpm_per_sqrt_nm=[96, 140])
    >>> measured = MeasuredStall(speed_rpm=Reading(value=1815, u=5), allow_rpm=Limits(lower=-140, upper=140),
    ...                          stator_share=0.33, stop_rpm=200, rule=Rule.conformance(0.95))
    >>> judge_stall(engine, converter, measured).judgment.verdict
    'GO'
    """

def lockup_slip(*, engine_rpm: Reading, turbine_rpm: Reading, limits: SlipLimits) -> LockupSlip:
    """
    Slip of a lock-up clutch against the slip that its control aims at and the slip that is a fault. For a speed from a bus take
    `Reading.quantized`. Source: ISO 14253-1, clause 5.

    >>> from trainwright import Reading
    >>> from trainwright.judge import Rule
    >>> limits = SlipLimits(target_rpm=20, alarm_rpm=70, rule=Rule.conformance(0.95))
    >>> slip = lockup_slip(engine_rpm=Reading.quantized(2160, quantum=0.125),
    ...                    turbine_rpm=Reading.quantized(2140, quantum=0.125), limits=limits)
    >>> slip.slip_rpm.value, slip.within_alarm.verdict
    (20.0, 'GO')
    """

def operating_point(engine: EngineCurve, converter: Characteristic, *, turbine_rpm: ArrayLike, today: EngineToday | None = None) -> Any:
    """
    The one speed at which engine and converter settle: an `OperatingPoint`, or a dictionary of arrays. `turbine_rpm` is 0 at
    stall; `today` is as the curve was measured unless given. Refused where there is none, or more than one.
    Source: SAE J643, definitions.

    >>> engine = EngineCurve(speed_rpm=[800, 3000], torque_nm=[400, 400], max_rpm=3600)
    >>> converter = Characteristic(speed_ratio=[0, 0.9], torque_ratio=[2, 1], k_rpm_per_sqrt_nm=[71, 100])
    >>> round(operating_point(engine, converter, turbine_rpm=0).engine_rpm, 6)
    1420.0
    >>> operating_point(engine, converter, turbine_rpm=[0, 1000])["heat_kw"].round(1)
    array([59.5, 17. ])
    """

def operating_points(engine: EngineCurve, converter: Characteristic, *, turbine_rpm: float, today: EngineToday | None = None) -> list[OperatingPoint]:
    """
    Every engine speed at which the engine gives just what the impeller takes, stable or not, by rising speed; an empty list
    where the two do not meet within both tables. Source: SAE J643, definitions.
    """

def plan_stall(stall: OperatingPoint, state: State, *, ratings: StallRatings, charge: FluidCharge) -> StallPlan:
    """
    Plans a stall test, or says why it must not be made: not `allowed` where a rating would be passed, with the engine torque
    that would pass none. `stall` is an operating point with the turbine standing, `state` the gear.
    Source: follows from the definitions of torque ratio, gear ratio and capacity factor.
    """

def speed_ratio(*, impeller_rpm: ArrayLike, turbine_rpm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Speed ratio: turbine speed over impeller (engine) speed. Source: SAE J643, definitions.

    >>> speed_ratio(impeller_rpm=2000, turbine_rpm=[0, 1600])
    array([0. , 0.8])
    """

def stall_speed(engine: EngineCurve, converter: Characteristic, *, inputs: StallInputs | None = None) -> StallSpeed:
    """
    Stall speed of an engine against a converter, with its uncertainty. `inputs` are as the tables say, and exact, unless given.
    Source: JCGM 100:2008, 5.1.3, note 2.

    >>> engine = EngineCurve(speed_rpm=[1000, 1500, 2000], torque_nm=[330, 365, 395], max_rpm=5700)
    >>> converter = Characteristic(speed_ratio=[0, 0.9], torque_ratio=[1.88, 1], k_rpm_per_sqrt_nm=[96, 140])
    >>> round(stall_speed(engine, converter).speed_rpm.value, 2)
    1892.29
    """
