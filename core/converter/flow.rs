//! Ratios, efficiency and capacity factor of a converter at one point.

use crate::card::{self, Card, symbol};
use crate::error::{Result, positive, within};
use crate::real::sqrt;
use crate::units::rad_s;

pub(super) const SPEED_RATIO: Card = Card {
    id: "converter.speed_ratio",
    purpose: "Speed ratio of a converter",
    equation: "ν = n_T/n_P",
    symbols: &[
        symbol("ν", "result", "1"),
        symbol("n_T", "turbine_rpm", "1/min"),
        symbol("n_P", "impeller_rpm: engine speed", "1/min"),
    ],
    range: "0 at stall; above 1 the wheels drive the engine",
    source: &card::CONVERTER_TEST,
    locator: "definitions",
};

pub(super) const EFFICIENCY: Card = Card {
    id: "converter.efficiency",
    purpose: "Efficiency of a converter",
    equation: "η = ν·μ",
    symbols: &[symbol("η", "result", "1"), symbol("ν", "speed_ratio", "1"), symbol("μ", "torque_ratio", "1")],
    range: "0 to 1: readings that give more contradict each other and are refused",
    source: &card::CONVERTER_TEST,
    locator: "definitions",
};

pub(super) const CAPACITY_FACTOR: Card = Card {
    id: "converter.capacity_factor",
    purpose: "Capacity factor of the impeller side from a speed and the torque there",
    equation: "K = n_P/√T_P",
    symbols: &[
        symbol("K", "result", "1/min per √(N·m)"),
        symbol("n_P", "impeller_rpm", "1/min"),
        symbol("T_P", "impeller_nm", "N·m"),
    ],
    range: "speed and torque of the impeller at one speed ratio; a K of the output side is converter.from_output_side",
    source: &card::CONVERTER_TEST,
    locator: "definitions",
};

pub(super) const IMPELLER_TORQUE: Card = Card {
    id: "converter.impeller_torque_nm",
    purpose: "Torque that the impeller takes at a speed",
    equation: "T_P = (n_P/K)²",
    symbols: &[
        symbol("T_P", "result", "N·m"),
        symbol("n_P", "impeller_rpm", "1/min"),
        symbol("K", "k_rpm_per_sqrt_nm at this speed ratio", "1/min per √(N·m)"),
    ],
    range: "the same fluid and fill as when K was measured; K shifts a little with speed and temperature",
    source: &card::CONVERTER_TEST,
    locator: "definitions",
};

pub(super) const OUTPUT_SIDE: Card = Card {
    id: "converter.from_output_side",
    purpose: "Capacity factor of the impeller side from one of the output side",
    equation: "K = K_T·√μ/ν, K_T = n_T/√T_T",
    symbols: &[
        symbol("K", "result", "1/min per √(N·m)"),
        symbol("K_T", "k_output_rpm_per_sqrt_nm", "1/min per √(N·m)"),
        symbol("ν", "speed_ratio", "1"),
        symbol("μ", "torque_ratio", "1"),
        symbol("n_T, T_T", "speed and torque of the turbine", "1/min, N·m"),
    ],
    range: "not at stall, where K of the output side is 0 whatever the converter",
    source: &card::DEFINITION,
    locator: "n_T = ν·n_P and T_T = μ·T_P",
};

pub(super) const TORQUE_COEFFICIENT: Card = Card {
    id: "converter.from_torque_coefficient",
    purpose: "Capacity factor of the impeller side from the torque coefficient, as a data sheet may state it",
    equation: "T_P = λ·ρ·D⁵·ω², K = (30/π)/√(λ·ρ·D⁵)",
    symbols: &[
        symbol("K", "result", "1/min per √(N·m)"),
        symbol("λ", "torque_coefficient", "1"),
        symbol("ρ", "density_kg_m3", "kg/m³"),
        symbol("D", "diameter_mm", "m in the equation"),
        symbol("T_P, ω", "torque and angular speed of the impeller", "N·m, rad/s"),
    ],
    range: "one converter, or one of the same shape; λ belongs to a speed ratio",
    source: &card::DEFINITION,
    locator: "similarity of hydrodynamic machines",
};

/// Speed ratio.
///
/// ν = n_T/n_P
///
/// * `impeller_rpm` — n_P, engine speed, above 0; `turbine_rpm` — n_T, 0 or more
/// * returns ν; above 1 the wheels drive the engine
/// * errors: [`crate::Error::NotPositive`], [`crate::Error::OutOfRange`]
///
/// Source: SAE J643, definitions (from memory).
///
/// ```
/// assert_eq!(trainwright::converter::speed_ratio(2000.0, 1600.0)?, 0.8);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn speed_ratio(impeller_rpm: f64, turbine_rpm: f64) -> Result<f64> {
    Ok(within("turbine_rpm", turbine_rpm, 0.0, 1e6)? / positive("impeller_rpm", impeller_rpm)?)
}

/// Efficiency.
///
/// η = ν·μ
///
/// * `speed_ratio` — ν, 0 to 1; `torque_ratio` — μ, 0 to 10
/// * returns η, 0 to 1
/// * errors: [`crate::Error::OutOfRange`], also for an efficiency above 1: two readings that contradict each other
///
/// Source: SAE J643, definitions (from memory). Example: a published table gives a torque ratio of 2.07 at 0.1.
///
/// ```
/// assert!((trainwright::converter::efficiency(0.1, 2.07)? - 0.207).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn efficiency(speed_ratio: f64, torque_ratio: f64) -> Result<f64> {
    let product = within("speed_ratio", speed_ratio, 0.0, 1.0)? * within("torque_ratio", torque_ratio, 0.0, 10.0)?;
    within("efficiency", product, 0.0, 1.0)
}

