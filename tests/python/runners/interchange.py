"""Runners of the interchange chapter's vectors: families are written as numbers, Python takes names."""

from trainwright import interchange as core
from trainwright.judge import Limits, Reading, Rule

OUTCOMES = ["holds", "blocked", "may bind", "may be loose", "loose", "uncovered", "unequal"]
RELATIONS = ["not known", "singly", "after machining", "only as a set", "never", "belongs to the unit"]


def numbers(text):
    return [float(word) for word in text.split()]


def limits(values):
    return Limits(lower=values[0], upper=values[1])


def made(kind, values):
    return str(values[0]) if kind == "match" else (limits(values), limits(values[2:]))


def joint(name, kind, first, second, limit, sizes):
    return core.Joint(name=name, kind=kind, first=first, second=second, sizes=sizes, limit=None if kind == "match" else limit)


def names(row, column):
    return [f"p{word}" for word in row[column].split()]


def machining(row):
    for place, text in enumerate(text for text in row["machining"].split(";") if text.strip()):
        of, part, from_mask, to_mask, *finish_mm, runout_mm = numbers(text)
        masked = [[f"v{v}" for v in range(32) if int(mask) >> v & 1] for mask in (from_mask, to_mask)]
        yield core.Machining(
            name=f"m{place}", joint=f"j{of:g}", part=f"p{part:g}", variants=masked[0], to_fit=masked[1],
            finish_mm=limits(finish_mm), check="run-out", runout_limit_mm=runout_mm,
        )  # fmt: skip


def family(row, prices=None):
    parts = [f"p{part}" for part in range(int(row["parts"]))]
    joints = []
    for place, text in enumerate(row["joints"].split(";")):
        kind, rest = text.strip().split(" ", 1)
        first, second, limit, *sizes = numbers(rest)
        step = 1 if kind == "match" else 4
        sizes = {f"v{v}": made(kind, sizes[v * step : v * step + step]) for v in range(int(row["variants"]))}
        joints.append(joint(f"j{place}", kind, f"p{first:g}", f"p{second:g}", limit, sizes))
    return core.Joints(
        variants=[f"v{v}" for v in range(int(row["variants"]))], parts=parts, joints=joints, machining=list(machining(row)),
        fixed=names(row, "fixed"), alias=names(row, "alias"), prices=prices,
    )  # fmt: skip


def priced(row):
    prices = {}
    for column, letter in (("part_prices", "p"), ("machining_prices", "m")):
        for place, price in enumerate(numbers(row[column])):
            if price == price:
                prices[f"{letter}{place}"] = price
    return prices


def asked(row):
    return {"part": f"p{row['part']}", "variant": f"v{row['from']}", "into": f"v{row['into']}"}


def cover_share(row):
    land_mm = Limits(lower=row.number("land_from_mm"), upper=row.number("land_to_mm"))
    surface_mm = Limits(lower=row.number("surface_from_mm"), upper=row.number("surface_to_mm"))
    return [core.cover_share(land_mm=land_mm, surface_mm=surface_mm)]


def meet(row):
    kind = row["kind"]
    sizes = {name: made(kind, numbers(row[name])) for name in ("first_from", "second_from")}
    meeting = joint("j", kind, "p0", "p1", row.number("limit"), sizes).meet(first_of="first_from", second_of="second_from")
    clearance_mm, wanted_mm = meeting.clearance_mm, meeting.wanted_mm
    return [float(OUTCOMES.index(meeting.outcome)), clearance_mm.lower, clearance_mm.upper, wanted_mm.lower, wanted_mm.upper, meeting.share]


def close_set(row):
    found = family(row).close_set(**asked(row))
    bits = sum(1 << int(part[1:]) for part in found.parts)
    return [float(n) for n in (len(found.parts), len(found.machining), len(found.unmended), bits)]


def answer(row):
    found = family(row).answer(**asked(row))
    return [float(n) for n in (RELATIONS.index(found.relation), OUTCOMES.index(found.alone), found.joints, found.broken, found.size)]


def price(row):
    found = family(row, priced(row)).close_set(**asked(row)).price
    return [found.total, float(found.unpriced)]


def place(name):
    return -1.0 if name is None else float(name[1:])


def variants(text):
    return {f"p{part}": f"v{word}" for part, word in enumerate(text.split()) if word != "-"}


def put_in(row):
    found = family(row).put_in(f"p{row['part']}", variant=f"v{row['variant']}", unit="v0", found=variants(row["variants_of"]))
    return [float(OUTCOMES.index(found.outcome)), place(found.machining)]


def order(row):
    measured = []
    for text in row["measured"].split(";"):
        if text.strip():
            of, part, value, u = numbers(text)
            measured.append((f"j{of:g}", f"p{part:g}", Reading(value=value, u=u)))
    found = family(row, priced(row)).order(
        unit=f"v{row['unit']}", aim=["fewest", "cheapest"][int(row["aim"])], wanted=variants(row["wanted"]),
        found=variants(row["found"]), measured=measured, rule=Rule.conformance(0.95), spread="rectangular",
    )  # fmt: skip
    code = sum((int(variant[1:]) + 1) * 4.0 ** int(part[1:]) for part, variant in found.parts.items())
    first = found.joints[0]
    return [
        float(found.possible), float(len(found.parts)), float(len(found.machining) if found.possible else 0),
        float(len(found.not_proven)), place(found.stopped_at), found.price.total, float(found.price.unpriced), float(found.cheapest),
        float(code), first.chance, first.clearance_mm.u,
    ]  # fmt: skip
