"""
What holds: one-way clutches, park lock, thrust bearings, shafts, splines. A computed capacity is not a rating.
"""

from . import Explanation
from .clutch import Pack
from .judge import Budget, Judgment, Limits, Reading, Rule
from .record import Family
from .road import Driveline
from .train import State, Train
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["BALL_EXPONENT", "ROLLER_EXPONENT", "AxialThrust", "Change", "Comparison", "ContactBody", "Ejection", "FigureChange", "FreeRoll", "Helical", "HelicalSun", "HollowOverSolid", "Latch", "LineContact", "LinePressure", "MeanLoad", "NeedleCapacity", "NeedleChange", "NeedleHold", "NeedleLasts", "NeedleThrust", "OneWayDuty", "OneWayHold", "OneWayPart", "PackChange", "ParkComparison", "ParkGear", "ParkHold", "ParkLoad", "ParkLock", "ParkStress", "Parked", "PartComparison", "Pawl", "Ratchet", "RatchetIndex", "RatedShaft", "RatingLife", "SetPack", "Shaft", "ShaftChange", "ShaftHold", "ShaftLoad", "Spline", "SplineLoad", "SpurTooth", "StrutLoad", "SunChange", "TakeUp", "ThrustWasher", "ToothBending", "ToothStrength", "Torsion", "WasherLoad", "Wedge", "WedgeLoad", "WheelThrust", "axial_thrust", "change", "compare", "compare_needles", "compare_packs", "compare_park_gears", "compare_shafts", "compare_suns", "form_factor", "gear_thrusts", "grip_nm", "locks", "mean_load", "one_way_duty", "one_way_part", "park_load", "park_lock", "rating_life", "roll_limits_49_cfr_571_114", "shafts", "take_up", "thrust_race", "thrust_washers", "velocity_factor", "wheel_thrust"]

BALL_EXPONENT: Final[float]
ROLLER_EXPONENT: Final[float]

@final
class AxialThrust:
    """
    Force of a helical wheel along its axis.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, pitch_radius_mm: float, tangential_n: float, axial_n: float) -> AxialThrust: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def axial_n(self, /) -> float:
        """
        Force along the axis, N, without sign.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def pitch_radius_mm(self, /) -> float:
        """
        Pitch radius, mm.
        """
    @property
    def tangential_n(self, /) -> float:
        """
        Force at the pitch circle, all planets together, N.
        """

@final
class Change:
    """
    The change of one figure.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, before: float, after: float, ratio: float, better: str, effect: str) -> Change: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def after(self, /) -> float:
        """
        After.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def before(self, /) -> float:
        """
        Before.
        """
    @property
    def better(self, /) -> str:
        """
        Which way is better: `"more"`, `"less"` or `"neither"`.
        """
    @property
    def effect(self, /) -> str:
        """
        What the change does: `"same"`, `"buys"`, `"costs"` or `"differs"`.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def ratio(self, /) -> float:
        """
        After over before; infinite where nothing was before.
        """

@final
class Comparison:
    """
    Two variants, part by part.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def after(self, /) -> str:
        """
        Variant after.
        """
    @property
    def alike(self, /) -> list[str]:
        """
        Parts of the record that are alike.
        """
    @property
    def before(self, /) -> str:
        """
        Variant before.
        """
    @property
    def parts(self, /) -> list[PartComparison]:
        """
        Parts that differ.
        """

@final
class ContactBody:
    """
    One of two bodies that touch along a line.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, radius_mm: float, young_mpa: float, poisson: float) -> ContactBody: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def poisson(self, /) -> float:
        """
        Poisson's ratio, 0 to 0.5.
        """
    @property
    def radius_mm(self, /) -> float:
        """
        Radius where they touch, mm: positive when round outward, negative when hollow (a bore), infinite when flat.
        """
    @property
    def young_mpa(self, /) -> float:
        """
        Modulus of elasticity, MPa.
        """

@final
class Ejection:
    """
    Whether a loaded tooth pushes the pawl out.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, least_n: float, most_n: float, least_share: float, most_share: float, friction_to_stick: float, releases: bool) -> Ejection: ...
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
    def friction_to_stick(self, /) -> float:
        """
        Greatest friction at which the pawl still leaves by itself.
        """
    @property
    def least_n(self, /) -> float:
        """
        Force that pushes the pawl out at the greatest friction, N; negative where it then sticks.
        """
    @property
    def least_share(self, /) -> float:
        """
        `least_n` over the tooth force.
        """
    @property
    def most_n(self, /) -> float:
        """
        The same at the least friction, N: what the cone or roller behind the pawl must hold.
        """
    @property
    def most_share(self, /) -> float:
        """
        `most_n` over the tooth force.
        """
    @property
    def releases(self, /) -> bool:
        """
        The pawl leaves under load over the whole range of friction.
        """

@final
class FigureChange:
    """
    The change of one figure of a part.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def card(self, /) -> str:
        """
        Id of the formula behind the figures; empty for what the record states.
        """
    @property
    def change(self, /) -> Change:
        """
        The change.
        """
    @property
    def figure(self, /) -> str:
        """
        What it is.
        """
    @property
    def unit(self, /) -> str:
        """
        Its unit; empty for a count or a share.
        """
    @property
    def why(self, /) -> str:
        """
        What it means; may be empty.
        """

@final
class FreeRoll:
    """
    What happens before the pawl drops in.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, roll_mm: float, energy_j: float, speed_km_h: float) -> FreeRoll: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def energy_j(self, /) -> float:
        """
        Energy of the vehicle by then, J.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def roll_mm(self, /) -> float:
        """
        The vehicle rolls no farther before the pawl drops in, mm.
        """
    @property
    def speed_km_h(self, /) -> float:
        """
        Its speed by then, km/h.
        """

@final
class Helical:
    """
    Teeth of a helical planetary set.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, module_mm: float, helix_deg: float) -> Helical: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def helix_deg(self, /) -> float:
        """
        Helix angle at the pitch circle, degrees, 0 to 45.
        """
    @property
    def module_mm(self, /) -> float:
        """
        Normal module, mm.
        """

@final
class HelicalSun:
    """
    The sun of a planetary set with what it meshes.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, teeth: int, planets: int, helical: Helical, face_mm: float) -> HelicalSun: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def face_mm(self, /) -> float:
        """
        Face width, mm.
        """
    @property
    def helical(self, /) -> Helical:
        """
        Module and helix.
        """
    @property
    def planets(self, /) -> int:
        """
        Planets around it, 1 to 20.
        """
    @property
    def teeth(self, /) -> int:
        """
        Teeth of the sun.
        """

@final
class HollowOverSolid:
    """
    A hollow shaft against a solid one of the same outside diameter.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, strength: float, mass: float) -> HollowOverSolid: ...
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
    def mass(self, /) -> float:
        """
        Mass of the same length.
        """
    @property
    def strength(self, /) -> float:
        """
        Torque that it carries at the same stress, and stiffness.
        """

@final
class Latch:
    """
    At which speed the pawl still drops in.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, drop_time_s: float, output_rpm: float, road_km_h: float) -> Latch: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def drop_time_s(self, /) -> float:
        """
        Time of the drop, s.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def output_rpm(self, /) -> float:
        """
        Output-shaft speed above which it skips over the teeth, 1/min.
        """
    @property
    def road_km_h(self, /) -> float:
        """
        Road speed of it, km/h.
        """

