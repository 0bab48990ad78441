//! How fast fluid ages, and how much of its life a histogram of temperatures has used.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::exp;
use crate::units::KELVIN_AT_0_C;

pub(super) const AGING: Card = Card {
    id: "duty.aging_factor",
    purpose: "How many times faster than at a reference temperature fluid ages",
    equation: "a = 2^((t − t_0)/k) halving rule; a = exp(B·(1/T_0 − 1/T)) Arrhenius; never below a_least",
    symbols: &[
        symbol("a", "result", "1"),
        symbol("t, T", "temp_c, in °C and in K", "°C, K"),
        symbol("t_0, T_0", "reference_c, in °C and in K", "°C, K"),
        symbol("k", "halving_k", "K"),
        symbol("B", "activation_k, activation energy over the gas constant", "K"),
        symbol("a_least", "least_factor", "1"),
    ],
    range: "the halving rule is trade practice above its reference temperature, without a source or an uncertainty: it ranks. The Arrhenius \
        form is for laboratory data of one fluid, inside their temperatures",
    source: &card::PRACTICE,
    locator: "life of transmission fluid halves for each 20 °F; reaction-rate form for laboratory data",
};

pub(super) const FLUID_LIFE: Card = Card {
    id: "duty.fluid_life",
    purpose: "Share of its life that fluid has used, from hours at temperature, and what is left of it in the same use",
    equation: "D = Σ h_i·a(t_i)/L_0, left = H·(1 − D)/D, H = Σ h_i",
    symbols: &[
        symbol("D", "used", "1"),
        symbol("h_i, t_i", "duration_h, temp_c, of a bin", "h, °C"),
        symbol("a", "as duty.aging_factor", "1"),
        symbol("L_0", "life_h, at the reference temperature", "h"),
        symbol("H, left", "known_h, left_h", "h"),
    ],
    range: "a histogram: the mean temperature would hide the few hours that count. Hours without a temperature are unknown: used_lower takes \
        them at the coolest bin, used_upper at the hottest. Not a drain interval: the maker's is",
    source: &card::PRACTICE,
    locator: "linear summation over the histogram",
};

/// How the rate of aging follows the temperature.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AgingKind {
    /// Twice as fast for each step of temperature.
    Halving,
    /// Reaction rate, for laboratory data.
    Arrhenius,
}

/// A rule of aging.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AgingRule {
    /// Which form.
    pub kind: AgingKind,
    /// Temperature at which the factor is 1, °C.
    pub reference_c: f64,
    /// Halving: step of temperature that doubles the rate, K; else 0.
    pub halving_k: f64,
    /// Arrhenius: activation energy over the gas constant, K; else 0.
    pub activation_k: f64,
    /// Least factor: 1 never counts cooler hours as less than those at the reference, 0 lets the rule run on.
    pub least_factor: f64,
}

/// Hours at a temperature.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FluidBin {
    /// Temperature of the bin, °C: its upper edge is on the careful side.
    pub temp_c: f64,
    /// Time in it, h.
    pub duration_h: f64,
}

/// Share of its life that fluid has used.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FluidLife {
    /// Share used in the known hours.
    pub used: f64,
    /// Share used if the unknown hours were as cool as the coolest bin.
    pub used_lower: f64,
    /// Share used if the unknown hours were as hot as the hottest bin.
    pub used_upper: f64,
    /// Known hours, h.
    pub known_h: f64,
    /// Hours left in the same use, h; 0 where the life is used up.
    pub left_h: f64,
    /// Part of the used share that the hottest 5 % of the known hours did.
    pub worst_share: f64,
    /// Temperature from which those hours count, °C.
    pub worst_from_c: f64,
}

