"""
Readings, limits and the decision between them.
"""

from collections.abc import Mapping
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, final

__all__ = ["Limits", "Reading", "chance_inside", "normal_cdf"]

@final
class Limits:
    """
    Tolerance limits; an open side is infinite.

    >>> Limits(upper=0.14)
    Limits(lower=float("-inf"), upper=0.14)
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, lower: float = ..., upper: float = ...) -> Limits: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def lower(self, /) -> float:
        """
        Least conforming value, or −∞.
        """
    @property
    def upper(self, /) -> float:
        """
        Greatest conforming value, or +∞.
        """

@final
class Reading:
    """
    A measured or uncertain value with its standard uncertainty (k = 1), both in the same unit.

    >>> Reading(value=44.407, u=0.004)
    Reading(value=44.407, u=0.004)
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, value: float, u: float) -> Reading: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @staticmethod
    def exact(value: float) -> Reading:
        """
        A value taken as exact.
        """
    @property
    def u(self, /) -> float:
        """
        Standard uncertainty, 0 or more.
        """
    @property
    def value(self, /) -> float:
        """
        Best estimate.
        """

def chance_inside(reading: Reading | Mapping[str, ArrayLike], limits: Limits | Mapping[str, ArrayLike], *, out: NDArray[float64] | None = None) -> Any:
    """
    Probability, 0 to 1, that the true value behind the reading lies within the limits.

    Both may be columns: a mapping of the field names to numbers or arrays, or a data frame.
    Source: JCGM 106:2012, clause 7, equation 12.

    >>> round(chance_inside(Reading(value=-5.47, u=0.05), Limits(upper=-5.40)), 2)
    0.92
    >>> chance_inside({"value": [0.10, 0.20], "u": 0.004}, Limits(upper=0.14)).round(3)
    array([1., 0.])
    """

def normal_cdf(z: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Standard normal distribution function.

    >>> normal_cdf(0.0)
    0.5
    """
