//! `trainwright.stack`: end play and clutch clearance, choice of shim and ring, what to measure first.

mod choose;
mod pack;

use pyo3::prelude::*;
use trainwright::stack as core;

use crate::array::{Input, Out, map};
use crate::class::class;
use crate::error::{answer, raise};
use crate::fit::Spread;
use crate::judge::{Budget, Judgment, Limits, Reading, Repeated};

pub use choose::{HotPlay, Piece, PieceChoice, PieceList, PieceOutcome, Selection};
pub use pack::{ApplyFill, PackHeights, PackRoom, PistonStroke, PistonTravel, apply_fill, room_from_fitted};

class! {
    /// One part of a chain; make one with its static methods.
    ///
    /// >>> ChainLink.measured(-1, Reading(value=1.85, u=0.012), k=2)
    /// ChainLink(sensitivity=-1.0, value_mm=1.85, half_width_mm=0.024, u_mm=0.012)
    "trainwright.stack" ChainLink = core::ChainLink {
        /// Change of the result per change of this size: +1 opens the gap, −1 fills it, −n for n equal parts known by one.
        sensitivity: f64,
        /// Middle of the tolerance, or the reading, mm.
        value_mm: f64,
        /// How far from there the size may lie, mm.
        half_width_mm: f64,
        /// Standard uncertainty, mm.
        u_mm: f64,
    }
}

#[pymethods]
impl ChainLink {
    /// A part as made, not measured. `spread` is "rectangular" (u = t/√3) or "normal 3 sigma" (u = t/3).
    /// Source: JCGM 100:2008, 4.3.7 and 4.3.5.
    #[staticmethod]
    #[pyo3(signature = (sensitivity, size_mm, *, spread))]
    fn toleranced(sensitivity: f64, size_mm: Limits, spread: Spread) -> PyResult<Self> {
        answer(core::ChainLink::toleranced(sensitivity, size_mm.0, spread.0))
    }

    /// A measured part; so many standard uncertainties count as its worst case.
    #[staticmethod]
    #[pyo3(signature = (sensitivity, size_mm, *, k))]
    fn measured(sensitivity: f64, size_mm: Reading, k: f64) -> PyResult<Self> {
        answer(core::ChainLink::measured(sensitivity, size_mm.0, k))
    }
}

class! {
    /// What a chain of parts leaves.
    "trainwright.stack" Chain = core::Chain, explained by ["stack.chain"] {
        /// The result with its standard uncertainty, mm.
        reading_mm: Reading,
        /// Every part at its worst, ± mm.
        worst_half_mm: f64,
        /// Least and greatest result with every part at its worst, mm.
        worst_mm: Limits,
        /// Root sum of squares of the tolerances, ± mm.
        rss_half_mm: f64,
        /// Least and greatest result by root sum of squares, mm.
        rss_mm: Limits,
        /// Chance that the result lies within `rss_mm`, by the stated uncertainties.
        rss_chance: f64,
        /// Where the uncertainty comes from, in the order of the links.
        budget: Budget,
    }
}

/// The size that a chain of parts leaves: worst case, root sum of squares, and as a reading with its budget.
///
/// The root sum of squares counts on independent parts whose sizes center in their tolerances.
/// Source: Shigley, chapter 1, dimensions and tolerances; JCGM 100:2008, equation 10 for u.
///
/// >>> groove = ChainLink.toleranced(+1, Limits(lower=44.374, upper=44.526), spread="normal 3 sigma")
/// >>> blocks = ChainLink.toleranced(-1, Limits(lower=44.145, upper=44.501), spread="normal 3 sigma")
/// >>> gap = chain([groove, blocks])
/// >>> round(gap.reading_mm.value, 3), round(gap.worst_half_mm, 3), round(gap.rss_half_mm, 3)
/// (0.127, 0.254, 0.194)
#[pyfunction]
pub fn chain(links: Vec<ChainLink>) -> PyResult<Chain> {
    let links: Vec<_> = links.into_iter().map(|link| link.0).collect();
    answer(core::chain(&links))
}

class! {
    /// The lengths that stand against each other along the axis, and how they grow.
    ///
    /// >>> growth = AxialGrowth(case_length_mm=Reading(value=310, u=0), train_length_mm=Reading(value=310, u=0),
    /// ...     case_expansion_per_k=Reading.rectangular(23e-6, half_width=1e-6),
    /// ...     train_expansion_per_k=Reading.rectangular(11.5e-6, half_width=0.5e-6), reference_c=20)
    /// >>> hot = growth.grown(temp_c=Reading.exact(90))
    /// >>> round(hot.growth_mm.value, 2), round(hot.growth_mm.u, 3)
    /// (0.25, 0.014)
    /// >>> growth.growth_mm(temp_c=np.array([-20.0, 20.0, 90.0])).round(3)
    /// array([-0.143,  0.   ,  0.25 ])
    "trainwright.stack" AxialGrowth = core::AxialGrowth {
        /// Length of the case between the two faces of the end play, mm.
        case_length_mm: Reading,
        /// Length of the parts between the same faces, mm.
        train_length_mm: Reading,
        /// Expansion of the case, 1/K.
        case_expansion_per_k: Reading,
        /// Expansion of the parts, 1/K.
        train_expansion_per_k: Reading,
        /// Temperature at which the cold end play holds, °C.
        reference_c: f64,
    }
}

