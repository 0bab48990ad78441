//! Bending of a spur tooth.

use crate::pointer::{core, named, put, read};
use crate::status::Status;
use trainwright::hold::{self, SpurTooth, ToothBending, ToothFinish};

/// Lewis form factor of a 20 degree full-depth involute tooth, from 12 teeth up.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_form_factor(teeth: u32, out_factor: *mut f64) -> Status {
    unsafe { put(out_factor, || core(hold::form_factor(teeth))) }
}

/// By what the tooth force of a running gear grows with its speed; the finish is one of TW_TOOTH_FINISH_*.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_velocity_factor(
    pitch_diameter_mm: f64,
    speed_rpm: f64,
    finish: u8,
    out_factor: *mut f64,
) -> Status {
    unsafe {
        put(out_factor, || {
            let finish = named(finish, ToothFinish::Ground as u8 + 1)?;
            core(hold::velocity_factor(pitch_diameter_mm, speed_rpm, finish))
        })
    }
}

/// Bending stress at the root of a spur tooth; the velocity factor of a gear that stands is 1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_tooth_bending(
    tooth: *const SpurTooth,
    force_n: f64,
    velocity_factor: f64,
    out_bending: *mut ToothBending,
) -> Status {
    unsafe { put(out_bending, || core(read(tooth)?.tooth_bending(force_n, velocity_factor))) }
}

/// Tangential force, N, at which the root of a spur tooth reaches a bending stress.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_force_at_bending_n(
    tooth: *const SpurTooth,
    bending_mpa: f64,
    velocity_factor: f64,
    out_force_n: *mut f64,
) -> Status {
    unsafe { put(out_force_n, || core(read(tooth)?.force_at_bending_n(bending_mpa, velocity_factor))) }
}
