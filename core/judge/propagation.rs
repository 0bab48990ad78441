//! From inputs to result: first-order propagation of uncertainty, and coverage.

use super::{Reading, coverage_factor};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, within};
use crate::real::{abs, sqrt};

pub(super) const COMBINE: Card = Card {
    id: "judge.combine",
    purpose: "Combined standard uncertainty of independent inputs, and what each contributes",
    equation: "u² = Σ (c_i u_i)²",
    symbols: &[
        symbol("c_i", "inputs[i].sensitivity, ∂f/∂x_i", "result per input"),
        symbol("u_i", "inputs[i].u", "of the input"),
        symbol("u", "budget.u", "of the result"),
    ],
    range: "independent inputs, formula nearly straight within ± u_i",
    source: &card::GUM,
    locator: "5.1.2, equations 10 and 11a",
};

pub(super) const COMBINE_CORRELATED: Card = Card {
    id: "judge.combine_correlated",
    purpose: "Combined standard uncertainty of correlated inputs",
    equation: "u² = Σ_i Σ_j c_i c_j u_i u_j r_ij",
    symbols: &[
        symbol("c_i, u_i", "inputs[i]", "result per input, of the input"),
        symbol("r_ij", "correlation, row by row", "1"),
        symbol("u", "budget.u", "of the result"),
    ],
    range: "r symmetric with ones on its diagonal, −1 to 1",
    source: &card::GUM,
    locator: "5.2.2, equation 16",
};

pub(super) const PROPAGATE: Card = Card {
    id: "judge.propagate",
    purpose: "Result of a formula with its standard uncertainty, from inputs that carry theirs",
    equation: "y = f(x), c_i u_i = ½ [f(x_i + u_i) − f(x_i − u_i)], u² = Σ (c_i u_i)²",
    symbols: &[
        symbol("x_i, u_i", "inputs[i]", "of the input"),
        symbol("f", "the formula", "-"),
        symbol("y, u", "reading", "of the result"),
    ],
    range: "independent inputs; the formula must have an answer one u to either side",
    source: &card::GUM,
    locator: "5.1.3, note 2",
};

pub(super) const EFFECTIVE_FREEDOM: Card = Card {
    id: "judge.effective_freedom",
    purpose: "Effective degrees of freedom of a combined standard uncertainty (Welch-Satterthwaite)",
    equation: "ν_eff = u⁴ / Σ ((c_i u_i)⁴/ν_i)",
    symbols: &[
        symbol("ν_i", "inputs[i].freedom, infinite where u_i is taken as certain", "1"),
        symbol("c_i u_i", "contribution", "of the result"),
        symbol("u", "combined standard uncertainty", "of the result"),
    ],
    range: "independent inputs",
    source: &card::GUM,
    locator: "G.4.1, equation G.2b",
};

pub(super) const EXPAND: Card = Card {
    id: "judge.expand",
    purpose: "Expanded uncertainty and coverage interval for a stated probability",
    equation: "U = t_p(ν_eff) u; y ± U",
    symbols: &[
        symbol("y, u", "reading", "of the reading"),
        symbol("ν_eff", "freedom", "1"),
        symbol("p", "coverage", "1"),
        symbol("U", "expanded_u", "of the reading"),
    ],
    range: "0 < p < 1, ν ≥ 1; ν is used as it is, not cut to a whole number",
    source: &card::GUM,
    locator: "6.2, G.3.2",
};

/// Most inputs of one combination.
pub const MAX_INPUTS: usize = 16;

/// What one input brings to a result.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Change of the result per unit of the input.
    pub sensitivity: f64,
    /// Standard uncertainty of the input, 0 or more.
    pub u: f64,
    /// Degrees of freedom of `u`, 1 or more; infinite where `u` is taken as certain.
    pub freedom: f64,
}

impl Input {
    /// An input whose `u` is taken as certain.
    pub fn new(sensitivity: f64, u: f64) -> Result<Self> {
        Self { sensitivity, u, freedom: f64::INFINITY }.checked()
    }

    fn checked(self) -> Result<Self> {
        finite("sensitivity", self.sensitivity)?;
        within("u", self.u, 0.0, f64::MAX)?;
        if self.freedom != f64::INFINITY {
            within("freedom", self.freedom, 1.0, f64::MAX)?;
        }
        Ok(self)
    }

    fn contribution(self) -> f64 {
        self.sensitivity * self.u
    }
}

