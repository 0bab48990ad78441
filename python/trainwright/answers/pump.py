"""Whether the pump covers what the transmission takes at a hot idle, range by range, and what its clearances cost."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from .. import hazard
from ..edge import FIT, number, show, shown_apart
from ..error import Error, refusal
from ..fluid import Fluid
from ..hydraulic import SHARP_EDGE_DISCHARGE, FlowMargin, OilAt, Pump, PumpDuty, oil_at, orifice_diameter_mm, pump_clearance
from ..judge import Judgment, Reading, Rule, settle
from ..record import Family
from ..sheet import Decision, Fact, Row, Sheet, Table
from ..units import mm_to_in
from . import RULE, rule_in_words
from .turning import Turn, turning_table

INPUTS = ("displacement", "speed", "leak of the pump", "viscosity", "line pressure", "demand")
"""What the uncertainty of the flow to spare comes from, in the order of the budget."""


@dataclass(frozen=True)
class Case:
    """The pump in one range at one temperature."""

    range: str
    oil: OilAt
    duty: PumpDuty
    margin: FlowMargin


@dataclass(frozen=True)
class Clearance:
    """A clearance of the pump as measured, with what its maker states."""

    place: str
    measured_mm: Reading
    new_mm: Reading
    limit_mm: float


def ranges_of(family: Family, variant: str) -> dict[str, Reading]:
    """Line pressure of each range as the record states it: the greatest of its window, the worst for the pump."""
    written = family.as_dict()["variant"][variant]
    windows = {
        "idle": written.get("line_idle_kpa"),
        "D, full pressure": written.get("line_stall_d_kpa"),
        "R, full pressure": written.get("line_stall_r_kpa"),
    }
    found = {name: Reading.exact(window[1]) for name, window in windows.items() if window}
    if not found:
        raise refusal("line pressure", f"the record of {variant} states none; give --pressure", "MISSING")
    return found


def cases_of(
    pump: Pump, fluid: Fluid, *, temps_c: Sequence[Reading], speed_rpm: Reading, ranges: Mapping[str, Reading], demand_l_min: Reading, rule: Rule = RULE
) -> list[Case]:
    """Every range at every temperature."""
    found = []
    for temp_c in temps_c:
        oil = oil_at(fluid, temp_c=temp_c)
        for name, pressure_kpa in ranges.items():
            duty = PumpDuty(speed_rpm=speed_rpm, pressure_kpa=pressure_kpa, viscosity_mpa_s=oil.viscosity_mpa_s, demand_l_min=demand_l_min)
            found.append(Case(name, oil, duty, pump.flow_margin(duty, rule)))
    return found


def pump_sheet(
    pump: Pump, fluid: Fluid, *, temps_c: Sequence[Reading], speed_rpm: Reading, ranges: Mapping[str, Reading], demand_l_min: Reading,
    name: str = "fluid", title: str, clearances: Sequence[Clearance] = (), demand_from: str = "as given", rule: Rule = RULE,
) -> Sheet:  # fmt: skip
    """Flow, leak and margin of a pump at idle in every range, at every temperature; its clearances against their limits."""
    found = cases_of(pump, fluid, temps_c=temps_c, speed_rpm=speed_rpm, ranges=ranges, demand_l_min=demand_l_min, rule=rule)
    worst = min(found, key=lambda case: case.margin.judgment.reading.value)
    margin, spare = worst.margin, worst.margin.judgment.reading
    turns, turns_data = turning_table(margin.judgment, margin.budget, _turns(pump, worst, rule))
    worn, worn_data, worn_decisions = _clearances(clearances, rule)
    hottest = _hottest(pump, fluid, worst)
    left = f"{show(abs(spare.value), 'l_min')} {'to spare' if spare.value >= 0 else 'short'}"
    answer = (
        f"Worst case: {worst.range} at {show(worst.oil.temp_c.value, 'c')} and {number(speed_rpm.value, 0)} rpm, "
        f"{show(worst.duty.pressure_kpa.value, 'kpa')}: the pump displaces {show(margin.flow.theoretical_l_min, 'l_min')}, "
        f"{show(margin.flow.leak_l_min, 'l_min')} of them leak back, the transmission takes {show(demand_l_min.value, 'l_min')}: {left}. "
        f"Below {number(margin.least_speed_rpm, 0)} rpm it cannot hold that pressure; at a stall the engine turns faster."
    )
    how = [margin.explain(**worst.duty.as_dict(), **pump.as_dict()), margin.flow.explain(**pump.as_dict(), **worst.duty.as_dict()), worst.oil.explain()]
    return Sheet(
        title=title,
        answer=answer,
        decisions=[_decision(worst, rule), *worn_decisions],
        tables=[_case_table(found), turns, *([worn] if worn else [])],
        facts=[
            Fact("displacement", f"{number(pump.displacement_cm3_rev.value, 2)} cm³ per turn", f"standard uncertainty {number(pump.displacement_cm3_rev.u, 2)}"),
            Fact("leak", f"{number(pump.leak_l_min_mpa.value, 2)} L/min per MPa", f"at {number(pump.leak_viscosity_mpa_s, 2)} mPa·s, taken to have been measured in {name}; standard uncertainty {number(pump.leak_l_min_mpa.u, 2)}"),
            Fact("oil", f"{number(worst.oil.viscosity_mpa_s.value, 2)} mPa·s", f"{name} at {show(worst.oil.temp_c.value, 'c')}: {number(worst.oil.viscosity_mm2_s, 2)} mm²/s, {number(worst.oil.density_kg_m3, 0)} kg/m³"),
            Fact("demand", show(demand_l_min.value, "l_min"), f"{demand_from}; standard uncertainty {show(demand_l_min.u, 'l_min', 2)}"),
            Fact("gives up below", f"{number(margin.least_speed_rpm, 0)} rpm", f"in {worst.range}"),
            Fact("gives up above", hottest, f"in {worst.range} at {number(speed_rpm.value, 0)} rpm, the demand unchanged"),
            *_leak_hole(worst),
            Fact("volumetric efficiency", number(margin.flow.volumetric_efficiency, 3), "delivered over displaced, in the worst case"),
            Fact("takes", show(margin.flow.torque_nm, "nm"), f"of the engine for that pressure, without friction: {show(margin.flow.power_kw, 'kw')}"),
        ],
        not_checked=[
            "Suction: level, filter, air. A pump that draws air delivers less than this.",
            "The regulator and its control, and whether the control asks for full pressure at idle at all.",
            "The demand: it is taken as the same at every pressure and temperature." + ("" if demand_l_min.u else " It is taken as exact."),
            *([] if clearances else ["Clearances of the pump: give --clearance, --new and --limit for each."]),
        ],
        cautions=[hazard.caution("hot fluid"), hazard.caution("roll-away"), hazard.caution("raised pressure")],
        cards=["hydraulic.flow_margin", "hydraulic.pump_flow", "hydraulic.oil_at", "hydraulic.least_speed_rpm", "hydraulic.hottest_c", *(["hydraulic.pump_clearance"] if clearances else [])],
        how=how,
        data={
            "worst": {"range": worst.range, "temp_c": worst.oil.temp_c.value, **margin.as_dict()},
            "inputs": turns_data,
            "cases": [{"range": case.range, "temp_c": case.oil.temp_c.value, "duty": case.duty.as_dict(), "margin": case.margin.as_dict()} for case in found],
            "clearances": worn_data,
        },
    )  # fmt: skip


def _hottest(pump: Pump, fluid: Fluid, worst: Case) -> str:
    """The temperature at which the worst case gives up, or in words that there is none."""
    duty = worst.duty
    try:
        found = pump.hottest_c(
            fluid, speed_rpm=duty.speed_rpm.value, pressure_kpa=duty.pressure_kpa.value, demand_l_min=duty.demand_l_min.value
        )  # fmt: skip
    except Error as error:
        if error.kind != "NO_ANSWER":
            raise
        return "at no temperature to 149 °C" if worst.margin.judgment.reading.value >= 0 else "at any temperature"
    return show(found, "c")


def _leak_hole(worst: Case) -> list[Fact]:
    """The hole that takes all that is to spare: a leak of that size, and the pressure falls."""
    spare_l_min, pressure_kpa = worst.margin.judgment.reading.value, worst.duty.pressure_kpa.value
    if spare_l_min <= 0 or pressure_kpa <= 0:
        return []
    hole_mm = orifice_diameter_mm(flow_l_min=spare_l_min, pressure_drop_kpa=pressure_kpa, density_kg_m3=worst.oil.density_kg_m3, discharge=SHARP_EDGE_DISCHARGE)
    return [Fact("a leak that takes all of that", show(hole_mm, "mm"), "diameter of one sharp-edged hole in a circuit: a larger one, and this pressure falls")]


def _decision(worst: Case, rule: Rule) -> Decision:
    judged = worst.margin.judgment
    spare = judged.reading
    basis = f"{show(spare.value, 'l_min')} to spare, standard uncertainty {show(spare.u, 'l_min', 2)}; {rule_in_words(rule)}."
    settled = ""
    if judged.verdict == "NOT PROVEN":
        settled = f"To settle it, know the {INPUTS[settle(judged, worst.margin.budget).input]} better."
    return Decision(f"the pump holds {show(worst.duty.pressure_kpa.value, 'kpa')} at idle, {worst.range}", judged.verdict, judged.chance, basis, settled)


def _case_table(found: Sequence[Case]) -> Table:
    rows = []
    for case in found:
        flow, judged = case.margin.flow, case.margin.judgment
        cells = (
            case.range, number(case.oil.temp_c.value, 0), *shown_apart(case.duty.pressure_kpa.value, "kpa"), number(flow.theoretical_l_min, 1),
            number(flow.leak_l_min, 1), number(flow.delivered_l_min, 1), number(judged.reading.value, 1), number(case.margin.least_speed_rpm, 0),
            Decision("", judged.verdict, judged.chance, "").percent, judged.verdict,
        )  # fmt: skip
        rows.append(Row(cells, "" if judged.verdict == "GO" else judged.verdict))
    columns = ("range", ">°C", ">kPa", ">psi", ">displaces L/min", ">leaks", ">delivers", ">spare", ">least rpm", ">chance", "verdict")
    return Table("The pump at idle", columns, rows, "Spare: delivered less what the transmission takes. Least rpm: below it this pressure cannot be held.")


def _turns(pump: Pump, worst: Case, rule: Rule) -> list[Turn]:
    def duty(**changed: Reading) -> Judgment:
        return pump.flow_margin(PumpDuty(**{name: getattr(worst.duty, name) for name in ("speed_rpm", "pressure_kpa", "viscosity_mpa_s", "demand_l_min")} | changed), rule).judgment

    def changed(name: str) -> Turn:
        now: Reading = getattr(worst.duty, name)
        suffix = {"speed_rpm": "rpm", "pressure_kpa": "kpa", "viscosity_mpa_s": "", "demand_l_min": "l_min"}[name]
        label = INPUTS[("", "speed_rpm", "", "viscosity_mpa_s", "pressure_kpa", "demand_l_min").index(name)]
        label = f"{label}, mPa·s" if name == "viscosity_mpa_s" else label
        lowest = 0.0 if name in ("pressure_kpa", "demand_l_min") else 0.05 * now.value
        return Turn(label, now, suffix, lambda value: duty(**{name: Reading(value=value, u=now.u)}), lowest, 5 * max(now.value, 1.0), 2 if not suffix else None)

    def other(volume: Reading, leak: Reading) -> Judgment:
        changed = Pump(displacement_cm3_rev=volume, leak_l_min_mpa=leak, leak_viscosity_mpa_s=pump.leak_viscosity_mpa_s)
        return changed.flow_margin(worst.duty, rule).judgment

    volume, leak = pump.displacement_cm3_rev, pump.leak_l_min_mpa
    return [
        Turn(f"{INPUTS[0]}, cm³ per turn", volume, "", lambda value: other(Reading(value=value, u=volume.u), leak), 0.2 * volume.value, 3 * volume.value, 2),
        changed("speed_rpm"),
        Turn(f"{INPUTS[2]}, L/min per MPa", leak, "", lambda value: other(volume, Reading(value=value, u=leak.u)), 0.0, 5 * max(leak.value, 1.0), 2),
        changed("viscosity_mpa_s"),
        changed("pressure_kpa"),
        changed("demand_l_min"),
    ]


def _clearances(clearances: Sequence[Clearance], rule: Rule) -> tuple[Table | None, list[dict[str, object]], list[Decision]]:
    rows, data, decisions = [], [], []
    for one in clearances:
        found = pump_clearance(one.measured_mm, new_mm=one.new_mm, limit_mm=one.limit_mm, rule=rule)
        judged, leak = found.judgment, found.leak
        cells = (
            one.place, number(one.measured_mm.value, 3), number(mm_to_in(one.measured_mm.value), 4), number(one.new_mm.value, 3), number(one.limit_mm, 3), number(leak.ratio, 1),
            f"{number(leak.lower, 1)} to {number(leak.upper, 1)}", Decision("", judged.verdict, judged.chance, "").percent, judged.verdict,
        )  # fmt: skip
        rows.append(Row(cells, "" if judged.verdict == "GO" else judged.verdict))
        data.append({"place": one.place, **found.as_dict()})
        basis = f"{show(one.measured_mm.value, 'mm', FIT)} against {show(one.limit_mm, 'mm', FIT)}; leaks {number(leak.ratio, 1)} times as much as new; {rule_in_words(rule)}."
        decisions.append(Decision(f"clearance {one.place}", judged.verdict, judged.chance, basis, "" if judged.verdict != "NOT PROVEN" else "Measure it better, or replace the pump."))
    columns = ("clearance", ">mm", ">in", ">new mm", ">limit mm", ">leaks × new", "95 %", ">chance", "verdict")
    note = "The leak grows with the cube of the clearance. Limits are those of the maker of this pump: there is no general one."
    return (Table("Clearances of the pump", columns, rows, note) if rows else None), data, decisions
