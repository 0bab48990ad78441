//! `tw_fit_*`: round fits. A clearance is bore less shaft, diametral; a negative one is an interference.

use crate::pointer::{core, put, read, text};
use crate::status::Status;
use ::core::ffi::c_char;
use trainwright::fit::{
    self, BushingLoad, Clearance, Gap, GapLeak, HeldBushing, IsoFit, IsoLimits, LeakRatio, MeasuredClearance,
    PressJoint, Pressed, PressedBushing, Retention, RunningClearance, Size20, Spread, WarmClearance, WarmPart,
    WarmReading, Warmth, WornGap,
};
use trainwright::judge::{Limits, Reading, Rule};

/// Least and greatest clearance of a shaft in a bore, mm, and its class against the service limit (INFINITY for none).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_clearance(
    shaft_mm: *const Limits,
    bore_mm: *const Limits,
    limit_mm: f64,
    out_clearance: *mut Clearance,
) -> Status {
    unsafe { put(out_clearance, || core(fit::clearance(read(shaft_mm)?, read(bore_mm)?, limit_mm))) }
}

/// A part that was not measured, as a reading: the middle of its tolerance, with the tolerance as its uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_toleranced(
    size_mm: *const Limits,
    spread: Spread,
    out_reading: *mut Reading,
) -> Status {
    unsafe { put(out_reading, || core(fit::toleranced(read(size_mm)?, spread))) }
}

/// Clearance of two parts known with their uncertainty, judged against the clearance wanted.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_measured(
    shaft_mm: *const Reading,
    bore_mm: *const Reading,
    wanted_mm: *const Limits,
    rule: *const Rule,
    out_clearance: *mut MeasuredClearance,
) -> Status {
    unsafe {
        put(out_clearance, || core(fit::measured(read(shaft_mm)?, read(bore_mm)?, read(wanted_mm)?, read(rule)?)))
    }
}

/// Clearance of two parts at temperature, each with its own expansion, judged.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_warm_clearance(
    shaft: *const WarmPart,
    bore: *const WarmPart,
    warmth: *const Warmth,
    wanted_mm: *const Limits,
    rule: *const Rule,
    out_clearance: *mut WarmClearance,
) -> Status {
    unsafe {
        put(out_clearance, || {
            core(fit::warm_clearance(read(shaft)?, read(bore)?, read(warmth)?, read(wanted_mm)?, read(rule)?))
        })
    }
}

/// Size at 20 degC of a part measured warm, with an instrument of another temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_size_20c(reading: *const WarmReading, out_size: *mut Size20) -> Status {
    unsafe { put(out_size, || core(read(reading)?.size_20c())) }
}

/// What a diametral interference, mm, does to two parts pressed together.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_pressed(
    joint: *const PressJoint,
    interference_mm: f64,
    out_pressed: *mut Pressed,
) -> Status {
    unsafe { put(out_pressed, || core(read(joint)?.pressed(interference_mm))) }
}

/// Axial force and torque at which a pressed part begins to move under a pressure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_retention(
    joint: *const PressJoint,
    pressure_mpa: f64,
    length_mm: f64,
    friction: f64,
    out_retention: *mut Retention,
) -> Status {
    unsafe { put(out_retention, || core(read(joint)?.retention(pressure_mpa, length_mm, friction))) }
}

/// The seat of a bushing at a temperature; an interference of 0 or less means that it has let go.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_bushing_at(
    bushing: *const PressedBushing,
    temp_c: f64,
    out_pressed: *mut Pressed,
) -> Status {
    unsafe { put(out_pressed, || core(read(bushing)?.bushing_at(temp_c))) }
}

/// Temperature, degC, at which a bushing has no interference left.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_let_go_c(bushing: *const PressedBushing, out_temp_c: *mut Reading) -> Status {
    unsafe { put(out_temp_c, || core(read(bushing)?.let_go_c())) }
}

/// Torque and axial force at which a bushing moves, at a temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_bushing_held(
    bushing: *const PressedBushing,
    temp_c: f64,
    length_mm: f64,
    friction: *const Reading,
    out_held: *mut HeldBushing,
) -> Status {
    unsafe { put(out_held, || core(read(bushing)?.bushing_held(temp_c, length_mm, read(friction)?))) }
}

/// Running clearance of a shaft in a pressed bushing at temperature, judged.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_running_clearance(
    bushing: *const PressedBushing,
    shaft: *const WarmPart,
    warmth: *const Warmth,
    wanted_mm: *const Limits,
    rule: *const Rule,
    out_clearance: *mut RunningClearance,
) -> Status {
    unsafe {
        put(out_clearance, || {
            core(read(bushing)?.running_clearance(read(shaft)?, read(warmth)?, read(wanted_mm)?, read(rule)?))
        })
    }
}

/// Limits of a nominal size with a tolerance class: `H7` for a hole, `f7` for a shaft. length counts bytes, without a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_iso_limits(
    nominal_mm: f64,
    zone: *const c_char,
    length: usize,
    out_limits: *mut IsoLimits,
) -> Status {
    unsafe { put(out_limits, || core(fit::iso_limits(nominal_mm, text(zone, length)?))) }
}

/// Reads a size with its tolerance class: `25H7`. length counts bytes, without a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_iso_size(size: *const c_char, length: usize, out_limits: *mut IsoLimits) -> Status {
    unsafe { put(out_limits, || core(fit::iso_size(text(size, length)?))) }
}

/// Reads a fit: `25H7/f7`, hole first. length counts bytes, without a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_iso_fit(fit_text: *const c_char, length: usize, out_fit: *mut IsoFit) -> Status {
    unsafe { put(out_fit, || core(fit::iso_fit(text(fit_text, length)?))) }
}

/// Unit load, sliding speed and their product for a plain bushing; speed of the shaft against the bushing.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_bushing_load(
    force_n: f64,
    diameter_mm: f64,
    length_mm: f64,
    speed_rpm: f64,
    out_load: *mut BushingLoad,
) -> Status {
    unsafe { put(out_load, || core(fit::bushing_load(force_n, diameter_mm, length_mm, speed_rpm))) }
}

/// How much more an off-center shaft lets through than a centered one.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_eccentricity_factor(eccentricity: f64, out_factor: *mut f64) -> Status {
    unsafe { put(out_factor, || core(fit::eccentricity_factor(eccentricity))) }
}

/// Flow of oil along the gap between a shaft and a bore.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_gap_leak(
    gap: *const Gap,
    pressure_drop_kpa: f64,
    viscosity_mpa_s: f64,
    density_kg_m3: f64,
    out_leak: *mut GapLeak,
) -> Status {
    unsafe { put(out_leak, || core(read(gap)?.gap_leak(pressure_drop_kpa, viscosity_mpa_s, density_kg_m3))) }
}

/// How many times more a worn fit leaks than a new one, with its coverage interval.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_leak_ratio(gap: *const WornGap, coverage: f64, out_ratio: *mut LeakRatio) -> Status {
    unsafe { put(out_ratio, || core(read(gap)?.leak_ratio(coverage))) }
}

/// Chance that a worn fit leaks more than so many times as much as when new.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fit_chance_leaks_more(gap: *const WornGap, times: f64, out_chance: *mut f64) -> Status {
    unsafe { put(out_chance, || core(read(gap)?.chance_leaks_more(times))) }
}
