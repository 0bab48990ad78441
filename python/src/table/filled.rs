//! Columns for Python, being filled.

use numpy::{Element, IntoPyArray};
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList};

use super::keys::Key;

/// Columns by name.
pub struct Table<'py>(pub Bound<'py, PyDict>);

impl<'py> Table<'py> {
    /// No columns yet.
    pub fn new(py: Python<'py>) -> Self {
        Self(PyDict::new(py))
    }

    /// A column of values as they are.
    pub fn values<T: Element>(&self, name: &str, values: impl Iterator<Item = T>) -> PyResult<()> {
        self.0.set_item(name, values.collect::<Vec<_>>().into_pyarray(self.0.py()))
    }

    /// A column of numbers.
    pub fn numbers(&self, name: &str, values: impl Iterator<Item = f64>) -> PyResult<()> {
        self.values(name, values)
    }

    /// A column of counts.
    pub fn counts(&self, name: &str, values: impl Iterator<Item = u64>) -> PyResult<()> {
        self.values(name, values.map(|value| value as i64))
    }

    /// A column of text.
    pub fn words<W: AsRef<str>>(&self, name: &str, values: impl Iterator<Item = W>) -> PyResult<()> {
        let list = PyList::empty(self.0.py());
        for value in values {
            list.append(value.as_ref())?;
        }
        self.list(name, &list, true)
    }

    /// A column of names.
    pub fn keys<'k>(&self, name: &str, keys: impl Iterator<Item = &'k Key>) -> PyResult<()> {
        let list = PyList::empty(self.0.py());
        for key in keys {
            list.append(key.object(self.0.py())?)?;
        }
        self.list(name, &list, list.is_empty())
    }

    fn list(&self, name: &str, list: &Bound<'py, PyList>, is_text: bool) -> PyResult<()> {
        let numpy = self.0.py().import("numpy")?;
        let kind = is_text.then_some("U");
        self.0.set_item(name, numpy.call_method1("array", (list, kind))?)
    }
}
