//! The commanded gear: compared with the one in effect, never believed.

use super::gear::NO_RANK;
use super::plan::LivePlan;
use super::sample::GEAR_NOT_COMMANDED;

/// What is commanded, and since when.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Command {
    since_us: u32,
    number: i8,
    rank: u8,
    /// The gear did not come: it is not waited for again.
    refused: bool,
}

impl Command {
    pub(super) const NONE: Self = Self { since_us: 0, number: 0, rank: 0, refused: false };
    pub(super) const UNKNOWN: Self = Self { number: GEAR_NOT_COMMANDED, rank: NO_RANK, ..Self::NONE };

    #[inline]
    pub(super) fn take(&mut self, plan: &LivePlan, number: i8, now_us: u32) {
        if number != self.number {
            let rank = plan.rank_of_number(number).unwrap_or(NO_RANK);
            *self = Self { since_us: now_us, number, rank, refused: false };
        }
    }

    /// Neutral or park is commanded.
    pub(super) fn is_neutral(&self) -> bool {
        self.number == 0
    }

    /// A gear of the unit is commanded.
    pub(super) fn is_known(&self) -> bool {
        self.rank != NO_RANK
    }

    /// Rank of the commanded gear.
    pub(super) fn rank(&self) -> Option<u8> {
        self.is_known().then_some(self.rank)
    }

    /// The commanded gear, if it is another than this and may still come.
    pub(super) fn asks_for(&self, gear: u8) -> Option<u8> {
        self.rank().filter(|&rank| rank != gear && !self.refused)
    }

    pub(super) fn since_us(&self) -> u32 {
        self.since_us
    }

    pub(super) fn refuse(&mut self) {
        self.refused = true;
    }
}
