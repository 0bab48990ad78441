"""Round fits: clearance cold and hot, pressed bushings, ISO 286 limits, bushing load and leakage.

A clearance is bore less shaft, diametral; a negative one is an interference. Sizes are those at 20 °C.
"""

from ._native.fit import *
from ._native.fit import __all__ as __all__
