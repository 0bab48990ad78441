//! What a trailer does to the axles of its truck.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::judge::{Limits, Reading};
use trainwright::tow::{self, AxleWeights, CombinationLoads, Distribution, Levers, Trailer};

/// A trailer of which the share that rests on the hitch is known.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_by_share(
    mass_kg: *const Reading,
    hitch_share: *const Reading,
    out_trailer: *mut Trailer,
) -> Status {
    unsafe { put(out_trailer, || core(Trailer::by_share(read(mass_kg)?, read(hitch_share)?))) }
}

/// Hitch loads, kg, that a band of shares allows a trailer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_share_band_kg(mass_kg: f64, share: *const Limits, out_limits: *mut Limits) -> Status {
    unsafe { put(out_limits, || core(tow::share_band_kg(mass_kg, read(share)?))) }
}

/// Loads of the axles of a truck and of its trailer from the scale, the hitch load and the levers. Without a
/// weight-distributing hitch its moment is 0 and its distance INFINITY.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_axle_loads(
    weighed: *const AxleWeights,
    trailer: *const Trailer,
    levers: *const Levers,
    distribution: *const Distribution,
    out_loads: *mut CombinationLoads,
) -> Status {
    unsafe {
        put(out_loads, || core(tow::axle_loads(read(weighed)?, read(trailer)?, read(levers)?, read(distribution)?)))
    }
}

/// Moment, N·m, of a weight-distributing hitch that gives the front axle back a part of what the hitch load lifted off it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_restoring_moment_nm(
    hitch_kg: f64,
    levers: *const Levers,
    ball_to_axle_mm: f64,
    restored_share: f64,
    out_moment_nm: *mut f64,
) -> Status {
    unsafe {
        put(out_moment_nm, || core(tow::restoring_moment_nm(hitch_kg, read(levers)?, ball_to_axle_mm, restored_share)))
    }
}
