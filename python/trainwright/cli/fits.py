"""Commands about fits: a shaft in its bore, the sheet for the bench, and tolerance classes."""

from __future__ import annotations

from pathlib import Path

import click

from .. import edge, record
from ..answers import SPREADS
from ..answers.fit import fit_sheet
from ..answers.fit.bench import bench_sheet
from ..answers.fit.case import TEMPS_C, Oil, Question, Side
from ..answers.iso_limits import limits_sheet
from ..fit import fit_of, fits_of, iso_fit, iso_size
from ..judge import Reading
from ..sheet import Sheet
from .common import RECORD, AsTyped, Plain, Quantity, Step, answers_with_sheets, command, loaded


def _measured(size: edge.Typed | None, instrument: str | None, instruments: record.Instruments | None, option: str) -> edge.Typed | None:
    """The size with the uncertainty of its instrument, where one is named."""
    if instrument and size is None:
        raise click.UsageError(f"--{option}-with needs --{option}, what the instrument shows")
    if not instrument or size is None:
        return size
    if instruments is None:
        raise click.UsageError(f"--{option}-with needs --instruments, the file that holds {instrument}")
    if size.reading.u:
        raise click.UsageError(f"--{option} has its own uncertainty after ±; leave it out, or --{option}-with")
    reading = instruments.reading(instrument, size.reading.value)
    if "u_mm" not in instruments.as_dict()["instrument"][instrument]:
        raise click.UsageError(f"{instrument} measures no lengths: name an instrument of the file that has u_mm")
    return edge.Typed(reading, size.suffix, size.unit, size.decimals)


@command(Step.FIT)
@click.argument("file", metavar="FAMILY", type=RECORD)
@click.option("--fit", "name", help="Fit of the family; without it, the sheet of every fit, to fill in at the bench.")
@click.option("--variant", help="Variant of the unit; the first one unless given.")
@click.option("--shaft-from", help="Variant that the shaft is of, where it is another.")
@click.option("--bore-from", help="Variant that the bore is of, where it is another.")
@click.option("--shaft", type=AsTyped("mm"), help="Diameter of the shaft as measured: 43.988mm±0.002mm or 1.7318in±0.1thou. Its tolerance counts unless given.")
@click.option("--bore", type=AsTyped("mm"), help="Diameter of the bore as measured. Its tolerance counts unless given.")
@click.option("--instruments", type=RECORD, help="Instruments file: their uncertainty goes with what they show.")
@click.option("--shaft-with", metavar="INSTRUMENT", help="Instrument that measured the shaft.")
@click.option("--bore-with", metavar="INSTRUMENT", help="Instrument that measured the bore.")
@click.option("--shaft-temp", type=Quantity("c"), help="Temperature of the shaft when it was measured, the instrument at 20C. 20C unless given.")
@click.option("--bore-temp", type=Quantity("c"), help="Temperature of the bore when it was measured.")
@click.option("--spread", type=click.Choice(list(SPREADS)), default="rectangular", show_default=True, help="How a size that was not measured is taken to lie in its tolerance.")
@click.option("--at", "temps", type=Quantity("c"), multiple=True, help="Temperature at which the clearance is wanted; may be repeated. -20, 20, 90 and 120C unless given.")
@click.option("--shaft-warmer", type=Quantity("k"), help="How much warmer the shaft is than the part around it, running.")
@click.option("--load", type=Quantity("n"), help="Force on the bushing, for unit load.")
@click.option("--speed", type=Plain("rpm"), help="Speed of the shaft against the bushing, for the sliding speed.")
@click.option("--least", type=Quantity("mm"), help="Least clearance wanted at 20C; none unless given.")
@click.option("--oil", metavar="FLUIDS", type=RECORD, help="Fluids file, for the leakage through the clearance.")
@click.option("--fluid", help="Fluid of that file.")
@click.option("--pressure", type=Quantity("kpa"), help="Pressure that drives the oil through the clearance.")
@click.option("--in", "unit", type=click.Choice(["mm", "in", "thou"]), help="Unit of the answer where no size was typed; answers come in the unit of what was typed.")
@answers_with_sheets
def fit(
    file: Path, name: str | None, variant: str | None, shaft_from: str | None, bore_from: str | None,
    shaft: edge.Typed | None, bore: edge.Typed | None, instruments: Path | None, shaft_with: str | None, bore_with: str | None,
    shaft_temp: Reading | None, bore_temp: Reading | None, spread: str, temps: tuple[Reading, ...], shaft_warmer: Reading | None,
    load: Reading | None, speed: float | None, least: Reading | None, oil: Path | None, fluid: str | None, pressure: Reading | None, unit: str | None,
) -> Sheet:  # fmt: skip
    """Clearance of a shaft in its bore, judged, cold and hot; or the sheet of every fit with blanks for the bench."""
    family = loaded(file, record.Family)
    variant = variant or family.variants[0]
    for named in filter(None, (variant, shaft_from, bore_from)):
        if named not in family.variants:
            raise click.UsageError(f"the family has no variant {named!r}; it has {', '.join(family.variants)}")
    asked_unit = edge.read_typed(f"1{unit}", "mm", "unit") if unit else None
    if name is None:
        if shaft or bore:
            known = ", ".join(fit.name for fit in fits_of(family))
            raise click.UsageError(f"--shaft and --bore need --fit, the fit that they belong to; known: {known}")
        return bench_sheet(family, variant, like=asked_unit)
    shop = loaded(instruments, record.Instruments) if instruments else None
    if speed is not None and load is None:
        raise click.UsageError("--speed needs --load")
    if len({oil is None, fluid is None, pressure is None}) > 1:
        raise click.UsageError("leakage needs all three: --oil, the fluids file, --fluid and --pressure")
    question = Question(
        fit=fit_of(family, name),
        shaft=Side(shaft_from or variant, _measured(shaft, shaft_with, shop, "shaft"), shaft_with or "", shaft_temp),
        bore=Side(bore_from or variant, _measured(bore, bore_with, shop, "bore"), bore_with or "", bore_temp),
        spread=SPREADS[spread],
        temps_c=temps or tuple(map(Reading.exact, TEMPS_C)),
        shaft_warmer_k=shaft_warmer or Reading.exact(0.0),
        load_n=load.value if load else None,
        speed_rpm=speed,
        oil=Oil(fluid, loaded(oil, record.Fluids).fluid(fluid), pressure.value) if oil and fluid and pressure else None,
        least_mm=least.value if least else 0.0,
        unit=asked_unit,
    )
    return fit_sheet(question)


@command(Step.FIT)
@click.argument("size")
@answers_with_sheets
def limits(size: str) -> Sheet:
    """Limits of a tolerance class of ISO 286, as 25H7, or of a fit with its clearance, as 25H7/f7."""
    return limits_sheet(iso_fit(size) if "/" in size else iso_size(size), size)
