//! Clutches and bands: apply force, capacity, pressure for a torque, shift energy.
