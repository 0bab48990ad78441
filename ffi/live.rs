//! `tw_live_*`: the monitor that reads the speeds of a running unit.

use ::core::mem::offset_of;

use crate::card::Text;
use crate::pointer::{borrow, core, done, is_known, known, named, put, put_array, read, slice};
use crate::status::Status;
use trainwright::live::{
    self, GearEvidence, LiveCounts, LiveElement, LiveEvent, LiveEventKind, LiveEvents, LiveMonitor, LivePlan,
    LiveRatio, LiveSample, LiveShift, LiveState, LiveSuspects, LiveUnit, MAX_LIVE_EVENTS, MAX_LIVE_GEARS, ReadingState,
    ShiftsToLimit, SpeedPair, SpeedReading, SpeedSensor, SpeedSource, SpeedSpread,
};

/// The sensor behind the pointer, refused where its source has no name.
unsafe fn sensor(sensor: *const SpeedSensor) -> Result<SpeedSensor, Status> {
    unsafe {
        if !sensor.is_null() {
            known(&raw const (*sensor).source, SpeedSource::Edges as u8 + 1)?;
        }
        read(sensor)
    }
}

/// A speed that comes as values on a bus, rounded to `step_rpm`. `noise_rpm` is the standard deviation of one value besides
/// its step; the same value for longer than `age_limit_s`, while the other speed moves, is no evidence; a value above
/// `greatest_rpm` is impossible.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_bus(
    step_rpm: f32,
    noise_rpm: f32,
    age_limit_s: f32,
    greatest_rpm: f32,
    out_sensor: *mut SpeedSensor,
) -> Status {
    unsafe { put(out_sensor, || core(SpeedSensor::bus(step_rpm, noise_rpm, age_limit_s, greatest_rpm))) }
}

/// A speed that comes as pulses of a wheel with `teeth`, counted from sample to sample.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_counted(
    teeth: u32,
    noise_rpm: f32,
    age_limit_s: f32,
    greatest_rpm: f32,
    out_sensor: *mut SpeedSensor,
) -> Status {
    unsafe { put(out_sensor, || core(SpeedSensor::counted(teeth, noise_rpm, age_limit_s, greatest_rpm))) }
}

/// A speed that comes as edges of a wheel with `teeth`, stamped by a timer with ticks of `tick_s`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_edges(
    teeth: u32,
    tick_s: f32,
    noise_rpm: f32,
    age_limit_s: f32,
    greatest_rpm: f32,
    out_sensor: *mut SpeedSensor,
) -> Status {
    unsafe { put(out_sensor, || core(SpeedSensor::edges(teeth, tick_s, noise_rpm, age_limit_s, greatest_rpm))) }
}

/// A reading from the 16 raw bits of a J1939 bus: what marks an error, a missing or a reserved value is no speed. `step_rpm`
/// is that of one bit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_marked(raw: u16, step_rpm: f32, out_reading: *mut SpeedReading) -> Status {
    unsafe { put(out_reading, || Ok(SpeedReading::marked(raw, step_rpm))) }
}

/// The uncertainty of a sensor by its causes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_spread(from: *const SpeedSensor, out_spread: *mut SpeedSpread) -> Status {
    unsafe { put(out_spread, || core(sensor(from)?.spread())) }
}

/// Standard uncertainty of the mean of `values` readings over a window, 1/min.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_u_rpm(
    from: *const SpeedSensor,
    rpm: f32,
    window_s: f32,
    values: u32,
    out_u_rpm: *mut f32,
) -> Status {
    unsafe { put(out_u_rpm, || core(sensor(from)?.u_rpm(rpm, window_s, values))) }
}

/// Greatest error that rounding to a step leaves in the mean of any number of values, 1/min.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_step_bias_rpm(step_rpm: f32, noise_rpm: f32, out_bias_rpm: *mut f32) -> Status {
    unsafe { put(out_bias_rpm, || core(live::step_bias_rpm(step_rpm, noise_rpm))) }
}

/// Shortest window whose ratio has the relative standard uncertainty `u_rel`, s.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_ratio_window_s(
    pair: *const SpeedPair,
    input_rpm: f32,
    ratio: f32,
    u_rel: f32,
    out_window_s: *mut f32,
) -> Status {
    unsafe { put(out_window_s, || core(borrow(pair)?.ratio_window_s(input_rpm, ratio, u_rel))) }
}