@final
class LineContact:
    """
    Two bodies that touch along a line.

    >>> roller = ContactBody(radius_mm=6, young_mpa=206000, poisson=0.3)
    >>> flat = ContactBody(radius_mm=float("inf"), young_mpa=206000, poisson=0.3)
    >>> round(LineContact(first=roller, second=flat, length_mm=10).pressed(force_n=2000).peak_mpa, 2)
    1095.88
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, first: ContactBody, second: ContactBody, length_mm: float) -> LineContact: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def first(self, /) -> ContactBody:
        """
        One body.
        """
    def force_at_peak_n(self, /, *, peak_mpa: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Force, N, at which the contact reaches a peak pressure. Source: Shigley, cylindrical contact.
        """
    @property
    def length_mm(self, /) -> float:
        """
        Length of the line, mm.
        """
    def pressed(self, /, *, force_n: ArrayLike) -> Any:
        """
        Pressure, width and shear stress under a force: a `LinePressure`, or a dictionary of arrays for an array of forces.
        Elastic only: yield begins below the surface near a peak of 1.67 times the yield stress.
        Source: Shigley, cylindrical contact.
        """
    @property
    def second(self, /) -> ContactBody:
        """
        The other.
        """

@final
class LinePressure:
    """
    What a force does where two bodies touch along a line.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, effective_radius_mm: float, contact_modulus_mpa: float, half_width_mm: float, peak_mpa: float, shear_mpa: float, shear_depth_mm: float) -> LinePressure: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def contact_modulus_mpa(self, /) -> float:
        """
        Contact modulus of both materials together, MPa.
        """
    @property
    def effective_radius_mm(self, /) -> float:
        """
        Radius of a cylinder on a flat that touches alike, mm.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def half_width_mm(self, /) -> float:
        """
        Half of the width of the contact, mm.
        """
    @property
    def peak_mpa(self, /) -> float:
        """
        Pressure in the middle of the contact, MPa.
        """
    @property
    def shear_depth_mm(self, /) -> float:
        """
        How deep below the surface it lies, mm.
        """
    @property
    def shear_mpa(self, /) -> float:
        """
        Greatest shear stress, below the surface, MPa.
        """

@final
class MeanLoad:
    """
    Constant load and speed that stand for a duty.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, load_n: float, speed_rpm: float, greatest_n: float, governing: int, governing_share: float) -> MeanLoad: ...
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
    def governing(self, /) -> int:
        """
        Stage that does most of the damage.
        """
    @property
    def governing_share(self, /) -> float:
        """
        Its part of the damage, 0 to 1.
        """
    @property
    def greatest_n(self, /) -> float:
        """
        Greatest load of a stage that takes time, N: the static check takes this one.
        """
    @property
    def load_n(self, /) -> float:
        """
        Mean load, N.
        """
    @property
    def speed_rpm(self, /) -> float:
        """
        Mean speed, 1/min.
        """

@final
class NeedleCapacity:
    """
    Capacity of a needle thrust bearing with what made it. Not a maker's rating.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, inside_mm: float, outside_mm: float, gap_mm: float, size_ratio: float, dynamic_factor: float, static_n: float, dynamic_n: float) -> NeedleCapacity: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def dynamic_factor(self, /) -> float:
        """
        The standard's f_c, N/mm² by its powers of millimeters.
        """
    @property
    def dynamic_n(self, /) -> float:
        """
        Dynamic axial capacity, N.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def gap_mm(self, /) -> float:
        """
        Space between two needles at their inner ends, mm.
        """
    @property
    def inside_mm(self, /) -> float:
        """
        Inside diameter that the needles sweep, mm.
        """
    @property
    def outside_mm(self, /) -> float:
        """
        Outside diameter that the needles sweep, mm: the race face must reach it.
        """
    @property
    def size_ratio(self, /) -> float:
        """
        Needle diameter over pitch diameter.
        """
    @property
    def static_n(self, /) -> float:
        """
        Static axial capacity, N.
        """

@final
class NeedleChange:
    """
    One needle thrust bearing against another.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, static_n: Change, dynamic_n: Change, life: Change, life_by_size: Change, outside_mm: Change, face_mm: Change) -> NeedleChange: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def dynamic_n(self, /) -> Change:
        """
        Dynamic capacity, N.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def face_mm(self, /) -> Change:
        """
        Length of a needle, mm: both faces must be as wide.
        """
    @property
    def life(self, /) -> Change:
        """
        Life at the same load, of the one before.
        """
    @property
    def life_by_size(self, /) -> Change:
        """
        The same with one f_c for both: what needles, length and diameter alone do.
        """
    @property
    def outside_mm(self, /) -> Change:
        """
        Outside diameter that the needles sweep, mm: both faces must reach it.
        """
    @property
    def static_n(self, /) -> Change:
        """
        Static capacity, N.
        """

@final
class NeedleHold:
    """
    Whether a bearing stands a load at rest.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, capacity: NeedleCapacity, static_factor: float, judgment: Judgment) -> NeedleHold: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def capacity(self, /) -> NeedleCapacity:
        """
        Capacity.
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
        The load against the static capacity over the least factor.
        """
    @property
    def static_factor(self, /) -> float:
        """
        Static capacity over load.
        """

@final
class NeedleLasts:
    """
    Whether a bearing reaches a life.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, capacity: NeedleCapacity, life: RatingLife, load_for_life_n: float, judgment: Judgment) -> NeedleLasts: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def capacity(self, /) -> NeedleCapacity:
        """
        Capacity.
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
        The load against it.
        """
    @property
    def life(self, /) -> RatingLife:
        """
        Life at the best estimate of the load.
        """
    @property
    def load_for_life_n(self, /) -> float:
        """
        Load at which the life wanted is just reached, N.
        """

@final
class NeedleThrust:
    """
    A needle thrust bearing: one row of needles between two flat races.

    >>> race = NeedleThrust(needles=32, needle_diameter_mm=2.5, needle_length_mm=6, pitch_diameter_mm=56)
    >>> race.needle_capacity().static_n
    105600.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, needles: int, needle_diameter_mm: float, needle_length_mm: float, pitch_diameter_mm: float) -> NeedleThrust: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def needle_capacity(self, /) -> NeedleCapacity:
        """
        Static and dynamic axial capacity; needles that do not fit around the pitch circle are refused.
        Source: ISO 281:2007 and ISO 76:2006, thrust roller bearings at 90°.
        """
    @property
    def needle_diameter_mm(self, /) -> float:
        """
        Diameter of a needle, mm.
        """
    def needle_hold(self, /, load_n: Reading, *, least_static_factor: float, rule: Rule) -> NeedleHold:
        """
        Whether the bearing stands a load at rest without lasting dents: capacity over load against a least factor, chosen.
        Source: ISO 76:2006, static load safety factor.
        """
    def needle_lasts(self, /, load_n: Reading, *, speed_rpm: float, least_life_h: float, rule: Rule) -> NeedleLasts:
        """
        Whether nine of ten bearings reach a life under a load; judged in the load, where no straight line stands for the life.
        Source: ISO 281:2007, basic rating life solved for the load.

        >>> race = NeedleThrust(needles=32, needle_diameter_mm=2.5, needle_length_mm=6, pitch_diameter_mm=56)
        >>> rule = judge.Rule.stated_chances(go=0.95, no_go=0.05)
        >>> load = judge.Reading(value=3680, u=184)
        >>> race.needle_lasts(load, speed_rpm=1500, least_life_h=3500, rule=rule).judgment.verdict
        'NOT PROVEN'
        """
    @property
    def needle_length_mm(self, /) -> float:
        """
        Length of a needle that bears on the race, mm: without its rounded ends.
        """
    @property
    def needles(self, /) -> int:
        """
        Needles, 2 to 400.
        """
    @property
    def pitch_diameter_mm(self, /) -> float:
        """
        Diameter through the middle of the needles, mm.
        """

