//! Damage of a truck's recorded hours.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::duty::{DamageRange, damage_interval};
use trainwright::record as core;

use super::damage::{Damage, DamageInterval, DamageLine};
use super::wheels::RatioCause;
use crate::class::class;
use crate::error::{answer, raise, refuse};
use crate::record::{Family, Fleet};

class! {
    /// A needle thrust bearing in the duty of a truck. Computed from its sizes by ISO 281: not a maker's rating.
    "trainwright.duty" BearingDuty = core::BearingDuty {
        /// Share of the life that nine of ten reach.
        used: f64,
        /// Greatest push, N.
        greatest_n: f64,
        /// Dynamic capacity, N.
        dynamic_n: f64,
        /// Hours that do most, place in `hours`.
        governing: usize,
    }
}

/// Hours on one grade, driven as the record chooses a gear.
#[pyclass(frozen, module = "trainwright.duty")]
pub struct GradeHours(core::GradeHours);

#[pymethods]
impl GradeHours {
    /// Grade, %.
    #[getter]
    fn grade_pct(&self) -> f64 {
        self.0.grade_pct
    }

    /// Speed asked for, km/h.
    #[getter]
    fn asked_km_h(&self) -> f64 {
        self.0.asked_km_h
    }

    /// Speed held, km/h.
    #[getter]
    fn speed_km_h(&self) -> f64 {
        self.0.speed_km_h
    }

    /// Hours of the record, h.
    #[getter]
    fn duration_h(&self) -> f64 {
        self.0.duration_h
    }

    /// Gear.
    #[getter]
    fn gear(&self) -> &str {
        &self.0.gear
    }

    /// Speed of the input, 1/min.
    #[getter]
    fn input_rpm(&self) -> f64 {
        self.0.input_rpm
    }

    /// Torque at the input, N·m.
    #[getter]
    fn input_nm(&self) -> f64 {
        self.0.input_nm
    }

    /// Torque over rating: the greater of input and output.
    #[getter]
    fn use_of_rating(&self) -> f64 {
        self.0.use_of_rating
    }

    fn __repr__(&self) -> String {
        let core::GradeHours { grade_pct, speed_km_h, duration_h, ref gear, use_of_rating, .. } = self.0;
        format!("<{duration_h} h on {grade_pct} % at {speed_km_h} km/h in {gear}: {use_of_rating:.3} of rating>")
    }
}

/// Damage of a truck's hours, set by set, under one assumption about what is not known of it. It ranks; it does not promise a
/// life.
#[pyclass(frozen, module = "trainwright.duty")]
pub struct TruckDuty(core::TruckDuty);

#[pymethods]
impl TruckDuty {
    /// Name of the truck.
    #[getter]
    fn truck(&self) -> &str {
        &self.0.truck
    }

    /// Variant of its unit.
    #[getter]
    fn variant(&self) -> &str {
        &self.0.variant
    }

    /// Tire assumed or recorded.
    #[getter]
    fn tire(&self) -> &str {
        &self.0.tire
    }

    /// Mass of the trailer, assumed or recorded, kg.
    #[getter]
    fn trailer_kg(&self) -> f64 {
        self.0.trailer_kg
    }

    /// Its hours, grade by grade.
    #[getter]
    fn hours(&self) -> Vec<GradeHours> {
        self.0.hours.iter().cloned().map(GradeHours).collect()
    }

