"""Commands about what holds by shape: one-way clutches and the park lock."""

from __future__ import annotations

from pathlib import Path

import click

from .. import record
from ..answers.one_way import one_way_sheet, placed
from ..answers.park import park_sheet
from ..answers.park.case import Case, Chosen, cases, other_gear
from ..answers.park.fleet import park_fleet_sheet
from ..answers.tire import rolling
from ..answers.truck import tires_of
from ..judge import Reading
from ..road import Driveline
from ..sheet import Sheet
from .common import NUMBER, RECORD, Plain, Quantity, Step, answers_with_sheets, command, loaded
from .road import sized

GRADES_PCT = (10.0, 12.0, 20.0, 30.0)


@command(Step.HOLD)
@click.argument("file", metavar="FAMILY", type=RECORD)
@click.option("--fleet", type=RECORD, help="Fleet file of the trucks; without --truck every truck of it.")
@click.option("--truck", help="Truck of the fleet.")
@click.option("--grade", "grades", type=Quantity("pct"), multiple=True, help="Grade; may be repeated. 20% unless given; 10, 12, 20 and 30% for a fleet.")
@click.option("--rocking", type=NUMBER, help="Load while the vehicle rocks over its load while it stands; the record's unless given. 1 is standing still.")
@click.option("--gear-of", help="Variant whose park gear and pawl are fitted for comparison; the other one unless given.")
@click.option("--stress-factor", type=NUMBER, help="Stress at the fillet over that of the plain beam; the record's unless given, 1 where it has none.")
@click.option("--mass", type=Quantity("kg"), help="Mass of truck, load and trailer; that of the truck in the fleet unless given.")
@click.option("--variant", help="Variant of the unit, without a fleet.")
@click.option("--axle", type=NUMBER, help="Axle ratio, without a fleet.")
@click.option("--transfer", type=NUMBER, default=1.0, show_default=True, help="Ratio of the transfer case, without a fleet.")
@click.option("--tire", help="Tire: its name in the fleet, or without a fleet its size as on the sidewall.")
@click.option("--axle-load", type=Quantity("kg"), help="Mass on the axle that the park lock holds, for the grip of its tires.")
@click.option("--tire-friction", type=NUMBER, help="Friction of tire on ground, for the same.")
@answers_with_sheets
def park(
    file: Path, fleet: Path | None, truck: str | None, grades: tuple[Reading, ...], rocking: float | None, gear_of: str | None, stress_factor: float | None,
    mass: Reading | None, variant: str | None, axle: float | None, transfer: float, tire: str | None, axle_load: Reading | None, tire_friction: float | None,
) -> Sheet | list[Sheet]:  # fmt: skip
    """Whether the park gear holds a truck on a grade, how far it rolls first, and what another park gear buys and costs."""
    family = loaded(file, record.Family)
    rules = family.as_dict().get("park_rules") or {}
    chosen = Chosen(rocking if rocking is not None else rules.get("rocking_factor", 1.0), stress_factor)
    trucks = loaded(fleet, record.Fleet) if fleet else None
    if trucks and not truck:
        grades_pct = [grade.value for grade in grades] or GRADES_PCT
        return park_fleet_sheet(family, trucks, grades_pct=grades_pct, chosen=chosen, title="Park lock of every truck")
    if trucks and truck:
        found = cases(family, trucks, truck, mass_kg=mass, tire=tire)
        if len(found) > 1:
            raise click.UsageError(
                f"the fleet does not know the tire or the trailer of {truck}: give --tire ({', '.join(tires_of(trucks, truck))} may be fitted) and --mass, "
                "or ask for every truck, which shows the range"
            )
        case = found[0]
    else:
        if not (variant and mass and axle and tire):
            raise click.UsageError("give --fleet with --truck, or --variant, --mass, --axle and --tire")
        line = Driveline(axle_ratio=axle, transfer_ratio=transfer, circumference_mm=rolling(sized(tire)).circumference_mm)
        case = Case(variant, mass, line, variant, variant, f"axle {axle:g}, tire {tire}")
    return [
        park_sheet(
            family, case, grade_pct=grade, chosen=chosen, compare_with=gear_of or other_gear(family, case.gear_of),
            title=f"Park lock of {case.name} on {grade:g} %, park gear of {case.gear_of}",
            axle_load_kg=axle_load.value if axle_load else None, tire_friction=tire_friction,
        )
        for grade in ([reading.value for reading in grades] or [20.0])
    ]  # fmt: skip


@command(Step.HOLD)
@click.argument("file", metavar="FAMILY", type=RECORD)
@click.option("--variant", "variants", multiple=True, help="Variant of the family; may be repeated. Every one unless given.")
@click.option("--turbine", type=Quantity("nm"), help="Turbine torque; the record's rating of the variant unless given.")
@click.option("--element", help="One-way clutch of the train, where it has several.")
@click.option("--capacity-u", type=Quantity("pct"), help="Relative standard uncertainty of the capacity; the record's unless given.")
@click.option("--input-speed", type=Plain("rpm"), help="Speed of the input, for the overrun speed.")
@answers_with_sheets
def one_way(
    file: Path, variants: tuple[str, ...], turbine: Reading | None, element: str | None, capacity_u: Reading | None, input_speed: float | None
) -> Sheet:
    """What every gear asks of a one-way clutch, whether it holds that, and what a clutch fitted the wrong way round does."""
    family = loaded(file, record.Family)
    chosen = variants or tuple(family.variants)
    u_rel = capacity_u.value / 100 if capacity_u else None
    clutches = [placed(family, variant, element=element, turbine_nm=turbine, capacity_u_rel=u_rel) for variant in chosen]
    turbine_from = "as given" if turbine else "the record's rating"
    title = f"One-way clutch {clutches[0].element} of {', '.join(chosen)}"
    return one_way_sheet(clutches, title=title, input_rpm=input_speed, turbine_from=turbine_from)