@final
class OneWayDuty:
    """
    A one-way clutch in a gear.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    @property
    def backwards(self, /) -> str:
        """
        What the gear turns into with the clutch fitted the wrong way round: `"gear"`, `"neutral"`, `"tied up"` and so on.
        """
    @property
    def beside(self, /) -> str | None:
        """
        Name of the closed element beside it where it stands, else None.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def role(self, /) -> str:
        """
        `"holds"`; `"overruns"`; beside a closed element `"could hold"` in its place or `"cannot hold"`, because the reaction
        has the other sense; `"idle"` with neither slip nor torque.
        """
    @property
    def share(self, /) -> float | None:
        """
        Torque on its first member per unit of input torque: what it carries, or would in place of the element beside it.
        """
    @property
    def share_exact(self, /) -> Any | None:
        """
        The share as a `fractions.Fraction`.
        """
    @property
    def slip(self, /) -> float | None:
        """
        Speed of its first member relative to the second per unit of input speed.
        """
    @property
    def slip_exact(self, /) -> Any | None:
        """
        The slip as a `fractions.Fraction`.
        """

@final
class OneWayHold:
    """
    Whether a one-way clutch holds, and what that rests on. A computed capacity is not a rating.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, capacity_nm: float, need_nm: Reading, margin: float, judgment: Judgment, budget: Budget) -> OneWayHold: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Uncertainty of the torque to spare: allowed stress, geometry, demand, in this order.
        """
    @property
    def capacity_nm(self, /) -> float:
        """
        Torque at the allowed stress, N·m.
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
        The torque to spare, capacity less demand, against 0.
        """
    @property
    def margin(self, /) -> float:
        """
        Capacity over demand.
        """
    @property
    def need_nm(self, /) -> Reading:
        """
        Torque to hold, N·m.
        """

@final
class OneWayPart:
    """
    A one-way clutch of a family with what it may bear.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def allow_mpa(self, /) -> float:
        """
        Contact pressure allowed, or stress of a strut, MPa.
        """
    def capacity_nm(self, /) -> float:
        """
        Torque, N·m, at the allowed stress. Not a rating.
        """
    @property
    def capacity_u_rel(self, /) -> float | None:
        """
        Relative standard uncertainty of the capacity, where the record states one.
        """
    @property
    def clutch(self, /) -> Any:
        """
        The clutch: a `Wedge` (rollers or sprags) or a `Ratchet`.
        """
    @property
    def friction(self, /) -> Reading | None:
        """
        Friction on the race, where the record states it.
        """
    def hold(self, /, need_nm: Reading, *, rule: Rule, capacity_u_rel: float | None = None) -> OneWayHold:
        """
        Whether it holds a torque. `capacity_u_rel` goes before that of the record; one of the two must be there.
        """

@final
class PackChange:
    """
    One clutch pack against another.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, capacity_nm: Change, pressure_kpa: Change, friction_area_mm2: Change, faces: Change, clearance_per_face_mm: Change, fill_ml: Change) -> PackChange: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def capacity_nm(self, /) -> Change:
        """
        Capacity at the same pressure and friction, N·m.
        """
    @property
    def clearance_per_face_mm(self, /) -> Change:
        """
        Clearance for each face, mm: the less, the more it drags.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def faces(self, /) -> Change:
        """
        Friction faces: each drags while the pack is open.
        """
    @property
    def fill_ml(self, /) -> Change:
        """
        Oil that closes the clearance, mL: the more, the later the shift.
        """
    @property
    def friction_area_mm2(self, /) -> Change:
        """
        Area over which the heat of a shift spreads, mm².
        """
    @property
    def pressure_kpa(self, /) -> Change:
        """
        Pressure at which each holds what the one before can, kPa.
        """

@final
class ParkComparison:
    """
    What another park gear gains and costs; each the second over the first.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, bending_ratio: float, shear_ratio: float, torque_ratio: float, free_roll_ratio: float) -> ParkComparison: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bending_ratio(self, /) -> float:
        """
        Torque at the same bending stress.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def free_roll_ratio(self, /) -> float:
        """
        Free roll.
        """
    @property
    def shear_ratio(self, /) -> float:
        """
        Torque at the same mean shear stress.
        """
    @property
    def torque_ratio(self, /) -> float:
        """
        Torque at the same equivalent stress.
        """

@final
class ParkGear:
    """
    Park gear: the tooth is a beam that stands on the root circle.

    >>> teal = ParkGear(teeth=24, face_mm=15, tooth_root_mm=9.6, contact_diameter_mm=132, root_diameter_mm=118,
    ...                 tip_diameter_mm=140)
    >>> round(teal.tooth_stress(torque_nm=959.48, stress_factor=1).von_mises_mpa, 1)
    475.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, teeth: int, face_mm: float, tooth_root_mm: float, contact_diameter_mm: float, root_diameter_mm: float, tip_diameter_mm: float) -> ParkGear: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def contact_diameter_mm(self, /) -> float:
        """
        Diameter at which the pawl bears, mm.
        """
    @property
    def face_mm(self, /) -> float:
        """
        Face width that the pawl covers, mm.
        """
    def free_roll(self, /, parked: Parked) -> FreeRoll:
        """
        How far the vehicle rolls before the pawl drops in at the latest, and the energy that the drive line then stops.
        Source: follows from the definitions (one tooth pitch at the road).
        """
    def largest_grade_pct(self, /, parked: Parked, *, allow_mpa: float, stress_factor: float) -> float:
        """
        Grade, %, on which the root reaches a stress; 100 for that or steeper. The grade in `parked` is not used.
        Source: follows from the definitions (`tooth_stress` solved for the grade).
        """
    def park_hold(self, /, parked: Parked, strength: ToothStrength, rule: Rule) -> ParkHold:
        """
        Whether the root stress stays below yield, and the largest grade at which it does.
        Parking brake first, then Park; chock; never stand downhill. Source: JCGM 100:2008, equation 10.
        """
    @property
    def root_diameter_mm(self, /) -> float:
        """
        Root diameter, mm.
        """
    def stress_on_grade(self, /, driveline: Driveline, *, mass_kg: ArrayLike, grade_pct: ArrayLike, rocking_factor: ArrayLike, stress_factor: ArrayLike) -> Any:
        """
        Load and root stress in one, for one mass and grade or for arrays of them: a `ParkStress`, or a dictionary of arrays.
        Source: as `park_load` and `tooth_stress`.
        """
    @property
    def teeth(self, /) -> int:
        """
        Teeth.
        """
    @property
    def tip_diameter_mm(self, /) -> float:
        """
        Tip diameter, mm.
        """
    @property
    def tooth_root_mm(self, /) -> float:
        """
        Thickness of a tooth at its root, mm.
        """
    def tooth_stress(self, /, *, torque_nm: ArrayLike, stress_factor: ArrayLike) -> Any:
        """
        Stress at the root of a tooth under a torque at the output shaft: a `ParkStress`, or a dictionary of arrays.
        Source: Shigley, beam in bending and distortion energy.
        """
    def window_deg(self, /, *, space_mm: float, pawl_tip_mm: float) -> float:
        """
        Angle, degrees, that the gear turns while the pawl can drop in; both widths along the contact diameter.
        Source: follows from the definitions (arc over radius).
        """

