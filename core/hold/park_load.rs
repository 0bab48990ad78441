//! What acts on a park gear: a vehicle that only the park lock holds on a grade.

use core::f64::consts::PI;

use crate::card::{self, Card, symbol};
use crate::error::{Result, positive, within};
use crate::judge::Reading;
use crate::real::{atan, sin};
use crate::road::Driveline;
use crate::units::GRAVITY_M_S2;

pub(super) const PARK_LOAD: Card = Card {
    id: "hold.park_load",
    purpose: "Torque at the park gear of a vehicle that only the park lock holds on a grade",
    equation: "T = κ·F·r/(i_A·i_V), F = m·g·sin θ, θ = arctan(G/100), r = U/(2·π)",
    symbols: &[
        symbol("F", "grade_n", "N"),
        symbol("m, G", "mass_kg, grade_pct", "kg, %"),
        symbol("θ", "grade_deg", "°"),
        symbol("κ", "rocking_factor", "1"),
        symbol("r, U", "wheel_radius_mm, driveline.circumference_mm", "mm"),
        symbol("i_A, i_V", "driveline.axle_ratio, driveline.transfer_ratio", "1"),
        symbol("T", "torque_nm", "N·m"),
    ],
    range: "no help from rolling resistance, brakes or losses; r is the rolling radius, about 3 % more than the loaded radius of a tire that stands, so T is rather too much",
    source: &card::DEFINITION,
    locator: "equilibrium on a grade",
};

/// What the grade puts on the park lock.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParkLoad {
    /// Angle of the grade, degrees.
    pub grade_deg: f64,
    /// Share of the weight along the grade, N.
    pub grade_n: f64,
    /// Rolling radius of the tires, mm.
    pub wheel_radius_mm: f64,
    /// Torque at the park gear while the vehicle stands still, N·m.
    pub static_nm: f64,
    /// The same times the rocking factor, N·m.
    pub torque_nm: f64,
}

/// A vehicle on a grade that only the park lock holds.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parked {
    /// Mass of truck, load and unbraked trailer, kg.
    pub mass_kg: Reading,
    /// Grade, %: rise over horizontal run, 0 to 100.
    pub grade_pct: f64,
    /// Greatest load while the vehicle rocks over the static load, 1 to 5. No default: whoever judges chooses it.
    pub rocking_factor: f64,
    /// Axle, transfer case and tire.
    pub driveline: Driveline,
}

impl Parked {
    pub(super) fn load(self) -> Result<ParkLoad> {
        park_load(self.driveline, self.mass_kg.value, self.grade_pct, self.rocking_factor)
    }
}

/// Torque at the park gear of a vehicle that only the park lock holds.
///
/// T = κ·F·r/(i_A·i_V), F = m·g·sin θ, θ = arctan(G/100), r = U/(2·π)
///
/// * `driveline` — i_A, i_V and U; `mass_kg` — m of truck, load and unbraked trailer, above 0
/// * `grade_pct` — G, 0 to 100; `rocking_factor` — κ, 1 (standing still) to 5
/// * returns [`ParkLoad`]
/// * errors: [`Error::NotPositive`](crate::Error::NotPositive), [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// r is the rolling radius. A tire that stands has a loaded radius about 3 % smaller, so the torque is rather too much.
///
/// Source: equilibrium on a grade (derived). Example (computed independently for the demonstration): 11 160 kg on 20 %, axle
/// 3.92, rolling circumference 2561.18 mm.
///
/// ```
/// use trainwright::{hold::park_load, judge::Reading, road::Driveline};
/// let line = Driveline::new(3.92, 1.0, Reading::exact(2561.182_154)?)?;
/// let load = park_load(line, 11_160.0, 20.0, 1.0)?;
/// assert!((load.grade_n - 21_463.4).abs() < 0.05 && (load.torque_nm - 2231.9).abs() < 0.1);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn park_load(driveline: Driveline, mass_kg: f64, grade_pct: f64, rocking_factor: f64) -> Result<ParkLoad> {
    let slope = slope_of(grade_pct)?;
    let grade_n = positive("mass_kg", mass_kg)? * GRAVITY_M_S2 * sin(slope);
    let static_nm = driveline.output_torque_nm(grade_n, 1.0)?;
    Ok(ParkLoad {
        grade_deg: slope * 180.0 / PI,
        grade_n,
        wheel_radius_mm: driveline.circumference_mm.value / (2.0 * PI),
        static_nm,
        torque_nm: within("rocking_factor", rocking_factor, 1.0, 5.0)? * static_nm,
    })
}

pub(super) fn slope_of(grade_pct: f64) -> Result<f64> {
    Ok(atan(within("grade_pct", grade_pct, 0.0, 100.0)? / 100.0))
}
