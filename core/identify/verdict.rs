//! The verdict: one variant, mixed, or not settled.

use core::fmt;

use super::origin::PartFinding;
use super::weigh::Weighed;
use crate::card::{self, Card, symbol};
use crate::error::{Result, finite, within};
use crate::judge::Rule;

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
/// * `weighed` — as [`Evidence::weigh`](super::Evidence::weigh) gives it; `parts` — findings of the parts that were looked at
/// * `rule` — with stated chances, [`Rule::stated_chances`] or [`Rule::conformance`]
/// * errors: [`Error::OutOfRange`](crate::Error::OutOfRange) for a rule without stated chances,
///   [`Error::NotFinite`](crate::Error::NotFinite) for a chance that is no number
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
