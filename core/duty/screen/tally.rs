//! Sums of a truck as whole numbers: the same whatever the order, the pieces and the threads.
//!
//! A row's value is rounded once, to a whole number of a fixed step; the steps are added in 128 bits.

use super::block::Ask;
use super::columns::{
    BAD_VALUE_KINDS, BadValue, FLAG_BEYOND_SCALE, GPS, SCREEN_COLUMNS, SCREEN_FLAGS, SPEED, ScreenRow, TEMP,
};
use super::plan::ScreenPlan;
use super::power::{ticks, ticks_and_rest};
use super::row::{ScreenAnswer, bit};
use super::unit::MAX_SCREEN_GEARS;
use crate::train::MAX_SETS;

/// Step of durations: 2^-38 s.
pub(super) const SECONDS: f64 = (1_u64 << 38) as f64;
/// Step of gaps: 2^-17 s.
pub(super) const GAP_SECONDS: f64 = (1_u64 << 17) as f64;
/// Steps of turns: 2^-14, and what is left in 2^-65.
pub(super) const TURNS: f64 = (1_u64 << 14) as f64;
pub(super) const TURNS_REST: f64 = (1_u128 << 65) as f64;
/// Step of energies: 2^-26 kJ.
pub(super) const ENERGY: f64 = (1_u64 << 26) as f64;
/// Step of aging: 2^-18 s.
pub(super) const AGING: f64 = (1_u64 << 18) as f64;
/// Step of distances: 2^-40 km.
pub(super) const DISTANCE: f64 = (1_u64 << 40) as f64;
/// Step of ratios of speeds: 2^-40.
pub(super) const RATIO: f64 = (1_u64 << 40) as f64;
/// Step of their squares: 2^-33.
pub(super) const SQUARE: f64 = (1_u64 << 33) as f64;

pub(super) const ROWS: usize = 0;
pub(super) const FLAG_ROWS: usize = 1;
pub(super) const FLAG_SECONDS: usize = FLAG_ROWS + SCREEN_FLAGS;
pub(super) const GEAR_SECONDS: usize = FLAG_SECONDS + SCREEN_FLAGS;
pub(super) const GEAR_TURNS: usize = GEAR_SECONDS + MAX_SCREEN_GEARS;
pub(super) const GAP: usize = GEAR_TURNS + MAX_SCREEN_GEARS;
pub(super) const KNOWN: usize = GAP + 1;
pub(super) const INPUT_ENERGY: usize = KNOWN + 1;
pub(super) const CONVERTER_LOSS: usize = INPUT_ENERGY + 1;
pub(super) const GEAR_LOSS: usize = CONVERTER_LOSS + 1;
pub(super) const AGED: usize = GEAR_LOSS + 1;
pub(super) const SPEED_DISTANCE: usize = AGED + 1;
pub(super) const GPS_DISTANCE: usize = SPEED_DISTANCE + 1;
/// Rows, sum, sum of squares of satellite over road speed, then of satellite over output speed.
pub(super) const RATIOS: usize = GPS_DISTANCE + 1;
pub(super) const BAD: usize = RATIOS + 6;
/// Sums of a truck.
const TALLY_SUMS: usize = BAD + SCREEN_COLUMNS * BAD_VALUE_KINDS;

/// The greatest or least value of a truck, and where it was.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenExtreme {
    /// The value; NaN where there was none.
    pub value: f64,
    /// Time of its row, s.
    pub time_s: f64,
    /// Number of its row.
    pub row: u64,
    /// Place of the gear in effect; -1 none, -2 standing, -3 not to be told.
    pub gear: i8,
    /// Element, where it is a margin; else -1.
    pub element: i8,
}

impl ScreenExtreme {
    /// No value.
    pub const NONE: Self = Self { value: f64::NAN, time_s: f64::NAN, row: u64::MAX, gear: -3, element: -1 };

