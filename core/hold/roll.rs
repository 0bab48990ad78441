//! How far a vehicle rolls before its park lock catches, what the tires grip, and what a regulation allows.

use core::f64::consts::PI;

use super::park::ParkGear;
use super::park_load::{Parked, slope_of};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::Limits;
use crate::real::{cos, sqrt};
use crate::road::Driveline;
use crate::units::GRAVITY_M_S2;

pub(super) const FREE_ROLL: Card = Card {
    id: "hold.free_roll",
    purpose: "How far a vehicle rolls before the pawl drops in, and the energy that the drive line then stops",
    equation: "x = U/(z·i_A·i_V), E = m·g·sin θ·x, v = √(2·E/m)",
    symbols: &[
        symbol("x, E, v", "roll_mm, energy_j, speed_km_h", "mm, J, km/h"),
        symbol("U, i_A, i_V", "driveline.circumference_mm, driveline.axle_ratio, driveline.transfer_ratio", "mm, 1, 1"),
        symbol("z", "teeth", "1"),
        symbol("m, θ", "mass_kg, grade_deg", "kg, °"),
    ],
    range: "worst case: a whole tooth from rest, pawl on a tooth, no rolling resistance; lash of the drive line and wind-up of tires come on top",
    source: &card::DEFINITION,
    locator: "one tooth pitch at the road",
};

pub(super) const WINDOW: Card = Card {
    id: "hold.window_deg",
    purpose: "Angle that the park gear turns while the pawl can drop in",
    equation: "window = 2·(space − tip)/D_c",
    symbols: &[
        symbol("window", "result", "° (rad in the equation)"),
        symbol("space, tip", "space_mm, pawl_tip_mm", "mm"),
        symbol("D_c", "contact_diameter_mm", "mm"),
    ],
    range: "both widths measured along the contact diameter",
    source: &card::DEFINITION,
    locator: "arc over radius",
};

pub(super) const GRIP: Card = Card {
    id: "hold.grip_nm",
    purpose: "Torque at the park gear at which the tires of the locked axle slide",
    equation: "T = μ_t·m_A·g·cos θ·r/(i_A·i_V)",
    symbols: &[
        symbol("T", "result", "N·m"),
        symbol("μ_t", "tire_friction", "1"),
        symbol("m_A", "axle_load_kg", "kg"),
        symbol("θ", "grade", "°"),
        symbol("r, i_A, i_V", "circumference over 2 π, driveline.axle_ratio, driveline.transfer_ratio", "mm, 1, 1"),
    ],
    range: "both wheels on the same ground: through a differential the side with less grip decides; the grade also shifts load off the upper axle",
    source: &card::DEFINITION,
    locator: "friction of a locked axle",
};

pub(super) const ROLL_LIMIT: Card = Card {
    id: "hold.roll_limits_49_cfr_571_114",
    purpose: "How far a light vehicle may move in Park on a 10 % grade in the United States",
    equation: "movement ≤ 150 mm on 10 %",
    symbols: &[symbol("movement", "the limits", "mm")],
    range: "vehicles of 4536 kg (10 000 lb) or less that the standard covers, at its own test; not with a trailer, and no limit for the park gear",
    source: &card::PARK_MOVEMENT,
    locator: "571.114, rollaway test",
};

/// What happens before the pawl drops in.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeRoll {
    /// Road that one tooth of the park gear is, mm: the vehicle rolls no farther before the pawl drops in.
    pub roll_mm: f64,
    /// Energy of the vehicle by then, J.
    pub energy_j: f64,
    /// Its speed by then, km/h.
    pub speed_km_h: f64,
}

