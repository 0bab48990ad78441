//! Torques, shares of the ratings, margins, damage, heat.

use super::{BLOCK, GROUP, Lanes, Values};
use crate::duty::screen::columns::{
    ENGINE, FLAG_BEYOND_SCALE, FLAG_LITTLE_TORQUE, FLAG_LOW_MARGIN, FLAG_NO_TORQUE, FLAG_OVER_INPUT, FLAG_OVER_OUTPUT,
    FLAG_UNLOCKED, INPUT, NOT_USED, PRESSURE, TORQUE,
};
use crate::duty::screen::plan::ScreenPlan;
use crate::duty::screen::power::{Ticks, power_of_exponent, ticks, ticks_and_rest};
use crate::duty::screen::row::{bit, converter_loss_kw, margin, multiplied_nm, power_kw, reached, turns};
use crate::duty::screen::tally::{
    CONVERTER_LOSS, ENERGY, GEAR_LOSS, INPUT_ENERGY, ScreenTally, TURNS, TURNS_REST, drive_energy_kj, energy_kj,
};

impl Lanes {
    /// Locked or not, input torque, what of it is too little or too much, input power.
    #[inline(always)]
    pub(super) fn input_torques(&mut self, plan: &ScreenPlan, engine: &Values, input: &Values, torque: &Values) {
        if self.engine_torques(plan.limits.locked_slip_rpm, engine, input, torque) {
            self.multiplied_torques(plan, engine, input);
        }
        for i in 0..BLOCK {
            let torque_nm = self.input_nm[i];
            let size_nm = torque_nm.abs();
            let share = plan.input_share(size_nm);
            let more = if size_nm < plan.limits.torque_floor_nm { FLAG_LITTLE_TORQUE } else { 0 };
            let more = more | if size_nm > plan.rated_input_nm { FLAG_OVER_INPUT } else { 0 };
            let more = more | if share > plan.greatest_use { FLAG_BEYOND_SCALE } else { 0 };
            let more = if torque_nm.is_nan() { FLAG_NO_TORQUE } else { more };
            let flags = self.flags[i];
            self.flags[i] = flags | if flags & NOT_USED == 0 { more } else { 0 };
            self.input_share[i] = share;
            self.input_kw[i] = power_kw(torque_nm, input[i + 1]);
        }
    }

    /// Input torques as if the converter were locked. Gives whether it is not in some row.
    #[inline(always)]
    fn engine_torques(&mut self, locked_slip_rpm: f64, engine: &Values, input: &Values, torque: &Values) -> bool {
        let mut any = 0;
        for i in 0..BLOCK {
            let flags = self.flags[i];
            let slips = (engine[i + 1] - input[i + 1]).abs() > locked_slip_rpm;
            let speeds = flags & (NOT_USED | bit(ENGINE) | bit(INPUT)) == 0;
            let flags = flags | if slips & speeds { FLAG_UNLOCKED } else { 0 };
            any |= flags;
            self.flags[i] = flags;
            self.input_nm[i] = if speeds & (flags & bit(TORQUE) == 0) { torque[i + 1] } else { f64::NAN };
        }
        any & FLAG_UNLOCKED != 0
    }

    /// Input torques of the rows in which the converter is not locked, group after group.
    #[inline(always)]
    fn multiplied_torques(&mut self, plan: &ScreenPlan, engine: &Values, input: &Values) {
        for group in 0..BLOCK / GROUP {
            let mut any = 0;
            for row in 0..GROUP {
                any |= self.flags[group * GROUP + row];
            }
            if any & FLAG_UNLOCKED != 0 {
                self.multiplied_group(plan, group, engine, input);
            }
        }
    }

    #[inline(always)]
    fn multiplied_group(&mut self, plan: &ScreenPlan, group: usize, engine: &Values, input: &Values) {
        let first = plan.first_section();
        let (mut speeds, mut ratios, mut slopes) = ([first.0; GROUP], [first.1; GROUP], [first.2; GROUP]);
        for [one, two, three, four] in plan.points_by_four() {
            for row in 0..GROUP {
                let i = group * GROUP + row;
                let speed_ratio = input[i + 1] / engine[i + 1];
                let section = (speeds[row], ratios[row], slopes[row]);
                let section = reached(reached(section, speed_ratio, one), speed_ratio, two);
                let section = reached(reached(section, speed_ratio, three), speed_ratio, four);
                (speeds[row], ratios[row], slopes[row]) = section;
            }
        }
        let mut torques = [0.0; GROUP];
        for row in 0..GROUP {
            let i = group * GROUP + row;
            let section = (speeds[row], ratios[row], slopes[row]);
            let torque_nm = multiplied_nm(section, engine[i + 1], input[i + 1], self.input_nm[i]);
            let torque_nm = if plan.point_count > 0 { torque_nm } else { f64::NAN };
            let unlocked = self.flags[i] & FLAG_UNLOCKED != 0;
            torques[row] = if unlocked { torque_nm } else { self.input_nm[i] };
        }
        for (row, &torque_nm) in torques.iter().enumerate() {
            self.input_nm[group * GROUP + row] = torque_nm;
        }
    }

