//! Readings, limits and the decision between them: GO, NO-GO or NOT PROVEN.
//!
//! A measured value is a [`Reading`]: best estimate and standard uncertainty. [`propagate()`] carries readings through a
//! formula; [`judge`] compares the outcome with its [`Limits`] under a named [`Rule`], and [`settle`] names the input
//! whose better measurement would decide a case that is NOT PROVEN; [`turning_value`] finds the value of an input at which
//! the verdict turns, and [`explain()`] puts all of it into words.

mod decision;
mod distribution;
mod explain;
mod guard;
mod propagation;
mod rule;
mod settle;
mod turning;

pub use decision::{Judgment, Verdict, chance_inside, judge};
pub(crate) use distribution::phi;
pub use distribution::{coverage_factor, normal_cdf, normal_quantile, student_cdf, student_quantile};
pub use explain::{Judged, explain};
pub use propagation::{
    Budget, Expanded, Input, MAX_INPUTS, Propagated, combine, combine_correlated, effective_freedom, expand, propagate,
    propagate_list,
};
pub use rule::{Rule, RuleKind};
pub use settle::{Settlement, settle, settle_by};
pub use turning::{Turning, turning_value};

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, ordered, positive, within};
use crate::real::sqrt;

/// The cards of this chapter.
pub const CARDS: &[Card] = &[
    TYPE_B,
    TYPE_A,
    decision::CHANCE_INSIDE,
    decision::JUDGE,
    settle::SETTLE,
    turning::TURNING_VALUE,
    propagation::COMBINE,
    propagation::COMBINE_CORRELATED,
    propagation::PROPAGATE,
    propagation::EFFECTIVE_FREEDOM,
    propagation::EXPAND,
    distribution::NORMAL_QUANTILE,
    distribution::STUDENT_CDF,
    distribution::COVERAGE_FACTOR,
];

const TYPE_B: Card = Card {
    id: "judge.rectangular",
    purpose: "Standard uncertainty of a value known only to lie within ±a, and of the last step of a display",
    equation: "u = a/√3 (rectangular, instrument class), a/√6 (triangular), a/√2 (arcsine), q/√12 (quantum)",
    symbols: &[
        symbol("u", "reading.u", "of the value"),
        symbol("a", "half_width, or full_scale × class_pct/100", "of the value"),
        symbol("q", "quantum, smallest change the reading can show", "of the value"),
    ],
    range: "the true value lies certainly within the width",
    source: &card::GUM,
    locator: "4.3.7, 4.3.9, F.2.2.1, H.6",
};

const TYPE_A: Card = Card {
    id: "judge.mean_of",
    purpose: "Mean of repeated readings and its standard uncertainty",
    equation: "q̄ = Σ q_k/n, u² = Σ (q_k − q̄)²/(n (n − 1)), ν = n − 1",
    symbols: &[
        symbol("q_k", "values", "of the reading"),
        symbol("u", "reading.u", "of the reading"),
        symbol("ν", "freedom", "1"),
    ],
    range: "two or more independent readings of an unchanged quantity",
    source: &card::GUM,
    locator: "4.2.1, 4.2.3",
};

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

    /// A value with its standard uncertainty as a fraction of it: 0.02 for 2 %.
    pub fn relative(value: f64, u_rel: f64) -> Result<Self> {
        Self::new(value, crate::real::abs(value) * within("u_rel", u_rel, 0.0, f64::MAX)?)
    }

    /// Anywhere within ± the half width with the same chance: u = a/√3.
    ///
    /// Source: JCGM 100:2008, 4.3.7 (from memory). Example: its expansion coefficient of copper,
    /// 16.52 within ±0.40 (10⁻⁶/°C), gives u = 0.23.
    ///
    /// ```
    /// # use trainwright::judge::Reading;
    /// assert!((Reading::rectangular(16.52, 0.40)?.u - 0.23).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn rectangular(value: f64, half_width: f64) -> Result<Self> {
        Self::new(value, spread("half_width", half_width)? / sqrt(3.0))
    }

    /// Within ± the half width, and more often near the middle: u = a/√6. Source: JCGM 100:2008, 4.3.9.
    pub fn triangular(value: f64, half_width: f64) -> Result<Self> {
        Self::new(value, spread("half_width", half_width)? / sqrt(6.0))
    }

    /// Swinging as a sine between ± the half width, as a room temperature under control does: u = a/√2.
    /// Source: JCGM 100:2008, H.1.3.4 (from memory).
    pub fn arcsine(value: f64, half_width: f64) -> Result<Self> {
        Self::new(value, spread("half_width", half_width)? / sqrt(2.0))
    }

    /// Read from a display or counter that moves in steps of the quantum: u = q/√12.
    /// Source: JCGM 100:2008, F.2.2.1.
    pub fn quantized(value: f64, quantum: f64) -> Result<Self> {
        Self::new(value, spread("quantum", quantum)? / sqrt(12.0))
    }

    /// Read on an instrument whose class states the greatest error in percent of full scale: u = full scale · class/100/√3.
    ///
    /// ```
    /// # use trainwright::judge::Reading;
    /// let pressure_kpa = Reading::of_class(1470.0, 2500.0, 1.6)?; // gauge 0 to 2500 kPa, class 1.6
    /// assert!((pressure_kpa.u - 23.1).abs() < 0.05);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn of_class(value: f64, full_scale: f64, class_pct: f64) -> Result<Self> {
        Self::rectangular(
            value,
            positive("full_scale", full_scale)? * within("class_pct", class_pct, 0.0, 100.0)? / 100.0,
        )
    }
}

