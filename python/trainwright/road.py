"""The road side: shaft speeds, shift points, speedometer, road load, grade, air."""

from ._native.road import *
from ._native.road import __all__ as __all__
