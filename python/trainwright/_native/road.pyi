"""
The road side: shaft speeds, shift points, speedometer, road load, grade, air. A computed capability is not a rating.
"""

from . import Explanation
from .judge import Limits, Reading
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["Air", "CoastDown", "CoastDownLoad", "Combination", "Driveline", "Engaged", "GradeHeld", "NumbersToProgram", "RoadLoad", "ShaftSpeeds", "ShiftPoint", "Speedometer", "density_of_air", "grade_deg", "grade_held", "grade_pct", "limits_49_cfr_393_82", "limits_un_r39", "mean_grade_pct", "numbers_to_program", "road_load", "rolling_coefficient_at", "shift_at_output_speed", "shift_at_road_speed", "speedometer", "standard_air"]

@final
class Air:
    """
    Air at an altitude.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, geopotential_m: float, temp_c: float, pressure_kpa_abs: float, density_kg_m3: float) -> Air: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def density_kg_m3(self, /) -> float:
        """
        Density.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def geopotential_m(self, /) -> float:
        """
        Geopotential altitude.
        """
    @property
    def pressure_kpa_abs(self, /) -> float:
        """
        Absolute pressure.
        """
    @property
    def temp_c(self, /) -> float:
        """
        Temperature.
        """

@final
class CoastDown:
    """
    Road load of a coast-down test: F = A + B·v + C·v².
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, a_n: float, b_n_per_km_h: float = ..., c_n_per_km_h2: float = ...) -> CoastDown: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def a_n(self, /) -> float:
        """
        Constant part.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def b_n_per_km_h(self, /) -> float:
        """
        Part per km/h.
        """
    @property
    def c_n_per_km_h2(self, /) -> float:
        """
        Part per (km/h)².
        """
    def coast_down_load(self, /, *, speed_km_h: ArrayLike) -> Any:
        """
        Force and power at a speed on the level. Arrays give a dictionary of arrays. Source: 40 CFR 1066.210.
        """
    @staticmethod
    def from_lbf_mph(*, a_lbf: float, b_lbf_per_mph: float, c_lbf_per_mph2: float) -> CoastDown:
        """
        Coefficients as United States test lists give them.

        >>> round(CoastDown.from_lbf_mph(a_lbf=46.31, b_lbf_per_mph=0.0865, c_lbf_per_mph2=0.0148).a_n, 1)
        206.0
        """

@final
class CoastDownLoad:
    """
    Force of a coast-down equation at a speed, and what it is made of.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, constant_n: float, linear_n: float, square_n: float, total_n: float, power_kw: float) -> CoastDownLoad: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def constant_n(self, /) -> float:
        """
        A.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def linear_n(self, /) -> float:
        """
        B·v.
        """
    @property
    def power_kw(self, /) -> float:
        """
        Power at the wheels.
        """
    @property
    def square_n(self, /) -> float:
        """
        C·v².
        """
    @property
    def total_n(self, /) -> float:
        """
        Sum.
        """

