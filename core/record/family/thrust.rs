//! What takes up the push of the gear wheels: needle thrust bearings and thrust washers.

use std::string::String;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::quantity::PerVariant;

/// Needle thrust bearing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ThrustRace {
    /// Number of needles.
    #[schemars(range(min = 1, max = 400))]
    pub needles: u32,
    /// Diameter and length of a needle, mm.
    #[schemars(inner(range(min = 0.1, max = 100)))]
    pub needle_mm: [f64; 2],
    /// Pitch diameter, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub pitch_diameter_mm: f64,
    /// The gear wheel that pushes on it; its set must state module and helix angle.
    pub pushed_by: Option<PushedBy>,
}

/// Thrust washer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WasherRecord {
    /// Outside diameter of the face that bears, mm.
    #[schemars(extend("x-least" = 1))]
    pub outside_mm: PerVariant<f64>,
    /// Inside diameter of the face that bears, mm.
    #[schemars(extend("x-least" = 0))]
    pub inside_mm: PerVariant<f64>,
    /// Share of that face that grooves and holes leave.
    #[schemars(range(max = 1), extend("exclusiveMinimum" = 0))]
    pub face_share: f64,
    /// The gear wheel that pushes on it; its set must state module and helix angle.
    pub pushed_by: Option<PushedBy>,
}

/// A gear wheel that pushes along the axis, and the carrier that it turns against.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PushedBy {
    /// Set of the wheel.
    pub set: String,
    /// Which wheel of the set.
    pub wheel: WheelName,
    /// Relative standard uncertainty of its push: helix, friction, what else leans on the part. Without it nothing is judged.
    #[schemars(range(min = 0, max = 1))]
    pub u_rel_push: Option<f64>,
}

/// A wheel of a planetary set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum WheelName {
    /// The sun; the large sun of a two-sun set.
    Sun,
    /// The second sun of a stepped set; the small sun of a two-sun set.
    #[serde(rename = "sun_2")]
    Sun2,
    /// The ring.
    Ring,
}
