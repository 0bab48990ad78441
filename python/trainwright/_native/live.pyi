"""
Watching units while they turn: gear in effect, slip, shifts, alarms. What turns can catch; what was driven is hot.
"""

from . import Explanation
from .duty import BusSignal
from .train import Train
from collections.abc import Sequence
from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any, Final, final

__all__ = ["COLUMNS", "EVENT_KINDS", "OUTPUTS", "PHASES", "Counts", "Element", "Event", "Gear", "GearEvidence", "Limits", "Monitor", "RankedSuspect", "Ratio", "Shift", "ShiftsToLimit", "SpeedPair", "SpeedSensor", "SpeedSpread", "State", "Suspect", "Suspects", "Unit", "Watch", "run_length", "step_bias_rpm", "threshold_for"]

COLUMNS: Final[list[str]]
EVENT_KINDS: Final[list[str]]
OUTPUTS: Final[list[str]]
PHASES: Final[list[str]]

@final
class Counts:
    """
    What was counted since the start.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, samples: int, used: int, standing: int, stale: int, missing: int, not_available: int, sensor_error: int, reserved: int, impossible: int, reversed: int, duplicate: int, gaps: int, shifts_cold: int, shifts_warm: int, alarms: int) -> Counts: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def alarms(self, /) -> int:
        """
        Slip alarms.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def duplicate(self, /) -> int:
        """
        Samples with the time of the sample before.
        """
    @property
    def gaps(self, /) -> int:
        """
        Pauses of more than ten sample periods.
        """
    @property
    def impossible(self, /) -> int:
        """
        Values that cannot be.
        """
    @property
    def missing(self, /) -> int:
        """
        Speeds that did not come.
        """
    @property
    def not_available(self, /) -> int:
        """
        Speeds that the sender does not have.
        """
    @property
    def reserved(self, /) -> int:
        """
        Codes that stand for no value.
        """
    @property
    def reversed(self, /) -> int:
        """
        Samples whose time lies before that of the sample before.
        """
    @property
    def samples(self, /) -> int:
        """
        Samples.
        """
    @property
    def sensor_error(self, /) -> int:
        """
        Speeds of a sensor that has failed.
        """
    @property
    def shifts_cold(self, /) -> int:
        """
        Shifts with cold fluid.
        """
    @property
    def shifts_warm(self, /) -> int:
        """
        Shifts with warm fluid, or of unknown temperature.
        """
    @property
    def stale(self, /) -> int:
        """
        Speeds unchanged for longer than their age limit.
        """
    @property
    def standing(self, /) -> int:
        """
        Samples with the output standing.
        """
    @property
    def used(self, /) -> int:
        """
        Samples whose speeds were used.
        """

