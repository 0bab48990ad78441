"""Runners of the identify chapter's vectors whose columns are not the arguments themselves."""

import numpy as np
from trainwright import identify as core
from trainwright.judge import Limits, Reading, Rule

OUTCOMES = {"not settled": 0.0, "one variant": 1.0, "mixed": 2.0, "unexplained": 3.0}


def numbers(text):
    return [float(cell) for cell in text.split()]


def limits(values):
    return [Limits(lower=lower, upper=upper) for lower, upper in zip(values[::2], values[1::2])]


def ln_sizes(reading, sizes):
    return [core.ln_density(reading_mm=reading, size_mm=size) for size in sizes]


def unit(row, unexplained=0):
    """The unit of a row: see the top of identify_weigh.csv."""
    prior = numbers(row["prior"])
    rows, part, exchanged = [], [], []
    for place, text in enumerate(row["unit"].split(" / ")):
        first, *rest = text.split()
        exchanged.append(float(first))
        while rest:
            kind = rest.pop(0)
            count = 2 + 2 * len(prior) if kind == "=" else len(prior)
            values, rest = [float(cell) for cell in rest[:count]], rest[count:]
            if kind == "=":
                rows.append(ln_sizes(Reading(value=values[0], u=values[1]), limits(values[2:])))
            else:
                rows.append([core.ln_seen(chance, seen=kind == "+") for chance in values])
            part.append(place)
    table = np.array(rows).reshape(len(rows), len(prior))
    return core.weigh(prior=prior, exchanged=exchanged, ln_likelihood=table, part=part, unexplained=unexplained)


def prior_of_counts(row):
    return core.prior_of_counts([int(count) for count in row["counts"].split()])


def ln_density(row):
    reading = Reading(value=row.number("x"), u=row.number("u"))
    return ln_sizes(reading, [Limits(lower=row.number("lower"), upper=row.number("upper"))])


def add_seen(row):
    return [core.ln_seen(chance, seen=row["seen"] == "1") for chance in numbers(row["chance"])]


def add_measured(row):
    reading, sizes = Reading(value=row.number("x"), u=row.number("u")), limits(numbers(row["size_mm"]))
    found = core.nearest(size_mm=sizes, reading_mm=reading)
    return [*ln_sizes(reading, sizes), float(found.variant), found.outside_mm, found.outside_u]


def weigh(row):
    made = unit(row, int(row["unexplained"]))
    of = made.weighed
    places = [float(of.best), float(of.single)]
    return [
        *map(float, made.chance), *map(float, made.chance_unmixed), of.chance_mixed, *places, of.entropy_bits, of.ln_evidence, of.ln_single,
        of.ln_by_part, of.ln_gap,
    ]  # fmt: skip


def part(row):
    made, place = unit(row), int(row["part"])
    of, origins = made.part(place), made.origins(place)
    columns = [float(value) for field in ("chance", "kept", "if_exchanged") for value in origins[field]]
    return [float(of.origin), of.chance, of.exchanged, of.exchanged_if_best, of.foreign, of.ln_conflict, *columns]


def conclude(row):
    one = core.weigh(prior=[1.0], exchanged=[0.1], ln_likelihood=np.zeros((1, 1)))
    weighed = core.Weighed(**{**one.weighed.as_dict(), "chance": row.number("chance"), "unexplained": int(row["unexplained"])})
    parts = [core.PartFinding(**{**one.part(0).as_dict(), "foreign": foreign}) for foreign in numbers(row["foreign"])]
    found = core.conclude(weighed, parts, Rule.stated_chances(go=row.number("go"), no_go=row.number("no_go")))
    return [OUTCOMES[found.outcome], float(found.foreign_parts), float(found.open_parts), float(found.variant_settled)]


def worth(row, look, **what):
    made, place = unit(row), int(row["part"])
    rule = Rule.stated_chances(go=row.number("go"), no_go=0.05)
    found = getattr(made, look)(place, minutes=row.number("minutes"), rule=rule, **what)
    return [found.bits, found.bits_per_minute, found.settles]


def mark_worth(row):
    return worth(row, "mark_worth", chance=numbers(row["chance"]))


def size_worth(row):
    return worth(row, "size_worth", size_mm=limits(numbers(row["size_mm"])), u_mm=row.number("u_mm"))
