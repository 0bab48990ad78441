"""Runners of the train chapter's vectors: a train cell becomes a record, as every train in Python comes from one."""

from fractions import Fraction
from functools import cache

from trainwright import Reading, Train
from trainwright import train as core

TEETH = ["sun", "sun_2", "planet", "planet_2", "ring"]
FINDINGS = ["holds", "fails", "not known"]
FAILURES = ["dead", "stuck"]
RESPONSES = ["as commanded", "other ratio", "no drive", "drives", "tied up"]
KINDS = ["gear", "neutral", "input held", "output held", "tied up"]
GEARS = {
    "simple": ["sun", None, "planet", None, "ring"],
    "double_pinion": ["sun", None, "planet_inner", "planet_outer", "ring"],
    "two_sun": ["sun_large", "sun_small", "planet_long", "planet_short", "ring"],
    "stepped": ["sun", "sun_2", "planet_1", "planet_2", "ring"],
}


def table(pairs):
    return "{ " + ", ".join(f"{key} = {value}" for key, value in pairs) + " }"


@cache
def train(cell, commanded=""):
    head, *parts = cell.split(" / ")
    members, given, output, fixed = map(int, head.split())
    names = [f'"m{number}"' for number in range(members)]
    lines = ["[train]", f"members = [{', '.join(names)}]"]
    lines += [f"input = {names[given]}", f"output = {names[output]}", f"fixed = {names[fixed]}"]
    elements = []
    for number, part in enumerate(parts):
        kind, *cells = part.split()
        kind, _, planets = kind.partition(":")
        if kind in GEARS:
            gears, places = GEARS[kind], [*cells[6:8], None, None, cells[8]]
            teeth = [(gear, count) for gear, count in zip(gears, cells) if count != "-"]
            joins = [(gear, names[int(at)]) for gear, at in zip(gears, places) if at not in (None, "-")]
            joins.append(("carrier", names[int(cells[9])]))
            lines += ["[[train.set]]", f'id = "P{number}"', f'kind = "{kind}"']
            lines += [f"teeth = {table(teeth)}", f"joins = {table(joins)}", *([f"planets = {planets}"] if planets else [])]
        else:
            first, second, *blocks = cells
            joins = f"[{names[int(first)]}, {names[int(second)]}]"
            pairs = [("kind", f'"{kind}"'), ("joins", joins), *(("blocks", f'"{sense}"') for sense in blocks)]
            elements.append(f"e{len(elements)} = {table(pairs)}")
    lines += ["[train.element]", *elements]
    for place, gear in enumerate(commanded.split()):
        applied, holding = (names_of(int(mask)) for mask in gear.split("+"))
        lines += ["[[train.gear]]", f'id = "{place}"', f"closed = {applied}", f"one_way = {holding}"]
    return Train.from_toml("\n".join(lines))


def names_of(mask):
    return [f"e{bit}" for bit in range(mask.bit_length()) if mask >> bit & 1]


def closed(row):
    return [name for bit, name in enumerate(train(row["train"]).elements) if int(row["closed"]) >> bit & 1]


def number(value):
    return float("inf") if value is None else value


def outputs(state):
    ratio = state.ratio_exact
    ratio = [0.0, 0.0] if ratio is None else [float(ratio.numerator), float(ratio.denominator)]
    values = [float(KINDS.index(state.kind)), float(state.mobility), float(state.redundant), *ratio]
    values += [number(state.output_torque), number(state.case_torque)]
    for mapping, columns in [(state.shares, 8), (state.slips, 8), (state.speeds, 14)]:
        found = [number(value) for value in mapping.values()]
        values += found + [float("inf")] * (columns - len(found))
    return values


def solve(row):
    return outputs(train(row["train"]).solve(closed(row)))


def resolve(row):
    of = train(row["train"])
    state = of.resolve(closed(row), load=row["load"])
    mask = sum(1 << bit for bit, name in enumerate(of.elements) if name in state.closed)
    return [float(mask), *outputs(state)]


def planet_speeds(row):
    of = train(row["train"])
    speeds = of.solve(closed(row)).planet_speeds(of.sets[int(row["set"])])
    return [number(value) for value in speeds.values()]


