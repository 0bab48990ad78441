"""Parts about fits: what a job measured, pressed bushings cold and hot, and the sheet for the bench."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from ..answers.fit import Question, Side, bench_sheet, fit_sheet
from ..edge import UNITS, Typed
from ..fit import RecordedFit, WarmPart, Warmth, fits_of
from ..judge import Limits, Reading
from ..record import Family, Instruments
from .frame import Draw, Part, Records

CURVE_C = tuple(float(temp_c) for temp_c in range(-40, 181, 4))
"""Temperatures of the curve."""


def fit_parts(records: Records) -> Iterator[Part]:
    """Every fit whose two sizes a job measured; every pressed bushing; the sheet for the bench of the first variant."""
    family, instruments = records.family, records.instruments
    if not family or not fits_of(family):
        return
    for job in records.asked("measured_mm") if instruments else []:
        assert instruments
        yield from _measured_parts(family, instruments, job)
    first = family.variants[0]
    for fit in fits_of(family):
        if fit.has_bushing and fit.shaft_expansion_per_k:
            sheet = fit_sheet(Question(fit, Side(first), Side(first)), title=f"Cold and hot: the bushing of {fit.name}")
            yield Part(sheet, {_CAPTION: _curve(family, fit, first)})
    yield Part(bench_sheet(family, first, title=f"Fit sheet for the bench: {first}"))


def _measured_parts(family: Family, instruments: Instruments, job: dict[str, Any]) -> Iterator[Part]:
    sizes = job["measured_mm"]
    for fit in fits_of(family):
        shaft = _side(family, instruments, sizes, fit.shaft_size, fit.shaft, fit.shaft_mm)
        bore = _side(family, instruments, sizes, fit.bore_size, fit.bore, fit.bore_mm)
        if shaft and bore:
            title = f"{job['id']}: {fit.shaft} in {fit.bore}, as measured"
            yield Part(fit_sheet(Question(fit, shaft, bore), title=title, story=job["story"]))


def _side(
    family: Family, instruments: Instruments, sizes: dict[str, float], size: str | None, part: str, tolerances: Callable[[str], Limits]
) -> Side | None:
    """A size of the job with the uncertainty of its instrument; None where it was not measured, or no one says with what."""
    instrument = _instrument(family, size, part) if size in sizes else None
    if size is None or instrument is None:
        return None
    reading = instruments.reading(instrument, sizes[size])
    return Side(_nearest(family, tolerances, reading), Typed(reading, "mm", UNITS["mm"][0], 3), instrument)


def _instrument(family: Family, size: str | None, part: str) -> str | None:
    """What the record measures this size with; else what it measures another size of the part with."""
    evidence = family.as_dict().get("evidence_measured") or []
    own = [entry["instrument"] for entry in evidence if entry["id"] == size]
    same_part = [entry["instrument"] for entry in evidence if entry["carrier"] == part]
    return next(iter(own + same_part), None)


def _nearest(family: Family, tolerances: Callable[[str], Limits], reading: Reading) -> str:
    """The first variant whose size lies nearest to the reading."""

    def away(variant: str) -> float:
        size = tolerances(variant)
        return abs(reading.value - (size.lower + size.upper) / 2)

    return min(family.variants, key=away)


_CAPTION = (
    "Clearance against temperature. The pressed bushing follows neither metal: it opens with its seat until that lets go. "
    "The band is ± 2 standard uncertainties, most of it from the tolerances of new parts."
)


def _curve(family: Family, fit: RecordedFit, variant: str) -> Draw:
    press = next(entry["press"] for entry in family.as_dict()["fit"] if entry["id"] == fit.name)
    housing, shell = (f"as {press[key]}, {what}" for key, what in (("housing_material", "the housing"), ("bush_material", "the bushing")))
    asked = Question(fit, Side(variant), Side(variant))
    bushing, expansion = asked.bushing(), fit.shaft_expansion_per_k
    assert bushing and expansion
    shaft = WarmPart(size_mm=asked.size(asked.shaft), expansion_per_k=expansion)
    rows = [
        bushing.running_clearance(
            shaft=shaft, warmth=Warmth(temp_c=Reading.exact(temp_c)), wanted_mm=asked.wanted_mm, rule=asked.rule
        )
        for temp_c in CURVE_C
    ]  # fmt: skip
    clearances = [row.clearance.at_temperature.clearance_mm for row in rows]
    return lambda plots: plots.clearance_against_temperature(
        f"Clearance of {fit.name} against temperature",
        CURVE_C,
        [reading.value for reading in clearances],
        [reading.u for reading in clearances],
        {housing: [row.as_housing_mm for row in rows], shell: [row.as_shell_mm for row in rows]},
        limit_mm=fit.limit_mm,
        let_go_c=bushing.let_go_c().value,
    )
