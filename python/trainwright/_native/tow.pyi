"""
What a combination asks of the unit, against what the vehicle is rated for. A computed capacity is no rating.
"""

from . import Explanation
from .converter import Characteristic, EngineCurve, EngineToday
from .judge import Budget, Judgment, Limits, Reading, Rule
from .record import Family, Fleet
from .road import Combination, Driveline, RoadLoad
from .train import State
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["AxleWeights", "Climb", "CombinationLoads", "CoolPull", "Cooler", "CoolerHeat", "CoolerSize", "CoolerTask", "Coupled", "CriterionCheck", "Distribution", "DrivenPiece", "ElevationNoise", "EquivalentMass", "GearPull", "GearRule", "Gearing", "Haul", "HeatModel", "HeatNode", "LargestSpeed", "Launch", "LaunchForce", "LaunchGrip", "Levers", "OfferedGear", "Pull", "RatedFor", "RatingCheck", "RatingReview", "RatingRow", "Rig", "RoadPiece", "RunUp", "RunUpGear", "RunUpTime", "Running", "Stance", "ThroughFlow", "TimeTo", "TotalClimb", "TowRatings", "Trailer", "UnitLoss", "UnlockedPull", "Warmed", "axle_loads", "axle_tires_kg", "check_criterion", "converter_loss_kw", "cooler_size", "criterion_limits", "effectiveness", "equivalent_mass", "flow_heat_w_k", "gawr_left_kg", "gearing", "grip_on_grade", "gvwr_class", "gvwr_least_kg", "output_inertia_kg_m2", "pieces", "restoring_moment_nm", "rig", "share_band_kg", "smooth", "through_flow_rise", "total_climb", "transfer_units", "unit_loss"]

@final
class AxleWeights:
    """
    A truck on the scale: loaded, with everybody in it, without its trailer.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, front_kg: Reading, rear_kg: Reading) -> AxleWeights: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def front_kg(self, /) -> Reading:
        """
        Front axle, kg.
        """
    @property
    def rear_kg(self, /) -> Reading:
        """
        Rear axle, kg; the sum of both on a tandem.
        """

@final
class Climb:
    """
    A road of grades as it was driven.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, distance_m: float, up_m: float, down_m: float, time_s: float, peak_c: float, peak_piece: int, end_c: float, limit_after_s: float, limit_after_m: float, over_limit_s: float, heat_j: float, wheel_work_j: float, lift_work_j: float, use_of_rating: float, use_piece: int) -> Climb: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def distance_m(self, /) -> float:
        """
        Length, m.
        """
    @property
    def down_m(self, /) -> float:
        """
        Sum of what they fall, m.
        """
    @property
    def end_c(self, /) -> float:
        """
        Sump at the end, °C.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def heat_j(self, /) -> float:
        """
        Heat made, J.
        """
    @property
    def lift_work_j(self, /) -> float:
        """
        What of it lifted the combination, J; it comes back downhill.
        """
    @property
    def limit_after_m(self, /) -> float:
        """
        Distance at which it is reached, m; infinite where it is not.
        """
    @property
    def limit_after_s(self, /) -> float:
        """
        Time at which the limit is reached, s; infinite where it is not.
        """
    @property
    def over_limit_s(self, /) -> float:
        """
        Time above the limit, s.
        """
    @property
    def peak_c(self, /) -> float:
        """
        Hottest sump, °C.
        """
    @property
    def peak_piece(self, /) -> int:
        """
        Piece at whose end (or, for the first, at whose start) it is hottest.
        """
    @property
    def time_s(self, /) -> float:
        """
        Time, s.
        """
    @property
    def up_m(self, /) -> float:
        """
        Sum of what the pieces rise, m.
        """
    @property
    def use_of_rating(self, /) -> float:
        """
        Greatest torque over its rating.
        """
    @property
    def use_piece(self, /) -> int:
        """
        Piece of it.
        """
    @property
    def wheel_work_j(self, /) -> float:
        """
        Work at the wheels, uphill less downhill, J.
        """

@final
class CombinationLoads:
    """
    What each axle carries with the trailer coupled.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, hitch_kg: Reading, front_change_kg: float, rear_change_kg: float, front_kg: Reading, rear_kg: Reading, truck_kg: Reading, trailer_axles_kg: Reading, combination_kg: Reading) -> CombinationLoads: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def combination_kg(self, /) -> Reading:
        """
        Truck and trailer, kg.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def front_change_kg(self, /) -> float:
        """
        Change of the front axle by the trailer, kg; negative where it is lifted.
        """
    @property
    def front_kg(self, /) -> Reading:
        """
        Front axle, kg.
        """
    @property
    def hitch_kg(self, /) -> Reading:
        """
        What rests on the hitch, kg.
        """
    @property
    def rear_change_kg(self, /) -> float:
        """
        Change of the rear axle, kg.
        """
    @property
    def rear_kg(self, /) -> Reading:
        """
        Rear axle, kg.
        """
    @property
    def trailer_axles_kg(self, /) -> Reading:
        """
        Axles of the trailer together, kg.
        """
    @property
    def truck_kg(self, /) -> Reading:
        """
        Both: what the truck weighs with the trailer on its hitch, kg.
        """

@final
class CoolPull:
    """
    A pull at which the sump comes to rest below its limit.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    def as_dict(self, /) -> dict:
        """
        The fields by name.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def loss_kw(self, /) -> float:
        """
        Heat in its gear, kW.
        """
    @property
    def pull(self, /) -> Pull:
        """
        The pull.
        """
    @property
    def steady_c(self, /) -> float:
        """
        Temperature that the sump goes to, °C.
        """
    @property
    def steps(self, /) -> int:
        """
        Steps by which the speed was lowered.
        """

@final
class Cooler:
    """
    A cooler at a flow of oil and air.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, ua_w_k: float, oil_w_k: float, air_w_k: float, arrangement: str) -> Cooler: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def air_w_k(self, /) -> float:
        """
        Heat that the air (or coolant) carries for each kelvin, W/K.
        """
    @property
    def arrangement(self, /) -> str:
        """
        How the two pass each other: `"counterflow"`, `"crossflow"`, `"parallel"`.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def cooler_heat(self, /, *, oil_c: ArrayLike, air_c: ArrayLike) -> Any:
        """
        Heat that the cooler takes from oil of a temperature: a `CoolerHeat`, or a dictionary of arrays.
        Source: Incropera, effectiveness and number of transfer units.
        """
    @property
    def oil_w_k(self, /) -> float:
        """
        Heat that the oil carries for each kelvin, W/K; see `flow_heat_w_k`.
        """
    @property
    def ua_w_k(self, /) -> float:
        """
        Heat that passes for each kelvin of mean difference, W/K: its size, at these flows.
        """

@final
class CoolerHeat:
    """
    What a cooler takes.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, transfer_units: float, capacity_ratio: float, effectiveness: float, conductance_w_k: float, power_kw: float, oil_out_c: float, air_out_c: float) -> CoolerHeat: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def air_out_c(self, /) -> float:
        """
        Air that leaves, °C.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def capacity_ratio(self, /) -> float:
        """
        Lesser over greater heat capacity rate.
        """
    @property
    def conductance_w_k(self, /) -> float:
        """
        Heat for each kelvin between the two that enter, W/K: what a `HeatNode` takes.
        """
    @property
    def effectiveness(self, /) -> float:
        """
        Share of the greatest possible heat.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def oil_out_c(self, /) -> float:
        """
        Oil that leaves, °C.
        """
    @property
    def power_kw(self, /) -> float:
        """
        Heat, kW; negative where the air warms the oil.
        """
    @property
    def transfer_units(self, /) -> float:
        """
        Transfer units.
        """

