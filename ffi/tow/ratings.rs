//! Ratings: classes, bounds, and what tires carry together. Every rating is an input, from the placard.

use crate::pointer::{core, put};
use crate::status::Status;
use trainwright::tow;

/// Class of a truck by its gross vehicle weight rating in the United States, 1 to 8.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_gvwr_class(gvwr_kg: f64, out_class: *mut u32) -> Status {
    unsafe { put(out_class, || core(tow::gvwr_class(gvwr_kg))) }
}

/// Least gross vehicle weight rating, kg, that a maker may state.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_gvwr_least_kg(
    unloaded_kg: f64,
    cargo_kg: f64,
    seats: u32,
    out_gvwr_kg: *mut f64,
) -> Status {
    unsafe { put(out_gvwr_kg, || core(tow::gvwr_least_kg(unloaded_kg, cargo_kg, seats))) }
}

/// Sum of the axle ratings over the gross vehicle weight rating, kg: below 0 the ratings contradict each other.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_gawr_left_kg(
    gvwr_kg: f64,
    gawr_front_kg: f64,
    gawr_rear_kg: f64,
    out_left_kg: *mut f64,
) -> Status {
    unsafe { put(out_left_kg, || core(tow::gawr_left_kg(gvwr_kg, gawr_front_kg, gawr_rear_kg))) }
}

/// What the tires of an axle carry together, kg; passenger tires on a truck or trailer are divided by 1.10.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_axle_tires_kg(
    tire_kg: f64,
    tires: u32,
    passenger: bool,
    out_axle_kg: *mut f64,
) -> Status {
    unsafe { put(out_axle_kg, || core(tow::axle_tires_kg(tire_kg, tires, passenger))) }
}
