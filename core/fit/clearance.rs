//! What is left between a shaft and a bore: by tolerance, and as measured.

use core::fmt;

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, ordered, within};
use crate::judge::{Budget, Input, Judgment, Limits, Propagated, Reading, Rule, combine, judge, normal_cdf};

pub(super) const CLEARANCE: Card = Card {
    id: "fit.clearance",
    purpose: "Least and greatest clearance of a shaft in a bore, both by tolerance, and how that stands to the service limit",
    equation: "c_min = D_min − d_max, c_max = D_max − d_min; blocked: c_max < 0; may bind: c_min < 0; inside: c_max ≤ c_lim; loose: c_min > c_lim; else may be loose",
    symbols: &[
        symbol("c_min, c_max", "clearance_mm.lower, clearance_mm.upper", "mm"),
        symbol("d_min, d_max", "shaft_mm", "mm"),
        symbol("D_min, D_max", "bore_mm", "mm"),
        symbol("c_lim", "limit_mm", "mm"),
    ],
    range: "round parts at 20 °C; diametral. Roundness, taper and position are not counted",
    source: &card::LIMITS_AND_FITS,
    locator: "ISO 286-1:2010, clause 3.3, clearance and interference",
};

pub(super) const TOLERANCED: Card = Card {
    id: "fit.toleranced",
    purpose: "A part that was not measured, as a reading: middle of its tolerance, with the tolerance as its uncertainty",
    equation: "y = (d_min + d_max)/2, a = (d_max − d_min)/2; rectangular u = a/√3, normal u = a/3",
    symbols: &[
        symbol("y, u", "reading", "mm"),
        symbol("d_min, d_max", "size_mm", "mm"),
        symbol("a", "half of the tolerance", "mm"),
    ],
    range: "the part is as new and inside its tolerance; the assumed spread is named by whoever uses it",
    source: &card::GUM,
    locator: "4.3.7 (rectangular); 4.3.5 and 4.3.6 (normal, 99.7 % within)",
};

pub(super) const MEASURED: Card = Card {
    id: "fit.measured",
    purpose: "Clearance of two parts known with their uncertainty, judged against the clearance wanted",
    equation: "c = D − d, u_c² = u_D² + u_d²",
    symbols: &[
        symbol("c, u_c", "clearance_mm", "mm"),
        symbol("D, u_D", "bore_mm", "mm"),
        symbol("d, u_d", "shaft_mm", "mm"),
    ],
    range: "independent readings; normal distribution of the clearance. A part taken from its tolerance makes the chance near the ends of the tolerance too cautious",
    source: &card::GUM,
    locator: "5.1.2, equation 10, with sensitivities 1 and −1",
};

/// Sizes of round parts, mm, that the formulas accept.
pub(super) const LARGEST_MM: f64 = 10_000.0;

/// The last digits of a binary difference of decimal sizes: less than a picometer is rounding, not clearance.
pub(crate) const ROUNDING_MM: f64 = 1e-9;

/// How a shaft and a bore meet by their tolerances.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FitClass {
    /// Even the smallest shaft does not enter the largest bore.
    Blocked = 0,
    /// The largest shaft does not enter the smallest bore.
    MayBind = 1,
    /// Always clearance, and never more than the service limit.
    Inside = 2,
    /// Always clearance; the smallest shaft in the largest bore has more than the service limit.
    MayBeLoose = 3,
    /// Assembles, and always has more clearance than the service limit.
    Loose = 4,
}

impl fmt::Display for FitClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Blocked => "blocked",
            Self::MayBind => "may bind",
            Self::Inside => "inside",
            Self::MayBeLoose => "may be loose",
            Self::Loose => "loose",
        })
    }
}

/// Clearance of two parts by their tolerances.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearance {
    /// Diameter of the shaft, mm.
    pub shaft_mm: Limits,
    /// Diameter of the bore, mm.
    pub bore_mm: Limits,
    /// Least and greatest clearance, mm; negative is interference.
    pub clearance_mm: Limits,
    /// Greatest clearance in service, mm; infinite where none is stated.
    pub limit_mm: f64,
    /// What that comes to.
    pub fit_class: FitClass,
}

