//! Orifices: one, or several one after another or side by side.

use core::f64::consts::PI;

use super::pump::{density, pressure, viscosity};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::sqrt;

pub(super) const ORIFICE_FLOW: Card = Card {
    id: "hydraulic.orifice_flow",
    purpose: "Flow through a sharp-edged orifice",
    equation: "Q = C_d A √(2 Δp/ρ), A = π d²/4; Re = v d ρ/η, v = √(2 Δp/ρ)",
    symbols: &[
        symbol("Q", "flow_l_min", "L/min"),
        symbol("C_d", "discharge: π/(π + 2) for a sharp edge and turbulent flow", "1"),
        symbol("A, d", "area_mm2, diameter_mm", "mm², mm"),
        symbol("Δp", "pressure_drop_kpa", "kPa"),
        symbol("ρ, η", "density_kg_m3, viscosity_mpa_s", "kg/m³, mPa·s"),
        symbol("v, Re", "jet_m_s, reynolds", "m/s, 1"),
    ],
    range: "turbulent: below a Reynolds number of 1000 (cold oil, small hole) the discharge falls with its root, and the flow is less than this",
    source: &card::FLUID_POWER_ENGINEERING,
    locator: "orifice equation; contraction of a sharp edge, equation 2.39",
};

pub(super) const ORIFICE_DROP: Card = Card {
    id: "hydraulic.orifice_drop_kpa",
    purpose: "Pressure that an orifice takes at a flow",
    equation: "Δp = ρ (Q/(C_d A))²/2",
    symbols: &[
        symbol("Δp", "result", "kPa"),
        symbol("Q", "flow_l_min", "L/min"),
        symbol("C_d, A", "discharge, area of diameter_mm", "1, mm²"),
        symbol("ρ", "density_kg_m3", "kg/m³"),
    ],
    range: "as hydraulic.orifice_flow",
    source: &card::DEFINITION,
    locator: "hydraulic.orifice_flow solved for the pressure",
};

pub(super) const ORIFICE_SIZE: Card = Card {
    id: "hydraulic.orifice_diameter_mm",
    purpose: "Hole that lets a flow through at a pressure: to size a restriction, or to picture a leak",
    equation: "d = √(4 Q/(π C_d √(2 Δp/ρ)))",
    symbols: &[
        symbol("d", "result", "mm"),
        symbol("Q", "flow_l_min", "L/min"),
        symbol("C_d", "discharge", "1"),
        symbol("Δp, ρ", "pressure_drop_kpa, density_kg_m3", "kPa, kg/m³"),
    ],
    range: "as hydraulic.orifice_flow",
    source: &card::DEFINITION,
    locator: "hydraulic.orifice_flow solved for the diameter",
};

pub(super) const IN_PARALLEL: Card = Card {
    id: "hydraulic.in_parallel_mm2",
    purpose: "Effective area of orifices side by side",
    equation: "C A = Σ C_i A_i",
    symbols: &[symbol("C A", "result", "mm²"), symbol("C_i, A_i", "discharge, area of diameter_mm", "1, mm²")],
    range: "the same pressure over each",
    source: &card::DEFINITION,
    locator: "flows add",
};

pub(super) const IN_SERIES: Card = Card {
    id: "hydraulic.in_series_mm2",
    purpose: "Effective area of orifices one after another",
    equation: "1/(C A)² = Σ 1/(C_i A_i)²",
    symbols: &[symbol("C A", "result", "mm²"), symbol("C_i, A_i", "discharge, area of diameter_mm", "1, mm²")],
    range: "far enough apart that each jet comes to rest before the next; the smallest hole rules",
    source: &card::DEFINITION,
    locator: "pressure drops add at one flow",
};

pub(super) const PASSAGE: Card = Card {
    id: "hydraulic.passage_flow_l_min",
    purpose: "Flow through an effective area",
    equation: "Q = C A √(2 Δp/ρ)",
    symbols: &[
        symbol("Q", "result", "L/min"),
        symbol("C A", "effective_area_mm2", "mm²"),
        symbol("Δp, ρ", "pressure_drop_kpa, density_kg_m3", "kPa, kg/m³"),
    ],
    range: "as hydraulic.orifice_flow",
    source: &card::DEFINITION,
    locator: "hydraulic.orifice_flow",
};

