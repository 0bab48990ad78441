"""Which parts interchange singly, one way, only as a set, after machining, or never; matched sets and orders.

A part is the part at its seat: the same number at two places is two parts here. `Joints` come from a family's record with
`family.joints()`, or are given by name.
"""

from ._native.interchange import *
from ._native.interchange import __all__ as __all__
