"""
How much of its life a duty uses, and which trucks come first. A computed damage ranks; it does not promise a life.
"""

from . import Explanation
from .judge import Reading
from .record import Family, Fleet
from .road import Driveline
from .train import State
from collections.abc import Sequence
from numpy.typing import ArrayLike
from typing import Any, Final, final

__all__ = ["AgingRule", "BearingDuty", "BusSignal", "BusValue", "CauseFit", "CauseFound", "CycleCount", "Damage", "DamageInterval", "DamageLine", "DamageRange", "FluidLife", "GradeHours", "MeshDuty", "RankInterval", "RatioCause", "RatioRule", "Residence", "SpeedsRatio", "TruckDuty", "WheelDuty", "bootstrap_ranks", "bus_signal", "damage_interval", "fluid_life", "mesh_duty", "other_driveline", "other_teeth", "rainflow", "rank_intervals", "ratio_of", "resampled_total", "residence", "screen_power", "truck_duty", "truck_duty_cases", "weigh_causes", "wheel_causes"]

@final
class AgingRule:
    """
    How the rate of aging follows the temperature: `AgingRule.halving(...)` or `AgingRule.arrhenius(...)`.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, kind: str, reference_c: float, halving_k: float = ..., activation_k: float = ..., least_factor: float) -> AgingRule: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def activation_k(self, /) -> float:
        """
        Activation energy over the gas constant, K.
        """
    def aging_factor(self, /, temp_c: ArrayLike) -> Any:
        """
        How many times faster than at the reference temperature fluid ages. Source: common practice, no source.

        >>> AgingRule.halving(reference_c=80, halving_k=10, least_factor=1).aging_factor([60, 80, 100]).tolist()
        [1.0, 1.0, 4.0]
        """
    @staticmethod
    def arrhenius(*, reference_c: float, activation_k: float) -> AgingRule:
        """
        Reaction rate of laboratory data. Source: Arrhenius form.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @staticmethod
    def halving(*, reference_c: float, halving_k: float, least_factor: float) -> AgingRule:
        """
        Twice as fast for each step of temperature above a reference. Source: common practice, no source.
        """
    @property
    def halving_k(self, /) -> float:
        """
        Step of temperature that doubles the rate, K.
        """
    @property
    def kind(self, /) -> str:
        """
        `"halving"` or `"arrhenius"`.
        """
    @property
    def least_factor(self, /) -> float:
        """
        Least factor: 1 never counts cooler hours as less than those at the reference, 0 lets the rule run on.
        """
    @property
    def reference_c(self, /) -> float:
        """
        Temperature at which the factor is 1, °C.
        """

@final
class BearingDuty:
    """
    A needle thrust bearing in the duty of a truck. Computed from its sizes by ISO 281: not a maker's rating.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, used: float, greatest_n: float, dynamic_n: float, governing: int) -> BearingDuty: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def dynamic_n(self, /) -> float:
        """
        Dynamic capacity, N.
        """
    @property
    def governing(self, /) -> int:
        """
        Hours that do most, place in `hours`.
        """
    @property
    def greatest_n(self, /) -> float:
        """
        Greatest push, N.
        """
    @property
    def used(self, /) -> float:
        """
        Share of the life that nine of ten reach.
        """

@final
class BusSignal:
    """
    A signal of a vehicle bus: `rules` are `"marked"` (J1939: the top of the range holds marks) or `"plain"` (diagnostics).
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, rules: str, bits: int, resolution: float, offset: float = ..., lower: float = ..., upper: float = ...) -> BusSignal: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bits(self, /) -> int:
        """
        Width: 8, 16 or 32.
        """
    def classify(self, /, value: ArrayLike) -> Any:
        """
        Whether values that somebody scaled already are values, or marks scaled by mistake; answers as `decode`.
        Source: SAE J1939-71, read backward.

        >>> bus_signal(network="J1939", number=191).classify(8191.875).meaning
        'not available'
        """
    def decode(self, /, raw: ArrayLike) -> Any:
        """
        What raw values mean: a `BusValue`, or for an array a dictionary of `value` (NaN where it is none) and `meaning` (0
        value, 1 out of range, 2 indicator, 3 reserved, 4 error, 5 not available). Source: SAE J1939-71.

        >>> bus_signal(network="J1939", number=177).decode(0xFFFF).meaning
        'not available'
        """
    @property
    def lower(self, /) -> float:
        """
        Least physical value that can be true.
        """
    @property
    def offset(self, /) -> float:
        """
        Physical value of raw 0.
        """
    @property
    def resolution(self, /) -> float:
        """
        Physical value of one step.
        """
    @property
    def rules(self, /) -> str:
        """
        Which values are marks.
        """
    def step_error(self, /, value: ArrayLike) -> Any:
        """
        Greatest relative error that the steps of the signal put into a value. Source: half a step.

        >>> bus_signal(network="OBD", number=0x0D).step_error(20)
        0.025
        """
    @property
    def upper(self, /) -> float:
        """
        Greatest physical value that can be true.
        """

