"""
Which variant is on the bench: weighing marks and sizes, part by part, and what to look at next.
"""

from . import Explanation
from .judge import Limits, Reading, Rule
from _typeshed import Incomplete
from collections.abc import Mapping, Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["Conclusion", "Identification", "Look", "LookMade", "Nearest", "NextLook", "Part", "PartFinding", "Weighed", "Weighing", "Worth", "conclude", "ln_density", "ln_seen", "nearest", "prior_of_counts", "weigh"]

@final
class Conclusion:
    """
    The verdict and what it rests on.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, rule: Rule, foreign_parts: int, open_parts: int, outcome: str, variant_settled: bool) -> Conclusion: ...
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
    def foreign_parts(self, /) -> int:
        """
        Parts that are foreign to the unit under the rule.
        """
    @property
    def open_parts(self, /) -> int:
        """
        Parts of which the rule proves neither that they are foreign nor that they are not.
        """
    @property
    def outcome(self, /) -> str:
        """
        "one variant", "mixed", "not settled" or "unexplained".
        """
    @property
    def rule(self, /) -> Rule:
        """
        Rule that it was reached under.
        """
    @property
    def variant_settled(self, /) -> bool:
        """
        Whether one variant reaches the rule's chance.
        """

@final
class Identification:
    """
    What a unit is, from what was found on it: `Family.identify` makes one.
    """
    def __repr__(self, /) -> str: ...
    @property
    def best(self, /) -> str:
        """
        The likeliest variant.
        """
    @property
    def chance(self, /) -> dict:
        """
        Chance of each variant.
        """
    @property
    def chance_unmixed(self, /) -> dict:
        """
        Chance of each variant, with no part that was looked at from another one.
        """
    @property
    def conclusion(self, /) -> Conclusion:
        """
        The verdict and what it rests on.
        """
    @property
    def conflicts(self, /) -> list[Part]:
        """
        The parts that the rule does not clear of being foreign, the surest first.
        """
    @property
    def made(self, /) -> list[LookMade]:
        """
        The looks that were made, in the order given.
        """
    @property
    def next_looks(self, /) -> list[NextLook]:
        """
        The looks that were not made, the one that tells most about the variant per minute first.
        """
    @property
    def outcome(self, /) -> str:
        """
        "one variant", "mixed", "not settled" or "unexplained".
        """
    @property
    def parts(self, /) -> dict:
        """
        Every part that was looked at, by its name.
        """
    @property
    def prior(self, /) -> dict:
        """
        Chance of each variant before anything was looked at.
        """
    @property
    def weighed(self, /) -> Weighed:
        """
        The evidence as a whole.
        """

@final
class Look:
    """
    Something that can be looked at on a unit of a family.
    """
    def __repr__(self, /) -> str: ...
    @property
    def chance(self, /) -> dict | None:
        """
        Of a mark: its chance on an untouched unit of each variant, else None.
        """
    @property
    def exchanged(self, /) -> float:
        """
        Chance that the part came from another unit, before anything is looked at.
        """
    @property
    def id(self, /) -> str:
        """
        Name in the record.
        """
    @property
    def instrument(self, /) -> str | None:
        """
        Of a size: the instrument, else None.
        """
    @property
    def minutes(self, /) -> float:
        """
        Labor to look, minutes.
        """
    @property
    def part(self, /) -> str:
        """
        The part that carries it.
        """
    @property
    def size_mm(self, /) -> dict | None:
        """
        Of a size: its limits in each variant, mm, else None.
        """
    @property
    def text(self, /) -> str:
        """
        What to look for, or what to measure.
        """
    @property
    def u_mm(self, /) -> float | None:
        """
        Of a size: the standard uncertainty of its instrument, mm, where the record of the instruments was given.
        """

@final
class LookMade:
    """
    A look that was made, and the chance of each variant after it.
    """
    def __repr__(self, /) -> str: ...
    @property
    def chance(self, /) -> dict:
        """
        Chance of each variant after this look and those before it.
        """
    @property
    def found(self, /) -> Any:
        """
        Whether the mark is there; of a size the reading, mm.
        """
    @property
    def look(self, /) -> Look:
        """
        The look.
        """
    @property
    def nearest(self, /) -> str | None:
        """
        Of a size: the variant that the reading comes nearest to, else None.
        """
    @property
    def out_of_range(self, /) -> bool:
        """
        Whether the reading lies outside the range of its instrument, as the sizes of the record do.
        """
    @property
    def outside_mm(self, /) -> float:
        """
        Of a size: how far the reading lies beyond the nearer limit of that variant, mm: 0 within, negative below. 0 for a mark.
        """
    @property
    def outside_u(self, /) -> float:
        """
        The same in standard uncertainties of the reading.
        """
    @property
    def unexplained(self, /) -> bool:
        """
        Whether the reading is NO-GO against the limits of every variant: worn, mismeasured, or not of this family.
        """

@final
class Nearest:
    """
    The variant whose size a reading comes nearest to.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, variant: int, outside_mm: float, outside_u: float) -> Nearest: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def outside_mm(self, /) -> float:
        """
        Distance of the reading beyond that variant's nearer limit, mm: 0 within the limits, negative below them.
        """
    @property
    def outside_u(self, /) -> float:
        """
        The same distance in standard uncertainties of the reading.
        """
    @property
    def variant(self, /) -> int:
        """
        Place of the variant; the first of equals.
        """

