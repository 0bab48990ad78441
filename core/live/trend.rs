//! Level and slope of a signal whose older samples fade.

use crate::real::single::{exp, sqrt};

/// Time in which a sample's weight falls to 1/e.
const FADES_S: f32 = 0.25;

/// How much a new sample moves level and slope, and what noise is left of them.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Fading {
    level_gain: f32,
    slope_gain_per_s: f32,
}

impl Fading {
    /// Critically damped: both poles at θ = exp(−Δt/0.25 s).
    pub(super) fn new(sample_s: f32) -> Self {
        let stays = exp(-sample_s / FADES_S);
        let goes = 1.0 - stays;
        Self { level_gain: 1.0 - stays * stays, slope_gain_per_s: goes * goes / sample_s }
    }

    /// Standard deviation of the level, over that of a sample.
    pub(super) fn level_share(&self) -> f32 {
        let stays = sqrt(1.0 - self.level_gain);
        let sum = 1.0 + stays;
        sqrt((1.0 - stays) * (5.0 + 4.0 * stays + stays * stays) / (sum * sum * sum))
    }
}

/// Level and slope now.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Trend {
    pub(super) level: f32,
    pub(super) slope_per_s: f32,
}

impl Trend {
    pub(super) const NONE: Self = Self { level: 0.0, slope_per_s: 0.0 };

    pub(super) fn restart(&mut self, value: f32) {
        *self = Self { level: value, slope_per_s: 0.0 };
    }

    #[inline]
    pub(super) fn take(&mut self, fading: &Fading, value: f32, span_s: f32) {
        let expected = self.level + self.slope_per_s * span_s;
        let error = value - expected;
        self.level = expected + fading.level_gain * error;
        self.slope_per_s += fading.slope_gain_per_s * error;
    }

    /// Most that the signal may be changing by now, without sign, 1/s: the slope, and what it lags by while it changes itself.
    #[inline]
    pub(super) fn greatest_slope_per_s(&self, value: f32) -> f32 {
        self.slope_per_s.abs() + (value - self.level).abs() * (2.0 / FADES_S)
    }
}

/// Mean of three samples in a row; before the third, NaN.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Mean3 {
    before: [f32; 2],
}

impl Mean3 {
    pub(super) const NONE: Self = Self { before: [0.0; 2] };
    pub(super) const NEW: Self = Self { before: [f32::NAN; 2] };

    #[inline]
    pub(super) fn take(&mut self, value: f32) -> f32 {
        let [first, second] = self.before;
        self.before = [second, value];
        (first + second + value) * (1.0 / 3.0)
    }
}
