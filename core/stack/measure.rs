//! What to measure: which part's uncertainty weighs most, and what measuring it would bring.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, within};
use crate::judge::{Budget, Judgment, Limits, MAX_INPUTS, Reading, Repeated, chance_inside, judge, settle_by};
use crate::real::{abs, sqrt};

pub(super) const MEAN_OF_STEPS: Card = Card {
    id: "stack.mean_of_steps",
    purpose: "Mean of readings taken in steps, as with feelers, and its standard uncertainty",
    equation: "ḡ = Σ g_k/n, u = max(s, u_1, q/√12)/√n; not below q/√12 while all g_k lie within one step q",
    symbols: &[
        symbol("g_k", "values", "of the reading"),
        symbol("ḡ, u", "reading", "of the reading"),
        symbol("s", "deviation, of a single reading", "of the reading"),
        symbol("u_1", "u_of_one, known of a single reading", "of the reading"),
        symbol("q", "quantum", "of the reading"),
        symbol("n", "number of readings", "1"),
    ],
    range: "readings at places of their own; a scale error common to all of them comes on top",
    source: &card::GUM,
    locator: "4.2.3 for the scatter, F.2.2.1 for the step; the larger of the two counts",
};

pub(super) const WHAT_TO_MEASURE: Card = Card {
    id: "stack.what_to_measure",
    purpose: "Which part to measure to shrink the uncertainty most, by how much, and the chance that it settles the judgment",
    equation: "u'² = u² − c_i² (u_i² − u_m²); the next value spreads about y with c_i √(u_i² + u_m²), judged at u'",
    symbols: &[
        symbol("y, u", "judgment.reading", "of the result"),
        symbol("u'", "u_of_result", "of the result"),
        symbol("c_i", "budget.sensitivity", "of the result over the input"),
        symbol("u_i", "u_now", "of the input"),
        symbol("u_m", "u_measured", "of the input"),
    ],
    range: "normal inputs, independent; the measured value replaces what was known of the part",
    source: &card::DEFINITION,
    locator: "root sum of squares with one term exchanged; the judgment it would give, over what the measurement may show",
};

/// Mean of readings taken in steps, and its standard uncertainty.
///
/// ḡ = Σ g_k/n, u = max(s, u_1, q/√12)/√n; not below q/√12 while all g_k lie within one step q
///
/// * `values` — g_k, 1 or more, each at a place of its own; `quantum` — q, the step of the feelers or the scale, 0 or more;
///   `u_of_one` — u_1, what is known of a single reading, 0 or more
/// * returns the mean with its u, the scatter of a single reading (0 for one reading), and the degrees of freedom of u: n − 1
///   where the scatter governs, infinite otherwise. Readings that all show the same step are no better than the step, however
///   many there are
/// * errors: [`Error::Count`], [`Error::NotFinite`], [`Error::OutOfRange`]
///
/// Source: JCGM 100:2008, 4.2.3 and F.2.2.1 (from memory); scatter holds the step already, so the larger of the two counts.
/// Example (computed independently for the demonstration): four feeler readings of u 0.022 mm each have a mean of u 0.011.
///
/// ```
/// use trainwright::stack::mean_of_steps;
/// let clearance_mm = mean_of_steps(&[2.25, 2.30, 2.25, 2.28], 0.05, 0.025)?;
/// assert_eq!((clearance_mm.reading.value, clearance_mm.reading.u), (2.27, 0.0125));
/// let all_alike = mean_of_steps(&[2.25; 4], 0.05, 0.022)?;
/// assert!((all_alike.reading.u - 0.05 / 12.0_f64.sqrt()).abs() < 1e-12);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn mean_of_steps(values: &[f64], quantum: f64, u_of_one: f64) -> Result<Repeated> {
    let step_u = Reading::quantized(0.0, quantum)?.u;
    let u_of_one = within("u_of_one", u_of_one, 0.0, f64::MAX)?;
    let count = u32::try_from(values.len()).unwrap_or(u32::MAX);
    if count == 0 {
        return Err(Error::Count { name: "values", count, low: 1, high: u32::MAX });
    }
    let n = f64::from(count);
    let (mut sum, mut least, mut most) = (0.0, f64::INFINITY, f64::NEG_INFINITY);
    for &value in values {
        sum += finite("values", value)?;
        (least, most) = (value.min(least), value.max(most));
    }
    let mean = sum / n;
    let squares: f64 = values.iter().map(|value| (value - mean) * (value - mean)).sum();
    let deviation = if count > 1 { sqrt(squares / (n - 1.0)) } else { 0.0 };
    let known = u_of_one.max(step_u);
    let mut u = deviation.max(known) / sqrt(n);
    // A millionth of a step is the rounding of the readings themselves.
    if most - least < quantum * (1.0 - 1e-6) {
        u = u.max(step_u);
    }
    let freedom = if deviation > known { n - 1.0 } else { f64::INFINITY };
    Ok(Repeated { reading: Reading::new(mean, u)?, deviation, freedom })
}

