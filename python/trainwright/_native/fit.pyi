"""
Round fits: clearance cold and hot, pressed bushings, ISO 286 limits, bushing load and leakage.
"""

from . import Explanation
from .judge import Budget, Judgment, Limits, Reading, Rule
from .record import Family
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["BushingLoad", "Clearance", "Elastic", "Gap", "GapLeak", "HeldBushing", "IsoFit", "IsoLimits", "LeakRatio", "MeasuredClearance", "Metal", "PressJoint", "Pressed", "PressedBushing", "RecordedFit", "Retention", "RunningClearance", "Size20", "WarmClearance", "WarmPart", "WarmReading", "Warmth", "WornGap", "bushing_load", "clearance", "eccentricity_factor", "fit_of", "fits_of", "iso_fit", "iso_limits", "iso_size", "measured", "toleranced", "warm_clearance"]

@final
class BushingLoad:
    """
    Load and speed of a plain bushing.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, unit_load_mpa: float, sliding_m_s: float, pv_mpa_m_s: float) -> BushingLoad: ...
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
    def pv_mpa_m_s(self, /) -> float:
        """
        Product of the two, MPa·m/s.
        """
    @property
    def sliding_m_s(self, /) -> float:
        """
        Speed at which the surfaces slide, m/s.
        """
    @property
    def unit_load_mpa(self, /) -> float:
        """
        Load over the projected area, MPa.
        """

@final
class Clearance:
    """
    Clearance of two parts by their tolerances.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, shaft_mm: Limits, bore_mm: Limits, clearance_mm: Limits, limit_mm: float, fit_class: str) -> Clearance: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bore_mm(self, /) -> Limits:
        """
        Diameter of the bore, mm.
        """
    @property
    def clearance_mm(self, /) -> Limits:
        """
        Least and greatest clearance, mm; negative is interference.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def fit_class(self, /) -> str:
        """
        "blocked", "may bind", "inside", "may be loose" or "loose".
        """
    @property
    def limit_mm(self, /) -> float:
        """
        Greatest clearance in service, mm; infinite where none is stated.
        """
    @property
    def shaft_mm(self, /) -> Limits:
        """
        Diameter of the shaft, mm.
        """

@final
class Elastic:
    """
    Elastic constants of a metal.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, young_mpa: float, poisson: float) -> Elastic: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def poisson(self, /) -> float:
        """
        Poisson's ratio.
        """
    @property
    def young_mpa(self, /) -> float:
        """
        Modulus of elasticity, MPa.
        """

@final
class Gap:
    """
    The gap between a shaft and a bore.

    >>> gap = Gap(diameter_mm=40, clearance_mm=0.1, length_mm=20, eccentricity=0)
    >>> round(gap.gap_leak(pressure_drop_kpa=300, viscosity_mpa_s=10, density_kg_m3=800).flow_l_min, 4)
    0.1178
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, diameter_mm: float, clearance_mm: float, length_mm: float, eccentricity: float) -> Gap: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def clearance_mm(self, /) -> float:
        """
        Clearance, diametral, mm.
        """
    @property
    def diameter_mm(self, /) -> float:
        """
        Diameter, mm.
        """
    @property
    def eccentricity(self, /) -> float:
        """
        Displacement of the axes over the radial clearance, 0 to 1.
        """
    def gap_leak(self, /, *, pressure_drop_kpa: ArrayLike, viscosity_mpa_s: ArrayLike, density_kg_m3: ArrayLike) -> Any:
        """
        Flow of oil along the gap, laminar: pressure drop in kPa, dynamic viscosity in mPa·s and density in kg/m³ at the
        temperature of the gap. Arrays give a dictionary of arrays. Source: Bansal, laminar flow between parallel plates.
        """
    @property
    def length_mm(self, /) -> float:
        """
        Length along which the oil flows, mm.
        """

@final
class GapLeak:
    """
    Flow along a gap.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, radial_clearance_mm: float, eccentricity_factor: float, flow_l_min: float, speed_m_s: float, reynolds: float) -> GapLeak: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def eccentricity_factor(self, /) -> float:
        """
        How much more than centered.
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
    def radial_clearance_mm(self, /) -> float:
        """
        Radial clearance, mm.
        """
    @property
    def reynolds(self, /) -> float:
        """
        Reynolds number of the gap.
        """
    @property
    def speed_m_s(self, /) -> float:
        """
        Mean speed of the oil along the gap, m/s.
        """

@final
class HeldBushing:
    """
    What a bushing holds by friction.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, pressed: Pressed, force_n: Reading, torque_nm: Reading, budget: Budget) -> HeldBushing: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where the uncertainty of the torque comes from: housing bore, outside of the bushing, expansion of the housing, of
        the shell, friction.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def force_n(self, /) -> Reading:
        """
        Axial force at which it moves, N.
        """
    @property
    def pressed(self, /) -> Pressed:
        """
        The seat at this temperature.
        """
    @property
    def torque_nm(self, /) -> Reading:
        """
        Torque at which it turns, N·m.
        """

