"""A combination that starts on a grade, forward and in reverse: force, grip, clutches, one-way clutch and shafts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from .. import Explanation, hazard
from ..clutch import GearReview, review
from ..converter import StallSpeed, stall_speed
from ..edge import number, show
from ..error import refusal
from ..hold import ShaftHold, ShaftLoad, shafts
from ..judge import Judgment, Reading
from ..record import Family, Fleet
from ..road import Combination, Driveline
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..tow import Gearing, Launch, LaunchForce, LaunchGrip, Stance, gearing, grip_on_grade
from . import RULE, rule_in_words
from .one_way import one_ways, placed
from .tow import Towed
from .truck import truck_of
from .turning import Turn, turning_table

INPUTS = ("turbine torque", "rolling circumference of the tires", "mass")
"""What the uncertainty of the force to spare comes from, in the order of the budget."""

@dataclass(frozen=True)
class Start:
    """A truck of the fleet with its trailer and unit, about to launch."""

    towed: Towed
    family: Family
    fleet: Fleet
    truck: Mapping[str, Any]
    torque_u_rel: float = 0.0
    tire_friction: float | None = None
    friction_from: str = "as given"

    @property
    def variant(self) -> str:
        """Variant of the unit."""
        return str(self.truck["variant"])

    @property
    def unit(self) -> Gearing:
        """Gears and ratings of the unit."""
        return gearing(self.family, self.variant)

    @property
    def stall(self) -> StallSpeed:
        """Engine and converter at stall, as their tables say."""
        engine = self.fleet.as_dict()["engine"][self.truck["engine"]]
        return stall_speed(self.fleet.engine_curve(self.truck["engine"]), self.fleet.characteristic(engine["converter"]))

    @property
    def mass_kg(self) -> Reading:
        """Truck and trailer."""
        return self.towed.review.loads.combination_kg

    @property
    def combination(self) -> Combination:
        """As the road feels it."""
        return self.fleet.combination(self.truck["id"], trailer_kg=self.towed.coupled.trailer.mass_kg.value)

    def driveline(self, tire: str) -> Driveline:
        """Axle and tire."""
        return Driveline(axle_ratio=self.truck["axle"], circumference_mm=self.fleet.rolling(tire).circumference_mm)

    @property
    def tire(self) -> str:
        """The tire; where several are possible the largest, which pulls least."""
        tires = [self.truck["tire"]] if self.truck["tire"] != "unknown" else self.truck["tire_candidates"]
        return str(max(tires, key=lambda name: self.fleet.rolling(name).circumference_mm.value))

    def rated_nm(self, reverse: bool) -> float:
        """Torque at the input that the unit is rated for."""
        return self.unit.rated_reverse_nm if reverse else self.unit.rated_input_nm

    def turbine_nm(self, reverse: bool) -> Reading:
        """What the unit may get: no more than at stall, no more than its rating."""
        value = min(self.stall.turbine_nm.value, self.rated_nm(reverse))
        return Reading(value=value, u=self.torque_u_rel * value)

    def gear(self, reverse: bool) -> str:
        """The gear that launches: the lowest of its direction."""
        ratios = {name: gear.ratio for name, gear in zip(self.unit.names, self.unit.gears)}
        wanted = {name: abs(ratio) for name, ratio in ratios.items() if (ratio < 0) == reverse}
        return max(wanted, key=lambda name: wanted[name])

    def launch(self, reverse: bool, turbine_nm: Reading | None = None, driveline: Driveline | None = None, mass_kg: Reading | None = None) -> Launch:
        """At the point of moving."""
        gear = self.unit.gears[self.unit.names.index(self.gear(reverse))]
        road = self.fleet.as_dict()["road"]
        return Launch(
            turbine_nm=turbine_nm or self.turbine_nm(reverse), gear_ratio=gear.ratio, gear_efficiency=gear.efficiency,
            driveline=driveline or self.driveline(self.tire), axle_efficiency=road["axle_efficiency"], mass_kg=mass_kg or self.mass_kg,
            rolling_coefficient=self.combination.rolling_coefficient,
        )  # fmt: skip

    def force(self, grade_pct: float, reverse: bool) -> LaunchForce:
        """Force against what it takes."""
        return self.launch(reverse).launch(grade_pct=grade_pct, rule=RULE)

    def grip(self, grade_pct: float, reverse: bool, tire_friction: float) -> LaunchGrip:
        """What the tires of the driven axle carry."""
        tow, loads, coupled = self.truck["tow"], self.towed.review.loads, self.towed.coupled
        stance = Stance(
            driven_axle_kg=loads.rear_kg.value, truck_kg=loads.truck_kg.value, trailer_kg=loads.trailer_axles_kg.value, wheelbase_mm=coupled.levers.wheelbase_mm,
            cg_height_mm=tow.get("cg_height_mm") or 0.0, hitch_height_mm=tow.get("hitch_height_mm") or 0.0, tail_up=reverse,
        )  # fmt: skip
        return grip_on_grade(stance, grade_pct=grade_pct, tire_friction=tire_friction, rolling_coefficient=self.combination.rolling_coefficient)

    def clutches(self, reverse: bool) -> GearReview:
        """Every pack of the gear at the pressure of a stall, the converter's torque on it up to the rating."""
        written = self.family.as_dict()
        rating = written["variant"][self.variant]
        low, high = rating["line_stall_r_kpa" if reverse else "line_stall_d_kpa"]
        return review(
            _gear(self.family, self.variant, self.gear(reverse)), dict(self.family.packs(self.variant)), pressure_kpa=Reading.rectangular((low + high) / 2, half_width=(high - low) / 2), friction=self.family.static_friction,
            geometry_u_rel=written["friction"]["geometry_u_rel"], oil_density_kg_m3=0.0, turbine_torque_nm=self.turbine_nm(reverse), turbine_speed_rpm=0.0, rule=RULE,
        )  # fmt: skip


