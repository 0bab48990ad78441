"""Progress of long work: a bar in a terminal, a line in a notebook, nothing elsewhere; and Ctrl-C as a wish to stop."""

from __future__ import annotations

import signal
import sys
import threading
import time
from types import FrameType, TracebackType
from typing import Any

LONG_ROWS = 3_000_000
"""Work below this many rows is not worth a bar."""
EVERY_S = 0.2


class Stopped(Exception):
    """Raised between two parts of the work after Ctrl-C."""


class Interrupt:
    """While it is entered, the first Ctrl-C is kept as a wish to stop; a second one interrupts at once."""

    def __init__(self) -> None:
        self.wished = False
        self._before: Any = None

    def __enter__(self) -> Interrupt:
        if threading.current_thread() is threading.main_thread():
            self._before = signal.signal(signal.SIGINT, self._note)
        return self

    def __exit__(self, *_: object) -> None:
        self._restore()

    def _note(self, number: int, frame: FrameType | None) -> None:
        self.wished = True
        self._restore()

    def _restore(self) -> None:
        if self._before is not None:
            signal.signal(signal.SIGINT, self._before)
            self._before = None

    def check(self) -> None:
        """Stops here if that is wished."""
        if self.wished:
            raise Stopped


class Progress:
    """Shows rows done, of how many, and how fast. ``show`` None decides by where it runs and how long the work is."""

    def __init__(self, total: int | None, show: bool | None) -> None:
        self.total, self.rows = total, 0
        self._start = self._last = time.monotonic()
        self._bar: Any = None
        self._line: Any = None
        if show is False or (show is None and total is not None and total < LONG_ROWS):
            return
        if _in_notebook():
            from IPython.display import display

            self._line = display({"text/plain": ""}, raw=True, display_id=True)  # type: ignore[no-untyped-call]
        elif sys.stderr.isatty():
            self._bar = _bar()

    def __enter__(self) -> Progress:
        if self._bar:
            self._bar.start()
            self._task = self._bar.add_task("reading", total=self.total)
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        if self._bar:
            self._bar.update(self._task, completed=self.rows)
            self._bar.stop()
        self._tell(last=True)

    def add(self, rows: int, doing: str) -> None:
        """So many rows more are done."""
        self.rows += rows
        now = time.monotonic()
        if now - self._last < EVERY_S:
            return
        self._last = now
        if self._bar:
            self._bar.update(self._task, completed=self.rows, description=doing)
        self._tell()

    def _tell(self, *, last: bool = False) -> None:
        if self._line is None:
            return
        speed = self.rows / max(time.monotonic() - self._start, 1e-9)
        share = f"{100 * self.rows / self.total:.0f} %, " if self.total and not last else ""
        self._line.update({"text/plain": f"{share}{self.rows:,} rows, {speed / 1e6:.1f} million a second"}, raw=True)


def _in_notebook() -> bool:
    shell = sys.modules.get("IPython")
    running = shell.get_ipython() if shell is not None else None
    return running is not None and hasattr(running, "kernel")


def _bar() -> Any:
    try:
        from rich.console import Console
        from rich.progress import BarColumn, Progress as Bar, TextColumn, TimeRemainingColumn
    except ImportError:  # the bar is a comfort of the extras
        return None
    columns = [TextColumn("{task.description}"), BarColumn(), TextColumn("{task.percentage:>3.0f} %"), TextColumn("{task.completed:,.0f} rows"), TimeRemainingColumn()]
    return Bar(*columns, console=Console(stderr=True), transient=True)
