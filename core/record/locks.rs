//! One-way clutches and park locks of a record, as the hold chapter takes them.

use core::f64::consts::PI;
use std::format;
use std::vec::Vec;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Family;
use super::document::Path;
use super::fault::Fault;
use super::quantity::{Estimate, Size};
use super::train::ElementKind;
use super::whole::must_rise;
use crate::error::{Error, Result};
use crate::hold::{ContactBody, LineContact, OneWayHold, ParkGear, Pawl, Ratchet, ToothStrength, Wedge};
use crate::judge::{Reading, Rule};
use crate::practice::{RACE_POISSON, RACE_YOUNG_MPA};

/// One-way clutch.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum OneWayRecord {
    /// Rollers on ramps.
    Roller {
        /// Number of rollers.
        #[schemars(range(min = 1, max = 100))]
        rollers: u32,
        /// Which race is the cylinder; the other one has the ramps.
        race: RaceSide,
        /// Radius of the cylindrical race, mm.
        #[schemars(extend("exclusiveMinimum" = 0))]
        race_radius_mm: f64,
        /// Radius of a roller, mm.
        #[schemars(extend("exclusiveMinimum" = 0))]
        roller_radius_mm: f64,
        /// Length of a roller, mm.
        #[schemars(extend("exclusiveMinimum" = 0))]
        roller_length_mm: f64,
        /// Whole angle between ramp and race, degrees.
        #[schemars(range(min = 1, max = 30))]
        wedge_angle_deg: f64,
        /// Contact stress allowed, MPa.
        #[schemars(extend("exclusiveMinimum" = 0))]
        hertz_allow_mpa: f64,
        /// Relative standard uncertainty of the capacity: angle, radii, length, uneven load.
        #[schemars(range(min = 0, max = 1))]
        u_rel_capacity: Option<f64>,
        /// Friction of roller on race in oil.
        friction: Option<Estimate>,
    },
    /// Sprags between two races.
    Sprag {
        /// Number of sprags.
        #[schemars(range(min = 1, max = 100))]
        sprags: u32,
        /// Radius of the inner race, mm.
        #[schemars(extend("exclusiveMinimum" = 0))]
        inner_race_radius_mm: f64,
        /// Radius of the sprag at the inner race, mm.
        #[schemars(extend("exclusiveMinimum" = 0))]
        sprag_radius_mm: f64,
        /// Length of a sprag, mm.
        #[schemars(extend("exclusiveMinimum" = 0))]
        sprag_length_mm: f64,
        /// Strut angle at the inner race, degrees.
        #[schemars(range(min = 0.5, max = 15))]
        strut_angle_deg: f64,
        /// Contact stress allowed, MPa.
        #[schemars(extend("exclusiveMinimum" = 0))]
        hertz_allow_mpa: f64,
        /// Relative standard uncertainty of the capacity: angle, radii, length, uneven load.
        #[schemars(range(min = 0, max = 1))]
        u_rel_capacity: Option<f64>,
        /// Friction of sprag on race in oil.
        friction: Option<Estimate>,
    },
    /// Struts that drop in notches.
    Ratchet {
        /// Number of struts.
        #[schemars(range(min = 1, max = 100))]
        struts: u32,
        /// Number of notches.
        #[schemars(range(min = 1, max = 400))]
        notches: u32,
        /// Fewest struts that carry together.
        #[schemars(range(min = 1, max = 100))]
        carry_least: u32,
        /// Width and thickness of a strut, mm.
        #[schemars(inner(range(min = 0.1, max = 100)))]
        strut_mm: [f64; 2],
        /// Radius at which the struts carry, mm.
        #[schemars(extend("exclusiveMinimum" = 0))]
        pitch_radius_mm: f64,
        /// Angle of a strut to the tangent, degrees; left out where it lies along it.
        #[schemars(range(min = 0, max = 60))]
        strut_angle_deg: Option<f64>,
        /// Stress allowed in a strut, MPa.
        #[schemars(extend("exclusiveMinimum" = 0))]
        allow_mpa: f64,
        /// Relative standard uncertainty of the capacity: sizes, radius, uneven load.
        #[schemars(range(min = 0, max = 1))]
        u_rel_capacity: Option<f64>,
    },
}

