//! `trainwright.road`: shaft speeds, shift points, speedometer, road load, grade, air.

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
