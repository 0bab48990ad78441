//! The monitor: one sample after the other.

use super::MAX_LIVE_GEARS;
use super::command::Command;
use super::event::{
    GEAR_IN_NONE, GEAR_NOT_KNOWN, GEAR_STANDS, LiveCounts, LiveEvent, LiveEventKind, LiveEvents, LiveRatio, LiveShift,
    LiveSpeed, LiveState, ShiftPhase,
};
use super::gear::{GearTrack, NO_RANK};
use super::lockup::LockupTrack;
use super::pair::Pair;
use super::plan::LivePlan;
use super::plates::Plates;
use super::ratios::GearRatios;
use super::sample::LiveSample;
use super::sensor::ReadingState;
use super::shift::{RUN, ShiftTrack};
use super::slip::SlipTrack;
use super::speed::{Known, SpeedTrack};
use super::suspects::{LiveSuspects, weigh};
use super::trend::{Mean3, Trend};
use super::warm_up::WarmUp;
use super::watch::Watch;
use super::window::Window;

/// A pause between two pairs of speeds that is longer than so many sample periods is a gap.
const GAP_SAMPLES: f32 = 10.0;
/// A gear that leads for so long is in effect, even if its ratio does not fit.
const LEADS_S: f32 = 1.0;
/// A window without a gear is good enough at so many times the uncertainty of one in a gear.
const COARSER: f32 = 10.0;
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
    shift: ShiftTrack,
    lockup: LockupTrack,
    watch: Watch,
    warm_up: WarmUp,
    plates: Plates,
    command: Command,
    /// When the gear was reached, or began to lead; µs, low bits.
    since_us: u32,
    /// When the ratio last fitted the gear for [`RUN`] samples, µs, low bits, and how far the input ran ahead since then.
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

/// A gear that is reached, from which, and when.
struct Reached {
    gear: u8,
    from: u8,
    at_us: u64,
}

impl LiveMonitor {
    /// A monitor that has seen nothing yet.
    #[must_use]
    pub const fn new(_plan: &LivePlan) -> Self {
        Self {
            time_us: 0,
            used_us: 0,
            input: SpeedTrack::NEW,
            output: SpeedTrack::NEW,
            engine: SpeedTrack::NEW,
            counts: LiveCounts::NONE,
            gears: GearTrack::NEW,
            ratios: GearRatios::NEW,
            output_trend: Trend::NEW,
            slip: SlipTrack::NEW,
            window: Window::NEW,
            shift: ShiftTrack::NEW,
            lockup: LockupTrack::NEW,
            watch: Watch::NEW,
            warm_up: WarmUp::NEW,
            plates: Plates::NEW,
            command: Command::NEW,
            since_us: 0,
            calm_us: 0,
            leads_us: 0,
            over: Mean3::NEW,
            peak: 0.0,
            gear: NO_RANK,
            window_rank: NO_RANK,
            run: 0,
            phase: ShiftPhase::NoGear,
            started: false,
            used: false,
            standing: false,
            hot: false,
        }
    }

