//! What comes out: events, the state after a sample, the last shift, and what was counted.

/// Most events of one sample.
pub const MAX_LIVE_EVENTS: usize = 8;
/// Stands for a gear that is none: between two gears, neutral, or slipping far.
pub const GEAR_IN_NONE: i8 = -1;
/// Stands for a gear while the output stands.
pub const GEAR_STANDS: i8 = -2;
/// Stands for a gear that is not known yet.
pub const GEAR_NOT_KNOWN: i8 = -3;
/// Stands for an element that is none, or not known.
pub const NO_LIVE_ELEMENT: u8 = u8::MAX;

/// What happened.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LiveEventKind {
    /// The speeds fit `gear`, which came from `other_gear`. Value: the ratio.
    GearReached,
    /// A shift from `other_gear` to `gear` began: commanded, or else seen in the speeds.
    ShiftBegan,
    /// It ended. Value: the inertia phase, s; the rest is in the last shift.
    ShiftDone,
    /// The input ran ahead during a shift. Value: by how much, 1/min at the input.
    Flare,
    /// The output dipped during a shift: two elements held at once. Value: by how much, 1/min at the output.
    TieUp,
    /// The lock-up clutch has settled. Value: its slip, 1/min.
    LockupOn,
    /// The lock-up clutch was released, or slips beyond its limit. Value: slip, 1/min.
    LockupOff,
    /// Alarm: something slips in `gear`. Value: slip at the input now, 1/min; `at_us` is the estimated onset.
    Slip,
    /// The slip is gone. Value: what is left, 1/min at the input.
    SlipGone,
    /// The slip has reached the next level: 5, 10, 20, ... 1/min at the input. Value: the level.
    SlipReached,
    /// The speeds fit `gear`, while `other_gear` is commanded. Value: the ratio.
    OtherGear,
    /// A sensor shows the same value for long while the other speed moves. Value: that speed, 1/min.
    Stale,
    /// A sensor gives nothing that can be used. Value: the last speed, 1/min.
    Lost,
    /// A sensor that was stale or lost is back. Value: its speed, 1/min.
    Back,
    /// The ratio is wrong by the same factor in every gear: a tooth count or a step. Value: that factor.
    WrongTeeth,
    /// Input and output sensor are exchanged. Value: the measured ratio.
    Swapped,
    /// Time went backward; everything but the counts starts again. Value: by how much, s.
    TimeFault,
    /// The fluid is hotter than its limit. Value: its temperature, °C.
    Hot,
    /// The plates of an element are hotter than their limit after a shift. Value: their temperature, °C.
    Overheated,
    /// The temperature of the cold fluid does not rise although the unit is driven: its sensor has stuck. Value: it, °C.
    TempStuck,
}

impl LiveEventKind {
    /// Every kind, in the order of its number.
    pub const ALL: [Self; 20] = [
        Self::GearReached,
        Self::ShiftBegan,
        Self::ShiftDone,
        Self::Flare,
        Self::TieUp,
        Self::LockupOn,
        Self::LockupOff,
        Self::Slip,
        Self::SlipGone,
        Self::SlipReached,
        Self::OtherGear,
        Self::Stale,
        Self::Lost,
        Self::Back,
        Self::WrongTeeth,
        Self::Swapped,
        Self::TimeFault,
        Self::Hot,
        Self::Overheated,
        Self::TempStuck,
    ];

    /// The kind in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::GearReached => "gear reached",
            Self::ShiftBegan => "shift began",
            Self::ShiftDone => "shift done",
            Self::Flare => "flare",
            Self::TieUp => "tie-up",
            Self::LockupOn => "lock-up on",
            Self::LockupOff => "lock-up off",
            Self::Slip => "slip",
            Self::SlipGone => "slip gone",
            Self::SlipReached => "slip reached",
            Self::OtherGear => "other gear",
            Self::Stale => "stale",
            Self::Lost => "lost",
            Self::Back => "back",
            Self::WrongTeeth => "wrong teeth",
            Self::Swapped => "swapped",
            Self::TimeFault => "time fault",
            Self::Hot => "hot",
            Self::Overheated => "overheated",
            Self::TempStuck => "temperature stuck",
        }
    }
}

