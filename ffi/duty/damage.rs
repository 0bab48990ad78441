//! Damage of a duty.

use crate::pointer::{core, put, read, slice};
use crate::status::Status;
use trainwright::duty::{Damage, DamageInterval, DamageLine, DamageRange, DutyStage, damage_interval};

/// Line of damage of a gear set from the rating of its unit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_from_rating(
    slope: f64,
    reference_contacts: f64,
    over_rated: f64,
    worst_share: f64,
    rated_nm: f64,
    out_line: *mut DamageLine,
) -> Status {
    let line = || core(DamageLine::from_rating(slope, reference_contacts, over_rated, worst_share, rated_nm));
    unsafe { put(out_line, line) }
}

/// Damage that a duty of count stages collects. It ranks; it does not promise a life.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_damage(
    line: *const DamageLine,
    stages: *const DutyStage,
    count: usize,
    out_damage: *mut Damage,
) -> Status {
    unsafe { put(out_damage, || core(read(line)?.damage(slice(stages, count)?))) }
}

/// Least and greatest damage of a duty where slope and reference are only known within limits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_damage_interval(
    stages: *const DutyStage,
    count: usize,
    known: *const DamageRange,
    out_interval: *mut DamageInterval,
) -> Status {
    unsafe { put(out_interval, || core(damage_interval(slice(stages, count)?, read(known)?))) }
}
