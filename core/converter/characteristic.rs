//! Torque ratio and capacity factor of a converter against the speed ratio.

use super::table::{Curve, CurveNames, TABLE_POINTS, fixed};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};

pub(super) const TORQUE_RATIO_AT: Card = Card {
    id: "converter.torque_ratio_at",
    purpose: "Torque ratio of a converter at a speed ratio, from its characteristic",
    equation: "μ = μ_i + (ν − ν_i)·(μ_j − μ_i)/(ν_j − ν_i)",
    symbols: &[
        symbol("μ", "result: turbine torque over impeller torque", "1"),
        symbol("ν", "speed_ratio: turbine speed over impeller speed", "1"),
        symbol("ν_i, μ_i", "the point of the characteristic below", "1"),
        symbol("ν_j, μ_j", "the point above", "1"),
    ],
    range: "from the first to the last point of the characteristic, converter not locked up; refused outside",
    source: &card::CONVERTER_TEST,
    locator: "definitions; straight line between two points",
};

pub(super) const CAPACITY_FACTOR_AT: Card = Card {
    id: "converter.capacity_factor_at",
    purpose: "Capacity factor of a converter at a speed ratio, from its characteristic",
    equation: "K = K_i + (ν − ν_i)·(K_j − K_i)/(ν_j − ν_i)",
    symbols: &[
        symbol("K", "result: impeller speed over the root of impeller torque", "1/min per √(N·m)"),
        symbol("ν", "speed_ratio: turbine speed over impeller speed", "1"),
        symbol("ν_i, K_i", "the point of the characteristic below", "1, 1/min per √(N·m)"),
        symbol("ν_j, K_j", "the point above", "1, 1/min per √(N·m)"),
    ],
    range: "from the first to the last point; nothing is assumed of its slope; refused outside",
    source: &card::CONVERTER_TEST,
    locator: "definitions; straight line between two points",
};

pub(super) const COUPLING_POINT: Card = Card {
    id: "converter.coupling_point",
    purpose: "Speed ratio from which the converter no longer multiplies torque",
    equation: "ν_c: least ν with μ(ν) ≤ 1",
    symbols: &[
        symbol("ν_c", "result", "1"),
        symbol("ν", "speed ratio", "1"),
        symbol("μ", "torque ratio, converter.torque_ratio_at", "1"),
    ],
    range: "refused where the characteristic ends above 1",
    source: &card::CONVERTER_TEST,
    locator: "definitions",
};

/// Characteristic of a torque converter, straight between the points. [`Characteristic::from_table`] makes a checked one.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Characteristic {
    /// Points in use, 2 to 32.
    pub points: u32,
    /// Turbine speed over impeller speed, rising, 0 to 1.
    pub speed_ratio: [f64; TABLE_POINTS],
    /// Turbine torque over impeller torque at each, 0 to 10.
    pub torque_ratio: [f64; TABLE_POINTS],
    /// Capacity factor at each, above 0: impeller speed over the root of impeller torque, 1/min per √(N·m).
    pub k_rpm_per_sqrt_nm: [f64; TABLE_POINTS],
}

impl Characteristic {
    /// A characteristic from its points.
    ///
    /// * `speed_ratio` — 2 to 32, 0 to 1, rising; `torque_ratio` — as many, 0 to 10; `k_rpm_per_sqrt_nm` — as many capacity
    ///   factors of the impeller side, above 0
    /// * errors: [`Error::Count`], [`Error::Inconsistent`], [`Error::NotFinite`], [`Error::NotPositive`], and
    ///   [`Error::OutOfRange`] with the efficiency where more power would come out than goes in
    ///
    /// ```
    /// use trainwright::converter::Characteristic;
    /// let converter = Characteristic::from_table(&[0.0, 0.8, 0.9], &[2.0, 1.1, 1.0], &[70.0, 84.0, 100.0])?;
    /// assert_eq!(converter.torque_ratio_at(0.4)?, 1.55);
    /// assert_eq!(converter.capacity_factor_at(0.4)?, 77.0);
    /// assert!(converter.torque_ratio_at(0.95).is_err()); // the characteristic says nothing there
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn from_table(speed_ratio: &[f64], torque_ratio: &[f64], k_rpm_per_sqrt_nm: &[f64]) -> Result<Self> {
        let points = speed_ratio.len();
        let converter = Self {
            points: u32::try_from(points).unwrap_or(u32::MAX),
            speed_ratio: fixed("speed_ratio", speed_ratio, points)?,
            torque_ratio: fixed("torque_ratio", torque_ratio, points)?,
            k_rpm_per_sqrt_nm: fixed("k_rpm_per_sqrt_nm", k_rpm_per_sqrt_nm, points)?,
        };
        converter.check_characteristic()?;
        Ok(converter)
    }

