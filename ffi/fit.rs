//! `tw_fit_*`: round fits. A clearance is bore less shaft, diametral; a negative one is an interference.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::fit::{self, Clearance, MeasuredClearance, Spread};
use trainwright::judge::{Limits, Reading, Rule};

/// Least and greatest clearance of a shaft in a bore, mm, and its class against the service limit (INFINITY for none).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_clearance(
    shaft_mm: *const Limits,
    bore_mm: *const Limits,
    limit_mm: f64,
    out_clearance: *mut Clearance,
) -> Status {
    unsafe { put(out_clearance, || core(fit::clearance(read(shaft_mm)?, read(bore_mm)?, limit_mm))) }
}

/// A part that was not measured, as a reading: the middle of its tolerance, with the tolerance as its uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_toleranced(
    size_mm: *const Limits,
    spread: Spread,
    out_reading: *mut Reading,
) -> Status {
    unsafe { put(out_reading, || core(fit::toleranced(read(size_mm)?, spread))) }
}

/// Clearance of two parts known with their uncertainty, judged against the clearance wanted.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_measured(
    shaft_mm: *const Reading,
    bore_mm: *const Reading,
    wanted_mm: *const Limits,
    rule: *const Rule,
    out_clearance: *mut MeasuredClearance,
) -> Status {
    unsafe {
        put(out_clearance, || core(fit::measured(read(shaft_mm)?, read(bore_mm)?, read(wanted_mm)?, read(rule)?)))
    }
}
