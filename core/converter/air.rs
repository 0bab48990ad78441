//! What the air of the day does to the torque of an engine.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::sqrt;

pub(super) const AIR_CORRECTION: Card = Card {
    id: "converter.air_correction_j1349",
    purpose: "Full-throttle torque of a naturally aspirated spark-ignition engine in reference air over that in other air",
    equation: "c = 1.18·(99/p_d)·√((t + 273)/298) − 0.18, p_d = p − p_w",
    symbols: &[
        symbol("c", "result", "1"),
        symbol("p", "pressure_kpa_abs", "kPa"),
        symbol("p_w", "vapor_kpa_abs", "kPa"),
        symbol("p_d", "dry pressure", "kPa"),
        symbol("t", "temp_c", "°C"),
    ],
    range: "naturally aspirated, spark ignition; the standard itself tests at 90 to 105 kPa dry and 15 to 35 °C, beyond that it is an extrapolation. Not for a turbocharged engine, which its control may let keep its torque",
    source: &card::NET_POWER,
    locator: "atmospheric correction factor, spark ignition",
};

pub(super) const AIR_TORQUE_FACTOR: Card = Card {
    id: "converter.air_torque_factor",
    purpose: "Torque in the air of the day over that in the air of the engine's curve",
    equation: "f = c(air of the curve)/c(air of the day)",
    symbols: &[symbol("f", "result", "1"), symbol("c", "converter.air_correction_j1349", "1")],
    range: "as converter.air_correction_j1349",
    source: &card::NET_POWER,
    locator: "atmospheric correction factor, of both airs",
};

/// Air that an engine breathes.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InletAir {
    /// Absolute (station) pressure, kPa, 50 to 110; not the reading reduced to sea level.
    pub pressure_kpa_abs: f64,
    /// Pressure of the water vapor in it, kPa; 0 for dry air.
    pub vapor_kpa_abs: f64,
    /// Temperature, °C, −40 to 60.
    pub temp_c: f64,
}

impl InletAir {
    /// The reference air of SAE J1349: 99 kPa dry, 25 °C.
    pub const REFERENCE_J1349: Self = Self { pressure_kpa_abs: 99.0, vapor_kpa_abs: 0.0, temp_c: 25.0 };

    fn dry_kpa_abs(self) -> Result<f64> {
        let pressure = within("pressure_kpa_abs", self.pressure_kpa_abs, 50.0, 110.0)?;
        within("vapor_kpa_abs", self.vapor_kpa_abs, 0.0, 20.0)?;
        positive("pressure_kpa_abs", pressure - self.vapor_kpa_abs)
    }

    /// Whether SAE J1349 tests in such air: 90 to 105 kPa dry, 15 to 35 °C (from memory).
    pub fn in_test_range_j1349(self) -> Result<bool> {
        let dry = self.dry_kpa_abs()?;
        Ok((90.0..=105.0).contains(&dry) && (15.0..=35.0).contains(&within("temp_c", self.temp_c, -40.0, 60.0)?))
    }
}

/// Full-throttle torque of a naturally aspirated spark-ignition engine in reference air over that in this air.
///
/// c = 1.18·(99/p_d)·√((t + 273)/298) − 0.18, p_d = p − p_w
///
/// * `air` — p, p_w and t
/// * returns c, 1 in the reference air (99 kPa dry, 25 °C), above 1 in thinner air
/// * errors: [`Error::OutOfRange`], [`Error::NotPositive`]
///
/// For a turbocharged engine the factor is an input: how much torque it keeps is up to its control, and its maker says it.
///
/// Source: SAE J1349, spark ignition (from memory). Example (computed): 90 kPa dry and 35 °C is 1.1396.
///
/// ```
/// use trainwright::converter::{InletAir, air_correction_j1349};
/// assert_eq!(air_correction_j1349(InletAir::REFERENCE_J1349)?, 1.0);
/// let thin = InletAir { pressure_kpa_abs: 90.0, vapor_kpa_abs: 0.0, temp_c: 35.0 };
/// assert!((air_correction_j1349(thin)? - 1.1396).abs() < 5e-5);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn air_correction_j1349(air: InletAir) -> Result<f64> {
    let temp_c = within("temp_c", air.temp_c, -40.0, 60.0)?;
    Ok(1.18 * (99.0 / air.dry_kpa_abs()?) * sqrt((temp_c + 273.0) / 298.0) - 0.18)
}

/// Torque of a naturally aspirated spark-ignition engine in the air of the day over that in the air of its curve.
///
/// f = c(air of the curve)/c(air of the day)
///
/// * `curve` — the air that the curve holds for; `today` — the air of the day
/// * returns f, the `torque_factor` of [`super::EngineToday`]
/// * errors: as [`air_correction_j1349`]; [`Error::NoAnswer`] for air in which the engine gives nothing
///
/// Source: SAE J1349, spark ignition (from memory).
pub fn air_torque_factor(curve: InletAir, today: InletAir) -> Result<f64> {
    let (of_curve, of_day) = (air_correction_j1349(curve)?, air_correction_j1349(today)?);
    if of_curve > 0.0 && of_day > 0.0 {
        Ok(of_curve / of_day)
    } else {
        Err(Error::NoAnswer {
            name: "air",
            why: "the correction is not positive in such air; check pressure and temperature",
        })
    }
}
