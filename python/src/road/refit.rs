//! A change of tire, axle or transfer case: shift points, speedometer, what to program.

use pyo3::prelude::*;
use trainwright::road as core;

use super::driveline::Driveline;
use crate::array::{Input, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::judge::{Limits, Reading};
use crate::quantity::Number;

class! {
    /// A shift point before and after a change of tire or axle.
    "trainwright.road" ShiftPoint = core::ShiftPoint, explained by ["road.shift_at_output_speed"] {
        /// Road speed before the change.
        before_km_h: f64,
        /// Output-shaft speed before the change.
        before_rpm: f64,
        /// Road speed after the change.
        after_km_h: f64,
        /// Output-shaft speed after the change.
        after_rpm: f64,
    }
}

columns! { ShiftPoint[4]: before_km_h, before_rpm, after_km_h, after_rpm }

/// The shift point when the controller keeps its output-shaft speed, as it does while it is not reprogrammed.
/// Source: follows from the definitions (speeds of a driveline).
///
/// >>> from trainwright import Reading
/// >>> before = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> after = Driveline(axle_ratio=4.27, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> round(shift_at_output_speed(before, after, output_rpm=1500.0).after_km_h, 2)
/// 51.39
#[pyfunction]
#[pyo3(signature = (before, after, *, output_rpm))]
pub fn shift_at_output_speed<'py>(
    py: Python<'py>,
    before: Driveline,
    after: Driveline,
    output_rpm: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("output_rpm", output_rpm)];
    map_class::<ShiftPoint, _, 1, 4>(py, columns, |[n]| core::shift_at_output_speed(before.0, after.0, n))
}

/// The shift point when the schedule keeps its road speed, as it does once tire and axle are programmed.
#[pyfunction]
#[pyo3(signature = (before, after, *, road_km_h))]
pub fn shift_at_road_speed<'py>(
    py: Python<'py>,
    before: Driveline,
    after: Driveline,
    road_km_h: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("road_km_h", road_km_h)];
    map_class::<ShiftPoint, _, 1, 4>(py, columns, |[v]| core::shift_at_road_speed(before.0, after.0, v))
}

class! {
    /// What the speedometer shows when the programmed driveline is not the fitted one.
    "trainwright.road" Speedometer = core::Speedometer, explained by ["road.speedometer"] {
        /// True over shown speed: above 1 it reads low.
        true_over_shown: f64,
        /// True road speed.
        true_km_h: f64,
        /// Shown speed, with the uncertainty that comes from the fitted tire.
        shown_km_h: Reading,
    }
}

/// Speed shown at a true road speed, for a unit that reads the output shaft and divides by what is programmed.
/// Source: follows from the definitions (speedometer).
///
/// >>> from trainwright import Reading
/// >>> old = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> new = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2703.5, u=16.8))
/// >>> round(speedometer(old, new, true_km_h=100.0).shown_km_h.value, 2)
/// 90.18
#[pyfunction]
#[pyo3(signature = (programmed, fitted, *, true_km_h))]
pub fn speedometer(programmed: Driveline, fitted: Driveline, true_km_h: Number) -> PyResult<Speedometer> {
    answer(core::speedometer(programmed.0, fitted.0, true_km_h.value("true_km_h")?))
}

/// Speeds that a speedometer may show at a true speed. Source: UN Regulation 39, paragraph 5.3.
///
/// >>> limits_un_r39(true_km_h=70.0)
/// Limits(lower=70.0, upper=81.0)
#[pyfunction]
#[pyo3(signature = (*, true_km_h))]
pub fn limits_un_r39(true_km_h: Number) -> PyResult<Limits> {
    answer(core::limits_un_r39(true_km_h.value("true_km_h")?))
}

/// Speeds that the speedometer of a commercial vehicle may show at 80 km/h to 50 mph. Source: 49 CFR 393.82.
///
/// >>> limits_49_cfr_393_82(true_km_h=80.0)
/// Limits(lower=72.0, upper=88.0)
#[pyfunction]
#[pyo3(signature = (*, true_km_h))]
pub fn limits_49_cfr_393_82(true_km_h: Number) -> PyResult<Limits> {
    answer(core::limits_49_cfr_393_82(true_km_h.value("true_km_h")?))
}

class! {
    /// What to program, or to fit, so that speedometer and schedule are right again.
    "trainwright.road" NumbersToProgram = core::NumbersToProgram, explained by ["road.numbers_to_program"] {
        /// Axle ratio to program where only that can be set.
        axle_ratio: f64,
        /// Rolling circumference to program where only that can be set.
        circumference_mm: f64,
        /// The same as revolutions per kilometer.
        rev_per_km: f64,
        /// The same as revolutions per mile.
        rev_per_mile: f64,
        /// Sensor pulses per kilometer of the fitted driveline.
        pulses_per_km: f64,
        /// Sensor pulses per mile of the fitted driveline.
        pulses_per_mile: f64,
        /// Axle ratio to fit, so that what is programmed is right unchanged.
        axle_ratio_to_fit: f64,
        /// Relative standard uncertainty of each, from the fitted tire.
        u_rel: f64,
    }
}

/// The number to program after a change of tire, axle or transfer case.
/// Source: follows from the definitions (speedometer).
///
/// >>> from trainwright import Reading
/// >>> old = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> new = Driveline(axle_ratio=4.27, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> round(numbers_to_program(old, new, pulses_per_rev=30).axle_ratio, 2)
/// 4.27
#[pyfunction]
#[pyo3(signature = (programmed, fitted, *, pulses_per_rev))]
pub fn numbers_to_program(programmed: Driveline, fitted: Driveline, pulses_per_rev: f64) -> PyResult<NumbersToProgram> {
    answer(core::numbers_to_program(programmed.0, fitted.0, pulses_per_rev))
}
