"""A truck on a grade: what every gear is asked for, which limit governs, and how long the sump lasts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite
from typing import Any

from .. import Explanation, hazard, hold
from ..converter import Characteristic
from ..edge import number, show
from ..error import Error, refusal
from ..judge import Reading
from ..record import Family, Fleet
from ..sheet import Fact, Row, Sheet, Table
from ..tow import GearPull, HeatModel, LargestSpeed, Pull, Rig, UnitLoss, rig, unit_loss
from ..tow import Running as AtWork
from ..train import Gear
from .capacity import review_gears, working_point
from .one_way import duties, one_ways
from .park import tires_of, truck_of

CAUTIONS = ("towing", "hot fluid", "roll-away")
STEP_KM_H = 1.0
"""Step by which a speed is lowered where no gear holds."""
FASTEST_KM_H = 160.0
"""No faster than this is asked, where the largest speed is sought."""


@dataclass(frozen=True)
class Hot:
    """The sump, its start, and in words where its figures come from."""

    model: HeatModel
    start_c: float
    source: str


@dataclass(frozen=True)
class Truck:
    """A truck of the records on the road."""

    name: str
    variant: str
    rig: Rig
    family: Family
    characteristic: Characteristic | None = None
    pressure_kpa: Reading | None = None
    oil_density_kg_m3: float | None = None
    rolls_on: str = ""

    @property
    def ratings(self) -> str:
        """The ratings in words."""
        gearing = self.rig.gearing
        return f"{number(gearing.rated_input_nm, 0)} in, {number(gearing.rated_output_nm, 0)} N·m out"


def trucks_on_road(family: Family, fleet: Fleet, truck: str, *, tire: str | None = None, trailer_kg: float | None = None) -> list[Truck]:
    """A truck: one, or one for each tire and each end of the trailer's mass where the fleet has gaps."""
    record = truck_of(fleet, truck)
    gap = record.get("trailer_range_kg") if record.get("trailer_kg") is None else None
    masses: Sequence[float | None] = [trailer_kg] if trailer_kg is not None else (gap or [None])
    engine = fleet.as_dict()["engine"][record["engine"]]
    characteristic = fleet.characteristic(engine["converter"]) if engine.get("converter") else None
    pressure = (family.as_dict()["variant"].get(record["variant"]) or {}).get("line_control_max_kpa")
    found = []
    for name in [tire] if tire else tires_of(fleet, truck):
        for mass in masses:
            at = rig(family, fleet, truck, speed_step_km_h=STEP_KM_H, tire=name, trailer_kg=mass)
            rolls_on = f"axle {record['axle']:g}, tire {fleet.tire(name).text()}"
            found.append(Truck(truck, record["variant"], at, family, characteristic, Reading.exact(pressure) if pressure else None, None, rolls_on))
    return found


def asked_of(fleet: Fleet) -> list[tuple[float, float]]:
    """The grades of the fleet's road table, each with the speed that is asked for on it."""
    road = fleet.as_dict().get("road")
    if not road:
        raise refusal("road", "the fleet has no [road] table: it gives grades, speeds, air and the choice of gear", "MISSING")
    return list(zip(road["grade_pct"], road["speed_km_h"], strict=True))


# ---- one grade


def grade_sheet(
    truck: Truck, *, grade_pct: float, speed_km_h: float, grades: Sequence[tuple[float, float]] = (), hot: Hot | None = None, title: str, story: str = ""
) -> Sheet:  # fmt: skip
    """One truck on one grade, gear by gear, and the same over other grades."""
    pull = truck.rig.pull(grade_pct=grade_pct, speed_km_h=speed_km_h)
    fallen = slowed(truck, grade_pct, speed_km_h) if pull.chosen is None else None
    held = fallen or pull
    steps = sorted({*grades, (grade_pct, speed_km_h)})
    loss = _loss(truck, held, hot)
    facts = [*_road_facts(truck, pull, grade_pct), *_heat_facts(truck, held, loss, hot, grade_pct)]
    tables = [_gears(truck, held), _grades(truck, steps, hot)]
    if truck.characteristic and pull.output_nm > 0:
        tables.append(_unlocked(truck, truck.characteristic, grade_pct, held.speed_km_h, hot))
    return Sheet(
        title=title,
        story=story,
        answer=f"{_sentence(truck, pull, fallen, speed_km_h)}{_minutes(truck, held, loss, hot)} {DEFERS}",
        tables=tables,
        facts=facts,
        not_checked=_not_checked(truck, hot),
        cautions=[hazard.caution(word) for word in CAUTIONS],
        cards=["tow.pull", "tow.largest_speed", "clutch.review", *(["tow.unit_loss", "tow.warmed", "tow.time_to"] if hot else [])],
        how=_how(truck, held, loss, hot),
        data=_data(truck, held, speed_km_h, loss, hot),
    )


