//! Where a verdict turns.

use pyo3::prelude::*;
use trainwright::judge as core;

use super::decision::Judgment;
use crate::class::class;
use crate::error::answer;

class! {
    /// Where a verdict turns along one input.
    "trainwright.judge" Turning = core::Turning, explained by ["judge.turning_value"] {
        /// Value of the input on the GO side of the turn.
        value: f64,
        /// That value less the present one.
        change: f64,
        /// Whether the verdict is GO at the present value: it then ceases to be GO beyond `value`, else it becomes GO there.
        go_now: bool,
        /// The judgment at that value.
        judgment: Judgment,
    }
}

/// Value of one input at which the verdict turns to GO, or, where it is GO already, at which it ceases to be; the other inputs
/// stay as they are. The nearest one between the bounds; refused where there is none.
///
/// `judged` takes a value of the input and returns the judgment, or a result with a `judgment`. Where it refuses a value, the
/// verdict there counts as not GO. Source: follows from the definitions (bisection).
///
/// >>> turning = turning_value(lambda value: judge(Reading(value=value, u=0.1), Limits(lower=1.0), Rule.conformance(0.95)),
/// ...                         now=1.0, lower=0.0, upper=2.0)
/// >>> round(turning.value, 4), turning.judgment.verdict
/// (1.1645, 'GO')
#[pyfunction]
#[pyo3(signature = (judged, *, now, lower, upper))]
pub fn turning_value(judged: Bound<'_, PyAny>, now: f64, lower: f64, upper: f64) -> PyResult<Turning> {
    let py = judged.py();
    let refusal = py.import("trainwright.error")?.getattr("Error")?;
    let (mut raised, mut first) = (None, true);
    let bounds = core::Limits { lower, upper };
    let found = core::turning_value(now, bounds, |value| {
        let called = judged.call1((value,)).and_then(|result| {
            let judgment = result.getattr_opt("judgment")?.unwrap_or(result);
            Ok(judgment.extract::<Judgment>()?.0)
        });
        let first = std::mem::take(&mut first);
        called.map_err(|error| {
            // The first call is the one at the present value: what is refused there is refused altogether.
            let refused = !first && error.matches(py, &refusal).unwrap_or(false);
            if !refused && raised.is_none() {
                raised = Some(error);
            }
            trainwright::Error::NoAnswer { name: "judged", why: "it raised an exception" }
        })
    });
    match raised {
        Some(error) => Err(error),
        None => answer(found),
    }
}
