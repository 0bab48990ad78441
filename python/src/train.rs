//! `trainwright.train`: gear trains.

mod assembly;
mod candidates;
mod diagnosis;
mod losses;

pub use assembly::Assembly;
pub use candidates::{RatioFit, counted_ratio, fit_ratio, timed_ratio};
pub use diagnosis::{NextGear, Signature, Suspect, Symptom};
pub use losses::{Losses, PowerFlow};

use std::sync::Arc;

use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyDict, PyType};
use trainwright::record::{NamedGear, NamedTrain};
use trainwright::train as core;

use crate::class::words;
use crate::error::{raise, refuse};
use crate::record::raise_all;

words! {
    "kind" StateKind = core::StateKind {
        Gear = "gear",
        Neutral = "neutral",
        InputHeld = "input held",
        OutputHeld = "output held",
        TiedUp = "tied up",
    }
}

words! {
    "load" Load = core::Load { None = "none", Drive = "drive", Coast = "coast" }
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

/// A gear train: members, planetary sets, elements and gears, by the names of its record.
///
/// >>> train = Train.from_toml('''
/// ... [train]
/// ... input = "sun"
/// ... output = "carrier"
/// ... fixed = "case"
/// ... [[train.set]]
/// ... id = "P1"
/// ... teeth = { sun = 20, ring = 34 }
/// ... joins = { sun = "sun", ring = "ring", carrier = "carrier" }
/// ... [train.element]
/// ... B1 = { kind = "brake", joins = ["ring", "case"] }
/// ... [[train.gear]]
/// ... id = "1"
/// ... closed = ["B1"]
/// ... ''')
/// >>> train.gears()[0].ratio_exact
/// Fraction(27, 10)
#[pyclass(frozen, module = "trainwright.train")]
pub struct Train {
    named: Arc<NamedTrain>,
    text: String,
    variant: Option<String>,
}

impl Train {
    /// A train with the text that it was read from.
    pub fn new(named: NamedTrain, text: &str, variant: Option<&str>) -> Self {
        Self { named: Arc::new(named), text: text.into(), variant: variant.map(Into::into) }
    }

    /// The train with its names.
    pub fn named(&self) -> &Arc<NamedTrain> {
        &self.named
    }

    fn state(&self, solved: trainwright::Result<core::State>) -> PyResult<State> {
        Ok(State { named: self.named.clone(), state: solved.map_err(raise)? })
    }

    /// Mask of the elements of these names.
    pub fn mask(&self, closed: &[String]) -> PyResult<u32> {
        self.named.mask(closed.iter().map(String::as_str)).map_err(|name| {
            let known = self.named.elements.join(", ");
            refuse("MISSING", "closed", format!("closed: the train has no element {name:?}; it has {known}"))
        })
    }
}

/// What pickle calls, and with what.
type Reduced<'a> = (Py<PyAny>, (&'a str, Option<&'a str>));

#[pymethods]
impl Train {
    /// The train in the `[train]` table of a record: a train file, or a whole family file.
    ///
    /// A set that is written `only` for a variant takes part where that variant is asked for.
    #[staticmethod]
    #[pyo3(signature = (text, variant = None))]
    fn from_toml(py: Python<'_>, text: &str, variant: Option<&str>) -> PyResult<Self> {
        match NamedTrain::from_toml("", text, variant) {
            Ok(named) => Ok(Self::new(named, text, variant)),
            Err(problems) => Err(raise_all(py, problems)),
        }
    }

    /// What the train is, in a line, where the record says it.
    #[getter]
    fn title(&self) -> Option<&str> {
        self.named.title.as_deref()
    }

    /// Where tooth counts, layout and ratios come from, and how each is known.
    #[getter]
    fn source(&self) -> Option<&str> {
        self.named.source.as_deref()
    }

    /// What a reader should know: fitted tooth counts, misprints, doubts.
    #[getter]
    fn note(&self) -> Option<&str> {
        self.named.note.as_deref()
    }

    /// Names of the members; speeds come in this order.
    #[getter]
    fn members(&self) -> Vec<String> {
        self.named.members.clone()
    }

    /// Names of the elements; slips and shares come in this order.
    #[getter]
    fn elements(&self) -> Vec<String> {
        self.named.elements.clone()
    }

    /// Names of the planetary sets.
    #[getter]
    fn sets(&self) -> Vec<String> {
        self.named.sets.iter().map(|set| set.id.clone()).collect()
    }

    /// The gears of the record, solved with the elements and one-way clutches that it lists.
    fn gears(&self, py: Python<'_>) -> PyResult<Vec<Py<Gear>>> {
        self.named
            .gears
            .iter()
            .map(|gear| {
                let state = self.state(self.named.train.solve(gear.closed | gear.one_way))?;
                Py::new(py, PyClassInitializer::from(state).add_subclass(Gear { gear: gear.clone() }))
            })
            .collect()
    }

    /// The state in which exactly these elements are closed, one-way clutches like any other.
    /// Source: H. W. Müller (1982), basic speed equation and torque ratios of a planetary set.
    fn solve(&self, closed: Vec<String>) -> PyResult<State> {
        self.state(self.named.train.solve(self.mask(&closed)?))
    }

    /// As `solve`, with the one-way clutches held or overrunning as the load (`"none"`, `"drive"`, `"coast"`) makes them.
    /// Source: follows from the definitions (unilateral constraint).
    #[pyo3(signature = (closed, *, load = Load(core::Load::Drive)))]
    fn resolve(&self, closed: Vec<String>, load: Load) -> PyResult<State> {
        self.state(self.named.train.resolve(self.mask(&closed)?, load.0))
    }

    /// Every combination of closed elements, each resolved under the load.
    #[pyo3(signature = (*, load = Load(core::Load::None)))]
    fn states(&self, load: Load) -> PyResult<Vec<State>> {
        let train = &self.named.train;
        train.engagements().map(|closed| self.state(train.resolve(closed, load.0))).collect()
    }

    /// How many combinations of closed elements give each kind of state.
    #[pyo3(signature = (*, load = Load(core::Load::None)))]
    fn state_counts<'py>(&self, py: Python<'py>, load: Load) -> PyResult<Bound<'py, PyDict>> {
        let core::StateCounts { gear, neutral, input_held, output_held, tied_up } =
            py.detach(|| self.named.train.state_counts(load.0)).map_err(raise)?;
        let dict = PyDict::new(py);
        for (kind, count) in [
            (core::StateKind::Gear, gear),
            (core::StateKind::Neutral, neutral),
            (core::StateKind::InputHeld, input_held),
            (core::StateKind::OutputHeld, output_held),
            (core::StateKind::TiedUp, tied_up),
        ] {
            dict.set_item(StateKind(kind), count)?;
        }
        Ok(dict)
    }

    fn __reduce__(&self, py: Python<'_>) -> PyResult<Reduced<'_>> {
        let from_toml = py.get_type::<Self>().getattr("from_toml")?.unbind();
        Ok((from_toml, (&self.text, self.variant.as_deref())))
    }

    fn __eq__(&self, other: &Self) -> bool {
        self.named == other.named
    }

    fn __repr__(&self) -> String {
        let NamedTrain { members, sets, elements, gears, .. } = &*self.named;
        format!(
            "<gear train: {} members, {} sets, {} elements, {} gears>",
            members.len(),
            sets.len(),
            elements.len(),
            gears.len()
        )
    }
}

/// One engagement solved: kind of state, and everything per unit of input speed and of input torque, without losses.
#[pyclass(frozen, subclass, module = "trainwright.train")]
pub struct State {
    named: Arc<NamedTrain>,
    state: core::State,
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
    gear: NamedGear,
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
