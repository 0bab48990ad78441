//! Speed sensors: what a reading is worth, from the way the sensor works, and the window that a ratio needs.

use super::plan::{above_zero, between};
use crate::card::{self, Card, symbol};
use crate::duty::{BusMeaning, marked_meaning};
use crate::error::{Error, Result};
use crate::real::single::{exp, ln_1p, sqrt};
use core::f32::consts::{FRAC_1_PI, PI};

pub(super) const STEP_BIAS: Card = Card {
    id: "live.step_bias_rpm",
    purpose: "Greatest error that rounding to a step leaves in the mean of any number of values",
    equation: "b = min(q/2, −(q/π)·ln(1 − g)), g = exp(−2π²σ²/q²)",
    symbols: &[
        symbol("b", "result", "1/min"),
        symbol("q", "step_rpm", "1/min"),
        symbol("σ", "noise_rpm: standard deviation of one value before it is rounded", "1/min"),
        symbol("g", "damping of the error by the noise; the first term of its Fourier series is (q/π)·g", "1"),
    ],
    range: "normal noise, a sender that rounds to the nearest step; one that cuts off is low by half a step more, whatever the noise",
    source: &card::QUANTIZATION,
    locator: "residual mean error of a dithered quantizer; the sum of all terms is bounded by the logarithm (derived)",
};

pub(super) const U: Card = Card {
    id: "live.u_rpm",
    purpose: "Standard uncertainty of the mean speed over a window, from the way the sensor works",
    equation: "u² = B + (σ² + q²/12 − B)/m + (60/(√6·z·T))² + (n·tick/(√6·T))², B = (q²/2π²)·Σ exp(−4π²k²σ²/q²)/k²",
    symbols: &[
        symbol("u", "result", "1/min"),
        symbol("q", "step_rpm, of values on a bus; else 0", "1/min"),
        symbol("σ", "noise_rpm of one value", "1/min"),
        symbol("B", "square of what no number of values takes away", "(1/min)²"),
        symbol("k", "1, 2, 3 ...", "1"),
        symbol("m", "values in the window, independent", "1"),
        symbol("T", "window_s", "s"),
        symbol("z", "teeth, of counted pulses; else the term is 0", "1"),
        symbol("n", "rpm", "1/min"),
        symbol("tick", "tick_s, of time-stamped edges; else 0", "s"),
    ],
    range: "steady speed, its place between two steps unknown; runout and pitch error of the tooth wheel belong into σ",
    source: &card::QUANTIZATION,
    locator: "variance of rounded noise; a count is triangular within ±1 pulse, as in train.counted_ratio, and telescopes",
};

pub(super) const RATIO_WINDOW: Card = Card {
    id: "live.ratio_window_s",
    purpose: "Shortest window whose ratio has the wanted relative standard uncertainty",
    equation: "T = (v + √(v² + 4·(w² − b)·c))/(2·(w² − b)), where (u_r/r)² = b + v/T + c/T²",
    symbols: &[
        symbol("T", "result", "s"),
        symbol("u_r/r", "relative standard uncertainty of the ratio, both speeds taken over the same window", "1"),
        symbol("w", "u_rel wanted", "1"),
        symbol(
            "b, v, c",
            "sums over both speeds, each over its speed squared: what stays, values (per time), ends of the window",
            "1, s, s²",
        ),
    ],
    range: "output speed is input speed over the ratio, so the window follows the gear",
    source: &card::DEFINITION,
    locator: "live.u_rpm of both speeds, solved for the window",
};

/// How a speed reaches the monitor.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpeedSource {
    /// A value on a bus, rounded to a step.
    Bus,
    /// Pulses of a tooth wheel, counted from reading to reading.
    Counted,
    /// Edges of a tooth wheel, stamped by a timer.
    Edges,
}

/// One speed sensor.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedSensor {
    /// How the speed reaches the monitor.
    pub source: SpeedSource,
    /// Teeth of the wheel; 0 for a bus.
    pub teeth: u32,
    /// Step of the values on a bus; else 0.
    pub step_rpm: f32,
    /// Standard deviation of one value besides its step.
    pub noise_rpm: f32,
    /// Tick of the timer that stamps the edges, s; else 0.
    pub tick_s: f32,
    /// The same value for longer than this, while the other speed moves, is stale: no evidence.
    pub age_limit_s: f32,
    /// A higher speed is impossible.
    pub greatest_rpm: f32,
}

