"""A shaft in its bore: as measured or by tolerance, judged, cold and hot; and the sheet of every fit for the bench."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import inf
from typing import Any

from .. import Explanation, hazard
from ..edge import FIT, Typed, number, number_as, show, show_as, span_as
from ..error import Error, refusal
from ..fit import (
    Clearance,
    Gap,
    GapLeak,
    IsoFit,
    IsoLimits,
    LeakRatio,
    MeasuredClearance,
    PressedBushing,
    RecordedFit,
    WarmPart,
    WarmReading,
    Warmth,
    WornGap,
    bushing_load,
    fits_of,
    measured,
    toleranced,
    warm_clearance,
)
from ..fluid import Fluid, dynamic_viscosity
from ..judge import Judgment, Limits, Reading, Rule, settle
from ..record import Family
from ..sheet import BLANK, FORM, Decision, Fact, Row, Sheet, Table
from ..units import mm_to_in
from . import RULE, rule_in_words

TEMPS_C = (-20.0, 20.0, 90.0, 120.0)
"""Temperatures of the table cold and hot, unless others are asked for."""

REFERENCE_C = 20.0
COVERAGE = 0.95
"""Probability of the interval of the leak ratio."""

UNITS_IN_WORDS = {"mm": "millimeters", "in": "inches", "thou": "thousandths of an inch"}

HALF_WIDTHS = {"rectangular": 3**0.5, "normal 3 sigma": 3.0}
"""Half of a tolerance over the standard uncertainty that it is taken as."""

WARM_INPUTS = ("shaft", "bore", "expansion of the shaft", "expansion of the bore's part", "temperature", "how much warmer the shaft is")
BUSHING_INPUTS = (
    "shaft", "bore", "housing bore", "outside of the bushing", "expansion of the shaft", "expansion of the housing",
    "expansion of the bushing", "temperature", "how much warmer the shaft is",
)  # fmt: skip
"""What the uncertainty of a warm clearance comes from, in the order of its budget."""

FITS_IN_WORDS = {
    "blocked": "does not go together: even the smallest shaft is too large for the largest bore",
    "may bind": "may bind: the largest shaft is too large for the smallest bore",
    "inside": "goes together, and no pair of new parts exceeds the limit",
    "may be loose": "goes together, and some pairs of new parts exceed the limit",
    "loose": "assembles and runs loose: every pair of new parts exceeds the limit",
}


@dataclass(frozen=True)
class Side:
    """A shaft or a bore of a fit: whose part it is, and its size as measured; without one, its tolerance counts."""

    variant: str
    typed: Typed | None = None
    """The size with the unit that it was typed in; None where it was not measured."""
    instrument: str = ""
    """The instrument of the record that measured it."""
    part_c: Reading | None = None
    """Temperature of the part when it was measured; None for 20 °C."""

    @property
    def reading(self) -> Reading | None:
        return self.typed.reading if self.typed else None


@dataclass(frozen=True)
class Oil:
    """The oil that presses through the clearance."""

    name: str
    fluid: Fluid
    pressure_kpa: float


@dataclass(frozen=True)
class Question:
    """A fit, its two sides, and what is asked of them."""

    fit: RecordedFit
    shaft: Side
    bore: Side
    spread: str = "rectangular"
    """How the size of a part that was not measured is assumed to lie in its tolerance."""
    temps_c: Sequence[Reading] = tuple(map(Reading.exact, TEMPS_C))
    shaft_warmer_k: Reading = Reading(value=0.0, u=0.0)
    load_n: float | None = None
    speed_rpm: float | None = None
    oil: Oil | None = None
    least_mm: float = 0.0
    """Least clearance wanted at 20 °C, for a fit that is not pressed."""
    unit: Typed | None = None
    """Unit of the answer where nothing was typed."""
    rule: Rule = RULE

    @property
    def like(self) -> Typed | None:
        """The unit in which answers come back: that of the shaft, else of the bore, else the one asked for."""
        return self.shaft.typed or self.bore.typed or self.unit

    def size(self, side: Side) -> Reading:
        """The size at 20 °C: as measured, corrected for the part's temperature, or from its tolerance."""
        is_shaft = side is self.shaft
        if side.reading is None:
            return toleranced(size_mm=self.tolerance(side), spread=self.spread)
        if side.part_c is None:
            return side.reading
        if self.fit.has_bushing and not is_shaft:
            raise refusal("bore-temp", "a pressed bushing grows like neither metal: measure its bore at 20 °C", "NO_ANSWER")
        expansion = self.fit.shaft_expansion_per_k if is_shaft else self.fit.bore_expansion_per_k
        if expansion is None:
            raise refusal("material", f"the record of {self.fit.name} names no metal of the {'shaft' if is_shaft else 'bore'}: add it, or measure at 20 °C")
        warm = WarmReading(
            shown_mm=side.reading, part_expansion_per_k=expansion, part_temp_c=side.part_c,
            instrument_expansion_per_k=expansion, instrument_temp_c=Reading.exact(REFERENCE_C),
        )  # fmt: skip
        return warm.size_20c().size_mm

    def tolerance(self, side: Side) -> Limits:
        return self.fit.shaft_mm(side.variant) if side is self.shaft else self.fit.bore_mm(side.variant)

    @property
    def wanted_mm(self) -> Limits:
        """What is wanted at 20 °C: room, and no more than the limit in service. A press fit wants interference."""
        return Limits(upper=0.0) if self.fit.kind == "press" else Limits(lower=self.least_mm, upper=self.fit.limit_mm)

    @property
    def is_measured(self) -> bool:
        return bool(self.shaft.typed or self.bore.typed)

    def nominal(self) -> Clearance:
        """Both parts by their tolerances."""
        return self.fit.clearance(shaft_of=self.shaft.variant, bore_of=self.bore.variant)

    def now(self) -> MeasuredClearance:
        """At 20 °C, judged."""
        return measured(shaft_mm=self.size(self.shaft), bore_mm=self.size(self.bore), wanted_mm=self.wanted_mm, rule=self.rule)

    def bushing(self) -> PressedBushing | None:
        return self.fit.bushing(bore_mm=self.size(self.bore), spread=self.spread) if self.fit.has_bushing else None


