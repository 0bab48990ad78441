"""
Readings, limits and the decision between them.
"""

from . import Explanation
from collections.abc import Mapping, Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["Budget", "Expanded", "Input", "Judgment", "Limits", "Reading", "Repeated", "Rule", "Settlement", "Turning", "chance_inside", "combine", "combine_correlated", "coverage_factor", "effective_freedom", "expand", "judge", "mean_of", "normal_cdf", "normal_quantile", "propagate", "settle", "settle_by", "student_cdf", "student_quantile", "turning_value"]

@final
class Budget:
    """
    Uncertainty budget: the combined standard uncertainty and where it comes from.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, u: float, freedom: float, sensitivity: Sequence[float], contribution: Sequence[float], share: Sequence[float], largest: int) -> Budget: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def contribution(self, /) -> list[float]:
        """
        c_i u_i of each input, with its sign.
        """
    @property
    def freedom(self, /) -> float:
        """
        Effective degrees of freedom.
        """
    @property
    def largest(self, /) -> int:
        """
        Position of the input that contributes most: the one to measure better.
        """
    @property
    def sensitivity(self, /) -> list[float]:
        """
        Change of the result per unit of each input.
        """
    @property
    def share(self, /) -> list[float]:
        """
        Share of each input in the variance.
        """
    @property
    def u(self, /) -> float:
        """
        Combined standard uncertainty.
        """

@final
class Expanded:
    """
    An expanded uncertainty and the interval it gives.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, reading: Reading, coverage: float, freedom: float, k: float, expanded_u: float, lower: float, upper: float) -> Expanded: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def coverage(self, /) -> float:
        """
        Stated probability of the interval.
        """
    @property
    def expanded_u(self, /) -> float:
        """
        Half width of the interval.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def freedom(self, /) -> float:
        """
        Degrees of freedom.
        """
    @property
    def k(self, /) -> float:
        """
        Coverage factor.
        """
    @property
    def lower(self, /) -> float:
        """
        Lower end of the interval.
        """
    @property
    def reading(self, /) -> Reading:
        """
        Value and standard uncertainty.
        """
    @property
    def upper(self, /) -> float:
        """
        Upper end of the interval.
        """

@final
class Input:
    """
    What one input brings to a result.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, sensitivity: float, u: float, freedom: float = ...) -> Input: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def freedom(self, /) -> float:
        """
        Degrees of freedom of `u`; infinite where it is taken as certain.
        """
    @property
    def sensitivity(self, /) -> float:
        """
        Change of the result per unit of the input.
        """
    @property
    def u(self, /) -> float:
        """
        Standard uncertainty of the input.
        """

