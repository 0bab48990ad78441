//! Slip of a lock-up clutch.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};

pub(super) const LOCKUP_SLIP: Card = Card {
    id: "converter.lockup_slip",
    purpose: "Slip of a lock-up clutch against the slip that its control aims at and the slip that is a fault",
    equation: "s = n_E − n_T, u² = u_E² + u_T²; judged: |s| ≤ s_target, |s| ≤ s_alarm",
    symbols: &[
        symbol("s, u", "slip_rpm", "1/min"),
        symbol("n_E, u_E", "engine_rpm", "1/min"),
        symbol("n_T, u_T", "turbine_rpm", "1/min"),
        symbol("s_target, s_alarm", "target_rpm, alarm_rpm", "1/min"),
    ],
    range: "both speeds of one moment, lock-up commanded fully; a speed that a bus shows in steps of q has u = q/√12 at least",
    source: &card::DECISION_RULE,
    locator: "clause 5",
};

/// Slip that the control of a lock-up clutch aims at, and slip that is a fault.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlipLimits {
    /// Greatest slip that the control aims at, 1/min, 0 or more.
    pub target_rpm: f64,
    /// Slip that is a fault, 1/min, not below the target.
    pub alarm_rpm: f64,
    /// Decision rule.
    pub rule: Rule,
}

/// Slip of a lock-up clutch, judged.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LockupSlip {
    /// Engine speed less turbine speed, 1/min; negative while the wheels drive the engine.
    pub slip_rpm: Reading,
    /// The slip against what the control aims at.
    pub on_target: Judgment,
    /// The slip against what is a fault: NO-GO is a proven one.
    pub within_alarm: Judgment,
    /// Where the uncertainty comes from: engine speed, turbine speed, in this order.
    pub budget: Budget,
}

/// Judges the slip of a lock-up clutch.
///
/// s = n_E − n_T, u² = u_E² + u_T²; judged: |s| ≤ s_target, |s| ≤ s_alarm
///
/// * `engine_rpm` — n_E; `turbine_rpm` — n_T, each 0 to 100 000 with its u ([`Reading::quantized`] for the step of a bus);
///   `limits` — target, alarm and rule
/// * returns [`LockupSlip`]. What torque the clutch still has in hand it does not say: that needs its pack, pressure and friction
/// * errors: [`Error::OutOfRange`], [`Error::Reversed`]
///
/// Source: ISO 14253-1, clause 5 (from memory). Example: 2160 and 2140 1/min on a bus with steps of 0.125 1/min slip by 20, with
/// u = 0.05.
///
/// ```
/// use trainwright::converter::{SlipLimits, lockup_slip};
/// use trainwright::judge::{Reading, Rule, Verdict};
/// let limits = SlipLimits { target_rpm: 20.0, alarm_rpm: 70.0, rule: Rule::conformance(0.95)? };
/// let slip = lockup_slip(Reading::quantized(2160.0, 0.125)?, Reading::quantized(2140.0, 0.125)?, limits)?;
/// assert!((slip.slip_rpm.u - 0.051).abs() < 5e-4);
/// assert_eq!(slip.within_alarm.verdict, Verdict::Go);
/// assert_eq!(slip.on_target.verdict, Verdict::NotProven); // exactly on the limit
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn lockup_slip(engine_rpm: Reading, turbine_rpm: Reading, limits: SlipLimits) -> Result<LockupSlip> {
    let speed = |name, reading: Reading| Reading::new(within(name, reading.value, 0.0, 1e5)?, reading.u);
    let (engine, turbine) = (speed("engine_rpm", engine_rpm)?, speed("turbine_rpm", turbine_rpm)?);
    let target = within("target_rpm", limits.target_rpm, 0.0, 1e5)?;
    let alarm = within("alarm_rpm", limits.alarm_rpm, 0.0, 1e5)?;
    if alarm < target {
        return Err(Error::Reversed { name: "limits", lower: target, upper: alarm });
    }
    let budget = combine(&[Input::new(1.0, engine.u)?, Input::new(-1.0, turbine.u)?])?;
    let slip_rpm = Reading::new(engine.value - turbine.value, budget.u)?;
    let against = |most: f64| judge(slip_rpm, Limits::between(-most, most)?, limits.rule);
    Ok(LockupSlip { slip_rpm, on_target: against(target)?, within_alarm: against(alarm)?, budget })
}
