"""The one error, and the one warning."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .record import Problem


class Error(ValueError):
    """There is no answer. The message names the parameter, the value given, what is accepted and how to mend it."""

    kind: str
    """The name of the failure, e.g. ``"OUT_OF_RANGE"``; C calls it ``TW_STATUS_OUT_OF_RANGE``."""
    parameter: str
    """The parameter, or group of parameters, that it is about."""
    problems: list[Problem]
    """Where a record was refused: every fault of it."""


def refusal(parameter: str, message: str, kind: str = "MISSING") -> Error:
    """An error of the package itself, with its mend in the message."""
    error = Error(f"{parameter}: {message}")
    error.kind, error.parameter = kind, parameter
    return error


class RangeWarning(UserWarning):
    """Some rows of an array were refused; their results are NaN. The message counts them and explains the first."""
