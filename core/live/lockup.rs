//! The lock-up clutch: slip between engine and input, and when it has settled.

use super::event::{About, LiveEventKind, LiveEvents};
use super::plan::LivePlan;
use crate::card::{self, Card, symbol};
use crate::real::single::sqrt;

pub(super) const SETTLED: Card = Card {
    id: "live.lockup_settled",
    purpose: "When the lock-up clutch has settled",
    equation: "windows of 0.1 s: |s̄| ≤ s_max and |s̄ − s̄'| ≤ 2·√(2·u²/m); it settled where the second of the two windows began",
    symbols: &[
        symbol("s̄, s̄'", "mean of engine less input in a window and in the one before", "1/min"),
        symbol("s_max", "lockup_slip_rpm", "1/min"),
        symbol("u, m", "standard uncertainty of one difference, and differences in the window", "1/min, 1"),
    ],
    range: "commanded on, or no command known",
    source: &card::GUM,
    locator: "two means agree within twice the uncertainty of their difference",
};

/// Length of a window, µs.
const WINDOW_US: u32 = 100_000;

/// Engine less input in windows.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct LockupTrack {
    sum: f32,
    count: f32,
    since_us: u32,
    /// Mean of the window before; NaN before the first.
    mean: f32,
    on: bool,
}

impl LockupTrack {
    pub(super) const NONE: Self = Self { sum: 0.0, count: 0.0, since_us: 0, mean: 0.0, on: false };

    pub(super) fn restart(&mut self) {
        *self = Self { mean: f32::NAN, ..Self::NONE };
    }

    /// Takes engine less input of a sample with its variance; `lockup` is the command.
    pub(super) fn lockup_settled(
        &mut self,
        plan: &LivePlan,
        (slip, variance): (f32, f32),
        (lockup, now_us): (i8, u32),
        events: &mut LiveEvents,
    ) {
        if self.on && lockup == 0 {
            self.restart();
            events.add(LiveEventKind::LockupOff, About::NOTHING, now_us, (slip, f32::NAN));
            return;
        }
        if self.count <= 0.0 {
            (self.since_us, self.sum) = (now_us, 0.0);
        }
        self.sum += slip;
        self.count += 1.0;
        if now_us.wrapping_sub(self.since_us) < WINDOW_US {
            return;
        }
        let mean = self.sum / self.count;
        let of_mean = variance / self.count;
        let change = mean - core::mem::replace(&mut self.mean, mean);
        self.count = 0.0;
        let locked = mean.abs() <= plan.limits.lockup_slip_rpm;
        let turns = if self.on { !locked } else { locked && lockup != 0 && change * change <= 8.0 * of_mean };
        if turns {
            self.on = !self.on;
            let kind = if self.on { LiveEventKind::LockupOn } else { LiveEventKind::LockupOff };
            events.add(kind, About::NOTHING, self.since_us, (mean, sqrt(of_mean)));
        }
    }
}
