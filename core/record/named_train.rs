//! From a written train to one that can be solved, and the checks that need the solution.

use std::borrow::ToOwned;
use std::collections::BTreeSet;
use std::format;
use std::string::{String, ToString};
use std::vec::Vec;

use super::document::Path;
use super::fault::Fault;
use super::problem::Problems;
use super::train::{
    ElementKind, ElementRecord, GearRecord, Joins, Sense, SetKind, SetRecord, Teeth, TrainFile, TrainRecord,
};
use super::{Family, Kind, Record, kind_of};
use crate::train::{
    self, Blocks, Element, Finding, Load, NO_MEMBER, PlanetarySet, SetJoins, SetTeeth, State, StateKind, Train,
};

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

    /// Whether gears and elements name only what there is; where they do not, the check of names says so.
    fn names_are_known(&self) -> bool {
        let members = self.member_names();
        self.element.values().flat_map(|element| &element.joins).all(|member| members.contains(member))
            && self.gear.iter().all(|gear| {
                let mut names = gear.closed.iter().map(String::as_str).chain(gear.one_way.names());
                names.all(|name| self.element.contains_key(name))
            })
    }

    /// Everything that stands against the train in this variant, solved gear by gear.
    pub(super) fn faults(&self, variant: Option<&str>) -> Vec<Fault> {
        if !self.names_are_known() {
            return Vec::new();
        }
        let named = match self.build(variant) {
            Ok(named) => named,
            Err(faults) => return faults,
        };
        let here = Path::default().key("train");
        let sets = self.sets_of(variant).into_iter().zip(named.train.sets());
        let assembly = sets.filter_map(|((index, _), set)| cannot_assemble(set, &here.key("set").index(index)));
        let solved = named.gears.iter().zip(&self.gear).enumerate();
        let gears =
            solved.flat_map(|(index, (gear, record))| named.gear_faults(gear, record, &here.key("gear").index(index)));
        assembly.chain(gears).collect()
    }
}

impl NamedTrain {
    fn gear_faults(&self, gear: &NamedGear, record: &GearRecord, path: &Path) -> Vec<Fault> {
        if let Some(name) = self.names(gear.one_way & !self.train.one_way_mask()).next() {
            let message = format!("{name} is not a one-way clutch");
            return std::vec![Fault::error(path.key("one_way"), message, "list it in closed")];
        }
        let states = (self.train.solve(gear.closed | gear.one_way), self.train.resolve(gear.closed, Load::Drive));
        let (state, alone) = match states {
            (Ok(state), Ok(alone)) => (state, alone),
            (Err(error), _) | (_, Err(error)) => return std::vec![Fault::refused(path.clone(), error)],
        };
        let holding = self.names(alone.closed & !gear.closed).collect::<Vec<_>>().join(", ");
        if state.kind != StateKind::Gear {
            let mend = if alone.kind == StateKind::Gear {
                format!("{holding} holds a gear here under drive: name it in one_way")
            } else {
                "check closed, one_way and the joins of these elements".into()
            };
            return std::vec![Fault::error(
                path.key("closed"),
                format!("this is no gear: {}", meaning(state.kind)),
                mend
            )];
        }
        let mut faults: Vec<_> = self.cannot_hold(gear, &state, path).into_iter().collect();
        if faults.is_empty() && alone.ratio != state.ratio {
            let ratio = alone.ratio.value().unwrap_or(f64::NAN);
            let message = format!("left alone, {holding} holds instead under drive and the ratio is {ratio:.4}");
            faults.push(Fault::note(
                path.key("one_way"),
                message,
                "check blocks, or put a brake behind that one-way clutch",
            ));
        }
        faults.extend(disagreement(record, state.ratio.value().unwrap_or(f64::NAN), path));
        faults
    }

    /// A one-way clutch of the gear that drive torque pushes in its free sense, or that carries nothing.
    fn cannot_hold(&self, gear: &NamedGear, state: &State, path: &Path) -> Option<Fault> {
        let parts = self.elements.iter().zip(self.train.elements()).zip(&state.shares).enumerate();
        parts.filter(|(bit, _)| gear.one_way & !gear.closed & (1 << bit) != 0).find_map(
            |(_, ((name, element), share))| {
                let blocked = if element.blocks == Blocks::Reverse { 1 } else { -1 };
                let path = path.key("one_way");
                if share.is_known() && share.signum() == -blocked {
                    let message = format!("{name} cannot hold this gear: drive torque pushes it in its free sense");
                    return Some(Fault::error(path, message, "turn its blocks round, or close a brake instead"));
                }
                let idle = !share.is_known() || share.signum() == 0;
                idle.then(|| {
                    Fault::note(path, format!("{name} need not carry anything here"), "leave it out of one_way")
                })
            },
        )
    }
}

