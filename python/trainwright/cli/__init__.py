"""The console command ``trainwright``: one subcommand per question of the shop, one module per topic.

Ends with 0 when it has answered (whatever the verdict), 2 when an input was refused, 3 when a record has errors.
"""

from __future__ import annotations

import sys

import click
from rich.console import Console
from rich.text import Text

from ..error import Error

# Each module adds its commands to the group.
from . import (
    clutch,
    converter,
    duty,
    explain,
    fits,
    fluid,
    grade,
    hard_parts,
    hydraulic,
    identify,
    interchange,
    locks,
    proof,
    records,
    road,
    screen,
    stack,
    tow,
    train,
)
from .common import shop

__all__ = ["main", "shop"]

REFUSED = 2


def main() -> None:
    """Runs the command; a refusal is printed with its mend, never as a traceback."""
    try:
        shop.main(standalone_mode=False)
    except click.ClickException as error:
        error.show()
        sys.exit(REFUSED)
    except click.Abort:
        sys.exit(1)
    except Error as error:
        console = Console(stderr=True, highlight=False)
        console.print(Text("No answer. ", "bold magenta").append(str(error), "not bold default"))
        sys.exit(REFUSED)
