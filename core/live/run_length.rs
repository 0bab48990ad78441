//! From the average run length to a false alarm to the threshold of the sequential test, and the delay of a true one.

use super::plan::between;
use crate::card::{self, Card, symbol};
use crate::error::Result;
use crate::real::single::{exp, ln, sqrt};

pub(super) const RUN_LENGTH: Card = Card {
    id: "live.run_length",
    purpose: "Average number of values until a one-sided cumulative sum alarms",
    equation: "ARL = (exp(−2Δb) + 2Δb − 1)/(2Δ²), Δ = δ − k, b = h + 2ρ, 2ρ = 1.1652 − 0.0271·min(Δ, 0)²; b² for Δ = 0",
    symbols: &[
        symbol("ARL", "result", "1"),
        symbol("δ", "shift of the mean, in standard deviations of one value; 0: how long to a false alarm", "1"),
        symbol("k", "reference", "1"),
        symbol("h", "threshold", "1"),
        symbol("2ρ", "how far a sum overshoots, at the alarm and at zero together; the source has 1.166", "1"),
    ],
    range: "S ← max(0, S + z − k), alarm at S ≥ h, z normal and independent. Against the exact integral equation: false alarms within 0.4 % for k up to 1 and h from 2.5, within 1 % for k up to 1.25, up to 9 % off at h = 1; delays within 2 % for Δ up to 0.75 and h from 3, up to 14 % too short at Δ = 3",
    source: &card::SEQUENTIAL_TESTS,
    locator: "corrected diffusion approximation; the term in Δ² is a fit to the exact solution (derived)",
};

pub(super) const THRESHOLD: Card = Card {
    id: "live.threshold_for",
    purpose: "Threshold of a one-sided cumulative sum with a given average number of values to a false alarm",
    equation: "ARL(h, k, δ = 0) = L, solved for h",
    symbols: &[
        symbol("h", "result", "1"),
        symbol("k", "reference", "1"),
        symbol("L", "run_length: average time to a false alarm over the time from value to value", "1"),
    ],
    range: "as live.run_length; the time to a false alarm is nearly exponential: one in ten comes within a tenth of the average",
    source: &card::SEQUENTIAL_TESTS,
    locator: "live.run_length, solved by Newton's steps",
};

/// Most of a reference value: beyond it the approximation is off by more than 1 %.
const REFERENCE_MOST: f32 = 1.25;
/// Least threshold; below it the sum alarms on single values.
const THRESHOLD_LEAST: f32 = 1.0;
const THRESHOLD_MOST: f32 = 1000.0;
/// Newton's steps to the last digit.
const STEPS: u32 = 5;

/// Average number of values until a one-sided cumulative sum alarms.
///
/// ARL = (exp(−2Δb) + 2Δb − 1)/(2Δ²), Δ = δ − k, b = h + 2ρ, 2ρ = 1.1652 − 0.0271·min(Δ, 0)²; b² for Δ = 0
///
/// * `threshold` — h, 1 to 1000; `reference` — k, 0 to 1.25; `shift` — δ of the mean, 0 to 5: all in standard deviations
/// * returns the ARL: with a shift of 0 the values to a false alarm, else the delay of a true one; infinite beyond 3·10³⁸
/// * errors: [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NotFinite`](crate::Error::NotFinite)
///
/// Source: D. Siegmund, Sequential Analysis (from memory), with 1.166 for 2ρ; the term in Δ² is fitted to the exact integral
/// equation and takes the error from 6 % to 0.1 % at k = 1 and h = 3. Example: k = 0.5, h = 4 or 5; published tables give 336 and 930.
///
/// ```
/// assert!((trainwright::live::run_length(4.0, 0.5, 0.0)? - 335.4).abs() < 0.2);
/// assert!((trainwright::live::run_length(5.0, 0.5, 0.0)? - 931.1).abs() < 0.2);
/// assert!((trainwright::live::run_length(5.0, 0.5, 1.0)? - 10.34).abs() < 0.01);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn run_length(threshold: f32, reference: f32, shift: f32) -> Result<f32> {
    let h = between("threshold", threshold, THRESHOLD_LEAST, THRESHOLD_MOST)?;
    let k = between("reference", reference, 0.0, REFERENCE_MOST)?;
    Ok(average(h, between("shift", shift, 0.0, 5.0)? - k))
}

/// Threshold of a one-sided cumulative sum with a given average number of values to a false alarm.
///
/// ARL(h, k, δ = 0) = L, solved for h
///
/// * `run_length` — L, 100 to 10¹⁵; `reference` — k, 0.01 to 1.25
/// * returns h
/// * errors: [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NotFinite`](crate::Error::NotFinite)
///
/// Source: [`run_length`]. Example: k = 0.5 and one false alarm in 740 values; the table for 370 of the two-sided test gives 4.77.
///
/// ```
/// assert!((trainwright::live::threshold_for(740.0, 0.5)? - 4.77).abs() < 0.01);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn threshold_for(run_length: f32, reference: f32) -> Result<f32> {
    let length = between("run_length", run_length, 100.0, 1e15)?;
    let k = between("reference", reference, 0.01, REFERENCE_MOST)?;
    Ok(threshold(length, k))
}

/// The threshold, for a gear that is reached.
///
/// With x = 2·k·b and A = 2·k²·L it is x = ln(1 + A + x): by Newton from ln(1 + A + √(2·A)), which is above the answer.
pub(super) fn threshold(run_length: f32, reference: f32) -> f32 {
    let wanted = 2.0 * reference * reference * run_length;
    let mut x = ln(1.0 + wanted + sqrt(2.0 * wanted));
    for _ in 0..STEPS {
        let grown = 1.0 + wanted + x;
        x -= (x - ln(grown)) * grown / (wanted + x);
    }
    x / (2.0 * reference) - overshoot(-reference)
}

/// The run length for a mean drift of the sum per value.
fn average(threshold: f32, drift: f32) -> f32 {
    let b = threshold + overshoot(drift);
    let x = 2.0 * drift * b;
    if x.abs() < 0.5 {
        // 2·b²·(e^−x + x − 1)/x², without its cancellation
        let mut sum = 0.0;
        for n in (3..=10).rev() {
            sum = (1.0 - x * sum) / n as f32;
        }
        b * b * (1.0 - x * sum)
    } else {
        (exp(-x) + (x - 1.0)) / (2.0 * drift * drift)
    }
}

/// How far a sum overshoots, at the alarm and at zero together.
fn overshoot(drift: f32) -> f32 {
    let down = if drift < 0.0 { drift } else { 0.0 };
    1.1652 - 0.0271 * down * down
}