/// Uncertainty budget: the combined standard uncertainty and where it comes from. Only the first `count` entries of each
/// list are used.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Budget {
    /// Combined standard uncertainty.
    pub u: f64,
    /// Effective degrees of freedom; infinite if every input's is.
    pub freedom: f64,
    /// Change of the result per unit of each input; 0 where the input carries no uncertainty and it was not needed.
    pub sensitivity: [f64; MAX_INPUTS],
    /// c_i u_i of each input, with its sign.
    pub contribution: [f64; MAX_INPUTS],
    /// Share of each input in the variance. The shares add up to 1; with correlation one may be negative.
    pub share: [f64; MAX_INPUTS],
    /// Number of inputs.
    pub count: u32,
    /// Position of the input that contributes most: the one to measure better.
    pub largest: u32,
}

/// One used entry of a budget.
pub(super) struct Term {
    pub position: u32,
    pub sensitivity: f64,
    pub contribution: f64,
}

pub(super) fn known(budget: &Budget) -> impl Iterator<Item = Term> {
    (0..budget.count)
        .zip(budget.sensitivity)
        .zip(budget.contribution)
        .map(|((position, sensitivity), contribution)| Term { position, sensitivity, contribution })
}

/// Combined standard uncertainty of independent inputs.
///
/// u² = Σ (c_i u_i)²
///
/// * `inputs` — c_i, u_i and its degrees of freedom, 1 to [`MAX_INPUTS`]
/// * returns the budget: u, effective degrees of freedom, contributions, shares, and the largest of them
/// * errors: [`Error::Count`], [`Error::NotFinite`], [`Error::OutOfRange`]
///
/// Source: JCGM 100:2008, equations 10 and 11a; its example H.1 (end gauge, from memory): contributions of 25, 9.7, 2.9
/// and 16.6 nm give u = 32 nm.
///
/// ```
/// use trainwright::judge::{Input, combine};
/// let budget = combine(&[Input::new(1.0, 25.0)?, Input::new(1.0, 9.7)?, Input::new(1.0, 2.9)?, Input::new(1.0, 16.6)?])?;
/// assert!((budget.u - 32.0).abs() < 0.5);
/// assert_eq!(budget.largest, 0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn combine(inputs: &[Input]) -> Result<Budget> {
    budget(inputs, |i, j| if i == j { 1.0 } else { 0.0 }, effective_freedom(inputs)?)
}

/// Combined standard uncertainty of correlated inputs.
///
/// u² = Σ_i Σ_j c_i c_j u_i u_j r_ij
///
/// * `inputs` — as for [`combine`], every freedom infinite; `correlation` — r, n × n, row by row
/// * errors: those of [`combine`]; [`Error::Count`] if r is not n × n; [`Error::Inconsistent`] if r is not symmetric with
///   ones on its diagonal, or would make the variance negative; [`Error::NoAnswer`] for finite degrees of freedom, as the
///   Welch-Satterthwaite formula holds for independent inputs only
///
/// Source: JCGM 100:2008, 5.2.2, equation 16. Its example H.2 is in the tests.
pub fn combine_correlated(inputs: &[Input], correlation: &[f64]) -> Result<Budget> {
    let n = counted("inputs", inputs.len(), 1, MAX_INPUTS)?;
    counted("correlation", correlation.len(), n * n, n * n)?;
    if inputs.iter().any(|input| input.freedom != f64::INFINITY) {
        return Err(Error::NoAnswer {
            name: "freedom",
            why: "effective degrees of freedom are defined for independent inputs only; make every freedom infinite",
        });
    }
    let r = |i: usize, j: usize| correlation.get(i * n + j).copied().unwrap_or(0.0);
    for (i, j) in (0..n).flat_map(|i| (0..n).map(move |j| (i, j))) {
        within("correlation", r(i, j), -1.0, 1.0)?;
        if abs(r(i, j) - r(j, i)) > 0.0 || (i == j && r(i, j) < 1.0) {
            return Err(Error::Inconsistent {
                name: "correlation",
                why: "make it symmetric with ones on its diagonal",
            });
        }
    }
    budget(inputs, r, f64::INFINITY)
}

