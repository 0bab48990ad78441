//! `trainwright.train`: gear trains.

mod assembly;
mod candidates;
mod diagnosis;
mod losses;
mod state;

pub use assembly::Assembly;
pub use candidates::{RatioFit, counted_ratio, fit_ratio, timed_ratio};
pub use diagnosis::{NextGear, Signature, Suspect, Symptom};
pub use losses::{Losses, PowerFlow};
pub use state::{Gear, State, StateKind, exact};

use std::sync::Arc;

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::NamedTrain;
use trainwright::train as core;

use crate::class::words;
use crate::error::{raise, refuse};
use crate::record::raise_all;

words! {
    "load" Load = core::Load { None = "none", Drive = "drive", Coast = "coast" }
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
