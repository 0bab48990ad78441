//! How much of its life a duty uses, and which trucks come first. A computed damage ranks; it does not promise a life.

mod bus;
mod cycles;
mod damage;
mod life;
mod mesh;
mod rank;
pub mod screen;
mod wheels;

pub(crate) use bus::marked_meaning;
pub use bus::{BusMeaning, BusNetwork, BusRules, BusSignal, BusValue, bus_signal};
pub use cycles::{Cycle, CycleCount, Residence, ResidueRule, rainflow, residence};
pub use damage::{Damage, DamageInterval, DamageLine, DamageRange, DutyStage, damage_interval};
pub use life::{AgingKind, AgingRule, FluidBin, FluidLife, fluid_life};
pub use mesh::{MeshDuty, WheelDuty, mesh_duty};
pub use rank::{RankInterval, rank_intervals, resampled_total};
pub use wheels::{
    CauseFit, CauseFound, CauseKind, RatioCause, RatioRule, RatiosSeen, SpeedsRatio, other_driveline, other_teeth,
    ratio_of, weigh_causes,
};

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::Towing];

/// The formulas of this chapter.
#[rustfmt::skip] // one line each
pub const CARDS: &[Card] = &[
    mesh::MESH_DUTY,
    bus::DECODE,
    bus::CLASSIFY,
    bus::STEP_ERROR,
    cycles::RAINFLOW,
    cycles::RESIDENCE,
    damage::FROM_RATING,
    damage::DAMAGE,
    damage::DAMAGE_INTERVAL,
    life::AGING,
    life::FLUID_LIFE,
    rank::RANK_INTERVALS,
    rank::RESAMPLED_TOTAL,
    wheels::RATIO_OF,
    wheels::OTHER_DRIVELINE,
    wheels::OTHER_TEETH,
    wheels::WEIGH_CAUSES,
    screen::GEAR,
    screen::TORQUE,
    screen::MARGIN,
    screen::DAMAGE,
    screen::LOSSES,
    screen::AGING,
    screen::SATELLITE,
];
