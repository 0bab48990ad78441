"""A fit and what is asked of it, and the fit at a temperature."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ... import Explanation
from ...edge import FIT, Typed, span_as
from ...error import Error, refusal
from ...fit import (
    Clearance,
    Gap,
    GapLeak,
    MeasuredClearance,
    PressedBushing,
    RecordedFit,
    WarmPart,
    WarmReading,
    Warmth,
    measured,
    toleranced,
    warm_clearance,
)
from ...fluid import Fluid, dynamic_viscosity
from ...judge import Limits, Reading, Rule
from .. import RULE

TEMPS_C = (-20.0, 20.0, 90.0, 120.0)
"""Temperatures of the table cold and hot, unless others are asked for."""

REFERENCE_C = 20.0

UNITS_IN_WORDS = {"mm": "millimeters", "in": "inches", "thou": "thousandths of an inch"}

WARM_INPUTS = ("shaft", "bore", "expansion of the shaft", "expansion of the bore's part", "temperature", "how much warmer the shaft is")
BUSHING_INPUTS = (
    "shaft", "bore", "housing bore", "outside of the bushing", "expansion of the shaft", "expansion of the housing",
    "expansion of the bushing", "temperature", "how much warmer the shaft is",
)  # fmt: skip
"""What the uncertainty of a warm clearance comes from, in the order of its budget."""


@dataclass(frozen=True)
class Side:
    """A shaft or a bore of a fit: whose part it is, and its size as measured; without one, its tolerance counts."""

    variant: str
    typed: Typed | None = None
    """The size with the unit that it was typed in; None where it was not measured."""
    instrument: str = ""
    """The instrument of the record that measured it."""
    part_c: Reading | None = None
    """Temperature of the part when it was measured; None for 20 °C."""

    @property
    def reading(self) -> Reading | None:
        return self.typed.reading if self.typed else None


@dataclass(frozen=True)
class Oil:
    """The oil that presses through the clearance."""

    name: str
    fluid: Fluid
    pressure_kpa: float


@dataclass(frozen=True)
class Question:
    """A fit, its two sides, and what is asked of them."""

    fit: RecordedFit
    shaft: Side
    bore: Side
    spread: str = "rectangular"
    """How the size of a part that was not measured is assumed to lie in its tolerance."""
    temps_c: Sequence[Reading] = tuple(map(Reading.exact, TEMPS_C))
    shaft_warmer_k: Reading = Reading(value=0.0, u=0.0)
    load_n: float | None = None
    speed_rpm: float | None = None
    oil: Oil | None = None
    least_mm: float = 0.0
    """Least clearance wanted at 20 °C, for a fit that is not pressed."""
    unit: Typed | None = None
    """Unit of the answer where nothing was typed."""
    rule: Rule = RULE

    @property
    def like(self) -> Typed | None:
        """The unit in which answers come back: that of the shaft, else of the bore, else the one asked for."""
        return self.shaft.typed or self.bore.typed or self.unit

    def size(self, side: Side) -> Reading:
        """The size at 20 °C: as measured, corrected for the part's temperature, or from its tolerance."""
        is_shaft = side is self.shaft
        if side.reading is None:
            return toleranced(size_mm=self.tolerance(side), spread=self.spread)
        if side.part_c is None:
            return side.reading
        if self.fit.has_bushing and not is_shaft:
            raise refusal("bore-temp", "a pressed bushing grows like neither metal: measure its bore at 20 °C", "NO_ANSWER")
        expansion = self.fit.shaft_expansion_per_k if is_shaft else self.fit.bore_expansion_per_k
        if expansion is None:
            raise refusal("material", f"the record of {self.fit.name} names no metal of the {'shaft' if is_shaft else 'bore'}: add it, or measure at 20 °C")
        warm = WarmReading(
            shown_mm=side.reading, part_expansion_per_k=expansion, part_temp_c=side.part_c,
            instrument_expansion_per_k=expansion, instrument_temp_c=Reading.exact(REFERENCE_C),
        )  # fmt: skip
        return warm.size_20c().size_mm

    def tolerance(self, side: Side) -> Limits:
        return self.fit.shaft_mm(side.variant) if side is self.shaft else self.fit.bore_mm(side.variant)

    @property
    def wanted_mm(self) -> Limits:
        """What is wanted at 20 °C: room, and no more than the limit in service. A press fit wants interference."""
        return Limits(upper=0.0) if self.fit.kind == "press" else Limits(lower=self.least_mm, upper=self.fit.limit_mm)

    @property
    def is_measured(self) -> bool:
        return bool(self.shaft.typed or self.bore.typed)

    def nominal(self) -> Clearance:
        """Both parts by their tolerances."""
        return self.fit.clearance(shaft_of=self.shaft.variant, bore_of=self.bore.variant)

    def now(self) -> MeasuredClearance:
        """At 20 °C, judged."""
        return measured(shaft_mm=self.size(self.shaft), bore_mm=self.size(self.bore), wanted_mm=self.wanted_mm, rule=self.rule)

    def bushing(self) -> PressedBushing | None:
        return self.fit.bushing(bore_mm=self.size(self.bore), spread=self.spread) if self.fit.has_bushing else None


