//! A tolerance chain: worst case, root sum of squares, and the result as a reading with its budget.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, within};
use crate::fit::Spread;
use crate::judge::{Budget, Input, Limits, MAX_INPUTS, Reading, chance_inside, combine};
use crate::real::{abs, sqrt};

pub(super) const CHAIN: Card = Card {
    id: "stack.chain",
    purpose: "Size that a chain of parts leaves: nominal, worst case, root sum of squares, and with its uncertainty",
    equation: "e = Σ c_i x_i; worst case e ± Σ |c_i| t_i; RSS e ± √(Σ (c_i t_i)²); u² = Σ (c_i u_i)²",
    symbols: &[
        symbol("e, u", "reading_mm", "mm"),
        symbol("c_i", "links[i].sensitivity: +1 opens, −1 fills", "1"),
        symbol("x_i", "links[i].value_mm", "mm"),
        symbol("t_i", "links[i].half_width_mm", "mm"),
        symbol("u_i", "links[i].u_mm", "mm"),
    ],
    range: "independent parts; RSS counts on centered tolerances, all with the same number of standard deviations",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 1, dimensions and tolerances; JCGM 100:2008, equation 10 for u",
};

/// One part of a chain.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChainLink {
    /// Change of the result per change of this size: +1 for what opens the gap, −1 for what fills it, n for n equal parts
    /// known by one measurement.
    pub sensitivity: f64,
    /// Middle of the tolerance, or the reading, mm.
    pub value_mm: f64,
    /// How far from there the size may lie, mm: half the tolerance, or k standard uncertainties of a reading.
    pub half_width_mm: f64,
    /// Standard uncertainty, mm.
    pub u_mm: f64,
}

impl ChainLink {
    /// A part as made, not measured.
    ///
    /// * `sensitivity` — c; `size_mm` — both limits, mm; `spread` — how the size is assumed to lie between them
    ///
    /// Source: JCGM 100:2008, 4.3.7 and 4.3.5.
    pub fn toleranced(sensitivity: f64, size_mm: Limits, spread: Spread) -> Result<Self> {
        let Limits { lower, upper } = Limits::between(size_mm.lower, size_mm.upper)?;
        let half_width_mm = 0.5 * (upper - lower);
        let Reading { value, u } = spread.reading(lower + half_width_mm, half_width_mm)?;
        Self { sensitivity, value_mm: value, half_width_mm, u_mm: u }.checked()
    }

    /// A measured part: t = k u.
    ///
    /// * `sensitivity` — c; `size_mm` — the reading, mm; `k` — how many standard uncertainties count as its worst case, 0 or more
    pub fn measured(sensitivity: f64, size_mm: Reading, k: f64) -> Result<Self> {
        let half_width_mm = within("k", k, 0.0, 100.0)? * size_mm.u;
        Self { sensitivity, value_mm: size_mm.value, half_width_mm, u_mm: size_mm.u }.checked()
    }

    fn checked(self) -> Result<Self> {
        finite("sensitivity", self.sensitivity)?;
        finite("value_mm", self.value_mm)?;
        within("half_width_mm", self.half_width_mm, 0.0, f64::MAX)?;
        within("u_mm", self.u_mm, 0.0, f64::MAX)?;
        Ok(self)
    }
}

/// What a chain of parts leaves.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chain {
    /// The result with its standard uncertainty, mm.
    pub reading_mm: Reading,
    /// Every part at its worst, ± mm.
    pub worst_half_mm: f64,
    /// Least and greatest result with every part at its worst, mm.
    pub worst_mm: Limits,
    /// Root sum of squares of the tolerances, ± mm.
    pub rss_half_mm: f64,
    /// Least and greatest result by root sum of squares, mm.
    pub rss_mm: Limits,
    /// Chance that the result lies within `rss_mm`, taken as normal with the stated uncertainties: 0.9973 where every tolerance
    /// is three standard deviations, 0.917 where the parts lie anywhere in them. Many parts make it so; two equal ones that lie
    /// anywhere give 0.914, and one alone never leaves its tolerance.
    pub rss_chance: f64,
    /// Where the uncertainty comes from, in the order of the links.
    pub budget: Budget,
}

