"""Runners of the judge chapter's vectors whose columns are not the arguments themselves."""

from trainwright import judge as core

KINDS = ["simple acceptance", "conformance probability", "expanded guard", "stated chances"]
VERDICTS = {"GO": 1.0, "NOT PROVEN": 0.0, "NO-GO": -1.0}


def reading(row):
    return core.Reading(value=row.number("value"), u=row.number("u"))


def limits(row):
    return core.Limits(lower=row.number("lower"), upper=row.number("upper"))


def inputs(row):
    filled = [i for i in range(1, 5) if row[f"c{i}"]]
    return [core.Input(sensitivity=row.number(f"c{i}"), u=row.number(f"u{i}"), freedom=row.number(f"nu{i}")) for i in filled]


def rectangular(row):
    return [core.Reading.rectangular(row.number("value"), half_width=row.number("half_width")).u]


def chance_inside(row):
    return [core.chance_inside(reading(row), limits(row))]


def judge(row):
    # Python names its rules, so a number without a name cannot be passed on: the refusal is the interface's own.
    kind = dict(enumerate(KINDS)).get(int(row.number("kind")))
    if kind is None:
        core.Rule.stated_chances(go=2.0, no_go=0.0)
    rule = core.Rule(go=row.number("go"), no_go=row.number("no_go"), k=row.number("k"), kind=kind)
    outcome = core.judge(reading(row), limits(row), rule)
    zones = [outcome.acceptance.lower, outcome.acceptance.upper, outcome.rejection.lower, outcome.rejection.upper]
    return [VERDICTS[outcome.verdict], outcome.chance, *zones, outcome.u_to_decide, outcome.value_to_go]


def combine(row):
    budget = core.combine(inputs(row))
    return [budget.u, budget.freedom, float(budget.largest)]


def combine_correlated(row):
    of = inputs(row)
    coefficients = [float(cell) for cell in row["correlation"].split()]
    budget = core.combine_correlated(of, [coefficients[i : i + len(of)] for i in range(0, len(coefficients), len(of) or 1)])
    return [budget.u, budget.freedom, float(budget.largest)]


def judged(row):
    budget = core.combine(inputs(row))
    rule = core.Rule.stated_chances(go=row.number("go"), no_go=row.number("no_go"))
    return core.judge(core.Reading(value=row.number("value"), u=budget.u), limits(row), rule), budget


def settlement(found):
    return [float(found.input), float(found.enough), found.u_now, found.u_needed]


def settle(row):
    return settlement(core.settle(*judged(row)))


def settle_by(row):
    return settlement(core.settle_by(*judged(row), int(row.number("input"))))


def effective_freedom(row):
    return [core.effective_freedom(inputs(row))]


def expand(row):
    expanded = core.expand(reading(row), freedom=row.number("freedom"), coverage=row.number("coverage"))
    return [expanded.k, expanded.expanded_u, expanded.lower, expanded.upper]