/// Average number of values until a one-sided cumulative sum alarms; all arguments in standard deviations.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_run_length(
    threshold: f32,
    reference: f32,
    shift: f32,
    out_run_length: *mut f32,
) -> Status {
    unsafe { put(out_run_length, || core(live::run_length(threshold, reference, shift))) }
}

/// Threshold of a one-sided cumulative sum with a given average number of values to a false alarm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_threshold_for(run_length: f32, reference: f32, out_threshold: *mut f32) -> Status {
    unsafe { put(out_threshold, || core(live::threshold_for(run_length, reference))) }
}

/// What heats an element, from its steel plates.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_of_plates(
    steel_mass_kg: f32,
    specific_heat_j_kg_k: f32,
    cooling_s: f32,
    limit_c: f32,
    out_element: *mut LiveElement,
) -> Status {
    unsafe {
        put(out_element, || core(LiveElement::of_plates(steel_mass_kg, specific_heat_j_kg_k, cooling_s, limit_c)))
    }
}

/// Mean temperature of the steel plates of an element after `span_s` in which `energy_j` entered, °C.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_plate_after_c(
    element: *const LiveElement,
    plate_c: f32,
    fluid_c: f32,
    energy_j: f32,
    span_s: f32,
    out_plate_c: *mut f32,
) -> Status {
    unsafe { put(out_plate_c, || Ok(borrow(element)?.plate_after_c(plate_c, fluid_c, energy_j, span_s))) }
}

/// Shifts of the same energy, one every `pace_s`, until the plates reach their limit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_shifts_to_limit(
    element: *const LiveElement,
    plate_c: f32,
    fluid_c: f32,
    energy_j: f32,
    pace_s: f32,
    out_shifts: *mut ShiftsToLimit,
) -> Status {
    unsafe { put(out_shifts, || core(borrow(element)?.shifts_to_limit(plate_c, fluid_c, energy_j, pace_s))) }
}

/// Checks a unit and reduces it to what a sample needs. Do this once; every monitor of such a unit shares the plan.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_unit_plan(unit: *const LiveUnit, out_plan: *mut LivePlan) -> Status {
    unsafe {
        put(out_plan, || {
            if !unit.is_null() {
                for sensor in [&raw const (*unit).input, &raw const (*unit).output, &raw const (*unit).engine] {
                    known(&raw const (*sensor).source, SpeedSource::Edges as u8 + 1)?;
                }
            }
            core(borrow(unit)?.plan())
        })
    }
}

/// A monitor that has seen nothing yet. Also the way to start again.
///
/// A monitor in firmware, as in ffi/examples/live_tool.c:
/// 1. Make the plan of the unit, once: gears and elements from the flash image (`tw_flash_live_gears`,
///    `tw_flash_live_elements`), a sensor for each speed (`tw_live_bus`, `tw_live_counted`, `tw_live_edges`), limits, then
///    `tw_live_unit_plan`. Best on a PC (ffi/examples/live_plan.c): the plan then lies in flash.
/// 2. `tw_live_start`, once for each unit that is watched. The monitor is a plain value: copy it, store it, forget it.
/// 3. For each new pair of speeds fill a `tw_live_sample`, what is not known as NAN (torque, temperature, pressure),
///    TW_GEAR_NOT_COMMANDED, -1 (lockup); a speed that did not come has the state TW_READING_STATE_MISSING. Raw values of a
///    J1939 bus go through `tw_live_marked`. Then `tw_live_push`, and act on the events.
/// 4. Whenever it is of use: `tw_live_last_shift`, `tw_live_ratio_of`, `tw_live_suspects_of`, `tw_live_counts_of`.
///
/// Gears are told by their place in the unit's list, elements by their number, times on the clock of the samples.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_start(plan: *const LivePlan, out_monitor: *mut LiveMonitor) -> Status {
    unsafe {
        if plan.is_null() || out_monitor.is_null() {
            return Status::Null;
        }
        out_monitor.write(LiveMonitor::new(&*plan));
        Status::Ok
    }
}

/// Takes the next sample. Afterward `out_events` holds what this sample showed (look at the first `count` of `events`), and
/// `out_state` the state after it.
///
/// Any sample is allowed: what cannot be used is counted and leaves the state as it was. Only a null pointer, or a reading
/// whose state is none of TW_READING_STATE_*, is refused, and then nothing changes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_push(
    monitor: *mut LiveMonitor,
    plan: *const LivePlan,
    sample: *const LiveSample,
    out_events: *mut LiveEvents,
    out_state: *mut LiveState,
) -> Status {
    unsafe {
        if monitor.is_null() || plan.is_null() || sample.is_null() || out_events.is_null() || out_state.is_null() {
            return Status::Null;
        }
        let named = |state| is_known(state, ReadingState::Reserved as u8 + 1);
        let (input, output) = (&raw const (*sample).input.state, &raw const (*sample).output.state);
        if !named(input) || !named(output) || !named(&raw const (*sample).engine.state) {
            return Status::OutOfRange;
        }
        name_events(out_events);
        out_state.write((*monitor).push(&*plan, &*sample, &mut *out_events));
        Status::Ok
    }
}

