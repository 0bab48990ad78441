"""A shaft in its bore: as measured or by tolerance, judged, cold and hot."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import inf
from typing import Any

from ... import hazard
from ...edge import FIT, number, number_as, show, show_as, span_as
from ...error import Error, refusal
from ...fit import (
    Clearance,
    LeakRatio,
    MeasuredClearance,
    PressedBushing,
    WornGap,
    bushing_load,
)
from ...judge import Judgment, Limits, Reading, settle
from ...sheet import Decision, Fact, Row, Sheet, Table
from .. import rule_in_words
from .case import REFERENCE_C, Question, Side, Warm, as_range, at_temperature

COVERAGE = 0.95
"""Probability of the interval of the leak ratio."""

HALF_WIDTHS = {"rectangular": 3**0.5, "normal 3 sigma": 3.0}
"""Half of a tolerance over the standard uncertainty that it is taken as."""

FITS_IN_WORDS = {
    "blocked": "does not go together: even the smallest shaft is too large for the largest bore",
    "may bind": "may bind: the largest shaft is too large for the smallest bore",
    "inside": "goes together, and no pair of new parts exceeds the limit",
    "may be loose": "goes together, and some pairs of new parts exceed the limit",
    "loose": "assembles and runs loose: every pair of new parts exceeds the limit",
}


def fit_sheet(asked: Question, *, title: str = "", story: str = "") -> Sheet:
    """One fit: judged where a part was measured, by its class where none was; cold and hot; leakage against a new fit."""
    fit, like = asked.fit, asked.like
    nominal, now = asked.nominal(), asked.now()
    answer, decisions = _judged(asked, now) if asked.is_measured else (_by_class(asked, nominal), [])
    warm, why_not_warm = _warm(asked)
    tables = [_warm_table(asked, warm)] if warm else []
    if warm:
        answer += " " + _hottest(asked, warm)
    facts = [
        *_sizes(asked),
        Fact("new parts have", f"{as_range(nominal.clearance_mm, like)}", f"shaft of {asked.shaft.variant} in bore of {asked.bore.variant}: {nominal.fit_class}"),
        *([] if asked.is_measured else [Fact("a pair at random", _percent(now), f"is within what is wanted, the sizes taken as {asked.spread} in their tolerances")]),
        Fact("limit in service", show_as(fit.limit_mm, like, FIT), "of the record, diametral, at 20 °C"),
    ]  # fmt: skip
    leak_facts, leak, why_no_leak = _leak(asked)
    press_facts, press = _press(asked)
    load_facts, load = _load(asked)
    not_checked = [
        "Roundness, taper and position of shaft and bore: run-out adds eccentricity, not clearance.",
        "Wear of the surfaces, and whether the shaft is straight.",
        *([f"The uncertainty of {', '.join(_exact(asked))}: taken as exact. Give it, as 43.988mm±0.002mm, or name the instrument."] if _exact(asked) else []),
        *(["Parts in hand: only their tolerances were compared. A worn part is not inside its tolerance."] if not asked.is_measured else []),
        *([why_not_warm] if why_not_warm else ["The limit away from 20 °C: the record states it for 20 °C, so hot and cold only room to turn is judged."]),
        *([why_no_leak] if why_no_leak else []),
        *(["Creep of the housing and a lug or stake of the bushing: neither is in the grip."] if press else []),
    ]
    return Sheet(
        title=title or f"{fit.name}: {fit.shaft} of {asked.shaft.variant} in {fit.bore} of {asked.bore.variant}",
        story=story,
        answer=answer,
        decisions=decisions,
        tables=tables,
        facts=[*facts, *leak_facts, *press_facts, *load_facts],
        not_checked=not_checked,
        cautions=[hazard.caution("hot parts")] if press else [],
        cards=[
            "fit.clearance",
            *(["fit.measured"] if asked.is_measured else []),
            *(["fit.toleranced"] if not (asked.shaft.typed and asked.bore.typed) else []),
            *(["fit.size_20c"] if asked.shaft.part_c or asked.bore.part_c else []),
            *(["fit.running_clearance", "fit.bushing_at", "fit.pressed", "fit.let_go_c"] if press else ["fit.warm_clearance"] if warm else []),
            *(["fit.bushing_held"] if press and press["holds"] else []),
            *(["fit.leak_ratio"] if leak else []),
            *(["fit.gap_leak", "fit.eccentricity_factor"] if asked.oil and warm else []),
            *(["fit.bushing_load"] if load else []),
        ],
        how=[
            now.explain(unit="mm", inputs=("shaft", "bore")) if asked.is_measured else nominal.explain(),
            *(row.how for row in warm[-1:] if row.how),
        ],
        data={
            "fit": fit.name,
            "spread": asked.spread,
            "nominal": nominal.as_dict(),
            "clearance": now.as_dict() if asked.is_measured else None,
            "at_temperature": [_warm_data(row) for row in warm],
            "leak_ratio": leak,
            "press": press,
            "load": load,
        },
    )


def _percent(found: MeasuredClearance) -> str:
    return Decision("", found.judgment.verdict, found.judgment.chance, "").percent


def _judged(asked: Question, now: MeasuredClearance) -> tuple[str, list[Decision]]:
    like, judged = asked.like, now.judgment
    clearance = show_as(now.clearance_mm.value, like, FIT)
    if asked.fit.kind == "press":
        answer = f"Interference {show_as(-now.clearance_mm.value, like, FIT)}." if now.clearance_mm.value < 0 else f"Clearance {clearance}: this press fit does not hold."
        about = f"{asked.fit.shaft} is tight in {asked.fit.bore}"
    elif judged.verdict == "GO":
        answer = f"Clearance {clearance}: inside, limit {show_as(asked.fit.limit_mm, like, FIT)}."
        about = f"{asked.fit.shaft} in {asked.fit.bore} has room and is within the limit"
    else:
        if now.clearance_mm.value < 0:
            found = "the shaft does not enter"
        elif now.clearance_mm.value < asked.least_mm:
            found = f"less than the {show_as(asked.least_mm, like, FIT)} that is wanted"
        elif now.clearance_mm.value > asked.fit.limit_mm:
            found = f"it assembles and runs loose, limit {show_as(asked.fit.limit_mm, like, FIT)}"
        else:
            found = f"within the limit of {show_as(asked.fit.limit_mm, like, FIT)}, but too near an end to be proven"
        answer = f"Clearance {clearance}: {found}."
        about = f"{asked.fit.shaft} in {asked.fit.bore} has room and is within the limit"
    return answer, [Decision(about, judged.verdict, judged.chance, _basis(asked, judged), _settled(asked, now))]


def _basis(asked: Question, judged: Judgment) -> str:
    like = asked.like
    lower, upper = judged.limits.lower, judged.limits.upper
    wanted = f"at most {show_as(upper, like, FIT)}" if lower == -inf else span_as(lower, upper, like, FIT)
    return f"{show_as(judged.reading, like, FIT)} against {wanted}; {rule_in_words(asked.rule)}."


def _settled(asked: Question, now: MeasuredClearance) -> str:
    if now.judgment.verdict != "NOT PROVEN" or not now.judgment.reading.u:
        return ""
    wanted = settle(now.judgment, now.budget)
    side, part = ((asked.shaft, asked.fit.shaft), (asked.bore, asked.fit.bore))[wanted.input]
    doubted = part if side.typed else f"{part}, which is taken from its tolerance,"
    if wanted.enough:
        return f"To settle it, measure {doubted} to {show_as(wanted.u_needed, asked.like, FIT + 1)} (standard uncertainty; now {show_as(wanted.u_now, asked.like, FIT + 1)})."
    return f"The largest share of the doubt is in {doubted} (standard uncertainty {show_as(wanted.u_now, asked.like, FIT + 1)}), but it alone cannot decide."


def _by_class(asked: Question, nominal: Clearance) -> str:
    if asked.fit.kind == "press":
        return f"By tolerance the interference is {as_range(Limits(lower=-nominal.clearance_mm.upper, upper=-nominal.clearance_mm.lower), asked.like)}."
    return f"By tolerance the clearance is {as_range(nominal.clearance_mm, asked.like)}: {FITS_IN_WORDS[nominal.fit_class]}."


def _sizes(asked: Question) -> list[Fact]:
    facts = []
    for side, part in ((asked.shaft, asked.fit.shaft), (asked.bore, asked.fit.bore)):
        tolerance = as_range(asked.tolerance(side), asked.like)
        size = show_as(asked.size(side), asked.like, FIT)
        if not side.typed:
            why = f"{part} of {side.variant}, not measured: middle of its tolerance {tolerance}, taken as {asked.spread}"
        else:
            how = f" on the {side.instrument.replace('_', ' ')}" if side.instrument else ""
            warm = f", read {show_as(side.typed.reading, side.typed)} at {show(side.part_c.value, 'c')} with the instrument at 20 °C" if side.part_c else ""
            why = f"{part}, measured{how}{warm}; as new, of {side.variant}, {tolerance}"
        facts.append(Fact("shaft" if side is asked.shaft else "bore", size, why))
    return facts


def _exact(asked: Question) -> list[str]:
    sides = ((asked.shaft, asked.fit.shaft), (asked.bore, asked.fit.bore))
    return [part for side, part in sides if side.typed and not side.typed.reading.u]


def _warm(asked: Question) -> tuple[list[Warm], str]:
    try:
        return [at_temperature(asked, temp_c) for temp_c in asked.temps_c], ""
    except Error as missing:
        if missing.kind != "MISSING":
            raise
        return [], f"Cold and hot: {missing}."


def _warm_table(asked: Question, warm: Sequence[Warm]) -> Table:
    unit = asked.like.unit.sign if asked.like else "mm"
    rows = []
    for row in warm:
        judged = row.clearance.judgment
        cells = [
            number(row.temp_c.value, 1).removesuffix(".0"),
            number_as(row.clearance.clearance_mm.value, asked.like, FIT),
            number_as(row.clearance.clearance_mm.u, asked.like, FIT + 1),
            Decision("", judged.verdict, judged.chance, "").percent,
            judged.verdict,
        ]
        if row.interference_mm is not None and row.pressure_mpa is not None:
            cells[3:3] = [number_as(row.interference_mm, asked.like, FIT), number(row.pressure_mpa, 1)]
        if asked.oil:
            cells[3:3] = ["not laminar" if row.leak is None else number(row.leak.flow_l_min, 3)]
        rows.append(Row(tuple(cells), "" if judged.verdict == "GO" else judged.verdict))
    columns: tuple[str, ...] = (">°C", f">clearance {unit}", ">± u", ">room, chance", "room to turn")
    note = f"One metal and one temperature for each part{_warmer(asked)}."
    if asked.fit.has_bushing:
        columns = (*columns[:3], f">grip of bushing {unit}", ">pressure MPa", *columns[3:])
        note = f"The bore grows with the bushing's own metal and opens by what the seat lets go{_warmer(asked)}. A grip below 0: the bushing is loose in its housing."
    if asked.oil:
        columns = (*columns[:3], ">leak L/min", *columns[3:])
        note += f" Leak: {asked.oil.name} at {show(asked.oil.pressure_kpa, 'kpa')} through the clearance, shaft centered; 2.5 times as much where it lies against the bore."
    return Table("Cold and hot", columns, rows, note)


def _warmer(asked: Question) -> str:
    return f"; the shaft is {show(asked.shaft_warmer_k.value, 'k')} warmer" if asked.shaft_warmer_k.value else ""


def _hottest(asked: Question, warm: Sequence[Warm]) -> str:
    if len(warm) == 1:
        return f"At {show(warm[0].temp_c.value, 'c')} it is {show_as(warm[0].clearance.clearance_mm.value, asked.like, FIT)}."
    cold, hot = (pick(warm, key=lambda row: row.temp_c.value) for pick in (min, max))
    values = [number_as(row.clearance.clearance_mm.value, asked.like, FIT) for row in (cold, hot)]
    return f"From {show(cold.temp_c.value, 'c')} to {show(hot.temp_c.value, 'c')} it goes from {values[0]} to {values[1]} {asked.like.unit.sign if asked.like else 'mm'}."


def _warm_data(row: Warm) -> dict[str, Any]:
    return {
        "temp_c": row.temp_c.as_dict(),
        "clearance_mm": row.clearance.clearance_mm.as_dict(),
        "chance_of_room": row.clearance.judgment.chance,
        "verdict": row.clearance.judgment.verdict,
        "interference_mm": row.interference_mm,
        "pressure_mpa": row.pressure_mpa,
        "leak_l_min": row.leak.flow_l_min if row.leak else None,
    }


def _leak(asked: Question) -> tuple[list[Fact], dict[str, Any] | None, str]:
    """The leak ratio, or in words why there is none."""
    if asked.fit.kind != "running":
        return [], None, ""
    try:
        at_limit = _worn(asked, Reading.exact(asked.fit.limit_mm))
        facts = [Fact("leaks at the limit", f"{number(at_limit.ratio, 1)} × new", f"the middle of new parts of {asked.bore.variant} is 1; same pressure, oil and eccentricity")]
        if not asked.is_measured and asked.shaft.variant == asked.bore.variant:
            return facts, {"at_limit": at_limit.as_dict(), "now": None}, ""
        now = _worn(asked, asked.now().clearance_mm)
    except Error as refused:
        return [], None, f"Leakage against a new fit: {refused}."
    straight = f"; to first order ± {number(now.first_order_u, 1)}, but it goes by the cube of the clearance" if now.first_order_u > 0.1 * now.ratio else ""
    why = f"{100 * COVERAGE:g} % from {number(now.lower, 1)} to {number(now.upper, 1)}, most of it from not knowing how new the fit was{straight}"
    return [Fact("leaks now", f"{number(now.ratio, 1)} × new", why), *facts], {"at_limit": at_limit.as_dict(), "now": now.as_dict()}, ""


def _worn(asked: Question, clearance_mm: Reading) -> LeakRatio:
    """A clearance against a new fit of the variant that the bore is of, touching then and now."""
    new_mm = replace(asked, shaft=Side(asked.bore.variant), bore=Side(asked.bore.variant)).now().clearance_mm
    return WornGap(new_mm=new_mm, worn_mm=clearance_mm, new_eccentricity=1.0, worn_eccentricity=1.0).leak_ratio(coverage=COVERAGE)


def _press(asked: Question) -> tuple[list[Fact], dict[str, Any] | None]:
    """Seat, let-go temperature and grip of a pressed bushing."""
    bushing = asked.bushing()
    if not bushing:
        return [], None
    seat, let_go = bushing.bushing_at(temp_c=REFERENCE_C), bushing.let_go_c()
    ends = [_at_end(asked.spread, bushing, sign).let_go_c().value for sign in (-1.0, 1.0)]
    facts = [
        Fact("bushing seat, 20 °C", f"{number(seat.pressure_mpa, 1)} MPa", f"interference {show_as(seat.interference_mm, asked.like, FIT)} closes the bore by {show_as(seat.bore_closure_mm, asked.like, FIT)}; hoop stress {number(seat.outer_hoop_mpa, 0)} MPa in the housing, {number(seat.inner_hoop_mpa, 0)} MPa in the bushing: hold them against the yield stress of each metal"),
        Fact("bushing lets go", show(let_go.value, "c"), f"standard uncertainty {show(let_go.u, 'k')}; {number(ends[0], 0)} °C with the loosest parts of the tolerances, {number(ends[1], 0)} °C with the tightest. Above it the bushing may turn or walk, and its bore follows its own metal"),
    ]  # fmt: skip
    holds = None
    if asked.fit.press_friction and asked.fit.length_mm:
        hottest = max(temp.value for temp in asked.temps_c)
        held = {temp_c: bushing.bushing_held(temp_c=temp_c, length_mm=asked.fit.length_mm, friction=asked.fit.press_friction) for temp_c in (REFERENCE_C, hottest)}
        holds = {"length_mm": asked.fit.length_mm, "friction": asked.fit.press_friction.as_dict(), "at_c": {temp_c: row.as_dict() for temp_c, row in held.items()}}
        values = [show(row.torque_nm.value, "nm") for row in held.values()]
        facts.append(Fact("bushing turns at", values[0], f"at 20 °C, standard uncertainty {show(held[REFERENCE_C].torque_nm.u, 'nm')}; {values[-1]} at {show(hottest, 'c')}. Not a rating"))
    return facts, {"at_20c": seat.as_dict(), "let_go_c": let_go.as_dict(), "let_go_ends_c": ends, "holds": holds}


def _at_end(spread: str, bushing: PressedBushing, sign: float) -> PressedBushing:
    """The bushing at an end of its tolerances: loosest for −1, tightest for 1."""
    kept = {name: getattr(bushing, name) for name in ("wall_mm", "bore_mm", "housing_outside_mm", "housing", "shell")}
    half = sign * HALF_WIDTHS[spread]
    housing, outside = bushing.housing_bore_mm, bushing.outside_mm
    return PressedBushing(
        housing_bore_mm=Reading.exact(housing.value - half * housing.u), outside_mm=Reading.exact(outside.value + half * outside.u), **kept
    )


def _load(asked: Question) -> tuple[list[Fact], dict[str, Any] | None]:
    if asked.load_n is None:
        return [], None
    if asked.fit.length_mm is None:
        raise refusal("length_mm", f"the record of {asked.fit.name} gives no length_mm for the load")
    load = bushing_load(force_n=asked.load_n, diameter_mm=asked.size(asked.shaft).value, length_mm=asked.fit.length_mm, speed_rpm=asked.speed_rpm or 0.0)
    facts = [Fact("unit load", f"{number(load.unit_load_mpa, 2)} MPa", f"{show(asked.load_n, 'n')} on diameter × {show(asked.fit.length_mm, 'mm')}")]
    if asked.speed_rpm:
        facts.append(Fact("slides at", f"{number(load.sliding_m_s, 2)} m/s", f"pv {number(load.pv_mpa_m_s, 2)} MPa·m/s; catalogue limits of pv are for dry or oil-soaked bushings, not for one fed with oil"))
    return facts, load.as_dict()


# ---- the sheet for the bench
