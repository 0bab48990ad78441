"""
End play and clutch clearance: worst case and root sum of squares, choice of shim and ring, what to measure first.
"""

from . import Explanation
from .clutch import Annulus
from .judge import Budget, Judgment, Limits, Reading, Repeated, Rule
from collections.abc import Mapping, Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["ApplyFill", "AxialGrowth", "Chain", "ChainLink", "GrownPlay", "HotPlay", "MeasureGain", "PackHeights", "PackRoom", "Piece", "PieceChoice", "PieceList", "PieceOutcome", "PistonStroke", "PistonTravel", "Selection", "apply_fill", "chain", "mean_of_steps", "room_from_fitted", "what_to_measure"]

@final
class ApplyFill:
    """
    Oil and time to close a pack.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, area_mm2: float, volume_ml: Reading, time_s: Reading) -> ApplyFill: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def area_mm2(self, /) -> float:
        """
        Area of the piston, mm².
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
    def time_s(self, /) -> Reading:
        """
        Time that the flow needs for it, s.
        """
    @property
    def volume_ml(self, /) -> Reading:
        """
        Oil that the stroke takes, mL.
        """

@final
class AxialGrowth:
    """
    The lengths that stand against each other along the axis, and how they grow.

    >>> growth = AxialGrowth(case_length_mm=Reading(value=310, u=0), train_length_mm=Reading(value=310, u=0),
    ...     case_expansion_per_k=Reading.rectangular(23e-6, half_width=1e-6),
    ...     train_expansion_per_k=Reading.rectangular(11.5e-6, half_width=0.5e-6), reference_c=20)
    >>> hot = growth.grown(temp_c=Reading.exact(90))
    >>> round(hot.growth_mm.value, 2), round(hot.growth_mm.u, 3)
    (0.25, 0.014)
    >>> growth.growth_mm(temp_c=np.array([-20.0, 20.0, 90.0])).round(3)
    array([-0.143,  0.   ,  0.25 ])
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, case_length_mm: Reading, train_length_mm: Reading, case_expansion_per_k: Reading, train_expansion_per_k: Reading, reference_c: float) -> AxialGrowth: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def case_expansion_per_k(self, /) -> Reading:
        """
        Expansion of the case, 1/K.
        """
    @property
    def case_length_mm(self, /) -> Reading:
        """
        Length of the case between the two faces of the end play, mm.
        """
    def grown(self, /, *, temp_c: Reading, train_hotter_k: Reading = ...) -> GrownPlay:
        """
        What the end play gains from the reference temperature to a hot one. `train_hotter_k` is how much hotter the parts are
        than the case: 0 once the unit is soaked through, above 0 while it warms up.
        Source: follows from the definitions (linear expansion ΔL = α L Δt of case and train).
        """
    def growth_mm(self, /, *, temp_c: ArrayLike, train_hotter_k: ArrayLike = ..., out: NDArray[float64] | None = None) -> Any:
        """
        Best estimate of what the end play gains, mm.
        """
    @property
    def reference_c(self, /) -> float:
        """
        Temperature at which the cold end play holds, °C.
        """
    @property
    def train_expansion_per_k(self, /) -> Reading:
        """
        Expansion of the parts, 1/K.
        """
    @property
    def train_length_mm(self, /) -> Reading:
        """
        Length of the parts between the same faces, mm.
        """

@final
class Chain:
    """
    What a chain of parts leaves.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, reading_mm: Reading, worst_half_mm: float, worst_mm: Limits, rss_half_mm: float, rss_mm: Limits, rss_chance: float, budget: Budget) -> Chain: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where the uncertainty comes from, in the order of the links.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def reading_mm(self, /) -> Reading:
        """
        The result with its standard uncertainty, mm.
        """
    @property
    def rss_chance(self, /) -> float:
        """
        Chance that the result lies within `rss_mm`, by the stated uncertainties.
        """
    @property
    def rss_half_mm(self, /) -> float:
        """
        Root sum of squares of the tolerances, ± mm.
        """
    @property
    def rss_mm(self, /) -> Limits:
        """
        Least and greatest result by root sum of squares, mm.
        """
    @property
    def worst_half_mm(self, /) -> float:
        """
        Every part at its worst, ± mm.
        """
    @property
    def worst_mm(self, /) -> Limits:
        """
        Least and greatest result with every part at its worst, mm.
        """

