"""Runners of the tow chapter's vectors whose columns are not the arguments themselves."""

from runners.tow_grade import *  # noqa: F403
from runners.tow_launch import *  # noqa: F403
from runners.tow_load import *  # noqa: F403
