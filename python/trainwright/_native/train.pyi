"""
Gear trains: exact ratios, member speeds, torque shares and states.
"""

from . import Explanation
from .judge import Reading
from collections.abc import Sequence
from typing import Any, Final, final

__all__ = ["Assembly", "Gear", "Losses", "NextGear", "PowerFlow", "RatioFit", "Signature", "State", "Suspect", "Symptom", "Train", "counted_ratio", "fit_ratio", "timed_ratio"]

@final
class Assembly:
    """
    The conditions of assembly of one set. Printed, it names each condition and the mend.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def coaxial(self, /) -> str:
        """
        Sun, planets and ring share an axis.
        """
    @property
    def coaxial_excess(self, /) -> int:
        """
        Teeth by which sun and ring miss a common axis.
        """
    @property
    def equal_planets(self, /) -> list[int]:
        """
        Numbers of planets, up to 12, that mesh equally spaced.
        """
    @property
    def equal_spacing(self, /) -> str:
        """
        The planets mesh equally spaced.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def finding(self, /) -> str:
        """
        All conditions together: `"holds"`, `"fails"` or `"not known"`.
        """
    @property
    def neighbor_gap_modules(self, /) -> float:
        """
        Least gap between the tips of neighboring planets, in modules.
        """
    @property
    def neighbors(self, /) -> str:
        """
        Neighboring planets are clear of each other.
        """
    @property
    def places(self, /) -> int:
        """
        Places around the carrier in which a planet meshes; 0 if it meshes anywhere.
        """
    @property
    def places_left(self, /) -> int:
        """
        Places left over when they are shared equally among the planets.
        """
    @property
    def planet_angles_deg(self, /) -> list[float]:
        """
        Nearest places of the planets to equal spacing.
        """

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

@final
class Losses:
    """
    A gear with its mesh losses.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    @property
    def converged(self, /) -> bool:
        """
        Whether they came to agree. If not, no direction of power balances: the gear jams.
        """
    @property
    def efficiency(self, /) -> float:
        """
        Power that leaves at the driven side over the power that enters; 0 where the gear locks itself or jams.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def rolling_power(self, /) -> dict:
        """
        Power through the meshes of each set per unit of driving power.
        """
    @property
    def rounds(self, /) -> int:
        """
        Rounds until the directions of power agreed with the losses they cause.
        """
    @property
    def self_locking(self, /) -> bool:
        """
        Whether the losses exceed the driving power: this side cannot drive the gear.
        """
    @property
    def set_loss(self, /) -> dict:
        """
        Power lost in each set per unit of driving power.
        """
    @property
    def torque_ratio(self, /) -> float:
        """
        Torque of the output over torque of the input, with losses.
        """

@final
class NextGear:
    """
    The gear to try next, and what each suspect would show there.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def gear(self, /) -> str:
        """
        Name of the gear.
        """
    @property
    def information_bit(self, /) -> float:
        """
        What its outcome tells, bit: 1 halves the suspects.
        """
    @property
    def load(self, /) -> str:
        """
        Whether to look under `"drive"` or in `"coast"`.
        """
    @property
    def outcomes(self, /) -> int:
        """
        Different outcomes among the suspects, 2 or more.
        """
    @property
    def shown(self, /) -> list[Symptom]:
        """
        What each suspect shows there, in the order in which they were given.
        """
    @property
    def tie_ups(self, /) -> int:
        """
        Suspects with which the gear would tie up: try it standing, on the lift, or not at all.
        """

@final
class PowerFlow:
    """
    Power in a gear without losses, per unit of input power.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def largest(self, /) -> float:
        """
        Greatest power of a gear wheel or carrier. Above 1, power circulates.
        """
    @property
    def member_power(self, /) -> dict:
        """
        Power that each set gives to its members; negative where it takes.
        """
    @property
    def rolling_power(self, /) -> dict:
        """
        Power through the meshes of each set, seen from its carrier.
        """

@final
class RatioFit:
    """
    How a measured ratio lies to the ratio of a candidate.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    @property
    def candidate(self, /) -> Any | None:
        """
        Ratio of the candidate, a `fractions.Fraction`.
        """
    @property
    def chance(self, /) -> float:
        """
        Chance that a reading of this candidate lies as far off as this, either way.
        """
    @property
    def excluded(self, /) -> bool:
        """
        Whether the stated probability rules the candidate out.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def measured(self, /) -> Reading:
        """
        Measured ratio.
        """
    @property
    def z(self, /) -> float:
        """
        Measured less candidate, in standard uncertainties.
        """

