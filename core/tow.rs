//! What a combination asks of the unit, against what the vehicle is rated for. A computed capacity is no rating.

mod limits;
mod loads;
mod ratings;

pub use limits::{Coupled, RATING_COUNT, RatingCheck, RatingKind, RatingReview, RatingRow, TowRatings, WeighNext};
pub use loads::{
    AxleWeights, CombinationLoads, Distribution, Levers, Trailer, axle_loads, restoring_moment_nm, share_band_kg,
};
pub use ratings::{axle_tires_kg, gawr_left_kg, gvwr_class, gvwr_least_kg};

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
];