@final
class CoolerSize:
    """
    The size of a cooler.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, power_kw: float, air_out_c: float, effectiveness: float, transfer_units: float, ua_w_k: float, log_mean_k: float) -> CoolerSize: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def air_out_c(self, /) -> float:
        """
        Air that leaves, °C.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def effectiveness(self, /) -> float:
        """
        Share of the greatest possible heat.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def log_mean_k(self, /) -> float:
        """
        Logarithmic mean difference of a counterflow cooler of these four temperatures, K.
        """
    @property
    def power_kw(self, /) -> float:
        """
        Heat that it takes, kW.
        """
    @property
    def transfer_units(self, /) -> float:
        """
        Transfer units.
        """
    @property
    def ua_w_k(self, /) -> float:
        """
        Its size, W/K.
        """

@final
class CoolerTask:
    """
    Temperatures that a cooler must bring about.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, oil_in_c: float, oil_out_c: float, air_in_c: float) -> CoolerTask: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def air_in_c(self, /) -> float:
        """
        Air (or coolant) that enters, °C.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def oil_in_c(self, /) -> float:
        """
        Oil that enters, °C.
        """
    @property
    def oil_out_c(self, /) -> float:
        """
        Oil that leaves, °C.
        """

@final
class Coupled:
    """
    Truck and trailer as weighed, and how they are coupled.

    >>> from trainwright.judge import Reading, Rule
    >>> coupled = Coupled(
    ...     weighed=AxleWeights(front_kg=Reading(value=1900, u=12), rear_kg=Reading(value=1860, u=12)),
    ...     trailer=Trailer.by_share(mass_kg=Reading(value=7400, u=40), hitch_share=Reading(value=0.12, u=0.01)),
    ...     levers=Levers(wheelbase_mm=3750, overhang_mm=1250),
    ... )
    >>> rule = Rule.stated_chances(go=0.95, no_go=0.05)
    >>> review = coupled.review_ratings(TowRatings(gcwr_kg=11300, gvwr_kg=4900, gawr_rear_kg=3000), rule)
    >>> review.governing, round(review.trailer_limit_kg), review.rows[3].verdict
    ('rear axle', 7125, 'NOT PROVEN')
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, weighed: AxleWeights, trailer: Trailer, levers: Levers, distribution: Distribution = ...) -> Coupled: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def distribution(self, /) -> Distribution:
        """
        Weight-distributing hitch; none unless given.
        """
    @property
    def levers(self, /) -> Levers:
        """
        Wheelbase and overhang.
        """
    def rating_check(self, /, kind: str, *, rating_kg: float, rule: Rule) -> RatingCheck:
        """
        A load of the combination against its rating, and the trailer at which the two meet. `kind` is one of `"combination"`,
        `"vehicle"`, `"front axle"`, `"rear axle"`, `"front tires"`, `"rear tires"`, `"maker trailer"`, `"hitch trailer"`,
        `"hitch load"`, `"trailer gross"`. Source: JCGM 100:2008, equation 10.
        """
    def review_ratings(self, /, ratings: TowRatings, rule: Rule) -> RatingReview:
        """
        Every rating of the combination, and the one that governs. Brakes, cooling, frame, trailer sway and local law are not
        looked at: the vehicle maker's ratings and placards stand. Source: follows from the definitions (least of the limits).
        """
    @property
    def trailer(self, /) -> Trailer:
        """
        The trailer; its mass above 0.
        """
    @property
    def weighed(self, /) -> AxleWeights:
        """
        The truck without its trailer.
        """

@final
class CriterionCheck:
    """
    A criterion and how it came out. Meeting it here is no rating.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    @property
    def chance(self, /) -> float:
        """
        Chance that the true value lies within the limits; 0 where it was not judged.
        """
    @property
    def criterion(self, /) -> str:
        """
        Which criterion.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def limits(self, /) -> Limits:
        """
        What is asked; no limits where no figure is known.
        """
    @property
    def outcome(self, /) -> str:
        """
        `"met"`, `"not met"`, `"not proven"`, `"not given"` or `"no figure"`.
        """
    @property
    def value(self, /) -> Reading | None:
        """
        What was given; None where nothing was, or where the speed is never reached.
        """

@final
class Distribution:
    """
    A weight-distributing hitch: bars that bend truck and trailer against each other. `Distribution()` is none.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, moment_nm: float = ..., ball_to_axle_mm: float = ...) -> Distribution: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def ball_to_axle_mm(self, /) -> float:
        """
        Ball to the middle of the trailer's axles, mm.
        """
    @property
    def moment_nm(self, /) -> float:
        """
        Moment of the bars on the truck, nose down, N·m; 0 or more.
        """

@final
class DrivenPiece:
    """
    A piece of road as it was driven.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, grade_pct: float, speed_km_h: float, gear: int, engine_rpm: float, input_nm: float, output_nm: float, use_of_rating: float, loss_kw: float, time_s: float, end_c: float, steady_c: float) -> DrivenPiece: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def end_c(self, /) -> float:
        """
        Sump at its end, °C.
        """
    @property
    def engine_rpm(self, /) -> float:
        """
        Engine speed, 1/min.
        """
    @property
    def gear(self, /) -> int:
        """
        Place of the gear.
        """
    @property
    def grade_pct(self, /) -> float:
        """
        Grade, %.
        """
    @property
    def input_nm(self, /) -> float:
        """
        Torque at the input, N·m; negative downhill.
        """
    @property
    def loss_kw(self, /) -> float:
        """
        Heat, kW.
        """
    @property
    def output_nm(self, /) -> float:
        """
        Torque at the output, N·m.
        """
    @property
    def speed_km_h(self, /) -> float:
        """
        Speed that the gear held, km/h.
        """
    @property
    def steady_c(self, /) -> float:
        """
        Temperature that it goes to on this piece, °C.
        """
    @property
    def time_s(self, /) -> float:
        """
        Time on the piece, s.
        """
    @property
    def use_of_rating(self, /) -> float:
        """
        The same over their ratings, the greater of both.
        """

@final
class ElevationNoise:
    """
    Noise of elevations.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, u_m: float, correlation_m: float) -> ElevationNoise: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def correlation_m(self, /) -> float:
        """
        Distance over which the error stays alike, m; 0 where every point errs for itself.
        """
    @property
    def u_m(self, /) -> float:
        """
        Standard uncertainty of one elevation against its neighbors far away, m; what all of them share does not matter.
        """

@final
class EquivalentMass:
    """
    Mass that a force accelerates, and what it is made of.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, wheels_kg: float, train_kg: float, total_kg: float, factor: float) -> EquivalentMass: ...
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
    def factor(self, /) -> float:
        """
        All over the mass that stands on the scale.
        """
    @property
    def total_kg(self, /) -> float:
        """
        All, kg.
        """
    @property
    def train_kg(self, /) -> float:
        """
        What transmission, and engine where it is locked to it, add, kg.
        """
    @property
    def wheels_kg(self, /) -> float:
        """
        What the wheels add, kg.
        """