@final
class ChainLink:
    """
    One part of a chain; make one with its static methods.

    >>> ChainLink.measured(-1, Reading(value=1.85, u=0.012), k=2)
    ChainLink(sensitivity=-1.0, value_mm=1.85, half_width_mm=0.024, u_mm=0.012)
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, sensitivity: float, value_mm: float, half_width_mm: float, u_mm: float) -> ChainLink: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def half_width_mm(self, /) -> float:
        """
        How far from there the size may lie, mm.
        """
    @staticmethod
    def measured(sensitivity: float, size_mm: Reading, *, k: float) -> ChainLink:
        """
        A measured part; so many standard uncertainties count as its worst case.
        """
    @property
    def sensitivity(self, /) -> float:
        """
        Change of the result per change of this size: +1 opens the gap, −1 fills it, −n for n equal parts known by one.
        """
    @staticmethod
    def toleranced(sensitivity: float, size_mm: Limits, *, spread: str) -> ChainLink:
        """
        A part as made, not measured. `spread` is "rectangular" (u = t/√3) or "normal 3 sigma" (u = t/3).
        Source: JCGM 100:2008, 4.3.7 and 4.3.5.
        """
    @property
    def u_mm(self, /) -> float:
        """
        Standard uncertainty, mm.
        """
    @property
    def value_mm(self, /) -> float:
        """
        Middle of the tolerance, or the reading, mm.
        """

@final
class GrownPlay:
    """
    Change of the end play, and what made it.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, case_mm: float, train_mm: float, growth_mm: Reading, budget: Budget) -> GrownPlay: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where its uncertainty comes from: length of case, of train, expansion of case, of train, temperature, difference.
        """
    @property
    def case_mm(self, /) -> float:
        """
        Growth of the case, mm.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def growth_mm(self, /) -> Reading:
        """
        What the end play gains, mm; negative where it loses.
        """
    @property
    def train_mm(self, /) -> float:
        """
        Growth of the parts, mm.
        """