@dataclass(frozen=True)
class Warm:
    """A fit at a temperature."""

    temp_c: Reading
    clearance: MeasuredClearance
    interference_mm: float | None = None
    """Of the bushing in its housing; None where none is pressed in."""
    pressure_mpa: float | None = None
    how: Explanation | None = None
    leak: GapLeak | None = None
    """Of the oil through the clearance, centered; None where no oil is asked for, or the formula does not cover it."""


def at_temperature(asked: Question, temp_c: Reading) -> Warm:
    """The fit at a temperature; judged is only whether the shaft has room, as the limit is one for 20 °C."""
    warmth = Warmth(temp_c=temp_c, shaft_warmer_k=asked.shaft_warmer_k)
    room = Limits(lower=0.0)
    shaft_expansion, bore_expansion = asked.fit.shaft_expansion_per_k, asked.fit.bore_expansion_per_k
    if shaft_expansion is None:
        raise refusal("shaft_material", f"the record of {asked.fit.name} names no metal of the shaft; add shaft_material", "MISSING")
    shaft = WarmPart(size_mm=asked.size(asked.shaft), expansion_per_k=shaft_expansion)
    if bushing := asked.bushing():
        running = bushing.running_clearance(shaft=shaft, warmth=warmth, wanted_mm=room, rule=asked.rule)
        seat, clearance = running.pressed, running.clearance.at_temperature
        how = running.explain(unit="mm", inputs=BUSHING_INPUTS, bushing=bushing, shaft=shaft, warmth=warmth)
        return Warm(temp_c, clearance, seat.interference_mm, seat.pressure_mpa, how, _oil_leak(asked, temp_c, clearance))
    if bore_expansion is None:
        raise refusal("bore_material", f"the record of {asked.fit.name} names no metal of the bore; add bore_material", "MISSING")
    bore = WarmPart(size_mm=asked.size(asked.bore), expansion_per_k=bore_expansion)
    warm = warm_clearance(shaft=shaft, bore=bore, warmth=warmth, wanted_mm=room, rule=asked.rule)
    how = warm.explain(unit="mm", inputs=WARM_INPUTS, bore=bore, shaft=shaft, warmth=warmth)
    return Warm(temp_c, warm.at_temperature, how=how, leak=_oil_leak(asked, temp_c, warm.at_temperature))


def _oil_leak(asked: Question, temp_c: Reading, clearance: MeasuredClearance) -> GapLeak | None:
    """The oil through the clearance, centered; None where it blocks, or where oil or gap lie outside the formulas."""
    oil = asked.oil
    if oil is None:
        return None
    if asked.fit.length_mm is None:
        raise refusal("length_mm", f"the record of {asked.fit.name} gives no length_mm for the leakage", "INCONSISTENT")
    if clearance.clearance_mm.value <= 0:
        return None
    gap = Gap(diameter_mm=clearance.shaft_mm.value, clearance_mm=clearance.clearance_mm.value, length_mm=asked.fit.length_mm, eccentricity=0.0)
    try:
        density = oil.fluid.density(temp_c=temp_c.value)
        viscosity = dynamic_viscosity(kinematic_mm2_s=oil.fluid.viscosity_line().viscosity_at(temp_c=temp_c.value), density_kg_m3=density)
        leak: GapLeak = gap.gap_leak(pressure_drop_kpa=oil.pressure_kpa, viscosity_mpa_s=viscosity, density_kg_m3=density)
    except Error as outside:
        if outside.kind != "OUT_OF_RANGE":
            raise
        return None
    return leak


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
        Fact("new parts have", f"{_as_range(nominal.clearance_mm, like)}", f"shaft of {asked.shaft.variant} in bore of {asked.bore.variant}: {nominal.fit_class}"),
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
        return f"By tolerance the interference is {_as_range(Limits(lower=-nominal.clearance_mm.upper, upper=-nominal.clearance_mm.lower), asked.like)}."
    return f"By tolerance the clearance is {_as_range(nominal.clearance_mm, asked.like)}: {FITS_IN_WORDS[nominal.fit_class]}."


