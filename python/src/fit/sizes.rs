//! Clearance by tolerance and as measured.

use pyo3::prelude::*;
use trainwright::fit as core;

use crate::class::{class, words};
use crate::error::answer;
use crate::judge::{Budget, Judgment, Limits, Reading, Rule};

words! {
    "fit_class" FitClass = core::FitClass {
        Blocked = "blocked",
        MayBind = "may bind",
        Inside = "inside",
        MayBeLoose = "may be loose",
        Loose = "loose",
    }
}

words! {
    "spread" Spread = core::Spread {
        RECTANGULAR = "rectangular",
        NORMAL_3_SIGMA = "normal 3 sigma",
    }
}

class! {
    /// Clearance of two parts by their tolerances.
    "trainwright.fit" Clearance = core::Clearance, explained by ["fit.clearance"] {
        /// Diameter of the shaft, mm.
        shaft_mm: Limits,
        /// Diameter of the bore, mm.
        bore_mm: Limits,
        /// Least and greatest clearance, mm; negative is interference.
        clearance_mm: Limits,
        /// Greatest clearance in service, mm; infinite where none is stated.
        limit_mm: f64,
        /// "blocked", "may bind", "inside", "may be loose" or "loose".
        fit_class: FitClass,
    }
}

/// Least and greatest clearance of a shaft in a bore, mm, diametral, and its class against the service limit.
/// Source: ISO 286-1:2010, clause 3.3.
///
/// >>> shaft_mm, bore_mm = Limits(lower=43.975, upper=44.000), Limits(lower=44.390, upper=44.425)
/// >>> fit = clearance(shaft_mm=shaft_mm, bore_mm=bore_mm, limit_mm=0.14)
/// >>> print(fit.fit_class, round(fit.clearance_mm.lower, 3), round(fit.clearance_mm.upper, 3))
/// loose 0.39 0.45
#[pyfunction]
#[pyo3(signature = (*, shaft_mm, bore_mm, limit_mm))]
pub fn clearance(shaft_mm: Limits, bore_mm: Limits, limit_mm: f64) -> PyResult<Clearance> {
    answer(core::clearance(shaft_mm.0, bore_mm.0, limit_mm))
}

/// A part that was not measured, as a reading, mm: the middle of its tolerance, with the tolerance as its uncertainty.
/// `spread` is "rectangular" (u = a/√3) or "normal 3 sigma" (u = a/3). Source: JCGM 100:2008, 4.3.7 and 4.3.5.
///
/// >>> round(toleranced(size_mm=Limits(lower=44.040, upper=44.075), spread="rectangular").u, 4)
/// 0.0101
#[pyfunction]
#[pyo3(signature = (*, size_mm, spread))]
pub fn toleranced(size_mm: Limits, spread: Spread) -> PyResult<Reading> {
    answer(core::toleranced(size_mm.0, spread.0))
}

class! {
    /// Clearance of two parts known with their uncertainty.
    "trainwright.fit" MeasuredClearance = core::MeasuredClearance, explained by ["fit.measured"], judged in "mm",
        inputs ["shaft", "bore"] {
        /// Diameter of the shaft, mm.
        shaft_mm: Reading,
        /// Diameter of the bore, mm.
        bore_mm: Reading,
        /// Clearance, mm; negative is interference.
        clearance_mm: Reading,
        /// Chance that the clearance is less than the least wanted.
        chance_tight: f64,
        /// Chance that the clearance is more than the greatest wanted.
        chance_loose: f64,
        /// The clearance against the clearance wanted.
        judgment: Judgment,
        /// Where its uncertainty comes from: shaft, bore, in this order.
        budget: Budget,
    }
}

/// Clearance of two parts known with their uncertainty, mm, judged against the clearance wanted.
/// Source: JCGM 100:2008, equation 10.
///
/// >>> fit = measured(shaft_mm=Reading(value=43.988, u=0.002), bore_mm=Reading(value=44.407, u=0.004),
/// ...                wanted_mm=Limits(lower=0, upper=0.14), rule=judge.Rule.conformance(0.95))
/// >>> print(round(fit.clearance_mm.value, 3), round(fit.clearance_mm.u, 4), fit.judgment.verdict)
/// 0.419 0.0045 NO-GO
#[pyfunction]
#[pyo3(signature = (*, shaft_mm, bore_mm, wanted_mm, rule))]
pub fn measured(shaft_mm: Reading, bore_mm: Reading, wanted_mm: Limits, rule: Rule) -> PyResult<MeasuredClearance> {
    answer(core::measured(shaft_mm.0, bore_mm.0, wanted_mm.0, rule.0))
}