@final
class GearPull:
    """
    One gear on a grade.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, ratio: float, engine_rpm: float, input_nm: float, full_nm: float, reserve: float, use_of_input: float, standing: str) -> GearPull: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def engine_rpm(self, /) -> float:
        """
        Engine and input speed, lock-up clutch closed, 1/min.
        """
    @property
    def full_nm(self, /) -> float:
        """
        Full-throttle torque of the engine at this speed, N·m; 0 where its table does not say.
        """
    @property
    def input_nm(self, /) -> float:
        """
        Torque at the input, N·m; negative on the overrun.
        """
    @property
    def ratio(self, /) -> float:
        """
        Input over output speed.
        """
    @property
    def reserve(self, /) -> float:
        """
        Share of full torque in hand; negative where the engine is too weak, 0 where its table does not say.
        """
    @property
    def standing(self, /) -> str:
        """
        How the gear stands: `"holds"`, `"little reserve"`, `"too weak"`, `"below lock-up"`, `"over speed"`, `"reverse"`.
        """
    @property
    def use_of_input(self, /) -> float:
        """
        Torque at the input over its rating.
        """

@final
class GearRule:
    """
    How a gear is chosen: the highest that keeps a reserve, with the lock-up clutch closed.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, torque_reserve: float, lowest_locked_rpm: float, speed_step_km_h: float) -> GearRule: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def lowest_locked_rpm(self, /) -> float:
        """
        Lowest engine speed with the lock-up clutch closed, 1/min.
        """
    @property
    def speed_step_km_h(self, /) -> float:
        """
        Step by which the speed is lowered where no gear holds, km/h.
        """
    @property
    def torque_reserve(self, /) -> float:
        """
        Share of full torque that stays in hand, 0 to below 1.
        """

@final
class Gearing:
    """
    What a unit offers: gears with their names, and the ratings of its record.

    >>> unit = Gearing(names=["1", "2"], gears=[OfferedGear(ratio=2.5, efficiency=0.95), OfferedGear(ratio=1, efficiency=0.98)],
    ...                rated_input_nm=640, rated_reverse_nm=420, rated_output_nm=2800)
    >>> unit.names
    ['1', '2']
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict]: ...
    def __new__(cls, /, *, names: Sequence[str], gears: Sequence[OfferedGear], rated_input_nm: float, rated_reverse_nm: float, rated_output_nm: float) -> Gearing: ...
    def __repr__(self, /) -> str: ...
    @property
    def gears(self, /) -> list[OfferedGear]:
        """
        The gears in the order of their names.
        """
    @property
    def names(self, /) -> list[str]:
        """
        Names of the gears.
        """
    @property
    def rated_input_nm(self, /) -> float:
        """
        Rated torque at the input (turbine) in the forward gears, N·m.
        """
    @property
    def rated_output_nm(self, /) -> float:
        """
        Rated torque at the output, N·m.
        """
    @property
    def rated_reverse_nm(self, /) -> float:
        """
        Rated torque at the input in reverse, N·m.
        """

@final
class Haul:
    """
    A combination, and the drive line that pulls it.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, combination: Combination, driveline: Driveline, axle_efficiency: float, air_density_kg_m3: float) -> Haul: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def air_density_kg_m3(self, /) -> float:
        """
        Density of the air, kg/m³.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def axle_efficiency(self, /) -> float:
        """
        Efficiency of axle and transfer case, above 0 to 1.
        """
    @property
    def combination(self, /) -> Combination:
        """
        Truck and trailer as the road feels them.
        """
    @property
    def driveline(self, /) -> Driveline:
        """
        Axle, transfer case and tires.
        """

@final
class HeatModel:
    """
    What a unit loses beside the efficiency of its gears, and the sump that takes it.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, drag_nm: float, pump_kpa: float, pump_l_min: float, pump_efficiency: float, node: HeatNode, limit_c: float) -> HeatModel: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def drag_nm(self, /) -> float:
        """
        Drag of open packs, bearings and oil, seen at the input, N·m; 0 where the efficiencies hold it.
        """
    @property
    def limit_c(self, /) -> float:
        """
        Temperature that must not be passed, °C.
        """
    @property
    def node(self, /) -> HeatNode:
        """
        The sump.
        """
    @property
    def pump_efficiency(self, /) -> float:
        """
        Efficiency of the pump, above 0 to 1.
        """
    @property
    def pump_kpa(self, /) -> float:
        """
        Gauge pressure of the pump, kPa; 0 where the efficiencies hold it.
        """
    @property
    def pump_l_min(self, /) -> float:
        """
        Flow of the pump, L/min.
        """

@final
class HeatNode:
    """
    A sump as one temperature: fluid, case and what they touch.

    >>> node = HeatNode(heat_capacity_j_k=95 * 900, case_w_k=180, air_c=30, cooler_w_k=0, cooler_air_c=30)
    >>> round(node.warmed(start_c=30, loss_kw=12, time_s=900).temp_c, 4)
    86.6428
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, heat_capacity_j_k: float, case_w_k: float, air_c: float, cooler_w_k: float, cooler_air_c: float) -> HeatNode: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def air_c(self, /) -> float:
        """
        The air around the case, °C.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def case_w_k(self, /) -> float:
        """
        What the case gives to the air for each kelvin, W/K; 0 or more.
        """
    @property
    def cooler_air_c(self, /) -> float:
        """
        The air (or coolant) that enters the cooler, °C.
        """
    def cooler_needed_w_k(self, /, *, loss_kw: float, limit_c: float) -> float:
        """
        Conductance, W/K, that the cooler must have for the steady temperature to stay at a limit; 0 where the case is enough.
        Source: steady state of `warmed`.
        """
    @property
    def cooler_w_k(self, /) -> float:
        """
        What the cooler takes for each kelvin between sump and its air, W/K; 0 without one.
        """
    @property
    def heat_capacity_j_k(self, /) -> float:
        """
        Heat that warms it by 1 K: fluid, case and parts, J/K.
        """
    def time_to(self, /, *, start_c: float, loss_kw: float, limit_c: float) -> TimeTo:
        """
        Time until the sump reaches a limit under a constant loss: the minutes left, in s.
        Source: as `warmed`, solved for the time.
        """
    def warmed(self, /, *, start_c: ArrayLike, loss_kw: ArrayLike, time_s: ArrayLike) -> Any:
        """
        Temperature after a time under a constant loss: a `Warmed`, or a dictionary of arrays.
        Source: Incropera, lumped capacitance.
        """

@final
class LargestSpeed:
    """
    The largest speed on a grade. What the engine holds is not what may be pulled, nor what brakes hold downhill.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, speed_km_h: float, gear: int, engine_rpm: float, input_nm: float, use_of_input: float, use_of_output: float, limit: str) -> LargestSpeed: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def engine_rpm(self, /) -> float:
        """
        Engine speed, 1/min.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def gear(self, /) -> int:
        """
        Place of the gear.
        """
    @property
    def input_nm(self, /) -> float:
        """
        Torque at the input, N·m.
        """
    @property
    def limit(self, /) -> str:
        """
        What keeps it from going faster.
        """
    @property
    def speed_km_h(self, /) -> float:
        """
        Road speed, km/h.
        """
    @property
    def use_of_input(self, /) -> float:
        """
        The same over its rating.
        """
    @property
    def use_of_output(self, /) -> float:
        """
        Torque at the output over its rating.
        """

