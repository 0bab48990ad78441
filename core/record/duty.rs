//! Damage of a truck's recorded hours, set by set, and what its gaps leave open.

use std::borrow::ToOwned;
use std::format;
use std::string::String;
use std::vec::Vec;

use super::named_train::NamedTrain;
use super::{Family, Fatigue, Fleet, TruckRecord};
use crate::duty::{Damage, DamageLine, DutyStage, MeshDuty, RatioCause, mesh_duty, other_driveline};
use crate::error::{Error, Result};
use crate::hold::{WheelThrust, rating_life, wheel_thrust};
use crate::road::Driveline;
use crate::tow::Rig;

/// What the record leaves to whoever asks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DutyRule {
    /// Slope of the damage of gear teeth; nothing for that of the record.
    pub slope: Option<f64>,
    /// Step by which a speed is lowered where no gear holds it, km/h.
    pub speed_step_km_h: f64,
}

/// What stands for what the record does not know of a truck.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assumed<'a> {
    /// Name of the tire.
    pub tire: &'a str,
    /// Mass of the trailer, kg.
    pub trailer_kg: f64,
}

/// Hours on one grade, driven as the record chooses a gear.
#[derive(Clone, Debug, PartialEq)]
pub struct GradeHours {
    /// Grade, %.
    pub grade_pct: f64,
    /// Speed asked for, km/h.
    pub asked_km_h: f64,
    /// Speed held, km/h.
    pub speed_km_h: f64,
    /// Hours of the record, h.
    pub duration_h: f64,
    /// Gear.
    pub gear: String,
    /// Speed of the input, 1/min.
    pub input_rpm: f64,
    /// Torque at the input, N·m.
    pub input_nm: f64,
    /// Torque over rating: the greater of input and output.
    pub use_of_rating: f64,
}

/// Damage of a planetary set.
#[derive(Clone, Debug, PartialEq)]
pub struct SetDamage {
    /// Name of the set.
    pub set: String,
    /// Its line of damage; nothing where it carries no torque in any forward gear.
    pub line: Option<DamageLine>,
    /// Contacts and torque of its sun on each grade.
    pub stages: Vec<DutyStage>,
    /// What they come to.
    pub damage: Damage,
}

/// A needle thrust bearing in the duty of a truck.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BearingDuty {
    /// Share of the life that nine of ten reach.
    pub used: f64,
    /// Greatest push, N.
    pub greatest_n: f64,
    /// Dynamic capacity, N.
    pub dynamic_n: f64,
    /// Grade that does most, place in the hours.
    pub governing: usize,
}

/// Damage of a truck's hours, under one assumption about what is not known of it.
#[derive(Clone, Debug, PartialEq)]
pub struct TruckDuty {
    /// Truck.
    pub truck: String,
    /// Variant of its unit.
    pub variant: String,
    /// Tire assumed or recorded.
    pub tire: String,
    /// Mass of the trailer, assumed or recorded, kg.
    pub trailer_kg: f64,
    /// Its hours.
    pub hours: Vec<GradeHours>,
    /// Its sets.
    pub sets: Vec<SetDamage>,
    /// The set with the greatest damage, place in `sets`.
    pub worst_set: usize,
    /// The hours with the greatest torque over rating among those that the truck drives, place in `hours`.
    pub worst_hours: usize,
    /// The thrust bearing of the record, where it says what pushes on it.
    pub bearing: Option<BearingDuty>,
}

impl TruckDuty {
    /// Damage of the worst set.
    #[must_use]
    pub fn damage(&self) -> f64 {
        self.sets.get(self.worst_set).map_or(0.0, |set| set.damage.total)
    }
}

impl NamedTrain {
    /// Line of damage of each set: its reference is the rule of the record times the sun's torque at rating in its worst
    /// forward gear. Nothing for a set that carries no torque in any.
    pub fn damage_lines(
        &self,
        fatigue: &Fatigue,
        rated_turbine_nm: f64,
        slope: f64,
    ) -> Result<Vec<Option<DamageLine>>> {
        let mut worst = std::vec![0.0_f64; self.sets.len()];
        for gear in &self.gears {
            let state = self.train.solve(gear.closed | gear.one_way)?;
            if state.ratio.signum() <= 0 {
                continue;
            }
            for (number, worst) in (0_u8..).zip(&mut worst) {
                if let Some(share) = mesh_duty(&self.train, &state, number)?.sun.torque.value() {
                    *worst = worst.max(share.abs());
                }
            }
        }
        let (contacts, factor) = (fatigue.reference_contacts, fatigue.reference_over_rated);
        let lines = worst.into_iter().map(|share| {
            (share > 0.0).then(|| DamageLine::from_rating(slope, contacts, factor, share, rated_turbine_nm)).transpose()
        });
        lines.collect()
    }
}

