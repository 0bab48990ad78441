//! `trainwright.fluid`: density, viscosity, mixing, level and fill.

use pyo3::prelude::*;
use pyo3::types::{PyDict, PyFloat};
use trainwright::fluid as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{Field, class, columns};
use crate::error::raise;
use crate::judge::{Budget, Judgment, Reading, Rule};
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

columns! { VolumeCorrection[4]: alpha_per_k, rise_k, factor, density_kg_m3 }

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

class! {
    /// A volume of one fluid in a mixture.
    "trainwright.fluid" Portion = core::Portion {
        /// The fluid.
        fluid: Fluid,
        /// Its volume; all portions at one temperature.
        volume_ml: f64,
    }
}

class! {
    /// A volume of a fluid of known viscosity.
    "trainwright.fluid" ViscosityPortion = core::ViscosityPortion {
        /// Kinematic viscosity; all portions at one temperature.
        viscosity_mm2_s: f64,
        /// Its volume.
        volume_ml: f64,
    }
}

class! {
    /// A volume of a fluid of known friction.
    "trainwright.fluid" FrictionPortion = core::FrictionPortion {
        /// Coefficient of friction of the plates in this fluid alone.
        friction: f64,
        /// Its volume.
        volume_ml: f64,
    }
}

/// The mixture of some portions, as a fluid. Its friction does not follow: see `blend_friction`.
/// Source: follows from the definitions (volumes and masses add).
#[pyfunction]
pub fn blend(portions: Vec<Portion>) -> PyResult<Fluid> {
    answer(core::blend(&plain(portions)))
}

/// Kinematic viscosity of a mixture, all at one temperature. Source: ASTM D7152.
///
/// >>> thin, thick = (ViscosityPortion(viscosity_mm2_s=v, volume_ml=1.0) for v in (10.0, 100.0))
/// >>> round(blend_viscosity([thin, thick]), 1)
/// 26.6
#[pyfunction]
pub fn blend_viscosity(portions: Vec<ViscosityPortion>) -> PyResult<f64> {
    answer(core::blend_viscosity(&plain(portions)))
}

/// Friction of a single portion; refused for more, because friction does not mix.
/// Source: common practice, no source (additives compete for the surface of the plate).
#[pyfunction]
pub fn blend_friction(portions: Vec<FrictionPortion>) -> PyResult<f64> {
    answer(core::blend_friction(&plain(portions)))
}

/// Share of the first fluid left after equal partial changes.
/// Source: follows from the definitions (repeated dilution).
///
/// >>> old_share(changed_fraction=0.5, changes=3)
/// 0.125
#[pyfunction]
#[pyo3(signature = (*, changed_fraction, changes))]
pub fn old_share(changed_fraction: Number, changes: u32) -> PyResult<f64> {
    answer(core::old_share(changed_fraction.value("changed_fraction")?, changes))
}

/// Free area of the sump against height above the overflow edge, linear between rows.
///
/// >>> sump = Sump(height_mm=[-10.0, 0.0, 10.0], free_area_cm2=[80.0, 100.0, 200.0])
/// >>> sump.level_for(volume_ml=150.0)
/// 10.0
#[pyclass(frozen, from_py_object, module = "trainwright.fluid")]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sump(core::Sump);

#[pymethods]
impl Sump {
    #[new]
    #[pyo3(signature = (*, height_mm, free_area_cm2))]
    fn new(height_mm: Vec<f64>, free_area_cm2: Vec<f64>) -> PyResult<Self> {
        answer(core::Sump::from_table(&height_mm, &free_area_cm2))
    }

    /// Heights above the overflow edge.
    #[getter]
    fn height_mm(&self) -> Vec<f64> {
        self.used(self.0.height_mm)
    }

    /// Free area at each height.
    #[getter]
    fn free_area_cm2(&self) -> Vec<f64> {
        self.used(self.0.free_area_cm2)
    }

    /// Free area at a height, cm².
    #[pyo3(signature = (*, height_mm, out = None))]
    fn free_area_at<'py>(
        &self,
        py: Python<'py>,
        height_mm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("height_mm", height_mm)], out, |[height]| self.0.free_area_at(height))
    }

    /// Volume between the overflow edge and a height, mL, negative below the edge.
    /// Source: follows from the definitions (volume of a prismatoid, exact for a linear area).
    #[pyo3(signature = (*, height_mm, out = None))]
    fn volume_to<'py>(
        &self,
        py: Python<'py>,
        height_mm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("height_mm", height_mm)], out, |[height]| self.0.volume_to(height))
    }

    /// Level at which this volume stands between it and the overflow edge, mm.
    #[pyo3(signature = (*, volume_ml, out = None))]
    fn level_for<'py>(
        &self,
        py: Python<'py>,
        volume_ml: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("volume_ml", volume_ml)], out, |[volume]| self.0.level_for(volume))
    }

    fn __eq__(&self, other: &Self) -> bool {
        self == other
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        self.__repr__().into_pyobject(py)?.hash()
    }

    fn __repr__(&self) -> String {
        format!("Sump(height_mm={:?}, free_area_cm2={:?})", self.height_mm(), self.free_area_cm2())
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Bound<'py, PyDict>)> {
        Ok(((), self.as_dict(py)?))
    }

    /// The table by name.
    fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let fields = PyDict::new(py);
        fields.set_item("height_mm", self.height_mm())?;
        fields.set_item("free_area_cm2", self.free_area_cm2())?;
        Ok(fields)
    }
}

