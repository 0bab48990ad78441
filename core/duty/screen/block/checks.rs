//! Time, values that cannot be used, stale rows.

use super::{BLOCK, COLUMNS, Lanes, Pass, Values};
use crate::duty::screen::columns::{
    BUS, ENGINE, FLAG_STALE, LEAST_BUS_COLUMNS, NO_DURATION, OUTPUT, SCREEN_COLUMNS, SCREEN_RANGES, SPEED, TORQUE,
    is_good,
};
use crate::duty::screen::power::ticks;
use crate::duty::screen::row::{bit, durations, given_bus_columns, regular_duration};
use crate::duty::screen::tally::SECONDS;

impl Lanes {
    /// Durations, and the flags of times and values that cannot be used and of stale rows. Gives the flags that occur.
    #[inline(always)]
    pub(super) fn check(&mut self, pass: &Pass<'_>, columns: &[&Values; SCREEN_COLUMNS]) -> u32 {
        let [time, engine, input, output, torque, pressure, temp, speed, gps, commanded] = *columns;
        let mut any = self.times(time, pass.plan.limits.gap_s, COLUMNS & !pass.given);
        let has_one_of = |first: usize| pass.given & (0b111 << first) != 0;
        if has_one_of(ENGINE) {
            any |= self.out_of_range::<ENGINE>(engine, input, output);
        }
        if has_one_of(TORQUE) {
            any |= self.out_of_range::<TORQUE>(torque, pressure, temp);
        }
        if has_one_of(SPEED) {
            any |= self.out_of_range::<SPEED>(speed, gps, commanded);
        }
        if given_bus_columns(pass.given) >= LEAST_BUS_COLUMNS && !pass.lacks(OUTPUT) && self.repeats(pass, columns) {
            any |= self.stale(output, pass.plan.limits.standing_rpm);
        }
        any & !(COLUMNS & !pass.given)
    }

    /// Durations; where a row has no regular one, why. `absent` are the columns that the data has not.
    #[inline(always)]
    fn times(&mut self, time: &Values, gap_s: f64, absent: u32) -> u32 {
        let mut all = true;
        for i in 0..BLOCK {
            let (regular, duration_s) = regular_duration(time[i + 1], time[i], gap_s);
            all &= regular;
            self.duration_s[i] = duration_s;
            self.duration[i] = ticks(duration_s, SECONDS);
        }
        self.flags = [absent; BLOCK];
        self.gap_s = [0.0; BLOCK];
        if all { 0 } else { self.irregular_times(time, gap_s) }
    }

    #[inline(always)]
    fn irregular_times(&mut self, time: &Values, gap_limit_s: f64) -> u32 {
        let mut any = 0;
        for i in 0..BLOCK {
            let (flags, _, gap_s) = durations(time[i + 1], time[i], gap_limit_s);
            any |= flags;
            self.flags[i] |= flags;
            self.gap_s[i] = gap_s;
        }
        any
    }

    /// Flags the values of three columns, `FIRST` and the next two, that cannot be used.
    #[inline(always)]
    fn out_of_range<const FIRST: usize>(&mut self, one: &Values, two: &Values, three: &Values) -> u32 {
        let bad = |column: usize, value: f64| {
            let (low, high) = SCREEN_RANGES[column];
            if is_good(column, value, low, high) { 0 } else { bit(column) }
        };
        let mut any = 0;
        for i in 0..BLOCK {
            let flags = bad(FIRST, one[i + 1]) | bad(FIRST + 1, two[i + 1]) | bad(FIRST + 2, three[i + 1]);
            any |= flags;
            self.flags[i] |= flags;
        }
        any
    }

    /// Whether in some row every bus value repeats the row before; then `changed` has, for each row, what has changed.
    #[inline(always)]
    fn repeats(&mut self, pass: &Pass<'_>, columns: &[&Values; SCREEN_COLUMNS]) -> bool {
        self.changed = [0; BLOCK];
        BUS.into_iter().all(|column| pass.lacks(column) || self.repeats_too(columns[column]))
    }

    #[inline(always)]
    fn repeats_too(&mut self, values: &Values) -> bool {
        let mut least = u64::MAX;
        for i in 0..BLOCK {
            let changed = self.changed[i] | (values[i + 1].to_bits() ^ values[i].to_bits());
            self.changed[i] = changed;
            least = if changed == 0 { 0 } else { least };
        }
        least == 0
    }

    #[inline(always)]
    fn stale(&mut self, output: &Values, standing_rpm: f64) -> u32 {
        let mut any = 0;
        for i in 0..BLOCK {
            let moves = (output[i + 1] >= standing_rpm) & (self.flags[i] & (NO_DURATION | bit(OUTPUT)) == 0);
            let flag = if moves & (self.changed[i] == 0) { FLAG_STALE } else { 0 };
            any |= flag;
            self.flags[i] |= flag;
        }
        any
    }
}
