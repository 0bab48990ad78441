//! One engagement solved, and the gears of a record.

use std::sync::Arc;

use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyDict, PyType};
use trainwright::record::{NamedGear, NamedTrain};
use trainwright::train as core;

use crate::class::words;
use crate::error::{raise, refuse};

words! {
    "kind" StateKind = core::StateKind {
        Gear = "gear",
        Neutral = "neutral",
        InputHeld = "input held",
        OutputHeld = "output held",
        TiedUp = "tied up",
    }
}

/// An exact fraction as Python knows it; `None` where the state does not determine it.
pub fn exact(py: Python<'_>, fraction: core::Fraction) -> PyResult<Option<Bound<'_, PyAny>>> {
    static FRACTION: PyOnceLock<Py<PyType>> = PyOnceLock::new();
    if !fraction.is_known() {
        return Ok(None);
    }
    FRACTION.import(py, "fractions", "Fraction")?.call1((fraction.num, fraction.den)).map(Some)
}

/// What a mapping of a state holds: floats, or exact fractions.
type Values<'py> = PyResult<Bound<'py, PyDict>>;

fn floats<'py>(py: Python<'py>, names: &[String], values: &[core::Fraction]) -> Values<'py> {
    let dict = PyDict::new(py);
    names.iter().zip(values).try_for_each(|(name, value)| dict.set_item(name, value.value()))?;
    Ok(dict)
}

fn fractions<'py>(py: Python<'py>, names: &[String], values: &[core::Fraction]) -> Values<'py> {
    let dict = PyDict::new(py);
    names.iter().zip(values).try_for_each(|(name, value)| dict.set_item(name, exact(py, *value)?))?;
    Ok(dict)
}

/// One engagement solved: kind of state, and everything per unit of input speed and of input torque, without losses.
#[pyclass(frozen, subclass, module = "trainwright.train")]
pub struct State {
    pub(super) named: Arc<NamedTrain>,
    pub(super) state: core::State,
}

crate::class::explained!(State, ["train.solve"], , []);

impl State {
    /// The train that was solved, with its names.
    pub fn train(&self) -> &NamedTrain {
        &self.named
    }

    /// The solution.
    pub fn solved(&self) -> &core::State {
        &self.state
    }

    /// Number of the set of this name.
    pub fn set_place(&self, set: &str) -> PyResult<u8> {
        let sets = &self.named.sets;
        sets.iter().position(|known| known.id == set).map(|place| place as u8).ok_or_else(|| {
            let known: Vec<_> = sets.iter().map(|set| set.id.as_str()).collect();
            refuse("MISSING", "set", format!("set: the train has no set {set:?}; it has {}", known.join(", ")))
        })
    }
}

#[pymethods]
impl State {
    /// `"gear"`, `"neutral"`, `"input held"`, `"output held"` or `"tied up"`.
    #[getter]
    fn kind(&self) -> StateKind {
        StateKind(self.state.kind)
    }

    /// Names of the closed elements, holding one-way clutches included.
    #[getter]
    fn closed(&self) -> Vec<&str> {
        self.named.names(self.state.closed).collect()
    }

    /// Degrees of freedom that are left.
    #[getter]
    fn mobility(&self) -> u8 {
        self.state.mobility
    }

    /// Closures that repeat what others already force.
    #[getter]
    fn redundant(&self) -> u8 {
        self.state.redundant
    }

    /// Input speed over output speed; `None` unless the state is a gear.
    #[getter]
    fn ratio(&self) -> Option<f64> {
        self.state.ratio.value()
    }

    /// The ratio as a `fractions.Fraction`.
    #[getter]
    fn ratio_exact<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyAny>>> {
        exact(py, self.state.ratio)
    }

    /// Torque from outside on the output per unit input torque, forward positive.
    #[getter]
    fn output_torque(&self) -> Option<f64> {
        self.state.output_torque.value()
    }

    /// Torque of the case on the train per unit input torque.
    #[getter]
    fn case_torque(&self) -> Option<f64> {
        self.state.case_torque.value()
    }

