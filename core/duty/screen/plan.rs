//! A checked unit, reduced to the constants of a row.

use super::power::{exponent_of_two, power};
use super::unit::{
    MAX_SCREEN_GEARS, MAX_SCREEN_HOLDING, MAX_SCREEN_POINTS, ScreenConverter, ScreenFluid, ScreenLimits,
};
use crate::error::{Error, Result, within};
use crate::real::{abs, sqrt};
use crate::train::MAX_SETS;

/// A closed pack, per unit of input torque: it holds `per_kpa_nm` p + `per_rpm2_nm` n² − `held_back_nm` at the input.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlannedHolding {
    /// Element of the train.
    pub element: u8,
    /// Torque on it per unit of input torque.
    pub share: f64,
    /// Input torque held per kPa, N·m.
    pub per_kpa_nm: f64,
    /// Input torque held per square of input speed, N·m.
    pub per_rpm2_nm: f64,
    /// Input torque that spring and seal take away, N·m.
    pub held_back_nm: f64,
}

/// A gear, reduced.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlannedGear {
    /// Number of the gear.
    pub number: f64,
    /// 1 forward, -1 reverse.
    pub direction: f64,
    /// Least input over output speed of the gear's band.
    pub band_low: f64,
    /// Greatest.
    pub band_high: f64,
    /// Output torque per input torque under drive: ratio times efficiency.
    pub drive_factor: f64,
    /// Output torque per input torque in coast: ratio over efficiency.
    pub coast_factor: f64,
    /// Power lost under drive per input power.
    pub drive_loss: f64,
    /// Power lost in coast per input power.
    pub coast_loss: f64,
    /// Closed packs.
    pub holding: [PlannedHolding; MAX_SCREEN_HOLDING],
    /// Number of them.
    pub holding_count: u32,
    /// Damage of each set per turn of the input at the rated input torque.
    pub damage_per_turn: [f64; MAX_SETS],
}

/// A checked unit, reduced to the constants of a row.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenPlan {
    pub(super) gears: [PlannedGear; MAX_SCREEN_GEARS],
    pub(super) gear_count: u32,
    pub(super) rated_input_nm: f64,
    pub(super) rated_output_nm: f64,
    pub(super) per_input_nm: f64,
    pub(super) per_output_nm: f64,
    pub(super) limits: ScreenLimits,
    pub(super) slope: f64,
    pub(super) greatest_use: f64,
    pub(super) fluid: ScreenFluid,
    pub(super) per_halving_k: f64,
    pub(super) point_speed: [f64; MAX_SCREEN_POINTS],
    pub(super) point_torque: [f64; MAX_SCREEN_POINTS],
    pub(super) point_slope: [f64; MAX_SCREEN_POINTS],
    pub(super) point_count: u32,
    pub(super) output_rpm_per_km_h: f64,
}

/// No pack: it holds without end, and is never the weakest.
const UNPLANNED_HOLDING: PlannedHolding =
    PlannedHolding { element: 0, share: 0.0, per_kpa_nm: 0.0, per_rpm2_nm: 0.0, held_back_nm: f64::NEG_INFINITY };

/// No gear: no speeds are in its band.
pub(super) const UNPLANNED_GEAR: PlannedGear = PlannedGear {
    number: 0.0,
    direction: 0.0,
    band_low: f64::INFINITY,
    band_high: 0.0,
    drive_factor: 0.0,
    coast_factor: 0.0,
    drive_loss: 0.0,
    coast_loss: 0.0,
    holding: [UNPLANNED_HOLDING; MAX_SCREEN_HOLDING],
    holding_count: 0,
    damage_per_turn: [0.0; MAX_SETS],
};

impl ScreenPlan {
    /// Gives each gear its band: its ratio and the tolerance, ended half way (geometrically) to the next gear of its direction.
    pub(super) fn band_gears(&mut self) -> Result<()> {
        let tolerance = 1.0 + self.limits.ratio_tolerance;
        let count = self.gear_count as usize;
        let ratios: [(f64, f64); MAX_SCREEN_GEARS] = self.gears.map(|gear| (gear.direction, gear.band_low));
        for (place, gear) in self.gears.iter_mut().enumerate().take(count) {
            let size = gear.band_low;
            let others = ratios
                .iter()
                .enumerate()
                .take(count)
                .filter(|&(other, &(direction, _))| other != place && direction * gear.direction > 0.0);
            let (mut low, mut high) = (size / tolerance, size * tolerance);
            for (_, &(_, other)) in others {
                let border = sqrt(size * other);
                if abs(size - other) <= 1e-9 * size {
                    return Err(Error::Inconsistent {
                        name: "gears",
                        why: "two gears of one direction have the same ratio: no speeds can tell them apart; give one of them",
                    });
                }
                if other < size {
                    low = if border > low { border } else { low };
                } else {
                    high = if border < high { border } else { high };
                }
            }
            gear.band_low = low;
            gear.band_high = high;
        }
        Ok(())
    }

