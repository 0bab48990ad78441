//! Splines.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::hold::{Spline, SplineLoad};

/// Bearing and shear stress of the teeth of a spline; carrying_share of them carry.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_spline_load(
    spline: *const Spline,
    torque_nm: f64,
    carrying_share: f64,
    out_load: *mut SplineLoad,
) -> Status {
    unsafe { put(out_load, || core(read(spline)?.spline_load(torque_nm, carrying_share))) }
}
