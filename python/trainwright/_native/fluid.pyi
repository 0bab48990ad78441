"""
Transmission fluid: density, viscosity, mixing, level and fill. Hot fluid burns.
"""

from . import Explanation
from .judge import Budget, Judgment, Reading, Rule
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["Adjustment", "Fill", "Fluid", "FrictionPortion", "LevelAt", "LevelCheck", "Portion", "PourVolumes", "Sump", "ViscosityIndex", "ViscosityLine", "ViscosityPortion", "VolumeCorrection", "blend", "blend_friction", "blend_viscosity", "constant_area_level_mm", "correction_factor", "density_15c_from_observed", "dynamic_viscosity", "expansion_from_15c", "growth_ml", "old_share", "tilt_shift_mm", "viscosity_100c_for_index", "viscosity_index", "volume_correction", "volume_correction_60f"]

@final
class Adjustment:
    """
    What to add or drain, with what it was computed from.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, present_ml: float, right_ml: float, add_now_ml: Reading, excess_ml: Judgment, budget: Budget, chance_in_window: float) -> Adjustment: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def add_now_ml(self, /) -> Reading:
        """
        Add this now, at this temperature, to be right; drain it where negative.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where the uncertainty of the excess comes from: temperature, level, area, in this order.
        """
    @property
    def chance_in_window(self, /) -> float:
        """
        Probability that the temperature lies in the check window.
        """
    @property
    def excess_ml(self, /) -> Judgment:
        """
        Too much (negative: too little) at the reference temperature, judged against what the check window would leave.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def present_ml(self, /) -> float:
        """
        All the fluid there is now, at this temperature.
        """
    @property
    def right_ml(self, /) -> float:
        """
        All the fluid there should be now, at this temperature.
        """

