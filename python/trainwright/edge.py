"""Numbers as a shop types and reads them: with their unit, in either system, shown in both, and back in the unit that was typed.

Inside, every quantity has one unit (the suffix of its name). The factors are the core's; see :mod:`trainwright.units`.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from . import units
from .error import Error, refusal
from .judge import Reading

Convert = Callable[[float], float]


def _same(value: float) -> float:
    return value


@dataclass(frozen=True)
class Unit:
    """A unit: how it is shown and typed, the decimals it is shown with, and the way to the unit inside and back."""

    sign: str
    words: tuple[str, ...]
    decimals: int
    to_inside: Convert = _same
    from_inside: Convert = _same

    def difference_to_inside(self, difference: float) -> float:
        """A difference, such as an uncertainty: the zero of the scale does not count."""
        return self.to_inside(difference) - self.to_inside(0.0)

    def difference_from_inside(self, difference: float) -> float:
        """The way back."""
        return self.from_inside(difference) - self.from_inside(0.0)


UNITS: dict[str, tuple[Unit, ...]] = {
    "kpa": (Unit("kPa", ("kpa",), 0), Unit("psi", ("psi",), 0, units.psi_to_kpa, units.kpa_to_psi)),
    "nm": (Unit("N·m", ("nm",), 0), Unit("lbf·ft", ("lbfft", "lbft", "ftlb", "ftlbf"), 0, units.lbf_ft_to_nm, units.nm_to_lbf_ft)),
    "c": (Unit("°C", ("c", "°c"), 1), Unit("°F", ("f", "°f"), 0, units.f_to_c, units.c_to_f)),
    "k": (Unit("K", ("k",), 1), Unit("°F", ("f", "°f"), 0, units.f_to_k_difference, units.k_to_f_difference)),
    "mm": (
        Unit("mm", ("mm",), 2),
        Unit("in", ("in", "inch", "inches", '"'), 3, units.in_to_mm, units.mm_to_in),
        Unit("thou", ("thou", "thousandths"), 0, units.thou_to_mm, units.mm_to_thou),
    ),
    "m": (Unit("m", ("m",), 0), Unit("ft", ("ft", "feet"), 0, lambda feet: units.in_to_mm(12 * feet) / 1000, lambda m: units.mm_to_in(1000 * m) / 12)),
    "km_h": (Unit("km/h", ("kmh", "km/h"), 1), Unit("mph", ("mph",), 1, units.mph_to_km_h, units.km_h_to_mph)),
    "kg": (Unit("kg", ("kg",), 0), Unit("lb", ("lb", "lbs"), 0, units.lb_to_kg, units.kg_to_lb)),
    "l": (
        Unit("L", ("l",), 2),
        Unit("qt", ("qt", "quart", "quarts"), 2, units.quart_to_l, units.l_to_quart),
        Unit("gal", ("gal", "gallon", "gallons"), 2, units.gallon_to_l, units.l_to_gallon),
    ),
    "n": (Unit("N", ("n",), 0), Unit("lbf", ("lbf",), 0, units.lbf_to_n, units.n_to_lbf)),
    "kw": (Unit("kW", ("kw",), 1), Unit("hp", ("hp",), 1, units.hp_to_kw, units.kw_to_hp)),
    "mpa": (Unit("MPa", ("mpa",), 0), Unit("ksi", ("ksi",), 0, units.psi_to_kpa, units.kpa_to_psi)),
    "rpm": (Unit("rpm", ("rpm",), 0),),
    "ml": (Unit("mL", ("ml",), 0),),
    "l_min": (
        Unit("L/min", ("l/min", "lmin"), 1),
        Unit("qt/min", ("qt/min", "qtmin"), 1, units.quart_to_l, units.l_to_quart),
        Unit("gal/min", ("gal/min", "galmin", "gpm"), 1, units.gallon_to_l, units.l_to_gallon),
    ),
    "pct": (Unit("%", ("%", "pct"), 1),),
    "s": (Unit("s", ("s",), 1),),
}
"""By suffix: the unit inside, then those of the shop; the first of them stands in the brackets."""

FIT = 3
"""Decimals of a fit, in millimeters: 0.001 mm, 0.0001 in, 0.1 thou."""


@dataclass(frozen=True)
class Typed:
    """A quantity as it was typed: the reading in the unit inside, the unit of the typed value, and its decimals."""

    reading: Reading
    suffix: str
    unit: Unit
    decimals: int


_BETWEEN = re.compile(r"\s*(?:±|\+/?-)\s*")
_NUMBER = re.compile(r"\s*(?P<number>[-+−]?\d*\.?\d+)\s*(?P<unit>[^\d\s].*?)?\s*")


def read(text: str, suffix: str, name: str) -> Reading:
    """A typed quantity in the unit of the suffix: ``"213psi"``, ``"75 F"``, ``"24±1 C"``. A bare number is refused where two
    systems are in use: 213 may mean psi or kPa.

    >>> read("213psi", "kpa", "gauge").value.__round__()
    1469
    >>> read("24±1C", "c", "temperature")
    Reading(value=24.0, u=1.0)
    """
    return read_typed(text, suffix, name).reading


def read_typed(text: str, suffix: str, name: str) -> Typed:
    """The same, with the unit it was typed in, so that it and what follows from it can be shown in that unit. The uncertainty
    may have its own: ``"1.7318in±0.1thou"``.

    >>> show_as(read_typed("1731.8thou", "mm", "journal").reading, read_typed("1.7318in±0.1thou", "mm", "journal"))
    '1.7318 in (43.988 mm)'
    """
    known = UNITS[suffix]
    accepted = "a number and " + " or ".join(unit.sign for unit in known)
    example = "for example " + " or ".join(f"20{unit.sign.replace('°', '').replace('·', '')}" for unit in known)

    def refused(why: str) -> Error:
        return refusal(name, f"{why}; give {accepted}, {example}", "TEXT")

    def unit_of(word: str) -> Unit:
        plain = re.sub(r"[\s·*.\-]", "", word).lower()
        for unit in known:
            if plain in unit.words:
                return unit
        raise refused(f"unit {word!r} is not accepted here")

    parts = [_NUMBER.fullmatch(part) for part in _BETWEEN.split(text, maxsplit=1)]
    value, u = parts if len(parts) == 2 else (*parts, None)
    if value is None or (len(parts) == 2 and (u is None or u["number"][0] in "-+−")):
        raise refused(f"{text!r} cannot be read")
    words = [part["unit"] for part in (value, u) if part and part["unit"]]
    if not words and len(known) > 1:
        raise refused(f"{text.strip()} has no unit")
    if u and not u["unit"] and words and len(known) > 1:
        raise refused(f"{text.strip()}: the part after ± has no unit, write it as {text.strip()}{words[0]}")
    unit = unit_of(words[0]) if words else known[0]
    spread = unit_of(words[-1]) if words else known[0]
    reading = Reading(
        value=unit.to_inside(float(value["number"].replace("−", "-"))),
        u=spread.difference_to_inside(float(u["number"])) if u else 0.0,
    )
    in_that_unit = [part for part in (value, u) if part and (part is value or spread is unit)]
    return Typed(reading, suffix, unit, max(len(part["number"].partition(".")[2]) for part in in_that_unit))


def show(value: float, suffix: str, decimals: int | None = None) -> str:
    """The value with its unit, and the shop unit in brackets.

    >>> show(1470, "kpa")
    '1470 kPa (213 psi)'
    """
    first, *others = UNITS[suffix]
    more = 0 if decimals is None else decimals - first.decimals
    text = _in_unit(value, first, more)
    return f"{text} ({_in_unit(value, others[0], more)})" if others else text


def show_as(value: float | Reading, like: Typed | None, decimals: int | None = None, *, suffix: str = "mm") -> str:
    """The value in the unit that was typed, the other system in brackets; as :func:`show` where nothing was typed.

    ``decimals`` count in the unit inside, ``FIT`` for fits; without them there are as many as were typed, and what was typed
    comes back as it was. A reading is shown with its standard uncertainty.

    >>> typed = read_typed("1.7318in", "mm", "journal")
    >>> show_as(typed.reading, typed), show_as(0.0432, typed, FIT)
    ('1.7318 in (43.988 mm)', '0.0017 in (0.043 mm)')
    """
    first, *others = UNITS[like.suffix if like else suffix]
    unit = like.unit if like else first
    more = decimals - first.decimals if decimals is not None else like.decimals - unit.decimals if like else 0
    text = _in_unit(value, unit, more)
    other = first if unit is not first else others[0] if others else None
    return f"{text} ({_in_unit(value, other, more if decimals is not None else max(more, 0))})" if other else text


def span_as(lower: float, upper: float, like: Typed | None, decimals: int | None = None, *, suffix: str = "mm") -> str:
    """A range in the unit that was typed, the other system in brackets.

    >>> span_as(0.2, 0.6, None, FIT)
    '0.200 to 0.600 mm (0.0079 to 0.0236 in)'
    """

    def apart(value: float) -> list[str]:
        return [part.rstrip(")") for part in show_as(value, like, decimals, suffix=suffix).split(" (")]

    return " (".join(f"{low.rpartition(' ')[0]} to {high}" for low, high in zip(apart(lower), apart(upper))) + ")"


def number_as(value: float, like: Typed | None, decimals: int | None = None, *, suffix: str = "mm") -> str:
    """The value alone in the unit that was typed, for a table with the unit (``like.unit.sign``) in its heading."""
    first = UNITS[like.suffix if like else suffix][0]
    unit = like.unit if like else first
    return number(unit.from_inside(value), max(0, unit.decimals + (0 if decimals is None else decimals - first.decimals)))


def shown_apart(value: float, suffix: str) -> tuple[str, str]:
    """The value and its shop counterpart without their units, for two columns of a table.

    >>> shown_apart(1470, "kpa")
    ('1470', '213')
    """
    first, *others = UNITS[suffix]
    return number(value, first.decimals), number(others[0].from_inside(value), others[0].decimals) if others else ""


def number(value: float, decimals: int) -> str:
    """The value rounded, with a true minus sign and no negative zero.

    >>> number(-0.04, 1), number(-7.82, 2)
    ('0.0', '−7.82')
    """
    text = f"{value:.{decimals}f}"
    if float(text) == 0.0:
        text = text.lstrip("-")
    return text.replace("-", "−")


def _in_unit(value: float | Reading, unit: Unit, more: int) -> str:
    decimals = max(0, unit.decimals + more)
    if not isinstance(value, Reading):
        return f"{number(unit.from_inside(value), decimals)} {unit.sign}"
    text = number(unit.from_inside(value.value), decimals)
    return f"{text} {unit.sign}" if not value.u else f"{text} ± {_digits(unit.difference_from_inside(value.u), decimals)} {unit.sign}"


def _digits(u: float, decimals: int) -> str:
    """An uncertainty with the decimals of its value, more where rounding would change it by over a tenth."""
    while decimals < 12 and abs(float(f"{u:.{decimals}f}") - u) > 0.1 * u:
        decimals += 1
    return number(u, decimals)
