//! How likely a look is in each variant, as a logarithm: a reading far outside every size must not underflow.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::{Limits, Reading, phi};
use crate::real::{abs, exp, ln, ln_1p};

pub(super) const LN_DENSITY: Card = Card {
    id: "identify.ln_density",
    purpose: "How likely a reading is, where the size of the part lies anywhere within its limits with the same chance",
    equation: "ln P(x|v) = ln {[Φ((x − lo)/u) − Φ((x − hi)/u)]/(hi − lo)}",
    symbols: &[
        symbol("x", "reading_mm.value", "mm"),
        symbol("u", "reading_mm.u, of the instrument", "mm"),
        symbol("lo, hi", "size_mm.lower, size_mm.upper", "mm"),
        symbol("Φ", "standard normal distribution", "1"),
    ],
    range: "size rectangular over its limits, reading normal about the size; equal limits give the normal density",
    source: &card::DEFINITION,
    locator: "convolution of a rectangular and a normal density; tails by Abramowitz and Stegun, 26.2.12",
};

/// The variant whose size a reading comes nearest to.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearest {
    /// Place of the variant; the first of equals.
    pub variant: u32,
    /// Distance of the reading beyond that variant's nearer limit, mm: 0 within the limits, negative below them.
    pub outside_mm: f64,
    /// The same distance in standard uncertainties of the reading.
    pub outside_u: f64,
}

/// Adds a mark that is there or not to the row of its part.
///
/// * `chance` — for each variant, chance that an untouched unit shows the mark, 0 to 1; `seen` — whether it is there
/// * `ln_part` — the row of the part, as long as `chance`; on failure it stays as it was
/// * errors: [`Error::OutOfRange`] for a chance, [`Error::Count`] for lists of different length
///
/// ```
/// let mut row = [0.0; 2];
/// trainwright::identify::add_seen(&[0.01, 0.65], true, &mut row)?;
/// trainwright::identify::add_seen(&[0.01, 0.97], true, &mut row)?; // two marks on one part
/// assert!((row[1] - f64::ln(0.65 * 0.97)).abs() < 1e-15);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn add_seen(chance: &[f64], seen: bool, ln_part: &mut [f64]) -> Result<()> {
    same_length("chance", chance.len(), ln_part.len())?;
    for &chance in chance {
        within("chance", chance, 0.0, 1.0)?;
    }
    for (ln_part, &chance) in ln_part.iter_mut().zip(chance) {
        *ln_part += if seen { ln(chance) } else { ln_1p(-chance) };
    }
    Ok(())
}

/// Adds a measured size to the row of its part, and says which variant the reading comes nearest to.
///
/// * `size_mm` — limits of the finished part for each variant; `reading_mm` — the reading with the instrument's uncertainty
/// * `ln_part` — the row of the part, as long as `size_mm`; on failure it stays as it was
/// * returns [`Nearest`]. A reading outside the limits of every variant is weighed all the same: judge it against the limits
///   of the nearest one, and where it is NO-GO, the part is worn, mismeasured, or not of this family
/// * errors: as [`ln_density`]; [`Error::Count`] for lists of different length
pub fn add_measured(size_mm: &[Limits], reading_mm: Reading, ln_part: &mut [f64]) -> Result<Nearest> {
    same_length("size_mm", size_mm.len(), ln_part.len())?;
    let mut nearest: Option<Nearest> = None;
    let Reading { value: x, u } = readable(reading_mm)?;
    for (variant, &limits) in (0..).zip(size_mm) {
        Limits::between(limits.lower, limits.upper)?;
        let outside_mm = if x < limits.lower { x - limits.lower } else { (x - limits.upper).max(0.0) };
        if nearest.is_none_or(|nearest| abs(outside_mm) < abs(nearest.outside_mm)) {
            nearest = Some(Nearest { variant, outside_mm, outside_u: outside_mm / u });
        }
    }
    for (ln_part, &limits) in ln_part.iter_mut().zip(size_mm) {
        *ln_part += density(x, u, limits.lower, limits.upper);
    }
    nearest.ok_or(Error::Count { name: "size_mm", count: 0, low: 1, high: u32::MAX })
}

fn same_length(name: &'static str, count: usize, wanted: usize) -> Result<()> {
    let (count, wanted) = (count as u32, wanted as u32);
    if count == wanted { Ok(()) } else { Err(Error::Count { name, count, low: wanted, high: wanted }) }
}

