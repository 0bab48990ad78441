"""Everything that can be looked at on a unit of a family."""

from __future__ import annotations

from ...edge import number
from ...identify import Look
from ...record import Family, Instruments
from ...sheet import Decision, Row, Sheet, Table
from ..interchange import plain


def in_percent(chance: float) -> str:
    """A chance, never rounded up to certainty."""
    return Decision("", "", chance, "").percent


def look_sheet(family: Family, instruments: Instruments | None, *, title: str) -> Sheet:
    """Everything that can be looked at, with what each variant shows."""
    looks = family.looks(instruments=instruments)
    marks = [look for look in looks if look.chance is not None]
    sizes = [look for look in looks if look.size_mm is not None]
    variants = family.variants
    mark_rows = [
        Row((look.id, f"{look.text}; on the {plain(look.part)}", number(look.minutes, 0), *(in_percent(look.chance[of]) for of in variants)))
        for look in marks
        if look.chance
    ]
    size_rows = [Row((look.id, f"{look.text}; of the {plain(look.part)}", number(look.minutes, 0), _tool(look))) for look in sizes]
    limit_rows = [
        Row((look.id, *(f"{look.size_mm[of].lower:.3f} to {look.size_mm[of].upper:.3f}" for of in variants))) for look in sizes if look.size_mm
    ]
    tables = [
        Table("Marks: --seen NAME or --not-seen NAME", ("name", "what to look for", ">min", *(f">{of}" for of in variants)), mark_rows,
              "Under the variants: chance that an untouched unit shows it."),
        Table("Sizes: --measured NAME=VALUE", ("name", "what to measure", ">min", "with"), size_rows),
        Table("Limits of these sizes, mm", ("name", *(f">{of}" for of in variants)), limit_rows),
    ]  # fmt: skip
    return Sheet(
        title=title,
        answer=f"{len(marks)} marks and {len(sizes)} sizes on {len({look.part for look in looks})} parts.",
        tables=[table for table in tables if table.rows],
        data={"looks": [{"id": look.id, "part": look.part, "minutes": look.minutes, "instrument": look.instrument} for look in looks]},
    )


def _tool(look: Look) -> str:
    return "" if look.instrument is None else plain(look.instrument) + (f", u {look.u_mm:g} mm" if look.u_mm else "")
