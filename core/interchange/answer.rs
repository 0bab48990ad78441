//! Singly, machined, as a set, never or not known: for one part, or for a whole family.

use core::fmt;

use super::closure::Crossing;
use super::joint::JointOutcome;
use super::joints::{Joints, counted};
use crate::card::{self, Card, symbol};
use crate::error::Result;

pub(super) const ANSWER: Card = Card {
    id: "interchange.answer",
    purpose: "Whether a part of one variant goes into a unit of another singly, machined, only as a set, never, or is not known",
    equation: "no joint: not known, or singly where an alias says so; all joints hold: singly; S takes in F: never; |S| > 1: set; else machined",
    symbols: &[
        symbol("S", "the matched set, interchange.close_set", "1"),
        symbol("|S|", "size", "1"),
        symbol("F", "fixed", "1"),
    ],
    range: "per part at its seat and per direction; the other direction is another question. A part without a joint in the record is not known",
    source: &card::DEFINITION,
    locator: "the words are defined here",
};

/// How a part goes into a unit of another variant.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Relation {
    /// The record has no joint of this part: nothing is known, which is not the same as singly.
    NotKnown = 0,
    /// Alone, as it is.
    Singly = 1,
    /// Alone, after machining.
    Machined = 2,
    /// Only together with other parts of its variant, perhaps after machining.
    Set = 3,
    /// Not at all: nothing mends a joint with what belongs to the unit.
    Never = 4,
    /// It belongs to the unit itself and is never exchanged.
    Fixed = 5,
}

impl fmt::Display for Relation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::NotKnown => "not known",
            Self::Singly => "singly",
            Self::Machined => "after machining",
            Self::Set => "only as a set",
            Self::Never => "never",
            Self::Fixed => "belongs to the unit",
        })
    }
}

/// What became of the question whether a part goes into a unit of another variant.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The part.
    pub part: u16,
    /// Its variant.
    pub from: u8,
    /// The unit's variant.
    pub into: u8,
    /// How it goes in.
    pub relation: Relation,
    /// What comes of putting it in alone, as it is: the outcome of its worst joint.
    pub alone: JointOutcome,
    /// Joints of the part.
    pub joints: u16,
    /// How many of them do not hold when it is put in alone, as it is.
    pub broken: u16,
    /// Parts of the matched set; 0 where there is no such question.
    pub size: u16,
    /// Joints of the set that must be machined.
    pub machined: u16,
    /// Joints of the set that nothing mends.
    pub unmended: u16,
}

impl Answer {
    /// Nothing known yet: what a caller fills its slice with.
    pub const BLANK: Self = Self {
        part: 0,
        from: 0,
        into: 0,
        relation: Relation::NotKnown,
        alone: JointOutcome::Holds,
        joints: 0,
        broken: 0,
        size: 0,
        machined: 0,
        unmended: 0,
    };
}

impl Joints<'_> {
    /// How a part of one variant goes into a unit of another.
    ///
    /// No joint: not known, or singly where an alias says so. All joints hold: singly. S takes in F: never. |S| > 1: set; else
    /// machined.
    ///
    /// * `crossings` — of these two variants, from [`Joints::crossings`]; `part`, `from`, `into` — the question
    /// * returns [`Answer`]; the set itself is [`Joints::close_set`]
    /// * errors: [`crate::Error::OutOfRange`] for a part that is not there, [`crate::Error::Count`]
    ///
    /// Source: the words are defined here. Example: [`Joints::close_set`] has a family with its crossings.
    pub fn answer(&self, crossings: &[Crossing], part: u16, from: u8, into: u8) -> Result<Answer> {
        self.part("part", part)?;
        let (mut joints, mut broken, mut alone) = (0, 0, JointOutcome::Holds);
        for (joint, crossing) in self.joints.iter().zip(crossings) {
            let passage = if joint.first == part {
                crossing.first
            } else if joint.second == part {
                crossing.second
            } else {
                continue;
            };
            joints += 1;
            broken += u16::from(passage.outcome != JointOutcome::Holds);
            alone = alone.with(passage.outcome);
        }
        let mut answer = Answer { part, from, into, alone, joints, broken, ..Answer::BLANK };
        if self.fixed.has(part) {
            answer.relation = Relation::Fixed;
            return Ok(answer);
        }
        if joints == 0 && !self.alias.has(part) {
            return Ok(answer);
        }
        if broken == 0 {
            (answer.relation, answer.size) = (Relation::Singly, 1);
            return Ok(answer);
        }
        let set = self.close_set(crossings, part)?;
        (answer.size, answer.machined, answer.unmended) = (set.size, set.machined, set.unmended);
        answer.relation = if set.unmended > 0 {
            Relation::Never
        } else if set.size > 1 {
            Relation::Set
        } else {
            Relation::Machined
        };
        Ok(answer)
    }

    /// The answers for every part and every ordered pair of variants.
    ///
    /// * `crossings` — room for one [`Crossing`] per joint; `out` — parts · variants · (variants − 1) answers, by variant of the
    ///   part, then variant of the unit, then part
    /// * errors: [`crate::Error::Count`] for another length, and as [`Joints::crossings`]
    pub fn matrix(&self, crossings: &mut [Crossing], out: &mut [Answer]) -> Result<()> {
        let pairs = usize::from(self.variants) * usize::from(self.variants.saturating_sub(1));
        let wanted = usize::from(self.parts) * pairs;
        counted("out", out.len(), wanted, wanted)?;
        let variants = 0..self.variants;
        let pairs = variants.clone().flat_map(|from| variants.clone().map(move |into| (from, into)));
        let blocks = out.chunks_mut(usize::from(self.parts.max(1)));
        for ((from, into), block) in pairs.filter(|(from, into)| from != into).zip(blocks) {
            self.crossings(from, into, crossings)?;
            for (part, answer) in (0..).zip(block) {
                *answer = self.answer(crossings, part, from, into)?;
            }
        }
        Ok(())
    }
}
