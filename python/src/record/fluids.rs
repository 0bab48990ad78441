//! Fluids, fill and cooler.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::{self as core, Record};

use super::problem::raise_all;
use super::{Summary, names, no_such, record};
use crate::error::answer;
use crate::fluid::{Fill, Fluid};
use crate::hydraulic::CoolerLimits;

record! {
    /// Fluids with the fill and cooler of a family.
    Fluids
}

impl Summary for core::Fluids {
    fn summary(&self) -> String {
        format!("<fluids: {}>", names(self.fluid.keys()))
    }
}

#[pymethods]
impl Fluids {
    /// A fluid by its name in the record.
    fn fluid(&self, name: &str) -> PyResult<Fluid> {
        let record = self.record.fluid.get(name).ok_or_else(|| no_such("fluid", name, self.record.fluid.keys()))?;
        Ok(record.fluid().into())
    }

    /// Volumes and levels of the unit, and its sump.
    fn fill(&self) -> PyResult<Fill> {
        let missing = trainwright::Error::Missing { name: "fill", why: "the record has no [fill] table" };
        answer(self.record.fill.as_ref().ok_or(missing).and_then(|fill| fill.fill()))
    }

    /// Least return flow of the cooler by fluid temperature.
    fn cooler_limits(&self) -> PyResult<CoolerLimits> {
        answer(self.record.cooler_limits())
    }
}