/// Which speed an event is about.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LiveSpeed {
    /// The input.
    Input,
    /// The output.
    Output,
    /// The engine.
    Engine,
    /// None.
    None,
}

/// One event.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveEvent {
    /// What happened.
    pub kind: LiveEventKind,
    /// Place of the gear in the unit's list; [`GEAR_IN_NONE`], [`GEAR_STANDS`], [`GEAR_NOT_KNOWN`].
    pub gear: i8,
    /// Place of the other gear, as the kind says; likewise.
    pub other_gear: i8,
    /// The sensor that the event is about.
    pub speed: LiveSpeed,
    /// Elements that could explain it, bit 0 for the first; 0 where the kind knows none.
    pub suspects: u16,
    /// When it happened, µs on the clock of the samples.
    pub at_us: u64,
    /// When it was known, µs.
    pub found_us: u64,
    /// What the kind says.
    pub value: f32,
    /// Its standard uncertainty; NaN where it has none.
    pub u: f32,
}

impl LiveEvent {
    /// No event, to fill a list with.
    pub const NONE: Self = Self {
        kind: LiveEventKind::GearReached,
        gear: GEAR_NOT_KNOWN,
        other_gear: GEAR_NOT_KNOWN,
        speed: LiveSpeed::None,
        suspects: 0,
        at_us: 0,
        found_us: 0,
        value: f32::NAN,
        u: f32::NAN,
    };
}

/// The events of one sample. Only the first `count` are used.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveEvents {
    /// Events in the order in which they were found.
    pub events: [LiveEvent; MAX_LIVE_EVENTS],
    /// Number of events.
    pub count: u32,
}

impl LiveEvents {
    /// No events.
    pub const NONE: Self = Self { events: [LiveEvent::NONE; MAX_LIVE_EVENTS], count: 0 };

    /// The events that are in use.
    #[must_use]
    pub fn found(&self) -> &[LiveEvent] {
        self.events.get(..self.count as usize).unwrap_or_default()
    }

    pub(super) fn clear(&mut self) {
        self.count = 0;
    }

    /// Adds an event that happened at `at_us`, low bits: [`stamp`](Self::stamp) makes a time of them. Everything comes in
    /// registers, so that the places that tell of something are short.
    #[inline(never)]
    pub(super) fn add(
        &mut self,
        kind: LiveEventKind,
        About { gear, other_gear, suspects }: About,
        at_us: u32,
        (value, u): (f32, f32),
    ) -> Option<&mut LiveEvent> {
        let slot = self.events.get_mut(self.count as usize)?;
        let (speed, at_us) = (LiveSpeed::None, at_us.into());
        *slot = LiveEvent { kind, gear, other_gear, speed, suspects, at_us, found_us: 0, value, u };
        self.count += 1;
        Some(slot)
    }

    /// Completes the times of the events, which are those of a sample at `time_us`.
    pub(super) fn stamp(&mut self, time_us: u64) {
        for event in self.events.iter_mut().take(self.count as usize) {
            let ago_us = (time_us as u32).wrapping_sub(event.at_us as u32);
            let ago_us = if ago_us > 0_u32.wrapping_sub(ROUNDING_US) { 0 } else { ago_us };
            (event.at_us, event.found_us) = (time_us.saturating_sub(ago_us.into()), time_us);
        }
    }
}

/// Seconds after the beginning of a shift, made microseconds, may come to lie so far after the sample.
const ROUNDING_US: u32 = 1000;

/// What an event is about besides its time and value. Small enough for a register.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct About {
    pub(super) gear: i8,
    pub(super) other_gear: i8,
    pub(super) suspects: u16,
}

impl About {
    pub(super) const NOTHING: Self = Self { gear: GEAR_NOT_KNOWN, other_gear: GEAR_NOT_KNOWN, suspects: 0 };
}

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
    /// Place of the gear in effect; [`GEAR_IN_NONE`], [`GEAR_STANDS`], [`GEAR_NOT_KNOWN`].
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
