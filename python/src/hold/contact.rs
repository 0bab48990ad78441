//! Line contact.

use pyo3::prelude::*;
use trainwright::hold as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};

class! {
    /// One of two bodies that touch along a line.
    "trainwright.hold" ContactBody = core::ContactBody {
        /// Radius where they touch, mm: positive when round outward, negative when hollow (a bore), infinite when flat.
        radius_mm: f64,
        /// Modulus of elasticity, MPa.
        young_mpa: f64,
        /// Poisson's ratio, 0 to 0.5.
        poisson: f64,
    }
}

class! {
    /// Two bodies that touch along a line.
    ///
    /// >>> roller = ContactBody(radius_mm=6, young_mpa=206000, poisson=0.3)
    /// >>> flat = ContactBody(radius_mm=float("inf"), young_mpa=206000, poisson=0.3)
    /// >>> round(LineContact(first=roller, second=flat, length_mm=10).pressed(force_n=2000).peak_mpa, 2)
    /// 1095.88
    "trainwright.hold" LineContact = core::LineContact {
        /// One body.
        first: ContactBody,
        /// The other.
        second: ContactBody,
        /// Length of the line, mm.
        length_mm: f64,
    }
}

class! {
    /// What a force does where two bodies touch along a line.
    "trainwright.hold" LinePressure = core::LinePressure, explained by ["hold.pressed"] {
        /// Radius of a cylinder on a flat that touches alike, mm.
        effective_radius_mm: f64,
        /// Contact modulus of both materials together, MPa.
        contact_modulus_mpa: f64,
        /// Half of the width of the contact, mm.
        half_width_mm: f64,
        /// Pressure in the middle of the contact, MPa.
        peak_mpa: f64,
        /// Greatest shear stress, below the surface, MPa.
        shear_mpa: f64,
        /// How deep below the surface it lies, mm.
        shear_depth_mm: f64,
    }
}

columns! {
    LinePressure[6]: effective_radius_mm, contact_modulus_mpa, half_width_mm, peak_mpa, shear_mpa, shear_depth_mm
}

#[pymethods]
impl LineContact {
    /// Pressure, width and shear stress under a force: a `LinePressure`, or a dictionary of arrays for an array of forces.
    /// Elastic only: yield begins below the surface near a peak of 1.67 times the yield stress.
    /// Source: Shigley, cylindrical contact.
    #[pyo3(signature = (*, force_n))]
    fn pressed<'py>(&self, py: Python<'py>, force_n: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        map_class::<LinePressure, _, 1, 6>(py, [("force_n", force_n)], |[force]| self.0.pressed(force))
    }

    /// Force, N, at which the contact reaches a peak pressure. Source: Shigley, cylindrical contact.
    #[pyo3(signature = (*, peak_mpa, out = None))]
    fn force_at_peak_n<'py>(
        &self,
        py: Python<'py>,
        peak_mpa: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("peak_mpa", peak_mpa)], out, |[peak]| self.0.force_at_peak_n(peak))
    }
}
