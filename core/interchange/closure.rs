//! A family's joints between two variants, and the smallest set of parts that goes together.

use super::joint::{Joint, JointOutcome, Meeting, Sides};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, within};
use crate::judge::Limits;

/// Parts that a family may have.
pub const MAX_PARTS: usize = 256;
/// Variants that a family may have: as many as a mask has bits.
pub const MAX_VARIANTS: usize = 32;
/// Stands where no machining mends a joint.
pub const NO_MACHINING: u16 = u16::MAX;

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

/// A set of parts.
#[repr(C)]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PartSet {
    /// Bit n of word w stands for part 64 w + n.
    pub words: [u64; 4],
}

const _: () = assert!(MAX_PARTS == 4 * 64, "a bit for each part");

impl PartSet {
    /// No part.
    pub const EMPTY: Self = Self { words: [0; 4] };

    /// These parts; a number of [`MAX_PARTS`] or more is no part and is left out.
    #[must_use]
    pub fn of(parts: &[u16]) -> Self {
        let mut set = Self::EMPTY;
        parts.iter().for_each(|&part| set.insert(part));
        set
    }

    /// Whether the part is in the set.
    #[must_use]
    pub fn has(&self, part: u16) -> bool {
        self.words.get(usize::from(part / 64)).is_some_and(|word| word >> (part % 64) & 1 == 1)
    }

    /// Adds a part.
    pub fn insert(&mut self, part: u16) {
        if let Some(word) = self.words.get_mut(usize::from(part / 64)) {
            *word |= 1 << (part % 64);
        }
    }

    pub(super) fn remove(&mut self, part: u16) {
        if let Some(word) = self.words.get_mut(usize::from(part / 64)) {
            *word &= !(1 << (part % 64));
        }
    }

    /// The parts, rising.
    pub fn parts(&self) -> impl Iterator<Item = u16> + '_ {
        (0..MAX_PARTS as u16).filter(|&part| self.has(part))
    }

    /// How many parts.
    #[must_use]
    pub fn size(&self) -> u16 {
        self.words.iter().map(|word| word.count_ones() as u16).sum()
    }
}

/// A permitted change of one part of a fit.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Machining {
    /// The fit that it mends.
    pub joint: u16,
    /// The part that is machined: the first or the second of that fit.
    pub part: u16,
    /// Variants whose part may be machined, bit n for variant n.
    pub from: u32,
    /// Variants whose mating part it then fits.
    pub to_fit: u32,
    /// Finished diameter, mm.
    pub finish_mm: Limits,
    /// Greatest run-out allowed afterwards, mm.
    pub runout_limit_mm: f64,
}

/// How the parts of a family meet: slices that the caller owns.
#[derive(Clone, Copy, Debug)]
pub struct Joints<'a> {
    /// Parts, at most [`MAX_PARTS`].
    pub parts: u16,
    /// Variants, 2 to [`MAX_VARIANTS`].
    pub variants: u8,
    /// The joints.
    pub joints: &'a [Joint],
    /// Sizes of each joint in each variant: those of joint j in variant v stand at j · variants + v.
    pub sizes: &'a [Sides],
    /// The only machining permitted.
    pub machining: &'a [Machining],
    /// Parts that belong to the unit itself and are never exchanged: its case.
    pub fixed: PartSet,
    /// Parts whose numbers differ and whose fit is the same.
    pub alias: PartSet,
}

/// A joint with one part from outside: what comes of it, and what mends it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Passage {
    /// What comes of it as the parts are.
    pub outcome: JointOutcome,
    /// The machining that mends it, or [`NO_MACHINING`].
    pub machining: u16,
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

