//! A temperature sensor that has stuck: a cold unit that is driven warms up.

use super::plan::LivePlan;
use crate::card::{self, Card, symbol};
use crate::real::single::whole_i16;

pub(super) const TEMP_STUCK: Card = Card {
    id: "live.temp_stuck",
    purpose: "A temperature sensor that has stuck",
    equation: "the same value for warm_up_s of driving, below cold_c",
    symbols: &[
        symbol("warm_up_s", "driving time in which a cold unit warms by more than the step of its sensor", "s"),
        symbol("cold_c", "fluid temperature below which a shift counts as cold", "°C"),
    ],
    range: "driving: the output turns; a pause between two samples counts as ten seconds at most. Heat of the converter and of the fluid's drag \
        warms a cold unit by a kelvin in a minute or two; one that its cooler keeps cold may hold a value for longer. A sensor that \
        sticks warm is not found",
    source: &card::PRACTICE,
    locator: "warm-up; ten minutes are usual, no source",
};

/// The temperature and how long it has stood.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct WarmUp {
    /// Driving time with this temperature, µs.
    driven_us: u32,
    /// In parts of a kelvin.
    temp: i16,
}

/// Parts of a kelvin: the step of the temperature on a bus (J1939, from memory).
const KELVIN: f32 = 32.0;
/// Longest time between two samples, µs; a longer pause counts as much.
const PAUSE_US: u32 = 10_000_000;

impl WarmUp {
    pub(super) const NONE: Self = Self { driven_us: 0, temp: 0 };

    /// Takes the temperature of a sample; whether it has stuck. Says so again after as much driving as before. `driven_us` is
    /// the driving time since the sample before.
    #[inline]
    pub(super) fn temp_stuck(&mut self, plan: &LivePlan, temp_c: f32, driven_us: u32) -> bool {
        let temp = whole_i16(temp_c * KELVIN);
        let stands = temp == self.temp && temp_c < plan.limits.cold_c;
        self.driven_us = if stands { self.driven_us.saturating_add(driven_us.min(PAUSE_US)) } else { 0 };
        self.temp = temp;
        let stuck = self.driven_us as f32 * 1e-6 >= plan.limits.warm_up_s;
        if stuck {
            self.driven_us = 0;
        }
        stuck
    }
}
