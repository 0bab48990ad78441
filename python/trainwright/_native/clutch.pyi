"""
Clutches and bands: forces, capacity, holding, shifts and their heat.
"""

from . import Explanation
from .judge import Budget, Judgment, Limits, Reading, Rule
from .train import State
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["Annulus", "Band", "BandTorque", "Capacity", "CapacityLine", "ElementMargin", "ElementPack", "GearReview", "Head", "HeldInput", "Hold", "LiningByRadius", "Pack", "PlateHeat", "PressureNeeded", "ReturnSprings", "Servo", "Slip", "SlipEnd", "Steel", "SteelPlates", "SurfaceRise", "bulk_rise_k", "disc_faces", "governing", "plate_faces", "referred_inertia_kg_m2", "review", "surface_drop_mm"]

@final
class Annulus:
    """
    A flat ring: a lining, a piston or a wetted wall.

    >>> Annulus(inner_radius_mm=56, outer_radius_mm=78).mean_radius_worn_mm()
    67.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, inner_radius_mm: float, outer_radius_mm: float) -> Annulus: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def area_mm2(self, /) -> float:
        """
        Area of one side, mm².
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def best_inner_radius_mm(self, /) -> float:
        """
        Inner radius, mm, that gives this outer radius most torque at a fixed peak pressure. Source: Shigley, chapter 16.

        >>> round(2 * Annulus(inner_radius_mm=0, outer_radius_mm=3.25 * 25.4).best_inner_radius_mm() / 25.4, 3)
        3.753
        """
    def clamp_at_peak_n(self, /, *, peak_mpa: float) -> float:
        """
        Clamp force, N, at which this lining, worn in, reaches a peak pressure. Source: Shigley, chapter 16.
        """
    @property
    def inner_radius_mm(self, /) -> float:
        """
        Inner radius, mm; 0 for a full disc.
        """
    def mean_radius_new_mm(self, /) -> float:
        """
        Friction radius of a new lining, mm: uniform pressure. Source: Shigley, chapter 16.
        """
    def mean_radius_worn_mm(self, /) -> float:
        """
        Friction radius of a worn-in lining, mm: uniform wear. Source: Shigley, chapter 16.
        """
    @property
    def outer_radius_mm(self, /) -> float:
        """
        Outer radius, mm.
        """
    def peak_at_clamp_mpa(self, /, *, clamp_n: float) -> float:
        """
        Peak pressure, MPa, of this lining, worn in, under a clamp force.
        """

@final
class Band:
    """
    A band around a drum.

    >>> band = Band(drum_radius_mm=75, width_mm=40, wrap_deg=330)
    >>> round(band.energized(servo_force_n=3000, friction=0.12).torque_nm, 1)
    224.1
    >>> round(band.deenergized(servo_force_n=3000, friction=0.12).torque_nm, 1)
    112.3
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, drum_radius_mm: float, width_mm: float, wrap_deg: float) -> Band: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def deenergized(self, /, *, servo_force_n: float, friction: float) -> BandTorque:
        """
        The servo at the tight end: the drum pulls the band toward the servo.
        """
    @property
    def drum_radius_mm(self, /) -> float:
        """
        Radius of the drum, mm.
        """
    def energized(self, /, *, servo_force_n: float, friction: float) -> BandTorque:
        """
        The servo at the slack end: the drum pulls the band toward its anchor and multiplies the force.
        Source: Shigley, chapter 16, band-type clutches and brakes.
        """
    @property
    def width_mm(self, /) -> float:
        """
        Width of the lining, mm.
        """
    @property
    def wrap_deg(self, /) -> float:
        """
        Angle of contact, degrees; of a double wrap the sum of both turns.
        """

@final
class BandTorque:
    """
    What a band does under a servo force.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, tension_ratio: float, tight_n: float, slack_n: float, lining_peak_mpa: float, torque_nm: float, nm_per_friction: float) -> BandTorque: ...
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
    def lining_peak_mpa(self, /) -> float:
        """
        Highest pressure on the lining, MPa.
        """
    @property
    def nm_per_friction(self, /) -> float:
        """
        Change of torque per unit of friction, N·m.
        """
    @property
    def slack_n(self, /) -> float:
        """
        Tension at the slack end, N.
        """
    @property
    def tension_ratio(self, /) -> float:
        """
        Tight over slack tension.
        """
    @property
    def tight_n(self, /) -> float:
        """
        Tension at the tight end, N.
        """
    @property
    def torque_nm(self, /) -> float:
        """
        Torque, N·m. Not a rating.
        """

