"""Which shim, ring or plate to fit: by nearest target and by least risk, cold and warm, and what the piston then travels."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf
from typing import Any

from .. import Explanation, hazard, units
from ..clutch import Annulus
from ..edge import FIT, Typed, number, number_as, show, show_as, span_as
from ..error import refusal
from ..judge import Limits, Reading, Rule, judge
from ..record import Family
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..stack import HotPlay, Piece, PieceChoice, PieceList, PieceOutcome, PistonStroke, Selection, apply_fill
from . import RULE
from .chain import Part, chained, gain_worked, gains_of, judged_decision, measure_data, measure_table, measured_part, settle_words, spread_facts

RULES = ("nearest target", "least risk")
"""The rules of choice."""

HALF_A_THOUSANDTH_MM = units.in_to_mm(0.0005)
"""Most that a size typed in inches may be off its size on the list."""


@dataclass(frozen=True)
class Warm:
    """The warm unit: what the record says of its growth, its temperature, what is wanted then, and whether that counts."""

    play: HotPlay
    temp_c: Reading
    parts_hotter_k: Reading
    window_mm: Limits
    counts: bool = False

    @property
    def stated(self) -> bool:
        """A window is wanted for the warm unit."""
        return self.window_mm.lower > -inf or self.window_mm.upper < inf


def warm(play: HotPlay, *, temp_c: Reading | None = None, parts_hotter_k: Reading | None = None, window_mm: Limits | None = None, counts: bool = False) -> Warm:
    """The record's warm unit, or another temperature and window in place of the record's."""
    exact = Reading.exact(0.0)
    return Warm(play, temp_c or Reading.exact(play.temp_c), parts_hotter_k or exact, window_mm or play.window_mm, counts)


@dataclass(frozen=True)
class Choosing:
    """A piece to choose: what it is and what it sets, the parts that leave the room for it, and the list."""

    piece: str
    result: str
    parts: Sequence[Part]
    pieces: PieceList
    by: str = RULES[0]
    warm: Warm | None = None
    rule: Rule = RULE
    like: Typed | None = None
    measured_u_mm: float | None = None
    in_place_mm: float | None = None

    def selection(self) -> Selection:
        """The selection of the core."""
        grown = self.warm.play.growth.grown(temp_c=self.warm.temp_c, train_hotter_k=self.warm.parts_hotter_k) if self.warm else None
        return Selection(
            room_mm=chained(self.parts).reading_mm, window_mm=self.pieces.window_mm, target_mm=self.pieces.target_mm,
            growth_mm=grown.growth_mm if grown else Reading.exact(0.0), hot_window_mm=self.warm.window_mm if self.warm else Limits(),
            rule=self.rule, by=self.by, hot_counts=bool(self.warm and self.warm.counts),
        )  # fmt: skip

    def outcomes(self) -> list[PieceOutcome]:
        """What every piece of the list leaves."""
        selection = self.selection()
        return [selection.outcome(piece) for piece in self.pieces.pieces]

    def with_piece(self, outcome: PieceOutcome) -> list[Part]:
        """The parts with this piece in place."""
        return [*self.parts, measured_part(self.piece, -1, outcome.piece.thickness_mm, "by the list")]

    def length(self, value: float | Reading) -> str:
        """A length in the unit that was typed, as fits are shown."""
        return show_as(value, self.like, FIT)

    def short(self, value: float) -> str:
        """The same without its unit."""
        return number_as(value, self.like, FIT)

    def plain(self, value: float) -> str:
        """The same in that unit alone, for a sentence with many of them."""
        return f"{self.short(value)} {self.unit}"

    def span(self, limits: Limits) -> str:
        """Two lengths."""
        return f"{self.short(limits.lower)} to {self.plain(limits.upper)}"

    @property
    def unit(self) -> str:
        """Sign of the unit that was typed."""
        return self.like.unit.sign if self.like else "mm"

    @property
    def rule_of_choice(self) -> str:
        """The rule in words."""
        return f"{self.by}, cold and warm together" if self.warm and self.warm.counts else self.by


def on_list(pieces: PieceList, typed: Typed) -> Piece | None:
    """The piece of this thickness; where another unit was typed than the list has, to within the rounding of what was typed."""
    size = typed.reading.value
    converted = typed.unit.sign != "mm"
    rounding = 1e-6 + (min(HALF_A_THOUSANDTH_MM, typed.unit.difference_to_inside(0.5 * 10.0**-typed.decimals)) if converted else 0.0)
    nearest = min(pieces.pieces, key=lambda piece: abs(piece.thickness_mm.value - size))
    return nearest if abs(nearest.thickness_mm.value - size) <= rounding else None


def without(pieces: PieceList, missing: Sequence[Typed]) -> PieceList:
    """The list with these sizes out of stock."""
    found = [on_list(pieces, typed) for typed in missing]
    for piece, typed in zip(found, missing):
        if piece is None:
            sizes = ", ".join(number_as(listed.thickness_mm.value, typed, FIT) for listed in pieces.pieces)
            raise refusal("missing", f"{show_as(typed.reading.value, typed)} is not on the list, which has {sizes} {typed.unit.sign}")
    return pieces.without([piece.thickness_mm.value for piece in found if piece])


def fitted_part(name: str, fitted: Typed, pieces: PieceList) -> Part:
    """The piece in place while the reading was taken: as the list has it, unless its size was typed with an uncertainty."""
    piece = on_list(pieces, fitted)
    if fitted.reading.u or piece is None:
        return measured_part(name, 1, fitted.reading)
    return measured_part(name, 1, piece.thickness_mm, "by the list")


def choice_sheet(choosing: Choosing, *, title: str, story: str = "") -> Sheet:
    """Which piece to fit, why the two rules differ where they do, and what to measure first."""
    selection = choosing.selection()
    pieces = choosing.pieces.pieces
    choice = selection.choose(pieces)
    outcomes = choosing.outcomes()
    decisions: list[Decision] = []
    tables = [_pieces_table(choosing, choice, outcomes)]
    facts: list[Fact] = []
    data: dict[str, Any] = {
        "rule": choosing.rule_of_choice,
        "choice": choice.as_dict(),
        "room": chained(choosing.parts).as_dict(),
        "pieces": [outcome.as_dict() for outcome in outcomes],
    }
    if choice.found:
        chosen = outcomes[choice.position]
        parts = choosing.with_piece(chosen)
        found = chained(parts)
        gains = gains_of(chosen.cold, found.budget, choosing.measured_u_mm)
        settle = settle_words(parts, gains, chosen.cold, choosing.like)
        about = f"{choosing.result} with {choosing.piece} {choosing.length(chosen.piece.thickness_mm.value)}"
        decisions.append(judged_decision(about, chosen.cold, choosing.like, settle, choosing.rule))
        if choosing.warm and choosing.warm.stated:
            decisions.append(judged_decision(f"{about}, warm", chosen.hot, choosing.like, rule=choosing.rule))
        tables.append(measure_table(parts, gains, chosen.cold, choosing.measured_u_mm, choosing.like))
        facts += spread_facts(found, choosing.like, choosing.result)
        data["measure"] = measure_data(parts, gains)
    facts += [
        *(Fact(part.name, choosing.length(Reading(value=part.link.value_mm, u=part.link.u_mm)), f"{_counts(part.link.sensitivity)}; {part.known}") for part in choosing.parts),
        Fact("wanted", span_as(choosing.pieces.window_mm.lower, choosing.pieces.window_mm.upper, choosing.like, FIT), f"{choosing.result} by the record"),
        Fact("would hit the target", choosing.length(choice.wanted_mm), f"thickness that leaves {choosing.length(choosing.pieces.target_mm)}"),
        *_warm_facts(choosing),
    ]  # fmt: skip
    if choosing.warm:
        data["warm"] = {"temp_c": choosing.warm.temp_c.as_dict(), "growth_mm": selection.growth_mm.as_dict()}
    exact = [part.name for part in choosing.parts if not part.link.u_mm]
    return Sheet(
        title=title,
        story=story,
        answer=_answer(choosing, choice, outcomes),
        decisions=decisions,
        tables=tables,
        facts=facts,
        not_checked=[f"How well these are known: {', '.join(exact)}. They are taken as exact; add ± what you know."] if exact else [],
        cards=["stack.choose", "stack.outcome", "stack.chain", "stack.what_to_measure", *(["stack.grown"] if choosing.warm else [])],
        how=_how(choosing, choice, outcomes),
        data=data,
    )


def _how(choosing: Choosing, choice: PieceChoice, outcomes: Sequence[PieceOutcome]) -> list[Explanation]:
    """The choice worked out: the room, what the chosen piece leaves, and what warming up adds."""
    selection = choosing.selection()
    room = chained(choosing.parts)
    worked = [choice.explain(room_mm=room.reading_mm, target_mm=selection.target_mm), room.explain()]
    if choice.found:
        chosen = outcomes[choice.position]
        judged: dict[str, Any] = {
            f"{name}.{field}": value
            for name, judgment in (("cold", chosen.cold), ("hot", chosen.hot))
            for field, value in (("reading", judgment.reading), ("chance", judgment.chance))
        }
        worked.append(chosen.explain(room_mm=selection.room_mm, growth_mm=selection.growth_mm, **judged))
        parts = choosing.with_piece(chosen)
        budget = chained(parts).budget
        worked.append(gain_worked(parts, gains_of(chosen.cold, budget, choosing.measured_u_mm)[0], chosen.cold, budget))
    warm = choosing.warm
    if warm:
        growth = warm.play.growth
        known: dict[str, Any] = {name: getattr(growth, name) for name in growth.as_dict()}
        worked.append(growth.grown(temp_c=warm.temp_c, train_hotter_k=warm.parts_hotter_k).explain(temp_c=warm.temp_c, train_hotter_k=warm.parts_hotter_k, **known))
    return worked


def _counts(sensitivity: float) -> str:
    times = "" if abs(sensitivity) == 1 else f" {abs(sensitivity):g} times"
    return ("opens the room" if sensitivity > 0 else "fills it") + times


def _answer(choosing: Choosing, choice: PieceChoice, outcomes: Sequence[PieceOutcome]) -> str:
    mm = choosing.plain
    window = choosing.span(choosing.pieces.window_mm)
    both = f" cold and {choosing.span(choosing.warm.window_mm)} warm" if choosing.warm and choosing.warm.counts else ""
    missing = mm(outcomes[choice.missing].piece.thickness_mm.value) if choice.missing_better else ""
    if not choice.found:
        if choice.inside_mm.lower > choice.inside_mm.upper:
            would = "No thickness would: cold and warm exclude each other."
        else:
            would = f"A thickness of {choosing.span(choice.inside_mm)} would; {mm(choice.wanted_mm)} hits the {mm(choosing.pieces.target_mm)} aimed at."
        absent = f" {missing} would do, but is not in stock." if missing else ""
        return f"No {choosing.piece} in stock leaves {window}{both}. {would}{absent}"
    chosen, near, safe = (outcomes[at] for at in (choice.position, choice.nearest_target, choice.least_risk))
    said = [
        f"Fit {choosing.piece} {mm(chosen.piece.thickness_mm.value)}: it leaves {mm(chosen.cold.reading.value)} of {choosing.result} "
        f"({window}{both} wanted, {mm(choosing.pieces.target_mm)} aimed at). Rule of the choice: {choosing.rule_of_choice}."
    ]
    if choice.nearest_target == choice.least_risk:
        said.append(f"{RULES[1 - RULES.index(choosing.by)].capitalize()} chooses the same.")
    else:
        said.append(_why_they_differ(choosing, near, safe))
    if missing:
        said.append(f"{missing} would be chosen before it, but is not in stock.")
    if choosing.warm:
        said.append(_warm_words(choosing, *((chosen,) if near is safe else (chosen, safe if chosen is near else near))))
    return " ".join(said)


def _why_they_differ(choosing: Choosing, near: PieceOutcome, safe: PieceOutcome) -> str:
    """What the other rule would choose, and why."""
    mm = choosing.plain
    by_target = choosing.by == RULES[0]
    chosen, other = (near, safe) if by_target else (safe, near)
    off = f"{mm(other.off_target_mm)} against {mm(chosen.off_target_mm)}"
    chances = f"{_chance(other.chance)} against {_chance(chosen.chance)}"
    middle = safe.off_middle_mm < near.off_middle_mm
    rule, target, risk = (
        ("Least risk", "farther from", "but nearer the middle of the window" if middle else "but surer") if by_target
        else ("Nearest target", "nearer to", "but farther from the middle of the window" if middle else "but less sure")
    )  # fmt: skip
    return (
        f"{rule} would choose {mm(other.piece.thickness_mm.value)}, which leaves {mm(other.cold.reading.value)}: {target} the target "
        f"({off}), {risk}, so that its chance of lying inside is {chances}."
    )


def _chance(chance: float) -> str:
    """A chance near certainty with the digits that tell two of them apart."""
    return f"{number(100 * chance, 1)} %" if chance <= 0.999 else f"{100 * chance:.4f} %" if chance < 0.9999995 else "> 99.9999 %"


def _warm_words(choosing: Choosing, *outcomes: PieceOutcome) -> str:
    warm = choosing.warm
    assert warm
    mm = choosing.plain
    window = warm.window_mm if warm.stated else choosing.pieces.window_mm
    leaves = " and ".join(f"{mm(outcome.piece.thickness_mm.value)} leaves {mm(outcome.hot.reading.value)}" for outcome in outcomes)
    words = f"Warm, at {show(warm.temp_c.value, 'c', 0)}, {leaves}"
    if warm.counts:
        return f"{words}."
    inside = [outcome for outcome in outcomes if window.holds(outcome.hot.reading.value)]
    what = f"the {choosing.span(window)} wanted warm" if warm.stated else f"the {choosing.span(window)} of the cold unit"
    if len(outcomes) > 1 and len(inside) == 1:
        words += f": that speaks for {mm(inside[0].piece.thickness_mm.value)}, which alone stays within {what}."
    elif warm.stated:
        words += f": {'within' if len(inside) == len(outcomes) else 'outside'} {what}."
    else:
        words += "."
    return words if warm.stated else f"{words} No window is stated for the warm unit."


def _warm_facts(choosing: Choosing) -> list[Fact]:
    warm = choosing.warm
    if not warm:
        return []
    grown = warm.play.growth.grown(temp_c=warm.temp_c, train_hotter_k=warm.parts_hotter_k)
    hotter = f", the parts {number(warm.parts_hotter_k.value, 0)} K hotter than the case" if warm.parts_hotter_k.value else ", soaked through"
    why = f"case grows {choosing.short(grown.case_mm)}, parts {choosing.length(grown.train_mm)}, from {number(warm.play.growth.reference_c, 0)} to {show(warm.temp_c.value, 'c')}{hotter}"
    return [Fact("warming up adds", choosing.length(grown.growth_mm), why)]


def _pieces_table(choosing: Choosing, choice: PieceChoice, outcomes: Sequence[PieceOutcome]) -> Table:
    rows = []
    for place, outcome in enumerate(outcomes):
        notes = [
            *(["fit this"] if choice.found and place == choice.position else []),
            *(["nearest target"] if choice.found and place == choice.nearest_target else []),
            *(["least risk"] if choice.found and place == choice.least_risk else []),
            *([] if outcome.piece.in_stock else ["not in stock"]),
            *(["in place as read"] if choosing.in_place_mm is not None and abs(outcome.piece.thickness_mm.value - choosing.in_place_mm) < 1e-6 else []),
        ]
        cold, hot = outcome.cold, outcome.hot
        cells = [choosing.short(outcome.piece.thickness_mm.value), choosing.short(cold.reading.value), choosing.short(2 * cold.reading.u), _percent(cold.chance), cold.verdict]
        if choosing.warm:
            cells.append(choosing.short(hot.reading.value))
        if choosing.warm and choosing.warm.stated:
            cells += [_percent(hot.chance), hot.verdict]
        mark = "governs" if "fit this" in notes else "quiet" if cold.verdict == "NO-GO" else ""
        rows.append(Row((*cells, ", ".join(notes)), mark))
    columns = [f">{choosing.piece} {choosing.unit}", f">leaves {choosing.unit}", ">± 2u", ">chance inside", "verdict"]
    if choosing.warm:
        columns.append(">warm")
    if choosing.warm and choosing.warm.stated:
        columns += [">chance warm", "verdict warm"]
    return Table(f"Each {choosing.piece} against the {choosing.span(choosing.pieces.window_mm)} wanted", (*columns, "remark"), rows)


def _percent(chance: float) -> str:
    return Decision("", "", chance, "").percent


def shim_sheet(choosing: Choosing, *, title: str, story: str = "") -> Sheet:
    """The shim of an end play."""
    sheet = choice_sheet(choosing, title=title, story=story)
    sheet.not_checked.extend([
        "Thrust bearings: one that is missing, or upside down, shows as end play that no shim should fill.",
        "Drag of seals: a shaft that is not moved to both ends shows too little play. Pull and push until the reading repeats.",
        "The height of every changed part, race and gasket: each counts in the gap.",
        *([] if choosing.warm else ["The warm unit: an aluminum case outgrows a steel train, and the end play grows with it."]),
    ])
    return sheet


@dataclass(frozen=True)
class Piston:
    """The piston of a pack: its stroke but for the clearance, its face, and the flow that fills it, if known."""

    stroke: PistonStroke | None = None
    face: Annulus | None = None
    flow_l_min: Reading | None = None


def stroke_of(family: Family, element: str, bend_mm: Reading | None = None) -> PistonStroke | None:
    """The stroke of an element at no clearance; nothing where the record does not say how far it may go, unless that is asked."""
    written = family.as_dict()["clutch"][element]
    if bend_mm is None and (written["seal_land_mm"] is None or written["bend_mm"] is None):
        return None
    return family.stroke(element, clearance_mm=Reading.exact(0.0), bend_mm=bend_mm)


def ring_sheet(choosing: Choosing, *, title: str, story: str = "", as_read_mm: Reading | None = None, piston: Piston | None = None) -> Sheet:
    """The ring or plate of a clutch pack, the clearance as it was read, and what its piston travels."""
    sheet = choice_sheet(choosing, title=title, story=story)
    piston = piston or Piston()
    if as_read_mm:
        now = judge(as_read_mm, choosing.pieces.window_mm, choosing.rule)
        sheet.decisions.insert(0, judged_decision("clearance as it was read", now, choosing.like, rule=choosing.rule))
        sheet.data["as_read"] = now.as_dict()
    choice = choosing.selection().choose(choosing.pieces.pieces)
    if choice.found:
        _add_travel(sheet, choosing, piston, choosing.outcomes()[choice.position].cold.reading)
    if not piston.stroke:
        sheet.not_checked.append("Travel of the piston against its seal land: the record does not give seal_land_mm and bend_mm of this element.")
    sheet.not_checked.extend([
        "New frictions measured dry: they swell in the fluid. Soak them first.",
        "The ring against the wrong wall of its groove: it bears on the outer wall under pressure.",
        "Number of steels and frictions, and the wave plate: one steel too many takes clearance, a wave plate left out adds some, and another ring would hide it.",
        "Drag of the open pack, and wear to come: both change with the clearance.",
    ])
    sheet.cautions.append(hazard.caution("compressed air"))
    return sheet


def _add_travel(sheet: Sheet, choosing: Choosing, piston: Piston, clearance_mm: Reading) -> None:
    """What the piston travels with the chosen piece, against its land, and the oil that takes."""
    if piston.stroke:
        known = piston.stroke
        stroke = PistonStroke(clearance_mm=clearance_mm, wave_mm=known.wave_mm, bend_mm=known.bend_mm, land_mm=known.land_mm)
        travel = stroke.piston_travel(rule=choosing.rule)
        spare = travel.judgment.reading
        about = "the seal of the piston stays on its land"
        basis = f"travel {choosing.length(travel.travel_mm)} of {choosing.length(known.land_mm)}, {choosing.length(spare)} to spare."
        sheet.decisions.append(Decision(about, travel.judgment.verdict, travel.judgment.chance, basis))
        why = f"clearance, wave plate {choosing.length(known.wave_mm.value)}, bend {choosing.length(known.bend_mm.value)}"
        sheet.facts.append(Fact("piston travel", choosing.length(travel.travel_mm), why))
        sheet.cards.append("stack.piston_travel")
        sheet.how.append(travel.explain(clearance_mm=clearance_mm, wave_mm=known.wave_mm, bend_mm=known.bend_mm, land_mm=known.land_mm))
        sheet.data["travel"] = travel.as_dict()
        if piston.face and piston.flow_l_min:
            fill = apply_fill(piston.face, travel_mm=travel.travel_mm, flow_l_min=piston.flow_l_min)
            sheet.facts.append(Fact("fills with", f"{number(fill.volume_ml.value, 1)} mL", f"in {number(fill.time_s.value, 2)} s (u {number(fill.time_s.u, 2)} s) at {number(piston.flow_l_min.value, 1)} L/min, passage full and tight"))
            sheet.cards.append("stack.apply_fill")
            sheet.how.append(fill.explain(piston=piston.face, travel_mm=travel.travel_mm, flow_l_min=piston.flow_l_min))
            sheet.data["fill"] = fill.as_dict()
