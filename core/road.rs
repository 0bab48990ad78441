//! The road side of a transmission: shaft speeds, shift points, speedometer, road load, grade, air.

mod air;
mod driveline;
mod load;
mod refit;

pub use air::{Air, density_of_air, standard_air};
pub use driveline::{Driveline, Engaged, ShaftSpeeds};
pub use load::{
    CoastDown, CoastDownLoad, Combination, GradeHeld, RoadLoad, grade_deg, grade_held, grade_pct, mean_grade_pct,
    road_load, rolling_coefficient_at,
};
pub use refit::{
    NumbersToProgram, ShiftPoint, Speedometer, limits_49_cfr_393_82, limits_un_r39, numbers_to_program,
    shift_at_output_speed, shift_at_road_speed, speedometer,
};

use crate::card::Card;
use crate::hazard::Hazard;

/// What can hurt someone in the work of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::Towing, Hazard::RollAway, Hazard::WrongTire];

/// The cards of this chapter.
pub const CARDS: &[Card] = &[
    driveline::SPEEDS_AT_ROAD,
    refit::SHIFT_AT_OUTPUT_SPEED,
    refit::SPEEDOMETER,
    refit::LIMITS_UN_R39,
    refit::LIMITS_49_CFR_393_82,
    refit::NUMBERS_TO_PROGRAM,
    load::ROAD_LOAD,
    load::GRADE_HELD,
    load::TRACTIVE_FORCE,
    load::COAST_DOWN,
    load::ROLLING_COEFFICIENT,
    load::GRADE,
    air::STANDARD_AIR,
    air::DENSITY_OF_AIR,
];