@final
class ParkHold:
    """
    Whether a park gear holds, and what that rests on. A computed capability is not a rating.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, load: ParkLoad, stress: ParkStress, margin: float, judgment: Judgment, budget: Budget, largest_grade_pct: float, proven_grade_pct: float) -> ParkHold: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Uncertainty of the stress: tooth, mass, tire, in this order.
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
        The equivalent stress against the yield stress.
        """
    @property
    def largest_grade_pct(self, /) -> float:
        """
        Grade at which the best estimate of the stress reaches yield, %; 100 for that or steeper.
        """
    @property
    def load(self, /) -> ParkLoad:
        """
        What the grade puts on it.
        """
    @property
    def margin(self, /) -> float:
        """
        Yield stress over equivalent stress.
        """
    @property
    def proven_grade_pct(self, /) -> float:
        """
        Largest grade that is a GO under the rule, %; 100 for that or steeper.
        """
    @property
    def stress(self, /) -> ParkStress:
        """
        What that does at the root.
        """

@final
class ParkLoad:
    """
    What the grade puts on the park lock.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, grade_deg: float, grade_n: float, wheel_radius_mm: float, static_nm: float, torque_nm: float) -> ParkLoad: ...
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
    def grade_deg(self, /) -> float:
        """
        Angle of the grade, degrees.
        """
    @property
    def grade_n(self, /) -> float:
        """
        Share of the weight along the grade, N.
        """
    @property
    def static_nm(self, /) -> float:
        """
        Torque at the park gear while the vehicle stands still, N·m.
        """
    @property
    def torque_nm(self, /) -> float:
        """
        The same times the rocking factor, N·m.
        """
    @property
    def wheel_radius_mm(self, /) -> float:
        """
        Rolling radius of the tires, mm.
        """

@final
class ParkLock:
    """
    The park lock of a variant.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def cone_half_angle_deg(self, /) -> float | None:
        """
        Half of the angle of the cone that keeps the pawl in, degrees, where the record has it.
        """
    @property
    def gear(self, /) -> ParkGear:
        """
        The gear.
        """
    @property
    def pawl(self, /) -> Pawl:
        """
        The pawl.
        """
    @property
    def strength(self, /) -> ToothStrength:
        """
        What a tooth bears.
        """
    @property
    def tip(self, /) -> LineContact | None:
        """
        Pawl on tooth, where the record has the radius of the pawl.
        """
    @property
    def window_deg(self, /) -> float | None:
        """
        Angle in which the pawl can drop, degrees, where the record has the widths of space and pawl.
        """

@final
class ParkStress:
    """
    Stress at the root of a park-gear tooth.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, tooth_n: float, arm_mm: float, bending_mpa: float, shear_mpa: float, von_mises_mpa: float) -> ParkStress: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def arm_mm(self, /) -> float:
        """
        Lever of that force over the root, mm.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bending_mpa(self, /) -> float:
        """
        Bending stress with the stress factor, MPa.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def shear_mpa(self, /) -> float:
        """
        Mean shear stress, MPa.
        """
    @property
    def tooth_n(self, /) -> float:
        """
        Tangential force of the pawl on the tooth, N.
        """
    @property
    def von_mises_mpa(self, /) -> float:
        """
        Equivalent stress, MPa.
        """

@final
class Parked:
    """
    A vehicle on a grade that only the park lock holds.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, mass_kg: Reading, grade_pct: float, rocking_factor: float, driveline: Driveline) -> Parked: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def driveline(self, /) -> Driveline:
        """
        Axle, transfer case and tire.
        """
    @property
    def grade_pct(self, /) -> float:
        """
        Grade, %: rise over horizontal run, 0 to 100.
        """
    @property
    def mass_kg(self, /) -> Reading:
        """
        Mass of truck, load and unbraked trailer, kg.
        """
    @property
    def rocking_factor(self, /) -> float:
        """
        Greatest load while the vehicle rocks over the static load, 1 to 5. No default: whoever judges chooses it.
        """

@final
class PartComparison:
    """
    One part of two variants.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> str:
        """
        What holds for both sides.
        """
    @property
    def changes(self, /) -> list[FigureChange]:
        """
        The figures, alike or not.
        """
    @property
    def goes_with(self, /) -> list[str]:
        """
        Parts whose sizes or counts change with it.
        """
    @property
    def part(self, /) -> str:
        """
        The part, set or element.
        """

@final
class Pawl:
    """
    The pawl.

    >>> from trainwright.judge import Limits
    >>> pawl = Pawl(flank_deg=13, friction=Limits(lower=0.08, upper=0.15), inertia_kg_m2=1.9e-4, spring_nm=1.4, drop_deg=9)
    >>> pawl.ejection(tooth_n=10000).releases
    True
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, flank_deg: float, friction: Limits, inertia_kg_m2: float, spring_nm: float, drop_deg: float) -> Pawl: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def drop_deg(self, /) -> float:
        """
        Angle through which it drops, degrees.
        """
    def ejection(self, /, *, tooth_n: float) -> Ejection:
        """
        Force with which a loaded tooth pushes the pawl out: it must, or Park cannot be left on a grade.
        Source: follows from the definitions (force on an inclined flank with friction).
        """
    @property
    def flank_deg(self, /) -> float:
        """
        Angle of the loaded flank to the radius of the gear, degrees: it pushes the pawl out.
        """
    @property
    def friction(self, /) -> Limits:
        """
        Least and greatest friction between pawl and tooth.
        """
    @property
    def inertia_kg_m2(self, /) -> float:
        """
        Moment of inertia about its pivot, kg·m².
        """
    def latch(self, /, driveline: Driveline, *, window_deg: float) -> Latch:
        """
        Speed above which the pawl skips over the teeth instead of dropping in.
        Source: follows from the definitions (constant acceleration).
        """
    @property
    def spring_nm(self, /) -> float:
        """
        Torque that throws it in, N·m.
        """
    def tip_pressure(self, /, contact: LineContact, *, tooth_n: float) -> LinePressure:
        """
        Contact pressure of the pawl on the flank of a loaded tooth.
        Source: follows from the definitions (force on an inclined flank); Shigley for the contact.
        """

