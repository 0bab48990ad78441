//! Shafts, their splines, and the slopes for counting damage.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::quantity::PerVariant;

/// Shaft in torsion.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ShaftRecord {
    /// Outside diameter, mm.
    #[schemars(extend("x-least" = 1))]
    pub outside_mm: PerVariant<f64>,
    /// Inside diameter, mm; 0 for a solid shaft.
    #[schemars(range(min = 0))]
    pub inside_mm: f64,
    /// The torque that it carries.
    pub carries: ShaftTorque,
    /// Yield stress in shear, MPa.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub shear_yield_mpa: f64,
    /// Relative standard uncertainty of stress and yield together: sizes, form, hardness. Without it the shaft is not judged.
    #[schemars(range(min = 0, max = 1))]
    pub u_rel_stress: Option<f64>,
    /// The spline that brings the torque in or out.
    pub spline: Option<SplineRecord>,
}

/// A spline of a shaft.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SplineRecord {
    /// Number of teeth.
    #[schemars(extend("x-least" = 4, "x-most" = 200))]
    pub teeth: PerVariant<u32>,
    /// Outer diameter of the contact, mm.
    #[schemars(extend("x-least" = 1))]
    pub major_mm: PerVariant<f64>,
    /// Pitch diameter, mm.
    #[schemars(extend("x-least" = 1))]
    pub pitch_diameter_mm: PerVariant<f64>,
    /// Inner diameter of the contact, mm.
    #[schemars(extend("x-least" = 1))]
    pub minor_mm: PerVariant<f64>,
    /// Length in contact, mm.
    #[schemars(extend("x-least" = 1))]
    pub length_mm: PerVariant<f64>,
}

/// Torque of a shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ShaftTorque {
    /// Torque of the turbine.
    Turbine,
    /// Torque of the output.
    Output,
}

/// Slopes for counting damage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Fatigue {
    /// Slope of the stress-cycle line.
    pub slope: Slopes,
    /// Contacts that the reference torque gives.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub reference_contacts: f64,
    /// Reference torque on a sun over its torque at rating in its worst forward gear.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub reference_over_rated: f64,
}

/// Slopes of stress-cycle lines.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Slopes {
    /// Bending of gear teeth.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub gear_bending: f64,
    /// Shafts.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub shaft: f64,
    /// Needle bearings.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub needle: f64,
}
