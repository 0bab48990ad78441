//! Many rows at once: the rules of [`ScreenPlan::row`] over blocks of rows, rule after rule, for the vector unit.
//!
//! The values are read where they lie, a block of them at a time. What the rules find stands side by side in lanes, one place
//! for each row of the block, and every rule is one loop over the block without a branch: `checks` (time, values that cannot be
//! used, stale), `gears` (the gear in effect, and what its constants say), `torques` (torque, margins, damage, heat), `others`
//! (aging, satellite), `counts` (flags, extremes, bad values). A block of regular times of which nothing else is asked ends
//! after the checks.
//!
//! What lets the compiler use the vector unit: constants are copied out before a loop, so that it does not fetch them for each
//! row; columns come as arguments of their own, so that it knows that no lane overlaps them; every loop goes over as
//! many rows, so that none are left over; the greatest of numbers is that of their bits, whose order no NaN upsets; the rows of a
//! group that are in other gears are left as they are.
//!
//! Every value is formed by the same functions as in [`ScreenPlan::row`], so that the bits are the same.
#![expect(
    clippy::indexing_slicing,
    reason = "every index is below the length of its array, which the compiler knows: an index of a row below BLOCK"
)]

mod ask;
mod checks;
mod counts;
mod gears;
mod others;
mod torques;

pub use ask::{Ask, ScreenLane};

use super::columns::{OUTPUT, PRESSURE, SCREEN_COLUMNS};
use super::plan::ScreenPlan;
use super::row::{ScreenAnswer, bit};
use super::tally::ScreenTally;
use super::unit::MAX_SCREEN_GEARS;
use crate::real::abs;

/// Rows of a block: what a core keeps closest at hand. All are looked at, even where fewer are given.
const BLOCK: usize = 64;
/// Rows of a group: few of them are in more than one gear.
const GROUP: usize = 16;
/// Rows after which the sums of the gears are handed over: before 2^12 rows of a place, whose greatest addend is 2^50.
const HAND_OVER: usize = 1 << 14;
/// The widest vectors.
const VECTOR_BYTES: usize = 64;
/// The columns among the flags.
const COLUMNS: u32 = (1 << SCREEN_COLUMNS) - 1;

/// Numbers of the rows of a block.
type Lane = [f64; BLOCK];
/// Values of a column for a block; that of the row before it stands first.
type Values = [f64; BLOCK + 1];

/// What the rows of a block say, side by side.
#[repr(C, align(64))]
#[derive(Clone, Debug)]
struct Lanes {
    /// Until the end of a block, the columns that the data has not are flagged as well.
    flags: [u32; BLOCK],
    /// Input over output speed.
    ratio: Lane,
    place: [i32; BLOCK],
    gap_s: Lane,
    duration_s: Lane,
    duration: [i64; BLOCK],
    input_nm: Lane,
    input_share: Lane,
    input_kw: Lane,
    converter_loss_kw: Lane,
    output_nm: Lane,
    /// Greatest share of a rating as bits, which rise with it; -1 where none was formed or it is beyond the scale.
    greatest: [i64; BLOCK],
    gear_loss_kw: Lane,
    held_nm: Lane,
    least_margin: Lane,
    weakest: [i32; BLOCK],
    turns: Lane,
    turns_steps: [i64; BLOCK],
    turns_rests: [i64; BLOCK],
    aged_s: Lane,
    gps_over_speed: Lane,
    gps_over_output: Lane,
    /// Bits of the bus values that differ from the row before.
    changed: [u64; BLOCK],
}

/// What the rows of the last block said, and sums on their way to the tally.
#[derive(Clone, Debug)]
pub struct ScreenBlock {
    lanes: Lanes,
    of_gear: [gears::Sums; MAX_SCREEN_GEARS],
}

