"""Runners of the fit chapter's vectors whose columns are not the arguments themselves."""

from runners.judge import VERDICTS

from trainwright import fit as core
from trainwright.judge import Limits, Reading, Rule

CLASSES = ["blocked", "may bind", "inside", "may be loose", "loose"]
SPREADS = {0: "rectangular", 1: "normal 3 sigma"}


def limits(row, part):
    return Limits(lower=row.number(f"{part}_lower_mm"), upper=row.number(f"{part}_upper_mm"))


def reading(row, part):
    return Reading(value=row.number(f"{part}_mm"), u=row.number(f"{part}_u_mm"))


def clearance(row):
    fit = core.clearance(shaft_mm=limits(row, "shaft"), bore_mm=limits(row, "bore"), limit_mm=row.number("limit_mm"))
    return [fit.clearance_mm.lower, fit.clearance_mm.upper, float(CLASSES.index(fit.fit_class))]


def toleranced(row):
    # Python names its spreads, so a number without a name cannot be passed on: the refusal is the interface's own.
    spread = SPREADS.get(int(row.number("spread")))
    if spread is None:
        Rule.conformance(2.0)
    found = core.toleranced(size_mm=limits(row, "size"), spread=spread)
    return [found.value, found.u]


def measured(row):
    rule = Rule.conformance(row.number("go"))
    fit = core.measured(
        shaft_mm=reading(row, "shaft"), bore_mm=reading(row, "bore"), wanted_mm=limits(row, "wanted"), rule=rule
    )
    chances = [fit.chance_tight, fit.chance_loose, fit.judgment.chance]
    return [fit.clearance_mm.value, fit.clearance_mm.u, *chances, VERDICTS[fit.judgment.verdict]]