/// Which of two races.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum RaceSide {
    /// The inner race.
    Inner,
    /// The outer race.
    Outer,
}

/// A one-way clutch with what it may bear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OneWayPart {
    /// The clutch.
    pub clutch: OneWayClutch,
    /// Contact pressure allowed, or stress of a strut, MPa.
    pub allow_mpa: f64,
    /// Relative standard uncertainty of the capacity, where the record states one.
    pub capacity_u_rel: Option<f64>,
    /// Friction on the race, where the record states it.
    pub friction: Option<Reading>,
}

/// How a one-way clutch locks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OneWayClutch {
    /// Rollers or sprags.
    Wedge(Wedge),
    /// Struts.
    Ratchet(Ratchet),
}

impl OneWayPart {
    /// Torque at the allowed stress, N·m. Not a rating.
    pub fn capacity_nm(&self) -> Result<f64> {
        match self.clutch {
            OneWayClutch::Wedge(wedge) => wedge.wedge_capacity_nm(self.allow_mpa),
            OneWayClutch::Ratchet(ratchet) => ratchet.strut_capacity_nm(self.allow_mpa),
        }
    }

    /// Whether it holds a torque; the uncertainty of the capacity must be known.
    pub fn hold(&self, need_nm: Reading, rule: Rule) -> Result<OneWayHold> {
        let Some(u_rel) = self.capacity_u_rel else {
            return Err(Error::Missing {
                name: "u_rel_capacity",
                why: "a verdict needs the relative standard uncertainty of the capacity; add it to the record",
            });
        };
        let allow_mpa = Reading::exact(self.allow_mpa)?;
        match self.clutch {
            OneWayClutch::Wedge(wedge) => wedge.wedge_hold(need_nm, allow_mpa, u_rel, rule),
            OneWayClutch::Ratchet(ratchet) => ratchet.strut_hold(need_nm, allow_mpa, u_rel, rule),
        }
    }
}

/// A body of race steel, as common practice has it.
fn steel(radius_mm: f64) -> ContactBody {
    ContactBody { radius_mm, young_mpa: RACE_YOUNG_MPA, poisson: RACE_POISSON }
}

impl OneWayRecord {
    /// The clutch with what it may bear, checked; races, rollers and sprags are of the steel of [`RACE_YOUNG_MPA`].
    pub fn part(&self) -> Result<OneWayPart> {
        let (allow_mpa, capacity_u_rel, friction) = match *self {
            Self::Roller { hertz_allow_mpa, u_rel_capacity, friction, .. }
            | Self::Sprag { hertz_allow_mpa, u_rel_capacity, friction, .. } => {
                (hertz_allow_mpa, u_rel_capacity, friction.map(Estimate::reading))
            }
            Self::Ratchet { allow_mpa, u_rel_capacity, .. } => (allow_mpa, u_rel_capacity, None),
        };
        let part = OneWayPart { clutch: self.clutch(), allow_mpa, capacity_u_rel, friction };
        part.capacity_nm().map(|_| part)
    }

    fn clutch(&self) -> OneWayClutch {
        match *self {
            Self::Roller {
                rollers, race, race_radius_mm, roller_radius_mm, roller_length_mm, wedge_angle_deg, ..
            } => OneWayClutch::Wedge(Wedge {
                count: rollers,
                race: steel(if race == RaceSide::Inner { race_radius_mm } else { -race_radius_mm }),
                body: steel(roller_radius_mm),
                length_mm: roller_length_mm,
                half_angle_deg: wedge_angle_deg / 2.0,
            }),
            Self::Sprag { sprags, inner_race_radius_mm, sprag_radius_mm, sprag_length_mm, strut_angle_deg, .. } => {
                OneWayClutch::Wedge(Wedge {
                    count: sprags,
                    race: steel(inner_race_radius_mm),
                    body: steel(sprag_radius_mm),
                    length_mm: sprag_length_mm,
                    half_angle_deg: strut_angle_deg,
                })
            }
            Self::Ratchet { struts, notches, carry_least, strut_mm, pitch_radius_mm, strut_angle_deg, .. } => {
                let [strut_width_mm, strut_thickness_mm] = strut_mm;
                OneWayClutch::Ratchet(Ratchet {
                    struts,
                    notches,
                    carrying: carry_least,
                    strut_width_mm,
                    strut_thickness_mm,
                    pitch_radius_mm,
                    strut_deg: strut_angle_deg.unwrap_or(0.0),
                })
            }
        }
    }

