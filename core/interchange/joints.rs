//! How the parts of a family meet, and what machining is permitted.

use super::joint::{Joint, JointOutcome, Meeting, Sides};
use super::part_set::PartSet;
use crate::error::{Error, Result, within};
use crate::judge::Limits;

/// Parts that a family may have.
pub const MAX_PARTS: usize = 256;
/// Variants that a family may have: as many as a mask has bits.
pub const MAX_VARIANTS: usize = 32;
/// Stands where no machining mends a joint.
pub const NO_MACHINING: u16 = u16::MAX;

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

impl Joints<'_> {
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
