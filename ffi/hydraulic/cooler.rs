//! Return flow of the cooler.

use crate::pointer::{core, put, read, slice};
use crate::status::Status;
use trainwright::fluid::Fluid;
use trainwright::hydraulic::{self, CoolerCheck, CoolerLimits, CoolerReading, LeastFlow, TimedFlow};
use trainwright::judge::{Reading, Rule};

/// Flow from a volume and the time in which it ran.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_timed_flow(
    volume_l: *const Reading,
    time_s: *const Reading,
    out_flow: *mut TimedFlow,
) -> Status {
    unsafe { put(out_flow, || core(hydraulic::timed_flow(read(volume_l)?, read(time_s)?))) }
}

/// Flow that the same cooler would pass at another temperature of the fluid.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_flow_at_reference(
    flow_l_min: *const Reading,
    fluid: *const Fluid,
    temp_c: *const Reading,
    reference_c: f64,
    out_flow_l_min: *mut Reading,
) -> Status {
    unsafe {
        put(out_flow_l_min, || {
            core(hydraulic::flow_at_reference(read(flow_l_min)?, &read(fluid)?, read(temp_c)?, reference_c))
        })
    }
}

/// Least flows of a cooler from their table.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_from_flows(
    temperature_c: *const f64,
    least_flow_l_min: *const f64,
    rows: usize,
    out_limits: *mut CoolerLimits,
) -> Status {
    unsafe {
        put(out_limits, || core(CoolerLimits::from_flows(slice(temperature_c, rows)?, slice(least_flow_l_min, rows)?)))
    }
}

/// Least flow of a cooler at a temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_least_flow_at(
    limits: *const CoolerLimits,
    temp_c: f64,
    out_least: *mut LeastFlow,
) -> Status {
    unsafe { put(out_least, || core(read(limits)?.least_flow_at(temp_c))) }
}

/// Whether a cooler passes enough at the temperature that the fluid has.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_cooler_check(
    limits: *const CoolerLimits,
    reading: *const CoolerReading,
    rule: *const Rule,
    out_check: *mut CoolerCheck,
) -> Status {
    unsafe { put(out_check, || core(read(limits)?.cooler_check(read(reading)?, read(rule)?))) }
}