@final
class BusValue:
    """
    A decoded raw value. Compute only where `meaning` is `"value"`.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, meaning: str, value: float) -> BusValue: ...
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
    def meaning(self, /) -> str:
        """
        `"value"`, `"out of range"`, `"indicator"`, `"reserved"`, `"error"` or `"not available"`.
        """
    @property
    def value(self, /) -> float:
        """
        The scaled number, whatever it means.
        """

@final
class CauseFit:
    """
    How a cause fits.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, chance: float, road_z: float, gear_z: float) -> CauseFit: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def chance(self, /) -> float:
        """
        Chance among the causes listed.
        """
    @property
    def gear_z(self, /) -> float:
        """
        Deviation of the gear ratios in standard uncertainties; 0 where they are not known.
        """
    @property
    def road_z(self, /) -> float:
        """
        Deviation of the road ratio in standard uncertainties.
        """

@final
class CauseFound:
    """
    What the weighing of causes came to.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    @property
    def best(self, /) -> str:
        """
        Name of the best cause.
        """
    @property
    def chance(self, /) -> float:
        """
        Its chance among the causes listed.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    def fits(self, /) -> dict:
        """
        How each cause fits: `CauseFit` by name.
        """
    @property
    def gear_z(self, /) -> float:
        """
        Its deviation of the gear ratios in standard uncertainties; 0 where they are not known.
        """
    @property
    def kind(self, /) -> str:
        """
        `"explained"`, `"cannot tell"` or `"none fits"`.
        """
    @property
    def road_z(self, /) -> float:
        """
        Its deviation of the road ratio in standard uncertainties.
        """

@final
class CycleCount:
    """
    What was counted in a history.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, cycles: float, entries: int, reversals: int, pieces: int, missing: int, largest_range: float) -> CycleCount: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def cycles(self, /) -> float:
        """
        Cycles, half ones as halves.
        """
    @property
    def entries(self, /) -> int:
        """
        Entries written.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def largest_range(self, /) -> float:
        """
        Greatest range counted.
        """
    @property
    def missing(self, /) -> int:
        """
        Missing values.
        """
    @property
    def pieces(self, /) -> int:
        """
        Pieces between gaps.
        """
    @property
    def reversals(self, /) -> int:
        """
        Turning points.
        """

