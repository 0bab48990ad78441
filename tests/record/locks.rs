//! One-way clutches and park locks of a family.

use super::*;

#[test]
fn rollers_are_a_kind_of_one_way_clutch() {
    let family = demo("family.toml");
    let sprags = &family[family.find("[one_way.teal]").unwrap()..family.find("[one_way.wren]").unwrap()];
    let with = |rollers: u32, race: &str| {
        let roller = format!(
            "[one_way.teal]\nkind = \"roller\"\nrollers = {rollers}\nrace = \"{race}\"\nrace_radius_mm = 45.0\n\
             roller_radius_mm = 4.0\nroller_length_mm = 12.0\nwedge_angle_deg = 8.0\nhertz_allow_mpa = 3500\n"
        );
        family.replacen(sprags, &roller, 1)
    };
    let read = Family::from_toml("family.toml", &with(10, "outer")).unwrap();
    let part = read.one_way_part("teal").unwrap();
    let OneWayClutch::Wedge(wedge) = part.clutch else { panic!("{part:?}") };
    assert_eq!((wedge.race.radius_mm, wedge.body.radius_mm, wedge.half_angle_deg), (-45.0, 4.0, 4.0));
    assert!(part.hold(Reading::exact(100.0).unwrap(), Rule::simple_acceptance()).is_err());
    let crowded = check(&[("family.toml", &with(33, "outer"))]);
    assert_eq!(crowded.0[0].key, "one_way.teal.rollers", "{crowded}");
    assert!(check(&[("family.toml", &with(33, "inner"))]).0.is_empty());
}

#[test]
fn a_one_way_clutch_needs_its_place_in_the_train() {
    let family = demo("family.toml")
        .replacen("F1 = { kind = \"one_way\", joins = [\"third_sun\", \"case\"], blocks = \"reverse\" }", "", 1)
        .replace("one_way = \"F1\"\n", "");
    let problems = check(&[("family.toml", &family)]);
    assert!(problems.0.iter().any(|problem| problem.key == "one_way" && problem.mend.contains("add it")), "{problems}");
}

#[test]
fn the_family_gives_its_one_way_clutches_and_park_locks() {
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    // Computed independently for the demonstration.
    for (variant, capacity_nm) in [("teal", 1_173.859_021_863_366_5), ("wren", 5386.5), ("heron", 7079.4)] {
        let part = family.one_way_part(variant).unwrap();
        assert!((part.capacity_nm().unwrap() / capacity_nm - 1.0).abs() < 1e-9, "{part:?}");
    }
    let (old, new) = (family.park_lock("teal").unwrap(), family.park_lock("heron").unwrap());
    let gained = compare_park_gears(old.gear, new.gear, old.strength.stress_factor).unwrap();
    assert!((gained.bending_ratio - 2.067_187_5).abs() < 1e-12);
    assert!((old.window_deg.unwrap() - 1.5_f64.atan2(66.0).to_degrees()).abs() < 1e-3);
    assert_eq!(old.tip.unwrap().length_mm, 15.0);
    let missing =
        |name: &str, error: Error| assert!(matches!(error, Error::Missing { .. }) && error.parameter() == name);
    missing("park", Family { park: None, ..family.clone() }.park_lock("teal").unwrap_err());
    missing("park_rules", Family { park_rules: None, ..family.clone() }.park_lock("teal").unwrap_err());
    missing("one_way", Family { one_way: None, ..family.clone() }.one_way_part("teal").unwrap_err());
    assert!(family.park_lock("swift").is_err() && family.one_way_part("swift").is_err());
}
