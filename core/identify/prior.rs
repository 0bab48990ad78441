//! Prior chance of each variant from the shop's own counts.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};

pub(super) const PRIOR_OF_COUNTS: Card = Card {
    id: "identify.prior_of_counts",
    purpose: "Prior chance of each variant from how many of each came into the shop",
    equation: "P(v) = (n_v + 1)/(N + V)",
    symbols: &[
        symbol("P(v)", "prior", "1"),
        symbol("n_v", "counts", "1"),
        symbol("N", "sum of the counts", "1"),
        symbol("V", "number of variants", "1"),
    ],
    range: "units that come in are alike over time; a variant that was never seen keeps a chance",
    source: &card::BAYES,
    locator: "2.1 and 3.4, mean of the posterior of shares with a uniform prior (Laplace's rule of succession)",
};

/// Prior chance of each variant from the shop's own counts.
///
/// P(v) = (n_v + 1)/(N + V)
///
/// * `counts` — n_v, how many units of each variant came in; `prior` — as long, on failure it stays as it was
/// * errors: [`Error::Count`] for lists of different length or without a variant
///
/// Source: Laplace's rule of succession; Gelman and others, Bayesian Data Analysis, 2.1 and 3.4 (from memory). Example: 12
/// units of the first variant, 30 of the second and none of the third.
///
/// ```
/// let mut prior = [0.0; 3];
/// trainwright::identify::prior_of_counts(&[12, 30, 0], &mut prior)?;
/// assert_eq!(prior, [13.0 / 45.0, 31.0 / 45.0, 1.0 / 45.0]);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn prior_of_counts(counts: &[u32], prior: &mut [f64]) -> Result<()> {
    let (count, wanted) = (counts.len() as u32, prior.len() as u32);
    if count != wanted || count == 0 {
        return Err(Error::Count { name: "counts", count, low: wanted.max(1), high: wanted.max(1) });
    }
    let sum: f64 = counts.iter().map(|&count| f64::from(count)).sum();
    for (prior, &count) in prior.iter_mut().zip(counts) {
        *prior = (f64::from(count) + 1.0) / (sum + f64::from(wanted));
    }
    Ok(())
}
