//! Return flow of the cooler, from a measure and a stopwatch. A limit without a temperature is worth nothing: cold oil is
//! several times as thick.

use super::pump::oil_at;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::fluid::Fluid;
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge, propagate};

pub(super) const TIMED_FLOW: Card = Card {
    id: "hydraulic.timed_flow",
    purpose: "Flow from a volume and the time in which it ran, with its uncertainty",
    equation: "Q = 60 V/t, (u_Q/Q)² = (u_V/V)² + (u_t/t)²",
    symbols: &[
        symbol("Q, u_Q", "flow_l_min", "L/min"),
        symbol("V, u_V", "volume_l", "L"),
        symbol("t, u_t", "time_s", "s"),
    ],
    range: "steady flow, no foam in the measure",
    source: &card::GUM,
    locator: "equation 10; a quotient of two independent readings",
};

pub(super) const AT_REFERENCE: Card = Card {
    id: "hydraulic.flow_at_reference",
    purpose: "Flow that the same cooler would pass at another temperature of the fluid",
    equation: "Q_0 = Q η(t)/η(t_0)",
    symbols: &[
        symbol("Q_0", "result", "L/min"),
        symbol("Q", "flow_l_min", "L/min"),
        symbol("η", "dynamic viscosity, hydraulic.oil_at", "mPa·s"),
        symbol("t, t_0", "temp_c, reference_c", "°C"),
    ],
    range: "laminar, the same pressure over cooler and lines, bypass in the same state: a thermostat that opens between the two temperatures breaks it",
    source: &card::FLUID_MECHANICS,
    locator: "laminar flow through a pipe: proportional to pressure over viscosity",
};

pub(super) const LEAST_FLOW: Card = Card {
    id: "hydraulic.least_flow_at",
    purpose: "Least flow of the cooler at a temperature, from the table of its maker or of the shop",
    equation: "Q_lim = Q_i + (Q_{i+1} − Q_i)(t − t_i)/(t_{i+1} − t_i)",
    symbols: &[
        symbol("Q_lim", "least_l_min", "L/min"),
        symbol("Q_i, t_i", "flow and temperature of the rows around it", "L/min, °C"),
        symbol("t", "temp_c", "°C"),
    ],
    range: "within the table; nothing is said outside it",
    source: &card::DEFINITION,
    locator: "linear between rows",
};

pub(super) const COOLER_CHECK: Card = Card {
    id: "hydraulic.cooler_check",
    purpose: "Whether the cooler passes enough at the temperature that the fluid has, with its uncertainty",
    equation: "ΔQ = Q − Q_lim(t), u² = u_Q² + (dQ_lim/dt u_t)²; judged: ΔQ ≥ 0",
    symbols: &[
        symbol("ΔQ, u", "judgment.reading", "L/min"),
        symbol("Q, u_Q", "flow_l_min", "L/min"),
        symbol("Q_lim", "least.least_l_min, hydraulic.least_flow_at", "L/min"),
        symbol("t, u_t", "temp_c", "°C, K"),
    ],
    range: "as hydraulic.timed_flow and hydraulic.least_flow_at; at idle, return line",
    source: &card::GUM,
    locator: "equation 10",
};

/// Most rows of a table of least flows.
pub const COOLER_ROWS: usize = 16;

/// Least return flow of a cooler by fluid temperature, linear between rows.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolerLimits {
    /// Rows in use, 2 to 16.
    pub rows: u32,
    /// Temperatures, rising.
    pub temperature_c: [f64; COOLER_ROWS],
    /// Least flow at each, 0 or more.
    pub least_flow_l_min: [f64; COOLER_ROWS],
}

/// Least flow at a temperature.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeastFlow {
    /// Least flow, L/min.
    pub least_l_min: f64,
    /// How it changes with the temperature, L/min per kelvin; at a row the steeper side.
    pub least_l_min_per_k: f64,
}

/// Flow from a measure and a stopwatch.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimedFlow {
    /// The flow, L/min.
    pub flow_l_min: Reading,
    /// Its uncertainty: volume, time, in this order.
    pub budget: Budget,
}

/// What was read at the return line.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolerReading {
    /// Volume caught, L, above 0.
    pub volume_l: Reading,
    /// Time it took, s, above 0.
    pub time_s: Reading,
    /// Temperature of the fluid, °C.
    pub temp_c: Reading,
}

/// Whether the cooler passes enough, and what that rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolerCheck {
    /// The flow, L/min.
    pub flow_l_min: Reading,
    /// What is asked at this temperature.
    pub least: LeastFlow,
    /// Flow less what is asked, L/min, against 0.
    pub judgment: Judgment,
    /// Its uncertainty: volume, time, temperature, in this order.
    pub budget: Budget,
}

