"""Measured sizes of fits: which fit and side a name means, and how well it was measured."""

from __future__ import annotations

from collections.abc import Iterator
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
    instrument: str | None = None
    """Of the record, where the reading has no uncertainty of its own."""


def names_a_fit(family: Family, name: str) -> bool:
    """Whether any fit has a size of this name."""
    return bool(_places(family.as_dict(), name))


def fit_sides(family: Family, instruments: Instruments | None, name: str, size: Reading | float) -> list[FitSide]:
    """The sides of fits that a size belongs to: by the name that the record gives it, or as ``fit.part``. A plain number is
    millimeters as the instrument of the record shows them."""
    written = family.as_dict()
    places = _places(written, name)
    if not places:
        known = dict.fromkeys(entry[f"{side}_size"] for entry in written["fit"] for side in ("shaft", "bore") if entry.get(f"{side}_size"))
        example = f"{written['fit'][0]['id']}.{written['fit'][0]['shaft']}" if written["fit"] else "fit.part"
        raise refusal(name, f"no fit has a size {name!r}; known: {', '.join(known) or 'none'}; or name the fit and the part, as {example}")
    found = []
    for entry, side in places:
        if isinstance(size, Reading):
            found.append(FitSide(entry["id"], side, entry[side], size))
        else:
            instrument, shop = _instrument(written, instruments, name, entry, side)
            found.append(FitSide(entry["id"], side, entry[side], _reading(shop, instrument, size, entry[f"{side}_mm"]), instrument))
    return found


def _places(written: dict[str, Any], name: str) -> list[tuple[dict[str, Any], str]]:
    return [(entry, side) for entry in written["fit"] for side in ("shaft", "bore") if name in _names(written, entry, side)]


def _names(written: dict[str, Any], entry: dict[str, Any], side: str) -> Iterator[str]:
    """What the side of a fit is called: by the fit, by evidence of the same size on the same part, and always ``fit.part``."""
    yield f"{entry['id']}.{entry[side]}"
    if name := entry.get(f"{side}_size"):
        yield name
    else:
        yield from (size["id"] for size in written["evidence_measured"] if size["carrier"] == entry[side] and size["size_mm"] == entry[f"{side}_mm"])


def _instrument(written: dict[str, Any], instruments: Instruments | None, name: str, entry: dict[str, Any], side: str) -> tuple[str, Instruments]:
    evidence = (size["instrument"] for size in written["evidence_measured"] if size["id"] == name)
    instrument = entry.get(f"{side}_instrument") or next(evidence, None)
    if instruments and instrument:
        return str(instrument), instruments
    why = "give the record of the instruments (--instruments)" if instrument else f"the record names no instrument for it ({side}_instrument of the fit {entry['id']})"
    raise refusal(name, f"its uncertainty is not known: {why}, or give it with the reading, as 43.988mm±0.002mm")


def _reading(instruments: Instruments, instrument: str, size: float, limits_mm: dict[str, list[float]]) -> Reading:
    """As the instrument shows it. A record that asks for a size beyond its instrument is its own fault, noted by its check: the
    reading keeps the uncertainty that the instrument has inside its range."""
    known = instruments.as_dict()["instrument"].get(instrument) or {}
    low, high = known.get("range_mm") or (0.0, float("inf"))
    beyond = any(not low <= limit <= high for pair in limits_mm.values() for limit in pair)
    return Reading(value=size, u=known["u_mm"]) if beyond and "u_mm" in known else instruments.reading(instrument, size)
