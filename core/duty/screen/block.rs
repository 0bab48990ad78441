//! Many rows at once: the rules of [`ScreenPlan::row`] over blocks of rows, one rule after the other, for the vector unit.
//!
//! Every value is formed by the same functions as in [`ScreenPlan::row`], so that the bits are the same.
#![expect(
    clippy::indexing_slicing,
    clippy::needless_range_loop,
    reason = "every index is below the length of every array: BLOCK, or BLOCK + 1 after adding 1"
)]

use super::columns::{
    BUS, COMMANDED, ENGINE, FLAG_BEYOND_SCALE, FLAG_GAP, FLAG_HOT, FLAG_LITTLE_TORQUE, FLAG_LOW_MARGIN, FLAG_MISMATCH,
    FLAG_NO_GEAR, FLAG_NO_TORQUE, FLAG_OVER_INPUT, FLAG_OVER_OUTPUT, FLAG_STALE, FLAG_STANDING, FLAG_UNKNOWN,
    FLAG_UNLOCKED, GEAR_NONE, GEAR_STANDING, GEAR_UNKNOWN, GPS, INPUT, LEAST_BUS_COLUMNS, NO_DURATION, NOT_USED,
    OUTPUT, PRESSURE, SCREEN_COLUMNS, SCREEN_FLAGS, SCREEN_RANGES, SPEED, ScreenRow, TEMP, TIME, TORQUE, is_good,
};
use super::power::{ticks, ticks_and_rest};
use super::row::{
    ScreenAnswer, bit, converter_loss_kw, durations, faster_aging, gear_in_effect, gear_loss_kw, given_bus_columns,
    holds_nm, output_torque_nm, power_kw, turns, unlocked_torques_nm,
};
use super::tally::{
    AGED, AGING, CONVERTER_LOSS, DISTANCE, ENERGY, FLAG_ROWS, FLAG_SECONDS, GAP, GAP_SECONDS, GEAR_LOSS, GEAR_SECONDS,
    GPS_DISTANCE, INPUT_ENERGY, KNOWN, RATIO, RATIOS, ROWS, SECONDS, SPEED_DISTANCE, SQUARE, ScreenExtreme,
    ScreenTally, TURNS, TURNS_REST, distance_km, drive_energy_kj, energy_kj,
};
use super::unit::{PlannedGear, ScreenPlan};

/// Rows of a block: what a core keeps close at hand.
const BLOCK: usize = 128;
/// Places of rows: not to be told, standing, none, then the gears; a power of two.
const PLACES: usize = 32;

/// What to compute besides time, gears and their seconds: masks to be put together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ask;

impl Ask {
    /// Input and output torque, shares of the ratings.
    /// cbindgen:ignore
    pub const TORQUE: u32 = 1;
    /// Margins; needs torque.
    /// cbindgen:ignore
    pub const MARGIN: u32 = 2;
    /// Damage; needs torque.
    /// cbindgen:ignore
    pub const DAMAGE: u32 = 4;
    /// Losses and energies; needs torque.
    /// cbindgen:ignore
    pub const HEAT: u32 = 8;
    /// Hot fluid and its aging.
    /// cbindgen:ignore
    pub const LIFE: u32 = 16;
    /// Speed by satellite, distances.
    /// cbindgen:ignore
    pub const GPS: u32 = 32;
    /// The answers of each row, not only the sums.
    /// cbindgen:ignore
    pub const ROWS: u32 = 64;
    /// The sums.
    /// cbindgen:ignore
    pub const SUMS: u32 = 128;
    /// Everything that is summed.
    /// cbindgen:ignore
    pub const ALL: u32 = Self::TORQUE | Self::MARGIN | Self::DAMAGE | Self::HEAT | Self::LIFE | Self::GPS | Self::SUMS;

    /// The question with what it needs: margins, damage and heat need the torque.
    pub(crate) const fn complete(asked: u32) -> u32 {
        if asked & (Self::MARGIN | Self::DAMAGE | Self::HEAT) != 0 { asked | Self::TORQUE } else { asked }
    }
}

/// An answer of the rows of a block that [`ScreenBlock::lane`] hands out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScreenLane {
    /// `duration_s`.
    Duration,
    /// `input_torque_nm`.
    InputTorque,
    /// `output_torque_nm`, with [`Ask::ROWS`].
    OutputTorque,
    /// `least_margin`, with [`Ask::ROWS`].
    LeastMargin,
    /// `turns_at_rated`, with [`Ask::ROWS`].
    Turns,
    /// `converter_loss_kw`.
    ConverterLoss,
    /// `gear_loss_kw`, with [`Ask::ROWS`].
    GearLoss,
    /// `aged_s`.
    Aged,
    /// `gps_over_speed`, with [`Ask::ROWS`].
    GpsOverSpeed,
    /// `gps_over_output`, with [`Ask::ROWS`].
    GpsOverOutput,
}

type Lane = [f64; BLOCK];

