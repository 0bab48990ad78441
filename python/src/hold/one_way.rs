//! One-way clutches.

use std::sync::Arc;

use pyo3::prelude::*;
use trainwright::hold as core;
use trainwright::record::NamedTrain;
use trainwright::train::Load as CoreLoad;

use super::contact::{ContactBody, LinePressure};
use crate::array::{Input, Out, map};
use crate::class::{class, words};
use crate::error::{answer, raise, refuse};
use crate::judge::{Budget, Judgment, Reading, Rule};
use crate::train::{Load, StateKind, Train, exact};

class! {
    /// Rollers or sprags between two races.
    ///
    /// >>> race, sprag = (ContactBody(radius_mm=r, young_mpa=206000, poisson=0.3) for r in (49, 5))
    /// >>> sprags = Wedge(count=14, race=race, body=sprag, length_mm=8, half_angle_deg=5.5)
    /// >>> round(sprags.wedge_capacity_nm(allow_mpa=4200), 2)
    /// 1173.86
    "trainwright.hold" Wedge = core::Wedge {
        /// Rollers or sprags.
        count: u32,
        /// The cylindrical race where they bear hardest, its radius negative for an outer race. Sprags: the inner race.
        race: ContactBody,
        /// Roller or sprag where it bears on that race.
        body: ContactBody,
        /// Length of the contact line, mm.
        length_mm: f64,
        /// Roller: half of the angle between ramp and race. Sprag: strut angle at that race. Degrees.
        half_angle_deg: f64,
    }
}

class! {
    /// Forces and pressure of one roller or sprag.
    "trainwright.hold" WedgeLoad = core::WedgeLoad, explained by ["hold.wedged"] {
        /// Share of the torque at the race, N.
        tangential_n: f64,
        /// Force across the contact, N.
        normal_n: f64,
        /// Friction without which it does not lock.
        friction_needed: f64,
        /// The contact under that force.
        pressure: LinePressure,
    }
}

class! {
    /// Whether a one-way clutch holds, and what that rests on. A computed capacity is not a rating.
    "trainwright.hold" OneWayHold = core::OneWayHold, explained by ["hold.wedge_hold", "hold.strut_hold"], judged in "N·m",
        inputs ["allowed stress", "geometry", "demand"] {
        /// Torque at the allowed stress, N·m.
        capacity_nm: f64,
        /// Torque to hold, N·m.
        need_nm: Reading,
        /// Capacity over demand.
        margin: f64,
        /// The torque to spare, capacity less demand, against 0.
        judgment: Judgment,
        /// Uncertainty of the torque to spare: allowed stress, geometry, demand, in this order.
        budget: Budget,
    }
}

#[pymethods]
impl Wedge {
    /// Forces and contact pressure under a torque.
    /// Source: follows from the definitions (equilibrium of a body between two faces); Shigley for the contact.
    #[pyo3(signature = (*, torque_nm))]
    fn wedged(&self, torque_nm: f64) -> PyResult<WedgeLoad> {
        answer(self.0.wedged(torque_nm))
    }

    /// Torque, N·m, at which the contact reaches an allowed pressure.
    /// Source: follows from the definitions (`wedged` solved for the torque).
    #[pyo3(signature = (*, allow_mpa, out = None))]
    fn wedge_capacity_nm<'py>(
        &self,
        py: Python<'py>,
        allow_mpa: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("allow_mpa", allow_mpa)], out, |[allow]| self.0.wedge_capacity_nm(allow))
    }

    /// Whether it holds a torque. `geometry_u_rel` is the relative standard uncertainty of the capacity from angle, radii,
    /// length and uneven load. Source: JCGM 100:2008, equation 10.
    #[pyo3(signature = (need_nm, *, allow_mpa, geometry_u_rel, rule))]
    fn wedge_hold(
        &self,
        need_nm: Reading,
        allow_mpa: Reading,
        geometry_u_rel: f64,
        rule: Rule,
    ) -> PyResult<OneWayHold> {
        answer(self.0.wedge_hold(need_nm.into(), allow_mpa.into(), geometry_u_rel, rule.into()))
    }
}

