//! Thrust races, shafts, splines; two variants compared.

use super::*;

#[test]
fn hard_parts_that_contradict_themselves_name_the_mend() {
    let needles = family_with("needles = 32", "needles = 63");
    let (key, message, _) = only(&needles);
    assert_eq!(key, "thrust_race.teal.needles");
    assert!(message.contains("do not fit side by side") && message.contains("count them again"), "{message}");
    let thick = family_with("needle_mm = [2.5, 6.0]", "needle_mm = [25.0, 6.0]");
    assert_eq!(only(&thick).0, "thrust_race.teal.needles");
    let thin = family_with("needle_mm = [2.5, 6.0]", "needle_mm = [0.5, 6.0]");
    assert_eq!(only(&thin).0, "thrust_race.teal.needle_mm");
    assert!(only(&thin).1.contains("outside 0.01 to 0.3"), "{}", only(&thin).1);

    let washer = family_with("inside_mm = { teal = 52.0", "inside_mm = { teal = 78.0");
    let (key, message, mend) = only(&washer);
    assert_eq!((key, message), ("thrust_washer.second_sun.outside_mm.teal", "must be above inside_mm 78"));
    assert_eq!(mend, "exchange the two or correct one");
    let hollow = family_with("inside_mm = 8.0", "inside_mm = 30.0");
    assert_eq!(only(&hollow).0, "shaft.input.outside_mm.teal");

    let nowhere = family_with(
        r#"pushed_by = { set = "P3", wheel = "sun", u_rel_push = 0.10 }"#,
        r#"pushed_by = { set = "P9", wheel = "sun" }"#,
    );
    let (key, message, _) = only(&nowhere);
    assert_eq!(key, "thrust_race.teal.pushed_by");
    assert!(message.contains("no set of this name"), "{message}");
    let second = family_with(r#"set = "P2", wheel = "sun""#, r#"set = "P2", wheel = "sun_2""#);
    assert!(only(&second).1.contains("has no such wheel"), "{}", only(&second).1);
    let spur = family_with("module_mm = 1.48\n", "");
    let (key, message, _) = only(&spur[..1]);
    assert_eq!(key, "thrust_race.teal.pushed_by");
    assert!(message.contains("give both to the set"), "{message}");
}

#[test]
fn splines_are_checked_from_root_to_tip() {
    let reversed = family_with("pitch_diameter_mm = { teal = 33.75", "pitch_diameter_mm = { teal = 36.0");
    assert_eq!(only(&reversed).0, "shaft.input.spline.major_mm.teal");
    let root = family_with("minor_mm = { teal = 32.5", "minor_mm = { teal = 29.0");
    let (key, message, mend) = only(&root);
    assert_eq!(
        (key, message),
        ("shaft.input.spline.minor_mm.teal", "the teeth reach below the outside of the shaft, 29.5")
    );
    assert!(mend.starts_with("if their root is the thinnest place"), "{mend}");
    assert_eq!(root[0].weight, Weight::Note);
}

/// The ratings are the scenario's; the forces follow from them, and point one way in first and the other in reverse.
#[test]
fn hard_parts_of_the_demo_at_their_rating() {
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    let rating = family.rating("teal").unwrap();
    let shaft = family.shaft["output"].rated("teal", rating).unwrap();
    assert_eq!((shaft.torque_nm, shaft.shaft.outside_mm), (2800.0, 41.0));
    // Computed independently for the demonstration.
    assert_relative_eq!(shaft.shaft.torsion(2800.0).unwrap().stress_mpa, 206.907_660_960_140_2, max_relative = 1e-12);
    let race = &family.thrust_race.as_ref().unwrap()["teal"];
    assert_eq!(race.bearing().needle_capacity().unwrap().static_n, 105_600.0);
    let thrusts = family.train("teal").unwrap().gear_thrusts(race.pushed_by.as_ref().unwrap(), rating, 1000.0).unwrap();
    let of = |gear: &str| thrusts.iter().find(|thrust| thrust.gear == gear).unwrap();
    assert_eq!((of("1").input_torque_nm, of("R").input_torque_nm), (640.0, 420.0));
    let (first, reverse) = (of("1").thrust.unwrap(), of("R").thrust.unwrap());
    assert_relative_eq!(first.thrust.axial_n, 3_673.542_94, max_relative = 1e-8); // tests/vectors/hold_wheel_thrust.csv
    assert!(first.torque_nm * reverse.torque_nm < 0.0);
    assert!(family.rating("grey").is_err());
}

fn compared(before: &str, after: &str) -> Comparison {
    Family::from_toml("family.toml", &demo("family.toml")).unwrap().compare(before, after).unwrap()
}

fn figure<'c>(comparison: &'c Comparison, part: &str, figure: &str) -> &'c Change {
    let part = comparison.parts.iter().find(|entry| entry.part == part).unwrap_or_else(|| panic!("no {part}"));
    let found = part.changes.iter().find(|change| change.figure == figure);
    &found.unwrap_or_else(|| panic!("{}: no {figure}", part.part)).change
}

