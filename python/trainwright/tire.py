"""Tires: size designations, diameters, rolling circumference, load index, speed symbol."""

from ._native.tire import *
from ._native.tire import __all__ as __all__