/// Rows of one truck and what they say, column by column.
#[derive(Clone, Debug)]
pub struct ScreenBlock {
    /// Values; the row before the block stands first.
    columns: [[f64; BLOCK + 1]; SCREEN_COLUMNS],
    flags: [u64; BLOCK],
    place: [i64; BLOCK],
    duration_s: Lane,
    duration: [i64; BLOCK],
    input_nm: Lane,
    input_kw: Lane,
    converter_loss_kw: Lane,
    aged_s: Lane,
    gps_over_speed: Lane,
    gps_over_output: Lane,
    output_nm: Lane,
    gear_loss_kw: Lane,
    least_margin: Lane,
    weakest: [i64; BLOCK],
    turns: Lane,
    of_place: [[u8; BLOCK]; PLACES],
    in_gear: InGear,
}

/// The rows of a block that are in one gear, side by side.
#[derive(Clone, Debug)]
struct InGear {
    rows: [u8; BLOCK],
    input_nm: Lane,
    input_rpm: Lane,
    pressure_kpa: Lane,
    duration_s: Lane,
    flags: [u64; BLOCK],
    least_nm: Lane,
    weakest: [i64; BLOCK],
    share: Lane,
    greatest: Lane,
    margin: Lane,
    output_nm: Lane,
    loss_kw: Lane,
    turns: Lane,
}

/// A row of a block by the number in a list of rows.
#[inline(always)]
fn at(row: u8) -> usize {
    usize::from(row) & (BLOCK - 1)
}

impl Default for ScreenBlock {
    fn default() -> Self {
        Self::new()
    }
}

impl ScreenBlock {
    /// Most rows of a block.
    /// cbindgen:ignore
    pub const ROWS: usize = BLOCK;

    /// A block without rows.
    #[must_use]
    pub const fn new() -> Self {
        const NONE: Lane = [f64::NAN; BLOCK];
        Self {
            columns: [[f64::NAN; BLOCK + 1]; SCREEN_COLUMNS],
            flags: [0; BLOCK],
            place: [0; BLOCK],
            duration_s: NONE,
            duration: [0; BLOCK],
            input_nm: NONE,
            input_kw: NONE,
            converter_loss_kw: NONE,
            aged_s: NONE,
            gps_over_speed: NONE,
            gps_over_output: NONE,
            output_nm: NONE,
            gear_loss_kw: NONE,
            least_margin: NONE,
            weakest: [-1; BLOCK],
            turns: [0.0; BLOCK],
            of_place: [[0; BLOCK]; PLACES],
            in_gear: InGear {
                rows: [0; BLOCK],
                input_nm: NONE,
                input_rpm: NONE,
                pressure_kpa: NONE,
                duration_s: NONE,
                flags: [0; BLOCK],
                least_nm: NONE,
                weakest: [-1; BLOCK],
                share: NONE,
                greatest: NONE,
                margin: NONE,
                output_nm: NONE,
                loss_kw: NONE,
                turns: NONE,
            },
        }
    }

    /// Sets the row before the block.
    pub fn set_previous(&mut self, row: &ScreenRow) {
        for (column, value) in self.columns.iter_mut().zip(row.values()) {
            column[0] = value;
        }
    }

    /// The row before the block.
    #[must_use]
    pub fn previous(&self) -> ScreenRow {
        ScreenRow::of_values(self.columns.each_ref().map(|column| column[0]))
    }

    /// The values of a column, to write to; none where there is no such column. One that the data has not stays NaN.
    #[inline]
    pub fn column_mut(&mut self, column: usize) -> &mut [f64] {
        self.columns.get_mut(column).map_or(&mut [], |values| &mut values[1..])
    }

    /// A row of the block.
    #[must_use]
    pub fn sample(&self, row: usize) -> ScreenRow {
        ScreenRow::of_values(core::array::from_fn(|column| self.columns[column][row.min(BLOCK - 1) + 1]))
    }

    /// Makes the last of `count` rows the one before the next block.
    pub fn carry(&mut self, count: usize) {
        for column in &mut self.columns {
            column[0] = column[count.min(BLOCK)];
        }
    }

    /// Flags of the rows; their names are `SCREEN_FLAG_NAMES`.
    #[must_use]
    pub fn flags(&self) -> &[u64] {
        &self.flags
    }

    /// Place of the gear in effect of each row; -1 none, -2 standing, -3 not to be told or not used.
    #[must_use]
    pub fn gears(&self) -> &[i64] {
        &self.place
    }

    /// Element with the least margin of each row, -1 where none was formed.
    #[must_use]
    pub fn weakest(&self) -> &[i64] {
        &self.weakest
    }

    /// One answer of all rows, where it was asked for.
    #[must_use]
    pub fn lane(&self, lane: ScreenLane) -> &[f64] {
        match lane {
            ScreenLane::Duration => &self.duration_s,
            ScreenLane::InputTorque => &self.input_nm,
            ScreenLane::OutputTorque => &self.output_nm,
            ScreenLane::LeastMargin => &self.least_margin,
            ScreenLane::Turns => &self.turns,
            ScreenLane::ConverterLoss => &self.converter_loss_kw,
            ScreenLane::GearLoss => &self.gear_loss_kw,
            ScreenLane::Aged => &self.aged_s,
            ScreenLane::GpsOverSpeed => &self.gps_over_speed,
            ScreenLane::GpsOverOutput => &self.gps_over_output,
        }
    }

