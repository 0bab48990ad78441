//! Needle thrust bearings.

use crate::pointer::{core, put, read, slice};
use crate::status::Status;
use trainwright::hold::{
    LoadStage, MeanLoad, NeedleCapacity, NeedleHold, NeedleLasts, NeedleThrust, RatingLife, mean_load, rating_life,
};
use trainwright::judge::{Reading, Rule};

/// Static and dynamic axial capacity of a needle thrust bearing. Not a maker's rating.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_needle_capacity(
    bearing: *const NeedleThrust,
    out_capacity: *mut NeedleCapacity,
) -> Status {
    unsafe { put(out_capacity, || core(read(bearing)?.needle_capacity())) }
}

/// Whether a needle thrust bearing stands a load at rest without lasting dents.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_needle_hold(
    bearing: *const NeedleThrust,
    load_n: *const Reading,
    least_static_factor: f64,
    rule: *const Rule,
    out_hold: *mut NeedleHold,
) -> Status {
    unsafe { put(out_hold, || core(read(bearing)?.needle_hold(read(load_n)?, least_static_factor, read(rule)?))) }
}

/// Whether nine of ten needle thrust bearings reach a life, h, under a load.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_needle_lasts(
    bearing: *const NeedleThrust,
    load_n: *const Reading,
    speed_rpm: f64,
    least_life_h: f64,
    rule: *const Rule,
    out_lasts: *mut NeedleLasts,
) -> Status {
    unsafe { put(out_lasts, || core(read(bearing)?.needle_lasts(read(load_n)?, speed_rpm, least_life_h, read(rule)?))) }
}

/// Life that nine of ten bearings reach; exponent 3 for balls, 10/3 for rollers and needles.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_rating_life(
    capacity_n: f64,
    load_n: f64,
    exponent: f64,
    speed_rpm: f64,
    out_life: *mut RatingLife,
) -> Status {
    unsafe { put(out_life, || core(rating_life(capacity_n, load_n, exponent, speed_rpm))) }
}

/// Constant load that wears a bearing as much as count stages of loads and speeds.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_mean_load(
    stages: *const LoadStage,
    count: usize,
    exponent: f64,
    out_mean: *mut MeanLoad,
) -> Status {
    unsafe { put(out_mean, || core(mean_load(slice(stages, count)?, exponent))) }
}
