//! Ratios, efficiency and capacity factor of a converter at one point.

use pyo3::prelude::*;
use trainwright::converter as core;

use crate::array::{Input, Out, map};

/// Speed ratio: turbine speed over impeller (engine) speed. Source: SAE J643, definitions.
///
/// >>> speed_ratio(impeller_rpm=2000, turbine_rpm=[0, 1600])
/// array([0. , 0.8])
#[pyfunction]
#[pyo3(signature = (*, impeller_rpm, turbine_rpm, out = None))]
pub fn speed_ratio<'py>(
    py: Python<'py>,
    impeller_rpm: Input<'py>,
    turbine_rpm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("impeller_rpm", impeller_rpm), ("turbine_rpm", turbine_rpm)];
    map(py, columns, out, |[impeller, turbine]| core::speed_ratio(impeller, turbine))
}

/// Efficiency: speed ratio times torque ratio; refused above 1. Source: SAE J643, definitions.
///
/// >>> round(efficiency(speed_ratio=0.1, torque_ratio=2.07), 3)
/// 0.207
#[pyfunction]
#[pyo3(signature = (*, speed_ratio, torque_ratio, out = None))]
pub fn efficiency<'py>(
    py: Python<'py>,
    speed_ratio: Input<'py>,
    torque_ratio: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("speed_ratio", speed_ratio), ("torque_ratio", torque_ratio)];
    map(py, columns, out, |[speed, torque]| core::efficiency(speed, torque))
}

/// Capacity factor of the impeller side, K = n/√T, 1/min per √(N·m). Source: SAE J643, definitions.
///
/// >>> capacity_factor(impeller_rpm=1420, impeller_nm=400)
/// 71.0
#[pyfunction]
#[pyo3(signature = (*, impeller_rpm, impeller_nm, out = None))]
pub fn capacity_factor<'py>(
    py: Python<'py>,
    impeller_rpm: Input<'py>,
    impeller_nm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("impeller_rpm", impeller_rpm), ("impeller_nm", impeller_nm)];
    map(py, columns, out, |[speed, torque]| core::capacity_factor(speed, torque))
}

/// Torque, N·m, that the impeller takes at a speed: T = (n/K)². Source: SAE J643, definitions.
///
/// >>> impeller_torque_nm(impeller_rpm=1420, k_rpm_per_sqrt_nm=71)
/// 400.0
#[pyfunction]
#[pyo3(signature = (*, impeller_rpm, k_rpm_per_sqrt_nm, out = None))]
pub fn impeller_torque_nm<'py>(
    py: Python<'py>,
    impeller_rpm: Input<'py>,
    k_rpm_per_sqrt_nm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("impeller_rpm", impeller_rpm), ("k_rpm_per_sqrt_nm", k_rpm_per_sqrt_nm)];
    map(py, columns, out, |[speed, k]| core::impeller_torque_nm(speed, k))
}

/// Capacity factor of the impeller side from one of the output side (turbine speed over the root of turbine torque), both
/// 1/min per √(N·m). Not at stall, where that of the output side is 0 for every converter.
/// Source: follows from the definitions.
///
/// >>> round(from_output_side(k_output_rpm_per_sqrt_nm=58.55, speed_ratio=0.6, torque_ratio=1.4), 1)
/// 115.5
#[pyfunction]
#[pyo3(signature = (*, k_output_rpm_per_sqrt_nm, speed_ratio, torque_ratio, out = None))]
pub fn from_output_side<'py>(
    py: Python<'py>,
    k_output_rpm_per_sqrt_nm: Input<'py>,
    speed_ratio: Input<'py>,
    torque_ratio: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [
        ("k_output_rpm_per_sqrt_nm", k_output_rpm_per_sqrt_nm),
        ("speed_ratio", speed_ratio),
        ("torque_ratio", torque_ratio),
    ];
    map(py, columns, out, |[k, speed, torque]| core::from_output_side(k, speed, torque))
}

/// Capacity factor of the impeller side, 1/min per √(N·m), from the torque coefficient λ of T = λ·ρ·D⁵·ω².
/// Source: follows from the definitions (similarity of hydrodynamic machines).
///
/// >>> round(from_torque_coefficient(torque_coefficient=0.001, density_kg_m3=850, diameter_mm=300), 1)
/// 210.1
#[pyfunction]
#[pyo3(signature = (*, torque_coefficient, density_kg_m3, diameter_mm, out = None))]
pub fn from_torque_coefficient<'py>(
    py: Python<'py>,
    torque_coefficient: Input<'py>,
    density_kg_m3: Input<'py>,
    diameter_mm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns =
        [("torque_coefficient", torque_coefficient), ("density_kg_m3", density_kg_m3), ("diameter_mm", diameter_mm)];
    map(py, columns, out, |[coefficient, density, diameter]| {
        core::from_torque_coefficient(coefficient, density, diameter)
    })
}