impl Sump {
    fn used(&self, column: [f64; core::SUMP_ROWS]) -> Vec<f64> {
        column.into_iter().take(self.0.rows as usize).collect()
    }
}

impl Field for Sump {
    type Argument = Self;

    fn take(_: &'static str, argument: Self) -> PyResult<Self> {
        Ok(argument)
    }

    fn source(&self) -> String {
        self.__repr__()
    }

    fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        Ok(self.as_dict(py)?.into_any().unbind())
    }
}

impl From<core::Sump> for Sump {
    fn from(sump: core::Sump) -> Self {
        Self(sump)
    }
}

impl From<Sump> for core::Sump {
    fn from(sump: Sump) -> Self {
        sump.0
    }
}

class! {
    /// What a record states of the fill of a unit. All of `dry_l` grows with temperature, into the sump's free area.
    "trainwright.fluid" Fill = core::Fill, checked by usable {
        /// Free area of the sump.
        sump: Sump,
        /// Whole fill, filled to the edge at the reference temperature; cooler and lines included.
        dry_l: f64,
        /// Part that a drain takes.
        service_l: f64,
        /// Part that stands in cooler and lines.
        cooler_and_lines_l: f64,
        /// Part that runs back into the sump when the engine stops.
        drainback_off_l: f64,
        /// Least temperature of the level check.
        check_low_c: f64,
        /// Greatest temperature of the level check.
        check_high_c: f64,
        /// Temperature at which a right fill stands at the edge.
        check_reference_c: f64,
        /// Level below which the pickup draws air.
        pickup_uncovers_mm: f64,
        /// Level above which a rotating part dips.
        gear_dips_mm: f64,
    }
}

fn usable(fill: core::Fill) -> trainwright::Result<core::Fill> {
    fill.check_fill().map(|()| fill)
}

#[pymethods]
impl Fill {
    /// Level at a temperature; `excess_ml` at the reference temperature is 0 for a right fill. Arrays give a dictionary of
    /// arrays.
    /// Source: follows from the definitions (all the growth goes into the sump's free area).
    #[pyo3(signature = (fluid, *, temp_c, excess_ml = None))]
    fn level_at<'py>(
        &self,
        py: Python<'py>,
        fluid: Fluid,
        temp_c: Input<'py>,
        excess_ml: Option<Input<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("excess_ml", excess_or_none(py, excess_ml)?), ("temp_c", temp_c)];
        map_class::<LevelAt, _, 2, 6>(py, columns, |[excess_ml, temp_c]| self.0.level_at(&fluid.0, excess_ml, temp_c))
    }

    /// Volume to add or drain now, with its uncertainty, and the fill judged against the check window. Hot fluid burns.
    /// Source: JCGM 100:2008, clause 5.1.2, equation 10, uncorrelated inputs.
    #[pyo3(signature = (fluid, check, rule))]
    fn adjust_fill(&self, fluid: Fluid, check: LevelCheck, rule: Rule) -> PyResult<Adjustment> {
        answer(self.0.adjust_fill(&fluid.0, check.0, rule.0))
    }

    /// Level with the engine stopped, when the drain-back has come into the sump.
    /// Source: follows from the definitions (volumes add).
    #[pyo3(signature = (*, running_level_mm, out = None))]
    fn engine_off_level_mm<'py>(
        &self,
        py: Python<'py>,
        running_level_mm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("running_level_mm", running_level_mm)], out, |[level]| self.0.engine_off_level_mm(level))
    }

    /// Temperature above which a rotating part dips.
    /// Source: follows from the definitions (fluid.level_at solved for t).
    #[pyo3(signature = (fluid, *, excess_ml = None, out = None))]
    fn gear_dips_at_c<'py>(
        &self,
        py: Python<'py>,
        fluid: Fluid,
        excess_ml: Option<Input<'py>>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("excess_ml", excess_or_none(py, excess_ml)?)], out, |[excess]| {
            self.0.gear_dips_at_c(&fluid.0, excess)
        })
    }

    /// Volume that may be lost, from this level, until the pickup draws air.
    /// Source: follows from the definitions (difference of volumes).
    #[pyo3(signature = (*, level_mm, out = None))]
    fn loss_to_pickup_ml<'py>(
        &self,
        py: Python<'py>,
        level_mm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("level_mm", level_mm)], out, |[level]| self.0.loss_to_pickup_ml(level))
    }

    /// Volumes to pour for a dry, a service and a cooler fill, at the temperature of the fluid in the can.
    /// Source: follows from the definitions (definition of cubic expansion).
    #[pyo3(signature = (fluid, *, can_c))]
    fn pour_volumes(&self, fluid: Fluid, can_c: Number) -> PyResult<PourVolumes> {
        answer(self.0.pour_volumes(&fluid.0, can_c.value("can_c")?))
    }
}

