//! Which tooth counts a measured ratio fits, and which gears can tell.

use super::{Commanded, Fraction, Load, Train};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive};
use crate::judge::{Reading, coverage_factor, normal_cdf};
use crate::real::{abs, sqrt};

pub(super) const COUNTED_RATIO: Card = Card {
    id: "train.counted_ratio",
    purpose: "Ratio and its uncertainty from pulses counted over one window",
    equation: "r = (N_in/z_in)/(N_out/z_out), u_r/r = √(1/(6 N_in²) + 1/(6 N_out²))",
    symbols: &[
        symbol("N", "input_pulses, output_pulses", "1"),
        symbol("z", "input_teeth, output_teeth of the counters", "1"),
        symbol("r", "result", "1"),
    ],
    range: "one window for both counters, both steady; the phase at either end of the window is free (triangular, ±1 pulse)",
    source: &card::DEFINITION,
    locator: "difference of two rectangular phases of one pulse each",
};

pub(super) const TIMED_RATIO: Card = Card {
    id: "train.timed_ratio",
    purpose: "Ratio and its uncertainty from the times of pulse edges",
    equation: "n = N/(z T), r = n_in/n_out, u_n/n = tick/(√6 T)",
    symbols: &[
        symbol("N", "input_intervals, output_intervals between edges", "1"),
        symbol("T", "input_s, output_s from the first edge to the last", "s"),
        symbol("tick", "tick_us of the timer", "µs"),
        symbol("z", "input_teeth, output_teeth of the counters", "1"),
    ],
    range: "steady speeds; runout and pitch error of the tooth wheel not counted: span whole turns to keep them out",
    source: &card::DEFINITION,
    locator: "difference of two rectangular phases of one tick each",
};

pub(super) const FIT_RATIO: Card = Card {
    id: "train.fit_ratio",
    purpose: "Whether a measured ratio fits the exact ratio of a candidate train",
    equation: "z = (r − i)/u_r, excluded if |z| > k_p",
    symbols: &[
        symbol("r, u_r", "measured", "1"),
        symbol("i", "candidate", "1"),
        symbol("k_p", "coverage factor of the stated probability", "1"),
    ],
    range: "no slip; a candidate that fits is not proven: others may fit as well",
    source: &card::GUM,
    locator: "normal distribution of the measured ratio, G.1",
};

/// Pulses of two counters over the same window.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PulseCount {
    /// Pulses of the input counter.
    pub input_pulses: u32,
    /// Pulses of the output counter.
    pub output_pulses: u32,
    /// Teeth of the input counter's wheel.
    pub input_teeth: u16,
    /// Teeth of the output counter's wheel.
    pub output_teeth: u16,
}

/// Times of pulse edges of two counters.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimedEdges {
    /// Time from the first to the last edge of the input counter.
    pub input_s: f64,
    /// Time from the first to the last edge of the output counter.
    pub output_s: f64,
    /// Smallest step of the timer, µs.
    pub tick_us: f64,
    /// Intervals between the edges of the input counter: edges less one.
    pub input_intervals: u32,
    /// Intervals between the edges of the output counter: edges less one.
    pub output_intervals: u32,
    /// Teeth of the input counter's wheel.
    pub input_teeth: u16,
    /// Teeth of the output counter's wheel.
    pub output_teeth: u16,
}

/// How a measured ratio lies to the ratio of a candidate.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatioFit {
    /// Measured ratio.
    pub measured: Reading,
    /// Ratio of the candidate.
    pub candidate: Fraction,
    /// Measured less candidate, in standard uncertainties.
    pub z: f64,
    /// Chance that a reading of this candidate lies as far off as this, either way.
    pub chance: f64,
    /// Whether the stated probability rules the candidate out.
    pub excluded: bool,
}

/// Ratio and its standard uncertainty from pulses counted over one window.
///
/// r = (N_in/z_in)/(N_out/z_out), u_r/r = √(1/(6 N_in²) + 1/(6 N_out²))
///
/// * `count` — pulses and tooth counts, each 1 or more; count reverse as positive, as the counters do
/// * returns r with its u
/// * errors: [`Error::NotPositive`]
///
/// Source: each end of the window cuts one pulse at a free phase; the difference of two such phases is triangular within ±1
/// pulse, 1/√6 (derived). Example (demonstration job J7): 13360 and 5710 pulses of 40 and 30 teeth.
///
/// ```
/// use trainwright::train::{PulseCount, counted_ratio};
/// let fourth =
///     counted_ratio(PulseCount { input_pulses: 13_360, output_pulses: 5710, input_teeth: 40, output_teeth: 30 })?;
/// assert!((fourth.value - 1.754816).abs() < 5e-7);
/// assert!((fourth.u - 0.000136).abs() < 5e-7);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn counted_ratio(count: PulseCount) -> Result<Reading> {
    let input = Counter::new(count.input_pulses, count.input_teeth, ["input_pulses", "input_teeth"])?;
    let output = Counter::new(count.output_pulses, count.output_teeth, ["output_pulses", "output_teeth"])?;
    let share = |pulses: f64| 1.0 / (6.0 * pulses * pulses);
    Reading::relative(input.turns() / output.turns(), sqrt(share(input.pulses) + share(output.pulses)))
}

