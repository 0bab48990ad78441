"""Every truck of a fleet over its road table: where it uses most of the torque that its unit is rated for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ... import hazard
from ...edge import number
from ...record import Family, Fleet
from ...sheet import Row, Sheet, Table
from ...tow import GearPull, Pull
from .frame import CAUTIONS, DEFERS, Truck, asked_of, slowed, trucks_on_road


@dataclass(frozen=True)
class Worst:
    """Where a truck uses most of its rated input torque, over the road table."""

    truck: Truck
    pull: Pull
    grade_pct: float
    asked_km_h: float

    @property
    def gear(self) -> GearPull:
        """The gear that it takes there."""
        assert self.pull.gear is not None
        return self.pull.gear


def worst_of(truck: Truck, grades: Sequence[tuple[float, float]]) -> Worst | None:
    """The grade of a road table on which a truck uses most of its rated input torque; None where it climbs none of them."""
    found = [Worst(truck, held, grade, speed) for grade, speed in grades if (held := slowed(truck, grade, speed)) and held.gear]
    return max(found, key=lambda worst: worst.gear.use_of_input, default=None)


def worst_cases(family: Family, fleet: Fleet) -> Iterator[list[Worst]]:
    """For every truck its worst case, or one for each of what may be fitted."""
    grades = asked_of(fleet)
    for name in fleet.trucks:
        cases = [worst_of(truck, grades) for truck in trucks_on_road(family, fleet, name)]
        yield [case for case in cases if case]


def fleet_grades_sheet(family: Family, fleet: Fleet, *, title: str, story: str = "") -> Sheet:
    """Every truck of a fleet where it uses most of its rating."""
    found = [cases for cases in worst_cases(family, fleet) if cases]
    rows, data, beyond = [], [], []
    for cases in found:
        most = max(cases, key=lambda case: case.gear.use_of_input)
        least = min(cases, key=lambda case: case.gear.use_of_input)
        over = most.gear.use_of_input > 1 or most.pull.use_of_output > 1
        name = most.truck.name
        use = number(most.gear.use_of_input, 2) if len(cases) == 1 else f"{number(least.gear.use_of_input, 2)} to {number(most.gear.use_of_input, 2)}"
        advice = "" if not over else (f"shift down to {most.pull.advised}" if most.pull.advised else "slower, or less load")
        if over:
            beyond.append(f"{name} {use} on {most.grade_pct:g} % in {most.pull.chosen} ({advice})")
        rows.append(Row((
            name, most.truck.variant, number(most.truck.rig.haul.combination.mass_kg, 0), use, f"{most.grade_pct:g}", number(most.asked_km_h, 0),
            number(most.pull.speed_km_h, 0), str(most.pull.chosen), number(most.gear.input_nm, 0), number(most.pull.use_of_output, 2), advice,
        ), "NO-GO" if over else ""))  # fmt: skip
        data += [
            {
                "truck": name, "mass_kg": case.truck.rig.haul.combination.mass_kg, "rolls_on": case.truck.rolls_on,
                "worst_over_rated": case.gear.use_of_input, "worst_at": [case.grade_pct, case.asked_km_h, case.pull.chosen],
                "speed_km_h": case.pull.speed_km_h, "input_nm": case.gear.input_nm, "use_of_output": case.pull.use_of_output, "advised": case.pull.advised,
            }
            for case in cases
        ]  # fmt: skip
    answer = f"Beyond the rated input torque of its unit: {'; '.join(beyond)}." if beyond else "No truck passes the rated input torque of its unit on the road table."
    return Sheet(
        title=title,
        story=story,
        answer=f"{answer} {DEFERS}",
        tables=[Table(
            "Where each truck uses most of its rating",
            ("truck", "unit", ">kg", ">of rated input", ">grade %", ">asked km/h", ">held km/h", "gear", ">input N·m", ">of rated output", "advice"),
            rows,
            "Highest gear that keeps the reserve, lock-up clutch closed; where none does, the speed falls 1 km/h at a time. A range where tire or trailer are not known.",
        )],
        not_checked=["what the vehicles are rated for: trailer, axle, hitch, tires and brakes", "heat on long grades: the command grade with --practice or the figures of the sump"],
        cautions=[hazard.caution(word) for word in CAUTIONS],
        cards=["tow.pull", "tow.pull_slowed", "road.road_load"],
        data={"trucks": data},
    )  # fmt: skip


