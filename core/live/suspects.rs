//! Which element slips, from what was seen in all gears.

use super::MAX_LIVE_ELEMENTS;

/// One element with the evidence against it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RankedSuspect {
    /// Number of the element.
    pub element: u8,
    /// ln of the odds that it is this one against all others together.
    pub ln_odds: f32,
}

/// The elements that may slip, most likely first. Only the first `count` are used.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveSuspects {
    /// Elements by evidence.
    pub suspects: [RankedSuspect; MAX_LIVE_ELEMENTS],
    /// Number of suspects; 0 while nothing slipped.
    pub count: u8,
    /// Place of the gear in which an observation separates the leading suspects best; −1 if none does.
    pub next_gear: i8,
}
