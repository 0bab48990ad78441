//! Oil that leaves through a clearance.

use core::f64::consts::PI;

use super::clearance::{diameter, size_reading};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::{Input, Reading, combine, normal_cdf, normal_quantile};
use crate::real::{powf, sqrt};

pub(super) const ECCENTRICITY: Card = Card {
    id: "fit.eccentricity_factor",
    purpose: "How much more an off-center shaft lets through than a centered one",
    equation: "k = 1 + 1.5 ε²",
    symbols: &[symbol("k", "factor", "1"), symbol("ε", "eccentricity: 0 centered, 1 touching", "1")],
    range: "laminar flow along a narrow gap, the axes parallel; the mean of (1 + ε cos φ)³ over a turn",
    source: &card::DEFINITION,
    locator: "∫ (1 + ε cos φ)³ dφ/2π = 1 + 3 ε²/2",
};

pub(super) const GAP_LEAK: Card = Card {
    id: "fit.gap_leak",
    purpose: "Flow of oil along the gap between a shaft and a bore",
    equation: "Q = π d h³ Δp/(12 η L) (1 + 1.5 ε²), h = c/2; Re = 2 ρ v h/η",
    symbols: &[
        symbol("Q", "flow_l_min", "L/min"),
        symbol("d, L", "diameter_mm, length_mm", "mm"),
        symbol("c, h", "clearance_mm (diametral), radial_clearance_mm", "mm"),
        symbol("Δp", "pressure_drop_kpa", "kPa"),
        symbol("η, ρ", "viscosity_mpa_s, density_kg_m3", "mPa·s, kg/m³"),
        symbol("ε", "eccentricity", "1"),
        symbol("v, Re", "speed_m_s, reynolds", "m/s, 1"),
    ],
    range: "laminar (Re to 2000), gap narrow against the diameter and long against its height; an oil hole or groove shortens L",
    source: &card::FLUID_MECHANICS,
    locator: "laminar flow between parallel plates, wrapped round",
};

pub(super) const LEAK_RATIO: Card = Card {
    id: "fit.leak_ratio",
    purpose: "How many times more a worn fit leaks than a new one, with its coverage interval",
    equation: "r = (c_w/c_n)³ (1 + 1.5 ε_w²)/(1 + 1.5 ε_n²); first order u_r = 3 r √((u_w/c_w)² + (u_n/c_n)²); ends q³ k_w/k_n with (q c_n − c_w)² = z² (u_w² + q² u_n²)",
    symbols: &[
        symbol("r, u_r", "ratio, first_order_u", "1"),
        symbol("c_w, u_w", "worn_mm", "mm"),
        symbol("c_n, u_n", "new_mm", "mm"),
        symbol("ε_w, ε_n", "worn_eccentricity, new_eccentricity", "1"),
        symbol("q, z", "ends of c_w/c_n; normal quantile of the coverage", "1"),
        symbol("k_w, k_n", "eccentricity factors", "1"),
    ],
    range: "same length, pressure and oil; independent normal clearances, the new one surely above 0. The cube is not straight: the interval is not ± u",
    source: &card::DEFINITION,
    locator: "fit.gap_leak; E. C. Fieller's interval for a ratio, cubed",
};

/// Below this number the flow is laminar.
const LAMINAR: f64 = 2000.0;

/// How much more an off-center shaft lets through than a centered one: 2.5 times where it touches.
///
/// k = 1 + 1.5 ε²
///
/// * `eccentricity` — ε, displacement of the axes over the radial clearance, 0 to 1. Run-out is eccentricity, not clearance
/// * errors: [`Error::OutOfRange`]
///
/// Source: the mean of (1 + ε cos φ)³ over a turn.
///
/// ```
/// assert_eq!(trainwright::fit::eccentricity_factor(1.0)?, 2.5);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn eccentricity_factor(eccentricity: f64) -> Result<f64> {
    let eps = within("eccentricity", eccentricity, 0.0, 1.0)?;
    Ok(1.0 + 1.5 * eps * eps)
}

/// The gap between a shaft and a bore.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// Diameter, mm.
    pub diameter_mm: f64,
    /// Clearance, diametral, mm.
    pub clearance_mm: f64,
    /// Length along which the oil flows, mm.
    pub length_mm: f64,
    /// Displacement of the axes over the radial clearance, 0 to 1.
    pub eccentricity: f64,
}

