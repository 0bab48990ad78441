//! Sets and elements as the core takes them.

use std::format;
use std::vec::Vec;

use crate::record::document::Path;
use crate::record::fault::Fault;
use crate::record::train::{ElementKind, ElementRecord, Joins, Sense, SetKind, SetRecord, Teeth};
use crate::train::{self, Blocks, Element, NO_MEMBER, PlanetarySet, SetJoins, SetTeeth};

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
    pub(super) fn planetary(&self, number: &dyn Fn(&str) -> u8, path: &Path) -> Result<PlanetarySet, Vec<Fault>> {
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
    pub(super) fn slot(&self, parameter: &str, path: &Path) -> Path {
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

    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
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
    pub(super) fn element(&self, number: &dyn Fn(&str) -> u8, fixed: &str) -> Element {
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
