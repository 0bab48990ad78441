//! The value of one input at which a verdict turns.

use super::{Judgment, Limits, Verdict};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, ordered, within};
use crate::real::abs;

pub(super) const TURNING_VALUE: Card = Card {
    id: "judge.turning_value",
    purpose: "Value of one input at which the verdict turns to GO, or ceases to be GO, with the other inputs as they are",
    equation: "verdict(x) = GO and verdict(x ± last bit) ≠ GO, the nearest such x to x_now",
    symbols: &[symbol("x", "value of the input", "of the input"), symbol("x_now", "now", "of the input")],
    range: "a verdict that turns once on the way; of several turns the first one that the search meets, in steps that double",
    source: &card::DEFINITION,
    locator: "bisection",
};

/// Where a verdict turns along one input.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turning {
    /// Value of the input on the GO side of the turn.
    pub value: f64,
    /// That value less the present one.
    pub change: f64,
    /// Whether the verdict is GO at the present value: it then ceases to be GO beyond `value`, else it becomes GO there.
    pub go_now: bool,
    /// The judgment at that value.
    pub judgment: Judgment,
}

/// Steps of the search from the present value toward a bound: 2⁻²⁰ of the way, then twice as far each time.
const DOUBLINGS: i32 = 20;

/// Value of one input at which the verdict turns to GO, or, where it is GO already, at which it ceases to be.
///
/// verdict(x) = GO and verdict(x ± last bit) ≠ GO, the nearest such x to x_now
///
/// * `now` — x_now; `bounds` — the input is looked for between them, both finite; `judged` — the judgment at a value of
///   the input, the others as they are. Where it has no answer the verdict counts as not GO
/// * returns the nearest value on the GO side of a turn, by which the input must change, and the judgment there
/// * errors: those of `judged` at `now`; [`Error::NotFinite`], [`Error::Reversed`], [`Error::OutOfRange`] for `now`
///   outside the bounds; [`Error::NoAnswer`] where no value between the bounds turns the verdict
///
/// Source: bisection to the last bit. Example: 1 ± 0.1 against at least 1 becomes GO at 95 % from 1 + 1.645 · 0.1.
///
/// ```
/// use trainwright::judge::{Limits, Reading, Rule, judge, turning_value};
/// let judged = |value| judge(Reading::new(value, 0.1)?, Limits::at_least(1.0)?, Rule::conformance(0.95)?);
/// let turning = turning_value(1.0, Limits::between(0.0, 2.0)?, judged)?;
/// assert!((turning.value - 1.164_485).abs() < 1e-6 && !turning.go_now);
/// assert!(turning_value(1.0, Limits::between(0.9, 1.1)?, judged).is_err());
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn turning_value(now: f64, bounds: Limits, mut judged: impl FnMut(f64) -> Result<Judgment>) -> Result<Turning> {
    let (lower, upper) = ordered("bounds", bounds.lower, bounds.upper)?;
    within("now", finite("now", now)?, lower, upper)?;
    let start = judged(now)?;
    let go_now = start.verdict == Verdict::Go;
    let mut nearest: Option<Turning> = None;
    for bound in [lower, upper] {
        let mut go_at = |value: f64| judged(value).ok().filter(|at| at.verdict == Verdict::Go);
        // (value, judgment) on the GO side, and the value on the other side.
        let (mut go, mut other) = (go_now.then_some((now, start)), now);
        let mut step = bound - now;
        (0..DOUBLINGS).for_each(|_| step *= 0.5);
        let mut turned = false;
        for _ in 0..=DOUBLINGS {
            let value = if abs(step) < abs(bound - now) { now + step } else { bound };
            let at = go_at(value);
            turned = at.is_some() != go_now;
            match at {
                Some(judgment) => go = Some((value, judgment)),
                None => other = value,
            }
            if turned {
                break;
            }
            step *= 2.0;
        }
        let (true, Some((mut value, mut judgment))) = (turned, go) else { continue };
        loop {
            let middle = 0.5 * (value + other);
            if !(value.min(other) < middle && middle < value.max(other)) {
                break;
            }
            match go_at(middle) {
                Some(at) => (value, judgment) = (middle, at),
                None => other = middle,
            }
        }
        let found = Turning { value, change: value - now, go_now, judgment };
        if nearest.is_none_or(|nearer| abs(found.change) < abs(nearer.change)) {
            nearest = Some(found);
        }
    }
    nearest.ok_or(Error::NoAnswer {
        name: "turning_value",
        why: "no value of this input alone between its bounds turns the verdict; widen the bounds or change another input",
    })
}
