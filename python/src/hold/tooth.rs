//! Bending of a spur tooth.

use pyo3::prelude::*;
use trainwright::hold as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns, words};
use crate::error::raise;

/// Lewis form factor of a 20° full-depth involute tooth, from 12 teeth up. Source: Shigley, table 14-2.
///
/// >>> form_factor(24)
/// 0.337
#[pyfunction]
pub fn form_factor(teeth: u32) -> PyResult<f64> {
    core::form_factor(teeth).map_err(raise)
}

words! {
    "finish" ToothFinish = core::ToothFinish { Cast = "cast", Cut = "cut", Hobbed = "hobbed", Ground = "ground" }
}

/// By what the tooth force of a running gear grows with its pitch-line speed. `finish` is how the teeth were made: `"cast"`,
/// `"cut"` (or milled), `"hobbed"` (or shaped), `"ground"` (or shaved). A gear that stands has 1.
/// Source: Shigley, equations 14-4 to 14-6.
///
/// >>> round(velocity_factor(pitch_diameter_mm=50.8, speed_rpm=1200, finish="cut"), 2)
/// 1.52
#[pyfunction]
#[pyo3(signature = (*, pitch_diameter_mm, speed_rpm, finish, out = None))]
pub fn velocity_factor<'py>(
    py: Python<'py>,
    pitch_diameter_mm: Input<'py>,
    speed_rpm: Input<'py>,
    finish: ToothFinish,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("pitch_diameter_mm", pitch_diameter_mm), ("speed_rpm", speed_rpm)];
    map(py, columns, out, |[diameter, speed]| core::velocity_factor(diameter, speed, finish.0))
}

class! {
    /// An involute spur tooth, 20° full depth.
    ///
    /// >>> tooth = SpurTooth(teeth=24, module_mm=2.5, face_mm=20)
    /// >>> round(tooth.tooth_bending(force_n=1500, velocity_factor=1).bending_mpa, 2)
    /// 89.02
    "trainwright.hold" SpurTooth = core::SpurTooth {
        /// Teeth of the gear.
        teeth: u32,
        /// Module, mm: pitch diameter over teeth; 25.4 over the diametral pitch.
        module_mm: f64,
        /// Face width, mm.
        face_mm: f64,
    }
}

class! {
    /// What a tangential force does to an involute tooth.
    "trainwright.hold" ToothBending = core::ToothBending, explained by ["hold.tooth_bending"] {
        /// Lewis form factor.
        form_factor: f64,
        /// Thickness at the pitch line, mm.
        thickness_mm: f64,
        /// Bending stress at the root, MPa.
        bending_mpa: f64,
        /// Mean shear stress over the pitch-line thickness, MPa.
        shear_mpa: f64,
    }
}

columns! { ToothBending[4]: form_factor, thickness_mm, bending_mpa, shear_mpa }

#[pymethods]
impl SpurTooth {
    /// Bending stress at the root under a tangential force: a `ToothBending`, or a dictionary of arrays. The velocity factor
    /// of a gear that stands is 1. Source: Shigley, equations 14-2 and 14-8.
    #[pyo3(signature = (*, force_n, velocity_factor))]
    fn tooth_bending<'py>(
        &self,
        py: Python<'py>,
        force_n: Input<'py>,
        velocity_factor: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("force_n", force_n), ("velocity_factor", velocity_factor)];
        map_class::<ToothBending, _, 2, 4>(py, columns, |[force, factor]| self.0.tooth_bending(force, factor))
    }

    /// Tangential force, N, at which the root reaches a bending stress. Source: Shigley, example 14-1.
    #[pyo3(signature = (*, bending_mpa, velocity_factor, out = None))]
    fn force_at_bending_n<'py>(
        &self,
        py: Python<'py>,
        bending_mpa: Input<'py>,
        velocity_factor: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("bending_mpa", bending_mpa), ("velocity_factor", velocity_factor)];
        map(py, columns, out, |[stress, factor]| self.0.force_at_bending_n(stress, factor))
    }
}
