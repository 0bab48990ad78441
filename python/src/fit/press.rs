//! Press fits.

use pyo3::prelude::*;
use trainwright::fit as core;

use crate::array::{Input, map_class};
use crate::class::{class, columns};
use crate::error::answer;

class! {
    /// Elastic constants of a metal.
    "trainwright.fit" Elastic = core::Elastic {
        /// Modulus of elasticity, MPa.
        young_mpa: f64,
        /// Poisson's ratio.
        poisson: f64,
    }
}

class! {
    /// A press fit under its interference. The hoop stresses are for you to hold against the yield stress of each metal.
    "trainwright.fit" Pressed = core::Pressed, explained by ["fit.pressed", "fit.bushing_at"] {
        /// Interference, diametral, mm; negative where the parts are free of each other by so much.
        interference_mm: f64,
        /// Pressure where the parts meet, MPa; 0 while they are free.
        pressure_mpa: f64,
        /// How much the bore of the inner part closes, mm.
        bore_closure_mm: f64,
        /// How much the outside grows, mm.
        outside_growth_mm: f64,
        /// Greatest hoop stress of the inner part, MPa: at its bore, negative (compression).
        inner_hoop_mpa: f64,
        /// Greatest hoop stress of the outer part, MPa: where the parts meet, positive (tension).
        outer_hoop_mpa: f64,
    }
}

columns! {
    Pressed[6]: interference_mm, pressure_mpa, bore_closure_mm, outside_growth_mm, inner_hoop_mpa, outer_hoop_mpa
}

class! {
    /// What a press fit holds by friction.
    "trainwright.fit" Retention = core::Retention, explained by ["fit.retention"] {
        /// Axial force, N.
        force_n: f64,
        /// Torque, N·m.
        torque_nm: f64,
    }
}

class! {
    /// Two round parts pressed together.
    ///
    /// >>> steel = Elastic(young_mpa=206000, poisson=0.29)
    /// >>> hub = PressJoint(inside_mm=0, interface_mm=100, outside_mm=175, inner=steel, outer=steel)
    /// >>> round(hub.pressed(interference_mm=0.1).pressure_mpa, 2)
    /// 69.37
    "trainwright.fit" PressJoint = core::PressJoint {
        /// Bore of the inner part, mm; 0 where it is solid.
        inside_mm: f64,
        /// Diameter where they meet, mm.
        interface_mm: f64,
        /// Outside of the outer part, mm; infinite where it is a thick body.
        outside_mm: f64,
        /// The inner part.
        inner: Elastic,
        /// The outer part.
        outer: Elastic,
    }
}

#[pymethods]
impl PressJoint {
    /// What a diametral interference, mm, does to both parts (Lamé). Arrays give a dictionary of arrays.
    /// Source: Shigley, chapter 3, press and shrink fits; Roark, thick-walled cylinders.
    #[pyo3(signature = (*, interference_mm))]
    fn pressed<'py>(&self, py: Python<'py>, interference_mm: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        map_class::<Pressed, _, 1, 6>(py, [("interference_mm", interference_mm)], |[delta]| self.0.pressed(delta))
    }

    /// Axial force and torque at which the pressed part begins to move: pressure in MPa, length of contact in mm.
    /// Source: Shigley, chapter 7, press fits.
    #[pyo3(signature = (*, pressure_mpa, length_mm, friction))]
    fn retention(&self, pressure_mpa: f64, length_mm: f64, friction: f64) -> PyResult<Retention> {
        answer(self.0.retention(pressure_mpa, length_mm, friction))
    }
}
