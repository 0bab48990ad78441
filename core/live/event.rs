//! Events: what happened, when, and in which gear.

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
