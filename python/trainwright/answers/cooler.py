"""Return flow of the cooler: judged by the limit at the temperature that the fluid has, and not without one."""

from __future__ import annotations

from .. import explain, hazard
from ..edge import number, show
from ..fluid import Fluid
from ..hydraulic import CoolerLimits, CoolerReading, flow_at_reference, timed_flow
from ..judge import Judgment, Reading, Rule, settle
from ..sheet import BLANK, FORM, Decision, Fact, Row, Sheet, Table
from ..units import quart_to_l
from . import RULE, rule_in_words
from .turning import Turn, turning_table

INPUTS = ("volume", "time", "fluid temperature")
"""What the uncertainty of the flow to spare comes from, in the order of the budget."""
NOT_CHECKED = (
    "The thermostat of the bypass: shut, it sends little through the cooler whatever its state.",
    "Foam: air in the measure counts as fluid. Which line was caught: it must be the return, engine idling, in N.",
)
CAUTIONS = ("hot fluid", "roll-away", "compressed air")


def cooler_sheet(
    limits: CoolerLimits, *, volume_l: Reading, time_s: Reading, temp_c: Reading | None, fluid: Fluid | None = None, name: str = "fluid",
    reference_c: float | None = None, title: str, story: str = "", rule: Rule = RULE,
) -> Sheet:  # fmt: skip
    """The flow, and whether it is enough at this temperature. Without a temperature, or outside the table, nothing is judged."""
    timed = timed_flow(volume_l=volume_l, time_s=time_s)
    flow = timed.flow_l_min
    facts = [
        Fact("flow", show(flow.value, "l_min", 2), f"standard uncertainty {show(flow.u, 'l_min', 2)}"),
        Fact("caught", show(volume_l.value, "l"), f"in {number(time_s.value, 1)} s"),
    ]
    how, cards = [timed.explain(volume_l=volume_l, time_s=time_s)], ["hydraulic.timed_flow", "hydraulic.least_flow_at"]
    lowest, highest = limits.temperature_c[0], limits.temperature_c[-1]
    low, high = limits.least_flow_l_min[0], limits.least_flow_l_min[-1]
    within = temp_c is not None and lowest <= temp_c.value <= highest
    if temp_c is None or not within:
        why = "the fluid temperature is not known" if temp_c is None else f"{show(temp_c.value, 'c')} is outside the record's table"
        answer = (
            f"{show(flow.value, 'l_min', 2)}. Not judged: {why}. {show(low, 'l_min')} would do at {show(lowest, 'c')}, "
            f"{show(high, 'l_min')} are asked at {show(highest, 'c')}: measure the fluid, and catch again within that range."
        )
        return Sheet(
            title=title, story=story, answer=answer, facts=facts, tables=[_limit_table(limits)], not_checked=list(NOT_CHECKED),
            cautions=[hazard.caution(one) for one in CAUTIONS], cards=cards, how=how, data={"flow_l_min": flow.as_dict(), "judgment": None},
        )  # fmt: skip
    reading = CoolerReading(volume_l=volume_l, time_s=time_s, temp_c=temp_c)
    check = limits.cooler_check(reading, rule)
    judged, least = check.judgment, check.least.least_l_min
    turns, turns_data = turning_table(judged, check.budget, _turns(limits, reading, rule))
    enough = "enough" if judged.reading.value >= 0 else "too little"
    passes_s = 60 * quart_to_l(1.0) / least if least > 0 else float("inf")
    answer = f"{show(flow.value, 'l_min', 2)} at {show(temp_c.value, 'c')}, where {show(least, 'l_min', 2)} are asked: {enough}. A quart may take {number(passes_s, 1)} s at this temperature."
    answer += {"GO": " Release it.", "NO-GO": " Flush the cooler and its lines and catch again; replace it where that does not help.", "NOT PROVEN": " Catch again before it is released."}[judged.verdict]
    facts.append(Fact("asked", show(least, "l_min", 2), f"at {show(temp_c.value, 'c')}; it changes by {number(check.least.least_l_min_per_k, 3)} L/min for each kelvin"))
    data = {"flow_l_min": flow.as_dict(), "check": check.as_dict(), "inputs": turns_data, "quart_may_take_s": passes_s}
    cards.append("hydraulic.cooler_check")
    how.append(check.explain(temp_c=temp_c, volume_l=volume_l, time_s=time_s))
    how.append(check.least.explain(temp_c=temp_c.value))
    if fluid is not None:
        at_c = highest if reference_c is None else reference_c
        there = flow_at_reference(flow, fluid, temp_c=temp_c, reference_c=at_c)
        facts.append(Fact(f"the same cooler at {show(at_c, 'c')}", show(there.value, "l_min", 2), f"by the viscosity of {name}, laminar, the same pressure; standard uncertainty {show(there.u, 'l_min', 2)}"))
        cards.append("hydraulic.flow_at_reference")
        how.append(explain("hydraulic.flow_at_reference", flow_l_min=flow.value, temp_c=temp_c.value, reference_c=at_c, result=there.value))
        data["at_reference"] = {"reference_c": at_c, "flow_l_min": there.as_dict()}
    return Sheet(
        title=title, story=story, answer=answer, decisions=[_decision(judged, check.budget, rule)], facts=facts, tables=[_limit_table(limits), turns],
        not_checked=list(NOT_CHECKED), cautions=[hazard.caution(one) for one in CAUTIONS], cards=cards, how=how, data=data,
    )  # fmt: skip


