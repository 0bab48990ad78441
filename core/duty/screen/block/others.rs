//! Fluid and satellite.

use super::{BLOCK, Lane, Lanes, Pass, Values};
use crate::duty::screen::columns::{FLAG_HOT, GPS, NOT_USED, OUTPUT, SPEED, TEMP};
use crate::duty::screen::power::ticks;
use crate::duty::screen::row::{bit, faster_aging};
use crate::duty::screen::tally::{
    AGED, AGING, DISTANCE, GPS_DISTANCE, RATIO, RATIOS, SPEED_DISTANCE, SQUARE, ScreenTally, distance_km,
};
use crate::duty::screen::unit::ScreenPlan;

/// A number that rises with a temperature: its bits, those after the sign turned over where it is below zero.
#[inline(always)]
pub(super) fn rising(temp_c: f64) -> i64 {
    let bits = (temp_c + 0.0).to_bits().cast_signed();
    bits ^ ((bits >> 63).cast_unsigned() >> 1).cast_signed()
}

impl Lanes {
    /// Hot fluid and its aging. Gives the hottest of the block as [`rising`] has it; `i64::MIN` where no row has a temperature.
    #[inline(always)]
    pub(super) fn life(&mut self, plan: &ScreenPlan, temp: &Values, tally: &mut ScreenTally) -> i64 {
        let mut hottest = i64::MIN;
        let mut aged = 0_i64;
        let ages = plan.fluid.life_h > 0.0;
        for i in 0..BLOCK {
            let temp_c = temp[i + 1];
            let good = self.flags[i] & (NOT_USED | bit(TEMP)) == 0;
            self.flags[i] |= if good & (temp_c > plan.limits.hot_c) { FLAG_HOT } else { 0 };
            let rising = if good { rising(temp_c) } else { i64::MIN };
            hottest = if rising > hottest { rising } else { hottest };
            let aged_s = self.duration_s[i] * faster_aging(plan, temp_c);
            let aged_s = if good & ages { aged_s } else { 0.0 };
            self.aged_s[i] = aged_s;
            aged = aged.wrapping_add(ticks(aged_s, AGING));
        }
        tally.add(AGED, aged);
        hottest
    }

    /// Distances, and the ratios of the speed by satellite to the two others.
    #[inline(always)]
    pub(super) fn satellite(
        &mut self,
        pass: &Pass<'_>,
        (output, speed, gps): (&Values, &Values, &Values),
        tally: &mut ScreenTally,
    ) {
        let floor_km_h = pass.plan.limits.gps_floor_km_h;
        let per_km_h = pass.plan.output_rpm_per_km_h;
        if !pass.lacks(SPEED) {
            tally.add(SPEED_DISTANCE, self.distance::<SPEED>(speed));
        }
        if pass.lacks(GPS) {
            self.gps_over_speed = [f64::NAN; BLOCK];
            self.gps_over_output = [f64::NAN; BLOCK];
            return;
        }
        tally.add(GPS_DISTANCE, self.distance::<GPS>(gps));
        let flags = &self.flags;
        let (floor, to) = (floor_km_h, &mut self.gps_over_speed);
        add(tally, RATIOS, ratios::<SPEED>(to, flags, (gps, speed), (1.0, floor)));
        let floor = if per_km_h > 0.0 { floor_km_h * per_km_h } else { f64::INFINITY };
        let to = &mut self.gps_over_output;
        add(tally, RATIOS + 3, ratios::<OUTPUT>(to, flags, (gps, output), (per_km_h, floor)));
    }

    #[inline(always)]
    fn distance<const COLUMN: usize>(&self, speed: &Values) -> i64 {
        let mut distance = 0_i64;
        for i in 0..BLOCK {
            let km = distance_km(speed[i + 1], self.duration_s[i]);
            let good = self.flags[i] & (NOT_USED | bit(COLUMN)) == 0;
            distance = distance.wrapping_add(ticks(if good { km } else { 0.0 }, DISTANCE));
        }
        distance
    }
}

/// Speed by satellite times `factor` over the values of a column, from `floor` on. Gives rows, sum and sum of squares.
#[inline(always)]
fn ratios<const COLUMN: usize>(
    to: &mut Lane,
    flags: &[u32; BLOCK],
    (gps, other): (&Values, &Values),
    (factor, floor): (f64, f64),
) -> [i64; 3] {
    let (mut rows, mut sum, mut square) = (0_i64, 0_i64, 0_i64);
    for i in 0..BLOCK {
        let good = (flags[i] & (NOT_USED | bit(GPS) | bit(COLUMN)) == 0) & (other[i + 1] >= floor);
        let ratio = gps[i + 1] * factor / other[i + 1];
        let counted = if good { ratio } else { 0.0 };
        rows += i64::from(good);
        sum = sum.wrapping_add(ticks(counted, RATIO));
        square = square.wrapping_add(ticks(counted * counted, SQUARE));
        to[i] = if good { ratio } else { f64::NAN };
    }
    [rows, sum, square]
}

#[inline(always)]
fn add(tally: &mut ScreenTally, place: usize, [rows, sum, square]: [i64; 3]) {
    tally.add(place, rows);
    tally.add(place + 1, sum);
    tally.add(place + 2, square);
}