/// What a reading is. Compute only with a value.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadingState {
    /// A value.
    Value,
    /// Nothing came.
    Missing,
    /// The sender does not have the value.
    NotAvailable,
    /// The sender reports an error.
    SensorError,
    /// Reserved, or an indicator: nothing that may be computed with.
    Reserved,
}

/// One reading of a speed sensor.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedReading {
    /// Value on a bus.
    pub rpm: f32,
    /// Pulses since the reading before.
    pub pulses: u32,
    /// For edges the ticks from the edge before the first of those pulses to the last.
    pub ticks: u32,
    /// What it is.
    pub state: ReadingState,
}

/// The uncertainty of a sensor by its causes, so that a sample needs neither root nor exponential.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedSpread {
    /// What no number of values takes away.
    pub lasting_rpm: f32,
    /// Of one value; falls with the root of their number.
    pub value_rpm: f32,
    /// Of the turns counted in a window: both ends cut a pulse. Falls with the window.
    pub turns: f32,
    /// Of the time between the first and the last edge of a window.
    pub time_s: f32,
}

/// Both speeds of a ratio, read at the same times.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedPair {
    /// Input speed.
    pub input: SpeedSpread,
    /// Output speed.
    pub output: SpeedSpread,
    /// Time from value to value.
    pub sample_s: f32,
}

/// Standard deviation of the difference of two even phases, in their span: triangular.
const TRIANGULAR: f32 = 0.408_248_3;

/// Greatest error that rounding to a step leaves in the mean of any number of values.
///
/// b = min(q/2, −(q/π)·ln(1 − g)), g = exp(−2π²σ²/q²)
///
/// * `step_rpm` — q, 0 or more; `noise_rpm` — σ of one value before it is rounded, 0 or more
/// * returns b: q/2 without noise, next to nothing from σ = q/2 on
/// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: B. Widrow and I. Kollár, Quantization Noise (from memory): the mean error has the Fourier series (q/πk)·g^(k²), the
/// sum of which stays below the logarithm (derived). Example: a step of 8 with noise of 2, 0.88 instead of 4.
///
/// ```
/// assert_eq!(trainwright::live::step_bias_rpm(8.0, 0.0)?, 4.0);
/// assert!((trainwright::live::step_bias_rpm(8.0, 2.0)? - 0.8765).abs() < 1e-3);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn step_bias_rpm(step_rpm: f32, noise_rpm: f32) -> Result<f32> {
    let step = between("step_rpm", step_rpm, 0.0, GREATEST_RPM)?;
    let noise = between("noise_rpm", noise_rpm, 0.0, GREATEST_RPM)?;
    if step == 0.0 {
        return Ok(0.0);
    }
    let bound = -FRAC_1_PI * ln_1p(-damping(step, noise));
    Ok(step * if bound < 0.5 { bound } else { 0.5 })
}

/// What the noise leaves of the first term of the mean error of a quantizer: exp(−2π²σ²/q²).
fn damping(step: f32, noise: f32) -> f32 {
    let x = PI * noise / step;
    exp(-2.0 * x * x)
}

/// Square of the mean error of a quantizer, over all places between two steps, in squares of the step.
fn lasting_square(step: f32, noise: f32) -> f32 {
    const TERMS: u32 = 16;
    let damping = damping(step, noise);
    if damping >= 1.0 {
        return 1.0 / 12.0; // the sum of 1/k² is π²/6
    }
    let first = damping * damping;
    let (mut term, mut factor, mut sum) = (1.0, first, 0.0);
    for k in 1..=TERMS {
        let k = k as f32;
        term *= factor; // first^(k²)
        factor *= first * first;
        sum += term / (k * k);
    }
    // What follows is no more than the last power times Σ 1/k².
    (sum + term / (TERMS as f32 + 0.5)) * 0.5 * FRAC_1_PI * FRAC_1_PI
}

/// No shaft of a vehicle turns faster, turbines of turbochargers aside.
const GREATEST_RPM: f32 = 100_000.0;

