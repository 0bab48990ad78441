//! Splines: bearing and shear stress, with the share of the teeth that carry as an input.

use core::f64::consts::PI;

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::abs;

pub(super) const SPLINE_LOAD: Card = Card {
    id: "hold.spline_load",
    purpose: "Bearing and shear stress of the teeth of a spline under torque",
    equation: "σ = T/(s N h L r_m), τ = T/(s N t L d/2), h = (D_a − D_i)/2, r_m = (D_a + D_i)/4, t = π d/(2 N)",
    symbols: &[
        symbol("σ", "bearing_mpa, on the flanks", "MPa"),
        symbol("τ", "shear_mpa, through the teeth at the pitch circle", "MPa"),
        symbol("T", "torque_nm", "N·m"),
        symbol("s", "carrying_share, of the teeth, chosen", "1"),
        symbol("N", "teeth", "1"),
        symbol("h, r_m", "height_mm, mean_radius_mm", "mm"),
        symbol("L", "length_mm, in contact", "mm"),
        symbol("t", "thickness_mm", "mm"),
        symbol("d", "pitch_diameter_mm", "mm"),
        symbol("D_a, D_i", "major_mm, minor_mm, between which the teeth touch", "mm"),
    ],
    range: "load even along the length; the share of teeth that carry is common practice (half), wear and fretting not counted",
    source: &card::DEFINITION,
    locator: "force over the area of the flanks, and of the teeth at the pitch circle",
};

/// A splined joint.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spline {
    /// Teeth, 4 to 200.
    pub teeth: u32,
    /// Outer diameter of the contact, mm: the smaller of the shaft's outside and the hub's root.
    pub major_mm: f64,
    /// Inner diameter of the contact, mm: the larger of the hub's bore and the shaft's root.
    pub minor_mm: f64,
    /// Pitch diameter, mm.
    pub pitch_diameter_mm: f64,
    /// Length in contact, mm.
    pub length_mm: f64,
}

/// Load of a spline.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SplineLoad {
    /// Height of contact, mm.
    pub height_mm: f64,
    /// Radius at which the flanks carry, mm.
    pub mean_radius_mm: f64,
    /// Thickness of a tooth at the pitch circle, mm.
    pub thickness_mm: f64,
    /// Force on each tooth that carries, N.
    pub tooth_n: f64,
    /// Pressure on the flanks, MPa.
    pub bearing_mpa: f64,
    /// Mean shear stress through the teeth, MPa.
    pub shear_mpa: f64,
}

impl Spline {
    /// Bearing and shear stress under a torque.
    ///
    /// σ = T/(s N h L r_m), τ = T/(s N t L d/2), h = (D_a − D_i)/2, r_m = (D_a + D_i)/4, t = π d/(2 N)
    ///
    /// * `torque_nm` — T, any sign; `carrying_share` — s, above 0 to 1: pitch errors keep some teeth from touching
    /// * returns [`SplineLoad`]
    /// * errors: [`Error::Count`] for the teeth, [`Error::NotPositive`], [`Error::OutOfRange`], [`Error::Reversed`] for a minor
    ///   diameter not below the major one; a pitch circle outside the contact is out of range
    ///
    /// Source: definitions; that half of the teeth carry is common practice, no source. Example (computed independently):
    /// 24 teeth, 31.25/28.75 mm, 22 mm long, under 600 N·m with half of the teeth: 121.2 and 77.2 MPa.
    ///
    /// ```
    /// use trainwright::hold::Spline;
    /// let spline = Spline { teeth: 24, major_mm: 31.25, minor_mm: 28.75, pitch_diameter_mm: 30.0, length_mm: 22.0 };
    /// let load = spline.spline_load(600.0, 0.5)?;
    /// assert!((load.bearing_mpa - 121.21).abs() < 0.005);
    /// assert!((load.shear_mpa - 77.17).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    #[inline]
    pub fn spline_load(self, torque_nm: f64, carrying_share: f64) -> Result<SplineLoad> {
        let Self { teeth, major_mm, minor_mm, pitch_diameter_mm, length_mm } = self;
        if !(4..=200).contains(&teeth) {
            return Err(Error::Count { name: "teeth", count: teeth, low: 4, high: 200 });
        }
        for (name, size) in [("major_mm", major_mm), ("minor_mm", minor_mm), ("length_mm", length_mm)] {
            within(name, positive(name, size)?, 0.0, 1e4)?;
        }
        if minor_mm >= major_mm {
            return Err(Error::Reversed { name: "minor_mm, major_mm", lower: minor_mm, upper: major_mm });
        }
        within("pitch_diameter_mm", pitch_diameter_mm, minor_mm, major_mm)?;
        let share = within("carrying_share", positive("carrying_share", carrying_share)?, 0.0, 1.0)?;
        let torque_nmm = abs(within("torque_nm", torque_nm, -1e7, 1e7)?) * 1e3;
        let carrying = share * f64::from(teeth);
        let (height_mm, mean_radius_mm) = (0.5 * (major_mm - minor_mm), 0.25 * (major_mm + minor_mm));
        let thickness_mm = PI * pitch_diameter_mm / (2.0 * f64::from(teeth));
        let tooth_n = torque_nmm / (carrying * mean_radius_mm);
        Ok(SplineLoad {
            height_mm,
            mean_radius_mm,
            thickness_mm,
            tooth_n,
            bearing_mpa: tooth_n / (height_mm * length_mm),
            shear_mpa: torque_nmm / (carrying * thickness_mm * length_mm * 0.5 * pitch_diameter_mm),
        })
    }
}
