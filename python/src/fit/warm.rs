//! Clearance at temperature, and readings of warm parts.

use pyo3::prelude::*;
use trainwright::fit as core;

use super::sizes::MeasuredClearance;
use crate::class::class;
use crate::error::answer;
use crate::judge::{Budget, Limits, Reading, Rule};

class! {
    /// A part: its size at 20 °C and its expansion.
    "trainwright.fit" WarmPart = core::WarmPart {
        /// Diameter at 20 °C, mm.
        size_mm: Reading,
        /// Linear expansion, 1/K.
        expansion_per_k: Reading,
    }
}

class! {
    /// Temperature of a fit.
    "trainwright.fit" Warmth = core::Warmth {
        /// Of the part with the bore, °C.
        temp_c: Reading,
        /// How much warmer the shaft is, K; negative where it is colder.
        shaft_warmer_k: Reading = Reading(trainwright::judge::Reading { value: 0.0, u: 0.0 }),
    }
}

class! {
    /// A clearance at temperature.
    "trainwright.fit" WarmClearance = core::WarmClearance, explained by ["fit.warm_clearance"] {
        /// Clearance at 20 °C, mm.
        clearance_20c_mm: f64,
        /// What the temperature adds, mm; negative where the fit closes.
        change_mm: f64,
        /// Sizes and clearance at temperature, judged. The budget lists shaft, bore, expansion of the shaft, expansion of the
        /// bore's part, temperature, and how much warmer the shaft is.
        at_temperature: MeasuredClearance,
    }
}

/// Clearance of two free parts at temperature, mm, each with its own expansion, judged against the clearance wanted.
/// Source: Shigley, chapter 3, thermal expansion; reference temperature ISO 1.
///
/// >>> part = lambda size, alpha: WarmPart(size_mm=Reading.exact(size), expansion_per_k=Reading.exact(alpha))
/// >>> fit = warm_clearance(shaft=part(60, 11.5e-6), bore=part(60, 23e-6), warmth=Warmth(temp_c=Reading.exact(100)),
/// ...                      wanted_mm=Limits(lower=0), rule=judge.Rule.simple_acceptance())
/// >>> round(fit.change_mm, 4)
/// 0.0552
#[pyfunction]
#[pyo3(signature = (*, shaft, bore, warmth, wanted_mm, rule))]
pub fn warm_clearance(
    shaft: WarmPart,
    bore: WarmPart,
    warmth: Warmth,
    wanted_mm: Limits,
    rule: Rule,
) -> PyResult<WarmClearance> {
    answer(core::warm_clearance(shaft.0, bore.0, warmth.0, wanted_mm.0, rule.0))
}

class! {
    /// What an instrument shows, at which temperatures.
    ///
    /// >>> steel = Reading.rectangular(11.5e-6, half_width=0.5e-6)
    /// >>> warm = WarmReading(shown_mm=Reading(value=44.005, u=0.002), part_expansion_per_k=steel,
    /// ...                    part_temp_c=Reading.rectangular(30, half_width=3), instrument_expansion_per_k=steel,
    /// ...                    instrument_temp_c=Reading.exact(20))
    /// >>> round(warm.size_20c().correction_mm, 4)
    /// -0.0051
    "trainwright.fit" WarmReading = core::WarmReading {
        /// What the instrument shows, mm.
        shown_mm: Reading,
        /// Linear expansion of the part, 1/K.
        part_expansion_per_k: Reading,
        /// Temperature of the part, °C.
        part_temp_c: Reading,
        /// Linear expansion of the instrument, 1/K.
        instrument_expansion_per_k: Reading,
        /// Temperature of the instrument, °C.
        instrument_temp_c: Reading,
    }
}

class! {
    /// A size corrected to 20 °C.
    "trainwright.fit" Size20 = core::Size20, explained by ["fit.size_20c"] {
        /// Size at 20 °C, mm.
        size_mm: Reading,
        /// What was added to the reading, mm; negative for a warm part.
        correction_mm: f64,
        /// Where the uncertainty comes from: reading, expansion and temperature of the part, of the instrument.
        budget: Budget,
    }
}

#[pymethods]
impl WarmReading {
    /// Size at 20 °C, mm, with the correction that was made and the uncertainty that the temperatures leave.
    /// Source: ISO 1 and JCGM 100:2008, equation H.2.
    fn size_20c(&self) -> PyResult<Size20> {
        answer(self.0.size_20c())
    }
}
