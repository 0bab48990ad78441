//! A temperature sensor that has stuck: a cold unit that is driven warms up.

use crate::card::{self, Card, symbol};
use crate::real::single::whole_i16;

pub(super) const TEMP_STUCK: Card = Card {
    id: "live.temp_stuck",
    purpose: "A temperature sensor that has stuck",
    equation: "the same value for ten minutes of driving, below cold_c",
    symbols: &[symbol("cold_c", "fluid temperature below which a shift counts as cold", "°C")],
    range: "driving: the output turns. Heat of the converter and of the fluid's drag warms a cold unit by a kelvin in a minute or two; one \
        that its cooler keeps cold may hold a value for longer. A sensor that sticks warm is not found",
    source: &card::PRACTICE,
    locator: "warm-up; no source for the ten minutes",
};

/// The temperature and how long it has stood.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct WarmUp {
    /// In parts of a kelvin.
    temp: i16,
    /// Spans of driving with this temperature.
    driven: u8,
    /// The span of the sample before, low bits.
    span: u8,
}

/// Parts of a kelvin: the step of the temperature on a bus (J1939, from memory).
const KELVIN: f32 = 32.0;
/// A span is 2²² µs.
const SPAN_BITS: u32 = 22;
/// Ten minutes.
const STUCK: u8 = 143;

impl WarmUp {
    pub(super) const NONE: Self = Self { temp: 0, driven: 0, span: 0 };

    /// Takes the temperature of a sample; whether it has stuck. Says so again after as much driving as before.
    #[inline]
    pub(super) fn temp_stuck(&mut self, temp_c: f32, cold_c: f32, time_us: u64, drives: bool) -> bool {
        let temp = whole_i16(temp_c * KELVIN);
        let span = (time_us >> SPAN_BITS) as u8;
        let before = core::mem::replace(&mut self.span, span);
        if temp != self.temp || temp_c.is_nan() || temp_c >= cold_c {
            (self.temp, self.driven) = (temp, 0);
        } else if drives && span == before.wrapping_add(1) {
            self.driven += 1;
        }
        let stuck = self.driven >= STUCK;
        if stuck {
            self.driven = 0;
        }
        stuck
    }
}
