//! Conditions of assembly against a handbook, a published failure, and brute force.

mod support;

use proptest::prelude::*;
use std::fs;
use support::vectors;
use trainwright::record::{Family, Record};
use trainwright::train::{Finding, MAX_PLANETS, PlanetarySet, SetJoins, SetKind, SetTeeth};

fn set(kind: &str, [sun, sun_2, planet, planet_2, ring]: [u16; 5], planets: u8) -> PlanetarySet {
    let kind = match kind {
        "simple" => SetKind::Simple,
        "double_pinion" => SetKind::DoublePinion,
        "two_sun" => SetKind::TwoSun,
        _ => SetKind::Stepped,
    };
    PlanetarySet { kind, planets, teeth: SetTeeth { sun, sun_2, planet, planet_2, ring }, joins: SetJoins::NONE }
}

#[test]
fn assembly_vectors() {
    vectors("train_assembly", |row| {
        let teeth = ["sun", "sun_2", "planet", "planet_2", "ring"].map(|gear| row.count(gear) as u16);
        let assembly = set(row.text("kind"), teeth, row.count("planets") as u8).assembly()?;
        let findings = [assembly.coaxial, assembly.equal_spacing, assembly.neighbors].map(|finding| finding as u8);
        let [coaxial, equal_spacing, neighbors] = findings.map(f64::from);
        let counts = [assembly.places, assembly.places_left, assembly.equal_planets & 0b111_1000].map(f64::from);
        let [places, left, equal] = counts;
        Ok([
            places,
            left,
            equal,
            f64::from(assembly.coaxial_excess),
            assembly.neighbor_gap_modules,
            coaxial,
            equal_spacing,
            neighbors,
        ])
    });
}

/// "Coaxial, equally spaced, neighbors clear by 7 modules or more": the demonstration's own claim about its sets.
#[test]
fn the_demonstration_sets_assemble() {
    let path = format!("{}/python/trainwright/demo/family.toml", env!("CARGO_MANIFEST_DIR"));
    let family = Family::from_toml("family.toml", &fs::read_to_string(path).unwrap()).unwrap();
    for variant in ["teal", "heron"] {
        for set in family.train(variant).unwrap().train.sets() {
            let assembly = set.assembly().unwrap();
            assert_eq!(assembly.finding(), Finding::Holds, "{set:?}: {assembly}");
            println!("{variant} {:?}: {assembly}", set.teeth);
        }
    }
}

#[test]
fn a_failed_condition_is_named_with_its_mend() {
    let failed = set("simple", [15, 0, 16, 0, 47], 3).assembly().unwrap();
    assert_eq!(failed.finding(), Finding::Fails);
    let text = failed.to_string();
    assert!(text.contains("62 places / 3 planets leaves 2; use 2, or the angles 0.00° 121.94° 238.06°"), "{text}");
    let prime = set("simple", [37, 0, 29, 0, 94], 5).assembly().unwrap().to_string();
    assert!(prime.contains("131 places / 5 planets leaves 1; use the angles 0.00° 71.45°"), "{prime}");
    let crowded = set("simple", [20, 0, 20, 0, 60], 8).assembly().unwrap();
    assert!(crowded.neighbors == Finding::Fails && crowded.to_string().contains("use fewer planets"), "{crowded}");
    let unknown = set("simple", [20, 0, 0, 0, 60], 0).assembly().unwrap();
    assert_eq!(unknown.finding(), Finding::NotKnown);
    assert!(unknown.to_string().contains("give the number of planets"));
}

/// Brute force: with sun and ring in place, does a planet that meshes at the first place mesh at this angle as well?
/// The tooth of a planet at angle θ must fit the sun's teeth, 2π/z_S apart, and the ring's at once.
fn meshes(kind: SetKind, teeth: SetTeeth, turns: f64) -> bool {
    let SetTeeth { sun, sun_2, planet, planet_2, ring } = teeth;
    let [sun, sun_2, planet, planet_2, ring] = [sun, sun_2, planet, planet_2, ring].map(f64::from);
    let whole = |x: f64| (x - x.round()).abs() < 1e-6;
    match kind {
        // Teeth of sun and ring that pass the planet on the way to this place must add up to whole teeth.
        SetKind::Simple => whole(turns * sun + turns * ring),
        SetKind::DoublePinion => whole(turns * ring - turns * sun),
        SetKind::TwoSun => whole(turns * ring + turns * sun) && whole(turns * ring - turns * sun_2),
        SetKind::Stepped => {
            // The planet may be turned by any whole tooth of its first step; one of these must fit the second step.
            let second = |turned: f64| {
                if ring > 0.0 {
                    turns * (1.0 - ring / planet_2) - turned
                } else {
                    turns * (1.0 + sun_2 / planet_2) - turned
                }
            };
            (0..planet as u32).any(|tooth| {
                let turned = turns * (1.0 + sun / planet) + f64::from(tooth) / planet;
                whole(second(turned) * planet_2)
            })
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]
    #[test]
    fn places_agree_with_brute_force(kind in 0..5, sun in 12_u16..60, sun_2 in 12_u16..60, planet in 10_u16..40, planet_2 in 10_u16..40, extra in 1_u16..80) {
        let ring = sun.max(sun_2) + extra;
        let (kind, teeth) = match kind {
            0 => (SetKind::Simple, SetTeeth { sun, planet, ring, ..SetTeeth::NONE }),
            1 => (SetKind::DoublePinion, SetTeeth { sun, planet, planet_2, ring, ..SetTeeth::NONE }),
            2 => (SetKind::TwoSun, SetTeeth { sun, sun_2, planet, planet_2, ring }),
            3 => (SetKind::Stepped, SetTeeth { sun, planet, planet_2, ring, ..SetTeeth::NONE }),
            _ => (SetKind::Stepped, SetTeeth { sun, sun_2, planet, planet_2, ring: 0 }),
        };
        for planets in 1..=MAX_PLANETS as u8 {
            let assembly = PlanetarySet { kind, planets, teeth, joins: SetJoins::NONE }.assembly().unwrap();
            let equally = (1..planets).all(|k| meshes(kind, teeth, f64::from(k) / f64::from(planets)));
            prop_assert_eq!(assembly.equal_spacing == Finding::Holds, equally, "{} planets: {}", planets, assembly);
            for angle in &assembly.planet_angles_deg[..planets.into()] {
                prop_assert!(meshes(kind, teeth, angle / 360.0), "{planets} planets, {angle}°: {assembly}");
            }
        }
    }
}

#[test]
fn wrong_teeth_are_refused() {
    let kind = |kind, teeth, planets| set(kind, teeth, planets).assembly().map_err(|error| error.kind());
    assert_eq!(kind("simple", [0, 0, 16, 0, 47], 3), Err("NOT_POSITIVE"));
    assert_eq!(kind("simple", [50, 0, 16, 0, 47], 3), Err("INCONSISTENT"), "the ring is smaller than the sun");
    assert_eq!(kind("simple", [15, 0, 16, 0, 47], 13), Err("COUNT"));
    assert_eq!(kind("simple", [15, 20, 16, 0, 47], 3), Err("INCONSISTENT"), "a simple set has one sun");
    assert_eq!(kind("stepped", [20, 0, 16, 0, 48], 4), Err("NOT_POSITIVE"), "a stepped set needs both steps");
    assert_eq!(kind("two_sun", [36, 0, 18, 0, 72], 3), Err("NOT_POSITIVE"));
    assert_eq!(kind("double_pinion", [38, 0, 0, 0, u16::MAX], 4), Err("OUT_OF_RANGE"));
}
