//! Normal and Student's t distributions: what the chances and the coverage factors rest on.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, within};
use crate::real::{abs, erfc, exp, ln, ln_1p, sqrt};
use core::f64::consts::{PI, SQRT_2};

pub(super) const NORMAL_QUANTILE: Card = Card {
    id: "judge.normal_quantile",
    purpose: "Value that a standard normal variable stays below with a stated probability",
    equation: "z = Φ⁻¹(p), rational approximations in p and √(−ln p)",
    symbols: &[symbol("p", "probability", "1"), symbol("z", "result", "1")],
    range: "0 < p < 1; relative error below 10⁻¹⁵",
    source: &card::NORMAL_DEVIATES,
    locator: "routine PPND16",
};

pub(super) const STUDENT_CDF: Card = Card {
    id: "judge.student_cdf",
    purpose: "Student's t distribution function",
    equation: "P(t|ν) = 1 − ½ I_x(ν/2, ½), x = ν/(ν + t²), for t ≥ 0",
    symbols: &[
        symbol("t", "t", "1"),
        symbol("ν", "freedom, 1 or more, may be infinite", "1"),
        symbol("I", "incomplete beta function by its continued fraction", "1"),
    ],
    range: "ν ≥ 1",
    source: &card::HANDBOOK_FUNCTIONS,
    locator: "26.5.8, 26.7.1",
};

pub(super) const COVERAGE_FACTOR: Card = Card {
    id: "judge.coverage_factor",
    purpose: "Factor from standard uncertainty to the half width that covers a stated probability",
    equation: "k = t_p(ν) with P(−k ≤ t ≤ k) = p",
    symbols: &[
        symbol("p", "coverage", "1"),
        symbol("ν", "freedom, 1 or more, infinite for the normal distribution", "1"),
        symbol("k", "result", "1"),
    ],
    range: "0 < p < 1, ν ≥ 1",
    source: &card::GUM,
    locator: "G.3, table G.2",
};

/// Standard normal distribution function Φ(z); z may be infinite but not NaN.
///
/// ```
/// # use trainwright::judge::normal_cdf;
/// assert!((normal_cdf(1.96)? - 0.9750021048517795).abs() < 1e-15);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn normal_cdf(z: f64) -> Result<f64> {
    if z.is_nan() { Err(Error::NotFinite { name: "z", value: z }) } else { Ok(phi(z)) }
}

/// Φ(z).
pub(crate) fn phi(z: f64) -> f64 {
    0.5 * erfc(-z / SQRT_2)
}

/// Value that a standard normal variable stays below with the stated probability.
///
/// z = Φ⁻¹(p)
///
/// * `probability` — p, above 0 and below 1
/// * returns z
/// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: Wichura, algorithm AS 241, Applied Statistics 37 (1988), routine PPND16 (from memory, its coefficients checked
/// against another implementation). Example: its check values Φ⁻¹(0.25) = −0.6744897501960817 and
/// Φ⁻¹(0.001) = −3.090232306167814.
///
/// ```
/// # use trainwright::judge::normal_quantile;
/// assert!((normal_quantile(0.25)? + 0.6744897501960817).abs() < 1e-15);
/// assert!((normal_quantile(0.001)? + 3.090232306167814).abs() < 1e-15);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn normal_quantile(probability: f64) -> Result<f64> {
    let p = open_unit("probability", probability)?;
    let q = p - 0.5;
    if abs(q) <= 0.425 {
        return Ok(q * ratio(CENTER, 0.180_625 - q * q));
    }
    let r = sqrt(-ln(if q < 0.0 { p } else { 1.0 - p }));
    let z = if r <= 5.0 { ratio(SHOULDER, r - 1.6) } else { ratio(TAIL, r - 5.0) };
    Ok(if q < 0.0 { -z } else { z })
}

/// Numerator and denominator of a rational approximation, highest power first.
type Ratio = ([f64; 8], [f64; 8]);

fn ratio((numerator, denominator): Ratio, x: f64) -> f64 {
    let horner = |coefficients: [f64; 8]| coefficients.iter().fold(0.0, |sum, c| sum * x + c);
    horner(numerator) / horner(denominator)
}

