//! `trainwright.judge`: readings, limits and decisions.

use pyo3::prelude::*;
use trainwright::judge as core;

use crate::array::{Input as Column, Out, Rows, map};
use crate::class::{Field, class, columns, words};
use crate::error::{answer, raise};

class! {
    /// A measured or uncertain value with its standard uncertainty (k = 1), both in the same unit.
    ///
    /// >>> Reading(value=44.407, u=0.004)
    /// Reading(value=44.407, u=0.004)
    "trainwright.judge" Reading = core::Reading, checked by finite {
        /// Best estimate.
        value: f64,
        /// Standard uncertainty, 0 or more.
        u: f64,
    }
}

#[pymethods]
impl Reading {
    /// A value taken as exact.
    #[staticmethod]
    fn exact(value: f64) -> PyResult<Self> {
        answer(core::Reading::exact(value))
    }

    /// A value with its standard uncertainty as a fraction of it: 0.02 for 2 %.
    #[staticmethod]
    #[pyo3(signature = (value, *, u_rel))]
    fn relative(value: f64, u_rel: f64) -> PyResult<Self> {
        answer(core::Reading::relative(value, u_rel))
    }

    /// Anywhere within ± the half width with the same chance: u = a/√3.
    /// Source: JCGM 100:2008, 4.3.7, 4.3.9, F.2.2.1, H.6.
    ///
    /// >>> round(Reading.rectangular(16.52, half_width=0.40).u, 2)
    /// 0.23
    #[staticmethod]
    #[pyo3(signature = (value, *, half_width))]
    fn rectangular(value: f64, half_width: f64) -> PyResult<Self> {
        answer(core::Reading::rectangular(value, half_width))
    }

    /// Within ± the half width, more often near the middle: u = a/√6.
    #[staticmethod]
    #[pyo3(signature = (value, *, half_width))]
    fn triangular(value: f64, half_width: f64) -> PyResult<Self> {
        answer(core::Reading::triangular(value, half_width))
    }

    /// Swinging as a sine between ± the half width: u = a/√2.
    #[staticmethod]
    #[pyo3(signature = (value, *, half_width))]
    fn arcsine(value: f64, half_width: f64) -> PyResult<Self> {
        answer(core::Reading::arcsine(value, half_width))
    }

    /// Read from a display or counter that moves in steps of the quantum: u = q/√12.
    #[staticmethod]
    #[pyo3(signature = (value, *, quantum))]
    fn quantized(value: f64, quantum: f64) -> PyResult<Self> {
        answer(core::Reading::quantized(value, quantum))
    }

    /// Read on an instrument whose class is its greatest error in percent of full scale.
    ///
    /// >>> round(Reading.of_class(1470.0, full_scale=2500.0, class_pct=1.6).u, 1)
    /// 23.1
    #[staticmethod]
    #[pyo3(signature = (value, *, full_scale, class_pct))]
    fn of_class(value: f64, full_scale: f64, class_pct: f64) -> PyResult<Self> {
        answer(core::Reading::of_class(value, full_scale, class_pct))
    }
}

class! {
    /// Repeated readings in one.
    "trainwright.judge" Repeated = core::Repeated, explained by ["judge.mean_of"] {
        /// Mean and its standard uncertainty.
        reading: Reading,
        /// Standard deviation of a single reading.
        deviation: f64,
        /// Degrees of freedom, n − 1.
        freedom: f64,
    }
}

class! {
    /// Tolerance limits; an open side is infinite.
    ///
    /// >>> Limits(upper=0.14)
    /// Limits(lower=float("-inf"), upper=0.14)
    "trainwright.judge" Limits = core::Limits, checked by in_order {
        /// Least conforming value, or −∞.
        lower: f64 = f64::NEG_INFINITY,
        /// Greatest conforming value, or +∞.
        upper: f64 = f64::INFINITY,
    }
}

#[pymethods]
impl Limits {
    /// Whether the value lies within, the limits included.
    fn holds(&self, value: f64) -> bool {
        self.0.holds(value)
    }
}