impl SpeedSensor {
    /// A speed that comes as values on a bus.
    ///
    /// * `step_rpm` — q, 0 or more; `noise_rpm` — σ of one value besides its step, 0 or more; not both 0
    /// * `age_limit_s` — above 0; `greatest_rpm` — above 0, 100 000 at most
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`]
    pub fn bus(step_rpm: f32, noise_rpm: f32, age_limit_s: f32, greatest_rpm: f32) -> Result<Self> {
        let source = SpeedSource::Bus;
        Self { source, teeth: 0, step_rpm, noise_rpm, tick_s: 0.0, age_limit_s, greatest_rpm }.checked()
    }

    /// A speed that comes as pulses, counted from reading to reading.
    ///
    /// * `teeth` — z, 1 to 10 000; `noise_rpm` — pitch error of the wheel and runout as they show in one reading, 0 or more
    /// * `age_limit_s`, `greatest_rpm` as in [`bus`](Self::bus)
    /// * errors: [`Error::Count`]; as [`bus`](Self::bus)
    pub fn counted(teeth: u32, noise_rpm: f32, age_limit_s: f32, greatest_rpm: f32) -> Result<Self> {
        let source = SpeedSource::Counted;
        Self { source, teeth, step_rpm: 0.0, noise_rpm, tick_s: 0.0, age_limit_s, greatest_rpm }.checked()
    }

    /// A speed that comes as edges, stamped by a timer.
    ///
    /// * `teeth`, `noise_rpm` as in [`counted`](Self::counted); `tick_s` — above 0, 1 s at most
    /// * `age_limit_s`, `greatest_rpm` as in [`bus`](Self::bus)
    /// * errors: as [`counted`](Self::counted)
    pub fn edges(teeth: u32, tick_s: f32, noise_rpm: f32, age_limit_s: f32, greatest_rpm: f32) -> Result<Self> {
        let source = SpeedSource::Edges;
        Self { source, teeth, step_rpm: 0.0, noise_rpm, tick_s, age_limit_s, greatest_rpm }.checked()
    }

    /// The sensor, if it can be one.
    ///
    /// * errors: as [`bus`](Self::bus), [`counted`](Self::counted) and [`edges`](Self::edges); [`Error::Inconsistent`] for teeth
    ///   of a bus, a step of a counter, a tick where nothing is stamped
    pub fn checked(self) -> Result<Self> {
        between("step_rpm", self.step_rpm, 0.0, GREATEST_RPM)?;
        between("noise_rpm", self.noise_rpm, 0.0, GREATEST_RPM)?;
        above_zero("age_limit_s", self.age_limit_s)?;
        between("greatest_rpm", above_zero("greatest_rpm", self.greatest_rpm)?, 0.0, GREATEST_RPM)?;
        let bus = self.source == SpeedSource::Bus;
        if bus && self.step_rpm + self.noise_rpm <= 0.0 {
            let why = "a value on a bus has a step or noise; give at least one of them";
            return Err(Error::Inconsistent { name: "step_rpm, noise_rpm", why });
        }
        if bus && self.teeth != 0 {
            return Err(Error::Inconsistent { name: "teeth", why: "a value on a bus has none here; give 0" });
        }
        if !bus && !(1..=10_000).contains(&self.teeth) {
            return Err(Error::Count { name: "teeth", count: self.teeth, low: 1, high: 10_000 });
        }
        if !bus && self.step_rpm > 0.0 {
            return Err(Error::Inconsistent { name: "step_rpm", why: "pulses have no step; give 0, or a bus sensor" });
        }
        if self.source == SpeedSource::Edges {
            between("tick_s", above_zero("tick_s", self.tick_s)?, 0.0, 1.0)?;
        } else if self.tick_s.to_bits() != 0 {
            return Err(Error::Inconsistent { name: "tick_s", why: "nothing is stamped by a timer; give 0, or edges" });
        }
        Ok(self)
    }

    /// The uncertainty of the sensor by its causes.
    ///
    /// * errors: as [`checked`](Self::checked)
    pub fn spread(&self) -> Result<SpeedSpread> {
        let Self { source, teeth, step_rpm: step, noise_rpm: noise, tick_s, .. } = self.checked()?;
        let lasting = if step > 0.0 { lasting_square(step, noise) } else { 0.0 };
        let value = noise * noise + step * step * (1.0 / 12.0 - lasting);
        Ok(SpeedSpread {
            lasting_rpm: step * sqrt(lasting),
            value_rpm: if value > 0.0 { sqrt(value) } else { 0.0 },
            turns: if source == SpeedSource::Counted { TRIANGULAR / teeth as f32 } else { 0.0 },
            time_s: TRIANGULAR * tick_s,
        })
    }

    /// Standard uncertainty of the mean speed over a window, from the way the sensor works.
    ///
    /// u² = B + (σ² + q²/12 − B)/m + (60/(√6·z·T))² + (n·tick/(√6·T))², B = (q²/2π²)·Σ exp(−4π²k²σ²/q²)/k²
    ///
    /// * `rpm` — n, 0 or more; `window_s` — T, above 0; `values` — m in the window, 1 or more
    /// * returns u; with m = 1 and T from reading to reading that of a single reading
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`], [`Error::Count`]; as
    ///   [`checked`](Self::checked)
    ///
    /// Source: B. Widrow and I. Kollár, Quantization Noise (from memory); ends of a window as in
    /// [`counted_ratio`](crate::train::counted_ratio) and [`timed_ratio`](crate::train::timed_ratio) (derived). Example: 30 teeth
    /// counted for 50 ms, 16.3 1/min at any speed.
    ///
    /// ```
    /// let sensor = trainwright::live::SpeedSensor::counted(30, 0.0, 0.1, 8000.0)?;
    /// assert!((sensor.u_rpm(1138.4, 0.05, 1)? - 16.33).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn u_rpm(&self, rpm: f32, window_s: f32, values: u32) -> Result<f32> {
        let rpm = between("rpm", rpm, 0.0, GREATEST_RPM)?;
        let window = above_zero("window_s", window_s)?;
        if values == 0 {
            return Err(Error::Count { name: "values", count: 0, low: 1, high: u32::MAX });
        }
        Ok(sqrt(self.spread()?.variance(rpm, window, values as f32)))
    }
}

