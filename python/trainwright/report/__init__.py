"""The HTML report: one file, nothing fetched from outside, printable, readable on a phone."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from jinja2 import Environment, PackageLoader

from .. import card, version
from ..parts import LEAD, Part
from . import plots

KNOWN = {"read": "read", "memory": "from memory of the work", "derived": "by algebra", "practice": "common practice, no source"}


def write(parts: Sequence[Part], path: Path, *, title: str) -> Path:
    """Writes the report of these parts and returns where it is."""
    pages = Environment(loader=PackageLoader("trainwright.report", "."), autoescape=True, trim_blocks=True, lstrip_blocks=True)
    style = pages.get_template("page.css").render()
    shown = [
        {"sheet": part.sheet, "pictures": [(caption, draw(plots)) for caption, draw in part.pictures.items()], "cards": [card(id) for id in part.sheet.cards]}
        for part in parts
    ]
    html = pages.get_template("page.html").render(
        title=title, lead=LEAD, style=style, parts=shown, known=KNOWN, version=version(), date=date.today().isoformat(),
        foot="Demonstration data are invented." if "Corrib" in title else "",
    )  # fmt: skip
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(html, encoding="utf-8")
    return path
