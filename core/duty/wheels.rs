//! A wrong tire, axle or tooth count, from a speed against GPS.
//!
//! A unit that is programmed for other wheels shows another speed than the road does, by one factor in every gear. GPS gives
//! the factor; which change explains it is weighed among candidates. A wrong tooth count of a speed sensor looks the same on
//! the road, but it also puts every gear ratio off by the same factor, which a tire or an axle does not.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::judge::Reading;
use crate::real::{abs, exp, hypot, ln, sqrt};
use crate::road::Driveline;

pub(super) const RATIO_OF: Card = Card {
    id: "duty.ratio_of",
    purpose: "Ratio of two speeds measured side by side, true over shown, with its uncertainty",
    equation: "k = Σ x/Σ y, u² = s_b²/B + (k·q/(√12·ȳ))² + (k·u_x)²",
    symbols: &[
        symbol("k", "ratio", "1"),
        symbol("u", "uncertainty of the ratio", "1"),
        symbol("x, y", "true_values, shown_values", "of the speeds"),
        symbol("s_b, B", "deviation of the ratios of blocks of rows, blocks", "1, 1"),
        symbol("q", "quantum, step of the shown speed", "of the speeds"),
        symbol("ȳ", "mean_shown", "of the speeds"),
        symbol("u_x", "u_rel, of the true speed", "1"),
    ],
    range: "rows above a least speed, where a step and a late sample matter little. Rows of one block lean on one another, blocks hardly; the \
        step is taken as common to all rows, which is careful. Both speeds must be of the same moment",
    source: &card::GUM,
    locator: "4.2, 4.3.7, F.2.2.1 and equation 10",
};

pub(super) const WEIGH_CAUSES: Card = Card {
    id: "duty.weigh_causes",
    purpose: "Which change explains a ratio of speeds: tire, axle, tooth count of a sensor, or none of those listed",
    equation: "p_i ∝ w_i·exp(−(z_r² + z_g²)/2)/(u_r·u_g), z_r = (k − k_i)/u_r, z_g = (g − g_i)/u_g",
    symbols: &[
        symbol("p_i", "chance", "1"),
        symbol("w_i", "weight, before the measurement", "1"),
        symbol("k, g", "measured: road, and gear where it is known", "1"),
        symbol("k_i, g_i", "road, gear, expected of the cause", "1"),
        symbol("u_r, u_g", "standard uncertainty of measurement and cause together", "1"),
        symbol("z_r, z_g", "road_z, gear_z", "1"),
    ],
    range: "the causes listed and no other: the best of them must also fit by itself (most_z), or none fits. Two changes at once look like a \
        third; measure the tire and read the axle tag before anybody programs",
    source: &card::BAYES,
    locator: "posterior over a list of hypotheses, normal errors",
};

pub(super) const OTHER_DRIVELINE: Card = Card {
    id: "duty.other_driveline",
    purpose: "What another tire or axle than programmed does to the speed shown",
    equation: "k = (U_f/(i_f·v_f))/(U_p/(i_p·v_p)), u = k·u(U_f)/U_f, g = 1",
    symbols: &[
        symbol("k, u", "road.value, road.u", "1"),
        symbol("U_f, u(U_f), U_p", "circumference_mm, fitted with its uncertainty, and as programmed", "mm"),
        symbol("i_f, i_p", "axle_ratio, fitted and as programmed", "1"),
        symbol("v_f, v_p", "transfer_ratio, fitted and as programmed", "1"),
        symbol("g", "gear", "1"),
    ],
    range: "what is programmed is a number and has no uncertainty; the tire has one, and wear and pressure belong to it",
    source: &card::DEFINITION,
    locator: "road speed over the speed that the unit computes",
};

pub(super) const OTHER_TEETH: Card = Card {
    id: "duty.other_teeth",
    purpose: "What another tooth count of the output speed sensor's wheel does to road speed and gear ratios",
    equation: "k = z_p/z_f, g = z_p/z_f",
    symbols: &[symbol("k, g", "road.value, gear", "1"), symbol("z_p", "programmed", "1"), symbol("z_f", "fitted", "1")],
    range: "a sensor of the output shaft that counts teeth",
    source: &card::DEFINITION,
    locator: "turns are pulses over teeth",
};

