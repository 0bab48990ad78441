//! Return flow of the cooler.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::hydraulic as core;

use crate::array::{Input, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::fluid::Fluid;
use crate::judge::{Budget, Judgment, Reading, Rule};
use crate::quantity::Number;

class! {
    /// Flow from a measure and a stopwatch.
    "trainwright.hydraulic" TimedFlow = core::TimedFlow, explained by ["hydraulic.timed_flow"],
        inputs ["volume", "time"] {
        /// The flow, L/min.
        flow_l_min: Reading,
        /// Its uncertainty: volume, time, in this order.
        budget: Budget,
    }
}

/// Flow from a volume and the time in which it ran. Source: JCGM 100:2008, equation 10.
///
/// >>> from trainwright.judge import Reading
/// >>> flow = timed_flow(volume_l=Reading(value=1.0, u=0.02), time_s=Reading(value=20, u=0.3)).flow_l_min
/// >>> round(flow.value, 3), round(flow.u, 3)
/// (3.0, 0.075)
#[pyfunction]
#[pyo3(signature = (*, volume_l, time_s))]
pub fn timed_flow(volume_l: Reading, time_s: Reading) -> PyResult<TimedFlow> {
    answer(core::timed_flow(volume_l.into(), time_s.into()))
}

/// Flow that the same cooler would pass at another temperature of the fluid, L/min, with its uncertainty.
/// Source: Bansal, laminar flow through a pipe, from memory.
///
/// >>> from trainwright.fluid import Fluid
/// >>> from trainwright.judge import Reading
/// >>> alder = Fluid(density_15c_kg_m3=843, expansion_per_k=7.8e-4, viscosity_40c_mm2_s=27.4, viscosity_100c_mm2_s=5.6)
/// >>> hot = flow_at_reference(Reading(value=2.84, u=0.07), alder, temp_c=Reading(value=50, u=1), reference_c=90)
/// >>> round(hot.value, 1)
/// 8.3
#[pyfunction]
#[pyo3(signature = (flow_l_min, fluid, *, temp_c, reference_c))]
pub fn flow_at_reference(flow_l_min: Reading, fluid: Fluid, temp_c: Reading, reference_c: Number) -> PyResult<Reading> {
    let reference_c = reference_c.value("reference_c")?;
    answer(core::flow_at_reference(flow_l_min.into(), &fluid.0, temp_c.into(), reference_c))
}

class! {
    /// Least flow at a temperature.
    "trainwright.hydraulic" LeastFlow = core::LeastFlow, explained by ["hydraulic.least_flow_at"] {
        /// Least flow, L/min.
        least_l_min: f64,
        /// How it changes with the temperature, L/min per kelvin; at a row the steeper side.
        least_l_min_per_k: f64,
    }
}

columns! { LeastFlow[2]: least_l_min, least_l_min_per_k }

class! {
    /// What was read at the return line.
    "trainwright.hydraulic" CoolerReading = core::CoolerReading {
        /// Volume caught, L.
        volume_l: Reading,
        /// Time it took, s.
        time_s: Reading,
        /// Temperature of the fluid, °C.
        temp_c: Reading,
    }
}

class! {
    /// Whether the cooler passes enough, and what that rests on.
    "trainwright.hydraulic" CoolerCheck = core::CoolerCheck, explained by ["hydraulic.cooler_check"], judged in "L/min",
        inputs ["volume", "time", "temperature"] {
        /// The flow, L/min.
        flow_l_min: Reading,
        /// What is asked at this temperature.
        least: LeastFlow,
        /// Flow less what is asked, L/min, against 0.
        judgment: Judgment,
        /// Its uncertainty: volume, time, temperature, in this order.
        budget: Budget,
    }
}

/// Least return flow of a cooler by fluid temperature, linear between rows.
///
/// >>> limits = CoolerLimits(temperature_c=[30, 50, 70, 90], least_flow_l_min=[2.4, 3.8, 5.2, 6.0])
/// >>> round(limits.least_flow_at(temp_c=60).least_l_min, 2)
/// 4.5
#[pyclass(frozen, eq, from_py_object, module = "trainwright.hydraulic")]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolerLimits(core::CoolerLimits);

#[pymethods]
impl CoolerLimits {
    #[new]
    #[pyo3(signature = (*, temperature_c, least_flow_l_min))]
    fn new(temperature_c: Vec<f64>, least_flow_l_min: Vec<f64>) -> PyResult<Self> {
        answer(core::CoolerLimits::from_flows(&temperature_c, &least_flow_l_min))
    }

    /// Temperatures, °C.
    #[getter]
    fn temperature_c(&self) -> Vec<f64> {
        self.used(self.0.temperature_c)
    }

    /// Least flow at each, L/min.
    #[getter]
    fn least_flow_l_min(&self) -> Vec<f64> {
        self.used(self.0.least_flow_l_min)
    }

    /// Least flow at a temperature: a `LeastFlow`, or a dictionary of arrays.
    /// Source: follows from the definitions (linear between rows).
    #[pyo3(signature = (*, temp_c))]
    fn least_flow_at<'py>(&self, py: Python<'py>, temp_c: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        map_class::<LeastFlow, _, 1, 2>(py, [("temp_c", temp_c)], |[temp]| self.0.least_flow_at(temp))
    }

    /// Whether the cooler passes enough at the temperature that the fluid has. Source: JCGM 100:2008, equation 10.
    fn cooler_check(&self, reading: CoolerReading, rule: Rule) -> PyResult<CoolerCheck> {
        answer(self.0.cooler_check(reading.into(), rule.into()))
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        self.__repr__().into_pyobject(py)?.hash()
    }

    fn __repr__(&self) -> String {
        let (temperatures, flows) = (self.temperature_c(), self.least_flow_l_min());
        format!("CoolerLimits(temperature_c={temperatures:?}, least_flow_l_min={flows:?})")
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Bound<'py, PyDict>)> {
        Ok(((), self.as_dict(py)?))
    }

    /// The table by name.
    fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let fields = PyDict::new(py);
        fields.set_item("temperature_c", self.temperature_c())?;
        fields.set_item("least_flow_l_min", self.least_flow_l_min())?;
        Ok(fields)
    }
}

impl CoolerLimits {
    fn used(&self, column: [f64; core::COOLER_ROWS]) -> Vec<f64> {
        column.into_iter().take(self.0.rows as usize).collect()
    }
}

impl From<core::CoolerLimits> for CoolerLimits {
    fn from(limits: core::CoolerLimits) -> Self {
        Self(limits)
    }
}