    /// Speed of each member per unit input speed; `None` where the state leaves it open.
    #[getter]
    fn speeds<'py>(&self, py: Python<'py>) -> Values<'py> {
        floats(py, &self.named.members, &self.state.speeds)
    }

    /// Speed of each element's first member relative to its second, per unit input speed.
    #[getter]
    fn slips<'py>(&self, py: Python<'py>) -> Values<'py> {
        floats(py, &self.named.elements, &self.state.slips)
    }

    /// Torque that each element puts on its first member per unit input torque; `None` where it is indeterminate.
    #[getter]
    fn shares<'py>(&self, py: Python<'py>) -> Values<'py> {
        floats(py, &self.named.elements, &self.state.shares)
    }

    /// `speeds` as fractions.
    #[getter]
    fn speeds_exact<'py>(&self, py: Python<'py>) -> Values<'py> {
        fractions(py, &self.named.members, &self.state.speeds)
    }

    /// `slips` as fractions.
    #[getter]
    fn slips_exact<'py>(&self, py: Python<'py>) -> Values<'py> {
        fractions(py, &self.named.elements, &self.state.slips)
    }

    /// `shares` as fractions.
    #[getter]
    fn shares_exact<'py>(&self, py: Python<'py>) -> Values<'py> {
        fractions(py, &self.named.elements, &self.state.shares)
    }

    /// Slip of each closed element of a gear while it lets go and all others hold, per unit of slip at the input, which is the
    /// input speed above ratio times output speed; `None` where the two speeds do not show its slip.
    ///
    /// Source: power balance of the gear without losses, derived.
    #[getter]
    fn slip_per_input_slip<'py>(&self, py: Python<'py>) -> Values<'py> {
        let factors: Vec<_> =
            (0..).take(self.named.elements.len()).map(|element| self.state.slip_per_input_slip(element)).collect();
        floats(py, &self.named.elements, &factors)
    }

    /// Whether anything reacts a torque at the input.
    fn carries_torque(&self) -> bool {
        self.state.carries_torque()
    }

    /// Whether the state drives the output faster than `output_per_input` times the input: a forbidden state.
    #[pyo3(signature = (*, output_per_input))]
    fn overspeeds(&self, output_per_input: f64) -> bool {
        self.state.overspeeds(output_per_input)
    }

    /// Speeds of the planets of a set, on their pins and in space; `None` where the tooth counts are not known.
    /// Source: follows from the definitions (rolling at the pitch circles).
    fn planet_speeds<'py>(&self, py: Python<'py>, set: &str) -> Values<'py> {
        let speeds = self.named.train.planet_speeds(&self.state, self.set_place(set)?).map_err(raise)?;
        let dict = PyDict::new(py);
        dict.set_item("planet_on_pin", speeds.planet_on_pin.value())?;
        dict.set_item("planet", speeds.planet.value())?;
        dict.set_item("planet_2_on_pin", speeds.planet_2_on_pin.value())?;
        dict.set_item("planet_2", speeds.planet_2.value())?;
        Ok(dict)
    }

    fn __eq__(&self, other: &Self) -> bool {
        self.state == other.state && self.named == other.named
    }

    fn __repr__(&self) -> String {
        let closed = self.closed().join(" ");
        let closed = if closed.is_empty() { "nothing" } else { &closed };
        match self.ratio() {
            Some(ratio) => format!("<{closed} closed: ratio {ratio:.4}>"),
            None => format!("<{closed} closed: {}>", self.kind().word()),
        }
    }
}

/// A gear of the record, solved.
#[pyclass(frozen, extends = State, module = "trainwright.train")]
pub struct Gear {
    pub(super) gear: NamedGear,
}

#[pymethods]
impl Gear {
    /// Name of the gear.
    #[getter]
    fn id(&self) -> &str {
        &self.gear.id
    }

    /// Efficiency on the road, where the record states one.
    #[getter]
    fn efficiency(&self) -> Option<f64> {
        self.gear.efficiency
    }

    /// Ratio as it is printed in the source of the record.
    #[getter]
    fn published(&self) -> Option<&str> {
        self.gear.published.as_deref()
    }

    /// A misprint or doubt about the printed ratio.
    #[getter]
    fn note(&self) -> Option<&str> {
        self.gear.note.as_deref()
    }

    fn __repr__(slf: PyRef<'_, Self>) -> String {
        format!("<gear {}: {}", slf.gear.id, slf.as_super().__repr__().trim_start_matches('<'))
    }
}