/// Whether a wedge holds by itself: a roller or sprag, and the cone or roller that keeps a pawl in. The friction is judged
/// against the tangent of half of the angle between the faces. Source: follows from the definitions (friction angle).
///
/// >>> from trainwright.judge import Reading, Rule
/// >>> rule = Rule.stated_chances(go=0.95, no_go=0.05)
/// >>> locks(half_angle_deg=5.5, friction=Reading(value=0.12, u=0.01), rule=rule).verdict
/// 'GO'
#[pyfunction]
#[pyo3(signature = (*, half_angle_deg, friction, rule))]
pub fn locks(half_angle_deg: f64, friction: Reading, rule: Rule) -> PyResult<Judgment> {
    answer(core::locks(half_angle_deg, friction.into(), rule.into()))
}

class! {
    /// Struts that drop into notches.
    ///
    /// >>> wren = Ratchet(struts=9, notches=42, carrying=2, strut_width_mm=12.5, strut_thickness_mm=4.2, pitch_radius_mm=57)
    /// >>> wren.ratchet_index().together
    /// 3
    "trainwright.hold" Ratchet = core::Ratchet {
        /// Struts, equally spaced.
        struts: u32,
        /// Notches, equally spaced.
        notches: u32,
        /// Struts that carry, 1 to those that drop in together.
        carrying: u32,
        /// Width of a strut, mm.
        strut_width_mm: f64,
        /// Thickness of a strut, mm.
        strut_thickness_mm: f64,
        /// Radius at which the struts carry, mm.
        pitch_radius_mm: f64,
        /// Angle of a strut to the tangent, degrees.
        strut_deg: f64 = 0.0,
    }
}

class! {
    /// How a ratchet indexes.
    "trainwright.hold" RatchetIndex = core::RatchetIndex, explained by ["hold.ratchet_index"] {
        /// Greatest angle that it turns back before a strut drops in, degrees.
        backlash_deg: f64,
        /// Positions on a turn.
        positions: u32,
        /// Struts that drop in together.
        together: u32,
    }
}

class! {
    /// Forces and stress of one strut.
    "trainwright.hold" StrutLoad = core::StrutLoad, explained by ["hold.strut_load"] {
        /// Share of the torque at the pitch radius, N.
        tangential_n: f64,
        /// Force along the strut, N.
        strut_n: f64,
        /// Force that pushes the races apart, N.
        separating_n: f64,
        /// Compression of the strut, MPa.
        stress_mpa: f64,
    }
}

#[pymethods]
impl Ratchet {
    /// Backlash, and how many struts drop in together.
    /// Source: follows from the definitions (coincidence of two equal divisions of a circle).
    fn ratchet_index(&self) -> PyResult<RatchetIndex> {
        answer(self.0.ratchet_index())
    }

    /// Force along a strut and its stress under a torque. Source: follows from the definitions (equilibrium of a strut).
    #[pyo3(signature = (*, torque_nm))]
    fn strut_load(&self, torque_nm: f64) -> PyResult<StrutLoad> {
        answer(self.0.strut_load(torque_nm))
    }

    /// Torque, N·m, at which the struts that carry reach an allowed stress.
    /// Source: follows from the definitions (`strut_load` solved for the torque).
    #[pyo3(signature = (*, allow_mpa, out = None))]
    fn strut_capacity_nm<'py>(
        &self,
        py: Python<'py>,
        allow_mpa: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("allow_mpa", allow_mpa)], out, |[allow]| self.0.strut_capacity_nm(allow))
    }

    /// Whether the struts hold a torque. `geometry_u_rel` is the relative standard uncertainty of the capacity from sizes,
    /// radius and uneven load. Source: JCGM 100:2008, equation 10.
    #[pyo3(signature = (need_nm, *, allow_mpa, geometry_u_rel, rule))]
    fn strut_hold(
        &self,
        need_nm: Reading,
        allow_mpa: Reading,
        geometry_u_rel: f64,
        rule: Rule,
    ) -> PyResult<OneWayHold> {
        answer(self.0.strut_hold(need_nm.into(), allow_mpa.into(), geometry_u_rel, rule.into()))
    }
}