def _as_range(limits: Limits, like: Typed | None) -> str:
    return span_as(limits.lower, limits.upper, like, FIT)


def _sizes(asked: Question) -> list[Fact]:
    facts = []
    for side, part in ((asked.shaft, asked.fit.shaft), (asked.bore, asked.fit.bore)):
        tolerance = _as_range(asked.tolerance(side), asked.like)
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


def bench_sheet(family: Family, variant: str, *, like: Typed | None = None, title: str = "", story: str = "") -> Sheet:
    """Every fit of a variant with its sizes, and blanks to fill in by hand beside them."""
    if variant not in family.variants:
        raise refusal("variant", f"the family has no variant {variant!r}; it has {', '.join(family.variants)}")
    fits = fits_of(family)
    if not fits:
        raise refusal("fit", "the record has no fits; add [[fit]] tables", "MISSING")
    unit = UNITS_IN_WORDS[like.unit.sign if like else "mm"]
    return Sheet(
        title=title or f"Fit sheet: {variant}",
        story=story,
        answer=f"{len(fits)} fits of {variant}, new sizes at 20 °C in {unit}. Let parts and instruments lie together until they are alike warm, write what you measure, subtract shaft from bore.",
        tables=[_bench_table(fit, variant, like) for fit in fits],
        not_checked=["Anything: this sheet states what to compare with. trainwright fit judges what was measured."],
        cards=["fit.clearance"],
        form=(*FORM, "temperature"),
        data={"variant": variant, "fits": [_bench_data(fit, variant) for fit in fits]},
    )


def _bench_table(fit: RecordedFit, variant: str, like: Typed | None) -> Table:
    clearance = fit.clearance(shaft_of=variant, bore_of=variant)

    def row(label: str, limits: Limits) -> Row:
        return Row((label, number_as(limits.lower, like, FIT), number_as(limits.upper, like, FIT), BLANK, BLANK))

    rows = [row(f"{fit.shaft} (shaft)", clearance.shaft_mm), row(f"{fit.bore} (bore)", clearance.bore_mm), row("clearance, new", clearance.clearance_mm)]
    note = f"A {fit.kind} fit; in service at most {number_as(fit.limit_mm, like, FIT)}."
    if fit.has_bushing:
        note += " A bushing is pressed in: measure its bore in place."
    return Table(fit.name, ("part", ">least", ">greatest", "measured", "instrument"), rows, note)


def _bench_data(fit: RecordedFit, variant: str) -> dict[str, Any]:
    clearance = fit.clearance(shaft_of=variant, bore_of=variant).as_dict()
    return {"fit": fit.name, "kind": fit.kind, "shaft": fit.shaft, "bore": fit.bore, "length_mm": fit.length_mm, **clearance}


# ---- tolerance classes


def limits_sheet(found: IsoFit | IsoLimits, asked: str) -> Sheet:
    """Limits of a tolerance class, or of both parts of a fit with their clearance."""
    sizes = [found.hole, found.shaft] if isinstance(found, IsoFit) else [found]
    rows = [_limits_row(limits) for limits in sizes]
    answer = f"{asked}: {_as_range(sizes[0].size_mm, None)}."
    if isinstance(found, IsoFit):
        clearance = found.clearance.clearance_mm
        answer = f"{asked}: clearance {_as_range(clearance, None)}." if clearance.lower >= 0 else f"{asked}: from {show(-clearance.lower, 'mm', FIT)} interference to {_end(clearance.upper)}."
    return Sheet(
        title=f"Limits of {asked}",
        answer=answer,
        tables=[Table("Sizes at 20 °C", ("part", ">from nominal, mm", ">to, mm", ">least mm", ">greatest mm", ">least in", ">greatest in"), rows)],
        not_checked=[
            "Form: a size within its limits may still be out of round or tapered.",
            *(["The half micrometer of js: older tables round it down from grade 7 on."] if "js" in asked.lower() else []),
        ],
        cards=["fit.iso_limits", "fit.clearance"],
        data={"asked": asked, **found.as_dict()},
    )


def _end(clearance_mm: float) -> str:
    return f"{show(clearance_mm, 'mm', FIT)} clearance" if clearance_mm > 0 else f"{show(-clearance_mm, 'mm', FIT)}"


def _limits_row(limits: IsoLimits) -> Row:
    least, greatest = limits.size_mm.lower, limits.size_mm.upper
    deviations = [("+" if value > 0 else "") + number(value, 4) for value in (limits.lower_deviation_mm, limits.upper_deviation_mm)]
    inches = [number(mm_to_in(value), 5) for value in (least, greatest)]
    return Row(("hole" if limits.hole else "shaft", *deviations, number(least, 4), number(greatest, 4), *inches))
