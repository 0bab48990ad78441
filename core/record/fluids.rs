//! Fluids, fill, sump and cooler.

use std::string::String;
use std::vec::Vec;

use indexmap::IndexMap;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::Pair;
use crate::error::Result;
use crate::fluid::{Fill, Fluid, Sump};

/// Fluids with the fill and cooler of a family.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Fluids")]
pub struct Fluids {
    /// Version of the record's layout: 1.
    #[schemars(range(min = 1, max = 1))]
    pub schema: u32,
    /// Fluids by name.
    #[schemars(extend("x-gives" = "fluid"))]
    pub fluid: IndexMap<String, FluidRecord>,
    /// Volumes and levels.
    pub fill: Option<FillRecord>,
    /// Least return flow of the cooler.
    pub cooler: Option<CoolerRecord>,
}

impl FluidRecord {
    /// The fluid as the fluid chapter takes it.
    #[must_use]
    pub fn fluid(&self) -> Fluid {
        Fluid {
            density_15c_kg_m3: self.density_15c_kg_m3,
            expansion_per_k: self.expansion_per_k.unwrap_or(0.0),
            viscosity_40c_mm2_s: self.viscosity_40c_mm2_s,
            viscosity_100c_mm2_s: self.viscosity_100c_mm2_s,
        }
    }
}

impl FillRecord {
    /// The fill as the fluid chapter takes it, if its numbers agree with each other.
    pub fn fill(&self) -> Result<Fill> {
        let limits = self.check_window_c.limits();
        let fill = Fill {
            sump: Sump::from_table(&self.sump.height_mm, &self.sump.free_area_cm2)?,
            dry_l: self.dry_l,
            service_l: self.service_l,
            cooler_and_lines_l: self.cooler_and_lines_l,
            drainback_off_l: self.drainback_off_l,
            check_low_c: limits.lower,
            check_high_c: limits.upper,
            check_reference_c: self.check_reference_c,
            pickup_uncovers_mm: self.pickup_uncovers_mm,
            gear_dips_mm: self.gear_dips_mm,
        };
        fill.check_fill()?;
        Ok(fill)
    }
}

/// A fluid.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FluidRecord {
    /// Name and a word about it.
    pub label: Option<String>,
    /// Density at 15 °C, kg/m³.
    #[schemars(range(min = 500, max = 1300))]
    pub density_15c_kg_m3: f64,
    /// Kinematic viscosity at 40 °C, mm²/s.
    #[schemars(range(min = 1, max = 5000))]
    pub viscosity_40c_mm2_s: f64,
    /// Kinematic viscosity at 100 °C, mm²/s.
    #[schemars(range(min = 0.5, max = 500))]
    pub viscosity_100c_mm2_s: f64,
    /// Share by which the volume grows per kelvin; left out, the lubricating-oil group of API MPMS 11.1 gives it.
    #[schemars(range(min = 1e-5, max = 2e-3))]
    pub expansion_per_k: Option<f64>,
    /// Flash point, °C.
    #[schemars(range(min = 0, max = 400))]
    pub flash_c: Option<f64>,
    /// Variants whose linings are approved in this fluid.
    #[serde(default)]
    #[schemars(extend("x-refers" = "variant"))]
    pub friction_approved: Vec<String>,
}

/// Volumes and levels.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FillRecord {
    /// Volume of a dry unit, L.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub dry_l: f64,
    /// Volume of a service change, L.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub service_l: f64,
    /// Volume of cooler and lines, L.
    #[schemars(range(min = 0))]
    pub cooler_and_lines_l: f64,
    /// Volume that returns to the sump when the engine stops, L.
    #[schemars(range(min = 0))]
    pub drainback_off_l: f64,
    /// Fluid temperatures between which the level may be checked, °C.
    pub check_window_c: Pair,
    /// Fluid temperature at which the level is right, °C.
    #[schemars(range(min = -40, max = 150))]
    pub check_reference_c: f64,
    /// What height 0 is, and in which state the unit must be.
    pub level_reference: String,
    /// Height at which the pickup draws air, mm.
    pub pickup_uncovers_mm: f64,
    /// Height at which gears dip in the fluid, mm.
    pub gear_dips_mm: f64,
    /// Free area of the sump against height.
    pub sump: SumpRecord,
}

/// Free area of the sump against height, linear between rows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("x-same_length" = ["height_mm", "free_area_cm2"]))]
pub struct SumpRecord {
    /// Heights, mm.
    #[schemars(length(min = 2), extend("x-order" = "rising"))]
    pub height_mm: Vec<f64>,
    /// Free areas, cm².
    #[schemars(extend("x-above" = 0))]
    pub free_area_cm2: Vec<f64>,
}

/// Least return flow of the cooler at idle.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("x-same_length" = ["temperature_c", "least_flow_l_min"]))]
pub struct CoolerRecord {
    /// Fluid temperatures at the sump, °C.
    #[schemars(length(min = 2), extend("x-order" = "rising"))]
    pub temperature_c: Vec<f64>,
    /// Flows, L/min.
    #[schemars(extend("x-least" = 0))]
    pub least_flow_l_min: Vec<f64>,
}
