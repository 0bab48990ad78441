//! Decision rules.

use pyo3::prelude::*;
use trainwright::judge as core;

use crate::class::{class, words};
use crate::error::answer;

words! {
    "kind" RuleKind = core::RuleKind {
        SIMPLE_ACCEPTANCE = "simple acceptance",
        CONFORMANCE = "conformance probability",
        EXPANDED_GUARD = "expanded guard",
        STATED_CHANCES = "stated chances",
    }
}

class! {
    /// A decision rule; make one with its static methods.
    ///
    /// >>> Rule.conformance(0.95)
    /// Rule(go=0.95, no_go=0.050000000000000044, k=0.0, kind="conformance probability")
    /// >>> print(Rule.conformance(0.95))
    /// conformance probability 0.95 (ISO 14253-1:2017)
    "trainwright.judge" Rule = core::Rule {
        /// Least chance of lying inside that is a GO.
        go: f64,
        /// Greatest chance of lying inside that is a NO-GO.
        no_go: f64,
        /// Guard in standard uncertainties.
        k: f64,
        /// Kind, in words.
        kind: RuleKind,
    }
}

#[pymethods]
impl Rule {
    /// Inside is GO, outside is NO-GO; the uncertainty is not counted.
    #[staticmethod]
    fn simple_acceptance() -> Self {
        core::Rule::simple_acceptance().into()
    }

    /// GO is proven from this chance of lying inside, NO-GO up to 1 minus it (ISO 14253-1:2017, usually 0.95).
    #[staticmethod]
    fn conformance(probability: f64) -> PyResult<Self> {
        answer(core::Rule::conformance(probability))
    }

    /// A guard of k standard uncertainties on either side of a limit (ISO 14253-1 before 2017, usually 2).
    #[staticmethod]
    fn expanded_guard(k: f64) -> PyResult<Self> {
        answer(core::Rule::expanded_guard(k))
    }

    /// GO from the chance `go`, above 0.5; NO-GO up to the chance `no_go`, below 0.5.
    #[staticmethod]
    #[pyo3(signature = (*, go, no_go))]
    fn stated_chances(go: f64, no_go: f64) -> PyResult<Self> {
        answer(core::Rule::stated_chances(go, no_go))
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }
}
