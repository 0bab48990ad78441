//! `tw_judge_*`: readings, limits and decisions.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::judge::{self, Limits, Reading};

/// Probability, 0 to 1, that the true value behind the reading lies within the limits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_chance_inside(
    reading: *const Reading,
    limits: *const Limits,
    out_chance: *mut f64,
) -> Status {
    unsafe { put(out_chance, || core(judge::chance_inside(read(reading)?, read(limits)?))) }
}