@final
class Element:
    """
    An element, and what its plates take up and give away. Without a heat capacity no temperature is formed.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, name: str, heat_capacity_j_k: float | None = ..., cooling_s: float | None = ..., limit_c: float | None = ...) -> Element: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def cooling_s(self, /) -> float | None:
        """
        Time in which the plates' excess over the fluid falls to 1/e, s.
        """
    @property
    def heat_capacity_j_k(self, /) -> float | None:
        """
        Heat capacity of its steel plates, J/K.
        """
    @property
    def is_known(self, /) -> bool:
        """
        Whether a temperature can be formed.
        """
    @property
    def limit_c(self, /) -> float | None:
        """
        Temperature of the plates above which they are overheated, °C.
        """
    @property
    def name(self, /) -> str:
        """
        Name.
        """
    @staticmethod
    def of_plates(name: str, *, steel_mass_kg: float, specific_heat_j_kg_k: float, cooling_s: float, limit_c: float) -> Element:
        """
        An element from its pack: mass of all steel plates, kg, and specific heat of their steel, J/(kg·K).
        Source: definition of the specific heat.

        >>> Element.of_plates("C1", steel_mass_kg=2.4, specific_heat_j_kg_k=500.0, cooling_s=60.0, limit_c=200.0).heat_capacity_j_k
        1200.0
        """
    def plate_after_c(self, /, *, plate_c: ArrayLike, fluid_c: ArrayLike, energy_j: ArrayLike, span_s: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Mean temperature of the steel plates, °C, after a step of time in which this energy entered, J; NaN where the heat
        capacity is not known. The face of a plate is hotter for tenths of a second.
        Source: Incropera and others, lumped capacitance (from memory), its exponential by a quotient (derived).

        >>> pack = Element.of_plates("C1", steel_mass_kg=2.4, specific_heat_j_kg_k=500.0, cooling_s=60.0, limit_c=200.0)
        >>> round(pack.plate_after_c(plate_c=80.0, fluid_c=80.0, energy_j=20000.0, span_s=0.0), 2)
        96.67
        """
    def shifts_to_limit(self, /, *, plate_c: float, fluid_c: float, energy_j: float, pace_s: float) -> ShiftsToLimit:
        """
        Shifts of the same energy, J, at an even pace, s from shift to shift, until the plates reach their limit. `plate_c` is
        their temperature now, just after a shift. A computed limit is no rating.
        Source: lumped capacitance, geometric series of equal pulses (derived).

        >>> pack = Element.of_plates("C1", steel_mass_kg=2.4, specific_heat_j_kg_k=500.0, cooling_s=60.0, limit_c=200.0)
        >>> pack.shifts_to_limit(plate_c=80.0, fluid_c=80.0, energy_j=48000.0, pace_s=10.0).shifts
        4
        """

@final
class Event:
    """
    One event.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, kind: str, gear: str, other_gear: str, speed: str, suspects: Sequence[str], at_us: int, found_us: int, value: float, u: float) -> Event: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def at_s(self, /) -> float:
        """
        When it happened, s.
        """
    @property
    def at_us(self, /) -> int:
        """
        When it happened, µs.
        """
    @property
    def found_s(self, /) -> float:
        """
        When it was known, s.
        """
    @property
    def found_us(self, /) -> int:
        """
        When it was known, µs.
        """
    @property
    def gear(self, /) -> str:
        """
        Name of the gear; "none", "standing", "unknown".
        """
    @property
    def kind(self, /) -> str:
        """
        What happened, of `EVENT_KINDS`.
        """
    @property
    def other_gear(self, /) -> str:
        """
        Name of the other gear, as the kind says; likewise.
        """
    @property
    def speed(self, /) -> str:
        """
        The sensor that it is about: "input", "output", "engine" or "".
        """
    @property
    def suspects(self, /) -> list[str]:
        """
        Names of the elements that could explain it.
        """
    @property
    def u(self, /) -> float:
        """
        Its standard uncertainty; NaN where it has none.
        """
    @property
    def value(self, /) -> float:
        """
        What the kind says.
        """

@final
class Gear:
    """
    A gear: its ratio, and the elements that hold it.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, name: str, number: int, ratio: float, suspects: Sequence[Suspect] = ...) -> Gear: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def name(self, /) -> str:
        """
        Name.
        """
    @property
    def number(self, /) -> int:
        """
        Number by which it is commanded: forward from 1, reverse from -1.
        """
    @property
    def ratio(self, /) -> float:
        """
        Input over output speed, negative for reverse.
        """
    @property
    def suspects(self, /) -> list[Suspect]:
        """
        The closed elements; a gear that slips does so in one of them.
        """

