//! A family's joints between two variants, and the smallest set of parts that goes together.

use super::joint::{Joint, JointOutcome};
use super::joints::{Joints, NO_MACHINING, counted};
use super::part_set::PartSet;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};

pub(super) const CLOSE_SET: Card = Card {
    id: "interchange.close_set",
    purpose: "The smallest set of parts of one variant that goes together with the rest of a unit of another",
    equation: "S = the least set with k ∈ S and: p ∈ S, joint of p and q broken, no machining ⇒ q ∈ S; never, if that takes in a part of F",
    symbols: &[
        symbol("S", "parts", "1"),
        symbol("k", "part", "1"),
        symbol("p, q", "parts that meet in a joint", "1"),
        symbol("F", "fixed", "1"),
    ],
    range: "parts of the one variant and of the other only; parts of one variant go together as the maker built them. Least number of parts; a machining counts none",
    source: &card::DEFINITION,
    locator: "closure of a set under forced steps: every set that goes together contains it",
};

/// A joint with one part from outside: what comes of it, and what mends it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Passage {
    /// What comes of it as the parts are.
    pub outcome: JointOutcome,
    /// The machining that mends it, or [`NO_MACHINING`].
    pub machining: u16,
}

impl Passage {
    /// Broken, and no machining mends it.
    pub(super) fn is_broken(self) -> bool {
        self.outcome != JointOutcome::Holds && self.machining == NO_MACHINING
    }

    /// Broken, and machining mends it.
    pub(super) fn is_machined(self) -> bool {
        self.outcome != JointOutcome::Holds && self.machining != NO_MACHINING
    }
}

/// A joint between two variants.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Crossing {
    /// Its first part comes from outside, its second is the unit's.
    pub first: Passage,
    /// Its second part comes from outside, its first is the unit's.
    pub second: Passage,
}

impl Crossing {
    /// Nothing known yet: what a caller fills its slice with.
    pub const BLANK: Self = {
        let blank = Passage { outcome: JointOutcome::Holds, machining: NO_MACHINING };
        Self { first: blank, second: blank }
    };

    /// Whether the joint holds both ways.
    fn holds(&self) -> bool {
        self.first.outcome == JointOutcome::Holds && self.second.outcome == JointOutcome::Holds
    }
}

/// The smallest set of parts that goes together.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MatchedSet {
    /// The parts, the one asked for among them.
    pub parts: PartSet,
    /// How many.
    pub size: u16,
    /// Joints with the rest of the unit that must be machined.
    pub machined: u16,
    /// Joints with fixed parts that nothing mends: above 0, the answer is never, and the set is how far it goes.
    pub unmended: u16,
}

