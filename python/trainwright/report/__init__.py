"""The HTML report: one file, nothing fetched from outside, printable, readable on a phone."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from .. import version
from ..page import PAGES, style
from ..parts import LEAD, Part
from ..sheet import BLANK, FORM, Sheet
from . import plots


def write_page(sheets: Sequence[Sheet], path: Path) -> Path:
    """Writes these sheets alone as a page to print, and returns where it is."""
    return write([Part(sheet) for sheet in sheets], path, title=sheets[0].title if len(sheets) == 1 else "Answers", lead="")


def write(parts: Sequence[Part], path: Path, *, title: str, lead: str = LEAD) -> Path:
    """Writes the report of these parts and returns where it is."""
    shown = [
        {"sheet": part.sheet, "pictures": [(caption, draw(plots)) for caption, draw in part.pictures.items()], "how": [explanation.as_html() for explanation in part.sheet.explained()]}
        for part in parts
    ]
    html = PAGES.get_template("page.html").render(
        title=title, lead=lead, style=style("sheet") + style("page"), parts=shown, blank=BLANK, form=FORM, version=version(), date=date.today().isoformat(),
        foot="Demonstration data are invented." if "Corrib" in title else "",
    )  # fmt: skip
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(html, encoding="utf-8")
    return path