/// Contraction of the jet behind a sharp edge: the discharge of a sharp orifice in turbulent flow, 0.611.
///
/// Source: free-streamline theory, C_c = π/(π + 2) (Fluid Power Engineering, equation 2.39, read).
pub const SHARP_EDGE_DISCHARGE: f64 = 0.611_015_470_351_657_3;
/// Reynolds number of the orifice below which its flow is not turbulent, and the discharge smaller.
///
/// Source: Merritt, Hydraulic Control Systems (from memory): the discharge is steady from about 1000 on.
pub const TURBULENT_REYNOLDS: f64 = 1000.0;

/// A round orifice.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Orifice {
    /// Diameter, mm.
    pub diameter_mm: f64,
    /// Discharge coefficient, above 0 to 1; [`SHARP_EDGE_DISCHARGE`] for a sharp edge and turbulent flow.
    pub discharge: f64,
}

/// Flow through an orifice.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OrificeFlow {
    /// Area of the hole, mm².
    pub area_mm2: f64,
    /// Speed of the jet without losses, m/s.
    pub jet_m_s: f64,
    /// Flow, L/min.
    pub flow_l_min: f64,
    /// Reynolds number of diameter and jet speed.
    pub reynolds: f64,
    /// The flow is turbulent. If not, the discharge is smaller than a sharp edge's and the flow less than this.
    pub turbulent: bool,
}

fn jet_m_s(pressure_drop_kpa: f64, density_kg_m3: f64) -> Result<f64> {
    Ok(sqrt(2e3 * pressure("pressure_drop_kpa", pressure_drop_kpa)? / density(density_kg_m3)?))
}

fn checked_discharge(discharge: f64) -> Result<f64> {
    within("discharge", positive("discharge", discharge)?, 0.0, 1.0)
}

fn flow(flow_l_min: f64) -> Result<f64> {
    within("flow_l_min", flow_l_min, 0.0, 1e5)
}

impl Orifice {
    fn area_mm2(self) -> Result<f64> {
        let d = within("diameter_mm", positive("diameter_mm", self.diameter_mm)?, 0.0, 1e3)?;
        Ok(PI / 4.0 * d * d)
    }

    fn effective_mm2(self) -> Result<f64> {
        Ok(checked_discharge(self.discharge)? * self.area_mm2()?)
    }

    /// Flow through the orifice.
    ///
    /// Q = C_d A √(2 Δp/ρ)
    ///
    /// * `pressure_drop_kpa` — Δp, 0 to 1e5; `density_kg_m3` — ρ; `viscosity_mpa_s` — η, for the Reynolds number
    /// * returns [`OrificeFlow`]; `turbulent` is false where the discharge of a sharp edge does not hold
    /// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
    ///
    /// Source: orifice equation. Example (computed): 1/16 in at 100 psi in water with 0.63: 0.734 US gallons per minute; a rule of
    /// the trade says 0.738.
    ///
    /// ```
    /// use trainwright::{hydraulic::Orifice, units};
    /// let hole = Orifice { diameter_mm: 25.4 / 16.0, discharge: 0.63 };
    /// let flow = hole.orifice_flow(units::psi_to_kpa(100.0), 999.0, 1.0)?;
    /// assert!((units::l_to_gallon(flow.flow_l_min) - 0.734).abs() < 0.001 && flow.turbulent);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn orifice_flow(self, pressure_drop_kpa: f64, density_kg_m3: f64, viscosity_mpa_s: f64) -> Result<OrificeFlow> {
        let (area_mm2, effective) = (self.area_mm2()?, self.effective_mm2()?);
        let jet_m_s = jet_m_s(pressure_drop_kpa, density_kg_m3)?;
        let reynolds = jet_m_s * self.diameter_mm * density_kg_m3 / viscosity("viscosity_mpa_s", viscosity_mpa_s)?;
        Ok(OrificeFlow {
            area_mm2,
            jet_m_s,
            flow_l_min: effective * jet_m_s * 0.06,
            reynolds,
            turbulent: reynolds >= TURBULENT_REYNOLDS,
        })
    }

    /// Pressure that the orifice takes at a flow, kPa.
    ///
    /// Δp = ρ (Q/(C_d A))²/2
    ///
    /// * `flow_l_min` — Q, 0 to 1e5; `density_kg_m3` — ρ
    /// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
    ///
    /// Source: [`Orifice::orifice_flow`] solved for the pressure.
    pub fn orifice_drop_kpa(self, flow_l_min: f64, density_kg_m3: f64) -> Result<f64> {
        let jet = flow(flow_l_min)? / (self.effective_mm2()? * 0.06);
        Ok(density(density_kg_m3)? * jet * jet / 2e3)
    }
}