@final
class Capacity:
    """
    Capacity with everything that made it. Not a rating.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, piston_area_mm2: float, apply_force_n: float, head_force_n: float, dam_force_n: float, return_spring_n: float, seal_drag_n: float, net_force_n: float, mean_radius_mm: float, faces: int, friction: float, lining_mean_mpa: float, lining_peak_mpa: float, torque_nm: float) -> Capacity: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def apply_force_n(self, /) -> float:
        """
        Pressure on the piston, N.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def dam_force_n(self, /) -> float:
        """
        Oil head of the balance dam, N.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def faces(self, /) -> int:
        """
        Friction faces.
        """
    @property
    def friction(self, /) -> float:
        """
        Friction coefficient.
        """
    @property
    def head_force_n(self, /) -> float:
        """
        Oil head behind the piston, N.
        """
    @property
    def lining_mean_mpa(self, /) -> float:
        """
        Mean pressure on the lining, MPa.
        """
    @property
    def lining_peak_mpa(self, /) -> float:
        """
        Highest pressure on the lining, MPa.
        """
    @property
    def mean_radius_mm(self, /) -> float:
        """
        Friction radius, mm.
        """
    @property
    def net_force_n(self, /) -> float:
        """
        Force left on the plates, N; negative while the spring holds the piston back.
        """
    @property
    def piston_area_mm2(self, /) -> float:
        """
        Piston area, mm².
        """
    @property
    def return_spring_n(self, /) -> float:
        """
        Strongest return spring, N.
        """
    @property
    def seal_drag_n(self, /) -> float:
        """
        Seal drag, N.
        """
    @property
    def torque_nm(self, /) -> float:
        """
        Capacity, N·m.
        """

@final
class CapacityLine:
    """
    A pack in one oil, reduced to the constants of its capacity.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, piston_area_mm2: float, head_n_per_rpm2: float, held_back_n: float, arm_mm: float) -> CapacityLine: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def arm_mm(self, /) -> float:
        """
        Faces × friction radius, mm.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def head_n_per_rpm2(self, /) -> float:
        """
        Head less dam over the square of drum speed, N/(1/min)².
        """
    @property
    def held_back_n(self, /) -> float:
        """
        Strongest return spring and seal drag, N.
        """
    @property
    def piston_area_mm2(self, /) -> float:
        """
        Piston area, mm².
        """

@final
class ElementMargin:
    """
    One pack in one gear.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, element: int, share_known: bool, share: float, drum_speed_rpm: float, need_nm: float, capacity_nm: float, margin: float, pressure_needed: PressureNeeded, friction_needed: float, chance: float, verdict: str) -> ElementMargin: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def capacity_nm(self, /) -> float:
        """
        Capacity, N·m. Not a rating.
        """
    @property
    def chance(self, /) -> float:
        """
        Chance that it holds.
        """
    @property
    def drum_speed_rpm(self, /) -> float:
        """
        Speed of its drum, 1/min.
        """
    @property
    def element(self, /) -> int:
        """
        Place of the element in the train.
        """
    @property
    def friction_needed(self, /) -> float:
        """
        Friction at which it just holds.
        """
    @property
    def margin(self, /) -> float:
        """
        Capacity over demand; infinite where the element carries nothing.
        """
    @property
    def need_nm(self, /) -> float:
        """
        Torque to hold, N·m.
        """
    @property
    def pressure_needed(self, /) -> PressureNeeded:
        """
        Pressure at which it just holds.
        """
    @property
    def share(self, /) -> float:
        """
        Torque per unit of turbine torque, without sign.
        """
    @property
    def share_known(self, /) -> bool:
        """
        The train determines the share. If not, everything below is 0 and NOT PROVEN.
        """
    @property
    def verdict(self, /) -> str:
        """
        Verdict under the rule.
        """