@final
class Combination:
    """
    A truck with its trailer, as far as the road feels it.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, mass_kg: float, rolling_coefficient: float, drag_area_m2: float) -> Combination: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def drag_area_m2(self, /) -> float:
        """
        Drag coefficient times frontal area, m².
        """
    @property
    def mass_kg(self, /) -> float:
        """
        Mass, load included.
        """
    @property
    def rolling_coefficient(self, /) -> float:
        """
        Rolling resistance over weight.
        """

@final
class Driveline:
    """
    What lies between the transmission output and the road.

    >>> from trainwright import Reading
    >>> line = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=15.1))
    >>> line.road_km_h(output_rpm=[0.0, 1500.0]).round(2)
    array([ 0.  , 61.98])
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, axle_ratio: float, transfer_ratio: float = ..., circumference_mm: Reading) -> Driveline: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def axle_ratio(self, /) -> float:
        """
        Axle ratio.
        """
    @property
    def circumference_mm(self, /) -> Reading:
        """
        Rolling circumference of the driven tires.
        """
    def output_rpm(self, /, *, road_km_h: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Output-shaft speed of a road speed.
        """
    def output_torque_nm(self, /, *, force_n: ArrayLike, efficiency: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Torque at the transmission output that a tractive force takes.
        """
    def road_km_h(self, /, *, output_rpm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Road speed of an output-shaft speed.
        """
    def speeds_at_engine(self, /, engaged: Engaged, *, engine_rpm: ArrayLike) -> Any:
        """
        Every speed from the road to the engine, at an engine speed. Arrays give a dictionary of arrays.

        >>> from trainwright import Reading
        >>> line = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
        >>> round(line.speeds_at_engine(Engaged(gear_ratio=0.7517), engine_rpm=1600.0).road_km_h, 1)
        88.0
        """
    def speeds_at_output(self, /, engaged: Engaged, *, output_rpm: ArrayLike) -> Any:
        """
        Every speed from the road to the engine, at an output-shaft speed. Arrays give a dictionary of arrays.
        """
    def speeds_at_road(self, /, engaged: Engaged, *, road_km_h: ArrayLike) -> Any:
        """
        Every speed from the road to the engine, at a road speed. Arrays give a dictionary of arrays.
        Source: follows from the definitions (speeds of a driveline).
        """
    def tractive_force_n(self, /, *, output_torque_nm: ArrayLike, efficiency: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Force of the driven wheels on the road from a torque at the transmission output. Tire grip is not looked at.
        Source: follows from the definitions (tractive force).
        """
    @property
    def transfer_ratio(self, /) -> float:
        """
        Transfer case ratio; 1 without one and in its high range.
        """

@final
class Engaged:
    """
    A gear, and the slip between engine and input shaft.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, gear_ratio: float, slip_rpm: float = ...) -> Engaged: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def gear_ratio(self, /) -> float:
        """
        Input over output speed; negative in reverse.
        """
    @property
    def slip_rpm(self, /) -> float:
        """
        Engine speed less input speed; 0 with the lock-up clutch closed.
        """

@final
class GradeHeld:
    """
    The grade that a tractive force holds, and what it is made of.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, aero_n: float, left_n: float, left_over_weight: float, grade_deg: float, grade_pct: float) -> GradeHeld: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def aero_n(self, /) -> float:
        """
        Air drag.
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
    def grade_deg(self, /) -> float:
        """
        Angle of the grade; negative when the force does not hold the speed on the level.
        """
    @property
    def grade_pct(self, /) -> float:
        """
        The same as rise over horizontal run.
        """
    @property
    def left_n(self, /) -> float:
        """
        Force left over for rolling and grade.
        """
    @property
    def left_over_weight(self, /) -> float:
        """
        The same over the weight.
        """

@final
class NumbersToProgram:
    """
    What to program, or to fit, so that speedometer and schedule are right again.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, axle_ratio: float, circumference_mm: float, rev_per_km: float, rev_per_mile: float, pulses_per_km: float, pulses_per_mile: float, axle_ratio_to_fit: float, u_rel: float) -> NumbersToProgram: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def axle_ratio(self, /) -> float:
        """
        Axle ratio to program where only that can be set.
        """
    @property
    def axle_ratio_to_fit(self, /) -> float:
        """
        Axle ratio to fit, so that what is programmed is right unchanged.
        """
    @property
    def circumference_mm(self, /) -> float:
        """
        Rolling circumference to program where only that can be set.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def pulses_per_km(self, /) -> float:
        """
        Sensor pulses per kilometer of the fitted driveline.
        """
    @property
    def pulses_per_mile(self, /) -> float:
        """
        Sensor pulses per mile of the fitted driveline.
        """
    @property
    def rev_per_km(self, /) -> float:
        """
        The same as revolutions per kilometer.
        """
    @property
    def rev_per_mile(self, /) -> float:
        """
        The same as revolutions per mile.
        """
    @property
    def u_rel(self, /) -> float:
        """
        Relative standard uncertainty of each, from the fitted tire.
        """

@final
class RoadLoad:
    """
    Steady road load and what it is made of.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, grade_deg: float, rolling_n: float, aero_n: float, grade_n: float, total_n: float, power_kw: float) -> RoadLoad: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def aero_n(self, /) -> float:
        """
        Air drag.
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
    def grade_deg(self, /) -> float:
        """
        Angle of the grade.
        """
    @property
    def grade_n(self, /) -> float:
        """
        Share of the weight along the grade; negative downhill.
        """
    @property
    def power_kw(self, /) -> float:
        """
        Power at the wheels.
        """
    @property
    def rolling_n(self, /) -> float:
        """
        Rolling resistance.
        """
    @property
    def total_n(self, /) -> float:
        """
        Sum.
        """

@final
class ShaftSpeeds:
    """
    Speeds of one moment, from the road to the engine.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, road_km_h: float, wheel_rpm: float, output_rpm: float, input_rpm: float, engine_rpm: float, u_rel: float) -> ShaftSpeeds: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def engine_rpm(self, /) -> float:
        """
        Engine.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def input_rpm(self, /) -> float:
        """
        Transmission input (turbine) shaft.
        """
    @property
    def output_rpm(self, /) -> float:
        """
        Transmission output shaft.
        """
    @property
    def road_km_h(self, /) -> float:
        """
        Road speed, without tire slip.
        """
    @property
    def u_rel(self, /) -> float:
        """
        Relative standard uncertainty across the tire.
        """
    @property
    def wheel_rpm(self, /) -> float:
        """
        Wheel.
        """

@final
class ShiftPoint:
    """
    A shift point before and after a change of tire or axle.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, before_km_h: float, before_rpm: float, after_km_h: float, after_rpm: float) -> ShiftPoint: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def after_km_h(self, /) -> float:
        """
        Road speed after the change.
        """
    @property
    def after_rpm(self, /) -> float:
        """
        Output-shaft speed after the change.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def before_km_h(self, /) -> float:
        """
        Road speed before the change.
        """
    @property
    def before_rpm(self, /) -> float:
        """
        Output-shaft speed before the change.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """

@final
class Speedometer:
    """
    What the speedometer shows when the programmed driveline is not the fitted one.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, true_over_shown: float, true_km_h: float, shown_km_h: Reading) -> Speedometer: ...
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
    def shown_km_h(self, /) -> Reading:
        """
        Shown speed, with the uncertainty that comes from the fitted tire.
        """
    @property
    def true_km_h(self, /) -> float:
        """
        True road speed.
        """
    @property
    def true_over_shown(self, /) -> float:
        """
        True over shown speed: above 1 it reads low.
        """

