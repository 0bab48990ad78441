//! Viscosity against temperature, and viscosity index.

use pyo3::prelude::*;
use trainwright::fluid as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::quantity::Number;

class! {
    /// Kinematic viscosity against temperature: lg lg(ν + added) = A − B lg T. Make one with its static methods.
    ///
    /// >>> line = ViscosityLine.through(first_c=40.0, first_mm2_s=32.0, second_c=100.0, second_mm2_s=5.4)
    /// >>> round(line.viscosity_at(temp_c=80.0), 6)
    /// 8.533215
    "trainwright.fluid" ViscosityLine = core::ViscosityLine {
        /// Height A.
        a: f64,
        /// Slope B.
        b: f64,
        /// Constant added to the viscosity: 0.7, or 0.8 in the older form.
        added_mm2_s: f64 = 0.7,
    }
}

#[pymethods]
impl ViscosityLine {
    /// The line through two points, 2 mm²/s and more. Source: ASTM D341.
    #[staticmethod]
    #[pyo3(signature = (*, first_c, first_mm2_s, second_c, second_mm2_s))]
    fn through(first_c: Number, first_mm2_s: Number, second_c: Number, second_mm2_s: Number) -> PyResult<Self> {
        answer(core::ViscosityLine::through(points(first_c, first_mm2_s, second_c, second_mm2_s)?))
    }

    /// The line of the older form, with 0.8 in place of 0.7.
    #[staticmethod]
    #[pyo3(signature = (*, first_c, first_mm2_s, second_c, second_mm2_s))]
    fn through_older(first_c: Number, first_mm2_s: Number, second_c: Number, second_mm2_s: Number) -> PyResult<Self> {
        answer(core::ViscosityLine::through_older(points(first_c, first_mm2_s, second_c, second_mm2_s)?))
    }

    /// The line of the full form, 0.21 mm²/s and more; read it with `thin_viscosity_at`.
    #[staticmethod]
    #[pyo3(signature = (*, first_c, first_mm2_s, second_c, second_mm2_s))]
    fn through_thin(first_c: Number, first_mm2_s: Number, second_c: Number, second_mm2_s: Number) -> PyResult<Self> {
        answer(core::ViscosityLine::through_thin(points(first_c, first_mm2_s, second_c, second_mm2_s)?))
    }

    /// Kinematic viscosity at a temperature, 2 mm²/s and more.
    /// Source: ASTM D341, viscosity-temperature equation, simple form.
    #[pyo3(signature = (*, temp_c, out = None))]
    fn viscosity_at<'py>(
        &self,
        py: Python<'py>,
        temp_c: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("temp_c", temp_c)], out, |[temp_c]| self.0.viscosity_at(temp_c))
    }

    /// Kinematic viscosity at a temperature, 0.21 mm²/s and more, on a line of the full form.
    /// Source: ASTM D341, viscosity-temperature equation, full form.
    #[pyo3(signature = (*, temp_c, out = None))]
    fn thin_viscosity_at<'py>(
        &self,
        py: Python<'py>,
        temp_c: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("temp_c", temp_c)], out, |[temp_c]| self.0.thin_viscosity_at(temp_c))
    }

    /// Temperature at which the fluid has this viscosity.
    #[pyo3(signature = (*, viscosity_mm2_s, out = None))]
    fn temp_for_viscosity<'py>(
        &self,
        py: Python<'py>,
        viscosity_mm2_s: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("viscosity_mm2_s", viscosity_mm2_s)], out, |[viscosity]| self.0.temp_for_viscosity(viscosity))
    }
}

fn points(
    first_c: Number,
    first_mm2_s: Number,
    second_c: Number,
    second_mm2_s: Number,
) -> PyResult<core::ViscosityPoints> {
    Ok(core::ViscosityPoints {
        first_c: first_c.value("first_c")?,
        first_mm2_s: first_mm2_s.value("first_mm2_s")?,
        second_c: second_c.value("second_c")?,
        second_mm2_s: second_mm2_s.value("second_mm2_s")?,
    })
}

/// Dynamic viscosity, mPa·s, from kinematic viscosity and density at one temperature.
/// Source: follows from the definitions (kinematic viscosity).
///
/// >>> dynamic_viscosity(kinematic_mm2_s=10.0, density_kg_m3=850.0)
/// 8.5
#[pyfunction]
#[pyo3(signature = (*, kinematic_mm2_s, density_kg_m3, out = None))]
pub fn dynamic_viscosity<'py>(
    py: Python<'py>,
    kinematic_mm2_s: Input<'py>,
    density_kg_m3: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("kinematic_mm2_s", kinematic_mm2_s), ("density_kg_m3", density_kg_m3)], out, |[kinematic, density]| {
        core::dynamic_viscosity(kinematic, density)
    })
}

class! {
    /// Viscosity index, with what it was computed from.
    "trainwright.fluid" ViscosityIndex = core::ViscosityIndex, explained by ["fluid.viscosity_index"] {
        /// L: viscosity at 40 °C of the oil of index 0 that is as thick at 100 °C.
        zero_40c_mm2_s: f64,
        /// H: viscosity at 40 °C of the oil of index 100 that is as thick at 100 °C.
        hundred_40c_mm2_s: f64,
        /// Index before rounding.
        index: f64,
        /// Index as the standard reports it.
        reported: f64,
    }
}

columns! { ViscosityIndex[4]: zero_40c_mm2_s, hundred_40c_mm2_s, index, reported }

/// Viscosity index from the kinematic viscosities at 40 °C and 100 °C; arrays give a dictionary of arrays.
///
/// Source: ASTM D2270.
///
/// >>> viscosity_index(viscosity_40c_mm2_s=73.30, viscosity_100c_mm2_s=8.86).reported
/// 92.0
#[pyfunction]
#[pyo3(signature = (*, viscosity_40c_mm2_s, viscosity_100c_mm2_s))]
pub fn viscosity_index<'py>(
    py: Python<'py>,
    viscosity_40c_mm2_s: Input<'py>,
    viscosity_100c_mm2_s: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("viscosity_40c_mm2_s", viscosity_40c_mm2_s), ("viscosity_100c_mm2_s", viscosity_100c_mm2_s)];
    map_class::<ViscosityIndex, _, 2, 4>(py, columns, |[viscosity_40c_mm2_s, viscosity_100c_mm2_s]| {
        core::viscosity_index(core::ViscosityPair { viscosity_40c_mm2_s, viscosity_100c_mm2_s })
    })
}

/// Viscosity at 100 °C of the oil with this viscosity at 40 °C and this index.
///
/// >>> round(viscosity_100c_for_index(viscosity_40c_mm2_s=32.0, index=105.0), 5)
/// 5.44829
#[pyfunction]
#[pyo3(signature = (*, viscosity_40c_mm2_s, index, out = None))]
pub fn viscosity_100c_for_index<'py>(
    py: Python<'py>,
    viscosity_40c_mm2_s: Input<'py>,
    index: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("viscosity_40c_mm2_s", viscosity_40c_mm2_s), ("index", index)], out, |[viscosity, index]| {
        core::viscosity_100c_for_index(viscosity, index)
    })
}
