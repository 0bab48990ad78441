"""
Records: TOML that a parts person can maintain, every fault of it named at its line.
"""

from .converter import Characteristic, EngineCurve
from .fluid import Fill, Fluid
from .hydraulic import CoolerLimits, Pump
from .identify import Identification, Look
from .interchange import Joints
from .judge import Reading, Rule
from .road import Combination, Driveline
from .stack import HotPlay, PieceList, PistonStroke
from .tire import Rolling, Tire
from .tow import Coupled, TowRatings
from .train import Train
from os import PathLike
from typing import Any, final

__all__ = ["Family", "Fleet", "Fluids", "Instruments", "Jobs", "Problem", "check", "check_text", "load", "schema"]

@final
class Family:
    """
    A family of units that share a layout.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def as_dict(self, /) -> dict:
        """
        Everything in the record, by the keys of the TOML; what is left out is None.
        """
    @property
    def dynamic_friction(self, /) -> Reading:
        """
        Dynamic friction of lining against steel: an element that slips.
        """
    @property
    def elements_with_rings(self, /) -> list[str]:
        """
        The elements whose rings or plates the record lists.
        """
    def flash_image(self, /, variant: str, *, driveline: Driveline | None = None, fluid: Fluid | None = None, fill: Fill | None = None, instruments: Instruments | None = None) -> bytes:
        """
        The flash image of a unit for firmware and scan tools, with what it is installed with from other records.

        With the instruments, the sizes of the evidence carry their uncertainty.
        """
    @staticmethod
    def from_toml(text: str, file: str = "") -> Family:
        """
        The record in this text, or every fault of it in one error. `file` is the name that the faults show.
        """
    def hot_play(self, /) -> HotPlay | None:
        """
        What warming up does to the end play; None where the record does not say.
        """
    def identify(self, /, *, rule: Rule, seen: dict | None = None, measured_mm: dict | None = None, instruments: Instruments | None = None, prior: dict[str, float] | None = None) -> Identification:
        """
        What a unit is, from what was found on it. What nobody looked at is left out: it is not absent.

        `seen`: marks by their names in the record, True where they are there, False where somebody looked and they are not.
        `measured_mm`: sizes by their names, as the instrument shows them, or as a `Reading` with an uncertainty of its own.
        `instruments`: the shop's record of them. `prior`: chance of each variant, in place of the record's. `rule`: the
        chances from which a variant or a foreign part counts as proven. Source: Gelman and others, Bayesian Data Analysis,
        1.3, Bayes' rule.
        """
    def joints(self, /) -> Joints:
        """
        How the parts of the family meet: its fits, covers, matches and machining, as `trainwright.interchange` takes them.
        """
    def looks(self, /, *, instruments: Instruments | None = None, prior: dict[str, float] | None = None) -> list[Look]:
        """
        What can be looked at on a unit of this family; with the instruments, how well its sizes can be measured.
        """
    def packs(self, /, variant: str) -> dict:
        """
        The pack of each clutch and brake in a variant: new linings, no seal drag.
        """
    def pump(self, /, fluid: Fluid) -> Pump:
        """
        The pump. Its leak is taken to have been measured in this fluid.
        """
    def rings(self, /, element: str) -> PieceList:
        """
        The rings or plates of an element, and the clearance that they are chosen for.
        """
    def shims(self, /) -> PieceList:
        """
        The shims of the record, and the end play that they are chosen for.
        """
    @property
    def static_friction(self, /) -> Reading:
        """
        Static friction of lining against steel: a closed element that holds.
        """
    def stroke(self, /, element: str, *, clearance_mm: Reading, bend_mm: Reading | None = None) -> PistonStroke:
        """
        The stroke of an element's piston at a clearance. `bend_mm` is what plates, ring and drum give way under pressure; the
        record's unless given.
        """
    def to_toml(self, /) -> str:
        """
        The record as TOML, without the comments of the text.
        """
    def train(self, /, variant: str) -> Train:
        """
        The gear train of a variant.
        """
    @property
    def variants(self, /) -> list[str]:
        """
        Variants in the order in which they were built.
        """

@final
class Fleet:
    """
    Tires, engines, converters, road model and trucks.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def as_dict(self, /) -> dict:
        """
        Everything in the record, by the keys of the TOML; what is left out is None.
        """
    def characteristic(self, /, name: str) -> Characteristic:
        """
        Characteristic of a torque converter, by its name in the record.
        """
    def combination(self, /, truck: str, *, trailer_kg: float | None = None) -> Combination:
        """
        Truck and trailer as the road feels them: mass, rolling coefficient (the mean by mass), drag area. `trailer_kg` goes
        before the record's; it must be given where the record has a range only.
        """
    def coupled(self, /, truck: str, *, trailer_kg: float) -> Coupled:
        """
        A truck with a trailer of this mass on its hitch, from the scale weights and levers of the record.
        """
    def engine_curve(self, /, name: str) -> EngineCurve:
        """
        Torque against speed of an engine, by its name in the record.
        """
    def fitted(self, /, truck: str) -> Driveline:
        """
        Axle and tire that are fitted to a truck.
        """
    @staticmethod
    def from_toml(text: str, file: str = "") -> Fleet:
        """
        The record in this text, or every fault of it in one error. `file` is the name that the faults show.
        """
    def programmed(self, /, truck: str) -> Driveline:
        """
        Axle and tire that the unit of a truck is programmed for.
        """
    def rolling(self, /, tire: str) -> Rolling:
        """
        Rolling circumference of a tire, by the record's share of its free circumference.
        """
    def tire(self, /, name: str) -> Tire:
        """
        A tire by its name in the record.
        """
    def to_toml(self, /) -> str:
        """
        The record as TOML, without the comments of the text.
        """
    def tow_ratings(self, /, truck: str) -> TowRatings:
        """
        Ratings of a truck, its hitch and its trailer; infinite where the record has none.
        """
    @property
    def trucks(self, /) -> list[str]:
        """
        Names of the trucks.
        """