    /// Whether the characteristic can be one: see [`Characteristic::from_table`]. Speed ratios rise within 0 to 1, torque
    /// ratios are not negative, capacity factors are above 0, and the efficiency, speed ratio × torque ratio, nowhere
    /// exceeds 1: neither at a point nor on the straight line between two.
    pub fn check_characteristic(&self) -> Result<()> {
        let points = "points of the characteristic";
        self.ratios().check(CurveNames { points, x: "speed_ratio", y: "torque_ratio" })?;
        self.capacity().check(CurveNames { points, x: "speed_ratio", y: "k_rpm_per_sqrt_nm" })?;
        for line in self.capacity().lines() {
            positive("k_rpm_per_sqrt_nm", line.y0)?;
            positive("k_rpm_per_sqrt_nm", line.y1)?;
        }
        for line in self.ratios().lines() {
            for (ratio, torque) in [(line.x0, line.y0), (line.x1, line.y1)] {
                within("speed_ratio", ratio, 0.0, 1.0)?;
                within("torque_ratio", torque, 0.0, 10.0)?;
                within("efficiency", ratio * torque, 0.0, 1.0)?;
            }
            // Where the torque ratio falls, ν·μ(ν) has its peak at ν = (ν_i − μ_i/slope)/2.
            let peak = 0.5 * (line.x0 - line.y0 / line.slope());
            if line.slope() < 0.0 && line.x0 < peak && peak < line.x1 && peak * line.at(peak) > 1.0 {
                return Err(Error::Inconsistent {
                    name: "torque_ratio",
                    why: "on the straight line between two points more power would come out than goes in; give more points there",
                });
            }
        }
        Ok(())
    }

    /// Torque ratio at a speed ratio, straight between the points.
    ///
    /// μ = μ_i + (ν − ν_i)·(μ_j − μ_i)/(ν_j − ν_i)
    ///
    /// * `speed_ratio` — ν, from the first to the last point
    /// * returns μ, turbine torque over impeller torque
    /// * errors: [`Error::OutOfRange`] where the characteristic says nothing, with its ends: give one that covers the speed
    ///   ratio; [`Error::NotFinite`]
    ///
    /// Source: SAE J643, definitions (from memory); straight line between two points.
    pub fn torque_ratio_at(&self, speed_ratio: f64) -> Result<f64> {
        self.ratios().at("speed_ratio", speed_ratio)
    }

    /// Capacity factor of the impeller side at a speed ratio, 1/min per √(N·m), straight between the points.
    ///
    /// K = K_i + (ν − ν_i)·(K_j − K_i)/(ν_j − ν_i)
    ///
    /// * `speed_ratio` — ν, from the first to the last point
    /// * returns K
    /// * errors: as [`Characteristic::torque_ratio_at`]
    ///
    /// Source: SAE J643, definitions (from memory); straight line between two points.
    pub fn capacity_factor_at(&self, speed_ratio: f64) -> Result<f64> {
        self.capacity().at("speed_ratio", speed_ratio)
    }

    /// Speed ratio from which the converter no longer multiplies torque.
    ///
    /// ν_c: least ν with μ(ν) ≤ 1
    ///
    /// * returns ν_c
    /// * errors: [`Error::NoAnswer`] where the torque ratio stays above 1 to the last point
    ///
    /// Source: SAE J643, definitions (from memory). Example: a ratio that falls from 1.06 at 0.80 to 1 at 0.87.
    ///
    /// ```
    /// use trainwright::converter::Characteristic;
    /// let converter = Characteristic::from_table(&[0.0, 0.8, 0.87, 0.93], &[1.9, 1.06, 1.0, 1.0], &[71.0, 84.0, 95.0, 128.0])?;
    /// assert_eq!(converter.coupling_point()?, 0.87);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn coupling_point(&self) -> Result<f64> {
        let falls = self.ratios().lines().find(|line| line.y1 <= 1.0 || line.y0 <= 1.0);
        match falls {
            Some(line) if line.y0 <= 1.0 => Ok(line.x0),
            Some(line) if line.y1 < 1.0 => Ok(line.x0 + (1.0 - line.y0) / line.slope()),
            Some(line) => Ok(line.x1),
            None => Err(Error::NoAnswer {
                name: "coupling_point",
                why: "the torque ratio stays above 1 to the last point; give the characteristic up to the coupling point",
            }),
        }
    }

    pub(super) fn ratios(&self) -> Curve<'_> {
        Curve { points: self.points, x: &self.speed_ratio, y: &self.torque_ratio }
    }

    pub(super) fn capacity(&self) -> Curve<'_> {
        Curve { points: self.points, x: &self.speed_ratio, y: &self.k_rpm_per_sqrt_nm }
    }
}
