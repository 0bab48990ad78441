//! A family of units: its gear train, variants, evidence, fits, packs and other hard parts.

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
use super::quantity::{Estimate, Pair, PerVariant, Size};
use super::stack::Selective;
use super::train::TrainRecord;
use crate::clutch::{Annulus, Head, Pack, plate_faces};
use crate::error::{Error, Result};

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
