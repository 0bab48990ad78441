//! Fluid and satellite.

use super::{BLOCK, Lanes, Values};
use crate::duty::screen::columns::{FLAG_HOT, GPS, NOT_USED, OUTPUT, SPEED, TEMP};
use crate::duty::screen::plan::ScreenPlan;
use crate::duty::screen::power::Ticks;
use crate::duty::screen::row::{bit, faster_aging};
use crate::duty::screen::tally::{AGED, AGING, DISTANCE, RATIO, SPEED_DISTANCE, SQUARE, ScreenTally, distance_km};

/// A number that rises with a temperature: its bits, those after the sign turned over where it is below zero.
#[inline(always)]
pub(super) fn rising(temp_c: f64) -> i64 {
    let bits = (temp_c + 0.0).to_bits().cast_signed();
    bits ^ ((bits >> 63).cast_unsigned() >> 1).cast_signed()
}

impl Lanes {
    /// Hot fluid and its aging. Gives the hottest of the block as [`rising`] has it; `i64::MIN` where no row has a temperature.
    #[inline(always)]
    pub(super) fn life<const KEEP: bool>(&mut self, plan: &ScreenPlan, temp: &Values, tally: &mut ScreenTally) -> i64 {
        let mut hottest = i64::MIN;
        let mut aged = Ticks::of(AGING);
        let ages = plan.fluid.life_h > 0.0;
        for i in 0..BLOCK {
            let temp_c = temp[i + 1];
            let good = self.flags[i] & (NOT_USED | bit(TEMP)) == 0;
            self.flags[i] |= if good & (temp_c > plan.limits.hot_c) { FLAG_HOT } else { 0 };
            let rising = if good { rising(temp_c) } else { i64::MIN };
            hottest = hottest.max(rising);
            let aged_s = self.duration_s[i] * faster_aging(plan, temp_c);
            let aged_s = if good & ages { aged_s } else { 0.0 };
            if KEEP {
                self.aged_s[i] = aged_s;
            }
            aged.add(aged_s);
        }
        tally.add(AGED, aged.sum(BLOCK));
        hottest
    }

    /// Distances, and the ratios of the speed by satellite to the two others; that to the road speed comes from the checks.
    #[inline(always)]
    pub(super) fn satellite<const KEEP: bool>(
        &mut self,
        plan: &ScreenPlan,
        (output, speed, gps): (&Values, &Values, &Values),
        tally: &mut ScreenTally,
    ) {
        let (floor_km_h, per_km_h) = (plan.limits.gps_floor_km_h, plan.output_rpm_per_km_h);
        let floor_rpm = if per_km_h > 0.0 { floor_km_h * per_km_h } else { f64::INFINITY };
        let [mut by_speed_rows, mut by_output_rows] = [0_i64; 2];
        let [mut speed_km, mut gps_km] = [Ticks::of(DISTANCE); 2];
        let [mut of_speed, mut of_output] = [(Ticks::of(RATIO), Ticks::of(SQUARE)); 2];
        for i in 0..BLOCK {
            let (flags, gps_km_h) = (self.flags[i], gps[i + 1]);
            let good = |columns: u32| flags & (NOT_USED | columns) == 0;
            let km = |good: bool, km_h: f64| if good { distance_km(km_h, self.duration_s[i]) } else { 0.0 };
            let by_speed = good(bit(GPS) | bit(SPEED)) & (speed[i + 1] >= floor_km_h);
            let by_output = good(bit(GPS) | bit(OUTPUT)) & (output[i + 1] >= floor_rpm);
            let over_speed = self.gps_over_speed[i];
            let over_output = gps_km_h * per_km_h / output[i + 1];
            if KEEP {
                self.gps_over_speed[i] = if by_speed { over_speed } else { f64::NAN };
                self.gps_over_output[i] = if by_output { over_output } else { f64::NAN };
            }
            let over_speed = if by_speed { over_speed } else { 0.0 };
            let over_output = if by_output { over_output } else { 0.0 };
            speed_km.add(km(good(bit(SPEED)), speed[i + 1]));
            gps_km.add(km(good(bit(GPS)), gps_km_h));
            by_speed_rows += i64::from(by_speed);
            of_speed.0.add(over_speed);
            of_speed.1.add(over_speed * over_speed);
            by_output_rows += i64::from(by_output);
            of_output.0.add(over_output);
            of_output.1.add(over_output * over_output);
        }
        let of = |ticks: Ticks| ticks.sum(BLOCK);
        let sums = [
            of(speed_km),
            of(gps_km),
            by_speed_rows,
            of(of_speed.0),
            of(of_speed.1),
            by_output_rows,
            of(of_output.0),
            of(of_output.1),
        ];
        for (place, sum) in (SPEED_DISTANCE..).zip(sums) {
            tally.add(place, sum);
        }
    }
}
