//! What a monitor finds, with names.

use pyo3::prelude::*;
use trainwright::live as core;

use super::unit::Planned;
use crate::class::{class, named, words};

words! {
    "kind" EventKind = core::LiveEventKind {
        GearReached = "gear reached",
        ShiftBegan = "shift began",
        ShiftDone = "shift done",
        Flare = "flare",
        TieUp = "tie-up",
        LockupOn = "lock-up on",
        LockupOff = "lock-up off",
        Slip = "slip",
        SlipGone = "slip gone",
        SlipReached = "slip reached",
        OtherGear = "other gear",
        Stale = "stale",
        Lost = "lost",
        Back = "back",
        WrongTeeth = "wrong teeth",
        Swapped = "swapped",
        TimeFault = "time fault",
        Hot = "hot",
        Overheated = "overheated",
        TempStuck = "temperature stuck",
    }
}

words! {
    "phase" Phase = core::ShiftPhase {
        NoGear = "no gear",
        InGear = "in gear",
        Fill = "fill",
        Torque = "torque",
        Inertia = "inertia",
        Settle = "settle",
    }
}

words! {
    "speed" Speed = core::LiveSpeed { Input = "input", Output = "output", Engine = "engine", None = "" }
}

/// Words for the kinds of events.
pub const EVENT_KINDS: [&str; core::LiveEventKind::ALL.len()] = [
    "gear reached",
    "shift began",
    "shift done",
    "flare",
    "tie-up",
    "lock-up on",
    "lock-up off",
    "slip",
    "slip gone",
    "slip reached",
    "other gear",
    "stale",
    "lost",
    "back",
    "wrong teeth",
    "swapped",
    "time fault",
    "hot",
    "overheated",
    "temperature stuck",
];

/// Words for the phases, by their number.
pub const PHASES: [&str; 6] = ["no gear", "in gear", "fill", "torque", "inertia", "settle"];

/// Seconds of a time in microseconds.
pub fn seconds(time_us: u64) -> f64 {
    time_us as f64 * 1e-6
}

named! {
    /// One event.
    "trainwright.live" Event {
        /// What happened, of `EVENT_KINDS`.
        kind: EventKind,
        /// Name of the gear; "none", "standing", "unknown".
        gear: String,
        /// Name of the other gear, as the kind says; likewise.
        other_gear: String,
        /// The sensor that it is about: "input", "output", "engine" or "".
        speed: Speed,
        /// Names of the elements that could explain it.
        suspects: Vec<String>,
        /// When it happened, µs.
        at_us: u64,
        /// When it was known, µs.
        found_us: u64,
        /// What the kind says.
        value: f32,
        /// Its standard uncertainty; NaN where it has none.
        u: f32,
    }
}

#[pymethods]
impl Event {
    /// When it happened, s.
    #[getter]
    fn at_s(&self) -> f64 {
        seconds(self.at_us)
    }

    /// When it was known, s.
    #[getter]
    fn found_s(&self) -> f64 {
        seconds(self.found_us)
    }
}

impl Event {
    /// With the names of its unit.
    pub fn named(event: &core::LiveEvent, unit: &Planned) -> Self {
        Self {
            kind: event.kind.into(),
            gear: unit.gear(event.gear).into(),
            other_gear: unit.gear(event.other_gear).into(),
            speed: event.speed.into(),
            suspects: unit.elements(event.suspects).into_iter().map(String::from).collect(),
            at_us: event.at_us,
            found_us: event.found_us,
            value: event.value,
            u: event.u,
        }
    }
}

named! {
    /// The state after a sample. What is not known is NaN.
    "trainwright.live" State {
        /// Name of the gear in effect; "none", "standing", "unknown".
        gear: String,
        /// Where a shift is, of `PHASES`.
        phase: Phase,
        /// Whether the slip alarm stands.
        alarm: bool,
        /// Whether the speeds of this sample were used.
        used: bool,
        /// Ratio over the window so far, a magnitude.
        ratio: f32,
        /// Its standard uncertainty.
        ratio_u: f32,
        /// Slip at the input in the gear in effect, 1/min, smoothed.
        slip_rpm: f32,
        /// Its standard uncertainty.
        slip_u_rpm: f32,
        /// Engine less input speed, 1/min.
        converter_slip_rpm: f32,
    }
}