/// Flow along a gap.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GapLeak {
    /// Radial clearance, mm.
    pub radial_clearance_mm: f64,
    /// How much more than centered.
    pub eccentricity_factor: f64,
    /// Flow, L/min.
    pub flow_l_min: f64,
    /// Mean speed of the oil along the gap, m/s.
    pub speed_m_s: f64,
    /// Reynolds number of the gap.
    pub reynolds: f64,
}

impl Gap {
    /// Flow of oil along the gap.
    ///
    /// Q = π d h³ Δp/(12 η L) (1 + 1.5 ε²), h = c/2
    ///
    /// * `pressure_drop_kpa` — Δp, 0 to 1e5; `viscosity_mpa_s` — η, dynamic, at the temperature of the gap; `density_kg_m3` — ρ
    /// * returns [`GapLeak`]
    /// * errors: [`Error::OutOfRange`] for `reynolds` above 2000: the gap is too wide or the oil too thin for laminar flow, an
    ///   orifice would be nearer; for a radial clearance above a tenth of the radius; [`Error::NotPositive`]
    ///
    /// Source: laminar flow between plates (Bansal, from memory). Example (computed): 40 mm, 0.1 mm diametral, 20 mm long,
    /// 10 mPa·s and 300 kPa let 0.118 L/min through centered, and two and a half times that where the shaft touches.
    ///
    /// ```
    /// use trainwright::fit::Gap;
    /// let gap = Gap { diameter_mm: 40.0, clearance_mm: 0.1, length_mm: 20.0, eccentricity: 0.0 };
    /// assert!((gap.gap_leak(300.0, 10.0, 800.0)?.flow_l_min - 0.1178).abs() < 5e-5);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn gap_leak(self, pressure_drop_kpa: f64, viscosity_mpa_s: f64, density_kg_m3: f64) -> Result<GapLeak> {
        let d = diameter("diameter_mm", self.diameter_mm)?;
        let c = positive("clearance_mm", self.clearance_mm)?;
        let h = within("clearance_mm", c, 0.0, 0.1 * d)? / 2.0;
        let length = diameter("length_mm", self.length_mm)?;
        let factor = eccentricity_factor(self.eccentricity)?;
        let pressure_mpa = within("pressure_drop_kpa", pressure_drop_kpa, 0.0, 1e5)? * 1e-3;
        let viscosity_mpa_s = within("viscosity_mpa_s", positive("viscosity_mpa_s", viscosity_mpa_s)?, 0.0, 1e6)?;
        let density = within("density_kg_m3", positive("density_kg_m3", density_kg_m3)?, 0.0, 2000.0)?;
        // MPa over mPa·s is 1e9/s, so mm³/s; 6e-5 L/min in it.
        let flow_mm3_s = PI * d * h * h * h * pressure_mpa / (12.0 * viscosity_mpa_s * length) * 1e9 * factor;
        let speed_m_s = flow_mm3_s / (PI * d * h) * 1e-3;
        let reynolds = 2.0 * density * speed_m_s * h / viscosity_mpa_s;
        within("reynolds", reynolds, 0.0, LAMINAR)?;
        Ok(GapLeak {
            radial_clearance_mm: h,
            eccentricity_factor: factor,
            flow_l_min: flow_mm3_s * 6e-5,
            speed_m_s,
            reynolds,
        })
    }
}

/// A fit when new and when worn: same length, pressure and oil.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WornGap {
    /// Clearance when new, diametral, mm.
    pub new_mm: Reading,
    /// Clearance now, mm.
    pub worn_mm: Reading,
    /// Eccentricity when new, 0 to 1.
    pub new_eccentricity: f64,
    /// Eccentricity now, 0 to 1.
    pub worn_eccentricity: f64,
}

/// How much more a worn fit leaks.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeakRatio {
    /// Leak now over leak when new, at the best estimates.
    pub ratio: f64,
    /// Its standard uncertainty to first order. The cube is not straight: where it is above a tenth of the ratio, the interval
    /// says more.
    pub first_order_u: f64,
    /// Stated probability of the interval.
    pub coverage: f64,
    /// Lower end of the interval.
    pub lower: f64,
    /// Upper end of the interval.
    pub upper: f64,
}

