//! Which gear to try next, so that the leading suspects of a diagnosis come apart.

use super::diagnosis::{Commanded, ElementFault, MAX_SUSPECTS, Observation, Response, same_ratio};
use super::{Fraction, Load, Train};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::judge::Reading;
use crate::real::ln;

pub(super) const SEEN_RATIO: Card = Card {
    id: "train.seen_ratio",
    purpose: "What a ratio that was measured in a commanded gear says about it",
    equation: "as commanded if |r − i| ≤ 3·u_r, else another ratio",
    symbols: &[symbol("r, u_r", "ratio", "1"), symbol("i", "ratio of the gear as commanded, exact", "1")],
    range: "no slip: a ratio that creeps while it is measured is slip, and no other gear",
    source: &card::DEFINITION,
    locator: "comparison of the seen with the computed",
};

pub(super) const NEXT_GEAR: Card = Card {
    id: "train.next_gear",
    purpose: "The gear whose outcome tells most about suspects that explain the observations equally well",
    equation: "I = log₂ n − Σ (n_k/n)·log₂ n_k, greatest; first the gears in which no suspect ties up, drive before coast",
    symbols: &[
        symbol("I", "information_bit", "bit"),
        symbol("n", "suspects", "1"),
        symbol("n_k", "suspects that show the same k-th outcome in the gear", "1"),
    ],
    range: "the suspects count as equally likely; a gear ties up the elements only if a suspect is true, so such gears come last",
    source: &card::INFORMATION,
    locator: "entropy of a partition into equally likely cases",
};

/// Gears that were tried, as masks of places in a list of gears: bit 0 is the first.
#[repr(C)]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct TriedGears {
    /// Under drive.
    pub drive: u32,
    /// While the vehicle drives the input.
    pub coast: u32,
}

/// The gear to try next.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NextGear {
    /// What its outcome tells, bit: 1 halves the suspects.
    pub information_bit: f64,
    /// Place in the list of gears.
    pub gear: u32,
    /// Different outcomes among the suspects, 2 or more.
    pub outcomes: u32,
    /// Suspects with which the gear would tie up: try it standing, on the lift, or not at all.
    pub tie_ups: u32,
    /// Whether to look under drive or in coast.
    pub load: Load,
}

/// What one suspect shows in one gear, under one load.
type Shown = (Response, Fraction);

impl Train {
    /// What a ratio that was measured in a commanded gear says about it.
    ///
    /// as commanded if |r − i| ≤ 3·u_r, else another ratio
    ///
    /// * `commanded` — a gear of this train; `ratio` — r with u_r, measured under drive, without slip
    /// * returns the observation for [`Train::diagnose`]
    /// * errors: [`Error::Missing`] where what is commanded is no gear; [`Error::NotFinite`], [`Error::OutOfRange`] for a bad
    ///   reading; those of [`Train::solve`]
    ///
    /// Source: comparison of the seen with the computed (derived). Example in the tests: 4.252 in third gear.
    pub fn seen_ratio(&self, commanded: Commanded, ratio: Reading) -> Result<Observation> {
        let ratio = Reading::new(ratio.value, ratio.u)?;
        let gear = self.resolve(commanded.closed, Load::Drive)?;
        let exact = gear.ratio.value().ok_or(Error::Missing {
            name: "commanded",
            why: "what is commanded is no gear, so no ratio can be right; say what it did instead",
        })?;
        let seen = if same_ratio(ratio, exact) { Response::AsCommanded } else { Response::OtherRatio };
        Ok(Observation { commanded, load: Load::Drive, seen, ratio })
    }

    /// The gear whose outcome tells most about suspects that explain the observations equally well.
    ///
    /// I = log₂ n − Σ (n_k/n)·log₂ n_k, greatest; first the gears in which no suspect ties up, drive before coast
    ///
    /// * `gears` — up to 32 that can be commanded; `tried` — those that were; `suspects` — 2 to 32, such as those of rank 1
    /// * returns [`NextGear`]; [`Train::symptom`] says what each suspect shows there
    /// * errors: [`Error::Count`]; [`Error::NoAnswer`] where no gear that is left tells any of them apart; those of
    ///   [`Train::symptom`]
    ///
    /// Source: T. M. Cover and J. A. Thomas, entropy (from memory). Example in the tests: fifth without drive leaves B1 and C2 of
    /// the demonstration unit; second tells, which B1 loses and C2 leaves right.
    pub fn next_gear(&self, gears: &[Commanded], tried: TriedGears, suspects: &[ElementFault]) -> Result<NextGear> {
        let count = u32::try_from(suspects.len()).unwrap_or(u32::MAX);
        if !(2..=MAX_SUSPECTS as u32).contains(&count) {
            return Err(Error::Count { name: "suspects", count, low: 2, high: MAX_SUSPECTS as u32 });
        }
        let mut best: Option<NextGear> = None;
        for ((place, bit), &gear) in (0_u32..).zip(super::diagnosis::bits(gears.len())?).zip(gears) {
            if tried.drive & tried.coast & bit != 0 {
                continue;
            }
            let mut shown = [[(Response::AsCommanded, Fraction::OPEN); 2]; MAX_SUSPECTS];
            let mut tie_ups = 0;
            for (slot, &suspect) in shown.iter_mut().zip(suspects) {
                let symptom = self.symptom(gear, suspect)?;
                *slot = [(symptom.drive, symptom.ratio), (symptom.coast, Fraction::OPEN)];
                tie_ups += u32::from(symptom.drive == Response::TiedUp || symptom.coast == Response::TiedUp);
            }
            let shown = shown.get(..suspects.len()).unwrap_or(&shown);
            for (load, done) in [(Load::Drive, tried.drive), (Load::Coast, tried.coast)] {
                if done & bit != 0 {
                    continue;
                }
                let (information_bit, outcomes) =
                    told(shown.iter().map(|[drive, coast]| if load == Load::Drive { *drive } else { *coast }));
                let found = NextGear { information_bit, gear: place, outcomes, tie_ups, load };
                if outcomes > 1 && best.is_none_or(|best| found.before(&best)) {
                    best = Some(found);
                }
            }
        }
        best.ok_or(Error::NoAnswer {
            name: "next_gear",
            why: "no gear that is left shows anything else with one suspect than with another; look at the parts, or measure \
                  pressure at the elements",
        })
    }
}

impl NextGear {
    fn before(&self, other: &Self) -> bool {
        let order = |next: &Self| (next.tie_ups > 0, next.load != Load::Drive);
        if order(self) == order(other) {
            self.information_bit > other.information_bit + 1e-9
        } else {
            order(self) < order(other)
        }
    }
}

/// Information of a partition of equally likely cases, and the number of its parts.
fn told(shown: impl Iterator<Item = Shown> + Clone) -> (f64, u32) {
    let (mut cases, mut ln_parts, mut outcomes) = (0.0, 0.0, 0);
    for (place, outcome) in shown.clone().enumerate() {
        cases += 1.0;
        let alike = || shown.clone().enumerate().filter(|(_, other)| *other == outcome);
        let part = alike().count() as f64;
        ln_parts += ln(part); // Σ over the cases of ln n_k, which is Σ n_k·ln n_k over the parts
        outcomes += u32::from(alike().next().is_some_and(|(first, _)| first == place));
    }
    ((ln(cases) - ln_parts / cases) * core::f64::consts::LOG2_E, outcomes)
}