@final
class IsoFit:
    """
    A hole and a shaft of one nominal size.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, hole: IsoLimits, shaft: IsoLimits, clearance: Clearance) -> IsoFit: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def clearance(self, /) -> Clearance:
        """
        Their clearance, without a service limit.
        """
    @property
    def hole(self, /) -> IsoLimits:
        """
        The hole.
        """
    @property
    def shaft(self, /) -> IsoLimits:
        """
        The shaft.
        """

@final
class IsoLimits:
    """
    Limits of a size by its tolerance class.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, nominal_mm: float, lower_deviation_mm: float, upper_deviation_mm: float, tolerance_mm: float, size_mm: Limits, grade: int, hole: bool) -> IsoLimits: ...
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
    def grade(self, /) -> int:
        """
        Grade, 5 to 11.
        """
    @property
    def hole(self, /) -> bool:
        """
        Whether it is a hole: a capital letter.
        """
    @property
    def lower_deviation_mm(self, /) -> float:
        """
        Lower deviation, EI or ei, mm.
        """
    @property
    def nominal_mm(self, /) -> float:
        """
        Nominal size, mm.
        """
    @property
    def size_mm(self, /) -> Limits:
        """
        Least and greatest size, mm.
        """
    @property
    def tolerance_mm(self, /) -> float:
        """
        Width of the tolerance, IT, mm.
        """
    @property
    def upper_deviation_mm(self, /) -> float:
        """
        Upper deviation, ES or es, mm.
        """

@final
class LeakRatio:
    """
    How much more a worn fit leaks.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, ratio: float, first_order_u: float, coverage: float, lower: float, upper: float) -> LeakRatio: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def coverage(self, /) -> float:
        """
        Stated probability of the interval.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def first_order_u(self, /) -> float:
        """
        Its standard uncertainty to first order; where it is above a tenth of the ratio, the interval says more.
        """
    @property
    def lower(self, /) -> float:
        """
        Lower end of the interval.
        """
    @property
    def ratio(self, /) -> float:
        """
        Leak now over leak when new, at the best estimates.
        """
    @property
    def upper(self, /) -> float:
        """
        Upper end of the interval.
        """

