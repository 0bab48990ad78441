//! Round fits: clearance and interference, cold and hot, pressed bushings, ISO 286 limits, load and leakage.
//!
//! A clearance is bore less shaft, diametral; a negative one is an interference. Sizes are those at 20 °C unless a name says
//! otherwise.
//!
//! | file | holds |
//! |---|---|
//! | `clearance` | least and greatest clearance of two tolerances with its class; clearance of measured parts, judged |

mod clearance;

pub use clearance::{Clearance, FitClass, MeasuredClearance, Spread, clearance, measured, toleranced};

use crate::card::Card;

/// The cards of this chapter.
pub const CARDS: &[Card] = &[clearance::CLEARANCE, clearance::TOLERANCED, clearance::MEASURED];
