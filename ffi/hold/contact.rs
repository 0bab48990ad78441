//! Line contact.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::hold::{LineContact, LinePressure};

/// Pressure, width and shear stress of a line contact under a force.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_pressed(
    contact: *const LineContact,
    force_n: f64,
    out_pressure: *mut LinePressure,
) -> Status {
    unsafe { put(out_pressure, || core(read(contact)?.pressed(force_n))) }
}

/// Force, N, at which a line contact reaches a peak pressure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_force_at_peak_n(
    contact: *const LineContact,
    peak_mpa: f64,
    out_force_n: *mut f64,
) -> Status {
    unsafe { put(out_force_n, || core(read(contact)?.force_at_peak_n(peak_mpa))) }
}
