"""Shafts, splines, thrust bearings and washers of a variant at its rating."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import inf
from typing import Any

from .. import Explanation, hazard, hold, practice
from ..edge import number, show
from ..error import Error
from ..hold import NeedleThrust, RatedShaft, ThrustWasher, WheelThrust
from ..judge import Judgment, Reading, settle
from ..record import Family
from ..sheet import Decision, Fact, Row, Sheet, Table
from . import RULE, rule_in_words
from .gears import main_gears, ratio
from .turning import Turn, turning_table

CARRIES = {"turbine": "rated torque at the turbine", "output": "rated torque at the output"}
SHAFT_INPUTS = ("torque", "sizes, form and hardness", "yield")
"""What the uncertainty of a shaft comes from, in the order of the budget."""


@dataclass(frozen=True)
class Asked:
    """What the shop asks beyond the record: the notch that counts, the turbine speed, the life wanted."""

    stress_factor: float = 1.0
    turbine_rpm: float | None = None
    hours: float | None = None


@dataclass(frozen=True)
class Push:
    """What pushes on a thrust bearing or washer: the wheel, its uncertainty, and the force in each gear."""

    wheel: str
    u_rel: float | None
    gears: Mapping[str, WheelThrust | None]

    @property
    def worst(self) -> tuple[str, WheelThrust] | None:
        """The gear with the greatest push."""
        known = [(gear, push) for gear, push in self.gears.items() if push and push.thrust.axial_n > 0]
        return max(known, key=lambda pair: pair[1].thrust.axial_n, default=None)

    def way(self, gear: str) -> str:
        """Which way the force points, against that of the worst gear."""
        push, worst = self.gears[gear], self.worst
        if push is None or worst is None or not push.torque_nm:
            return "–"
        return "as in " + worst[0] if push.torque_nm * worst[1].torque_nm > 0 else "the other"


def push_of(family: Family, variant: str, written: dict[str, Any] | None, turbine_rpm: float) -> Push | None:
    """The push on a part whose record says what pushes on it."""
    if not written:
        return None
    gears = hold.gear_thrusts(family, variant, set=written["set"], wheel=written["wheel"], input_speed_rpm=turbine_rpm)
    main = {gear.id: gears[gear.id] for gear in main_gears(family.train(variant))}
    return Push(f"{written['wheel']} of {written['set']}", written["u_rel_push"], main)


def hard_parts_sheet(family: Family, variant: str, *, title: str, story: str = "", asked: Asked | None = None) -> Sheet:
    """Stress and load of every shaft, spline, thrust bearing and washer at the rating that the record states."""
    asked = asked or Asked()
    written = family.as_dict()
    rpm = asked.turbine_rpm if asked.turbine_rpm is not None else 1000.0
    shafts = hold.shafts(family, variant)
    decisions, tables, sentences = [], [], []
    facts: list[Fact] = []
    data: dict[str, Any] = {"variant": variant, "turbine_rpm": rpm, "stress_factor": asked.stress_factor}
    not_checked = [
        "Fatigue: a shaft that turns under load breaks at a spline, shoulder or hole far below its yield. It needs notch, surface and "
        "size factors that the record does not hold (DIN 743).",
        "Bending, impact, and the torque of a shift or of a wheel that grips again.",
    ]
    cards = []
    how: list[Explanation] = []
    if shafts:
        judged = {name: _shaft_hold(shaft, asked) for name, shaft in shafts.items()}
        decisions += [_shaft_decision(name, held, asked) for name, held in judged.items() if held]
        not_checked += [f"Whether {name} holds: its record states no u_rel_stress." for name, held in judged.items() if not held]
        tables.append(_shaft_table(shafts, written["shaft"]))
        most = max(shafts, key=lambda name: _yield_share(shafts[name]))
        sentences.append(
            f"The {most} shaft is the most loaded: {number(_stress(shafts[most]), 0)} MPa at its rated "
            f"{show(shafts[most].torque_nm, 'nm')}, {number(_yield_share(shafts[most]), 2)} of its yield in shear"
        )
        data["shafts"] = {name: _shaft_data(shaft) for name, shaft in shafts.items()}
        cards += ["hold.torsion", "hold.shaft_hold"]
        how += _shaft_how(shafts[most], judged[most], asked)
        if held := judged[most]:
            turns, data["inputs"] = turning_table(held.judgment, held.budget, _turns(shafts[most], asked))
            tables.append(replace(turns, title=f"{turns.title}: {most} shaft"))
        if splines := {name: shaft for name, shaft in shafts.items() if shaft.spline}:
            tables.append(_spline_table(splines))
            cards.append("hold.spline_load")
            how += [_spline(shaft).explain(torque_nm=shaft.torque_nm, carrying_share=practice.SPLINE_CARRYING_SHARE, **_sizes(shaft)) for shaft in splines.values()]
            not_checked.append("Splines against a limit: the record states none. Wear and fretting.")
    race = hold.thrust_race(family, variant)
    if race:
        push = push_of(family, variant, written["thrust_race"][variant]["pushed_by"], rpm)
        race_facts, race_data = _race_facts(race)
        facts += race_facts
        data["thrust_race"] = race_data
        cards += ["hold.needle_capacity"]
        how.append(race.needle_capacity().explain(**race.as_dict()))
        if push and push.worst:
            gear, worst = push.worst
            sentences.append(
                f"The thrust race takes {show(worst.thrust.axial_n, 'n')} from the {push.wheel} in gear {gear}, "
                f"{number(race_data['static_n'] / worst.thrust.axial_n, 1)} times below its static capacity"
            )
            decisions += _race_decisions(race, push, asked)
            tables.append(_race_table(race, push, asked))
            data["thrust_race"]["gears"] = _gear_data(push)
            how.append(worst.explain(input_torque_nm=_input_nm(family, variant, gear), input_speed_rpm=rpm))
            if (life := _life(race, worst)) is not None:
                how.append(life.explain(capacity_n=race_data["dynamic_n"], load_n=worst.thrust.axial_n, exponent=hold.ROLLER_EXPONENT, speed_rpm=worst.carrier_slip_rpm))
            cards += ["hold.wheel_thrust", "hold.rating_life", "hold.needle_hold"]
            not_checked.append(
                "What else leans on the bearing: pistons, the converter, other sets of the same member, friction in splines. Which way "
                "the force points in space: the record states no hand of helix, so only the change of way from gear to gear is known."
            )
        not_checked.append("Condition, flatness and hardness of races; the speed that the cage bears. Nine of ten bearings reach a rating life.")
    for name, washer in hold.thrust_washers(family, variant).items():
        push = push_of(family, variant, written["thrust_washer"][name]["pushed_by"], rpm)
        if push and push.worst:
            tables.append(_washer_table(name, washer, push, asked))
            data.setdefault("thrust_washers", {})[name] = {"washer": washer.as_dict(), "gears": _gear_data(push)}
            cards.append("hold.washer_load")
            not_checked.append(f"The washer {name} against a limit: published limits of pressure times speed are for dry running.")
    if not sentences:
        sentences.append(f"The record of {variant} states no shaft and no thrust bearing")
    return Sheet(
        title=title,
        story=story,
        answer=". ".join(sentences) + ". These are loads and capacities, not ratings.",
        decisions=decisions,
        facts=facts,
        tables=tables,
        not_checked=not_checked,
        cautions=[hazard.caution("overspeed"), hazard.caution("raised pressure")],
        cards=list(dict.fromkeys(cards)),
        how=how,
        data=data,
    )


def _shaft_how(shaft: RatedShaft, held: hold.ShaftHold | None, asked: Asked) -> list[Explanation]:
    """The most loaded shaft, worked out."""
    torsion = shaft.shaft.torsion(torque_nm=shaft.torque_nm)
    worked = [torsion.explain(torque_nm=shaft.torque_nm, **shaft.shaft.as_dict())]
    if held:
        worked.append(
            held.explain(
                torque_nm=shaft.torque_nm, shear_yield_mpa=shaft.shear_yield_mpa, stress_factor=asked.stress_factor, stress_u_rel=shaft.stress_u_rel
            )
        )
    return worked


def _turns(shaft: RatedShaft, asked: Asked) -> list[Turn]:
    """The inputs of the stress to spare in the order of its budget."""

    def torque(value: float) -> Judgment:
        return _held(shaft, asked, torque_nm=value).judgment

    def yields(value: float) -> Judgment:
        return _held(shaft, asked, shear_yield_mpa=value).judgment

    torque_nm, yield_mpa = Reading.exact(shaft.torque_nm), Reading.exact(shaft.shear_yield_mpa)
    return [
        Turn(SHAFT_INPUTS[0], torque_nm, "nm", torque, 0.1 * shaft.torque_nm, 10 * shaft.torque_nm),
        Turn(SHAFT_INPUTS[1], Reading.exact(1.0)),
        Turn(f"{SHAFT_INPUTS[2]} in shear", yield_mpa, "mpa", yields, 0.1 * shaft.shear_yield_mpa, 10 * shaft.shear_yield_mpa),
    ]


def _sizes(shaft: RatedShaft) -> dict[str, Any]:
    return shaft.spline.as_dict() if shaft.spline else {}


def _input_nm(family: Family, variant: str, gear: str) -> float:
    """Torque at the input to which the record rates a gear."""
    rating = family.as_dict()["variant"][variant]
    backward = any(known.id == gear and ratio(known) < 0 for known in family.train(variant).gears())
    return float((backward and rating["reverse_turbine_nm"]) or rating["rated_turbine_nm"])


def _stress(shaft: RatedShaft) -> float:
    return float(shaft.shaft.torsion(torque_nm=shaft.torque_nm).stress_mpa)


def _yield_share(shaft: RatedShaft) -> float:
    return _stress(shaft) / shaft.shear_yield_mpa


def _shaft_hold(shaft: RatedShaft, asked: Asked) -> hold.ShaftHold | None:
    if shaft.stress_u_rel is None:
        return None
    return _held(shaft, asked)


def _held(shaft: RatedShaft, asked: Asked, *, torque_nm: float | None = None, shear_yield_mpa: float | None = None) -> hold.ShaftHold:
    """The shaft with another torque or yield."""
    load = hold.ShaftLoad(
        torque_nm=Reading.exact(shaft.torque_nm if torque_nm is None else torque_nm),
        shear_yield_mpa=Reading.exact(shaft.shear_yield_mpa if shear_yield_mpa is None else shear_yield_mpa),
        stress_factor=asked.stress_factor,
        stress_u_rel=shaft.stress_u_rel or 0.0,
    )
    return shaft.shaft.shaft_hold(load, rule=RULE)


def _shaft_decision(name: str, held: hold.ShaftHold, asked: Asked) -> Decision:
    judged = held.judgment
    basis = (
        f"{number(judged.reading.value, 0)} MPa to spare below yield, standard uncertainty {number(judged.reading.u, 0)} MPa, one steady "
        f"load; {rule_in_words(RULE)}."
    )
    text = f"A notch that multiplies the nominal stress by {number(held.factor_at_yield, 1)} would use it all up."
    if judged.verdict == "NOT PROVEN":
        wanted = settle(judged, held.budget)
        better = f"to {wanted.u_needed:.2g} of the stress" if wanted.enough else "though it alone cannot decide"
        text = f"To settle it, know {SHAFT_INPUTS[wanted.input]} better, {better}; now {wanted.u_now:.2g}."
    peak = "nominal stress of the" if asked.stress_factor == 1.0 else f"{asked.stress_factor:g} times the nominal stress of the"
    return Decision(f"{peak} {name} shaft stays below yield in shear at its rated torque", judged.verdict, judged.chance, basis, text)


def _shaft_table(shafts: Mapping[str, RatedShaft], written: Mapping[str, Any]) -> Table:
    rows = []
    for name, shaft in shafts.items():
        size = f"{number(shaft.shaft.outside_mm, 1)}" + (f"/{number(shaft.shaft.inside_mm, 1)}" if shaft.shaft.inside_mm else " solid")
        torsion = shaft.shaft.torsion(torque_nm=shaft.torque_nm)
        cells = (
            name, size, CARRIES[written[name]["carries"]], number(shaft.torque_nm, 0), number(torsion.stress_mpa, 1),
            number(_yield_share(shaft), 3), number(1 / _yield_share(shaft), 2), number(shaft.torque_nm / _yield_share(shaft), 0),
        )  # fmt: skip
        rows.append(Row(cells))
    columns = ("shaft", "mm", "carries", ">N·m", ">stress MPa", ">of yield", ">notch factor to yield", ">N·m at yield")
    note = "Nominal stress at the surface. Splines, shoulders and holes multiply it: the notch factor says how far until yield."
    return Table("Shafts in torsion", columns, rows, note)


def _shaft_data(shaft: RatedShaft) -> dict[str, Any]:
    torsion = shaft.shaft.torsion(torque_nm=shaft.torque_nm)
    return {
        "torque_nm": shaft.torque_nm,
        "shear_yield_mpa": shaft.shear_yield_mpa,
        "yield_share": _yield_share(shaft),
        **shaft.shaft.as_dict(),
        **torsion.as_dict(),
        "spline": _spline(shaft).as_dict() if shaft.spline else None,
    }


def _spline(shaft: RatedShaft) -> hold.SplineLoad:
    assert shaft.spline
    load: hold.SplineLoad = shaft.spline.spline_load(torque_nm=shaft.torque_nm, carrying_share=practice.SPLINE_CARRYING_SHARE)
    return load


def _spline_table(shafts: Mapping[str, RatedShaft]) -> Table:
    rows = []
    for name, shaft in shafts.items():
        load = _spline(shaft)
        assert shaft.spline
        cells = (name, str(shaft.spline.teeth), number(load.tooth_n, 0), number(load.bearing_mpa, 0), number(load.shear_mpa, 0))
        rows.append(Row(cells))
    share = f"{practice.SPLINE_CARRYING_SHARE:g} of the teeth are taken to carry (common practice, no source)."
    columns = ("shaft", ">teeth", ">N on each that carries", ">on the flanks MPa", ">shear MPa")
    return Table("Splines at the same torque", columns, rows, f"{share} The count must match the hub: see interchange.")


def _race_facts(race: NeedleThrust) -> tuple[list[Fact], dict[str, Any]]:
    capacity = race.needle_capacity()
    size = f"{race.needles} needles {race.needle_diameter_mm:g} × {race.needle_length_mm:g} mm on {race.pitch_diameter_mm:g} mm"
    least = practice.NEEDLE_LEAST_LOAD_SHARE * capacity.static_n
    facts = [
        Fact("thrust race", size, f"needles sweep {number(capacity.inside_mm, 1)} to {number(capacity.outside_mm, 1)} mm: both faces must be hard and flat there"),
        Fact("static capacity", show(capacity.static_n, "n"), "ISO 76; not a maker's rating"),
        Fact("dynamic capacity", show(capacity.dynamic_n, "n"), f"ISO 281, f_c {number(capacity.dynamic_factor, 1)} at needle over pitch diameter {number(capacity.size_ratio, 4)}"),
        Fact("least load", show(least, "n"), "below it needles slide instead of rolling, more at high speed (common practice, no source)"),
    ]  # fmt: skip
    return facts, {**race.as_dict(), **capacity.as_dict(), "least_load_n": least}


def _life(race: NeedleThrust, push: WheelThrust) -> hold.RatingLife | None:
    """Life under this push; None where the wheel stands, pushes nothing, or the load is beyond the equation."""
    if push.thrust.axial_n <= 0:
        return None
    try:
        life: hold.RatingLife = hold.rating_life(
            capacity_n=race.needle_capacity().dynamic_n, load_n=push.thrust.axial_n,
            exponent=hold.ROLLER_EXPONENT, speed_rpm=push.carrier_slip_rpm,
        )  # fmt: skip
    except Error:
        return None
    return life


def _race_decisions(race: NeedleThrust, push: Push, asked: Asked) -> list[Decision]:
    assert push.worst
    gear, worst = push.worst
    if push.u_rel is None:
        return []
    load = Reading.relative(worst.thrust.axial_n, u_rel=push.u_rel)
    least = practice.NEEDLE_STATIC_FACTOR
    held = race.needle_hold(load, least_static_factor=least, rule=RULE)
    about = f"thrust race stands the push of gear {gear} at rest, static factor {least:g} asked (common practice, no source)"
    decisions = [_push_decision(about, held.judgment, f"static factor {number(held.static_factor, 1)}")]
    turning = {name: wheel for name, wheel in push.gears.items() if wheel and wheel.thrust.axial_n > 0 and wheel.carrier_slip_rpm > 0}
    if asked.hours and asked.turbine_rpm and turning:
        shortest = min(turning, key=lambda name: _hours(race, turning[name]))
        wheel = turning[shortest]
        lasts = race.needle_lasts(
            Reading.relative(wheel.thrust.axial_n, u_rel=push.u_rel), speed_rpm=wheel.carrier_slip_rpm, least_life_h=asked.hours, rule=RULE
        )
        about = f"nine of ten thrust races last {number(asked.hours, 0)} h in gear {shortest} at rating and {number(asked.turbine_rpm, 0)} rpm"
        basis = f"life {number(lasts.life.life_h, 0)} h at the push of {show(wheel.thrust.axial_n, 'n')}, allowed {show(lasts.load_for_life_n, 'n')}"
        decisions.append(_push_decision(about, lasts.judgment, basis))
    return decisions


def _hours(race: NeedleThrust, push: WheelThrust) -> float:
    life = _life(race, push)
    return float(life.life_h) if life else inf


def _push_decision(about: str, judged: Judgment, basis: str) -> Decision:
    u = f"standard uncertainty of the push {show(judged.reading.u, 'n')}"
    settled = ""
    if judged.verdict == "NOT PROVEN":
        settled = f"To settle it, know the push to {show(judged.u_to_decide, 'n')} (standard uncertainty)."
    return Decision(about, judged.verdict, judged.chance, f"{basis}; {u}; {rule_in_words(RULE)}.", settled)


def _race_table(race: NeedleThrust, push: Push, asked: Asked) -> Table:
    capacity = race.needle_capacity()
    rows = []
    for gear, wheel in push.gears.items():
        if wheel is None:
            rows.append(Row((gear, "?", "?", "?", "?", "?", "?", "?"), "quiet"))
            continue
        life = _life(race, wheel)
        force = wheel.thrust.axial_n
        cells = (
            gear, number(wheel.torque_nm, 0), number(force, 0), push.way(gear), number(wheel.carrier_slip_rpm, 0),
            number(capacity.static_n / force, 1) if force > 0 else "–", number(life.life_mrev, 0) if life else "–",
            number(life.life_h, 0) if life and wheel.carrier_slip_rpm > 0 else "–",
        )  # fmt: skip
        rows.append(Row(cells, "governs" if push.worst and gear == push.worst[0] else ""))
    speed = f"at {number(asked.turbine_rpm, 0)} rpm" if asked.turbine_rpm is not None else "for each 1000 rpm"
    note = (
        f"Turns and hours {speed} of the turbine. ?: statics cannot tell. One bearing takes one way; the other way goes to what stands "
        "on the other side of the wheel."
    )
    columns = ("gear", ">torque N·m", ">push N", "way", ">turns rpm", ">static factor", ">life 10⁶ turns", ">life h")
    return Table(f"Push of the {push.wheel} on the thrust race, at rating", columns, rows, note)


def _washer_table(name: str, washer: ThrustWasher, push: Push, asked: Asked) -> Table:
    rows = []
    for gear, wheel in push.gears.items():
        if wheel is None or wheel.thrust.axial_n <= 0:
            continue
        load = washer.washer_load(load_n=wheel.thrust.axial_n, speed_rpm=wheel.carrier_slip_rpm)
        cells = (
            gear, number(wheel.thrust.axial_n, 0), push.way(gear), number(load.unit_load_mpa, 2), number(wheel.carrier_slip_rpm, 0),
            number(load.sliding_m_s, 2), number(load.pv_mpa_m_s, 2),
        )  # fmt: skip
        rows.append(Row(cells, "governs" if push.worst and gear == push.worst[0] else ""))
    speed = f"at {number(asked.turbine_rpm, 0)} rpm" if asked.turbine_rpm is not None else "for each 1000 rpm"
    note = f"Speeds {speed} of the turbine, at the mean diameter; {washer.face_share:g} of the face bears."
    columns = ("gear", ">push N", "way", ">pressure MPa", ">turns rpm", ">slides m/s", ">MPa·m/s")
    return Table(f"Push of the {push.wheel} on the washer {name}, at rating", columns, rows, note)


def _gear_data(push: Push) -> dict[str, Any]:
    return {gear: wheel.as_dict() if wheel else None for gear, wheel in push.gears.items()}
