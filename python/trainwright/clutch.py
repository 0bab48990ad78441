"""Clutches and bands: apply force, capacity, pressure for a torque, shift energy and the heat it leaves.

A computed capacity is not a rating: more pressure also loads retaining rings, drums and shafts.
"""

from ._native.clutch import *
from ._native.clutch import __all__ as __all__
