//! The published criteria for tow ratings, as named checks. Meeting them here is no rating: the maker rates the vehicle.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::judge::{Limits, Reading, Rule};
use trainwright::tow::{self, Criterion, CriterionCheck, RatedFor};

/// What a published criterion, one of `TW_CRITERION_*`, asks of a vehicle: times in s, speeds in km/h, distances in m, grades
/// in %, angles in degrees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_criterion_limits(
    criterion: i32,
    rated: *const RatedFor,
    out_limits: *mut Limits,
) -> Status {
    unsafe { put(out_limits, || core(tow::criterion_limits(core(Criterion::from_number(criterion))?, read(rated)?))) }
}

/// A result, measured or computed, against one of the published criteria; its value is NAN where there is none, and an
/// infinite time where the speed is never reached.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_check_criterion(
    criterion: i32,
    value: *const Reading,
    rated: *const RatedFor,
    rule: *const Rule,
    out_check: *mut CriterionCheck,
) -> Status {
    unsafe {
        put(out_check, || {
            let criterion = core(Criterion::from_number(criterion))?;
            core(tow::check_criterion(criterion, read(value)?, read(rated)?, read(rule)?))
        })
    }
}
