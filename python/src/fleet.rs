//! `trainwright.fleet`, the compiled part: one pass over the telematics rows of a fleet.

mod answer;
mod bytes;
mod kernel;
mod pass;
mod screen;
mod totals;
mod unit;

use pyo3::prelude::*;

use crate::error::raise;

pub use answer::OUTPUTS;
pub use screen::{AGGREGATES, Screen};
pub use unit::{Gear, Holding, Limits, Unit};

/// Base (0 to 65 536) to an exponent (above 0 to 16) as the pass over rows forms it, not the `pow` of the platform: within
/// 2e-13 of the value.
///
/// >>> round(screen_power(base=0.5, exponent=6.5), 9)
/// 0.011048543
#[pyfunction]
#[pyo3(signature = (*, base, exponent))]
pub fn screen_power(base: f64, exponent: f64) -> PyResult<f64> {
    trainwright::duty::screen::screen_power(base, exponent).map_err(raise)
}
