//! Load and speed of a plain bushing.

use core::f64::consts::PI;

use super::clearance::diameter;
use crate::card::{self, Card, symbol};
use crate::error::{Result, within};
use crate::real::abs;

pub(super) const BUSHING_LOAD: Card = Card {
    id: "fit.bushing_load",
    purpose: "Unit load, sliding speed and their product for a plain bushing",
    equation: "P = W/(d L), v = π d n/60 000, pv = P v",
    symbols: &[
        symbol("P", "unit_load_mpa", "MPa"),
        symbol("W", "force_n", "N"),
        symbol("d, L", "diameter_mm, length_mm", "mm"),
        symbol("v", "sliding_m_s", "m/s"),
        symbol("n", "speed_rpm, of shaft against bushing", "1/min"),
        symbol("pv", "pv_mpa_m_s", "MPa·m/s"),
    ],
    range: "load spread over the projected area. Catalogue limits of pv are for dry or oil-soaked bushings, not for one fed with oil under pressure",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 12, boundary-lubricated bearings",
};

/// Load and speed of a plain bushing.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BushingLoad {
    /// Load over the projected area, MPa.
    pub unit_load_mpa: f64,
    /// Speed at which the surfaces slide, m/s.
    pub sliding_m_s: f64,
    /// Product of the two, MPa·m/s.
    pub pv_mpa_m_s: f64,
}

/// Unit load, sliding speed and their product for a plain bushing.
///
/// P = W/(d L), v = π d n/60 000, pv = P v
///
/// * `force_n` — W, 0 to 1e7 N; `diameter_mm`, `length_mm` — d and L of the contact; `speed_rpm` — n of the shaft *against* the
///   bushing: where both turn, the difference; any sign
/// * returns [`BushingLoad`], no verdict: hold it against the data of the bushing's maker
/// * errors: [`Error::NotPositive`](crate::Error::NotPositive), [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// Source: Shigley, chapter 12 (from memory). Example (a textbook exercise): 85 lbf on a bushing of 3/4 × 3/4 in at 200 rpm has
/// 151 psi and 39.3 ft/min.
///
/// ```
/// use trainwright::fit::bushing_load;
/// use trainwright::units::{in_to_mm, kpa_to_psi, lbf_to_n};
/// let load = bushing_load(lbf_to_n(85.0), in_to_mm(0.75), in_to_mm(0.75), 200.0)?;
/// assert!((kpa_to_psi(load.unit_load_mpa * 1000.0) - 151.1).abs() < 0.05);
/// assert!((load.sliding_m_s / 0.3048 * 60.0 - 39.27).abs() < 0.005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn bushing_load(force_n: f64, diameter_mm: f64, length_mm: f64, speed_rpm: f64) -> Result<BushingLoad> {
    let area_mm2 = diameter("diameter_mm", diameter_mm)? * diameter("length_mm", length_mm)?;
    let unit_load_mpa = within("force_n", force_n, 0.0, 1e7)? / area_mm2;
    let sliding_m_s = PI * diameter_mm * abs(within("speed_rpm", speed_rpm, -1e6, 1e6)?) / 60_000.0;
    Ok(BushingLoad { unit_load_mpa, sliding_m_s, pv_mpa_m_s: unit_load_mpa * sliding_m_s })
}
