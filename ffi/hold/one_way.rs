//! One-way clutches.

use crate::pointer::{borrow, core, named, put, read};
use crate::status::Status;
use trainwright::hold::{self, OneWayDuty, OneWayHold, Ratchet, RatchetIndex, StrutLoad, TakeUp, Wedge, WedgeLoad};
use trainwright::judge::{Judgment, Reading, Rule};
use trainwright::train::{Load, Train};

/// Forces and contact pressure of rollers or sprags under a torque.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_wedged(wedge: *const Wedge, torque_nm: f64, out_load: *mut WedgeLoad) -> Status {
    unsafe { put(out_load, || core(read(wedge)?.wedged(torque_nm))) }
}

/// Torque, N m, at which rollers or sprags reach an allowed contact pressure. Not a rating.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_wedge_capacity_nm(
    wedge: *const Wedge,
    allow_mpa: f64,
    out_torque_nm: *mut f64,
) -> Status {
    unsafe { put(out_torque_nm, || core(read(wedge)?.wedge_capacity_nm(allow_mpa))) }
}

/// Whether rollers or sprags hold a torque, with uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_wedge_hold(
    wedge: *const Wedge,
    need_nm: *const Reading,
    allow_mpa: *const Reading,
    geometry_u_rel: f64,
    rule: *const Rule,
    out_hold: *mut OneWayHold,
) -> Status {
    unsafe {
        put(out_hold, || core(read(wedge)?.wedge_hold(read(need_nm)?, read(allow_mpa)?, geometry_u_rel, read(rule)?)))
    }
}

/// Whether a wedge holds by itself: a roller or sprag, and the cone or roller that keeps a pawl in.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_locks(
    half_angle_deg: f64,
    friction: *const Reading,
    rule: *const Rule,
    out_judgment: *mut Judgment,
) -> Status {
    unsafe { put(out_judgment, || core(hold::locks(half_angle_deg, read(friction)?, read(rule)?))) }
}

/// Backlash of a ratchet, and how many struts drop in together.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_ratchet_index(ratchet: *const Ratchet, out_index: *mut RatchetIndex) -> Status {
    unsafe { put(out_index, || core(read(ratchet)?.ratchet_index())) }
}

/// Force along a strut and its stress under a torque.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_strut_load(
    ratchet: *const Ratchet,
    torque_nm: f64,
    out_load: *mut StrutLoad,
) -> Status {
    unsafe { put(out_load, || core(read(ratchet)?.strut_load(torque_nm))) }
}

/// Torque, N m, at which the struts that carry reach an allowed stress. Not a rating.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_strut_capacity_nm(
    ratchet: *const Ratchet,
    allow_mpa: f64,
    out_torque_nm: *mut f64,
) -> Status {
    unsafe { put(out_torque_nm, || core(read(ratchet)?.strut_capacity_nm(allow_mpa))) }
}

/// Whether struts hold a torque, with uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_strut_hold(
    ratchet: *const Ratchet,
    need_nm: *const Reading,
    allow_mpa: *const Reading,
    geometry_u_rel: f64,
    rule: *const Rule,
    out_hold: *mut OneWayHold,
) -> Status {
    unsafe {
        put(out_hold, || core(read(ratchet)?.strut_hold(read(need_nm)?, read(allow_mpa)?, geometry_u_rel, read(rule)?)))
    }
}

/// Speed and energy with which a backlash closes under a torque.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_take_up(
    backlash_deg: f64,
    torque_nm: f64,
    inertia_kg_m2: f64,
    out_take_up: *mut TakeUp,
) -> Status {
    unsafe { put(out_take_up, || core(hold::take_up(backlash_deg, torque_nm, inertia_kg_m2))) }
}

/// What the closed elements of a mask ask of a one-way clutch under a load of TW_LOAD_*.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_one_way_duty(
    train: *const Train,
    element: u8,
    closed: u32,
    load: u8,
    out_duty: *mut OneWayDuty,
) -> Status {
    unsafe {
        put(out_duty, || core(hold::one_way_duty(borrow(train)?, element, closed, named(load, Load::Coast as u8 + 1)?)))
    }
}
