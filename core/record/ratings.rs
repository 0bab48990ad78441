//! What towing needs of a truck beside its mass: ratings from the placards, levers, hitch and tires.

use std::format;
use std::vec::Vec;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::document::Path;
use super::fault::Fault;
use super::{Fleet, TruckRecord};
use crate::error::{Error, Result};
use crate::judge::Reading;
use crate::tow::{AxleWeights, Coupled, Distribution, Levers, TowRatings, Trailer, axle_tires_kg, gawr_left_kg};

/// How a trailer is coupled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum HitchKind {
    /// A ball behind the bumper.
    Ball,
    /// A king pin over the rear axle (fifth wheel).
    KingPin,
}

/// Ratings of a truck, of its hitch and of its trailer, and where the trailer rests. Whatever is not known is left out.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TowRecord {
    /// Gross combination weight rating, kg.
    #[schemars(range(min = 500, max = 100000))]
    pub gcwr_kg: Option<f64>,
    /// Gross vehicle weight rating, kg.
    #[schemars(range(min = 500, max = 60000))]
    pub gvwr_kg: Option<f64>,
    /// Front gross axle weight rating, kg.
    #[schemars(range(min = 200, max = 30000))]
    pub gawr_front_kg: Option<f64>,
    /// Rear gross axle weight rating, kg.
    #[schemars(range(min = 200, max = 30000))]
    pub gawr_rear_kg: Option<f64>,
    /// Heaviest trailer that the vehicle maker allows, kg.
    #[schemars(range(min = 100, max = 60000))]
    pub maker_trailer_kg: Option<f64>,
    /// How the trailer is coupled.
    pub hitch: Option<HitchKind>,
    /// Heaviest trailer that the hitch is rated for, kg.
    #[schemars(range(min = 100, max = 60000))]
    pub hitch_trailer_kg: Option<f64>,
    /// Greatest hitch load that the hitch is rated for, kg.
    #[schemars(range(min = 10, max = 10000))]
    pub hitch_load_kg: Option<f64>,
    /// Gross rating of the trailer, kg.
    #[schemars(range(min = 100, max = 60000))]
    pub trailer_gross_kg: Option<f64>,
    /// Wheelbase, mm.
    #[schemars(range(min = 1500, max = 10000))]
    pub wheelbase_mm: Option<f64>,
    /// Ball or king pin behind the rear axle, mm; negative ahead of it.
    #[schemars(range(min = -1500, max = 4000))]
    pub overhang_mm: Option<f64>,
    /// Front axle on the scale without the trailer, kg; the rest of `truck_kg` is on the rear axle.
    #[schemars(range(min = 200, max = 30000))]
    pub front_kg: Option<f64>,
    /// Standard uncertainty of an axle on the scale, kg; 0 unless given.
    #[schemars(range(min = 0, max = 1000))]
    pub u_axle_kg: Option<f64>,
    /// Standard uncertainty of the mass of the trailer, kg; 0 unless given.
    #[schemars(range(min = 0, max = 5000))]
    pub u_trailer_kg: Option<f64>,
    /// Share of the trailer that rests on the hitch.
    #[schemars(range(min = 0, max = 0.5))]
    pub hitch_share: Option<f64>,
    /// Its standard uncertainty; 0 unless given.
    #[schemars(range(min = 0, max = 0.2))]
    pub u_hitch_share: Option<f64>,
    /// Load of one tire as it is fitted, kg: the dual load where two stand side by side.
    #[schemars(range(min = 100, max = 10000))]
    pub tire_load_kg: Option<f64>,
    /// Tires of the rear axle: 2, or 4 with dual wheels; 2 unless given.
    #[schemars(range(min = 2, max = 8))]
    pub rear_tires: Option<u32>,
    /// Passenger tires: on a truck their load is divided by 1.10.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub passenger_tires: bool,
    /// Height of the truck's center of gravity, mm.
    #[schemars(range(min = 100, max = 3000))]
    pub cg_height_mm: Option<f64>,
    /// Height of the ball or pin, mm.
    #[schemars(range(min = 100, max = 3000))]
    pub hitch_height_mm: Option<f64>,
    /// Moment of inertia of all wheels, the trailer's too, kg·m².
    #[schemars(range(min = 0, max = 1000))]
    pub wheel_inertia_kg_m2: Option<f64>,
}