    pub(super) fn take_converter(&mut self, converter: &ScreenConverter) -> Result<()> {
        let count = converter.count as usize;
        if count == 0 {
            return Ok(());
        }
        if !(2..=MAX_SCREEN_POINTS).contains(&count) {
            let high = MAX_SCREEN_POINTS as u32;
            return Err(Error::Count { name: "speed_ratio", count: converter.count, low: 2, high });
        }
        let points = converter.speed_ratio.iter().zip(&converter.torque_ratio).take(count);
        let mut before: Option<(f64, f64)> = None;
        let to = self.point_speed.iter_mut().zip(&mut self.point_torque).zip(&mut self.point_slope);
        let mut slopes = [0.0; MAX_SCREEN_POINTS];
        for (((to_speed, to_torque), _), (&speed, &torque)) in to.zip(points.clone()) {
            *to_speed = within("speed_ratio", speed, 0.0, 1.0)?;
            *to_torque = within("torque_ratio", torque, 0.0, 5.0)?;
            before = match before {
                Some((last, _)) if speed <= last => {
                    return Err(Error::Inconsistent {
                        name: "speed_ratio",
                        why: "the points do not rise; give them in the order of rising speed ratio",
                    });
                }
                _ => Some((speed, torque)),
            };
        }
        for ((slope, (&x0, &y0)), (&x1, &y1)) in slopes.iter_mut().zip(points.clone()).zip(points.skip(1)) {
            *slope = (y1 - y0) / (x1 - x0);
        }
        self.point_slope = slopes;
        self.point_count = converter.count;
        Ok(())
    }

    /// Rated input torque, N·m.
    #[must_use]
    pub fn rated_input_nm(&self) -> f64 {
        self.rated_input_nm
    }

    /// Rated output torque, N·m.
    #[must_use]
    pub fn rated_output_nm(&self) -> f64 {
        self.rated_output_nm
    }

    /// Number of gears.
    #[must_use]
    pub fn gear_count(&self) -> usize {
        self.gear_count as usize
    }

    /// Damage of each set per turn of the input at the rated torque, in the gear at a place.
    #[must_use]
    pub fn damage_per_turn(&self, gear: i8) -> [f64; MAX_SETS] {
        self.gear_at(gear).map_or([0.0; MAX_SETS], |gear| gear.damage_per_turn)
    }

    /// Share of its life that the fluid loses per second at the reference temperature; 0 where that is not counted.
    #[must_use]
    pub fn life_per_aged_s(&self) -> f64 {
        if self.fluid.life_h > 0.0 { 1.0 / (3600.0 * self.fluid.life_h) } else { 0.0 }
    }

    pub(super) fn gear_at(&self, place: i8) -> Option<&PlannedGear> {
        self.gears.get(..self.gear_count as usize)?.get(usize::try_from(place).ok()?)
    }

    /// Input torque, without sign, over rated.
    #[inline(always)]
    pub(super) fn input_share(&self, size_nm: f64) -> f64 {
        size_nm * self.per_input_nm
    }

    /// Output torque, without sign, over rated.
    #[inline(always)]
    pub(super) fn output_share(&self, size_nm: f64) -> f64 {
        size_nm * self.per_output_nm
    }

    /// The section of the converter's line before its first point.
    #[inline(always)]
    pub(super) fn first_section(&self) -> (f64, f64, f64) {
        let ([speed_ratio, ..], [torque_ratio, ..]) = (self.point_speed, self.point_torque);
        (speed_ratio, torque_ratio, 0.0)
    }

    /// The points of the converter's line by four, each with the slope after it; the last are filled up with such as no speed
    /// ratio reaches.
    #[inline(always)]
    pub(super) fn points_by_four(&self) -> impl Iterator<Item = [(f64, f64, f64); 4]> {
        let count = (self.point_count as usize).div_ceil(4);
        let (speeds, _) = self.point_speed.as_chunks();
        let (ratios, _) = self.point_torque.as_chunks();
        let (slopes, _) = self.point_slope.as_chunks();
        speeds.iter().zip(ratios).zip(slopes).take(count).map(|((speeds, ratios), slopes)| {
            let (&[x0, x1, x2, x3], &[y0, y1, y2, y3], &[s0, s1, s2, s3]) = (speeds, ratios, slopes);
            [(x0, y0, s0), (x1, y1, s1), (x2, y2, s2), (x3, y3, s3)]
        })
    }

    /// (input torque over rated) to the slope.
    #[inline(always)]
    pub(super) fn severity(&self, share: f64) -> f64 {
        power(share, self.slope)
    }

    /// The exponent of two that is the severity.
    #[inline(always)]
    pub(super) fn exponent(&self, share: f64) -> f64 {
        exponent_of_two(share, self.slope)
    }
}