fn spread(name: &'static str, width: f64) -> Result<f64> {
    within(name, width, 0.0, f64::MAX)
}

/// Repeated readings in one: their mean and the degrees of freedom of its uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Repeated {
    /// Mean and its standard uncertainty.
    pub reading: Reading,
    /// Standard deviation of a single reading.
    pub deviation: f64,
    /// Degrees of freedom, n − 1.
    pub freedom: f64,
}

/// Mean of repeated readings, its standard uncertainty and degrees of freedom.
///
/// q̄ = Σ q_k/n, u² = Σ (q_k − q̄)²/(n (n − 1)), ν = n − 1
///
/// * `values` — q_k, two or more
/// * errors: [`Error::Count`] for fewer than two, [`Error::NotFinite`]
///
/// Source: JCGM 100:2008, 4.2.1 and 4.2.3.
///
/// ```
/// use trainwright::judge::mean_of;
/// let clearance_mm = mean_of(&[2.25, 2.30, 2.25, 2.28])?; // four feeler readings
/// assert_eq!(clearance_mm.reading.value, 2.27);
/// assert_eq!(clearance_mm.freedom, 3.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn mean_of(values: &[f64]) -> Result<Repeated> {
    let count = u32::try_from(values.len()).unwrap_or(u32::MAX);
    if count < 2 {
        return Err(Error::Count { name: "values", count, low: 2, high: u32::MAX });
    }
    let n = f64::from(count);
    let mut sum = 0.0;
    for &value in values {
        sum += finite("values", value)?;
    }
    let mean = sum / n;
    let variance = values.iter().map(|q| (q - mean) * (q - mean)).sum::<f64>() / (n - 1.0);
    Ok(Repeated { reading: Reading::new(mean, sqrt(variance / n))?, deviation: sqrt(variance), freedom: n - 1.0 })
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
    /// Limits of which either side may be open, that is infinite.
    pub fn new(lower: f64, upper: f64) -> Result<Self> {
        if lower.is_nan() || lower == f64::INFINITY {
            Err(Error::NotFinite { name: "limits.lower", value: lower })
        } else if upper.is_nan() || upper == f64::NEG_INFINITY {
            Err(Error::NotFinite { name: "limits.upper", value: upper })
        } else if lower > upper {
            Err(Error::Reversed { name: "limits", lower, upper })
        } else {
            Ok(Self { lower, upper })
        }
    }

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

    /// Whether the value lies within, the limits included.
    #[must_use]
    pub fn holds(self, value: f64) -> bool {
        (self.lower..=self.upper).contains(&value)
    }
}
