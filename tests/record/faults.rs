//! Faults of the text and of names, each at its line.

use super::*;

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
