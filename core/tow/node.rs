//! The sump as one temperature: how it warms, when it reaches a limit, and what cooler it needs.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::{exp_m1, ln_1p};

pub(super) const WARMED: Card = Card {
    id: "tow.warmed",
    purpose: "Temperature of a sump that is heated and cooled, after a time",
    equation: "t = t_∞ + (t_0 − t_∞)·e^(−τ/τ_0), t_∞ = (P + UA·t_a + G·t_c)/(UA + G), τ_0 = C/(UA + G)",
    symbols: &[
        symbol("t", "temp_c", "°C"),
        symbol("t_∞", "steady_c", "°C"),
        symbol("t_0", "start_c", "°C"),
        symbol("τ", "time_s", "s"),
        symbol("τ_0", "time_constant_s", "s"),
        symbol("P", "loss_kw (in W)", "kW"),
        symbol("UA, t_a", "node.case_w_k, air_c", "W/K, °C"),
        symbol("G, t_c", "node.cooler_w_k, cooler_air_c: 0 without a cooler", "W/K, °C"),
        symbol("C", "node.heat_capacity_j_k", "J/K"),
    ],
    range: "one temperature for fluid and case, constant loss and conductances; exact for these",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 5, lumped capacitance with heat generation",
};

pub(super) const TIME_TO: Card = Card {
    id: "tow.time_to",
    purpose: "Time until a sump reaches a limit",
    equation: "τ = −τ_0·ln(1 − (t_lim − t_0)/(t_∞ − t_0))",
    symbols: &[
        symbol("τ", "time_s: infinite where it never does", "s"),
        symbol("τ_0", "time_constant_s", "s"),
        symbol("t_lim", "limit_c", "°C"),
        symbol("t_0", "start_c", "°C"),
        symbol("t_∞", "steady_c", "°C"),
    ],
    range: "as tow.warmed",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 5, lumped capacitance, solved for the time",
};

pub(super) const COOLER_NEEDED: Card = Card {
    id: "tow.cooler_needed_w_k",
    purpose: "What a cooler must take for each kelvin so that the sump stays at a limit",
    equation: "G = (P − UA·(t_lim − t_a))/(t_lim − t_c)",
    symbols: &[
        symbol("G", "result: 0 where the case alone is enough", "W/K"),
        symbol("P", "loss_kw (in W)", "kW"),
        symbol("UA, t_a", "node.case_w_k, air_c", "W/K, °C"),
        symbol("t_lim", "limit_c", "°C"),
        symbol("t_c", "cooler_air_c", "°C"),
    ],
    range: "steady state",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 5, lumped capacitance at rest",
};

/// A sump as one temperature: fluid, case and what they touch.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatNode {
    /// Heat that warms it by 1 K: fluid, case and parts.
    pub heat_capacity_j_k: f64,
    /// What the case gives to the air for each kelvin; 0 or more.
    pub case_w_k: f64,
    /// The air around the case.
    pub air_c: f64,
    /// What the cooler takes for each kelvin between sump and its air, [`super::CoolerHeat::conductance_w_k`]; 0 without one.
    pub cooler_w_k: f64,
    /// The air (or coolant) that enters the cooler.
    pub cooler_air_c: f64,
}

/// A sump after a time.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Warmed {
    /// Temperature then.
    pub temp_c: f64,
    /// Temperature that it goes to; infinite without any cooling.
    pub steady_c: f64,
    /// Time in which it goes 63 % of the way; infinite without any cooling.
    pub time_constant_s: f64,
}

/// When a sump reaches a limit.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeTo {
    /// Time until then: 0 where it is there, infinite where it never will be.
    pub time_s: f64,
    /// Temperature that it goes to; infinite without any cooling.
    pub steady_c: f64,
    /// See [`Warmed`].
    pub time_constant_s: f64,
    /// Whether it ever reaches the limit.
    pub reached: bool,
}

/// Least temperature that a sump may have here: absolute zero.
const COLDEST_C: f64 = -273.15;
/// Greatest temperature that a sump may have here: far beyond what fluid survives.
const HOTTEST_C: f64 = 1000.0;

fn temperature(name: &'static str, temp_c: f64) -> Result<f64> {
    within(name, temp_c, COLDEST_C, HOTTEST_C)
}

impl HeatNode {
    pub(super) fn checked(self) -> Result<Self> {
        positive("heat_capacity_j_k", self.heat_capacity_j_k)?;
        within("case_w_k", self.case_w_k, 0.0, 1e9)?;
        within("cooler_w_k", self.cooler_w_k, 0.0, 1e9)?;
        temperature("air_c", self.air_c)?;
        temperature("cooler_air_c", self.cooler_air_c)?;
        Ok(self)
    }

    fn conductance_w_k(self) -> f64 {
        self.case_w_k + self.cooler_w_k
    }

    /// Steady temperature and time constant; infinite without any cooling.
    fn ends(self, loss_kw: f64) -> (f64, f64) {
        let total = self.conductance_w_k();
        if total <= 0.0 {
            let steady = if loss_kw > 0.0 { f64::INFINITY } else { f64::NAN };
            return (steady, f64::INFINITY);
        }
        let given = loss_kw * 1000.0 + self.case_w_k * self.air_c + self.cooler_w_k * self.cooler_air_c;
        (given / total, self.heat_capacity_j_k / total)
    }