@final
class GearEvidence:
    """
    What was seen in one gear: logarithms of likelihood ratios, above 0 for slip and below for none.
    """
    HOLDS: Final[GearEvidence]
    """
    Surely not slipping.
    """
    SLIPS: Final[GearEvidence]
    """
    Surely slipping, as elements do.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, forward: float = ..., backward: float = ...) -> GearEvidence: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def add_slip(self, /, *, slip: float, wanted: float) -> GearEvidence:
        """
        With one more value of slip under drive: n_in less i·n_out over its standard deviation, and the smallest slip that is
        wanted over the same. What is not a number adds nothing.
        Source: probability ratio of two normal means (Wald's test, from memory of Siegmund, Sequential Analysis).

        >>> GearEvidence().add_slip(slip=1.5, wanted=1.0)
        GearEvidence(forward=1.0, backward=-1.0)
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def backward(self, /) -> float:
        """
        The input falls behind: no element does that under drive.
        """
    @property
    def forward(self, /) -> float:
        """
        Slip as an element does it: the input runs ahead.
        """

@final
class Limits:
    """
    What counts as standing, as slip, as flare. Nothing is a default; `common_practice` takes usual values by name.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, standing_rpm: float, slip_rpm: float, run_length_s: float, skew_s: float, ratio_u_rel: float, settle_s: float, follow_s: float, flare_rpm: float, dip_share: float, lockup_slip_rpm: float, cold_c: float, hot_c: float, warm_up_s: float) -> Limits: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def cold_c(self, /) -> float:
        """
        Fluid temperature below which a shift is cold, °C.
        """
    @staticmethod
    def common_practice(*, slip_rpm: float, skew_s: float, ratio_u_rel: float) -> Limits:
        """
        Usual values, taken by name from `practice`: common practice, no source. What depends on the sensors and on what is
        looked for is given: the smallest slip to be found, the difference in age of the speeds, how well a ratio is to be
        known.

        >>> limits = Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4)
        >>> limits.flare_rpm, limits.run_length_s
        (50.0, 360000.0)
        """
    @property
    def dip_share(self, /) -> float:
        """
        Dip of the output during a shift above which an event is raised, over the output speed.
        """
    @property
    def flare_rpm(self, /) -> float:
        """
        Flare above which an event is raised, 1/min.
        """
    @property
    def follow_s(self, /) -> float:
        """
        Time after a command by which the gear must be reached, s.
        """
    @property
    def hot_c(self, /) -> float:
        """
        Fluid temperature above which an event is raised, °C.
        """
    @property
    def lockup_slip_rpm(self, /) -> float:
        """
        Slip of the lock-up clutch below which it is locked, 1/min.
        """
    @property
    def ratio_u_rel(self, /) -> float:
        """
        A window of the ratio closes at this relative standard uncertainty.
        """
    @property
    def run_length_s(self, /) -> float:
        """
        Average time in gear to one false slip alarm, s: the setting of the sequential test.
        """
    @property
    def settle_s(self, /) -> float:
        """
        Time after a shift before slip is judged, s.
        """
    @property
    def skew_s(self, /) -> float:
        """
        Greatest difference in age of the two speeds, s: acceleration times this is no evidence.
        """
    @property
    def slip_rpm(self, /) -> float:
        """
        Smallest slip at the input that is to be found, 1/min.
        """
    @property
    def standing_rpm(self, /) -> float:
        """
        Output speed below which the unit stands and no ratio is formed, 1/min.
        """
    @property
    def warm_up_s(self, /) -> float:
        """
        Driving time with the same temperature below `cold_c` after which its sensor counts as stuck, s.
        """

@final
class Monitor:
    """
    Watches one unit, sample by sample: which gear is in effect, what slips, how each shift went.

    Source: E. S. Page (1954) and D. Siegmund (1985) for the alarm (from memory), definitions for the rest; each rule has a card,
    `live.judge_slip`, `live.last_shift`, `live.dip_rpm`, `live.energy_j`, `live.lockup_settled`, `live.wrong_teeth`, `live.swapped`,
    `live.temp_stuck`.

    >>> sensor = SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.5, age_limit_s=0.05, greatest_rpm=8000.0)
    >>> limits = Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4)
    >>> unit = Unit(gears=[Gear(name="1", number=1, ratio=4.0), Gear(name="2", number=2, ratio=2.5)],
    ...             input=sensor, output=sensor, limits=limits, sample_s=0.01)
    >>> monitor = Monitor(unit)
    >>> for place in range(100):
    ...     for event in monitor.push(time_s=place / 100, input_rpm=1500.0 + place, output_rpm=(1500.0 + place) / 2.5):
    ...         print(event.kind, event.gear)
    gear reached 2
    >>> monitor.state.gear, monitor.state.phase
    ('2', 'in gear')
    """
    def __new__(cls, /, unit: Unit) -> Monitor: ...
    def __repr__(self, /) -> str: ...
    @property
    def counts(self, /) -> Counts:
        """
        What was counted.
        """
    @property
    def events(self, /) -> list[Event]:
        """
        All events so far.
        """
    def gear_chances(self, /) -> dict:
        """
        Probability of each gear by its name; "none" is none of them.
        Source: Bayes' rule over the gears and none of them, with a cost of changing; the card names what is assumed.
        """
    @property
    def no_time(self, /) -> int:
        """
        Rows of the data without a time; they are no samples.
        """
    def push(self, /, *, time_s: float | None = None, time_us: float | None = None, input_rpm: float | None = None, input_pulses: float | None = None, input_ticks: float | None = None, output_rpm: float | None = None, output_pulses: float | None = None, output_ticks: float | None = None, engine_rpm: float | None = None, engine_pulses: float | None = None, engine_ticks: float | None = None, pressure_kpa: float | None = None, temp_c: float | None = None, engine_torque_nm: float | None = None, gear: Any | None = None, lockup: float | None = None) -> list[Event]:
        """
        Takes a sample and gives the events that it brought. The time is `time_s` or `time_us`; the speeds come as the
        sensors of the unit say: `_rpm` from a bus, `_pulses` since the sample before, with `_ticks` for edges. What is left
        out or NaN did not come. `gear` is the number of the commanded gear (forward from 1, reverse from -1, 0 neutral or
        park) or its name, `lockup` whether lock-up is commanded.
        """
    def ratio(self, /, gear: str) -> Ratio:
        """
        The ratio of a gear as it was measured.
        Source: JCGM 100:2008, 5.1.2 (from memory), for a ratio of means over windows.
        """
    @property
    def shifts(self, /) -> list[Shift]:
        """
        All shifts so far.
        """
    @property
    def state(self, /) -> State:
        """
        The state after the last sample.
        """
    def suspects(self, /) -> Suspects:
        """
        The elements that may slip, most likely first.
        """
    @property
    def unit(self, /) -> Unit:
        """
        The unit.
        """

@final
class RankedSuspect:
    """
    One element with the evidence against it.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, element: str, ln_odds: float) -> RankedSuspect: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def element(self, /) -> str:
        """
        Name.
        """
    @property
    def ln_odds(self, /) -> float:
        """
        ln of the odds that it is this one against all others together.
        """

