//! What is proven and what is refuted, and what would settle the rest.

use pyo3::prelude::*;
use trainwright::judge as core;

use super::propagation::Budget;
use super::reading::{Limits, Reading};
use super::rule::Rule;
use crate::array::{Out, Rows, map};
use crate::class::{class, words};
use crate::error::answer;

words! {
    "verdict" Verdict = core::Verdict { Go = "GO", NoGo = "NO-GO", NotProven = "NOT PROVEN" }
}

/// Probability, 0 to 1, that the true value behind the reading lies within the limits.
///
/// Both may be columns: a mapping of the field names to numbers or arrays, or a data frame.
/// Source: JCGM 106:2012, clause 7, equation 12.
///
/// >>> round(chance_inside(Reading(value=-5.47, u=0.05), Limits(upper=-5.40)), 2)
/// 0.92
/// >>> chance_inside({"value": [0.10, 0.20], "u": 0.004}, Limits(upper=0.14)).round(3)
/// array([1., 0.])
#[pyfunction]
#[pyo3(signature = (reading, limits, *, out = None))]
pub fn chance_inside<'py>(
    py: Python<'py>,
    reading: Rows<'py, Reading>,
    limits: Rows<'py, Limits>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let [value, u] = reading.columns()?;
    let [lower, upper] = limits.columns()?;
    map(py, [value, u, lower, upper], out, |[value, u, lower, upper]| {
        core::chance_inside(core::Reading { value, u }, core::Limits { lower, upper })
    })
}

class! {
    /// A decision and what it rests on.
    "trainwright.judge" Judgment = core::Judgment, explained by ["judge.judge"] {
        /// What was judged.
        reading: Reading,
        /// Against what.
        limits: Limits,
        /// Under which rule.
        rule: Rule,
        /// Chance that the true value lies within the limits.
        chance: f64,
        /// Values that are GO at this uncertainty; lower +∞ and upper −∞ if there is none.
        acceptance: Limits,
        /// Values below its lower or above its upper end are NO-GO at this uncertainty.
        rejection: Limits,
        /// Distance of the value above the lower limit; negative when below it.
        above_lower: f64,
        /// Distance of the value below the upper limit; negative when above it.
        below_upper: f64,
        /// Greatest standard uncertainty at which this same value is decided; infinite if any will do.
        u_to_decide: f64,
        /// Nearest value that is GO at this uncertainty; infinite if there is none.
        value_to_go: f64,
        /// "GO", "NO-GO" or "NOT PROVEN".
        verdict: Verdict,
    }
}

/// Decides whether the reading conforms to its limits, and says what would settle it.
/// Source: ISO 14253-1:2017, clause 5; JCGM 106:2012, clause 8.
///
/// >>> outcome = judge(Reading(value=72.0, u=3.0), Limits(lower=25.0, upper=75.0), Rule.conformance(0.95))
/// >>> outcome.verdict, round(outcome.acceptance.upper, 2), round(outcome.u_to_decide, 2)
/// ('NOT PROVEN', 70.07, 1.82)
#[pyfunction]
pub fn judge(reading: Reading, limits: Limits, rule: Rule) -> PyResult<Judgment> {
    answer(core::judge(reading.0, limits.0, rule.0))
}

class! {
    /// The one further measurement that would settle a judgment.
    "trainwright.judge" Settlement = core::Settlement, explained by ["judge.settle"] {
        /// Position of the input to measure better.
        input: u32,
        /// Whether measuring this input alone can decide the case.
        enough: bool,
        /// Standard uncertainty of that input now, in its own unit.
        u_now: f64,
        /// Standard uncertainty that would do; 0 when even a perfect measurement would not.
        u_needed: f64,
    }
}

/// The one input whose better measurement would decide the judged reading, and how good it must be.
/// Source: follows from the definitions (root sum of squares, solved for one input).
#[pyfunction]
pub fn settle(judgment: Judgment, budget: &Budget) -> PyResult<Settlement> {
    answer(core::settle(&judgment.0, &budget.0))
}

/// As `settle`, for the input at this position: whether measuring it better could decide the case, and how good it must be.
#[pyfunction]
pub fn settle_by(judgment: Judgment, budget: &Budget, input: u32) -> PyResult<Settlement> {
    answer(core::settle_by(&judgment.0, &budget.0, input))
}
