//! Numbers at the edge: a float, or a quantity of the unit library pint, which is converted by the suffix of the parameter.

use pyo3::prelude::*;
use pyo3::types::{PyBool, PyFloat, PyString};

use crate::error::refuse;

/// Unit in pint's words for each suffix of `core/units.rs`; a longer suffix stands before one that it ends in.
const UNITS: &[(&str, &str)] = &[
    ("_n_per_km_h2", "newton/(kilometer/hour)**2"),
    ("_n_per_km_h", "newton/(kilometer/hour)"),
    ("_rpm_per_sqrt_nm", "revolution/minute/(newton*meter)**0.5"),
    ("_per_km", "1/kilometer"),
    ("_per_mile", "1/mile"),
    ("_per_k", "1/delta_degC"),
    ("_kpa_abs", "kilopascal"),
    ("_kg_m2", "kilogram*meter**2"),
    ("_kg_m3", "kilogram/meter**3"),
    ("_mm2_s", "millimeter**2/second"),
    ("_mpa_s", "millipascal*second"),
    ("_km_h", "kilometer/hour"),
    ("_l_min", "liter/minute"),
    ("_n_mm", "newton/millimeter"),
    ("_m2", "meter**2"),
    ("_mpa_m_s", "megapascal*meter/second"),
    ("_m_s", "meter/second"),
    ("_mm4", "millimeter**4"),
    ("_mm2", "millimeter**2"),
    ("_mm3", "millimeter**3"),
    ("_cm2", "centimeter**2"),
    ("_kpa", "kilopascal"),
    ("_mpa", "megapascal"),
    ("_rpm", "revolution/minute"),
    ("_deg", "degree"),
    ("_pct", "percent"),
    ("_mm", "millimeter"),
    ("_ml", "milliliter"),
    ("_kg", "kilogram"),
    ("_nm", "newton*meter"),
    ("_kw", "kilowatt"),
    ("_kj", "kilojoule"),
    ("_km", "kilometer"),
    ("_ms", "millisecond"),
    ("_mrev", "megarevolution"),
    ("_in", "inch"),
    ("_m", "meter"),
    ("_l", "liter"),
    ("_n", "newton"),
    ("_c", "degC"),
    ("_k", "delta_degC"),
    ("_j", "joule"),
    ("_s", "second"),
    ("_h", "hour"),
];

fn unit_of(name: &str) -> &'static str {
    UNITS.iter().find(|(suffix, _)| name.ends_with(suffix)).map_or("dimensionless", |(_, unit)| unit)
}

/// The object itself, or the magnitude of a pint quantity in the unit that the name ends in.
pub fn in_unit_of<'py>(name: &str, object: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    if object.hasattr("magnitude")? && object.hasattr("to")? {
        object.call_method1("to", (unit_of(name),))?.getattr("magnitude")
    } else {
        Ok(object.clone())
    }
}

/// One number; text, truth values and `None` are not numbers.
pub fn number(name: &str, object: &Bound<'_, PyAny>) -> PyResult<f64> {
    let object = in_unit_of(name, object)?;
    if !object.is_instance_of::<PyBool>()
        && !object.is_instance_of::<PyString>()
        && let Ok(value) = object.extract()
    {
        return Ok(value);
    }
    let given = object.repr()?;
    Err(refuse("TEXT", name, format!("{name} = {given}: give a number")))
}

/// An argument that must be one number.
pub enum Number {
    /// A float, ready to use.
    Plain(f64),
    /// Something to be converted, or refused, once the name of the parameter is known.
    Object(Py<PyAny>),
}

impl Number {
    /// The value in the unit that the name ends in.
    pub fn value(self, name: &str) -> PyResult<f64> {
        match self {
            Self::Plain(value) => Ok(value),
            Self::Object(object) => Python::attach(|py| number(name, object.bind(py))),
        }
    }
}

impl From<f64> for Number {
    fn from(value: f64) -> Self {
        Self::Plain(value)
    }
}

impl<'py> FromPyObject<'_, 'py> for Number {
    type Error = PyErr;
    #[cfg(feature = "stubs")]
    const INPUT_TYPE: pyo3::inspect::PyStaticExpr = f64::INPUT_TYPE;

    fn extract(object: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        match object.cast::<PyFloat>() {
            Ok(float) => Ok(Self::Plain(float.value())),
            Err(_) => Ok(Self::Object(object.to_owned().unbind())),
        }
    }
}