@final
class Ratio:
    """
    The ratio of a gear as it was measured, from all windows of it.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, ratio: float, u: float, windows: int, slipping: int, slip_share: float) -> Ratio: ...
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
    def ratio(self, /) -> float:
        """
        Mean ratio, a magnitude; NaN before the first window.
        """
    @property
    def slip_share(self, /) -> float:
        """
        Mean slip in those, over the input speed.
        """
    @property
    def slipping(self, /) -> int:
        """
        Windows with slip.
        """
    @property
    def u(self, /) -> float:
        """
        Its standard uncertainty.
        """
    @property
    def windows(self, /) -> int:
        """
        Windows without slip, which made this mean.
        """

@final
class Shift:
    """
    A shift. What is not known is NaN.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, from_gear: str, to_gear: str, element: str | None, cold: bool, commanded_us: int, half_us: int, fill_s: float, torque_s: float, inertia_s: float, duration_s: float, flare_rpm: float, flare_u_rpm: float, dip_rpm: float, dip_u_rpm: float, slip_rad: float, energy_j: float, plate_c: float, rise_k: float, shifts_to_overheat: float, temp_c: float) -> Shift: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def cold(self, /) -> bool:
        """
        Whether the fluid was colder than `cold_c`.
        """
    @property
    def commanded_s(self, /) -> float:
        """
        When it was commanded, or first showed, s.
        """
    @property
    def commanded_us(self, /) -> int:
        """
        When it was commanded, µs; without a command, when it first showed.
        """
    @property
    def dip_rpm(self, /) -> float:
        """
        Greatest dip of the output below its trend, 1/min.
        """
    @property
    def dip_u_rpm(self, /) -> float:
        """
        Its standard uncertainty.
        """
    @property
    def duration_s(self, /) -> float:
        """
        Command, or else first sign, to the end, s.
        """
    @property
    def element(self, /) -> str | None:
        """
        The element that closed, if one alone did.
        """
    @property
    def energy_j(self, /) -> float:
        """
        Heat of the slip, J.
        """
    def explain(self, /, *, card: str | None = None, unit: str | None = None, inputs: Sequence[str] | None = None, **more) -> Explanation:
        """
        The worked explanation of this result. `card` names the formula where several are possible, `unit` and
        `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
        result does not keep.
        """
    @property
    def fill_s(self, /) -> float:
        """
        Command to the first sign in the speeds, s.
        """
    @property
    def flare_rpm(self, /) -> float:
        """
        Greatest overrun of the input, 1/min.
        """
    @property
    def flare_u_rpm(self, /) -> float:
        """
        Its standard uncertainty.
        """
    @property
    def from_gear(self, /) -> str:
        """
        Name of the gear that it left.
        """
    @property
    def half_s(self, /) -> float:
        """
        When the ratio was half way, s; NaN where that is not known.
        """
    @property
    def half_us(self, /) -> int:
        """
        When the ratio was half way, µs; 0 where that is not known.
        """
    @property
    def inertia_s(self, /) -> float:
        """
        The input leaves the old ratio, until it reaches the new one, s.
        """
    @property
    def plate_c(self, /) -> float:
        """
        Temperature of its plates after it, °C.
        """
    @property
    def rise_k(self, /) -> float:
        """
        What this shift added, K.
        """
    @property
    def shifts_to_overheat(self, /) -> float:
        """
        How many more such shifts without a pause reach the limit.
        """
    @property
    def slip_rad(self, /) -> float:
        """
        Turn of the element against its mate while it slipped, rad.
        """
    @property
    def temp_c(self, /) -> float:
        """
        Temperature of the fluid, °C.
        """
    @property
    def to_gear(self, /) -> str:
        """
        Name of the gear that it reached.
        """
    @property
    def torque_s(self, /) -> float:
        """
        First sign to the start of the inertia phase, s.
        """