columns! { Reading[2]: value, u }
columns! { Limits[2]: lower, upper }

fn finite(reading: core::Reading) -> trainwright::Result<core::Reading> {
    core::Reading::new(reading.value, reading.u)
}

/// Reversed infinite limits are the empty zone of a judgment.
fn in_order(limits: core::Limits) -> trainwright::Result<core::Limits> {
    let core::Limits { lower, upper } = limits;
    if lower == f64::INFINITY && upper == f64::NEG_INFINITY { Ok(limits) } else { core::Limits::new(lower, upper) }
}

words! {
    "verdict" Verdict = core::Verdict { Go = "GO", NoGo = "NO-GO", NotProven = "NOT PROVEN" }
}

words! {
    "kind" RuleKind = core::RuleKind {
        SIMPLE_ACCEPTANCE = "simple acceptance",
        CONFORMANCE = "conformance probability",
        EXPANDED_GUARD = "expanded guard",
        STATED_CHANCES = "stated chances",
    }
}

class! {
    /// A decision rule; make one with its static methods.
    ///
    /// >>> Rule.conformance(0.95)
    /// Rule(go=0.95, no_go=0.050000000000000044, k=0.0, kind="conformance probability")
    /// >>> print(Rule.conformance(0.95))
    /// conformance probability 0.95 (ISO 14253-1:2017)
    "trainwright.judge" Rule = core::Rule {
        /// Least chance of lying inside that is a GO.
        go: f64,
        /// Greatest chance of lying inside that is a NO-GO.
        no_go: f64,
        /// Guard in standard uncertainties.
        k: f64,
        /// Kind, in words.
        kind: RuleKind,
    }
}

#[pymethods]
impl Rule {
    /// Inside is GO, outside is NO-GO; the uncertainty is not counted.
    #[staticmethod]
    fn simple_acceptance() -> Self {
        core::Rule::simple_acceptance().into()
    }

    /// GO is proven from this chance of lying inside, NO-GO up to 1 minus it (ISO 14253-1:2017, usually 0.95).
    #[staticmethod]
    fn conformance(probability: f64) -> PyResult<Self> {
        answer(core::Rule::conformance(probability))
    }

    /// A guard of k standard uncertainties on either side of a limit (ISO 14253-1 before 2017, usually 2).
    #[staticmethod]
    fn expanded_guard(k: f64) -> PyResult<Self> {
        answer(core::Rule::expanded_guard(k))
    }

    /// GO from the chance `go`, above 0.5; NO-GO up to the chance `no_go`, below 0.5.
    #[staticmethod]
    #[pyo3(signature = (*, go, no_go))]
    fn stated_chances(go: f64, no_go: f64) -> PyResult<Self> {
        answer(core::Rule::stated_chances(go, no_go))
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }
}

class! {
    /// A decision and what it rests on.
    "trainwright.judge" Judgment = core::Judgment, explained by ["judge.judge"] {
        /// What was judged.
        reading: Reading,
        /// Against what.
        limits: Limits,
        /// Under which rule.
        rule: Rule,
        /// Chance that the true value lies within the limits.
        chance: f64,
        /// Values that are GO at this uncertainty; lower +∞ and upper −∞ if there is none.
        acceptance: Limits,
        /// Values below its lower or above its upper end are NO-GO at this uncertainty.
        rejection: Limits,
        /// Distance of the value above the lower limit; negative when below it.
        above_lower: f64,
        /// Distance of the value below the upper limit; negative when above it.
        below_upper: f64,
        /// Greatest standard uncertainty at which this same value is decided; infinite if any will do.
        u_to_decide: f64,
        /// Nearest value that is GO at this uncertainty; infinite if there is none.
        value_to_go: f64,
        /// "GO", "NO-GO" or "NOT PROVEN".
        verdict: Verdict,
    }
}

