//! Failure signatures and their inverse.

use crate::pointer::{core, known, put, read, slice};
use crate::status::Status;
use crate::train::made;
use trainwright::judge::Reading;
use trainwright::train::{
    Commanded, Diagnosis, ElementFault, NextGear, Observation, Signature, Symptom, Train, TriedGears,
};

/// What a commanded gear does with a failed element, in drive and in coast.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_symptom(
    train: *const Train,
    commanded: *const Commanded,
    fault: *const ElementFault,
    out_symptom: *mut Symptom,
) -> Status {
    unsafe { put(out_symptom, || core(made(train)?.symptom(read(commanded)?, failed(fault)?))) }
}

/// What a fault does to each gear of a list of up to 32.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_signature(
    train: *const Train,
    gears: *const Commanded,
    count: usize,
    fault: *const ElementFault,
    out_signature: *mut Signature,
) -> Status {
    unsafe { put(out_signature, || core(made(train)?.signature(slice(gears, count)?, failed(fault)?))) }
}

/// Ranks every element, dead and stuck, by how well it explains what was seen.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_diagnose(
    train: *const Train,
    observations: *const Observation,
    count: usize,
    out_diagnosis: *mut Diagnosis,
) -> Status {
    unsafe {
        put(out_diagnosis, || {
            for place in 0..if observations.is_null() { 0 } else { count } {
                let observation = observations.add(place);
                known(&raw const (*observation).load, 3)?;
                known(&raw const (*observation).seen, 5)?;
            }
            core(made(train)?.diagnose(slice(observations, count)?))
        })
    }
}

/// The gears of a list of up to 32 in which two faults show different things: bit 0 is the first gear.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_gears_that_tell_faults(
    train: *const Train,
    gears: *const Commanded,
    count: usize,
    one: *const ElementFault,
    other: *const ElementFault,
    out_gears: *mut u32,
) -> Status {
    unsafe {
        put(out_gears, || core(made(train)?.gears_that_tell_faults(slice(gears, count)?, failed(one)?, failed(other)?)))
    }
}

/// What a ratio that was measured in a commanded gear, under drive and without slip, says about it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_seen_ratio(
    train: *const Train,
    commanded: *const Commanded,
    ratio: *const Reading,
    out_observation: *mut Observation,
) -> Status {
    unsafe { put(out_observation, || core(made(train)?.seen_ratio(read(commanded)?, read(ratio)?))) }
}

/// The gear, of a list of up to 32, whose outcome tells most about 2 to 32 suspects; tw_train_symptom says what each shows there.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_next_gear(
    train: *const Train,
    gears: *const Commanded,
    count: usize,
    tried: *const TriedGears,
    suspects: *const ElementFault,
    suspect_count: usize,
    out_next: *mut NextGear,
) -> Status {
    unsafe {
        put(out_next, || {
            for place in 0..if suspects.is_null() { 0 } else { suspect_count } {
                known(&raw const (*suspects.add(place)).failure, 2)?;
            }
            let suspects = slice(suspects, suspect_count)?;
            core(made(train)?.next_gear(slice(gears, count)?, read(tried)?, suspects))
        })
    }
}

/// The fault behind the pointer, refused where its failure has no name.
unsafe fn failed(fault: *const ElementFault) -> Result<ElementFault, Status> {
    unsafe {
        if !fault.is_null() {
            known(&raw const (*fault).failure, 2)?;
        }
        read(fault)
    }
}
