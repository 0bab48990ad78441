//! Torque converters: characteristic, match with an engine, stall, lock-up slip.
//!
//! The capacity factor here is that of the impeller side, K = n/√T with speed and torque of the impeller, in 1/min per √(N·m).
//! It is not taken to rise with the speed ratio: measured ones are flat at first, and some fall.
//!
//! No result is a rating. A stall test overheats the converter within seconds and loads the whole drive line; it is made only
//! where the vehicle maker allows it.

mod air;
mod characteristic;
mod engine;
mod flow;
mod lockup;
mod operating;
mod plan;
mod stall;
mod table;

pub use air::{InletAir, air_correction_j1349, air_torque_factor};
pub use characteristic::Characteristic;
pub use engine::EngineCurve;
pub use flow::{
    capacity_factor, efficiency, from_output_side, from_torque_coefficient, impeller_torque_nm, speed_ratio,
};
pub use lockup::{LockupSlip, SlipLimits, lockup_slip};
pub use operating::{
    EngineToday, MAX_OPERATING_POINTS, OperatingPoint, OperatingPoints, operating_point, operating_points,
};
pub use plan::{ElementTorques, FluidCharge, StallPlan, StallRatings, element_torques, plan_stall};
pub use stall::{MeasuredStall, StallInputs, StallSide, StallSpeed, StallVerdict, judge_stall, stall_speed};
pub use table::TABLE_POINTS;

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::StallHeat, Hazard::RollAway, Hazard::HotFluid];

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[
    flow::SPEED_RATIO,
    flow::EFFICIENCY,
    flow::CAPACITY_FACTOR,
    flow::IMPELLER_TORQUE,
    flow::OUTPUT_SIDE,
    flow::TORQUE_COEFFICIENT,
    engine::TORQUE_AT,
    characteristic::TORQUE_RATIO_AT,
    characteristic::CAPACITY_FACTOR_AT,
    characteristic::COUPLING_POINT,
    operating::OPERATING_POINTS,
    air::AIR_CORRECTION,
    air::AIR_TORQUE_FACTOR,
    stall::STALL_SPEED,
    plan::PLAN_STALL,
    plan::STALL_RISE,
    plan::ELEMENT_TORQUES,
    stall::JUDGE_STALL,
    lockup::LOCKUP_SLIP,
];
