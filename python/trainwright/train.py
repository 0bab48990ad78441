"""Gear trains: exact ratios, member speeds, torque shares and states."""

from ._native.train import *
from ._native.train import __all__ as __all__
