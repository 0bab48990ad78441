"""
What holds: one-way clutches, park lock, thrust bearings, shafts, splines. A computed capacity is not a rating.
"""

from .clutch import Pack
from .judge import Budget, Judgment, Reading, Rule
from .train import State
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["BALL_EXPONENT", "ROLLER_EXPONENT", "AxialThrust", "Change", "ContactBody", "Helical", "HelicalSun", "HollowOverSolid", "LineContact", "LinePressure", "MeanLoad", "NeedleCapacity", "NeedleChange", "NeedleHold", "NeedleLasts", "NeedleThrust", "PackChange", "RatingLife", "SetPack", "Shaft", "ShaftChange", "ShaftHold", "ShaftLoad", "Spline", "SplineLoad", "SunChange", "ThrustWasher", "Torsion", "WasherLoad", "WheelThrust", "axial_thrust", "change", "compare_needles", "compare_packs", "compare_shafts", "compare_suns", "mean_load", "rating_life", "wheel_thrust"]

BALL_EXPONENT: Final[float]
ROLLER_EXPONENT: Final[float]

@final
class AxialThrust:
    """
    Force of a helical wheel along its axis.
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
    @property
    def ratio(self, /) -> float:
        """
        After over before; infinite where nothing was before.
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
class PackChange:
    """
    One clutch pack against another.
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
class RatingLife:
    """
    Life under a load.
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
class SunChange:
    """
    One sun against another.
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
class Torsion:
    """
    Stress in a shaft under torque.
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
class WheelThrust:
    """
    Force of a wheel of a set in a gear.
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

def mean_load(*, load_n: Sequence[float], speed_rpm: Sequence[float], share: Sequence[float], exponent: float) -> MeanLoad:
    """
    Constant load that wears a bearing as much as a duty: load, speed and share of the time of each stage.
    Source: ISO 281, equal sum of damage.

    >>> mean = mean_load(load_n=[6000, 3000, 1000], speed_rpm=[1500, 2500, 3000], share=[0.1, 0.3, 0.6], exponent=ROLLER_EXPONENT)
    >>> round(mean.load_n, 1), mean.governing
    (2862.1, 0)
    """

def rating_life(*, capacity_n: ArrayLike, load_n: ArrayLike, exponent: ArrayLike, speed_rpm: ArrayLike) -> Any:
    """
    Life that nine of ten bearings reach: a `RatingLife`, or a dictionary of arrays for arrays. `exponent` is
    `BALL_EXPONENT` or `ROLLER_EXPONENT`. Above half of the capacity the equation does not hold, and there is no answer.
    Source: ISO 281:2007, basic rating life.

    >>> rating_life(capacity_n=16000, load_n=2000, exponent=BALL_EXPONENT, speed_rpm=1000).life_mrev
    512.0
    """

def wheel_thrust(state: State, *, set: str, wheel: str, helical: Helical, input_torque_nm: float, input_speed_rpm: float) -> WheelThrust:
    """
    Force along the axis of a wheel (`"sun"`, `"sun_2"`, `"ring"`) of a set in a gear of a `Train`, and its speed against the
    carrier. Not counted: pistons, converter, other sets that lean on the same bearing.
    Source: torques of a set, times `axial_thrust`.
    """