#[test]
fn a_comparison_says_what_a_change_buys_and_what_it_costs() {
    let heron = compared("teal", "heron");
    let of = |part: &str, name: &str| figure(&heron, part, name);
    // Computed independently for the demonstration.
    assert_relative_eq!(of("thrust_race", "static capacity").ratio, 1.6875, max_relative = 1e-12);
    let life = of("thrust_race", "life by size alone");
    assert_relative_eq!(life.ratio, 3.840_733_734_259_661, max_relative = 1e-12);
    let stress = of("output_shaft", "stress, each at its own rating");
    assert_relative_eq!(stress.after, 248.119_088_591_797_83, max_relative = 1e-12);
    // The thicker shaft is the more loaded one.
    assert_eq!(stress.effect, Effect::Costs);
    assert_eq!(of("output_shaft", "stress at equal torque").effect, Effect::Buys);
    // More plates in the same clearance.
    assert_eq!(of("C1", "capacity at equal pressure").ratio, 1.5);
    assert_eq!(of("C1", "clearance for each face").effect, Effect::Costs);
    // The third gear of the demonstration: C1 holds 1.105 of what it must.
    assert_relative_eq!(of("C1", "least margin, each at its own rating").before, 1.105, max_relative = 5e-4);
    assert_eq!(of("ratios", "gear R").effect, Effect::Differs);
    assert_eq!(of("thrust_race", "share carried by the third sun of teal").after, 0.6875);
    assert_relative_eq!(
        of("c1_drum", "share carried by the reaction sleeve of teal").after,
        13.5 / 20.5,
        max_relative = 1e-12
    );
    let mates = |part: &str| &heron.parts.iter().find(|entry| entry.part == part).unwrap().goes_with;
    assert_eq!(mates("thrust_race"), &["output_carrier", "third_sun"]);
    assert_eq!(mates("input_shaft"), &["turbine_hub"]);
    assert_eq!(heron.alike, ["set P2", "set P3", "set P4"]);
}

#[test]
fn a_comparison_the_other_way_round_is_its_inverse() {
    for (first, second) in [("teal", "heron"), ("teal", "wren"), ("wren", "heron")] {
        let (there, back) = (compared(first, second), compared(second, first));
        // A short sleeve finds room on the long drum, the long drum none on the short sleeve.
        let alike =
            |side: &Comparison| side.alike.iter().filter(|part| *part != "c1_drum").cloned().collect::<Vec<_>>();
        assert_eq!(alike(&there), alike(&back));
        for part in &there.parts {
            // What a part finds on the other variant's surface has no way back.
            for change in part.changes.iter().filter(|change| !change.figure.starts_with("share carried")) {
                let other = figure(&back, &part.part, &change.figure);
                // Figures at equal load stand at the load of the one before, so only their ratio turns around.
                let expected = match change.change.effect {
                    Effect::Buys => Effect::Costs,
                    Effect::Costs => Effect::Buys,
                    same => same,
                };
                assert_eq!(other.effect, expected, "{} {}", part.part, change.figure);
                if !change.figure.contains("equal") && (1e-9..1e9).contains(&change.change.ratio) {
                    assert_relative_eq!(other.ratio * change.change.ratio, 1.0, max_relative = 1e-12);
                }
            }
        }
    }
    let itself = compared("wren", "wren");
    assert!(itself.parts.is_empty() && itself.alike.len() > 10, "{itself:?}");
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    let unknown = family.compare("teal", "grey").unwrap_err();
    assert_eq!(unknown.0[0].mend, "known: teal, wren, heron");
}

#[test]
fn a_set_that_does_not_go_together_is_a_note() {
    let text = |planets: u32, planet: u32| {
        format!(
            "[train]\ninput = 's'\noutput = 'c'\n[[train.set]]\nid = 'P1'\n\
             teeth = {{ sun = 15, planet = {planet}, ring = 47 }}\nplanets = {planets}\n\
             joins = {{ sun = 's', carrier = 'c', ring = 'case' }}\n"
        )
    };
    assert!(check(&[("x.toml", &text(2, 16))]).0.is_empty());
    let spacing = check(&[("x.toml", &text(3, 16))]);
    assert_eq!((spacing.errors().count(), spacing.0[0].key.as_str()), (0, "train.set[0].planets"));
    assert!(spacing.0[0].message.contains("62 places / 3 planets leaves 2"), "{spacing}");
    let axis = check(&[("x.toml", &text(2, 14))]);
    assert_eq!((axis.errors().count(), axis.0[0].key.as_str()), (0, "train.set[0].teeth"));
}