/// What measuring one input would bring.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasureGain {
    /// Position of the input in the budget.
    pub input: u32,
    /// Its share in the variance of the result.
    pub share: f64,
    /// Share of this input and of all before it in the order of the list.
    pub share_so_far: f64,
    /// Standard uncertainty of the input now, in its own unit.
    pub u_now: f64,
    /// Standard uncertainty that measuring it would leave; `u_now` where measuring would not be better.
    pub u_measured: f64,
    /// Standard uncertainty of the result then.
    pub u_of_result: f64,
    /// Chance that the judgment would then be a GO.
    pub chance_go: f64,
    /// Chance that the judgment would then be a NO-GO.
    pub chance_no_go: f64,
    /// Standard uncertainty of the input that would decide the case if the value stays; 0 where no measurement of it would.
    pub u_needed: f64,
    /// Measuring it well enough would decide the case if the value stays; true where it is decided already.
    pub enough: bool,
}

/// The inputs by what they weigh. Only the first `count` entries are used.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasurePlan {
    /// One entry for each input, by falling share in the variance; equal shares in the order of the budget.
    pub gains: [MeasureGain; MAX_INPUTS],
    /// Number of inputs.
    pub count: u32,
}

impl MeasurePlan {
    /// The used entries.
    #[must_use]
    pub fn gains(&self) -> &[MeasureGain] {
        self.gains.get(..self.count as usize).unwrap_or_default()
    }
}

