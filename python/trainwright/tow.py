"""What a combination asks of the unit, against what the vehicle is rated for: axle loads, ratings, launch, load per gear and grade.

A computed capacity is no rating: the vehicle maker's ratings, placards and local law come first.
"""

from ._native.tow import *
from ._native.tow import __all__ as __all__
