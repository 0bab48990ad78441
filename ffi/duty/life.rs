//! Life of the fluid.

use crate::pointer::{core, known, put, read, slice};
use crate::status::Status;
use trainwright::duty::{AgingKind, AgingRule, FluidBin, FluidLife, fluid_life};

/// The rule behind the pointer, its kind looked at first.
unsafe fn rule(rule: *const AgingRule) -> Result<AgingRule, Status> {
    unsafe {
        if !rule.is_null() {
            known(&raw const (*rule).kind, AgingKind::Arrhenius as u8 + 1)?;
        }
        read(rule)
    }
}

/// A rule by which fluid ages twice as fast for each step of temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_halving(
    reference_c: f64,
    halving_k: f64,
    least_factor: f64,
    out_rule: *mut AgingRule,
) -> Status {
    unsafe { put(out_rule, || core(AgingRule::halving(reference_c, halving_k, least_factor))) }
}

/// A rule by which fluid ages at a reaction rate.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_arrhenius(reference_c: f64, activation_k: f64, out_rule: *mut AgingRule) -> Status {
    unsafe { put(out_rule, || core(AgingRule::arrhenius(reference_c, activation_k))) }
}

/// How many times faster than at its reference temperature fluid ages.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_aging_factor(by: *const AgingRule, temp_c: f64, out_factor: *mut f64) -> Status {
    unsafe { put(out_factor, || core(rule(by)?.aging_factor(temp_c))) }
}

/// Share of its life that fluid has used, from hours at temperature, and what is left in the same use.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_fluid_life(
    bins: *const FluidBin,
    count: usize,
    unknown_h: f64,
    life_h: f64,
    by: *const AgingRule,
    out_life: *mut FluidLife,
) -> Status {
    unsafe { put(out_life, || core(fluid_life(slice(bins, count)?, unknown_h, life_h, rule(by)?))) }
}