/// The size that a chain of parts leaves.
///
/// e = Σ c_i x_i; worst case e ± Σ |c_i| t_i; RSS e ± √(Σ (c_i t_i)²); u² = Σ (c_i u_i)²
///
/// * `links` — c_i, x_i, t_i and u_i of each part, 1 to [`MAX_INPUTS`]
/// * returns the result with all three spreads. The root sum of squares counts on independent parts whose sizes center in
///   their tolerances; a batch from one worn tool does not. The worst case counts on nothing
/// * errors: [`Error::Count`], [`Error::NotFinite`], [`Error::OutOfRange`] for a part
///
/// Source: Shigley, chapter 1 (from memory). Example: its example 1-7, three blocks in a groove: 1.750 ± 0.003 in less
/// 0.750 ± 0.001, 0.120 ± 0.005 and 0.875 ± 0.001 leaves 0.005 ± 0.010 in; the root sum of squares is ± 0.006 in.
///
/// ```
/// use trainwright::{fit::Spread, judge::Limits, units::in_to_mm};
/// use trainwright::stack::{ChainLink, chain};
/// let part = |sign, size: f64, t: f64| {
///     ChainLink::toleranced(sign, Limits::between(in_to_mm(size - t), in_to_mm(size + t))?, Spread::NORMAL_3_SIGMA)
/// };
/// let gap = chain(&[part(1.0, 1.750, 0.003)?, part(-1.0, 0.750, 0.001)?, part(-1.0, 0.120, 0.005)?, part(-1.0, 0.875, 0.001)?])?;
/// assert!((gap.reading_mm.value - in_to_mm(0.005)).abs() < 1e-12);
/// assert!((gap.worst_half_mm - in_to_mm(0.010)).abs() < 1e-12);
/// assert!((gap.rss_half_mm - in_to_mm(0.006)).abs() < 1e-12);
/// assert_eq!(gap.budget.largest, 2); // the 0.120 in part: measure it, or buy it closer
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn chain(links: &[ChainLink]) -> Result<Chain> {
    let count = links.len();
    let mut inputs = [Input { sensitivity: 0.0, u: 0.0, freedom: f64::INFINITY }; MAX_INPUTS];
    let Some(inputs) = inputs.get_mut(..count).filter(|inputs| !inputs.is_empty()) else {
        return Err(Error::Count {
            name: "links",
            count: u32::try_from(count).unwrap_or(u32::MAX),
            low: 1,
            high: MAX_INPUTS as u32,
        });
    };
    let (mut value, mut worst_half_mm, mut squares) = (0.0, 0.0, 0.0);
    for (link, input) in links.iter().zip(inputs.iter_mut()) {
        let link = link.checked()?;
        let part_half_mm = abs(link.sensitivity) * link.half_width_mm;
        value += link.sensitivity * link.value_mm;
        worst_half_mm += part_half_mm;
        squares += part_half_mm * part_half_mm;
        *input = Input::new(link.sensitivity, link.u_mm)?;
    }
    let budget = combine(inputs)?;
    let reading_mm = Reading::new(finite("result", value)?, budget.u)?;
    let rss_half_mm = finite("rss_half_mm", sqrt(squares))?;
    let around = |half: f64| Limits { lower: value - half, upper: value + half };
    Ok(Chain {
        reading_mm,
        worst_half_mm: finite("worst_half_mm", worst_half_mm)?,
        worst_mm: around(worst_half_mm),
        rss_half_mm,
        rss_mm: around(rss_half_mm),
        rss_chance: chance_inside(reading_mm, around(rss_half_mm))?,
        budget,
    })
}