@final
class ShiftsToLimit:
    """
    How many shifts the plates stand at a pace.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, rise_k: float, settled_c: float, shifts: int) -> ShiftsToLimit: ...
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
    def rise_k(self, /) -> float:
        """
        Rise of the plates in one shift, K.
        """
    @property
    def settled_c(self, /) -> float:
        """
        Temperature after a shift that any number of them ends at, °C.
        """
    @property
    def shifts(self, /) -> int:
        """
        Further shifts, the last of which reaches the limit; 4294967295 where the pace never reaches it.
        """

@final
class SpeedPair:
    """
    Both speeds of a ratio, read at the same times.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, input: SpeedSpread, output: SpeedSpread, sample_s: float) -> SpeedPair: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def input(self, /) -> SpeedSpread:
        """
        Input speed.
        """
    @property
    def output(self, /) -> SpeedSpread:
        """
        Output speed.
        """
    def ratio_variance(self, /, *, input_rpm: float, output_rpm: float, window_s: float) -> float:
        """
        Square of the relative standard uncertainty of a ratio over a window.
        """
    def ratio_window_s(self, /, *, input_rpm: ArrayLike, ratio: ArrayLike, u_rel: ArrayLike, out: NDArray[float64] | None = None) -> Any:
        """
        Shortest window, s, whose ratio has the wanted relative standard uncertainty.
        Source: `u_rpm` of both speeds, solved for the window (derived).

        >>> input = SpeedSensor.counted(teeth=40, noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0)
        >>> output = SpeedSensor.counted(teeth=30, noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0)
        >>> pair = SpeedPair(input=input.spread(), output=output.spread(), sample_s=0.01)
        >>> pair.ratio_window_s(input_rpm=2000.0, ratio=[65 / 37, 4.2521], u_rel=0.01).round(3)
        array([0.078, 0.176])
        """
    @property
    def sample_s(self, /) -> float:
        """
        Time from value to value, s.
        """