@final
class Launch:
    """
    A combination at the point of moving up a grade.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, turbine_nm: Reading, gear_ratio: float, gear_efficiency: float, driveline: Driveline, axle_efficiency: float, mass_kg: Reading, rolling_coefficient: float, break_away_coefficient: float = ...) -> Launch: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def axle_efficiency(self, /) -> float:
        """
        Efficiency of axle and transfer case, above 0 to 1.
        """
    @property
    def break_away_coefficient(self, /) -> float:
        """
        What breaking away takes on top, over weight: cold tires, soft ground; 0 where it is not counted.
        """
    @property
    def driveline(self, /) -> Driveline:
        """
        Axle, transfer case and tire.
        """
    @property
    def gear_efficiency(self, /) -> float:
        """
        Efficiency of the gear, above 0 to 1.
        """
    @property
    def gear_ratio(self, /) -> float:
        """
        Gear ratio, input over output; negative in reverse.
        """
    def launch(self, /, *, grade_pct: float, rule: Rule) -> LaunchForce:
        """
        Force of the driven wheels at stall against what it takes to move the combination up a grade. What the force allows is
        not what may be pulled. Source: follows from the definitions (equilibrium at the point of moving).
        """
    @property
    def mass_kg(self, /) -> Reading:
        """
        Truck and trailer, kg.
        """
    @property
    def rolling_coefficient(self, /) -> float:
        """
        Rolling resistance over weight.
        """
    @property
    def turbine_nm(self, /) -> Reading:
        """
        Turbine torque at stall, N·m: engine torque × torque ratio.
        """

@final
class LaunchForce:
    """
    Whether a combination moves up a grade, and what that rests on. Not what may be pulled.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, output_nm: float, tractive_n: float, grade_n: float, rolling_n: float, needed_n: float, left_n: float, judgment: Judgment, budget: Budget, largest_grade_pct: float, proven_grade_pct: float) -> LaunchForce: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where the uncertainty comes from: turbine torque, tire, mass, in this order.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def grade_n(self, /) -> float:
        """
        Share of the weight along the grade, N.
        """
    @property
    def judgment(self, /) -> Judgment:
        """
        That it moves.
        """
    @property
    def largest_grade_pct(self, /) -> float:
        """
        Grade at which the best estimate just moves, %; 100 for that or steeper, 0 where it does not move on the level.
        """
    @property
    def left_n(self, /) -> float:
        """
        What is left to accelerate with, N; negative where it does not move.
        """
    @property
    def needed_n(self, /) -> float:
        """
        Both: what it takes, N.
        """
    @property
    def output_nm(self, /) -> float:
        """
        Torque at the transmission output, N·m.
        """
    @property
    def proven_grade_pct(self, /) -> float:
        """
        Largest grade that is a GO under the rule, %.
        """
    @property
    def rolling_n(self, /) -> float:
        """
        Rolling and break-away, N.
        """
    @property
    def tractive_n(self, /) -> float:
        """
        Force of the driven wheels, N.
        """

@final
class LaunchGrip:
    """
    What the tires of the driven axle carry on a grade.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, shift_kg: float, normal_n: float, grip_n: float, needed_n: float, largest_grade_pct: float) -> LaunchGrip: ...
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
    def grip_n(self, /) -> float:
        """
        Force at which its tires slip, N.
        """
    @property
    def largest_grade_pct(self, /) -> float:
        """
        Grade at which the tires slip, %; 100 for that or steeper, 0 where they slip on the level.
        """
    @property
    def needed_n(self, /) -> float:
        """
        What it takes to move, N.
        """
    @property
    def normal_n(self, /) -> float:
        """
        Force of the ground on the axle, N.
        """
    @property
    def shift_kg(self, /) -> float:
        """
        Load that the grade shifts to the rear axle per unit of sin θ, kg; negative tail up.
        """

@final
class Levers:
    """
    Where a truck carries its trailer.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, wheelbase_mm: float, overhang_mm: float) -> Levers: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def overhang_mm(self, /) -> float:
        """
        Ball or king pin behind the rear axle, mm; negative ahead of it.
        """
    @property
    def wheelbase_mm(self, /) -> float:
        """
        Front axle to rear axle, mm; to the middle of a tandem.
        """

@final
class OfferedGear:
    """
    A gear that a unit offers.

    >>> OfferedGear(ratio=1.383, efficiency=0.97).closed
    0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, ratio: float, efficiency: float, closed: int = ..., one_way: int = ...) -> OfferedGear: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def closed(self, /) -> int:
        """
        Mask of the elements that carry under drive, one-way clutches included.
        """
    @property
    def efficiency(self, /) -> float:
        """
        Efficiency from input to output on the road, above 0 to 1.
        """
    @property
    def one_way(self, /) -> int:
        """
        Mask of the one-way clutches among them: where it is not 0, the gear does not brake.
        """
    @property
    def ratio(self, /) -> float:
        """
        Input over output speed; negative in reverse.
        """

@final
class Pull:
    """
    Every gear on a grade at one speed. A computed capability is not a rating: the vehicle maker's ratings stand.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def advised(self, /) -> str | None:
        """
        Name of the highest gear that holds with the reserve within the ratings: lower than `chosen` advises a downshift, None
        less speed or less load.
        """
    def as_dict(self, /) -> dict:
        """
        The fields by name; the figures of the chosen gear under `gear`.
        """
    @property
    def chosen(self, /) -> str | None:
        """
        Name of the highest gear that holds with the reserve; None where none does.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def gear(self, /) -> GearPull | None:
        """
        The chosen gear; None where none holds.
        """
    @property
    def gears(self, /) -> dict:
        """
        Every gear by its name.
        """
    @property
    def grade_pct(self, /) -> float:
        """
        Grade, %.
        """
    @property
    def limit(self, /) -> str:
        """
        What the chosen gear is nearest to: `"engine"`, `"rated input"`, `"rated output"`.
        """
    @property
    def load(self, /) -> RoadLoad:
        """
        What the road takes.
        """
    @property
    def output_nm(self, /) -> float:
        """
        Torque at the output shaft, N·m; negative downhill, where the road pushes.
        """
    @property
    def output_rpm(self, /) -> float:
        """
        Output-shaft speed, 1/min.
        """
    @property
    def speed_km_h(self, /) -> float:
        """
        Road speed, km/h.
        """
    @property
    def use_of_limit(self, /) -> float:
        """
        How near: 1 at the limit, 0 where no gear is chosen.
        """
    @property
    def use_of_output(self, /) -> float:
        """
        Torque at the output over its rating.
        """

@final
class RatedFor:
    """
    What is rated.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, dual_rear: bool, gvwr_kg: float, trailer_kg: float, trailer_brakes: bool) -> RatedFor: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def dual_rear(self, /) -> bool:
        """
        The rear axle has dual wheels.
        """
    @property
    def gvwr_kg(self, /) -> float:
        """
        Gross vehicle weight rating of the truck, kg.
        """
    @property
    def trailer_brakes(self, /) -> bool:
        """
        Brakes are required on that trailer.
        """
    @property
    def trailer_kg(self, /) -> float:
        """
        Trailer weight rating, kg.
        """

@final
class RatingCheck:
    """
    A load against its rating.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, kind: str, load_kg: Reading, rating_kg: float, left_kg: float, used_share: float, trailer_limit_kg: float, proven_trailer_kg: float, judgment: Judgment, budget: Budget, weigh_next: str) -> RatingCheck: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Uncertainty of the load: front axle, rear axle, hitch load, trailer, in this order.
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
        The load against the rating.
        """
    @property
    def kind(self, /) -> str:
        """
        Which rating.
        """
    @property
    def left_kg(self, /) -> float:
        """
        Rating less load, kg.
        """
    @property
    def load_kg(self, /) -> Reading:
        """
        The load, kg.
        """
    @property
    def proven_trailer_kg(self, /) -> float:
        """
        Heaviest trailer that is a GO under the rule at the same relative uncertainties, kg.
        """
    @property
    def rating_kg(self, /) -> float:
        """
        Its rating, kg.
        """
    @property
    def trailer_limit_kg(self, /) -> float:
        """
        Trailer at which the best estimate of the load meets the rating, kg; infinite where no trailer does.
        """
    @property
    def used_share(self, /) -> float:
        """
        Load over rating.
        """
    @property
    def weigh_next(self, /) -> str:
        """
        What to weigh better where it is NOT PROVEN.
        """

