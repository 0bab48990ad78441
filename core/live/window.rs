//! Windows of the ratio, one after the other: each closes when its ratio is known well enough.

use super::pair::Pair;
use super::plan::LivePlan;
use crate::card::{self, Card, symbol};
use crate::real::single::sqrt;

pub(super) const RATIO: Card = Card {
    id: "live.ratio",
    purpose: "Ratio of a gear over windows, each as long as its sensors, speed and gear ask for",
    equation: "r = i + Σs/Σn_out; the window closes when u²(s̄) ≤ (w·n_in)², u²(s̄) = B + V/m + E/m² of input + i² times that of output",
    symbols: &[
        symbol("r", "ratio", "1"),
        symbol("s, n_out", "slip at the input and output speed of a sample", "1/min"),
        symbol("w", "ratio_u_rel", "1"),
        symbol(
            "B, V, E",
            "what stays, falls with the number m of samples, and with its square (live.u_rpm)",
            "(1/min)²",
        ),
    ],
    range: "one gear, no shift; at least 0.1 s. A window that is not good enough after ten seconds closes, too, but is not counted to the ratio",
    source: &card::GUM,
    locator: "5.1.2, combined standard uncertainty of a ratio of means",
};

/// Least and greatest length of a window.
const LEAST_S: f32 = 0.1;
const MOST_S: f32 = 10.0;

/// A window that is open: sums over its samples.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Window {
    slip: f32,
    output: f32,
    count: f32,
    since_us: u32,
}

/// A window that has closed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Closed {
    /// Mean slip at the input, 1/min, and its standard uncertainty.
    pub(super) slip: f32,
    pub(super) u: f32,
    /// What steps and the different age of the speeds may have added to it, as at its end, 1/min.
    pub(super) bias: f32,
    /// Mean output speed, 1/min.
    pub(super) output: f32,
    /// Its middle, µs, low bits.
    pub(super) middle_us: u32,
    /// It closed because it was good enough.
    pub(super) good: bool,
}

impl Window {
    pub(super) const NONE: Self = Self { slip: 0.0, output: 0.0, count: 0.0, since_us: 0 };

    pub(super) fn restart(&mut self) {
        self.count = 0.0;
    }

    /// Takes a sample of a gear with this ratio; the window closes at the relative uncertainty `u_rel`.
    #[inline]
    pub(super) fn take(&mut self, plan: &LivePlan, pair: &Pair, ratio: f32, u_rel: f32) -> Option<Closed> {
        if self.count <= 0.0 {
            *self = Self { since_us: pair.now_us, ..Self::NONE };
        }
        self.slip += pair.slip(ratio);
        self.output += pair.output;
        self.count += 1.0;
        let length_s = pair.since_s(self.since_us);
        if length_s < LEAST_S && plan.sample_s < LEAST_S {
            return None;
        }
        let share = 1.0 / self.count;
        let variance = plan.input.variance_of_mean(pair.input, share)
            + ratio * ratio * plan.output.variance_of_mean(pair.output, share);
        let wanted = u_rel * pair.input;
        // Steps that no noise hides stay in any mean: a window that is down to them closes, too.
        let stays = plan.input.lasting + ratio * ratio * plan.output.lasting;
        let good = variance <= wanted * wanted || variance <= 1.25 * stays;
        if !good && length_s < MOST_S {
            return None;
        }
        let closed = Closed {
            slip: self.slip * share,
            u: sqrt(variance),
            bias: pair.bias(plan, ratio),
            output: self.output * share,
            middle_us: self.since_us.wrapping_add(pair.now_us.wrapping_sub(self.since_us) / 2),
            good,
        };
        self.restart();
        Some(closed)
    }
}
