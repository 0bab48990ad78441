//! Thrust washers: unit load, sliding speed and their product.

use core::f64::consts::PI;

use super::rating_life::load_in_range;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::abs;

pub(super) const WASHER_LOAD: Card = Card {
    id: "hold.washer_load",
    purpose: "Unit load, sliding speed and their product on the face of a thrust washer",
    equation: "p = F/(s π/4 (D² − d²)), v = π n (D + d)/2",
    symbols: &[
        symbol("p", "unit_load_mpa", "MPa"),
        symbol("F", "load_n", "N"),
        symbol("D, d", "outside_mm, inside_mm, of the face that bears", "mm"),
        symbol("s", "face_share, what grooves and holes leave of the face", "1"),
        symbol("v", "sliding_m_s, at the mean diameter", "m/s"),
        symbol("n", "speed_rpm, of one side against the other", "1/min"),
    ],
    range: "load spread evenly. Published limits of the product are for dry running and do not hold for a washer fed with oil",
    source: &card::DEFINITION,
    locator: "force over area; speed of the middle of the face",
};

/// A thrust washer.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThrustWasher {
    /// Outside diameter of the face that bears, mm.
    pub outside_mm: f64,
    /// Inside diameter of the face that bears, mm.
    pub inside_mm: f64,
    /// Share of that face that grooves and holes leave, above 0 to 1.
    pub face_share: f64,
}

/// Load on the face of a thrust washer.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WasherLoad {
    /// Face that bears, mm².
    pub area_mm2: f64,
    /// Mean pressure on it, MPa.
    pub unit_load_mpa: f64,
    /// Diameter at which the sliding speed is taken, mm.
    pub mean_diameter_mm: f64,
    /// Sliding speed there, m/s.
    pub sliding_m_s: f64,
    /// Pressure times sliding speed, MPa·m/s.
    pub pv_mpa_m_s: f64,
}

impl ThrustWasher {
    /// Unit load, sliding speed at the mean diameter, and their product.
    ///
    /// p = F/(s π/4 (D² − d²)), v = π n (D + d)/2
    ///
    /// * `load_n` — F, above 0; `speed_rpm` — n, any sign
    /// * returns [`WasherLoad`]; no limit: published ones are for dry running
    /// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]; [`Error::Reversed`] for an inside not below the outside
    ///
    /// Source: definitions. Example (computed independently with pint): 3500 N on 62/42 mm at 1500 1/min is 2.142 MPa at
    /// 4.084 m/s.
    ///
    /// ```
    /// use trainwright::hold::ThrustWasher;
    /// let washer = ThrustWasher { outside_mm: 62.0, inside_mm: 42.0, face_share: 1.0 };
    /// let load = washer.washer_load(3500.0, 1500.0)?;
    /// assert!((load.unit_load_mpa - 2.14247).abs() < 5e-6);
    /// assert!((load.pv_mpa_m_s - 8.75).abs() < 1e-6);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    #[inline]
    pub fn washer_load(self, load_n: f64, speed_rpm: f64) -> Result<WasherLoad> {
        let Self { outside_mm, inside_mm, face_share } = self;
        let (inside_mm, outside_mm) = bore_in_outside(inside_mm, outside_mm)?;
        let share = within("face_share", positive("face_share", face_share)?, 0.0, 1.0)?;
        let load_n = load_in_range(load_n)?;
        let speed = abs(within("speed_rpm", speed_rpm, -1e6, 1e6)?);
        let area_mm2 = share * PI / 4.0 * (outside_mm * outside_mm - inside_mm * inside_mm);
        let mean_diameter_mm = 0.5 * (outside_mm + inside_mm);
        let (unit_load_mpa, sliding_m_s) = (load_n / area_mm2, PI * mean_diameter_mm * speed / 60_000.0);
        Ok(WasherLoad {
            area_mm2,
            unit_load_mpa,
            mean_diameter_mm,
            sliding_m_s,
            pv_mpa_m_s: unit_load_mpa * sliding_m_s,
        })
    }
}

/// Inside and outside diameter, the inside 0 or more and below the outside.
#[inline]
pub(super) fn bore_in_outside(inside_mm: f64, outside_mm: f64) -> Result<(f64, f64)> {
    let outside_mm = within("outside_mm", positive("outside_mm", outside_mm)?, 0.0, 1e4)?;
    let inside_mm = within("inside_mm", inside_mm, 0.0, 1e4)?;
    if inside_mm < outside_mm {
        Ok((inside_mm, outside_mm))
    } else {
        Err(Error::Reversed { name: "inside_mm, outside_mm", lower: inside_mm, upper: outside_mm })
    }
}
