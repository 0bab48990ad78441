//! What can be looked at on a unit: looks of a family, those made, and those still to make.

use std::sync::Arc;

use pyo3::IntoPyObjectExt;
use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::{self as core, Bench, FoundReading, Shows};

use super::Worth;
use crate::judge::{Limits, Reading};

/// Values by the name of the variant.
pub(super) type ByVariant<'py> = PyResult<Bound<'py, PyDict>>;

pub(super) fn by_variant<'py, T: IntoPyObject<'py>>(
    py: Python<'py>,
    bench: &Bench,
    values: impl IntoIterator<Item = T>,
) -> ByVariant<'py> {
    let dict = PyDict::new(py);
    bench.variants.iter().zip(values).try_for_each(|(variant, value)| dict.set_item(variant, value))?;
    Ok(dict)
}

pub(super) fn look(bench: &Arc<Bench>, place: usize) -> Option<Look> {
    Some(Look { bench: bench.clone(), look: bench.looks.get(place)?.clone() })
}

pub(super) fn name(names: &[String], place: usize) -> &str {
    names.get(place).map_or("", String::as_str)
}

/// Something that can be looked at on a unit of a family.
#[pyclass(frozen, skip_from_py_object, module = "trainwright.identify")]
#[derive(Clone)]
pub struct Look {
    bench: Arc<Bench>,
    look: core::Look,
}

#[pymethods]
impl Look {
    /// Name in the record.
    #[getter]
    fn id(&self) -> &str {
        &self.look.id
    }

    /// What to look for, or what to measure.
    #[getter]
    fn text(&self) -> &str {
        &self.look.look
    }

    /// The part that carries it.
    #[getter]
    fn part(&self) -> &str {
        name(&self.bench.parts, self.look.part)
    }

    /// Labor to look, minutes.
    #[getter]
    fn minutes(&self) -> f64 {
        self.look.minutes
    }

    /// Chance that the part came from another unit, before anything is looked at.
    #[getter]
    fn exchanged(&self) -> f64 {
        self.bench.exchanged.get(self.look.part).copied().unwrap_or(f64::NAN)
    }

    /// Of a mark: its chance on an untouched unit of each variant, else None.
    #[getter]
    fn chance<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyDict>>> {
        match &self.look.shows {
            Shows::Mark { chance } => by_variant(py, &self.bench, chance).map(Some),
            Shows::Size { .. } => Ok(None),
        }
    }

    /// Of a size: its limits in each variant, mm, else None.
    #[getter]
    fn size_mm<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyDict>>> {
        match &self.look.shows {
            Shows::Mark { .. } => Ok(None),
            Shows::Size { size_mm, .. } => {
                by_variant(py, &self.bench, size_mm.iter().map(|limits| Limits::from(*limits))).map(Some)
            }
        }
    }

    /// Of a size: the instrument, else None.
    #[getter]
    fn instrument(&self) -> Option<&str> {
        match &self.look.shows {
            Shows::Mark { .. } => None,
            Shows::Size { instrument, .. } => Some(instrument),
        }
    }

    /// Of a size: the standard uncertainty of its instrument, mm, where the record of the instruments was given.
    #[getter]
    fn u_mm(&self) -> Option<f64> {
        match &self.look.shows {
            Shows::Mark { .. } => None,
            Shows::Size { u_mm, .. } => *u_mm,
        }
    }

    fn __repr__(&self) -> String {
        format!("<look {}: {}>", self.look.id, self.look.look)
    }
}

/// A look that was made, and the chance of each variant after it.
#[pyclass(frozen, module = "trainwright.identify")]
pub struct LookMade {
    pub(super) look: Look,
    pub(super) made: core::Made,
}

#[pymethods]
impl LookMade {
    /// The look.
    #[getter]
    fn look(&self) -> Look {
        self.look.clone()
    }

    /// Whether the mark is there; of a size the reading, mm.
    #[getter]
    fn found(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        match self.made.found {
            FoundReading::Seen(seen) => seen.into_py_any(py),
            FoundReading::Measured { reading_mm, .. } => Reading::from(reading_mm).into_py_any(py),
        }
    }

    /// Of a size: the variant that the reading comes nearest to, else None.
    #[getter]
    fn nearest(&self) -> Option<&str> {
        match self.made.found {
            FoundReading::Seen(_) => None,
            FoundReading::Measured { nearest, .. } => Some(name(&self.look.bench.variants, nearest.variant as usize)),
        }
    }

    /// Of a size: how far the reading lies beyond the nearer limit of that variant, mm: 0 within, negative below. 0 for a mark.
    #[getter]
    fn outside_mm(&self) -> f64 {
        match self.made.found {
            FoundReading::Seen(_) => 0.0,
            FoundReading::Measured { nearest, .. } => nearest.outside_mm,
        }
    }

    /// The same in standard uncertainties of the reading.
    #[getter]
    fn outside_u(&self) -> f64 {
        match self.made.found {
            FoundReading::Seen(_) => 0.0,
            FoundReading::Measured { nearest, .. } => nearest.outside_u,
        }
    }

    /// Whether the reading is NO-GO against the limits of every variant: worn, mismeasured, or not of this family.
    #[getter]
    fn unexplained(&self) -> bool {
        matches!(self.made.found, FoundReading::Measured { unexplained: true, .. })
    }

    /// Whether the reading lies outside the range of its instrument, as the sizes of the record do.
    #[getter]
    fn out_of_range(&self) -> bool {
        matches!(self.made.found, FoundReading::Measured { out_of_range: true, .. })
    }

    /// Chance of each variant after this look and those before it.
    #[getter]
    fn chance<'py>(&self, py: Python<'py>) -> ByVariant<'py> {
        by_variant(py, &self.look.bench, &self.made.chance)
    }

    fn __repr__(&self) -> String {
        format!("<look made {}>", self.look.look.id)
    }
}

/// A look that was not made yet, and what it is worth.
#[pyclass(frozen, module = "trainwright.identify")]
pub struct NextLook {
    pub(super) look: Look,
    pub(super) worth: Option<Worth>,
}

#[pymethods]
impl NextLook {
    /// The look.
    #[getter]
    fn look(&self) -> Look {
        self.look.clone()
    }

    /// What it would tell; None for a size whose instrument is not known.
    #[getter]
    fn worth(&self) -> Option<Worth> {
        self.worth
    }

    fn __repr__(&self) -> String {
        let worth = self.worth.map_or("not known".into(), |worth| format!("{:.4}", worth.0.bits_per_minute));
        format!("<next look {}: {worth} bit/min>", self.look.look.id)
    }
}