@final
class ElementPack:
    """
    A pack and the member that its drum, and so its apply oil, turns with; the fixed member for a brake.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict]: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, *, pack: Pack, turns_with: str) -> ElementPack: ...
    def __repr__(self, /) -> str: ...
    @property
    def pack(self, /) -> Pack:
        """
        The pack.
        """
    @property
    def turns_with(self, /) -> str:
        """
        The member that its drum turns with.
        """

@final
class GearReview:
    """
    Every pack of one gear.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    @property
    def elements(self, /) -> dict:
        """
        Margin of each closed element that has a pack, by its name.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def governing(self, /) -> str:
        """
        Name of the element with the least margin.
        """
    @property
    def weakest(self, /) -> ElementMargin:
        """
        The least margin.
        """

@final
class Head:
    """
    Oil that turns with the drum, behind the piston or in the balance dam.

    >>> head = Head(wetted=Annulus(inner_radius_mm=45, outer_radius_mm=70), free_surface_radius_mm=30)
    >>> round(head.head_force_n(oil_density_kg_m3=840, drum_speed_rpm=6000), 3)
    3837.608
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, wetted: Annulus, free_surface_radius_mm: float) -> Head: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def free_surface_radius_mm(self, /) -> float:
        """
        Radius of the free surface, mm: the feed or the vent.
        """
    def head_force_n(self, /, *, oil_density_kg_m3: ArrayLike, drum_speed_rpm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Axial force of the oil, N: an upper bound, since real oil lags the drum.
        Source: follows from the definitions (p = ρ ω² (r² − r_0²)/2 integrated over the wetted annulus).
        """
    def head_pressure_kpa(self, /, *, radius_mm: ArrayLike, oil_density_kg_m3: ArrayLike, drum_speed_rpm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Pressure of the oil at a radius, kPa; 0 inside the free surface.
        """
    @staticmethod
    def none() -> Head:
        """
        No oil, no force: both heads of a pack whose dam cancels the apply side, and both of a brake.
        """
    @property
    def wetted(self, /) -> Annulus:
        """
        The wall that the oil presses on.
        """

@final
class HeldInput:
    """
    A slip while something holds the input side at constant speed.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, output_inertia_kg_m2: float, input_speed_rpm: float, output_speed_rpm: float, clutch_torque_nm: float, load_torque_nm: float = ...) -> HeldInput: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def clutch_torque_nm(self, /) -> float:
        """
        Torque of the slipping clutch, N·m.
        """
    def held_input_end(self, /) -> SlipEnd:
        """
        Time and energy; without load the energy is I ω²/2, whatever the clutch torque.
        Source: follows from the definitions (clutch.slip_end with an endless input inertia).
        """
    @property
    def input_speed_rpm(self, /) -> float:
        """
        Speed of the input side, 1/min.
        """
    @property
    def load_torque_nm(self, /) -> float:
        """
        Torque that holds the output side back, N·m.
        """
    @property
    def output_inertia_kg_m2(self, /) -> float:
        """
        Inertia on the output side, kg·m².
        """
    @property
    def output_speed_rpm(self, /) -> float:
        """
        Speed of the output side, 1/min.
        """

@final
class Hold:
    """
    Whether a pack holds, and what that rests on.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, capacity: Capacity, need_nm: Reading, margin: float, judgment: Judgment, budget: Budget, pressure_needed: PressureNeeded, friction_needed: float) -> Hold: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Uncertainty of the torque to spare: pressure, friction, geometry, demand, in this order.
        """
    @property
    def capacity(self, /) -> Capacity:
        """
        Capacity at the best estimates.
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
        Friction at which it just holds; infinite while the spring holds the piston back.
        """
    @property
    def judgment(self, /) -> Judgment:
        """
        The torque to spare, capacity less demand, against 0: its chance is the chance that the pack holds.
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
    @property
    def pressure_needed(self, /) -> PressureNeeded:
        """
        Pressure at which it just holds.
        """

