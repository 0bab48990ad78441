//! Tires, engines, converters, road model and trucks.

use std::string::String;
use std::vec::Vec;

use indexmap::IndexMap;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::Size;
use super::ratings::TowRecord;
use crate::error::{Error, Result};
use crate::judge::Reading;
use crate::road::Driveline;
use crate::tire::{self, Rolling, Tire, TireService, rolling_by_share};

/// A fleet and what its trucks are made of.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Fleet")]
pub struct Fleet {
    /// Version of the record's layout: 1.
    #[schemars(range(min = 1, max = 1))]
    pub schema: u32,
    /// Tires by name.
    #[serde(default)]
    #[schemars(extend("x-gives" = "tire"))]
    pub tire: IndexMap<String, TireRecord>,
    /// Rolling circumference from free circumference.
    pub tire_model: Option<TireModel>,
    /// Engines by name.
    #[serde(default)]
    #[schemars(extend("x-gives" = "engine"))]
    pub engine: IndexMap<String, EngineRecord>,
    /// Torque converters by name.
    #[serde(default)]
    #[schemars(extend("x-gives" = "converter"))]
    pub converter: IndexMap<String, ConverterRecord>,
    /// What all converters share.
    pub converter_rules: Option<ConverterRules>,
    /// Road model.
    pub road: Option<RoadRecord>,
    /// Trucks.
    #[serde(default)]
    pub truck: Vec<TruckRecord>,
}

/// A tire size.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum TireRecord {
    /// Metric, passenger class: `265/65R18`.
    Metric {
        /// Section width, mm.
        #[schemars(range(min = 100, max = 500))]
        width_mm: f64,
        /// Section height over width, percent.
        #[schemars(range(min = 20, max = 100))]
        aspect_pct: f64,
        /// Rim code, inches.
        #[schemars(range(min = 8, max = 30))]
        rim_in: f64,
    },
    /// Metric, light-truck class: `LT275/70R18`.
    Lt {
        /// Section width, mm.
        #[schemars(range(min = 100, max = 500))]
        width_mm: f64,
        /// Section height over width, percent.
        #[schemars(range(min = 20, max = 100))]
        aspect_pct: f64,
        /// Rim code, inches.
        #[schemars(range(min = 8, max = 30))]
        rim_in: f64,
    },
    /// Flotation: `35x12.50R17`, overall diameter and width in inches.
    Flotation {
        /// Nominal overall diameter, inches.
        #[schemars(range(min = 15, max = 60))]
        diameter_in: f64,
        /// Section width, inches.
        #[schemars(range(min = 4, max = 30))]
        width_in: f64,
        /// Rim code, inches.
        #[schemars(range(min = 8, max = 30))]
        rim_in: f64,
    },
    /// As it stands on the sidewall.
    Sidewall {
        /// The designation: `LT235/80R17 120/117R`.
        #[schemars(length(min = 1))]
        size: String,
    },
}

impl TireRecord {
    /// The tire as the tire chapter takes it.
    pub fn tire(&self) -> Result<Tire> {
        match self {
            Self::Metric { width_mm, aspect_pct, rim_in } => {
                Tire::metric(TireService::Unstated, *width_mm, *aspect_pct, *rim_in)
            }
            Self::Lt { width_mm, aspect_pct, rim_in } => {
                Tire::metric(TireService::LightTruck, *width_mm, *aspect_pct, *rim_in)
            }
            Self::Flotation { diameter_in, width_in, rim_in } => {
                Tire::flotation(TireService::Unstated, *diameter_in, *width_in, *rim_in)
            }
            Self::Sidewall { size } => tire::parse(size),
        }
    }
}

impl Fleet {
    /// Rolling circumference of a tire: its geometric diameter and the share of the tire model.
    pub fn rolling(&self, tire: &str) -> Result<Rolling> {
        let missing = |name, why| Error::Missing { name, why };
        let record = self.tire.get(tire).ok_or(missing("tire", "the fleet has no tire of this name"))?;
        let model =
            self.tire_model.as_ref().ok_or(missing("tire_model", "it gives rolling over free circumference"))?;
        let share = Reading::new(model.rolling_over_free, model.u_rolling_over_free)?;
        rolling_by_share(record.tire()?.geometric_diameter_mm()?, share)
    }

    /// Axle and tire that are fitted to a truck.
    pub fn fitted(&self, truck: &TruckRecord) -> Result<Driveline> {
        Driveline::new(truck.axle, 1.0, self.rolling(&truck.tire)?.circumference_mm)
    }

    /// Axle and tire that the unit of a truck is programmed for.
    pub fn programmed(&self, truck: &TruckRecord) -> Result<Driveline> {
        let tire = truck.tire_programmed.as_ref().unwrap_or(&truck.tire);
        let axle = truck.axle_programmed.unwrap_or(truck.axle);
        Driveline::new(axle, 1.0, self.rolling(tire)?.circumference_mm)
    }
}

/// Rolling circumference from free circumference.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TireModel {
    /// Rolling over free circumference.
    #[schemars(range(min = 0.9, max = 1))]
    pub rolling_over_free: f64,
    /// Its standard uncertainty.
    #[schemars(range(min = 0, max = 0.1))]
    pub u_rolling_over_free: f64,
}