@final
class RatingReview:
    """
    Every rating of a combination. A computed limit is no rating.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    def as_dict(self, /) -> dict:
        """
        Numbers, text and lists only.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def fullest_row(self, /) -> RatingRow:
        """
        The row with the greatest share used.
        """
    @property
    def given(self, /) -> int:
        """
        How many ratings were given.
        """
    @property
    def governing(self, /) -> str:
        """
        The rating that allows the lightest trailer.
        """
    @property
    def governing_row(self, /) -> RatingRow:
        """
        The row of it.
        """
    @property
    def loads(self, /) -> CombinationLoads:
        """
        Axle loads.
        """
    @property
    def payload_left_kg(self, /) -> float:
        """
        Payload left: GVWR less truck and hitch load, kg; infinite without a GVWR.
        """
    @property
    def proven_trailer_kg(self, /) -> float:
        """
        Heaviest trailer that is a GO for every rating that was given, kg.
        """
    @property
    def rows(self, /) -> list[RatingRow]:
        """
        One row for each rating, given or not.
        """
    @property
    def trailer_limit_kg(self, /) -> float:
        """
        Trailer at which the governing rating is met, kg.
        """
    @property
    def verdict(self, /) -> str:
        """
        The worst verdict of the rows; never GO while a rating is missing.
        """

@final
class RatingRow:
    """
    One rating of a review.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, kind: str, given: bool, load_kg: Reading, rating_kg: float, left_kg: float, used_share: float, trailer_limit_kg: float, proven_trailer_kg: float, chance: float, verdict: str, weigh_next: str) -> RatingRow: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def chance(self, /) -> float:
        """
        Chance that the load does not exceed the rating; 0 where none was given.
        """
    @property
    def given(self, /) -> bool:
        """
        The rating was given. If not, the row holds the load only, and its verdict is NOT PROVEN.
        """
    @property
    def kind(self, /) -> str:
        """
        Which rating.
        """
    @property
    def left_kg(self, /) -> float:
        """
        Rating less load, kg.
        """
    @property
    def load_kg(self, /) -> Reading:
        """
        The load, kg.
        """
    @property
    def proven_trailer_kg(self, /) -> float:
        """
        Heaviest trailer that is a GO, kg.
        """
    @property
    def rating_kg(self, /) -> float:
        """
        Its rating, kg; infinite where none was given.
        """
    @property
    def trailer_limit_kg(self, /) -> float:
        """
        Trailer at which the load meets the rating, kg; infinite where no trailer does.
        """
    @property
    def used_share(self, /) -> float:
        """
        Load over rating; 0 where none was given.
        """
    @property
    def verdict(self, /) -> str:
        """
        Verdict.
        """
    @property
    def weigh_next(self, /) -> str:
        """
        What to weigh better.
        """

@final
class Rig:
    """
    A combination with the engine, the unit and the drive line that pull it.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict]: ...
    def __new__(cls, /, *, haul: Haul, gearing: Gearing, engine: EngineCurve, rule: GearRule) -> Rig: ...
    def __repr__(self, /) -> str: ...
    def climb(self, /, heat: HeatModel, pieces: Sequence[RoadPiece], *, start_c: float) -> tuple[Climb, list[DrivenPiece]]:
        """
        Temperature of the sump along a road of grades, and the time until a limit: a `Climb`, and a `DrivenPiece` for each
        piece. Source: Incropera, lumped capacitance, piece by piece.
        """
    def cool_speed(self, /, heat: HeatModel, *, grade_pct: float, speed_km_h: float) -> CoolPull:
        """
        Largest speed on a long grade at which a gear holds and the sump stays at its limit or below.
        Source: steady state of `HeatNode.warmed`.
        """
    @property
    def engine(self, /) -> EngineCurve:
        """
        Full-throttle torque of the engine.
        """
    @property
    def gearing(self, /) -> Gearing:
        """
        What the unit offers.
        """
    @property
    def haul(self, /) -> Haul:
        """
        Combination and drive line.
        """
    def largest_speed(self, /, *, grade_pct: float, at_most_km_h: float, within_ratings: bool) -> LargestSpeed:
        """
        Largest speed at which a locked gear holds a grade with the reserve and, if asked, within the ratings.
        Source: as `pull`, solved exactly for the speed.
        """
    def pull(self, /, *, grade_pct: float, speed_km_h: float) -> Pull:
        """
        Speed and torque of every gear on a grade, lock-up clutch closed, and the gear that holds it. Not a rating.
        Source: road load by SAE J1263, then definitions.
        """
    def pull_slowed(self, /, *, grade_pct: float, speed_km_h: float) -> Pull:
        """
        The same, slower by the rule's step at a time until a gear holds with the reserve: how a driver loses speed.
        Source: follows from the definitions.
        """
    @property
    def rule(self, /) -> GearRule:
        """
        Choice of gear.
        """
    def unlocked_pull(self, /, converter: Characteristic, gear: str, *, grade_pct: float, speed_km_h: float) -> UnlockedPull:
        """
        A gear, by its name, on a grade with the lock-up clutch open: match of engine and converter, and the heat.
        Source: SAE J643, definitions.
        """

@final
class RoadPiece:
    """
    A piece of road.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, length_m: float, grade_pct: float, speed_km_h: float) -> RoadPiece: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def grade_pct(self, /) -> float:
        """
        Grade, rise over horizontal run, %; negative downhill.
        """
    @property
    def length_m(self, /) -> float:
        """
        Length along the road, m.
        """
    @property
    def speed_km_h(self, /) -> float:
        """
        Speed asked for, km/h.
        """

@final
class RunUp:
    """
    A combination that accelerates at full throttle.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, combination: Combination, driveline: Driveline, axle_efficiency: float, air_density_kg_m3: float, grade_pct: float = ..., wheel_inertia_kg_m2: float, engine_inertia_kg_m2: float, today: EngineToday = ..., lowest_locked_rpm: float, grip_n: float = ..., shift_s: float) -> RunUp: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def air_density_kg_m3(self, /) -> float:
        """
        Density of the air, kg/m³.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def axle_efficiency(self, /) -> float:
        """
        Efficiency of axle and transfer case, above 0 to 1.
        """
    @property
    def combination(self, /) -> Combination:
        """
        Mass, rolling and drag.
        """
    @property
    def driveline(self, /) -> Driveline:
        """
        Axle, transfer case and tire.
        """
    @property
    def engine_inertia_kg_m2(self, /) -> float:
        """
        Engine with impeller, kg·m².
        """
    @property
    def grade_pct(self, /) -> float:
        """
        Grade, %; −100 to 100.
        """
    @property
    def grip_n(self, /) -> float:
        """
        Force at which the driven tires slip, N; infinite where it is not looked at.
        """
    @property
    def lowest_locked_rpm(self, /) -> float:
        """
        Lowest engine speed with the lock-up clutch closed, 1/min.
        """
    def run_up(self, /, engine: EngineCurve, converter: Characteristic, gears: Sequence[RunUpGear], *, from_km_h: float, to_km_h: float) -> RunUpTime:
        """
        Time and distance from one speed to another through the gears at full throttle: the quickest choice of gears, so a shift
        program may be slower. Where the speed is not reached it says how far it gets.
        Source: follows from the definitions (Newton's second law).
        """
    @property
    def shift_s(self, /) -> float:
        """
        Time of a shift, in which the speed stands still, s.
        """
    @property
    def today(self, /) -> EngineToday:
        """
        What the engine gives today of its curve: altitude, accessories; as measured unless given.
        """
    @property
    def wheel_inertia_kg_m2(self, /) -> float:
        """
        All wheels together, kg·m².
        """

@final
class RunUpGear:
    """
    A gear as the run-up needs it.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, ratio: float, efficiency: float, output_inertia_kg_m2: float, lockable: bool) -> RunUpGear: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def efficiency(self, /) -> float:
        """
        Efficiency, above 0 to 1.
        """
    @property
    def lockable(self, /) -> bool:
        """
        The lock-up clutch may close in this gear.
        """
    @property
    def output_inertia_kg_m2(self, /) -> float:
        """
        Inertia of the train in this gear at its output, kg·m², the turbine counted.
        """
    @property
    def ratio(self, /) -> float:
        """
        Ratio, input over output, above 0.
        """

