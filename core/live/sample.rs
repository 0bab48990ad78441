//! What comes in: one sample of the speeds and of what goes with them.

use super::sensor::SpeedReading;

/// Stands where the commanded gear is not known.
pub const GEAR_NOT_COMMANDED: i8 = i8::MIN;

/// One sample.
///
/// Speeds are magnitudes: reverse shows in the ratio, not in a sign. Push one sample for each new pair of speeds: the same
/// values pushed again are counted as stale and are no evidence.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveSample {
    /// Time of the sample, µs, of any clock that runs forward.
    pub time_us: u64,
    /// Speed of the transmission's input (the turbine).
    pub input: SpeedReading,
    /// Speed of its output.
    pub output: SpeedReading,
    /// Speed of the engine.
    pub engine: SpeedReading,
    /// Line pressure, kPa; NaN: not known.
    pub pressure_kpa: f32,
    /// Temperature of the fluid, °C; NaN: not known.
    pub temp_c: f32,
    /// Torque that the engine reports, N·m; NaN: not known. It counts as that of the input while the converter is locked.
    pub engine_torque_nm: f32,
    /// Number of the commanded gear: forward from 1, reverse from −1, 0 neutral or park, [`GEAR_NOT_COMMANDED`].
    pub commanded: i8,
    /// Lock-up: 1 commanded on, 0 off, −1 not known.
    pub lockup: i8,
}

impl LiveSample {
    /// A sample without any value; for `..LiveSample::EMPTY`.
    pub const EMPTY: Self = Self {
        time_us: 0,
        input: SpeedReading::MISSING,
        output: SpeedReading::MISSING,
        engine: SpeedReading::MISSING,
        pressure_kpa: f32::NAN,
        temp_c: f32::NAN,
        engine_torque_nm: f32::NAN,
        commanded: GEAR_NOT_COMMANDED,
        lockup: -1,
    };
}