impl<'a> Joints<'a> {
    /// These joints, if numbers, sizes and machining fit together.
    ///
    /// * errors: [`Error::Count`] for too many parts or variants or a wrong number of sizes; [`Error::OutOfRange`] for the number
    ///   of a part or joint that is not there; [`Error::Inconsistent`] for a part that meets itself or a machining of a part that
    ///   is not in its fit; and what [`Joint::meet`] refuses
    pub fn checked(self) -> Result<Self> {
        self.check_counts()?;
        for (joint, sizes) in self.joints.iter().zip(self.sizes.chunks(usize::from(self.variants))) {
            self.part("first", joint.first)?;
            self.part("second", joint.second)?;
            if joint.first == joint.second {
                return Err(Error::Inconsistent {
                    name: "joint",
                    why: "a part meets itself; give its two seats two numbers",
                });
            }
            for own in sizes {
                joint.meet(*own, *own)?;
            }
        }
        for rule in self.machining {
            let joint = self.joint(rule.joint)?;
            if joint.other(rule.part).is_none() || !joint.is_fit() {
                return Err(Error::Inconsistent {
                    name: "machining",
                    why: "the part is not the shaft or bore of that fit; name one of the two",
                });
            }
            crate::error::ordered("finish_mm", rule.finish_mm.lower, rule.finish_mm.upper)?;
            crate::error::positive("finish_mm", rule.finish_mm.lower)?;
            within("runout_limit_mm", rule.runout_limit_mm, 0.0, f64::MAX)?;
        }
        Ok(self)
    }

    pub(super) fn check_counts(&self) -> Result<()> {
        counted("parts", self.parts.into(), 1, MAX_PARTS)?;
        counted("variants", self.variants.into(), 2, MAX_VARIANTS)?;
        let joints = counted("joints", self.joints.len(), 0, usize::from(u16::MAX))?;
        let sizes = joints * usize::from(self.variants);
        counted("sizes", self.sizes.len(), sizes, sizes)?;
        counted("machining", self.machining.len(), 0, usize::from(NO_MACHINING))?;
        Ok(())
    }

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

    /// What a matched set costs with its machining.
    ///
    /// * `set`, `crossings` — of the same two variants; `part_prices`, `machining_prices` — one for each, NaN where it is not
    ///   known; empty where none is
    /// * returns [`Price`]: what is not known is counted, not taken as 0
    /// * errors: [`Error::Count`] for lists of another length, [`Error::OutOfRange`] for a price below 0
    pub fn price(
        &self,
        set: &MatchedSet,
        crossings: &[Crossing],
        part_prices: &[f64],
        machining_prices: &[f64],
    ) -> Result<Price> {
        price_list("part_prices", part_prices, self.parts.into())?;
        price_list("machining_prices", machining_prices, self.machining.len())?;
        counted("crossings", crossings.len(), self.joints.len(), self.joints.len())?;
        let mut price = Price::NONE;
        set.parts.parts().for_each(|part| price.add(part_prices, part.into()));
        for (_, passage) in set.edge(self.joints, crossings).filter(|(_, passage)| passage.is_machined()) {
            price.add(machining_prices, passage.machining.into());
        }
        Ok(price)
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

    /// What comes of a joint with its first part of one variant and its second of another. Parts of one variant hold.
    pub fn meeting(&self, joint: u16, first_of: u8, second_of: u8) -> Result<Meeting> {
        let meeting = self.joint(joint)?.meet(self.sides(joint, first_of)?, self.sides(joint, second_of)?)?;
        Ok(if first_of == second_of { Meeting { outcome: JointOutcome::Holds, ..meeting } } else { meeting })
    }

    /// What comes of a joint once a machining was done, with its first part of one variant and its second of another.
    ///
    /// * `machining` — the number of the rule; `first_of`, `second_of` — variants of the two parts, one of them machined
    /// * errors: [`Error::NoAnswer`] where the rule does not permit these variants, [`Error::OutOfRange`] for what is not there
    pub fn machined(&self, machining: u16, first_of: u8, second_of: u8) -> Result<Meeting> {
        let high = self.machining.len().saturating_sub(1) as f64;
        let none = Error::OutOfRange { name: "machining", value: machining.into(), low: 0.0, high };
        let rule = self.machining.get(usize::from(machining)).ok_or(none)?;
        let joint = self.joint(rule.joint)?;
        let (one, other) = (self.sides(rule.joint, first_of)?, self.sides(rule.joint, second_of)?);
        let first_is_machined = rule.part == joint.first;
        let (of, mate) = if first_is_machined { (first_of, second_of) } else { (second_of, first_of) };
        if !has_variant(rule.from, of) || !has_variant(rule.to_fit, mate) {
            return Err(Error::NoAnswer {
                name: "machining",
                why: "the rule does not permit it between these variants",
            });
        }
        let (first_mm, second_mm) =
            if first_is_machined { (rule.finish_mm, other.second) } else { (one.first, rule.finish_mm) };
        joint.sizes_meet(first_mm, second_mm, joint.wanted_mm(one, other)?)
    }

    /// The machining rules that mend a joint between parts of these variants.
    pub(super) fn mends(&self, joint: u16, first_of: u8, second_of: u8) -> impl Iterator<Item = Result<u16>> + '_ {
        let rules = (0..).zip(self.machining).filter(move |(_, rule)| rule.joint == joint);
        rules.filter_map(move |(place, _)| match self.machined(place, first_of, second_of) {
            Ok(meeting) if meeting.outcome == JointOutcome::Holds => Some(Ok(place)),
            Ok(_) | Err(Error::NoAnswer { .. }) => None,
            Err(error) => Some(Err(error)),
        })
    }