impl Fleet {
    /// Damage of a truck's hours as recorded; refused where tire or trailer are not known.
    pub fn duty(&self, family: &Family, truck: &TruckRecord, rule: DutyRule) -> Result<TruckDuty> {
        if truck.tire == "unknown" {
            return Err(Error::Missing {
                name: "tire",
                why: "the record does not know it; take duty_cases, or name one",
            });
        }
        let trailer_kg = match (truck.trailer_kg, &truck.trailer_range_kg) {
            (Some(trailer_kg), _) => trailer_kg,
            (None, None) => 0.0,
            (None, Some(_)) => {
                let why = "the record gives a range only; take duty_cases, or give a mass";
                return Err(Error::Missing { name: "trailer_kg", why });
            }
        };
        self.duty_with(family, truck, Assumed { tire: &truck.tire, trailer_kg }, rule)
    }

    /// Damage under every assumption that the record leaves open: each tire that it may be, and masses of the trailer at
    /// `steps` places of its range, its ends among them. One answer where nothing is open.
    ///
    /// Damage does not simply grow with the mass: a heavier trailer may bring a lower gear, so two steps may miss the greatest.
    pub fn duty_cases(
        &self,
        family: &Family,
        truck: &TruckRecord,
        steps: u32,
        rule: DutyRule,
    ) -> Result<Vec<TruckDuty>> {
        if !(2..=10_000).contains(&steps) {
            return Err(Error::Count { name: "steps", count: steps, low: 2, high: 10_000 });
        }
        let own = [truck.tire.clone()];
        let tires = if truck.tire == "unknown" { truck.tire_candidates.as_slice() } else { &own };
        if tires.is_empty() {
            return Err(Error::Missing {
                name: "tire_candidates",
                why: "the tire is unknown and may be anything; list what it may be",
            });
        }
        let masses: Vec<f64> = match (truck.trailer_kg, &truck.trailer_range_kg) {
            (Some(trailer_kg), _) => std::vec![trailer_kg],
            (None, None) => std::vec![0.0],
            (None, Some(range)) => {
                let limits = range.limits();
                let place = |step: u32| f64::from(step) / f64::from(steps - 1);
                (0..steps).map(|step| limits.lower + (limits.upper - limits.lower) * place(step)).collect()
            }
        };
        let pairs = tires.iter().flat_map(|tire| masses.iter().map(move |mass| (tire, *mass)));
        pairs.map(|(tire, trailer_kg)| self.duty_with(family, truck, Assumed { tire, trailer_kg }, rule)).collect()
    }

    /// Damage of a truck's hours with this tire and this mass of the trailer.
    pub fn duty_with(
        &self,
        family: &Family,
        truck: &TruckRecord,
        assumed: Assumed<'_>,
        rule: DutyRule,
    ) -> Result<TruckDuty> {
        let Assumed { tire, trailer_kg } = assumed;
        let fatigue = family
            .fatigue
            .as_ref()
            .ok_or(Error::Missing { name: "fatigue", why: "the family has no [fatigue] table" })?;
        let rating = family.rating(&truck.variant)?;
        let train = family.train(&truck.variant).map_err(|_| Error::Missing {
            name: "variant",
            why: "the family has no train for the variant of this truck",
        })?;
        let road = self.road_model()?;
        let driveline = Driveline::new(truck.axle, 1.0, self.rolling(tire)?.circumference_mm)?;
        let rig = Rig {
            haul: self.haul(self.combination_with(truck, trailer_kg)?, driveline)?,
            gearing: train.gearing(rating)?,
            engine: self.engine_curve(&truck.engine)?,
            rule: road.gear_rule(rule.speed_step_km_h),
        };
        let slope = rule.slope.unwrap_or(fatigue.slope.gear_bending);
        let lines = train.damage_lines(fatigue, rating.rated_turbine_nm, slope)?;
        let mut stages = std::vec![Vec::new(); train.sets.len()];
        let mut hours = Vec::new();
        let mut pushes = Vec::new();
        let pushed_by = family.thrust_race.as_ref().and_then(|races| races.get(&truck.variant));
        let pushed_by = pushed_by.and_then(|race| Some((race.bearing(), race.pushed_by.as_ref()?)));
        let asked = road.grade_pct.iter().zip(&road.speed_km_h).zip(&truck.hours);
        for ((&grade_pct, &asked_km_h), &duration_h) in asked {
            let pull = rig.pull_slowed(grade_pct, asked_km_h)?;
            let (Some(chosen), Some(gear)) = (pull.chosen_gear(), train.gears.get(pull.chosen as usize)) else {
                return Err(Error::NoAnswer { name: "gear", why: "no gear holds this grade" });
            };
            let state = train.train.solve(gear.closed | gear.one_way)?;
            let turns = duration_h * 60.0 * chosen.engine_rpm;
            for (number, stages) in (0_u8..).zip(&mut stages) {
                stages.push(stage_of(&mesh_duty(&train.train, &state, number)?, turns, chosen.input_nm)?);
            }
            if let Some((_, by)) = pushed_by {
                let at = train.wheel(by)?;
                pushes.push(wheel_thrust(&train.train, &state, at, chosen.input_nm, chosen.engine_rpm)?);
            }
            hours.push(GradeHours {
                grade_pct,
                asked_km_h,
                speed_km_h: pull.speed_km_h,
                duration_h,
                gear: gear.id.clone(),
                input_rpm: chosen.engine_rpm,
                input_nm: chosen.input_nm,
                use_of_rating: chosen.use_of_input.max(pull.use_of_output),
            });
        }
        let bearing = match pushed_by {
            None => None,
            Some((bearing, _)) => {
                Some(bearing_duty(bearing.needle_capacity()?.dynamic_n, fatigue.slope.needle, &pushes, &hours)?)
            }
        };
        let mut sets = Vec::new();
        for ((line, stages), set) in lines.into_iter().zip(stages).zip(&train.sets) {
            let none = Damage { total: 0.0, greatest: 0.0, governing: 0, governing_share: 0.0, contacts: 0.0 };
            let damage = line.map_or(Ok(none), |line| line.damage(&stages))?;
            sets.push(SetDamage { set: set.id.clone(), line, stages, damage });
        }
        Ok(TruckDuty {
            truck: truck.id.clone(),
            variant: truck.variant.clone(),
            tire: tire.to_owned(),
            trailer_kg,
            worst_set: place_of_greatest(sets.iter().map(|set| set.damage.total)),
            worst_hours: place_of_greatest(hours.iter().map(|hours| match hours.duration_h {
                0.0 => 0.0,
                _ => hours.use_of_rating,
            })),
            hours,
            sets,
            bearing,
        })
    }
}

