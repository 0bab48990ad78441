//! `trainwright.identify`: which variant is on the bench.

mod look;
mod unit;

pub use look::{Look, LookMade, NextLook};
pub use unit::{Identification, Part};

use numpy::{AllowTypeChange, PyArray1, PyArrayLike2};
use pyo3::prelude::*;
use trainwright::identify as core;

use crate::array::{Input, Out, Rows, map};
use crate::class::{class, words};
use crate::error::{answer, raise, refuse};
use crate::judge::{Limits, Reading, Rule};

words! {
    "outcome" Outcome = core::Outcome {
        NotSettled = "not settled",
        OneVariant = "one variant",
        Mixed = "mixed",
        Unexplained = "unexplained",
    }
}

class! {
    /// The variant whose size a reading comes nearest to.
    "trainwright.identify" Nearest = core::Nearest {
        /// Place of the variant; the first of equals.
        variant: u32,
        /// Distance of the reading beyond that variant's nearer limit, mm: 0 within the limits, negative below them.
        outside_mm: f64,
        /// The same distance in standard uncertainties of the reading.
        outside_u: f64,
    }
}

class! {
    /// The evidence as a whole.
    "trainwright.identify" Weighed = core::Weighed, explained by ["identify.weigh"] {
        /// Readings that no variant explains, as given.
        unexplained: u32,
        /// Place of the likeliest variant; the first of equals.
        best: u32,
        /// Place of the variant under which the looks are likeliest if nothing was exchanged.
        single: u32,
        /// Chance of the likeliest variant.
        chance: f64,
        /// Chance that at least one part that was looked at came from another variant than the unit.
        chance_mixed: f64,
        /// What is not known yet about the variant, bits.
        entropy_bits: f64,
        /// Logarithm of the likelihood of all looks over every variant and exchange.
        ln_evidence: f64,
        /// Logarithm of the likelihood of all looks in the best single variant, nothing exchanged.
        ln_single: f64,
        /// Logarithm of the likelihood of all looks where each part may come from the variant that fits it best.
        ln_by_part: f64,
        /// `ln_by_part` less `ln_single`: how strongly the parts contradict one another.
        ln_gap: f64,
    }
}

class! {
    /// What the evidence says of one part.
    "trainwright.identify" PartFinding = core::PartFinding, explained by ["identify.part"] {
        /// Place of the variant that the part most likely came from; the first of equals.
        origin: u32,
        /// Chance of that origin.
        chance: f64,
        /// Chance that the part was exchanged at some time.
        exchanged: f64,
        /// The same, if the unit is the likeliest variant.
        exchanged_if_best: f64,
        /// Chance that the part came from another variant than the unit: what an order must heed.
        foreign: f64,
        /// Logarithm of how much better its looks fit the variant that suits them best than the likeliest variant.
        ln_conflict: f64,
    }
}

class! {
    /// The verdict and what it rests on.
    "trainwright.identify" Conclusion = core::Conclusion, explained by ["identify.conclude"] {
        /// Rule that it was reached under.
        rule: Rule,
        /// Parts that are foreign to the unit under the rule.
        foreign_parts: u32,
        /// Parts of which the rule proves neither that they are foreign nor that they are not.
        open_parts: u32,
        /// "one variant", "mixed", "not settled" or "unexplained".
        outcome: Outcome,
        /// Whether one variant reaches the rule's chance.
        variant_settled: bool,
    }
}

class! {
    /// What a further look is worth.
    "trainwright.identify" Worth = core::Worth, explained by ["identify.mark_worth", "identify.size_worth"] {
        /// Information about the variant to be expected, bits.
        bits: f64,
        /// The same for each minute of labor.
        bits_per_minute: f64,
        /// Chance that afterwards one variant reaches the rule's chance.
        settles: f64,
    }
}

/// Prior chance of each variant from how many of each came into the shop: (n + 1)/(N + V).
/// Source: Gelman and others, Bayesian Data Analysis, 2.1 and 3.4 (Laplace's rule of succession).
///
/// >>> prior_of_counts([12, 30, 6])
/// [0.2549019607843137, 0.6078431372549019, 0.13725490196078433]
#[pyfunction]
pub fn prior_of_counts(counts: Vec<u32>) -> PyResult<Vec<f64>> {
    let mut prior = vec![0.0; counts.len()];
    core::prior_of_counts(&counts, &mut prior).map_err(raise)?;
    Ok(prior)
}