#[rustfmt::skip]
const CENTER: Ratio = (
    [2.509_080_928_730_122_7e3, 3.343_057_558_358_813e4, 6.726_577_092_700_87e4, 4.592_195_393_154_987e4,
     1.373_169_376_550_946e4, 1.971_590_950_306_551_3e3, 1.331_416_678_917_843_8e2, 3.387_132_872_796_366_5],
    [5.226_495_278_852_854e3, 2.872_908_573_572_194_3e4, 3.930_789_580_009_271e4, 2.121_379_430_158_659_7e4,
     5.394_196_021_424_751e3, 6.871_870_074_920_579e2, 4.231_333_070_160_091e1, 1.0],
);
#[rustfmt::skip]
const SHOULDER: Ratio = (
    [7.745_450_142_783_414e-4, 2.272_384_498_926_918_4e-2, 2.417_807_251_774_506e-1, 1.270_458_252_452_368_4,
     3.647_848_324_763_204_5, 5.769_497_221_460_691, 4.630_337_846_156_546, 1.423_437_110_749_683_5],
    [1.050_750_071_644_416_9e-9, 5.475_938_084_995_345e-4, 1.519_866_656_361_645_7e-2, 1.481_039_764_274_800_8e-1,
     6.897_673_349_851e-1, 1.676_384_830_183_803_8, 2.053_191_626_637_759, 1.0],
);
#[rustfmt::skip]
const TAIL: Ratio = (
    [2.010_334_399_292_288_1e-7, 2.711_555_568_743_487_6e-5, 1.242_660_947_388_078_4e-3, 2.653_218_952_657_612_4e-2,
     2.965_605_718_285_048_7e-1, 1.784_826_539_917_291_3, 5.463_784_911_164_114, 6.657_904_643_501_103],
    [2.044_263_103_389_939_7e-15, 1.421_511_758_316_446e-7, 1.846_318_317_510_054_8e-5, 7.868_691_311_456_133e-4,
     1.487_536_129_085_061_5e-2, 1.369_298_809_227_358e-1, 5.998_322_065_558_88e-1, 1.0],
);

/// Student's t distribution function.
///
/// P(t|ν) = 1 − ½ I_x(ν/2, ½) with x = ν/(ν + t²), for t ≥ 0; the rest by symmetry
///
/// * `t` — any finite value; `freedom` — ν, 1 or more, infinite for the normal distribution
/// * returns the probability, 0 to 1
/// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.1 and 26.5.8 (from memory).
/// Example: with ν = 1 it is ½ + arctan(t)/π, so P(1|1) = 0.75.
///
/// ```
/// # use trainwright::judge::student_cdf;
/// assert!((student_cdf(1.0, 1.0)? - 0.75).abs() < 1e-15);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn student_cdf(t: f64, freedom: f64) -> Result<f64> {
    let t = crate::error::finite("t", t)?;
    let tail = student_tail(abs(t), at_least_one(freedom)?);
    Ok(if t < 0.0 { tail } else { 1.0 - tail })
}

/// Value that a Student's t variable stays below with the stated probability: the inverse of [`student_cdf`].
///
/// ```
/// # use trainwright::judge::student_quantile;
/// assert!((student_quantile(0.975, 10.0)? - 2.228).abs() < 5e-4); // JCGM 100:2008, table G.2: 2.23
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn student_quantile(probability: f64, freedom: f64) -> Result<f64> {
    let p = open_unit("probability", probability)?;
    let freedom = at_least_one(freedom)?;
    Ok(if p < 0.5 { -student_above(p, freedom)? } else { student_above(1.0 - p, freedom)? })
}

/// Factor from standard uncertainty to the half width that covers the stated probability.
///
/// k = t_p(ν), with P(−k ≤ t ≤ k) = p
///
/// * `coverage` — p, above 0 and below 1; `freedom` — ν, 1 or more, infinite for the normal distribution
/// * returns k
/// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: JCGM 100:2008, G.3 (from memory). Example: its table G.2 gives 2.92 for p = 99 %, ν = 16, and 1.960 for
/// p = 95 %, ν infinite.
///
/// ```
/// # use trainwright::judge::coverage_factor;
/// assert!((coverage_factor(0.99, 16.0)? - 2.92).abs() < 0.005);
/// assert!((coverage_factor(0.95, f64::INFINITY)? - 1.960).abs() < 0.0005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn coverage_factor(coverage: f64, freedom: f64) -> Result<f64> {
    let coverage = open_unit("coverage", coverage)?;
    student_above(0.5 * (1.0 - coverage), at_least_one(freedom)?)
}

fn open_unit(name: &'static str, p: f64) -> Result<f64> {
    let p = crate::error::finite(name, p)?;
    if 0.0 < p && p < 1.0 { Ok(p) } else { Err(Error::OutOfRange { name, value: p, low: 0.0, high: 1.0 }) }
}

