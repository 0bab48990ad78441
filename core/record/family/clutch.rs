//! Clutches and brakes: friction, pack, piston, spring and steel plates.

use std::string::String;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::quantity::{Estimate, PerVariant, Size};
use crate::clutch::{Annulus, Head, Pack, plate_faces};
use crate::error::{Error, Result};

/// Friction of lining against steel.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Friction {
    /// Static: a closed element holding.
    pub r#static: Estimate,
    /// Dynamic: an element slipping.
    pub dynamic: Estimate,
    /// Relative standard uncertainty of areas and radii together.
    #[schemars(range(min = 0, max = 1))]
    pub geometry_u_rel: f64,
}

/// Pack, piston and spring of a clutch or brake.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ClutchRecord {
    /// Inner and outer radius of the lining, mm.
    pub lining_radius_mm: Size,
    /// Inner and outer radius of the piston, mm.
    pub piston_radius_mm: Size,
    /// Force of the return spring with the piston applied, N.
    pub return_spring_n: Size,
    /// Number of lined plates.
    #[schemars(extend("x-least" = 1, "x-most" = 20))]
    pub plates: PerVariant<u32>,
    /// Running clearance of the pack, mm.
    pub clearance_mm: Size,
    /// What the wave plate of the pack gives way until it is flat, mm.
    pub wave_mm: Option<Size>,
    /// What plates, ring and drum give way under pressure, mm.
    pub bend_mm: Option<Size>,
    /// Travel at which the seal of the piston leaves its land, mm.
    pub seal_land_mm: Option<Size>,
    /// `true` where a dam cancels the oil head behind the piston.
    pub balanced: bool,
    /// Radius of the free surface of the oil, mm; needed where nothing cancels the head.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub head_radius_mm: Option<f64>,
    /// The member that the drum turns with.
    #[schemars(extend("x-refers" = "member"))]
    pub turns_with: String,
    /// The steel plates, which take up the heat of a slip.
    pub steel: Option<SteelRecord>,
}

/// Steel plates of a pack: one to each lined plate, and how they warm up and cool down.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SteelRecord {
    /// Thickness of one plate, mm.
    #[schemars(range(min = 0.5, max = 20))]
    pub thickness_mm: f64,
    /// Time in which a hot pack loses 63 % of its excess temperature to the oil, s.
    #[schemars(range(min = 1, max = 1000))]
    pub cooling_s: f64,
    /// Temperature of the plates above which the lining suffers, °C.
    #[schemars(range(min = 100, max = 600))]
    pub limit_c: f64,
}

impl ClutchRecord {
    /// The pack of a variant, with new linings and without seal drag, as the clutch chapter takes it.
    pub fn pack(&self, variant: &str) -> Result<Pack> {
        let Some(plates) = self.plates.get(variant) else {
            return Err(Error::Missing { name: "plates", why: "the record gives none for this variant" });
        };
        let piston = annulus(self.piston_radius_mm);
        let head = if self.balanced {
            Head::NONE
        } else {
            let Some(free_surface_radius_mm) = self.head_radius_mm else {
                return Err(Error::Missing {
                    name: "head_radius_mm",
                    why: "nothing cancels the oil head of this pack",
                });
            };
            Head { wetted: piston, free_surface_radius_mm }
        };
        Pack {
            lining: annulus(self.lining_radius_mm),
            piston,
            faces: plate_faces(*plates)?,
            worn: false,
            return_spring_n: self.return_spring_n.limits(),
            seal_drag_n: 0.0,
            head,
            dam: Head::NONE,
        }
        .checked()
    }
}

fn annulus(radius_mm: Size) -> Annulus {
    let [inner_radius_mm, outer_radius_mm] = radius_mm.0;
    Annulus { inner_radius_mm, outer_radius_mm }
}