impl Fleet {
    /// What may be wrong with the wheels of a truck, one change at a time: each other tire and each other axle ratio of the
    /// record instead of what its unit is programmed for. All weigh the same.
    pub fn wheel_causes(&self, truck: &TruckRecord) -> Result<Vec<(String, RatioCause)>> {
        let programmed = self.programmed(truck)?;
        let tire = truck.tire_programmed.as_ref().unwrap_or(&truck.tire);
        let mut causes = std::vec![("as programmed".to_owned(), other_driveline(programmed, programmed, 1.0)?)];
        for name in self.tire.keys().filter(|name| *name != tire) {
            let fitted = Driveline { circumference_mm: self.rolling(name)?.circumference_mm, ..programmed };
            causes.push((format!("tire {name}"), other_driveline(programmed, fitted, 1.0)?));
        }
        let mut axles: Vec<f64> = self.truck.iter().map(|truck| truck.axle).collect();
        axles.sort_by(f64::total_cmp);
        axles.dedup();
        for axle in axles.into_iter().filter(|axle| axle.total_cmp(&programmed.axle_ratio).is_ne()) {
            let fitted = Driveline { axle_ratio: axle, ..programmed };
            causes.push((format!("axle {axle}"), other_driveline(programmed, fitted, 1.0)?));
        }
        Ok(causes)
    }
}

/// Contacts of the sun in so many turns of the input, and its torque. A set that turns as a block has no contacts, and one
/// without torque takes no damage; what cannot be told is no zero.
fn stage_of(duty: &MeshDuty, turns: f64, input_nm: f64) -> Result<DutyStage> {
    let open = |why| Error::NoAnswer { name: "gear", why };
    let stage = |contacts: f64, share: f64| DutyStage { contacts: turns * contacts, torque_nm: share * input_nm };
    match (duty.sun.contacts.value(), duty.sun.torque.value()) {
        (Some(contacts), Some(share)) => Ok(stage(contacts, share)),
        (Some(0.0), None) | (None, Some(0.0)) => Ok(stage(0.0, 0.0)),
        (_, None) => Err(open("statics cannot tell the torque of a set in this gear; its damage is open")),
        (None, _) => {
            Err(open("the speeds of a set that carries torque are not determined in this gear; its damage is open"))
        }
    }
}

/// Share of its rating life that a thrust bearing uses in these hours.
fn bearing_duty(dynamic_n: f64, slope: f64, pushes: &[WheelThrust], hours: &[GradeHours]) -> Result<BearingDuty> {
    let mut duty = BearingDuty { used: 0.0, greatest_n: 0.0, dynamic_n, governing: 0 };
    let mut greatest = 0.0;
    for (place, (push, hours)) in pushes.iter().zip(hours).enumerate() {
        let load_n = push.thrust.axial_n;
        if hours.duration_h == 0.0 || load_n == 0.0 || push.carrier_slip_rpm == 0.0 {
            continue;
        }
        let used = hours.duration_h / rating_life(dynamic_n, load_n, slope, push.carrier_slip_rpm)?.life_h;
        duty.used += used;
        duty.greatest_n = duty.greatest_n.max(load_n);
        if used > greatest {
            (greatest, duty.governing) = (used, place);
        }
    }
    Ok(duty)
}

fn place_of_greatest(values: impl Iterator<Item = f64>) -> usize {
    let best = values.enumerate().fold((0, f64::NEG_INFINITY), |best, next| if next.1 > best.1 { next } else { best });
    best.0
}