/// How a ratio of two speeds is measured.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatioRule {
    /// Least speed of both that counts, above 0.
    pub least: f64,
    /// Step of the shown speed, 0 or more.
    pub quantum: f64,
    /// Relative standard uncertainty of the true speed that is common to all rows.
    pub u_rel: f64,
    /// Rows of a block: as many as lean on one another, 1 or more.
    pub block_rows: u32,
}

/// A measured ratio of two speeds.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedsRatio {
    /// True over shown.
    pub ratio: Reading,
    /// Part of its uncertainty from the scatter of the blocks.
    pub scatter_u: f64,
    /// Part from the step of the shown speed.
    pub step_u: f64,
    /// Part from the true speed.
    pub true_u: f64,
    /// Mean of the shown speed over the rows used.
    pub mean_shown: f64,
    /// Rows used.
    pub used: u32,
    /// Rows too slow.
    pub slow: u32,
    /// Rows with a missing, negative or infinite value.
    pub missing: u32,
    /// Whole blocks.
    pub blocks: u32,
}

/// Something that explains a ratio of speeds.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatioCause {
    /// True over shown road speed that it makes.
    pub road: Reading,
    /// Measured over true gear ratio that it makes, in every gear: 1 but for a sensor.
    pub gear: f64,
    /// Weight before the measurement, above 0; equal where nothing speaks for one.
    pub weight: f64,
}

/// How a cause fits.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CauseFit {
    /// Chance among the causes listed.
    pub chance: f64,
    /// Deviation of the road ratio in standard uncertainties.
    pub road_z: f64,
    /// Deviation of the gear ratios in standard uncertainties; 0 where they are not known.
    pub gear_z: f64,
}

impl CauseFit {
    /// Nothing weighed.
    pub const NONE: Self = Self { chance: 0.0, road_z: 0.0, gear_z: 0.0 };
}

/// What the weighing came to.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CauseKind {
    /// One cause explains it.
    Explained,
    /// Several fit, and the measurement does not tell them apart.
    CannotTell,
    /// None of those listed fits.
    NoneFits,
}

/// The outcome of the weighing.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CauseFound {
    /// What it came to.
    pub kind: CauseKind,
    /// The best cause.
    pub best: u32,
    /// How it fits.
    pub fit: CauseFit,
}

/// Measured ratios of a truck.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatiosSeen {
    /// True over shown road speed.
    pub road: Reading,
    /// Input over output speed, over the ratio of the gear in effect.
    pub gear: Reading,
    /// Whether the gear ratios are known; else `gear` is not looked at.
    pub gear_known: bool,
}

/// Ratio of two speeds measured side by side, true over shown, with its uncertainty.
///
/// k = Σ x/Σ y, u² = s_b²/B + (k·q/(√12·ȳ))² + (k·u_x)²
///
/// * `true_values`, `shown_values` — x and y of the same moments, of one length; NaN, negative or infinite is missing
/// * `rule` — least speed, step of y, uncertainty of x, rows of a block
/// * returns [`SpeedsRatio`]
/// * errors: [`Error::Count`] for lengths that differ or fewer than two whole blocks; [`Error::NotPositive`],
///   [`Error::OutOfRange`] for the rule
///
/// Source: JCGM 100:2008 (from memory). Example: a shown speed that is 10 % low.
///
/// ```
/// use trainwright::duty::{RatioRule, ratio_of};
/// let rule = RatioRule { least: 30.0, quantum: 1.0, u_rel: 0.0, block_rows: 2 };
/// let found = ratio_of(&[99.0, 88.0, 99.0, 88.0, 5.0], &[90.0, 80.0, 90.0, 80.0, 3.0], rule)?;
/// assert!((found.ratio.value - 1.1).abs() < 1e-12 && found.slow == 1);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn ratio_of(true_values: &[f64], shown_values: &[f64], rule: RatioRule) -> Result<SpeedsRatio> {
    let number = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    if true_values.len() != shown_values.len() {
        let [count, wanted] = [shown_values.len(), true_values.len()].map(number);
        return Err(Error::Count { name: "shown_values", count, low: wanted, high: wanted });
    }
    let least = positive("least", rule.least)?;
    let quantum = within("quantum", rule.quantum, 0.0, 1e6)?;
    let u_rel = within("u_rel", rule.u_rel, 0.0, 1.0)?;
    if rule.block_rows == 0 {
        return Err(Error::Count { name: "block_rows", count: 0, low: 1, high: u32::MAX });
    }
    let (mut used, mut slow, mut missing, mut blocks) = (0_u32, 0_u32, 0_u32, 0_u32);
    let (mut sum_true, mut sum_shown) = (0.0, 0.0);
    let (mut block_true, mut block_shown, mut in_block) = (0.0, 0.0, 0_u32);
    let (mut mean, mut squares) = (0.0, 0.0);
    for (&x, &y) in true_values.iter().zip(shown_values) {
        if !(x.is_finite() && y.is_finite() && x >= 0.0 && y >= 0.0) {
            missing += 1;
        } else if x < least || y < least {
            slow += 1;
        } else {
            used += 1;
            (sum_true, sum_shown) = (sum_true + x, sum_shown + y);
            (block_true, block_shown, in_block) = (block_true + x, block_shown + y, in_block + 1);
            if in_block == rule.block_rows {
                blocks += 1;
                let off = block_true / block_shown - mean;
                mean += off / f64::from(blocks);
                squares += off * (block_true / block_shown - mean);
                (block_true, block_shown, in_block) = (0.0, 0.0, 0);
            }
        }
    }
    if blocks < 2 {
        return Err(Error::Count {
            name: "blocks of rows that are fast enough",
            count: blocks,
            low: 2,
            high: u32::MAX,
        });
    }
    let value = sum_true / sum_shown;
    let mean_shown = sum_shown / f64::from(used);
    let scatter_u = sqrt(squares / f64::from(blocks - 1) / f64::from(blocks));
    let step_u = value * quantum / (sqrt(12.0) * mean_shown);
    let true_u = value * u_rel;
    let u = hypot(hypot(scatter_u, step_u), true_u);
    Ok(SpeedsRatio { ratio: Reading { value, u }, scatter_u, step_u, true_u, mean_shown, used, slow, missing, blocks })
}

