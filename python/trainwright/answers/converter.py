"""A torque converter: its characteristic, where it meets an engine, and the slip of its lock-up clutch."""

from __future__ import annotations

from collections.abc import Sequence

from .. import converter, hazard, practice, units
from ..converter import Characteristic, EngineCurve, EngineToday, OperatingPoint, SlipLimits
from ..edge import number, show, shown_apart
from ..error import Error
from ..judge import Judgment, Reading, Rule, settle
from ..record import Fleet
from ..sheet import Decision, Fact, Row, Sheet, Table
from . import rule_in_words
from .stall.case import BY_PRACTICE, CAUTIONS

TURBINE_RPM = (0.0, 250.0, 500.0, 750.0, 1000.0, 1250.0, 1500.0, 1750.0, 2000.0, 2500.0, 3000.0)
"""Turbine speeds at which operating points are shown where none are asked for."""


def converter_sheet(
    fleet: Fleet, engine: str, *, converter_name: str | None = None, today: EngineToday | None = None, turbine_rpm: Sequence[float] = (), title: str
) -> Sheet:
    """The characteristic of a converter and its operating points with an engine of the fleet."""
    curve = fleet.engine_curve(engine)
    name = converter_name or str(fleet.as_dict()["engine"][engine]["converter"])
    characteristic = fleet.characteristic(name)
    today = today or EngineToday()
    met = {speed: _points(curve, characteristic, today, speed) for speed in turbine_rpm or TURBINE_RPM}
    stalls = _points(curve, characteristic, today, 0.0)
    stall = next((point for point in stalls if point.stable), None) if isinstance(stalls, list) else None
    coupling = _coupling(characteristic)
    answer = (
        f"Converter {name} multiplies torque by {number(characteristic.torque_ratio[0], 2)} at its first point and no more from speed ratio {coupling} on."
        if coupling
        else f"Converter {name} multiplies torque up to the end of its characteristic."
    )
    if stall:
        answer += (
            f" Engine {engine} stalls against it at {number(stall.engine_rpm, 0)} rpm: {show(stall.impeller_nm, 'nm')} in, {show(stall.turbine_nm, 'nm')} "
            f"at the turbine, {show(stall.heat_kw, 'kw')} of heat."
        )
    return Sheet(
        title=title,
        answer=answer,
        tables=[_characteristic_table(characteristic), _points_table(engine, met)],
        facts=[
            Fact("engine", engine, f"net torque at full throttle from {number(curve.speed_rpm[0], 0)} to {number(curve.speed_rpm[-1], 0)} rpm, times {today.torque_factor:g}"),
            Fact("accessories", show(today.accessory_nm, "nm"), "besides those that the curve counts"),
            Fact("capacity factor", "K = n/√T", "of the impeller side: engine speed over the root of the torque that the impeller takes"),
        ],
        not_checked=[
            "The fluid: K was measured with one density and fill, and shifts a little with temperature.",
            "Transients: every point is a steady one.",
            "The lock-up clutch: all points are with it open.",
        ],
        cautions=[hazard.caution(caution) for caution in CAUTIONS],
        cards=["converter.operating_points", "converter.torque_ratio_at", "converter.capacity_factor_at", "converter.efficiency", "converter.coupling_point"],
        how=[stall.explain(torque_factor=today.torque_factor, accessory_nm=today.accessory_nm)] if stall else [],
        data={
            "engine": engine,
            "converter": name,
            "characteristic": characteristic.as_dict(),
            "coupling_point": characteristic.coupling_point() if coupling else None,
            "operating_points": {
                f"{speed:g}": [point.as_dict() for point in found] if isinstance(found, list) else {"refused": str(found)} for speed, found in met.items()
            },
        },
    )  # fmt: skip


def _points(curve: EngineCurve, characteristic: Characteristic, today: EngineToday, turbine_rpm: float) -> list[OperatingPoint] | Error:
    try:
        return converter.operating_points(curve, characteristic, turbine_rpm=turbine_rpm, today=today)
    except Error as error:
        return error


def _coupling(characteristic: Characteristic) -> str:
    try:
        return f"{characteristic.coupling_point():.3g}"
    except Error:
        return ""


def _characteristic_table(characteristic: Characteristic) -> Table:
    rows = [
        Row((f"{speed:g}", number(torque, 3), number(converter.efficiency(speed_ratio=speed, torque_ratio=torque), 3), number(k, 1), number(units.per_sqrt_nm_to_per_sqrt_lbf_ft(k), 1)))
        for speed, torque, k in zip(characteristic.speed_ratio, characteristic.torque_ratio, characteristic.k_rpm_per_sqrt_nm)
    ]  # fmt: skip
    return Table("Characteristic, straight between the points", (">speed ratio", ">torque ratio", ">efficiency", ">K rpm/√(N·m)", ">K rpm/√(lbf·ft)"), rows)


