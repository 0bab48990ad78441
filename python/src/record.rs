//! `trainwright.record`: records in TOML.

mod family;
mod fleet;
mod fluids;
mod instruments;
mod problem;

pub use family::Family;
pub use fleet::Fleet;
pub use fluids::Fluids;
pub use instruments::Instruments;
pub use problem::{Problem, check, check_text, raise_all};

use std::path::PathBuf;

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::{self as core, Kind, Record};

use crate::error::refuse;
use crate::train::Train;

/// The text of a file, and the name to show for it.
fn text_of(path: &PathBuf) -> PyResult<(String, String)> {
    let name = path.display().to_string();
    let bytes = std::fs::read(path).map_err(|error| refuse("TEXT", "path", format!("{name}: {error}")))?;
    match String::from_utf8(bytes) {
        Ok(text) => Ok((name, text)),
        Err(error) => {
            let at = error.utf8_error().valid_up_to();
            Err(refuse("TEXT", "path", format!("{name}: byte {at} is not UTF-8; save the file as UTF-8")))
        }
    }
}

/// The record in a file: a `Family`, `Fluids`, `Instruments`, `Fleet`, `Jobs`, or the `Train` of a train file.
#[pyfunction]
pub fn load(py: Python<'_>, path: PathBuf) -> PyResult<Py<PyAny>> {
    let (file, text) = text_of(&path)?;
    match core::kind_of(&text) {
        Some(Kind::Family) => Family::read(py, &file, text)?.into_py(py),
        Some(Kind::Fluids) => Fluids::read(py, &file, text)?.into_py(py),
        Some(Kind::Instruments) => Instruments::read(py, &file, text)?.into_py(py),
        Some(Kind::Fleet) => Fleet::read(py, &file, text)?.into_py(py),
        Some(Kind::Jobs) => Jobs::read(py, &file, text)?.into_py(py),
        Some(Kind::Train) => match core::NamedTrain::from_toml(&file, &text, None) {
            Ok(named) => Ok(Bound::new(py, Train::new(named, &text, None))?.into_any().unbind()),
            Err(problems) => Err(raise_all(py, problems)),
        },
        None => Err(raise_all(py, core::check(&[(&file, &text)]))),
    }
}

/// JSON Schema (draft 2020-12) of a kind of record: `"train"`, `"family"`, `"fluids"`, `"instruments"`, `"fleet"`, `"jobs"`.
#[pyfunction]
pub fn schema(kind: &str) -> PyResult<String> {
    let known = Kind::ALL.iter().find(|known| known.name() == kind);
    let names = Kind::ALL.map(Kind::name).join(", ");
    known
        .map(|kind| kind.json_schema())
        .ok_or_else(|| refuse("TEXT", "kind", format!("kind = {kind:?}: give one of {names}")))
}

/// A class that holds a record and the text that it was read from.
macro_rules! record {
    ($(#[doc = $doc:literal])+ $name:ident) => {
        $(#[doc = $doc])+
        #[pyclass(frozen, module = "trainwright.record")]
        pub struct $name {
            pub(crate) record: core::$name,
            text: String,
        }

        impl $name {
            pub(super) fn read(py: Python<'_>, file: &str, text: String) -> PyResult<Self> {
                match core::$name::from_toml(file, &text) {
                    Ok(record) => Ok(Self { record, text }),
                    Err(problems) => Err(raise_all(py, problems)),
                }
            }

            pub(super) fn into_py(self, py: Python<'_>) -> PyResult<Py<PyAny>> {
                Ok(Bound::new(py, self)?.into_any().unbind())
            }
        }

        #[pymethods]
        impl $name {
            /// The record in this text, or every fault of it in one error. `file` is the name that the faults show.
            #[staticmethod]
            #[pyo3(signature = (text, file = ""))]
            fn from_toml(py: Python<'_>, text: String, file: &str) -> PyResult<Self> {
                Self::read(py, file, text)
            }

            /// The record as TOML, without the comments of the text.
            fn to_toml(&self) -> String {
                self.record.to_toml()
            }

            /// Everything in the record, by the keys of the TOML; what is left out is None.
            fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
                Ok(py.import("json")?.call_method1("loads", (self.record.to_json(),))?.cast_into()?)
            }

            fn __eq__(&self, other: &Self) -> bool {
                self.record == other.record
            }

            fn __reduce__(&self, py: Python<'_>) -> PyResult<(Py<PyAny>, (&str,))> {
                Ok((py.get_type::<Self>().getattr("from_toml")?.unbind(), (&self.text,)))
            }

            fn __repr__(&self) -> String {
                self.record.summary()
            }
        }
    };
}
use record;

/// A line for a person who looks at the object.
trait Summary {
    fn summary(&self) -> String;
}

fn names<'n>(names: impl IntoIterator<Item = &'n String>) -> String {
    names.into_iter().map(String::as_str).collect::<Vec<_>>().join(", ")
}

fn no_such<'n>(what: &str, name: &str, known: impl IntoIterator<Item = &'n String>) -> PyErr {
    refuse("MISSING", what, format!("there is no {what} {name:?}; known: {}", names(known)))
}

record! {
    /// Jobs of a demonstration.
    Jobs
}

impl Summary for core::Jobs {
    fn summary(&self) -> String {
        format!("<jobs: {}>", names(self.job.iter().map(|job| &job.id)))
    }
}
