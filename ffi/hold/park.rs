//! Park gear and pawl. Parking brake first, then Park; chock; never stand downhill.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::hold::{
    self, Ejection, FreeRoll, Latch, LineContact, LinePressure, ParkComparison, ParkGear, ParkHold, ParkLoad,
    ParkStress, Parked, Pawl, ToothStrength,
};
use trainwright::judge::{Limits, Rule};
use trainwright::road::Driveline;

/// Torque at the park gear of a vehicle that only the park lock holds on a grade.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_park_load(
    driveline: *const Driveline,
    mass_kg: f64,
    grade_pct: f64,
    rocking_factor: f64,
    out_load: *mut ParkLoad,
) -> Status {
    unsafe { put(out_load, || core(hold::park_load(read(driveline)?, mass_kg, grade_pct, rocking_factor))) }
}

/// Stress at the root of a park-gear tooth under a torque at the output shaft.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_tooth_stress(
    gear: *const ParkGear,
    torque_nm: f64,
    stress_factor: f64,
    out_stress: *mut ParkStress,
) -> Status {
    unsafe { put(out_stress, || core(read(gear)?.tooth_stress(torque_nm, stress_factor))) }
}

/// Load and root stress of a vehicle on a grade in one.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_stress_on_grade(
    gear: *const ParkGear,
    parked: *const Parked,
    stress_factor: f64,
    out_stress: *mut ParkStress,
) -> Status {
    unsafe { put(out_stress, || core(read(gear)?.stress_on_grade(read(parked)?, stress_factor))) }
}

/// Grade, %, on which the root of a tooth reaches a stress; 100 for that or steeper. The grade in parked is not used.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_largest_grade_pct(
    gear: *const ParkGear,
    parked: *const Parked,
    allow_mpa: f64,
    stress_factor: f64,
    out_grade_pct: *mut f64,
) -> Status {
    unsafe { put(out_grade_pct, || core(read(gear)?.largest_grade_pct(read(parked)?, allow_mpa, stress_factor))) }
}

/// Whether the root stress stays below yield, with its uncertainty. Not a rating.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_park_hold(
    gear: *const ParkGear,
    parked: *const Parked,
    strength: *const ToothStrength,
    rule: *const Rule,
    out_hold: *mut ParkHold,
) -> Status {
    unsafe { put(out_hold, || core(read(gear)?.park_hold(read(parked)?, read(strength)?, read(rule)?))) }
}

/// How far a vehicle rolls before the pawl drops in at the latest, and the energy that the drive line then stops.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_free_roll(
    gear: *const ParkGear,
    parked: *const Parked,
    out_roll: *mut FreeRoll,
) -> Status {
    unsafe { put(out_roll, || core(read(gear)?.free_roll(read(parked)?))) }
}

/// Angle, degrees, that the gear turns while the pawl can drop in.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_window_deg(
    gear: *const ParkGear,
    space_mm: f64,
    pawl_tip_mm: f64,
    out_window_deg: *mut f64,
) -> Status {
    unsafe { put(out_window_deg, || core(read(gear)?.window_deg(space_mm, pawl_tip_mm))) }
}

/// What the second park gear gains in strength over the first, and costs in free roll.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_compare_park_gears(
    first: *const ParkGear,
    second: *const ParkGear,
    stress_factor: f64,
    out_comparison: *mut ParkComparison,
) -> Status {
    unsafe { put(out_comparison, || core(hold::compare_park_gears(read(first)?, read(second)?, stress_factor))) }
}

/// Force with which a loaded tooth pushes the pawl out.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_ejection(pawl: *const Pawl, tooth_n: f64, out_ejection: *mut Ejection) -> Status {
    unsafe { put(out_ejection, || core(read(pawl)?.ejection(tooth_n))) }
}

/// Contact pressure of the pawl on the flank of a loaded tooth.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_tip_pressure(
    pawl: *const Pawl,
    contact: *const LineContact,
    tooth_n: f64,
    out_pressure: *mut LinePressure,
) -> Status {
    unsafe { put(out_pressure, || core(read(pawl)?.tip_pressure(read(contact)?, tooth_n))) }
}

/// Speed above which the pawl skips over the teeth instead of dropping in.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_latch(
    pawl: *const Pawl,
    driveline: *const Driveline,
    window_deg: f64,
    out_latch: *mut Latch,
) -> Status {
    unsafe { put(out_latch, || core(read(pawl)?.latch(read(driveline)?, window_deg))) }
}

/// Torque, N m, at the park gear at which the tires of the locked axle slide.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_grip_nm(
    driveline: *const Driveline,
    axle_load_kg: f64,
    grade_pct: f64,
    tire_friction: f64,
    out_torque_nm: *mut f64,
) -> Status {
    unsafe { put(out_torque_nm, || core(hold::grip_nm(read(driveline)?, axle_load_kg, grade_pct, tire_friction))) }
}

/// How far, mm, a light vehicle may move in Park by 49 CFR 571.114, on no more than 10 %. For comparison only.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_roll_limits_49_cfr_571_114(grade_pct: f64, out_limits: *mut Limits) -> Status {
    unsafe { put(out_limits, || core(hold::roll_limits_49_cfr_571_114(grade_pct))) }
}
