"""Transmission fluid: density, viscosity, mixing, level and fill. Hot fluid burns."""

from ._native.fluid import *
from ._native.fluid import __all__ as __all__
