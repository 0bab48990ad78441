"""The command about the log of a dyno or a road test."""

from __future__ import annotations

from pathlib import Path

import click

from .. import record
from ..answers.proof import prove
from ..answers.proof.asked import asked_of
from ..judge import Limits
from ..parts import Part
from ..parts.proof import pictures
from .common import RECORD, Plain, Step, answers_with_sheets, command, loaded
from .screen import Naming


@command(Step.ROAD)
@click.argument("log", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option("--family", "family_file", type=RECORD, required=True, help="Family file of the unit.")
@click.option("--variant", help="Variant of the unit; the first one unless given.")
@click.option("--column", "columns", type=Naming(), multiple=True, help="A column whose name differs, as input_rpm=turbine; may be repeated. °F, psi, lbf·ft and ms by the ending of the name.")
@click.option("--fluids", "fluids_file", type=RECORD, help="Fluids file, for the window of the level check.")
@click.option("--fleet", "fleet_file", type=RECORD, help="Fleet file, for the limits of the lock-up slip.")
@click.option("--slip", type=Plain("rpm"), help="Slip at the input that is too much; 5rpm unless given.")
@click.option("--ratio-within", type=Plain("pct"), help="How far a ratio may be off; 0.5% unless given.")
@click.option("--flare", type=Plain("rpm"), help="Greatest flare of a shift; 50 to 100 rpm by common practice unless given.")
@click.option("--shift-time", type=(Plain("s"), Plain("s")), metavar="LEAST MOST", help="Time of the speed change of a shift; 0.2s 0.6s by common practice unless given.")
@click.option("--cold", type=Plain("c"), help="Fluid temperature below which a run is cold; common practice unless given.")
@click.option("--working", type=Plain("c"), help="Fluid temperature from which the unit is at work; common practice unless given.")
@click.option("--hottest", type=Plain("c"), help="Greatest temperature of the fluid; common practice unless given.")
@click.option("--pressure-u", type=Plain("kpa"), help="Standard uncertainty of the pressure sensor.")
@click.option("--torque-u", type=Plain("pct"), help="Relative standard uncertainty of the torque.")
@answers_with_sheets
def proof(
    log: Path, family_file: Path, variant: str | None, columns: tuple[tuple[str, str], ...], fluids_file: Path | None, fleet_file: Path | None, slip: float | None,
    ratio_within: float | None, flare: float | None, shift_time: tuple[float, float] | None, cold: float | None, working: float | None, hottest: float | None,
    pressure_u: float | None, torque_u: float | None,
) -> Part:  # fmt: skip
    """What the log of a dyno or a road test proves of a unit, what it does not, and what to run next."""
    family = loaded(family_file, record.Family)
    fluids = loaded(fluids_file, record.Fluids) if fluids_file else None
    fleet = loaded(fleet_file, record.Fleet) if fleet_file else None
    asked = asked_of(
        fluids=fluids, fleet=fleet, slip_rpm=slip, ratio_within=None if ratio_within is None else ratio_within / 100, flare_rpm=flare,
        shift_s=Limits(lower=shift_time[0], upper=shift_time[1]) if shift_time else None, cold_c=cold, working_c=working, hottest_c=hottest,
        pressure_u_kpa=pressure_u or 0.0, torque_u_rel=(torque_u or 0.0) / 100,
    )  # fmt: skip
    proved = prove(log, family, variant or family.variants[0], asked=asked, columns=dict(columns))
    return Part(proved.sheet(), pictures(proved))