/// What another tire or axle than programmed does to the speed shown.
///
/// k = (U_f/(i_f·v_f))/(U_p/(i_p·v_p)), u = k·u(U_f)/U_f, g = 1
///
/// * `programmed`, `fitted` — drive lines; of the tire that is fitted the uncertainty counts; `weight` — above 0
/// * returns [`RatioCause`]
/// * errors: [`Error::NotPositive`], [`Error::NotFinite`]
///
/// Source: road speed over the speed that the unit computes (derived). Example (computed independently for the
/// demonstration): axle 4.27 for 3.54, the same tire: 0.829.
///
/// ```
/// use trainwright::{duty::other_driveline, judge::Reading, road::Driveline};
/// let tire_mm = Reading { value: 2549.0, u: 15.8 };
/// let [programmed, fitted] = [3.54, 4.27].map(|axle| Driveline::new(axle, 1.0, tire_mm).unwrap());
/// assert!((other_driveline(programmed, fitted, 1.0)?.road.value - 0.829_04).abs() < 5e-6);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn other_driveline(programmed: Driveline, fitted: Driveline, weight: f64) -> Result<RatioCause> {
    let per_turn = |line: Driveline| {
        let ratio = positive("axle_ratio", line.axle_ratio)? * positive("transfer_ratio", line.transfer_ratio)?;
        Ok::<_, Error>(positive("circumference_mm", line.circumference_mm.value)? / ratio)
    };
    let value = per_turn(fitted)? / per_turn(programmed)?;
    let u = value * within("u", fitted.circumference_mm.u, 0.0, f64::MAX)? / fitted.circumference_mm.value;
    Ok(RatioCause { road: Reading { value, u }, gear: 1.0, weight: positive("weight", weight)? })
}

/// What another tooth count of the output speed sensor's wheel does to road speed and gear ratios.
///
/// k = z_p/z_f, g = z_p/z_f
///
/// * `programmed`, `fitted` — teeth, 1 to 9999; `weight` — above 0
/// * returns [`RatioCause`]
/// * errors: [`Error::Count`], [`Error::NotPositive`]
///
/// Source: turns are pulses over teeth (derived).
pub fn other_teeth(programmed: u32, fitted: u32, weight: f64) -> Result<RatioCause> {
    for (name, count) in [("programmed", programmed), ("fitted", fitted)] {
        if !(1..=9999).contains(&count) {
            return Err(Error::Count { name, count, low: 1, high: 9999 });
        }
    }
    let value = f64::from(programmed) / f64::from(fitted);
    Ok(RatioCause { road: Reading { value, u: 0.0 }, gear: value, weight: positive("weight", weight)? })
}

