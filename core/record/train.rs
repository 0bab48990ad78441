//! The `[train]` table: sets, joins, elements and gears, with their names.

use std::string::String;
use std::vec::Vec;

use indexmap::IndexMap;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A file that holds only a gear train.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Gear train")]
pub struct TrainFile {
    /// Version of the record's layout: 1.
    #[schemars(range(min = 1, max = 1))]
    pub schema: Option<u32>,
    /// The gear train.
    pub train: TrainRecord,
}

/// A gear train as it is written down: names, tooth counts, what is joined, what closes in each gear.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TrainRecord {
    /// What the train is, in a line.
    pub title: Option<String>,
    /// Where tooth counts, layout and ratios come from, and how each is known.
    pub source: Option<String>,
    /// What a reader should know: fitted tooth counts, misprints, doubts.
    pub note: Option<String>,
    /// Every rotating body and the case. May be left out: the members are then those named in `joins`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[schemars(extend("x-gives" = "member", "uniqueItems" = true))]
    pub members: Vec<String>,
    /// The member that the turbine drives.
    #[schemars(extend("x-joins" = "member"))]
    pub input: String,
    /// The member that drives the propeller shaft.
    #[schemars(extend("x-joins" = "member"))]
    pub output: String,
    /// The member that never turns.
    #[serde(default = "case")]
    #[schemars(extend("x-gives" = "member"))]
    pub fixed: String,
    /// Planetary sets.
    #[schemars(length(min = 1))]
    pub set: Vec<SetRecord>,
    /// Clutches, brakes and one-way clutches by name.
    #[serde(default)]
    #[schemars(extend("x-gives" = "element"))]
    pub element: IndexMap<String, ElementRecord>,
    /// Gears in the order in which they are shown.
    #[serde(default)]
    pub gear: Vec<GearRecord>,
    /// Efficiency of each gear on the road, by gear.
    #[serde(default, skip_serializing_if = "IndexMap::is_empty")]
    #[schemars(inner(range(min = 0.3, max = 1)), extend("x-refers" = "gear"))]
    pub efficiency: IndexMap<String, f64>,
}

fn case() -> String {
    "case".into()
}

/// A planetary set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetRecord {
    /// Name of the set.
    pub id: String,
    /// Variants in which this set replaces the set of the same name.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[schemars(length(min = 1), extend("x-refers" = "variant"))]
    pub only: Vec<String>,
    /// How the gears mesh.
    #[serde(default)]
    pub kind: SetKind,
    /// Tooth counts.
    pub teeth: Teeth,
    /// Number of planets, or of planet pairs.
    #[schemars(range(min = 1, max = 12))]
    pub planets: Option<u32>,
    /// The member that carries each gear and the carrier.
    pub joins: Joins,
    /// Normal module, mm.
    #[schemars(range(min = 0.1, max = 20))]
    pub module_mm: Option<f64>,
    /// Helix angle, degrees.
    #[schemars(range(min = 0, max = 45))]
    pub helix_deg: Option<f64>,
    /// Face width, mm.
    #[schemars(range(min = 1, max = 200))]
    pub face_mm: Option<f64>,
}

/// How the gears of a set mesh.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SetKind {
    /// Sun, planets, ring. Teeth `sun`, `ring`, may have `planet`.
    #[default]
    Simple,
    /// Sun, inner planets, outer planets, ring. Teeth `sun`, `ring`, may have `planet_inner` and `planet_outer`.
    DoublePinion,
    /// Two suns on one carrier: the large sun meshes the long planets, the small sun the short ones, the ring the long ones.
    /// Teeth `sun_large`, `sun_small`, `ring`, may have `planet_long` and `planet_short`.
    TwoSun,
    /// Planets with two tooth counts: the sun meshes `planet_1`, the ring or a second sun meshes `planet_2`.
    Stepped,
}