@final
class RunUpTime:
    """
    A run-up.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, reaches: bool, reached_km_h: float, time_s: float, distance_m: float, shifts: int, last_gear: int, start_n: float, start_m_s2: float) -> RunUpTime: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def distance_m(self, /) -> float:
        """
        Distance to that speed, m.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def last_gear(self, /) -> int:
        """
        Position of the last gear.
        """
    @property
    def reached_km_h(self, /) -> float:
        """
        Speed at the end, km/h: the one asked for, or where nothing is left to accelerate with.
        """
    @property
    def reaches(self, /) -> bool:
        """
        The speed asked for is reached.
        """
    @property
    def shifts(self, /) -> int:
        """
        Shifts on the way.
        """
    @property
    def start_m_s2(self, /) -> float:
        """
        Acceleration at the start, m/s².
        """
    @property
    def start_n(self, /) -> float:
        """
        Force of the driven wheels at the start, N, tire grip counted.
        """
    @property
    def time_s(self, /) -> float:
        """
        Time to that speed, s.
        """

@final
class Running:
    """
    A unit at work. A road efficiency of a record usually holds drag and pump: then leave both at 0, or they count twice.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, input_nm: float, input_rpm: float, efficiency: float, drag_nm: float, pump_kpa: float, pump_l_min: float, pump_efficiency: float, converter_kw: float) -> Running: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def converter_kw(self, /) -> float:
        """
        Heat of the converter, kW; 0 while it is locked.
        """
    @property
    def drag_nm(self, /) -> float:
        """
        Drag of open packs, bearings and oil, seen at the input, N·m.
        """
    @property
    def efficiency(self, /) -> float:
        """
        Efficiency of the gear, above 0 to 1.
        """
    @property
    def input_nm(self, /) -> float:
        """
        Torque at the input, N·m, either sign.
        """
    @property
    def input_rpm(self, /) -> float:
        """
        Speed of the input, 1/min.
        """
    @property
    def pump_efficiency(self, /) -> float:
        """
        Efficiency of the pump, above 0 to 1.
        """
    @property
    def pump_kpa(self, /) -> float:
        """
        Gauge pressure of the pump, kPa.
        """
    @property
    def pump_l_min(self, /) -> float:
        """
        Flow of the pump, L/min.
        """

@final
class Stance:
    """
    How a rear-driven truck and its trailer stand on a grade.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, driven_axle_kg: float, truck_kg: float, trailer_kg: float, wheelbase_mm: float, cg_height_mm: float = ..., hitch_height_mm: float = ..., tail_up: bool = ...) -> Stance: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def cg_height_mm(self, /) -> float:
        """
        Height of the truck's center of gravity, mm; 0 leaves its shift out.
        """
    @property
    def driven_axle_kg(self, /) -> float:
        """
        Load of the driven rear axle on the level, kg, the hitch load counted.
        """
    @property
    def hitch_height_mm(self, /) -> float:
        """
        Height of the ball or pin, mm; 0 leaves the pull of the trailer out.
        """
    @property
    def tail_up(self, /) -> bool:
        """
        The driven axle is the upper one: the truck climbs backward.
        """
    @property
    def trailer_kg(self, /) -> float:
        """
        Trailer, kg; 0 without one.
        """
    @property
    def truck_kg(self, /) -> float:
        """
        Truck, kg.
        """
    @property
    def wheelbase_mm(self, /) -> float:
        """
        Wheelbase, mm.
        """

@final
class ThroughFlow:
    """
    What a loss warms the oil that flows through.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, loss_kw: float, rise_k: float) -> ThroughFlow: ...
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
    def loss_kw(self, /) -> float:
        """
        Loss, kW.
        """
    @property
    def rise_k(self, /) -> float:
        """
        Rise from inlet to outlet, K.
        """

@final
class TimeTo:
    """
    When a sump reaches a limit.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, time_s: float, steady_c: float, time_constant_s: float, reached: bool) -> TimeTo: ...
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
    def reached(self, /) -> bool:
        """
        Whether it ever reaches the limit.
        """
    @property
    def steady_c(self, /) -> float:
        """
        Temperature that it goes to, °C; infinite without any cooling.
        """
    @property
    def time_constant_s(self, /) -> float:
        """
        Time in which it goes 63 % of the way, s; infinite without any cooling.
        """
    @property
    def time_s(self, /) -> float:
        """
        Time until then, s: 0 where it is there, infinite where it never will be.
        """

@final
class TotalClimb:
    """
    What a drive climbs and falls in all.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, up_m: float, down_m: float, net_m: float, turns: int) -> TotalClimb: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def down_m(self, /) -> float:
        """
        Sum of the falls, m.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def net_m(self, /) -> float:
        """
        Last elevation less the first, m.
        """
    @property
    def turns(self, /) -> int:
        """
        Turning points that lie more than the dead band apart.
        """
    @property
    def up_m(self, /) -> float:
        """
        Sum of the rises, m.
        """

@final
class TowRatings:
    """
    The ratings of a combination, from placards and labels; infinite (the default) where one is not known.

    >>> TowRatings(gvwr_kg=4500).gcwr_kg
    inf
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, gcwr_kg: float = ..., gvwr_kg: float = ..., gawr_front_kg: float = ..., gawr_rear_kg: float = ..., tires_front_kg: float = ..., tires_rear_kg: float = ..., maker_trailer_kg: float = ..., hitch_trailer_kg: float = ..., hitch_load_kg: float = ..., trailer_gross_kg: float = ...) -> TowRatings: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def gawr_front_kg(self, /) -> float:
        """
        Front gross axle weight rating, kg.
        """
    @property
    def gawr_rear_kg(self, /) -> float:
        """
        Rear gross axle weight rating, kg.
        """
    @property
    def gcwr_kg(self, /) -> float:
        """
        Gross combination weight rating, kg.
        """
    @property
    def gvwr_kg(self, /) -> float:
        """
        Gross vehicle weight rating of the truck, kg.
        """
    @property
    def hitch_load_kg(self, /) -> float:
        """
        Greatest hitch load that the hitch is rated for, kg.
        """
    @property
    def hitch_trailer_kg(self, /) -> float:
        """
        Heaviest trailer that the hitch is rated for, kg.
        """
    @property
    def maker_trailer_kg(self, /) -> float:
        """
        Heaviest trailer that the vehicle maker allows, kg.
        """
    @property
    def tires_front_kg(self, /) -> float:
        """
        Tires of the front axle together, kg: `axle_tires_kg`.
        """
    @property
    def tires_rear_kg(self, /) -> float:
        """
        Tires of the rear axle together, kg.
        """
    @property
    def trailer_gross_kg(self, /) -> float:
        """
        Gross rating of the trailer, kg.
        """

@final
class Trailer:
    """
    A loaded trailer.

    >>> from trainwright.judge import Reading
    >>> Trailer.by_share(mass_kg=Reading(value=4000, u=20), hitch_share=Reading(value=0.12, u=0.01)).hitch_kg.value
    480.0
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, mass_kg: Reading, hitch_kg: Reading) -> Trailer: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @staticmethod
    def by_share(*, mass_kg: Reading, hitch_share: Reading) -> Trailer:
        """
        A trailer of which the share that rests on the hitch is known.
        Source: follows from the definitions (share of a mass).
        """
    @property
    def hitch_kg(self, /) -> Reading:
        """
        What rests on the hitch without a weight-distributing hitch, kg.
        """
    @property
    def mass_kg(self, /) -> Reading:
        """
        Mass, kg, weighed uncoupled: what its axles and its coupler or pin carry together.
        """

