//! Parts that only go in together, and what they cost.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::interchange as core;

use crate::class::class;

class! {
    /// What a set costs.
    "trainwright.interchange" Price = core::Price {
        /// Sum of the known prices.
        total: f64,
        /// Parts and machinings whose price is not known.
        unpriced: u16,
    }
}

/// The smallest set of parts that goes together with the rest of a unit of another variant.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.interchange")]
#[derive(Clone, PartialEq)]
pub struct MatchedSet {
    pub(super) part: String,
    pub(super) variant: String,
    pub(super) into: String,
    pub(super) parts: Vec<String>,
    pub(super) edge: Vec<(String, Option<String>)>,
    pub(super) price: core::Price,
}

crate::class::explained!(MatchedSet, ["interchange.close_set"], , []);

#[pymethods]
impl MatchedSet {
    /// The part asked for.
    #[getter]
    fn part(&self) -> &str {
        &self.part
    }

    /// The variant of the set.
    #[getter]
    fn variant(&self) -> &str {
        &self.variant
    }

    /// The unit's variant.
    #[getter]
    fn into(&self) -> &str {
        &self.into
    }

    /// The parts, the one asked for among them, in the order of the record.
    #[getter]
    fn parts(&self) -> Vec<String> {
        self.parts.clone()
    }

    /// The machining that each of these joints with the rest of the unit needs, by joint.
    #[getter]
    fn machining<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let needed = PyDict::new(py);
        for (joint, rule) in self.edge.iter().filter_map(|(joint, rule)| Some((joint, rule.as_ref()?))) {
            needed.set_item(joint, rule)?;
        }
        Ok(needed)
    }

    /// Joints with the unit itself that nothing mends: if there is one, the part never goes in, and the set is how far it goes.
    #[getter]
    fn unmended(&self) -> Vec<&str> {
        self.edge.iter().filter(|(_, rule)| rule.is_none()).map(|(joint, _)| joint.as_str()).collect()
    }

    /// Whether the set goes in.
    #[getter]
    fn possible(&self) -> bool {
        self.edge.iter().all(|(_, rule)| rule.is_some())
    }

    /// What the parts and the machining cost.
    #[getter]
    fn price(&self) -> Price {
        self.price.into()
    }

    fn __repr__(&self) -> String {
        let Self { variant, into, .. } = self;
        let never = if self.possible() { String::new() } else { format!("; never: {}", self.unmended().join(", ")) };
        format!("<{variant} {} into {into}{never}>", self.parts.join(", "))
    }
}
