"""End play and clutch clearance: worst case and root sum of squares, choice of shim and ring, what to measure first.

Clearance of a pack is along the axis. Air at the piston throws parts: regulate it, cover the drum, wear goggles.
"""

from ._native.stack import *
from ._native.stack import __all__ as __all__
