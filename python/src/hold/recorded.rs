//! One-way clutches and park locks of a family.

use pyo3::prelude::*;
use trainwright::record as core;

use super::contact::LineContact;
use super::one_way::{OneWayHold, Ratchet, Wedge};
use super::park::{ParkGear, Pawl, ToothStrength};
use crate::error::{answer, raise};
use crate::judge::{Reading, Rule};
use crate::record::Family;

/// A one-way clutch of a family with what it may bear.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.hold")]
#[derive(Clone, PartialEq)]
pub struct OneWayPart(core::OneWayPart);

#[pymethods]
impl OneWayPart {
    /// The clutch: a `Wedge` (rollers or sprags) or a `Ratchet`.
    #[getter]
    fn clutch(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        Ok(match self.0.clutch {
            core::OneWayClutch::Wedge(wedge) => Py::new(py, Wedge(wedge))?.into_any(),
            core::OneWayClutch::Ratchet(ratchet) => Py::new(py, Ratchet(ratchet))?.into_any(),
        })
    }

    /// Contact pressure allowed, or stress of a strut, MPa.
    #[getter]
    fn allow_mpa(&self) -> f64 {
        self.0.allow_mpa
    }

    /// Relative standard uncertainty of the capacity, where the record states one.
    #[getter]
    fn capacity_u_rel(&self) -> Option<f64> {
        self.0.capacity_u_rel
    }

    /// Friction on the race, where the record states it.
    #[getter]
    fn friction(&self) -> Option<Reading> {
        self.0.friction.map(Into::into)
    }

    /// Torque, N·m, at the allowed stress. Not a rating.
    fn capacity_nm(&self) -> PyResult<f64> {
        self.0.capacity_nm().map_err(raise)
    }

    /// Whether it holds a torque. `capacity_u_rel` goes before that of the record; one of the two must be there.
    #[pyo3(signature = (need_nm, *, rule, capacity_u_rel = None))]
    fn hold(&self, need_nm: Reading, rule: Rule, capacity_u_rel: Option<f64>) -> PyResult<OneWayHold> {
        let part = core::OneWayPart { capacity_u_rel: capacity_u_rel.or(self.0.capacity_u_rel), ..self.0 };
        answer(part.hold(need_nm.into(), rule.into()))
    }

    fn __repr__(&self) -> String {
        let clutch = match self.0.clutch {
            core::OneWayClutch::Wedge(wedge) => format!("{} at {}°", wedge.count, wedge.half_angle_deg),
            core::OneWayClutch::Ratchet(ratchet) => format!("{} struts, {} notches", ratchet.struts, ratchet.notches),
        };
        format!("<one-way clutch: {clutch}, {} MPa allowed>", self.0.allow_mpa)
    }
}

/// The one-way clutch of a variant, races and rollers or sprags of the steel that `practice.RACE_YOUNG_MPA` names.
#[pyfunction]
pub fn one_way_part(family: PyRef<'_, Family>, variant: &str) -> PyResult<OneWayPart> {
    family.core().one_way_part(variant).map(OneWayPart).map_err(raise)
}

/// The park lock of a variant.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.hold")]
#[derive(Clone, PartialEq)]
pub struct ParkLock(core::ParkLock);

#[pymethods]
impl ParkLock {
    /// The gear.
    #[getter]
    fn gear(&self) -> ParkGear {
        self.0.gear.into()
    }

    /// The pawl.
    #[getter]
    fn pawl(&self) -> Pawl {
        self.0.pawl.into()
    }

    /// What a tooth bears.
    #[getter]
    fn strength(&self) -> ToothStrength {
        self.0.strength.into()
    }

    /// Angle in which the pawl can drop, degrees, where the record has the widths of space and pawl.
    #[getter]
    fn window_deg(&self) -> Option<f64> {
        self.0.window_deg
    }

    /// Pawl on tooth, where the record has the radius of the pawl.
    #[getter]
    fn tip(&self) -> Option<LineContact> {
        self.0.tip.map(Into::into)
    }

    /// Half of the angle of the cone that keeps the pawl in, degrees, where the record has it.
    #[getter]
    fn cone_half_angle_deg(&self) -> Option<f64> {
        self.0.cone_half_angle_deg
    }

    fn __repr__(&self) -> String {
        let core::ParkLock { gear, strength, .. } = self.0;
        format!("<park lock: {} teeth, {} mm wide, yield {} MPa>", gear.teeth, gear.face_mm, strength.yield_mpa)
    }
}

/// The park lock of a variant: its gear, and the pawl and material that the family's park locks share.
#[pyfunction]
pub fn park_lock(family: PyRef<'_, Family>, variant: &str) -> PyResult<ParkLock> {
    family.core().park_lock(variant).map(ParkLock).map_err(raise)
}
