//! Records: the demo reads without a fault, and every kind of fault is named at its line.

use std::fs;
use std::path::Path;

use trainwright::record::{Family, Record, check};
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
