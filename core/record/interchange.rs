//! From the fits, covers, matches and machining of a family to the interchange chapter, with their names.

use std::borrow::ToOwned;
use std::string::String;
use std::vec::Vec;

use super::family::{Family, MachiningRecord};
use super::fits::{FitKind, FitRecord};
use crate::error::{Error, Result};
use crate::interchange::{Joint, JointKind, Joints, Machining, PartSet, Sides};
use crate::judge::Limits;

/// The joints of a family with the names of its record. Numbers of parts, variants, joints and machining are places in the lists.
#[derive(Clone, Debug, Default)]
pub struct NamedJoints {
    /// Every part, in the order in which the record first names it.
    pub parts: Vec<String>,
    /// Variants in the order in which they were built.
    pub variants: Vec<String>,
    /// Names of the joints: fits, then covers, then matches.
    pub names: Vec<String>,
    /// The joints.
    pub joints: Vec<Joint>,
    /// Sizes of each joint in each variant.
    pub sizes: Vec<Sides>,
    /// Values of each match as they are written, by variant; nothing for fits and covers.
    pub values: Vec<Vec<String>>,
    /// The permitted machining as it is written.
    pub rules: Vec<MachiningRecord>,
    /// The permitted machining.
    pub machining: Vec<Machining>,
    /// Parts that belong to the unit itself.
    pub fixed: PartSet,
    /// Parts whose numbers differ and whose fit is the same.
    pub alias: PartSet,
    /// What prices are counted in; empty without a price list.
    pub price_unit: String,
    /// Price of each part, NaN where the record has none.
    pub part_prices: Vec<f64>,
    /// Price of each machining, likewise.
    pub machining_prices: Vec<f64>,
}

impl NamedJoints {
    /// A family of these variants without parts.
    #[must_use]
    pub fn new(variants: &[String]) -> Self {
        Self { variants: variants.to_owned(), ..Self::default() }
    }

    /// As the interchange chapter takes them.
    #[must_use]
    pub fn joints(&self) -> Joints<'_> {
        Joints {
            parts: u16::try_from(self.parts.len()).unwrap_or(u16::MAX),
            variants: u8::try_from(self.variants.len()).unwrap_or(u8::MAX),
            joints: &self.joints,
            sizes: &self.sizes,
            machining: &self.machining,
            fixed: self.fixed,
            alias: self.alias,
        }
    }

    /// Number of the part of this name.
    #[must_use]
    pub fn part(&self, name: &str) -> Option<u16> {
        place(&self.parts, name)
    }

    /// Number of the variant of this name.
    #[must_use]
    pub fn variant(&self, name: &str) -> Option<u8> {
        place(&self.variants, name).and_then(|place| u8::try_from(place).ok())
    }

    /// Number of the joint of this name.
    #[must_use]
    pub fn joint(&self, name: &str) -> Option<u16> {
        place(&self.names, name)
    }

    /// Number of the part of this name, which is new if no line before names it.
    pub fn part_or_new(&mut self, name: &str) -> u16 {
        self.part(name).unwrap_or_else(|| {
            self.parts.push(name.to_owned());
            u16::try_from(self.parts.len() - 1).unwrap_or(u16::MAX)
        })
    }

    /// Adds a joint between parts that are there, with its sizes in every variant.
    pub fn add(&mut self, name: &str, joint: Joint, sizes: Vec<Sides>) {
        self.names.push(name.to_owned());
        self.joints.push(joint);
        self.sizes.extend(sizes);
        self.values.push(Vec::new());
    }

    /// Adds a match of these two parts with its value in every variant.
    pub fn add_match(&mut self, name: &str, parts: [&str; 2], values: Vec<String>) {
        let sides = values.iter().map(|value| {
            // Which of the different values it is stands for the value.
            let number = f64::from(place(&values, value).unwrap_or(0));
            let both = Limits { lower: number, upper: number };
            Sides { first: both, second: both }
        });
        let [first, second] = parts.map(|part| self.part_or_new(part));
        self.add(name, Joint { kind: JointKind::Match, first, second, limit: 0.0 }, sides.collect());
        if let Some(written) = self.values.last_mut() {
            *written = values;
        }
    }

    /// Adds a permitted machining of a part in a fit, both of which were added before.
    pub fn add_machining(&mut self, rule: &MachiningRecord) -> Result<()> {
        let none = |name, why| Error::Missing { name, why };
        let joint = self.joint(&rule.fit).ok_or(none("fit", "no joint has the name that the machining gives"))?;
        let part = self.part(&rule.part).ok_or(none("part", "no joint has the part that the machining names"))?;
        let (from, to_fit) = (self.mask(&rule.from)?, self.mask(&rule.to_fit)?);
        let finish_mm = rule.finish_mm.limits();
        self.machining.push(Machining { joint, part, from, to_fit, finish_mm, runout_limit_mm: rule.runout_limit_mm });
        self.rules.push(rule.clone());
        Ok(())
    }

    /// Sets every price from a list by name, once all parts and machining are there.
    pub fn set_prices(&mut self, unit: &str, price_of: impl Fn(&str) -> Option<f64>) {
        unit.clone_into(&mut self.price_unit);
        let price = |name: &String| price_of(name).unwrap_or(f64::NAN);
        self.part_prices = self.parts.iter().map(price).collect();
        self.machining_prices = self.rules.iter().map(|rule| price(&rule.id)).collect();
    }

    fn mask(&self, variants: &[String]) -> Result<u32> {
        let none = Error::Missing { name: "machining", why: "it names a variant that the family does not have" };
        variants.iter().try_fold(0, |mask, name| {
            let bit = self.variant(name).and_then(|place| 1_u32.checked_shl(place.into()));
            Ok(mask | bit.ok_or(none)?)
        })
    }
}

