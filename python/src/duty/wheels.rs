//! A wrong tire, axle or tooth count.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::duty as core;

use super::series;
use crate::class::{class, words};
use crate::error::{answer, raise};
use crate::judge::Reading;
use crate::road::Driveline;

class! {
    /// How a ratio of two speeds is measured.
    "trainwright.duty" RatioRule = core::RatioRule {
        /// Least speed of both that counts, above 0.
        least: f64,
        /// Step of the shown speed, 0 or more.
        quantum: f64,
        /// Relative standard uncertainty of the true speed that is common to all rows.
        u_rel: f64,
        /// Rows of a block: as many as lean on one another, 1 or more.
        block_rows: u32,
    }
}

class! {
    /// A measured ratio of two speeds.
    "trainwright.duty" SpeedsRatio = core::SpeedsRatio, explained by ["duty.ratio_of"] {
        /// True over shown.
        ratio: Reading,
        /// Part of its uncertainty from the scatter of the blocks.
        scatter_u: f64,
        /// Part from the step of the shown speed.
        step_u: f64,
        /// Part from the true speed.
        true_u: f64,
        /// Mean of the shown speed over the rows used.
        mean_shown: f64,
        /// Rows used.
        used: u32,
        /// Rows too slow.
        slow: u32,
        /// Rows with a missing, negative or infinite value.
        missing: u32,
        /// Whole blocks.
        blocks: u32,
    }
}

class! {
    /// Something that explains a ratio of speeds.
    "trainwright.duty" RatioCause = core::RatioCause, explained by ["duty.other_driveline", "duty.other_teeth"] {
        /// True over shown road speed that it makes.
        road: Reading,
        /// Measured over true gear ratio that it makes, in every gear: 1 but for a sensor.
        gear: f64 = 1.0,
        /// Weight before the measurement, above 0.
        weight: f64 = 1.0,
    }
}

class! {
    /// How a cause fits.
    "trainwright.duty" CauseFit = core::CauseFit {
        /// Chance among the causes listed.
        chance: f64,
        /// Deviation of the road ratio in standard uncertainties.
        road_z: f64,
        /// Deviation of the gear ratios in standard uncertainties; 0 where they are not known.
        gear_z: f64,
    }
}

words! {
    "kind" CauseKind = core::CauseKind { Explained = "explained", CannotTell = "cannot tell", NoneFits = "none fits" }
}

/// What the weighing of causes came to.
#[pyclass(frozen, module = "trainwright.duty")]
pub struct CauseFound {
    found: core::CauseFound,
    names: Vec<String>,
    fits: Vec<core::CauseFit>,
}

crate::class::explained!(CauseFound, ["duty.weigh_causes"], , []);

#[pymethods]
impl CauseFound {
    /// `"explained"`, `"cannot tell"` or `"none fits"`.
    #[getter]
    fn kind(&self) -> CauseKind {
        CauseKind(self.found.kind)
    }

    /// Name of the best cause.
    #[getter]
    fn best(&self) -> &str {
        self.names.get(self.found.best as usize).map_or("", String::as_str)
    }

    /// Its chance among the causes listed.
    #[getter]
    fn chance(&self) -> f64 {
        self.found.fit.chance
    }

    /// Its deviation of the road ratio in standard uncertainties.
    #[getter]
    fn road_z(&self) -> f64 {
        self.found.fit.road_z
    }

    /// Its deviation of the gear ratios in standard uncertainties; 0 where they are not known.
    #[getter]
    fn gear_z(&self) -> f64 {
        self.found.fit.gear_z
    }

    /// How each cause fits: `CauseFit` by name.
    fn fits<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let fits = PyDict::new(py);
        self.names.iter().zip(&self.fits).try_for_each(|(name, fit)| fits.set_item(name, CauseFit(*fit)))?;
        Ok(fits)
    }

    fn __repr__(&self) -> String {
        format!("<{}: {}, chance {:.3}>", self.kind().word(), self.best(), self.chance())
    }
}

/// Ratio of two speeds measured side by side, true over shown, with its uncertainty. Rows where either is below `rule.least`,
/// missing or negative are counted and not used. Source: JCGM 100:2008.
///
/// >>> rule = RatioRule(least=30, quantum=1, u_rel=0, block_rows=2)
/// >>> round(ratio_of([99, 88, 99, 88, 5], [90, 80, 90, 80, 3], rule=rule).ratio.value, 6)
/// 1.1
#[pyfunction]
#[pyo3(signature = (true_values, shown_values, *, rule))]
pub fn ratio_of(
    true_values: Bound<'_, PyAny>,
    shown_values: Bound<'_, PyAny>,
    rule: RatioRule,
) -> PyResult<SpeedsRatio> {
    let (true_values, shown) = (series("true_values", &true_values)?, series("shown_values", &shown_values)?);
    answer(core::ratio_of(true_values.as_slice()?, shown.as_slice()?, rule.0))
}

/// What another tire or axle than programmed does to the speed shown: a `RatioCause`.
/// Source: follows from the definitions (road speed over the speed that the unit computes).
#[pyfunction]
#[pyo3(signature = (programmed, fitted, *, weight))]
pub fn other_driveline(programmed: Driveline, fitted: Driveline, weight: f64) -> PyResult<RatioCause> {
    answer(core::other_driveline(programmed.0, fitted.0, weight))
}

/// What another tooth count of the output speed sensor's wheel does to road speed and gear ratios: a `RatioCause`.
/// Source: follows from the definitions (turns are pulses over teeth).
///
/// >>> other_teeth(programmed=40, fitted=50, weight=1).gear
/// 0.8
#[pyfunction]
#[pyo3(signature = (*, programmed, fitted, weight))]
pub fn other_teeth(programmed: u32, fitted: u32, weight: f64) -> PyResult<RatioCause> {
    answer(core::other_teeth(programmed, fitted, weight))
}

/// Which change explains a ratio of speeds: a `CauseFound`. `causes` are `RatioCause` by name, "as programmed" among them;
/// `gear` is the measured over the true gear ratio, the same in every gear, or `None` where it is not known.
/// Source: A. Gelman and others, Bayes' rule over a list.
///
/// >>> causes = {"as programmed": RatioCause(road=Reading(value=1, u=0.006)), "35-inch tire": RatioCause(road=Reading(value=1.109, u=0.007))}
/// >>> weigh_causes(road=Reading(value=1.108, u=0.004), gear=None, causes=causes, enough=0.95, most_z=3)
/// <explained: 35-inch tire, chance 1.000>
#[pyfunction]
#[pyo3(signature = (*, road, gear, causes, enough, most_z))]
pub fn weigh_causes(
    road: Reading,
    gear: Option<Reading>,
    causes: Bound<'_, PyDict>,
    enough: f64,
    most_z: f64,
) -> PyResult<CauseFound> {
    let mut names = Vec::new();
    let mut list = Vec::new();
    for (name, cause) in causes {
        names.push(name.extract::<String>()?);
        list.push(cause.extract::<RatioCause>()?.0);
    }
    let measured =
        core::RatiosSeen { road: road.0, gear: gear.map_or(road.0, |gear| gear.0), gear_known: gear.is_some() };
    let mut fits = vec![core::CauseFit::NONE; list.len()];
    let found = core::weigh_causes(measured, &list, enough, most_z, &mut fits).map_err(raise)?;
    Ok(CauseFound { found, names, fits })
}
