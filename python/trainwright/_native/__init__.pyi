"""
The compiled part of trainwright.
"""

from . import clutch as clutch, converter as converter, duty as duty, fit as fit, fleet as fleet, fluid as fluid, hazard as hazard, hold as hold, hydraulic as hydraulic, identify as identify, interchange as interchange, judge as judge, live as live, practice as practice, record as record, road as road, stack as stack, tire as tire, tow as tow, train as train, units as units
from typing import Any, final

__all__ = ["Card", "Explanation", "Source", "Symbol", "card", "cards", "explain", "version", "clutch", "converter", "duty", "fit", "fleet", "fluid", "hazard", "hold", "hydraulic", "identify", "interchange", "judge", "live", "practice", "record", "road", "stack", "tire", "tow", "train", "units"]

@final
class Card:
    """
    A formula: what it computes, its equation, symbols, range and source.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def equation(self, /) -> str:
        """
        The equation, in the source's symbols.
        """
    @property
    def id(self, /) -> str:
        """
        Chapter and function, `"clutch.capacity"`.
        """
    @property
    def locator(self, /) -> str:
        """
        Equation, table or clause in that work.
        """
    @property
    def purpose(self, /) -> str:
        """
        What it computes, in one line.
        """
    @property
    def range(self, /) -> str:
        """
        Range of validity, and what lies outside it.
        """
    @property
    def source(self, /) -> Source:
        """
        The work it comes from.
        """
    @property
    def symbols(self, /) -> list[Symbol]:
        """
        Meaning and unit of each symbol.
        """

@final
class Explanation:
    """
    The worked explanation of a result, in words that can be read out: purpose, equation, each symbol with its value and unit,
    the result, what else it holds, range and source; for a judged result the verdict, what each input brings, and what would
    settle it. `str()` is the text.
    """
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict:
        """
        The same as a dictionary.
        """
    def as_html(self, /) -> str:
        """
        A piece of HTML: an `article` with a heading of level 4.
        """
    def as_json(self, /) -> str:
        """
        JSON text. Numbers have all their digits; what is infinite or no number is null.
        """
    @property
    def card(self, /) -> Card:
        """
        The formula.
        """
    @property
    def values(self, /) -> dict:
        """
        What is known, by the names of fields; those of nested results have points between them.
        """

@final
class Source:
    """
    A work that a formula comes from.
    """
    def __repr__(self, /) -> str: ...
    @property
    def id(self, /) -> str:
        """
        Short key.
        """
    @property
    def known(self, /) -> str:
        """
        How the project knows it: `"read"`, `"memory"`, `"derived"` or `"practice"`.
        """
    @property
    def work(self, /) -> str:
        """
        Author or body, title, edition.
        """

@final
class Symbol:
    """
    One symbol of an equation.
    """
    def __repr__(self, /) -> str: ...
    @property
    def meaning(self, /) -> str:
        """
        The field or parameter that carries it.
        """
    @property
    def symbol(self, /) -> str:
        """
        As written in the equation.
        """
    @property
    def unit(self, /) -> str:
        """
        Unit, `"1"` for a pure number.
        """

def card(id: str) -> Card:
    """
    The card of a formula: its equation, symbols, range and source.

    >>> print(trainwright.card("judge.chance_inside").equation)
    p = Φ((T_U − y)/u) − Φ((T_L − y)/u)
    """

def cards() -> list[Card]:
    """
    All formula cards, chapter by chapter.

    >>> "judge.chance_inside" in [card.id for card in trainwright.cards()]
    True
    """

def explain(what: Any, known: Any | None = None, /, **more) -> Explanation:
    """
    The worked explanation of a result or of a formula.

    `what` is a result that has `explain`, or the id of a card; `known` is then a result, or a mapping of fields to values.
    More values by name: inputs that the result does not keep, and `result` for the symbol that the equation is solved for.

    >>> print(trainwright.explain("clutch.mean_radius_worn_mm", inner_radius_mm=56.0, outer_radius_mm=78.0, result=67.0))
    clutch.mean_radius_worn_mm: Friction radius of a worn-in lining
    <BLANKLINE>
      r_m = (r_o + r_i)/2
    <BLANKLINE>
      r_i  inner radius: 56 mm
      r_o  outer radius: 78 mm
      r_m  mean radius: 67 mm
    <BLANKLINE>
    Result: r_m = 67 mm
    <BLANKLINE>
    Valid for: uniform wear: pressure × radius the same over the lining
    Source: R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th to 11th editions, chapter 16, uniform wear (from memory of the work)
    """

def version() -> str:
    """
    The version of the library, `"major.minor.patch"`.

    >>> trainwright.version().count(".")
    2
    """
