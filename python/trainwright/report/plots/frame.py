"""Style and colors of the pictures, and the empty plot that each begins with."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import count
from typing import Any

import matplotlib
from matplotlib.axes import Axes
from matplotlib.figure import Figure

INK, QUIET, LINE = "#1d2733", "#5b6875", "#d5dbe1"
BLUE, ORANGE, GREEN, PURPLE = "#1f5f99", "#b35c00", "#00735c", "#8b3a78"
VERDICT = {"GO": GREEN, "NOT PROVEN": ORANGE, "NO-GO": PURPLE}
STYLE: dict[str, Any] = {
    "font.family": ["sans-serif"],
    "font.size": 10.5,
    "text.color": INK,
    "axes.edgecolor": LINE,
    "axes.labelcolor": QUIET,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "xtick.color": QUIET,
    "ytick.color": QUIET,
    "axes.grid": False,
    "grid.color": LINE,
    "grid.linewidth": 0.8,
    "legend.frameon": False,
    "svg.fonttype": "none",
}
_serial = count()


class Picture:
    """SVG text, there once the ``with`` block that drew it has ended."""

    svg = ""


@contextmanager
def drawing(title: str, width: float, height: float) -> Iterator[tuple[Axes, Picture]]:
    """An empty plot; its SVG carries the title for screen readers."""
    picture = Picture()
    prefix = f"picture-{next(_serial)}-"
    style: Any = {**STYLE, "svg.hashsalt": title}
    with matplotlib.rc_context(style):
        figure = Figure(figsize=(width, height), layout="constrained")
        axes = figure.add_subplot()
        axes.tick_params(length=0)
        yield axes, picture
        text = io.StringIO()
        figure.savefig(text, format="svg", transparent=True, metadata={"Date": None, "Creator": None})
    svg = text.getvalue()[text.getvalue().index("<svg") :]
    svg = re.sub(r"<metadata>.*?</metadata>", "", svg, flags=re.DOTALL)
    svg = re.sub(r"font: ?([^;\"]*?)'[^;\"]*", r"font: \1system-ui, sans-serif", svg)
    svg = re.sub(r'\bid="|href="#|url\(#', lambda found: found[0] + prefix, svg)
    opening = re.sub(r' (?:width|height)="[^"]*"', "", svg[: svg.index(">")]) + f' role="img" aria-label="{title}">'
    picture.svg = opening + svg[svg.index(">") + 1 :]


def legend_above(axes: Axes) -> None:
    axes.legend(loc="lower left", bbox_to_anchor=(-0.01, 1.0), ncols=4, borderpad=0, handletextpad=0.5, columnspacing=1.6)
