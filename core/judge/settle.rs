//! Which input, measured better, would settle a judgment.

use super::decision::{Judgment, Verdict};
use super::propagation::{Budget, Term, known};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::real::sqrt;

pub(super) const SETTLE: Card = Card {
    id: "judge.settle",
    purpose: "The one input whose better measurement would decide the reading, and how good it must be",
    equation: "c u_i' = √(u_d² − u² + (c u_i)²)",
    symbols: &[
        symbol("u", "reading.u", "of the reading"),
        symbol("u_d", "judgment.u_to_decide", "of the reading"),
        symbol("c u_i", "largest contribution", "of the reading"),
        symbol("u_i'", "u_needed", "of the input"),
    ],
    range: "independent inputs; the value stays what it is",
    source: &card::DEFINITION,
    locator: "root sum of squares, solved for one input",
};

/// The one further measurement that would settle a judgment.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settlement {
    /// Position of the input to measure better: the largest contribution.
    pub input: u32,
    /// Whether measuring this input alone can decide the case. It is true when the case is decided already.
    pub enough: bool,
    /// Standard uncertainty of that input now, in its own unit.
    pub u_now: f64,
    /// Standard uncertainty that would do, in its own unit; 0 when even a perfect measurement would not.
    pub u_needed: f64,
}

/// Names the one input whose better measurement would decide the reading, and how good it must be.
///
/// u_i' = √(u_d² − u² + (c u_i)²)/c. If any single input can settle the case, the largest contribution can, and it needs
/// the least improvement; so that one is named.
///
/// * `judgment` — of the propagated reading; `budget` — of the same propagation
/// * errors: [`Error::NoAnswer`] if no input contributes; [`Error::Inconsistent`] if the judgment is of another reading
///
/// Source: the root sum of squares, solved for one input.
///
/// ```
/// use trainwright::judge::{Limits, Reading, Rule, judge, propagate, settle};
/// let friction = Reading::new(0.112, 0.009)?;
/// let geometry = Reading::new(1.0, 0.02)?;
/// let margin = propagate([friction, geometry], |[mu, g]| Ok(mu * g / 0.107))?;
/// let held = judge(margin.reading, Limits::at_least(1.0)?, Rule::stated_chances(0.95, 0.05)?)?;
/// let next = settle(&held, &margin.budget)?;
/// assert_eq!((next.input, next.enough), (0, true)); // measure the friction, to 0.002
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn settle(judgment: &Judgment, budget: &Budget) -> Result<Settlement> {
    same_reading(judgment, budget)?;
    let largest =
        known(budget).max_by(|a, b| crate::real::abs(a.contribution).total_cmp(&crate::real::abs(b.contribution)));
    match largest.filter(|term| term.contribution != 0.0) {
        Some(term) => Ok(settled_by(judgment, &term)),
        None => {
            Err(Error::NoAnswer { name: "budget", why: "no input carries an uncertainty, so none can be improved" })
        }
    }
}

/// As [`settle`], for one input of the caller's choice: whether measuring it better could decide the case, and how good it
/// must be. An input that carries no uncertainty cannot be improved.
///
/// * `input` — its position in the budget
/// * errors: [`Error::OutOfRange`] for a position that the budget does not have; [`Error::Inconsistent`] as [`settle`]
///
/// Source: as [`settle`].
pub fn settle_by(judgment: &Judgment, budget: &Budget, input: u32) -> Result<Settlement> {
    same_reading(judgment, budget)?;
    let high = f64::from(budget.count) - 1.0;
    let unknown = Error::OutOfRange { name: "input", value: f64::from(input), low: 0.0, high };
    known(budget).find(|term| term.position == input).map(|term| settled_by(judgment, &term)).ok_or(unknown)
}

fn same_reading(judgment: &Judgment, budget: &Budget) -> Result<()> {
    if crate::real::abs(budget.u - judgment.reading.u) > 1e-9 * judgment.reading.u {
        return Err(Error::Inconsistent {
            name: "budget",
            why: "its uncertainty is not that of the judged reading; pass the budget of the same propagation",
        });
    }
    Ok(())
}

fn settled_by(judgment: &Judgment, term: &Term) -> Settlement {
    let u = judgment.reading.u;
    let decided = judgment.verdict != Verdict::NotProven;
    let contribution = crate::real::abs(term.contribution);
    if contribution <= 0.0 {
        return Settlement { input: term.position, enough: decided, u_now: 0.0, u_needed: 0.0 };
    }
    let sensitivity = crate::real::abs(term.sensitivity);
    let spare = judgment.u_to_decide * judgment.u_to_decide - u * u + contribution * contribution;
    let enough = spare >= 0.0 && (judgment.u_to_decide > 0.0 || decided);
    let u_needed = if enough { sqrt(spare) / sensitivity } else { 0.0 };
    Settlement { input: term.position, enough, u_now: contribution / sensitivity, u_needed }
}
