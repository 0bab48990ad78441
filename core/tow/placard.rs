//! The ratings of a combination, as placards and labels state them. Every one is an input.

use crate::error::{Error, Result};

/// Number of ratings.
pub const RATING_COUNT: usize = 10;

/// A rating, and the load it belongs to.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RatingKind {
    /// Gross combination weight rating: truck and trailer.
    Combination = 1,
    /// Gross vehicle weight rating: the truck with the trailer on its hitch.
    Vehicle = 2,
    /// Front gross axle weight rating.
    FrontAxle = 3,
    /// Rear gross axle weight rating.
    RearAxle = 4,
    /// Tires of the front axle.
    FrontTires = 5,
    /// Tires of the rear axle.
    RearTires = 6,
    /// Trailer that the vehicle maker allows.
    MakerTrailer = 7,
    /// Trailer that the hitch (receiver, ball, coupler: the least) is rated for.
    HitchTrailer = 8,
    /// Hitch load that the hitch is rated for.
    HitchLoad = 9,
    /// Gross rating of the trailer itself.
    TrailerGross = 10,
}

impl RatingKind {
    /// Every rating, in the order of the rows of a review.
    pub const ALL: [Self; RATING_COUNT] = [
        Self::Combination,
        Self::Vehicle,
        Self::FrontAxle,
        Self::RearAxle,
        Self::FrontTires,
        Self::RearTires,
        Self::MakerTrailer,
        Self::HitchTrailer,
        Self::HitchLoad,
        Self::TrailerGross,
    ];

    /// The rating with this number, as C passes it.
    pub fn from_number(number: i32) -> Result<Self> {
        let unknown = Error::OutOfRange { name: "kind", value: f64::from(number), low: 1.0, high: RATING_COUNT as f64 };
        Self::ALL.into_iter().find(|kind| *kind as i32 == number).ok_or(unknown)
    }
}

/// The ratings of a combination, from placards and labels; infinite where one is not known.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TowRatings {
    /// Gross combination weight rating, kg.
    pub gcwr_kg: f64,
    /// Gross vehicle weight rating of the truck, kg.
    pub gvwr_kg: f64,
    /// Front gross axle weight rating, kg.
    pub gawr_front_kg: f64,
    /// Rear gross axle weight rating, kg.
    pub gawr_rear_kg: f64,
    /// Tires of the front axle together, kg: [`super::axle_tires_kg`].
    pub tires_front_kg: f64,
    /// Tires of the rear axle together, kg.
    pub tires_rear_kg: f64,
    /// Heaviest trailer that the vehicle maker allows, kg.
    pub maker_trailer_kg: f64,
    /// Heaviest trailer that the hitch is rated for, kg.
    pub hitch_trailer_kg: f64,
    /// Greatest hitch load that the hitch is rated for, kg.
    pub hitch_load_kg: f64,
    /// Gross rating of the trailer, kg.
    pub trailer_gross_kg: f64,
}

impl TowRatings {
    /// No rating known.
    pub const UNKNOWN: Self = Self {
        gcwr_kg: f64::INFINITY,
        gvwr_kg: f64::INFINITY,
        gawr_front_kg: f64::INFINITY,
        gawr_rear_kg: f64::INFINITY,
        tires_front_kg: f64::INFINITY,
        tires_rear_kg: f64::INFINITY,
        maker_trailer_kg: f64::INFINITY,
        hitch_trailer_kg: f64::INFINITY,
        hitch_load_kg: f64::INFINITY,
        trailer_gross_kg: f64::INFINITY,
    };

    /// The rating of a kind with the name of its field, or that it is not known.
    pub(super) fn of(self, kind: RatingKind) -> (&'static str, f64) {
        match kind {
            RatingKind::Combination => ("gcwr_kg", self.gcwr_kg),
            RatingKind::Vehicle => ("gvwr_kg", self.gvwr_kg),
            RatingKind::FrontAxle => ("gawr_front_kg", self.gawr_front_kg),
            RatingKind::RearAxle => ("gawr_rear_kg", self.gawr_rear_kg),
            RatingKind::FrontTires => ("tires_front_kg", self.tires_front_kg),
            RatingKind::RearTires => ("tires_rear_kg", self.tires_rear_kg),
            RatingKind::MakerTrailer => ("maker_trailer_kg", self.maker_trailer_kg),
            RatingKind::HitchTrailer => ("hitch_trailer_kg", self.hitch_trailer_kg),
            RatingKind::HitchLoad => ("hitch_load_kg", self.hitch_load_kg),
            RatingKind::TrailerGross => ("trailer_gross_kg", self.trailer_gross_kg),
        }
    }
}
