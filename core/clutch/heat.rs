//! What the energy of a shift does to the steel plates. Parts just tested are hot.

use core::f64::consts::PI;

use super::pack::Annulus;
use super::shift::SlipEnd;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::sqrt;

pub(super) const BULK_RISE: Card = Card {
    id: "clutch.bulk_rise_k",
    purpose: "Mean temperature rise of the steel plates",
    equation: "ΔT = E/(m c)",
    symbols: &[
        symbol("ΔT", "rise", "K"),
        symbol("E", "energy_j, all of it into the steel", "J"),
        symbol("m", "steel_mass_kg", "kg"),
        symbol("c", "specific_heat_j_kg_k", "J/(kg·K)"),
    ],
    range: "no heat lost to oil or lining during the slip: an upper bound of the mean, below the rise of the surface",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 16, temperature rise",
};

pub(super) const RISE_CONSTANT: Card = Card {
    id: "clutch.surface_rise_constant",
    purpose: "Surface temperature rise under a constant heat flux",
    equation: "ΔT = (2 q/k) √(α t/π), α = k/(ρ c)",
    symbols: &[
        symbol("q", "flux_w_mm2", "W/mm²"),
        symbol("k", "conductivity_w_m_k", "W/(m·K)"),
        symbol("ρ, c", "density_kg_m3, specific_heat_j_kg_k", "kg/m³, J/(kg·K)"),
        symbol("t", "time_s", "s"),
    ],
    range: "while the heat has not met that of the other face: t ≤ (thickness/4)²/α; later the bulk rise governs",
    source: &card::HEAT_CONDUCTION,
    locator: "section 2.9, half space with constant flux",
};

pub(super) const RISE_FALLING: Card = Card {
    id: "clutch.surface_rise_falling",
    purpose: "Highest surface temperature rise under a heat flux that falls linearly to zero",
    equation: "ΔT = (2√2/3) q_0 √(t/(π k ρ c)), reached at t/2; 2√2/3 = 0.943",
    symbols: &[
        symbol("q_0", "start_flux_w_mm2", "W/mm²"),
        symbol("t", "slip_time_s", "s"),
        symbol("k, ρ, c", "as clutch.surface_rise_constant", "as there"),
    ],
    range: "constant clutch torque; t/2 ≤ (thickness/4)²/α; later the bulk rise governs",
    source: &card::DEFINITION,
    locator: "superposition of clutch.surface_rise_constant: ΔT ∝ √t' − (2/3) t'^{3/2}/t, largest at t' = t/2",
};

/// Material and thickness of a steel plate heated on both faces.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steel {
    /// Thermal conductivity, W/(m·K).
    pub conductivity_w_m_k: f64,
    /// Density, kg/m³.
    pub density_kg_m3: f64,
    /// Specific heat, J/(kg·K).
    pub specific_heat_j_kg_k: f64,
    /// Thickness, mm.
    pub thickness_mm: f64,
}

/// Temperature rise of a surface.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SurfaceRise {
    /// Rise, K.
    pub rise_k: f64,
    /// When it is reached, s.
    pub at_s: f64,
    /// Until when the plate counts as thick, s.
    pub thick_until_s: f64,
    /// The rise is reached within that time. If not, the true rise is higher: the bulk rise governs.
    pub thick: bool,
}

impl Steel {
    /// Surface temperature rise under a constant heat flux.
    ///
    /// ΔT = (2 q/k) √(α t/π)
    ///
    /// * `flux_w_mm2` — q into one face, 0 or more; `time_s` — t, 0 or more
    /// * returns [`SurfaceRise`]; mind `thick`
    /// * errors: [`Error::NotPositive`] for the material, [`Error::OutOfRange`], [`Error::NotFinite`]
    ///
    /// Source: Carslaw and Jaeger, section 2.9 (from memory).
    pub fn surface_rise_constant(self, flux_w_mm2: f64, time_s: f64) -> Result<SurfaceRise> {
        let flux = flux_in_range("flux_w_mm2", flux_w_mm2)?;
        let time = time_in_range("time_s", time_s)?;
        self.rise(2.0, flux, time, time)
    }

    /// Highest surface temperature rise under a heat flux that falls linearly to zero, as under constant clutch torque.
    ///
    /// ΔT = (2√2/3) q_0 √(t/(π k ρ c)), reached at t/2
    ///
    /// * `start_flux_w_mm2` — q_0 into one face, 0 or more; `slip_time_s` — t, 0 or more
    /// * returns [`SurfaceRise`]; mind `thick`
    /// * errors: as [`Steel::surface_rise_constant`]
    ///
    /// Source: superposition of the constant-flux solution.
    pub fn surface_rise_falling(self, start_flux_w_mm2: f64, slip_time_s: f64) -> Result<SurfaceRise> {
        let flux = flux_in_range("start_flux_w_mm2", start_flux_w_mm2)?;
        let time = time_in_range("slip_time_s", slip_time_s)?;
        self.rise(2.0 * core::f64::consts::SQRT_2 / 3.0, flux, time, time / 2.0)
    }

