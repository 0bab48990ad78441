//! `trainwright.clutch`: forces, capacity, holding, bands, shifts and their heat.

mod band;
mod gear_review;
mod heat;
mod pack;
mod shift;

pub use band::{Band, BandTorque, Servo};
pub use gear_review::{ElementMargin, ElementPack, GearReview, governing, review};
pub use heat::{PlateHeat, Steel, SteelPlates, SurfaceRise, bulk_rise_k};
pub use pack::{
    Annulus, Capacity, CapacityLine, Head, Hold, LiningByRadius, Pack, PressureNeeded, ReturnSprings, disc_faces,
    plate_faces, surface_drop_mm,
};
pub use shift::{HeldInput, Slip, SlipEnd, referred_inertia_kg_m2};