/// Logarithm of the chance of what was found of a mark: `chance` is that of the mark in each variant, a number or an array.
///
/// >>> ln_seen([0.01, 0.65, 0.99], seen=True).round(3)
/// array([-4.605, -0.431, -0.01 ])
#[pyfunction]
#[pyo3(signature = (chance, *, seen, out = None))]
pub fn ln_seen<'py>(
    py: Python<'py>,
    chance: Input<'py>,
    seen: bool,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("chance", chance)], out, |[chance]| {
        let mut row = [0.0];
        core::add_seen(&[chance], seen, &mut row)?;
        let [ln_chance] = row;
        Ok(ln_chance)
    })
}

/// Logarithm of the probability density (1/mm) of a reading of a size that lies anywhere within its limits, mm.
///
/// Both may be columns: a mapping of the field names to numbers or arrays, or a data frame.
/// Source: follows from the definitions (a rectangular size, read with a normal error).
///
/// >>> reading_mm = Reading(value=62.1, u=0.4)
/// >>> round(ln_density(reading_mm=reading_mm, size_mm=Limits(lower=61, upper=63)), 4)
/// -0.7085
/// >>> ln_density(reading_mm=reading_mm, size_mm={"lower": [61, 77], "upper": [63, 79]}).round(1)
/// array([  -0.7, -699. ])
#[pyfunction]
#[pyo3(signature = (*, reading_mm, size_mm, out = None))]
pub fn ln_density<'py>(
    py: Python<'py>,
    reading_mm: Rows<'py, Reading>,
    size_mm: Rows<'py, Limits>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let [value, u] = reading_mm.columns()?;
    let [lower, upper] = size_mm.columns()?;
    map(py, [value, u, lower, upper], out, |[value, u, lower, upper]| {
        let reading = trainwright::judge::Reading { value, u };
        core::ln_density(reading, trainwright::judge::Limits { lower, upper })
    })
}

/// The variant whose limits, mm, a reading comes nearest to.
///
/// >>> sizes_mm = [Limits(lower=43.975, upper=44.0), Limits(lower=44.325, upper=44.35)]
/// >>> worn = nearest(size_mm=sizes_mm, reading_mm=Reading(value=44.295, u=0.0016))
/// >>> worn.variant, round(worn.outside_mm, 3), round(worn.outside_u)
/// (1, -0.03, -19)
#[pyfunction]
#[pyo3(signature = (*, size_mm, reading_mm))]
pub fn nearest(size_mm: Vec<Limits>, reading_mm: Reading) -> PyResult<Nearest> {
    let size_mm: Vec<_> = size_mm.into_iter().map(|limits| limits.0).collect();
    answer(core::add_measured(&size_mm, reading_mm.0, &mut vec![0.0; size_mm.len()]))
}

/// A unit as the evidence shows it; `weigh` makes one.
#[pyclass(frozen, module = "trainwright.identify")]
pub struct Weighing {
    prior: Vec<f64>,
    exchanged: Vec<f64>,
    ln_likelihood: Vec<f64>,
    looked_at: Vec<bool>,
    variants: Vec<core::VariantFinding>,
    weighed: core::Weighed,
}