class! {
    /// The one further measurement that would settle a judgment.
    "trainwright.judge" Settlement = core::Settlement, explained by ["judge.settle"] {
        /// Position of the input to measure better.
        input: u32,
        /// Whether measuring this input alone can decide the case.
        enough: bool,
        /// Standard uncertainty of that input now, in its own unit.
        u_now: f64,
        /// Standard uncertainty that would do; 0 when even a perfect measurement would not.
        u_needed: f64,
    }
}

class! {
    /// What one input brings to a result.
    "trainwright.judge" Input = core::Input {
        /// Change of the result per unit of the input.
        sensitivity: f64,
        /// Standard uncertainty of the input.
        u: f64,
        /// Degrees of freedom of `u`; infinite where it is taken as certain.
        freedom: f64 = f64::INFINITY,
    }
}

/// Uncertainty budget: the combined standard uncertainty and where it comes from.
#[pyclass(frozen, from_py_object, module = "trainwright.judge")]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Budget(pub core::Budget);

#[pymethods]
impl Budget {
    #[new]
    #[pyo3(signature = (*, u, freedom, sensitivity, contribution, share, largest))]
    fn new(
        u: f64,
        freedom: f64,
        sensitivity: Vec<f64>,
        contribution: Vec<f64>,
        share: Vec<f64>,
        largest: u32,
    ) -> PyResult<Self> {
        let count = sensitivity.len().max(contribution.len()).max(share.len());
        if count > core::MAX_INPUTS || [&sensitivity, &contribution, &share].iter().any(|list| list.len() != count) {
            let high = core::MAX_INPUTS as u32;
            return Err(raise(trainwright::Error::Count { name: "contribution", count: count as u32, low: 1, high }));
        }
        let list = |from: Vec<f64>| {
            let mut to = [0.0; core::MAX_INPUTS];
            to.iter_mut().zip(from).for_each(|(to, from)| *to = from);
            to
        };
        let (sensitivity, contribution, share) = (list(sensitivity), list(contribution), list(share));
        Ok(Self(core::Budget { u, freedom, sensitivity, contribution, share, count: count as u32, largest }))
    }

    /// Combined standard uncertainty.
    #[getter]
    fn u(&self) -> f64 {
        self.0.u
    }

    /// Effective degrees of freedom.
    #[getter]
    fn freedom(&self) -> f64 {
        self.0.freedom
    }

    /// Change of the result per unit of each input.
    #[getter]
    fn sensitivity(&self) -> Vec<f64> {
        self.used(self.0.sensitivity)
    }

    /// c_i u_i of each input, with its sign.
    #[getter]
    fn contribution(&self) -> Vec<f64> {
        self.used(self.0.contribution)
    }

    /// Share of each input in the variance.
    #[getter]
    fn share(&self) -> Vec<f64> {
        self.used(self.0.share)
    }

    /// Position of the input that contributes most: the one to measure better.
    #[getter]
    fn largest(&self) -> u32 {
        self.0.largest
    }

    fn __eq__(&self, other: &Self) -> bool {
        self == other
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        self.__repr__().into_pyobject(py)?.hash()
    }

    fn __repr__(&self) -> String {
        let list = |values: Vec<f64>| values.iter().map(Field::source).collect::<Vec<_>>().join(", ");
        format!(
            "Budget(u={}, freedom={}, sensitivity=[{}], contribution=[{}], share=[{}], largest={})",
            self.0.u.source(),
            self.0.freedom.source(),
            list(self.sensitivity()),
            list(self.contribution()),
            list(self.share()),
            self.0.largest
        )
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Bound<'py, pyo3::types::PyDict>)> {
        Ok(((), self.as_dict(py)?))
    }

    /// The fields by name.
    fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, pyo3::types::PyDict>> {
        let fields = pyo3::types::PyDict::new(py);
        fields.set_item("u", self.u())?;
        fields.set_item("freedom", self.freedom())?;
        fields.set_item("sensitivity", self.sensitivity())?;
        fields.set_item("contribution", self.contribution())?;
        fields.set_item("share", self.share())?;
        fields.set_item("largest", self.largest())?;
        Ok(fields)
    }
}

