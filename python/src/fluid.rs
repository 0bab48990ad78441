//! `trainwright.fluid`: density, viscosity, mixing, level and fill.

mod density;
mod level;
mod mix;
mod sump;
mod viscosity;

pub use density::{
    Fluid, VolumeCorrection, correction_factor, density_15c_from_observed, expansion_from_15c, growth_ml,
    volume_correction, volume_correction_60f,
};
pub use level::{Adjustment, Fill, LevelAt, LevelCheck, PourVolumes};
pub use mix::{FrictionPortion, Portion, ViscosityPortion, blend, blend_friction, blend_viscosity, old_share};
pub use sump::{Sump, constant_area_level_mm, tilt_shift_mm};
pub use viscosity::{ViscosityIndex, ViscosityLine, dynamic_viscosity, viscosity_100c_for_index, viscosity_index};
