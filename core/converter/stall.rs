//! Stall speed with its uncertainty, and what a measured one says.

use super::characteristic::Characteristic;
use super::engine::EngineCurve;
use super::operating::{EngineToday, OperatingPoint, operating_point};
use crate::card::{self, Card, symbol};
use crate::error::{Result, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, Verdict, combine, judge, propagate};

pub(super) const STALL_SPEED: Card = Card {
    id: "converter.stall_speed",
    purpose: "Stall speed of an engine against a converter, with its uncertainty",
    equation: "f·T(n) − T_acc = (n/(k·K_0))², u² = Σ (c_i·u_i)²",
    symbols: &[
        symbol("n", "speed_rpm", "1/min"),
        symbol("T", "converter.torque_at_nm", "N·m"),
        symbol("f", "torque_factor, u its uncertainty from engine and air", "1"),
        symbol("T_acc", "accessory_nm", "N·m"),
        symbol("k", "k_factor: K of this converter over that of the characteristic", "1"),
        symbol("K_0", "k_rpm_per_sqrt_nm at stall", "1/min per √(N·m)"),
        symbol("u, c_i, u_i", "speed_rpm.u, sensitivity, uncertainty of an input", "1/min"),
    ],
    range: "full throttle, turbine standing, no torque management; the formula must have an answer one u to either side of each input",
    source: &card::GUM,
    locator: "5.1.3, note 2, of converter.operating_points at a turbine speed of 0",
};

pub(super) const JUDGE_STALL: Card = Card {
    id: "converter.judge_stall",
    purpose: "Whether a measured stall speed shows a fault",
    equation: "d = n_m − n; no fault proven: a_L ≤ d ≤ a_H, u² = u_m² + u_n²",
    symbols: &[
        symbol("d", "difference_rpm", "1/min"),
        symbol("n_m, u_m", "measured.speed_rpm", "1/min"),
        symbol("n, u_n", "stall.speed_rpm", "1/min"),
        symbol("a_L, a_H", "allow_rpm", "1/min"),
        symbol("u", "difference_rpm.u", "1/min"),
    ],
    range: "low: engine, air, accessories, or a stator that no longer holds; high: something slips behind the turbine, or the converter is short of fluid. Suspects, not proof",
    source: &card::DECISION_RULE,
    locator: "clause 5",
};

/// What a stall speed depends on besides the two tables.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StallInputs {
    /// Torque over that of the curve: air, fuel, wear of the engine.
    pub torque_factor: Reading,
    /// Torque that accessories take besides those that the curve counts, N·m.
    pub accessory_nm: Reading,
    /// Capacity factor of this converter over that of the characteristic: spread of manufacture, fluid.
    pub k_factor: Reading,
}

impl StallInputs {
    /// As the tables say, and exact.
    pub const AS_MEASURED: Self = Self {
        torque_factor: Reading { value: 1.0, u: 0.0 },
        accessory_nm: Reading { value: 0.0, u: 0.0 },
        k_factor: Reading { value: 1.0, u: 0.0 },
    };
}

/// A computed stall.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StallSpeed {
    /// The stall, from the best estimates.
    pub point: OperatingPoint,
    /// Engine speed, 1/min.
    pub speed_rpm: Reading,
    /// Torque at the turbine, N·m.
    pub turbine_nm: Reading,
    /// Where the uncertainty of the speed comes from: engine torque, accessories, capacity factor, in this order.
    pub budget: Budget,
}

fn stalled(
    engine: &EngineCurve,
    converter: &Characteristic,
    [torque_factor, accessory_nm, k_factor]: [f64; 3],
) -> Result<OperatingPoint> {
    let mut scaled = *converter;
    within("k_factor", positive("k_factor", k_factor)?, 0.2, 5.0)?;
    for k in &mut scaled.k_rpm_per_sqrt_nm {
        *k *= k_factor;
    }
    operating_point(engine, EngineToday { torque_factor, accessory_nm }, &scaled, 0.0)
}

