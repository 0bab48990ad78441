"""
Gear trains: exact ratios, member speeds, torque shares and states.
"""

from collections.abc import Sequence
from typing import Any, final

__all__ = ["Gear", "State", "Train"]

@final
class Gear(State):
    """
    A gear of the record, solved.
    """
    def __repr__(self, /) -> str: ...
    @property
    def efficiency(self, /) -> float | None:
        """
        Efficiency on the road, where the record states one.
        """
    @property
    def id(self, /) -> str:
        """
        Name of the gear.
        """
    @property
    def note(self, /) -> str | None:
        """
        A misprint or doubt about the printed ratio.
        """
    @property
    def published(self, /) -> str | None:
        """
        Ratio as it is printed in the source of the record.
        """

class State:
    """
    One engagement solved: kind of state, and everything per unit of input speed and of input torque, without losses.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    def carries_torque(self, /) -> bool:
        """
        Whether anything reacts a torque at the input.
        """
    @property
    def case_torque(self, /) -> float | None:
        """
        Torque of the case on the train per unit input torque.
        """
    @property
    def closed(self, /) -> list[str]:
        """
        Names of the closed elements, holding one-way clutches included.
        """
    @property
    def kind(self, /) -> str:
        """
        `"gear"`, `"neutral"`, `"input held"`, `"output held"` or `"tied up"`.
        """
    @property
    def mobility(self, /) -> int:
        """
        Degrees of freedom that are left.
        """
    @property
    def output_torque(self, /) -> float | None:
        """
        Torque from outside on the output per unit input torque, forward positive.
        """
    def overspeeds(self, /, *, output_per_input: float) -> bool:
        """
        Whether the state drives the output faster than `output_per_input` times the input: a forbidden state.
        """
    def planet_speeds(self, /, set: str) -> dict:
        """
        Speeds of the planets of a set, on their pins and in space; `None` where the tooth counts are not known.
        """
    @property
    def ratio(self, /) -> float | None:
        """
        Input speed over output speed; `None` unless the state is a gear.
        """
    @property
    def ratio_exact(self, /) -> Any | None:
        """
        The ratio as a `fractions.Fraction`.
        """
    @property
    def redundant(self, /) -> int:
        """
        Closures that repeat what others already force.
        """
    @property
    def shares(self, /) -> dict:
        """
        Torque that each element puts on its first member per unit input torque; `None` where it is indeterminate.
        """
    @property
    def shares_exact(self, /) -> dict:
        """
        `shares` as fractions.
        """
    @property
    def slips(self, /) -> dict:
        """
        Speed of each element's first member relative to its second, per unit input speed.
        """
    @property
    def slips_exact(self, /) -> dict:
        """
        `slips` as fractions.
        """
    @property
    def speeds(self, /) -> dict:
        """
        Speed of each member per unit input speed; `None` where the state leaves it open.
        """
    @property
    def speeds_exact(self, /) -> dict:
        """
        `speeds` as fractions.
        """

@final
class Train:
    """
    A gear train: members, planetary sets, elements and gears, by the names of its record.

    >>> train = Train.from_toml('''
    ... [train]
    ... input = "sun"
    ... output = "carrier"
    ... fixed = "case"
    ... [[train.set]]
    ... id = "P1"
    ... teeth = { sun = 20, ring = 34 }
    ... joins = { sun = "sun", ring = "ring", carrier = "carrier" }
    ... [train.element]
    ... B1 = { kind = "brake", joins = ["ring", "case"] }
    ... [[train.gear]]
    ... id = "1"
    ... closed = ["B1"]
    ... ''')
    >>> train.gears()[0].ratio_exact
    Fraction(27, 10)
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str, str | None]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def elements(self, /) -> list[str]:
        """
        Names of the elements; slips and shares come in this order.
        """
    @staticmethod
    def from_toml(text: str, variant: str | None = None) -> Train:
        """
        The train in the `[train]` table of a record: a train file, or a whole family file.

        A set that is written `only` for a variant takes part where that variant is asked for.
        """
    def gears(self, /) -> list[Gear]:
        """
        The gears of the record, solved with the elements and one-way clutches that it lists.
        """
    @property
    def members(self, /) -> list[str]:
        """
        Names of the members; speeds come in this order.
        """
    @property
    def note(self, /) -> str | None:
        """
        What a reader should know: fitted tooth counts, misprints, doubts.
        """
    def resolve(self, /, closed: Sequence[str], *, load: str = ...) -> State:
        """
        As `solve`, with the one-way clutches held or overrunning as the load (`"none"`, `"drive"`, `"coast"`) makes them.
        """
    @property
    def sets(self, /) -> list[str]:
        """
        Names of the planetary sets.
        """
    def solve(self, /, closed: Sequence[str]) -> State:
        """
        The state in which exactly these elements are closed, one-way clutches like any other.
        """
    @property
    def source(self, /) -> str | None:
        """
        Where tooth counts, layout and ratios come from, and how each is known.
        """
    def state_counts(self, /, *, load: str = ...) -> dict:
        """
        How many combinations of closed elements give each kind of state.
        """
    def states(self, /, *, load: str = ...) -> list[State]:
        """
        Every combination of closed elements, each resolved under the load.
        """
    @property
    def title(self, /) -> str | None:
        """
        What the train is, in a line, where the record says it.
        """