/// Flow from a volume and the time in which it ran.
///
/// Q = 60 V/t
///
/// * `volume_l` — V, above 0 to 1000; `time_s` — t, above 0 to 1e5; both with their uncertainty
/// * returns [`TimedFlow`]
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: JCGM 100:2008, equation 10. Example (by hand): a quart in 20 s is 2.84 L/min.
///
/// ```
/// use trainwright::{hydraulic::timed_flow, judge::Reading, units::quart_to_l};
/// let flow = timed_flow(Reading::relative(quart_to_l(1.0), 0.02)?, Reading::new(20.0, 0.3)?)?;
/// assert!((flow.flow_l_min.value - 2.839).abs() < 5e-4);
/// assert!((flow.flow_l_min.u / flow.flow_l_min.value - 0.025).abs() < 1e-12); // √(2² + 1.5²) %
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn timed_flow(volume_l: Reading, time_s: Reading) -> Result<TimedFlow> {
    let volume = within("volume_l", positive("volume_l", volume_l.value)?, 0.0, 1e3)?;
    let time = within("time_s", positive("time_s", time_s.value)?, 0.0, 1e5)?;
    let flow = 60.0 * volume / time;
    let budget = combine(&[Input::new(60.0 / time, volume_l.u)?, Input::new(-flow / time, time_s.u)?])?;
    Ok(TimedFlow { flow_l_min: Reading::new(flow, budget.u)?, budget })
}

/// Flow that the same cooler would pass at another temperature of the fluid, L/min, with its uncertainty.
///
/// Q_0 = Q η(t)/η(t_0)
///
/// * `flow_l_min` — Q; `fluid` — the fluid; `temp_c` — t at the reading; `reference_c` — t_0
/// * errors: [`Error::OutOfRange`]; as [`oil_at`]
///
/// To compare with a limit that is stated for one temperature only, or with an earlier reading. Judge by a limit at the
/// temperature of the reading where there is one.
///
/// Source: laminar flow through a pipe (Bansal, from memory).
pub fn flow_at_reference(flow_l_min: Reading, fluid: &Fluid, temp_c: Reading, reference_c: f64) -> Result<Reading> {
    within("flow_l_min", flow_l_min.value, 0.0, 1e4)?;
    let there = oil_at(fluid, Reading::exact(reference_c)?)?.viscosity_mpa_s.value;
    let here = oil_at(fluid, temp_c)?.viscosity_mpa_s;
    Ok(propagate([flow_l_min, here], |[flow, viscosity]| Ok(flow * viscosity / there))?.reading)
}

/// Part of the table between two rows.
#[derive(Clone, Copy)]
struct Span {
    low_c: f64,
    high_c: f64,
    low_l_min: f64,
    high_l_min: f64,
}

impl Span {
    fn slope(self) -> f64 {
        (self.high_l_min - self.low_l_min) / (self.high_c - self.low_c)
    }
}

impl CoolerLimits {
    /// Limits from their table.
    ///
    /// * `temperature_c` — 2 to 16, rising; `least_flow_l_min` — as many, 0 or more
    /// * errors: [`Error::Count`], [`Error::Inconsistent`], [`Error::OutOfRange`], [`Error::NotFinite`]
    pub fn from_flows(temperature_c: &[f64], least_flow_l_min: &[f64]) -> Result<Self> {
        let rows = u32::try_from(temperature_c.len()).unwrap_or(u32::MAX);
        if temperature_c.len() != least_flow_l_min.len() {
            return Err(Error::Inconsistent { name: "least_flow_l_min", why: "give one flow for each temperature" });
        }
        let mut limits = Self { rows, temperature_c: [0.0; COOLER_ROWS], least_flow_l_min: [0.0; COOLER_ROWS] };
        for (to, from) in limits.temperature_c.iter_mut().zip(temperature_c) {
            *to = *from;
        }
        for (to, from) in limits.least_flow_l_min.iter_mut().zip(least_flow_l_min) {
            *to = *from;
        }
        limits.spans().map(|_| ())?;
        Ok(limits)
    }