/// Which input to measure, the one that weighs most first.
///
/// u'² = u² − c_i² (u_i² − u_m²); the next value spreads about y with c_i √(u_i² + u_m²), judged at u'
///
/// * `judgment` — of the result; `budget` — of the same combination; `u_measured` — u_m of each input in the order of the budget:
///   what the shop's instrument would leave, 0 or more, infinite where the part cannot be measured
/// * returns [`MeasurePlan`]. A value near a limit may go either way once its part is measured, so the chance of either
///   verdict stands beside what would do if the value stays
/// * errors: [`Error::Count`] where `u_measured` does not go with the budget; [`Error::OutOfRange`]; [`Error::Inconsistent`] if
///   the judgment is of another result
///
/// Source: the root sum of squares with one term exchanged. Example (computed): a shim of 1.60 mm in the end play of the
/// demonstration leaves 0.553 of 0.60 mm allowed, not proven. The gasket makes 76 % of the variance: measured to 0.004 mm it
/// halves the uncertainty, and the judgment is then a GO with a chance of 0.77.
///
/// ```
/// use trainwright::judge::{Limits, Reading, Rule, judge};
/// use trainwright::stack::{ChainLink, chain, what_to_measure};
/// let part = |sign, size, u| ChainLink::measured(sign, Reading::new(size, u)?, 2.0);
/// let play = chain(&[part(1.0, 2.153, 0.010)?, part(-1.0, 0.0, 0.028)?, part(-1.0, 1.60, 0.012)?])?;
/// let judgment = judge(play.reading_mm, Limits::between(0.20, 0.60)?, Rule::stated_chances(0.95, 0.05)?)?;
/// let plan = what_to_measure(&judgment, &play.budget, &[0.007, 0.004, 0.002])?;
/// let gasket = plan.gains[0];
/// assert_eq!((gasket.input, gasket.enough), (1, true));
/// assert!((gasket.share - 0.763).abs() < 0.001 && (gasket.u_of_result - 0.0161).abs() < 5e-5);
/// assert!((gasket.chance_go - 0.765).abs() < 0.001);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn what_to_measure(judgment: &Judgment, budget: &Budget, u_measured: &[f64]) -> Result<MeasurePlan> {
    let given = u32::try_from(u_measured.len()).unwrap_or(u32::MAX);
    if given != budget.count {
        return Err(Error::Count { name: "u_measured", count: given, low: budget.count, high: budget.count });
    }
    let mut plan = MeasurePlan { gains: [NOTHING; MAX_INPUTS], count: budget.count };
    let order = |a: &(f64, u32), b: &(f64, u32)| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1));
    let mut previous = None;
    let mut share_so_far = 0.0;
    for gain in &mut plan.gains {
        let shares = budget.share.into_iter().zip(0..budget.count);
        let next = shares.filter(|entry| previous.is_none_or(|last| order(&last, entry).is_lt())).min_by(order);
        let Some((share, input)) = next else { break };
        previous = Some((share, input));
        share_so_far += share;
        let wanted_u = u_measured.iter().zip(0..).find(|&(_, position)| position == input).map_or(0.0, |(u, _)| *u);
        *gain = MeasureGain { share, share_so_far, ..gain_of(judgment, budget, input, wanted_u)? };
    }
    Ok(plan)
}

/// The gain of one input, without its shares.
fn gain_of(judgment: &Judgment, budget: &Budget, input: u32, wanted_u: f64) -> Result<MeasureGain> {
    if wanted_u != f64::INFINITY {
        within("u_measured", wanted_u, 0.0, f64::MAX)?;
    }
    let settled = settle_by(judgment, budget, input)?;
    let Reading { value, u } = judgment.reading;
    let sensitivity =
        budget.sensitivity.into_iter().zip(0..).find(|&(_, position)| position == input).map_or(0.0, |it| it.0);
    let u_now = settled.u_now;
    let u_measured = wanted_u.min(u_now);
    let u_of_result = sqrt((u * u - sensitivity * sensitivity * (u_now * u_now - u_measured * u_measured)).max(0.0));
    // Where measuring brings nothing the value stays where it is.
    let moves = if wanted_u < u_now { abs(sensitivity) * sqrt(u_now * u_now + u_measured * u_measured) } else { 0.0 };
    let then = judge(Reading { value, u: u_of_result }, judgment.limits, judgment.rule)?;
    let may_show = Reading { value, u: moves };
    let chance_of = |zone: Limits| if zone.lower <= zone.upper { chance_inside(may_show, zone) } else { Ok(0.0) };
    Ok(MeasureGain {
        input,
        u_now,
        u_measured,
        u_of_result,
        chance_go: chance_of(then.acceptance)?,
        chance_no_go: 1.0 - chance_of(then.rejection)?,
        u_needed: settled.u_needed,
        enough: settled.enough,
        ..NOTHING
    })
}

const NOTHING: MeasureGain = MeasureGain {
    input: 0,
    share: 0.0,
    share_so_far: 0.0,
    u_now: 0.0,
    u_measured: 0.0,
    u_of_result: 0.0,
    chance_go: 0.0,
    chance_no_go: 0.0,
    u_needed: 0.0,
    enough: false,
};
