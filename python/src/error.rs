//! `trainwright.Error` and `trainwright.RangeWarning`.

use pyo3::create_exception;
use pyo3::exceptions::{PyUserWarning, PyValueError};
use pyo3::prelude::*;

create_exception!(
    trainwright,
    Error,
    PyValueError,
    "There is no answer. The message names the parameter, the value given, what is accepted and how to mend it.\n\n\
     `kind` is the name of the failure, e.g. \"OUT_OF_RANGE\"; `parameter` is what it is about."
);

create_exception!(
    trainwright,
    RangeWarning,
    PyUserWarning,
    "Some rows of an array were refused; their results are NaN. The message counts them and explains the first."
);

/// The core's refusal as a Python exception.
pub fn raise(error: trainwright::Error) -> PyErr {
    with_attributes(Error::new_err(error.to_string()), error.kind(), error.parameter())
}

/// A refusal of the Python interface itself.
pub fn refuse(kind: &'static str, parameter: &str, message: String) -> PyErr {
    with_attributes(Error::new_err(message), kind, parameter)
}

fn with_attributes(error: PyErr, kind: &str, parameter: &str) -> PyErr {
    Python::attach(|py| {
        let value = error.value(py);
        match value.setattr("kind", kind).and_then(|()| value.setattr("parameter", parameter)) {
            Ok(()) => error,
            Err(failure) => failure,
        }
    })
}