@final
class HotPlay:
    """
    What warming up does to the end play, as a record states it, and what is wanted then.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, growth: AxialGrowth, temp_c: float, window_mm: Limits) -> HotPlay: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def growth(self, /) -> AxialGrowth:
        """
        The lengths and expansions.
        """
    @property
    def temp_c(self, /) -> float:
        """
        Temperature of the warm unit, °C.
        """
    @property
    def window_mm(self, /) -> Limits:
        """
        End play wanted hot, mm; open on both sides where the record states none.
        """

@final
class MeasureGain:
    """
    What measuring one input would bring.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, input: int, share: float, share_so_far: float, u_now: float, u_measured: float, u_of_result: float, chance_go: float, chance_no_go: float, u_needed: float, enough: bool) -> MeasureGain: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def chance_go(self, /) -> float:
        """
        Chance that the judgment would then be a GO.
        """
    @property
    def chance_no_go(self, /) -> float:
        """
        Chance that the judgment would then be a NO-GO.
        """
    @property
    def enough(self, /) -> bool:
        """
        Measuring it well enough would decide the case if the value stays; true where it is decided already.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def input(self, /) -> int:
        """
        Position of the input in the budget.
        """
    @property
    def share(self, /) -> float:
        """
        Its share in the variance of the result.
        """
    @property
    def share_so_far(self, /) -> float:
        """
        Share of this input and of all before it in the list.
        """
    @property
    def u_measured(self, /) -> float:
        """
        Standard uncertainty that measuring it would leave; `u_now` where measuring would not be better.
        """
    @property
    def u_needed(self, /) -> float:
        """
        Standard uncertainty of the input that would decide the case if the value stays; 0 where no measurement of it would.
        """
    @property
    def u_now(self, /) -> float:
        """
        Standard uncertainty of the input now, in its own unit.
        """
    @property
    def u_of_result(self, /) -> float:
        """
        Standard uncertainty of the result then.
        """

@final
class PackHeights:
    """
    Depth of a drum and the heights of what stands in it, without the ring or plate to be chosen.

    >>> size = lambda value: Reading(value=value, u=0.007)
    >>> pack = PackHeights(drum_depth_mm=size(29.40), friction_plates=5, friction_mm=size(1.95), steel_plates=5,
    ...                    steel_mm=size(1.80), pressure_plate_mm=size(5.48))
    >>> room = pack.room_from_heights().room_mm
    >>> round(room.value, 2), round(room.u, 3)
    (5.17, 0.05)
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, drum_depth_mm: Reading, friction_plates: int, friction_mm: Reading, steel_plates: int, steel_mm: Reading, pressure_plate_mm: Reading = ..., wave_plate_mm: Reading = ...) -> PackHeights: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def drum_depth_mm(self, /) -> Reading:
        """
        From the piston at rest to the outer wall of the ring groove, mm.
        """
    @property
    def friction_mm(self, /) -> Reading:
        """
        Thickness of one friction plate, mm, soaked and pressed together.
        """
    @property
    def friction_plates(self, /) -> int:
        """
        Number of friction plates.
        """
    @property
    def pressure_plate_mm(self, /) -> Reading:
        """
        Thickness of the pressure plate, mm; 0 for none, or where it is the piece to be chosen.
        """
    def room_from_heights(self, /) -> PackRoom:
        """
        Room for the ring or plate of a pack. One measured plate stands for all of its kind, so its error counts once for each
        of them; where the plates were measured as a stack, give 1 and the stack.
        Source: follows from the definitions (heights along the axis; JCGM 100:2008, equation 10 for u).
        """
    @property
    def steel_mm(self, /) -> Reading:
        """
        Thickness of one steel plate, mm.
        """
    @property
    def steel_plates(self, /) -> int:
        """
        Number of steel plates.
        """
    @property
    def wave_plate_mm(self, /) -> Reading:
        """
        Free height of the wave plate, mm; 0 for none.
        """

@final
class PackRoom:
    """
    Room for the ring or plate of a pack.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, plates_mm: float, room_mm: Reading, budget: Budget) -> PackRoom: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where its uncertainty comes from: drum, frictions, steels, pressure plate, wave plate.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def plates_mm(self, /) -> float:
        """
        Height of everything in the drum, mm.
        """
    @property
    def room_mm(self, /) -> Reading:
        """
        What is left for the ring and the clearance, mm.
        """

@final
class Piece:
    """
    A shim, ring or plate on the list.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, thickness_mm: Reading, in_stock: bool = ...) -> Piece: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def in_stock(self, /) -> bool:
        """
        It can be had. What cannot is shown, but not chosen.
        """
    @property
    def thickness_mm(self, /) -> Reading:
        """
        Thickness and its standard uncertainty, mm.
        """

