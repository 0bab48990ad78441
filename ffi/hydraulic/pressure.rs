//! Line pressure by gear, and what a pattern of readings points to.

use crate::pointer::{core, known, put, read, slice};
use crate::status::Status;
use crate::train::solved;
use trainwright::clutch::{self, Duty, ElementPack};
use trainwright::hydraulic::{
    self, GearPressure, NextReading, PatternRule, PressurePoint, PressureReading, PressureSuspects,
};
use trainwright::train::State;

/// Line pressure that a gear needs, against the gauge reading in duty and the most that the control can give (INFINITY where
/// that is not known).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_gear_pressure(
    state: *const State,
    packs: *const ElementPack,
    pack_count: usize,
    duty: *const Duty,
    control_max_kpa: f64,
    out_pressure: *mut GearPressure,
) -> Status {
    unsafe {
        put(out_pressure, || {
            let duty = read(duty)?;
            let review = core(clutch::review(solved(state)?, slice(packs, pack_count)?, duty))?;
            core(hydraulic::gear_pressure(&review, duty.pressure_kpa, control_max_kpa))
        })
    }
}

/// How far each circuit would explain a pattern of pressure readings, the likeliest first. Suspects, not proof.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_suspect_circuits(
    readings: *const PressureReading,
    count: usize,
    elements: u32,
    rule: *const PatternRule,
    out_suspects: *mut PressureSuspects,
) -> Status {
    unsafe {
        put(out_suspects, || {
            for place in 0..if readings.is_null() { 0 } else { count } {
                known(&raw const (*readings.add(place)).at.at_stall, 2)?;
            }
            core(hydraulic::suspect_circuits(slice(readings, count)?, elements, read(rule)?))
        })
    }
}

/// Which of some readings is expected to separate the suspects of these readings best.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_next_reading(
    readings: *const PressureReading,
    count: usize,
    elements: u32,
    rule: *const PatternRule,
    candidates: *const PressurePoint,
    candidate_count: usize,
    out_next: *mut NextReading,
) -> Status {
    unsafe {
        put(out_next, || {
            for place in 0..if readings.is_null() { 0 } else { count } {
                known(&raw const (*readings.add(place)).at.at_stall, 2)?;
            }
            for place in 0..if candidates.is_null() { 0 } else { candidate_count } {
                known(&raw const (*candidates.add(place)).at_stall, 2)?;
            }
            let (readings, candidates) = (slice(readings, count)?, slice(candidates, candidate_count)?);
            let found = core(hydraulic::suspect_circuits(readings, elements, read(rule)?))?;
            core(hydraulic::next_reading(&found, candidates, read(rule)?))
        })
    }
}