    pub(super) fn joint(&self, joint: u16) -> Result<Joint> {
        let none = Error::OutOfRange {
            name: "joint",
            value: joint.into(),
            low: 0.0,
            high: self.joints.len().saturating_sub(1) as f64,
        };
        self.joints.get(usize::from(joint)).copied().ok_or(none)
    }

    pub(super) fn sides(&self, joint: u16, variant: u8) -> Result<Sides> {
        self.variant("variant", variant)?;
        let place = usize::from(joint) * usize::from(self.variants) + usize::from(variant);
        let count = self.sizes.len() as u32;
        let none = Error::Count { name: "sizes", count, low: place as u32 + 1, high: u32::MAX };
        self.sizes.get(place).copied().ok_or(none)
    }

    pub(super) fn part(&self, name: &'static str, part: u16) -> Result<u16> {
        let high = f64::from(self.parts.saturating_sub(1));
        if part < self.parts { Ok(part) } else { Err(Error::OutOfRange { name, value: part.into(), low: 0.0, high }) }
    }

    pub(super) fn variant(&self, name: &'static str, variant: u8) -> Result<u8> {
        let high = f64::from(self.variants.saturating_sub(1));
        if variant < self.variants {
            Ok(variant)
        } else {
            Err(Error::OutOfRange { name, value: variant.into(), low: 0.0, high })
        }
    }
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

/// What a set costs.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Price {
    /// Sum of the known prices.
    pub total: f64,
    /// Parts and machinings whose price is not known.
    pub unpriced: u16,
}

impl Price {
    /// Nothing yet.
    pub(super) const NONE: Self = Self { total: 0.0, unpriced: 0 };

    /// Adds the price at a place of a list, if it is known there.
    pub(super) fn add(&mut self, prices: &[f64], place: usize) {
        match prices.get(place).filter(|price| !price.is_nan()) {
            Some(price) => self.total += price,
            None => self.unpriced += 1,
        }
    }
}

/// A price list, if it has a place for everything: NaN where a price is not known, empty where none is.
pub(super) fn price_list(name: &'static str, prices: &[f64], count: usize) -> Result<()> {
    if !prices.is_empty() {
        counted(name, prices.len(), count, count)?;
    }
    match prices.iter().find(|price| **price < 0.0 || **price == f64::INFINITY) {
        Some(&value) => Err(Error::OutOfRange { name, value, low: 0.0, high: f64::MAX }),
        None => Ok(()),
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

/// Whether a mask of variants has this one.
pub(super) fn has_variant(mask: u32, variant: u8) -> bool {
    mask.checked_shr(variant.into()).is_some_and(|mask| mask & 1 == 1)
}

/// A count, if it lies between the two.
pub(super) fn counted(name: &'static str, count: usize, low: usize, high: usize) -> Result<usize> {
    if (low..=high).contains(&count) {
        return Ok(count);
    }
    let small = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    Err(Error::Count { name, count: small(count), low: small(low), high: small(high) })
}