impl TowRecord {
    /// Every rating, infinite where it is not known.
    pub fn ratings(&self) -> Result<TowRatings> {
        let or_unknown = |rating: Option<f64>| rating.unwrap_or(f64::INFINITY);
        let tires = |count: u32| match self.tire_load_kg {
            Some(tire_kg) => axle_tires_kg(tire_kg, count, self.passenger_tires),
            None => Ok(f64::INFINITY),
        };
        Ok(TowRatings {
            gcwr_kg: or_unknown(self.gcwr_kg),
            gvwr_kg: or_unknown(self.gvwr_kg),
            gawr_front_kg: or_unknown(self.gawr_front_kg),
            gawr_rear_kg: or_unknown(self.gawr_rear_kg),
            tires_front_kg: tires(2)?,
            tires_rear_kg: tires(self.rear_tires.unwrap_or(2))?,
            maker_trailer_kg: or_unknown(self.maker_trailer_kg),
            hitch_trailer_kg: or_unknown(self.hitch_trailer_kg),
            hitch_load_kg: or_unknown(self.hitch_load_kg),
            trailer_gross_kg: or_unknown(self.trailer_gross_kg),
        })
    }
}

impl TruckRecord {
    fn towing(&self) -> Result<&TowRecord> {
        let missing = Error::Missing { name: "tow", why: "the truck has no [truck.tow] table of ratings and levers" };
        self.tow.as_ref().ok_or(missing)
    }

    /// Every rating that the record holds; infinite where one is not known.
    pub fn tow_ratings(&self) -> Result<TowRatings> {
        self.towing()?.ratings()
    }

    /// The truck with a trailer of this mass on its hitch.
    pub fn coupled(&self, trailer_kg: f64) -> Result<Coupled> {
        let tow = self.towing()?;
        let needed = |name: &'static str, value: Option<f64>| {
            value.ok_or(Error::Missing { name, why: "axle loads need it; measure it, or weigh the axles" })
        };
        let u_axle_kg = tow.u_axle_kg.unwrap_or(0.0);
        let front_kg = needed("front_kg", tow.front_kg)?;
        let share = Reading::new(needed("hitch_share", tow.hitch_share)?, tow.u_hitch_share.unwrap_or(0.0))?;
        Ok(Coupled {
            weighed: AxleWeights {
                front_kg: Reading::new(front_kg, u_axle_kg)?,
                rear_kg: Reading::new(self.truck_kg - front_kg, u_axle_kg)?,
            },
            trailer: Trailer::by_share(Reading::new(trailer_kg, tow.u_trailer_kg.unwrap_or(0.0))?, share)?,
            levers: Levers {
                wheelbase_mm: needed("wheelbase_mm", tow.wheelbase_mm)?,
                overhang_mm: needed("overhang_mm", tow.overhang_mm)?,
            },
            distribution: Distribution::NONE,
        })
    }
}

impl Fleet {
    /// Ratings that contradict one another or the truck.
    pub(super) fn tow_faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        for (index, truck) in self.truck.iter().enumerate() {
            let Some(tow) = &truck.tow else { continue };
            let path = Path::default().key("truck").index(index).key("tow");
            if let (Some(gvwr), Some(front), Some(rear)) = (tow.gvwr_kg, tow.gawr_front_kg, tow.gawr_rear_kg)
                && gawr_left_kg(gvwr, front, rear).is_ok_and(|left| left < 0.0)
            {
                let message = format!("above the sum of the axle ratings, {}", front + rear);
                faults.push(Fault::error(path.key("gvwr_kg"), message, "read the placard again"));
            }
            if let Some(front) = tow.front_kg.filter(|front| *front >= truck.truck_kg) {
                let message = format!("the front axle weighs {front} of a truck of {}", truck.truck_kg);
                faults.push(Fault::error(path.key("front_kg"), message, "correct one of the two"));
            }
            if tow.hitch == Some(HitchKind::Ball) && tow.overhang_mm.is_some_and(|overhang| overhang <= 0.0) {
                let message = "a ball is behind the rear axle";
                faults.push(Fault::error(
                    path.key("overhang_mm"),
                    message,
                    "give it as positive, or hitch = \"king_pin\"",
                ));
            }
        }
        faults
    }
}
