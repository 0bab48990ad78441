//! From a pattern of pressure readings to the circuits that would explain it.
//!
//! Suspects, not proof: each one predicts which readings are low, right or high, and the readings weigh it against the others.

use core::cmp::Ordering;

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, within};
use crate::judge::{Limits, Reading, chance_inside};
use crate::real::ln;
use crate::train::MAX_ELEMENTS;

pub(super) const SUSPECT_CIRCUITS: Card = Card {
    id: "hydraulic.suspect_circuits",
    purpose: "How far each circuit would explain a pattern of pressure readings",
    equation: "w_h = Π_r Σ_c P(c|h) p_c(r)/Σ_h Π_r Σ_c P(c|h) p_c(r); P(c|h) = q for what the suspect predicts, (1 − q)/2 else",
    symbols: &[
        symbol("w_h", "share", "1"),
        symbol("r", "readings", "1"),
        symbol("c", "low, right or high", "1"),
        symbol("p_c", "chance that the true pressure is that, from reading_kpa against limits_kpa", "1"),
        symbol("q", "kept: how often a suspect shows what it predicts", "1"),
    ],
    range: "every suspect as likely as any other before the readings; one fault; readings independent. A ranking of what to look at first, no proof",
    source: &card::BAYES,
    locator: "Bayes' rule with equal priors",
};

pub(super) const NEXT_READING: Card = Card {
    id: "hydraulic.next_reading",
    purpose: "The reading that is expected to separate the suspects best",
    equation: "I = H(c) − H(c|h), H = −Σ P lg₂ P",
    symbols: &[
        symbol("I", "bits", "bit"),
        symbol("c", "low, right or high", "1"),
        symbol("h", "suspect, with its share", "1"),
        symbol("P", "chance, as hydraulic.suspect_circuits", "1"),
    ],
    range: "as hydraulic.suspect_circuits; the reading itself taken as sharp",
    source: &card::INFORMATION,
    locator: "mutual information",
};

/// Kinds of suspects that are no circuit of an element.
const GENERAL: [SuspectKind; 8] = [
    SuspectKind::Nothing,
    SuspectKind::Supply,
    SuspectKind::SupplyHot,
    SuspectKind::SupplyIdle,
    SuspectKind::SupplyIdleHot,
    SuspectKind::Boost,
    SuspectKind::StuckHigh,
    SuspectKind::HighIdle,
];

/// Most suspects: the general kinds, and two for each element.
pub const MAX_PRESSURE_SUSPECTS: usize = 8 + 2 * MAX_ELEMENTS;

/// What may be wrong.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SuspectKind {
    /// Nothing: every reading right.
    Nothing = 0,
    /// Low in every reading: filter, suction, pump, or the regulator set or stuck low.
    Supply = 1,
    /// Low in every hot reading: wear that thin oil finds, in pump or valve body.
    SupplyHot = 2,
    /// Low at every idle: worn pump or air in the suction; at speed it delivers enough.
    SupplyIdle = 3,
    /// Low at every hot idle: a worn pump.
    SupplyIdleHot = 4,
    /// Low at every stall, right at idle: the boost of the regulator, its control, or a filter that chokes at flow.
    Boost = 5,
    /// High in every reading: the regulator stuck, or boosted all the time.
    StuckHigh = 6,
    /// High at every idle, right at stall: the control held at its greatest pressure.
    HighIdle = 7,
    /// Low wherever the element is applied: a leak in its circuit.
    Circuit = 8,
    /// Low wherever the element is applied and the oil is hot: seals or rings of its circuit worn.
    CircuitHot = 9,
}

/// The state of the unit at a reading.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressurePoint {
    /// Elements applied, one bit each, as in a state of the train.
    pub closed: u32,
    /// At stall or full throttle; else at idle.
    pub at_stall: bool,
    /// Fluid temperature, °C.
    pub temp_c: f64,
}

/// A pressure reading and what it should be.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureReading {
    /// The state of the unit.
    pub at: PressurePoint,
    /// What the gauge reads, kPa, with its uncertainty.
    pub reading_kpa: Reading,
    /// What it should read in that state, kPa.
    pub limits_kpa: Limits,
}

/// How readings are weighed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PatternRule {
    /// How often a suspect shows what it predicts, above 1/3 to 1 exclusive. No default: whoever weighs chooses it.
    pub kept: f64,
    /// Temperature from which the oil counts as hot, °C.
    pub hot_from_c: f64,
}

/// A suspect and its weight.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureSuspect {
    /// What may be wrong.
    pub kind: SuspectKind,
    /// Element of the circuit; 0 for a kind without one.
    pub element: u8,
    /// Weight among all suspects; they sum to 1.
    pub share: f64,
    /// Readings that show what it predicts.
    pub fits: u32,
    /// Readings that show something else.
    pub against: u32,
    /// Suspects with the same number predict the same in every reading: these readings cannot tell them apart.
    pub group: u32,
}