/// Full-throttle net torque against speed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("x-same_length" = ["speed_rpm", "torque_nm"]))]
pub struct EngineRecord {
    /// Speeds, 1/min.
    #[schemars(length(min = 2), extend("x-order" = "rising", "x-least" = 0))]
    pub speed_rpm: Vec<f64>,
    /// Torques, N·m.
    #[schemars(extend("x-least" = 0))]
    pub torque_nm: Vec<f64>,
    /// Greatest speed, 1/min.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub max_rpm: f64,
    /// Moment of inertia, kg·m².
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub inertia_kg_m2: f64,
    /// How it breathes: what thin air does to its torque follows only for a natural one.
    pub aspiration: Option<Aspiration>,
    /// The converter behind it.
    #[schemars(extend("x-refers" = "converter"))]
    pub converter: String,
}

/// How an engine breathes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Aspiration {
    /// Its cylinders draw the air.
    Natural,
    /// A turbine or a compressor presses the air in, and a control decides how much torque it keeps.
    Turbocharged,
}

/// Characteristic of a torque converter.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("x-same_length" = ["speed_ratio", "torque_ratio", "k_rpm_per_sqrt_nm"]))]
pub struct ConverterRecord {
    /// Outside diameter, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub diameter_mm: f64,
    /// Turbine speed over impeller speed.
    #[schemars(length(min = 2), extend("x-order" = "rising", "x-least" = 0, "x-most" = 1))]
    pub speed_ratio: Vec<f64>,
    /// Turbine torque over impeller torque.
    #[schemars(extend("x-above" = 0, "x-most" = 5))]
    pub torque_ratio: Vec<f64>,
    /// Impeller speed over the root of impeller torque, 1/min per √(N·m).
    #[schemars(extend("x-above" = 0))]
    pub k_rpm_per_sqrt_nm: Vec<f64>,
}

/// What all converters share.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ConverterRules {
    /// Difference from the computed stall speed that proves no fault, 1/min.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub stall_allow_rpm: f64,
    /// Longest stall, s.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub stall_limit_s: f64,
    /// Fluid in the converter, L.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub charge_l: f64,
    /// Slip that the lock-up control aims at, 1/min.
    #[schemars(range(min = 0))]
    pub lockup_slip_target_rpm: f64,
    /// Slip that is a fault, 1/min.
    #[schemars(range(min = 0))]
    pub lockup_slip_alarm_rpm: f64,
}

/// Road model.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("x-same_length" = ["grade_pct", "speed_km_h"]))]
pub struct RoadRecord {
    /// Rolling resistance coefficient of the truck.
    #[schemars(range(min = 0, max = 0.1))]
    pub roll_truck: f64,
    /// Rolling resistance coefficient of the trailer.
    #[schemars(range(min = 0, max = 0.1))]
    pub roll_trailer: f64,
    /// Density of the air, kg/m³.
    #[schemars(range(min = 0.3, max = 1.8))]
    pub air_density_kg_m3: f64,
    /// Acceleration of gravity, m/s².
    #[schemars(range(min = 9.7, max = 9.9))]
    pub gravity_m_s2: f64,
    /// Efficiency of the axle.
    #[schemars(range(min = 0.5, max = 1))]
    pub axle_efficiency: f64,
    /// Share of full torque that stays in hand in the gear used.
    #[schemars(range(min = 0, max = 0.9))]
    pub torque_reserve: f64,
    /// Lowest engine speed with the converter locked, 1/min.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub lowest_locked_rpm: f64,
    /// Grades, percent.
    #[schemars(length(min = 1), extend("x-order" = "rising"))]
    pub grade_pct: Vec<f64>,
    /// Speed asked for on each grade, km/h.
    #[schemars(extend("x-above" = 0))]
    pub speed_km_h: Vec<f64>,
}

/// A truck.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TruckRecord {
    /// Name of the truck.
    #[schemars(extend("x-gives" = "truck"))]
    pub id: String,
    /// What it shows.
    pub story: Option<String>,
    /// Variant of its unit.
    #[schemars(extend("x-refers" = "variant"))]
    pub variant: String,
    /// Parts that came from another variant.
    #[serde(default, skip_serializing_if = "IndexMap::is_empty")]
    #[schemars(extend("x-refers" = "part", "x-values_refer" = "variant"))]
    pub parts_from: IndexMap<String, String>,
    /// Machining done.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[schemars(extend("x-refers" = "machining"))]
    pub machined: Vec<String>,
    /// Engine.
    #[schemars(extend("x-refers" = "engine"))]
    pub engine: String,
    /// Axle ratio fitted.
    #[schemars(range(min = 1, max = 12))]
    pub axle: f64,
    /// Axle ratio that the unit is programmed for, if another.
    #[schemars(range(min = 1, max = 12))]
    pub axle_programmed: Option<f64>,
    /// Tire fitted; `unknown` with `tire_candidates`.
    #[schemars(extend("x-refers" = "tire", "x-or" = "unknown"))]
    pub tire: String,
    /// Tire that the unit is programmed for, if another.
    #[schemars(extend("x-refers" = "tire"))]
    pub tire_programmed: Option<String>,
    /// What the tire may be.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[schemars(extend("x-refers" = "tire"))]
    pub tire_candidates: Vec<String>,
    /// Mass of the truck, kg.
    #[schemars(range(min = 500, max = 60000))]
    pub truck_kg: f64,
    /// Mass of the trailer, kg.
    #[schemars(range(min = 0, max = 100000))]
    pub trailer_kg: Option<f64>,
    /// What the mass of the trailer may be, kg.
    pub trailer_range_kg: Option<Size>,
    /// Drag area of the combination, m².
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub drag_area_m2: f64,
    /// Hours on each grade of the road table.
    #[schemars(extend("x-least" = 0))]
    pub hours: Vec<f64>,
    /// Ratings, levers, hitch and tires.
    pub tow: Option<TowRecord>,
}