@final
class Damage:
    """
    Damage of a duty. It ranks; it does not promise a life.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, total: float, greatest: float, governing: int, governing_share: float, contacts: float) -> Damage: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def contacts(self, /) -> float:
        """
        Contacts of all stages.
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
        That stage.
        """
    @property
    def governing_share(self, /) -> float:
        """
        Its part of the sum, 0 to 1.
        """
    @property
    def greatest(self, /) -> float:
        """
        Damage of the stage that does most.
        """
    @property
    def total(self, /) -> float:
        """
        Sum over the stages; 1 where the reference line is met.
        """

@final
class DamageInterval:
    """
    Least and greatest damage.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, lower: float, upper: float, slope_at_lower: float, slope_at_upper: float) -> DamageInterval: ...
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
    def lower(self, /) -> float:
        """
        Least damage.
        """
    @property
    def slope_at_lower(self, /) -> float:
        """
        Slope at the least damage.
        """
    @property
    def slope_at_upper(self, /) -> float:
        """
        Slope at the greatest damage.
        """
    @property
    def upper(self, /) -> float:
        """
        Greatest damage.
        """

@final
class DamageLine:
    """
    Life of a part against its torque: a straight line between the logarithms.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, slope: float, reference_nm: float, reference_contacts: float) -> DamageLine: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    def damage(self, /, *, contacts: Any, torque_nm: Any) -> Damage:
        """
        Damage that a duty collects, stage by stage. Source: M. A. Miner, 1945.

        >>> line = DamageLine(slope=3, reference_nm=100, reference_contacts=1e6)
        >>> round(line.damage(contacts=[1e5, 5e5], torque_nm=[200, 100]).total, 12)
        1.3
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @staticmethod
    def from_rating(*, slope: float, reference_contacts: float, over_rated: float, worst_share: float, rated_nm: float) -> DamageLine:
        """
        Line of damage of a gear set from the rating of its unit. Source: the record's rule.

        >>> line = DamageLine.from_rating(slope=6.5, reference_contacts=1e6, over_rated=2.0, worst_share=0.6356, rated_nm=640)
        >>> round(line.reference_nm, 1)
        813.6
        """
    @property
    def reference_contacts(self, /) -> float:
        """
        Reference number of contacts (or load cycles, or turns).
        """
    @property
    def reference_nm(self, /) -> float:
        """
        Torque at which the reference number of contacts is reached, N·m.
        """
    @property
    def slope(self, /) -> float:
        """
        Slope m: life falls with the m-th power of torque; 1 to 20.
        """

@final
class DamageRange:
    """
    What is known of a line of damage.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, slope_low: float, slope_high: float, reference_low_nm: float, reference_high_nm: float, reference_contacts: float) -> DamageRange: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def reference_contacts(self, /) -> float:
        """
        Reference number of contacts.
        """
    @property
    def reference_high_nm(self, /) -> float:
        """
        Greatest reference torque, N·m.
        """
    @property
    def reference_low_nm(self, /) -> float:
        """
        Least reference torque, N·m.
        """
    @property
    def slope_high(self, /) -> float:
        """
        Greatest slope.
        """
    @property
    def slope_low(self, /) -> float:
        """
        Least slope.
        """

@final
class FluidLife:
    """
    Share of its life that fluid has used. Not a drain interval: the maker's is.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, used: float, used_lower: float, used_upper: float, known_h: float, left_h: float, worst_share: float, worst_from_c: float) -> FluidLife: ...
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
    def known_h(self, /) -> float:
        """
        Known hours, h.
        """
    @property
    def left_h(self, /) -> float:
        """
        Hours left in the same use, h; 0 where the life is used up.
        """
    @property
    def used(self, /) -> float:
        """
        Share used in the known hours.
        """
    @property
    def used_lower(self, /) -> float:
        """
        Share used if the unknown hours were as cool as the coolest bin.
        """
    @property
    def used_upper(self, /) -> float:
        """
        Share used if the unknown hours were as hot as the hottest bin.
        """
    @property
    def worst_from_c(self, /) -> float:
        """
        Temperature from which those hours count, °C.
        """
    @property
    def worst_share(self, /) -> float:
        """
        Part of the used share that the hottest 5 % of the known hours did.
        """

