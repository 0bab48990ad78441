//! `trainwright.judge`: readings, limits and decisions.

use pyo3::prelude::*;
use trainwright::judge as core;

use crate::array::{Input, Out, Rows, map};
use crate::class::{class, columns};
use crate::error::raise;

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
        core::Reading::exact(value).map(Self).map_err(raise)
    }
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

columns! { Reading[2]: value, u }
columns! { Limits[2]: lower, upper }

fn finite(reading: core::Reading) -> trainwright::Result<core::Reading> {
    core::Reading::new(reading.value, reading.u)
}

fn in_order(limits: core::Limits) -> trainwright::Result<core::Limits> {
    let core::Limits { lower, upper } = limits;
    if lower <= upper { Ok(limits) } else { Err(trainwright::Error::Reversed { name: "limits", lower, upper }) }
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

/// Standard normal distribution function.
///
/// >>> normal_cdf(0.0)
/// 0.5
#[pyfunction]
#[pyo3(signature = (z, *, out = None))]
pub fn normal_cdf<'py>(py: Python<'py>, z: Input<'py>, out: Option<Out<'py>>) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("z", z)], out, |[z]| Ok(core::normal_cdf(z)))
}
