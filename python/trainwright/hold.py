"""What holds: one-way clutches, park lock, thrust bearings, shafts, splines; capacity against demand.

A computed capacity is not a rating. A park lock is never the only means of holding a vehicle: parking brake first, then Park.
"""

from ._native.hold import *
from ._native.hold import __all__ as __all__
