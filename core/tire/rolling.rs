//! How far a tire rolls, and the three radii of a wheel.

use core::f64::consts::PI;

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive};
use crate::judge::Reading;
use crate::real::hypot;
use crate::units::KM_PER_MILE;

pub(super) const ROLLING_BY_FACTOR: Card = Card {
    id: "tire.rolling_by_factor",
    purpose: "Rolling circumference from the outer diameter by a factor",
    equation: "C = f·D, f = 3.05 radial, 2.99 diagonal",
    symbols: &[
        symbol("C", "circumference_mm", "mm"),
        symbol("D", "diameter_mm, regulation diameter", "mm"),
        symbol("f", "factor", "1"),
    ],
    range: "inflated and loaded as the tire standard says; wear takes up to 2 % off",
    source: &card::TIRE_MANUAL,
    locator: "general notes, dynamic rolling circumference",
};

pub(super) const ROLLING_BY_SHARE: Card = Card {
    id: "tire.rolling_by_share",
    purpose: "Rolling circumference from the free circumference",
    equation: "C = s·π·D",
    symbols: &[
        symbol("C", "circumference_mm", "mm"),
        symbol("D", "diameter_mm, free outer diameter", "mm"),
        symbol("s", "share, rolling over free circumference", "1"),
    ],
    range: "as far as the share was found; 3.05/π is 0.971",
    source: &card::DEFINITION,
    locator: "rolling circumference",
};

pub(super) const ROLLING_BY_COUNT: Card = Card {
    id: "tire.rolling_by_count",
    purpose: "Rolling circumference from counted revolutions",
    equation: "C = s/n, (u_C/C)² = (u_s/s)² + (u_n/n)²",
    symbols: &[symbol("C", "circumference_mm", "mm"), symbol("s", "distance_m", "m"), symbol("n", "revolutions", "1")],
    range: "without wheel slip: no hard pull, dry road",
    source: &card::DEFINITION,
    locator: "rolling circumference",
};

pub(super) const RADII: Card = Card {
    id: "tire.radii",
    purpose: "Free, static loaded and effective rolling radius side by side",
    equation: "r_free = D/2, r_static = q·D, r_rolling = C/(2·π)",
    symbols: &[
        symbol("D", "diameter_mm", "mm"),
        symbol("q", "static_over_diameter", "1"),
        symbol("C", "rolling.circumference_mm", "mm"),
    ],
    range: "only the effective rolling radius belongs into speeds; only the static loaded one into heights",
    source: &card::DEFINITION,
    locator: "radii of a loaded wheel",
};

/// ETRTO factor of the rolling circumference of a radial tire over its regulation diameter (from memory of the ETRTO
/// Standards Manual, general notes).
pub const RADIAL_FACTOR: f64 = 3.05;
/// ETRTO factor of the rolling circumference of a diagonal tire over its regulation diameter (from memory, as above).
pub const DIAGONAL_FACTOR: f64 = 2.99;

/// How far a tire rolls: the same fact in every form the trade uses, with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rolling {
    /// Rolling circumference: distance per turn under load.
    pub circumference_mm: Reading,
    /// Effective rolling radius: circumference over 2π. Neither the free nor the static loaded radius.
    pub radius_mm: Reading,
    /// Revolutions per kilometer.
    pub rev_per_km: Reading,
    /// Revolutions per mile.
    pub rev_per_mile: Reading,
}

impl Rolling {
    fn of(circumference_mm: f64, relative_u: f64) -> Result<Self> {
        positive("circumference_mm", circumference_mm)?;
        let with_u = |value: f64| Reading::new(value, value * relative_u);
        let rev_per_km = 1e6 / circumference_mm;
        Ok(Self {
            circumference_mm: with_u(circumference_mm)?,
            radius_mm: with_u(circumference_mm / (2.0 * PI))?,
            rev_per_km: with_u(rev_per_km)?,
            rev_per_mile: with_u(rev_per_km * KM_PER_MILE)?,
        })
    }
}

/// Relative standard uncertainty of a positive reading.
fn relative(name: &'static str, reading: Reading) -> Result<(f64, f64)> {
    let Reading { value, u } = Reading::new(positive(name, reading.value)?, reading.u)?;
    Ok((value, u / value))
}

