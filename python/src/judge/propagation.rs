//! Uncertainty carried through a formula: budgets and expanded uncertainty.

use pyo3::prelude::*;
use trainwright::judge as core;

use super::reading::Reading;
use crate::class::{class, common};
use crate::error::{answer, raise};

class! {
    /// What one input brings to a result.
    "trainwright.judge" Input = core::Input {
        /// Change of the result per unit of the input.
        sensitivity: f64,
        /// Standard uncertainty of the input.
        u: f64,
        /// Degrees of freedom of `u`; infinite where it is taken as certain.
        freedom: f64 = f64::INFINITY,
    }
}

/// Uncertainty budget: the combined standard uncertainty and where it comes from.
#[pyclass(frozen, from_py_object, module = "trainwright.judge")]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Budget(pub core::Budget);

#[pymethods]
impl Budget {
    #[new]
    #[pyo3(signature = (*, u, freedom, sensitivity, contribution, share, largest))]
    fn new(
        u: f64,
        freedom: f64,
        sensitivity: Vec<f64>,
        contribution: Vec<f64>,
        share: Vec<f64>,
        largest: u32,
    ) -> PyResult<Self> {
        let count = sensitivity.len().max(contribution.len()).max(share.len());
        if count > core::MAX_INPUTS || [&sensitivity, &contribution, &share].iter().any(|list| list.len() != count) {
            let high = core::MAX_INPUTS as u32;
            return Err(raise(trainwright::Error::Count { name: "contribution", count: count as u32, low: 1, high }));
        }
        let list = |from: Vec<f64>| {
            let mut to = [0.0; core::MAX_INPUTS];
            to.iter_mut().zip(from).for_each(|(to, from)| *to = from);
            to
        };
        let (sensitivity, contribution, share) = (list(sensitivity), list(contribution), list(share));
        Ok(Self(core::Budget { u, freedom, sensitivity, contribution, share, count: count as u32, largest }))
    }

    /// Combined standard uncertainty.
    #[getter]
    fn u(&self) -> f64 {
        self.0.u
    }

    /// Effective degrees of freedom.
    #[getter]
    fn freedom(&self) -> f64 {
        self.0.freedom
    }

    /// Change of the result per unit of each input.
    #[getter]
    fn sensitivity(&self) -> Vec<f64> {
        self.used(self.0.sensitivity)
    }

    /// c_i u_i of each input, with its sign.
    #[getter]
    fn contribution(&self) -> Vec<f64> {
        self.used(self.0.contribution)
    }

    /// Share of each input in the variance.
    #[getter]
    fn share(&self) -> Vec<f64> {
        self.used(self.0.share)
    }

    /// Position of the input that contributes most: the one to measure better.
    #[getter]
    fn largest(&self) -> u32 {
        self.0.largest
    }
}

common!(Budget, [u, freedom, sensitivity, contribution, share, largest]);

impl Budget {
    fn used(&self, list: [f64; core::MAX_INPUTS]) -> Vec<f64> {
        list.into_iter().take(self.0.count as usize).collect()
    }
}

impl From<core::Budget> for Budget {
    fn from(budget: core::Budget) -> Self {
        Self(budget)
    }
}

impl From<Budget> for core::Budget {
    fn from(budget: Budget) -> Self {
        budget.0
    }
}

/// Combined standard uncertainty of independent inputs, and what each contributes.
/// Source: JCGM 100:2008, 5.1.2, equations 10 and 11a.
///
/// >>> combine([Input(sensitivity=3.0, u=1.0), Input(sensitivity=4.0, u=1.0)]).u
/// 5.0
#[pyfunction]
pub fn combine(inputs: Vec<Input>) -> PyResult<Budget> {
    core::combine(&plain(inputs)).map(Budget).map_err(raise)
}

/// Combined standard uncertainty of correlated inputs; `correlation` is a square list of lists.
/// Source: JCGM 100:2008, 5.2.2, equation 16.
#[pyfunction]
pub fn combine_correlated(inputs: Vec<Input>, correlation: Vec<Vec<f64>>) -> PyResult<Budget> {
    core::combine_correlated(&plain(inputs), &correlation.concat()).map(Budget).map_err(raise)
}

/// Effective degrees of freedom of the combined uncertainty of independent inputs (Welch-Satterthwaite).
/// Source: JCGM 100:2008, G.4.1, equation G.2b.
#[pyfunction]
pub fn effective_freedom(inputs: Vec<Input>) -> PyResult<f64> {
    core::effective_freedom(&plain(inputs)).map_err(raise)
}

fn plain(inputs: Vec<Input>) -> Vec<core::Input> {
    inputs.into_iter().map(|input| input.0).collect()
}

/// Carries independent readings through a function of as many numbers; returns the result and its budget.
/// Source: JCGM 100:2008, 5.1.3, note 2.
///
/// >>> clearance, budget = propagate([Reading(value=43.988, u=0.0016), Reading(value=44.407, u=0.0042)],
/// ...                               lambda journal, bore: bore - journal)
/// >>> round(clearance.value, 3), round(clearance.u, 4), budget.largest
/// (0.419, 0.0045, 1)
#[pyfunction]
pub fn propagate(inputs: Vec<Reading>, formula: Bound<'_, PyAny>) -> PyResult<(Reading, Budget)> {
    let inputs: Vec<_> = inputs.into_iter().map(|input| input.0).collect();
    let mut raised = None;
    let result = core::propagate_list(&inputs, |values| {
        let called = pyo3::types::PyTuple::new(formula.py(), values)
            .and_then(|arguments| formula.call1(arguments))
            .and_then(|value| value.extract());
        called.map_err(|error| {
            raised = Some(error);
            trainwright::Error::NoAnswer { name: "formula", why: "it raised an exception" }
        })
    });
    match (result, raised) {
        (_, Some(error)) => Err(error),
        (result, None) => result.map(|it| (it.reading.into(), Budget(it.budget))).map_err(raise),
    }
}

class! {
    /// An expanded uncertainty and the interval it gives.
    "trainwright.judge" Expanded = core::Expanded, explained by ["judge.expand"] {
        /// Value and standard uncertainty.
        reading: Reading,
        /// Stated probability of the interval.
        coverage: f64,
        /// Degrees of freedom.
        freedom: f64,
        /// Coverage factor.
        k: f64,
        /// Half width of the interval.
        expanded_u: f64,
        /// Lower end of the interval.
        lower: f64,
        /// Upper end of the interval.
        upper: f64,
    }
}

/// Expanded uncertainty and coverage interval for a stated probability.
/// Source: JCGM 100:2008, 6.2, G.3.2.
///
/// >>> round(expand(Reading(value=0.0, u=32.0), freedom=16.0, coverage=0.99).expanded_u)
/// 93
#[pyfunction]
#[pyo3(signature = (reading, *, freedom, coverage))]
pub fn expand(reading: Reading, freedom: f64, coverage: f64) -> PyResult<Expanded> {
    answer(core::expand(reading.0, freedom, coverage))
}