@final
class LiningByRadius:
    """
    A lining whose friction changes along the radius, as it does with sliding speed.

    >>> lining = Annulus(inner_radius_mm=20, outer_radius_mm=40)
    >>> face = LiningByRadius(lining=lining, faces=1, pressure_mpa=0.5, friction_at_axis=0, friction_per_mm=0.01)
    >>> round(face.torque_by_radius_nm(), 2)
    18.85
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, lining: Annulus, faces: int, pressure_mpa: float, friction_at_axis: float, friction_per_mm: float) -> LiningByRadius: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def faces(self, /) -> int:
        """
        Friction faces.
        """
    @property
    def friction_at_axis(self, /) -> float:
        """
        The friction line at radius 0.
        """
    @property
    def friction_per_mm(self, /) -> float:
        """
        Change of friction per mm of radius.
        """
    @property
    def lining(self, /) -> Annulus:
        """
        The lining.
        """
    @property
    def pressure_mpa(self, /) -> float:
        """
        Uniform pressure, MPa.
        """
    def torque_by_radius_nm(self, /) -> float:
        """
        Torque, N·m.
        Source: follows from the definitions (∫ μ(r) p 2 π r² dr).
        """

@final
class Pack:
    """
    A clutch or brake pack. Nothing in it depends on pressure, speed or temperature.

    >>> c1 = Pack(lining=Annulus(inner_radius_mm=56, outer_radius_mm=78), faces=plate_faces(4),
    ...           piston=Annulus(inner_radius_mm=46, outer_radius_mm=73), return_spring_n=Limits(lower=1050, upper=1280))
    >>> round(c1.capacity(pressure_kpa=1470, friction=0.112, drum_speed_rpm=0, oil_density_kg_m3=790).torque_nm, 1)
    821.2
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, lining: Annulus, piston: Annulus, faces: int, worn: bool = ..., return_spring_n: Limits, seal_drag_n: float = ..., head: Head = ..., dam: Head = ...) -> Pack: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def capacity(self, /, *, pressure_kpa: float, friction: float, drum_speed_rpm: float, oil_density_kg_m3: float) -> Capacity:
        """
        Capacity with everything that made it, with the strongest return spring. Not a rating.

        `friction` is static to hold, dynamic while slipping. `drum_speed_rpm` is that of the drum that holds the apply oil:
        0 for a brake, and for a drum that stands at stall. Source: Shigley, chapter 16.
        """
    def capacity_line(self, /, *, oil_density_kg_m3: float) -> CapacityLine:
        """
        The constants of this pack in this oil.
        """
    def capacity_nm(self, /, *, pressure_kpa: ArrayLike, friction: ArrayLike, drum_speed_rpm: ArrayLike, oil_density_kg_m3: float, out: NDArray[float64] | None = None) -> Any:
        """
        Capacity, N·m, over columns: equal to `capacity` bit for bit.
        """
    @property
    def dam(self, /) -> Head:
        """
        Oil in the balance dam: takes from it.
        """
    def drag_speed_rpm(self, /, *, oil_density_kg_m3: float) -> float:
        """
        Drum speed, 1/min, at which the oil head of the open pack overcomes its weakest return spring.
        """
    @property
    def faces(self, /) -> int:
        """
        Friction faces: plate_faces or disc_faces.
        """
    def friction_needed(self, /, torque_nm: float, *, pressure_kpa: float, drum_speed_rpm: float, oil_density_kg_m3: float) -> float:
        """
        Friction coefficient at which the pack just holds a torque.
        """
    @property
    def head(self, /) -> Head:
        """
        Oil behind the piston: adds to the apply force when the drum turns.
        """
    def hold(self, /, need_nm: Reading, *, pressure_kpa: Reading, friction: Reading, geometry_u_rel: float, drum_speed_rpm: float, oil_density_kg_m3: float, rule: Rule) -> Hold:
        """
        Whether the pack holds a torque: chance, verdict, and the pressure or friction that turns it.

        `need_nm`, `pressure_kpa` and `friction` are readings; `geometry_u_rel` is the relative standard uncertainty of capacity
        from dimensions; `drum_speed_rpm` and `oil_density_kg_m3` give the oil head, 0 where none is counted.
        `judge.settle(hold.judgment, hold.budget)` names the measurement that would settle it.
        Source: JCGM 100:2008, equation 10, with the sensitivities of clutch.capacity.
        """
    @property
    def lining(self, /) -> Annulus:
        """
        Where lining meets steel; measured on the lining, not on the plate.
        """
    def mean_radius_mm(self, /) -> float:
        """
        Friction radius, mm, of the lining in the state that `worn` tells.
        """
    @property
    def piston(self, /) -> Annulus:
        """
        Piston face under apply pressure.
        """
    def pressure_needed(self, /, torque_nm: float, *, friction: float, drum_speed_rpm: float, oil_density_kg_m3: float) -> PressureNeeded:
        """
        Pressure at which the pack just holds a torque.
        Source: follows from the definitions (clutch.capacity solved for the pressure).
        """
    @property
    def return_spring_n(self, /) -> Limits:
        """
        Return-spring force with the pack applied, N: weakest and strongest spring in limits.
        """
    @property
    def seal_drag_n(self, /) -> float:
        """
        Drag of the piston seals against apply, N.
        """
    @property
    def worn(self, /) -> bool:
        """
        Worn-in lining (uniform wear); False for new plates (uniform pressure).
        """