/// Suspects in the order of their weight.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureSuspects {
    /// The suspects; only the first `count` are used.
    pub ranked: [PressureSuspect; MAX_PRESSURE_SUSPECTS],
    /// Number of suspects.
    pub count: u32,
    /// Elements that are applied in no reading, one bit each of those asked about: nothing is said about their circuits.
    pub untested: u32,
}

/// What a reading worth taking would tell.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NextReading {
    /// Its place among the candidates.
    pub candidate: u32,
    /// What it is expected to tell, bits; 0 where no candidate tells anything.
    pub bits: f64,
}

const BLANK: PressureSuspect =
    PressureSuspect { kind: SuspectKind::Nothing, element: 0, share: 0.0, fits: 0, against: 0, group: 0 };

/// Low, right, high.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Shown {
    Low,
    Right,
    High,
}

const SHOWN: [Shown; 3] = [Shown::Low, Shown::Right, Shown::High];

impl PatternRule {
    fn checked(self) -> Result<Self> {
        let kept = finite("kept", self.kept)?;
        if kept <= 1.0 / 3.0 || kept >= 1.0 {
            return Err(Error::OutOfRange { name: "kept", value: kept, low: 1.0 / 3.0, high: 1.0 });
        }
        within("hot_from_c", self.hot_from_c, -60.0, 200.0)?;
        Ok(self)
    }

    fn predicted(self, kind: SuspectKind, element: u8, at: &PressurePoint) -> Shown {
        let hot = at.temp_c >= self.hot_from_c;
        let applied = at.closed.checked_shr(element.into()).unwrap_or(0) & 1 != 0;
        let (shows, what) = match kind {
            SuspectKind::Nothing => (false, Shown::Right),
            SuspectKind::Supply => (true, Shown::Low),
            SuspectKind::SupplyHot => (hot, Shown::Low),
            SuspectKind::SupplyIdle => (!at.at_stall, Shown::Low),
            SuspectKind::SupplyIdleHot => (!at.at_stall && hot, Shown::Low),
            SuspectKind::Boost => (at.at_stall, Shown::Low),
            SuspectKind::StuckHigh => (true, Shown::High),
            SuspectKind::HighIdle => (!at.at_stall, Shown::High),
            SuspectKind::Circuit => (applied, Shown::Low),
            SuspectKind::CircuitHot => (applied && hot, Shown::Low),
        };
        if shows { what } else { Shown::Right }
    }

    /// Chance of showing this where the suspect predicts that.
    fn chance(self, shown: Shown, predicted: Shown) -> f64 {
        if shown == predicted { self.kept } else { 0.5 * (1.0 - self.kept) }
    }
}

impl PressurePoint {
    fn checked(&self, elements: u32) -> Result<()> {
        within("temp_c", self.temp_c, -60.0, 200.0)?;
        if self.closed & !elements != 0 {
            return Err(Error::Inconsistent {
                name: "closed",
                why: "an element is applied that is not among those asked about",
            });
        }
        Ok(())
    }
}

impl PressureReading {
    /// Chances that the true pressure is low, right, high.
    fn chances(&self) -> Result<[f64; 3]> {
        let low = chance_inside(self.reading_kpa, Limits::at_most(self.limits_kpa.lower)?)?;
        let right = chance_inside(self.reading_kpa, self.limits_kpa)?;
        // On the limit itself an exact reading counts as right.
        let low = low.min(1.0 - right);
        Ok([low, right, (1.0 - low - right).max(0.0)])
    }

    fn most_likely(&self) -> Result<Shown> {
        let [low, right, high] = self.chances()?;
        Ok(if right >= low && right >= high {
            Shown::Right
        } else if low >= high {
            Shown::Low
        } else {
            Shown::High
        })
    }
}

