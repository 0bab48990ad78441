"""Limits of a tolerance class, or of both parts of a fit."""

from __future__ import annotations

from ..edge import FIT, number, show
from ..fit import IsoFit, IsoLimits
from ..sheet import Row, Sheet, Table
from ..units import mm_to_in
from .fit.case import as_range


def limits_sheet(found: IsoFit | IsoLimits, asked: str) -> Sheet:
    """Limits of a tolerance class, or of both parts of a fit with their clearance."""
    sizes = [found.hole, found.shaft] if isinstance(found, IsoFit) else [found]
    rows = [_limits_row(limits) for limits in sizes]
    answer = f"{asked}: {as_range(sizes[0].size_mm, None)}."
    if isinstance(found, IsoFit):
        clearance = found.clearance.clearance_mm
        answer = f"{asked}: clearance {as_range(clearance, None)}." if clearance.lower >= 0 else f"{asked}: from {show(-clearance.lower, 'mm', FIT)} interference to {_end(clearance.upper)}."
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
