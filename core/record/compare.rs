//! Two variants of a family, part by part: what each change buys, and what it costs elsewhere.

use std::borrow::ToOwned;
use std::format;
use std::string::String;
use std::vec::Vec;

use super::document::Path;
use super::fault::Fault;
use super::hard_parts::GearThrust;
use super::named_train::NamedTrain;
use super::problem::Problems;
use super::{
    ClutchRecord, Family, OneWayClutch, PerVariant, PushedBy, SetKind, SetRecord, VariantRecord, WasherRecord,
};
use crate::clutch::Applied;
use crate::error::{Error, Result};
use crate::hold::{
    Better, Change, Helical, HelicalSun, SetPack, compare_needles, compare_packs, compare_park_gears, compare_shafts,
    compare_suns,
};
use crate::train::ElementKind;

/// Two variants, part by part.
#[derive(Clone, Debug, PartialEq)]
pub struct Comparison {
    /// Variant before.
    pub before: String,
    /// Variant after.
    pub after: String,
    /// Parts that differ.
    pub parts: Vec<PartComparison>,
    /// Parts of the record that are alike.
    pub alike: Vec<String>,
}

/// One part of two variants.
#[derive(Clone, Debug, PartialEq)]
pub struct PartComparison {
    /// The part, set or element.
    pub part: String,
    /// What holds for both sides.
    pub at: String,
    /// The figures, alike or not.
    pub changes: Vec<FigureChange>,
    /// Parts whose sizes or counts change with it.
    pub goes_with: Vec<String>,
}

/// The change of one figure of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct FigureChange {
    /// What it is.
    pub figure: String,
    /// Its unit; empty for a count or a share.
    pub unit: &'static str,
    /// The change.
    pub change: Change,
    /// What it means; may be empty.
    pub why: &'static str,
    /// Formula behind the figures; empty for what the record states.
    pub card: &'static str,
}

/// A part while its figures are gathered.
struct Gathered {
    part: PartComparison,
    card: &'static str,
}

impl Gathered {
    fn new(part: impl Into<String>, at: impl Into<String>, card: &'static str) -> Self {
        let part = PartComparison { part: part.into(), at: at.into(), changes: Vec::new(), goes_with: Vec::new() };
        Self { part, card }
    }

    fn add(&mut self, figure: impl Into<String>, unit: &'static str, change: Change, why: &'static str) {
        self.part.changes.push(FigureChange { figure: figure.into(), unit, change, why, card: self.card });
    }
}

impl PartComparison {
    /// Whether no figure differs.
    #[must_use]
    pub fn is_alike(&self) -> bool {
        self.changes.iter().all(|figure| figure.change.effect == crate::hold::Effect::Same)
    }
}

/// The two sides of a comparison.
struct Sides<'f> {
    family: &'f Family,
    names: [&'f str; 2],
    trains: [NamedTrain; 2],
}

impl Family {
    /// Two variants part by part: what each change buys, and what it costs elsewhere.
    ///
    /// Figures of parts are set side by side at equal load, and where the record rates the variants differently at their own
    /// load too. A figure that the record does not give for both variants is left out.
    pub fn compare(&self, before: &str, after: &str) -> core::result::Result<Comparison, Problems> {
        let trains = [self.train(before)?, self.train(after)?];
        let sides = Sides { family: self, names: [before, after], trains };
        let mut parts = Vec::new();
        let mut faults = Vec::new();
        for (key, answer) in [
            ("variant", sides.ratings()),
            ("train", sides.gears()),
            ("train", sides.sets()),
            ("clutch", sides.clutches()),
            ("one_way", sides.one_way()),
            ("park", sides.park()),
            ("thrust_race", sides.thrust_race()),
            ("thrust_washer", sides.washers()),
            ("shaft", sides.shafts()),
            ("evidence_measured", sides.measured()),
        ] {
            match answer {
                Ok(found) => parts.extend(found),
                Err(error) => faults.push(Fault::refused(Path::default().key(key), error).unplaced()),
            }
        }
        if !faults.is_empty() {
            return Err(Problems(faults));
        }
        let (alike, parts): (Vec<_>, Vec<_>) = merged(parts).into_iter().partition(PartComparison::is_alike);
        Ok(Comparison {
            before: before.to_owned(),
            after: after.to_owned(),
            parts,
            alike: alike.into_iter().map(|part| part.part).collect(),
        })
    }