@final
class MeasuredClearance:
    """
    Clearance of two parts known with their uncertainty.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, shaft_mm: Reading, bore_mm: Reading, clearance_mm: Reading, chance_tight: float, chance_loose: float, judgment: Judgment, budget: Budget) -> MeasuredClearance: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bore_mm(self, /) -> Reading:
        """
        Diameter of the bore, mm.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where its uncertainty comes from: shaft, bore, in this order.
        """
    @property
    def chance_loose(self, /) -> float:
        """
        Chance that the clearance is more than the greatest wanted.
        """
    @property
    def chance_tight(self, /) -> float:
        """
        Chance that the clearance is less than the least wanted.
        """
    @property
    def clearance_mm(self, /) -> Reading:
        """
        Clearance, mm; negative is interference.
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
        The clearance against the clearance wanted.
        """
    @property
    def shaft_mm(self, /) -> Reading:
        """
        Diameter of the shaft, mm.
        """

@final
class Metal:
    """
    A metal: elastic constants and expansion.

    >>> aluminum = Metal(elastic=Elastic(young_mpa=practice.ALUMINUM_YOUNG_MPA, poisson=practice.ALUMINUM_POISSON),
    ...                  expansion_per_k=Reading.rectangular(22.5e-6, half_width=1.5e-6))
    >>> aluminum.elastic.young_mpa
    71000.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, elastic: Elastic, expansion_per_k: Reading) -> Metal: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def elastic(self, /) -> Elastic:
        """
        Elastic constants.
        """
    @property
    def expansion_per_k(self, /) -> Reading:
        """
        Linear expansion, 1/K.
        """

@final
class PressJoint:
    """
    Two round parts pressed together.

    >>> steel = Elastic(young_mpa=206000, poisson=0.29)
    >>> hub = PressJoint(inside_mm=0, interface_mm=100, outside_mm=175, inner=steel, outer=steel)
    >>> round(hub.pressed(interference_mm=0.1).pressure_mpa, 2)
    69.37
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, inside_mm: float, interface_mm: float, outside_mm: float, inner: Elastic, outer: Elastic) -> PressJoint: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def inner(self, /) -> Elastic:
        """
        The inner part.
        """
    @property
    def inside_mm(self, /) -> float:
        """
        Bore of the inner part, mm; 0 where it is solid.
        """
    @property
    def interface_mm(self, /) -> float:
        """
        Diameter where they meet, mm.
        """
    @property
    def outer(self, /) -> Elastic:
        """
        The outer part.
        """
    @property
    def outside_mm(self, /) -> float:
        """
        Outside of the outer part, mm; infinite where it is a thick body.
        """
    def pressed(self, /, *, interference_mm: ArrayLike) -> Any:
        """
        What a diametral interference, mm, does to both parts (Lamé). Arrays give a dictionary of arrays.
        Source: Shigley, chapter 3, press and shrink fits; Roark, thick-walled cylinders.
        """
    def retention(self, /, *, pressure_mpa: float, length_mm: float, friction: float) -> Retention:
        """
        Axial force and torque at which the pressed part begins to move: pressure in MPa, length of contact in mm.
        Source: Shigley, chapter 7, press fits.
        """

@final
class Pressed:
    """
    A press fit under its interference. The hoop stresses are for you to hold against the yield stress of each metal.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, interference_mm: float, pressure_mpa: float, bore_closure_mm: float, outside_growth_mm: float, inner_hoop_mpa: float, outer_hoop_mpa: float) -> Pressed: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bore_closure_mm(self, /) -> float:
        """
        How much the bore of the inner part closes, mm.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def inner_hoop_mpa(self, /) -> float:
        """
        Greatest hoop stress of the inner part, MPa: at its bore, negative (compression).
        """
    @property
    def interference_mm(self, /) -> float:
        """
        Interference, diametral, mm; negative where the parts are free of each other by so much.
        """
    @property
    def outer_hoop_mpa(self, /) -> float:
        """
        Greatest hoop stress of the outer part, MPa: where the parts meet, positive (tension).
        """
    @property
    def outside_growth_mm(self, /) -> float:
        """
        How much the outside grows, mm.
        """
    @property
    def pressure_mpa(self, /) -> float:
        """
        Pressure where the parts meet, MPa; 0 while they are free.
        """

@final
class PressedBushing:
    """
    A bushing pressed in a housing. Sizes at 20 °C.

    >>> metal = lambda young, poisson, alpha: Metal(elastic=Elastic(young_mpa=young, poisson=poisson),
    ...                                             expansion_per_k=Reading.exact(alpha))
    >>> bushing = PressedBushing(housing_bore_mm=Reading.exact(43.0125), outside_mm=Reading.exact(43.0775), wall_mm=1.5,
    ...     bore_mm=Reading.exact(40.035), housing_outside_mm=74, housing=metal(71e3, 0.33, 23e-6),
    ...     shell=metal(206e3, 0.29, 11.5e-6))
    >>> round(bushing.bushing_at(temp_c=120).interference_mm, 4), round(bushing.let_go_c().value, 1)
    (0.0156, 151.6)
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, housing_bore_mm: Reading, outside_mm: Reading, wall_mm: float, bore_mm: Reading, housing_outside_mm: float, housing: Metal, shell: Metal) -> PressedBushing: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bore_mm(self, /) -> Reading:
        """
        Bore of the bushing in place, mm.
        """
    def bushing_at(self, /, *, temp_c: ArrayLike) -> Any:
        """
        The seat at a temperature, °C; an interference of 0 or less means that the bushing has let go. Arrays give a dictionary
        of arrays. Source: Shigley, chapter 3, press and shrink fits, with the thermal change of the interference.
        """
    def bushing_held(self, /, *, temp_c: float, length_mm: float, friction: Reading) -> HeldBushing:
        """
        Torque and axial force at which the bushing moves, at a temperature, °C, for a length of seat, mm.
        Source: Shigley, chapter 7, press fits.
        """
    @property
    def housing(self, /) -> Metal:
        """
        Metal of the housing.
        """
    @property
    def housing_bore_mm(self, /) -> Reading:
        """
        Bore of the housing, mm.
        """
    @property
    def housing_outside_mm(self, /) -> float:
        """
        Outside of the housing around it, mm; infinite for a thick body.
        """
    def let_go_c(self, /) -> Reading:
        """
        Temperature, °C, at which the bushing has no interference left. Source: its interference set to 0.
        """
    @property
    def outside_mm(self, /) -> Reading:
        """
        Outside of the bushing before it is pressed in, mm.
        """
    def running_clearance(self, /, *, shaft: WarmPart, warmth: Warmth, wanted_mm: Limits, rule: Rule) -> RunningClearance:
        """
        Running clearance of a shaft at temperature, mm, judged against the clearance wanted.
        Source: free size of the bushing less the closure of its bore (Lamé).
        """
    @property
    def shell(self, /) -> Metal:
        """
        Metal of the bushing's shell.
        """
    @property
    def wall_mm(self, /) -> float:
        """
        Wall of the bushing, mm.
        """

