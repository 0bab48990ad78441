//! What every gear is asked for on a grade.

use crate::pointer::{borrow, core, put, read, slice};
use crate::status::Status;
use trainwright::converter::{Characteristic, EngineCurve};
use trainwright::tow::{self, GearRule, Gearing, Haul, LargestSpeed, OfferedGear, Pull, UnlockedPull};

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
pub unsafe extern "C" fn tw_tow_pull(
    haul: *const Haul,
    gearing: *const Gearing,
    engine: *const EngineCurve,
    rule: *const GearRule,
    grade_pct: f64,
    speed_km_h: f64,
    out_pull: *mut Pull,
) -> Status {
    unsafe {
        put(out_pull, || {
            core(tow::pull(read(haul)?, borrow(gearing)?, borrow(engine)?, read(rule)?, grade_pct, speed_km_h))
        })
    }
}

/// As `tw_tow_pull`, slower by a step at a time until a gear holds with the reserve.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_pull_slowed(
    haul: *const Haul,
    gearing: *const Gearing,
    engine: *const EngineCurve,
    rule: *const GearRule,
    grade_pct: f64,
    speed_km_h: f64,
    step_km_h: f64,
    out_pull: *mut Pull,
) -> Status {
    unsafe {
        put(out_pull, || {
            let (haul, rule) = (read(haul)?, read(rule)?);
            core(tow::pull_slowed(haul, borrow(gearing)?, borrow(engine)?, rule, grade_pct, speed_km_h, step_km_h))
        })
    }
}

/// Largest speed at which a locked gear holds a grade with the reserve and, if asked, within the ratings.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_largest_speed(
    haul: *const Haul,
    gearing: *const Gearing,
    engine: *const EngineCurve,
    rule: *const GearRule,
    grade_pct: f64,
    at_most_km_h: f64,
    within_ratings: bool,
    out_speed: *mut LargestSpeed,
) -> Status {
    unsafe {
        put(out_speed, || {
            let (haul, rule, gearing, engine) = (read(haul)?, read(rule)?, borrow(gearing)?, borrow(engine)?);
            core(tow::largest_speed(haul, gearing, engine, rule, grade_pct, at_most_km_h, within_ratings))
        })
    }
}

/// A gear on a grade with the lock-up clutch open: match of engine and converter, and the heat.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_unlocked_pull(
    haul: *const Haul,
    gearing: *const Gearing,
    engine: *const EngineCurve,
    converter: *const Characteristic,
    gear: u32,
    grade_pct: f64,
    speed_km_h: f64,
    out_pull: *mut UnlockedPull,
) -> Status {
    unsafe {
        put(out_pull, || {
            let (haul, gearing, engine) = (read(haul)?, borrow(gearing)?, borrow(engine)?);
            core(tow::unlocked_pull(haul, gearing, engine, borrow(converter)?, gear, grade_pct, speed_km_h))
        })
    }
}
