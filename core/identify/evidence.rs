//! Weighing: chance of each variant, origin of each part, and the verdict.

use core::fmt;

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, within};
use crate::judge::Rule;
use crate::real::{abs, exp, ln, ln_1p};

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

pub(super) const CONCLUDE: Card = Card {
    id: "identify.conclude",
    purpose: "One variant, mixed, or not settled, under a rule with stated chances",
    equation: "settled: max P(v|E) ≥ p_go; mixed: settled, and P(foreign) ≥ p_go of a part; one variant: settled, and P(foreign) ≤ p_no_go of every part",
    symbols: &[
        symbol("P(v|E)", "weighed.chance", "1"),
        symbol("P(foreign)", "part.foreign", "1"),
        symbol("p_go, p_no_go", "rule.go, rule.no_go", "1"),
    ],
    range: "only parts that were looked at; a reading that no variant explains leaves the unit unexplained",
    source: &card::DEFINITION,
    locator: "the stated chances of the decision rule, on posterior chances",
};

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

/// What is known about a unit.
#[derive(Clone, Copy, Debug)]
pub struct Evidence<'a> {
    /// Chance of each variant before anything is looked at; they sum to 1.
    pub prior: &'a [f64],
    /// For each part, the chance that it came from another unit, before anything is looked at.
    pub exchanged: &'a [f64],
    /// For each part, a row of as many numbers as variants: the logarithm of the likelihood of its looks, 0 without one.
    pub ln_likelihood: &'a [f64],
    /// How many readings are NO-GO against the limits of every variant; [`conclude`] then settles nothing.
    pub unexplained: u32,
}

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

/// What the evidence comes to.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Neither is proven: look further.
    NotSettled = 0,
    /// One variant, and every part that was looked at belongs to it.
    OneVariant = 1,
    /// One variant, with at least one part of another.
    Mixed = 2,
    /// A reading fits no variant: measure again before anything is concluded.
    Unexplained = 3,
}

impl fmt::Display for Outcome {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::NotSettled => "not settled",
            Self::OneVariant => "one variant",
            Self::Mixed => "mixed",
            Self::Unexplained => "unexplained",
        })
    }
}

/// The verdict and what it rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conclusion {
    /// Rule that it was reached under.
    pub rule: Rule,
    /// Parts that are foreign to the unit under the rule.
    pub foreign_parts: u32,
    /// Parts of which the rule proves neither that they are foreign nor that they are not.
    pub open_parts: u32,
    /// One variant, mixed, not settled or unexplained.
    pub outcome: Outcome,
    /// Whether one variant reaches the rule's chance.
    pub variant_settled: bool,
}

/// Scale of the row of a part: the greatest logarithm among variants that are possible, and the mean likelihood over the prior
/// relative to it.
struct Scale {
    ln_most: f64,
    mean: f64,
    /// ln (1 − s).
    ln_kept: f64,
    /// ln (s · mean).
    ln_exchanged: f64,
}

/// Parts of ln L_k(v) relative to the scale: not exchanged, and the sum with the exchanged one.
struct Split {
    ln_kept: f64,
    ln_sum: f64,
}

impl Scale {
    fn split(&self, ln_likelihood: f64) -> Split {
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
    fn checked(&self) -> Result<usize> {
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
    fn row(&self, part: usize) -> &'a [f64] {
        let variants = self.prior.len();
        self.ln_likelihood.get(part * variants..).and_then(|rest| rest.get(..variants)).unwrap_or_default()
    }

    /// Rows with their chance of exchange, without the parts that nobody looked at.
    fn looked_at(&self) -> impl Iterator<Item = (f64, &'a [f64])> + '_ {
        let rows = self.exchanged.iter().enumerate().map(|(part, &exchanged)| (exchanged, self.row(part)));
        rows.filter(|(_, row)| row.iter().any(|number| abs(*number) > 0.0))
    }

    /// Likelihoods in the variants that are possible.
    fn possible(&self, row: &'a [f64]) -> impl Iterator<Item = (f64, f64)> {
        self.prior.iter().copied().zip(row.iter().copied()).filter(|(prior, _)| *prior > 0.0)
    }

    /// The greatest of them.
    fn ln_most(&self, row: &'a [f64]) -> Result<f64> {
        let ln_most = self.possible(row).map(|(_, number)| number).fold(f64::NEG_INFINITY, f64::max);
        if ln_most == f64::NEG_INFINITY {
            return Err(Error::NoAnswer {
                name: "evidence",
                why: "no variant explains the looks on one of the parts; look again, or leave the doubtful look out",
            });
        }
        Ok(ln_most)
    }

    fn scale(&self, exchanged: f64, row: &'a [f64]) -> Result<Scale> {
        let ln_most = self.ln_most(row)?;
        let mean = self.possible(row).map(|(prior, number)| prior * exp(number - ln_most)).sum();
        Ok(Scale { ln_most, mean, ln_kept: ln_1p(-exchanged), ln_exchanged: ln(exchanged) + ln(mean) })
    }

    /// Whether the looks leave any variant: only a part that cannot have been exchanged excludes one for certain.
    fn leaves_a_variant(&self) -> bool {
        let excludes = |variant: usize| {
            self.looked_at().any(|(exchanged, row)| exchanged <= 0.0 && row.get(variant) == Some(&f64::NEG_INFINITY))
        };
        self.prior.iter().enumerate().any(|(variant, &prior)| prior > 0.0 && !excludes(variant))
    }

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

/// Place and value of the greatest; the first of equals.
fn greatest(values: impl Iterator<Item = f64>) -> (u32, f64) {
    (0..).zip(values).fold(
        (0, f64::NEG_INFINITY),
        |found, (place, value)| {
            if value > found.1 { (place, value) } else { found }
        },
    )
}

/// The least chance that settles, and the greatest that refutes, of a rule that states them.
pub(super) fn stated(rule: Rule) -> Result<(f64, f64)> {
    let Rule { go, no_go, .. } = Rule::stated_chances(rule.go, rule.no_go)?;
    Ok((go, no_go))
}

/// One variant, mixed, or not settled.
///
/// settled: max P(v|E) ≥ p_go; mixed: settled, and P(foreign) ≥ p_go of a part; one variant: settled, and
/// P(foreign) ≤ p_no_go of every part
///
/// * `weighed` — as [`Evidence::weigh`] gives it; `parts` — findings of the parts that were looked at
/// * `rule` — with stated chances, [`Rule::stated_chances`] or [`Rule::conformance`]
/// * errors: [`Error::OutOfRange`] for a rule without stated chances, [`Error::NotFinite`] for a chance that is no number
///
/// Source: follows from the definitions; the chances are the user's.
pub fn conclude(weighed: &Weighed, parts: &[PartFinding], rule: Rule) -> Result<Conclusion> {
    let (go, no_go) = stated(rule)?;
    let variant_settled = within("weighed.chance", weighed.chance, 0.0, 1.0)? >= go;
    let (mut foreign_parts, mut open_parts) = (0, 0);
    for part in parts {
        let foreign = finite("part.foreign", part.foreign)?;
        if foreign >= go {
            foreign_parts += 1;
        } else if foreign > no_go {
            open_parts += 1;
        }
    }
    let outcome = if weighed.unexplained > 0 {
        Outcome::Unexplained
    } else if variant_settled && foreign_parts > 0 {
        Outcome::Mixed
    } else if variant_settled && open_parts == 0 {
        Outcome::OneVariant
    } else {
        Outcome::NotSettled
    };
    Ok(Conclusion { rule, foreign_parts, open_parts, outcome, variant_settled })
}