@final
class SpeedSensor:
    """
    One speed sensor: how its speed comes and how well it is known. `bus`, `counted` and `edges` make one.

    >>> SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.9, age_limit_s=0.05, greatest_rpm=8000.0).source
    'bus'
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, source: str, teeth: int = ..., step_rpm: float = ..., noise_rpm: float, tick_s: float = ..., age_limit_s: float, greatest_rpm: float) -> SpeedSensor: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def age_limit_s(self, /) -> float:
        """
        The same value for longer than this, while the other speed moves, is stale, s.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @staticmethod
    def bus(*, step_rpm: float, noise_rpm: float, age_limit_s: float, greatest_rpm: float) -> SpeedSensor:
        """
        A value on a bus: its step and its noise, 1/min.
        """
    @staticmethod
    def counted(*, teeth: int, noise_rpm: float, age_limit_s: float, greatest_rpm: float) -> SpeedSensor:
        """
        Pulses counted between two samples.
        """
    @staticmethod
    def edges(*, teeth: int, tick_s: float, noise_rpm: float, age_limit_s: float, greatest_rpm: float) -> SpeedSensor:
        """
        Pulses whose edges a timer with this tick stamps.
        """
    @property
    def greatest_rpm(self, /) -> float:
        """
        Greatest speed that can be, 1/min.
        """
    @property
    def noise_rpm(self, /) -> float:
        """
        Standard deviation of one value besides its step, 1/min.
        """
    @property
    def source(self, /) -> str:
        """
        "bus", "counted" or "edges".
        """
    def spread(self, /) -> SpeedSpread:
        """
        The uncertainty of the sensor by its causes.
        """
    @property
    def step_rpm(self, /) -> float:
        """
        Step of the values on a bus, 1/min; 0 else.
        """
    @property
    def teeth(self, /) -> int:
        """
        Pulses per revolution; 0 for a bus.
        """
    @property
    def tick_s(self, /) -> float:
        """
        Tick of the timer that stamps the edges, s; 0 else.
        """
    def u_rpm(self, /, *, rpm: ArrayLike, window_s: ArrayLike, values: int, out: NDArray[float64] | None = None) -> Any:
        """
        Standard uncertainty of the mean speed over a window, 1/min, from the way the sensor works. `rpm` is the speed,
        `values` how many there are in the window.
        Source: Widrow and Kollár, Quantization Noise (from memory); ends of a window as in `train.counted_ratio` (derived).

        >>> sensor = SpeedSensor.counted(teeth=30, noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0)
        >>> round(sensor.u_rpm(rpm=1138.4, window_s=0.05, values=1), 2)
        16.33
        """

@final
class SpeedSpread:
    """
    The uncertainty of a sensor by its causes.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, lasting_rpm: float, value_rpm: float, turns: float, time_s: float) -> SpeedSpread: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def lasting_rpm(self, /) -> float:
        """
        What no number of values takes away, 1/min.
        """
    @property
    def time_s(self, /) -> float:
        """
        Of the time between the first and the last edge of a window, s.
        """
    @property
    def turns(self, /) -> float:
        """
        Of the turns counted in a window: both ends cut a pulse.
        """
    @property
    def value_rpm(self, /) -> float:
        """
        Of one value, 1/min; falls with the root of their number.
        """
    def variance(self, /, *, rpm: float, window_s: float, values: float) -> float:
        """
        Square of the standard uncertainty of a mean over a window, (1/min)², from `values` of them.
        """

@final
class State:
    """
    The state after a sample. What is not known is NaN.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, gear: str, phase: str, alarm: bool, used: bool, ratio: float, ratio_u: float, slip_rpm: float, slip_u_rpm: float, converter_slip_rpm: float) -> State: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    @property
    def alarm(self, /) -> bool:
        """
        Whether the slip alarm stands.
        """
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def converter_slip_rpm(self, /) -> float:
        """
        Engine less input speed, 1/min.
        """
    @property
    def gear(self, /) -> str:
        """
        Name of the gear in effect; "none", "standing", "unknown".
        """
    @property
    def phase(self, /) -> str:
        """
        Where a shift is, of `PHASES`.
        """
    @property
    def ratio(self, /) -> float:
        """
        Ratio over the window so far, a magnitude.
        """
    @property
    def ratio_u(self, /) -> float:
        """
        Its standard uncertainty.
        """
    @property
    def slip_rpm(self, /) -> float:
        """
        Slip at the input in the gear in effect, 1/min, smoothed.
        """
    @property
    def slip_u_rpm(self, /) -> float:
        """
        Its standard uncertainty.
        """
    @property
    def used(self, /) -> bool:
        """
        Whether the speeds of this sample were used.
        """

