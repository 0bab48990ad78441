//! Park locks of a record.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::steel;
use crate::error::{Error, Result};
use crate::hold::{LineContact, ParkGear, Pawl, ToothStrength};
use crate::record::Family;
use crate::record::quantity::Size;

/// Park gear.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ParkRecord {
    /// Number of teeth.
    #[schemars(range(min = 1, max = 100))]
    pub teeth: u32,
    /// Face width, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub face_mm: f64,
    /// Thickness of a tooth at its root, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub tooth_root_mm: f64,
    /// Diameter at which the pawl bears, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub contact_diameter_mm: f64,
    /// Root diameter, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub root_diameter_mm: f64,
    /// Tip diameter, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub tip_diameter_mm: f64,
    /// Width between two teeth along the contact diameter, mm; with the pawl's width it gives the speed at which it skips.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub space_mm: Option<f64>,
    /// Width of the pawl along the contact diameter, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub pawl_tip_mm: Option<f64>,
    /// Radius of the pawl where it bears on the tooth, mm; gives the contact pressure there.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub pawl_tip_radius_mm: Option<f64>,
}

/// What all park locks of the family share.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ParkRules {
    /// Yield stress of the park gear, MPa.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub yield_mpa: f64,
    /// Relative standard uncertainty of the stress.
    #[schemars(range(min = 0, max = 1))]
    pub u_rel_stress: f64,
    /// Stress at the fillet over that of the plain beam; left out: 1, the plain beam.
    #[schemars(range(min = 1, max = 5))]
    pub stress_factor: Option<f64>,
    /// Rocking load over static load; 1 is static, and a user must choose it.
    #[schemars(range(min = 1, max = 5))]
    pub rocking_factor: f64,
    /// Flank angle of the pawl, degrees.
    #[schemars(range(min = 0, max = 45))]
    pub pawl_flank_deg: f64,
    /// Friction between pawl and tooth.
    #[schemars(extend("x-most" = 1))]
    pub pawl_friction: Size,
    /// Moment of inertia of the pawl, kg·m².
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub pawl_inertia_kg_m2: f64,
    /// Torque of the pawl spring, N·m.
    #[schemars(range(min = 0))]
    pub pawl_spring_nm: f64,
    /// Angle through which the pawl drops, degrees.
    #[schemars(range(min = 0, max = 90))]
    pub pawl_drop_deg: f64,
    /// Half of the angle of the cone or wedge that keeps the pawl in, degrees.
    #[schemars(range(min = 0.1, max = 30))]
    pub cone_half_angle_deg: Option<f64>,
}

/// The park lock of a variant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParkLock {
    /// The gear.
    pub gear: ParkGear,
    /// The pawl.
    pub pawl: Pawl,
    /// What a tooth bears.
    pub strength: ToothStrength,
    /// Angle in which the pawl can drop, degrees, where the record has both widths.
    pub window_deg: Option<f64>,
    /// Pawl on tooth, where the record has the radius of the pawl: on a flat flank, over the face, of
    /// [`RACE_YOUNG_MPA`](crate::practice::RACE_YOUNG_MPA).
    pub tip: Option<LineContact>,
    /// Half of the angle of the cone that keeps the pawl in, degrees, where the record has it.
    pub cone_half_angle_deg: Option<f64>,
}

impl ParkRecord {
    /// The gear, as the hold chapter takes it.
    pub fn gear(&self) -> Result<ParkGear> {
        let Self { teeth, face_mm, tooth_root_mm, contact_diameter_mm, root_diameter_mm, tip_diameter_mm, .. } = *self;
        ParkGear { teeth, face_mm, tooth_root_mm, contact_diameter_mm, root_diameter_mm, tip_diameter_mm }.checked()
    }

    pub(super) fn window_deg(&self) -> Result<Option<f64>> {
        match (self.space_mm, self.pawl_tip_mm) {
            (Some(space_mm), Some(pawl_tip_mm)) => self.gear()?.window_deg(space_mm, pawl_tip_mm).map(Some),
            _ => Ok(None),
        }
    }
}

impl Family {
    /// The park lock of a variant.
    pub fn park_lock(&self, variant: &str) -> Result<ParkLock> {
        let missing = |name, why| Error::Missing { name, why };
        let records = self.park.as_ref().ok_or(missing("park", "the record has no [park] table"))?;
        let record = records.get(variant).ok_or(missing("park", "the record gives none for this variant"))?;
        let rules = self.park_rules.as_ref().ok_or(missing("park_rules", "the record has no [park_rules] table"))?;
        let gear = record.gear()?;
        let tip = |radius| LineContact { first: steel(radius), second: steel(f64::INFINITY), length_mm: gear.face_mm };
        Ok(ParkLock {
            gear,
            pawl: Pawl {
                flank_deg: rules.pawl_flank_deg,
                friction: rules.pawl_friction.limits(),
                inertia_kg_m2: rules.pawl_inertia_kg_m2,
                spring_nm: rules.pawl_spring_nm,
                drop_deg: rules.pawl_drop_deg,
            },
            strength: ToothStrength {
                yield_mpa: rules.yield_mpa,
                stress_factor: rules.stress_factor.unwrap_or(1.0),
                stress_u_rel: rules.u_rel_stress,
            },
            window_deg: record.window_deg()?,
            tip: record.pawl_tip_radius_mm.map(tip),
            cone_half_angle_deg: rules.cone_half_angle_deg,
        })
    }
}
