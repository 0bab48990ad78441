"""Readings, limits and the decision between them: GO, NO-GO or NOT PROVEN."""

from ._native.judge import *
from ._native.judge import __all__ as __all__
