//! From a record: the looks of a family, and what a unit is.

use std::collections::HashMap;
use std::sync::Arc;

use pyo3::IntoPyObjectExt;
use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::{self as core, Bench, Found, FoundReading, Identified, Shows};

use super::{Conclusion, Outcome, PartFinding, Weighed, Worth};
use crate::judge::{Limits, Reading, Rule};
use crate::quantity::Number;
use crate::record::{Family, Instruments, raise_all};

/// Values by the name of the variant.
type ByVariant<'py> = PyResult<Bound<'py, PyDict>>;

fn by_variant<'py, T: IntoPyObject<'py>>(
    py: Python<'py>,
    bench: &Bench,
    values: impl IntoIterator<Item = T>,
) -> ByVariant<'py> {
    let dict = PyDict::new(py);
    bench.variants.iter().zip(values).try_for_each(|(variant, value)| dict.set_item(variant, value))?;
    Ok(dict)
}

fn look(bench: &Arc<Bench>, place: usize) -> Option<Look> {
    Some(Look { bench: bench.clone(), look: bench.looks.get(place)?.clone() })
}

fn name(names: &[String], place: usize) -> &str {
    names.get(place).map_or("", String::as_str)
}

/// Something that can be looked at on a unit of a family.
#[pyclass(frozen, skip_from_py_object, module = "trainwright.identify")]
#[derive(Clone)]
pub struct Look {
    bench: Arc<Bench>,
    look: core::Look,
}

#[pymethods]
impl Look {
    /// Name in the record.
    #[getter]
    fn id(&self) -> &str {
        &self.look.id
    }

    /// What to look for, or what to measure.
    #[getter]
    fn text(&self) -> &str {
        &self.look.look
    }

    /// The part that carries it.
    #[getter]
    fn part(&self) -> &str {
        name(&self.bench.parts, self.look.part)
    }

    /// Labor to look, minutes.
    #[getter]
    fn minutes(&self) -> f64 {
        self.look.minutes
    }

    /// Chance that the part came from another unit, before anything is looked at.
    #[getter]
    fn exchanged(&self) -> f64 {
        self.bench.exchanged.get(self.look.part).copied().unwrap_or(f64::NAN)
    }

    /// Of a mark: its chance on an untouched unit of each variant, else None.
    #[getter]
    fn chance<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyDict>>> {
        match &self.look.shows {
            Shows::Mark { chance } => by_variant(py, &self.bench, chance).map(Some),
            Shows::Size { .. } => Ok(None),
        }
    }

    /// Of a size: its limits in each variant, mm, else None.
    #[getter]
    fn size_mm<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyDict>>> {
        match &self.look.shows {
            Shows::Mark { .. } => Ok(None),
            Shows::Size { size_mm, .. } => {
                by_variant(py, &self.bench, size_mm.iter().map(|limits| Limits::from(*limits))).map(Some)
            }
        }
    }

    /// Of a size: the instrument, else None.
    #[getter]
    fn instrument(&self) -> Option<&str> {
        match &self.look.shows {
            Shows::Mark { .. } => None,
            Shows::Size { instrument, .. } => Some(instrument),
        }
    }

    /// Of a size: the standard uncertainty of its instrument, mm, where the record of the instruments was given.
    #[getter]
    fn u_mm(&self) -> Option<f64> {
        match &self.look.shows {
            Shows::Mark { .. } => None,
            Shows::Size { u_mm, .. } => *u_mm,
        }
    }

    fn __repr__(&self) -> String {
        format!("<look {}: {}>", self.look.id, self.look.look)
    }
}

/// A look that was made, and the chance of each variant after it.
#[pyclass(frozen, module = "trainwright.identify")]
pub struct LookMade {
    look: Look,
    made: core::Made,
}

#[pymethods]
impl LookMade {
    /// The look.
    #[getter]
    fn look(&self) -> Look {
        self.look.clone()
    }

    /// Whether the mark is there; of a size the reading, mm.
    #[getter]
    fn found(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        match self.made.found {
            FoundReading::Seen(seen) => seen.into_py_any(py),
            FoundReading::Measured { reading_mm, .. } => Reading::from(reading_mm).into_py_any(py),
        }
    }

    /// Of a size: the variant that the reading comes nearest to, else None.
    #[getter]
    fn nearest(&self) -> Option<&str> {
        match self.made.found {
            FoundReading::Seen(_) => None,
            FoundReading::Measured { nearest, .. } => Some(name(&self.look.bench.variants, nearest.variant as usize)),
        }
    }

    /// Of a size: how far the reading lies beyond the nearer limit of that variant, mm: 0 within, negative below. 0 for a mark.
    #[getter]
    fn outside_mm(&self) -> f64 {
        match self.made.found {
            FoundReading::Seen(_) => 0.0,
            FoundReading::Measured { nearest, .. } => nearest.outside_mm,
        }
    }

    /// The same in standard uncertainties of the reading.
    #[getter]
    fn outside_u(&self) -> f64 {
        match self.made.found {
            FoundReading::Seen(_) => 0.0,
            FoundReading::Measured { nearest, .. } => nearest.outside_u,
        }
    }

    /// Whether the reading is NO-GO against the limits of every variant: worn, mismeasured, or not of this family.
    #[getter]
    fn unexplained(&self) -> bool {
        matches!(self.made.found, FoundReading::Measured { unexplained: true, .. })
    }

    /// Whether the reading lies outside the range of its instrument, as the sizes of the record do.
    #[getter]
    fn out_of_range(&self) -> bool {
        matches!(self.made.found, FoundReading::Measured { out_of_range: true, .. })
    }

    /// Chance of each variant after this look and those before it.
    #[getter]
    fn chance<'py>(&self, py: Python<'py>) -> ByVariant<'py> {
        by_variant(py, &self.look.bench, &self.made.chance)
    }

    fn __repr__(&self) -> String {
        format!("<look made {}>", self.look.look.id)
    }
}

/// A look that was not made yet, and what it is worth.
#[pyclass(frozen, module = "trainwright.identify")]
pub struct NextLook {
    look: Look,
    worth: Option<Worth>,
}

#[pymethods]
impl NextLook {
    /// The look.
    #[getter]
    fn look(&self) -> Look {
        self.look.clone()
    }

    /// What it would tell; None for a size whose instrument is not known.
    #[getter]
    fn worth(&self) -> Option<Worth> {
        self.worth
    }

    fn __repr__(&self) -> String {
        let worth = self.worth.map_or("not known".into(), |worth| format!("{:.4}", worth.0.bits_per_minute));
        format!("<next look {}: {worth} bit/min>", self.look.look.id)
    }
}

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
