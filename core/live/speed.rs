//! The speeds of a sample: what came, whether it can be used, and how well it is known.

use super::event::{LiveCounts, LiveEvent, LiveEventKind, LiveSpeed};
use super::sensor::{ReadingState, SpeedReading, SpeedSensor, SpeedSource};
use crate::error::Result;

/// A speed sensor reduced to what a sample needs.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct PlannedSensor {
    /// From pulses per microsecond, or per tick, to 1/min.
    scale: f32,
    /// Variance of one value, (1/min)²: the constant part, and what grows with the square of the speed.
    variance: f32,
    variance_rel: f32,
    /// Greatest bias of a mean of many values, 1/min.
    pub(super) bias_rpm: f32,
    pub(super) greatest_rpm: f32,
    age_limit_us: u32,
    source: SpeedSource,
    /// The noise of a value hides its step: a value that repeats for long is stale, whatever the other speed does.
    dithered: bool,
}

impl PlannedSensor {
    pub(super) fn new(sensor: &SpeedSensor, sample_s: f32) -> Result<Self> {
        let SpeedSensor { source, teeth, step_rpm, noise_rpm, tick_s, age_limit_s, greatest_rpm } = sensor.checked()?;
        let per_turn = if teeth > 0 { 60.0 / teeth as f32 } else { 0.0 };
        let noise = noise_rpm * noise_rpm;
        let (scale, variance, variance_rel) = match source {
            SpeedSource::Bus => (0.0, noise + step_rpm * step_rpm / 12.0, 0.0),
            SpeedSource::Counted => {
                let one = per_turn / sample_s;
                (per_turn * 1e6, noise + one * one / 6.0, 0.0)
            }
            SpeedSource::Edges => (per_turn / tick_s, noise, tick_s * tick_s / (6.0 * sample_s * sample_s)),
        };
        let dithered = noise_rpm >= 0.5 * step_rpm;
        let bias_rpm = if dithered { 0.0 } else { 0.5 * step_rpm };
        let age_limit_us = (age_limit_s * 1e6) as u32;
        Ok(Self { scale, variance, variance_rel, bias_rpm, greatest_rpm, age_limit_us, source, dithered })
    }

    /// Variance of one value at this speed, (1/min)².
    #[inline]
    pub(super) fn variance(&self, rpm: f32) -> f32 {
        self.variance + self.variance_rel * rpm * rpm
    }

    /// The speed of a reading over the time since the sample before; `None` where no edge came, NaN where it cannot be told.
    #[inline]
    fn rpm(&self, reading: &SpeedReading, span_us: u32) -> Option<f32> {
        match self.source {
            SpeedSource::Bus => Some(reading.rpm),
            SpeedSource::Counted => Some(reading.pulses as f32 * self.scale / span_us as f32),
            SpeedSource::Edges if reading.pulses == 0 => None,
            SpeedSource::Edges => Some(reading.pulses as f32 * self.scale / reading.ticks as f32),
        }
    }
}

/// How a sensor is doing.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Health {
    Good,
    Stale,
    Lost,
}

/// One speed as it comes.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct SpeedTrack {
    /// Last value that could be, 1/min.
    pub(super) rpm: f32,
    /// The other speed when it last changed.
    other_rpm: f32,
    /// When it last changed, and when it was last seen; µs, low bits.
    changed_us: u32,
    seen_us: u32,
    health: Health,
    fresh: bool,
}

/// A sensor that is stale or lost for longer than this is reported; shorter is counted only.
const REPORT_US: u32 = 500_000;

impl SpeedTrack {
    pub(super) const NEW: Self =
        Self { rpm: 0.0, other_rpm: 0.0, changed_us: 0, seen_us: 0, health: Health::Good, fresh: false };

    /// Takes a reading. Returns the speed if it can be; `fresh` says so, too.
    pub(super) fn take(
        &mut self,
        sensor: &PlannedSensor,
        reading: &SpeedReading,
        (now_us, span_us): (u32, u32),
        counts: &mut LiveCounts,
    ) {
        self.fresh = false;
        let counter = match reading.state {
            ReadingState::Value => match sensor.rpm(reading, span_us) {
                Some(rpm) if (0.0..=sensor.greatest_rpm).contains(&rpm) => {
                    self.see(rpm, now_us);
                    return;
                }
                Some(_) => &mut counts.impossible,
                // No edge: the shaft is slow, or stands.
                None => {
                    if now_us.wrapping_sub(self.seen_us) > sensor.age_limit_us {
                        let seen_us = self.seen_us;
                        self.see(0.0, now_us);
                        self.seen_us = seen_us;
                    }
                    return;
                }
            },
            ReadingState::Missing => &mut counts.missing,
            ReadingState::NotAvailable => &mut counts.not_available,
            ReadingState::SensorError => &mut counts.sensor_error,
            ReadingState::Reserved => &mut counts.reserved,
        };
        *counter = counter.saturating_add(1);
    }

    fn see(&mut self, rpm: f32, now_us: u32) {
        if rpm.to_bits() != self.rpm.to_bits() {
            self.changed_us = now_us;
            self.other_rpm = f32::NAN;
        }
        (self.rpm, self.seen_us, self.fresh) = (rpm, now_us, true);
    }

    /// Whether the speed of this sample can be used; `other` is the speed that would move with it.
    pub(super) fn usable(
        &mut self,
        sensor: &PlannedSensor,
        other: (f32, f32),
        now_us: u32,
        counts: &mut LiveCounts,
    ) -> bool {
        let (other_rpm, other_variance) = other;
        if !self.fresh {
            return false;
        }
        if self.other_rpm.is_nan() {
            self.other_rpm = other_rpm;
        }
        if now_us.wrapping_sub(self.changed_us) <= sensor.age_limit_us || self.rpm <= 0.0 {
            return true;
        }
        // What this speed would have moved by, against what it may without showing it.
        let moved = (other_rpm - self.other_rpm).abs() * self.rpm;
        let least = 2.0 * sensor.bias_rpm * other_rpm;
        let stale = sensor.dithered
            || (moved > least && (moved - least) * (moved - least) > 16.0 * other_variance * self.rpm * self.rpm);
        if stale {
            counts.stale = counts.stale.saturating_add(1);
        }
        !stale
    }

    /// The event of a sensor that is stale, lost or back, if there is one. One call for each sensor and sample.
    pub(super) fn report(
        &mut self,
        which: LiveSpeed,
        usable: bool,
        (now_us, time_us): (u32, u64),
    ) -> Option<LiveEvent> {
        let since_us = if self.fresh { self.changed_us } else { self.seen_us };
        let for_us = now_us.wrapping_sub(since_us);
        let (health, kind) = match (usable, self.fresh) {
            (true, _) => (Health::Good, LiveEventKind::Back),
            (false, true) => (Health::Stale, LiveEventKind::Stale),
            (false, false) => (Health::Lost, LiveEventKind::Lost),
        };
        if health == self.health || (health != Health::Good && for_us < REPORT_US) {
            return None;
        }
        self.health = health;
        let at_us = if usable { time_us } else { time_us.saturating_sub(for_us.into()) };
        Some(LiveEvent { kind, speed: which, at_us, found_us: time_us, value: self.rpm, ..LiveEvent::NONE })
    }

    /// The clock starts again.
    pub(super) fn restart(&mut self, now_us: u32) {
        (self.changed_us, self.seen_us, self.other_rpm) = (now_us, now_us, f32::NAN);
    }

    /// Whether the sensor gave a value in this sample that can be.
    pub(super) fn fresh(&self) -> bool {
        self.fresh
    }
}
