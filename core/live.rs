//! Watching a unit while it turns: gear in effect, slip, shifts, alarms, from speeds as they come. What turns can catch, and
//! what was just driven is hot.
//!
//! A [`LiveUnit`] is a unit in numbers; [`LiveUnit::plan`] checks it. A [`LiveMonitor`] takes one [`LiveSample`] after the
//! other with [`LiveMonitor::push`] and says what each showed. Everything here is `f32` and whole numbers.

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
mod suspects;
mod trend;
mod warm_up;
mod watch;
mod window;

pub use event::{
    GEAR_IN_NONE, GEAR_NOT_KNOWN, GEAR_STANDS, LiveCounts, LiveEvent, LiveEventKind, LiveEvents, LiveRatio, LiveShift,
    LiveSpeed, LiveState, MAX_LIVE_EVENTS, NO_LIVE_ELEMENT, ShiftPhase,
};
pub use heat::{LiveElement, ShiftsToLimit};
pub use monitor::LiveMonitor;
pub use plan::{LiveGear, LiveLimits, LivePlan, LiveSuspect, LiveUnit};
pub use run_length::{run_length, threshold_for};
pub use sample::{GEAR_NOT_COMMANDED, LiveSample};
pub use sensor::{ReadingState, SpeedPair, SpeedReading, SpeedSensor, SpeedSource, SpeedSpread, step_bias_rpm};
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
