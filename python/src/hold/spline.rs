//! Splines.

use pyo3::prelude::*;
use trainwright::hold as core;

use crate::array::{Input, map_class};
use crate::class::{class, columns};

class! {
    /// A splined joint.
    ///
    /// >>> joint = Spline(teeth=24, major_mm=31.25, minor_mm=28.75, pitch_diameter_mm=30, length_mm=22)
    /// >>> round(joint.spline_load(torque_nm=600, carrying_share=0.5).bearing_mpa, 2)
    /// 121.21
    "trainwright.hold" Spline = core::Spline {
        /// Teeth, 4 to 200.
        teeth: u32,
        /// Outer diameter of the contact, mm: the smaller of the shaft's outside and the hub's root.
        major_mm: f64,
        /// Inner diameter of the contact, mm: the larger of the hub's bore and the shaft's root.
        minor_mm: f64,
        /// Pitch diameter, mm.
        pitch_diameter_mm: f64,
        /// Length in contact, mm.
        length_mm: f64,
    }
}

class! {
    /// Load of a spline.
    "trainwright.hold" SplineLoad = core::SplineLoad, explained by ["hold.spline_load"] {
        /// Height of contact, mm.
        height_mm: f64,
        /// Radius at which the flanks carry, mm.
        mean_radius_mm: f64,
        /// Thickness of a tooth at the pitch circle, mm.
        thickness_mm: f64,
        /// Force on each tooth that carries, N.
        tooth_n: f64,
        /// Pressure on the flanks, MPa.
        bearing_mpa: f64,
        /// Mean shear stress through the teeth, MPa.
        shear_mpa: f64,
    }
}

columns! { SplineLoad[6]: height_mm, mean_radius_mm, thickness_mm, tooth_n, bearing_mpa, shear_mpa }

#[pymethods]
impl Spline {
    /// Bearing and shear stress: a `SplineLoad`, or a dictionary of arrays. `carrying_share` of the teeth carry, above 0 to 1;
    /// half is common practice, no source. Source: follows from the definitions.
    #[pyo3(signature = (*, torque_nm, carrying_share))]
    fn spline_load<'py>(
        &self,
        py: Python<'py>,
        torque_nm: Input<'py>,
        carrying_share: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("torque_nm", torque_nm), ("carrying_share", carrying_share)];
        map_class::<SplineLoad, _, 2, 6>(py, columns, |[torque, share]| self.0.spline_load(torque, share))
    }
}
