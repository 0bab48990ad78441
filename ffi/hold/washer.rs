//! Thrust washers.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::hold::{ThrustWasher, WasherLoad};

/// Unit load, sliding speed and their product on the face of a thrust washer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_washer_load(
    washer: *const ThrustWasher,
    load_n: f64,
    speed_rpm: f64,
    out_load: *mut WasherLoad,
) -> Status {
    unsafe { put(out_load, || core(read(washer)?.washer_load(load_n, speed_rpm))) }
}
