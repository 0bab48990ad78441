//! Which parts interchange singly, one way, only as a set, after machining, or never; the smallest matched set.
//!
//! A family is parts that meet in joints: fits, covers and matches. A part is the part *at its seat*: the same number at two
//! places is two parts here, because it may be right at one and wrong at the other. Parts, joints and variants are small
//! numbers; names live in the record.
//!
//! Put a part of one variant into a unit of another: each of its joints holds, can be machined, or is broken. A broken joint
//! that no permitted machining mends forces its neighbor to come along, and that neighbor may force the next: [`close_set`]
//! follows this to the end. What belongs to the unit itself, its case, cannot come along: then the answer is never.
//!
//! | file | holds |
//! |---|---|
//! | `joint` | one joint of two parts: clearance, cover, match, and what comes of it |
//! | `joints` | how the parts of a family meet, and what machining is permitted |
//! | `part_set` | a set of parts, a bit for each |
//! | `closure` | a family's joints between two variants, and the smallest set of parts that goes together |
//! | `price` | what a set of parts costs with its machining |
//! | `answer` | singly, machined, as a set, never or not known, for one part or for a whole family |
//! | `order`, `search` | what to order for a unit as it lies on the bench: fewest parts, or the lowest price; measured parts |
//!
//! [`close_set`]: Joints::close_set

mod answer;
mod closure;
mod joint;
mod joints;
mod order;
mod part_set;
mod price;
mod search;

pub use answer::{Answer, Relation};
pub use closure::{Crossing, MatchedSet, Passage};
pub use joint::{Joint, JointKind, JointOutcome, Meeting, Sides, cover_share};
pub use joints::{Joints, MAX_PARTS, MAX_VARIANTS, Machining, NO_MACHINING};
pub use order::{AS_FOUND, Aim, Job, JointState, MeasuredSide, NO_JOINT, Order};
pub use part_set::PartSet;
pub use price::Price;

use crate::card::Card;

/// The cards of this chapter.
pub const CARDS: &[Card] = &[joint::MEET, joint::COVER_SHARE, closure::CLOSE_SET, answer::ANSWER, order::ORDER];
