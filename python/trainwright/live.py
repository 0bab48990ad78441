"""Watching units while they turn: gear in effect, slip, shifts, alarms. What turns can catch, and what was just driven is hot.

Sample by sample::

    monitor = live.Monitor(unit)
    for event in monitor.push(time_s=0.01, input_rpm=963.5, output_rpm=420.0, gear="3"):
        print(event.at_s, event.kind, event.gear)

Whole recordings, of one unit or of thousands side by side::

    watched = live.watch(unit, {"time_s": time_s, "input_rpm": input_rpm, "output_rpm": output_rpm, "unit": unit_of_each_sample})
    pandas.DataFrame(watched.events)

A unit is made from the record of its family by :meth:`Unit.of_train`, its sensors from the record of the instruments by :func:`sensors`.
A monitor is no protection: stop what slips, flares or overheats by the rules of the bench and of the vehicle's maker.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from html import escape
from typing import Any

import numpy as np

from . import hazard
from ._native.live import (
    COLUMNS,
    EVENT_KINDS,
    OUTPUTS,
    PHASES,
    Counts,
    Element,
    Event,
    Gear,
    GearEvidence,
    Limits,
    Monitor,
    RankedSuspect,
    Ratio,
    Shift,
    ShiftsToLimit,
    SpeedPair,
    SpeedSensor,
    SpeedSpread,
    State,
    Suspect,
    Suspects,
    Unit,
    Watch,
    run_length,
    step_bias_rpm,
    threshold_for,
)
from .duty import BusSignal
from .error import refusal
from .record import Instruments

__all__ = [
    "COLUMNS",
    "EVENT_KINDS",
    "OUTPUTS",
    "PHASES",
    "Counts",
    "Element",
    "Event",
    "Gear",
    "GearEvidence",
    "Limits",
    "Monitor",
    "RankedSuspect",
    "Ratio",
    "Shift",
    "ShiftsToLimit",
    "SpeedPair",
    "SpeedSensor",
    "SpeedSpread",
    "State",
    "Suspect",
    "Suspects",
    "Unit",
    "Watch",
    "Watched",
    "run_length",
    "sensors",
    "step_bias_rpm",
    "threshold_for",
    "watch",
]

SHAFTS = ("input", "output", "engine")


def sensors(
    instruments: Instruments,
    source: str,
    *,
    noise_rpm: float | Mapping[str, float],
    age_limit_s: float | Mapping[str, float],
    greatest_rpm: float | Mapping[str, float],
    counter: str = "speed_counter",
) -> dict[str, SpeedSensor]:
    """The sensors of input, output and engine speed from a counter of the instruments record, as the keywords of :class:`Unit`.

    * ``source``: ``"bus"`` takes the record's step, ``"counted"`` its teeth, ``"edges"`` its teeth and tick
    * ``noise_rpm``, ``age_limit_s``, ``greatest_rpm``: what the record does not hold; one number, or one for each of ``"input"``,
      ``"output"``, ``"engine"``
    """
    record = instruments.as_dict()["instrument"].get(counter)
    if record is None or "input_teeth" not in record:
        raise refusal("counter", f"the record has no counter of shaft speeds {counter!r}; it needs input_teeth, timer_tick_us, bus_step_rpm")

    def made(shaft: str) -> SpeedSensor:
        given = {"noise_rpm": noise_rpm, "age_limit_s": age_limit_s, "greatest_rpm": greatest_rpm}
        own = {name: value[shaft] if isinstance(value, Mapping) else value for name, value in given.items()}
        teeth = record[f"{shaft}_teeth"]
        if source == "bus":
            return SpeedSensor.bus(step_rpm=record["bus_step_rpm"], **own)
        if source == "counted":
            return SpeedSensor.counted(teeth=teeth, **own)
        if source == "edges":
            return SpeedSensor.edges(teeth=teeth, tick_s=record["timer_tick_us"] * 1e-6, **own)
        raise refusal("source", f"{source!r} is none of bus, counted, edges", "TEXT")

    return {shaft: made(shaft) for shaft in SHAFTS}


CAUTIONS = (
    *map(hazard.caution, ("turning shafts", "overspeed", "hot parts", "hot fluid")),
    "A monitor is no protection: the rules of the bench and the vehicle maker's procedures come first.",
)
SHOWN = 20
"""Events in the table of a notebook."""


class Watched:
    """What the monitors found: tables as dictionaries of NumPy arrays, ready for any data frame."""

    def __init__(self, watch: Watch, samples: dict[str, Any]) -> None:
        self._watch = watch
        self.samples = samples
        """What was asked of every sample, as arrays by name."""
        self.events = watch.events()
        """unit, kind, gear, other_gear, speed, suspects, at_s, found_s, value, u; by unit, in their order."""
        self.shifts = watch.shifts()
        """unit, and the fields of :class:`Shift` with times in s."""
        self.ratios = watch.ratios()
        """unit, gear, nominal, and the fields of :class:`Ratio`; gears that were seen."""
        self.suspects = watch.suspects()
        """unit, element, ln_odds, next_gear; most likely first."""
        self.counts = watch.counts()
        """unit, the fields of :class:`Counts`, and no_time: rows without a time."""

    @property
    def units(self) -> list[Any]:
        """Names of the units."""
        return self._watch.units

    @property
    def rows(self) -> int:
        """Samples taken."""
        return self._watch.rows

    @property
    def missing_columns(self) -> list[str]:
        """Columns that the data did not have: what rests on them is not formed."""
        return self._watch.missing_columns

    def monitor(self, name: str | int | None = None) -> Monitor:
        """The monitor of a unit as it stood after the last sample."""
        return self._watch.monitor(name)

    @property
    def cautions(self) -> tuple[str, ...]:
        """To print beside what was found."""
        return CAUTIONS

    def _repr_html_(self) -> str:
        count = len(self.events["unit"])
        head = "".join(f"<th>{name}</th>" for name in self.events)
        rows = ("".join(f"<td>{escape(_short(values[row]))}</td>" for values in self.events.values()) for row in range(min(count, SHOWN)))
        body = "".join(f"<tr>{cells}</tr>" for cells in rows)
        more = f"<p>{count - SHOWN:,} more events.</p>" if count > SHOWN else ""
        cautions = escape(" ".join(self.cautions))
        return f"<p>{escape(repr(self)[1:-1])}</p><table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>{more}<p><small>{cautions}</small></p>"

    def __repr__(self) -> str:
        missing = f"; without {', '.join(self.missing_columns)}" if self.missing_columns else ""
        return f"<{self.rows:,} samples of {len(self.units):,} units: {len(self.events['unit']):,} events, {len(self.shifts['unit']):,} shifts{missing}>"


def _short(value: Any) -> str:
    return f"{value:.6g}" if isinstance(value, float | np.floating) else str(value)


def watch(
    unit: Unit | Mapping[Any, Unit],
    samples: Any,
    *,
    name: str | int | None = None,
    columns: Mapping[str, str] | None = None,
    outputs: Iterable[str] = (),
    bus: Mapping[str, BusSignal] | None = None,
    threads: int | None = None,
) -> Watched:
    """What happened in recordings of one unit or of many, each watched by a monitor of its own, all side by side.

    * ``unit``: one for all, or the unit of each name
    * ``samples``: arrays by name, or anything that gives Arrow (pyarrow, Polars, pandas, DuckDB). Names are those of ``COLUMNS``, and
      ``unit`` for whose sample it is, in any mixture; without it all are of ``name``. The samples of a unit stand in the order of
      their time. Time and what the sensors of input and output need must be there; what else is missing is said
    * ``columns``: our name to theirs, where they differ: ``{"input_rpm": "n_input_rpm"}``
    * ``outputs``: what every sample answers, of ``OUTPUTS``. ``gear`` is the place in ``unit.gear_names``, -1 none, -2 standing, -3
      unknown; ``phase`` the place in ``PHASES``
    * ``bus``: columns that hold bus values, by their :class:`trainwright.duty.BusSignal`: raw where they are whole numbers
    * ``threads``: how many; all cores unless given

    >>> sensor = SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.5, age_limit_s=0.05, greatest_rpm=8000.0)
    >>> gears = [Gear(name="1", number=1, ratio=4.0), Gear(name="2", number=2, ratio=2.5)]
    >>> limits = Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4)
    >>> unit = Unit(gears=gears, input=sensor, output=sensor, limits=limits, sample_s=0.01)
    >>> time_s = np.arange(100) / 100
    >>> watched = watch(unit, {"time_s": time_s, "input_rpm": 1500 + 100 * time_s, "output_rpm": 600 + 40 * time_s}, outputs=["gear"])
    >>> watched.events["kind"].tolist(), watched.events["gear"].tolist(), watched.samples["gear"][-1]
    (['gear reached'], ['2'], np.int8(1))
    """
    if columns:
        samples = _renamed(samples, columns)
    monitors = Watch(dict(unit) if isinstance(unit, Mapping) else unit, outputs=list(outputs), bus=dict(bus) if bus else None, threads=threads)
    return Watched(monitors, monitors.add(samples, name=name))


def _renamed(samples: Any, columns: Mapping[str, str]) -> dict[str, Any]:
    """The columns of a mapping or a frame under our names."""
    known = (*COLUMNS, "unit")
    for ours in columns:
        if ours not in known:
            raise refusal("columns", f"there is no column {ours!r}; there are {', '.join(known)}", "TEXT")
    there = set(getattr(samples, "column_names", None) or getattr(samples, "columns", samples))
    absent = [theirs for theirs in columns.values() if theirs not in there]
    if absent:
        raise refusal("columns", f"the samples have no column {', '.join(absent)}; they have {', '.join(map(str, sorted(there)))}")
    return {ours: samples[columns.get(ours, ours)] for ours in known if columns.get(ours, ours) in there}
