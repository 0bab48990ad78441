//! Air at an altitude.

use pyo3::prelude::*;
use trainwright::road as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};

class! {
    /// Air at an altitude.
    "trainwright.road" Air = core::Air, explained by ["road.standard_air"] {
        /// Geopotential altitude.
        geopotential_m: f64,
        /// Temperature.
        temp_c: f64,
        /// Absolute pressure.
        pressure_kpa_abs: f64,
        /// Density.
        density_kg_m3: f64,
    }
}

columns! { Air[4]: geopotential_m, temp_c, pressure_kpa_abs, density_kg_m3 }

/// Air of the standard atmosphere at an altitude of −2000 to 11019 m. Arrays give a dictionary of arrays. Source: ISO 2533.
///
/// >>> round(standard_air(altitude_m=1000.0).density_kg_m3, 4)
/// 1.1117
#[pyfunction]
#[pyo3(signature = (*, altitude_m))]
pub fn standard_air<'py>(py: Python<'py>, altitude_m: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
    map_class::<Air, _, 1, 4>(py, [("altitude_m", altitude_m)], |[altitude]| core::standard_air(altitude))
}

/// Density of dry air at an absolute pressure and a temperature.
/// Source: ISO 2533:1975, clause 2, perfect gas law.
///
/// >>> round(density_of_air(pressure_kpa_abs=101.325, temp_c=15.0), 3)
/// 1.225
#[pyfunction]
#[pyo3(signature = (*, pressure_kpa_abs, temp_c, out = None))]
pub fn density_of_air<'py>(
    py: Python<'py>,
    pressure_kpa_abs: Input<'py>,
    temp_c: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("pressure_kpa_abs", pressure_kpa_abs), ("temp_c", temp_c)];
    map(py, columns, out, |[pressure, temp]| core::density_of_air(pressure, temp))
}
