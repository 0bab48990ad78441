//! `trainwright.duty`: how much of its life a duty uses, and which trucks come first.

mod bus;
mod cycles;
mod damage;
mod life;
mod mesh;
mod rank;
mod recorded;
mod wheels;

pub use bus::{BusSignal, BusValue, bus_signal};
pub use cycles::{CycleCount, Residence, rainflow, residence};
pub use damage::{Damage, DamageInterval, DamageLine, DamageRange, damage_interval};
pub use life::{AgingRule, FluidLife, fluid_life};
pub use mesh::{MeshDuty, WheelDuty, mesh_duty};
pub use rank::{RankInterval, bootstrap_ranks, rank_intervals, resampled_total};
pub use recorded::{BearingDuty, GradeHours, TruckDuty, truck_duty, truck_duty_cases, wheel_causes};
pub use wheels::{
    CauseFit, CauseFound, RatioCause, RatioRule, SpeedsRatio, other_driveline, other_teeth, ratio_of, weigh_causes,
};

use numpy::{PyArrayMethods, PyReadonlyArray1};
use pyo3::prelude::*;

use crate::error::refuse;

/// A row of numbers as NumPy holds it.
fn series<'py>(name: &str, values: &Bound<'py, PyAny>) -> PyResult<PyReadonlyArray1<'py, f64>> {
    let numpy = values.py().import("numpy")?;
    let array = numpy.call_method1("ascontiguousarray", (values, numpy.getattr("float64")?));
    let flat = array.and_then(|array| Ok(array.cast_into::<numpy::PyArray1<f64>>()?));
    Ok(flat.map_err(|_| refuse("TEXT", name, format!("{name}: give a row of numbers")))?.readonly())
}
