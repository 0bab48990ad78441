//! Shop instruments.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::{self as core, Record};

use super::problem::raise_all;
use super::{Summary, names, no_such, record};
use crate::error::answer;
use crate::judge::Reading;

record! {
    /// Shop instruments: range, resolution and standard uncertainty.
    Instruments
}

impl Summary for core::Instruments {
    fn summary(&self) -> String {
        format!("<instruments: {}>", names(self.instrument.keys()))
    }
}

#[pymethods]
impl Instruments {
    /// One reading of an instrument with its standard uncertainty, in the unit that it shows.
    fn reading(&self, instrument: &str, value: f64) -> PyResult<Reading> {
        match self.record.instrument.get(instrument) {
            Some(record) => answer(record.reading(value)),
            None => Err(no_such("instrument", instrument, self.record.instrument.keys())),
        }
    }
}
