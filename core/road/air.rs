//! The standard atmosphere and the density of air.

use crate::card::{self, Card, symbol};
use crate::error::{Result, positive, within};
use crate::real::powf;
use crate::units::{GRAVITY_M_S2, kelvin};

/// Radius of the earth that ISO 2533 uses for the geopotential altitude, m.
const EARTH_RADIUS_M: f64 = 6_356_766.0;
/// Specific gas constant of dry air, J/(kg·K).
const GAS_CONSTANT: f64 = 287.052_87;
const SEA_LEVEL_K: f64 = 288.15;
const SEA_LEVEL_KPA: f64 = 101.325;
/// Fall of temperature with geopotential altitude, K/m.
const LAPSE_K_M: f64 = 0.0065;

pub(super) const STANDARD_AIR: Card = Card {
    id: "road.standard_air",
    purpose: "Temperature, pressure and density of the standard atmosphere at an altitude",
    equation: "H = r·h/(r + h), T = T₀ − β·H, p = p₀·(T/T₀)^(g/(β·R)), ρ = p/(R·T)",
    symbols: &[
        symbol("h", "altitude_m", "m"),
        symbol("H", "geopotential_m", "m"),
        symbol("T", "temp_c + 273.15", "K"),
        symbol("p", "pressure_kpa_abs", "kPa"),
        symbol("ρ", "density_kg_m3", "kg/m³"),
        symbol("r, T₀, p₀, β, R", "6356766 m, 288.15 K, 101.325 kPa, 0.0065 K/m, 287.05287 J/(kg·K)", "-"),
    ],
    range: "troposphere: geopotential altitude −2000 m to 11000 m",
    source: &card::ATMOSPHERE,
    locator: "clause 2, equations 8, 12 and 14",
};

pub(super) const DENSITY_OF_AIR: Card = Card {
    id: "road.density_of_air",
    purpose: "Density of dry air at a pressure and a temperature",
    equation: "ρ = p/(R·T)",
    symbols: &[
        symbol("p", "pressure_kpa_abs", "kPa"),
        symbol("T", "temp_c + 273.15", "K"),
        symbol("ρ", "result", "kg/m³"),
    ],
    range: "dry air; humid air is lighter, by 1 % at 30 °C and 60 % humidity",
    source: &card::ATMOSPHERE,
    locator: "clause 2, perfect gas law",
};

/// Air at an altitude.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Geopotential altitude.
    pub geopotential_m: f64,
    /// Temperature.
    pub temp_c: f64,
    /// Absolute pressure.
    pub pressure_kpa_abs: f64,
    /// Density.
    pub density_kg_m3: f64,
}

/// Air of the standard atmosphere at an altitude.
///
/// H = r·h/(r + h), T = T₀ − β·H, p = p₀·(T/T₀)^(g/(β·R)), ρ = p/(R·T)
///
/// * `altitude_m` — h, geometric altitude above sea level, m, −2000 to 11019
/// * returns H, T, p and ρ; on a day that is not standard, give pressure and temperature to [`density_of_air`]
///
/// Source: ISO 2533:1975, clause 2 (from memory). Example: its table gives 1.1117 kg/m³ at 1000 m.
///
/// ```
/// let air = trainwright::road::standard_air(1000.0)?;
/// assert!((air.density_kg_m3 - 1.1117).abs() < 5e-5);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn standard_air(altitude_m: f64) -> Result<Air> {
    let h = within("altitude_m", altitude_m, -2000.0, 11_019.0)?;
    let geopotential_m = EARTH_RADIUS_M * h / (EARTH_RADIUS_M + h);
    let temp_k = SEA_LEVEL_K - LAPSE_K_M * geopotential_m;
    let pressure_kpa_abs = SEA_LEVEL_KPA * powf(temp_k / SEA_LEVEL_K, GRAVITY_M_S2 / (LAPSE_K_M * GAS_CONSTANT));
    Ok(Air {
        geopotential_m,
        temp_c: temp_k - kelvin(0.0),
        pressure_kpa_abs,
        density_kg_m3: gas_density(pressure_kpa_abs, temp_k),
    })
}

/// Density of dry air at a measured pressure and temperature, kg/m³.
///
/// ρ = p/(R·T)
///
/// * `pressure_kpa_abs` — p, absolute (station) pressure, kPa, above 0; `temp_c` — T, °C, −80 to 80
/// * returns ρ, kg/m³
///
/// Source: ISO 2533:1975, clause 2 (from memory): 101.325 kPa at 15 °C is 1.225 kg/m³.
///
/// ```
/// assert!((trainwright::road::density_of_air(101.325, 15.0)? - 1.225).abs() < 5e-5);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn density_of_air(pressure_kpa_abs: f64, temp_c: f64) -> Result<f64> {
    positive("pressure_kpa_abs", pressure_kpa_abs)?;
    Ok(gas_density(pressure_kpa_abs, kelvin(within("temp_c", temp_c, -80.0, 80.0)?)))
}

fn gas_density(pressure_kpa_abs: f64, temp_k: f64) -> f64 {
    1000.0 * pressure_kpa_abs / (GAS_CONSTANT * temp_k)
}