@final
class NextLook:
    """
    A look that was not made yet, and what it is worth.
    """
    def __repr__(self, /) -> str: ...
    @property
    def look(self, /) -> Look:
        """
        The look.
        """
    @property
    def worth(self, /) -> Worth | None:
        """
        What it would tell; None for a size whose instrument is not known.
        """

@final
class Part:
    """
    A part that was looked at.
    """
    def __repr__(self, /) -> str: ...
    @property
    def finding(self, /) -> PartFinding:
        """
        Chance that it was exchanged, that it is foreign to its unit, and how its looks contradict the unit.
        """
    @property
    def name(self, /) -> str:
        """
        Name of the part.
        """
    @property
    def origin(self, /) -> str:
        """
        The variant that it most likely came from.
        """
    @property
    def origins(self, /) -> dict:
        """
        Chance that it came from each variant.
        """

@final
class PartFinding:
    """
    What the evidence says of one part.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, origin: int, chance: float, exchanged: float, exchanged_if_best: float, foreign: float, ln_conflict: float) -> PartFinding: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def chance(self, /) -> float:
        """
        Chance of that origin.
        """
    @property
    def exchanged(self, /) -> float:
        """
        Chance that the part was exchanged at some time.
        """
    @property
    def exchanged_if_best(self, /) -> float:
        """
        The same, if the unit is the likeliest variant.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def foreign(self, /) -> float:
        """
        Chance that the part came from another variant than the unit: what an order must heed.
        """
    @property
    def ln_conflict(self, /) -> float:
        """
        Logarithm of how much better its looks fit the variant that suits them best than the likeliest variant.
        """
    @property
    def origin(self, /) -> int:
        """
        Place of the variant that the part most likely came from; the first of equals.
        """

@final
class Weighed:
    """
    The evidence as a whole.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, unexplained: int, best: int, single: int, chance: float, chance_mixed: float, entropy_bits: float, ln_evidence: float, ln_single: float, ln_by_part: float, ln_gap: float) -> Weighed: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def best(self, /) -> int:
        """
        Place of the likeliest variant; the first of equals.
        """
    @property
    def chance(self, /) -> float:
        """
        Chance of the likeliest variant.
        """
    @property
    def chance_mixed(self, /) -> float:
        """
        Chance that at least one part that was looked at came from another variant than the unit.
        """
    @property
    def entropy_bits(self, /) -> float:
        """
        What is not known yet about the variant, bits.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def ln_by_part(self, /) -> float:
        """
        Logarithm of the likelihood of all looks where each part may come from the variant that fits it best.
        """
    @property
    def ln_evidence(self, /) -> float:
        """
        Logarithm of the likelihood of all looks over every variant and exchange.
        """
    @property
    def ln_gap(self, /) -> float:
        """
        `ln_by_part` less `ln_single`: how strongly the parts contradict one another.
        """
    @property
    def ln_single(self, /) -> float:
        """
        Logarithm of the likelihood of all looks in the best single variant, nothing exchanged.
        """
    @property
    def single(self, /) -> int:
        """
        Place of the variant under which the looks are likeliest if nothing was exchanged.
        """
    @property
    def unexplained(self, /) -> int:
        """
        Readings that no variant explains, as given.
        """

