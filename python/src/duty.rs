//! `trainwright.duty`: how much of its life a duty uses, and which trucks come first.

mod bus;
mod mesh;

pub use bus::{BusSignal, BusValue, bus_signal};
pub use mesh::{MeshDuty, WheelDuty, mesh_duty};
