//! Where an engine and a converter meet.

use pyo3::prelude::*;
use trainwright::converter as core;

use super::tables::{Characteristic, EngineCurve};
use crate::array::{Input, map_class};
use crate::class::{class, columns};
use crate::error::answer;

class! {
    /// What the engine gives today of its curve.
    ///
    /// >>> EngineToday(torque_factor=0.95)
    /// EngineToday(torque_factor=0.95, accessory_nm=0.0)
    "trainwright.converter" EngineToday = core::EngineToday {
        /// Torque over that of the curve, above 0 to 2: air, throttle, fuel.
        torque_factor: f64 = 1.0,
        /// Torque that accessories take besides those that the curve counts, N·m; negative where one that it counts is idle.
        accessory_nm: f64 = 0.0,
    }
}

class! {
    /// A speed at which engine and converter are in balance.
    "trainwright.converter" OperatingPoint = core::OperatingPoint, explained by ["converter.operating_points"] {
        /// Speed of engine and impeller, 1/min.
        engine_rpm: f64,
        /// Speed of the turbine, 1/min.
        turbine_rpm: f64,
        /// Turbine speed over impeller speed.
        speed_ratio: f64,
        /// Turbine torque over impeller torque.
        torque_ratio: f64,
        /// Capacity factor of the impeller side, 1/min per √(N·m).
        k_rpm_per_sqrt_nm: f64,
        /// Torque that the engine gives and the impeller takes, N·m.
        impeller_nm: f64,
        /// Torque at the turbine, N·m.
        turbine_nm: f64,
        /// Power into the impeller, kW.
        impeller_kw: f64,
        /// Power out of the turbine, kW.
        turbine_kw: f64,
        /// What the converter turns into heat, kW.
        heat_kw: f64,
        /// Power out over power in.
        efficiency: f64,
        /// The engine comes back to this speed by itself.
        stable: bool = true,
    }
}

columns! {
    OperatingPoint[11]: engine_rpm, turbine_rpm, speed_ratio, torque_ratio, k_rpm_per_sqrt_nm, impeller_nm, turbine_nm,
    impeller_kw, turbine_kw, heat_kw, efficiency
}

fn today_or_as_measured(today: Option<EngineToday>) -> core::EngineToday {
    today.map_or(core::EngineToday::AS_MEASURED, Into::into)
}

/// The one speed at which engine and converter settle: an `OperatingPoint`, or a dictionary of arrays. `turbine_rpm` is 0 at
/// stall; `today` is as the curve was measured unless given. Refused where there is none, or more than one.
/// Source: SAE J643, definitions.
///
/// >>> engine = EngineCurve(speed_rpm=[800, 3000], torque_nm=[400, 400], max_rpm=3600)
/// >>> converter = Characteristic(speed_ratio=[0, 0.9], torque_ratio=[2, 1], k_rpm_per_sqrt_nm=[71, 100])
/// >>> round(operating_point(engine, converter, turbine_rpm=0).engine_rpm, 6)
/// 1420.0
/// >>> operating_point(engine, converter, turbine_rpm=[0, 1000])["heat_kw"].round(1)
/// array([59.5, 17. ])
#[pyfunction]
#[pyo3(signature = (engine, converter, *, turbine_rpm, today = None))]
pub fn operating_point<'py>(
    py: Python<'py>,
    engine: EngineCurve,
    converter: Characteristic,
    turbine_rpm: Input<'py>,
    today: Option<EngineToday>,
) -> PyResult<Bound<'py, PyAny>> {
    let today = today_or_as_measured(today);
    map_class::<OperatingPoint, _, 1, 11>(py, [("turbine_rpm", turbine_rpm)], |[turbine]| {
        core::operating_point(&engine.0, today, &converter.0, turbine)
    })
}

/// Every engine speed at which the engine gives just what the impeller takes, stable or not, by rising speed; an empty list
/// where the two do not meet within both tables. Source: SAE J643, definitions.
#[pyfunction]
#[pyo3(signature = (engine, converter, *, turbine_rpm, today = None))]
pub fn operating_points(
    engine: EngineCurve,
    converter: Characteristic,
    turbine_rpm: f64,
    today: Option<EngineToday>,
) -> PyResult<Vec<OperatingPoint>> {
    let found = core::operating_points(&engine.0, today_or_as_measured(today), &converter.0, turbine_rpm);
    answer(found.map(|found| found.in_use().to_vec()))
        .map(|points: Vec<_>| points.into_iter().map(Into::into).collect())
}