/// How far each circuit would explain a pattern of pressure readings.
///
/// w_h ∝ Π_r Σ_c P(c|h) p_c(r), every suspect as likely as any other beforehand
///
/// * `readings` — one or more, in any ranges, at idle and stall, hot and cold; the pattern is in what differs between them
/// * `elements` — elements with a circuit, one bit each: the clutches and brakes of the train, not its one-way clutches
/// * `rule` — see [`PatternRule`]
/// * returns [`PressureSuspects`], the likeliest first; those of one `group` cannot be told apart by these readings
/// * errors: [`Error::Count`] for no readings; [`Error::Inconsistent`] for an applied element that is not among `elements`;
///   [`Error::OutOfRange`], [`Error::NotFinite`], [`Error::Reversed`]
///
/// Source: Bayes' rule (from memory of Gelman and others). That a circuit shows where its element is applied is the trade's way
/// of reading a pressure table.
pub fn suspect_circuits(readings: &[PressureReading], elements: u32, rule: PatternRule) -> Result<PressureSuspects> {
    let rule = rule.checked()?;
    let count = u32::try_from(readings.len()).unwrap_or(u32::MAX);
    if count == 0 {
        return Err(Error::Count { name: "readings", count, low: 1, high: u32::MAX });
    }
    let mut applied = 0;
    for reading in readings {
        reading.at.checked(elements)?;
        reading.chances()?;
        applied |= reading.at.closed;
    }
    let places =
        (0_u8..).take(MAX_ELEMENTS).filter(|&element| applied.checked_shr(element.into()).unwrap_or(0) & 1 != 0);
    let circuits = places.flat_map(|element| [(SuspectKind::Circuit, element), (SuspectKind::CircuitHot, element)]);
    let mut suspects = [BLANK; MAX_PRESSURE_SUSPECTS];
    let mut used = 0;
    let mut total = 0.0;
    for ((kind, element), row) in GENERAL.into_iter().map(|kind| (kind, 0)).chain(circuits).zip(suspects.iter_mut()) {
        *row = weighed(kind, element, readings, rule)?;
        total += row.share;
        used += 1;
    }
    let mut ranked =
        PressureSuspects { ranked: [BLANK; MAX_PRESSURE_SUSPECTS], count: used, untested: elements & !applied };
    let used = used as usize;
    for place in 0..used {
        let alike = |other: &PressureSuspect, own: &PressureSuspect| {
            readings.iter().all(|reading| {
                rule.predicted(other.kind, other.element, &reading.at)
                    == rule.predicted(own.kind, own.element, &reading.at)
            })
        };
        let Some(own) = suspects.get(place).copied() else { break };
        let first = suspects.iter().position(|other| alike(other, &own)).unwrap_or(place);
        // How many stand before it: a heavier one, or an equal one that comes earlier.
        let before = |(other, row): (usize, &PressureSuspect)| match row.share.total_cmp(&own.share) {
            Ordering::Greater => true,
            Ordering::Equal => other < place,
            Ordering::Less => false,
        };
        let rank = suspects.iter().enumerate().take(used).filter(|&entry| before(entry)).count();
        if let Some(row) = ranked.ranked.get_mut(rank) {
            *row = PressureSuspect { share: own.share / total, group: first as u32, ..own };
        }
    }
    Ok(ranked)
}

fn weighed(kind: SuspectKind, element: u8, readings: &[PressureReading], rule: PatternRule) -> Result<PressureSuspect> {
    let mut row = PressureSuspect { kind, element, share: 1.0, ..BLANK };
    for reading in readings {
        let predicted = rule.predicted(kind, element, &reading.at);
        let chances = reading.chances()?;
        row.share *= SHOWN.iter().zip(chances).map(|(&shown, p)| rule.chance(shown, predicted) * p).sum::<f64>();
        if reading.most_likely()? == predicted {
            row.fits += 1;
        } else {
            row.against += 1;
        }
    }
    Ok(row)
}

/// The reading that is expected to separate the suspects best.
///
/// I = H(c) − H(c|h)
///
/// * `suspects` — from [`suspect_circuits`]; `candidates` — states in which a reading could be taken, one or more
/// * `rule` — as for the suspects
/// * returns [`NextReading`]; the first of equals
/// * errors: [`Error::Count`] for no candidates; [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: mutual information (Cover and Thomas, from memory).
pub fn next_reading(
    suspects: &PressureSuspects,
    candidates: &[PressurePoint],
    rule: PatternRule,
) -> Result<NextReading> {
    let rule = rule.checked()?;
    let count = u32::try_from(candidates.len()).unwrap_or(u32::MAX);
    if count == 0 {
        return Err(Error::Count { name: "candidates", count, low: 1, high: u32::MAX });
    }
    let surprise = |p: f64| if p > 0.0 { -p * ln(p) / core::f64::consts::LN_2 } else { 0.0 };
    let other = 0.5 * (1.0 - rule.kept);
    let given_suspect = surprise(rule.kept) + 2.0 * surprise(other);
    let mut best = NextReading { candidate: 0, bits: 0.0 };
    for (candidate, at) in (0..count).zip(candidates) {
        at.checked(u32::MAX)?;
        let expected = SHOWN.iter().map(|&shown| {
            let used = suspects.ranked.iter().take(suspects.count as usize);
            surprise(used.map(|row| row.share * rule.chance(shown, rule.predicted(row.kind, row.element, at))).sum())
        });
        let bits = expected.sum::<f64>() - given_suspect;
        // Below this it is rounding.
        if bits > best.bits + 1e-12 {
            best = NextReading { candidate, bits };
        }
    }
    Ok(best)
}