impl Joints<'_> {
    /// Every joint between a part of variant `from` and a unit of variant `into`: the one thing to work out before any number of
    /// [`Joints::close_set`] and [`Joints::answer`] for these two variants.
    ///
    /// * `out` — one [`Crossing`] for each joint
    /// * errors: [`Error::Count`] for another length; [`Error::OutOfRange`] for a variant that is not there;
    ///   [`Error::Inconsistent`] for one variant named twice; and what [`Joint::meet`] refuses
    pub fn crossings(&self, from: u8, into: u8, out: &mut [Crossing]) -> Result<()> {
        self.check_counts()?;
        self.variant("from", from)?;
        self.variant("into", into)?;
        if from == into {
            return Err(Error::Inconsistent { name: "from", why: "it is the unit's own variant; name another" });
        }
        counted("out", out.len(), self.joints.len(), self.joints.len())?;
        for (joint, crossing) in (0..).zip(out) {
            *crossing = Crossing { first: self.passage(joint, from, into)?, second: self.passage(joint, into, from)? };
        }
        Ok(())
    }

    /// The smallest set of parts of one variant that goes together with the rest of a unit of another, by closure.
    ///
    /// S = the least set with k ∈ S and: p ∈ S, joint of p and q broken, no machining ⇒ q ∈ S. Never, if that takes in a part of F.
    ///
    /// Why it is the smallest: let T be any set that contains k and goes together. Where p ∈ T and its joint with q is broken and
    /// cannot be machined, q must be in T, else that joint stays broken. So T contains every part that the closure takes in, one
    /// after the other: S ⊆ T. And S itself goes together, because no such joint is left at its edge. If S would take in a fixed
    /// part, then so would every T, and there is none.
    ///
    /// * `crossings` — of the two variants, from [`Joints::crossings`]; `part` — k
    /// * returns [`MatchedSet`]; [`MatchedSet::edge`] lists the joints to machine or that nothing mends
    /// * errors: [`Error::OutOfRange`] for a part that is not there; [`Error::NoAnswer`] for a fixed part; [`Error::Count`]
    ///
    /// Source: least closed set; the proof is above, and tests compare it with trying every set. Example (by hand): a shaft that
    /// forces its support, whose register in the case can be turned down, is a set of two and one machining.
    ///
    /// ```
    /// use trainwright::interchange::*;
    /// use trainwright::judge::Limits;
    /// let sides = |first: [f64; 2], second: [f64; 2]| Sides {
    ///     first: Limits { lower: first[0], upper: first[1] },
    ///     second: Limits { lower: second[0], upper: second[1] },
    /// };
    /// let (shaft, support, case) = (0, 1, 2);
    /// let joints = [
    ///     Joint { kind: JointKind::Running, first: shaft, second: support, limit: 0.14 },
    ///     Joint { kind: JointKind::Locating, first: support, second: case, limit: 0.10 },
    /// ];
    /// let sizes = [
    ///     sides([43.98, 44.00], [44.04, 44.07]), sides([44.33, 44.35], [44.39, 44.42]),
    ///     sides([117.94, 117.96], [117.98, 118.01]), sides([118.34, 118.36], [118.38, 118.41]),
    /// ];
    /// let machining = [Machining {
    ///     joint: 1, part: support, from: 0b10, to_fit: 0b01,
    ///     finish_mm: Limits { lower: 117.94, upper: 117.96 }, runout_limit_mm: 0.03,
    /// }];
    /// let family = Joints {
    ///     parts: 3,
    ///     variants: 2,
    ///     joints: &joints,
    ///     sizes: &sizes,
    ///     machining: &machining,
    ///     fixed: PartSet::of(&[case]),
    ///     alias: PartSet::EMPTY,
    /// }.checked()?;
    /// let mut crossings = [Crossing::BLANK; 2];
    /// family.crossings(1, 0, &mut crossings)?; // a late part into an early unit
    /// let set = family.close_set(&crossings, shaft)?;
    /// assert_eq!((set.size, set.machined, set.unmended), (2, 1, 0));
    /// family.crossings(0, 1, &mut crossings)?; // and the other way: nothing puts metal back on
    /// assert_eq!(family.close_set(&crossings, shaft)?.unmended, 1);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn close_set(&self, crossings: &[Crossing], part: u16) -> Result<MatchedSet> {
        self.check_counts()?;
        self.part("part", part)?;
        counted("crossings", crossings.len(), self.joints.len(), self.joints.len())?;
        if self.fixed.has(part) {
            return Err(Error::NoAnswer {
                name: "part",
                why: "it belongs to the unit itself and is never exchanged; ask which parts fit into this unit",
            });
        }
        let mut parts = PartSet::EMPTY;
        parts.insert(part);
        loop {
            let before = parts;
            for (joint, crossing) in self.joints.iter().zip(crossings) {
                if crossing.first.is_broken() && parts.has(joint.first) {
                    self.take_along(joint.second, &mut parts);
                }
                if crossing.second.is_broken() && parts.has(joint.second) {
                    self.take_along(joint.first, &mut parts);
                }
            }
            if parts == before {
                break;
            }
        }
        let mut set = MatchedSet { parts, size: parts.size(), machined: 0, unmended: 0 };
        for (joint, crossing) in self.joints.iter().zip(crossings).filter(|(_, crossing)| !crossing.holds()) {
            let Some((passage, _)) = edge_of(joint, crossing, &parts) else { continue };
            set.machined += u16::from(passage.is_machined());
            set.unmended += u16::from(passage.is_broken());
        }
        Ok(set)
    }

    /// Adds a part that a broken joint forces along, unless it is never exchanged.
    fn take_along(&self, part: u16, parts: &mut PartSet) {
        if !self.fixed.has(part) {
            parts.insert(part);
        }
    }

    /// What comes of a joint with its first part of one variant and its second of another, and the machining that mends it.
    pub(super) fn passage(&self, joint: u16, first_of: u8, second_of: u8) -> Result<Passage> {
        let outcome = self.meeting(joint, first_of, second_of)?.outcome;
        let machining = if outcome == JointOutcome::Holds {
            NO_MACHINING
        } else {
            self.mends(joint, first_of, second_of).next().transpose()?.unwrap_or(NO_MACHINING)
        };
        Ok(Passage { outcome, machining })
    }
}

impl MatchedSet {
    /// The joints between the set and the rest of the unit that do not hold as they are: to be machined, or, where nothing mends
    /// them, the reason for never.
    pub fn edge<'s>(
        &'s self,
        joints: &'s [Joint],
        crossings: &'s [Crossing],
    ) -> impl Iterator<Item = (u16, Passage)> + 's {
        (0..).zip(joints.iter().zip(crossings)).filter_map(|(place, (joint, crossing))| {
            let (passage, _) = edge_of(joint, crossing, &self.parts)?;
            (passage.outcome != JointOutcome::Holds).then_some((place, passage))
        })
    }
}

/// The passage through a joint of which one part is in the set, and the part that is not; nothing where both or neither is.
pub(super) fn edge_of(joint: &Joint, crossing: &Crossing, parts: &PartSet) -> Option<(Passage, u16)> {
    match (parts.has(joint.first), parts.has(joint.second)) {
        (true, false) => Some((crossing.first, joint.second)),
        (false, true) => Some((crossing.second, joint.first)),
        _ => None,
    }
}
