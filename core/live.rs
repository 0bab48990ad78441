//! Watching a unit while it turns: gear in effect, slip, shifts, alarms, from speeds as they come. What turns can catch, and
//! what was just driven is hot.
//!
//! A [`LiveUnit`] is a unit in numbers: gears, sensors, limits. [`LiveUnit::plan`] checks it once. A [`LiveMonitor`] takes
//! one [`LiveSample`] after the other with [`LiveMonitor::push`], which gives the state and the events of that sample and
//! never fails. Everything is `f32` and whole numbers, in fixed memory; no root, exponential or logarithm is taken per sample.
//!
//! How a sample is judged, in this order:
//!
//! 1. time (`monitor.rs`): a clock that goes back, stands or jumps is counted; after a jump everything but counts and
//!    ratios starts again
//! 2. speeds (`speed.rs`): each reading becomes a speed with a variance from the way its sensor works. What is missing,
//!    marked, impossible or stale is counted and leaves everything as it was
//! 3. lock-up (`lockup.rs`): engine less input, in windows of 0.1 s
//! 4. standing or neutral: no ratio is formed near zero
//! 5. gear (`gear.rs`): one logarithm of likelihood for each gear and for none. The commanded gear is compared with it, and
//!    not believed
//! 6. in a gear (`monitor/follow.rs`, `slip.rs`): slip s = n_in − i·n_out with what steps and the different age of the two
//!    speeds may add to it. Under drive only s > 0 can be slip; a cumulative sum raises the alarm, windows (`window.rs`)
//!    give ratio, levels of the slip and its end, and what tooth counts and exchanged sensors show (`watch.rs`)
//! 7. in a shift (`shift.rs`): command, first sign, inertia phase, arrival; flare, dip, heat of the element that slips
//!    (`plates.rs`). Slip is judged again when the new gear has settled
//!
//! Which element slips follows from what was seen in all gears (`suspects.rs`): two speeds alone never tell.
//!
//! ```
//! use trainwright::live::*;
//! let bus = SpeedSensor::bus(0.5, 0.8, 0.05, 8000.0)?;
//! let mut gears = [LiveGear::NONE; MAX_LIVE_GEARS];
//! (gears[0], gears[1]) = (LiveGear::new(1, 2.5), LiveGear::new(2, 1.0));
//! let limits = LiveLimits {
//!     standing_rpm: 30.0, slip_rpm: 2.0, run_length_s: 360_000.0, skew_s: 0.0, ratio_u_rel: 1e-3, settle_s: 0.3,
//!     follow_s: 2.0, flare_rpm: 50.0, dip_share: 0.02, lockup_slip_rpm: 50.0, cold_c: 40.0, hot_c: 120.0,
//!     warm_up_s: 600.0,
//! };
//! let unit = LiveUnit {
//!     gears, gear_count: 2, elements: [LiveElement::UNKNOWN; MAX_LIVE_ELEMENTS], element_count: 0,
//!     input: bus, output: bus, engine: bus, limits, sample_s: 0.01,
//! };
//! let plan = unit.plan()?;
//! let mut monitor = LiveMonitor::new(&plan);
//! let mut events = LiveEvents::NONE;
//! let mut seen = Vec::new();
//! for step in 0..300_u32 {
//!     let slip = if step < 200 { 0.0 } else { 40.0 };
//!     let wave = if step % 2 == 0 { 0.5 } else { 0.0 };
//!     let sample = LiveSample {
//!         time_us: u64::from(step) * 10_000,
//!         input: SpeedReading::bus(2500.0 + slip + wave),
//!         output: SpeedReading::bus(1000.0 + wave),
//!         commanded: 1,
//!         ..LiveSample::EMPTY
//!     };
//!     monitor.push(&plan, &sample, &mut events);
//!     seen.extend(events.found().iter().map(|event| event.kind));
//! }
//! assert_eq!(seen[..2], [LiveEventKind::GearReached, LiveEventKind::Slip]);
//! # Ok::<(), trainwright::Error>(())
//! ```

mod command;
mod event;
mod gear;
mod heat;
mod lockup;
mod monitor;
mod pair;
mod plan;
mod plates;
mod ratios;
mod run_length;
mod sample;
mod sensor;
mod shift;
mod slip;
mod speed;
mod state;
mod suspects;
mod trend;
mod warm_up;
mod watch;
mod window;

pub use event::{
    GEAR_IN_NONE, GEAR_NOT_KNOWN, GEAR_STANDS, LiveEvent, LiveEventKind, LiveEvents, LiveSpeed, MAX_LIVE_EVENTS,
    NO_LIVE_ELEMENT,
};
pub use heat::{LiveElement, ShiftsToLimit};
pub use monitor::LiveMonitor;
pub use plan::{LiveGear, LiveLimits, LivePlan, LiveSuspect, LiveUnit};
pub use run_length::{run_length, threshold_for};
pub use sample::{GEAR_NOT_COMMANDED, LiveSample};
pub use sensor::{ReadingState, SpeedPair, SpeedReading, SpeedSensor, SpeedSource, SpeedSpread, step_bias_rpm};
pub use state::{LiveCounts, LiveRatio, LiveShift, LiveState, ShiftPhase};
pub use suspects::{GearEvidence, LiveSuspects, RankedSuspect};

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::Overspeed, Hazard::HotParts, Hazard::HotFluid];

/// The formulas of this chapter.
#[rustfmt::skip] // one line each
pub const CARDS: &[Card] = &[
    sensor::STEP_BIAS,
    sensor::U,
    sensor::RATIO_WINDOW,
    run_length::RUN_LENGTH,
    run_length::THRESHOLD,
    gear::GEAR_CHANCES,
    suspects::ADD,
    suspects::WEIGH,
    window::RATIO,
    slip::ALARM,
    shift::PHASES,
    shift::DIP,
    shift::ENERGY,
    lockup::SETTLED,
    warm_up::TEMP_STUCK,
    watch::WRONG_TEETH,
    watch::SWAPPED,
    heat::STEP,
    heat::SHIFTS_TO_LIMIT,
];

/// Most gears of a unit.
pub const MAX_LIVE_GEARS: usize = 12;
/// Most elements that could explain the slip of one gear.
pub const MAX_LIVE_SUSPECTS: usize = 4;
/// Most elements of a unit.
pub const MAX_LIVE_ELEMENTS: usize = 8;
