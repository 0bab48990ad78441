//! Transmission fluid: density, viscosity, volume, mixing, level and fill.
//!
//! **Hot fluid burns, and fluid blown from the vent can catch fire on the exhaust.** A level is read with the engine running,
//! the parking brake set, the wheels chocked and the vehicle level on stands rated for it; follow the vehicle maker's
//! procedure and local codes. See [`HAZARDS`].

mod density;
mod index_table;
mod level;
mod mix;
mod sump;
mod viscosity;

use crate::card::Card;
use crate::hazard::Hazard;

pub use density::{
    Fluid, Growth, VolumeCorrection, correction_factor, density_15c_from_observed, expansion_from_15c, growth_ml,
    volume_correction, volume_correction_60f,
};
pub use level::{Adjustment, Fill, LevelAt, LevelCheck, PourVolumes};
pub use mix::{FrictionPortion, Portion, ViscosityPortion, blend, blend_friction, blend_viscosity, old_share};
pub use sump::{SUMP_ROWS, Sump, constant_area_level_mm, tilt_shift_mm};
pub use viscosity::{
    ViscosityIndex, ViscosityLine, ViscosityPair, ViscosityPoints, dynamic_viscosity, viscosity_100c_for_index,
    viscosity_index,
};

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::HotFluid, Hazard::RollAway];

/// The cards of this chapter.
pub const CARDS: &[Card] = &[
    density::VOLUME_CORRECTION,
    density::DENSITY_15C_FROM_OBSERVED,
    density::EXPANSION_FROM_15C,
    density::VOLUME_FACTOR,
    density::GROWTH_ML,
    viscosity::VISCOSITY_AT,
    viscosity::THIN_VISCOSITY_AT,
    viscosity::VISCOSITY_INDEX,
    viscosity::DYNAMIC_VISCOSITY,
    mix::BLEND,
    mix::BLEND_VISCOSITY,
    mix::BLEND_FRICTION,
    mix::OLD_SHARE,
    sump::VOLUME_TO,
    level::LEVEL_AT,
    level::ADJUST_FILL,
    level::ENGINE_OFF_LEVEL_MM,
    level::GEAR_DIPS_AT_C,
    level::LOSS_TO_PICKUP_ML,
    level::POUR_VOLUMES,
    sump::CONSTANT_AREA_LEVEL_MM,
    sump::TILT_SHIFT_MM,
];