@final
class Ratchet:
    """
    Struts that drop into notches.

    >>> wren = Ratchet(struts=9, notches=42, carrying=2, strut_width_mm=12.5, strut_thickness_mm=4.2, pitch_radius_mm=57)
    >>> wren.ratchet_index().together
    3
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, struts: int, notches: int, carrying: int, strut_width_mm: float, strut_thickness_mm: float, pitch_radius_mm: float, strut_deg: float = ...) -> Ratchet: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def carrying(self, /) -> int:
        """
        Struts that carry, 1 to those that drop in together.
        """
    @property
    def notches(self, /) -> int:
        """
        Notches, equally spaced.
        """
    @property
    def pitch_radius_mm(self, /) -> float:
        """
        Radius at which the struts carry, mm.
        """
    def ratchet_index(self, /) -> RatchetIndex:
        """
        Backlash, and how many struts drop in together.
        Source: follows from the definitions (coincidence of two equal divisions of a circle).
        """
    def strut_capacity_nm(self, /, *, allow_mpa: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Torque, N·m, at which the struts that carry reach an allowed stress.
        Source: follows from the definitions (`strut_load` solved for the torque).
        """
    @property
    def strut_deg(self, /) -> float:
        """
        Angle of a strut to the tangent, degrees.
        """
    def strut_hold(self, /, need_nm: Reading, *, allow_mpa: Reading, geometry_u_rel: float, rule: Rule) -> OneWayHold:
        """
        Whether the struts hold a torque. `geometry_u_rel` is the relative standard uncertainty of the capacity from sizes,
        radius and uneven load. Source: JCGM 100:2008, equation 10.
        """
    def strut_load(self, /, *, torque_nm: float) -> StrutLoad:
        """
        Force along a strut and its stress under a torque. Source: follows from the definitions (equilibrium of a strut).
        """
    @property
    def strut_thickness_mm(self, /) -> float:
        """
        Thickness of a strut, mm.
        """
    @property
    def strut_width_mm(self, /) -> float:
        """
        Width of a strut, mm.
        """
    @property
    def struts(self, /) -> int:
        """
        Struts, equally spaced.
        """

@final
class RatchetIndex:
    """
    How a ratchet indexes.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, backlash_deg: float, positions: int, together: int) -> RatchetIndex: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def backlash_deg(self, /) -> float:
        """
        Greatest angle that it turns back before a strut drops in, degrees.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def positions(self, /) -> int:
        """
        Positions on a turn.
        """
    @property
    def together(self, /) -> int:
        """
        Struts that drop in together.
        """

@final
class RatedShaft:
    """
    A shaft of a variant with the torque of its rating.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def shaft(self, /) -> Shaft:
        """
        The shaft.
        """
    @property
    def shear_yield_mpa(self, /) -> float:
        """
        Yield stress in shear, MPa.
        """
    @property
    def spline(self, /) -> Spline | None:
        """
        Its spline, where the record has one.
        """
    @property
    def stress_u_rel(self, /) -> float | None:
        """
        Relative standard uncertainty of its stress, where the record states one.
        """
    @property
    def torque_nm(self, /) -> float:
        """
        Torque that the record rates it for, N·m.
        """

@final
class RatingLife:
    """
    Life under a load.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, load_share: float, life_mrev: float, life_h: float) -> RatingLife: ...
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
    def life_h(self, /) -> float:
        """
        The same in hours; infinite at rest.
        """
    @property
    def life_mrev(self, /) -> float:
        """
        Life that nine of ten reach, million revolutions.
        """
    @property
    def load_share(self, /) -> float:
        """
        Load over dynamic capacity, 0.5 at most.
        """

@final
class SetPack:
    """
    A pack with the clearance that it is set to.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, pack: Pack, clearance_mm: float) -> SetPack: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def clearance_mm(self, /) -> float:
        """
        Clearance of the whole pack, mm.
        """
    @property
    def pack(self, /) -> Pack:
        """
        The pack.
        """

@final
class Shaft:
    """
    A round shaft.

    >>> tube = Shaft(outside_mm=114, inside_mm=102)
    >>> round(tube.torsion(torque_nm=5000).stress_mpa, 2)
    47.86
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, outside_mm: float, inside_mm: float) -> Shaft: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def hollow_over_solid(self, /) -> HollowOverSolid:
        """
        What the hollow shaft carries and weighs against a solid one of the same outside diameter.
        Source: `torsion`, hollow over solid.
        """
    @property
    def inside_mm(self, /) -> float:
        """
        Inside diameter, mm; 0 for a solid shaft.
        """
    @property
    def outside_mm(self, /) -> float:
        """
        Outside diameter, mm: the smallest that carries the torque.
        """
    def shaft_hold(self, /, load: ShaftLoad, *, rule: Rule) -> ShaftHold:
        """
        Whether the shaft stays below its yield in shear under one steady load. Fatigue at a notch can break it far below.
        Source: JCGM 100:2008, equation 10, with the sensitivities of `torsion`.
        """
    def torsion(self, /, *, torque_nm: ArrayLike) -> Any:
        """
        Nominal stress under a torque: a `Torsion`, or a dictionary of arrays. Splines, shoulders and holes multiply it.
        Source: Shigley, chapter 3, torsion.
        """
    def twist_deg(self, /, *, torque_nm: ArrayLike, length_mm: ArrayLike, shear_modulus_mpa: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Angle, degrees, by which a torque twists a length of shaft. The shear modulus of steel is about 80 000 MPa.
        Source: Shigley, chapter 3, torsion.
        """

@final
class ShaftChange:
    """
    One shaft against another.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, stress_own_mpa: Change, stress_same_mpa: Change, torque_nm: Change, polar_moment_mm4: Change, section_mm2: Change) -> ShaftChange: ...
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
    def polar_moment_mm4(self, /) -> Change:
        """
        Polar moment, mm⁴: stiffness of the same length.
        """
    @property
    def section_mm2(self, /) -> Change:
        """
        Metal of the section, mm²: mass of the same length.
        """
    @property
    def stress_own_mpa(self, /) -> Change:
        """
        Stress of each at its own torque, MPa.
        """
    @property
    def stress_same_mpa(self, /) -> Change:
        """
        Stress of each at the torque of the one before, MPa.
        """
    @property
    def torque_nm(self, /) -> Change:
        """
        Torque that each is asked to carry, N·m.
        """

@final
class ShaftHold:
    """
    Whether a shaft stays below yield, and what that rests on.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, torsion: Torsion, yield_share: float, torque_at_yield_nm: float, factor_at_yield: float, judgment: Judgment, budget: Budget) -> ShaftHold: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where the uncertainty comes from: torque, sizes and form, yield, in this order.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def factor_at_yield(self, /) -> float:
        """
        Stress factor at which this torque reaches yield: what splines and shoulders may add.
        """
    @property
    def judgment(self, /) -> Judgment:
        """
        The stress to spare, yield less peak, against 0.
        """
    @property
    def torque_at_yield_nm(self, /) -> float:
        """
        Torque at which the peak reaches yield, N·m.
        """
    @property
    def torsion(self, /) -> Torsion:
        """
        Nominal stress.
        """
    @property
    def yield_share(self, /) -> float:
        """
        Peak stress over yield.
        """

@final
class ShaftLoad:
    """
    What a shaft must carry, and what it is made of.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, torque_nm: Reading, shear_yield_mpa: Reading, stress_factor: float, stress_u_rel: float) -> ShaftLoad: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def shear_yield_mpa(self, /) -> Reading:
        """
        Yield stress in shear, MPa, above 0.
        """
    @property
    def stress_factor(self, /) -> float:
        """
        Peak stress over nominal stress, 1 to 10, chosen: 1 counts no spline, shoulder or hole.
        """
    @property
    def stress_u_rel(self, /) -> float:
        """
        Relative standard uncertainty of the stress from sizes and form, 0 to 1.
        """
    @property
    def torque_nm(self, /) -> Reading:
        """
        Torque, N·m, above 0.
        """

