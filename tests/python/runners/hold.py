"""Runners of the hold chapter's vectors whose columns are not the arguments themselves."""

from runners.hold_load import *  # noqa: F403