/// Chance of each variant from the looks at a unit, as arrays and without a record.
///
/// `prior`: chance of each variant beforehand. `exchanged`: for each part, the chance that it came from another unit.
/// `ln_likelihood`: a row for each look and a column for each variant, from `ln_seen` and `ln_density`. `part`: for each row
/// the place of the part that the look is on; without it, row by row. `unexplained`: how many readings are NO-GO against the
/// limits of every variant. Source: Gelman and others, Bayesian Data Analysis, 1.3, Bayes' rule.
///
/// >>> rows = [ln_seen([0.01, 0.65, 0.99], seen=True),       # on the case
/// ...         ln_seen([0.01, 0.97, 0.99], seen=True),       # on the case too
/// ...         ln_seen([0.005, 0.01, 0.995], seen=False)]    # on the extension
/// >>> unit = weigh(prior=[0.40, 0.38, 0.22], exchanged=[0.04, 0.05], ln_likelihood=rows, part=[0, 0, 1])
/// >>> unit.chance.round(3)
/// array([0.029, 0.934, 0.037])
#[pyfunction]
#[pyo3(signature = (*, prior, exchanged, ln_likelihood, part = None, unexplained = 0))]
pub fn weigh(
    prior: Vec<f64>,
    exchanged: Vec<f64>,
    ln_likelihood: PyArrayLike2<'_, f64, AllowTypeChange>,
    part: Option<Vec<usize>>,
    unexplained: u32,
) -> PyResult<Weighing> {
    let looks = ln_likelihood.as_array();
    let part = part.unwrap_or_else(|| (0..looks.nrows()).collect());
    let (count, parts) = (prior.len(), exchanged.len());
    if looks.ncols() != count && looks.nrows() > 0 {
        let message = format!("ln_likelihood: {} columns, and the prior has {count} variants", looks.ncols());
        return Err(refuse("COUNT", "ln_likelihood", message));
    }
    if part.len() != looks.nrows() {
        let message = format!("part: {} given for {} looks; give the part of each look", part.len(), looks.nrows());
        return Err(refuse("COUNT", "part", message));
    }
    let mut rows = vec![0.0; count * parts];
    let mut looked_at = vec![false; parts];
    for (look, &part) in looks.rows().into_iter().zip(&part) {
        let (Some(row), Some(looked_at)) =
            (rows.get_mut(part * count..).and_then(|rest| rest.get_mut(..count)), looked_at.get_mut(part))
        else {
            let message = format!("part = {part}: exchanged has {parts} parts, counted from 0");
            return Err(refuse("OUT_OF_RANGE", "part", message));
        };
        *looked_at = true;
        row.iter_mut().zip(look).for_each(|(sum, number)| *sum += number);
    }
    let mut variants = vec![core::VariantFinding::NONE; count];
    let evidence = core::Evidence { prior: &prior, exchanged: &exchanged, ln_likelihood: &rows, unexplained };
    let weighed = evidence.weigh(&mut variants).map_err(raise)?;
    Ok(Weighing { prior, exchanged, ln_likelihood: rows, looked_at, variants, weighed })
}

