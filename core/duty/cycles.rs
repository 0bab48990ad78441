//! Cycles and time at level of a measured history, in fixed memory. What was not measured stays unknown.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive};
use crate::real::abs;

pub(super) const RAINFLOW: Card = Card {
    id: "duty.rainflow",
    purpose: "Cycles of a history of torque, pressure or temperature by rainflow counting",
    equation: "of four turning points a, b, c, d: where |c − b| ≤ |b − a| and |c − b| ≤ |d − c|, count one cycle r = |c − b|, m = (b + c)/2, and take b and c out",
    symbols: &[
        symbol("a, b, c, d", "the last four turning points that are left", "of the history"),
        symbol("r", "range", "of the history"),
        symbol("m", "mean", "of the history"),
    ],
    range: "what is left at the end counts as half cycles, as the standard does; or the history repeats, and its left-over closes with itself. \
        A missing value ends a piece: what happened in the gap is unknown and not counted as rest",
    source: &card::CYCLE_COUNTING,
    locator: "5.4.4 rainflow counting, 5.4.5 simplified rainflow counting for repeating histories",
};

pub(super) const RESIDENCE: Card = Card {
    id: "duty.residence",
    purpose: "Time that a history spends in each bin, with the time that nobody knows",
    equation: "t_i = t(k) − t(k−1) for each sample with e_i ≤ x(k) < e_(i+1)",
    symbols: &[
        symbol("x(k)", "values, of the history", "of the history"),
        symbol("e_i", "edges, of the bins", "of the history"),
        symbol("t(k)", "time_s", "s"),
        symbol("t_i", "seconds in the bin", "s"),
    ],
    range: "a sample stands for the time since the one before it. Longer than the gap limit is unknown, a missing value too; time that \
        stands still or runs backward is counted and not used",
    source: &card::CYCLE_COUNTING,
    locator: "time at level (definition)",
};

/// What becomes of the turning points that close no cycle.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ResidueRule {
    /// Each range between them is half a cycle (5.4.4 of the standard).
    HalfCycles,
    /// The history repeats, so they close with themselves (5.4.5 of the standard).
    Repeated,
}

/// One counted cycle.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cycle {
    /// From trough to peak.
    pub range: f64,
    /// Middle between them.
    pub mean: f64,
    /// 1, or 0.5 for half a cycle.
    pub cycles: f64,
}

impl Cycle {
    /// Nothing counted.
    pub const NONE: Self = Self { range: 0.0, mean: 0.0, cycles: 0.0 };
}

/// What was counted in a history.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CycleCount {
    /// Cycles, half ones as halves.
    pub cycles: f64,
    /// Entries written.
    pub entries: u32,
    /// Turning points; of a history that repeats, those of one round.
    pub reversals: u32,
    /// Pieces between gaps.
    pub pieces: u32,
    /// Missing values.
    pub missing: u32,
    /// Greatest range counted.
    pub largest_range: f64,
}

/// Turning points on the caller's stack.
struct Turning<'a, F> {
    stack: &'a mut [f64],
    held: usize,
    pending: f64,
    rising: bool,
    count: CycleCount,
    found: F,
}

