//! What holds: one-way clutches, park gear and pawl, thrust bearings, bushings, shafts, splines; capacity against demand.

use crate::card::Card;

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[];
