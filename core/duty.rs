//! How much of its life a duty uses, and which trucks come first. A computed damage ranks; it does not promise a life.

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::Towing];

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[];