    /// The parts of the table, if it can be used.
    fn spans(&self) -> Result<impl Iterator<Item = Span>> {
        if !(2..=COOLER_ROWS as u32).contains(&self.rows) {
            return Err(Error::Count { name: "cooler rows", count: self.rows, low: 2, high: COOLER_ROWS as u32 });
        }
        let temperatures = self.temperature_c.iter().zip(self.temperature_c.iter().skip(1));
        let flows = self.least_flow_l_min.iter().zip(self.least_flow_l_min.iter().skip(1));
        let spans = temperatures
            .zip(flows)
            .take(self.rows.saturating_sub(1) as usize)
            .map(|((&low_c, &high_c), (&low_l_min, &high_l_min))| Span { low_c, high_c, low_l_min, high_l_min });
        for span in spans.clone() {
            finite("temperature_c", span.low_c)?;
            finite("temperature_c", span.high_c)?;
            within("least_flow_l_min", span.low_l_min, 0.0, 1e4)?;
            within("least_flow_l_min", span.high_l_min, 0.0, 1e4)?;
            if span.low_c >= span.high_c {
                return Err(Error::Inconsistent { name: "temperature_c", why: "temperatures must rise" });
            }
        }
        Ok(spans)
    }

    /// Least flow at a temperature, linear between rows.
    ///
    /// * `temp_c` — within the table
    /// * returns [`LeastFlow`]
    /// * errors: [`Error::OutOfRange`] outside the table; and as [`CoolerLimits::from_flows`]
    ///
    /// ```
    /// use trainwright::hydraulic::CoolerLimits;
    /// let limits = CoolerLimits::from_flows(&[30.0, 50.0, 70.0, 90.0], &[2.4, 3.8, 5.2, 6.0])?;
    /// assert!((limits.least_flow_at(60.0)?.least_l_min - 4.5).abs() < 1e-12);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn least_flow_at(&self, temp_c: f64) -> Result<LeastFlow> {
        finite("temp_c", temp_c)?;
        let (mut low_c, mut high_c) = (f64::INFINITY, f64::NEG_INFINITY);
        let mut found: Option<LeastFlow> = None;
        for span in self.spans()? {
            (low_c, high_c) = (low_c.min(span.low_c), high_c.max(span.high_c));
            if temp_c < span.low_c || temp_c > span.high_c {
                continue;
            }
            let here = LeastFlow {
                least_l_min: span.low_l_min + span.slope() * (temp_c - span.low_c),
                least_l_min_per_k: span.slope(),
            };
            found = Some(match found {
                Some(before) if before.least_l_min_per_k * before.least_l_min_per_k >= span.slope() * span.slope() => {
                    before
                }
                _ => here,
            });
        }
        found.ok_or(Error::OutOfRange { name: "temp_c", value: temp_c, low: low_c, high: high_c })
    }

    /// Whether the cooler passes enough at the temperature that the fluid has.
    ///
    /// ΔQ = 60 V/t − Q_lim; judged: ΔQ ≥ 0
    ///
    /// * `reading` — volume, time, temperature, with their uncertainty; `rule` — see [`Rule`]
    /// * returns [`CoolerCheck`]
    /// * errors: as [`timed_flow`] and [`CoolerLimits::least_flow_at`]: outside the table nothing is judged
    ///
    /// Source: JCGM 100:2008, equation 10. Example (by hand): 2 L in 20 s at 90 °C are 6.0 L/min, exactly what the table of
    /// [`CoolerLimits::least_flow_at`] asks: nothing is proven.
    ///
    /// ```
    /// use trainwright::{hydraulic::{CoolerLimits, CoolerReading}, judge::{Reading, Rule, Verdict}};
    /// let limits = CoolerLimits::from_flows(&[30.0, 50.0, 70.0, 90.0], &[2.4, 3.8, 5.2, 6.0])?;
    /// let reading = CoolerReading {
    ///     volume_l: Reading::relative(2.0, 0.02)?, time_s: Reading::new(20.0, 0.3)?, temp_c: Reading::new(90.0, 1.0)?,
    /// };
    /// let check = limits.cooler_check(reading, Rule::stated_chances(0.95, 0.05)?)?;
    /// assert_eq!(check.judgment.verdict, Verdict::NotProven);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn cooler_check(&self, reading: CoolerReading, rule: Rule) -> Result<CoolerCheck> {
        let CoolerReading { volume_l, time_s, temp_c } = reading;
        let flow = timed_flow(volume_l, time_s)?.flow_l_min;
        let least = self.least_flow_at(temp_c.value)?;
        let budget = combine(&[
            Input::new(60.0 / time_s.value, volume_l.u)?,
            Input::new(-flow.value / time_s.value, time_s.u)?,
            Input::new(-least.least_l_min_per_k, temp_c.u)?,
        ])?;
        let spare = Reading::new(flow.value - least.least_l_min, budget.u)?;
        Ok(CoolerCheck { flow_l_min: flow, least, judgment: judge(spare, Limits::at_least(0.0)?, rule)?, budget })
    }
}
