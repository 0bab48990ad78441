//! Normal and Student's t distribution.

use pyo3::prelude::*;
use trainwright::judge as core;

use crate::array::{Input, Out, map};

/// Standard normal distribution function.
///
/// >>> normal_cdf(0.0)
/// 0.5
#[pyfunction]
#[pyo3(signature = (z, *, out = None))]
pub fn normal_cdf<'py>(py: Python<'py>, z: Input<'py>, out: Option<Out<'py>>) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("z", z)], out, |[z]| core::normal_cdf(z))
}

/// Value that a standard normal variable stays below with the stated probability.
/// Source: Wichura (1988), routine PPND16.
///
/// >>> round(normal_quantile(0.95), 5)
/// 1.64485
#[pyfunction]
#[pyo3(signature = (probability, *, out = None))]
pub fn normal_quantile<'py>(
    py: Python<'py>,
    probability: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("probability", probability)], out, |[p]| core::normal_quantile(p))
}

/// Student's t distribution function; `freedom` is 1 or more, infinite for the normal distribution.
/// Source: Abramowitz and Stegun (1964), 26.5.8, 26.7.1.
#[pyfunction]
#[pyo3(signature = (t, freedom, *, out = None))]
pub fn student_cdf<'py>(
    py: Python<'py>,
    t: Input<'py>,
    freedom: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("t", t), ("freedom", freedom)], out, |[t, freedom]| core::student_cdf(t, freedom))
}

/// Value that a Student's t variable stays below with the stated probability.
#[pyfunction]
#[pyo3(signature = (probability, freedom, *, out = None))]
pub fn student_quantile<'py>(
    py: Python<'py>,
    probability: Input<'py>,
    freedom: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("probability", probability), ("freedom", freedom)];
    map(py, columns, out, |[probability, freedom]| core::student_quantile(probability, freedom))
}

/// Factor from standard uncertainty to the half width that covers the stated probability.
/// Source: JCGM 100:2008, G.3, table G.2.
///
/// >>> round(coverage_factor(0.99, 16.0), 2)
/// 2.92
#[pyfunction]
#[pyo3(signature = (coverage, freedom, *, out = None))]
pub fn coverage_factor<'py>(
    py: Python<'py>,
    coverage: Input<'py>,
    freedom: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("coverage", coverage), ("freedom", freedom)];
    map(py, columns, out, |[coverage, freedom]| core::coverage_factor(coverage, freedom))
}