@final
class PlateHeat:
    """
    What one shift does to the steel plates. All heat is taken to enter the steel.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, energy_j_mm2: float, start_flux_w_mm2: float, bulk_rise_k: float, surface: SurfaceRise) -> PlateHeat: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bulk_rise_k(self, /) -> float:
        """
        Mean rise of the steel, K.
        """
    @property
    def energy_j_mm2(self, /) -> float:
        """
        Energy per friction area, J/mm².
        """
    @property
    def start_flux_w_mm2(self, /) -> float:
        """
        Heat flux at the start, W/mm².
        """
    @property
    def surface(self, /) -> SurfaceRise:
        """
        Highest rise of its surface while the plate counts as thick.
        """

@final
class PressureNeeded:
    """
    Pressure needed for a torque.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, strong_spring_kpa: float, weak_spring_kpa: float) -> PressureNeeded: ...
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
    def strong_spring_kpa(self, /) -> float:
        """
        With the strongest return spring, kPa.
        """
    @property
    def weak_spring_kpa(self, /) -> float:
        """
        With the weakest return spring, kPa.
        """

@final
class ReturnSprings:
    """
    A set of equal return springs.

    >>> ReturnSprings(count=20, rate_n_mm=4, free_length_mm=38).spring_force_n(fitted_length_mm=24)
    1120.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, count: int, rate_n_mm: float, free_length_mm: float) -> ReturnSprings: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def count(self, /) -> int:
        """
        Number of springs.
        """
    @property
    def free_length_mm(self, /) -> float:
        """
        Length of a free spring, mm.
        """
    @property
    def rate_n_mm(self, /) -> float:
        """
        Rate of one spring, N/mm.
        """
    def spring_force_n(self, /, *, fitted_length_mm: float) -> float:
        """
        Force, N, at a fitted length with the pack applied.
        Source: follows from the definitions (Hooke's law).
        """

@final
class Servo:
    """
    The servo of a band.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, piston: Annulus, return_spring_n: float, lever_ratio: float = ...) -> Servo: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def lever_ratio(self, /) -> float:
        """
        Band force over piston force: the lever, 1 without one.
        """
    @property
    def piston(self, /) -> Annulus:
        """
        Face under apply pressure; inner radius 0 for a plain piston.
        """
    @property
    def return_spring_n(self, /) -> float:
        """
        Return-spring force with the band applied, N.
        """
    def servo_force_n(self, /, *, pressure_kpa: float) -> float:
        """
        Force at the end of the band, N.
        """

