"""HTML of sheets: the page of a report, and the cell of a notebook."""

from __future__ import annotations

from jinja2 import Environment, PackageLoader

from .sheet import BLANK, FORM, Sheet

PAGES = Environment(loader=PackageLoader("trainwright", "report"), autoescape=True, trim_blocks=True, lstrip_blocks=True)
INKS = "--ink: currentColor; --quiet: #5b6875; --line: #d5dbe1; --wash: #8881; --blue: #1f5f99; --go: #00735c; --open: #965000; --no: #8b3a78;"
"""Colors of a notebook, whose paper may be dark."""


def cell(sheet: Sheet) -> str:
    """A sheet as a cell of a notebook: its formulas are left to `explain`."""
    section = PAGES.get_template("sheet.html").module.section(sheet, BLANK, FORM, (), ())  # type: ignore[attr-defined]
    return f'<style>.trainwright {{ {INKS} {style("sheet")} }}</style>\n<div class="trainwright">{section}</div>'


def style(name: str) -> str:
    """A style sheet by its name."""
    return PAGES.get_template(f"{name}.css").render()
