//! What is proven and what is refuted.

use super::distribution::phi;
use super::rule::Rule;
use super::{Limits, Reading};
use crate::card::{self, Card, symbol};
use crate::error::Result;
use core::fmt;

pub(super) const CHANCE_INSIDE: Card = Card {
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
};

pub(super) const JUDGE: Card = Card {
    id: "judge.judge",
    purpose: "GO, NO-GO or NOT PROVEN of a reading against its limits under a stated rule",
    equation: "GO: T_L + g ≤ y ≤ T_U − g; NO-GO: y < T_L − g or y > T_U + g; g = z_p u (conformance probability p), k u (expanded uncertainty) or 0",
    symbols: &[
        symbol("y, u", "reading", "of the reading"),
        symbol("T_L, T_U", "limits", "of the reading"),
        symbol("g", "limits to acceptance, limits to rejection", "of the reading"),
        symbol("z_p", "normal quantile of p", "1"),
        symbol("k", "rule.k", "1"),
    ],
    range: "where the limits lie less than about 6 u apart, z_p u gives way to the two-sided chance itself",
    source: &card::DECISION_RULE,
    locator: "clause 5; JCGM 106:2012, clause 8",
};

/// Outcome of a decision.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Conformity is proven under the rule.
    Go = 1,
    /// Nonconformity is proven under the rule.
    NoGo = -1,
    /// Neither is proven: a normal answer, to be met by a better measurement or a better part.
    NotProven = 0,
}

impl Verdict {
    pub(super) const fn words(self) -> &'static str {
        match self {
            Self::Go => "GO",
            Self::NoGo => "NO-GO",
            Self::NotProven => "NOT PROVEN",
        }
    }
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.words())
    }
}

/// Probability that the true value behind the reading lies within the limits.
///
/// p = Φ((T_U − y)/u) − Φ((T_L − y)/u)
///
/// * `reading` — y and u, one unit; `limits` — T_L and T_U, the same unit, either infinite where open
/// * returns p, 0 to 1; with u = 0 it is 0 or 1
/// * errors: [`Error::NotFinite`](crate::Error::NotFinite) and [`Error::OutOfRange`](crate::Error::OutOfRange) for a bad
///   reading, [`Error::Reversed`](crate::Error::Reversed) for limits upside down
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
    Ok(chance(Reading::new(reading.value, reading.u)?, Limits::new(limits.lower, limits.upper)?))
}

pub(super) fn chance(Reading { value: y, u }: Reading, limits: Limits) -> f64 {
    if u <= 0.0 {
        return if limits.holds(y) { 1.0 } else { 0.0 };
    }
    let (below, above) = ((limits.lower - y) / u, (limits.upper - y) / u);
    // Below the lower limit both terms are near 1: take the other tails, which keep their digits.
    if below > 0.0 { phi(-below) - phi(-above) } else { phi(above) - phi(below) }
}

/// A decision and what it rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judgment {
    /// What was judged.
    pub reading: Reading,
    /// Against what.
    pub limits: Limits,
    /// Under which rule.
    pub rule: Rule,
    /// Chance that the true value lies within the limits.
    pub chance: f64,
    /// Values that are GO at this uncertainty. Lower +∞ and upper −∞ if there is none: the limits are too close.
    pub acceptance: Limits,
    /// Values below its lower or above its upper end are NO-GO at this uncertainty.
    pub rejection: Limits,
    /// Distance of the value above the lower limit; negative when below it.
    pub above_lower: f64,
    /// Distance of the value below the upper limit; negative when above it.
    pub below_upper: f64,
    /// Greatest standard uncertainty at which this same value is decided; 0 on a limit, infinite if any will do.
    pub u_to_decide: f64,
    /// Nearest value that is GO at this uncertainty; infinite if there is none.
    pub value_to_go: f64,
    /// GO, NO-GO or NOT PROVEN.
    pub verdict: Verdict,
}

/// Decides whether a reading conforms to its limits.
///
/// GO: T_L + g ≤ y ≤ T_U − g. NO-GO: y < T_L − g or y > T_U + g. Between: NOT PROVEN.
/// g = z_p u for a stated chance p, k u for an expanded guard, 0 for simple acceptance. With two limits less than about
/// 6 u apart, a stated chance is met exactly by the two-sided probability, so the guard grows; a value inside the limits
/// is never NO-GO.
///
/// * `reading`, `limits` — one unit; `rule` — see [`Rule`]
/// * returns the verdict with its chance, zones, distances and what would settle it
/// * errors: [`Error::NotFinite`](crate::Error::NotFinite), [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Reversed`](crate::Error::Reversed)
///
/// Source: ISO 14253-1:2017 and JCGM 106:2012, clause 8 (from memory). Example (computed): clearance limits of 25 to 75 µm
/// measured with u = 3 µm are proven at 95 % from 29.93 to 70.07 µm.
///
/// ```
/// use trainwright::judge::{Limits, Reading, Rule, Verdict, judge};
/// let clearance_um = Reading::new(72.0, 3.0)?;
/// let outcome = judge(clearance_um, Limits::between(25.0, 75.0)?, Rule::conformance(0.95)?)?;
/// assert_eq!(outcome.verdict, Verdict::NotProven);
/// assert!((outcome.acceptance.upper - 70.0654).abs() < 1e-4);
/// assert!((outcome.u_to_decide - 3.0 / 1.64485).abs() < 1e-4); // measure three micrometers inside to 1.8
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn judge(reading: Reading, limits: Limits, rule: Rule) -> Result<Judgment> {
    let reading = Reading::new(reading.value, reading.u)?;
    let limits = Limits::new(limits.lower, limits.upper)?;
    let guard = rule.guard()?;
    let y = reading.value;
    let acceptance = guard.acceptance(limits, reading.u);
    let rejection = guard.rejection(limits, reading.u);
    let verdict = if acceptance.holds(y) {
        Verdict::Go
    } else if rejection.holds(y) {
        Verdict::NotProven
    } else {
        Verdict::NoGo
    };
    let value_to_go =
        if acceptance.lower > acceptance.upper { f64::INFINITY } else { y.max(acceptance.lower).min(acceptance.upper) };
    Ok(Judgment {
        reading,
        limits,
        rule,
        chance: chance(reading, limits),
        acceptance,
        rejection,
        above_lower: y - limits.lower,
        below_upper: limits.upper - y,
        u_to_decide: guard.u_to_decide(limits, y),
        value_to_go,
        verdict,
    })
}