impl WornGap {
    fn factors(self) -> Result<f64> {
        size_reading("new_mm", self.new_mm)?;
        size_reading("worn_mm", self.worn_mm)?;
        let new = within("new_eccentricity", self.new_eccentricity, 0.0, 1.0)?;
        let worn = within("worn_eccentricity", self.worn_eccentricity, 0.0, 1.0)?;
        Ok(eccentricity_factor(worn)? / eccentricity_factor(new)?)
    }

    /// How many times more the worn fit leaks, with its coverage interval.
    ///
    /// r = (c_w/c_n)³ (1 + 1.5 ε_w²)/(1 + 1.5 ε_n²); the interval from that of c_w/c_n, cubed
    ///
    /// * `coverage` — probability of the interval, above 0, below 1
    /// * returns [`LeakRatio`]
    /// * errors: [`Error::NoAnswer`] where the new clearance could be 0 at this coverage: measure it, or take its tolerance
    ///
    /// Source: [`Gap::gap_leak`]; Fieller's interval for the ratio of two normal quantities (from memory), exact under a cube
    /// because a cube only rises. Example: twice the clearance leaks eight times as much.
    ///
    /// ```
    /// use trainwright::fit::WornGap;
    /// use trainwright::judge::Reading;
    /// let worn = WornGap {
    ///     new_mm: Reading::new(0.070, 0.002)?, worn_mm: Reading::new(0.140, 0.0045)?, new_eccentricity: 1.0, worn_eccentricity: 1.0,
    /// };
    /// let leak = worn.leak_ratio(0.95)?;
    /// assert!((leak.ratio - 8.0).abs() < 1e-9);
    /// assert!((leak.first_order_u - 1.0).abs() < 0.05 && leak.upper - 8.0 > 1.2 * (8.0 - leak.lower));
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn leak_ratio(self, coverage: f64) -> Result<LeakRatio> {
        let factors = self.factors()?;
        let tail = normal_quantile(0.5 + 0.5 * within("coverage", coverage, 0.0, 1.0)?)?;
        let (Reading { value: new, u: u_new }, Reading { value: worn, u: u_worn }) = (self.new_mm, self.worn_mm);
        let ratio = worn / new;
        let cube = |q: f64| q * q * q * factors;
        let r = cube(ratio);
        let u = combine(&[Input::new(3.0 * r / worn, u_worn)?, Input::new(-3.0 * r / new, u_new)?])?.u;
        // q² (c_n² − z² u_n²) − 2 q c_n c_w + c_w² − z² u_w² = 0
        let (spread_new, spread_worn) = (tail * u_new, tail * u_worn);
        let a = new * new - spread_new * spread_new;
        if a <= 0.0 {
            return Err(Error::NoAnswer {
                name: "new_mm",
                why: "at this coverage the new clearance could be 0; give it with a smaller uncertainty",
            });
        }
        let root = sqrt(
            (new * spread_worn) * (new * spread_worn) + (worn * spread_new) * (worn * spread_new)
                - (spread_new * spread_worn) * (spread_new * spread_worn),
        );
        let end = |sign: f64| cube(((new * worn + sign * root) / a).max(0.0));
        Ok(LeakRatio { ratio: r, first_order_u: u, coverage, lower: end(-1.0), upper: end(1.0) })
    }

    /// Chance that the worn fit leaks more than so many times as much as when new.
    ///
    /// p = Φ((c_w − q c_n)/√(u_w² + q² u_n²)), q = ∛(times k_n/k_w)
    ///
    /// * `times` — above 0
    /// * errors: as [`WornGap::leak_ratio`]; [`Error::NotPositive`]
    ///
    /// Source: the leak rises with c_w/c_n, so it exceeds a limit where c_w exceeds q c_n.
    pub fn chance_leaks_more(self, times: f64) -> Result<f64> {
        let q = powf(positive("times", times)? / self.factors()?, 1.0 / 3.0);
        let (new, worn) = (self.new_mm, self.worn_mm);
        let above = worn.value - q * new.value;
        let u = sqrt(worn.u * worn.u + q * new.u * (q * new.u));
        if u > 0.0 { normal_cdf(above / u) } else { Ok(if above > 0.0 { 1.0 } else { 0.0 }) }
    }
}
