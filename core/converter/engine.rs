//! Torque of an engine against its speed.

use super::table::{Curve, CurveNames, TABLE_POINTS, fixed};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};

pub(super) const TORQUE_AT: Card = Card {
    id: "converter.torque_at_nm",
    purpose: "Torque of an engine at a speed, from its curve",
    equation: "T = T_i + (n − n_i)·(T_j − T_i)/(n_j − n_i)",
    symbols: &[
        symbol("T", "result", "N·m"),
        symbol("n", "speed_rpm", "1/min"),
        symbol("n_i, T_i", "the point of the curve below", "1/min, N·m"),
        symbol("n_j, T_j", "the point above", "1/min, N·m"),
    ],
    range: "from the first to the last point of the curve: beyond them the curve says nothing",
    source: &card::DEFINITION,
    locator: "straight line between two points",
};

/// Torque of an engine against its speed, straight between the points. [`EngineCurve::from_table`] makes a checked one.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineCurve {
    /// Points in use, 2 to 32.
    pub points: u32,
    /// Speeds, 1/min, rising.
    pub speed_rpm: [f64; TABLE_POINTS],
    /// Torque at each speed, N·m, 0 or more: at the flywheel, full throttle, accessories of the curve's test taken off.
    pub torque_nm: [f64; TABLE_POINTS],
    /// Greatest speed, 1/min: where its governor or cut-off acts; not below the last point.
    pub max_rpm: f64,
}

impl EngineCurve {
    /// A curve from its points.
    ///
    /// * `speed_rpm` — 2 to 32 speeds, 0 or more, rising; `torque_nm` — as many torques, 0 or more; `max_rpm` — not below the
    ///   last speed
    /// * errors: [`Error::Count`], [`Error::Inconsistent`], [`Error::NotFinite`], [`Error::OutOfRange`], [`Error::NotPositive`]
    ///
    /// ```
    /// let engine = trainwright::converter::EngineCurve::from_table(&[1000.0, 2000.0], &[300.0, 400.0], 5000.0)?;
    /// assert_eq!(engine.torque_at_nm(1250.0)?, 325.0);
    /// assert!(engine.torque_at_nm(2500.0).is_err()); // the curve says nothing there
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn from_table(speed_rpm: &[f64], torque_nm: &[f64], max_rpm: f64) -> Result<Self> {
        let points = speed_rpm.len();
        let engine = Self {
            points: u32::try_from(points).unwrap_or(u32::MAX),
            speed_rpm: fixed("speed_rpm", speed_rpm, points)?,
            torque_nm: fixed("torque_nm", torque_nm, points)?,
            max_rpm,
        };
        engine.check_engine_curve()?;
        Ok(engine)
    }

    /// Whether the curve can be used: see [`EngineCurve::from_table`].
    pub fn check_engine_curve(&self) -> Result<()> {
        self.curve().check(CurveNames { points: "points of the engine curve", x: "speed_rpm", y: "torque_nm" })?;
        for line in self.curve().lines() {
            within("speed_rpm", line.x0, 0.0, 1e5)?;
            within("speed_rpm", line.x1, 0.0, 1e5)?;
            within("torque_nm", line.y0, 0.0, 1e6)?;
            within("torque_nm", line.y1, 0.0, 1e6)?;
        }
        let (_, last) = self.curve().span();
        if positive("max_rpm", self.max_rpm)? < last {
            return Err(Error::Inconsistent {
                name: "max_rpm",
                why: "the curve goes on beyond it; raise it, or leave out the points above it",
            });
        }
        Ok(())
    }

    /// Torque at a speed, N·m, straight between the points.
    ///
    /// T = T_i + (n − n_i)·(T_j − T_i)/(n_j − n_i)
    ///
    /// * `speed_rpm` — n, from the first to the last point
    /// * returns T, N·m
    /// * errors: [`Error::OutOfRange`] where the curve says nothing, with its ends: give a curve that covers the speed;
    ///   [`Error::NotFinite`]
    ///
    /// Source: straight line between two points (derived).
    pub fn torque_at_nm(&self, speed_rpm: f64) -> Result<f64> {
        self.curve().at("speed_rpm", speed_rpm)
    }

    pub(super) fn curve(&self) -> Curve<'_> {
        Curve { points: self.points, x: &self.speed_rpm, y: &self.torque_nm }
    }
}