    fn rise(self, factor: f64, flux_w_mm2: f64, time_s: f64, at_s: f64) -> Result<SurfaceRise> {
        let conductivity = positive("conductivity_w_m_k", self.conductivity_w_m_k)?;
        let heat_w_m3 = positive("density_kg_m3", self.density_kg_m3)?
            * positive("specific_heat_j_kg_k", self.specific_heat_j_kg_k)?;
        let quarter_m = positive("thickness_mm", self.thickness_mm)? * 1e-3 / 4.0;
        let thick_until_s = quarter_m * quarter_m * heat_w_m3 / conductivity;
        Ok(SurfaceRise {
            rise_k: factor * flux_w_mm2 * 1e6 * sqrt(time_s / (PI * conductivity * heat_w_m3)),
            at_s,
            thick_until_s,
            thick: at_s <= thick_until_s,
        })
    }
}

fn flux_in_range(name: &'static str, flux_w_mm2: f64) -> Result<f64> {
    within(name, flux_w_mm2, 0.0, 1e6)
}

fn time_in_range(name: &'static str, time_s: f64) -> Result<f64> {
    within(name, time_s, 0.0, 1e9)
}

/// Mean temperature rise of the steel plates.
///
/// ΔT = E/(m c)
///
/// * `energy_j` — E, 0 or more; `steel_mass_kg` — m; `specific_heat_j_kg_k` — c, about 500 for steel
/// * returns ΔT, K
/// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`]
///
/// Source: Shigley, chapter 16 (from memory). Example: 20 kJ into 2.4 kg at 500 J/(kg·K), 16.667 K.
///
/// ```
/// assert!((trainwright::clutch::bulk_rise_k(20_000.0, 2.4, 500.0)? - 16.667).abs() < 0.001);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn bulk_rise_k(energy_j: f64, steel_mass_kg: f64, specific_heat_j_kg_k: f64) -> Result<f64> {
    let energy = within("energy_j", energy_j, 0.0, f64::MAX)?;
    Ok(energy / (positive("steel_mass_kg", steel_mass_kg)? * positive("specific_heat_j_kg_k", specific_heat_j_kg_k)?))
}

/// The steel plates of a pack.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteelPlates {
    /// Material and thickness of one plate.
    pub steel: Steel,
    /// Mass of all steel plates, kg.
    pub steel_mass_kg: f64,
    /// Where lining meets steel.
    pub lining: Annulus,
    /// Friction faces.
    pub faces: u32,
}

/// What one shift does to the steel plates. All heat is taken to enter the steel.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateHeat {
    /// Energy per friction area, J/mm².
    pub energy_j_mm2: f64,
    /// Heat flux at the start, W/mm².
    pub start_flux_w_mm2: f64,
    /// Mean rise of the steel, K.
    pub bulk_rise_k: f64,
    /// Highest rise of its surface while the plate counts as thick.
    pub surface: SurfaceRise,
}

impl SteelPlates {
    /// What one shift does to the steel plates.
    ///
    /// * `slip` — a slip that locks, under constant torque
    /// * returns [`PlateHeat`]
    /// * errors: [`Error::NoAnswer`] for a slip that never locks, and as [`Steel::surface_rise_falling`]
    ///
    /// Source: [`bulk_rise_k`] and [`Steel::surface_rise_falling`].
    pub fn plate_heat(self, slip: SlipEnd) -> Result<PlateHeat> {
        if !slip.locks {
            return Err(Error::NoAnswer {
                name: "plate_heat",
                why: "the clutch never locks, so its heat has no end; raise its torque or limit the time of slip",
            });
        }
        if !(1..=200).contains(&self.faces) {
            return Err(Error::Count { name: "faces", count: self.faces, low: 1, high: 200 });
        }
        let area_mm2 = f64::from(self.faces) * self.lining.area_mm2()?;
        let start_flux_w_mm2 = slip.start_heat_kw * 1e3 / area_mm2;
        Ok(PlateHeat {
            energy_j_mm2: slip.energy_j / area_mm2,
            start_flux_w_mm2,
            bulk_rise_k: bulk_rise_k(slip.energy_j, self.steel_mass_kg, self.steel.specific_heat_j_kg_k)?,
            surface: self.steel.surface_rise_falling(start_flux_w_mm2, slip.time_s)?,
        })
    }
}
