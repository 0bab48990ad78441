//! Limits of ISO 286.

use pyo3::prelude::*;
use trainwright::fit as core;

use super::sizes::Clearance;
use crate::class::class;
use crate::error::answer;
use crate::judge::Limits;

class! {
    /// Limits of a size by its tolerance class.
    "trainwright.fit" IsoLimits = core::IsoLimits, explained by ["fit.iso_limits"] {
        /// Nominal size, mm.
        nominal_mm: f64,
        /// Lower deviation, EI or ei, mm.
        lower_deviation_mm: f64,
        /// Upper deviation, ES or es, mm.
        upper_deviation_mm: f64,
        /// Width of the tolerance, IT, mm.
        tolerance_mm: f64,
        /// Least and greatest size, mm.
        size_mm: Limits,
        /// Grade, 5 to 11.
        grade: u32,
        /// Whether it is a hole: a capital letter.
        hole: bool,
    }
}

class! {
    /// A hole and a shaft of one nominal size.
    "trainwright.fit" IsoFit = core::IsoFit {
        /// The hole.
        hole: IsoLimits,
        /// The shaft.
        shaft: IsoLimits,
        /// Their clearance, without a service limit.
        clearance: Clearance,
    }
}

/// Limits of a nominal size, mm, with a tolerance class: "H7" for a hole, "f7" for a shaft.
/// Source: tables of ISO 286-1 and -2:2010.
///
/// >>> journal = iso_limits("f7", nominal_mm=25)
/// >>> journal.upper_deviation_mm, journal.lower_deviation_mm
/// (-0.02, -0.041)
#[pyfunction]
#[pyo3(signature = (zone, *, nominal_mm))]
pub fn iso_limits(zone: &str, nominal_mm: f64) -> PyResult<IsoLimits> {
    answer(core::iso_limits(nominal_mm, zone))
}

/// Reads a size with its tolerance class. Source: tables of ISO 286-1 and -2:2010.
///
/// >>> iso_size("25H7").size_mm
/// Limits(lower=25.0, upper=25.021)
#[pyfunction]
pub fn iso_size(text: &str) -> PyResult<IsoLimits> {
    answer(core::iso_size(text))
}

/// Reads a fit, hole first, and gives both sizes with their clearance. Source: tables of ISO 286-1 and -2:2010.
///
/// >>> fit = iso_fit("25H7/f7")
/// >>> round(fit.clearance.clearance_mm.lower, 3), round(fit.clearance.clearance_mm.upper, 3)
/// (0.02, 0.062)
#[pyfunction]
pub fn iso_fit(text: &str) -> PyResult<IsoFit> {
    answer(core::iso_fit(text))
}
