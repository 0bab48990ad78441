//! The sump: level and volume.

use pyo3::prelude::*;
use trainwright::fluid as core;

use crate::array::{Input, Out, map};
use crate::class::common;
use crate::error::answer;

/// Free area of the sump against height above the overflow edge, linear between rows.
///
/// >>> sump = Sump(height_mm=[-10.0, 0.0, 10.0], free_area_cm2=[80.0, 100.0, 200.0])
/// >>> sump.level_for(volume_ml=150.0)
/// 10.0
#[pyclass(frozen, from_py_object, module = "trainwright.fluid")]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sump(core::Sump);

#[pymethods]
impl Sump {
    #[new]
    #[pyo3(signature = (*, height_mm, free_area_cm2))]
    fn new(height_mm: Vec<f64>, free_area_cm2: Vec<f64>) -> PyResult<Self> {
        answer(core::Sump::from_table(&height_mm, &free_area_cm2))
    }

    /// Heights above the overflow edge.
    #[getter]
    fn height_mm(&self) -> Vec<f64> {
        self.used(self.0.height_mm)
    }

    /// Free area at each height.
    #[getter]
    fn free_area_cm2(&self) -> Vec<f64> {
        self.used(self.0.free_area_cm2)
    }

    /// Free area at a height, cm².
    #[pyo3(signature = (*, height_mm, out = None))]
    fn free_area_at<'py>(
        &self,
        py: Python<'py>,
        height_mm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("height_mm", height_mm)], out, |[height]| self.0.free_area_at(height))
    }

    /// Volume between the overflow edge and a height, mL, negative below the edge.
    /// Source: follows from the definitions (volume of a prismatoid, exact for a linear area).
    #[pyo3(signature = (*, height_mm, out = None))]
    fn volume_to<'py>(
        &self,
        py: Python<'py>,
        height_mm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("height_mm", height_mm)], out, |[height]| self.0.volume_to(height))
    }

    /// Level at which this volume stands between it and the overflow edge, mm.
    #[pyo3(signature = (*, volume_ml, out = None))]
    fn level_for<'py>(
        &self,
        py: Python<'py>,
        volume_ml: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("volume_ml", volume_ml)], out, |[volume]| self.0.level_for(volume))
    }
}

common!(Sump, [height_mm, free_area_cm2]);

impl Sump {
    fn used(&self, column: [f64; core::SUMP_ROWS]) -> Vec<f64> {
        column.into_iter().take(self.0.rows as usize).collect()
    }
}

impl From<core::Sump> for Sump {
    fn from(sump: core::Sump) -> Self {
        Self(sump)
    }
}

impl From<Sump> for core::Sump {
    fn from(sump: Sump) -> Self {
        sump.0
    }
}

/// Level that a volume would reach in a sump with vertical sides.
/// Source: follows from the definitions (vertical sides).
///
/// >>> constant_area_level_mm(above_edge_ml=388.8, area_cm2=900.0)
/// 4.32
#[pyfunction]
#[pyo3(signature = (*, above_edge_ml, area_cm2, out = None))]
pub fn constant_area_level_mm<'py>(
    py: Python<'py>,
    above_edge_ml: Input<'py>,
    area_cm2: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("above_edge_ml", above_edge_ml), ("area_cm2", area_cm2)], out, |[volume, area]| {
        core::constant_area_level_mm(volume, area)
    })
}

/// How much too high the level looks, away from the center of the sump, when the vehicle is not level.
/// Source: follows from the definitions (plane level surface).
///
/// >>> round(tilt_shift_mm(offset_mm=100.0, tilt_deg=1.718), 2)
/// 3.0
#[pyfunction]
#[pyo3(signature = (*, offset_mm, tilt_deg, out = None))]
pub fn tilt_shift_mm<'py>(
    py: Python<'py>,
    offset_mm: Input<'py>,
    tilt_deg: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("offset_mm", offset_mm), ("tilt_deg", tilt_deg)], out, |[offset, tilt]| core::tilt_shift_mm(offset, tilt))
}
