//! Records: TOML that a parts person can maintain, and the way from there to the other chapters.
//!
//! A family of units, its fluids, the shop's instruments, a fleet, and single gear trains are data. The structs here are
//! the schema: they give the JSON Schema for editors, and every rule against which a file is checked. All faults of a file
//! are reported together, each with its line, key, value, what is accepted, and the mend.
//!
//! ```
//! use trainwright::record::{Record, TrainFile};
//! let text = r#"
//!     [train]
//!     input = "sun"
//!     output = "carrier"
//!     [[train.set]]
//!     id = "P1"
//!     teeth = { sun = 30, rign = 72 }
//!     joins = { sun = "sun", ring = "ring", carrier = "carrier" }
//! "#;
//! let problems = TrainFile::from_toml("reduction.toml", text).unwrap_err();
//! let problem = &problems.0[0];
//! assert_eq!((problem.line, problem.key.as_str()), (7, "train.set[0].teeth.rign"));
//! assert_eq!(problem.mend, "did you mean ring?");
//! ```

mod check;
mod compare;
mod document;
mod drive;
mod duty;
mod family;
mod fault;
mod fits;
mod fleet;
mod fluids;
mod hard_parts;
mod hydraulics;
mod identify;
mod image;
mod instruments;
mod interchange;
mod jobs;
mod kind;
mod live;
mod locks;
mod named_train;
mod parts;
mod problem;
mod quantity;
mod ratings;
mod stack;
mod tow;
mod train;
mod unit;
mod whole;

use std::format;
use std::string::String;
use std::vec::Vec;

use serde::Serialize;
use serde::de::DeserializeOwned;
use toml::de::{DeTable, Deserializer};

use self::check::{Names, Walk};
use self::document::Document;
use self::whole::Whole;

pub use compare::{Comparison, FigureChange, PartComparison};
pub use duty::{Assumed, BearingDuty, DutyRule, GradeHours, SetDamage, TruckDuty};
pub use family::{
    AliasRecord, ClutchRecord, CoverRecord, Evidence, EvidenceMeasured, Family, Fatigue, Friction, MachiningRecord,
    MatchRecord, Meta, Price, PumpRecord, PushedBy, ShaftRecord, ShaftTorque, ShiftRecord, Slopes, SplineRecord,
    SteelRecord, ThrustRace, VariantRecord, WasherRecord, WheelName,
};
pub use fits::{FitKind, FitRecord, MaterialRecord, Press};
pub use fleet::{
    Aspiration, ConverterRecord, ConverterRules, EngineRecord, Fleet, RoadRecord, TireModel, TireRecord, TruckRecord,
};
pub use fluids::{CoolerRecord, FillRecord, FluidRecord, Fluids, SumpRecord};
pub use hard_parts::{GearThrust, RatedShaft};
pub use identify::{Bench, Found, FoundReading, Identified, IdentifiedPart, Look, Made, NextLook, Shows};
pub use image::Installed;
pub use instruments::{InstrumentRecord, Instruments};
pub use interchange::NamedJoints;
pub use jobs::{Count, Job, Jobs, Stall};
pub use kind::Kind;
pub use live::{LiveWatch, NamedLiveUnit};
pub use locks::{OneWayClutch, OneWayPart, OneWayRecord, ParkLock, ParkRecord, ParkRules, RaceSide};
pub use named_train::{NamedGear, NamedTrain};
pub use problem::{Problem, Problems, Weight};
pub use quantity::{Estimate, Pair, PerVariant, Size};
pub use ratings::{HitchKind, TowRecord};
pub use stack::{HotPlay, HotRecord, RingRecord, Selectable, Selective};
pub use train::{
    ElementKind, ElementRecord, GearRecord, Joins, OneOrMore, Sense, SetKind, SetRecord, Teeth, TrainFile, TrainRecord,
};

/// A record that is a file of its own.
#[expect(private_bounds, reason = "sealed")]
pub trait Record: Serialize + DeserializeOwned + Whole {
    /// The kind of file it is.
    const KIND: Kind;

