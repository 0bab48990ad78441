//! From gear to gear: looks for a gear, holds it and judges its slip, follows a shift to its end.

use super::super::event::{GEAR_NOT_KNOWN, LiveEvent, LiveEventKind, LiveEvents, ShiftPhase};
use super::super::gear::NO_RANK;
use super::super::pair::Pair;
use super::super::plan::LivePlan;
use super::super::sample::LiveSample;
use super::super::shift::{RUN, ShiftTrack};
use super::super::trend::Mean3;
use super::{LiveMonitor, count};

/// A gear that leads for so long is in effect, even if its ratio does not fit.
const LEADS_S: f32 = 1.0;
/// A window without a gear is good enough at so many times the uncertainty of one in a gear.
const COARSER: f32 = 10.0;
/// A gear that is reached, from which, and when.
struct Reached {
    gear: u8,
    from: u8,
    at_us: u64,
}

impl LiveMonitor {
    /// No gear is in effect.
    pub(super) fn lose(&mut self) {
        self.gears.forget();
        self.no_gear();
    }

    fn no_gear(&mut self) {
        (self.gear, self.run, self.phase) = (NO_RANK, 0, ShiftPhase::NoGear);
        self.slip.withdraw();
        self.window.restart();
    }

    /// No gear yet: waits for one that leads, and fits or leads for long.
    pub(super) fn seek(&mut self, plan: &LivePlan, pair: &Pair, events: &mut LiveEvents) {
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
    pub(super) fn hold(&mut self, plan: &LivePlan, pair: &Pair, events: &mut LiveEvents) {
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
                self.ratios.slip_begins(self.gear);
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
    pub(super) fn change(&mut self, plan: &LivePlan, pair: &Pair, sample: &LiveSample, events: &mut LiveEvents) {
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
}