class! {
    /// Change of the end play, and what made it.
    "trainwright.stack" GrownPlay = core::GrownPlay, explained by ["stack.grown"] {
        /// Growth of the case, mm.
        case_mm: f64,
        /// Growth of the parts, mm.
        train_mm: f64,
        /// What the end play gains, mm; negative where it loses.
        growth_mm: Reading,
        /// Where its uncertainty comes from: length of case, of train, expansion of case, of train, temperature, difference.
        budget: Budget,
    }
}

/// A temperature difference of exactly 0.
fn soaked() -> Reading {
    Reading(trainwright::judge::Reading { value: 0.0, u: 0.0 })
}

#[pymethods]
impl AxialGrowth {
    /// What the end play gains from the reference temperature to a hot one. `train_hotter_k` is how much hotter the parts are
    /// than the case: 0 once the unit is soaked through, above 0 while it warms up.
    /// Source: follows from the definitions (linear expansion ΔL = α L Δt of case and train).
    #[pyo3(signature = (*, temp_c, train_hotter_k = soaked()))]
    fn grown(&self, temp_c: Reading, train_hotter_k: Reading) -> PyResult<GrownPlay> {
        answer(self.0.grown(temp_c.0, train_hotter_k.0))
    }

    /// Best estimate of what the end play gains, mm.
    #[pyo3(signature = (*, temp_c, train_hotter_k = 0.0.into(), out = None))]
    fn growth_mm<'py>(
        &self,
        py: Python<'py>,
        temp_c: Input<'py>,
        train_hotter_k: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("temp_c", temp_c), ("train_hotter_k", train_hotter_k)], out, |[temp, hotter]| {
            self.0.growth_mm(temp, hotter)
        })
    }
}

/// Mean of readings taken in steps, as with feelers, and its standard uncertainty.
///
/// `quantum` is the step, `u_of_one` what is known of a single reading. Readings that all show the same step are no better
/// than the step, however many there are.
/// Source: JCGM 100:2008, 4.2.3 for the scatter, F.2.2.1 for the step; the larger of the two counts.
///
/// >>> mean_of_steps([2.25, 2.30, 2.25, 2.28], quantum=0.05, u_of_one=0.025).reading
/// Reading(value=2.27, u=0.0125)
/// >>> round(mean_of_steps([2.25, 2.25, 2.25, 2.25], quantum=0.05, u_of_one=0.022).reading.u, 4)
/// 0.0144
#[pyfunction]
#[pyo3(signature = (values, *, quantum, u_of_one))]
pub fn mean_of_steps(values: Vec<f64>, quantum: f64, u_of_one: f64) -> PyResult<Repeated> {
    answer(core::mean_of_steps(&values, quantum, u_of_one))
}

class! {
    /// What measuring one input would bring.
    "trainwright.stack" MeasureGain = core::MeasureGain, explained by ["stack.what_to_measure"] {
        /// Position of the input in the budget.
        input: u32,
        /// Its share in the variance of the result.
        share: f64,
        /// Share of this input and of all before it in the list.
        share_so_far: f64,
        /// Standard uncertainty of the input now, in its own unit.
        u_now: f64,
        /// Standard uncertainty that measuring it would leave; `u_now` where measuring would not be better.
        u_measured: f64,
        /// Standard uncertainty of the result then.
        u_of_result: f64,
        /// Chance that the judgment would then be a GO.
        chance_go: f64,
        /// Chance that the judgment would then be a NO-GO.
        chance_no_go: f64,
        /// Standard uncertainty of the input that would decide the case if the value stays; 0 where no measurement of it would.
        u_needed: f64,
        /// Measuring it well enough would decide the case if the value stays; true where it is decided already.
        enough: bool,
    }
}

/// What measuring each input of a judged result would bring, the one that weighs most first.
///
/// `u_measured` is what the shop's instrument would leave of each input, in the order of the budget; infinite where a part
/// cannot be measured.
/// Source: follows from the definitions (root sum of squares with one term exchanged; the judgment it would give, over what
/// the measurement may show).
///
/// >>> part = lambda sign, size, u: ChainLink.measured(sign, Reading(value=size, u=u), k=2)
/// >>> play = chain([part(+1, 2.153, 0.010), part(-1, 0.0, 0.028), part(-1, 1.60, 0.012)])
/// >>> judgment = judge.judge(play.reading_mm, Limits(lower=0.20, upper=0.60), judge.Rule.stated_chances(go=0.95, no_go=0.05))
/// >>> gasket = what_to_measure(judgment, play.budget, [0.007, 0.004, 0.002])[0]
/// >>> judgment.verdict, gasket.input, round(gasket.share, 2), round(gasket.u_of_result, 4), round(gasket.chance_go, 2)
/// ('NOT PROVEN', 1, 0.76, 0.0161, 0.77)
#[pyfunction]
pub fn what_to_measure(judgment: Judgment, budget: Budget, u_measured: Vec<f64>) -> PyResult<Vec<MeasureGain>> {
    let plan = core::what_to_measure(&judgment.0, &budget.into(), &u_measured).map_err(raise)?;
    Ok(plan.gains().iter().copied().map(MeasureGain).collect())
}