@final
class Weighing:
    """
    A unit as the evidence shows it; `weigh` makes one.
    """
    def __repr__(self, /) -> str: ...
    @property
    def chance(self, /) -> Incomplete:
        """
        Chance of each variant.
        """
    @property
    def chance_unmixed(self, /) -> Incomplete:
        """
        Chance of each variant, with no part that was looked at from another one.
        """
    def conclude(self, /, rule: Rule) -> Conclusion:
        """
        One variant, mixed, or not settled, over the parts that were looked at.
        """
    @property
    def ln_unmixed(self, /) -> Incomplete:
        """
        Logarithm of the likelihood of all looks in each variant, if nothing was exchanged.
        """
    def mark_worth(self, /, part: int, *, chance: Sequence[float], minutes: float, rule: Rule) -> Worth:
        """
        What looking for a mark on a part would tell about the variant. `chance`: of the mark in each variant.
        Source: Cover and Thomas, Elements of Information Theory, 2.4.

        >>> unit = weigh(prior=[0.5, 0.5], exchanged=[0.0], ln_likelihood=np.zeros((1, 2)))
        >>> round(unit.mark_worth(0, chance=[0.11, 0.89], minutes=2, rule=judge.Rule.conformance(0.95)).bits, 3)
        0.5
        """
    def origins(self, /, part: int) -> dict:
        """
        Each variant as the origin of a part: the chance that the part came from it (`chance`), the chance that the part was
        not exchanged if the unit is that variant (`kept`), and the chance that it came from it if it was exchanged
        (`if_exchanged`), as arrays.
        """
    def part(self, /, part: int) -> PartFinding:
        """
        Where a part came from; `part` is its place.
        Source: Gelman and others, Bayesian Data Analysis, 1.3, Bayes' rule.

        >>> unit = weigh(prior=[0.5, 0.5], exchanged=[0.1], ln_likelihood=[ln_seen([0.2, 0.8], seen=True)])
        >>> unit.part(0).origin, round(unit.part(0).exchanged, 2)
        (1, 0.1)
        """
    def size_worth(self, /, part: int, *, size_mm: Sequence[Limits], u_mm: float, minutes: float, rule: Rule) -> Worth:
        """
        What measuring a size of a part would tell about the variant. `size_mm`: limits in each variant; `u_mm`: standard
        uncertainty of the instrument. Source: Cover and Thomas, Elements of Information Theory, 8.5.

        >>> unit = weigh(prior=[0.5, 0.5], exchanged=[0.0], ln_likelihood=np.zeros((1, 2)))
        >>> sizes_mm = [Limits(lower=43.975, upper=44.0), Limits(lower=44.325, upper=44.35)]
        >>> worth = unit.size_worth(0, size_mm=sizes_mm, u_mm=0.0016, minutes=30, rule=judge.Rule.conformance(0.95))
        >>> round(worth.bits, 6), round(worth.bits_per_minute, 4)
        (1.0, 0.0333)
        """
    @property
    def weighed(self, /) -> Weighed:
        """
        The evidence as a whole.
        """

@final
class Worth:
    """
    What a further look is worth.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, bits: float, bits_per_minute: float, settles: float) -> Worth: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def bits(self, /) -> float:
        """
        Information about the variant to be expected, bits.
        """
    @property
    def bits_per_minute(self, /) -> float:
        """
        The same for each minute of labor.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def settles(self, /) -> float:
        """
        Chance that afterwards one variant reaches the rule's chance.
        """