    /// Takes the next sample. `events` holds afterward what this sample showed; returns the state after it.
    pub fn push(&mut self, plan: &LivePlan, sample: &LiveSample, events: &mut LiveEvents) -> LiveState {
        events.clear();
        count(&mut self.counts.samples);
        let Some(span_us) = self.advance(sample.time_us, events) else { return self.state(plan, None) };
        let now_us = sample.time_us as u32;
        let when = (now_us, span_us);
        self.input.take(&plan.input, &sample.input, when, &mut self.counts);
        self.output.take(&plan.output, &sample.output, when, &mut self.counts);
        if self.has_engine(sample) {
            self.engine.take(&plan.engine, &sample.engine, when, &mut self.counts);
        }
        let tied = !matches!(self.phase, ShiftPhase::Fill | ShiftPhase::Torque | ShiftPhase::Inertia);
        let input = Known { rpm: self.input.rpm, variance: plan.input.variance(self.input.rpm), tied };
        let output = Known { rpm: self.output.rpm, variance: plan.output.variance(self.output.rpm), tied };
        let use_input = self.input.usable(&plan.input, output, now_us, &mut self.counts);
        let use_output = self.output.usable(&plan.output, input, now_us, &mut self.counts);
        let use_engine = self.engine.usable(&plan.engine, Known::NONE, now_us, &mut self.counts);
        let no_engine = !self.has_engine(sample);
        self.report_sensors([use_input, use_output, use_engine || no_engine], sample.time_us, events);
        self.report_heat(plan, sample, events);
        self.command.take(plan, sample.commanded, now_us);
        let repeats = self.input.repeats(&plan.input, now_us) && self.output.repeats(&plan.output, now_us);
        if !use_input || !use_output || repeats {
            return self.state(plan, None);
        }
        count(&mut self.counts.used);
        if use_engine {
            let slip = (self.engine.rpm - input.rpm, plan.engine.variance(self.engine.rpm) + input.variance);
            events.add_some(self.lockup.lockup_settled(plan, slip, sample.lockup, (now_us, sample.time_us)));
        }
        let span_s = self.span_s(plan, now_us, output.rpm);
        self.output_trend.take(&plan.fading, output.rpm, span_s);
        let pair = Pair {
            input: input.rpm,
            output: output.rpm,
            of_input: input.variance,
            of_output: output.variance,
            news: !self.input.holds(&plan.input, now_us, span_us) && !self.output.holds(&plan.output, now_us, span_us),
            rate_rpm_s: self.output_trend.greatest_slope_per_s(output.rpm),
            span_s,
            time_us: sample.time_us,
            now_us,
        };
        self.standing = output.rpm < plan.limits.standing_rpm;
        if self.standing || self.command.is_neutral() {
            if self.standing {
                count(&mut self.counts.standing);
            }
            self.lose();
            return self.state(plan, Some(&pair));
        }
        let led = self.gears.leader();
        self.gears.take(plan, (pair.input, pair.output), (pair.of_input, pair.of_output));
        let leader = self.gears.leader();
        let as_asked = self.command.rank().is_some_and(|asked| asked != leader && pair.fits(plan, plan.ratio(asked)));
        if leader != led || as_asked || !pair.fits(plan, plan.ratio(leader)) {
            self.leads_us = now_us;
        }
        match self.phase {
            ShiftPhase::NoGear => self.seek(plan, &pair, events),
            ShiftPhase::InGear | ShiftPhase::Settle => self.hold(plan, &pair, events),
            ShiftPhase::Fill | ShiftPhase::Torque | ShiftPhase::Inertia => self.change(plan, &pair, sample, events),
        }
        self.state(plan, Some(&pair))
    }

    /// The time since the sample before, µs; `None` for a sample that stands still in time or goes back.
    fn advance(&mut self, time_us: u64, events: &mut LiveEvents) -> Option<u32> {
        let before_us = core::mem::replace(&mut self.time_us, time_us);
        if self.started && time_us > before_us {
            return Some(u32::try_from(time_us - before_us).unwrap_or(u32::MAX));
        }
        if self.started && time_us == before_us {
            count(&mut self.counts.duplicate);
            return None;
        }
        for track in [&mut self.input, &mut self.output, &mut self.engine] {
            track.restart(time_us as u32);
        }
        if self.started {
            count(&mut self.counts.reversed);
            let value = u32::try_from(before_us - time_us).unwrap_or(u32::MAX) as f32 * 1e-6;
            let kind = LiveEventKind::TimeFault;
            events.add(LiveEvent { kind, at_us: time_us, found_us: time_us, value, ..LiveEvent::NONE });
            self.lose();
            (self.used, self.lockup) = (false, LockupTrack::NEW);
        }
        self.started = true;
        None
    }

    /// An engine speed comes, or came once: a unit may do without.
    fn has_engine(&self, sample: &LiveSample) -> bool {
        self.engine.rpm > 0.0 || sample.engine.state != ReadingState::Missing
    }

    /// At most one event of a sensor for each sample: what is true stays true.
    fn report_sensors(&mut self, usable: [bool; 3], time_us: u64, events: &mut LiveEvents) {
        let tracks = [
            (&mut self.input, LiveSpeed::Input),
            (&mut self.output, LiveSpeed::Output),
            (&mut self.engine, LiveSpeed::Engine),
        ];
        for ((track, which), usable) in tracks.into_iter().zip(usable) {
            if let Some(event) = track.report(which, usable, time_us) {
                events.add(event);
                return;
            }
        }
    }

