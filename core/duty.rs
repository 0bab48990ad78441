//! How much of its life a duty uses, and which trucks come first. A computed damage ranks; it does not promise a life.

mod bus;
mod mesh;

pub use bus::{BusMeaning, BusNetwork, BusRules, BusSignal, BusValue, bus_signal};
pub use mesh::{MeshDuty, WheelDuty, mesh_duty};

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::Towing];

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[mesh::MESH_DUTY, bus::DECODE, bus::CLASSIFY, bus::STEP_ERROR];
