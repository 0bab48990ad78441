//! Slip in a gear: how much, since when, and the alarm.

use super::event::{About, LiveEventKind, LiveEvents};
use super::pair::Pair;
use super::plan::LivePlan;
use super::run_length::threshold;
use super::trend::Trend;
use super::window::Closed;
use crate::card::{self, Card, symbol};
use crate::real::single::{bounded, greater, lesser, sqrt};

pub(super) const ALARM: Card = Card {
    id: "live.judge_slip",
    purpose: "Alarm for slip in a gear, with a set average time to a false one",
    equation: "s = n_in − i·n_out; z = min((s − b − δ/2)/u, 2.5); S ← max(0, S + z); alarm at S ≥ h; onset where S last was 0",
    symbols: &[
        symbol("s", "slip at the input in one sample", "1/min"),
        symbol(
            "b",
            "greatest bias: that of the steps (live.step_bias_rpm), and skew_s times the rate of the output times i",
            "1/min",
        ),
        symbol("δ", "slip_rpm", "1/min"),
        symbol("u", "standard uncertainty of s from the sensors", "1/min"),
        symbol(
            "h",
            "threshold of live.threshold_for, for the run length over the sample period and the reference δ/(2·u), at most 1",
            "1",
        ),
    ],
    range: "in a gear that has settled, noise white; a value that repeats although noise should change it is left out from the second time on; under drive only s > 0 can be slip. One value counts 2.5 u at most: a short glitch cannot \
        alarm. Without a commanded gear the alarm waits until the onset is as old as follow_s: until then it may be a shift",
    source: &card::CUMULATIVE_SUMS,
    locator: "one-sided scheme; reference half way to the slip that is to be found, values clipped (derived)",
};

/// Most of a single value in the sum.
const VALUE_MOST: f32 = 2.5;
/// Most of a reference: the approximation of the run length is good up to here.
const REFERENCE_MOST: f32 = 1.0;
const REFERENCE_LEAST: f32 = 0.01;
/// First of the levels at which a growing slip is reported; each is twice the one before.
const FIRST_LEVEL_RPM: f32 = 5.0;

/// Slip in the gear in effect.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct SlipTrack {
    trend: Trend,
    /// The cumulative sum, when it last was 0, and the sum that alarms.
    sum: f32,
    onset_us: u32,
    threshold: f32,
    /// One over the standard uncertainty of one slip.
    per_u: f32,
    /// Mean slip and middle of the window before; NaN before the first.
    mean: f32,
    middle_us: u32,
    /// Next level to report.
    next_level_rpm: f32,
    pub(super) alarm: bool,
}

impl SlipTrack {
    /// Before the first gear.
    pub(super) const NONE: Self = Self {
        trend: Trend::NONE,
        sum: 0.0,
        onset_us: 0,
        threshold: 0.0,
        per_u: 0.0,
        mean: 0.0,
        middle_us: 0,
        next_level_rpm: 0.0,
        alarm: false,
    };

    /// Starts in a gear.
    pub(super) fn restart(&mut self, plan: &LivePlan, pair: &Pair, ratio: f32) {
        let per_u = 1.0 / sqrt(pair.variance(ratio));
        let reference = bounded(0.5 * plan.limits.slip_rpm * per_u, REFERENCE_LEAST, REFERENCE_MOST);
        let threshold = threshold(plan.limits.run_length_s / plan.sample_s, reference);
        let (mean, next_level_rpm) = (f32::NAN, FIRST_LEVEL_RPM);
        *self = Self { onset_us: pair.now_us, threshold, per_u, mean, next_level_rpm, ..Self::NONE };
        self.trend.restart(pair.slip(ratio));
    }

    /// Follows the slip, without judging it.
    #[inline]
    pub(super) fn follow(&mut self, plan: &LivePlan, pair: &Pair, ratio: f32) {
        self.trend.take(&plan.fading, pair.slip(ratio), pair.span_s);
    }

    /// Judges a sample. Raises the alarm, and returns its onset, low bits, and the slip with its standard uncertainty.
    #[inline]
    pub(super) fn judge_slip(
        &mut self,
        plan: &LivePlan,
        (pair, ratio): (&Pair, f32),
        wait_s: f32,
    ) -> Option<(u32, (f32, f32))> {
        let reference = pair.bias(plan, ratio) + 0.5 * plan.limits.slip_rpm;
        let value = lesser((pair.slip(ratio) - reference) * self.per_u, VALUE_MOST);
        self.sum = bounded(self.sum + value, 0.0, 2.0 * self.threshold);
        if self.sum <= 0.0 {
            self.onset_us = pair.now_us;
        }
        if self.alarm || self.sum < self.threshold || pair.since_s(self.onset_us) < wait_s {
            return None;
        }
        self.alarm = true;
        Some((self.onset_us, self.slip(plan)))
    }

    /// Takes a window of the gear: reports levels of a slip that grows, and its end. Returns whether the gear slips.
    pub(super) fn take_window(
        &mut self,
        slip_rpm: f32,
        closed: &Closed,
        about: About,
        events: &mut LiveEvents,
    ) -> Option<bool> {
        let (bias, least) = (closed.bias, 0.5 * slip_rpm);
        let clean = closed.slip.abs() <= bias + greater(3.0 * closed.u, least);
        if self.alarm && closed.slip <= bias + greater(2.0 * closed.u, least) {
            self.alarm = false;
            (self.sum, self.next_level_rpm) = (0.0, FIRST_LEVEL_RPM);
            events.add(LiveEventKind::SlipGone, about, closed.middle_us, (closed.slip, closed.u));
        } else if self.alarm && closed.slip >= self.next_level_rpm {
            let mut level = self.next_level_rpm;
            while closed.slip >= 2.0 * level {
                level *= 2.0;
            }
            let step_us = closed.middle_us.wrapping_sub(self.middle_us) as f32;
            let before = (closed.slip - level) / (closed.slip - self.mean) * step_us;
            let before_us = if self.mean < level { before as u32 } else { 0 };
            let at_us = closed.middle_us.wrapping_sub(before_us);
            events.add(LiveEventKind::SlipReached, about, at_us, (level, closed.u));
            self.next_level_rpm = 2.0 * level;
        }
        (self.mean, self.middle_us) = (closed.slip, closed.middle_us);
        match (self.alarm, clean) {
            (true, _) => Some(true),
            (false, true) => Some(false),
            (false, false) => None,
        }
    }

    /// The slip now and its standard uncertainty, 1/min.
    #[inline]
    pub(super) fn slip(&self, plan: &LivePlan) -> (f32, f32) {
        (self.trend.level, plan.level_share / self.per_u)
    }

    /// Ends an alarm that has another cause.
    pub(super) fn withdraw(&mut self) {
        (self.alarm, self.sum) = (false, 0.0);
    }
}