    /// Takes the other where `sign` times its value is greater, or it is the earlier of equals: by time, as rows that arrive
    /// in pieces of any order are numbered differently.
    pub(super) fn offer(&mut self, other: &Self, sign: f64) {
        let (now, new) = (self.value * sign, other.value * sign);
        let earlier = || other.time_s < self.time_s || (other.time_s <= self.time_s && other.row < self.row);
        if !new.is_nan() && (now.is_nan() || new > now || (new >= now && earlier())) {
            *self = *other;
        }
    }
}

/// What the rows of one truck add up to. Adding tallies in any order gives the same bits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenTally {
    pub(super) sums: [i128; TALLY_SUMS],
    /// Greatest share of a rating.
    pub greatest_share: ScreenExtreme,
    /// Least margin.
    pub least_margin: ScreenExtreme,
    /// Hottest fluid, °C.
    pub hottest: ScreenExtreme,
}

/// Rows, mean and spread of a ratio of speeds.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenRatio {
    /// Rows that it was formed in.
    pub rows: u64,
    /// Mean; NaN without rows.
    pub mean: f64,
    /// Standard deviation of one row; NaN below two rows.
    pub deviation: f64,
}

/// The sums of one truck as numbers.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenTotals {
    /// Rows.
    pub rows: u64,
    /// Rows by flag.
    pub flag_rows: [u64; SCREEN_FLAGS],
    /// Time of the rows with each flag, s.
    pub flag_s: [f64; SCREEN_FLAGS],
    /// Time in each gear of the unit, s.
    pub gear_s: [f64; MAX_SCREEN_GEARS],
    /// Turns of the input in each gear at the rated torque that do the same damage.
    pub turns_at_rated: [f64; MAX_SCREEN_GEARS],
    /// Damage of each set.
    pub damage: [f64; MAX_SETS],
    /// Time with a duration, s.
    pub known_s: f64,
    /// Time in gaps, s: unknown, neither rest nor use.
    pub gap_s: f64,
    /// Energy that entered at the input under drive, kJ.
    pub input_energy_kj: f64,
    /// Energy lost in the converter, kJ.
    pub converter_loss_kj: f64,
    /// Energy lost in the gears, kJ.
    pub gear_loss_kj: f64,
    /// Time at the reference temperature that ages the fluid the same, s.
    pub aged_s: f64,
    /// Share of its life that the fluid has used.
    pub life_used: f64,
    /// Distance by road speed, km.
    pub speed_km: f64,
    /// Distance by satellite, km.
    pub gps_km: f64,
    /// Satellite over road speed.
    pub gps_over_speed: ScreenRatio,
    /// Satellite over output speed through axle and tire.
    pub gps_over_output: ScreenRatio,
    /// Values that could not be used, by column and kind.
    pub bad: [[u64; BAD_VALUE_KINDS]; SCREEN_COLUMNS],
    /// Greatest share of a rating.
    pub greatest_share: ScreenExtreme,
    /// Least margin.
    pub least_margin: ScreenExtreme,
    /// Hottest fluid, °C.
    pub hottest: ScreenExtreme,
}

impl ScreenTally {
    /// Number of sums.
    /// cbindgen:ignore
    pub const SUMS: usize = TALLY_SUMS;
    /// No row.
    pub const EMPTY: Self = Self {
        sums: [0; TALLY_SUMS],
        greatest_share: ScreenExtreme::NONE,
        least_margin: ScreenExtreme::NONE,
        hottest: ScreenExtreme::NONE,
    };

    #[inline(always)]
    pub(super) fn add(&mut self, place: usize, steps: i64) {
        if let Some(sum) = self.sums.get_mut(place) {
            *sum = sum.wrapping_add(steps.into());
        }
    }

    /// Turns have two steps, so that the smallest count as well.
    #[inline(always)]
    pub(super) fn add_turns(&mut self, gear: usize, steps: i64, rest: i64) {
        if let Some(sum) = self.sums.get_mut(GEAR_TURNS + gear) {
            *sum = sum.wrapping_add((i128::from(steps) << 51).wrapping_add(rest.into()));
        }
    }

    /// Counts a value that cannot be used.
    pub(super) fn add_bad(&mut self, column: usize, value: f64) {
        if let Some(kind) = BadValue::of(column, value) {
            self.add(BAD + column * BAD_VALUE_KINDS + kind as usize, 1);
        }
    }