DEFERS = "No rating is computed here: the vehicle maker's ratings and placards, the hitch's rating and local law stand."


def slowed(truck: Truck, grade_pct: float, speed_km_h: float) -> Pull | None:
    """A truck at the speed asked for, or as much slower as a gear needs to hold it; None where none ever does."""
    try:
        return truck.rig.pull_slowed(grade_pct=grade_pct, speed_km_h=speed_km_h)
    except Error as error:
        if error.kind != "NO_ANSWER":
            raise
        return None


def _share(value: float) -> str:
    return f"{number(100 * value, 0)} %"


def _sentence(truck: Truck, pull: Pull, fallen: Pull | None, speed_km_h: float) -> str:
    where = f"On {pull.grade_pct:g} % at {show(speed_km_h, 'km_h', 0)} {truck.name}"
    if pull.chosen is None and fallen is None:
        return f"{where} has no gear that the engine holds with the lock-up clutch closed, at no speed."
    head = "" if fallen is None else f"{where} has no gear that holds with the reserve; it falls back to {show(fallen.speed_km_h, 'km_h', 0)}. There it"
    held = fallen or pull
    gear = held.gear
    assert gear is not None
    if held.output_nm < 0:
        return f"{where} is pushed by the road in gear {held.chosen}: {show(gear.input_nm, 'nm')} at the input; the brakes must hold what the engine does not."
    text = (
        f"{head or where} takes gear {held.chosen} at {show(gear.engine_rpm, 'rpm')} with {show(gear.input_nm, 'nm')} at the input: "
        f"{_share(gear.use_of_input)} of what the unit is rated for, {_share(held.use_of_output)} at the output, and {_share(gear.reserve)} of the engine in hand."
    )
    if held.advised is None:
        within = _largest(truck, held.grade_pct, within_ratings=True)
        slower = f": {show(within.speed_km_h, 'km_h', 0)} in gear {_name(truck, within.gear)} would" if within else ", nor does less speed"
        return f"{text} No gear that holds stays within the ratings{slower}."
    if held.advised != held.chosen:
        lower = held.gears[held.advised]
        return f"{text} Shift down to {held.advised}: {_share(lower.use_of_input)} at {show(lower.engine_rpm, 'rpm')}."
    return f"{text} The {held.limit} governs, at {_share(held.use_of_limit)}."


def _name(truck: Truck, place: int) -> str:
    return truck.rig.gearing.names[place]


def _largest(truck: Truck, grade_pct: float, *, within_ratings: bool) -> LargestSpeed | None:
    try:
        return truck.rig.largest_speed(grade_pct=grade_pct, at_most_km_h=FASTEST_KM_H, within_ratings=within_ratings)
    except Error as error:
        if error.kind != "NO_ANSWER":
            raise
        return None


# ---- gear by gear


def _margins(truck: Truck, pull: Pull) -> dict[str, str]:
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
            found[gear] = number(nm, 0) + (f" ({_share(nm / capacity_nm)})" if capacity_nm else "")
    return found


def _shaft(truck: Truck, input_nm: float, output_nm: float) -> str:
    """The most strained shaft: stress over yield."""
    strained = []
    for name, rated in hold.shafts(truck.family, truck.variant).items():
        carries = truck.family.as_dict()["shaft"][name]["carries"]
        stress = rated.shaft.torsion(torque_nm=abs(input_nm if carries == "turbine" else output_nm)).stress_mpa
        strained.append((stress / rated.shear_yield_mpa, name))
    share, name = max(strained, default=(0.0, ""))
    return f"{_share(share)} {name}" if strained else ""