    /// What row `row` said, as far as it was asked for; the answers of the rows, [`Ask::ROWS`], among it.
    #[must_use]
    pub fn answer(&self, plan: &ScreenPlan, asked: u32, row: usize) -> ScreenAnswer {
        let row = row.min(BLOCK - 1);
        let flags = self.flags[row] as u32;
        let input_nm = self.input_nm[row];
        let output_nm = self.output_nm[row];
        let input_share = crate::real::abs(input_nm) / plan.rated_input_nm;
        let output_share = crate::real::abs(output_nm) / plan.rated_output_nm;
        let dt = self.columns[TIME][row + 1] - self.columns[TIME][row];
        ScreenAnswer {
            flags,
            gear: self.place[row] as i8,
            weakest: self.weakest[row] as i8,
            duration_s: self.duration_s[row],
            gap_s: if flags & FLAG_GAP != 0 { dt } else { 0.0 },
            input_torque_nm: input_nm,
            output_torque_nm: output_nm,
            input_share,
            output_share,
            greatest_share: if output_share > input_share { output_share } else { input_share },
            least_margin: self.least_margin[row],
            turns_at_rated: self.turns[row],
            input_kw: self.input_kw[row],
            converter_loss_kw: self.converter_loss_kw[row],
            gear_loss_kw: self.gear_loss_kw[row],
            aged_s: self.aged_s[row],
            gps_over_speed: self.gps_over_speed[row],
            gps_over_output: self.gps_over_output[row],
        }
        .only(asked)
    }

    /// Passes over the first `count` rows of one truck, which follow the row before the block.
    ///
    /// * `given` — mask of the columns that the data has; `asked` — what to compute, of [`Ask`]
    /// * `first_row` — number of the first row in the stream; `tally` — takes the sums
    #[inline(always)]
    pub fn screen(
        &mut self,
        plan: &ScreenPlan,
        (given, asked): (u32, u32),
        (count, first_row): (usize, u64),
        tally: &mut ScreenTally,
    ) {
        let count = count.min(BLOCK);
        let asked = Ask::complete(asked);
        // Whole vectors only: the rows past the last are no rows, as they have no time, and their flags are cleared.
        let n = ((count + 7) & !7).min(BLOCK);
        for column in &mut self.columns {
            for value in &mut column[count + 1..=n] {
                *value = f64::NAN;
            }
        }
        let pass = Pass { plan, given, asked, n, first_row };
        self.times(&pass);
        self.bad_values(&pass, count, tally);
        self.stale(&pass);
        for flags in &mut self.flags[count..n] {
            *flags = 1;
        }
        self.effective_gears(&pass);
        if asked & Ask::TORQUE != 0 {
            self.torques(&pass, tally);
        }
        if asked & Ask::LIFE != 0 {
            self.life(&pass, tally);
        }
        if asked & Ask::GPS != 0 {
            self.satellite(&pass, tally);
        }
        self.every_gear(&pass, tally);
        for flags in &mut self.flags[count..n] {
            *flags = 0;
        }
        if asked & Ask::SUMS != 0 {
            tally.add(ROWS, count as i64);
            self.count_flags(&pass, tally);
        }
    }

    #[inline(always)]
    fn times(&mut self, pass: &Pass<'_>) {
        let time = &self.columns[TIME];
        let gap_s = pass.plan.limits.gap_s;
        for i in 0..pass.n {
            let (flags, duration_s, _) = durations(time[i + 1], time[i], gap_s);
            self.flags[i] = flags.into();
            self.duration_s[i] = duration_s;
            self.duration[i] = ticks(duration_s, SECONDS);
        }
    }

    /// Flags the values that cannot be used, and counts them by kind where there are any.
    #[inline(always)]
    fn bad_values(&mut self, pass: &Pass<'_>, count: usize, tally: &mut ScreenTally) {
        let mut any = self.flags[..count].iter().fold(0, |any, flags| any | flags) & 1;
        for column in 1..SCREEN_COLUMNS {
            if pass.lacks(column) {
                continue;
            }
            let (low, high) = SCREEN_RANGES[column];
            let values = &self.columns[column];
            let good = values[1..=pass.n].iter().fold(true, |good, &value| good & is_good(column, value, low, high));
            if good {
                continue;
            }
            let flag = u64::from(bit(column));
            for i in 0..pass.n {
                self.flags[i] |= if is_good(column, values[i + 1], low, high) { 0 } else { flag };
            }
            any |= flag;
        }
        if any != 0 && pass.asked & Ask::SUMS != 0 {
            self.count_bad(pass, count, tally);
        }
    }

    #[inline(never)]
    fn count_bad(&self, pass: &Pass<'_>, count: usize, tally: &mut ScreenTally) {
        for (column, values) in self.columns.iter().enumerate() {
            for i in 0..count {
                if self.flags[i] & u64::from(pass.given & bit(column)) != 0 {
                    tally.add_bad(column, values[i + 1]);
                }
            }
        }
    }

