//! Records: the demo reads without a fault, and every kind of fault is named at its line.

use std::fs;
use std::path::Path;

use trainwright::record::{Family, Kind, Record, check};
use trainwright::train::{Fraction, Load};

fn demo(file: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("python/trainwright/demo").join(file);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

#[test]
fn the_demo_has_no_fault() {
    let files =
        ["family.toml", "fluids.toml", "instruments.toml", "fleet.toml", "jobs.toml"].map(|file| (file, demo(file)));
    let files: Vec<_> = files.iter().map(|(file, text)| (*file, text.as_str())).collect();
    let problems = check(&files);
    assert!(problems.0.is_empty(), "{problems}");
}

#[test]
fn a_set_that_is_only_for_one_variant_replaces_its_namesake() {
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    for (variant, ratio) in
        [("teal", (854_760, 201_019)), ("wren", (854_760, 201_019)), ("heron", (16_269_580, 3_819_361))]
    {
        let named = family.train(variant).unwrap();
        let first = named.gear("1").unwrap();
        let state = named.train.resolve(first.closed, Load::Drive).unwrap();
        assert_eq!(state.ratio, Fraction::new(ratio.0, ratio.1).unwrap(), "{variant}");
        assert_eq!(named.names(state.closed).collect::<Vec<_>>(), ["B1", "C2", "F1"]);
    }
    assert!(family.train("plover").unwrap_err().to_string().contains("known: teal, wren, heron"));
}

/// The published gear trains, each with its file name.
fn trains() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("python/trainwright/demo/trains");
    let mut names: Vec<_> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names.into_iter().map(|name| (name.clone(), demo(&format!("trains/{name}")))).collect()
}

#[test]
fn published_trains_give_the_printed_ratios_save_one_misprint() {
    let trains = trains();
    assert_eq!(trains.len(), 18);
    let files: Vec<_> = trains.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    let problems = check(&files);
    assert!(problems.errors().next().is_none(), "{problems}");
    println!("{problems}");
    let disagreements: Vec<_> = problems.notes().filter(|note| note.key.ends_with(".published")).collect();
    let [misprint] = disagreements.as_slice() else { panic!("{problems}") };
    assert_eq!(misprint.file, "crossed_two_set_four_speed_a.toml");
    assert_eq!((misprint.value.as_str(), misprint.message.as_str()), ("\"0.74\"", "the teeth give 0.7045"));
}

#[test]
fn committed_schemas_are_current() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("python/trainwright/schema");
    for kind in Kind::ALL {
        let path = folder.join(kind.name()).with_extension("json");
        if std::env::var_os("WRITE_SCHEMA").is_some() {
            fs::write(&path, kind.json_schema()).unwrap();
        }
        let committed = fs::read_to_string(&path).unwrap_or_default();
        assert!(committed == kind.json_schema(), "{} is old: WRITE_SCHEMA=1 cargo test --test record", path.display());
    }
}