    /// Adds another tally of the same truck.
    pub fn merge(&mut self, other: &Self) {
        for (sum, more) in self.sums.iter_mut().zip(&other.sums) {
            *sum = sum.wrapping_add(*more);
        }
        self.greatest_share.offer(&other.greatest_share, 1.0);
        self.least_margin.offer(&other.least_margin, -1.0);
        self.hottest.offer(&other.hottest, 1.0);
    }

    /// Adds one row and what it said. `given` and `asked` are the columns that the data has and the sums asked for, of [`super::Ask`];
    /// `number` is the place of the row in the stream.
    pub fn add_row(&mut self, (given, asked): (u32, u32), row: &ScreenRow, number: u64, answer: &ScreenAnswer) {
        let (answer, weakest) = (&answer.only(asked), answer.weakest);
        let duration = ticks(answer.duration_s, SECONDS);
        self.add(ROWS, 1);
        self.add(KNOWN, duration);
        self.add(GAP, ticks(answer.gap_s, GAP_SECONDS));
        for place in (0..SCREEN_FLAGS).filter(|&place| answer.flags & bit(place) != 0) {
            self.add(FLAG_ROWS + place, 1);
            self.add(FLAG_SECONDS + place, duration);
        }
        for (column, &value) in row.values().iter().enumerate() {
            if given & answer.flags & bit(column) != 0 {
                self.add_bad(column, value);
            }
        }
        if let Ok(gear) = usize::try_from(answer.gear) {
            self.add(GEAR_SECONDS + gear, duration);
            let (steps, rest) = ticks_and_rest(answer.turns_at_rated, TURNS);
            self.add_turns(gear, steps, ticks(rest, TURNS_REST));
        }
        self.add(INPUT_ENERGY, ticks(drive_energy_kj(answer.input_kw, answer.duration_s), ENERGY));
        self.add(CONVERTER_LOSS, ticks(energy_kj(answer.converter_loss_kw, answer.duration_s), ENERGY));
        self.add(GEAR_LOSS, ticks(energy_kj(answer.gear_loss_kw, answer.duration_s), ENERGY));
        self.add(AGED, ticks(answer.aged_s, AGING));
        let used = answer.flags & super::columns::NOT_USED == 0;
        let good = |column: usize| used && given & bit(column) != 0 && answer.flags & bit(column) == 0;
        if asked & Ask::GPS != 0 && good(SPEED) {
            self.add(SPEED_DISTANCE, ticks(distance_km(row.speed_km_h, answer.duration_s), DISTANCE));
        }
        if asked & Ask::GPS != 0 && good(GPS) {
            self.add(GPS_DISTANCE, ticks(distance_km(row.gps_km_h, answer.duration_s), DISTANCE));
        }
        self.add_ratio(RATIOS, answer.gps_over_speed);
        self.add_ratio(RATIOS + 3, answer.gps_over_output);
        let here = ScreenExtreme { value: f64::NAN, time_s: row.time_s, row: number, gear: answer.gear, element: -1 };
        if answer.flags & FLAG_BEYOND_SCALE == 0 {
            self.greatest_share.offer(&ScreenExtreme { value: answer.greatest_share, ..here }, 1.0);
        }
        let least = ScreenExtreme { value: answer.least_margin, element: weakest, ..here };
        self.least_margin.offer(&least, -1.0);
        if asked & Ask::LIFE != 0 && good(TEMP) {
            self.hottest.offer(&ScreenExtreme { value: row.temp_c, ..here }, 1.0);
        }
    }

    fn add_ratio(&mut self, place: usize, ratio: f64) {
        if !ratio.is_nan() {
            self.add(place, 1);
            self.add(place + 1, ticks(ratio, RATIO));
            self.add(place + 2, ticks(ratio * ratio, SQUARE));
        }
    }

    fn sum(&self, place: usize) -> i128 {
        self.sums.get(place).copied().unwrap_or(0)
    }

    fn count(&self, place: usize) -> u64 {
        self.sum(place) as u64
    }

