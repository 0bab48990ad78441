"""How much of its life a duty uses, and which trucks come first.

A computed damage ranks; it does not promise a life. The vehicle maker's ratings, placards and local law come first.
"""

from ._native.duty import *
from ._native.duty import __all__ as __all__