/// Hole that lets a flow through at a pressure, mm: to size a restriction, or to picture a leak.
///
/// d = √(4 Q/(π C_d √(2 Δp/ρ)))
///
/// * `flow_l_min` — Q, 0 to 1e5; `pressure_drop_kpa` — Δp, above 0; `density_kg_m3` — ρ; `discharge` — C_d
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: [`Orifice::orifice_flow`] solved for the diameter.
pub fn orifice_diameter_mm(flow_l_min: f64, pressure_drop_kpa: f64, density_kg_m3: f64, discharge: f64) -> Result<f64> {
    positive("pressure_drop_kpa", pressure_drop_kpa)?;
    let jet = jet_m_s(pressure_drop_kpa, density_kg_m3)?;
    Ok(sqrt(4.0 * flow(flow_l_min)? / (PI * checked_discharge(discharge)? * jet * 0.06)))
}

fn some(orifices: &[Orifice]) -> Result<()> {
    let count = u32::try_from(orifices.len()).unwrap_or(u32::MAX);
    if count == 0 { Err(Error::Count { name: "orifices", count, low: 1, high: u32::MAX }) } else { Ok(()) }
}

/// Effective area of orifices side by side, mm².
///
/// C A = Σ C_i A_i
///
/// * `orifices` — one or more
/// * errors: [`Error::Count`] for none; [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: flows add.
pub fn in_parallel_mm2(orifices: &[Orifice]) -> Result<f64> {
    some(orifices)?;
    orifices.iter().try_fold(0.0, |sum, orifice| Ok(sum + orifice.effective_mm2()?))
}

/// Effective area of orifices one after another, mm².
///
/// 1/(C A)² = Σ 1/(C_i A_i)²
///
/// * `orifices` — one or more
/// * errors: [`Error::Count`] for none; [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: pressure drops add at one flow. Example: two equal holes pass √½ of what one does.
pub fn in_series_mm2(orifices: &[Orifice]) -> Result<f64> {
    some(orifices)?;
    let sum = orifices.iter().try_fold(0.0, |sum, orifice| {
        let effective = orifice.effective_mm2()?;
        Ok::<f64, Error>(sum + 1.0 / (effective * effective))
    })?;
    Ok(1.0 / sqrt(sum))
}

/// Flow through an effective area, L/min.
///
/// Q = C A √(2 Δp/ρ)
///
/// * `effective_area_mm2` — C A, from [`in_parallel_mm2`] or [`in_series_mm2`]; `pressure_drop_kpa` — Δp; `density_kg_m3` — ρ
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: [`Orifice::orifice_flow`].
pub fn passage_flow_l_min(effective_area_mm2: f64, pressure_drop_kpa: f64, density_kg_m3: f64) -> Result<f64> {
    let effective = within("effective_area_mm2", positive("effective_area_mm2", effective_area_mm2)?, 0.0, 1e6)?;
    Ok(effective * jet_m_s(pressure_drop_kpa, density_kg_m3)? * 0.06)
}
