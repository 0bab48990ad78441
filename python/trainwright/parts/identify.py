"""The part about which unit is on the bench."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ..answers.identify import identify_sheet
from ..answers.identify.bench import Bench, Found, identified
from ..answers.identify.looks import look_sheet
from ..answers.sizes import names_a_fit
from ..record import Family
from .frame import Draw, Part, Records


def identify_parts(records: Records) -> Iterator[Part]:
    """The unit of every job that says what was found; without such a job, what there is to look at."""
    family = records.family
    if not family or not (family.as_dict()["evidence"] or family.as_dict()["evidence_measured"]):
        return
    jobs = records.asked("seen") or records.asked("measured_mm")
    for job in jobs:
        found = _known(family, job)
        bench = identified(family, found, instruments=records.instruments)
        sheet = identify_sheet(bench, title=f"{job['id']}: {job['title']}", story=job["story"])
        pictures: dict[str, Draw] = {"Chance of each variant, look by look; a dot for each look that was made.": _chances(bench)}
        if marks := {mark: seen for mark, seen in found.seen.items()}:
            early = identified(family, Found(marks), instruments=records.instruments)
            pictures["After the marks alone: what each further look would tell per minute of labor."] = _worths(early)
        yield Part(sheet, pictures)
    if not jobs:
        yield Part(look_sheet(family, records.instruments, title="What can be looked at"))


def _known(family: Family, job: dict[str, Any]) -> Found:
    """What the job found, without sizes that the family does not know: it may be the record of another."""
    evidence = {look.id for look in family.looks()}
    sizes = job.get("measured_mm") or {}
    known = {name: size for name, size in sizes.items() if name in evidence or names_a_fit(family, name)}
    return Found(job.get("seen") or {}, known, tuple(name for name in sizes if name not in known))


def _chances(bench: Bench) -> Draw:
    steps = [("before", dict(bench.unit.prior)), *((made.look.id, dict(made.chance)) for made in bench.unit.made)]
    return lambda plots: plots.chances_by_look("Chance of each variant", steps)


def _worths(bench: Bench) -> Draw:
    looks = [(look.look.id, look.look.minutes, look.worth.bits_per_minute) for look in bench.unit.next_looks if look.worth]
    return lambda plots: plots.worth_of_looks("What to look at next", looks)
