//! `trainwright.hazard`: what can hurt someone, with a caution to print.

use pyo3::prelude::*;
use trainwright::hazard::{ALL, Hazard};

use crate::error::refuse;

/// Short names of every hazard.
#[pyfunction]
pub fn titles() -> Vec<&'static str> {
    ALL.into_iter().map(Hazard::title).collect()
}

/// One sentence to print beside a result.
///
/// >>> caution("compressed air")
/// 'Shop air throws pistons, springs and fluid: regulate it down, cover the part, and wear goggles.'
#[pyfunction]
pub fn caution(title: &str) -> PyResult<&'static str> {
    let found = ALL.into_iter().find(|hazard| hazard.title() == title);
    found
        .map(Hazard::caution)
        .ok_or_else(|| refuse("TEXT", "title", format!("title = {title:?}: give one of {}", titles().join(", "))))
}
