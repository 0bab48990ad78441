"""
The pass over the telematics rows of a fleet. A computed damage ranks; it does not promise a life.
"""

from .clutch import CapacityLine
from .duty import BusSignal
from collections.abc import Sequence
from typing import Any, Final, final

__all__ = ["AGGREGATES", "COLUMNS", "FLAGS", "OUTPUTS", "Gear", "Holding", "Limits", "Screen", "Unit"]

AGGREGATES: Final[list[str]]
COLUMNS: Final[list[str]]
FLAGS: Final[list[str]]
OUTPUTS: Final[list[str]]

@final
class Gear:
    """
    A gear.
    """
    def __new__(cls, /, *, name: str, number: int, ratio: float, efficiency: float, holding: Sequence[Holding] = ..., contacts: dict[str, float] = ..., sun_torque: dict[str, float] = ...) -> Gear:
        """
        `number` is what a commanded gear is compared with, forward from 1, reverse from -1 down; `ratio` is input over output
        speed, negative in reverse; `efficiency` 0.5 to 1; `holding` its closed packs; `contacts` the tooth contacts of each
        set per turn of the input, and `sun_torque` the torque on its sun per unit of input torque, without sign.
        """
    @property
    def contacts(self, /) -> dict[str, float]:
        """
        Tooth contacts of each set per turn of the input.
        """
    @property
    def efficiency(self, /) -> float:
        """
        Efficiency.
        """
    @property
    def holding(self, /) -> list[Holding]:
        """
        Closed packs.
        """
    @property
    def name(self, /) -> str:
        """
        Name.
        """
    @property
    def number(self, /) -> int:
        """
        Number.
        """
    @property
    def ratio(self, /) -> float:
        """
        Input over output speed.
        """
    @property
    def sun_torque(self, /) -> dict[str, float]:
        """
        Torque on the sun of each set per unit of input torque.
        """

@final
class Holding:
    """
    A closed pack in a gear.
    """
    def __new__(cls, /, *, element: str, share: float, turns: float, line: CapacityLine, friction: float) -> Holding:
        """
        `element` names it; `share` is the torque on it per unit of input torque, without sign; `turns` the speed of the drum of
        its apply oil per unit of input speed, 0 for a brake; `line` its capacity; `friction` its static friction.
        """
    def __repr__(self, /) -> str: ...
    @property
    def element(self, /) -> str:
        """
        Name of the element.
        """
    @property
    def friction(self, /) -> float:
        """
        Its static friction.
        """
    @property
    def line(self, /) -> CapacityLine:
        """
        Its capacity.
        """
    @property
    def share(self, /) -> float:
        """
        Torque on it per unit of input torque.
        """
    @property
    def turns(self, /) -> float:
        """
        Speed of its drum per unit of input speed.
        """

