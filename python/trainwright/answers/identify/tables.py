"""Tables of an identified unit: variants look by look, parts, fits, what to look at next; and the same as data."""

from __future__ import annotations

from math import isfinite
from typing import Any

from ...edge import FIT, number, number_as, show_as
from ...identify import Identification, LookMade, Part
from ...judge import Reading
from ...sheet import Row, Table
from ..interchange import plain
from .bench import Bench
from .looks import in_percent


def variant_table(bench: Bench) -> Table:
    """Every look with the chances after it."""
    unit = bench.unit
    variants = list(unit.chance)
    rows = [Row(("", "", "before any look", *(in_percent(unit.prior[of]) for of in variants)), "quiet")]
    for made in unit.made:
        found = _shown(made, bench) if isinstance(made.found, Reading) else "there" if made.found else "not there"
        mark = "governs" if made.unexplained else ""
        rows.append(Row((made.look.id, plain(made.look.part), found, *(in_percent(made.chance[of]) for of in variants)), mark))
    note = "Looks on one part count once: an exchanged part brings all its marks along. Their order does not matter to the last row."
    return Table("Chance of each variant, look by look", ("look", "on the", "found", *(f">{of}" for of in variants)), rows, note)


def _shown(made: LookMade, bench: Bench) -> str:
    """A size as it was typed."""
    assert isinstance(made.found, Reading)
    typed = bench.typed.get(made.look.id)
    return show_as(typed.reading, typed) if typed else f"{made.found.value:g} mm"


def part_table(unit: Identification) -> Table:
    """Every part that was looked at."""
    rule = unit.conclusion.rule
    rows = []
    for part in unit.parts.values():
        foreign = part.finding.foreign
        words = "foreign" if foreign >= rule.go else "belongs" if foreign <= rule.no_go else "open"
        mark = {"foreign": "NO-GO", "open": "NOT PROVEN"}.get(words, "")
        rows.append(Row((plain(part.name), part.origin, in_percent(part.finding.chance), in_percent(part.finding.exchanged), in_percent(foreign), words), mark))
    note = "Exchanged: from another unit, of whatever variant. Foreign: of another variant than this unit, which is what an order must heed."
    return Table("Where the parts came from", ("part", "from", ">chance", ">exchanged", ">foreign", "verdict"), rows, note)


def fit_table(bench: Bench) -> Table:
    """In the unit that was typed first."""
    sign = bench.like.unit.sign if bench.like else "mm"
    rows = []
    for measured in bench.fits:
        shaft, bore, clearance = measured.shaft, measured.bore, measured.clearance
        sizes = (shaft.reading.value, bore.reading.value, clearance.clearance_mm.value, clearance.judgment.limits.upper)
        cells = (*(number_as(size, bench.like, FIT) for size in sizes), number_as(clearance.clearance_mm.u, bench.like, FIT + 1))
        rows.append(Row((plain(shaft.fit), *cells, clearance.judgment.verdict), clearance.judgment.verdict))
    columns = ("fit", f">shaft {sign}", f">bore {sign}", f">clearance {sign}", f">at most {sign}", f">u of clearance {sign}", "verdict")
    return Table("Fits of which both parts were measured", columns, rows)


def next_table(unit: Identification) -> Table:
    """The looks that were not made, the one that tells most first."""
    rows: list[Row] = []
    for look in unit.next_looks:
        what, worth = look.look, look.worth
        tool = plain(what.instrument) if what.instrument else "eye"
        if worth is None:
            cells = ("?", "?")
        else:
            cells = (number(worth.bits_per_minute, 4), in_percent(worth.settles))
        rows.append(Row((what.id, plain(what.part), tool, number(what.minutes, 0), *cells), "governs" if not rows and worth and worth.bits else ""))
    note = "Bit/min: information about the variant to be expected, for each minute of labor. Settles: chance that one variant is proven afterward."
    if any(look.worth is None for look in unit.next_looks):
        note += " ?: the record of the instruments would tell how well it can be measured."
    return Table("What to look at next", ("look", "on the", "with", ">min", ">bit/min", ">settles"), rows, note)


def data_of(bench: Bench) -> dict[str, Any]:
    """The answer as data."""
    unit = bench.unit
    return {
        "outcome": unit.outcome,
        "best": unit.best,
        "chance": unit.chance,
        "chance_mixed": unit.weighed.chance_mixed,
        "entropy_bits": unit.weighed.entropy_bits,
        "looks": [
            {"id": made.look.id, "found": made.found.as_dict() if isinstance(made.found, Reading) else made.found, "chance": made.chance,
             "unexplained": made.unexplained}
            for made in unit.made
        ],
        "parts": {name: _part_data(part) for name, part in unit.parts.items()},
        "conflicts": [part.name for part in unit.conflicts],
        "fits": {
            measured.shaft.fit: {
                "clearance_mm": measured.clearance.clearance_mm.value, "u_mm": measured.clearance.clearance_mm.u,
                "limit_mm": measured.clearance.judgment.limits.upper, "verdict": measured.clearance.judgment.verdict,
            }
            for measured in bench.fits
        },
        "order": dict(bench.order.parts) if bench.order and bench.order.possible else {},
        "next_looks": [{"id": look.look.id, "minutes": look.look.minutes, **(look.worth.as_dict() if look.worth else {})} for look in unit.next_looks],
    }  # fmt: skip


def _part_data(part: Part) -> dict[str, Any]:
    finding = part.finding
    return {
        "origin": part.origin, "origins": part.origins, "chance": finding.chance, "exchanged": finding.exchanged,
        "exchanged_if_best": finding.exchanged_if_best, "foreign": finding.foreign,
        "ln_conflict": finding.ln_conflict if isfinite(finding.ln_conflict) else None,
    }  # fmt: skip
