//! Places of trucks.

use crate::pointer::{array_mut, core, done, put, slice};
use crate::status::Status;
use trainwright::duty::{RankInterval, rank_intervals, resampled_total};

/// Best and worst place of each of `count` trucks, given the intervals of their values.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_rank_intervals(
    lower: *const f64,
    upper: *const f64,
    count: usize,
    out_ranks: *mut RankInterval,
) -> Status {
    let ranked = || unsafe {
        let ranks = array_mut(out_ranks, count)?;
        core(rank_intervals(slice(lower, count)?, slice(upper, count)?, ranks))
    };
    done(ranked())
}

/// A total that another year of the same use could have given, drawn from `count` periods.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_resampled_total(
    periods: *const f64,
    count: usize,
    seed: u64,
    draw: u64,
    out_total: *mut f64,
) -> Status {
    unsafe { put(out_total, || core(resampled_total(slice(periods, count)?, seed, draw))) }
}