    /// Energies that the power at the input stands for, and that the converter lost.
    #[inline(always)]
    pub(super) fn converter_heat<const KEEP: bool>(
        &mut self,
        engine: &Values,
        torque: &Values,
        tally: &mut ScreenTally,
    ) {
        let [mut driven, mut lost] = [Ticks::of(ENERGY); 2];
        for i in 0..BLOCK {
            let (input_kw, duration_s) = (self.input_kw[i], self.duration_s[i]);
            let loss_kw = converter_loss_kw(torque[i + 1], engine[i + 1], input_kw);
            if KEEP {
                self.converter_loss_kw[i] = loss_kw;
            }
            driven.add(drive_energy_kj(input_kw, duration_s));
            lost.add(energy_kj(loss_kw, duration_s));
        }
        tally.add(INPUT_ENERGY, driven.sum(BLOCK));
        tally.add(CONVERTER_LOSS, lost.sum(BLOCK));
    }

    /// Turns at the rated torque that do the damage of each row; what they add up to waits for the gears.
    #[inline(always)]
    pub(super) fn damage(&mut self, plan: &ScreenPlan, input: &Values) {
        // The logarithms apart: the chain from them to the turns is too long for a processor to look past it to the next rows.
        for i in 0..BLOCK {
            self.turns[i] = plan.exponent(self.input_share[i]);
        }
        for i in 0..BLOCK {
            let counted = (self.place[i] >= 0) & (self.flags[i] & (FLAG_BEYOND_SCALE | FLAG_NO_TORQUE) == 0);
            let severity = power_of_exponent(self.input_share[i], self.turns[i]);
            let turns = turns(self.duration_s[i], input[i + 1]) * severity;
            let turns = if counted { turns } else { 0.0 };
            let (steps, rest) = ticks_and_rest(turns, TURNS);
            self.turns[i] = turns;
            self.turns_steps[i] = steps;
            self.turns_rests[i] = ticks(rest, TURNS_REST);
        }
    }

    /// Shares of the ratings; margins of what the weakest pack holds; energy that the gears lost. Gives the greatest share, -1
    /// where no row has one, and the least margin, NaN where there is none, as bits.
    #[inline(always)]
    pub(super) fn shares_and_margins<const MARGIN: bool, const HEAT: bool>(
        &mut self,
        plan: &ScreenPlan,
        tally: &mut ScreenTally,
    ) -> (i64, i64) {
        let (mut greatest, mut least, mut lost) = (-1, i64::MAX, Ticks::of(ENERGY));
        for i in 0..BLOCK {
            let (flags, size_nm, input_share) = (self.flags[i], self.output_nm[i].abs(), self.input_share[i]);
            let output_share = plan.output_share(size_nm);
            let share = if output_share > input_share { output_share } else { input_share };
            let formed = (flags & FLAG_BEYOND_SCALE == 0) & !share.is_nan();
            let share = if formed { share.to_bits().cast_signed() } else { -1 };
            self.greatest[i] = share;
            greatest = greatest.max(share);
            let mut flags = flags | if size_nm > plan.rated_output_nm { FLAG_OVER_OUTPUT } else { 0 };
            if MARGIN {
                let margin = margin(self.held_nm[i], self.input_nm[i].abs());
                let formed = (flags & (bit(PRESSURE) | FLAG_LITTLE_TORQUE | FLAG_NO_TORQUE) == 0) & !margin.is_nan();
                flags |= if formed & (margin < plan.limits.least_margin) { FLAG_LOW_MARGIN } else { 0 };
                let margin = if formed { margin } else { f64::NAN };
                self.least_margin[i] = margin;
                least = least.min(margin.to_bits().cast_signed());
            }
            self.flags[i] = flags;
            if HEAT {
                lost.add(energy_kj(self.gear_loss_kw[i], self.duration_s[i]));
            }
        }
        if HEAT {
            tally.add(GEAR_LOSS, lost.sum(BLOCK));
        }
        (greatest, least)
    }

    /// Which pack is the weakest, row by row.
    #[inline(never)]
    pub(super) fn name_weakest(&mut self, plan: &ScreenPlan, input: &Values, pressure: &Values) {
        for i in 0..BLOCK {
            self.weakest[i] = self.weakest_of(plan, i, (input, pressure)).into();
        }
    }

    /// The weakest pack of a row; -1 where no margin was formed.
    pub(super) fn weakest_of(&self, plan: &ScreenPlan, i: usize, (input, pressure): (&Values, &Values)) -> i8 {
        let gear = plan.gear_at(self.place[i] as i8).filter(|_| !self.least_margin[i].is_nan());
        gear.map_or(-1, |gear| gear.weakest(pressure[i + 1], input[i + 1]).1)
    }
}