@final
class RecordedFit:
    """
    A fit of a family: its parts, their sizes in each variant, its limit and what the record knows of its metals.
    """
    def __repr__(self, /) -> str: ...
    @property
    def bore(self, /) -> str:
        """
        The part around it.
        """
    @property
    def bore_expansion_per_k(self, /) -> Reading | None:
        """
        Linear expansion of the part with the bore, 1/K, where the record names its metal; a pressed bushing has its own.
        """
    def bore_mm(self, /, variant: str) -> Limits:
        """
        Diameter of the bore of a variant, mm.
        """
    @property
    def bore_size(self, /) -> str | None:
        """
        What the diameter of the bore is called where it is measured, where the record says it.
        """
    def bushing(self, /, *, bore_mm: Reading, spread: str) -> PressedBushing:
        """
        The pressed bushing: its bore in place, mm, as measured or from its tolerance; housing bore and outside are taken from
        their tolerances with the spread that you name. Source: the record.
        """
    def clearance(self, /, *, shaft_of: str, bore_of: str) -> Clearance:
        """
        Clearance by the tolerances, the shaft of one variant in the bore of another. Source: ISO 286-1:2010, clause 3.3.
        """
    @property
    def has_bushing(self, /) -> bool:
        """
        Whether a bushing is pressed in the housing.
        """
    @property
    def kind(self, /) -> str:
        """
        What it is for: "running", "locating" or "press".
        """
    @property
    def length_mm(self, /) -> float | None:
        """
        Length over which shaft and bore meet, mm, where the record states it.
        """
    @property
    def limit_mm(self, /) -> float:
        """
        Greatest clearance in service, mm.
        """
    @property
    def name(self, /) -> str:
        """
        Name of the fit.
        """
    @property
    def press_friction(self, /) -> Reading | None:
        """
        Friction of the seat of the bushing, where the record states it.
        """
    @property
    def shaft(self, /) -> str:
        """
        The part inside.
        """
    @property
    def shaft_expansion_per_k(self, /) -> Reading | None:
        """
        Linear expansion of the shaft, 1/K, where the record names its metal.
        """
    def shaft_mm(self, /, variant: str) -> Limits:
        """
        Diameter of the shaft of a variant, mm.
        """
    @property
    def shaft_size(self, /) -> str | None:
        """
        What the diameter of the shaft is called where it is measured, where the record says it.
        """

