"""The tables of a truck on grades: gear by gear, grade by grade, gear by grade, and with the lock-up clutch open."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ... import hold
from ...converter import Characteristic
from ...edge import number, show
from ...error import Error
from ...judge import Reading
from ...sheet import Row, Table
from ...tow import GearPull, Pull, unit_loss
from ...tow import Running as AtWork
from ...train import Gear
from ..capacity import review_gears, working_point
from ..one_way import duties, one_ways
from .frame import STEP_KM_H, Hot, Truck, largest, loss_of, minutes_left, share, slowed


def margins_of(truck: Truck, pull: Pull) -> dict[str, str]:
    """For each gear the clutch or brake with the least margin at the torque of the pull, at full line pressure."""
    packs = truck.family.packs(truck.variant)
    if not packs or truck.pressure_kpa is None or pull.output_nm <= 0:
        return {}
    train = truck.family.train(truck.variant)
    found = {}
    for gear in train.gears():
        row = pull.gears[gear.id]
        turbine = Reading.exact(abs(row.input_nm))
        speed = row.engine_rpm if truck.oil_density_kg_m3 else 0.0
        working = working_point(truck.family, truck.variant, truck.pressure_kpa, turbine, speed, truck.oil_density_kg_m3 or 0.0)
        review = review_gears(_Only(gear), packs, working, reverse=row.ratio < 0).get(gear.id)  # type: ignore[arg-type]
        if review:
            found[gear.id] = f"{number(review.weakest.margin, 2)} {review.governing}"
    return found


def weakest(truck: Truck, pull: Pull, margins: Mapping[str, str]) -> str:
    """The weakest clutch or brake of the chosen gear, in a sentence."""
    if pull.chosen is None or pull.chosen not in margins or truck.pressure_kpa is None:
        return ""
    margin, element = margins[pull.chosen].split()
    return f" At {show(truck.pressure_kpa.value, 'kpa')} the least clutch margin in {pull.chosen} is {margin}, of {element}."


@dataclass(frozen=True)
class _Only:
    """A train of which one gear is looked at."""

    gear: Gear

    def gears(self) -> list[Gear]:
        return [self.gear]


def _one_way(truck: Truck, pull: Pull) -> dict[str, str]:
    """What the one-way clutch of each gear carries, and the share of its capacity where the record has one."""
    known = one_ways(truck.family)
    if len(known) != 1 or pull.output_nm <= 0:
        return {}
    capacity_nm = hold.one_way_part(truck.family, truck.variant).capacity_nm() if truck.family.as_dict().get("one_way") else None
    found = {}
    for gear, duty in duties(truck.family.train(truck.variant), known[0], known).items():
        if duty.role == "holds" and duty.share is not None:
            nm = abs(duty.share) * pull.gears[gear].input_nm
            found[gear] = number(nm, 0) + (f" ({share(nm / capacity_nm)})" if capacity_nm else "")
    return found


def _shaft(truck: Truck, input_nm: float, output_nm: float) -> str:
    """The most strained shaft: stress over yield."""
    strained = []
    for name, rated in hold.shafts(truck.family, truck.variant).items():
        carries = truck.family.as_dict()["shaft"][name]["carries"]
        stress = rated.shaft.torsion(torque_nm=abs(input_nm if carries == "turbine" else output_nm)).stress_mpa
        strained.append((stress / rated.shear_yield_mpa, name))
    most, name = max(strained, default=(0.0, ""))
    return f"{share(most)} {name}" if strained else ""


def gear_table(truck: Truck, pull: Pull, margins: Mapping[str, str]) -> Table:
    """Every gear at one grade and speed."""
    carried = _one_way(truck, pull)
    rows = []
    for name, gear in pull.gears.items():
        possible = gear.standing != "over speed"
        cells = (
            name, number(gear.engine_rpm, 0), number(gear.input_nm, 0), number(gear.full_nm, 0) if gear.full_nm else "-",
            share(gear.reserve) if gear.full_nm else "-", share(gear.use_of_input), margins.get(name, "-") if possible else "-",
            carried.get(name, "-") if possible else "-", _shaft(truck, gear.input_nm, pull.output_nm) if possible else "-", _standing(pull, name, gear),
        )  # fmt: skip
        mark = "governs" if name == pull.chosen else ("" if gear.standing in ("holds", "little reserve") else "quiet")
        rows.append(Row(cells, mark))
    at = f"{show(truck.pressure_kpa.value, 'kpa')}, the record's greatest line pressure" if truck.pressure_kpa else "no pressure"
    return Table(
        f"Gear by gear at {show(pull.speed_km_h, 'km_h', 0)}, {show(pull.output_nm, 'nm')} at the output",
        ("gear", ">engine rpm", ">input N·m", ">full torque N·m", ">in hand", ">of rated input", ">least clutch margin", ">one-way N·m", ">shaft of yield", "how it stands"),
        rows,
        f"Lock-up clutch closed. Clutch margin: capacity over demand at {at}, static friction; one-way clutch: torque and its share of the capacity at the record's stress.",
    )  # fmt: skip


def _standing(pull: Pull, name: str, gear: GearPull) -> str:
    if name == pull.chosen:
        return "chosen" if pull.advised == pull.chosen else "chosen, beyond a rating"
    return "advised" if name == pull.advised else gear.standing


def grade_table(truck: Truck, steps: Sequence[tuple[float, float]], hot: Hot | None) -> Table:
    """The gear that a truck takes on each grade."""
    rows = []
    for grade, speed in steps:
        held = slowed(truck, grade, speed)
        if held is None or held.gear is None:
            rows.append(Row((f"{grade:g}", number(speed, 0), "-", "none", "-", "-", "-", "-", "no locked gear holds", "-", "-"), "NOT PROVEN"))
            continue
        gear = held.gear
        fastest = [largest(truck, grade, within_ratings=within) for within in (False, True)]
        beyond = gear.use_of_input > 1 or held.use_of_output > 1
        governs = f"{held.limit} {share(held.use_of_limit)}" + ("" if held.advised in (None, held.chosen) else f", shift down to {held.advised}")
        rows.append(Row((
            f"{grade:g}", number(speed, 0), number(held.speed_km_h, 0), str(held.chosen), number(gear.input_nm, 0), number(held.output_nm, 0),
            share(gear.use_of_input), share(held.use_of_output), governs, " / ".join(number(found.speed_km_h, 0) if found else "-" for found in fastest),
            minutes_left(loss_of(truck, held, hot), hot),
        ), "NO-GO" if beyond else ""))  # fmt: skip
    return Table(
        "Grade by grade",
        (">grade %", ">asked km/h", ">held km/h", "gear", ">input N·m", ">output N·m", ">of rated input", ">of rated output", "governs", ">fastest km/h: engine / in ratings", ">minutes left"),
        rows,
        f"Highest gear that keeps {share(truck.rig.rule.torque_reserve)} of full torque in hand; where none does, the speed falls in steps of {STEP_KM_H:g} km/h.",
    )  # fmt: skip


def gear_by_grade(truck: Truck, steps: Sequence[tuple[float, float]]) -> Table:
    """What every gear would use of the rated input torque on every grade."""
    pulls = [truck.rig.pull(grade_pct=grade, speed_km_h=speed) for grade, speed in steps]
    rows = []
    for place, name in enumerate(truck.rig.gearing.names):
        if truck.rig.gearing.gears[place].ratio <= 0:
            continue
        cells = []
        for pull in pulls:
            gear = pull.gears[name]
            use = {"over speed": "-", "below lock-up": "open", "too weak": f"({share(gear.use_of_input)})"}.get(gear.standing, share(gear.use_of_input))
            cells.append(f"[{use}]" if name == pull.chosen else use)
        rows.append(Row((name, *cells)))
    columns = tuple(f">{grade:g} % at {speed:g}" for grade, speed in steps)
    note = "At the speed asked for, km/h. [chosen]; (the engine is too weak); - over speed; open: the lock-up clutch opens."
    return Table("Share of the rated input torque, gear by grade", ("gear", *columns), rows, note)


def unlocked_table(truck: Truck, characteristic: Characteristic, grade_pct: float, speed_km_h: float, hot: Hot | None) -> Table:
    """Every gear with the lock-up clutch open."""
    rows = []
    for name, gear in zip(truck.rig.gearing.names, truck.rig.gearing.gears):
        try:
            found = truck.rig.unlocked_pull(characteristic, name, grade_pct=grade_pct, speed_km_h=speed_km_h)
        except Error:
            continue  # lighter than the characteristic reaches: it hardly slips
        if gear.ratio <= 0 or not found.full_nm:
            continue
        left = "-"
        if hot:
            at_work = AtWork(
                input_nm=found.turbine_nm, input_rpm=found.turbine_rpm, efficiency=gear.efficiency, drag_nm=hot.model.drag_nm, pump_kpa=hot.model.pump_kpa,
                pump_l_min=hot.model.pump_l_min, pump_efficiency=hot.model.pump_efficiency, converter_kw=found.converter_kw,
            )  # fmt: skip
            left = minutes_left(unit_loss(at_work), hot)
        cells = (
            name, number(found.engine_rpm, 0), number(found.engine_nm, 0), share(found.reserve), number(found.turbine_nm, 0), share(found.use_of_input),
            number(found.converter_kw, 1), left, "holds" if found.holds else "engine too weak",
        )  # fmt: skip
        rows.append(Row(cells, "" if found.holds else "quiet"))
    return Table(
        f"With the lock-up clutch open at {show(speed_km_h, 'km_h', 0)}",
        ("gear", ">engine rpm", ">engine N·m", ">in hand", ">turbine N·m", ">of rated input", ">converter kW", ">minutes left", "how it stands"),
        rows,
        "The converter multiplies torque and turns the rest into heat: minutes, not hours. Gears in which it hardly slips, or the engine's table does not say, are left out.",
    )