    fn value(&self, place: usize, step: f64) -> f64 {
        self.sum(place) as f64 / step
    }

    fn ratio(&self, place: usize) -> ScreenRatio {
        let rows = self.count(place);
        let n = rows as f64;
        let mean = if rows > 0 { self.value(place + 1, RATIO) / n } else { f64::NAN };
        let spread = (self.value(place + 2, SQUARE) - n * mean * mean) / (n - 1.0);
        let deviation = if rows > 1 { crate::real::sqrt(if spread > 0.0 { spread } else { 0.0 }) } else { f64::NAN };
        ScreenRatio { rows, mean, deviation }
    }

    /// The sums as numbers.
    #[must_use]
    pub fn totals(&self, plan: &ScreenPlan) -> ScreenTotals {
        let turns_at_rated = core::array::from_fn(|gear| self.sum(GEAR_TURNS + gear) as f64 / TURNS_REST);
        let mut damage = [0.0; MAX_SETS];
        for (gear, turns) in (0_i8..).zip(&turns_at_rated).take(plan.gear_count()) {
            for (sum, per_turn) in damage.iter_mut().zip(plan.damage_per_turn(gear)) {
                *sum += per_turn * turns;
            }
        }
        let aged_s = self.value(AGED, AGING);
        ScreenTotals {
            rows: self.count(ROWS),
            flag_rows: core::array::from_fn(|flag| self.count(FLAG_ROWS + flag)),
            flag_s: core::array::from_fn(|flag| self.value(FLAG_SECONDS + flag, SECONDS)),
            gear_s: core::array::from_fn(|gear| self.value(GEAR_SECONDS + gear, SECONDS)),
            turns_at_rated,
            damage,
            known_s: self.value(KNOWN, SECONDS),
            gap_s: self.value(GAP, GAP_SECONDS),
            input_energy_kj: self.value(INPUT_ENERGY, ENERGY),
            converter_loss_kj: self.value(CONVERTER_LOSS, ENERGY),
            gear_loss_kj: self.value(GEAR_LOSS, ENERGY),
            aged_s,
            life_used: aged_s * plan.life_per_aged_s(),
            speed_km: self.value(SPEED_DISTANCE, DISTANCE),
            gps_km: self.value(GPS_DISTANCE, DISTANCE),
            gps_over_speed: self.ratio(RATIOS),
            gps_over_output: self.ratio(RATIOS + 3),
            bad: core::array::from_fn(|column| {
                core::array::from_fn(|kind| self.count(BAD + column * BAD_VALUE_KINDS + kind))
            }),
            greatest_share: self.greatest_share,
            least_margin: self.least_margin,
            hottest: self.hottest,
        }
    }

    /// The sums, to be written to a file; [`ScreenTally::of_parts`] reads them back.
    #[must_use]
    pub fn parts(&self) -> (&[i128; TALLY_SUMS], [ScreenExtreme; 3]) {
        (&self.sums, [self.greatest_share, self.least_margin, self.hottest])
    }

    /// The tally with these parts.
    #[must_use]
    pub fn of_parts(sums: [i128; TALLY_SUMS], extremes: [ScreenExtreme; 3]) -> Self {
        let [greatest_share, least_margin, hottest] = extremes;
        Self { sums, greatest_share, least_margin, hottest }
    }
}

/// Energy, kJ; 0 where the power was not formed.
#[inline(always)]
pub(super) fn energy_kj(power_kw: f64, duration_s: f64) -> f64 {
    let energy = power_kw * duration_s;
    if power_kw.is_nan() { 0.0 } else { energy }
}

/// Energy that enters under drive, kJ.
#[inline(always)]
pub(super) fn drive_energy_kj(power_kw: f64, duration_s: f64) -> f64 {
    if power_kw > 0.0 { power_kw * duration_s } else { 0.0 }
}

/// Distance, km.
#[inline(always)]
pub(super) fn distance_km(speed_km_h: f64, duration_s: f64) -> f64 {
    speed_km_h * (duration_s * (1.0 / 3600.0))
}