@final
class Retention:
    """
    What a press fit holds by friction.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, force_n: float, torque_nm: float) -> Retention: ...
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
    def force_n(self, /) -> float:
        """
        Axial force, N.
        """
    @property
    def torque_nm(self, /) -> float:
        """
        Torque, N·m.
        """

@final
class RunningClearance:
    """
    Running clearance in a pressed bushing.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, pressed_20c: Pressed, pressed: Pressed, clearance: WarmClearance, as_housing_mm: float, as_shell_mm: float) -> RunningClearance: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def as_housing_mm(self, /) -> float:
        """
        What the clearance would be if the bore grew as the housing does, mm: too much.
        """
    @property
    def as_shell_mm(self, /) -> float:
        """
        What it would be if the bore grew as the free shell does, mm: too little while the seat still presses.
        """
    @property
    def clearance(self, /) -> WarmClearance:
        """
        Clearance at 20 °C and at temperature, judged. The budget lists shaft, bore, housing bore, outside of the bushing,
        expansion of the shaft, of the housing, of the shell, temperature, and how much warmer the shaft is.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def pressed(self, /) -> Pressed:
        """
        The seat at temperature.
        """
    @property
    def pressed_20c(self, /) -> Pressed:
        """
        The seat at 20 °C.
        """

@final
class Size20:
    """
    A size corrected to 20 °C.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, size_mm: Reading, correction_mm: float, budget: Budget) -> Size20: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where the uncertainty comes from: reading, expansion and temperature of the part, of the instrument.
        """
    @property
    def correction_mm(self, /) -> float:
        """
        What was added to the reading, mm; negative for a warm part.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def size_mm(self, /) -> Reading:
        """
        Size at 20 °C, mm.
        """

@final
class WarmClearance:
    """
    A clearance at temperature.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, clearance_20c_mm: float, change_mm: float, at_temperature: MeasuredClearance) -> WarmClearance: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def at_temperature(self, /) -> MeasuredClearance:
        """
        Sizes and clearance at temperature, judged. The budget lists shaft, bore, expansion of the shaft, expansion of the
        bore's part, temperature, and how much warmer the shaft is.
        """
    @property
    def change_mm(self, /) -> float:
        """
        What the temperature adds, mm; negative where the fit closes.
        """
    @property
    def clearance_20c_mm(self, /) -> float:
        """
        Clearance at 20 °C, mm.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """

@final
class WarmPart:
    """
    A part: its size at 20 °C and its expansion.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, size_mm: Reading, expansion_per_k: Reading) -> WarmPart: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def expansion_per_k(self, /) -> Reading:
        """
        Linear expansion, 1/K.
        """
    @property
    def size_mm(self, /) -> Reading:
        """
        Diameter at 20 °C, mm.
        """