/// A note where the planets do not go in as written: profile shift or unequal spacing may still make it.
fn cannot_assemble(set: &PlanetarySet, path: &Path) -> Option<Fault> {
    let assembly = set.assembly().ok()?;
    let key = if assembly.coaxial == Finding::Fails { "teeth" } else { "planets" };
    (assembly.finding() == Finding::Fails).then(|| Fault::note(path.key(key), assembly.to_string(), ""))
}

/// A note where the printed ratio is not the computed one rounded.
fn disagreement(record: &GearRecord, computed: f64, path: &Path) -> Option<Fault> {
    let printed = record.published.as_deref()?;
    let value: f64 = printed.parse().ok()?;
    let decimals = printed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let half_a_place = 0.5 / 10_f64.powi(i32::try_from(decimals).unwrap_or(0));
    let agrees = (value - computed).abs() <= half_a_place * (1.0 + 1e-9);
    let message = format!("the teeth give {computed:.*}", decimals + 2);
    (!agrees).then(|| Fault::note(path.key("published"), message, record.note.clone().unwrap_or_default()))
}

fn meaning(kind: StateKind) -> &'static str {
    match kind {
        StateKind::Gear => "a gear",
        StateKind::Neutral => "neutral, the input does not determine the output",
        StateKind::InputHeld => "the input cannot turn and the output is free",
        StateKind::OutputHeld => "the output cannot turn and the input is free",
        StateKind::TiedUp => "tied up, neither input nor output can turn",
    }
}

/// The key of each gear of a kind of set: sun, second sun, ring, planet, second planet, as the core numbers them.
const fn gears(kind: SetKind) -> [(&'static str, &'static str); 5] {
    match kind {
        SetKind::Simple => [("sun", "sun"), ("sun_2", ""), ("ring", "ring"), ("planet", "planet"), ("planet_2", "")],
        SetKind::DoublePinion => {
            [("sun", "sun"), ("sun_2", ""), ("ring", "ring"), ("planet", "planet_inner"), ("planet_2", "planet_outer")]
        }
        SetKind::TwoSun => [
            ("sun", "sun_large"),
            ("sun_2", "sun_small"),
            ("ring", "ring"),
            ("planet", "planet_long"),
            ("planet_2", "planet_short"),
        ],
        SetKind::Stepped => {
            [("sun", "sun"), ("sun_2", "sun_2"), ("ring", "ring"), ("planet", "planet_1"), ("planet_2", "planet_2")]
        }
    }
}