@final
class Limits:
    """
    Where a row changes its meaning. Nothing is a default; `common_practice()` takes usual values by name.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, ratio_tolerance: float, locked_slip_rpm: float, gap_s: float, standing_rpm: float, torque_floor_nm: float, hot_c: float, least_margin: float, gps_floor_km_h: float) -> Limits: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @staticmethod
    def common_practice() -> Limits:
        """
        Usual values, taken by name from `practice`: common practice, no source.

        >>> Limits.common_practice().gap_s
        10.0
        """
    @property
    def gap_s(self, /) -> float:
        """
        Time between two rows above which what happened is unknown, s, at most 600.
        """
    @property
    def gps_floor_km_h(self, /) -> float:
        """
        Road speed from which the satellite is compared, km/h, at least 5.
        """
    @property
    def hot_c(self, /) -> float:
        """
        Fluid temperature above which a row is hot, °C.
        """
    @property
    def least_margin(self, /) -> float:
        """
        Capacity over demand below which a row is counted as low.
        """
    @property
    def locked_slip_rpm(self, /) -> float:
        """
        Difference of engine and input speed up to which the converter counts as locked, 1/min.
        """
    @property
    def ratio_tolerance(self, /) -> float:
        """
        A ratio belongs to a gear that is no farther away than this share of it, above 0 to 0.2.
        """
    @property
    def standing_rpm(self, /) -> float:
        """
        Output speed below which the truck stands, 1/min.
        """
    @property
    def torque_floor_nm(self, /) -> float:
        """
        Input torque below which no margin is formed, N·m.
        """

@final
class Screen:
    """
    The sums of a fleet so far: a pass over rows that can be continued, merged with others and carried elsewhere.

    The same rows give the same bits, whatever the pieces, the threads and the order of merging.
    """
    def __new__(cls, /, units: Any, *, aggregates: Sequence[str] | None = None, outputs: Sequence[str] = ..., bus: dict[str, BusSignal] | None = None, order: str = "row", threads: int | None = None) -> Screen:
        """
        `units` is a `Unit` for every truck or a dictionary of truck to `Unit`. `aggregates` chooses what is summed, of
        `AGGREGATES` (`None`: all; an empty list: nothing); `outputs` what every row answers; `bus` names columns of raw or
        scaled bus values by their `duty.BusSignal`. `order` says how the runs of a truck are put in order after a merge:
        `"row"` by their place in the stream, `"time"` by their first time. `threads` limits the threads.
        """
    def __repr__(self, /) -> str: ...
    def add(self, /, data: Any, *, truck: Any | None = None, first_row: int | None = None, progress: Any | None = None) -> dict:
        """
        Passes over more rows of the stream: a mapping of column names to NumPy arrays, or any Arrow producer (a table of
        Polars, pyarrow, DuckDB, pandas). `truck` names all rows where there is no such column; `first_row` is the number of
        the first row in the whole stream where it does not just go on. `progress(rows)` is called between pieces; what it
        raises stops the pass, as does Ctrl-C: pieces that are finished stay counted. Gives the answers of the rows asked for.
        """
    def bad_values(self, /) -> dict:
        """
        What could not be used: a dictionary of the columns truck, column, kind, rows.
        """
    @staticmethod
    def from_bytes(units: Any, data: bytes, *, aggregates: Sequence[str] | None = None, outputs: Sequence[str] = ..., bus: dict[str, BusSignal] | None = None, order: str = "row", threads: int | None = None) -> Screen:
        """
        The partial that `to_bytes` wrote, for the same units and the same question; it may be continued and merged.
        """
    def merge(self, /, other: Screen) -> None:
        """
        Adds a partial that was made with the same units and the same question. Any order of merging gives the same bits.
        """
    @property
    def missing_columns(self, /) -> list[str]:
        """
        Columns that some batch did not have: what rests on them was not formed there.
        """
    @property
    def rows(self, /) -> int:
        """
        Rows passed over.
        """
    def to_bytes(self, /) -> bytes:
        """
        The partial as bytes, to be carried to where it is merged. The units are not in it, only their fingerprint.
        """
    def totals(self, /) -> dict:
        """
        The totals of every truck: a dictionary of arrays, one entry for each truck, sorted by truck.
        """

@final
class Unit:
    """
    One truck: gears, ratings, limits and rules, checked.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __new__(cls, /, *, gears: Sequence[Gear], rated_input_nm: float, rated_output_nm: float, limits: Limits, slope: float | None = None, reference_contacts: float | None = None, reference_torque_nm: dict[str, float] = ..., speed_ratio: Sequence[float] | None = None, torque_ratio: Sequence[float] | None = None, output_rpm_per_km_h: float | None = None, fluid_life_h: float | None = None, fluid_reference_c: float | None = None, fluid_halving_k: float | None = None) -> Unit:
        """
        Gears, ratings and limits; what damage, converter, drive line and fluid need may be left out, and then what rests on
        it is not formed. `speed_ratio` and `torque_ratio` are the converter's points.
        """
    def __repr__(self, /) -> str: ...
    @property
    def elements(self, /) -> list[str]:
        """
        Names of the elements; the place in it is the `weakest` of a row.
        """
    @property
    def gears(self, /) -> list[str]:
        """
        Names of the gears; the place in it is the `gear` of a row.
        """
    def row(self, /, row: dict, previous: dict | None = None) -> dict:
        """
        One row, and the row of the same truck before it: everything that it says, by name. Rows are dictionaries of the columns.
        Source: the cards of its rules, `duty.gear_in_effect` to `duty.satellite`.
        """
    @property
    def sets(self, /) -> list[str]:
        """
        Names of the sets.
        """