def conclude(weighed: Weighed, parts: Sequence[PartFinding], rule: Rule) -> Conclusion:
    """
    One variant, mixed, or not settled, from findings that were made before: see `Weighing.conclude`.
    Source: follows from the definitions (the stated chances of the rule, on posterior chances).

    >>> unit = weigh(prior=[0.5, 0.5], exchanged=[0.02], ln_likelihood=[ln_seen([0.001, 0.999], seen=True)])
    >>> conclude(unit.weighed, [unit.part(0)], judge.Rule.conformance(0.95)).outcome
    'one variant'
    """

def ln_density(*, reading_mm: Reading | Mapping[str, ArrayLike], size_mm: Limits | Mapping[str, ArrayLike], out: NDArray[float64] | None = None) -> Any:
    """
    Logarithm of the probability density (1/mm) of a reading of a size that lies anywhere within its limits, mm.

    Both may be columns: a mapping of the field names to numbers or arrays, or a data frame.
    Source: follows from the definitions (a rectangular size, read with a normal error).

    >>> reading_mm = Reading(value=62.1, u=0.4)
    >>> round(ln_density(reading_mm=reading_mm, size_mm=Limits(lower=61, upper=63)), 4)
    -0.7085
    >>> ln_density(reading_mm=reading_mm, size_mm={"lower": [61, 77], "upper": [63, 79]}).round(1)
    array([  -0.7, -699. ])
    """

def ln_seen(chance: ArrayLike, *, seen: bool, out: NDArray[float64] | None = None) -> Any:
    """
    Logarithm of the chance of what was found of a mark: `chance` is that of the mark in each variant, a number or an array.

    >>> ln_seen([0.01, 0.65, 0.99], seen=True).round(3)
    array([-4.605, -0.431, -0.01 ])
    """

def nearest(*, size_mm: Sequence[Limits], reading_mm: Reading) -> Nearest:
    """
    The variant whose limits, mm, a reading comes nearest to.

    >>> sizes_mm = [Limits(lower=43.975, upper=44.0), Limits(lower=44.325, upper=44.35)]
    >>> worn = nearest(size_mm=sizes_mm, reading_mm=Reading(value=44.295, u=0.0016))
    >>> worn.variant, round(worn.outside_mm, 3), round(worn.outside_u)
    (1, -0.03, -19)
    """

def prior_of_counts(counts: Sequence[int]) -> list[float]:
    """
    Prior chance of each variant from how many of each came into the shop: (n + 1)/(N + V).
    Source: Gelman and others, Bayesian Data Analysis, 2.1 and 3.4 (Laplace's rule of succession).

    >>> prior_of_counts([12, 30, 6])
    [0.2549019607843137, 0.6078431372549019, 0.13725490196078433]
    """

def weigh(*, prior: Sequence[float], exchanged: Sequence[float], ln_likelihood: Incomplete, part: Sequence[int] | None = None, unexplained: int = 0) -> Weighing:
    """
    Chance of each variant from the looks at a unit, as arrays and without a record.

    `prior`: chance of each variant beforehand. `exchanged`: for each part, the chance that it came from another unit.
    `ln_likelihood`: a row for each look and a column for each variant, from `ln_seen` and `ln_density`. `part`: for each row
    the place of the part that the look is on; without it, row by row. `unexplained`: how many readings are NO-GO against the
    limits of every variant. Source: Gelman and others, Bayesian Data Analysis, 1.3, Bayes' rule.

    >>> rows = [ln_seen([0.01, 0.65, 0.99], seen=True),       # on the case
    ...         ln_seen([0.01, 0.97, 0.99], seen=True),       # on the case too
    ...         ln_seen([0.005, 0.01, 0.995], seen=False)]    # on the extension
    >>> unit = weigh(prior=[0.40, 0.38, 0.22], exchanged=[0.04, 0.05], ln_likelihood=rows, part=[0, 0, 1])
    >>> unit.chance.round(3)
    array([0.029, 0.934, 0.037])
    """
