"""Pump, orifices, valves, line pressure needed and available, cooler flow. Hot fluid burns."""

from ._native.hydraulic import *
from ._native.hydraulic import __all__ as __all__
