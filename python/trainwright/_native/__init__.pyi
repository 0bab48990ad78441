"""
The compiled part of trainwright.
"""

from . import clutch as clutch, fit as fit, fluid as fluid, hazard as hazard, hold as hold, identify as identify, judge as judge, practice as practice, record as record, road as road, stack as stack, tire as tire, train as train, units as units
from typing import Any, final

__all__ = ["Card", "Source", "Symbol", "card", "cards", "version", "clutch", "fit", "fluid", "hazard", "hold", "identify", "judge", "practice", "record", "road", "stack", "tire", "train", "units"]

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

def version() -> str:
    """
    The version of the library, `"major.minor.patch"`.

    >>> trainwright.version().count(".")
    2
    """
