//! Faults that are none of the unit's: a wrong tooth count, exchanged sensors.

use super::event::LiveEventKind;
use super::plan::LivePlan;
use super::window::Closed;
use crate::card::{self, Card, symbol};

pub(super) const WRONG_TEETH: Card = Card {
    id: "live.wrong_teeth",
    purpose: "A ratio that is wrong by the same factor in every gear",
    equation: "e = s̄/(i·n̄_out); |e_1 − e_2| ≤ v + 0.001 in two gears, two windows each, |e| > v + 0.003 in both; no gear fits",
    symbols: &[
        symbol("e", "relative error of the ratio in a window", "1"),
        symbol("v", "four times its standard uncertainty, and the bias of steps and ages", "1"),
    ],
    range: "gear as commanded, where that is known, else the one in effect. A slipping element slips with its torque, not by the same \
        share of the speed in two gears",
    source: &card::DEFINITION,
    locator: "a tooth count is a factor of the ratio",
};

pub(super) const SWAPPED: Card = Card {
    id: "live.swapped",
    purpose: "Input and output sensor exchanged",
    equation: "|r·i·(z_in/z_out)² − 1| ≤ v + 0.003 in ten windows one after the other, while r fits no gear",
    symbols: &[
        symbol("r", "measured ratio", "1"),
        symbol("i", "ratio of the commanded gear, or of any gear where that is not known, without sign", "1"),
        symbol("z_in, z_out", "teeth of the wheels; on a bus the factor is 1", "1"),
        symbol("v", "four times its relative standard uncertainty, and the bias of steps and ages", "1"),
    ],
    range: "gears other than 1:1",
    source: &card::DEFINITION,
    locator: "the inverse ratio",
};

/// Errors of the ratio in the last two gears, and windows with an inverse ratio.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Watch {
    /// Relative error of the ratio, in the gear now and in the one before.
    error: f32,
    error_before: f32,
    rank: u8,
    /// Windows with that error.
    windows: u8,
    windows_before: u8,
    inverse: u8,
    /// The tooth count is wrong: nothing that slips can be told.
    pub(super) teeth: bool,
    pub(super) swapped: bool,
}

/// What is wrong, with the value of its event.
pub(super) struct Fault {
    pub(super) kind: LiveEventKind,
    pub(super) value: f32,
    pub(super) u: f32,
}

/// So many windows in a row show the inverse ratio.
const INVERSE: u8 = 10;

impl Watch {
    pub(super) const NONE: Self = Self {
        error: 0.0,
        error_before: 0.0,
        rank: 0,
        windows: 0,
        windows_before: 0,
        inverse: 0,
        teeth: false,
        swapped: false,
    };

    /// Takes a window against the gear `rank`; `commanded`: that is the commanded gear. Returns what is wrong, and by how much.
    pub(super) fn take(&mut self, plan: &LivePlan, rank: u8, commanded: bool, closed: &Closed) -> Option<Fault> {
        let turns = plan.ratio(rank) * closed.output;
        let error = closed.slip / turns;
        let spread = (4.0 * closed.u + closed.bias) / turns;
        self.wrong_teeth(rank, error, spread).or_else(|| {
            let measured = plan.ratio(rank) * (1.0 + error);
            self.swapped(plan, measured, commanded.then_some(rank), spread + 0.003)
        })
    }

    fn wrong_teeth(&mut self, rank: u8, error: f32, spread: f32) -> Option<Fault> {
        if error.abs() <= spread + 0.003 {
            // One gear that fits clears the tooth count.
            *self = Self { inverse: self.inverse, swapped: self.swapped, ..Self::NONE };
            return None;
        }
        let same = |other: f32| (other - error).abs() <= spread + 0.001;
        if self.rank == rank && same(self.error) {
            self.windows = self.windows.saturating_add(1);
            self.error += (error - self.error) / f32::from(self.windows);
        } else {
            if self.rank != rank {
                (self.error_before, self.windows_before) = (self.error, self.windows);
            }
            (self.error, self.rank, self.windows) = (error, rank, 1);
        }
        let both = self.windows >= 2 && self.windows_before >= 2 && same(self.error_before);
        if self.teeth || !both {
            return None;
        }
        self.teeth = true;
        let value = 1.0 + 0.5 * (self.error + self.error_before);
        Some(Fault { kind: LiveEventKind::WrongTeeth, value, u: 0.25 * spread })
    }

    fn swapped(&mut self, plan: &LivePlan, measured: f32, commanded: Option<u8>, spread: f32) -> Option<Fault> {
        let near = |ratio: f32| (ratio - 1.0).abs() <= spread;
        let exchanged = measured * exchanged_teeth(plan);
        let (mut fits, mut inverse) = (false, false);
        for rank in 0..plan.gear_count {
            let ratio = plan.ratio(rank);
            fits |= near(measured / ratio);
            inverse |= commanded.is_none_or(|only| only == rank) && near(exchanged * ratio);
        }
        self.inverse = if inverse && !fits { self.inverse.saturating_add(1) } else { 0 };
        if fits {
            self.swapped = false;
        }
        if self.swapped || self.inverse < INVERSE {
            return None;
        }
        self.swapped = true;
        Some(Fault { kind: LiveEventKind::Swapped, value: measured, u: 0.25 * spread * measured })
    }
}

/// What the tooth counts make of exchanged pulses: each sensor's wheel is taken for the other's, in both speeds.
fn exchanged_teeth(plan: &LivePlan) -> f32 {
    let (input, output) = (f32::from(plan.input.teeth), f32::from(plan.output.teeth));
    if input > 0.0 && output > 0.0 { input / output * (input / output) } else { 1.0 }
}