    fn report_heat(&mut self, plan: &LivePlan, sample: &LiveSample, events: &mut LiveEvents) {
        let hot_c = plan.limits.hot_c;
        if sample.temp_c > hot_c && sample.temp_c <= GREATEST_C && !self.hot {
            self.hot = true;
            let (at_us, found_us) = (sample.time_us, sample.time_us);
            let (kind, value) = (LiveEventKind::Hot, sample.temp_c);
            events.add(LiveEvent { kind, at_us, found_us, value, ..LiveEvent::NONE });
        } else if sample.temp_c < hot_c - COOLED_K {
            self.hot = false;
        }
        if self.warm_up.temp_stuck(sample.temp_c, plan.limits.cold_c, sample.time_us, self.used && !self.standing) {
            let (at_us, found_us) = (sample.time_us, sample.time_us);
            let (kind, value) = (LiveEventKind::TempStuck, sample.temp_c);
            events.add(LiveEvent { kind, at_us, found_us, value, ..LiveEvent::NONE });
        }
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

    /// No gear is in effect.
    fn lose(&mut self) {
        self.gears.forget();
        self.no_gear();
    }

    fn no_gear(&mut self) {
        (self.gear, self.run, self.phase) = (NO_RANK, 0, ShiftPhase::NoGear);
        self.slip.withdraw();
        self.window.restart();
    }

    /// No gear yet: waits for one that leads, and fits or leads for long.
    fn seek(&mut self, plan: &LivePlan, pair: &Pair, events: &mut LiveEvents) {
        let asked = self.command.rank();
        let leader = asked.filter(|&asked| pair.fits(plan, plan.ratio(asked))).unwrap_or(self.gears.leader());
        if leader != self.gear {
            (self.gear, self.since_us, self.run) = (leader, pair.now_us, 0);
        }
        if leader != NO_RANK {
            self.run = if pair.fits(plan, plan.ratio(leader)) { self.run.saturating_add(1) } else { 0 };
            let expected = asked.is_none_or(|asked| asked == leader);
            if self.run >= RUN && (expected || self.leader_holds(plan, pair))
                || expected && pair.since_s(self.since_us) >= LEADS_S
            {
                let reached = Reached { gear: leader, from: NO_RANK, at_us: pair.at(self.since_us) };
                self.reach(plan, pair, reached, events);
                return;
            }
        }
        let reference = self.command.rank().unwrap_or(self.gears.near());
        self.measure(plan, pair, reference, events);
    }

    /// A gear is reached.
    fn reach(&mut self, plan: &LivePlan, pair: &Pair, reached: Reached, events: &mut LiveEvents) {
        let Reached { gear, from, at_us } = reached;
        let ratio = plan.ratio(gear);
        (self.gear, self.phase, self.run) = (gear, ShiftPhase::Settle, 0);
        self.since_us = pair.now_us;
        self.calm(pair);
        self.over = Mean3::NEW;
        self.slip.restart(plan, pair, ratio);
        events.add(LiveEvent {
            kind: LiveEventKind::GearReached,
            other_gear: if from == NO_RANK { GEAR_NOT_KNOWN } else { plan.place(from) },
            at_us,
            value: pair.input / pair.output,
            ..self.about(plan, pair)
        });
    }

    /// The ratio fits: nothing is going on.
    fn calm(&mut self, pair: &Pair) {
        (self.calm_us, self.peak) = (pair.now_us, 0.0);
    }

    /// An event of this sample about the gear in effect.
    fn about(&self, plan: &LivePlan, pair: &Pair) -> LiveEvent {
        let (gear, suspects) = (plan.place(self.gear), plan.suspects_of(self.gear));
        LiveEvent { gear, suspects, at_us: pair.time_us, found_us: pair.time_us, ..LiveEvent::NONE }
    }

    /// In a gear: looks for a shift, judges slip.
    fn hold(&mut self, plan: &LivePlan, pair: &Pair, events: &mut LiveEvents) {
        let ratio = plan.ratio(self.gear);
        let over = self.over.take(pair.slip(ratio));
        if pair.fits(plan, ratio) {
            self.run = self.run.saturating_add(1);
        } else {
            self.run = 0;
        }
        if self.run >= RUN {
            self.calm(pair);
        } else if over > self.peak {
            self.peak = over;
        }
        if let Some(to) = self.command.asks_for(self.gear) {
            let began_us = pair.at(self.command.since_us());
            self.shift = ShiftTrack::begin(pair, (self.gear, to), began_us, true, self.output_trend);
            self.begin(plan, pair, events);
            return;
        }
        if let Some(to) = self.leaves_for(plan, pair) {
            let began_us = pair.at(self.calm_us);
            let shift = ShiftTrack::begin(pair, (self.gear, to), began_us, false, self.output_trend);
            self.shift = shift.left_before(self.peak);
            self.begin(plan, pair, events);
            return;
        }
        self.slip.follow(plan, pair, ratio);
        if self.phase == ShiftPhase::Settle {
            if pair.since_s(self.since_us) >= plan.limits.settle_s {
                self.phase = ShiftPhase::InGear;
                self.window.restart();
            }
            return;
        }
        if pair.news && !self.watch.teeth && self.command.rank().is_none_or(|asked| asked == self.gear) {
            let wait_s = if self.command.is_known() { 0.0 } else { plan.limits.follow_s };
            if let Some(alarm) = self.slip.judge_slip(plan, (pair, ratio), wait_s) {
                count(&mut self.counts.alarms);
                events.add(LiveEvent {
                    kind: LiveEventKind::Slip,
                    at_us: alarm.onset_us,
                    value: alarm.slip_rpm,
                    u: alarm.u_rpm,
                    ..self.about(plan, pair)
                });
            }
        }
        let reference = self.command.rank().unwrap_or(self.gear);
        self.measure(plan, pair, reference, events);
    }

    /// The gear that leads has fitted for long, and for longer where the sensors are coarser than 1 %. Another than the
    /// commanded one counts only then: an input that falls to idle over a one-way clutch passes many a ratio.
    fn leader_holds(&self, plan: &LivePlan, pair: &Pair) -> bool {
        let held = pair.since_s(self.leads_us) / plan.limits.follow_s;
        let fine = 0.01 * pair.input * held;
        held >= 1.0 && fine * fine >= 9.0 * pair.variance(plan.ratio(self.gears.leader()))
    }

    /// The gear that the speeds leave the gear in effect for, without a command.
    fn leaves_for(&self, plan: &LivePlan, pair: &Pair) -> Option<u8> {
        let leader = self.gears.leader();
        if leader == self.gear {
            return None;
        }
        if leader != NO_RANK {
            return (!self.command.is_known() || self.leader_holds(plan, pair)).then_some(leader);
        }
        // On the way to a neighbor, as far as one can tell; where a gear is commanded it may as well slip far.
        if self.command.is_known() {
            return None;
        }
        let next =
            if pair.slip(plan.ratio(self.gear)) < 0.0 { self.gear.checked_add(1) } else { self.gear.checked_sub(1) };
        next.filter(|&next| next < plan.gear_count)
    }

    fn begin(&mut self, plan: &LivePlan, pair: &Pair, events: &mut LiveEvents) {
        self.phase = self.shift.phase();
        (self.run, self.over) = (0, Mean3::NEW);
        self.slip.withdraw();
        self.window.restart();
        events.add(LiveEvent {
            kind: LiveEventKind::ShiftBegan,
            gear: plan.place(self.shift.to()),
            other_gear: plan.place(self.gear),
            at_us: self.shift.began_us(),
            suspects: 0,
            ..self.about(plan, pair)
        });
    }

    /// In a shift: follows it to its end.
    fn change(&mut self, plan: &LivePlan, pair: &Pair, sample: &LiveSample, events: &mut LiveEvents) {
        let (from, to) = (self.shift.from(), self.shift.to());
        let left = self.phase == ShiftPhase::Inertia;
        match self.command.rank() {
            Some(asked) if asked == from && !left => {
                (self.phase, self.since_us) = (ShiftPhase::Settle, pair.now_us);
                return;
            }
            Some(asked) if asked != from && asked != to => self.shift.turn_to(asked),
            _ => {}
        }
        let leader = self.gears.leader();
        if leader != NO_RANK && leader != to {
            // Another gear than the one that was meant, or back to the old one.
            self.run = if pair.fits(plan, plan.ratio(leader)) { self.run.saturating_add(1) } else { 0 };
            if leader != from && (!self.command.is_known() || self.leader_holds(plan, pair)) {
                self.shift.turn_to(leader);
            } else if leader == from && left && self.run >= RUN && self.shift.left_for_s(pair) > plan.limits.settle_s {
                (self.phase, self.since_us) = (ShiftPhase::Settle, pair.now_us);
                self.calm(pair);
                return;
            }
        }
        let arrived = self.shift.take(plan, pair, sample.engine_torque_nm, &mut self.over);
        self.phase = self.shift.phase();
        if arrived {
            self.arrive(plan, pair, sample, events);
        } else if self.phase != ShiftPhase::Inertia {
            let waited_s = self.shift.now_s(pair);
            if waited_s >= plan.limits.follow_s && leader == from && self.leader_holds(plan, pair) {
                self.command.refuse();
                (self.phase, self.since_us) = (ShiftPhase::Settle, pair.now_us);
                self.other_gear(plan, pair, events);
            } else if waited_s >= 3.0 * plan.limits.follow_s {
                self.no_gear();
            }
        } else if self.shift.left_for_s(pair) >= plan.limits.follow_s {
            if leader == self.shift.to() {
                self.arrive(plan, pair, sample, events);
            } else {
                self.no_gear();
            }
        }
    }

    fn other_gear(&self, plan: &LivePlan, pair: &Pair, events: &mut LiveEvents) {
        let Some(asked) = self.command.rank() else { return };
        events.add(LiveEvent {
            kind: LiveEventKind::OtherGear,
            other_gear: plan.place(asked),
            at_us: pair.at(self.command.since_us()),
            value: pair.input / pair.output,
            ..self.about(plan, pair)
        });
    }

    /// A shift has reached its gear.
    fn arrive(&mut self, plan: &LivePlan, pair: &Pair, sample: &LiveSample, events: &mut LiveEvents) {
        self.shift.finish(pair, sample.temp_c);
        let (from, to) = (self.shift.from(), self.shift.to());
        self.gear = to;
        let element = self.shift.element(plan);
        let plate_c = self.plates.take(plan, (element, self.shift.energy_j()), sample.temp_c, pair.time_us);
        self.shift.plate_c = plate_c;
        let shown = self.shift.shown(plan);
        count(if shown.cold { &mut self.counts.shifts_cold } else { &mut self.counts.shifts_warm });
        let done = LiveEvent { other_gear: plan.place(from), suspects: 0, ..self.about(plan, pair) };
        let at_us = self.shift.end_us();
        events.add(LiveEvent { kind: LiveEventKind::ShiftDone, at_us, value: shown.inertia_s, ..done });
        if shown.flare_rpm >= plan.limits.flare_rpm && shown.flare_rpm > 3.0 * shown.flare_u_rpm {
            let (at_us, value, u) = (self.shift.flare_at_us(), shown.flare_rpm, shown.flare_u_rpm);
            events.add(LiveEvent { kind: LiveEventKind::Flare, at_us, value, u, ..done });
        }
        let dips = shown.dip_rpm >= plan.limits.dip_share * self.shift.base_rpm() + self.shift.braking_rpm();
        if dips && shown.dip_rpm > 3.0 * shown.dip_u_rpm {
            let (at_us, value, u) = (self.shift.dip_at_us(), shown.dip_rpm, shown.dip_u_rpm);
            events.add(LiveEvent { kind: LiveEventKind::TieUp, at_us, value, u, ..done });
        }
        if plan.element(element).is_some_and(|plates| plates.is_known() && plate_c > plates.limit_c) {
            let suspects = 1_u16.checked_shl(element.into()).unwrap_or(0);
            events.add(LiveEvent { kind: LiveEventKind::Overheated, suspects, value: plate_c, ..done });
        }
        self.reach(plan, pair, Reached { gear: to, from, at_us }, events);
    }

    /// Windows of the ratio against a gear: its mean, levels of slip, wrong teeth, exchanged sensors.
    fn measure(&mut self, plan: &LivePlan, pair: &Pair, reference: u8, events: &mut LiveEvents) {
        if reference != self.window_rank {
            self.window_rank = reference;
            self.window.restart();
        }
        let ratio = plan.ratio(reference);
        // Without a gear only coarse faults are looked for.
        let coarser = if self.phase == ShiftPhase::NoGear { COARSER } else { 1.0 };
        let u_rel = coarser * plan.limits.ratio_u_rel;
        let Some(closed) = self.window.take(plan, pair, ratio, u_rel) else { return };
        let about = self.about(plan, pair);
        if self.phase == ShiftPhase::InGear && reference == self.gear && !self.watch.teeth {
            let bias = closed.bias;
            let wanted = (plan.limits.slip_rpm, bias);
            let slips = self.slip.take_window(wanted, (pair, &closed), about, events);
            self.ratios.take(reference, ratio, &closed, slips);
            self.ratios.weigh(reference, &closed, bias, plan.limits.slip_rpm);
        }
        let commanded = self.command.rank() == Some(reference);
        if let Some(fault) = self.watch.take(plan, reference, commanded, &closed) {
            self.slip.withdraw();
            events.add(LiveEvent { gear: about.gear, at_us: about.at_us, found_us: about.found_us, ..fault });
        }
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

/// One more, up to the greatest.
fn count(counter: &mut u32) {
    *counter = counter.saturating_add(1);
}