impl<F: FnMut(Cycle) -> Result<()>> Turning<'_, F> {
    fn next(&mut self, value: f64) -> Result<()> {
        let rising = value > self.pending;
        if self.pending.is_nan() {
            self.pending = value;
        } else if rising || value < self.pending {
            if self.held == 0 || rising != self.rising {
                self.turn()?;
                self.rising = rising;
            }
            self.pending = value;
        }
        Ok(())
    }

    /// The pending value is a turning point.
    fn turn(&mut self) -> Result<()> {
        let most = self.stack.len();
        let Some(place) = self.stack.get_mut(self.held) else {
            let count = u32::try_from(self.held).unwrap_or(u32::MAX).saturating_add(1);
            return Err(Error::Count { name: "stack", count, low: 4, high: u32::try_from(most).unwrap_or(u32::MAX) });
        };
        *place = self.pending;
        self.held += 1;
        self.count.reversals += 1;
        while let Some(&[.., a, b, c, d]) = self.stack.get(..self.held) {
            let inner = abs(c - b);
            if inner > abs(b - a) || inner > abs(d - c) {
                break;
            }
            self.count_one(b, c, 1.0)?;
            self.held -= 2;
            if let Some(last) = self.held.checked_sub(1).and_then(|last| self.stack.get_mut(last)) {
                *last = d;
            }
        }
        Ok(())
    }

    fn count_one(&mut self, from: f64, to: f64, cycles: f64) -> Result<()> {
        let range = abs(to - from);
        self.count.cycles += cycles;
        self.count.entries += 1;
        if range > self.count.largest_range {
            self.count.largest_range = range;
        }
        (self.found)(Cycle { range, mean: from / 2.0 + to / 2.0, cycles })
    }

    /// The piece ends: its last value turns, and what is left is half cycles.
    fn end_in_halves(&mut self) -> Result<()> {
        if self.held > 0 {
            self.turn()?;
        }
        for place in 1..self.held {
            if let (Some(&from), Some(&to)) = (self.stack.get(place - 1), self.stack.get(place)) {
                self.count_one(from, to, 0.5)?;
            }
        }
        self.held = 0;
        self.pending = f64::NAN;
        Ok(())
    }

    /// The history begins anew: what is left runs through once more and closes with itself.
    fn end_repeated(&mut self, copy: &mut [f64]) -> Result<()> {
        if self.held == 0 {
            return Ok(());
        }
        self.turn()?;
        let room = copy.len();
        let (Some(left), Some(copy)) = (self.stack.get(..self.held), copy.get_mut(..self.held)) else {
            let [count, high] = [self.held, room].map(|size| u32::try_from(size).unwrap_or(u32::MAX));
            return Err(Error::Count { name: "stack (a third of it)", count, low: 2, high });
        };
        for (to, from) in copy.iter_mut().zip(left) {
            *to = *from;
        }
        // Whether the last value turns depends on the first one, so it waits again.
        self.held -= 1;
        if let Some(&[.., before]) = self.stack.get(..self.held) {
            self.rising = self.pending > before;
        }
        for &value in copy.iter() {
            self.next(value)?;
        }
        self.turn()?;
        self.count.reversals = 2 * self.count.entries;
        Ok(())
    }
}

/// Cycles of a history of torque, pressure or temperature by rainflow counting.
///
/// of four turning points a, b, c, d: where |c − b| ≤ |b − a| and |c − b| ≤ |d − c|, count one cycle r = |c − b|,
/// m = (b + c)/2, and take b and c out
///
/// * `values` — the history; NaN is a missing value and ends a piece; `residue` — what becomes of the left-over
/// * `stack` — memory for turning points, 4 or more; what a history needs is its longest left-over: at most twice as many
///   as it has different values. [`ResidueRule::Repeated`] needs three times that
/// * `found` — called with each [`Cycle`]; an error of it ends the count
/// * returns [`CycleCount`]
/// * errors: [`Error::NotFinite`] for an infinite value; [`Error::Count`] for a stack that is too small;
///   [`Error::Inconsistent`] for a history that shall repeat and has gaps
///
/// Source: ASTM E1049-85, 5.4.4 and 5.4.5 (from memory). Example: its figure 6, −2, 1, −3, 5, −1, 3, −4, 4, −2: half a cycle of
/// 3, one and a half of 4, half of 6, one of 8, half of 9.
///
/// ```
/// use trainwright::duty::{ResidueRule, rainflow};
/// let history = [-2.0, 1.0, -3.0, 5.0, -1.0, 3.0, -4.0, 4.0, -2.0];
/// let mut of_range = [0.0; 10];
/// let count = rainflow(&history, ResidueRule::HalfCycles, &mut [0.0; 16], |cycle| {
///     of_range[cycle.range as usize] += cycle.cycles;
///     Ok(())
/// })?;
/// assert_eq!(of_range, [0.0, 0.0, 0.0, 0.5, 1.5, 0.0, 0.5, 0.0, 1.0, 0.5]);
/// assert_eq!(count.cycles, 4.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn rainflow(
    values: &[f64],
    residue: ResidueRule,
    stack: &mut [f64],
    found: impl FnMut(Cycle) -> Result<()>,
) -> Result<CycleCount> {
    if stack.len() < 4 {
        let count = u32::try_from(stack.len()).unwrap_or(0);
        return Err(Error::Count { name: "stack", count, low: 4, high: u32::MAX });
    }
    let for_stack = match residue {
        ResidueRule::HalfCycles => stack.len(),
        ResidueRule::Repeated => stack.len() - stack.len() / 3,
    };
    let Some((stack, copy)) = stack.split_at_mut_checked(for_stack) else {
        return Err(Error::Count { name: "stack", count: 0, low: 4, high: u32::MAX });
    };
    let count = CycleCount { cycles: 0.0, entries: 0, reversals: 0, pieces: 0, missing: 0, largest_range: 0.0 };
    let mut turning = Turning { stack, held: 0, pending: f64::NAN, rising: false, count, found };
    let mut inside = false;
    for &value in values {
        if !value.is_nan() {
            turning.count.pieces += u32::from(!inside);
            inside = true;
            turning.next(finite("values", value)?)?;
            continue;
        }
        if residue == ResidueRule::Repeated {
            return Err(Error::Inconsistent {
                name: "residue",
                why: "a history with missing values does not repeat as it stands; count half cycles, or give it whole",
            });
        }
        turning.count.missing += 1;
        inside = false;
        turning.end_in_halves()?;
    }
    match residue {
        ResidueRule::HalfCycles => turning.end_in_halves()?,
        ResidueRule::Repeated => turning.end_repeated(copy)?,
    }
    Ok(turning.count)
}

