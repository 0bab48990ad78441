//! The monitor: one sample after the other. What it makes of the gear is in `follow.rs`.

mod follow;

use super::MAX_LIVE_GEARS;
use super::command::Command;
use super::event::{About, GEAR_IN_NONE, GEAR_NOT_KNOWN, GEAR_STANDS, LiveEventKind, LiveEvents, LiveSpeed};
use super::gear::{GearTrack, NO_RANK};
use super::lockup::LockupTrack;
use super::pair::Pair;
use super::plan::LivePlan;
use super::plates::Plates;
use super::ratios::GearRatios;
use super::sample::LiveSample;
use super::sensor::ReadingState;
use super::shift::ShiftTrack;
use super::slip::SlipTrack;
use super::speed::{Known, SpeedTrack};
use super::state::{LiveCounts, LiveRatio, LiveShift, LiveState, ShiftPhase, count};
use super::suspects::{LiveSuspects, weigh};
use super::trend::{Mean3, Trend};
use super::warm_up::WarmUp;
use super::watch::Watch;
use super::window::Window;

/// A pause between two pairs of speeds that is longer than so many sample periods is a gap.
const GAP_SAMPLES: f32 = 10.0;
/// A higher temperature of the fluid is none.
const GREATEST_C: f32 = 400.0;
/// The fluid has cooled down again so far below its limit.
const COOLED_K: f32 = 2.0;

/// The state of one unit that is watched. A plain value: copy it, store it, forget it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveMonitor {
    time_us: u64,
    /// When a pair of speeds was last used, µs, low bits.
    used_us: u32,
    /// Since when the gear that leads fits without a break, µs, low bits.
    leads_us: u32,
    input: SpeedTrack,
    output: SpeedTrack,
    engine: SpeedTrack,
    counts: LiveCounts,
    gears: GearTrack,
    ratios: GearRatios,
    output_trend: Trend,
    slip: SlipTrack,
    window: Window,
    /// When the gear was reached, or began to lead; µs, low bits.
    since_us: u32,
    shift: ShiftTrack,
    lockup: LockupTrack,
    watch: Watch,
    warm_up: WarmUp,
    plates: Plates,
    command: Command,
    /// When the ratio last fitted the gear for three samples, µs, low bits, and how far the input ran ahead since then.
    calm_us: u32,
    over: Mean3,
    peak: f32,
    /// Gear in effect; while none is, the one that leads.
    gear: u8,
    window_rank: u8,
    /// Samples in a row that fit.
    run: u8,
    phase: ShiftPhase,
    started: bool,
    used: bool,
    standing: bool,
    hot: bool,
}

impl LiveMonitor {
    /// A monitor that has seen nothing yet.
    #[must_use]
    pub const fn new(_plan: &LivePlan) -> Self {
        Self::NEW
    }

    /// Every byte is 0, which costs no flash; the first sample starts it.
    const NEW: Self = Self {
        time_us: 0,
        used_us: 0,
        leads_us: 0,
        input: SpeedTrack::NONE,
        output: SpeedTrack::NONE,
        engine: SpeedTrack::NONE,
        counts: LiveCounts::NONE,
        gears: GearTrack::NONE,
        ratios: GearRatios::NONE,
        output_trend: Trend::NONE,
        slip: SlipTrack::NONE,
        window: Window::NONE,
        shift: ShiftTrack::NONE,
        lockup: LockupTrack::NONE,
        watch: Watch::NONE,
        warm_up: WarmUp::NONE,
        plates: Plates::NONE,
        command: Command::NONE,
        since_us: 0,
        calm_us: 0,
        over: Mean3::NONE,
        peak: 0.0,
        gear: 0,
        window_rank: 0,
        run: 0,
        phase: ShiftPhase::NoGear,
        started: false,
        used: false,
        standing: false,
        hot: false,
    };

    /// Takes the next sample. `events` holds afterward what this sample showed; returns the state after it.
    pub fn push(&mut self, plan: &LivePlan, sample: &LiveSample, events: &mut LiveEvents) -> LiveState {
        events.clear();
        count(&mut self.counts.samples);
        let pair = self.read(plan, sample, events);
        if let Some(pair) = &pair {
            self.judge(plan, pair, sample, events);
        }
        events.stamp(sample.time_us);
        self.state(plan, pair.as_ref())
    }

