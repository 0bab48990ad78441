"""Records: TOML that a parts person can maintain, every fault of it named at its line."""

from ._native.record import *
from ._native.record import __all__ as __all__
