//! Engine curve and characteristic: tables of points.

use pyo3::prelude::*;
use trainwright::converter as core;

use crate::array::{Input, Out, map};
use crate::class::common;
use crate::error::answer;

/// Engine torque against engine speed, straight between the points: net, full throttle. 2 to 32 points, speeds rising.
///
/// >>> engine = EngineCurve(speed_rpm=[1000, 2000], torque_nm=[300, 400], max_rpm=5000)
/// >>> engine.torque_at_nm(speed_rpm=1250)
/// 325.0
#[pyclass(frozen, from_py_object, module = "trainwright.converter")]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineCurve(pub core::EngineCurve);

#[pymethods]
impl EngineCurve {
    #[new]
    #[pyo3(signature = (*, speed_rpm, torque_nm, max_rpm))]
    fn new(speed_rpm: Vec<f64>, torque_nm: Vec<f64>, max_rpm: f64) -> PyResult<Self> {
        answer(core::EngineCurve::from_table(&speed_rpm, &torque_nm, max_rpm))
    }

    /// Speeds, 1/min.
    #[getter]
    fn speed_rpm(&self) -> Vec<f64> {
        used(self.0.points, self.0.speed_rpm)
    }

    /// Torque at each speed, N·m.
    #[getter]
    fn torque_nm(&self) -> Vec<f64> {
        used(self.0.points, self.0.torque_nm)
    }

    /// Greatest speed, 1/min.
    #[getter]
    fn max_rpm(&self) -> f64 {
        self.0.max_rpm
    }

    /// Torque at a speed, N·m; refused beyond the ends of the curve, which says nothing there.
    /// Source: follows from the definitions (straight line between two points).
    #[pyo3(signature = (*, speed_rpm, out = None))]
    fn torque_at_nm<'py>(
        &self,
        py: Python<'py>,
        speed_rpm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("speed_rpm", speed_rpm)], out, |[speed]| self.0.torque_at_nm(speed))
    }
}

common!(EngineCurve, [speed_rpm, torque_nm, max_rpm]);

/// Characteristic of a torque converter, straight between the points: torque ratio and capacity factor K of the impeller
/// side (1/min per √(N·m)) against speed ratio. 2 to 32 points, speed ratios rising; an efficiency above 1 is refused.
///
/// >>> loose = Characteristic(speed_ratio=[0, 0.8, 0.9], torque_ratio=[2, 1.1, 1], k_rpm_per_sqrt_nm=[70, 84, 100])
/// >>> loose.torque_ratio_at(speed_ratio=[0, 0.4])
/// array([2.  , 1.55])
/// >>> loose.coupling_point()
/// 0.9
#[pyclass(frozen, from_py_object, module = "trainwright.converter")]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Characteristic(pub core::Characteristic);

#[pymethods]
impl Characteristic {
    #[new]
    #[pyo3(signature = (*, speed_ratio, torque_ratio, k_rpm_per_sqrt_nm))]
    fn new(speed_ratio: Vec<f64>, torque_ratio: Vec<f64>, k_rpm_per_sqrt_nm: Vec<f64>) -> PyResult<Self> {
        answer(core::Characteristic::from_table(&speed_ratio, &torque_ratio, &k_rpm_per_sqrt_nm))
    }

    /// Turbine speed over impeller speed.
    #[getter]
    fn speed_ratio(&self) -> Vec<f64> {
        used(self.0.points, self.0.speed_ratio)
    }

    /// Turbine torque over impeller torque at each.
    #[getter]
    fn torque_ratio(&self) -> Vec<f64> {
        used(self.0.points, self.0.torque_ratio)
    }

    /// Capacity factor of the impeller side at each, 1/min per √(N·m).
    #[getter]
    fn k_rpm_per_sqrt_nm(&self) -> Vec<f64> {
        used(self.0.points, self.0.k_rpm_per_sqrt_nm)
    }

    /// Torque ratio at a speed ratio; refused beyond the ends of the characteristic. Source: SAE J643, definitions.
    #[pyo3(signature = (*, speed_ratio, out = None))]
    fn torque_ratio_at<'py>(
        &self,
        py: Python<'py>,
        speed_ratio: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("speed_ratio", speed_ratio)], out, |[ratio]| self.0.torque_ratio_at(ratio))
    }

    /// Capacity factor of the impeller side at a speed ratio, 1/min per √(N·m); refused beyond the ends.
    /// Source: SAE J643, definitions.
    #[pyo3(signature = (*, speed_ratio, out = None))]
    fn capacity_factor_at<'py>(
        &self,
        py: Python<'py>,
        speed_ratio: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("speed_ratio", speed_ratio)], out, |[ratio]| self.0.capacity_factor_at(ratio))
    }

    /// Speed ratio from which the converter no longer multiplies torque. Source: SAE J643, definitions.
    fn coupling_point(&self) -> PyResult<f64> {
        answer(self.0.coupling_point())
    }
}

common!(Characteristic, [speed_ratio, torque_ratio, k_rpm_per_sqrt_nm]);

fn used(points: u32, column: [f64; core::TABLE_POINTS]) -> Vec<f64> {
    column.into_iter().take(points as usize).collect()
}

/// From and to the core's table.
macro_rules! table {
    ($name:ident) => {
        impl From<core::$name> for $name {
            fn from(table: core::$name) -> Self {
                Self(table)
            }
        }

        impl From<$name> for core::$name {
            fn from(table: $name) -> Self {
                table.0
            }
        }
    };
}

table! { EngineCurve }
table! { Characteristic }