@final
class PieceChoice:
    """
    Which piece to fit. Positions count from 0, and mean nothing unless a piece was found.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, found: bool, position: int, nearest_target: int, least_risk: int, missing_better: bool, missing: int, wanted_mm: float, inside_mm: Limits, go_mm: Limits) -> PieceChoice: ...
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
    def found(self, /) -> bool:
        """
        A piece in stock lands inside.
        """
    @property
    def go_mm(self, /) -> Limits:
        """
        Thicknesses that would be a GO at this uncertainty, mm.
        """
    @property
    def inside_mm(self, /) -> Limits:
        """
        Thicknesses that land inside, mm; lower +∞ and upper −∞ if none can.
        """
    @property
    def least_risk(self, /) -> int:
        """
        The piece by least risk.
        """
    @property
    def missing(self, /) -> int:
        """
        Position of that piece; counts only with `missing_better`.
        """
    @property
    def missing_better(self, /) -> bool:
        """
        A piece that is not in stock would be chosen before it.
        """
    @property
    def nearest_target(self, /) -> int:
        """
        The piece by nearest target.
        """
    @property
    def position(self, /) -> int:
        """
        The piece to fit by the rule asked for.
        """
    @property
    def wanted_mm(self, /) -> float:
        """
        Thickness that would hit the target, mm.
        """

@final
class PieceList:
    """
    What a record lists to choose from, and what for.

    >>> PieceList(window_mm=Limits(lower=1.40, upper=2.00), target_mm=1.70, pieces=[Piece(thickness_mm=Reading(value=3.40, u=0.015))])
    <1 piece, 3.4 mm, for 1.4 to 2 mm, 1.7 aimed at>
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict]: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, *, window_mm: Limits, target_mm: float, pieces: Sequence[Piece]) -> PieceList: ...
    def __repr__(self, /) -> str: ...
    @property
    def pieces(self, /) -> list[Piece]:
        """
        The list, by rising thickness.
        """
    @property
    def target_mm(self, /) -> float:
        """
        End play or clearance aimed at, mm.
        """
    @property
    def window_mm(self, /) -> Limits:
        """
        End play or clearance wanted, mm.
        """
    def without(self, /, missing_mm: Sequence[float]) -> PieceList:
        """
        The list with these thicknesses, mm, out of stock. A thickness that it does not have is refused.
        """

@final
class PieceOutcome:
    """
    What one piece leaves.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, piece: Piece, cold: Judgment, hot: Judgment, off_target_mm: float, off_middle_mm: float, chance: float, inside: bool) -> PieceOutcome: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def chance(self, /) -> float:
        """
        Chance that the choice counts: of the cold window, or at least that of both windows.
        """
    @property
    def cold(self, /) -> Judgment:
        """
        End play or clearance at assembly against its window, mm.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def hot(self, /) -> Judgment:
        """
        The same hot, mm.
        """
    @property
    def inside(self, /) -> bool:
        """
        The best estimates lie inside what the choice counts.
        """
    @property
    def off_middle_mm(self, /) -> float:
        """
        Distance of the cold value from the middle of its window, mm.
        """
    @property
    def off_target_mm(self, /) -> float:
        """
        Distance of the cold value from the target, mm.
        """
    @property
    def piece(self, /) -> Piece:
        """
        The piece.
        """

@final
class PistonStroke:
    """
    What a piston travels, and how far its seal may.

    >>> stroke = PistonStroke(clearance_mm=Reading(value=1.77, u=0.024), wave_mm=Reading(value=0.35, u=0.03),
    ...                       bend_mm=Reading(value=0.10, u=0.03), land_mm=Reading(value=3.2, u=0.05))
    >>> travel = stroke.piston_travel(rule=judge.Rule.stated_chances(go=0.95, no_go=0.05))
    >>> round(travel.travel_mm.value, 2), round(travel.judgment.reading.value, 2), travel.judgment.verdict
    (2.22, 0.98, 'GO')
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, clearance_mm: Reading, wave_mm: Reading, bend_mm: Reading, land_mm: Reading) -> PistonStroke: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bend_mm(self, /) -> Reading:
        """
        What plates, ring and drum give way under pressure, mm.
        """
    @property
    def clearance_mm(self, /) -> Reading:
        """
        Clearance of the pack, mm.
        """
    @property
    def land_mm(self, /) -> Reading:
        """
        Travel at which the seal leaves its land, mm.
        """
    def piston_travel(self, /, *, rule: Rule) -> PistonTravel:
        """
        Whether the piston closes the pack before its seal leaves its land.
        Source: follows from the definitions (travel along the axis; JCGM 100:2008, equation 10 for u).
        """
    @property
    def wave_mm(self, /) -> Reading:
        """
        What the wave plate gives way until it is flat, mm; 0 for none.
        """

@final
class PistonTravel:
    """
    Travel of a piston against its seal land.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, travel_mm: Reading, judgment: Judgment, budget: Budget) -> PistonTravel: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def budget(self, /) -> Budget:
        """
        Where its uncertainty comes from: clearance, wave plate, bend, land.
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
        The land to spare, land less travel, against 0, mm.
        """
    @property
    def travel_mm(self, /) -> Reading:
        """
        What the piston travels, mm.
        """