    /// Parts whose sizes, values or counts differ between two variants where they meet this one.
    fn mates(&self, part: &str, [before, after]: [&str; 2]) -> Vec<String> {
        let mut mates: Vec<String> = Vec::new();
        let mut meet = |pair: [&String; 2], differ: bool| {
            let [first, second] = pair;
            let mate = if first == part { second } else { first };
            if differ && (first == part || second == part) && !mates.contains(mate) {
                mates.push(mate.clone());
            }
        };
        for fit in &self.fit {
            let differ = differs(&fit.shaft_mm, before, after) || differs(&fit.bore_mm, before, after);
            meet([&fit.shaft, &fit.bore], differ);
        }
        for cover in &self.cover {
            let differ = differs(&cover.surface_mm, before, after) || differs(&cover.land_mm, before, after);
            meet([&cover.surface, &cover.land], differ);
        }
        for pair in &self.r#match {
            meet([&pair.parts[0], &pair.parts[1]], differs(&pair.value, before, after));
        }
        mates
    }

    /// Parts named after an element (`f1_outer_race` of F1) whose values differ between two variants where they meet.
    fn mates_of_element(&self, element: &str, [before, after]: [&str; 2]) -> Vec<String> {
        let prefix = format!("{}_", element.to_lowercase());
        let pairs = self.r#match.iter().filter(|pair| differs(&pair.value, before, after));
        let mut mates: Vec<String> = Vec::new();
        for part in pairs.flat_map(|pair| &pair.parts).filter(|part| part.starts_with(&prefix)) {
            if !mates.contains(part) {
                mates.push(part.clone());
            }
        }
        mates
    }
}

/// Parts of one name in one.
fn merged(parts: Vec<PartComparison>) -> Vec<PartComparison> {
    let mut all: Vec<PartComparison> = Vec::new();
    for part in parts {
        match all.iter_mut().find(|other| other.part == part.part) {
            Some(other) => {
                other.changes.extend(part.changes);
                let new: Vec<_> = part.goes_with.into_iter().filter(|mate| !other.goes_with.contains(mate)).collect();
                other.goes_with.extend(new);
            }
            None => all.push(part),
        }
    }
    all
}

fn differs<T: PartialEq>(values: &PerVariant<T>, before: &str, after: &str) -> bool {
    values.get(before) != values.get(after)
}

fn both<'v, T>(values: &'v PerVariant<T>, names: [&str; 2]) -> Option<[&'v T; 2]> {
    let [before, after] = names;
    Some([values.get(before)?, values.get(after)?])
}