/// Stall speed, with its uncertainty.
///
/// f·T(n) − T_acc = (n/(k·K_0))², u² = Σ (c_i·u_i)²
///
/// * `engine` — T; `converter` — K_0; `inputs` — f, T_acc and k, each with its u
/// * returns [`StallSpeed`]
/// * errors: as [`operating_point`], also for an input one u to either side
///
/// Source: definition of K (SAE J643) and JCGM 100:2008, 5.1.3, note 2 (both from memory). Example (demonstration job J8,
/// computed independently): 1892.29 1/min.
///
/// ```
/// use trainwright::converter::{Characteristic, EngineCurve, StallInputs, stall_speed};
/// let engine = EngineCurve::from_table(&[1000.0, 1500.0, 2000.0], &[330.0, 365.0, 395.0], 5700.0)?;
/// let converter = Characteristic::from_table(&[0.0, 0.9], &[1.88, 1.0], &[96.0, 140.0])?;
/// let stall = stall_speed(&engine, &converter, StallInputs::AS_MEASURED)?;
/// assert!((stall.speed_rpm.value - 1892.29).abs() < 0.005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn stall_speed(engine: &EngineCurve, converter: &Characteristic, inputs: StallInputs) -> Result<StallSpeed> {
    let StallInputs { torque_factor, accessory_nm, k_factor } = inputs;
    let point = stalled(engine, converter, [torque_factor.value, accessory_nm.value, k_factor.value])?;
    let inputs = [torque_factor, accessory_nm, k_factor];
    let speed = propagate(inputs, |values| Ok(stalled(engine, converter, values)?.engine_rpm))?;
    let turbine = propagate(inputs, |values| Ok(stalled(engine, converter, values)?.turbine_nm))?;
    Ok(StallSpeed { point, speed_rpm: speed.reading, turbine_nm: turbine.reading, budget: speed.budget })
}

/// A stall speed that was measured, and how it is judged.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredStall {
    /// Engine speed reached, 1/min.
    pub speed_rpm: Reading,
    /// Differences from the computed speed that prove no fault, 1/min: the lower one negative.
    pub allow_rpm: Limits,
    /// Share of the computed speed that is missing from which the stator comes first in suspicion, above 0 to 1.
    pub stator_share: f64,
    /// Difference upward at which the test stops at once, 1/min, above 0.
    pub stop_rpm: f64,
    /// Decision rule.
    pub rule: Rule,
}

/// On which side of the computed speed a measured one lies.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StallSide {
    /// So low that the stator comes first in suspicion: it freewheels where it should hold.
    FarLow = -2,
    /// Low.
    Low = -1,
    /// Inside what is allowed, and proven to be.
    Inside = 0,
    /// High.
    High = 1,
    /// So high that the test stops at once: something slips.
    FarHigh = 2,
}

/// What a measured stall speed says.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StallVerdict {
    /// The computed stall.
    pub stall: StallSpeed,
    /// Measured less computed speed, 1/min.
    pub difference_rpm: Reading,
    /// The difference against what is allowed: GO is "no fault proven", not "no fault".
    pub judgment: Judgment,
    /// Where the uncertainty of the difference comes from: reading, engine torque, accessories, capacity factor, in this order.
    pub budget: Budget,
    /// The side on which it lies; `Inside` only where the verdict is GO.
    pub side: StallSide,
    /// The engine curve covers the measured speed. If not, the two shares below are 0.
    pub explained: bool,
    /// Engine torque over the expected one that alone would explain the speed.
    pub torque_share: f64,
    /// Capacity factor over the expected one that alone would explain the speed.
    pub k_share: f64,
}

