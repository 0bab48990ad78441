//! The two speeds of a sample, held against a gear.

use super::plan::LivePlan;
use crate::real::single::greater;

/// Input and output speed of one sample, with what they are uncertain by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pair {
    pub(super) input: f32,
    pub(super) output: f32,
    /// Variances of the two, (1/min)².
    pub(super) of_input: f32,
    pub(super) of_output: f32,
    /// Rate at which the output changes, without sign, (1/min)/s.
    pub(super) rate_rpm_s: f32,
    /// Neither speed repeats its value by more than chance.
    pub(super) news: bool,
    /// Time since the pair before, s.
    pub(super) span_s: f32,
    /// Time of the sample, µs, and its low bits.
    pub(super) time_us: u64,
    pub(super) now_us: u32,
}

impl Pair {
    /// Slip at the input, n_in − i·n_out, 1/min.
    #[inline]
    pub(super) fn slip(&self, ratio: f32) -> f32 {
        self.input - ratio * self.output
    }

    /// Variance of the slip, (1/min)².
    #[inline]
    pub(super) fn variance(&self, ratio: f32) -> f32 {
        self.of_input + ratio * ratio * self.of_output
    }

    /// What steps and the different age of the speeds may add to the slip, 1/min.
    #[inline(never)]
    pub(super) fn bias(&self, plan: &LivePlan, ratio: f32) -> f32 {
        let share_per_s = self.rate_rpm_s / self.output;
        let of_output = plan.output.bias_rpm(share_per_s) + plan.limits.skew_s * self.rate_rpm_s;
        plan.input.bias_rpm(share_per_s) + ratio * of_output
    }

    /// Whether the slip in the gear of a rank is no more than three standard deviations and the bias could make it.
    pub(super) fn fits(&self, plan: &LivePlan, rank: u8) -> bool {
        let ratio = plan.ratio(rank);
        let beyond = greater(self.slip(ratio).abs() - self.bias(plan, ratio), 0.0);
        beyond * beyond <= 9.0 * self.variance(ratio)
    }

    /// The time of the sample that came at `then_us`, low bits, as long as it is not longer ago than these last.
    pub(super) fn at(&self, then_us: u32) -> u64 {
        self.time_us.saturating_sub(self.now_us.wrapping_sub(then_us).into())
    }

    /// Time since then, s.
    #[inline]
    pub(super) fn since_s(&self, then_us: u32) -> f32 {
        self.now_us.wrapping_sub(then_us) as f32 * 1e-6
    }
}