@final
class WarmReading:
    """
    What an instrument shows, at which temperatures.

    >>> steel = Reading.rectangular(11.5e-6, half_width=0.5e-6)
    >>> warm = WarmReading(shown_mm=Reading(value=44.005, u=0.002), part_expansion_per_k=steel,
    ...                    part_temp_c=Reading.rectangular(30, half_width=3), instrument_expansion_per_k=steel,
    ...                    instrument_temp_c=Reading.exact(20))
    >>> round(warm.size_20c().correction_mm, 4)
    -0.0051
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, shown_mm: Reading, part_expansion_per_k: Reading, part_temp_c: Reading, instrument_expansion_per_k: Reading, instrument_temp_c: Reading) -> WarmReading: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def instrument_expansion_per_k(self, /) -> Reading:
        """
        Linear expansion of the instrument, 1/K.
        """
    @property
    def instrument_temp_c(self, /) -> Reading:
        """
        Temperature of the instrument, °C.
        """
    @property
    def part_expansion_per_k(self, /) -> Reading:
        """
        Linear expansion of the part, 1/K.
        """
    @property
    def part_temp_c(self, /) -> Reading:
        """
        Temperature of the part, °C.
        """
    @property
    def shown_mm(self, /) -> Reading:
        """
        What the instrument shows, mm.
        """
    def size_20c(self, /) -> Size20:
        """
        Size at 20 °C, mm, with the correction that was made and the uncertainty that the temperatures leave.
        Source: ISO 1 and JCGM 100:2008, equation H.2.
        """

@final
class Warmth:
    """
    Temperature of a fit.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, temp_c: Reading, shaft_warmer_k: Reading = ...) -> Warmth: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def shaft_warmer_k(self, /) -> Reading:
        """
        How much warmer the shaft is, K; negative where it is colder.
        """
    @property
    def temp_c(self, /) -> Reading:
        """
        Of the part with the bore, °C.
        """

@final
class WornGap:
    """
    A fit when new and when worn: same length, pressure and oil.

    >>> worn = WornGap(new_mm=Reading(value=0.07, u=0.002), worn_mm=Reading(value=0.14, u=0.0045),
    ...                new_eccentricity=1, worn_eccentricity=1)
    >>> leak = worn.leak_ratio(coverage=0.95)
    >>> print(round(leak.ratio, 2), round(leak.lower, 2), round(leak.upper, 2))
    8.0 6.2 10.29
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, new_mm: Reading, worn_mm: Reading, new_eccentricity: float, worn_eccentricity: float) -> WornGap: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def chance_leaks_more(self, /, *, times: float) -> float:
        """
        Chance that the worn fit leaks more than so many times as much as when new.
        Source: the leak rises with the ratio of the clearances.
        """
    def leak_ratio(self, /, *, coverage: float) -> LeakRatio:
        """
        How many times more the worn fit leaks, with its coverage interval.
        Source: the cube law of the laminar gap; Fieller's interval for a ratio, cubed.
        """
    @property
    def new_eccentricity(self, /) -> float:
        """
        Eccentricity when new, 0 to 1.
        """
    @property
    def new_mm(self, /) -> Reading:
        """
        Clearance when new, diametral, mm.
        """
    @property
    def worn_eccentricity(self, /) -> float:
        """
        Eccentricity now, 0 to 1.
        """
    @property
    def worn_mm(self, /) -> Reading:
        """
        Clearance now, mm.
        """

def bushing_load(*, force_n: ArrayLike, diameter_mm: ArrayLike, length_mm: ArrayLike, speed_rpm: ArrayLike) -> Any:
    """
    Unit load, sliding speed and their product for a plain bushing: force in N, sizes in mm, speed in 1/min of the shaft
    against the bushing. Catalogue limits of pv are for dry or oil-soaked bushings. Arrays give a dictionary of arrays.
    Source: Shigley, chapter 12, boundary-lubricated bearings.

    >>> round(bushing_load(force_n=378.1, diameter_mm=19.05, length_mm=19.05, speed_rpm=200).unit_load_mpa, 3)
    1.042
    """

def clearance(*, shaft_mm: Limits, bore_mm: Limits, limit_mm: float) -> Clearance:
    """
    Least and greatest clearance of a shaft in a bore, mm, diametral, and its class against the service limit.
    Source: ISO 286-1:2010, clause 3.3.

    >>> shaft_mm, bore_mm = Limits(lower=43.975, upper=44.000), Limits(lower=44.390, upper=44.425)
    >>> fit = clearance(shaft_mm=shaft_mm, bore_mm=bore_mm, limit_mm=0.14)
    >>> print(fit.fit_class, round(fit.clearance_mm.lower, 3), round(fit.clearance_mm.upper, 3))
    loose 0.39 0.45
    """

def eccentricity_factor(*, eccentricity: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    How much more an off-center shaft lets through than a centered one; eccentricity 0 to 1.
    Source: follows from the definitions (mean of (1 + ε cos φ)³ over a turn).

    >>> eccentricity_factor(eccentricity=1)
    2.5
    """

