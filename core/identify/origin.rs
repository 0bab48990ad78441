//! Origin of a part: which variant it came from.

use super::evidence::{Evidence, Split, greatest};
use super::weigh::VariantFinding;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, within};
use crate::real::exp;

pub(super) const PART: Card = Card {
    id: "identify.part",
    purpose: "Which variant a part came from, and the chance that it was exchanged or is foreign to its unit",
    equation: "L_k(v) = (1 − s_k) a_k(v) + s_k m_k, m_k = Σ_w P(w) a_k(w); kept(v) = (1 − s_k) a_k(v)/L_k(v); \
               P(k from w) = P(w|E) kept(w) + (P(w) a_k(w)/m_k) Σ_v P(v|E) (1 − kept(v))",
    symbols: &[
        symbol("P(k from w)", "origin.chance", "1"),
        symbol("kept(v)", "origin.kept", "1"),
        symbol("P(w) a_k(w)/m_k", "origin.if_exchanged", "1"),
        symbol("Σ_v P(v|E) (1 − kept(v))", "exchanged", "1"),
        symbol("a_k(v)", "exp of ln_likelihood, of the looks on part k", "1, or 1/mm for each size"),
        symbol("s_k", "chance of exchange of part k before any look", "1"),
    ],
    range: "as identify.weigh; an exchanged part of the same variant is not foreign",
    source: &card::BAYES,
    locator: "1.3, Bayes' rule, over variant and exchange of each part",
};

/// What the evidence says of a variant as the origin of one part.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Origin {
    /// Chance that the part came from this variant.
    pub chance: f64,
    /// Chance that the part was not exchanged, if the unit is this variant.
    pub kept: f64,
    /// Chance that the part came from this variant, if it was exchanged.
    pub if_exchanged: f64,
}

impl Origin {
    /// To be filled in.
    pub const NONE: Self = Self { chance: 0.0, kept: 0.0, if_exchanged: 0.0 };
}

/// What the evidence says of one part.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartFinding {
    /// Place of the variant that the part most likely came from; the first of equals.
    pub origin: u32,
    /// Chance of that origin.
    pub chance: f64,
    /// Chance that the part was exchanged at some time.
    pub exchanged: f64,
    /// The same, if the unit is the likeliest variant.
    pub exchanged_if_best: f64,
    /// Chance that the part came from another variant than the unit: what an order must heed.
    pub foreign: f64,
    /// Logarithm of how much better its looks fit the variant that suits them best than the likeliest variant of the unit.
    pub ln_conflict: f64,
}

impl Evidence<'_> {
    /// Where a part came from.
    ///
    /// P(k from w) = P(w|E) kept(w) + (P(w) a_k(w)/m_k) Σ_v P(v|E) (1 − kept(v))
    ///
    /// * `variants` — as [`Evidence::weigh`] filled them in; `part` — place of the part
    /// * `origins` — as many as variants; on failure they stay as they were
    /// * returns [`PartFinding`]
    /// * errors: as [`Evidence::weigh`]; [`Error::OutOfRange`] for a part that is not there
    ///
    /// Source: Bayes' rule over variant and exchange. Example: a part that cannot have been exchanged came from the unit.
    ///
    /// ```
    /// use trainwright::identify::{Evidence, Origin, VariantFinding, add_seen};
    /// let mut ln_likelihood = [0.0; 2];
    /// add_seen(&[0.2, 0.8], true, &mut ln_likelihood)?;
    /// let evidence = Evidence { prior: &[0.5, 0.5], exchanged: &[0.0], ln_likelihood: &ln_likelihood, unexplained: 0 };
    /// let (mut variants, mut origins) = ([VariantFinding::NONE; 2], [Origin::NONE; 2]);
    /// evidence.weigh(&mut variants)?;
    /// let part = evidence.part(&variants, 0, &mut origins)?;
    /// assert_eq!((part.origin, part.exchanged, part.foreign), (1, 0.0, 0.0));
    /// assert!((origins[1].chance - variants[1].chance).abs() < 1e-15);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn part(&self, variants: &[VariantFinding], part: usize, origins: &mut [Origin]) -> Result<PartFinding> {
        let parts = self.checked()?;
        let wanted = self.prior.len() as u32;
        for (name, count) in [("variants", variants.len() as u32), ("origins", origins.len() as u32)] {
            if count != wanted {
                return Err(Error::Count { name, count, low: wanted, high: wanted });
            }
        }
        for finding in variants {
            within("variants.chance", finding.chance, 0.0, 1.0)?;
        }
        let Some(&exchanged_before) = self.exchanged.get(part) else {
            return Err(Error::OutOfRange { name: "part", value: part as f64, low: 0.0, high: parts as f64 - 1.0 });
        };
        let row = self.row(part);
        let scale = self.scale(exchanged_before, row)?;
        let mut exchanged = 0.0;
        for (((origin, finding), &prior), &number) in origins.iter_mut().zip(variants).zip(self.prior).zip(row) {
            let Split { ln_kept, ln_sum } = scale.split(number);
            // A variant that its own part excludes has no chance, and nothing depends on how it is divided.
            let excluded = ln_sum == f64::NEG_INFINITY;
            let kept = if excluded { 0.0 } else { exp(ln_kept - ln_sum) };
            exchanged += if excluded { 0.0 } else { finding.chance * exp(scale.ln_exchanged - ln_sum) };
            let if_exchanged = if prior > 0.0 { prior * exp(number - scale.ln_most) / scale.mean } else { 0.0 };
            *origin = Origin { chance: finding.chance * kept, kept, if_exchanged };
        }
        let mut foreign = 0.0;
        for (origin, finding) in origins.iter_mut().zip(variants) {
            origin.chance = (origin.chance + exchanged * origin.if_exchanged).min(1.0);
            foreign += finding.chance * (1.0 - origin.kept) * (1.0 - origin.if_exchanged);
        }
        let (origin, chance) = greatest(origins.iter().map(|origin| origin.chance));
        let (best, _) = greatest(variants.iter().map(|finding| finding.chance));
        let at_best = |kept: Option<f64>| kept.unwrap_or(0.0);
        Ok(PartFinding {
            origin,
            chance,
            exchanged,
            exchanged_if_best: 1.0 - at_best(origins.get(best as usize).map(|origin| origin.kept)),
            foreign,
            ln_conflict: (scale.ln_most - at_best(row.get(best as usize).copied())).max(0.0),
        })
    }
}
