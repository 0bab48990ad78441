"""
Tires: size designations, diameters, rolling circumference, load index, speed symbol.
"""

from . import Explanation
from .judge import Reading
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["DIAGONAL_FACTOR", "RADIAL_FACTOR", "RegulationDiameter", "Rolling", "Tire", "WheelRadii", "load_index_kg", "load_index_lb", "parse", "parse_lenient", "ply_rating", "radii", "rolling_by_count", "rolling_by_factor", "rolling_by_share", "symbol_km_h"]

DIAGONAL_FACTOR: Final[float]
RADIAL_FACTOR: Final[float]

@final
class RegulationDiameter:
    """
    Design outer diameter and what it is made of.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, rim_mm: float, section_height_mm: float, diameter_mm: float, basis: str) -> RegulationDiameter: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def basis(self, /) -> str:
        """
        "rule" of the metric sizes, "table" of the regulation, or "pattern" of the flotation sizes.
        """
    @property
    def diameter_mm(self, /) -> float:
        """
        Outer diameter.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def rim_mm(self, /) -> float:
        """
        Nominal rim diameter, whole mm.
        """
    @property
    def section_height_mm(self, /) -> float:
        """
        Section height.
        """

@final
class Rolling:
    """
    How far a tire rolls, with the standard uncertainty of each form.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, circumference_mm: Reading, radius_mm: Reading, rev_per_km: Reading, rev_per_mile: Reading) -> Rolling: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def circumference_mm(self, /) -> Reading:
        """
        Distance per turn under load, mm.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def radius_mm(self, /) -> Reading:
        """
        Effective rolling radius, mm: neither the free nor the static loaded one.
        """
    @property
    def rev_per_km(self, /) -> Reading:
        """
        Revolutions per kilometer.
        """
    @property
    def rev_per_mile(self, /) -> Reading:
        """
        Revolutions per mile.
        """

@final
class Tire:
    """
    A tire as its designation states it. What the designation leaves out is 0, or an empty text.

    >>> Tire.metric("LT", width_mm=235, aspect_pct=80, rim_in=17).text()
    'LT235/80R17'
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, kind: str, service: str = ..., plies: str = ..., load_range: str = ..., speed_in_size: str = ..., speed_symbol: str = ..., width_mm: float = ..., aspect_pct: float = ..., diameter_in: float = ..., width_in: float = ..., rim_in: float, load_index: int = ..., load_index_dual: int = ..., above_symbol: bool = ..., extra_load: bool = ..., run_flat: bool = ..., mud_snow: bool = ..., plies_assumed: bool = ...) -> Tire: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def above_symbol(self, /) -> bool:
        """
        The service description stands in parentheses: the speed symbol is exceeded.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def aspect_pct(self, /) -> float:
        """
        Section height over section width (metric sizes).
        """
    @property
    def diameter_in(self, /) -> float:
        """
        Nominal overall diameter (flotation sizes).
        """
    @property
    def extra_load(self, /) -> bool:
        """
        XL, reinforced.
        """
    @staticmethod
    def flotation(service: str, *, diameter_in: float, width_in: float, rim_in: float) -> Tire:
        """
        Flotation size: overall diameter, section width and rim in inches.
        """
    def geometric_diameter_mm(self, /) -> float:
        """
        Outer diameter that the numbers of the name give, mm, unrounded.
        Source: follows from the definitions (size designation).

        >>> round(parse("265/65R18").geometric_diameter_mm(), 1)
        801.7
        """
    @staticmethod
    def inch(service: str, *, width_in: float, rim_in: float) -> Tire:
        """
        Inch size: section width and rim in inches.
        """
    @property
    def kind(self, /) -> str:
        """
        How the size is written: "metric", "no aspect", "flotation" or "inch".
        """
    @property
    def load_index(self, /) -> int:
        """
        Load index, single fitment.
        """
    @property
    def load_index_dual(self, /) -> int:
        """
        Load index, dual fitment.
        """
    @property
    def load_range(self, /) -> str:
        """
        Load range letter: it names a ply rating and states no load.
        """
    @staticmethod
    def metric(service: str, *, width_mm: float, aspect_pct: float, rim_in: float) -> Tire:
        """
        Metric size.
        """
    @property
    def mud_snow(self, /) -> bool:
        """
        M+S: mud and snow.
        """
    @staticmethod
    def no_aspect(service: str, *, width_mm: float, rim_in: float) -> Tire:
        """
        Metric size without an aspect ratio.
        """
    @property
    def plies(self, /) -> str:
        """
        "radial", "diagonal" or "belted".
        """
    @property
    def plies_assumed(self, /) -> bool:
        """
        The lenient reader assumed radial plies.
        """
    def regulation_diameter(self, /) -> RegulationDiameter:
        """
        Design outer diameter of the tire regulations, in whole millimeters. Source: UN R30 and R54.

        >>> parse("205/55R16").regulation_diameter().diameter_mm
        632.0
        """
    @property
    def rim_in(self, /) -> float:
        """
        Rim diameter code.
        """
    @property
    def run_flat(self, /) -> bool:
        """
        Run-flat.
        """
    @property
    def service(self, /) -> str:
        """
        Service letters: "P", "LT", "ST", "T", "C" or none.
        """
    @property
    def speed_in_size(self, /) -> str:
        """
        Speed symbol inside the size: "Z", "V", "H" or "S".
        """
    @property
    def speed_symbol(self, /) -> str:
        """
        Speed symbol beside the load index.
        """
    def text(self, /) -> str:
        """
        The designation in its canonical spelling.

        >>> parse("lt 235 / 85 r 16 c").text()
        'LT235/85R16C'
        """
    @property
    def width_in(self, /) -> float:
        """
        Nominal section width (flotation and inch sizes).
        """
    @property
    def width_mm(self, /) -> float:
        """
        Nominal section width (metric and no-aspect sizes).
        """
    def with_aspect(self, /, *, aspect_pct: float) -> Tire:
        """
        The same tire with an aspect ratio that you know or assume, for a size that does not state one.

        >>> parse("185R14").with_aspect(aspect_pct=80).regulation_diameter().diameter_mm
        652.0
        """