def fit_of(family: Family, name: str) -> RecordedFit:
    """
    The fit of this name in a family.
    """

def fits_of(family: Family) -> list[RecordedFit]:
    """
    Every fit of a family, in the order of the record.
    """

def iso_fit(text: str) -> IsoFit:
    """
    Reads a fit, hole first, and gives both sizes with their clearance. Source: tables of ISO 286-1 and -2:2010.

    >>> fit = iso_fit("25H7/f7")
    >>> round(fit.clearance.clearance_mm.lower, 3), round(fit.clearance.clearance_mm.upper, 3)
    (0.02, 0.062)
    """

def iso_limits(zone: str, *, nominal_mm: float) -> IsoLimits:
    """
    Limits of a nominal size, mm, with a tolerance class: "H7" for a hole, "f7" for a shaft.
    Source: tables of ISO 286-1 and -2:2010.

    >>> journal = iso_limits("f7", nominal_mm=25)
    >>> journal.upper_deviation_mm, journal.lower_deviation_mm
    (-0.02, -0.041)
    """

def iso_size(text: str) -> IsoLimits:
    """
    Reads a size with its tolerance class. Source: tables of ISO 286-1 and -2:2010.

    >>> iso_size("25H7").size_mm
    Limits(lower=25.0, upper=25.021)
    """

def measured(*, shaft_mm: Reading, bore_mm: Reading, wanted_mm: Limits, rule: Rule) -> MeasuredClearance:
    """
    Clearance of two parts known with their uncertainty, mm, judged against the clearance wanted.
    Source: JCGM 100:2008, equation 10.

    >>> fit = measured(shaft_mm=Reading(value=43.988, u=0.002), bore_mm=Reading(value=44.407, u=0.004),
    ...                wanted_mm=Limits(lower=0, upper=0.14), rule=judge.Rule.conformance(0.95))
    >>> print(round(fit.clearance_mm.value, 3), round(fit.clearance_mm.u, 4), fit.judgment.verdict)
    0.419 0.0045 NO-GO
    """

def toleranced(*, size_mm: Limits, spread: str) -> Reading:
    """
    A part that was not measured, as a reading, mm: the middle of its tolerance, with the tolerance as its uncertainty.
    `spread` is "rectangular" (u = a/√3) or "normal 3 sigma" (u = a/3). Source: JCGM 100:2008, 4.3.7 and 4.3.5.

    >>> round(toleranced(size_mm=Limits(lower=44.040, upper=44.075), spread="rectangular").u, 4)
    0.0101
    """

def warm_clearance(*, shaft: WarmPart, bore: WarmPart, warmth: Warmth, wanted_mm: Limits, rule: Rule) -> WarmClearance:
    """
    Clearance of two free parts at temperature, mm, each with its own expansion, judged against the clearance wanted.
    Source: Shigley, chapter 3, thermal expansion; reference temperature ISO 1.

    >>> part = lambda size, alpha: WarmPart(size_mm=Reading.exact(size), expansion_per_k=Reading.exact(alpha))
    >>> fit = warm_clearance(shaft=part(60, 11.5e-6), bore=part(60, 23e-6), warmth=Warmth(temp_c=Reading.exact(100)),
    ...                      wanted_mm=Limits(lower=0), rule=judge.Rule.simple_acceptance())
    >>> round(fit.change_mm, 4)
    0.0552
    """
