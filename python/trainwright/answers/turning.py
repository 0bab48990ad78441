"""What each input does to a verdict: its share of the uncertainty, the value at which the verdict turns, and how well it would
have to be known to decide the case alone."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from ..edge import UNITS, number
from ..error import Error
from ..judge import Budget, Judgment, Reading, settle_by, turning_value
from ..sheet import Row, Table


@dataclass(frozen=True)
class Turn:
    """One input of a judged result, in the order of its budget, and the judgment that another value of it would give."""

    name: str
    now: Reading
    suffix: str = ""
    """Of its unit, as in :mod:`trainwright.edge`; empty for a pure number."""
    judged: Callable[[float], Judgment] | None = None
    """Left out where the input has no value to change, as a relative uncertainty of sizes."""
    lower: float = 0.0
    upper: float = 0.0
    """The turn is looked for between these."""
    decimals: int | None = None
    relative: bool = False
    """Whether the budget counts its uncertainty as a share of the value."""

    def number(self, value: float) -> str:
        """The value without its unit."""
        decimals = self.decimals if self.decimals is not None else UNITS[self.suffix][0].decimals if self.suffix else 3
        return number(value, decimals)

    def shown(self, value: float) -> str:
        """The value with its unit."""
        return f"{self.number(value)} {self._sign(self.suffix)}".rstrip()

    def shown_u(self, u: float) -> str:
        """An uncertainty, to two digits, with its unit."""
        if self.relative:
            return f"{100 * u:.2g} %"
        return f"{u:.2g} {self._sign({'c': 'k'}.get(self.suffix, self.suffix))}".rstrip()

    @staticmethod
    def _sign(suffix: str) -> str:
        return UNITS[suffix][0].sign if suffix else ""


def turning_table(judgment: Judgment, budget: Budget, turns: Sequence[Turn]) -> tuple[Table, list[dict[str, Any]]]:
    """A row for each input, and the same as data."""
    rows, data = [], []
    for place, turn in enumerate(turns):
        settled = settle_by(judgment, budget, place)
        found = _turn(turn)
        entry: dict[str, Any] = {
            "input": turn.name, "value": turn.now.value, "u": settled.u_now, "sensitivity": budget.sensitivity[place],
            "share": budget.share[place], "turns_at": found and found[0], "enough_alone": settled.enough, "u_needed": settled.u_needed,
        }  # fmt: skip
        data.append(entry)
        known = "" if judgment.verdict != "NOT PROVEN" else turn.shown_u(settled.u_needed) if settled.enough else "not alone"
        rows.append(
            Row((turn.name, turn.shown(turn.now.value) if turn.judged else "·", turn.shown_u(settled.u_now) if settled.u_now else "exact",
                 f"{number(100 * budget.share[place], 0)} %", _said(turn, found), known))
        )  # fmt: skip
    columns = ("input", ">now", ">standard u", ">share", "GO", "or known to")
    note = (
        "One input at a time, the others as they are. Share: of the variance of what is judged. GO: from where on the verdict is GO, "
        "or while it stays so. Known to: the standard uncertainty u at which this input alone decides the case, if its value stays. "
        "·: no value to change."
    )
    return Table("What each input does to the verdict", columns, rows, note), data


def _turn(turn: Turn) -> tuple[float, float, bool] | None:
    """Value at which the verdict turns, the change to it, and whether it is GO now."""
    if turn.judged is None:
        return None
    try:
        found = turning_value(turn.judged, now=turn.now.value, lower=turn.lower, upper=turn.upper)
    except Error as error:
        if error.kind != "NO_ANSWER":
            raise
        return None
    return found.value, found.change, found.go_now


def _said(turn: Turn, found: tuple[float, float, bool] | None) -> str:
    if turn.judged is None:
        return "·"
    if found is None:
        return f"none from {turn.number(turn.lower)} to {turn.shown(turn.upper)}"
    value, change, go_now = found
    side = "more" if (change > 0) != go_now else "less"
    return f"{'while' if go_now else 'from'} {turn.shown(value)} or {side}"