impl SetRecord {
    /// The set as the core takes it.
    fn planetary(&self, number: &dyn Fn(&str) -> u8, path: &Path) -> Result<PlanetarySet, Vec<Fault>> {
        let mut faults = Vec::new();
        let gears = gears(self.kind);
        let teeth = self.teeth.all();
        let joins = self.joins.all();
        for (key, _) in teeth
            .iter()
            .filter(|(_, teeth)| teeth.is_some())
            .filter(|(key, _)| !gears.iter().any(|(_, gear)| gear == key))
        {
            faults.push(self.no_such_gear(path.key("teeth").key(key)));
        }
        for (key, _) in joins
            .iter()
            .filter(|(key, member)| member.is_some() && *key != "carrier" && !gears.iter().any(|(_, gear)| gear == key))
        {
            faults.push(self.no_such_gear(path.key("joins").key(key)));
        }
        let [sun, sun_2, ring, planet, planet_2] = gears.map(|(_, key)| key);
        let second_sun = self.kind == SetKind::Stepped && self.joins.sun_2.is_some();
        let needed = |key: &str| match key {
            "" => false,
            "sun_2" => second_sun,
            "ring" => !second_sun,
            key if key == planet || key == planet_2 => self.kind == SetKind::Stepped,
            _ => true,
        };
        let mut count = |key: &'static str| {
            let given = teeth.iter().find(|(name, _)| *name == key).and_then(|(_, teeth)| *teeth);
            if given.is_none() && needed(key) {
                let mend = format!("count the teeth of the {key} of set {}", self.id);
                faults.push(Fault::error(
                    path.key("teeth").key(key),
                    "missing: takes a whole number from 1 to 999",
                    mend,
                ));
            }
            given.unwrap_or(0)
        };
        let counts = SetTeeth {
            sun: count(sun),
            sun_2: count(sun_2),
            planet: count(planet),
            planet_2: count(planet_2),
            ring: count(ring),
        };
        let mut member = |key: &'static str| {
            let given = joins.iter().find(|(name, _)| *name == key).and_then(|(_, member)| *member);
            if given.is_none() && (needed(key) || key == "carrier") {
                let message = format!("missing: takes the member that the {key} belongs to");
                faults.push(Fault::error(
                    path.key("joins").key(key),
                    message,
                    "a gear that never turns belongs to the case",
                ));
            }
            given.map_or(NO_MEMBER, number)
        };
        let members =
            SetJoins { sun: member(sun), sun_2: member(sun_2), ring: member(ring), carrier: member("carrier") };
        if !faults.is_empty() {
            return Err(faults);
        }
        let planets = u8::try_from(self.planets.unwrap_or(0)).unwrap_or(u8::MAX);
        Ok(PlanetarySet { kind: self.kind.into(), planets, teeth: counts, joins: members })
    }

    fn no_such_gear(&self, path: Path) -> Fault {
        let keys: Vec<_> = gears(self.kind).into_iter().map(|(_, key)| key).filter(|key| !key.is_empty()).collect();
        Fault::error(
            path,
            "this kind of set has no such gear",
            format!("its gears are {}; or change the kind", keys.join(", ")),
        )
    }

    /// The key that an error of the core is about.
    fn slot(&self, parameter: &str, path: &Path) -> Path {
        match gears(self.kind).into_iter().find(|(slot, key)| *slot == parameter && !key.is_empty()) {
            Some((_, key)) => path.key("teeth").key(key),
            None if parameter == "joins" => path.key("joins"),
            None => path.clone(),
        }
    }
}

impl Teeth {
    fn all(&self) -> [(&'static str, Option<u16>); 12] {
        [
            ("sun", self.sun),
            ("ring", self.ring),
            ("planet", self.planet),
            ("planet_inner", self.planet_inner),
            ("planet_outer", self.planet_outer),
            ("sun_large", self.sun_large),
            ("sun_small", self.sun_small),
            ("planet_long", self.planet_long),
            ("planet_short", self.planet_short),
            ("planet_1", self.planet_1),
            ("planet_2", self.planet_2),
            ("sun_2", self.sun_2),
        ]
    }
}

impl Joins {
    fn all(&self) -> [(&'static str, Option<&str>); 6] {
        [
            ("sun", self.sun.as_deref()),
            ("sun_large", self.sun_large.as_deref()),
            ("sun_small", self.sun_small.as_deref()),
            ("sun_2", self.sun_2.as_deref()),
            ("carrier", self.carrier.as_deref()),
            ("ring", self.ring.as_deref()),
        ]
    }

    fn names(&self) -> impl Iterator<Item = &str> {
        self.all().into_iter().filter_map(|(_, member)| member)
    }
}

impl From<SetKind> for train::SetKind {
    fn from(kind: SetKind) -> Self {
        match kind {
            SetKind::Simple => Self::Simple,
            SetKind::DoublePinion => Self::DoublePinion,
            SetKind::TwoSun => Self::TwoSun,
            SetKind::Stepped => Self::Stepped,
        }
    }
}

impl ElementRecord {
    /// The element as the core takes it: a brake reports the member that it holds.
    fn element(&self, number: &dyn Fn(&str) -> u8, fixed: &str) -> Element {
        let [first, second] = &self.joins;
        let (first, second) =
            if self.kind == ElementKind::Brake && first == fixed { (second, first) } else { (first, second) };
        Element {
            kind: match self.kind {
                ElementKind::Clutch => train::ElementKind::Clutch,
                ElementKind::Brake => train::ElementKind::Brake,
                ElementKind::OneWay => train::ElementKind::OneWay,
                ElementKind::Dog => train::ElementKind::Dog,
            },
            blocks: match self.blocks {
                None => Blocks::Neither,
                Some(Sense::Forward) => Blocks::Forward,
                Some(Sense::Reverse) => Blocks::Reverse,
            },
            first: number(first),
            second: number(second),
        }
    }
}
