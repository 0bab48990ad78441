//! What only the whole record shows: sizes, names and joints that contradict one another.

use super::*;

#[test]
fn what_only_the_whole_shows() {
    let gear = family_with("closed = [\"B1\", \"C1\", \"C2\"]", "closed = [\"B1\", \"C1\", \"C1\"]");
    assert_eq!(only(&gear).0, "train.gear[4].closed[2]");
    assert_eq!(only(&gear).1, "named twice");
    let tied = family_with("closed = [\"B1\", \"C1\", \"C2\"]", "closed = [\"B1\", \"B2\", \"C1\", \"C3\"]");
    assert_eq!(only(&tied).1, "this is no gear: tied up, neither input nor output can turn");
    let free = family_with("closed = [\"B1\", \"C2\"]\none_way = \"F1\"", "closed = [\"B1\", \"C2\"]");
    assert_eq!(only(&free).1, "this is no gear: neutral, the input does not determine the output");
    assert_eq!(only(&free).2, "F1 holds a gear here under drive: name it in one_way");
    let wrong_way = family_with("blocks = \"reverse\"", "blocks = \"forward\"");
    assert!(wrong_way.iter().all(|problem| problem.message.starts_with("F1 cannot hold this gear")), "{wrong_way:?}");
    let seventh = family_with("closed = [\"B2\", \"C2\", \"C3\"]", "closed = [\"C2\", \"C3\"]\none_way = \"F1\"");
    assert!(only(&seventh).1.starts_with("F1 cannot hold this gear"));
    let clutch = family_with("one_way = \"F1\"", "one_way = \"B2\"");
    assert_eq!(only(&clutch), ("train.gear[0].one_way", "B2 is not a one-way clutch", "list it in closed"));
    let sun = family_with("teeth = { sun = 36,", "teeth = { sun = 95,");
    assert_eq!(only(&sun).0, "train.set[2].teeth.ring");
    let foreign = family_with("teeth = { sun = 36, planet = 29,", "teeth = { sun = 36, planet_long = 29,");
    assert_eq!(only(&foreign).1, "this kind of set has no such gear");
    let open = family_with("carrier = \"output\", ring = \"rear_carrier\" }", "carrier = \"output\" }");
    assert_eq!(only(&open).0, "train.set[2].joins.ring");
    let twice = family_with("id = \"P2\"", "id = \"P1\"");
    assert!(twice.iter().any(|problem| problem.message.starts_with("there is already a set")));
    let prior = family_with("heron = 0.22", "heron = 0.32");
    assert!(only(&prior).1.starts_with("the shares sum to 1.1"));
    let dam = family_with("head_radius_mm = 52.0\n", "");
    assert_eq!(only(&dam).0, "clutch.C3");
    let part = family_with(
        "fit = \"support_register_in_case\"\npart = \"rear_support\"",
        "fit = \"support_register_in_case\"\npart = \"c1_drum\"",
    );
    assert_eq!(only(&part).0, "machining[0].part");
}

