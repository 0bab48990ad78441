//! The speeds of a sample: what came, whether it can be used, and how well it is known.

use super::event::{About, LiveEventKind, LiveEvents, LiveSpeed};
use super::sensor::{ReadingState, SpeedReading, SpeedSensor, SpeedSource, step_bias_rpm};
use super::state::{LiveCounts, count};
use crate::error::Result;

/// A speed sensor reduced to what a sample needs.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct PlannedSensor {
    /// From pulses per microsecond, or per tick, to 1/min.
    scale: f32,
    /// Variances of one value, (1/min)²: what stays in a mean of many, what falls with their number, and what falls with the
    /// square of their number; of edges the latter over the square of the speed.
    pub(super) lasting: f32,
    single: f32,
    ends: f32,
    /// Greatest bias of a mean of many values, 1/min; of edges the time in which half a tooth passes, s, at 1/min.
    bias: f32,
    greatest_rpm: f32,
    age_limit_us: u32,
    /// Teeth of the wheel; 0 for a bus.
    pub(super) teeth: u16,
    source: SpeedSource,
    /// The noise of a value hides its step: a value that repeats for long is stale, whatever the other speed does.
    dithered: bool,
}

impl PlannedSensor {
    pub(super) fn new(sensor: &SpeedSensor, sample_s: f32) -> Result<Self> {
        let SpeedSensor { source, teeth, step_rpm, noise_rpm, tick_s, age_limit_s, greatest_rpm } = sensor.checked()?;
        let spread = sensor.spread()?;
        let per_turn = if teeth > 0 { 60.0 / teeth as f32 } else { 0.0 };
        let per_sample = 60.0 * spread.turns / sample_s;
        let tick_share = spread.time_s / sample_s;
        Ok(Self {
            scale: match source {
                SpeedSource::Bus => 0.0,
                SpeedSource::Counted => per_turn * 1e6,
                SpeedSource::Edges => per_turn / tick_s,
            },
            lasting: spread.lasting_rpm * spread.lasting_rpm,
            single: spread.value_rpm * spread.value_rpm,
            ends: per_sample * per_sample + tick_share * tick_share,
            bias: if source == SpeedSource::Edges { 0.5 * per_turn } else { step_bias_rpm(step_rpm, noise_rpm)? },
            greatest_rpm,
            age_limit_us: (age_limit_s * 1e6) as u32,
            teeth: u16::try_from(teeth).unwrap_or(0),
            source,
            dithered: source == SpeedSource::Bus && noise_rpm >= 0.5 * step_rpm,
        })
    }

    /// Variance of one value at this speed, (1/min)².
    #[inline(never)]
    pub(super) fn variance(&self, rpm: f32) -> f32 {
        self.lasting + self.single + self.ends(rpm)
    }

    /// Greatest bias, 1/min, at a speed that changes by this share in a second. The mean over whole edges lags by half a tooth.
    #[inline]
    pub(super) fn bias_rpm(&self, rate_share_per_s: f32) -> f32 {
        if self.source == SpeedSource::Edges { self.bias * rate_share_per_s } else { self.bias }
    }

    /// Variance of the mean of so many values one after the other, (1/min)².
    pub(super) fn variance_of_mean(&self, rpm: f32, share: f32) -> f32 {
        self.lasting + (self.single + self.ends(rpm) * share) * share
    }

    /// What the ends of a window add for one value, (1/min)².
    #[inline]
    fn ends(&self, rpm: f32) -> f32 {
        if self.source == SpeedSource::Edges { self.ends * rpm * rpm } else { self.ends }
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

/// A speed with its variance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Known {
    pub(super) rpm: f32,
    pub(super) variance: f32,
    /// A gear ties it to the other speed: no shift is running.
    pub(super) tied: bool,
}

impl Known {
    /// A speed that nothing moves with.
    pub(super) const NONE: Self = Self { rpm: 0.0, variance: 0.0, tied: false };
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
    pub(super) const NONE: Self =
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
                    if self.rpm <= 0.0 || now_us.wrapping_sub(self.seen_us) > sensor.age_limit_us {
                        self.see(0.0, now_us);
                    }
                    return;
                }
            },
            ReadingState::Missing => &mut counts.missing,
            ReadingState::NotAvailable => &mut counts.not_available,
            ReadingState::SensorError => &mut counts.sensor_error,
            ReadingState::Reserved => &mut counts.reserved,
        };
        count(counter);
    }

    fn see(&mut self, rpm: f32, now_us: u32) {
        if rpm.to_bits() != self.rpm.to_bits() {
            self.changed_us = now_us;
            self.other_rpm = f32::NAN;
        }
        (self.rpm, self.seen_us, self.fresh) = (rpm, now_us, true);
    }

    /// Whether the speed of this sample can be used: it came, and it is not stale. `other` is the speed that moves with it.
    pub(super) fn usable(
        &mut self,
        sensor: &PlannedSensor,
        other: Known,
        now_us: u32,
        counts: &mut LiveCounts,
    ) -> bool {
        if !self.fresh {
            return false;
        }
        if self.other_rpm.is_nan() || !other.tied {
            self.other_rpm = other.rpm;
        }
        // What is counted does not age: a counter that has failed counts nothing.
        if now_us.wrapping_sub(self.changed_us) <= sensor.age_limit_us
            || self.rpm <= 0.0
            || sensor.source != SpeedSource::Bus
        {
            return true;
        }
        let stale = sensor.dithered || self.should_have_moved(sensor, other);
        if stale {
            count(&mut counts.stale);
        }
        !stale
    }

    /// Whether the other speed has moved further since this one last changed than steps and noise of both could hide.
    fn should_have_moved(&self, sensor: &PlannedSensor, other: Known) -> bool {
        let ratio = other.rpm / self.rpm;
        let moved = (other.rpm - self.other_rpm).abs() - 2.0 * sensor.bias * ratio;
        moved > 0.0 && moved * moved > 16.0 * (other.variance + sensor.variance(self.rpm) * ratio * ratio)
    }

    /// Whether the value is that of the sample before, although noise should have changed it.
    pub(super) fn repeats(&self, sensor: &PlannedSensor, now_us: u32) -> bool {
        sensor.dithered && self.changed_us != now_us
    }

    /// Whether the value has repeated more often than noise lets it by chance: it is no news about slip.
    #[inline]
    pub(super) fn holds(&self, sensor: &PlannedSensor, now_us: u32, span_us: u32) -> bool {
        sensor.dithered && now_us.wrapping_sub(self.changed_us) > span_us.saturating_add(span_us / 2)
    }

    /// Tells of a sensor that is stale, lost or back; whether there was something to tell. At most once for each sample.
    pub(super) fn report(&mut self, which: LiveSpeed, usable: bool, now_us: u32, events: &mut LiveEvents) -> bool {
        let since_us = if self.fresh { self.changed_us } else { self.seen_us };
        let for_us = now_us.wrapping_sub(since_us);
        let (health, kind) = match (usable, self.fresh) {
            (true, _) => (Health::Good, LiveEventKind::Back),
            (false, true) => (Health::Stale, LiveEventKind::Stale),
            (false, false) => (Health::Lost, LiveEventKind::Lost),
        };
        if health == self.health || (health != Health::Good && for_us < REPORT_US) {
            return false;
        }
        self.health = health;
        let at_us = if usable { now_us } else { since_us };
        if let Some(event) = events.add(kind, About::NOTHING, at_us, (self.rpm, f32::NAN)) {
            event.speed = which;
        }
        true
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