class! {
    /// How a one-way clutch closes its backlash.
    "trainwright.hold" TakeUp = core::TakeUp, explained by ["hold.take_up"] {
        /// Time to close it, s.
        time_s: f64,
        /// Speed at the end, 1/min.
        speed_rpm: f64,
        /// Energy that the parts take up, J.
        energy_j: f64,
    }
}

/// Speed and energy with which a backlash closes under a torque, from rest.
/// Source: follows from the definitions (constant acceleration).
///
/// >>> round(take_up(backlash_deg=360 / 126, torque_nm=100, inertia_kg_m2=0.02).energy_j, 3)
/// 4.987
#[pyfunction]
#[pyo3(signature = (*, backlash_deg, torque_nm, inertia_kg_m2))]
pub fn take_up(backlash_deg: f64, torque_nm: f64, inertia_kg_m2: f64) -> PyResult<TakeUp> {
    answer(core::take_up(backlash_deg, torque_nm, inertia_kg_m2))
}

words! {
    "role" OneWayRole = core::OneWayRole {
        Holds = "holds",
        Overruns = "overruns",
        CouldHold = "could hold",
        CannotHold = "cannot hold",
        Idle = "idle",
    }
}

/// A one-way clutch in a gear.
#[pyclass(frozen, module = "trainwright.hold")]
pub struct OneWayDuty {
    named: Arc<NamedTrain>,
    duty: core::OneWayDuty,
}

crate::class::explained!(OneWayDuty, ["hold.one_way_duty"], , []);

#[pymethods]
impl OneWayDuty {
    /// `"holds"`; `"overruns"`; beside a closed element `"could hold"` in its place or `"cannot hold"`, because the reaction
    /// has the other sense; `"idle"` with neither slip nor torque.
    #[getter]
    fn role(&self) -> OneWayRole {
        OneWayRole(self.duty.role)
    }

    /// Name of the closed element beside it where it stands, else None.
    #[getter]
    fn beside(&self) -> Option<&str> {
        self.named.elements.get(usize::from(self.duty.beside)).map(String::as_str)
    }

    /// What the gear turns into with the clutch fitted the wrong way round: `"gear"`, `"neutral"`, `"tied up"` and so on.
    #[getter]
    fn backwards(&self) -> StateKind {
        StateKind(self.duty.backwards)
    }

    /// Torque on its first member per unit of input torque: what it carries, or would in place of the element beside it.
    #[getter]
    fn share(&self) -> Option<f64> {
        self.duty.share.value()
    }

    /// The share as a `fractions.Fraction`.
    #[getter]
    fn share_exact<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyAny>>> {
        exact(py, self.duty.share)
    }

    /// Speed of its first member relative to the second per unit of input speed.
    #[getter]
    fn slip(&self) -> Option<f64> {
        self.duty.slip.value()
    }

    /// The slip as a `fractions.Fraction`.
    #[getter]
    fn slip_exact<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyAny>>> {
        exact(py, self.duty.slip)
    }

    fn __repr__(&self) -> String {
        let beside = self.beside().map(|element| format!(" beside {element}")).unwrap_or_default();
        let text = |value: Option<f64>| value.map_or("open".into(), |value| format!("{value:.4}"));
        format!("<{}{beside}: share {}, slip {}>", self.role().word(), text(self.share()), text(self.slip()))
    }
}

/// What the closed elements ask of a one-way clutch under a load (`"drive"` or `"coast"`): `closed` is a list of names without
/// one-way clutches. Source: follows from the definitions (a one-way clutch as a one-sided constraint).
#[pyfunction]
#[pyo3(signature = (train, element, *, closed, load = Load(CoreLoad::Drive)))]
pub fn one_way_duty(train: PyRef<'_, Train>, element: &str, closed: Vec<String>, load: Load) -> PyResult<OneWayDuty> {
    let named = train.named();
    let place = named.elements.iter().position(|name| name == element).ok_or_else(|| {
        let known = named.elements.join(", ");
        refuse("MISSING", "element", format!("element: the train has no {element:?}; it has {known}"))
    })?;
    let duty = core::one_way_duty(&named.train, place as u8, train.mask(&closed)?, load.0).map_err(raise)?;
    Ok(OneWayDuty { named: named.clone(), duty })
}
