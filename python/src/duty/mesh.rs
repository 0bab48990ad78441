//! What the teeth of a planetary set see.

use pyo3::prelude::*;
use trainwright::duty as core;

use crate::error::raise;
use crate::train::{State, exact};

/// What one wheel of a set sees, per turn of the input and per unit of its torque.
#[pyclass(frozen, module = "trainwright.duty")]
pub struct WheelDuty(core::WheelDuty);

#[pymethods]
impl WheelDuty {
    /// Times that each of its teeth meets a planet per turn of the input.
    #[getter]
    fn contacts(&self) -> Option<f64> {
        self.0.contacts.value()
    }

    /// Torque of the set on it per unit input torque, forward positive; `None` where statics cannot tell.
    #[getter]
    fn torque(&self) -> Option<f64> {
        self.0.torque.value()
    }

    /// `contacts` as an exact fraction.
    #[getter]
    fn contacts_exact<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyAny>>> {
        exact(py, self.0.contacts)
    }

    /// `torque` as an exact fraction.
    #[getter]
    fn torque_exact<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyAny>>> {
        exact(py, self.0.torque)
    }

    fn __repr__(&self) -> String {
        let torque =
            self.torque().map_or("torque not decided by statics".into(), |torque| format!("torque {torque:.4}"));
        format!("<{:.4} contacts, {torque}>", self.contacts().unwrap_or(0.0))
    }
}

/// What the teeth of a planetary set see in a gear, per turn of the input and per unit of its torque.
#[pyclass(frozen, module = "trainwright.duty")]
pub struct MeshDuty(core::MeshDuty);

crate::class::explained!(MeshDuty, ["duty.mesh_duty"], , []);

/// The wheel, where the set has it.
fn wheel(duty: core::WheelDuty) -> Option<WheelDuty> {
    duty.contacts.is_known().then_some(WheelDuty(duty))
}

#[pymethods]
impl MeshDuty {
    /// Planets, or pairs of planets, around the sun.
    #[getter]
    fn planets(&self) -> u8 {
        self.0.planets
    }

    /// The sun; the large sun of a two-sun set.
    #[getter]
    fn sun(&self) -> Option<WheelDuty> {
        wheel(self.0.sun)
    }

    /// The second sun of a stepped set, the small sun of a two-sun set; else `None`.
    #[getter]
    fn sun_2(&self) -> Option<WheelDuty> {
        wheel(self.0.sun_2)
    }

    /// The ring; `None` where the set has none.
    #[getter]
    fn ring(&self) -> Option<WheelDuty> {
        wheel(self.0.ring)
    }

    /// Times that a tooth of a planet meets each of its partners per turn of the input; `None` where its teeth are not known.
    #[getter]
    fn planet_contacts(&self) -> Option<f64> {
        self.0.planet_contacts.value()
    }

    /// The same for the second planet.
    #[getter]
    fn planet_2_contacts(&self) -> Option<f64> {
        self.0.planet_2_contacts.value()
    }

    fn __repr__(&self) -> String {
        let sun = WheelDuty(self.0.sun);
        format!("<{} planets, sun {}>", self.0.planets, sun.__repr__().trim_matches(['<', '>']))
    }
}

/// How often each tooth of a set meets a planet in a gear of a `Train`, and the torque of its wheel: a `MeshDuty`.
///
/// The planets of the set must be counted in the record. Source: speeds and torques of a set, H. W. Müller (1982).
#[pyfunction]
#[pyo3(signature = (state, *, set))]
pub fn mesh_duty(state: PyRef<'_, State>, set: &str) -> PyResult<MeshDuty> {
    let place = state.set_place(set)?;
    core::mesh_duty(&state.train().train, state.solved(), place).map(MeshDuty).map_err(raise)
}