def losses(row):
    state = train(row["train"]).solve(closed(row))
    found = state.losses(external=row.number("external"), internal=row.number("internal"), load=row["load"])
    return [found.efficiency, found.torque_ratio, float(found.self_locking), float(found.converged)]


def assembly(row):
    gears = [gear and (gear, row[column]) for gear, column in zip(GEARS[row["kind"]], TEETH)]
    teeth = [pair for pair in gears if pair and pair[1] != "0"]
    joins = [(name, f'"{name}"') for name, _ in teeth if not name.startswith("planet")]
    record = f"""
[train]
input = "{joins[0][0] if joins else "sun"}"
output = "carrier"
fixed = "case"
[[train.set]]
id = "P"
kind = "{row["kind"]}"
teeth = {table(teeth)}
joins = {table([*joins, ("carrier", '"carrier"')])}
"""
    if row["planets"] != "0":
        record += f"planets = {row['planets']}\n"
    found = Train.from_toml(record).assembly()["P"]
    equal = sum(1 << n for n in found.equal_planets if 3 <= n <= 6)
    findings = [float(FINDINGS.index(finding)) for finding in (found.coaxial, found.equal_spacing, found.neighbors)]
    counts = [float(found.places), float(found.places_left), float(equal), float(found.coaxial_excess)]
    return [*counts, found.neighbor_gap_modules, *findings]


def symptom(row):
    of = train(row["train"])
    element = int(row["element"])
    name = of.elements[element] if element < len(of.elements) else f"e{element}"
    found = of.symptom(names_of(int(row["closed"])), name, FAILURES[int(row["failure"])])
    ratio = found.ratio_exact
    ratio = [0.0, 0.0] if ratio is None else [float(ratio.numerator), float(ratio.denominator)]
    return [float(RESPONSES.index(found.drive)), float(RESPONSES.index(found.coast)), float(KINDS.index(found.kind)), *ratio]


def power_flow(row):
    names = names_of(int(row["closed"]))
    flow = train(row["train"]).solve(names).power_flow()
    return [*flow.rolling_power.values(), flow.largest]


def signature(row):
    of = train(row["train"], row["gears"])
    found = of.signature(f"e{row['element']}", FAILURES[int(row["failure"])])
    kinds = [found.no_drive, found.no_braking, found.other_ratio, found.creeps, found.brakes, found.tied_up, found.lost]
    return [float(sum(1 << int(place) for place in places)) for places in kinds]


def observations(row):
    seen = []
    for cell in row["seen"].split():
        place, response, value, u = cell.split(":")
        seen.append((place, RESPONSES[int(response)], "drive", Reading(value=float(value), u=float(u))))
    return seen


def diagnose(row):
    suspects = train(row["train"], row["gears"]).diagnose(observations(row))
    first = suspects[0]
    of_first = [int(first.element[1:]), FAILURES.index(first.failure), first.rank, first.matched, first.missed]
    return [float(number) for number in (*of_first, first.contradicted, first.agreed, len(suspects))]


def next_gear(row):
    of = train(row["train"], row["gears"])
    seen = observations(row)
    suspects = [(s.element, s.failure) for s in of.diagnose(seen) if s.rank == 1]
    found = of.next_gear(suspects, [gear for gear, *_ in seen])
    numbers = [int(found.gear), ("none", "drive", "coast").index(found.load), found.outcomes, found.tie_ups]
    return [*map(float, numbers), found.information_bit]


def seen_ratio(row):
    of = train(row["train"], f"{row['closed']}+0")
    _, seen, load, _ = of.seen_ratio("0", Reading(value=float(row["value"]), u=float(row["u"])))
    assert load == "drive"
    return [float(RESPONSES.index(seen))]


def counts(row):
    return {name: int(cell) if float(cell).is_integer() and not name.endswith(("_s", "_us")) else float(cell) for name, cell in row.items()}


def counted_ratio(row):
    ratio = core.counted_ratio(**counts(row))
    return [ratio.value, ratio.u]


def timed_ratio(row):
    ratio = core.timed_ratio(**counts(row))
    return [ratio.value, ratio.u]


def fit_ratio(row):
    num, den = int(row["num"]), int(row["den"])
    measured = Reading(value=row.number("value"), u=row.number("u"))
    found = core.fit_ratio(measured, Fraction(num, den) if den else None, coverage=row.number("coverage"))
    return [found.z, found.chance, float(found.excluded)]