#[test]
fn what_parts_and_joints_say_against_one_another() {
    for (from, to, key, message, mend) in [
        (
            "land = \"c1_drum\"",
            "land = \"reaction_sleeve\"",
            "cover[0].land",
            "reaction_sleeve meets itself",
            "give its two seats two names",
        ),
        (
            "land_mm    = { teal = [1.5, 13.5]",
            "land_mm    = { teal = [1.5, 23.5]",
            "cover[0].land_mm.teal",
            "the own surface of teal carries 0.614 of it, least_cover is 0.95",
            "correct land_mm, surface_mm or least_cover",
        ),
        (
            "land_mm    = { teal = [1.5, 13.5]",
            "land_mm    = { teal = [1.5, 1.5]",
            "cover[0].land_mm.teal",
            "land_mm = 0: must be above 0",
            "",
        ),
        (
            "finish_mm = [117.940, 117.965]",
            "finish_mm = [117.840, 117.865]",
            "machining[0].finish_mm",
            "finished so, rear_support of wren with its mate of teal is loose, clearance 0.115 to 0.175 mm, wanted 0.000 to 0.100",
            "correct finish_mm, from or to_fit",
        ),
        (
            "finish_mm = [117.940, 117.965]",
            "finish_mm = [118.350, 118.375]",
            "machining[0].finish_mm",
            "the shaft of wren is 118.34 to 118.365, and machining only makes it smaller",
            "correct finish_mm, or take the variant out of from",
        ),
        (
            "from = [\"wren\", \"heron\"]\nto_fit = [\"teal\"]",
            "from = [\"teal\"]\nto_fit = [\"teal\"]",
            "machining[0].to_fit",
            "rear_support of teal holds with its mate of teal as it is: holds, clearance 0.015 to 0.075 mm, wanted 0.000 to 0.100",
            "leave the variant out, unless a worn part is meant",
        ),
        (
            "part = \"pressure_sensor_seal\"\nnumbers = { teal = \"CB-2040\"",
            "part = \"pressure_sensor_seal\"\nnumbers = { teal = \"CB-1107\"",
            "alias[1].numbers.teal",
            "the number of sump_filter too",
            "correct one of the two",
        ),
        (
            "heron = \"CB-2046\"",
            "heron = \"CB-2040\"",
            "alias[1].numbers",
            "the numbers are all the same: there is nothing to tell",
            "leave the alias out",
        ),
        (
            "part = \"sump_filter\"",
            "part = \"park_gear\"",
            "alias[0].part",
            "the alias says the same fit, but a joint of park_gear of teal in heron does not hold: unequal",
            "leave the alias out, or correct the joint",
        ),
        ("thrust_race = 24\n", "", "price", "no price for thrust_race", "add what is known"),
        ("turn_support_register = 40\n", "", "price", "no price for turn_support_register", "add what is known"),
        ("thrust_race = 24", "thrust_race = -24", "price.thrust_race", "takes a number of at least 0", ""),
    ] {
        let problems = family_with(from, to);
        let (found, said, mended) = only(&problems);
        assert_eq!((found, said), (key, message));
        assert!(mended.contains(mend), "{mended}");
    }
}