    /// The record in this text, or every fault of it. `file` is the name that the faults show.
    fn from_toml(file: &str, text: &str) -> Result<Self, Problems> {
        let (document, problems) = Document::parse(file, text);
        let mut names = Names::default();
        let (record, mut problems) = read::<Self>(&document, &mut names, Problems(problems));
        problems.0.extend(names.unresolved(&[]));
        problems.sort();
        record.filter(|_| problems.errors().next().is_none()).ok_or(problems)
    }

    /// The record as TOML.
    fn to_toml(&self) -> String {
        toml::to_string(self).unwrap_or_default()
    }

    /// The record as JSON; what is left out is null.
    fn to_json(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }
}

/// The kind of record in this text, by its tables.
#[must_use]
pub fn kind_of(text: &str) -> Option<Kind> {
    Kind::of(DeTable::parse_recoverable(text).0.get_ref())
}

/// Every fault and every note of these files, each given as its name and its text. Names may be given in one file and used in
/// another; names whose file is not among them are taken on trust.
#[must_use]
pub fn check(files: &[(&str, &str)]) -> Problems {
    let mut all = Problems::default();
    let (mut names, mut families, mut instruments) = (Vec::new(), Vec::new(), Vec::new());
    for (file, text) in files {
        let (document, problems) = Document::parse(file, text);
        let mut own = Names::default();
        let (found, problems) = problems_of(&document, &mut own, Problems(problems));
        all.0.extend(problems.0);
        names.push(own);
        match found {
            Some(Against::Family(family)) => families.push((document, family)),
            Some(Against::Instruments(record)) => instruments.push(record),
            None => {}
        }
    }
    for (document, family) in &families {
        let faults = instruments.iter().flat_map(|record| family.instrument_faults(record));
        all.0.extend(faults.map(|fault| fault.placed(document)));
    }
    all.0.extend(names.iter().flat_map(|own| own.unresolved(&names)));
    all.sort();
    all
}

/// A record that others are checked against.
enum Against {
    Family(std::boxed::Box<Family>),
    Instruments(Instruments),
}

fn problems_of(document: &Document<'_>, names: &mut Names, syntax: Problems) -> (Option<Against>, Problems) {
    match Kind::of(document.root.get_ref()) {
        Some(Kind::Train) => (None, read::<TrainFile>(document, names, syntax).1),
        Some(Kind::Family) => {
            let (family, problems) = read::<Family>(document, names, syntax);
            (family.map(|family| Against::Family(family.into())), problems)
        }
        Some(Kind::Fluids) => (None, read::<Fluids>(document, names, syntax).1),
        Some(Kind::Instruments) => {
            let (instruments, problems) = read::<Instruments>(document, names, syntax);
            (instruments.map(Against::Instruments), problems)
        }
        Some(Kind::Fleet) => (None, read::<Fleet>(document, names, syntax).1),
        Some(Kind::Jobs) => (None, read::<Jobs>(document, names, syntax).1),
        None if !syntax.0.is_empty() => (None, syntax),
        None => {
            let mut problem = document.problem_at(0..0, "", "this is no record of any kind".into());
            let kinds: Vec<_> = Kind::ALL.iter().map(|kind| kind.main_keys()).collect();
            problem.mend = format!("it needs one of the tables {}", kinds.join(", "));
            (None, Problems(std::vec![problem]))
        }
    }
}

/// The record as far as it can be read, with everything found on the way: first the text, then keys and values, then what only
/// the whole shows.
fn read<T: Record>(document: &Document<'_>, names: &mut Names, mut problems: Problems) -> (Option<T>, Problems) {
    if problems.errors().next().is_none() {
        problems.0.extend(Walk::along(T::KIND.schema(), document, names));
    }
    if problems.errors().next().is_some() {
        return (None, problems);
    }
    match T::deserialize(Deserializer::from(document.root.clone())) {
        Ok(record) => {
            problems.0.extend(record.faults().into_iter().map(|fault| fault.placed(document)));
            (Some(record), problems)
        }
        Err(error) => {
            problems.0.push(document.problem_at(error.span().unwrap_or(0..0), "", error.message().into()));
            (None, problems)
        }
    }
}
