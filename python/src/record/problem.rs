//! Faults of records.

use std::path::PathBuf;

use pyo3::prelude::*;
use trainwright::record::{self as core, Problems, Weight};

use super::text_of;
use crate::error::refuse;

/// One fault of a record, or a note about it.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.record")]
#[derive(Clone, PartialEq)]
pub struct Problem(core::Problem);

#[pymethods]
impl Problem {
    /// File, as it was named.
    #[getter]
    fn file(&self) -> &str {
        &self.0.file
    }

    /// Line, counted from 1.
    #[getter]
    fn line(&self) -> usize {
        self.0.line
    }

    /// Column in characters, counted from 1.
    #[getter]
    fn column(&self) -> usize {
        self.0.column
    }

    /// Full path of the key, `train.set[2].teeth.ring`; places in a list count from 0.
    #[getter]
    fn key(&self) -> &str {
        &self.0.key
    }

    /// Value as it stands in the file, shortened; empty where a key is missing.
    #[getter]
    fn value(&self) -> &str {
        &self.0.value
    }

    /// What is wrong, with the range or the names that are accepted.
    #[getter]
    fn message(&self) -> &str {
        &self.0.message
    }

    /// What would mend it; may be empty.
    #[getter]
    fn mend(&self) -> &str {
        &self.0.mend
    }

    /// Whether the record cannot be used; else it is a note.
    #[getter]
    fn is_error(&self) -> bool {
        self.0.weight == Weight::Error
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("<{}>", self.0.to_string().split_whitespace().collect::<Vec<_>>().join(" "))
    }
}

fn listed(problems: Problems) -> Vec<Problem> {
    problems.0.into_iter().map(Problem).collect()
}

/// All problems as one exception; `problems` lists them.
pub fn raise_all(py: Python<'_>, problems: Problems) -> PyErr {
    let error = refuse("TEXT", "record", problems.to_string());
    match listed(problems).into_pyobject(py).and_then(|list| error.value(py).setattr("problems", list)) {
        Ok(()) => error,
        Err(failure) => failure,
    }
}

/// Every fault and every note of these files. Names may be given in one file and used in another; names whose file is not
/// among them are taken on trust.
///
/// >>> check()
/// []
#[pyfunction]
#[pyo3(signature = (*paths))]
pub fn check(paths: Vec<PathBuf>) -> PyResult<Vec<Problem>> {
    let files: Vec<_> = paths.iter().map(text_of).collect::<PyResult<_>>()?;
    let files: Vec<_> = files.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    Ok(listed(core::check(&files)))
}

/// As `check`, for one text.
///
/// >>> [problem.mend for problem in check_text("[train]\ninput = 's'\noutput = 'c'\nsett = []")]
/// ['did you mean set?']
#[pyfunction]
#[pyo3(signature = (text, file = ""))]
pub fn check_text(text: &str, file: &str) -> Vec<Problem> {
    listed(core::check(&[(file, text)]))
}