def _gears(truck: Truck, pull: Pull) -> Table:
    margins, carried = _margins(truck, pull), _one_way(truck, pull)
    rows = []
    for name, gear in pull.gears.items():
        possible = gear.standing != "over speed"
        cells = (
            name, number(gear.engine_rpm, 0), number(gear.input_nm, 0), number(gear.full_nm, 0) if gear.full_nm else "-",
            _share(gear.reserve) if gear.full_nm else "-", _share(gear.use_of_input), margins.get(name, "-") if possible else "-",
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


# ---- grade by grade


def _grades(truck: Truck, steps: Sequence[tuple[float, float]], hot: Hot | None) -> Table:
    rows = []
    for grade, speed in steps:
        held = slowed(truck, grade, speed)
        if held is None or held.gear is None:
            rows.append(Row((f"{grade:g}", number(speed, 0), "-", "none", "-", "-", "-", "-", "no locked gear holds", "-", "-"), "NOT PROVEN"))
            continue
        gear = held.gear
        largest = [_largest(truck, grade, within_ratings=within) for within in (False, True)]
        beyond = gear.use_of_input > 1 or held.use_of_output > 1
        governs = f"{held.limit} {_share(held.use_of_limit)}" + ("" if held.advised in (None, held.chosen) else f", shift down to {held.advised}")
        rows.append(Row((
            f"{grade:g}", number(speed, 0), number(held.speed_km_h, 0), str(held.chosen), number(gear.input_nm, 0), number(held.output_nm, 0),
            _share(gear.use_of_input), _share(held.use_of_output), governs, " / ".join(number(found.speed_km_h, 0) if found else "-" for found in largest),
            _left(_loss(truck, held, hot), hot),
        ), "NO-GO" if beyond else ""))  # fmt: skip
    return Table(
        "Grade by grade",
        (">grade %", ">asked km/h", ">held km/h", "gear", ">input N·m", ">output N·m", ">of rated input", ">of rated output", "governs", ">fastest km/h: engine / in ratings", ">minutes left"),
        rows,
        f"Highest gear that keeps {_share(truck.rig.rule.torque_reserve)} of full torque in hand; where none does, the speed falls in steps of {STEP_KM_H:g} km/h.",
    )  # fmt: skip


def _unlocked(truck: Truck, characteristic: Characteristic, grade_pct: float, speed_km_h: float, hot: Hot | None) -> Table:
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
            left = _left(unit_loss(at_work), hot)
        cells = (
            name, number(found.engine_rpm, 0), number(found.engine_nm, 0), _share(found.reserve), number(found.turbine_nm, 0), _share(found.use_of_input),
            number(found.converter_kw, 1), left, "holds" if found.holds else "engine too weak",
        )  # fmt: skip
        rows.append(Row(cells, "" if found.holds else "quiet"))
    return Table(
        f"With the lock-up clutch open at {show(speed_km_h, 'km_h', 0)}",
        ("gear", ">engine rpm", ">engine N·m", ">in hand", ">turbine N·m", ">of rated input", ">converter kW", ">minutes left", "how it stands"),
        rows,
        "The converter multiplies torque and turns the rest into heat: minutes, not hours. Gears in which it hardly slips, or the engine's table does not say, are left out.",
    )


# ---- heat


def _loss(truck: Truck, pull: Pull, hot: Hot | None) -> UnitLoss | None:
    gear = pull.gear
    if hot is None or gear is None or pull.chosen is None:
        return None
    place = truck.rig.gearing.names.index(pull.chosen)
    return unit_loss(_at_work(truck, gear, place, hot.model))


def _at_work(truck: Truck, gear: GearPull, place: int, model: HeatModel) -> AtWork:
    return AtWork(
        input_nm=gear.input_nm, input_rpm=gear.engine_rpm, efficiency=truck.rig.gearing.gears[place].efficiency, drag_nm=model.drag_nm,
        pump_kpa=model.pump_kpa, pump_l_min=model.pump_l_min, pump_efficiency=model.pump_efficiency, converter_kw=0.0,
    )  # fmt: skip


def _left(loss: UnitLoss | None, hot: Hot | None) -> str:
    if loss is None or hot is None:
        return "-"
    left = hot.model.node.time_to(start_c=hot.start_c, loss_kw=loss.total_kw, limit_c=hot.model.limit_c)
    return number(left.time_s / 60, 0) if left.reached else "no end"


def _minutes(truck: Truck, pull: Pull, loss: UnitLoss | None, hot: Hot | None) -> str:
    if loss is None or hot is None:
        return ""
    left = hot.model.node.time_to(start_c=hot.start_c, loss_kw=loss.total_kw, limit_c=hot.model.limit_c)
    limit = show(hot.model.limit_c, "c", 0)
    if left.reached:
        return f" From {show(hot.start_c, 'c', 0)} the sump reaches {limit} after {number(left.time_s / 60, 0)} minutes."
    return f" The sump comes to rest at {show(left.steady_c, 'c', 0)}, below {limit}."


def _heat_facts(truck: Truck, pull: Pull, loss: UnitLoss | None, hot: Hot | None, grade_pct: float) -> list[Fact]:
    if loss is None or hot is None:
        return []
    node, limit_c = hot.model.node, hot.model.limit_c
    warmed = node.warmed(start_c=hot.start_c, loss_kw=loss.total_kw, time_s=0)
    needed = node.cooler_needed_w_k(loss_kw=loss.total_kw, limit_c=limit_c)
    try:
        cool = truck.rig.cool_speed(hot.model, grade_pct=grade_pct, speed_km_h=pull.speed_km_h)
        sustained = f"{show(cool.pull.speed_km_h, 'km_h', 0)} in gear {cool.pull.chosen}"
    except Error as error:
        if error.kind != "NO_ANSWER":
            raise
        sustained = "none with the lock-up clutch closed"
    return [
        Fact("heat of the unit", show(loss.total_kw, "kw"), f"meshes {number(loss.mesh_kw, 1)}, drag {number(loss.drag_kw, 1)}, pump {number(loss.pump_kw, 1)} kW"),
        Fact("sump goes to", show(warmed.steady_c, "c", 0), f"on an endless grade; 63 % of the way in {number(warmed.time_constant_s / 60, 0)} minutes"),
        Fact("cooler needed", f"{number(needed, 0)} W/K", f"to stay at {show(limit_c, 'c', 0)} for good; here {number(node.cooler_w_k, 0)} W/K"),
        Fact("speed for good", sustained, "no faster for the sump to stay at its limit on an endless grade"),
        Fact("limit of the sump", show(limit_c, "c", 0), f"start {show(hot.start_c, 'c', 0)}, air {show(node.air_c, 'c', 0)}; {hot.source}"),
    ]


def _road_facts(truck: Truck, pull: Pull, grade_pct: float) -> list[Fact]:
    load, haul = pull.load, truck.rig.haul
    return [
        Fact("combination", show(haul.combination.mass_kg, "kg"), f"{truck.rolls_on}; rolling {haul.combination.rolling_coefficient:.5f}, drag area {haul.combination.drag_area_m2:g} m²"),
        Fact("road load", show(load.total_n, "n"), f"rolling {number(load.rolling_n, 0)}, air {number(load.aero_n, 0)}, grade {number(load.grade_n, 0)} N; {show(load.power_kw, 'kw')} at the wheels"),
        Fact("ratings of the record", truck.ratings, f"variant {truck.variant}"),
    ]  # fmt: skip


def _not_checked(truck: Truck, hot: Hot | None) -> list[str]:
    missing = [
        "what the vehicle is rated for: trailer, axle, hitch and tire ratings are the command tow, brakes and local law are the driver's",
        "grip of the driven tires, wind, altitude and accessories of the engine",
    ]
    if hot is None:
        missing.append("heat: give the sump with --heat-capacity, --case, --cooler, --air, --start and --alarm, or --practice for usual figures")
    else:
        missing.append("cooling at other speeds: less air passes the cooler when slow")
    if truck.oil_density_kg_m3 is None:
        missing.append("the oil head of turning clutches: give --oil-density")
    return missing


def _how(truck: Truck, pull: Pull, loss: UnitLoss | None, hot: Hot | None) -> list[Explanation]:
    gear, haul = pull.gear, truck.rig.haul
    if gear is None or pull.chosen is None:
        return []
    offered = truck.rig.gearing.gears[truck.rig.gearing.names.index(pull.chosen)]
    given: dict[str, Any] = {"haul.driveline": haul.driveline, "haul.axle_efficiency": haul.axle_efficiency}
    worked = [pull.explain(card="tow.pull", **{**gear.as_dict(), **given, "ratio": offered.ratio, "efficiency": offered.efficiency})]
    if loss and hot:
        at_work = _at_work(truck, gear, truck.rig.gearing.names.index(pull.chosen), hot.model)
        worked.append(loss.explain(**{f"running.{name}": value for name, value in at_work.as_dict().items()}))
        left = hot.model.node.time_to(start_c=hot.start_c, loss_kw=loss.total_kw, limit_c=hot.model.limit_c)
        worked.append(left.explain(start_c=hot.start_c, limit_c=hot.model.limit_c))
    return worked


def _data(truck: Truck, pull: Pull, asked_km_h: float, loss: UnitLoss | None, hot: Hot | None) -> dict[str, Any]:
    left = hot.model.node.time_to(start_c=hot.start_c, loss_kw=loss.total_kw, limit_c=hot.model.limit_c) if loss and hot else None
    return {
        "truck": truck.name,
        "variant": truck.variant,
        "asked_km_h": asked_km_h,
        **pull.as_dict(),
        "loss_kw": loss.total_kw if loss else None,
        "steady_c": left.steady_c if left else None,
        "limit_after_s": left.time_s if left and isfinite(left.time_s) else None,
    }
