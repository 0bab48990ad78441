"""The state file of a screening: which files are done, and their tally. Written anew and put in place in one step."""

from __future__ import annotations

import json
import os
import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from ..error import refusal
from .read import Piece

HEAD = b"trainwright screening, state 1\n"
COST = 10.0
"""At least this many times the duration of the last writing passes before the next, so that it stays cheap with many small files."""


@dataclass
class Done:
    """What a state file holds."""

    marks: dict[str, tuple[int, int]] = field(default_factory=dict)
    """Size and time of change of each file that is done."""
    missing: list[str] = field(default_factory=list)
    """Columns that some of them do not have."""
    tally: bytes | None = None


class State:
    """Reads and writes one state file; without a path it does neither."""

    def __init__(self, path: str | os.PathLike[str] | None, options: Mapping[str, Any]) -> None:
        self.path = Path(path) if path is not None else None
        self.options = json.loads(json.dumps(options, sort_keys=True, default=repr))
        self.done = self._read()
        self._cost = self._written = 0.0

    def _read(self) -> Done:
        if self.path is None or not self.path.exists():
            return Done()
        text = self.path.read_bytes()
        if not text.startswith(HEAD):
            raise refusal("state", f"{self.path} is not a state file of a screening; give another path", "TEXT")
        head, _, tally = text[len(HEAD) :].partition(b"\n")
        kept = json.loads(head)
        if kept["options"] != self.options:
            raise refusal(
                "state", f"{self.path} was made with other columns or options; give the same ones, or remove it to start anew", "INCONSISTENT"
            )
        return Done({name: (size, changed) for name, (size, changed) in kept["files"].items()}, kept["missing"], tally)

    def left(self, pieces: list[Piece]) -> list[Piece]:
        """The pieces that are not done; refuses when what is done is no longer what it was."""
        if self.path is None:
            return pieces
        if any(piece.mark is None for piece in pieces):
            raise refusal("state", "a state file goes with Parquet files; a table in memory cannot be resumed", "INCONSISTENT")
        there = {piece.name: piece for piece in pieces}
        for name, mark in self.done.marks.items():
            if name not in there:
                raise refusal(
                    "state", f"{self.path} counts {name}, which is not among these files; a sum cannot be taken apart: remove it to start anew", "INCONSISTENT"
                )
            if there[name].mark != mark:
                raise refusal("state", f"{name} has changed since it was counted in {self.path}; remove that file to start anew", "INCONSISTENT")
        return [piece for piece in pieces if piece.name not in self.done.marks]

    def add(self, piece: Piece) -> None:
        """This file is done."""
        if piece.mark is not None:
            self.done.marks[piece.name] = piece.mark
        self.done.missing = sorted({*self.done.missing, *piece.missing})

    def due(self) -> bool:
        """Whether writing is cheap against the work since the last time."""
        return self.path is not None and time.monotonic() - self._written >= COST * self._cost

    def write(self, tally: bytes) -> None:
        """Puts the state in place; a reader sees the old one or the new one."""
        if self.path is None:
            return
        start = time.monotonic()
        head = {"options": self.options, "files": self.done.marks, "missing": self.done.missing}
        unfinished = self.path.with_name(f"{self.path.name}.{os.getpid()}.unfinished")
        with open(unfinished, "wb") as file:
            file.write(HEAD + json.dumps(head).encode() + b"\n" + tally)
            file.flush()
            os.fsync(file.fileno())
        os.replace(unfinished, self.path)
        self._written = time.monotonic()
        self._cost = self._written - start
