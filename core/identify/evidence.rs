//! What is known about a unit, and the likelihood of the looks on each part, whether it was exchanged or not.

use crate::error::{Error, Result, within};
use crate::real::{abs, exp, ln, ln_1p};

/// What is known about a unit.
#[derive(Clone, Copy, Debug)]
pub struct Evidence<'a> {
    /// Chance of each variant before anything is looked at; they sum to 1.
    pub prior: &'a [f64],
    /// For each part, the chance that it came from another unit, before anything is looked at.
    pub exchanged: &'a [f64],
    /// For each part, a row of as many numbers as variants: the logarithm of the likelihood of its looks, 0 without one.
    pub ln_likelihood: &'a [f64],
    /// How many readings are NO-GO against the limits of every variant; [`conclude`](super::conclude) then settles nothing.
    pub unexplained: u32,
}

/// Scale of the row of a part: the greatest logarithm among variants that are possible, and the mean likelihood over the prior
/// relative to it.
pub(super) struct Scale {
    pub(super) ln_most: f64,
    pub(super) mean: f64,
    /// ln (1 − s).
    ln_kept: f64,
    /// ln (s · mean).
    pub(super) ln_exchanged: f64,
}

/// Parts of ln L_k(v) relative to the scale: not exchanged, and the sum with the exchanged one.
pub(super) struct Split {
    pub(super) ln_kept: f64,
    pub(super) ln_sum: f64,
}

impl Scale {
    pub(super) fn split(&self, ln_likelihood: f64) -> Split {
        let ln_kept = self.ln_kept + (ln_likelihood - self.ln_most);
        Split { ln_kept, ln_sum: ln_add(ln_kept, self.ln_exchanged) }
    }
}

/// ln(eᵃ + eᵇ).
fn ln_add(a: f64, b: f64) -> f64 {
    let (low, high) = if a < b { (a, b) } else { (b, a) };
    if low == f64::NEG_INFINITY { high } else { high + ln_1p(exp(low - high)) }
}

impl<'a> Evidence<'a> {
    /// Number of parts, after checking every list.
    pub(super) fn checked(&self) -> Result<usize> {
        let (variants, parts) = (self.prior.len(), self.exchanged.len());
        let mut sum = 0.0;
        for &chance in self.prior {
            sum += within("prior", chance, 0.0, 1.0)?;
        }
        if abs(sum - 1.0) > 1e-9 {
            return Err(Error::Inconsistent {
                name: "prior",
                why: "the chances of the variants do not sum to 1; correct one of them",
            });
        }
        for &exchanged in self.exchanged {
            within("exchanged", exchanged, 0.0, 1.0)?;
        }
        let (count, wanted) = (self.ln_likelihood.len() as u32, variants.saturating_mul(parts) as u32);
        if count != wanted {
            return Err(Error::Count { name: "ln_likelihood", count, low: wanted, high: wanted });
        }
        match self.ln_likelihood.iter().find(|number| number.is_nan() || **number == f64::INFINITY) {
            Some(&value) => Err(Error::NotFinite { name: "ln_likelihood", value }),
            None => Ok(parts),
        }
    }

    /// The row of a part.
    pub(super) fn row(&self, part: usize) -> &'a [f64] {
        let variants = self.prior.len();
        self.ln_likelihood.get(part * variants..).and_then(|rest| rest.get(..variants)).unwrap_or_default()
    }

    /// Rows with their chance of exchange, without the parts that nobody looked at.
    pub(super) fn looked_at(&self) -> impl Iterator<Item = (f64, &'a [f64])> + '_ {
        let rows = self.exchanged.iter().enumerate().map(|(part, &exchanged)| (exchanged, self.row(part)));
        rows.filter(|(_, row)| row.iter().any(|number| abs(*number) > 0.0))
    }

    /// Likelihoods in the variants that are possible.
    fn possible(&self, row: &'a [f64]) -> impl Iterator<Item = (f64, f64)> {
        self.prior.iter().copied().zip(row.iter().copied()).filter(|(prior, _)| *prior > 0.0)
    }

    /// The greatest of them.
    pub(super) fn ln_most(&self, row: &'a [f64]) -> Result<f64> {
        let ln_most = self.possible(row).map(|(_, number)| number).fold(f64::NEG_INFINITY, f64::max);
        if ln_most == f64::NEG_INFINITY {
            return Err(Error::NoAnswer {
                name: "evidence",
                why: "no variant explains the looks on one of the parts; look again, or leave the doubtful look out",
            });
        }
        Ok(ln_most)
    }

    pub(super) fn scale(&self, exchanged: f64, row: &'a [f64]) -> Result<Scale> {
        let ln_most = self.ln_most(row)?;
        let mean = self.possible(row).map(|(prior, number)| prior * exp(number - ln_most)).sum();
        Ok(Scale { ln_most, mean, ln_kept: ln_1p(-exchanged), ln_exchanged: ln(exchanged) + ln(mean) })
    }

    /// Whether the looks leave any variant: only a part that cannot have been exchanged excludes one for certain.
    pub(super) fn leaves_a_variant(&self) -> bool {
        let excludes = |variant: usize| {
            self.looked_at().any(|(exchanged, row)| exchanged <= 0.0 && row.get(variant) == Some(&f64::NEG_INFINITY))
        };
        self.prior.iter().enumerate().any(|(variant, &prior)| prior > 0.0 && !excludes(variant))
    }
}

/// Place and value of the greatest; the first of equals.
pub(super) fn greatest(values: impl Iterator<Item = f64>) -> (u32, f64) {
    (0..).zip(values).fold(
        (0, f64::NEG_INFINITY),
        |found, (place, value)| {
            if value > found.1 { (place, value) } else { found }
        },
    )
}
