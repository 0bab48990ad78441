//! What comes out besides events: the state after a sample, the last shift, what was counted, and the ratio of a gear.

use super::event::{GEAR_NOT_KNOWN, NO_LIVE_ELEMENT};

/// Where a shift is.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShiftPhase {
    /// No gear is known: standing, neutral, just switched on, or speeds are missing.
    NoGear,
    /// In a gear.
    InGear,
    /// A shift is commanded; nothing shows in the speeds yet.
    Fill,
    /// The input runs ahead or the output dips, the old ratio still holds or is exceeded.
    Torque,
    /// The input is on its way from the old ratio to the new.
    Inertia,
    /// The new ratio is reached and settles; slip is not judged yet.
    Settle,
}

/// The state after a sample. Values that are not known are NaN.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveState {
    /// Place of the gear in effect; [`GEAR_IN_NONE`](super::GEAR_IN_NONE), [`GEAR_STANDS`](super::GEAR_STANDS),
    /// [`GEAR_NOT_KNOWN`].
    pub gear: i8,
    /// Where a shift is.
    pub phase: ShiftPhase,
    /// Whether the slip alarm stands.
    pub alarm: bool,
    /// Whether the speeds of this sample were used.
    pub used: bool,
    /// Ratio input/output over the window so far, a magnitude.
    pub ratio: f32,
    /// Its standard uncertainty.
    pub ratio_u: f32,
    /// Slip at the input in the gear in effect, 1/min, n_in − i·n_out, smoothed.
    pub slip_rpm: f32,
    /// Its standard uncertainty.
    pub slip_u_rpm: f32,
    /// Engine less input, 1/min.
    pub converter_slip_rpm: f32,
}

/// The last shift. While one is running, that one as far as it is known; `duration_s` is NaN then.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveShift {
    /// Place of the gear that it left.
    pub from: i8,
    /// Place of the gear that it reached, or is commanded to reach.
    pub to: i8,
    /// The element that slipped: the one that closes, or in a power downshift the one that opens, if it is one alone;
    /// [`NO_LIVE_ELEMENT`] else.
    pub element: u8,
    /// Whether the fluid was colder than `cold_c`.
    pub cold: bool,
    /// When it was commanded, µs; without a command, when it first showed.
    pub commanded_us: u64,
    /// When the ratio was half way (mean of both ratios), µs; 0 while it is not known.
    pub half_us: u64,
    /// Command to the first sign in the speeds, s; NaN without a command.
    pub fill_s: f32,
    /// First sign (flare or dip) to the start of the inertia phase, s; 0 where no sign came before it.
    pub torque_s: f32,
    /// The input leaves the old ratio, until it reaches the new one, s.
    pub inertia_s: f32,
    /// Command to the end, s; without a command, first sign to the end.
    pub duration_s: f32,
    /// Greatest overrun of the input over the higher of the two synchronous speeds, 1/min; 0 or more.
    pub flare_rpm: f32,
    /// Its standard uncertainty.
    pub flare_u_rpm: f32,
    /// Greatest dip of the output below its trend, 1/min; 0 or more.
    pub dip_rpm: f32,
    /// Its standard uncertainty.
    pub dip_u_rpm: f32,
    /// Turn of `element` against its mate while it slipped, rad; NaN where the element is not known.
    pub slip_rad: f32,
    /// Heat of the slip, J; NaN where the torque was not known.
    pub energy_j: f32,
    /// Temperature of its plates after it, °C; NaN where heat capacity or fluid temperature is not known.
    pub plate_c: f32,
    /// What this shift added, K.
    pub rise_k: f32,
    /// How many more such shifts without a pause reach the limit; NaN where there is none.
    pub shifts_to_overheat: f32,
    /// Temperature of the fluid, °C.
    pub temp_c: f32,
}

/// What was counted since the start. Counters stop at their greatest value.
#[repr(C)]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct LiveCounts {
    /// Samples.
    pub samples: u32,
    /// Samples whose speeds were used.
    pub used: u32,
    /// Samples with the output standing.
    pub standing: u32,
    /// Speeds unchanged for longer than their age limit.
    pub stale: u32,
    /// Speeds that did not come.
    pub missing: u32,
    /// Speeds that the sender does not have.
    pub not_available: u32,
    /// Speeds of a sensor that has failed.
    pub sensor_error: u32,
    /// Codes that stand for no value.
    pub reserved: u32,
    /// Values that cannot be: negative, infinite, no number, above the greatest.
    pub impossible: u32,
    /// Samples whose time lies before that of the sample before.
    pub reversed: u32,
    /// Samples with the time of the sample before.
    pub duplicate: u32,
    /// Pauses of more than ten sample periods.
    pub gaps: u32,
    /// Shifts with cold fluid.
    pub shifts_cold: u32,
    /// Shifts with warm fluid, or of unknown temperature.
    pub shifts_warm: u32,
    /// Slip alarms.
    pub alarms: u32,
}

/// The ratio of a gear as it was measured, from all windows of it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveRatio {
    /// Mean ratio, a magnitude; NaN before the first window.
    pub ratio: f32,
    /// Its standard uncertainty from the windows. What steps without noise leave in any mean comes on top
    /// (`step_bias_rpm`).
    pub u: f32,
    /// Windows without slip, which made this mean.
    pub windows: u32,
    /// Windows with slip.
    pub slipping: u32,
    /// Slip over input speed in those: the mean of the last thirty or so.
    pub slip_share: f32,
}

/// One more, up to the greatest.
#[inline(never)]
pub(super) fn count(counter: &mut u32) {
    *counter = counter.saturating_add(1);
}

impl LiveCounts {
    /// Nothing counted.
    pub const NONE: Self = Self {
        samples: 0,
        used: 0,
        standing: 0,
        stale: 0,
        missing: 0,
        not_available: 0,
        sensor_error: 0,
        reserved: 0,
        impossible: 0,
        reversed: 0,
        duplicate: 0,
        gaps: 0,
        shifts_cold: 0,
        shifts_warm: 0,
        alarms: 0,
    };
}

impl LiveShift {
    /// No shift yet.
    pub const NONE: Self = Self {
        from: GEAR_NOT_KNOWN,
        to: GEAR_NOT_KNOWN,
        element: NO_LIVE_ELEMENT,
        cold: false,
        commanded_us: 0,
        half_us: 0,
        fill_s: f32::NAN,
        torque_s: f32::NAN,
        inertia_s: f32::NAN,
        duration_s: f32::NAN,
        flare_rpm: f32::NAN,
        flare_u_rpm: f32::NAN,
        dip_rpm: f32::NAN,
        dip_u_rpm: f32::NAN,
        slip_rad: f32::NAN,
        energy_j: f32::NAN,
        plate_c: f32::NAN,
        rise_k: f32::NAN,
        shifts_to_overheat: f32::NAN,
        temp_c: f32::NAN,
    };
}
