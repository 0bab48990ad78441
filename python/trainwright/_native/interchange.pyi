"""
Which parts interchange singly, one way, only as a set, after machining, or never; matched sets and orders.
"""

from . import Explanation
from .judge import Limits, Reading, Rule
from collections.abc import Sequence
from typing import Any, Final, final

__all__ = ["Answer", "Joint", "JointState", "Joints", "Machining", "MatchedSet", "Meeting", "Order", "Other", "Price", "Reason", "cover_share"]

@final
class Answer:
    """
    How a part of one variant goes into a unit of another.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def alone(self, /) -> str:
        """
        What comes of putting it in alone, as it is: `"holds"`, `"blocked"` (found at once), `"loose"` (goes together and runs
        loose: the expensive case), `"may bind"`, `"may be loose"`, `"uncovered"` or `"unequal"`.
        """
    @property
    def broken(self, /) -> int:
        """
        How many of them do not hold when it is put in alone.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def into(self, /) -> str:
        """
        The unit's variant.
        """
    @property
    def joints(self, /) -> int:
        """
        Joints of the part in the record.
        """
    @property
    def machined(self, /) -> int:
        """
        Joints of the set that must be machined.
        """
    @property
    def part(self, /) -> str:
        """
        The part.
        """
    @property
    def relation(self, /) -> str:
        """
        `"singly"`, `"after machining"`, `"only as a set"`, `"never"`, `"not known"` or `"belongs to the unit"`.
        """
    @property
    def size(self, /) -> int:
        """
        Parts of the matched set; 0 where there is no such question.
        """
    @property
    def unmended(self, /) -> int:
        """
        Joints of the set that nothing mends.
        """
    @property
    def variant(self, /) -> str:
        """
        Its variant.
        """

@final
class Joint:
    """
    Two parts that meet: shaft and bore of a fit, land and surface of a cover, or the two of a match.

    `limit` is the greatest diametral clearance of a fit, mm, or the least share of a cover; a match has none. `sizes` has for each
    variant the size of the first and of the second part, mm, or the value of a match.

    >>> pitch = Joint(name="pitch", kind="match", first="park_gear", second="park_pawl", sizes={"early": "24T", "late": "18T"})
    >>> pitch.meet(first_of="late", second_of="early").outcome
    'unequal'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, *, name: str, kind: str, first: str, second: str, sizes: dict, limit: float | None = None) -> Joint: ...
    def __repr__(self, /) -> str: ...
    @property
    def first(self, /) -> str:
        """
        Shaft of a fit, land of a cover, either part of a match.
        """
    @property
    def kind(self, /) -> str:
        """
        `"running"`, `"locating"`, `"press"`, `"cover"` or `"match"`.
        """
    @property
    def limit(self, /) -> float | None:
        """
        Greatest diametral clearance of a fit, mm; least share of a cover; `None` of a match.
        """
    def meet(self, /, *, first_of: str, second_of: str) -> Meeting:
        """
        What comes of the joint with its first part of one variant and its second of another.
        Source: follows from the definitions (clearance as `trainwright.fit.clearance`).
        """
    @property
    def name(self, /) -> str:
        """
        Name of the joint.
        """
    @property
    def second(self, /) -> str:
        """
        Bore of a fit, surface of a cover, the other part of a match.
        """
    @property
    def sizes(self, /) -> dict:
        """
        By variant: sizes of the first and second part, mm, or the value of a match.
        """

@final
class JointState:
    """
    A joint of the unit as it would be put together.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def chance(self, /) -> float:
        """
        Chance that the clearance is right; by tolerances 1 or 0.
        """
    @property
    def clearance_mm(self, /) -> Reading:
        """
        Clearance of a measured fit, mm; 0 with u 0 of others.
        """
    @property
    def joint(self, /) -> str:
        """
        The joint.
        """
    @property
    def machining(self, /) -> str | None:
        """
        The machining that mends it, if it needs one.
        """
    @property
    def measured(self, /) -> bool:
        """
        Whether one of its sizes was measured; else it is known by its tolerances alone.
        """
    @property
    def outcome(self, /) -> str:
        """
        What comes of it as the parts are.
        """
    @property
    def verdict(self, /) -> str:
        """
        By tolerances, `"GO"` where it holds and `"NO-GO"` where it does not; by measured sizes, as judged.
        """

