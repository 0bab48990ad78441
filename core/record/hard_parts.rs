//! Shafts, splines, thrust bearings and washers of a record, at the rating of their variant.

use std::format;
use std::string::String;
use std::vec::Vec;

use super::document::Path;
use super::fault::Fault;
use super::named_train::NamedTrain;
use super::train::{SetKind, SetRecord};
use super::{
    Family, PerVariant, PushedBy, ShaftRecord, ShaftTorque, SplineRecord, ThrustRace, VariantRecord, WasherRecord,
    WheelName,
};
use crate::error::{Error, Result};
use crate::hold::{Helical, NeedleThrust, SetWheel, Shaft, Spline, ThrustWasher, Wheel, WheelThrust, wheel_thrust};
use crate::train::State;

/// A shaft of a variant with the torque of its rating.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatedShaft {
    /// The shaft.
    pub shaft: Shaft,
    /// Torque that the record rates it for, N·m.
    pub torque_nm: f64,
    /// Yield stress in shear, MPa.
    pub shear_yield_mpa: f64,
    /// Relative standard uncertainty of its stress, where the record states one.
    pub stress_u_rel: Option<f64>,
    /// Its spline, where the record has one.
    pub spline: Option<Spline>,
}

/// What a gear wheel pushes along the axis in a gear at rating.
#[derive(Clone, Debug, PartialEq)]
pub struct GearThrust {
    /// Name of the gear.
    pub gear: String,
    /// Torque at the input: the rating, or that of reverse.
    pub input_torque_nm: f64,
    /// The force, or why there is none.
    pub thrust: Result<WheelThrust>,
}

impl GearThrust {
    /// The force, N, where there is one.
    #[must_use]
    pub fn axial_n(&self) -> Option<f64> {
        self.thrust.ok().map(|thrust| thrust.thrust.axial_n)
    }
}

fn of_variant<T: Copy>(values: &PerVariant<T>, name: &'static str, variant: &str) -> Result<T> {
    values.get(variant).copied().ok_or(Error::Missing { name, why: "the record gives none for this variant" })
}

impl ThrustRace {
    /// The bearing, as the hold chapter takes it; its needles bear on their whole length.
    #[must_use]
    pub fn bearing(&self) -> NeedleThrust {
        let [needle_diameter_mm, needle_length_mm] = self.needle_mm;
        let pitch_diameter_mm = self.pitch_diameter_mm;
        NeedleThrust { needles: self.needles, needle_diameter_mm, needle_length_mm, pitch_diameter_mm }
    }
}

impl WasherRecord {
    /// The washer of a variant.
    pub fn washer(&self, variant: &str) -> Result<ThrustWasher> {
        Ok(ThrustWasher {
            outside_mm: of_variant(&self.outside_mm, "outside_mm", variant)?,
            inside_mm: of_variant(&self.inside_mm, "inside_mm", variant)?,
            face_share: self.face_share,
        })
    }
}

impl SplineRecord {
    fn of(&self, variant: &str) -> Result<Spline> {
        Ok(Spline {
            teeth: of_variant(&self.teeth, "teeth", variant)?,
            major_mm: of_variant(&self.major_mm, "major_mm", variant)?,
            minor_mm: of_variant(&self.minor_mm, "minor_mm", variant)?,
            pitch_diameter_mm: of_variant(&self.pitch_diameter_mm, "pitch_diameter_mm", variant)?,
            length_mm: of_variant(&self.length_mm, "length_mm", variant)?,
        })
    }
}

impl ShaftRecord {
    /// The shaft of a variant at its rating.
    pub fn rated(&self, variant: &str, rating: &VariantRecord) -> Result<RatedShaft> {
        let outside_mm = of_variant(&self.outside_mm, "outside_mm", variant)?;
        Ok(RatedShaft {
            shaft: Shaft { outside_mm, inside_mm: self.inside_mm },
            torque_nm: match self.carries {
                ShaftTorque::Turbine => rating.rated_turbine_nm,
                ShaftTorque::Output => rating.rated_output_nm,
            },
            shear_yield_mpa: self.shear_yield_mpa,
            stress_u_rel: self.u_rel_stress,
            spline: self.spline.as_ref().map(|spline| spline.of(variant)).transpose()?,
        })
    }
}

impl VariantRecord {
    /// Rated torque at the input in this state, N·m: that of reverse where the output turns backward and the record has one.
    pub(super) fn input_nm(&self, state: &State) -> f64 {
        let backward = state.ratio.signum() < 0;
        self.reverse_turbine_nm.filter(|_| backward).unwrap_or(self.rated_turbine_nm)
    }
}

impl SetRecord {
    /// The teeth that a wheel of this set meshes.
    fn helical(&self, wheel: WheelName) -> Result<Helical> {
        if self.kind == SetKind::Stepped && wheel != WheelName::Sun {
            let why = "the record states the module of the first step only; name the wheel that meshes it";
            return Err(Error::Missing { name: "pushed_by", why });
        }
        match (self.module_mm, self.helix_deg) {
            (Some(module_mm), Some(helix_deg)) => Ok(Helical { module_mm, helix_deg }),
            _ => Err(Error::Missing {
                name: "pushed_by",
                why: "its set states no module_mm or no helix_deg; give both to the set, or leave out pushed_by",
            }),
        }
    }
}