/// Ratio and its standard uncertainty from the times of pulse edges.
///
/// n = N/(z T), r = n_in/n_out, u_n/n = tick/(√6 T)
///
/// * `edges` — intervals, times, timer step and tooth counts, each above 0
/// * returns r with its u
/// * errors: [`Error::NotPositive`], [`Error::NotFinite`]
///
/// Source: either edge is stamped to one tick at a free phase, so their difference is triangular within ± 1 tick (derived).
///
/// ```
/// use trainwright::train::{TimedEdges, timed_ratio};
/// let fourth = timed_ratio(TimedEdges {
///     input_s: 0.0494, output_s: 0.0490, tick_us: 0.5,
///     input_intervals: 66, output_intervals: 28, input_teeth: 40, output_teeth: 30,
/// })?;
/// assert!(fourth.u / fourth.value < 1e-5); // counting pulses for the same 50 ms would leave 1.6 %
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn timed_ratio(edges: TimedEdges) -> Result<Reading> {
    let input = Counter::new(edges.input_intervals, edges.input_teeth, ["input_intervals", "input_teeth"])?;
    let output = Counter::new(edges.output_intervals, edges.output_teeth, ["output_intervals", "output_teeth"])?;
    let (input_s, output_s) = (positive("input_s", edges.input_s)?, positive("output_s", edges.output_s)?);
    let tick_s = positive("tick_us", edges.tick_us)? / 1e6;
    let share = |time_s: f64| tick_s * tick_s / (6.0 * time_s * time_s);
    let ratio = (input.turns() / input_s) / (output.turns() / output_s);
    Reading::relative(ratio, sqrt(share(input_s) + share(output_s)))
}

struct Counter {
    pulses: f64,
    teeth: f64,
}

impl Counter {
    fn new(pulses: u32, teeth: u16, [pulses_name, teeth_name]: [&'static str; 2]) -> Result<Self> {
        Ok(Self { pulses: positive(pulses_name, pulses.into())?, teeth: positive(teeth_name, teeth.into())? })
    }

    fn turns(&self) -> f64 {
        self.pulses / self.teeth
    }
}

/// Whether a measured ratio fits the exact ratio of a candidate train.
///
/// z = (r − i)/u_r; excluded if |z| > k_p
///
/// * `measured` — r and u_r, u above 0; `candidate` — i, a gear's [`ratio`](super::State::ratio); `coverage` — p, 0 to 1
/// * returns z, the chance of a reading as far off, and whether the candidate is excluded
/// * errors: [`Error::NotPositive`] for u = 0, [`Error::OutOfRange`], [`Error::Missing`] for an open ratio
///
/// Source: JCGM 100:2008, G.1 (from memory). Example (demonstration job J7): the ratio of fourth gear counted over ten
/// seconds fits 103/57 teeth and excludes 90/50.
///
/// ```
/// use trainwright::judge::Reading;
/// use trainwright::train::{Fraction, fit_ratio};
/// let measured = Reading::new(1.7548161, 0.00013644)?;
/// let fit = fit_ratio(measured, Fraction::new(65, 37)?, 0.99)?;
/// assert!(fit.excluded && (fit.z + 14.2).abs() < 0.05);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn fit_ratio(measured: Reading, candidate: Fraction, coverage: f64) -> Result<RatioFit> {
    let measured = Reading::new(measured.value, positive("measured.u", measured.u)?)?;
    let ratio = candidate.value().ok_or(Error::Missing {
        name: "candidate",
        why: "the state has no ratio; solve an engagement that is a gear",
    })?;
    let z = (measured.value - ratio) / measured.u;
    let k = coverage_factor(coverage, f64::INFINITY)?;
    Ok(RatioFit { measured, candidate, z, chance: 2.0 * normal_cdf(-abs(z))?, excluded: abs(z) > k })
}

impl Train {
    /// The gears of a list in which this train and another give different ratios, as a mask of places in the list.
    ///
    /// The comparison is exact: in the other gears the two give the same fraction, and no measurement of the ratio can tell
    /// them apart.
    ///
    /// * `other` — a train with the same elements; `gears` — up to 32
    /// * errors: [`Error::Count`]; those of [`Train::resolve`]
    ///
    /// Source: equality of fractions (derived). Example in the tests: demonstration job J7.
    pub fn gears_that_tell_trains(&self, other: &Self, gears: &[Commanded]) -> Result<u32> {
        let mut mask = 0;
        for (bit, gear) in super::diagnosis::bits(gears.len())?.zip(gears) {
            let (one, other) = (self.resolve(gear.closed, Load::Drive)?, other.resolve(gear.closed, Load::Drive)?);
            if one.ratio != other.ratio {
                mask |= bit;
            }
        }
        Ok(mask)
    }
}