@final
class Slip:
    """
    Two inertias that a slipping clutch pulls together; all values referred to the clutch.

    >>> Slip(input_inertia_kg_m2=4, output_inertia_kg_m2=2, input_speed_rpm=60, output_speed_rpm=0,
    ...      clutch_torque_nm=100).slip_end().final_speed_rpm
    40.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, input_inertia_kg_m2: float, output_inertia_kg_m2: float, input_speed_rpm: float, output_speed_rpm: float, clutch_torque_nm: float, drive_torque_nm: float = ..., load_torque_nm: float = ...) -> Slip: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def clutch_torque_nm(self, /) -> float:
        """
        Torque of the slipping clutch, N·m: from dynamic friction.
        """
    @property
    def drive_torque_nm(self, /) -> float:
        """
        Torque that drives the input side forward, N·m.
        """
    @property
    def input_inertia_kg_m2(self, /) -> float:
        """
        Inertia on the input side, kg·m².
        """
    @property
    def input_speed_rpm(self, /) -> float:
        """
        Speed of the input side, 1/min.
        """
    @property
    def load_torque_nm(self, /) -> float:
        """
        Torque that holds the output side back, N·m.
        """
    @property
    def output_inertia_kg_m2(self, /) -> float:
        """
        Inertia on the output side, kg·m².
        """
    @property
    def output_speed_rpm(self, /) -> float:
        """
        Speed of the output side, 1/min.
        """
    def slip_end(self, /) -> SlipEnd:
        """
        Time, common speed and energy; "never locks" is an answer.
        Source: Shigley, chapter 16, energy considerations; with outside torques from Newton's second law.
        """

@final
class SlipEnd:
    """
    How a slip ends.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, locks: bool, stays_locked: bool, slip_shrinks_rpm_s: float, time_s: float, final_speed_rpm: float, energy_j: float, start_heat_kw: float, drive_work_j: float, load_work_j: float, locked_torque_nm: float) -> SlipEnd: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def drive_work_j(self, /) -> float:
        """
        Work that the input side took in from outside, J.
        """
    @property
    def energy_j(self, /) -> float:
        """
        Heat at the faces, J.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def final_speed_rpm(self, /) -> float:
        """
        Common speed at lock-up, 1/min.
        """
    @property
    def load_work_j(self, /) -> float:
        """
        Work that the output side gave to its load, J.
        """
    @property
    def locked_torque_nm(self, /) -> float:
        """
        Torque through the clutch once locked, N·m.
        """
    @property
    def locks(self, /) -> bool:
        """
        The slip reaches zero. If not, the time is infinite, and final speed and works are 0 and mean nothing.
        """
    @property
    def slip_shrinks_rpm_s(self, /) -> float:
        """
        Rate at which the slip shrinks, (1/min)/s; 0 or less: it never locks.
        """
    @property
    def start_heat_kw(self, /) -> float:
        """
        Heat flow at the start, kW.
        """
    @property
    def stays_locked(self, /) -> bool:
        """
        The same clutch torque also keeps it locked.
        """
    @property
    def time_s(self, /) -> float:
        """
        Time to lock-up, s.
        """

@final
class Steel:
    """
    Material and thickness of a steel plate heated on both faces.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, conductivity_w_m_k: float, density_kg_m3: float, specific_heat_j_kg_k: float, thickness_mm: float) -> Steel: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def conductivity_w_m_k(self, /) -> float:
        """
        Thermal conductivity, W/(m·K).
        """
    @property
    def density_kg_m3(self, /) -> float:
        """
        Density, kg/m³.
        """
    @property
    def specific_heat_j_kg_k(self, /) -> float:
        """
        Specific heat, J/(kg·K).
        """
    def surface_rise_constant(self, /, *, flux_w_mm2: float, time_s: float) -> SurfaceRise:
        """
        Surface rise under a constant heat flux into one face. Source: Carslaw and Jaeger, section 2.9.
        """
    def surface_rise_falling(self, /, *, start_flux_w_mm2: float, slip_time_s: float) -> SurfaceRise:
        """
        Highest surface rise under a flux that falls linearly to zero, as under constant clutch torque.
        Source: follows from the definitions (superposition of clutch.surface_rise_constant: ΔT ∝ √t' − (2/3)
        t'^{3/2}/t, largest at t' = t/2).
        """
    @property
    def thickness_mm(self, /) -> float:
        """
        Thickness, mm.
        """

