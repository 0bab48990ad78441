//! From a record: the looks of a family, and what a unit is.

use std::collections::HashMap;
use std::sync::Arc;

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::{self as core, Bench, Found, Identified};

use super::look::{ByVariant, Look, LookMade, NextLook, by_variant, look, name};
use super::{Conclusion, Outcome, PartFinding, Weighed};
use crate::judge::{Reading, Rule};
use crate::quantity::Number;
use crate::record::{Family, Instruments, raise_all};

/// A part that was looked at.
#[pyclass(frozen, module = "trainwright.identify")]
pub struct Part {
    bench: Arc<Bench>,
    part: core::IdentifiedPart,
}

#[pymethods]
impl Part {
    /// Name of the part.
    #[getter]
    fn name(&self) -> &str {
        name(&self.bench.parts, self.part.part)
    }

    /// The variant that it most likely came from.
    #[getter]
    fn origin(&self) -> &str {
        name(&self.bench.variants, self.part.finding.origin as usize)
    }

    /// Chance that it came from each variant.
    #[getter]
    fn origins<'py>(&self, py: Python<'py>) -> ByVariant<'py> {
        by_variant(py, &self.bench, self.part.origins.iter().map(|origin| origin.chance))
    }

    /// Chance that it was exchanged, that it is foreign to its unit, and how its looks contradict the unit.
    #[getter]
    fn finding(&self) -> PartFinding {
        self.part.finding.into()
    }

    fn __repr__(&self) -> String {
        let core::IdentifiedPart { finding, .. } = &self.part;
        format!("<part {}: {} ({:.4}), foreign {:.4}>", self.name(), self.origin(), finding.chance, finding.foreign)
    }
}

/// What a unit is, from what was found on it: `Family.identify` makes one.
#[pyclass(frozen, module = "trainwright.identify")]
pub struct Identification {
    bench: Arc<Bench>,
    unit: Identified,
}

#[pymethods]
impl Identification {
    /// Chance of each variant.
    #[getter]
    fn chance<'py>(&self, py: Python<'py>) -> ByVariant<'py> {
        by_variant(py, &self.bench, self.unit.variants.iter().map(|variant| variant.chance))
    }

    /// Chance of each variant, with no part that was looked at from another one.
    #[getter]
    fn chance_unmixed<'py>(&self, py: Python<'py>) -> ByVariant<'py> {
        by_variant(py, &self.bench, self.unit.variants.iter().map(|variant| variant.chance_unmixed))
    }

    /// Chance of each variant before anything was looked at.
    #[getter]
    fn prior<'py>(&self, py: Python<'py>) -> ByVariant<'py> {
        by_variant(py, &self.bench, &self.bench.prior)
    }

    /// The likeliest variant.
    #[getter]
    fn best(&self) -> &str {
        name(&self.bench.variants, self.unit.weighed.best as usize)
    }

    /// "one variant", "mixed", "not settled" or "unexplained".
    #[getter]
    fn outcome(&self) -> Outcome {
        self.unit.conclusion.outcome.into()
    }

    /// The verdict and what it rests on.
    #[getter]
    fn conclusion(&self) -> Conclusion {
        self.unit.conclusion.into()
    }

    /// The evidence as a whole.
    #[getter]
    fn weighed(&self) -> Weighed {
        self.unit.weighed.into()
    }

    /// Every part that was looked at, by its name.
    #[getter]
    fn parts<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let parts = PyDict::new(py);
        for part in self.all_parts() {
            let name = part.name().to_owned();
            parts.set_item(name, part)?;
        }
        Ok(parts)
    }

    /// The parts that the rule does not clear of being foreign, the surest first.
    #[getter]
    fn conflicts(&self) -> Vec<Part> {
        let no_go = self.unit.conclusion.rule.no_go;
        let mut open: Vec<_> = self.all_parts().filter(|part| part.part.finding.foreign > no_go).collect();
        open.sort_by(|a, b| b.part.finding.foreign.total_cmp(&a.part.finding.foreign));
        open
    }

    /// The looks that were made, in the order given.
    #[getter]
    fn made(&self) -> Vec<LookMade> {
        let made = self.unit.made.iter();
        made.filter_map(|made| Some(LookMade { look: look(&self.bench, made.look)?, made: made.clone() })).collect()
    }

    /// The looks that were not made, the one that tells most about the variant per minute first.
    #[getter]
    fn next_looks(&self) -> Vec<NextLook> {
        let next = self.unit.next.iter();
        let look = |next: &core::NextLook| {
            Some(NextLook { look: look(&self.bench, next.look)?, worth: next.worth.map(Into::into) })
        };
        next.filter_map(look).collect()
    }

    fn __repr__(&self) -> String {
        let chances = self.bench.variants.iter().zip(&self.unit.variants);
        let chances: Vec<_> = chances.map(|(name, variant)| format!("{name} {:.4}", variant.chance)).collect();
        format!("<identification: {}; {}>", self.unit.conclusion.outcome, chances.join(", "))
    }
}