impl State {
    /// With the names of its unit.
    pub fn named(state: &core::LiveState, unit: &Planned) -> Self {
        Self {
            gear: unit.gear(state.gear).into(),
            phase: state.phase.into(),
            alarm: state.alarm,
            used: state.used,
            ratio: state.ratio,
            ratio_u: state.ratio_u,
            slip_rpm: state.slip_rpm,
            slip_u_rpm: state.slip_u_rpm,
            converter_slip_rpm: state.converter_slip_rpm,
        }
    }
}

named! {
    /// A shift. What is not known is NaN.
    "trainwright.live" Shift, explained by ["live.last_shift"] {
        /// Name of the gear that it left.
        from_gear: String,
        /// Name of the gear that it reached.
        to_gear: String,
        /// The element that closed, if one alone did.
        element: Option<String>,
        /// Whether the fluid was colder than `cold_c`.
        cold: bool,
        /// When it was commanded, µs; without a command, when it first showed.
        commanded_us: u64,
        /// When the ratio was half way, µs; 0 where that is not known.
        half_us: u64,
        /// Command to the first sign in the speeds, s.
        fill_s: f32,
        /// First sign to the start of the inertia phase, s.
        torque_s: f32,
        /// The input leaves the old ratio, until it reaches the new one, s.
        inertia_s: f32,
        /// Command, or else first sign, to the end, s.
        duration_s: f32,
        /// Greatest overrun of the input, 1/min.
        flare_rpm: f32,
        /// Its standard uncertainty.
        flare_u_rpm: f32,
        /// Greatest dip of the output below its trend, 1/min.
        dip_rpm: f32,
        /// Its standard uncertainty.
        dip_u_rpm: f32,
        /// Turn of the element against its mate while it slipped, rad.
        slip_rad: f32,
        /// Heat of the slip, J.
        energy_j: f32,
        /// Temperature of its plates after it, °C.
        plate_c: f32,
        /// What this shift added, K.
        rise_k: f32,
        /// How many more such shifts without a pause reach the limit.
        shifts_to_overheat: f32,
        /// Temperature of the fluid, °C.
        temp_c: f32,
    }
}

#[pymethods]
impl Shift {
    /// When it was commanded, or first showed, s.
    #[getter]
    fn commanded_s(&self) -> f64 {
        seconds(self.commanded_us)
    }

    /// When the ratio was half way, s; NaN where that is not known.
    #[getter]
    fn half_s(&self) -> f64 {
        half_s(self.half_us)
    }
}

/// Seconds of the half-way time; NaN where it is not known.
pub fn half_s(half_us: u64) -> f64 {
    if half_us == 0 { f64::NAN } else { seconds(half_us) }
}

impl Shift {
    /// With the names of its unit.
    pub fn named(shift: &core::LiveShift, unit: &Planned) -> Self {
        Self {
            from_gear: unit.gear(shift.from).into(),
            to_gear: unit.gear(shift.to).into(),
            element: unit.element(shift.element).map(String::from),
            cold: shift.cold,
            commanded_us: shift.commanded_us,
            half_us: shift.half_us,
            fill_s: shift.fill_s,
            torque_s: shift.torque_s,
            inertia_s: shift.inertia_s,
            duration_s: shift.duration_s,
            flare_rpm: shift.flare_rpm,
            flare_u_rpm: shift.flare_u_rpm,
            dip_rpm: shift.dip_rpm,
            dip_u_rpm: shift.dip_u_rpm,
            slip_rad: shift.slip_rad,
            energy_j: shift.energy_j,
            plate_c: shift.plate_c,
            rise_k: shift.rise_k,
            shifts_to_overheat: shift.shifts_to_overheat,
            temp_c: shift.temp_c,
        }
    }
}

