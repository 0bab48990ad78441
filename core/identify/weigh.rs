//! Weighing: chance of each variant.

use super::evidence::{Evidence, greatest};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::real::{exp, ln, ln_1p};

pub(super) const WEIGH: Card = Card {
    id: "identify.weigh",
    purpose: "Chance of each variant from marks and sizes, where any part may come from another unit and brings all its marks along",
    equation: "P(v|E) ∝ P(v) Π_k [(1 − s_k) Π_e P(e|v) + s_k Σ_w P(w) Π_e P(e|w)]",
    symbols: &[
        symbol("P(v|E)", "chance", "1"),
        symbol("P(v), P(w)", "prior", "1"),
        symbol("s_k", "exchanged, of part k", "1"),
        symbol("Π_e P(e|v)", "exp of ln_likelihood, of the looks on part k", "1, or 1/mm for each size"),
    ],
    range: "looks on one part are independent given where it came from; an exchanged part comes from a unit of the prior",
    source: &card::BAYES,
    locator: "1.3, Bayes' rule, over variant and exchange of each part",
};

/// What the evidence says of a variant.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VariantFinding {
    /// Chance that the unit is this variant.
    pub chance: f64,
    /// Chance that it is this variant, and that no part which was looked at came from another one.
    pub chance_unmixed: f64,
    /// Logarithm of the likelihood of all looks in this variant, if no part was exchanged.
    pub ln_unmixed: f64,
}

impl VariantFinding {
    /// To be filled in.
    pub const NONE: Self = Self { chance: 0.0, chance_unmixed: 0.0, ln_unmixed: 0.0 };
}

/// The evidence as a whole.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighed {
    /// Readings that no variant explains, as given.
    pub unexplained: u32,
    /// Place of the likeliest variant; the first of equals.
    pub best: u32,
    /// Place of the variant under which the looks are likeliest if nothing was exchanged.
    pub single: u32,
    /// Chance of the likeliest variant.
    pub chance: f64,
    /// Chance that at least one part that was looked at came from another variant than the unit.
    pub chance_mixed: f64,
    /// What is not known yet about the variant, bits.
    pub entropy_bits: f64,
    /// Logarithm of the likelihood of all looks over every variant and exchange: of two records, the greater fits the unit better.
    pub ln_evidence: f64,
    /// Logarithm of the likelihood of all looks in the best single variant, nothing exchanged.
    pub ln_single: f64,
    /// Logarithm of the likelihood of all looks where each part may come from the variant that fits it best.
    pub ln_by_part: f64,
    /// `ln_by_part` less `ln_single`, 0 or more: how strongly the parts contradict one another.
    pub ln_gap: f64,
}

impl Evidence<'_> {
    /// Chance of each variant.
    ///
    /// P(v|E) ∝ P(v) Π_k [(1 − s_k) Π_e P(e|v) + s_k Σ_w P(w) Π_e P(e|w)]
    ///
    /// * `variants` — as many as the prior; on failure they stay as they were
    /// * returns [`Weighed`]
    /// * errors: [`Error::Inconsistent`] for a prior that does not sum to 1, [`Error::OutOfRange`] for a chance,
    ///   [`Error::Count`] for lists that do not go together, [`Error::NoAnswer`] where the looks exclude every variant
    ///
    /// Source: Bayes' rule, as in Gelman and others, Bayesian Data Analysis, 1.3 (from memory). Example: its 1.4, a carrier of
    /// a hereditary disease with a prior chance of 1/2 and two sons who are not affected: 1/5.
    ///
    /// ```
    /// use trainwright::identify::{Evidence, VariantFinding, add_seen};
    /// let mut ln_likelihood = [0.0; 2];
    /// for _son in 0..2 {
    ///     add_seen(&[0.5, 1.0], true, &mut ln_likelihood)?; // unaffected: 1/2 from a carrier, 1 from another
    /// }
    /// let mut variants = [VariantFinding::NONE; 2];
    /// let evidence = Evidence { prior: &[0.5, 0.5], exchanged: &[0.0], ln_likelihood: &ln_likelihood, unexplained: 0 };
    /// evidence.weigh(&mut variants)?;
    /// assert!((variants[0].chance - 0.2).abs() < 1e-15);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn weigh(&self, variants: &mut [VariantFinding]) -> Result<Weighed> {
        self.checked()?;
        let (count, wanted) = (variants.len() as u32, self.prior.len() as u32);
        if count != wanted {
            return Err(Error::Count { name: "variants", count, low: wanted, high: wanted });
        }
        for (_, row) in self.looked_at() {
            self.ln_most(row)?;
        }
        if !self.leaves_a_variant() {
            return Err(Error::NoAnswer {
                name: "evidence",
                why: "no variant explains all looks together, and the parts that contradict one another are taken as never \
                      exchanged; look again, or give them a chance of exchange",
            });
        }
        for (finding, &prior) in variants.iter_mut().zip(self.prior) {
            *finding = VariantFinding { chance: ln(prior), chance_unmixed: ln(prior), ln_unmixed: 0.0 };
        }
        let mut ln_by_part = 0.0;
        for (exchanged, row) in self.looked_at() {
            let scale = self.scale(exchanged, row)?;
            ln_by_part += scale.ln_most;
            for ((finding, &prior), &number) in variants.iter_mut().zip(self.prior).zip(row) {
                finding.chance += scale.split(number).ln_sum;
                finding.chance_unmixed += ln_1p(-exchanged * (1.0 - prior)) + (number - scale.ln_most);
                finding.ln_unmixed += number;
            }
        }
        let most = variants.iter().map(|finding| finding.chance).fold(f64::NEG_INFINITY, f64::max);
        let sum: f64 = variants.iter().map(|finding| exp(finding.chance - most)).sum();
        let (mut entropy_nats, mut unmixed) = (0.0, 0.0);
        for finding in variants.iter_mut() {
            finding.chance = exp(finding.chance - most) / sum;
            finding.chance_unmixed = exp(finding.chance_unmixed - most) / sum;
            unmixed += finding.chance_unmixed;
            entropy_nats -= if finding.chance > 0.0 { finding.chance * ln(finding.chance) } else { 0.0 };
        }
        let (best, chance) = greatest(variants.iter().map(|finding| finding.chance));
        let possible = variants.iter().zip(self.prior);
        let (single, ln_single) = greatest(
            possible.map(|(finding, &prior)| if prior > 0.0 { finding.ln_unmixed } else { f64::NEG_INFINITY }),
        );
        Ok(Weighed {
            unexplained: self.unexplained,
            best,
            single,
            chance,
            chance_mixed: (1.0 - unmixed).max(0.0),
            entropy_bits: entropy_nats.max(0.0) / core::f64::consts::LN_2,
            ln_evidence: ln_by_part + most + ln(sum),
            ln_single,
            ln_by_part,
            ln_gap: (ln_by_part - ln_single).max(0.0),
        })
    }
}
