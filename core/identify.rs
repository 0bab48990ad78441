//! Which variant is on the bench: weighing marks and sizes, part by part, and what to look at next.
//!
//! What is known about a unit is an [`Evidence`]: the prior chance of each variant, for each part the chance that an earlier
//! rebuild exchanged it, and for each part a row with the logarithm of the likelihood of its looks in each variant. A row
//! begins with zeros; [`add_seen`] adds a mark that is there or not, [`add_measured`] a size. A part that nobody looked at
//! keeps its zeros: "not looked at" is not "absent".
//!
//! [`Evidence::weigh`] gives the chance of each variant, [`Evidence::part`] where each part came from, [`conclude`] the
//! verdict, [`Standing::mark_worth`] and [`Standing::size_worth`] what a further look would tell.
//!
//! ```
//! use trainwright::identify::{Evidence, Origin, Outcome, VariantFinding, add_measured, add_seen, conclude};
//! use trainwright::judge::{Limits, Reading, Rule};
//! let mut ln_likelihood = [0.0; 2 * 2]; // two parts, two variants: early and late
//! let (case, shaft) = ln_likelihood.split_at_mut(2);
//! add_seen(&[0.0, 0.97], true, case)?; // a mark that no early unit has, and 97 % of the late ones
//! let journal_mm = [Limits::between(43.975, 44.000)?, Limits::between(44.325, 44.350)?];
//! add_measured(&journal_mm, Reading::new(43.988, 0.0016)?, shaft)?;
//!
//! let evidence =
//!     Evidence { prior: &[0.5, 0.5], exchanged: &[0.04, 0.06], ln_likelihood: &ln_likelihood, unexplained: 0 };
//! let mut variants = [VariantFinding::NONE; 2];
//! let weighed = evidence.weigh(&mut variants)?;
//! let mut origins = [Origin::NONE; 2];
//! let shaft = evidence.part(&variants, 1, &mut origins)?;
//! assert_eq!((shaft.origin, shaft.chance > 0.999), (0, true)); // the shaft is early
//! let case = evidence.part(&variants, 0, &mut origins)?;
//! let conclusion = conclude(&weighed, &[case, shaft], Rule::conformance(0.95)?)?;
//! assert_eq!(conclusion.outcome, Outcome::NotSettled); // the mark says late, the shaft early: one of the two is foreign
//! assert!(weighed.chance_mixed > 0.999);
//! # Ok::<(), trainwright::Error>(())
//! ```

mod evidence;
mod likelihood;
mod origin;
mod prior;
mod verdict;
mod weigh;
mod worth;

pub use evidence::Evidence;
pub use likelihood::{Nearest, add_measured, add_seen, ln_density};
pub use origin::{Origin, PartFinding};
pub use prior::prior_of_counts;
pub use verdict::{Conclusion, Outcome, conclude};
pub use weigh::{VariantFinding, Weighed};
pub use worth::{Standing, Worth};

use crate::card::Card;

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[
    prior::PRIOR_OF_COUNTS,
    likelihood::LN_DENSITY,
    weigh::WEIGH,
    origin::PART,
    verdict::CONCLUDE,
    worth::MARK_WORTH,
    worth::SIZE_WORTH,
];