/// Logarithm of the probability density of a reading of a size that lies anywhere within its limits with the same chance.
///
/// ln P(x|v) = ln {[Φ((x − lo)/u) − Φ((x − hi)/u)]/(hi − lo)}
///
/// * `reading_mm` — x and u, u above 0: an instrument without an uncertainty cannot be weighed
/// * `size_mm` — lo and hi, finite; equal limits are a size without tolerance
/// * returns the natural logarithm of the density in 1/mm; finite however far the reading lies outside
/// * errors: [`Error::NotPositive`] for a u of 0, [`Error::OutOfRange`] below it, [`Error::NotFinite`], [`Error::Reversed`]
///
/// Source: follows from the definitions. The difference of the two Φ is taken in the tail that keeps its digits, beyond 30 u
/// by the asymptotic series of Abramowitz and Stegun, 26.2.12, and for limits closer than a fraction of u by its Taylor
/// series. Example (computed with mpmath, 50 digits): 44.0 read with u = 0.0016 against 44.325 to 44.350 gives −20 632.427.
///
/// ```
/// use trainwright::identify::ln_density;
/// use trainwright::judge::{Limits, Reading};
/// let inside = ln_density(Reading::new(62.1, 0.4)?, Limits::between(61.0, 63.0)?)?;
/// assert!((inside.exp() - 0.492_397_882).abs() < 1e-9); // nearly 1 over the 2 mm of the tolerance
/// let far = ln_density(Reading::new(44.0, 0.0016)?, Limits::between(44.325, 44.350)?)?;
/// assert!((far + 20_632.427).abs() < 0.001);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn ln_density(reading_mm: Reading, size_mm: Limits) -> Result<f64> {
    let Reading { value: x, u } = readable(reading_mm)?;
    let Limits { lower, upper } = Limits::between(size_mm.lower, size_mm.upper)?;
    Ok(density(x, u, lower, upper))
}

/// A reading that can be weighed: with an uncertainty.
fn readable(reading_mm: Reading) -> Result<Reading> {
    let reading = Reading::new(reading_mm.value, reading_mm.u)?;
    positive("u", reading.u).map(|_| reading)
}

/// The same for checked arguments.
pub(super) fn density(x: f64, u: f64, lower: f64, upper: f64) -> f64 {
    // Distances to the nearer and the farther limit in u; the nearer one is negative where the reading lies inside.
    let (near, far) = ((x - upper) / u, (x - lower) / u);
    let (near, far) = if near + far < 0.0 { (-far, -near) } else { (near, far) };
    if near > GONE {
        return f64::NEG_INFINITY;
    }
    let half = 0.5 * ((upper - lower) / u);
    let middle = near + half;
    if half * middle.max(1.0) < CLOSE_LIMITS {
        return -0.5 * middle * middle - LN_ROOT_TAU - ln(u) + ln_1p(narrow(half, middle));
    }
    let width = upper - lower;
    if near > FAR_TAIL {
        // Q(near) − Q(far), each Q = φ(z) M(z) with Mills' ratio M
        let rest = exp(-2.0 * half * middle) * (mills(far) / mills(near));
        return -0.5 * near * near - LN_ROOT_TAU + ln(mills(near) * (1.0 - rest) / width);
    }
    let mass = if near > 0.0 { phi(-near) - phi(-far) } else { phi(far) - phi(near) };
    ln(mass / width)
}

/// ln √(2π).
const LN_ROOT_TAU: f64 = 0.918_938_533_204_672_8;
/// Beyond this many u, z² is no longer a number.
const GONE: f64 = 1e150;
/// Beyond this many u, Φ is replaced by its asymptotic series, which has all digits there.
const FAR_TAIL: f64 = 30.0;
/// Where half the width times the distance (both in u) is less, the difference of the two Φ would lose digits.
const CLOSE_LIMITS: f64 = 0.03;

/// Mean of the normal density over middle ± half, relative to the density at the middle, less 1: its Taylor series.
fn narrow(half: f64, middle: f64) -> f64 {
    let (h, p) = (half * half, half * middle);
    let p = p * p;
    (p - h) / 6.0
        + ((p - 6.0 * h) * p + 3.0 * h * h) / 120.0
        + (((p - 15.0 * h) * p + 45.0 * h * h) * p - 15.0 * h * h * h) / 5040.0
}

/// Mills' ratio Q(z)/φ(z) for z above [`FAR_TAIL`]: (1 − 1/z² + 1·3/z⁴ − 1·3·5/z⁶ ...)/z.
fn mills(z: f64) -> f64 {
    let w = 1.0 / z / z;
    (1.0 - w * (1.0 - 3.0 * w * (1.0 - 5.0 * w * (1.0 - 7.0 * w * (1.0 - 9.0 * w * (1.0 - 11.0 * w)))))) / z
}