impl Lanes {
    const NOTHING: Self = {
        const UNKNOWN: Lane = [f64::NAN; BLOCK];
        Self {
            flags: [0; BLOCK],
            ratio: UNKNOWN,
            place: [0; BLOCK],
            gap_s: [0.0; BLOCK],
            duration_s: [0.0; BLOCK],
            duration: [0; BLOCK],
            input_nm: UNKNOWN,
            input_share: UNKNOWN,
            input_kw: UNKNOWN,
            converter_loss_kw: UNKNOWN,
            output_nm: UNKNOWN,
            greatest: [-1; BLOCK],
            gear_loss_kw: UNKNOWN,
            held_nm: UNKNOWN,
            least_margin: UNKNOWN,
            weakest: [-1; BLOCK],
            turns: [0.0; BLOCK],
            turns_steps: [0; BLOCK],
            turns_rests: [0; BLOCK],
            aged_s: [0.0; BLOCK],
            gps_over_speed: UNKNOWN,
            gps_over_output: UNKNOWN,
            changed: [0; BLOCK],
        }
    };
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
        Self { lanes: Lanes::NOTHING, of_gear: [gears::Sums::ZERO; MAX_SCREEN_GEARS] }
    }

    /// Passes over consecutive rows of one truck.
    ///
    /// * `asked` — what to compute, of [`Ask`]
    /// * `columns` — the values, in the order of `SCREEN_COLUMN_NAMES`; that of the row before the first stands first, so
    ///   that there is one more than rows. Empty where the data has no such column
    /// * `first_row` — number of the first row in the stream; `tally` — takes the sums
    /// * `ahead` — is told the place in the columns of a group of rows that is read a little later, to ask memory for them; only
    ///   where enough is computed meanwhile
    ///
    /// What the rows of the last block said can be read afterward where [`Ask::ROWS`] was asked for: give
    /// [`ScreenBlock::ROWS`] at most to read them all.
    #[inline(always)]
    pub fn screen(
        &mut self,
        plan: &ScreenPlan,
        asked: u32,
        (columns, first_row, ahead): (&[&[f64]; SCREEN_COLUMNS], u64, impl Fn(usize)),
        tally: &mut ScreenTally,
    ) {
        let pass = Pass::of(plan, asked, columns);
        if !pass.damages {
            (self.lanes.turns, self.lanes.turns_steps, self.lanes.turns_rests) = ([0.0; BLOCK], [0; BLOCK], [0; BLOCK]);
        }
        let [time, ..] = columns;
        let rows = time.len().saturating_sub(1);
        // The first and the last rows, and columns that are not there. What follows the last row is no row: it has no time.
        let mut part = [[f64::NAN; BLOCK + 1]; SCREEN_COLUMNS];
        let (mut done, mut count) = (0, before_aligned(time));
        while done < rows {
            if count < BLOCK {
                for (to, values) in part.iter_mut().zip(columns) {
                    *to = [f64::NAN; BLOCK + 1];
                    let values = values.get(done..=done + count).unwrap_or_default();
                    to.iter_mut().zip(values).for_each(|(to, value)| *to = *value);
                }
            }
            let block = core::array::from_fn(|column| {
                let whole = columns[column].get(done..).and_then(|values| values.first_chunk());
                whole.filter(|_| count == BLOCK).unwrap_or(&part[column])
            });
            let next = (count, first_row + done as u64, |row| ahead(done + count + row));
            self.block(&pass, block, next, tally);
            if done % HAND_OVER < BLOCK {
                self.hand_over(tally);
            }
            done += count;
            count = (rows - done).min(BLOCK);
        }
        self.hand_over(tally);
    }

    /// Passes over the first `count` rows of a block.
    #[inline(always)]
    fn block(
        &mut self,
        pass: &Pass<'_>,
        columns: [&Values; SCREEN_COLUMNS],
        (count, first_row, ahead): (usize, u64, impl Fn(usize)),
        tally: &mut ScreenTally,
    ) {
        let [_, engine, input, output, torque, pressure, temp, speed, gps, commanded] = columns;
        let any = self.lanes.check(pass, &columns);
        if pass.only_times && any == 0 && count == BLOCK {
            self.lanes.count_times(tally);
            return;
        }
        if pass.lacks(OUTPUT) {
            self.lanes.no_gears();
        } else {
            self.lanes.find_gears(pass, output, commanded);
        }
        if pass.asks(Ask::TORQUE) {
            self.lanes.input_torques(pass.plan, engine, input, torque);
        }
        match (pass.asks(Ask::HEAT), pass.asks(Ask::ROWS)) {
            (false, _) => {}
            (true, false) => self.lanes.converter_heat::<false>(engine, torque, tally),
            (true, true) => self.lanes.converter_heat::<true>(engine, torque, tally),
        }
        if pass.damages {
            self.lanes.damage(pass.plan, input);
        }
        if pass.asks(Ask::TORQUE) || !pass.lacks(OUTPUT) {
            self.in_gears(pass, (input, pressure, commanded), ahead);
        }
        let mut found = counts::Extremes { share: -1, margin: i64::MAX, temp: i64::MIN };
        if pass.asks(Ask::TORQUE) {
            (found.share, found.margin) = match (pass.asks(Ask::MARGIN), pass.asks(Ask::HEAT)) {
                (false, false) => self.lanes.shares_and_margins::<false, false>(pass.plan, tally),
                (false, true) => self.lanes.shares_and_margins::<false, true>(pass.plan, tally),
                (true, false) => self.lanes.shares_and_margins::<true, false>(pass.plan, tally),
                (true, true) => self.lanes.shares_and_margins::<true, true>(pass.plan, tally),
            };
        }
        if pass.asks(Ask::WEAKEST) {
            self.lanes.name_weakest(pass.plan, input, pressure);
        }
        found.temp = match (pass.asks(Ask::LIFE), pass.asks(Ask::ROWS)) {
            (false, _) => found.temp,
            (true, false) => self.lanes.life::<false>(pass.plan, temp, tally),
            (true, true) => self.lanes.life::<true>(pass.plan, temp, tally),
        };
        match (pass.asks(Ask::GPS), pass.asks(Ask::ROWS)) {
            (false, _) => {}
            (true, false) => self.lanes.satellite::<false>(pass.plan, (output, speed, gps), tally),
            (true, true) => self.lanes.satellite::<true>(pass.plan, (output, speed, gps), tally),
        }
        if pass.asks(Ask::SUMS) {
            if any & COLUMNS != 0 {
                self.lanes.count_bad(pass.given, count, &columns, tally);
            }
            self.lanes.offer((pass.plan, &found), first_row, &columns, tally);
        }
        self.lanes.count_flags(pass.given | !COLUMNS, count, tally);
    }

    /// Flags of the rows; their names are `SCREEN_FLAG_NAMES`.
    #[must_use]
    pub fn flags(&self) -> &[u32] {
        &self.lanes.flags
    }

    /// Place of the gear in effect of each row; -1 none, -2 standing, -3 not to be told or not used.
    #[must_use]
    pub fn gears(&self) -> &[i32] {
        &self.lanes.place
    }

    /// Element with the least margin of each row, where [`Ask::WEAKEST`] was asked for; -1 where none was formed.
    #[must_use]
    pub fn weakest(&self) -> &[i32] {
        &self.lanes.weakest
    }

    /// One answer of all rows, where it was asked for.
    #[must_use]
    pub fn lane(&self, lane: ScreenLane) -> &[f64] {
        match lane {
            ScreenLane::Duration => &self.lanes.duration_s,
            ScreenLane::InputTorque => &self.lanes.input_nm,
            ScreenLane::OutputTorque => &self.lanes.output_nm,
            ScreenLane::InputShare => &self.lanes.input_share,
            ScreenLane::LeastMargin => &self.lanes.least_margin,
            ScreenLane::Turns => &self.lanes.turns,
            ScreenLane::ConverterLoss => &self.lanes.converter_loss_kw,
            ScreenLane::GearLoss => &self.lanes.gear_loss_kw,
            ScreenLane::Aged => &self.lanes.aged_s,
            ScreenLane::GpsOverSpeed => &self.lanes.gps_over_speed,
            ScreenLane::GpsOverOutput => &self.lanes.gps_over_output,
        }
    }

    /// What row `row` said, as far as it was asked for.
    #[must_use]
    pub fn answer(&self, plan: &ScreenPlan, asked: u32, row: usize) -> ScreenAnswer {
        let row = row.min(BLOCK - 1);
        let (input_share, output_share) =
            (self.lanes.input_share[row], plan.output_share(abs(self.lanes.output_nm[row])));
        ScreenAnswer {
            flags: self.lanes.flags[row],
            gear: self.lanes.place[row] as i8,
            weakest: self.lanes.weakest[row] as i8,
            duration_s: self.lanes.duration_s[row],
            gap_s: self.lanes.gap_s[row],
            input_torque_nm: self.lanes.input_nm[row],
            output_torque_nm: self.lanes.output_nm[row],
            input_share,
            output_share,
            greatest_share: if output_share > input_share { output_share } else { input_share },
            least_margin: self.lanes.least_margin[row],
            turns_at_rated: self.lanes.turns[row],
            input_kw: self.lanes.input_kw[row],
            converter_loss_kw: self.lanes.converter_loss_kw[row],
            gear_loss_kw: self.lanes.gear_loss_kw[row],
            aged_s: self.lanes.aged_s[row],
            gps_over_speed: self.lanes.gps_over_speed[row],
            gps_over_output: self.lanes.gps_over_output[row],
        }
        .only(asked)
    }
}

