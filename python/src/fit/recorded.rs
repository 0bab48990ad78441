//! Fits of a family.

use pyo3::prelude::*;
use trainwright::record as core;

use super::bushing::PressedBushing;
use super::sizes::{Clearance, Spread};
use crate::error::{answer, refuse};
use crate::judge::{Limits, Reading};
use crate::record::Family;

/// A fit of a family: its parts, their sizes in each variant, its limit and what the record knows of its metals.
#[pyclass(frozen, module = "trainwright.fit")]
pub struct RecordedFit {
    family: Py<Family>,
    record: core::FitRecord,
}

impl RecordedFit {
    fn family(&self) -> &core::Family {
        self.family.get().core()
    }
}

#[pymethods]
impl RecordedFit {
    /// Name of the fit.
    #[getter]
    fn name(&self) -> &str {
        &self.record.id
    }

    /// What it is for: "running", "locating" or "press".
    #[getter]
    fn kind(&self) -> &'static str {
        match self.record.kind {
            core::FitKind::Running => "running",
            core::FitKind::Locating => "locating",
            core::FitKind::Press => "press",
        }
    }

    /// The part inside.
    #[getter]
    fn shaft(&self) -> &str {
        &self.record.shaft
    }

    /// The part around it.
    #[getter]
    fn bore(&self) -> &str {
        &self.record.bore
    }

    /// What the diameter of the shaft is called where it is measured, where the record says it.
    #[getter]
    fn shaft_size(&self) -> Option<&str> {
        self.record.shaft_size.as_deref()
    }

    /// What the diameter of the bore is called where it is measured, where the record says it.
    #[getter]
    fn bore_size(&self) -> Option<&str> {
        self.record.bore_size.as_deref()
    }

    /// Greatest clearance in service, mm.
    #[getter]
    fn limit_mm(&self) -> f64 {
        self.record.limit_mm
    }

    /// Length over which shaft and bore meet, mm, where the record states it.
    #[getter]
    fn length_mm(&self) -> Option<f64> {
        self.record.length_mm
    }

    /// Linear expansion of the shaft, 1/K, where the record names its metal.
    #[getter]
    fn shaft_expansion_per_k(&self) -> Option<Reading> {
        let [shaft, _] = self.family().expansions_of(&self.record);
        shaft.map(Into::into)
    }

    /// Linear expansion of the part with the bore, 1/K, where the record names its metal; a pressed bushing has its own.
    #[getter]
    fn bore_expansion_per_k(&self) -> Option<Reading> {
        let [_, bore] = self.family().expansions_of(&self.record);
        bore.map(Into::into)
    }

    /// Whether a bushing is pressed in the housing.
    #[getter]
    fn has_bushing(&self) -> bool {
        self.record.press.is_some()
    }

    /// Friction of the seat of the bushing, where the record states it.
    #[getter]
    fn press_friction(&self) -> Option<Reading> {
        Some(self.record.press.as_ref()?.friction?.reading().into())
    }

    /// Diameter of the shaft of a variant, mm.
    fn shaft_mm(&self, variant: &str) -> PyResult<Limits> {
        answer(self.record.shaft_limits(variant))
    }

    /// Diameter of the bore of a variant, mm.
    fn bore_mm(&self, variant: &str) -> PyResult<Limits> {
        answer(self.record.bore_limits(variant))
    }

    /// Clearance by the tolerances, the shaft of one variant in the bore of another. Source: ISO 286-1:2010, clause 3.3.
    #[pyo3(signature = (*, shaft_of, bore_of))]
    fn clearance(&self, shaft_of: &str, bore_of: &str) -> PyResult<Clearance> {
        answer(self.record.clearance(shaft_of, bore_of))
    }

    /// The pressed bushing: its bore in place, mm, as measured or from its tolerance; housing bore and outside are taken from
    /// their tolerances with the spread that you name. Source: the record.
    #[pyo3(signature = (*, bore_mm, spread))]
    fn bushing(&self, bore_mm: Reading, spread: Spread) -> PyResult<PressedBushing> {
        answer(self.family().pressed_bushing(&self.record, bore_mm.into(), spread.into()))
    }

    fn __repr__(&self) -> String {
        let core::FitRecord { id, shaft, bore, limit_mm, .. } = &self.record;
        format!("<fit {id}: {shaft} in {bore}, {} clearance to {limit_mm} mm>", self.kind())
    }
}

/// Every fit of a family, in the order of the record.
#[pyfunction]
pub fn fits_of(family: Py<Family>, py: Python<'_>) -> Vec<RecordedFit> {
    let fits = &family.get().core().fit;
    fits.iter().map(|record| RecordedFit { family: family.clone_ref(py), record: record.clone() }).collect()
}

/// The fit of this name in a family.
#[pyfunction]
pub fn fit_of(family: Py<Family>, name: &str, py: Python<'_>) -> PyResult<RecordedFit> {
    let fits = &family.get().core().fit;
    match fits.iter().find(|fit| fit.id == name) {
        Some(record) => Ok(RecordedFit { family: family.clone_ref(py), record: record.clone() }),
        None => {
            let known: Vec<_> = fits.iter().map(|fit| fit.id.as_str()).collect();
            Err(refuse("MISSING", "fit", format!("there is no fit {name:?}; known: {}", known.join(", "))))
        }
    }
}
