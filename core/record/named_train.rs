//! From a written train to one that can be solved, and the checks that need the solution.

mod faults;
mod sets;

use std::borrow::ToOwned;
use std::collections::BTreeSet;
use std::format;
use std::string::String;
use std::vec::Vec;

use super::document::Path;
use super::fault::Fault;
use super::problem::Problems;
use super::train::{SetRecord, TrainFile, TrainRecord};
use super::{Family, Kind, Record, kind_of};
use crate::train::{NO_MEMBER, Train};

/// A gear train ready to solve, with the names of its record. Numbers of members, sets and elements are places in the lists.
#[derive(Clone, Debug, PartialEq)]
pub struct NamedTrain {
    /// The train.
    pub train: Train,
    /// What the train is, in a line.
    pub title: Option<String>,
    /// Where tooth counts, layout and ratios come from.
    pub source: Option<String>,
    /// What a reader should know about the record.
    pub note: Option<String>,
    /// Members.
    pub members: Vec<String>,
    /// Sets as they were written, one for each set of the train.
    pub sets: Vec<SetRecord>,
    /// Elements.
    pub elements: Vec<String>,
    /// Gears in the order of the record.
    pub gears: Vec<NamedGear>,
}

/// A gear of a [`NamedTrain`].
#[derive(Clone, Debug, PartialEq)]
pub struct NamedGear {
    /// Name.
    pub id: String,
    /// Mask of the elements that are applied.
    pub closed: u32,
    /// Mask of the one-way clutches that hold it under drive.
    pub one_way: u32,
    /// Efficiency on the road, where the record states one.
    pub efficiency: Option<f64>,
    /// Ratio as it is printed in the source.
    pub published: Option<String>,
    /// A misprint or doubt about the printed ratio.
    pub note: Option<String>,
}

impl NamedTrain {
    /// The train in a train file or a family file, as it is in a variant; without a variant, without the sets that are `only`
    /// for one.
    pub fn from_toml(file: &str, text: &str, variant: Option<&str>) -> Result<Self, Problems> {
        match (kind_of(text), variant) {
            (Some(Kind::Family), Some(variant)) => Family::from_toml(file, text)?.train(variant),
            (Some(Kind::Family), None) => Family::from_toml(file, text)?.train.named(None),
            _ => TrainFile::from_toml(file, text)?.train.named(variant),
        }
    }

    /// The gear of this name.
    #[must_use]
    pub fn gear(&self, id: &str) -> Option<&NamedGear> {
        self.gears.iter().find(|gear| gear.id == id)
    }

    /// Names of the elements of a mask.
    pub fn names(&self, mask: u32) -> impl Iterator<Item = &str> {
        let bits = (0..u32::BITS).map(|bit| 1 << bit);
        self.elements.iter().zip(bits).filter(move |(_, bit)| mask & bit != 0).map(|(name, _)| name.as_str())
    }

    /// Mask of these elements, or the first name that is no element.
    pub fn mask<'n>(&self, names: impl IntoIterator<Item = &'n str>) -> Result<u32, &'n str> {
        names.into_iter().try_fold(0, |mask, name| {
            let place = self.elements.iter().position(|element| element == name).ok_or(name)?;
            Ok(mask | 1_u32.checked_shl(place as u32).unwrap_or(0))
        })
    }
}

impl TrainRecord {
    /// The train ready to solve. Sets that are written `only` for other variants are left out.
    pub fn named(&self, variant: Option<&str>) -> Result<NamedTrain, Problems> {
        self.build(variant).map_err(|faults| Problems(faults.into_iter().map(Fault::unplaced).collect()))
    }

    /// The variants that some set is written for.
    pub(super) fn variants(&self) -> BTreeSet<&str> {
        self.set.iter().flat_map(|set| &set.only).map(String::as_str).collect()
    }

    /// The sets of a variant, each with its place in the record: a set that names the variant replaces its namesake.
    fn sets_of(&self, variant: Option<&str>) -> Vec<(usize, &SetRecord)> {
        let is_for = |set: &SetRecord| variant.is_some_and(|variant| set.only.iter().any(|only| only == variant));
        let mut chosen: Vec<(usize, &SetRecord)> = Vec::new();
        for (index, set) in self.set.iter().enumerate().filter(|(_, set)| set.only.is_empty() || is_for(set)) {
            match chosen
                .iter_mut()
                .find(|(_, other)| other.id == set.id && other.only.is_empty() != set.only.is_empty())
            {
                Some(namesake) if is_for(set) => *namesake = (index, set),
                Some(_) => {}
                None => chosen.push((index, set)),
            }
        }
        chosen
    }

    /// Members as listed, then whatever else is named, in the order in which it is named.
    fn member_names(&self) -> Vec<String> {
        let mut names = self.members.clone();
        let joins = self.set.iter().flat_map(|set| set.joins.names());
        for name in
            core::iter::once(self.input.as_str()).chain(joins).chain([self.output.as_str(), self.fixed.as_str()])
        {
            if !names.iter().any(|known| known == name) {
                names.push(name.to_owned());
            }
        }
        names
    }

    /// The train of a variant, or what stands against it.
    pub(super) fn build(&self, variant: Option<&str>) -> Result<NamedTrain, Vec<Fault>> {
        let here = Path::default().key("train");
        let members = self.member_names();
        let number = |name: &str| members.iter().position(|member| member == name).map_or(NO_MEMBER, |at| at as u8);
        let count = u8::try_from(members.len()).unwrap_or(u8::MAX);
        let mut train = Train::new(count, number(&self.input), number(&self.output), number(&self.fixed))
            .map_err(|error| std::vec![Fault::refused(here.clone(), error)])?;
        let mut faults = Vec::new();
        let mut sets: Vec<SetRecord> = Vec::new();
        for (index, set) in self.sets_of(variant) {
            let path = here.key("set").index(index);
            if sets.iter().any(|other| other.id == set.id) {
                let message = format!("there is already a set {:?} for the same variant", set.id);
                let mend = "rename it, or say with only = [...] which variant it is for";
                faults.push(Fault::error(path.key("id"), message, mend));
            }
            match set.planetary(&number, &path) {
                Ok(planetary) => {
                    if let Err(error) = train.add_set(planetary) {
                        faults.push(Fault::refused(set.slot(error.parameter(), &path), error));
                    }
                    sets.push(set.clone());
                }
                Err(wrong) => faults.extend(wrong),
            }
        }
        for (name, element) in &self.element {
            if let Err(error) = train.add_element(element.element(&number, &self.fixed)) {
                faults.push(Fault::refused(here.key("element").key(name), error));
            }
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let elements = self.element.keys().cloned().collect();
        let mut named = NamedTrain {
            train,
            title: self.title.clone(),
            source: self.source.clone(),
            note: self.note.clone(),
            members,
            sets,
            elements,
            gears: Vec::new(),
        };
        for (index, gear) in self.gear.iter().enumerate() {
            let path = here.key("gear").index(index);
            let masks = (named.mask(gear.closed.iter().map(String::as_str)), named.mask(gear.one_way.names()));
            let (Ok(closed), Ok(one_way)) = masks else {
                faults.push(Fault::error(
                    path,
                    "an element of this gear is not in the train",
                    "name elements of train.element",
                ));
                continue;
            };
            named.gears.push(NamedGear {
                id: gear.id.clone(),
                closed,
                one_way,
                efficiency: self.efficiency.get(&gear.id).copied(),
                published: gear.published.clone(),
                note: gear.note.clone(),
            });
        }
        if faults.is_empty() { Ok(named) } else { Err(faults) }
    }
}