@final
class SteelPlates:
    """
    The steel plates of a pack.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, steel: Steel, steel_mass_kg: float, lining: Annulus, faces: int) -> SteelPlates: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def faces(self, /) -> int:
        """
        Friction faces.
        """
    @property
    def lining(self, /) -> Annulus:
        """
        Where lining meets steel.
        """
    def plate_heat(self, /, slip: SlipEnd) -> PlateHeat:
        """
        What one shift does to them; the slip locks, under constant torque.
        """
    @property
    def steel(self, /) -> Steel:
        """
        Material and thickness of one plate.
        """
    @property
    def steel_mass_kg(self, /) -> float:
        """
        Mass of all steel plates, kg.
        """

@final
class SurfaceRise:
    """
    Temperature rise of a surface.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, rise_k: float, at_s: float, thick_until_s: float, thick: bool) -> SurfaceRise: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def at_s(self, /) -> float:
        """
        When it is reached, s.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def rise_k(self, /) -> float:
        """
        Rise, K.
        """
    @property
    def thick(self, /) -> bool:
        """
        The rise is reached within that time. If not, the true rise is higher: the bulk rise governs.
        """
    @property
    def thick_until_s(self, /) -> float:
        """
        Until when the plate counts as thick, s.
        """

def bulk_rise_k(*, energy_j: ArrayLike, steel_mass_kg: ArrayLike, specific_heat_j_kg_k: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Mean temperature rise of the steel plates, K.
    Source: Shigley, chapter 16, temperature rise.

    >>> round(bulk_rise_k(energy_j=20000, steel_mass_kg=2.4, specific_heat_j_kg_k=500), 3)
    16.667
    """

def disc_faces(*, driving_discs: int, driven_discs: int) -> int:
    """
    Pairs of faces between alternating driving and driven discs: their sum less one.
    """

def governing(margins: Sequence[float]) -> int:
    """
    Position of the least margin: the element that governs a gear, or the gear that governs a unit.

    >>> governing([1.252, 1.105, 1.382])
    1
    """

def plate_faces(friction_plates: int) -> int:
    """
    Faces of a pack of friction plates between steels: two for each.
    """

def referred_inertia_kg_m2(*, inertia_kg_m2: ArrayLike, speed_ratio: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Inertia of a shaft, kg·m², as a shaft feels it against which it turns `speed_ratio` times as fast.
    """

def review(state: State, packs: dict[str, ElementPack], *, pressure_kpa: Reading, friction: Reading, geometry_u_rel: float, oil_density_kg_m3: float, turbine_torque_nm: Reading, turbine_speed_rpm: float, rule: Rule) -> GearReview:
    """
    Capacity of each pack of a gear against the torque that the train puts on it.

    `state` is a gear of a `Train`; `packs` maps elements to `ElementPack`. `turbine_torque_nm` is not the engine's while the
    converter multiplies it. `turbine_speed_rpm` is 0 at stall, where no drum of the input turns and no oil head counts.
    Source: follows from the definitions (equilibrium of the gear train).
    """

def surface_drop_mm(*, radius_mm: ArrayLike, speed_rpm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    How far, mm, the oil surface in an upright turning drum dips from wall to axis.
    Source: Bansal, forced vortex.

    >>> round(surface_drop_mm(radius_mm=75, speed_rpm=356.7))
    400
    """