@final
class UnitLoss:
    """
    What a unit turns into heat.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, mesh_kw: float, drag_kw: float, pump_kw: float, converter_kw: float, total_kw: float) -> UnitLoss: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def converter_kw(self, /) -> float:
        """
        Converter, kW.
        """
    @property
    def drag_kw(self, /) -> float:
        """
        Drag, kW.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def mesh_kw(self, /) -> float:
        """
        Meshes, and whatever else the efficiency of the gear holds, kW.
        """
    @property
    def pump_kw(self, /) -> float:
        """
        Pump, kW: all that drives it ends as heat.
        """
    @property
    def total_kw(self, /) -> float:
        """
        Sum, kW.
        """

@final
class UnlockedPull:
    """
    One gear on a grade with the lock-up clutch open.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, turbine_rpm: float, turbine_nm: float, speed_ratio: float, torque_ratio: float, engine_rpm: float, engine_nm: float, full_nm: float, reserve: float, holds: bool, use_of_input: float, converter_kw: float) -> UnlockedPull: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def converter_kw(self, /) -> float:
        """
        Heat of the converter, kW.
        """
    @property
    def engine_nm(self, /) -> float:
        """
        Engine torque that the converter takes there, N·m.
        """
    @property
    def engine_rpm(self, /) -> float:
        """
        Engine speed, 1/min.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def full_nm(self, /) -> float:
        """
        Full-throttle torque of the engine at that speed, N·m; 0 where its table does not say.
        """
    @property
    def holds(self, /) -> bool:
        """
        The engine can give that torque at that speed.
        """
    @property
    def reserve(self, /) -> float:
        """
        Share of full torque in hand; negative where the engine is too weak, 0 where its table does not say.
        """
    @property
    def speed_ratio(self, /) -> float:
        """
        Turbine speed over engine speed.
        """
    @property
    def torque_ratio(self, /) -> float:
        """
        Turbine torque over engine torque.
        """
    @property
    def turbine_nm(self, /) -> float:
        """
        Torque there, N·m.
        """
    @property
    def turbine_rpm(self, /) -> float:
        """
        Speed of turbine and input shaft, 1/min.
        """
    @property
    def use_of_input(self, /) -> float:
        """
        Torque at the turbine over the rating of the input.
        """

@final
class Warmed:
    """
    A sump after a time.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, temp_c: float, steady_c: float, time_constant_s: float) -> Warmed: ...
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
    def steady_c(self, /) -> float:
        """
        Temperature that it goes to, °C; infinite without any cooling.
        """
    @property
    def temp_c(self, /) -> float:
        """
        Temperature then, °C.
        """
    @property
    def time_constant_s(self, /) -> float:
        """
        Time in which it goes 63 % of the way, s; infinite without any cooling.
        """

def axle_loads(weighed: AxleWeights, trailer: Trailer, levers: Levers, distribution: Distribution | None = None) -> CombinationLoads:
    """
    Loads of the axles of a truck and of its trailer from the scale, the hitch load and the levers.
    Source: follows from the definitions (equilibrium of moments).

    >>> from trainwright.judge import Reading
    >>> weighed = AxleWeights(front_kg=Reading.exact(1650), rear_kg=Reading.exact(1250))
    >>> trailer = Trailer(mass_kg=Reading.exact(4000), hitch_kg=Reading.exact(450))
    >>> loads = axle_loads(weighed, trailer, Levers(wheelbase_mm=3900, overhang_mm=1300))
    >>> loads.front_kg.value, loads.rear_kg.value
    (1500.0, 1850.0)
    """

def axle_tires_kg(*, tire_kg: float, tires: int, passenger: bool = False) -> float:
    """
    What the tires of an axle carry together, kg. `tire_kg` is that of one tire as it is fitted: the dual load where two stand
    side by side. `passenger` says that passenger tires are on a truck or trailer: their load is divided by 1.10.
    Source: 49 CFR 571.120, read in a letter of interpretation.

    >>> from trainwright.tire import load_index_kg
    >>> axle_tires_kg(tire_kg=load_index_kg(121), tires=2)
    2900.0
    """

def check_criterion(criterion: str, value: Reading | None, rated: RatedFor, rule: Rule, *, never: bool = False) -> CriterionCheck:
    """
    A result, measured or computed, against one of the published criteria. `value` is None where there is none; `never` says
    that the speed of an acceleration is never reached. Meeting a criterion is no rating, and a computed value is not the test.
    Source: SAE J2807, read in secondary summaries.

    >>> from trainwright.judge import Reading, Rule
    >>> rated = RatedFor(dual_rear=False, gvwr_kg=4500, trailer_kg=6000, trailer_brakes=True)
    >>> rule = Rule.stated_chances(go=0.95, no_go=0.05)
    >>> check_criterion("0 to 60 mph", Reading(value=29.5, u=0.6), rated, rule)
    <0 to 60 mph: not proven>
    >>> check_criterion("stop", None, rated, rule).outcome
    'not given'
    """

def converter_loss_kw(*, engine_nm: ArrayLike, engine_rpm: ArrayLike, speed_ratio: ArrayLike, torque_ratio: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Heat, kW, of a converter that is not locked. Source: SAE J643, definitions.

    >>> round(converter_loss_kw(engine_nm=400, engine_rpm=1500, speed_ratio=0.5, torque_ratio=1.4), 2)
    18.85
    """

def cooler_size(arrangement: str, task: CoolerTask, *, oil_w_k: float, air_w_k: float) -> CoolerSize:
    """
    Size of a cooler that brings oil from one temperature to another. Source: Incropera, number of transfer units.

    >>> task = CoolerTask(oil_in_c=150, oil_out_c=40, air_in_c=21)
    >>> round(cooler_size("counterflow", task, oil_w_k=4989.46, air_w_k=5694.32).effectiveness, 4)
    0.8527
    """

def criterion_limits(criterion: str, rated: RatedFor) -> Limits:
    """
    What a published criterion asks of a vehicle: times in s, speeds in km/h, distances in m, grades in %, angles in degrees.
    Source: SAE J2807, read in secondary summaries.

    >>> from trainwright.units import lb_to_kg
    >>> rated = RatedFor(dual_rear=False, gvwr_kg=lb_to_kg(10000), trailer_kg=lb_to_kg(12000), trailer_brakes=True)
    >>> criterion_limits("0 to 60 mph", rated).upper
    30.0
    """

