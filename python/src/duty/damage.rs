//! Damage of a duty.

use pyo3::prelude::*;
use trainwright::duty as core;

use super::series;
use crate::class::class;
use crate::error::{answer, refuse};

class! {
    /// Life of a part against its torque: a straight line between the logarithms.
    "trainwright.duty" DamageLine = core::DamageLine, checked by core::DamageLine::checked, explained by ["duty.from_rating"] {
        /// Slope m: life falls with the m-th power of torque; 1 to 20.
        slope: f64,
        /// Torque at which the reference number of contacts is reached, N·m.
        reference_nm: f64,
        /// Reference number of contacts (or load cycles, or turns).
        reference_contacts: f64,
    }
}

class! {
    /// Damage of a duty. It ranks; it does not promise a life.
    "trainwright.duty" Damage = core::Damage, explained by ["duty.damage"] {
        /// Sum over the stages; 1 where the reference line is met.
        total: f64,
        /// Damage of the stage that does most.
        greatest: f64,
        /// That stage.
        governing: u32,
        /// Its part of the sum, 0 to 1.
        governing_share: f64,
        /// Contacts of all stages.
        contacts: f64,
    }
}

class! {
    /// What is known of a line of damage.
    "trainwright.duty" DamageRange = core::DamageRange {
        /// Least slope.
        slope_low: f64,
        /// Greatest slope.
        slope_high: f64,
        /// Least reference torque, N·m.
        reference_low_nm: f64,
        /// Greatest reference torque, N·m.
        reference_high_nm: f64,
        /// Reference number of contacts.
        reference_contacts: f64,
    }
}

class! {
    /// Least and greatest damage.
    "trainwright.duty" DamageInterval = core::DamageInterval, explained by ["duty.damage_interval"] {
        /// Least damage.
        lower: f64,
        /// Greatest damage.
        upper: f64,
        /// Slope at the least damage.
        slope_at_lower: f64,
        /// Slope at the greatest damage.
        slope_at_upper: f64,
    }
}

fn stages(contacts: &Bound<'_, PyAny>, torque_nm: &Bound<'_, PyAny>) -> PyResult<Vec<core::DutyStage>> {
    let (contacts, torques) = (series("contacts", contacts)?, series("torque_nm", torque_nm)?);
    let (contacts, torques) = (contacts.as_slice()?, torques.as_slice()?);
    if contacts.len() != torques.len() {
        let message =
            format!("{} contacts and {} torques: give one of each for every stage", contacts.len(), torques.len());
        return Err(refuse("INCONSISTENT", "contacts, torque_nm", message));
    }
    let pairs = contacts.iter().zip(torques);
    Ok(pairs.map(|(&contacts, &torque_nm)| core::DutyStage { contacts, torque_nm }).collect())
}

#[pymethods]
impl DamageLine {
    /// Line of damage of a gear set from the rating of its unit. Source: the record's rule.
    ///
    /// >>> line = DamageLine.from_rating(slope=6.5, reference_contacts=1e6, over_rated=2.0, worst_share=0.6356, rated_nm=640)
    /// >>> round(line.reference_nm, 1)
    /// 813.6
    #[staticmethod]
    #[pyo3(signature = (*, slope, reference_contacts, over_rated, worst_share, rated_nm))]
    fn from_rating(
        slope: f64,
        reference_contacts: f64,
        over_rated: f64,
        worst_share: f64,
        rated_nm: f64,
    ) -> PyResult<Self> {
        answer(core::DamageLine::from_rating(slope, reference_contacts, over_rated, worst_share, rated_nm))
    }

    /// Damage that a duty collects, stage by stage. Source: M. A. Miner, 1945.
    ///
    /// >>> line = DamageLine(slope=3, reference_nm=100, reference_contacts=1e6)
    /// >>> round(line.damage(contacts=[1e5, 5e5], torque_nm=[200, 100]).total, 12)
    /// 1.3
    #[pyo3(signature = (*, contacts, torque_nm))]
    fn damage(&self, contacts: Bound<'_, PyAny>, torque_nm: Bound<'_, PyAny>) -> PyResult<Damage> {
        answer(self.0.damage(&stages(&contacts, &torque_nm)?))
    }
}

/// Least and greatest damage of a duty where slope and reference are only known within limits.
/// Source: follows from the definitions (convex in the slope).
///
/// >>> known = DamageRange(slope_low=5, slope_high=8, reference_low_nm=100, reference_high_nm=100, reference_contacts=1e6)
/// >>> damage_interval(contacts=[1e6], torque_nm=[50], known=known).upper
/// 0.03125
#[pyfunction]
#[pyo3(signature = (*, contacts, torque_nm, known))]
pub fn damage_interval(
    contacts: Bound<'_, PyAny>,
    torque_nm: Bound<'_, PyAny>,
    known: DamageRange,
) -> PyResult<DamageInterval> {
    answer(core::damage_interval(&stages(&contacts, &torque_nm)?, known.0))
}