@final
class Judgment:
    """
    A decision and what it rests on.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, reading: Reading, limits: Limits, rule: Rule, chance: float, acceptance: Limits, rejection: Limits, above_lower: float, below_upper: float, u_to_decide: float, value_to_go: float, verdict: str) -> Judgment: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def above_lower(self, /) -> float:
        """
        Distance of the value above the lower limit; negative when below it.
        """
    @property
    def acceptance(self, /) -> Limits:
        """
        Values that are GO at this uncertainty; lower +∞ and upper −∞ if there is none.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def below_upper(self, /) -> float:
        """
        Distance of the value below the upper limit; negative when above it.
        """
    @property
    def chance(self, /) -> float:
        """
        Chance that the true value lies within the limits.
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
        Against what.
        """
    @property
    def reading(self, /) -> Reading:
        """
        What was judged.
        """
    @property
    def rejection(self, /) -> Limits:
        """
        Values below its lower or above its upper end are NO-GO at this uncertainty.
        """
    @property
    def rule(self, /) -> Rule:
        """
        Under which rule.
        """
    @property
    def u_to_decide(self, /) -> float:
        """
        Greatest standard uncertainty at which this same value is decided; infinite if any will do.
        """
    @property
    def value_to_go(self, /) -> float:
        """
        Nearest value that is GO at this uncertainty; infinite if there is none.
        """
    @property
    def verdict(self, /) -> str:
        """
        "GO", "NO-GO" or "NOT PROVEN".
        """

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
    def holds(self, /, value: float) -> bool:
        """
        Whether the value lies within, the limits included.
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
    @staticmethod
    def arcsine(value: float, *, half_width: float) -> Reading:
        """
        Swinging as a sine between ± the half width: u = a/√2.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @staticmethod
    def exact(value: float) -> Reading:
        """
        A value taken as exact.
        """
    @staticmethod
    def of_class(value: float, *, full_scale: float, class_pct: float) -> Reading:
        """
        Read on an instrument whose class is its greatest error in percent of full scale.

        >>> round(Reading.of_class(1470.0, full_scale=2500.0, class_pct=1.6).u, 1)
        23.1
        """
    @staticmethod
    def quantized(value: float, *, quantum: float) -> Reading:
        """
        Read from a display or counter that moves in steps of the quantum: u = q/√12.
        """
    @staticmethod
    def rectangular(value: float, *, half_width: float) -> Reading:
        """
        Anywhere within ± the half width with the same chance: u = a/√3.
        Source: JCGM 100:2008, 4.3.7, 4.3.9, F.2.2.1, H.6.

        >>> round(Reading.rectangular(16.52, half_width=0.40).u, 2)
        0.23
        """
    @staticmethod
    def relative(value: float, *, u_rel: float) -> Reading:
        """
        A value with its standard uncertainty as a fraction of it: 0.02 for 2 %.
        """
    @staticmethod
    def triangular(value: float, *, half_width: float) -> Reading:
        """
        Within ± the half width, more often near the middle: u = a/√6.
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

@final
class Repeated:
    """
    Repeated readings in one.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, reading: Reading, deviation: float, freedom: float) -> Repeated: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def deviation(self, /) -> float:
        """
        Standard deviation of a single reading.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def freedom(self, /) -> float:
        """
        Degrees of freedom, n − 1.
        """
    @property
    def reading(self, /) -> Reading:
        """
        Mean and its standard uncertainty.
        """

@final
class Rule:
    """
    A decision rule; make one with its static methods.

    >>> Rule.conformance(0.95)
    Rule(go=0.95, no_go=0.050000000000000044, k=0.0, kind="conformance probability")
    >>> print(Rule.conformance(0.95))
    conformance probability 0.95 (ISO 14253-1:2017)
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, go: float, no_go: float, k: float, kind: str) -> Rule: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @staticmethod
    def conformance(probability: float) -> Rule:
        """
        GO is proven from this chance of lying inside, NO-GO up to 1 minus it (ISO 14253-1:2017, usually 0.95).
        """
    @staticmethod
    def expanded_guard(k: float) -> Rule:
        """
        A guard of k standard uncertainties on either side of a limit (ISO 14253-1 before 2017, usually 2).
        """
    @property
    def go(self, /) -> float:
        """
        Least chance of lying inside that is a GO.
        """
    @property
    def k(self, /) -> float:
        """
        Guard in standard uncertainties.
        """
    @property
    def kind(self, /) -> str:
        """
        Kind, in words.
        """
    @property
    def no_go(self, /) -> float:
        """
        Greatest chance of lying inside that is a NO-GO.
        """
    @staticmethod
    def simple_acceptance() -> Rule:
        """
        Inside is GO, outside is NO-GO; the uncertainty is not counted.
        """
    @staticmethod
    def stated_chances(*, go: float, no_go: float) -> Rule:
        """
        GO from the chance `go`, above 0.5; NO-GO up to the chance `no_go`, below 0.5.
        """

@final
class Settlement:
    """
    The one further measurement that would settle a judgment.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, input: int, enough: bool, u_now: float, u_needed: float) -> Settlement: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def enough(self, /) -> bool:
        """
        Whether measuring this input alone can decide the case.
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
        Position of the input to measure better.
        """
    @property
    def u_needed(self, /) -> float:
        """
        Standard uncertainty that would do; 0 when even a perfect measurement would not.
        """
    @property
    def u_now(self, /) -> float:
        """
        Standard uncertainty of that input now, in its own unit.
        """

@final
class Turning:
    """
    Where a verdict turns along one input.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, value: float, change: float, go_now: bool, judgment: Judgment) -> Turning: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def change(self, /) -> float:
        """
        That value less the present one.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def go_now(self, /) -> bool:
        """
        Whether the verdict is GO at the present value: it then ceases to be GO beyond `value`, else it becomes GO there.
        """
    @property
    def judgment(self, /) -> Judgment:
        """
        The judgment at that value.
        """
    @property
    def value(self, /) -> float:
        """
        Value of the input on the GO side of the turn.
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

def combine(inputs: Sequence[Input]) -> Budget:
    """
    Combined standard uncertainty of independent inputs, and what each contributes.
    Source: JCGM 100:2008, 5.1.2, equations 10 and 11a.

    >>> combine([Input(sensitivity=3.0, u=1.0), Input(sensitivity=4.0, u=1.0)]).u
    5.0
    """

