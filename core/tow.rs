//! What a combination asks of the unit, against what the vehicle is rated for. A computed capacity is no rating.

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::Towing, Hazard::RollAway, Hazard::HotFluid];

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[];