impl Field for Budget {
    type Argument = Self;

    fn take(_: &'static str, argument: Self) -> PyResult<Self> {
        Ok(argument)
    }

    fn source(&self) -> String {
        self.__repr__()
    }

    fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        Ok(self.as_dict(py)?.into_any().unbind())
    }
}

impl From<core::Budget> for Budget {
    fn from(budget: core::Budget) -> Self {
        Self(budget)
    }
}

impl From<Budget> for core::Budget {
    fn from(budget: Budget) -> Self {
        budget.0
    }
}

impl Budget {
    fn used(&self, list: [f64; core::MAX_INPUTS]) -> Vec<f64> {
        list.into_iter().take(self.0.count as usize).collect()
    }
}

class! {
    /// An expanded uncertainty and the interval it gives.
    "trainwright.judge" Expanded = core::Expanded, explained by ["judge.expand"] {
        /// Value and standard uncertainty.
        reading: Reading,
        /// Stated probability of the interval.
        coverage: f64,
        /// Degrees of freedom.
        freedom: f64,
        /// Coverage factor.
        k: f64,
        /// Half width of the interval.
        expanded_u: f64,
        /// Lower end of the interval.
        lower: f64,
        /// Upper end of the interval.
        upper: f64,
    }
}

/// Mean of repeated readings, its standard uncertainty and degrees of freedom.
/// Source: JCGM 100:2008, 4.2.1, 4.2.3.
///
/// >>> mean_of([2.25, 2.30, 2.25, 2.28]).reading.value
/// 2.27
#[pyfunction]
pub fn mean_of(values: Vec<f64>) -> PyResult<Repeated> {
    answer(core::mean_of(&values))
}

/// Probability, 0 to 1, that the true value behind the reading lies within the limits.
///
/// Both may be columns: a mapping of the field names to numbers or arrays, or a data frame.
/// Source: JCGM 106:2012, clause 7, equation 12.
///
/// >>> round(chance_inside(Reading(value=-5.47, u=0.05), Limits(upper=-5.40)), 2)
/// 0.92
/// >>> chance_inside({"value": [0.10, 0.20], "u": 0.004}, Limits(upper=0.14)).round(3)
/// array([1., 0.])
#[pyfunction]
#[pyo3(signature = (reading, limits, *, out = None))]
pub fn chance_inside<'py>(
    py: Python<'py>,
    reading: Rows<'py, Reading>,
    limits: Rows<'py, Limits>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let [value, u] = reading.columns()?;
    let [lower, upper] = limits.columns()?;
    map(py, [value, u, lower, upper], out, |[value, u, lower, upper]| {
        core::chance_inside(core::Reading { value, u }, core::Limits { lower, upper })
    })
}

/// Decides whether the reading conforms to its limits, and says what would settle it.
/// Source: ISO 14253-1:2017, clause 5; JCGM 106:2012, clause 8.
///
/// >>> outcome = judge(Reading(value=72.0, u=3.0), Limits(lower=25.0, upper=75.0), Rule.conformance(0.95))
/// >>> outcome.verdict, round(outcome.acceptance.upper, 2), round(outcome.u_to_decide, 2)
/// ('NOT PROVEN', 70.07, 1.82)
#[pyfunction]
pub fn judge(reading: Reading, limits: Limits, rule: Rule) -> PyResult<Judgment> {
    answer(core::judge(reading.0, limits.0, rule.0))
}

/// Combined standard uncertainty of independent inputs, and what each contributes.
/// Source: JCGM 100:2008, 5.1.2, equations 10 and 11a.
///
/// >>> combine([Input(sensitivity=3.0, u=1.0), Input(sensitivity=4.0, u=1.0)]).u
/// 5.0
#[pyfunction]
pub fn combine(inputs: Vec<Input>) -> PyResult<Budget> {
    core::combine(&plain(inputs)).map(Budget).map_err(raise)
}

