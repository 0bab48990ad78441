"""Gear table of a train, its states, and computed against published ratios."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Any

from .. import hazard
from ..edge import number
from ..error import refusal
from ..sheet import Fact, Row, Sheet, Table
from ..train import Gear, State, Train
from .losses import losses_table


def ratio(gear: Gear) -> float:
    """Ratio of a gear; a record may list a gear whose elements give none."""
    if gear.ratio is None:
        raise refusal("gear", f"gear {gear.id} gives no ratio, its state is {gear.kind}: correct its closed elements", "INCONSISTENT")
    return gear.ratio


def main_gears(train: Train) -> list[Gear]:
    """The gears without those that repeat the ratio of an earlier one (engine braking, a second way to the same gear)."""
    distinct: dict[Any, Gear] = {}
    for gear in train.gears():
        distinct.setdefault(gear.ratio_exact, gear)
    return list(distinct.values())


_ASSEMBLY = {"holds": "goes together", "fails": "not as it stands", "not known": "not known"}


def gear_sheet(train: Train, *, title: str, elements: bool = True, mesh_efficiency: float | None = None) -> Sheet:
    """Ratio, exact fraction, step, torque shares and slip speeds of every gear; published ratios where the record has them.

    With the efficiency of a mesh, which the shop must state, also the losses of every gear.
    """
    table = train.gears()
    main = main_gears(train)
    forward = [gear for gear in main if ratio(gear) > 0]
    steps = {low.id: ratio(low) / ratio(high) for low, high in pairwise(forward)}
    if not forward:
        raise refusal("gear", "the record lists no forward gear; add one under [[train.gear]]")
    spread = ratio(forward[0]) / ratio(forward[-1])
    printed = any(gear.published for gear in table)
    same = {gear.id: agrees(gear) for gear in table if gear.published}
    answer = f"{len(forward)} forward ratios from {ratio(forward[0]):.4f} to {ratio(forward[-1]):.4f}, spread {spread:.2f}"
    reverse = [gear for gear in main if ratio(gear) < 0]
    answer += f", reverse {', '.join(number(ratio(gear), 4) for gear in reverse)}." if reverse else "."
    if same:
        answer += f" {sum(same.values())} of {len(same)} published ratios are reproduced to their last printed digit."
    notes = [f"Gear {gear.id}: {gear.note}" for gear in table if gear.note]
    losses = None if mesh_efficiency is None else losses_table(train, mesh_efficiency)
    friction = "Losses: ratios and shares are those of a train without friction."
    if losses:
        friction = "Losses other than those of the meshes: bearings, churning, open clutches, pump. Shares are those without friction."
    return Sheet(
        title=title,
        answer=answer,
        tables=[
            Table(
                "Ratios: input speed over output speed",
                ("gear", "closed", ">ratio", ">exact", ">step to next", *((">published", "agrees") if printed else ())),
                [_ratio_row(gear, steps, same, printed) for gear in table],
                "A ratio follows from tooth counts alone, so it is an exact fraction. " + " ".join(notes),
            ),
            *([losses[0]] if losses else []),
            *(_element_tables(train) if elements else []),
        ],
        facts=[Fact(f"assembly of {id}", _ASSEMBLY[assembly.finding], str(assembly)) for id, assembly in train.assembly().items()],
        not_checked=[friction, "Strength of gears, shafts and bearings."],
        cards=["train.solve", "train.assembly", *(["train.losses", "train.power_flow"] if losses else [])],
        how=[
            forward[0].explain(),
            *(assembly.explain() for assembly in [*train.assembly().values()][:1]),
            *([forward[0].losses(external=mesh_efficiency, internal=mesh_efficiency, load="drive").explain(), forward[0].power_flow().explain()] if losses and mesh_efficiency else []),
        ],
        data={
            "gears": [_gear_data(gear, steps, same) for gear in table],
            "spread": spread,
            **({"losses": losses[1]} if losses else {}),
        },
    )


def agrees(gear: Gear) -> bool:
    """Whether the computed ratio, rounded as the published one is, equals it."""
    printed = (gear.published or "").replace("−", "-")
    decimals = len(printed.partition(".")[2])
    return f"{ratio(gear):.{decimals}f}" == f"{float(printed):.{decimals}f}"


def _ratio_row(gear: Gear, steps: dict[str, float], same: dict[str, bool], printed: bool) -> Row:
    step = number(steps[gear.id], 3) if gear.id in steps else ""
    cells = (gear.id, " ".join(gear.closed), number(ratio(gear), 4), str(gear.ratio_exact).replace("-", "−"), step)
    if not printed:
        return Row(cells)
    verdict = {True: "yes", False: "NO", None: ""}[same.get(gear.id)]
    return Row((*cells, (gear.published or "").replace("-", "−"), verdict), "NO-GO" if verdict == "NO" else "")


def _element_tables(train: Train) -> list[Table]:
    return [
        _element_table(
            "Torque shares: torque in each closed element, per N·m of turbine torque", train, "shares",
            "Sign: of the torque on the first member that the element joins. ·: open.",
        ),
        _element_table(
            "Slip speeds of the open elements, per 1/min of the input", train, "slips",
            "Sign: speed of the first member that the element joins, less that of the second. ·: closed. 0: open, but other closed "
            "elements keep both sides at one speed.",
        ),
    ]  # fmt: skip


def _element_table(title: str, train: Train, what: str, note: str) -> Table:
    """Shares of the closed elements or slips of the open ones, a row for each gear."""
    rows = []
    for gear in train.gears():
        values = getattr(gear, what)
        shown = [element for element in train.elements if (element in gear.closed) == (what == "shares")]
        cells = {element: _element_cell(values[element]) for element in shown}
        rows.append(Row((gear.id, *(cells.get(element, "·") for element in train.elements))))
    if any("?" in row.cells for row in rows):
        note += " ?: the closed elements repeat one another, so statics cannot tell."
    return Table(title, ("gear", *(f">{element}" for element in train.elements)), rows, note)


def _element_cell(value: float | None) -> str:
    if value is None:
        return "?"
    return number(value, 3) if value else "0"


def _gear_data(gear: Gear, steps: dict[str, float], same: dict[str, bool]) -> dict[str, Any]:
    return {
        "id": gear.id,
        "closed": gear.closed,
        "ratio": ratio(gear),
        "ratio_exact": str(gear.ratio_exact),
        "step_to_next": steps.get(gear.id),
        "published": gear.published,
        "published_agrees": same.get(gear.id),
        "efficiency": gear.efficiency,
        "shares": gear.shares,
        "slips": gear.slips,
        "speeds": gear.speeds,
    }


def state_sheet(train: Train, *, title: str, fastest: float | None = None) -> Sheet:
    """Every engagement of the clutches and brakes: what it does, which gear it is, and which must never be entered.

    `fastest` is the output speed per input speed that no state may exceed; left out, that of the fastest gear.
    """
    if fastest is None and not train.gears():
        raise refusal("fastest", "the record lists no gear to take the limit from; give the output speed per input speed")
    limit = fastest if fastest is not None else max(1 / ratio(gear) for gear in train.gears())
    by_closed = {frozenset(gear.closed): gear.id for gear in train.gears()}
    found = train.states(load="none")
    rows, forbidden = [], []
    for state in found:
        gear = by_closed.get(frozenset(state.closed), "")
        over = state.overspeeds(output_per_input=limit)
        if over:
            forbidden.append(state)
        rows.append(_state_row(state, gear, over))
    order = {"gear": 0, "tied up": 1, "output held": 2, "input held": 3, "neutral": 4}
    ranked = sorted(zip(rows, found), key=lambda pair: (order[pair[1].kind], -(pair[1].ratio or 0)))
    counts = train.state_counts(load="none")
    said = [f"{n} {_said(kind, n)}" for kind, n in counts.items() if n]
    answer = f"Of {len(found)} engagements {', '.join(said)}."
    for state in forbidden:
        if state.ratio:
            answer += f" Forbidden: {' '.join(state.closed)} would drive the output at {1 / state.ratio:.2f} times the input."
    return Sheet(
        title=title,
        answer=answer,
        tables=[
            Table("Every engagement of clutches and brakes; one-way clutches free", ("closed", "does", ">ratio", "gear", "remark"),
                  [row for row, state in ranked if state.kind != "neutral"],
                  f"The other {counts['neutral']} are neutral."),
            _shifts(train),
        ],
        facts=[Fact("limit for forbidden", f"{limit:.3f}", "output speed per input speed; the fastest gear unless another is given")],
        not_checked=[
            "What a one-way clutch adds under drive: see the gears that list one.",
            "Overload: only the output speed decides what is called forbidden here.",
        ],
        cautions=[hazard.caution("overspeed")] if forbidden else [],
        cards=["train.solve"],
        data={
            "counts": counts,
            "fastest_output_per_input": limit,
            "states": [
                {"closed": state.closed, "kind": state.kind, "ratio": state.ratio, "mobility": state.mobility,
                 "gear": by_closed.get(frozenset(state.closed)), "forbidden": state.overspeeds(output_per_input=limit)}
                for state in found
            ],
        },
    )  # fmt: skip


def _state_row(state: State, gear: str, forbidden: bool) -> Row:
    shown = "" if state.ratio is None else number(state.ratio, 4)
    remark = f"FORBIDDEN: output at {1 / state.ratio:.2f} times the input" if forbidden and state.ratio else ""
    mark = "forbidden" if forbidden else "governs" if gear else ""
    return Row((" ".join(state.closed) or "nothing", state.kind, shown, gear, remark), mark)


def _said(kind: str, count: int) -> str:
    verb = "is" if count == 1 else "are"
    return {"gear": "gives a ratio" if count == 1 else "give a ratio", "input held": "hold the input", "output held": "hold the output"}.get(
        kind, f"{verb} {kind}"
    )


def _shifts(train: Train) -> Table:
    forward = [gear for gear in main_gears(train) if ratio(gear) > 0]
    rows = []
    for low, high in pairwise(forward):
        released = [element for element in low.closed if element not in high.closed]
        applied = [element for element in high.closed if element not in low.closed]
        single = len(released) == len(applied) == 1
        rows.append(
            Row(
                (f"{low.id} to {high.id}", " ".join(released) or "nothing", " ".join(applied) or "nothing",
                 number(ratio(low) / ratio(high), 3), "one for one" if single else "more than one element changes"),
                "" if single else "NOT PROVEN",
            )
        )  # fmt: skip
    return Table("Upshifts", ("shift", "releases", "applies", ">step", "remark"), rows)


def published_sheet(trains: Mapping[str, Train]) -> Sheet:
    """Computed beside published ratios for many trains, given by title."""
    tables, data, agreeing, total, others = [], [], 0, 0, []
    for title, train in trains.items():
        printed = [gear for gear in train.gears() if gear.published]
        same = {gear.id: agrees(gear) for gear in printed}
        total, agreeing = total + len(same), agreeing + sum(same.values())
        others += [
            f"{title}, gear {gear.id}: computed {number(ratio(gear), 4)}, published {gear.published}; {gear.note or 'not explained'}."
            for gear in printed
            if not same[gear.id]
        ]
        computed = Row(("computed", *(number(ratio(gear), 4) for gear in printed)))
        published = Row(("published", *((gear.published or "").replace("-", "−") + ("" if same[gear.id] else " ✕") for gear in printed)))
        note = " ".join(text.rstrip(".") + "." for text in (train.source, train.note) if text)
        tables.append(Table(title, ("gear", *(f">{gear.id}" for gear in printed)), [computed, published], note))
        data.append({"title": title, "source": train.source, "gears": [_gear_data(gear, {}, same) for gear in printed]})
    answer = f"{agreeing} of {total} published ratios of {len(trains)} gear trains are reproduced to their last printed digit."
    if others:
        answer += " The rest: " + " ".join(others)
    return Sheet(
        title="Published gear trains: computed and published ratios",
        answer=answer,
        tables=tables,
        not_checked=["Tooth counts that a source does not print were fitted to some of its ratios; the note of each train says which."],
        cards=["train.solve"],
        data={"trains": data, "agreeing": agreeing, "of": total},
    )
