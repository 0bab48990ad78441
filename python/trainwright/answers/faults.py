"""What a dead or stuck element shows in each gear, and which element a complaint points to."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from .. import Error, hazard
from ..judge import Reading
from ..sheet import Fact, Row, Sheet, Table
from ..train import NextGear, Suspect, Symptom, Train

FAILURES = ("dead", "stuck")
SEEN = ("as commanded", "other ratio", "no drive", "drives", "tied up")
"""What a gear can be seen to do. A neutral that ``drives`` creeps."""


Observed = tuple[str, str] | tuple[str, str, str, Reading]

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


def _shown(symptom: Symptom, load: str) -> str:
    if load == "coast":
        return {"no drive": "coasts freely", "drives": "brakes"}.get(symptom.coast, symptom.coast)
    return symptom.drive if symptom.ratio is None else f"{symptom.drive} ({symptom.ratio:.4f})"


def _next_gear(train: Train, suspects: Sequence[Suspect], seen: Sequence[Observed]) -> NextGear | None:
    """The gear that tells most about these suspects, if there are several and a gear is left that tells."""
    if len(suspects) < 2:
        return None
    try:
        return train.next_gear([(s.element, s.failure) for s in suspects], [gear for gear, *_ in seen])
    except Error as error:
        if error.kind == "NO_ANSWER":
            return None
        raise


def diagnose_sheet(train: Train, seen: Sequence[tuple[str, str]], *, title: str, ratios: Sequence[tuple[str, Reading]] = ()) -> Sheet:
    """Suspects for what was seen and measured, best first, and the gear to run next."""
    observed: list[Observed] = [*seen, *(train.seen_ratio(gear, ratio) for gear, ratio in ratios)]
    suspects = train.diagnose(observed)
    first = [suspect for suspect in suspects if suspect.rank == 1]
    rows = [
        Row((str(s.rank), _name(s), *(str(n) for n in (s.matched, s.missed, s.contradicted, s.agreed))), "governs" if s.rank == 1 else "")
        for s in suspects
    ]
    following = _next_gear(train, first, observed)
    shown = [(s, _shown(symptom, following.load)) for s, symptom in zip(first, following.shown, strict=True)] if following else []
    perfect = bool(first) and first[0].missed == first[0].contradicted == 0
    names = ", ".join(map(_name, first))
    if not suspects:
        answer = "No single dead or stuck element explains this. Look for slip, a leak, two faults or the controller."
    elif not perfect:
        answer = f"Nothing explains all of it; nearest is {names}. Look for a second fault or the controller."
    elif len(first) == 1:
        answer = f"{names} explains all that was seen, and nothing else does as well."
    elif following:
        gives = ", ".join(f"{_name(s)} gives {what}" for s, what in shown)
        coast = " in coast" if following.load == "coast" else ""
        answer = f"{names} explain it equally well. Run next: gear {following.gear}{coast}: {gives}."
    else:
        answer = f"{names} explain it equally well, and no other gear tells them apart."
    data: list[dict[str, Any]] = [
        {"element": s.element, "failure": s.failure, "rank": s.rank, "matched": s.matched, "missed": s.missed,
         "contradicted": s.contradicted, "agreed": s.agreed} for s in suspects
    ]  # fmt: skip
    tables = [
        Table("Suspects", (">rank", "element", ">matched", ">missed", ">contradicted", ">agreed"), rows,
              "matched: faults seen that it shows. missed: faults seen in gears that it leaves alone. contradicted: gears in "
              "which it would show something else. agreed: right gears that it leaves right.")
    ] if suspects else []  # fmt: skip
    cautions = [hazard.caution("roll-away")]
    run_next = None
    if following:
        tied = f" {following.tie_ups} of them would tie it up: try it last, at idle with the wheels free, or not at all." if following.tie_ups else ""
        tables.append(
            Table(f"Run next: gear {following.gear}, {following.load}", ("if it is", "it gives"),
                  [Row((_name(s), what)) for s, what in shown],
                  f"Of the gears that are left it tells most: {following.information_bit:.2f} bit.{tied}")
        )  # fmt: skip
        cautions.append(hazard.caution("overspeed"))
        run_next = {"gear": following.gear, "load": following.load, "information_bit": following.information_bit,
                    "tie_ups": following.tie_ups,
                    "gives": {_name(s): what for s, what in shown}}  # fmt: skip
    measured = {gear: ratio for gear, ratio in ratios}
    return Sheet(
        title=title,
        answer=answer,
        facts=[
            Fact(f"gear {gear}", f"{what} ({measured[gear].value:g} measured)" if rest else what) for gear, what, *rest in observed
        ],
        tables=tables,
        not_checked=["A ranking, not a probability: how often each part fails is not in it."],
        cautions=cautions,
        cards=["train.diagnose", "train.next_gear"] if following else ["train.diagnose"],
        how=[*(suspect.explain() for suspect in first[:1]), *([following.explain()] if following else [])],
        data={"suspects": data, "run_next": run_next},
    )
