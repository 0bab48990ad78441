//! Shafts in torsion.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::hold::{HollowOverSolid, Shaft, ShaftHold, ShaftLoad, Torsion};
use trainwright::judge::Rule;

/// Stress in a round shaft under torque.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_torsion(shaft: *const Shaft, torque_nm: f64, out_torsion: *mut Torsion) -> Status {
    unsafe { put(out_torsion, || core(read(shaft)?.torsion(torque_nm))) }
}

/// Angle, degrees, by which a torque twists a length of shaft.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_twist_deg(
    shaft: *const Shaft,
    torque_nm: f64,
    length_mm: f64,
    shear_modulus_mpa: f64,
    out_twist_deg: *mut f64,
) -> Status {
    unsafe { put(out_twist_deg, || core(read(shaft)?.twist_deg(torque_nm, length_mm, shear_modulus_mpa))) }
}

/// What a hollow shaft carries and weighs against a solid one of the same outside diameter.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_hollow_over_solid(shaft: *const Shaft, out_kept: *mut HollowOverSolid) -> Status {
    unsafe { put(out_kept, || core(read(shaft)?.hollow_over_solid())) }
}

/// Whether a shaft stays below its yield in shear under a torque.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_shaft_hold(
    shaft: *const Shaft,
    load: *const ShaftLoad,
    rule: *const Rule,
    out_hold: *mut ShaftHold,
) -> Status {
    unsafe { put(out_hold, || core(read(shaft)?.shaft_hold(read(load)?, read(rule)?))) }
}