impl Identification {
    fn all_parts(&self) -> impl Iterator<Item = Part> {
        self.unit.parts.iter().map(|part| Part { bench: self.bench.clone(), part: part.clone() })
    }
}

/// A number of millimeters, or a reading with its own uncertainty.
#[derive(FromPyObject)]
pub enum Size {
    /// With its uncertainty.
    Reading(Reading),
    /// As the instrument shows it.
    Number(Number),
}

impl Size {
    fn found(self, id: &str) -> PyResult<Found> {
        Ok(match self {
            Self::Reading(reading) => Found::Measured { value_mm: reading.0.value, u_mm: Some(reading.0.u) },
            Self::Number(number) => Found::Measured { value_mm: number.value(&format!("{id}_mm"))?, u_mm: None },
        })
    }
}

#[pymethods]
impl Family {
    /// What can be looked at on a unit of this family; with the instruments, how well its sizes can be measured.
    #[pyo3(signature = (*, instruments = None, prior = None))]
    fn looks(
        &self,
        py: Python<'_>,
        instruments: Option<&Instruments>,
        prior: Option<HashMap<String, f64>>,
    ) -> PyResult<Vec<Look>> {
        let bench = bench(py, self, instruments, prior)?;
        Ok((0..bench.looks.len()).filter_map(|place| look(&bench, place)).collect())
    }

    /// What a unit is, from what was found on it. What nobody looked at is left out: it is not absent.
    ///
    /// `seen`: marks by their names in the record, True where they are there, False where somebody looked and they are not.
    /// `measured_mm`: sizes by their names, as the instrument shows them, or as a `Reading` with an uncertainty of its own.
    /// `instruments`: the shop's record of them. `prior`: chance of each variant, in place of the record's. `rule`: the
    /// chances from which a variant or a foreign part counts as proven. Source: Gelman and others, Bayesian Data Analysis,
    /// 1.3, Bayes' rule.
    #[pyo3(signature = (*, rule, seen = None, measured_mm = None, instruments = None, prior = None))]
    fn identify(
        &self,
        py: Python<'_>,
        rule: Rule,
        seen: Option<Bound<'_, PyDict>>,
        measured_mm: Option<Bound<'_, PyDict>>,
        instruments: Option<&Instruments>,
        prior: Option<HashMap<String, f64>>,
    ) -> PyResult<Identification> {
        let mut found = Vec::new();
        for (id, seen) in seen.into_iter().flatten() {
            found.push((id.extract()?, Found::Seen(seen.extract()?)));
        }
        for (id, size) in measured_mm.into_iter().flatten() {
            let id: String = id.extract()?;
            let size = size.extract::<Size>()?.found(&id)?;
            found.push((id, size));
        }
        let bench = bench(py, self, instruments, prior)?;
        let unit = bench.identify(&found, rule.0).map_err(|problems| raise_all(py, problems))?;
        Ok(Identification { bench, unit })
    }
}

fn bench(
    py: Python<'_>,
    family: &Family,
    instruments: Option<&Instruments>,
    prior: Option<HashMap<String, f64>>,
) -> PyResult<Arc<Bench>> {
    let prior: Vec<_> = prior.into_iter().flatten().collect();
    let bench = family.record.bench(instruments.map(|instruments| &instruments.record), &prior);
    bench.map(Arc::new).map_err(|problems| raise_all(py, problems))
}