@final
class Selection:
    """
    What a piece is chosen for, and how.

    >>> end_play = Selection(room_mm=Reading(value=2.153, u=0.0297), window_mm=Limits(lower=0.20, upper=0.60), target_mm=0.36,
    ...     rule=judge.Rule.stated_chances(go=0.95, no_go=0.05), by="least risk")
    >>> shims = [Piece(thickness_mm=Reading(value=size, u=0.012)) for size in (1.55, 1.70, 1.85, 2.00)]
    >>> choice = end_play.choose(shims)
    >>> choice.least_risk, choice.nearest_target
    (1, 2)
    >>> end_play.outcome(shims[1]).cold.reading.value
    0.453
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, room_mm: Reading, window_mm: Limits, target_mm: float, growth_mm: Reading = ..., hot_window_mm: Limits = ..., rule: Rule, by: str, hot_counts: bool = ...) -> Selection: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def by(self, /) -> str:
        """
        Rule of the choice: "nearest target" or "least risk".
        """
    def choose(self, /, pieces: Sequence[Piece]) -> PieceChoice:
        """
        Which piece to fit, by the rule asked for and by the other one. Where none in stock lands inside, `found` is False and
        the thicknesses that would do are given.
        Source: follows from the definitions (the two rules of choice).
        """
    @property
    def growth_mm(self, /) -> Reading:
        """
        Change from assembly to hot, mm.
        """
    @property
    def hot_counts(self, /) -> bool:
        """
        The choice looks at cold and hot together.
        """
    @property
    def hot_window_mm(self, /) -> Limits:
        """
        End play or clearance wanted hot, mm; open on both sides where the hot value is only shown.
        """
    def outcome(self, /, piece: Piece) -> PieceOutcome:
        """
        What one piece leaves, cold and hot, judged.
        Source: JCGM 100:2008, equation 10; JCGM 106:2012, equation 12 for the chances.
        """
    def pick(self, /, pieces: Sequence[Piece], *, room_mm: Reading | Mapping[str, ArrayLike]) -> dict:
        """
        The piece that `choose` would fit for each of many rooms: a dictionary of position, thickness_mm, value_mm, u_mm (what it
        leaves) and chance. `room_mm` takes the place of the selection's own: columns value and u. A room for which nothing in
        stock lands inside is NaN.

        >>> rings = Selection(room_mm=Reading(value=0, u=0), window_mm=Limits(lower=1.40, upper=2.00), target_mm=1.70,
        ...     rule=judge.Rule.stated_chances(go=0.95, no_go=0.05), by="nearest target")
        >>> sizes = [Piece(thickness_mm=Reading(value=size, u=0.015)) for size in (2.90, 3.15, 3.40, 3.65)]
        >>> rings.pick(sizes, room_mm={"value": [4.70, 5.17], "u": 0.019})["thickness_mm"]
        array([2.9, 3.4])
        """
    @property
    def room_mm(self, /) -> Reading:
        """
        What is left with no piece in place, mm: the result of a chain without it.
        """
    @property
    def rule(self, /) -> Rule:
        """
        Rule of the judgments.
        """
    @property
    def target_mm(self, /) -> float:
        """
        End play or clearance aimed at, mm, within the window.
        """
    @property
    def window_mm(self, /) -> Limits:
        """
        End play or clearance wanted at assembly, mm; both limits.
        """

def apply_fill(piston: Annulus, *, travel_mm: Reading, flow_l_min: Reading) -> ApplyFill:
    """
    Oil that a piston takes to close its pack, and how long a flow needs for it. `flow_l_min` is what reaches this circuit, not
    what the pump delivers.
    Source: follows from the definitions (volume swept by the piston).

    >>> piston = clutch.Annulus(inner_radius_mm=76, outer_radius_mm=104)
    >>> fill = apply_fill(piston, travel_mm=Reading(value=2.22, u=0.049), flow_l_min=Reading(value=10, u=1))
    >>> round(fill.volume_ml.value, 1), round(fill.time_s.value, 2)
    (35.2, 0.21)
    """

def chain(links: Sequence[ChainLink]) -> Chain:
    """
    The size that a chain of parts leaves: worst case, root sum of squares, and as a reading with its budget.

    The root sum of squares counts on independent parts whose sizes center in their tolerances.
    Source: Shigley, chapter 1, dimensions and tolerances; JCGM 100:2008, equation 10 for u.

    >>> groove = ChainLink.toleranced(+1, Limits(lower=44.374, upper=44.526), spread="normal 3 sigma")
    >>> blocks = ChainLink.toleranced(-1, Limits(lower=44.145, upper=44.501), spread="normal 3 sigma")
    >>> gap = chain([groove, blocks])
    >>> round(gap.reading_mm.value, 3), round(gap.worst_half_mm, 3), round(gap.rss_half_mm, 3)
    (0.127, 0.254, 0.194)
    """

def mean_of_steps(values: Sequence[float], *, quantum: float, u_of_one: float) -> Repeated:
    """
    Mean of readings taken in steps, as with feelers, and its standard uncertainty.

    `quantum` is the step, `u_of_one` what is known of a single reading. Readings that all show the same step are no better
    than the step, however many there are.
    Source: JCGM 100:2008, 4.2.3 for the scatter, F.2.2.1 for the step; the larger of the two counts.

    >>> mean_of_steps([2.25, 2.30, 2.25, 2.28], quantum=0.05, u_of_one=0.025).reading
    Reading(value=2.27, u=0.0125)
    >>> round(mean_of_steps([2.25, 2.25, 2.25, 2.25], quantum=0.05, u_of_one=0.022).reading.u, 4)
    0.0144
    """

def room_from_fitted(*, clearance_mm: Reading, fitted_mm: Reading) -> Reading:
    """
    Room for the ring or plate of a pack, mm, from the clearance read with another one in place.
    Source: follows from the definitions (E = g + t; JCGM 100:2008, equation 10 for u).

    >>> room = room_from_fitted(clearance_mm=Reading(value=2.27, u=0.011), fitted_mm=Reading(value=2.90, u=0.015))
    >>> round(room.value, 2), round(room.u, 4)
    (5.17, 0.0186)
    """

def what_to_measure(judgment: Judgment, budget: Budget, u_measured: Sequence[float]) -> list[MeasureGain]:
    """
    What measuring each input of a judged result would bring, the one that weighs most first.

    `u_measured` is what the shop's instrument would leave of each input, in the order of the budget; infinite where a part
    cannot be measured.
    Source: follows from the definitions (root sum of squares with one term exchanged; the judgment it would give, over what
    the measurement may show).

    >>> part = lambda sign, size, u: ChainLink.measured(sign, Reading(value=size, u=u), k=2)
    >>> play = chain([part(+1, 2.153, 0.010), part(-1, 0.0, 0.028), part(-1, 1.60, 0.012)])
    >>> judgment = judge.judge(play.reading_mm, Limits(lower=0.20, upper=0.60), judge.Rule.stated_chances(go=0.95, no_go=0.05))
    >>> gasket = what_to_measure(judgment, play.budget, [0.007, 0.004, 0.002])[0]
    >>> judgment.verdict, gasket.input, round(gasket.share, 2), round(gasket.u_of_result, 4), round(gasket.chance_go, 2)
    ('NOT PROVEN', 1, 0.76, 0.0161, 0.77)
    """
