//! `trainwright.tow`: combination loads and ratings, launch, load per gear and grade.

mod limits;
mod loads;
mod ratings;

pub use limits::{Coupled, RatingCheck, RatingReview, RatingRow, TowRatings};
pub use loads::{
    AxleWeights, CombinationLoads, Distribution, Levers, Trailer, axle_loads, restoring_moment_nm, share_band_kg,
};
pub use ratings::{axle_tires_kg, gawr_left_kg, gvwr_class, gvwr_least_kg};
