//! Cycles and time at level of a history.

use crate::pointer::{array_mut, blank_slice, core, named, put, slice};
use crate::status::Status;
use trainwright::Error;
use trainwright::duty::{Cycle, CycleCount, Residence, ResidueRule, rainflow, residence};

/// Cycles of a history by rainflow counting, written one after the other to `out_cycles`; after a failure what stands there
/// has no meaning. `residue`: a `tw_residue_rule`. `stack` is memory for turning points: at most twice as many as the history has
/// different values, three times that where it repeats. NaN is a missing value.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_rainflow(
    values: *const f64,
    count: usize,
    residue: u8,
    stack: *mut f64,
    stack_size: usize,
    out_cycles: *mut Cycle,
    size: usize,
    out_count: *mut CycleCount,
) -> Status {
    unsafe {
        put(out_count, || {
            let residue: ResidueRule = named(residue, ResidueRule::Repeated as u8 + 1)?;
            let values = slice(values, count)?;
            let stack = blank_slice(stack, stack_size, 0.0)?;
            let mut room = blank_slice(out_cycles, size, Cycle::NONE)?.iter_mut();
            core(rainflow(values, residue, stack, |cycle| match room.next() {
                Some(place) => {
                    *place = cycle;
                    Ok(())
                }
                None => {
                    let size = u32::try_from(size).unwrap_or(u32::MAX);
                    Err(Error::Count { name: "cycles", count: size.saturating_add(1), low: 0, high: size })
                }
            }))
        })
    }
}

/// Time that a history spends in each of `edge_count` - 1 bins, with the time that nobody knows.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_residence(
    time_s: *const f64,
    values: *const f64,
    count: usize,
    edges: *const f64,
    edge_count: usize,
    gap_limit_s: f64,
    out_seconds: *mut f64,
    out_rest: *mut Residence,
) -> Status {
    unsafe {
        put(out_rest, || {
            let (time_s, values, edges) = (slice(time_s, count)?, slice(values, count)?, slice(edges, edge_count)?);
            let seconds = array_mut(out_seconds, edge_count.saturating_sub(1))?;
            core(residence(time_s, values, edges, gap_limit_s, seconds))
        })
    }
}