@final
class Joints:
    """
    How the parts of a family meet: its joints by name, from a record (`family.joints()`) or given here.

    `sizes` of every joint and `prices` go by the names of variants, parts and machining. `fixed` parts belong to the unit itself
    and are never exchanged, such as its case; `alias` parts have other numbers and the same fit; `parts` may name more parts, of
    which no joint is known.

    >>> size = lambda lower, upper: Limits(lower=lower, upper=upper)
    >>> journal = Joint(name="journal", kind="running", first="shaft", second="support", limit=0.14, sizes={
    ...     "early": (size(43.975, 44.000), size(44.040, 44.075)),
    ...     "late": (size(44.325, 44.350), size(44.390, 44.425)),
    ... })
    >>> joints = Joints(variants=["early", "late"], joints=[journal], prices={"shaft": 210, "support": 145})
    >>> joints.answer("shaft", variant="early", into="late").alone
    'loose'
    >>> joints.close_set("shaft", variant="late", into="early").parts
    ['shaft', 'support']
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __new__(cls, /, *, variants: Sequence[str], joints: Sequence[Joint], parts: Sequence[str] | None = None, machining: Sequence[Machining] | None = None, fixed: Sequence[str] | None = None, alias: Sequence[str] | None = None, prices: dict | None = None, price_unit: str = "") -> Joints: ...
    def __repr__(self, /) -> str: ...
    @property
    def alias(self, /) -> list[str]:
        """
        Parts whose numbers differ and whose fit is the same: order any of them.
        """
    def answer(self, /, part: str, *, variant: str, into: str) -> Answer:
        """
        How a part of a variant goes into a unit of another. Source: follows from the definitions.
        """
    def close_set(self, /, part: str, *, variant: str, into: str) -> MatchedSet:
        """
        The smallest set of parts of a variant that goes together with the rest of a unit of another: the closure of the joints
        that break, which every set that goes together contains. Source: follows from the definitions (least closed set).
        """
    def columns(self, /) -> dict[str, Any]:
        """
        The answers of `matrix` as columns, for a data frame: `polars.DataFrame(joints.columns())`.
        """
    @property
    def fixed(self, /) -> list[str]:
        """
        Parts that belong to the unit itself and are never exchanged.
        """
    @property
    def joints(self, /) -> list[Joint]:
        """
        The joints: fits, then covers, then matches.
        """
    def machined(self, /, machining: str, *, first_of: str, second_of: str) -> Meeting:
        """
        What comes of a joint once a machining was done, with its first part of one variant and its second of another.
        """
    @property
    def machining(self, /) -> list[Machining]:
        """
        The only machining permitted.
        """
    def matrix(self, /) -> list[Answer]:
        """
        The answers for every part and every ordered pair of variants.
        """
    def meeting(self, /, joint: str, *, first_of: str, second_of: str) -> Meeting:
        """
        What comes of a joint with its first part of one variant and its second of another. Parts of one variant hold.
        """
    def order(self, /, *, unit: str, aim: str, wanted: dict[str, str] | None = None, found: dict[str, str] | None = None, measured: Sequence[tuple[str, str, Reading]] | None = None, rule: Rule | None = None, spread: str | None = None) -> Order:
        """
        The fewest parts, or the cheapest, that make every joint of a unit on the bench hold.

        `unit` is the unit's variant; `wanted` and `found` give the variant of parts that shall be, or were found to be, another;
        `measured` gives sizes of the parts as found, mm, by joint and part, and then needs the `rule` by which they are judged and
        the `spread` that parts not measured are taken to have in their tolerance. `aim` is `"fewest"` or `"cheapest"`.
        Source: follows from the definitions (branch and bound over all choices).

        >>> size = lambda lower, upper: Limits(lower=lower, upper=upper)
        >>> journal = Joint(name="journal", kind="running", first="shaft", second="support", limit=0.14, sizes={
        ...     "early": (size(43.975, 44.000), size(44.040, 44.075)),
        ...     "late": (size(44.325, 44.350), size(44.390, 44.425)),
        ... })
        >>> joints = Joints(variants=["early", "late"], joints=[journal])
        >>> order = joints.order(unit="late", found={"shaft": "early"}, aim="fewest")
        >>> order.parts, order.others
        ({'shaft': 'late'}, [<early shaft: loose>])
        """
    @property
    def parts(self, /) -> list[str]:
        """
        Every part, in the order in which the record first names it.
        """
    @property
    def price_unit(self, /) -> str:
        """
        What prices are counted in; empty without a price list.
        """
    @property
    def prices(self, /) -> dict:
        """
        The known prices, by part and machining.
        """
    def put_in(self, /, part: str, *, variant: str, unit: str, found: dict[str, str] | None = None) -> Other:
        """
        What comes of a part of some variant in a unit in which these parts were found to be of another variant, by tolerance.
        """
    def reasons(self, /, part: str, *, variant: str, into: str) -> list[Reason]:
        """
        What comes of every joint of a part that is put in alone, as it is.
        """
    @property
    def variants(self, /) -> list[str]:
        """
        Variants in the order in which they were built.
        """

@final
class Machining:
    """
    A permitted change of one part of a fit: the only kind of machining there is; what no rule permits is never done.

    `part` of the variants `variants` is brought to `finish_mm` and then fits the mate of the variants `to_fit`.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, *, name: str, joint: str, part: str, variants: Sequence[str], to_fit: Sequence[str], finish_mm: Limits, check: str, runout_limit_mm: float) -> Machining: ...
    def __repr__(self, /) -> str: ...
    @property
    def check(self, /) -> str:
        """
        What must be checked afterwards.
        """
    @property
    def finish_mm(self, /) -> Limits:
        """
        Finished diameter, mm.
        """
    @property
    def joint(self, /) -> str:
        """
        The fit that it makes good.
        """
    @property
    def name(self, /) -> str:
        """
        Name of the operation.
        """
    @property
    def part(self, /) -> str:
        """
        The part that is machined.
        """
    @property
    def runout_limit_mm(self, /) -> float:
        """
        Greatest run-out afterwards, mm.
        """
    @property
    def to_fit(self, /) -> list[str]:
        """
        Variants whose mate it then fits.
        """
    @property
    def variants(self, /) -> list[str]:
        """
        Variants whose part may be machined.
        """