/// Rows of the first block: all, or so few that those of the next lie where vectors are read whole, if the rows are worth it.
#[inline(always)]
fn before_aligned(time: &[f64]) -> usize {
    let rows = time.len().saturating_sub(1);
    // The row before the first of a block stands in front of what is read whole.
    let before = (time.as_ptr().align_offset(VECTOR_BYTES).wrapping_sub(1)) % (VECTOR_BYTES / size_of::<f64>());
    if before > 0 && rows > 16 * BLOCK { before } else { rows.min(BLOCK) }
}

/// What a pass is given.
struct Pass<'p> {
    plan: &'p ScreenPlan,
    given: u32,
    asked: u32,
    directions: gears::Directions,
    /// No gear can be told, and nothing is asked that rests on other columns.
    only_times: bool,
    margins: bool,
    damages: bool,
}

impl<'p> Pass<'p> {
    fn of(plan: &'p ScreenPlan, asked: u32, columns: &[&[f64]; SCREEN_COLUMNS]) -> Self {
        let given = (0..).zip(columns).filter(|(_, values)| !values.is_empty());
        let given = given.fold(0, |given, (column, _)| given | bit(column));
        let asked = Ask::complete(asked);
        Self {
            plan,
            given,
            asked,
            directions: gears::Directions::of(plan),
            only_times: given & bit(OUTPUT) == 0 && asked & !Ask::SUMS == 0,
            margins: asked & Ask::MARGIN != 0 && given & bit(PRESSURE) != 0,
            damages: asked & Ask::DAMAGE != 0 && plan.slope > 0.0,
        }
    }

    #[inline(always)]
    fn asks(&self, what: u32) -> bool {
        self.asked & what != 0
    }

    #[inline(always)]
    fn lacks(&self, column: usize) -> bool {
        self.given & bit(column) == 0
    }
}