class! {
    /// Level at a temperature, with what it was computed from.
    "trainwright.fluid" LevelAt = core::LevelAt, explained by ["fluid.level_at"] {
        /// All the fluid at this temperature.
        total_ml: f64,
        /// Part of it above the overflow edge, negative below.
        above_edge_ml: f64,
        /// Level above the overflow edge.
        level_mm: f64,
        /// Level that a sump of constant area would show: the usual shortcut, to see its error.
        constant_area_level_mm: f64,
        /// Left until the rotating part dips.
        gear_margin_mm: f64,
        /// Left until the pickup draws air.
        pickup_margin_mm: f64,
    }
}

columns! {
    LevelAt[6]: total_ml, above_edge_ml, level_mm, constant_area_level_mm, gear_margin_mm, pickup_margin_mm
}

class! {
    /// What was read at a level check, engine idling, vehicle level.
    "trainwright.fluid" LevelCheck = core::LevelCheck {
        /// Temperature of the fluid, °C.
        temp_c: Reading,
        /// Level above the overflow edge, mm; 0 when it just runs over.
        level_mm: Reading,
        /// True free area over that of the table: 1 with its standard uncertainty.
        area_scale: Reading,
    }
}

class! {
    /// What to add or drain, with what it was computed from.
    "trainwright.fluid" Adjustment = core::Adjustment, explained by ["fluid.adjust_fill"],
        inputs ["temperature", "level", "area"] {
        /// All the fluid there is now, at this temperature.
        present_ml: f64,
        /// All the fluid there should be now, at this temperature.
        right_ml: f64,
        /// Add this now, at this temperature, to be right; drain it where negative.
        add_now_ml: Reading,
        /// Too much (negative: too little) at the reference temperature, judged against what the check window would leave.
        excess_ml: Judgment,
        /// Where the uncertainty of the excess comes from: temperature, level, area, in this order.
        budget: Budget,
        /// Probability that the temperature lies in the check window.
        chance_in_window: f64,
    }
}

class! {
    /// Volumes to pour, at the temperature of the fluid in the can.
    "trainwright.fluid" PourVolumes = core::PourVolumes, explained by ["fluid.pour_volumes"] {
        /// Into an empty unit.
        dry_ml: f64,
        /// After a drain.
        service_ml: f64,
        /// More of it where cooler and lines were emptied too.
        cooler_ml: f64,
        /// Share of old fluid that a service leaves.
        old_share: f64,
    }
}

/// Level that a volume would reach in a sump with vertical sides.
/// Source: follows from the definitions (vertical sides).
///
/// >>> constant_area_level_mm(above_edge_ml=388.8, area_cm2=900.0)
/// 4.32
#[pyfunction]
#[pyo3(signature = (*, above_edge_ml, area_cm2, out = None))]
pub fn constant_area_level_mm<'py>(
    py: Python<'py>,
    above_edge_ml: Input<'py>,
    area_cm2: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("above_edge_ml", above_edge_ml), ("area_cm2", area_cm2)], out, |[volume, area]| {
        core::constant_area_level_mm(volume, area)
    })
}

/// How much too high the level looks, away from the center of the sump, when the vehicle is not level.
/// Source: follows from the definitions (plane level surface).
///
/// >>> round(tilt_shift_mm(offset_mm=100.0, tilt_deg=1.718), 2)
/// 3.0
#[pyfunction]
#[pyo3(signature = (*, offset_mm, tilt_deg, out = None))]
pub fn tilt_shift_mm<'py>(
    py: Python<'py>,
    offset_mm: Input<'py>,
    tilt_deg: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("offset_mm", offset_mm), ("tilt_deg", tilt_deg)], out, |[offset, tilt]| core::tilt_shift_mm(offset, tilt))
}

/// The excess that was given, or that of a right fill.
fn excess_or_none<'py>(py: Python<'py>, excess_ml: Option<Input<'py>>) -> PyResult<Input<'py>> {
    match excess_ml {
        Some(excess_ml) => Ok(excess_ml),
        None => PyFloat::new(py, 0.0).extract(),
    }
}

fn plain<T, U: From<T>>(portions: Vec<T>) -> Vec<U> {
    portions.into_iter().map(U::from).collect()
}

fn answer<T, U: From<T>>(result: trainwright::Result<T>) -> PyResult<U> {
    result.map(U::from).map_err(raise)
}
