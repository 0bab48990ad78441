"""One line of a proof run."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from ...judge import Judgment, Limits, Reading

ORDER = ("NO-GO", "NOT PROVEN", "GO")
"""Verdicts, the worst first."""


@dataclass(frozen=True)
class Line:
    """One line of the proof: GO, NO-GO or NOT PROVEN, why, and the one thing to do."""

    group: str
    about: str
    verdict: str
    why: str
    do: str = ""
    reading: Reading | None = None
    unit: str = ""
    limits: Limits | None = None
    chance: float | None = None
    needs: frozenset[str] = frozenset()
    """What a further drive must hold to settle it; see :mod:`.proof_next`."""
    data: dict[str, Any] = field(default_factory=dict)
    """Further numbers of the line, each key ending in its unit."""

    def as_dict(self) -> dict[str, Any]:
        """For JSON."""
        return {
            "group": self.group, "about": self.about, "verdict": self.verdict, "why": self.why, "do": self.do, "chance": self.chance,
            "value": self.reading.value if self.reading else None, "u": self.reading.u if self.reading else None, "unit": self.unit,
            "lower": self.limits.lower if self.limits else None, "upper": self.limits.upper if self.limits else None, **self.data,
        }  # fmt: skip


def not_proven(group: str, about: str, why: str, do: str, *needs: str, **data: Any) -> Line:
    """A line that the log says nothing about."""
    return Line(group, about, "NOT PROVEN", why, do, needs=frozenset(needs), data=data)


def judged(group: str, about: str, judgment: Judgment, unit: str, why: str, do: str, *needs: str, **data: Any) -> Line:
    """A line from a judgment."""
    open_ = judgment.verdict == "NOT PROVEN"
    return Line(
        group, about, judgment.verdict, why, "" if judgment.verdict == "GO" else do, judgment.reading, unit, judgment.limits, judgment.chance,
        frozenset(needs) if open_ else frozenset(), data,
    )  # fmt: skip
