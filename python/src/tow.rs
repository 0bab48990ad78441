//! `trainwright.tow`: combination loads and ratings, launch, load per gear and grade.

mod climb;
mod criteria;
mod heat;
mod launch;
mod limits;
mod loads;
mod offer;
mod pull;
mod ratings;

pub use climb::{
    Climb, CoolPull, DrivenPiece, ElevationNoise, HeatModel, RoadPiece, TotalClimb, pieces, smooth, total_climb,
};
pub use criteria::{CriterionCheck, RatedFor, check_criterion, criterion_limits};
pub use heat::{
    Cooler, CoolerHeat, CoolerSize, CoolerTask, HeatNode, Running, ThroughFlow, TimeTo, UnitLoss, Warmed,
    converter_loss_kw, cooler_size, effectiveness, flow_heat_w_k, through_flow_rise, transfer_units, unit_loss,
};
pub use launch::{
    EquivalentMass, Launch, LaunchForce, LaunchGrip, RunUp, RunUpGear, RunUpTime, Stance, equivalent_mass,
    grip_on_grade, output_inertia_kg_m2,
};
pub use limits::{Coupled, RatingCheck, RatingReview, RatingRow, TowRatings};
pub use loads::{
    AxleWeights, CombinationLoads, Distribution, Levers, Trailer, axle_loads, restoring_moment_nm, share_band_kg,
};
pub use offer::{GearRule, Gearing, Haul, OfferedGear, Rig, gearing, rig};
pub use pull::{GearPull, LargestSpeed, Pull, UnlockedPull};
pub use ratings::{axle_tires_kg, gawr_left_kg, gvwr_class, gvwr_least_kg};