    #[inline(always)]
    fn stale(&mut self, pass: &Pass<'_>) {
        if given_bus_columns(pass.given) < LEAST_BUS_COLUMNS || pass.lacks(OUTPUT) {
            return;
        }
        let mut changed = [0_u64; BLOCK];
        let mut repeated = true;
        for column in BUS {
            if pass.lacks(column) || !repeated {
                continue;
            }
            let values = &self.columns[column];
            let mut least = u64::MAX;
            for i in 0..pass.n {
                changed[i] |= values[i + 1].to_bits() ^ values[i].to_bits();
                least = if changed[i] == 0 { 0 } else { least };
            }
            repeated = least == 0;
        }
        if !repeated {
            return;
        }
        let standing_rpm = pass.plan.limits.standing_rpm;
        let output = &self.columns[OUTPUT];
        let unusable = u64::from(NO_DURATION | bit(OUTPUT));
        for i in 0..pass.n {
            let moves = (output[i + 1] >= standing_rpm) & (self.flags[i] & unusable == 0);
            self.flags[i] |= if moves & (changed[i] == 0) { u64::from(FLAG_STALE) } else { 0 };
        }
    }

    /// Standing, gear in effect, or none.
    #[inline(always)]
    fn effective_gears(&mut self, pass: &Pass<'_>) {
        const NOT: u64 = NOT_USED as u64;
        let plan = pass.plan;
        if pass.lacks(OUTPUT) {
            for i in 0..pass.n {
                self.place[i] = GEAR_UNKNOWN.into();
                self.flags[i] |= if self.flags[i] & NOT == 0 { FLAG_UNKNOWN.into() } else { 0 };
            }
            return;
        }
        let no_input = pass.lacks(INPUT);
        if no_input {
            self.place = [GEAR_NONE.into(); BLOCK];
        } else {
            self.bands(pass);
        }
        let output = &self.columns[OUTPUT];
        let standing_rpm = plan.limits.standing_rpm;
        let bad_output = u64::from(bit(OUTPUT));
        let bad_input = u64::from(bit(INPUT));
        for i in 0..pass.n {
            let flags = self.flags[i];
            let stands = output[i + 1] < standing_rpm;
            let lost = (flags & bad_input != 0) | no_input;
            let none = self.place[i] < 0;
            let place = if none { i64::from(GEAR_NONE) } else { self.place[i] };
            let flag = if none { FLAG_NO_GEAR.into() } else { 0 };
            let place = if lost { i64::from(GEAR_UNKNOWN) } else { place };
            let flag = if lost { FLAG_UNKNOWN.into() } else { flag };
            let place = if stands { i64::from(GEAR_STANDING) } else { place };
            let flag = if stands { FLAG_STANDING.into() } else { flag };
            let unknown = flags & bad_output != 0;
            let place = if unknown { i64::from(GEAR_UNKNOWN) } else { place };
            let flag = if unknown { FLAG_UNKNOWN.into() } else { flag };
            let used = flags & NOT == 0;
            self.place[i] = if used { place } else { GEAR_UNKNOWN.into() };
            self.flags[i] = flags | if used { flag } else { 0_u64 };
        }
    }

    /// Place of the gear whose band has the ratio of the speeds, or none: eight rows at a time, gear after gear.
    #[inline(always)]
    fn bands(&mut self, pass: &Pass<'_>) {
        const LANES: usize = 8;
        let gears = pass.plan.gears.get(..pass.plan.gear_count as usize).unwrap_or_default();
        let commanded = !pass.lacks(COMMANDED);
        let bad = u64::from(bit(COMMANDED));
        for start in (0..pass.n).step_by(LANES) {
            let start = start.min(BLOCK - LANES);
            let (mut input, mut output, mut direction) = ([0.0; LANES], [0.0; LANES], [0.0; LANES]);
            let mut place = [i64::from(GEAR_NONE); LANES];
            for lane in 0..LANES {
                let i = start + lane;
                input[lane] = self.columns[INPUT][i + 1];
                output[lane] = self.columns[OUTPUT][i + 1];
                let number = self.columns[COMMANDED][i + 1];
                direction[lane] = if commanded & (self.flags[i] & bad == 0) { number } else { 0.0 };
            }
            for wanted in [-1.0, 1.0] {
                for (gear, at) in gears.iter().zip(0_i64..) {
                    if gear.direction * wanted < 0.0 {
                        continue;
                    }
                    for lane in 0..LANES {
                        let is = gear_in_effect(gear, input[lane], output[lane], direction[lane]);
                        place[lane] = if is { at } else { place[lane] };
                    }
                }
            }
            self.place[start..start + LANES].copy_from_slice(&place);
        }
    }