/// Tooth counts of a set. Which of them it takes follows from its kind.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Teeth {
    /// Teeth of the sun.
    #[schemars(range(min = 1, max = 999))]
    pub sun: Option<u16>,
    /// Teeth of the ring.
    #[schemars(range(min = 1, max = 999))]
    pub ring: Option<u16>,
    /// Teeth of a planet.
    #[schemars(range(min = 1, max = 999))]
    pub planet: Option<u16>,
    /// Teeth of the planet that meshes the sun of a double-pinion set.
    #[schemars(range(min = 1, max = 999))]
    pub planet_inner: Option<u16>,
    /// Teeth of the planet that meshes the ring of a double-pinion set.
    #[schemars(range(min = 1, max = 999))]
    pub planet_outer: Option<u16>,
    /// Teeth of the sun that meshes the long planets of a two-sun set.
    #[schemars(range(min = 1, max = 999))]
    pub sun_large: Option<u16>,
    /// Teeth of the sun that meshes the short planets of a two-sun set.
    #[schemars(range(min = 1, max = 999))]
    pub sun_small: Option<u16>,
    /// Teeth of the planet that meshes the large sun and the ring.
    #[schemars(range(min = 1, max = 999))]
    pub planet_long: Option<u16>,
    /// Teeth of the planet that meshes the small sun and a long planet.
    #[schemars(range(min = 1, max = 999))]
    pub planet_short: Option<u16>,
    /// Teeth of the step that meshes the sun of a stepped set.
    #[schemars(range(min = 1, max = 999))]
    pub planet_1: Option<u16>,
    /// Teeth of the step that meshes the ring or the second sun.
    #[schemars(range(min = 1, max = 999))]
    pub planet_2: Option<u16>,
    /// Teeth of the second sun of a stepped set.
    #[schemars(range(min = 1, max = 999))]
    pub sun_2: Option<u16>,
}

/// The member that each gear of a set belongs to.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Joins {
    /// Member of the sun.
    #[schemars(extend("x-joins" = "member"))]
    pub sun: Option<String>,
    /// Member of the ring.
    #[schemars(extend("x-joins" = "member"))]
    pub ring: Option<String>,
    /// Member of the planet carrier.
    #[schemars(extend("x-joins" = "member"))]
    pub carrier: Option<String>,
    /// Member of the sun that meshes the long planets.
    #[schemars(extend("x-joins" = "member"))]
    pub sun_large: Option<String>,
    /// Member of the sun that meshes the short planets.
    #[schemars(extend("x-joins" = "member"))]
    pub sun_small: Option<String>,
    /// Member of the second sun of a stepped set.
    #[schemars(extend("x-joins" = "member"))]
    pub sun_2: Option<String>,
}

/// A clutch, brake or one-way clutch.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ElementRecord {
    /// What it is.
    pub kind: ElementKind,
    /// The two members it joins; for a brake, one of them is the case.
    #[schemars(extend("x-refers" = "member"))]
    pub joins: [String; 2],
    /// For a one-way clutch: the sense in which the first member may not turn against the second.
    pub blocks: Option<Sense>,
}

/// Kind of an element.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ElementKind {
    /// Plate clutch between two turning members.
    Clutch,
    /// Plate or band brake to the case.
    Brake,
    /// Roller, sprag or ratchet that holds one sense.
    OneWay,
    /// Toothed clutch: closed or open, never slipping.
    Dog,
}

/// Sense of rotation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Sense {
    /// With the input.
    Forward,
    /// Against the input.
    Reverse,
}

/// What holds a gear.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GearRecord {
    /// Name of the gear: `1`, `1B` with engine braking, `R`.
    #[schemars(length(min = 1), extend("x-gives" = "gear"))]
    pub id: String,
    /// Elements that are applied.
    #[schemars(extend("x-refers" = "element", "uniqueItems" = true))]
    pub closed: Vec<String>,
    /// One-way clutch or clutches that hold it under drive.
    #[serde(default, skip_serializing_if = "OneOrMore::is_empty")]
    pub one_way: OneOrMore,
    /// Ratio as it is printed in the source, to set beside the computed one.
    #[schemars(extend("x-number" = true))]
    pub published: Option<String>,
    /// How the printed ratio is known, where it differs from the source of the train.
    pub source: Option<String>,
    /// A misprint or doubt about the printed ratio.
    pub note: Option<String>,
}

/// A name or a list of names.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(untagged)]
pub enum OneOrMore {
    /// One name.
    One(#[schemars(extend("x-refers" = "element"))] String),
    /// A list.
    More(#[schemars(extend("x-refers" = "element"))] Vec<String>),
}

impl OneOrMore {
    /// The names.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        match self {
            Self::One(name) => core::slice::from_ref(name),
            Self::More(names) => names,
        }
        .iter()
        .map(String::as_str)
    }

    fn is_empty(&self) -> bool {
        self.names().next().is_none()
    }
}

impl Default for OneOrMore {
    fn default() -> Self {
        Self::More(Vec::new())
    }
}