    /// What its sizes say against one another.
    fn faults(&self, path: &Path) -> Vec<Fault> {
        let found = match (self, self.clutch()) {
            (Self::Roller { rollers, race_radius_mm, roller_radius_mm, race, .. }, _) => {
                let between = if *race == RaceSide::Inner { *roller_radius_mm } else { -roller_radius_mm };
                let crowded = f64::from(*rollers) * roller_radius_mm >= PI * (race_radius_mm + between);
                let message = format!("{rollers} rollers of {roller_radius_mm} mm radius do not fit on the race");
                crowded.then_some(("rollers", message, "correct number, roller or race"))
            }
            (Self::Sprag { inner_race_radius_mm, sprag_radius_mm, .. }, _) => {
                let message = format!("not below the radius of the race, {inner_race_radius_mm}");
                let large = sprag_radius_mm >= inner_race_radius_mm;
                large.then_some(("sprag_radius_mm", message, "exchange the two or correct one"))
            }
            (Self::Ratchet { struts, notches, carry_least, .. }, OneWayClutch::Ratchet(ratchet)) => {
                let together = ratchet.ratchet_index().map_or(u32::MAX, |index| index.together);
                let message = format!("only {together} of {struts} struts drop into {notches} notches together");
                (*carry_least > together).then_some(("carry_least", message, "give that many or fewer"))
            }
            (Self::Ratchet { .. }, OneWayClutch::Wedge(_)) => None,
        };
        match found {
            Some((key, message, mend)) => std::vec![Fault::error(path.key(key), message, mend)],
            None => self.part().err().map(|error| Fault::refused(path.clone(), error)).into_iter().collect(),
        }
    }
}

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
    /// Pawl on tooth, where the record has the radius of the pawl: on a flat flank, over the face, of [`RACE_YOUNG_MPA`].
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

    fn window_deg(&self) -> Result<Option<f64>> {
        match (self.space_mm, self.pawl_tip_mm) {
            (Some(space_mm), Some(pawl_tip_mm)) => self.gear()?.window_deg(space_mm, pawl_tip_mm).map(Some),
            _ => Ok(None),
        }
    }
}

impl Family {
    /// The one-way clutch of a variant.
    pub fn one_way_part(&self, variant: &str) -> Result<OneWayPart> {
        let missing = |why| Error::Missing { name: "one_way", why };
        let records = self.one_way.as_ref().ok_or(missing("the record has no [one_way] table"))?;
        records.get(variant).ok_or(missing("the record gives none for this variant"))?.part()
    }

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

    /// One-way clutches and park locks that contradict themselves or the train.
    pub(super) fn lock_faults(&self) -> Vec<Fault> {
        let root = Path::default();
        let mut faults = Vec::new();
        for (variant, record) in self.one_way.iter().flat_map(|records| records.iter()) {
            faults.extend(record.faults(&root.key("one_way").key(variant)));
        }
        let train_has_one = self.train.element.values().any(|element| element.kind == ElementKind::OneWay);
        if self.one_way.is_some() && !train_has_one {
            let mend = "add it to [train.element], or remove [one_way]";
            faults.push(Fault::error(root.key("one_way"), "the train has no one-way clutch", mend));
        }
        for (variant, record) in self.park.iter().flat_map(|records| records.iter()) {
            let path = root.key("park").key(variant);
            let diameters = [
                ("root_diameter_mm", record.root_diameter_mm),
                ("contact_diameter_mm", record.contact_diameter_mm),
                ("tip_diameter_mm", record.tip_diameter_mm),
            ];
            let refused = |error: Error| Fault::refused(path.key(error.parameter()), error);
            let sizes = || record.gear().and_then(|_| record.window_deg()).err().map(refused);
            faults.extend(must_rise(&path, &diameters).or_else(sizes));
        }
        faults
    }
}