    /// Locked or not, input torque, and the power and loss that follow without a gear.
    #[inline(always)]
    fn torques(&mut self, pass: &Pass<'_>, tally: &mut ScreenTally) {
        let plan = pass.plan;
        let not_used = u64::from(NOT_USED);
        if pass.lacks(ENGINE) || pass.lacks(INPUT) || pass.lacks(TORQUE) {
            let speeds = !(pass.lacks(ENGINE) || pass.lacks(INPUT));
            let (engine, input) = (&self.columns[ENGINE], &self.columns[INPUT]);
            for i in 0..pass.n {
                let flags = self.flags[i];
                let good = speeds & (flags & u64::from(bit(ENGINE) | bit(INPUT)) == 0);
                let slips = crate::real::abs(engine[i + 1] - input[i + 1]) > plan.limits.locked_slip_rpm;
                let more = FLAG_NO_TORQUE | if good & slips { FLAG_UNLOCKED } else { 0 };
                self.flags[i] |= if flags & not_used == 0 { more.into() } else { 0 };
                self.input_nm[i] = f64::NAN;
                self.input_kw[i] = f64::NAN;
                self.converter_loss_kw[i] = f64::NAN;
            }
            return;
        }
        let (engine, input, torque) = (&self.columns[ENGINE], &self.columns[INPUT], &self.columns[TORQUE]);
        let (speeds, needed) = (u64::from(bit(ENGINE) | bit(INPUT)), u64::from(bit(ENGINE) | bit(INPUT) | bit(TORQUE)));
        let mut unlocked = [0_u8; BLOCK];
        let mut unlocked_count = 0_usize;
        for i in 0..pass.n {
            let flags = self.flags[i];
            let slips = (engine[i + 1] - input[i + 1]).abs() > plan.limits.locked_slip_rpm;
            let open = slips & (flags & (not_used | speeds) == 0);
            self.input_nm[i] = if flags & (not_used | needed) == 0 { torque[i + 1] } else { f64::NAN };
            self.flags[i] = flags | if open { u64::from(FLAG_UNLOCKED) } else { 0 };
        }
        for i in 0..pass.n {
            unlocked[unlocked_count & (BLOCK - 1)] = i as u8;
            unlocked_count += usize::from(self.flags[i] & u64::from(FLAG_UNLOCKED) != 0);
        }
        for rows in unlocked[..unlocked_count.min(BLOCK)].chunks(8) {
            let (mut speeds, mut torques) = ([(0.0, 0.0); 8], [f64::NAN; 8]);
            for ((speeds, torque_nm), &row) in speeds.iter_mut().zip(&mut torques).zip(rows) {
                *speeds = (engine[at(row) + 1], input[at(row) + 1]);
                *torque_nm = self.input_nm[at(row)];
            }
            for (&torque_nm, &row) in unlocked_torques_nm(plan, &speeds, &torques).iter().zip(rows) {
                self.input_nm[at(row)] = torque_nm;
            }
        }
        for i in 0..pass.n {
            let torque_nm = self.input_nm[i];
            let size_nm = torque_nm.abs();
            let more = if size_nm < plan.limits.torque_floor_nm { u64::from(FLAG_LITTLE_TORQUE) } else { 0 };
            let more = more | if size_nm > plan.rated_input_nm { u64::from(FLAG_OVER_INPUT) } else { 0 };
            let far = size_nm / plan.rated_input_nm > plan.greatest_use;
            let more = more | if far { u64::from(FLAG_BEYOND_SCALE) } else { 0 };
            let more = if torque_nm.is_nan() { u64::from(FLAG_NO_TORQUE) } else { more };
            let flags = self.flags[i];
            self.flags[i] = flags | if flags & not_used == 0 { more } else { 0 };
            self.input_kw[i] = power_kw(torque_nm, input[i + 1]);
        }
        if pass.asked & Ask::HEAT != 0 {
            let (mut driven, mut lost) = (0_i64, 0_i64);
            for i in 0..pass.n {
                let loss_kw = converter_loss_kw(torque[i + 1], engine[i + 1], self.input_kw[i]);
                let loss_kw = if self.input_kw[i].is_nan() { f64::NAN } else { loss_kw };
                self.converter_loss_kw[i] = loss_kw;
                let duration_s = self.duration_s[i];
                driven = driven.wrapping_add(ticks(drive_energy_kj(self.input_kw[i], duration_s), ENERGY));
                lost = lost.wrapping_add(ticks(energy_kj(loss_kw, duration_s), ENERGY));
            }
            if pass.asked & Ask::SUMS != 0 {
                tally.add(INPUT_ENERGY, driven);
                tally.add(CONVERTER_LOSS, lost);
            }
        }
    }

    #[inline(always)]
    fn life(&mut self, pass: &Pass<'_>, tally: &mut ScreenTally) {
        let plan = pass.plan;
        if pass.lacks(TEMP) {
            self.aged_s = [0.0; BLOCK];
            return;
        }
        let temp = &self.columns[TEMP];
        let unusable = u64::from(NOT_USED | bit(TEMP));
        let mut hottest_c = f64::NEG_INFINITY;
        let mut aged = 0_i64;
        for i in 0..pass.n {
            let good = self.flags[i] & unusable == 0;
            let hot = good & (temp[i + 1] > plan.limits.hot_c);
            self.flags[i] |= if hot { u64::from(FLAG_HOT) } else { 0 };
            let temp_c = if good { temp[i + 1] } else { f64::NEG_INFINITY };
            hottest_c = if temp_c > hottest_c { temp_c } else { hottest_c };
        }
        if plan.fluid.life_h > 0.0 {
            for i in 0..pass.n {
                let good = self.flags[i] & unusable == 0;
                let faster = faster_aging(plan, temp[i + 1]);
                let aged_s = if good { self.duration_s[i] * faster } else { 0.0 };
                self.aged_s[i] = aged_s;
                aged = aged.wrapping_add(ticks(aged_s, AGING));
            }
        } else {
            self.aged_s = [0.0; BLOCK];
        }
        if pass.asked & Ask::SUMS == 0 {
            return;
        }
        tally.add(AGED, aged);
        if hottest_c >= tally.hottest.value || tally.hottest.value.is_nan() {
            for i in 0..pass.n {
                if self.flags[i] & unusable == 0 && self.columns[TEMP][i + 1] >= hottest_c {
                    let extreme = self.extreme(pass, i, self.columns[TEMP][i + 1], -1);
                    tally.hottest.offer(&extreme, 1.0);
                }
            }
        }
    }

