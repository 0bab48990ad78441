"""Shop units at the edge; every factor is exact and stands in the core."""

from ._native.units import *
from ._native.units import __all__ as __all__
