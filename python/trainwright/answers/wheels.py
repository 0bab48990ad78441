"""A wrong tire, axle or tooth count, from a speed against GPS: which change explains it, with its chance, or that nobody can tell."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .. import hazard
from ..duty import CauseFound, RatioCause, SpeedsRatio, other_teeth, weigh_causes, wheel_causes
from ..edge import number
from ..judge import Reading
from ..record import Fleet
from ..sheet import Fact, Row, Sheet, Table

ENOUGH = 0.95
"""Chance from which one cause is named."""

MOST_Z = 3.0
"""Deviation in standard uncertainties that still fits."""


def causes_of(fleet: Fleet, truck: str, sensors: Sequence[tuple[int, int]]) -> dict[str, RatioCause]:
    """What the record says may be wrong with the wheels of a truck, and the tooth counts that are asked about."""
    sensor = {f"sensor wheel of {fitted} teeth for {programmed}": other_teeth(programmed=programmed, fitted=fitted, weight=1.0) for programmed, fitted in sensors}
    return {**wheel_causes(fleet, truck), **sensor}


def wheels_sheet(
    causes: Mapping[str, RatioCause], road: Reading, *, gear: Reading | None, title: str, measured: SpeedsRatio | None = None
) -> Sheet:
    """Which of the causes explains a ratio of true over shown speed."""
    found = weigh_causes(road=road, gear=gear, causes=dict(causes), enough=ENOUGH, most_z=MOST_Z)
    return Sheet(
        title=title,
        answer=f"{_verdict(found, causes)} True over shown speed is {number(road.value, 4)} (standard uncertainty {number(road.u, 4)}): at true 100 km/h it shows {number(100 / road.value, 1)}.",
        tables=[_table(found, causes)],
        facts=[*_gear_fact(gear), *_measured(measured)],
        not_checked=[
            "Two changes at once, and whatever is not in the list: measure how far the tire rolls and read the axle tag before anybody programs.",
            *(["Gear ratios: without input and output speed in a known gear a wrong tooth count of the sensor looks like a tire or an axle."] if gear is None else []),
        ],
        cautions=[hazard.caution("wrong tire"), hazard.caution("towing")],
        cards=["duty.weigh_causes", "duty.other_driveline", "duty.other_teeth", "duty.ratio_of"],
        how=[found.explain(road=road, gear=gear) if gear else found.explain(road=road), *([measured.explain()] if measured else [])],
        data={
            "kind": found.kind,
            "best": found.best,
            "true_over_shown": road.as_dict(),
            "gear_ratio_error": gear.as_dict() if gear else None,
            "causes": {name: {**fit.as_dict(), "expected": causes[name].road.value} for name, fit in found.fits().items()},
            "measured": measured.as_dict() if measured else None,
        },
    )  # fmt: skip


def _percent(chance: float, decimals: int) -> str:
    """A chance in percent, never rounded up to certainty.

    >>> _percent(0.99999, 1), _percent(0.953, 0), _percent(0.0001, 1)
    ('> 99.9', '95', '< 0.1')
    """
    if chance > 0.999:
        return "> 99.9"
    return "< 0.1" if chance < 0.001 else number(100 * chance, decimals)


def _verdict(found: CauseFound, causes: Mapping[str, RatioCause]) -> str:
    if found.kind == "none fits":
        return f"Nothing in the list explains it; nearest is {found.best}, {number(abs(found.road_z), 1)} standard uncertainties off."
    if found.kind == "explained":
        return f"{found.best[0].upper()}{found.best[1:]} explains it (chance {_percent(found.chance, 1)} % among those listed)."
    fits = sorted(found.fits().items(), key=lambda item: -item[1].chance)
    several = [f"{name} ({_percent(fit.chance, 0)} %)" for name, fit in fits if fit.chance > 0.05]
    return f"It cannot be told apart: {', '.join(several)}. A longer drive, or a look at sidewall and axle tag, settles it."


def _table(found: CauseFound, causes: Mapping[str, RatioCause]) -> Table:
    rows = [
        Row(
            (name, number(causes[name].road.value, 4), number(fit.road_z, 1), number(causes[name].gear, 3), _percent(fit.chance, 1)),
            "governs" if name == found.best and found.kind == "explained" else "",
        )
        for name, fit in sorted(found.fits().items(), key=lambda item: -item[1].chance)
    ]
    columns = ("cause", ">true over shown", ">off by u", ">gear ratios by", ">chance %")
    return Table("What would explain it", columns, rows, "All weigh the same before the measurement; chances are among those listed.")


def _gear_fact(gear: Reading | None) -> list[Fact]:
    return [Fact("gear ratios by", number(gear.value, 4), f"input over output speed, over the ratio of the gear; standard uncertainty {number(gear.u, 4)}")] if gear else []


def _measured(measured: SpeedsRatio | None) -> list[Fact]:
    if not measured:
        return []
    return [
        Fact("rows used", f"{measured.used}", f"{measured.slow} too slow, {measured.missing} missing: not used"),
        Fact("uncertainty", number(measured.ratio.u, 4), f"scatter {number(measured.scatter_u, 4)}, step of the shown speed {number(measured.step_u, 4)}, true speed {number(measured.true_u, 4)}"),
    ]  # fmt: skip