impl Sides<'_> {
    fn ratings(&self) -> Result<Vec<PartComparison>> {
        let Some([first, second]) = self.family.variant.as_ref().and_then(|ratings| both(ratings, self.names)) else {
            return Ok(Vec::new());
        };
        let mut rated = Gathered::new("rating", "what the record states; every part has to carry it", "");
        let why = "";
        let torque = |before, after| Change::of(before, after, Better::More);
        rated.add("torque at the turbine", "N·m", torque(first.rated_turbine_nm, second.rated_turbine_nm)?, why);
        rated.add("torque at the output", "N·m", torque(first.rated_output_nm, second.rated_output_nm)?, why);
        if let (Some(before), Some(after)) = (first.reverse_turbine_nm, second.reverse_turbine_nm) {
            rated.add("torque at the turbine in reverse", "N·m", torque(before, after)?, why);
        }
        rated.add(
            "greatest pressure of the control",
            "kPa",
            Change::of(first.line_control_max_kpa, second.line_control_max_kpa, Better::Neither)?,
            "the more, the harder it clamps; rings, drums and seals must be made for it",
        );
        Ok(std::vec![rated.part])
    }

    fn gears(&self) -> Result<Vec<PartComparison>> {
        let [first, second] = &self.trains;
        let mut ratios = Gathered::new(
            "ratios",
            "input over output speed; mixed parts, or a control made for the other set, see the difference",
            "train.solve",
        );
        let ratio = |train: &NamedTrain, closed: u32| Ok::<_, Error>(train.train.solve(closed)?.ratio);
        let mut seen = Vec::new();
        for gear in &first.gears {
            let Some(other) = second.gear(&gear.id) else { continue };
            let both = (ratio(first, gear.closed | gear.one_way)?, ratio(second, other.closed | other.one_way)?);
            // Engine braking repeats a ratio.
            if seen.contains(&both) {
                continue;
            }
            seen.push(both);
            if let (Some(before), Some(after)) = (both.0.value(), both.1.value()) {
                let change = Change::of(before, after, Better::Neither)?;
                ratios.add(format!("gear {}", gear.id), "", change, "");
            }
        }
        Ok(std::vec![ratios.part])
    }

    fn sets(&self) -> Result<Vec<PartComparison>> {
        let [first, second] = &self.trains;
        let mut found = Vec::new();
        for set in &first.sets {
            let other = second.sets.iter().find(|other| other.id == set.id);
            let Some((before, after)) = other.and_then(|other| Some((sun(set)?, sun(other)?))) else { continue };
            let change = compare_suns(before, after, 100.0)?;
            let mut part = Gathered::new(format!("set {}", set.id), "at equal torque on the sun", "hold.compare_suns");
            part.add(
                "unit load of a tooth of the sun",
                "MPa",
                change.unit_load_mpa,
                "force of one planet over face width and module, all planets alike; the tooth form is not counted",
            );
            part.add("push of the sun along the axis", "N", change.axial_n, "what its thrust bearing takes");
            part.add("module, the size of a tooth", "mm", change.module_mm, "finer teeth run quieter and bend sooner");
            part.add("planets", "", change.planets, "each is a pin, a bearing and two washers to check");
            let members = [&set.joins.sun, &set.joins.carrier, &set.joins.ring];
            if !part.part.is_alike() {
                part.part.goes_with = members.into_iter().flatten().cloned().collect();
            }
            found.push(part.part);
        }
        Ok(found)
    }

    fn clutches(&self) -> Result<Vec<PartComparison>> {
        let family = self.family;
        let ratings = family.variant.as_ref().and_then(|ratings| both(ratings, self.names));
        let (Some([first, second]), Some(friction)) = (ratings, &family.friction) else { return Ok(Vec::new()) };
        let applied = |pressure_kpa| Applied {
            pressure_kpa,
            friction: friction.r#static.best,
            drum_speed_rpm: 0.0,
            oil_density_kg_m3: 0.0,
        };
        let own_kpa = [first, second].map(|rating| rating.line_control_max_kpa);
        let [before_kpa, after_kpa] = own_kpa;
        let mut found = Vec::new();
        for (element, clutch) in &family.clutch {
            let [before, after] = self.names.map(|variant| set_pack(clutch, variant));
            let (before, after) = (before?, after?);
            let change = compare_packs(before, after, applied(before_kpa))?;
            let at = format!("both at {before_kpa} kPa and static friction {}, drum at rest", friction.r#static.best);
            let mut part = Gathered::new(element.clone(), at, "hold.compare_packs");
            part.add("capacity at equal pressure", "N·m", change.capacity_nm, "number and size of the faces");
            let own = Change::of(
                before.pack.capacity(applied(before_kpa))?.torque_nm,
                after.pack.capacity(applied(after_kpa))?.torque_nm,
                Better::More,
            )?;
            part.add(
                "capacity, each at its own greatest pressure",
                "N·m",
                own,
                "faces and pressure together; a capacity, not a rating",
            );
            let needs = [self.most_asked(0, element, first)?, self.most_asked(1, element, second)?];
            if let [Some(before), Some(after)] = needs {
                let margin = Change::of(own.before / before, own.after / after, Better::More)?;
                let why = "over what the gears ask of it, with that pressure and the rated torque";
                part.add("least margin, each at its own rating", "", margin, why);
            }
            let why = "what holds the torque that the one before can";
            part.add("pressure for equal torque", "kPa", change.pressure_kpa, why);
            let why = "the heat of a shift spreads over it";
            part.add("friction area", "mm²", change.friction_area_mm2, why);
            part.add("friction faces", "", change.faces, "each drags while the pack is open");
            let why = "less of it drags more, and forgives less wear and swell";
            part.add("clearance for each face", "mm", change.clearance_per_face_mm, why);
            part.add("oil that closes the clearance", "mL", change.fill_ml, "the more, the later it applies");
            found.push(part.part);
        }
        Ok(found)
    }

    /// Greatest torque that the gears ask of an element at rating, N·m; nothing where no gear tells.
    fn most_asked(&self, side: usize, element: &str, rating: &VariantRecord) -> Result<Option<f64>> {
        let Some(train) = self.trains.get(side) else { return Ok(None) };
        let Some(place) = train.elements.iter().position(|known| known == element) else { return Ok(None) };
        let mut most = None;
        for gear in &train.gears {
            let state = train.train.solve(gear.closed | gear.one_way)?;
            let need = state.share(place as u8).value().map(|share| share.abs() * rating.input_nm(&state));
            most = need.filter(|need| *need > most.unwrap_or(0.0)).or(most);
        }
        Ok(most)
    }

    fn one_way(&self) -> Result<Vec<PartComparison>> {
        let family = self.family;
        let Some([Some(first), Some(second)]) =
            family.one_way.as_ref().map(|part| self.names.map(|name| part.get(name)))
        else {
            return Ok(Vec::new());
        };
        let (before, after) = (first.part()?, second.part()?);
        let [train, _] = &self.trains;
        let elements = train.elements.iter().zip(train.train.elements());
        let name =
            elements.filter(|(_, element)| element.kind == ElementKind::OneWay).map(|(name, _)| name.clone()).next();
        let name = name.unwrap_or_else(|| String::from("one_way"));
        let mut part = Gathered::new(name.clone(), "at the stress that the record allows", "hold.wedge_capacity_nm");
        if matches!(after.clutch, OneWayClutch::Ratchet(_)) {
            part.card = "hold.strut_capacity_nm";
        }
        let capacity = Change::of(before.capacity_nm()?, after.capacity_nm()?, Better::More)?;
        part.add("capacity", "N·m", capacity, "not a rating");
        let rating = |side: &str| family.rating(side);
        let [first_name, second_name] = self.names;
        let needs = [self.most_asked(0, &name, rating(first_name)?)?, self.most_asked(1, &name, rating(second_name)?)?];
        if let [Some(before), Some(after)] = needs {
            let margin = Change::of(capacity.before / before, capacity.after / after, Better::More)?;
            part.add("least margin, each at its own rating", "", margin, "over what the gears ask of it");
        }
        part.card = "hold.ratchet_index";
        let backlash = Change::of(backlash_deg(before.clutch)?, backlash_deg(after.clutch)?, Better::Less)?;
        let why = "struts fall into the next notch, rollers and sprags wedge at once; the parts meet with what they gain on the way";
        part.add("turn back before it holds", "°", backlash, why);
        part.part.goes_with = self.family.mates_of_element(&name, self.names);
        Ok(std::vec![part.part])
    }

    fn park(&self) -> Result<Vec<PartComparison>> {
        let [first, second] = self.names;
        let family = self.family;
        if family.park.is_none() || family.park_rules.is_none() {
            return Ok(Vec::new());
        }
        let (before, after) = (family.park_lock(first)?, family.park_lock(second)?);
        let factor = before.strength.stress_factor;
        let ratios = compare_park_gears(before.gear, after.gear, factor)?;
        let mut part = Gathered::new("park_gear", "static, one tooth carries", "hold.compare_park_gears");
        let stress = before.gear.tooth_stress(1.0, factor)?;
        let bending_nm = before.strength.yield_mpa / stress.bending_mpa;
        let all_nm = before.strength.yield_mpa / stress.von_mises_mpa;
        let grows = |before: f64, ratio: f64| Change::of(before, before * ratio, Better::More);
        let why = "the root of a tooth as a beam: width times the square of its thickness";
        part.add("torque at yield in bending", "N·m", grows(bending_nm, ratios.bending_ratio)?, why);
        let why = "the same with shear; on a grade the rocking factor counts too";
        part.add("torque at yield, bending and shear", "N·m", grows(all_nm, ratios.torque_ratio)?, why);
        let turn_deg = 360.0 / f64::from(before.gear.teeth);
        let turn = Change::of(turn_deg, turn_deg * ratios.free_roll_ratio, Better::Less)?;
        part.add(
            "turn of the output before the pawl drops in",
            "°",
            turn,
            "one tooth: the vehicle rolls that much farther",
        );
        let energy = Change::of(1.0, ratios.free_roll_ratio, Better::Less)?;
        part.add("energy that the pawl then meets", "", energy, "the same vehicle on the same grade");
        let face = Change::of(before.gear.face_mm, after.gear.face_mm, Better::Less)?;
        part.add("face width", "mm", face, "room along the shaft");
        part.part.goes_with = family.mates("park_gear", self.names);
        Ok(std::vec![part.part])
    }

    fn thrust_race(&self) -> Result<Vec<PartComparison>> {
        let Some([first, second]) = self.family.thrust_race.as_ref().and_then(|race| both(race, self.names)) else {
            return Ok(Vec::new());
        };
        let change = compare_needles(first.bearing(), second.bearing())?;
        let mut part = Gathered::new("thrust_race", "at equal load and speed", "hold.compare_needles");
        let why = "what it stands at rest without dents";
        part.add("static capacity", "N", change.static_n, why);
        part.add("life", "", change.life, "of nine in ten bearings; by ISO 281 with its factor f_c");
        let why = "the same without f_c, as handbooks compare bearings of nearly one pitch diameter";
        part.add("life by size alone", "", change.life_by_size, why);
        let why = "both faces must be hard and flat that far out";
        part.add("outside of the needles", "mm", change.outside_mm, why);
        part.add("width of the needles", "mm", change.face_mm, "both faces must be as wide");
        if let (Some(by_first), Some(by_second)) = (&first.pushed_by, &second.pushed_by) {
            let worst = [self.worst(0, by_first)?, self.worst(1, by_second)?];
            part.card = "hold.wheel_thrust";
            if let [Some(before), Some(after)] = worst {
                let pushed = Change::of(before, after, Better::Less)?;
                part.add("push of the wheel at its own rating", "N", pushed, "in the gear where it is greatest");
                let capacity = [change.static_n.before / before, change.static_n.after / after];
                let why = "static capacity over that push";
                part.add(
                    "static factor at its own rating",
                    "",
                    Change::of(capacity[0], capacity[1], Better::More)?,
                    why,
                );
            }
        }
        part.part.goes_with = self.family.mates("thrust_race", self.names);
        Ok(std::vec![part.part])
    }

    /// Greatest push of a wheel over the gears at rating, N; nothing where no gear tells.
    fn worst(&self, side: usize, by: &PushedBy) -> Result<Option<f64>> {
        let (Some(train), Some(variant)) = (self.trains.get(side), self.names.get(side)) else { return Ok(None) };
        let thrusts = train.gear_thrusts(by, self.family.rating(variant)?, 0.0)?;
        Ok(thrusts.iter().filter_map(GearThrust::axial_n).filter(|push| *push > 0.0).max_by(f64::total_cmp))
    }

    fn washers(&self) -> Result<Vec<PartComparison>> {
        let mut found = Vec::new();
        for (name, washer) in &self.family.thrust_washer {
            let mut part = Gathered::new(format!("thrust washer {name}"), "at equal load", "hold.washer_load");
            let [before, after] = self.names.map(|variant| area_mm2(washer, variant));
            let (before, after) = (before?, after?);
            part.add(
                "face that bears",
                "mm²",
                Change::of(before, after, Better::More)?,
                "the more, the less pressure on it",
            );
            if let Some(by) = &washer.pushed_by
                && let (Some(first), Some(second)) = (self.worst(0, by)?, self.worst(1, by)?)
            {
                let pressure = Change::of(first / before, second / after, Better::Less)?;
                part.add("pressure at its own rating", "MPa", pressure, "in the gear where the push is greatest");
            }
            found.push(part.part);
        }
        Ok(found)
    }

    fn shafts(&self) -> Result<Vec<PartComparison>> {
        let mut found = Vec::new();
        for (name, record) in &self.family.shaft {
            let [before, after] = self.names.map(|variant| record.rated(variant, self.family.rating(variant)?));
            let (before, after) = (before?, after?);
            let change = compare_shafts(before.shaft, after.shaft, before.torque_nm, after.torque_nm)?;
            let mut part = Gathered::new(format!("{name}_shaft"), "nominal stress, no notch", "hold.compare_shafts");
            part.add("stress at equal torque", "MPa", change.stress_same_mpa, "the shaft alone");
            let why = "a thicker shaft is still the more loaded one where the rating grew faster";
            part.add("stress, each at its own rating", "MPa", change.stress_own_mpa, why);
            part.add("stiffness", "mm⁴", change.polar_moment_mm4, "the more, the less it twists");
            part.add("metal of the section", "mm²", change.section_mm2, "weight of the same length");
            if let (Some(first), Some(second)) = (before.spline, after.spline) {
                part.card = "hold.spline_load";
                let bearing = |spline: crate::hold::Spline, torque_nm| {
                    Ok::<_, Error>(spline.spline_load(torque_nm, 1.0)?.bearing_mpa)
                };
                let own = [bearing(first, before.torque_nm)?, bearing(second, after.torque_nm)?];
                let same = Change::of(own[0], bearing(second, before.torque_nm)?, Better::Less)?;
                part.add("pressure on the spline at equal torque", "MPa", same, "were all of its teeth to carry");
                let own = Change::of(own[0], own[1], Better::Less)?;
                part.add(
                    "pressure on the spline, each at its own rating",
                    "MPa",
                    own,
                    "were all of its teeth to carry",
                );
                let teeth = Change::of(first.teeth.into(), second.teeth.into(), Better::Neither)?;
                part.add("spline teeth", "", teeth, "equal or nothing with the hub");
            }
            part.part.goes_with = self.family.mates(&part.part.part, self.names);
            found.push(part.part);
        }
        Ok(found)
    }

    fn measured(&self) -> Result<Vec<PartComparison>> {
        let mut found = Vec::new();
        for size in &self.family.evidence_measured {
            let Some([before, after]) = both(&size.size_mm, self.names) else { continue };
            let mut part = Gathered::new(size.carrier.clone(), "", "");
            let change = Change::of(before.middle(), after.middle(), Better::Neither)?;
            let why = "another size goes with another part, and tells the variants apart";
            part.add(format!("{}, middle of its limits", size.look), "mm", change, why);
            part.part.goes_with = self.family.mates(&size.carrier, self.names);
            found.push(part.part);
        }
        Ok(found)
    }
}

/// How far a one-way clutch turns back before it holds, degrees; rollers and sprags wedge at once.
fn backlash_deg(clutch: OneWayClutch) -> Result<f64> {
    match clutch {
        OneWayClutch::Wedge(_) => Ok(0.0),
        OneWayClutch::Ratchet(ratchet) => Ok(ratchet.ratchet_index()?.backlash_deg),
    }
}

/// The sun of a simple set, where the record states all of it.
fn sun(set: &SetRecord) -> Option<HelicalSun> {
    if set.kind != SetKind::Simple {
        return None;
    }
    Some(HelicalSun {
        teeth: set.teeth.sun?,
        planets: u8::try_from(set.planets?).ok()?,
        helical: Helical { module_mm: set.module_mm?, helix_deg: set.helix_deg? },
        face_mm: set.face_mm?,
    })
}

fn set_pack(clutch: &ClutchRecord, variant: &str) -> Result<SetPack> {
    Ok(SetPack { pack: clutch.pack(variant)?, clearance_mm: clutch.clearance_mm.middle() })
}

fn area_mm2(washer: &WasherRecord, variant: &str) -> Result<f64> {
    Ok(washer.washer(variant)?.washer_load(1.0, 0.0)?.area_mm2)
}
