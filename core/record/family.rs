//! A family of units: its gear train, variants, evidence, fits, packs and other hard parts.

mod clutch;
mod evidence;
mod exchange;
mod shaft;
mod thrust;

use std::format;
use std::string::String;
use std::vec::Vec;

use indexmap::IndexMap;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::document::Path;
use super::fault::Fault;
use super::fits::{FitRecord, MaterialRecord};
use super::locks::{OneWayRecord, ParkRecord, ParkRules};
use super::named_train::NamedTrain;
use super::problem::Problems;
use super::quantity::{PerVariant, Size};
use super::stack::Selective;
use super::train::TrainRecord;

pub use clutch::{ClutchRecord, Friction, SteelRecord};
pub use evidence::{Evidence, EvidenceMeasured};
pub use exchange::{AliasRecord, CoverRecord, MachiningRecord, MatchRecord};
pub use shaft::{Fatigue, ShaftRecord, ShaftTorque, Slopes, SplineRecord};
pub use thrust::{PushedBy, ThrustRace, WasherRecord, WheelName};

/// A family of units that share a layout. Lengths of parts are `[min, max]` of the finished part at the reference temperature.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Family")]
pub struct Family {
    /// Version of the record's layout: 1.
    #[schemars(range(min = 1, max = 1))]
    pub schema: u32,
    /// Name, status and variants.
    pub meta: Meta,
    /// The gear train.
    pub train: TrainRecord,
    /// Build range, ratings and line pressures of each variant.
    #[serde(default)]
    pub variant: Option<PerVariant<VariantRecord>>,
    /// Share of each variant among the units that come in, before anything is looked at. They sum to 1.
    pub prior: Option<PerVariant<f64>>,
    /// Marks that a person can see.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub evidence: Vec<Evidence>,
    /// Sizes that a person can measure.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub evidence_measured: Vec<EvidenceMeasured>,
    /// Round fits.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fit: Vec<FitRecord>,
    /// Metals of the parts, by name.
    #[serde(default, skip_serializing_if = "IndexMap::is_empty")]
    #[schemars(extend("x-gives" = "material"))]
    pub material: IndexMap<String, MaterialRecord>,
    /// Lands that must lie on a bearing surface.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cover: Vec<CoverRecord>,
    /// Pairs that are equal or wrong.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub r#match: Vec<MatchRecord>,
    /// The only machining permitted.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub machining: Vec<MachiningRecord>,
    /// Other number, same fit.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub alias: Vec<AliasRecord>,
    /// Price list.
    pub price: Option<Price>,
    /// Friction of lining against steel in this fluid.
    pub friction: Option<Friction>,
    /// Clutches and brakes by element.
    #[serde(default, skip_serializing_if = "IndexMap::is_empty")]
    #[schemars(extend("x-refers" = "element"))]
    pub clutch: IndexMap<String, ClutchRecord>,
    /// The one-way clutch of each variant.
    pub one_way: Option<PerVariant<OneWayRecord>>,
    /// The park lock of each variant.
    pub park: Option<PerVariant<ParkRecord>>,
    /// What all park locks share.
    pub park_rules: Option<ParkRules>,
    /// The needle thrust bearing of each variant.
    pub thrust_race: Option<PerVariant<ThrustRace>>,
    /// Thrust washers by name.
    #[serde(default, skip_serializing_if = "IndexMap::is_empty")]
    pub thrust_washer: IndexMap<String, WasherRecord>,
    /// Shafts by name.
    #[serde(default, skip_serializing_if = "IndexMap::is_empty")]
    pub shaft: IndexMap<String, ShaftRecord>,
    /// Pump.
    pub pump: Option<PumpRecord>,
    /// Shift schedule.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shift: Vec<ShiftRecord>,
    /// Selective shims and rings.
    pub selective: Option<Selective>,
    /// Slopes for counting damage.
    pub fatigue: Option<Fatigue>,
}

impl Family {
    /// The gear train of a variant.
    pub fn train(&self, variant: &str) -> core::result::Result<NamedTrain, Problems> {
        if self.meta.variants.iter().any(|known| known == variant) {
            return self.train.named(Some(variant));
        }
        let message = format!("there is no variant {variant:?}");
        let mend = format!("known: {}", self.meta.variants.join(", "));
        let path = Path::default().key("meta").key("variants");
        Err(Problems(std::vec![Fault::error(path, message, mend).unplaced()]))
    }
}

/// Name, status and variants of a family.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Meta {
    /// What the family is, in a line.
    pub title: Option<String>,
    /// Where the data comes from and how far it can be trusted.
    pub status: Option<String>,
    /// Temperature at which sizes hold, °C.
    #[schemars(range(min = -40, max = 60))]
    pub reference_c: Option<f64>,
    /// Variants in the order in which they were built.
    #[schemars(length(min = 1), extend("uniqueItems" = true, "x-gives" = "variant"))]
    pub variants: Vec<String>,
}

/// Build range, ratings and line pressures of a variant.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct VariantRecord {
    /// First and last build number.
    pub build_index: Option<Size>,
    /// Rated torque at the turbine, N·m.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub rated_turbine_nm: f64,
    /// Rated torque at the output, N·m.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub rated_output_nm: f64,
    /// Torque at the turbine allowed in reverse, N·m.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub reverse_turbine_nm: Option<f64>,
    /// Line pressure at idle, kPa.
    pub line_idle_kpa: Option<Size>,
    /// Line pressure at stall in a forward range, kPa.
    pub line_stall_d_kpa: Option<Size>,
    /// Line pressure at stall in reverse, kPa.
    pub line_stall_r_kpa: Option<Size>,
    /// Greatest pressure that the control can ask for, kPa.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub line_control_max_kpa: f64,
}

/// Price list: a key for each part or machining.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[schemars(extend("x-refers" = "part|machining", "x-least" = 0))]
pub struct Price {
    /// What is counted.
    pub unit: String,
    /// Price of each part or machining.
    #[serde(flatten)]
    pub of: IndexMap<String, f64>,
}

/// Pump.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PumpRecord {
    /// Displacement, cm³ per turn.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub displacement_cm3_rev: f64,
    /// Leakage at 90 °C, L/min per MPa.
    #[schemars(range(min = 0))]
    pub leak_90c_l_min_mpa: f64,
    /// Relative standard uncertainty of the displacement; left out, it is taken as exact.
    #[schemars(range(min = 0, max = 1))]
    pub u_rel_displacement: Option<f64>,
    /// Relative standard uncertainty of the leak; left out, it is taken as exact.
    #[schemars(range(min = 0, max = 1))]
    pub u_rel_leak: Option<f64>,
    /// Speed of the pump at idle, 1/min.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub idle_rpm: Option<f64>,
    /// What lubrication, cooler, valves and seal rings take, L/min.
    #[schemars(range(min = 0))]
    pub demand_l_min: Option<f64>,
}

/// A point of the shift schedule.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ShiftRecord {
    /// Gear before.
    #[schemars(extend("x-refers" = "gear"))]
    pub from: String,
    /// Gear after.
    #[schemars(extend("x-refers" = "gear"))]
    pub to: String,
    /// Output-shaft speed at which it shifts at full throttle, 1/min.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub output_rpm: f64,
}