def _gear(family: Family, variant: str, name: str) -> Any:
    return next(gear for gear in family.train(variant).gears() if gear.id == name)


def start_of(
    family: Family, fleet: Fleet, truck_id: str, towed: Towed, *, torque_u_rel: float = 0.0, tire_friction: float | None = None, friction_from: str = "as given"
) -> Start:  # fmt: skip
    """A truck of the fleet about to launch; a truck whose unit the family does not have is refused."""
    truck = truck_of(fleet, truck_id)
    if truck["variant"] not in family.variants:
        raise refusal("variant", f"the family has no {truck['variant']!r}; it has {', '.join(family.variants)}")
    return Start(towed, family, fleet, truck, torque_u_rel, tire_friction, friction_from)


def launch_sheet(start: Start, *, grade_pct: float, title: str, story: str = "") -> Sheet:
    """Launch on a grade forward and in reverse: what moves it, what holds it, and which limit comes first."""
    forces = {reverse: start.force(grade_pct, reverse) for reverse in (False, True)}
    reviews = {reverse: start.clutches(reverse) for reverse in (False, True)}
    turns, turns_data = turning_table(forces[False].judgment, forces[False].budget, _turns(start, grade_pct))
    gripped = start.tire_friction is not None
    return Sheet(
        title=title,
        story=story,
        answer=" ".join([*(_says(start, forces[reverse], reverse, grade_pct) for reverse in forces), _passes(start), _comes_first(start, forces, grade_pct)]),
        decisions=[*(_decision(start, forces[reverse], reverse, grade_pct) for reverse in forces), *_clutch_decisions(reviews, start), *_shaft_decisions(start)],
        tables=[_grade_table(start, grade_pct), _clutch_table(start, reviews), turns],
        facts=_facts(start, forces[False]),
        not_checked=[
            *([] if start.torque_u_rel else ["How well the torque at the turbine is known: it is taken as exact; give its uncertainty."]),
            *([] if gripped else ["Grip of the driven tires: give the friction of tire on ground."]),
            *(["Share that the pull of the hitch takes off the driven axle: the record has no heights."] if gripped and not start.truck["tow"].get("cg_height_mm") else []),
            "Break-away: cold tires, soft ground and a brake that drags take more than rolling.",
            "How long: at stall the converter heats the fluid within seconds; repeated starts on a grade need pauses. Trailer brakes, and what local law asks.",
        ],
        cautions=[hazard.caution("towing"), hazard.caution("stall heat"), hazard.caution("roll-away")],
        cards=["tow.launch", "converter.stall_speed", "clutch.review", *(["tow.grip_on_grade"] if gripped else [])],
        how=_how(start, forces[False], grade_pct),
        data={
            "inputs": turns_data,
            "grade_pct": grade_pct,
            "stall": start.stall.as_dict(),
            "launch": {("reverse" if reverse else "forward"): {"gear": start.gear(reverse), **force.as_dict()} for reverse, force in forces.items()},
            "grip": {("reverse" if reverse else "forward"): start.grip(grade_pct, reverse, start.tire_friction).as_dict() for reverse in forces} if start.tire_friction else None,
        },
    )  # fmt: skip


def _way(reverse: bool) -> str:
    return "in reverse" if reverse else "forward"


def _up_to(grade_pct: float) -> str:
    return "100 % or steeper" if grade_pct >= 100 else f"{number(grade_pct, 1)} %"


def _says(start: Start, force: LaunchForce, reverse: bool, grade_pct: float) -> str:
    return (
        f"{'In reverse' if reverse else 'Forward'} ({start.gear(reverse)}) the driven wheels push {show(force.tractive_n, 'n')} against {show(force.needed_n, 'n')} on {grade_pct:g} %: "
        f"it moves up to {_up_to(force.largest_grade_pct)}, proven up to {_up_to(force.proven_grade_pct)}."
    )