    /// Takes the readings of a sample; `None` where they are no two speeds that can be used.
    fn read(&mut self, plan: &LivePlan, sample: &LiveSample, events: &mut LiveEvents) -> Option<Pair> {
        let span_us = self.advance(sample.time_us, events)?;
        let now_us = sample.time_us as u32;
        let when = (now_us, span_us);
        // An engine speed comes, or came once: a unit may do without.
        let has_engine = self.engine.rpm > 0.0 || sample.engine.state != ReadingState::Missing;
        self.input.take(&plan.input, &sample.input, when, &mut self.counts);
        self.output.take(&plan.output, &sample.output, when, &mut self.counts);
        if has_engine {
            self.engine.take(&plan.engine, &sample.engine, when, &mut self.counts);
        }
        let shifts = matches!(self.phase, ShiftPhase::Fill | ShiftPhase::Torque | ShiftPhase::Inertia);
        let tied = !shifts && !self.standing && !self.command.is_neutral();
        let input = Known { rpm: self.input.rpm, variance: plan.input.variance(self.input.rpm), tied };
        let output = Known { rpm: self.output.rpm, variance: plan.output.variance(self.output.rpm), tied };
        let use_input = self.input.usable(&plan.input, output, now_us, &mut self.counts);
        let use_output = self.output.usable(&plan.output, input, now_us, &mut self.counts);
        let use_engine = self.engine.usable(&plan.engine, Known::NONE, now_us, &mut self.counts);
        // At most one event of a sensor for each sample: what is true stays true.
        let _ = self.input.report(LiveSpeed::Input, use_input, now_us, events)
            || self.output.report(LiveSpeed::Output, use_output, now_us, events)
            || self.engine.report(LiveSpeed::Engine, use_engine || !has_engine, now_us, events);
        self.report_heat(plan, sample, span_us, events);
        self.command.take(plan, sample.commanded, now_us);
        let repeats = self.input.repeats(&plan.input, now_us) && self.output.repeats(&plan.output, now_us);
        if !use_input || !use_output || repeats {
            return None;
        }
        count(&mut self.counts.used);
        if use_engine {
            let slip = (self.engine.rpm - input.rpm, plan.engine.variance(self.engine.rpm) + input.variance);
            self.lockup.lockup_settled(plan, slip, (sample.lockup, now_us), events);
        }
        let span_s = self.span_s(plan, now_us, output.rpm);
        self.output_trend.take(&plan.fading, output.rpm, span_s);
        self.standing = output.rpm < plan.limits.standing_rpm;
        Some(Pair {
            input: input.rpm,
            output: output.rpm,
            of_input: input.variance,
            of_output: output.variance,
            news: !self.input.holds(&plan.input, now_us, span_us) && !self.output.holds(&plan.output, now_us, span_us),
            rate_rpm_s: self.output_trend.greatest_slope_per_s(output.rpm),
            span_s,
            time_us: sample.time_us,
            now_us,
        })
    }

    /// What the two speeds say.
    fn judge(&mut self, plan: &LivePlan, pair: &Pair, sample: &LiveSample, events: &mut LiveEvents) {
        if self.standing {
            count(&mut self.counts.standing);
        }
        if self.standing || self.command.is_neutral() {
            self.lose();
            return;
        }
        let led = self.gears.leader();
        self.gears.take(plan, (pair.input, pair.output), (pair.of_input, pair.of_output));
        let leader = self.gears.leader();
        let as_asked = self.command.rank().is_some_and(|asked| asked != leader && pair.fits(plan, asked));
        if leader != led || as_asked || !pair.fits(plan, leader) {
            self.leads_us = pair.now_us;
        }
        match self.phase {
            ShiftPhase::NoGear => self.seek(plan, pair, events),
            ShiftPhase::InGear | ShiftPhase::Settle => self.hold(plan, pair, events),
            ShiftPhase::Fill | ShiftPhase::Torque | ShiftPhase::Inertia => self.change(plan, pair, sample, events),
        }
    }