#[test]
fn sizes_and_names_that_contradict_each_other() {
    for (from, to, key, message) in [
        (
            "root_diameter_mm = 118.0",
            "root_diameter_mm = 138.0",
            "park.teal.contact_diameter_mm",
            "contact_diameter_mm 132 must be above root_diameter_mm 138",
        ),
        ("inside_mm = 8.0", "inside_mm = 30.0", "shaft.input.outside_mm.teal", "teal 29.5 must be above inside_mm 30"),
        (
            "carry_least = 2",
            "carry_least = 4",
            "one_way.wren.carry_least",
            "only 3 of 9 struts drop into 42 notches together",
        ),
        (
            "sprag_radius_mm = 5.0",
            "sprag_radius_mm = 50.0",
            "one_way.teal.sprag_radius_mm",
            "not below the radius of the race, 49",
        ),
        (
            "tooth_root_mm = 9.6",
            "tooth_root_mm = 19.6",
            "park.teal.tooth_root_mm",
            "tooth_root_mm: that many teeth of this thickness do not fit around the root diameter; correct teeth, thickness or diameter",
        ),
        (
            "contact_diameter_mm = 132.0",
            "contact_diameter_mm = 142.0",
            "park.teal.tip_diameter_mm",
            "tip_diameter_mm 140 must be above contact_diameter_mm 142",
        ),
        (
            "pawl_tip_mm = 7.6",
            "pawl_tip_mm = 9.6",
            "park.teal.pawl_tip_mm",
            "pawl_tip_mm: the pawl is as wide as the space between two teeth or wider and never drops in; measure both along the contact diameter",
        ),
        (
            "end_play_target_mm = 0.36",
            "end_play_target_mm = 3.6",
            "selective.end_play_target_mm",
            "outside the end play wanted, 0.2 to 0.6",
        ),
        ("ring_u_mm = 0.015\n", "", "selective.ring_b1_mm", "ring_u_mm is missing beside it"),
        ("[selective.ring.C1] ", "[selective.ring.B1] ", "selective.ring.B1", "ring_b1_mm lists rings of B1 too"),
        (
            "thickness_mm = [1.80, 2.05, 2.30, 2.55, 2.80]",
            "thickness_mm = [1.80, 2.05, 2.30, 2.55, 2.80]\ntarget_mm = 1.5",
            "selective.ring.C1.target_mm",
            "outside clutch.C1.clearance_mm, 0.95 to 1.45",
        ),
        (
            "1.10, 1.25, 1.40, 1.55, 1.70, 1.85, 2.00, 2.15, 2.30",
            "1.10, 1.25, 1.40, 1.85, 2.00, 2.15, 2.30",
            "selective.shim_mm",
            "the step from 1.4 to 1.85 is wider than the 0.2 to 0.6 wanted: some units have no piece",
        ),
        (
            "ring_b1_mm = [2.40, 2.65, 2.90, 3.15, 3.40, 3.65]",
            "ring_b1_mm = [2.40, 2.65, 3.40, 3.65]",
            "selective.ring_b1_mm",
            "the step from 2.65 to 3.4 is wider than the 1.4 to 2 wanted: some units have no piece",
        ),
        (
            "bore = \"reaction_sleeve\"",
            "bore = \"reaction_sleve\"",
            "fit[4].bore",
            "no other line names the part \"reaction_sleve\", but there is \"reaction_sleeve\"",
        ),
        (
            "carrier = \"case\"\nchance = { teal = 0.01, wren = 0.97, heron = 0.99 }\nexchanged = 0.04",
            "carrier = \"case\"\nchance = { teal = 0.01, wren = 0.97, heron = 0.99 }\nexchanged = 0.05",
            "evidence[2].exchanged",
            "case is exchanged with a chance of 0.04 at evidence[0]",
        ),
        (
            "chance = { teal = 0.01, wren = 0.96, heron = 0.995 }",
            "chance = { teal = 0.96, wren = 0.96, heron = 0.96 }",
            "evidence[5].chance",
            "the same in every variant: it tells nothing",
        ),
        (
            "instrument = \"steel_rule\"",
            "instrument = \"pressure_gauge\"",
            "evidence_measured[0].instrument",
            "pressure_gauge measures no lengths",
        ),
        (
            "instrument = \"steel_rule\"",
            "instrument = \"feeler\"",
            "evidence_measured[0].instrument",
            "feeler reaches from 0.05 to 3 mm, and the size lies outside",
        ),
        (
            "shaft_instrument = \"outside_micrometer\"",
            "shaft_instrument = \"depth_micrometer\"\nbore_instrument = \"dial_indicator\"",
            "fit[1].bore_instrument",
            "dial_indicator reaches from 0 to 10 mm, and the size lies outside",
        ),
        (
            "bore_size = \"output_rear_bore\"",
            "bore_size = \"output_pilot_bore\"",
            "fit[0].bore_size",
            "output_pilot_bore is a size of the part output_carrier, not of rear_support",
        ),
        (
            "size_mm = { teal = [32.030, 32.055],",
            "size_mm = { teal = [32.030, 32.056],",
            "fit[1].bore_size",
            "the evidence output_pilot_bore states other limits than this fit",
        ),
        ("minutes = 40", "minutes = 0", "evidence[5].minutes", "takes a number above 0"),
        ("status = \"fictional", "variants_ = 1\nstatus = \"fictional", "meta.variants_", "unknown key"),
    ] {
        let problems = family_with(from, to);
        assert_eq!((only(&problems).0, only(&problems).1), (key, message));
    }
    let fleet = demo("fleet.toml").replacen("max_rpm = 5700", "max_rpm = 5200", 1);
    assert_eq!(check(&[("fleet.toml", &fleet)]).0[0].message, "the torque curve goes on to 5500");
}

#[test]
fn ratings_that_contradict_one_another() {
    for (from, to, key, message) in [
        ("gvwr_kg = 3200\n", "gvwr_kg = 3600\n", "truck[0].tow.gvwr_kg", "above the sum of the axle ratings, 3500"),
        (
            "front_kg = 1480\n",
            "front_kg = 2740\n",
            "truck[0].tow.front_kg",
            "the front axle weighs 2740 of a truck of 2740",
        ),
        ("overhang_mm = 1230\n", "overhang_mm = -30\n", "truck[0].tow.overhang_mm", "a ball is behind the rear axle"),
    ] {
        let text = demo("fleet.toml");
        assert!(text.contains(from), "{from}");
        let problems = check_demo("fleet.toml", &text.replacen(from, to, 1)).0;
        let [problem] = &problems[..] else { panic!("{}", Problems(problems.clone())) };
        assert_eq!((problem.key.as_str(), problem.message.as_str()), (key, message));
    }
}