#[pymethods]
impl Weighing {
    /// Chance of each variant.
    #[getter]
    fn chance<'py>(&self, py: Python<'py>) -> Bound<'py, PyArray1<f64>> {
        self.column(py, |variant| variant.chance)
    }

    /// Chance of each variant, with no part that was looked at from another one.
    #[getter]
    fn chance_unmixed<'py>(&self, py: Python<'py>) -> Bound<'py, PyArray1<f64>> {
        self.column(py, |variant| variant.chance_unmixed)
    }

    /// Logarithm of the likelihood of all looks in each variant, if nothing was exchanged.
    #[getter]
    fn ln_unmixed<'py>(&self, py: Python<'py>) -> Bound<'py, PyArray1<f64>> {
        self.column(py, |variant| variant.ln_unmixed)
    }

    /// The evidence as a whole.
    #[getter]
    fn weighed(&self) -> Weighed {
        self.weighed.into()
    }

    /// Where a part came from; `part` is its place.
    /// Source: Gelman and others, Bayesian Data Analysis, 1.3, Bayes' rule.
    ///
    /// >>> unit = weigh(prior=[0.5, 0.5], exchanged=[0.1], ln_likelihood=[ln_seen([0.2, 0.8], seen=True)])
    /// >>> unit.part(0).origin, round(unit.part(0).exchanged, 2)
    /// (1, 0.1)
    fn part(&self, part: usize) -> PyResult<PartFinding> {
        self.origins_of(part).map(|(_, finding)| finding.into())
    }

    /// Each variant as the origin of a part: the chance that the part came from it (`chance`), the chance that the part was
    /// not exchanged if the unit is that variant (`kept`), and the chance that it came from it if it was exchanged
    /// (`if_exchanged`), as arrays.
    fn origins<'py>(&self, py: Python<'py>, part: usize) -> PyResult<Bound<'py, pyo3::types::PyDict>> {
        let (origins, _) = self.origins_of(part)?;
        let fields = pyo3::types::PyDict::new(py);
        let array = |of: fn(&core::Origin) -> f64| PyArray1::from_iter(py, origins.iter().map(of));
        fields.set_item("chance", array(|origin| origin.chance))?;
        fields.set_item("kept", array(|origin| origin.kept))?;
        fields.set_item("if_exchanged", array(|origin| origin.if_exchanged))?;
        Ok(fields)
    }

    /// One variant, mixed, or not settled, over the parts that were looked at.
    fn conclude(&self, rule: Rule) -> PyResult<Conclusion> {
        let mut findings = Vec::new();
        for (part, _) in self.looked_at.iter().enumerate().filter(|(_, looked_at)| **looked_at) {
            findings.push(self.origins_of(part)?.1);
        }
        answer(core::conclude(&self.weighed, &findings, rule.0))
    }

    /// What looking for a mark on a part would tell about the variant. `chance`: of the mark in each variant.
    /// Source: Cover and Thomas, Elements of Information Theory, 2.4.
    ///
    /// >>> unit = weigh(prior=[0.5, 0.5], exchanged=[0.0], ln_likelihood=np.zeros((1, 2)))
    /// >>> round(unit.mark_worth(0, chance=[0.11, 0.89], minutes=2, rule=judge.Rule.conformance(0.95)).bits, 3)
    /// 0.5
    #[pyo3(signature = (part, *, chance, minutes, rule))]
    fn mark_worth(&self, part: usize, chance: Vec<f64>, minutes: f64, rule: Rule) -> PyResult<Worth> {
        let (origins, _) = self.origins_of(part)?;
        answer(self.standing(&origins, rule).mark_worth(&chance, minutes))
    }

    /// What measuring a size of a part would tell about the variant. `size_mm`: limits in each variant; `u_mm`: standard
    /// uncertainty of the instrument. Source: Cover and Thomas, Elements of Information Theory, 8.5.
    ///
    /// >>> unit = weigh(prior=[0.5, 0.5], exchanged=[0.0], ln_likelihood=np.zeros((1, 2)))
    /// >>> sizes_mm = [Limits(lower=43.975, upper=44.0), Limits(lower=44.325, upper=44.35)]
    /// >>> worth = unit.size_worth(0, size_mm=sizes_mm, u_mm=0.0016, minutes=30, rule=judge.Rule.conformance(0.95))
    /// >>> round(worth.bits, 6), round(worth.bits_per_minute, 4)
    /// (1.0, 0.0333)
    #[pyo3(signature = (part, *, size_mm, u_mm, minutes, rule))]
    fn size_worth(&self, part: usize, size_mm: Vec<Limits>, u_mm: f64, minutes: f64, rule: Rule) -> PyResult<Worth> {
        let (origins, _) = self.origins_of(part)?;
        let size_mm: Vec<_> = size_mm.into_iter().map(|limits| limits.0).collect();
        answer(self.standing(&origins, rule).size_worth(&size_mm, u_mm, minutes))
    }

    fn __repr__(&self) -> String {
        let chances: Vec<_> = self.variants.iter().map(|variant| format!("{:.4}", variant.chance)).collect();
        format!("<weighing: chances {}>", chances.join(", "))
    }
}

impl Weighing {
    fn column<'py>(&self, py: Python<'py>, of: fn(&core::VariantFinding) -> f64) -> Bound<'py, PyArray1<f64>> {
        PyArray1::from_iter(py, self.variants.iter().map(of))
    }

    fn origins_of(&self, part: usize) -> PyResult<(Vec<core::Origin>, core::PartFinding)> {
        let evidence = core::Evidence {
            prior: &self.prior,
            exchanged: &self.exchanged,
            ln_likelihood: &self.ln_likelihood,
            unexplained: self.weighed.unexplained,
        };
        let mut origins = vec![core::Origin::NONE; self.variants.len()];
        let finding = evidence.part(&self.variants, part, &mut origins).map_err(raise)?;
        Ok((origins, finding))
    }

    fn standing<'a>(&'a self, origins: &'a [core::Origin], rule: Rule) -> core::Standing<'a> {
        core::Standing { variants: &self.variants, origins, rule: rule.0 }
    }
}

/// One variant, mixed, or not settled, from findings that were made before: see `Weighing.conclude`.
/// Source: follows from the definitions (the stated chances of the rule, on posterior chances).
///
/// >>> unit = weigh(prior=[0.5, 0.5], exchanged=[0.02], ln_likelihood=[ln_seen([0.001, 0.999], seen=True)])
/// >>> conclude(unit.weighed, [unit.part(0)], judge.Rule.conformance(0.95)).outcome
/// 'one variant'
#[pyfunction]
pub fn conclude(weighed: Weighed, parts: Vec<PartFinding>, rule: Rule) -> PyResult<Conclusion> {
    let parts: Vec<_> = parts.into_iter().map(|part| part.0).collect();
    answer(core::conclude(&weighed.0, &parts, rule.0))
}
