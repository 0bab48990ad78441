"""What a dead or stuck element shows in each gear, and which element a complaint points to."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from .. import hazard
from ..sheet import Fact, Row, Sheet, Table
from ..train import Suspect, Symptom, Train

FAILURES = ("dead", "stuck")
SEEN = ("as commanded", "other ratio", "no drive", "drives", "tied up")
"""What a gear can be seen to do. A neutral that ``drives`` creeps."""


CELLS = {"no drive": "lost", "drives": "creep", "tied up": "tie"}


def _cell(symptom: Symptom) -> str:
    if symptom.drive == "other ratio":
        return f"{symptom.ratio:.3f}"
    return CELLS.get(symptom.drive) or {"no drive": "free", "drives": "brake"}.get(symptom.coast, "")


def fault_sheet(train: Train, *, title: str) -> Sheet:
    """Every element, dead and stuck, against every gear of the record."""
    gears = [gear.id for gear in train.gears()]
    faults = [(element, failure) for failure in FAILURES for element in train.elements]
    rows = [Row((f"{element} {failure}", *(_cell(train.symptom(gear, element, failure)) for gear in gears))) for element, failure in faults]
    data = {f"{element} {failure}": train.signature(element, failure).lost for element, failure in faults}
    return Sheet(
        title=title,
        answer="Each row is one failed element: what every commanded gear then does. An empty cell is a gear that stays right.",
        tables=[
            Table("Failure signatures", ("failed", *gears), rows,
                  "lost: no drive. A number: that ratio instead. tie: ties up. free: drives, but coasts freely. brake: brakes where it "
                  "should coast.")
        ],
        not_checked=["Two faults at once, a slipping element, and a controller that answers a fault with a substitute program."],
        cautions=[hazard.caution("overspeed")],
        cards=["train.symptom"],
        data={"lost": data},
    )  # fmt: skip


def _name(suspect: Suspect) -> str:
    return f"{suspect.element} {suspect.failure}"


def diagnose_sheet(train: Train, seen: Sequence[tuple[str, str]], *, title: str) -> Sheet:
    """Suspects for what was seen, best first, and the gear to try next."""
    suspects = train.diagnose(list(seen))
    first = [suspect for suspect in suspects if suspect.rank == 1]
    rows = [
        Row((str(s.rank), _name(s), *(str(n) for n in (s.matched, s.missed, s.contradicted, s.agreed))), "governs" if s.rank == 1 else "")
        for s in suspects
    ]
    tried = {gear for gear, _ in seen}
    tell: list[str] = []
    for one, other in pairwise(first):
        telling = train.gears_that_tell_faults((one.element, one.failure), (other.element, other.failure))
        tell += [gear for gear in telling if gear not in tried and gear not in tell]
    perfect = bool(first) and first[0].missed == first[0].contradicted == 0
    if not suspects:
        answer = "No single dead or stuck element explains this. Look for slip, a leak, two faults or the controller."
    elif not perfect:
        answer = f"Nothing explains all of it; nearest is {', '.join(map(_name, first))}. Look for a second fault or the controller."
    elif len(first) == 1:
        answer = f"{_name(first[0])} explains all that was seen, and nothing else does as well."
    elif tell:
        answer = f"{', '.join(map(_name, first))} explain it equally well. Try next: gear {', '.join(tell)}."
    else:
        answer = f"{', '.join(map(_name, first))} explain it equally well, and no other gear tells them apart."
    data: list[dict[str, Any]] = [
        {"element": s.element, "failure": s.failure, "rank": s.rank, "matched": s.matched, "missed": s.missed,
         "contradicted": s.contradicted, "agreed": s.agreed} for s in suspects
    ]  # fmt: skip
    return Sheet(
        title=title,
        answer=answer,
        facts=[Fact(f"gear {gear}", what) for gear, what in seen],
        tables=[
            Table("Suspects", (">rank", "element", ">matched", ">missed", ">contradicted", ">agreed"), rows,
                  "matched: faults seen that it shows. missed: faults seen in gears that it leaves alone. contradicted: gears in "
                  "which it would show something else. agreed: right gears that it leaves right.")
        ] if suspects else [],
        not_checked=["A ranking, not a probability: how often each part fails is not in it."],
        cautions=[hazard.caution("roll-away")],
        cards=["train.diagnose"],
        how=[suspect.explain() for suspect in first[:1]],
        data={"suspects": data, "try_next": tell},
    )  # fmt: skip
