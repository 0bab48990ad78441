//! `trainwright.live`: monitors of running units, one sample at a time or over arrays.

mod found;
mod monitor;
mod sample;
mod sensor;
mod tables;
mod task;
mod unit;
mod watch;

pub use found::{Counts, EVENT_KINDS, Event, GearEvidence, PHASES, RankedSuspect, Ratio, Shift, State, Suspects};
pub use monitor::Monitor;
pub use sample::COLUMNS;
pub use sensor::{SpeedPair, SpeedSensor, SpeedSpread, run_length, step_bias_rpm, threshold_for};
pub use unit::{Element, Gear, Limits, ShiftsToLimit, Suspect, Unit};
pub use watch::{OUTPUTS, Watch};
