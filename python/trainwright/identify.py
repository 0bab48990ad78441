"""Which variant is on the bench: weighing marks and sizes, part by part, and what to look at next.

From a record, :meth:`trainwright.record.Family.identify`; from arrays, :func:`weigh`.
"""

from ._native.identify import *
from ._native.identify import __all__ as __all__
