//! Sizes and clearances away from 20 °C, and what a warm part does to a reading.

use super::clearance::{MeasuredClearance, judged_clearance, size_reading};
use crate::card::{self, Card, symbol};
use crate::error::{Result, within};
use crate::judge::{Budget, Limits, Propagated, Reading, Rule, propagate};

pub(super) const WARM_CLEARANCE: Card = Card {
    id: "fit.warm_clearance",
    purpose: "Clearance of two parts at temperature, each with its own expansion and its own temperature, judged",
    equation: "c(t) = D (1 + α_D (t − 20)) − d (1 + α_d (t + Δ − 20))",
    symbols: &[
        symbol("c(t)", "at_temperature.clearance_mm", "mm"),
        symbol("D", "bore.size_mm, at 20 °C", "mm"),
        symbol("α_D", "bore.expansion_per_k", "1/K"),
        symbol("d", "shaft.size_mm, at 20 °C", "mm"),
        symbol("α_d", "shaft.expansion_per_k", "1/K"),
        symbol("t", "warmth.temp_c, of the part with the bore", "°C"),
        symbol("Δ", "warmth.shaft_warmer_k", "K"),
    ],
    range: "free, evenly warm parts, −60 to 300 °C, one mean coefficient for the span. A bushing pressed in another metal is not free: fit.running_clearance",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 3, thermal expansion; reference temperature ISO 1",
};

pub(super) const SIZE_20C: Card = Card {
    id: "fit.size_20c",
    purpose: "Size at 20 °C of a part measured warm, with an instrument of another temperature",
    equation: "L₂₀ = L (1 + α_i (t_i − 20))/(1 + α_p (t_p − 20))",
    symbols: &[
        symbol("L", "shown_mm", "mm"),
        symbol("L₂₀", "size_mm", "mm"),
        symbol("α_p, t_p", "of the part: part_expansion_per_k, part_temp_c", "1/K, °C"),
        symbol("α_i, t_i", "of the instrument: instrument_expansion_per_k, instrument_temp_c", "1/K, °C"),
    ],
    range: "part and instrument each evenly warm; the instrument was set at 20 °C, or shows right there",
    source: &card::GUM,
    locator: "H.1, equation H.2, for a scale in place of the standard gauge",
};

/// Temperature at which sizes are stated, °C: ISO 1.
pub const REFERENCE_C: f64 = 20.0;

/// A part: its size at 20 °C and its expansion.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WarmPart {
    /// Diameter at 20 °C, mm.
    pub size_mm: Reading,
    /// Linear expansion, 1/K.
    pub expansion_per_k: Reading,
}

impl WarmPart {
    pub(super) fn checked(self, name: &'static str) -> Result<Self> {
        size_reading(name, self.size_mm)?;
        expansion(self.expansion_per_k)?;
        Ok(self)
    }
}

/// Temperature of a fit.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Warmth {
    /// Of the part with the bore, °C.
    pub temp_c: Reading,
    /// How much warmer the shaft is, K; negative where it is colder, 0 where both are alike.
    pub shaft_warmer_k: Reading,
}

impl Warmth {
    pub(super) fn checked(self) -> Result<Self> {
        temperature("temp_c", self.temp_c)?;
        within("shaft_warmer_k", self.shaft_warmer_k.value, -360.0, 360.0)?;
        Reading::new(self.shaft_warmer_k.value, self.shaft_warmer_k.u)?;
        Ok(self)
    }
}

/// A temperature that the linear expansion covers.
pub(super) fn temperature(name: &'static str, temp_c: Reading) -> Result<Reading> {
    Reading::new(within(name, temp_c.value, -60.0, 300.0)?, temp_c.u)
}

/// A coefficient of expansion, if it is one: 23 for 23e-6 is refused.
pub(super) fn expansion(expansion_per_k: Reading) -> Result<Reading> {
    Reading::new(within("expansion_per_k", expansion_per_k.value, 0.0, 1e-3)?, expansion_per_k.u)
}

/// Size of a free part of this size at 20 °C.
pub(super) fn grown(size_mm: f64, expansion_per_k: f64, temp_c: f64) -> f64 {
    size_mm * (1.0 + expansion_per_k * (temp_c - REFERENCE_C))
}

/// A clearance at temperature.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WarmClearance {
    /// Clearance at 20 °C, mm.
    pub clearance_20c_mm: f64,
    /// What the temperature adds, mm; negative where the fit closes.
    pub change_mm: f64,
    /// Sizes and clearance at temperature, judged. The budget lists shaft, bore, expansion of the shaft, expansion of the
    /// bore's part, temperature, and how much warmer the shaft is.
    pub at_temperature: MeasuredClearance,
}

