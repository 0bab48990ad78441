//! What tells variants apart: marks to look for and sizes to measure.

use std::string::String;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::quantity::{PerVariant, Size};

/// A mark that is there or not.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Evidence {
    /// Name of the mark.
    #[schemars(extend("x-gives" = "evidence"))]
    pub id: String,
    /// What to look for.
    pub look: String,
    /// The part that carries the mark.
    #[schemars(extend("x-gives" = "part"))]
    pub carrier: String,
    /// Chance that the mark is there on an untouched unit.
    #[schemars(extend("x-least" = 0, "x-most" = 1))]
    pub chance: PerVariant<f64>,
    /// Chance that the part came from another unit.
    #[schemars(range(min = 0, max = 1))]
    pub exchanged: f64,
    /// Labor to look, minutes.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub minutes: f64,
}

/// A size that tells variants apart.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EvidenceMeasured {
    /// Name of the size.
    #[schemars(extend("x-gives" = "evidence"))]
    pub id: String,
    /// What to measure.
    pub look: String,
    /// The part that carries the size.
    #[schemars(extend("x-gives" = "part"))]
    pub carrier: String,
    /// The size, mm.
    pub size_mm: PerVariant<Size>,
    /// Chance that the part came from another unit.
    #[schemars(range(min = 0, max = 1))]
    pub exchanged: f64,
    /// Labor to look, minutes.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub minutes: f64,
    /// What it is measured with.
    #[schemars(extend("x-refers" = "instrument"))]
    pub instrument: String,
}