impl ParkGear {
    /// How far the vehicle rolls before the pawl drops in at the latest, and the energy that the drive line then stops.
    ///
    /// x = U/(z·i_A·i_V), E = m·g·sin θ·x, v = √(2·E/m)
    ///
    /// * `parked` — its rocking factor is not used
    /// * returns [`FreeRoll`]
    /// * errors: as [`super::park_load`]
    ///
    /// Source: one tooth at the road (derived). Example: 24 teeth, axle 3.92, 2561.18 mm: 27.2 mm; 18 teeth a third more.
    ///
    /// ```
    /// # use trainwright::{hold::{ParkGear, Parked}, judge::Reading, road::Driveline};
    /// let gear = |teeth| ParkGear {
    ///     teeth, face_mm: 15.0, tooth_root_mm: 9.6, contact_diameter_mm: 132.0, root_diameter_mm: 118.0, tip_diameter_mm: 140.0,
    /// };
    /// let parked = Parked {
    ///     mass_kg: Reading::exact(11_160.0)?, grade_pct: 20.0, rocking_factor: 1.0,
    ///     driveline: Driveline::new(3.92, 1.0, Reading::exact(2561.182_154)?)?,
    /// };
    /// assert!((gear(24).free_roll(parked)?.roll_mm - 27.223_45).abs() < 1e-5);
    /// assert!((gear(18).free_roll(parked)?.energy_j - 779.1).abs() < 0.1);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn free_roll(self, parked: Parked) -> Result<FreeRoll> {
        let gear = self.checked()?;
        let mass_kg = parked.mass_kg.value;
        let grade_n = parked.load()?.grade_n;
        let Driveline { axle_ratio, transfer_ratio, circumference_mm } = parked.driveline;
        let roll_mm = circumference_mm.value / (f64::from(gear.teeth) * axle_ratio * transfer_ratio);
        let energy_j = grade_n * roll_mm * 1e-3;
        Ok(FreeRoll { roll_mm, energy_j, speed_km_h: 3.6 * sqrt(2.0 * energy_j / mass_kg) })
    }

    /// Angle that the gear turns while the pawl can drop in, degrees.
    ///
    /// window = 2·(space − tip)/D_c
    ///
    /// * `space_mm` — width between two teeth, above that of the pawl; `pawl_tip_mm` — width of the pawl, above 0; both
    ///   along the contact diameter
    /// * errors: as [`ParkGear::checked`]; [`Error::Inconsistent`] for a pawl that does not fit between the teeth
    ///
    /// Source: arc over radius (derived).
    pub fn window_deg(self, space_mm: f64, pawl_tip_mm: f64) -> Result<f64> {
        let gear = self.checked()?;
        if positive("space_mm", space_mm)? <= positive("pawl_tip_mm", pawl_tip_mm)? {
            return Err(Error::Inconsistent {
                name: "pawl_tip_mm",
                why: "the pawl is as wide as the space between two teeth or wider and never drops in; measure both along the contact diameter",
            });
        }
        let pitch_mm = PI * gear.contact_diameter_mm / f64::from(gear.teeth);
        within("space_mm", space_mm, 0.0, pitch_mm)?;
        Ok((space_mm - pawl_tip_mm) / gear.contact_radius_mm() * 180.0 / PI)
    }
}

/// Torque at the park gear at which the tires of the locked axle slide, N·m: more than that the ground does not put on it.
///
/// T = μ_t·m_A·g·cos θ·r/(i_A·i_V)
///
/// * `driveline`; `axle_load_kg` — m_A on the locked axle, above 0; `grade_pct` — 0 to 100; `tire_friction` — μ_t, above 0 to 1.5
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Below the torque of [`super::park_load`] the vehicle slides down with the park lock engaged, however strong it is.
///
/// Source: friction of a locked axle (derived). Example: 3000 kg on the axle of the vehicle above on 20 %, friction 0.7: 2099.9 N·m.
///
/// ```
/// use trainwright::{hold::grip_nm, judge::Reading, road::Driveline};
/// let line = Driveline::new(3.92, 1.0, Reading::exact(2561.182_154)?)?;
/// assert!((grip_nm(line, 3000.0, 20.0, 0.7)? - 2099.9).abs() < 0.05);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn grip_nm(driveline: Driveline, axle_load_kg: f64, grade_pct: f64, tire_friction: f64) -> Result<f64> {
    let normal_n = positive("axle_load_kg", axle_load_kg)? * GRAVITY_M_S2 * cos(slope_of(grade_pct)?);
    let friction = positive("tire_friction", within("tire_friction", tire_friction, 0.0, 1.5)?)?;
    driveline.output_torque_nm(friction * normal_n, 1.0)
}

/// How far a light vehicle may move in Park on a grade in the United States. For comparison only.
///
/// movement ≤ 150 mm on 10 %
///
/// * `grade_pct` — above 0 to 10: the standard speaks of no steeper one
/// * returns 0 to 150 mm
/// * errors: [`Error::OutOfRange`]
///
/// It covers vehicles of 4536 kg (10 000 lb) or less, at the standard's own test and without a trailer. It says nothing about
/// the strength of the park gear.
///
/// Source: 49 CFR 571.114 (from memory).
///
/// ```
/// assert_eq!(trainwright::hold::roll_limits_49_cfr_571_114(10.0)?.upper, 150.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn roll_limits_49_cfr_571_114(grade_pct: f64) -> Result<Limits> {
    within("grade_pct", grade_pct, 0.0, 10.0)?;
    Limits::between(0.0, 150.0)
}