@final
class Spline:
    """
    A splined joint.

    >>> joint = Spline(teeth=24, major_mm=31.25, minor_mm=28.75, pitch_diameter_mm=30, length_mm=22)
    >>> round(joint.spline_load(torque_nm=600, carrying_share=0.5).bearing_mpa, 2)
    121.21
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, teeth: int, major_mm: float, minor_mm: float, pitch_diameter_mm: float, length_mm: float) -> Spline: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def length_mm(self, /) -> float:
        """
        Length in contact, mm.
        """
    @property
    def major_mm(self, /) -> float:
        """
        Outer diameter of the contact, mm: the smaller of the shaft's outside and the hub's root.
        """
    @property
    def minor_mm(self, /) -> float:
        """
        Inner diameter of the contact, mm: the larger of the hub's bore and the shaft's root.
        """
    @property
    def pitch_diameter_mm(self, /) -> float:
        """
        Pitch diameter, mm.
        """
    def spline_load(self, /, *, torque_nm: ArrayLike, carrying_share: ArrayLike) -> Any:
        """
        Bearing and shear stress: a `SplineLoad`, or a dictionary of arrays. `carrying_share` of the teeth carry, above 0 to 1;
        half is common practice, no source. Source: follows from the definitions.
        """
    @property
    def teeth(self, /) -> int:
        """
        Teeth, 4 to 200.
        """

@final
class SplineLoad:
    """
    Load of a spline.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, height_mm: float, mean_radius_mm: float, thickness_mm: float, tooth_n: float, bearing_mpa: float, shear_mpa: float) -> SplineLoad: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bearing_mpa(self, /) -> float:
        """
        Pressure on the flanks, MPa.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def height_mm(self, /) -> float:
        """
        Height of contact, mm.
        """
    @property
    def mean_radius_mm(self, /) -> float:
        """
        Radius at which the flanks carry, mm.
        """
    @property
    def shear_mpa(self, /) -> float:
        """
        Mean shear stress through the teeth, MPa.
        """
    @property
    def thickness_mm(self, /) -> float:
        """
        Thickness of a tooth at the pitch circle, mm.
        """
    @property
    def tooth_n(self, /) -> float:
        """
        Force on each tooth that carries, N.
        """

@final
class SpurTooth:
    """
    An involute spur tooth, 20° full depth.

    >>> tooth = SpurTooth(teeth=24, module_mm=2.5, face_mm=20)
    >>> round(tooth.tooth_bending(force_n=1500, velocity_factor=1).bending_mpa, 2)
    89.02
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, teeth: int, module_mm: float, face_mm: float) -> SpurTooth: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def face_mm(self, /) -> float:
        """
        Face width, mm.
        """
    def force_at_bending_n(self, /, *, bending_mpa: ArrayLike, velocity_factor: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Tangential force, N, at which the root reaches a bending stress. Source: Shigley, example 14-1.
        """
    @property
    def module_mm(self, /) -> float:
        """
        Module, mm: pitch diameter over teeth; 25.4 over the diametral pitch.
        """
    @property
    def teeth(self, /) -> int:
        """
        Teeth of the gear.
        """
    def tooth_bending(self, /, *, force_n: ArrayLike, velocity_factor: ArrayLike) -> Any:
        """
        Bending stress at the root under a tangential force: a `ToothBending`, or a dictionary of arrays. The velocity factor
        of a gear that stands is 1. Source: Shigley, equations 14-2 and 14-8.
        """

@final
class StrutLoad:
    """
    Forces and stress of one strut.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, tangential_n: float, strut_n: float, separating_n: float, stress_mpa: float) -> StrutLoad: ...
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
    def separating_n(self, /) -> float:
        """
        Force that pushes the races apart, N.
        """
    @property
    def stress_mpa(self, /) -> float:
        """
        Compression of the strut, MPa.
        """
    @property
    def strut_n(self, /) -> float:
        """
        Force along the strut, N.
        """
    @property
    def tangential_n(self, /) -> float:
        """
        Share of the torque at the pitch radius, N.
        """

@final
class SunChange:
    """
    One sun against another.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, unit_load_mpa: Change, axial_n: Change, module_mm: Change, planets: Change) -> SunChange: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def axial_n(self, /) -> Change:
        """
        Force along the axis, N.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def module_mm(self, /) -> Change:
        """
        Normal module, mm: the size of a tooth.
        """
    @property
    def planets(self, /) -> Change:
        """
        Planets: pins, needles and washers to fit and to check.
        """
    @property
    def unit_load_mpa(self, /) -> Change:
        """
        Force of a planet over face width and module, MPa.
        """

@final
class TakeUp:
    """
    How a one-way clutch closes its backlash.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, time_s: float, speed_rpm: float, energy_j: float) -> TakeUp: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def energy_j(self, /) -> float:
        """
        Energy that the parts take up, J.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def speed_rpm(self, /) -> float:
        """
        Speed at the end, 1/min.
        """
    @property
    def time_s(self, /) -> float:
        """
        Time to close it, s.
        """

@final
class ThrustWasher:
    """
    A thrust washer.

    >>> washer = ThrustWasher(outside_mm=62, inside_mm=42, face_share=1)
    >>> round(washer.washer_load(load_n=3500, speed_rpm=1500).pv_mpa_m_s, 6)
    8.75
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, outside_mm: float, inside_mm: float, face_share: float) -> ThrustWasher: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def face_share(self, /) -> float:
        """
        Share of that face that grooves and holes leave, above 0 to 1.
        """
    @property
    def inside_mm(self, /) -> float:
        """
        Inside diameter of the face that bears, mm.
        """
    @property
    def outside_mm(self, /) -> float:
        """
        Outside diameter of the face that bears, mm.
        """
    def washer_load(self, /, *, load_n: ArrayLike, speed_rpm: ArrayLike) -> Any:
        """
        Unit load, sliding speed at the mean diameter, and their product: a `WasherLoad`, or a dictionary of arrays. Published
        limits of the product are for dry running and do not hold for a washer fed with oil.
        Source: follows from the definitions.
        """

@final
class ToothBending:
    """
    What a tangential force does to an involute tooth.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, form_factor: float, thickness_mm: float, bending_mpa: float, shear_mpa: float) -> ToothBending: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bending_mpa(self, /) -> float:
        """
        Bending stress at the root, MPa.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def form_factor(self, /) -> float:
        """
        Lewis form factor.
        """
    @property
    def shear_mpa(self, /) -> float:
        """
        Mean shear stress over the pitch-line thickness, MPa.
        """
    @property
    def thickness_mm(self, /) -> float:
        """
        Thickness at the pitch line, mm.
        """

@final
class ToothStrength:
    """
    What a park-gear tooth bears.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, yield_mpa: float, stress_factor: float, stress_u_rel: float) -> ToothStrength: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def stress_factor(self, /) -> float:
        """
        Stress at the fillet over that of the plain beam, 1 to 5; 1 where only the beam is compared with yield.
        """
    @property
    def stress_u_rel(self, /) -> float:
        """
        Relative standard uncertainty of the stress against the yield stress: tooth form, hardness, model.
        """
    @property
    def yield_mpa(self, /) -> float:
        """
        Yield stress, MPa.
        """

