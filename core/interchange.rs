//! Which parts interchange singly, one way, only as a set, after machining, or never; the smallest matched set.

use crate::card::Card;

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[];