def _passes(start: Start) -> str:
    stall_nm = start.stall.turbine_nm.value
    rated = {reverse: start.rated_nm(reverse) for reverse in (False, True)}
    if stall_nm <= min(rated.values()):
        return f"At stall the turbine gets {show(stall_nm, 'nm')}, within the ratings of the unit."
    return (
        f"At full throttle the turbine would get {show(stall_nm, 'nm')}: {number(stall_nm / rated[False], 2)} times what the unit is rated for forward, "
        f"{number(stall_nm / rated[True], 2)} in reverse. The figures here are at the ratings: the throttle must be held back, or the torque managed."
    )


def _comes_first(start: Start, forces: Mapping[bool, LaunchForce], grade_pct: float) -> str:
    if start.tire_friction is None:
        return "What is launched is no towing rating."
    grips = {reverse: start.grip(grade_pct, reverse, start.tire_friction).largest_grade_pct for reverse in forces}
    words = [
        f"{_way(reverse)} {'the tires slip first, at' if grips[reverse] < force.largest_grade_pct else 'the force ends first, at'} "
        f"{_up_to(min(grips[reverse], force.largest_grade_pct))}"
        for reverse, force in forces.items()
    ]
    return f"With a friction of {start.tire_friction:g} {' and '.join(words)}. What is launched is no towing rating."


def _decision(start: Start, force: LaunchForce, reverse: bool, grade_pct: float) -> Decision:
    judged = force.judgment
    basis = f"{show(force.left_n, 'n')} to spare, standard uncertainty {show(judged.reading.u, 'n')}; {rule_in_words(RULE)}."
    settled = f"It is a GO up to {_up_to(force.proven_grade_pct)}." if judged.verdict != "GO" else ""
    return Decision(f"{start.towed.name} moves {_way(reverse)} up {grade_pct:g} %", judged.verdict, judged.chance, basis, settled)


def _clutch_decisions(reviews: Mapping[bool, GearReview], start: Start) -> list[Decision]:
    found = []
    for reverse, gear in reviews.items():
        weakest = gear.weakest
        basis = f"{show(weakest.need_nm, 'nm')} of {show(weakest.capacity_nm, 'nm')}, margin {number(weakest.margin, 2)}, at the pressure of a stall and {show(start.turbine_nm(reverse).value, 'nm')} at the turbine."
        found.append(Decision(f"{gear.governing} holds {_way(reverse)} ({start.gear(reverse)})", weakest.verdict, weakest.chance, basis))
    return found


def _shaft_decisions(start: Start) -> list[Decision]:
    """The shafts of the record at the torque of the launch, where the record says how well their stress is known."""
    found = []
    for name, shaft in shafts(start.family, start.variant).items():
        if shaft.stress_u_rel is None:
            continue
        worst = max(_shaft_torque(start, name, reverse) for reverse in (False, True))
        load = ShaftLoad(torque_nm=Reading.exact(worst), shear_yield_mpa=Reading.exact(shaft.shear_yield_mpa), stress_factor=1.0, stress_u_rel=shaft.stress_u_rel)
        held: ShaftHold = shaft.shaft.shaft_hold(load, rule=RULE)
        basis = f"{show(worst, 'nm')} through it, {number(held.judgment.reading.value, 0)} MPa to spare below yield; one steady torque, plain shaft."
        found.append(Decision(f"{name} shaft bears the launch", held.judgment.verdict, held.judgment.chance, basis))
    return found


def _shaft_torque(start: Start, name: str, reverse: bool) -> float:
    turbine = start.turbine_nm(reverse).value
    gear = start.unit.gears[start.unit.names.index(start.gear(reverse))]
    return turbine * abs(gear.ratio) if name == "output" else turbine


def _grade_table(start: Start, grade_pct: float) -> Table:
    friction = start.tire_friction
    columns = [">grade %", ">takes N"]
    for way in ("forward", "reverse"):
        columns += [f">{way}: force N", f">{way}: grip N" if friction else "", "verdict"]
    rows = []
    for step in sorted({0.0, 6.0, 12.0, 20.0, 30.0, grade_pct}):
        cells, worst = [f"{step:g}", ""], "GO"
        for reverse in (False, True):
            force = start.force(step, reverse)
            cells[1] = number(force.needed_n, 0)
            verdict = force.judgment.verdict
            grip = start.grip(step, reverse, friction) if friction else None
            if grip and grip.grip_n < force.needed_n:
                verdict = "NO-GO" if verdict != "NO-GO" else verdict
            cells += [number(force.tractive_n, 0), number(grip.grip_n, 0) if grip else "", verdict]
            worst = max(worst, verdict, key=["GO", "NOT PROVEN", "NO-GO"].index)
        rows.append(Row(tuple(cells), "" if worst == "GO" else worst))
    note = "Force at the torque of the ratings; the verdict counts the grip where a friction was given, taken as exact." if friction else "Force at the torque of the ratings; grip not looked at."
    return Table("Launch by grade", tuple(columns), rows, note)