@final
class GradeHours:
    """
    Hours on one grade, driven as the record chooses a gear.
    """
    def __repr__(self, /) -> str: ...
    @property
    def asked_km_h(self, /) -> float:
        """
        Speed asked for, km/h.
        """
    @property
    def duration_h(self, /) -> float:
        """
        Hours of the record, h.
        """
    @property
    def gear(self, /) -> str:
        """
        Gear.
        """
    @property
    def grade_pct(self, /) -> float:
        """
        Grade, %.
        """
    @property
    def input_nm(self, /) -> float:
        """
        Torque at the input, N·m.
        """
    @property
    def input_rpm(self, /) -> float:
        """
        Speed of the input, 1/min.
        """
    @property
    def speed_km_h(self, /) -> float:
        """
        Speed held, km/h.
        """
    @property
    def use_of_rating(self, /) -> float:
        """
        Torque over rating: the greater of input and output.
        """

@final
class MeshDuty:
    """
    What the teeth of a planetary set see in a gear, per turn of the input and per unit of its torque.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def planet_2_contacts(self, /) -> float | None:
        """
        The same for the second planet.
        """
    @property
    def planet_contacts(self, /) -> float | None:
        """
        Times that a tooth of a planet meets each of its partners per turn of the input; `None` where its teeth are not known.
        """
    @property
    def planets(self, /) -> int:
        """
        Planets, or pairs of planets, around the sun.
        """
    @property
    def ring(self, /) -> WheelDuty | None:
        """
        The ring; `None` where the set has none.
        """
    @property
    def sun(self, /) -> WheelDuty | None:
        """
        The sun; the large sun of a two-sun set.
        """
    @property
    def sun_2(self, /) -> WheelDuty | None:
        """
        The second sun of a stepped set, the small sun of a two-sun set; else `None`.
        """

@final
class RankInterval:
    """
    Places that a truck can take; 1 is the greatest value.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, first: int, last: int) -> RankInterval: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def first(self, /) -> int:
        """
        Best place.
        """
    @property
    def last(self, /) -> int:
        """
        Worst place.
        """

@final
class RatioCause:
    """
    Something that explains a ratio of speeds.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, road: Reading, gear: float = ..., weight: float = ...) -> RatioCause: ...
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
    def gear(self, /) -> float:
        """
        Measured over true gear ratio that it makes, in every gear: 1 but for a sensor.
        """
    @property
    def road(self, /) -> Reading:
        """
        True over shown road speed that it makes.
        """
    @property
    def weight(self, /) -> float:
        """
        Weight before the measurement, above 0.
        """

@final
class RatioRule:
    """
    How a ratio of two speeds is measured.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, least: float, quantum: float, u_rel: float, block_rows: int) -> RatioRule: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def block_rows(self, /) -> int:
        """
        Rows of a block: as many as lean on one another, 1 or more.
        """
    @property
    def least(self, /) -> float:
        """
        Least speed of both that counts, above 0.
        """
    @property
    def quantum(self, /) -> float:
        """
        Step of the shown speed, 0 or more.
        """
    @property
    def u_rel(self, /) -> float:
        """
        Relative standard uncertainty of the true speed that is common to all rows.
        """