const _: () = assert!(offset_of!(LiveEvent, kind) < 4 && offset_of!(LiveEvent, speed) < 4);

/// Makes memory that C has not set hold events: the enumerators of an event, kind and speed, are in its first word, and zero
/// names one of each.
unsafe fn name_events(events: *mut LiveEvents) {
    for place in 0..MAX_LIVE_EVENTS {
        // SAFETY: within the array of a struct that the caller promised to be writable.
        unsafe {
            (&raw mut (*events).events).cast::<LiveEvent>().add(place).cast::<u32>().write(0);
        }
    }
}

/// Chance of each gear by its place in the unit's list, into TW_MAX_LIVE_GEARS + 1 numbers; the last is that of none of them:
/// between two gears, neutral, slipping far.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_gear_chances(
    monitor: *const LiveMonitor,
    plan: *const LivePlan,
    out_chances: *mut f32,
) -> Status {
    unsafe { done((|| put_array(out_chances, borrow(monitor)?.gear_chances(borrow(plan)?)))()) }
}

/// The elements that may be the ones that slip, ranked by the evidence over the gears, and the gear to observe next.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_suspects_of(
    monitor: *const LiveMonitor,
    plan: *const LivePlan,
    out_suspects: *mut LiveSuspects,
) -> Status {
    unsafe { put(out_suspects, || Ok(borrow(monitor)?.suspects(borrow(plan)?))) }
}

/// Adds one value of slip under drive to the evidence of a gear: n_in less i·n_out over its standard deviation, and the
/// smallest slip that is wanted over the same. What is not a number adds nothing.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_add_slip(evidence: *mut GearEvidence, slip: f32, wanted: f32) -> Status {
    unsafe {
        put(evidence, || {
            let mut sum = read(evidence.cast_const())?;
            sum.add_slip(slip, wanted);
            Ok(sum)
        })
    }
}

/// Odds of each element to be the one that slips, from the evidence of TW_MAX_LIVE_GEARS gears by their place in the unit's
/// list; all zeros for a gear that was not seen.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_weigh_suspects(
    plan: *const LivePlan,
    evidence: *const GearEvidence,
    out_suspects: *mut LiveSuspects,
) -> Status {
    unsafe {
        put(out_suspects, || {
            let mut gears = [GearEvidence::NONE; MAX_LIVE_GEARS];
            gears.iter_mut().zip(slice(evidence, MAX_LIVE_GEARS)?).for_each(|(gear, seen)| *gear = *seen);
            Ok(borrow(plan)?.weigh_suspects(&gears))
        })
    }
}

/// The last shift, or the one that is running as far as it is known. Look at it when an event of kind
/// TW_LIVE_EVENT_KIND_SHIFT_DONE comes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_last_shift(
    monitor: *const LiveMonitor,
    plan: *const LivePlan,
    out_shift: *mut LiveShift,
) -> Status {
    unsafe { put(out_shift, || Ok(borrow(monitor)?.last_shift(borrow(plan)?))) }
}

/// What was counted since the start.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_counts_of(monitor: *const LiveMonitor, out_counts: *mut LiveCounts) -> Status {
    unsafe { put(out_counts, || Ok(borrow(monitor)?.counts())) }
}

/// The ratio of a gear, by its place in the unit's list, as it was measured.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_ratio_of(
    monitor: *const LiveMonitor,
    plan: *const LivePlan,
    gear: u8,
    out_ratio: *mut LiveRatio,
) -> Status {
    unsafe { put(out_ratio, || Ok(borrow(monitor)?.ratio(borrow(plan)?, gear))) }
}

/// A kind of event, one of TW_LIVE_EVENT_KIND_*, in words.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_live_event_name(kind: u8, out_name: *mut Text) -> Status {
    unsafe {
        put(out_name, || {
            let kind: LiveEventKind = named(kind, LiveEventKind::ALL.len() as u8)?;
            Ok(Text::from(kind.name()))
        })
    }
}