def effectiveness(arrangement: str, *, transfer_units: ArrayLike, capacity_ratio: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Share of the greatest possible heat that a cooler of an arrangement passes. Source: Incropera, effectiveness relations.

    >>> effectiveness("counterflow", transfer_units=1, capacity_ratio=1)
    0.5
    """

def equivalent_mass(driveline: Driveline, *, mass_kg: float, wheel_inertia_kg_m2: float, output_inertia_kg_m2: float) -> EquivalentMass:
    """
    Mass that the force of the driven wheels accelerates, rotating parts counted.
    Source: follows from the definitions (kinetic energy of what turns).
    """

def flow_heat_w_k(*, flow_l_min: ArrayLike, density_kg_m3: ArrayLike, specific_heat_j_kg_k: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Heat that a flow carries for each kelvin, W/K. Source: follows from the definitions.
    """

def gawr_left_kg(*, gvwr_kg: ArrayLike, gawr_front_kg: ArrayLike, gawr_rear_kg: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Sum of the axle ratings over the gross vehicle weight rating, kg: below 0 the ratings contradict each other.
    Source: 49 CFR 567, read in a letter of interpretation.

    >>> gawr_left_kg(gvwr_kg=4500, gawr_front_kg=2100, gawr_rear_kg=2800)
    400.0
    """

def gearing(family: Family, variant: str) -> Gearing:
    """
    What a variant of a family offers: ratios from the teeth, road efficiencies and ratings as the record states them.
    """

def grip_on_grade(stance: Stance, *, grade_pct: float, tire_friction: float, rolling_coefficient: float) -> LaunchGrip:
    """
    Force at which the tires of the driven rear axle slip on a grade, and the grade on which they do.
    Source: follows from the definitions (friction of an axle, moments about the front axle).

    >>> stance = Stance(driven_axle_kg=2500, truck_kg=4200, trailer_kg=6000, wheelbase_mm=3800)
    >>> round(grip_on_grade(stance, grade_pct=12, tire_friction=0.7, rolling_coefficient=0.011).largest_grade_pct, 1)
    16.1
    """

def gvwr_class(*, gvwr_kg: float) -> int:
    """
    Class of a truck by its gross vehicle weight rating in the United States, 1 to 8.
    Source: 49 CFR 565.15, read in a secondary summary.

    >>> from trainwright.units import lb_to_kg
    >>> gvwr_class(gvwr_kg=lb_to_kg(14000)), gvwr_class(gvwr_kg=lb_to_kg(14001))
    (3, 4)
    """

def gvwr_least_kg(*, unloaded_kg: float, cargo_kg: float, seats: int) -> float:
    """
    Least gross vehicle weight rating, kg, that a maker may state: unloaded, rated cargo and 150 lb a seat.
    Source: 49 CFR 567.4(g)(3), read in a letter of interpretation.

    >>> round(gvwr_least_kg(unloaded_kg=2540, cargo_kg=998, seats=6))
    3946
    """

def output_inertia_kg_m2(state: State, inertia_kg_m2: dict[str, float]) -> float:
    """
    Moment of inertia, kg·m², of a whole gear train in a gear, referred to its output. `inertia_kg_m2` maps members to theirs;
    a member that is not named has none. Source: follows from the definitions (kinetic energy of the members).
    """

def pieces(distance_m: Sequence[float], elevation_m: Sequence[float], *, piece_m: float, speed_km_h: float) -> list[RoadPiece]:
    """
    Pieces of road of one length from smoothed elevations; the last may be shorter. Source: definition of the grade.

    >>> [round(piece.grade_pct, 2) for piece in pieces([0, 100, 200], [0, 6, 6], piece_m=100, speed_km_h=60)]
    [6.01, 0.0]
    """

def restoring_moment_nm(levers: Levers, *, hitch_kg: ArrayLike, ball_to_axle_mm: ArrayLike, restored_share: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Moment, N·m, of a weight-distributing hitch that gives the front axle back a part of what the hitch load lifted off it.
    Which part is right says the maker of vehicle and hitch. Source: follows from the definitions (`axle_loads` solved).

    >>> levers = Levers(wheelbase_mm=3900, overhang_mm=1300)
    >>> round(restoring_moment_nm(levers, hitch_kg=450, ball_to_axle_mm=5200, restored_share=0.5))
    2295
    """

def rig(family: Family, fleet: Fleet, truck: str, *, speed_step_km_h: float, tire: str | None = None, trailer_kg: float | None = None) -> Rig:
    """
    A truck of a fleet with its unit. Where the fleet knows only candidates for the tire or a range for the trailer, name one
    with `tire` and `trailer_kg`. `speed_step_km_h` is how a speed is lowered where no gear holds.
    """

def share_band_kg(*, mass_kg: float, share: Limits) -> Limits:
    """
    Hitch loads, kg, that a band of shares allows a trailer. Trade guidance stands in `practice`; the trailer maker's own goes
    before it. Source: common practice.

    >>> from trainwright import practice
    >>> from trainwright.judge import Limits
    >>> share_band_kg(mass_kg=4000, share=Limits(lower=practice.TONGUE_SHARE_LOW, upper=practice.TONGUE_SHARE_HIGH))
    Limits(lower=400.0, upper=600.0)
    """

def smooth(distance_m: Sequence[float], elevation_m: Sequence[float], *, window_m: float, noise: ElevationNoise) -> dict:
    """
    Elevation and grade along a drive from noisy elevations, as a dictionary of arrays: `distance_m`, `elevation_m`,
    `grade_pct`, `u_grade_pct`, `points`. The straight line of least squares in a window of `window_m`; the uncertainty of the
    grade counts errors that stay alike over a distance. Source: Savitzky and Golay, first degree, for uneven steps.

    >>> noise = ElevationNoise(u_m=1, correlation_m=0)
    >>> smooth([0, 50, 100, 150], [10, 12, 14, 16], window_m=200, noise=noise)["grade_pct"].round(3)
    array([4.003, 4.003, 4.003, 4.003])
    """

def through_flow_rise(*, power_kw: ArrayLike, efficiency: ArrayLike, flow_l_min: ArrayLike, density_kg_m3: ArrayLike, specific_heat_j_kg_k: ArrayLike) -> Any:
    """
    What a loss warms the oil that flows through: a `ThroughFlow`, or a dictionary of arrays. Source: energy balance.

    >>> round(through_flow_rise(power_kw=150, efficiency=0.92, flow_l_min=12, density_kg_m3=815, specific_heat_j_kg_k=2100).rise_k, 2)
    35.06
    """

def total_climb(elevation_m: Sequence[float], *, dead_band_m: float) -> TotalClimb:
    """
    What a drive climbs and falls in all, without counting noise below the dead band. Source: common practice.

    >>> total_climb([0, 10, 9, 12, 2], dead_band_m=3).up_m
    12.0
    """

def transfer_units(arrangement: str, *, effectiveness: ArrayLike, capacity_ratio: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Transfer units for an effectiveness. Source: Incropera, relations of the number of transfer units.

    >>> transfer_units("counterflow", effectiveness=0.5, capacity_ratio=1)
    1.0
    """

def unit_loss(running: Running) -> UnitLoss:
    """
    Heat that a unit makes. Source: power in less power out.

    >>> at_work = Running(input_nm=400, input_rpm=2000, efficiency=0.97, drag_nm=0, pump_kpa=0, pump_l_min=0, pump_efficiency=1,
    ...                   converter_kw=0)
    >>> round(unit_loss(at_work).total_kw, 3)
    2.513
    """
