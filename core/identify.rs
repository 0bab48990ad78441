//! Which variant is on the bench: weighing marks and sizes, part by part, and what to look at next.

use crate::card::Card;

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[];
