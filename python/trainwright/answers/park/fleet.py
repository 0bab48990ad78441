"""Every truck of a fleet on its park lock, on several grades."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import product

from ... import hazard
from ...edge import number, show
from ...hold import ParkHold, ParkLock, compare_park_gears, park_lock
from ...judge import settle
from ...record import Family, Fleet
from ...sheet import Decision, Fact, Row, Sheet, Table
from . import decision, not_checked
from .case import INPUTS, Case, Chosen, cases, other_gear


@dataclass(frozen=True)
class Line:
    """A truck with one park gear on every grade, standing or rocking; where the fleet has gaps, its best and its worst case."""

    truck: str
    gear_of: str
    lock: ParkLock
    cases: list[Case]
    grades_pct: tuple[float, ...]
    chosen: Chosen

    def holds(self, grade_pct: float) -> list[ParkHold]:
        """By rising stress, one for each case."""
        return sorted((self.chosen.hold(self.lock, case, grade_pct) for case in self.cases), key=lambda hold: hold.stress.von_mises_mpa)

    def verdict(self, grade_pct: float) -> str:
        """The verdict of every case, NOT PROVEN where they differ."""
        verdicts = {hold.judgment.verdict for hold in self.holds(grade_pct)}
        return verdicts.pop() if len(verdicts) == 1 else "NOT PROVEN"

    def cells(self) -> tuple[str, ...]:
        """The row of the table."""

        def spread(values: Iterable[float], decimals: int) -> str:
            first, last = min(found := list(values)), max(found)
            same = number(first, decimals) == number(last, decimals)
            return number(first, decimals) if same else f"{number(first, decimals)} to {number(last, decimals)}"

        stresses = [f"{spread((hold.stress.von_mises_mpa for hold in self.holds(grade)), 0)} {self.verdict(grade)}" for grade in self.grades_pct]
        holds = self.holds(self.grades_pct[0])
        rolls = [self.lock.gear.free_roll(case.parked(self.grades_pct[0], 1.0)).roll_mm for case in self.cases]
        return (
            self.truck, self.gear_of, spread((case.mass_kg.value for case in self.cases), 0), *stresses,
            spread((hold.largest_grade_pct for hold in holds), 1), spread((hold.proven_grade_pct for hold in holds), 1), spread(rolls, 0),
        )  # fmt: skip

    def data(self) -> dict[str, object]:
        """The same for a program: the worst case where there are several."""
        worst = {grade: self.holds(grade)[-1] for grade in self.grades_pct}
        first = worst[self.grades_pct[0]]
        return {
            "truck": self.truck,
            "park_gear_of": self.gear_of,
            "rocking_factor": self.chosen.rocking_factor,
            "by_grade_pct": {
                f"{grade:g}": {"von_mises_mpa": hold.stress.von_mises_mpa, "chance": hold.judgment.chance, "verdict": self.verdict(grade)}
                for grade, hold in worst.items()
            },
            "largest_grade_pct": first.largest_grade_pct,
            "proven_grade_pct": first.proven_grade_pct,
            "free_roll_mm": max(self.lock.gear.free_roll(case.parked(self.grades_pct[0], 1.0)).roll_mm for case in self.cases),
        }


def lines(family: Family, fleet: Fleet, grades_pct: Sequence[float], chosen: Chosen, *, own: bool) -> list[Line]:
    """Every truck of the fleet with its own park gear, or with the other one."""
    found = []
    for truck in fleet.trucks:
        parked = cases(family, fleet, truck)
        gear_of = parked[0].gear_of if own else other_gear(family, parked[0].gear_of)
        if gear_of:
            found.append(Line(truck, gear_of, park_lock(family, gear_of), parked, tuple(grades_pct), chosen))
    return found


def park_fleet_sheet(
    family: Family, fleet: Fleet, *, grades_pct: Sequence[float], chosen: Chosen, title: str, story: str = ""
) -> Sheet:
    """Every truck of a fleet on several grades, with its own park gear and with the other one, standing and rocking."""
    static = replace(chosen, rocking_factor=1.0)
    own, other = (lines(family, fleet, grades_pct, static, own=which) for which in (True, False))
    rocking = lines(family, fleet, grades_pct, chosen, own=True) if chosen.rocking_factor > 1 else []
    tables = [_fleet_table("Own park gear, standing still", own, grades_pct)]
    if rocking:
        tables.append(_fleet_table(f"Own park gear, rocking factor {chosen.rocking_factor:g}", rocking, grades_pct))
    if other:
        tables.append(_fleet_table("The other park gear with its pawl, standing still", other, grades_pct))
    gaps = [line.truck for line in own if len(line.cases) > 1]
    sample = own[0].lock
    return Sheet(
        title=title,
        story=story,
        answer=" ".join([
            _proved("With its own gear, standing still", own, grades_pct),
            *([_proved(f"With rocking factor {chosen.rocking_factor:g}", rocking, grades_pct)] if rocking else []),
            *_settled(rocking or own, grades_pct),
            *([_proved("With the other gear, standing still", other, grades_pct), _price(own, other)] if other else []),
        ]),
        decisions=[_fleet_decision(line, grades_pct, chosen) for line in own if any(line.verdict(grade) != "GO" for grade in grades_pct)],
        tables=tables,
        facts=[
            Fact("yield", show(sample.strength.yield_mpa, "mpa"), f"relative standard uncertainty of the stress {100 * sample.strength.stress_u_rel:g} %, the tire's on top; stress factor {static.strength(sample).stress_factor:g}"),
            Fact("radius", "rolling radius", "a standing tire's loaded radius is about 3 % less, so the torque is rather too much"),
            Fact("trailers", "unbraked", "the whole combination hangs on the park gear"),
        ],
        not_checked=[
            *([f"{', '.join(gaps)}: tire or trailer is not known; the table shows the least and the greatest case, NOT PROVEN where their verdicts differ."] if gaps else []),
            *not_checked(sample, grip=False),
        ],
        cautions=[hazard.caution("park lock"), hazard.caution("towing")],
        cards=["hold.park_load", "hold.tooth_stress", "hold.park_hold", "hold.largest_grade_pct", "hold.free_roll", "hold.compare_park_gears"],
        data={"trucks": {"own": [line.data() for line in own], "own_rocking": [line.data() for line in rocking], "other": [line.data() for line in other]}},
    )  # fmt: skip


def _fleet_table(title: str, found: Sequence[Line], grades_pct: Sequence[float]) -> Table:
    columns = ("truck", "gear of", ">kg", *(f">{grade:g} %: MPa" for grade in grades_pct), ">yield at %", ">GO up to %", ">free roll mm")
    rows = []
    for line in found:
        verdicts = [line.verdict(grade) for grade in grades_pct]
        worst = max(verdicts, key=["GO", "NOT PROVEN", "NO-GO"].index)
        rows.append(Row(line.cells(), "" if worst == "GO" else worst))
    return Table(title, columns, rows)


def _proved(how: str, found: Sequence[Line], grades_pct: Sequence[float]) -> str:
    words = []
    for grade, verdict in product(grades_pct, ("NO-GO", "NOT PROVEN")):
        if trucks := [line.truck for line in found if line.verdict(grade) == verdict]:
            words.append(f"{', '.join(trucks)} {verdict} on {grade:g} %")
    if not words:
        return f"{how}: every truck is a GO up to {max(grades_pct):g} %."
    return f"{how}: {'; '.join(words)}; the rest GO."


def _settled(found: Sequence[Line], grades_pct: Sequence[float]) -> list[str]:
    """What would settle the first truck that is NOT PROVEN although everything about it is known."""
    for line, grade in product(found, grades_pct):
        if len(line.cases) == 1 and line.verdict(grade) == "NOT PROVEN":
            hold = line.holds(grade)[0]
            wanted = settle(hold.judgment, hold.budget)
            return [f"What is NOT PROVEN is settled by knowing the {INPUTS[wanted.input]} better."]
    return []


def _price(own: Sequence[Line], other: Sequence[Line]) -> str:
    pairs = {(one.gear_of, two.gear_of): (one.lock, two.lock) for one, two in zip(own, other)}
    first, second = max(pairs.values(), key=lambda locks: locks[0].gear.teeth / locks[1].gear.teeth)
    gained = compare_park_gears(first.gear, second.gear, stress_factor=first.strength.stress_factor)
    return (
        f"{second.gear.teeth} teeth instead of {first.gear.teeth} bend {number(gained.bending_ratio, 2)} times as late and let the vehicle roll "
        f"{number(gained.free_roll_ratio, 2)} times as far before the pawl drops in."
    )


def _fleet_decision(line: Line, grades_pct: Sequence[float], chosen: Chosen) -> Decision:
    grade = next(grade for grade in grades_pct if line.verdict(grade) != "GO")
    found = decision(line.cases[0], line.lock, line.holds(grade)[-1], grade, chosen, line.gear_of)
    if len(line.cases) == 1:
        return found
    settled = "That is its worst case: to settle it, read the size on its tires and weigh its trailer."
    return replace(found, verdict=line.verdict(grade), settle=settled)
