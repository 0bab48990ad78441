"""Parts about exchanging: the matrix of the family with its picture, and the matched sets that a job asks for."""

from __future__ import annotations

from collections.abc import Iterator

from ..answers.interchange import matrix_sheet, plain, sets_sheet
from ..answers.order import Bench, order_sheet
from ..interchange import Joints, MatchedSet
from .frame import Draw, Part, Records

KINDS = {"running": "fit", "locating": "fit", "press": "fit"}
"""What a joint is drawn as; covers and matches as themselves."""

MOST_DRAWN = 60
"""Parts that one picture can show."""


def set_parts(records: Records) -> Iterator[Part]:
    """The matched sets of every job that asks for some, with pictures of the first and of the first that can never be."""
    for job in records.asked("ask_sets"):
        if not records.family:
            continue
        joints = records.family.joints()
        asked = [(part, variant, into) for part, variant, into in job["ask_sets"]]
        closed = [joints.close_set(part, variant=variant, into=into) for part, variant, into in asked]
        shown = [found for found in closed if len(found.parts) > 1]
        first = [found for found in shown if found.possible][:1]
        never = [found for found in shown if not found.possible][:1]
        pictures = {caption_of(found): picture_of(joints, found) for found in first + never}
        yield Part(sets_sheet(joints, asked, title=f"{job['id']}: {job['title']}", story=job["story"]), pictures)
        part, variant, into = asked[0]
        title = f"{job['id']}: order for a {into} unit that is to have a {variant} {plain(part)}"
        yield Part(order_sheet(joints, Bench(into, wanted={part: variant}), aim="cheapest", title=title))


def matrix_parts(records: Records) -> Iterator[Part]:
    """Every part of the family in every direction."""
    if not records.family or not (joints := records.family.joints()).joints:
        return
    caption = "Parts (boxes) and the joints between them (lines). What hangs together can force one another along."
    pictures = {caption: picture_of(joints, None)} if len(joints.parts) <= MOST_DRAWN else {}
    yield Part(matrix_sheet(joints, records.family, title="Interchange of the family"), pictures)


def caption_of(closed: MatchedSet) -> str:
    """What a picture of a matched set shows."""
    what = f"{closed.variant} {plain(closed.part)} into {closed.into}"
    if closed.possible:
        return f"{what}: each broken joint brings its neighbor, until all that is left holds or is machined."
    return f"{what}: never. What comes along ends at the unit itself, and nothing mends that joint."


def picture_of(joints: Joints, closed: MatchedSet | None) -> Draw:
    """The picture of the family's joints, or of the group that a matched set belongs to."""
    chosen = _group(joints, closed.part) if closed else {part for joint in joints.joints for part in (joint.first, joint.second)}
    states = _states(joints, closed) if closed else {}
    lines = [
        (plain(joint.first), plain(joint.second), KINDS.get(joint.kind, joint.kind), states.get(joint.name, ""))
        for joint in joints.joints
        if joint.first in chosen
    ]
    parts = [plain(part) for part in joints.parts if part in chosen]
    fixed = [plain(part) for part in joints.fixed]
    marked = [plain(part) for part in closed.parts] if closed else []
    asked = plain(closed.part) if closed else ""
    title = caption_of(closed).split(":")[0] if closed else "Parts and joints"
    return lambda plots: plots.parts_graph(title, parts, [plots.Link(*line) for line in lines], marked=marked, asked=asked, fixed=fixed)


def _group(joints: Joints, part: str) -> set[str]:
    """The parts that hang together with one."""
    group = {part}
    while True:
        more = {other for joint in joints.joints for other in (joint.first, joint.second) if {joint.first, joint.second} & group} - group
        if not more:
            return group
        group |= more


def _states(joints: Joints, closed: MatchedSet) -> dict[str, str]:
    """The joints that break on the way to the set: within it, machined at its edge, or mended by nothing."""
    states = {}
    inside = set(closed.parts)
    for joint in joints.joints:
        ends = {joint.first, joint.second}
        if joint.name in closed.machining:
            states[joint.name] = "machined"
        elif joint.name in closed.unmended:
            states[joint.name] = "never"
        elif ends <= inside:
            ways = ((closed.variant, closed.into), (closed.into, closed.variant))
            broken = [joints.meeting(joint.name, first_of=first, second_of=second).outcome != "holds" for first, second in ways]
            states[joint.name] = "forced" if any(broken) else ""
    return states
