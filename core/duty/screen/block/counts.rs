//! What the rows of a block add up to: flags, extremes, values that could not be used.

use super::others::rising;
use super::{BLOCK, Lanes, Values};
use crate::duty::screen::columns::{
    FLAG_GAP, FLAG_UNKNOWN, GEAR_UNKNOWN, INPUT, NOT_USED, PRESSURE, SCREEN_COLUMNS, TEMP, TIME,
};
use crate::duty::screen::plan::ScreenPlan;
use crate::duty::screen::power::ticks;
use crate::duty::screen::row::bit;
use crate::duty::screen::tally::{FLAG_ROWS, FLAG_SECONDS, GAP, GAP_SECONDS, KNOWN, ROWS, ScreenExtreme, ScreenTally};

/// Place of [`FLAG_UNKNOWN`] among the flags.
const UNKNOWN: usize = FLAG_UNKNOWN.trailing_zeros() as usize;

/// The extremes of a block as bits: greatest share, least margin, hottest fluid.
pub(super) struct Extremes {
    pub(super) share: i64,
    pub(super) margin: i64,
    pub(super) temp: i64,
}

impl Lanes {
    /// Rows and seconds of every flag, of the rows with a duration, and of the gaps. The rows past `count` are none.
    #[inline(always)]
    pub(super) fn count_flags(&mut self, given: u32, count: usize, tally: &mut ScreenTally) {
        for flags in &mut self.flags[count..] {
            *flags = 0;
        }
        let (mut any, mut known) = (0, 0_i64);
        for i in 0..BLOCK {
            let flags = self.flags[i] & given;
            any |= flags;
            self.flags[i] = flags;
            known = known.wrapping_add(self.duration[i]);
        }
        tally.add(ROWS, count as i64);
        tally.add(KNOWN, known);
        while any != 0 {
            let flag = any.trailing_zeros() as usize;
            any &= any - 1;
            self.count_flag(flag, tally);
        }
    }

    /// Counts rows that say nothing but their times, which are all regular.
    #[inline(always)]
    pub(super) fn count_times(&mut self, tally: &mut ScreenTally) {
        self.flags = [FLAG_UNKNOWN; BLOCK];
        self.place = [GEAR_UNKNOWN.into(); BLOCK];
        let known = self.duration.iter().fold(0, |sum: i64, &duration| sum.wrapping_add(duration));
        tally.add(ROWS, BLOCK as i64);
        tally.add(FLAG_ROWS + UNKNOWN, BLOCK as i64);
        tally.add(KNOWN, known);
        tally.add(FLAG_SECONDS + UNKNOWN, known);
    }

    #[inline(always)]
    fn count_flag(&self, flag: usize, tally: &mut ScreenTally) {
        let (mut rows, mut seconds) = (0_u32, 0_i64);
        for i in 0..BLOCK {
            let has = self.flags[i] & bit(flag) != 0;
            rows += u32::from(has);
            seconds = seconds.wrapping_add(if has { self.duration[i] } else { 0 });
        }
        tally.add(FLAG_ROWS + flag, rows.into());
        tally.add(FLAG_SECONDS + flag, seconds);
        if bit(flag) == FLAG_GAP {
            tally.add(GAP, self.gap_s.iter().fold(0, |sum: i64, &gap_s| sum.wrapping_add(ticks(gap_s, GAP_SECONDS))));
        }
    }

    /// Counts the values that cannot be used, by kind. They are in few rows.
    #[inline(always)]
    pub(super) fn count_bad(
        &self,
        given: u32,
        count: usize,
        columns: &[&Values; SCREEN_COLUMNS],
        tally: &mut ScreenTally,
    ) {
        let mut rows = 0_u64;
        for i in 0..BLOCK {
            rows |= u64::from(self.flags[i] & given != 0) << i;
        }
        rows &= u64::MAX.unbounded_shr((BLOCK - count) as u32);
        while rows != 0 {
            let i = rows.trailing_zeros() as usize;
            rows &= rows - 1;
            let mut bad = self.flags[i] & given;
            while bad != 0 {
                let column = bad.trailing_zeros() as usize;
                bad &= bad - 1;
                tally.add_bad(column, columns[column][i + 1]);
            }
        }
    }

    /// Offers the rows with the extremes of the block to the tally, where they are beyond those so far.
    #[inline(always)]
    pub(super) fn offer(
        &self,
        (plan, found): (&ScreenPlan, &Extremes),
        first_row: u64,
        columns: &[&Values; SCREEN_COLUMNS],
        tally: &mut ScreenTally,
    ) {
        let of = |bits: i64| f64::from_bits(bits.cast_unsigned());
        let (share, margin) = (tally.greatest_share.value, tally.least_margin.value);
        if found.share >= 0 && (share.is_nan() || of(found.share) >= share) {
            self.offer_shares(found.share, first_row, columns, tally);
        }
        if !of(found.margin).is_nan() && (margin.is_nan() || of(found.margin) <= margin) {
            self.offer_margins((plan, found.margin), first_row, columns, tally);
        }
        let hottest = tally.hottest.value;
        if found.temp > i64::MIN && (hottest.is_nan() || found.temp >= rising(hottest)) {
            self.offer_temps(found.temp, first_row, columns, tally);
        }
    }

    #[inline(never)]
    fn offer_shares(&self, share: i64, first_row: u64, columns: &[&Values; SCREEN_COLUMNS], tally: &mut ScreenTally) {
        for i in (0..BLOCK).filter(|&i| self.greatest[i] == share) {
            let value = f64::from_bits(share.cast_unsigned());
            tally.greatest_share.offer(&self.extreme(i, value, columns[TIME], first_row), 1.0);
        }
    }

    #[inline(never)]
    fn offer_margins(
        &self,
        (plan, margin): (&ScreenPlan, i64),
        first_row: u64,
        columns: &[&Values; SCREEN_COLUMNS],
        tally: &mut ScreenTally,
    ) {
        let value = f64::from_bits(margin.cast_unsigned());
        for i in (0..BLOCK).filter(|&i| self.least_margin[i] <= value) {
            let element = self.weakest_of(plan, i, (columns[INPUT], columns[PRESSURE]));
            let here = self.extreme(i, self.least_margin[i], columns[TIME], first_row);
            let extreme = ScreenExtreme { element, ..here };
            tally.least_margin.offer(&extreme, -1.0);
        }
    }

    #[inline(never)]
    fn offer_temps(&self, hottest: i64, first_row: u64, columns: &[&Values; SCREEN_COLUMNS], tally: &mut ScreenTally) {
        let temp = columns[TEMP];
        for i in (0..BLOCK).filter(|&i| rising(temp[i + 1]) == hottest) {
            if self.flags[i] & (NOT_USED | bit(TEMP)) == 0 {
                tally.hottest.offer(&self.extreme(i, temp[i + 1], columns[TIME], first_row), 1.0);
            }
        }
    }

    fn extreme(&self, i: usize, value: f64, time: &Values, first_row: u64) -> ScreenExtreme {
        ScreenExtreme { value, time_s: time[i + 1], row: first_row + i as u64, gear: self.place[i] as i8, element: -1 }
    }
}