@final
class Suspect:
    """
    An element that could be the one that slips in a gear.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, element: str, slip_per_input_slip: float) -> Suspect: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def element(self, /) -> str:
        """
        Name of the element.
        """
    @property
    def slip_per_input_slip(self, /) -> float:
        """
        Slip of the element per slip at the input, signed.
        """

@final
class Suspects:
    """
    The elements that may slip, most likely first.
    """
    CARDS: Final[tuple]
    """
    Ids of the formulas whose result this can be.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, suspects: Sequence[RankedSuspect], sensors_ln_odds: float, next_gear: str | None, next_bit: float) -> Suspects: ...
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
    def next_bit(self, /) -> float:
        """
        What an observation there would tell, bit.
        """
    @property
    def next_gear(self, /) -> str | None:
        """
        Gear in which an observation separates the leading ones best; None if none does.
        """
    @property
    def sensors_ln_odds(self, /) -> float:
        """
        ln of the odds that it is none of them, but the sensors: a tooth count, or two of them exchanged.
        """
    @property
    def suspects(self, /) -> list[RankedSuspect]:
        """
        Elements by evidence; none while nothing slipped.
        """

@final
class Unit:
    """
    A unit to watch, checked. Many monitors share one.
    """
    def __eq__(self, other: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, Any]]: ...
    def __hash__(self, /) -> int: ...
    def __new__(cls, /, *, gears: Sequence[Gear], elements: Sequence[Element] = ..., input: SpeedSensor, output: SpeedSensor, engine: SpeedSensor | None = ..., limits: Limits, sample_s: float) -> Unit: ...
    def __repr__(self, /) -> str: ...
    def _repr_html_(self, /) -> str: ...
    def as_dict(self, /) -> dict[str, Any]:
        """
        The fields by name, nested classes as dictionaries too.
        """
    @property
    def element_names(self, /) -> list[str]:
        """
        Names of the elements.
        """
    @property
    def elements(self, /) -> list[Element]:
        """
        Elements that the suspects name.
        """
    @property
    def engine(self, /) -> SpeedSensor | None:
        """
        Sensor of the engine speed; None where there is none.
        """
    @property
    def gear_names(self, /) -> list[str]:
        """
        Names of the gears, in the order of their places.
        """
    @property
    def gears(self, /) -> list[Gear]:
        """
        Gears in any order.
        """
    @property
    def input(self, /) -> SpeedSensor:
        """
        Sensor of the input speed.
        """
    @property
    def limits(self, /) -> Limits:
        """
        What counts as what.
        """
    @staticmethod
    def of_train(train: Train, *, input: SpeedSensor, output: SpeedSensor, engine: SpeedSensor | None = None, limits: Limits, sample_s: float, heat: Sequence[Element] = ...) -> Unit:
        """
        The unit of a train: one gear for each ratio, with the slip of every element that holds it per slip at the input, all
        from the teeth. The number of a gear is in its name. `heat` says what is known of the plates of elements.

        >>> from pathlib import Path
        >>> family = record.load(Path(trainwright.__file__).parent / "demo" / "family.toml")
        >>> sensor = SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.9, age_limit_s=0.05, greatest_rpm=8000.0)
        >>> limits = Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4)
        >>> unit = Unit.of_train(family.train("wren"), input=sensor, output=sensor, limits=limits, sample_s=0.01)
        >>> fourth = unit.gears[3]
        >>> fourth.name, [(suspect.element, round(suspect.slip_per_input_slip, 3)) for suspect in fourth.suspects]
        ('4', [('B1', 1.322), ('C1', -2.055), ('C3', 4.264)])
        """
    @property
    def output(self, /) -> SpeedSensor:
        """
        Sensor of the output speed.
        """
    @property
    def sample_s(self, /) -> float:
        """
        Nominal time between two samples, s.
        """
    def weigh_suspects(self, /, evidence: dict[str, GearEvidence]) -> Suspects:
        """
        Odds of each element to be the one that slips, from what was seen in the gears: evidence by the name of the gear.
        Source: Bayes' rule over discrete hypotheses, one fault at a time; the assumed chances are on the card.
        """

