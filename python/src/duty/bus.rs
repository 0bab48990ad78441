//! Raw values of a vehicle bus.

use pyo3::prelude::*;
use pyo3::types::{PyDict, PyFloat};
use trainwright::Error;
use trainwright::duty as core;

use crate::array::{Input, map, map_all};
use crate::class::{class, words};
use crate::error::answer;

words! {
    "rules" BusRules = core::BusRules { Marked = "marked", Plain = "plain" }
}

words! {
    "network" BusNetwork = core::BusNetwork { J1939 = "J1939", Obd = "OBD" }
}

words! {
    "meaning" BusMeaning = core::BusMeaning {
        Value = "value",
        OutOfRange = "out of range",
        Indicator = "indicator",
        Reserved = "reserved",
        Error = "error",
        NotAvailable = "not available",
    }
}

class! {
    /// A signal of a vehicle bus: `rules` are `"marked"` (J1939: the top of the range holds marks) or `"plain"` (diagnostics).
    "trainwright.duty" BusSignal = core::BusSignal, checked by core::BusSignal::checked {
        /// Which values are marks.
        rules: BusRules,
        /// Width: 8, 16 or 32.
        bits: u8,
        /// Physical value of one step.
        resolution: f64,
        /// Physical value of raw 0.
        offset: f64 = 0.0,
        /// Least physical value that can be true.
        lower: f64 = f64::NEG_INFINITY,
        /// Greatest physical value that can be true.
        upper: f64 = f64::INFINITY,
    }
}

class! {
    /// A decoded raw value. Compute only where `meaning` is `"value"`.
    "trainwright.duty" BusValue = core::BusValue, explained by ["duty.decode", "duty.classify"] {
        /// `"value"`, `"out of range"`, `"indicator"`, `"reserved"`, `"error"` or `"not available"`.
        meaning: BusMeaning,
        /// The scaled number, whatever it means.
        value: f64,
    }
}

/// A signal by its number on its bus (`"J1939"` or `"OBD"`): width, resolution, offset.
///
/// Source: SAE J1939-71 and SAE J1979. The same numbers mean other things on an older J1587 bus.
///
/// >>> bus_signal(network="J1939", number=191).decode(12000).value
/// 1500.0
#[pyfunction]
#[pyo3(signature = (*, network, number))]
pub fn bus_signal(network: BusNetwork, number: u32) -> PyResult<BusSignal> {
    answer(core::bus_signal(network.0, number))
}

/// One value for numbers; for arrays a dictionary of `value` (NaN where it is none) and `meaning` (0 value, 1 out of range,
/// 2 indicator, 3 reserved, 4 error, 5 not available).
fn decoded<'py>(
    py: Python<'py>,
    input: (&'static str, Input<'py>),
    formula: impl Fn(f64) -> trainwright::Result<core::BusValue> + Sync,
) -> PyResult<Bound<'py, PyAny>> {
    let [values, shown, meanings] = <[_; 3]>::try_from(map_all(py, [input], None, |[raw]| {
        let decoded = formula(raw)?;
        let value = if decoded.meaning == core::BusMeaning::Value { decoded.value } else { f64::NAN };
        Ok([value, decoded.value, f64::from(decoded.meaning as u8)])
    })?)
    .map_err(|_| pyo3::exceptions::PyRuntimeError::new_err("three columns"))?;
    if shown.is_instance_of::<PyFloat>() {
        let value = shown.extract()?;
        let number = meanings.extract::<f64>()? as u8;
        let all = [
            core::BusMeaning::Value,
            core::BusMeaning::OutOfRange,
            core::BusMeaning::Indicator,
            core::BusMeaning::Reserved,
            core::BusMeaning::Error,
            core::BusMeaning::NotAvailable,
        ];
        let meaning = all.into_iter().find(|meaning| *meaning as u8 == number).unwrap_or(all[1]);
        return Ok(Bound::new(py, BusValue(core::BusValue { meaning, value }))?.into_any());
    }
    let fields = PyDict::new(py);
    fields.set_item("value", values)?;
    fields.set_item("meaning", meanings)?;
    Ok(fields.into_any())
}

#[pymethods]
impl BusSignal {
    /// What raw values mean: a `BusValue`, or for an array a dictionary of `value` (NaN where it is none) and `meaning` (0
    /// value, 1 out of range, 2 indicator, 3 reserved, 4 error, 5 not available). Source: SAE J1939-71.
    ///
    /// >>> bus_signal(network="J1939", number=177).decode(0xFFFF).meaning
    /// 'not available'
    fn decode<'py>(&self, py: Python<'py>, raw: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        decoded(py, ("raw", raw), |raw| {
            let most = f64::from(u32::MAX);
            if raw.fract() != 0.0 || !(0.0..=most).contains(&raw) {
                return Err(Error::OutOfRange { name: "raw", value: raw, low: 0.0, high: most });
            }
            self.0.decode(raw as u32)
        })
    }

    /// Whether values that somebody scaled already are values, or marks scaled by mistake; answers as `decode`.
    /// Source: SAE J1939-71, read backward.
    ///
    /// >>> bus_signal(network="J1939", number=191).classify(8191.875).meaning
    /// 'not available'
    fn classify<'py>(&self, py: Python<'py>, value: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        decoded(py, ("value", value), |value| self.0.classify(value))
    }

    /// Greatest relative error that the steps of the signal put into a value. Source: half a step.
    ///
    /// >>> bus_signal(network="OBD", number=0x0D).step_error(20)
    /// 0.025
    fn step_error<'py>(&self, py: Python<'py>, value: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("value", value)], None, |[value]| self.0.step_error(value))
    }
}