def _clutch_table(start: Start, reviews: Mapping[bool, GearReview]) -> Table:
    rows = []
    for reverse, gear in reviews.items():
        for name, row in gear.elements.items():
            cells = (start.gear(reverse), name, f"{number(row.share, 3)}", number(row.need_nm, 0), number(row.capacity_nm, 0), number(row.margin, 2), row.verdict)
            rows.append(Row(cells, "" if row.verdict == "GO" else row.verdict))
        rows += _one_way_rows(start, reverse)
    return Table("What holds at the launch", ("gear", "element", ">share of turbine", ">asked N·m", ">holds N·m", ">margin", "verdict"), rows, "At stall no drum of the input turns: no oil head helps or harms.")


def _one_way_rows(start: Start, reverse: bool) -> list[Row]:
    if not start.family.as_dict().get("one_way") or len(one_ways(start.family)) != 1:
        return []
    clutch = placed(start.family, start.variant, turbine_nm=start.turbine_nm(reverse))
    duty = clutch.duties[start.gear(reverse)]
    if duty.role != "holds":
        return [Row((start.gear(reverse), clutch.element, "", "", "", "", duty.role), "quiet")]
    share, held = abs(duty.share or 0.0), clutch.hold(RULE)
    need_nm = share * start.turbine_nm(reverse).value
    capacity = (number(held.capacity_nm, 0), number(held.capacity_nm / need_nm, 2)) if held else ("", "")
    return [Row((start.gear(reverse), clutch.element, number(share, 3), number(need_nm, 0), *capacity, duty.role))]


def _facts(start: Start, force: LaunchForce) -> list[Fact]:
    stall, u = start.stall, start.torque_u_rel
    return [
        Fact("stall", f"{number(stall.point.engine_rpm, 0)} rpm, torque ratio {number(stall.point.torque_ratio, 2)}", f"{show(stall.turbine_nm.value, 'nm')} at the turbine, as the tables of engine {start.truck['engine']} say"),
        Fact("rated", f"{show(start.rated_nm(False), 'nm')} forward, {show(start.rated_nm(True), 'nm')} in reverse", f"at the turbine, {start.variant}: the record's"),
        Fact("turbine torque counted", show(start.turbine_nm(False).value, "nm"), f"the lesser of the two{f', standard uncertainty {100 * u:g} %' if u else ', taken as exact'}"),
        Fact("tire", start.fleet.tire(start.tire).text(), "of those it may have, the largest: it pulls least" if start.truck["tire"] == "unknown" else ""),
        Fact("driven axle", show(start.towed.review.loads.rear_kg.value, "kg"), "rear axle with the hitch load; four-wheel drive is not counted"),
        *([Fact("friction of tire on ground", f"{start.tire_friction:g}", start.friction_from)] if start.tire_friction else []),
    ]  # fmt: skip


def _turns(start: Start, grade_pct: float) -> list[Turn]:
    line = start.driveline(start.tire)
    turbine, mass, around = start.turbine_nm(False), start.mass_kg, line.circumference_mm

    def judged(**changed: Any) -> Judgment:
        return start.launch(False, **changed).launch(grade_pct=grade_pct, rule=RULE).judgment

    def tire(value: float) -> Judgment:
        return judged(driveline=Driveline(axle_ratio=line.axle_ratio, circumference_mm=Reading(value=value, u=around.u)))

    return [
        Turn(INPUTS[0], turbine, "nm", lambda value: judged(turbine_nm=Reading(value=value, u=start.torque_u_rel * value)), 0.05 * turbine.value, 2 * turbine.value),
        Turn(INPUTS[1], around, "mm", tire, 0.5 * around.value, 3 * around.value, 0),
        Turn(INPUTS[2], mass, "kg", lambda value: judged(mass_kg=Reading(value=value, u=mass.u)), 0.1 * mass.value, 10 * mass.value),
    ]


def _how(start: Start, force: LaunchForce, grade_pct: float) -> list[Explanation]:
    launch = start.launch(False)
    given = {name: getattr(launch, name) for name in ("turbine_nm", "gear_ratio", "gear_efficiency", "driveline", "axle_efficiency", "mass_kg", "rolling_coefficient", "break_away_coefficient")}
    worked = [start.stall.explain(), force.explain(**given)]
    if start.tire_friction is not None:
        grip = start.grip(grade_pct, False, start.tire_friction)
        worked.append(grip.explain(tire_friction=start.tire_friction))
    return worked
