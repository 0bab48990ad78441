"""Runners of the train chapter's vectors: a train cell becomes a record, as every train in Python comes from one."""

from functools import cache

from trainwright import Train

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
def train(cell):
    head, *parts = cell.split(" / ")
    members, given, output, fixed = map(int, head.split())
    names = [f'"m{number}"' for number in range(members)]
    lines = ["[train]", f"members = [{', '.join(names)}]"]
    lines += [f"input = {names[given]}", f"output = {names[output]}", f"fixed = {names[fixed]}"]
    elements = []
    for number, part in enumerate(parts):
        kind, *cells = part.split()
        if kind in GEARS:
            gears, places = GEARS[kind], [*cells[6:8], None, None, cells[8]]
            teeth = [(gear, count) for gear, count in zip(gears, cells) if count != "-"]
            joins = [(gear, names[int(at)]) for gear, at in zip(gears, places) if at not in (None, "-")]
            joins.append(("carrier", names[int(cells[9])]))
            lines += ["[[train.set]]", f'id = "P{number}"', f'kind = "{kind}"']
            lines += [f"teeth = {table(teeth)}", f"joins = {table(joins)}"]
        else:
            first, second, *blocks = cells
            joins = f"[{names[int(first)]}, {names[int(second)]}]"
            pairs = [("kind", f'"{kind}"'), ("joins", joins), *(("blocks", f'"{sense}"') for sense in blocks)]
            elements.append(f"e{len(elements)} = {table(pairs)}")
    return Train.from_toml("\n".join([*lines, "[train.element]", *elements]))


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
