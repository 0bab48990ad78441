//! End play and clutch clearance: worst case and root sum of squares, choice of shim and ring, what to measure first.

use crate::card::Card;

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[];
