"""What may be exchanged: the matrix of a family, one part with its reasons, matched sets."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import combinations
from typing import Any

from .. import hazard
from ..edge import number
from ..interchange import Answer, Joint, Joints, MatchedSet, Meeting, Order, Reason
from ..record import Family
from ..sheet import Fact, Row, Sheet, Table

ALONE = {
    "holds": "holds",
    "blocked": "does not go together: found at once, and harmless",
    "may bind": "may not go together, or has no clearance, within the tolerances",
    "may be loose": "goes together and may run loose, within the tolerances",
    "loose": "goes together and runs loose: nobody notices at assembly",
    "uncovered": "goes together, and too little of the land is carried",
    "unequal": "does not match: its teeth, splines or race are others",
}
"""What comes of a part that is put in alone, in words."""

SHORT = {
    "holds": "holds",
    "blocked": "does not go in",
    "may bind": "may not go in",
    "may be loose": "goes in, may run loose",
    "loose": "goes in, runs loose",
    "uncovered": "goes in, land not carried",
    "unequal": "unequal",
}
"""The same for a cell."""

DANGEROUS = ("loose", "may be loose", "uncovered")
"""What goes together and is found out on the road."""

NOT_CHECKED = [
    "Wear: sizes are those of new parts by the record, unless a measured size is named.",
    "Strength: see the comparison of two variants for what a part carries.",
    "Whatever the record has no joint for: seals, oil ways, wiring, calibration; and whether a machined surface is used by another fit too.",
    "Axial build-up: measure end play and clutch clearance again after any exchange.",
]
CARDS = ["interchange.meet", "interchange.close_set", "interchange.answer"]


def plain(name: str) -> str:
    """A name of the record, to read: ``output_shaft`` is output shaft."""
    return name.replace("_", " ")


def listed(names: Iterable[str]) -> str:
    """Names of the record in a sentence.

    >>> listed(["output_shaft", "rear_support", "case"])
    'output shaft, rear support and case'
    """
    *most, last = [plain(name) for name in names] or ["nothing"]
    return f"{', '.join(most)} and {last}" if most else last


def of_joint(joint: Joint, meeting: Meeting, *, first_of: str, second_of: str) -> str:
    """The reason in numbers: clearance against the wanted, share of the land, or the two values."""
    if joint.kind == "match":
        first, second = joint.sizes[first_of], joint.sizes[second_of]
        return f"both {first}" if first == second else f"{first} against {second}"
    if joint.kind == "cover":
        return f"{number(meeting.share, 2)} of the land carried, least {joint.limit:g}"
    least, most, wanted_mm = meeting.clearance_mm.lower, meeting.clearance_mm.upper, meeting.wanted_mm
    wanted = f"at most {wanted_mm.upper:g}" if joint.kind != "press" and wanted_mm.lower >= 0 else f"{number(wanted_mm.lower, 3)} to {number(wanted_mm.upper, 3)}"
    return f"{number(least, 3)} to {number(most, 3)} mm, wanted {wanted}"


def short(answer: Answer) -> str:
    """The answer for a cell: at most eight letters."""
    mark = " !" if answer.alone in DANGEROUS and answer.relation != "singly" else ""
    if answer.relation == "only as a set":
        return f"{answer.size}{' m' if answer.machined else ''}{mark}"
    return {"after machining": "1 m", "not known": "?", "belongs to the unit": "kept"}.get(answer.relation, answer.relation) + mark


LEGEND = (
    "singly: alone, as it is. A number: so many parts of its variant must go in together. m: after machining. never: nothing mends "
    "a joint with the unit. ?: the record has no joint of it, so nothing is known. !: put in alone it goes together and is loose or "
    "hardly carried, and nobody notices."
)


def both_ways(there: Answer, back: Answer) -> str:
    """The two directions of a pair of variants in words: the decision of the parts table.

    Singly both ways, singly one way only, only as a set, after machining, never, not known.
    """
    if there.relation == back.relation:
        return f"{there.relation} both ways" if there.relation == "singly" else there.relation
    better = min(there, back, key=lambda answer: _RANK.index(answer.relation))
    only = better.relation == "singly" or "never" in (there.relation, back.relation)
    return f"{better.relation}, one way only: {better.variant} into {better.into}" if only else better.relation


_RANK = ("singly", "after machining", "only as a set", "never", "not known", "belongs to the unit")


def directions(variants: Sequence[str]) -> list[tuple[str, str]]:
    """Every ordered pair of variants, the two of a pair side by side."""
    return [pair for one, other in combinations(variants, 2) for pair in ((one, other), (other, one))]


def matrix_sheet(joints: Joints, family: Family, *, title: str) -> Sheet:
    """Every part in every direction, the matched sets behind it, and what must not be done."""
    answers = {(answer.part, answer.variant, answer.into): answer for answer in joints.matrix()}
    parts = [part for part in joints.parts if part not in joints.fixed]
    pairs = directions(joints.variants)
    counts = {relation: sum(answers[part, *pair].relation == relation for part in parts for pair in pairs) for relation in _RANK[:-1]}
    said = ", ".join(f"{count} {relation}" for relation, count in counts.items() if count)
    loose = _dangers(joints, answers)
    answer = f"{len(parts)} parts in {len(pairs)} directions: {said}."
    if loose:
        answer += " Some go together and are wrong all the same: they are listed, as nobody notices them at assembly."
    tables = [
        *_matrix_tables(parts, joints.variants, answers),
        _one_way_table(parts, joints.variants, answers),
        _set_table(joints, answers),
        Table("Do not: it goes together, and nobody notices", ("part", "exchange", "joint", "comes to"), loose),
        *_rule_tables(joints, family),
    ]
    return Sheet(
        title=title,
        answer=answer,
        tables=[table for table in tables if table.rows],
        facts=[Fact(plain(part), "never exchanged", "it belongs to the unit") for part in joints.fixed],
        not_checked=NOT_CHECKED,
        cautions=[hazard.caution("roll-away")] if any("park" in part for part in parts) else [],
        cards=[*CARDS, "interchange.cover_share"],
        data={"counts": counts, "parts": [_answer_data(joints, answers[part, *pair]) for part in parts for pair in pairs]},
    )


Answers = Mapping[tuple[str, str, str], Answer]


def _matrix_tables(parts: Sequence[str], variants: Sequence[str], answers: Answers) -> list[Table]:
    """One table of all directions where it stays readable, else one for each unit."""
    if len(variants) <= 3:
        blocks = [("Part of one variant into a unit of another", directions(variants))]
    else:
        blocks = [(f"Into a unit of {into}", [(of, into) for of in variants if of != into]) for into in variants]
    tables = []
    for place, (title, pairs) in enumerate(blocks):
        rows = []
        for part in parts:
            known = any(answers[part, *pair].relation != "not known" for pair in pairs)
            rows.append(Row((plain(part), *(short(answers[part, *pair]) for pair in pairs)), "" if known else "quiet"))
        columns = ("part", *(f"{of} into {into}" for of, into in pairs))
        tables.append(Table(title, columns, rows, LEGEND if place == len(blocks) - 1 else ""))
    return tables


def _one_way_table(parts: Sequence[str], variants: Sequence[str], answers: Answers) -> Table:
    """What goes in one way only: the answer that a match of part numbers hides."""
    rows: dict[tuple[str, str, str, str], list[str]] = {}
    for part in parts:
        for one, other in combinations(variants, 2):
            there, back = answers[part, one, other], answers[part, other, one]
            if "one way only" in both_ways(there, back):
                better, worse = (there, back) if both_ways(there, back).endswith(f"{one} into {other}") else (back, there)
                cells = (plain(part), better.relation, worse.relation, SHORT[worse.alone])
                rows.setdefault(cells, []).append(f"{better.variant} into {better.into}")
    told = [Row((part, ", ".join(exchanges), how, *other)) for (part, how, *other), exchanges in rows.items()]
    return Table("One way only", ("part", "goes", "how", "the other way", "put in alone that way"), told)


def _set_table(joints: Joints, answers: Answers) -> Table:
    """The matched sets of more than one part or with something to machine, each once."""
    rows: dict[tuple[str, ...], list[str]] = {}
    for answer in answers.values():
        if answer.relation in ("only as a set", "after machining"):
            closed = joints.close_set(answer.part, variant=answer.variant, into=answer.into)
            machined = listed(closed.machining.values()) if closed.machining else ""
            exchanges = rows.setdefault((listed(closed.parts), machined, price_of(joints, closed)), [])
            exchange = f"{answer.variant} into {answer.into}"
            exchanges += [] if exchange in exchanges else [exchange]
    return Table(
        "Matched sets: the fewest parts that go together",
        ("parts", ">price", "machining", "for"),
        [Row((parts, price, machined, ", ".join(exchanges))) for (parts, machined, price), exchanges in rows.items()],
        "Each is the least set: what it holds is forced by a joint that breaks, one part after the other.",
    )


def price_of(joints: Joints, priced: MatchedSet | Order) -> str:
    """The price with its unit; what is not known is said."""
    price = priced.price
    if price.unpriced and not price.total:
        return "price not known"
    known = f"{number(price.total, 2).removesuffix('.00')} {joints.price_unit}".strip()
    return f"{known}, and {price.unpriced} price{'s' * (price.unpriced > 1)} not known" if price.unpriced else known


def _dangers(joints: Joints, answers: Answers) -> list[Row]:
    """Every joint that goes together and is wrong, of the parts whose worst joint that is; like exchanges in one row."""
    by_name = {joint.name: joint for joint in joints.joints}
    rows: dict[tuple[str, str, str], list[str]] = {}
    for answer in answers.values():
        if answer.alone not in DANGEROUS or answer.relation == "belongs to the unit":
            continue
        for reason in _reasons(joints, answer):
            if reason.meeting.outcome in DANGEROUS:
                cells = (plain(answer.part), plain(reason.joint), _reason_text(by_name, answer, reason))
                rows.setdefault(cells, []).append(f"{answer.variant} into {answer.into}")
    return [Row((part, ", ".join(exchanges), joint, comes_to), "NO-GO") for (part, joint, comes_to), exchanges in rows.items()]


def _reasons(joints: Joints, answer: Answer) -> list[Reason]:
    return joints.reasons(answer.part, variant=answer.variant, into=answer.into)


def _reason_text(by_name: Mapping[str, Joint], answer: Answer, reason: Reason) -> str:
    joint = by_name[reason.joint]
    first_of, second_of = (answer.variant, answer.into) if joint.first == answer.part else (answer.into, answer.variant)
    return of_joint(joint, reason.meeting, first_of=first_of, second_of=second_of)


def _rule_tables(joints: Joints, family: Family) -> list[Table]:
    tables = []
    if joints.machining:
        rows = [
            Row((plain(rule.name), f"{plain(rule.part)} of {listed(rule.variants)}", f"{plain(rule.joint)} of {listed(rule.to_fit)}",
                 f"{rule.finish_mm.lower:.3f} to {rule.finish_mm.upper:.3f}", rule.check))
            for rule in joints.machining
        ]  # fmt: skip
        tables.append(Table("The only machining permitted", ("operation", "of", "fits then", "finish mm", "check afterward"), rows))
    aliases = family.as_dict()["alias"] if joints.alias else []
    if aliases:
        rows = [Row((plain(entry["part"]), *(entry["numbers"][variant] for variant in joints.variants), entry["why"])) for entry in aliases]
        tables.append(Table("Other number, same fit: order any of them", ("part", *joints.variants, "why"), rows))
    return tables


def _answer_data(joints: Joints, answer: Answer) -> dict[str, Any]:
    data: dict[str, Any] = {
        "part": answer.part, "variant": answer.variant, "into": answer.into, "relation": answer.relation, "alone": answer.alone,
    }  # fmt: skip
    if answer.relation in ("only as a set", "after machining", "never"):
        data |= _set_data(joints.close_set(answer.part, variant=answer.variant, into=answer.into))
    return data


def _set_data(closed: MatchedSet) -> dict[str, Any]:
    return {
        "set": closed.parts, "machining": closed.machining, "unmended": closed.unmended,
        "price": closed.price.total, "unpriced": closed.price.unpriced,
    }  # fmt: skip


# ---- one part


def part_sheet(joints: Joints, family: Family, part: str, *, variant: str, into: str, title: str = "") -> Sheet:
    """One part in one direction: how it goes in, with the reason at every joint."""
    answer = joints.answer(part, variant=variant, into=into)
    back = joints.answer(part, variant=into, into=variant)
    by_name = {joint.name: joint for joint in joints.joints}
    rows = []
    for reason in _reasons(joints, answer):
        mend = f"; {plain(reason.machining)} mends it" if reason.machining else ""
        mark = "NO-GO" if reason.meeting.outcome in DANGEROUS else "" if reason.meeting.outcome == "holds" else "governs"
        outcome = "does not hold" if reason.meeting.outcome == "loose" and by_name[reason.joint].kind == "press" else reason.meeting.outcome
        rows.append(Row((plain(reason.joint), plain(reason.neighbor), by_name[reason.joint].kind, _reason_text(by_name, answer, reason), outcome + mend), mark))
    closed = None if answer.relation in ("not known", "belongs to the unit") else joints.close_set(part, variant=variant, into=into)
    tables = [Table("Put in alone, as it is", ("joint", "with", "kind", "comes to", "outcome"), rows)] if rows else []
    if closed and closed.machining:
        tables.append(check_table(joints, closed))
    if closed and not closed.possible:
        tables.append(_unmended_table(joints, closed))
    return Sheet(
        title=title or f"{plain(part).capitalize()} of {variant} into {into}",
        answer=in_words(joints, answer, closed),
        tables=tables,
        facts=[
            *([Fact("price", price_of(joints, closed))] if closed and closed.possible else []),
            Fact("the other way", back.relation, f"{into} into {variant}: put in alone it {_alone(back)}" if back.joints else f"{into} into {variant}"),
            Fact("both directions", both_ways(answer, back)),
            *(Fact(variant, entry["numbers"][variant], entry["why"]) for entry in _aliases(family, part) for variant in joints.variants),
        ],
        not_checked=NOT_CHECKED,
        cautions=[hazard.caution("roll-away")] if "park" in part else [],
        cards=CARDS,
        how=[answer.explain(), *([closed.explain()] if closed else []), *(reason.meeting.explain() for reason in _reasons(joints, answer))],
        data={**_answer_data(joints, answer), "joints": [_reason_data(reason) for reason in _reasons(joints, answer)], "the_other_way": back.relation},
    )


def _alone(answer: Answer) -> str:
    return ALONE[answer.alone]


def _aliases(family: Family, part: str) -> list[dict[str, Any]]:
    return [entry for entry in family.as_dict()["alias"] if entry["part"] == part]


def in_words(joints: Joints, answer: Answer, closed: MatchedSet | None) -> str:
    """The answer in a sentence or two: what to order, what to machine, and what comes of the part alone."""
    part = f"{'An' if answer.variant[0] in 'aeiou' else 'A'} {answer.variant} {plain(answer.part)}"
    alone = f" Put in alone, it {_alone(answer)}." if answer.alone != "holds" else ""
    if answer.relation == "not known":
        return f"Not known: the record has no joint of the {plain(answer.part)}, which does not mean that it goes in. Compare the parts, and add the joint."
    if answer.relation == "belongs to the unit":
        return f"The {plain(answer.part)} belongs to the unit and is never exchanged."
    if answer.relation == "singly":
        why = "its joints all hold" if answer.joints else "the record says other number, same fit"
        return f"{part} goes into {answer.into} singly: {why}."
    assert closed
    if answer.relation == "never":
        others = [name for name in closed.parts if name != answer.part]
        with_it = f", even with its {listed(others)}" if others else ""
        return f"{part} never goes into {answer.into}{with_it}: nothing mends {listed(closed.unmended)}.{alone}"
    machined = f", machined ({listed(closed.machining.values())})" if closed.machining else ""
    if answer.relation == "after machining":
        return f"{part} goes into {answer.into} alone{machined}: {price_of(joints, closed)}.{alone}"
    others = [name for name in closed.parts if name != answer.part]
    return f"{part} goes into {answer.into} only as a set, with the {listed(others)} of {answer.variant}{machined}: {price_of(joints, closed)}.{alone}"


def check_table(joints: Joints, of: MatchedSet | Order) -> Table:
    """What to finish to, and what to check afterward."""
    rules = {rule.name: rule for rule in joints.machining}
    rows = [
        Row((plain(rule.name), plain(rule.part), f"{rule.finish_mm.lower:.3f} to {rule.finish_mm.upper:.3f}", f"{rule.runout_limit_mm:g}", rule.check))
        for rule in (rules[name] for name in dict.fromkeys(of.machining.values()))
    ]
    return Table("Machining", ("operation", "of", "finish mm", ">run-out at most mm", "check afterward"), rows)


def _unmended_table(joints: Joints, closed: MatchedSet) -> Table:
    """The joints that are the reason for never."""
    of = {part: closed.variant if part in closed.parts else closed.into for part in joints.parts}
    rows = []
    for joint in joints.joints:
        if joint.name in closed.unmended:
            meeting = joints.meeting(joint.name, first_of=of[joint.first], second_of=of[joint.second])
            text = of_joint(joint, meeting, first_of=of[joint.first], second_of=of[joint.second])
            sides = f"{of[joint.first]} {plain(joint.first)}, {of[joint.second]} {plain(joint.second)}"
            rows.append(Row((plain(joint.name), sides, text, meeting.outcome), "NO-GO"))
    return Table("Why never: nothing mends this, whatever comes along", ("joint", "between", "comes to", "outcome"), rows)


def _reason_data(reason: Reason) -> dict[str, Any]:
    meeting = reason.meeting
    return {
        "joint": reason.joint, "with": reason.neighbor, "outcome": meeting.outcome, "machining": reason.machining,
        "clearance_mm": [meeting.clearance_mm.lower, meeting.clearance_mm.upper],
        "wanted_mm": [meeting.wanted_mm.lower, meeting.wanted_mm.upper], "share": meeting.share,
    }  # fmt: skip


# ---- several sets


def sets_sheet(joints: Joints, asked: Sequence[tuple[str, str, str]], *, title: str, story: str = "") -> Sheet:
    """Several parts, each as part, its variant and the unit's: what goes with it, what it costs, and what must not be done."""
    answers = [joints.answer(part, variant=variant, into=into) for part, variant, into in asked]
    closed = [
        None if answer.relation in ("not known", "belongs to the unit") else joints.close_set(answer.part, variant=answer.variant, into=answer.into)
        for answer in answers
    ]
    rows = []
    for answer, found in zip(answers, closed):
        ordered = listed(name for name in found.parts if name != answer.part) if found and found.possible and len(found.parts) > 1 else ""
        machined = listed(found.machining.values()) if found and found.machining and found.possible else ""
        price = price_of(joints, found) if found and found.possible else ""
        rows.append(Row((plain(answer.part), answer.variant, answer.into, answer.relation, price, ordered, machined), "NO-GO" if answer.relation == "never" else ""))
    do_not = [
        Row((plain(answer.part), answer.variant, answer.into, _alone(answer)), "NO-GO" if answer.alone in DANGEROUS else "")
        for answer in answers
        if answer.alone != "holds"
    ]
    first, found = answers[0], closed[0]
    used = {name for found in closed if found and found.possible for name in found.machining.values()}
    checks = [rule for rule in joints.machining if rule.name in used]
    return Sheet(
        title=title,
        story=story,
        answer=in_words(joints, first, found),
        tables=[
            Table("What goes in, and with what", ("part", "from", "into", "goes in", ">price", "together with", "machining"), rows),
            *([Table("Do not put in alone", ("part", "from", "into", "what comes of it"), do_not)] if do_not else []),
        ],
        facts=[Fact(plain(rule.name), f"{rule.finish_mm.lower:.3f} to {rule.finish_mm.upper:.3f} mm", rule.check) for rule in checks],
        not_checked=NOT_CHECKED,
        cautions=[hazard.caution("roll-away")] if any("park" in answer.part for answer in answers) else [],
        cards=CARDS,
        how=[answers[0].explain(), *(one.explain() for one in closed if one)],
        data={"sets": [_answer_data(joints, answer) for answer in answers]},
    )
