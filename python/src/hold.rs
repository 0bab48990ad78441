//! `trainwright.hold`: one-way clutches, park lock, thrust bearings, shafts, splines.

mod contact;
mod one_way;
mod park;
mod tooth;

pub use contact::{ContactBody, LineContact, LinePressure};
