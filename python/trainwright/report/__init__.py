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


def write_page(answers: Sequence[Sheet | Part], path: Path) -> Path:
    """Writes these answers alone as a page to print, and returns where it is."""
    parts = [one if isinstance(one, Part) else Part(one) for one in answers]
    return write(parts, path, title=parts[0].sheet.title if len(parts) == 1 else "Answers", lead="")


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
