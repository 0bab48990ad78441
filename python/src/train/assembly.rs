//! Conditions of assembly.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::train as core;

use super::Train;
use crate::class::words;
use crate::error::raise;

words! {
    "finding" Finding = core::Finding { Holds = "holds", Fails = "fails", NotKnown = "not known" }
}

/// The conditions of assembly of one set. Printed, it names each condition and the mend.
#[pyclass(frozen, module = "trainwright.train")]
pub struct Assembly(core::Assembly);

crate::class::explained!(Assembly, ["train.assembly"], , []);

#[pymethods]
impl Assembly {
    /// All conditions together: `"holds"`, `"fails"` or `"not known"`.
    #[getter]
    fn finding(&self) -> Finding {
        Finding(self.0.finding())
    }

    /// Sun, planets and ring share an axis.
    #[getter]
    fn coaxial(&self) -> Finding {
        Finding(self.0.coaxial)
    }

    /// The planets mesh equally spaced.
    #[getter]
    fn equal_spacing(&self) -> Finding {
        Finding(self.0.equal_spacing)
    }

    /// Neighboring planets are clear of each other.
    #[getter]
    fn neighbors(&self) -> Finding {
        Finding(self.0.neighbors)
    }

    /// Places around the carrier in which a planet meshes; 0 if it meshes anywhere.
    #[getter]
    fn places(&self) -> u32 {
        self.0.places
    }

    /// Places left over when they are shared equally among the planets.
    #[getter]
    fn places_left(&self) -> u32 {
        self.0.places_left
    }

    /// Numbers of planets, up to 12, that mesh equally spaced.
    #[getter]
    fn equal_planets(&self) -> Vec<usize> {
        (1..=core::MAX_PLANETS).filter(|n| self.0.equal_planets & (1 << n) != 0).collect()
    }

    /// Teeth by which sun and ring miss a common axis.
    #[getter]
    fn coaxial_excess(&self) -> i32 {
        self.0.coaxial_excess
    }

    /// Least gap between the tips of neighboring planets, in modules.
    #[getter]
    fn neighbor_gap_modules(&self) -> f64 {
        self.0.neighbor_gap_modules
    }

    /// Nearest places of the planets to equal spacing.
    #[getter]
    fn planet_angles_deg(&self) -> Vec<f64> {
        self.0.planet_angles_deg.into_iter().take(self.0.planets.into()).collect()
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("<{}>", self.0)
    }
}

#[pymethods]
impl Train {
    /// Whether each set can be put together, by the names of the sets.
    ///
    /// Source: Elements of Metric Gear Technology, 13.3.1, for the simple set; the others derived.
    fn assembly<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let dict = PyDict::new(py);
        for (record, set) in self.named.sets.iter().zip(self.named.train.sets()) {
            dict.set_item(&record.id, Py::new(py, Assembly(set.assembly().map_err(raise)?))?)?;
        }
        Ok(dict)
    }
}
