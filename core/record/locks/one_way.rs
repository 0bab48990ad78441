//! One-way clutches of a record.

use core::f64::consts::PI;
use std::format;
use std::vec::Vec;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::steel;
use crate::error::{Error, Result};
use crate::hold::{OneWayHold, Ratchet, Wedge};
use crate::judge::{Reading, Rule};
use crate::record::Family;
use crate::record::document::Path;
use crate::record::fault::Fault;
use crate::record::quantity::Estimate;

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

impl OneWayRecord {
    /// The clutch with what it may bear, checked; races, rollers and sprags are of the steel of
    /// [`RACE_YOUNG_MPA`](crate::practice::RACE_YOUNG_MPA).
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
    pub(super) fn faults(&self, path: &Path) -> Vec<Fault> {
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

impl Family {
    /// The one-way clutch of a variant.
    pub fn one_way_part(&self, variant: &str) -> Result<OneWayPart> {
        let missing = |why| Error::Missing { name: "one_way", why };
        let records = self.one_way.as_ref().ok_or(missing("the record has no [one_way] table"))?;
        records.get(variant).ok_or(missing("the record gives none for this variant"))?.part()
    }
}
