"""A screening as a sheet: the trucks that come first, and what to know of the rest."""

from __future__ import annotations

from ..edge import number
from ..fleet.screening import Screening
from ..sheet import Fact, Row, Sheet, Table

RANKED_BY = {
    "damage": "damage of the worst gear set",
    "over_rating": "hours over the rating",
    "low_margin": "hours of little margin",
    "hot": "hours of hot fluid",
    "fluid_life": "fluid life used",
}


def screening_sheet(found: Screening, *, top: int, title: str) -> Sheet:
    """The first trucks, then their reasons; the numbers of all of them as data."""
    table = found.columns()
    shown = min(top, len(found))
    rows, reasons = [], []
    for place in range(shown):
        line = {name: values[place] for name, values in table.items()}
        interval = str(line["rank"]) if line["rank_best"] == line["rank_worst"] else f"{line['rank']} ({line['rank_best']} to {line['rank_worst']})"
        damage = f"{line['worst_damage']:.2g}" if line["worst_damage"] == line["worst_damage"] else "not formed"
        hours = [_hours(line[name]) for name in ("over_rating_h", "low_margin_h", "hot_h", "known_h", "unknown_h")]
        mark = "" if line["reason"] == "nothing stands out" else "governs"
        rows.append(Row((interval, str(line["truck"]), damage, str(line["worst_set"] or ""), *hours), mark))
        reasons.append(Row((str(line["truck"]), line["reason"], line["action"]), mark))
    columns = ("place", "truck", ">damage", "of", ">h over", ">h low", ">h hot", ">h known", ">unknown")
    note = f"{len(found) - shown:,} more trucks are in the file that --out writes." if len(found) > shown else ""
    return Sheet(
        title=title,
        answer=_answer(found, table),
        tables=[Table(f"Trucks by {RANKED_BY[found.by]}", columns, rows, note), Table("Why, and what to do", ("truck", "why", "what to do"), reasons)] if rows else [],
        facts=[
            Fact("rows", f"{found.rows:,}", "samples seen, used or not"),
            Fact("trucks", f"{len(found):,}", f"{int((table['over_rating_h'] > 0).sum()):,} of them over a rating at some time"),
            Fact("known", f"{table['known_h'].sum():,.0f} h", f"and {table['unknown_h'].sum():,.0f} h unknown: gaps and values that cannot be used, neither rest nor use"),
        ],
        not_checked=found.remarks,
        cautions=list(found.cautions),
        data=found.as_dict(),
    )  # fmt: skip


def _hours(value: float) -> str:
    return number(value, 1) if value == value else "not formed"


def _answer(found: Screening, table: dict) -> str:  # type: ignore[type-arg]
    if not len(found):
        return "No rows, so no truck can be judged."
    first = f"{table['truck'][0]} comes first: {table['reason'][0]}."
    stopped = "" if found.finished else "STOPPED before the end: this is the list of what was read so far. "
    if table["action"][0] == "none":
        return f"{stopped}{first}"
    return f"{stopped}{first} To do: {table['action'][0]}."