/// Effective degrees of freedom of the combined uncertainty of independent inputs.
///
/// ν_eff = u⁴ / Σ ((c_i u_i)⁴/ν_i)
///
/// * `inputs` — c_i, u_i and ν_i, 1 to [`MAX_INPUTS`]
/// * returns ν_eff, not cut to a whole number; infinite if every ν_i that counts is
/// * errors: [`Error::Count`], [`Error::NotFinite`], [`Error::OutOfRange`]
///
/// Source: JCGM 100:2008, G.4.1, equation G.2b; its example H.1.6 (from memory) has contributions 25, 9.7, 2.9 and
/// 16.6 nm with 18, 25.6, 50 and 2 degrees of freedom and finds 16.7.
///
/// ```
/// use trainwright::judge::{Input, effective_freedom};
/// let input = |u, freedom| Input { sensitivity: 1.0, u, freedom };
/// let freedom = effective_freedom(&[input(25.0, 18.0), input(9.7, 25.6), input(2.9, 50.0), input(16.6, 2.0)])?;
/// assert!((freedom - 16.7).abs() < 0.1);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn effective_freedom(inputs: &[Input]) -> Result<f64> {
    counted("inputs", inputs.len(), 1, MAX_INPUTS)?;
    let mut variance = 0.0;
    for input in inputs {
        let contribution = input.checked()?.contribution();
        variance += contribution * contribution;
    }
    if variance <= 0.0 {
        return Ok(f64::INFINITY);
    }
    // Shares of the variance, so that no fourth power can overflow.
    let sum: f64 = inputs
        .iter()
        .map(|input| input.contribution() * input.contribution() / variance)
        .zip(inputs)
        .map(|(share, input)| share * share / input.freedom)
        .sum();
    Ok(1.0 / sum)
}

fn counted(name: &'static str, count: usize, low: usize, high: usize) -> Result<usize> {
    let clip = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    if (low..=high).contains(&count) {
        Ok(count)
    } else {
        Err(Error::Count { name, count: clip(count), low: clip(low), high: clip(high) })
    }
}

/// The budget of checked inputs with the correlation r.
fn budget(inputs: &[Input], r: impl Fn(usize, usize) -> f64, freedom: f64) -> Result<Budget> {
    let count = counted("inputs", inputs.len(), 1, MAX_INPUTS)?;
    let mut budget = Budget {
        u: 0.0,
        freedom,
        sensitivity: [0.0; MAX_INPUTS],
        contribution: [0.0; MAX_INPUTS],
        share: [0.0; MAX_INPUTS],
        count: count as u32,
        largest: 0,
    };
    let mut scale = 0.0_f64;
    for ((input, sensitivity), contribution) in inputs.iter().zip(&mut budget.sensitivity).zip(&mut budget.contribution)
    {
        *sensitivity = input.checked()?.sensitivity;
        *contribution = finite("contribution", input.contribution())?;
        scale = scale.max(abs(*contribution));
    }
    if scale <= 0.0 {
        return Ok(budget);
    }
    // Relative to the largest contribution, so that no square can overflow.
    let mut variance = 0.0;
    for (i, (own, share)) in budget.contribution.iter().zip(&mut budget.share).enumerate().take(count) {
        let with_others: f64 =
            budget.contribution.iter().take(count).enumerate().map(|(j, other)| r(i, j) * (other / scale)).sum();
        *share = own / scale * with_others;
        variance += *share;
    }
    if variance < -1e-9 {
        return Err(Error::Inconsistent {
            name: "correlation",
            why: "these coefficients contradict one another: they make the variance negative",
        });
    }
    let variance = variance.max(0.0);
    budget.u = finite("u", scale * sqrt(variance))?;
    let mut most = 0.0;
    for ((position, contribution), share) in (0..).zip(budget.contribution).zip(&mut budget.share) {
        if variance > 0.0 {
            *share /= variance;
        }
        if abs(contribution) > most {
            (most, budget.largest) = (abs(contribution), position);
        }
    }
    Ok(budget)
}

/// A propagated result and its uncertainty budget.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Propagated {
    /// Result with its combined standard uncertainty.
    pub reading: Reading,
    /// Where the uncertainty comes from.
    pub budget: Budget,
}

