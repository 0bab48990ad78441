//! Ratings: classes, bounds, and what tires carry together.

use pyo3::prelude::*;
use trainwright::tow as core;

use crate::array::{Input, Out, map};
use crate::error::answer;

/// Class of a truck by its gross vehicle weight rating in the United States, 1 to 8.
/// Source: 49 CFR 565.15, read in a secondary summary.
///
/// >>> from trainwright.units import lb_to_kg
/// >>> gvwr_class(gvwr_kg=lb_to_kg(14000)), gvwr_class(gvwr_kg=lb_to_kg(14001))
/// (3, 4)
#[pyfunction]
#[pyo3(signature = (*, gvwr_kg))]
pub fn gvwr_class(gvwr_kg: f64) -> PyResult<u32> {
    answer(core::gvwr_class(gvwr_kg))
}

/// Least gross vehicle weight rating, kg, that a maker may state: unloaded, rated cargo and 150 lb a seat.
/// Source: 49 CFR 567.4(g)(3), read in a letter of interpretation.
///
/// >>> round(gvwr_least_kg(unloaded_kg=2540, cargo_kg=998, seats=6))
/// 3946
#[pyfunction]
#[pyo3(signature = (*, unloaded_kg, cargo_kg, seats))]
pub fn gvwr_least_kg(unloaded_kg: f64, cargo_kg: f64, seats: u32) -> PyResult<f64> {
    answer(core::gvwr_least_kg(unloaded_kg, cargo_kg, seats))
}

/// Sum of the axle ratings over the gross vehicle weight rating, kg: below 0 the ratings contradict each other.
/// Source: 49 CFR 567, read in a letter of interpretation.
///
/// >>> gawr_left_kg(gvwr_kg=4500, gawr_front_kg=2100, gawr_rear_kg=2800)
/// 400.0
#[pyfunction]
#[pyo3(signature = (*, gvwr_kg, gawr_front_kg, gawr_rear_kg, out = None))]
pub fn gawr_left_kg<'py>(
    py: Python<'py>,
    gvwr_kg: Input<'py>,
    gawr_front_kg: Input<'py>,
    gawr_rear_kg: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("gvwr_kg", gvwr_kg), ("gawr_front_kg", gawr_front_kg), ("gawr_rear_kg", gawr_rear_kg)];
    map(py, columns, out, |[gvwr, front, rear]| core::gawr_left_kg(gvwr, front, rear))
}

/// What the tires of an axle carry together, kg. `tire_kg` is that of one tire as it is fitted: the dual load where two stand
/// side by side. `passenger` says that passenger tires are on a truck or trailer: their load is divided by 1.10.
/// Source: 49 CFR 571.120, read in a letter of interpretation.
///
/// >>> from trainwright.tire import load_index_kg
/// >>> axle_tires_kg(tire_kg=load_index_kg(121), tires=2)
/// 2900.0
#[pyfunction]
#[pyo3(signature = (*, tire_kg, tires, passenger = false))]
pub fn axle_tires_kg(tire_kg: f64, tires: u32, passenger: bool) -> PyResult<f64> {
    answer(core::axle_tires_kg(tire_kg, tires, passenger))
}
