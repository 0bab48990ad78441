//! Mixtures of fluids.

use pyo3::prelude::*;
use trainwright::fluid as core;

use super::density::Fluid;
use crate::class::class;
use crate::error::answer;
use crate::quantity::Number;

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

fn plain<T, U: From<T>>(portions: Vec<T>) -> Vec<U> {
    portions.into_iter().map(U::from).collect()
}
