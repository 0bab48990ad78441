//! Raises the exceptions of `trainwright/error.py`.

use std::ffi::CString;

use pyo3::prelude::*;
use pyo3::types::PyType;

fn class<'py>(py: Python<'py>, name: &str) -> PyResult<Bound<'py, PyType>> {
    Ok(py.import("trainwright.error")?.getattr(name)?.cast_into()?)
}

/// The core's refusal as a Python exception.
pub fn raise(error: trainwright::Error) -> PyErr {
    refuse(error.kind(), error.parameter(), error.to_string())
}

/// The core's answer as the class that mirrors it, or its refusal.
pub fn answer<T, U: From<T>>(result: trainwright::Result<T>) -> PyResult<U> {
    result.map(U::from).map_err(raise)
}

/// A refusal of the Python interface itself.
pub fn refuse(kind: &'static str, parameter: &str, message: String) -> PyErr {
    Python::attach(|py| {
        let error = PyErr::from_type(class(py, "Error")?, message);
        let value = error.value(py);
        value.setattr("kind", kind)?;
        value.setattr("parameter", parameter)?;
        Ok(error)
    })
    .unwrap_or_else(|failure| failure)
}

/// Warns that an answer is partly missing.
pub fn warn(py: Python<'_>, message: String) -> PyResult<()> {
    PyErr::warn(py, &class(py, "RangeWarning")?.into_any(), &CString::new(message)?, 1)
}
