//! Fluid, its density and volume against temperature.

use pyo3::prelude::*;
use trainwright::fluid as core;

use super::viscosity::ViscosityLine;
use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::quantity::Number;

class! {
    /// What a record states of a fluid.
    ///
    /// >>> alder = Fluid(density_15c_kg_m3=843.0, expansion_per_k=7.8e-4, viscosity_40c_mm2_s=27.4, viscosity_100c_mm2_s=5.6)
    /// >>> round(alder.volume_factor(temp_c=47.0), 5)
    /// 1.02496
    "trainwright.fluid" Fluid = core::Fluid, checked by in_range {
        /// Density at 15 °C.
        density_15c_kg_m3: f64,
        /// Stated mean coefficient of volume from 15 °C; 0 where none is stated: the lubricating-oil group then gives it.
        expansion_per_k: f64,
        /// Kinematic viscosity at 40 °C.
        viscosity_40c_mm2_s: f64,
        /// Kinematic viscosity at 100 °C.
        viscosity_100c_mm2_s: f64,
    }
}

fn in_range(fluid: core::Fluid) -> trainwright::Result<core::Fluid> {
    fluid.check_properties().map(|()| fluid)
}

#[pymethods]
impl Fluid {
    /// Volume at a temperature, −50 to 150 °C, over the volume at 15 °C.
    /// Source: follows from the definitions (mean coefficient of cubic expansion).
    #[pyo3(signature = (*, temp_c, out = None))]
    fn volume_factor<'py>(
        &self,
        py: Python<'py>,
        temp_c: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("temp_c", temp_c)], out, |[temp_c]| self.0.volume_factor(temp_c))
    }

    /// Temperature at which the volume is this many times the volume at 15 °C.
    #[pyo3(signature = (*, factor, out = None))]
    fn temp_for_volume_factor<'py>(
        &self,
        py: Python<'py>,
        factor: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("factor", factor)], out, |[factor]| self.0.temp_for_volume_factor(factor))
    }

    /// Density at a temperature, kg/m³.
    #[pyo3(signature = (*, temp_c, out = None))]
    fn density<'py>(&self, py: Python<'py>, temp_c: Input<'py>, out: Option<Out<'py>>) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("temp_c", temp_c)], out, |[temp_c]| self.0.density(temp_c))
    }

    /// The line through the viscosities at 40 °C and 100 °C.
    fn viscosity_line(&self) -> PyResult<ViscosityLine> {
        answer(self.0.viscosity_line())
    }
}

class! {
    /// Answer of the volume correction, with what it was computed from.
    "trainwright.fluid" VolumeCorrection = core::VolumeCorrection, explained by ["fluid.volume_correction"] {
        /// Coefficient of volume at base.
        alpha_per_k: f64,
        /// Temperature above base.
        rise_k: f64,
        /// Volume at base over volume now, density now over density at base.
        factor: f64,
        /// Density now.
        density_kg_m3: f64,
    }
}

columns! { VolumeCorrection[4]: alpha_per_k, rise_k, factor, density_kg_m3 }

/// Volume correction factor and density of a lubricating oil from its density at 15 °C.
///
/// Arrays give a dictionary of arrays. Source: API MPMS chapter 11.1 / ASTM D1250, lubricating-oil group.
///
/// >>> round(volume_correction(density_15c_kg_m3=850.0, temp_c=-20.0).factor, 6)
/// 1.025639
#[pyfunction]
#[pyo3(signature = (*, density_15c_kg_m3, temp_c))]
pub fn volume_correction<'py>(
    py: Python<'py>,
    density_15c_kg_m3: Input<'py>,
    temp_c: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("density_15c_kg_m3", density_15c_kg_m3), ("temp_c", temp_c)];
    map_class::<VolumeCorrection, _, 2, 4>(py, columns, |[density, temp_c]| core::volume_correction(density, temp_c))
}

/// The same from the density at 60 °F; the temperature is still in °C.
#[pyfunction]
#[pyo3(signature = (*, density_60f_kg_m3, temp_c))]
pub fn volume_correction_60f<'py>(
    py: Python<'py>,
    density_60f_kg_m3: Input<'py>,
    temp_c: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("density_60f_kg_m3", density_60f_kg_m3), ("temp_c", temp_c)];
    map_class::<VolumeCorrection, _, 2, 4>(py, columns, |[density, temp_c]| {
        core::volume_correction_60f(density, temp_c)
    })
}

/// Volume correction factor for a coefficient at base, whatever group of oils it comes from.
///
/// >>> round(correction_factor(alpha_per_k=186.9696 / 992**2 + 0.4862 / 992, rise_k=21.0), 4)
/// 0.9857
#[pyfunction]
#[pyo3(signature = (*, alpha_per_k, rise_k, out = None))]
pub fn correction_factor<'py>(
    py: Python<'py>,
    alpha_per_k: Input<'py>,
    rise_k: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("alpha_per_k", alpha_per_k), ("rise_k", rise_k)], out, |[alpha, rise]| {
        core::correction_factor(alpha, rise)
    })
}

/// Density at 15 °C of a lubricating oil whose density was measured at another temperature.
/// Source: API MPMS chapter 11.1-2004 / ASTM D1250-04, observed to base density.
///
/// >>> round(density_15c_from_observed(density_kg_m3=820.0, temp_c=80.0), 3)
/// 861.329
#[pyfunction]
#[pyo3(signature = (*, density_kg_m3, temp_c, out = None))]
pub fn density_15c_from_observed<'py>(
    py: Python<'py>,
    density_kg_m3: Input<'py>,
    temp_c: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("density_kg_m3", density_kg_m3), ("temp_c", temp_c)], out, |[density, temp_c]| {
        core::density_15c_from_observed(density, temp_c)
    })
}

/// Mean coefficient from 15 °C that says the same as one stated from another reference temperature.
/// Source: follows from the definitions (V₀ [1 + a₀ (t − t₀)] = V₁₅ [1 + a (t − 15 °C)]).
#[pyfunction]
#[pyo3(signature = (*, expansion_per_k, reference_c, out = None))]
pub fn expansion_from_15c<'py>(
    py: Python<'py>,
    expansion_per_k: Input<'py>,
    reference_c: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("expansion_per_k", expansion_per_k), ("reference_c", reference_c)], out, |[expansion, reference]| {
        core::expansion_from_15c(expansion, reference)
    })
}

/// Change of volume of a fluid, less the growth of its vessel.
/// Source: follows from the definitions (cubic expansion of fluid and vessel).
///
/// >>> round(growth_ml(volume_ml=9000.0, expansion_per_k=7.2e-4, rise_k=60.0), 6)
/// 388.8
#[pyfunction]
#[pyo3(signature = (*, volume_ml, expansion_per_k, vessel_linear_per_k = 0.0.into(), rise_k))]
pub fn growth_ml(
    volume_ml: Number,
    expansion_per_k: Number,
    vessel_linear_per_k: Number,
    rise_k: Number,
) -> PyResult<f64> {
    answer(core::growth_ml(core::Growth {
        volume_ml: volume_ml.value("volume_ml")?,
        expansion_per_k: expansion_per_k.value("expansion_per_k")?,
        vessel_linear_per_k: vessel_linear_per_k.value("vessel_linear_per_k")?,
        rise_k: rise_k.value("rise_k")?,
    }))
}