/// Judges a measured stall speed.
///
/// d = n_m − n; no fault proven: a_L ≤ d ≤ a_H, u² = u_m² + u_n²
///
/// * `engine`, `converter`, `inputs` — as [`stall_speed`]; `measured` — n_m, a_L and a_H, what counts as far off, the rule
/// * returns [`StallVerdict`]. What is off the band is suspicion, not proof
/// * errors: as [`stall_speed`] and [`judge`]; [`crate::Error::OutOfRange`] for an allowance that does not hold 0
///
/// Source: ISO 14253-1, clause 5 (from memory). Example (demonstration job J8, computed independently): 1815 measured against
/// 1892.29 is −77.29, inside ±140: no fault proven.
///
/// ```
/// use trainwright::converter::{Characteristic, EngineCurve, MeasuredStall, StallInputs, StallSide, judge_stall};
/// use trainwright::judge::{Limits, Reading, Rule, Verdict};
/// let engine = EngineCurve::from_table(&[1000.0, 1500.0, 2000.0], &[330.0, 365.0, 395.0], 5700.0)?;
/// let converter = Characteristic::from_table(&[0.0, 0.9], &[1.88, 1.0], &[96.0, 140.0])?;
/// let measured = MeasuredStall {
///     speed_rpm: Reading::exact(1815.0)?,
///     allow_rpm: Limits::between(-140.0, 140.0)?,
///     stator_share: 0.33,
///     stop_rpm: 200.0,
///     rule: Rule::conformance(0.95)?,
/// };
/// let verdict = judge_stall(&engine, &converter, StallInputs::AS_MEASURED, measured)?;
/// assert!((verdict.difference_rpm.value + 77.29).abs() < 0.005);
/// assert_eq!((verdict.judgment.verdict, verdict.side), (Verdict::Go, StallSide::Inside));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn judge_stall(
    engine: &EngineCurve,
    converter: &Characteristic,
    inputs: StallInputs,
    measured: MeasuredStall,
) -> Result<StallVerdict> {
    let stall = stall_speed(engine, converter, inputs)?;
    let speed = Reading::new(positive("speed_rpm", measured.speed_rpm.value)?, measured.speed_rpm.u)?;
    within("allow_rpm.lower", measured.allow_rpm.lower, -1e5, 0.0)?;
    within("allow_rpm.upper", measured.allow_rpm.upper, 0.0, 1e5)?;
    let stator_share = positive("stator_share", within("stator_share", measured.stator_share, 0.0, 1.0)?)?;
    let stop_rpm = positive("stop_rpm", measured.stop_rpm)?;
    let mut terms = [Input::new(1.0, speed.u)?; 4];
    let computed = stall.budget.sensitivity.iter().zip([inputs.torque_factor, inputs.accessory_nm, inputs.k_factor]);
    for (term, (sensitivity, input)) in terms.iter_mut().skip(1).zip(computed) {
        *term = Input::new(-sensitivity, input.u)?;
    }
    let budget = combine(&terms)?;
    let computed = stall.speed_rpm.value;
    let difference = speed.value - computed;
    let difference_rpm = Reading::new(difference, budget.u)?;
    let judgment = judge(difference_rpm, measured.allow_rpm, measured.rule)?;
    let side = if judgment.verdict == Verdict::Go {
        StallSide::Inside
    } else if difference >= stop_rpm {
        StallSide::FarHigh
    } else if difference >= 0.0 {
        StallSide::High
    } else if -difference >= stator_share * computed {
        StallSide::FarLow
    } else {
        StallSide::Low
    };
    let today = EngineToday { torque_factor: inputs.torque_factor.value, accessory_nm: inputs.accessory_nm.value };
    let shares = shares_to_explain(engine, today, stall.point, speed.value);
    let [torque_share, k_share] = shares.unwrap_or([0.0; 2]);
    Ok(StallVerdict {
        stall,
        difference_rpm,
        judgment,
        budget,
        side,
        explained: shares.is_some(),
        torque_share,
        k_share,
    })
}

/// Engine torque and capacity factor over the expected ones at a stall speed; none where the curve does not cover it.
fn shares_to_explain(
    engine: &EngineCurve,
    today: EngineToday,
    stall: OperatingPoint,
    speed_rpm: f64,
) -> Option<[f64; 2]> {
    let gives_nm = today.net_nm(engine.torque_at_nm(speed_rpm).ok()?);
    let root = speed_rpm / stall.k_rpm_per_sqrt_nm;
    let torque_share = (gives_nm > 0.0).then(|| root * root / gives_nm)?;
    Some([torque_share, crate::real::sqrt(torque_share)])
}