    /// The time since the sample before, µs; `None` for a sample that stands still in time or goes back.
    fn advance(&mut self, time_us: u64, events: &mut LiveEvents) -> Option<u32> {
        let before_us = core::mem::replace(&mut self.time_us, time_us);
        let now_us = time_us as u32;
        if core::mem::replace(&mut self.started, true) {
            if time_us > before_us {
                return Some(u32::try_from(time_us - before_us).unwrap_or(u32::MAX));
            }
            if time_us == before_us {
                count(&mut self.counts.duplicate);
                return None;
            }
            count(&mut self.counts.reversed);
            let value = u32::try_from(before_us - time_us).unwrap_or(u32::MAX) as f32 * 1e-6;
            events.add(LiveEventKind::TimeFault, About::NOTHING, now_us, (value, f32::NAN));
        }
        self.lose();
        (self.used, self.command) = (false, Command::UNKNOWN);
        self.lockup.restart();
        self.input.restart(now_us);
        self.output.restart(now_us);
        self.engine.restart(now_us);
        None
    }

    fn report_heat(&mut self, plan: &LivePlan, sample: &LiveSample, span_us: u32, events: &mut LiveEvents) {
        let (temp_c, hot_c) = (sample.temp_c, plan.limits.hot_c);
        let was_hot = self.hot;
        if temp_c > hot_c && temp_c <= GREATEST_C {
            self.hot = true;
        } else if temp_c < hot_c - COOLED_K {
            self.hot = false;
        }
        let driven_us = if self.used && !self.standing { span_us } else { 0 };
        let kind = if self.hot && !was_hot {
            LiveEventKind::Hot
        } else if self.warm_up.temp_stuck(plan, temp_c, driven_us) {
            LiveEventKind::TempStuck
        } else {
            return;
        };
        events.add(kind, About::NOTHING, sample.time_us as u32, (temp_c, f32::NAN));
    }

    /// Time since the pair before, s. After a gap the unit may be anywhere: everything that follows it starts again.
    fn span_s(&mut self, plan: &LivePlan, now_us: u32, output_rpm: f32) -> f32 {
        let since_us = now_us.wrapping_sub(core::mem::replace(&mut self.used_us, now_us));
        let span_s = since_us as f32 * 1e-6;
        let first = !core::mem::replace(&mut self.used, true);
        if !first && span_s <= GAP_SAMPLES * plan.sample_s {
            return span_s;
        }
        if !first {
            count(&mut self.counts.gaps);
            self.lose();
        }
        self.output_trend.restart(output_rpm);
        plan.sample_s
    }

    /// What is shown after a sample; `pair` if its speeds were used.
    fn state(&self, plan: &LivePlan, pair: Option<&Pair>) -> LiveState {
        let in_gear = matches!(self.phase, ShiftPhase::InGear | ShiftPhase::Settle);
        let (slip_rpm, slip_u_rpm) = if in_gear { self.slip.slip(plan) } else { (f32::NAN, f32::NAN) };
        let leader = self.gears.leader();
        let turns = !self.standing && self.used;
        let (ratio, ratio_u) = match pair {
            _ if !turns => (f32::NAN, f32::NAN),
            _ if in_gear => {
                let per_output = 1.0 / self.output_trend.level;
                (plan.ratio(self.gear) + slip_rpm * per_output, slip_u_rpm * per_output)
            }
            Some(pair) => (pair.input / pair.output, f32::NAN),
            None => (f32::NAN, f32::NAN),
        };
        LiveState {
            gear: match (self.standing, self.used) {
                (true, _) => GEAR_STANDS,
                (false, false) => GEAR_NOT_KNOWN,
                (false, true) if leader == NO_RANK || self.command.is_neutral() => GEAR_IN_NONE,
                (false, true) => plan.place(leader),
            },
            phase: self.phase,
            alarm: self.slip.alarm,
            used: pair.is_some(),
            ratio,
            ratio_u,
            slip_rpm,
            slip_u_rpm,
            converter_slip_rpm: match pair {
                Some(pair) if self.engine.fresh() => self.engine.rpm - pair.input,
                _ => f32::NAN,
            },
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
    pub fn suspects(&self, plan: &LivePlan) -> LiveSuspects {
        weigh(plan, &self.ratios.evidence())
    }

    /// The last shift, or the one that is running.
    #[must_use]
    pub fn last_shift(&self, plan: &LivePlan) -> LiveShift {
        self.shift.shown(plan)
    }

    /// What was counted.
    #[must_use]
    pub fn counts(&self) -> LiveCounts {
        self.counts
    }

    /// The ratio of a gear, by its place in the unit's list, as it was measured.
    #[must_use]
    pub fn ratio(&self, plan: &LivePlan, gear: u8) -> LiveRatio {
        self.ratios.ratio(plan, plan.rank_of_place(gear).unwrap_or(NO_RANK))
    }
}