impl SpeedReading {
    /// Nothing came.
    pub const MISSING: Self = Self { rpm: 0.0, pulses: 0, ticks: 0, state: ReadingState::Missing };

    /// A value of a bus, scaled already.
    #[must_use]
    pub const fn bus(rpm: f32) -> Self {
        Self { rpm, state: ReadingState::Value, ..Self::MISSING }
    }

    /// Pulses since the reading before.
    #[must_use]
    pub const fn counted(pulses: u32) -> Self {
        Self { pulses, state: ReadingState::Value, ..Self::MISSING }
    }

    /// Pulses, and the ticks from the edge before the first of them to the last.
    #[must_use]
    pub const fn edges(pulses: u32, ticks: u32) -> Self {
        Self { pulses, ticks, state: ReadingState::Value, ..Self::MISSING }
    }

    /// A raw value of 16 bits of a J1939 bus: its marks are no speeds.
    ///
    /// * `raw` — what the bus carried; `step_rpm` — of one bit, 0.125 for input, engine and output shaft speed
    /// * returns the reading; top byte FE an error, FF not available, FB to FD reserved, the rest raw·step
    ///
    /// Source: SAE J1939-71, table of signal ranges (from memory), as [`BusSignal::decode`](crate::duty::BusSignal::decode).
    ///
    /// ```
    /// use trainwright::live::{ReadingState, SpeedReading};
    /// assert_eq!(SpeedReading::marked(12_000, 0.125).rpm, 1500.0);
    /// assert_eq!(SpeedReading::marked(0xFFFF, 0.125).state, ReadingState::NotAvailable);
    /// ```
    #[must_use]
    pub const fn marked(raw: u16, step_rpm: f32) -> Self {
        let state = match marked_meaning((raw >> 8) as u32) {
            None => return Self::bus(raw as f32 * step_rpm),
            Some(BusMeaning::Error) => ReadingState::SensorError,
            Some(BusMeaning::NotAvailable) => ReadingState::NotAvailable,
            Some(_) => ReadingState::Reserved,
        };
        Self { state, ..Self::MISSING }
    }
}

