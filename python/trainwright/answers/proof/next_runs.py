"""What to run next: an ordered short list of mends and drives, by how many open lines each settles."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from ...edge import number
from ..gears import ratio
from .asked import Asked
from .line import Line
from .seen import Seen

STEADY_S = 20
"""Seconds in a gear that the drives ask for, where no line asks for more."""


@dataclass(frozen=True)
class Next:
    """One thing to do, and the lines that it settles or explains."""

    what: str
    lines: tuple[str, ...]

    def as_dict(self) -> dict[str, Any]:
        """For JSON."""
        return {"what": self.what, "lines": list(self.lines)}


def next_runs(seen: Seen, asked: Asked, lines: Sequence[Line]) -> list[Next]:
    """Mends first, then what tells suspects apart, then the drive that settles most lines, and so on."""
    found = [Next(f"{line.do[0].upper()}{line.do[1:]}.", (line.about,)) for line in lines if line.group == "log" and line.verdict == "NO-GO"]
    found += [Next(f"{line.data['run'][0].upper()}{line.data['run'][1:]}.", (line.about,)) for line in lines if line.data.get("run")]
    told = dict.fromkeys(line.do for line in lines if line.group == "slip" and line.verdict == "NO-GO" and line.do.startswith("hold"))
    found += [Next(f"{do[0].upper()}{do[1:]}.", tuple(line.about for line in lines if line.do == do)) for do in told]
    open_ = [line for line in lines if line.verdict == "NOT PROVEN" and line.needs]
    drives = {"warm": {"warm", "torque", "lockup"}, "cold": {"cold", "torque", "window"}, "mend": {"mend"}, "columns": {"columns"}}
    while open_:
        settled = {name: [line for line in open_ if line.needs <= gives] for name, gives in drives.items()}
        best = max(settled, key=lambda name: len(settled[name]), default=None)
        if best is None or not settled[best]:
            break
        done = settled[best]
        del drives[best]
        open_ = [line for line in open_ if line not in done]
        if best in ("warm", "cold"):
            found.append(Next(_drive(seen, asked, done, best), tuple(line.about for line in done)))
        elif best == "columns":
            found.append(Next(". ".join(dict.fromkeys(_log_too(line) for line in done)) + ".", tuple(line.about for line in done)))
        elif not any(line.group == "log" and line.verdict == "NO-GO" for line in lines):
            found.append(Next("Mend the log first: wiring, bus and logger.", tuple(line.about for line in done)))
        else:
            found.append(Next("Run the same log again after the mend.", tuple(line.about for line in done)))
    return found


def _log_too(line: Line) -> str:
    return f"Log {', '.join(line.data['missing'])} too" if "missing" in line.data else f"{line.do[0].upper()}{line.do[1:]}"


def _drive(seen: Seen, asked: Asked, done: Sequence[Line], warm: str) -> str:
    limit = f"fluid at work, from {number(asked.working_c, 0)} °C" if warm == "warm" else f"from below {number(asked.limits.cold_c, 0)} °C until it is warm"
    gears = [name for name in seen.gears if any(line.data.get("gear") == name for line in done)]
    forward = [name for name in gears if ratio(seen.gears[name]) > 0]
    backward = [name for name in gears if ratio(seen.gears[name]) < 0]
    told = []
    if any(line.group == "shift" and line.data.get("missing") for line in done):
        told.append("up and down through every gear")
    if forward:
        steady_s = max([STEADY_S, *(line.data.get("more_s", 0.0) for line in done)])
        told.append(f"{number(steady_s, 0)} s steady in gear {', '.join(forward)}")
    if backward:
        told.append(f"{', '.join(backward)} at walking pace")
    if any("lockup" in line.needs for line in done):
        told.append(f"{STEADY_S} s with the lock-up on")
    if any("torque" in line.needs for line in done):
        told.append("torque at the input in the log, or engine torque with the lock-up on")
    return f"Drive {warm} ({limit}): {'; '.join(told) if told else 'the same again'}."