@final
class Residence:
    """
    Time of a history outside its bins, and time that nobody knows.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, inside_s: float, below_s: float, above_s: float, missing_s: float, gap_s: float, duplicates: int, reversed: int) -> Residence: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def above_s(self, /) -> float:
        """
        At the last edge or above it, s.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def below_s(self, /) -> float:
        """
        Below the first edge, s.
        """
    @property
    def duplicates(self, /) -> int:
        """
        Samples with the time of the one before.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def gap_s(self, /) -> float:
        """
        In gaps of the time stamps, s: neither rest nor use.
        """
    @property
    def inside_s(self, /) -> float:
        """
        In the bins together, s.
        """
    @property
    def missing_s(self, /) -> float:
        """
        With a missing value, s: neither rest nor use.
        """
    @property
    def reversed(self, /) -> int:
        """
        Samples earlier than the one before.
        """

@final
class SpeedsRatio:
    """
    A measured ratio of two speeds.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, ratio: Reading, scatter_u: float, step_u: float, true_u: float, mean_shown: float, used: int, slow: int, missing: int, blocks: int) -> SpeedsRatio: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def blocks(self, /) -> int:
        """
        Whole blocks.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def mean_shown(self, /) -> float:
        """
        Mean of the shown speed over the rows used.
        """
    @property
    def missing(self, /) -> int:
        """
        Rows with a missing, negative or infinite value.
        """
    @property
    def ratio(self, /) -> Reading:
        """
        True over shown.
        """
    @property
    def scatter_u(self, /) -> float:
        """
        Part of its uncertainty from the scatter of the blocks.
        """
    @property
    def slow(self, /) -> int:
        """
        Rows too slow.
        """
    @property
    def step_u(self, /) -> float:
        """
        Part from the step of the shown speed.
        """
    @property
    def true_u(self, /) -> float:
        """
        Part from the true speed.
        """
    @property
    def used(self, /) -> int:
        """
        Rows used.
        """

@final
class TruckDuty:
    """
    Damage of a truck's hours, set by set, under one assumption about what is not known of it. It ranks; it does not promise a
    life.
    """
    def __repr__(self, /) -> str: ...
    @property
    def bearing(self, /) -> BearingDuty | None:
        """
        The thrust bearing of the record; `None` where it does not say what pushes on it.
        """
    @property
    def damage(self, /) -> float:
        """
        Damage of that set.
        """
    @property
    def hours(self, /) -> list[GradeHours]:
        """
        Its hours, grade by grade.
        """
    def interval(self, /, *, slope_low: float, slope_high: float, reference_share: float) -> DamageInterval:
        """
        Damage of the worst set where its slope is only known within limits, and its reference torque to a relative half width.
        Source: follows from the definitions (convex in the slope).
        """
    @property
    def lines(self, /) -> dict:
        """
        Line of damage by set; `None` for a set that carries nothing in any forward gear.
        """
    @property
    def sets(self, /) -> dict:
        """
        Damage by set: a `Damage` by name.
        """
    @property
    def tire(self, /) -> str:
        """
        Tire assumed or recorded.
        """
    @property
    def trailer_kg(self, /) -> float:
        """
        Mass of the trailer, assumed or recorded, kg.
        """
    @property
    def truck(self, /) -> str:
        """
        Name of the truck.
        """
    @property
    def variant(self, /) -> str:
        """
        Variant of its unit.
        """
    @property
    def worst_hours(self, /) -> GradeHours | None:
        """
        The hours with the greatest torque over rating.
        """
    @property
    def worst_set(self, /) -> str:
        """
        Name of the set with the greatest damage.
        """

@final
class WheelDuty:
    """
    What one wheel of a set sees, per turn of the input and per unit of its torque.
    """
    def __repr__(self, /) -> str: ...
    @property
    def contacts(self, /) -> float | None:
        """
        Times that each of its teeth meets a planet per turn of the input.
        """
    @property
    def contacts_exact(self, /) -> Any | None:
        """
        `contacts` as an exact fraction.
        """
    @property
    def torque(self, /) -> float | None:
        """
        Torque of the set on it per unit input torque, forward positive; `None` where statics cannot tell.
        """
    @property
    def torque_exact(self, /) -> Any | None:
        """
        `torque` as an exact fraction.
        """

def bootstrap_ranks(periods: Sequence[Any], *, seed: int, draws: int, coverage: float) -> list[RankInterval]:
    """
    Places that each truck keeps in a given share of `draws` resampled years; `periods` is a list of one row of values per truck.
    Source: B. Efron and R. J. Tibshirani, 1993 (percentiles of the resampled place).

    >>> bootstrap_ranks([[9, 8, 9, 9], [1, 2, 1, 1]], seed=1, draws=200, coverage=0.9)
    [RankInterval(first=1, last=1), RankInterval(first=2, last=2)]
    """

def bus_signal(*, network: str, number: int) -> BusSignal:
    """
    A signal by its number on its bus (`"J1939"` or `"OBD"`): width, resolution, offset.

    Source: SAE J1939-71 and SAE J1979. The same numbers mean other things on an older J1587 bus.

    >>> bus_signal(network="J1939", number=191).decode(12000).value
    1500.0
    """

def damage_interval(*, contacts: Any, torque_nm: Any, known: DamageRange) -> DamageInterval:
    """
    Least and greatest damage of a duty where slope and reference are only known within limits.
    Source: follows from the definitions (convex in the slope).

    >>> known = DamageRange(slope_low=5, slope_high=8, reference_low_nm=100, reference_high_nm=100, reference_contacts=1e6)
    >>> damage_interval(contacts=[1e6], torque_nm=[50], known=known).upper
    0.03125
    """

def fluid_life(*, temp_c: Any, duration_h: Any, unknown_h: float, life_h: float, rule: AgingRule) -> FluidLife:
    """
    Share of its life that fluid has used, from hours at temperature, and what is left in the same use.

    `unknown_h` are hours without a temperature: unknown, neither cool nor hot. Source: common practice, no source.

    >>> rule = AgingRule.halving(reference_c=80, halving_k=10, least_factor=1)
    >>> round(fluid_life(temp_c=[80, 120], duration_h=[400, 40], unknown_h=0, life_h=4000, rule=rule).used, 6)
    0.26
    """

def mesh_duty(state: State, *, set: str) -> MeshDuty:
    """
    How often each tooth of a set meets a planet in a gear of a `Train`, and the torque of its wheel: a `MeshDuty`.

    The planets of the set must be counted in the record. Source: speeds and torques of a set, H. W. Müller (1982).
    """

def other_driveline(programmed: Driveline, fitted: Driveline, *, weight: float) -> RatioCause:
    """
    What another tire or axle than programmed does to the speed shown: a `RatioCause`.
    Source: follows from the definitions (road speed over the speed that the unit computes).
    """

def other_teeth(*, programmed: int, fitted: int, weight: float) -> RatioCause:
    """
    What another tooth count of the output speed sensor's wheel does to road speed and gear ratios: a `RatioCause`.
    Source: follows from the definitions (turns are pulses over teeth).

    >>> other_teeth(programmed=40, fitted=50, weight=1).gear
    0.8
    """

def rainflow(values: Any, *, residue: str) -> tuple[CycleCount, dict]:
    """
    Cycles of a history by rainflow counting: a `CycleCount`, and a dictionary of arrays `range`, `mean` and `cycles` (1 or 0.5),
    one entry for each. NaN is a missing value and ends a piece: what happened there is unknown.

    `residue`: turning points that close no cycle are `"half cycles"`, or the history is `"repeated"`.
    Source: ASTM E1049-85, 5.4.4 and 5.4.5.

    >>> count, cycles = rainflow([-2, 1, -3, 5, -1, 3, -4, 4, -2], residue="half cycles")
    >>> [(r, float(cycles["cycles"][cycles["range"] == r].sum())) for r in (3, 4, 6, 8, 9)]
    [(3, 0.5), (4, 1.5), (6, 0.5), (8, 1.0), (9, 0.5)]
    """

def rank_intervals(lower: Any, upper: Any) -> list[RankInterval]:
    """
    Best and worst place of each truck, given the intervals of their values; NaN where nothing is known of a truck.
    Source: follows from the definitions (order of intervals).

    >>> rank_intervals([5, 1, 2], [6, 9, 3])
    [RankInterval(first=1, last=2), RankInterval(first=1, last=3), RankInterval(first=2, last=3)]
    """

def ratio_of(true_values: Any, shown_values: Any, *, rule: RatioRule) -> SpeedsRatio:
    """
    Ratio of two speeds measured side by side, true over shown, with its uncertainty. Rows where either is below `rule.least`,
    missing or negative are counted and not used. Source: JCGM 100:2008.

    >>> rule = RatioRule(least=30, quantum=1, u_rel=0, block_rows=2)
    >>> round(ratio_of([99, 88, 99, 88, 5], [90, 80, 90, 80, 3], rule=rule).ratio.value, 6)
    1.1
    """

def resampled_total(periods: Any, *, seed: int, draw: int) -> float:
    """
    A total that another year of the same use could have given, drawn from the periods that were measured; NaN for a missing one.
    The same `seed` and `draw` give the same total everywhere. Source: B. Efron and R. J. Tibshirani, 1993.
    """

def residence(*, time_s: Any, values: Any, edges: Any, gap_limit_s: float) -> tuple[Residence, Any]:
    """
    Time that a history spends in each bin: a `Residence` with the time outside the bins and the time that nobody knows, and an
    array of seconds. A sample stands for the time since the one before it, up to `gap_limit_s`.
    Source: follows from the definitions (time at level).

    >>> rest, seconds = residence(time_s=[0, 10, 20, 30, 3630], values=[50, 50, 90, 90, 90], edges=[0, 80, 120], gap_limit_s=15)
    >>> seconds.tolist(), rest.gap_s
    ([10.0, 20.0], 3600.0)
    """

def screen_power(*, base: float, exponent: float) -> float:
    """
    Base (0 to 65 536) to an exponent (above 0 to 16) as the pass over rows forms it, not the `pow` of the platform: within
    2e-13 of the value.

    >>> round(screen_power(base=0.5, exponent=6.5), 9)
    0.011048543
    """

def truck_duty(family: Family, fleet: Fleet, truck: str, *, speed_step_km_h: float, tire: str | None = None, trailer_kg: float | None = None, slope: float | None = None) -> TruckDuty:
    """
    Damage of a truck's recorded hours, set by set: a `TruckDuty`. Cycles from member speeds, torque from each set's own
    multiplier, gear and speed as the record chooses them; where no gear holds, the speed falls by `speed_step_km_h`.

    `tire` and `trailer_kg` stand for what the record does not know; without them an unknown one is refused. `slope` instead of
    the record's. It ranks; it does not promise a life. Source: M. A. Miner, 1945.
    """

def truck_duty_cases(family: Family, fleet: Fleet, truck: str, *, speed_step_km_h: float, steps: int, slope: float | None = None) -> list[TruckDuty]:
    """
    `truck_duty` under every assumption that the record leaves open: each tire that it may be, and masses of the trailer at
    `steps` places of its range. A single one where nothing is open.

    Damage does not simply grow with the mass: a heavier trailer may bring a lower gear, so two steps may miss the greatest.
    """

def weigh_causes(*, road: Reading, gear: Reading | None, causes: dict, enough: float, most_z: float) -> CauseFound:
    """
    Which change explains a ratio of speeds: a `CauseFound`. `causes` are `RatioCause` by name, "as programmed" among them;
    `gear` is the measured over the true gear ratio, the same in every gear, or `None` where it is not known.
    Source: A. Gelman and others, Bayes' rule over a list.

    >>> causes = {"as programmed": RatioCause(road=Reading(value=1, u=0.006)), "35-inch tire": RatioCause(road=Reading(value=1.109, u=0.007))}
    >>> weigh_causes(road=Reading(value=1.108, u=0.004), gear=None, causes=causes, enough=0.95, most_z=3)
    <explained: 35-inch tire, chance 1.000>
    """

def wheel_causes(fleet: Fleet, truck: str) -> dict:
    """
    What may be wrong with the wheels of a truck, for `weigh_causes`: `RatioCause` by name. One change at a time: as programmed,
    each other tire and each other axle ratio of the fleet's record.
    Source: follows from the definitions (road speed over the speed that the unit computes).
    """