@final
class Torsion:
    """
    Stress in a shaft under torque.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, polar_moment_mm4: float, section_modulus_mm3: float, stress_mpa: float, bore_stress_mpa: float) -> Torsion: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bore_stress_mpa(self, /) -> float:
        """
        Shear stress at the bore, MPa; 0 in the middle of a solid shaft.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def polar_moment_mm4(self, /) -> float:
        """
        Polar moment of area, mm⁴.
        """
    @property
    def section_modulus_mm3(self, /) -> float:
        """
        Polar section modulus, mm³.
        """
    @property
    def stress_mpa(self, /) -> float:
        """
        Shear stress at the surface, MPa.
        """

@final
class WasherLoad:
    """
    Load on the face of a thrust washer.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, area_mm2: float, unit_load_mpa: float, mean_diameter_mm: float, sliding_m_s: float, pv_mpa_m_s: float) -> WasherLoad: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def area_mm2(self, /) -> float:
        """
        Face that bears, mm².
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
    def mean_diameter_mm(self, /) -> float:
        """
        Diameter at which the sliding speed is taken, mm.
        """
    @property
    def pv_mpa_m_s(self, /) -> float:
        """
        Pressure times sliding speed, MPa·m/s.
        """
    @property
    def sliding_m_s(self, /) -> float:
        """
        Sliding speed there, m/s.
        """
    @property
    def unit_load_mpa(self, /) -> float:
        """
        Mean pressure on it, MPa.
        """

@final
class Wedge:
    """
    Rollers or sprags between two races.

    >>> race, sprag = (ContactBody(radius_mm=r, young_mpa=206000, poisson=0.3) for r in (49, 5))
    >>> sprags = Wedge(count=14, race=race, body=sprag, length_mm=8, half_angle_deg=5.5)
    >>> round(sprags.wedge_capacity_nm(allow_mpa=4200), 2)
    1173.86
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, count: int, race: ContactBody, body: ContactBody, length_mm: float, half_angle_deg: float) -> Wedge: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def body(self, /) -> ContactBody:
        """
        Roller or sprag where it bears on that race.
        """
    @property
    def count(self, /) -> int:
        """
        Rollers or sprags.
        """
    @property
    def half_angle_deg(self, /) -> float:
        """
        Roller: half of the angle between ramp and race. Sprag: strut angle at that race. Degrees.
        """
    @property
    def length_mm(self, /) -> float:
        """
        Length of the contact line, mm.
        """
    @property
    def race(self, /) -> ContactBody:
        """
        The cylindrical race where they bear hardest, its radius negative for an outer race. Sprags: the inner race.
        """
    def wedge_capacity_nm(self, /, *, allow_mpa: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Torque, N·m, at which the contact reaches an allowed pressure.
        Source: follows from the definitions (`wedged` solved for the torque).
        """
    def wedge_hold(self, /, need_nm: Reading, *, allow_mpa: Reading, geometry_u_rel: float, rule: Rule) -> OneWayHold:
        """
        Whether it holds a torque. `geometry_u_rel` is the relative standard uncertainty of the capacity from angle, radii,
        length and uneven load. Source: JCGM 100:2008, equation 10.
        """
    def wedged(self, /, *, torque_nm: float) -> WedgeLoad:
        """
        Forces and contact pressure under a torque.
        Source: follows from the definitions (equilibrium of a body between two faces); Shigley for the contact.
        """

@final
class WedgeLoad:
    """
    Forces and pressure of one roller or sprag.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, tangential_n: float, normal_n: float, friction_needed: float, pressure: LinePressure) -> WedgeLoad: ...
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
    def friction_needed(self, /) -> float:
        """
        Friction without which it does not lock.
        """
    @property
    def normal_n(self, /) -> float:
        """
        Force across the contact, N.
        """
    @property
    def pressure(self, /) -> LinePressure:
        """
        The contact under that force.
        """
    @property
    def tangential_n(self, /) -> float:
        """
        Share of the torque at the race, N.
        """

@final
class WheelThrust:
    """
    Force of a wheel of a set in a gear.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, torque_nm: float, thrust: AxialThrust, carrier_slip_rpm: float) -> WheelThrust: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def carrier_slip_rpm(self, /) -> float:
        """
        Speed of the wheel against the carrier, 1/min, without sign: what a bearing between the two sees.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def thrust(self, /) -> AxialThrust:
        """
        Its force.
        """
    @property
    def torque_nm(self, /) -> float:
        """
        Torque of the set on the wheel, N·m, forward positive.
        """

def axial_thrust(*, torque_nm: ArrayLike, teeth: int, helical: Helical) -> Any:
    """
    Force along the axis that a helical sun or ring brings into its thrust bearing: an `AxialThrust`, or a dictionary of arrays
    for an array of torques. Source: Shigley, chapter 13.

    >>> pushed = axial_thrust(torque_nm=493, teeth=59, helical=Helical(module_mm=1.48, helix_deg=19))
    >>> round(pushed.axial_n)
    3676
    """

def change(before: float, after: float, *, better: str, same_within: float = ...) -> Change:
    """
    What the change of a figure is worth; figures within `same_within` of each other are the same.
    Source: follows from the definitions.

    >>> change(27, 36, better="less").effect # free roll before the pawl drops
    'costs'
    """

def compare(family: Family, before: str, after: str) -> Comparison:
    """
    Two variants of a family part by part: what each change buys, and what it costs elsewhere. Nothing here is a rating.

    >>> both = compare(record.load(trainwright.__path__[0] + "/demo/family.toml"), "teal", "heron")
    >>> race = next(part for part in both.parts if part.part == "thrust_race")
    >>> [(figure.figure, figure.change.effect) for figure in race.changes][:2]
    [('static capacity', 'buys'), ('life', 'buys')]
    """

def compare_needles(before: NeedleThrust, after: NeedleThrust) -> NeedleChange:
    """
    A needle thrust bearing against another, at the same load.
    Source: ISO 281:2007, basic rating life, one bearing over the other.

    >>> narrow = NeedleThrust(needles=32, needle_diameter_mm=2.5, needle_length_mm=6, pitch_diameter_mm=56)
    >>> wide = NeedleThrust(needles=36, needle_diameter_mm=2.5, needle_length_mm=9, pitch_diameter_mm=60)
    >>> bought = compare_needles(narrow, wide)
    >>> bought.static_n.ratio, round(bought.life_by_size.ratio, 4), round(bought.life.ratio, 4)
    (1.6875, 3.8407, 3.6494)
    """

def compare_packs(before: SetPack, after: SetPack, *, pressure_kpa: float, friction: float, drum_speed_rpm: float = ..., oil_density_kg_m3: float = ...) -> PackChange:
    """
    A clutch pack against another, at the same pressure and friction. Source: `clutch.Pack.capacity`, one over the other.
    """

def compare_park_gears(first: ParkGear, second: ParkGear, *, stress_factor: float) -> ParkComparison:
    """
    What the second park gear gains in strength over the first, and costs in free roll.
    Source: follows from the definitions (root stress of both at one torque).
    """

def compare_shafts(before: Shaft, after: Shaft, *, torque_before_nm: float, torque_after_nm: float) -> ShaftChange:
    """
    A shaft against another, each at its own torque and both at the same. Source: Shigley, chapter 3, torsion.

    >>> early, late = Shaft(outside_mm=41, inside_mm=0), Shaft(outside_mm=44, inside_mm=0)
    >>> both = compare_shafts(early, late, torque_before_nm=2800, torque_after_nm=4150)
    >>> both.stress_same_mpa.effect, both.stress_own_mpa.effect
    ('buys', 'costs')
    """

def compare_suns(before: HelicalSun, after: HelicalSun, *, torque_nm: float) -> SunChange:
    """
    The sun of a planetary set against another, at the same torque. Ratios for comparison, no stress: the tooth form and the
    sharing between planets are left out. Source: follows from the definitions.
    """

def form_factor(teeth: int) -> float:
    """
    Lewis form factor of a 20° full-depth involute tooth, from 12 teeth up. Source: Shigley, table 14-2.

    >>> form_factor(24)
    0.337
    """

def gear_thrusts(family: Family, variant: str, *, set: str, wheel: str, input_speed_rpm: float) -> dict:
    """
    What a wheel (`"sun"`, `"sun_2"`, `"ring"`) of a set pushes along the axis in each gear at rating, by the name of the gear:
    a `WheelThrust`, or `None` where statics cannot tell. Reverse takes the rating of reverse, where the record has one.
    """

def grip_nm(driveline: Driveline, *, axle_load_kg: ArrayLike, grade_pct: ArrayLike, tire_friction: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Torque, N·m, at the park gear at which the tires of the locked axle slide: more than that the ground does not put on it.
    Below the torque of `park_load` the vehicle slides down, however strong the park lock is.
    Source: follows from the definitions (friction of a locked axle).
    """