/// Time of a history outside its bins, and time that nobody knows.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Residence {
    /// In the bins together, s.
    pub inside_s: f64,
    /// Below the first edge, s.
    pub below_s: f64,
    /// At the last edge or above it, s.
    pub above_s: f64,
    /// With a missing value, s: neither rest nor use.
    pub missing_s: f64,
    /// In gaps of the time stamps, s: neither rest nor use.
    pub gap_s: f64,
    /// Samples with the time of the one before.
    pub duplicates: u32,
    /// Samples earlier than the one before.
    pub reversed: u32,
}

/// Time that a history spends in each bin, with the time that nobody knows.
///
/// t_i = t(k) − t(k−1) for each sample with e_i ≤ x(k) < e_(i+1)
///
/// * `time_s`, `values` — samples, of one length; a missing value is NaN
/// * `edges` — of the bins, rising, one more than bins; `gap_limit_s` — longest step that a sample still stands for, above 0
/// * `seconds` — receives the time in each bin
/// * returns [`Residence`]
/// * errors: [`Error::Count`] for lengths that do not go together; [`Error::Reversed`] for edges that do not rise;
///   [`Error::NotFinite`] for a time or an edge, [`Error::NotPositive`] for the limit
///
/// Source: time at level (definition). Example: 10 s at 50 °C, 20 s at 90 °C, then an hour without data.
///
/// ```
/// use trainwright::duty::residence;
/// let (time_s, temp_c) = ([0.0, 10.0, 20.0, 30.0, 3630.0], [50.0, 50.0, 90.0, 90.0, 90.0]);
/// let mut seconds = [0.0; 2];
/// let rest = residence(&time_s, &temp_c, &[0.0, 80.0, 120.0], 15.0, &mut seconds)?;
/// assert_eq!((seconds, rest.gap_s), ([10.0, 20.0], 3600.0));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn residence(
    time_s: &[f64],
    values: &[f64],
    edges: &[f64],
    gap_limit_s: f64,
    seconds: &mut [f64],
) -> Result<Residence> {
    for (name, given, wanted) in
        [("values", values.len(), time_s.len()), ("seconds", seconds.len(), edges.len().saturating_sub(1))]
    {
        if given != wanted || edges.len() < 2 {
            let [count, wanted] = [given, wanted.max(1)].map(|count| u32::try_from(count).unwrap_or(u32::MAX));
            return Err(Error::Count { name, count, low: wanted, high: wanted });
        }
    }
    for pair in edges.windows(2) {
        if let &[lower, upper] = pair
            && finite("edges", lower)? >= finite("edges", upper)?
        {
            return Err(Error::Reversed { name: "edges", lower, upper });
        }
    }
    let limit = positive("gap_limit_s", gap_limit_s)?;
    seconds.fill(0.0);
    let mut rest =
        Residence { inside_s: 0.0, below_s: 0.0, above_s: 0.0, missing_s: 0.0, gap_s: 0.0, duplicates: 0, reversed: 0 };
    let mut before: Option<f64> = None;
    for (&time, &value) in time_s.iter().zip(values) {
        let time = finite("time_s", time)?;
        let step = before.map(|before| time - before);
        before = Some(time);
        match step {
            None => {}
            Some(0.0) => rest.duplicates += 1,
            Some(step) if step < 0.0 => rest.reversed += 1,
            Some(step) if step > limit => rest.gap_s += step,
            Some(step) if value.is_nan() => rest.missing_s += step,
            Some(step) => match edges.partition_point(|edge| *edge <= value) {
                0 => rest.below_s += step,
                above if above >= edges.len() => rest.above_s += step,
                bin => {
                    rest.inside_s += step;
                    if let Some(seconds) = seconds.get_mut(bin - 1) {
                        *seconds += step;
                    }
                }
            },
        }
    }
    Ok(rest)
}
