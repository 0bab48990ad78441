//! A wrong tire, axle or tooth count.

use crate::pointer::{array_mut, core, known, put, read, slice};
use crate::status::Status;
use trainwright::duty::{
    CauseFit, CauseFound, RatioCause, RatioRule, RatiosSeen, SpeedsRatio, other_driveline, other_teeth, ratio_of,
    weigh_causes,
};
use trainwright::road::Driveline;

/// Ratio of two speeds measured side by side, true over shown, with its uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_ratio_of(
    true_values: *const f64,
    shown_values: *const f64,
    count: usize,
    rule: *const RatioRule,
    out_ratio: *mut SpeedsRatio,
) -> Status {
    unsafe { put(out_ratio, || core(ratio_of(slice(true_values, count)?, slice(shown_values, count)?, read(rule)?))) }
}

/// What another tire or axle than programmed does to the speed shown.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_other_driveline(
    programmed: *const Driveline,
    fitted: *const Driveline,
    weight: f64,
    out_cause: *mut RatioCause,
) -> Status {
    unsafe { put(out_cause, || core(other_driveline(read(programmed)?, read(fitted)?, weight))) }
}

/// What another tooth count of the output speed sensor's wheel does to road speed and gear ratios.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_other_teeth(
    programmed: u32,
    fitted: u32,
    weight: f64,
    out_cause: *mut RatioCause,
) -> Status {
    unsafe { put(out_cause, || core(other_teeth(programmed, fitted, weight))) }
}

/// Which of `count` changes explains a ratio of speeds, or none of them; `out_fits` receives how each fits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_weigh_causes(
    measured: *const RatiosSeen,
    causes: *const RatioCause,
    count: usize,
    enough: f64,
    most_z: f64,
    out_fits: *mut CauseFit,
    out_found: *mut CauseFound,
) -> Status {
    unsafe {
        put(out_found, || {
            if !measured.is_null() {
                known(&raw const (*measured).gear_known, 2)?;
            }
            let (measured, causes) = (read(measured)?, slice(causes, count)?);
            core(weigh_causes(measured, causes, enough, most_z, array_mut(out_fits, count)?))
        })
    }
}