impl NamedTrain {
    /// Where in the train a wheel is.
    pub(super) fn wheel(&self, by: &PushedBy) -> Result<SetWheel> {
        let place = self.sets.iter().position(|set| set.id == by.set);
        let Some((set, record)) = place.and_then(|place| Some((place, self.sets.get(place)?))) else {
            return Err(Error::Missing { name: "pushed_by", why: "the train has no set of this name; name one" });
        };
        let has = match by.wheel {
            WheelName::Sun => true,
            WheelName::Sun2 => record.joins.sun_small.is_some() || record.joins.sun_2.is_some(),
            WheelName::Ring => record.joins.ring.is_some(),
        };
        if !has {
            return Err(Error::Missing { name: "pushed_by", why: "its set has no such wheel; name one that it has" });
        }
        let wheel = match by.wheel {
            WheelName::Sun => Wheel::Sun,
            WheelName::Sun2 => Wheel::Sun2,
            WheelName::Ring => Wheel::Ring,
        };
        Ok(SetWheel { set: set as u8, wheel, helical: record.helical(by.wheel)? })
    }

    /// What a wheel pushes along the axis in each gear at rating, with the input at `input_speed_rpm`.
    pub fn gear_thrusts(&self, by: &PushedBy, rating: &VariantRecord, input_speed_rpm: f64) -> Result<Vec<GearThrust>> {
        let at = self.wheel(by)?;
        let mut thrusts = Vec::new();
        for gear in &self.gears {
            let state = self.train.solve(gear.closed | gear.one_way)?;
            let input_torque_nm = rating.input_nm(&state);
            let thrust = wheel_thrust(&self.train, &state, at, input_torque_nm, input_speed_rpm);
            thrusts.push(GearThrust { gear: gear.id.clone(), input_torque_nm, thrust });
        }
        Ok(thrusts)
    }
}

impl Family {
    /// Ratings of a variant.
    pub fn rating(&self, variant: &str) -> Result<&VariantRecord> {
        let missing = Error::Missing { name: "variant", why: "the record gives no ratings for this variant" };
        self.variant.as_ref().and_then(|ratings| ratings.get(variant)).ok_or(missing)
    }

    /// What the hard parts say against themselves or each other.
    pub(super) fn hard_part_faults(&self) -> Vec<Fault> {
        let root = Path::default();
        let mut faults = Vec::new();
        for (variant, race) in self.thrust_race.iter().flat_map(|race| race.iter()) {
            let path = root.key("thrust_race").key(variant);
            if let Err(error) = race.bearing().needle_capacity() {
                faults.push(Fault::refused(path.key(race.slot(error.parameter())), error));
            }
            faults.extend(self.pushed_fault(race.pushed_by.as_ref(), [variant], &path));
        }
        for (name, washer) in &self.thrust_washer {
            let path = root.key("thrust_washer").key(name);
            for (variant, outside_mm) in washer.outside_mm.iter() {
                let inside_mm = washer.inside_mm.get(variant).copied().unwrap_or(0.0);
                faults.extend(not_above(&path.key("outside_mm").key(variant), *outside_mm, "inside_mm", inside_mm));
            }
            faults.extend(self.pushed_fault(washer.pushed_by.as_ref(), washer.outside_mm.keys(), &path));
        }
        for (name, shaft) in &self.shaft {
            let Some(spline) = &shaft.spline else { continue };
            let path = root.key("shaft").key(name).key("spline");
            for (variant, outside_mm) in shaft.outside_mm.iter() {
                let Ok(Spline { major_mm, minor_mm, pitch_diameter_mm, .. }) = spline.of(variant) else { continue };
                let at = |key: &str| path.key(key).key(variant);
                faults.extend(not_above(&at("major_mm"), major_mm, "pitch_diameter_mm", pitch_diameter_mm));
                faults.extend(not_above(&at("pitch_diameter_mm"), pitch_diameter_mm, "minor_mm", minor_mm));
                if minor_mm < *outside_mm {
                    let message = format!("the teeth reach below the outside of the shaft, {outside_mm}");
                    let mend = "if their root is the thinnest place, give its diameter as outside_mm";
                    faults.push(Fault::note(at("minor_mm"), message, mend));
                }
            }
        }
        faults
    }

    /// Why a part cannot be pushed by what the record says, in the first variant where it cannot.
    fn pushed_fault<'v>(
        &self,
        by: Option<&PushedBy>,
        variants: impl IntoIterator<Item = &'v String>,
        path: &Path,
    ) -> Option<Fault> {
        let by = by?;
        let wrong = |variant: &String| self.train.build(Some(variant)).ok()?.wheel(by).err();
        let error = variants.into_iter().find_map(wrong)?;
        Some(Fault::refused(path.key("pushed_by"), error))
    }
}

impl ThrustRace {
    /// The key that a parameter of the bearing stands in.
    fn slot(&self, parameter: &str) -> &'static str {
        match parameter {
            "needles" => "needles",
            "pitch_diameter_mm" => "pitch_diameter_mm",
            _ => "needle_mm",
        }
    }
}

/// A fault where a size is not above another one.
fn not_above(path: &Path, size: f64, other: &str, limit: f64) -> Option<Fault> {
    let message = || format!("must be above {other} {limit}");
    (size <= limit).then(|| Fault::error(path.clone(), message(), "exchange the two or correct one"))
}