/// Clearance of two parts at temperature, judged.
///
/// c(t) = D (1 + α_D (t − 20)) − d (1 + α_d (t + Δ − 20))
///
/// * `shaft`, `bore` — size at 20 °C and expansion, 0 to 1e-3 1/K; `warmth` — temperature of the bore's part, −60 to 300 °C,
///   and how much warmer the shaft is; `wanted_mm` — clearance wanted at that temperature; `rule` — decision rule
/// * returns [`WarmClearance`]. One thermometer for both parts counts once: the difference between them has a reading of its own
/// * errors: [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NotFinite`](crate::Error::NotFinite) and so on, by name
///
/// Source: Shigley, chapter 3 (from memory), δ = α L Δt. Example (computed): an aluminum bore of 60 mm (23e-6) on a steel journal
/// (11.5e-6) gains 55.2 µm on 80 K.
///
/// ```
/// use trainwright::fit::{WarmPart, Warmth, warm_clearance};
/// use trainwright::judge::{Limits, Reading, Rule};
/// let part = |size_mm, expansion_per_k| WarmPart {
///     size_mm: Reading { value: size_mm, u: 0.0 }, expansion_per_k: Reading { value: expansion_per_k, u: 0.0 },
/// };
/// let warmth = Warmth { temp_c: Reading::exact(100.0)?, shaft_warmer_k: Reading::exact(0.0)? };
/// let any = Limits::at_least(0.0)?;
/// let fit = warm_clearance(part(60.0, 11.5e-6), part(60.0, 23e-6), warmth, any, Rule::simple_acceptance())?;
/// assert!((fit.change_mm - 0.0552).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn warm_clearance(
    shaft: WarmPart,
    bore: WarmPart,
    warmth: Warmth,
    wanted_mm: Limits,
    rule: Rule,
) -> Result<WarmClearance> {
    let (shaft, bore, warmth) = (shaft.checked("shaft.size_mm")?, bore.checked("bore.size_mm")?, warmth.checked()?);
    let inputs = [
        shaft.size_mm,
        bore.size_mm,
        shaft.expansion_per_k,
        bore.expansion_per_k,
        warmth.temp_c,
        warmth.shaft_warmer_k,
    ];
    let warm_bore = propagate([bore.size_mm, bore.expansion_per_k, warmth.temp_c], |[size, expansion, temp]| {
        Ok(grown(size, expansion, temp))
    })?;
    let clearance = propagate(inputs, |[d, bore_d, alpha_d, alpha_bore, temp, warmer]| {
        Ok(grown(bore_d, alpha_bore, temp) - grown(d, alpha_d, temp + warmer))
    })?;
    let cold_mm = bore.size_mm.value - shaft.size_mm.value;
    Ok(WarmClearance {
        clearance_20c_mm: cold_mm,
        change_mm: clearance.reading.value - cold_mm,
        at_temperature: judged_clearance(warm_shaft(shaft, warmth)?, warm_bore.reading, clearance, wanted_mm, rule)?,
    })
}

/// The shaft at its own temperature.
pub(super) fn warm_shaft(shaft: WarmPart, warmth: Warmth) -> Result<Reading> {
    let inputs = [shaft.size_mm, shaft.expansion_per_k, warmth.temp_c, warmth.shaft_warmer_k];
    Ok(propagate(inputs, |[size, expansion, temp, warmer]| Ok(grown(size, expansion, temp + warmer)))?.reading)
}

/// What an instrument shows, at which temperatures.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WarmReading {
    /// What the instrument shows, mm.
    pub shown_mm: Reading,
    /// Linear expansion of the part, 1/K.
    pub part_expansion_per_k: Reading,
    /// Temperature of the part, °C.
    pub part_temp_c: Reading,
    /// Linear expansion of the instrument, 1/K.
    pub instrument_expansion_per_k: Reading,
    /// Temperature of the instrument, °C.
    pub instrument_temp_c: Reading,
}

/// A size corrected to 20 °C.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size20 {
    /// Size at 20 °C, mm.
    pub size_mm: Reading,
    /// What was added to the reading, mm; negative for a warm part.
    pub correction_mm: f64,
    /// Where the uncertainty comes from: reading, expansion and temperature of the part, of the instrument.
    pub budget: Budget,
}

impl WarmReading {
    /// Size at 20 °C of a part measured warm, with an instrument of another temperature.
    ///
    /// L₂₀ = L (1 + α_i (t_i − 20))/(1 + α_p (t_p − 20))
    ///
    /// * temperatures −60 to 300 °C, expansions 0 to 1e-3 1/K, each with its uncertainty
    /// * returns [`Size20`]: the correction, and the uncertainty that the temperatures leave even when it is made
    /// * errors: by name, as for [`warm_clearance`]
    ///
    /// Source: ISO 1 and JCGM 100:2008, equation H.2 (from memory). Example (computed): a hand-warm steel shaft, 10 K too warm,
    /// reads 0.005 mm large on 44 mm.
    ///
    /// ```
    /// use trainwright::fit::WarmReading;
    /// use trainwright::judge::Reading;
    /// let steel = Reading::rectangular(11.5e-6, 0.5e-6)?;
    /// let warm = WarmReading {
    ///     shown_mm: Reading::new(44.005, 0.002)?, part_expansion_per_k: steel, part_temp_c: Reading::rectangular(30.0, 3.0)?,
    ///     instrument_expansion_per_k: steel, instrument_temp_c: Reading::rectangular(20.0, 1.0)?,
    /// };
    /// let size = warm.size_20c()?;
    /// assert!((size.correction_mm + 0.005_06).abs() < 1e-5);
    /// assert_eq!(size.budget.largest, 0); // the micrometer still, but the temperature of the part is next
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn size_20c(self) -> Result<Size20> {
        size_reading("shown_mm", self.shown_mm)?;
        expansion(self.part_expansion_per_k)?;
        expansion(self.instrument_expansion_per_k)?;
        temperature("part_temp_c", self.part_temp_c)?;
        temperature("instrument_temp_c", self.instrument_temp_c)?;
        let inputs = [
            self.shown_mm,
            self.part_expansion_per_k,
            self.part_temp_c,
            self.instrument_expansion_per_k,
            self.instrument_temp_c,
        ];
        let Propagated { reading, budget } = propagate(inputs, |[shown, alpha_p, t_p, alpha_i, t_i]| {
            Ok(grown(shown, alpha_i, t_i) / grown(1.0, alpha_p, t_p))
        })?;
        Ok(Size20 { size_mm: reading, correction_mm: reading.value - self.shown_mm.value, budget })
    }
}
