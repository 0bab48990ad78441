//! What every gear is asked for on a grade.

use crate::pointer::{borrow, core, put, slice};
use crate::status::Status;
use trainwright::converter::Characteristic;
use trainwright::tow::{Gearing, LargestSpeed, OfferedGear, Pull, Rig, UnlockedPull};

/// What a unit offers, from its gears and the ratings of its record.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_gearing(
    gears: *const OfferedGear,
    gear_count: usize,
    rated_input_nm: f64,
    rated_reverse_nm: f64,
    rated_output_nm: f64,
    out_gearing: *mut Gearing,
) -> Status {
    unsafe {
        put(out_gearing, || {
            core(Gearing::new(slice(gears, gear_count)?, rated_input_nm, rated_reverse_nm, rated_output_nm))
        })
    }
}

/// Speed and torque of every gear on a grade, lock-up clutch closed, and the gear that holds it. Not a rating.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_pull(rig: *const Rig, grade_pct: f64, speed_km_h: f64, out_pull: *mut Pull) -> Status {
    unsafe { put(out_pull, || core(borrow(rig)?.pull(grade_pct, speed_km_h))) }
}

/// As `tw_tow_pull`, slower by a step at a time until a gear holds with the reserve.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_pull_slowed(
    rig: *const Rig,
    grade_pct: f64,
    speed_km_h: f64,
    out_pull: *mut Pull,
) -> Status {
    unsafe { put(out_pull, || core(borrow(rig)?.pull_slowed(grade_pct, speed_km_h))) }
}

/// Largest speed at which a locked gear holds a grade with the reserve and, if asked, within the ratings.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_largest_speed(
    rig: *const Rig,
    grade_pct: f64,
    at_most_km_h: f64,
    within_ratings: bool,
    out_speed: *mut LargestSpeed,
) -> Status {
    unsafe { put(out_speed, || core(borrow(rig)?.largest_speed(grade_pct, at_most_km_h, within_ratings))) }
}

/// A gear on a grade with the lock-up clutch open: match of engine and converter, and the heat.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_unlocked_pull(
    rig: *const Rig,
    converter: *const Characteristic,
    gear: u32,
    grade_pct: f64,
    speed_km_h: f64,
    out_pull: *mut UnlockedPull,
) -> Status {
    unsafe { put(out_pull, || core(borrow(rig)?.unlocked_pull(borrow(converter)?, gear, grade_pct, speed_km_h))) }
}