/// Capacity factor of the impeller side.
///
/// K = n_P/√T_P
///
/// * `impeller_rpm` — n_P, 0 or more; `impeller_nm` — T_P, above 0
/// * returns K, 1/min per √(N·m)
/// * errors: [`crate::Error::NotPositive`], [`crate::Error::OutOfRange`]
///
/// Two stored web pages print K = n·√T: that is wrong, as a converter that takes more torque at a speed has the lower K.
///
/// Source: SAE J643, definitions (from memory).
///
/// ```
/// assert_eq!(trainwright::converter::capacity_factor(1420.0, 400.0)?, 71.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn capacity_factor(impeller_rpm: f64, impeller_nm: f64) -> Result<f64> {
    Ok(within("impeller_rpm", impeller_rpm, 0.0, 1e6)? / sqrt(positive("impeller_nm", impeller_nm)?))
}

/// Torque that the impeller takes at a speed.
///
/// T_P = (n_P/K)²
///
/// * `impeller_rpm` — n_P, 0 or more; `k_rpm_per_sqrt_nm` — K at this speed ratio, above 0
/// * returns T_P, N·m
/// * errors: [`crate::Error::NotPositive`], [`crate::Error::OutOfRange`]
///
/// Source: SAE J643, definitions (from memory).
///
/// ```
/// assert_eq!(trainwright::converter::impeller_torque_nm(1420.0, 71.0)?, 400.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn impeller_torque_nm(impeller_rpm: f64, k_rpm_per_sqrt_nm: f64) -> Result<f64> {
    let root = within("impeller_rpm", impeller_rpm, 0.0, 1e6)? / positive("k_rpm_per_sqrt_nm", k_rpm_per_sqrt_nm)?;
    within("impeller_nm", root * root, 0.0, 1e12)
}

/// Capacity factor of the impeller side from one of the output side.
///
/// K = K_T·√μ/ν, K_T = n_T/√T_T
///
/// * `k_output_rpm_per_sqrt_nm` — K_T, turbine speed over the root of turbine torque, above 0; `speed_ratio` — ν, above 0 to 1;
///   `torque_ratio` — μ, above 0 to 10
/// * returns K, 1/min per √(N·m)
/// * errors: [`crate::Error::NotPositive`], at stall too: there the output side says nothing; [`crate::Error::OutOfRange`]
///
/// Source: n_T = ν·n_P and T_T = μ·T_P (derived).
///
/// ```
/// use trainwright::converter::{capacity_factor, from_output_side};
/// let (impeller_rpm, impeller_nm, speed_ratio, torque_ratio) = (2000.0, 300.0, 0.6, 1.4);
/// let output = capacity_factor(speed_ratio * impeller_rpm, torque_ratio * impeller_nm)?;
/// let impeller = capacity_factor(impeller_rpm, impeller_nm)?;
/// assert!((from_output_side(output, speed_ratio, torque_ratio)? / impeller - 1.0).abs() < 1e-15);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn from_output_side(k_output_rpm_per_sqrt_nm: f64, speed_ratio: f64, torque_ratio: f64) -> Result<f64> {
    let ratio = positive("speed_ratio", within("speed_ratio", speed_ratio, 0.0, 1.0)?)?;
    let torque = positive("torque_ratio", within("torque_ratio", torque_ratio, 0.0, 10.0)?)?;
    Ok(positive("k_output_rpm_per_sqrt_nm", k_output_rpm_per_sqrt_nm)? * sqrt(torque) / ratio)
}

/// Capacity factor of the impeller side from the torque coefficient.
///
/// T_P = λ·ρ·D⁵·ω², K = (30/π)/√(λ·ρ·D⁵)
///
/// * `torque_coefficient` — λ at this speed ratio, above 0; `density_kg_m3` — ρ of the fluid, above 0; `diameter_mm` — D of the
///   circuit, above 0
/// * returns K, 1/min per √(N·m)
/// * errors: [`crate::Error::NotPositive`]
///
/// Source: similarity of hydrodynamic machines (derived). Example: λ = 0.001 in 850 kg/m³ and 300 mm takes
/// 0.001 · 850 · 0.3⁵ · 100² = 20.655 N·m at 100 rad/s.
///
/// ```
/// use trainwright::converter::{from_torque_coefficient, impeller_torque_nm};
/// let k = from_torque_coefficient(0.001, 850.0, 300.0)?;
/// assert!((impeller_torque_nm(100.0 * 30.0 / core::f64::consts::PI, k)? - 20.655).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn from_torque_coefficient(torque_coefficient: f64, density_kg_m3: f64, diameter_mm: f64) -> Result<f64> {
    let diameter_m = positive("diameter_mm", diameter_mm)? / 1000.0;
    let area_m2 = diameter_m * diameter_m;
    let per_omega2 = positive("torque_coefficient", torque_coefficient)?
        * positive("density_kg_m3", density_kg_m3)?
        * area_m2
        * area_m2
        * diameter_m;
    Ok(1.0 / (rad_s(1.0) * sqrt(positive("torque_coefficient", per_omega2)?)))
}
