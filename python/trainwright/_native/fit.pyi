"""
Round fits: clearance cold and hot, pressed bushings, ISO 286 limits, bushing load and leakage.
"""

from .judge import Budget, Judgment, Limits, Reading, Rule
from typing import Any, final

__all__ = ["Clearance", "MeasuredClearance", "clearance", "measured", "toleranced"]

@final
class Clearance:
    """
    Clearance of two parts by their tolerances.
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
class MeasuredClearance:
    """
    Clearance of two parts known with their uncertainty.
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

def clearance(*, shaft_mm: Limits, bore_mm: Limits, limit_mm: float) -> Clearance:
    """
    Least and greatest clearance of a shaft in a bore, mm, diametral, and its class against the service limit.
    Source: ISO 286-1:2010, clause 3.3.

    >>> shaft_mm, bore_mm = Limits(lower=43.975, upper=44.000), Limits(lower=44.390, upper=44.425)
    >>> fit = clearance(shaft_mm=shaft_mm, bore_mm=bore_mm, limit_mm=0.14)
    >>> print(fit.fit_class, round(fit.clearance_mm.lower, 3), round(fit.clearance_mm.upper, 3))
    loose 0.39 0.45
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
