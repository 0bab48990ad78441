//! The parts of two variants, side by side.

use std::format;
use std::string::String;
use std::vec::Vec;

use super::{Gathered, PartComparison, Sides, both};
use crate::clutch::Applied;
use crate::error::{Error, Result};
use crate::hold::{
    Better, Change, Helical, HelicalSun, SetPack, Spline, compare_needles, compare_packs, compare_park_gears,
    compare_shafts, compare_suns,
};
use crate::interchange::cover_share;
use crate::record::{
    ClutchRecord, GearThrust, NamedTrain, OneWayClutch, Pair, PushedBy, SetKind, SetRecord, VariantRecord, WasherRecord,
};
use crate::train::ElementKind;

impl Sides<'_> {
    pub(super) fn ratings(&self) -> Result<Vec<PartComparison>> {
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

    pub(super) fn gears(&self) -> Result<Vec<PartComparison>> {
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

    pub(super) fn sets(&self) -> Result<Vec<PartComparison>> {
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

    pub(super) fn clutches(&self) -> Result<Vec<PartComparison>> {
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

    pub(super) fn one_way(&self) -> Result<Vec<PartComparison>> {
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

    pub(super) fn park(&self) -> Result<Vec<PartComparison>> {
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

    pub(super) fn thrust_race(&self) -> Result<Vec<PartComparison>> {
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

    pub(super) fn washers(&self) -> Result<Vec<PartComparison>> {
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

    /// What the one after finds of its bearing surface where only it is put in.
    pub(super) fn covers(&self) -> Result<Vec<PartComparison>> {
        let mut found = Vec::new();
        for cover in &self.family.cover {
            let (Some([surface, _]), Some([before, after])) =
                (both(&cover.surface_mm, self.names), both(&cover.land_mm, self.names))
            else {
                continue;
            };
            let [name, _] = self.names;
            let mut part = Gathered::new(cover.land.clone(), "", "interchange.cover_share");
            let on = |land: &Pair| cover_share(land.limits(), surface.limits());
            let figure = format!("share carried by the {} of {name}", cover.surface.replace('_', " "));
            let why = "the part alone does not bring the surface that carries it";
            part.add(figure, "", Change::of(on(before)?, on(after)?, Better::More)?, why);
            part.part.goes_with = self.family.mates(&cover.land, self.names);
            found.push(part.part);
        }
        Ok(found)
    }

    pub(super) fn shafts(&self) -> Result<Vec<PartComparison>> {
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
                let bearing =
                    |spline: Spline, torque_nm| Ok::<_, Error>(spline.spline_load(torque_nm, 1.0)?.bearing_mpa);
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

    pub(super) fn measured(&self) -> Result<Vec<PartComparison>> {
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
