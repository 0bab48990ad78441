"""Torque converters: characteristic, match with an engine, stall, lock-up slip.

A computed capability is not a rating. A stall test overheats the converter within seconds: only where the vehicle maker allows it.
"""

from ._native.converter import *
from ._native.converter import __all__ as __all__
