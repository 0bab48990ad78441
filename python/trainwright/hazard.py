"""What can hurt someone in the work that a result belongs to, with a caution to print."""

from ._native.hazard import *
from ._native.hazard import __all__ as __all__
