//! Two variants of a family, part by part: what each change buys, and what it costs elsewhere.

mod sides;

use std::borrow::ToOwned;
use std::format;
use std::string::String;
use std::vec::Vec;

use super::document::Path;
use super::fault::Fault;
use super::named_train::NamedTrain;
use super::problem::Problems;
use super::{Family, PerVariant};
use crate::hold::{Change, Effect};

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
        self.changes.iter().all(|figure| figure.change.effect == Effect::Same)
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
            ("cover", sides.covers()),
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