def _points_table(engine: str, met: dict[float, list[OperatingPoint] | Error]) -> Table:
    rows = []
    for speed, found in met.items():
        if isinstance(found, Error) or not found:
            rows.append(Row((number(speed, 0), "none", *("·",) * 8), "NOT PROVEN"))
            continue
        for point in found:
            cells = (
                number(speed, 0), number(point.engine_rpm, 0), number(point.speed_ratio, 3), number(point.torque_ratio, 3), *shown_apart(point.impeller_nm, "nm"),
                *shown_apart(point.turbine_nm, "nm"), number(point.heat_kw, 1), "yes" if point.stable else "no",
            )  # fmt: skip
            rows.append(Row(cells, "" if point.stable else "NOT PROVEN"))
    columns = (">turbine rpm", ">engine rpm", ">speed ratio", ">torque ratio", ">engine N·m", ">lbf·ft", ">turbine N·m", ">lbf·ft", ">heat kW", "stable")
    note = "Stable: the engine comes back to this speed by itself. None: the two do not meet within the engine curve and the characteristic, which say nothing beyond their ends."
    return Table(f"Where engine {engine} and the converter meet", columns, rows, note)


# ---- lock-up


def slip_limits(fleet: Fleet | None, target_rpm: float | None, alarm_rpm: float | None, rule: Rule) -> tuple[SlipLimits, str]:
    """Target and alarm as given, else those of the fleet's record, else common practice; and in words which."""
    rules = (fleet.as_dict().get("converter_rules") if fleet else None) or {}
    chosen, sources = [], []
    for given, key, usual in (
        (target_rpm, "lockup_slip_target_rpm", practice.LOCKUP_SLIP_NORMAL_RPM),
        (alarm_rpm, "lockup_slip_alarm_rpm", practice.LOCKUP_SLIP_SUSPECT_RPM),
    ):
        recorded = rules.get(key)
        chosen.append(given if given is not None else recorded if recorded is not None else usual)
        sources.append("as given" if given is not None else "the record's" if recorded is not None else BY_PRACTICE)
    return SlipLimits(target_rpm=chosen[0], alarm_rpm=chosen[1], rule=rule), f"target {sources[0]}, alarm {sources[1]}"


def lockup_sheet(engine_rpm: Reading, turbine_rpm: Reading, *, limits: SlipLimits, limits_from: str, title: str, story: str = "") -> Sheet:
    """The slip of a lock-up clutch against its target and its alarm."""
    slip = converter.lockup_slip(engine_rpm=engine_rpm, turbine_rpm=turbine_rpm, limits=limits)
    value = slip.slip_rpm.value
    ways = "the engine runs ahead of the turbine" if value > 0 else "the wheels drive the engine" if value < 0 else "no slip"
    says = {"GO": "no fault proven", "NO-GO": "it slips", "NOT PROVEN": "not proven either way"}[slip.within_alarm.verdict]
    return Sheet(
        title=title,
        story=story,
        answer=f"The lock-up clutch slips {number(value, 1)} rpm ({ways}), against {limits.target_rpm:g} that its control aims at and {limits.alarm_rpm:g} that are a fault: {says}.",
        decisions=[_slip_decision("within the alarm", slip.within_alarm, slip, limits.rule), _slip_decision("on target", slip.on_target, slip, limits.rule)],
        facts=[
            Fact("engine", f"{number(engine_rpm.value, 1)} rpm", f"standard uncertainty {engine_rpm.u:.2g} rpm"),
            Fact("turbine", f"{number(turbine_rpm.value, 1)} rpm", f"standard uncertainty {turbine_rpm.u:.2g} rpm"),
            Fact("limits", f"{limits.target_rpm:g} and {limits.alarm_rpm:g} rpm", limits_from),
        ],
        not_checked=[
            "Torque that the clutch has in hand: not computed, it needs the pack of the lock-up clutch, its pressure and friction.",
            "Whether the control commands full lock-up, or a slip on purpose.",
            "Whether both speeds are of one moment: on a bus they may be a sample apart.",
        ],
        cautions=[hazard.caution(caution) for caution in CAUTIONS],
        cards=["converter.lockup_slip"],
        how=[slip.explain(engine_rpm=engine_rpm, turbine_rpm=turbine_rpm, target_rpm=limits.target_rpm, alarm_rpm=limits.alarm_rpm)],
        data={"slip_rpm": value, "slip_u_rpm": slip.slip_rpm.u, "target_rpm": limits.target_rpm, "alarm_rpm": limits.alarm_rpm, "within_alarm": slip.within_alarm.verdict, "on_target": slip.on_target.verdict},
    )  # fmt: skip


def _slip_decision(about: str, judged: Judgment, slip: converter.LockupSlip, rule: Rule) -> Decision:
    settled = ""
    if judged.verdict == "NOT PROVEN" and slip.budget.u > 0:
        wanted = settle(judged, slip.budget)
        which = ("engine speed", "turbine speed")[wanted.input]
        settled = f"To settle it, know the {which} better" + (f" (standard uncertainty to {wanted.u_needed:.2g} rpm)." if wanted.enough else ": it alone cannot decide; take the mean of several readings.")
    basis = f"at most {judged.limits.upper:g} rpm either way, standard uncertainty {judged.reading.u:.2g} rpm; {rule_in_words(rule)}."
    return Decision(about, judged.verdict, judged.chance, basis, settled)
