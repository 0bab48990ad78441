"""Numbers as a shop types and reads them: with their unit, in either system, shown in both.

Inside, every quantity has one unit (the suffix of its name). The factors are the core's; see :mod:`trainwright.units`.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from . import units
from .error import refusal
from .judge import Reading

Convert = Callable[[float], float]


@dataclass(frozen=True)
class Unit:
    """The unit of a quantity, how it is typed and shown, and its shop counterpart."""

    sign: str
    words: tuple[str, ...]
    decimals: int
    shop_sign: str = ""
    shop_words: tuple[str, ...] = ()
    shop_decimals: int = 0
    from_shop: Convert | None = None
    to_shop: Convert | None = None


UNITS: dict[str, Unit] = {
    "kpa": Unit("kPa", ("kpa",), 0, "psi", ("psi",), 0, units.psi_to_kpa, units.kpa_to_psi),
    "nm": Unit("N·m", ("nm",), 0, "lbf·ft", ("lbfft", "lbft", "ftlb", "ftlbf"), 0, units.lbf_ft_to_nm, units.nm_to_lbf_ft),
    "c": Unit("°C", ("c", "°c"), 1, "°F", ("f", "°f"), 0, units.f_to_c, units.c_to_f),
    "k": Unit("K", ("k",), 1, "°F", ("f", "°f"), 0, units.f_to_k_difference, units.k_to_f_difference),
    "mm": Unit("mm", ("mm",), 2, "in", ("in", '"'), 3, units.in_to_mm, units.mm_to_in),
    "km_h": Unit("km/h", ("kmh", "km/h"), 1, "mph", ("mph",), 1, units.mph_to_km_h, units.km_h_to_mph),
    "kg": Unit("kg", ("kg",), 0, "lb", ("lb", "lbs"), 0, units.lb_to_kg, units.kg_to_lb),
    "l": Unit("L", ("l",), 2, "qt", ("qt", "quart", "quarts"), 2, units.quart_to_l, units.l_to_quart),
    "n": Unit("N", ("n",), 0, "lbf", ("lbf",), 0, units.lbf_to_n, units.n_to_lbf),
    "kw": Unit("kW", ("kw",), 1, "hp", ("hp",), 1, units.hp_to_kw, units.kw_to_hp),
    "rpm": Unit("rpm", ("rpm",), 0),
    "ml": Unit("mL", ("ml",), 0),
    "pct": Unit("%", ("%", "pct"), 1),
    "s": Unit("s", ("s",), 1),
}
"""By suffix."""

_TYPED = re.compile(
    r"""\s*(?P<value>[-+−]?\d*\.?\d+)
        (?:\s*(?:±|\+/?-)\s*(?P<u>\d*\.?\d+))?
        \s*(?P<unit>[^\d\s].*?)?\s*""",
    re.VERBOSE,
)


def read(text: str, suffix: str, name: str) -> Reading:
    """A typed quantity in the unit of the suffix: ``"213psi"``, ``"75 F"``, ``"24±1 C"``. A bare number is refused where two
    systems are in use: 213 may mean psi or kPa.

    >>> read("213psi", "kpa", "gauge").value.__round__()
    1469
    >>> read("24±1C", "c", "temperature")
    Reading(value=24.0, u=1.0)
    """
    unit = UNITS[suffix]
    accepted = f"a number and {unit.sign}" + (f" or {unit.shop_sign}" if unit.shop_sign else "")
    example = f"for example {_plain(unit)}"
    typed = _TYPED.fullmatch(text)
    if typed is None:
        raise refusal(name, f"{text!r} cannot be read; give {accepted}, {example}", "TEXT")
    value, u = (float((typed[part] or "0").replace("−", "-")) for part in ("value", "u"))
    if typed["unit"] is None and unit.from_shop:
        raise refusal(name, f"{text.strip()} has no unit; give {accepted}, {example}", "TEXT")
    word = re.sub(r"[\s·*.\-]", "", typed["unit"] or "").lower()
    if word in ("", *unit.words):
        return Reading(value=value, u=u)
    if word in unit.shop_words and unit.from_shop:
        return Reading(value=unit.from_shop(value), u=unit.from_shop(value + u) - unit.from_shop(value))
    raise refusal(name, f"unit {typed['unit']!r} is not accepted here; give {accepted}, {example}", "TEXT")


def show(value: float, suffix: str, decimals: int | None = None) -> str:
    """The value with its unit, and the shop unit in brackets.

    >>> show(1470, "kpa")
    '1470 kPa (213 psi)'
    """
    unit = UNITS[suffix]
    more = 0 if decimals is None else decimals - unit.decimals
    text = f"{number(value, unit.decimals + more)} {unit.sign}"
    if unit.to_shop is None:
        return text
    return f"{text} ({number(unit.to_shop(value), max(0, unit.shop_decimals + more))} {unit.shop_sign})"


def shown_apart(value: float, suffix: str) -> tuple[str, str]:
    """The value and its shop counterpart without their units, for two columns of a table.

    >>> shown_apart(1470, "kpa")
    ('1470', '213')
    """
    unit = UNITS[suffix]
    return number(value, unit.decimals), number(unit.to_shop(value), unit.shop_decimals) if unit.to_shop else ""


def number(value: float, decimals: int) -> str:
    """The value rounded, with a true minus sign and no negative zero.

    >>> number(-0.04, 1), number(-7.82, 2)
    ('0.0', '−7.82')
    """
    text = f"{value:.{decimals}f}"
    if float(text) == 0.0:
        text = text.lstrip("-")
    return text.replace("-", "−")


def _plain(unit: Unit) -> str:
    signs = [sign.replace("°", "").replace("·", "") for sign in (unit.sign, unit.shop_sign) if sign]
    return " or ".join(f"20{sign}" for sign in signs)
