//! Needle thrust bearings.

use pyo3::prelude::*;
use trainwright::hold as core;

use crate::array::{Input, map_class};
use crate::class::{class, columns};
use crate::error::{answer, raise, refuse};
use crate::judge::{Judgment, Reading, Rule};
use crate::quantity::Number;

class! {
    /// A needle thrust bearing: one row of needles between two flat races.
    ///
    /// >>> race = NeedleThrust(needles=32, needle_diameter_mm=2.5, needle_length_mm=6, pitch_diameter_mm=56)
    /// >>> race.needle_capacity().static_n
    /// 105600.0
    "trainwright.hold" NeedleThrust = core::NeedleThrust {
        /// Needles, 2 to 400.
        needles: u32,
        /// Diameter of a needle, mm.
        needle_diameter_mm: f64,
        /// Length of a needle that bears on the race, mm: without its rounded ends.
        needle_length_mm: f64,
        /// Diameter through the middle of the needles, mm.
        pitch_diameter_mm: f64,
    }
}

class! {
    /// Capacity of a needle thrust bearing with what made it. Not a maker's rating.
    "trainwright.hold" NeedleCapacity = core::NeedleCapacity, explained by ["hold.needle_capacity"] {
        /// Inside diameter that the needles sweep, mm.
        inside_mm: f64,
        /// Outside diameter that the needles sweep, mm: the race face must reach it.
        outside_mm: f64,
        /// Space between two needles at their inner ends, mm.
        gap_mm: f64,
        /// Needle diameter over pitch diameter.
        size_ratio: f64,
        /// The standard's f_c, N/mm² by its powers of millimeters.
        dynamic_factor: f64,
        /// Static axial capacity, N.
        static_n: f64,
        /// Dynamic axial capacity, N.
        dynamic_n: f64,
    }
}

class! {
    /// Life under a load.
    "trainwright.hold" RatingLife = core::RatingLife, explained by ["hold.rating_life"] {
        /// Load over dynamic capacity, 0.5 at most.
        load_share: f64,
        /// Life that nine of ten reach, million revolutions.
        life_mrev: f64,
        /// The same in hours; infinite at rest.
        life_h: f64,
    }
}

columns! { RatingLife[3]: load_share, life_mrev, life_h }

class! {
    /// Constant load and speed that stand for a duty.
    "trainwright.hold" MeanLoad = core::MeanLoad, explained by ["hold.mean_load"] {
        /// Mean load, N.
        load_n: f64,
        /// Mean speed, 1/min.
        speed_rpm: f64,
        /// Greatest load of a stage that takes time, N: the static check takes this one.
        greatest_n: f64,
        /// Stage that does most of the damage.
        governing: u32,
        /// Its part of the damage, 0 to 1.
        governing_share: f64,
    }
}

class! {
    /// Whether a bearing stands a load at rest.
    "trainwright.hold" NeedleHold = core::NeedleHold, explained by ["hold.needle_hold"], judged in "N" {
        /// Capacity.
        capacity: NeedleCapacity,
        /// Static capacity over load.
        static_factor: f64,
        /// The load against the static capacity over the least factor.
        judgment: Judgment,
    }
}

class! {
    /// Whether a bearing reaches a life.
    "trainwright.hold" NeedleLasts = core::NeedleLasts, explained by ["hold.needle_lasts"], judged in "N" {
        /// Capacity.
        capacity: NeedleCapacity,
        /// Life at the best estimate of the load.
        life: RatingLife,
        /// Load at which the life wanted is just reached, N.
        load_for_life_n: f64,
        /// The load against it.
        judgment: Judgment,
    }
}

#[pymethods]
impl NeedleThrust {
    /// Static and dynamic axial capacity; needles that do not fit around the pitch circle are refused.
    /// Source: ISO 281:2007 and ISO 76:2006, thrust roller bearings at 90°.
    fn needle_capacity(&self) -> PyResult<NeedleCapacity> {
        answer(self.0.needle_capacity())
    }