/// Least and greatest clearance of a shaft in a bore, and its class against the service limit.
///
/// c_min = D_min − d_max, c_max = D_max − d_min. Blocked: c_max < 0; may bind: c_min < 0; inside: c_max ≤ limit; loose:
/// c_min > limit; else may be loose. The first that is true counts.
///
/// * `shaft_mm`, `bore_mm` — least and greatest diameter, above 0 to 10 000 mm; `limit_mm` — 0 or more, infinite for none
/// * returns [`Clearance`]; a size is taken as the decimal number it was written as, so that 0.100 is not above 0.1
/// * errors: [`Error::Reversed`] for a size upside down; [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: ISO 286-1:2010, clause 3.3 (from memory); the classes are this library's. Example: 25 H7/f7, bore +21 and 0 µm,
/// shaft −20 and −41 µm (ISO 286-2), has 20 to 62 µm.
///
/// ```
/// use trainwright::fit::{FitClass, clearance};
/// use trainwright::judge::Limits;
/// let fit = clearance(Limits::between(24.959, 24.980)?, Limits::between(25.000, 25.021)?, 0.062)?;
/// assert!((fit.clearance_mm.lower - 0.020).abs() < 1e-9 && (fit.clearance_mm.upper - 0.062).abs() < 1e-9);
/// assert_eq!(fit.fit_class, FitClass::Inside);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn clearance(shaft_mm: Limits, bore_mm: Limits, limit_mm: f64) -> Result<Clearance> {
    let shaft = sizes("shaft_mm", shaft_mm)?;
    let bore = sizes("bore_mm", bore_mm)?;
    if limit_mm.is_nan() || limit_mm < 0.0 {
        within("limit_mm", limit_mm, 0.0, f64::INFINITY)?;
    }
    let clearance_mm = Limits { lower: bore.lower - shaft.upper, upper: bore.upper - shaft.lower };
    Ok(Clearance { shaft_mm, bore_mm, clearance_mm, limit_mm, fit_class: class_of(clearance_mm, limit_mm) })
}

fn class_of(clearance_mm: Limits, limit_mm: f64) -> FitClass {
    let Limits { lower, upper } = clearance_mm;
    if upper < -ROUNDING_MM {
        FitClass::Blocked
    } else if lower < -ROUNDING_MM {
        FitClass::MayBind
    } else if upper <= limit_mm + ROUNDING_MM {
        FitClass::Inside
    } else if lower > limit_mm + ROUNDING_MM {
        FitClass::Loose
    } else {
        FitClass::MayBeLoose
    }
}

/// The limits of a diameter, if they are possible.
pub(super) fn sizes(name: &'static str, size_mm: Limits) -> Result<Limits> {
    let (lower, upper) = ordered(name, size_mm.lower, size_mm.upper)?;
    diameter(name, lower)?;
    diameter(name, upper)?;
    Ok(size_mm)
}

/// A diameter, if it is possible.
pub(super) fn diameter(name: &'static str, value_mm: f64) -> Result<f64> {
    within(name, crate::error::positive(name, value_mm)?, 0.0, LARGEST_MM)
}

/// How the size of a part that was not measured is assumed to lie in its tolerance. A number of its own type, so that a junk
/// number from C is refused rather than undefined.
#[repr(transparent)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spread(pub i32);

impl Spread {
    /// Anywhere in the tolerance with the same chance: u = a/√3.
    pub const RECTANGULAR: Self = Self(0);
    /// Normal, centered, with three standard deviations to either limit: u = a/3.
    pub const NORMAL_3_SIGMA: Self = Self(1);

    /// The middle of a tolerance with its standard uncertainty.
    pub(crate) fn reading(self, middle: f64, half_width: f64) -> Result<Reading> {
        match self {
            Self::RECTANGULAR => Reading::rectangular(middle, half_width),
            Self::NORMAL_3_SIGMA => Reading::new(middle, half_width / 3.0),
            Self(kind) => Err(Error::OutOfRange { name: "spread", value: f64::from(kind), low: 0.0, high: 1.0 }),
        }
    }
}

impl fmt::Display for Spread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match *self {
            Self::RECTANGULAR => "rectangular",
            Self::NORMAL_3_SIGMA => "normal, limits at three standard deviations",
            _ => "no known spread",
        })
    }
}

/// A part that was not measured, as a reading: the middle of its tolerance, with the tolerance as its uncertainty.
///
/// y = (d_min + d_max)/2, a = (d_max − d_min)/2; rectangular u = a/√3, normal u = a/3
///
/// * `size_mm` — the tolerance; `spread` — [`Spread::RECTANGULAR`] or [`Spread::NORMAL_3_SIGMA`]; name it beside the answer
/// * returns a reading of the part as new. A worn part is not inside its tolerance: measure it
/// * errors: [`Error::Reversed`], [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: JCGM 100:2008, 4.3.7 and 4.3.5 (from memory).
///
/// ```
/// use trainwright::fit::{Spread, toleranced};
/// use trainwright::judge::Limits;
/// let bore_mm = toleranced(Limits::between(44.040, 44.075)?, Spread::RECTANGULAR)?;
/// assert!((bore_mm.value - 44.0575).abs() < 1e-9 && (bore_mm.u - 0.0101).abs() < 0.00005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn toleranced(size_mm: Limits, spread: Spread) -> Result<Reading> {
    let Limits { lower, upper } = sizes("size_mm", size_mm)?;
    let half_width = 0.5 * (upper - lower);
    let middle = lower + half_width;
    spread.reading(middle, half_width)
}

