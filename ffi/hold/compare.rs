//! Two variants of a part side by side.

use crate::pointer::{core, named, put, read};
use crate::status::Status;
use trainwright::clutch::Applied;
use trainwright::hold::{
    Better, Change, HelicalSun, NeedleChange, NeedleThrust, PackChange, SetPack, Shaft, ShaftChange, SunChange, change,
    compare_needles, compare_packs, compare_shafts, compare_suns,
};

/// What the change of a figure is worth; better is a TW_BETTER_*, figures within same_within of each other are the same.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_change(
    before: f64,
    after: f64,
    better: u8,
    same_within: f64,
    out_change: *mut Change,
) -> Status {
    unsafe { put(out_change, || core(change(before, after, named(better, Better::Less as u8 + 1)?, same_within))) }
}

/// A needle thrust bearing against another, at the same load.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_compare_needles(
    before: *const NeedleThrust,
    after: *const NeedleThrust,
    out_change: *mut NeedleChange,
) -> Status {
    unsafe { put(out_change, || core(compare_needles(read(before)?, read(after)?))) }
}

/// A shaft against another, each at its own torque and both at the same.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_compare_shafts(
    before: *const Shaft,
    after: *const Shaft,
    torque_before_nm: f64,
    torque_after_nm: f64,
    out_change: *mut ShaftChange,
) -> Status {
    unsafe { put(out_change, || core(compare_shafts(read(before)?, read(after)?, torque_before_nm, torque_after_nm))) }
}

/// A clutch pack against another, at the same pressure and friction.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_compare_packs(
    before: *const SetPack,
    after: *const SetPack,
    applied: *const Applied,
    out_change: *mut PackChange,
) -> Status {
    unsafe { put(out_change, || core(compare_packs(read(before)?, read(after)?, read(applied)?))) }
}

/// The sun of a planetary set against another, at the same torque.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_compare_suns(
    before: *const HelicalSun,
    after: *const HelicalSun,
    torque_nm: f64,
    out_change: *mut SunChange,
) -> Status {
    unsafe { put(out_change, || core(compare_suns(read(before)?, read(after)?, torque_nm))) }
}