@final
class Fluids:
    """
    Fluids with the fill and cooler of a family.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def as_dict(self, /) -> dict:
        """
        Everything in the record, by the keys of the TOML; what is left out is None.
        """
    def cooler_limits(self, /) -> CoolerLimits:
        """
        Least return flow of the cooler by fluid temperature.
        """
    def fill(self, /) -> Fill:
        """
        Volumes and levels of the unit, and its sump.
        """
    def fluid(self, /, name: str) -> Fluid:
        """
        A fluid by its name in the record.
        """
    @staticmethod
    def from_toml(text: str, file: str = "") -> Fluids:
        """
        The record in this text, or every fault of it in one error. `file` is the name that the faults show.
        """
    def to_toml(self, /) -> str:
        """
        The record as TOML, without the comments of the text.
        """

@final
class Instruments:
    """
    Shop instruments: range, resolution and standard uncertainty.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def as_dict(self, /) -> dict:
        """
        Everything in the record, by the keys of the TOML; what is left out is None.
        """
    @staticmethod
    def from_toml(text: str, file: str = "") -> Instruments:
        """
        The record in this text, or every fault of it in one error. `file` is the name that the faults show.
        """
    def reading(self, /, instrument: str, value: float) -> Reading:
        """
        One reading of an instrument with its standard uncertainty, in the unit that it shows.
        """
    def to_toml(self, /) -> str:
        """
        The record as TOML, without the comments of the text.
        """

@final
class Jobs:
    """
    Jobs of a demonstration.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def as_dict(self, /) -> dict:
        """
        Everything in the record, by the keys of the TOML; what is left out is None.
        """
    @staticmethod
    def from_toml(text: str, file: str = "") -> Jobs:
        """
        The record in this text, or every fault of it in one error. `file` is the name that the faults show.
        """
    def to_toml(self, /) -> str:
        """
        The record as TOML, without the comments of the text.
        """

@final
class Problem:
    """
    One fault of a record, or a note about it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def column(self, /) -> int:
        """
        Column in characters, counted from 1.
        """
    @property
    def file(self, /) -> str:
        """
        File, as it was named.
        """
    @property
    def is_error(self, /) -> bool:
        """
        Whether the record cannot be used; else it is a note.
        """
    @property
    def key(self, /) -> str:
        """
        Full path of the key, `train.set[2].teeth.ring`; places in a list count from 0.
        """
    @property
    def line(self, /) -> int:
        """
        Line, counted from 1.
        """
    @property
    def mend(self, /) -> str:
        """
        What would mend it; may be empty.
        """
    @property
    def message(self, /) -> str:
        """
        What is wrong, with the range or the names that are accepted.
        """
    @property
    def value(self, /) -> str:
        """
        Value as it stands in the file, shortened; empty where a key is missing.
        """

def check(*paths) -> list[Problem]:
    """
    Every fault and every note of these files. Names may be given in one file and used in another; names whose file is not
    among them are taken on trust.

    >>> check()
    []
    """

def check_text(text: str, file: str = "") -> list[Problem]:
    """
    As `check`, for one text.

    >>> [problem.mend for problem in check_text("[train]\\ninput = 's'\\noutput = 'c'\\nsett = []")]
    ['did you mean set?']
    """

def load(path: str | PathLike[str]) -> Any:
    """
    The record in a file: a `Family`, `Fluids`, `Instruments`, `Fleet`, `Jobs`, or the `Train` of a train file.
    """

def schema(kind: str) -> str:
    """
    JSON Schema (draft 2020-12) of a kind of record: `"train"`, `"family"`, `"fluids"`, `"instruments"`, `"fleet"`, `"jobs"`.
    """
