//! What may stand in a field of a class: how it is taken, written as Python source and made plain.

use std::convert::Infallible;

use pyo3::IntoPyObjectExt;
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList};
#[cfg(feature = "stubs")]
use pyo3::{inspect::PyStaticExpr, type_hint_identifier, type_hint_subscript};

use crate::quantity::Number;

/// A type that may stand in a field of a `class!`.
pub trait Field: Sized {
    /// What the constructor takes.
    type Argument;
    /// The argument of the field of this name, checked.
    fn take(name: &'static str, argument: Self::Argument) -> PyResult<Self>;
    /// Python source text of the value.
    fn source(&self) -> String;
    /// Numbers, text, lists and dictionaries only.
    fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>>;
}

impl Field for f64 {
    type Argument = Number;

    fn take(name: &'static str, argument: Number) -> PyResult<Self> {
        argument.value(name)
    }

    fn source(&self) -> String {
        if self.is_finite() { format!("{self:?}") } else { format!("float(\"{self}\")").to_lowercase() }
    }

    fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        self.into_py_any(py)
    }
}

macro_rules! plain_fields {
    ($($kind:ty => $source:expr;)*) => {$(
        impl Field for $kind {
            type Argument = Self;

            fn take(_: &'static str, argument: Self) -> PyResult<Self> {
                Ok(argument)
            }

            fn source(&self) -> String {
                let source: fn(&Self) -> String = $source;
                source(self)
            }

            fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
                self.into_py_any(py)
            }
        }
    )*};
}

plain_fields! {
    bool => |value| if *value { "True".into() } else { "False".into() };
    u8 => u8::to_string;
    u16 => u16::to_string;
    u32 => u32::to_string;
    u64 => u64::to_string;
    i8 => i8::to_string;
    i32 => i32::to_string;
    i64 => i64::to_string;
    usize => usize::to_string;
}

impl Field for f32 {
    type Argument = Number;

    fn take(name: &'static str, argument: Number) -> PyResult<Self> {
        Ok(argument.value(name)? as Self)
    }

    fn source(&self) -> String {
        if self.is_finite() { format!("{self:?}") } else { format!("float(\"{self}\")").to_lowercase() }
    }

    fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        self.into_py_any(py)
    }
}

impl Field for String {
    type Argument = Self;

    fn take(_: &'static str, argument: Self) -> PyResult<Self> {
        Ok(argument)
    }

    fn source(&self) -> String {
        format!("{self:?}")
    }

    fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        self.into_py_any(py)
    }
}

impl<T: Field> Field for Option<T> {
    type Argument = Option<T::Argument>;

    fn take(name: &'static str, argument: Self::Argument) -> PyResult<Self> {
        argument.map(|argument| T::take(name, argument)).transpose()
    }

    fn source(&self) -> String {
        self.as_ref().map_or_else(|| "None".into(), T::source)
    }

    fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        self.as_ref().map_or_else(|| Ok(py.None()), |value| value.plain(py))
    }
}

impl<T: Field> Field for Vec<T> {
    type Argument = Vec<T::Argument>;

    fn take(name: &'static str, argument: Self::Argument) -> PyResult<Self> {
        argument.into_iter().map(|argument| T::take(name, argument)).collect()
    }

    fn source(&self) -> String {
        format!("[{}]", self.iter().map(T::source).collect::<Vec<_>>().join(", "))
    }

    fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        self.iter().map(|value| value.plain(py)).collect::<PyResult<Vec<_>>>()?.into_py_any(py)
    }
}

/// Values by the name of their field.
pub struct Fields<'py>(Bound<'py, PyDict>);

impl<'py> Fields<'py> {
    /// No fields yet.
    pub fn new(py: Python<'py>) -> Self {
        Self(PyDict::new(py))
    }

    /// Adds one.
    pub fn set(&self, name: &str, value: impl IntoPyObject<'py>) -> PyResult<()> {
        self.0.set_item(name, value)
    }
}

impl<'py> IntoPyObject<'py> for Fields<'py> {
    type Target = PyDict;
    type Output = Bound<'py, PyDict>;
    type Error = Infallible;
    #[cfg(feature = "stubs")]
    const OUTPUT_TYPE: PyStaticExpr = type_hint_subscript!(
        type_hint_identifier!("builtins", "dict"),
        type_hint_identifier!("builtins", "str"),
        type_hint_identifier!("typing", "Any")
    );

    fn into_pyobject(self, _: Python<'py>) -> Result<Self::Output, Infallible> {
        Ok(self.0)
    }
}

/// The value itself, a list as the tuple of its values.
pub fn hashable(value: Bound<'_, PyAny>) -> PyResult<Bound<'_, PyAny>> {
    match value.cast::<PyList>() {
        Ok(list) => Ok(list.to_tuple().into_any()),
        Err(_) => Ok(value),
    }
}

/// Rows of a short table for notebooks.
pub fn html_table(title: &str, rows: &[(&str, String)]) -> String {
    let escape = |text: &str| text.replace('&', "&amp;").replace('<', "&lt;");
    let rows: String = rows
        .iter()
        .map(|(name, value)| format!("<tr><th style=\"text-align:left\">{name}</th><td>{}</td></tr>", escape(value)))
        .collect();
    format!("<table><caption>{title}</caption>{rows}</table>")
}
