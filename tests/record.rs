//! Records: the demo reads without a fault, and every kind of fault is named at its line.

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

#[test]
fn committed_schemas_are_current() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("python/trainwright/schema");
    for kind in Kind::ALL {
        let path = folder.join(kind.name()).with_extension("json");
        if std::env::var_os("WRITE_SCHEMA").is_some() {
            fs::write(&path, kind.json_schema()).unwrap();
        }
        let committed = fs::read_to_string(&path).unwrap_or_default();
        assert!(committed == kind.json_schema(), "{} is out of date: make schema", path.display());
    }
}

/// The line of a text in which a part of it first stands.
fn line_of(text: &str, part: &str) -> usize {
    1 + text[..text.find(part).unwrap()].matches('\n').count()
}

#[test]
fn all_faults_are_reported_together_and_by_line() {
    let text = demo("family.toml")
        .replace("module_mm = 1.35", "module_in = 0.053")
        .replace("sun = 36, planet = 29, ring = 94", "sun = 0, planet = \"29\", rign = 94")
        .replace("[1050, 1280]", "[1280, 1050]")
        .replace("input_splines\"\nparts", "input_splines\"\npartz");
    let shown = check_demo("family.toml", &text).to_string();
    let [pair, price, spring] = ["partz = ", "turbine_hub = 60", "[1280, 1050]"].map(|part| line_of(&text, part));
    let expected = format!(
        "\
family.toml:23:1  train.set[0].module_in = 0.053
    this key takes millimeters, not inches
    write module_mm = 1.3462
family.toml:37:17  train.set[2].teeth.sun = 0
    takes a whole number from 1 to 999
    Teeth of the sun.
family.toml:37:29  train.set[2].teeth.planet = \"29\"
    takes a whole number from 1 to 999, not a text
    take the quotes away
family.toml:37:35  train.set[2].teeth.rign = 94
    unknown key
    did you mean ring?
family.toml:{pair}:1  match[5].partz = [\"input_shaft\", \"turbine_hub\"]
    unknown key
    did you mean parts?
family.toml:{price}:15  price.turbine_hub = 60
    there is no part or machining \"turbine_hub\"
    known: c1_drum, case, extension, f1_cover_plate, f1_inner_race, f1_outer_race, front_carrier, input_shaft, output_carrier, \
output_shaft, park_gear, park_pawl, pressure_sensor_seal, reaction_sleeve, rear_support, ring_link, sump, sump_filter, sun_link, \
sun_link_shaft, third_sun, thrust_race, turn_support_register
family.toml:{spring}:19  clutch.C1.return_spring_n = [1280, 1050]
    reversed: lower 1280 is above upper 1050
    exchange them or correct one"
    );
    assert_eq!(shown, expected);
}

#[test]
fn a_misspelled_word_of_a_choice_is_shown_with_its_key_and_the_choice() {
    let problems = family_with("C1 = { kind = \"clutch\"", "C1 = { kind = \"cluch\"");
    let [problem] = problems.as_slice() else { panic!("{}", Problems(problems)) };
    assert_eq!(problem.key, "train.element.C1.kind");
    assert_eq!(problem.message, "takes one of clutch, brake, one_way, dog");
    assert_eq!(problem.mend, "did you mean clutch?");
    let far = family_with("C1 = { kind = \"clutch\"", "C1 = { kind = \"zzz\"");
    assert_eq!(far[0].mend, "write one of these", "the message has listed them");
}

#[test]
fn names_must_exist() {
    for (from, to, key, message, mend) in [
        (
            "B1 = { kind = \"brake\",   joins = [\"front_carrier\"",
            "B1 = { kind = \"brake\",   joins = [\"front_carier\"",
            "train.element.B1.joins[0]",
            "there is no member \"front_carier\"",
            "did you mean front_carrier?",
        ),
        (
            "closed = [\"B1\", \"C2\", \"B2\"]",
            "closed = [\"B1\", \"C2\", \"B7\"]",
            "train.gear[1].closed[2]",
            "there is no element \"B7\"",
            "known: B1, B2, C1, C2, C3, F1",
        ),
        ("R = 0.93", "R9 = 0.93", "train.efficiency.R9", "there is no gear \"R9\"", ""),
        (
            "only = [\"heron\"]",
            "only = [\"haron\"]",
            "train.set[1].only[0]",
            "there is no variant \"haron\"",
            "did you mean heron?",
        ),
        (
            "\"support_register_in_case\"\npart = \"rear_support\"",
            "\"support_register_in_case\"\npart = \"rear_suport\"",
            "machining[0].part",
            "there is no part \"rear_suport\"",
            "did you mean rear_support?",
        ),
        (
            "instrument = \"steel_rule\"",
            "instrument = \"steel_ruler\"",
            "evidence_measured[0].instrument",
            "there is no instrument \"steel_ruler\"",
            "did you mean steel_rule?",
        ),
        (
            "turns_with = \"input\"",
            "turns_with = \"inpt\"",
            "clutch.C3.turns_with",
            "there is no member \"inpt\"",
            "did you mean input?",
        ),
        (
            "park_pawl = 35",
            "park_paw = 35",
            "price.park_paw",
            "there is no part or machining \"park_paw\"",
            "did you mean park_pawl?",
        ),
    ] {
        let problems = family_with(from, to);
        let [problem] = problems.as_slice() else { panic!("{}", Problems(problems)) };
        assert_eq!((problem.key.as_str(), problem.message.as_str()), (key, message));
        assert!(problem.mend.contains(mend), "{problem}");
    }
}

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
fn what_is_not_toml_shows_its_line() {
    for (from, to, column, value, mend) in [
        ("module_mm = 1.35", "module_mm = 1,35", 14, "module_mm = 1,35", "write decimals with a point"),
        ("helix_deg = 19.0", "helix_deg 19.0", 11, "helix_deg 19.0", ""),
        ("planets = 4", "planets = 4\nplanets = 5", 1, "planets = 5", "keep one of the two"),
        ("[train.efficiency]", "[train.efficiency", 18, "[train.efficiency", ""),
        (
            "teal = 4, wren = 5, heron = 6 }",
            "teal = 4 wren = 5, heron = 6 }",
            26,
            "plates = { teal = 4 wren = 5, heron = 6 }",
            "",
        ),
    ] {
        let problems = family_with(from, to);
        let [problem] = problems.as_slice() else { panic!("{}", Problems(problems)) };
        let line = line_of(&demo("family.toml"), from) + to.matches('\n').count();
        assert_eq!((problem.line, problem.column), (line, column), "{problem}");
        assert_eq!((problem.value.as_str(), problem.mend.as_str()), (value, mend));
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

#[test]
fn files_that_are_no_record_say_so() {
    for (text, message) in [
        ("", "this is no record of any kind"),
        ("[trane]\n", "this is no record of any kind"),
        ("[train\n", "this is not TOML"),
        ("a = 1\na = 2\n", "this key stands twice in its table"),
    ] {
        let problems = check(&[("x.toml", text)]);
        assert!(problems.0[0].message.starts_with(message), "{problems}");
        assert!(Family::from_toml("x.toml", text).is_err());
    }
}

#[test]
fn deep_nesting_and_long_files_are_survived() {
    for (open, close) in [("[", "]"), ("{a=", "}")] {
        let nested = format!("train = {}1{}", open.repeat(100_000), close.repeat(100_000));
        assert!(check(&[("x.toml", &nested)]).errors().next().is_some());
    }
    let dotted = format!("[train{}]\n", ".a".repeat(20_000));
    assert!(check(&[("x.toml", &dotted)]).errors().next().is_some());
    let fleet = demo("fleet.toml");
    let (head, truck) = fleet.split_at(fleet.rfind("[[truck]]").unwrap());
    let many: String = (0..2000).map(|number| truck.replace("T19", &format!("N{number}"))).collect();
    let problems = check(&[("fleet.toml", &(head.to_owned() + &many))]);
    assert!(problems.0.is_empty(), "{problems}");
}

#[test]
fn members_may_be_left_out_and_an_unquoted_gear_is_told_so() {
    let text = demo("trains/power_split_single_set.toml");
    let listed = TrainFile::from_toml("x.toml", &text).unwrap();
    for line in ["members = ", "fixed = "] {
        let kept: Vec<_> = text.lines().filter(|candidate| !candidate.starts_with(line)).collect();
        let derived = TrainFile::from_toml("x.toml", &kept.join("\n")).unwrap();
        let solve = |file: &TrainFile| {
            let named = file.train.named(None).unwrap();
            named.train.solve(named.gears[0].closed).unwrap().ratio
        };
        assert_eq!(solve(&derived), solve(&listed));
    }
    let problems = check(&[("x.toml", &text.replace("id = \"stopped\"", "id = 1"))]);
    assert_eq!(problems.0[0].mend, "put it in quotes");
}

proptest! {
    #[test]
    fn any_text_gives_a_record_or_problems(text in "\\PC*") {
        let _ = check(&[("x.toml", &text)]);
    }

    #[test]
    fn a_damaged_file_gives_a_record_or_problems(file in 0..5_usize, at in 0..15_000_usize, cut in 0..40_usize, put in "[\\[\\]={}\"a-z0-9.,\\n -]{0,12}") {
        let mut bytes = demo(FILES[file]).into_bytes();
        let at = at.min(bytes.len());
        let end = (at + cut).min(bytes.len());
        bytes.splice(at..end, put.bytes());
        let text = String::from_utf8_lossy(&bytes);
        for problem in check(&[("x.toml", &text)]).0 {
            prop_assert!(problem.line >= 1 && problem.line <= text.lines().count().max(1) + 1 && problem.column >= 1);
            prop_assert!(!problem.message.is_empty());
        }
    }

    #[test]
    fn any_teeth_give_a_train_or_problems(sun in -3..1200_i64, ring in -3..1200_i64, planet in 0..200_i64) {
        let text = format!(
            "[train]\ninput = 's'\noutput = 'c'\n[[train.set]]\nid = 'P1'\nteeth = {{ sun = {sun}, ring = {ring}, planet = {planet} }}\n\
             joins = {{ sun = 's', carrier = 'c', ring = 'case' }}\n[[train.gear]]\nid = '1'\nclosed = []\n"
        );
        match TrainFile::from_toml("x.toml", &text) {
            Ok(file) => {
                let named = file.train.named(None).unwrap();
                prop_assert_eq!(named.train.solve(0).unwrap().ratio, Fraction::new(sun + ring, sun).unwrap());
            }
            Err(problems) => prop_assert!(problems.0.iter().all(|problem| problem.line == 6), "{}", problems),
        }
    }
}

/// Lines `key = value` of a demo file: number from 1, key, and the text with that line changed.
fn changed_lines(file: &str, change: impl Fn(&str, &str) -> Option<String>) -> Vec<(usize, String, String)> {
    let text = demo(file);
    let lines: Vec<_> = text.lines().collect();
    let changed = lines.iter().enumerate().filter_map(|(index, line)| {
        let (key, value) =
            line.split_once(" = ").filter(|(key, _)| key.chars().all(|c| c.is_alphanumeric() || "_ ".contains(c)))?;
        let new = change(key.trim_end(), value)?;
        let text = lines.iter().enumerate().map(|(at, line)| if at == index { new.as_str() } else { line });
        Some((index + 1, key.trim_end().to_owned(), text.collect::<Vec<_>>().join("\n")))
    });
    changed.collect()
}

#[test]
fn a_misspelled_key_is_found_at_its_line_with_the_right_one() {
    // Keys that are names of the user's own choice: elsewhere the name is then missing, or nobody refers to it. `unit` sits among such names.
    let own = ["B1", "B2", "C1", "C2", "C3", "F1", "R", "teal", "wren", "heron", "output_sensor_left", "unit"];
    let own_too = [
        "cooler_port_m18",
        "extension_bolts_8",
        "sump_depth",
        "output_rear_journal",
        "output_rear_bore",
        "output_pilot",
        "output_pilot_bore",
    ];
    let mut count = 0;
    for file in FILES {
        for (line, key, text) in changed_lines(file, |key, value| Some(format!("{key}q = {value}"))) {
            if own.contains(&key.as_str()) || own_too.contains(&key.as_str()) {
                continue;
            }
            let problems = check(&[(file, &text)]);
            let at_line = problems
                .errors()
                .any(|problem| problem.line == line && problem.file == file && problem.mend.contains(&key));
            assert!(at_line, "{file}:{line} {key}: {problems}");
            count += 1;
        }
    }
    assert!(count > 500, "{count}");
}

#[test]
fn a_reversed_pair_is_found_at_its_line() {
    let mut count = 0;
    for file in FILES {
        let reversed = |key: &str, value: &str| {
            let (pair, rest) = value.strip_prefix('[')?.split_once(']')?;
            let (low, high) = pair.split_once(", ")?;
            let (low, high): (f64, f64) = (low.parse().ok()?, high.parse().ok()?);
            // Width and thickness, diameter and length: two sizes, not a pair of limits. The job's temperatures are a list.
            (low < high && !["needle_mm", "set_at_c"].contains(&key)).then(|| format!("{key} = [{high}, {low}]{rest}"))
        };
        for (line, key, text) in changed_lines(file, reversed) {
            let problems = check(&[(file, &text)]);
            let [problem] = problems.0.as_slice() else { panic!("{file}:{line} {key}: {problems}") };
            assert_eq!((problem.line, problem.file.as_str()), (line, file));
            assert!(problem.message.starts_with("reversed: lower"), "{problem}");
            count += 1;
        }
    }
    assert!(count > 40, "{count}");
}

#[test]
fn a_shop_unit_is_recognized_and_converted() {
    let shop = [
        ("_mm", "_in", "millimeters"),
        ("_kpa", "_psi", "kilopascals"),
        ("_nm", "_lb_ft", "newton-meters"),
        ("_kg", "_lb", "kilograms"),
        ("_c", "_f", "degrees Celsius"),
        ("_l", "_qt", "liters"),
        ("_mpa", "_ksi", "megapascals"),
    ];
    let mut count = 0;
    for file in FILES {
        for (unit, other, name) in shop {
            let in_shop_unit = |key: &str, value: &str| Some(format!("{}{other} = {value}", key.strip_suffix(unit)?));
            for (line, key, text) in changed_lines(file, in_shop_unit) {
                let problems = check(&[(file, &text)]);
                let problem = problems.0.iter().find(|problem| problem.line == line);
                let problem = problem.unwrap_or_else(|| panic!("{file}:{line} {key}: {problems}"));
                assert!(problem.message.starts_with(&format!("this key takes {name}, not ")), "{problem}");
                assert!(problem.mend.starts_with(&format!("write {key}")), "{problem}");
                count += 1;
            }
        }
    }
    assert!(count > 150, "{count}");
}

#[test]
fn a_missing_key_is_found_unless_it_may_be_left_out() {
    let optional = [
        "title",
        "status",
        "reference_c",
        "only",
        "planets",
        "module_mm",
        "helix_deg",
        "face_mm",
        "fixed",
        "blocks",
        "build_index",
        "reverse_turbine_nm",
        "line_idle_kpa",
        "line_stall_d_kpa",
        "line_stall_r_kpa",
        "label",
        "expansion_per_k",
        "flash_c",
        "friction_approved",
        "story",
        "members",
        "tire_programmed",
        "axle_programmed",
        "parts_from",
        "machined",
        "wave_mm",
        "bend_mm",
        "seal_land_mm",
        "F1",
        "u_rel_capacity",
        "friction",
        "strut_angle_deg",
        "space_mm",
        "pawl_tip_mm",
        "pawl_tip_radius_mm",
        "stress_factor",
        "cone_half_angle_deg",
        "shaft_size",
        "bore_size",
        "shaft_instrument",
        "length_mm",
        "shaft_material",
        "bore_material",
        "housing_material",
        "bush_material",
        "young_mpa",
        "poisson",
        "pushed_by",
    ];
    for file in ["family.toml", "fluids.toml", "instruments.toml", "fleet.toml"] {
        for (line, key, text) in changed_lines(file, |_, _| Some(String::new())) {
            let found = check(&[(file, &text)]).errors().next().is_some();
            let may_be_left_out =
                optional.contains(&key.as_str()) || line_is_in(file, line, &["[train.efficiency]", "[price]"]);
            let may_be_left_out = may_be_left_out
                || key == "u_rel_stress" && line_is_in(file, line, &["[shaft.input]", "[shaft.output]"]);
            assert!(found || may_be_left_out, "{file}:{line} {key}");
        }
    }
}

/// Whether the last header above a line is one of these.
fn line_is_in(file: &str, line: usize, headers: &[&str]) -> bool {
    let text = demo(file);
    let above: Vec<_> = text.lines().take(line).filter(|line| line.starts_with('[')).collect();
    above.last().is_some_and(|header| headers.contains(header))
}

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

/// Keys of numbers without a unit (shares, ratios, chances, friction), or with one that is written out.
const WITHOUT_UNIT: &str = "axle axle_efficiency axle_programmed best build_index chance efficiency exchanged face_share gear_bending \
    geometry_u_rel least_cover needle pawl_friction poisson price prior reference_contacts reference_over_rated rocking_factor \
    roll_trailer roll_truck rolling_over_free shaft speed_ratio stress_factor torque_ratio torque_reserve u u_rel_capacity u_rel_push u_rel_stress u_rolling_over_free \
    hours minutes seconds displacement_cm3_rev gravity_m_s2 least_flow_l_min";

#[test]
fn every_number_of_a_record_names_its_unit() {
    let units = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("core/units.rs")).unwrap();
    let table = units.lines().filter(|line| line.starts_with("//! | `_"));
    let suffixes: Vec<_> = table.flat_map(|row| row.split('`').skip(1).step_by(2)).map(str::to_owned).collect();
    let named = |key: &str| {
        suffixes.iter().any(|suffix| key.ends_with(suffix.as_str()))
            || WITHOUT_UNIT.split_whitespace().any(|word| word == key)
    };
    let mut unnamed = Vec::new();
    for kind in Kind::ALL {
        let schema: serde_json::Value = serde_json::from_str(&kind.json_schema()).unwrap();
        let tables = schema["$defs"].as_object().unwrap().values().chain([&schema]);
        let alternatives = tables.flat_map(|table| {
            table["anyOf"].as_array().or(table["oneOf"].as_array()).into_iter().flatten().chain([table])
        });
        for (key, value) in alternatives.filter_map(|table| table["properties"].as_object()).flatten() {
            if is_number(value, &schema) && !named(key) {
                unnamed.push(format!("{} {key}", kind.name()));
            }
        }
    }
    assert!(unnamed.is_empty(), "{unnamed:?}");
}

/// Whether a key holds a number, or a list or table of numbers.
fn is_number(schema: &serde_json::Value, root: &serde_json::Value) -> bool {
    if let Some(reference) = schema["$ref"].as_str() {
        return is_number(root.pointer(reference.trim_start_matches('#')).unwrap(), root);
    }
    if schema["type"] == "number" {
        return true;
    }
    ["items", "additionalProperties"]
        .iter()
        .any(|inner| schema[inner].is_object() && schema["properties"].is_null() && is_number(&schema[inner], root))
}

#[test]
fn fits_that_contradict_themselves() {
    let shaft = "shaft_mm = { teal = [43.975, 44.000]";
    for (from, to, key, message, mend) in [
        (
            shaft,
            "shaft_mm = { teal = [44.325, 44.350]",
            "fit[0].shaft_mm.teal",
            "does not enter the bore of its own variant: clearance -0.310 to -0.250",
            "correct the shaft or the bore of this variant",
        ),
        (
            shaft,
            "shaft_mm = { teal = [44.030, 44.055]",
            "fit[0].shaft_mm.teal",
            "may bind in the bore of its own variant: clearance -0.015 to 0.045",
            "correct the shaft or the bore of this variant",
        ),
        (
            shaft,
            "shaft_mm = { teal = [43.075, 43.100]",
            "fit[0].shaft_mm.teal",
            "loose in the bore of its own variant: clearance 0.940 to 1.000, limit_mm 0.14",
            "correct the shaft, the bore or limit_mm",
        ),
        (
            "bush_outside_mm = [43.065, 43.090]",
            "bush_outside_mm = [42.965, 42.990]",
            "fit[5].press.bush_outside_mm",
            "even the largest, 42.99, has no interference in the smallest housing, 43",
            "exchange the two or correct one",
        ),
        (
            "housing_outside_mm = 74.0",
            "housing_outside_mm = 43.05",
            "fit[5].press.housing_outside_mm",
            "housing_outside_mm 43.05 must be above bush_outside_mm 43.09",
            "exchange the two or correct one",
        ),
        (
            "bush_wall_mm = 1.5",
            "bush_wall_mm = 2.5",
            "fit[5].press.bush_wall_mm",
            "leaves a bore near 38.013 in place, but bore_mm of teal is 40.02 to 40.05",
            "a wall of 1.489 would agree",
        ),
        (
            "young_mpa = 71000\n",
            "",
            "fit[5].press.housing_material",
            "young_mpa is missing: a press fit needs it; add it to [material]",
            "",
        ),
        (
            "housing_material = \"aluminum\"",
            "housing_material = \"aluminium\"",
            "fit[5].press.housing_material",
            "there is no material \"aluminium\"",
            "did you mean aluminum?",
        ),
        (
            "expansion_per_k = { best = 23.0e-6",
            "expansion_per_k = { best = 23.0",
            "material.aluminum.expansion_per_k.best",
            "takes a number above 0, at most 0.0001",
            "Best value.",
        ),
    ] {
        // The evidence states the sizes of the journal too, and then disagrees as well.
        let problems = Problems(family_with(from, to));
        let told = |problem: &&Problem| problem.key == key && problem.message == message && problem.mend == mend;
        assert!(problems.errors().any(|problem| told(&problem)), "{key}: {message}\n{problems}");
    }
    let press =
        family_with("kind = \"locating\"\nshaft = \"thrust_race\"", "kind = \"press\"\nshaft = \"thrust_race\"");
    let of_press: Vec<_> = press.iter().filter(|problem| problem.message.starts_with("a press fit with")).collect();
    assert_eq!(of_press.len(), 3, "one for each variant: {press:?}");
    assert_eq!(of_press[0].key, "fit[3].shaft_mm.teal");
    assert_eq!(of_press[0].message, "a press fit with clearance, 0.100 to 0.220");
    // Notes: the record can be used.
    for (from, to, key, message) in [
        (
            "limit_mm = 0.14",
            "limit_mm = 0.09",
            "fit[0].limit_mm",
            "0.09 allows less than new parts have, 0.040 to 0.100",
        ),
        (
            "bush_outside_mm = [43.065, 43.090]",
            "bush_outside_mm = [43.020, 43.090]",
            "fit[5].press.bush_outside_mm",
            "the smallest, 43.02, is loose in the largest housing, 43.025",
        ),
    ] {
        let problems = Problems(family_with(from, to));
        assert!(problems.errors().next().is_none(), "{problems}");
        assert!(problems.0.iter().all(|problem| (problem.key.as_str(), problem.message.as_str()) == (key, message)));
    }
    // A register may be a light push fit.
    assert!(family_with("shaft_mm = { teal = [117.940, 117.965]", "shaft_mm = { teal = [117.960, 117.985]").is_empty());
}

#[test]
fn fits_as_the_fit_chapter_takes_them() {
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    let journal = family.fit("output_journal_in_support").unwrap();
    let loose = journal.clearance("teal", "wren").unwrap();
    assert_eq!(loose.fit_class, FitClass::Loose);
    assert_relative_eq!(loose.clearance_mm.lower, 0.39, epsilon = 1e-9);
    assert_eq!(family.expansions_of(journal).map(|expansion| expansion.unwrap().value), [11.5e-6, 23e-6]);
    let bush = family.fit("case_bush").unwrap();
    let bore = toleranced(bush.bore_limits("teal").unwrap(), Spread::RECTANGULAR).unwrap();
    let pressed = family.pressed_bushing(bush, bore, Spread::RECTANGULAR).unwrap();
    assert_relative_eq!(pressed.bushing_at(20.0).unwrap().interference_mm, 0.065, epsilon = 1e-9);
    assert_relative_eq!(pressed.let_go_c().unwrap().value, 151.6, epsilon = 0.05);
    for (error, says) in [
        (family.fit("case_bushing").unwrap_err(), "the record has no fit of this name"),
        (journal.clearance("blue", "wren").unwrap_err(), "the record gives none for this variant"),
        (family.pressed_bushing(journal, bore, Spread::RECTANGULAR).unwrap_err(), "no bushing is pressed"),
    ] {
        assert!(matches!(error, Error::Missing { .. }) && error.to_string().contains(says), "{error}");
    }
    let nameless = demo("family.toml").replace("bush_material = \"steel\"\n", "");
    let nameless = Family::from_toml("family.toml", &nameless).unwrap();
    let bush = nameless.fit("case_bush").unwrap();
    let error = nameless.pressed_bushing(bush, bore, Spread::RECTANGULAR).unwrap_err();
    assert_eq!(
        error.to_string(),
        "bush_material is missing: name it in the press of this fit, and its constants in [material]"
    );
}