    /// Whether the bearing stands a load at rest without lasting dents: capacity over load against a least factor, chosen.
    /// Source: ISO 76:2006, static load safety factor.
    #[pyo3(signature = (load_n, *, least_static_factor, rule))]
    fn needle_hold(&self, load_n: Reading, least_static_factor: f64, rule: Rule) -> PyResult<NeedleHold> {
        answer(self.0.needle_hold(load_n.into(), least_static_factor, rule.into()))
    }

    /// Whether nine of ten bearings reach a life under a load; judged in the load, where no straight line stands for the life.
    /// Source: ISO 281:2007, basic rating life solved for the load.
    ///
    /// >>> race = NeedleThrust(needles=32, needle_diameter_mm=2.5, needle_length_mm=6, pitch_diameter_mm=56)
    /// >>> rule = judge.Rule.stated_chances(go=0.95, no_go=0.05)
    /// >>> load = judge.Reading(value=3680, u=184)
    /// >>> race.needle_lasts(load, speed_rpm=1500, least_life_h=3500, rule=rule).judgment.verdict
    /// 'NOT PROVEN'
    #[pyo3(signature = (load_n, *, speed_rpm, least_life_h, rule))]
    fn needle_lasts(
        &self,
        load_n: Reading,
        speed_rpm: Number,
        least_life_h: Number,
        rule: Rule,
    ) -> PyResult<NeedleLasts> {
        let (speed, hours) = (speed_rpm.value("speed_rpm")?, least_life_h.value("least_life_h")?);
        answer(self.0.needle_lasts(load_n.into(), speed, hours, rule.into()))
    }
}

/// Life that nine of ten bearings reach: a `RatingLife`, or a dictionary of arrays for arrays. `exponent` is
/// `BALL_EXPONENT` or `ROLLER_EXPONENT`. Above half of the capacity the equation does not hold, and there is no answer.
/// Source: ISO 281:2007, basic rating life.
///
/// >>> rating_life(capacity_n=16000, load_n=2000, exponent=BALL_EXPONENT, speed_rpm=1000).life_mrev
/// 512.0
#[pyfunction]
#[pyo3(signature = (*, capacity_n, load_n, exponent, speed_rpm))]
pub fn rating_life<'py>(
    py: Python<'py>,
    capacity_n: Input<'py>,
    load_n: Input<'py>,
    exponent: Input<'py>,
    speed_rpm: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("capacity_n", capacity_n), ("load_n", load_n), ("exponent", exponent), ("speed_rpm", speed_rpm)];
    map_class::<RatingLife, _, 4, 3>(py, columns, |[capacity, load, exponent, speed]| {
        core::rating_life(capacity, load, exponent, speed)
    })
}

/// Constant load that wears a bearing as much as a duty: load, speed and share of the time of each stage.
/// Source: ISO 281, equal sum of damage.
///
/// >>> mean = mean_load(load_n=[6000, 3000, 1000], speed_rpm=[1500, 2500, 3000], share=[0.1, 0.3, 0.6], exponent=ROLLER_EXPONENT)
/// >>> round(mean.load_n, 1), mean.governing
/// (2862.1, 0)
#[pyfunction]
#[pyo3(signature = (*, load_n, speed_rpm, share, exponent))]
pub fn mean_load(load_n: Vec<f64>, speed_rpm: Vec<f64>, share: Vec<f64>, exponent: f64) -> PyResult<MeanLoad> {
    if load_n.len() != speed_rpm.len() || load_n.len() != share.len() {
        let (loads, speeds, shares) = (load_n.len(), speed_rpm.len(), share.len());
        let message = format!("{loads} loads, {speeds} speeds and {shares} shares: give one of each for every stage");
        return Err(refuse("INCONSISTENT", "load_n, speed_rpm, share", message));
    }
    let stages: Vec<_> = load_n
        .into_iter()
        .zip(speed_rpm)
        .zip(share)
        .map(|((load_n, speed_rpm), share)| core::LoadStage { load_n, speed_rpm, share })
        .collect();
    core::mean_load(&stages, exponent).map(Into::into).map_err(raise)
}