    /// Damage by set: a `Damage` by name.
    #[getter]
    fn sets<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let sets = PyDict::new(py);
        self.0.sets.iter().try_for_each(|set| sets.set_item(&set.set, Damage(set.damage)))?;
        Ok(sets)
    }

    /// Line of damage by set; `None` for a set that carries nothing in any forward gear.
    #[getter]
    fn lines<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let lines = PyDict::new(py);
        self.0.sets.iter().try_for_each(|set| lines.set_item(&set.set, set.line.map(DamageLine)))?;
        Ok(lines)
    }

    /// Name of the set with the greatest damage.
    #[getter]
    fn worst_set(&self) -> &str {
        self.0.sets.get(self.0.worst_set).map_or("", |set| &set.set)
    }

    /// Damage of that set.
    #[getter]
    fn damage(&self) -> f64 {
        self.0.damage()
    }

    /// The hours with the greatest torque over rating.
    #[getter]
    fn worst_hours(&self) -> Option<GradeHours> {
        self.0.hours.get(self.0.worst_hours).cloned().map(GradeHours)
    }

    /// The thrust bearing of the record; `None` where it does not say what pushes on it.
    #[getter]
    fn bearing(&self) -> Option<BearingDuty> {
        self.0.bearing.map(BearingDuty)
    }

    /// Damage of the worst set where its slope is only known within limits, and its reference torque to a relative half width.
    /// Source: follows from the definitions (convex in the slope).
    #[pyo3(signature = (*, slope_low, slope_high, reference_share))]
    fn interval(&self, slope_low: f64, slope_high: f64, reference_share: f64) -> PyResult<DamageInterval> {
        let worst = self.0.sets.get(self.0.worst_set);
        let Some((set, line)) = worst.and_then(|set| Some((set, set.line?))) else {
            return Err(refuse("NO_ANSWER", "sets", "sets: no set carries torque in a forward gear".into()));
        };
        if !(0.0..1.0).contains(&reference_share) {
            let message = format!("reference_share = {reference_share}: outside 0 to 1; check the value and its unit");
            return Err(refuse("OUT_OF_RANGE", "reference_share", message));
        }
        let known = DamageRange {
            slope_low,
            slope_high,
            reference_low_nm: line.reference_nm * (1.0 - reference_share),
            reference_high_nm: line.reference_nm * (1.0 + reference_share),
            reference_contacts: line.reference_contacts,
        };
        answer(damage_interval(&set.stages, known))
    }

    fn __repr__(&self) -> String {
        let (truck, tire, trailer) = (&self.0.truck, &self.0.tire, self.0.trailer_kg);
        format!("<{truck} on {tire} with {trailer} kg: {} {:.3e}>", self.worst_set(), self.0.damage())
    }
}

/// Damage of a truck's recorded hours, set by set: a `TruckDuty`. Cycles from member speeds, torque from each set's own
/// multiplier, gear and speed as the record chooses them; where no gear holds, the speed falls by `speed_step_km_h`.
///
/// `tire` and `trailer_kg` stand for what the record does not know; without them an unknown one is refused. `slope` instead of
/// the record's. It ranks; it does not promise a life. Source: M. A. Miner, 1945.
#[pyfunction]
#[pyo3(signature = (family, fleet, truck, *, speed_step_km_h, tire = None, trailer_kg = None, slope = None))]
pub fn truck_duty(
    family: PyRef<'_, Family>,
    fleet: PyRef<'_, Fleet>,
    truck: &str,
    speed_step_km_h: f64,
    tire: Option<&str>,
    trailer_kg: Option<f64>,
    slope: Option<f64>,
) -> PyResult<TruckDuty> {
    let mut record = fleet.truck(truck)?.clone();
    if let Some(tire) = tire {
        record.tire = tire.to_owned();
    }
    record.trailer_kg = trailer_kg.or(record.trailer_kg);
    let rule = core::DutyRule { slope, speed_step_km_h };
    fleet.record.duty(&family.record, &record, rule).map(TruckDuty).map_err(raise)
}

/// `truck_duty` under every assumption that the record leaves open: each tire that it may be, and masses of the trailer at
/// `steps` places of its range. A single one where nothing is open.
///
/// Damage does not simply grow with the mass: a heavier trailer may bring a lower gear, so two steps may miss the greatest.
#[pyfunction]
#[pyo3(signature = (family, fleet, truck, *, speed_step_km_h, steps, slope = None))]
pub fn truck_duty_cases(
    py: Python<'_>,
    family: PyRef<'_, Family>,
    fleet: PyRef<'_, Fleet>,
    truck: &str,
    speed_step_km_h: f64,
    steps: u32,
    slope: Option<f64>,
) -> PyResult<Vec<TruckDuty>> {
    let record = fleet.truck(truck)?;
    let (family, fleet) = (&family.record, &fleet.record);
    let rule = core::DutyRule { slope, speed_step_km_h };
    let cases = py.detach(|| fleet.duty_cases(family, record, steps, rule)).map_err(raise)?;
    Ok(cases.into_iter().map(TruckDuty).collect())
}

/// What may be wrong with the wheels of a truck, for `weigh_causes`: `RatioCause` by name. One change at a time: as programmed,
/// each other tire and each other axle ratio of the fleet's record.
/// Source: follows from the definitions (road speed over the speed that the unit computes).
#[pyfunction]
pub fn wheel_causes<'py>(py: Python<'py>, fleet: PyRef<'_, Fleet>, truck: &str) -> PyResult<Bound<'py, PyDict>> {
    let causes = PyDict::new(py);
    for (name, cause) in fleet.record.wheel_causes(fleet.truck(truck)?).map_err(raise)? {
        causes.set_item(name, RatioCause(cause))?;
    }
    Ok(causes)
}