def density_of_air(*, pressure_kpa_abs: ArrayLike, temp_c: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Density of dry air at an absolute pressure and a temperature.
    Source: ISO 2533:1975, clause 2, perfect gas law.

    >>> round(density_of_air(pressure_kpa_abs=101.325, temp_c=15.0), 3)
    1.225
    """

def grade_deg(*, grade_pct: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Angle of a grade in percent.

    >>> grade_deg(grade_pct=[0, 12]).round(2)
    array([0.  , 6.84])
    """

def grade_held(combination: Combination, *, air_density_kg_m3: ArrayLike, speed_km_h: ArrayLike, force_n: ArrayLike) -> Any:
    """
    The grade on which a tractive force holds a steady speed. Arrays give a dictionary of arrays.

    What the engine can hold is not what the truck may pull: grip, brakes, cooling and the maker's ratings come first.
    Source: follows from the definitions (road load solved for the grade).
    """

def grade_pct(*, grade_deg: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Grade in percent, rise over horizontal run, of an angle.
    Source: follows from the definitions (grade).
    """

def limits_49_cfr_393_82(*, true_km_h: float) -> Limits:
    """
    Speeds that the speedometer of a commercial vehicle may show at 80 km/h to 50 mph. Source: 49 CFR 393.82.

    >>> limits_49_cfr_393_82(true_km_h=80.0)
    Limits(lower=72.0, upper=88.0)
    """

def limits_un_r39(*, true_km_h: float) -> Limits:
    """
    Speeds that a speedometer may show at a true speed. Source: UN Regulation 39, paragraph 5.3.

    >>> limits_un_r39(true_km_h=70.0)
    Limits(lower=70.0, upper=81.0)
    """

def mean_grade_pct(*, rise_m: ArrayLike, distance_m: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Mean grade in percent of a climb. The steepest part decides the torque, not the mean.
    """

def numbers_to_program(programmed: Driveline, fitted: Driveline, *, pulses_per_rev: float) -> NumbersToProgram:
    """
    The number to program after a change of tire, axle or transfer case.
    Source: follows from the definitions (speedometer).

    >>> from trainwright import Reading
    >>> old = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
    >>> new = Driveline(axle_ratio=4.27, circumference_mm=Reading(value=2438.0, u=0.0))
    >>> round(numbers_to_program(old, new, pulses_per_rev=30).axle_ratio, 2)
    4.27
    """

def road_load(combination: Combination, *, air_density_kg_m3: ArrayLike, speed_km_h: ArrayLike, grade_pct: ArrayLike) -> Any:
    """
    Tractive force and power that hold a steady speed on a grade, with the exact sine. Arrays give a dictionary of arrays.

    A capability computed from this is no towing rating: the vehicle maker's ratings stand.
    Source: SAE J1263, road load equation.

    >>> truck = Combination(mass_kg=4500.0, rolling_coefficient=0.0, drag_area_m2=0.0)
    >>> round(road_load(truck, air_density_kg_m3=1.2, speed_km_h=50.0, grade_pct=5.0).grade_n, 1)
    2203.7
    """

def rolling_coefficient_at(*, speed_km_h: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Rolling coefficient of a car on a paved road by its speed.
    Source: Mannering and Washburn, rolling resistance.
    """

def shift_at_output_speed(before: Driveline, after: Driveline, *, output_rpm: ArrayLike) -> Any:
    """
    The shift point when the controller keeps its output-shaft speed, as it does while it is not reprogrammed.
    Source: follows from the definitions (speeds of a driveline).

    >>> from trainwright import Reading
    >>> before = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
    >>> after = Driveline(axle_ratio=4.27, circumference_mm=Reading(value=2438.0, u=0.0))
    >>> round(shift_at_output_speed(before, after, output_rpm=1500.0).after_km_h, 2)
    51.39
    """

def shift_at_road_speed(before: Driveline, after: Driveline, *, road_km_h: ArrayLike) -> Any:
    """
    The shift point when the schedule keeps its road speed, as it does once tire and axle are programmed.
    """

def speedometer(programmed: Driveline, fitted: Driveline, *, true_km_h: float) -> Speedometer:
    """
    Speed shown at a true road speed, for a unit that reads the output shaft and divides by what is programmed.
    Source: follows from the definitions (speedometer).

    >>> from trainwright import Reading
    >>> old = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
    >>> new = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2703.5, u=16.8))
    >>> round(speedometer(old, new, true_km_h=100.0).shown_km_h.value, 2)
    90.18
    """

def standard_air(*, altitude_m: ArrayLike) -> Any:
    """
    Air of the standard atmosphere at an altitude of −2000 to 11019 m. Arrays give a dictionary of arrays. Source: ISO 2533.

    >>> round(standard_air(altitude_m=1000.0).density_kg_m3, 4)
    1.1117
    """
