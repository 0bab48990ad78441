//! What a unit offers and what a truck asks of it, from a family and a fleet.

use std::vec::Vec;

use super::named_train::NamedTrain;
use super::{Fleet, RoadRecord, TruckRecord, VariantRecord};
use crate::error::{Error, Result};
use crate::road::{Combination, Driveline};
use crate::tow::{GearRule, Gearing, Haul, OfferedGear};

impl NamedTrain {
    /// The gears of a variant with its ratings: ratios from the teeth, efficiencies as the record states them.
    pub fn gearing(&self, rating: &VariantRecord) -> Result<Gearing> {
        let missing = Error::Missing {
            name: "efficiency",
            why: "the record states no road efficiency for a gear; give it in [train.efficiency]",
        };
        let mut gears = Vec::new();
        for gear in &self.gears {
            let closed = gear.closed | gear.one_way;
            let ratio = self.train.solve(closed)?.ratio.value().ok_or(Error::NoAnswer {
                name: "gear",
                why: "a gear of the record does not join input and output; correct what it closes",
            })?;
            let efficiency = gear.efficiency.ok_or(missing)?;
            gears.push(OfferedGear { ratio, efficiency, closed, one_way: gear.one_way });
        }
        let reverse_nm = rating.reverse_turbine_nm.unwrap_or(rating.rated_turbine_nm);
        Gearing::new(&gears, rating.rated_turbine_nm, reverse_nm, rating.rated_output_nm)
    }
}

impl RoadRecord {
    /// How the record chooses a gear; the step by which a speed is lowered is whoever drives'.
    #[must_use]
    pub const fn gear_rule(&self, speed_step_km_h: f64) -> GearRule {
        let (torque_reserve, lowest_locked_rpm) = (self.torque_reserve, self.lowest_locked_rpm);
        GearRule { torque_reserve, lowest_locked_rpm, speed_step_km_h }
    }
}

impl Fleet {
    /// The road model.
    pub fn road_model(&self) -> Result<&RoadRecord> {
        self.road.as_ref().ok_or(Error::Missing { name: "road", why: "the fleet has no [road] table" })
    }

    /// Truck and trailer as the road feels them; refused where the mass of the trailer is not known.
    pub fn combination(&self, truck: &TruckRecord) -> Result<Combination> {
        match (truck.trailer_kg, &truck.trailer_range_kg) {
            (Some(trailer_kg), _) => self.combination_with(truck, trailer_kg),
            (None, None) => self.combination_with(truck, 0.0),
            (None, Some(_)) => Err(Error::Missing {
                name: "trailer_kg",
                why: "the record gives a range only; take a mass of it with combination_with",
            }),
        }
    }

    /// The truck with a trailer of this mass: the rolling coefficient is the mean by mass.
    pub fn combination_with(&self, truck: &TruckRecord, trailer_kg: f64) -> Result<Combination> {
        let road = self.road_model()?;
        let trailer_kg = crate::error::within("trailer_kg", trailer_kg, 0.0, 1e6)?;
        let mass_kg = truck.truck_kg + trailer_kg;
        let rolling_coefficient = (truck.truck_kg * road.roll_truck + trailer_kg * road.roll_trailer) / mass_kg;
        Ok(Combination { mass_kg, rolling_coefficient, drag_area_m2: truck.drag_area_m2 })
    }

    /// A combination behind this drive line, with the record's axle efficiency and air.
    pub fn haul(&self, combination: Combination, driveline: Driveline) -> Result<Haul> {
        let road = self.road_model()?;
        Ok(Haul {
            combination,
            driveline,
            axle_efficiency: road.axle_efficiency,
            air_density_kg_m3: road.air_density_kg_m3,
        })
    }
}
