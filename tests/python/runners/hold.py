"""Runners of the hold chapter's vectors whose columns are not the arguments themselves."""

from runners.hold_load import *  # noqa: F403
from runners.hold_lock import *  # noqa: F403
