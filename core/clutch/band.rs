//! Bands on a drum and the servo that pulls them.

use core::f64::consts::PI;

use super::capacity::{friction_in_range, pressure_in_range};
use super::pack::Annulus;
use crate::card::{self, Card, symbol};
use crate::error::{Result, finite, positive, within};
use crate::real::exp_m1;

pub(super) const TORQUE: Card = Card {
    id: "clutch.energized",
    purpose: "Torque that a band holds, by the way the drum pulls",
    equation: "T_tight/T_slack = e^{μ θ}; self-energized M = F (e^{μ θ} − 1) r, de-energized M = F (1 − e^{−μ θ}) r",
    symbols: &[
        symbol("M", "torque_nm", "N·m"),
        symbol("F", "servo_force_n, at the pulled end", "N"),
        symbol("μ", "friction", "1"),
        symbol("θ", "wrap_deg; of a double wrap the sum of both turns", "rad in the equation"),
        symbol("r", "drum_radius_mm", "mm"),
    ],
    range: "flexible band, the other end anchored, friction the same along the wrap",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 16, band-type clutches and brakes",
};

/// A band around a drum.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Radius of the drum, mm.
    pub drum_radius_mm: f64,
    /// Width of the lining, mm.
    pub width_mm: f64,
    /// Angle of contact, degrees, above 0 to 1080; of a double wrap the sum of both turns.
    pub wrap_deg: f64,
}

/// What a band does under a servo force.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BandTorque {
    /// Tight over slack tension.
    pub tension_ratio: f64,
    /// Tension at the tight end, N.
    pub tight_n: f64,
    /// Tension at the slack end, N.
    pub slack_n: f64,
    /// Highest pressure on the lining, MPa: at the tight end.
    pub lining_peak_mpa: f64,
    /// Torque, N·m. Not a rating.
    pub torque_nm: f64,
    /// Change of torque per unit of friction, N·m: a self-energized band multiplies every change of friction.
    pub nm_per_friction: f64,
}

impl Band {
    /// Torque while the drum pulls the band away from the servo, toward the anchor: the servo is at the slack end.
    ///
    /// M = F (e^{μ θ} − 1) r
    ///
    /// * `servo_force_n` — F, 0 or more; `friction` — above 0 to 1
    /// * returns [`BandTorque`]
    /// * errors: [`crate::Error::OutOfRange`], [`crate::Error::NotPositive`], [`crate::Error::NotFinite`]
    ///
    /// Source: Shigley, chapter 16 (from memory). Example: 3000 N, 330°, μ = 0.12, r = 75 mm: 224.1023 N·m by
    /// integration of dT/T = μ dθ.
    ///
    /// ```
    /// use trainwright::clutch::Band;
    /// let band = Band { drum_radius_mm: 75.0, width_mm: 40.0, wrap_deg: 330.0 };
    /// assert!((band.energized(3000.0, 0.12)?.torque_nm - 224.1023).abs() < 0.0005);
    /// assert!((band.deenergized(3000.0, 0.12)?.torque_nm - 112.2751).abs() < 0.0005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn energized(self, servo_force_n: f64, friction: f64) -> Result<BandTorque> {
        let (force, growth) = self.growth(servo_force_n, friction)?;
        let tight_n = force * (growth + 1.0);
        Ok(self.torque(tight_n, force, growth, self.wrap_rad() * tight_n))
    }

    /// Torque while the drum pulls the band toward the servo: the servo is at the tight end.
    ///
    /// M = F (1 − e^{−μ θ}) r
    ///
    /// * inputs, result and errors: as [`Band::energized`]
    ///
    /// Source: Shigley, chapter 16 (from memory). Example: 2500 N, 225°, μ = 0.25, r = 200 mm: slack end 936.3 N,
    /// 312.7 N·m (a textbook exercise).
    ///
    /// ```
    /// use trainwright::clutch::Band;
    /// let band = Band { drum_radius_mm: 200.0, width_mm: 60.0, wrap_deg: 225.0 }.deenergized(2500.0, 0.25)?;
    /// assert!((band.slack_n - 936.3).abs() < 0.5 && (band.torque_nm - 312.74).abs() < 0.1);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn deenergized(self, servo_force_n: f64, friction: f64) -> Result<BandTorque> {
        let (force, growth) = self.growth(servo_force_n, friction)?;
        let slack_n = force / (growth + 1.0);
        Ok(self.torque(force, slack_n, growth, self.wrap_rad() * slack_n))
    }

    /// The checked force, and e^{μ θ} − 1.
    fn growth(self, servo_force_n: f64, friction: f64) -> Result<(f64, f64)> {
        positive("drum_radius_mm", self.drum_radius_mm)?;
        positive("width_mm", self.width_mm)?;
        within("wrap_deg", positive("wrap_deg", self.wrap_deg)?, 0.0, 1080.0)?;
        let force = within("servo_force_n", servo_force_n, 0.0, 1e9)?;
        Ok((force, exp_m1(friction_in_range(friction)? * self.wrap_rad())))
    }

    fn wrap_rad(self) -> f64 {
        self.wrap_deg * (PI / 180.0)
    }

    fn torque(self, tight_n: f64, slack_n: f64, growth: f64, n_per_friction: f64) -> BandTorque {
        BandTorque {
            tension_ratio: growth + 1.0,
            tight_n,
            slack_n,
            lining_peak_mpa: tight_n / (self.drum_radius_mm * self.width_mm),
            torque_nm: (tight_n - slack_n) * self.drum_radius_mm * 1e-3,
            nm_per_friction: n_per_friction * self.drum_radius_mm * 1e-3,
        }
    }
}

/// The servo of a band.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Servo {
    /// Face under apply pressure; inner radius 0 for a plain piston.
    pub piston: Annulus,
    /// Return-spring force with the band applied, N.
    pub return_spring_n: f64,
    /// Band force over piston force: the lever, 1 without one.
    pub lever_ratio: f64,
}

impl Servo {
    /// Force at the end of the band.
    ///
    /// F = i (p A − F_spring), 0 at least
    ///
    /// * `pressure_kpa` — gauge pressure, 0 or more
    /// * returns F, N
    /// * errors: as [`Annulus::new`]; [`crate::Error::NotPositive`] for the lever
    ///
    /// Source: balance of forces.
    pub fn servo_force_n(self, pressure_kpa: f64) -> Result<f64> {
        let apply_n = pressure_in_range(pressure_kpa)? * 1e-3 * self.piston.checked("piston")?.area_mm2()?;
        let spring_n = within("return_spring_n", self.return_spring_n, 0.0, 1e9)?;
        Ok(positive("lever_ratio", finite("lever_ratio", self.lever_ratio)?)? * (apply_n - spring_n).max(0.0))
    }
}
