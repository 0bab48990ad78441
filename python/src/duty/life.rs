//! Life of the fluid.

use pyo3::prelude::*;
use trainwright::duty as core;

use super::series;
use crate::array::{Input, map};
use crate::class::{class, words};
use crate::error::{answer, refuse};

words! {
    "kind" AgingKind = core::AgingKind { Halving = "halving", Arrhenius = "arrhenius" }
}

class! {
    /// How the rate of aging follows the temperature: `AgingRule.halving(...)` or `AgingRule.arrhenius(...)`.
    "trainwright.duty" AgingRule = core::AgingRule {
        /// `"halving"` or `"arrhenius"`.
        kind: AgingKind,
        /// Temperature at which the factor is 1, °C.
        reference_c: f64,
        /// Step of temperature that doubles the rate, K.
        halving_k: f64 = 0.0,
        /// Activation energy over the gas constant, K.
        activation_k: f64 = 0.0,
        /// Least factor: 1 never counts cooler hours as less than those at the reference, 0 lets the rule run on.
        least_factor: f64,
    }
}

class! {
    /// Share of its life that fluid has used. Not a drain interval: the maker's is.
    "trainwright.duty" FluidLife = core::FluidLife, explained by ["duty.fluid_life"] {
        /// Share used in the known hours.
        used: f64,
        /// Share used if the unknown hours were as cool as the coolest bin.
        used_lower: f64,
        /// Share used if the unknown hours were as hot as the hottest bin.
        used_upper: f64,
        /// Known hours, h.
        known_h: f64,
        /// Hours left in the same use, h; 0 where the life is used up.
        left_h: f64,
        /// Part of the used share that the hottest 5 % of the known hours did.
        worst_share: f64,
        /// Temperature from which those hours count, °C.
        worst_from_c: f64,
    }
}

#[pymethods]
impl AgingRule {
    /// Twice as fast for each step of temperature above a reference. Source: common practice, no source.
    #[staticmethod]
    #[pyo3(signature = (*, reference_c, halving_k, least_factor))]
    fn halving(reference_c: f64, halving_k: f64, least_factor: f64) -> PyResult<Self> {
        answer(core::AgingRule::halving(reference_c, halving_k, least_factor))
    }

    /// Reaction rate of laboratory data. Source: Arrhenius form.
    #[staticmethod]
    #[pyo3(signature = (*, reference_c, activation_k))]
    fn arrhenius(reference_c: f64, activation_k: f64) -> PyResult<Self> {
        answer(core::AgingRule::arrhenius(reference_c, activation_k))
    }

    /// How many times faster than at the reference temperature fluid ages. Source: common practice, no source.
    ///
    /// >>> AgingRule.halving(reference_c=80, halving_k=10, least_factor=1).aging_factor([60, 80, 100]).tolist()
    /// [1.0, 1.0, 4.0]
    fn aging_factor<'py>(&self, py: Python<'py>, temp_c: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("temp_c", temp_c)], None, |[temp_c]| self.0.aging_factor(temp_c))
    }
}

/// Share of its life that fluid has used, from hours at temperature, and what is left in the same use.
///
/// `unknown_h` are hours without a temperature: unknown, neither cool nor hot. Source: common practice, no source.
///
/// >>> rule = AgingRule.halving(reference_c=80, halving_k=10, least_factor=1)
/// >>> round(fluid_life(temp_c=[80, 120], duration_h=[400, 40], unknown_h=0, life_h=4000, rule=rule).used, 6)
/// 0.26
#[pyfunction]
#[pyo3(signature = (*, temp_c, duration_h, unknown_h, life_h, rule))]
pub fn fluid_life(
    temp_c: Bound<'_, PyAny>,
    duration_h: Bound<'_, PyAny>,
    unknown_h: f64,
    life_h: f64,
    rule: AgingRule,
) -> PyResult<FluidLife> {
    let (temps, hours) = (series("temp_c", &temp_c)?, series("duration_h", &duration_h)?);
    let (temps, hours) = (temps.as_slice()?, hours.as_slice()?);
    if temps.len() != hours.len() {
        let message =
            format!("{} temperatures and {} durations: give one of each for every bin", temps.len(), hours.len());
        return Err(refuse("INCONSISTENT", "temp_c, duration_h", message));
    }
    let pairs = temps.iter().zip(hours);
    let bins: Vec<_> = pairs.map(|(&temp_c, &duration_h)| core::FluidBin { temp_c, duration_h }).collect();
    answer(core::fluid_life(&bins, unknown_h, life_h, rule.0))
}