/// Rolling circumference from the outer diameter by a factor.
///
/// C = f·D
///
/// * `diameter_mm` — D, regulation diameter, mm; `factor` — f, e.g. [`RADIAL_FACTOR`] with the uncertainty that the caller
///   gives it (a spread of 0.9 % was found over 71 production cars of 1990)
/// * returns circumference, effective radius, revolutions per km and mile, each with its standard uncertainty
///
/// Source: ETRTO Standards Manual, general notes (from memory). Example: 205/55R16, D = 632 mm, rolls 1928 mm.
///
/// ```
/// use trainwright::judge::Reading;
/// use trainwright::tire::{self, RADIAL_FACTOR};
/// let rolling = tire::rolling_by_factor(632.0, Reading::exact(RADIAL_FACTOR)?)?;
/// assert!((rolling.circumference_mm.value - 1928.0).abs() < 1.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn rolling_by_factor(diameter_mm: f64, factor: Reading) -> Result<Rolling> {
    let (factor, relative_u) = relative("factor", factor)?;
    Rolling::of(positive("diameter_mm", diameter_mm)? * factor, relative_u)
}

/// Rolling circumference from the free circumference: a loaded tire rolls a few percent less far than πD.
///
/// C = s·π·D
///
/// * `diameter_mm` — D, free outer diameter, mm; `share` — s, rolling over free circumference, with its uncertainty
/// * returns circumference, effective radius, revolutions per km and mile, each with its standard uncertainty
///
/// Source: definition of the share.
///
/// ```
/// use trainwright::{judge::Reading, tire};
/// let rolling = tire::rolling_by_share(801.7, Reading::new(0.968, 0.006)?)?;
/// assert!((rolling.rev_per_km.value - 410.169).abs() < 1e-3);
/// assert!((rolling.rev_per_km.u - 2.542).abs() < 1e-3);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn rolling_by_share(diameter_mm: f64, share: Reading) -> Result<Rolling> {
    let (share, relative_u) = relative("share", share)?;
    Rolling::of(PI * positive("diameter_mm", diameter_mm)? * share, relative_u)
}

/// Rolling circumference from counted revolutions over a measured distance: the best of the three, where it can be had.
///
/// C = s/n
///
/// * `distance_m` — s, m; `revolutions` — n, both with their uncertainty
/// * returns circumference, effective radius, revolutions per km and mile, each with its standard uncertainty
///
/// Source: definition; relative uncertainties added in quadrature (JCGM 100:2008, 5.1.6).
///
/// ```
/// use trainwright::{judge::Reading, tire};
/// let rolling = tire::rolling_by_count(Reading::new(1000.0, 2.0)?, Reading::new(405.0, 0.5)?)?;
/// assert!((rolling.circumference_mm.value - 2469.136).abs() < 1e-3);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn rolling_by_count(distance_m: Reading, revolutions: Reading) -> Result<Rolling> {
    let (distance, u_distance) = relative("distance_m", distance_m)?;
    let (turns, u_turns) = relative("revolutions", revolutions)?;
    Rolling::of(1000.0 * distance / turns, hypot(u_distance, u_turns))
}

/// The three radii of one wheel, which must not be mixed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelRadii {
    /// Free radius: half the outer diameter, no load.
    pub free_mm: f64,
    /// Static loaded radius: hub to ground, standing under load.
    pub static_loaded_mm: f64,
    /// Effective rolling radius: the one that speeds follow from.
    pub effective_mm: f64,
}

/// Free, static loaded and effective rolling radius of one wheel.
///
/// r_free = D/2, r_static = q·D, r_rolling = C/(2π)
///
/// * `diameter_mm` — D, mm; `static_over_diameter` — q, measured under the hub, or
///   [`crate::practice::STATIC_LOADED_RADIUS_OVER_DIAMETER`]; `rolling` — C
/// * returns the three, mm
/// * errors: [`Error::Inconsistent`] for a static radius of half the diameter or more
///
/// Source: definitions.
///
/// ```
/// use trainwright::{judge::Reading, practice, tire};
/// let rolling = tire::rolling_by_share(801.7, Reading::exact(0.968)?)?;
/// let radii = tire::radii(801.7, practice::STATIC_LOADED_RADIUS_OVER_DIAMETER, rolling)?;
/// assert!(radii.static_loaded_mm < radii.effective_mm && radii.effective_mm < radii.free_mm);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn radii(diameter_mm: f64, static_over_diameter: f64, rolling: Rolling) -> Result<WheelRadii> {
    positive("diameter_mm", diameter_mm)?;
    if positive("static_over_diameter", static_over_diameter)? >= 0.5 {
        return Err(Error::Inconsistent {
            name: "static_over_diameter",
            why: "a loaded tire stands lower than half its free diameter; give a share below 0.5",
        });
    }
    Ok(WheelRadii {
        free_mm: diameter_mm / 2.0,
        static_loaded_mm: diameter_mm * static_over_diameter,
        effective_mm: positive("rolling.radius_mm", rolling.radius_mm.value)?,
    })
}