def locks(*, half_angle_deg: float, friction: Reading, rule: Rule) -> Judgment:
    """
    Whether a wedge holds by itself: a roller or sprag, and the cone or roller that keeps a pawl in. The friction is judged
    against the tangent of half of the angle between the faces. Source: follows from the definitions (friction angle).

    >>> from trainwright.judge import Reading, Rule
    >>> rule = Rule.stated_chances(go=0.95, no_go=0.05)
    >>> locks(half_angle_deg=5.5, friction=Reading(value=0.12, u=0.01), rule=rule).verdict
    'GO'
    """

def mean_load(*, load_n: Sequence[float], speed_rpm: Sequence[float], share: Sequence[float], exponent: float) -> MeanLoad:
    """
    Constant load that wears a bearing as much as a duty: load, speed and share of the time of each stage.
    Source: ISO 281, equal sum of damage.

    >>> mean = mean_load(load_n=[6000, 3000, 1000], speed_rpm=[1500, 2500, 3000], share=[0.1, 0.3, 0.6], exponent=ROLLER_EXPONENT)
    >>> round(mean.load_n, 1), mean.governing
    (2862.1, 0)
    """

def one_way_duty(train: Train, element: str, *, closed: Sequence[str], load: str = ...) -> OneWayDuty:
    """
    What the closed elements ask of a one-way clutch under a load (`"drive"` or `"coast"`): `closed` is a list of names without
    one-way clutches. Source: follows from the definitions (a one-way clutch as a one-sided constraint).
    """

def one_way_part(family: Family, variant: str) -> OneWayPart:
    """
    The one-way clutch of a variant, races and rollers or sprags of the steel that `practice.RACE_YOUNG_MPA` names.
    """

def park_load(driveline: Driveline, *, mass_kg: ArrayLike, grade_pct: ArrayLike, rocking_factor: ArrayLike) -> Any:
    """
    Torque at the park gear of a vehicle that only the park lock holds on a grade: a `ParkLoad`, or a dictionary of arrays.
    The radius is the rolling radius. Source: follows from the definitions (equilibrium on a grade).

    >>> from trainwright.judge import Reading
    >>> from trainwright.road import Driveline
    >>> line = Driveline(axle_ratio=3.92, circumference_mm=Reading.exact(2561.18))
    >>> park_load(line, mass_kg=11160, grade_pct=[10, 20, 30], rocking_factor=1)["torque_nm"].round(0)
    array([1132., 2232., 3270.])
    """

def park_lock(family: Family, variant: str) -> ParkLock:
    """
    The park lock of a variant: its gear, and the pawl and material that the family's park locks share.
    """

def rating_life(*, capacity_n: ArrayLike, load_n: ArrayLike, exponent: ArrayLike, speed_rpm: ArrayLike) -> Any:
    """
    Life that nine of ten bearings reach: a `RatingLife`, or a dictionary of arrays for arrays. `exponent` is
    `BALL_EXPONENT` or `ROLLER_EXPONENT`. Above half of the capacity the equation does not hold, and there is no answer.
    Source: ISO 281:2007, basic rating life.

    >>> rating_life(capacity_n=16000, load_n=2000, exponent=BALL_EXPONENT, speed_rpm=1000).life_mrev
    512.0
    """

def roll_limits_49_cfr_571_114(*, grade_pct: float) -> Limits:
    """
    How far, mm, a light vehicle without a trailer may move in Park on no more than 10 %. For comparison only.
    Source: 49 CFR 571.114.

    >>> roll_limits_49_cfr_571_114(grade_pct=10)
    Limits(lower=0.0, upper=150.0)
    """

def shafts(family: Family, variant: str) -> dict:
    """
    The shafts of a variant at their rating, by name.

    >>> family = record.load(trainwright.__path__[0] + "/demo/family.toml")
    >>> late = shafts(family, "heron")["output"]
    >>> round(late.shaft.torsion(torque_nm=late.torque_nm).stress_mpa, 1)
    248.1
    """

def take_up(*, backlash_deg: float, torque_nm: float, inertia_kg_m2: float) -> TakeUp:
    """
    Speed and energy with which a backlash closes under a torque, from rest.
    Source: follows from the definitions (constant acceleration).

    >>> round(take_up(backlash_deg=360 / 126, torque_nm=100, inertia_kg_m2=0.02).energy_j, 3)
    4.987
    """

def thrust_race(family: Family, variant: str) -> NeedleThrust | None:
    """
    The needle thrust bearing of a variant; `None` where the record has none.
    """

def thrust_washers(family: Family, variant: str) -> dict:
    """
    The thrust washers of a variant, by name.
    """

def velocity_factor(*, pitch_diameter_mm: ArrayLike, speed_rpm: ArrayLike, finish: str, out: NDArray[float64] | None = None) -> Any:
    """
    By what the tooth force of a running gear grows with its pitch-line speed. `finish` is how the teeth were made: `"cast"`,
    `"cut"` (or milled), `"hobbed"` (or shaped), `"ground"` (or shaved). A gear that stands has 1.
    Source: Shigley, equations 14-4 to 14-6.

    >>> round(velocity_factor(pitch_diameter_mm=50.8, speed_rpm=1200, finish="cut"), 2)
    1.52
    """

def wheel_thrust(state: State, *, set: str, wheel: str, helical: Helical, input_torque_nm: float, input_speed_rpm: float) -> WheelThrust:
    """
    Force along the axis of a wheel (`"sun"`, `"sun_2"`, `"ring"`) of a set in a gear of a `Train`, and its speed against the
    carrier. Not counted: pistons, converter, other sets that lean on the same bearing.
    Source: torques of a set, times `axial_thrust`.
    """