    fn extreme(&self, pass: &Pass<'_>, i: usize, value: f64, element: i8) -> ScreenExtreme {
        ScreenExtreme {
            value,
            time_s: self.columns[TIME][i + 1],
            row: pass.first_row + i as u64,
            gear: self.place[i] as i8,
            element,
        }
    }

    #[inline(always)]
    fn satellite(&mut self, pass: &Pass<'_>, tally: &mut ScreenTally) {
        let plan = pass.plan;
        let floor_km_h = plan.limits.gps_floor_km_h;
        let per_km_h = plan.output_rpm_per_km_h;
        let (gps, speed, output) = (&self.columns[GPS], &self.columns[SPEED], &self.columns[OUTPUT]);
        let keep = pass.asked & Ask::ROWS != 0;
        let used = u64::from(NOT_USED);
        if !pass.lacks(SPEED) {
            let mut distance = 0_i64;
            for i in 0..pass.n {
                let good = self.flags[i] & (used | u64::from(bit(SPEED))) == 0;
                let km = if good { distance_km(speed[i + 1], self.duration_s[i]) } else { 0.0 };
                distance = distance.wrapping_add(ticks(km, DISTANCE));
            }
            if pass.asked & Ask::SUMS != 0 {
                tally.add(SPEED_DISTANCE, distance);
            }
        }
        if pass.lacks(GPS) {
            self.gps_over_speed = [f64::NAN; BLOCK];
            self.gps_over_output = [f64::NAN; BLOCK];
            return;
        }
        let mut distance = 0_i64;
        for i in 0..pass.n {
            let good = self.flags[i] & (used | u64::from(bit(GPS))) == 0;
            let km = if good { distance_km(gps[i + 1], self.duration_s[i]) } else { 0.0 };
            distance = distance.wrapping_add(ticks(km, DISTANCE));
        }
        if pass.asked & Ask::SUMS != 0 {
            tally.add(GPS_DISTANCE, distance);
        }
        for (pair, column, other, factor, floor) in
            [(0, SPEED, speed, 1.0, floor_km_h), (1, OUTPUT, output, per_km_h, floor_km_h * per_km_h)]
        {
            let formed = !pass.lacks(column) && factor > 0.0;
            let unusable = used | u64::from(bit(GPS) | bit(column));
            let (mut rows, mut sum, mut square) = (0_i64, 0_i64, 0_i64);
            let to = if pair == 0 { &mut self.gps_over_speed } else { &mut self.gps_over_output };
            if !formed {
                *to = [f64::NAN; BLOCK];
                continue;
            }
            for i in 0..pass.n {
                let good = (self.flags[i] & unusable == 0) & (other[i + 1] >= floor);
                let ratio = gps[i + 1] * factor / other[i + 1];
                let counted = if good { ratio } else { 0.0 };
                rows += i64::from(good);
                sum = sum.wrapping_add(ticks(counted, RATIO));
                square = square.wrapping_add(ticks(counted * counted, SQUARE));
                if keep {
                    to[i] = if good { ratio } else { f64::NAN };
                }
            }
            if pass.asked & Ask::SUMS != 0 {
                tally.add(RATIOS + 3 * pair, rows);
                tally.add(RATIOS + 3 * pair + 1, sum);
                tally.add(RATIOS + 3 * pair + 2, square);
            }
        }
    }

