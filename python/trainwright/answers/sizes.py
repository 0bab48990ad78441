"""Measured sizes of fits: which fit and side a name means, and how well it was measured."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from ..error import refusal
from ..judge import Reading
from ..record import Family, Instruments


@dataclass(frozen=True)
class FitSide:
    """A measured side of a fit."""

    fit: str
    side: str
    """``"shaft"`` or ``"bore"``."""
    part: str
    reading: Reading


def fit_sides(family: Family, instruments: Instruments | None, sizes: Mapping[str, Reading | float], *, known: bool = False) -> list[FitSide]:
    """The sides of fits that these sizes belong to: by the name that the record gives them, or as ``fit.part``. A plain number is
    millimeters as the instrument of the record shows them.

    ``known``: the names are evidence, and those that belong to no fit are passed over.
    """
    written = family.as_dict()
    found = []
    for name, size in sizes.items():
        sides = [(entry, side) for entry in written["fit"] for side in ("shaft", "bore") if name in _names(written, entry, side)]
        if not sides and not known:
            names = [other for entry in written["fit"] for side in ("shaft", "bore") if (other := entry.get(f"{side}_size"))]
            evidence = [entry["id"] for entry in written["evidence_measured"]]
            raise refusal(name, f"neither evidence nor a fit has a size {name!r}; known: {', '.join(dict.fromkeys([*evidence, *names])) or 'none'}; or a fit and its part, as fit.part")
        for entry, side in sides:
            found.append(FitSide(entry["id"], side, entry[side], _reading(written, instruments, name, entry, side, size)))
    return found


def _names(written: dict[str, Any], entry: dict[str, Any], side: str) -> Iterator[str]:
    """What the side of a fit is called: by the fit, by evidence of the same size on the same part, and always ``fit.part``."""
    yield f"{entry['id']}.{entry[side]}"
    if name := entry.get(f"{side}_size"):
        yield name
    else:
        same = (size["id"] for size in written["evidence_measured"] if size["carrier"] == entry[side] and size["size_mm"] == entry[f"{side}_mm"])
        yield from same


def _reading(written: dict[str, Any], instruments: Instruments | None, name: str, entry: dict[str, Any], side: str, size: Reading | float) -> Reading:
    if isinstance(size, Reading):
        return size
    evidence = (other["instrument"] for other in written["evidence_measured"] if other["id"] == name)
    instrument = entry.get(f"{side}_instrument") or next(evidence, None)
    if instruments is None or instrument is None:
        why = "give the record of the instruments" if instrument else f"the record names no instrument for it ({side}_instrument of the fit {entry['id']})"
        raise refusal(name, f"{name} has no uncertainty: {why}, or give it with the reading, as 43.988mm±0.002mm")
    return instruments.reading(instrument, size)
