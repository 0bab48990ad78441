//! What a shift does to the plates.

use pyo3::prelude::*;
use trainwright::clutch as core;

use super::pack::Annulus;
use super::shift::SlipEnd;
use crate::array::{Input, Out, map};
use crate::class::class;
use crate::error::answer;

class! {
    /// Material and thickness of a steel plate heated on both faces.
    "trainwright.clutch" Steel = core::Steel {
        /// Thermal conductivity, W/(m·K).
        conductivity_w_m_k: f64,
        /// Density, kg/m³.
        density_kg_m3: f64,
        /// Specific heat, J/(kg·K).
        specific_heat_j_kg_k: f64,
        /// Thickness, mm.
        thickness_mm: f64,
    }
}

class! {
    /// Temperature rise of a surface.
    "trainwright.clutch" SurfaceRise = core::SurfaceRise, explained by ["clutch.surface_rise_constant", "clutch.surface_rise_falling"] {
        /// Rise, K.
        rise_k: f64,
        /// When it is reached, s.
        at_s: f64,
        /// Until when the plate counts as thick, s.
        thick_until_s: f64,
        /// The rise is reached within that time. If not, the true rise is higher: the bulk rise governs.
        thick: bool,
    }
}

#[pymethods]
impl Steel {
    /// Surface rise under a constant heat flux into one face. Source: Carslaw and Jaeger, section 2.9.
    #[pyo3(signature = (*, flux_w_mm2, time_s))]
    fn surface_rise_constant(&self, flux_w_mm2: f64, time_s: f64) -> PyResult<SurfaceRise> {
        answer(self.0.surface_rise_constant(flux_w_mm2, time_s))
    }

    /// Highest surface rise under a flux that falls linearly to zero, as under constant clutch torque.
    /// Source: follows from the definitions (superposition of clutch.surface_rise_constant: ΔT ∝ √t' − (2/3)
    /// t'^{3/2}/t, largest at t' = t/2).
    #[pyo3(signature = (*, start_flux_w_mm2, slip_time_s))]
    fn surface_rise_falling(&self, start_flux_w_mm2: f64, slip_time_s: f64) -> PyResult<SurfaceRise> {
        answer(self.0.surface_rise_falling(start_flux_w_mm2, slip_time_s))
    }
}

/// Mean temperature rise of the steel plates, K.
/// Source: Shigley, chapter 16, temperature rise.
///
/// >>> round(bulk_rise_k(energy_j=20000, steel_mass_kg=2.4, specific_heat_j_kg_k=500), 3)
/// 16.667
#[pyfunction]
#[pyo3(signature = (*, energy_j, steel_mass_kg, specific_heat_j_kg_k, out = None))]
pub fn bulk_rise_k<'py>(
    py: Python<'py>,
    energy_j: Input<'py>,
    steel_mass_kg: Input<'py>,
    specific_heat_j_kg_k: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns =
        [("energy_j", energy_j), ("steel_mass_kg", steel_mass_kg), ("specific_heat_j_kg_k", specific_heat_j_kg_k)];
    map(py, columns, out, |[energy, mass, heat]| core::bulk_rise_k(energy, mass, heat))
}

class! {
    /// The steel plates of a pack.
    "trainwright.clutch" SteelPlates = core::SteelPlates {
        /// Material and thickness of one plate.
        steel: Steel,
        /// Mass of all steel plates, kg.
        steel_mass_kg: f64,
        /// Where lining meets steel.
        lining: Annulus,
        /// Friction faces.
        faces: u32,
    }
}

class! {
    /// What one shift does to the steel plates. All heat is taken to enter the steel.
    "trainwright.clutch" PlateHeat = core::PlateHeat {
        /// Energy per friction area, J/mm².
        energy_j_mm2: f64,
        /// Heat flux at the start, W/mm².
        start_flux_w_mm2: f64,
        /// Mean rise of the steel, K.
        bulk_rise_k: f64,
        /// Highest rise of its surface while the plate counts as thick.
        surface: SurfaceRise,
    }
}

#[pymethods]
impl SteelPlates {
    /// What one shift does to them; the slip locks, under constant torque.
    fn plate_heat(&self, slip: SlipEnd) -> PyResult<PlateHeat> {
        answer(self.0.plate_heat(slip.into()))
    }
}