    /// Sorts the rows by their place, and passes over the rows of each gear.
    #[inline(always)]
    fn every_gear(&mut self, pass: &Pass<'_>, tally: &mut ScreenTally) {
        let mut counts = [0_usize; PLACES];
        let mut i = 0;
        while i < pass.n {
            // Rows of one place mostly come one after the other.
            let place = (self.place[i] + 3) as usize & (PLACES - 1);
            let (rows, mut count) = (&mut self.of_place[place], counts[place]);
            while i < pass.n && (self.place[i] + 3) as usize & (PLACES - 1) == place {
                rows[count & (BLOCK - 1)] = i as u8;
                count += 1;
                i += 1;
            }
            counts[place] = count;
        }
        if pass.asked & Ask::ROWS != 0 {
            self.output_nm = [f64::NAN; BLOCK];
            self.gear_loss_kw = [f64::NAN; BLOCK];
            self.least_margin = [f64::NAN; BLOCK];
            self.weakest = [-1; BLOCK];
            self.turns = [0.0; BLOCK];
        }
        for place in 0..pass.plan.gear_count as usize {
            let count = counts[(place + 3) & (PLACES - 1)].min(BLOCK);
            if count == 0 {
                continue;
            }
            self.in_gear.rows = self.of_place[(place + 3) & (PLACES - 1)];
            if pass.asked & Ask::SUMS != 0 {
                let rows = &self.in_gear.rows[..count];
                let seconds = rows.iter().fold(0_i64, |sum, &row| sum.wrapping_add(self.duration[at(row)]));
                tally.add(GEAR_SECONDS + place, seconds);
            }
            let Some(gear) = pass.plan.gears.get(place) else { continue };
            if !pass.lacks(COMMANDED) {
                self.mismatches(gear, count);
            }
            if pass.asked & Ask::TORQUE != 0 && !(pass.lacks(ENGINE) || pass.lacks(INPUT) || pass.lacks(TORQUE)) {
                self.one_gear(pass, (gear, place), count, tally);
            }
        }
        // Out of gear, only the input torque can be the greatest.
        if pass.asked & (Ask::TORQUE | Ask::SUMS) == Ask::TORQUE | Ask::SUMS {
            for place in 0..3 {
                for j in 0..counts[place].min(BLOCK) {
                    let i = at(self.of_place[place][j]);
                    let share = self.input_nm[i].abs() / pass.plan.rated_input_nm;
                    let sound = self.flags[i] & u64::from(FLAG_BEYOND_SCALE | NOT_USED) == 0;
                    if sound && (share >= tally.greatest_share.value || tally.greatest_share.value.is_nan()) {
                        tally.greatest_share.offer(&self.extreme(pass, i, share, -1), 1.0);
                    }
                }
            }
        }
    }

    #[inline(always)]
    fn mismatches(&mut self, gear: &PlannedGear, count: usize) {
        let commanded = &self.columns[COMMANDED];
        for &row in &self.in_gear.rows[..count] {
            let i = at(row);
            let number = commanded[i + 1];
            let differs = (number < gear.number) | (number > gear.number);
            let good = self.flags[i] & u64::from(bit(COMMANDED)) == 0;
            self.flags[i] |= if differs & good { u64::from(FLAG_MISMATCH) } else { 0 };
        }
    }

