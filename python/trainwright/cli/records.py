"""Commands about whole records: their check, the report and the demonstration."""

from __future__ import annotations

import json
import shutil
import sys
from pathlib import Path

import click
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from .. import record
from ..parts import LEAD, Part, Records, parts_of
from ..sheet import sources_of
from .common import RECORD, Step, command, report_writer

FAULTY_RECORD = 3
DEMO = Path(__file__).parents[1] / "demo"


@command(Step.RECORDS)
@click.argument("files", type=RECORD, nargs=-1, required=True)
@click.option("--json", "as_json", is_flag=True, help="Print the problems as JSON.")
def check(files: tuple[Path, ...], as_json: bool) -> None:
    """Every problem of records: line, key, value, what is accepted and the mend. Ends with 3 if a record cannot be used."""
    problems = record.check(*files)
    errors = [problem for problem in problems if problem.is_error]
    if as_json:
        keys = ("file", "line", "column", "key", "value", "message", "mend", "is_error")
        click.echo(json.dumps([{key: getattr(problem, key) for key in keys} for problem in problems], indent=2, ensure_ascii=False))
    else:
        console = Console(highlight=False)
        for problem in problems:
            place, _, rest = str(problem).partition("  ")
            console.print(Text(place, "cyan").append(f"  {rest}", "default"), soft_wrap=True)
        found = f"{_counted(len(errors), 'error')}, {_counted(len(problems) - len(errors), 'note')}"
        console.print(Text(f"{_counted(len(files), 'file')} checked: {found}.", "bold magenta" if errors else "bold green"))
    if errors:
        sys.exit(FAULTY_RECORD)


def _counted(number: int, thing: str) -> str:
    return f"{number or 'no'} {thing}{'' if number == 1 else 's'}"


@command(Step.RECORDS)
@click.argument("files", type=RECORD, nargs=-1, required=True)
@click.option("-o", "--output", type=click.Path(dir_okay=False, path_type=Path), default="report.html", show_default=True)
def report(files: tuple[Path, ...], output: Path) -> None:
    """One HTML page with every answer that the given records hold: family, fluids, instruments, fleet, jobs, trains."""
    records = Records.read(files)
    parts = list(parts_of(records))
    if not parts:
        raise click.UsageError("these records ask nothing yet; give a family or a train, or fluids, instruments or a fleet with their jobs file")
    click.echo(f"Report: {report_writer().write(parts, output, title=records.title)}")


def tell(title: str, parts: list[Part], console: Console, *, full: bool) -> None:
    """The answers one after the other, as a story; at the end the cautions, and the works that the answers come from."""
    console.print(Text(title, "bold").append(f"\nInvented units and trucks; published gear trains at the end. {LEAD}\n", "not bold default"))
    for number, part in enumerate(parts, 1):
        console.print(Text(f"{number} of {len(parts)}", "dim"))
        if full:
            part.sheet.print(console, sources=False)
        else:
            part.sheet.print_answer(console)
            console.print()
    cautions = dict.fromkeys(caution for part in parts for caution in part.sheet.cautions)
    for heading, lines in (("Caution", [] if full else cautions), ("Sources", sources_of(part.sheet for part in parts))):
        if lines:
            console.print(Text(heading, "bold"))
            for line in lines:
                console.print(Padding(Text(f"• {line}", "dim"), (0, 0, 0, 1)))
            console.print()
    if not full:
        console.print("Every table, and what was not checked: trainwright demo --full, or the report.")


@command(Step.RECORDS)
@click.option("--report", "folder", type=click.Path(file_okay=False, path_type=Path), help="Also write the report into this folder.")
@click.option("--files-to", type=click.Path(file_okay=False, path_type=Path), help="Copy the demonstration's records into this folder, to change them.")
@click.option("--full", is_flag=True, help="Print every table, and what was not checked.")
@click.option("--json", "as_json", is_flag=True, help="Print the answers as JSON.")
def demo(folder: Path | None, files_to: Path | None, full: bool, as_json: bool) -> None:
    """The whole job on invented units and trucks, from the bench to the road, and on published gear trains."""
    if files_to:
        shutil.copytree(DEMO, files_to, dirs_exist_ok=True)
        click.echo(f"Records: {files_to}")
        return
    records = Records.read([*sorted(DEMO.glob("*.toml")), *sorted(DEMO.glob("trains/*.toml"))])
    parts = list(parts_of(records))
    if as_json:
        click.echo(json.dumps([part.sheet.as_dict() for part in parts], indent=2, ensure_ascii=False))
    else:
        tell(records.title, parts, Console(highlight=False, width=None if sys.stdout.isatty() else 110), full=full)
    if folder:
        written = report_writer().write(parts, folder / "index.html", title=records.title)
        click.echo(f"Report with pictures: {written}", err=as_json)