/// Clearance of two parts known with their uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredClearance {
    /// Diameter of the shaft, mm.
    pub shaft_mm: Reading,
    /// Diameter of the bore, mm.
    pub bore_mm: Reading,
    /// Clearance, mm; negative is interference.
    pub clearance_mm: Reading,
    /// Chance that the clearance is less than the least wanted.
    pub chance_tight: f64,
    /// Chance that the clearance is more than the greatest wanted.
    pub chance_loose: f64,
    /// The clearance against the clearance wanted.
    pub judgment: Judgment,
    /// Where its uncertainty comes from: shaft, bore, in this order.
    pub budget: Budget,
}

/// Clearance of two parts known with their uncertainty, judged.
///
/// c = D − d, u_c² = u_D² + u_d²
///
/// * `shaft_mm`, `bore_mm` — diameters, above 0 to 10 000 mm, with their standard uncertainty; [`toleranced`] makes one of a part
///   that was not measured; `wanted_mm` — least and greatest clearance wanted: 0 and the service limit where nothing else is
///   stated; `rule` — decision rule
/// * returns [`MeasuredClearance`]; [`crate::judge::settle`] of its judgment and budget names the part to measure better
/// * errors: [`Error::NotFinite`], [`Error::OutOfRange`], [`Error::Reversed`]
///
/// Source: JCGM 100:2008, equation 10. Example: a shaft of 43.988 mm on a micrometer (u 0.002), in a bore of 44.407 mm on a bore
/// gauge (u 0.004): 0.419 mm with u 0.0045, nowhere near a limit of 0.14.
///
/// ```
/// use trainwright::fit::measured;
/// use trainwright::judge::{Limits, Reading, Rule, Verdict};
/// let (shaft_mm, bore_mm) = (Reading::new(43.988, 0.002)?, Reading::new(44.407, 0.004)?);
/// let fit = measured(shaft_mm, bore_mm, Limits::between(0.0, 0.14)?, Rule::conformance(0.95)?)?;
/// assert!((fit.clearance_mm.value - 0.419).abs() < 1e-9 && (fit.clearance_mm.u - 0.004_47).abs() < 1e-5);
/// assert_eq!(fit.judgment.verdict, Verdict::NoGo);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn measured(shaft_mm: Reading, bore_mm: Reading, wanted_mm: Limits, rule: Rule) -> Result<MeasuredClearance> {
    let shaft = size_reading("shaft_mm", shaft_mm)?;
    let bore = size_reading("bore_mm", bore_mm)?;
    let budget = combine(&[Input::new(-1.0, shaft.u)?, Input::new(1.0, bore.u)?])?;
    let reading = Reading::new(bore.value - shaft.value, budget.u)?;
    judged_clearance(shaft, bore, Propagated { reading, budget }, wanted_mm, rule)
}

/// A clearance with its budget, judged.
pub(super) fn judged_clearance(
    shaft_mm: Reading,
    bore_mm: Reading,
    Propagated { reading: clearance_mm, budget }: Propagated,
    wanted_mm: Limits,
    rule: Rule,
) -> Result<MeasuredClearance> {
    let judgment = judge(clearance_mm, wanted_mm, rule)?;
    Ok(MeasuredClearance {
        shaft_mm,
        bore_mm,
        clearance_mm,
        chance_tight: chance_below(clearance_mm.value, wanted_mm.lower, budget.u)?,
        chance_loose: chance_below(wanted_mm.upper, clearance_mm.value, budget.u)?,
        judgment,
        budget,
    })
}

/// Chance that one value is below another, the two apart by a normal error u.
fn chance_below(value: f64, other: f64, u: f64) -> Result<f64> {
    if u > 0.0 { normal_cdf((other - value) / u) } else { Ok(if value < other { 1.0 } else { 0.0 }) }
}

/// A diameter with its uncertainty, if it is possible.
pub(super) fn size_reading(name: &'static str, size_mm: Reading) -> Result<Reading> {
    diameter(name, size_mm.value)?;
    Reading::new(size_mm.value, size_mm.u)
}