def combine_correlated(inputs: Sequence[Input], correlation: Sequence[Sequence[float]]) -> Budget:
    """
    Combined standard uncertainty of correlated inputs; `correlation` is a square list of lists.
    Source: JCGM 100:2008, 5.2.2, equation 16.
    """

def coverage_factor(coverage: ArrayLike, freedom: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Factor from standard uncertainty to the half width that covers the stated probability.
    Source: JCGM 100:2008, G.3, table G.2.

    >>> round(coverage_factor(0.99, 16.0), 2)
    2.92
    """

def effective_freedom(inputs: Sequence[Input]) -> float:
    """
    Effective degrees of freedom of the combined uncertainty of independent inputs (Welch-Satterthwaite).
    Source: JCGM 100:2008, G.4.1, equation G.2b.
    """

def expand(reading: Reading, *, freedom: float, coverage: float) -> Expanded:
    """
    Expanded uncertainty and coverage interval for a stated probability.
    Source: JCGM 100:2008, 6.2, G.3.2.

    >>> round(expand(Reading(value=0.0, u=32.0), freedom=16.0, coverage=0.99).expanded_u)
    93
    """

def judge(reading: Reading, limits: Limits, rule: Rule) -> Judgment:
    """
    Decides whether the reading conforms to its limits, and says what would settle it.
    Source: ISO 14253-1:2017, clause 5; JCGM 106:2012, clause 8.

    >>> outcome = judge(Reading(value=72.0, u=3.0), Limits(lower=25.0, upper=75.0), Rule.conformance(0.95))
    >>> outcome.verdict, round(outcome.acceptance.upper, 2), round(outcome.u_to_decide, 2)
    ('NOT PROVEN', 70.07, 1.82)
    """

def mean_of(values: Sequence[float]) -> Repeated:
    """
    Mean of repeated readings, its standard uncertainty and degrees of freedom.
    Source: JCGM 100:2008, 4.2.1, 4.2.3.

    >>> mean_of([2.25, 2.30, 2.25, 2.28]).reading.value
    2.27
    """

def normal_cdf(z: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Standard normal distribution function.

    >>> normal_cdf(0.0)
    0.5
    """

def normal_quantile(probability: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Value that a standard normal variable stays below with the stated probability.
    Source: Wichura (1988), routine PPND16.

    >>> round(normal_quantile(0.95), 5)
    1.64485
    """

def propagate(inputs: Sequence[Reading], formula: Any) -> tuple[Reading, Budget]:
    """
    Carries independent readings through a function of as many numbers; returns the result and its budget.
    Source: JCGM 100:2008, 5.1.3, note 2.

    >>> clearance, budget = propagate([Reading(value=43.988, u=0.0016), Reading(value=44.407, u=0.0042)],
    ...                               lambda journal, bore: bore - journal)
    >>> round(clearance.value, 3), round(clearance.u, 4), budget.largest
    (0.419, 0.0045, 1)
    """

def settle(judgment: Judgment, budget: Budget) -> Settlement:
    """
    The one input whose better measurement would decide the judged reading, and how good it must be.
    Source: follows from the definitions (root sum of squares, solved for one input).
    """

def settle_by(judgment: Judgment, budget: Budget, input: int) -> Settlement:
    """
    As `settle`, for the input at this position: whether measuring it better could decide the case, and how good it must be.
    """

def student_cdf(t: ArrayLike, freedom: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Student's t distribution function; `freedom` is 1 or more, infinite for the normal distribution.
    Source: Abramowitz and Stegun (1964), 26.5.8, 26.7.1.
    """

def student_quantile(probability: ArrayLike, freedom: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Value that a Student's t variable stays below with the stated probability.
    """

def turning_value(judged: Any, *, now: float, lower: float, upper: float) -> Turning:
    """
    Value of one input at which the verdict turns to GO, or, where it is GO already, at which it ceases to be; the other inputs
    stay as they are. The nearest one between the bounds; refused where there is none.

    `judged` takes a value of the input and returns the judgment, or a result with a `judgment`. Where it refuses a value, the
    verdict there counts as not GO. Source: follows from the definitions (bisection).

    >>> turning = turning_value(lambda value: judge(Reading(value=value, u=0.1), Limits(lower=1.0), Rule.conformance(0.95)),
    ...                         now=1.0, lower=0.0, upper=2.0)
    >>> round(turning.value, 4), turning.judgment.verdict
    (1.1645, 'GO')
    """