@final
class Signature:
    """
    What a fault does to the gears of the record, by their names.
    """
    def __repr__(self, /) -> str: ...
    @property
    def brakes(self, /) -> list[str]:
        """
        Gears that brake where they should coast.
        """
    @property
    def creeps(self, /) -> list[str]:
        """
        Neutral that creeps.
        """
    @property
    def element(self, /) -> str:
        """
        The failed element.
        """
    @property
    def failure(self, /) -> str:
        """
        `"dead"` or `"stuck"`.
        """
    @property
    def lost(self, /) -> list[str]:
        """
        Gears that are lost, in drive or in braking.
        """
    @property
    def no_braking(self, /) -> list[str]:
        """
        Gears that drive but no longer brake.
        """
    @property
    def no_drive(self, /) -> list[str]:
        """
        Gears without drive.
        """
    @property
    def other_ratio(self, /) -> list[str]:
        """
        Gears that show another ratio.
        """
    @property
    def tied_up(self, /) -> list[str]:
        """
        Gears that tie up.
        """

class State:
    """
    One engagement solved: kind of state, and everything per unit of input speed and of input torque, without losses.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
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
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def kind(self, /) -> str:
        """
        `"gear"`, `"neutral"`, `"input held"`, `"output held"` or `"tied up"`.
        """
    def losses(self, /, *, external: float, internal: float, load: str = ...) -> Losses:
        """
        Efficiency of the gear with these efficiencies of an external and an internal mesh, in drive or coast.

        Source: rolling-power method (from memory of H. W. Müller, Epicyclic Drive Trains, 1982).
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
        Source: follows from the definitions (rolling at the pitch circles).
        """
    def power_flow(self, /) -> PowerFlow:
        """
        Power that each member carries and that rolls through each set, without losses.
        Source: H. W. Müller (1982), rolling power and coupling power.
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
    def slip_per_input_slip(self, /) -> dict:
        """
        Slip of each closed element of a gear while it lets go and all others hold, per unit of slip at the input, which is the
        input speed above ratio times output speed; `None` where the two speeds do not show its slip.

        Source: power balance of the gear without losses, derived.
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
class Suspect:
    """
    One element that may explain what was seen.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    @property
    def agreed(self, /) -> int:
        """
        Gears seen to be right that this one leaves right.
        """
    @property
    def contradicted(self, /) -> int:
        """
        Gears in which this one would show something else than was seen.
        """
    @property
    def element(self, /) -> str:
        """
        The element.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def failure(self, /) -> str:
        """
        `"dead"` or `"stuck"`.
        """
    @property
    def matched(self, /) -> int:
        """
        Faults seen that this one shows.
        """
    @property
    def missed(self, /) -> int:
        """
        Faults seen in gears that this one leaves alone.
        """
    @property
    def rank(self, /) -> int:
        """
        1 for the first; suspects that explain the observations equally well share a rank.
        """

@final
class Symptom:
    """
    What a commanded gear does with a failed element.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __repr__(self, /) -> str: ...
    @property
    def coast(self, /) -> str:
        """
        When the vehicle drives the input; `"drives"` is engine braking where the gear should coast.
        """
    @property
    def drive(self, /) -> str:
        """
        Under drive: `"as commanded"`, `"other ratio"`, `"no drive"`, `"drives"` (a neutral that creeps) or `"tied up"`.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def kind(self, /) -> str:
        """
        State under drive.
        """
    @property
    def ratio(self, /) -> float | None:
        """
        Ratio shown under drive; `None` where the state is not a gear.
        """
    @property
    def ratio_exact(self, /) -> Any | None:
        """
        The ratio as a `fractions.Fraction`.
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
    def assembly(self, /) -> dict:
        """
        Whether each set can be put together, by the names of the sets.

        Source: Elements of Metric Gear Technology, 13.3.1, for the simple set; the others derived.
        """
    def diagnose(self, /, observations: Sequence[tuple[str, str, str, Reading] | tuple[str, str, str] | tuple[str, str]]) -> list[Suspect]:
        """
        Ranks every element, dead and stuck, by how well it explains what was seen.

        Each observation is a tuple: the gear, what it did, and optionally the load (`"drive"`) and the measured ratio as a
        `Reading`. Report gears that are right, too: `("1", "as commanded")` speaks against suspects.
        Source: follows from the definitions (comparison of the seen with the computed).
        """
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
    def gears_that_tell_faults(self, /, one: tuple[str, str], other: tuple[str, str]) -> list[str]:
        """
        The gears of the record in which two faults, each `(element, "dead" or "stuck")`, show different things.
        """
    def gears_that_tell_trains(self, /, other: Train) -> list[str]:
        """
        The gears of the record in which another train with the same elements gives a different ratio, compared exactly.
        """
    @property
    def members(self, /) -> list[str]:
        """
        Names of the members; speeds come in this order.
        """
    def next_gear(self, /, suspects: Sequence[tuple[str, str]], tried: Sequence[tuple[str, str] | str] = ...) -> NextGear:
        """
        The gear of the record whose outcome tells most about suspects that explain the observations equally well.

        `suspects` are 2 or more faults, each `(element, "dead" or "stuck")`; `tried` are gears that were seen under drive, or
        `(gear, "coast")`. Gears that no suspect ties up come first, drive before coast. Raises `NO_ANSWER` where no gear tells.
        Source: T. M. Cover and J. A. Thomas, Elements of Information Theory (from memory; entropy of a partition).
        """
    @property
    def note(self, /) -> str | None:
        """
        What a reader should know: fitted tooth counts, misprints, doubts.
        """
    def resolve(self, /, closed: Sequence[str], *, load: str = ...) -> State:
        """
        As `solve`, with the one-way clutches held or overrunning as the load (`"none"`, `"drive"`, `"coast"`) makes them.
        Source: follows from the definitions (unilateral constraint).
        """
    def seen_ratio(self, /, gear: str, ratio: Reading) -> tuple[str, str, str, Reading]:
        """
        What a ratio that was measured in a gear, under drive and without slip, says about it: an observation for
        `diagnose`.

        A ratio within three standard uncertainties of the gear's own is `"as commanded"`, any other `"other ratio"`.
        Source: follows from the definitions (comparison of the seen with the computed).
        """
    @property
    def sets(self, /) -> list[str]:
        """
        Names of the planetary sets.
        """
    def signature(self, /, element: str, failure: str) -> Signature:
        """
        What a dead or stuck element does to every gear of the record.
        """
    def solve(self, /, closed: Sequence[str]) -> State:
        """
        The state in which exactly these elements are closed, one-way clutches like any other.
        Source: H. W. Müller (1982), basic speed equation and torque ratios of a planetary set.
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
    def symptom(self, /, gear: str | Sequence[str], element: str, failure: str) -> Symptom:
        """
        What a gear of the record, or a list of closed elements such as neutral's, does with a dead or stuck element.
        Source: follows from the definitions (definitions of the two faults).
        """
    @property
    def title(self, /) -> str | None:
        """
        What the train is, in a line, where the record says it.
        """

def counted_ratio(*, input_pulses: int, output_pulses: int, input_teeth: int, output_teeth: int) -> Reading:
    """
    Ratio and its standard uncertainty from pulses counted over one window.
    Source: follows from the definitions (difference of two rectangular phases of one pulse each).

    >>> counted_ratio(input_pulses=13360, output_pulses=5710, input_teeth=40, output_teeth=30).value
    1.7548161120840629
    """

def fit_ratio(measured: Reading, candidate: Any | None, *, coverage: float) -> RatioFit:
    """
    Whether a measured ratio fits the exact ratio of a candidate, a `fractions.Fraction` such as a gear's `ratio_exact`.

    `coverage` is the probability that the true candidate is kept.
    Source: JCGM 100:2008, normal distribution of the measured ratio, G.1.

    >>> from fractions import Fraction
    >>> fit_ratio(Reading(value=1.7548161, u=0.00013644), Fraction(65, 37), coverage=0.99)
    <-14.2 u off, excluded>
    """

def timed_ratio(*, input_intervals: int, input_s: float, input_teeth: int, output_intervals: int, output_s: float, output_teeth: int, tick_us: float) -> Reading:
    """
    Ratio and its standard uncertainty from the times of pulse edges.
    Source: follows from the definitions (difference of two rectangular phases of one tick each).

    >>> ratio = timed_ratio(input_intervals=66, input_s=0.0494, input_teeth=40,
    ...                     output_intervals=28, output_s=0.0490, output_teeth=30, tick_us=0.5)
    >>> ratio.u / ratio.value < 1e-5
    True
    """
