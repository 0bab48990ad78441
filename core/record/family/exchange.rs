//! What decides whether parts interchange, besides the round fits: covers, matches, machining, numbers that fit alike.

use std::string::String;
use std::vec::Vec;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::quantity::{Pair, PerVariant, Size};

/// A land that must lie on a bearing surface, along the axis or across the diameter.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CoverRecord {
    /// Name of the pair.
    #[schemars(extend("x-gives" = "cover"))]
    pub id: String,
    /// The part that carries.
    #[schemars(extend("x-gives" = "part"))]
    pub surface: String,
    /// The part that is carried.
    #[schemars(extend("x-gives" = "part"))]
    pub land: String,
    /// Where the surface begins and ends, mm.
    pub surface_mm: PerVariant<Pair>,
    /// Where the land begins and ends, mm.
    pub land_mm: PerVariant<Pair>,
    /// Least share of the land that must be carried.
    #[schemars(range(min = 0, max = 1))]
    pub least_cover: f64,
}

/// Parts whose values must be equal.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MatchRecord {
    /// Name of the pair.
    #[schemars(extend("x-gives" = "match"))]
    pub id: String,
    /// The two parts.
    #[schemars(extend("x-gives" = "part"))]
    pub parts: [String; 2],
    /// What both must show: teeth, splines, race.
    pub value: PerVariant<String>,
}

/// A permitted change of a part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MachiningRecord {
    /// Name of the operation.
    #[schemars(extend("x-gives" = "machining"))]
    pub id: String,
    /// The fit that it makes good.
    #[schemars(extend("x-refers" = "fit"))]
    pub fit: String,
    /// The part that is machined.
    #[schemars(extend("x-refers" = "part"))]
    pub part: String,
    /// Variants whose part may be machined.
    #[schemars(extend("x-refers" = "variant"))]
    pub from: Vec<String>,
    /// Variants that it then fits.
    #[schemars(extend("x-refers" = "variant"))]
    pub to_fit: Vec<String>,
    /// Finished size, mm.
    pub finish_mm: Size,
    /// What must be checked afterwards.
    pub check: String,
    /// Greatest run-out after machining, mm.
    #[schemars(range(min = 0))]
    pub runout_limit_mm: f64,
}

/// Numbers that fit alike.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AliasRecord {
    /// The part.
    #[schemars(extend("x-gives" = "part"))]
    pub part: String,
    /// Number in each variant.
    pub numbers: PerVariant<String>,
    /// What differs although the fit is the same.
    pub why: String,
}
