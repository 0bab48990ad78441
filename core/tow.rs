//! What a combination asks of the unit, against what the vehicle is rated for. A computed capacity is no rating.

mod criteria;
mod inertia;
mod launch;
mod limits;
mod loads;
mod ratings;
mod run_up;

pub use criteria::{
    CRITERION_COUNT, Criterion, CriterionCheck, CriterionOutcome, LAUNCH_DISTANCE_M, RatedFor, check_criterion,
    criterion_limits,
};
pub use inertia::{EquivalentMass, equivalent_mass, output_inertia_kg_m2};
pub use launch::{Launch, LaunchForce, LaunchGrip, Stance, grip_on_grade};
pub use limits::{Coupled, RatingCheck, RatingReview, RatingRow, WeighNext};
pub use loads::{
    AxleWeights, CombinationLoads, Distribution, Levers, Trailer, axle_loads, restoring_moment_nm, share_band_kg,
};
pub use ratings::{axle_tires_kg, gawr_left_kg, gvwr_class, gvwr_least_kg};
mod climb;
mod cooler;
mod gearing;
mod heat;
mod hold_speed;
mod node;
mod placard;
mod profile;
mod pull;
mod unlocked;

pub use climb::{Climb, CoolPull, DrivenPiece, HeatModel, RoadPiece};
pub use cooler::{Arrangement, Cooler, CoolerHeat, CoolerSize, CoolerTask, cooler_size};
pub use gearing::{Gearing, MAX_OFFERED_GEARS, NO_GEAR, OfferedGear};
pub use heat::{Running, ThroughFlow, UnitLoss, converter_loss_kw, flow_heat_w_k, through_flow_rise, unit_loss};
pub use hold_speed::{LargestSpeed, SpeedLimit};
pub use node::{HeatNode, TimeTo, Warmed};
pub use placard::{RATING_COUNT, RatingKind, TowRatings};
pub use profile::{ElevationNoise, SlopePoint, TotalClimb, pieces, smooth, total_climb};
pub use pull::{GearPull, GearRule, GearStanding, Haul, Pull, PullLimit, Rig};
pub use run_up::{RUN_UP_GEARS, RunUp, RunUpGear, RunUpTime};
pub use unlocked::UnlockedPull;

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::Towing, Hazard::RollAway, Hazard::HotFluid];

/// The formulas of this chapter.
#[rustfmt::skip] // one line each
pub const CARDS: &[Card] = &[
    loads::AXLE_LOADS,
    loads::BY_SHARE,
    loads::SHARE_BAND,
    loads::RESTORING,
    ratings::GVWR_CLASS,
    ratings::GVWR_LEAST,
    ratings::GAWR_LEFT,
    ratings::AXLE_TIRES,
    limits::RATING_CHECK,
    limits::REVIEW_RATINGS,
    pull::PULL,
    pull::PULL_SLOWED,
    hold_speed::LARGEST_SPEED,
    unlocked::UNLOCKED_PULL,
    heat::UNIT_LOSS,
    heat::CONVERTER_LOSS,
    heat::THROUGH_FLOW_RISE,
    heat::FLOW_HEAT,
    node::WARMED,
    node::TIME_TO,
    node::COOLER_NEEDED,
    cooler::EFFECTIVENESS,
    cooler::TRANSFER_UNITS,
    cooler::COOLER_HEAT,
    cooler::COOLER_SIZE,
    climb::CLIMB,
    climb::COOL_SPEED,
    profile::SMOOTH,
    profile::TOTAL_CLIMB,
    profile::PIECES,
    criteria::CRITERION_LIMITS,
    criteria::CHECK_CRITERION,
    launch::LAUNCH,
    launch::GRIP_ON_GRADE,
    inertia::OUTPUT_INERTIA,
    inertia::EQUIVALENT_MASS,
    run_up::RUN_UP,
];