/// Combined standard uncertainty of correlated inputs; `correlation` is a square list of lists.
/// Source: JCGM 100:2008, 5.2.2, equation 16.
#[pyfunction]
pub fn combine_correlated(inputs: Vec<Input>, correlation: Vec<Vec<f64>>) -> PyResult<Budget> {
    core::combine_correlated(&plain(inputs), &correlation.concat()).map(Budget).map_err(raise)
}

/// Effective degrees of freedom of the combined uncertainty of independent inputs (Welch-Satterthwaite).
/// Source: JCGM 100:2008, G.4.1, equation G.2b.
#[pyfunction]
pub fn effective_freedom(inputs: Vec<Input>) -> PyResult<f64> {
    core::effective_freedom(&plain(inputs)).map_err(raise)
}

fn plain(inputs: Vec<Input>) -> Vec<core::Input> {
    inputs.into_iter().map(|input| input.0).collect()
}

/// Carries independent readings through a function of as many numbers; returns the result and its budget.
/// Source: JCGM 100:2008, 5.1.3, note 2.
///
/// >>> clearance, budget = propagate([Reading(value=43.988, u=0.0016), Reading(value=44.407, u=0.0042)],
/// ...                               lambda journal, bore: bore - journal)
/// >>> round(clearance.value, 3), round(clearance.u, 4), budget.largest
/// (0.419, 0.0045, 1)
#[pyfunction]
pub fn propagate(inputs: Vec<Reading>, formula: Bound<'_, PyAny>) -> PyResult<(Reading, Budget)> {
    let inputs: Vec<_> = inputs.into_iter().map(|input| input.0).collect();
    let mut raised = None;
    let result = core::propagate_list(&inputs, |values| {
        let called = pyo3::types::PyTuple::new(formula.py(), values)
            .and_then(|arguments| formula.call1(arguments))
            .and_then(|value| value.extract());
        called.map_err(|error| {
            raised = Some(error);
            trainwright::Error::NoAnswer { name: "formula", why: "it raised an exception" }
        })
    });
    match (result, raised) {
        (_, Some(error)) => Err(error),
        (result, None) => result.map(|it| (it.reading.into(), Budget(it.budget))).map_err(raise),
    }
}

/// Expanded uncertainty and coverage interval for a stated probability.
/// Source: JCGM 100:2008, 6.2, G.3.2.
///
/// >>> round(expand(Reading(value=0.0, u=32.0), freedom=16.0, coverage=0.99).expanded_u)
/// 93
#[pyfunction]
#[pyo3(signature = (reading, *, freedom, coverage))]
pub fn expand(reading: Reading, freedom: f64, coverage: f64) -> PyResult<Expanded> {
    answer(core::expand(reading.0, freedom, coverage))
}

/// The one input whose better measurement would decide the judged reading, and how good it must be.
/// Source: follows from the definitions (root sum of squares, solved for one input).
#[pyfunction]
pub fn settle(judgment: Judgment, budget: &Budget) -> PyResult<Settlement> {
    answer(core::settle(&judgment.0, &budget.0))
}

/// As `settle`, for the input at this position: whether measuring it better could decide the case, and how good it must be.
#[pyfunction]
pub fn settle_by(judgment: Judgment, budget: &Budget, input: u32) -> PyResult<Settlement> {
    answer(core::settle_by(&judgment.0, &budget.0, input))
}

class! {
    /// Where a verdict turns along one input.
    "trainwright.judge" Turning = core::Turning, explained by ["judge.turning_value"] {
        /// Value of the input on the GO side of the turn.
        value: f64,
        /// That value less the present one.
        change: f64,
        /// Whether the verdict is GO at the present value: it then ceases to be GO beyond `value`, else it becomes GO there.
        go_now: bool,
        /// The judgment at that value.
        judgment: Judgment,
    }
}

