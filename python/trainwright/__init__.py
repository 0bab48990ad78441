"""Calculations for automatic-transmission rebuild shops.

One module per chapter, named as in Rust and C: :mod:`trainwright.judge`, :mod:`trainwright.units` and so on.
Physical arguments are keywords that end in their unit; numbers in give floats, arrays in give NumPy arrays.
"""

import sys

from . import _native

# The chapters are parts of the compiled module; this lets them be imported by their full names.
for _name, _chapter in list(vars(_native).items()):
    if isinstance(_chapter, type(sys)):
        sys.modules[f"{__name__}._native.{_name}"] = _chapter

from . import clutch, converter, duty, fit, fluid, hazard, hold, hydraulic, identify, interchange, judge, live, practice, record, road, stack, tire, tow, train, units
from ._native import Card, Explanation, Source, Symbol, card, cards, explain, version
from .error import Error, RangeWarning
from .judge import Limits, Reading
from .train import Train

__version__ = version()

__all__ = [
    "Card",
    "Error",
    "Explanation",
    "Limits",
    "RangeWarning",
    "Reading",
    "Source",
    "Symbol",
    "Train",
    "card",
    "cards",
    "clutch",
    "duty",
    "converter",
    "fit",
    "explain",
    "fluid",
    "hazard",
    "hold",
    "hydraulic",
    "identify",
    "interchange",
    "judge",
    "live",
    "practice",
    "record",
    "road",
    "stack",
    "tire",
    "tow",
    "train",
    "units",
    "version",
]