class! {
    /// What was counted since the start.
    "trainwright.live" Counts = core::LiveCounts {
        /// Samples.
        samples: u32,
        /// Samples whose speeds were used.
        used: u32,
        /// Samples with the output standing.
        standing: u32,
        /// Speeds unchanged for longer than their age limit.
        stale: u32,
        /// Speeds that did not come.
        missing: u32,
        /// Speeds that the sender does not have.
        not_available: u32,
        /// Speeds of a sensor that has failed.
        sensor_error: u32,
        /// Codes that stand for no value.
        reserved: u32,
        /// Values that cannot be.
        impossible: u32,
        /// Samples whose time lies before that of the sample before.
        reversed: u32,
        /// Samples with the time of the sample before.
        duplicate: u32,
        /// Pauses of more than ten sample periods.
        gaps: u32,
        /// Shifts with cold fluid.
        shifts_cold: u32,
        /// Shifts with warm fluid, or of unknown temperature.
        shifts_warm: u32,
        /// Slip alarms.
        alarms: u32,
    }
}

class! {
    /// The ratio of a gear as it was measured, from all windows of it.
    "trainwright.live" Ratio = core::LiveRatio, explained by ["live.ratio"] {
        /// Mean ratio, a magnitude; NaN before the first window.
        ratio: f32,
        /// Its standard uncertainty.
        u: f32,
        /// Windows without slip, which made this mean.
        windows: u32,
        /// Windows with slip.
        slipping: u32,
        /// Mean slip in those, over the input speed.
        slip_share: f32,
    }
}

named! {
    /// One element with the evidence against it.
    "trainwright.live" RankedSuspect {
        /// Name.
        element: String,
        /// ln of the odds that it is this one against all others together.
        ln_odds: f32,
    }
}

class! {
    /// What was seen in one gear: logarithms of likelihood ratios, above 0 for slip and below for none.
    "trainwright.live" GearEvidence = core::GearEvidence {
        /// Slip as an element does it: the input runs ahead.
        forward: f32 = 0.0,
        /// The input falls behind: no element does that under drive.
        backward: f32 = 0.0,
    }
}

#[pymethods]
impl GearEvidence {
    /// Surely slipping, as elements do.
    #[classattr]
    const SLIPS: Self = Self(core::GearEvidence::SLIPS);
    /// Surely not slipping.
    #[classattr]
    const HOLDS: Self = Self(core::GearEvidence::HOLDS);

    /// With one more value of slip under drive: n_in less i·n_out over its standard deviation, and the smallest slip that is
    /// wanted over the same. What is not a number adds nothing.
    /// Source: probability ratio of two normal means (Wald's test, from memory of Siegmund, Sequential Analysis).
    ///
    /// >>> GearEvidence().add_slip(slip=1.5, wanted=1.0)
    /// GearEvidence(forward=1.0, backward=-1.0)
    #[pyo3(signature = (*, slip, wanted))]
    fn add_slip(&self, slip: f32, wanted: f32) -> Self {
        let mut evidence = self.0;
        evidence.add_slip(slip, wanted);
        evidence.into()
    }
}

named! {
    /// The elements that may slip, most likely first.
    "trainwright.live" Suspects, explained by ["live.weigh_suspects"] {
        /// Elements by evidence; none while nothing slipped.
        suspects: Vec<RankedSuspect>,
        /// ln of the odds that it is none of them, but the sensors: a tooth count, or two of them exchanged.
        sensors_ln_odds: f32,
        /// Gear in which an observation separates the leading ones best; None if none does.
        next_gear: Option<String>,
        /// What an observation there would tell, bit.
        next_bit: f32,
    }
}

impl Suspects {
    /// With the names of its unit.
    pub fn named(found: &core::LiveSuspects, unit: &Planned) -> Self {
        let suspects = found.ranked().iter().filter_map(|suspect| {
            Some(RankedSuspect { element: unit.element(suspect.element)?.into(), ln_odds: suspect.ln_odds })
        });
        let next_gear = usize::try_from(found.next_gear).ok().map(|_| unit.gear(found.next_gear).into());
        Self {
            suspects: suspects.collect(),
            sensors_ln_odds: found.sensors_ln_odds,
            next_gear,
            next_bit: found.next_bit,
        }
    }
}