    /// Temperature of a sump after a time under a constant loss.
    ///
    /// t = t_∞ + (t_0 − t_∞)·e^(−τ/τ_0), t_∞ = (P + UA·t_a + G·t_c)/(UA + G), τ_0 = C/(UA + G)
    ///
    /// * `start_c` — t_0, −273.15 to 1000; `loss_kw` — P, 0 or more; `time_s` — τ, 0 or more
    /// * returns [`Warmed`]; without any cooling it warms by P·τ/C
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`]
    ///
    /// The exponential is exact while loss and conductances stay as they are: there is no step to choose.
    ///
    /// Source: Incropera, lumped capacitance (from memory). Example: 12 kW into 95 kg of 900 J/(kg·K) that give 180 W/K to
    /// air of 30 °C: 86.64 °C after 900 s.
    ///
    /// ```
    /// use trainwright::tow::HeatNode;
    /// let node = HeatNode { heat_capacity_j_k: 95.0 * 900.0, case_w_k: 180.0, air_c: 30.0, cooler_w_k: 0.0, cooler_air_c: 30.0 };
    /// assert!((node.warmed(30.0, 12.0, 900.0)?.temp_c - 86.6428).abs() < 1e-4);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn warmed(self, start_c: f64, loss_kw: f64, time_s: f64) -> Result<Warmed> {
        let node = self.checked()?;
        let start_c = temperature("start_c", start_c)?;
        let loss_kw = within("loss_kw", loss_kw, 0.0, 1e6)?;
        let time_s = within("time_s", time_s, 0.0, 1e12)?;
        let (steady_c, time_constant_s) = node.ends(loss_kw);
        let temp_c = if time_constant_s.is_finite() {
            start_c - (steady_c - start_c) * exp_m1(-time_s / time_constant_s)
        } else {
            start_c + loss_kw * 1000.0 * time_s / node.heat_capacity_j_k
        };
        let steady_c = if steady_c.is_nan() { start_c } else { steady_c };
        Ok(Warmed { temp_c, steady_c, time_constant_s })
    }

    /// Time until a sump reaches a limit under a constant loss: the minutes left.
    ///
    /// τ = −τ_0·ln(1 − (t_lim − t_0)/(t_∞ − t_0))
    ///
    /// * `start_c` — t_0; `loss_kw` — P, 0 or more; `limit_c` — t_lim, all −273.15 to 1000 °C
    /// * returns [`TimeTo`]
    /// * errors: as [`HeatNode::warmed`]
    ///
    /// A steady value says nothing about a short grade, and a short grade nothing about a long one: hence the time.
    ///
    /// Source: [`HeatNode::warmed`] solved for the time.
    pub fn time_to(self, start_c: f64, loss_kw: f64, limit_c: f64) -> Result<TimeTo> {
        let node = self.checked()?;
        let start_c = temperature("start_c", start_c)?;
        let limit_c = temperature("limit_c", limit_c)?;
        let loss_kw = within("loss_kw", loss_kw, 0.0, 1e6)?;
        let (steady_c, time_constant_s) = node.ends(loss_kw);
        let time_s = if start_c >= limit_c { 0.0 } else { node.crossing_s(start_c, loss_kw, limit_c) };
        let steady_c = if steady_c.is_nan() { start_c } else { steady_c };
        Ok(TimeTo { time_s, steady_c, time_constant_s, reached: time_s.is_finite() })
    }

    /// Time until the temperature passes a limit from either side; infinite where it never does.
    pub(super) fn crossing_s(self, start_c: f64, loss_kw: f64, limit_c: f64) -> f64 {
        let (steady_c, time_constant_s) = self.ends(loss_kw);
        let time_s = if steady_c.is_finite() {
            -time_constant_s * ln_1p(-(limit_c - start_c) / (steady_c - start_c))
        } else {
            (limit_c - start_c) * self.heat_capacity_j_k / (loss_kw * 1000.0)
        };
        if time_s >= 0.0 { time_s } else { f64::INFINITY }
    }

    /// Conductance, W/K, that the cooler must have for the steady temperature to stay at a limit.
    ///
    /// G = (P − UA·(t_lim − t_a))/(t_lim − t_c)
    ///
    /// * `loss_kw` — P; `limit_c` — t_lim, above `cooler_air_c`; the cooler of the node is not used
    /// * returns G; 0 where the case alone is enough
    /// * errors: as [`HeatNode::warmed`]; [`Error::NoAnswer`] for a limit that is no hotter than the air of the cooler
    ///
    /// Source: steady state of [`HeatNode::warmed`].
    pub fn cooler_needed_w_k(self, loss_kw: f64, limit_c: f64) -> Result<f64> {
        let node = self.checked()?;
        let limit_c = temperature("limit_c", limit_c)?;
        let watts = within("loss_kw", loss_kw, 0.0, 1e6)? * 1000.0 - node.case_w_k * (limit_c - node.air_c);
        if watts <= 0.0 {
            return Ok(0.0);
        }
        if limit_c <= node.cooler_air_c {
            return Err(Error::NoAnswer {
                name: "limit_c",
                why: "the air of the cooler is as hot as the limit: no cooler is large enough",
            });
        }
        Ok(watts / (limit_c - node.cooler_air_c))
    }
}
