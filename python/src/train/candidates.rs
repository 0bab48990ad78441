//! Which tooth counts a measured ratio fits.

use pyo3::prelude::*;
use trainwright::train as core;

use super::{Train, exact};
use crate::error::raise;
use crate::judge::Reading;

/// How a measured ratio lies to the ratio of a candidate.
#[pyclass(frozen, module = "trainwright.train")]
pub struct RatioFit(core::RatioFit);

crate::class::explained!(RatioFit, ["train.fit_ratio"], , []);

#[pymethods]
impl RatioFit {
    /// Measured ratio.
    #[getter]
    fn measured(&self) -> Reading {
        self.0.measured.into()
    }

    /// Ratio of the candidate, a `fractions.Fraction`.
    #[getter]
    fn candidate<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyAny>>> {
        exact(py, self.0.candidate)
    }

    /// Measured less candidate, in standard uncertainties.
    #[getter]
    fn z(&self) -> f64 {
        self.0.z
    }

    /// Chance that a reading of this candidate lies as far off as this, either way.
    #[getter]
    fn chance(&self) -> f64 {
        self.0.chance
    }

    /// Whether the stated probability rules the candidate out.
    #[getter]
    fn excluded(&self) -> bool {
        self.0.excluded
    }

    fn __repr__(&self) -> String {
        format!("<{:.1} u off, {}>", self.0.z, if self.0.excluded { "excluded" } else { "fits" })
    }
}

/// Ratio and its standard uncertainty from pulses counted over one window.
/// Source: follows from the definitions (difference of two rectangular phases of one pulse each).
///
/// >>> counted_ratio(input_pulses=13360, output_pulses=5710, input_teeth=40, output_teeth=30).value
/// 1.7548161120840629
#[pyfunction]
#[pyo3(signature = (*, input_pulses, output_pulses, input_teeth, output_teeth))]
pub fn counted_ratio(input_pulses: u32, output_pulses: u32, input_teeth: u16, output_teeth: u16) -> PyResult<Reading> {
    let count = core::PulseCount { input_pulses, output_pulses, input_teeth, output_teeth };
    core::counted_ratio(count).map(Reading).map_err(raise)
}

/// Ratio and its standard uncertainty from the times of pulse edges.
/// Source: follows from the definitions (difference of two rectangular phases of one tick each).
///
/// >>> ratio = timed_ratio(input_intervals=66, input_s=0.0494, input_teeth=40,
/// ...                     output_intervals=28, output_s=0.0490, output_teeth=30, tick_us=0.5)
/// >>> ratio.u / ratio.value < 1e-5
/// True
#[pyfunction]
#[pyo3(signature = (*, input_intervals, input_s, input_teeth, output_intervals, output_s, output_teeth, tick_us))]
pub fn timed_ratio(
    input_intervals: u32,
    input_s: f64,
    input_teeth: u16,
    output_intervals: u32,
    output_s: f64,
    output_teeth: u16,
    tick_us: f64,
) -> PyResult<Reading> {
    let edges =
        core::TimedEdges { input_s, output_s, tick_us, input_intervals, output_intervals, input_teeth, output_teeth };
    core::timed_ratio(edges).map(Reading).map_err(raise)
}

/// Whether a measured ratio fits the exact ratio of a candidate, a `fractions.Fraction` such as a gear's `ratio_exact`.
///
/// `coverage` is the probability that the true candidate is kept.
/// Source: JCGM 100:2008, normal distribution of the measured ratio, G.1.
///
/// >>> from fractions import Fraction
/// >>> fit_ratio(Reading(value=1.7548161, u=0.00013644), Fraction(65, 37), coverage=0.99)
/// <-14.2 u off, excluded>
#[pyfunction]
#[pyo3(signature = (measured, candidate, *, coverage))]
pub fn fit_ratio(measured: Reading, candidate: Option<Bound<'_, PyAny>>, coverage: f64) -> PyResult<RatioFit> {
    let part = |name| candidate.as_ref().map_or(Ok(0), |candidate| candidate.getattr(name)?.extract::<i64>());
    let candidate = core::Fraction { num: part("numerator")?, den: part("denominator")? };
    core::fit_ratio(measured.0, candidate, coverage).map(RatioFit).map_err(raise)
}

#[pymethods]
impl Train {
    /// The gears of the record in which another train with the same elements gives a different ratio, compared exactly.
    fn gears_that_tell_trains(&self, other: &Self) -> PyResult<Vec<String>> {
        let mask = self.named.train.gears_that_tell_trains(&other.named.train, &self.commanded()).map_err(raise)?;
        Ok(self.gear_ids(mask))
    }
}
