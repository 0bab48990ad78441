//! `trainwright.converter`: torque converters.

mod flow;
mod tables;

pub use flow::{
    capacity_factor, efficiency, from_output_side, from_torque_coefficient, impeller_torque_nm, speed_ratio,
};
pub use tables::{Characteristic, EngineCurve};