impl SpeedSpread {
    /// Square of the standard uncertainty of a mean over a window, (1/min)². For every sample: no root, no check.
    ///
    /// * `rpm` — mean speed; `window_s` — above 0; `values` — in the window, 1 or more
    #[must_use]
    pub fn variance(&self, rpm: f32, window_s: f32, values: f32) -> f32 {
        let ends = (3600.0 * self.turns * self.turns + rpm * rpm * self.time_s * self.time_s) / (window_s * window_s);
        self.lasting_rpm * self.lasting_rpm + self.value_rpm * self.value_rpm / values + ends
    }

    /// The three parts of the relative variance of a mean: what stays, what falls with the window, and with its square.
    fn parts(&self, rpm: f32, sample_s: f32) -> [f32; 3] {
        let share = |u: f32| u / rpm * (u / rpm);
        [
            share(self.lasting_rpm),
            share(self.value_rpm) * sample_s,
            share(60.0 * self.turns) + self.time_s * self.time_s,
        ]
    }
}

impl SpeedPair {
    /// Square of the relative standard uncertainty of a ratio over a window. For every window: no root, no check.
    ///
    /// * `input_rpm`, `output_rpm` — mean speeds, above 0; `window_s` — above 0
    #[must_use]
    pub fn ratio_variance(&self, input_rpm: f32, output_rpm: f32, window_s: f32) -> f32 {
        let [lasting, values, ends] = self.parts(input_rpm, output_rpm);
        lasting + (values + ends / window_s) / window_s
    }

    /// Shortest window whose ratio has the wanted relative standard uncertainty.
    ///
    /// T = (v + √(v² + 4·(w² − b)·c))/(2·(w² − b)), where (u_r/r)² = b + v/T + c/T²
    ///
    /// * `input_rpm` — above 0; `ratio` — of the gear, not 0; `u_rel` — w, above 0, 1 at most
    /// * returns T; shorter than a sample period where one reading is enough
    /// * errors: [`Error::NotPositive`], [`Error::OutOfRange`], [`Error::NotFinite`]; [`Error::NoAnswer`] where steps without noise
    ///   leave more than w in any window
    ///
    /// Source: [`u_rpm`](SpeedSensor::u_rpm) of both speeds, solved for the window (derived). Example: 40 and 30 teeth, counted
    /// at 2000 1/min: 1 % takes 0.08 s in fourth of the demonstration unit and 0.18 s in first.
    ///
    /// ```
    /// use trainwright::live::{SpeedPair, SpeedSensor};
    /// let (input, output) = (SpeedSensor::counted(40, 0.0, 0.1, 8000.0)?, SpeedSensor::counted(30, 0.0, 0.1, 8000.0)?);
    /// let pair = SpeedPair { input: input.spread()?, output: output.spread()?, sample_s: 0.01 };
    /// assert!((pair.ratio_window_s(2000.0, 65.0 / 37.0, 0.01)? - 0.078).abs() < 0.001);
    /// assert!((pair.ratio_window_s(2000.0, 4.2521, 0.01)? - 0.176).abs() < 0.001);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn ratio_window_s(&self, input_rpm: f32, ratio: f32, u_rel: f32) -> Result<f32> {
        let input = between("input_rpm", above_zero("input_rpm", input_rpm)?, 0.0, GREATEST_RPM)?;
        let ratio = above_zero("ratio without its sign", ratio.abs())?;
        let wanted = between("u_rel", above_zero("u_rel", u_rel)?, 0.0, 1.0)?;
        above_zero("sample_s", self.sample_s)?;
        let [lasting, values, ends] = self.parts(input, input / ratio);
        let left = wanted * wanted - lasting;
        if left > 0.0 {
            Ok((values + sqrt(values * values + 4.0 * left * ends)) / (2.0 * left))
        } else {
            Err(Error::NoAnswer {
                name: "ratio_window_s",
                why: "the steps of the speeds, which no noise averages out, leave more than u_rel in any window; accept a \
                      greater u_rel, or read at a higher speed",
            })
        }
    }

    fn parts(&self, input_rpm: f32, output_rpm: f32) -> [f32; 3] {
        let [a, b, c] = self.input.parts(input_rpm, self.sample_s);
        let [d, e, f] = self.output.parts(output_rpm, self.sample_s);
        [a + d, b + e, c + f]
    }
}
