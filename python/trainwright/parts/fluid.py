"""Parts about the fluid: its level at temperature."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import numpy as np

from ..answers import RULE
from ..answers.fill import fill_sheet
from ..edge import show
from ..fluid import Fill, Fluid, LevelCheck
from ..judge import Reading
from .frame import Draw, Part, Records


def fill_parts(records: Records) -> Iterator[Part]:
    """The fill at each temperature of the jobs that name a fluid."""
    if not records.fluids:
        return
    fill, instruments = records.fluids.fill(), records.instruments
    for job in records.asked("set_at_c", "fluid"):
        fluid = records.fluids.fluid(job["fluid"])
        for place, at_c in enumerate(job["set_at_c"]):
            temp_c = instruments.reading("thermometer", at_c) if instruments else Reading.exact(at_c)
            level = Reading.exact(0.0)
            title = f"{job['id']}: {job['title']}, set at {show(at_c, 'c')}"
            sheet = fill_sheet(fill, fluid, temp_c=temp_c, level_mm=level, name=job["fluid"], title=title, story=job["story"])
            yield Part(sheet, _level_picture(fill, fluid, job["set_at_c"]) if place == 0 else {})


def _level_picture(fill: Fill, fluid: Fluid, set_at_c: Iterable[float]) -> dict[str, Draw]:
    temp_c = np.linspace(-20.0, 140.0, 161)
    curves = {"right fill": (temp_c, fill.level_at(fluid, temp_c=temp_c)["level_mm"])}
    for at_c in set_at_c:
        exact = LevelCheck(temp_c=Reading.exact(at_c), level_mm=Reading.exact(0.0), area_scale=Reading.exact(1.0))
        excess_ml = fill.adjust_fill(fluid, exact, RULE).excess_ml.reading.value
        curves[f"set to the edge at {at_c:g} °C"] = (temp_c, fill.level_at(fluid, temp_c=temp_c, excess_ml=excess_ml)["level_mm"])
    window = (fill.check_low_c, fill.check_high_c)
    marks = {"rotating part dips": fill.gear_dips_mm, "pickup draws air": fill.pickup_uncovers_mm}
    caption = "Level against fluid temperature. All the growth of the fluid goes into the sump, whose area changes with height."
    return {caption: lambda plots: plots.level_against_temperature("Level against temperature", curves, window, marks)}
