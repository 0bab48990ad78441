"""Parts about fits: what a job measured, pressed bushings cold and hot, and the sheet for the bench."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from ..answers.fit import fit_sheet
from ..answers.fit.bench import bench_sheet
from ..answers.fit.case import Question, Side
from ..answers.sizes import FitSide, fit_sides, names_a_fit
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
    sizes = {name: size for name, size in job["measured_mm"].items() if names_a_fit(family, name)}
    sides = [side for name, size in sizes.items() for side in fit_sides(family, instruments, name, size)]
    for fit in fits_of(family):
        found = {side.side: side for side in sides if side.fit == fit.name}
        if len(found) == 2:
            shaft, bore = _side(family, fit.shaft_mm, found["shaft"]), _side(family, fit.bore_mm, found["bore"])
            title = f"{job['id']}: {fit.shaft} in {fit.bore}, as measured"
            yield Part(fit_sheet(Question(fit, shaft, bore), title=title, story=job["story"]))


def _side(family: Family, tolerances: Callable[[str], Limits], size: FitSide) -> Side:
    """A size of the job with the uncertainty of its instrument."""
    return Side(_nearest(family, tolerances, size.reading), Typed(size.reading, "mm", UNITS["mm"][0], 3), size.instrument or "")


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
