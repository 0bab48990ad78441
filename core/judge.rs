//! Readings, limits and the decision between them: GO, NO-GO or NOT PROVEN.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, ordered, within};
use crate::real::{erfc, sqrt};

/// The cards of this chapter.
pub const CARDS: &[Card] = &[Card {
    id: "judge.chance_inside",
    purpose: "Probability that the true value lies within the limits",
    equation: "p = Φ((T_U − y)/u) − Φ((T_L − y)/u)",
    symbols: &[
        symbol("p", "chance", "1"),
        symbol("y", "reading.value", "of the reading"),
        symbol("u", "reading.u", "of the reading"),
        symbol("T_L, T_U", "limits.lower, limits.upper", "of the reading"),
        symbol("Φ", "standard normal distribution", "1"),
    ],
    range: "normal distribution of the measurand, no prior knowledge beyond the reading",
    source: &card::CONFORMITY,
    locator: "clause 7, equation 12",
}];

/// A measured or uncertain value with its standard uncertainty (k = 1), both in the same unit.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Best estimate.
    pub value: f64,
    /// Standard uncertainty, 0 or more.
    pub u: f64,
}

impl Reading {
    /// A reading; both parts finite, `u` not negative.
    pub fn new(value: f64, u: f64) -> Result<Self> {
        Ok(Self { value: finite("value", value)?, u: within("u", u, 0.0, f64::MAX)? })
    }

    /// A value taken as exact.
    pub fn exact(value: f64) -> Result<Self> {
        Self::new(value, 0.0)
    }
}

/// Tolerance limits; an open side is infinite.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Least conforming value, or −∞.
    pub lower: f64,
    /// Greatest conforming value, or +∞.
    pub upper: f64,
}

impl Limits {
    /// Both limits, the lower not above the upper.
    pub fn between(lower: f64, upper: f64) -> Result<Self> {
        let (lower, upper) = ordered("limits", lower, upper)?;
        Ok(Self { lower, upper })
    }

    /// Only a least value.
    pub fn at_least(lower: f64) -> Result<Self> {
        Ok(Self { lower: finite("lower", lower)?, upper: f64::INFINITY })
    }

    /// Only a greatest value.
    pub fn at_most(upper: f64) -> Result<Self> {
        Ok(Self { lower: f64::NEG_INFINITY, upper: finite("upper", upper)? })
    }
}

/// Standard normal distribution function Φ(z).
#[must_use]
pub fn normal_cdf(z: f64) -> f64 {
    0.5 * erfc(-z / sqrt(2.0))
}

/// Probability that the true value behind the reading lies within the limits.
///
/// p = Φ((T_U − y)/u) − Φ((T_L − y)/u)
///
/// * `reading` — y and u, one unit; `limits` — T_L and T_U, the same unit
/// * returns p, 0 to 1; with u = 0 it is 0 or 1
/// * errors: [`Error::NotFinite`] and [`Error::OutOfRange`] for a bad reading, [`Error::Reversed`] for limits upside down
///
/// Source: JCGM 106:2012, clause 7, equation 12 (from memory). Example: its worked example of a breakdown voltage,
/// −5.47 V with u = 0.05 V against an upper limit of −5.40 V, gives 0.92.
///
/// ```
/// use trainwright::judge::{Limits, Reading, chance_inside};
/// let chance = chance_inside(Reading::new(-5.47, 0.05)?, Limits::at_most(-5.40)?)?;
/// assert!((chance - 0.92).abs() < 0.005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn chance_inside(reading: Reading, limits: Limits) -> Result<f64> {
    let Reading { value: y, u } = Reading::new(reading.value, reading.u)?;
    let Limits { lower, upper } = limits;
    if !(lower <= upper) {
        return Err(Error::Reversed { name: "limits", lower, upper });
    }
    if u <= 0.0 {
        return Ok(if (lower..=upper).contains(&y) { 1.0 } else { 0.0 });
    }
    Ok(normal_cdf((upper - y) / u) - normal_cdf((lower - y) / u))
}
