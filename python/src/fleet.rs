//! `trainwright.fleet`, the compiled part: one pass over the telematics rows of a fleet.

mod answer;
mod arrays;
mod arrow;
mod bytes;
mod columns;
mod kernel;
mod pass;
mod screen;
mod totals;
mod trucks;
mod unit;

pub use answer::OUTPUTS;
pub use screen::{AGGREGATES, Screen};
pub use unit::{Gear, Holding, Limits, Unit};
