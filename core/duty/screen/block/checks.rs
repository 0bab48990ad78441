//! Time, values that cannot be used, stale rows.

use super::{Ask, BLOCK, COLUMNS, Lane, Lanes, Pass, Values};
use crate::duty::screen::columns::{
    BUS, ENGINE, FLAG_STALE, GPS, INPUT, LEAST_BUS_COLUMNS, NO_DURATION, OUTPUT, PRESSURE, SCREEN_COLUMNS,
    SCREEN_RANGES, SPEED, TEMP, TIME, TORQUE, is_good,
};
use crate::duty::screen::power::ticks;
use crate::duty::screen::row::{bit, durations, given_bus_columns, regular_duration};
use crate::duty::screen::tally::SECONDS;

/// The columns that most data has, besides the time.
const EIGHT: u32 = 0b1_1111_1110;

impl Lanes {
    /// Durations, and the flags of times and values that cannot be used and of stale rows; ratios of speeds. Gives the flags
    /// that occur.
    #[inline(always)]
    pub(super) fn check(&mut self, pass: &Pass<'_>, columns: &[&Values; SCREEN_COLUMNS]) -> u32 {
        let (absent, keep) = (COLUMNS & !pass.given, pass.asks(Ask::ROWS));
        let mut any = self.times(columns[TIME], pass.plan.limits.gap_s, (absent, keep));
        let [_, engine, input, output, torque, pressure, temp, speed, gps, _] = *columns;
        let mut others = pass.given & !bit(TIME);
        if others & EIGHT == EIGHT {
            any |= self.eight_out_of_range((engine, input), (output, torque), (pressure, temp), (speed, gps));
            others &= !EIGHT;
        } else {
            if !pass.lacks(OUTPUT) {
                divide(&mut self.ratio, input, output);
            }
            if pass.asks(Ask::GPS) {
                divide(&mut self.gps_over_speed, gps, speed);
            }
        }
        for column in (0..SCREEN_COLUMNS).filter(|&column| others & bit(column) != 0) {
            any |= self.out_of_range(column, columns[column]);
        }
        if given_bus_columns(pass.given) >= LEAST_BUS_COLUMNS && !pass.lacks(OUTPUT) && self.repeats(pass, columns) {
            any |= self.stale(columns[OUTPUT], pass.plan.limits.standing_rpm);
        }
        any
    }

    /// Durations; where a row has no regular one, why. `absent` are the columns that the data has not; `keep`: gaps are read
    /// even where there are none.
    #[inline(always)]
    fn times(&mut self, time: &Values, gap_s: f64, (absent, keep): (u32, bool)) -> u32 {
        let mut all = true;
        for i in 0..BLOCK {
            let (regular, duration_s) = regular_duration(time[i + 1], time[i], gap_s);
            all &= regular;
            self.duration_s[i] = duration_s;
            self.duration[i] = ticks(duration_s, SECONDS);
        }
        self.flags = [absent; BLOCK];
        if !all {
            return self.irregular_times(time, gap_s);
        }
        if keep {
            self.gap_s = [0.0; BLOCK];
        }
        0
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

    /// Flags the values that cannot be used of the columns that most data has: all at once, as they come from afar. Meanwhile
    /// the divider is free for the ratios that later rules use.
    #[inline(always)]
    fn eight_out_of_range(
        &mut self,
        (engine, input): (&Values, &Values),
        (output, torque): (&Values, &Values),
        (pressure, temp): (&Values, &Values),
        (speed, gps): (&Values, &Values),
    ) -> u32 {
        let good = |column: usize, value: f64| {
            let (low, high) = SCREEN_RANGES[column];
            if is_good(column, value, low, high) { bit(column) } else { 0 }
        };
        let mut any = 0;
        for i in 0..BLOCK {
            let found = good(ENGINE, engine[i + 1]) | good(INPUT, input[i + 1]) | good(OUTPUT, output[i + 1]);
            let found = found | good(TORQUE, torque[i + 1]) | good(PRESSURE, pressure[i + 1]);
            let found = found | good(TEMP, temp[i + 1]) | good(SPEED, speed[i + 1]) | good(GPS, gps[i + 1]);
            let flags = found ^ EIGHT;
            any |= flags;
            self.flags[i] |= flags;
            self.ratio[i] = input[i + 1] / output[i + 1];
            self.gps_over_speed[i] = gps[i + 1] / speed[i + 1];
        }
        any
    }

    /// Flags the values of a column that cannot be used.
    #[inline(always)]
    fn out_of_range(&mut self, column: usize, values: &Values) -> u32 {
        let (low, high) = SCREEN_RANGES[column];
        let mut all = true;
        for i in 0..BLOCK {
            all &= is_good(column, values[i + 1], low, high);
        }
        if all {
            return 0;
        }
        for i in 0..BLOCK {
            self.flags[i] |= if is_good(column, values[i + 1], low, high) { 0 } else { bit(column) };
        }
        bit(column)
    }

    /// Whether in some row every bus value repeats the row before; then `changed` has, for each row, what has changed.
    #[inline(always)]
    fn repeats(&mut self, pass: &Pass<'_>, columns: &[&Values; SCREEN_COLUMNS]) -> bool {
        let bus = || BUS.into_iter().filter(|&column| !pass.lacks(column)).map(|column| columns[column]);
        if !bus().all(|values| self.repeats_alone(values)) {
            return false;
        }
        self.changed = [0; BLOCK];
        for values in bus() {
            for i in 0..BLOCK {
                self.changed[i] |= values[i + 1].to_bits() ^ values[i].to_bits();
            }
        }
        true
    }

    /// Whether in some row a value repeats the row before.
    #[inline(always)]
    fn repeats_alone(&self, values: &Values) -> bool {
        // Counted, as the compiler makes branches of a search.
        let mut rows = 0_u64;
        for i in 0..BLOCK {
            rows += u64::from(values[i + 1].to_bits() == values[i].to_bits());
        }
        rows > 0
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

#[inline(always)]
fn divide(ratio: &mut Lane, over: &Values, under: &Values) {
    for i in 0..BLOCK {
        ratio[i] = over[i + 1] / under[i + 1];
    }
}
