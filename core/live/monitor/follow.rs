//! From gear to gear: looks for a gear, holds it and judges its slip, follows a shift to its end.

use super::super::event::{About, GEAR_NOT_KNOWN, LiveEventKind, LiveEvents};
use super::super::gear::NO_RANK;
use super::super::pair::Pair;
use super::super::plan::LivePlan;
use super::super::sample::LiveSample;
use super::super::shift::{Beginning, RUN};
use super::super::state::{ShiftPhase, count};
use super::super::trend::Mean3;
use super::LiveMonitor;

/// A gear that leads for so long is in effect, even if its ratio does not fit.
const LEADS_S: f32 = 1.0;
/// A window without a gear is good enough at so many times the uncertainty of one in a gear.
const COARSER: f32 = 10.0;

/// A gear that is reached, the place of the one before, and when, low bits.
struct Reached {
    gear: u8,
    from: i8,
    at_us: u32,
}

impl LiveMonitor {
    /// No gear is in effect.
    #[inline(never)]
    pub(super) fn lose(&mut self) {
        self.gears.forget();
        self.no_gear();
    }

    fn no_gear(&mut self) {
        (self.gear, self.run, self.phase) = (NO_RANK, 0, ShiftPhase::NoGear);
        self.slip.withdraw();
        self.window.restart();
    }

    /// Counts the samples in a row that fit the gear of a rank.
    fn count_run(&mut self, plan: &LivePlan, pair: &Pair, rank: u8) {
        self.run = if pair.fits(plan, rank) { self.run.saturating_add(1) } else { 0 };
    }

    /// No gear yet: waits for one that leads, and fits or leads for long.
    pub(super) fn seek(&mut self, plan: &LivePlan, pair: &Pair, events: &mut LiveEvents) {
        let asked = self.command.rank();
        let leader = asked.filter(|&asked| pair.fits(plan, asked)).unwrap_or(self.gears.leader());
        if leader != self.gear {
            (self.gear, self.since_us, self.run) = (leader, pair.now_us, 0);
        }
        if leader != NO_RANK {
            self.count_run(plan, pair, leader);
            let expected = asked.is_none_or(|asked| asked == leader);
            if self.run >= RUN && (expected || self.leader_holds(plan, pair))
                || expected && pair.since_s(self.since_us) >= LEADS_S
            {
                let reached = Reached { gear: leader, from: GEAR_NOT_KNOWN, at_us: self.since_us };
                self.reach(plan, pair, &reached, events);
                return;
            }
        }
        self.measure(plan, pair, asked.unwrap_or(self.gears.near()), events);
    }

    /// A gear is reached.
    fn reach(&mut self, plan: &LivePlan, pair: &Pair, reached: &Reached, events: &mut LiveEvents) {
        let &Reached { gear, from, at_us } = reached;
        (self.gear, self.phase, self.run) = (gear, ShiftPhase::Settle, 0);
        self.since_us = pair.now_us;
        self.calm(pair);
        self.over = Mean3::NEW;
        self.slip.restart(plan, pair, plan.ratio(gear));
        let about = About { other_gear: from, ..self.about(plan) };
        events.add(LiveEventKind::GearReached, about, at_us, (pair.input / pair.output, f32::NAN));
    }

    /// The ratio fits: nothing is going on.
    fn calm(&mut self, pair: &Pair) {
        (self.calm_us, self.peak) = (pair.now_us, 0.0);
    }

    /// An event about the gear in effect.
    #[inline(never)]
    fn about(&self, plan: &LivePlan) -> About {
        let suspects = plan.holders(self.gear).into();
        About { gear: plan.place(self.gear), suspects, ..About::NOTHING }
    }