impl AgingRule {
    /// Twice as fast for each step of temperature above a reference.
    ///
    /// * `reference_c` — −50 to 250; `halving_k` — above 0 to 100; `least_factor` — 0 to 1
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`]
    ///
    /// Source: common practice, no source; `practice::FLUID_AGING_...` are its usual values.
    pub fn halving(reference_c: f64, halving_k: f64, least_factor: f64) -> Result<Self> {
        Self { kind: AgingKind::Halving, reference_c, halving_k, activation_k: 0.0, least_factor }.checked()
    }

    /// Reaction rate of laboratory data.
    ///
    /// * `reference_c` — −50 to 250; `activation_k` — activation energy over the gas constant, above 0 to 50 000
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`]
    ///
    /// Source: Arrhenius form (definition).
    pub fn arrhenius(reference_c: f64, activation_k: f64) -> Result<Self> {
        Self { kind: AgingKind::Arrhenius, reference_c, halving_k: 0.0, activation_k, least_factor: 0.0 }.checked()
    }

    fn checked(self) -> Result<Self> {
        within("reference_c", self.reference_c, -50.0, 250.0)?;
        match self.kind {
            AgingKind::Halving => within("halving_k", positive("halving_k", self.halving_k)?, 0.0, 100.0)?,
            AgingKind::Arrhenius => within("activation_k", positive("activation_k", self.activation_k)?, 0.0, 5e4)?,
        };
        within("least_factor", self.least_factor, 0.0, 1.0)?;
        Ok(self)
    }

    /// How many times faster than at the reference temperature fluid ages.
    ///
    /// a = 2^((t − t_0)/k) halving rule; a = exp(B·(1/T_0 − 1/T)) Arrhenius; never below a_least
    ///
    /// * `temp_c` — t, −60 to 250
    /// * returns the factor; life at t is life at the reference over it
    /// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]; as [`halving`](Self::halving)
    ///
    /// Source: common practice, no source (halving of the life per 20 °F above 175 °F). Example: a circulating table gives
    /// 100 000 miles at 175 °F and 50 000 at 195.
    ///
    /// ```
    /// use trainwright::duty::AgingRule;
    /// let rule = AgingRule::halving((175.0 - 32.0) / 1.8, 20.0 / 1.8, 1.0)?;
    /// assert!((rule.aging_factor((195.0 - 32.0) / 1.8)? - 2.0).abs() < 1e-12);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn aging_factor(self, temp_c: f64) -> Result<f64> {
        let rule = self.checked()?;
        let temp = within("temp_c", temp_c, -60.0, 250.0)?;
        let exponent = match rule.kind {
            AgingKind::Halving => core::f64::consts::LN_2 * ((temp - rule.reference_c) / rule.halving_k),
            AgingKind::Arrhenius => {
                rule.activation_k * (1.0 / (rule.reference_c + KELVIN_AT_0_C) - 1.0 / (temp + KELVIN_AT_0_C))
            }
        };
        Ok(f64::max(exp(exponent), rule.least_factor))
    }
}

/// Share of its life that fluid has used, from hours at temperature, and what is left of it in the same use.
///
/// D = Σ h_i·a(t_i)/L_0, left = H·(1 − D)/D, H = Σ h_i
///
/// * `bins` — temperatures rising, hours 0 or more, at least one hour together above 0
/// * `unknown_h` — hours without a temperature, 0 or more; `life_h` — L_0 at the reference of `rule`, above 0
/// * returns [`FluidLife`]
/// * errors: [`Error::Count`] without bins; [`Error::Reversed`] for temperatures that do not rise; [`Error::OutOfRange`],
///   [`Error::NotPositive`]; [`Error::NoAnswer`] where all hours are unknown
///
/// Source: common practice, no source. Example: 400 h at 80 °C and 40 h at 120 °C on a rule that doubles every 10 K from 80 °C:
/// 40 h count as 640.
///
/// ```
/// use trainwright::duty::{AgingRule, FluidBin, fluid_life};
/// let bins = [(80.0, 400.0), (120.0, 40.0)].map(|(temp_c, duration_h)| FluidBin { temp_c, duration_h });
/// let life = fluid_life(&bins, 0.0, 4000.0, AgingRule::halving(80.0, 10.0, 1.0)?)?;
/// assert!((life.used - 0.26).abs() < 1e-12 && (life.worst_share - 22.0 * 16.0 / 1040.0).abs() < 1e-12);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn fluid_life(bins: &[FluidBin], unknown_h: f64, life_h: f64, rule: AgingRule) -> Result<FluidLife> {
    let (Some(coolest), Some(hottest)) = (bins.first(), bins.last()) else {
        return Err(Error::Count { name: "bins", count: 0, low: 1, high: u32::MAX });
    };
    let life_h = positive("life_h", life_h)?;
    let unknown_h = within("unknown_h", unknown_h, 0.0, 1e7)?;
    let (mut known_h, mut aged_h) = (0.0, 0.0);
    let mut before = f64::NEG_INFINITY;
    for bin in bins {
        let factor = rule.aging_factor(bin.temp_c)?;
        if bin.temp_c <= before {
            return Err(Error::Reversed { name: "bins", lower: before, upper: bin.temp_c });
        }
        before = bin.temp_c;
        let hours = within("duration_h", bin.duration_h, 0.0, 1e7)?;
        known_h += hours;
        aged_h += hours * factor;
    }
    if known_h == 0.0 {
        return Err(Error::NoAnswer {
            name: "bins",
            why: "no hour has a temperature, so nothing is known of the fluid's life",
        });
    }
    let mut worst_left_h = 0.05 * known_h;
    let (mut worst_aged_h, mut worst_from_c) = (0.0, hottest.temp_c);
    for bin in bins.iter().rev() {
        let taken = f64::min(bin.duration_h, worst_left_h);
        if taken > 0.0 {
            worst_aged_h += taken * rule.aging_factor(bin.temp_c)?;
            worst_left_h -= taken;
            worst_from_c = bin.temp_c;
        }
    }
    let used = aged_h / life_h;
    let with_unknown = |temp_c: f64| Ok::<_, Error>(used + unknown_h * rule.aging_factor(temp_c)? / life_h);
    Ok(FluidLife {
        used,
        used_lower: with_unknown(coolest.temp_c)?,
        used_upper: with_unknown(hottest.temp_c)?,
        known_h,
        left_h: f64::max(known_h * (1.0 - used) / used, 0.0),
        worst_share: worst_aged_h / aged_h,
        worst_from_c,
    })
}
