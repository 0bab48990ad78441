//! Pump, orifices, valves, line pressure needed and available, cooler flow.

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::HotFluid, Hazard::RaisedPressure];

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[];