@final
class Fill:
    """
    What a record states of the fill of a unit. All of `dry_l` grows with temperature, into the sump's free area.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, sump: Sump, dry_l: float, service_l: float, cooler_and_lines_l: float, drainback_off_l: float, check_low_c: float, check_high_c: float, check_reference_c: float, pickup_uncovers_mm: float, gear_dips_mm: float) -> Fill: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def adjust_fill(self, /, fluid: Fluid, check: LevelCheck, rule: Rule) -> Adjustment:
        """
        Volume to add or drain now, with its uncertainty, and the fill judged against the check window. Hot fluid burns.
        Source: JCGM 100:2008, clause 5.1.2, equation 10, uncorrelated inputs.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def check_high_c(self, /) -> float:
        """
        Greatest temperature of the level check.
        """
    @property
    def check_low_c(self, /) -> float:
        """
        Least temperature of the level check.
        """
    @property
    def check_reference_c(self, /) -> float:
        """
        Temperature at which a right fill stands at the edge.
        """
    @property
    def cooler_and_lines_l(self, /) -> float:
        """
        Part that stands in cooler and lines.
        """
    @property
    def drainback_off_l(self, /) -> float:
        """
        Part that runs back into the sump when the engine stops.
        """
    @property
    def dry_l(self, /) -> float:
        """
        Whole fill, filled to the edge at the reference temperature; cooler and lines included.
        """
    def engine_off_level_mm(self, /, *, running_level_mm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Level with the engine stopped, when the drain-back has come into the sump.
        Source: follows from the definitions (volumes add).
        """
    def gear_dips_at_c(self, /, fluid: Fluid, *, excess_ml: ArrayLike | None = None, out: NDArray[float64] | None = None) -> Any:
        """
        Temperature above which a rotating part dips.
        Source: follows from the definitions (fluid.level_at solved for t).
        """
    @property
    def gear_dips_mm(self, /) -> float:
        """
        Level above which a rotating part dips.
        """
    def level_at(self, /, fluid: Fluid, *, temp_c: ArrayLike, excess_ml: ArrayLike | None = None) -> Any:
        """
        Level at a temperature; `excess_ml` at the reference temperature is 0 for a right fill. Arrays give a dictionary of
        arrays.
        Source: follows from the definitions (all the growth goes into the sump's free area).
        """
    def loss_to_pickup_ml(self, /, *, level_mm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Volume that may be lost, from this level, until the pickup draws air.
        Source: follows from the definitions (difference of volumes).
        """
    @property
    def pickup_uncovers_mm(self, /) -> float:
        """
        Level below which the pickup draws air.
        """
    def pour_volumes(self, /, fluid: Fluid, *, can_c: float) -> PourVolumes:
        """
        Volumes to pour for a dry, a service and a cooler fill, at the temperature of the fluid in the can.
        Source: follows from the definitions (definition of cubic expansion).
        """
    @property
    def service_l(self, /) -> float:
        """
        Part that a drain takes.
        """
    @property
    def sump(self, /) -> Sump:
        """
        Free area of the sump.
        """

@final
class Fluid:
    """
    What a record states of a fluid.

    >>> alder = Fluid(density_15c_kg_m3=843.0, expansion_per_k=7.8e-4, viscosity_40c_mm2_s=27.4, viscosity_100c_mm2_s=5.6)
    >>> round(alder.volume_factor(temp_c=47.0), 5)
    1.02496
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, density_15c_kg_m3: float, expansion_per_k: float, viscosity_40c_mm2_s: float, viscosity_100c_mm2_s: float) -> Fluid: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def density(self, /, *, temp_c: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Density at a temperature, kg/m³.
        """
    @property
    def density_15c_kg_m3(self, /) -> float:
        """
        Density at 15 °C.
        """
    @property
    def expansion_per_k(self, /) -> float:
        """
        Stated mean coefficient of volume from 15 °C; 0 where none is stated: the lubricating-oil group then gives it.
        """
    def temp_for_volume_factor(self, /, *, factor: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Temperature at which the volume is this many times the volume at 15 °C.
        """
    @property
    def viscosity_100c_mm2_s(self, /) -> float:
        """
        Kinematic viscosity at 100 °C.
        """
    @property
    def viscosity_40c_mm2_s(self, /) -> float:
        """
        Kinematic viscosity at 40 °C.
        """
    def viscosity_line(self, /) -> ViscosityLine:
        """
        The line through the viscosities at 40 °C and 100 °C.
        """
    def volume_factor(self, /, *, temp_c: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Volume at a temperature, −50 to 150 °C, over the volume at 15 °C.
        Source: follows from the definitions (mean coefficient of cubic expansion).
        """

@final
class FrictionPortion:
    """
    A volume of a fluid of known friction.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, friction: float, volume_ml: float) -> FrictionPortion: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def friction(self, /) -> float:
        """
        Coefficient of friction of the plates in this fluid alone.
        """
    @property
    def volume_ml(self, /) -> float:
        """
        Its volume.
        """

@final
class LevelAt:
    """
    Level at a temperature, with what it was computed from.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, total_ml: float, above_edge_ml: float, level_mm: float, constant_area_level_mm: float, gear_margin_mm: float, pickup_margin_mm: float) -> LevelAt: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def above_edge_ml(self, /) -> float:
        """
        Part of it above the overflow edge, negative below.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def constant_area_level_mm(self, /) -> float:
        """
        Level that a sump of constant area would show: the usual shortcut, to see its error.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def gear_margin_mm(self, /) -> float:
        """
        Left until the rotating part dips.
        """
    @property
    def level_mm(self, /) -> float:
        """
        Level above the overflow edge.
        """
    @property
    def pickup_margin_mm(self, /) -> float:
        """
        Left until the pickup draws air.
        """
    @property
    def total_ml(self, /) -> float:
        """
        All the fluid at this temperature.
        """

@final
class LevelCheck:
    """
    What was read at a level check, engine idling, vehicle level.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, temp_c: Reading, level_mm: Reading, area_scale: Reading) -> LevelCheck: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def area_scale(self, /) -> Reading:
        """
        True free area over that of the table: 1 with its standard uncertainty.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def level_mm(self, /) -> Reading:
        """
        Level above the overflow edge, mm; 0 when it just runs over.
        """
    @property
    def temp_c(self, /) -> Reading:
        """
        Temperature of the fluid, °C.
        """

@final
class Portion:
    """
    A volume of one fluid in a mixture.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, fluid: Fluid, volume_ml: float) -> Portion: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def fluid(self, /) -> Fluid:
        """
        The fluid.
        """
    @property
    def volume_ml(self, /) -> float:
        """
        Its volume; all portions at one temperature.
        """

@final
class PourVolumes:
    """
    Volumes to pour, at the temperature of the fluid in the can.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, dry_ml: float, service_ml: float, cooler_ml: float, old_share: float) -> PourVolumes: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def cooler_ml(self, /) -> float:
        """
        More of it where cooler and lines were emptied too.
        """
    @property
    def dry_ml(self, /) -> float:
        """
        Into an empty unit.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def old_share(self, /) -> float:
        """
        Share of old fluid that a service leaves.
        """
    @property
    def service_ml(self, /) -> float:
        """
        After a drain.
        """

@final
class Sump:
    """
    Free area of the sump against height above the overflow edge, linear between rows.

    >>> sump = Sump(height_mm=[-10.0, 0.0, 10.0], free_area_cm2=[80.0, 100.0, 200.0])
    >>> sump.level_for(volume_ml=150.0)
    10.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, height_mm: Sequence[float], free_area_cm2: Sequence[float]) -> Sump: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def free_area_at(self, /, *, height_mm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Free area at a height, cm².
        """
    @property
    def free_area_cm2(self, /) -> list[float]:
        """
        Free area at each height.
        """
    @property
    def height_mm(self, /) -> list[float]:
        """
        Heights above the overflow edge.
        """
    def level_for(self, /, *, volume_ml: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Level at which this volume stands between it and the overflow edge, mm.
        """
    def volume_to(self, /, *, height_mm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Volume between the overflow edge and a height, mL, negative below the edge.
        Source: follows from the definitions (volume of a prismatoid, exact for a linear area).
        """

@final
class ViscosityIndex:
    """
    Viscosity index, with what it was computed from.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, zero_40c_mm2_s: float, hundred_40c_mm2_s: float, index: float, reported: float) -> ViscosityIndex: ...
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
    def hundred_40c_mm2_s(self, /) -> float:
        """
        H: viscosity at 40 °C of the oil of index 100 that is as thick at 100 °C.
        """
    @property
    def index(self, /) -> float:
        """
        Index before rounding.
        """
    @property
    def reported(self, /) -> float:
        """
        Index as the standard reports it.
        """
    @property
    def zero_40c_mm2_s(self, /) -> float:
        """
        L: viscosity at 40 °C of the oil of index 0 that is as thick at 100 °C.
        """

@final
class ViscosityLine:
    """
    Kinematic viscosity against temperature: lg lg(ν + added) = A − B lg T. Make one with its static methods.

    >>> line = ViscosityLine.through(first_c=40.0, first_mm2_s=32.0, second_c=100.0, second_mm2_s=5.4)
    >>> round(line.viscosity_at(temp_c=80.0), 6)
    8.533215
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, a: float, b: float, added_mm2_s: float = ...) -> ViscosityLine: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def a(self, /) -> float:
        """
        Height A.
        """
    @property
    def added_mm2_s(self, /) -> float:
        """
        Constant added to the viscosity: 0.7, or 0.8 in the older form.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def b(self, /) -> float:
        """
        Slope B.
        """
    def temp_for_viscosity(self, /, *, viscosity_mm2_s: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Temperature at which the fluid has this viscosity.
        """
    def thin_viscosity_at(self, /, *, temp_c: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Kinematic viscosity at a temperature, 0.21 mm²/s and more, on a line of the full form.
        Source: ASTM D341, viscosity-temperature equation, full form.
        """
    @staticmethod
    def through(*, first_c: float, first_mm2_s: float, second_c: float, second_mm2_s: float) -> ViscosityLine:
        """
        The line through two points, 2 mm²/s and more. Source: ASTM D341.
        """
    @staticmethod
    def through_older(*, first_c: float, first_mm2_s: float, second_c: float, second_mm2_s: float) -> ViscosityLine:
        """
        The line of the older form, with 0.8 in place of 0.7.
        """
    @staticmethod
    def through_thin(*, first_c: float, first_mm2_s: float, second_c: float, second_mm2_s: float) -> ViscosityLine:
        """
        The line of the full form, 0.21 mm²/s and more; read it with `thin_viscosity_at`.
        """
    def viscosity_at(self, /, *, temp_c: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Kinematic viscosity at a temperature, 2 mm²/s and more.
        Source: ASTM D341, viscosity-temperature equation, simple form.
        """

@final
class ViscosityPortion:
    """
    A volume of a fluid of known viscosity.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, viscosity_mm2_s: float, volume_ml: float) -> ViscosityPortion: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def viscosity_mm2_s(self, /) -> float:
        """
        Kinematic viscosity; all portions at one temperature.
        """
    @property
    def volume_ml(self, /) -> float:
        """
        Its volume.
        """

@final
class VolumeCorrection:
    """
    Answer of the volume correction, with what it was computed from.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, alpha_per_k: float, rise_k: float, factor: float, density_kg_m3: float) -> VolumeCorrection: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def alpha_per_k(self, /) -> float:
        """
        Coefficient of volume at base.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def density_kg_m3(self, /) -> float:
        """
        Density now.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def factor(self, /) -> float:
        """
        Volume at base over volume now, density now over density at base.
        """
    @property
    def rise_k(self, /) -> float:
        """
        Temperature above base.
        """

def blend(portions: Sequence[Portion]) -> Fluid:
    """
    The mixture of some portions, as a fluid. Its friction does not follow: see `blend_friction`.
    Source: follows from the definitions (volumes and masses add).
    """

def blend_friction(portions: Sequence[FrictionPortion]) -> float:
    """
    Friction of a single portion; refused for more, because friction does not mix.
    Source: common practice, no source (additives compete for the surface of the plate).
    """

def blend_viscosity(portions: Sequence[ViscosityPortion]) -> float:
    """
    Kinematic viscosity of a mixture, all at one temperature. Source: ASTM D7152.

    >>> thin, thick = (ViscosityPortion(viscosity_mm2_s=v, volume_ml=1.0) for v in (10.0, 100.0))
    >>> round(blend_viscosity([thin, thick]), 1)
    26.6
    """

def constant_area_level_mm(*, above_edge_ml: ArrayLike, area_cm2: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Level that a volume would reach in a sump with vertical sides.
    Source: follows from the definitions (vertical sides).

    >>> constant_area_level_mm(above_edge_ml=388.8, area_cm2=900.0)
    4.32
    """

def correction_factor(*, alpha_per_k: ArrayLike, rise_k: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Volume correction factor for a coefficient at base, whatever group of oils it comes from.

    >>> round(correction_factor(alpha_per_k=186.9696 / 992**2 + 0.4862 / 992, rise_k=21.0), 4)
    0.9857
    """

def density_15c_from_observed(*, density_kg_m3: ArrayLike, temp_c: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Density at 15 °C of a lubricating oil whose density was measured at another temperature.
    Source: API MPMS chapter 11.1-2004 / ASTM D1250-04, observed to base density.

    >>> round(density_15c_from_observed(density_kg_m3=820.0, temp_c=80.0), 3)
    861.329
    """

def dynamic_viscosity(*, kinematic_mm2_s: ArrayLike, density_kg_m3: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Dynamic viscosity, mPa·s, from kinematic viscosity and density at one temperature.
    Source: follows from the definitions (kinematic viscosity).

    >>> dynamic_viscosity(kinematic_mm2_s=10.0, density_kg_m3=850.0)
    8.5
    """

def expansion_from_15c(*, expansion_per_k: ArrayLike, reference_c: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Mean coefficient from 15 °C that says the same as one stated from another reference temperature.
    Source: follows from the definitions (V₀ [1 + a₀ (t − t₀)] = V₁₅ [1 + a (t − 15 °C)]).
    """

def growth_ml(*, volume_ml: float, expansion_per_k: float, vessel_linear_per_k: float = ..., rise_k: float) -> float:
    """
    Change of volume of a fluid, less the growth of its vessel.
    Source: follows from the definitions (cubic expansion of fluid and vessel).

    >>> round(growth_ml(volume_ml=9000.0, expansion_per_k=7.2e-4, rise_k=60.0), 6)
    388.8
    """

def old_share(*, changed_fraction: float, changes: int) -> float:
    """
    Share of the first fluid left after equal partial changes.
    Source: follows from the definitions (repeated dilution).

    >>> old_share(changed_fraction=0.5, changes=3)
    0.125
    """

def tilt_shift_mm(*, offset_mm: ArrayLike, tilt_deg: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    How much too high the level looks, away from the center of the sump, when the vehicle is not level.
    Source: follows from the definitions (plane level surface).

    >>> round(tilt_shift_mm(offset_mm=100.0, tilt_deg=1.718), 2)
    3.0
    """

def viscosity_100c_for_index(*, viscosity_40c_mm2_s: ArrayLike, index: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Viscosity at 100 °C of the oil with this viscosity at 40 °C and this index.

    >>> round(viscosity_100c_for_index(viscosity_40c_mm2_s=32.0, index=105.0), 5)
    5.44829
    """

def viscosity_index(*, viscosity_40c_mm2_s: ArrayLike, viscosity_100c_mm2_s: ArrayLike) -> Any:
    """
    Viscosity index from the kinematic viscosities at 40 °C and 100 °C; arrays give a dictionary of arrays.

    Source: ASTM D2270.

    >>> viscosity_index(viscosity_40c_mm2_s=73.30, viscosity_100c_mm2_s=8.86).reported
    92.0
    """

def volume_correction(*, density_15c_kg_m3: ArrayLike, temp_c: ArrayLike) -> Any:
    """
    Volume correction factor and density of a lubricating oil from its density at 15 °C.

    Arrays give a dictionary of arrays. Source: API MPMS chapter 11.1 / ASTM D1250, lubricating-oil group.

    >>> round(volume_correction(density_15c_kg_m3=850.0, temp_c=-20.0).factor, 6)
    1.025639
    """

def volume_correction_60f(*, density_60f_kg_m3: ArrayLike, temp_c: ArrayLike) -> Any:
    """
    The same from the density at 60 °F; the temperature is still in °C.
    """