def cooler_form(limits: CoolerLimits, *, title: str) -> Sheet:
    """A sheet for the bench: the longest time that a quart and a liter may take at each temperature, and room for the reading."""
    blanks = Table("Reading", ("what", ">value"), [Row((what, BLANK)) for what in ("fluid temperature", "volume caught", "time")])
    return Sheet(
        title=title,
        answer="Return line, engine idling, in N, bypass open. Catch a quart or a liter and stop the time; measure the fluid: the limit changes with its temperature.",
        tables=[blanks, _limit_table(limits)], not_checked=list(NOT_CHECKED), cautions=[hazard.caution(one) for one in CAUTIONS],
        cards=["hydraulic.least_flow_at", "hydraulic.timed_flow"], form=FORM,
        data={"limits": limits.as_dict()},
    )  # fmt: skip


def _limit_table(limits: CoolerLimits) -> Table:
    rows = []
    for temp_c, least in zip(limits.temperature_c, limits.least_flow_l_min):
        times = [number(60 * volume_l / least, 1) if least > 0 else "·" for volume_l in (quart_to_l(1.0), 1.0)]
        rows.append(Row((show(temp_c, "c", 0), show(least, "l_min"), *times)))
    return Table("Least flow by temperature", (">fluid", ">least flow", ">s for a quart at most", ">s for a liter at most"), rows, "Linear between rows; nothing is said outside them.")


def _decision(judged: Judgment, budget: object, rule: Rule) -> Decision:
    spare = judged.reading
    basis = f"{show(spare.value, 'l_min', 2)} to spare, standard uncertainty {show(spare.u, 'l_min', 2)}; {rule_in_words(rule)}."
    settled = f"Measure the {INPUTS[settle(judged, budget).input]} better to settle it: catch more, longer." if judged.verdict == "NOT PROVEN" else ""  # type: ignore[arg-type]
    return Decision("the cooler passes enough", judged.verdict, judged.chance, basis, settled)


def _turns(limits: CoolerLimits, reading: CoolerReading, rule: Rule) -> list[Turn]:
    def judged(**changed: Reading) -> Judgment:
        given = {"volume_l": reading.volume_l, "time_s": reading.time_s, "temp_c": reading.temp_c} | changed
        return limits.cooler_check(CoolerReading(**given), rule).judgment

    volume, time, temp = reading.volume_l, reading.time_s, reading.temp_c
    return [
        Turn(INPUTS[0], volume, "l", lambda value: judged(volume_l=Reading(value=value, u=volume.u)), 0.1 * volume.value, 5 * volume.value),
        Turn(INPUTS[1], time, "s", lambda value: judged(time_s=Reading(value=value, u=time.u)), 0.1 * time.value, 5 * time.value),
        Turn(INPUTS[2], temp, "c", lambda value: judged(temp_c=Reading(value=value, u=temp.u)), limits.temperature_c[0], limits.temperature_c[-1]),
    ]