@final
class MatchedSet:
    """
    The smallest set of parts that goes together with the rest of a unit of another variant.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def into(self, /) -> str:
        """
        The unit's variant.
        """
    @property
    def machining(self, /) -> dict:
        """
        The machining that each of these joints with the rest of the unit needs, by joint.
        """
    @property
    def part(self, /) -> str:
        """
        The part asked for.
        """
    @property
    def parts(self, /) -> list[str]:
        """
        The parts, the one asked for among them, in the order of the record.
        """
    @property
    def possible(self, /) -> bool:
        """
        Whether the set goes in.
        """
    @property
    def price(self, /) -> Price:
        """
        What the parts and the machining cost.
        """
    @property
    def unmended(self, /) -> list[str]:
        """
        Joints with the unit itself that nothing mends: if there is one, the part never goes in, and the set is how far it goes.
        """
    @property
    def variant(self, /) -> str:
        """
        The variant of the set.
        """

@final
class Meeting:
    """
    What comes of a joint, with its reason.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, outcome: str, clearance_mm: Limits, wanted_mm: Limits, share: float) -> Meeting: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def clearance_mm(self, /) -> Limits:
        """
        Least and greatest clearance of a fit, mm, negative is interference; 0 and 0 of a cover or match.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def outcome(self, /) -> str:
        """
        `"holds"`, `"blocked"`, `"may bind"`, `"may be loose"`, `"loose"`, `"uncovered"` or `"unequal"`.
        """
    @property
    def share(self, /) -> float:
        """
        Share of the land that is carried; of a match 1 where equal, else 0; 0 of a fit.
        """
    @property
    def wanted_mm(self, /) -> Limits:
        """
        Clearance that is right, mm; 0 and 0 of a cover or match.
        """

@final
class Order:
    """
    An order for a unit on the bench, or why there is none.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def cheapest(self, /) -> bool:
        """
        Whether no other order can be cheaper; only looked for where the cheapest was asked for.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def joints(self, /) -> list[JointState]:
        """
        Every joint as it would be.
        """
    @property
    def machining(self, /) -> dict:
        """
        The machining that each of these joints needs, by joint.
        """
    @property
    def not_proven(self, /) -> list[str]:
        """
        Joints that are neither proven right nor wrong: measure better.
        """
    @property
    def others(self, /) -> list[Other]:
        """
        What comes of other variants of the ordered parts in the unit as it would be. Those that hold may be ordered as well; the
        others are the do-not list.
        """
    @property
    def parts(self, /) -> dict:
        """
        The variant to order of each part, in the order of the record.
        """
    @property
    def possible(self, /) -> bool:
        """
        Whether the unit can be put together so that no joint is known to be wrong.
        """
    @property
    def price(self, /) -> Price:
        """
        What the parts and the machining cost.
        """
    @property
    def steps(self, /) -> int:
        """
        Partial orders that were looked at.
        """
    @property
    def stopped_at(self, /) -> str | None:
        """
        The first joint that nothing mends, where there is no order.
        """

@final
class Other:
    """
    A part of some variant in a unit, after what machining is permitted.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def machining(self, /) -> str | None:
        """
        The first machining that it needs, if any.
        """
    @property
    def outcome(self, /) -> str:
        """
        What comes of it: the outcome of its worst joint that no machining mends.
        """
    @property
    def part(self, /) -> str:
        """
        The part.
        """
    @property
    def variant(self, /) -> str:
        """
        Its variant.
        """

@final
class Price:
    """
    What a set costs.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, total: float, unpriced: int) -> Price: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def total(self, /) -> float:
        """
        Sum of the known prices.
        """
    @property
    def unpriced(self, /) -> int:
        """
        Parts and machinings whose price is not known.
        """

@final
class Reason:
    """
    A joint of a part that is put in alone: what comes of it, and what mends it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def joint(self, /) -> str:
        """
        The joint.
        """
    @property
    def machining(self, /) -> str | None:
        """
        The machining that mends it, if there is one.
        """
    @property
    def meeting(self, /) -> Meeting:
        """
        What comes of it, with clearance or share.
        """
    @property
    def neighbor(self, /) -> str:
        """
        The unit's part that it is with.
        """

def cover_share(*, land_mm: Limits, surface_mm: Limits) -> float:
    """
    Share of a land that lies on its bearing surface: both from the same face, or both as diameters about the same axis, mm.
    Source: follows from the definitions (overlap over the length of the land).

    >>> round(cover_share(land_mm=Limits(lower=1.5, upper=22), surface_mm=Limits(lower=0, upper=15)), 3)
    0.659
    """