fn place(names: &[String], name: &str) -> Option<u16> {
    names.iter().position(|known| known == name).and_then(|place| u16::try_from(place).ok())
}

impl FitRecord {
    fn joint_kind(&self) -> JointKind {
        match self.kind {
            FitKind::Running => JointKind::Running,
            FitKind::Locating => JointKind::Locating,
            FitKind::Press => JointKind::Press,
        }
    }
}

impl Family {
    /// The joints of the family, as the interchange chapter takes them.
    ///
    /// * errors: as [`Joints::checked`]: more parts or variants than the chapter holds, sizes that are impossible
    pub fn joints(&self) -> Result<NamedJoints> {
        let variants = &self.meta.variants;
        let mut named = NamedJoints::new(variants);
        for fit in &self.fit {
            let sides = |variant| {
                let (first, second) = (fit.shaft_mm.get(variant)?.limits(), fit.bore_mm.get(variant)?.limits());
                Some(Sides { first, second })
            };
            let sizes = variants.iter().filter_map(sides).collect();
            let [first, second] = [&fit.shaft, &fit.bore].map(|part| named.part_or_new(part));
            named.add(&fit.id, Joint { kind: fit.joint_kind(), first, second, limit: fit.limit_mm }, sizes);
        }
        for cover in &self.cover {
            let sides = |variant| {
                let (first, second) = (cover.land_mm.get(variant)?.limits(), cover.surface_mm.get(variant)?.limits());
                Some(Sides { first, second })
            };
            let sizes = variants.iter().filter_map(sides).collect();
            let [first, second] = [&cover.land, &cover.surface].map(|part| named.part_or_new(part));
            named.add(&cover.id, Joint { kind: JointKind::Cover, first, second, limit: cover.least_cover }, sizes);
        }
        for pair in &self.r#match {
            let [one, other] = &pair.parts;
            let values = variants.iter().filter_map(|variant| pair.value.get(variant).cloned());
            named.add_match(&pair.id, [one, other], values.collect());
        }
        for alias in &self.alias {
            let part = named.part_or_new(&alias.part);
            named.alias.insert(part);
        }
        let carriers = self.evidence.iter().map(|seen| &seen.carrier);
        let carriers = carriers.chain(self.evidence_measured.iter().map(|size| &size.carrier));
        let priced = self.price.iter().flat_map(|price| price.of.keys());
        let priced = priced.filter(|name| !self.machining.iter().any(|rule| rule.id == **name));
        for name in carriers.chain(priced) {
            named.part_or_new(name);
        }
        self.machining.iter().try_for_each(|rule| named.add_machining(rule))?;
        if let Some(case) = named.part(&self.train.fixed) {
            named.fixed.insert(case);
        }
        if let Some(price) = &self.price {
            named.set_prices(&price.unit, |name| price.of.get(name).copied());
        }
        named.joints().checked()?;
        Ok(named)
    }
}
