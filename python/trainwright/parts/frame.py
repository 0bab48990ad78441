"""What the chapters' parts share: the records of a shop, and an answer with its pictures."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from pathlib import Path
from types import ModuleType
from typing import Any

from ..record import Family, Fleet, Fluids, Instruments, Jobs, load
from ..sheet import Sheet
from ..train import Train

LEAD = (
    "Every number below comes from the records of the shop and a formula with a source. Where a number is compared with a limit it "
    "is judged with its uncertainty: GO, NO-GO or NOT PROVEN. NOT PROVEN is an answer too: what would settle it then stands beside it."
)
"""What the reader of several answers must know first."""

Draw = Callable[[ModuleType], str]
"""Draws a picture with :mod:`trainwright.report.plots`, which is imported only where a report is written."""


@dataclass(frozen=True)
class Part:
    """An answer, and pictures by their caption."""

    sheet: Sheet
    pictures: dict[str, Draw] = field(default_factory=dict)


@dataclass
class Records:
    """The records of a shop, by kind."""

    family: Family | None = None
    fluids: Fluids | None = None
    instruments: Instruments | None = None
    fleet: Fleet | None = None
    jobs: Jobs | None = None
    trains: dict[str, Train] = field(default_factory=dict)
    folder: Path = field(default_factory=Path)
    """Of the jobs, for the logs that they name."""

    @classmethod
    def read(cls, paths: Iterable[Path]) -> Records:
        """The records in these files; of each kind but trains the last one counts."""
        records = cls()
        places = {Family: "family", Fluids: "fluids", Instruments: "instruments", Fleet: "fleet", Jobs: "jobs"}
        for path in paths:
            found = load(path)
            if isinstance(found, Train):
                records.trains[found.title or path.stem] = found
            else:
                setattr(records, places[type(found)], found)
            if isinstance(found, Jobs):
                records.folder = path.parent
        return records

    @property
    def title(self) -> str:
        """Title of the family, or of the only train."""
        if self.family:
            return str(self.family.as_dict()["meta"]["title"] or "Family")
        return next(iter(self.trains)) if len(self.trains) == 1 else "Records"

    def asked(self, *keys: str) -> list[dict[str, Any]]:
        """The jobs that give all these keys."""
        jobs = self.jobs.as_dict()["job"] if self.jobs else []
        return [job for job in jobs if all(job.get(key) for key in keys)]