/// Which change explains a ratio of speeds: tire, axle, tooth count of a sensor, or none of those listed.
///
/// p_i ∝ w_i·exp(−(z_r² + z_g²)/2)/(u_r·u_g), z_r = (k − k_i)/u_r, z_g = (g − g_i)/u_g
///
/// * `measured` — k and, where it is known, g; together with its cause each needs an uncertainty above 0
/// * `causes` — the list, "as programmed" (1) among them; `enough` — chance from which one cause is named, above 0.5 to 1
/// * `most_z` — deviation in standard uncertainties that still fits, above 0 to 10
/// * `fits` — receives a [`CauseFit`] for each cause
/// * returns [`CauseFound`]
/// * errors: [`Error::Count`] for an empty list or another length of `fits`; [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: Bayes' rule over a list (A. Gelman and others, from memory). Example: 1.109 measured to 0.4 % is a tire of 1.109, and
/// not the axle that would make 1.069.
///
/// ```
/// use trainwright::duty::{CauseFit, CauseKind, RatioCause, RatiosSeen, weigh_causes};
/// use trainwright::judge::Reading;
/// let causes = [1.0, 1.109, 1.069].map(|k| RatioCause { road: Reading { value: k, u: 0.006 * k }, gear: 1.0, weight: 1.0 });
/// let road = Reading { value: 1.108, u: 0.004 };
/// let seen = RatiosSeen { road, gear: Reading { value: 0.0, u: 0.0 }, gear_known: false };
/// let found = weigh_causes(seen, &causes, 0.95, 3.0, &mut [CauseFit::NONE; 3])?;
/// assert_eq!((found.kind, found.best), (CauseKind::Explained, 1));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn weigh_causes(
    measured: RatiosSeen,
    causes: &[RatioCause],
    enough: f64,
    most_z: f64,
    fits: &mut [CauseFit],
) -> Result<CauseFound> {
    let count = u32::try_from(causes.len()).unwrap_or(u32::MAX);
    if causes.is_empty() || fits.len() != causes.len() {
        let given = u32::try_from(fits.len()).unwrap_or(u32::MAX);
        return Err(Error::Count { name: "causes and fits", count: given, low: count.max(1), high: count.max(1) });
    }
    let enough = within("enough", enough, 0.5, 1.0)?;
    let most_z = within("most_z", positive("most_z", most_z)?, 0.0, 10.0)?;
    let mut greatest = f64::NEG_INFINITY;
    for (fit, cause) in fits.iter_mut().zip(causes) {
        let (road_z, road_ln) = off("road", measured.road, cause.road)?;
        let (gear_z, gear_ln) = match measured.gear_known {
            true => off("gear", measured.gear, Reading { value: finite("gear", cause.gear)?, u: 0.0 })?,
            false => (0.0, 0.0),
        };
        // The logarithm of the weight stands in `chance` until all are known.
        let ln_weight = ln(positive("weight", cause.weight)?) + road_ln + gear_ln;
        *fit = CauseFit { chance: ln_weight, road_z, gear_z };
        greatest = greatest.max(ln_weight);
    }
    let mut sum = 0.0;
    for fit in fits.iter_mut() {
        fit.chance = exp(fit.chance - greatest);
        sum += fit.chance;
    }
    let (mut best, mut best_fit) = (0, CauseFit::NONE);
    for (number, fit) in (0_u32..).zip(fits.iter_mut()) {
        fit.chance /= sum;
        if fit.chance > best_fit.chance {
            (best, best_fit) = (number, *fit);
        }
    }
    let kind = if abs(best_fit.road_z) > most_z || abs(best_fit.gear_z) > most_z {
        CauseKind::NoneFits
    } else if best_fit.chance >= enough {
        CauseKind::Explained
    } else {
        CauseKind::CannotTell
    };
    Ok(CauseFound { kind, best, fit: best_fit })
}

/// Deviation in standard uncertainties, and the logarithm of the density.
fn off(name: &'static str, measured: Reading, expected: Reading) -> Result<(f64, f64)> {
    let [k, expected_k] = [measured.value, expected.value].map(|value| positive(name, value));
    let [u, expected_u] = [measured.u, expected.u].map(|u| within("u", u, 0.0, f64::MAX));
    let u = positive("u", hypot(u?, expected_u?))?;
    let z = (k? - expected_k?) / u;
    Ok((z, -0.5 * z * z - ln(u)))
}
