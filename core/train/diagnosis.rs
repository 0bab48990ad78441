//! What a dead or stuck element shows, and which element a complaint points to.

use super::{Element, ElementKind, Fraction, Load, MAX_ELEMENTS, State, StateKind, Train};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::judge::Reading;
use crate::real::abs;

pub(super) const SYMPTOM: Card = Card {
    id: "train.symptom",
    purpose: "What a commanded gear does when one element is dead or stuck",
    equation: "state of (closed − dead) or (closed + stuck), compared with the state of closed, in drive and in coast",
    symbols: &[
        symbol("closed", "commanded.closed and its one-way clutches", "mask"),
        symbol("dead, stuck", "fault", "element"),
    ],
    range: "one fault at a time; a dead element carries nothing, a stuck one never lets go",
    source: &card::DEFINITION,
    locator: "definitions of the two faults",
};

pub(super) const DIAGNOSE: Card = Card {
    id: "train.diagnose",
    purpose: "Elements ranked by how well their failure explains what was seen",
    equation: "rank by fewest (missed + contradicted), then most matched",
    symbols: &[
        symbol("matched", "faults seen that the failure shows", "1"),
        symbol("missed", "faults seen in gears that the failure leaves alone", "1"),
        symbol("contradicted", "gears in which the failure would show something else", "1"),
    ],
    range: "a ranking, not a probability: a controller in a substitute program, or two faults at once, change the picture",
    source: &card::DEFINITION,
    locator: "comparison of the seen with the computed",
};

/// A gear as it is commanded: elements that are applied, and one-way clutches that are meant to hold.
#[repr(C)]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Commanded {
    /// Mask of the elements that are applied.
    pub closed: u32,
    /// Mask of the one-way clutches that hold it under drive.
    pub one_way: u32,
}

/// How an element fails.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Failure {
    /// It carries nothing.
    Dead,
    /// It never lets go; a one-way clutch is seized.
    Stuck,
}

/// One failed element.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ElementFault {
    /// Number of the element.
    pub element: u8,
    /// How it fails.
    pub failure: Failure,
}

/// What the vehicle does in a commanded gear.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Response {
    /// What the gear should do.
    AsCommanded,
    /// A ratio, but another one.
    OtherRatio,
    /// Nothing: no drive, or no engine braking where the gear should brake.
    NoDrive,
    /// Drive where there should be none: neutral creeps, or the engine brakes where the gear should coast.
    Drives,
    /// Input, output or both are held: the elements fight until one slips.
    TiedUp,
}

/// What a commanded gear does with a failed element.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Symptom {
    /// Under drive.
    pub drive: Response,
    /// When the vehicle drives the input.
    pub coast: Response,
    /// State under drive.
    pub kind: StateKind,
    /// Ratio shown under drive; open where the state is not a gear.
    pub ratio: Fraction,
}

/// What a fault does to a list of gears: masks of places in the list, bit 0 the first gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Signature {
    /// The fault.
    pub fault: ElementFault,
    /// Gears without drive.
    pub no_drive: u32,
    /// Gears that drive but no longer brake.
    pub no_braking: u32,
    /// Gears that show another ratio.
    pub other_ratio: u32,
    /// Neutral that creeps.
    pub creeps: u32,
    /// Gears that brake where they should coast.
    pub brakes: u32,
    /// Gears, or neutral, that tie up.
    pub tied_up: u32,
}

impl Signature {
    /// Gears that are lost to this fault, in drive or in braking.
    #[must_use]
    pub fn lost(&self) -> u32 {
        self.no_drive | self.no_braking | self.other_ratio | self.tied_up
    }
}

/// What was seen in one commanded gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Observation {
    /// The gear as commanded.
    pub commanded: Commanded,
    /// [`Load::Drive`] or [`Load::Coast`].
    pub load: Load,
    /// What it did. Report gears that were tried and are right, too: they speak against suspects.
    pub seen: Response,
    /// Ratio measured under drive; value 0 where none was.
    pub ratio: Reading,
}

/// One suspect of a [`Diagnosis`].
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Suspect {
    /// The fault.
    pub fault: ElementFault,
    /// 1 for the first; suspects that explain the observations equally well share a rank.
    pub rank: u8,
    /// Faults seen that this one shows.
    pub matched: u8,
    /// Faults seen in gears that this one leaves alone.
    pub missed: u8,
    /// Gears in which this one would show something else than was seen.
    pub contradicted: u8,
    /// Gears seen to be right that this one leaves right.
    pub agreed: u8,
}

/// Most observations of one diagnosis.
pub const MAX_OBSERVATIONS: usize = 64;
/// Most suspects: every element dead, every element stuck.
pub const MAX_SUSPECTS: usize = 2 * MAX_ELEMENTS;

/// Suspects, best explanation first. Only the first `count` are used.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Diagnosis {
    /// Suspects by rank.
    pub suspects: [Suspect; MAX_SUSPECTS],
    /// Number of suspects.
    pub count: u32,
}

impl Diagnosis {
    /// The suspects that are in use.
    #[must_use]
    pub fn ranked(&self) -> &[Suspect] {
        self.suspects.get(..self.count as usize).unwrap_or_default()
    }

