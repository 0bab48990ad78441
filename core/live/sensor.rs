//! Speed sensors: how a reading becomes a speed, and how well.

use crate::error::Result;

use super::plan::{above_zero, at_least_zero, wide};
use crate::error::Error;

/// How a speed comes.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpeedSource {
    /// A value on a bus, in 1/min, rounded to its step.
    Bus,
    /// Pulses counted between two samples.
    Counted,
    /// Pulses with the time from the first of their edges to the last.
    Edges,
}

/// One speed sensor.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedSensor {
    /// How the speed comes.
    pub source: SpeedSource,
    /// Pulses per revolution; 0 for a bus.
    pub teeth: u32,
    /// Step of the values on a bus, 1/min; 0 else.
    pub step_rpm: f32,
    /// Standard deviation of one value besides its step, 1/min.
    pub noise_rpm: f32,
    /// Tick of the timer that stamps the edges, s; 0 else.
    pub tick_s: f32,
    /// The same value for longer than this is stale, s: no evidence.
    pub age_limit_s: f32,
    /// Greatest speed that can be, 1/min; a value above it is impossible.
    pub greatest_rpm: f32,
}

impl SpeedSensor {
    /// A value on a bus.
    pub fn bus(step_rpm: f32, noise_rpm: f32, age_limit_s: f32, greatest_rpm: f32) -> Result<Self> {
        let source = SpeedSource::Bus;
        Self { source, teeth: 0, step_rpm, noise_rpm, tick_s: 0.0, age_limit_s, greatest_rpm }.checked()
    }

    /// Pulses counted between two samples.
    pub fn counted(teeth: u32, noise_rpm: f32, age_limit_s: f32, greatest_rpm: f32) -> Result<Self> {
        let source = SpeedSource::Counted;
        Self { source, teeth, step_rpm: 0.0, noise_rpm, tick_s: 0.0, age_limit_s, greatest_rpm }.checked()
    }

    /// Edges with time stamps.
    pub fn edges(teeth: u32, tick_s: f32, noise_rpm: f32, age_limit_s: f32, greatest_rpm: f32) -> Result<Self> {
        let source = SpeedSource::Edges;
        Self { source, teeth, step_rpm: 0.0, noise_rpm, tick_s, age_limit_s, greatest_rpm }.checked()
    }

    /// The sensor, if its numbers belong together.
    pub(super) fn checked(self) -> Result<Self> {
        above_zero("greatest_rpm", self.greatest_rpm)?;
        above_zero("age_limit_s", self.age_limit_s)?;
        at_least_zero("step_rpm", self.step_rpm)?;
        at_least_zero("noise_rpm", self.noise_rpm)?;
        at_least_zero("tick_s", self.tick_s)?;
        match self.source {
            SpeedSource::Bus if self.step_rpm <= 0.0 && self.noise_rpm <= 0.0 => {
                let why = "a value on a bus has a step or noise; give one of them";
                Err(Error::Inconsistent { name: "step_rpm", why })
            }
            SpeedSource::Counted | SpeedSource::Edges if self.teeth == 0 => {
                Err(Error::Count { name: "teeth", count: 0, low: 1, high: u32::MAX })
            }
            SpeedSource::Edges if self.tick_s <= 0.0 => {
                Err(Error::NotPositive { name: "tick_s", value: wide(self.tick_s) })
            }
            _ => Ok(self),
        }
    }
}

/// What came instead of a value, or the value.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadingState {
    /// A value.
    Value,
    /// Nothing came.
    Missing,
    /// The sender says that it has none.
    NotAvailable,
    /// The sender says that its sensor has failed.
    SensorError,
    /// A code that stands for no value.
    Reserved,
}

/// One reading of a speed sensor.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedReading {
    /// Value on a bus, 1/min, a magnitude.
    pub rpm: f32,
    /// Pulses since the sample before.
    pub pulses: u32,
    /// Ticks from the first edge of those pulses to the last.
    pub ticks: u32,
    /// Whether there is a value.
    pub state: ReadingState,
}

impl SpeedReading {
    /// Nothing came.
    pub const MISSING: Self = Self { rpm: 0.0, pulses: 0, ticks: 0, state: ReadingState::Missing };

    /// A value on a bus.
    #[must_use]
    pub const fn bus(rpm: f32) -> Self {
        Self { rpm, pulses: 0, ticks: 0, state: ReadingState::Value }
    }

    /// Pulses since the sample before.
    #[must_use]
    pub const fn counted(pulses: u32) -> Self {
        Self { rpm: 0.0, pulses, ticks: 0, state: ReadingState::Value }
    }

    /// Pulses, and ticks from the edge before the first of them to the last.
    #[must_use]
    pub const fn edges(pulses: u32, ticks: u32) -> Self {
        Self { rpm: 0.0, pulses, ticks, state: ReadingState::Value }
    }
}