    /// Output torque, shares, margins, damage and loss of the rows in one gear.
    #[inline(always)]
    fn one_gear(
        &mut self,
        pass: &Pass<'_>,
        (gear, place): (&PlannedGear, usize),
        count: usize,
        tally: &mut ScreenTally,
    ) {
        let plan = pass.plan;
        let n = ((count + 7) & !7).min(BLOCK);
        let side = &mut self.in_gear;
        for j in 0..count {
            let i = at(side.rows[j]);
            side.input_nm[j] = self.input_nm[i];
            side.input_rpm[j] = self.columns[INPUT][i + 1];
            side.pressure_kpa[j] = self.columns[PRESSURE][i + 1];
            side.duration_s[j] = self.duration_s[i];
            side.flags[j] = self.flags[i];
        }
        for j in count..n {
            side.input_nm[j] = f64::NAN;
            side.input_rpm[j] = 0.0;
            side.pressure_kpa[j] = f64::NAN;
            side.duration_s[j] = 0.0;
            side.flags[j] = 0;
        }
        let mut greatest = f64::NEG_INFINITY;
        for j in 0..n {
            let input_nm = side.input_nm[j];
            let output_nm = output_torque_nm(gear, input_nm);
            side.output_nm[j] = output_nm;
            side.share[j] = input_nm.abs() / plan.rated_input_nm;
            let output_share = output_nm.abs() / plan.rated_output_nm;
            let share = if output_share > side.share[j] { output_share } else { side.share[j] };
            let over = output_nm.abs() > plan.rated_output_nm;
            side.flags[j] |= if over { u64::from(FLAG_OVER_OUTPUT) } else { 0 };
            let sound = side.flags[j] & u64::from(FLAG_BEYOND_SCALE) == 0;
            side.greatest[j] = if sound { share } else { f64::NAN };
            greatest = if side.greatest[j] > greatest { share } else { greatest };
        }
        if pass.asked & Ask::HEAT != 0 {
            let mut lost = 0_i64;
            for j in 0..n {
                let input_kw = power_kw(side.input_nm[j], side.input_rpm[j]);
                let loss_kw = gear_loss_kw(gear, input_kw);
                side.loss_kw[j] = loss_kw;
                lost = lost.wrapping_add(ticks(energy_kj(loss_kw, side.duration_s[j]), ENERGY));
            }
            if pass.asked & Ask::SUMS != 0 {
                tally.add(GEAR_LOSS, lost);
            }
        }
        let mut least_margin = f64::INFINITY;
        let margins = pass.asked & Ask::MARGIN != 0 && gear.holding_count > 0 && !pass.lacks(PRESSURE);
        if margins {
            side.least_nm[..n].fill(f64::INFINITY);
            side.weakest[..n].fill(-1);
            for holding in gear.holding.iter().take(gear.holding_count as usize) {
                let element = i64::from(holding.element);
                for j in 0..n {
                    let held_nm = holds_nm(holding, side.pressure_kpa[j], side.input_rpm[j]);
                    let weaker = held_nm < side.least_nm[j];
                    side.least_nm[j] = if weaker { held_nm } else { side.least_nm[j] };
                    side.weakest[j] = if weaker { element } else { side.weakest[j] };
                }
            }
            let unusable = u64::from(bit(PRESSURE) | FLAG_LITTLE_TORQUE | FLAG_NO_TORQUE);
            for j in 0..n {
                let good = side.flags[j] & unusable == 0;
                let margin = side.least_nm[j] / side.input_nm[j].abs();
                let margin = if good { margin } else { f64::NAN };
                let low = margin < plan.limits.least_margin;
                side.flags[j] |= if low { u64::from(FLAG_LOW_MARGIN) } else { 0 };
                side.margin[j] = margin;
                side.weakest[j] = if good { side.weakest[j] } else { -1 };
                least_margin = if margin < least_margin { margin } else { least_margin };
            }
        }
        let damage = pass.asked & Ask::DAMAGE != 0 && plan.slope > 0.0;
        if damage {
            let (mut steps, mut rests) = (0_i64, 0_i64);
            let unusable = u64::from(FLAG_BEYOND_SCALE | FLAG_NO_TORQUE);
            for j in 0..n {
                let good = side.flags[j] & unusable == 0;
                let share = if good { side.share[j] } else { 0.0 };
                let turns = turns(side.duration_s[j], side.input_rpm[j]) * plan.severity(share);
                side.turns[j] = turns;
                let (step, rest) = ticks_and_rest(turns, TURNS);
                steps = steps.wrapping_add(step);
                rests = rests.wrapping_add(ticks(rest, TURNS_REST));
            }
            if pass.asked & Ask::SUMS != 0 {
                tally.add_turns(place, steps, rests);
            }
        }
        for j in 0..count {
            let i = at(side.rows[j]);
            self.flags[i] = side.flags[j];
        }
        if pass.asked & Ask::ROWS != 0 {
            for j in 0..count {
                let i = at(side.rows[j]);
                self.output_nm[i] = side.output_nm[j];
                if pass.asked & Ask::HEAT != 0 {
                    self.gear_loss_kw[i] = side.loss_kw[j];
                }
                if margins {
                    self.least_margin[i] = side.margin[j];
                    self.weakest[i] = side.weakest[j];
                }
                if damage {
                    self.turns[i] = side.turns[j];
                }
            }
        }
        if pass.asked & Ask::SUMS == 0 {
            return;
        }
        if greatest >= tally.greatest_share.value || tally.greatest_share.value.is_nan() {
            for j in 0..count {
                if self.in_gear.greatest[j] >= greatest {
                    let extreme = self.extreme(pass, at(self.in_gear.rows[j]), self.in_gear.greatest[j], -1);
                    tally.greatest_share.offer(&extreme, 1.0);
                }
            }
        }
        if margins && (least_margin <= tally.least_margin.value || tally.least_margin.value.is_nan()) {
            for j in 0..count {
                if self.in_gear.margin[j] <= least_margin {
                    let element = self.in_gear.weakest[j] as i8;
                    let extreme = self.extreme(pass, at(self.in_gear.rows[j]), self.in_gear.margin[j], element);
                    tally.least_margin.offer(&extreme, -1.0);
                }
            }
        }
    }

    /// Rows and seconds of every flag, of the rows with a duration, and of the gaps.
    #[inline(always)]
    fn count_flags(&mut self, pass: &Pass<'_>, tally: &mut ScreenTally) {
        let (mut any, mut known) = (0_u64, 0_i64);
        for i in 0..pass.n {
            any |= self.flags[i];
            known = known.wrapping_add(self.duration[i]);
        }
        tally.add(KNOWN, known);
        for flag in 0..SCREEN_FLAGS {
            let mask = 1_u64 << flag;
            if any & mask == 0 {
                continue;
            }
            let (mut rows, mut seconds) = (0_i64, 0_i64);
            for i in 0..pass.n {
                let has = self.flags[i] & mask != 0;
                rows += i64::from(has);
                seconds = seconds.wrapping_add(if has { self.duration[i] } else { 0 });
            }
            tally.add(FLAG_ROWS + flag, rows);
            tally.add(FLAG_SECONDS + flag, seconds);
        }
        if any & u64::from(FLAG_GAP) != 0 {
            for i in 0..pass.n {
                if self.flags[i] & u64::from(FLAG_GAP) != 0 {
                    let gap_s = self.columns[TIME][i + 1] - self.columns[TIME][i];
                    tally.add(GAP, ticks(gap_s, GAP_SECONDS));
                }
            }
        }
    }
}

/// What a pass over a block is given.
struct Pass<'p> {
    plan: &'p ScreenPlan,
    given: u32,
    asked: u32,
    n: usize,
    first_row: u64,
}

impl Pass<'_> {
    #[inline(always)]
    fn lacks(&self, column: usize) -> bool {
        self.given & bit(column) == 0
    }
}