    /// Adds a suspect at its place. No sort of the standard library: those can panic on an inconsistent order.
    fn insert(&mut self, mut suspect: Suspect) {
        let place = |suspect: &Suspect| (suspect.order(), suspect.fault.element, suspect.fault.failure as u8);
        for slot in self.suspects.iter_mut().take(self.count as usize) {
            if place(&suspect) < place(slot) {
                core::mem::swap(slot, &mut suspect);
            }
        }
        if let Some(slot) = self.suspects.get_mut(self.count as usize) {
            *slot = suspect;
            self.count += 1;
        }
    }
}

impl Suspect {
    /// Suspects of the same order explain the observations equally well.
    fn order(&self) -> (u8, u8) {
        (self.missed + self.contradicted, u8::MAX - self.matched)
    }
}

/// Whether a measured ratio may be the computed one: beyond three standard uncertainties it differs for certain.
pub(super) fn same_ratio(measured: Reading, shown: f64) -> bool {
    abs(measured.value - shown) <= 3.0 * measured.u + 1e-9 * abs(shown)
}

impl Train {
    /// What a commanded gear does with a failed element.
    ///
    /// * `commanded` — the gear, or neutral; `fault` — an element of this train
    /// * returns the response in drive and in coast, and what is shown under drive
    /// * errors: [`Error::OutOfRange`] for an element that the train does not have; those of [`Train::solve`]
    ///
    /// Source: definition of the faults (derived). Example in the tests: the signature matrix of the demonstration train.
    pub fn symptom(&self, commanded: Commanded, fault: ElementFault) -> Result<Symptom> {
        let (healthy, failed) = (self.engaged(commanded, None)?, self.engaged(commanded, Some(fault))?);
        // The vehicle keeps its direction of travel: a one-way clutch cannot hold a ratio of the other sign while it coasts.
        let turned = healthy.drive.ratio.signum() * failed.coast.ratio.signum() < 0;
        let by_one_way = failed.coast.closed & self.one_way_mask() != 0;
        Ok(Symptom {
            drive: response(&healthy.drive, &failed.drive),
            coast: if turned && by_one_way { Response::NoDrive } else { response(&healthy.coast, &failed.coast) },
            kind: failed.drive.kind,
            ratio: failed.drive.ratio,
        })
    }

    /// What a fault does to each gear of a list.
    ///
    /// * `gears` — up to 32 commanded gears, neutral among them if its creep is asked for; `fault` — an element of this train
    /// * errors: [`Error::Count`]; those of [`Train::symptom`]
    pub fn signature(&self, gears: &[Commanded], fault: ElementFault) -> Result<Signature> {
        let mut signature =
            Signature { fault, no_drive: 0, no_braking: 0, other_ratio: 0, creeps: 0, brakes: 0, tied_up: 0 };
        for (bit, &gear) in bits(gears.len())?.zip(gears) {
            let symptom = self.symptom(gear, fault)?;
            match (symptom.drive, symptom.coast) {
                (Response::TiedUp, _) => signature.tied_up |= bit,
                (Response::OtherRatio, _) => signature.other_ratio |= bit,
                (Response::NoDrive, _) => signature.no_drive |= bit,
                (Response::Drives, _) => signature.creeps |= bit,
                (Response::AsCommanded, Response::NoDrive) => signature.no_braking |= bit,
                (Response::AsCommanded, Response::Drives) => signature.brakes |= bit,
                (Response::AsCommanded, Response::TiedUp) => signature.tied_up |= bit,
                (Response::AsCommanded, Response::OtherRatio) => signature.other_ratio |= bit,
                (Response::AsCommanded, Response::AsCommanded) => {}
            }
        }
        Ok(signature)
    }

    /// Ranks every element, dead and stuck, by how well it explains what was seen.
    ///
    /// Rank by fewest (missed + contradicted), then most matched. Equal counts share a rank: then
    /// [`Train::next_gear`] names the gear to try next.
    ///
    /// * `observations` — 1 to [`MAX_OBSERVATIONS`]; a measured ratio further than 3 u from the computed one contradicts
    /// * returns the suspects that explain at least one fault that was seen, best first
    /// * errors: [`Error::Count`], [`Error::Inconsistent`] for an unloaded observation, [`Error::OutOfRange`] for a bad reading
    ///
    /// Source: comparison of the seen with the computed (derived).
    pub fn diagnose(&self, observations: &[Observation]) -> Result<Diagnosis> {
        if !(1..=MAX_OBSERVATIONS).contains(&observations.len()) {
            let count = u32::try_from(observations.len()).unwrap_or(u32::MAX);
            return Err(Error::Count { name: "observations", count, low: 1, high: MAX_OBSERVATIONS as u32 });
        }
        let none = Suspect {
            fault: ElementFault { element: 0, failure: Failure::Dead },
            rank: 0,
            matched: 0,
            missed: 0,
            contradicted: 0,
            agreed: 0,
        };
        let mut diagnosis = Diagnosis { suspects: [none; MAX_SUSPECTS], count: 0 };
        for element in 0..self.elements().len() as u8 {
            for failure in [Failure::Dead, Failure::Stuck] {
                let suspect = self.suspect(ElementFault { element, failure }, observations)?;
                if suspect.matched > 0 {
                    diagnosis.insert(suspect);
                }
            }
        }
        let (mut rank, mut last) = (0, None);
        for (place, suspect) in (1_u8..).zip(diagnosis.suspects.iter_mut().take(diagnosis.count as usize)) {
            if last != Some(suspect.order()) {
                (rank, last) = (place, Some(suspect.order()));
            }
            suspect.rank = rank;
        }
        Ok(diagnosis)
    }

