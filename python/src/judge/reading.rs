//! Readings and limits.

use pyo3::prelude::*;
use trainwright::judge as core;

use crate::class::{class, columns};
use crate::error::answer;

class! {
    /// A measured or uncertain value with its standard uncertainty (k = 1), both in the same unit.
    ///
    /// >>> Reading(value=44.407, u=0.004)
    /// Reading(value=44.407, u=0.004)
    "trainwright.judge" Reading = core::Reading, checked by finite {
        /// Best estimate.
        value: f64,
        /// Standard uncertainty, 0 or more.
        u: f64,
    }
}

#[pymethods]
impl Reading {
    /// A value taken as exact.
    #[staticmethod]
    fn exact(value: f64) -> PyResult<Self> {
        answer(core::Reading::exact(value))
    }

    /// A value with its standard uncertainty as a fraction of it: 0.02 for 2 %.
    #[staticmethod]
    #[pyo3(signature = (value, *, u_rel))]
    fn relative(value: f64, u_rel: f64) -> PyResult<Self> {
        answer(core::Reading::relative(value, u_rel))
    }

    /// Anywhere within ± the half width with the same chance: u = a/√3.
    /// Source: JCGM 100:2008, 4.3.7, 4.3.9, F.2.2.1, H.6.
    ///
    /// >>> round(Reading.rectangular(16.52, half_width=0.40).u, 2)
    /// 0.23
    #[staticmethod]
    #[pyo3(signature = (value, *, half_width))]
    fn rectangular(value: f64, half_width: f64) -> PyResult<Self> {
        answer(core::Reading::rectangular(value, half_width))
    }

    /// Within ± the half width, more often near the middle: u = a/√6.
    #[staticmethod]
    #[pyo3(signature = (value, *, half_width))]
    fn triangular(value: f64, half_width: f64) -> PyResult<Self> {
        answer(core::Reading::triangular(value, half_width))
    }

    /// Swinging as a sine between ± the half width: u = a/√2.
    #[staticmethod]
    #[pyo3(signature = (value, *, half_width))]
    fn arcsine(value: f64, half_width: f64) -> PyResult<Self> {
        answer(core::Reading::arcsine(value, half_width))
    }

    /// Read from a display or counter that moves in steps of the quantum: u = q/√12.
    #[staticmethod]
    #[pyo3(signature = (value, *, quantum))]
    fn quantized(value: f64, quantum: f64) -> PyResult<Self> {
        answer(core::Reading::quantized(value, quantum))
    }

    /// Read on an instrument whose class is its greatest error in percent of full scale.
    ///
    /// >>> round(Reading.of_class(1470.0, full_scale=2500.0, class_pct=1.6).u, 1)
    /// 23.1
    #[staticmethod]
    #[pyo3(signature = (value, *, full_scale, class_pct))]
    fn of_class(value: f64, full_scale: f64, class_pct: f64) -> PyResult<Self> {
        answer(core::Reading::of_class(value, full_scale, class_pct))
    }
}

columns! { Reading[2]: value, u }
columns! { Limits[2]: lower, upper }

fn finite(reading: core::Reading) -> trainwright::Result<core::Reading> {
    core::Reading::new(reading.value, reading.u)
}

class! {
    /// Repeated readings in one.
    "trainwright.judge" Repeated = core::Repeated, explained by ["judge.mean_of"] {
        /// Mean and its standard uncertainty.
        reading: Reading,
        /// Standard deviation of a single reading.
        deviation: f64,
        /// Degrees of freedom, n − 1.
        freedom: f64,
    }
}

/// Mean of repeated readings, its standard uncertainty and degrees of freedom.
/// Source: JCGM 100:2008, 4.2.1, 4.2.3.
///
/// >>> mean_of([2.25, 2.30, 2.25, 2.28]).reading.value
/// 2.27
#[pyfunction]
pub fn mean_of(values: Vec<f64>) -> PyResult<Repeated> {
    answer(core::mean_of(&values))
}

class! {
    /// Tolerance limits; an open side is infinite.
    ///
    /// >>> Limits(upper=0.14)
    /// Limits(lower=float("-inf"), upper=0.14)
    "trainwright.judge" Limits = core::Limits, checked by in_order {
        /// Least conforming value, or −∞.
        lower: f64 = f64::NEG_INFINITY,
        /// Greatest conforming value, or +∞.
        upper: f64 = f64::INFINITY,
    }
}

#[pymethods]
impl Limits {
    /// Whether the value lies within, the limits included.
    fn holds(&self, value: f64) -> bool {
        self.0.holds(value)
    }
}

/// Reversed infinite limits are the empty zone of a judgment.
fn in_order(limits: core::Limits) -> trainwright::Result<core::Limits> {
    let core::Limits { lower, upper } = limits;
    if lower == f64::INFINITY && upper == f64::NEG_INFINITY { Ok(limits) } else { core::Limits::new(lower, upper) }
}
