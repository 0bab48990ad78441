"""Values known only as common practice of the trade, no source. Nothing takes them by default: name them.

Where a pair is given, LOW to HIGH is the usual interval and not a limit: a unit's own data goes before it.
"""

from ._native.practice import *
from ._native.practice import __all__ as __all__