@final
class WheelRadii:
    """
    The three radii of one wheel, which must not be mixed.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, free_mm: float, static_loaded_mm: float, effective_mm: float) -> WheelRadii: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def effective_mm(self, /) -> float:
        """
        The one that speeds follow from.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def free_mm(self, /) -> float:
        """
        Half the outer diameter, no load.
        """
    @property
    def static_loaded_mm(self, /) -> float:
        """
        Hub to ground, standing under load.
        """

def load_index_kg(load_index: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Load, kg, that a load index of 0 to 279 stands for. Source: UN R54, annex 4.

    >>> load_index_kg(121)
    1450.0
    """

def load_index_lb(load_index: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Load in whole pounds that a load index of 0 to 279 stands for.

    >>> load_index_lb([118, 121])
    array([2910., 3197.])
    """

def parse(designation: str) -> Tire:
    """
    Reads a size designation. An error names the place and what was expected there.

    >>> tire = parse("LT275/70R18 125/122S")
    >>> tire.service, tire.width_mm, tire.load_index_dual, tire.speed_symbol
    ('LT', 275.0, 122, 'S')
    >>> parse("245/55/18")
    Traceback (most recent call last):
        ...
    trainwright.error.Error: tire designation: at character 7: expected R, D, B or - before the rim diameter
    """

def parse_lenient(designation: str) -> Tire:
    """
    Reads what `parse` reads and also the shorthand 245/55/18, for which it assumes radial plies and says so.

    >>> parse_lenient("245/55/18").plies_assumed
    True
    """

def ply_rating(load_range: str) -> int:
    """
    Ply rating that a load range letter stands for. It states no load: the same letter on another size carries another.

    >>> ply_rating("E")
    10
    """

def radii(*, diameter_mm: float, static_over_diameter: float, rolling: Rolling) -> WheelRadii:
    """
    Free, static loaded and effective rolling radius of one wheel.
    Source: follows from the definitions (radii of a loaded wheel).
    """

def rolling_by_count(*, distance_m: Reading, revolutions: Reading) -> Rolling:
    """
    Rolling circumference from revolutions counted over a distance in meters: the best of the three.
    Source: follows from the definitions (rolling circumference).

    >>> from trainwright import Reading
    >>> counted = rolling_by_count(distance_m=Reading(value=1000.0, u=2.0), revolutions=Reading(value=405.0, u=0.5))
    >>> round(counted.circumference_mm.value, 1)
    2469.1
    """

def rolling_by_factor(*, diameter_mm: float, factor: Reading) -> Rolling:
    """
    Rolling circumference from the regulation diameter by a factor: `RADIAL_FACTOR` or `DIAGONAL_FACTOR`.

    Source: ETRTO Standards Manual.

    >>> from trainwright import Reading
    >>> round(rolling_by_factor(diameter_mm=632, factor=Reading(value=RADIAL_FACTOR, u=0.0)).circumference_mm.value)
    1928
    """

def rolling_by_share(*, diameter_mm: float, share: Reading) -> Rolling:
    """
    Rolling circumference from the free circumference: a loaded tire rolls a few percent less far than πD.
    Source: follows from the definitions (rolling circumference).

    >>> from trainwright import Reading
    >>> rolling = rolling_by_share(diameter_mm=801.7, share=Reading(value=0.968, u=0.006))
    >>> round(rolling.rev_per_km.value, 2), round(rolling.rev_per_km.u, 2)
    (410.17, 2.54)
    """

def symbol_km_h(letters: str) -> float:
    """
    Speed, km/h, that a speed symbol stands for. The letters are not in the order of the alphabet.

    >>> symbol_km_h("U"), symbol_km_h("H"), symbol_km_h("V")
    (200.0, 210.0, 240.0)
    """