    /// The gears of a list in which two faults show different things, as a mask of places in the list.
    ///
    /// * `gears` — up to 32; `one`, `other` — elements of this train
    /// * errors: [`Error::Count`]; those of [`Train::symptom`]
    pub fn gears_that_tell_faults(&self, gears: &[Commanded], one: ElementFault, other: ElementFault) -> Result<u32> {
        let mut mask = 0;
        for (bit, &gear) in bits(gears.len())?.zip(gears) {
            if self.symptom(gear, one)? != self.symptom(gear, other)? {
                mask |= bit;
            }
        }
        Ok(mask)
    }

    fn suspect(&self, fault: ElementFault, observations: &[Observation]) -> Result<Suspect> {
        let mut suspect = Suspect { fault, rank: 0, matched: 0, missed: 0, contradicted: 0, agreed: 0 };
        for observation in observations {
            let symptom = self.symptom(observation.commanded, fault)?;
            let expected = match observation.load {
                Load::Drive => symptom.drive,
                Load::Coast => symptom.coast,
                Load::None => {
                    return Err(Error::Inconsistent {
                        name: "observation.load",
                        why: "say whether it was drive or coast",
                    });
                }
            };
            let measured = Reading::new(observation.ratio.value, observation.ratio.u)?;
            let other_ratio = |shown: f64| measured.value != 0.0 && !same_ratio(measured, shown);
            let contradicts = expected != observation.seen
                || (observation.load == Load::Drive && symptom.ratio.value().is_some_and(other_ratio));
            *match (observation.seen, expected) {
                (Response::AsCommanded, Response::AsCommanded) if !contradicts => &mut suspect.agreed,
                (seen, Response::AsCommanded) if seen != Response::AsCommanded => &mut suspect.missed,
                _ if contradicts => &mut suspect.contradicted,
                _ => &mut suspect.matched,
            } += 1;
        }
        Ok(suspect)
    }

    #[inline(never)]
    fn shown(&self, closed: u32, load: Load) -> Result<Shown> {
        let State { kind, ratio, closed, .. } = self.resolve(closed, load)?;
        Ok(Shown { kind, ratio, closed })
    }

    /// A commanded gear in drive and in coast, with or without a failed element.
    fn engaged(&self, commanded: Commanded, fault: Option<ElementFault>) -> Result<Engaged> {
        let mut train = *self;
        let mut closed = commanded.closed;
        if let Some(ElementFault { element, failure }) = fault {
            let last = f64::from(self.element_count) - 1.0;
            let unknown = Error::OutOfRange { name: "element", value: element.into(), low: 0.0, high: last };
            if element >= self.element_count {
                return Err(unknown);
            }
            let bit = 1_u32.checked_shl(element.into()).ok_or(unknown)?;
            match failure {
                Failure::Stuck => closed |= bit,
                Failure::Dead => {
                    closed &= !bit;
                    // A dead one-way clutch never closes by itself: as good as a clutch that nobody applies.
                    if let Some(element) = train.elements.get_mut(usize::from(element))
                        && element.kind == ElementKind::OneWay
                    {
                        *element = Element::clutch(element.first, element.second);
                    }
                }
            }
        }
        Ok(Engaged { drive: train.shown(closed, Load::Drive)?, coast: train.shown(closed, Load::Coast)? })
    }
}

struct Engaged {
    drive: Shown,
    coast: Shown,
}

/// What a driver can notice of a state; a whole state is large for a small stack.
struct Shown {
    kind: StateKind,
    ratio: Fraction,
    closed: u32,
}

fn response(healthy: &Shown, failed: &Shown) -> Response {
    match (healthy.kind, failed.kind) {
        (StateKind::Gear, StateKind::Gear) if healthy.ratio != failed.ratio => Response::OtherRatio,
        (before, after) if before == after => Response::AsCommanded,
        (_, StateKind::Gear) => Response::Drives,
        (_, StateKind::Neutral) => Response::NoDrive,
        _ => Response::TiedUp,
    }
}

/// The bits of a list of gears.
pub(super) fn bits(count: usize) -> Result<impl Iterator<Item = u32>> {
    if count > u32::BITS as usize {
        let count = u32::try_from(count).unwrap_or(u32::MAX);
        return Err(Error::Count { name: "gears", count, low: 0, high: u32::BITS });
    }
    Ok((0..u32::BITS).map(|bit| 1_u32 << bit))
}