@final
class Watch:
    """
    Monitors of many units, fed with columns of samples; each unit has its own, and all run side by side.

    The same samples give the same bits, whatever the pieces, the threads and the mixture of units.
    """
    def __new__(cls, /, unit: Any, *, outputs: Sequence[str] = ..., bus: dict[str, BusSignal] | None = None, threads: int | None = None) -> Watch:
        """
        `unit` is a `Unit` for all, or a dictionary of name to `Unit`. `outputs` is what every sample answers, of `OUTPUTS`;
        `bus` names columns of raw or scaled bus values by their `duty.BusSignal`; `threads` limits the threads.
        """
    def __repr__(self, /) -> str: ...
    def add(self, /, columns: Any, *, name: Any | None = None) -> dict:
        """
        Takes more rows: a mapping of column names to arrays, or any Arrow producer. `name` is whose samples they are, where
        there is no column `unit`. Gives what was asked of every sample, as arrays by name. Ctrl-C stops it between pieces;
        what was taken stays taken.
        """
    def counts(self, /) -> dict:
        """
        What was counted of every unit, as columns.
        """
    def events(self, /) -> dict:
        """
        Every event, as columns.
        """
    @property
    def missing_columns(self, /) -> list[str]:
        """
        Columns that some data did not have though the sensors or the limits ask for them: what rests on them is not formed.
        """
    def monitor(self, /, name: Any | None = None) -> Monitor:
        """
        The monitor of a unit as it stands now.
        """
    def ratios(self, /) -> dict:
        """
        The measured ratio of every gear that was seen, as columns.
        """
    @property
    def rows(self, /) -> int:
        """
        Rows taken.
        """
    def shifts(self, /) -> dict:
        """
        Every shift, as columns.
        """
    def suspects(self, /) -> dict:
        """
        The suspects of every unit, most likely first, as columns.
        """
    @property
    def units(self, /) -> list[Any]:
        """
        Names of the units, in the order of the tables.
        """

def run_length(*, threshold: ArrayLike, reference: ArrayLike, shift: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Average number of values until a one-sided cumulative sum alarms; with a shift of 0 until it alarms falsely. All in standard
    deviations of one value.
    Source: Siegmund, Sequential Analysis (from memory), its overshoot fitted to the exact integral equation (derived).

    >>> round(run_length(threshold=4.0, reference=0.5, shift=0.0), 1)
    335.5
    """

def step_bias_rpm(*, step_rpm: ArrayLike, noise_rpm: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Greatest error, 1/min, that rounding to a step leaves in the mean of any number of values with this noise.
    Source: Widrow and Kollár, Quantization Noise (from memory); the bound on the series is derived.

    >>> step_bias_rpm(step_rpm=8.0, noise_rpm=0.0)
    4.0
    """

def threshold_for(*, run_length: ArrayLike, reference: ArrayLike, out: NDArray[float64] | None = None) -> Any:
    """
    Threshold of a one-sided cumulative sum with this average number of values to a false alarm.
    Source: `run_length`, solved by halving.

    >>> round(threshold_for(run_length=740.8, reference=0.5), 2)
    4.77
    """