    /// In a gear: looks for a shift, judges slip.
    pub(super) fn hold(&mut self, plan: &LivePlan, pair: &Pair, events: &mut LiveEvents) {
        let ratio = plan.ratio(self.gear);
        let over = self.over.take(pair.slip(ratio));
        self.count_run(plan, pair, self.gear);
        if self.run >= RUN {
            self.calm(pair);
        } else if over > self.peak {
            self.peak = over;
        }
        if let Some(to) = self.command.asks_for(self.gear) {
            let began_us = self.command.since_us();
            self.begin(plan, pair, Beginning { from: self.gear, to, began_us, commanded: true }, events);
            return;
        }
        if let Some(to) = self.leaves_for(plan, pair) {
            let began_us = self.calm_us;
            self.begin(plan, pair, Beginning { from: self.gear, to, began_us, commanded: false }, events);
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
            if let Some((onset_us, slip)) = self.slip.judge_slip(plan, (pair, ratio), wait_s) {
                count(&mut self.counts.alarms);
                self.ratios.slip_begins(self.gear);
                events.add(LiveEventKind::Slip, self.about(plan), onset_us, slip);
            }
        }
        self.measure(plan, pair, self.command.rank().unwrap_or(self.gear), events);
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

    fn begin(&mut self, plan: &LivePlan, pair: &Pair, beginning: Beginning, events: &mut LiveEvents) {
        let Beginning { from, to, began_us, .. } = beginning;
        self.shift.begin(pair, beginning, self.output_trend, self.peak);
        self.phase = self.shift.phase();
        (self.run, self.over) = (0, Mean3::NEW);
        self.slip.withdraw();
        self.window.restart();
        let about = About { gear: plan.place(to), other_gear: plan.place(from), suspects: 0 };
        events.add(LiveEventKind::ShiftBegan, about, began_us, (f32::NAN, f32::NAN));
    }

    /// In a shift: follows it to its end.
    pub(super) fn change(&mut self, plan: &LivePlan, pair: &Pair, sample: &LiveSample, events: &mut LiveEvents) {
        let (from, to) = (self.shift.from(), self.shift.to());
        let left = self.phase == ShiftPhase::Inertia;
        match self.command.rank() {
            Some(asked) if asked == from && !left => {
                self.settle(pair);
                return;
            }
            Some(asked) if asked != from && asked != to => self.shift.turn_to(asked),
            _ => {}
        }
        let leader = self.gears.leader();
        if leader != NO_RANK && leader != to {
            // Another gear than the one that was meant, or back to the old one.
            self.count_run(plan, pair, leader);
            if leader != from && (!self.command.is_known() || self.leader_holds(plan, pair)) {
                self.shift.turn_to(leader);
            } else if leader == from && left && self.run >= RUN && self.shift.left_for_s(pair) > plan.limits.settle_s {
                self.settle(pair);
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
                self.settle(pair);
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

    /// Back in the gear in effect.
    fn settle(&mut self, pair: &Pair) {
        (self.phase, self.since_us) = (ShiftPhase::Settle, pair.now_us);
    }

    fn other_gear(&self, plan: &LivePlan, pair: &Pair, events: &mut LiveEvents) {
        let Some(asked) = self.command.rank() else { return };
        let about = About { other_gear: plan.place(asked), ..self.about(plan) };
        let value = pair.input / pair.output;
        events.add(LiveEventKind::OtherGear, about, self.command.since_us(), (value, f32::NAN));
    }

    /// A shift has reached its gear.
    fn arrive(&mut self, plan: &LivePlan, pair: &Pair, sample: &LiveSample, events: &mut LiveEvents) {
        self.shift.finish(pair, sample.temp_c);
        let (from, to) = (plan.place(self.shift.from()), self.shift.to());
        let element = self.shift.element(plan);
        let plate_c = self.plates.take(plan, (element, self.shift.energy_j()), sample.temp_c, pair.time_us);
        self.shift.plate_c = plate_c;
        let cold = self.shift.is_cold(plan);
        count(if cold { &mut self.counts.shifts_cold } else { &mut self.counts.shifts_warm });
        let done = About { gear: plan.place(to), other_gear: from, suspects: 0 };
        let end_us = self.shift.end_us();
        events.add(LiveEventKind::ShiftDone, done, end_us, (self.shift.inertia_s(), f32::NAN));
        self.shift.tell(plan, done, events);
        let plates = plan.element(element);
        if plates.is_known() && plate_c > plates.limit_c {
            let suspects = 1_u16.checked_shl(element.into()).unwrap_or(0);
            events.add(LiveEventKind::Overheated, About { suspects, ..done }, pair.now_us, (plate_c, f32::NAN));
        }
        self.reach(plan, pair, &Reached { gear: to, from, at_us: end_us }, events);
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
        let about = self.about(plan);
        if self.phase == ShiftPhase::InGear && reference == self.gear && !self.watch.teeth {
            let slips = self.slip.take_window(plan.limits.slip_rpm, &closed, about, events);
            self.ratios.take(reference, ratio, &closed, slips);
            self.ratios.weigh(reference, &closed, plan.limits.slip_rpm);
        }
        let commanded = self.command.rank() == Some(reference);
        if let Some(fault) = self.watch.take(plan, reference, commanded, &closed) {
            self.slip.withdraw();
            events.add(fault.kind, About { suspects: 0, ..about }, pair.now_us, (fault.value, fault.u));
        }
    }
}
