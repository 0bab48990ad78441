//! `trainwright.converter`: torque converters.

mod flow;
mod operating;
mod stall;
mod tables;

pub use flow::{
    capacity_factor, efficiency, from_output_side, from_torque_coefficient, impeller_torque_nm, speed_ratio,
};
pub use operating::{EngineToday, OperatingPoint, operating_point, operating_points};
pub use stall::{
    FluidCharge, InletAir, LockupSlip, MeasuredStall, SlipLimits, StallInputs, StallPlan, StallRatings, StallSpeed,
    StallVerdict, air_correction_j1349, air_torque_factor, element_torques, judge_stall, lockup_slip, plan_stall,
    stall_speed,
};
pub use tables::{Characteristic, EngineCurve};
