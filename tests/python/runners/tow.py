"""Runners of the tow chapter's vectors whose columns are not the arguments themselves."""

from runners.tow_load import *  # noqa: F403
