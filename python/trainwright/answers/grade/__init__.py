"""A truck on a grade: what every gear is asked for, which limit governs, and how long the sump lasts."""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite
from typing import Any

from ... import Explanation, hazard
from ...edge import number, show
from ...error import Error
from ...sheet import Fact, Sheet
from ...tow import Pull, UnitLoss
from .frame import CAUTIONS, DEFERS, Hot, Truck, at_work_of, largest, loss_of, share, slowed
from .tables import gear_by_grade, gear_table, grade_table, margins_of, unlocked_table, weakest


def grade_sheet(
    truck: Truck, *, grade_pct: float, speed_km_h: float, grades: Sequence[tuple[float, float]] = (), hot: Hot | None = None, title: str, story: str = ""
) -> Sheet:  # fmt: skip
    """One truck on one grade, gear by gear, and the same over other grades."""
    pull = truck.rig.pull(grade_pct=grade_pct, speed_km_h=speed_km_h)
    fallen = slowed(truck, grade_pct, speed_km_h) if pull.chosen is None else None
    held = fallen or pull
    steps = sorted({*grades, (grade_pct, speed_km_h)})
    loss = loss_of(truck, held, hot)
    facts = [*_road_facts(truck, pull, grade_pct), *_heat_facts(truck, held, loss, hot, grade_pct)]
    margins = margins_of(truck, held)
    tables = [gear_table(truck, held, margins), grade_table(truck, steps, hot), gear_by_grade(truck, steps)]
    if truck.characteristic and pull.output_nm > 0:
        tables.append(unlocked_table(truck, truck.characteristic, grade_pct, held.speed_km_h, hot))
    return Sheet(
        title=title,
        story=story,
        answer=f"{_sentence(truck, pull, fallen, speed_km_h)}{weakest(truck, held, margins)}{_minutes(truck, held, loss, hot)} {DEFERS}",
        tables=tables,
        facts=facts,
        not_checked=_not_checked(truck, hot),
        cautions=[hazard.caution(word) for word in CAUTIONS],
        cards=["tow.pull", "tow.largest_speed", "clutch.review", *(["tow.unit_loss", "tow.warmed", "tow.time_to"] if hot else [])],
        how=_how(truck, held, loss, hot),
        data=_data(truck, held, speed_km_h, loss, hot),
    )


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
        f"{share(gear.use_of_input)} of what the unit is rated for, {share(held.use_of_output)} at the output, and {share(gear.reserve)} of the engine in hand."
    )
    if held.advised is None:
        within = largest(truck, held.grade_pct, within_ratings=True)
        slower = f": {show(within.speed_km_h, 'km_h', 0)} in gear {_name(truck, within.gear)} would" if within else ", nor does less speed"
        return f"{text} No gear that holds stays within the ratings{slower}."
    if held.advised != held.chosen:
        lower = held.gears[held.advised]
        return f"{text} Shift down to {held.advised}: {share(lower.use_of_input)} at {show(lower.engine_rpm, 'rpm')}."
    return f"{text} The {held.limit} governs, at {share(held.use_of_limit)}."


def _name(truck: Truck, place: int) -> str:
    return truck.rig.gearing.names[place]


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
        at_work = at_work_of(truck, gear, truck.rig.gearing.names.index(pull.chosen), hot.model)
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