@dataclass(frozen=True)
class Warm:
    """A fit at a temperature."""

    temp_c: Reading
    clearance: MeasuredClearance
    interference_mm: float | None = None
    """Of the bushing in its housing; None where none is pressed in."""
    pressure_mpa: float | None = None
    how: Explanation | None = None
    leak: GapLeak | None = None
    """Of the oil through the clearance, centered; None where no oil is asked for, or the formula does not cover it."""


def at_temperature(asked: Question, temp_c: Reading) -> Warm:
    """The fit at a temperature; judged is only whether the shaft has room, as the limit is one for 20 °C."""
    warmth = Warmth(temp_c=temp_c, shaft_warmer_k=asked.shaft_warmer_k)
    room = Limits(lower=0.0)
    shaft_expansion, bore_expansion = asked.fit.shaft_expansion_per_k, asked.fit.bore_expansion_per_k
    if shaft_expansion is None:
        raise refusal("shaft_material", f"the record of {asked.fit.name} names no metal of the shaft; add shaft_material", "MISSING")
    shaft = WarmPart(size_mm=asked.size(asked.shaft), expansion_per_k=shaft_expansion)
    if bushing := asked.bushing():
        running = bushing.running_clearance(shaft=shaft, warmth=warmth, wanted_mm=room, rule=asked.rule)
        seat, clearance = running.pressed, running.clearance.at_temperature
        how = running.explain(unit="mm", inputs=BUSHING_INPUTS, bushing=bushing, shaft=shaft, warmth=warmth)
        return Warm(temp_c, clearance, seat.interference_mm, seat.pressure_mpa, how, _oil_leak(asked, temp_c, clearance))
    if bore_expansion is None:
        raise refusal("bore_material", f"the record of {asked.fit.name} names no metal of the bore; add bore_material", "MISSING")
    bore = WarmPart(size_mm=asked.size(asked.bore), expansion_per_k=bore_expansion)
    warm = warm_clearance(shaft=shaft, bore=bore, warmth=warmth, wanted_mm=room, rule=asked.rule)
    how = warm.explain(unit="mm", inputs=WARM_INPUTS, bore=bore, shaft=shaft, warmth=warmth)
    return Warm(temp_c, warm.at_temperature, how=how, leak=_oil_leak(asked, temp_c, warm.at_temperature))


def _oil_leak(asked: Question, temp_c: Reading, clearance: MeasuredClearance) -> GapLeak | None:
    """The oil through the clearance, centered; None where it blocks, or where oil or gap lie outside the formulas."""
    oil = asked.oil
    if oil is None:
        return None
    if asked.fit.length_mm is None:
        raise refusal("length_mm", f"the record of {asked.fit.name} gives no length_mm for the leakage", "INCONSISTENT")
    if clearance.clearance_mm.value <= 0:
        return None
    gap = Gap(diameter_mm=clearance.shaft_mm.value, clearance_mm=clearance.clearance_mm.value, length_mm=asked.fit.length_mm, eccentricity=0.0)
    try:
        density = oil.fluid.density(temp_c=temp_c.value)
        viscosity = dynamic_viscosity(kinematic_mm2_s=oil.fluid.viscosity_line().viscosity_at(temp_c=temp_c.value), density_kg_m3=density)
        leak: GapLeak = gap.gap_leak(pressure_drop_kpa=oil.pressure_kpa, viscosity_mpa_s=viscosity, density_kg_m3=density)
    except Error as outside:
        if outside.kind != "OUT_OF_RANGE":
            raise
        return None
    return leak


def as_range(limits: Limits, like: Typed | None) -> str:
    """Limits in the unit that was typed."""
    return span_as(limits.lower, limits.upper, like, FIT)
