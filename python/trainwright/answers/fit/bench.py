"""The sheet of every fit, to fill in at the bench."""

from __future__ import annotations

from typing import Any

from ...edge import FIT, Typed, number_as
from ...error import refusal
from ...fit import RecordedFit, fits_of
from ...judge import Limits
from ...record import Family
from ...sheet import BLANK, FORM, Row, Sheet, Table
from .case import UNITS_IN_WORDS


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
