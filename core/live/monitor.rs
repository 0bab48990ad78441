//! The monitor: one sample after the other.

use super::MAX_LIVE_GEARS;
use super::event::{
    GEAR_NOT_KNOWN, GEAR_STANDS, LiveCounts, LiveEvent, LiveEventKind, LiveEvents, LiveRatio, LiveShift, LiveSpeed,
    LiveState, ShiftPhase,
};
use super::gear::{GearTrack, NO_RANK};
use super::plan::LivePlan;
use super::sample::LiveSample;
use super::speed::SpeedTrack;
use super::suspects::LiveSuspects;

/// The state of one unit that is watched. A plain value: copy it, store it, forget it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveMonitor {
    time_us: u64,
    input: SpeedTrack,
    output: SpeedTrack,
    engine: SpeedTrack,
    gears: GearTrack,
    counts: LiveCounts,
    gear: u8,
    started: bool,
    standing: bool,
}

impl LiveMonitor {
    /// A monitor that has seen nothing yet.
    #[must_use]
    pub const fn new(_plan: &LivePlan) -> Self {
        Self {
            time_us: 0,
            input: SpeedTrack::NEW,
            output: SpeedTrack::NEW,
            engine: SpeedTrack::NEW,
            gears: GearTrack::NEW,
            counts: LiveCounts::NONE,
            gear: NO_RANK,
            started: false,
            standing: false,
        }
    }

    /// Takes the next sample. `events` holds afterward what this sample showed; returns the state after it.
    pub fn push(&mut self, plan: &LivePlan, sample: &LiveSample, events: &mut LiveEvents) -> LiveState {
        events.clear();
        count(&mut self.counts.samples);
        let Some(span_us) = self.advance(sample.time_us, events) else { return self.unused() };
        let (now_us, when) = (sample.time_us as u32, (sample.time_us as u32, span_us));
        self.input.take(&plan.input, &sample.input, when, &mut self.counts);
        self.output.take(&plan.output, &sample.output, when, &mut self.counts);
        self.engine.take(&plan.engine, &sample.engine, when, &mut self.counts);
        let (input, output) = (self.input.rpm, self.output.rpm);
        let variances = (plan.input.variance(input), plan.output.variance(output));
        let use_input = self.input.usable(&plan.input, (output, variances.1), now_us, &mut self.counts);
        let use_output = self.output.usable(&plan.output, (input, variances.0), now_us, &mut self.counts);
        for (track, which, usable) in
            [(&mut self.input, LiveSpeed::Input, use_input), (&mut self.output, LiveSpeed::Output, use_output)]
        {
            if let Some(event) = track.report(which, usable, (now_us, sample.time_us)) {
                events.add(event);
            }
        }
        if !(use_input && use_output) {
            return self.unused();
        }
        count(&mut self.counts.used);
        let mut state = self.unused();
        state.used = true;
        if self.engine.fresh() {
            state.converter_slip_rpm = self.engine.rpm - input;
        }
        if output < plan.limits.standing_rpm {
            count(&mut self.counts.standing);
            if !self.standing {
                self.gears.forget();
            }
            (self.standing, self.gear) = (true, NO_RANK);
            state.gear = GEAR_STANDS;
            return state;
        }
        self.standing = false;
        self.gears.take(plan, (input, output), variances);
        let leader = self.gears.leader();
        if leader != self.gear {
            if leader != NO_RANK {
                events.add(LiveEvent {
                    kind: LiveEventKind::GearReached,
                    gear: plan.place(leader),
                    other_gear: if self.gear == NO_RANK { GEAR_NOT_KNOWN } else { plan.place(self.gear) },
                    at_us: sample.time_us,
                    found_us: sample.time_us,
                    value: input / output,
                    ..LiveEvent::NONE
                });
            }
            self.gear = leader;
        }
        state.gear = self.gears.place(plan);
        if leader != NO_RANK {
            state.phase = ShiftPhase::InGear;
            state.slip_rpm = input - plan.ratio(leader) * output;
        }
        state.ratio = input / output;
        state
    }

    /// The time since the sample before, µs; `None` for a sample that stands still in time or goes back.
    fn advance(&mut self, time_us: u64, events: &mut LiveEvents) -> Option<u32> {
        let before_us = core::mem::replace(&mut self.time_us, time_us);
        if !self.started || time_us < before_us {
            for track in [&mut self.input, &mut self.output, &mut self.engine] {
                track.restart(time_us as u32);
            }
            if self.started {
                count(&mut self.counts.reversed);
                events.add(LiveEvent {
                    kind: LiveEventKind::TimeFault,
                    at_us: time_us,
                    found_us: time_us,
                    value: (before_us - time_us) as f32 * 1e-6,
                    ..LiveEvent::NONE
                });
            }
            self.started = true;
            return None;
        }
        if time_us == before_us {
            count(&mut self.counts.duplicate);
            return None;
        }
        Some(u32::try_from(time_us - before_us).unwrap_or(u32::MAX))
    }

    fn unused(&self) -> LiveState {
        LiveState {
            gear: if self.standing { GEAR_STANDS } else { GEAR_NOT_KNOWN },
            phase: ShiftPhase::NoGear,
            alarm: false,
            used: false,
            ratio: f32::NAN,
            ratio_u: f32::NAN,
            slip_rpm: f32::NAN,
            slip_u_rpm: f32::NAN,
            converter_slip_rpm: f32::NAN,
        }
    }

    /// Chance of each gear by its place in the unit's list; the last is that of none of them: between two gears, neutral,
    /// slipping far.
    #[must_use]
    pub fn gear_chances(&self, plan: &LivePlan) -> [f32; MAX_LIVE_GEARS + 1] {
        self.gears.chances(plan)
    }

    /// The elements that may be the ones that slip, ranked by the evidence over the gears.
    #[must_use]
    pub fn suspects(&self, _plan: &LivePlan) -> LiveSuspects {
        super::suspects::weigh(_plan, &[super::GearEvidence::NONE; MAX_LIVE_GEARS])
    }

    /// The last shift, or the one that is running.
    #[must_use]
    pub fn last_shift(&self, _plan: &LivePlan) -> LiveShift {
        LiveShift::NONE
    }

    /// What was counted.
    #[must_use]
    pub fn counts(&self) -> LiveCounts {
        self.counts
    }

    /// The ratio of a gear, by its place in the unit's list, as it was measured.
    #[must_use]
    pub fn ratio(&self, _plan: &LivePlan, _gear: u8) -> LiveRatio {
        LiveRatio { ratio: f32::NAN, u: f32::NAN, windows: 0, slipping: 0, slip_share: f32::NAN }
    }
}

/// One more, up to the greatest.
fn count(counter: &mut u32) {
    *counter = counter.saturating_add(1);
}