/// Carries independent readings through a formula.
///
/// c_i u_i = ½ [f(x_i + u_i) − f(x_i − u_i)], u² = Σ (c_i u_i)²
///
/// * `inputs` — x_i and u_i, 1 to [`MAX_INPUTS`]; `formula` — f, which must have an answer one u to either side
/// * returns f(x) with its u, and the budget
/// * errors: those of the formula; [`Error::Count`], [`Error::NotFinite`], [`Error::OutOfRange`]
///
/// Source: JCGM 100:2008, 5.1.3, note 2. Example: a shaft of 43.988 mm in a bore of 44.407 mm.
///
/// ```
/// use trainwright::judge::{Reading, propagate};
/// let journal_mm = Reading::new(43.988, 0.0016)?;
/// let bore_mm = Reading::new(44.407, 0.0042)?;
/// let clearance = propagate([journal_mm, bore_mm], |[journal, bore]| Ok(bore - journal))?;
/// assert!((clearance.reading.value - 0.419).abs() < 1e-12);
/// assert!((clearance.reading.u - 0.0045).abs() < 5e-5);
/// assert_eq!(clearance.budget.largest, 1); // the bore is the one to measure better
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn propagate<const N: usize>(
    inputs: [Reading; N],
    formula: impl Fn([f64; N]) -> Result<f64>,
) -> Result<Propagated> {
    let fallback = inputs.map(|input| input.value);
    propagate_list(&inputs, |values| formula(<[f64; N]>::try_from(values).unwrap_or(fallback)))
}

/// As [`propagate`], for a number of inputs known only at run time.
pub fn propagate_list(inputs: &[Reading], mut formula: impl FnMut(&[f64]) -> Result<f64>) -> Result<Propagated> {
    let count = counted("inputs", inputs.len(), 1, MAX_INPUTS)?;
    let mut values = [0.0; MAX_INPUTS];
    let mut terms = [Input { sensitivity: 0.0, u: 0.0, freedom: f64::INFINITY }; MAX_INPUTS];
    for (value, input) in values.iter_mut().zip(inputs) {
        *value = Reading::new(input.value, input.u)?.value;
    }
    let mut at = |position: usize, x: f64| {
        let mut moved = values;
        if let Some(own) = moved.get_mut(position) {
            *own = x;
        }
        formula(moved.get(..count).unwrap_or_default())
    };
    let value = finite("result", at(MAX_INPUTS, 0.0)?)?;
    for (position, (term, input)) in terms.iter_mut().zip(inputs).enumerate().filter(|(_, (_, input))| input.u > 0.0) {
        // Below this step the rounding of x ± u would show in the sensitivity; a formula is straight over so little.
        let step = input.u.max(1e-8 * abs(input.value));
        let (above, below) = (input.value + step, input.value - step);
        let sensitivity = (at(position, above)? - at(position, below)?) / (above - below);
        *term = Input { sensitivity, u: input.u, freedom: f64::INFINITY };
    }
    let budget = combine(terms.get(..count).unwrap_or_default())?;
    Ok(Propagated { reading: Reading::new(value, budget.u)?, budget })
}

/// An expanded uncertainty and the interval it gives.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expanded {
    /// Value and standard uncertainty.
    pub reading: Reading,
    /// Stated probability of the interval.
    pub coverage: f64,
    /// Degrees of freedom.
    pub freedom: f64,
    /// Coverage factor.
    pub k: f64,
    /// Half width of the interval, k · u.
    pub expanded_u: f64,
    /// Lower end of the interval.
    pub lower: f64,
    /// Upper end of the interval.
    pub upper: f64,
}

/// Expanded uncertainty and coverage interval for a stated probability.
///
/// U = t_p(ν_eff) · u; y ± U
///
/// * `reading` — y and u; `freedom` — ν_eff, 1 or more, infinite where u is taken as certain; `coverage` — p, 0 to 1
/// * errors: [`Error::NotFinite`], [`Error::OutOfRange`]
///
/// Source: JCGM 100:2008, 6.2 and G.3.2; its example H.1 (from memory): u = 32 nm with 16 degrees of freedom is
/// U = 93 nm at 99 %.
///
/// ```
/// use trainwright::judge::{Reading, expand};
/// let length_nm = expand(Reading::new(50_000_838.0, 32.0)?, 16.0, 0.99)?;
/// assert!((length_nm.expanded_u - 93.0).abs() < 0.5);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn expand(reading: Reading, freedom: f64, coverage: f64) -> Result<Expanded> {
    let reading = Reading::new(reading.value, reading.u)?;
    let k = coverage_factor(coverage, freedom)?;
    let expanded_u = k * reading.u;
    let (lower, upper) = (reading.value - expanded_u, reading.value + expanded_u);
    Ok(Expanded { reading, coverage, freedom, k, expanded_u, lower, upper })
}
