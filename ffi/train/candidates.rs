//! Which tooth counts a measured ratio fits.

use crate::pointer::{core, put, read, slice};
use crate::status::Status;
use crate::train::made;
use trainwright::judge::Reading;
use trainwright::train::{self, Commanded, Fraction, PulseCount, RatioFit, TimedEdges, Train};

/// Ratio and its standard uncertainty from pulses counted over one window.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_counted_ratio(count: *const PulseCount, out_ratio: *mut Reading) -> Status {
    unsafe { put(out_ratio, || core(train::counted_ratio(read(count)?))) }
}

/// Ratio and its standard uncertainty from the times of pulse edges.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_timed_ratio(edges: *const TimedEdges, out_ratio: *mut Reading) -> Status {
    unsafe { put(out_ratio, || core(train::timed_ratio(read(edges)?))) }
}

/// Whether a measured ratio fits the exact ratio of a candidate, with the stated coverage probability.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_fit_ratio(
    measured: *const Reading,
    candidate: *const Fraction,
    coverage: f64,
    out_fit: *mut RatioFit,
) -> Status {
    unsafe { put(out_fit, || core(train::fit_ratio(read(measured)?, read(candidate)?, coverage))) }
}

/// The gears of a list of up to 32 in which two trains with the same elements give different ratios: bit 0 is the first.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_gears_that_tell_trains(
    train: *const Train,
    other: *const Train,
    gears: *const Commanded,
    count: usize,
    out_gears: *mut u32,
) -> Status {
    unsafe { put(out_gears, || core(made(train)?.gears_that_tell_trains(made(other)?, slice(gears, count)?))) }
}
