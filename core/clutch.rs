//! Clutches and bands: apply force, capacity, pressure for a torque, shift energy and the heat it leaves.
//!
//! A computed capacity is not a rating. Raising the pressure to gain capacity also loads retaining rings, drums and
//! shafts: the maker's limits govern. Pistons moved with compressed air and packs just after a test can injure: see
//! [`HAZARDS`].
//!
//! | file | holds |
//! |---|---|
//! | `pack` | the parts: lining, piston, return spring, oil heads that turn with the drum |
//! | `capacity` | forces, capacity, pressure and friction needed, lining pressure |
//! | `hold` | capacity against demand with its uncertainty, judged |
//! | `review` | every pack of a gear against the torque that the train puts on it; what governs |
//! | `band` | bands, self-energized and not, and their servo |
//! | `shift` | slip to lock-up, or never; its energy |
//! | `heat` | what the energy does to the steel plates |

mod band;
mod capacity;
mod heat;
mod hold;
mod pack;
mod review;
mod shift;

pub use band::{Band, BandTorque, Servo};
pub use capacity::{Applied, Capacity, CapacityLine, LiningByRadius, PressureNeeded};
pub use heat::{PlateHeat, Steel, SteelPlates, SurfaceRise, bulk_rise_k};
pub use hold::{Hold, Working, governing};
pub use pack::{Annulus, Head, Pack, ReturnSprings, disc_faces, plate_faces, surface_drop_mm};
pub use review::{Duty, ElementMargin, ElementPack, GearReview, review};
pub use shift::{HeldInput, Slip, SlipEnd, referred_inertia_kg_m2};

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::RaisedPressure, Hazard::CompressedAir, Hazard::HotParts, Hazard::StallHeat];

/// The cards of this chapter.
pub const CARDS: &[Card] = &[
    pack::MEAN_RADIUS_NEW,
    pack::MEAN_RADIUS_WORN,
    pack::BEST_INNER_RADIUS,
    pack::SPRING_FORCE,
    pack::HEAD_FORCE,
    pack::SURFACE_DROP,
    capacity::CAPACITY,
    capacity::PRESSURE_NEEDED,
    capacity::CLAMP_AT_PEAK,
    capacity::LINING_BY_RADIUS,
    hold::HOLD,
    review::REVIEW,
    band::TORQUE,
    shift::SLIP,
    shift::HELD_INPUT,
    heat::BULK_RISE,
    heat::RISE_CONSTANT,
    heat::RISE_FALLING,
];
