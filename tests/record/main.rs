//! Records: the demo reads without a fault, and every kind of fault is named at its line.

mod altered;
mod contradictions;
mod faults;
mod fits;
mod hard_parts;
mod locks;
mod schema;

use std::fs;
use std::path::Path;

use approx::assert_relative_eq;
use proptest::prelude::*;
use trainwright::Error;
use trainwright::fit::{FitClass, Spread, toleranced};
use trainwright::hold::{Change, Effect, compare_park_gears};
use trainwright::judge::{Reading, Rule};
use trainwright::record::{
    Comparison, Family, Fleet, Fluids, Instruments, Jobs, Kind, OneWayClutch, Problem, Problems, Record, TrainFile,
    Weight, check,
};
use trainwright::road::speedometer;
use trainwright::train::{Fraction, Load};

const FILES: [&str; 5] = ["family.toml", "fluids.toml", "instruments.toml", "fleet.toml", "jobs.toml"];

fn demo(file: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("python/trainwright/demo").join(file);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The published gear trains, each with its file name.
fn trains() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("python/trainwright/demo/trains");
    let entries = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<_> = entries.collect();
    names.sort();
    names.into_iter().map(|name| (name.clone(), demo(&format!("trains/{name}")))).collect()
}

/// Problems of the whole demo with one of its files changed.
fn check_demo(changed: &str, text: &str) -> Problems {
    let texts = FILES.map(|file| if file == changed { text.to_owned() } else { demo(file) });
    let files: Vec<_> = FILES.into_iter().zip(texts.iter().map(String::as_str)).collect();
    check(&files)
}

/// Problems of the family after one replacement, which must be possible.
fn family_with(from: &str, to: &str) -> Vec<Problem> {
    let text = demo("family.toml");
    assert!(text.contains(from), "{from}");
    check_demo("family.toml", &text.replacen(from, to, 1)).0
}

/// The only problem, as key, message and mend.
fn only(problems: &[Problem]) -> (&str, &str, &str) {
    let [problem] = problems else { panic!("{}", Problems(problems.to_vec())) };
    assert_eq!(problem.file, "family.toml");
    (&problem.key, &problem.message, &problem.mend)
}

#[test]
fn the_demo_has_no_fault() {
    let problems = check_demo("", "");
    assert!(problems.0.is_empty(), "{problems}");
}

#[test]
fn published_trains_give_the_printed_ratios_save_one_misprint() {
    let trains = trains();
    assert_eq!(trains.len(), 18);
    let files: Vec<_> = trains.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    let problems = check(&files);
    let [misprint] = problems.0.as_slice() else { panic!("{problems}") };
    assert_eq!(misprint.file, "crossed_two_set_four_speed_a.toml");
    assert_eq!((misprint.value.as_str(), misprint.message.as_str()), ("\"0.74\"", "the teeth give 0.7045"));
    assert_eq!(misprint.mend, "misprint in the source: its own formula 62/(26+62) gives 0.7045");
    assert!(problems.errors().next().is_none() && problems.notes().count() == 1);
}

#[test]
fn a_set_that_is_only_for_one_variant_replaces_its_namesake() {
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    for (variant, (num, den)) in
        [("teal", (854_760, 201_019)), ("wren", (854_760, 201_019)), ("heron", (16_269_580, 3_819_361))]
    {
        let named = family.train(variant).unwrap();
        let first = named.gear("1").unwrap();
        let state = named.train.resolve(first.closed, Load::Drive).unwrap();
        assert_eq!(state.ratio, Fraction::new(num, den).unwrap(), "{variant}");
        assert_eq!(named.names(state.closed).collect::<Vec<_>>(), ["B1", "C2", "F1"]);
    }
    assert_eq!(family.train("plover").unwrap_err().0[0].mend, "known: teal, wren, heron");
}

#[test]
fn the_records_reach_the_other_chapters() {
    let fleet = Fleet::from_toml("fleet.toml", &demo("fleet.toml")).unwrap();
    for (id, shown_km_h) in [("T16", 90.179_977_502_812_16), ("T17", 120.621_468_926_553_65)] {
        let truck = fleet.truck.iter().find(|truck| truck.id == id).unwrap();
        let shown = speedometer(fleet.programmed(truck).unwrap(), fleet.fitted(truck).unwrap(), 100.0).unwrap();
        assert_relative_eq!(shown.shown_km_h.value, shown_km_h, max_relative = 1e-6);
    }
    for (tire, rev_per_km) in
        [("m265", 410.169_049_581_352_8), ("lt235", 407.071_709_642_696_9), ("f35", 369.890_356_635_962_35)]
    {
        assert_relative_eq!(fleet.rolling(tire).unwrap().rev_per_km.value, rev_per_km, max_relative = 1e-6);
    }
    let fluids = Fluids::from_toml("fluids.toml", &demo("fluids.toml")).unwrap();
    let fill = fluids.fill.as_ref().unwrap().fill().unwrap();
    let dip = fill.level_at(&fluids.fluid["alder"].fluid(), 0.0, 134.537).unwrap();
    assert!(dip.gear_margin_mm.abs() < 0.04, "{dip:?}");
    let instruments = Instruments::from_toml("instruments.toml", &demo("instruments.toml")).unwrap();
    let gauge = instruments.instrument["pressure_gauge"].reading(1470.0).unwrap();
    assert_relative_eq!(gauge.u, 23.094_010_767_585_033, max_relative = 1e-6);
    assert!(instruments.instrument["outside_micrometer"].reading(80.0).is_err());
    assert!(instruments.instrument["speed_counter"].reading(1.0).is_err());
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    let pack = family.clutch["C3"].pack("wren").unwrap();
    assert_eq!((pack.faces, pack.head.free_surface_radius_mm), (8, 52.0));
    assert!(family.clutch["C3"].pack("plover").is_err());
}

#[test]
fn records_survive_the_way_to_toml_and_back() {
    fn round_trip<T: Record + PartialEq + core::fmt::Debug>(file: &str, text: &str) {
        let record = T::from_toml(file, text).unwrap_or_else(|problems| panic!("{problems}"));
        assert_eq!(T::from_toml(file, &record.to_toml()).unwrap_or_else(|problems| panic!("{problems}")), record);
    }
    round_trip::<Family>("family.toml", &demo("family.toml"));
    round_trip::<Fluids>("fluids.toml", &demo("fluids.toml"));
    round_trip::<Instruments>("instruments.toml", &demo("instruments.toml"));
    round_trip::<Fleet>("fleet.toml", &demo("fleet.toml"));
    round_trip::<Jobs>("jobs.toml", &demo("jobs.toml"));
    for (name, text) in trains() {
        round_trip::<TrainFile>(&name, &text);
    }
}