/// Value of one input at which the verdict turns to GO, or, where it is GO already, at which it ceases to be; the other inputs
/// stay as they are. The nearest one between the bounds; refused where there is none.
///
/// `judged` takes a value of the input and returns the judgment, or a result with a `judgment`. Where it refuses a value, the
/// verdict there counts as not GO. Source: follows from the definitions (bisection).
///
/// >>> turning = turning_value(lambda value: judge(Reading(value=value, u=0.1), Limits(lower=1.0), Rule.conformance(0.95)),
/// ...                         now=1.0, lower=0.0, upper=2.0)
/// >>> round(turning.value, 4), turning.judgment.verdict
/// (1.1645, 'GO')
#[pyfunction]
#[pyo3(signature = (judged, *, now, lower, upper))]
pub fn turning_value(judged: Bound<'_, PyAny>, now: f64, lower: f64, upper: f64) -> PyResult<Turning> {
    let py = judged.py();
    let refusal = py.import("trainwright.error")?.getattr("Error")?;
    let (mut raised, mut first) = (None, true);
    let bounds = core::Limits { lower, upper };
    let found = core::turning_value(now, bounds, |value| {
        let called = judged.call1((value,)).and_then(|result| {
            let judgment = result.getattr_opt("judgment")?.unwrap_or(result);
            Ok(judgment.extract::<Judgment>()?.0)
        });
        let first = std::mem::take(&mut first);
        called.map_err(|error| {
            // The first call is the one at the present value: what is refused there is refused altogether.
            let refused = !first && error.matches(py, &refusal).unwrap_or(false);
            if !refused && raised.is_none() {
                raised = Some(error);
            }
            trainwright::Error::NoAnswer { name: "judged", why: "it raised an exception" }
        })
    });
    match raised {
        Some(error) => Err(error),
        None => answer(found),
    }
}

/// Standard normal distribution function.
///
/// >>> normal_cdf(0.0)
/// 0.5
#[pyfunction]
#[pyo3(signature = (z, *, out = None))]
pub fn normal_cdf<'py>(py: Python<'py>, z: Column<'py>, out: Option<Out<'py>>) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("z", z)], out, |[z]| core::normal_cdf(z))
}

/// Value that a standard normal variable stays below with the stated probability.
/// Source: Wichura (1988), routine PPND16.
///
/// >>> round(normal_quantile(0.95), 5)
/// 1.64485
#[pyfunction]
#[pyo3(signature = (probability, *, out = None))]
pub fn normal_quantile<'py>(
    py: Python<'py>,
    probability: Column<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("probability", probability)], out, |[p]| core::normal_quantile(p))
}

/// Student's t distribution function; `freedom` is 1 or more, infinite for the normal distribution.
/// Source: Abramowitz and Stegun (1964), 26.5.8, 26.7.1.
#[pyfunction]
#[pyo3(signature = (t, freedom, *, out = None))]
pub fn student_cdf<'py>(
    py: Python<'py>,
    t: Column<'py>,
    freedom: Column<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("t", t), ("freedom", freedom)], out, |[t, freedom]| core::student_cdf(t, freedom))
}

/// Value that a Student's t variable stays below with the stated probability.
#[pyfunction]
#[pyo3(signature = (probability, freedom, *, out = None))]
pub fn student_quantile<'py>(
    py: Python<'py>,
    probability: Column<'py>,
    freedom: Column<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("probability", probability), ("freedom", freedom)];
    map(py, columns, out, |[probability, freedom]| core::student_quantile(probability, freedom))
}

/// Factor from standard uncertainty to the half width that covers the stated probability.
/// Source: JCGM 100:2008, G.3, table G.2.
///
/// >>> round(coverage_factor(0.99, 16.0), 2)
/// 2.92
#[pyfunction]
#[pyo3(signature = (coverage, freedom, *, out = None))]
pub fn coverage_factor<'py>(
    py: Python<'py>,
    coverage: Column<'py>,
    freedom: Column<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("coverage", coverage), ("freedom", freedom)];
    map(py, columns, out, |[coverage, freedom]| core::coverage_factor(coverage, freedom))
}