fn at_least_one(freedom: f64) -> Result<f64> {
    if freedom == f64::INFINITY { Ok(freedom) } else { within("freedom", freedom, 1.0, f64::MAX) }
}

/// Above this the distribution is normal to the last bit that a coverage factor needs: t − z < z³/(4ν).
const ALMOST_NORMAL: f64 = 1e17;
/// Above this the series in 1/ν replaces the continued fraction, which then needs many terms and loses digits.
const LONG_FRACTION: f64 = 1e4;

/// The t ≥ 0 that is exceeded with probability `tail` ≤ ½.
fn student_above(tail: f64, nu: f64) -> Result<f64> {
    let z = -normal_quantile(tail)?;
    if nu >= ALMOST_NORMAL {
        return Ok(z);
    }
    if nu >= LONG_FRACTION {
        return Ok(expansion(z, nu));
    }
    // The tail is convex in t and z lies below the root, so Newton's steps climb to it.
    let mut t = z;
    for _ in 0..400 {
        let next = t + (student_tail(t, nu) - tail) / student_density(t, nu);
        if next <= t || next.is_nan() {
            break;
        }
        t = next;
    }
    Ok(t)
}

/// Abramowitz and Stegun, 26.7.5.
fn expansion(z: f64, nu: f64) -> f64 {
    let s = z * z;
    let g1 = z * (s + 1.0) / 4.0;
    let g2 = z * ((5.0 * s + 16.0) * s + 3.0) / 96.0;
    let g3 = z * (((3.0 * s + 19.0) * s + 17.0) * s - 15.0) / 384.0;
    let g4 = z * ((((79.0 * s + 776.0) * s + 1482.0) * s - 1920.0) * s - 945.0) / 92_160.0;
    z + (g1 + (g2 + (g3 + g4 / nu) / nu) / nu) / nu
}

/// P(T > t), t ≥ 0.
fn student_tail(t: f64, nu: f64) -> f64 {
    if nu >= ALMOST_NORMAL {
        return phi(-t);
    }
    let s = t * t / nu;
    if nu >= LONG_FRACTION {
        let mut z = sqrt(nu * ln_1p(s));
        for _ in 0..4 {
            z -= (expansion(z, nu) - t) / (1.0 + (3.0 * z * z + 1.0) / (4.0 * nu));
        }
        return phi(-z);
    }
    let (a, b) = (0.5 * nu, 0.5);
    // x = 1/(1 + s) and 1 − x = s/(1 + s); the front factor x^a (1 − x)^½ / B(a, ½) serves both sides.
    let front = exp(-a * ln_1p(s)) * sqrt(s / (1.0 + s)) * gamma_ratio(a) / sqrt(PI);
    let x = 1.0 / (1.0 + s);
    if x < (a + 1.0) / (a + b + 2.0) {
        0.5 * front * beta_fraction(x, a, b) / a
    } else {
        0.5 - 0.5 * front * beta_fraction(s / (1.0 + s), b, a) / b
    }
}

fn student_density(t: f64, nu: f64) -> f64 {
    gamma_ratio(0.5 * nu) / sqrt(PI * nu) * exp(-0.5 * (nu + 1.0) * ln_1p(t * t / nu))
}

/// Γ(x + ½)/Γ(x), by its asymptotic series beyond 50 and Γ's recurrence up to there.
fn gamma_ratio(x: f64) -> f64 {
    let (mut product, mut x) = (1.0, x);
    while x < 50.0 {
        product *= x / (x + 0.5);
        x += 1.0;
    }
    let w = 1.0 / (8.0 * x);
    let series = [869.0 / 16.0, -399.0 / 8.0, -21.0 / 8.0, 2.5, 0.5, -1.0, 1.0];
    product * sqrt(x) * series.iter().fold(0.0, |sum, c| sum * w + c)
}

/// Continued fraction of the incomplete beta function, Abramowitz and Stegun 26.5.8, by Lentz's method.
fn beta_fraction(x: f64, a: f64, b: f64) -> f64 {
    let away = |value: f64| if abs(value) < 1e-300 { 1e-300 } else { value };
    let mut c = 1.0;
    let mut d = 1.0 / away(1.0 - (a + b) * x / (a + 1.0));
    let mut h = d;
    for m in 1..2000 {
        let m = f64::from(m);
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        let mut change = 1.0;
        for term in [even, odd] {
            d = 1.0 / away(1.0 + term * d);
            c = away(1.0 + term / c);
            change = c * d;
            h *= change;
        }
        if abs(change - 1.0) < 1e-16 {
            break;
        }
    }
    h
}
