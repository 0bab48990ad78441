//! Torque converters: characteristic, match with an engine, stall, lock-up slip.

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::StallHeat, Hazard::RollAway, Hazard::HotFluid];

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[];
