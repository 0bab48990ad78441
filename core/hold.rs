//! What holds: one-way clutches, park gear and pawl, thrust bearings, bushings, shafts, splines; capacity against demand.
//!
//! A computed capacity is not a rating. A park lock is never the only means of holding a vehicle: parking brake first, then
//! Park, wheels chocked. See [`HAZARDS`].
//!
//! | file | holds |
//! |---|---|
//! | `contact` | line contact of two bodies: pressure, half width, shear below the surface |
//! | `tooth` | bending of a spur tooth |
//! | `one_way` | rollers, sprags and ratchets; what the train asks of a one-way clutch in each gear |
//! | `park` | park gear and pawl on a grade |

mod contact;
mod one_way;
mod park;
mod tooth;

pub use contact::{ContactBody, LineContact, LinePressure};

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::RollAway];

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[contact::PRESSED, contact::FORCE_AT_PEAK];
